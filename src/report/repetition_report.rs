//! One repetition as text, CSV and JSON; alone, or beside plain weight.
//!
//! In: a [`RepStudy`] or a [`VersusPlain`]. Out: text; CSV and JSON in SI, the unit in every key.

use super::json::pretty;
use super::maximum_report::MeanVelocities;
use super::summary::{CurveSummary, summary};
use super::tidy_table::{Cells, TidyTable};
use super::warnings::{WarningRow, warnings};
use crate::movement::{Handover, Measure};
use crate::narrative::cautions::caution_in_words;
use crate::narrative::failure_words::bands_gone_caution;
use crate::narrative::faults::session_told::body_lowered_only;
use crate::narrative::fibre_words::fibre_warning_lines;
use crate::narrative::places::sides_in_words;
use crate::narrative::prose::capital;
use crate::narrative::repetition_words::{lift_figures, rep_sentences};
use crate::narrative::versus_plain_words::{setup_name, versus_sentences};
use crate::rep::{LiftFigures, Mark, RepEnd, RepSample, StickingInMotion};
use crate::session::session_cautions::of_overload;
use crate::study::{RepStudy, VersusPlain};
use crate::units::System;
use serde::Serialize;

/// A repetition as text: what happened, the figures of the lift.
#[must_use]
pub fn repetition_text(rep: &RepStudy, units: System) -> String {
    let still = &rep.still;
    let mut lines = vec![
        format!(
            "{}, {}, {}",
            still.movement_title,
            still.lifter_title,
            setup_name(rep, units)
        ),
        sides_in_words(still).to_owned(),
        String::new(),
    ];
    lines.extend(rep_sentences(rep, units));
    if rep.trace.lift.is_some() {
        lines.push(String::new());
    }
    lines.extend(lift_figures(rep, units));
    lines.extend(fibre_warning_lines(still));
    lines.extend(overload_cautions(rep, units).map(|words| format!("caution: {words}")));
    lines.join("\n") + "\n"
}

/// What goes with more than 1RM that helpers take at the bottom, and with bands that leave more than is lifted when they go;
/// nothing with less.
fn overload_cautions(rep: &RepStudy, units: System) -> impl Iterator<Item = String> {
    let cautions = match rep.is_overload() {
        true => of_overload(&rep.handling),
        false => Vec::new(),
    };
    let added = rep.is_overload() && matches!(rep.handling.overload, Handover::BodyOnly { .. });
    let added = added.then(|| {
        let words = body_lowered_only(&rep.still.movement_title.to_lowercase());
        format!("{}.", capital(&words))
    });
    let words = cautions.into_iter();
    let words = words.map(move |caution| caution_in_words(&caution, units));
    let gone = rep.bands_gone.as_ref();
    let gone = gone.map(|gone| bands_gone_caution(gone, units));
    words.chain(added).chain(gone)
}

/// A repetition beside plain weight as text.
#[must_use]
pub fn versus_text(both: &VersusPlain, units: System) -> String {
    let still = &both.with.still;
    let mut lines = vec![format!("{}, {}", still.movement_title, still.lifter_title)];
    lines.extend(versus_sentences(both, units));
    lines.extend(overload_cautions(&both.with, units).map(|words| format!("caution: {words}")));
    lines.join("\n") + "\n"
}

#[derive(Serialize)]
struct VersusJson<'a> {
    hardest_effort: f64,
    with: RepetitionJson<'a>,
    plain: RepetitionJson<'a>,
    sentences: Vec<String>,
}

#[derive(Serialize)]
struct RepetitionJson<'a> {
    summary: RepetitionSummary<'a>,
    warnings: Vec<WarningRow>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    cautions: Vec<String>,
    samples: Vec<MomentRow>,
}

