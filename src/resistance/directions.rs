//! Directions in the plane of the movement: along the path, towards an anchor, sums of forces.
//!
//! In: load points and forces. Out: unit directions and their products. Knows no implement.

use crate::movement::{Carrier, LoadPoint, PlaneForce};

/// A direction of length 1 in the plane, (forward, up).
pub(super) type Direction = (f64, f64);

/// Straight down.
pub(super) const DOWN: Direction = (0.0, -1.0);

/// Shorter than this a path or a band has no direction, m.
const TINY_M: f64 = 1e-9;

/// The direction of (x, z), or `None` for a vector too short to have one.
pub(super) fn unit(x: f64, z: f64) -> Option<Direction> {
    let length = x.hypot(z);
    (length > TINY_M && length.is_finite()).then(|| (x / length, z / length))
}

/// The direction in which the load moves while it is lifted.
///
/// A point that stands still has none of its own: a sled then goes up its rails, anything else up.
pub(super) fn lifting_direction(point: &LoadPoint, carrier: &Carrier) -> Direction {
    unit(point.dx_ds_m, point.dz_ds_m).unwrap_or(match carrier {
        Carrier::Sled { angle_rad } => (angle_rad.cos(), angle_rad.sin()),
        _ => (0.0, 1.0),
    })
}

/// Product of two directions: the cosine of the angle between them.
pub(super) fn cosine(a: Direction, b: Direction) -> f64 {
    a.0 * b.0 + a.1 * b.1
}

/// Part of a force along a direction, N.
pub(super) fn along_n(force: PlaneForce, direction: Direction) -> f64 {
    force.x_n * direction.0 + force.z_n * direction.1
}

/// A force of this size along a direction.
pub(super) fn force_along(size_n: f64, direction: Direction) -> PlaneForce {
    PlaneForce {
        x_n: size_n * direction.0,
        z_n: size_n * direction.1,
    }
}

/// Sum of two forces.
pub(super) fn plus(a: PlaneForce, b: PlaneForce) -> PlaneForce {
    PlaneForce {
        x_n: a.x_n + b.x_n,
        z_n: a.z_n + b.z_n,
    }
}

/// What the lifter feels of a force: all of it in the hands, only the part along the path on rails
/// or on the pad of a machine lever (the machine's bearings take the rest).
pub(super) fn felt(force: PlaneForce, point: &LoadPoint, carrier: &Carrier) -> PlaneForce {
    match carrier {
        Carrier::Sled { .. } | Carrier::Lever { .. } => {
            let lifting = lifting_direction(point, carrier);
            force_along(along_n(force, lifting), lifting)
        }
        Carrier::Bar | Carrier::Dumbbell | Carrier::Body => force,
    }
}

/// Direction cosine below which a band or a cable passes gradually from one branch to the other.
/// Assumed: it only keeps the force continuous where the load moves square to the line of pull.
const BRANCH_CHANGE_COSINE: f64 = 0.1;

/// How far something is on its way back: 0 while it is drawn out, 1 while it shortens, smooth between.
///
/// `drawing_out` is the cosine between the motion and the direction away from the anchor.
pub(super) fn share_of_way_back(drawing_out: f64) -> f64 {
    let place = (drawing_out / BRANCH_CHANGE_COSINE).clamp(-1.0, 1.0);
    0.5 - 0.25 * place * (3.0 - place * place)
}
