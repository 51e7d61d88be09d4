//! Every caution, once.
//!
//! In: a [`Caution`]. Out: its sentence, quantities in the units asked for.

use super::prose::percent;
use super::quantities::{QuantityWords, rounded};
use super::shared_phrases::{times_of_people, where_it_helps};
use crate::error::JudgedBy;
use crate::resistance::PieceCaution;
use crate::setups::Caution;
use crate::units::System;

/// A caution in words.
#[must_use]
pub fn caution_in_words(caution: &Caution, units: System) -> String {
    match caution {
        Caution::Piece(caution) => piece_in_words(caution, units),
        Caution::AsNovice { years } => format!(
            "At {} years the plan is a novice's, whatever the training: supervised, with a clinician's yes, technique before load.",
            rounded(*years, 0)
        ),
        Caution::UnlikelyOneRm {
            movement,
            over_expected,
            deviations,
            in_pounds,
        } => format!(
            "This 1RM in the {} is {}, {} standard deviations away: it is planned with, but look at its digits and unit, and at \
             who trains, before anybody lifts: sex, size, months of training.{}",
            movement.replace('-', " "),
            times_of_people(*over_expected, JudgedBy::Kind),
            rounded(deviations.abs(), 1),
            in_pounds.map_or_else(String::new, |meant| format!(
                " It fits far better if pounds were taken for kilograms, as {}: is the unit right?",
                units.mass(meant)
            ))
        ),
        Caution::FeltAboveOneRm { share } => format!(
            "Near the end of the way {} of the 1RM is felt: more than this lifter lifts all the way, so whoever stalls goes back down at once; \
             for who has trained for years with bands or chains.",
            percent(*share)
        ),
        Caution::LogAgeUntold { last } => format!(
            "The plan assumes that the log ends shortly before the first session (its last: {last}); tell the day by --start. After weeks \
             off it would be too heavy."
        ),
        Caution::OlderLifter { years } => format!(
            "At {} years: a clinician's yes before heavy sets, and another day of rest while soreness stays.",
            rounded(*years, 0)
        ),
        known => usual(known).0.to_owned(),
    }
}

/// Whether a caution is about who lifts: the age, a 1RM that hardly anybody of that kind has, a log that may be old.
#[must_use]
pub const fn is_of_person(caution: &Caution) -> bool {
    matches!(
        caution,
        Caution::AsNovice { .. }
            | Caution::OlderLifter { .. }
            | Caution::UnlikelyOneRm { .. }
            | Caution::LogAgeUntold { .. }
    )
}

/// Usual rules of the weight room.
pub const RULES: &str = "common practice";
pub const HEART: &str = "aha_2007: contraindications of resistance exercise, from memory";
pub const SPOTTING: &str = "nsca_essentials: spotting guidelines, from memory";
pub const BACK: &str = "deadlift_programme_2020: abstract";
pub const EYES: &str =
    "band_eye_injuries_2021: abstract, 11 patients, 14 eyes; also PubMed 33165305";
pub const SPREAD: &str = "mcmaster_2010: spread of nominally equal bands";
pub const SORENESS: &str = "clarkson_hubal_2002: time course of soreness, from memory";

