//! Straight sets: one load, a few repetitions in reserve, raised when the repetitions allow.
//!
//! In: a [`SessionRequest`]. Out: a draft whose load and repetitions follow published guidance for the lifter's
//! status; for a novice this is the plain progressive overload that replaces every other method.

use super::draft::Draft;
use super::method::Method;
use super::planned_set::{PlannedSet, SetIntent, warm_up_sets};
use super::predicted_sets::predict;
use super::remark::{ChartRemark, Frequency, PlanBasis, Progression, Remark};
use super::repetitions::RepetitionChart;
use super::request::SessionRequest;
use super::rests::{between_sets, checked_between_sets};
use super::status::Level;
use crate::error::Result;
use crate::progress::origin::Origin;

/// What guidance says for one status.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Guidance {
    /// Training status.
    pub level: Level,
    /// Load, share of 1RM.
    pub share: f64,
    /// Number of sets.
    pub sets: u32,
    /// Sessions a week for the lift.
    pub frequency: Frequency,
    /// Where load and frequency come from.
    pub origin: Origin,
}

/// Repetitions that a working set is kept short of failure (common practice: one to three).
pub const RESERVE: u32 = 2;

/// Fewest and most repetitions of a novice's set: ACSM 2009, 8-12RM (read in a summary).
pub const NOVICE_REPETITIONS: (u32, u32) = (8, 12);

/// Raise the load by 2 to 10 % when one or two repetitions more than planned are possible: ACSM 2009 (read
/// in a summary).
pub const STEP_PERCENT: (f64, f64) = (2.0, 10.0);

const TWICE_A_WEEK: Frequency = Frequency::DaysAWeek {
    least: 2,
    most: 2,
    for_this_lift: true,
};

/// Load, sets and frequency for each status. Sets are common practice but for the trained (Rhea).
pub const GUIDANCE: &[Guidance] = &[
    Guidance {
        level: Level::Novice,
        share: 0.65,
        sets: 3,
        frequency: Frequency::DaysAWeek {
            least: 2,
            most: 3,
            for_this_lift: false,
        },
        origin: Origin::Recalled(
            "acsm_2009",
            "60-70 % of 1RM for novices; repetitions and frequency read in a summary",
        ),
    },
    Guidance {
        level: Level::Intermediate,
        share: 0.80,
        sets: 4,
        frequency: TWICE_A_WEEK,
        origin: Origin::Recalled("rhea_2003", "80 %, 4 sets, 2 days a week for the trained"),
    },
    Guidance {
        level: Level::Advanced,
        share: 0.85,
        sets: 5,
        frequency: TWICE_A_WEEK,
        origin: Origin::Recalled(
            "peterson_2004",
            "85 %, 2 days a week for athletes; 5 of its 8 sets on this lift",
        ),
    },
];

/// The guidance for a status.
#[must_use]
pub fn guidance_for(level: Level) -> &'static Guidance {
    GUIDANCE
        .iter()
        .find(|row| row.level == level)
        .unwrap_or(&GUIDANCE[0])
}

/// Drafts straight sets.
///
/// **Fails** when the load asked for is above 1RM or cannot be loaded.
pub fn draft(request: &SessionRequest) -> Result<Draft> {
    let guidance = guidance_for(request.level());
    let share = request.liftable_share(guidance.share)?;
    let load = request.loading.at_most(request.strength().load_at(share))?;
    let real_share = request.strength().share_of(load.total);
    let allowed = RepetitionChart::published()?.allowed_at(real_share);
    let repetitions = request
        .wishes
        .repetitions
        .unwrap_or_else(|| usual_repetitions(request.level(), allowed));
    let rest = match request.wishes.rest_between {
        Some(rest) => checked_between_sets(rest)?,
        None => between_sets(request.level(), share).1,
    };
    let going_on = progression(request, repetitions);
    let mut draft = request.draft(Method::Straight, guidance.frequency, going_on);
    draft.sets = warm_up_sets(load.total, request.loading, &request.strength())?;
    let intent = SetIntent::InReserve;
    let set = PlannedSet::work(load, &request.strength(), repetitions, rest, intent);
    let count = request.wishes.sets.unwrap_or(guidance.sets);
    draft.sets.extend(std::iter::repeat_n(set, count as usize));
    let beyond = allowed.filter(|allowed| repetitions > *allowed);
    draft.remarks.extend(beyond.map(|allowed| {
        Remark::Chart(ChartRemark::Beyond {
            repetitions,
            share: real_share,
            allowed,
        })
    }));
    draft.sources.push((PlanBasis::Guidance, guidance.origin));
    predict(request, &mut draft)?;
    Ok(draft)
}

fn usual_repetitions(level: Level, allowed: Option<u32>) -> u32 {
    match (level, allowed) {
        (Level::Novice, None) => NOVICE_REPETITIONS.1,
        (Level::Novice, Some(allowed)) => allowed
            .saturating_sub(RESERVE)
            .clamp(1, NOVICE_REPETITIONS.1),
        (_, allowed) => allowed.unwrap_or(15).saturating_sub(RESERVE).max(1),
    }
}

fn progression(request: &SessionRequest, repetitions: u32) -> Progression {
    let (least, most) = STEP_PERCENT;
    Progression::WhenRepetitions {
        repetitions: repetitions + 1,
        percent: STEP_PERCENT,
        steps: (
            request.lift.one_rm * (least / 100.0),
            request.lift.one_rm * (most / 100.0),
        ),
    }
}
