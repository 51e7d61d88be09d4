//! Several setups made equally hard at their hardest place, so that only how they spread the load is compared.
//!
//! In: a question, setups as they are asked for. Out: the same with their plain weight changed.

use super::load_for_effort::load_for_effort;
use super::question::Question;
use super::solve::SolvedLift;
use crate::error::Result;
use crate::resistance::Setup;
use crate::units::Mass;

/// The setups with the plain weight of all but the first changed so that the hardest place of each takes as much as
/// that of the first, and that effort; as they are, where the first asks for nothing or where nothing but plain weight
/// tells them apart, since they would become one.
///
/// **Fails** when what hangs in a setup is already harder without any plain weight.
pub fn equally_hard(
    question: &Question<'_>,
    setups: &[Setup],
) -> Result<(Vec<Setup>, Option<f64>)> {
    let bare = |setup: &Setup| setup.with_plain_load(Mass::from_kg(0.0));
    let as_asked = || (setups.to_vec(), None);
    let Some((first, others)) = setups.split_first() else {
        return Ok(as_asked());
    };
    if others
        .iter()
        .all(|other| bare(other).items == bare(first).items)
    {
        return Ok(as_asked());
    }
    let hardest = SolvedLift::of(question)?.setup(first)?.sticking;
    let Some(target) = hardest.map(|sticking| sticking.max_effort) else {
        return Ok(as_asked());
    };
    let mut equal = vec![first.clone()];
    for other in others {
        let load = load_for_effort(question, &bare(other), target)?;
        equal.push(other.with_plain_load(load));
    }
    Ok((equal, Some(target)))
}
