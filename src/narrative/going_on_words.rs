//! How a session goes on from one to the next, in words.
//!
//! In: a [`Progression`], units. Out: sentences.

use super::doubted_sets::AFTER_THE_FIRST_LOG;
use super::prose::{counted_noun, of_count};
use super::quantities::{QuantityWords, rounded};
use crate::session::far_step::FarStep;
use crate::session::remark::Progression;
use crate::units::{Mass, System};

/// " with 2 in reserve"; nothing of none.
fn kept_in_reserve(reserve: u32) -> String {
    match reserve {
        0 => String::new(),
        reserve => format!(" with {reserve} in reserve"),
    }
}

/// How to go on from session to session.
#[must_use]
pub fn progression(progression: &Progression, units: System) -> String {
    let text = match progression {
        Progression::WhenRepetitions {
            repetitions,
            reserve,
            percent,
            steps,
            next,
            far,
        } => {
            if let Some(far) = far {
                return after_repetitions(far, (*repetitions, *reserve), *steps, units);
            }
            let next = next.map_or_else(String::new, |next| {
                format!(
                    "; the lightest load here that is {} % more is {}",
                    percent.0,
                    units.mass(next)
                )
            });
            return format!(
                "When {}{} {} possible in the last set of two sessions running, raise the load by \
                 {} to {} % ({} to {}{next}), the smaller step for the upper body.",
                counted_noun(*repetitions, "repetition"),
                kept_in_reserve(*reserve),
                of_count(repetitions, "is", "are"),
                percent.0,
                percent.1,
                units.mass(steps.0),
                units.mass(steps.1),
            );
        }
        Progression::ByWeeks {
            easier_next: true, ..
        } => "As the weeks say: the next one is easier, however well this one goes.",
        Progression::ByWeeks {
            repetitions,
            reserve,
            easier_next: false,
        } => {
            return format!(
                "As the weeks say. Take the next week's loads early only after two sessions running whose last set allowed \
                 {}{}.",
                counted_noun(*repetitions, "repetition"),
                kept_in_reserve(*reserve)
            );
        }
        Progression::ByTheLog {
            repetitions,
            more,
            ends,
            reserve,
            next,
            far,
        } => {
            let told = |heavier: &str| by_the_log((*repetitions, *more), *ends, *reserve, heavier);
            return match far {
                Some(far) => format!(
                    "{} {}",
                    told("go on with more repetitions at this load"),
                    way_to(far, *reserve, units)
                ),
                None => told(&heavier_loads(next, ends.0, units)),
            };
        }
        Progression::AfterTheFirstLog => AFTER_THE_FIRST_LOG,
        Progression::ByWeeksComingBack => {
            "As the weeks say, none early: a week that was hard, or not done in full, is done again."
        }
        Progression::WhenTopSetIsEasy => {
            "When the top set has two repetitions in reserve, raise every load by 2 to 5 %."
        }
        Progression::WhenLastIsFast => {
            "When the last repetition is as fast as the first, add a repetition in all or 2 to 5 % of load."
        }
        Progression::WhenLoweringsAreSlow { top, most } => {
            return after_lowerings(*top, *most, units);
        }
        Progression::PlatesFirst => {
            "Add plates first and leave bands and chains as they are, so that sessions stay comparable."
        }
    };
    text.to_owned()
}

/// The next load of overloaded lowering, where there is one.
fn after_lowerings(top: Mass, most: Option<Mass>, units: System) -> String {
    match most {
        None => "The body alone is lowered and nothing is added: when every lowering takes its full time, test whether it can \
                 be lifted."
            .to_owned(),
        Some(most) if most > top => format!(
            "Add the smallest step only when every lowering of the last session took its full time, up to {}: the most here of \
             which a lowering keeps its reserve at this 1RM.",
            units.mass(most)
        ),
        Some(most) => format!(
            "No step is added at this 1RM: {} is the most here of which a lowering keeps its reserve. More comes only after a \
             higher 1RM.",
            units.mass(most)
        ),
    }
}

/// A novice's rule for the next session.
fn by_the_log(
    (repetitions, more): (u32, Option<u32>),
    (_, most): (u32, u32),
    reserve: u32,
    heavier: &str,
) -> String {
    let step = |repetitions: u32| {
        let kept = kept_in_reserve(reserve);
        format!("when every set of two sessions running reaches {repetitions}{kept}")
    };
    let first = match more {
        Some(more) if more < most => format!(
            "{}, do {more} the next time, and so on up to {most} or as far as {reserve} stay in reserve; then",
            step(repetitions)
        ),
        Some(more) => format!("{}, do {more} the next time; then", step(repetitions)),
        None => format!("{},", step(repetitions)),
    };
    format!("By the log: {first} {heavier}. Where a set falls short, the session is done again.")
}

/// "go to 45 kg with 8 again, then to 47.5 kg and 50 kg".
fn heavier_loads(next: &[Option<Mass>; 3], fewest: u32, units: System) -> String {
    let loads: Vec<String> = next
        .iter()
        .flatten()
        .map(|load| units.mass(*load))
        .collect();
    match loads.split_first() {
        Some((first, [])) => format!("go to {first} with {fewest} again"),
        Some((first, then)) => {
            format!(
                "go to {first} with {fewest} again, then to {}",
                then.join(" and ")
            )
        }
        None => "a heavier load is needed than can be set up here".to_owned(),
    }
}

/// Where the next load is farther than a usual step: repetitions first.
fn after_repetitions(
    far: &FarStep,
    (repetitions, reserve): (u32, u32),
    (least, most): (Mass, Mass),
    units: System,
) -> String {
    format!(
        "By repetitions first: a usual step, {} to {}, is less than the loads here make. When {}{} {} possible in the last set of two sessions \
         running, do so many the next time, and so on. {}",
        units.mass(least),
        units.mass(most),
        counted_noun(repetitions, "repetition"),
        kept_in_reserve(reserve),
        of_count(repetitions, "is", "are"),
        way_to(far, reserve, units)
    )
}

/// What shows that a load is near that is farther than a usual step.
fn way_to(far: &FarStep, reserve: u32, units: System) -> String {
    let kept = kept_in_reserve(reserve);
    let shown = match far.shown_by {
        Some(many) => {
            format!("by the chart {many}{kept} at the present load show the strength for that")
        }
        None => format!(
            "by the chart more than {}{kept} at the present load show the strength for that, where it ends, so try it with care",
            far.most
        ),
    };
    format!(
        "The next load here is {}, {} % more, for {}: {shown}. Smaller weights would make smaller steps.",
        units.mass(far.next),
        rounded(far.percent, 0),
        far.then
    )
}
