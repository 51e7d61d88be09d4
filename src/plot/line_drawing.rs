//! A chart of curves as a scene: names beside their curves if there is room, else in a column at the right.
//!
//! In: a [`LineChart`] and a look. Out: a scene.

use super::axis::{self, Plot};
use super::frame::{Frame, Look};
use super::line_chart::{Labels, LineChart};
use super::line_layout;
use super::panel;
use super::panel_labels::{self, Crowded};
use super::pose_strip;
use super::shades;
use super::spans;
use crate::draw::Scene;
use crate::error::Result;

impl LineChart {
    /// The chart as a scene.
    ///
    /// # Errors
    /// If there is no panel or no curve, or a value is no number.
    pub fn scene(&self, look: Look) -> Result<Scene> {
        self.placed(look).map(|(scene, _)| scene)
    }

    /// The chart as a scene, and the place of its first panel in it.
    ///
    /// # Errors
    /// As [`LineChart::scene`].
    pub(crate) fn placed(&self, look: Look) -> Result<(Scene, Plot)> {
        self.check()?;
        if self.labels == Labels::Auto && self.most_names() <= 4 {
            let (drawn, clear) = self.drawn(look, false)?;
            if clear {
                return Ok(drawn);
            }
        }
        Ok(self.drawn(look, true)?.0)
    }

    /// Draws everything; also tells whether all names found a place clear of curves.
    fn drawn(&self, look: Look, column_wanted: bool) -> Result<((Scene, Plot), bool)> {
        let mut frame = Frame::new(look, &self.heading);
        let layout = line_layout::plan(self, &frame, column_wanted)?;
        for (index, place) in layout.panels.iter().enumerate() {
            let row = layout.shade_row.filter(|_| index == 0);
            shades::draw_ground(&mut frame, &self.shades, &place.plot, row);
        }
        let mut clear = true;
        let mut tick_boxes = Vec::new();
        for (index, (panel, place)) in self.panels.iter().zip(&layout.panels).enumerate() {
            let is_lowest = index + 1 == layout.panels.len();
            axis::draw_upright(&mut frame, &place.plot, &place.ticks);
            tick_boxes = axis::draw_level(&mut frame, &place.plot, &self.x, is_lowest);
            let title = axis::upright_title(&frame, &panel.axis, place.title_baseline);
            frame.scene.text(title);
            spans::draw(&mut frame, &panel.spans, &place.plot);
            panel::draw_curves(&mut frame, panel, &place.plot);
            let column = layout.column;
            let unclear = panel_labels::draw(&mut frame, panel, &place.plot, column, Crowded::Dim);
            clear &= unclear.is_empty();
        }
        let (first, lowest) = (&layout.panels[0], &layout.panels[layout.panels.len() - 1]);
        if let Some(row) = layout.shade_row {
            shades::draw_labels(&mut frame, &self.shades, &first.plot, row);
        }
        let strip = &layout.strip;
        pose_strip::draw(
            &mut frame,
            &self.x,
            &self.poses,
            &lowest.plot,
            strip,
            &tick_boxes,
        );
        Ok(((frame.scene, first.plot), clear))
    }
}
