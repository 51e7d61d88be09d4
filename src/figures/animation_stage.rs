//! Where the body and the curve of an animated repetition stand on the canvas, and how they are drawn.
//!
//! In: a [`RepStudy`], a canvas, colours. Out: shapes of the ground, and SVG elements of one moment.

use super::body_lines::stick_figure;
use crate::draw::{Colour, Colours, Face, Rect, Scene, Stroke, Text, TextAnchor};
use crate::movement::{Pose, View};
use crate::narrative::motion_words::{REGION, time_in_all, velocity_scale};
use crate::rep::RepSample;
use crate::study::RepStudy;
use crate::units::System;
use std::fmt::Write;

/// Radius of the drawn load, m.
const LOAD_M: f64 = 0.06;

/// Where metres and velocities land on the canvas.
pub(crate) struct AnimationStage {
    scale: f64,
    origin: [f64; 2],
    plot: Rect,
    time: [f64; 2],
    velocity: [f64; 2],
    line: f64,
    colours: Colours,
}

impl AnimationStage {
    /// The body at the left, the curve at the right.
    pub fn fitting(rep: &RepStudy, width: f64, height: f64, colours: Colours) -> Self {
        let [left, bottom, right, top] = extent(rep);
        let room = [0.42 * width, 0.72 * height];
        let scale = (room[0] / (right - left).max(0.1)).min(room[1] / (top - bottom).max(0.1));
        let middle = f64::midpoint(left, right);
        let samples = &rep.trace.samples;
        let speeds = samples.iter().map(|s| s.velocity);
        Self {
            scale,
            origin: [
                0.26 * width - scale * middle,
                0.93 * height + scale * bottom,
            ],
            plot: Rect::new(0.56 * width, 0.32 * height, 0.95 * width, 0.86 * height),
            time: [samples[0].time_s, samples[samples.len() - 1].time_s],
            velocity: [
                speeds.clone().fold(0.0, f64::min),
                speeds.fold(0.01, f64::max),
            ],
            line: 0.008 * height,
            colours,
        }
    }

    fn at(&self, point: [f64; 2]) -> [f64; 2] {
        [
            self.origin[0] + self.scale * point[0],
            self.origin[1] - self.scale * point[1],
        ]
    }

    fn across(&self, time_s: f64) -> f64 {
        let share = (time_s - self.time[0]) / (self.time[1] - self.time[0]).max(1e-9);
        self.plot.left + share * (self.plot.right - self.plot.left)
    }

    fn up(&self, velocity: f64) -> f64 {
        let share = (velocity - self.velocity[0]) / (self.velocity[1] - self.velocity[0]);
        self.plot.bottom - share * (self.plot.bottom - self.plot.top)
    }

    fn on_plot(&self, sample: &RepSample) -> [f64; 2] {
        [self.across(sample.time_s), self.up(sample.velocity)]
    }

    /// Size of the words beside the curve.
    fn type_size(&self) -> f64 {
        3.4 * self.line
    }

    /// What does not move: the region, the zero line, the whole curve, the words of its axes.
    pub fn backdrop(&self, scene: &mut Scene, rep: &RepStudy, units: System) {
        self.draw_region(scene, rep);
        let rule = Stroke::solid(self.colours.rule, 0.35 * self.line);
        let zero = self.up(0.0);
        scene.line([self.plot.left, zero], [self.plot.right, zero], rule);
        let whole = rep.trace.samples.iter().map(|s| self.on_plot(s)).collect();
        scene.polyline(whole, Stroke::solid(self.colours.grid, self.line));
        self.label_axes(scene, rep, units);
    }

    /// The sticking region in motion, shaded and named above.
    fn draw_region(&self, scene: &mut Scene, rep: &RepStudy) {
        let Some(sticking) = rep.trace.sticking else {
            return;
        };
        let lift_s = rep.trace.lifting().first().map_or(0.0, |s| s.time_s);
        let [from, to] =
            [sticking.first_peak, sticking.minimum].map(|mark| self.across(lift_s + mark.time_s));
        let size = self.type_size();
        let area = Rect::new(from, self.plot.top - 1.6 * size, to, self.plot.bottom);
        scene.rectangle(area, self.colours.shade);
        let at = [f64::midpoint(from, to), self.plot.top - 2.0 * size];
        let words = Text::new(at, REGION, size, Face::Bold, self.colours.shade_text);
        scene.text(words.anchored(TextAnchor::Middle));
    }

