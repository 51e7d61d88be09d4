//! A lifter in a movement, ready to be moved: nodes of the grid are solved once, repetitions are then cheap.
//!
//! In: a movement, a lifter, perhaps a setup. Out: [`RepModel`], which runs repetitions.

use super::braking::braking;
use super::capacity_grid::CapacityGrid;
use super::equation::MotionEquation;
use super::fibre_nodes::FibreNodes;
use super::grid_ground::GridGround;
use super::grid_nodes::{GridNodes, KnownFibres};
use super::moment::{Moment, Phase};
use super::phases::{MotionEnd, is_finished, repetition};
use super::rep_options::{After, RepOptions};
use super::repetition_trace::RepTrace;
use super::track::Track;
use crate::anatomy::{Dof, Dynamics, Lifter};
use crate::bounds::bounds;
use crate::capacity::{Acting, plain_direction};
use crate::demand::{patterns, put_up};
use crate::error::{Error, RepetitionFault, Result};
use crate::movement::{Measure, Movement, PlaneForce, Range, trace};
use crate::resistance::{Motion, Setup};
use crate::units::{Duration, Speed};
use std::sync::Arc;

/// Poses over the range, evenly spaced.
const PLACES: usize = 201;
/// Fewer poses than this do not show how capacity runs over the range.
const FEWEST_POSES: usize = 21;
/// Every fourth pose carries a column of the grid up to the first place, every second up to the
/// second, then every one: capacity climbs ever more steeply towards a straight limb.
const COARSE_TO: f64 = 0.8;
const MIDDLE_TO: f64 = 0.92;

/// A lifter in a movement.
#[derive(Debug, Clone)]
pub struct RepModel {
    track: Track,
    grid: Arc<CapacityGrid>,
    /// Fibres at the grid's nodes, shared with models of the same body.
    fibres: Arc<FibreNodes>,
    ground: Arc<GridGround>,
}

impl RepModel {
    /// The model for loads that act in the plain direction of the movement.
    ///
    /// **Fails** if the path cannot be closed or a pose cannot be held.
    pub fn new(movement: &Movement, lifter: &Lifter) -> Result<Self> {
        let range = trace(movement, lifter, PLACES)?;
        let plain = plain_direction(range.carrier);
        let directions = vec![plain; range.poses.len()];
        Self::over(range, lifter, &directions)
    }

    /// The model for the direction in which a setup pulls at each place, as with bands from the side.
    ///
    /// **Fails** as [`RepModel::new`].
    pub fn for_setup(movement: &Movement, lifter: &Lifter, setup: &Setup) -> Result<Self> {
        let (range, directions) = pulled(movement, lifter, setup)?;
        Self::over(range, lifter, &directions)
    }

    /// The model over poses that are at hand, with the load's unit direction at each.
    ///
    /// **Fails** with fewer than 21 poses, and as [`RepModel::new`].
    pub fn over(range: Range, lifter: &Lifter, directions: &[PlaneForce]) -> Result<Self> {
        let last = range.poses.len().saturating_sub(1);
        if last + 1 < FEWEST_POSES || directions.len() != range.poses.len() {
            return Err(Error::bad(RepetitionFault::TooFewPoses {
                poses: range.poses.len(),
                directions: directions.len(),
                least: FEWEST_POSES,
            }));
        }
        let ground = GridGround {
            acting: Acting::of(lifter, &range.poses)?,
            directions: directions.into(),
            body_mass: lifter.body_mass,
            dynamics: lifter.curves.dynamics.clone(),
            joints: range.poses[0].coordinates.iter().map(|c| c.dof).collect(),
            range: Arc::new(range),
        };
        Self::solved(ground, KnownFibres::Nothing)
    }

    /// The same body in the same lift with its muscles' peak forces multiplied, each by the factor for its name.
    ///
    /// **Fails** as [`RepModel::new`].
    pub fn with_forces_times(&self, factor: impl Fn(&str) -> f64) -> Result<Self> {
        self.of_other_strength(factor, KnownFibres::OfSameBody(&self.fibres))
    }

