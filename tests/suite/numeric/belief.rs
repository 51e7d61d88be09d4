use super::assert_near;
use nalgebra::{DMatrix, DVector};
use torquill::numeric::{Belief, NormalDensity, Observation};

fn two() -> Belief {
    Belief {
        mean: DVector::from_vec(vec![1.0, -2.0]),
        covariance: DMatrix::from_row_slice(2, 2, &[4.0, 1.0, 1.0, 9.0]),
    }
}

fn seen(slopes: [f64; 2], value: f64, variance: f64) -> Observation {
    Observation {
        slopes: DVector::from_vec(slopes.to_vec()),
        value,
        variance,
    }
}

#[test]
fn law_one_number_seen_is_the_weighted_mean() {
    let known = Belief {
        mean: DVector::from_vec(vec![10.0]),
        covariance: DMatrix::from_element(1, 1, 4.0),
    };
    let after = known.given(&[Observation {
        slopes: DVector::from_vec(vec![1.0]),
        value: 16.0,
        variance: 2.0,
    }]);
    // Weights 1/4 and 1/2: mean (10/4 + 16/2)/(3/4), variance 4/3.
    assert_near(after.mean[0], 14.0, 1e-14);
    assert_near(after.covariance[(0, 0)], 4.0 / 3.0, 1e-14);
}

#[test]
fn law_observations_give_the_inverse_of_summed_information() {
    let data = [seen([1.0, 2.0], 3.0, 0.5), seen([-1.0, 0.5], 0.7, 2.0)];
    let after = two().given(&data);
    let prior = two().covariance.try_inverse().expect("it has one");
    let mut information = prior.clone();
    let mut pull = &prior * two().mean;
    for one in &data {
        information += &one.slopes * one.slopes.transpose() / one.variance;
        pull += &one.slopes * (one.value / one.variance);
    }
    let covariance = information.try_inverse().expect("it has one");
    let mean = &covariance * pull;
    for k in 0..2 {
        assert_near(after.mean[k], mean[k], 1e-12);
        for j in 0..2 {
            assert_near(after.covariance[(k, j)], covariance[(k, j)], 1e-12);
        }
    }
    let turned = two().given(&[data[1].clone(), data[0].clone()]);
    assert_near(turned.mean[0], after.mean[0], 1e-12);
}

#[test]
fn law_draws_scatter_as_the_covariance_says() {
    let belief = two();
    let root = belief.root();
    let many = 20_000;
    let draws: Vec<DVector<f64>> = (0..many).map(|k| belief.draw(&root, 7, k)).collect();
    let mean = draws.iter().sum::<DVector<f64>>() / many as f64;
    let mut covariance = DMatrix::zeros(2, 2);
    for draw in &draws {
        let off = draw - &mean;
        covariance += &off * off.transpose() / (many - 1) as f64;
    }
    // Four standard errors of a mean and of a variance of so many draws.
    let chance = 4.0 / (many as f64).sqrt();
    for k in 0..2 {
        let deviation = belief.covariance[(k, k)].sqrt();
        assert!((mean[k] - belief.mean[k]).abs() < chance * deviation);
        for j in 0..2 {
            let both = deviation * belief.covariance[(j, j)].sqrt();
            let miss = covariance[(k, j)] - belief.covariance[(k, j)];
            assert!(miss.abs() < 1.5 * chance * both, "{k} {j}: {miss}");
        }
    }
    assert_eq!(belief.draw(&root, 7, 3), draws[3]);
    assert_ne!(belief.draw(&root, 8, 3), draws[3]);
}

#[test]
fn law_a_density_is_that_of_its_covariance() {
    let belief = two();
    let density = NormalDensity::of(&belief);
    let inverse = belief.covariance.clone().try_inverse().expect("it has one");
    let half_log_determinant = 0.5 * belief.covariance.determinant().ln();
    for standard in [[0.0, 0.0], [1.0, -2.0], [-0.5, 3.0]] {
        let standard = DVector::from_vec(standard.to_vec());
        let numbers = density.at(&standard);
        let off = &numbers - &belief.mean;
        let squares = off.dot(&(&inverse * &off));
        assert_near(squares, standard.norm_squared(), 1e-9);
        let expected = -0.5 * squares - half_log_determinant;
        assert_near(density.log_density(&numbers), expected, 1e-9);
    }
    // The first number alone is believed as it was among others.
    let first = belief.leading(1);
    assert_eq!((first.mean[0], first.covariance[(0, 0)]), (1.0, 4.0));
}

#[test]
fn law_a_number_without_scatter_stays() {
    let known = Belief {
        mean: DVector::from_vec(vec![1.0, 2.0]),
        covariance: DMatrix::from_row_slice(2, 2, &[0.0, 0.0, 0.0, 1.0]),
    };
    let after = known.given(&[seen([1.0, 1.0], 9.0, 0.0)]);
    assert_near(after.mean[0], 1.0, 1e-15);
    assert_near(after.mean[1], 8.0, 1e-14);
    assert_near(known.draw(&known.root(), 1, 1)[0], 1.0, 1e-15);
    // Seen without error and known without scatter: nothing is left to learn.
    assert_eq!(after.given(&[seen([1.0, 1.0], 5.0, 0.0)]).mean, after.mean);
}
