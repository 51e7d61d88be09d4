//! One figure of the lecture: its name, the one idea it teaches, what it draws from.
//!
//! In: nothing. Out: [`LectureFigure`], of which the syllabus is a list.

use crate::capacity::CurveShape;
use crate::error::Result;
use crate::figures::Sheet;
use crate::study::{Desk, has_class};

/// One figure of the lecture.
#[derive(Clone, Copy)]
pub struct LectureFigure {
    /// Its name in file names.
    pub name: &'static str,
    /// The one idea it teaches.
    pub idea: &'static str,
    /// Movements that it draws.
    pub needs: &'static [&'static str],
    /// Publications that it rests on, by their keys in `models/sources.ron`.
    pub cites: &'static [&'static str],
    /// The class of which the lifter must have a lift, if any.
    pub class: Option<CurveShape>,
    /// Makes it.
    pub build: fn(&Desk<'_>) -> Result<Sheet>,
}

impl LectureFigure {
    pub(super) const fn new(
        name: &'static str,
        idea: &'static str,
        needs: &'static [&'static str],
        build: fn(&Desk<'_>) -> Result<Sheet>,
    ) -> Self {
        Self {
            name,
            idea,
            needs,
            cites: &[],
            class: None,
            build,
        }
    }

    pub(super) const fn citing(mut self, keys: &'static [&'static str]) -> Self {
        self.cites = keys;
        self
    }

    pub(super) const fn of_class(
        shape: CurveShape,
        name: &'static str,
        idea: &'static str,
        build: fn(&Desk<'_>) -> Result<Sheet>,
    ) -> Self {
        Self {
            class: Some(shape),
            ..Self::new(name, idea, &[], build)
        }
    }

    /// Whether the desk has what the figure draws.
    #[must_use]
    pub fn can_be_drawn(&self, desk: &Desk<'_>) -> bool {
        self.needs.iter().all(|name| desk.has(name))
            && self.class.is_none_or(|shape| has_class(desk, shape))
    }
}
