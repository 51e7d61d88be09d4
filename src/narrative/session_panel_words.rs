//! Several planned sessions side by side in words.
//!
//! In: sessions. Out: the words around their figure.

use super::figure_words::FigureWords;
use super::prose::{capital, counted_noun};
use super::quantities::QuantityWords;
use super::session_words::session_name;
use crate::study::PlannedSession;
use crate::units::{Mass, System};

/// The level axis: sets in the order in which they are done.
pub(crate) const SET_NUMBER: &str = "Set, warm-ups first";
/// The upright axis.
pub(crate) const LOAD_OF_SET: &str = "Load";

/// The words around the figure of several sessions.
#[must_use]
pub fn sessions_words(sessions: &[PlannedSession], units: System) -> FigureWords {
    let told: Vec<String> = sessions
        .iter()
        .map(|session| told(session, units))
        .collect();
    let all = sessions.iter().flat_map(working_kg);
    FigureWords {
        title: format!(
            "{}: working sets at {}",
            counted_noun(sessions.len(), "session"),
            span(all, units)
        ),
        subtitle: sessions.first().map_or_else(String::new, |session| {
            let lift = &session.plan.draft.lift;
            let name = lift.title.clone();
            format!("{name}, 1RM {}", units.mass(lift.one_rm))
        }),
        footnote: "Bars: what is on the bar, warm-ups grey. Upright lines: what is felt with bands or chains."
            .to_owned(),
        description: told.join(" "),
        caption: String::new(),
    }
}

fn working_kg(session: &PlannedSession) -> impl Iterator<Item = f64> + '_ {
    session
        .plan
        .working_sets()
        .map(|set| set.load.total.as_kg())
}

/// "80 to 120 kg", or one load.
fn span(kg: impl Iterator<Item = f64>, units: System) -> String {
    let start = [f64::INFINITY, 0.0];
    let [low, high] = kg.fold(start, |[low, high]: [f64; 2], kg| {
        [low.min(kg), high.max(kg)]
    });
    let words = |kg: f64| units.mass(Mass::from_kg(kg));
    if low < high {
        format!("{} to {}", words(low), words(high))
    } else {
        words(high)
    }
}

fn told(session: &PlannedSession, units: System) -> String {
    let sets = session.plan.working_sets().count();
    let repetitions: u32 = session
        .plan
        .working_sets()
        .map(|set| set.repetitions())
        .sum();
    format!(
        "{}: {} in {} at {}.",
        capital(&session_name(session.name)),
        counted_noun(repetitions, "repetition"),
        counted_noun(sets, "working set"),
        span(working_kg(session), units)
    )
}
