//! The trend of a training log: estimated maxima by week and the robust line of the recent stretch.

use crate::draw::Scene;
use crate::error::Result;
use crate::narrative::progress::{sureness_word, trend_in_words, verdict_word};
use crate::narrative::quantities::{mass_in, rounded};
use crate::plot::{Axis, Extent, Fill, Heading, LineChart, Look, Marker, Panel, Role, Series};
use crate::progress::trend::Trend;
use crate::progress::trend_line::TrendLine;
use crate::units::{Mass, System};

/// The chart of a trend.
///
/// **Fails** if the log has fewer than two sessions.
pub fn trend_chart(trend: &Trend, units: System, look: Look) -> Result<Scene> {
    let unit = match units {
        System::Metric => ("kg", 1.0),
        System::Us => ("lb", Mass::from_kg(1.0).as_lb()),
    };
    let point = |week: f64, kg: f64| [week, unit.1 * kg];
    let sessions: Vec<[f64; 2]> = trend
        .sessions
        .iter()
        .map(|s| point(s.week, s.kg()))
        .collect();
    let values = || sessions.iter().map(|p| p[1]);
    let (low, high) = (
        values().fold(f64::INFINITY, f64::min),
        values().fold(f64::NEG_INFINITY, f64::max),
    );
    let room = (high - low).max(0.04 * high);
    let mut series = vec![Series {
        name: "best set of the day".to_owned(),
        points: sessions.clone(),
        role: Role::CAPACITY,
    }];
    let line = |line: &TrendLine| {
        let ends = [line.first, line.first + line.sessions - 1];
        ends.iter()
            .filter_map(|index| trend.sessions.get(*index))
            .map(|s| point(s.week, line.kg_at(s.week)))
            .collect::<Vec<_>>()
    };
    if let Some(before) = &trend.before {
        series.push(Series {
            name: format!(
                "before: {}{} a week",
                if before.slope_kg_week < 0.0 {
                    "\u{2212}"
                } else {
                    "+"
                },
                rounded((unit.1 * before.slope_kg_week).abs(), 1)
            ),
            points: line(before),
            role: Role::Series(2),
        });
    }
    series.push(Series {
        name: verdict_word(trend.verdict).to_owned(),
        points: line(&trend.recent),
        role: Role::DEMAND,
    });
    let best = &trend.sessions[trend.best];
    LineChart {
        heading: Heading {
            title: format!(
                "{}: {}",
                capital(&trend.lift.replace('-', " ")),
                finding(trend)
            ),
            subtitle: format!(
                "Estimated maximum of the best set of each day; {} now",
                mass_in(units, trend.one_rm_now())
            ),
            footnote:
                "Median of published 1RM equations; robust slope (Theil-Sen) with its interval."
                    .to_owned(),
            description: format!("{}: {}.", trend.lift, trend_in_words(trend, units)),
            ..super::sheet::phrases()
        },
        x: Axis::new("Weeks since the first session", "").reaching(Extent::Data),
        panels: vec![Panel {
            axis: Axis::new("Estimated 1RM", unit.0)
                .reaching(Extent::Exactly([low - 0.4 * room, high + 0.5 * room])),
            series,
            fills: interval(trend, &point).into_iter().collect(),
            markers: vec![Marker {
                at: point(best.week, best.kg()),
                text: format!("best {} {}", rounded(unit.1 * best.kg(), 1), unit.0),
                detail: String::new(),
                role: Role::CAPACITY,
            }],
            ..Panel::default()
        }],
        ..LineChart::default()
    }
    .scene(look)
}

/// What the slope's interval allows, as a wedge from the middle of the recent stretch.
fn interval(trend: &Trend, point: &dyn Fn(f64, f64) -> [f64; 2]) -> Option<Fill> {
    let line = &trend.recent;
    let (low, high) = line.interval_kg_week?;
    let first = trend.sessions.get(line.first)?.week;
    let last = trend.sessions.get(line.first + line.sessions - 1)?.week;
    let middle = f64::midpoint(first, last);
    let edge = |slope: f64, week: f64| point(week, line.kg_at(middle) + slope * (week - middle));
    Some(Fill {
        upper: vec![edge(low, first), edge(low, middle), edge(high, last)],
        lower: vec![edge(high, first), edge(high, middle), edge(low, last)],
        role: Role::DEMAND,
    })
}

fn finding(trend: &Trend) -> String {
    format!(
        "{} for {} weeks, {} evidence",
        verdict_word(trend.verdict),
        rounded(trend.recent.weeks(), 0),
        sureness_word(trend.sureness)
    )
}

fn capital(word: &str) -> String {
    let mut letters = word.chars();
    letters.next().map_or_else(String::new, |first| {
        first.to_uppercase().collect::<String>() + letters.as_str()
    })
}
