//! Mean velocity over load: the simulated profile, its line, and the published equation where there is one.
//!
//! In: a [`MaximumStudy`] with its profile, the published equations. Out: a scene.

use super::sheet::heading;
use crate::draw::Scene;
use crate::error::Result;
use crate::narrative::profile_words::{LOAD_SHARE, MEAN_VELOCITY, PUBLISHED, profile_words};
use crate::narrative::quantities::mass_in;
use crate::narrative::shown_units::velocity_unit;
use crate::plot::{Axis, Extent, Fill, LineChart, Look, Marker, Panel, Role, Series};
use crate::progress::published_equations::{VelocityEquation, VelocityEquations};
use crate::study::MaximumStudy;
use crate::units::System;

/// Steps of the published curve.
const STEPS: i32 = 70;

/// The chart of a profile.
///
/// **Fails** if fewer than two loads were lifted.
pub fn load_velocity_chart(
    found: &MaximumStudy,
    equations: &VelocityEquations,
    units: System,
    look: Look,
) -> Result<Scene> {
    let unit = velocity_unit(found.measure, units);
    let rows = found
        .profile
        .as_ref()
        .map_or(&[][..], |profile| &profile.rows);
    let published = Published::of(equations, &found.movement_name);
    let shown = |points: Vec<[f64; 2]>| -> Vec<[f64; 2]> {
        points.into_iter().map(|[x, y]| [x, unit.of(y)]).collect()
    };
    let simulated = rows
        .iter()
        .map(|row| [100.0 * row.share, row.mean_velocity]);
    let mut series = vec![Series::new(
        "simulated",
        shown(simulated.collect()),
        Role::CAPACITY,
    )];
    let curve = published.curve();
    let at_maximum = curve
        .iter()
        .find(|point| point[0] > 99.9)
        .map(|point| point[1]);
    if !curve.is_empty() {
        series.push(Series::new(PUBLISHED, shown(curve), Role::DEMAND));
    }
    let top = rows.last().map(|row| {
        let at = [100.0 * row.share, unit.of(row.mean_velocity)];
        Marker::new(at, mass_in(units, row.load), Role::CAPACITY)
    });
    let scatter = published.scatter().map(|[upper, lower]| Fill {
        upper: shown(upper),
        lower: shown(lower),
        role: Role::DEMAND,
    });
    let panel = Panel {
        fills: scatter.into_iter().collect(),
        markers: top.into_iter().collect(),
        ..Panel::new(Axis::new(MEAN_VELOCITY, unit.symbol), series)
    };
    let words = profile_words(found, rows, published.equation, at_maximum, units);
    LineChart {
        heading: heading(&words),
        ..LineChart::new(
            Axis::new(LOAD_SHARE, "%").reaching(Extent::Data),
            vec![panel],
        )
    }
    .scene(look)
}

/// The published equation of a movement, if there is one, and the loads it holds for.
struct Published<'a> {
    equation: Option<&'a VelocityEquation>,
    loads_percent: (f64, f64),
}

impl<'a> Published<'a> {
    fn of(equations: &'a VelocityEquations, movement: &str) -> Self {
        Self {
            equation: equations.usual_for(movement),
            loads_percent: equations.loads.percent,
        }
    }

    /// Mean velocity, m/s, over the share of the maximum, %, both moved by some per cent of load.
    fn moved(&self, aside_percent: f64, least_m_s: f64) -> Vec<[f64; 2]> {
        let Some(equation) = self.equation else {
            return Vec::new();
        };
        let (first, last) = self.loads_percent;
        (0..=STEPS)
            .map(|step| first + (last - first) * f64::from(step) / f64::from(STEPS))
            .filter_map(|percent| {
                let velocity = equation.velocity_m_s_at(percent + aside_percent)?;
                Some([percent, velocity.max(least_m_s)])
            })
            .collect()
    }

    fn curve(&self) -> Vec<[f64; 2]> {
        self.moved(0.0, f64::NEG_INFINITY)
    }

    /// Two standard errors of the equation on either side, where they are published.
    fn scatter(&self) -> Option<[Vec<[f64; 2]>; 2]> {
        let error = self.equation?.error_percent?;
        Some([-2.0 * error, 2.0 * error].map(|aside| self.moved(aside, 0.0)))
    }
}
