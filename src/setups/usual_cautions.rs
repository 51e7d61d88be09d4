//! What to watch for wherever a setup is recommended or a session planned; there is no switch for it.
//!
//! In: what a setup uses. Out: [`Caution`]s, the disclaimer first. Sources: usual rules of the weight room (common
//! practice), spotting guidelines (from memory), studies of who used bands.

use crate::movement::{Carrier, Catch, LoadPoint};
use crate::resistance::{BandPull, Item, PieceCaution, Setup};
use crate::units::Mass;

/// What to watch for.
#[derive(Debug, Clone, PartialEq)]
pub enum Caution {
    /// Education, no medical advice.
    Disclaimer,
    /// Nobody trains ill or injured.
    NotIll,
    /// Signs at which to stop at once.
    StopAtPain,
    /// Bands and chains are nothing for a novice.
    PlainForNovices,
    /// Collars, plates and the ends of the bar.
    Collars,
    /// Safety arms or a spotter.
    SafetyArms,
    /// The plan is agreed on with the spotters.
    AgreeWithSpotters,
    /// The stops of a sled.
    SledStops,
    /// The back keeps its shape.
    RoundingBack,
    /// Bands are inspected before use.
    InspectBands,
    /// Bands are tied to something that holds.
    AnchorBands,
    /// Faces stay out of the line of recoil.
    Recoil,
    /// Bands stay inside the stretch that was measured.
    MeasuredStretch,
    /// Bands of one label differ.
    BandsOfOneLabel,
    /// Chains hang evenly.
    EvenChains,
    /// More than 1RM is for the experienced.
    ExperiencedOnly,
    /// More than 1RM over the body takes safety arms and spotters.
    ArmsAndSpotters,
    /// More than 1RM is approached in small steps.
    SmallSteps,
    /// Soreness to be expected.
    Soreness,
    /// Signs of muscle breakdown.
    MuscleBreakdown,
    /// Somebody of great age is planned as a novice.
    AsNovice {
        /// The age in years.
        years: f64,
    },
    /// Bands or chains make more than the 1RM of the load on the way.
    FeltAboveOneRm {
        /// The most of it, as a share of the 1RM.
        share: f64,
    },
    /// A 1RM that hardly anybody of that kind has.
    UnlikelyOneRm {
        /// The lift.
        movement: String,
        /// What it would be if pounds were taken for kilograms, where that fits such people much better.
        in_pounds: Option<Mass>,
        /// The 1RM over what people of that sex, size and training show.
        over_expected: f64,
        /// The same in standard deviations.
        deviations: f64,
    },
    /// A log that the plan is made of, of which no day of the plan tells how old it is.
    LogAgeUntold {
        /// Its last day.
        last: String,
    },
    /// An age from which heavy lifting asks for more care.
    OlderLifter {
        /// The age in years.
        years: f64,
    },
    /// The figures are those of a model lifter.
    LighterFirst,
    /// What to watch for in a piece of this setup.
    Piece(PieceCaution),
}

/// What recommended setups use, as far as cautions depend on it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Uses {
    /// A bar in free hands or on the back.
    pub bar: bool,
    /// What catches the load when it is lost.
    pub catch: Catch,
    /// Elastic bands.
    pub bands: bool,
    /// Chains.
    pub chains: bool,
    /// The lift ends when the back rounds.
    pub rounding_back: bool,
    /// A lifter without training.
    pub novice: bool,
    /// So heavy, at its hardest or when bands go, that spotters may have to take it.
    pub heavy: bool,
    /// More than the maximum may come to lie on the lifter.
    pub beyond: bool,
}

/// What to watch for wherever bands are used, in a fixed order.
pub const OF_BANDS: [Caution; 5] = [
    Caution::InspectBands,
    Caution::AnchorBands,
    Caution::Recoil,
    Caution::MeasuredStretch,
    Caution::BandsOfOneLabel,
];

/// The usual cautions that apply, in a fixed order.
#[must_use]
pub fn usual_cautions(uses: Uses) -> Vec<Caution> {
    let accommodating = uses.bands || uses.chains;
    let arms = uses.bar && uses.catch == Catch::SafetyArms;
    let table = [
        (true, Caution::Disclaimer),
        (true, Caution::NotIll),
        (true, Caution::StopAtPain),
        (uses.novice && accommodating, Caution::PlainForNovices),
        (uses.bar, Caution::Collars),
        (arms && !uses.beyond, Caution::SafetyArms),
        (arms && uses.beyond, Caution::ArmsAndSpotters),
        (uses.beyond, Caution::ExperiencedOnly),
        (arms && uses.heavy, Caution::AgreeWithSpotters),
        (uses.catch == Catch::SledStops, Caution::SledStops),
        (uses.rounding_back, Caution::RoundingBack),
    ];
    let last = [
        (uses.chains, Caution::EvenChains),
        (true, Caution::LighterFirst),
    ];
    let bands = OF_BANDS.map(|caution| (uses.bands, caution));
    let all = table.into_iter().chain(bands).chain(last);
    let apply = all.filter(|(applies, _)| *applies);
    apply.map(|(_, caution)| caution).collect()
}

/// What to watch for in one setup: its pieces, and its bands before they are used.
///
/// Expects a setup that was put up with [`Setup::rigged_over`].
#[must_use]
pub fn setup_cautions(setup: &Setup, points: &[LoadPoint], carrier: &Carrier) -> Vec<Caution> {
    let pieces = setup.piece_cautions(points, carrier);
    let mut cautions: Vec<Caution> = pieces.into_iter().map(Caution::Piece).collect();
    let bands = || {
        setup.items.iter().filter_map(|item| match item {
            Item::Band(hung) => Some(&hung.band),
            _ => None,
        })
    };
    if bands().any(|band| matches!(band.pull(), BandPull::Dimensions { .. })) {
        cautions.push(Caution::BandsOfOneLabel);
    }
    if bands().next().is_some() {
        cautions.push(Caution::InspectBands);
    }
    cautions
}
