//! What `src/numeric/parabola.rs` does, from inside.

use approx::assert_relative_eq;
use torquill::numeric::parabola::vertex_between;

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
