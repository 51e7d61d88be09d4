//! What labels of a panel say and where each may stand: names of curves, marked points, arrows of curves that leave.
//!
//! In: a series, a marker or a line with the scales. Out: a [`LabelWish`]: words in one shape or several, with places.

use super::axis::{Axis, Plot};
use super::frame::Frame;
use super::label_places;
use super::panel;
use super::panel_contents::{Marker, Series};
use super::placing::{LabelPlace, LabelRequest};
use super::words::WordBlock;
use crate::draw::scale::short_number;
use crate::draw::{Face, lettering};

/// One label with the room it looks for.
pub(super) struct LabelWish {
    /// The words in one shape, or in several of which the place that is found tells the one that is drawn.
    pub words: Vec<WordBlock>,
    /// Where it may stand.
    pub request: LabelRequest,
    /// What kind of label it is.
    pub kind: LabelKind,
}

impl LabelWish {
    /// The shape whose words fill a place.
    pub fn shape_of(&self, place: &LabelPlace) -> &WordBlock {
        let off = |words: &WordBlock| {
            (words.width() - place.area.width()).abs()
                + (words.height() - place.area.height()).abs()
        };
        let shapes = self.words.iter();
        let fitting = shapes.min_by(|a, b| off(a).total_cmp(&off(b)));
        fitting.expect("a label has words")
    }
}

/// What kind of label looks for room.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum LabelKind {
    /// Name of a curve: decides whether a column is needed.
    Name,
    /// Words that must be there: dimmed ground if a curve runs below.
    Needed,
    /// Words that may be left out where there is no clear room.
    Extra,
}

/// The name of a curve, beside it.
pub(super) fn name(frame: &Frame, index: usize, series: &Series, plot: &Plot) -> Option<LabelWish> {
    let longest = series
        .name
        .split_whitespace()
        .map(|word| lettering::width(word, frame.measures.label, Face::Bold))
        .fold(0.0, f64::max);
    let most = (plot.area.width() * 0.42)
        .max(10.0 * frame.measures.label)
        .max(longest * 1.01)
        .min(plot.area.width() * 0.95);
    let colour = series.role.label(&frame.colours);
    let words =
        WordBlock::new(frame.measures.label).with(&series.name, Face::Bold, colour, most, 2);
    let pieces = panel::visible(series, plot);
    let mut candidates = label_places::beside_curve(frame, &pieces, &words);
    // Of a line with few vertices the leader may end anywhere.
    let vertices = label_places::evenly(&pieces);
    candidates.extend(label_places::anywhere(plot, &words, &vertices, 70.0));
    // A curve of which nothing is drawn has no name in the picture either.
    let is_drawn = !series.drawn().iter().all(|points| points.is_empty());
    (is_drawn && !words.is_empty()).then_some(LabelWish {
        words: vec![words],
        request: LabelRequest {
            owner: Some(index),
            places: candidates,
        },
        kind: LabelKind::Name,
    })
}

/// Words of a marked point, around it.
pub(super) fn callout(
    frame: &Frame,
    marker: &Marker,
    plot: &Plot,
    edges: &[f64],
) -> Option<LabelWish> {
    /// Widths of the block over that of the plot, and what each costs.
    const SHAPES: [(f64, f64); 2] = [(0.34, 0.0), (0.66, 6.0)];
    /// The same of words and figures on one line, for the room between two curves.
    const ONE_LINE: (f64, f64) = (0.34, 8.0);
    let colours = &frame.colours;
    let block = |most: f64| {
        WordBlock::new(frame.measures.text)
            .with(
                &marker.text,
                Face::Bold,
                marker.role.label(colours),
                most,
                2,
            )
            .with(&marker.detail, Face::Regular, colours.ink, most, 3)
    };
    let at = plot.px(marker.at);
    let mut shapes: Vec<(WordBlock, f64)> = SHAPES
        .map(|(share, more)| (block(share * plot.area.width()), more))
        .into();
    shapes.extend(
        on_one_line(frame, marker, ONE_LINE.0 * plot.area.width()).map(|words| (words, ONE_LINE.1)),
    );
    let mut words: Vec<WordBlock> = Vec::new();
    let mut candidates = Vec::new();
    for (shape, more) in shapes {
        if shape.is_empty() || words.contains(&shape) {
            continue;
        }
        let mut places = label_places::around_point(frame, at, &shape);
        places.extend(label_places::anywhere(plot, &shape, &[at], 40.0));
        places.extend(label_places::beside_edges(frame, plot, &shape, at, edges));
        for place in &mut places {
            place.cost += more;
        }
        candidates.extend(places);
        words.push(shape);
    }
    if words.is_empty() {
        return None;
    }
    Some(LabelWish {
        words,
        request: LabelRequest {
            owner: None,
            places: candidates,
        },
        kind: LabelKind::Needed,
    })
}

