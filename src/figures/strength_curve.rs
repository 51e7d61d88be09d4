//! The strength curve of a movement with one or several setups over it, and the sticking region of each.
//!
//! In: a [`Study`]. Out: a chart whose title says the finding; effort in a second panel where there is
//! a load.

use super::body::stick_figure;
use crate::draw::Scene;
use crate::error::Result;
use crate::movement::Measure;
use crate::narrative::places::{place_in_words, sides_in_words};
use crate::narrative::prose::capital;
use crate::narrative::{added_name, name_of};
use crate::plot::{
    Axis, Extent, Heading, LevelLine, LineChart, Look, Marker, Panel, Role, Series, Shade, Span,
    StripPose,
};
use crate::study::{SetupStudy, Study};
use crate::units::{System, rounded};

/// The chart of a study.
///
/// **Fails** never for a study from the library.
pub fn strength_curve(study: &Study, units: System, look: Look) -> Result<Scene> {
    chart(study, units).scene(look)
}

pub(crate) fn chart(study: &Study, units: System) -> LineChart {
    let mut panels = vec![load_panel(study, units)];
    if study.setups.len() > 1 {
        panels.push(effort_panel(study, units));
    }
    LineChart {
        heading: Heading {
            title: title(study, units),
            subtitle: subtitle(study, units),
            footnote: footnote(study),
            description: description(study, units),
            ..super::phrases()
        },
        x: level_axis(study, units),
        panels,
        shades: shades(study, units),
        poses: poses(study, units),
        ..LineChart::default()
    }
}

/// A place of the range on the level axis: cm or inches of travel, degrees for a sweep.
pub(crate) fn across(study: &Study, units: System, range: f64) -> f64 {
    let value = study.axis_value(range);
    match (study.range.measure, units) {
        (Measure::Force, System::Us) => value / 2.54,
        _ => value,
    }
}

/// The level axis: what the range is, with its unit.
pub(crate) fn level_axis(study: &Study, units: System) -> Axis {
    let unit = match (study.range.measure, units) {
        (Measure::Torque, _) => "deg",
        (Measure::Force, System::Metric) => "cm",
        (Measure::Force, System::Us) => "in",
    };
    let mut words = study.axis.clone();
    if let Some(first) = words.get_mut(0..1) {
        first.make_ascii_uppercase();
    }
    Axis::new(words, unit).reaching(Extent::Data)
}

/// Points of a curve over the level axis.
pub(crate) fn points(study: &Study, units: System, values: &[f64]) -> Vec<[f64; 2]> {
    study
        .range
        .poses
        .iter()
        .zip(values)
        .map(|(pose, value)| [across(study, units, pose.load.range), *value])
        .collect()
}

/// Capacity or demand in the unit of the upright axis.
pub(crate) fn shown(study: &Study, units: System, values: &[f64]) -> Vec<f64> {
    let factor = match (study.range.measure, units) {
        (Measure::Force, System::Us) => 1.0 / crate::units::Force::from_lbf(1.0).as_n(),
        _ => 1.0,
    };
    values.iter().map(|value| value * factor).collect()
}

fn load_panel(study: &Study, units: System) -> Panel {
    let capacity = shown(study, units, &study.capacity.values());
    let mut series = vec![Series {
        name: "Capacity".to_owned(),
        points: points(study, units, &capacity),
        role: Role::CAPACITY,
    }];
    for (index, setup) in study.setups.iter().enumerate() {
        series.push(Series {
            name: name(study, setup, units),
            points: points(study, units, &shown(study, units, &setup.values)),
            role: setup_role(index),
        });
    }
    let demands = study
        .setups
        .iter()
        .flat_map(|s| shown(study, units, &s.values));
    let top = ceiling(&capacity, demands.fold(0.0, f64::max));
    Panel {
        axis: force_axis(study, units).reaching(top),
        series,
        markers: match study.setups.as_slice() {
            [one] => hardest_on_demand(study, one, units).into_iter().collect(),
            _ => Vec::new(),
        },
        ..Panel::default()
    }
}

/// The upright axis of capacity and demand.
pub(crate) fn force_axis(study: &Study, units: System) -> Axis {
    let (quantity, unit) = match (study.range.measure, units) {
        (Measure::Force, System::Metric) => ("Force".to_owned(), "N"),
        (Measure::Force, System::Us) => ("Force".to_owned(), "lbf"),
        (Measure::Torque, _) => (format!("Torque at the {}", study.joint(0)), "N·m"),
    };
    Axis::new(quantity, unit)
}

