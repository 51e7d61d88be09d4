//! The first three setups of a ranking against plain weight: effort over the range.
//!
//! In: a [`PickAnswer`]. Out: a scene whose title says what the first one gains, and where it was hardest.

use super::strength_curve::{across, level_axis, points, verb};
use crate::draw::Scene;
use crate::error::Result;
use crate::narrative::places::sides_in_words;
use crate::narrative::{added_name, short_name};
use crate::plot::{Axis, Extent, Heading, Labels, LineChart, Look, Panel, Role, Series, Span};
use crate::study::{PickAnswer, Picked};
use crate::units::{System, rounded};

/// Setups that are drawn beside plain weight.
const SHOWN: usize = 3;

/// The figure of a ranking.
///
/// **Fails** never for a pick that has an answer.
pub fn setup_ranking(pick: &PickAnswer, units: System, look: Look) -> Result<Scene> {
    LineChart {
        heading: Heading {
            title: ranking_title(pick, units),
            subtitle: subtitle(pick, units),
            footnote: footnote(pick),
            description: ranking_description(pick, units),
            ..super::phrases()
        },
        x: level_axis(&pick.study, units),
        panels: vec![panel(pick, units)],
        labels: Labels::Column,
        ..LineChart::default()
    }
    .scene(look)
}

fn shown(pick: &PickAnswer) -> &[Picked] {
    &pick.ranked[..pick.ranked.len().min(SHOWN)]
}

fn short(pick: &PickAnswer, picked: &Picked, units: System) -> String {
    short_name(&picked.loaded.setup, &pick.study.range.carrier, units)
}

fn panel(pick: &PickAnswer, units: System) -> Panel {
    let curve = |picked: &Picked, name: String, role: Role| {
        let percent: Vec<f64> = picked
            .study
            .effort
            .iter()
            .map(|e| 100.0 * e.clamp(-0.5, 2.0))
            .collect();
        Series {
            name,
            points: points(&pick.study, units, &percent),
            role,
        }
    };
    let mut series: Vec<Series> = shown(pick)
        .iter()
        .enumerate()
        .map(|(index, picked)| {
            let name = format!("{}: {}", index + 1, short(pick, picked, units));
            curve(picked, name, Role::Series(index + 1))
        })
        .collect();
    if let Some(plain) = compared(pick) {
        series.push(curve(
            plain,
            format!("{}, plain", units.mass(plain.loaded.loading.total)),
            Role::Reference,
        ));
    }
    Panel {
        axis: Axis::new("Effort", "%").reaching(Extent::FromZero),
        series,
        spans: spans(pick, units),
        ..Panel::default()
    }
}

/// Plain weight, unless that is number 1 itself.
fn compared(pick: &PickAnswer) -> Option<&Picked> {
    pick.plain
        .as_ref()
        .filter(|_| pick.ranked[0].loaded.hung > 0)
}

/// The sticking regions before and after: of plain weight and of the first setup.
fn spans(pick: &PickAnswer, units: System) -> Vec<Span> {
    let first = pick
        .ranked
        .first()
        .map(|first| (first, "Sticking region, number 1", Role::Series(1)));
    let plain =
        compared(pick).map(|plain| (plain, "Sticking region, plain weight", Role::Reference));
    plain
        .into_iter()
        .chain(first)
        .filter_map(|(picked, label, role)| {
            let sticking = picked.study.sticking?;
            let ends = [sticking.from_range, sticking.to_range]
                .map(|range| across(&pick.study, units, range));
            Some(Span {
                from: ends[0].min(ends[1]),
                to: ends[0].max(ends[1]),
                label: label.to_owned(),
                role,
            })
        })
        .collect()
}

/// The finding in one sentence.
#[must_use]
pub fn ranking_title(pick: &PickAnswer, units: System) -> String {
    let movement = &pick.study.movement_title;
    let first = &pick.ranked[0];
    if first.loaded.hung == 0 {
        return format!("{movement}: no band or chain of this gym beats plain weight");
    }
    let added = added_name(&first.loaded.setup, units).unwrap_or_else(|| short(pick, first, units));
    if first.loaded.flattening_percent < 0.0 {
        return format!(
            "{movement}: {added} {} effort less even by {} %",
            verb(&added, "make"),
            rounded(-first.loaded.flattening_percent, 0)
        );
    }
    format!(
        "{movement}: {added} {} effort by {} %",
        verb(&added, "flatten"),
        rounded(first.loaded.flattening_percent, 0)
    )
}

fn subtitle(pick: &PickAnswer, units: System) -> String {
    let first = &pick.ranked[0];
    let loads: Vec<String> = first
        .loaded
        .loads
        .iter()
        .map(|load| units.mass(*load))
        .collect();
    format!(
        "{}, {}: number 1 loads {} at the start, {} in the middle, {} at the end",
        pick.study.lifter_title, pick.gym_title, loads[0], loads[1], loads[2]
    )
}

fn footnote(pick: &PickAnswer) -> String {
    format!(
        "Every setup is loaded so that its hardest place asks for at most {} % of what the lifter can hold. {}",
        rounded(100.0 * pick.wish.effort, 0),
        sides_in_words(&pick.study)
    )
}

/// What the figure shows, for those who cannot see it.
#[must_use]
pub fn ranking_description(pick: &PickAnswer, units: System) -> String {
    let mut words = format!(
        "Effort over {} in the {} for {}, with plain weight and the best setups of {}.",
        pick.study.axis,
        pick.study.movement_title.to_lowercase(),
        pick.study.lifter_title,
        pick.gym_title
    );
    for (index, picked) in shown(pick).iter().enumerate() {
        words += &format!(
            " Number {}, {}, flattens effort by {} %.",
            index + 1,
            short(pick, picked, units),
            rounded(picked.loaded.flattening_percent, 0)
        );
    }
    words
}
