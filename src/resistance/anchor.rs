//! Where a band or a cable is tied: a height above the floor and an offset from the bar's line.
//!
//! In: a named place ("floor", "rack-high") or lengths. Out: the line from the load to the anchor. An offset is counted from where the load stands at the start of the range,
//! positive the way the movement's x axis points (forward or outward).

use super::directions::{Direction, unit};
use crate::bounds::bounds;
use crate::error::ImplementFault;
use crate::movement::LoadPoint;
use crate::units::Length;
use serde::Deserialize;

/// A place to which a band or a cable is tied.
#[derive(Debug, Clone, Copy, PartialEq, Deserialize)]
#[serde(try_from = "AnchorRecord")]
pub struct Anchor {
    height_m: f64,
    offset_m: f64,
}

/// An anchor as a file writes it.
#[derive(Deserialize)]
#[serde(rename = "Anchor", deny_unknown_fields)]
struct AnchorRecord {
    height: Length,
    #[serde(default)]
    offset: Length,
}

impl TryFrom<AnchorRecord> for Anchor {
    type Error = ImplementFault;
    fn try_from(record: AnchorRecord) -> Result<Self, ImplementFault> {
        Self::at(record.height, record.offset)
    }
}

/// The anchors that every gym is taken to have: name, height, offset, in cm.
///
/// Floor and rack foot: common practice (a band peg or rack foot stands 0-15 cm high). The heights of
/// a rack's middle and top, and the metre in front of and behind the lifter, are assumed: racks and
/// rooms differ, so measure yours and write the lengths.
pub const NAMED_ANCHORS: [(&str, f64, f64); 6] = [
    ("floor", 0.0, 0.0),
    ("rack-low", 10.0, 0.0),
    ("rack-mid", 100.0, 0.0),
    ("rack-high", 220.0, 0.0),
    ("ahead", 100.0, 100.0),
    ("behind", 100.0, -100.0),
];

impl Anchor {
    /// On the floor, straight below the load's start.
    pub const FLOOR: Self = Self {
        height_m: 0.0,
        offset_m: 0.0,
    };

    /// An anchor at a height above the floor and an offset from the load's start.
    ///
    /// **Fails** for a height below the floor or above 6 m, or an offset beyond 6 m: no gym has one.
    pub fn at(height: Length, offset: Length) -> Result<Self, ImplementFault> {
        let (height_m, offset_m) = (height.as_m(), offset.as_m());
        if !bounds().anchor_height.holds(height_m) {
            return Err(ImplementFault::AnchorHeight(height));
        }
        if !bounds().anchor_offset.holds(offset_m) {
            return Err(ImplementFault::AnchorOffset(offset));
        }
        Ok(Self { height_m, offset_m })
    }

    /// One of [`NAMED_ANCHORS`], or `None`.
    #[must_use]
    pub fn named(name: &str) -> Option<Self> {
        NAMED_ANCHORS
            .iter()
            .find(|(known, _, _)| *known == name)
            .map(|&(_, height_cm, offset_cm)| Self {
                height_m: height_cm / 100.0,
                offset_m: offset_cm / 100.0,
            })
    }

    /// Height above the floor.
    #[must_use]
    pub fn height(&self) -> Length {
        Length::from_m(self.height_m)
    }

    /// Offset from the load's start, forward or outward positive.
    #[must_use]
    pub fn offset(&self) -> Length {
        Length::from_m(self.offset_m)
    }

    /// Distance from the load to the anchor, m, and the direction in which the anchor lies.
    ///
    /// `start_x_m` is the horizontal place of the load at the start of the range; without it the
    /// anchor is taken to stand at its offset from the load itself.
    pub(super) fn line_from(&self, point: &LoadPoint, start_x_m: Option<f64>) -> (f64, Direction) {
        let x = start_x_m.unwrap_or(point.x_m) + self.offset_m - point.x_m;
        let z = self.height_m - point.z_m;
        (x.hypot(z), unit(x, z).unwrap_or((0.0, 0.0)))
    }
}
