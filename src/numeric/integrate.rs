//! Motion in time by fixed steps, up to an event.
//!
//! In: a rate of change, a start, a step. Out: the state at each step through a callback, and the
//! exact moment at which something happened. Fixed steps make the result the same on every machine.

use crate::error::{Error, NumericFault, Result};

/// From when to when, and in what steps.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Steps {
    /// Time at the start.
    pub start: f64,
    /// Time at which to stop if nothing happens before.
    pub end: f64,
    /// Length of a step; the last one may be shorter.
    pub step: f64,
}

/// Where the integration stopped.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Arrival<const N: usize, E> {
    /// Time of the event, or the end of the time span.
    pub time: f64,
    /// State at that time.
    pub state: [f64; N],
    /// What happened; `None` when time ran out first.
    pub event: Option<E>,
}

/// Halvings of the last step on the way to an event, each a fresh step: a step's length times 2⁻³² is left.
const HALVINGS: u32 = 32;

/// One step of the classical fourth-order method.
///
/// ```text
/// k₁ = f(t, y),  k₂ = f(t + h/2, y + h k₁/2),  k₃ = f(t + h/2, y + h k₂/2),  k₄ = f(t + h, y + h k₃)
/// y(t + h) = y + h (k₁ + 2k₂ + 2k₃ + k₄) / 6
/// ```
/// | symbol | meaning               | range |
/// | ------ | --------------------- | ----- |
/// | `t`    | time                  | any   |
/// | `y`    | state                 | any   |
/// | `h`    | length of the step    | any   |
///
/// **Shape.** Error per step of order h⁵, over a span of order h⁴, where `f` is smooth.
/// **Source.** Kutta 1901, Z. Math. Phys. 46:435-453 (from memory).
/// **Fails.** Never; numbers that are none pass through and are caught by [`integrate`].
fn runge_kutta_step<const N: usize>(
    time: f64,
    state: &[f64; N],
    step: f64,
    rate: &mut impl FnMut(f64, &[f64; N]) -> [f64; N],
) -> [f64; N] {
    let moved = |along: &[f64; N], by: f64| -> [f64; N] {
        std::array::from_fn(|i| state[i] + by * along[i])
    };
    let half = step / 2.0;
    let k1 = rate(time, state);
    let k2 = rate(time + half, &moved(&k1, half));
    let k3 = rate(time + half, &moved(&k2, half));
    let k4 = rate(time + step, &moved(&k3, step));
    std::array::from_fn(|i| state[i] + step / 6.0 * (k1[i] + 2.0 * (k2[i] + k3[i]) + k4[i]))
}

/// Steps through time until something happens or time runs out.
///
/// `event` is asked after each step, not at the start; on its first answer the last step is halved
/// again and again until the moment is known to 2⁻³² of a step, each time by one fresh step from the
/// state before. `observe` sees the start, the end of each whole step, and the arrival.
///
/// **Shape.** Error over a span of order h⁴, where the rate is smooth (h: step). An event that comes and goes within one step is missed.
/// **Fails.** When the steps are none, or the state is no longer finite (with the time).
///
/// ```
/// use torquill::numeric::{Steps, integrate};
/// // A ball dropped from 1 m: when does it reach the floor?
/// let steps = Steps { start: 0.0, end: 2.0, step: 0.001 };
/// let fall = |_: f64, y: &[f64; 2]| [y[1], -9.81];
/// let floor = |_: f64, y: &[f64; 2]| (y[0] <= 0.0).then_some("floor");
/// let landed = integrate(steps, [1.0, 0.0], fall, floor, |_, _| {})?;
/// assert_eq!(landed.event, Some("floor"));
/// assert!((landed.time - (2.0_f64 / 9.81).sqrt()).abs() < 1e-12);
/// # Ok::<(), torquill::error::Error>(())
/// ```
///
/// # Errors
/// See **Fails**.
pub fn integrate<const N: usize, E>(
    steps: Steps,
    start: [f64; N],
    mut rate: impl FnMut(f64, &[f64; N]) -> [f64; N],
    mut event: impl FnMut(f64, &[f64; N]) -> Option<E>,
    mut observe: impl FnMut(f64, &[f64; N]),
) -> Result<Arrival<N, E>> {
    let count = steps.count()?;
    let (mut time, mut state) = (steps.start, start);
    check_state(time, &state)?;
    observe(time, &state);
    for k in 1..=count {
        let next_time = steps.time(k, count);
        let next = runge_kutta_step(time, &state, next_time - time, &mut rate);
        check_state(next_time, &next)?;
        if let Some(what) = event(next_time, &next) {
            let whole = Arrival {
                time: next_time,
                state: next,
                event: Some(what),
            };
            let arrival = locate(time, &state, whole, &mut rate, &mut event);
            check_state(arrival.time, &arrival.state)?;
            observe(arrival.time, &arrival.state);
            return Ok(arrival);
        }
        (time, state) = (next_time, next);
        observe(time, &state);
    }
    Ok(Arrival {
        time,
        state,
        event: None,
    })
}

/// The earliest moment of the last step at which the event has happened.
fn locate<const N: usize, E>(
    time: f64,
    state: &[f64; N],
    whole: Arrival<N, E>,
    rate: &mut impl FnMut(f64, &[f64; N]) -> [f64; N],
    event: &mut impl FnMut(f64, &[f64; N]) -> Option<E>,
) -> Arrival<N, E> {
    let (mut before, mut after) = (0.0, whole.time - time);
    let mut arrival = whole;
    for _ in 0..HALVINGS {
        let middle = (before + after) / 2.0;
        let there = runge_kutta_step(time, state, middle, rate);
        match event(time + middle, &there) {
            Some(what) => {
                after = middle;
                arrival = Arrival {
                    time: time + middle,
                    state: there,
                    event: Some(what),
                };
            }
            None => before = middle,
        }
    }
    arrival
}

impl Steps {
    /// More steps than this are taken for a slip of the pen (an hour in steps of 10 µs has fewer).
    const MOST: f64 = 1e9;

    fn count(self) -> Result<u64> {
        let ratio = (self.end - self.start) / self.step;
        let is_good =
            self.step > 0.0 && self.start.is_finite() && ratio > 0.0 && ratio <= Self::MOST;
        if !is_good {
            return Err(Error::bad(NumericFault::NoSteps {
                start: self.start,
                end: self.end,
                step: self.step,
            }));
        }
        // A remainder that is only rounding is no step of its own.
        Ok(((ratio - 1e-9).ceil() as u64).max(1))
    }

    fn time(self, k: u64, count: u64) -> f64 {
        if k == count {
            self.end
        } else {
            self.start + k as f64 * self.step
        }
    }
}

fn check_state<const N: usize>(time: f64, state: &[f64; N]) -> Result<()> {
    match state.iter().find(|value| !value.is_finite()) {
        Some(&value) => Err(Error::no_answer(NumericFault::MotionNotFinite {
            time,
            value,
        })),
        None => Ok(()),
    }
}
