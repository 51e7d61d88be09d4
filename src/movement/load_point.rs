//! Where a load acts at one place of the range: what capacity and demand share.

/// The point of load at one sample, in the plane of the movement.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct LoadPoint {
    /// Position along the concentric phase, 0 at its start, 1 at its end.
    pub range: f64,
    /// Horizontal place of the load, m (forward or outward positive).
    pub x_m: f64,
    /// Height of the load above the floor, m.
    pub z_m: f64,
    /// Change of `x_m` along the range, m.
    pub dx_ds_m: f64,
    /// Change of `z_m` along the range, m.
    pub dz_ds_m: f64,
    /// Distance travelled along the path since its start, m.
    pub travel_m: f64,
    /// Angle of the moving joint or machine lever since the start of the range, rad (0 where there is none).
    pub lever_rad: f64,
}

/// A way along the path, m: what rounding makes of none is none.
pub(super) fn travelled(way_m: f64) -> f64 {
    /// A thousandth of a nanometre.
    const NONE_M: f64 = 1.0e-12;
    if way_m.abs() < NONE_M { 0.0 } else { way_m }
}

/// A force in the plane of the movement, as the load exerts it on the lifter.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct PlaneForce {
    /// Horizontal part, N.
    pub x_n: f64,
    /// Vertical part, N, upward positive (a weight is negative).
    pub z_n: f64,
}

impl PlaneForce {
    /// Size of the force, N.
    #[must_use]
    pub fn magnitude_n(self) -> f64 {
        self.x_n.hypot(self.z_n)
    }

    /// Whether it leans from plumb by more than a rounding error.
    #[must_use]
    pub fn leans(self) -> bool {
        self.x_n.abs() > 1.0e-9 * self.magnitude_n().max(1.0e-9)
    }
}

/// Where a load helps the lift instead of resisting it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Helping {
    /// Whether it helps at the start.
    pub at_start: bool,
    /// Share of the range over which it helps.
    pub share: f64,
}

/// Share of the range from which help counts behind the start (assumed: less is no more than the lock-out).
const SHARE_THAT_COUNTS: f64 = 0.1;

impl Helping {
    /// Where a load helps, from its work on the lifter over each small step along the range: positive where it moves
    /// the way it pulls. None where that is neither at the start nor over a good part.
    pub fn of(works: impl Iterator<Item = f64>) -> Option<Self> {
        let works: Vec<f64> = works.collect();
        let most = works
            .iter()
            .fold(0.0, |most: f64, work| most.max(work.abs()));
        let helps = |work: &f64| *work > 1.0e-6 * most;
        let count = works.iter().filter(|work| helps(work)).count();
        let found = Self {
            at_start: works.first().is_some_and(helps),
            share: count as f64 / works.len().max(1) as f64,
        };
        (found.at_start || found.share > SHARE_THAT_COUNTS).then_some(found)
    }
}

/// How a movement takes its load: decides which implements make sense.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Carrier {
    /// A bar in both hands, on the back or on the hips; weights act downward.
    Bar,
    /// A dumb-bell in each hand; the load named is that of one hand.
    Dumbbell,
    /// A sled on rails at this angle above the horizontal, rad; only the part along the rails counts.
    Sled {
        /// Angle of the rails above the horizontal, rad.
        angle_rad: f64,
    },
    /// A machine lever with a pad that pushes square to the limb at `pad_m` from the joint; the stack
    /// pulls on a round cam of radius `cam_m`.
    Lever {
        /// Distance of the pad from the joint, m.
        pad_m: f64,
        /// Radius of the cam that the stack's cable runs over, m.
        cam_m: f64,
    },
    /// The lifter's own body, with or without a belt or a bar on the shoulders.
    Body,
}
