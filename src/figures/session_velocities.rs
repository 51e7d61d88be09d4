//! A planned session's predicted velocity of every repetition.
//!
//! In: a plan. Out: a scene. A prediction's sets are drawn apart, because a rest lies between them.

use super::data_table::figure;
use super::sheet::{Chart, Sheet, heading};
use crate::draw::Scene;
use crate::error::{Error, FigureFault, Result};
use crate::narrative::session_figure_words::{
    MEAN_VELOCITY, bar_velocity_unit, clusters_caption, rest_of, session_words, set_number,
    simulated, stalls_at,
};
use crate::narrative::session_words::predicted_name;
use crate::narrative::trend_words::invented;
use crate::plot::{Axis, Extent, LineChart, Look, Marker, Panel, Role, Series, Shade};
use crate::session::draft::{SessionPlan, SessionPrediction};
use crate::units::System;

/// Ticks of the level axis, about.
const TICKS: u32 = 12;
/// Rests inside a set that are told apart.
const MOST_RESTS: usize = 5;
/// Half the width of a rest on an axis that counts repetitions (a drawing's measure).
const HALF_REST: f64 = 0.12;
/// Most repetitions that are points beside their line (a drawing's measure).
const MOST_POINTS: u32 = 24;
/// Stalls that are marked.
const MOST_STALLS: usize = 2;

/// Predicted velocities, one colour a way of doing the session.
///
/// **Fails** if nothing was predicted.
pub fn session_chart(plan: &SessionPlan, units: System, look: Look) -> Result<Scene> {
    velocity_lines(plan, units)?.scene(look)
}

/// The velocities of the lecture's clusters.
///
/// **Fails** if nothing was predicted.
pub fn clusters_sheet(plan: &SessionPlan, units: System) -> Result<Sheet> {
    let mut chart = velocity_lines(plan, units)?;
    chart.heading.subtitle = simulated(&invented(&chart.heading.subtitle));
    let caption = clusters_caption(&plan.draft.predictions);
    let mut sheet = Sheet::new(Chart::Lines(chart), caption);
    // One set, done in two ways: one load.
    let load = plan.working_sets().next().map(|set| set.load.total);
    let masses = [
        ("load_kg", load),
        ("one_rm_kg", Some(plan.draft.lift.one_rm)),
    ];
    for (at, (name, mass)) in (1..).zip(masses) {
        let cell = mass.map_or_else(String::new, |mass| figure(mass.as_kg()));
        sheet.data.header.insert(at, name.to_owned());
        let rows = sheet.data.rows.iter_mut();
        rows.for_each(|row| row.insert(at, cell.clone()));
    }
    Ok(sheet)
}

fn velocity_lines(plan: &SessionPlan, units: System) -> Result<LineChart> {
    let predictions = &plan.draft.predictions;
    let Some(first) = predictions.first() else {
        return Err(Error::no_answer(FigureFault::NothingPredicted));
    };
    let unit = bar_velocity_unit(units);
    let mut panel = Panel::new(Axis::new(MEAN_VELOCITY, unit.symbol), Vec::new());
    for (index, prediction) in predictions.iter().enumerate() {
        draw(prediction, Role::Series(index), units, &mut panel);
    }
    let last = predictions.iter().map(SessionPrediction::asked).max();
    Ok(LineChart {
        heading: heading(&session_words(plan, units)),
        shades: every_other_set(first)
            .into_iter()
            .chain(rests_within(first))
            .collect(),
        ..LineChart::new(repetition_axis(last.unwrap_or(1)), vec![panel])
    })
}

/// Repetitions counted through the session.
fn repetition_axis(last: u32) -> Axis {
    let range = [0.5, f64::from(last) + 0.5];
    let step = (last / TICKS).max(1) as usize;
    Axis {
        ticks: (1..=last)
            .step_by(step)
            .map(|number| (f64::from(number), number.to_string()))
            .collect(),
        ..Axis::new("Repetition", "").reaching(Extent::Exactly(range))
    }
}

/// Curves of a prediction, a set each, and where it stalls.
fn draw(prediction: &SessionPrediction, role: Role, units: System, panel: &mut Panel) {
    let unit = bar_velocity_unit(units);
    let mut before = 0;
    let mut name = predicted_name(prediction.of);
    for set in &prediction.sets {
        let repetitions = set.repetitions.iter().map(|rep| {
            let number = before + rep.number;
            [f64::from(number), unit.of(rep.mean_velocity.as_m_s())]
        });
        let told = panel.markers.iter().filter(|mark| !mark.text.is_empty());
        if let (Some(number), true) = (set.stalls_at(), told.count() < MOST_STALLS) {
            let at = [f64::from(before + number), 0.0];
            let text = stalls_at(before + number);
            panel.markers.push(Marker::new(at, text, role).crossed());
        }
        let points: Vec<[f64; 2]> = repetitions.collect();
        let mut series = Series::new(std::mem::take(&mut name), points, role);
        if prediction.asked() <= MOST_POINTS {
            let at = series.points.iter();
            let marks = at.map(|point| Marker::new(*point, "", role));
            panel.markers.extend(marks);
            series = in_groups(series, &set.groups);
        }
        panel.series.push(series);
        before += set.groups.iter().sum::<u32>();
    }
}

/// The line of a set broken at its rests, over which nothing moves; its repetitions are points.
fn in_groups(series: Series, groups: &[u32]) -> Series {
    let last = series.points.len();
    let mut from = 0;
    let pieces = groups.iter().map(|group| {
        let piece = from..(from + *group as usize).min(last);
        from = piece.end;
        piece
    });
    let pieces: Vec<_> = pieces.filter(|piece| !piece.is_empty()).collect();
    series.in_pieces(pieces)
}

/// Sets 2, 4, … as shaded stretches, where there are several.
fn every_other_set(prediction: &SessionPrediction) -> Vec<Shade> {
    let mut before = 0;
    let mut shades = Vec::new();
    for (number, set) in (1..).zip(&prediction.sets) {
        let count: u32 = set.groups.iter().sum();
        if number % 2 == 0 {
            let ends = [before, before + count].map(|at| f64::from(at) + 0.5);
            shades.push(Shade::neutral(ends, set_number(number)));
        }
        before += count;
    }
    shades
}

/// Rests between the groups of the only set as narrow stretches: they are what keeps it fast. Sets side by side have no room.
fn rests_within(prediction: &SessionPrediction) -> Vec<Shade> {
    let [set] = prediction.sets.as_slice() else {
        return Vec::new();
    };
    let mut before = 0;
    let ends: Vec<u32> = set
        .groups
        .iter()
        .map(|group| {
            before += group;
            before
        })
        .collect();
    let between = &ends[..ends.len().saturating_sub(1)];
    if between.len() > MOST_RESTS {
        return Vec::new();
    }
    let rest = |end: &u32| {
        let at = f64::from(*end) + 0.5;
        Shade::neutral([at - HALF_REST, at + HALF_REST], rest_of(set.rest_within))
    };
    between.iter().map(rest).collect()
}
