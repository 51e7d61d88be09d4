//! The one-repetition maximum: the largest loadable weight that reaches the end of the range.
//!
//! In: a model, what else hangs on the bar, the loading step. Out: [`OneRepMax`], eccentric maxima, the
//! strength that a known maximum implies.

use super::enhancement::Enhancement;
use super::lowering::most_asked;
use super::rep_model::RepModel;
use super::rep_options::{After, RepOptions};
use crate::anatomy::Lifter;
use crate::bounds::bounds;
use crate::error::{Error, MaximumSearchFault, Result};
use crate::movement::Movement;
use crate::resistance::{Item, Setup, Weight};
use crate::units::{Duration, Mass, STANDARD_GRAVITY_M_S2};

/// A maximum found by bracketing.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct OneRepMax {
    /// The largest load that is lifted (or lowered), a whole number of steps.
    pub load: Mass,
    /// The next step, which is not.
    pub failed: Mass,
}

impl OneRepMax {
    /// Halfway between what is lifted and what is not, kg.
    fn limit_kg(self) -> f64 {
        f64::midpoint(self.load.as_kg(), self.failed.as_kg())
    }
}

/// No search goes higher, kg.
const HIGHEST_KG: f64 = 20_000.0;

/// The same setup with this plain load in the place of any it had.
#[must_use]
pub fn with_load(setup: &Setup, load: Mass) -> Setup {
    let rest = setup
        .items
        .iter()
        .filter(|item| !matches!(item, Item::Weight(Weight::Load(_))));
    let mut items = vec![Item::Weight(Weight::Load(load))];
    items.extend(rest.cloned());
    Setup::new(setup.name.clone(), items)
}

/// The plain load at a share of a maximum.
///
/// ```text
/// load = share·(maximum + body) − body
/// ```
/// `body` the lifter's own mass where it hangs on the bar, else 0: a share of a pull-up is one of all
/// that is lifted. **Shape.** `None` for shares that the body alone is more than.
/// **Source.** Usual in studies of pull-ups (Sanchez-Moreno et al. 2017, from memory).
#[must_use]
pub fn load_at_share(template: &Setup, one_rm: OneRepMax, share: f64) -> Option<Mass> {
    let body_kg: f64 = template
        .items
        .iter()
        .map(|item| match item {
            Item::Weight(Weight::BodyMass(mass)) => mass.as_kg(),
            _ => 0.0,
        })
        .sum();
    let load_kg = share * (one_rm.load.as_kg() + body_kg) - body_kg;
    (load_kg >= -1.0e-9).then(|| Mass::from_kg(load_kg.max(0.0)))
}

impl RepModel {
    /// The largest load that reaches the end of the range with the rest of a setup on the bar.
    ///
    /// # Algorithm
    /// 1. From what full activation holds at its weakest place, go down or up until one load is lifted
    ///    and one is not.
    /// 2. Halve the bracket until it is one step wide.
    ///
    /// **Fails** on a step that no plate gives, and when even no plain load at all is lifted.
    pub fn one_rm(&self, template: &Setup, step: Mass, options: &RepOptions) -> Result<OneRepMax> {
        options.check()?;
        largest(step, self.held_anywhere_kg(options), |load| {
            self.is_lifted(&with_load(template, load), options)
        })
    }

    /// The largest load that a lifter lowers in this time under control.
    ///
    /// Control: at no place does the even lowering ask for more than full activation; spotters stop and
    /// lift the load. **Fails** as [`RepModel::one_rm`].
    pub fn eccentric_max(
        &self,
        template: &Setup,
        step: Mass,
        time: Duration,
        options: &RepOptions,
    ) -> Result<OneRepMax> {
        let options = RepOptions {
            lowering: Some(time),
            after: After::HandOver,
            ..*options
        };
        options.check()?;
        let time_s = options
            .lowering_s()
            .ok_or_else(|| Error::bad(MaximumSearchFault::NoLoweringTime))?;
        let enhancement = if options.enhancement {
            Enhancement::of(self.dynamics())
        } else {
            Enhancement::none()
        };
        largest(step, self.held_anywhere_kg(&options), |load| {
            let setup = with_load(template, load);
            let (most, _) = most_asked(&self.equation(&setup), enhancement, &options, time_s);
            Ok(most <= 1.0)
        })
    }

    /// Mass whose weight full activation holds still at the weakest place, kg: where a search begins.
    fn held_anywhere_kg(&self, options: &RepOptions) -> f64 {
        (0..=40)
            .map(|k| options.from + (options.to - options.from) * f64::from(k) / 40.0)
            .map(|s| {
                let weight_n = self.grid().at(s, 0.0) / self.path_at(s).max(1.0e-3);
                weight_n / STANDARD_GRAVITY_M_S2
            })
            .fold(f64::INFINITY, f64::min)
    }
}

