//! The chain: how much of it the bar carries at a height.
//!
//! In: mass per metre (given or from the links' dimensions), length, how it hangs. Out: hanging mass,
//! weight, and the momentum that links take while they are picked up. A chain that lies wholly on
//! the floor is nothing. Sources: DIN 766/764/763 for masses; statics; Neelly 2010 for the hang.

use super::accepted::{accepted, accepted_from};
use super::band::unnamed_source;
use crate::bounds::bounds;
use crate::error::{ImplementFault, ImplementSize};
use crate::source::Source;
use crate::units::{Length, LinearDensity, Mass, STANDARD_GRAVITY_M_S2};
use serde::Deserialize;

/// Density of steel, kg/m³. Source: handbook value of unalloyed steel, from memory; it gives the
/// masses of DIN 766 from the links' dimensions within 2 % for most sizes.
pub const STEEL_DENSITY_KG_M3: f64 = 7850.0;

/// How a chain hangs from the bar.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Deserialize)]
pub enum ChainHang {
    /// By one end: one strand.
    #[default]
    Straight,
    /// By its middle, both ends down: two strands of half the length.
    DoubleLooped,
}

/// A light chain or strap between the bar and the chain.
#[derive(Debug, Clone, Copy, PartialEq, Default, Deserialize)]
#[serde(try_from = "LeaderRecord")]
pub struct Leader {
    /// Its length.
    pub length: Length,
    /// Its mass, carried as far as it hangs.
    pub mass: Mass,
}

#[derive(Deserialize)]
#[serde(rename = "Leader", deny_unknown_fields)]
struct LeaderRecord {
    length: Length,
    #[serde(default)]
    mass: Mass,
}

impl TryFrom<LeaderRecord> for Leader {
    type Error = ImplementFault;
    fn try_from(record: LeaderRecord) -> Result<Self, ImplementFault> {
        let leader = Self {
            length: record.length,
            mass: record.mass,
        };
        leader.checked().map(|()| leader)
    }
}

impl Leader {
    fn checked(self) -> Result<(), ImplementFault> {
        accepted(
            ImplementSize::LeaderLength,
            self.length.as_m(),
            &bounds().leader_length,
        )?;
        accepted(
            ImplementSize::LeaderMass,
            self.mass.as_kg(),
            &bounds().leader_mass,
        )?;
        if self.length.as_m() == 0.0 && self.mass.as_kg() > 0.0 {
            return Err(ImplementFault::MassOfNoLeader);
        }
        Ok(())
    }
}

/// One chain.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(try_from = "ChainRecord")]
pub struct Chain {
    name: String,
    density_kg_m: f64,
    length_m: f64,
    leader: Leader,
    source: Source,
    length_source: Source,
}

/// A chain as a model file writes it.
#[derive(Deserialize)]
#[serde(rename = "Chain", deny_unknown_fields)]
struct ChainRecord {
    name: String,
    links: Links,
    length: Length,
    #[serde(default)]
    leader: Leader,
    #[serde(default = "unnamed_source")]
    source: Source,
    #[serde(default = "unnamed_source")]
    length_source: Source,
}

/// What a chain weighs per metre: given, or from its links.
#[derive(Debug, Clone, Copy, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub enum Links {
    /// Weighed or read in a table.
    PerMetre(LinearDensity),
    /// Round steel links of these dimensions.
    Round {
        /// Diameter of the wire.
        wire: Length,
        /// Inside length of a link: how far one link reaches.
        pitch: Length,
        /// Inside width of a link.
        inside_width: Length,
    },
}

impl Links {
    /// Mass per metre of chain, kg/m.
    ///
    /// ```text
    /// ρ = ρ_steel · (π d²/4) · ( π (b + d) + 2 (t − b) ) / t
    /// ```
    /// | symbol | meaning               | unit | range |
    /// | ------ | --------------------- | ---- | ----- |
    /// | `d`    | wire diameter         | m    | > 0   |
    /// | `t`    | pitch (inside length) | m    | > b   |
    /// | `b`    | inside width          | m    | > 0   |
    ///
    /// A link's mid line is two half circles of diameter b + d and two straights of t − b, and each
    /// link carries the chain on by one pitch.
    ///
    /// **Shape.** Grows with the square of the wire when the link keeps its proportions.
    /// **Source.** Geometry; DIN 766:1986 within 3 % from 8 mm wire up, 6 % below (weld beads).
    /// **Fails** for a link that cannot be bent.
    pub fn density_kg_m(&self) -> Result<f64, ImplementFault> {
        match self {
            Self::PerMetre(density) => accepted(
                ImplementSize::MassPerMetre,
                density.as_kg_m(),
                &bounds().chain_density,
            ),
            Self::Round {
                wire,
                pitch,
                inside_width,
            } => {
                let d = accepted(ImplementSize::Wire, wire.as_m(), &bounds().chain_wire)?;
                let b = accepted_from(
                    ImplementSize::InsideWidth,
                    inside_width.as_m(),
                    d,
                    &bounds().chain_inside,
                )?;
                let t =
                    accepted_from(ImplementSize::Pitch, pitch.as_m(), b, &bounds().chain_pitch)?;
                let section_m2 = std::f64::consts::PI * d * d / 4.0;
                let mid_line_m = std::f64::consts::PI * (b + d) + 2.0 * (t - b);
                Ok(STEEL_DENSITY_KG_M3 * section_m2 * mid_line_m / t)
            }
        }
    }
}

