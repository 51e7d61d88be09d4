//! What `src/numeric/shapley.rs` does, from inside.

use torquill::numeric::shapley::*;

use approx::assert_relative_eq;

#[test]
fn published_two_factors_share_their_product_evenly() {
    // Textbook case: Δ(xy) = ȳ·Δx + x̄·Δy.
    let (x, y) = ([2.0, 5.0], [3.0, 7.0]);
    let [of_x, of_y] = shapley_shares(|set| x[set & 1] * y[set >> 1 & 1]);
    assert_relative_eq!(of_x, 5.0 * 3.0, max_relative = 1e-14);
    assert_relative_eq!(of_y, 3.5 * 4.0, max_relative = 1e-14);
}

#[test]
fn law_shares_add_up_and_are_the_line_integral_of_a_product() {
    let (from, to) = ([1.2, -0.4, 3.0, 0.7], [0.9, 1.1, 2.0, 1.6]);
    let at = |set: usize, k: usize| if set >> k & 1 == 1 { to[k] } else { from[k] };
    let shares: [f64; 4] = shapley_shares(|set| (0..4).map(|k| at(set, k)).product());
    let whole = to.iter().product::<f64>() - from.iter().product::<f64>();
    assert_relative_eq!(shares.iter().sum::<f64>(), whole, max_relative = 1e-13);
    for (k, share) in shares.iter().enumerate() {
        // Simpson's rule is exact for the cubic that the other three factors make.
        let others = |t: f64| -> f64 {
            let mix = (0..4).filter(|j| *j != k);
            mix.map(|j| from[j] + t * (to[j] - from[j])).product()
        };
        let mean = (others(0.0) + 4.0 * others(0.5) + others(1.0)) / 6.0;
        assert_relative_eq!(*share, (to[k] - from[k]) * mean, max_relative = 1e-12);
    }
}
