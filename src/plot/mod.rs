//! Axes, panels, labels, placing: the kit of which figures are made. It knows no body.
//!
//! In: plain curves, values, poses as lines. Out: a [`crate::draw::Scene`] ready for SVG and PNG.

pub(crate) mod axis;
mod bars;
mod body_marks;
mod body_panel;
mod body_panels;
mod common_table;
pub(crate) mod frame;
mod heat_drawing;
mod heat_field;
mod heat_labels;
mod heat_map;
mod intervals;
mod label_places;
mod label_wishes;
mod line_chart;
mod line_drawing;
mod line_layout;
mod name_column;
pub(crate) mod panel;
mod panel_contents;
pub(crate) mod panel_labels;
pub mod placing;
mod pose_strip;
mod shades;
mod small_multiples;
mod spans;
mod standing_poses;
mod stick_figure;
mod waterfall;
mod word_page;
pub(crate) mod words;

pub use axis::{Axis, Extent, Time};
pub use bars::{Swing, Tornado};
pub use body_marks::BodyMark;
pub use body_panel::{BodyPanel, CommonTable};
pub use body_panels::{BodyPanels, ColourKey};
pub use frame::{DATA_SHARE, Heading, Look, Size};
pub use heat_map::HeatMap;
pub use intervals::{IntervalChart, IntervalRow};
pub use line_chart::{Labels, LineChart, WholeCurve};
pub use panel_contents::{Fill, LevelLine, Marker, Panel, Role, Series, Span};
pub use pose_strip::StripPose;
pub use shades::Shade;
pub use small_multiples::{SmallMultiples, SmallPanel};
pub use stick_figure::{DrawnLoad, StickFigure};
pub use waterfall::{Waterfall, WaterfallStep};
pub use word_page::WordPage;
