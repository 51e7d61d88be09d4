//! Which setup that a gym can build loads this lift best.
//!
//! In: a question, a gym, a wish. Out: [`PickAnswer`]: ranked setups, the non-dominated ones, what was searched
//! and left out, why the first wins; or why none fits, with the nearest miss.

use super::advice::advice;
use super::exact::{Exact, Settled};
use super::near_miss::none_fits;
use super::pick_answer::{Counts, PickAnswer, PickQuestion, Picked};
use super::solve::SolvedLift;
use crate::error::{Error, Result};
use crate::setups::{
    Candidate, Combination, Found, Kernel, Loadings, Merit, Rack, Watch, Wish, search,
};
use rayon::prelude::{IntoParallelRefIterator, ParallelIterator};
use std::collections::BTreeSet;

/// Finalists of the search that are calculated exactly.
const FINALISTS: usize = 240;

/// Most non-dominated setups that are listed.
const MOST_OF_FRONT: usize = 12;

/// Searches a gym.
///
/// # Algorithm
/// 1. Movement and lifter give capacity, and with it what one newton costs at each place.
/// 2. The gym gives loads and hangings.
/// 3. The search judges every combination.
/// 4. The finalists and the front are calculated exactly, loads settled, and ranked again.
///
/// **Fails** where no setup fits, with the nearest miss and what would make it fit.
pub fn pick(request: &PickQuestion<'_>, watch: &Watch) -> Result<PickAnswer> {
    let wish = request.wish.clone().checked()?;
    let ground = SolvedLift::of(request.question)?;
    let field = ground.field()?;
    let loadings = Loadings::of(request.gym, &field.carrier)?;
    let rack = Rack::of(request.gym, &field.carrier, &field.points, &request.allowed)?;
    let combinations = counted(&rack, &wish)?;
    let kernel = Kernel::new(&field, &rack, &loadings, &wish);
    let found = search(&kernel, &rack, &wish, FINALISTS.max(4 * request.top), watch)?;
    let plain_force = field.one_kilogram(loadings.rail_friction());
    let exact = Exact {
        ground: &ground,
        rack: &rack,
        loadings: &loadings,
        wish: &wish,
        kernel: &kernel,
        plain: &plain_force,
        body: field.body,
    };
    let finalists = settled(&exact, &found.finalists())?;
    if finalists.is_empty() {
        return Err(none_fits(&exact, request, &found)?);
    }
    let ranked = picked(
        &exact,
        &finalists[..finalists.len().min(request.top.max(1))],
    )?;
    let (front, front_size) = front(&exact, &kernel, &found)?;
    let plain = plain(&exact, &kernel)?;
    let counts = Counts {
        combinations,
        loads: loadings.distinct() as u64,
        judged: found.judged,
        fitting: found.fitting,
    };
    let advice = advice(&ground, &field, &rack, &kernel, &ranked[0])?;
    let shown = plain
        .iter()
        .chain(&ranked)
        .map(|p| p.study.clone())
        .collect();
    let study = ground.into_study(shown);
    Ok(PickAnswer {
        advice,
        study,
        wish,
        gym_title: request.gym.title.clone(),
        gym_is_invented: request.gym.invented,
        plain,
        ranked,
        front,
        front_size,
        counts,
        catch: request.question.movement.handling.catch,
        anchors: request.gym.anchors.clone(),
        left_out: rack.left_out.clone(),
    })
}

/// Most combinations that are searched: some minutes. Assumed.
const MOST_COMBINATIONS: u64 = 2_000_000_000;

fn counted(rack: &Rack, wish: &Wish) -> Result<u64> {
    let combinations = rack.combinations(wish.most_hung.min(wish.most_pieces));
    combinations.filter(|many| *many <= MOST_COMBINATIONS).ok_or_else(|| {
        Error::bad(format!(
            "this gym can combine up to {} bands and chains a side in more than {} thousand million ways",
            wish.most_hung,
            MOST_COMBINATIONS / 1_000_000_000
        ))
        .hint("allow fewer, --hung 3, or name what may be used, --only bands")
    })
}

/// The candidates with their loads settled exactly, in order; those that miss a limit fall out.
fn settled(exact: &Exact<'_>, candidates: &[Candidate]) -> Result<Vec<Settled>> {
    let all = candidates
        .par_iter()
        .map(|candidate| exact.settled(candidate))
        .collect::<Result<Vec<_>>>()?;
    let mut settled: Vec<Settled> = all.into_iter().flatten().collect();
    settled.sort_by(|a, b| {
        let score = a.score.total_cmp(&b.score);
        score
            .then(a.pieces.cmp(&b.pieces))
            .then(a.combination.cmp(&b.combination))
    });
    Ok(settled)
}

fn picked(exact: &Exact<'_>, settled: &[Settled]) -> Result<Vec<Picked>> {
    settled
        .par_iter()
        .map(|settled| exact.picked(settled))
        .collect()
}

/// The non-dominated setups by their exact figures, simplest first, and how many there were.
fn front(exact: &Exact<'_>, kernel: &Kernel<'_>, found: &Found) -> Result<(Vec<Picked>, usize)> {
    let candidates = found.front(kernel.plain_spread());
    let all = picked(exact, &settled(exact, &candidates)?)?;
    let merit = |p: &Picked| Merit::of(p.flattening_percent, p.mean_load.as_kg(), p.pieces);
    let mut best: Vec<(Merit, Picked)> = Vec::new();
    for setup in all {
        let own = merit(&setup);
        if own.is_uneven() {
            continue;
        }
        if best.iter().all(|(other, _)| !other.dominates(&own)) {
            best.retain(|(other, _)| !own.dominates(other));
            best.push((own, setup));
        }
    }
    let mut front: Vec<Picked> = best.into_iter().map(|(_, setup)| setup).collect();
    front.sort_by(|a, b| a.pieces.cmp(&b.pieces).then(a.score.total_cmp(&b.score)));
    let size = front.len();
    Ok((thinned(front), size))
}

/// At most so many, evenly over the list, the first and the last among them.
fn thinned(front: Vec<Picked>) -> Vec<Picked> {
    let size = front.len();
    if size <= MOST_OF_FRONT {
        return front;
    }
    let kept: BTreeSet<usize> = (0..MOST_OF_FRONT)
        .map(|index| index * (size - 1) / (MOST_OF_FRONT - 1))
        .collect();
    let numbered = front.into_iter().enumerate();
    numbered
        .filter(|(index, _)| kept.contains(index))
        .map(|(_, setup)| setup)
        .collect()
}

/// Plain weight at the wished effort, whatever the limits of shares and loads say.
fn plain(exact: &Exact<'_>, kernel: &Kernel<'_>) -> Result<Option<Picked>> {
    let Some(loading) = exact
        .loadings
        .floor(kernel.most_plain_kg(), exact.wish.most_pieces)
    else {
        return Ok(None);
    };
    let settled = exact.as_loaded(Combination::default(), loading)?;
    exact.picked(&settled).map(Some)
}
