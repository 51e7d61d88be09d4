//! Mathematics that knows no body: splines, roots, integration, linear programmes.
//!
//! In: plain numbers, in whatever unit the caller keeps. Out: plain numbers, or a reason why there
//! are none. Nothing here knows a muscle, a joint or a load.

mod basis;
mod equilibrate;
mod linear_programme;
mod optimality;
mod planar;
mod polynomial;
mod root;
mod spline;
mod tableau;

pub use basis::Basis;
pub use linear_programme::{Failure, MAX_COLUMNS, MAX_ROWS, Programme, Solution, solve};
pub use optimality::{Residuals, residuals};
pub use planar::{CannotClose, Point, Side, TwoLinks, close_two_links};
pub use polynomial::Polynomial;
pub use root::{Boundary, bisect, brent};
pub use spline::{Beyond, Spline};
