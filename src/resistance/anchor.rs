//! Where a band or a cable is tied: a height above the floor and an offset from the bar's line.
//!
//! In: a named place ("floor", "rack-high") or lengths ("10 cm,-20 cm"). Out: the line from the load
//! to the anchor. An offset is counted from where the load stands at the start of the range,
//! positive the way the movement's x axis points (forward or outward).

use super::path::{Direction, unit};
use crate::error::{Error, Result};
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
    type Error = String;
    fn try_from(record: AnchorRecord) -> std::result::Result<Self, String> {
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
    pub fn at(height: Length, offset: Length) -> std::result::Result<Self, String> {
        let (height_m, offset_m) = (height.as_m(), offset.as_m());
        if !(0.0..=6.0).contains(&height_m) {
            return Err(format!(
                "an anchor {height_m} m above the floor cannot be: heights run from 0 m to 6 m"
            ));
        }
        if !(-6.0..=6.0).contains(&offset_m) {
            return Err(format!(
                "an anchor {offset_m} m away from the load cannot be: offsets run from -6 m to 6 m"
            ));
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

    /// Reads "rack-low", "10 cm" or "10 cm,-20 cm" (height, then offset).
    ///
    /// **Fails** for a name that is neither known here nor given in `more`, and for a bad length.
    pub fn from_text(text: &str, more: &dyn Fn(&str) -> Option<Self>) -> Result<Self> {
        let text = text.trim();
        if let Some(anchor) = more(text).or_else(|| Self::named(text)) {
            return Ok(anchor);
        }
        if !text.starts_with(|c: char| c.is_ascii_digit() || "+-.−".contains(c)) {
            let names: Vec<&str> = NAMED_ANCHORS.iter().map(|(name, _, _)| *name).collect();
            return Err(Error::bad(format!("no anchor is named `{text}`"))
                .hint(format!("anchors are {}", names.join(", ")))
                .hint("or write its height, and how far in front it stands: \"10 cm,-20 cm\""));
        }
        let mut lengths = text.splitn(2, ',');
        let read = |part: &str| Length::from_text(part).map_err(Error::bad);
        let height = read(lengths.next().unwrap_or_default())?;
        let offset = lengths.next().map_or(Ok(Length::ZERO), read)?;
        Self::at(height, offset).map_err(Error::bad)
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

    /// The anchor in words: "floor", "220 cm high", "10 cm high, 20 cm behind".
    #[must_use]
    pub fn in_words(&self) -> String {
        let same = |value: f64, cm: f64| (value * 100.0 - cm).abs() < 1e-9;
        let named = NAMED_ANCHORS.iter().find(|(_, height, offset)| {
            same(self.height_m, *height) && same(self.offset_m, *offset)
        });
        if let Some((name, _, _)) = named {
            return (*name).to_owned();
        }
        let high = format!(
            "{} cm high",
            crate::units::rounded(self.height_m * 100.0, 1)
        );
        let aside = crate::units::rounded(self.offset_m.abs() * 100.0, 1);
        match self.offset_m {
            0.0 => high,
            offset if offset > 0.0 => format!("{high}, {aside} cm ahead"),
            _ => format!("{high}, {aside} cm behind"),
        }
    }
}
