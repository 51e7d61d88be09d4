//! The strength curve of a movement with one or several setups over it, and the hardest part of each.
//!
//! In: a study as it is told, the words around its figure. Out: a chart whose title says the finding; effort in a
//! second panel where there are several loads.

use super::over_range::OverRange;
use super::sheet::{Chart, Sheet, heading};
use crate::draw::Scene;
use crate::error::Result;
use crate::narrative::evenness_words::capacity_under;
use crate::narrative::figure_words::FigureWords;
use crate::narrative::hardest_words::HARDEST_PART;
use crate::narrative::people_words::HARDEST_OF_PEOPLE;
use crate::narrative::quantities::rounded;
use crate::narrative::strength_words::WHOLE_STRENGTH;
use crate::narrative::telling::Telling;
use crate::plot::{
    Axis, Extent, Fill, LevelLine, LineChart, Look, Marker, Panel, Role, Series, Shade,
    SmallMultiples, SmallPanel, Span,
};
use crate::study::{SetupStudy, Study};
use std::ops::Range;

/// The chart of a study.
///
/// **Fails** never for a study from the library.
pub fn strength_curve(told: Telling<'_>, words: &FigureWords, look: Look) -> Result<Scene> {
    if told.study.setups.len() > MOST_OVER_EACH_OTHER {
        return setup_panels(told, words).scene(look);
    }
    strength_chart(told, words).scene(look)
}

/// The chart with its words, for a set of figures.
#[must_use]
pub fn strength_sheet(told: Telling<'_>) -> Sheet {
    let words = told.strength_words();
    Sheet::new(Chart::Lines(strength_chart(told, &words)), words.caption)
}

/// Setups whose curves are still told apart in one panel; more get a panel each.
const MOST_OVER_EACH_OTHER: usize = 2;

/// A small panel for every setup: its demand below the capacity, its hardest part shaded.
fn setup_panels(told: Telling<'_>, words: &FigureWords) -> SmallMultiples {
    let over = OverRange::of(told);
    let panels = told.study.setups.iter().enumerate().map(|(index, setup)| {
        let capacity = over.load_points(&told.study.capacity.values());
        let region = setup
            .sticking
            .map(|sticking| Shade::between(over.region(&sticking), HARDEST_PART));
        SmallPanel {
            title: told.setup_name(setup),
            note: told.panel_note(setup),
            series: vec![
                Series::new("capacity", capacity, Role::CAPACITY).doubted(over.hollow()),
                Series::new("load", over.load_points(&setup.values), over.role(index)),
            ],
            shades: region.into_iter().collect(),
            ..SmallPanel::default()
        }
    });
    SmallMultiples {
        heading: heading(words),
        x: over.axis(),
        y: over
            .load_axis()
            .reaching(over.load_extent(over.greatest_demand())),
        panels: panels.collect(),
        columns: None,
    }
}

/// The chart before it is drawn.
pub(crate) fn strength_chart(told: Telling<'_>, words: &FigureWords) -> LineChart {
    let over = OverRange::of(told);
    let hardest = told.study.setups.first().and_then(|setup| setup.sticking);
    let mut panels = vec![load_panel(&over)];
    let whole = match told.study.setups.len() {
        0 | 1 => over.whole(panels[0].axis.extent),
        _ => None,
    };
    if told.study.setups.len() > 1 {
        panels.push(effort_panel(&over));
    }
    let mut heading = heading(words);
    if whole.is_some() {
        heading.footnote += &told.whole_note();
    }
    LineChart {
        heading,
        shades: shades(&over),
        poses: over.poses(hardest.map(|sticking| sticking.point_range)),
        whole,
        ..LineChart::new(over.axis(), panels)
    }
}

/// Capacity under the given name, the capacity in the direction of a load where it is another one, and the demand of
/// every setup under its own.
pub(crate) fn load_curves(over: &OverRange<'_>, capacity: &str) -> Panel {
    let study = over.told.study;
    let along = study.capacity.values();
    // Beside a load both have the same places, of which effort is read off.
    let held = match study.setups.as_slice() {
        [] => over.capacity_points(),
        _ => over.load_points(&along),
    };
    let held = Series::new(capacity, held, Role::CAPACITY).doubted(over.hollow());
    let mut series = vec![held.crested(over.crest().map(|(_, point)| point))];
    let aslant = study
        .setups
        .iter()
        .filter(|setup| setup.pulls_aslant(&along));
    series.extend(aslant.map(|setup| {
        let name = capacity_under(capacity, &over.told.setup_name(setup));
        let own = setup.own_capacity(&along);
        Series::new(name, over.load_points(&own), Role::Muted).in_pieces(apart(&own, &along))
    }));
    series.extend(study.setups.iter().enumerate().map(|(index, setup)| {
        let name = over.told.setup_name(setup);
        Series::new(name, over.load_points(&setup.values), over.role(index))
    }));
    let extent = over.load_extent(over.greatest_demand());
    Panel {
        fills: bands(over),
        ..Panel::new(over.load_axis().reaching(extent), series)
    }
}

/// Curves that differ by less than this share lie upon each other in a picture (a drawing's measure).
const UPON_SHARE: f64 = 0.01;

