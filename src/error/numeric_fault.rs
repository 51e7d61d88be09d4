//! What the mathematics cannot do.
//!
//! In: numbers, where the fault arises. Out: facts that `narrative` puts into words.

/// A part of a linear programme.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ProgrammePart {
    /// The right side.
    RightSide,
    /// The coefficients of the column with this index.
    Column(usize),
}

/// What a linear programme cannot take, or why it has no answer.
#[derive(Debug, Clone, PartialEq)]
pub enum ProgrammeFault {
    /// A linear programme with no row, or with too many.
    Rows {
        /// Rows asked for.
        asked: usize,
        /// The most there can be.
        most: usize,
    },
    /// A linear programme with too many columns.
    Columns {
        /// The most there can be.
        most: usize,
    },
    /// A column of a linear programme with a cost or a bound that is no number.
    ColumnNotNumbers {
        /// Index of the column.
        column: usize,
        /// Its cost.
        cost: f64,
        /// Its lower bound.
        lower: f64,
        /// Its upper bound.
        upper: f64,
    },
    /// A part of a linear programme that has not one number a row.
    Length {
        /// Which part.
        part: ProgrammePart,
        /// Rows of the programme.
        rows: usize,
        /// Numbers given.
        given: usize,
    },
    /// A number in a linear programme that is not finite.
    NotFinite {
        /// Where it stands.
        part: ProgrammePart,
        /// In which row.
        row: usize,
        /// The number.
        value: f64,
    },
    /// No choice of the variables satisfies every row and bound of a linear programme.
    Infeasible,
    /// The objective of a linear programme can grow for ever.
    Unbounded,
    /// Rounding errors kept a linear programme from an answer that could be verified.
    Stalled,
}

/// Why nothing can be fitted to data.
#[derive(Debug, Clone, PartialEq)]
pub enum FitFault {
    /// Rows of a linear fit that are missing or of different length.
    UnevenTerms {
        /// How many data there are.
        data: usize,
    },
    /// Fewer data than coefficients.
    TooFewData {
        /// How many data there are.
        data: usize,
        /// How many coefficients.
        count: usize,
    },
    /// A number of a linear fit that is not finite.
    NotFinite,
    /// Terms that the data cannot tell apart.
    TermsAlike {
        /// How many coefficients the data fix.
        rank: usize,
        /// How many there are.
        count: usize,
    },
    /// A fit without a start.
    NoStart,
    /// Not one interval for each parameter of a fit.
    UnevenIntervals {
        /// How many intervals.
        intervals: usize,
        /// How many parameters.
        parameters: usize,
    },
    /// A start of a fit outside its interval.
    StartOutside {
        /// Index of the parameter.
        parameter: usize,
        /// Where it starts.
        start: f64,
        /// Lower end of its interval.
        low: f64,
        /// Upper end of its interval.
        high: f64,
    },
    /// A start of a fit without finite residuals.
    StartNotFinite {
        /// How many residuals there are.
        residuals: usize,
    },
    /// A confidence outside 0 to 1.
    ConfidenceOutside {
        /// The confidence.
        confidence: f64,
    },
    /// A share outside 0 to 1.
    ShareOutside {
        /// The share.
        share: f64,
    },
    /// A point for a line that is not finite.
    LinePointNotFinite {
        /// Which point, counted from 1.
        point: usize,
        /// Its `x`.
        x: f64,
        /// Its `y`.
        y: f64,
    },
    /// Points for a line that all stand at one place.
    LineOfOnePlace {
        /// How many points.
        points: usize,
    },
}

/// Why two links do not close between two places; lengths in the unit of whoever asked.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum LinksFault {
    /// The target is too far: even straight, the links do not reach it.
    TooFar {
        /// Distance that the straight links span.
        reach: f64,
        /// Distance of the target.
        needed: f64,
    },
    /// The target is too near: even folded, the longer link passes it.
    TooNear {
        /// Distance that the folded links span.
        nearest: f64,
        /// Distance of the target.
        needed: f64,
    },
    /// Links of one length with the target on the start: folded, in no particular direction.
    NoDirection,
    /// A length that is not positive, or a coordinate that is not finite.
    NotNumbers,
}

/// What the mathematics cannot do.
#[derive(Debug, Clone, PartialEq)]
pub enum NumericFault {
    /// With a linear programme.
    Programme(ProgrammeFault),
    /// With a fit or a line through data.
    Fit(FitFault),
    /// A stretch of time that cannot be stepped through.
    NoSteps {
        /// Time at the start, s.
        start: f64,
        /// Time at the end, s.
        end: f64,
        /// Length of a step, s.
        step: f64,
    },
    /// A motion without a finite state.
    MotionNotFinite {
        /// Since when, s.
        time: f64,
        /// The part of the state that is not finite.
        value: f64,
    },
    /// A polynomial without a coefficient.
    NoCoefficient,
    /// A coefficient of a polynomial that is not finite.
    CoefficientNotFinite {
        /// Its power.
        power: usize,
        /// The coefficient.
        value: f64,
    },
    /// Too few points for a curve.
    TooFewPoints {
        /// How many there are.
        points: usize,
    },
    /// A point of a curve that is not finite.
    PointNotFinite {
        /// Which point, counted from 1.
        point: usize,
        /// Its `x`.
        x: f64,
        /// Its `y`.
        y: f64,
    },
    /// Two points of a curve at one place, or out of order.
    PointsNotRising {
        /// The first of the two, counted from 1.
        first: usize,
        /// Its `x`.
        left: f64,
        /// `x` of the next.
        right: f64,
    },
    /// Ends between which nothing can be searched.
    NoInterval {
        /// Lower end.
        low: f64,
        /// Upper end.
        high: f64,
    },
    /// An answer that is alike at both ends.
    NoChange {
        /// Lower end.
        low: f64,
        /// Upper end.
        high: f64,
        /// The answer.
        holds: bool,
    },
    /// A function without a value where its zero is looked for.
    NoZero {
        /// Where.
        place: f64,
    },
    /// A zero that was not found in time.
    NoZeroFound {
        /// Lower end.
        low: f64,
        /// Upper end.
        high: f64,
        /// Steps taken.
        steps: usize,
    },
    /// A function with one sign at both ends.
    OneSign {
        /// Place and value at both ends.
        ends: [(f64, f64); 2],
    },
    /// A search that looks at no piece.
    NoPiece,
    /// A function without a value where its minimum is looked for.
    NoMinimum {
        /// Where.
        place: f64,
    },
}
