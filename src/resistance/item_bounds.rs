//! What is taken for real of an item and of a whole setup: one judge for options, texts and setup files.
//!
//! In: an item, a setup. Out: it, or the fault that names both limits.

use super::accepted::accepted;
use super::assistance::Assistance;
use super::item::Item;
use super::setup::Setup;
use super::weight::Weight;
use crate::bounds::bounds;
use crate::error::{ImplementFault, ImplementSize};
use crate::movement::Carrier;
use crate::units::Mass;

impl Item {
    /// The item itself.
    ///
    /// **Fails** where a mass or a count is outside its bounds.
    pub fn accepted(self) -> Result<Self, ImplementFault> {
        match &self {
            Self::Weight(weight) => weigh(weight)?,
            Self::Cable(cable) => stack(cable.stack())?,
            Self::Assistance(Assistance::Counterweight(mass)) => stack(*mass)?,
            _ => {}
        }
        Ok(self)
    }
}

fn weigh(weight: &Weight) -> Result<(), ImplementFault> {
    let bounds = bounds();
    match weight {
        Weight::Load(mass) | Weight::Belt(mass) | Weight::BodyMass(mass) => {
            accepted(ImplementSize::LoadMass, mass.as_kg(), &bounds.load_mass)?;
        }
        Weight::Bar(mass) => {
            accepted(ImplementSize::BarMass, mass.as_kg(), &bounds.bar_mass)?;
        }
        Weight::Plates { each, pairs } => {
            accepted(ImplementSize::PlateMass, each.as_kg(), &bounds.plate_mass)?;
            accepted(
                ImplementSize::PlatePairs,
                f64::from(*pairs),
                &bounds.plate_pairs,
            )?;
        }
        Weight::OnePlate { mass, .. } => {
            accepted(ImplementSize::PlateMass, mass.as_kg(), &bounds.plate_mass)?;
        }
        Weight::Collars { each } => {
            let both_kg = 2.0 * each.as_kg();
            accepted(ImplementSize::CollarMass, both_kg, &bounds.collar_mass)?;
        }
        Weight::Dumbbell(mass) => {
            let bound = &bounds.dumbbell_mass;
            accepted(ImplementSize::DumbbellMass, mass.as_kg(), bound)?;
        }
    }
    Ok(())
}

/// The mass on a cable: of a stack, or nothing.
fn stack(mass: Mass) -> Result<(), ImplementFault> {
    if mass > Mass::ZERO {
        let bound = &bounds().stack_most;
        accepted(ImplementSize::StackMass, mass.as_kg(), bound)?;
    }
    Ok(())
}

impl Setup {
    /// The setup itself: more items than hang on a bar, or more weight than anybody lifts, is none.
    ///
    /// **Fails** where their number or the sum of plain weights is outside its bounds.
    pub fn accepted(self) -> Result<Self, ImplementFault> {
        let count = self.items.len() as f64;
        accepted(ImplementSize::SetupItems, count, &bounds().setup_items)?;
        let weights = self.items.iter().filter_map(|item| match item {
            Item::Weight(weight) => Some(weight.mass_kg(&Carrier::Bar)),
            _ => None,
        });
        let total_kg = weights.sum();
        accepted(ImplementSize::TotalMass, total_kg, &bounds().load_mass)?;
        Ok(self)
    }
}
