//! A planned session in words: the same lines for text, printed page and picture.
//!
//! In: a [`SessionPlan`] and units. Out: [`PlanWords`]: rows of sets, what to know, spotters, cautions.

use super::cautions::{caution_in_words, is_of_person};
use super::going_on_words::progression;
use super::hung_pieces::setup_lines;
use super::loads::loading_in_words;
use super::prose::{counted_noun, of_count};
use super::quantities::{QuantityWords, rounded};
use super::session_remarks::remark;
use super::session_words::{
    frequency, groups_added, intent, joint_name, level_name, one_rm_source, predicted_name,
    rest_time, set_note,
};
use super::setups::hazards_of;
use super::sheet_labels::{DATE, FILL_IN, NAME};
use super::spotter_words::{Call, calls, spotters};
use crate::session::draft::{Draft, LoweringPrediction, SessionPlan, SessionPrediction};
use crate::session::fatigue::FatigueJoint;
use crate::session::planned_set::{PlannedSet, RepetitionsAllowed, SetIntent, SetKind};
use crate::session::strength::Strength;
use crate::study::PlannedSession;
use crate::units::{Mass, System};
use std::collections::BTreeMap;

/// One row: a warm-up set, or working sets that are alike.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SetRow {
    /// "warm-up", "1", "1 to 5".
    pub name: String,
    /// How many sets it stands for.
    pub sets: usize,
    /// Whether it prepares only.
    pub is_warm_up: bool,
    /// The load: "105 kg".
    pub load: String,
    /// Share of 1RM, %.
    pub percent: String,
    /// Plates, stack or dumb-bell.
    pub how: String,
    /// Repetitions: "5", "4 groups of 3", "3 + 3 + 2".
    pub repetitions: String,
    /// Rest after it, and inside it.
    pub rest: String,
    /// What it is for, and what to know about it.
    pub intent: String,
    /// Whether there is something to know about it.
    pub has_notes: bool,
    /// Repetitions to failure by chart and by fatigue model, if known: "9.2 / 8".
    pub to_failure: Option<String>,
}

impl SetRow {
    /// The share of 1RM with its sign; nothing where the 1RM is not known.
    #[must_use]
    pub fn shown_percent(&self) -> String {
        match self.percent.is_empty() {
            true => String::new(),
            false => format!("{} %", self.percent),
        }
    }
}

/// Most dangers of the load that stand at the top, beside those of who lifts.
const MOST_HAZARDS: usize = 2;

/// A plan in words.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PlanWords {
    /// Who it is for, printed where a name would be written by hand.
    pub athlete: Option<String>,
    /// The day of the session, printed where it would be written by hand.
    pub date: Option<String>,
    /// "Bench press".
    pub movement: String,
    /// "1RM 140 kg, as given".
    pub one_rm: String,
    /// "advanced".
    pub level: String,
    /// "About 40 min; 3870 kg lifted in the working sets".
    pub amount: String,
    /// The rows.
    pub rows: Vec<SetRow>,
    /// The setup, a part a line.
    pub setup: Vec<String>,
    /// How often a week.
    pub frequency: String,
    /// How to go on.
    pub progression: String,
    /// What was predicted.
    pub predicted: Vec<String>,
    /// What else to know.
    pub notes: Vec<String>,
    /// How many spotters and where.
    pub spotters: Option<String>,
    /// The words they agree on, and what each means.
    pub calls: Vec<Call>,
    /// What is dangerous about it today, a line or two.
    pub hazards: Vec<String>,
    /// The cautions; never empty.
    pub cautions: Vec<String>,
}

impl PlanWords {
    /// The cautions that are not told as dangers of today.
    pub fn other_cautions(&self) -> impl Iterator<Item = &String> {
        let is_other = |caution: &&String| !self.hazards.contains(caution);
        self.cautions.iter().filter(is_other)
    }

    /// A session in words, with its day where it has one; one that stands for several weeks is done on several.
    #[must_use]
    pub fn of_session(session: &PlannedSession, units: System) -> Self {
        let date = session.name.date().filter(|_| session.name.weeks() == 1);
        Self {
            date: date.map(|date| date.to_string()),
            ..Self::of(&session.plan, units)
        }
    }

    /// What is known of a line of [`FILL_IN`], by its place.
    #[must_use]
    pub fn filled_in(&self, place: usize) -> Option<&String> {
        match FILL_IN.get(place) {
            Some(&NAME) => self.athlete.as_ref(),
            Some(&DATE) => self.date.as_ref(),
            _ => None,
        }
    }

