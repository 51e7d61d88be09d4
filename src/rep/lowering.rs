//! Lowering at a tempo: along the plan while strength suffices, else by the equation of motion.
//!
//! In: the equation, the options. Out: every state on the way, and whether the load got away.

use super::enhancement::Enhancement;
use super::equation::{MotionEquation, Terms, Way};
use super::moment::{Moment, Phase};
use super::rep_options::{After, RepOptions};
use super::tiring::Tiring;
use crate::error::Result;
use crate::numeric::{Steps, integrate};
use std::f64::consts::PI;

/// How the lowering ended.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Descent {
    /// The last moment of it.
    pub(super) end: Moment,
    /// Whether the load ran away from the lifter before the bottom.
    pub(super) is_lost: bool,
}

/// Moments a second of a planned lowering, and their smallest and largest number.
const RATE_PER_S: f64 = 50.0;
const FEWEST: f64 = 20.0;
const MOST: f64 = 400.0;

/// The plan of a lowering.
///
/// ```text
/// before a lift   s(t) = to − Δ·(1 − cos(πt/T))/2,   |ṡ| = (π/T)·Δ·√(σ(1 − σ)),   σ = (to − s)/Δ
/// to spotters     s(t) = to − Δ·t/T
/// ```
/// **Shape.** From rest to rest, and the braking at the bottom passes over into the lift without a
/// jump; or steady, because spotters stop the load. **Source.** Assumed; lowering in a bench press is
/// one smooth stroke (Elliott 1989); eccentric tests ask for an even count (Kelly 2015).
#[derive(Debug, Clone, Copy)]
struct LoweringPlan {
    from: f64,
    to: f64,
    time_s: f64,
    is_steady: bool,
}

impl LoweringPlan {
    fn of(options: &RepOptions, time_s: f64) -> Self {
        Self {
            from: options.from,
            to: options.to,
            time_s,
            is_steady: options.after == After::HandOver,
        }
    }

    /// Number of moments in which it is walked through, and the time between them.
    fn walked_in(&self) -> (usize, f64) {
        let count = (RATE_PER_S * self.time_s).clamp(FEWEST, MOST).round();
        (count as usize, self.time_s / count)
    }

    /// Place, speed and acceleration at a time.
    fn at(&self, time_s: f64) -> (f64, f64, f64) {
        let span = self.to - self.from;
        if self.is_steady {
            let speed = -span / self.time_s;
            return (self.to + speed * time_s, speed, 0.0);
        }
        let (half, turn) = (0.5 * span, PI / self.time_s);
        let phase = turn * time_s;
        (
            self.to - half * (1.0 - phase.cos()),
            -half * turn * phase.sin(),
            -half * turn * turn * phase.cos(),
        )
    }

    fn peak_speed(&self) -> f64 {
        let mean = (self.to - self.from) / self.time_s;
        if self.is_steady {
            mean
        } else {
            0.5 * PI * mean
        }
    }

    /// Acceleration that brings a load at a place and speed back to the plan.
    fn correction(&self, s: f64, speed: f64) -> f64 {
        /// Time in which a lifter corrects the speed, s (assumed: a fast voluntary reaction).
        const CORRECTED_IN_S: f64 = 0.15;
        if self.is_steady {
            return (-self.peak_speed() - speed) / CORRECTED_IN_S;
        }
        let span = self.to - self.from;
        let done = ((self.to - s) / span).clamp(0.0, 1.0);
        let planned = self.peak_speed() * 2.0 * (done * (1.0 - done)).sqrt();
        let slowest = 0.05 * self.peak_speed();
        let along = -0.5 * span * (PI / self.time_s).powi(2) * (1.0 - 2.0 * done);
        along + (-planned.max(slowest) - speed) / CORRECTED_IN_S
    }
}

/// Lowers from `to` to `from`.
pub(super) fn lower(
    equation: &MotionEquation,
    (enhancement, tiring): (Enhancement, Tiring),
    options: &RepOptions,
    time_s: f64,
    observe: &mut impl FnMut(Moment),
) -> Result<Descent> {
    let plan = LoweringPlan::of(options, time_s);
    let (count, step_s) = plan.walked_in();
    let mut before = Moment::default();
    for k in 0..=count {
        let at_s = k as f64 * step_s;
        let (s, speed, acceleration) = plan.at(at_s);
        let terms = equation.terms(s, speed, Way::Down);
        let drive = terms.drive_for(acceleration, speed);
        let share = if k == 0 {
            0.0
        } else {
            enhancement.after_lowering(before.enhancement, before.activation, speed, step_s)
        };
        let spent = if k == 0 {
            0.0
        } else {
            tiring.after(before.spent, before.activation, step_s)
        };
        let asked = drive / ((1.0 + share) * (1.0 - spent));
        if asked > 1.0 && k > 0 {
            let rest = Overpowered::new(equation, (enhancement, tiring), (&plan, options));
            return rest.run(before, options.step.as_s(), observe);
        }
        before = Moment {
            time_s: at_s,
            s,
            speed,
            activation: asked.clamp(0.0, 1.0),
            enhancement: share,
            spent,
            ..before
        };
        observe(before);
    }
    Ok(Descent {
        end: before,
        is_lost: false,
    })
}

