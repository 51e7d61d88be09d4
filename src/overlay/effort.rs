//! Effort: demand over capacity, place by place.

/// Effort at one place: the share of what the lifter has that the load asks for.
///
/// ```text
/// e(s) = demand(s)/capacity(s),   reserve(s) = 1 − e(s)
/// ```
/// `demand` and `capacity` in one unit (N or N·m); 1 = all the lifter has, above 1 = cannot be held.
/// A pose that cannot hold even the limbs (capacity ≤ 0) under a load has infinite effort.
/// **Source.** Definition. **Fails.** Never.
#[must_use]
pub fn effort(demand: f64, capacity: f64) -> f64 {
    if capacity > 0.0 {
        demand / capacity
    } else if demand > 0.0 {
        f64::INFINITY
    } else {
        0.0
    }
}
