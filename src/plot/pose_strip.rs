//! A strip of stick figures below the level axis, each tied to its place on it.
//!
//! In: poses with their values on the axis. Out: figures on one scale, captions, thin leaders, and
//! the axis title set where no leader passes.

use super::axis::{self, Axis, Plot};
use super::frame::Frame;
use super::placing::spread;
use super::stick_figure::{self, StickFigure, StickScale};
use super::words::WordBlock;
use crate::draw::{Face, PixelPoint, Rect, Stroke, Text, TextAnchor, lettering};

/// A pose at a place of the level axis.
#[derive(Debug, Clone, PartialEq)]
pub struct StripPose {
    /// Its value on the level axis.
    pub at: f64,
    /// What it is: "start".
    pub caption: String,
    /// The pose.
    pub figure: StickFigure,
}

/// The room planned for the strip.
#[derive(Debug, Clone, PartialEq)]
pub struct Strip {
    height: f64,
}

/// Share of the canvas that the figures get below one panel and below two.
const SHARES: [f64; 2] = [0.2, 0.115];

impl Strip {
    /// Plans the strip; nothing without poses.
    #[must_use]
    pub fn planned(frame: &Frame, poses: &[StripPose], panels: usize) -> Self {
        if poses.is_empty() {
            return Self { height: 0.0 };
        }
        let caption = lettering::line_step(frame.measures.text) + frame.measures.gap * 0.5;
        let leaders = 2.2 * frame.measures.gap;
        Self {
            height: SHARES[usize::from(panels > 1)] * frame.scene.height + caption + leaders,
        }
    }

    /// Its height in pixels.
    #[must_use]
    pub fn height(&self) -> f64 {
        self.height
    }
}

/// Draws axis title, leaders, figures and captions below the plot.
pub fn draw(
    frame: &mut Frame,
    axis: &Axis,
    poses: &[StripPose],
    plot: &Plot,
    strip: &Strip,
    tick_boxes: &[Rect],
) {
    let places: Vec<&StripPose> = poses.iter().filter(|pose| plot.x.holds(pose.at)).collect();
    let feet: Vec<f64> = places.iter().map(|pose| plot.x.px(pose.at)).collect();
    let title = axis_title(frame, axis, plot, &feet);
    let mut boxes = tick_boxes.to_vec();
    boxes.push(title.bounds());
    frame.scene.text(title);
    if !places.is_empty() {
        draw_poses(frame, &places, &feet, plot, strip, &boxes);
    }
}

/// Leaders, figures and captions.
fn draw_poses(
    frame: &mut Frame,
    places: &[&StripPose],
    feet: &[f64],
    plot: &Plot,
    strip: &Strip,
    boxes: &[Rect],
) {
    let gap = frame.measures.gap;
    let ground = frame.body.bottom - lettering::line_step(frame.measures.text) - 0.5 * gap;
    let top = frame.body.bottom - strip.height + 2.2 * gap;
    let each = frame.body.width() / places.len() as f64 - gap;
    let figures: Vec<&StickFigure> = places.iter().map(|pose| &pose.figure).collect();
    let widest = each.min(0.3 * frame.body.width());
    let Some(stage) = StickScale::fitting(&figures, widest, ground - top) else {
        return;
    };
    let captions = captions(frame, places, each);
    let extents: Vec<f64> = captions
        .iter()
        .map(|words| words.width().max(stage.width_px()) + gap)
        .collect();
    let middles = spread_unordered(feet, &extents, frame.body.left, frame.body.right);
    let levels = [ground, frame.body.bottom];
    for (index, pose) in places.iter().enumerate() {
        let [across, up] = stage.top_px(&pose.figure);
        let end = [middles[index] + across, ground - up];
        draw_leader(frame, plot, feet[index], end, boxes);
        let caption = &captions[index];
        draw_pose(frame, pose, caption, &stage, middles[index], levels);
    }
}

