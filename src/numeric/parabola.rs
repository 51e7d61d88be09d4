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

#[cfg(test)]
mod tests {
    use super::vertex_between;
    use approx::assert_relative_eq;

    #[test]
    fn law_the_vertex_of_a_parabola_is_found() {
        for top in [-0.5, -0.31, 0.0, 0.2, 0.5] {
            let at = |x: f64| 7.0 - 3.0 * (x - top) * (x - top);
            let (shift, height) = vertex_between(at(-1.0), at(0.0), at(1.0));
            assert_relative_eq!(shift, top, epsilon = 1e-12);
            assert_relative_eq!(height, 7.0, max_relative = 1e-12);
        }
        assert_eq!(vertex_between(1.0, 1.0, 1.0), (0.0, 1.0));
        assert_eq!(vertex_between(f64::INFINITY, 2.0, 1.0), (0.0, 2.0));
    }
}
