//! One pose with everything that its calculation is made of, so that it can be worked again by hand.
//!
//! In: a question, a place of the range, a setup or none. Out: [`WorkedPose`]: angles, muscles with the factors of
//! their forces, limbs, surroundings, the load's lever, capacity, prices of moments, demand.

use super::question::Question;
use super::solve::{SolvedLift, load_torque_nm, too_weak};
use super::worked_muscle::{WorkedMuscle, worked_muscles};
use super::worked_place::{AskedPlace, range_of};
use crate::anatomy::{Curves, Dof, PassiveJoint};
use crate::capacity::{Held, Pace, curve_of, plain_direction};
use crate::error::{Error, LiftFault, Result};
use crate::movement::{
    Balance, Carrier, LimbWeight, LoadPoint, Measure, PlaneForce, Pose, Range, ReactionLimit,
    Sides, trace_place,
};
use crate::overlay::effort;
use crate::resistance::{LoadForce, Motion, Setup};

/// A pose worked out.
#[derive(Debug, Clone, PartialEq)]
pub struct WorkedPose {
    /// Title of the movement.
    pub movement_title: String,
    /// Where places are told from.
    pub away_from: String,
    /// Title of the lifter.
    pub lifter_title: String,
    /// Position along the concentric phase.
    pub range: f64,
    /// Travel of the load since the start, m.
    pub travel_m: f64,
    /// Force or torque.
    pub measure: Measure,
    /// One limb or two.
    pub sides: Sides,
    /// How the load is taken.
    pub carrier: Carrier,
    /// The pace that was asked for.
    pub pace: Pace,
    /// The load's travel per unit of range, m.
    pub way_m: f64,
    /// The joints' rows.
    pub joints: Vec<WorkedJoint>,
    /// Joints that stand, with their angles in rad.
    pub standing: Vec<(Dof, f64)>,
    /// The lifter's fibre curves.
    pub curves: Curves,
    /// Every acting muscle.
    pub muscles: Vec<WorkedMuscle>,
    /// The limbs of one side.
    pub limbs: Vec<LimbWeight>,
    /// What the surroundings supply.
    pub reactions: Vec<WorkedReaction>,
    /// Conditions beside the joints'.
    pub balances: Vec<WorkedBalance>,
    /// The largest load: N of all sides, or N·m of one.
    pub capacity: f64,
    /// Index of the row that gives way first.
    pub limiting: usize,
    /// The load, if one was named.
    pub load: Option<WorkedLoad>,
}

/// One row of the pose's statics.
#[derive(Debug, Clone, PartialEq)]
pub struct WorkedJoint {
    /// Degree of freedom.
    pub dof: Dof,
    /// Its angle, rad.
    pub angle_rad: f64,
    /// Turn per unit of range, rad.
    pub slope_rad: f64,
    /// Moment of all muscles, N·m.
    pub muscles_nm: f64,
    /// Moment of the limbs' weight, N·m.
    pub limbs_nm: f64,
    /// Passive moment of the joint, N·m.
    pub passive_nm: f64,
    /// The law of that moment, where one hinge has its own.
    pub passive_law: Option<PassiveJoint>,
    /// Moment that muscles have to make per newton of the load on one side, m; of a torque ±1.
    pub load_lever: f64,
    /// Gain of capacity per N·m more at this row.
    pub price: f64,
}

/// A force or couple of the surroundings.
#[derive(Debug, Clone, PartialEq)]
pub struct WorkedReaction {
    /// Its name.
    pub name: &'static str,
    /// Its value at the optimum, one side, N or N·m.
    pub value: f64,
    /// Moment on every row per unit.
    pub levers: Vec<f64>,
    /// Least value: a constant and a part per newton of the load on one side.
    pub least: (f64, f64),
    /// Greatest value, likewise.
    pub most: (f64, f64),
}

/// An end between which a reaction lies.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ReactionEnd {
    /// The least.
    Least,
    /// The greatest.
    Most,
}

