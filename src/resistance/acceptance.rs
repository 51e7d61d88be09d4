//! Which implement makes sense on which movement, and what to use instead.
//!
//! In: a setup, how the movement takes its load, the movement's name. Out: nothing, or every item that
//! makes no sense with the reason and the next move.

use super::item::Item;
use super::lever::Turns;
use super::setup::Setup;
use super::weight::{Side, Weight};
use crate::error::{Error, Fault, Result};
use crate::movement::Carrier;

/// Why an item does not go with a movement, and what does.
type Refusal = (&'static str, &'static str);

impl Setup {
    /// Accepts the setup for a movement.
    ///
    /// **Fails** with one fault for each item that makes no sense there.
    pub fn check_for(&self, carrier: &Carrier, movement: &str) -> Result<()> {
        let mut faults: Vec<Fault> = self
            .items
            .iter()
            .filter_map(|item| {
                let (reason, instead) = refusal(item, carrier)?;
                let message = format!("{} makes no sense on {movement}: {reason}", item.kind());
                Some(Fault::new(message).hint(instead))
            })
            .collect();
        faults.extend(self.doubles());
        if faults.is_empty() {
            Ok(())
        } else {
            Err(Error::bad_input(faults))
        }
    }
}

impl Setup {
    /// Machines have one sled and one cam, so a second one is a slip.
    fn doubles(&self) -> Vec<Fault> {
        let count = |kind: &str| self.items.iter().filter(|item| item.kind() == kind).count();
        ["a sled", "a cam"]
            .into_iter()
            .filter(|kind| count(kind) > 1)
            .map(|kind| {
                let times = count(kind);
                Fault::new(format!(
                    "the setup has {kind} {times} times, and a machine has one"
                ))
                .hint("leave all but one out")
            })
            .collect()
    }
}

fn refusal(item: &Item, carrier: &Carrier) -> Option<Refusal> {
    match carrier {
        Carrier::Bar => on_a_bar(item),
        Carrier::Dumbbell => in_each_hand(item),
        Carrier::Sled { .. } => on_a_sled(item),
        Carrier::Lever { .. } => on_a_machine_lever(item),
        Carrier::Body => on_the_body(item),
    }
}

const NO_LEVER: Refusal = (
    "a cam turns with a machine's lever, and this movement has none",
    "use a band or a chain to load the strong part of the range more",
);
const NO_PAD: Refusal = (
    "its arm turns with a pad about the lifter's joint, and this movement has none",
    "give the lever a pivot of its own: turns: AboutPivot(pivot: (height: \"150 cm\"), plates_ahead: \"0 deg\")",
);
const NO_RAILS: Refusal = (
    "a sled runs on rails, and this movement's load is carried freely",
    "write its mass as a plain load, --load \"60 kg\"",
);
const BODY_ONLY: Refusal = (
    "the load is held, not worn",
    "write the mass as a plain load, --load \"20 kg\"",
);

fn on_a_bar(item: &Item) -> Option<Refusal> {
    match item {
        Item::Cam(_) => Some(NO_LEVER),
        Item::Lever(lever) if matches!(lever.turns(), Turns::WithPad { .. }) => Some(NO_PAD),
        Item::Sled(_) => Some(NO_RAILS),
        Item::Weight(Weight::Belt(_) | Weight::BodyMass(_)) => Some(BODY_ONLY),
        _ => None,
    }
}

fn in_each_hand(item: &Item) -> Option<Refusal> {
    match item {
        Item::Weight(
            Weight::Bar(_)
            | Weight::Plates { .. }
            | Weight::OnePlate { .. }
            | Weight::Collars { .. },
        ) => Some((
            "it takes a dumb-bell in each hand",
            "write the mass of one dumb-bell, --load \"10 kg\"",
        )),
        Item::Band(hung) if matches!(hung.side, Side::Left | Side::Right) => Some(ONE_HAND),
        Item::Chain(hung) if matches!(hung.side, Side::Left | Side::Right) => Some(ONE_HAND),
        _ => on_a_bar(item),
    }
}

const ONE_HAND: Refusal = (
    "each hand has its own load and one of them is computed",
    "leave the side out: counts are per hand",
);

fn on_a_sled(item: &Item) -> Option<Refusal> {
    match item {
        Item::Weight(
            Weight::Bar(_) | Weight::Dumbbell(_) | Weight::Belt(_) | Weight::BodyMass(_),
        ) => Some((
            "the load is a sled on rails",
            "write sled and plates as one load, --load \"120 kg\"",
        )),
        Item::Cable(_) => Some((
            "the sled hangs on its rails, not on a cable",
            "use plates, bands, or help that takes load away",
        )),
        Item::Cam(_) => Some(NO_LEVER),
        Item::Lever(_) => Some((
            "the sled runs on rails instead of turning about a pivot",
            "use plates on the sled, or bands",
        )),
        _ => None,
    }
}

fn on_a_machine_lever(item: &Item) -> Option<Refusal> {
    match item {
        Item::Chain(_) => Some((
            "a chain must hang from something that rises off the floor, and the pad of a machine lever turns on its arc",
            "use a cam that follows the lifter's strength, a band from pad to frame, or a heavier stack",
        )),
        Item::Weight(
            Weight::Bar(_)
            | Weight::Dumbbell(_)
            | Weight::Belt(_)
            | Weight::BodyMass(_)
            | Weight::Collars { .. },
        ) => Some((
            "the load is a weight stack on a machine's lever",
            "write the stack as a plain load, --load \"40 kg\"",
        )),
        Item::Sled(_) => Some((
            "the machine has a turning lever and no rails",
            "write the stack as a plain load, --load \"40 kg\"",
        )),
        Item::Lever(lever) if matches!(lever.turns(), Turns::AboutPivot { .. }) => Some((
            "the pad turns about the lifter's joint, not about a pivot of its own",
            "write turns: WithPad(start: \"0 deg\") for plates on the pad's own arm",
        )),
        _ => None,
    }
}

fn on_the_body(item: &Item) -> Option<Refusal> {
    match item {
        Item::Cam(_) => Some(NO_LEVER),
        Item::Lever(_) => Some((
            "the body itself is the load and hangs on no arm",
            "use a belt with plates, bands, or a counterweight",
        )),
        Item::Sled(_) => Some(NO_RAILS),
        _ => None,
    }
}