    /// A plan in words.
    #[must_use]
    pub fn of(plan: &SessionPlan, units: System) -> Self {
        let draft = &plan.draft;
        let mut predicted: Vec<String> = draft.predictions.iter().map(prediction_words).collect();
        predicted.extend(lowering_words(draft));
        let remarks = draft.remarks.iter();
        Self {
            athlete: None,
            date: None,
            movement: draft.lift.title.clone(),
            one_rm: one_rm_words(draft, units),
            level: level_name(draft.lift.level()).to_owned(),
            amount: amount_words(plan, units),
            rows: rows(draft, units),
            setup: setup_lines(draft.setup.as_ref(), units),
            frequency: frequency(draft.frequency),
            progression: progression(&draft.progression, units),
            predicted,
            notes: remarks.map(|fact| remark(fact, units)).collect(),
            spotters: plan.spotting().map(|who| spotters(who, units)),
            calls: plan.spotting().map(calls).unwrap_or_default(),
            hazards: hazards_of(plan.cautions())
                .iter()
                .take(MOST_HAZARDS + plan.cautions().iter().filter(|c| is_of_person(c)).count())
                .map(|caution| caution_in_words(caution, units))
                .collect(),
            cautions: plan
                .cautions()
                .iter()
                .map(|caution| caution_in_words(caution, units))
                .collect(),
        }
    }
}

fn amount_words(plan: &SessionPlan, units: System) -> String {
    format!(
        "about {} min, {} in the working sets together",
        rounded(plan.time().as_s() / 60.0, 0),
        units.fine_mass(Mass::from_kg(plan.volume_kg()), 0)
    )
}

fn one_rm_words(draft: &Draft, units: System) -> String {
    let body = if draft.lift.body.as_kg() > 0.0 {
        format!(" beside the body of {}", units.mass(draft.lift.body))
    } else {
        String::new()
    };
    let source = one_rm_source(&draft.lift.one_rm_from, units);
    // The words of an untested 1RM begin with what is simulated and end with what is planned from.
    if draft.lift.untested().is_some() {
        return format!("1RM{body} {source}");
    }
    format!("1RM {}{body}, {source}", units.mass(draft.lift.one_rm))
}

fn rows(draft: &Draft, units: System) -> Vec<SetRow> {
    let mut rows: Vec<SetRow> = Vec::new();
    let mut number = 0;
    let mut first = 1;
    for (index, set) in draft.sets.iter().enumerate() {
        let row = row(set, &draft.lift.strength(), units);
        if row.is_warm_up {
            rows.push(row);
            continue;
        }
        number += 1;
        let alike = index > 0 && is_alike(&draft.sets[index - 1], set);
        match rows.last_mut() {
            Some(last) if alike => {
                last.sets += 1;
                last.name = format!("{first} to {number}");
                last.to_failure = merged(last.to_failure.take(), row.to_failure);
            }
            _ => {
                first = number;
                rows.push(SetRow {
                    name: number.to_string(),
                    ..row
                });
            }
        }
    }
    rows
}

fn is_alike(one: &PlannedSet, other: &PlannedSet) -> bool {
    one.kind == other.kind
        && one.load == other.load
        && one.groups == other.groups
        && one.rest_after == other.rest_after
        && one.intent == other.intent
}

/// The last of several sets allows the fewest: it is the one to know.
fn merged(one: Option<String>, other: Option<String>) -> Option<String> {
    other.or(one)
}

fn row(set: &PlannedSet, strength: &Strength, units: System) -> SetRow {
    let mut purpose = vec![intent_with_reserve(set)];
    purpose.extend(set.notes.iter().map(|note| set_note(note, strength, units)));
    let within = if set.groups.len() > 1 {
        format!("{} between groups, then ", rest_time(set.rest_within))
    } else {
        String::new()
    };
    SetRow {
        name: "warm-up".to_owned(),
        sets: 1,
        is_warm_up: set.kind == SetKind::WarmUp,
        load: units.mass(set.load.total),
        percent: rounded(100.0 * set.share, 0),
        how: loading_in_words(&set.load),
        repetitions: repetitions_words(set),
        rest: format!("{within}{}", rest_time(set.rest_after)),
        intent: purpose.join("; "),
        // How a load of more than can be lifted comes back is said of every set.
        has_notes: !set.notes.is_empty() || matches!(set.intent, SetIntent::LowerSlowly { .. }),
        to_failure: set.allowed.map(to_failure),
    }
}

