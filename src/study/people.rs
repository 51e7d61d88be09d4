//! One lift of many invented people: how far their strength curves differ in height and in shape.
//!
//! In: a question, whom to invent, a setup. Out: [`People`]: shares of the capacities at every sample, as they are and in
//! percent of each person's own median; classes; hardest places. The same for any number of threads.

use super::invented_lifter::invented;
use super::people_asked::PeopleAsked;
use super::people_curves::{People, Tenths};
use super::question::{Question, Study};
use super::solve::study;
use crate::bounds::bounds;
use crate::capacity::CurveShape;
use crate::error::{ComparisonFault, Error, MaximumFault, Result};
use crate::numeric::quantile;
use crate::person::{PersonTable, Scatter};
use crate::resistance::{Item, Setup, Weight};
use crate::units::Mass;
use rayon::prelude::{IntoParallelIterator, ParallelIterator};

/// How many people a figure of a lecture has, samples of each one's curve, and the seed of the invention.
const COUNT: usize = 80;
const SAMPLES: usize = 41;
const SEED: u64 = 1;
/// The plain load under which the hardest place lies where no setup is told, kg.
const PLAIN_KG: f64 = 20.0;

/// What is kept of one person.
struct OneCurve {
    capacities: Vec<f64>,
    shape: CurveShape,
    hardest: Option<f64>,
}

impl People {
    /// People who differ as people alike in sex and training do, around the lifter of a question.
    ///
    /// **Fails** if none of them can do the lift.
    pub fn around(question: &Question<'_>, table: &PersonTable) -> Result<Self> {
        let asked = PeopleAsked {
            count: COUNT,
            seed: SEED,
            part: None,
            kind: None,
            scatter: Scatter::between_people(table, question.lifter.sex),
        };
        let question = Question {
            samples: SAMPLES,
            ..question.clone()
        };
        Self::of(&question, &asked, None)
    }

    /// People invented around the lifter of a question, under a setup or a plain load.
    ///
    /// **Fails** if none of them can do the lift.
    pub fn of(question: &Question<'_>, asked: &PeopleAsked, setup: Option<&Setup>) -> Result<Self> {
        let count = asked.checked()?;
        let most = bounds().invented_poses.most_of_them();
        if count.saturating_mul(question.samples) > most {
            return Err(Error::bad(ComparisonFault::TooManyInvented {
                people: count,
                samples: question.samples,
                fitting: most / count,
            }));
        }
        let plain = vec![Item::Weight(Weight::Load(Mass::from_kg(PLAIN_KG)))];
        let setup = setup.cloned().unwrap_or_else(|| Setup::new("", plain));
        let each: Vec<OneCurve> = asked
            .numbers()
            .into_par_iter()
            .filter_map(|number| {
                let (lifter, _) = invented(question.lifter, &asked.scatter, asked.seed, number);
                let own = Question {
                    lifter: &lifter,
                    ..question.clone()
                };
                let setups = std::slice::from_ref(&setup);
                study(&own, setups).ok().map(|study| OneCurve::of(&study))
            })
            .collect();
        if each.is_empty() {
            return Err(Error::no_answer(MaximumFault::NobodyInGroup));
        }
        let shape_of = |one: &OneCurve| -> Vec<f64> {
            let own = quantile(&one.capacities, 0.5).unwrap_or(f64::NAN);
            let shares = one.capacities.iter();
            shares.map(|value| 100.0 * value / own).collect()
        };
        let forces: Vec<&[f64]> = each.iter().map(|one| one.capacities.as_slice()).collect();
        let shapes: Vec<Vec<f64>> = each.iter().map(shape_of).collect();
        let shapes: Vec<&[f64]> = shapes.iter().map(Vec::as_slice).collect();
        let last = (question.samples - 1) as f64;
        Ok(Self {
            asked: asked.clone(),
            count: each.len(),
            places: (0..question.samples).map(|k| k as f64 / last).collect(),
            forces: Tenths::of(&forces),
            shapes: Tenths::of(&shapes),
            classes: classes(&each),
            hardest: each.iter().filter_map(|one| one.hardest).collect(),
        })
    }
}

impl OneCurve {
    fn of(study: &Study) -> Self {
        let sticking = study.setups.first().and_then(|setup| setup.sticking);
        Self {
            capacities: study.capacity.values(),
            shape: study.class.shape,
            hardest: sticking.map(|sticking| sticking.point_range),
        }
    }
}

/// How many have each class, the most frequent first.
fn classes(each: &[OneCurve]) -> Vec<(CurveShape, usize)> {
    let mut counts: Vec<(CurveShape, usize)> = Vec::new();
    for one in each {
        match counts.iter_mut().find(|(shape, _)| *shape == one.shape) {
            Some((_, count)) => *count += 1,
            None => counts.push((one.shape, 1)),
        }
    }
    counts.sort_by_key(|(shape, count)| (std::cmp::Reverse(*count), shape.word()));
    counts
}

impl Study {
    /// The study with what other people hold.
    #[must_use]
    pub fn with_people(mut self, people: People) -> Self {
        self.people = Some(people);
        self
    }
}
