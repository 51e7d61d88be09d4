//! Points and links in a vertical plane.
//!
//! In: coordinates, angles in rad, link lengths. Out: points, or how far a chain falls short.
//! `x` points forward (or outward), `z` up; a positive angle turns `x` towards `z`.

use crate::error::LinksFault;
use std::ops::{Add, AddAssign, Mul, Neg, Sub};

/// A point or an arrow in the plane, in whatever unit the caller keeps.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Point {
    /// Forward (or outward).
    pub x: f64,
    /// Up.
    pub z: f64,
}

impl Point {
    /// Where the axes meet.
    pub const ORIGIN: Self = Self { x: 0.0, z: 0.0 };

    /// The point with these coordinates.
    #[must_use]
    pub const fn new(x: f64, z: f64) -> Self {
        Self { x, z }
    }

    /// The arrow of this length at this angle above the `x` axis, rad.
    #[must_use]
    pub fn from_polar(length: f64, angle_rad: f64) -> Self {
        Self::new(length * angle_rad.cos(), length * angle_rad.sin())
    }

    /// `a · b`, length times length times the cosine between them.
    #[must_use]
    pub fn dot(self, other: Self) -> f64 {
        self.x * other.x + self.z * other.z
    }

    /// `a × b = a.x b.z − a.z b.x`: positive when `b` lies on the positive-angle side of `a`. With a
    /// lever and a force it is the torque in the positive sense of turning.
    #[must_use]
    pub fn cross(self, other: Self) -> f64 {
        self.x * other.z - self.z * other.x
    }

    /// Length of the arrow.
    #[must_use]
    pub fn length(self) -> f64 {
        self.x.hypot(self.z)
    }

    /// Angle of the arrow above the `x` axis, −π to π; 0 for an arrow without length.
    #[must_use]
    pub fn angle_rad(self) -> f64 {
        self.z.atan2(self.x)
    }

    /// The arrow turned by a quarter in the positive sense: how a point at its tip moves per radian.
    #[must_use]
    pub const fn quarter_turn(self) -> Self {
        Self::new(-self.z, self.x)
    }

    /// The arrow of length 1 in this direction, or `None` when there is no direction.
    #[must_use]
    pub fn unit(self) -> Option<Self> {
        let length = self.length();
        (length > 0.0 && length.is_finite()).then(|| self * (1.0 / length))
    }

    /// The point at a share of the way to another, 0 here, 1 there.
    #[must_use]
    pub fn towards(self, other: Self, share: f64) -> Self {
        self + (other - self) * share
    }
}

impl Add for Point {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self::new(self.x + other.x, self.z + other.z)
    }
}

impl AddAssign for Point {
    fn add_assign(&mut self, other: Self) {
        *self = *self + other;
    }
}

impl Sub for Point {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        Self::new(self.x - other.x, self.z - other.z)
    }
}

impl Mul<f64> for Point {
    type Output = Self;
    fn mul(self, factor: f64) -> Self {
        Self::new(self.x * factor, self.z * factor)
    }
}

impl Neg for Point {
    type Output = Self;
    fn neg(self) -> Self {
        Self::new(-self.x, -self.z)
    }
}

/// On which side of the line from start to target the middle joint stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum BendSide {
    /// On the left of someone who goes from start to target and sees `x` forward, `z` up: the line
    /// turned by a positive angle points to it.
    Left,
    /// On the other side.
    Right,
}

/// Two links that reach from a start to a target.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TwoLinks {
    /// The joint between the links (elbow, knee).
    pub middle: Point,
    /// Angle of the first link above the `x` axis, rad.
    pub first_rad: f64,
    /// Angle of the second link above the `x` axis, rad.
    pub second_rad: f64,
    /// Angle by which the middle joint is bent, rad: 0 when straight, π when folded.
    pub bend_rad: f64,
}

/// The joint between two links that start in one point and end in another.
///
/// ```text
/// u = (d² + a² − b²) / 2d,   h = √((a+b−d)(b+d−a)(d+a−b)(a+b+d)) / 2d
/// middle = start + u e ± h n,   bend = π − angle between the links = atan2(2dh, d² − a² − b²)
/// ```
/// | symbol   | meaning                                             | range |
/// | -------- | --------------------------------------------------- | ----- |
/// | `a`, `b` | lengths of the first and second link                | > 0   |
/// | `d`      | distance from start to target                       | \|a−b\| ≤ d ≤ a+b, d > 0 |
/// | `e`, `n` | unit arrow from start to target, and `e` turned left | –     |
/// | `u`, `h` | place of the middle joint along and beside the line | –     |
///
/// **Shape.** Two mirror-image answers, one a [`BendSide`]; they meet at the straight and the folded
/// chain, where the joint moves infinitely fast.
/// **Source.** Law of cosines, with the product form of Heron's formula for `h`, which keeps its
/// digits near the straight chain.
/// **Fails.** With [`LinksFault`] when the target is out of reach, too near, or on the start.
///
/// ```
/// use torquill::numeric::{Point, BendSide, close_two_links};
/// let leg = close_two_links(Point::ORIGIN, Point::new(0.0, 5.0), 3.0, 4.0, BendSide::Left)
///     .expect("a triangle");
/// assert!((leg.middle - Point::new(-2.4, 1.8)).length() < 1e-15);
/// assert!((leg.bend_rad - std::f64::consts::FRAC_PI_2).abs() < 1e-15);
/// ```
///
/// # Errors
/// See **Fails**.
pub fn close_two_links(
    start: Point,
    target: Point,
    first: f64,
    second: f64,
    side: BendSide,
) -> Result<TwoLinks, LinksFault> {
    let line = target - start;
    let distance = line.length();
    check_reach(first, second, distance)?;
    let along = line.unit().ok_or(LinksFault::NoDirection)?;
    let perimeter = first + second + distance;
    let spare =
        (first + second - distance) * (second + distance - first) * (distance + first - second);
    let double_area = (spare.max(0.0) * perimeter).sqrt() / 2.0;
    let beside = double_area / distance;
    let forward = (distance + (first - second) * (first + second) / distance) / 2.0;
    let left = match side {
        BendSide::Left => beside,
        BendSide::Right => -beside,
    };
    let middle = start + along * forward + along.quarter_turn() * left;
    let cosine_part = distance * distance - first * first - second * second;
    Ok(TwoLinks {
        middle,
        first_rad: (middle - start).angle_rad(),
        second_rad: (target - middle).angle_rad(),
        bend_rad: (2.0 * double_area).atan2(cosine_part),
    })
}

fn check_reach(first: f64, second: f64, distance: f64) -> Result<(), LinksFault> {
    let lengths_are_good = first > 0.0 && second > 0.0 && (first + second).is_finite();
    if !lengths_are_good || !distance.is_finite() {
        return Err(LinksFault::NotNumbers);
    }
    let (reach, nearest) = (first + second, (first - second).abs());
    if distance > reach {
        Err(LinksFault::TooFar {
            reach,
            needed: distance,
        })
    } else if distance < nearest {
        Err(LinksFault::TooNear {
            nearest,
            needed: distance,
        })
    } else {
        Ok(())
    }
}