/// Where the upright axis ends: at the data, unless a curve climbs out of what matters.
///
/// What matters is the demand and the weaker half of the capacity; a straight limb bears almost
/// anything, and an axis that showed it would flatten the rest.
pub(crate) fn ceiling(capacity: &[f64], demand: f64) -> Extent {
    let mut sorted = capacity.to_vec();
    sorted.sort_by(f64::total_cmp);
    let middle = sorted[sorted.len() / 2];
    let highest = sorted[sorted.len() - 1];
    let focus = 1.6 * middle.max(demand);
    if highest > 1.15 * focus {
        Extent::FromZeroTo(focus)
    } else {
        Extent::FromZero
    }
}

/// Where the axis of effort ends, %: above every sticking point and the whole strength, with room for the
/// figures over them.
fn effort_top(study: &Study) -> f64 {
    let setups = study.setups.iter().filter_map(|setup| setup.sticking);
    let greatest = setups.map(|s| 100.0 * s.max_effort).fold(100.0, f64::max);
    (greatest.min(200.0) * 1.2 / 25.0).ceil() * 25.0
}

fn effort_panel(study: &Study, units: System) -> Panel {
    let mut panel = Panel {
        axis: Axis::new("Effort", "%").reaching(Extent::Exactly([0.0, effort_top(study)])),
        levels: vec![LevelLine {
            at: 100.0,
            label: "all the lifter has".to_owned(),
        }],
        ..Panel::default()
    };
    for (index, setup) in study.setups.iter().enumerate() {
        let percent: Vec<f64> = setup
            .effort
            .iter()
            .map(|e| 100.0 * e.clamp(-0.5, 2.0))
            .collect();
        panel.series.push(Series {
            name: String::new(),
            points: points(study, units, &percent),
            role: setup_role(index),
        });
        if let Some(sticking) = setup.sticking {
            panel.markers.push(Marker {
                at: [
                    across(study, units, sticking.point_range),
                    100.0 * sticking.max_effort.min(2.0),
                ],
                text: format!("{} %", rounded(100.0 * sticking.max_effort, 0)),
                detail: String::new(),
                role: setup_role(index),
            });
            let ends =
                [sticking.from_range, sticking.to_range].map(|range| across(study, units, range));
            panel.spans.push(Span {
                from: ends[0].min(ends[1]),
                to: ends[0].max(ends[1]),
                label: format!("Sticking region, {}", name(study, setup, units)),
                role: setup_role(index),
            });
        }
    }
    panel
}

/// The sticking point on the demand curve of the only setup.
fn hardest_on_demand(study: &Study, setup: &SetupStudy, units: System) -> Option<Marker> {
    let sticking = setup.sticking?;
    let last = (setup.values.len() - 1) as f64;
    let index = (sticking.point_range * last).round() as usize;
    let joint = setup.limiting.map_or("limb", |j| study.joint(j));
    Some(Marker {
        at: [
            across(study, units, index as f64 / last),
            shown(study, units, &setup.values)[index],
        ],
        text: format!("{} % effort", rounded(100.0 * sticking.max_effort, 0)),
        detail: format!(
            "{}; the {joint} gives way first",
            place_in_words(study, sticking.point_range, units)
        ),
        role: setup_role(0),
    })
}

fn setup_role(index: usize) -> Role {
    Role::Series(index + 1)
}

/// The sticking region of the only setup; several have bars in the panel of effort instead, since shaded
/// grounds would cover each other.
fn shades(study: &Study, units: System) -> Vec<Shade> {
    let [only] = study.setups.as_slice() else {
        return Vec::new();
    };
    let shade = only.sticking.map(|sticking| {
        let ends =
            [sticking.from_range, sticking.to_range].map(|range| across(study, units, range));
        Shade {
            from: ends[0].min(ends[1]),
            to: ends[0].max(ends[1]),
            label: "Sticking region".to_owned(),
        }
    });
    shade.into_iter().collect()
}

/// What a setup is called in the figure.
fn name(study: &Study, setup: &SetupStudy, units: System) -> String {
    name_of(study, setup, units)
}

fn poses(study: &Study, units: System) -> Vec<StripPose> {
    let hardest = study.setups.first().and_then(|s| s.sticking);
    poses_at(study, units, hardest.map(|s| s.point_range))
}

/// Start, hardest place (or the middle) and end of the range as poses.
pub(crate) fn poses_at(study: &Study, units: System, hardest: Option<f64>) -> Vec<StripPose> {
    let last = study.range.poses.len() - 1;
    let pose = |range: f64, caption: &str| {
        let index = (range * last as f64).round() as usize;
        StripPose {
            at: across(study, units, range),
            caption: caption.to_owned(),
            figure: stick_figure(&study.range.poses[index], study.range.carrier),
        }
    };
    let mut poses = vec![pose(0.0, "start")];
    if let Some(place) = hardest.filter(|place| *place > 0.1 && *place < 0.9) {
        poses.push(pose(place, "hardest"));
    } else {
        poses.push(pose(0.5, "middle"));
    }
    poses.push(pose(1.0, "end"));
    poses
}

