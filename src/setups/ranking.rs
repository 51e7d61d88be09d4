//! The search: every combination of bands and chains judged, the best and the non-dominated kept.
//!
//! In: a kernel and a rack. Out: [`Found`]: finalists in order, the front of flattening against pieces
//! against load, the nearest miss. Combinations are walked depth first, hangings in rising order, so that
//! each is met once; the order of (score, combination) makes the answer the same on any number of threads.

use super::buildable::Rack;
use super::score::{Gap, Judged, Kernel, LANES, Limit};
use super::sums::Sums;
use super::wish::{MOST_HUNG, Wish};
use crate::error::{Error, Result};
use rayon::prelude::{IntoParallelRefIterator, ParallelIterator};
use std::cmp::Ordering;
use std::collections::BinaryHeap;
use std::sync::atomic::{AtomicBool, AtomicU64, Ordering::Relaxed};

/// Hangings in rising order; one may stand several times.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Default)]
pub struct Combination {
    hangings: [u16; MOST_HUNG as usize],
    length: u8,
}

impl Combination {
    /// The hangings.
    #[must_use]
    pub fn hangings(&self) -> &[u16] {
        &self.hangings[..usize::from(self.length)]
    }

    fn with(mut self, hanging: usize) -> Self {
        self.hangings[usize::from(self.length)] = hanging as u16;
        self.length += 1;
        self
    }
}

/// A combination with its figures.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Candidate {
    /// What is hung.
    pub combination: Combination,
    /// How it does.
    pub judged: Judged,
}

impl Eq for Candidate {}

impl Ord for Candidate {
    fn cmp(&self, other: &Self) -> Ordering {
        let score = self.judged.score.total_cmp(&other.judged.score);
        let pieces = || self.judged.pieces.cmp(&other.judged.pieces);
        score
            .then_with(pieces)
            .then_with(|| self.combination.cmp(&other.combination))
    }
}

impl PartialOrd for Candidate {
    fn partial_cmp(&self, other: &Self) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}

/// The combination that came nearest to the limits.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Miss {
    /// What is hung.
    pub combination: Combination,
    /// What it misses.
    pub gap: Gap,
}

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

/// What a search found.
#[derive(Debug, Clone, Default)]
pub struct Found {
    best: BinaryHeap<Candidate>,
    front: Front,
    /// The nearest miss among those that do not fit.
    pub miss: Option<Miss>,
    /// Combinations that were judged one by one.
    pub judged: u64,
    /// Combinations that fit.
    pub fitting: u64,
}

impl Found {
    /// The best, in order.
    #[must_use]
    pub fn finalists(&self) -> Vec<Candidate> {
        self.best.clone().into_sorted_vec()
    }

    /// The non-dominated ones, simplest first.
    #[must_use]
    pub fn front(&self, plain_spread: f64) -> Vec<Candidate> {
        self.front.skyline(plain_spread)
    }

    fn add(&mut self, candidate: Candidate, keep: usize) {
        self.fitting += 1;
        self.front.add(candidate);
        self.keep(candidate, keep);
    }

    fn keep(&mut self, candidate: Candidate, keep: usize) {
        if self.best.len() < keep {
            self.best.push(candidate);
        } else if let Some(mut worst) = self.best.peek_mut()
            && candidate < *worst
        {
            *worst = candidate;
        }
    }

    fn miss(&mut self, miss: Miss) {
        let key = |miss: &Miss| (miss.gap.size, miss.combination);
        let is_nearer = self.miss.as_ref().is_none_or(|known| {
            let (new, old) = (key(&miss), key(known));
            new.0.total_cmp(&old.0).then(new.1.cmp(&old.1)).is_lt()
        });
        if is_nearer {
            self.miss = Some(miss);
        }
    }

    fn joined(mut self, other: Self, keep: usize) -> Self {
        for candidate in other.best {
            self.keep(candidate, keep);
        }
        self.front.join(other.front);
        if let Some(miss) = other.miss {
            self.miss(miss);
        }
        self.judged += other.judged;
        self.fitting += other.fitting;
        self
    }
}

/// The evenest combination for each number of pieces and each kilogram of mean load.
#[derive(Debug, Clone, Default)]
struct Front {
    by_pieces: Vec<Vec<Option<Candidate>>>,
}

/// Kilograms of mean load in one cell of the front: finer differences are no reason to choose.
const CELL_KG: f64 = 1.0;

impl Front {
    fn add(&mut self, candidate: Candidate) {
        let row = candidate.judged.pieces as usize;
        let cell = (candidate.judged.mean_kg / CELL_KG).max(0.0) as usize;
        if self.by_pieces.len() <= row {
            self.by_pieces.resize(row + 1, Vec::new());
        }
        let cells = &mut self.by_pieces[row];
        if cells.len() <= cell {
            cells.resize(cell + 1, None);
        }
        let key = |c: &Candidate| (c.judged.spread, c.combination);
        let is_evener = cells[cell].as_ref().is_none_or(|known| {
            let (new, old) = (key(&candidate), key(known));
            new.0.total_cmp(&old.0).then(new.1.cmp(&old.1)).is_lt()
        });
        if is_evener {
            cells[cell] = Some(candidate);
        }
    }

    fn join(&mut self, other: Self) {
        for candidate in other.by_pieces.into_iter().flatten().flatten() {
            self.add(candidate);
        }
    }

    fn skyline(&self, plain_spread: f64) -> Vec<Candidate> {
        let all = self.by_pieces.iter().flatten().flatten();
        let mut best: Vec<(Merit, Candidate)> = Vec::new();
        for candidate in all {
            let judged = &candidate.judged;
            let flattening = 100.0 * (1.0 - judged.spread / plain_spread);
            let merit = Merit::of(flattening, judged.mean_kg, judged.pieces);
            if merit.is_uneven() {
                continue;
            }
            if best.iter().all(|(other, _)| !other.dominates(&merit)) {
                best.retain(|(other, _)| !merit.dominates(other));
                best.push((merit, *candidate));
            }
        }
        best.into_iter().map(|(_, candidate)| candidate).collect()
    }
}

