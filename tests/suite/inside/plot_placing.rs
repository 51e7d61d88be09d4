//! What `src/plot/placing.rs` does, from inside.

use torquill::draw::Rect;
use torquill::plot::placing::*;

#[test]
fn law_spread_keeps_order_and_room() {
    let placed = spread(&[10.0, 10.0, 10.0, 80.0], &[10.0; 4], 0.0, 100.0);
    assert_eq!(placed, [5.0, 15.0, 25.0, 80.0]);
    let crowded = spread(&[99.0, 99.0], &[10.0, 10.0], 0.0, 100.0);
    assert_eq!(crowded, [85.0, 95.0]);
}

#[test]
fn law_a_label_avoids_a_curve_and_a_box() {
    let field = Occupied {
        bounds: Rect::new(0.0, 0.0, 100.0, 100.0),
        obstacles: vec![Obstacle {
            points: vec![[0.0, 20.0], [100.0, 20.0]],
            owner: None,
        }],
        taken: vec![Rect::new(0.0, 80.0, 100.0, 100.0)],
        edges: Vec::new(),
        clearance: 2.0,
        half_line: 0.0,
    };
    let place = |top: f64| LabelPlace {
        area: Rect::new(10.0, top, 40.0, top + 10.0),
        target: [20.0, 20.0],
        leader: false,
        cost: 0.0,
    };
    let request = LabelRequest {
        owner: None,
        places: vec![place(15.0), place(85.0), place(40.0)],
    };
    let settled = settle(&field, &[request]);
    assert_eq!(settled[0].map(|(place, _)| place.area.top), Some(40.0));
}