/// The finding in one sentence.
#[must_use]
pub fn title(study: &Study, units: System) -> String {
    let name = &study.movement_title;
    match study.setups.as_slice() {
        [] => format!("{name}: {} strength curve", article(study)),
        [one] => match one.sticking {
            None => format!("{name}: this load asks for nothing"),
            Some(s) if s.max_effort >= 2.0 => format!(
                "{name}: {} times what can be held {}",
                rounded(s.max_effort, 1),
                place_in_words(study, s.point_range, units)
            ),
            Some(s) if s.max_effort > 1.0 => format!(
                "{name}: too heavy by {} % {}",
                rounded(100.0 * (s.max_effort - 1.0), 0),
                place_in_words(study, s.point_range, units)
            ),
            Some(s) => format!(
                "{name}: hardest {}",
                place_in_words(study, s.point_range, units)
            ),
        },
        [first, others @ ..] => comparison(study, units, first, others),
    }
}

fn comparison(study: &Study, units: System, first: &SetupStudy, others: &[SetupStudy]) -> String {
    let movement = &study.movement_title;
    let base = first.flattening_percent.unwrap_or(0.0);
    let best = others
        .iter()
        .filter_map(|s| Some((s.flattening_percent? - base, s)))
        .max_by(|a, b| a.0.total_cmp(&b.0));
    let than = if added_name(&first.demand.setup, units).is_some() {
        format!(" more than {}", name(study, first, units))
    } else {
        String::new()
    };
    let what = |setup: &SetupStudy| {
        let added = added_name(&setup.demand.setup, units);
        added.unwrap_or_else(|| name(study, setup, units))
    };
    match best {
        Some((gain, setup)) if gain > 0.5 => format!(
            "{movement}: {} {} effort by {} %{than}",
            what(setup),
            verb(&what(setup), "flatten"),
            rounded(gain, 0)
        ),
        Some((gain, setup)) if gain < -0.5 => format!(
            "{movement}: {} {} effort less even, by {} %",
            what(setup),
            verb(&what(setup), "make"),
            rounded(-gain, 0)
        ),
        _ => format!("{movement}: the setups load the range alike"),
    }
}

/// The verb for one thing or several.
pub(crate) fn verb(subject: &str, verb: &str) -> String {
    let is_many = subject.contains(" and ")
        || ["two", "three", "four"]
            .iter()
            .any(|n| subject.starts_with(n));
    if is_many {
        verb.to_owned()
    } else {
        format!("{verb}s")
    }
}

fn article(study: &Study) -> String {
    let word = study.class.shape.word();
    if word.starts_with(['a', 'e', 'i', 'o', 'u']) {
        format!("an {word}")
    } else {
        format!("a {word}")
    }
}

fn subtitle(study: &Study, units: System) -> String {
    let mut words = study.lifter_title.clone();
    if let [one] = study.setups.as_slice() {
        words += &format!(", {}", name(study, one, units));
    }
    words += &format!(
        ". {} curve: start {} %, end {} % of its peak",
        capital(study.class.shape.word()),
        rounded(100.0 * study.class.start_ratio, 0),
        rounded(100.0 * study.class.end_ratio, 0)
    );
    words
}

fn footnote(study: &Study) -> String {
    let sides = sides_in_words(study);
    format!("{sides} Isometric model; sticking region: effort within 5 % of its greatest.")
}

/// What the figure shows, for those who cannot see it.
#[must_use]
pub fn description(study: &Study, units: System) -> String {
    let mut words = format!(
        "{} of the {}: capacity of {} over {}.",
        capital(study.class.shape.word()),
        study.movement_title.to_lowercase() + " strength curve",
        study.lifter_title,
        study.axis
    );
    for setup in &study.setups {
        if let Some(s) = setup.sticking {
            words += &format!(
                " With {}, the greatest effort is {} % {}, and the sticking region runs from {} to {}.",
                name(study, setup, units),
                rounded(100.0 * s.max_effort, 0),
                place_in_words(study, s.point_range, units),
                place_in_words(study, s.from_range, units),
                place_in_words(study, s.to_range, units),
            );
        }
        if let Some(percent) = setup.flattening_percent.filter(|_| study.setups.len() > 1) {
            words += &format!(
                " It flattens effort by {} % against plain weight.",
                rounded(percent, 0)
            );
        }
    }
    words
}
