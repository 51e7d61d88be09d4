//! The search: every combination of bands and chains judged.
//!
//! In: a kernel. Out: [`FoundSetups`]. Combinations are walked depth first, hangings in rising order, so
//! that each is met once; the order of (score, combination) makes the answer the same on any number of
//! threads.

use super::combination::Combination;
use super::found::FoundSetups;
use super::judged::{Candidate, Miss};
use super::kernel::{Kernel, LANES};
use super::sums::Sums;
use crate::error::{Error, Result, SearchFault};
use rayon::prelude::{IntoParallelRefIterator, ParallelIterator};
use std::sync::atomic::{AtomicBool, AtomicU64, Ordering::Relaxed};

/// How far a search is, and whether it shall stop.
#[derive(Debug, Default)]
pub struct Watch {
    /// Parts done.
    pub done: AtomicU64,
    /// Parts of the whole search; 0 before it begins.
    pub all: AtomicU64,
    /// Set from outside to stop the search.
    pub stop: AtomicBool,
}

/// Searches every combination.
///
/// # Algorithm
/// 1. Combinations are split by their first two hangings; the parts run on all threads.
/// 2. Adding a hanging lowers the room for plain load at every place; the least room is the exact bar
///    load of the wished effort, which is rounded down to what can be loaded.
/// 3. Sums give spread and score without another pass over the range.
/// 4. Where not even the lightest load fits and every further hanging only adds load, the rest of the
///    branch cannot fit either and is passed over.
///
/// **Fails** when it is stopped from outside.
pub fn search(kernel: &Kernel, keep: usize, watch: &Watch) -> Result<FoundSetups> {
    let walk = Walk::new(kernel, keep);
    let branches = walk.branches();
    watch.all.store(branches.len() as u64, Relaxed);
    let found = branches
        .par_iter()
        .fold(FoundSetups::default, |mut found, branch| {
            if !watch.stop.load(Relaxed) {
                walk.branch(branch, &mut found);
                watch.done.fetch_add(1, Relaxed);
            }
            found
        })
        .reduce(FoundSetups::default, |a, b| a.joined(b, keep));
    if watch.stop.load(Relaxed) {
        return Err(Error::no_answer(SearchFault::Stopped));
    }
    Ok(found)
}

/// A part of the search: hangings to begin with, and whether more may follow.
struct Branch {
    begin: Vec<usize>,
    goes_on: bool,
}

struct Walk<'a> {
    kernel: &'a Kernel<'a>,
    most_hung: usize,
    keep: usize,
    /// From this hanging on none helps.
    only_load: usize,
}

/// Where the walk stands.
struct WalkStanding {
    used: Vec<u32>,
    rooms: Vec<Vec<f64>>,
}

impl<'a> Walk<'a> {
    fn new(kernel: &'a Kernel<'a>, keep: usize) -> Self {
        let wish = kernel.wish;
        let helps = |takes: &Vec<f64>| takes.iter().any(|kg| *kg < 0.0);
        Self {
            kernel,
            most_hung: wish.most_hung.min(wish.most_pieces) as usize,
            keep,
            only_load: kernel
                .takes
                .iter()
                .rposition(helps)
                .map_or(0, |last| last + 1),
        }
    }

    /// The empty combination, every single hanging, every pair with what follows it.
    fn branches(&self) -> Vec<Branch> {
        let many = self.kernel.rack.hangings.len();
        let mut branches = vec![Branch {
            begin: Vec::new(),
            goes_on: false,
        }];
        if self.most_hung >= 1 {
            branches.extend((0..many).map(|first| Branch {
                begin: vec![first],
                goes_on: false,
            }));
        }
        if self.most_hung >= 2 {
            let pairs =
                (0..many).flat_map(|first| (first..many).map(move |second| vec![first, second]));
            branches.extend(pairs.map(|begin| Branch {
                begin,
                goes_on: true,
            }));
        }
        branches
    }

