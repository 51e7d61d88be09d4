//! Fits whose answer is known.

use super::{assert_near, seeded};
use rand::RngExt;
use rand_chacha::ChaCha8Rng;
use torquill::numeric::{Interval, best_fit, fit, fit_linear};

fn rosenbrock(p: &[f64]) -> Vec<f64> {
    vec![10.0 * (p[1] - p[0] * p[0]), 1.0 - p[0]]
}

#[test]
fn law_the_curved_valley_is_followed_to_its_bottom() {
    let found = fit(&[-1.2, 1.0], &[Interval::FREE; 2], rosenbrock).unwrap();
    assert!(
        found.is_settled && found.sum_of_squares < 1e-20,
        "{found:?}"
    );
    assert_near(found.parameters[0], 1.0, 1e-9);
    assert_near(found.parameters[1], 1.0, 1e-9);
    assert!(found.steps < 60, "{} steps", found.steps);
}

#[test]
fn law_a_bound_across_the_valley_holds_and_says_so() {
    // With x ≤ 0.5 the best is x = 0.5, y = 0.25, where (1 − x)² = 0.25 is left.
    let intervals = [Interval::new(-2.0, 0.5), Interval::FREE];
    let found = fit(&[-1.2, 1.0], &intervals, rosenbrock).unwrap();
    assert_eq!(found.parameters[0], 0.5);
    assert_near(found.parameters[1], 0.25, 1e-9);
    assert_near(found.sum_of_squares, 0.25, 1e-12);
    assert_eq!(found.at_bound, [true, false]);
}

/// Powell's singular function: the slopes vanish at the answer, so the last digits come slowly.
#[test]
fn law_a_flat_bottom_is_approached() {
    let powell = |p: &[f64]| {
        vec![
            p[0] + 10.0 * p[1],
            5f64.sqrt() * (p[2] - p[3]),
            (p[1] - 2.0 * p[2]).powi(2),
            10f64.sqrt() * (p[0] - p[3]).powi(2),
        ]
    };
    let found = fit(&[3.0, -1.0, 0.0, 1.0], &[Interval::FREE; 4], powell).unwrap();
    assert!(found.sum_of_squares < 1e-15, "{found:?}");
}

fn decay(p: &[f64], t: f64) -> f64 {
    p[0] * (-t / p[1]).exp() + p[2]
}

fn decay_data(truth: &[f64], noise: f64, rng: &mut ChaCha8Rng) -> Vec<(f64, f64)> {
    (0..40)
        .map(|k| f64::from(k) * 0.1)
        .map(|t| (t, decay(truth, t) + noise * (rng.random::<f64>() - 0.5)))
        .collect()
}

#[test]
fn law_an_exponential_is_recovered_from_its_own_points() {
    let mut rng = seeded(71);
    let intervals = [
        Interval::new(0.0, 10.0),
        Interval::new(0.05, 20.0),
        Interval::new(-5.0, 5.0),
    ];
    for _ in 0..50 {
        let truth = [
            0.5 + 4.0 * rng.random::<f64>(),
            0.3 + rng.random::<f64>(),
            rng.random(),
        ];
        let data = decay_data(&truth, 0.0, &mut rng);
        let residuals = |p: &[f64]| {
            data.iter()
                .map(|(t, y)| decay(p, *t) - y)
                .collect::<Vec<_>>()
        };
        let starts = [
            vec![1.0, 1.0, 0.0],
            vec![5.0, 0.2, 1.0],
            vec![3.0, 3.0, -1.0],
        ];
        let found = best_fit(&starts, &intervals, residuals).unwrap();
        for (a, b) in found.parameters.iter().zip(truth) {
            assert_near(*a, b, 1e-7);
        }
    }
}

