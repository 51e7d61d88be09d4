//! The equation of motion along the range: what the muscles bring, what the load asks, what is moved.
//!
//! In: the body's track, the grid of capacity, a setup. Out: the acceleration at any place, speed,
//! activation and direction, and the energy that passes.

use super::capacity_grid::CapacityGrid;
use super::range_table::Table;
use super::track::{Track, TrackPoint};
use crate::resistance::{Item, Motion, Setup};

/// A body and a load, ready to be moved.
#[derive(Debug, Clone)]
pub struct MotionEquation<'a> {
    pub(super) track: &'a Track,
    pub(super) grid: &'a CapacityGrid,
    load: Table<7>,
}

/// Which of the load's two laws holds.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Way {
    /// Lifting or holding.
    Up,
    /// Lowering.
    Down,
}

/// Every term of the equation at one place and speed, in units of the range.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(super) struct Terms {
    /// The body's part.
    pub(super) track: TrackPoint,
    /// Generalised force of full activation, without enhancement.
    pub(super) full: f64,
    /// Generalised force that the load asks for, momentum of picked-up links included.
    pub(super) demand: f64,
    /// Inertia of the load as it moves along the range.
    pub(super) load_inertia: f64,
    /// Slope of that inertia from geometry alone, without what is picked up.
    pub(super) load_inertia_slope: f64,
    /// Energy per unit of range that picked-up links carry into the motion at this speed.
    pub(super) picked_up: f64,
    /// Activation of the muscles that hold the load back.
    pub(super) held_back: f64,
}

impl Terms {
    /// Effective inertia of limbs and load.
    #[inline]
    pub(super) fn inertia(&self) -> f64 {
        self.track.limb_inertia + self.load_inertia
    }

    #[inline]
    fn inertia_slope(&self) -> f64 {
        self.track.limb_inertia_slope + self.load_inertia_slope
    }

    /// Generalised force of muscles and limbs at a drive (activation times enhancement).
    ///
    /// ```text
    /// Q = d·(C − P) + P − b·B
    /// ```
    /// `b` activation of the antagonists, `B` how far they reach below the relaxed limb.
    #[inline]
    pub(super) fn muscles(&self, drive: f64) -> f64 {
        drive * (self.full - self.track.passive) + self.track.passive
            - self.held_back * self.track.braking
    }

    /// Acceleration along the range at a drive, 1/s².
    #[inline]
    pub(super) fn acceleration(&self, drive: f64, speed: f64) -> f64 {
        let net = self.muscles(drive) - self.demand;
        (net - 0.5 * self.inertia_slope() * speed * speed) / self.inertia()
    }

    /// Generalised force beyond the relaxed limb's that gives this acceleration.
    #[inline]
    pub(super) fn needed_for(&self, acceleration: f64, speed: f64) -> f64 {
        self.inertia() * acceleration + 0.5 * self.inertia_slope() * speed * speed + self.demand
            - self.track.passive
    }

    /// The drive that gives this acceleration; not held inside 0 to 1.
    #[inline]
    pub(super) fn drive_for(&self, acceleration: f64, speed: f64) -> f64 {
        self.needed_for(acceleration, speed) / (self.full - self.track.passive).max(1.0e-9)
    }

    /// Force (N) or torque (N·m) between lifter and load at this acceleration, along the path.
    pub(super) fn between_hands_and_load(&self, acceleration: f64, speed: f64) -> f64 {
        let generalised = self.demand
            + self.load_inertia * acceleration
            + 0.5 * self.load_inertia_slope * speed * speed;
        generalised / self.track.lever.max(1.0e-9)
    }

    /// Rate at which net work enters the kinetic energy, W.
    pub(super) fn net_power_w(&self, drive: f64, speed: f64) -> f64 {
        speed * (self.muscles(drive) - self.demand + self.picked_up)
    }
}

