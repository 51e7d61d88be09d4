//! A pose as a free body: the load and what surroundings push, their levers about every joint, the limbs' own weight, and what
//! holds them all.
//!
//! In: a study, a setup or none, a sample. Out: [`FreeBody`] of one side, whose moments balance at every joint.

use super::asked_torques::{asked_torques_nm, reactions_under};
use super::question::{SetupStudy, Study};
use crate::anatomy::Dof;
use crate::capacity::plain_direction;
use crate::movement::{Measure, PlaneForce, Pose, PushPlace, Reaction, View};
use crate::numeric::Point;

/// One joint of a free body.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FreeJoint {
    /// Its degree of freedom.
    pub dof: Dof,
    /// Its centre in the picture, m.
    pub centre: Point,
    /// Lever of the load about it, m.
    pub lever_m: f64,
    /// The point of the load's line of action that is nearest to the joint, if the picture shows the lever about as long as it is.
    pub foot: Option<Point>,
    /// Moment of the load with the push that comes through the same hand or foot, N·m, positive where muscles have to hold it.
    pub load_nm: f64,
    /// The push's own part of that.
    pub push_nm: f64,
    /// Moment of what else pushes on the body above the joint: a bench.
    pub pushed_nm: f64,
    /// Moment of the limbs' own weight, likewise.
    pub limbs_nm: f64,
    /// What muscles and tissue of the joint have to hold, N·m: the sum of these.
    pub held_nm: f64,
    /// Whether what holds it pulls the joint's angle up, as flexors do, and not down, as extensors do.
    pub by_flexors: bool,
}

/// The floor's answer, where lifter and load stand on it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FloorForce {
    /// Upward force on one side, N.
    pub force_n: f64,
    /// Force along the floor, N.
    pub along_n: f64,
    /// Where it acts, m along the floor of the picture.
    pub at_m: f64,
    /// Weight of the body above the feet, one side, N.
    pub body_n: f64,
    /// Where that acts, m.
    pub body_at_m: f64,
}

/// The push of a bench.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BenchForce {
    /// Force on one side, N.
    pub force: PlaneForce,
    /// Where it acts, m.
    pub at: Point,
}

/// A pose as a free body.
#[derive(Debug, Clone, PartialEq)]
pub struct FreeBody {
    /// Force of the load on one side, N.
    pub load: PlaneForce,
    /// That force with the push that comes through the same hand or foot, as the picture shows it, N.
    pub through: PlaneForce,
    /// Size of both together, in the picture and out of it, N.
    pub through_n: f64,
    /// What the load asks for over what the lifter can hold there: 1 under the most that is held.
    pub effort: f64,
    /// Where it acts in the picture, m.
    pub at: Point,
    /// The bench's push, if one bears the body beside the load.
    pub bench: Option<BenchForce>,
    /// The joints, in the order of their coordinates.
    pub joints: Vec<FreeJoint>,
    /// The floor's answer, if the lift stands on the floor.
    pub floor: Option<FloorForce>,
}

/// A lever that is longer or shorter in the picture by less than this share, and less than this, is drawn: limbs that do not move
/// in the plane of the picture look shorter (a drawing's measures).
const ALIKE: f64 = 0.25;
/// The least difference that is let pass, m.
const ALIKE_M: f64 = 0.02;

