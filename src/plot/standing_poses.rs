//! Poses that stand inside a plot on its level axis, each at its place, below all curves.
//!
//! In: poses, the panel above them. Out: one scale for all, as large as the room below the curves allows, or none
//! where it is too small to be seen; the boxes that words keep clear of.

use super::axis::Plot;
use super::frame::Frame;
use super::panel;
use super::panel_contents::{Panel, Series};
use super::pose_strip::StripPose;
use super::stick_figure::{self, StickFigure, StickScale};
use crate::draw::scale::segment_inside;
use crate::draw::{Layer, PixelPoint, Rect};

/// Least height of the tallest figure over the canvas: smaller ones are not read from the back of a room, assumed.
const LEAST_HEIGHT: f64 = 0.11;
/// Greatest height of the tallest figure over the plot: the curves keep the larger part.
const MOST_HEIGHT: f64 = 0.45;
/// Step from one scale that is tried to the next smaller one.
const STEP: f64 = 0.95;

/// Poses with the boxes in which they stand.
#[derive(Debug, Clone, PartialEq)]
pub struct StandingPoses {
    scale: StickScale,
    figures: Vec<(StickFigure, PixelPoint, Rect)>,
}

impl StandingPoses {
    /// The poses as large as they can stand below the curves of a panel; none where that is too small.
    #[must_use]
    pub fn fitting(frame: &Frame, panel: &Panel, plot: &Plot, poses: &[StripPose]) -> Option<Self> {
        let shown: Vec<&StripPose> = poses.iter().filter(|pose| plot.x.holds(pose.at)).collect();
        if shown.is_empty() || !panel.spans.is_empty() {
            return None;
        }
        let ground = shown.iter().filter_map(|pose| pose.figure.extent());
        let ground = ground.map(|extent| extent[1]).fold(f64::INFINITY, f64::min);
        let bare: Vec<StickFigure> = shown
            .iter()
            .map(|pose| without_floor(&pose.figure, ground))
            .collect();
        let figures: Vec<&StickFigure> = bare.iter().collect();
        let lines = lines_above(panel, plot);
        let least = LEAST_HEIGHT * frame.scene.height;
        let mut height = MOST_HEIGHT * plot.area.height();
        while height >= least {
            let scale = StickScale::fitting(&figures, plot.area.width(), height)?;
            let feet = shown.iter().map(|pose| plot.x.px(pose.at));
            let standing = Self::standing(plot, bare.iter().cloned().zip(feet), scale);
            if scale.height_px() >= least && standing.is_clear(frame, plot, &lines) {
                return Some(standing);
            }
            height *= STEP;
        }
        None
    }

    /// The poses on one scale, moved inside the plot at its ends.
    fn standing(
        plot: &Plot,
        poses: impl Iterator<Item = (StickFigure, f64)>,
        scale: StickScale,
    ) -> Self {
        let ground = plot.area.bottom;
        let figures = poses.map(|(figure, foot)| {
            let [width, height] = scale.extent_px(&figure);
            let half = width / 2.0;
            let (from, to) = (plot.area.left + half, plot.area.right - half);
            let middle = foot.clamp(from, to.max(from));
            let area = Rect::new(middle - half, ground - height, middle + half, ground);
            (figure, [foot, ground], area)
        });
        Self {
            scale,
            figures: figures.collect(),
        }
    }

    /// Whether no figure meets a line, another figure or the side of the plot.
    fn is_clear(&self, frame: &Frame, plot: &Plot, lines: &[Vec<PixelPoint>]) -> bool {
        let gap = frame.measures.gap;
        let clear_of_lines = self.figures.iter().all(|(_, _, area)| {
            let roomy = area.grown(1.2 * gap);
            let mut pairs = lines.iter().flat_map(|line| line.windows(2));
            !pairs.any(|pair| segment_inside(pair[0], pair[1], &roomy).is_some())
        });
        let apart = self
            .figures
            .iter()
            .enumerate()
            .all(|(index, (_, _, area))| {
                let roomy = area.grown(0.5 * gap);
                let others = &self.figures[index + 1..];
                others.iter().all(|(_, _, other)| !other.overlaps(&roomy))
            });
        let inside = self.figures.iter().all(|(_, _, area)| {
            area.left >= plot.area.left - 0.01 && area.right <= plot.area.right + 0.01
        });
        clear_of_lines && apart && inside
    }

