//! What `src/bounds/mod.rs` does, from inside.

use torquill::bounds::bounds;

#[test]
fn law_the_compiled_in_table_reads() {
    assert!(!bounds().peak_force.holds(0.0) && bounds().pennation.outside(f64::NAN).is_some());
}
