//! Straight pieces with sharp and with rounded corners.

use super::{assert_near, seeded};
use rand::RngExt;
use torquill::numeric::{Beyond, Piecewise};

const TABLE: [(f64, f64); 5] = [(0.0, 0.0), (1.0, 2.0), (1.5, 2.0), (3.0, 0.5), (4.0, 0.0)];

#[test]
fn law_sharp_corners_lie_on_their_points() {
    for beyond in [Beyond::ConstantSlope, Beyond::ConstantValue, Beyond::Level] {
        let line = Piecewise::through(&TABLE, beyond, 0.0).unwrap();
        for (x, y) in TABLE {
            assert_eq!(line.value(x), y);
        }
        for (x, y, slope) in [
            (0.25, 0.5, 2.0),
            (0.75, 1.5, 2.0),
            (1.2, 2.0, 0.0),
            (2.0, 1.5, -1.0),
        ] {
            assert_near(line.value(x), y, 1e-15);
            assert_near(line.derivative(x), slope, 1e-15);
        }
    }
    let straight_on = Piecewise::through(&TABLE, Beyond::ConstantSlope, 0.0).unwrap();
    assert_eq!(
        (straight_on.value(-1.0), straight_on.value(6.0)),
        (-2.0, -1.0)
    );
    let held = Piecewise::through(&TABLE, Beyond::ConstantValue, 0.0).unwrap();
    assert_eq!(
        (held.value(-1.0), held.value(6.0), held.derivative(6.0)),
        (0.0, 0.0, 0.0)
    );
}

#[test]
fn law_rounded_corners_have_no_jump_of_slope() {
    for reach in [0.01, 0.1, 0.25, 2.0] {
        for beyond in [Beyond::ConstantSlope, Beyond::ConstantValue] {
            let line = Piecewise::through(&TABLE, beyond, reach).unwrap();
            let h = 1e-7;
            for k in 0..=6000 {
                let x = -1.0 + 0.001 * f64::from(k);
                // The sharpest parabola turns by 2 within twice the reach.
                let turn = (line.derivative(x + h) - line.derivative(x - h)).abs();
                assert!(
                    turn <= 2.0 * h * 2.0 / (2.0 * reach.min(0.25)) + 1e-9,
                    "{turn} at {x}"
                );
                let slope = (line.value(x + h) - line.value(x - h)) / (2.0 * h);
                assert_near(slope, line.derivative(x), 1e-5);
            }
        }
    }
}

#[test]
fn law_rounding_cuts_each_corner_by_a_quarter_of_turn_times_reach() {
    let mut rng = seeded(41);
    for _ in 0..100 {
        let reach = 0.25 * rng.random::<f64>();
        let line = Piecewise::through(&TABLE, Beyond::ConstantSlope, reach).unwrap();
        assert_near(line.value(1.0), 2.0 - 2.0 * reach / 4.0, 1e-14);
        assert_near(line.value(1.0 - 1.001 * reach), 2.0 - 2.002 * reach, 1e-14);
        assert_near(line.value(1.0 + 1.001 * reach), 2.0, 1e-14);
    }
}

#[test]
fn law_a_piecewise_line_refuses_bad_points_and_reach() {
    assert!(Piecewise::through(&TABLE[..1], Beyond::Level, 0.0).is_err());
    assert!(Piecewise::through(&[(1.0, 0.0), (0.0, 0.0)], Beyond::Level, 0.0).is_err());
    assert!(Piecewise::through(&TABLE, Beyond::Level, -0.1).is_err());
    assert!(Piecewise::through(&TABLE, Beyond::Level, f64::NAN).is_err());
}