    fn branch(&self, branch: &Branch, found: &mut FoundSetups) {
        let mut standing = WalkStanding {
            used: vec![0; self.kernel.rack.pairs.len()],
            rooms: vec![self.kernel.room.clone(); self.most_hung + 1],
        };
        let (mut combination, mut sums) = (Combination::default(), self.kernel.start);
        let mut least_kg = least(&self.kernel.room);
        for (depth, hanging) in branch.begin.iter().enumerate() {
            let kind = self.kernel.rack.hangings[*hanging].kind;
            if standing.used[kind] == self.kernel.rack.pairs[kind] {
                return;
            }
            standing.used[kind] += 1;
            let product = self.kernel.product(combination.hangings(), *hanging);
            sums = sums.with(&self.kernel.pieces[*hanging], product);
            combination = combination.with(*hanging);
            let (before, after) = standing.rooms.split_at_mut(depth + 1);
            least_kg = lowered(&before[depth], &self.kernel.takes[*hanging], &mut after[0]);
        }
        let from = branch.begin.last().copied().unwrap_or(0);
        let is_open = self.judge(combination, least_kg, &sums, from, found);
        if branch.goes_on && is_open && combination.hangings().len() < self.most_hung {
            self.deeper(combination, &sums, from, &mut standing, found);
        }
    }

    /// Judges one combination; tells whether adding hangings may make sense.
    fn judge(
        &self,
        combination: Combination,
        least_kg: f64,
        sums: &Sums,
        from: usize,
        found: &mut FoundSetups,
    ) -> bool {
        found.judged += 1;
        match self
            .kernel
            .judge(least_kg, sums, combination.hangings().len() as u32)
        {
            Ok(judged) => {
                found.add(
                    Candidate {
                        combination,
                        judged,
                    },
                    self.kernel.family(&combination),
                    self.keep,
                );
                true
            }
            Err(gap) => {
                found.miss(Miss { combination, gap });
                !gap.too_heavy || from < self.only_load
            }
        }
    }

    fn deeper(
        &self,
        combination: Combination,
        sums: &Sums,
        from: usize,
        standing: &mut WalkStanding,
        found: &mut FoundSetups,
    ) {
        let depth = combination.hangings().len();
        let is_last = depth + 1 == self.most_hung;
        for hanging in from..self.kernel.rack.hangings.len() {
            let kind = self.kernel.rack.hangings[hanging].kind;
            if standing.used[kind] == self.kernel.rack.pairs[kind] {
                continue;
            }
            let takes = &self.kernel.takes[hanging];
            let product = self.kernel.product(combination.hangings(), hanging);
            let more = sums.with(&self.kernel.pieces[hanging], product);
            let next = combination.with(hanging);
            if is_last {
                let least_kg = least_difference(&standing.rooms[depth], takes);
                self.judge(next, least_kg, &more, hanging, found);
                continue;
            }
            let (before, after) = standing.rooms.split_at_mut(depth + 1);
            let least_kg = lowered(&before[depth], takes, &mut after[0]);
            if self.judge(next, least_kg, &more, hanging, found) {
                standing.used[kind] += 1;
                self.deeper(next, &more, hanging, standing, found);
                standing.used[kind] -= 1;
            }
        }
    }
}

/// The least of a padded list.
fn least(room: &[f64]) -> f64 {
    room.iter().copied().fold(f64::INFINITY, f64::min)
}

/// The least of room − takes.
fn least_difference(room: &[f64], takes: &[f64]) -> f64 {
    let mut least = [f64::INFINITY; LANES];
    for (room, takes) in room.chunks_exact(LANES).zip(takes.chunks_exact(LANES)) {
        for lane in 0..LANES {
            let left = room[lane] - takes[lane];
            least[lane] = if left < least[lane] {
                left
            } else {
                least[lane]
            };
        }
    }
    least.into_iter().fold(f64::INFINITY, f64::min)
}

/// Writes room − takes and gives its least.
fn lowered(room: &[f64], takes: &[f64], into: &mut [f64]) -> f64 {
    let mut least = [f64::INFINITY; LANES];
    let rows = room.chunks_exact(LANES).zip(takes.chunks_exact(LANES));
    for ((room, takes), into) in rows.zip(into.chunks_exact_mut(LANES)) {
        for lane in 0..LANES {
            let left = room[lane] - takes[lane];
            into[lane] = left;
            least[lane] = if left < least[lane] {
                left
            } else {
                least[lane]
            };
        }
    }
    least.into_iter().fold(f64::INFINITY, f64::min)
}