impl FreeBody {
    /// A sample of a study under a setup, or under the most that it can hold.
    ///
    /// ```text
    /// M_held = M_load + M_pushed + M_limbs,   M_load = ∓ (J_jᵀ F + R·c_j),   lever = M_load / |F + R|
    /// N = W − F_z − B_z,   moments of N, W, F and the bench's B about the ankle sum to nothing
    /// ```
    /// `J` motion of the load per turn of the joint (m), `F` load of one side (N), `R` push through the same hand or foot with
    /// its torque `c` per unit, square to the load: hands along a bar, a foot along its plate; `W` weight of the body above the
    /// feet, `N` force of the floor. **Source.** Statics. **Fails.** Never.
    #[must_use]
    pub fn of(study: &Study, setup: Option<&SetupStudy>, sample: usize) -> Self {
        let pose = &study.range.poses[sample];
        let load = load_of(study, setup, sample);
        let reactions = reactions_under(study, setup, sample);
        let pushes = Pushes::of(pose, &reactions);
        let outline = &pose.outline;
        let at = match outline.view {
            View::Side => outline.load,
            // Seen from the front the load is drawn between the hands; it acts in each of them.
            View::Front => outline.limbs[0].last().copied().unwrap_or(outline.load),
        };
        let at = pushes.pressed(pose, load, at);
        let through = PlaneForce {
            x_n: load.x_n + pushes.with_load.x,
            z_n: load.z_n + pushes.with_load.z,
        };
        let through_n = load.magnitude_n().hypot(pushes.with_load_n);
        let asked = asked_torques_nm(study, setup, sample);
        let joints = asked.iter().enumerate().map(|(row, held)| {
            let side = if *held < 0.0 { -1.0 } else { 1.0 };
            let limbs_nm = -side * pose.gravity_nm[row];
            let pushed_nm = -side * pushes.beside_nm[row];
            let load_nm = side * held - limbs_nm - pushed_nm;
            let push_nm = -side * pushes.with_load_nm[row];
            let lever_m = load_nm.abs() / through_n.max(f64::MIN_POSITIVE);
            let centre = outline.centres[row];
            let seen_n = through.magnitude_n().max(f64::MIN_POSITIVE);
            let along = Point::new(through.x_n / seen_n, through.z_n / seen_n);
            let foot = at + along * (centre - at).dot(along);
            let off_m = ((foot - centre).length() - lever_m).abs();
            let is_shown = off_m < ALIKE_M.max(ALIKE * lever_m);
            FreeJoint {
                dof: pose.coordinates[row].dof,
                centre,
                lever_m,
                foot: is_shown.then_some(foot),
                load_nm,
                push_nm,
                pushed_nm,
                limbs_nm,
                held_nm: side * held,
                by_flexors: *held >= 0.0,
            }
        });
        Self {
            load,
            through,
            through_n,
            effort: setup.map_or(1.0, |setup| setup.effort[sample]),
            at,
            bench: pushes.bench(),
            joints: joints.collect(),
            floor: floor_of(study, sample, load, &pushes),
        }
    }
}

/// What surroundings do, sorted by where they do it.
struct Pushes {
    /// Force through the hand or foot that bears the load, as the picture shows it, N.
    with_load: Point,
    /// Its size, N.
    with_load_n: f64,
    /// Its moment on every coordinate, N·m.
    with_load_nm: Vec<f64>,
    /// Which way it goes along the plate or bar.
    along: Point,
    /// Moment that moves the place where the load presses, N·m.
    moves_load_nm: f64,
    /// Torque of the pushes beside the load on every coordinate, N·m.
    beside_nm: Vec<f64>,
    /// Forces beside the load: where, how much, and whether it is the floor.
    beside: Vec<(Point, Point, bool)>,
}

impl Pushes {
    fn of(pose: &Pose, reactions: &[f64]) -> Self {
        let mut all = Self {
            with_load: Point::ORIGIN,
            with_load_n: 0.0,
            with_load_nm: vec![0.0; pose.coordinates.len()],
            along: Point::ORIGIN,
            moves_load_nm: 0.0,
            beside_nm: vec![0.0; pose.coordinates.len()],
            beside: Vec::new(),
        };
        for (reaction, size) in pose.reactions.iter().zip(reactions) {
            match reaction.place {
                PushPlace::WithLoad { way } => {
                    all.with_load += way * *size;
                    all.with_load_n += size.abs();
                    all.along = way;
                    for (sum, entry) in all.with_load_nm.iter_mut().zip(&reaction.column) {
                        *sum += size * entry;
                    }
                }
                PushPlace::MovesLoad => all.moves_load_nm += size,
                PushPlace::Beside { at, way, is_floor } => {
                    all.beside.push((at, way * *size, is_floor));
                    for (sum, entry) in all.beside_nm.iter_mut().zip(&reaction.column) {
                        *sum += size * entry;
                    }
                }
                PushPlace::MovesFloor => {}
            }
        }
        all
    }

