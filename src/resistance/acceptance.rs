//! Which implement makes sense on which movement.
//!
//! In: a setup, how the movement's file says that it takes its load. Out: nothing, or every item that makes no sense
//! with the reason.

use super::item::Item;
use super::lever::Turns;
use super::setup::Setup;
use super::weight::{HangingSide, Weight};
use crate::error::{Error, Fault, ImplementFault, ImplementKind, Result, Unfit};
use crate::movement::Carrier;

/// What a machine has once.
const ONCE: [ImplementKind; 2] = [ImplementKind::Sled, ImplementKind::Cam];

impl Setup {
    /// Accepts the setup for a movement.
    ///
    /// **Fails** with one fault for each item that makes no sense there, and for a second sled or cam.
    pub fn check_for(&self, carrier: &Carrier, movement: &str) -> Result<()> {
        let unfit = self.items.iter().filter_map(|item| {
            Some(ImplementFault::MakesNoSense {
                kind: item.kind(),
                movement: movement.to_owned(),
                why: unfit(item, carrier)?,
            })
        });
        let faults: Vec<Fault> = unfit.chain(self.repeated()).map(Fault::new).collect();
        if faults.is_empty() {
            Ok(())
        } else {
            Err(Error::bad_input(faults))
        }
    }

    fn repeated(&self) -> impl Iterator<Item = ImplementFault> {
        ONCE.into_iter().filter_map(|kind| {
            let times = self.items.iter().filter(|item| item.kind() == kind).count();
            (times > 1).then_some(ImplementFault::Repeated { kind, times })
        })
    }
}

/// Why an item makes no sense where the load is taken so; nothing if it does.
#[must_use]
pub fn unfit(item: &Item, carrier: &Carrier) -> Option<Unfit> {
    match carrier {
        Carrier::Bar => on_a_bar(item),
        Carrier::Dumbbell => in_each_hand(item),
        Carrier::Sled { .. } => on_a_sled(item),
        Carrier::Lever { .. } => on_a_machine_lever(item),
        Carrier::Body => on_the_body(item),
    }
}

fn on_a_bar(item: &Item) -> Option<Unfit> {
    match item {
        Item::Cam(_) => Some(Unfit::NoLever),
        Item::Lever(lever) if matches!(lever.turns(), Turns::WithPad { .. }) => Some(Unfit::NoPad),
        Item::Sled(_) => Some(Unfit::NoRails),
        Item::Weight(Weight::Belt(_) | Weight::BodyMass(_)) => Some(Unfit::HeldNotWorn),
        _ => None,
    }
}

fn in_each_hand(item: &Item) -> Option<Unfit> {
    let one_side = |side| matches!(side, HangingSide::Left | HangingSide::Right);
    match item {
        Item::Weight(
            Weight::Bar(_)
            | Weight::Plates { .. }
            | Weight::OnePlate { .. }
            | Weight::Collars { .. },
        ) => Some(Unfit::DumbbellInEachHand),
        Item::Band(hung) if one_side(hung.side) => Some(Unfit::OneHand),
        Item::Chain(hung) if one_side(hung.side) => Some(Unfit::OneHand),
        _ => on_a_bar(item),
    }
}

fn on_a_sled(item: &Item) -> Option<Unfit> {
    match item {
        Item::Weight(
            Weight::Bar(_) | Weight::Dumbbell(_) | Weight::Belt(_) | Weight::BodyMass(_),
        ) => Some(Unfit::LoadIsSled),
        Item::Cable(_) => Some(Unfit::SledOnCable),
        Item::Cam(_) => Some(Unfit::NoLever),
        Item::Lever(_) => Some(Unfit::SledOnLever),
        _ => None,
    }
}

fn on_a_machine_lever(item: &Item) -> Option<Unfit> {
    match item {
        Item::Chain(_) => Some(Unfit::ChainOnPad),
        Item::Weight(
            Weight::Bar(_)
            | Weight::Dumbbell(_)
            | Weight::Belt(_)
            | Weight::BodyMass(_)
            | Weight::Collars { .. },
        ) => Some(Unfit::LoadIsStack),
        Item::Sled(_) => Some(Unfit::LeverOnRails),
        Item::Lever(lever) if matches!(lever.turns(), Turns::AboutPivot { .. }) => {
            Some(Unfit::OwnPivot)
        }
        _ => None,
    }
}

fn on_the_body(item: &Item) -> Option<Unfit> {
    match item {
        Item::Cam(_) => Some(Unfit::NoLever),
        Item::Lever(_) => Some(Unfit::BodyOnArm),
        Item::Sled(_) => Some(Unfit::NoRails),
        _ => None,
    }
}
