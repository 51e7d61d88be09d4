//! What is drawn upon bodies: lines, levers, arrows, points, and names that find their places.
//!
//! In: marks in metres, the standing figure. Out: shapes in its scene; names stand clear of all marks and of each other.

use super::frame::Frame;
use super::label_places::around_point;
use super::panel_contents::Role;
use super::placing::{LabelPlace, LabelRequest, Obstacle, Occupied, leader_of, settle};
use super::stick_figure::StandingFigure;
use super::words::WordBlock;
use crate::draw::scale::segment_inside;
use crate::draw::{Colour, Face, PixelPoint, Rect, Scene, Stroke, Text, TextAnchor, lettering};

/// Width of the widest line on a slide, pixels (a drawing's measure).
const WIDEST: f64 = 15.0;
/// Width of the narrowest line on a slide, pixels.
const NARROWEST: f64 = 4.0;
/// Width of the widest and of the narrowest filled line on a slide, and of its rim, plain and told, pixels.
const WIDEST_FILLED: f64 = 22.0;
const NARROWEST_FILLED: f64 = 5.0;
const RIMS: [f64; 2] = [2.0, 5.0];

/// Width of an arrow's shaft on a slide: several forces nearly share one line, pixels.
const SHAFT: f64 = 6.0;

/// Something drawn upon a body, in metres as the body is.
#[derive(Debug, Clone, PartialEq)]
pub enum BodyMark {
    /// A line along points; its width is a share of the widest line, 0 to 1.
    Line {
        /// The points in order.
        points: Vec<[f64; 2]>,
        /// Whose colour it takes.
        role: Role,
        /// Share of the widest line.
        width: f64,
    },
    /// A line with a rim, whose colour is a share of a scale; its width is a share of the widest line.
    Filled {
        /// The points in order.
        points: Vec<[f64; 2]>,
        /// Share of the scale of colours, 0 to 1.
        share: f64,
        /// Share of the widest line.
        width: f64,
        /// Whether it is the one that is spoken of: its rim is wide.
        is_told: bool,
    },
    /// Words that find their own place beside a line and are led to it.
    Name {
        /// The line.
        along: Vec<[f64; 2]>,
        /// The words; one or two letters stand in a disc.
        text: String,
        /// Whether it is the one that is spoken of: its disc is filled.
        is_told: bool,
    },
    /// A thin line that measures a distance.
    Lever {
        /// From where to where.
        ends: [[f64; 2]; 2],
        /// A place beside its second end, where it stands square on a line that is drawn: then it is whole, with the sign of a
        /// right angle there; else it is dashed.
        square_to: Option<[f64; 2]>,
        /// Whose colour it takes.
        role: Role,
    },
    /// An arrow, its point at the second end.
    Arrow {
        /// From where to where.
        ends: [[f64; 2]; 2],
        /// Whose colour it takes.
        role: Role,
    },
    /// A point with a letter or a few words beside it.
    Point {
        /// Where it is.
        at: [f64; 2],
        /// What stands beside it; may be empty.
        text: String,
        /// Whose colour it takes.
        role: Role,
    },
}

/// A body that stands, and what is drawn upon it.
pub(super) struct MarkedBody<'a> {
    /// What is drawn upon it, in this order.
    pub marks: &'a [BodyMark],
    /// Its limbs, m.
    pub limbs: &'a [Vec<[f64; 2]>],
    /// Where metres land.
    pub standing: &'a StandingFigure,
    /// The room of names.
    pub place: Rect,
}

