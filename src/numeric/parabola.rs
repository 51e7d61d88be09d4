//! The top of a curve between its samples.
//!
//! In: three values at even distances, the middle one not the least. Out: where between them the curve is greatest.

/// Place (in samples from the middle one, −0.5 to 0.5) and height of the vertex of the parabola through three values.
///
/// ```text
/// shift = ½·(left − right)/(left − 2·middle + right),   height = middle − ¼·(left − right)·shift
/// ```
/// **Shape.** Exact for a parabola; within half a sample at a kink. A parabola that opens upwards, or a value that is
/// none, leaves the middle sample. **Source.** Vertex of a parabola. **Fails.** Never.
#[must_use]
pub fn vertex_between(left: f64, middle: f64, right: f64) -> (f64, f64) {
    let bend = left - 2.0 * middle + right;
    if !bend.is_finite() || bend >= 0.0 {
        return (0.0, middle);
    }
    let shift = (0.5 * (left - right) / bend).clamp(-0.5, 0.5);
    (shift, middle - 0.25 * (left - right) * shift)
}
