//! The exact distribution of Kendall's score, for intervals from a handful of points.
//!
//! In: a number of points, a confidence. Out: how far the score strays by chance alone.

/// Most points for which the score is counted out; the normal law is near enough beyond.
const MOST_COUNTED: usize = 10;

/// The spread `C` of Kendall's score that leaves the confidence between the slopes of rank `(N − C)/2` and
/// `(N + C)/2 + 1`.
///
/// ```text
/// S = N − 2 I,   N = n(n − 1)/2,   I = inversions of a permutation of n, all n! of them alike
/// C = k − 2,   k the least score with P(S ≥ k) ≤ (1 − confidence)/2
/// ```
/// | symbol | meaning                    | range   |
/// | ------ | -------------------------- | ------- |
/// | `n`    | number of points           | 2 to 10 |
/// | `N`    | pairs of them              |         |
/// | `I`    | pairs in the other order   | 0 to N  |
///
/// **Shape.** Rises with the confidence. Five points all in order give an interval at 95 % and none at 99 %.
/// **Source.** Kendall 1938, Biometrika 30:81-93; the interval as Hollander & Wolfe 1999, Nonparametric
/// Statistical Methods, ch. 9 (both from memory).
/// **Fails.** `None` beyond ten points and with fewer than two; all pairs (which leaves no slope) where even all in order are
/// too likely.
#[must_use]
pub fn kendall_spread(points: usize, confidence: f64) -> Option<f64> {
    if !(2..=MOST_COUNTED).contains(&points) {
        return None;
    }
    let counts = inversions(points);
    let (all, pairs) = (counts.iter().sum::<f64>(), counts.len() - 1);
    let mut tail = 0.0;
    let mut spread = None;
    for (inverted, count) in counts.iter().enumerate() {
        tail += count / all;
        if tail > (1.0 - confidence) / 2.0 {
            break;
        }
        spread = Some(pairs as f64 - 2.0 * inverted as f64 - 2.0);
    }
    // Without one the whole range of slopes is too narrow, and a spread of all pairs leaves no rank.
    spread.or(Some(pairs as f64))
}

/// How many permutations of `n` have 0, 1, 2 … inversions: `Π (1 + x + … + x^(k−1))` for k from 2 to n.
pub fn inversions(n: usize) -> Vec<f64> {
    let mut counts = vec![1.0];
    for k in 2..=n {
        let mut next = vec![0.0; counts.len() + k - 1];
        for (at, count) in counts.iter().enumerate() {
            for sum in &mut next[at..at + k] {
                *sum += count;
            }
        }
        counts = next;
    }
    counts
}