/// Why a lowering that is not on its plan ends.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum DescentEnd {
    Bottom,
    RunAway,
}

/// A lowering in which the load is, at times, more than the lifter can keep to the plan.
struct Overpowered<'a> {
    equation: &'a MotionEquation<'a>,
    enhancement: Enhancement,
    tiring: Tiring,
    plan: &'a LoweringPlan,
    bottom: f64,
    /// Speed from which the load has got away, 1/s.
    runaway: f64,
}

impl<'a> Overpowered<'a> {
    fn new(
        equation: &'a MotionEquation<'a>,
        (enhancement, tiring): (Enhancement, Tiring),
        (plan, options): (&'a LoweringPlan, &RepOptions),
    ) -> Self {
        /// A load this much faster than planned, and faster than this, has got away (assumed).
        const TIMES_PLANNED: f64 = 2.0;
        const FASTER_THAN_M_S: f64 = 0.3;
        let lever = equation.track.at(0.5 * (options.from + options.to)).lever;
        Self {
            equation,
            enhancement,
            tiring,
            plan,
            bottom: options.from,
            runaway: (TIMES_PLANNED * plan.peak_speed()).max(FASTER_THAN_M_S / lever.max(1.0e-6)),
        }
    }

    /// Activation that brings the load back to the plan, as far as there is so much, and the equation's terms.
    fn asked(&self, [s, speed, share, spent]: &[f64; 4]) -> (f64, Terms) {
        let terms = self.equation.terms(*s, *speed, Way::Down);
        let drive = terms.drive_for(self.plan.correction(*s, *speed), *speed);
        let activation = drive / ((1.0 + share) * (1.0 - spent));
        (activation.clamp(0.0, 1.0), terms)
    }

    /// Rates of place, speed, extra force and spent strength.
    fn rate(&self, y: &[f64; 4]) -> [f64; 4] {
        let (activation, terms) = self.asked(y);
        let stretch = self.enhancement.rate(y[2], activation, y[1].min(0.0));
        [
            y[1],
            terms.acceleration(activation * (1.0 + y[2]) * (1.0 - y[3]), y[1]),
            stretch,
            self.tiring.rate(y[3], activation),
        ]
    }

    fn end(&self, y: &[f64; 4]) -> Option<DescentEnd> {
        if y[0] <= self.bottom {
            Some(DescentEnd::Bottom)
        } else {
            (-y[1] > self.runaway).then_some(DescentEnd::RunAway)
        }
    }

    fn moment(&self, time_s: f64, y: &[f64; 4]) -> Moment {
        Moment {
            time_s,
            s: y[0],
            speed: y[1],
            activation: self.asked(y).0,
            enhancement: y[2],
            spent: y[3],
            work_j: 0.0,
            held_back: 0.0,
            phase: Phase::Lowering,
        }
    }

    /// The rest of the lowering from a moment.
    fn run(&self, start: Moment, step_s: f64, observe: &mut impl FnMut(Moment)) -> Result<Descent> {
        let steps = Steps {
            start: start.time_s,
            end: start.time_s + 10.0 + 3.0 * self.plan.time_s.min(20.0),
            step: step_s,
        };
        let state = [start.s, start.speed, start.enhancement, start.spent];
        let arrival = integrate(
            steps,
            state,
            |_, y| self.rate(y),
            |_, y| self.end(y),
            |t, y| observe(self.moment(t, y)),
        )?;
        Ok(Descent {
            end: self.moment(arrival.time, &arrival.state),
            is_lost: arrival.event == Some(DescentEnd::RunAway),
        })
    }
}

/// Largest activation that a lowering by the plan asks for, and where.
///
/// **Shape.** Above 1 where the lifter cannot keep to the plan.
pub(super) fn most_asked(
    equation: &MotionEquation,
    (enhancement, tiring): (Enhancement, Tiring),
    options: &RepOptions,
    time_s: f64,
) -> (f64, f64) {
    let plan = LoweringPlan::of(options, time_s);
    let (count, step_s) = plan.walked_in();
    let (mut most, mut place) = (0.0, options.to);
    let (mut share, mut spent, mut activation) = (0.0, 0.0, 0.0);
    for k in 0..=count {
        let (s, speed, acceleration) = plan.at(k as f64 * step_s);
        let terms = equation.terms(s, speed, Way::Down);
        share = enhancement.after_lowering(share, activation, speed, step_s);
        spent = tiring.after(spent, activation, step_s);
        let asked = terms.drive_for(acceleration, speed) / ((1.0 + share) * (1.0 - spent));
        activation = asked.clamp(0.0, 1.0);
        if asked > most {
            (most, place) = (asked, s);
        }
    }
    (most, place)
}

/// What a hold at a place asks of activation, with what full activation makes now over what it makes fresh.
pub(super) fn hold(equation: &MotionEquation, s: f64, force_per_activation: f64) -> f64 {
    equation.terms(s, 0.0, Way::Up).drive_for(0.0, 0.0) / force_per_activation
}
