//! The one-repetition maximum: the largest load that reaches the end of the range and is held there.
//!
//! In: a model, what else hangs on the bar. Out: [`OneRepMax`], eccentric maxima, the
//! strength that a known maximum implies.

use super::enhancement::Enhancement;
use super::lowering::most_asked;
use super::rep_model::RepModel;
use super::rep_options::{After, RepOptions};
use super::tiring::Tiring;
use crate::anatomy::Lifter;
use crate::bounds::bounds;
use crate::error::{Error, FaultKind, MaximumSearchFault, Result};
use crate::movement::Movement;
use crate::resistance::{Item, Setup, Weight};
use crate::units::{Duration, Mass, STANDARD_GRAVITY_M_S2};

/// A maximum, found to [`OneRepMax::TOLERANCE_KG`].
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct OneRepMax {
    /// The largest load that is lifted (or lowered).
    pub load: Mass,
}

/// What can be loaded below and above a maximum.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LoadableMax {
    /// The largest load in whole steps that is lifted (or lowered).
    pub load: Mass,
    /// The next step, which is not.
    pub failed: Mass,
}

impl OneRepMax {
    /// How far above the maximum a load is known to fail, kg.
    pub const TOLERANCE_KG: f64 = 0.01;

    /// The maximum in steps that a gym can load.
    ///
    /// A maximum within the tolerance below a step counts as that step.
    /// **Fails** on a step that no plate gives.
    pub fn in_steps(self, step: Mass) -> Result<LoadableMax> {
        let step_kg = step.as_kg();
        let bound = &bounds().loading_step;
        if !bound.holds(step_kg) {
            return Err(Error::bad(MaximumSearchFault::LoadingStep {
                step,
                least: Mass::from_kg(bound.least()),
                most: Mass::from_kg(bound.most()),
            }));
        }
        let steps = ((self.load.as_kg() + 0.5 * Self::TOLERANCE_KG) / step_kg).floor();
        Ok(LoadableMax {
            load: Mass::from_kg(steps * step_kg),
            failed: Mass::from_kg((steps + 1.0) * step_kg),
        })
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
    let body_kg = body_on_the_bar_kg(template);
    let load_kg = share * (one_rm.load.as_kg() + body_kg) - body_kg;
    (load_kg >= -1.0e-9).then(|| Mass::from_kg(load_kg.max(0.0)))
}

/// The lifter's own mass where it is part of what a setup weighs, else 0, kg.
fn body_on_the_bar_kg(template: &Setup) -> f64 {
    let own = |item: &Item| match item {
        Item::Weight(Weight::BodyMass(mass)) => mass.as_kg(),
        _ => 0.0,
    };
    template.items.iter().map(own).sum()
}

impl RepModel {
    /// The largest load that is lifted with the rest of a setup on the bar, to
    /// [`OneRepMax::TOLERANCE_KG`].
    ///
    /// # Algorithm
    /// 1. From what full activation holds at its weakest place, go down or up until one load is lifted
    ///    and one is not.
    /// 2. Narrow the bracket until it is as wide as the tolerance: by the straight line through how slow the two heaviest
    ///    lifts became, and by halving where that does not lead on.
    ///
    /// Both first with steps of time four times as long, then from what they found with the steps asked for, on which alone
    /// the answer rests: long steps cost a quarter.
    ///
    /// It is lifted even where the repetition itself is [handed over](After::HandOver) at the bottom.
    /// **Fails** when even no plain load at all is lifted.
    pub fn one_rm(&self, template: &Setup, options: &RepOptions) -> Result<OneRepMax> {
        let options = RepOptions {
            after: After::Drive,
            ..*options
        };
        options.check()?;
        self.check_lowering(&options)?;
        let rough = RepOptions {
            step: options.step * ROUGH_STEPS,
            ..options
        };
        let slowest =
            |options: &RepOptions, load| self.slowest(&with_load(template, load), options);
        let near = largest(Near::Within(self.held_anywhere_kg(&options)), |load| {
            slowest(&rough, load)
        });
        let near = match near {
            Ok(near) => Near::At(near.load.as_kg()),
            Err(_) => Near::Within(self.held_anywhere_kg(&options)),
        };
        largest(near, |load| slowest(&options, load))
    }

