//! The whole calculation, one step a line: movement and lifter to capacity, setups to effort.
//!
//! In: a [`Model`] (lifter and movement with everything set), setups, samples, a pace. Out: [`Study`],
//! plain data that charts and reports show. The only place where the chain of rooms is put together.

use crate::anatomy::{Dof, Lifter};
use crate::capacity::{Acting, CapacityCurve, Class, Pace, class_of, curve_of, plain_direction};
use crate::demand::DemandCurve;
use crate::error::{Error, Result};
use crate::movement::{Carrier, LoadPoint, Measure, Movement, PlaneForce, Pose, Range, trace};
use crate::numeric::brent;
use crate::overlay::{REGION_SHARE, Sticking, effort, flattening_percent, sticking};
use crate::resistance::{Item, LoadForce, Setup, Weight};
use crate::units::{Angle, Length, Mass, System, rounded};

/// What is asked.
#[derive(Debug, Clone)]
pub struct Question<'a> {
    /// Name of the movement in the library.
    pub movement_name: &'a str,
    /// The movement.
    pub movement: &'a Movement,
    /// The lifter.
    pub lifter: &'a Lifter,
    /// Number of samples of the range.
    pub samples: usize,
    /// Speed at which capacity is asked for.
    pub pace: Pace,
    /// Share of the greatest effort from which the sticking region counts.
    pub region_share: f64,
}

impl<'a> Question<'a> {
    /// The usual question: 101 samples, held still, region from 95 % of the greatest effort.
    #[must_use]
    pub fn new(movement_name: &'a str, movement: &'a Movement, lifter: &'a Lifter) -> Self {
        Self {
            movement_name,
            movement,
            lifter,
            samples: 101,
            pace: Pace::Isometric,
            region_share: REGION_SHARE,
        }
    }
}

/// Everything that follows for one movement and lifter.
#[derive(Debug, Clone, PartialEq)]
pub struct Study {
    /// Name of the movement in the library.
    pub movement_name: String,
    /// Title of the movement.
    pub movement_title: String,
    /// Where the place of the sticking point is told from.
    pub away_from: String,
    /// What the axis over the range says.
    pub axis: String,
    /// Name of the lifter.
    pub lifter_name: String,
    /// Title of the lifter.
    pub lifter_title: String,
    /// Body mass of the lifter.
    pub body_mass: Mass,
    /// The poses.
    pub range: Range,
    /// What they hold.
    pub capacity: CapacityCurve,
    /// Class of the curve.
    pub class: Class,
    /// Every setup over it, in the order given.
    pub setups: Vec<SetupStudy>,
}

/// One setup over the range.
#[derive(Debug, Clone, PartialEq)]
pub struct SetupStudy {
    /// The setup in words.
    pub name: String,
    /// Demand with its parts.
    pub demand: DemandCurve,
    /// Demand in the unit of the capacity, one a sample.
    pub values: Vec<f64>,
    /// Effort, one a sample.
    pub effort: Vec<f64>,
    /// Where it is hardest; `None` where the load asks for nothing.
    pub sticking: Option<Sticking>,
    /// Flattening against plain weight of the same hardest effort, %.
    pub flattening_percent: Option<f64>,
    /// Index of the coordinate that gives way first at the sticking point.
    pub limiting: Option<usize>,
}

/// Answers a question for any number of setups.
///
/// # Algorithm
/// 1. The movement gives the poses.
/// 2. The programme gives capacity along the plain load's direction.
/// 3. Each setup gives its demand.
/// 4. Effort is demand over capacity; where a setup pulls askew, the programme is solved again along
///    its own pull.
/// 5. Sticking region and flattening follow.
pub fn study(question: &Question<'_>, setups: &[Setup]) -> Result<Study> {
    let ground = Ground::of(question)?;
    let setups = setups
        .iter()
        .map(|setup| ground.setup(setup))
        .collect::<Result<Vec<_>>>()?;
    Ok(ground.into_study(setups))
}

/// What setups are laid over: poses, muscles, capacity, and the shape of effort under plain weight.
pub(super) struct Ground<'a> {
    question: &'a Question<'a>,
    /// The poses.
    pub(super) range: Range,
    /// The muscles at every pose.
    pub(super) acting: Acting,
    /// Capacity along the plain load's direction.
    pub(super) capacity: CapacityCurve,
    plain: Vec<f64>,
}

