//! What a picture is measured by: boxes of words, leaders, curves, regions and bodies against each other, the share of
//! the height that data have, type sizes, contrast, the direction of time. All from the scene, none by eye.

use crate::text_boxes::{TextBox, text_boxes};
use torquill::draw::palette::{MARK_CONTRAST, TEXT_CONTRAST};
use torquill::draw::scale::segment_inside;
use torquill::draw::{Colour, Layer, Primitive, Rect, Scene, contrast};
use torquill::plot::{DATA_SHARE, Look, Size};

/// Least type on a slide, of 1080 pixels.
const SLIDE_PX: f64 = 36.0;
/// Least type on a page: 8 pt at 150 dots an inch.
const PAGE_PX: f64 = 8.0 / 72.0 * 150.0;
/// Least type on any other size that is not a slide's, pixels.
const SCREEN_PX: f64 = 12.9;
/// Points of a line from which on it is a curve over the range; level lines and bars have fewer.
const CURVE_POINTS: usize = 15;

/// Everything that is wrong with a picture, in words.
pub fn faults(scene: &Scene, look: Look) -> Vec<String> {
    let mut all = Vec::new();
    all.extend(crowding(scene));
    all.extend(type_sizes(scene, look));
    all.extend(text_contrast(scene));
    all.extend(mark_contrast(scene, look));
    let share = data_share(scene);
    if share < DATA_SHARE - 1e-6 {
        all.push(format!("data have {:.1} % of the height", 100.0 * share));
    }
    all.extend(cut_words(scene));
    all
}

/// The share of the height in which data are drawn: what the plots cover together, from top to bottom.
fn data_share(scene: &Scene) -> f64 {
    let mut ends: Vec<[f64; 2]> = scene.plots.iter().map(|p| [p.top, p.bottom]).collect();
    ends.sort_by(|a, b| a[0].total_cmp(&b[0]));
    let start = (0.0, f64::NEG_INFINITY);
    let (covered, _) = ends.iter().fold(start, |(sum, reach), [top, bottom]| {
        let from: f64 = top.max(reach);
        (sum + (bottom - from).max(0.0), reach.max(*bottom))
    });
    covered / scene.height
}

/// Words that were cut off.
fn cut_words(scene: &Scene) -> Vec<String> {
    let cut = text_boxes(scene)
        .into_iter()
        .filter(|text| text.content.ends_with('…'));
    cut.map(|text| format!("cut: `{}`", text.content)).collect()
}

fn on_layer<'a>(
    scene: &'a Scene,
    layer: Layer,
) -> impl Iterator<Item = (usize, &'a Primitive)> + 'a {
    let shapes = scene.shapes.iter().zip(&scene.layers).enumerate();
    shapes
        .filter(move |(_, (_, own))| **own == layer)
        .map(|(index, (shape, _))| (index, shape))
}

fn lines(scene: &Scene, layer: Layer) -> Vec<&Vec<[f64; 2]>> {
    on_layer(scene, layer)
        .filter_map(|(_, shape)| match shape {
            Primitive::Polyline { points, .. } => Some(points),
            _ => None,
        })
        .collect()
}

fn crosses(line: &[[f64; 2]], area: &Rect) -> bool {
    line.windows(2)
        .any(|pair| segment_inside(pair[0], pair[1], area).is_some())
}

/// Words off the canvas, over each other, over curves, leaders, bodies and the edges of regions; leaders over each
/// other and over curves' names.
fn crowding(scene: &Scene) -> Vec<String> {
    let boxes = text_boxes(scene);
    let mut found = Vec::new();
    for (index, one) in boxes.iter().enumerate() {
        let name = &one.content;
        if !scene.canvas().contains(&one.area) {
            found.push(format!("`{name}` leaves the canvas"));
        }
        let core = one.area.grown(-0.01);
        for other in &boxes[index + 1..] {
            if core.overlaps(&other.area) {
                found.push(format!("`{name}` meets `{}`", other.content));
            }
        }
    }
    let inner = |text: &TextBox| {
        // Between the top of the capitals and the baseline nothing may pass.
        let Rect {
            left,
            top,
            right,
            bottom,
        } = text.area;
        Rect::new(
            left,
            top + 0.06 * text.size,
            right,
            bottom - 0.2 * text.size,
        )
    };
    for (layer, what) in [(Layer::Curve, "a curve"), (Layer::Leader, "a leader")] {
        for line in lines(scene, layer) {
            for text in &boxes {
                if crosses(line, &inner(text)) {
                    found.push(format!("{what} runs through `{}`", text.content));
                }
            }
        }
    }
    found.extend(crossed_leaders(scene));
    found.extend(over_bodies(scene, &boxes));
    found.extend(over_edges(scene, &boxes));
    found
}

fn crossed_leaders(scene: &Scene) -> Vec<String> {
    let leaders = lines(scene, Layer::Leader);
    let mut found = Vec::new();
    for (index, one) in leaders.iter().enumerate() {
        for other in &leaders[index + 1..] {
            let pairs = one
                .windows(2)
                .flat_map(|a| other.windows(2).map(move |b| (a, b)));
            if pairs.into_iter().any(|(a, b)| cross(a, b)) {
                found.push(format!("leaders cross at {:?}", other[0]));
            }
        }
    }
    found
}

fn cross(a: &[[f64; 2]], b: &[[f64; 2]]) -> bool {
    let side = |p: [f64; 2], q: [f64; 2], r: [f64; 2]| {
        (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0])
    };
    side(a[0], a[1], b[0]) * side(a[0], a[1], b[1]) < -1e-6
        && side(b[0], b[1], a[0]) * side(b[0], b[1], a[1]) < -1e-6
}

