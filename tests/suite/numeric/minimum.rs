//! Minima of functions whose minimum is known.

use super::{assert_near, seeded};
use rand::RngExt;
use torquill::numeric::{golden_section, lowest_valley};

#[test]
fn law_golden_section_finds_the_bottom_of_random_valleys() {
    let mut rng = seeded(51);
    for _ in 0..300 {
        let (bottom, depth): (f64, f64) = (3.0 * rng.random::<f64>(), rng.random());
        let power = if rng.random() { 2.0 } else { 1.0 };
        let valley = |x: f64| depth + (x - bottom).abs().powf(power);
        let least = golden_section(0.0, 3.0, 1e-10, valley).unwrap();
        let allowed = if power == 2.0 { 2e-8 } else { 1e-9 };
        assert_near(least.place, bottom, allowed);
        assert_near(least.value, depth, 1e-9);
    }
}

#[test]
fn law_a_minimum_at_an_end_is_found_there() {
    let falling = golden_section(1.0, 2.0, 1e-9, |x| -x).unwrap();
    assert_eq!((falling.place, falling.value), (2.0, -2.0));
    let rising = golden_section(1.0, 2.0, 1e-9, |x| x).unwrap();
    assert_eq!((rising.place, rising.value), (1.0, 1.0));
}

#[test]
fn law_the_lowest_of_several_valleys_is_found() {
    // Waves on a slope: valleys near every 2π/5, the lowest at the lower end of the slope.
    let waves = |x: f64| (5.0 * x).sin() + 0.1 * x;
    let least = lowest_valley(0.0, 6.0, 40, 1e-10, waves).unwrap();
    // f′ = 5 cos 5x + 0.1 = 0 with sin 5x < 0: 5x = 2π − arccos(−0.02).
    let expected = (2.0 * std::f64::consts::PI - (-0.02_f64).acos()) / 5.0;
    assert_near(least.place, expected, 1e-7);
    assert_near(least.value, waves(expected), 1e-14);
    let end = lowest_valley(0.0, 1.0, 4, 1e-9, |x| -x * x).unwrap();
    assert_eq!(end.place, 1.0);
}

#[test]
fn fault_a_search_without_an_interval_or_a_value_is_refused() {
    assert!(golden_section(1.0, 1.0, 1e-9, |x| x).is_err());
    assert!(golden_section(0.0, 1.0, 1e-9, |_| f64::NAN).is_err());
    assert!(lowest_valley(0.0, 1.0, 0, 1e-9, |x| x).is_err());
}
