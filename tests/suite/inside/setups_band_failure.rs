//! What `src/setups/band_failure.rs` does, from inside.

use torquill::setups::band_failure::*;

#[test]
fn law_a_helping_band_that_goes_leaves_its_load_on_one_side() {
    let kg = [-40.0, -20.0, 0.0];
    let bands = [BandsOverRange { kg: &kg, a_side: 1 }];
    let failure = band_failure(150.0, &[110.0, 130.0, 150.0], &bands).expect("bands");
    assert!(failure.grows);
    assert_eq!(failure.one_side.as_kg(), 20.0);
    assert_eq!(failure.after_one.as_kg(), 130.0);
    assert_eq!(failure.worst_at, 0.0);
    assert_eq!(failure.after_all.as_kg(), 150.0);
    let adding = [0.0, 10.0, 20.0];
    let bands = [BandsOverRange {
        kg: &adding,
        a_side: 2,
    }];
    let failure = band_failure(60.0, &[60.0, 70.0, 80.0], &bands).expect("bands");
    assert!(!failure.grows);
    assert_eq!(failure.one_side.as_kg(), 5.0);
    assert_eq!(failure.worst_at, 1.0);
    assert_eq!(failure.after_one.as_kg(), 75.0);
    assert_eq!(failure.after_all.as_kg(), 60.0);
    assert_eq!(band_failure(60.0, &[60.0], &[]), None);
}