/// What setups are weighed by, in steps that matter: whole percent, whole kilograms, pieces.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Merit {
    flattening: i64,
    kg: i64,
    pieces: u32,
}

impl Merit {
    /// The merit of a setup: flattening in %, mean load over the range in kg, pieces a side.
    #[must_use]
    pub fn of(flattening_percent: f64, mean_kg: f64, pieces: u32) -> Self {
        Self {
            flattening: flattening_percent.clamp(-1.0e6, 1.0e6).round() as i64,
            kg: (mean_kg / CELL_KG).max(0.0) as i64,
            pieces,
        }
    }

    /// Whether it is less even than plain weight: no reason to choose it.
    #[must_use]
    pub fn is_uneven(&self) -> bool {
        self.flattening < 0
    }

    /// Whether this one is at least as even, as heavy and as simple as the other; of two alike the first
    /// one stays.
    #[must_use]
    pub fn dominates(&self, other: &Self) -> bool {
        self.flattening >= other.flattening && self.kg >= other.kg && self.pieces <= other.pieces
    }
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
pub fn search(
    kernel: &Kernel,
    rack: &Rack,
    wish: &Wish,
    keep: usize,
    watch: &Watch,
) -> Result<Found> {
    let walk = Walk::new(kernel, rack, wish, keep);
    let parts = walk.parts();
    watch.all.store(parts.len() as u64, Relaxed);
    let found = parts
        .par_iter()
        .fold(Found::default, |mut found, part| {
            if !watch.stop.load(Relaxed) {
                walk.part(part, &mut found);
                watch.done.fetch_add(1, Relaxed);
            }
            found
        })
        .reduce(Found::default, |a, b| a.joined(b, keep));
    if watch.stop.load(Relaxed) {
        return Err(Error::no_answer("the search was stopped before its end")
            .hint("fewer pieces make it shorter: --hung 3, or --only with what you want to use"));
    }
    Ok(found)
}

/// A part of the search: hangings to begin with, and whether more may follow.
struct Part {
    begin: Vec<usize>,
    goes_on: bool,
}

struct Walk<'a> {
    kernel: &'a Kernel<'a>,
    rack: &'a Rack,
    most_hung: usize,
    keep: usize,
    /// From this hanging on none helps.
    only_load: usize,
}

/// Where the walk stands.
struct Standing {
    used: Vec<u32>,
    rooms: Vec<Vec<f64>>,
}

impl<'a> Walk<'a> {
    fn new(kernel: &'a Kernel<'a>, rack: &'a Rack, wish: &Wish, keep: usize) -> Self {
        let helps = |takes: &Vec<f64>| takes.iter().any(|kg| *kg < 0.0);
        Self {
            kernel,
            rack,
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
    fn parts(&self) -> Vec<Part> {
        let many = self.rack.hangings.len();
        let mut parts = vec![Part {
            begin: Vec::new(),
            goes_on: false,
        }];
        if self.most_hung >= 1 {
            parts.extend((0..many).map(|first| Part {
                begin: vec![first],
                goes_on: false,
            }));
        }
        if self.most_hung >= 2 {
            let pairs =
                (0..many).flat_map(|first| (first..many).map(move |second| vec![first, second]));
            parts.extend(pairs.map(|begin| Part {
                begin,
                goes_on: true,
            }));
        }
        parts
    }

    fn part(&self, part: &Part, found: &mut Found) {
        let mut standing = Standing {
            used: vec![0; self.rack.pairs.len()],
            rooms: vec![self.kernel.room.clone(); self.most_hung + 1],
        };
        let (mut combination, mut sums) = (Combination::default(), self.kernel.start);
        let mut least_kg = least(&self.kernel.room);
        for (depth, hanging) in part.begin.iter().enumerate() {
            let kind = self.rack.hangings[*hanging].kind;
            if standing.used[kind] == self.rack.pairs[kind] {
                return;
            }
            standing.used[kind] += 1;
            let product = self.kernel.product(combination.hangings(), *hanging);
            sums = sums.with(&self.kernel.pieces[*hanging], product);
            combination = combination.with(*hanging);
            let (before, after) = standing.rooms.split_at_mut(depth + 1);
            least_kg = lowered(&before[depth], &self.kernel.takes[*hanging], &mut after[0]);
        }
        let from = part.begin.last().copied().unwrap_or(0);
        let is_open = self.judge(combination, least_kg, &sums, from, found);
        if part.goes_on && is_open && combination.hangings().len() < self.most_hung {
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
        found: &mut Found,
    ) -> bool {
        found.judged += 1;
        match self
            .kernel
            .judge(least_kg, sums, u32::from(combination.length))
        {
            Ok(judged) => {
                found.add(
                    Candidate {
                        combination,
                        judged,
                    },
                    self.keep,
                );
                true
            }
            Err(gap) => {
                found.miss(Miss { combination, gap });
                gap.limit != Limit::LightestLoad || from < self.only_load
            }
        }
    }

    fn deeper(
        &self,
        combination: Combination,
        sums: &Sums,
        from: usize,
        standing: &mut Standing,
        found: &mut Found,
    ) {
        let depth = combination.hangings().len();
        let is_last = depth + 1 == self.most_hung;
        for hanging in from..self.rack.hangings.len() {
            let kind = self.rack.hangings[hanging].kind;
            if standing.used[kind] == self.rack.pairs[kind] {
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
