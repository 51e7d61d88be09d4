//! What a session is planned from, and the empty draft that every scheme fills.
//!
//! In: movement, trainee, 1RM, gym, method, what was asked for. Out: [`SessionRequest`].

use super::accommodating_setup::AccommodatingSetup;
use super::method::Method;
use super::oracle::RepOracle;
use super::plan::Draft;
use super::remark::{Basis, Frequency, Progression};
use super::repetitions::{CHART_ORIGIN, differences_of};
use super::status::{Level, Trainee};
use super::strength::{OneRmSource, Strength};
use crate::error::{Error, Result, SessionFigureFault};
use crate::movement::Handling;
use crate::setups::Loadings;
use crate::units::{Duration, Mass};

/// Everything a session is planned from.
pub struct SessionRequest<'a> {
    /// Name of the movement.
    pub movement: &'a str,
    /// How the movement is handled.
    pub handling: &'a Handling,
    /// Who trains.
    pub trainee: Trainee,
    /// The 1RM.
    pub one_rm: Mass,
    /// Body mass that is part of the load: all of it where the body hangs or stands on the load, else none.
    pub body: Mass,
    /// Where the 1RM comes from.
    pub one_rm_from: OneRmSource,
    /// What can be loaded.
    pub loading: &'a Loadings,
    /// The method.
    pub method: Method,
    /// What was asked for in place of the usual.
    pub wishes: SessionWishes,
    /// The band or chain setup, for bands and chains.
    pub setup: Option<&'a AccommodatingSetup>,
    /// The repetition; without it nothing is predicted.
    pub oracle: Option<&'a RepOracle<'a>>,
    /// The repetition with the band or chain setup on.
    pub setup_oracle: Option<&'a RepOracle<'a>>,
}

/// What is asked for in place of the usual.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct SessionWishes {
    /// Load.
    pub load: Option<Mass>,
    /// Repetitions of a set.
    pub repetitions: Option<u32>,
    /// Number of sets.
    pub sets: Option<u32>,
    /// All repetitions of the session together, for clusters.
    pub total_repetitions: Option<u32>,
    /// Repetitions of a group, for clusters.
    pub group: Option<u32>,
    /// Rest inside a cluster set.
    pub rest_within: Option<Duration>,
    /// Rest between sets.
    pub rest_between: Option<Duration>,
}

impl<'a> SessionRequest<'a> {
    /// A request for the usual session of a method, with a 1RM as given.
    #[must_use]
    pub fn usual(
        (movement, handling): (&'a str, &'a Handling),
        method: Method,
        trainee: Trainee,
        one_rm: Mass,
        loading: &'a Loadings,
    ) -> Self {
        Self {
            movement,
            handling,
            trainee,
            one_rm,
            body: Mass::ZERO,
            one_rm_from: OneRmSource::Given,
            loading,
            method,
            wishes: SessionWishes::default(),
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
            one_rm_from: self.one_rm_from.clone(),
            wishes: SessionWishes::default(),
            ..*self
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
        self.trainee.level()
    }

    /// A draft without sets.
    #[must_use]
    pub fn draft(&self, method: Method, frequency: Frequency, progression: Progression) -> Draft {
        let mut sources = vec![(Basis::RepetitionChart, CHART_ORIGIN)];
        sources.extend(
            differences_of(self.handling)
                .into_iter()
                .map(|(finding, origin)| (Basis::Finding(finding.to_owned()), origin)),
        );
        Draft {
            movement: self.movement.to_owned(),
            method,
            level: self.level(),
            one_rm: self.one_rm,
            one_rm_from: self.one_rm_from.clone(),
            body: self.body,
            with_bar: self.loading.is_bar,
            sets: Vec::new(),
            frequency,
            progression,
            setup: None,
            predictions: Vec::new(),
            lowerings: Vec::new(),
            remarks: Vec::new(),
            sources,
        }
    }

    /// The load asked for, as a share of 1RM.
    ///
    /// **Fails** above 1RM: that load cannot be lifted.
    pub fn liftable_share(&self, usual: f64) -> Result<f64> {
        let Some(load) = self.wishes.load else {
            return Ok(usual);
        };
        let share = self.strength().share_of(load);
        if share > 1.0 {
            return Err(Error::no_answer(SessionFigureFault::AboveOneRm {
                load,
                share,
                one_rm: self.one_rm,
            }));
        }
        if !(share.is_finite() && share > 0.0) {
            return Err(Error::bad(SessionFigureFault::NoLoad { load }));
        }
        Ok(share)
    }
}
