//! The repetition as plain data: what a table, a figure or an animation shows.
//!
//! In: moments of the motion. Out: [`RepTrace`] in the units of the movement.

use super::equation::{MotionEquation, Way};
use super::moment::{Moment, Phase};
use super::phases::MotionEnd;
use super::rep_sample::{RepEnd, RepSample};
use super::sticking_in_motion::{StickingInMotion, sticking_in_motion};
use crate::anatomy::Dof;
use crate::movement::Measure;
use crate::units::STANDARD_GRAVITY_M_S2;

/// A whole repetition.
#[derive(Debug, Clone, PartialEq)]
pub struct RepTrace {
    /// Moments, in order of time.
    pub samples: Vec<RepSample>,
    /// How it ended.
    pub outcome: RepEnd,
    /// Force or torque, and with it the units of the samples.
    pub measure: Measure,
    /// Index of the first sample of the lift; the number of samples where there is none.
    pub lift_start: usize,
    /// The sticking region in motion, where the lift has one.
    pub sticking: Option<StickingInMotion>,
    /// Figures of the lift, where there is one.
    pub lift: Option<LiftFigures>,
}

/// Figures of the lifting phase.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LiftFigures {
    /// How long it took, s.
    pub time_s: f64,
    /// Way over time.
    pub mean_velocity: f64,
    /// The same over the propulsive part: until the load first slows down faster than gravity would.
    pub mean_propulsive_velocity: f64,
    /// Greatest velocity.
    pub peak_velocity: f64,
    /// Mean power between lifter and load, W.
    pub mean_power_w: f64,
    /// Greatest power, W.
    pub peak_power_w: f64,
    /// Greatest force or torque between lifter and load, whole repetition.
    pub peak_force: f64,
    /// The same over the most that the load asks for in the lift when it is not sped up; 0 where the
    /// load asks for nothing, as with a band that lifts more than the bar weighs.
    pub peak_force_over_demand: f64,
    /// Share of the time in which the load slows down.
    pub deceleration_share: f64,
}

impl RepTrace {
    pub(super) fn new(
        equation: &MotionEquation,
        joints: &[Dof],
        moments: &[Moment],
        ending: (Moment, MotionEnd),
    ) -> Self {
        let samples: Vec<RepSample> = moments
            .iter()
            .map(|moment| sample(equation, joints, moment))
            .collect();
        let lift_start = moments
            .iter()
            .position(|moment| moment.phase == Phase::Lifting)
            .unwrap_or(moments.len());
        let (last, how) = ending;
        let position = equation.track.at(last.s).position;
        let outcome = match how {
            MotionEnd::Lockout => RepEnd::Lockout,
            MotionEnd::HandedOver => RepEnd::HandedOver,
            MotionEnd::Stalled => RepEnd::Stalled {
                range: last.s,
                position,
            },
            MotionEnd::NotHeld => RepEnd::NotHeld {
                range: last.s,
                position,
            },
            MotionEnd::LostInLowering => RepEnd::LostInLowering {
                range: last.s,
                position,
            },
        };
        Self {
            outcome,
            measure: equation.track.measure,
            sticking: sticking_in_motion(&samples[lift_start..], outcome),
            lift: figures(&samples, lift_start, equation.gravity_along()),
            samples,
            lift_start,
        }
    }

    /// The lifting phase.
    #[must_use]
    pub fn lifting(&self) -> &[RepSample] {
        &self.samples[self.lift_start..]
    }

    /// Whether the lift reached the end of the range.
    #[must_use]
    pub fn is_lifted(&self) -> bool {
        self.outcome == RepEnd::Lockout
    }
}

