//! The trunk as the frame of the arm's path: which way is up, and how the arm's plane stands to it.
//!
//! In: posture and lean of the trunk. Out: the direction of gravity in the trunk's own axes and in the
//! plane through shoulder and hand. What gravity does across that plane is left to the rotators.

use super::arm_record::{Hand, Posture};
use crate::numeric::Point;
use std::f64::consts::FRAC_PI_2;

/// The trunk's axes against the world, in the sagittal plane; (x, z) = (forward, up) of the trunk.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct TrunkFrame {
    pub posture: Posture,
    pub lean_rad: f64,
    /// The world's upward direction in the trunk's axes.
    up: Point,
    /// The world's forward direction in the trunk's axes.
    ahead: Point,
}

/// The arm's plane, turned so that gravity points down in it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct ArmPlane {
    /// Turn from the trunk's axes in the plane to the turned ones, rad.
    pub turn_rad: f64,
    /// Share of a weight that acts in the plane.
    pub weight_share: f64,
    /// The plane's outward axis, after the turn.
    pub out: Point,
    /// What the plane holds of the world's forward direction, after the turn.
    pub ahead: Point,
}

impl TrunkFrame {
    /// ```text
    /// lying    up = (0, 1)              leaning back by τ   up = (sin τ, cos τ)
    /// bent over, trunk τ above level    up = (−sin τ, −cos τ)
    /// ahead = up turned by −90°
    /// ```
    pub(super) fn of(posture: Posture, lean_rad: f64) -> Self {
        let up = match posture {
            Posture::Lying => Point::new(0.0, 1.0),
            Posture::Upright => Point::new(lean_rad.sin(), lean_rad.cos()),
            Posture::Bent => Point::new(-lean_rad.sin(), -lean_rad.cos()),
        };
        Self {
            posture,
            lean_rad,
            up,
            ahead: Point::new(up.z, -up.x),
        }
    }

    /// Whether the movement is followed from the side (else from the front or the head).
    pub(super) fn is_from_the_side(&self) -> bool {
        self.posture == Posture::Bent
    }

    /// Angle between the direction of the upper arm and the joint angle, rad.
    pub(super) fn zero_rad(&self) -> f64 {
        match self.posture {
            Posture::Lying | Posture::Bent => 0.0,
            Posture::Upright => FRAC_PI_2,
        }
    }

    /// Height over the shoulder of a place in the trunk's axes, m.
    pub(super) fn height_m(&self, forward: f64, up: f64) -> f64 {
        self.up.dot(Point::new(forward, up))
    }

    /// Place ahead of the shoulder of a place in the trunk's axes, m.
    pub(super) fn ahead_m(&self, forward: f64, up: f64) -> f64 {
        self.ahead.dot(Point::new(forward, up))
    }

    /// The forward part of the direction from the shoulder to a hand that is plumb with it.
    pub(super) fn plumb_forward(&self, hand: Hand) -> f64 {
        match hand {
            Hand::Carries => -self.up.x,
            Hand::Hangs => self.up.x,
        }
    }

    /// The plane through the trunk's up axis, turned by the azimuth from sideways to forward.
    pub(super) fn plane(&self, azimuth: f64) -> ArmPlane {
        let upward = Point::new(self.up.x * azimuth.sin(), self.up.z);
        let turn_rad = FRAC_PI_2 - upward.angle_rad();
        ArmPlane {
            turn_rad,
            weight_share: upward.length(),
            out: Point::from_polar(1.0, turn_rad),
            ahead: Point::new(self.ahead.x * azimuth.sin(), self.ahead.z).rotate(turn_rad),
        }
    }
}
