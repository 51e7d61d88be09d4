//! What to hang: every setup that a gym can build, judged and ranked.
//!
//! In: a gym, a movement's load points, what force costs there, a wish. Out: the best setups, the
//! non-dominated ones, or the nearest miss. Imports `error`, `source`, `units`, `movement`, `resistance`.

mod buildable;
mod choose;
mod combination;
mod cost_field;
mod exact;
mod found;
mod gym;
mod gym_faults;
mod hung_pair;
mod kernel;
mod limits;
mod loaded_setup;
mod loading;
mod loadings;
mod makeable;
mod plate_sums;
mod score;
mod search;
mod sums;
mod usual_cautions;
mod usual_gym;
mod wish;

pub use buildable::Allowed;
pub use choose::{Choosing, Counts, Missed, choose};
pub use cost_field::CostField;
pub use gym::{
    BandRecord, BarRecord, ChainRecord, Gym, GymFile, PlateRecord, SledRecord, StackRecord,
};
pub use gym_faults::GymFault;
pub use hung_pair::hung_pairs;
pub use limits::{Gap, Limit};
pub use loaded_setup::LoadedSetup;
pub use loading::{LoadedOn, Loading};
pub use loadings::Loadings;
pub use plate_sums::MOST_PLATES_A_SIDE;
pub use search::Watch;
pub use usual_cautions::{Caution, Uses, setup_cautions, usual_cautions};
pub use usual_gym::usual_gym;
pub use wish::{Goal, LoadLimit, MOST_HUNG, STUDIED_SHARES, Wish};
