//! What `src/draw/contour.rs` does, from inside.

use torquill::draw::contour::*;

fn grid(at: impl Fn(f64, f64) -> f64) -> Vec<Vec<Option<f64>>> {
    (0..21)
        .map(|row| {
            (0..21)
                .map(|column| Some(at(f64::from(column), f64::from(row))))
                .collect()
        })
        .collect()
}

#[test]
fn law_a_hill_has_one_closed_line_at_the_right_distance() {
    let hill = grid(|x, y| 100.0 - (x - 10.0).powi(2) - (y - 10.0).powi(2));
    let lines = contours(&hill, 100.0 - 36.0);
    assert_eq!(lines.len(), 1);
    assert_eq!(lines[0].first(), lines[0].last());
    for point in &lines[0] {
        let radius = (point[0] - 10.0).hypot(point[1] - 10.0);
        // Straight lines between nodes miss the circle by up to 1/8 of the curvature: 0.03.
        assert!((radius - 6.0).abs() < 0.05, "{radius}");
    }
}

#[test]
fn law_a_refined_grid_keeps_its_values_and_a_plane_plane() {
    let mut plane = grid(|x, y| 3.0 * x - 2.0 * y);
    plane[3][3] = None;
    let fine = refined(&plane, 4);
    assert_eq!((fine.len(), fine[0].len()), (81, 81));
    assert_eq!(fine[12][12], None);
    for (row, values) in fine.iter().enumerate() {
        for (column, value) in values.iter().enumerate() {
            let wanted = 3.0 * column as f64 / 4.0 - 2.0 * row as f64 / 4.0;
            assert!(value.is_none_or(|value| (value - wanted).abs() < 1e-9));
        }
    }
}

#[test]
fn law_a_slope_has_one_open_line_and_a_hole_cuts_it() {
    let mut slope = grid(|x, _| x);
    assert_eq!(contours(&slope, 4.5).len(), 1);
    slope[10][4] = None;
    assert_eq!(contours(&slope, 4.5).len(), 2);
    assert!(contours(&slope, 99.0).is_empty());
}
