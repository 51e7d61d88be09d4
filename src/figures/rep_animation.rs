//! A repetition as an animated SVG without script: it loops, and stands still where motion is unwelcome.
//!
//! In: a [`RepStudy`]. Out: SVG text: the chart of the repetition with a moving body in the place of the
//! strip of poses and a dot that runs along the velocity curve.

use super::body_lines::stick_figure;
use crate::draw::{Colour, Face, Rect, Scene, Stroke, Text, TextAnchor};
use crate::error::{Error, FigureFault, Result};
use crate::movement::{Pose, View};
use crate::narrative::repetition::{rep_sentences, rep_title, subtitle};
use crate::plot::Look;
use crate::rep::RepSample;
use crate::study::RepStudy;
use crate::units::{System, rounded};
use std::fmt::Write;

/// Pictures a second.
const RATE: f64 = 12.0;
/// No more pictures than this, so that a slow lowering does not make a huge file.
const MOST_FRAMES: usize = 90;
/// The end is shown for this long before the repetition begins anew, s.
const HOLD_S: f64 = 1.0;

/// A picture of which a part moves.
#[derive(Debug, Clone, PartialEq)]
pub struct Animation {
    /// What stands still.
    pub ground: Scene,
    /// What moves, as elements of SVG.
    pub moving: String,
}

impl Animation {
    /// The moving elements laid over the ground, which was written as SVG.
    #[must_use]
    pub fn over(&self, ground: &str) -> String {
        let end = ground.rfind("</svg>").unwrap_or(ground.len());
        format!("{}{}{}", &ground[..end], self.moving, &ground[end..])
    }
}

/// The animated picture.
///
/// **Fails** if nothing moved.
pub fn animation(rep: &RepStudy, units: System, look: Look) -> Result<Animation> {
    let samples = &rep.trace.samples;
    let (Some(first), Some(last)) = (samples.first(), samples.last()) else {
        return Err(Error::no_answer(FigureFault::NothingMoves));
    };
    let length_s = last.time_s - first.time_s;
    let frames = ((length_s * RATE).ceil() as usize).clamp(2, MOST_FRAMES);
    let mut ground = ground(rep, units, look);
    let stage = AnimationStage::fitting(rep, ground.width, ground.height);
    stage.backdrop(&mut ground, rep, look);
    let total_s = length_s + HOLD_S;
    let mut body = style(frames, length_s, total_s, slowest_frame(rep, frames));
    for frame in 0..frames {
        let time_s = first.time_s + length_s * frame as f64 / (frames - 1) as f64;
        let sample = sample_at(samples, time_s);
        let _ = write!(body, "<g class=\"f f{frame}\">");
        stage.draw(&mut body, rep, sample, look);
        body.push_str("</g>\n");
    }
    Ok(Animation {
        ground,
        moving: body,
    })
}

/// Heading on an empty canvas.
fn ground(rep: &RepStudy, units: System, look: Look) -> Scene {
    let (width, height) = look.size.pixels();
    let colours = look.theme.colours();
    let (width, height) = (f64::from(width), f64::from(height));
    let mut scene = Scene::new(width, height, colours.background);
    scene.title = rep_title(rep, units);
    scene.description = rep_sentences(rep, units).join(" ");
    let unit = (height / 1080.0).min(width / 1920.0);
    let mut line = |content: String, size: f64, at: f64, face: Face, colour: Colour| {
        let text = Text::new([72.0 * unit, at * unit], content, size * unit, face, colour);
        scene.text(text.anchored(TextAnchor::Start));
    };
    line(rep_title(rep, units), 54.0, 92.0, Face::Bold, colours.ink);
    line(
        subtitle(rep, units),
        34.0,
        150.0,
        Face::Regular,
        colours.muted,
    );
    scene
}

