//! What a coach checks at the rack: repetitions that a setup allows, how fast the first is, how hard each band pulls.
//!
//! In: a question, a setup that was picked, the published tables. Out: [`PickCard`], plain data.

use super::pick_answer::{PickAnswer, Picked};
use super::question::Question;
use super::session_oracle::simulated_oracle;
use super::solve::load_points;
use crate::error::Result;
use crate::movement::{Carrier, LoadPoint};
use crate::rep::with_load;
use crate::resistance::{HungBand, Item, Setup};
use crate::session::method::Method;
use crate::session::planned_set::LOWERING;
use crate::session::prediction::{MOST_REPETITIONS, TiringBody, predict_set};
use crate::session::published::Published;
use crate::session::repetitions::RepetitionChart;
use crate::session::session_cautions::Circumstances;
use crate::session::spotting::{Spotting, spotting};
use crate::units::{Duration, Force, Length, Speed};

/// How hard one band pulls at two heights of the bar.
#[derive(Debug, Clone, PartialEq)]
pub struct TensionCheck {
    /// Name of the band.
    pub band: String,
    /// Height of what the band hangs on, at the start and at the end of the range, and the pull of one band there.
    pub at: [(Length, Force); 2],
}

/// What is checked at the rack.
#[derive(Debug, Clone, PartialEq)]
pub struct PickCard {
    /// Mean velocity of the first repetition, where one is lifted.
    pub first_velocity: Option<Speed>,
    /// Repetitions to failure by the published chart at the hardest place's effort, as far as the chart goes.
    pub by_chart: Option<u32>,
    /// Repetitions to failure of a rested lifter in the simulation, where it says so.
    pub by_model: Option<u32>,
    /// Pull of one band of each kind.
    pub tensions: Vec<TensionCheck>,
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
    let effort = picked.study.sticking.map_or(0.0, |s| s.max_effort);
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
        by_chart: chart.allowed_at(effort),
        by_model: simulated.and_then(|(_, many)| many),
        tensions: bands.collect(),
        spotting: spotting(&Circumstances {
            handling: &answer.handling,
            method: Method::Straight,
            heaviest_share: heaviest_share(answer, picked),
            with_bar: answer.study.range.carrier == Carrier::Bar,
        }),
    })
}

/// The greatest of effort, load on the bar, and load that is left when bands go, as shares of what the lifter has.
fn heaviest_share(answer: &PickAnswer, picked: &Picked) -> f64 {
    let effort = picked.study.sticking.map_or(0.0, |s| s.max_effort);
    let safety = &answer.safety;
    let on_the_bar = safety.share_of(picked.loaded.loading.total + safety.body);
    let left = picked.loaded.failure.filter(|failure| failure.grows);
    let left = left.map_or(0.0, |failure| safety.share_of(failure.after_all));
    effort.max(on_the_bar).max(left)
}

/// Velocity of the first repetition and repetitions to failure of a rested lifter; nothing where none is lifted.
fn simulated(
    question: &Question<'_>,
    published: &Published,
    picked: &Picked,
) -> Option<(Speed, Option<u32>)> {
    let load = picked.loaded.loading.total;
    let hung = picked.loaded.setup.items.iter();
    let hung = hung.filter(|item| matches!(item, Item::Band(_) | Item::Chain(_)));
    let hung = with_load(&Setup::new("", hung.cloned().collect()), load);
    let oracle = simulated_oracle(published, question, question.lifter, &hung, LOWERING).ok()?;
    let mut body = TiringBody::fresh(&oracle.joints);
    let set = predict_set(
        &oracle,
        load,
        &[MOST_REPETITIONS],
        Duration::ZERO,
        &mut body,
    )
    .ok()?;
    let first = set.repetitions.first().filter(|first| first.completed)?;
    Some((
        first.mean_velocity,
        set.stalls_at().map(|number| number - 1),
    ))
}

fn tension(hung: &HungBand, points: &[LoadPoint]) -> TensionCheck {
    let start_x_m = points.first().map(|point| point.x_m);
    let at = |point: Option<&LoadPoint>| {
        point.map_or((Length::ZERO, Force::from_n(0.0)), |point| {
            let distance_m = hung.distance_m(point, start_x_m);
            let pull_n = hung.band.force_n(distance_m, hung.hang);
            (Length::from_m(point.z_m), Force::from_n(pull_n))
        })
    };
    TensionCheck {
        band: hung.band.name().to_owned(),
        at: [at(points.first()), at(points.last())],
    }
}
