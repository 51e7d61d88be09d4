//! How heavy a bar makes the hardest place of a setup exactly as hard as wished.
//!
//! In: a question, a setup, an effort. Out: the plain load.

use super::question::Question;
use super::solve::SolvedLift;
use crate::error::{Error, LiftFault, Result};
use crate::numeric::brent;
use crate::overlay::sticking;
use crate::resistance::{Item, Setup, Weight};
use crate::units::Mass;

/// The bar load that makes the hardest place of a setup exactly this effort: everything else stays.
///
/// The greatest effort grows with the load, nearly in a straight line, so a root finder meets it in a
/// few steps; poses and capacity are computed once.
///
/// **Fails** when the rest of the setup alone is already harder, saying so, and when even
/// 4096 kg ask for less.
pub fn load_for_effort(question: &Question<'_>, setup: &Setup, target: f64) -> Result<Mass> {
    let ground = SolvedLift::of(question)?;
    setup.check_for(&ground.range.carrier, question.movement_name)?;
    let fitted = ground.with_cam(setup)?;
    let hardest = |kg: f64| -> Result<f64> {
        let mut loaded = fitted.clone();
        loaded
            .items
            .insert(0, Item::Weight(Weight::Load(Mass::from_kg(kg))));
        let (_, _, effort) = ground.effort(&ground.loaded(&loaded))?;
        Ok(sticking(&effort, question.region_share).map_or(0.0, |s| s.max_effort))
    };
    if hardest(0.0)? > target {
        return Err(Error::no_answer(LiftFault::HardWithoutWeight { target }));
    }
    let mut high = 64.0;
    while hardest(high)? < target {
        high *= 2.0;
        if high > MOST_LOAD_KG {
            return Err(Error::no_answer(LiftFault::EasyWithAnyWeight {
                target,
                most: Mass::from_kg(MOST_LOAD_KG),
            }));
        }
    }
    let kg = brent(0.0, high, 1.0e-9, |kg| {
        hardest(kg).map_or(f64::NAN, |effort| effort - target)
    })?;
    Ok(Mass::from_kg(kg))
}

/// No load beyond this is looked for, kg.
const MOST_LOAD_KG: f64 = 4096.0;
