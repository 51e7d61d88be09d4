//! The movements of a library, each with what a list of them tells.
//!
//! In: a movement with its lifter. Out: [`ListedMovement`].

use super::question::Question;
use super::solve::study;
use crate::anatomy::{Joint, Lifter};
use crate::capacity::CurveShape;
use crate::error::Result;
use crate::movement::Movement;

/// A movement as a list of them tells it.
#[derive(Debug, Clone, PartialEq)]
pub struct ListedMovement {
    /// Its name in the library.
    pub name: String,
    /// What a person calls it.
    pub title: String,
    /// Class of the lifter's strength curve.
    pub class: CurveShape,
    /// The joints that move, in the order of the path.
    pub joints: Vec<Joint>,
    /// What the range is told along.
    pub axis: String,
    /// Names of its technique parameters.
    pub technique: Vec<String>,
    /// What limits its model.
    pub limits: String,
    /// Which published check stands behind it.
    pub checks: String,
}

/// A movement of the list.
///
/// **Fails** where the lifter cannot do it.
pub fn listed_movement(name: &str, movement: &Movement, lifter: &Lifter) -> Result<ListedMovement> {
    let study = study(&Question::new(name, movement, lifter), &[])?;
    let coordinates = study.range.poses[0].coordinates.iter();
    let mut joints: Vec<Joint> = coordinates.map(|c| c.dof.joint()).collect();
    joints.dedup();
    Ok(ListedMovement {
        name: name.to_owned(),
        title: movement.title.clone(),
        class: study.class.shape,
        joints,
        axis: movement.axis.clone(),
        technique: movement.technique.keys().cloned().collect(),
        limits: movement.limits.clone(),
        checks: movement.checks.clone(),
    })
}
