//! Mean velocity over load: the simulated profile, its line, and the published equation where there is one.
//!
//! In: a [`MaximumStudy`] with its profile, the published equations. Out: a scene.

use super::sheet::heading;
use crate::draw::Scene;
use crate::error::Result;
use crate::narrative::profile_words::{LOAD_SHARE, MEAN_VELOCITY, PUBLISHED, profile_words};
use crate::narrative::quantities::QuantityWords;
use crate::narrative::shown_units::{ShownUnit, ShownUnits};
use crate::plot::{Axis, Extent, Fill, LineChart, Look, Marker, Panel, Role, Series};
use crate::progress::published_equations::{VelocityEquation, VelocityEquations};
use crate::rep::LoadPace;
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
    let profile = found.profile.as_ref();
    let rows = profile.map_or(&[][..], |profile| &profile.rows);
    let published = PublishedVelocities::of(equations, &found.movement_name);
    let words = profile_words(
        found,
        rows,
        published.equation,
        published.at_maximum(),
        units,
    );
    let panel = panel(rows, &published, units.velocity_unit(found.measure), units);
    LineChart {
        heading: heading(&words),
        ..LineChart::new(
            Axis::new(LOAD_SHARE, "%").reaching(Extent::Data),
            vec![panel],
        )
    }
    .scene(look)
}

/// The simulated profile, the published curve with its scatter, the maximum itself.
fn panel(
    rows: &[LoadPace],
    published: &PublishedVelocities<'_>,
    unit: ShownUnit,
    units: System,
) -> Panel {
    let shown = |points: Vec<[f64; 2]>| -> Vec<[f64; 2]> {
        points.into_iter().map(|[x, y]| [x, unit.of(y)]).collect()
    };
    let point = |row: &LoadPace| [100.0 * row.share, unit.of(row.mean_velocity)];
    let simulated = rows.iter().map(point).collect();
    let mut series = vec![Series::new("simulated", simulated, Role::CAPACITY)];
    let curve = published.curve();
    if !curve.is_empty() {
        series.push(Series::new(PUBLISHED, shown(curve), Role::DEMAND));
    }
    let top = rows
        .last()
        .map(|row| Marker::new(point(row), units.mass(row.load), Role::CAPACITY));
    let scatter = published.scatter().map(|[upper, lower]| Fill {
        upper: shown(upper),
        lower: shown(lower),
        role: Role::DEMAND,
    });
    Panel {
        fills: scatter.into_iter().collect(),
        markers: top.into_iter().collect(),
        ..Panel::new(Axis::new(MEAN_VELOCITY, unit.symbol), series)
    }
}

/// The published equation of a movement, if there is one, and the loads it holds for.
struct PublishedVelocities<'a> {
    equation: Option<&'a VelocityEquation>,
    loads_percent: (f64, f64),
}

impl<'a> PublishedVelocities<'a> {
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

    /// The published velocity of a maximum, m/s.
    fn at_maximum(&self) -> Option<f64> {
        let curve = self.curve();
        curve
            .iter()
            .find(|point| point[0] > 99.9)
            .map(|point| point[1])
    }

    /// Two standard errors of the equation on either side, where they are published.
    fn scatter(&self) -> Option<[Vec<[f64; 2]>; 2]> {
        let error = self.equation?.error_percent?;
        Some([-2.0 * error, 2.0 * error].map(|aside| self.moved(aside, 0.0)))
    }
}
