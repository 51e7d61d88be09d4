//! The band or chain setup of a session: the best of the gym, or the one that was named.
//!
//! In: a question, a gym or named pieces, the effort at the hardest place. Out: [`SessionSetup`]: what a
//! session needs of it, and the pieces alone for the simulated repetition.

use super::load_for_effort::load_for_effort;
use super::pick_answer::{PickAnswer, Picked};
use super::picking::pick;
use super::question::Question;
use super::solve::{SolvedLift, study};
use crate::error::{Error, PickFault, Result, SchemeFault};
use crate::rep::with_load;
use crate::resistance::{Item, Setup};
use crate::session::accommodating_setup::AccommodatingSetup;
use crate::session::method::Method;
use crate::session::published::EccentricTable;
use crate::setups::{AllowedPieces, Choosing, Gym, LeftByBands, Loading, Loadings, Watch, Wish};
use crate::units::{Force, Mass};

/// A setup for a session.
#[derive(Debug, Clone, PartialEq)]
pub struct SessionSetup {
    /// What the plan says of it.
    pub setup: AccommodatingSetup,
    /// Bands and chains beside the plain load.
    pub hung: Setup,
}

/// The best setup that a gym can build of bands alone or of chains alone, its hardest place at `effort`.
///
/// **Fails** where no setup fits, where the best is plain weight (no answer, with what would help), and where every one leaves
/// more than the 1RM when its bands go.
pub fn best_setup(
    question: &Question<'_>,
    gym: &Gym,
    method: Method,
    effort: f64,
    (table, watch): (&EccentricTable, &Watch),
) -> Result<SessionSetup> {
    let choosing = Choosing {
        gym,
        wish: Wish {
            effort,
            ..Wish::default()
        },
        allowed: AllowedPieces {
            only: vec![method.name().to_owned()],
            ..AllowedPieces::default()
        },
        top: CHOSEN_FROM,
    };
    let found = pick(question, &choosing, table, watch)?;
    let best = safest(&found);
    if best.loaded.hung == 0 {
        return Err(better_plain(question, found, method));
    }
    if let (LeftByBands::AboveMaximum, Some(failure)) = (left_by(best, &found), best.loaded.failure)
    {
        return Err(Error::no_answer(SchemeFault::TooMuchWhenBandsGo {
            left: failure.after_all,
            most: found.safety.one_rm + found.safety.body,
        }));
    }
    Ok(SessionSetup {
        setup: described(best, &found),
        hung: with_load(&pieces_of(&best.loaded.setup), best.loaded.loading.total),
    })
}

/// Ranked setups among which one that leaves no more than the 1RM is looked for.
const CHOSEN_FROM: usize = 40;

/// Of the ranked setups the best of those that leave least when their bands go: what can be finished, before what is nearly a
/// maximum, before more.
fn safest(found: &PickAnswer) -> &Picked {
    let best = &found.ranked[0];
    if best.loaded.hung == 0 {
        return best;
    }
    let hung = found.ranked.iter().chain(&found.answers);
    let hung = hung.filter(|picked| picked.loaded.hung > 0);
    hung.min_by_key(|picked| left_by(picked, found))
        .unwrap_or(best)
}

fn left_by(picked: &Picked, found: &PickAnswer) -> LeftByBands {
    found.safety.left_of(picked.loaded.failure.as_ref())
}

fn described(best: &Picked, found: &PickAnswer) -> AccommodatingSetup {
    AccommodatingSetup {
        hung: pieces_of(&best.loaded.setup).items,
        anchors: Some(found.anchors.clone()),
        bar_and_plates: best.loaded.loading.clone(),
        bottom: best.loaded.loads[0],
        middle: best.loaded.loads[1],
        top: best.loaded.loads[2],
        failure: best.loaded.failure,
        arms: found.safety.arms,
        max_effort: found.hardest(best),
        flattening_percent: Some(best.loaded.flattening_percent),
        plain: found.plain_mass(),
    }
}

