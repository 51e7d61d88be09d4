//! The trend of a training log: estimated maxima by week and the robust line of the recent stretch.
//!
//! In: a [`Trend`], units. Out: a scene.

use super::data_table::figure;
use super::sheet::{Chart, Sheet, heading};
use crate::draw::Scene;
use crate::error::Result;
use crate::narrative::shown_units::{ShownUnit, ShownUnits};
use crate::narrative::trend_words::{
    BEST_OF_DAY, ESTIMATED_1RM, PLATEAU_CAPTION, SLOPE_EDGES, WEEKS, best_of_log, invented,
    slope_before, trend_figure_words, trend_line_name,
};
use crate::plot::{Axis, Extent, Fill, LineChart, Look, Marker, Panel, Role, Series};
use crate::progress::trend::Trend;
use crate::progress::trend_line::TrendLine;
use crate::units::System;

/// The chart of a trend.
///
/// **Fails** if the log has fewer than two sessions.
pub fn trend_chart(trend: &Trend, units: System, look: Look) -> Result<Scene> {
    trend_lines(trend, units).scene(look)
}

/// The trend of the lecture's invented log.
#[must_use]
pub fn trend_sheet(trend: &Trend, units: System) -> Sheet {
    let mut chart = trend_lines(trend, units);
    chart.heading.subtitle = invented(&chart.heading.subtitle);
    let mut sheet = Sheet::new(Chart::Lines(chart), PLATEAU_CAPTION);
    let fill = interval(trend, units.mass_unit());
    let edges = fill.into_iter().flat_map(|fill| [fill.upper, fill.lower]);
    for (name, edge) in SLOPE_EDGES.into_iter().zip(edges) {
        sheet.data.rows.extend(edge.iter().map(|point| {
            let numbers = point.map(figure);
            [vec![name.to_owned()], numbers.to_vec()].concat()
        }));
    }
    sheet
}

fn trend_lines(trend: &Trend, units: System) -> LineChart {
    let unit = units.mass_unit();
    let best = &trend.sessions[trend.best];
    let marked = Marker::new(
        [best.week, unit.of(best.kg())],
        best_of_log(best.kg(), units),
        Role::CAPACITY,
    );
    // Days are points: nothing is known of what lies between them.
    let days = trend.sessions.iter();
    let days = days.map(|day| Marker::new([day.week, unit.of(day.kg())], "", Role::CAPACITY));
    let panel = Panel {
        fills: interval(trend, unit).into_iter().collect(),
        markers: days.chain([marked]).collect(),
        ..Panel::new(maximum_axis(trend, unit), series(trend, units))
    };
    LineChart {
        heading: heading(&trend_figure_words(trend, units)),
        ..LineChart::new(Axis::new(WEEKS, "").reaching(Extent::Data), vec![panel])
    }
}

/// An axis around the maxima, with room for words above and below.
fn maximum_axis(trend: &Trend, unit: ShownUnit) -> Axis {
    let values = || trend.sessions.iter().map(|session| unit.of(session.kg()));
    let low = values().fold(f64::INFINITY, f64::min);
    let high = values().fold(f64::NEG_INFINITY, f64::max);
    let room = (high - low).max(0.04 * high);
    let range = [low - 0.4 * room, high + 0.5 * room];
    Axis::new(ESTIMATED_1RM, unit.symbol).reaching(Extent::Exactly(range))
}

/// The sessions, the line before the bend, the line of the recent stretch.
fn series(trend: &Trend, units: System) -> Vec<Series> {
    let unit = units.mass_unit();
    let sessions = trend.sessions.iter();
    let best = sessions.map(|session| [session.week, unit.of(session.kg())]);
    let line = |line: &TrendLine| -> Vec<[f64; 2]> {
        let ends = [line.first, line.first + line.sessions - 1];
        ends.iter()
            .filter_map(|index| trend.sessions.get(*index))
            .map(|session| [session.week, unit.of(line.kg_at(session.week))])
            .collect()
    };
    let before = trend.before.as_ref().map(|before| {
        let name = slope_before(before.slope_kg_week, units);
        Series::new(name, line(before), Role::Series(2))
    });
    let recent = Series::new(
        trend_line_name(trend.verdict),
        line(&trend.recent),
        Role::DEMAND,
    );
    std::iter::once(Series::new(BEST_OF_DAY, best.collect(), Role::Muted))
        .chain(before)
        .chain([recent])
        .collect()
}

/// What the slope's interval allows, as a wedge from the middle of the recent stretch.
fn interval(trend: &Trend, unit: ShownUnit) -> Option<Fill> {
    let line = &trend.recent;
    let (low, high) = line.interval_kg_week?;
    let first = trend.sessions.get(line.first)?.week;
    let last = trend.sessions.get(line.first + line.sessions - 1)?.week;
    let middle = f64::midpoint(first, last);
    let edge = |slope: f64, week: f64| {
        let kg = line.kg_at(middle) + slope * (week - middle);
        [week, unit.of(kg)]
    };
    Some(Fill {
        upper: vec![edge(low, first), edge(low, middle), edge(high, last)],
        lower: vec![edge(high, first), edge(high, middle), edge(low, last)],
        role: Role::DEMAND,
    })
}
