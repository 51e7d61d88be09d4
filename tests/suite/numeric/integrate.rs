//! Motion and integrals against closed forms.

use super::{assert_near, seeded};
use rand::RngExt;
use torquill::numeric::{Arrival, Steps, integrate};

fn spring(_: f64, y: &[f64; 2]) -> [f64; 2] {
    [y[1], -y[0]]
}

fn swing(step: f64) -> Arrival<2, ()> {
    let steps = Steps {
        start: 0.0,
        end: 10.0,
        step,
    };
    integrate(steps, [1.0, 0.0], spring, |_, _| None, |_, _| {}).unwrap()
}

#[test]
fn law_half_the_step_gives_a_sixteenth_of_the_error() {
    let error = |step: f64| {
        let found = swing(step).state;
        (found[0] - 10f64.cos()).hypot(found[1] + 10f64.sin())
    };
    for step in [0.1, 0.05, 0.025] {
        let order = (error(step) / error(step / 2.0)).log2();
        assert!(
            (3.95..4.05).contains(&order),
            "order {order} at step {step}"
        );
    }
    assert!(error(0.001) < 1e-12);
}

#[test]
fn law_energy_of_a_spring_is_kept_to_the_order_of_the_method() {
    let mut worst = 0.0_f64;
    let mut last_time = -1.0;
    let mut looks = 0;
    let steps = Steps {
        start: 0.0,
        end: 50.0,
        step: 0.01,
    };
    let watch = |time: f64, y: &[f64; 2]| {
        assert!(time > last_time);
        last_time = time;
        looks += 1;
        worst = worst.max((y[0] * y[0] + y[1] * y[1] - 1.0).abs());
    };
    integrate(steps, [1.0, 0.0], spring, |_, _| None::<()>, watch).unwrap();
    assert_eq!(looks, 5001);
    assert!(worst < 1e-10, "energy off by {worst:e}");
}

#[test]
fn law_the_moment_of_an_event_is_exact() {
    let mut rng = seeded(61);
    for _ in 0..50 {
        let level = 0.9 * rng.random::<f64>();
        let steps = Steps {
            start: 0.0,
            end: 10.0,
            step: 0.001 + 0.003 * rng.random::<f64>(),
        };
        let falls = |_: f64, y: &[f64; 2]| (y[0] <= level).then_some('x');
        let mut seen = (0.0, [0.0; 2]);
        let found = integrate(steps, [1.0, 0.0], spring, falls, |time, y| {
            seen = (time, *y)
        })
        .unwrap();
        assert_eq!(found.event, Some('x'));
        assert_near(found.time, level.acos(), 1e-11);
        assert_near(found.state[0], level, 1e-12);
        assert!(found.state[0] <= level);
        assert_eq!(seen, (found.time, found.state));
    }
}

#[test]
fn law_the_first_of_two_events_in_one_step_is_named() {
    let steps = Steps {
        start: 0.0,
        end: 5.0,
        step: 1.0,
    };
    let run = |_: f64, _: &[f64; 1]| [1.0];
    let event = |_: f64, y: &[f64; 1]| {
        if y[0] >= 2.5 {
            Some("second")
        } else {
            (y[0] >= 2.25).then_some("first")
        }
    };
    let found = integrate(steps, [0.0], run, event, |_, _| {}).unwrap();
    assert_eq!(found.event, Some("first"));
    assert_near(found.time, 2.25, 1e-14);
}

#[test]
fn law_the_last_step_ends_at_the_end() {
    let steps = Steps {
        start: 1.0,
        end: 2.05,
        step: 0.1,
    };
    let mut times = Vec::new();
    let found = integrate(
        steps,
        [0.0],
        |t, _| [2.0 * t],
        |_, _| None::<()>,
        |t, _| times.push(t),
    )
    .unwrap();
    assert_eq!((found.time, found.event, times.len()), (2.05, None, 12));
    assert_near(found.state[0], 2.05 * 2.05 - 1.0, 1e-14);
}

#[test]
fn fault_motion_without_a_finite_state_or_good_steps_is_refused() {
    let blow_up = |_: f64, y: &[f64; 1]| [y[0] * y[0]];
    let steps = Steps {
        start: 0.0,
        end: 2.0,
        step: 0.01,
    };
    let fault = integrate(steps, [1.0], blow_up, |_, _| None::<()>, |_, _| {}).unwrap_err();
    assert!(
        crate::calling::said(&fault).contains("no finite state at 1."),
        "{fault}"
    );
    for (start, end, step) in [
        (0.0, 1.0, 0.0),
        (1.0, 0.0, 0.1),
        (0.0, f64::NAN, 0.1),
        (0.0, 1e12, 0.1),
    ] {
        let steps = Steps { start, end, step };
        assert!(integrate(steps, [1.0], blow_up, |_, _| None::<()>, |_, _| {}).is_err());
    }
}
