//! Moment arms and levers of the load in words: about which axis, from where to where, and what each gives.
//!
//! In: a [`Cause`], the lengths of one muscle or of the load. Out: "moment arm at the elbow 4.0 → 4.4 cm". Every length
//! is that of its own pose, as the worked pose and the samples have it: an axis at a time, no axis between two states.

use super::changed_numbers::{decimals_of, from_to, signed};
use super::quantities::rounded;
use super::shown_units::{ShownUnit, ShownUnits};
use crate::anatomy::{Dof, Joint};
use crate::capacity::{Account, Lever, MuscleShare};
use crate::study::Cause;
use crate::units::System;

/// Lengths that turn, and how they are spoken of.
pub(super) struct Turned<'a> {
    levers: &'a [Lever],
    /// What they are.
    pub(super) name: &'static str,
    /// The word before an axis.
    at: &'static str,
    /// 1 where a longer one that works for the lift adds (arms), −1 where the load's takes.
    way: f64,
    /// What is said of a length that works the other way.
    otherwise: &'static str,
}

impl<'a> Turned<'a> {
    /// The arms of a muscle.
    pub(super) fn by_muscle(muscle: &'a MuscleShare) -> Self {
        Self {
            levers: &muscle.arms,
            name: "moment arm",
            at: "at",
            way: 1.0,
            otherwise: "against the lift",
        }
    }

    /// The levers of the load; where hands or feet push beside it, their pushes count in.
    pub(super) fn by_load(account: &'a Account) -> Self {
        Self {
            levers: &account.levers,
            name: if account.has_pushes {
                "moment arm of load and push"
            } else {
                "moment arm of the load"
            },
            at: "about",
            way: -1.0,
            otherwise: "where it helps the lift",
        }
    }
}

impl Turned<'_> {
    /// Whether a part is the change of its length at a price between those before and after: of a lever not so where
    /// other conditions bound on the way and the lever went another way there.
    fn explains(&self, cause: &Cause, row: usize, lever: &Lever) -> bool {
        /// Rounding, as a share.
        const SLACK: f64 = 1.0e-6;
        let [least, most] = cause.account.lever_prices(row);
        let price = lever.part / (lever.length_m[1] - lever.length_m[0]);
        let slack = SLACK * most.abs().max(least.abs());
        self.way > 0.0 || (least - slack..=most + slack).contains(&price)
    }
}

/// A part of less than this share of the largest is not told alone (assumed).
const SMALL: f64 = 0.15;

/// The lengths that changed, what each gives, and that the number behind is their sum.
pub(super) fn lengths_in_words(
    cause: &Cause,
    turned: &Turned<'_>,
    unit: ShownUnit,
    units: System,
) -> String {
    let mut levers: Vec<(usize, &Lever)> = turned.levers.iter().enumerate().collect();
    levers.retain(|(_, lever)| lever.part != 0.0);
    levers.sort_by(|a, b| b.1.part.abs().total_cmp(&a.1.part.abs()));
    let largest = levers.first().map_or(0.0, |(_, lever)| lever.part.abs());
    let whole: f64 = levers.iter().map(|(_, lever)| unit.of(lever.part)).sum();
    let decimals = decimals_of(whole);
    levers.retain(|(_, lever)| lever.part.abs() >= SMALL * largest);
    let has_axes = turned.levers.len() > 1;
    if let ([(row, only)], false) = (levers.as_slice(), has_axes) {
        return format!(
            "{}{}",
            turned.name,
            figures(cause, turned, *row, only, units)
        );
    }
    let own: f64 = levers.iter().map(|(_, lever)| unit.of(lever.part)).sum();
    let is_split = levers.len() > 1 || rounded(whole - own, decimals) != "0";
    let mut told: Vec<String> = Vec::new();
    let mut left = whole;
    for (row, lever) in &levers {
        let part = signed(unit.of(lever.part), decimals);
        left -= unit.of(lever.part);
        let figures = figures(cause, turned, *row, lever, units);
        let gives = if is_split {
            format!(" gives {part} {}", unit.symbol)
        } else {
            String::new()
        };
        told.push(format!(
            "{} the {}{figures}{gives}",
            turned.at,
            axis(lever.dof)
        ));
    }
    if is_split {
        if rounded(left, decimals) != "0" {
            told.push(format!(
                "elsewhere {} {}",
                signed(left, decimals),
                unit.symbol
            ));
        }
        told.push("together".to_owned());
    }
    format!("{} {}", turned.name, told.join(", "))
}

/// A joint, and at the shoulder about which of its axes.
fn axis(dof: Dof) -> String {
    match (dof.joint(), dof.name().split_once('_')) {
        (Joint::Shoulder, Some((joint, plane))) => format!("{joint} ({plane})"),
        (joint, _) => joint.name().to_owned(),
    }
}

/// " 4.0 → 4.4 cm", with the side on which it works; nothing where the length or its sense does not tell the part.
///
/// A length works for the lift or against it by the weight that its own state gives the axis; the same in both, else
/// the part is told alone.
fn figures(cause: &Cause, turned: &Turned<'_>, row: usize, lever: &Lever, units: System) -> String {
    let [before, after] = [0, 1].map(|side| cause.account.weights[side][row]);
    let sense = before + after;
    if before * after < 0.0 || sense == 0.0 {
        return String::new();
    }
    let lengths = lever.length_m.map(|m| turned.way * sense.signum() * m);
    let is_told = (lengths[1] - lengths[0]) * turned.way * lever.part > 0.0
        && turned.explains(cause, row, lever);
    let is_otherwise = lengths.iter().all(|m| *m <= 0.0);
    let sizes = lengths.map(|m| if is_otherwise { -m } else { m });
    let unit = units.length_unit();
    let Some(told) = from_to(sizes.map(|m| unit.of(m)), 1).filter(|_| is_told) else {
        return String::new();
    };
    let crosses = lengths[0] * lengths[1] < 0.0;
    let side = if crosses { " (to its other side)" } else { "" };
    let how = if is_otherwise {
        format!(", {},", turned.otherwise)
    } else {
        String::new()
    };
    format!("{how} {told} {}{side}", unit.symbol)
}
