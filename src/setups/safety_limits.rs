//! How much may be left on a lifter when every band that helps is gone.
//!
//! In: the maximum, what is lowered under control, who trains, the gym's safety arms. Out: [`SafetyLimits`], by which
//! the search leaves setups out. No name of a lift or a lifter decides.

use super::band_failure::BandFailure;
use super::gym_file::GymArms;
use crate::movement::{Handling, LoadPoint};
use crate::units::{Length, Mass};

/// How far below the lowest place of the bar's middle safety arms stand at least, m (assumed: the bar's radius and two
/// fingers).
const BELOW_BAR_M: f64 = 0.03;

/// The most of a maximum that may be left where arms belong and none stand, and that a setup leaves which is advised before
/// plain weight (assumed: a load of some repetitions, so that one that grows at once can still be finished or put back).
pub const FINISHED: f64 = 0.90;

/// A rounding error is no excess.
const ROUNDING: f64 = 1.0e-9;

/// What is left of a setup when every band that helps is gone, from the better to the worse.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum LeftByBands {
    /// A load that can still be finished or put back.
    Finished,
    /// Nearly a maximum.
    NearMaximum,
    /// More than the maximum.
    AboveMaximum,
}

/// What decides how much may be left on a lifter.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SafetyLimits {
    /// The maximum with plain weight, the body apart.
    pub one_rm: Mass,
    /// The most that is lowered under control, the body apart.
    pub lowered: Mass,
    /// Body mass that is part of the load.
    pub body: Mass,
    /// Whether the lifter is a novice.
    pub novice: bool,
    /// Whether more than the 1RM may be left at all: years of training, a lift whose load helpers can take, and that does not
    /// come down on the body, where arms hold it too late.
    pub above_one_rm: bool,
    /// Whether more than the 1RM may be felt where bands and chains add most: years of training, as for what is lowered, and a
    /// load that can be taken or put down there. At any height a felt load above the 1RM takes more of the capacity there than
    /// this lifter's own maximum ever did, and capacity of muscles is all that the model knows: trunk, grip and joints that
    /// carry it are unproven by anything that was lifted (common practice: two years).
    pub felt_above_one_rm: bool,
    /// Whether safety arms are what catches this lift.
    pub needs_arms: bool,
    /// Height of the gym's safety arms for this lift, where it has some that fit.
    pub arms: Option<Length>,
}

impl SafetyLimits {
    /// The most that may be left, the body included; `None` where safety arms catch what is more.
    ///
    /// Whoever may not get more than the 1RM does not, arms or not. Where arms belong and none stand it is less than a
    /// maximum, and no more than can be lowered. The body alone is always allowed where it is the load: the lifter steps
    /// down.
    #[must_use]
    pub fn most_left(&self) -> Option<Mass> {
        let most = if !self.above_one_rm {
            self.one_rm
        } else if self.arms.is_some() {
            return None;
        } else {
            self.lowered
        };
        let most = if self.lacks_arms() {
            let caught = self.one_rm * FINISHED;
            Mass::from_kg(most.as_kg().min(caught.as_kg()).min(self.lowered.as_kg()))
        } else {
            most
        };
        Some(Mass::from_kg(
            (most + self.body).as_kg().max(self.body.as_kg()),
        ))
    }

    /// Whether arms belong to this lift and none stand.
    #[must_use]
    pub fn lacks_arms(&self) -> bool {
        self.needs_arms && self.arms.is_none()
    }

    /// The most that may be felt anywhere with bands and chains that add load, the body included; `None` without a bound.
    #[must_use]
    pub fn most_felt(&self) -> Option<Mass> {
        (!self.felt_above_one_rm).then(|| self.one_rm + self.body)
    }

    /// What the failure of all bands leaves, safety arms or not: what they catch has come down by then. Of the body alone the
    /// lifter steps down.
    #[must_use]
    pub fn left_of(&self, failure: Option<&BandFailure>) -> LeftByBands {
        let Some(failure) = failure.filter(|failure| failure.grows) else {
            return LeftByBands::Finished;
        };
        let share = self.share_of(failure.after_all);
        let is_body = failure.after_all.as_kg() <= self.body.as_kg() * (1.0 + ROUNDING);
        if share > 1.0 + ROUNDING {
            LeftByBands::AboveMaximum
        } else if share > FINISHED + ROUNDING && !is_body {
            LeftByBands::NearMaximum
        } else {
            LeftByBands::Finished
        }
    }

    /// A load with the body as a share of the maximum with the body.
    #[must_use]
    pub fn share_of(&self, felt: Mass) -> f64 {
        felt.as_kg() / (self.one_rm + self.body).as_kg().max(f64::MIN_POSITIVE)
    }
}

impl GymArms {
    /// The highest hole that stands below the lowest place of a load; `None` where the arms do not reach it.
    #[must_use]
    pub fn height_for(&self, points: &[LoadPoint]) -> Option<Length> {
        let room_m = lowest_m(points) - BELOW_BAR_M - self.lowest.as_m();
        if !(room_m.is_finite() && room_m >= 0.0) {
            return None;
        }
        let height_m = self.lowest.as_m() + (room_m / self.step.as_m()).floor() * self.step.as_m();
        let highest_m = self.highest.as_m();
        // Arms that end far below a load catch nothing in time.
        (height_m <= highest_m + 1.0e-9).then(|| Length::from_m(height_m))
    }
}

/// Where safety arms stand below a load.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ArmsStand {
    /// Their height.
    pub height: Length,
    /// How far the lowest place of the load is above them.
    pub below: Length,
    /// Whether the load lies on the body there.
    pub on_body: bool,
}

impl ArmsStand {
    /// Arms at a height under the places of a load that is handled so.
    #[must_use]
    pub fn under(points: &[LoadPoint], height: Length, handling: &Handling) -> Self {
        Self {
            height,
            below: Length::from_m(lowest_m(points)) - height,
            on_body: handling.comes_down_on_body,
        }
    }
}

fn lowest_m(points: &[LoadPoint]) -> f64 {
    let heights = points.iter().map(|point| point.z_m);
    heights.fold(f64::INFINITY, f64::min)
}
