//! The strength curve: capacity at every sample of the range.
//!
//! In: poses, acting muscles, the load's direction and a speed. Out: [`CapacityCurve`].

use super::muscle_force::Acting;
use super::programme::{Held, Solver};
use crate::anatomy::Tendon;
use crate::bounds::bounds;
use crate::error::{Error, HoldFault, MovingAt, Result, What};
use crate::movement::{Carrier, Measure, PlaneForce, Range, Reaction};
use crate::units::{AngularSpeed, Speed};

/// Capacity over the range.
#[derive(Debug, Clone, PartialEq)]
pub struct CapacityCurve {
    /// Names of the acting muscles, in the order of [`Held::muscles`].
    pub muscles: Vec<String>,
    /// Their peak forces, N.
    pub peak_forces_n: Vec<f64>,
    /// Their tendons.
    pub tendons: Vec<Tendon>,
    /// What every pose holds, one a sample.
    pub held: Vec<Held>,
    /// Reactions of every pose to the body alone, one side; none where the surroundings answer the load only.
    pub unloaded: Vec<Vec<f64>>,
    /// Force (N, all sides) or torque (N·m, one side).
    pub measure: Measure,
}

impl CapacityCurve {
    /// The capacities, N or N·m, one a sample.
    #[must_use]
    pub fn values(&self) -> Vec<f64> {
        self.held.iter().map(|held| held.capacity).collect()
    }
}

/// How fast a curve is measured.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub enum Pace {
    /// Held still.
    #[default]
    Isometric,
    /// The load travels at this speed, m/s; negative lowers.
    Linear(f64),
    /// The joint turns at this speed, rad/s, in the direction of the movement; negative lowers.
    Angular(f64),
}

impl Pace {
    /// Whether the load goes down at this pace.
    #[must_use]
    pub fn lowers(self) -> bool {
        match self {
            Self::Isometric => false,
            Self::Linear(speed) | Self::Angular(speed) => speed < 0.0,
        }
    }
}

/// The error with the speed at which a pose is not kept.
fn at_pace(error: Error, pace: Pace) -> Error {
    let asked = match pace {
        Pace::Isometric => return error,
        Pace::Linear(speed) => MovingAt::Load(Speed::from_m_s(speed)),
        Pace::Angular(speed) => MovingAt::Joint(AngularSpeed::from_rad_s(speed)),
    };
    error.each(|mut fault| {
        if let What::Hold(HoldFault::NoActivation { moving, .. }) = &mut fault.what {
            *moving = Some(asked);
        }
        fault
    })
}

/// The direction in which a plain load acts on this carrier, as a unit force.
#[must_use]
pub fn plain_direction(carrier: Carrier) -> PlaneForce {
    match carrier {
        Carrier::Sled { angle_rad } => PlaneForce {
            x_n: -angle_rad.cos(),
            z_n: -angle_rad.sin(),
        },
        Carrier::Bar | Carrier::Dumbbell | Carrier::Lever { .. } | Carrier::Body => PlaneForce {
            x_n: 0.0,
            z_n: -1.0,
        },
    }
}

/// Capacity of muscles over a range, along `directions` (one a sample) or the plain load's own.
///
/// **Fails** when a pose cannot be kept, or a pace does not fit the movement's measure.
pub fn curve_of(
    acting: &Acting,
    range: &Range,
    directions: Option<&[PlaneForce]>,
    pace: Pace,
) -> Result<CapacityCurve> {
    let mut solver = Solver::new(acting, range.measure, range.sides)?;
    let plain = plain_direction(range.carrier);
    let held = range
        .poses
        .iter()
        .enumerate()
        .map(|(index, pose)| {
            let direction = directions.map_or(plain, |d| d[index]);
            let size = direction.magnitude_n();
            if size <= 0.0 {
                return Err(Error::no_answer(HoldFault::NoPull {
                    range: pose.load.range,
                }));
            }
            let unit = PlaneForce {
                x_n: direction.x_n / size,
                z_n: direction.z_n / size,
            };
            let held = solver.solve(pose, unit, range_speed(range, index, pace)?);
            held.map_err(|error| at_pace(error, pace))
        })
        .collect::<Result<Vec<_>>>()?;
    Ok(CapacityCurve {
        muscles: acting.muscles.iter().map(|m| m.name.clone()).collect(),
        peak_forces_n: acting
            .muscles
            .iter()
            .map(|m| m.fibre.peak_force_n)
            .collect(),
        tendons: acting
            .muscles
            .iter()
            .map(|m| m.fibre.tendon.clone())
            .collect(),
        held,
        unloaded: unloaded(acting, range)?,
        measure: range.measure,
    })
}

/// Reactions to the body alone where they reach the joints: those of the least activation; the programme of no load.
fn unloaded(acting: &Acting, range: &Range) -> Result<Vec<Vec<f64>>> {
    let mut solver = Solver::new(acting, range.measure, range.sides)?;
    let none = PlaneForce { x_n: 0.0, z_n: 0.0 };
    let reactions = range.poses.iter().map(|pose| {
        let bears_the_body = pose.balances.iter().any(|balance| balance.constant != 0.0);
        let reaches = |reaction: &Reaction| reaction.column.iter().any(|entry| *entry != 0.0);
        if bears_the_body && pose.reactions.iter().any(reaches) {
            // Who cannot keep the pose without a load answers as under the load.
            let alone = solver.solve(pose, none, 0.0);
            alone.map_or_else(|_| Vec::new(), |held| held.reactions)
        } else {
            Vec::new()
        }
    });
    Ok(reactions.collect())
}

/// Speed along the range, 1/s, for a pace at one sample.
pub(super) fn range_speed(range: &Range, index: usize, pace: Pace) -> Result<f64> {
    let pose = &range.poses[index];
    match (pace, range.measure) {
        (Pace::Isometric, _) => Ok(0.0),
        (Pace::Linear(speed_m_s), Measure::Force) => {
            if bounds().held_speed.outside(speed_m_s).is_some() {
                let most_m_s = bounds().held_speed.most();
                return Err(Error::bad(HoldFault::SpeedOutside {
                    speed_m_s,
                    most_m_s,
                }));
            }
            let travel = pose.load.dx_ds_m.hypot(pose.load.dz_ds_m);
            if travel < 1.0e-9 {
                return Err(Error::no_answer(HoldFault::NoTravel {
                    range: pose.load.range,
                }));
            }
            Ok(speed_m_s / travel)
        }
        (Pace::Angular(speed_rad_s), Measure::Torque) => {
            let speed_deg_s = speed_rad_s.to_degrees();
            if bounds().held_turn.outside(speed_deg_s).is_some() {
                let most_deg_s = bounds().held_turn.most();
                return Err(Error::bad(HoldFault::TurnOutside {
                    speed_deg_s,
                    most_deg_s,
                }));
            }
            Ok(speed_rad_s / pose.coordinates[0].slope_rad.abs())
        }
        (Pace::Linear(_), Measure::Torque) => Err(Error::bad(HoldFault::SpeedOfLoadForJoint)),
        (Pace::Angular(_), Measure::Force) => Err(Error::bad(HoldFault::SpeedOfJointForLoad)),
    }
}
