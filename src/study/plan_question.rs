//! What is asked of a plan, and the answer: sessions as plain data, with what was taken for granted.
//!
//! In: the door's arguments, read. Out: [`PlanQuestion`]; [`PlanAnswer`].

use super::log_study::LogChoice;
use crate::error::Error;
use crate::grammar::HungTexts;
use crate::progress::day::Day;
use crate::progress::training_log::SkippedRow;
use crate::session::block_days::DayPurpose;
use crate::session::draft::SessionPlan;
use crate::session::method::{METHODS, Method};
use crate::session::request::SessionWishes;
use crate::units::{Mass, System};

/// What is asked.
#[derive(Debug, Clone, PartialEq)]
pub struct PlanQuestion {
    /// Name of the movement.
    pub movement: String,
    /// Name or file of the lifter; the reference man without one.
    pub lifter: Option<String>,
    /// Model values that are set.
    pub set: Vec<String>,
    /// Which methods.
    pub methods: MethodChoice,
    /// A block of so many weeks.
    pub weeks: Option<u32>,
    /// Day of the first session, if it is told: it tells how old a log is, and gives a block its dates.
    pub start: Option<Day>,
    /// The 1RM, if told.
    pub one_rm: Option<Mass>,
    /// The set that the 1RM was reckoned from: its load and repetitions.
    pub of_set: Option<(Mass, u32)>,
    /// Training log to take the 1RM from.
    pub log: Option<LogChoice>,
    /// What is told of the person.
    pub person: PersonTold,
    /// Name or file of the gym.
    pub gym: Option<String>,
    /// Unit of the usual plates where no gym is named.
    pub plates: System,
    /// Bands, chains and implements by name.
    pub pieces: HungTexts,
    /// Hardest effort of a band or chain setup, 1 = all the lifter has; the usual one without.
    pub effort: Option<f64>,
    /// What is wished in place of the usual.
    pub wishes: SessionWishes,
}

/// Which methods are asked for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum MethodChoice {
    /// The usual one: straight sets.
    Usual,
    /// This one.
    One(Method),
    /// Every one, for comparison.
    All,
}

/// What is told of the person.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct PersonTold {
    /// Months of steady training.
    pub training_months: Option<f64>,
    /// Age in years.
    pub age_years: Option<f64>,
    /// Injured or in pain.
    pub injured: bool,
    /// Ill, unusually sore, or back from a break.
    pub unwell: bool,
    /// Days since the last overloaded lowering of the same muscles.
    pub days_since_overload: Option<u32>,
}

/// Hardest effort of a band or chain setup where none is told (assumed: as hard as 85 % of the maximum).
pub const USUAL_EFFORT: f64 = 0.85;

impl PlanQuestion {
    /// The usual plan of a movement: whoever does it, wherever.
    #[must_use]
    pub fn usual(movement: &str) -> Self {
        Self {
            movement: movement.to_owned(),
            lifter: None,
            set: Vec::new(),
            methods: MethodChoice::Usual,
            weeks: None,
            start: None,
            one_rm: None,
            of_set: None,
            log: None,
            person: PersonTold::default(),
            gym: None,
            plates: System::Metric,
            pieces: HungTexts::default(),
            effort: None,
            wishes: SessionWishes::default(),
        }
    }

    /// The hardest effort of a band or chain setup, as told or as usual.
    #[must_use]
    pub fn effort(&self) -> f64 {
        self.effort.unwrap_or(USUAL_EFFORT)
    }

    /// The methods that are planned, the first one for a block.
    #[must_use]
    pub fn methods(&self) -> Vec<Method> {
        match (self.methods, self.weeks) {
            (MethodChoice::All, _) => METHODS.iter().map(|(method, _)| *method).collect(),
            (MethodChoice::One(method), _) => vec![method],
            (MethodChoice::Usual, _) => vec![Method::Straight],
        }
    }

    /// Whether a gym is searched for a band or chain setup, which may take a while.
    #[must_use]
    pub fn searches(&self) -> bool {
        self.methods()
            .iter()
            .any(|method| method.is_accommodating())
    }
}

/// The answer.
#[derive(Debug, Clone, PartialEq)]
pub struct PlanAnswer {
    /// The sessions, in order.
    pub sessions: Vec<PlannedSession>,
    /// Methods that are not planned, and why.
    pub refused: Vec<(Method, Error)>,
    /// What was taken for granted.
    pub notes: Vec<PlanNote>,
}

