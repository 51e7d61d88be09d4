//! One figure a file: results to a plot.
//!
//! In: results of studies. Out: plots of the room `plot`, or their scenes.

pub(crate) mod accommodating;
mod body;
pub(crate) mod classes;
mod data_table;
mod desk;
mod family;
pub(crate) mod force_velocity;
pub(crate) mod joint_limits;
pub(crate) mod length_tension;
pub(crate) mod load_over_class;
mod load_velocity;
pub(crate) mod moment_arm;
pub(crate) mod muscles_add_up;
mod ranks;
mod rep_animation;
mod rep_trace;
mod rep_versus;
mod sarcomere_chart;
mod session_fatigue;
mod session_plan;
mod session_sheet;
mod setup_ranking;
mod sheet;
mod strength_curve;
mod trend;
mod value_map;
pub(crate) mod variations;

pub use body::stick_figure;
pub use data_table::DataTable;
pub use desk::{Desk, HARD_EFFORT, Lift};
pub use family::{family_chart, family_title};
pub use load_velocity::load_velocity_chart;
pub use ranks::rank_chart;
pub use rep_animation::{Animation, animation};
pub use rep_trace::{rep_over_time, rep_over_way};
pub use rep_versus::{rep_versus_plain, versus_sentences};
pub use sarcomere_chart::SarcomereChart;
pub use session_fatigue::fatigue_chart;
pub use session_plan::{loads_chart, session_chart};
pub use session_sheet::{Paper, session_sheet};
pub use setup_ranking::{ranking_description, ranking_title, setup_ranking};
pub use sheet::{Chart, Sheet};
pub use strength_curve::{description, strength_curve, title};
pub use trend::trend_chart;
pub use value_map::value_map;

/// A heading without words but those that only the drawing knows the place of.
fn phrases() -> crate::plot::Heading {
    crate::plot::Heading {
        beyond: "continues to".to_owned(),
        left_out: "more not shown".to_owned(),
        ..crate::plot::Heading::default()
    }
}
