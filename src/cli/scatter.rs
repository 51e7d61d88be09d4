//! The option that shows how well a fitted lifter is known.

use crate::error::Result;
use crate::library::Model;
use crate::study::{PersonVersions, Question, Study};
use clap::Args;

/// Whether plausible versions of the lifter are shown.
#[derive(Debug, Args)]
pub struct ScatterOption {
    /// Show what plausible versions of a fitted lifter do: the interval that holds four in five (see: torquill fit)
    #[arg(long)]
    pub scatter: bool,
}

impl ScatterOption {
    /// The versions of the lifter, where they are asked for.
    ///
    /// **Fails** where the lifter's file says nothing of how well its strengths are known.
    pub fn versions<'a>(&self, model: &'a Model) -> Result<Option<PersonVersions<'a>>> {
        self.scatter.then(|| PersonVersions::of(model)).transpose()
    }

    /// The study with its band, where that is asked for.
    ///
    /// **Fails** as [`Self::versions`].
    pub fn banded(&self, study: Study, question: &Question<'_>, model: &Model) -> Result<Study> {
        match self.versions(model)? {
            None => Ok(study),
            Some(versions) => Ok(study.with_band(versions.band(question)?)),
        }
    }
}
