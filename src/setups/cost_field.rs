//! What one newton costs at each place of the range: what setups are laid over.
//!
//! In: places and costs from a solved lift. Out: [`CostField`], which a search reads.

use crate::movement::{Carrier, LoadPoint, PlaneForce};
use crate::resistance::{Item, Motion, Setup, Sled, Weight};
use crate::units::Mass;

/// What setups are laid over: where the load moves and what force costs there.
#[derive(Debug, Clone, PartialEq)]
pub struct CostField {
    /// The load's places, evenly over the range.
    pub points: Vec<LoadPoint>,
    /// How the movement takes its load.
    pub carrier: Carrier,
    /// Effort that one newton forward and one newton upward on the lifter make at each place, 1/N.
    pub effort_per_n: Vec<[f64; 2]>,
    /// Whether effort depends on how far a pull leans, so that these costs are its tangent at the plumb line.
    pub bends: bool,
    /// The lifter's own mass where the body is the load, else nothing.
    pub body: Mass,
}

impl CostField {
    /// The same costs where effort is counted in this many of its units.
    #[must_use]
    pub fn counted_in(mut self, unit: f64) -> Self {
        for cost in self.effort_per_n.iter_mut().flatten() {
            *cost /= unit;
        }
        self
    }

    /// Effort that a force makes at a place.
    pub(super) fn effort(&self, index: usize, force: PlaneForce) -> f64 {
        let [x, z] = self.effort_per_n[index];
        x * force.x_n + z * force.z_n
    }

    /// Force of one kilogram of plain load at each place, on rails of this friction where there are some.
    pub(super) fn one_kilogram(&self, rail_friction: f64) -> Vec<PlaneForce> {
        let mut items = vec![Item::Weight(Weight::Load(Mass::from_kg(1.0)))];
        if let (Carrier::Sled { .. }, Ok(sled)) =
            (self.carrier, Sled::new(Mass::ZERO, rail_friction))
        {
            items.push(Item::Sled(sled));
        }
        let setup = Setup::new("", items).rigged_over(&self.points);
        let at = |point| setup.total_at(point, &self.carrier, Motion::Hold).force;
        self.points.iter().map(at).collect()
    }
}