/// Draws the marks in their order, the names last.
pub(super) fn draw_marks(frame: &mut Frame, body: &MarkedBody<'_>) {
    let unit = frame.measures.unit;
    let px = |at: &[f64; 2]| body.standing.px(*at);
    for mark in body.marks {
        match mark {
            BodyMark::Line {
                points,
                role,
                width,
            } => {
                let wide = unit * (NARROWEST + width.clamp(0.0, 1.0) * (WIDEST - NARROWEST));
                let points: Vec<PixelPoint> = points.iter().map(px).collect();
                let ground = frame.colours.background;
                // A rim of the ground tells lines apart that lie upon each other.
                let rim = Stroke::solid(ground, wide + 3.0 * unit);
                frame.scene.polyline(points.clone(), rim);
                let line = Stroke::solid(role.line(&frame.colours), wide);
                frame.scene.polyline(points, line);
            }
            BodyMark::Filled {
                points,
                share,
                width,
                is_told,
            } => {
                let points: Vec<PixelPoint> = points.iter().map(px).collect();
                let wide =
                    NARROWEST_FILLED + width.clamp(0.0, 1.0) * (WIDEST_FILLED - NARROWEST_FILLED);
                let rim = RIMS[usize::from(*is_told)];
                let colours = &frame.colours;
                let strokes = [
                    (colours.background, wide + 2.0 * rim + 3.0),
                    (colours.ink, wide + 2.0 * rim),
                    (colours.scale_colour(*share), wide),
                ];
                for (colour, width) in strokes {
                    let stroke = Stroke::solid(colour, width * unit);
                    frame.scene.polyline(points.clone(), stroke);
                }
            }
            BodyMark::Lever {
                ends,
                square_to,
                role,
            } => {
                let colour = role.label(&frame.colours);
                let ends = [px(&ends[0]), px(&ends[1])];
                match square_to {
                    Some(beside) => draw_square_lever(frame, ends, px(beside), colour),
                    None => draw_dashed_lever(frame, ends, colour),
                }
            }
            BodyMark::Arrow { ends, role } => {
                let colour = role.line(&frame.colours);
                let colours = [frame.colours.background, colour];
                draw_arrow(&mut frame.scene, ends.map(|end| px(&end)), colours, unit);
            }
            BodyMark::Point { at, text, role } => draw_point(frame, px(at), text, *role),
            BodyMark::Name { .. } => {}
        }
    }
    draw_names(frame, body);
}

/// Width of a lever on a slide, pixels.
const LEVER: f64 = 4.0;

fn draw_dashed_lever(frame: &mut Frame, [from, to]: [PixelPoint; 2], colour: Colour) {
    let unit = frame.measures.unit;
    // A rim of the ground shows it upon what it crosses.
    let rim = Stroke::solid(frame.colours.background, (LEVER + 1.5) * unit);
    frame.scene.line(from, to, rim);
    let line = Stroke::solid(colour, LEVER * unit).dashed(&[2.2, 1.6]);
    frame.scene.line(from, to, line);
}

/// A whole line with the sign of a right angle at its second end, on the side of a place.
fn draw_square_lever(
    frame: &mut Frame,
    [from, to]: [PixelPoint; 2],
    beside: PixelPoint,
    colour: Colour,
) {
    /// Side of the sign on a slide, pixels, and at most this share of the lever.
    const SIDE: f64 = 16.0;
    const MOST: f64 = 0.45;
    let unit = frame.measures.unit;
    let (dx, dy) = (from[0] - to[0], from[1] - to[1]);
    let length = dx.hypot(dy);
    if length < 1.0 {
        return;
    }
    let along = [dx / length, dy / length];
    let turned = [-along[1], along[0]];
    let ahead = (beside[0] - to[0]) * turned[0] + (beside[1] - to[1]) * turned[1];
    let side = (SIDE * unit).min(MOST * length);
    let aside = side * ahead.signum();
    let at = |back: f64, aside: f64| {
        [
            to[0] + back * along[0] + aside * turned[0],
            to[1] + back * along[1] + aside * turned[1],
        ]
    };
    let sign = vec![at(side, 0.0), at(side, aside), at(0.0, aside)];
    let ground = frame.colours.background;
    for (colour, more) in [(ground, 3.0), (colour, 0.0)] {
        let corner = Stroke::solid(colour, (0.6 * LEVER + more) * unit);
        frame.scene.polyline(sign.clone(), corner);
        let line = Stroke::solid(colour, (LEVER + more) * unit);
        frame.scene.line(from, to, line);
    }
}

