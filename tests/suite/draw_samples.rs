//! Invented charts for the tests of drawing: ordinary ones and nasty ones. No number here means
//! anything; the shapes only look like strength curves.

use crate::draw_sample_grids::{heat_map, small_multiples, tornado};
use torquill::draw::Scene;
use torquill::error::Result;
use torquill::plot::{
    Axis, DrawnLoad, Extent, Fill, Heading, Labels, LevelLine, LineChart, Look, Marker, Panel,
    Role, Series, Shade, StickFigure, StripPose,
};

pub fn curve(from: f64, to: f64, at: impl Fn(f64) -> f64) -> Vec<[f64; 2]> {
    (0..=100)
        .map(|step| f64::from(step) / 100.0)
        .map(|share| {
            let x = from + share * (to - from);
            [x, at(share)]
        })
        .collect()
}

pub fn series(name: &str, points: Vec<[f64; 2]>, role: Role) -> Series {
    Series::new(name, points, role)
}

pub fn heading(title: &str) -> Heading {
    Heading {
        title: title.to_owned(),
        subtitle: "Invented lifter, bench press, 100 kg on the bar".to_owned(),
        footnote: "Invented numbers; the shapes only look like strength curves.".to_owned(),
        description: "Two curves over the height of the bar. Capacity & demand are < 4000 N."
            .to_owned(),
        beyond: "continues to".to_owned(),
        left_out: "more not shown".to_owned(),
    }
}

/// A lying figure that presses a bar to the given height above the shoulder, m.
pub fn pressing(height_m: f64) -> StickFigure {
    let shoulder = [0.0, 0.45];
    let hand = [0.08, 0.45 + height_m];
    let reach = ((hand[0] - shoulder[0]).powi(2) + (hand[1] - shoulder[1]).powi(2)).sqrt();
    let bulge = (0.31_f64.powi(2) - (reach / 2.0).powi(2)).max(0.0).sqrt();
    let elbow = [
        f64::midpoint(shoulder[0], hand[0]) + bulge * (hand[1] - shoulder[1]) / reach,
        f64::midpoint(shoulder[1], hand[1]) - bulge * (hand[0] - shoulder[0]) / reach,
    ];
    StickFigure {
        limbs: vec![
            vec![shoulder, elbow, hand],
            vec![shoulder, [0.55, 0.45], [0.95, 0.42], [0.95, 0.0]],
        ],
        head: Some(([-0.18, 0.50], 0.10)),
        load: Some(DrawnLoad::Bar {
            at: hand,
            radius_m: 0.16,
        }),
        supports: vec![[[-0.3, 0.36], [0.6, 0.36]], [[-0.4, 0.0], [1.1, 0.0]]],
    }
}

pub fn poses() -> Vec<StripPose> {
    [
        (0.0, "start", 0.10),
        (14.0, "sticking point", 0.24),
        (40.0, "lockout", 0.58),
    ]
    .into_iter()
    .map(|(at, caption, height_m)| StripPose {
        at,
        caption: caption.to_owned(),
        figure: pressing(height_m),
    })
    .collect()
}

/// Capacity over demand with a sticking region: the figure most often drawn.
pub fn strength() -> LineChart {
    let capacity = curve(0.0, 40.0, |s| {
        1150.0 - 900.0 * s + 400.0 * s * s + 2600.0 * s.powi(7)
    });
    let demand = curve(0.0, 40.0, |s| 981.0 + 40.0 * (6.0 * s).sin() * (1.0 - s));
    LineChart {
        heading: heading("Hardest 14 cm off the chest: there the load takes 93 % of what is left"),
        x: Axis::new("Bar height above the chest", "cm").reaching(Extent::Data),
        panels: vec![Panel {
            axis: Axis::new("Force at the bar", "N").reaching(Extent::FromZeroTo(1500.0)),
            series: vec![
                series("Capacity", capacity, Role::CAPACITY),
                series("Demand of the bar", demand, Role::DEMAND),
            ],
            markers: vec![Marker {
                at: [14.0, 888.0],
                text: "Sticking point".to_owned(),
                detail: "effort 0.93 at 14 cm".to_owned(),
                role: Role::CAPACITY,
                is_cross: false,
            }],
            ..Panel::default()
        }],
        shades: vec![Shade {
            from: 9.0,
            to: 20.0,
            label: "Sticking region".to_owned(),
            is_hard: true,
            is_bare: false,
        }],
        poses: poses(),
        labels: Labels::Auto,
        whole: None,
        beside: Vec::new(),
        beside_title: String::new(),
    }
}

