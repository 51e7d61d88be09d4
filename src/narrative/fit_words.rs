//! A fit in words: measurements beside what it says, strengths that moved, expected maxima, what to measure next.
//!
//! In: a [`PersonFit`], units. Out: heads and cells of its tables, sentences, the reasons that its file gives.

use super::cautions::caution_in_words;
use super::figure_words::FigureWords;
use super::prose::{capital, counted_noun, of_count, percent};
use super::quantities::{QuantityWords, rounded};
use super::shown_units::ShownUnits;
use crate::anatomy::Sex;
use crate::movement::Measure;
use crate::person::StrengthFactor;
use crate::setups::Caution;
use crate::study::{
    DatumOutcome, FOUR_IN_FIVE, HardestPlace, LiftForecast, MovedFactor, NextTest, PersonFit,
    StaysFirst,
};
use crate::units::{Mass, System};

/// Measurements that are named as worth doing.
const NAMED_TESTS: usize = 3;
/// Fewer independent draws than these know a deviation to worse than some 15 % (1/√(2n), textbook).
const FEW: f64 = 25.0;

/// Who was fitted, in a line.
#[must_use]
pub fn who(fit: &PersonFit, units: System) -> String {
    let asked = &fit.asked;
    let length = units.length_unit();
    format!(
        "{}: {}, {} {}, {}, {} of training; {}.",
        asked.name,
        match asked.sex {
            Sex::Woman => "woman",
            Sex::Man => "man",
        },
        rounded(length.of(asked.height.as_m()), 0),
        length.symbol,
        units.mass(asked.mass),
        counted_noun(asked.months.round() as usize, "month"),
        counted_noun(fit.data.len(), "measurement")
    )
}

/// The heads of the table of measurements.
pub const DATA_HEADS: [&str; 5] = [
    "measurement",
    "measured",
    "fitted",
    "difference %",
    "the others alone say (80 %)",
];

/// One measurement as a row of that table.
#[must_use]
pub fn data_cells(datum: &DatumOutcome, units: System) -> Vec<String> {
    let (expected, deviation) = datum.others;
    let spread = (FOUR_IN_FIVE * deviation).exp();
    vec![
        datum.text.clone(),
        value(datum, datum.measured, units),
        value(datum, datum.fitted, units),
        signed_percent(datum.measured / datum.fitted, 1),
        format!(
            "{} ({} to {})",
            value(datum, expected, units),
            value(datum, expected / spread, units),
            value(datum, expected * spread, units)
        ),
    ]
}

/// A measured value: the load of a lift, a force, a torque.
fn value(datum: &DatumOutcome, si: f64, units: System) -> String {
    if datum.is_lift {
        return load(si - datum.body_kg, units);
    }
    let measure = if datum.is_torque {
        Measure::Torque
    } else {
        Measure::Force
    };
    let unit = units.load_unit(measure);
    format!("{} {}", rounded(unit.of(si), unit.decimals), unit.symbol)
}

/// A load that may be less than none where the body is lifted: help, then.
fn load(kg: f64, units: System) -> String {
    if kg < 0.0 {
        format!("−{}", units.mass(Mass::from_kg(-kg)))
    } else {
        units.mass(Mass::from_kg(kg))
    }
}

/// "+12 %" without the sign of percent.
fn signed_percent(ratio: f64, decimals: usize) -> String {
    let percent = 100.0 * (ratio - 1.0);
    let shown = rounded(percent.abs(), decimals);
    match (shown.trim_matches(['0', '.']).is_empty(), percent < 0.0) {
        (true, _) => shown,
        (false, true) => format!("−{shown}"),
        (false, false) => format!("+{shown}"),
    }
}

/// The heads of the table of strengths.
pub const FACTOR_HEADS: [&str; 4] = [
    "strength",
    "against people of that kind %",
    "80 % interval",
    "of such people, stronger than %",
];

/// The strengths that a measurement reached, as rows of that table: the whole first, then those that moved most.
#[must_use]
pub fn factor_rows(fit: &PersonFit) -> Vec<Vec<String>> {
    let reached = fit.moved.iter().filter(|moved| is_reached(fit, moved));
    let mut reached: Vec<&MovedFactor> = reached.collect();
    let size = |moved: &MovedFactor| match moved.factor {
        StrengthFactor::Whole => f64::INFINITY,
        _ => (moved.after.0 - moved.before.0).abs(),
    };
    reached.sort_by(|a, b| size(b).total_cmp(&size(a)));
    reached.into_iter().map(factor_cells).collect()
}

/// Whether a strength is narrower, or lies elsewhere, than chance alone makes it look in so many independent draws: by two
/// standard errors of a deviation, σ/√(2n), or of a mean, σ/√n (textbook).
fn is_reached(fit: &PersonFit, moved: &MovedFactor) -> bool {
    let errors = 2.0 / fit.check.effective.sqrt();
    let narrower = 1.0 - moved.after.1 / moved.before.1;
    let moved_by = (moved.after.0 - moved.before.0).abs() / moved.before.1;
    moved.before.1 > 0.0 && (narrower > errors / std::f64::consts::SQRT_2 || moved_by > errors)
}