#[derive(Serialize)]
struct RepetitionSummary<'a> {
    movement: &'a str,
    lifter: &'a str,
    setup: String,
    load_kg: f64,
    one_rm_kg: Option<f64>,
    outcome: &'static str,
    stops_at_range: Option<f64>,
    sticking_in_motion: Option<StickingRow>,
    lift: Option<LiftRow>,
    sticking_still: CurveSummary,
}

#[derive(Serialize)]
struct StickingRow {
    first_peak: MarkRow,
    minimum: MarkRow,
    second_peak: Option<MarkRow>,
    duration_s: f64,
}

#[derive(Serialize)]
struct MarkRow {
    time_s: f64,
    range: f64,
    position_m: Option<f64>,
    angle_deg: f64,
    #[serde(flatten)]
    velocity: VelocityCell,
}

#[derive(Serialize)]
struct LiftRow {
    time_s: f64,
    #[serde(flatten)]
    velocities: MeanVelocities,
    #[serde(flatten)]
    peak_velocity: PeakVelocity,
    mean_power_w: f64,
    peak_power_w: f64,
    peak_force_over_demand: f64,
    deceleration_share: f64,
}

/// The greatest velocity under the key that names its unit.
#[derive(Serialize)]
enum PeakVelocity {
    #[serde(rename = "peak_velocity_m_s")]
    Way(f64),
    #[serde(rename = "peak_velocity_rad_s")]
    Joint(f64),
}

#[derive(Serialize)]
struct MomentRow {
    time_s: f64,
    phase: &'static str,
    range: f64,
    position_m: Option<f64>,
    angle_deg: f64,
    #[serde(flatten)]
    velocity: VelocityCell,
    #[serde(flatten)]
    effects: EffectCells,
    effort: f64,
    activation: f64,
    limiting_joint: &'static str,
}

/// A velocity under the key that names its unit.
#[derive(Serialize)]
enum VelocityCell {
    #[serde(rename = "velocity_m_s")]
    Way(f64),
    #[serde(rename = "velocity_rad_s")]
    Joint(f64),
}

/// Acceleration, force and demand under the keys that name their units.
#[derive(Serialize)]
#[serde(untagged)]
enum EffectCells {
    Way {
        acceleration_m_s2: f64,
        force_n: f64,
        demand_n: f64,
    },
    Joint {
        acceleration_rad_s2: f64,
        torque_nm: f64,
        demand_nm: f64,
    },
}

/// A repetition as JSON.
#[must_use]
pub fn repetition_json(rep: &RepStudy) -> String {
    pretty(&repetition(rep))
}

/// A repetition beside plain weight as JSON; its sentences in the units asked for.
#[must_use]
pub fn versus_json(both: &VersusPlain, units: System) -> String {
    pretty(&VersusJson {
        hardest_effort: both.effort,
        with: repetition(&both.with),
        plain: repetition(&both.plain),
        sentences: versus_sentences(both, units),
    })
}

fn repetition(rep: &RepStudy) -> RepetitionJson<'_> {
    let (still, trace) = (&rep.still, &rep.trace);
    let (outcome, stops_at_range) = outcome(trace.outcome);
    let measure = trace.measure;
    RepetitionJson {
        warnings: warnings(still),
        cautions: overload_cautions(rep, System::Metric).collect(),
        summary: RepetitionSummary {
            movement: &still.movement_name,
            lifter: &still.lifter_name,
            setup: still.told(System::Metric).asked_name(&still.setups[0]),
            load_kg: rep.load.as_kg(),
            one_rm_kg: rep.one_rm.map(|max| max.load.as_kg()),
            outcome,
            stops_at_range,
            sticking_in_motion: trace.sticking.map(|region| sticking_row(&region, measure)),
            lift: trace.lift.map(|lift| lift_row(&lift, measure)),
            sticking_still: summary(still, still.setups.first()),
        },
        samples: trace
            .samples
            .iter()
            .map(|sample| moment_row(sample, measure))
            .collect(),
    }
}

