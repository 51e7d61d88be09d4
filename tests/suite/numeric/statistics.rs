//! Summaries against published examples and their own laws.

use super::{assert_near, seeded};
use rand::RngExt;
use rand_chacha::ChaCha8Rng;
use torquill::numeric::{
    linear_regression, median, normal_quantile, quantile, range_mean, theil_sen,
};

/// Sen 1968, J. Am. Stat. Assoc. 63:1379-1389, worked example (p. 1386; seen in secondary sources):
/// slope 4, 93 % interval 26/7 to 35/8.
#[test]
fn published_robust_slope_sen1968() {
    let times = [1.0, 2.0, 3.0, 4.0, 10.0, 12.0, 18.0];
    let values = [9.0, 15.0, 19.0, 20.0, 45.0, 55.0, 78.0];
    let points: Vec<_> = times.into_iter().zip(values).collect();
    let line = theil_sen(&points, 0.93).unwrap();
    assert_eq!((line.slope, line.intercept), (4.0, 6.0));
    assert_eq!(line.slope_range, Some((26.0 / 7.0, 35.0 / 8.0)));
}

/// Anscombe 1973, Am. Stat. 27:17-21, first data set (from memory): y = 3.00 + 0.500 x, R² = 0.667,
/// standard error of the slope 0.118. Tolerance: half of the last printed digit.
#[test]
fn published_regression_anscombe1973() {
    let x = [10.0, 8.0, 13.0, 9.0, 11.0, 14.0, 6.0, 4.0, 12.0, 7.0, 5.0];
    let y = [
        8.04, 6.95, 7.58, 8.81, 8.33, 9.96, 7.24, 4.26, 10.84, 4.82, 5.68,
    ];
    let points: Vec<_> = x.into_iter().zip(y).collect();
    let line = linear_regression(&points).unwrap();
    assert!((line.intercept - 3.00).abs() < 0.005);
    assert!((line.slope - 0.500).abs() < 0.0005);
    assert!((line.r_squared - 0.667).abs() < 0.0005);
    assert!((line.slope_error.unwrap() - 0.118).abs() < 0.0005);
}

/// Table of the normal distribution (Abramowitz & Stegun 1964, table 26.5, from memory).
#[test]
fn published_normal_quantiles() {
    for (share, place) in [
        (0.5, 0.0),
        (0.9, 1.281_551_565_545),
        (0.95, 1.644_853_626_951),
        (0.975, 1.959_963_984_540),
        (0.995, 2.575_829_303_549),
    ] {
        assert_near(normal_quantile(share).unwrap(), place, 1e-11);
        assert_near(normal_quantile(1.0 - share).unwrap(), -place, 1e-11);
    }
    assert!(normal_quantile(0.0).is_err() && normal_quantile(1.0).is_err());
    assert!(normal_quantile(f64::NAN).is_err());
}

/// A normal random number.
fn noise(rng: &mut ChaCha8Rng) -> f64 {
    normal_quantile(0.999_999 * rng.random::<f64>() + 5e-7).unwrap()
}

#[test]
fn law_the_robust_interval_covers_the_truth_as_often_as_it_says() {
    let mut rng = seeded(91);
    for (confidence, count) in [(0.9, 12), (0.95, 20)] {
        let mut covered = 0;
        for _ in 0..1000 {
            let points: Vec<_> = (0..count)
                .map(|k| (f64::from(k), 2.0 * f64::from(k) + noise(&mut rng)))
                .collect();
            let range = theil_sen(&points, confidence).unwrap().slope_range.unwrap();
            covered += i32::from(range.0 <= 2.0 && 2.0 <= range.1);
        }
        // Binomial scatter of 1000 trials is 1 %; outward rounding adds up to 2 %.
        let share = f64::from(covered) / 1000.0;
        assert!(
            (confidence - 0.025..confidence + 0.035).contains(&share),
            "{share}"
        );
    }
}

#[test]
fn law_wild_points_sway_least_squares_and_not_the_robust_line() {
    let mut points: Vec<_> = (0..20)
        .map(|k| (f64::from(k), 1.0 + 0.5 * f64::from(k)))
        .collect();
    for k in [3, 11, 18, 19] {
        points[k].1 += 40.0;
    }
    let robust = theil_sen(&points, 0.95).unwrap();
    assert_near(robust.slope, 0.5, 1e-12);
    assert_near(robust.intercept, 1.0, 1e-12);
    assert!(linear_regression(&points).unwrap().slope > 1.0);
}

#[test]
fn fault_few_points_give_no_interval_and_one_place_no_line() {
    let line = theil_sen(&[(0.0, 0.0), (1.0, 2.0), (2.0, 3.0)], 0.95).unwrap();
    assert_eq!((line.slope, line.slope_range), (1.5, None));
    assert!(theil_sen(&[(1.0, 0.0), (1.0, 2.0)], 0.95).is_err());
    assert!(theil_sen(&[(1.0, 0.0), (2.0, 2.0)], 1.0).is_err());
    assert!(linear_regression(&[]).is_err());
    assert!(linear_regression(&[(0.0, 0.0), (1.0, f64::NAN)]).is_err());
    let exact = linear_regression(&[(0.0, 1.0), (2.0, 5.0)]).unwrap();
    assert_eq!(
        (exact.slope, exact.intercept, exact.r_squared),
        (2.0, 1.0, 1.0)
    );
    assert_eq!(exact.slope_error, None);
}

#[test]
fn law_summaries_by_hand() {
    let numbers = [4.0, 1.0, 3.0, 2.0, 10.0];
    assert_eq!(median(&numbers), Some(3.0));
    assert_eq!(quantile(&numbers, 0.25), Some(2.0));
    assert_near(quantile(&numbers, 0.9).unwrap(), 7.6, 1e-15);
    assert_eq!(
        (quantile(&numbers, 0.0), quantile(&numbers, 1.0)),
        (Some(1.0), Some(10.0))
    );
    assert_eq!(median(&[1.0, 2.0]), Some(1.5));
    assert_eq!(median(&[]), None);
    assert_eq!(
        (quantile(&[1.0, f64::NAN], 0.5), quantile(&numbers, 1.5)),
        (None, None)
    );
}

/// A mean over a range is an area over its width: the ends stand for half a step each, however fine the steps are.
#[test]
fn law_a_mean_over_a_range_weighs_every_stretch_alike() {
    let square = |steps: u32| -> f64 {
        let at = |step: u32| (f64::from(step) / f64::from(steps)).powi(2);
        range_mean(&(0..=steps).map(at).collect::<Vec<_>>())
    };
    // Of x² over 0 to 1 it is 1/3, missed by 1/(6 n²).
    for steps in [1, 10, 100] {
        let off = square(steps) - 1.0 / 3.0;
        assert!((off - 1.0 / (6.0 * f64::from(steps).powi(2))).abs() < 1e-12);
    }
    assert!((range_mean(&[1.0, 2.0, 6.0]) - 2.75).abs() < 1e-12);
    assert!((range_mean(&[4.0]) - 4.0).abs() < 1e-12);
    assert!(range_mean(&[]).is_nan());
}
