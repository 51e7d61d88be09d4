//! Why a changed value changed a curve: the exact account of the change at three places.
//!
//! In: the models before and after with their studies. Out: [`Cause`]s with figures.

use super::Study;
use crate::anatomy::{Curves, Joint};
use crate::capacity::{Account, Acting, Equilibrium, JointLimit, Pace, account};
use crate::error::Result;
use crate::library::Model;
use crate::movement::Measure;

/// What happened at one place of the range, and through what.
#[derive(Debug, Clone, PartialEq)]
pub struct Cause {
    /// Where.
    pub spot: Spot,
    /// Place of the range.
    pub range: f64,
    /// The same before the change along the movement's axis: cm of travel, or degrees of the moving joint.
    pub axis_value: f64,
    /// Along the same axis the peak or the hardest place itself that this sample is the nearest to; the sample where it is
    /// told for its own sake.
    pub former_value: f64,
    /// What the capacity is, and so what the axis is.
    pub measure: Measure,
    /// The change with its parts.
    pub account: Account,
    /// Which of the fibres' own curves are others after the change.
    pub curves: OtherCurves,
}

/// Which curves that all fibres share differ between two models.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct OtherCurves {
    /// Active force over length.
    pub length: bool,
    /// Force over velocity.
    pub velocity: bool,
}

/// Where a change is told.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Spot {
    /// The start of the range.
    Start,
    /// Where the greatest capacity was before the change.
    Peak,
    /// Where the greatest effort was before the change.
    Hardest,
    /// Halfway, where neither peak nor hardest place lies between the ends.
    Middle,
    /// The end of the range.
    End,
}

/// A model with its study.
pub(super) struct Solved<'a> {
    pub(super) model: &'a Model,
    pub(super) study: &'a Study,
    pub(super) pace: Pace,
}

/// A lift that was solved: its model, its curve, its pace.
pub type SolvedCurve<'a> = (&'a Model, &'a Study, Pace);

/// Why a curve differs from a former one of the same movement; nothing of another movement.
///
/// **Fails** as the curves do.
pub fn causes_between(before: SolvedCurve<'_>, after: SolvedCurve<'_>) -> Result<Vec<Cause>> {
    let is_same_lift = before.1.movement_name == after.1.movement_name;
    if !is_same_lift || before.1.range.poses.len() != after.1.range.poses.len() {
        return Ok(Vec::new());
    }
    let [before, after] = [before, after].map(|(model, study, pace)| Solved { model, study, pace });
    Footing::of(&before)?.causes(&after)
}

/// A study's equilibria at the places where changes are told.
pub(super) struct Footing {
    places: Vec<(Spot, usize)>,
    axis: Vec<[f64; 2]>,
    held: Vec<Equilibrium>,
    curves: Curves,
}

impl Footing {
    /// The places of a base with what holds there.
    ///
    /// **Fails** as the study's curve does.
    pub(super) fn of(base: &Solved<'_>) -> Result<Self> {
        let last = (base.study.range.poses.len() - 1) as f64;
        let told = places(base.study);
        let sampled = told.map(|(spot, range)| (spot, (range * last).round() as usize));
        let axis = told.iter().zip(&sampled).map(|((_, range), (_, index))| {
            [*index as f64 / last, *range].map(|range| base.study.axis_value(range))
        });
        Ok(Self {
            held: equilibria(base, &sampled)?,
            axis: axis.collect(),
            places: sampled.to_vec(),
            curves: base.model.lifter.curves.clone(),
        })
    }

    /// The causes of what is different in another model, at the same places.
    ///
    /// **Fails** as that model's curve does.
    pub(super) fn causes(&self, changed: &Solved<'_>) -> Result<Vec<Cause>> {
        let after = equilibria(changed, &self.places)?;
        let last = (changed.study.range.poses.len() - 1) as f64;
        let curves = OtherCurves {
            length: self.curves.active != changed.model.lifter.curves.active,
            velocity: self.curves.velocity != changed.model.lifter.curves.velocity,
        };
        let cause = |(number, after): (usize, &Equilibrium)| Cause {
            spot: self.places[number].0,
            range: self.places[number].1 as f64 / last,
            axis_value: self.axis[number][0],
            former_value: self.axis[number][1],
            measure: changed.study.range.measure,
            account: account(&self.held[number], after),
            curves,
        };
        Ok(after.iter().enumerate().map(cause).collect())
    }
}

fn equilibria(solved: &Solved<'_>, places: &[(Spot, usize)]) -> Result<Vec<Equilibrium>> {
    let range = &solved.study.range;
    let acting = Acting::of(&solved.model.lifter, &range.poses)?;
    let at = |(_, index): &(Spot, usize)| Equilibrium::at(&acting, range, *index, solved.pace);
    places.iter().map(at).collect()
}

/// Start, the place between that matters most, end.
fn places(study: &Study) -> [(Spot, f64); 3] {
    let between = |range: &f64| *range > 0.1 && *range < 0.9;
    let peak = Some(study.class.peak_range).filter(between);
    let sticking = study.setups.first().and_then(|setup| setup.sticking);
    let hardest = sticking.map(|s| s.point_range).filter(between);
    let middle = match (peak, hardest) {
        (Some(range), _) => (Spot::Peak, range),
        (None, Some(range)) => (Spot::Hardest, range),
        (None, None) => {
            let last = (study.range.poses.len() - 1) as f64;
            (Spot::Middle, (0.5 * last).round() / last)
        }
    };
    [(Spot::Start, 0.0), middle, (Spot::End, 1.0)]
}

/// A joint shares the limit from this part of it (assumed: less does not show in what is printed).
const SHARES: f64 = 0.1;

impl Cause {
    /// The joints that limit before and after, the first first.
    #[must_use]
    pub fn limiting(&self) -> [Vec<Joint>; 2] {
        [0, 1].map(|side| {
            let limits = self.account.limits[side].iter();
            let sharing = limits.filter(|limit| limit.share >= SHARES);
            sharing.map(|limit| limit.joint).collect()
        })
    }

    /// Every joint's share in the limit before and after, the first before the change first.
    #[must_use]
    pub fn shares_in_the_limit(&self) -> Vec<(Joint, [f64; 2])> {
        let [before, after] = &self.account.limits;
        let share = |limits: &[JointLimit], joint: Joint| {
            let found = limits.iter().find(|limit| limit.joint == joint);
            found.map_or(0.0, |limit| limit.share)
        };
        let joints = before.iter().map(|limit| limit.joint);
        joints
            .map(|joint| (joint, [share(before, joint), share(after, joint)]))
            .collect()
    }
}
