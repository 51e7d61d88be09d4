//! What is planned for a person of a team: lifts, what is planned for each, and on which day.
//!
//! In: made by [`super::team_plans`]. Out: plain records.

use super::plan_question::PlanAnswer;
use super::row_contradictions::ApartLift;
use crate::error::Error;
use crate::progress::team_cells::ToldStrength;
use crate::progress::team_file::TeamMember;
use crate::session::maximum_test::MaximumTest;
use crate::units::Duration;

/// A person with a plan for each lift.
#[derive(Debug, Clone, PartialEq)]
pub struct MemberPlans {
    /// Who it is.
    pub member: TeamMember,
    /// Lifts in the order of the columns.
    pub lifts: Vec<MemberLift>,
    /// Lifts of the row that stand far from what its others say, planned or not.
    pub apart: Vec<ApartLift>,
    /// On which day which of them, where there are several.
    pub days: Vec<TeamDay>,
}

/// A lift of a person.
#[derive(Debug, Clone, PartialEq)]
pub struct MemberLift {
    /// The lift.
    pub movement: String,
    /// What the file tells of it.
    pub told: ToldStrength,
    /// What is planned.
    pub plan: LiftPlan,
}

/// What is planned for a lift.
#[derive(Debug, Clone, PartialEq)]
pub enum LiftPlan {
    /// Sessions.
    Sessions(Box<PlanAnswer>),
    /// A session that finds the maximum.
    Test(Box<MaximumTest>),
    /// Nothing, for a reason.
    Nothing(Error),
}

impl LiftPlan {
    /// Whether anything is planned.
    #[must_use]
    pub const fn is_something(&self) -> bool {
        !matches!(self, Self::Nothing(_))
    }
}

/// Lifts of one day, in order.
#[derive(Debug, Clone, PartialEq)]
pub struct TeamDay {
    /// Places of the lifts in the row, in the order in which they are done.
    pub lifts: Vec<usize>,
    /// Time of the longest sessions of all of them.
    pub time: Duration,
    /// Working sets of those that are planned.
    pub sets: usize,
    /// Most attempts of those that are tested.
    pub attempts: usize,
}
