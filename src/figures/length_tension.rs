//! Force over length: the sarcomere's diagram from the overlap of its filaments, and the active,
//! passive and total force of a fibre.
//!
//! In: filament lengths of the library, the lifter's fibre curves, a lift that shows which stretch of
//! the curve is used. Out: figures.

use super::desk::Desk;
use super::sarcomere_chart::SarcomereChart;
use super::sheet::{Chart, Sheet};
use crate::error::Result;
use crate::narrative::prose::percent;
use crate::plot::{Axis, Extent, Heading, LineChart, Marker, Panel, Role, Series, Shade};
use crate::study::{MusclePart, muscle_parts};
use crate::units::rounded;

/// The lift whose working stretch is shaded on the fibre's curve.
const LIFT: &str = "biceps-curl";

/// Filaments and force.
pub fn sarcomere_overlap(desk: &Desk<'_>) -> Result<Sheet> {
    let sarcomere = desk.models.sarcomere("human")?;
    let corners = sarcomere.corners();
    let um = |length: f64| rounded(length, 2);
    let description = format!(
        "Length-tension diagram of a {} sarcomere: no force at {} µm, {} at {} µm, full force from {} to {} µm, \
         no force again at {} µm. Below it the sarcomere at four of these lengths, with Z discs, thin and thick \
         filaments to scale.",
        sarcomere.species,
        um(corners[0].0),
        percent(corners[1].1),
        um(corners[1].0),
        um(corners[2].0),
        um(corners[3].0),
        um(corners[4].0)
    );
    let chart = SarcomereChart {
        heading: Heading {
            title: format!(
                "Overlap is force: greatest from {} to {} µm",
                um(corners[2].0),
                um(corners[3].0)
            ),
            subtitle: format!(
                "One {} sarcomere, fully active, held still",
                sarcomere.species
            ),
            footnote: format!(
                "Thin filament {} µm, thick filament {} µm, bare zone {} µm, Z disc {} µm; drawn to scale.",
                um(sarcomere.thin_um),
                um(sarcomere.thick_um),
                um(sarcomere.bare_zone_um),
                um(sarcomere.z_disc_um)
            ),
            description,
            ..super::phrases()
        },
        sarcomere,
    };
    Ok(Sheet::new(
        Chart::Sarcomeres(chart),
        "Force comes from heads of the thick filament that hold a thin one. Stretched too far (D) no head finds \
         a thin filament; in the plateau (C) all do; shorter than that thin filaments of both sides get in each \
         other's way, and below B the thick filaments run into the Z discs.",
    ))
}

/// Human against frog filaments: why textbook numbers of the frog do not fit people.
pub fn sarcomere_species(desk: &Desk<'_>) -> Result<Sheet> {
    let (human, frog) = (
        desk.models.sarcomere("human")?,
        desk.models.sarcomere("frog")?,
    );
    let points = |corners: [(f64, f64); 5]| -> Vec<[f64; 2]> {
        corners
            .iter()
            .map(|(length, share)| [*length, 100.0 * share])
            .collect()
    };
    let shift = human.optimum_um() - frog.optimum_um();
    let chart = LineChart {
        heading: Heading {
            title: format!(
                "Longer thin filaments: human muscle is best {} µm longer than frog muscle",
                rounded(shift, 2)
            ),
            subtitle: format!(
                "Thin filament {} µm in people, {} µm in frogs; thick filament {} µm in both",
                rounded(human.thin_um, 2),
                rounded(frog.thin_um, 2),
                rounded(human.thick_um, 2)
            ),
            footnote:
                "The classic diagram was measured on frog fibres; the human one follows from human \
                       filament lengths."
                    .to_owned(),
            description: format!(
                "Two length-tension diagrams. Frog: plateau around {} µm, no overlap from {} µm on. Human: plateau \
                 around {} µm, no overlap from {} µm on.",
                rounded(frog.optimum_um(), 2),
                rounded(frog.corners()[4].0, 2),
                rounded(human.optimum_um(), 2),
                rounded(human.corners()[4].0, 2)
            ),
            ..super::phrases()
        },
        x: Axis::new("Sarcomere length", "µm").reaching(Extent::Data),
        panels: vec![Panel {
            axis: Axis::new("Active force", "% of the greatest"),
            series: vec![
                Series {
                    name: "human".to_owned(),
                    points: points(human.corners()),
                    role: Role::Series(0),
                },
                Series {
                    name: "frog".to_owned(),
                    points: points(frog.corners()),
                    role: Role::Series(1),
                },
            ],
            ..Panel::default()
        }],
        ..LineChart::default()
    };
    Ok(Sheet::new(
        Chart::Lines(chart),
        "The same law of overlap with other filament lengths: textbook figures of the frog's sarcomere must not be \
         carried over to people unchanged.",
    ))
}