#[test]
fn law_no_neighbour_is_better_than_a_bounded_fit_to_noisy_points() {
    let mut rng = seeded(72);
    for _ in 0..50 {
        let data = decay_data(&[2.0, 0.8, 0.5], 0.3, &mut rng);
        let residuals = |p: &[f64]| {
            data.iter()
                .map(|(t, y)| decay(p, *t) - y)
                .collect::<Vec<_>>()
        };
        let squares = |p: &[f64]| residuals(p).iter().map(|r| r * r).sum::<f64>();
        // The time constant may not reach its true 0.8.
        let intervals = [
            Interval::new(0.0, 10.0),
            Interval::new(0.1, 0.6),
            Interval::new(-5.0, 5.0),
        ];
        let found = fit(&[1.0, 0.3, 0.0], &intervals, residuals).unwrap();
        assert!(found.is_settled);
        assert_near(squares(&found.parameters), found.sum_of_squares, 1e-14);
        for _ in 0..200 {
            let neighbour: Vec<f64> = found
                .parameters
                .iter()
                .zip(&intervals)
                .map(|(p, i)| (p + 1e-3 * (rng.random::<f64>() - 0.5)).clamp(i.low, i.high))
                .collect();
            assert!(squares(&neighbour) >= found.sum_of_squares * (1.0 - 1e-10));
        }
    }
}

#[test]
fn law_a_parameter_without_effect_stays_where_it_is() {
    let found = fit(&[0.0, 7.0], &[Interval::FREE; 2], |p| vec![p[0] - 3.0, 2.0]).unwrap();
    assert_near(found.parameters[0], 3.0, 1e-9);
    assert_eq!(found.parameters[1], 7.0);
    assert_near(found.sum_of_squares, 4.0, 1e-12);
}

#[test]
fn law_places_without_a_value_are_avoided() {
    let log = |p: &[f64]| {
        vec![if p[0] > 0.0 {
            p[0].ln() + 3.0
        } else {
            f64::NAN
        }]
    };
    let found = fit(&[5.0], &[Interval::FREE], log).unwrap();
    assert_near(found.parameters[0], (-3f64).exp(), 1e-8);
}

#[test]
fn fault_a_fit_that_cannot_start_says_why() {
    let nothing = |_: &[f64]| vec![0.0];
    assert!(fit(&[], &[], nothing).is_err());
    assert!(fit(&[1.0], &[Interval::FREE; 2], nothing).is_err());
    let fault = fit(&[1.0], &[Interval::new(2.0, 3.0)], nothing).unwrap_err();
    assert!(
        crate::calling::said(&fault).contains("parameter 0 starts at 1"),
        "{fault}"
    );
    assert!(fit(&[1.0], &[Interval::FREE], |_| vec![f64::NAN]).is_err());
    assert!(best_fit(&[], &[Interval::FREE], nothing).is_err());
}

#[test]
fn law_a_linear_fit_leaves_residuals_square_to_its_terms() {
    let mut rng = seeded(73);
    for _ in 0..100 {
        let terms: Vec<Vec<f64>> = (0..20)
            .map(|_| vec![1.0, rng.random(), 1e6 * rng.random::<f64>()])
            .collect();
        let data: Vec<f64> = (0..20).map(|_| rng.random()).collect();
        let found = fit_linear(&terms, &data).unwrap();
        for j in 0..3 {
            let product: f64 = terms
                .iter()
                .zip(&data)
                .map(|(row, y)| {
                    let fitted: f64 = row.iter().zip(&found).map(|(t, c)| t * c).sum();
                    row[j] * (y - fitted)
                })
                .sum();
            assert!(
                product.abs() < 1e-12 * 20.0 * if j == 2 { 1e6 } else { 1.0 },
                "{product}"
            );
        }
    }
    let alike: Vec<Vec<f64>> = (0..5)
        .map(|k| vec![f64::from(k), 2.0 * f64::from(k)])
        .collect();
    let fault = fit_linear(&alike, &[0.0; 5]).unwrap_err();
    assert!(
        crate::calling::said(&fault).contains("only 1 of 2"),
        "{fault}"
    );
    assert!(fit_linear(&alike[..1], &[0.0]).is_err());
    assert!(fit_linear(&[], &[]).is_err());
}
