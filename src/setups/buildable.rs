//! Every way in which a gym can hang one pair of bands or chains, and how many combinations follow.
//!
//! In: a gym, the movement's load points, what may be used. Out: [`Hanging`]s, each with the force of one
//! pair over the range, and what was left out and why. A combination takes up to so many pairs, of each
//! kind no more than the gym owns, in any of its hangings.

use super::gym::Gym;
use super::left_out::{LeftOut, LeftOutList, LeftOutReason, WayOfHanging};
use crate::error::{Error, Result, SearchFault};
use crate::movement::{Carrier, LoadPoint, PlaneForce};
use crate::resistance::{
    Anchor, Band, Chain, ChainHang, Hang, HungBand, HungChain, Item, Motion, Setup, unfit,
};
use std::collections::BTreeMap;

/// How far a band on a bar in free hands may pull from plumb, degrees. Assumed: a bar that is drawn
/// forward or back much more than this is hard to steer; `askew` lifts the limit.
pub const MOST_LEAN_DEG: f64 = 15.0;

/// Least pull of a band at its shortest, N: what is slacker slides off a sleeve. Assumed: the weight of half a kilogram,
/// which draws a loop of some hundred grams tight.
pub const LEAST_PULL_N: f64 = 5.0;

/// The word for all bands.
const BANDS: &str = "bands";

/// The word for all chains.
const CHAINS: &str = "chains";

/// Most hangings that are searched; more make combinations without end. Assumed.
const MOST_HANGINGS: usize = 1000;

/// One pair of a kind of band or chain, hung in one way.
#[derive(Debug, Clone, PartialEq)]
pub struct Hanging {
    /// The pair as an item of a setup, one a side.
    pub item: Item,
    /// Number of its kind: hangings of one kind share the gym's pieces.
    pub kind: usize,
    /// Force of the pair on the lifter at each load point, N, held still.
    pub force: Vec<PlaneForce>,
    /// Whether it takes load away somewhere.
    pub helps: bool,
}

/// What may be hung.
#[derive(Debug, Clone, PartialEq)]
pub struct Rack {
    /// Every hanging; those that help come first.
    pub hangings: Vec<Hanging>,
    /// Pairs of each kind.
    pub pairs: Vec<u32>,
    /// What was left out and why.
    pub left_out: Vec<LeftOut>,
}

/// Which pieces are allowed.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct AllowedPieces {
    /// Words: `bands`, `chains`, `plain`, or names of pieces; empty allows all.
    pub only: Vec<String>,
    /// Whether a free bar may be pulled far from plumb.
    pub askew: bool,
    /// Whether pieces that help and pieces that add load may hang at once.
    pub both_ways: bool,
    /// Whether nothing may hang from above: what is lifted stands under no rack.
    pub none_above: bool,
}

impl AllowedPieces {
    fn takes(&self, group: &str, name: &str) -> bool {
        self.only.is_empty() || self.only.iter().any(|word| word == group || word == name)
    }

    /// **Fails** on a word that names neither a group nor a piece of the gym.
    fn check(&self, gym: &Gym) -> Result<()> {
        let bands = gym.bands.iter().map(|(band, _)| band.name());
        let chains = gym.chains.iter().filter_map(|(c, _)| c.first());
        let groups = [
            (BANDS, gym.bands.is_empty()),
            (CHAINS, gym.chains.is_empty()),
            ("plain", false),
        ];
        let owned = groups.iter().filter(|(_, is_lacking)| !is_lacking);
        let known: Vec<&str> = owned
            .map(|(group, _)| *group)
            .chain(bands)
            .chain(chains.map(Chain::name))
            .collect();
        let is_lacking = |word: &String| {
            let mut lacking = groups.iter().filter(|(_, is_lacking)| *is_lacking);
            lacking.any(|(kind, _)| kind == word)
        };
        let all_lacking = self.only.iter().all(is_lacking);
        if let Some(kind) = self.only.first().filter(|_| all_lacking) {
            return Err(Error::no_answer(SearchFault::NoneOfKind {
                kind: kind.clone(),
                gym: gym.title.clone(),
            }));
        }
        let is_group = |word: &str| groups.iter().any(|(group, _)| *group == word);
        let unknown = |word: &&String| !is_group(word) && !known.contains(&word.as_str());
        match self.only.iter().find(unknown) {
            None => Ok(()),
            Some(word) => Err(Error::bad(SearchFault::NothingCalled {
                word: word.clone(),
                gym: gym.title.clone(),
                known: known.into_iter().map(str::to_owned).collect(),
            })),
        }
    }
}

