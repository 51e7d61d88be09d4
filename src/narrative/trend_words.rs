//! The figure of a training log's trend in words.
//!
//! In: a [`Trend`], units. Out: the words around its figure and the labels in it.

use super::figure_words::FigureWords;
use super::progress_words::{slope_in_words, sureness_word, trend_in_words, verdict_word};
use super::prose::{capital, weeks};
use super::quantities::{QuantityWords, rounded};
use super::shown_units::ShownUnits;
use crate::progress::trend::Trend;
use crate::progress::verdict::Verdict;
use crate::units::{Mass, System};

/// The level axis.
pub(crate) const WEEKS: &str = "Weeks since the first session";
/// The upright axis.
pub(crate) const ESTIMATED_1RM: &str = "Estimated 1RM";
/// The curve of the sessions.
pub(crate) const BEST_OF_DAY: &str = "best set of the day";

/// What is said to the lecture's invented log.
pub(crate) const PLATEAU_CAPTION: &str = "An invented log. Single days scatter more than weeks of training change: only a line through many days, with its \
     interval, tells a plateau from a bad week.";

/// A line below a title that says whose log or session it is.
#[must_use]
pub(crate) fn invented(subtitle: &str) -> String {
    format!("Invented person. {subtitle}")
}

/// What the lift is called: as its movement is, else as the log has it.
fn trend_title(trend: &Trend) -> String {
    let title = trend.title.clone();
    title.unwrap_or_else(|| capital(&trend.lift.replace('-', " ")))
}

/// The words around the figure.
#[must_use]
pub fn trend_figure_words(trend: &Trend, units: System) -> FigureWords {
    FigureWords {
        title: format!(
            "{}: {} for {}, {} evidence",
            trend_title(trend),
            verdict_word(trend.verdict),
            weeks(trend.recent.weeks()),
            sureness_word(trend.sureness)
        ),
        subtitle: format!(
            "Estimated maximum of the best set of each day; {} now",
            units.mass(trend.one_rm_now())
        ),
        footnote: match trend.recent.sessions {
            1 => "Median of published 1RM equations; one session has no slope.".to_owned(),
            _ => format!(
                "Median of published 1RM equations; robust slope (Theil-Sen) now {}{}.",
                slope_in_words(&trend.recent, units),
                match trend.recent.interval_kg_week {
                    Some(_) => "; shaded: what its interval allows",
                    None => "",
                }
            ),
        },
        description: format!("{}: {}.", trend_title(trend), trend_in_words(trend, units)),
        caption: String::new(),
    }
}

/// Edges of the slope's interval in the data.
pub(crate) const SLOPE_EDGES: [&str; 2] = ["95 % of the slope, above", "95 % of the slope, below"];

/// The line of the recent stretch: "trend: flat".
#[must_use]
pub(crate) fn trend_line_name(verdict: Verdict) -> String {
    format!("trend: {}", verdict_word(verdict))
}

/// The line before the bend, with its change a week.
#[must_use]
pub(crate) fn slope_before(slope_kg_week: f64, units: System) -> String {
    let sign = if slope_kg_week < 0.0 { "\u{2212}" } else { "+" };
    let change = units.mass_unit().of(slope_kg_week).abs();
    let unit = units.mass_unit().symbol;
    format!("before: {sign}{} {unit} a week", rounded(change, 1))
}

/// The best session of all.
#[must_use]
pub(crate) fn best_of_log(kg: f64, units: System) -> String {
    format!("best {}", units.mass(Mass::from_kg(kg)))
}
