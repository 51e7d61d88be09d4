//! From a request to a planned session: who may do it, which scheme builds it.
//!
//! In: a [`Request`] (movement, lifter, 1RM, gym, method, what was asked). Out: a [`Plan`], or a refusal
//! with the reason and what to do instead. Each scheme stands in its own file.

use super::accommodating::{self, AccommodatingSetup};
use super::clusters;
use super::method::{METHODS, Method};
use super::oracle::RepOracle;
use super::overload;
use super::plan::{Draft, Plan, Strength};
use super::pyramid;
use super::repetitions::{CHART_ORIGIN, RepetitionChart};
use super::status::{Level, Lifter, Permission, may_do};
use super::straight;
use crate::error::{Error, Result};
use crate::setups::Loadings;
use crate::units::{Duration, Mass, System, rounded};

/// Everything a session is planned from.
pub struct Request<'a> {
    /// Name of the movement.
    pub movement: &'a str,
    /// The lifter.
    pub lifter: Lifter,
    /// The 1RM.
    pub one_rm: Mass,
    /// Body mass that is part of the load: all of it where the body hangs or stands on the load, else none.
    pub body: Mass,
    /// Where the 1RM comes from, in words: "as given", "from the log", "simulated".
    pub one_rm_from: &'a str,
    /// What can be loaded.
    pub loading: &'a Loadings,
    /// Units of the words in the plan.
    pub system: System,
    /// The method.
    pub method: Method,
    /// Load asked for, instead of the usual one.
    pub load: Option<Mass>,
    /// Repetitions of a set asked for.
    pub repetitions: Option<u32>,
    /// Number of sets asked for.
    pub sets: Option<u32>,
    /// All repetitions of the session together, for clusters.
    pub total_repetitions: Option<u32>,
    /// Repetitions of a group, for clusters.
    pub group: Option<u32>,
    /// Rest inside a cluster set asked for.
    pub rest_within: Option<Duration>,
    /// Rest between sets asked for.
    pub rest_between: Option<Duration>,
    /// The band or chain setup, for bands and chains.
    pub setup: Option<&'a AccommodatingSetup>,
    /// The repetition, simulated or from a published equation; without it nothing is predicted.
    pub oracle: Option<&'a RepOracle<'a>>,
    /// The repetition with the band or chain setup on.
    pub setup_oracle: Option<&'a RepOracle<'a>>,
}

impl<'a> Request<'a> {
    /// A request for the usual session of a method.
    #[must_use]
    pub fn usual(
        movement: &'a str,
        method: Method,
        lifter: Lifter,
        one_rm: Mass,
        loading: &'a Loadings,
    ) -> Self {
        Self {
            movement,
            lifter,
            one_rm,
            body: Mass::ZERO,
            one_rm_from: "as given",
            loading,
            system: System::Metric,
            method,
            load: None,
            repetitions: None,
            sets: None,
            total_repetitions: None,
            group: None,
            rest_within: None,
            rest_between: None,
            setup: None,
            oracle: None,
            setup_oracle: None,
        }
    }

    /// The same request with another method and none of the figures asked for.
    #[must_use]
    pub fn with_method(&self, method: Method) -> Self {
        Self {
            method,
            body: self.body,
            one_rm_from: self.one_rm_from,
            system: self.system,
            setup: self.setup,
            oracle: self.oracle,
            setup_oracle: self.setup_oracle,
            ..Self::usual(
                self.movement,
                method,
                self.lifter,
                self.one_rm,
                self.loading,
            )
        }
    }

    /// What shares of 1RM are of.
    #[must_use]
    pub const fn strength(&self) -> Strength {
        Strength {
            one_rm: self.one_rm,
            body: self.body,
        }
    }

    /// Training status.
    #[must_use]
    pub fn level(&self) -> Level {
        self.lifter.level()
    }

    /// A draft without sets.
    #[must_use]
    pub fn draft(&self, method: Method) -> Draft {
        let mut sources = vec![("repetitions at a share of 1RM".to_owned(), CHART_ORIGIN)];
        sources.extend(
            super::repetitions::differences_of(self.movement)
                .into_iter()
                .map(|(words, origin)| (words.to_owned(), origin)),
        );
        Draft {
            movement: self.movement.to_owned(),
            method,
            level: self.level(),
            one_rm: self.one_rm,
            one_rm_from: self.one_rm_from.to_owned(),
            body: self.body,
            with_bar: self.loading.is_bar,
            sets: Vec::new(),
            frequency: String::new(),
            progression: String::new(),
            setup: Vec::new(),
            predictions: Vec::new(),
            lowerings: Vec::new(),
            remarks: Vec::new(),
            sources,
        }
    }

    /// A mass in the units of the plan.
    #[must_use]
    pub fn words(&self, mass: Mass) -> String {
        self.system.mass(mass)
    }