fn captions(frame: &Frame, places: &[&StripPose], most: f64) -> Vec<WordBlock> {
    let (size, ink) = (frame.measures.text, frame.colours.ink);
    let caption =
        |pose: &&StripPose| WordBlock::new(size).with(&pose.caption, Face::Regular, ink, most, 1);
    places.iter().map(caption).collect()
}

/// A figure standing on the first level, its caption ending at the second.
fn draw_pose(
    frame: &mut Frame,
    pose: &StripPose,
    caption: &WordBlock,
    stage: &StickScale,
    middle: f64,
    levels: [f64; 2],
) {
    let half = stage.width_px() / 2.0;
    let area = Rect::new(
        middle - half,
        levels[0] - stage.height_px(),
        middle + half,
        levels[0],
    );
    stick_figure::draw(frame, &pose.figure, stage, &area);
    let half = caption.width() / 2.0;
    let top = levels[1] - caption.height();
    let at = Rect::new(middle - half, top, middle + half, levels[1]);
    caption.draw(&mut frame.scene, &at, TextAnchor::Middle);
}

/// [`spread`] for places in any order.
fn spread_unordered(wanted: &[f64], extents: &[f64], from: f64, to: f64) -> Vec<f64> {
    let mut order: Vec<usize> = (0..wanted.len()).collect();
    order.sort_by(|a, b| wanted[*a].total_cmp(&wanted[*b]).then(a.cmp(b)));
    let sorted: Vec<f64> = order.iter().map(|index| wanted[*index]).collect();
    let sizes: Vec<f64> = order.iter().map(|index| extents[*index]).collect();
    let placed = spread(&sorted, &sizes, from, to);
    let mut middles = vec![0.0; wanted.len()];
    for (index, middle) in order.into_iter().zip(placed) {
        middles[index] = middle;
    }
    middles
}

/// The axis title in the first place of middle, right, left that no leader crosses.
fn axis_title(frame: &Frame, axis: &Axis, plot: &Plot, feet: &[f64]) -> Text {
    let y = plot.area.bottom + axis::level_row_height(frame) + lettering::rise(frame.measures.text);
    let most = frame.body.right - plot.area.left;
    let words = lettering::shortened(&axis.title(), frame.measures.text, Face::Regular, most);
    let middle = plot.area.centre()[0];
    let at = [
        (middle, TextAnchor::Middle),
        (plot.area.right, TextAnchor::End),
        (plot.area.left, TextAnchor::Start),
    ];
    let texts = at.map(|(x, anchor)| frame.axis_text([x, y], &words).anchored(anchor));
    let free = |text: &&Text| {
        let area = text.bounds().grown(frame.measures.gap * 0.6);
        !feet
            .iter()
            .any(|foot| *foot > area.left && *foot < area.right)
    };
    texts.iter().find(free).unwrap_or(&texts[0]).clone()
}

/// A thin line from the axis down to the figure, interrupted by the words it would cross.
fn draw_leader(frame: &mut Frame, plot: &Plot, foot: f64, end: PixelPoint, boxes: &[Rect]) {
    let gap = frame.measures.gap;
    let line = Stroke::solid(frame.colours.rule, frame.measures.rule * 0.8);
    let clear = boxes
        .iter()
        .map(|area| area.grown(0.35 * gap))
        .filter(|area| foot > area.left && foot < area.right)
        .map(|area| area.bottom)
        .fold(plot.area.bottom, f64::max);
    let bend = frame.body.bottom.min(
        plot.area.bottom
            + axis::level_row_height(frame)
            + lettering::line_step(frame.measures.text),
    );
    let bend = bend.max(clear);
    let end = [end[0], (end[1] - 0.6 * gap).max(bend)];
    let path = vec![[foot, clear], [foot, bend], end];
    frame.scene.polyline(path, line);
    frame.scene.disc(
        [foot, plot.area.bottom],
        frame.measures.line * 0.9,
        frame.colours.ink,
    );
}
