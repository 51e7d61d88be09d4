//! Axes, panels, labels, placing: the kit of which figures are made. It knows no body.
//!
//! In: plain curves, values, poses as lines. Out: a [`crate::draw::Scene`] ready for SVG and PNG.

pub(crate) mod axis;
mod bars;
pub(crate) mod frame;
mod heat_field;
mod heat_labels;
mod heat_map;
pub(crate) mod line_chart;
mod line_layout;
mod name_column;
pub(crate) mod panel;
pub(crate) mod panel_labels;
mod places;
mod placing;
mod pose_strip;
mod shades;
mod small_multiples;
mod spans;
mod stick_figure;
pub(crate) mod words;

pub use axis::{Axis, Extent};
pub use bars::{Rank, Ranking, Swing, Tornado};
pub use frame::{Heading, Look, Size};
pub use heat_map::{HeatMap, MapStyle};
pub use line_chart::{Fill, Labels, Level, LineChart, Marker, Panel, Role, Series};
pub use pose_strip::Pose;
pub use shades::Shade;
pub use small_multiples::{SmallMultiples, SmallPanel};
pub use spans::Span;
pub use stick_figure::{Limb, Load, StickFigure};