    /// The largest load that a lifter lowers in this time under control.
    ///
    /// Control: at no place does the even lowering ask for more than full activation; spotters stop and
    /// lift the load. It starts where the lift of the same options is finished, from a hold.
    /// **Fails** as [`RepModel::one_rm`].
    pub fn eccentric_max(
        &self,
        template: &Setup,
        time: Duration,
        options: &RepOptions,
    ) -> Result<OneRepMax> {
        let options = RepOptions {
            lowering: Some(time),
            after: After::HandOver,
            ..*options
        };
        options.check()?;
        self.check_lowering(&options)?;
        let time_s = options
            .lowering_s()
            .ok_or_else(|| Error::bad(MaximumSearchFault::NoLoweringTime))?;
        let enhancement = if options.enhancement {
            Enhancement::of(self.dynamics())
        } else {
            Enhancement::none()
        };
        largest(Near::Within(self.held_anywhere_kg(&options)), |load| {
            let setup = with_load(template, load);
            let history = (enhancement, Tiring::of(self.dynamics()));
            let (most, _) = most_asked(&self.equation(&setup), history, &options, time_s);
            Ok((most <= 1.0).then_some(1.0 - most))
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

/// How much longer the steps of time are with which a maximum is first looked for.
const ROUGH_STEPS: f64 = 4.0;

/// Where the search for a maximum begins.
#[derive(Debug, Clone, Copy)]
enum Near {
    /// Some way off, kg.
    Within(f64),
    /// A few tolerances off at most, kg.
    At(f64),
}

impl Near {
    const fn kg(self) -> f64 {
        match self {
            Self::Within(kg) | Self::At(kg) => kg,
        }
    }

    /// The first stride from so many steps, and how much longer the next one is.
    fn strides(self, guess: u64) -> (u64, u64) {
        match self {
            Self::Within(_) => ((guess / 32).max(1), 2),
            Self::At(_) => (1, 4),
        }
    }
}

/// The largest load that holds.
///
/// `holds` says how much is left of what ends at the limit, falling with the load; nothing of a load that does not hold.
/// What is left only leads the search: the answer is between a load that holds and the next one, which does not.
fn largest(near: Near, mut holds: impl FnMut(Mass) -> Result<Option<f64>>) -> Result<OneRepMax> {
    // Whole steps of the tolerance, so that a maximum has as many digits as are known of it.
    let per_kg = 1.0 / OneRepMax::TOLERANCE_KG;
    let most = (HIGHEST_KG * per_kg) as u64;
    let of = |steps: u64| Mass::from_kg(steps as f64 / per_kg);
    let guess = ((near.kg().clamp(1.0, HIGHEST_KG) * per_kg) as u64).clamp(1, most);
    let mut left = LeftOver::default();
    let mut is_held = |steps: u64| -> Result<bool> {
        let found = holds(of(steps))?;
        left.note(steps, found);
        Ok(found.is_some())
    };
    let (mut low, mut high) = bracket(guess, near.strides(guess), most, &mut is_held)?;
    let (mut width, mut since) = (high - low, 0);
    while high - low > 1 {
        let is_slow = since == PATIENCE;
        let trial = left.limit().filter(|_| !is_slow);
        let trial = trial.map_or(u64::midpoint(low, high), |limit| {
            limit.clamp(low + 1, high - 1)
        });
        let found = holds(of(trial))?;
        left.note(trial, found);
        if found.is_some() {
            low = trial;
        } else {
            high = trial;
        }
        since += 1;
        if is_slow || 2 * (high - low) <= width {
            (width, since) = (high - low, 0);
        }
    }
    if low == 0 && holds(of(0))?.is_none() {
        return Err(Error::no_answer(MaximumSearchFault::NothingLifted));
    }
    Ok(OneRepMax { load: of(low) })
}

/// Trials by the straight line that may pass without the bracket's being halved.
const PATIENCE: u32 = 2;

/// What was left at the two heaviest loads that held, and how often the line through them led too far since.
#[derive(Debug, Default)]
struct LeftOver {
    heaviest: Option<(u64, f64)>,
    before: Option<(u64, f64)>,
    too_far: u32,
}

impl LeftOver {
    fn note(&mut self, steps: u64, left: Option<f64>) {
        let Some(left) = left else {
            self.too_far += 1;
            return;
        };
        self.too_far = 0;
        if self.heaviest.is_none_or(|(heaviest, _)| steps > heaviest) {
            self.before = self.heaviest.replace((steps, left));
        }
    }

    /// Where nothing would be left; after a trial that led too far, ever nearer to what held.
    fn limit(&self) -> Option<u64> {
        let ((heavy, less), (light, more)) = (self.heaviest?, self.before?);
        let ahead = (heavy - light) as f64 * less / (more - less);
        let ahead = ahead * 0.25_f64.powi(self.too_far.min(60) as i32);
        (more > less).then(|| heavy + ahead.clamp(1.0, HIGHEST_KG / OneRepMax::TOLERANCE_KG) as u64)
    }
}

/// A number of steps that holds (or 0) and a larger one that does not, by ever longer strides.
fn bracket(
    guess: u64,
    (mut stride, longer): (u64, u64),
    most: u64,
    is_held: &mut impl FnMut(u64) -> Result<bool>,
) -> Result<(u64, u64)> {
    let mut at = guess;
    if is_held(at)? {
        while at < most {
            let next = at.saturating_add(stride).min(most);
            if !is_held(next)? {
                return Ok((at, next));
            }
            at = next;
            stride = stride.saturating_mul(longer);
        }
        let highest = Mass::from_kg(HIGHEST_KG);
        return Err(Error::no_answer(MaximumSearchFault::NoLimit { highest }));
    }
    loop {
        let next = at.saturating_sub(stride);
        if next == 0 || is_held(next)? {
            return Ok((next, at));
        }
        at = next;
        stride = stride.saturating_mul(longer);
    }
}

/// Factors between which one is looked for.
const WEAKEST: f64 = 0.05;
const STRONGEST: f64 = 20.0;

/// The factor on all peak forces with which a lifter's maximum is a known load.
///
/// Limb weight and passive tissue do not grow with strength, so capacity is not simply multiplied:
/// the grid is solved anew for each trial. The known load itself is lifted: the scaled limit lies between
/// one and three tolerances above it.
///
/// # Algorithm
/// Secant steps on the logarithm of factor and limit; half the way, on the logarithm, to a factor with which nothing is lifted;
/// 24 at most.
///
/// **Fails** when known load and body are none, or no factor from 1/20 to 20 gives it.
pub fn scale_for_one_rm(
    movement: &Movement,
    lifter: &Lifter,
    template: &Setup,
    known: Mass,
    options: &RepOptions,
) -> Result<f64> {
    let body_kg = body_on_the_bar_kg(template);
    // The body alone is a maximum where it is lifted.
    if known.as_kg() + body_kg <= 0.0 {
        return Err(Error::bad(MaximumSearchFault::NoneToScaleTo {
            load: known,
        }));
    }
    let target_kg = known.as_kg() + body_kg + 2.0 * OneRepMax::TOLERANCE_KG;
    // One who cannot hold the limbs' own weight has no model; stronger ones have.
    let as_it_is = RepModel::new(movement, lifter);
    let limit_of = |model: &RepModel| -> Result<f64> {
        Ok(model.one_rm(template, options)?.load.as_kg() + body_kg)
    };
    let limit_kg = |factor: f64| -> Result<f64> {
        let model = match &as_it_is {
            // Its own grid is there already.
            Ok(model) if factor == 1.0 => return limit_of(model),
            Ok(model) => model.with_forces_times(|_| factor)?,
            Err(_) => RepModel::new(movement, &stronger(lifter, factor))?,
        };
        limit_of(&model)
    };
    let (mut factor, mut reached_kg) = first_that_lifts(&limit_kg)?;
    let mut power = 1.0;
    let mut too_weak = WEAKEST;
    for _ in 0..24 {
        if (reached_kg - target_kg).abs() <= OneRepMax::TOLERANCE_KG {
            return Ok(factor);
        }
        let secant = factor * (target_kg / reached_kg).powf(power);
        let next = match secant > too_weak {
            true => secant.min(STRONGEST),
            false => (factor * too_weak).sqrt(),
        };
        let next_kg = match limit_kg(next) {
            Ok(next_kg) => next_kg,
            // So weak a lifter lifts nothing at all: no fault of the pose or the setup.
            Err(fault) if fault.kind() == FaultKind::NoAnswer && next < factor => {
                too_weak = next;
                continue;
            }
            Err(fault) if fault.kind() == FaultKind::NoAnswer => break,
            Err(fault) => return Err(fault),
        };
        let gained = (next_kg / reached_kg).ln();
        if gained.abs() > 1.0e-9 {
            power = ((next / factor).ln() / gained).clamp(0.2, 5.0);
        }
        (factor, reached_kg) = (next, next_kg);
    }
    if (reached_kg - target_kg).abs() <= 4.0 * OneRepMax::TOLERANCE_KG {
        return Ok(factor);
    }
    Err(Error::no_answer(MaximumSearchFault::NoStrength {
        load: known,
        nearest: Mass::from_kg(reached_kg - body_kg),
    }))
}

/// The first of some ever larger factors with which anything at all is lifted, and the maximum with it.
fn first_that_lifts(limit_kg: &impl Fn(f64) -> Result<f64>) -> Result<(f64, f64)> {
    let mut factor = 1.0;
    loop {
        match limit_kg(factor) {
            Err(fault) if fault.exit_status() == 1 && factor < 8.0 => factor *= 1.4,
            found => return found.map(|kg| (factor, kg)),
        }
    }
}

/// The same lifter with every peak force multiplied.
#[must_use]
pub fn stronger(lifter: &Lifter, factor: f64) -> Lifter {
    lifter.clone().stronger(factor)
}
