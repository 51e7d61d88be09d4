//! How long to rest between sets and inside a cluster, and how far recovery gets in that time.
//!
//! In: training status and load as a share of 1RM, or a rest that the user asked for. Out: a rest
//! with its published range, or the reason why that rest makes no sense.

use super::published::RestTable;
use super::status::Level;
use crate::bounds::bounds;
use crate::error::{Error, RestPlace, Result, SessionFigureFault};
use crate::units::Duration;

/// Load from which a set counts as heavy: that of 6 repetitions in the NSCA chart, share of 1RM.
pub const HEAVY_SHARE: f64 = 0.85;

/// Loads between this and [`HEAVY_SHARE`] take the rest between the two ranges (assumed: the position
/// stand names 1-2 min and 3-5 min and leaves the loads between open).
const MODERATE_SHARE: f64 = 0.70;

impl RestTable {
    /// The rest for a set at `share` of 1RM.
    ///
    /// Heavy sets take 3 min, the short end of 3 to 5, because 2 min did as well as 4 for strength in
    /// trained men (Willardson & Burkett 2008, J Strength Cond Res 22:146-152, result from memory).
    #[must_use]
    pub fn between_sets(&self, level: Level, share: f64) -> Duration {
        if share >= HEAVY_SHARE {
            self.heavy.least
        } else if level == Level::Novice || share < MODERATE_SHARE {
            self.light.most
        } else {
            Duration::from_s((self.light.most.as_s() + self.heavy.least.as_s()) / 2.0)
        }
    }

    /// The rest for a set of a lift that moves one joint: the middle of the range of lighter sets and assistance lifts,
    /// its long end where the set is heavy.
    #[must_use]
    pub fn of_one_joint(&self, share: f64) -> Duration {
        if share >= MODERATE_SHARE {
            self.light.most
        } else {
            Duration::from_s((self.light.least.as_s() + self.light.most.as_s()) / 2.0)
        }
    }

    /// A rest inside a cluster set: what was asked for, or the usual one.
    ///
    /// **Fails** when it is negative, not a number, too short to put the bar down, or as long as a rest between sets.
    pub fn in_cluster(&self, asked: Option<Duration>, usual: Duration) -> Result<Duration> {
        let least = Duration::from_s(bounds().cluster_rest.least());
        asked.map_or(Ok(usual), |rest| {
            checked(rest, (least, self.heavy.least), RestPlace::InsideCluster)
        })
    }
}

/// A rest between sets that the user asked for.
///
/// **Fails** when it is negative, not a number, too short to part two sets, or longer than half an hour.
pub fn checked_between_sets(rest: Duration) -> Result<Duration> {
    let bound = &bounds().rest_between_sets;
    let ends = (bound.least(), bound.most());
    checked(
        rest,
        (Duration::from_s(ends.0), Duration::from_s(ends.1)),
        RestPlace::BetweenSets,
    )
}

fn checked(
    rest: Duration,
    (least, most): (Duration, Duration),
    place: RestPlace,
) -> Result<Duration> {
    let rest_s = rest.as_s();
    if !rest_s.is_finite() || rest_s < 0.0 {
        return Err(Error::bad(SessionFigureFault::NoRest { rest, place }));
    }
    if rest < least {
        return Err(Error::bad(SessionFigureFault::ShortRest {
            rest,
            place,
            least,
        }));
    }
    if rest > most {
        return Err(Error::bad(SessionFigureFault::LongRest {
            rest,
            place,
            most,
        }));
    }
    Ok(rest)
}
