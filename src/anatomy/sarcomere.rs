//! The sarcomere's length-tension diagram from the overlap of its filaments.
//!
//! In: filament lengths from `models/sarcomeres/`. Out: corners of the piecewise-linear diagram and
//! its value at any sarcomere length.

use crate::source::Source;
use serde::{Deserialize, Serialize};

/// Lengths inside one sarcomere, µm.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Sarcomere {
    /// Whose muscle, such as "human".
    pub species: String,
    /// Thin (actin) filament from the Z disc to its tip, µm.
    pub thin_um: f64,
    /// Thick (myosin) filament, µm.
    pub thick_um: f64,
    /// Middle of the thick filament without heads, µm.
    pub bare_zone_um: f64,
    /// Thickness of the Z disc, µm.
    pub z_disc_um: f64,
    /// Length at which active force vanishes on the short side, µm.
    pub shortest_um: f64,
    /// Share of peak force at the corner where thick filaments meet the Z discs.
    pub share_at_break: f64,
    /// Where the numbers come from.
    pub source: Source,
}

impl Sarcomere {
    /// The five corners (sarcomere length in µm, share of peak tension).
    ///
    /// ```text
    /// zero   shortest                             0
    /// break  thick + z                            share_at_break
    /// start of plateau  2·thin + z                1
    /// end of plateau    2·thin + z + bare zone    1
    /// no overlap        2·thin + z + thick        0
    /// ```
    /// **Source.** Gordon, Huxley & Julian 1966 (frog); Walker & Schrodt 1974 (human filaments).
    #[must_use]
    pub fn corners(&self) -> [(f64, f64); 5] {
        let plateau = 2.0 * self.thin_um + self.z_disc_um;
        [
            (self.shortest_um, 0.0),
            (self.thick_um + self.z_disc_um, self.share_at_break),
            (plateau, 1.0),
            (plateau + self.bare_zone_um, 1.0),
            (plateau + self.thick_um, 0.0),
        ]
    }

    /// Share of peak tension at a sarcomere length: straight lines between the corners, 0 outside.
    #[must_use]
    pub fn tension_at(&self, length_um: f64) -> f64 {
        let corners = self.corners();
        corners
            .windows(2)
            .find(|pair| length_um >= pair[0].0 && length_um <= pair[1].0)
            .map_or(0.0, |pair| {
                let part = (length_um - pair[0].0) / (pair[1].0 - pair[0].0);
                pair[0].1 + part * (pair[1].1 - pair[0].1)
            })
    }

    /// Sarcomere length in the middle of the plateau, µm.
    #[must_use]
    pub fn optimum_um(&self) -> f64 {
        let corners = self.corners();
        f64::midpoint(corners[2].0, corners[3].0)
    }
}
