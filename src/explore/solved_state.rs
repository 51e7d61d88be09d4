//! A state of the page with what it led to.
//!
//! In: what the laboratory solved. Out: [`SolvedState`], which every answer is made of.

use super::page_state::PageState;
use crate::capacity::Pace;
use crate::library::Model;
use crate::study::{Question, Study};
use crate::units::System;
use std::rc::Rc;

/// A state with what it led to.
#[derive(Debug)]
pub(super) struct SolvedState {
    pub(super) state: PageState,
    pub(super) model: Rc<Model>,
    pub(super) pace: Pace,
    pub(super) study: Study,
}

impl SolvedState {
    /// Units of what is told.
    pub(super) fn units(&self) -> System {
        self.state.units.into()
    }

    /// The same question of another model.
    pub(super) fn question<'a>(model: &'a Model, now: &Self) -> Question<'a> {
        let mut question = Question::new(&model.movement_name, &model.movement, &model.lifter);
        question.pace = now.pace;
        question
    }
}
