//! What to hang: every setup that a gym can build, judged and ranked.
//!
//! In: a gym, a movement's load points, what force costs there, a wish. Out: the best setups, the
//! non-dominated ones, or the nearest miss. Imports `error`, `source`, `units`, `movement`, `resistance`.

pub mod band_failure;
mod buildable;
mod choose;
mod combination;
mod cost_field;
mod exact;
mod found;
mod gym;
mod gym_file;
mod gym_slips;
mod hung_pair;
mod judged;
mod kernel;
mod left_out;
mod limits;
mod loaded_setup;
mod loading;
mod loadings;
mod makeable;
pub mod new_gym;
mod plate_sums;
mod safety_limits;
mod score;
mod search;
mod setup_family;
mod shares;
mod sums;
mod usual_cautions;
mod usual_gym;
mod wish;

pub use band_failure::{BandFailure, BandsOverRange, band_failure};
pub use buildable::{AllowedPieces, LEAST_PULL_N};
pub use choose::{Choosing, Counts, Missed, choose};
pub use cost_field::CostField;
pub use gym::Gym;
pub use gym_file::{GymArms, GymBands, GymBar, GymChains, GymFile, GymPlates, GymSled, GymStack};
pub use gym_slips::slips;
pub use hung_pair::hung_pairs;
pub use judged::{Gap, SetupLimit};
pub use left_out::{LeftOut, LeftOutPieces, LeftOutReason, WayOfHanging};
pub use loaded_setup::LoadedSetup;
pub use loading::{FULL_SIZE_KG, LoadUse, LoadedOn, Loading};
pub use loadings::Loadings;
pub use new_gym::{NONE, NewGym};
pub use plate_sums::MOST_PLATES_A_SIDE;
pub use safety_limits::{ArmsStand, FINISHED, LeftByBands, SafetyLimits};
pub use search::Watch;
pub use setup_family::SetupFamily;
pub use usual_cautions::{Caution, OF_BANDS, Uses, setup_cautions, usual_cautions};
pub use usual_gym::{usual_gym, usual_gym_with_light_bars};
pub use wish::{Goal, LoadLimit, MOST_HUNG, STUDIED_SHARES, Wish};
