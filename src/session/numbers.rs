//! Every set of numbers in this room with where it comes from, for `torquill sources`.
//!
//! In: the tables of the other files. Out: one list of what and [`Origin`]; a test demands that every
//! publication it names is in the list of publications.

use super::{
    cautions, clusters, eccentric, fatigue, phosphocreatine, pyramid, repetitions, rests, status,
    straight,
};
use crate::progress::origin::Origin;
use crate::progress::{estimate, repetition_equations, trend, velocity_equations};

/// Numbers that stand alone, outside any table.
const SINGLE: &[(&str, Origin)] = &[
    (
        "three-compartment model: equations, LD and LR",
        Origin::Recalled(
            "xia_frey_law_2008",
            "equations and constants; structure read in abstracts",
        ),
    ),
    (
        "rest multipliers restated",
        Origin::Read("looft_2020", "abstract"),
    ),
    (
        "phosphocreatine comes back as one exponential after light work",
        Origin::Read("forbes_2009", "abstract"),
    ),
    (
        "2 and 4 min of rest alike for strength",
        Origin::Recalled(
            "willardson_burkett_2008",
            "result; the design read on the first page",
        ),
    ),
    (
        "fatigue acts like a heavier load",
        Origin::Recalled(
            "gonzalez_badillo_2017",
            "velocity loss follows the repetitions done",
        ),
    ),
    (
        "check: 20 % velocity loss at half of the possible squats",
        Origin::Recalled("pareja_blanco_2017", "result"),
    ),
    (
        "check: last repetition more than twice as long as the first",
        Origin::Read("duffey_challis_2007", "abstract"),
    ),
    (
        "pause of 1 s between repetitions, counted as rest",
        Origin::Assumed("a breath at lockout, where effort is small"),
    ),
    (
        "a push of 2 s against a bar that stalls",
        Origin::Assumed("spotters step in then"),
    ),
    (
        "travel of the bar 0.40 m (bench press, row), 0.55 m (squat)",
        Origin::Assumed("arm and thigh of average length; only without a simulated repetition"),
    ),
    (
        "6 s to lift an overloaded bar back",
        Origin::Assumed("two calm breaths"),
    ),
    (
        "warm-up ladder",
        Origin::Practice("fewer repetitions the heavier"),
    ),
    (
        "easier week: a tenth lighter, about half the sets",
        Origin::Practice("three weeks up, one easier"),
    ),
];

/// What and where from, in the order of the room's files.
#[must_use]
pub fn numbers() -> Vec<(String, Origin)> {
    let mut all = tables();
    let mut add = |what: &str, origin: Origin| all.push((what.to_owned(), origin));
    add("load-repetition chart", repetitions::CHART_ORIGIN);
    add("repetitions of a session by load", clusters::TOTALS_ORIGIN);
    add("endurance curves", fatigue::ENDURANCE_ORIGIN);
    add(
        "overloaded lowering: loads, sets, repetitions",
        eccentric::OVERLOAD_PRACTICE.origin,
    );
    for list in [
        estimate::ACCURACY,
        status::ORIGINS,
        clusters::STUDIES,
        trend::ORIGINS,
        SINGLE,
    ] {
        list.iter().for_each(|(what, origin)| add(what, *origin));
    }
    repetitions::DIFFERENCES
        .iter()
        .for_each(|(_, what, origin)| add(what, *origin));
    cautions::CAUTIONS
        .iter()
        .for_each(|row| add(row.text, row.origin));
    all
}

/// One entry a row of the tables.
fn tables() -> Vec<(String, Origin)> {
    let mut all = Vec::new();
    let mut add = |what: String, origin: Origin| all.push((what, origin));
    repetition_equations::EQUATIONS
        .iter()
        .for_each(|row| add(row.name.to_owned(), row.origin));
    for row in repetitions::OBSERVATIONS {
        add(
            format!(
                "repetitions at {} %, {}, {}",
                row.percent, row.movement, row.who
            ),
            row.origin,
        );
    }
    velocity_equations::EQUATIONS
        .iter()
        .for_each(|row| add(format!("load-velocity equation, {}", row.lift), row.origin));
    for row in velocity_equations::AT_ONE_RM {
        add(
            format!("velocity at 1RM, {}, {}", row.movement, row.lift),
            row.origin,
        );
    }
    for row in fatigue::JOINTS {
        add(format!("F and R, {}", row.name), row.origin);
        add(format!("rest multiplier, {}", row.name), row.rest_origin);
    }
    phosphocreatine::RECOVERIES
        .iter()
        .for_each(|row| add(format!("phosphocreatine, {}", row.muscle), row.origin));
    eccentric::RATIOS
        .iter()
        .for_each(|row| add(format!("eccentric ratio, {}", row.who), row.origin));
    rests::RULES
        .iter()
        .for_each(|row| add(format!("rest: {}", row.purpose), row.origin));
    straight::GUIDANCE.iter().for_each(|row| {
        add(
            format!("load and sets, {}", row.level.in_words()),
            row.origin,
        )
    });
    pyramid::PUBLISHED
        .iter()
        .for_each(|row| add(row.name.to_owned(), row.origin));
    all
}