    /// The load asked for, as a share of 1RM.
    ///
    /// **Fails** above 1RM: that load cannot be lifted.
    pub fn liftable_share(&self, usual: f64) -> Result<f64> {
        let Some(load) = self.load else {
            return Ok(usual);
        };
        let share = self.strength().share_of(load);
        if share > 1.0 {
            return Err(Error::no_answer(format!(
                "{} is {} % of the 1RM of {}: it cannot be lifted",
                self.words(load),
                rounded(100.0 * share, 0),
                self.words(self.one_rm)
            ))
            .hint("choose a load below the 1RM; loads above it are for the method overloaded-lowering"));
        }
        if !(share.is_finite() && share > 0.0) {
            return Err(Error::bad(format!("{} kg is no load", load.as_kg())));
        }
        Ok(share)
    }
}

/// Most sets of one lift that are planned.
const MOST_SETS: u32 = 12;
/// Most repetitions of a set that are planned.
const MOST_REPETITIONS: u32 = 30;

/// Plans a session.
///
/// A novice gets plain progressive overload whatever the method asked for, with the reason among the
/// remarks. **Fails** when the lifter may not do it (no answer, with what to do instead), when a figure
/// asked for makes no sense (bad input), and as the scheme does.
///
/// ```
/// use torquill::setups::Loadings;
/// use torquill::session::method::Method;
/// use torquill::session::schemes::{Request, plan};
/// use torquill::session::status::Lifter;
/// use torquill::units::Mass;
///
/// let gym = Loadings::usual(System::Metric);
/// let lifter = Lifter::with_training_months(48.0);
/// let session = plan(&Request::usual("bench-press", Method::OverloadedLowering, lifter, Mass::from_kg(140.0), &gym))?;
/// assert!(session.working_sets().all(|set| (147.0..=154.0).contains(&set.load.total.as_kg())));
/// assert!(session.cautions()[0].text.contains("no medical advice"));
/// # Ok::<(), torquill::error::Error>(())
/// ```
pub fn plan(request: &Request) -> Result<Plan> {
    check(request)?;
    let draft = match may_do(&request.lifter, request.method) {
        Permission::Refused { reason, instead } => {
            return Err(Error::no_answer(reason).hint(instead));
        }
        Permission::PlainInstead(reason) => {
            let mut draft = straight::draft(&request.with_method(Method::Straight))?;
            draft.remarks.insert(
                0,
                format!("planned instead of {}: {reason}", request.method.name()),
            );
            draft
        }
        Permission::Granted => match request.method {
            Method::Straight => straight::draft(request)?,
            Method::Pyramid => pyramid::draft(request)?,
            Method::Clusters => clusters::draft(request)?,
            Method::OverloadedLowering => {
                overload::draft(request, super::eccentric::OVERLOAD_PRACTICE.shares)?
            }
            Method::Bands | Method::Chains => accommodating::draft(request)?,
        },
    };
    Ok(Plan::new(draft))
}

/// The usual session of every method, for a comparison; refusals stay beside their method.
#[must_use]
pub fn every_method(request: &Request) -> Vec<(Method, Result<Plan>)> {
    METHODS
        .iter()
        .map(|(method, ..)| (*method, plan(&request.with_method(*method))))
        .collect()
}

fn check(request: &Request) -> Result<()> {
    let one_rm_kg = request.one_rm.as_kg();
    if !(one_rm_kg.is_finite() && one_rm_kg > 0.0) {
        return Err(Error::bad(format!("a 1RM of {one_rm_kg} kg cannot be")));
    }
    if request.lifter.training_months.is_nan() || request.lifter.training_months < 0.0 {
        return Err(Error::bad(format!(
            "{} months of training cannot be",
            request.lifter.training_months
        )));
    }
    within("sets", request.sets, MOST_SETS)?;
    within(
        "repetitions of a set",
        request.repetitions,
        MOST_REPETITIONS,
    )?;
    within("repetitions of a group", request.group, 6)?;
    within(
        "repetitions in all",
        request.total_repetitions,
        MOST_REPETITIONS * 2,
    )?;
    if let Some(rest) = request.rest_between {
        super::rests::checked_between_sets(rest)?;
    }
    super::rests::checked_in_cluster(request.rest_within).map(|_| ())
}

fn within(what: &str, asked: Option<u32>, most: u32) -> Result<()> {
    match asked {
        Some(0) => Err(Error::bad(format!("0 {what} are no session"))),
        Some(count) if count > most => Err(Error::bad(format!(
            "{count} {what} are more than is planned here (at most {most})"
        ))),
        _ => Ok(()),
    }
}

/// Repetitions that the chart allows at a share of 1RM, whole ones; `None` where the chart ends.
pub(super) fn chart_allows(chart: &RepetitionChart, share: f64) -> Option<u32> {
    chart
        .repetitions_at(share)
        .ok()
        .map(|repetitions| (repetitions + 1e-6).floor() as u32)
}
