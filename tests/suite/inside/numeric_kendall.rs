//! What `src/numeric/kendall.rs` does, from inside.

use torquill::numeric::kendall::{inversions, kendall_spread};

#[test]
fn law_inversions_count_every_permutation() {
    assert_eq!(inversions(3), [1.0, 2.0, 2.0, 1.0]);
    assert_eq!(inversions(4), [1.0, 3.0, 5.0, 6.0, 5.0, 3.0, 1.0]);
    assert_eq!(inversions(10).iter().sum::<f64>(), 3_628_800.0);
}

/// Upper points of the score from the printed table: n = 5, P(S ≥ 10) = 0.008; n = 8, P(S ≥ 18) = 0.016
/// and P(S ≥ 16) = 0.031 (Hollander & Wolfe 1999, table A.30, from memory).
#[test]
fn law_the_spread_is_that_of_the_printed_table() {
    assert_eq!(kendall_spread(5, 0.95), Some(8.0));
    assert_eq!(kendall_spread(8, 0.95), Some(16.0));
    assert_eq!(kendall_spread(8, 0.90), Some(14.0));
    assert_eq!(kendall_spread(11, 0.95), None);
    // Four points cannot be sure at 95 %: the spread is all pairs, and no slope is left.
    assert_eq!(kendall_spread(4, 0.95), Some(6.0));
}