impl WorkedPose {
    /// The reactions that stand at one of their ends, which follow the load: they give nothing more that way.
    pub fn at_their_ends(&self) -> impl Iterator<Item = (&WorkedReaction, ReactionEnd)> {
        /// Nearer to an end is at it, N or N·m.
        const AT: f64 = 1.0e-6;
        let sides = match self.measure {
            Measure::Force => self.sides.count(),
            Measure::Torque => 1.0,
        };
        let load_n = self.capacity / sides;
        self.reactions.iter().flat_map(move |reaction| {
            let ends = [
                (reaction.least, ReactionEnd::Least),
                (reaction.most, ReactionEnd::Most),
            ];
            let is_fixed = reaction.least == reaction.most;
            let at = ends.into_iter().filter(move |((constant, per_load), _)| {
                let end = constant + per_load * load_n;
                !is_fixed && (reaction.value - end).abs() <= AT * end.abs().max(1.0)
            });
            at.map(move |(_, end)| (reaction, end))
        })
    }
}

/// A condition beside the joints': what is fixed, what the load adds, what each reaction adds, sum 0.
#[derive(Debug, Clone, PartialEq)]
pub struct WorkedBalance {
    /// Part that depends on neither.
    pub constant: f64,
    /// Part per newton of the load on one side.
    pub per_load: f64,
    /// Part per unit of every reaction.
    pub reactions: Vec<f64>,
}

/// The load at the pose.
#[derive(Debug, Clone, PartialEq)]
pub struct WorkedLoad {
    /// The setup as it is put up.
    pub setup: Setup,
    /// Where it acts.
    pub point: LoadPoint,
    /// What it exerts.
    pub force: LoadForce,
    /// Demand in the unit of the capacity.
    pub demand: f64,
    /// Demand over capacity.
    pub effort: f64,
}

/// Works a pose out.
///
/// # Algorithm
/// 1. Poses and setup are made for the whole range, so that cams are fitted and anchors stand as in a curve.
/// 2. The place is found on the movement's axis, and its pose is made anew.
/// 3. The programme is solved there, along the plain load or the setup's own pull as a curve does it.
///
/// **Fails** if the place is outside the range or in the wrong unit, if the pose cannot be kept, or if the load
/// pulls where the lift has no strength.
pub fn worked_pose(
    question: &Question<'_>,
    setup: Option<&Setup>,
    place: AskedPlace,
) -> Result<WorkedPose> {
    let ground = SolvedLift::of(question)?;
    let range = range_of(place, question, &ground.range)?;
    let (pose, limbs) = trace_place(question.movement, question.lifter, range)?;
    let load = setup
        .map(|setup| put_up(&ground, setup, &pose))
        .transpose()?;
    let one = Range {
        poses: vec![pose],
        ..ground.range
    };
    let direction = direction_of(load.as_ref().map(|(_, force)| force.force), &one);
    let curve = curve_of(&ground.acting, &one, Some(&[direction]), question.pace)?;
    let (pose, held) = (&one.poses[0], &curve.held[0]);
    let load = load
        .map(|(setup, force)| worked_load(setup, force, held, pose, &one, question))
        .transpose()?;
    let passive_nm = ground.acting.passive_joints_nm(pose);
    let joints = (0..pose.coordinates.len()).map(|row| WorkedJoint {
        passive_nm: passive_nm[row],
        ..worked_joint(row, held, direction, &one, question)
    });
    Ok(WorkedPose {
        movement_title: question.movement.title.clone(),
        away_from: question.movement.away_from.clone(),
        lifter_title: question.lifter.title.clone(),
        range,
        travel_m: pose.load.travel_m,
        measure: one.measure,
        sides: one.sides,
        carrier: one.carrier,
        pace: question.pace,
        way_m: pose.load.dx_ds_m.hypot(pose.load.dz_ds_m),
        joints: joints.collect(),
        standing: pose.held.clone(),
        curves: question.lifter.curves.clone(),
        muscles: worked_muscles(question.lifter, &curve.muscles, pose, held)?,
        limbs,
        reactions: reactions(pose, held, direction),
        balances: pose
            .balances
            .iter()
            .map(|b| balance(b, direction))
            .collect(),
        capacity: held.capacity,
        limiting: held.limiting,
        load,
    })
}

impl WorkedPose {
    /// The way on which implements answer.
    #[must_use]
    pub fn motion(&self) -> Motion {
        motion_of(self.pace)
    }
}

