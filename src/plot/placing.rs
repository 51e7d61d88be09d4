//! Finds room for labels: beside their curve, clear of curves and of each other, never clipped.
//!
//! In: what is already drawn (curves, occupied boxes) and, for each label, the places it may take.
//! Out: the best place for each, or none if every place would cover another text.

use crate::draw::scale::segment_inside;
use crate::draw::{PixelPoint, Rect};

/// A curve that labels should stay clear of.
#[derive(Debug, Clone, PartialEq)]
pub struct Obstacle {
    /// Its points in pixels.
    pub points: Vec<PixelPoint>,
    /// Which series it belongs to; a label may come nearer to its own.
    pub owner: Option<usize>,
}

/// One place that a label may take.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LabelPlace {
    /// The room it needs.
    pub area: Rect,
    /// The point it speaks about.
    pub target: PixelPoint,
    /// Whether a thin line leads from the label to its point.
    pub leader: bool,
    /// What the place costs by itself: 0 is the best, 10 a small drawback.
    pub cost: f64,
}

/// A label looking for room.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct LabelRequest {
    /// The series it belongs to, if any.
    pub owner: Option<usize>,
    /// Its possible places.
    pub places: Vec<LabelPlace>,
}

/// What is already there.
#[derive(Debug, Clone, PartialEq)]
pub struct Occupied {
    /// No label may leave this.
    pub bounds: Rect,
    /// Curves.
    pub obstacles: Vec<Obstacle>,
    /// Boxes that no label may touch.
    pub taken: Vec<Rect>,
    /// Upright edges of shaded stretches: words stand on one side of them.
    pub edges: Vec<f64>,
    /// Distance to keep from curves and boxes, pixels.
    pub clearance: f64,
    /// Half a line of words: leaders end at the middle of a block's first or last line, pixels.
    pub half_line: f64,
}

/// A curve through a label, for each time its own or another.
const CROSSING: [f64; 2] = [140.0, 220.0];
/// A name that stands as near to another curve as to its own: no better than over a curve.
const MISREAD: f64 = 105.0;
/// Words across the edge of a shaded stretch.
const STRADDLING: f64 = 60.0;
/// Room between words and the edge of a shaded stretch, over the clearance.
const EDGE_CLEAR: f64 = 0.9;
/// Two leaders across each other.
const CROSSED_LEADERS: f64 = 60.0;
/// A leader across a curve: more than a place some rings farther away.
const LEADER_ACROSS: f64 = 45.0;
/// A leader that runs along a curve and is not told from it: worse than one across it.
const LEADER_ALONG: f64 = 65.0;
/// Shares of a leader from its point on at which it has to be clear of curves.
const LED: [f64; 3] = [0.45, 0.6, 0.8];
/// A place that costs more than this is not clear of curves.
pub const CLEAR_COST: f64 = 100.0;
/// Rounds in which each label may move again after the others have settled.
const ROUNDS: usize = 3;

/// The best place for each request, in the same order, with its cost.
///
/// Earlier requests choose first; then each may move again while that makes it cheaper.
#[must_use]
pub fn settle(field: &Occupied, requests: &[LabelRequest]) -> Vec<Option<(LabelPlace, f64)>> {
    let mut lists: Vec<Pricelist<'_>> = requests.iter().map(Pricelist::new).collect();
    let mut chosen: Vec<Option<(LabelPlace, f64)>> = vec![None; requests.len()];
    for _ in 0..=ROUNDS {
        let before = chosen.clone();
        for (index, list) in lists.iter_mut().enumerate() {
            let others: Vec<LabelPlace> = chosen
                .iter()
                .enumerate()
                .filter(|(other, _)| *other != index)
                .filter_map(|(_, place)| place.map(|(place, _)| place))
                .collect();
            chosen[index] = list.cheapest(field, &others);
        }
        // Nobody moved, so nobody will.
        if chosen == before {
            break;
        }
    }
    chosen
}

/// The places of a request, the cheapest by themselves first, with what is known of their cost.
struct Pricelist<'a> {
    request: &'a LabelRequest,
    order: Vec<usize>,
    /// By the number of the place; worked out where it is asked for, because few places are ever looked at.
    standing: Vec<Option<f64>>,
}

impl<'a> Pricelist<'a> {
    fn new(request: &'a LabelRequest) -> Self {
        let mut order: Vec<usize> = (0..request.places.len()).collect();
        let own = |place: &usize| request.places[*place].cost;
        order.sort_by(|a, b| own(a).total_cmp(&own(b)));
        Self {
            request,
            order,
            standing: vec![None; request.places.len()],
        }
    }