/// Radius of the disc around a short name, over the size of letters.
const DISC: f64 = 0.58;

/// Names beside their lines, clear of bones, lines and each other; thin leaders where they stand apart.
fn draw_names(frame: &mut Frame, body: &MarkedBody<'_>) {
    let line_of = |points: &[[f64; 2]]| {
        points
            .iter()
            .map(|at| body.standing.px(*at))
            .collect::<Vec<_>>()
    };
    let names: Vec<(Vec<PixelPoint>, &str, bool)> = body
        .marks
        .iter()
        .filter_map(|mark| match mark {
            BodyMark::Name {
                along,
                text,
                is_told,
            } => Some((line_of(along), text.as_str(), *is_told)),
            _ => None,
        })
        .collect();
    let drawn = body.marks.iter().filter_map(|mark| match mark {
        BodyMark::Line { points, .. } | BodyMark::Filled { points, .. } => Some(line_of(points)),
        BodyMark::Lever { ends, .. } | BodyMark::Arrow { ends, .. } => Some(line_of(ends)),
        BodyMark::Point { .. } | BodyMark::Name { .. } => None,
    });
    let bones = body.limbs.iter().map(|limb| line_of(limb));
    let obstacles = drawn.chain(bones).map(|points| {
        let owner = names.iter().position(|name| name.0 == points);
        Obstacle { points, owner }
    });
    let (text, gap) = (frame.measures.text, frame.measures.gap);
    let field = Occupied {
        bounds: body.place.grown(-gap),
        obstacles: obstacles.collect(),
        taken: Vec::new(),
        edges: Vec::new(),
        clearance: 0.5 * gap,
        half_line: 0.5 * lettering::line_step(frame.measures.text),
    };
    let requests: Vec<LabelRequest> = names
        .iter()
        .enumerate()
        .map(|(index, (points, words, _))| LabelRequest {
            owner: Some(index),
            places: name_places(frame, points, words)
                .into_iter()
                .map(|place| unless_on_another(place, index, &field))
                .collect(),
        })
        .collect();
    for ((_, words, is_told), settled) in names.iter().zip(settle(&field, &requests)) {
        let Some((place, _)) = settled else { continue };
        let ground = frame.colours.background;
        let ink = frame.colours.ink;
        let from = match is_short(words) {
            true => place.area.centre(),
            false => leader_of(&place, field.half_line)[0],
        };
        let thin = 0.9 * frame.measures.rule;
        for (colour, width) in [(ground, 3.0 * thin), (ink, thin)] {
            let leader = Stroke::solid(colour, width);
            frame.scene.line(from, place.target, leader);
        }
        frame.scene.disc(place.target, 1.6 * thin, ink);
        let [x, y] = place.area.centre();
        if is_short(words) {
            let radius = DISC * text;
            frame.scene.disc([x, y], radius, ink);
            let (inside, letter) = match is_told {
                true => (ink, ground),
                false => (ground, ink),
            };
            frame
                .scene
                .disc([x, y], radius - 2.2 * frame.measures.unit, inside);
            let size = 0.8 * text;
            let at = [x, y + lettering::capitals(size) / 2.0];
            let word = Text::new(at, *words, size, Face::Bold, letter);
            frame.scene.text(word.anchored(TextAnchor::Middle));
        } else {
            let at = [x, y + lettering::capitals(text) / 2.0];
            let word = Text::new(at, *words, text, Face::Bold, ink);
            frame.scene.text(word.anchored(TextAnchor::Middle));
        }
    }
}