impl<'a> Ground<'a> {
    /// Steps 1 and 2 of [`study`].
    pub(super) fn of(question: &'a Question<'a>) -> Result<Self> {
        let range = trace(question.movement, question.lifter, question.samples)?;
        let acting = Acting::of(question.lifter, &range.poses)?;
        let capacity = curve_of(&acting, &range, None, question.pace)?;
        let mut ground = Self {
            question,
            range,
            acting,
            capacity,
            plain: Vec::new(),
        };
        ground.plain = ground.plain_effort()?;
        Ok(ground)
    }

    /// The question.
    pub(super) fn question(&self) -> &'a Question<'a> {
        self.question
    }

    /// The results with these setups.
    pub(super) fn into_study(self, setups: Vec<SetupStudy>) -> Study {
        let question = self.question;
        Study {
            movement_name: question.movement_name.to_owned(),
            movement_title: question.movement.title.clone(),
            away_from: question.movement.away_from.clone(),
            axis: question.movement.axis.clone(),
            lifter_name: question.lifter.name.clone(),
            lifter_title: question.lifter.title.clone(),
            body_mass: question.lifter.body_mass,
            class: class_of(&self.capacity.values()),
            range: self.range,
            capacity: self.capacity,
            setups,
        }
    }

    /// Effort of plain weight: its shape is what flattening compares with.
    fn plain_effort(&self) -> Result<Vec<f64>> {
        let plain = self.loaded(&Setup::plain(Mass::from_kg(20.0)));
        let (_, _, effort) = self.effort(&plain)?;
        Ok(effort)
    }

    /// The setup with the lifter's own mass where that is the load.
    pub(super) fn loaded(&self, setup: &Setup) -> Setup {
        with_body(setup, self.range.carrier, self.question.lifter.body_mass)
    }

    /// The setup with a cam that follows the lifter's strength where one is asked for.
    fn with_cam(&self, setup: &Setup) -> Result<Setup> {
        let mut fitted = setup.clone();
        for item in &mut fitted.items {
            if let Item::Cam(cam) = item
                && cam.is_to_fit()
            {
                let points = load_points(&self.range);
                let angles: Vec<Angle> = points
                    .iter()
                    .map(|p| Angle::from_rad(p.lever_rad))
                    .collect();
                *cam = cam
                    .followed(&angles, &self.capacity.values())
                    .map_err(Error::no_answer)?;
            }
        }
        Ok(fitted)
    }

    /// Steps 3 to 5 of [`study`] for one setup.
    pub(super) fn setup(&self, setup: &Setup) -> Result<SetupStudy> {
        setup.check_for(&self.range.carrier, self.question.movement_name)?;
        let name = setup.short_name(&self.range.carrier, System::Metric);
        let (demand, values, effort) = self.effort(&self.loaded(&self.with_cam(setup)?))?;
        self.check_held(&effort)?;
        let sticking = sticking(&effort, self.question.region_share);
        let limiting = sticking.map(|s| {
            let last = self.capacity.held.len() - 1;
            self.capacity.held[(s.point_range * last as f64).round() as usize].limiting
        });
        Ok(SetupStudy {
            name,
            demand,
            values,
            flattening_percent: flattening_percent(&effort, &self.plain),
            effort,
            sticking,
            limiting,
        })
    }

    /// **Fails** where the pull leans so far that the lift holds nothing in its direction.
    fn check_held(&self, effort: &[f64]) -> Result<()> {
        let Some(index) = effort.iter().position(|e| !e.is_finite()) else {
            return Ok(());
        };
        Err(Error::no_answer(format!(
            "the load cannot be held at range {:.2}: it pulls to the side, where {} has no strength",
            self.range.poses[index].load.range, self.question.movement_name
        ))
        .hint("tie it below or above the load, or add plain weight: --load \"40 kg\""))
    }

    fn effort(&self, setup: &Setup) -> Result<(DemandCurve, Vec<f64>, Vec<f64>)> {
        let points = load_points(&self.range);
        let demand = DemandCurve::over(setup, &points, &self.range.carrier);
        let up: Vec<LoadForce> = demand.samples.iter().map(|s| s.up.clone()).collect();
        let (values, effort) = self.effort_under(&up)?;
        Ok((demand, values, effort))
    }