impl TryFrom<ChainRecord> for Chain {
    type Error = ImplementFault;
    fn try_from(record: ChainRecord) -> Result<Self, ImplementFault> {
        Ok(Self {
            name: record.name,
            density_kg_m: record.links.density_kg_m()?,
            length_m: accepted(
                ImplementSize::ChainLength,
                record.length.as_m(),
                &bounds().chain_length,
            )?,
            leader: record.leader,
            source: record.source,
            length_source: record.length_source,
        })
    }
}

/// What the bar carries of one chain.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct HangingChain {
    /// Mass off the floor, leader included, kg.
    pub mass_kg: f64,
    /// Mass per metre of height that is being picked up or laid down here, kg/m.
    pub picked_up_kg_m: f64,
}

impl HangingChain {
    /// Pull on the bar, N, while the bar rises at this speed (negative: sinks).
    ///
    /// ```text
    /// F = m·g + ρ·v²    while links are being picked up,   F = m·g   otherwise
    /// ```
    /// | symbol | meaning                          | unit | range |
    /// | ------ | -------------------------------- | ---- | ----- |
    /// | `m`    | mass off the floor               | kg   | ≥ 0   |
    /// | `ρ`    | mass per metre picked up         | kg/m | ≥ 0   |
    /// | `v`    | speed upward                     | m/s  | any   |
    ///
    /// Links at rest must be brought to the bar's speed: that takes ρ·v·v of momentum a second. Links
    /// laid down give theirs to the floor, so lowering has no such term.
    ///
    /// **Shape.** Never negative; even in small v. **Source.** Momentum balance. **Fails.** Never.
    #[must_use]
    pub fn force_n(&self, upward_m_s: f64) -> f64 {
        let upward_m_s = upward_m_s.max(0.0);
        self.mass_kg * STANDARD_GRAVITY_M_S2 + self.picked_up_kg_m * upward_m_s * upward_m_s
    }
}

impl Chain {
    /// The same chain on a leader of this length and mass.
    pub fn with_leader(mut self, leader: Leader) -> Result<Self, ImplementFault> {
        leader.checked()?;
        self.leader = leader;
        Ok(self)
    }

    /// What the chain is called.
    #[must_use]
    pub fn name(&self) -> &str {
        &self.name
    }

    /// Mass of one metre of it.
    #[must_use]
    pub fn density(&self) -> LinearDensity {
        LinearDensity::from_kg_m(self.density_kg_m)
    }

    /// Its whole length.
    #[must_use]
    pub fn length(&self) -> Length {
        Length::from_m(self.length_m)
    }

    /// Its whole mass, without the leader.
    #[must_use]
    pub fn mass(&self) -> Mass {
        self.density() * self.length()
    }

    /// What it hangs from.
    #[must_use]
    pub fn leader(&self) -> Leader {
        self.leader
    }

    /// Where the mass of its links comes from.
    #[must_use]
    pub fn source(&self) -> &Source {
        &self.source
    }

    /// What the bar carries when its ends hang `height_m` above the floor (or the box) below.
    ///
    /// ```text
    /// m = n · ρ · clamp(height − leader, 0, length/n) + m_leader · clamp(height/leader, 0, 1)
    /// ```
    /// `n` = strands: 1 straight, 2 double-looped.
    ///
    /// **Shape.** 0 until the leader is taut, linear while links leave the floor, constant once the
    /// chain swings free; continuous. **Source.** Statics. **Fails.** Never.
    #[must_use]
    pub fn hanging_at(&self, height_m: f64, hang: ChainHang) -> HangingChain {
        let strands = match hang {
            ChainHang::Straight => 1.0,
            ChainHang::DoubleLooped => 2.0,
        };
        let leader_m = self.leader.length.as_m();
        let reach_m = self.length_m / strands;
        let off_floor_m = (height_m - leader_m).clamp(0.0, reach_m);
        let leader_share = if leader_m > 0.0 {
            (height_m / leader_m).clamp(0.0, 1.0)
        } else {
            1.0
        };
        let density_kg_m = strands * self.density_kg_m;
        let being_picked_up = off_floor_m > 0.0 && off_floor_m < reach_m;
        HangingChain {
            mass_kg: density_kg_m * off_floor_m + self.leader.mass.as_kg() * leader_share,
            picked_up_kg_m: if being_picked_up { density_kg_m } else { 0.0 },
        }
    }
}
