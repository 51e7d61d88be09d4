//! The days of a block: what each is for, straight sets as a day asks for them, and the way back after an illness.
//!
//! In: a [`SessionRequest`], a [`DayAim`]. Out: [`BlockWeek`]s of whole plans.

use super::draft::SessionPlan;
use super::method::Method;
use super::published::DeloadRule;
use super::remark::{PlanBasis, Progression, Remark};
use super::request::{DayAim, SessionRequest};
use super::schemes::{eased, plan};
use crate::error::Result;
use crate::source::Source;

/// Days between the two sessions of a week: Monday and Thursday, for example.
pub const DAYS_BETWEEN: u32 = 3;

/// What a day of a block is for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum DayPurpose {
    /// The day of straight sets that rise.
    Main,
    /// The day of the method that was asked for.
    Of(Method),
    /// A lighter day, so that the day of the method finds the lifter fresh.
    Lighter,
    /// A day of an easier week.
    Easier,
    /// A day on the way back after an illness or a break.
    ComingBack,
}

/// One session of a week.
#[derive(Debug, Clone, PartialEq)]
pub struct BlockDay {
    /// Day of the week, from 1.
    pub day: u32,
    /// What the day is for.
    pub purpose: DayPurpose,
    /// The session.
    pub plan: SessionPlan,
}

/// One week, or several that the log decides and that stand here once.
#[derive(Debug, Clone, PartialEq)]
pub struct BlockWeek {
    /// Number of the week, from 1.
    pub week: u32,
    /// The last week that it stands for.
    pub until: u32,
    /// Whether it is an easier one.
    pub easier: bool,
    /// Its sessions.
    pub days: Vec<BlockDay>,
}

/// The two days of a week.
pub(super) fn days(
    first: (DayPurpose, SessionPlan),
    second: (DayPurpose, SessionPlan),
) -> Vec<BlockDay> {
    [(1, first), (1 + DAYS_BETWEEN, second)]
        .into_iter()
        .map(|(day, (purpose, plan))| BlockDay { day, purpose, plan })
        .collect()
}

/// Week in which somebody who was unwell at the start comes back: the second, half way between an easier week and the
/// usual one (common practice: load returns over two weeks).
const BACK_IN: u32 = 2;

/// Whether a week is on the way back.
pub(super) const fn is_coming_back(request: &SessionRequest, week: u32) -> bool {
    request.lift.trainee.comes_back() && week == BACK_IN
}

/// The request of a week: who is ill, sore or back from a break now is taken to be well again from the second week on.
pub(super) fn recovered<'a>(request: &SessionRequest<'a>, week: u32) -> SessionRequest<'a> {
    let mut well = request.with_method(request.method);
    well.wishes = request.wishes;
    if week > 1 {
        well.lift.trainee.unwell_or_sore = false;
        well.lift.trainee.back_from_break = None;
    }
    well
}

/// A day half way between an easier week and the usual one.
pub(super) fn day_back(
    request: &SessionRequest,
    aim: DayAim,
    rule: &DeloadRule,
) -> Result<SessionPlan> {
    let easier = eased(aim, rule);
    let half = DayAim {
        share: f64::midpoint(aim.share, easier.share),
        reserve: u32::midpoint(aim.reserve, easier.reserve),
        sets: aim.sets.midpoint(easier.sets),
        ..aim
    };
    let mut planned = straight_day(request, half, &rule.source)?;
    planned.draft.remarks.insert(
        0,
        Remark::ComingBack {
            left: half.share / aim.share,
        },
    );
    Ok(planned)
}

/// Straight sets as a day of the block asks for them.
pub(super) fn straight_day(
    request: &SessionRequest,
    aim: DayAim,
    source: &Source,
) -> Result<SessionPlan> {
    let mut planned = plan(&request.straight(aim))?;
    by_weeks(&mut planned);
    if request.lift.trainee.comes_back() {
        planned.draft.progression = Progression::ByWeeksComingBack;
    }
    planned
        .draft
        .sources
        .push((PlanBasis::Weeks, source.clone()));
    Ok(planned)
}

/// What the weeks say stands in place of a rule of one's own for the next session.
pub(super) fn by_weeks(planned: &mut SessionPlan) {
    if let Progression::WhenRepetitions {
        repetitions,
        reserve,
        ..
    } = planned.draft.progression
    {
        planned.draft.progression = Progression::ByWeeks {
            repetitions,
            reserve,
            easier_next: false,
        };
    }
}

/// Share of 1RM of a day's working sets.
pub(super) fn share_of(day: &SessionPlan) -> Option<f64> {
    day.working_sets().next().map(|set| set.share)
}