    /// The same on the same speeds, so that [`RepModel::with_mean_of`] can take the mean of several.
    ///
    /// **Fails** as [`RepModel::new`].
    pub fn on_same_speeds_with_forces_times(&self, factor: impl Fn(&str) -> f64) -> Result<Self> {
        self.of_other_strength(factor, KnownFibres::OnItsSpeeds(&self.fibres))
    }

    fn of_other_strength(
        &self,
        factor: impl Fn(&str) -> f64,
        known: KnownFibres<'_>,
    ) -> Result<Self> {
        let ground = GridGround {
            acting: self.ground.acting.with_forces_times(factor),
            ..(*self.ground).clone()
        };
        Self::solved(ground, known)
    }

    /// This lift with the weighted mean of what weaker lifters can hold; limbs and tissue that does not tire are its own.
    #[must_use]
    pub fn with_mean_of(&self, parts: &[(f64, &Self)]) -> Self {
        let grids = parts.iter();
        let grids = grids.map(|(weight, model)| (*weight, Arc::clone(&model.grid)));
        Self {
            grid: CapacityGrid::mean_of(grids.collect())
                .map_or_else(|| Arc::clone(&self.grid), Arc::new),
            fibres: Arc::clone(&self.fibres),
            track: self.track.clone(),
            ground: Arc::clone(&self.ground),
        }
    }

    fn solved(ground: GridGround, known: KnownFibres<'_>) -> Result<Self> {
        let GridGround {
            acting,
            range,
            directions,
            ..
        } = &ground;
        let braking = braking(acting, range, directions, ground.body_mass)?;
        let track = Track::new(range, acting, &braking);
        let places = columns_of(range.poses.len() - 1);
        let passive = track.passive_at_places();
        let ground = Arc::new(ground);
        let nodes = GridNodes::of(&ground, places, &passive, known)?;
        Ok(Self {
            fibres: Arc::clone(nodes.fibres()),
            grid: Arc::new(CapacityGrid::through(nodes)),
            track,
            ground,
        })
    }

    /// Simulates one repetition.
    ///
    /// **Fails** on options outside what is possible; a load that is not lifted is an outcome.
    pub fn run(&self, setup: &Setup, options: &RepOptions) -> Result<RepTrace> {
        options.check()?;
        self.check_lowering(options)?;
        let equation = self.equation(setup);
        let mut moments: Vec<Moment> = Vec::with_capacity(1024);
        let ending = repetition(&equation, &self.ground.dynamics, options, &mut |m| {
            moments.push(m)
        })?;
        Ok(RepTrace::new(
            &equation,
            &self.ground.joints,
            &moments,
            ending,
        ))
    }

    /// Checks that no planned lowering moves the load faster than any is moved.
    ///
    /// ```text
    /// v = k·d/T ≤ v_most      d the load's way, T the time, k = π/2 for one stroke from rest to rest, 1 for an even one
    /// ```
    /// **Source.** The plan of the lowering; `v_most` as for a capacity in motion (`models/bounds.ron`, `held_speed`).
    /// **Fails** with the shortest time there can be.
    pub(super) fn check_lowering(&self, options: &RepOptions) -> Result<()> {
        let Some(time_s) = options.lowering_s() else {
            return Ok(());
        };
        let is_even = options.after == After::HandOver;
        let share = if is_even {
            1.0
        } else {
            0.5 * std::f64::consts::PI
        };
        let largest = bounds().held_speed.most();
        let shortest_s = share * self.way_m(options) / largest;
        if time_s >= shortest_s {
            return Ok(());
        }
        Err(Error::bad(RepetitionFault::TooFast {
            time: Duration::from_s(time_s),
            shortest: Duration::from_s(shortest_s),
            largest: Speed::from_m_s(largest),
        }))
    }

    /// Way of the load over the part of the range that is lifted, m.
    fn way_m(&self, options: &RepOptions) -> f64 {
        /// Pieces of the way, each as long as its middle says.
        const PIECES: usize = 40;
        let step = (options.to - options.from) / PIECES as f64;
        let middles = (0..PIECES).map(|k| options.from + (k as f64 + 0.5) * step);
        middles.map(|range| self.path_at(range) * step).sum()
    }

