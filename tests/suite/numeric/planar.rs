//! Points and two-link chains.

use super::{assert_near, seeded};
use rand::RngExt;
use std::f64::consts::PI;
use torquill::error::LinksFault;
use torquill::numeric::{BendSide, Point, close_two_links};

#[test]
fn law_two_links_close_from_any_angles() {
    let mut rng = seeded(21);
    for _ in 0..2000 {
        let (a, b) = (0.2 + rng.random::<f64>(), 0.2 + rng.random::<f64>());
        let start = Point::new(rng.random(), rng.random());
        let first = PI * (2.0 * rng.random::<f64>() - 1.0);
        let bend = 0.001 + (PI - 0.01) * rng.random::<f64>();
        for (side, sense) in [(BendSide::Right, 1.0), (BendSide::Left, -1.0)] {
            let middle = start + Point::from_polar(a, first);
            let target = middle + Point::from_polar(b, first + sense * bend);
            let found = close_two_links(start, target, a, b, side).unwrap();
            assert!(
                (found.middle - middle).length() < 1e-9,
                "{found:?} for {middle:?}"
            );
            assert_near(found.bend_rad, bend, 1e-9);
            assert_near((found.middle - start).length(), a, 1e-12);
            assert_near((found.middle - target).length(), b, 1e-12);
            let again = found.middle + Point::from_polar(b, found.second_rad);
            assert!((again - target).length() < 1e-12);
            assert_near((found.first_rad - first).cos(), 1.0, 1e-15);
        }
    }
}

#[test]
fn law_the_middle_joint_stands_on_the_side_asked_for() {
    let target = Point::new(0.0, 0.6);
    let left = close_two_links(Point::ORIGIN, target, 0.4, 0.4, BendSide::Left).unwrap();
    let right = close_two_links(Point::ORIGIN, target, 0.4, 0.4, BendSide::Right).unwrap();
    assert!(left.middle.x < 0.0 && right.middle.x > 0.0);
    assert!(target.cross(left.middle) > 0.0);
    assert_eq!(left.bend_rad, right.bend_rad);
}

#[test]
fn law_straight_and_folded_links_close() {
    let straight = close_two_links(
        Point::ORIGIN,
        Point::new(2.0, 0.0),
        1.0,
        1.0,
        BendSide::Left,
    )
    .unwrap();
    assert_eq!(
        (straight.middle, straight.bend_rad),
        (Point::new(1.0, 0.0), 0.0)
    );
    let folded = close_two_links(
        Point::ORIGIN,
        Point::new(0.5, 0.0),
        1.5,
        1.0,
        BendSide::Left,
    )
    .unwrap();
    assert_eq!((folded.middle, folded.bend_rad), (Point::new(1.5, 0.0), PI));
}

#[test]
fn fault_links_out_of_reach_say_how_far() {
    let reach = |x: f64, a: f64, b: f64| {
        close_two_links(Point::ORIGIN, Point::new(x, 0.0), a, b, BendSide::Left).unwrap_err()
    };
    assert_eq!(
        reach(0.87, 0.5, 0.25),
        LinksFault::TooFar {
            reach: 0.75,
            needed: 0.87
        }
    );
    assert_eq!(
        reach(0.1, 0.5, 0.25),
        LinksFault::TooNear {
            nearest: 0.25,
            needed: 0.1
        }
    );
    assert_eq!(reach(0.0, 0.5, 0.5), LinksFault::NoDirection);
    assert_eq!(reach(f64::NAN, 0.5, 0.5), LinksFault::NotNumbers);
    assert_eq!(reach(0.5, 0.0, 0.5), LinksFault::NotNumbers);
}

#[test]
fn law_points_turn_and_multiply_as_arrows_do() {
    let mut rng = seeded(22);
    for _ in 0..200 {
        let a = Point::new(rng.random(), rng.random());
        let b = Point::new(rng.random(), rng.random());
        assert_near(a.quarter_turn().dot(b.quarter_turn()), a.dot(b), 1e-14);
        assert_near(a.cross(b), a.quarter_turn().dot(b), 1e-14);
        assert_near(
            (Point::from_polar(a.length(), a.angle_rad()) - a).length(),
            0.0,
            1e-15,
        );
        assert_near(
            (a.towards(b, 0.25) - (a * 0.75 + b * 0.25)).length(),
            0.0,
            1e-15,
        );
    }
    // A weight of 10 N (down) 0.3 m in front of a joint turns it backwards by 3 N m.
    assert_eq!(Point::new(0.3, 0.1).cross(Point::new(0.0, -10.0)), -3.0);
    assert_eq!(Point::ORIGIN.unit(), None);
}
