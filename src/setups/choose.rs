//! What to hang: a gym laid over the costs of a lift, searched, the finalists settled exactly.
//!
//! In: [`Choosing`] (a gym, what may be used, a wish), the [`CostField`] of a lift, its exact effort. Out: a
//! [`Choice`], or the [`Missed`] setup that comes nearest where none fits.

use super::buildable::{AllowedPieces, Rack};
use super::combination::Combination;
use super::cost_field::CostField;
use super::exact::{Exact, ExactEffort, Settled};
use super::found::{FoundSetups, Merit};
use super::gym::Gym;
use super::judged::Gap;
use super::kernel::Kernel;
use super::left_out::LeftOut;
use super::loaded_setup::LoadedSetup;
use super::loadings::Loadings;
use super::safety_limits::SafetyLimits;
use super::search::{Watch, search};
use super::setup_family::{FAMILIES, SetupFamily};
use super::wish::{Goal, Wish};
use crate::error::{Error, Result, SearchFault};
use std::collections::BTreeSet;

/// Finalists of the search that are calculated exactly.
const FINALISTS: usize = 240;

/// Most non-dominated setups that are listed.
const MOST_OF_FRONT: usize = 12;

/// Most combinations that are searched: some minutes. Assumed.
const MOST_COMBINATIONS: u64 = 2_000_000_000;

/// What is chosen from, and by what.
#[derive(Debug)]
pub struct Choosing<'a> {
    /// What there is.
    pub gym: &'a Gym,
    /// What may be used of it.
    pub allowed: AllowedPieces,
    /// What is wished.
    pub wish: Wish,
    /// How many setups to list.
    pub top: usize,
}

/// How much was searched.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Counts {
    /// Combinations of bands and chains.
    pub combinations: u64,
    /// Plain loads that the gym makes.
    pub loads: u64,
    /// Combinations that were judged one by one; the rest was ruled out with what they begin with.
    pub judged: u64,
    /// Combinations that fit.
    pub fitting: u64,
}

impl Counts {
    /// Setups that the gym can build: every combination with every load.
    #[must_use]
    pub fn buildable(&self) -> u64 {
        self.combinations.saturating_mul(self.loads)
    }
}

/// What was chosen.
#[derive(Debug, Clone, PartialEq)]
pub struct Choice {
    /// Plain weight at the wished effort, whatever the limits of shares and loads say.
    pub plain: Option<LoadedSetup>,
    /// The best, in order.
    pub ranked: Vec<LoadedSetup>,
    /// The best of each family that differs from plain weight, plain weight first, then best first.
    pub answers: Vec<LoadedSetup>,
    /// The non-dominated ones, simplest first.
    pub front: Vec<LoadedSetup>,
    /// How many non-dominated ones there are.
    pub front_size: usize,
    /// How much was searched.
    pub counts: Counts,
    /// Pieces that were left out and why.
    pub left_out: Vec<LeftOut>,
    /// Best flattening by one pair of bands or chains that only adds load, %.
    pub best_added_percent: Option<f64>,
    /// Best flattening by one pair that takes load away, %.
    pub best_helping_percent: Option<f64>,
}

/// The setup that comes nearest where none fits.
#[derive(Debug, Clone, PartialEq)]
pub struct Missed {
    /// What it is.
    pub loaded: LoadedSetup,
    /// What it misses.
    pub gap: Gap,
}

/// Chooses setups of a gym for a lift.
///
/// # Algorithm
/// 1. The gym gives loads and hangings.
/// 2. The search judges every combination by the costs of the lift.
/// 3. Finalists, front and plain weight are calculated exactly, loads settled, and ranked again.
///
/// Where none fits the nearest miss comes back, if one was met.
///
/// **Fails** on a wish or words that make no sense, a gym without what the lift takes, and too large a search.
pub fn choose(
    choosing: &Choosing<'_>,
    field: &CostField,
    effort_under: &ExactEffort<'_>,
    safety: Option<&SafetyLimits>,
    watch: &Watch,
) -> Result<std::result::Result<Choice, Option<Missed>>> {
    let wish = choosing.wish.checked()?;
    let loadings = Loadings::with_help(choosing.gym, &field.carrier)?;
    let rack = Rack::of(
        choosing.gym,
        &field.carrier,
        &field.points,
        &choosing.allowed,
    )?;
    let combinations = counted(&rack, wish)?;
    let limits = (safety, choosing.allowed.both_ways);
    let kernel = Kernel::new(field, &rack, &loadings, wish, limits);
    let found = search(&kernel, FINALISTS.max(4 * choosing.top), watch)?;
    let exact = Exact {
        kernel: &kernel,
        effort_under,
    };
    let finalists = exact.settled(&found.finalists())?;
    if finalists.is_empty() {
        return Ok(Err(missed(&exact, &found)?));
    }
    let counts = Counts {
        combinations,
        loads: loadings.distinct() as u64,
        judged: found.judged,
        fitting: found.fitting,
    };
    chosen(&exact, &found, &finalists, choosing.top, counts).map(Ok)
}

