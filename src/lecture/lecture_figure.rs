//! One figure of the lecture: its name, the one idea it teaches, what it draws from.
//!
//! In: nothing. Out: [`LectureFigure`], of which the syllabus is a list.

use crate::capacity::CurveShape;
use crate::error::Result;
use crate::figures::Sheet;
use crate::study::{Desk, Study, has_class};

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
    /// Whether a lecture on one lift has it, of the lift that the desk was told of.
    pub fits: Option<fn(&Desk<'_>, &Study) -> bool>,
    /// Whether the lifter can do what it shows, where not every one can.
    pub possible: Option<fn(&Desk<'_>) -> bool>,
    /// Name under which its speaker's notes stand.
    pub notes: &'static str,
    /// Whether it is of the lecture's invented person, whoever the lecture is for.
    pub of_invented: bool,
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
            fits: None,
            possible: None,
            notes: name,
            of_invented: false,
            build,
        }
    }

    pub(super) const fn citing(mut self, keys: &'static [&'static str]) -> Self {
        self.cites = keys;
        self
    }

    /// The same of the lecture's invented person.
    pub(super) const fn of_invented(mut self) -> Self {
        self.of_invented = true;
        self
    }

    /// A figure of the one lift that the desk was told of, where it fits.
    pub(super) const fn of_lift(
        name: &'static str,
        idea: &'static str,
        fits: fn(&Desk<'_>, &Study) -> bool,
        build: fn(&Desk<'_>) -> Result<Sheet>,
    ) -> Self {
        Self {
            fits: Some(fits),
            ..Self::new(name, idea, &[], build)
        }
    }

    /// The same, only for lifters who can do what it shows.
    pub(super) const fn only_if(mut self, possible: fn(&Desk<'_>) -> bool) -> Self {
        self.possible = Some(possible);
        self
    }

    /// The same with another name in file names; the notes stay.
    pub(super) const fn called(mut self, name: &'static str) -> Self {
        self.name = name;
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
            && self.possible.is_none_or(|possible| possible(desk))
            && self.fits.is_none_or(|fits| {
                let lift = desk.about.as_deref().and_then(|name| desk.lift(name).ok());
                lift.is_some_and(|lift| fits(desk, &lift.study))
            })
    }
}