fn sample(equation: &MotionEquation, joints: &[Dof], moment: &Moment) -> RepSample {
    let way = match moment.phase {
        Phase::Lowering => Way::Down,
        Phase::Pause | Phase::Lifting => Way::Up,
    };
    let mut terms = equation.terms(moment.s, moment.speed, way);
    terms.held_back = moment.held_back;
    let drive = moment.drive();
    let along = match moment.phase {
        Phase::Pause => 0.0,
        _ => terms.acceleration(drive, moment.speed),
    };
    let lever = terms.track.lever;
    let force = terms.between_hands_and_load(along, moment.speed);
    let capacity = terms.full / lever.max(1.0e-9);
    let limiting = equation.grid.limiting_at(moment.s, moment.speed);
    RepSample {
        time_s: moment.time_s,
        phase: moment.phase,
        range: moment.s,
        position: terms.track.position,
        angle_rad: terms.track.angle_rad,
        velocity: lever * moment.speed,
        acceleration: lever * along + terms.track.lever_slope * moment.speed * moment.speed,
        force,
        demand: terms.demand / lever.max(1.0e-9),
        capacity,
        effort: if capacity > 0.0 {
            force / capacity
        } else {
            f64::INFINITY
        },
        activation: moment.activation,
        held_back: moment.held_back,
        enhancement: moment.enhancement,
        spent: moment.spent,
        limiting: joints[limiting.min(joints.len() - 1)],
        kinetic_j: 0.5 * terms.inertia() * moment.speed * moment.speed,
        work_j: moment.work_j,
    }
}

/// Work between lifter and load, J, and the time in which the load slows down, s.
fn energy_and_slowing(lift: &[RepSample]) -> (f64, f64) {
    let power = |sample: &RepSample| sample.force * sample.velocity;
    let (mut energy_j, mut slowing_s) = (0.0, 0.0);
    for pair in lift.windows(2) {
        let step_s = pair[1].time_s - pair[0].time_s;
        energy_j += 0.5 * step_s * (power(&pair[0]) + power(&pair[1]));
        if pair[0].acceleration + pair[1].acceleration < 0.0 {
            slowing_s += step_s;
        }
    }
    (energy_j, slowing_s)
}

fn figures(samples: &[RepSample], lift_start: usize, gravity: f64) -> Option<LiftFigures> {
    let lift = &samples[lift_start..];
    let (first, last) = (lift.first()?, lift.last()?);
    let time_s = last.time_s - first.time_s;
    if time_s <= 0.0 {
        return None;
    }
    let braked = lift
        .iter()
        .position(|sample| sample.acceleration < -gravity)
        .filter(|index| *index > 0)
        .map_or(last, |index| &lift[index]);
    let power = |sample: &RepSample| sample.force * sample.velocity;
    let (energy_j, slowing_s) = energy_and_slowing(lift);
    let greatest = |of: &dyn Fn(&RepSample) -> f64, over: &[RepSample]| {
        over.iter().map(of).fold(f64::NEG_INFINITY, f64::max)
    };
    let most_asked = greatest(&|s| s.demand, samples);
    Some(LiftFigures {
        time_s,
        mean_velocity: (last.position - first.position) / time_s,
        mean_propulsive_velocity: (braked.position - first.position)
            / (braked.time_s - first.time_s),
        peak_velocity: greatest(&|s| s.velocity, lift),
        mean_power_w: energy_j / time_s,
        peak_power_w: greatest(&power, lift),
        peak_force: greatest(&|s| s.force, samples),
        peak_force_over_demand: if most_asked > 1.0e-3 {
            greatest(&|s| s.force, samples) / most_asked
        } else {
            0.0
        },
        deceleration_share: slowing_s / time_s,
    })
}

impl MotionEquation<'_> {
    /// Deceleration below which a load no longer is pushed: gravity along the path, or, about a
    /// joint, gravity over the distance of the load from it.
    fn gravity_along(&self) -> f64 {
        match self.track.measure {
            Measure::Force => STANDARD_GRAVITY_M_S2,
            Measure::Torque => {
                let middle = &self.track.points[self.track.points.len() / 2];
                let path_m = middle.dx_ds_m.hypot(middle.dz_ds_m).max(1.0e-3);
                STANDARD_GRAVITY_M_S2 * self.track.at(0.5).lever / path_m
            }
        }
    }
}
