//! The trunk as the frame of the arm's path: which way is up, and how the arm's plane stands to it.
//!
//! In: posture and lean of the trunk. Out: places and the directions of the world in the trunk's axes.

use super::arm_record::{Hand, Posture};
use crate::numeric::Point;
use nalgebra::Vector3;

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

    /// A place given outward, forward and up of the record, in the trunk's own axes (outward, to the front
    /// of the body, headward): lying and bent over, forward is toward the feet and up to the front.
    pub(super) fn in_trunk(&self, out: f64, forward: f64, up: f64) -> Vector3<f64> {
        match self.posture {
            Posture::Lying | Posture::Bent => Vector3::new(out, up, -forward),
            Posture::Upright => Vector3::new(out, forward, up),
        }
    }

    /// The world's upward direction in the trunk's own axes.
    pub(super) fn upward(&self) -> Vector3<f64> {
        self.in_trunk(0.0, self.up.x, self.up.z)
    }

    /// The world's forward direction in the trunk's own axes.
    pub(super) fn onward(&self) -> Vector3<f64> {
        self.in_trunk(0.0, self.ahead.x, self.ahead.z)
    }
}
