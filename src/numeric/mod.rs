//! Mathematics that knows no body: splines, roots, integration, linear programmes.
//!
//! In: plain numbers, in whatever unit the caller keeps. Out: plain numbers, or a reason why there
//! are none. Nothing here knows a muscle, a joint or a load.

mod basis;
mod belief;
mod crossing;
pub mod equilibrate;
mod factors;
mod formula;
mod integrate;
pub mod kendall;
mod least_squares;
pub mod ledger;
mod linear_fit;
mod linear_programme;
pub mod local_polynomial;
mod minimum;
pub mod parabola;
mod planar;
mod polynomial;
pub mod shapley;
mod simplex;
mod spline;
mod statistics;
mod tableau;
mod vertex;

pub use basis::SimplexBasis;
pub use belief::{Belief, NormalDensity, NormalStream, Observation};
pub use crossing::{Boundary, bisect, brent};
pub use formula::Formula;
pub use integrate::{Arrival, Steps, integrate};
pub use kendall::kendall_spread;
pub use least_squares::{Fit, Interval, best_fit, fit};
pub use ledger::Ledger;
pub use linear_fit::fit_linear;
pub use linear_programme::{MAX_COLUMNS, MAX_ROWS, Programme};
pub use local_polynomial::smoothed;
pub use minimum::{Least, golden_section, lowest_valley};
pub use parabola::vertex_between;
pub use planar::{BendSide, Point, TwoLinks, close_two_links};
pub use polynomial::Polynomial;
pub use shapley::shapley_shares;
pub use simplex::{Failure, Solution, solve};
pub use spline::{Beyond, Spline};
pub use statistics::{
    RegressionLine, RobustLine, linear_regression, mean_and_deviation, median, normal_quantile,
    quantile, range_mean, theil_sen,
};