/// One session of the answer.
#[derive(Debug, Clone, PartialEq)]
pub struct PlannedSession {
    /// Which of them it is.
    pub name: SessionName,
    /// The session.
    pub plan: SessionPlan,
}

/// Which session it is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum SessionName {
    /// The one of a method.
    Of(Method),
    /// One that is planned in place of the method asked for.
    InPlace {
        /// What was asked for.
        of: Method,
        /// What is planned.
        planned: Method,
    },
    /// One of a block.
    Day {
        /// First and last week that it stands for, from 1.
        weeks: (u32, u32),
        /// Day of the week, from 1.
        day: u32,
        /// What it is for.
        purpose: DayPurpose,
        /// Its (first) date, where the block has a first day.
        date: Option<Day>,
    },
}

impl SessionName {
    /// The same so many days later in the week.
    #[must_use]
    pub fn later(self, days: u32) -> Self {
        match self {
            Self::Day {
                weeks,
                day,
                purpose,
                date,
            } => Self::Day {
                weeks,
                day: day + days,
                purpose,
                date: date.and_then(|date| date.after(days)),
            },
            other => other,
        }
    }

    /// How many weeks it stands for: 1 but where the log decides.
    #[must_use]
    pub const fn weeks(self) -> u32 {
        match self {
            Self::Day {
                weeks: (first, last),
                ..
            } => last - first + 1,
            Self::Of(_) | Self::InPlace { .. } => 1,
        }
    }

    /// Week and day, for the order in which sessions are done.
    #[must_use]
    pub const fn place(self) -> (u32, u32) {
        match self {
            Self::Day {
                weeks: (first, _),
                day,
                ..
            } => (first, day),
            Self::Of(_) | Self::InPlace { .. } => (0, 0),
        }
    }

    /// The same session in one of its weeks, counted from 0.
    #[must_use]
    pub fn in_week(self, later: u32) -> Self {
        match self {
            Self::Day {
                weeks: (first, _),
                day,
                purpose,
                date,
            } => Self::Day {
                weeks: (first + later, first + later),
                day,
                purpose,
                date: date.and_then(|date| date.after(7 * later)),
            },
            named => named,
        }
    }

    /// The day of the session, where its block has dates.
    #[must_use]
    pub const fn date(self) -> Option<Day> {
        match self {
            Self::Day { date, .. } => date,
            Self::Of(_) | Self::InPlace { .. } => None,
        }
    }
}

impl PlanAnswer {
    /// Sessions that are done, each of the weeks that one stands for counted.
    #[must_use]
    pub fn count(&self) -> usize {
        let weeks = self
            .sessions
            .iter()
            .map(|session| session.name.weeks() as usize);
        weeks.sum()
    }
}

/// What was taken for granted.
#[derive(Debug, Clone, PartialEq)]
pub enum PlanNote {
    /// Nothing is known of the lifter's training.
    UnknownTraining,
    /// Nothing is predicted, because no strength gives the 1RM.
    NothingPredicted(Error),
    /// What a week allows is shared out on its days.
    SetsShared {
        /// Sets that the week allows.
        most: u32,
        /// Days that share them.
        days: u32,
        /// Sets of one of them.
        each: u32,
    },
    /// The log shows another strength than the lifter was fitted to.
    LifterDiffers {
        /// What the lifter is called.
        lifter: String,
        /// The 1RM of the fitted lifter.
        fitted: Mass,
        /// The log's.
        of_log: Mass,
    },
    /// How the loads of a log are read whose lift moves the body.
    LogAndBody {
        /// The body.
        body: Mass,
        /// Whether the loads leave it out.
        leaves_out: bool,
    },
    /// What is planned once stands in place of these methods too.
    InPlaceToo {
        /// What is planned.
        planned: Method,
        /// The methods.
        of: Vec<Method>,
        /// Whether that is because load comes back step by step; else of who is a novice.
        comes_back: bool,
    },
    /// A row of the log was left out on request.
    RowLeftOut(SkippedRow),
    /// So many more rows were left out.
    MoreRowsLeftOut(usize),
    /// A bar and the usual plates.
    UsualPlates,
    /// The loads of a gym of this title.
    GymLoads(String),
}
