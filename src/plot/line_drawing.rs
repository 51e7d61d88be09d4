//! A chart of curves as a scene: names beside their curves if there is room, else in a column at the right.
//!
//! In: a [`LineChart`] and a look. Out: a scene. Data keep their share of the height: poses go first where the size has
//! no room for everything, then the note, then the line below the title.

use super::axis::{self, Plot, Time};
use super::frame::{Frame, Look};
use super::line_chart::{Labels, LineChart, WholeCurve};
use super::line_layout::{self, Layout, PanelPlace, PlanWanted};
use super::panel;
use super::panel_contents::Panel;
use super::panel_labels::{self, Around, Crowded};
use super::pose_strip::{self, StripPose};
use super::shades;
use super::spans;
use super::standing_poses::StandingPoses;
use super::stick_figure::{self, StickFigure, StickScale};
use super::words::WordBlock;
use crate::draw::scale::number;
use crate::draw::{Face, Layer, Rect, Scene, Stroke, Text, TextAnchor, lettering};
use crate::error::{LeftOff, Result};

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
    fn drawn(&self, look: Look, column: bool) -> Result<((Scene, Plot), bool)> {
        let plots = |frame: &Frame| line_layout::plots_height(self, frame);
        let mut frame = Frame::roomy(look, &self.heading, plots);
        let inside = line_layout::plan(
            self,
            &frame,
            PlanWanted {
                column,
                strip: false,
            },
        )?;
        let lowest = self.panels.len() - 1;
        let plot = inside.panels[lowest].plot;
        let standing = StandingPoses::fitting(&frame, &self.panels[lowest], &plot, &self.poses);
        let layout = match standing {
            Some(_) => inside,
            None => line_layout::plan(
                self,
                &frame,
                PlanWanted {
                    column,
                    strip: true,
                },
            )?,
        };
        if standing.is_none() && layout.strip.is_none() && !self.poses.is_empty() {
            frame.scene.left_off.insert(0, LeftOff::Poses);
        }
        let clear = self.draw_parts(&mut frame, &layout, standing.as_ref());
        Ok(((frame.scene, layout.panels[0].plot), clear))
    }

    /// Draws ground, axes, curves, words and poses where they were planned.
    fn draw_parts(
        &self,
        frame: &mut Frame,
        layout: &Layout,
        standing: Option<&StandingPoses>,
    ) -> bool {
        for place in &layout.panels {
            shades::draw_ground(frame, &self.shades, &place.plot);
        }
        if let (Some(whole), Some(place)) = (&self.whole, &layout.whole) {
            self.draw_whole(frame, whole, place);
        }
        if !self.beside.is_empty() {
            self.draw_beside(frame, layout);
        }
        let mut clear = true;
        let mut tick_boxes = Vec::new();
        let lowest = layout.panels.len() - 1;
        for (index, (panel, place)) in self.panels.iter().zip(&layout.panels).enumerate() {
            tick_boxes = self.draw_axes(frame, panel, place, index == lowest);
            let standing = standing.filter(|_| index == lowest);
            if let Some(standing) = standing {
                standing.draw(frame);
            }
            spans::draw(frame, &panel.spans, &place.plot);
            panel::draw_curves(frame, panel, &place.plot);
            let around = Around {
                taken: standing.iter().flat_map(|poses| poses.boxes()).collect(),
                edges: shades::edges(frame, &self.shades, &place.plot),
                grid: place
                    .ticks
                    .iter()
                    .map(|(value, _)| place.plot.y.px(*value))
                    .collect(),
            };
            let unclear = panel_labels::draw_around(
                frame,
                panel,
                &place.plot,
                layout.column,
                Crowded::Dim,
                &around,
            );
            clear &= unclear.is_empty();
        }
        if let Some(row) = layout.shade_row {
            shades::draw_labels(frame, &self.shades, &layout.panels[0].plot, row);
        }
        let plot = &layout.panels[lowest].plot;
        let strip = layout.strip.as_ref();
        pose_strip::draw(frame, &self.x, &self.poses, plot, strip, &tick_boxes);
        clear
    }

    /// Figures in the column at the right, as high as all panels together.
    fn draw_beside(&self, frame: &mut Frame, layout: &Layout) {
        /// Room between a figure and its words, in gaps; between these and the next figure are two.
        const BELOW: f64 = 0.9;
        let (text, gap) = (frame.measures.text, frame.measures.gap);
        let (Some(first), Some(last)) = (layout.panels.first(), layout.panels.last()) else {
            return;
        };
        let column = Rect {
            left: frame.body.right - line_layout::beside_width(self, frame) + 2.0 * gap,
            top: first.plot.area.top,
            right: frame.body.right,
            bottom: last.plot.area.bottom,
        };
        let cell = column.height() / self.beside.len() as f64;
        let (most, ink) = (column.width(), frame.colours.ink);
        let fitted =
            |pose: &StripPose| WordBlock::fitted(&pose.caption, [text, 0.7 * text], ink, most, 2);
        let captions: Vec<WordBlock> = self.beside.iter().map(fitted).collect();
        let lines = captions.iter().map(WordBlock::line_count).max();
        let caption = lines.unwrap_or(0) as f64 * lettering::line_step(text) + BELOW * gap;
        let figures: Vec<&StickFigure> = self.beside.iter().map(|pose| &pose.figure).collect();
        let room = cell - caption - 2.0 * gap;
        let Some(scale) = StickScale::fitting(&figures, column.width(), room.max(1.0)) else {
            return;
        };
        let before = frame.scene.begin(Layer::Axis);
        let at = [column.centre()[0], first.title_baseline];
        let title = frame.axis_text(at, &self.beside_title);
        frame.scene.text(title.anchored(TextAnchor::Middle));
        frame.scene.begin(Layer::Pose);
        for (number, pose) in self.beside.iter().enumerate() {
            let top = column.top + number as f64 * cell;
            // Figures stand on one level: below that their words are nearer to them than to the next.
            let row = Rect {
                top: top + room + BELOW * gap,
                ..column
            };
            captions[number].draw(&mut frame.scene, &row, TextAnchor::Middle);
            let area = Rect {
                top,
                bottom: top + room,
                ..column
            };
            stick_figure::draw(frame, &pose.figure, &scale, &area);
        }
        frame.scene.begin(before);
    }

    /// Both axes of a panel with their words; the boxes of the level ticks.
    fn draw_axes(
        &self,
        frame: &mut Frame,
        panel: &Panel,
        place: &PanelPlace,
        is_lowest: bool,
    ) -> Vec<Rect> {
        axis::draw_upright(frame, &place.plot, &place.ticks);
        // Bars below zero are no values: the axis stands above them, unless its labels have to stand below.
        let mut level = place.plot;
        let zero = level.y.px(0.0);
        if !panel.spans.is_empty() && !is_lowest && zero < level.area.bottom {
            level.area.bottom = zero;
        }
        let boxes = axis::draw_level(frame, &level, &self.x, is_lowest);
        axis::draw_time_arrow(frame, &level, &self.x);
        let before = frame.scene.begin(Layer::Axis);
        let title = axis::upright_title(frame, &panel.axis, place.title_baseline);
        frame.scene.text(title);
        frame.scene.begin(before);
        frame.scene.plots.push(place.plot.area);
        boxes
    }

    /// The ends of the level axis, the one at the right with its unit: all that the narrow panel has room for.
    fn ends(&self, [low, high]: [f64; 2]) -> Vec<(f64, String)> {
        let (left, right) = match self.x.time {
            Time::Falling => (high, low),
            Time::None | Time::Rising => (low, high),
        };
        let end = format!("{} {}", number(right, 0), self.x.unit);
        vec![(left, number(left, 0)), (right, end.trim_end().to_owned())]
    }

    /// The whole curves in their narrow panel, with a frame around what the large one shows.
    fn draw_whole(&self, frame: &mut Frame, whole: &WholeCurve, place: &PanelPlace) {
        let plot = &place.plot;
        axis::draw_upright(frame, plot, &place.ticks);
        axis::draw_level_ticks(frame, plot, &self.ends(plot.x.range()), true);
        axis::draw_time_arrow(frame, plot, &self.x);
        let before = frame.scene.begin(Layer::Axis);
        let text = frame.measures.text;
        let left = plot.area.left - axis::upright_column_width(frame, &place.ticks);
        let most = frame.body.right - left;
        let words = whole.axis.title_within(text, most);
        let title = frame.axis_text([left, place.title_baseline], &words);
        frame.scene.text(title);
        frame.scene.begin(Layer::Region);
        let [low, high] = whole
            .window
            .map(|value| plot.y.px(value).max(plot.area.top));
        let edge = Stroke::solid(frame.colours.muted, frame.measures.rule).dashed(&[3.0, 2.0]);
        let area = plot.area;
        frame
            .scene
            .line([area.left, high], [area.right, high], edge);
        let shade = frame.colours.grid.with_opacity(0.6);
        frame
            .scene
            .rectangle(Rect::new(area.left, high, area.right, low), shade);
        frame.scene.begin(Layer::Label);
        let room = area.width() - frame.measures.gap;
        // At the foot, below the curves.
        let words = lettering::fit(&whole.shown, text, 0.7 * text, Face::Regular, room, 1);
        let foot = low - 0.3 * frame.measures.gap - lettering::fall(words.size);
        for line in words.lines {
            let at = [area.left + 0.5 * frame.measures.gap, foot];
            let row = Text::new(at, line, words.size, Face::Regular, frame.colours.muted);
            frame.scene.text(row);
        }
        frame.scene.begin(before);
        let panel = Panel::new(whole.axis.clone(), whole.series.clone());
        panel::draw_curves(frame, &panel, plot);
        frame.scene.plots.push(area);
    }
}