/// The place, dearer where the dot at its leader's end would lie on another line as well.
fn unless_on_another(place: LabelPlace, own: usize, field: &Occupied) -> LabelPlace {
    const ON_ANOTHER: f64 = 30.0;
    let [x, y] = place.target;
    let dot = Rect::new(x, y, x, y).grown(field.clearance);
    let others = field.obstacles.iter().filter(|one| one.owner != Some(own));
    let mut pieces = others.flat_map(|one| one.points.windows(2));
    let is_on = pieces.any(|pair| segment_inside(pair[0], pair[1], &dot).is_some());
    LabelPlace {
        cost: place.cost + if is_on { ON_ANOTHER } else { 0.0 },
        ..place
    }
}

fn is_short(words: &str) -> bool {
    words.chars().count() < 3
}

/// Places around the points of a line, the middle ones first.
fn name_places(frame: &Frame, points: &[PixelPoint], words: &str) -> Vec<LabelPlace> {
    let text = frame.measures.text;
    let block = WordBlock::new(text).with(words, Face::Bold, frame.colours.ink, f64::INFINITY, 1);
    let half = match is_short(words) {
        true => [DISC * text; 2],
        false => [block.width() / 2.0, block.height() / 2.0],
    };
    let last = points.len().saturating_sub(1);
    let shares = [0.5, 0.35, 0.65, 0.2, 0.8, 0.05, 0.95];
    let anchors = shares.into_iter().enumerate().map(|(turn, share)| {
        let at = points[(share * last as f64).round() as usize];
        (3.0 * turn as f64, at)
    });
    anchors
        .flat_map(|(cost, at)| {
            around_point(frame, at, &block)
                .into_iter()
                .map(move |place| {
                    let [x, y] = place.area.centre();
                    let area = Rect::new(x - half[0], y - half[1], x + half[0], y + half[1]);
                    LabelPlace {
                        area,
                        leader: true,
                        cost: cost + place.cost,
                        ..place
                    }
                })
        })
        .collect()
}

/// A straight shaft with a filled head, with a rim of the ground that tells it from limbs of its colour.
fn draw_arrow(
    scene: &mut Scene,
    [from, to]: [PixelPoint; 2],
    [ground, colour]: [Colour; 2],
    unit: f64,
) {
    const RIM: f64 = 2.5;
    let (dx, dy) = (to[0] - from[0], to[1] - from[1]);
    let length = dx.hypot(dy);
    if length < 1.0 {
        return;
    }
    let along = [dx / length, dy / length];
    let head = (26.0 * unit).min(0.6 * length);
    let neck = [to[0] - along[0] * head, to[1] - along[1] * head];
    let side = 0.5 * head;
    let corners = vec![
        to,
        [neck[0] - along[1] * side, neck[1] + along[0] * side],
        [neck[0] + along[1] * side, neck[1] - along[0] * side],
    ];
    let mut edge = corners.clone();
    edge.push(to);
    scene.line(
        from,
        neck,
        Stroke::solid(ground, (SHAFT + 2.0 * RIM) * unit),
    );
    scene.polyline(edge, Stroke::solid(ground, 2.0 * RIM * unit));
    scene.line(from, neck, Stroke::solid(colour, SHAFT * unit));
    scene.polygon(corners, colour);
}

/// A point; words of one or two letters stand in it, longer ones beside it.
fn draw_point(frame: &mut Frame, at: PixelPoint, words: &str, role: Role) {
    let size = frame.measures.text;
    let inside = !words.is_empty() && words.chars().count() < 3;
    let radius = if inside { 0.62 * size } else { 0.24 * size };
    let (ground, colour) = (frame.colours.background, role.label(&frame.colours));
    frame
        .scene
        .disc(at, radius + 2.0 * frame.measures.unit, ground);
    frame.scene.disc(at, radius, colour);
    let baseline = at[1] + lettering::capitals(size) / 2.0;
    let text = if inside {
        let place = [at[0], at[1] + 0.8 * lettering::capitals(size) / 2.0];
        Text::new(place, words, 0.8 * size, Face::Bold, ground).anchored(TextAnchor::Middle)
    } else {
        let place = [at[0] + radius + 0.3 * size, baseline];
        Text::new(place, words, size, Face::Bold, colour)
    };
    frame.scene.text(text);
}
