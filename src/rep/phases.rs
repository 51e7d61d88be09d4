//! One repetition: lower, turn round, lift.
//!
//! In: an equation, the lifter's constants, the options. Out: every moment and how it ended.

use super::enhancement::Enhancement;
use super::equation::MotionEquation;
use super::lifting::{LiftEnd, LiftRun};
use super::lowering::{Descent, hold, lower};
use super::moment::{Moment, Phase};
use super::rep_options::{After, RepOptions};
use super::tiring::Tiring;
use crate::anatomy::Dynamics;
use crate::error::Result;
use crate::movement::{Finish, TurnRound};

/// How a repetition ended, before it is told in the units of a trace.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum MotionEnd {
    /// Lifted to the end of the range.
    Lockout,
    /// The load stopped on the way up.
    Stalled,
    /// Thrown to the end of the range, where it cannot be held.
    NotHeld,
    /// The load got away in lowering, and spotters took it.
    LostInLowering,
    /// Lowered to the bottom and handed over there, as planned.
    HandedOver,
}

/// Runs a repetition and shows every moment of it.
pub(super) fn repetition(
    equation: &MotionEquation,
    dynamics: &Dynamics,
    options: &RepOptions,
    observe: &mut impl FnMut(Moment),
) -> Result<(Moment, MotionEnd)> {
    let enhancement = if options.enhancement {
        Enhancement::of(dynamics)
    } else {
        Enhancement::none()
    };
    let tiring = Tiring::of(dynamics);
    let bottom = match options.lowering_s() {
        None => at_the_bottom(equation, options, Moment::default()),
        Some(time_s) => {
            let history = (enhancement, tiring);
            let Descent { end, is_lost } = lower(equation, history, options, time_s, observe)?;
            if is_lost {
                return Ok((end, MotionEnd::LostInLowering));
            }
            if options.after == After::HandOver {
                return Ok((end, MotionEnd::HandedOver));
            }
            end
        }
    };
    let ready = match options.turn {
        TurnRound::TouchAndGo => bottom,
        TurnRound::Pause(time) => {
            let history = (enhancement, tiring);
            pause(equation, history, options, bottom, time.as_s(), observe)
        }
    };
    let lift = LiftRun::new(equation, dynamics, enhancement, options);
    let (end, how) = lift.run(started(equation, ready, options), observe)?;
    let ending = match how {
        LiftEnd::Lockout if !is_finished(equation, options, end.spent) => MotionEnd::NotHeld,
        LiftEnd::Lockout => MotionEnd::Lockout,
        LiftEnd::Stopped | LiftEnd::Crawled => MotionEnd::Stalled,
    };
    Ok((end, ending))
}

/// Whether a load that gets to the end of the range counts as lifted.
///
/// ```text
/// held:  (1 − φ)·C(to, 0) ≥ D(to, 0)     full activation of what is not spent (φ) holds the load still, without
///                                        force left by a stretch
/// ```
/// **Shape.** No speed is asked for: between "let go at once", with which the load does not arrive, and
/// "never let go", with which it arrives at some speed, there is a moment to let go at which it arrives at
/// rest (the way it gets depends continuously on that moment). So a load that full effort brings to the end
/// can also be brought there to rest; whether it then stays is a matter of strength at that place alone.
/// **Source.** Rules of the lifts: motionless at the end (common practice). A load that is thrown past the place
/// where it could be held is no lift, and would make lowering look weaker than lifting.
pub(super) fn is_finished(equation: &MotionEquation, options: &RepOptions, spent: f64) -> bool {
    /// What rounding leaves of a load that is just held.
    const ROUNDING: f64 = 1.0e-9;
    options.finish == Finish::Reached || hold(equation, options.to, 1.0 - spent) <= 1.0 + ROUNDING
}

/// Held still at the bottom.
fn at_the_bottom(equation: &MotionEquation, options: &RepOptions, before: Moment) -> Moment {
    let asked = hold(equation, options.from, before.force_per_activation());
    Moment {
        s: options.from,
        speed: 0.0,
        activation: asked.clamp(0.0, 1.0),
        phase: Phase::Pause,
        ..before
    }
}

/// Holds the load at the bottom for a time; the extra force fades meanwhile.
fn pause(
    equation: &MotionEquation,
    (enhancement, tiring): (Enhancement, Tiring),
    options: &RepOptions,
    bottom: Moment,
    time_s: f64,
    observe: &mut impl FnMut(Moment),
) -> Moment {
    /// Moments of a pause that are shown.
    const SHOWN: usize = 10;
    let mut last = bottom;
    for k in 1..=SHOWN {
        let gone_s = time_s * k as f64 / SHOWN as f64;
        let faded = Moment {
            time_s: bottom.time_s + gone_s,
            enhancement: enhancement.left(bottom.enhancement, gone_s),
            spent: tiring.after(bottom.spent, bottom.activation, gone_s),
            ..bottom
        };
        last = at_the_bottom(equation, options, faded);
        observe(last);
    }
    last
}

/// The first moment of the lift: at rest at the bottom (what a fast load still had, the chest, the
/// safety arms or the stretched tissue took).
///
/// Rubber pulls harder on the way up than on the way down, so a lowering may end with less activation
/// than the load asks for at the turn: it is held until the lift begins.
fn started(equation: &MotionEquation, ready: Moment, options: &RepOptions) -> Moment {
    let held = hold(equation, options.from, ready.force_per_activation()).clamp(0.0, 1.0);
    Moment {
        activation: ready.activation.max(held),
        s: options.from,
        speed: 0.0,
        work_j: 0.0,
        phase: Phase::Lifting,
        ..ready
    }
}