impl<'a> MotionEquation<'a> {
    /// The equation of a setup that is already put up over the track's points.
    ///
    /// ```text
    /// m(s)·s̈ + ½·m′(s)·ṡ² = d·(C(s, ṡ) − P(s)) + P(s) − D(s, ṡ)
    /// m = m_limbs + M·|dx/ds|²,   D = −F·dx/ds = D₀(s) + D₂(s)·ṡ²
    /// ```
    /// | symbol    | meaning                                                    | unit            |
    /// | --------- | ---------------------------------------------------------- | --------------- |
    /// | `s`       | place in the range                                         | –               |
    /// | `d`       | drive: activation × enhancement                            | –               |
    /// | `C`       | generalised force of full activation (the pose's programme)| N·m per range   |
    /// | `P`       | that of limb weight and passive tissue                     | N·m per range   |
    /// | `F`, `x`  | the load's force on the lifter, its point                  | N, m            |
    /// | `M`       | mass of the load as felt along the path                    | kg              |
    /// | `D₂`      | momentum of links that are picked up, ρ·v² (chains only)   | kg·m² per range²|
    ///
    /// Bands have no mass. `m′` is the geometric slope: links that are picked up add mass at rest, and
    /// what they take is already in `D₂`, so their growth is left out of `m′`.
    ///
    /// **Source.** Lagrange's equation for one degree of freedom; momentum of a picked-up chain.
    /// **Differs.** Only the part of the limbs' inertia along the range counts; how it shares out over
    /// the joints is left to the muscles as for the load itself (arms are a tenth of a heavy bar).
    pub(super) fn new(track: &'a Track, grid: &'a CapacityGrid, setup: &Setup) -> Self {
        let rows = (0..track.points.len())
            .map(|index| load_row(track, setup, index))
            .collect();
        Self {
            track,
            grid,
            load: Table::through(rows),
        }
    }

    /// Acceleration along the range at a place, a speed and a drive (activation times enhancement), 1/s².
    #[must_use]
    pub fn acceleration(&self, range: f64, speed: f64, drive: f64) -> f64 {
        let way = if speed < 0.0 { Way::Down } else { Way::Up };
        self.terms(range, speed, way).acceleration(drive, speed)
    }

    /// Every term at a place and speed.
    #[inline]
    pub(super) fn terms(&self, s: f64, speed: f64, way: Way) -> Terms {
        let track = self.track.at(s);
        let (value, slope) = self.load.at(s);
        let [
            up,
            up_squared,
            up_mass,
            up_chain,
            down,
            down_mass,
            down_chain,
        ] = value;
        let (still, squared, mass, chain, mass_slope, chain_slope) = match way {
            Way::Up => (up, up_squared, up_mass, up_chain, slope[2], slope[3]),
            Way::Down => (down, 0.0, down_mass, down_chain, slope[5], slope[6]),
        };
        // M·lever² of the chain grows by geometry with lever² and by what is picked up with the rest.
        let by_geometry = 2.0 * chain * track.lever_slope / track.lever.max(1.0e-9);
        Terms {
            track,
            full: self.grid.at(s, speed),
            demand: still + squared * speed * speed,
            load_inertia: mass + chain,
            load_inertia_slope: mass_slope + by_geometry,
            picked_up: 0.5 * (chain_slope - by_geometry) * speed * speed,
            held_back: 0.0,
        }
    }
}

/// Lifting: demand at rest and per squared speed, inertia without and of chains; lowering: the same
/// without the squared part.
fn load_row(track: &Track, setup: &Setup, index: usize) -> [f64; 7] {
    let (point, carrier) = (&track.points[index], &track.carrier);
    let path_2 = point.dx_ds_m.powi(2) + point.dz_ds_m.powi(2);
    let chains: f64 = setup
        .items
        .iter()
        .map(|item| match item {
            Item::Chain(hung) => hung.mass_kg(point, carrier),
            _ => 0.0,
        })
        .sum();
    let at = |motion: Motion| {
        let felt = setup.total_at(point, carrier, motion);
        let work = felt.force.x_n * point.dx_ds_m + felt.force.z_n * point.dz_ds_m;
        (
            -work * track.load_share,
            (felt.moving_mass_kg - chains) * path_2 * track.load_share,
        )
    };
    let (up, up_mass) = at(Motion::Hold);
    let (fast, _) = at(Motion::Lift { speed_m_s: 1.0 });
    let (down, down_mass) = at(Motion::Lower { speed_m_s: 1.0e-6 });
    let chain = chains * path_2 * track.load_share;
    [
        up,
        (fast - up) * path_2,
        up_mass,
        chain,
        down,
        down_mass,
        chain,
    ]
}
