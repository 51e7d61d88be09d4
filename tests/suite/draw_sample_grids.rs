//! Invented bars, maps and small panels for the tests of drawing. No number here means anything.

use crate::draw_samples::{curve, heading, series};
use torquill::plot::{
    Axis, Extent, HeatMap, Marker, Role, Shade, SmallMultiples, SmallPanel, Swing, Tornado,
};

pub fn tornado() -> Tornado {
    let rows = [
        ("Moment arm of the chest", -6.4, 6.9),
        ("Forearm length", 1.2, -1.4),
        ("Upper arm length", 3.8, -3.1),
        ("Fibre length of the triceps, long head", -2.2, 0.9),
        ("Pennation", 0.3, 0.4),
        ("Grip width", -4.9, 2.2),
    ];
    Tornado {
        heading: heading("The chest's moment arm matters most, the forearm hardly at all"),
        axis: Axis::new("Change of the greatest effort", "%"),
        lowered: "parameter −10 %".to_owned(),
        raised: "parameter +10 %".to_owned(),
        decimals: 1,
        factors: false,
        swings: rows
            .into_iter()
            .map(|(name, lowered, raised)| Swing {
                name: name.to_owned(),
                lowered,
                raised,
            })
            .collect(),
    }
}

/// A map with a corner that has no answer.
pub fn heat_map() -> HeatMap {
    let (columns, rows) = (31, 21);
    let place = |from: f64, to: f64, index: usize, many: usize| {
        from + (to - from) * index as f64 / (many - 1) as f64
    };
    let xs: Vec<f64> = (0..columns)
        .map(|index| place(40.0, 100.0, index, columns))
        .collect();
    let ys: Vec<f64> = (0..rows)
        .map(|index| place(20.0, 80.0, index, rows))
        .collect();
    let value = |x: f64, y: f64| {
        let hill = (-((x - 72.0) / 22.0).powi(2) - ((y - 48.0) / 20.0).powi(2)).exp();
        (x - y < 70.0).then_some(700.0 + 600.0 * hill)
    };
    HeatMap {
        heading: heading("A medium grip with a little tuck is strongest"),
        x: Axis::new("Grip width", "cm"),
        y: Axis::new("Tuck", "°"),
        values: ys
            .iter()
            .map(|y| xs.iter().map(|x| value(*x, *y)).collect())
            .collect(),
        xs,
        ys,
        colour: Axis::new("Least capacity over the range", "N").reaching(Extent::Data),
        missing: "the hand cannot get there".to_owned(),
        markers: vec![Marker {
            at: [70.0, 50.0],
            text: "Best".to_owned(),
            detail: "1290 N".to_owned(),
            role: Role::Reference,
            is_cross: false,
        }],
    }
}

pub fn small_multiples() -> SmallMultiples {
    type Named = (&'static str, &'static str, fn(f64) -> f64);
    let shapes: [Named; 3] = [
        ("Ascending", "squat, bench press", |s| 0.35 + 0.65 * s * s),
        ("Descending", "row, pull-up", |s| 1.0 - 0.6 * s.powf(1.5)),
        ("Bell-shaped", "curl, knee extension", |s| {
            0.45 + 0.55 * (s * std::f64::consts::PI).sin()
        }),
    ];
    SmallMultiples {
        heading: heading("Three shapes of strength curve"),
        x: Axis::new("Range, start to end", ""),
        y: Axis::new("Capacity over its peak", "").reaching(Extent::Exactly([0.0, 1.1])),
        panels: shapes
            .iter()
            .map(|(title, note, shape)| SmallPanel {
                title: (*title).to_owned(),
                note: (*note).to_owned(),
                series: vec![
                    series("capacity", curve(0.0, 1.0, shape), Role::CAPACITY),
                    series("plain weight", curve(0.0, 1.0, |_| 0.3), Role::DEMAND),
                ],
                shades: vec![Shade {
                    from: 0.1,
                    to: 0.35,
                    label: "hardest".to_owned(),
                    is_hard: true,
                    is_bare: false,
                }],
                ..SmallPanel::default()
            })
            .collect(),
        columns: None,
    }
}
