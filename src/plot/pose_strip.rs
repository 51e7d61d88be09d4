//! A strip of stick figures below the level axis, each tied to its place on it.
//!
//! In: poses with their values on the axis. Out: figures on one scale, captions, thin leaders, and
//! the axis title set where no leader passes.

use super::axis::{self, Axis, Plot};
use super::frame::Frame;
use super::placing::spread;
use super::stick_figure::{self, StickFigure, StickScale};
use super::words::WordBlock;
use crate::draw::{Layer, PixelPoint, Rect, Stroke, Text, TextAnchor, lettering};

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
    has_captions: bool,
}

/// Least height of the figures over the canvas, assumed: smaller ones show no pose.
const LEAST_HEIGHT: f64 = 0.075;
/// Greatest height of the figures over the canvas.
const MOST_HEIGHT: f64 = 0.2;
/// Height of the figures over the canvas from which on captions are worth their row.
const CAPTIONED_HEIGHT: f64 = 0.1;
/// Room between the axis' title and the figures, in gaps.
const LEADERS: f64 = 0.6;

impl Strip {
    /// Plans the strip in the height that data can spare; none where figures would be too small.
    #[must_use]
    pub fn planned(frame: &Frame, poses: &[StripPose], spare: f64) -> Option<Self> {
        let canvas = frame.scene.height;
        let leaders = LEADERS * frame.measures.gap;
        let caption = lettering::line_step(frame.measures.text) + frame.measures.gap * 0.5;
        let figures = spare - leaders;
        if poses.is_empty() || figures < LEAST_HEIGHT * canvas {
            return None;
        }
        let has_captions = figures - caption >= CAPTIONED_HEIGHT * canvas;
        let caption = if has_captions { caption } else { 0.0 };
        let most = MOST_HEIGHT * canvas + caption;
        Some(Self {
            height: leaders + figures.min(most),
            has_captions,
        })
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
    strip: Option<&Strip>,
    tick_boxes: &[Rect],
) {
    let Some(strip) = strip else {
        let title = axis_title(frame, axis, plot, &[]);
        let before = frame.scene.begin(Layer::Axis);
        frame.scene.text(title);
        frame.scene.begin(before);
        return;
    };
    let places: Vec<&StripPose> = poses.iter().filter(|pose| plot.x.holds(pose.at)).collect();
    let feet: Vec<f64> = places.iter().map(|pose| plot.x.px(pose.at)).collect();
    let title = axis_title(frame, axis, plot, &feet);
    let mut boxes = tick_boxes.to_vec();
    boxes.push(title.bounds());
    let before = frame.scene.begin(Layer::Axis);
    frame.scene.text(title);
    frame.scene.begin(Layer::Pose);
    if !places.is_empty() {
        draw_poses(frame, &places, &feet, plot, strip, &boxes);
    }
    frame.scene.begin(before);
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
    let caption_row = if strip.has_captions {
        lettering::line_step(frame.measures.text) + 0.5 * gap
    } else {
        0.0
    };
    let ground = frame.body.bottom - caption_row;
    let top = frame.body.bottom - strip.height + LEADERS * gap;
    let each = frame.body.width() / places.len() as f64 - gap;
    let figures: Vec<&StickFigure> = places.iter().map(|pose| &pose.figure).collect();
    let widest = each.min(0.3 * frame.body.width());
    let Some(stage) = StickScale::fitting(&figures, widest, ground - top) else {
        return;
    };
    let captions = if strip.has_captions {
        captions(frame, places, each)
    } else {
        places
            .iter()
            .map(|_| WordBlock::new(frame.measures.text))
            .collect()
    };
    let extents: Vec<f64> = captions
        .iter()
        .map(|words: &WordBlock| words.width().max(stage.width_px()) + gap)
        .collect();
    let middles = spread_unordered(feet, &extents, frame.body.left, frame.body.right);
    let levels = [ground, frame.body.bottom];
    for (index, pose) in places.iter().enumerate() {
        let up = stage.extent_px(&pose.figure)[1];
        let end = [middles[index], ground - up];
        draw_leader(frame, plot, feet[index], end, boxes);
        let caption = &captions[index];
        draw_pose(frame, pose, caption, &stage, middles[index], levels);
    }
}

fn captions(frame: &Frame, places: &[&StripPose], most: f64) -> Vec<WordBlock> {
    let (size, ink) = (frame.measures.text, frame.colours.ink);
    let caption = |pose: &&StripPose| WordBlock::fitted(&pose.caption, [size; 2], ink, most, 1);
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
    if caption.is_empty() {
        return;
    }
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
    let words = axis.title_within(frame.measures.text, frame.body.width());
    let middle = plot.area.centre()[0];
    let at = [
        (middle, TextAnchor::Middle),
        (plot.area.right, TextAnchor::End),
        (plot.area.left, TextAnchor::Start),
    ];
    // A title that is wider than the plot keeps inside the canvas.
    let inside = |x: f64, anchor: TextAnchor| {
        let own = frame.axis_text([x, y], &words).anchored(anchor).bounds();
        let back = (own.right - frame.body.right).max(0.0);
        let on = (frame.body.left - own.left + back).max(0.0);
        frame.axis_text([x - back + on, y], &words).anchored(anchor)
    };
    let texts = at.map(|(x, anchor)| inside(x, anchor));
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
