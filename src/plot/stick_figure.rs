//! Stick figures: poses as lines between joints, several on one scale.
//!
//! In: [`StickFigure`]s in metres, y upwards. Out: shapes inside a box of a scene.

use super::frame::Frame;
use crate::draw::{Colour, Colours, PixelPoint, Rect, Scene, Stroke};

/// What the figure holds.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum DrawnLoad {
    /// A barbell seen from its end: the plate as a disc.
    Bar {
        /// Middle of the bar, m.
        at: [f64; 2],
        /// Radius of the plates, m.
        radius_m: f64,
    },
    /// A dumbbell seen from the side.
    Dumbbell {
        /// Middle of the handle, m.
        at: [f64; 2],
    },
}

/// A pose as lines, in metres, x forwards, y upwards.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct StickFigure {
    /// Each limb as its joints in order.
    pub limbs: Vec<Vec<[f64; 2]>>,
    /// Middle and radius of the head, if it is seen.
    pub head: Option<([f64; 2], f64)>,
    /// What it holds, where that is seen.
    pub load: Option<DrawnLoad>,
    /// Floor, bench, seat: lines between two points.
    pub supports: Vec<[[f64; 2]; 2]>,
}

impl StickFigure {
    /// Left, lower, right and upper end in metres; none if nothing is drawn.
    #[must_use]
    pub fn extent(&self) -> Option<[f64; 4]> {
        let corners = self.corners();
        let first = *corners.first()?;
        let start = [first[0], first[1], first[0], first[1]];
        Some(corners.iter().fold(start, |reach, corner| {
            [
                reach[0].min(corner[0]),
                reach[1].min(corner[1]),
                reach[2].max(corner[0]),
                reach[3].max(corner[1]),
            ]
        }))
    }

    /// The outermost points of everything that is drawn, m.
    fn corners(&self) -> Vec<[f64; 2]> {
        let mut corners: Vec<[f64; 2]> = Vec::new();
        for joints in &self.limbs {
            corners.extend(joints);
        }
        for ends in &self.supports {
            corners.extend(ends);
        }
        let mut disc = |at: [f64; 2], radius: f64| {
            for [across, up] in [[-1.0, 0.0], [1.0, 0.0], [0.0, -1.0], [0.0, 1.0]] {
                corners.push([at[0] + across * radius, at[1] + up * radius]);
            }
        };
        if let Some((at, radius)) = self.head {
            disc(at, radius);
        }
        match self.load {
            Some(DrawnLoad::Bar { at, radius_m }) => disc(at, radius_m),
            Some(DrawnLoad::Dumbbell { at }) => disc(at, DUMBBELL_HALF_M),
            None => {}
        }
        corners.retain(|corner| corner.iter().all(|value| value.is_finite()));
        corners
    }
}

/// Half the length of a drawn dumbbell, m; assumed, a drawing's measure only.
const DUMBBELL_HALF_M: f64 = 0.13;

/// One scale for several figures: pixels a metre, and the common frame in metres.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct StickScale {
    px_per_m: f64,
    width_m: f64,
    low_m: f64,
    height_m: f64,
}

impl StickScale {
    /// The largest scale at which every figure fits into a box of the given size.
    ///
    /// All figures stand on one level, so that a rising bar is seen to rise.
    #[must_use]
    pub fn fitting(figures: &[&StickFigure], width_px: f64, height_px: f64) -> Option<Self> {
        let extents: Vec<[f64; 4]> = figures
            .iter()
            .filter_map(|figure| figure.extent())
            .collect();
        let low_m = extents.iter().map(|extent| extent[1]).reduce(f64::min)?;
        let high_m = extents.iter().map(|extent| extent[3]).reduce(f64::max)?;
        let width_m = extents
            .iter()
            .map(|extent| extent[2] - extent[0])
            .reduce(f64::max)?
            .max(0.05);
        let height_m = (high_m - low_m).max(0.05);
        Some(Self {
            px_per_m: (width_px / width_m).min(height_px / height_m),
            width_m,
            low_m,
            height_m,
        })
    }

    /// Pixels a metre.
    #[must_use]
    pub fn px_per_m(&self) -> f64 {
        self.px_per_m
    }

    /// Width that the widest figure takes, pixels.
    #[must_use]
    pub fn width_px(&self) -> f64 {
        self.width_m * self.px_per_m
    }

    /// Width of a figure, and its height above the common ground, pixels.
    #[must_use]
    pub fn extent_px(&self, figure: &StickFigure) -> [f64; 2] {
        let Some([left, _, right, top]) = figure.extent() else {
            return [0.0, 0.0];
        };
        [
            (right - left) * self.px_per_m,
            (top - self.low_m) * self.px_per_m,
        ]
    }

    /// Height that the figures take together, pixels.
    #[must_use]
    pub fn height_px(&self) -> f64 {
        self.height_m * self.px_per_m
    }
}

