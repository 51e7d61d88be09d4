//! A planar open chain of segments: angles to points, Jacobians, limb torques, inertia.
//!
//! In: links from a fixed base outward and the angles of the coordinates that turn them. Out: joint
//! centres and everything that follows from them by the principle of virtual work. The world is a
//! vertical plane, x forward (or outward), z upward, angles counter-clockwise from x.

use crate::anatomy::Segment;
use crate::numeric::Point;
use crate::units::STANDARD_GRAVITY_M_S2;

/// One link: its direction is that of the link before, turned by `offset + sign·angle`.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Link {
    /// Length to the next joint, m.
    pub length_m: f64,
    /// Mass, kg.
    pub mass_kg: f64,
    /// Centre of mass from the link's start along it, m.
    pub centre_m: f64,
    /// Moment of inertia about the centre of mass, kg·m².
    pub inertia_kg_m2: f64,
    /// Coordinate that turns this link against the one before; `None` = rigidly joined.
    pub coordinate: Option<usize>,
    /// +1 if the coordinate turns the link counter-clockwise, −1 if clockwise.
    pub sign: f64,
    /// Fixed turn against the link before, rad.
    pub offset_rad: f64,
}

impl Link {
    /// A link along a segment from its proximal end.
    #[must_use]
    pub fn proximal(segment: Segment) -> Self {
        Self::along(segment, segment.centre_of_mass)
    }

    /// A link along a segment from its distal end, as from the ankle up.
    #[must_use]
    pub fn distal(segment: Segment) -> Self {
        Self::along(segment, 1.0 - segment.centre_of_mass)
    }

    fn along(segment: Segment, centre: f64) -> Self {
        Self {
            length_m: segment.length.as_m(),
            mass_kg: segment.mass.as_kg(),
            centre_m: centre * segment.length.as_m(),
            inertia_kg_m2: segment.inertia_kg_m2(),
            coordinate: None,
            sign: 1.0,
            offset_rad: 0.0,
        }
    }

    /// The same link, turned by a coordinate.
    #[must_use]
    pub fn turned_by(mut self, coordinate: usize, sign: f64) -> Self {
        self.coordinate = Some(coordinate);
        self.sign = sign;
        self
    }

    /// The same link with a fixed turn against the one before.
    #[must_use]
    pub fn offset(mut self, offset_rad: f64) -> Self {
        self.offset_rad = offset_rad;
        self
    }
}

/// A chain from a fixed base outward.
#[derive(Debug, Clone, PartialEq)]
pub struct Linkage {
    /// Where the first link starts.
    pub base: Point,
    /// Direction from which the first link is turned, rad.
    pub base_direction_rad: f64,
    /// The links, base first.
    pub links: Vec<Link>,
}

/// A chain put in a pose.
#[derive(Debug, Clone)]
pub struct Placed<'a> {
    linkage: &'a Linkage,
    /// Start of every link and the end of the last.
    pub joints: Vec<Point>,
    /// Direction of every link, rad.
    pub directions_rad: Vec<f64>,
    coordinates: usize,
}

impl Linkage {
    /// Puts the chain in the pose of these angles (rad, one a coordinate).
    #[must_use]
    pub fn place(&self, angles_rad: &[f64]) -> Placed<'_> {
        self.place_from(self.base, angles_rad)
    }

    /// The same from another place of its base.
    #[must_use]
    pub fn place_from(&self, base: Point, angles_rad: &[f64]) -> Placed<'_> {
        let mut joints = vec![base];
        let mut directions_rad = Vec::with_capacity(self.links.len());
        let (mut at, mut direction) = (base, self.base_direction_rad);
        for link in &self.links {
            direction +=
                link.offset_rad + link.coordinate.map_or(0.0, |c| link.sign * angles_rad[c]);
            at += Point::new(direction.cos(), direction.sin()) * link.length_m;
            directions_rad.push(direction);
            joints.push(at);
        }
        Placed {
            linkage: self,
            joints,
            directions_rad,
            coordinates: angles_rad.len(),
        }
    }
}

