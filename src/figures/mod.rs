//! One figure a file: results to a plot.
//!
//! In: results of studies. Out: plots of the room `plot`, or their scenes; sheets with words and data.

mod animation_stage;
mod body_lines;
mod classes;
mod data_table;
mod evenness;
mod family_curves;
mod filaments;
mod force_velocity;
mod joint_limits;
mod length_tension;
mod moment_arms;
mod muscles_add_up;
mod over_range;
mod over_way;
mod ranked_setups;
mod rep_animation;
mod rep_trace;
mod rep_versus;
mod sarcomere_chart;
mod session_fatigue;
mod session_plan;
mod session_sheet;
mod sheet;
mod strength_curve;
mod swings;
mod training_trend;
mod value_map;
mod velocity_profile;

pub use classes::{class_lifts, load_over_class, three_classes};
pub use data_table::DataTable;
pub use evenness::{against_plain, flattening, sticking_region};
pub use family_curves::{family_chart, grip_sheet, thigh_sheet};
pub use force_velocity::{curve_at_speed, force_velocity};
pub use joint_limits::joint_limits;
pub use length_tension::{active_passive_total, sarcomere_overlap, sarcomere_species};
pub use moment_arms::{fibre_lengths, moment_arms};
pub use muscles_add_up::{force_times_arm, muscles_add_up};
pub use ranked_setups::setup_ranking;
pub use rep_animation::{Animation, animation};
pub use rep_trace::{rep_over_time, rep_over_way};
pub use rep_versus::rep_versus_plain;
pub use sarcomere_chart::SarcomereChart;
pub use session_fatigue::fatigue_chart;
pub use session_plan::{loads_chart, session_chart};
pub use session_sheet::{Paper, session_sheet};
pub use sheet::{Chart, Sheet};
pub use strength_curve::strength_curve;
pub use swings::rank_chart;
pub use training_trend::trend_chart;
pub use value_map::value_map;
pub use velocity_profile::load_velocity_chart;
