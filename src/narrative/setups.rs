//! A ranking of setups in words: the goal, places of the range, the cautions.
//!
//! In: a [`Wish`], a [`PickAnswer`], who lifts. Out: sentences; the disclaimer always stands first among the cautions.

use super::cautions::{caution_in_words, is_of_person};
use super::hanging::on_a_leader;
use super::implements::{chain_hang_word, hang_word};
use super::quantities::rounded;
use super::shared_phrases::range_place;
use crate::anatomy::Training;
use crate::movement::Carrier;
use crate::resistance::{Item, PieceCaution};
use crate::session::rests::HEAVY_SHARE;
use crate::session::session_cautions::of_age;
use crate::setups::{
    Caution, Goal, LeftOut, LeftOutPieces, LeftOutReason, Uses, WayOfHanging, Wish, usual_cautions,
};
use crate::study::{PickAnswer, Picked, load_points};
use crate::units::System;

/// The goal in words.
#[must_use]
pub fn goal_in_words(wish: &Wish) -> String {
    match &wish.goal {
        Goal::Flattest => "flattest effort".to_owned(),
        Goal::MostLoad { at, limit_at: None } => format!("most load at {}", range_place(*at)),
        Goal::MostLoad {
            at,
            limit_at: Some(limit),
        } => {
            format!(
                "most load at {} with the effort held at {}",
                range_place(*at),
                range_place(*limit)
            )
        }
        Goal::Share { share, at } => {
            format!(
                "{} % of the load at {} from bands and chains",
                rounded(100.0 * share, 1),
                range_place(*at)
            )
        }
        Goal::Profile(points) => {
            let points: Vec<String> = points
                .iter()
                .map(|(s, e)| format!("{} % at {}", rounded(100.0 * e, 0), range_place(*s)))
                .collect();
            format!("effort nearest to {}", points.join(", "))
        }
    }
}

/// Pieces that were left out and why: "loop-64mm (doubled from floor; single from floor): would stay slack."
#[must_use]
pub fn left_out_in_words(left_out: &LeftOut, units: System) -> String {
    let pieces = match &left_out.pieces {
        LeftOutPieces::EveryBand => "every band".to_owned(),
        LeftOutPieces::EveryChain => "every chain".to_owned(),
        LeftOutPieces::Named(names) => names.join(", "),
    };
    let way = |way: &WayOfHanging| way_in_words(way, units);
    let mut ways: Vec<String> = left_out.ways.iter().map(way).collect();
    ways.sort();
    let ways = if ways.is_empty() {
        String::new()
    } else {
        format!(" ({})", ways.join("; "))
    };
    format!("{pieces}{ways}: {}.", left_out_reason(left_out.reason))
}

fn way_in_words(way: &WayOfHanging, units: System) -> String {
    match way {
        WayOfHanging::Band { hang, anchor } => format!("{} from {anchor}", hang_word(*hang)),
        WayOfHanging::Chain { hang, leader } => {
            let leader = on_a_leader(*leader, units);
            format!("{}{leader}", chain_hang_word(*hang))
        }
    }
}

fn left_out_reason(reason: LeftOutReason) -> &'static str {
    match reason {
        LeftOutReason::NoPlaceForChains => "chains do not hang on what this movement lifts",
        LeftOutReason::NoPlaceForBands => "bands are not hung so on what this movement lifts",
        LeftOutReason::NoSecondPiece => "no second piece for the other side",
        LeftOutReason::Overstretched => "would be stretched beyond the safe length",
        LeftOutReason::HangsFree => "would hang free over the whole range and be plain weight",
        LeftOutReason::LiesOnFloor => "would lie on the floor over the whole range",
        LeftOutReason::PullsAskew => {
            "would pull the free bar far forward or back (--askew allows it)"
        }
        LeftOutReason::GoesSlack => "would go slack on the way: a slack loop slides off the sleeve",
        LeftOutReason::StaysSlack => "would stay slack",
    }
}

/// The usual cautions, and those of the ranked setups themselves, each once.
#[must_use]
pub fn pick_cautions(pick: &PickAnswer, training: Training, units: System) -> Vec<String> {
    let usual = usual_of(pick, &pick.ranked, training);
    let usual = usual.iter().map(|caution| caution_in_words(caution, units));
    usual.chain(numbered_cautions(pick, units)).collect()
}