/// A standing figure from the side whose forearm is flexed by an angle, with a dumb-bell.
fn curling(flexion_deg: f64) -> StickFigure {
    let angle_rad = flexion_deg.to_radians();
    let (shoulder, elbow) = ([0.0, 1.42], [0.02, 1.10]);
    let hand = [
        elbow[0] + 0.33 * angle_rad.sin(),
        elbow[1] - 0.33 * angle_rad.cos(),
    ];
    StickFigure {
        limbs: vec![
            vec![
                shoulder,
                [-0.02, 0.92],
                [0.03, 0.48],
                [-0.02, 0.05],
                [0.2, 0.02],
            ],
            vec![shoulder, elbow, hand],
        ],
        head: Some(([0.02, 1.64], 0.11)),
        load: Some(DrawnLoad::Dumbbell { at: hand }),
        supports: vec![[[-0.3, 0.0], [0.5, 0.0]]],
    }
}

/// Single-joint movement with five poses.
pub fn curl() -> LineChart {
    let mut chart = same_end();
    chart.heading.title = "The curl is a bell: strongest in the middle".to_owned();
    chart.panels[0].series.truncate(2);
    chart.panels[0].series[0].name = "What the elbow flexors can hold".to_owned();
    chart.panels[0].series[1].name = "Dumbbell".to_owned();
    chart.poses = [20.0, 50.0, 80.0, 110.0, 140.0]
        .into_iter()
        .map(|at| StripPose {
            at,
            caption: format!("{at}°"),
            figure: curling(at),
        })
        .collect();
    chart
}

/// Two panels on one axis, with an area and a level line.
pub fn two_panels() -> LineChart {
    let mut chart = strength();
    chart.heading.title = "A band takes load off where the lifter is weak".to_owned();
    let panel = &mut chart.panels[0];
    panel.axis.extent = Extent::FromZeroTo(1800.0);
    panel.series.push(series(
        "Bar with band",
        curve(0.0, 40.0, |s| 780.0 + 420.0 * s),
        Role::EFFORT,
    ));
    panel.markers.clear();
    panel.fills = vec![Fill {
        upper: panel.series[1].points.clone(),
        lower: panel.series[2].points.clone(),
        role: Role::EFFORT,
    }];
    chart.panels.push(Panel {
        axis: Axis::new("Effort", ""),
        series: vec![
            series(
                "bar",
                curve(0.0, 40.0, |s| {
                    0.62 + 0.34 * (-(s - 0.35f64).powi(2) / 0.04).exp()
                }),
                Role::DEMAND,
            ),
            series(
                "with band",
                curve(0.0, 40.0, |s| {
                    0.66 + 0.14 * (-(s - 0.4f64).powi(2) / 0.08).exp()
                }),
                Role::EFFORT,
            ),
        ],
        levels: vec![LevelLine {
            at: 1.0,
            label: "all the lifter has".to_owned(),
        }],
        ..Panel::default()
    });
    chart.poses.clear();
    chart
}

/// Five curves that end at the same place.
pub fn same_end() -> LineChart {
    let names = [
        "Moment arm −20 %",
        "Moment arm −10 %",
        "Reference",
        "Moment arm +10 %",
        "Moment arm +20 %",
    ];
    let all = names
        .iter()
        .enumerate()
        .map(|(index, name)| {
            let bend = 0.4 + 0.3 * index as f64;
            let points = curve(20.0, 140.0, |s| {
                20.0 + 40.0 * s + bend * 30.0 * (s * std::f64::consts::PI).sin()
            });
            series(name, points, Role::Series(index))
        })
        .collect();
    LineChart {
        heading: heading("A longer moment arm lifts the middle of the curve and leaves its ends"),
        x: Axis::new("Elbow flexion", "°").reaching(Extent::Data),
        panels: vec![Panel {
            axis: Axis::new("Elbow torque", "N·m"),
            series: all,
            ..Panel::default()
        }],
        ..LineChart::default()
    }
}

