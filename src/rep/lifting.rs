//! The lift: everything the lifter has, until lockout or until the load stops.
//!
//! In: the equation and the state at the bottom. Out: every state on the way and how it ended.

use super::activation::Activation;
use super::enhancement::Enhancement;
use super::equation::{MotionEquation, Terms, Way};
use super::moment::{Moment, Phase};
use super::rep_options::RepOptions;
use super::tiring::Tiring;
use crate::anatomy::Dynamics;
use crate::error::Result;
use crate::numeric::{Steps, integrate};
use std::cell::Cell;

/// How a lift ended.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum LiftEnd {
    /// The end of the range.
    Lockout,
    /// Speed fell to zero before it.
    Stopped,
    /// Speed all but vanished and stayed so.
    Crawled,
}

/// A load slower than this, ranges per second, for this long has stopped: 5 mm/s in a bench press.
/// Assumed: a stall is approached without end (the load meets its balance like a damper), and no
/// judge sees such a bar move.
const CRAWL_SPEED: f64 = 0.015;
const CRAWL_S: f64 = 0.5;
/// No lift takes longer, s.
const LONGEST_S: f64 = 30.0;

/// Place in the range behind which a straightening limb asks for finer steps.
const NEAR_LOCKOUT: f64 = 0.92;

/// Since when a load is slower than a crawl.
#[derive(Debug, Default)]
struct Crawl {
    since: Cell<Option<f64>>,
}

impl Crawl {
    /// Notes the speed at the end of a step.
    fn watch(&self, time_s: f64, speed: f64) {
        let slow = time_s > 0.0 && speed < CRAWL_SPEED;
        self.since
            .set(slow.then(|| self.since.get().unwrap_or(time_s)));
    }

    /// How the lift ends in a state, if it does.
    fn end(&self, goal: f64, time_s: f64, y: &[f64; 6]) -> Option<LiftEnd> {
        if y[0] >= goal {
            Some(LiftEnd::Lockout)
        } else if y[1] <= 0.0 {
            Some(LiftEnd::Stopped)
        } else {
            let slow = self.since.get().is_some_and(|t| time_s - t >= CRAWL_S);
            slow.then_some(LiftEnd::Crawled)
        }
    }
}

/// Everything that stays the same during one lift.
pub(super) struct LiftRun<'a> {
    pub(super) equation: &'a MotionEquation<'a>,
    pub(super) activation: Activation,
    pub(super) enhancement: Enhancement,
    tiring: Tiring,
    pub(super) options: &'a RepOptions,
    /// Share of what could slow the load at once that the lifter plans to stop it with.
    stop_share: f64,
}

impl<'a> LiftRun<'a> {
    pub(super) fn new(
        equation: &'a MotionEquation<'a>,
        dynamics: &Dynamics,
        enhancement: Enhancement,
        options: &'a RepOptions,
    ) -> Self {
        Self {
            equation,
            activation: Activation::of(dynamics),
            enhancement,
            tiring: Tiring::of(dynamics),
            options,
            stop_share: dynamics.stop_share,
        }
    }

    /// The nerves' drive to both sides of the joints: full effort as long as the load can still be stopped.
    ///
    /// ```text
    /// a_stop = −ṡ²/2d,  d = to + 0.02Δ − s;     r = a_stop/(κ·a_most)
    /// u = (1 − w)·u_full + w·u(a_stop),   w = smooth step of r over 0.8-1.2
    /// ```
    /// | symbol   | meaning                                                              | unit |
    /// | -------- | -------------------------------------------------------------------- | ---- |
    /// | `a_stop` | acceleration with which the load comes to rest at the end             | 1/s² |
    /// | `a_most` | the one with everything let go and the antagonists fully active       | 1/s² |
    /// | `κ`      | share of it that a lifter plans with: muscles take time to change     | –    |
    /// | `Δ`      | part of the range that is lifted                                      | –    |
    ///
    /// What is asked beyond letting go is asked of the antagonists. Aiming a little beyond lockout keeps the last
    /// centimetre from taking for ever. **Shape.** Full effort while the load could still be stopped; a slow
    /// load is never braked. **Source.** A bar must not leave the hands; light loads are braked harder than by
    /// gravity in the last part of the way (Sanchez-Medina 2010); bursts of fast aimed movements (Gottlieb et al. 1989,
    /// from memory).
    fn drive(
        &self,
        from: f64,
        time_s: f64,
        (s, speed): (f64, f64),
        terms: &Terms,
        e: f64,
    ) -> (f64, f64) {
        let full = self.activation.full_effort(from, time_s);
        if speed <= 0.0 || self.stop_share <= 0.0 {
            return (full, 0.0);
        }
        let part = self.options.to - self.options.from;
        let left = (self.options.to + 0.02 * part - s).max(0.005 * part);
        let stop = -speed * speed / (2.0 * left);
        let everything = Terms {
            held_back: 1.0,
            ..*terms
        };
        let most = everything.acceleration(0.0, speed);
        if most >= 0.0 {
            return (full, 0.0);
        }
        let weight = smooth_step((stop / (self.stop_share * most) - 0.8) / 0.4);
        if weight == 0.0 {
            return (full, 0.0);
        }
        let needed = terms.needed_for(stop, speed);
        let pull = needed / ((terms.full - terms.track.passive).max(1.0e-9) * e);
        let back = -needed / terms.track.braking.max(1.0e-9);
        (
            full.min((1.0 - weight) * full + weight * pull.clamp(0.0, 1.0)),
            weight * back.clamp(0.0, 1.0),
        )
    }

