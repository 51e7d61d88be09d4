//! How long to rest between sets and inside a cluster, and how far recovery gets in that time.
//!
//! In: training status and load as a share of 1RM, or a rest that the user asked for. Out: a rest
//! with its published range, or the reason why that rest makes no sense.

use super::status::Level;
use crate::error::{Error, RestPlace, Result, SessionFigureFault};
use crate::progress::origin::Origin;
use crate::units::Duration;

/// One published or customary range of rests.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RestRule {
    /// What the rest is for.
    pub purpose: &'static str,
    /// Shortest, seconds.
    pub least_s: f64,
    /// Longest, seconds.
    pub most_s: f64,
    /// Where it comes from.
    pub origin: Origin,
}

/// Heavy sets of 1 to 6 repetitions for strength.
pub const HEAVY: RestRule = RestRule {
    purpose: "strength, heavy loads (1-6RM)",
    least_s: 180.0,
    most_s: 300.0,
    origin: Origin::Read(
        "acsm_2009",
        "summary of the position stand; also de Salles et al. 2009, Sports Med 39:765-777",
    ),
};

/// Lighter sets, assistance lifts, novices.
pub const LIGHT: RestRule = RestRule {
    purpose: "assistance lifts and novices",
    least_s: 60.0,
    most_s: 120.0,
    origin: Origin::Recalled("acsm_2009", "1 to 2 min"),
};

/// Between the groups of a cluster set.
pub const IN_CLUSTER: RestRule = RestRule {
    purpose: "between the groups of a cluster set",
    least_s: 15.0,
    most_s: 45.0,
    origin: Origin::Recalled("haff_2008", "15 to 45 s"),
};

/// The customary rest inside a cluster (common practice), seconds.
pub const CUSTOMARY_IN_CLUSTER_S: f64 = 30.0;

/// Every rule above.
pub const RULES: &[RestRule] = &[HEAVY, LIGHT, IN_CLUSTER];

/// Load from which a set counts as heavy: that of 6 repetitions in the NSCA chart, share of 1RM.
pub const HEAVY_SHARE: f64 = 0.85;

/// Loads between this and [`HEAVY_SHARE`] take the rest between the two ranges (assumed: the position
/// stand names 1-2 min and 3-5 min and leaves the loads between open).
const MODERATE_SHARE: f64 = 0.70;

/// The rule and the rest for a set at `share` of 1RM.
///
/// Heavy sets take 3 min, the short end of 3 to 5, because 2 min did as well as 4 for strength in
/// trained men (Willardson & Burkett 2008, J Strength Cond Res 22:146-152, result from memory).
#[must_use]
pub fn between_sets(level: Level, share: f64) -> (RestRule, Duration) {
    if share >= HEAVY_SHARE {
        (HEAVY, Duration::from_s(HEAVY.least_s))
    } else if level == Level::Novice || share < MODERATE_SHARE {
        (LIGHT, Duration::from_s(LIGHT.most_s))
    } else {
        (
            HEAVY,
            Duration::from_s((LIGHT.most_s + HEAVY.least_s) / 2.0),
        )
    }
}

/// Longest rest that is still a rest between sets, seconds (assumed: beyond it, it is another session).
const LONGEST_S: f64 = 1800.0;

/// A rest between sets that the user asked for.
///
/// **Fails** when it is negative, not a number, or longer than half an hour.
pub fn checked_between_sets(rest: Duration) -> Result<Duration> {
    checked(rest, LONGEST_S, RestPlace::BetweenSets)
}

/// A rest inside a cluster set: what was asked for, or 30 s.
///
/// **Fails** when it is negative, not a number, or as long as a rest between sets.
pub fn checked_in_cluster(rest: Option<Duration>) -> Result<Duration> {
    match rest {
        Some(rest) => checked(rest, HEAVY.least_s, RestPlace::InsideCluster),
        None => Ok(Duration::from_s(CUSTOMARY_IN_CLUSTER_S)),
    }
}

fn checked(rest: Duration, most_s: f64, place: RestPlace) -> Result<Duration> {
    let rest_s = rest.as_s();
    if !rest_s.is_finite() || rest_s < 0.0 {
        return Err(Error::bad(SessionFigureFault::NoRest { rest, place }));
    }
    if rest_s > most_s {
        return Err(Error::bad(SessionFigureFault::LongRest {
            rest,
            place,
            most: Duration::from_s(most_s),
        }));
    }
    Ok(rest)
}