    /// Whether a setup is lifted to the end of the range, without keeping the way there.
    ///
    /// **Fails** as [`RepModel::run`].
    pub fn is_lifted(&self, setup: &Setup, options: &RepOptions) -> Result<bool> {
        Ok(self.slowest(setup, options)?.is_some())
    }

    /// The square of the least speed (1/s²) once a lift is under way, of a setup that is lifted to the end of the range:
    /// it falls about as evenly with the load as energy does, to next to nothing at the maximum. Nothing of one that is not.
    ///
    /// **Fails** as [`RepModel::run`].
    pub(super) fn slowest(&self, setup: &Setup, options: &RepOptions) -> Result<Option<f64>> {
        /// Time in which a lift gets under way, s: in as long a crawl counts as a stop.
        const UNDER_WAY_S: f64 = 0.5;
        options.check()?;
        let equation = self.equation(setup);
        // What cannot be held at the end needs no motion to be refused.
        if !is_finished(&equation, options, 0.0) {
            return Ok(None);
        }
        let (mut begun_s, mut slowest) = (None, f64::INFINITY);
        let mut observe = |moment: Moment| {
            if moment.phase == Phase::Lifting {
                let since_s = moment.time_s - *begun_s.get_or_insert(moment.time_s);
                if since_s >= UNDER_WAY_S {
                    slowest = moment.speed.min(slowest);
                }
            }
        };
        let (end, ending) = repetition(&equation, &self.ground.dynamics, options, &mut observe)?;
        let slowest = if slowest.is_finite() {
            slowest
        } else {
            end.speed
        };
        Ok((ending == MotionEnd::Lockout).then_some(slowest * slowest))
    }

    /// The surface of capacity over range and speed, generalised force along the range.
    #[must_use]
    pub fn grid(&self) -> &CapacityGrid {
        &self.grid
    }

    /// Path of the load per unit of range near a place, m.
    pub(super) fn path_at(&self, range: f64) -> f64 {
        let last = (self.track.points.len() - 1) as f64;
        let point = &self.track.points[(range.clamp(0.0, 1.0) * last).round() as usize];
        point.dx_ds_m.hypot(point.dz_ds_m)
    }

    /// The degrees of freedom that move.
    #[must_use]
    pub fn joints(&self) -> &[Dof] {
        &self.ground.joints
    }

    /// Force or torque, and with it the units of traces.
    #[must_use]
    pub fn measure(&self) -> Measure {
        self.track.measure
    }

    pub(super) fn dynamics(&self) -> &Dynamics {
        &self.ground.dynamics
    }

    /// The equation of motion with a setup, for motions other than a repetition.
    #[must_use]
    pub fn equation(&self, setup: &Setup) -> MotionEquation<'_> {
        let rigged = put_up(setup, &self.track.points);
        MotionEquation::new(&self.track, &self.grid, &rigged)
    }
}

/// The poses of a lift, and the direction in which a setup pulls at each.
fn pulled(movement: &Movement, lifter: &Lifter, setup: &Setup) -> Result<(Range, Vec<PlaneForce>)> {
    let range = trace(movement, lifter, PLACES)?;
    let points: Vec<_> = range.poses.iter().map(|pose| pose.load).collect();
    let plain = plain_direction(range.carrier);
    let directions = patterns(setup, &points, &range.carrier, Motion::Hold)
        .iter()
        .map(|felt| unit_or(felt.force, plain))
        .collect();
    Ok((range, directions))
}

/// Indices of the poses that carry a column of the grid.
fn columns_of(last: usize) -> Vec<usize> {
    let scale = last.div_ceil(PLACES - 1);
    let mut columns = vec![0];
    let mut index = 0;
    while index < last {
        let place = index as f64 / last as f64;
        let step = if last < PLACES - 1 {
            1
        } else if place < COARSE_TO {
            4
        } else if place < MIDDLE_TO {
            2
        } else {
            1
        };
        index = (index + step * scale.max(1)).min(last);
        columns.push(index);
    }
    columns
}

fn unit_or(force: PlaneForce, otherwise: PlaneForce) -> PlaneForce {
    let size = force.magnitude_n();
    if size > 1.0e-6 {
        PlaneForce {
            x_n: force.x_n / size,
            z_n: force.z_n / size,
        }
    } else {
        otherwise
    }
}
