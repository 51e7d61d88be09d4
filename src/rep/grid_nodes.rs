//! The nodes of a grid of capacity: the pose's programme at a place and a speed, solved when it is first asked for.
//!
//! In: the ground, places in the range. Out: [`GridNodes`], what each node holds and which joint limits there.

use super::fibre_nodes::FibreNodes;
use super::grid_ground::{GridGround, lever_of};
use crate::capacity::{ForcesAtPose, MuscleAtPose, PerCoordinate, Solver};
use crate::error::Result;
use crate::movement::{Measure, Pose, Sides};
use crate::numeric::SimplexBasis;
use std::sync::{Arc, OnceLock};

/// Speeds below and above zero, and how they spread: the last step is about e^spread over the count wider than the
/// first. Lengthening fibres are at their limit at a fiftieth of their greatest speed, so most of those nodes lie there;
/// in lifting, one muscle after the other stops following only at great speed.
const LOWERING_SPEEDS: usize = 12;
const LOWERING_SPREAD: f64 = 6.0;
const LIFTING_SPEEDS: usize = 26;
const LIFTING_SPREAD: f64 = 3.0;
/// Index of the speed 0 from which lifting speeds go up; the one before is 0 too.
pub(super) const LIFTS_FROM: usize = LOWERING_SPEEDS + 1;
/// Lowering speed at the edge of the grid over the fastest lifting: lengthening fibres are long at
/// their limit there.
const SLOWEST_OVER_FASTEST: f64 = 0.5;
/// Share of the isometric force that is left at the fast edge of the grid.
const LEFT_AT_EDGE: f64 = 0.1;
/// No loaded limb is through its range in less than a fifteenth of a second.
const MOST_SPEED: f64 = 15.0;

