//! What is wished of a setup: the goal, the hardest effort, the limits.
//!
//! In: choices of a coach. Out: [`Wish`], checked, which scoring and ranking read.

use crate::bounds::{Bound, bounds};
use crate::error::{Error, Result, WishFault, WishSize};
use crate::units::Mass;

/// Largest share of the load at the end of the range that bands and chains make unless asked otherwise.
///
/// Source: span of the studies in `models/sources.ron`, 10 % (Ebben & Jensen 2002) to 35 % (Wallace 2006,
/// Shoepe 2011).
pub const STUDIED_SHARES: [f64; 2] = [0.10, 0.35];

/// What is best.
#[derive(Debug, Clone, PartialEq, Default)]
pub enum Goal {
    /// The evenest effort over the range.
    #[default]
    Flattest,
    /// The most load at a place of the range.
    MostLoad {
        /// Where the load counts, 0 to 1.
        at: f64,
        /// Where effort may not exceed the chosen one; the hardest place if left out. Elsewhere effort
        /// then goes up to 100 %.
        limit_at: Option<f64>,
    },
    /// The share of bands and chains nearest to a given one.
    Share {
        /// Share of the load, 0 to 1.
        share: f64,
        /// Where it counts, 0 to 1.
        at: f64,
    },
    /// Effort nearest to a profile: points of range and effort, straight lines between.
    Profile(Vec<(f64, f64)>),
}

/// A limit of the load at a place of the range.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LoadLimit {
    /// Where, 0 to 1.
    pub at: f64,
    /// Not less than this.
    pub least: Option<Mass>,
    /// Not more than this.
    pub most: Option<Mass>,
}

/// Everything that is wished.
#[derive(Debug, Clone, PartialEq)]
pub struct Wish {
    /// What is best.
    pub goal: Goal,
    /// The effort at the hardest place, 1 = all the lifter has.
    pub effort: f64,
    /// Least and most share of bands and chains, at start or end: of the load what they add, of the weight
    /// what they take away.
    pub share: [Option<f64>; 2],
    /// Limits of the load.
    pub loads: Vec<LoadLimit>,
    /// Most bands and chains a side.
    pub most_hung: u32,
    /// Most pieces a side, plates included.
    pub most_pieces: u32,
}

/// Most bands and chains a side that a search may combine: beyond it there is no end.
pub const MOST_HUNG: u32 = 6;

/// Most places of the range that limits may name.
pub(super) const MOST_LIMITS: usize = 4;

impl Default for Wish {
    /// The flattest effort at 80 % with what studies used, at most 2 bands and chains a side.
    fn default() -> Self {
        Self {
            goal: Goal::Flattest,
            effort: 0.80,
            share: [None, Some(STUDIED_SHARES[1])],
            loads: Vec::new(),
            most_hung: 2,
            most_pieces: 12,
        }
    }
}

impl Wish {
    /// The same wish, if every number makes sense.
    ///
    /// **Fails** with the first that does not, and its range.
    pub fn checked(&self) -> Result<&Self> {
        within(
            WishSize::HardestEffort,
            self.effort,
            &bounds().hardest_effort,
        )?;
        for share in self.share.iter().flatten() {
            within(WishSize::Share, *share, &bounds().load_share)?;
        }
        if let [Some(least), Some(most)] = self.share
            && least > most
        {
            return Err(Error::bad(WishFault::SharesCross { least, most }));
        }
        if self.most_hung > MOST_HUNG {
            return Err(Error::bad(WishFault::TooManyHung {
                asked: self.most_hung,
                most: MOST_HUNG,
            }));
        }
        if self.loads.len() > MOST_LIMITS {
            return Err(Error::bad(WishFault::TooManyLimits { most: MOST_LIMITS }));
        }
        for (index, limit) in self.loads.iter().enumerate() {
            within(WishSize::Place, limit.at, &bounds().range_place)?;
            if self.loads[..index].iter().any(|other| other.at == limit.at) {
                return Err(Error::bad(WishFault::LimitTwice { place: limit.at }));
            }
        }
        self.check_goal()?;
        Ok(self)
    }

    fn check_goal(&self) -> Result<()> {
        match &self.goal {
            Goal::Flattest => Ok(()),
            Goal::MostLoad { at, limit_at } => {
                within(WishSize::Place, *at, &bounds().range_place)?;
                limit_at.map_or(Ok(()), |at| {
                    within(WishSize::Place, at, &bounds().range_place)
                })
            }
            Goal::Share { share, at } => {
                within(WishSize::Share, *share, &bounds().load_share)?;
                within(WishSize::Place, *at, &bounds().range_place)
            }
            Goal::Profile(points) => check_profile(points),
        }
    }

    /// Whether loads or a profile of efforts are wished for, so that another effort is another wish.
    #[must_use]
    pub fn is_of_loads(&self) -> bool {
        !self.loads.is_empty() || matches!(self.goal, Goal::Profile(_))
    }

    /// The effort allowed at a sample of the range.
    #[must_use]
    pub fn allowed(&self, sample: usize, count: usize) -> f64 {
        let limit_at = match self.goal {
            Goal::MostLoad { limit_at, .. } => limit_at.map(|at| sample_at(at, count)),
            _ => None,
        };
        match limit_at {
            Some(at) if at != sample => self.effort.max(1.0),
            _ => self.effort,
        }
    }

    /// The profile's effort at a place of the range; straight lines between its points, level beyond.
    #[must_use]
    pub fn profile_at(points: &[(f64, f64)], range: f64) -> f64 {
        let after = points.iter().position(|point| point.0 >= range);
        match after {
            Some(0) => points[0].1,
            None => points.last().map_or(0.0, |point| point.1),
            Some(index) => {
                let (a, b) = (points[index - 1], points[index]);
                a.1 + (b.1 - a.1) * (range - a.0) / (b.0 - a.0)
            }
        }
    }
}

fn check_profile(points: &[(f64, f64)]) -> Result<()> {
    if points.len() < 2 {
        return Err(Error::bad(WishFault::ShortProfile));
    }
    if let Some(pair) = points.windows(2).find(|pair| pair[1].0 <= pair[0].0) {
        return Err(Error::bad(WishFault::ProfileFalls {
            place: pair[1].0,
            before: pair[0].0,
        }));
    }
    for (range, effort) in points {
        within(WishSize::Place, *range, &bounds().range_place)?;
        within(WishSize::ProfileEffort, *effort, &bounds().profile_effort)?;
    }
    Ok(())
}

fn within(size: WishSize, value: f64, bound: &Bound) -> Result<()> {
    if bound.holds(value) {
        return Ok(());
    }
    Err(Error::bad(WishFault::Outside {
        size,
        value,
        least: bound.least(),
        most: bound.most(),
    }))
}

/// The sample nearest to a place of the range.
pub(super) fn sample_at(range: f64, count: usize) -> usize {
    ((count - 1) as f64 * range).round() as usize
}