    /// Demand in the unit of the capacity, and effort, under these loads.
    pub(super) fn effort_under(&self, loads: &[LoadForce]) -> Result<(Vec<f64>, Vec<f64>)> {
        let values: Vec<f64> = match self.range.measure {
            Measure::Force => loads.iter().map(|load| load.along_n).collect(),
            Measure::Torque => self
                .range
                .poses
                .iter()
                .zip(loads)
                .map(|(pose, load)| load_torque_nm(pose, load.force, &self.range))
                .collect(),
        };
        let forces: Vec<PlaneForce> = loads.iter().map(|load| load.force).collect();
        let capacity = self.capacity_along(&forces)?;
        let effort = values
            .iter()
            .zip(&capacity)
            .map(|(d, c)| effort(*d, *c))
            .collect();
        Ok((values, effort))
    }

    /// Whether pulls lean from the plain load's direction in a way that capacity depends on.
    pub(super) fn is_askew(&self, forces: &[PlaneForce]) -> bool {
        self.range.measure == Measure::Force
            && matches!(self.range.carrier, Carrier::Bar)
            && forces
                .iter()
                .any(|d| d.x_n.abs() > 1.0e-9 * d.magnitude_n().max(1.0e-9))
    }

    /// Capacity along the setup's own pull; the plain one where that is the same direction, or where
    /// nothing pulls.
    fn capacity_along(&self, forces: &[PlaneForce]) -> Result<Vec<f64>> {
        if !self.is_askew(forces) {
            return Ok(self.capacity.values());
        }
        let plain = plain_direction(self.range.carrier);
        let pulls: Vec<PlaneForce> = forces
            .iter()
            .map(|force| {
                if force.magnitude_n() > 0.0 {
                    *force
                } else {
                    plain
                }
            })
            .collect();
        let along = curve_of(&self.acting, &self.range, Some(&pulls), self.question.pace)?;
        Ok(along.values())
    }
}

/// The load points of a range.
#[must_use]
pub fn load_points(range: &Range) -> Vec<LoadPoint> {
    range.poses.iter().map(|pose| pose.load).collect()
}

/// Torque of a load's force at the one moving joint of one side, N·m, positive against the movement.
#[must_use]
pub fn load_torque_nm(pose: &Pose, force: PlaneForce, range: &Range) -> f64 {
    let share = 1.0 / range.sides.count();
    let jacobian = pose.load_jacobian[0];
    let torque = share * (jacobian.x * force.x_n + jacobian.z * force.z_n);
    -torque * pose.coordinates[0].slope_rad.signum()
}

/// The setup with the lifter's own mass added where the body is the load and the setup names none.
#[must_use]
pub fn with_body(setup: &Setup, carrier: Carrier, body_mass: Mass) -> Setup {
    let mut loaded = setup.clone();
    let is_body = |item: &Item| matches!(item, Item::Weight(Weight::BodyMass(_)));
    if carrier == Carrier::Body && !loaded.items.iter().any(is_body) {
        loaded.items.push(Item::Weight(Weight::BodyMass(body_mass)));
    }
    loaded
}

impl Study {
    /// The place of a range value along the axis: cm of travel, or degrees of the moving joint.
    #[must_use]
    pub fn axis_value(&self, range: f64) -> f64 {
        let measure = self.range.measure;
        self.between(range, |pose| match measure {
            Measure::Force => 100.0 * pose.load.travel_m,
            Measure::Torque => pose.coordinates[0].angle_rad.to_degrees(),
        })
    }

    /// The degree of freedom that the movement is drawn over: elbow or knee where one moves.
    #[must_use]
    pub fn drawn_dof(&self) -> Dof {
        self.range.poses[0].coordinates[self.drawn()].dof
    }

    fn drawn(&self) -> usize {
        self.range.poses[0]
            .coordinates
            .iter()
            .position(|c| matches!(c.dof, Dof::Elbow | Dof::Knee))
            .unwrap_or(0)
    }

    /// Angle of the joint that the movement is drawn over, deg, at a place of the range.
    #[must_use]
    pub fn drawn_angle_deg(&self, range: f64) -> f64 {
        let drawn = self.drawn();
        self.between(range, |pose| pose.coordinates[drawn].angle_rad.to_degrees())
    }