    /// The cheapest place while the others stay where they are, the first of equal ones.
    fn cheapest(&mut self, field: &Occupied, others: &[LabelPlace]) -> Option<(LabelPlace, f64)> {
        let mut best: Option<(usize, f64)> = None;
        for &place in &self.order {
            let candidate = &self.request.places[place];
            // Whatever stands around only adds to what a place costs by itself.
            if best.is_some_and(|(_, least)| candidate.cost > least) {
                break;
            }
            let standing = *self.standing[place]
                .get_or_insert_with(|| standing_cost(field, self.request.owner, candidate));
            let is_behind = |cost: f64| {
                best.is_some_and(|(first, least)| cost > least || (cost == least && place > first))
            };
            if !standing.is_finite() || is_behind(standing) {
                continue;
            }
            let own = candidate.area.grown(field.clearance);
            if others.iter().any(|other| other.area.overlaps(&own)) {
                continue;
            }
            let cost = standing + leader_cost(candidate, others, field.half_line);
            if !is_behind(cost) {
                best = Some((place, cost));
            }
        }
        let (place, _) = best?;
        Some((self.request.places[place], self.standing[place]?))
    }
}

/// Leaders of this and of the other labels should not run through texts.
fn leader_cost(candidate: &LabelPlace, others: &[LabelPlace], half_line: f64) -> f64 {
    let through = |place: &LabelPlace, area: &Rect| {
        let [from, to] = leader_of(place, half_line);
        place.leader && segment_inside(from, to, area).is_some()
    };
    let hits = others
        .iter()
        .filter(|other| through(candidate, &other.area) || through(other, &candidate.area))
        .count();
    let crossed = |other: &LabelPlace| {
        let leaders = [candidate, other].map(|place| leader_of(place, half_line));
        candidate.leader && other.leader && crosses(&leaders[0], &leaders[1])
    };
    let crossings = others.iter().filter(|other| crossed(other)).count();
    150.0 * hits as f64 + CROSSED_LEADERS * crossings as f64
}

/// Cost of a place against what is already there; infinite where it must not be.
fn standing_cost(field: &Occupied, owner: Option<usize>, place: &LabelPlace) -> f64 {
    if !field.bounds.contains(&place.area) {
        return f64::INFINITY;
    }
    let roomy = place.area.grown(field.clearance);
    if field.taken.iter().any(|taken| taken.overlaps(&roomy)) {
        return f64::INFINITY;
    }
    // Words that end at an edge read as if it cut them off.
    let wide = place.area.grown(EDGE_CLEAR * field.clearance);
    let straddled = |edge: &&f64| **edge > wide.left && **edge < wide.right;
    let mut cost = place.cost + STRADDLING * field.edges.iter().filter(straddled).count() as f64;
    for obstacle in &field.obstacles {
        let own = owner.is_some() && obstacle.owner == owner;
        let area = if own {
            place.area.grown(0.6 * field.clearance)
        } else {
            roomy
        };
        let hidden = length_inside(&obstacle.points, &area);
        if hidden > 0.0 {
            cost += CROSSING[usize::from(!own)] + hidden / field.clearance.max(1.0);
        } else if !own && owner.is_some() {
            cost += nearness_cost(&obstacle.points, &place.area, place.target);
        }
        if place.leader && !own {
            let leader = leader_of(place, field.half_line);
            let is_hidden = |share: &f64| {
                let [x, y] = [0, 1]
                    .map(|axis| leader[1][axis] + share * (leader[0][axis] - leader[1][axis]));
                let near = Rect::new(x, y, x, y).grown(field.clearance);
                length_inside(&obstacle.points, &near) > 0.0
            };
            let hidden = LED.iter().filter(|share| is_hidden(share)).count();
            if hidden > 1 {
                cost += LEADER_ALONG;
            } else if hidden > 0 || crosses(&obstacle.points, &leader) {
                cost += LEADER_ACROSS;
            }
        }
    }
    cost
}

/// A label that stands nearer to another curve than to its own would be read as that one's.
fn nearness_cost(points: &[PixelPoint], area: &Rect, target: PixelPoint) -> f64 {
    let own = gap_between(area, target);
    let nearest = points.iter().map(|point| squared_gap(area, *point));
    let other = nearest.fold(f64::INFINITY, f64::min).sqrt();
    if other <= own * 1.15 {
        MISREAD
    } else {
        12.0 * (own / other).min(1.0)
    }
}

