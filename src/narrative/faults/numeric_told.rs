//! Words for: what the mathematics cannot do.

use super::Told;
use crate::error::{FitFault, NumericFault, ProgrammeFault, ProgrammePart};

/// The fault in words.
pub(super) fn told(fault: &NumericFault) -> Told {
    let told = Told::new(message(fault));
    match fault {
        NumericFault::MotionNotFinite { .. } => {
            told.hint("shorten the step, or look at the forces near that time")
        }
        NumericFault::Fit(FitFault::TermsAlike { .. }) => {
            told.hint("leave a term out, or add data where the terms differ")
        }
        NumericFault::PointsNotRising { .. } => {
            told.hint("sort the points and leave one at each place")
        }
        _ => told,
    }
}

fn part_in_words(part: ProgrammePart) -> String {
    match part {
        ProgrammePart::RightSide => "the right side".to_owned(),
        ProgrammePart::Column(column) => format!("column {column}"),
    }
}

/// What is wrong, in one sentence.
fn message(fault: &NumericFault) -> String {
    use NumericFault as F;
    match fault {
        F::Programme(fault) => of_programme(fault),
        F::Fit(fault) => of_fit(fault),
        F::NoSteps { start, end, step } => {
            format!("cannot step from {start} to {end} in steps of {step}")
        }
        F::MotionNotFinite { time, value } => {
            format!("the motion has no finite state at {time}: one part of it is {value}")
        }
        F::NoCoefficient => "a polynomial needs at least one coefficient".to_owned(),
        F::CoefficientNotFinite { power, value } => {
            format!("the coefficient of x^{power} is {value}, which is no finite number")
        }
        F::TooFewPoints { points } => format!("a curve needs at least 2 points, not {points}"),
        F::PointNotFinite { point, x, y } => {
            format!("point {point} of a curve is ({x}, {y}): not finite")
        }
        F::PointsNotRising { first, left, right } => format!(
            "points {first} and {} of a curve stand at {left} and {right}: not in rising order",
            first + 1
        ),
        F::NoInterval { low, high } => format!("{low} to {high} is no interval to search in"),
        F::NoChange { low, high, holds } => format!(
            "the answer is {} both at {low} and at {high}, so it changes nowhere known between",
            if *holds { "yes" } else { "no" }
        ),
        F::NoZero { place } => {
            format!("the function has no value at {place}, so its zero cannot be found")
        }
        F::NoZeroFound { low, high, steps } => {
            format!("no zero found between {low} and {high} in {steps} steps")
        }
        F::OneSign { ends: [a, b] } => format!(
            "the function is {:.6e} at {} and {:.6e} at {}: no change of sign between",
            a.1, a.0, b.1, b.0
        ),
        F::NoPiece => "a search needs at least one piece to look at".to_owned(),
        F::NoMinimum { place } => {
            format!("the function has no value at {place}, so its minimum cannot be found")
        }
    }
}

/// Faults of linear programmes.
fn of_programme(fault: &ProgrammeFault) -> String {
    use ProgrammeFault as F;
    match fault {
        F::Rows { asked, most } => {
            format!("a linear programme needs 1 to {most} rows, not {asked}")
        }
        F::Columns { most } => format!("a linear programme takes at most {most} columns"),
        F::ColumnNotNumbers { column, cost, lower, upper } => format!(
            "column {column} of a linear programme has cost {cost} and bounds {lower} to {upper}: not all are numbers"
        ),
        F::Length { part, rows, given } => format!(
            "{} of a linear programme with {rows} rows has {given} numbers",
            part_in_words(*part)
        ),
        F::NotFinite { part, row, value } => format!(
            "{} of a linear programme has {value} in row {row}, which is no finite number",
            part_in_words(*part)
        ),
        F::Infeasible => {
            "linear programme: no choice of the variables satisfies every row and every bound".to_owned()
        }
        F::Unbounded => {
            "linear programme: the objective can grow without limit: some variable lacks a bound".to_owned()
        }
        F::Stalled => {
            "linear programme: rounding errors kept the linear programme from an answer that could be verified".to_owned()
        }
    }
}

/// Faults of fits and lines.
fn of_fit(fault: &FitFault) -> String {
    use FitFault as F;
    match fault {
        F::UnevenTerms { data } => format!(
            "a linear fit needs one row of terms, all of one length, for each of the {data} data"
        ),
        F::TooFewData { data, count } => format!("{data} data cannot fix {count} coefficients"),
        F::NotFinite => "a linear fit met a number that is not finite".to_owned(),
        F::TermsAlike { rank, count } => format!(
            "the data fix only {rank} of {count} coefficients: some terms cannot be told apart"
        ),
        F::NoStart => "a fit needs at least one start".to_owned(),
        F::UnevenIntervals {
            intervals,
            parameters,
        } => {
            format!("a fit needs one interval a parameter, not {intervals} for {parameters}")
        }
        F::StartOutside {
            parameter,
            start,
            low,
            high,
        } => {
            format!("parameter {parameter} starts at {start}, outside its interval {low} to {high}")
        }
        F::StartNotFinite { residuals } => format!(
            "the fit cannot start: of {residuals} residuals at the start not all are finite"
        ),
        F::ConfidenceOutside { confidence } => {
            format!("a confidence lies between 0 and 1, {confidence} does not")
        }
        F::ShareOutside { share } => {
            format!("a normal quantile needs a share between 0 and 1, not {share}")
        }
        F::LinePointNotFinite { point, x, y } => {
            format!("point {point} for a line is ({x}, {y}): not finite")
        }
        F::LineOfOnePlace { points } => {
            format!("a line needs points at two different places at least, these {points} have one")
        }
    }
}