    fn between(&self, range: f64, value: impl Fn(&Pose) -> f64) -> f64 {
        let last = self.range.poses.len() - 1;
        let at = (range * last as f64).clamp(0.0, last as f64);
        let (low, part) = (at.floor() as usize, at.fract());
        let high = (low + 1).min(last);
        let (first, second) = (
            value(&self.range.poses[low]),
            value(&self.range.poses[high]),
        );
        first + part * (second - first)
    }

    /// A place of the range in words: "14 cm off the chest", "at 70 deg of elbow flexion".
    #[must_use]
    pub fn place_in_words(&self, range: f64, units: System) -> String {
        match self.range.measure {
            Measure::Torque => format!(
                "{} deg {}",
                rounded(self.axis_value(range), 0),
                self.away_from
            ),
            Measure::Force => {
                let travel = Length::from_cm(self.axis_value(range).abs());
                let length = match units {
                    System::Metric => format!("{} cm", rounded(travel.as_cm(), 0)),
                    System::Us => format!("{} in", rounded(travel.as_in(), 1)),
                };
                format!("{length} {}", self.away_from)
            }
        }
    }

    /// Whose loads, forces and torques these are.
    #[must_use]
    pub fn sides_in_words(&self) -> &'static str {
        match (self.range.measure, self.range.sides.count() > 1.0) {
            (Measure::Force, true) => {
                "Loads and forces are of both sides together, torques and muscle forces of one side."
            }
            (Measure::Torque, true) => {
                "Loads are of both sides together, torques and muscle forces of one side."
            }
            (_, false) => "Loads, torques and muscle forces are of one side.",
        }
    }

    /// Range of motion of the load, m; `None` for a sweep.
    #[must_use]
    pub fn range_of_motion_m(&self) -> Option<f64> {
        match self.range.measure {
            Measure::Force => self.range.poses.last().map(|pose| pose.load.travel_m),
            Measure::Torque => None,
        }
    }

    /// The joint that a coordinate turns, such as "shoulder".
    #[must_use]
    pub fn joint(&self, coordinate: usize) -> &'static str {
        self.range.poses[0].coordinates[coordinate].dof.joint()
    }

    /// The smallest capacity over the range and its place.
    #[must_use]
    pub fn weakest(&self) -> (f64, f64) {
        let last = (self.capacity.held.len() - 1) as f64;
        self.capacity
            .held
            .iter()
            .enumerate()
            .map(|(index, held)| (index as f64 / last, held.capacity))
            .min_by(|a, b| a.1.total_cmp(&b.1))
            .unwrap_or((0.0, 0.0))
    }
}

/// The bar load that makes the hardest place of a setup exactly this effort: everything else stays.
///
/// The greatest effort grows with the load, nearly in a straight line, so a root finder meets it in a
/// few steps; poses and capacity are computed once.
///
/// **Fails** when the rest of the setup alone is already harder, saying so, and when even
/// 4096 kg ask for less.
pub fn load_for_effort(question: &Question<'_>, setup: &Setup, target: f64) -> Result<Mass> {
    let ground = Ground::of(question)?;
    setup.check_for(&ground.range.carrier, question.movement_name)?;
    let fitted = ground.with_cam(setup)?;
    let hardest = |kg: f64| -> Result<f64> {
        let mut loaded = fitted.clone();
        loaded
            .items
            .insert(0, Item::Weight(Weight::Load(Mass::from_kg(kg))));
        let (_, _, effort) = ground.effort(&ground.loaded(&loaded))?;
        Ok(sticking(&effort, question.region_share).map_or(0.0, |s| s.max_effort))
    };
    if hardest(0.0)? > target {
        return Err(Error::no_answer(format!(
            "even without weight this setup asks for more than {:.0} % at its hardest place",
            100.0 * target
        ))
        .hint("use fewer or lighter bands and chains"));
    }
    let mut high = 64.0;
    while hardest(high)? < target {
        high *= 2.0;
        if high > MOST_LOAD_KG {
            return Err(Error::no_answer(format!(
                "even {MOST_LOAD_KG} kg ask for less than {:.0} % at the hardest place",
                100.0 * target
            )));
        }
    }
    let kg = brent(0.0, high, 1.0e-9, |kg| {
        hardest(kg).map_or(f64::NAN, |effort| effort - target)
    })?;
    Ok(Mass::from_kg(kg))
}

/// No load beyond this is looked for, kg.
const MOST_LOAD_KG: f64 = 4096.0;
