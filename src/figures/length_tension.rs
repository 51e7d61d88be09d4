//! Force over length: the sarcomere's diagram from the overlap of its filaments, and the active,
//! passive and total force of a fibre.
//!
//! In: filament lengths, the lifter's fibre curves, which stretch of them a lift uses. Out: figures.

use super::sarcomere_chart::{SarcomereChart, overlap_points};
use super::sheet::{Chart, Sheet, heading};
use crate::anatomy::{Curves, Sarcomere};
use crate::narrative::axis_words::{FIBRE_LENGTH_OPTIMAL, FORCE};
use crate::narrative::fibre_words::{
    ACTIVE_FORCE, DIP, SARCOMERE_LENGTH, active_passive_words, fibre_use_label, overlap_words,
    species_words,
};
use crate::narrative::quantities::rounded;
use crate::plot::{Axis, Extent, LineChart, Marker, Panel, Role, Series, Shade};
use crate::study::FibreUse;

/// Filaments and force.
#[must_use]
pub fn sarcomere_overlap(sarcomere: Sarcomere) -> Sheet {
    let words = overlap_words(&sarcomere);
    let heading = heading(&words);
    let chart = SarcomereChart { heading, sarcomere };
    Sheet::new(Chart::Sarcomeres(chart), words.caption)
}

/// Human against frog filaments: why textbook numbers of the frog do not fit people.
#[must_use]
pub fn sarcomere_species(human: &Sarcomere, frog: &Sarcomere) -> Sheet {
    let axis = |(quantity, unit): (&str, &str)| Axis::new(quantity, unit);
    /// Where the axis of lengths begins, µm: before the shortest length with force.
    const SHORTEST_UM: f64 = 1.0;
    let longest = human.corners()[4].0.max(frog.corners()[4].0);
    let series = vec![
        Series::new("human", overlap_points(human), Role::Series(0)),
        Series::new("frog", overlap_points(frog), Role::Series(1)),
    ];
    let chart = LineChart::new(
        axis(SARCOMERE_LENGTH).reaching(Extent::Exactly([SHORTEST_UM, longest])),
        vec![Panel::new(axis(ACTIVE_FORCE), series)],
    );
    Sheet::lines(&species_words(human, frog), chart)
}

/// Active, passive and total force over fibre length, all in percent.
struct FibreForces {
    active: Vec<[f64; 2]>,
    passive: Vec<[f64; 2]>,
    total: Vec<[f64; 2]>,
}

impl FibreForces {
    fn of(curves: &Curves) -> Self {
        let lengths: Vec<f64> = (0..=120).map(|step| 0.4 + 0.01 * f64::from(step)).collect();
        let points = |force: &dyn Fn(f64) -> f64| -> Vec<[f64; 2]> {
            let point = |l: &f64| [100.0 * l, 100.0 * force(*l)];
            lengths.iter().map(point).collect()
        };
        let active = points(&|l| curves.active.at(l));
        let passive = points(&|l| curves.passive.at(l));
        let both = active.iter().zip(&passive);
        Self {
            total: both.map(|(a, p)| [a[0], a[1] + p[1]]).collect(),
            active,
            passive,
        }
    }

    /// The length beyond which passive force is the greater one, %.
    fn crossing(&self) -> f64 {
        let surplus: Vec<[f64; 2]> = self
            .active
            .iter()
            .zip(&self.passive)
            .map(|(a, p)| [a[0], p[1] - a[1]])
            .collect();
        let mut pieces = surplus.windows(2);
        let crossing = pieces.find(|w| w[0][0] >= 100.0 && w[0][1] <= 0.0 && w[1][1] > 0.0);
        crossing.map_or(f64::NAN, |w| {
            w[0][0] - w[0][1] * (w[1][0] - w[0][0]) / (w[1][1] - w[0][1])
        })
    }

    /// Where the total force has a least value between its two rises.
    fn valley(&self) -> Option<[f64; 2]> {
        let least = |w: &&[[f64; 2]]| w[1][1] < w[0][1] && w[1][1] <= w[2][1] && w[1][0] > 100.0;
        self.total.windows(3).find(least).map(|w| w[1])
    }
}

/// Active, passive and total force, and the stretch of it that a lift uses.
#[must_use]
pub fn active_passive_total(curves: &Curves, used: &FibreUse) -> Sheet {
    let forces = FibreForces::of(curves);
    let words = active_passive_words(curves, forces.crossing(), used);
    let dip = forces.valley().map(|at| {
        let text = format!("{} %", rounded(at[1], 0));
        Marker::new(at, text, Role::Reference).detailed(DIP)
    });
    let axis = Axis::new(FORCE, "%").reaching(Extent::FromZeroTo(150.0));
    let series = vec![
        // On top, since the total lies on it where nothing is stretched.
        Series::new("active", forces.active, Role::Series(0)),
        Series::new("passive", forces.passive, Role::Series(1)),
        Series::new("total", forces.total, Role::Reference),
    ];
    let panel = Panel {
        markers: dip.into_iter().collect(),
        ..Panel::new(axis, series)
    };
    let ends = [used.from_percent, used.to_percent];
    let chart = LineChart {
        shades: vec![Shade::neutral(ends, fibre_use_label(used))],
        ..LineChart::new(
            Axis::new(FIBRE_LENGTH_OPTIMAL, "%").reaching(Extent::Data),
            vec![panel],
        )
    };
    Sheet::lines(&words, chart)
}
