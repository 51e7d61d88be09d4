//! What the axes of figures say.
//!
//! In: nothing. Out: the names of quantities that need no study; the others a telling answers.

/// Quantity and unit of an axis.
pub type AxisWords = (String, &'static str);

/// The whole curves beside those of which an axis shows a part: quantity and unit.
pub const WHOLE_CURVE: (&str, &str) = ("Whole", "% of peak");

/// What stands in the part of the whole curves that the large panel shows.
pub const SHOWN_AT_THE_LEFT: &str = "shown at the left";

/// The range in percent, shared by lifts of different travel.
pub const WHOLE_RANGE: &str = "Range of the lift, from start to end";

/// A quantity over a lift's own median.
#[must_use]
pub fn over_median(quantity: &str) -> String {
    format!("{quantity}, share of the lift's median")
}

/// What the level line through a lift's median is.
pub const MEDIAN: &str = "median";
/// A load over the lift's own median capacity.
pub const LOAD_OVER_MEDIAN: &str = "Share of the median capacity";

/// How much of a joint's strength a load takes.
pub const MORE_LOAD: &str = "More load by 1 % more strength";
/// The lever of a muscle.
pub const MOMENT_ARM: &str = "Moment arm";
/// Fibre length over the optimal one, on an upright axis.
pub const FIBRE_LENGTH: &str = "Fibre length, share of the optimal one";
/// Fibre length over the optimal one, on a level axis.
pub const FIBRE_LENGTH_OPTIMAL: &str = "Fibre length, share of the optimal one";
/// A force over what the words around the figure say.
pub const FORCE: &str = "Force";
/// A force over the greatest active one.
pub const GREATEST_ACTIVE_FORCE: &str = "Force, share of the greatest active one";
/// A force over the isometric one.
pub const ISOMETRIC_FORCE: &str = "Force, share of the isometric one";
/// Speed of a fibre over its fastest shortening.
pub const SHORTENING_SPEED: &str = "Speed of shortening, share of the fastest; below 0 lengthening";
/// A quantity over its own greatest value.
pub const OWN_GREATEST: &str = "Share of its own greatest value";
