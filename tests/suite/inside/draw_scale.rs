//! What `src/draw/scale.rs` does, from inside.

use torquill::draw::scale::*;
use torquill::draw::scene::Rect;

#[test]
fn regress_numbers_for_people() {
    assert_eq!(number(-0.04, 1), "0.0");
    assert_eq!(number(-12.5, 1), "\u{2212}12.5");
    assert_eq!(number(9999.0, 0), "9999");
    assert_eq!(number(1_234_567.0, 0), "1\u{2009}234\u{2009}567");
    assert_eq!(number(2.5e12, 0), "2.5 × 10¹²");
    assert_eq!(number(3e-9, 0), "3 × 10⁻⁹");
    assert_eq!(short_number(0.50, 2), "0.5");
}

#[test]
fn law_ticks_are_round_and_inside() {
    assert_eq!(ticks([0.0, 1.0], 6), [0.0, 0.2, 0.4, 0.6, 0.8, 1.0]);
    for range in [
        [-3.0, 17.0],
        [0.0, 1e7],
        [0.001, 0.0042],
        [-90.0, 0.0],
        [0.0, 4e-12],
    ] {
        let all = ticks(range, 6);
        assert!((2..=6).contains(&all.len()), "{range:?}: {all:?}");
        let slack = (range[1] - range[0]) * 1e-6;
        assert!(all[0] >= range[0] - slack && all[all.len() - 1] <= range[1] + slack);
        assert!(all[0] < all[1], "{range:?}: {all:?}");
    }
}

#[test]
fn law_a_line_that_leaves_is_cut_where_it_leaves() {
    let area = Rect::new(0.0, 0.0, 10.0, 10.0);
    let pieces = clipped(&[[0.0, 5.0], [10.0, -5.0], [10.0, 5.0]], &area);
    assert_eq!(
        pieces,
        [vec![[0.0, 5.0], [5.0, 0.0]], vec![[10.0, 0.0], [10.0, 5.0]]]
    );
}

#[test]
fn law_an_area_is_cut_to_the_rectangle() {
    let area = Rect::new(0.0, 0.0, 10.0, 10.0);
    let cut = clipped_area(&[[5.0, -5.0], [15.0, 5.0], [5.0, 15.0]], &area);
    assert!(cut.iter().all(|point| area.holds(*point)), "{cut:?}");
    assert!(cut.len() >= 4);
}
