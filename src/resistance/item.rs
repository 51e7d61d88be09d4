//! One item of a setup: an implement, how many, where, and what the lifter feels of it.
//!
//! In: the implement and the situation (load point, carrier, motion). Out: force and moving mass.
//! This file alone matches on kinds of implement; the laws stand in the files of each.

use super::anchor::Anchor;
use super::assistance::Assistance;
use super::band::{Band, Hang};
use super::cable::Cable;
use super::cam::Cam;
use super::chain::{Chain, ChainHang};
use super::directions::{DOWN, cosine, felt, force_along, lifting_direction};
use super::eccentric_only::EccentricOnly;
use super::lever::LeverMachine;
use super::motion::Motion;
use super::sled::Sled;
use super::weight::{Felt, HangingSide, Machine, Weight, felt_weight};
use crate::error::ImplementKind;
use crate::movement::{Carrier, LoadPoint};
use crate::units::Length;

/// Bands of one kind, hung in one way.
#[derive(Debug, Clone, PartialEq)]
pub struct HungBand {
    /// The band.
    pub band: Band,
    /// How many a side.
    pub count: u32,
    /// On which side.
    pub side: HangingSide,
    /// Where the other end is tied.
    pub anchor: Anchor,
    /// Single, doubled, choked.
    pub hang: Hang,
}

impl HungBand {
    /// One band a side from the floor, single or doubled as the movement asks.
    #[must_use]
    pub fn from_floor(band: Band, count: u32) -> Self {
        Self {
            band,
            count,
            side: HangingSide::Both,
            anchor: Anchor::FLOOR,
            hang: Hang::Auto,
        }
    }

    /// Distance from anchor to load, m.
    #[must_use]
    pub fn distance_m(&self, point: &LoadPoint, start_x_m: Option<f64>) -> f64 {
        self.anchor.line_from(point, start_x_m).0
    }

    /// Length over rest length at a load point.
    #[must_use]
    pub fn stretch(&self, point: &LoadPoint, start_x_m: Option<f64>) -> f64 {
        self.band
            .stretch(self.distance_m(point, start_x_m), self.hang)
    }

    /// Pull of all its pieces along the line to the anchor while the load is held, N.
    #[must_use]
    pub fn pull_n(&self, point: &LoadPoint, start_x_m: Option<f64>, carrier: &Carrier) -> f64 {
        let distance_m = self.distance_m(point, start_x_m);
        self.side.pieces(self.count, carrier) * self.band.force_n(distance_m, self.hang)
    }

    /// Pull of all its pieces along the line to the anchor. The band's own mass is left out: a third
    /// of some hundred grams against the load.
    fn felt(&self, at: &Situation) -> Felt {
        let (distance_m, towards) = self.anchor.line_from(&at.point, at.start_x_m);
        let stretching = -cosine(at.lifting, towards) * at.motion.sense();
        let one_n = self
            .band
            .force_in_motion_n(distance_m, self.hang, stretching);
        let pieces = self.side.pieces(self.count, &at.carrier);
        Felt {
            force: felt(force_along(pieces * one_n, towards), &at.point, &at.carrier),
            moving_mass_kg: 0.0,
        }
    }
}

/// Chains of one kind, hung in one way.
#[derive(Debug, Clone, PartialEq)]
pub struct HungChain {
    /// The chain.
    pub chain: Chain,
    /// How many a side.
    pub count: u32,
    /// On which side.
    pub side: HangingSide,
    /// Straight or double-looped.
    pub hang: ChainHang,
    /// Height of what the chain comes to lie on: 0 for the floor, else a box.
    pub floor: Length,
}

impl HungChain {
    /// Chains that hang straight to the floor.
    #[must_use]
    pub fn to_floor(chain: Chain, count: u32) -> Self {
        Self {
            chain,
            count,
            side: HangingSide::Both,
            hang: ChainHang::Straight,
            floor: Length::ZERO,
        }
    }

    /// Mass off the floor of all its pieces at a load point, kg.
    #[must_use]
    pub fn mass_kg(&self, point: &LoadPoint, carrier: &Carrier) -> f64 {
        let one = self
            .chain
            .hanging_at(point.z_m - self.floor.as_m(), self.hang);
        self.side.pieces(self.count, carrier) * one.mass_kg
    }

    /// Weight off the floor and the momentum that links take while they are picked up.
    fn felt(&self, at: &Situation) -> Felt {
        let one = self
            .chain
            .hanging_at(at.point.z_m - self.floor.as_m(), self.hang);
        let pieces = self.side.pieces(self.count, &at.carrier);
        let upward_m_s = at.motion.lifting_speed_m_s() * at.lifting.1;
        let pull = force_along(pieces * one.force_n(upward_m_s), DOWN);
        Felt {
            force: felt(pull, &at.point, &at.carrier),
            moving_mass_kg: pieces * one.mass_kg,
        }
    }
}

