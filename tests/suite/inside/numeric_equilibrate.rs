//! What `src/numeric/equilibrate.rs` does, from inside.

use torquill::numeric::equilibrate::factor_for;

#[test]
fn law_a_scaled_size_lies_between_one_and_two() {
    for size in [1e-300, 3e-7, 0.5, 1.0, 1.999, 2.0, 750.0, 1e300] {
        let scaled = size * factor_for(size);
        assert!((1.0..2.0).contains(&scaled), "{size} became {scaled}");
    }
    assert_eq!(factor_for(0.0), 1.0);
}