/// Distance from a rectangle to a point; 0 inside.
#[must_use]
pub fn gap_between(area: &Rect, point: PixelPoint) -> f64 {
    squared_gap(area, point).sqrt()
}

/// The square of that distance, which orders points alike and is quicker.
#[must_use]
pub fn squared_gap(area: &Rect, point: PixelPoint) -> f64 {
    let beyond = |value: f64, least: f64, most: f64| {
        if value < least {
            least - value
        } else if value > most {
            value - most
        } else {
            0.0
        }
    };
    let dx = beyond(point[0], area.left, area.right);
    let dy = beyond(point[1], area.top, area.bottom);
    dx * dx + dy * dy
}

/// The point of a rectangle that is nearest to another point.
#[must_use]
pub fn nearest_on(area: &Rect, point: PixelPoint) -> PixelPoint {
    [
        point[0].clamp(area.left, area.right),
        point[1].clamp(area.top, area.bottom),
    ]
}

/// The leader of a place, from its words to its point: what is priced here is what is drawn.
#[must_use]
pub fn leader_of(place: &LabelPlace, half_line: f64) -> [PixelPoint; 2] {
    let from = leader_start(&place.area, place.target, half_line);
    [from, place.target]
}

/// Where a leader leaves a block of words: the nearest point, but farther beside it than above or below the middle of the nearest
/// line, so that it meets words and not a corner.
#[must_use]
pub fn leader_start(area: &Rect, target: PixelPoint, half_line: f64) -> PixelPoint {
    let corner = nearest_on(area, target);
    let [aside, along] = [0, 1].map(|axis| (corner[axis] - target[axis]).abs());
    let inset = match aside > along {
        true => half_line.min(0.5 * area.height()),
        false => 0.0,
    };
    let Rect { top, bottom, .. } = *area;
    let lines = Rect {
        top: top + inset,
        bottom: bottom - inset,
        ..*area
    };
    nearest_on(&lines, target)
}

fn length_inside(points: &[PixelPoint], area: &Rect) -> f64 {
    points
        .windows(2)
        .filter(|pair| !is_beside(pair[0], pair[1], area))
        .filter_map(|pair| segment_inside(pair[0], pair[1], area))
        .map(|(from, to)| (to[0] - from[0]).hypot(to[1] - from[1]))
        .sum()
}

/// Whether both ends lie beyond the same edge, so that nothing of a segment is inside.
fn is_beside(from: PixelPoint, to: PixelPoint, area: &Rect) -> bool {
    (from[0] < area.left && to[0] < area.left)
        || (from[0] > area.right && to[0] > area.right)
        || (from[1] < area.top && to[1] < area.top)
        || (from[1] > area.bottom && to[1] > area.bottom)
}

fn crosses(points: &[PixelPoint], line: &[PixelPoint; 2]) -> bool {
    points.windows(2).any(|pair| {
        let side = |a: PixelPoint, b: PixelPoint, c: PixelPoint| {
            (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])
        };
        side(pair[0], pair[1], line[0]) * side(pair[0], pair[1], line[1]) < 0.0
            && side(line[0], line[1], pair[0]) * side(line[0], line[1], pair[1]) < 0.0
    })
}

/// Places of extents on a line, in order, without overlap, as near as possible to where they want
/// their middles to be (least squares), inside `from..to` if they fit.
#[must_use]
pub fn spread(wanted: &[f64], extents: &[f64], from: f64, to: f64) -> Vec<f64> {
    let mut offset = 0.0;
    let mut blocks: Vec<(f64, usize)> = Vec::new();
    let mut offsets = Vec::with_capacity(wanted.len());
    for (want, extent) in wanted.iter().zip(extents) {
        offsets.push(offset + extent / 2.0);
        blocks.push((want - offset - extent / 2.0, 1));
        offset += extent;
        while let [.., (before, many), (after, more)] = blocks[..] {
            if before <= after {
                break;
            }
            let all = many + more;
            let mean = (before * many as f64 + after * more as f64) / all as f64;
            blocks.truncate(blocks.len() - 2);
            blocks.push((mean, all));
        }
    }
    let most = (to - offset).max(from);
    blocks
        .iter()
        .flat_map(|(start, many)| std::iter::repeat_n(start.clamp(from, most), *many))
        .zip(offsets)
        .map(|(start, offset)| start + offset)
        .collect()
}