/// Cautions that hold wherever their gear is used, each with where it comes from; empty for those of a single piece.
#[rustfmt::skip]
pub const fn usual(caution: &Caution) -> (&'static str, &'static str) {
    match caution {
        Caution::Disclaimer => ("This is education, no medical advice. Local rules and a qualified professional on the spot come first.", RULES),
        Caution::NotIll => ("Do not train injured, ill or in pain. Ask a clinician when pregnant, after surgery, with high blood pressure, an aneurysm, disease of heart or retina.", HEART),
        Caution::StopAtPain => ("Stop at once: sharp pain, dizziness, chest pressure, sudden headache.", RULES),
        Caution::PlainForNovices => ("Bands and chains are for experienced lifters: a novice gains as much from plain weight that grows a little each week.", RULES),
        Caution::Collars => ("Collars on, plates checked, nobody near the ends of the bar.", RULES),
        Caution::SafetyArms => ("Set safety arms at the bar's lowest point, or have a spotter; never without.", SPOTTING),
        Caution::AgreeWithSpotters => ("Agree with the spotters first: repetitions, hand-off, who takes the bar when.", SPOTTING),
        Caution::SledStops => ("Set the sled's stops just below the lowest place of the lift, and keep a hand free for the catch.", RULES),
        Caution::RoundingBack => ("Keep the back's shape; end the set when it rounds. Low back pain ended a deadlift programme for 3 of 14 lifters.", BACK),
        Caution::InspectBands => ("Inspect every band before use: nicks, whitening, sticky spots; retire worn.", EYES),
        Caution::AnchorBands => ("Anchor bands to what cannot tip, over no sharp edge; load or bolt the rack.", EYES),
        Caution::Recoil => ("No face in the line of recoil; wear eye protection.", EYES),
        Caution::MeasuredStretch => ("Stay inside the stretch that the band was measured for; keep it from sun, oil and heat; ask about latex allergy.", RULES),
        Caution::BandsOfOneLabel => ("Bands of one label differ by 8-19 %: weigh yours, hang equal ones both sides.", SPREAD),
        Caution::EvenChains => ("Chains even, inside the collars, links on the floor at the bottom; feet clear.", RULES),
        Caution::ExperiencedOnly => ("Experienced lifters with sound technique only, at most once a week for the same muscles.", RULES),
        Caution::ArmsAndSpotters => ("Safety arms at the lowest point AND spotters: the lifter cannot raise this load.", SPOTTING),
        Caution::SmallSteps => ("Start at 100 % of 1RM and go up in small steps; stop the set when the lowering can no longer be slowed, and let safety arms, stops or helpers take the load.", RULES),
        Caution::Soreness => ("Expect soreness that peaks 24 to 72 hours later; leave a week before the next such session.", SORENESS),
        Caution::MuscleBreakdown => ("Dark urine, swelling, or weakness for more than a few days: stop and seek medical care at once.", SORENESS),
        Caution::LighterFirst => ("Start lighter than computed, and slowly: the figures are of a model lifter.", RULES),
        Caution::AsNovice { .. } | Caution::OlderLifter { .. } | Caution::UnlikelyOneRm { .. } | Caution::FeltAboveOneRm { .. } | Caution::LogAgeUntold { .. } => ("", RULES),
        Caution::Piece(_) => ("", ""),
    }
}

fn piece_in_words(caution: &PieceCaution, units: System) -> String {
    let percent = |share: f64| rounded(100.0 * share, 0);
    match caution {
        PieceCaution::Overstretched {
            band,
            stretch,
            taut,
            safe,
        } => format!(
            "{band} is stretched to {} times its rest length of {}: more than {} is not safe; use a longer or a wider band.",
            rounded(*stretch, 2),
            units.short_length(*taut),
            rounded(*safe, 2)
        ),
        PieceCaution::Slack { band } => format!(
            "{band} stays slack over the whole range and adds nothing: double it, or move its anchor further away."
        ),
        PieceCaution::PartlySlack { band } => format!("{band} is slack over part of the range."),
        PieceCaution::Worn { band, lost } => {
            format!("{band} is worn and counted {} % weaker.", percent(*lost))
        }
        PieceCaution::ChainLies { chain } => format!(
            "{chain} lies on the floor over the whole range and adds nothing: shorten its leader."
        ),
        PieceCaution::ChainHangsFree { chain } => format!(
            "{chain} hangs free over the whole range and is plain weight: lengthen its leader, and it may swing."
        ),
        PieceCaution::Uneven { difference, share } => format!(
            "Left and right differ by up to {} ({} %): hang the same on both sides.",
            units.force(*difference),
            percent(*share)
        ),
        PieceCaution::Helps(helping) => format!(
            "The load helps the lift {}: it would move by itself there.",
            where_it_helps(helping)
        ),
        PieceCaution::Overhelped { range } => format!(
            "Help outweighs the load over {} % of the range: the load would rise by itself there.",
            percent(*range)
        ),
    }
}