/// How a repetition ended, and where if it did so on the way.
const fn outcome(outcome: RepEnd) -> (&'static str, Option<f64>) {
    match outcome {
        RepEnd::Lockout => ("lockout", None),
        RepEnd::HandedOver => ("handed_over", None),
        RepEnd::Stalled { range, .. } => ("stalled", Some(range)),
        RepEnd::NotHeld { range, .. } => ("not_held", Some(range)),
        RepEnd::LostInLowering { range, .. } => ("lost_in_lowering", Some(range)),
    }
}

fn sticking_row(region: &StickingInMotion, measure: Measure) -> StickingRow {
    StickingRow {
        first_peak: mark_row(region.first_peak, measure),
        minimum: mark_row(region.minimum, measure),
        second_peak: region.second_peak.map(|mark| mark_row(mark, measure)),
        duration_s: region.duration_s(),
    }
}

fn mark_row(mark: Mark, measure: Measure) -> MarkRow {
    MarkRow {
        time_s: mark.time_s,
        range: mark.range,
        position_m: way(mark.position, measure),
        angle_deg: mark.angle_rad.to_degrees(),
        velocity: velocity(mark.velocity, measure),
    }
}

/// The way of the load; none of a sweep.
fn way(position: f64, measure: Measure) -> Option<f64> {
    (measure == Measure::Force).then_some(position)
}

const fn velocity(velocity: f64, measure: Measure) -> VelocityCell {
    match measure {
        Measure::Force => VelocityCell::Way(velocity),
        Measure::Torque => VelocityCell::Joint(velocity),
    }
}

fn lift_row(lift: &LiftFigures, measure: Measure) -> LiftRow {
    LiftRow {
        time_s: lift.time_s,
        velocities: MeanVelocities::of(
            [lift.mean_velocity, lift.mean_propulsive_velocity],
            measure,
        ),
        peak_velocity: match measure {
            Measure::Force => PeakVelocity::Way(lift.peak_velocity),
            Measure::Torque => PeakVelocity::Joint(lift.peak_velocity),
        },
        mean_power_w: lift.mean_power_w,
        peak_power_w: lift.peak_power_w,
        peak_force_over_demand: lift.peak_force_over_demand,
        deceleration_share: lift.deceleration_share,
    }
}

fn moment_row(sample: &RepSample, measure: Measure) -> MomentRow {
    MomentRow {
        time_s: sample.time_s,
        phase: sample.phase.word(),
        range: sample.range,
        position_m: way(sample.position, measure),
        angle_deg: sample.angle_rad.to_degrees(),
        velocity: velocity(sample.velocity, measure),
        effects: match measure {
            Measure::Force => EffectCells::Way {
                acceleration_m_s2: sample.acceleration,
                force_n: sample.force,
                demand_n: sample.demand,
            },
            Measure::Torque => EffectCells::Joint {
                acceleration_rad_s2: sample.acceleration,
                torque_nm: sample.force,
                demand_nm: sample.demand,
            },
        },
        effort: sample.effort,
        activation: sample.activation,
        limiting_joint: sample.limiting.joint().name(),
    }
}

/// A repetition as a table: a row a moment.
#[must_use]
pub fn repetition_data(rep: &RepStudy) -> TidyTable {
    let samples = rep.trace.samples.iter();
    TidyTable::of(samples.map(|sample| Cells::of(&moment_row(sample, rep.trace.measure))))
}

#[derive(Serialize)]
struct OneOfTwo {
    compared: &'static str,
}

/// A repetition beside plain weight as a table: a row a moment, `compared` tells which of the two.
#[must_use]
pub fn versus_data(both: &VersusPlain) -> TidyTable {
    let reps = [("with", &both.with), ("plain", &both.plain)];
    TidyTable::of(reps.into_iter().flat_map(|(compared, rep)| {
        let named = Cells::of(&OneOfTwo { compared });
        let samples = rep.trace.samples.iter();
        let row = |sample| named.clone().and(&moment_row(sample, rep.trace.measure));
        samples.map(row).collect::<Vec<_>>()
    }))
}
