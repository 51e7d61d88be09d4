//! What is asked of a lift, and the plain results that answer it.
//!
//! In: a movement, a lifter, samples, a pace. Out: [`Question`] for the solver; [`Study`] and
//! [`SetupStudy`], plain data on the samples of one range that figures and reports show.

use super::people_curves::People;
use crate::anatomy::{Dof, Lifter};
use crate::capacity::{CapacityCurve, Class, Pace};
use crate::demand::DemandCurve;
use crate::library::ModelChange;
use crate::movement::{Carrier, Measure, Movement, Pose, Range};
use crate::overlay::{REGION_SHARE, Sticking};
use crate::resistance::Setup;
use crate::units::{Mass, STANDARD_GRAVITY_M_S2};

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
    /// Age of the lifter in years, where it is known.
    pub age_years: Option<f64>,
    /// What of the model is not as the library has it.
    pub changes: &'a [ModelChange],
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
            age_years: None,
            changes: &[],
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
    /// What they may hold, of four in five plausible versions of the lifter: lower and upper ends, where asked for.
    pub band: Option<[Vec<f64>; 2]>,
    /// What invented people around the lifter hold, where asked for.
    pub people: Option<People>,
    /// Class of the curve.
    pub class: Class,
    /// Share of the greatest effort from which the sticking region counts.
    pub region_share: f64,
    /// Speed at which capacity was asked for.
    pub pace: Pace,
    /// What of the model is not as the library has it.
    pub changes: Vec<ModelChange>,
    /// The greatest effort of the setups where their loads were made equally hard; none where they are as asked for.
    pub equal_effort: Option<f64>,
    /// Every setup over it, in the order given.
    pub setups: Vec<SetupStudy>,
}

/// One setup over the range.
#[derive(Debug, Clone, PartialEq)]
pub struct SetupStudy {
    /// The setup as it was asked for; the demand holds it as it is put up for the movement.
    pub asked: Setup,
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
    /// What the lifter holds of this load at the sticking point, demand there over the greatest effort, N or N·m; `None`
    /// without one.
    pub held_there: Option<f64>,
    /// Index of the coordinate that gives way first at the sticking point.
    pub limiting: Option<usize>,
}

/// A capacity that differs by more than this from the one along the path is told: what is read off a picture is off by
/// less than a twentieth without it.
const ASLANT_SHARE: f64 = 0.05;

/// Places count as hard from this share of the greatest effort on (assumed: below it half of the strength is left).
const HARD_SHARE: f64 = 0.5;

impl SetupStudy {
    /// What the lifter holds in the direction of this load, in the unit of the capacity: where a load hangs aslant, not
    /// the capacity for one that pulls along the path. That one stands where the load asks for nothing.
    ///
    /// **In.** The capacity of the study. **Out.** One value a sample.
    #[must_use]
    pub fn own_capacity(&self, along_the_path: &[f64]) -> Vec<f64> {
        let asked = self.values.iter().zip(&self.effort);
        asked
            .zip(along_the_path)
            .map(|((value, effort), along)| match *effort > 1.0e-3 {
                true => value / effort,
                false => *along,
            })
            .collect()
    }

    /// Radius at which a stack pulls at the lever of a machine, one a sample, m.
    ///
    /// ```text
    /// r = M / (m·g)
    /// ```
    /// `M` moment of the load (N·m), `m` the stack (kg). **Source.** Statics.
    #[must_use]
    pub fn cam_radii_m(&self, carrier: &Carrier) -> Vec<f64> {
        let stack_n = STANDARD_GRAVITY_M_S2 * self.demand.setup.plain_mass(carrier).as_kg();
        self.values.iter().map(|moment| moment / stack_n).collect()
    }

    /// Whether what the lifter holds against this load is another capacity than the one along the path where it is hard.
    #[must_use]
    pub fn pulls_aslant(&self, along_the_path: &[f64]) -> bool {
        let own = self.own_capacity(along_the_path);
        let greatest = self.effort.iter().copied().fold(0.0, f64::max);
        let mut places = own.iter().zip(along_the_path).zip(&self.effort);
        places.any(|((own, along), effort)| {
            *effort >= HARD_SHARE * greatest && (own / along - 1.0).abs() > ASLANT_SHARE
        })
    }
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

    /// Where the greatest capacity lies between two samples: the sample behind it, its place of the range, its size.
    #[must_use]
    pub fn crest(&self) -> Option<(usize, f64, f64)> {
        let (range, peak) = (self.class.peak_range, self.class.peak);
        let held = &self.capacity.held;
        let is_above = held.iter().all(|held| held.capacity < peak);
        let behind = (range * (held.len() - 1) as f64).floor() as usize + 1;
        (is_above && behind < held.len()).then_some((behind, range, peak))
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
        self.range.poses[0].coordinates[coordinate]
            .dof
            .joint()
            .name()
    }
}