impl Placed<'_> {
    /// The point at a distance along a link and a distance square to it (to its left).
    #[must_use]
    pub fn point(&self, link: usize, along_m: f64, left_m: f64) -> Point {
        let direction = self.directions_rad[link];
        let along = Point::new(direction.cos(), direction.sin());
        let left = Point::new(-direction.sin(), direction.cos());
        self.joints[link] + along * along_m + left * left_m
    }

    /// How a point fixed to a link moves with every coordinate, m/rad.
    ///
    /// ```text
    /// ∂P/∂q_j = sign_j·( −(P_z − J_z), P_x − J_x )   for joints j at or before the link, else 0
    /// ```
    /// `J` joint centre that coordinate `j` turns about (m). **Source.** Rigid-body kinematics.
    #[must_use]
    pub fn jacobian(&self, link: usize, point: Point) -> Vec<Point> {
        let mut columns = vec![Point::new(0.0, 0.0); self.coordinates];
        for (index, turned) in self.linkage.links.iter().enumerate().take(link + 1) {
            if let Some(coordinate) = turned.coordinate {
                let lever = point - self.joints[index];
                columns[coordinate] += Point::new(-lever.z, lever.x) * turned.sign;
            }
        }
        columns
    }

    /// How a link's direction turns with every coordinate (+1, −1 or 0).
    #[must_use]
    pub fn turns(&self, link: usize) -> Vec<f64> {
        let mut turns = vec![0.0; self.coordinates];
        for turned in self.linkage.links.iter().take(link + 1) {
            if let Some(coordinate) = turned.coordinate {
                turns[coordinate] += turned.sign;
            }
        }
        turns
    }

    /// Torque of the links' weights on every coordinate, N·m (positive = turns the angle up).
    ///
    /// ```text
    /// G_j = −Σ_k m_k·g·∂z_k/∂q_j
    /// ```
    /// `m_k` link mass (kg), `z_k` height of its centre of mass (m). **Source.** Virtual work.
    #[must_use]
    pub fn gravity_nm(&self) -> Vec<f64> {
        let mut torque = vec![0.0; self.coordinates];
        for (index, link) in self.linkage.links.iter().enumerate() {
            let centre = self.point(index, link.centre_m, 0.0);
            for (sum, column) in torque.iter_mut().zip(self.jacobian(index, centre)) {
                *sum -= link.mass_kg * STANDARD_GRAVITY_M_S2 * column.z;
            }
        }
        torque
    }

    /// Mass of a link, kg.
    #[must_use]
    pub fn mass_kg(&self, link: usize) -> f64 {
        self.linkage.links[link].mass_kg
    }

    /// How far a link's centre of mass rises with every coordinate, m/rad.
    #[must_use]
    pub fn raised_m(&self, link: usize) -> Vec<f64> {
        let centre = self.point(link, self.linkage.links[link].centre_m, 0.0);
        let columns = self.jacobian(link, centre);
        columns.iter().map(|column| column.z).collect()
    }

    /// Effective mass of the links along a path parameter with these slopes `dq/ds`, kg·m².
    ///
    /// ```text
    /// M = Σ_k m_k·|dP_k/ds|² + I_k·(dθ_k/ds)²,   dP_k/ds = Σ_j ∂P_k/∂q_j·dq_j/ds
    /// ```
    /// `I_k` moment of inertia about the centre of mass (kg·m²). Kinetic energy is ½·M·ṡ².
    #[must_use]
    pub fn effective_mass(&self, slopes_rad: &[f64]) -> f64 {
        self.effective_mass_carried(Point::ORIGIN, slopes_rad)
    }

    /// The same while the base moves so along the path.
    #[must_use]
    pub fn effective_mass_carried(&self, base: Point, slopes_rad: &[f64]) -> f64 {
        let mut sum = 0.0;
        for (index, link) in self.linkage.links.iter().enumerate() {
            let centre = self.point(index, link.centre_m, 0.0);
            let speed = base + along(&self.jacobian(index, centre), slopes_rad);
            let turn: f64 = self
                .turns(index)
                .iter()
                .zip(slopes_rad)
                .map(|(turn, slope)| turn * slope)
                .sum();
            sum += link.mass_kg * speed.dot(speed) + link.inertia_kg_m2 * turn * turn;
        }
        sum
    }

    /// Mass and centre of mass of all links.
    #[must_use]
    pub fn centre_of_mass(&self) -> (f64, Point) {
        let mut mass_kg = 0.0;
        let mut moment = Point::new(0.0, 0.0);
        for (index, link) in self.linkage.links.iter().enumerate() {
            mass_kg += link.mass_kg;
            moment += self.point(index, link.centre_m, 0.0) * link.mass_kg;
        }
        (mass_kg, moment * (1.0 / mass_kg.max(f64::MIN_POSITIVE)))
    }
}

/// Forearm and hand as one link from the elbow to the grip (the hand's centre of mass).
///
/// **Source.** de Leva 1996 for both segments; the bar at the hand's centre of mass is assumed.
#[must_use]
pub fn forearm_and_hand(forearm: Segment, hand: Segment) -> Link {
    let grip_m = forearm.length.as_m() + hand.centre_of_mass * hand.length.as_m();
    let (m1, m2) = (forearm.mass.as_kg(), hand.mass.as_kg());
    let c1 = forearm.centre_of_mass * forearm.length.as_m();
    let centre_m = (m1 * c1 + m2 * grip_m) / (m1 + m2);
    Link {
        length_m: grip_m,
        mass_kg: m1 + m2,
        centre_m,
        inertia_kg_m2: forearm.inertia_kg_m2()
            + hand.inertia_kg_m2()
            + m1 * (c1 - centre_m).powi(2)
            + m2 * (grip_m - centre_m).powi(2),
        coordinate: None,
        sign: 1.0,
        offset_rad: 0.0,
    }
}

/// Derivative of a point along the path from its Jacobian and the slopes `dq/ds`.
#[must_use]
pub fn along(jacobian: &[Point], slopes_rad: &[f64]) -> Point {
    jacobian
        .iter()
        .zip(slopes_rad)
        .fold(Point::new(0.0, 0.0), |sum, (column, slope)| {
            sum + *column * *slope
        })
}