/// The stretches of samples in which two capacities are seen apart.
fn apart(own: &[f64], along: &[f64]) -> Vec<Range<usize>> {
    let is_apart = |at: usize| (own[at] / along[at] - 1.0).abs() > UPON_SHARE;
    let mut pieces: Vec<Range<usize>> = Vec::new();
    for at in (0..own.len()).filter(|at| is_apart(*at)) {
        match pieces.last_mut() {
            Some(last) if last.end == at => last.end = at + 1,
            _ => pieces.push(at..at + 1),
        }
    }
    pieces.retain(|piece| piece.len() > 1);
    pieces
}

/// What capacity may be in four of five plausible versions of the lifter, or what four in five and half of the people
/// have.
fn bands(over: &OverRange<'_>) -> Vec<Fill> {
    let study = over.told.study;
    let mut ends: Vec<[&Vec<f64>; 2]> = Vec::new();
    ends.extend(study.band.as_ref().map(|[low, high]| [low, high]));
    if let Some(people) = &study.people {
        let forces = &people.forces;
        ends.push([&forces.low, &forces.high]);
        ends.push([&forces.quarter, &forces.three_quarters]);
    }
    let fill = |[low, high]: [&Vec<f64>; 2]| Fill {
        upper: over.load_points(high),
        lower: over.load_points(low),
        role: Role::CAPACITY,
    };
    ends.into_iter().map(fill).collect()
}

fn load_panel(over: &OverRange<'_>) -> Panel {
    let only = match over.told.study.setups.as_slice() {
        [one] => hardest_on_demand(over, one),
        _ => None,
    };
    Panel {
        markers: only.into_iter().collect(),
        ..load_curves(over, "Capacity")
    }
}

/// Where the axis of effort ends, %: above every sticking point and the whole strength, with room for the
/// figures over them.
fn effort_top(study: &Study) -> f64 {
    let setups = study.setups.iter().filter_map(|setup| setup.sticking);
    let greatest = setups.map(|s| 100.0 * s.max_effort).fold(100.0, f64::max);
    (greatest.min(200.0) * 1.2 / 25.0).ceil() * 25.0
}

/// Room below zero for the bar of one hardest part, as a share of the axis above.
const SPAN_ROOM: f64 = 0.2;
/// Steps of the axis of effort, %.
const EFFORT_STEP: f64 = 50.0;

/// The axis of effort with ticks from zero on.
fn effort_axis(top: f64) -> Axis {
    let count = (top / EFFORT_STEP).floor() as u32;
    let percent = (0..=count).map(|number| EFFORT_STEP * f64::from(number));
    Axis {
        ticks: percent.map(|value| (value, rounded(value, 0))).collect(),
        ..Axis::new("Effort", "%")
    }
}

fn effort_panel(over: &OverRange<'_>) -> Panel {
    let top = effort_top(over.told.study);
    // Below zero the bars of the hardest parts have their rows, which no curve of effort enters.
    let rows = over
        .told
        .study
        .setups
        .iter()
        .filter(|setup| setup.sticking.is_some());
    let extent = Extent::Exactly([-SPAN_ROOM * rows.count() as f64 * top, top]);
    let mut panel = Panel {
        levels: vec![LevelLine::new(100.0, WHOLE_STRENGTH)],
        ..Panel::new(effort_axis(top).reaching(extent), Vec::new())
    };
    for (index, setup) in over.told.study.setups.iter().enumerate() {
        let role = over.role(index);
        let points = over.effort_points(&setup.effort);
        panel.series.push(Series::new("", points, role));
        if let Some(sticking) = &setup.sticking {
            let percent = 100.0 * sticking.max_effort;
            let at = [over.place(sticking.point_range), percent.min(200.0)];
            let text = format!("{} %", rounded(percent, 0));
            panel.markers.push(Marker::new(at, text, role));
            let label = over.told.region_name(sticking);
            let span = Span::between(over.region(sticking), label, role);
            panel.spans.push(span);
        }
    }
    panel
}

/// The sticking point on the demand curve of the only setup.
fn hardest_on_demand(over: &OverRange<'_>, setup: &SetupStudy) -> Option<Marker> {
    let sticking = setup.sticking?;
    let last = (setup.values.len() - 1) as f64;
    let index = (sticking.point_range * last).round() as usize;
    let at = [
        over.place(index as f64 / last),
        over.loads(&setup.values)[index],
    ];
    let (text, detail) = over.told.hardest_label(&sticking);
    Some(Marker::new(at, text, over.role(0)).detailed(detail))
}

/// Where people find it hardest, or the hardest part of the only setup; several have bars in the panel of effort instead, since shaded
/// grounds would cover each other.
fn shades(over: &OverRange<'_>) -> Vec<Shade> {
    if let Some(people) = &over.told.study.people {
        let spread = people.hardest_between(0.8);
        let shade = spread.map(|[from, _, to]| {
            let ends = [from, to].map(|range| over.place(range));
            Shade::between(ends, HARDEST_OF_PEOPLE)
        });
        return shade.into_iter().collect();
    }
    let [only] = over.told.study.setups.as_slice() else {
        return Vec::new();
    };
    let shade = |sticking| Shade::between(over.region(&sticking), over.told.hardest_part());
    only.sticking.map(shade).into_iter().collect()
}