    fn label_axes(&self, scene: &mut Scene, rep: &RepStudy, units: System) {
        let size = self.type_size();
        let Rect {
            left,
            top,
            right,
            bottom,
        } = self.plot;
        let (title, greatest) = velocity_scale(rep, self.velocity[1], units);
        let beside = |velocity: f64| [left - 0.6 * size, self.up(velocity) + 0.35 * size];
        let whole = time_in_all(self.time[1] - self.time[0]);
        for (at, words, anchor) in [
            ([left, top - 2.0 * size], title, TextAnchor::Start),
            (beside(0.0), "0".to_owned(), TextAnchor::End),
            (beside(self.velocity[1]), greatest, TextAnchor::End),
            ([right, bottom + 1.6 * size], whole, TextAnchor::End),
        ] {
            let text = Text::new(at, words, size, Face::Regular, self.colours.muted);
            scene.text(text.anchored(anchor));
        }
    }

    /// Body, load, the curve so far and the dot at its end, at one moment.
    pub fn draw(&self, out: &mut String, rep: &RepStudy, sample: &RepSample) {
        let poses = &rep.still.range.poses;
        let last = poses.len() - 1;
        let pose: &Pose = &poses[(sample.range.clamp(0.0, 1.0) * last as f64).round() as usize];
        self.draw_body(out, rep, pose);
        if pose.outline.view == View::Side {
            let load = self.at([pose.outline.load.x, pose.outline.load.z]);
            let colour = css(self.colours.series_line(1));
            circle(out, load, LOAD_M * self.scale, &colour);
        }
        let done = rep
            .trace
            .samples
            .iter()
            .filter(|s| s.time_s <= sample.time_s);
        let blue = css(self.colours.series_line(0));
        self.polyline(out, done.map(|s| self.on_plot(s)), &blue, 1.0);
        circle(out, self.on_plot(sample), 1.6 * self.line, &blue);
    }

    fn draw_body(&self, out: &mut String, rep: &RepStudy, pose: &Pose) {
        let figure = stick_figure(pose, rep.still.range.carrier);
        let (ink, muted) = (css(self.colours.ink), css(self.colours.muted));
        for limb in &figure.limbs {
            self.polyline(out, limb.iter().map(|p| self.at(*p)), &ink, 1.6);
        }
        for support in &figure.supports {
            self.polyline(out, support.iter().map(|p| self.at(*p)), &muted, 0.8);
        }
        if let Some((centre, radius)) = figure.head {
            circle(out, self.at(centre), self.scale * radius, &ink);
        }
    }

    fn polyline(
        &self,
        out: &mut String,
        points: impl Iterator<Item = [f64; 2]>,
        colour: &str,
        width: f64,
    ) {
        let places: Vec<String> = points.map(|[x, y]| format!("{x:.1},{y:.1}")).collect();
        let _ = write!(
            out,
            "<polyline points=\"{}\" fill=\"none\" stroke=\"{colour}\" stroke-width=\"{:.1}\" stroke-linecap=\"round\" stroke-linejoin=\"round\"/>",
            places.join(" "),
            width * self.line
        );
    }
}

/// Left, lower, right and upper end of all poses, m.
fn extent(rep: &RepStudy) -> [f64; 4] {
    let carrier = rep.still.range.carrier;
    let poses = rep.still.range.poses.iter();
    let extents = poses.filter_map(|pose| stick_figure(pose, carrier).extent());
    let none = [
        f64::INFINITY,
        f64::INFINITY,
        f64::NEG_INFINITY,
        f64::NEG_INFINITY,
    ];
    extents.fold(none, |reach, own| {
        [
            reach[0].min(own[0]),
            reach[1].min(own[1]),
            reach[2].max(own[2]),
            reach[3].max(own[3]),
        ]
    })
}

fn circle(out: &mut String, [x, y]: [f64; 2], radius: f64, colour: &str) {
    let _ = write!(
        out,
        "<circle cx=\"{x:.1}\" cy=\"{y:.1}\" r=\"{radius:.1}\" fill=\"{colour}\"/>"
    );
}

fn css(colour: Colour) -> String {
    format!("#{:02x}{:02x}{:02x}", colour.red, colour.green, colour.blue)
}
