//! The fibre curves on the sheet of a worked pose: their constants, and their factors at a length.
//!
//! In: a lifter's curves, lengths on the sheet. Out: lines of the sheet.

use super::worked_sheet::WorkedSheet;
use crate::anatomy::{ActiveForceLength, Curves};
use crate::numeric::Formula;

/// Constants of the fibre curves as they stand on the sheet.
pub(super) struct Constants {
    active: Vec<Formula>,
    shape: Formula,
    strain: Formula,
    /// Hill's constant, where the pose moves.
    pub hill: Option<Formula>,
    /// What lengthening adds, and the speed at which half of it is there.
    pub surplus: Option<(Formula, Formula)>,
}

/// The constants of the curves.
pub(super) fn constants(sheet: &mut WorkedSheet, curves: &Curves, moves: bool) -> Constants {
    let active = match &curves.active {
        ActiveForceLength::Bells(bells) => bells
            .iter()
            .enumerate()
            .flat_map(|(index, bell)| {
                let parts = [bell.b1, bell.b2, bell.b3, bell.b4];
                (1..)
                    .zip(parts)
                    .map(move |(part, value)| (format!("b{part}({})", index + 1), value))
            })
            .map(|(symbol, value)| sheet.given(symbol, value, ("", 4), ""))
            .collect(),
        ActiveForceLength::Parabola { width } => {
            vec![sheet.given("half width", *width, ("", 4), "")]
        }
        ActiveForceLength::Gaussian { gamma } => vec![sheet.given("γ", *gamma, ("", 4), "")],
    };
    let passive = curves.passive;
    let shape = sheet.given("k", passive.shape, ("", 4), "shape of the passive force");
    let strain = "strain at which the passive force is F0";
    let strain = sheet.given("e0", passive.strain_at_peak, ("", 4), strain);
    let (mut hill, mut surplus) = (None, None);
    if moves {
        let velocity = curves.velocity;
        hill = Some(sheet.given("A", velocity.hill_a, ("", 4), "Hill's a over F0"));
        let more = velocity.voluntary_share * (velocity.eccentric_limit - 1.0);
        let bend = more / (velocity.eccentric_slope.max(1.0) * (1.0 + 1.0 / velocity.hill_a));
        surplus = Some((
            sheet.given("σ", more, ("", 4), "most that fast lengthening adds"),
            sheet.given("c", bend, ("", 5), "speed at which half of it is there"),
        ));
    }
    Constants {
        active,
        shape,
        strain,
        hill,
        surplus,
    }
}

/// The share of F0 that fully active fibres make at a length.
pub(super) fn active_factor(
    sheet: &mut WorkedSheet,
    curves: &Curves,
    constants: &Constants,
    length: &Formula,
    l: f64,
) -> Formula {
    let value = curves.active.at(l);
    let given = &constants.active;
    let formula = match &curves.active {
        ActiveForceLength::Bells(_) if l < 0.2 => {
            return sheet.given("fL", value, ("", 4), "the fibre is too short to make force");
        }
        ActiveForceLength::Bells(_) => Formula::sum(
            given
                .chunks(4)
                .map(|bell| {
                    let width = bell[2].clone() + bell[3].clone() * length.clone();
                    let apart = (length.clone() - bell[1].clone()) / width;
                    bell[0].clone() * (Formula::from(-0.5) * apart.square()).exp()
                })
                .collect(),
        ),
        ActiveForceLength::Parabola { .. } if value <= 0.0 => {
            return sheet.given("fL", value, ("", 4), "too far from its best length");
        }
        ActiveForceLength::Parabola { .. } => {
            let apart = (length.clone() - 1.0.into()) / given[0].clone();
            Formula::from(1.0) - apart.square()
        }
        ActiveForceLength::Gaussian { .. } => {
            let apart = (length.clone() - 1.0.into()).square() / given[0].clone();
            (-apart).exp()
        }
    };
    sheet.numbers_only("fL", formula, value, ("", 4))
}

/// The share that they make when they are only stretched.
pub(super) fn passive_factor(
    sheet: &mut WorkedSheet,
    curves: &Curves,
    constants: &Constants,
    length: &Formula,
    l: f64,
    mark: &str,
) -> Formula {
    let symbol = format!("fP{mark}");
    if l <= 1.0 {
        return sheet.given(symbol, 0.0, ("", 0), "not longer than l0");
    }
    let shape = constants.shape.clone();
    let stretch = length.clone() - 1.0.into();
    let grown = (shape.clone() * stretch / constants.strain.clone()).exp() - 1.0.into();
    let formula = grown / (shape.exp() - 1.0.into());
    sheet.follows(symbol, formula, curves.passive.at(l), ("", 4), "")
}