    /// The boxes of the figures, which no words may touch.
    pub fn boxes(&self) -> impl Iterator<Item = Rect> {
        self.figures.iter().map(|(_, _, area)| *area)
    }

    /// Draws the figures and a point on the axis for each.
    pub fn draw(&self, frame: &mut Frame) {
        let before = frame.scene.begin(Layer::Pose);
        for (figure, foot, area) in &self.figures {
            let middle = area.centre()[0];
            if (middle - foot[0]).abs() > frame.measures.line {
                // A figure that had to move inside the plot is tied to its dot.
                let end = tie_end(frame, figure, &self.scale, area, *foot);
                let line = frame.rule();
                frame.scene.line(*foot, end, line);
            }
            stick_figure::draw(frame, figure, &self.scale, area);
            let radius = frame.measures.line * 0.8;
            frame.scene.disc(*foot, radius, frame.colours.ink);
        }
        frame.scene.begin(before);
    }
}

/// Where the line from a dot to the joint in the middle of its figure first meets a limb or a support.
fn tie_end(
    frame: &Frame,
    figure: &StickFigure,
    scale: &StickScale,
    area: &Rect,
    foot: PixelPoint,
) -> PixelPoint {
    let Some(standing) = stick_figure::standing(frame, figure, scale, area) else {
        return area.centre();
    };
    let off = |at: &PixelPoint| (at[0] - area.centre()[0]).hypot(at[1] - area.centre()[1]);
    let joints = figure
        .limbs
        .iter()
        .flatten()
        .map(|joint| standing.px(*joint));
    let nearest = joints.min_by(|a, b| off(a).total_cmp(&off(b)));
    let centre = nearest.unwrap_or(area.centre());
    let limbs = figure.limbs.iter().flat_map(|joints| joints.windows(2));
    let supports = figure.supports.iter().map(|ends| ends.as_slice());
    let all = limbs.chain(supports);
    let shares = all.filter_map(|ends| {
        let [a, b] = [standing.px(ends[0]), standing.px(ends[1])];
        share_of_crossing([foot, centre], [a, b])
    });
    let share = shares.fold(1.0, f64::min);
    [
        foot[0] + share * (centre[0] - foot[0]),
        foot[1] + share * (centre[1] - foot[1]),
    ]
}

/// Where on a line another one crosses it, share of its length; none where they do not meet, or only at its beginning.
fn share_of_crossing([from, to]: [PixelPoint; 2], [a, b]: [PixelPoint; 2]) -> Option<f64> {
    let [along, across] = [
        [to[0] - from[0], to[1] - from[1]],
        [b[0] - a[0], b[1] - a[1]],
    ];
    let turn = along[0] * across[1] - along[1] * across[0];
    let off = [a[0] - from[0], a[1] - from[1]];
    let on_line = (off[0] * across[1] - off[1] * across[0]) / turn;
    let on_other = (off[0] * along[1] - off[1] * along[0]) / turn;
    let meets = turn != 0.0 && on_line > 0.05 && on_line <= 1.0 && (0.0..=1.0).contains(&on_other);
    meets.then_some(on_line)
}

/// Curves, level lines and edges of areas that no figure may meet.
fn lines_above(panel: &Panel, plot: &Plot) -> Vec<Vec<PixelPoint>> {
    let curves = panel
        .series
        .iter()
        .flat_map(|series| panel::visible(series, plot));
    let levels = panel.levels.iter().filter(|level| plot.y.holds(level.at));
    let levels = levels.map(|level| {
        let y = plot.y.px(level.at);
        vec![[plot.area.left, y], [plot.area.right, y]]
    });
    // The lower edges of areas, which curves within them do not tell.
    let edges = panel.fills.iter().flat_map(|fill| {
        let edge = Series::new("", fill.lower.clone(), fill.role);
        panel::visible(&edge, plot)
    });
    curves.chain(levels).chain(edges).collect()
}

/// A figure without the lines on the ground: the axis is the floor, and they would paint it over.
fn without_floor(figure: &StickFigure, ground_m: f64) -> StickFigure {
    let mut bare = figure.clone();
    let is_floor = |ends: &[[f64; 2]; 2]| ends.iter().all(|end| (end[1] - ground_m).abs() < 1.0e-6);
    bare.supports.retain(|ends| !is_floor(ends));
    bare
}