/// Words and curves over bodies.
fn over_bodies(scene: &Scene, boxes: &[TextBox]) -> Vec<String> {
    let mut found = Vec::new();
    let curves = lines(scene, Layer::Curve);
    for limb in lines(scene, Layer::Pose) {
        for text in boxes
            .iter()
            .filter(|text| crosses(limb, &text.area.grown(-0.5)))
        {
            found.push(format!("a body meets `{}`", text.content));
        }
        let hit = |curve: &&&Vec<[f64; 2]>| {
            curve
                .windows(2)
                .any(|a| limb.windows(2).any(|b| cross(a, b)))
        };
        if curves.iter().any(|curve| hit(&curve)) {
            found.push("a curve runs through a body".to_owned());
        }
    }
    found
}

/// Words across the edge of a shaded region.
fn over_edges(scene: &Scene, boxes: &[TextBox]) -> Vec<String> {
    let mut found = Vec::new();
    for (_, shape) in on_layer(scene, Layer::Region) {
        let Primitive::Rectangle { area, .. } = shape else {
            continue;
        };
        // A map is a field of many small rectangles, and no words stand across an edge between two.
        if area.width() < 4.0 || area.height() < 0.3 * scene.height {
            continue;
        }
        for text in boxes {
            let own = text.area.grown(-1.0);
            let inside = area.contains(&own);
            if own.overlaps(area) && !inside {
                found.push(format!("`{}` stands across a region's edge", text.content));
            }
        }
    }
    found
}

fn type_sizes(scene: &Scene, look: Look) -> Vec<String> {
    let least = match look.size {
        Size::Slide | Size::UnderTitle => SLIDE_PX,
        Size::Page => PAGE_PX,
        Size::Custom { width, height } => {
            let unit = (f64::from(width) / 1920.0).min(f64::from(height) / 1080.0);
            SCREEN_PX.max(SLIDE_PX * unit)
        }
    };
    let small = text_boxes(scene)
        .into_iter()
        .filter(|text| text.size < least - 0.01);
    small
        .map(|text| format!("`{}` has {:.1} px", text.content, text.size))
        .collect()
}

fn text_contrast(scene: &Scene) -> Vec<String> {
    let mut found = Vec::new();
    for (index, shape) in scene.shapes.iter().enumerate() {
        let Primitive::Text(text) = shape else {
            continue;
        };
        let ground = ground_at(scene, index, text.bounds().centre());
        let ratio = contrast(text.colour, ground);
        if ratio < TEXT_CONTRAST {
            found.push(format!("`{}` has contrast {ratio:.2}", text.content));
        }
    }
    found
}