/// Active, passive and total force, and the stretch of it that a lift uses.
pub fn active_passive_total(desk: &Desk<'_>) -> Result<Sheet> {
    let curves = desk.curves();
    let lengths: Vec<f64> = (0..=120).map(|step| 0.4 + 0.01 * f64::from(step)).collect();
    let active: Vec<[f64; 2]> = lengths
        .iter()
        .map(|l| [100.0 * l, 100.0 * curves.active.at(*l)])
        .collect();
    let passive: Vec<[f64; 2]> = lengths
        .iter()
        .map(|l| [100.0 * l, 100.0 * curves.passive.at(*l)])
        .collect();
    let total: Vec<[f64; 2]> = active
        .iter()
        .zip(&passive)
        .map(|(a, p)| [a[0], a[1] + p[1]])
        .collect();
    let crossing = active
        .iter()
        .zip(&passive)
        .find(|(a, p)| a[0] > 100.0 && p[1] > a[1])
        .map_or(f64::NAN, |(a, _)| a[0]);
    let used = used_stretch(desk)?;
    let dip = valley(&total);
    let chart = LineChart {
        heading: Heading {
            title: format!(
                "Stretched beyond {} % a fibre resists more than it pulls",
                rounded(crossing, 0)
            ),
            subtitle: "Fully active fibre, held still; passive force is there without any activation".to_owned(),
            footnote: "Shaded: the lengths that the lift's strongest muscle passes. Both curves are shares of its \
                       peak force."
                .to_owned(),
            description: format!(
                "Force of a fibre over its length. Active force is greatest near 100 % of the optimal length; {} of \
                 it are left at 60 %, {} at 140 %. Passive force starts at 100 % and passes the active one at {} %. \
                 {} works from {} to {} % in the {}.",
                percent(curves.active.at(0.6)),
                percent(curves.active.at(1.4)),
                rounded(crossing, 0),
                used.muscle,
                rounded(used.from_percent, 0),
                rounded(used.to_percent, 0),
                used.lift
            ),
..super::phrases()
},
        x: Axis::new("Fibre length, optimal length = 100", "%").reaching(Extent::Data),
        panels: vec![Panel {
            axis: Axis::new("Force, greatest active force = 100", "%")
                .reaching(Extent::FromZeroTo(150.0)),
            series: vec![
                Series { name: "total".to_owned(), points: total, role: Role::Reference },
                Series { name: "active".to_owned(), points: active, role: Role::Series(0) },
                Series { name: "passive".to_owned(), points: passive, role: Role::Series(1) },
            ],
            markers: dip
                .map(|at| Marker {
                    at,
                    text: format!("{} %", rounded(at[1], 0)),
                    detail: "total force dips between the two".to_owned(),
                    role: Role::Reference,
                })
                .into_iter()
                .collect(),
            ..Panel::default()
        }],
        shades: vec![Shade {
            from: used.from_percent,
            to: used.to_percent,
            label: format!("{} in the {}", used.muscle, used.lift),
        }],
        ..LineChart::default()
    };
    Ok(Sheet::new(
        Chart::Lines(chart),
        "A muscle is strong near its optimal length and weak when it is short. When it is long, elastic structures \
         take over. Which part of the curve a lift uses depends on the joint angles it passes.",
    ))
}

/// Where the total force has a least value between its two rises.
fn valley(total: &[[f64; 2]]) -> Option<[f64; 2]> {
    let least = |w: &&[[f64; 2]]| w[1][1] < w[0][1] && w[1][1] <= w[2][1] && w[1][0] > 100.0;
    total.windows(3).find(least).map(|w| w[1])
}

/// The lengths that a muscle passes in a lift.
struct Used {
    muscle: String,
    lift: String,
    from_percent: f64,
    to_percent: f64,
}

/// The stretch of the strongest muscle of the lift.
fn used_stretch(desk: &Desk<'_>) -> Result<Used> {
    let study = &desk.lift(LIFT)?.study;
    let parts = muscle_parts(study, 0);
    let strongest: &MusclePart = &parts[0];
    let least = strongest
        .fibre_norm
        .iter()
        .copied()
        .fold(f64::INFINITY, f64::min);
    let most = strongest.fibre_norm.iter().copied().fold(0.0, f64::max);
    Ok(Used {
        muscle: strongest.name.clone(),
        lift: study.movement_title.to_lowercase(),
        from_percent: 100.0 * least,
        to_percent: 100.0 * most,
    })
}