/// One item of a setup.
#[derive(Debug, Clone, PartialEq)]
pub enum Item {
    /// Plain weight.
    Weight(Weight),
    /// Elastic bands.
    Band(HungBand),
    /// Chains.
    Chain(HungChain),
    /// A stack on a cable.
    Cable(Cable),
    /// The cam of a machine, in the place of its round one.
    Cam(Cam),
    /// Plates on a turning arm.
    Lever(LeverMachine),
    /// A sled on rails.
    Sled(Sled),
    /// Load of the lowering phase.
    EccentricOnly(EccentricOnly),
    /// Help that takes load away.
    Assistance(Assistance),
}

/// Where and how the load moves while an item is asked what it exerts.
pub(super) struct Situation<'a> {
    pub(super) point: LoadPoint,
    pub(super) carrier: Carrier,
    pub(super) motion: Motion,
    pub(super) start_x_m: Option<f64>,
    pub(super) lifting: (f64, f64),
    pub(super) machine: Machine<'a>,
}

impl<'a> Situation<'a> {
    /// The situation of a whole setup: its sled's friction and its cam act on every weight.
    pub(super) fn new(
        items: &'a [Item],
        point: &LoadPoint,
        carrier: &Carrier,
        motion: Motion,
        start_x_m: Option<f64>,
    ) -> Self {
        let mut machine = Machine::default();
        for item in items {
            match item {
                Item::Sled(sled) => machine.rail_friction = sled.friction(),
                Item::Cam(cam) => machine.cam = Some(cam),
                _ => {}
            }
        }
        Self {
            point: *point,
            carrier: *carrier,
            motion,
            start_x_m,
            lifting: lifting_direction(point, carrier),
            machine,
        }
    }
}

impl Item {
    /// What the lifter feels of it; help is asked last, knowing `load`, the sum of the rest.
    pub(super) fn felt(&self, at: &Situation, load: crate::movement::PlaneForce) -> Felt {
        let (point, carrier, motion) = (&at.point, &at.carrier, at.motion);
        match self {
            Self::Weight(weight) => {
                felt_weight(weight.mass_kg(carrier), point, carrier, motion, &at.machine)
            }
            Self::Band(band) => band.felt(at),
            Self::Chain(chain) => chain.felt(at),
            Self::Cable(cable) => cable.felt(point, carrier, motion, at.start_x_m, &at.machine),
            Self::Cam(_) => Felt::default(),
            Self::Lever(lever) => lever.felt(point, carrier, at.start_x_m),
            Self::Sled(sled) => {
                felt_weight(sled.mass().as_kg(), point, carrier, motion, &at.machine)
            }
            Self::EccentricOnly(extra) => extra.felt(point, carrier, motion, &at.machine),
            Self::Assistance(help) => help.felt(load, point, carrier, motion),
        }
    }

    /// Whether it takes load away and must know the rest first.
    pub(super) fn is_help(&self) -> bool {
        matches!(self, Self::Assistance(_))
    }

    /// Whether it is a band or a chain, whose share of the load studies report.
    #[must_use]
    pub fn is_accommodating(&self) -> bool {
        matches!(self, Self::Band(_) | Self::Chain(_))
    }

    /// The kind of implement.
    #[must_use]
    pub fn kind(&self) -> ImplementKind {
        match self {
            Self::Weight(Weight::Load(_)) => ImplementKind::Load,
            Self::Weight(Weight::Bar(_)) => ImplementKind::Bar,
            Self::Weight(Weight::Plates { .. }) => ImplementKind::Plates,
            Self::Weight(Weight::OnePlate { .. }) => ImplementKind::OnePlate,
            Self::Weight(Weight::Collars { .. }) => ImplementKind::Collars,
            Self::Weight(Weight::Dumbbell(_)) => ImplementKind::Dumbbell,
            Self::Weight(Weight::Belt(_)) => ImplementKind::Belt,
            Self::Weight(Weight::BodyMass(_)) => ImplementKind::BodyMass,
            Self::Band(_) => ImplementKind::Band,
            Self::Chain(_) => ImplementKind::Chain,
            Self::Cable(_) => ImplementKind::Cable,
            Self::Cam(_) => ImplementKind::Cam,
            Self::Lever(_) => ImplementKind::Lever,
            Self::Sled(_) => ImplementKind::Sled,
            Self::EccentricOnly(_) => ImplementKind::Lowering,
            Self::Assistance(Assistance::Counterweight(_)) => ImplementKind::Counterweight,
            Self::Assistance(_) => ImplementKind::Spotter,
        }
    }
}