/// Where metres of one figure land in its box.
pub struct StandingFigure {
    px_per_m: f64,
    middle_m: f64,
    low_m: f64,
    foot: PixelPoint,
    /// Width of a limb.
    limb: f64,
}

impl StandingFigure {
    /// A place of the figure in pixels.
    #[must_use]
    pub fn px(&self, at: [f64; 2]) -> PixelPoint {
        [
            self.foot[0] + (at[0] - self.middle_m) * self.px_per_m,
            self.foot[1] - (at[1] - self.low_m) * self.px_per_m,
        ]
    }
}

/// Draws a figure centred in the box, standing on its lower edge.
pub fn draw(frame: &mut Frame, figure: &StickFigure, stage: &StickScale, area: &Rect) {
    if let Some(standing) = standing(frame, figure, stage, area) {
        draw_standing(
            &mut frame.scene,
            &frame.colours,
            figure,
            &standing,
            Limbs::Plain,
        );
    }
}

/// Where a figure lands centred in the box, standing on its lower edge; none if nothing is drawn.
#[must_use]
pub fn standing(
    frame: &Frame,
    figure: &StickFigure,
    stage: &StickScale,
    area: &Rect,
) -> Option<StandingFigure> {
    let extent = figure.extent()?;
    let unit = frame.measures.unit;
    Some(StandingFigure {
        px_per_m: stage.px_per_m,
        middle_m: (extent[0] + extent[2]) / 2.0,
        low_m: stage.low_m,
        foot: [area.centre()[0], area.bottom],
        limb: (0.06 * stage.px_per_m).clamp(3.0 * unit, 11.0 * unit),
    })
}

/// How limbs are drawn.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Limbs {
    /// In ink.
    Plain,
    /// Paler, below what is drawn upon them.
    Faint,
    /// As bones: an edge around the ground, wide enough to carry lines.
    Hollow,
}

/// Opacity of a plate.
const PLATE: f64 = 0.2;
/// Width of a hollow bone, and of its edge, over that of a limb.
const BONE: f64 = 1.9;
const BONE_EDGE: f64 = 0.32;

/// Draws a figure where it stands.
pub fn draw_standing(
    scene: &mut Scene,
    colours: &Colours,
    figure: &StickFigure,
    standing: &StandingFigure,
    limbs: Limbs,
) {
    let rule = colours.rule;
    let ink = match limbs {
        Limbs::Plain => colours.ink,
        Limbs::Faint | Limbs::Hollow => colours.muted,
    };
    for ends in &figure.supports {
        let line = Stroke::solid(rule, standing.limb * 0.6);
        scene.line(standing.px(ends[0]), standing.px(ends[1]), line);
    }
    // Behind the body, in the grey of supports: no curve's colour, and no part of the body is hidden.
    match figure.load {
        Some(DrawnLoad::Bar { at, radius_m }) => draw_bar(scene, standing, (at, radius_m), rule),
        Some(DrawnLoad::Dumbbell { at }) => draw_dumbbell(scene, standing, at, rule),
        None => {}
    }
    let bones = [(rule, BONE), (colours.background, BONE - 2.0 * BONE_EDGE)];
    let strokes: &[(Colour, f64)] = match limbs {
        Limbs::Plain | Limbs::Faint => &[(ink, 1.0)],
        Limbs::Hollow => &bones,
    };
    for (colour, share) in strokes {
        for joints in &figure.limbs {
            let points = joints.iter().map(|joint| standing.px(*joint)).collect();
            scene.polyline(points, Stroke::solid(*colour, share * standing.limb));
        }
    }
    if let Some((at, radius_m)) = figure.head {
        scene.disc(standing.px(at), radius_m * standing.px_per_m, ink);
    }
}

fn draw_bar(
    scene: &mut Scene,
    standing: &StandingFigure,
    (at, radius_m): ([f64; 2], f64),
    colour: Colour,
) {
    let (limb, centre) = (standing.limb, standing.px(at));
    let radius = (radius_m * standing.px_per_m).max(limb);
    scene.disc(centre, radius, colour.with_opacity(PLATE));
    scene.ring(centre, radius, Stroke::solid(colour, limb * 0.45));
    scene.disc(centre, limb * 0.75, colour);
}

fn draw_dumbbell(scene: &mut Scene, standing: &StandingFigure, at: [f64; 2], colour: Colour) {
    let limb = standing.limb;
    let [x, y] = standing.px(at);
    let half = DUMBBELL_HALF_M * standing.px_per_m;
    let handle = Stroke::solid(colour, limb * 0.5);
    scene.line([x - half, y], [x + half, y], handle);
    for end in [x - half * 0.8, x + half * 0.8] {
        let plate = Stroke::solid(colour, limb * 1.1);
        scene.line([end, y - half * 0.35], [end, y + half * 0.35], plate);
    }
}
