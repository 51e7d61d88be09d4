//! Levers of a comparison: each part is what the change of its own lever is worth, on the line as in the account.

use crate::lift_by_another_name::LIFTS;
use crate::vary_reasons::families;
use torquill::capacity::Account;
use torquill::library::{Library, Workbench};
use torquill::narrative::why_lines;
use torquill::study::{Conditions, Family, Parameter, family};
use torquill::units::System;

/// The price of a metre of lever by the documented equation, where the same conditions bind all the way.
fn mean_price(account: &Account, row: usize) -> f64 {
    let ([before, after], weights) = (account.capacity, &account.weights);
    0.5 * (before * weights[1][row] + after * weights[0][row]) / account.sides
}

/// The load's levers in the words of a line.
const LEVERS: [&str; 2] = ["moment arm of the load ", "moment arm of load and push "];

/// A lever on a line: what it was and is, how finely printed, and what it gives, how finely printed.
#[derive(Debug)]
struct PrintedLever {
    axis: String,
    lengths_cm: [f64; 2],
    finest_cm: f64,
    gives: f64,
    finest: f64,
    helps: bool,
}

fn number(text: &str) -> Option<(f64, f64)> {
    let text = text.trim_matches([',', ';', ':']).replace('\u{2212}', "-");
    let decimals = text.split_once('.').map_or(0, |(_, digits)| digits.len());
    Some((text.parse().ok()?, 0.1_f64.powi(decimals as i32)))
}

/// Every lever of the load on a line of reasons that has centimetres and a part.
fn printed(line: &str) -> Vec<PrintedLever> {
    let mut found = Vec::new();
    for reason in line
        .split("; ")
        .filter(|reason| LEVERS.iter().any(|lever| reason.contains(lever)))
    {
        let whole = reason
            .rsplit(": ")
            .next()
            .and_then(|text| number(text.split(' ').next()?));
        let clauses: Vec<&str> = reason.split("about the ").skip(1).collect();
        for clause in &clauses {
            let Some((words, rest)) = clause.split_once(" \u{2192} ") else {
                continue;
            };
            let Some((axis, from)) = words.rsplit_once(' ') else {
                continue;
            };
            let Some((to, rest)) = rest.split_once(" cm") else {
                continue;
            };
            let part = rest
                .split_once("gives ")
                .and_then(|(_, gives)| number(gives.split(' ').next()?))
                .or(whole.filter(|_| clauses.len() == 1));
            let (Some(from), Some(to), Some(part)) = (number(from), number(to), part) else {
                continue;
            };
            found.push(PrintedLever {
                axis: axis.trim_end_matches(',').to_owned(),
                lengths_cm: [from.0, to.0],
                finest_cm: from.1.max(to.1),
                gives: part.0,
                finest: part.1,
                helps: axis.contains("where it helps the lift"),
            });
        }
    }
    found
}

fn row_of(family: &Family, axis: &str) -> Option<usize> {
    let coordinates = &family.base.range.poses[0].coordinates;
    let name = |dof: torquill::anatomy::Dof| match dof.name().split_once('_') {
        Some((joint, plane)) if joint == "shoulder" => format!("{joint} ({plane})"),
        _ => dof.joint().name().to_owned(),
    };
    coordinates
        .iter()
        .position(|c| axis.starts_with(&name(c.dof)))
}

#[test]
fn law_a_lever_part_is_its_change_times_its_price() {
    let (mut told, mut exact) = (0, 0);
    for (seed, lift) in LIFTS.iter().enumerate() {
        for family in families(lift, 300 + seed as u64) {
            for variant in &family.variants {
                let lines = why_lines(&family, variant, System::Metric);
                for (cause, line) in variant.causes.iter().zip(&lines[1..]) {
                    let case =
                        format!("{lift}, {} {}: {line}", family.parameter.path, variant.text);
                    exact += check_account(&cause.account, &case);
                    for lever in printed(line) {
                        let row = row_of(&family, &lever.axis).expect(&case);
                        check_printed(&cause.account, row, &lever, &case);
                        told += 1;
                    }
                }
            }
        }
    }
    // Hardly any line names a length; the law would be empty if none did.
    assert!(told > 50 && exact > 1_000, "{told} {exact}");
}

/// In the account itself: part = price × change, to rounding, where one stretch is all.
fn check_account(account: &Account, case: &str) -> usize {
    if account.stretches > 1 || account.rest != 0.0 {
        return 0;
    }
    let size = account.capacity[0].abs().max(account.capacity[1].abs());
    for (row, lever) in account.levers.iter().enumerate() {
        let change = lever.length_m[1] - lever.length_m[0];
        let worth = mean_price(account, row) * change;
        let room = 1.0e-9 * size.max(worth.abs());
        assert!(
            (lever.part - worth).abs() <= room,
            "{case}: {lever:?} {worth}"
        );
    }
    account.levers.len()
}

/// On the line: the printed part is what the printed change is worth, within what the digits leave open.
fn check_printed(account: &Account, row: usize, lever: &PrintedLever, case: &str) {
    let [least, most] = account.lever_prices(row);
    let dearest = least.abs().max(most.abs());
    let cheapest = if least * most < 0.0 {
        0.0
    } else {
        least.abs().min(most.abs())
    };
    let change_m = (lever.lengths_cm[1] - lever.lengths_cm[0]).abs() / 100.0;
    let room = dearest * lever.finest_cm / 100.0 + 0.51 * lever.finest;
    let gives = lever.gives.abs();
    assert!(
        gives <= dearest * change_m + room,
        "{case}: {lever:?} at most {dearest} N/m"
    );
    assert!(
        gives >= cheapest * change_m - room,
        "{case}: {lever:?} at least {cheapest} N/m"
    );
    if account.stretches == 1 {
        let worth = mean_price(account, row).abs() * change_m;
        assert!(
            (gives - worth).abs() <= room,
            "{case}: {lever:?} is worth {worth}"
        );
    }
    // A longer lever against the lift takes, a longer one that helps adds.
    let grows = lever.lengths_cm[1] > lever.lengths_cm[0];
    if gives > 0.0 {
        assert_eq!(
            grows,
            lever.helps == (lever.gives > 0.0),
            "{case}: {lever:?}"
        );
    }
}

/// A press by hand: the two levers that are printed give what their changes are worth, hundreds of newtons and not thousands.
#[test]
fn regress_levers_of_a_press_are_not_split_at_a_fixed_push() {
    let bench =
        Workbench::open(&Library::built_in(), "reference-man", "bench-press").expect("a lift");
    let parameter = Parameter::read("technique.grip_width", "55 cm,80 cm").expect("values");
    let family = family(&bench, &[], &parameter, &Conditions::default()).expect("a family");
    let mut pushed = 0;
    for variant in &family.variants {
        for cause in &variant.causes {
            let account = &cause.account;
            for (row, lever) in account.levers.iter().enumerate() {
                let [least, most] = account.lever_prices(row);
                let change = (lever.length_m[1] - lever.length_m[0]).abs();
                let can = least.abs().max(most.abs()) * change;
                assert!(
                    lever.part.abs() <= 1.05 * can + 1.0e-6,
                    "{:?} {lever:?} {can}",
                    cause.spot
                );
                pushed += usize::from(lever.part != 0.0);
            }
        }
    }
    assert!(pushed > 6, "{pushed}");
}
