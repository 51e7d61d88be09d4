//! One figure a file: results to a scene.
//!
//! In: plain curves, values and poses. Out: a [`crate::draw::Scene`] ready for SVG and PNG.

mod axis;
mod bars;
mod body;
mod frame;
mod heat_labels;
mod heat_map;
mod line_chart;
mod line_layout;
mod load_velocity;
mod panel;
mod panel_labels;
mod places;
mod placing;
mod pose_strip;
mod rep_animation;
mod rep_trace;
mod session_plan;
mod setup_ranking;
mod shades;
mod small_multiples;
mod stick_figure;
mod strength_curve;
mod trend;
mod words;

pub use crate::draw::Theme;
pub use axis::{Axis, Extent};
pub use bars::{Rank, Ranking, Swing, Tornado};
pub use body::stick_figure;
pub use frame::{Heading, Look, Size};
pub use heat_map::{HeatMap, MapStyle};
pub use line_chart::{Fill, Labels, Level, LineChart, Marker, Panel, Role, Series};
pub use load_velocity::load_velocity_chart;
pub use pose_strip::Pose;
pub use rep_animation::animation;
pub use rep_trace::{rep_over_time, rep_over_way, rep_sentences, rep_title};
pub use session_plan::{fatigue_chart, session_chart};
pub use setup_ranking::{ranking_description, ranking_title, setup_ranking};
pub use shades::Shade;
pub use small_multiples::{SmallMultiples, SmallPanel};
pub use stick_figure::{Limb, Load, StickFigure};
pub use strength_curve::{description, strength_curve, title};
pub use trend::trend_chart;
