//! 1RM equations, repetition chart, load-velocity equations: against their printed rows and each other.

use super::published;
use crate::evidence::paper;
use proptest::prelude::*;
use torquill::progress::estimate::{Estimate, estimate as estimate_by};
use torquill::progress::published_equations::{RepetitionEquation, Velocity, VelocityEquation};
use torquill::progress::repetition_equations::Form;
use torquill::progress::velocity_equations::one_rm_from_velocity;
use torquill::session::repetitions::RepetitionChart;
use torquill::units::{Mass, Speed};

/// The papers of the equations that print their percentages.
const PRINTED: [&str; 7] = [
    "epley1985_repetitions",
    "brzycki1993_repetitions",
    "lander1985_repetitions",
    "lombardi1989_repetitions",
    "mayhew1992_repetitions",
    "oconner1989_repetitions",
    "wathan1994_repetitions",
];

fn estimate(
    movement: Option<&str>,
    load: Mass,
    repetitions: u32,
    reserve: f64,
) -> Option<Estimate<'static>> {
    let equations = &published().estimates.repetitions;
    estimate_by(equations, movement, load, repetitions, reserve)
}

fn chart() -> RepetitionChart {
    let rows = &published().repetitions.chart;
    RepetitionChart::through(rows).expect("the rows are in order")
}

fn equation_for(movement: &str, velocity: Velocity) -> Option<&'static VelocityEquation> {
    let equations = &published().estimates.velocity;
    equations.equation_for(movement, velocity)
}

fn equation(name: &str) -> &'static RepetitionEquation {
    let equations = &published().estimates.repetitions.equations;
    equations
        .iter()
        .find(|equation| equation.name == name)
        .unwrap_or_else(|| panic!("no equation {name}"))
}

/// Percent of 1RM that repetitions to failure stand for by an equation that is proportional to the load.
fn percent_at(name: &str, repetitions: f64) -> f64 {
    let one_rm_kg = equation(name).form.one_rm_kg(1.0, repetitions);
    100.0 / one_rm_kg.expect("a value")
}

#[test]
fn published_one_rm_equations_give_their_printed_rows() {
    for name in PRINTED {
        let paper = paper(name);
        for row in paper.rows_with("at_1") {
            let percent = |r: usize| percent_at(row.text("equation"), r as f64);
            let off = |r: &usize| (percent(*r) - row.number(&format!("at_{r}"))).abs();
            let worst = (1..=12)
                .max_by(|a, b| off(a).total_cmp(&off(b)))
                .expect("twelve repetitions");
            assert_eq!(row.number(&format!("at_{worst}")), row.published());
            row.check(percent(worst));
        }
    }
}

#[test]
fn published_epley_and_brzycki_agree_at_ten_repetitions() {
    for (name, file) in [
        ("Epley 1985", "epley1985_repetitions"),
        ("Brzycki 1993", "brzycki1993_repetitions"),
    ] {
        paper(file).check(
            "% of 1RM at 10 repetitions, where Epley and Brzycki agree",
            percent_at(name, 10.0),
        );
    }
}

#[test]
fn published_reynolds_from_five_repetitions() {
    let one_rm_kg = equation("Reynolds et al. 2006, chest press")
        .form
        .one_rm_kg(80.0, 5.0)
        .expect("a value");
    paper("reynolds2006_chest_press").check(
        "% of 1RM that 80 kg for five are, chest press",
        100.0 * 80.0 / one_rm_kg,
    );
    let ours = estimate(Some("bench-press"), Mass::from_kg(80.0), 5, 0.0).expect("a plain set");
    paper("reynolds2006_chest_press").check(
        "1RM from 80 kg for five, kg: median of the general equations beside Reynolds",
        ours.one_rm.as_kg(),
    );
}

#[test]
fn published_general_equations_spread_no_more_than_their_errors_say() {
    // Lacio 2010: each errs by 2.7 to 3.2 kg without bias at 4-10 repetitions, so two of them lie within
    // twice that of each other; a bench press of 100 kg is the size of those lifters.
    for repetitions in [4, 6, 8, 10] {
        let set = estimate(None, Mass::from_kg(80.0), repetitions, 0.0).expect("a plain set");
        paper("lacio2010_equations").check(
            &format!("half the spread of seven equations at {repetitions} repetitions, kg"),
            (set.highest - set.lowest).as_kg() / 2.0,
        );
    }
}