/// Everything too long and too large at once.
pub fn nasty() -> LineChart {
    let mut chart = same_end();
    chart.heading.title = "The longest title that anyone would ever write over a figure about the \
        strength of a lifter who stands, sits or lies, pulls or pushes, with or without bands and \
        chains, in the morning or in the evening, and never gets to the end of the sentence at all"
        .to_owned();
    chart.heading.footnote = "Source: ".to_owned() + &"a very long list of authors, ".repeat(20);
    chart.x = Axis::new(
        "A quantity whose name is rather longer than it should be",
        "kg·m²·s⁻²",
    );
    let panel = &mut chart.panels[0];
    for series in &mut panel.series {
        for point in &mut series.points {
            point[1] *= 1.0e6;
        }
    }
    panel.markers = (0..3)
        .map(|index| Marker {
            at: [40.0 + 2.0 * f64::from(index), 6.0e7],
            text: format!("Point number {index}"),
            detail: "with a detail of some length, given in full".to_owned(),
            role: Role::Muted,
            is_cross: false,
        })
        .collect();
    panel.levels = vec![LevelLine {
        at: 7.0e7,
        label: "A line with a name".to_owned(),
    }];
    chart.shades = vec![
        Shade {
            from: 20.0,
            to: 24.0,
            label: "First of three stretches".to_owned(),
            is_hard: true,
            is_bare: false,
        },
        Shade {
            from: 24.0,
            to: 28.0,
            label: "Second of three stretches".to_owned(),
            is_hard: true,
            is_bare: false,
        },
        Shade {
            from: 130.0,
            to: 150.0,
            label: "Third".to_owned(),
            is_hard: true,
            is_bare: false,
        },
    ];
    chart
}

/// An ordered family around a reference, on which one curve leaves the axis downwards.
pub fn family() -> LineChart {
    let mut chart = same_end();
    chart.heading.title = "Longer fibres move the peak towards the stretched end".to_owned();
    let panel = &mut chart.panels[0];
    panel.axis.extent = Extent::Exactly([20.0, 90.0]);
    for (index, series) in panel.series.iter_mut().enumerate() {
        let peak = 60.0 + 14.0 * index as f64;
        series.points = curve(20.0, 140.0, |s| {
            80.0 - ((20.0 + 120.0 * s - peak) / 40.0).powi(2) * 18.0
        });
        series.role = if index == 2 {
            Role::Reference
        } else {
            Role::Ordered(index as f64 / 4.0)
        };
    }
    chart
}

/// Every sample as a scene in the given look, with a name for its file.
pub fn scenes(look: Look) -> Vec<(&'static str, Scene)> {
    let mut seven = small_multiples();
    seven.panels = (0..7)
        .map(|index| seven.panels[index % 3].clone())
        .collect();
    let mut all: Vec<(&'static str, Result<Scene>)> = line_charts()
        .into_iter()
        .map(|(name, chart)| (name, chart.scene(look)))
        .collect();
    all.push(("tornado", tornado().scene(look)));
    all.push(("map", heat_map().scene(look)));
    all.push(("three-shapes", small_multiples().scene(look)));
    all.push(("seven-panels", seven.scene(look)));
    all.into_iter()
        .map(|(name, scene)| {
            (
                name,
                scene.unwrap_or_else(|fault| panic!("{name}: {fault}")),
            )
        })
        .collect()
}

/// Every chart of curves with a name for its file.
pub fn line_charts() -> Vec<(&'static str, LineChart)> {
    vec![
        ("strength", strength()),
        ("two-panels", two_panels()),
        ("same-end", same_end()),
        ("curl", curl()),
        ("family", family()),
        ("nasty", nasty()),
    ]
}