/// Most lines about what is dangerous today.
const MOST_HAZARDS: usize = 2;

/// What is dangerous about the setup of the card, first of all; then the usual cautions of all answers, none twice.
#[must_use]
pub fn card_cautions(
    pick: &PickAnswer,
    training: Training,
    units: System,
) -> (Vec<String>, Vec<String>) {
    let first = pick.answers.get(..1).unwrap_or_default();
    let mut hazards = hazards_of(&usual_of(pick, first, training));
    hazards.truncate(MOST_HAZARDS);
    let others = usual_of(pick, &pick.answers, training);
    let others = others.iter().filter(|caution| !hazards.contains(caution));
    let words = |caution: &Caution| caution_in_words(caution, units);
    (
        hazards.iter().map(words).collect(),
        others.map(words).collect(),
    )
}

/// The cautions that name what can hurt with this load, the gravest first.
#[must_use]
pub fn hazards_of(cautions: &[Caution]) -> Vec<Caution> {
    const GRAVEST: [Caution; 8] = [
        Caution::ArmsAndSpotters,
        Caution::SmallSteps,
        Caution::Recoil,
        Caution::EvenChains,
        Caution::RoundingBack,
        Caution::SafetyArms,
        Caution::SledStops,
        Caution::Collars,
    ];
    // Who lifts comes before what is lifted.
    let of_person = cautions.iter().filter(|caution| is_of_person(caution));
    let mut hazards: Vec<Caution> = Vec::new();
    let felt = cautions.iter();
    let felt = felt.filter(|caution| matches!(caution, Caution::FeltAboveOneRm { .. }));
    for caution in of_person.chain(felt).chain(&GRAVEST) {
        if cautions.contains(caution) && !hazards.contains(caution) {
            hazards.push(caution.clone());
        }
    }
    hazards
}

fn usual_of(pick: &PickAnswer, setups: &[Picked], training: Training) -> Vec<Caution> {
    let items = || setups.iter().flat_map(|picked| &picked.loaded.setup.items);
    let usual = usual_cautions(Uses {
        bar: pick.study.range.carrier == Carrier::Bar,
        catch: pick.handling.catch,
        rounding_back: pick.handling.rounding_back,
        bands: items().any(|item| matches!(item, Item::Band(_))),
        chains: items().any(|item| matches!(item, Item::Chain(_))),
        novice: training == Training::Novice || pick.safety.novice,
        // Of the one that is advised: the others say themselves what they take.
        heavy: setups
            .first()
            .is_some_and(|picked| pick.heaviest_share(picked) >= HEAVY_SHARE),
        beyond: setups
            .first()
            .is_some_and(|picked| pick.share_that_may_lie(picked) > 1.0),
    });
    usual.into_iter().chain(of_age(pick.age_years)).collect()
}

/// What to watch for in single setups, with the numbers of those that it concerns.
fn numbered_cautions(pick: &PickAnswer, units: System) -> Vec<String> {
    let points = load_points(&pick.study.range);
    let mut concerned: Vec<(String, Vec<String>)> = Vec::new();
    for (index, picked) in pick.ranked.iter().enumerate() {
        let setup = &picked.study.demand.setup;
        let cautions = setup.piece_cautions(&points, &pick.study.range.carrier);
        // A band that is slack for a while is a fact of the setup, told there.
        let cautions = cautions.into_iter();
        for caution in cautions.filter(|c| !matches!(c, PieceCaution::PartlySlack { .. })) {
            let sentence = caution_in_words(&Caution::Piece(caution), units);
            let number = (index + 1).to_string();
            match concerned.iter_mut().find(|(known, _)| *known == sentence) {
                Some((_, numbers)) => numbers.push(number),
                None => concerned.push((sentence, vec![number])),
            }
        }
    }
    let told = concerned.into_iter().map(|(sentence, numbers)| {
        let word = if numbers.len() == 1 {
            "Number"
        } else {
            "Numbers"
        };
        format!("{word} {}: {sentence}", numbers.join(", "))
    });
    told.collect()
}