#[test]
fn published_repetition_chart_is_exact_at_its_rows() {
    let chart = chart();
    let off = |row: &&(f64, f64)| (100.0 * chart.share_at(row.0).expect("a row") - row.1).abs();
    let worst = published()
        .repetitions
        .chart
        .rows
        .iter()
        .max_by(|a, b| off(a).total_cmp(&off(b)))
        .expect("rows");
    paper("baechle_chart").check(
        "% of 1RM in the load-repetition chart, worst of 13 rows",
        100.0 * chart.share_at(worst.0).expect("a row"),
    );
}

#[test]
fn published_repetition_chart_beside_studies() {
    let chart = chart();
    let at = |percent: f64| chart.repetitions_at(percent / 100.0).expect("on the chart");
    paper("kelly2015_bench_press").check("repetitions at 90 %, bench press", at(90.0));
    paper("shimano2006_repetitions").check("repetitions at 90 %, bench press, trained", at(90.0));
    paper("shimano2006_repetitions").check("repetitions at 80 %, bench press, trained", at(80.0));
    paper("hoeger1990_repetitions").check("repetitions at 80 %, leg curl, trained", at(80.0));
    paper("hoeger1990_repetitions").check("repetitions at 80 %, leg press, trained", at(80.0));
    paper("shimano2006_repetitions").check("repetitions at 80 %, squat, trained", at(80.0));
}

/// The papers of the lifts whose velocity over load is printed.
const VELOCITIES: [(&str, &str); 3] = [
    ("bench-press", "gonzalezbadillo2010_bench_press"),
    ("squat", "sanchezmedina2017_squat"),
    ("row", "sanchezmedina2014_row"),
];

#[test]
fn published_load_velocity_equations_at_their_printed_points() {
    for (movement, file) in VELOCITIES {
        let equation = equation_for(movement, Velocity::MeanPropulsive).expect("published");
        for row in paper(file).rows_with("percent") {
            let percent = row.number("percent");
            row.check(equation.velocity_m_s_at(percent).expect("inside the range"));
        }
    }
}

#[test]
fn published_load_velocity_equations_end_at_the_measured_one_rm_velocity() {
    for (movement, file) in VELOCITIES {
        let velocity = &published().estimates.velocity;
        let measured = velocity
            .at_one_rm
            .iter()
            .find(|row| row.movement == movement)
            .expect("published");
        let equation = equation_for(movement, Velocity::MeanPropulsive).expect("published");
        let paper = paper(file);
        let row = paper.row(&format!("mean velocity of a 1RM, m/s, {movement}"));
        assert_eq!(measured.mean.as_m_s(), row.published(), "{movement}");
        row.check(equation.velocity_m_s_at(100.0).expect("inside the range"));
    }
    let squat = equation_for("squat", Velocity::Mean).expect("published");
    paper("sanchezmedina2017_squat").check(
        "load at a mean velocity of 0.32 m/s, % of 1RM, squat",
        squat.percent_at(0.32),
    );
}

#[test]
fn law_a_single_is_its_own_one_rm() {
    let single = estimate(Some("squat"), Mass::from_kg(150.0), 1, 0.0).expect("a single");
    assert!(single.measured && single.spread() == 0.0);
    assert_eq!(single.one_rm.as_kg(), 150.0);
    let easy = estimate(Some("squat"), Mass::from_kg(150.0), 1, 2.0).expect("a single");
    assert!(!easy.measured && easy.one_rm.as_kg() > 155.0);
}

#[test]
fn law_a_set_beyond_the_equations_has_no_estimate() {
    let kg = Mass::from_kg;
    assert!(estimate(None, kg(0.0), 5, 0.0).is_none());
    assert!(estimate(None, kg(100.0), 0, 0.0).is_none());
    assert!(estimate(None, kg(100.0), 5, -1.0).is_none());
    assert!(estimate(None, kg(100.0), 5, f64::NAN).is_none());
    assert!(estimate(None, kg(100.0), 15, 0.0).is_some());
    assert!(estimate(None, kg(100.0), 16, 0.0).is_none());
}

