//! Mathematics that knows no body: splines, roots, integration, linear programmes.
//!
//! In: plain numbers, in whatever unit the caller keeps. Out: plain numbers, or a reason why there
//! are none. Nothing here knows a muscle, a joint or a load.

mod basis;
mod equilibrate;
mod factors;
mod integrate;
mod least_squares;
mod linear_fit;
mod linear_programme;
mod optimality;
mod piecewise;
mod planar;
mod polynomial;
mod root;
mod search;
mod slope;
mod spline;
mod statistics;
mod tableau;

pub use basis::Basis;
pub use integrate::{Arrival, Steps, integrate, quadrature, runge_kutta_step};
pub use least_squares::{Fit, Interval, best_fit, fit};
pub use linear_fit::{fit_linear, fit_polynomial};
pub use linear_programme::{Failure, MAX_COLUMNS, MAX_ROWS, Programme, Solution, solve};
pub use optimality::{Residuals, residuals};
pub use piecewise::Piecewise;
pub use planar::{CannotClose, Point, Side, TwoLinks, close_two_links};
pub use polynomial::Polynomial;
pub use root::{Boundary, bisect, brent};
pub use search::{Least, golden_section, lowest_valley};
pub use slope::{jacobian_at, slope_at};
pub use spline::{Beyond, Spline};
pub use statistics::{
    Line, RobustLine, linear_regression, mean, median, normal_quantile, population_deviation,
    quantile, sample_deviation, theil_sen,
};