/// What is known before a grid is solved.
#[derive(Debug, Clone, Copy)]
pub(super) enum KnownFibres<'a> {
    /// Nothing.
    Nothing,
    /// Fibres of the same body in the same poses, used if the grid's own speeds are theirs.
    OfSameBody(&'a Arc<FibreNodes>),
    /// Such fibres, with whose speeds the grid is to stand.
    OnItsSpeeds(&'a Arc<FibreNodes>),
}

/// What one node holds: generalised force along the range and the limiting coordinate.
pub(super) type Node = (f64, u8);

/// A node, and whether the programme had an answer there.
#[derive(Debug, Clone, Copy)]
struct SolvedNode {
    node: Node,
    is_answered: bool,
}

/// The nodes, speed by speed in each place.
///
/// Every programme starts from the answer of standing still at its place, so no node depends on which others were asked
/// for before it, nor on the number of threads.
#[derive(Debug)]
pub(super) struct GridNodes {
    ground: Arc<GridGround>,
    fibres: Arc<FibreNodes>,
    /// Indices into the range's poses.
    places: Vec<usize>,
    /// Generalised force of the relaxed limb, one a place.
    passive: Vec<f64>,
    /// Passive torques of the joints at each place, N·m.
    joints_nm: Vec<PerCoordinate>,
    /// Where the programme of standing still ended, one a place.
    standing: Vec<SimplexBasis>,
    solved: Vec<OnceLock<SolvedNode>>,
    /// Slopes over the speed at the last nodes with an answer.
    last_slopes: Vec<OnceLock<f64>>,
}

impl GridNodes {
    /// The nodes over some places; what stands still is solved at once.
    ///
    /// `passive` is of every pose of the range. **Fails** where a pose cannot be held still.
    pub(super) fn of(
        ground: &Arc<GridGround>,
        places: Vec<usize>,
        passive: &[f64],
        known: KnownFibres<'_>,
    ) -> Result<Self> {
        let fibres = fibres(ground, &places, passive, known)?;
        let mut nodes = Self {
            passive: places.iter().map(|&place| passive[place]).collect(),
            joints_nm: places
                .iter()
                .map(|&place| ground.acting.passive_joints_nm(&ground.range.poses[place]))
                .collect(),
            solved: vec![OnceLock::new(); places.len() * fibres.speeds().len()],
            last_slopes: vec![OnceLock::new(); places.len() * fibres.speeds().len()],
            ground: Arc::clone(ground),
            fibres,
            places,
            standing: Vec::new(),
        };
        for column in 0..nodes.places.len() {
            let (node, basis) = nodes.still(column)?;
            let place = nodes.place_of(column, LIFTS_FROM);
            nodes.solved[place] = OnceLock::from(SolvedNode {
                node,
                is_answered: true,
            });
            nodes.standing.push(basis);
        }
        Ok(nodes)
    }

    /// Fibres of the same body, for weaker and stronger versions of it.
    pub(super) const fn fibres(&self) -> &Arc<FibreNodes> {
        &self.fibres
    }

    /// Places in the range, rising.
    pub(super) fn ranges(&self) -> Vec<f64> {
        let poses = self.places.iter();
        poses
            .map(|&place| self.ground.range.poses[place].load.range)
            .collect()
    }

    /// Speeds along the range, 1/s, rising; 0 stands there twice, as the last of lowering and the first of lifting.
    pub(super) fn speeds(&self) -> &[f64] {
        self.fibres.speeds()
    }

    const fn place_of(&self, column: usize, speed: usize) -> usize {
        column * (LOWERING_SPEEDS + LIFTING_SPEEDS + 2) + speed
    }

    /// What is held at a place and a speed.
    ///
    /// **Shape.** At lifting speeds that no muscle follows straight on, at lowering speeds that no activation keeps in balance
    /// what the last one held, which lengthening fibres are at their limit of. **Fails.** Never.
    pub(super) fn at(&self, column: usize, speed: usize) -> Node {
        self.solved(column, speed).node
    }

    fn solved(&self, column: usize, speed: usize) -> SolvedNode {
        // Both zeroes stand still.
        let speed = if speed + 1 == LIFTS_FROM {
            LIFTS_FROM
        } else {
            speed
        };
        *self.solved[self.place_of(column, speed)].get_or_init(|| {
            let answer = self.moving(column, speed);
            SolvedNode {
                is_answered: answer.is_ok(),
                node: answer.unwrap_or_else(|_| {
                    if speed > LIFTS_FROM {
                        self.beyond(column, speed)
                    } else {
                        self.at(column, speed + 1)
                    }
                }),
            }
        })
    }

    /// Slope over the speed at the last lifting speed with an answer, if this is the one.
    pub(super) fn last_slope(&self, column: usize, speed: usize) -> Option<f64> {
        let is_last = speed >= LIFTS_FROM
            && speed + 1 < self.speeds().len()
            && self.solved(column, speed).is_answered
            && !self.solved(column, speed + 1).is_answered;
        is_last.then(|| self.slope_before(column, speed))
    }

    /// Slope over the speed just before the last node with an answer; 0 where that is the one at rest.
    ///
    /// One muscle after the other stops following in the last cells before the programme has no answer, and bends it
    /// there: a parabola through the nodes on both sides, of which one is no answer, would miss the bend.
    fn slope_before(&self, column: usize, last: usize) -> f64 {
        /// How far before, share of the cell: farther than rounding reaches, nearer than two muscles stop.
        const NEAR: f64 = 0.02;
        if last == LIFTS_FROM {
            return 0.0;
        }
        let slope = || {
            let speeds = self.speeds();
            let step = NEAR * (speeds[last] - speeds[last - 1]);
            let before = self.at_speed(column, speeds[last] - step);
            let held = self.at(column, last).0;
            before.map_or(0.0, |(before, _)| ((held - before) / step).min(0.0))
        };
        *self.last_slopes[self.place_of(column, last)].get_or_init(slope)
    }

    /// What is held at a place and at a speed between those of the grid.
    fn at_speed(&self, column: usize, speed: f64) -> Result<Node> {
        let (acting, range) = (&self.ground.acting, &self.ground.range);
        let place = self.places[column];
        let basis = self.standing[column];
        let mut solver = Solver::from_basis(acting, (range.measure, range.sides), basis)?;
        let muscles = acting.placed(&range.poses[place]);
        let muscles: Vec<MuscleAtPose> = muscles
            .iter()
            .map(|muscle| muscle.at(&acting.curves, speed))
            .collect();
        let forces = muscles.iter().map(ForcesAtPose::from);
        held(
            &self.ground,
            &mut solver,
            place,
            (forces, &self.joints_nm[column]),
        )
    }

    /// Standing still at a place, and the basis of that.
    fn still(&self, column: usize) -> Result<(Node, SimplexBasis)> {
        let range = &self.ground.range;
        let mut solver = Solver::new(&self.ground.acting, range.measure, range.sides)?;
        let node = self.held(&mut solver, column, LIFTS_FROM)?;
        let basis = solver.basis().expect("an answer has a basis");
        Ok((node, basis))
    }

    fn moving(&self, column: usize, speed: usize) -> Result<Node> {
        let range = &self.ground.range;
        let kind: (Measure, Sides) = (range.measure, range.sides);
        let basis = self.standing[column];
        let mut solver = Solver::from_basis(&self.ground.acting, kind, basis)?;
        self.held(&mut solver, column, speed)
    }

    fn held(&self, solver: &mut Solver<'_>, column: usize, speed: usize) -> Result<Node> {
        let forces = self.fibres.at(&self.ground.acting, column, speed);
        let joints_nm = &self.joints_nm[column];
        held(
            &self.ground,
            solver,
            self.places[column],
            (forces, joints_nm),
        )
    }

    /// Straight on, with the slope of the last answer, where the programme has none: the hands cannot pull a bar down on a
    /// grip that only friction holds sideways. Never below what the relaxed limb does.
    fn beyond(&self, column: usize, index: usize) -> Node {
        let speeds = self.speeds();
        let last = (LIFTS_FROM..index)
            .rev()
            .find(|&before| self.solved(column, before).is_answered)
            .unwrap_or(LIFTS_FROM);
        let (held, joint) = self.at(column, index - 1);
        let slope = self.slope_before(column, last);
        let on = held + slope * (speeds[index] - speeds[index - 1]);
        (on.max(self.passive[column]).min(held), joint)
    }
}

/// What a pose holds with these forces of its muscles and passive torques of its joints, N·m.
fn held<'m>(
    ground: &GridGround,
    solver: &mut Solver<'_>,
    place: usize,
    (forces, joints_nm): (
        impl Iterator<Item = ForcesAtPose<'m>> + Clone,
        &PerCoordinate,
    ),
) -> Result<Node> {
    let (pose, direction) = (&ground.range.poses[place], ground.directions[place]);
    let (capacity, limiting) = solver.capacity_of(forces, joints_nm, pose, direction)?;
    let lever = lever_of(pose, direction, ground.range.measure);
    Ok((capacity * lever, limiting as u8))
}