fn factor_cells(moved: &MovedFactor) -> Vec<String> {
    let gained = moved.after.0 - moved.before.0;
    let end = |side: f64| signed_percent((gained + side * FOUR_IN_FIVE * moved.after.1).exp(), 0);
    vec![
        capital(&factor_name(&moved.factor)),
        signed_percent(gained.exp(), 0),
        format!("{} to {}", end(-1.0), end(1.0)),
        rounded(100.0 * normal_share(gained / moved.before.1), 0),
    ]
}

/// Share of a normal distribution below a place, by the logistic curve nearest to it.
///
/// **Source.** Bowling et al. 2009, J. Ind. Eng. Manag. 2:114-127: Φ(z) = 1/(1 + e^(−1.5976 z − 0.07056 z³)), within
/// 0.00014 (from memory).
fn normal_share(z: f64) -> f64 {
    1.0 / (1.0 + (-1.5976 * z - 0.070_56 * z.powi(3)).exp())
}

/// What a number of the fit is called.
#[must_use]
pub fn factor_name(factor: &StrengthFactor) -> String {
    match factor {
        StrengthFactor::Whole => "all muscles together".to_owned(),
        StrengthFactor::Group(group) => format!("{} beside them", group.replace('_', " ")),
        StrengthFactor::Lift(lift) => format!("the {} alone", lift.replace('-', " ")),
    }
}

/// How many strengths keep their scatter.
#[must_use]
pub fn factor_remark(fit: &PersonFit) -> String {
    let groups = fit.moved.iter();
    let groups = groups.filter(|moved| matches!(moved.factor, StrengthFactor::Group(_)));
    let still: Vec<String> = groups
        .filter(|moved| !is_reached(fit, moved))
        .map(|moved| moved.factor.path())
        .filter_map(|path| Some(path.strip_prefix("strength.")?.replace('_', " ")))
        .collect();
    if still.is_empty() {
        return "Every muscle group was reached by a measurement.".to_owned();
    }
    format!(
        "Hardly told of, so they scatter about as in such people: {}.",
        still.join(", ")
    )
}

/// The heads of the table of lifts.
pub const LIFT_HEADS: [&str; 5] = [
    "lift",
    "maximum",
    "80 % interval",
    "measured",
    "hardest (80 %)",
];

/// One lift as a row of that table.
#[must_use]
pub fn lift_cells(lift: &LiftForecast, units: System) -> Vec<String> {
    let [low, middle, high] = lift.loads_kg();
    vec![
        lift.title.clone(),
        load(middle, units),
        format!("{} to {}", load(low, units), load(high, units)),
        match lift.measured {
            0 => String::new(),
            1 => "once".to_owned(),
            many => format!("{many} times"),
        },
        hardest(&lift.hardest, units),
    ]
}

/// Where a lift is hardest, with its interval: "7 cm (4 to 12)" from where it begins.
fn hardest(place: &HardestPlace, units: System) -> String {
    let unit = match place.measure {
        Measure::Force => units.length_unit().symbol,
        Measure::Torque => "deg",
    };
    let at = |range: f64| {
        let way = range * place.way;
        rounded(
            match place.measure {
                Measure::Force => units.length_unit().of(way),
                Measure::Torque => way.to_degrees(),
            },
            0,
        )
    };
    format!(
        "{} {unit} on ({} to {})",
        at(place.range),
        at(place.interval.0),
        at(place.interval.1)
    )
}

/// What the table of lifts needs beside it.
#[must_use]
pub fn lift_remarks(fit: &PersonFit) -> Vec<String> {
    let mut remarks = vec![
        "Intervals hold four in five: scatter of people, error of each measurement, and the model's own error."
            .to_owned(),
    ];
    let cannot = fit.moved.iter().filter_map(|moved| match &moved.factor {
        StrengthFactor::Lift(lift) => {
            let is_there = fit.lifts.iter().any(|told| told.movement == *lift);
            (!is_there).then(|| lift.replace('-', " "))
        }
        _ => None,
    });
    let cannot: Vec<String> = cannot.collect();
    if !cannot.is_empty() {
        remarks.push(format!(
            "Not reckoned, since the fitted lifter cannot keep their poses: {}.",
            cannot.join(", ")
        ));
    }
    if fit.lifts.iter().any(|lift| lift.loads_kg()[0] < 0.0) {
        remarks.push(
            "A load below nothing is help: so much of the body has to be taken off.".to_owned(),
        );
    }
    remarks
}

/// Which measurement would narrow most.
#[must_use]
pub fn next_sentences(fit: &PersonFit) -> Vec<String> {
    let telling: Vec<&NextTest> = fit.next.iter().take(NAMED_TESTS).collect();
    let Some(first) = telling.first() else {
        return Vec::new();
    };
    let mut lines = vec![format!(
        "Measure next: a hard set of 5 to 8 in the {}. It would narrow all maxima by {} on average, its own by {}.",
        first.title.to_lowercase(),
        percent(first.narrowing),
        percent(first.of_itself)
    )];
    let others = telling[1..].iter().map(|test| {
        format!(
            "{} ({})",
            test.title.to_lowercase(),
            percent(test.narrowing)
        )
    });
    let others: Vec<String> = others.collect();
    if !others.is_empty() {
        lines.push(format!("Then: {}.", others.join(", ")));
    }
    lines
}

