//! What a coach checks at the rack: repetitions that a setup allows, how fast the first is, how hard each band pulls.
//!
//! In: a question, a setup that was picked, the published tables. Out: [`PickCard`], plain data.

use super::lifted_setups::hung_of;
use super::pick_answer::{PickAnswer, Picked};
use super::question::Question;
use super::session_oracle::simulated_oracle;
use super::solve::load_points;
use crate::error::Result;
use crate::movement::{Carrier, LoadPoint};
use crate::rep::with_load;
use crate::resistance::{HungBand, Item};
use crate::session::method::Method;
use crate::session::planned_set::LOWERING;
use crate::session::prediction::{MOST_REPETITIONS, TiringBody, predict_set};
use crate::session::published::Published;
use crate::session::repetitions::RepetitionChart;
use crate::session::session_cautions::Circumstances;
use crate::session::spotting::{Spotting, spotting};
use crate::setups::FULL_SIZE_KG;
use crate::units::{Duration, Force, Length, Mass, Speed};

/// How hard one band pulls at two heights of the bar.
#[derive(Debug, Clone, PartialEq)]
pub struct TensionCheck {
    /// Name of the band.
    pub band: String,
    /// Whether the band is drawn out as the load is lifted; else it is let back, and pulls less at the same length.
    pub draws_out: bool,
    /// Height of what the band hangs on, at the start and at the end of the range, and the pull of one band there on
    /// the way up.
    pub at: [(Length, Force); 2],
}

/// What is checked at the rack.
#[derive(Debug, Clone, PartialEq)]
pub struct PickCard {
    /// Mean velocity of the first repetition, where one is lifted.
    pub first_velocity: Option<Speed>,
    /// Repetitions to failure by the published chart at the hardest place's effort, as far as the chart goes.
    pub by_chart: Option<u32>,
    /// The most repetitions of that chart.
    pub chart_ends_at: u32,
    /// Repetitions to failure of a rested lifter in the simulation, where it says so.
    pub by_model: Option<u32>,
    /// Pull of one band of each kind.
    pub tensions: Vec<TensionCheck>,
    /// Mass of plates of full size, where the bar starts on the floor and has none.
    pub full_plates: Option<Mass>,
    /// Who stands by.
    pub spotting: Option<Spotting>,
}

/// The card of a setup.
///
/// **Fails** as the published chart does.
pub fn pick_card(
    question: &Question<'_>,
    published: &Published,
    answer: &PickAnswer,
    picked: &Picked,
) -> Result<PickCard> {
    let chart = RepetitionChart::through(&published.repetitions.chart)?;
    let simulated = simulated(question, published, picked);
    let points = load_points(&answer.study.range);
    let bands = picked
        .loaded
        .setup
        .items
        .iter()
        .filter_map(|item| match item {
            Item::Band(hung) => Some(tension(hung, &points)),
            _ => None,
        });
    Ok(PickCard {
        first_velocity: simulated.map(|(velocity, _)| velocity),
        by_chart: chart.allowed_at(hardness(answer, picked)),
        chart_ends_at: chart.range().1 as u32,
        by_model: simulated.and_then(|(_, many)| many),
        tensions: bands.collect(),
        full_plates: (question.movement.starts_on_floor()
            && !picked.loaded.loading.has_full_size())
        .then(|| Mass::from_kg(FULL_SIZE_KG)),
        spotting: spotting(&Circumstances {
            handling: &answer.handling,
            method: Method::Straight,
            heaviest_share: answer.heaviest_share(picked),
            heaviest: heaviest_load(picked),
            felt_share: 0.0,
            with_bar: answer.study.range.carrier == Carrier::Bar,
            off_arms: false,
        }),
    })
}

/// The heaviest of what is felt, what lies on the bar, and what is left when bands go.
fn heaviest_load(picked: &Picked) -> Mass {
    let loaded = &picked.loaded;
    let left = loaded.failure.iter().map(|failure| failure.after_all);
    let loads = loaded.loads.into_iter().chain(left);
    loads.fold(loaded.loading.total, Mass::max)
}

/// How hard one repetition is, as plans have it: plain weight by its share of the 1RM, bands and chains by the effort at
/// the hardest place.
fn hardness(answer: &PickAnswer, picked: &Picked) -> f64 {
    let safety = &answer.safety;
    if picked.loaded.hung == 0 && safety.one_rm.as_kg() > 0.0 {
        safety.share_of(picked.loaded.loading.total + safety.body)
    } else {
        answer.hardest(picked)
    }
}

/// Velocity of the first repetition and repetitions to failure of a rested lifter, where the simulation gets that far;
/// nothing where none is lifted.
fn simulated(
    question: &Question<'_>,
    published: &Published,
    picked: &Picked,
) -> Option<(Speed, Option<u32>)> {
    // A counterweight hangs on the body like a band; what is lifted beside it is nothing.
    let load = Mass::from_kg(picked.loaded.loading.total.as_kg().max(0.0));
    let hung = with_load(&hung_of(picked), load);
    let oracle = simulated_oracle(published, question, question.lifter, &hung, LOWERING).ok()?;
    let set_of = |repetitions: u32| {
        let mut body = TiringBody::fresh(&oracle.joints);
        predict_set(&oracle, load, &[repetitions], Duration::ZERO, &mut body).ok()
    };
    let one = set_of(1)?;
    let first = one.repetitions.first().filter(|first| first.completed)?;
    let stalls_at = set_of(MOST_REPETITIONS).and_then(|set| set.stalls_at());
    Some((first.mean_velocity, stalls_at.map(|number| number - 1)))
}

fn tension(hung: &HungBand, points: &[LoadPoint]) -> TensionCheck {
    let start_x_m = points.first().map(|point| point.x_m);
    let length_m = |point: Option<&LoadPoint>| point.map_or(0.0, |p| hung.distance_m(p, start_x_m));
    let draws_out = length_m(points.last()) > length_m(points.first());
    let stretching = if draws_out { 1.0 } else { -1.0 };
    let at = |point: Option<&LoadPoint>| {
        point.map_or((Length::ZERO, Force::from_n(0.0)), |point| {
            let distance_m = hung.distance_m(point, start_x_m);
            let pull_n = hung
                .band
                .force_in_motion_n(distance_m, hung.hang, stretching);
            (Length::from_m(point.z_m), Force::from_n(pull_n))
        })
    };
    TensionCheck {
        band: hung.band.name().to_owned(),
        draws_out,
        at: [at(points.first()), at(points.last())],
    }
}
