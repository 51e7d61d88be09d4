//! One repetition: lower, turn round, lift.
//!
//! In: an equation, the lifter's constants, the options. Out: every moment and how it ended.

use super::enhancement::Enhancement;
use super::equation::MotionEquation;
use super::lifting::{LiftEnd, LiftRun};
use super::lowering::{Descent, hold, lower};
use super::moment::{Moment, Phase};
use super::rep_options::{After, RepOptions, TurnRound};
use crate::anatomy::Dynamics;
use crate::error::Result;

/// How a repetition ended, before it is told in the units of a trace.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum MotionEnd {
    /// Lifted to the end of the range.
    Lockout,
    /// The load stopped on the way up.
    Stalled,
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
    let bottom = match options.lowering_s() {
        None => at_the_bottom(equation, options, Moment::default()),
        Some(time_s) => {
            let Descent { end, is_lost } = lower(equation, enhancement, options, time_s, observe)?;
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
            pause(equation, enhancement, options, bottom, time.as_s(), observe)
        }
    };
    let lift = LiftRun::new(equation, dynamics, enhancement, options);
    let (end, how) = lift.run(started(equation, ready, options), observe)?;
    let ending = match how {
        LiftEnd::Lockout => MotionEnd::Lockout,
        LiftEnd::Stopped | LiftEnd::Crawled => MotionEnd::Stalled,
    };
    Ok((end, ending))
}

/// Held still at the bottom.
fn at_the_bottom(equation: &MotionEquation, options: &RepOptions, before: Moment) -> Moment {
    let asked = hold(equation, options.from, before.enhancement);
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
    enhancement: Enhancement,
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
    let held = hold(equation, options.from, ready.enhancement).clamp(0.0, 1.0);
    Moment {
        activation: ready.activation.max(held),
        s: options.from,
        speed: 0.0,
        work_j: 0.0,
        phase: Phase::Lifting,
        ..ready
    }
}