    /// Where the load presses: on a plate the foot chooses.
    fn pressed(&self, pose: &Pose, load: PlaneForce, at: Point) -> Point {
        let moves = |reaction: &Reaction| reaction.place == PushPlace::MovesLoad;
        if !pose.reactions.iter().any(moves) {
            return at;
        }
        let plate = Point::new(pose.load.x_m, pose.load.z_m);
        plate + self.along * (self.moves_load_nm / load.magnitude_n().max(f64::MIN_POSITIVE))
    }

    /// Force and moment about the picture's origin of the pushes of bench or floor.
    fn sum(&self, floor: bool) -> (Point, f64) {
        let own = self
            .beside
            .iter()
            .filter(|(_, _, is_floor)| *is_floor == floor);
        own.fold((Point::ORIGIN, 0.0), |(force, moment), (at, push, _)| {
            (force + *push, moment + at.cross(*push))
        })
    }

    fn bench(&self) -> Option<BenchForce> {
        let (at, _, _) = self.beside.iter().find(|(_, _, is_floor)| !is_floor)?;
        let (force, _) = self.sum(false);
        Some(BenchForce {
            at: *at,
            force: PlaneForce {
                x_n: force.x,
                z_n: force.z,
            },
        })
    }
}

/// The load of one side.
fn load_of(study: &Study, setup: Option<&SetupStudy>, sample: usize) -> PlaneForce {
    let share = 1.0 / study.range.sides.count();
    let force = match (setup, study.range.measure) {
        (Some(setup), _) => setup.demand.samples[sample].up.force,
        (None, measure) => {
            let plain = plain_direction(study.range.carrier);
            let capacity = study.capacity.held[sample].capacity;
            let lever_m = match measure {
                Measure::Force => 1.0,
                // A torque is that of a weight where the limb carries it.
                Measure::Torque => {
                    let column = study.range.poses[sample].load_jacobian[0];
                    (column.x * plain.x_n + column.z * plain.z_n).abs()
                }
            };
            let size = capacity / lever_m.max(1.0e-3) / share;
            let size = if measure == Measure::Force {
                capacity
            } else {
                size
            };
            PlaneForce {
                x_n: plain.x_n * size,
                z_n: plain.z_n * size,
            }
        }
    };
    PlaneForce {
        x_n: share * force.x_n,
        z_n: share * force.z_n,
    }
}

/// Of a pose that stands on the floor, alone or with a bench.
fn floor_of(study: &Study, sample: usize, load: PlaneForce, pushes: &Pushes) -> Option<FloorForce> {
    let pose = &study.range.poses[sample];
    // Moments count from the ankle, which stands at the picture's origin.
    let ankle = pose.outline.centres.first()?.x;
    if let [_, upright, turning] = &pose.balances[..] {
        let (force, moment_nm) = pushes.sum(true);
        return Some(FloorForce {
            force_n: force.z,
            along_n: force.x,
            at_m: ankle + moment_nm / force.z,
            body_n: -upright.constant,
            body_at_m: ankle + turning.constant / upright.constant,
        });
    }
    let ([balance], [reading]) = (&pose.balances[..], &pose.readings[..]) else {
        return None;
    };
    let over = reading.over.as_ref()?;
    let force_n = over.value(&[0.0], load);
    let moment_nm =
        -(balance.constant + balance.per_load[0] * load.x_n + balance.per_load[1] * load.z_n);
    Some(FloorForce {
        force_n,
        along_n: 0.0,
        at_m: ankle + moment_nm / force_n,
        body_n: over.constant,
        body_at_m: ankle - balance.constant / over.constant,
    })
}
