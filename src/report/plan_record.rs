//! Planned sessions as JSON: one struct a level, keys in their order.
//!
//! In: the answer of a plan. Out: [`PlanRecord`], to be written as JSON.

use super::plan_text::{plan_cautions, set_kind};
use super::tidy_table::{Cells, DrawnColumns, TidyTable};
use crate::narrative::faults::reasons;
use crate::narrative::going_on_words::progression;
use crate::narrative::hung_pieces::setup_lines;
use crate::narrative::loads::loading_in_words;
use crate::narrative::plan_words::least_by_joint;
use crate::narrative::session_remarks::remark;
use crate::narrative::session_words::{
    basis, frequency, intent, joint_name, level_name, one_rm_source, plan_note, predicted_name,
    session_name, set_note,
};
use crate::narrative::source_words::source_in_words;
use crate::narrative::spotter_words::spotters_place;
use crate::session::draft::{Draft, LoweringPrediction, SessionPrediction};
use crate::session::planned_set::PlannedSet;
use crate::session::prediction::RepPrediction;
use crate::session::strength::Strength;
use crate::study::{PlanAnswer, PlannedSession};
use crate::units::System;
use serde::{Serialize, Serializer};

/// Everything that `plan` answers.
#[derive(Debug, Serialize)]
pub struct PlanRecord<'a> {
    sessions: Vec<SessionRecord<'a>>,
    refused: Vec<RefusedRecord>,
    notes: Vec<String>,
}

/// A method that was not planned.
#[derive(Debug, Serialize)]
struct RefusedRecord {
    method: &'static str,
    reason: String,
}

/// One session.
#[derive(Debug, Serialize)]
struct SessionRecord<'a> {
    session: String,
    date: Option<String>,
    movement: &'a str,
    method: &'static str,
    level: &'static str,
    one_rm_kg: f64,
    one_rm_from: String,
    body_kg: f64,
    time_s: f64,
    volume_kg: f64,
    frequency: String,
    progression: String,
    setup: Vec<String>,
    sets: Vec<SetRecord<'a>>,
    predictions: Vec<PredictionRecord>,
    lowerings: Vec<LoweringRecord>,
    remarks: Vec<String>,
    sources: Vec<BasisRecord<'a>>,
    spotters: Option<u32>,
    spotters_place: Option<&'static str>,
    cautions: Vec<String>,
}

/// One set.
#[derive(Debug, Serialize)]
struct SetRecord<'a> {
    set: usize,
    kind: &'static str,
    load_kg: f64,
    share_of_one_rm: f64,
    hardest_effort: Option<f64>,
    reserve: u32,
    on_the_bar: String,
    groups: &'a [u32],
    repetitions: u32,
    rest_within_s: f64,
    rest_after_s: f64,
    lowering_s: f64,
    to_failure_by_chart: Option<f64>,
    to_failure_by_model: Option<u32>,
    intent: String,
    notes: Vec<String>,
}

/// Predicted sets.
#[derive(Debug, Serialize)]
struct PredictionRecord {
    name: &'static str,
    completed: u32,
    mean_velocity_m_s: f64,
    repetitions: Vec<RepRecord>,
    #[serde(serialize_with = "by_key")]
    least_capacity_share: Vec<(&'static str, f64)>,
}

/// One predicted repetition.
#[derive(Debug, Serialize)]
struct RepRecord {
    set: usize,
    number: u32,
    group: u32,
    completed: bool,
    mean_velocity_m_s: f64,
    sticking_velocity_m_s: Option<f64>,
    capacity_share: f64,
}

/// One lowering of more than 1RM.
#[derive(Debug, Serialize)]
struct LoweringRecord {
    set: u32,
    number: u32,
    effort: f64,
    reserve: f64,
    speed_m_s: Option<f64>,
}

/// What a number rests on.
#[derive(Debug, Serialize)]
struct BasisRecord<'a> {
    what: &'a str,
    source: String,
}

