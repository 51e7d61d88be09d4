//! On which day a person of a team does which lifts, and in which order.
//!
//! In: the plans of a person's lifts. Out: [`TeamDay`]s.

use super::member_plans::{LiftPlan, MemberLift, TeamDay};
use crate::session::draft::SessionPlan;
use crate::session::maximum_test::TestedMaximum;
use crate::units::Duration;

/// Longest day, minutes of sets and rests (assumed: with going in and out an hour and a half in the room).
pub const LONGEST_DAY_MIN: f64 = 75.0;

/// Days with lifts of their own in a week, where each comes twice.
pub const DAYS_APART: usize = 3;

/// Share of the 1RM from which a set is heavy: none follows another lift's of the same limbs that day, nor a test of a maximum,
/// which counts as heavy itself (common practice: a session is planned for rested muscles, and a heavy one tires for the day).
pub const HEAVY: f64 = 0.85;

/// What orders a lift: tests before plans, several joints before one, legs first.
type Order = (bool, bool, bool, usize);

/// One lift with its order, its longest time, its sets and attempts.
struct TimedLift {
    order: Order,
    place: usize,
    time_s: f64,
    sets: usize,
    attempts: usize,
    /// Whether the legs lift; else the arms do.
    legs: bool,
    /// Whether it has a set of [`HEAVY`] or more, or that test.
    is_heavy: bool,
}

impl TimedLift {
    /// Whether two lifts are heavy on the same limbs.
    const fn clashes(&self, other: &Self) -> bool {
        self.legs == other.legs && self.is_heavy && other.is_heavy
    }
}

/// The days of a person, lifts without a plan left out.
///
/// # Algorithm
/// 1. In order, each lift goes to the day that is shortest so far; a heavy one, or a test of a maximum, to one without anything
///    else that is heavy on the same limbs.
/// 2. There are as few days as keep every one with several lifts within [`LONGEST_DAY_MIN`].
///
/// **Source.** ACSM 2009 (from memory): large muscles before small ones, several joints before one.
#[must_use]
pub fn team_days(lifts: &[MemberLift]) -> Vec<TeamDay> {
    let mut timed: Vec<TimedLift> = lifts.iter().enumerate().filter_map(timed).collect();
    timed.sort_by_key(|a| a.order);
    let is_long = |day: &TeamDay| day.lifts.len() > 1 && day.time.as_s() > 60.0 * LONGEST_DAY_MIN;
    let shared = (1..=timed.len()).filter_map(|count| shared_out(&timed, count));
    let mut fitting = shared.filter(|days| !days.iter().any(is_long));
    fitting.next().unwrap_or_default()
}

/// The lifts on so many days; nothing where two that are heavy on the same limbs meet then.
fn shared_out(lifts: &[TimedLift], count: usize) -> Option<Vec<TeamDay>> {
    let empty = TeamDay {
        lifts: Vec::new(),
        time: Duration::ZERO,
        sets: 0,
        attempts: 0,
    };
    let mut days = vec![empty; count];
    for lift in lifts {
        let clashes = |place: &usize| {
            let mut others = lifts.iter().filter(|other| other.place == *place);
            others.any(|other| lift.clashes(other))
        };
        let shortest = (0..count)
            .filter(|day| !days[*day].lifts.iter().any(clashes))
            .min_by(|a, b| days[*a].time.as_s().total_cmp(&days[*b].time.as_s()))?;
        let day = &mut days[shortest];
        day.lifts.push(lift.place);
        day.time = Duration::from_s(day.time.as_s() + lift.time_s);
        day.sets += lift.sets;
        day.attempts += lift.attempts;
    }
    Some(days)
}

fn timed((place, lift): (usize, &MemberLift)) -> Option<TimedLift> {
    let (planned, is_plan, time_s, (sets, attempts), is_heavy) = match &lift.plan {
        LiftPlan::Sessions(answer) => {
            let plans = || answer.sessions.iter().map(|session| &session.plan);
            let first = plans().next()?;
            let time_s = plans().map(|plan| plan.time().as_s()).fold(0.0, f64::max);
            let sets = plans().map(|plan| plan.working_sets().count()).max();
            let mut working = plans().flat_map(SessionPlan::working_sets);
            // Plates round a load down; it counts as it is shown, in whole percent.
            let is_heavy = working.any(|set| (100.0 * set.hardness()).round() >= 100.0 * HEAVY);
            (
                &first.draft.lift,
                true,
                time_s,
                (sets.unwrap_or(0), 0),
                is_heavy,
            )
        }
        LiftPlan::Test(test) => {
            let time_s = test.time().as_s();
            let is_heavy = test.finds == TestedMaximum::OneRm;
            (
                &test.lift,
                false,
                time_s,
                (0, test.attempts as usize),
                is_heavy,
            )
        }
        LiftPlan::Nothing(_) => return None,
    };
    Some(TimedLift {
        order: (is_plan, planned.one_joint, !planned.lower_body, place),
        place,
        time_s,
        sets,
        attempts,
        legs: planned.lower_body,
        is_heavy,
    })
}
