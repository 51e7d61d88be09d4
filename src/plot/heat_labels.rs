//! Contour lines of a map with their figures, and the words of its marked points.
//!
//! In: lines in pixels, each with its figure and the colour it runs over. Out: shapes in the frame;
//! figures interrupt their line, words stand on a patch of the ground.

use super::axis::Plot;
use super::frame::Frame;
use super::label_places;
use super::panel;
use super::panel_contents::Marker;
use super::placing::{self, LabelPlace, LabelRequest, Occupied};
use super::words::WordBlock;
use crate::draw::{Colour, Face, PixelPoint, Rect, Stroke, TextAnchor, contrast, lettering};

/// A line of equal value.
pub struct ContourLine {
    /// Its figure.
    pub label: String,
    /// The colour it runs over.
    pub ground: Colour,
    /// Its points in pixels.
    pub points: Vec<PixelPoint>,
}

/// Black or white, whichever reads better on the ground; one of them always reaches 4.5 : 1.
fn ink_on(ground: Colour) -> Colour {
    let [black, white] = [Colour::hex(0x00_0000), Colour::hex(0xFF_FFFF)];
    if contrast(black, ground) >= contrast(white, ground) {
        black
    } else {
        white
    }
}

/// Draws the lines, then figures and words where they find room.
pub fn draw(frame: &mut Frame, plot: &Plot, lines: &[ContourLine], markers: &[Marker]) {
    let radius = panel::marker_radius(frame) * 1.5;
    let taken = markers.iter().map(|marker| {
        let [x, y] = plot.px(marker.at);
        Rect::new(x - radius, y - radius, x + radius, y + radius)
    });
    let field = Occupied {
        bounds: plot.area.grown(-0.5 * frame.measures.gap),
        obstacles: Vec::new(),
        taken: taken.collect(),
        edges: Vec::new(),
        clearance: frame.measures.gap,
        half_line: 0.5 * lettering::line_step(frame.measures.text),
    };
    let callouts = markers.iter().map(|marker| callout(frame, plot, marker));
    let mut wishes: Vec<(WordBlock, LabelRequest, Option<Colour>)> = callouts.flatten().collect();
    for line in lines {
        let stroke = Stroke::solid(ink_on(line.ground).with_opacity(0.65), frame.measures.rule);
        frame.scene.polyline(line.points.clone(), stroke);
        wishes.extend(figure(frame, line));
    }
    let half_line = field.half_line;
    let requests: Vec<LabelRequest> = wishes.iter().map(|wish| wish.1.clone()).collect();
    for ((words, _, ground), placed) in wishes.iter().zip(placing::settle(&field, &requests)) {
        if let Some((place, _)) = placed {
            put(frame, words, *ground, (&place, half_line));
        }
    }
}

fn callout(
    frame: &Frame,
    plot: &Plot,
    marker: &Marker,
) -> Option<(WordBlock, LabelRequest, Option<Colour>)> {
    let most = 0.36 * plot.area.width();
    let words = WordBlock::new(frame.measures.text)
        .with(&marker.text, Face::Bold, frame.colours.ink, most, 2)
        .with(&marker.detail, Face::Regular, frame.colours.ink, most, 2);
    let at = plot.px(marker.at);
    let mut all = label_places::around_point(frame, at, &words);
    all.extend(label_places::anywhere(plot, &words, &[at], 40.0));
    (!words.is_empty() && plot.area.holds(at)).then_some((
        words,
        LabelRequest {
            owner: None,
            places: all,
        },
        None,
    ))
}

/// Places of a figure along its line, the middle first; none on a line too short for it.
fn figure(frame: &Frame, line: &ContourLine) -> Option<(WordBlock, LabelRequest, Option<Colour>)> {
    let ink = ink_on(line.ground);
    let words =
        WordBlock::new(frame.measures.text).with(&line.label, Face::Regular, ink, f64::MAX, 1);
    let length: f64 = line
        .points
        .windows(2)
        .map(|pair| (pair[1][0] - pair[0][0]).hypot(pair[1][1] - pair[0][1]))
        .sum();
    if length < 3.0 * words.width() {
        return None;
    }
    let last = line.points.len() - 1;
    let places = line
        .points
        .iter()
        .enumerate()
        .map(|(index, at)| LabelPlace {
            area: words.around(at[0], at[1]),
            target: *at,
            leader: false,
            cost: 20.0 * (index as f64 / last as f64 - 0.5).abs(),
        });
    let request = LabelRequest {
        owner: None,
        places: places.collect(),
    };
    Some((words, request, Some(line.ground)))
}

fn put(
    frame: &mut Frame,
    words: &WordBlock,
    ground: Option<Colour>,
    (place, half_line): (&LabelPlace, f64),
) {
    let gap = frame.measures.gap;
    if let Some(ground) = ground {
        frame
            .scene
            .rounded_rectangle(place.area.grown(0.2 * gap), 0.4 * gap, ground);
    } else {
        let patch = place.area.grown(0.55 * gap);
        if place.leader {
            let [from, to] = placing::leader_of(place, half_line);
            let line = Stroke::solid(frame.colours.background, 1.6 * frame.measures.rule);
            frame.scene.line(from, to, line);
        }
        let ground = frame.colours.background.with_opacity(0.88);
        frame.scene.rounded_rectangle(patch, 0.6 * gap, ground);
    }
    words.draw(&mut frame.scene, &place.area, TextAnchor::Middle);
}
