//! Every way in which a gym can hang one pair of bands or chains, and how many combinations follow.
//!
//! In: a gym, the movement's load points, what may be used. Out: [`Hanging`]s, each with the force of one
//! pair over the range, and what was left out and why. A combination takes up to so many pairs, of each
//! kind no more than the gym owns, in any of its hangings.

use super::gym::Gym;
use crate::error::{Error, Result};
use crate::movement::{Carrier, LoadPoint, PlaneForce};
use crate::resistance::{
    Anchor, Band, Chain, ChainHang, Hang, HungBand, HungChain, Item, Motion, Setup,
};
use crate::units::rounded;
use std::collections::BTreeMap;

/// How far a band on a bar in free hands may pull from plumb, degrees. Assumed: a bar that is drawn
/// forward or back much more than this is hard to steer; `askew` lifts the limit.
pub const MOST_LEAN_DEG: f64 = 15.0;

/// Why no chain hangs on a machine lever or a sled.
const NO_CHAIN: &str = "chains cannot hang from what this movement lifts";

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
    /// What was left out and why, one sentence each.
    pub left_out: Vec<String>,
}

/// Which pieces are allowed.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Allowed {
    /// Words: `bands`, `chains`, `plain`, or names of pieces; empty allows all.
    pub only: Vec<String>,
    /// Whether a free bar may be pulled far from plumb.
    pub askew: bool,
}

impl Allowed {
    fn takes(&self, group: &str, name: &str) -> bool {
        self.only.is_empty() || self.only.iter().any(|word| word == group || word == name)
    }