/// Words and figures of a marked point on one line, where both are there and no wider than `most`.
fn on_one_line(frame: &Frame, marker: &Marker, most: f64) -> Option<WordBlock> {
    let colours = &frame.colours;
    let colour = marker.role.label(colours);
    let first = WordBlock::new(frame.measures.text).with(&marker.text, Face::Bold, colour, most, 1);
    if first.is_empty() || first.is_cut() || marker.detail.is_empty() {
        return None;
    }
    let both = first.going_on(&marker.detail, Face::Regular, colours.ink);
    (both.width() <= most).then_some(both)
}

/// The narrowest block of words beside an arrow, in heights of a letter.
const NARROWEST_EMS: f64 = 6.5;

/// "continues to 4 200 N" where a curve leaves the plot, if the figure has words for it.
pub(super) fn continuation(
    frame: &Frame,
    index: usize,
    series: &Series,
    plot: &Plot,
    axis: &Axis,
) -> Option<LabelWish> {
    if frame.beyond.is_empty() {
        return None;
    }
    let exit = *panel::exits(series, plot).first()?;
    let upwards = exit.towards[1] < 0.0;
    let furthest = short_number(furthest(series, upwards), panel::digits_for(plot.y.range()));
    let text = format!("{} {furthest} {}", frame.beyond, axis.unit);
    let colour = series.role.label(&frame.colours);
    // Beside the arrow on two lines where it leaves near the right border, since the curve itself lies on its left.
    let beside = plot.area.right - exit.at[0] - 1.5 * frame.measures.gap;
    let narrowest = NARROWEST_EMS * frame.measures.text;
    let most = match beside {
        room if room >= narrowest => room.min(plot.area.width() * 0.4),
        _ => plot.area.width() * 0.4,
    };
    let mut shapes: Vec<WordBlock> = Vec::new();
    let mut places = Vec::new();
    for (most, more) in [(most, 0.0), (narrowest.min(most), 4.0)] {
        let words =
            WordBlock::new(frame.measures.text).with(text.trim(), Face::Regular, colour, most, 2);
        if words.is_cut() || shapes.contains(&words) {
            continue;
        }
        let own = label_places::near_exit(frame, exit.at, upwards, &words);
        places.extend(own.into_iter().map(|place| LabelPlace {
            cost: place.cost + more,
            ..place
        }));
        shapes.push(words);
    }
    let owner = Some(index);
    (!shapes.is_empty()).then_some(LabelWish {
        words: shapes,
        request: LabelRequest { owner, places },
        kind: LabelKind::Extra,
    })
}

/// The greatest or the least value of a curve.
fn furthest(series: &Series, upwards: bool) -> f64 {
    let points = series.points.iter().chain(&series.crest);
    let values = points.map(|point| point[1]);
    if upwards {
        values.fold(f64::NEG_INFINITY, f64::max)
    } else {
        values.fold(f64::INFINITY, f64::min)
    }
}

/// Words of a level line.
pub(super) fn note(frame: &Frame, text: &str, candidates: Vec<LabelPlace>) -> Option<LabelWish> {
    let words = label_places::note_words(frame, text);
    (!words.is_empty()).then_some(LabelWish {
        words: vec![words],
        request: LabelRequest {
            owner: None,
            places: candidates,
        },
        kind: LabelKind::Needed,
    })
}