/// Lines of data, axes, leaders and bodies against the ground that they run over; the grid may be fainter.
fn mark_contrast(scene: &Scene, look: Look) -> Vec<String> {
    let grid = look.theme.colours().grid;
    let mut found = Vec::new();
    for layer in [Layer::Curve, Layer::Leader, Layer::Axis, Layer::Pose] {
        for (index, shape) in on_layer(scene, layer) {
            let Primitive::Polyline { points, stroke } = shape else {
                continue;
            };
            if stroke.colour == grid {
                continue;
            }
            let [a, b] = [points[(points.len() - 1) / 2], points[points.len() / 2]];
            let middle = [f64::midpoint(a[0], b[0]), f64::midpoint(a[1], b[1])];
            let ground = ground_at(scene, index, middle);
            if stroke.colour == scene.background && is_core(scene, index, middle, stroke.width) {
                continue;
            }
            let ratio = contrast(stroke.colour.over(ground), ground);
            if ratio < MARK_CONTRAST {
                found.push(format!("a line of {layer:?} has contrast {ratio:.2}"));
            }
        }
    }
    found.dedup();
    found
}

/// Least width of a rim of a hollow line, pixels of the slide's height of 1080.
const RIM_PX: f64 = 1.5;

/// Whether a line is the core of a hollow one: a wider line of its layer runs below it there, whose rims are seen on both sides.
fn is_core(scene: &Scene, index: usize, at: [f64; 2], width: f64) -> bool {
    let least = RIM_PX * scene.height / 1080.0;
    scene.shapes[..index].iter().any(|shape| match shape {
        Primitive::Polyline { points, stroke } => {
            let rim = (stroke.width - width) / 2.0;
            let near = |pair: &[[f64; 2]]| off_segment(at, pair[0], pair[1]) < 0.3 * rim.max(0.0);
            rim >= least && points.windows(2).any(near)
        }
        _ => false,
    })
}

/// Distance of a point from a piece of a line.
fn off_segment(at: [f64; 2], a: [f64; 2], b: [f64; 2]) -> f64 {
    let (dx, dy) = (b[0] - a[0], b[1] - a[1]);
    let square = (dx * dx + dy * dy).max(f64::MIN_POSITIVE);
    let share = (((at[0] - a[0]) * dx + (at[1] - a[1]) * dy) / square).clamp(0.0, 1.0);
    (at[0] - a[0] - share * dx).hypot(at[1] - a[1] - share * dy)
}

/// The colour of the ground at a point below the shape of this number.
fn ground_at(scene: &Scene, before: usize, at: [f64; 2]) -> Colour {
    scene.shapes[..before]
        .iter()
        .fold(scene.background, |ground, shape| match shape {
            Primitive::Rectangle { area, fill } if area.holds(at) => fill.over(ground),
            Primitive::Polygon { points, fill } if holds(points, at) => fill.over(ground),
            _ => ground,
        })
}

/// Whether a ray to the right crosses the closed line an odd number of times.
fn holds(corners: &[[f64; 2]], at: [f64; 2]) -> bool {
    let crossings = (0..corners.len()).filter(|&index| {
        let (a, b) = (corners[index], corners[(index + 1) % corners.len()]);
        (a[1] > at[1]) != (b[1] > at[1])
            && at[0] < a[0] + (at[1] - a[1]) / (b[1] - a[1]) * (b[0] - a[0])
    });
    crossings.count() % 2 == 1
}

/// What is wrong with the direction of time: every curve over the range begins at the left, and an arrowhead stands at
/// the right end of an axis.
pub fn time_faults(scene: &Scene) -> Vec<String> {
    let mut found = Vec::new();
    for line in lines(scene, Layer::Curve) {
        if line.len() >= CURVE_POINTS && line[0][0] >= line[line.len() - 1][0] {
            found.push("a curve runs from right to left".to_owned());
        }
    }
    let ends: Vec<[f64; 2]> = scene
        .plots
        .iter()
        .map(|plot| [plot.right, plot.bottom])
        .collect();
    let has_arrow = on_layer(scene, Layer::Axis).any(|(_, shape)| match shape {
        Primitive::Polygon { points, .. } => ends.iter().any(|end| {
            points
                .iter()
                .any(|point| point[0] > end[0] && (point[1] - end[1]).abs() < 0.01)
        }),
        _ => false,
    });
    if !has_arrow {
        found.push("no arrow says which way time goes".to_owned());
    }
    found
}
