//! Mean velocity over load: the simulated profile, its line, and the published equation where there is one.

use crate::draw::Scene;
use crate::error::Result;
use crate::movement::Measure;
use crate::plot::{Axis, Extent, Fill, Heading, LineChart, Look, Marker, Panel, Role, Series};
use crate::progress::published::{VelocityEquation, VelocityEquations};
use crate::rep::LoadVelocity;
use crate::units::rounded;

/// The chart of a profile.
///
/// **Fails** if fewer than two loads were lifted.
pub fn load_velocity_chart(
    equations: &VelocityEquations,
    movement: &str,
    title: &str,
    lifter: &str,
    profile: &LoadVelocity,
    measure: Measure,
    look: Look,
) -> Result<Scene> {
    let (unit, factor) = match measure {
        Measure::Force => ("m/s", 1.0),
        Measure::Torque => ("deg/s", 1.0_f64.to_degrees()),
    };
    let point = |share: f64, velocity: f64| [100.0 * share, factor * velocity];
    let mut series = vec![Series {
        name: "simulated".to_owned(),
        points: profile
            .rows
            .iter()
            .map(|row| point(row.share, row.mean_velocity))
            .collect(),
        role: Role::CAPACITY,
    }];
    let published = published_curve(equations, movement);
    if !published.is_empty() {
        series.push(Series {
            name: "published equation".to_owned(),
            points: published.iter().map(|p| point(p.0, p.1)).collect(),
            role: Role::DEMAND,
        });
    }
    let top = profile.rows.last();
    let slowest = top.map_or(0.0, |row| factor * row.mean_velocity);
    let heading = Heading {
        title: match published.iter().find(|p| p.0 > 0.999) {
            Some((_, by_equation)) => format!(
                "{title}: {} {unit} at the maximum, {} published",
                rounded(slowest, 2),
                rounded(factor * by_equation, 2)
            ),
            None => format!(
                "{title}: {} {unit} at the maximum",
                rounded(slowest, if factor == 1.0 { 2 } else { 0 })
            ),
        },
        subtitle: format!(
            "{lifter}. Mean velocity of the lift with full effort, by share of the maximum"
        ),
        footnote: footnote(equations.usual_for(movement)),
        description: format!(
            "Mean velocity falls from {} {unit} at {} % to {} {unit} at {} % of the maximum.",
            rounded(
                profile
                    .rows
                    .first()
                    .map_or(0.0, |r| factor * r.mean_velocity),
                2
            ),
            rounded(profile.rows.first().map_or(0.0, |r| 100.0 * r.share), 0),
            rounded(slowest, 2),
            rounded(top.map_or(0.0, |r| 100.0 * r.share), 0),
        ),
        ..super::sheet::phrases()
    };
    LineChart {
        heading,
        x: Axis::new("Load, share of the maximum", "%").reaching(Extent::Data),
        panels: vec![Panel {
            axis: Axis::new("Mean velocity", unit),
            series,
            fills: scatter(equations, movement, factor),
            markers: top
                .map(|row| Marker {
                    at: point(row.share, row.mean_velocity),
                    text: format!("{} kg", rounded(row.load.as_kg(), 1)),
                    detail: String::new(),
                    role: Role::CAPACITY,
                })
                .into_iter()
                .collect(),
            ..Panel::default()
        }],
        ..LineChart::default()
    }
    .scene(look)
}

fn footnote(equation: Option<&VelocityEquation>) -> String {
    let Some(equation) = equation else {
        return "No published load-velocity equation for this lift is at hand.".to_owned();
    };
    let scatter = if equation.error_percent.is_some() {
        "; shaded: two standard errors"
    } else {
        ""
    };
    format!(
        "Published equation: see torquill sources; guided bar, pause at the bottom, trained men{scatter}."
    )
}

/// Two standard errors of the equation on either side, where they are published.
fn scatter(equations: &VelocityEquations, movement: &str, factor: f64) -> Vec<Fill> {
    let Some((equation, error)) = equations
        .usual_for(movement)
        .and_then(|e| Some((e, e.error_percent?)))
    else {
        return Vec::new();
    };
    let (first, last) = equations.loads.percent;
    let edge = |aside: f64| -> Vec<[f64; 2]> {
        (0..=70)
            .map(|step| first + (last - first) * f64::from(step) / 70.0)
            .filter_map(|percent| {
                let velocity = equation.velocity_m_s_at(percent + aside)?;
                Some([percent, factor * velocity.max(0.0)])
            })
            .collect()
    };
    vec![Fill {
        upper: edge(-2.0 * error),
        lower: edge(2.0 * error),
        role: Role::DEMAND,
    }]
}

/// Share of the maximum and mean velocity, m/s, by the published equation; empty where there is none.
fn published_curve(equations: &VelocityEquations, movement: &str) -> Vec<(f64, f64)> {
    let Some(equation) = equations.usual_for(movement) else {
        return Vec::new();
    };
    let (first, last) = equations.loads.percent;
    (0..=70)
        .map(|step| first + (last - first) * f64::from(step) / 70.0)
        .filter_map(|percent| Some((percent / 100.0, equation.velocity_m_s_at(percent)?)))
        .collect()
}