    /// **Fails** on a word that names neither a group nor a piece of the gym.
    fn check(&self, gym: &Gym) -> Result<()> {
        let bands = gym.bands.iter().map(|(band, _)| band.name());
        let chains = gym
            .chains
            .iter()
            .filter_map(|(c, _)| c.first())
            .map(Chain::name);
        let known: Vec<&str> = ["bands", "chains", "plain"]
            .into_iter()
            .chain(bands)
            .chain(chains)
            .collect();
        match self
            .only
            .iter()
            .find(|word| !known.contains(&word.as_str()))
        {
            None => Ok(()),
            Some(word) => Err(Error::bad(format!(
                "`{word}` is nothing that {} could use",
                gym.title
            ))
            .hint(format!("it has: {}", known.join(", ")))),
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
        allowed: &Allowed,
    ) -> Result<Self> {
        allowed.check(gym)?;
        let mut gathered = Gathered {
            carrier,
            points,
            askew: allowed.askew,
            rack: Self {
                hangings: Vec::new(),
                pairs: Vec::new(),
                left_out: Vec::new(),
            },
            reasons: BTreeMap::new(),
            kinds: BTreeMap::new(),
        };
        for (band, count) in gym
            .bands
            .iter()
            .filter(|(band, _)| allowed.takes("bands", band.name()))
        {
            gathered.knows("band", band.name());
            gathered.band(band, *count, &gym.anchors);
        }
        let chains = gym.chains.iter().filter(|(chains, _)| {
            chains
                .first()
                .is_some_and(|chain| allowed.takes("chains", chain.name()))
        });
        for (chains, count) in chains {
            if let Some(chain) = chains.first() {
                gathered.knows("chain", chain.name());
            }
            gathered.chain(chains, *count);
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

/// A rack being gathered.
struct Gathered<'a> {
    carrier: &'a Carrier,
    points: &'a [LoadPoint],
    askew: bool,
    rack: Rack,
    /// Pieces that were left out, by reason and way of hanging.
    reasons: BTreeMap<(&'static str, String), Vec<String>>,
    /// Names of all bands and all chains that may be used.
    kinds: BTreeMap<&'static str, Vec<String>>,
}

impl Gathered<'_> {
    fn knows(&mut self, group: &'static str, name: &str) {
        self.kinds.entry(group).or_default().push(name.to_owned());
    }

    fn band(&mut self, band: &Band, count: u32, anchors: &BTreeMap<String, Anchor>) {
        let Some(kind) = self.kind(band.name(), count) else {
            return;
        };
        for (name, anchor) in anchors {
            for hang in [Hang::Single, Hang::Doubled] {
                let mut hung = HungBand::from_floor(band.clone(), 1);
                (hung.anchor, hung.hang) = (*anchor, hang);
                let start_x_m = self.points.first().map(|point| point.x_m);
                let stretches = self
                    .points
                    .iter()
                    .map(|point| hung.stretch(point, start_x_m));
                let most = stretches.fold(0.0, f64::max);
                let item = Item::Band(hung);
                let force = self.force_of(&item);
                let reason = if most > band.safe_stretch() {
                    Some("would be stretched beyond the safe length")
                } else if most <= 1.0 {
                    Some("would stay slack")
                } else if self.leans(&force) {
                    Some("would pull the free bar far forward or back (--askew allows it)")
                } else {
                    None
                };
                match reason {
                    None => self.add(item, kind, force),
                    Some(reason) => {
                        let how = format!(
                            "{} from {name}",
                            crate::narrative::implements::hang_word(hang)
                        );
                        self.leave_out(reason, how, band.name());
                    }
                }
            }
        }
    }

    fn chain(&mut self, chains: &[Chain], count: u32) {
        let Some(kind) = chains
            .first()
            .and_then(|chain| self.kind(chain.name(), count))
        else {
            return;
        };
        for chain in chains {
            for hang in [ChainHang::Straight, ChainHang::DoubleLooped] {
                let mut hung = HungChain::to_floor(chain.clone(), 1);
                hung.hang = hang;
                if self.refuses(&Item::Chain(hung.clone())) {
                    self.leave_out(NO_CHAIN, String::new(), chain.name());
                    continue;
                }
                let item = Item::Chain(hung);
                let force = self.force_of(&item);
                match idle_chain(&force) {
                    Some(reason) => {
                        let leader_cm = chain.leader().length.as_cm();
                        let on = if leader_cm > 0.0 {
                            format!(" on a leader of {} cm", rounded(leader_cm, 0))
                        } else {
                            String::new()
                        };
                        self.leave_out(
                            reason,
                            format!(
                                "{}{on}",
                                crate::narrative::implements::chain_hang_word(hang)
                            ),
                            chain.name(),
                        );
                    }
                    None => self.add(item, kind, force),
                }
            }
        }
    }

    /// The number of a new kind, or nothing where there is no pair of it.
    fn kind(&mut self, name: &str, count: u32) -> Option<usize> {
        if count < 2 {
            self.leave_out("no second piece for the other side", String::new(), name);
            return None;
        }
        self.rack.pairs.push(count / 2);
        Some(self.rack.pairs.len() - 1)
    }

    fn leave_out(&mut self, reason: &'static str, how: String, name: &str) {
        let names = self.reasons.entry((reason, how)).or_default();
        if names.last().is_none_or(|last| last != name) {
            names.push(name.to_owned());
        }
    }

    fn refuses(&self, item: &Item) -> bool {
        let alone = Setup::new("", vec![item.clone()]);
        alone.check_for(self.carrier, "this movement").is_err()
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

    fn add(&mut self, item: Item, kind: usize, force: Vec<PlaneForce>) {
        let lifting = |point: &LoadPoint, force: &PlaneForce| {
            force.x_n * point.dx_ds_m + force.z_n * point.dz_ds_m
        };
        let helps = self
            .points
            .iter()
            .zip(&force)
            .any(|(point, force)| lifting(point, force) > 0.0);
        self.rack.hangings.push(Hanging {
            item,
            kind,
            force,
            helps,
        });
    }

    fn finished(mut self) -> Result<Rack> {
        let many = self.rack.hangings.len();
        if many > MOST_HANGINGS {
            return Err(Error::bad(format!(
                "this gym can hang its pieces in {many} ways, more than the {MOST_HANGINGS} that can be searched"
            ))
            .hint("name what may be used, --only bands, or list fewer anchors"));
        }
        self.rack.hangings.sort_by_key(|hanging| !hanging.helps);
        self.rack.left_out = self.left_out_in_words();
        Ok(self.rack)
    }

    /// One sentence for each reason and list of pieces, the ways of hanging together.
    fn left_out_in_words(&self) -> Vec<String> {
        let mut together: BTreeMap<(&str, &[String]), Vec<&str>> = BTreeMap::new();
        for ((reason, how), names) in &self.reasons {
            let ways = together.entry((reason, names)).or_default();
            ways.extend((!how.is_empty()).then_some(how.as_str()));
        }
        let sentence = |((reason, names), ways): ((&str, &[String]), Vec<&str>)| {
            let whole = self.kinds.iter().find(|(_, all)| all.as_slice() == names);
            let names = match whole {
                Some((group, all)) if all.len() > 1 => format!("every {group}"),
                _ => names.join(", "),
            };
            let ways = if ways.is_empty() {
                String::new()
            } else {
                format!(" ({})", ways.join("; "))
            };
            format!("{names}{ways}: {reason}.")
        };
        together.into_iter().map(sentence).collect()
    }
}

/// Why a chain adds nothing to plain weight, if so: it lies on the floor, or hangs free all the way.
fn idle_chain(force: &[PlaneForce]) -> Option<&'static str> {
    let sizes = || force.iter().map(|force| force.magnitude_n());
    let (least, most) = sizes().fold((f64::INFINITY, 0.0_f64), |(least, most), size| {
        (least.min(size), most.max(size))
    });
    if most <= 0.0 {
        Some("would lie on the floor over the whole range")
    } else if most - least <= 1.0e-9 * most {
        Some("would hang free over the whole range and be plain weight")
    } else {
        None
    }
}