fn motion_of(pace: Pace) -> Motion {
    match pace.lowers() {
        true => Motion::Lower { speed_m_s: 0.0 },
        false => Motion::Hold,
    }
}

/// The setup over the whole range, and what it exerts at the pose.
fn put_up(ground: &SolvedLift<'_>, setup: &Setup, pose: &Pose) -> Result<(Setup, LoadForce)> {
    let question = ground.question();
    setup.check_for(&ground.range.carrier, question.movement_name)?;
    let loaded = ground.loaded(&ground.with_cam(setup)?);
    let rigged = crate::demand::put_up(&loaded, &ground.points);
    let force = rigged.force_at(&pose.load, &ground.range.carrier, motion_of(question.pace));
    Ok((rigged, force))
}

/// The unit force along which capacity is asked for: the setup's own pull where a bar's load leans.
fn direction_of(pull: Option<PlaneForce>, range: &Range) -> PlaneForce {
    let leans = range.measure == Measure::Force && matches!(range.carrier, Carrier::Bar);
    let own = pull.filter(|force| leans && force.leans() && force.magnitude_n() > 0.0);
    own.map_or_else(
        || plain_direction(range.carrier),
        |force| PlaneForce {
            x_n: force.x_n / force.magnitude_n(),
            z_n: force.z_n / force.magnitude_n(),
        },
    )
}

fn worked_load(
    setup: Setup,
    force: LoadForce,
    held: &Held,
    pose: &Pose,
    range: &Range,
    question: &Question<'_>,
) -> Result<WorkedLoad> {
    let demand = match range.measure {
        Measure::Force => force.along_n,
        Measure::Torque => load_torque_nm(pose, force.force, range),
    };
    let effort = effort(demand, held.capacity);
    if !effort.is_finite() {
        return Err(Error::no_answer(match range.measure {
            // A torque is held in one direction only.
            Measure::Torque => too_weak(pose, held, range.measure),
            Measure::Force => LiftFault::NotHeld {
                range: pose.load.range,
                movement: question.movement_name.to_owned(),
            },
        }));
    }
    Ok(WorkedLoad {
        setup,
        point: pose.load,
        force,
        demand,
        effort,
    })
}

fn worked_joint(
    row: usize,
    held: &Held,
    direction: PlaneForce,
    range: &Range,
    question: &Question<'_>,
) -> WorkedJoint {
    let pose = &range.poses[0];
    let coordinate = &pose.coordinates[row];
    let dof = coordinate.dof;
    let jacobian = pose.load_jacobian[row];
    let law = question.lifter.joints.get(&dof);
    WorkedJoint {
        dof,
        angle_rad: coordinate.angle_rad,
        slope_rad: coordinate.slope_rad,
        muscles_nm: held.muscle_torques_nm[row],
        limbs_nm: pose.gravity_nm[row],
        passive_nm: 0.0,
        passive_law: law.filter(|_| !dof.is_shoulder()).cloned(),
        load_lever: match range.measure {
            Measure::Torque => coordinate.slope_rad.signum(),
            Measure::Force => -(jacobian.x * direction.x_n + jacobian.z * direction.z_n),
        },
        price: -held.duals[row],
    }
}

fn reactions(pose: &Pose, held: &Held, direction: PlaneForce) -> Vec<WorkedReaction> {
    let limit = |limit: &ReactionLimit| (limit.constant, along(limit.per_load, direction));
    let reactions = pose.reactions.iter().zip(&held.reactions);
    reactions
        .map(|(reaction, value)| WorkedReaction {
            name: reaction.name,
            value: *value,
            levers: reaction.column.clone(),
            least: limit(&reaction.least),
            most: limit(&reaction.most),
        })
        .collect()
}

fn balance(balance: &Balance, direction: PlaneForce) -> WorkedBalance {
    WorkedBalance {
        constant: balance.constant,
        per_load: along(balance.per_load, direction),
        reactions: balance.reactions.clone(),
    }
}

fn along(per_load: [f64; 2], direction: PlaneForce) -> f64 {
    per_load[0] * direction.x_n + per_load[1] * direction.z_n
}
