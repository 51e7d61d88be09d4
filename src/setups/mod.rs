//! What to hang: every setup that a gym can build, judged and ranked.
//!
//! In: a gym, a movement's load points, what force costs there, a wish. Out: the best setups, the
//! non-dominated ones, or the nearest miss. Imports `error`, `source`, `units`, `movement`, `resistance`.

mod buildable;
mod cautions;
mod gym;
mod loading;
mod ranking;
mod score;
mod sums;
mod wish;

pub use buildable::{Allowed, Hanging, MOST_LEAN_DEG, Rack, hung_in_words};
pub use cautions::{Uses, cautions};
pub use gym::{
    BandRecord, BarRecord, ChainRecord, Gym, GymFault, GymFile, PlateRecord, SledRecord,
    StackRecord,
};
pub use loading::{Loading, Loadings, MOST_PLATES_A_SIDE, mass_in_words};
pub use ranking::{Candidate, Combination, Found, Merit, Miss, Watch, search};
pub use score::{Gap, Judged, Kernel, Limit, steady};
pub use sums::Field;
pub use wish::{Goal, LoadLimit, MOST_HUNG, STUDIED_SHARES, Wish};
