//! A pose's outline as a stick figure.

use crate::movement::{Carrier, Pose, View};
use crate::numeric::Point;
use crate::plot::{DrawnLoad, StickFigure};

/// Radius of a large disc, m: half of the 450 mm of the rules of the sport.
const DISC_M: f64 = 0.225;

/// The stick figure of a pose with its load.
#[must_use]
pub(crate) fn stick_figure(pose: &Pose, carrier: Carrier) -> StickFigure {
    let outline = &pose.outline;
    StickFigure {
        limbs: outline
            .limbs
            .iter()
            .map(|limb| limb.iter().map(place).collect())
            .collect(),
        head: outline.head.map(|head| (place(&head), 0.1)),
        load: (!drawn_already(pose, carrier)).then(|| drawn_load(pose, carrier)),
        supports: outline
            .props
            .iter()
            .flat_map(|line| line.windows(2))
            .map(|pair| [place(&pair[0]), place(&pair[1])])
            .collect(),
    }
}

fn place(point: &Point) -> [f64; 2] {
    [point.x, point.z]
}

fn drawn_load(pose: &Pose, carrier: Carrier) -> DrawnLoad {
    let at = place(&pose.outline.load);
    match carrier {
        Carrier::Bar | Carrier::Sled { .. } => DrawnLoad::Bar {
            at,
            radius_m: 0.6 * DISC_M,
        },
        Carrier::Dumbbell | Carrier::Lever { .. } | Carrier::Body => DrawnLoad::Dumbbell { at },
    }
}

/// A bar seen from the front stands among the lines, and a body carries itself.
fn drawn_already(pose: &Pose, carrier: Carrier) -> bool {
    let front_bar = pose.outline.view == View::Front && carrier == Carrier::Bar;
    front_bar || carrier == Carrier::Body
}
