//! How much more a lifter can lower than lift, as published.
//!
//! In: a 1RM. Out: the eccentric 1RM with its source, when the simulated repetition does not give it;
//! and the customary window of overloaded lowering.

use crate::progress::origin::Origin;
use crate::units::Mass;

/// A published ratio of eccentric to concentric strength.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct EccentricRatio {
    /// The movement it stands for here; empty for joints in general.
    pub movement: &'static str,
    /// The lift and the people.
    pub who: &'static str,
    /// Eccentric over concentric.
    pub ratio: f64,
    /// Where it comes from.
    pub origin: Origin,
}

const fn ratio(
    movement: &'static str,
    who: &'static str,
    ratio: f64,
    origin: Origin,
) -> EccentricRatio {
    EccentricRatio {
        movement,
        who,
        ratio,
        origin,
    }
}

const KELLY: Origin = Origin::Derived("kelly_2015", "115.99 kg over 93.56 kg of the abstract");
const HOLLANDER: Origin = Origin::Read(
    "hollander_2007",
    "abstract, men, weight stacks, 3 s; the women's upper-body values are left out as far outside other data",
);
const NUZZO: Origin = Origin::Read(
    "nuzzo_2023",
    "abstract, 98 % isokinetic: an upper bound for a bar",
);

/// Published ratios, the one for a free bar first.
pub const RATIOS: &[EccentricRatio] = &[
    ratio(
        "bench-press",
        "free weight, 3 s lowering, 30 people",
        1.24,
        KELLY,
    ),
    ratio("bench-press", "machine, men", 1.40, HOLLANDER),
    ratio("pull-up", "lat pull-down, men", 1.32, HOLLANDER),
    ratio("leg-press", "machine, men", 1.44, HOLLANDER),
    ratio("knee-extension", "machine, men", 1.35, HOLLANDER),
    ratio(
        "overhead-press",
        "seated machine press, men",
        1.49,
        HOLLANDER,
    ),
    ratio("leg-curl", "machine, men", 1.27, HOLLANDER),
    ratio("", "single joints, meta-analysis", 1.41, NUZZO),
];

/// The ratio that is planned with: the one measured with a free bar and a lowering of 3 s, the lowest of
/// all, taken for every lift (assumed for all but the bench press; the careful side).
pub const PLANNING: EccentricRatio = RATIOS[0];

/// The eccentric 1RM by [`PLANNING`]; `body` is the body mass that is part of the load.
#[must_use]
pub fn eccentric_one_rm(one_rm: Mass, body: Mass) -> Mass {
    (one_rm + body) * PLANNING.ratio - body
}

/// Efficiency (work over energy of the ATP made) of lifting and of lowering, %.
const EFFICIENCY_PERCENT: (f64, f64) = (15.0, 34.7);

/// How much a lowering tires against a lift, each with the same share of what the muscles can hold that way.
///
/// ```text
/// cost = (efficiency of lifting / efficiency of lowering) · (eccentric 1RM / 1RM) = 0.54
/// ```
/// **Shape.** One number. At the same share a lowering takes up 1.24 times the work of the lift, at 0.43 of
/// its energy for each joule. **Source.** Efficiencies: Ryschon et al. 1997 (abstract), 31P spectroscopy of
/// the shin's muscles; ratio: [`PLANNING`]. **Differs.** The rates of the fatigue model are of holding still
/// and are taken for lifting; that fatigue follows the energy spent is assumed. Used where spotters do the
/// lifting only: in a set that is lifted, too little for the lifting and too much for the lowering cancel, as
/// the published repetitions to failure show.
pub const LOWERING_COST: f64 = EFFICIENCY_PERCENT.0 / EFFICIENCY_PERCENT.1 * PLANNING.ratio;

/// Where [`LOWERING_COST`] comes from.
pub const LOWERING_COST_ORIGIN: Origin = Origin::Derived(
    "ryschon_1997",
    "efficiency 15.0 % lifting, 34.7 % lowering (abstract), times the eccentric ratio of 1.24",
);

/// The customary method of overloaded lowering.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct OverloadPractice {
    /// Least and most load, share of 1RM.
    pub shares: (f64, f64),
    /// Fewest and most repetitions of a set.
    pub repetitions: (u32, u32),
    /// Fewest and most sets.
    pub sets: (u32, u32),
    /// Most sessions a week.
    pub sessions_a_week: u32,
    /// Where it comes from.
    pub origin: Origin,
}

/// 105 to 110 % of 1RM, 3 to 5 repetitions, 3 to 4 sets, at most once a week (common practice); well
/// inside the measured limit of [`PLANNING`].
pub const OVERLOAD_PRACTICE: OverloadPractice = OverloadPractice {
    shares: (1.05, 1.10),
    repetitions: (3, 5),
    sets: (3, 4),
    sessions_a_week: 1,
    origin: Origin::Practice("practitioners' guideline for overloaded lowering"),
};

/// Time of the lowering, s: that of the measured limit (Kelly et al. 2015, J Strength Cond Res 29:1027-1032).
pub const LOWERING_S: f64 = 3.0;