/// Plain weight wins: with what would help this lift.
fn better_plain(question: &Question<'_>, found: PickAnswer, method: Method) -> Error {
    Error::no_answer(PickFault::PlainIsBetter {
        pieces: method.name().to_owned(),
        gym: found.gym_title,
        movement: question.movement_name.to_owned(),
        advice: found.advice,
    })
}

fn pieces_of(setup: &Setup) -> Setup {
    let pieces = setup
        .items
        .iter()
        .filter(|item| matches!(item, Item::Band(_) | Item::Chain(_)));
    Setup::new("", pieces.cloned().collect())
}

/// Named bands and chains with the plain load that makes their hardest place as hard as asked, rounded
/// down to what can be loaded.
///
/// **Fails** where the pieces alone are too much, or nothing light enough can be loaded.
pub fn named_setup(
    question: &Question<'_>,
    hung: Setup,
    loading: &Loadings,
    effort: f64,
    (gym, table): (Option<&Gym>, &EccentricTable),
) -> Result<SessionSetup> {
    let lift = SolvedLift::of(question)?;
    let safety = lift.safety(gym, table)?;
    let unit = lift.effort_unit(safety.one_rm)?;
    let exact = load_for_effort(question, &hung, effort * unit)?;
    let bar = beside(&hung, exact, effort, loading)?;
    let result = study(question, &[with_load(&hung, bar.total)])?;
    let found = &result.setups[0];
    let mass = |index: usize| Force::from_n(found.values[index]).as_mass();
    let plain = load_for_effort(question, &Setup::default(), effort * unit)?;
    let hung = with_load(&hung, bar.total);
    let felt_n = found.values.iter().copied().fold(0.0, f64::max);
    let felt = Force::from_n(felt_n).as_mass();
    if let Some(most) = safety
        .most_felt()
        .filter(|most| felt > *most && felt > bar.total + safety.body)
    {
        return Err(Error::no_answer(SchemeFault::FeltAboveOneRm { felt, most }));
    }
    let failure = lift.failure_of(&hung)?;
    let left = failure.filter(|failure| failure.grows);
    if let (Some(left), Some(most)) = (left, safety.most_left())
        && left.after_all > most
    {
        return Err(Error::no_answer(SchemeFault::TooMuchWhenBandsGo {
            left: left.after_all,
            most,
        }));
    }
    Ok(SessionSetup {
        setup: AccommodatingSetup {
            hung: pieces_of(&hung).items,
            anchors: None,
            bar_and_plates: bar,
            bottom: mass(0),
            middle: mass(found.values.len() / 2),
            failure,
            arms: safety.arms,
            top: mass(found.values.len() - 1),
            max_effort: found.sticking.map_or(0.0, |s| s.max_effort / unit),
            flattening_percent: found.flattening_percent,
            plain: loading.at_most(plain).ok().map(|plain| plain.total),
        },
        hung,
    })
}

/// The heaviest load beside the pieces that asks for no more than the effort.
///
/// **Fails** where the pieces leave too little, by their names.
fn beside(hung: &Setup, exact: Mass, effort: f64, loading: &Loadings) -> Result<Loading> {
    let (_, lightest_kg) = loading.lightest_beside(1);
    if lightest_kg.is_finite() && exact.as_kg() < lightest_kg {
        let name = |item: &Item| match item {
            Item::Band(hung) => Some(hung.band.name().to_owned()),
            Item::Chain(hung) => Some(hung.chain.name().to_owned()),
            _ => None,
        };
        return Err(Error::no_answer(SchemeFault::PiecesLeaveTooLittle {
            pieces: hung.items.iter().filter_map(name).collect(),
            effort,
            left: exact,
            lightest: Mass::from_kg(lightest_kg),
        }));
    }
    loading.at_most_beside_pieces(exact)
}