/// Fibres over the speeds of a grid: known ones where they are of these speeds.
fn fibres(
    ground: &GridGround,
    places: &[usize],
    passive: &[f64],
    known: KnownFibres<'_>,
) -> Result<Arc<FibreNodes>> {
    let known = match known {
        KnownFibres::OnItsSpeeds(fibres) => return Ok(Arc::clone(fibres)),
        KnownFibres::OfSameBody(fibres) => Some(fibres),
        KnownFibres::Nothing => None,
    };
    let middle = places[places.len() / 2];
    let speeds = speeds_up_to(fastest(ground, middle, passive[middle])?);
    if let Some(fibres) = known.filter(|fibres| fibres.speeds() == speeds) {
        return Ok(Arc::clone(fibres));
    }
    let poses: Vec<&Pose> = places
        .iter()
        .map(|&place| &ground.range.poses[place])
        .collect();
    Ok(Arc::new(FibreNodes::of(&ground.acting, &poses, &speeds)))
}

/// Speed along the range (1/s) at which the muscles carry a tenth of what they hold in mid-range.
fn fastest(ground: &GridGround, middle: usize, passive: f64) -> Result<f64> {
    let (acting, range) = (&ground.acting, &ground.range);
    let pose = &range.poses[middle];
    let (placed, joints_nm) = (acting.placed(pose), acting.passive_joints_nm(pose));
    let mut solver = Solver::new(acting, range.measure, range.sides)?;
    let mut at_speed = |speed: f64| {
        let muscles = placed.iter().map(|muscle| muscle.at(&acting.curves, speed));
        let muscles: Vec<MuscleAtPose> = muscles.collect();
        let forces = muscles.iter().map(ForcesAtPose::from);
        held(ground, &mut solver, middle, (forces, &joints_nm))
    };
    let (held, _) = at_speed(0.0)?;
    let mut is_over = |speed: f64| match at_speed(speed) {
        Ok((force, _)) => force - passive <= LEFT_AT_EDGE * (held - passive),
        Err(_) => true,
    };
    let mut high = 1.0;
    while high < MOST_SPEED && !is_over(high) {
        high *= 1.25;
    }
    Ok(high.min(MOST_SPEED))
}

/// Speeds on both sides of zero, close together there.
fn speeds_up_to(fastest: f64) -> Vec<f64> {
    let place = |k: usize, count: usize, edge: f64, spread: f64| {
        edge * (spread * k as f64 / count as f64).sinh() / spread.sinh()
    };
    let slowest = SLOWEST_OVER_FASTEST * fastest;
    let below = (0..=LOWERING_SPEEDS)
        .rev()
        .map(|k| 0.0 - place(k, LOWERING_SPEEDS, slowest, LOWERING_SPREAD));
    let above = (0..=LIFTING_SPEEDS).map(|k| place(k, LIFTING_SPEEDS, fastest, LIFTING_SPREAD));
    below.chain(above).collect()
}