/// The first finalists, the front and plain weight, each as a coach loads it.
fn chosen(
    exact: &Exact<'_>,
    found: &FoundSetups,
    finalists: &[Settled],
    top: usize,
    counts: Counts,
) -> Result<Choice> {
    let loaded = |settled| exact.loaded(settled);
    let front = front(exact, found)?;
    let plain = plain(exact)?;
    Ok(Choice {
        answers: answers(exact, found, plain.as_ref())?,
        plain,
        ranked: finalists.iter().take(top.max(1)).map(loaded).collect(),
        front_size: front.len(),
        front: thinned(&front).map(loaded).collect(),
        counts,
        best_added_percent: exact.kernel.best_of_one(false),
        best_helping_percent: exact.kernel.best_of_one(true),
        left_out: exact.kernel.rack.left_out.clone(),
    })
}

fn counted(rack: &Rack, wish: &Wish) -> Result<u64> {
    let combinations = rack.combinations(wish.most_hung.min(wish.most_pieces));
    combinations
        .filter(|many| *many <= MOST_COMBINATIONS)
        .ok_or_else(|| {
            Error::bad(SearchFault::TooManyWays {
                most_hung: wish.most_hung,
                most: MOST_COMBINATIONS,
            })
        })
}

fn missed(exact: &Exact<'_>, found: &FoundSetups) -> Result<Option<Missed>> {
    let Some(miss) = &found.miss else {
        return Ok(None);
    };
    let near = exact.as_loaded(miss.combination, miss.gap.loading as usize)?;
    Ok(Some(Missed {
        loaded: exact.loaded(&near),
        gap: miss.gap,
    }))
}

/// Flattening over plain weight from which a setup is another answer, %: less is lost in rounding.
const ANOTHER_PERCENT: f64 = 1.0;
/// Load at start, middle or end that makes another answer, kg.
const ANOTHER_KG: f64 = 0.5;

/// Plain weight, then the best of each family, best first.
fn answers(
    exact: &Exact<'_>,
    found: &FoundSetups,
    plain: Option<&LoadedSetup>,
) -> Result<Vec<LoadedSetup>> {
    let flattest = matches!(exact.kernel.wish.goal, Goal::Flattest);
    let mut others: Vec<LoadedSetup> = Vec::new();
    for family in FAMILIES.into_iter().filter(|f| *f != SetupFamily::Plain) {
        let settled = exact.settled(&found.of_family(family))?;
        others.extend(settled.first().map(|settled| exact.loaded(settled)));
    }
    others.retain(|one| !flattest || one.flattening_percent >= ANOTHER_PERCENT);
    if flattest {
        // Several kinds together are worth their pieces only where they do better than any one kind.
        let single = others.iter().filter(|one| one.family != SetupFamily::Mixed);
        let best = single.map(|one| one.flattening_percent).fold(0.0, f64::max);
        others.retain(|one| {
            one.family != SetupFamily::Mixed || one.flattening_percent >= best + ANOTHER_PERCENT
        });
    }
    others.sort_by(|a, b| a.score.total_cmp(&b.score).then(a.pieces.cmp(&b.pieces)));
    let mut answers: Vec<LoadedSetup> = plain.cloned().into_iter().collect();
    for one in others {
        if answers.iter().all(|known| differs(known, &one)) {
            answers.push(one);
        }
    }
    Ok(answers)
}

/// Whether two setups load a lift differently, rounding apart.
fn differs(one: &LoadedSetup, other: &LoadedSetup) -> bool {
    let mut pairs = one.loads.iter().zip(&other.loads);
    pairs.any(|(a, b)| (a.as_kg() - b.as_kg()).abs() >= ANOTHER_KG)
}

/// The non-dominated setups by their exact figures, simplest first.
fn front(exact: &Exact<'_>, found: &FoundSetups) -> Result<Vec<Settled>> {
    let candidates = found.front(exact.kernel.plain_spread());
    let mut best: Vec<(Merit, Settled)> = Vec::new();
    for settled in exact.settled(&candidates)? {
        let flattening = exact.flattening_percent(&settled);
        let own = Merit::of(flattening, exact.mean_kg(&settled), settled.pieces);
        if own.is_uneven() {
            continue;
        }
        if best.iter().all(|(other, _)| !other.dominates(&own)) {
            best.retain(|(other, _)| !own.dominates(other));
            best.push((own, settled));
        }
    }
    let mut front: Vec<Settled> = best.into_iter().map(|(_, settled)| settled).collect();
    front.sort_by(|a, b| a.pieces.cmp(&b.pieces).then(a.score.total_cmp(&b.score)));
    Ok(front)
}

/// At most so many, evenly over the list, the first and the last among them.
fn thinned(front: &[Settled]) -> impl Iterator<Item = &Settled> {
    let kept: BTreeSet<usize> = if front.len() <= MOST_OF_FRONT {
        (0..front.len()).collect()
    } else {
        (0..MOST_OF_FRONT)
            .map(|index| index * (front.len() - 1) / (MOST_OF_FRONT - 1))
            .collect()
    };
    kept.into_iter().map(|index| &front[index])
}

/// Plain weight at the wished effort, if the gym can load it.
fn plain(exact: &Exact<'_>) -> Result<Option<LoadedSetup>> {
    let kernel = exact.kernel;
    let loading = kernel
        .loadings
        .floor(kernel.most_plain_kg(), kernel.wish.most_pieces, 0);
    let settled = loading
        .map(|loading| exact.as_loaded(Combination::default(), loading))
        .transpose()?;
    Ok(settled.map(|settled| exact.loaded(&settled)))
}
