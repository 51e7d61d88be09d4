//! Straight sets: one load, a few repetitions in reserve, raised when the repetitions allow.
//!
//! In: a [`SessionRequest`]. Out: a draft whose load and repetitions follow published guidance for the lifter's
//! status; for a novice this is the plain progressive overload that replaces every other method.

use super::draft::Draft;
use super::last_session::shows;
use super::method::Method;
use super::next_load::{far_step, next_load};
use super::planned_set::{PlannedSet, SetIntent, SetNote, warm_up_sets};
use super::predicted_sets::predict;
use super::published::{LevelGuidance, StraightTable};
use super::remark::{ChartRemark, Frequency, PlanBasis, Progression, Remark};
use super::request::{NEAR_SHARE, SessionRequest};
use super::status::Level;
use crate::error::Result;
use crate::units::Mass;

/// Repetitions that a working set is kept short of failure (common practice: one to three; Helms et al. 2017, J Strength Cond
/// Res 31:2938-2943: two in sets of eight, one in sets of three).
pub const RESERVE: u32 = 2;

/// Share by which a load that is meant may be more than all that can be loaded before that is told (assumed: less than a
/// repetition).
const PLATES_SHORT: f64 = 0.02;

/// Repetitions where the chart allows no end of them.
const BEYOND_CHART: u32 = 15;

impl StraightTable {
    /// The guidance for a status and for lifts of one joint or of several, the first where it has none.
    #[must_use]
    pub fn guidance_for(&self, level: Level, one_joint: bool) -> &LevelGuidance {
        let fits = |row: &&LevelGuidance| row.level == level && row.one_joint == one_joint;
        let of_level = self.guidance.iter().find(fits);
        of_level
            .or(self.guidance.first())
            .expect("a table without a row is refused when it is read")
    }
}

impl LevelGuidance {
    /// How often a week.
    #[must_use]
    pub const fn frequency(&self) -> Frequency {
        Frequency::DaysAWeek {
            least: self.days_a_week.0,
            most: self.days_a_week.1,
            for_this_lift: self.for_this_lift,
        }
    }
}

/// Drafts straight sets.
///
/// **Fails** when the load asked for is above 1RM or cannot be loaded.
pub fn draft(request: &SessionRequest) -> Result<Draft> {
    let guidance = request.guidance();
    let usual = request.aim.map_or(guidance.share, |aim| aim.share);
    let share = request.liftable_share(usual)?;
    let load = request.loading_at(share)?;
    let total = load.total;
    let real_share = request.strength().share_of(load.total);
    let allowed = request.chart()?.allowed_at(real_share);
    let repetitions = request
        .wishes
        .repetitions
        .or(request.aim.map(|aim| aim.repetitions))
        .unwrap_or_else(|| usual_repetitions(request, allowed));
    let rest = request.rest_between(share)?;
    let going_on = progression(request, load.total, repetitions)?;
    let mut draft = request.draft(Method::Straight, guidance.frequency(), going_on);
    draft.sets = warm_up_sets(load.total, request.loading, &request.strength())?;
    let intent = SetIntent::InReserve;
    let mut set = PlannedSet::work(load, &request.strength(), repetitions, rest, intent)
        .keeping(request.reserve(RESERVE));
    set.notes
        .extend(request.wishes.velocity_loss.map(SetNote::StopAtLoss));
    let count = request.sets(guidance.sets);
    draft.sets.extend(std::iter::repeat_n(set, count as usize));
    let is_seen =
        request.aim.is_some() && shows(request, total, repetitions, request.reserve(RESERVE))?;
    let beyond = allowed.filter(|allowed| repetitions > *allowed && !is_seen);
    draft.remarks.extend(beyond.map(|allowed| {
        Remark::Chart(ChartRemark::Beyond {
            repetitions,
            share: real_share,
            allowed,
        })
    }));
    let meant = request.strength().load_at(share);
    let most = request.loading.heaviest();
    if meant.as_kg() > most.as_kg() * (1.0 + PLATES_SHORT) {
        draft.remarks.push(Remark::PlatesEnd { most, meant });
    }
    let lightest = request.loading.lightest();
    let lightest_share = request.strength().share_of(lightest);
    let is_alone = request.lift.body == Mass::ZERO && request.wishes.load.is_none();
    if is_alone && lightest_share > usual + NEAR_SHARE {
        draft.remarks.push(Remark::LightestTooHeavy {
            lightest,
            share: lightest_share,
            meant: request.strength().load_at(usual),
            meant_share: usual,
            is_bar: request.loading.is_bar,
        });
    }
    let (asked, kept) = (request.wishes.reserve, request.reserve(RESERVE));
    if let Some(asked) = asked.filter(|asked| *asked < kept) {
        draft.remarks.push(Remark::ReserveRaised { asked, kept });
    }
    let source = guidance.source.clone();
    draft.sources.push((PlanBasis::Guidance, source));
    predict(request, &mut draft)?;
    Ok(draft)
}

/// Repetitions of a set of which the chart allows so many.
fn usual_repetitions(request: &SessionRequest, allowed: Option<u32>) -> u32 {
    let (fewest, most) = request.published.straight.novice.repetitions;
    let reserve = request.reserve(RESERVE);
    let kept = allowed
        .unwrap_or(BEYOND_CHART)
        .saturating_sub(reserve)
        .max(1);
    if request.lift.untested().is_some() {
        // Who learns a lift does the fewest repetitions of a novice.
        kept.min(fewest)
    } else if request.level() == Level::Novice || request.lift.one_joint {
        kept.min(most)
    } else {
        kept
    }
}

/// Repetitions more than planned that are a reason to raise the load (ACSM 2009: one or two).
pub(super) const MORE_REPETITIONS: u32 = 2;

fn progression(request: &SessionRequest, load: Mass, repetitions: u32) -> Result<Progression> {
    let percent = request.published.straight.step.percent;
    let whole = load + request.lift.body;
    let reserve = request.reserve(RESERVE);
    Ok(Progression::WhenRepetitions {
        repetitions: repetitions + MORE_REPETITIONS,
        reserve,
        percent,
        steps: (whole * (percent.0 / 100.0), whole * (percent.1 / 100.0)),
        next: next_load(request, load),
        far: far_step(request, load, (repetitions, reserve))?,
    })
}