    /// Lifts from a state at rest at the bottom; `observe` sees every step.
    pub(super) fn run(
        &self,
        start: Moment,
        observe: &mut impl FnMut(Moment),
    ) -> Result<(Moment, LiftEnd)> {
        let crawl = Crawl::default();
        let mut state = [start.s, 0.0, start.activation, 0.0, 0.0, start.spent];
        let mut begun_s = 0.0;
        // The last part gets a step of its own, so the way there is an event like lockout.
        let near = NEAR_LOCKOUT.min(self.options.to);
        for goal in [near, self.options.to] {
            if state[0] >= goal {
                continue;
            }
            let steps = Steps {
                start: begun_s,
                end: LONGEST_S,
                step: self.step_s(&state),
            };
            let arrival = integrate(
                steps,
                state,
                |t, y| self.rate(&start, t, y),
                |t, y| crawl.end(goal, t, y),
                |t, y| {
                    crawl.watch(t, y[1]);
                    // The first state of the second part was the last of the first.
                    if t > begun_s || t == 0.0 {
                        observe(self.moment(&start, t, y));
                    }
                },
            )?;
            (begun_s, state) = (arrival.time, arrival.state);
            let end = arrival.event.unwrap_or(LiftEnd::Crawled);
            if end != LiftEnd::Lockout {
                return Ok((self.moment(&start, begun_s, &state), end));
            }
        }
        Ok((self.moment(&start, begun_s, &state), LiftEnd::Lockout))
    }

    /// What a state of the integration is, a time after the start.
    fn moment(&self, start: &Moment, time_s: f64, y: &[f64; 6]) -> Moment {
        Moment {
            time_s: start.time_s + time_s,
            s: y[0],
            speed: y[1],
            activation: y[2],
            enhancement: self.enhancement.left(start.enhancement, time_s),
            work_j: y[3],
            held_back: y[4],
            spent: y[5],
            phase: Phase::Lifting,
        }
    }

    /// Step of the integration from a state.
    ///
    /// Near lockout the muscles' grip on a fast load fades within a hundredth of the range; a light
    /// load is there in a few tenths of a second.
    fn step_s(&self, state: &[f64; 6]) -> f64 {
        /// Steps per range near lockout, and steps that a lift takes at least elsewhere.
        const PER_RANGE: f64 = 800.0;
        const LEAST_STEPS: f64 = 60.0;
        let option_s = self.options.step.as_s();
        let [s, speed, activation, ..] = *state;
        if s >= NEAR_LOCKOUT {
            return option_s.min((1.0 / (PER_RANGE * speed.max(0.1))).max(1.0e-4));
        }
        let first = self.equation.acceleration(s, speed, activation.max(1.0));
        if first <= 0.0 {
            return option_s;
        }
        let through_s = (2.0 * (self.options.to - s) / first).sqrt();
        option_s.min((through_s / LEAST_STEPS).max(1.0e-4))
    }

    /// Rates of place, speed, activation, net work, the antagonists' activation and what is spent.
    fn rate(&self, start: &Moment, time_s: f64, y: &[f64; 6]) -> [f64; 6] {
        let [s, speed, activation, _, held_back, spent] = *y;
        let mut terms = self.equation.terms(s, speed, Way::Up);
        let e = (1.0 + self.enhancement.left(start.enhancement, time_s)) * (1.0 - spent);
        let (drive, back) = self.drive(start.activation, time_s, (s, speed), &terms, e);
        terms.held_back = held_back;
        [
            speed,
            terms.acceleration(activation * e, speed),
            self.activation.rate(activation, drive),
            terms.net_power_w(activation * e, speed),
            self.activation.rate(held_back, back),
            self.tiring.rate(spent, activation),
        ]
    }
}

/// 0 below 0, 1 above 1, smooth between.
fn smooth_step(x: f64) -> f64 {
    let x = x.clamp(0.0, 1.0);
    x * x * (3.0 - 2.0 * x)
}