/// Brackets the largest whole number of steps for which `holds` is true.
fn largest(
    step: Mass,
    guess_kg: f64,
    mut holds: impl FnMut(Mass) -> Result<bool>,
) -> Result<OneRepMax> {
    let step_kg = step.as_kg();
    let bound = &bounds().loading_step;
    if !bound.holds(step_kg) {
        return Err(Error::bad(MaximumSearchFault::LoadingStep {
            step,
            least: Mass::from_kg(bound.least()),
            most: Mass::from_kg(bound.most()),
        }));
    }
    let of = |steps: u64| Mass::from_kg(steps as f64 * step_kg);
    let most = (HIGHEST_KG / step_kg) as u64;
    let guess = ((guess_kg.clamp(0.0, HIGHEST_KG) / step_kg) as u64).clamp(1, most);
    let (mut low, mut high) = bracket(guess, most, &mut |steps| holds(of(steps)))?;
    while high - low > 1 {
        let middle = u64::midpoint(low, high);
        if holds(of(middle))? {
            low = middle;
        } else {
            high = middle;
        }
    }
    if low == 0 && !holds(of(0))? {
        return Err(Error::no_answer(MaximumSearchFault::NothingLifted));
    }
    Ok(OneRepMax {
        load: of(low),
        failed: of(high),
    })
}

/// A number of steps that holds (or 0) and a larger one that does not, by ever longer strides.
fn bracket(
    guess: u64,
    most: u64,
    holds: &mut impl FnMut(u64) -> Result<bool>,
) -> Result<(u64, u64)> {
    let mut stride = (guess / 16).max(1);
    let mut at = guess;
    if holds(at)? {
        while at < most {
            let next = at.saturating_add(stride).min(most);
            if !holds(next)? {
                return Ok((at, next));
            }
            at = next;
            stride = stride.saturating_mul(2);
        }
        let highest = Mass::from_kg(HIGHEST_KG);
        return Err(Error::no_answer(MaximumSearchFault::NoLimit { highest }));
    }
    while at > 0 {
        let next = at.saturating_sub(stride);
        if next == 0 || holds(next)? {
            return Ok((next, at));
        }
        at = next;
        stride = stride.saturating_mul(2);
    }
    Ok((0, 1))
}

/// The factor on all peak forces with which a lifter's maximum is a known load.
///
/// Limb weight and passive tissue do not grow with strength, so capacity is not simply multiplied:
/// the grid is solved anew for each trial. The limit of the scaled lifter lies half a step above the
/// known load, because the next step was not lifted.
///
/// # Algorithm
/// Secant steps on the logarithm of factor and limit, 8 at most, to 0.05 % of the load.
///
/// **Fails** when the known load is none, or no factor from 1/20 to 20 gives it.
pub fn scale_for_one_rm(
    movement: &Movement,
    lifter: &Lifter,
    template: &Setup,
    known: OneRepMax,
    options: &RepOptions,
) -> Result<f64> {
    let target_kg = known.limit_kg();
    if !(known.load.as_kg() > 0.0 && known.failed.as_kg() > known.load.as_kg()) {
        let load = known.load;
        return Err(Error::bad(MaximumSearchFault::NoneToScaleTo { load }));
    }
    let fine = Mass::from_kg((target_kg * 5.0e-4).max(bounds().loading_step.least()));
    let limit_kg = |factor: f64| -> Result<f64> {
        let model = RepModel::new(movement, &stronger(lifter, factor))?;
        Ok(model.one_rm(template, fine, options)?.limit_kg())
    };
    let mut factor: f64 = 1.0;
    let mut reached_kg = limit_kg(factor)?;
    let mut power = 1.0;
    for _ in 0..8 {
        if (reached_kg - target_kg).abs() <= fine.as_kg() {
            return Ok(factor);
        }
        let next = (factor * (target_kg / reached_kg).powf(power)).clamp(0.05, 20.0);
        let next_kg = limit_kg(next)?;
        let gained = (next_kg / reached_kg).ln();
        if gained.abs() > 1.0e-9 {
            power = ((next / factor).ln() / gained).clamp(0.2, 5.0);
        }
        (factor, reached_kg) = (next, next_kg);
    }
    if (reached_kg - target_kg).abs() <= 4.0 * fine.as_kg() {
        return Ok(factor);
    }
    Err(Error::no_answer(MaximumSearchFault::NoStrength {
        load: known.load,
        nearest: Mass::from_kg(reached_kg),
    }))
}

/// The same lifter with every peak force multiplied.
#[must_use]
pub fn stronger(lifter: &Lifter, factor: f64) -> Lifter {
    let mut scaled = lifter.clone();
    for muscle in scaled.muscles.values_mut() {
        muscle.peak_force = muscle.peak_force * factor;
    }
    scaled
}