/// One class a frame, shown in turn; without motion the slowest moment stands.
fn style(frames: usize, length_s: f64, total_s: f64, still: usize) -> String {
    let mut css = format!(
        "<style>.f{{visibility:hidden;animation:show {}s steps(1,end) infinite}}\n",
        rounded(total_s, 2)
    );
    let share = 100.0 * length_s / frames as f64 / total_s;
    let _ = writeln!(
        css,
        "@keyframes show{{0%{{visibility:visible}}{}%{{visibility:hidden}}100%{{visibility:hidden}}}}",
        rounded(share, 3)
    );
    let hold = 100.0 * (length_s / frames as f64 + HOLD_S) / total_s;
    let _ = writeln!(
        css,
        "@keyframes last{{0%{{visibility:visible}}{}%{{visibility:hidden}}100%{{visibility:hidden}}}}",
        rounded(hold, 3)
    );
    for frame in 0..frames {
        let delay = length_s * frame as f64 / frames as f64;
        let name = if frame + 1 == frames {
            ";animation-name:last"
        } else {
            ""
        };
        let _ = writeln!(
            css,
            ".f{frame}{{animation-delay:{}s{name}}}",
            rounded(delay, 3)
        );
    }
    let _ = writeln!(
        css,
        "@media (prefers-reduced-motion:reduce){{.f{{animation:none}}.f{still}{{visibility:visible}}}}</style>"
    );
    css
}

/// The frame of the slowest moment of the lift, or of its end.
fn slowest_frame(rep: &RepStudy, frames: usize) -> usize {
    let samples = &rep.trace.samples;
    let (first, last) = (samples[0].time_s, samples[samples.len() - 1].time_s);
    let lift = rep.trace.lifting().first().map_or(first, |s| s.time_s);
    let time = rep.trace.sticking.map_or(last, |s| lift + s.minimum.time_s);
    let share = ((time - first) / (last - first).max(1e-9)).clamp(0.0, 1.0);
    (share * (frames - 1) as f64).round() as usize
}

fn sample_at(samples: &[RepSample], time_s: f64) -> &RepSample {
    let index = samples.partition_point(|s| s.time_s < time_s);
    &samples[index.min(samples.len() - 1)]
}

/// Where metres and velocities land on the canvas.
struct AnimationStage {
    scale: f64,
    origin: [f64; 2],
    plot: [f64; 4],
    time: [f64; 2],
    velocity: [f64; 2],
    line: f64,
}

impl AnimationStage {
    fn fitting(rep: &RepStudy, width: f64, height: f64) -> Self {
        let carrier = rep.still.range.carrier;
        let extents: Vec<[f64; 4]> = rep
            .still
            .range
            .poses
            .iter()
            .filter_map(|pose| stick_figure(pose, carrier).extent())
            .collect();
        let low = |k: usize| extents.iter().map(|e| e[k]).fold(f64::INFINITY, f64::min);
        let high = |k: usize| {
            extents
                .iter()
                .map(|e| e[k])
                .fold(f64::NEG_INFINITY, f64::max)
        };
        let (left, bottom, right, top) = (low(0), low(1), high(2), high(3));
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
            plot: [0.56 * width, 0.32 * height, 0.95 * width, 0.86 * height],
            time: [samples[0].time_s, samples[samples.len() - 1].time_s],
            velocity: [
                speeds.clone().fold(0.0, f64::min),
                speeds.fold(0.01, f64::max),
            ],
            line: 0.008 * height,
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
        self.plot[0] + share * (self.plot[2] - self.plot[0])
    }

    fn up(&self, velocity: f64) -> f64 {
        let share = (velocity - self.velocity[0]) / (self.velocity[1] - self.velocity[0]);
        self.plot[3] - share * (self.plot[3] - self.plot[1])
    }

    fn on_plot(&self, sample: &RepSample) -> [f64; 2] {
        [self.across(sample.time_s), self.up(sample.velocity)]
    }