#[test]
fn law_the_school_equation_is_shown_near_its_share_only_and_never_averaged() {
    let near = estimate(Some("bench-press"), Mass::from_kg(90.0), 12, 0.0).expect("a set");
    let plain = estimate(None, Mass::from_kg(90.0), 12, 0.0).expect("a set");
    assert_eq!(near.one_rm, plain.one_rm);
    // The share is that of the other equations: a value of its own would confirm itself.
    let mut seen = [0, 0];
    for (load_kg, repetitions) in [40.0, 60.0, 90.0]
        .into_iter()
        .flat_map(|load_kg| (2..=15).map(move |repetitions| (load_kg, repetitions)))
    {
        let mass = Mass::from_kg(load_kg);
        let set = estimate(Some("bench-press"), mass, repetitions, 0.0).expect("a set");
        let is_shown = set
            .guesses
            .iter()
            .any(|guess| matches!(guess.equation.form, Form::FromShare { .. }));
        let is_near = (load_kg / set.one_rm.as_kg() - 0.70).abs() <= 0.05;
        assert_eq!(is_shown, is_near, "{load_kg} kg x {repetitions}");
        seen[usize::from(is_shown)] += 1;
    }
    assert!(seen.iter().all(|count| *count > 0), "{seen:?}");
}

#[test]
fn law_velocity_gives_the_one_rm_back() {
    let equation = equation_for("bench-press", Velocity::Mean).expect("published");
    let velocity = equation.velocity_m_s_at(80.0).expect("inside");
    let one_rm = one_rm_from_velocity(
        &published().estimates.velocity,
        "bench-press",
        Mass::from_kg(80.0),
        Speed::from_m_s(velocity),
    )
    .expect("inside the range");
    assert!((one_rm.as_kg() - 100.0).abs() < 1e-9);
    let grinding = one_rm_from_velocity(
        &published().estimates.velocity,
        "bench-press",
        Mass::from_kg(100.0),
        Speed::from_m_s(0.12),
    );
    assert_eq!(grinding.expect("a slow single is a 1RM").as_kg(), 100.0);
    for (movement, m_s) in [
        ("bench-press", 2.5),
        ("bench-press", 0.0),
        ("leg-curl", 0.5),
    ] {
        let speed = Speed::from_m_s(m_s);
        assert!(
            one_rm_from_velocity(
                &published().estimates.velocity,
                movement,
                Mass::from_kg(80.0),
                speed
            )
            .is_none()
        );
    }
}

proptest! {
    #[test]
    fn law_more_load_or_repetitions_mean_a_higher_one_rm(
        load_kg in 20.0..300.0_f64, more_kg in 0.5..50.0_f64, repetitions in 2_u32..15,
    ) {
        let of = |kg: f64, reps: u32| estimate(None, Mass::from_kg(kg), reps, 0.0).unwrap().one_rm.as_kg();
        prop_assert!(of(load_kg + more_kg, repetitions) > of(load_kg, repetitions));
        // Beyond ten repetitions one equation alone is valid, and its level is its own.
        prop_assert!(repetitions == 10 || of(load_kg, repetitions + 1) > of(load_kg, repetitions));
        prop_assert!(of(load_kg, repetitions) >= load_kg);
    }

    #[test]
    fn law_a_repetition_in_reserve_counts_like_one_done(
        load_kg in 20.0..300.0_f64, done in 1_u32..8, reserve in 0_u32..6,
    ) {
        prop_assume!(reserve > 0);
        let with_reserve = estimate(None, Mass::from_kg(load_kg), done, f64::from(reserve)).unwrap();
        let done_all = estimate(None, Mass::from_kg(load_kg), done + reserve, 0.0).unwrap();
        prop_assert_eq!(with_reserve.one_rm, done_all.one_rm);
    }

    #[test]
    fn law_the_chart_falls_and_is_undone_by_its_inverse(a in 1.0..15.0_f64, b in 1.0..15.0_f64) {
        let chart = chart();
        let share = chart.share_at(a).unwrap();
        prop_assert!((chart.repetitions_at(share).unwrap() - a).abs() < 1e-6);
        if a < b {
            prop_assert!(share > chart.share_at(b).unwrap());
        }
    }
}