impl Rack {
    /// Every hanging of a gym over a movement's load points.
    ///
    /// Left out, with the reason: a band stretched beyond its safe length, one that stays slack, one that
    /// pulls a free bar far from plumb, a chain that lies on the floor or hangs free over the whole range,
    /// pieces without a second one.
    ///
    /// **Fails** on an unknown word of `allowed`, and when there are more hangings than can be searched.
    pub fn of(
        gym: &Gym,
        carrier: &Carrier,
        points: &[LoadPoint],
        allowed: &AllowedPieces,
    ) -> Result<Self> {
        allowed.check(gym)?;
        let mut gathered = Gathered {
            carrier,
            points,
            askew: allowed.askew,
            none_above: allowed.none_above,
            hangings: Vec::new(),
            pairs: Vec::new(),
            left_out: LeftOutList::default(),
        };
        let bands = gym.bands.iter();
        for (band, count) in bands.filter(|(band, _)| allowed.takes(BANDS, band.name())) {
            gathered.left_out.bands.push(band.name().to_owned());
            gathered.band(band, *count, &gym.anchors);
        }
        for (chains, count) in &gym.chains {
            let Some(chain) = chains.first() else {
                continue;
            };
            if allowed.takes(CHAINS, chain.name()) {
                gathered.left_out.chains.push(chain.name().to_owned());
                gathered.chain(chains, *count);
            }
        }
        gathered.finished()
    }

    /// How many combinations of up to `most` pairs there are, none at all included; `None` beyond 10¹⁵.
    ///
    /// ```text
    /// Σ_{j ≤ most} [t^j] Π_kinds Σ_{i ≤ pairs} C(m + i − 1, i) t^i          m = hangings of the kind
    /// ```
    #[must_use]
    pub fn combinations(&self, most: u32) -> Option<u64> {
        let mut ways = vec![0.0_f64; most as usize + 1];
        ways[0] = 1.0;
        for (kind, pairs) in self.pairs.iter().enumerate() {
            let hangings = self
                .hangings
                .iter()
                .filter(|hanging| hanging.kind == kind)
                .count() as f64;
            let mut next = vec![0.0; ways.len()];
            let mut multisets = 1.0;
            for taken in 0..=(*pairs as usize).min(most as usize) {
                if taken > 0 {
                    multisets *= (hangings + taken as f64 - 1.0) / taken as f64;
                }
                for (have, number) in ways.iter().enumerate().take(ways.len() - taken) {
                    next[have + taken] += number * multisets;
                }
            }
            ways = next;
        }
        let total: f64 = ways.iter().sum();
        (total < 1.0e15).then(|| total.round() as u64)
    }
}

/// A band over the range.
#[derive(Clone, Copy)]
struct BandOnTheWay {
    longest_stretch: f64,
    least_pull_n: f64,
}

/// A rack being gathered.
struct Gathered<'a> {
    carrier: &'a Carrier,
    points: &'a [LoadPoint],
    askew: bool,
    none_above: bool,
    hangings: Vec<Hanging>,
    pairs: Vec<u32>,
    left_out: LeftOutList,
}