/// How sure the method is of itself.
#[must_use]
pub fn check_sentence(fit: &PersonFit) -> String {
    let check = &fit.check;
    let few = if check.effective < FEW {
        " These are few: take the intervals as rough."
    } else {
        ""
    };
    format!(
        "Most probable values after {}. Intervals are of {} versions of this lifter: {} were drawn about those values, and once \
         the model weighs each by what was measured they are worth {} independent ones (seed {}).{few}",
        counted_noun(fit.steps, "step"),
        fit.versions.len(),
        check.draws,
        rounded(check.effective, 0),
        fit.asked.seed
    )
}

/// Cautions that belong to expected maxima.
#[must_use]
pub fn fit_cautions(units: System) -> Vec<String> {
    [
        Caution::LighterFirst,
        Caution::SafetyArms,
        Caution::Disclaimer,
    ]
    .iter()
    .map(|caution| caution_in_words(caution, units))
    .collect()
}

/// The head of the file of a fitted person, a line each.
#[must_use]
pub fn file_head(fit: &PersonFit) -> Vec<String> {
    let mut lines = vec![
        "Fitted to measurements by `torquill fit`; values in SI.".to_owned(),
        who(fit, System::Metric),
    ];
    lines.extend(fit.data.iter().map(|datum| datum.text.clone()));
    lines
}

/// Why the file's strengths are what they are.
#[must_use]
pub fn file_reason(fit: &PersonFit) -> String {
    let texts: Vec<String> = fit.data.iter().map(|datum| datum.text.clone()).collect();
    format!("measurements: {}", texts.join("; "))
}

/// Where height and mass come from.
pub const FILE_SOURCE: &str = "as told to the program";

/// What the file says of its scatter.
pub const SCATTER_REASON: &str =
    "scatter of such people, errors of the measurements and the model's own error, after the fit";

/// What the axis of the figure measures.
pub const MAXIMUM_AXIS: &str = "Maximum";

/// What its bars are.
pub const INTERVAL_KEY: [&str; 3] = [
    "measured",
    "expected from the others",
    "people of that kind",
];

/// The words around the figure of a fit.
#[must_use]
pub fn fit_figure_words(fit: &PersonFit, units: System) -> FigureWords {
    let count = counted_noun(fit.data.len(), "measurement");
    let s = of_count(fit.data.len(), "s", "");
    let (name, narrower) = (&fit.asked.name, narrower(fit));
    let title = if fit.lifts.iter().all(|lift| lift.measured > 0) {
        format!("{count} tell{s} {name}'s maxima")
    } else if percent(narrower.abs()) == "0 %" {
        format!("{count} leave{s} {name}'s other maxima as wide as they were")
    } else if narrower < 0.0 {
        format!(
            "{count} leave{s} {name}'s other maxima {} wider",
            percent(-narrower)
        )
    } else {
        format!(
            "{count} narrow{s} {name}'s other maxima by {}",
            percent(narrower)
        )
    };
    let lines = fit.lifts.iter().map(|lift| {
        let [low, middle, high] = lift.loads_kg();
        format!(
            "{} {} ({} to {})",
            lift.title.to_lowercase(),
            load(middle, units),
            load(low, units),
            load(high, units)
        )
    });
    let lines: Vec<String> = lines.collect();
    FigureWords {
        title,
        subtitle: who(fit, units),
        footnote: "Bars hold four in five: people, measurement and the model's own error. Added load where the body is lifted."
            .to_owned(),
        description: format!("Maxima with the interval that holds four in five: {}.", lines.join("; ")),
        caption: String::new(),
    }
}

/// By how much the deviations of the maxima that were not measured shrank, on average.
fn narrower(fit: &PersonFit) -> f64 {
    let others = || fit.lifts.iter().filter(|lift| lift.measured == 0);
    let sum = |deviation: &dyn Fn(&LiftForecast) -> f64| -> f64 { others().map(deviation).sum() };
    let before = sum(&|lift| lift.before.1);
    if before > 0.0 {
        1.0 - sum(&|lift| lift.deviation) / before
    } else {
        0.0
    }
}

/// In how many versions of the lifter the first answer of a search stays first.
#[must_use]
pub fn stays_first_in_words(stays: StaysFirst) -> String {
    format!(
        "The first answer hangs what is best in {} of {} plausible versions of this lifter.",
        stays.first, stays.versions
    )
}

/// What was written, and how it is used.
#[must_use]
pub fn lifter_written_in_words(file: &str) -> String {
    format!(
        "wrote {file}; use it in any command: torquill max bench-press --lifter {file} --scatter"
    )
}
