//! What hangs on the bar: the law of every implement and the complete setup.
//!
//! In: implements (from model files, the command line or a setup file) and a load point. Out: the
//! force that the complete load exerts on the lifter there, the mass that moves with it, and what
//! each item contributes. Imports `error`, `source`, `units` and the load point of `movement`.

mod acceptance;
mod accepted;
mod anchor;
mod assistance;
mod band;
mod cable;
mod cam;
mod chain;
mod directions;
mod eccentric_only;
mod fitted_pull;
mod item;
mod item_bounds;
mod lever;
mod motion;
mod piece_cautions;
mod readings;
mod rubber;
mod setup;
mod sled;
mod weight;

pub use acceptance::unfit;
pub use anchor::{Anchor, NAMED_ANCHORS};
pub use assistance::Assistance;
pub use band::{Band, BandPull, CHOKE_TAKE_UP_M, Hang, Loss, SPREAD_OF_EQUAL_BANDS};
pub use cable::{Cable, Lead};
pub use cam::Cam;
pub use chain::{Chain, ChainHang, HangingChain, Leader, Links, STEEL_DENSITY_KG_M3};
pub use eccentric_only::EccentricOnly;
pub use fitted_pull::{FittedPull, PullShape};
pub use item::{HungBand, HungChain, Item};
pub use lever::{LeverMachine, Turns};
pub use motion::Motion;
pub use piece_cautions::PieceCaution;
pub use readings::{BandReading, pull_from_text};
pub use rubber::{Rubber, stretch_terms};
pub use setup::{LoadForce, Setup};
pub use sled::{Sled, along_rails_n};
pub use weight::{Felt, HangingSide, Weight};
