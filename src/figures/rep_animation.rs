//! A repetition as an animated SVG without script: it loops, and stands still where motion is unwelcome.
//!
//! In: a [`RepStudy`]. Out: a ground that stands still and SVG elements that move over it: a body, and a dot that
//! runs along the curve of velocity.

use super::animation_stage::AnimationStage;
use crate::draw::{Colour, Face, Scene, Text};
use crate::error::{Error, FigureFault, Result};
use crate::narrative::motion_words::rep_figure_words;
use crate::narrative::quantities::rounded;
use crate::plot::Look;
use crate::rep::RepSample;
use crate::study::RepStudy;
use crate::units::System;
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
    let stage = AnimationStage::fitting(rep, ground.width, ground.height, look.theme.colours());
    stage.backdrop(&mut ground, rep, units);
    let still = slowest_frame(rep, frames);
    let mut moving = style(frames, length_s);
    for frame in 0..frames {
        let time_s = first.time_s + length_s * frame as f64 / (frames - 1) as f64;
        // Where nothing is animated one moment is seen, by the plainest means that every reader of SVG knows.
        let seen = if frame == still { "visible" } else { "hidden" };
        let _ = write!(moving, "<g class=\"f f{frame}\" visibility=\"{seen}\">");
        stage.draw(&mut moving, rep, sample_at(samples, time_s));
        moving.push_str("</g>\n");
    }
    Ok(Animation { ground, moving })
}

/// Heading on an empty canvas.
fn ground(rep: &RepStudy, units: System, look: Look) -> Scene {
    let words = rep_figure_words(rep, units);
    let (width, height) = look.size.pixels();
    let colours = look.theme.colours();
    let (width, height) = (f64::from(width), f64::from(height));
    let mut scene = Scene::new(width, height, colours.background);
    scene.title.clone_from(&words.title);
    scene.description = words.description;
    let unit = (height / 1080.0).min(width / 1920.0);
    let mut line = |content: String, size: f64, at: f64, face: Face, colour: Colour| {
        let at = [72.0 * unit, at * unit];
        scene.text(Text::new(at, content, size * unit, face, colour));
    };
    line(words.title, 54.0, 92.0, Face::Bold, colours.ink);
    line(words.subtitle, 34.0, 150.0, Face::Regular, colours.muted);
    scene
}

/// One class a frame, shown in turn; without motion the slowest moment stands.
fn style(frames: usize, length_s: f64) -> String {
    let total_s = length_s + HOLD_S;
    let mut css = format!(
        "<style>@media (prefers-reduced-motion:no-preference){{.f{{visibility:hidden;animation:show {}s steps(1,end) infinite}}\n",
        rounded(total_s, 2)
    );
    let frame_s = length_s / frames as f64;
    let share = 100.0 * length_s / frames as f64 / total_s;
    let hold = 100.0 * (frame_s + HOLD_S) / total_s;
    for (name, percent) in [("show", share), ("last", hold)] {
        let _ = writeln!(
            css,
            "@keyframes {name}{{0%{{visibility:visible}}{}%{{visibility:hidden}}100%{{visibility:hidden}}}}",
            rounded(percent, 3)
        );
    }
    for frame in 0..frames {
        let delay = length_s * frame as f64 / frames as f64;
        let is_last = frame + 1 == frames;
        let name = if is_last { ";animation-name:last" } else { "" };
        let _ = writeln!(
            css,
            ".f{frame}{{animation-delay:{}s{name}}}",
            rounded(delay, 3)
        );
    }
    css.push_str("}</style>\n");
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
