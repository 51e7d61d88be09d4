//! A lift under bands and chains against plain weight, all equally hard at their hardest place.
//!
//! In: a [`Desk`], a lift, the names under which the setups go. Out: studies of two or four setups.

use super::desk::Desk;
use super::question::Study;
use crate::error::Result;
use crate::grammar::{band_from_text, chain_from_text, item_from_text};
use crate::numeric::range_mean;
use crate::resistance::{Item, Setup};

/// Bands from strong to weak; the first that leaves a fair part of the load to the bar is shown.
const BANDS: [&str; 3] = ["loop-22mm:1", "loop-14mm:1", "loop-6mm:1"];
/// Chains from heavy to light, two a side.
const CHAINS: [&str; 4] = [
    "chain-16mm:2",
    "chain-13mm:2",
    "chain-10mm:2",
    "chain-8mm:2",
];
/// A cam shaped after the lifter's own curve.
const CAM: &str = "cam fitted";
/// Share of the plain weight that must stay on the bar (common practice: bands and chains make 15-35 % of
/// the load at the top, more at most half).
const LEAST_ON_BAR: f64 = 0.5;

/// What hangs beside the weight.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum HungKind {
    /// Nothing.
    Plain,
    /// A band.
    Band,
    /// Chains.
    Chain,
    /// A band and chains.
    Both,
    /// A cam that follows the strength curve.
    Cam,
}

impl HungKind {
    /// What may hang, from the heaviest to the lightest.
    fn choices(self) -> Vec<Vec<&'static str>> {
        match self {
            Self::Plain => vec![Vec::new()],
            Self::Band => BANDS.map(|band| vec![band]).to_vec(),
            Self::Cam => vec![vec![CAM]],
            Self::Chain => CHAINS.map(|chain| vec![chain]).to_vec(),
            Self::Both => BANDS
                .iter()
                .flat_map(|band| CHAINS.map(|chain| vec![*band, chain]))
                .collect(),
        }
    }
}

/// What a setup goes by in the figures.
pub type NameOfHung = fn(HungKind) -> &'static str;

/// A lift under several setups, one of each kind.
#[derive(Debug, Clone, PartialEq)]
pub struct AgainstPlain {
    /// What hangs in each setup; plain weight first.
    pub kinds: Vec<HungKind>,
    /// The setups as they were asked for: how a band hangs is left to the study.
    pub setups: Vec<Setup>,
    /// The lift under them.
    pub study: Study,
}

impl AgainstPlain {
    /// The strong end of a lift that rises, short of lockout, in the range (assumed).
    pub const STRONG_END: [f64; 2] = [0.8, 0.9];

    /// A lift under setups of the given kinds.
    ///
    /// **Fails** when one of them cannot be lifted.
    pub fn of(
        desk: &Desk<'_>,
        movement: &str,
        kinds: &[HungKind],
        name: NameOfHung,
    ) -> Result<Self> {
        let setups = kinds
            .iter()
            .map(|kind| fitting(desk, movement, *kind, name))
            .collect::<Result<Vec<_>>>()?;
        Ok(Self {
            kinds: kinds.to_vec(),
            study: desk.under(movement, &setups)?,
            setups,
        })
    }

    /// What hangs in the last setup, which the figure is about.
    #[must_use]
    pub fn last_kind(&self) -> HungKind {
        self.kinds.last().copied().unwrap_or(HungKind::Plain)
    }

    /// Mean effort over the strong end in one setup.
    #[must_use]
    pub fn end_effort(&self, index: usize) -> f64 {
        let poses = self.study.range.poses.iter();
        let efforts: Vec<f64> = poses
            .zip(&self.study.setups[index].effort)
            .filter(|(pose, _)| {
                (Self::STRONG_END[0]..=Self::STRONG_END[1]).contains(&pose.load.range)
            })
            .map(|(_, effort)| *effort)
            .collect();
        efforts.iter().sum::<f64>() / efforts.len().max(1) as f64
    }

    /// Mean effort over the whole range in one setup.
    #[must_use]
    pub fn mean_effort(&self, index: usize) -> f64 {
        range_mean(&self.study.setups[index].effort)
    }

    /// Least and greatest effort over the range in one setup.
    #[must_use]
    pub fn effort_span(&self, index: usize) -> [f64; 2] {
        let efforts = self.study.setups[index].effort.iter().copied();
        [f64::min, f64::max].map(|of| efforts.clone().reduce(of).unwrap_or(0.0))
    }

    /// Flattening of the second setup against the first, %.
    #[must_use]
    pub fn gained_percent(&self) -> f64 {
        let flattening = |index: usize| self.study.setups[index].flattening_percent.unwrap_or(0.0);
        flattening(1) - flattening(0)
    }
}

/// The first of the choices that leaves enough on the bar, else the last one that can be lifted.
///
/// **Fails** when none of them can be lifted, with the reason of the last.
fn fitting(desk: &Desk<'_>, movement: &str, kind: HungKind, name: NameOfHung) -> Result<Setup> {
    let carrier = desk.lift(movement)?.study.range.carrier;
    let plain = desk.hard(movement, Vec::new())?;
    let least_kg = LEAST_ON_BAR * plain.plain_mass(&carrier).as_kg();
    let named = |mut setup: Setup| {
        setup.name = name(kind).to_owned();
        setup
    };
    let (mut lifted, mut refused) = (None, None);
    for choice in kind.choices() {
        match desk.hard(movement, items(desk, &choice)?) {
            Ok(setup) if setup.plain_mass(&carrier).as_kg() >= least_kg => return Ok(named(setup)),
            Ok(setup) => lifted = Some(setup),
            Err(error) => refused = Some(error),
        }
    }
    match (lifted, refused) {
        (None, Some(error)) => Err(error),
        (lifted, _) => Ok(named(lifted.unwrap_or(plain))),
    }
}

fn items(desk: &Desk<'_>, texts: &[&str]) -> Result<Vec<Item>> {
    let pieces = desk.models.pieces()?;
    let stock = pieces.stock();
    texts
        .iter()
        .map(|text| {
            if *text == CAM {
                item_from_text(text, &stock)
            } else if CHAINS.contains(text) {
                Ok(Item::Chain(chain_from_text(text, &stock)?))
            } else {
                Ok(Item::Band(band_from_text(text, &stock)?))
            }
        })
        .collect()
}