/// What a set is for, with the repetitions that are kept in reserve.
fn intent_with_reserve(set: &PlannedSet) -> String {
    match set.intent {
        SetIntent::InReserve | SetIntent::DriveThrough if set.reserve > 0 => {
            format!(
                "{}, at least {} in reserve",
                intent(set.intent),
                set.reserve
            )
        }
        SetIntent::InReserve | SetIntent::DriveThrough if set.is_to_failure() => {
            format!("{}, to failure", intent(set.intent))
        }
        SetIntent::BuildUp => format!("build up, at least {} in reserve", set.reserve),
        SetIntent::TopSet => format!("top set, at least {} in reserve", set.reserve),
        other => intent(other),
    }
}

/// Repetitions to failure by chart and by fatigue model: "9.2 / 8".
fn to_failure(allowed: RepetitionsAllowed) -> String {
    let unknown = || "-".to_owned();
    format!(
        "{} / {}",
        allowed
            .by_chart
            .map_or_else(unknown, |chart| rounded(chart, 1)),
        allowed
            .by_model
            .map_or_else(unknown, |model| model.to_string())
    )
}

/// "5", "4 groups of 3", "3 + 3 + 2".
fn repetitions_words(set: &PlannedSet) -> String {
    match set.groups.as_slice() {
        [first, .., last] if first == last => {
            let count = set.groups.len();
            if *first == 1 {
                format!("{count} singles")
            } else {
                format!("{count} groups of {first}")
            }
        }
        _ => groups_added(set),
    }
}

fn prediction_words(prediction: &SessionPrediction) -> String {
    let asked: u32 = prediction
        .sets
        .iter()
        .map(|set| set.groups.iter().sum::<u32>())
        .sum();
    let stalls = prediction
        .sets
        .iter()
        .enumerate()
        .find_map(|(index, set)| Some((index + 1, set.stalls_at()?)));
    let end = match (stalls, prediction.sets.last()) {
        (Some((_, number)), _) if prediction.sets.len() == 1 => {
            format!("repetition {number} stalls")
        }
        (Some((set, number)), _) => format!("repetition {number} of set {set} stalls"),
        (None, Some(set)) => format!(
            "the last repetition keeps {} % of the fastest",
            rounded(100.0 * (1.0 - set.velocity_loss()), 0)
        ),
        (None, None) => String::new(),
    };
    format!(
        "{}: {} of {} {} lockout, mean velocity {} m/s, {end}; left at the end of the hardest set: {}",
        predicted_name(prediction.of),
        prediction.completed(),
        counted_noun(asked, "repetition"),
        of_count(asked, "reaches", "reach"),
        rounded(prediction.mean_velocity_m_s(), 2),
        joints_words(&least_by_joint(prediction))
    )
}

/// The least share of capacity of each joint over a prediction.
#[must_use]
pub fn least_by_joint(prediction: &SessionPrediction) -> BTreeMap<FatigueJoint, f64> {
    let mut least = BTreeMap::new();
    for sample in &prediction.fatigue {
        let share = sample.shares.capacity_share();
        let known = least.entry(sample.joint).or_insert(1.0_f64);
        *known = known.min(share);
    }
    least
}

fn joints_words(joints: &BTreeMap<FatigueJoint, f64>) -> String {
    joints
        .iter()
        .map(|(joint, share)| format!("{} {} %", joint_name(*joint), rounded(100.0 * share, 0)))
        .collect::<Vec<_>>()
        .join(", ")
}

/// One line a set of lowerings: its last is the hardest.
fn lowering_words(draft: &Draft) -> Vec<String> {
    let lowerings = &draft.lowerings;
    let is_last = |index: usize, lowering: &LoweringPrediction| {
        lowerings
            .get(index + 1)
            .is_none_or(|next| next.set != lowering.set)
    };
    lowerings
        .iter()
        .enumerate()
        .filter(|(index, lowering)| is_last(*index, lowering))
        .map(|(_, lowering)| last_lowering_words(lowering))
        .collect()
}

fn last_lowering_words(lowering: &LoweringPrediction) -> String {
    let speed = lowering
        .speed_m_s
        .map(|speed| format!(" at {} m/s", rounded(speed, 2)))
        .unwrap_or_default();
    format!(
        "set {}, lowering {}{speed}: {} % of what the tired muscles can still lower under control, reserve {} %",
        lowering.set,
        lowering.number,
        rounded(100.0 * lowering.effort, 0),
        rounded(100.0 * lowering.reserve, 0)
    )
}
