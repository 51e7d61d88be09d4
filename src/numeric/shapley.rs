//! A change split over the factors that made it, without an order among them.
//!
//! In: what any set of changed factors makes of a quantity. Out: each factor's share of the change.

/// Each factor's share in the change from none of them changed to all of them changed.
///
/// ```text
/// φ_k = Σ over sets S without k of  |S|!·(n − |S| − 1)!/n! · ( v(S + k) − v(S) )
/// ```
/// | symbol | meaning                                                          | unit |
/// | ------ | ---------------------------------------------------------------- | ---- |
/// | `v(S)` | the quantity with the factors of S changed, the others as before | any  |
/// | `n`    | number of factors, at most 16                                    | –    |
/// | `φ_k`  | share of factor k: the mean of what its change adds, over all orders | as v |
///
/// **Shape.** The shares add up to `v(all) − v(none)`; a factor that changes nothing has none; two factors that
/// do the same have the same. For a product the share is the integral along the straight line on which all
/// factors change together. `value` gets the set as bits, bit k for factor k.
/// **Source.** Shapley 1953, Contributions to the Theory of Games II:307-317; for splits of a change, Shorrocks
/// 2013, J. Econ. Inequal. 11:99-126; the line, Owen 1972, Manag. Sci. 18:P64-P79 (all from memory).
/// **Fails.** Never.
#[must_use]
pub fn shapley_shares<const N: usize>(value: impl Fn(usize) -> f64) -> [f64; N] {
    const { assert!(N <= 16, "2^N sets are looked at") };
    let values: Vec<f64> = (0..1_usize << N).map(value).collect();
    let weights = weights(N);
    std::array::from_fn(|factor| {
        let bit = 1 << factor;
        let without = (0..values.len()).filter(|set| set & bit == 0);
        without
            .map(|set| weights[set.count_ones() as usize] * (values[set | bit] - values[set]))
            .sum()
    })
}

/// Share of all orders in which exactly a given set of so many factors comes first: s!·(n − s − 1)!/n!.
fn weights(count: usize) -> Vec<f64> {
    let mut choose = 1.0;
    let ways = |s: usize, choose: f64| 1.0 / (choose * (count - s) as f64);
    (0..count)
        .map(|s| {
            let weight = ways(s, choose);
            choose *= (count - s) as f64 / (s + 1) as f64;
            weight
        })
        .collect()
}