    /// Behind the moving dot: sticking region, zero line, the whole curve, and what the axes are.
    fn backdrop(&self, scene: &mut Scene, rep: &RepStudy, look: Look) {
        let colours = look.theme.colours();
        let [left, top, right, bottom] = self.plot;
        let size = 3.4 * self.line;
        let lift_s = rep.trace.lifting().first().map_or(0.0, |s| s.time_s);
        if let Some(sticking) = rep.trace.sticking {
            let x = |time_s: f64| self.across(lift_s + time_s);
            let (from, to) = (x(sticking.first_peak.time_s), x(sticking.minimum.time_s));
            let area = Rect::new(from, top - 1.6 * size, to, bottom);
            scene.rectangle(area, colours.shade);
            let words = Text::new(
                [f64::midpoint(from, to), top - 2.0 * size],
                "Sticking region".to_owned(),
                size,
                Face::Bold,
                colours.shade_text,
            );
            scene.text(words.anchored(TextAnchor::Middle));
        }
        let rule = Stroke::solid(colours.rule, 0.35 * self.line);
        let zero = self.up(0.0);
        scene.line([left, zero], [right, zero], rule);
        let whole = rep.trace.samples.iter().map(|s| self.on_plot(s)).collect();
        scene.polyline(whole, Stroke::solid(colours.grid, self.line));
        let (unit, factor) = super::rep_trace::velocity_unit(rep);
        let mut label = |at: [f64; 2], words: String, anchor: TextAnchor| {
            let text = Text::new(at, words, size, Face::Regular, colours.muted);
            scene.text(text.anchored(anchor));
        };
        label(
            [left, top - 2.0 * size],
            format!("Velocity ({unit})"),
            TextAnchor::Start,
        );
        label(
            [left - 0.6 * size, zero + 0.35 * size],
            "0".to_owned(),
            TextAnchor::End,
        );
        label(
            [left - 0.6 * size, self.up(self.velocity[1]) + 0.35 * size],
            rounded(factor * self.velocity[1], if factor == 1.0 { 2 } else { 0 }),
            TextAnchor::End,
        );
        let length_s = self.time[1] - self.time[0];
        label(
            [right, bottom + 1.6 * size],
            format!("Time ({} s in all)", rounded(length_s, 1)),
            TextAnchor::End,
        );
    }

    fn draw(&self, out: &mut String, rep: &RepStudy, sample: &RepSample, look: Look) {
        let colours = look.theme.colours();
        let poses = &rep.still.range.poses;
        let last = poses.len() - 1;
        let pose: &Pose = &poses[(sample.range.clamp(0.0, 1.0) * last as f64).round() as usize];
        let figure = stick_figure(pose, rep.still.range.carrier);
        let ink = css(colours.ink);
        for (_, limb) in &figure.limbs {
            self.polyline(out, limb.iter().map(|p| self.at(*p)), &ink, 1.6);
        }
        for support in &figure.supports {
            self.polyline(
                out,
                support.iter().map(|p| self.at(*p)),
                &css(colours.muted),
                0.8,
            );
        }
        if let Some((centre, radius)) = figure.head {
            let [x, y] = self.at(centre);
            let _ = write!(
                out,
                "<circle cx=\"{x:.1}\" cy=\"{y:.1}\" r=\"{:.1}\" fill=\"{ink}\"/>",
                self.scale * radius
            );
        }
        if pose.outline.view == View::Side {
            let load = self.at([pose.outline.load.x, pose.outline.load.z]);
            let _ = write!(
                out,
                "<circle cx=\"{:.1}\" cy=\"{:.1}\" r=\"{:.1}\" fill=\"{}\"/>",
                load[0],
                load[1],
                0.06 * self.scale,
                css(colours.series_line(1))
            );
        }
        let done = rep
            .trace
            .samples
            .iter()
            .filter(|s| s.time_s <= sample.time_s);
        let blue = css(colours.series_line(0));
        self.polyline(out, done.map(|s| self.on_plot(s)), &blue, 1.0);
        let [x, y] = self.on_plot(sample);
        let _ = write!(
            out,
            "<circle cx=\"{x:.1}\" cy=\"{y:.1}\" r=\"{:.1}\" fill=\"{blue}\"/>",
            1.6 * self.line
        );
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

fn css(colour: Colour) -> String {
    format!("#{:02x}{:02x}{:02x}", colour.red, colour.green, colour.blue)
}