impl Gathered<'_> {
    fn band(&mut self, band: &Band, count: u32, anchors: &BTreeMap<String, Anchor>) {
        if !takes_bands(self.carrier) {
            let reason = LeftOutReason::NoPlaceForBands;
            self.left_out.add(reason, None, band.name());
            return;
        }
        let Some(kind) = self.kind(band.name(), count) else {
            return;
        };
        for (name, anchor) in anchors {
            for hang in [Hang::Single, Hang::Choked, Hang::Doubled] {
                let mut hung = HungBand::from_floor(band.clone(), 1);
                (hung.anchor, hung.hang) = (*anchor, hang);
                let lengths = self.lengths(&hung);
                let item = Item::Band(hung);
                let force = self.force_of(&item);
                match self.useless_band(band, lengths, &force) {
                    None => self.add(item, kind, force),
                    Some(reason) => {
                        let anchor = name.clone();
                        let way = Some(WayOfHanging::Band { hang, anchor });
                        self.left_out.add(reason, way, band.name());
                    }
                }
            }
        }
    }

    /// Largest length over rest length on the way, and the least pull of one band.
    fn lengths(&self, hung: &HungBand) -> BandOnTheWay {
        let start_x_m = self.points.first().map(|point| point.x_m);
        let stretch_at = |point| hung.stretch(point, start_x_m);
        let pull_at = |point| {
            let distance_m = hung.distance_m(point, start_x_m);
            hung.band.force_n(distance_m, hung.hang)
        };
        BandOnTheWay {
            longest_stretch: self.points.iter().map(stretch_at).fold(0.0, f64::max),
            least_pull_n: self
                .points
                .iter()
                .map(pull_at)
                .fold(f64::INFINITY, f64::min),
        }
    }

    fn useless_band(
        &self,
        band: &Band,
        way: BandOnTheWay,
        force: &[PlaneForce],
    ) -> Option<LeftOutReason> {
        let holds_on = matches!(self.carrier, Carrier::Bar | Carrier::Dumbbell);
        if way.longest_stretch > band.safe_stretch() {
            Some(LeftOutReason::Overstretched)
        } else if way.longest_stretch <= 1.0 {
            Some(LeftOutReason::StaysSlack)
        } else if holds_on && way.least_pull_n < LEAST_PULL_N {
            Some(LeftOutReason::GoesSlack)
        } else if (self.none_above || !hangs_from_above(self.carrier)) && self.helps(force) {
            Some(LeftOutReason::NoPlaceForBands)
        } else if self.leans(force) {
            Some(LeftOutReason::PullsAskew)
        } else {
            None
        }
    }

    fn chain(&mut self, chains: &[Chain], count: u32) {
        let first = chains.first();
        let Some(kind) = first.and_then(|chain| self.kind(chain.name(), count)) else {
            return;
        };
        for chain in chains {
            for hang in [ChainHang::Straight, ChainHang::DoubleLooped] {
                let mut hung = HungChain::to_floor(chain.clone(), 1);
                hung.hang = hang;
                let item = Item::Chain(hung);
                if !takes_chains(self.carrier) || unfit(&item, self.carrier).is_some() {
                    let reason = LeftOutReason::NoPlaceForChains;
                    self.left_out.add(reason, None, chain.name());
                    continue;
                }
                let force = self.force_of(&item);
                match idle_chain(&force) {
                    None => self.add(item, kind, force),
                    Some(reason) => {
                        let leader = chain.leader().length;
                        let way = Some(WayOfHanging::Chain { hang, leader });
                        self.left_out.add(reason, way, chain.name());
                    }
                }
            }
        }
    }

    /// The number of a new kind, or nothing where there is no pair of it.
    fn kind(&mut self, name: &str, count: u32) -> Option<usize> {
        if count < 2 {
            self.left_out.add(LeftOutReason::NoSecondPiece, None, name);
            return None;
        }
        self.pairs.push(count / 2);
        Some(self.pairs.len() - 1)
    }

    fn force_of(&self, item: &Item) -> Vec<PlaneForce> {
        let rigged = Setup::new("", vec![item.clone()]).rigged_over(self.points);
        let at = |point| rigged.total_at(point, self.carrier, Motion::Hold).force;
        self.points.iter().map(at).collect()
    }

    fn leans(&self, force: &[PlaneForce]) -> bool {
        let most = MOST_LEAN_DEG.to_radians().tan();
        matches!(self.carrier, Carrier::Bar)
            && !self.askew
            && force
                .iter()
                .any(|force| force.x_n.abs() > most * force.z_n.abs())
    }

    /// Whether it takes load away somewhere.
    fn helps(&self, force: &[PlaneForce]) -> bool {
        let lifting = |point: &LoadPoint, force: &PlaneForce| {
            force.x_n * point.dx_ds_m + force.z_n * point.dz_ds_m
        };
        let mut places = self.points.iter().zip(force);
        places.any(|(point, force)| lifting(point, force) > 0.0)
    }

    fn add(&mut self, item: Item, kind: usize, force: Vec<PlaneForce>) {
        let helps = self.helps(&force);
        self.hangings.push(Hanging {
            item,
            kind,
            force,
            helps,
        });
    }

    fn finished(self) -> Result<Rack> {
        let mut hangings = self.hangings;
        if hangings.len() > MOST_HANGINGS {
            return Err(Error::bad(SearchFault::TooManyHangings {
                hangings: hangings.len(),
                most: MOST_HANGINGS,
            }));
        }
        hangings.sort_by_key(|hanging| !hanging.helps);
        Ok(Rack {
            hangings,
            pairs: self.pairs,
            left_out: self.left_out.gathered(),
        })
    }
}

/// Whether bands hang on it in a weight room: on bars, dumb-bells and the body, not on sleds and levers of machines
/// (common practice).
const fn takes_bands(carrier: &Carrier) -> bool {
    matches!(carrier, Carrier::Bar | Carrier::Dumbbell | Carrier::Body)
}

/// Whether bands from above hang on it in a weight room: on bars alone (common practice). Where the body is the load it is
/// carried at its middle here, below which a band that helps at knee or foot would have to reach.
const fn hangs_from_above(carrier: &Carrier) -> bool {
    matches!(carrier, Carrier::Bar)
}

/// Whether chains hang on it in a weight room: on bars alone (common practice).
const fn takes_chains(carrier: &Carrier) -> bool {
    matches!(carrier, Carrier::Bar)
}

/// Why a chain adds nothing to plain weight, if so: it lies on the floor, or hangs free all the way.
fn idle_chain(force: &[PlaneForce]) -> Option<LeftOutReason> {
    let sizes = || force.iter().map(|force| force.magnitude_n());
    let (least, most) = sizes().fold((f64::INFINITY, 0.0_f64), |(least, most), size| {
        (least.min(size), most.max(size))
    });
    if most <= 0.0 {
        Some(LeftOutReason::LiesOnFloor)
    } else if most - least <= 1.0e-9 * most {
        Some(LeftOutReason::HangsFree)
    } else {
        None
    }
}