fn by_key<S: Serializer>(
    entries: &[(&'static str, f64)],
    serializer: S,
) -> Result<S::Ok, S::Error> {
    serializer.collect_map(entries.iter().copied())
}

impl<'a> PlanRecord<'a> {
    /// Sessions with what was refused and what was taken for granted, cautions with each.
    #[must_use]
    pub fn of(answer: &'a PlanAnswer, units: System) -> Self {
        let refused = answer.refused.iter();
        let sessions = answer.sessions.iter();
        Self {
            sessions: sessions
                .map(|session| SessionRecord::of(session, units))
                .collect(),
            refused: refused
                .map(|(method, fault)| RefusedRecord {
                    method: method.name(),
                    reason: reasons(fault, units),
                })
                .collect(),
            notes: answer
                .notes
                .iter()
                .map(|note| plan_note(note, units))
                .collect(),
        }
    }
}

impl<'a> SessionRecord<'a> {
    fn of(session: &'a PlannedSession, units: System) -> Self {
        let (plan, draft) = (&session.plan, &session.plan.draft);
        let lift = &draft.lift;
        Self {
            session: session_name(session.name),
            date: session.name.date().map(|date| date.to_string()),
            movement: &lift.movement,
            method: draft.method.name(),
            level: level_name(lift.level()),
            one_rm_kg: lift.one_rm.as_kg(),
            one_rm_from: one_rm_source(&lift.one_rm_from, units),
            body_kg: lift.body.as_kg(),
            time_s: plan.time().as_s(),
            volume_kg: plan.volume_kg(),
            frequency: frequency(draft.frequency),
            progression: progression(&draft.progression, units),
            setup: setup_lines(draft.setup.as_ref(), units),
            sets: draft
                .sets
                .iter()
                .enumerate()
                .map(|(index, set)| SetRecord::of((index + 1, set), &lift.strength(), units))
                .collect(),
            predictions: draft.predictions.iter().map(PredictionRecord::of).collect(),
            lowerings: draft.lowerings.iter().map(LoweringRecord::of).collect(),
            remarks: draft
                .remarks
                .iter()
                .map(|fact| remark(fact, units))
                .collect(),
            sources: sources(draft),
            spotters: plan.spotting().map(|spotting| spotting.spotters),
            spotters_place: plan
                .spotting()
                .map(|spotting| spotters_place(spotting.stand)),
            cautions: plan_cautions(std::slice::from_ref(session), units),
        }
    }
}

/// The sets of all sessions as a table: a row a set, the session's name before it.
#[must_use]
pub fn plan_data(answer: &PlanAnswer, units: System) -> TidyTable {
    let sessions = answer.sessions.iter();
    let rows = sessions.flat_map(|session| {
        let record = SessionRecord::of(session, units);
        let named = Cells::of(&OfSession {
            session: &record.session,
            date: record.date.as_deref(),
            movement: record.movement,
            method: record.method,
        });
        let sets = record.sets.iter();
        sets.map(|set| named.clone().and(set)).collect::<Vec<_>>()
    });
    TidyTable::of(rows).drawn(DrawnColumns {
        along: "session",
        values: "load_kg",
        as_curve: false,
    })
}

#[derive(Serialize)]
struct OfSession<'a> {
    session: &'a str,
    date: Option<&'a str>,
    movement: &'a str,
    method: &'static str,
}

fn sources(draft: &Draft) -> Vec<BasisRecord<'_>> {
    let sources = draft.sources.iter();
    sources
        .map(|(what, source)| BasisRecord {
            what: basis(what),
            source: source_in_words(source),
        })
        .collect()
}

impl<'a> SetRecord<'a> {
    fn of((number, set): (usize, &'a PlannedSet), strength: &Strength, units: System) -> Self {
        Self {
            set: number,
            kind: set_kind(set.kind),
            load_kg: set.load.total.as_kg(),
            share_of_one_rm: set.share,
            hardest_effort: set.effort,
            reserve: set.reserve,
            on_the_bar: loading_in_words(&set.load),
            groups: &set.groups,
            repetitions: set.repetitions(),
            rest_within_s: set.rest_within.as_s(),
            rest_after_s: set.rest_after.as_s(),
            lowering_s: set.lowering.as_s(),
            to_failure_by_chart: set.allowed.and_then(|allowed| allowed.by_chart),
            to_failure_by_model: set.allowed.and_then(|allowed| allowed.by_model),
            intent: intent(set.intent),
            notes: set
                .notes
                .iter()
                .map(|note| set_note(note, strength, units))
                .collect(),
        }
    }
}

impl PredictionRecord {
    fn of(prediction: &SessionPrediction) -> Self {
        let sets = prediction.sets.iter().enumerate();
        let repetitions = sets.flat_map(|(index, set)| {
            let of_set = move |rep| RepRecord::of(index + 1, rep);
            set.repetitions.iter().map(of_set)
        });
        let joints = least_by_joint(prediction).into_iter();
        Self {
            name: predicted_name(prediction.of),
            completed: prediction.completed(),
            mean_velocity_m_s: prediction.mean_velocity_m_s(),
            repetitions: repetitions.collect(),
            least_capacity_share: joints
                .map(|(joint, share)| (joint_name(joint), share))
                .collect(),
        }
    }
}

impl RepRecord {
    fn of(set: usize, rep: &RepPrediction) -> Self {
        Self {
            set,
            number: rep.number,
            group: rep.group,
            completed: rep.completed,
            mean_velocity_m_s: rep.mean_velocity.as_m_s(),
            sticking_velocity_m_s: rep.sticking_velocity.map(|velocity| velocity.as_m_s()),
            capacity_share: rep.capacity_share,
        }
    }
}

impl LoweringRecord {
    fn of(lowering: &LoweringPrediction) -> Self {
        Self {
            set: lowering.set,
            number: lowering.number,
            effort: lowering.effort,
            reserve: lowering.reserve,
            speed_m_s: lowering.speed_m_s,
        }
    }
}
