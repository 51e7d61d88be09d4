//! What figures of the lecture say of loads, of the body's weight and of measured sticking regions, held to more than they draw.

use regex::Regex;
use std::path::Path;
use torquill::figures::{Chart, thigh_sheet};
use torquill::lecture::LECTURE;
use torquill::library::{Library, Shelf};
use torquill::narrative::prose::part_of_range;
use torquill::plot::StripPose;
use torquill::study::{Desk, FreeBody, limited_stretches, thigh_family};
use torquill::units::{STANDARD_GRAVITY_M_S2, System};

/// The weights below the figure of four loads are of both sides: over the capacity of both sides they make the drawn effort.
#[test]
fn law_weights_of_the_flattened_press_are_of_both_sides() {
    let library = Library::built_in();
    let reads =
        Regex::new(r"Weights in all, bands and chains a side: plain ([\d.]+) kg").expect("");
    let figure = LECTURE.iter().find(|figure| figure.name == "flattening");
    let figure = figure.expect("a figure of the lecture");
    let mut read = 0;
    for lifter in library.names(Shelf::Lifters) {
        let desk = Desk::open(&library, &lifter, System::Metric).expect("a built-in lifter");
        if !figure.can_be_drawn(&desk) {
            continue;
        }
        let sheet = (figure.build)(&desk).expect("it is drawn");
        let note = &sheet.chart.heading().footnote;
        let told = reads.captures(note).expect(note);
        let kg: f64 = told[1].parse().expect("a number");
        let study = &desk.lift("bench-press").expect("the press").study;
        let hardest = study
            .capacity
            .values()
            .into_iter()
            .fold(f64::INFINITY, f64::min);
        let effort = STANDARD_GRAVITY_M_S2 * kg / hardest;
        // Loads are whole kilograms, of some 50 kg.
        assert!(
            (effort - 0.9).abs() < 0.025,
            "{lifter}: {effort} from {note}"
        );
        read += 1;
    }
    assert!(read > 2, "{read} lifters");
}

/// The marked corner of the squat's curve is where other joints begin to count most, and its words name them.
#[test]
fn law_the_corner_of_a_curve_is_where_other_joints_count_most() {
    let library = Library::built_in();
    let mut marked = 0;
    for lifter in library.names(Shelf::Lifters) {
        let desk = Desk::open(&library, &lifter, System::Metric).expect("a built-in lifter");
        if !desk.has("squat") {
            continue;
        }
        let family = thigh_family(&desk, "squat").expect("the squat");
        let sheet = thigh_sheet(&family, System::Metric);
        let Chart::Lines(chart) = &sheet.chart else {
            panic!("{lifter}: no curves");
        };
        let stretches = limited_stretches(&family.base).long;
        let corners = &chart.panels[0].markers;
        let last = family.base.range.poses.len() - 1;
        let is_told = matches!(stretches.as_slice(), [before, _] if before.from == 0);
        let ([before, beyond], [corner]) = (stretches.as_slice(), corners.as_slice()) else {
            assert!(corners.is_empty() && !is_told, "{lifter}");
            continue;
        };
        assert!(is_told, "{lifter}");
        let last = last as f64;
        let place = family.base.axis_value(before.to as f64 / last);
        assert!((corner.at[0] - place).abs() < 1e-9, "{lifter}: {corner:?}");
        let text = corner.text.trim_end_matches(" cm").parse::<f64>();
        assert!(
            text.is_ok_and(|told| (told - place).abs() <= 0.5),
            "{lifter}"
        );
        let joints = before.joints.iter().chain(&beyond.joints);
        let foot = chart.heading.footnote.as_str();
        let beside = corner.detail.as_str();
        let (_, told) = foot
            .split_once("Corner at ")
            .or_else(|| beside.split_once("Corner at "))
            .expect("told at the foot or beside the ring");
        assert!(told.starts_with(&corner.text), "{lifter}: {foot}");
        let mut words = told;
        for joint in joints {
            let (_, rest) = words.split_once(joint).expect("every joint in order");
            words = rest;
        }
        let until = family.base.axis_value(beyond.to as f64 / last);
        let rest = match beyond.to as f64 == last {
            true => " beyond.".to_owned(),
            false => format!(" beyond up to {until:.0} cm."),
        };
        assert_eq!(words, rest, "{lifter}");
        marked += 1;
    }
    assert!(marked > 0, "no corner");
}

/// The drawn cam reaches to the line of its cable and no farther, and that distance goes with the moment of the stack.
#[test]
fn law_the_drawn_cam_reaches_as_far_as_its_stack_pulls() {
    let library = Library::built_in();
    let desk = Desk::open(&library, "reference-man", System::Metric).expect("the reference man");
    let figure = LECTURE.iter().find(|figure| figure.name == "cam");
    let sheet = (figure.expect("a figure of the lecture").build)(&desk).expect("it is drawn");
    let Chart::Lines(chart) = &sheet.chart else {
        panic!("no curves");
    };
    let mut series = chart.panels[0].series.iter();
    let own = series.find(|curve| curve.name == "with a cam");
    let own = &own.expect("the load over the cam").points;
    let moment = |at: f64| {
        let near = |point: &&[f64; 2]| (point[0] - at).abs();
        let nearest = own.iter().min_by(|a, b| near(a).total_cmp(&near(b)));
        nearest.expect("a point")[1]
    };
    assert_eq!(chart.beside.len(), 3);
    let arm_m = |pose: &StripPose| pose.figure.limbs[0][1][0] - pose.figure.limbs[0][0][0];
    let first = &chart.beside[0];
    for pose in &chart.beside {
        let ratio = arm_m(pose) / arm_m(first);
        let moments = moment(pose.at) / moment(first.at);
        assert!((ratio / moments - 1.0).abs() < 1e-3, "{ratio}: {moments}");
        let points = pose.figure.supports.iter().flatten();
        let far_m = points.map(|point| point[0]).fold(0.0, f64::max);
        assert!((far_m - arm_m(pose)).abs() < 0.002, "{far_m}: {pose:?}");
    }
    let told: Vec<&str> = chart
        .beside
        .iter()
        .map(|pose| pose.caption.as_str())
        .collect();
    for (caption, pose) in told.iter().zip(&chart.beside) {
        let (place, arm) = caption.split_once(": ").expect("place and arm");
        let [place, arm] = [
            place.trim_start_matches("cam at ").trim_end_matches(" deg"),
            arm.trim_start_matches("arm ").trim_end_matches(" cm"),
        ]
        .map(|text| text.parse::<f64>().expect("a number"));
        assert!((place - pose.at).abs() <= 0.5, "{caption}");
        assert!((arm - 100.0 * arm_m(pose)).abs() <= 0.0501, "{caption}");
    }
}

#[test]
fn law_the_bodys_weight_is_told_where_longer_thighs_make_it_ask_for_more() {
    let library = Library::built_in();
    let figure = LECTURE.iter().find(|figure| figure.name == "limb-length");
    let figure = figure.expect("a figure of the lecture");
    let mut read = 0;
    for lifter in library.names(Shelf::Lifters) {
        let desk = Desk::open(&library, &lifter, System::Metric).expect("a built-in lifter");
        if !figure.can_be_drawn(&desk) {
            continue;
        }
        let family = thigh_family(&desk, "squat").expect("the squat");
        let at_hip = |sign: char| {
            let mut own = family.variants.iter().filter(|v| v.text.starts_with(sign));
            let study = &own.next().expect("a thigh of that length").study;
            let joints = FreeBody::of(study, None, 0).joints;
            let hip = joints
                .into_iter()
                .find(|joint| joint.dof.joint().name() == "hip");
            hip.expect("a hip").limbs_nm
        };
        let sheet = (figure.build)(&desk).expect("it is drawn");
        let told = sheet.caption.contains("so does the body's own weight");
        let [short, long] = [at_hip('-'), at_hip('+')];
        assert_eq!(
            told,
            long > 1.02 * short,
            "{lifter}: {short} {long}, {}",
            sheet.caption
        );
        read += 1;
    }
    assert!(read > 2, "{read} lifters");
}

/// The sentence of the model's sticking regions follows from the table of evidence.
#[test]
fn law_sticking_regions_are_told_as_missed_as_long_as_most_are() {
    let evidence = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/evidence.md");
    let evidence = std::fs::read_to_string(evidence).expect("the table of evidence");
    let own = || {
        let rows = evidence
            .lines()
            .filter(|line| line.contains("| predicted |"));
        rows.filter(|line| line.contains("| sticking region |"))
    };
    let missed = own().filter(|line| line.contains("| miss |")).count();
    assert!(own().count() > 7, "{}", own().count());
    let library = Library::built_in();
    let desk = Desk::open(&library, "reference-man", System::Metric).expect("the reference man");
    let figure = LECTURE
        .iter()
        .find(|figure| figure.name == "sticking-in-motion");
    let sheet = (figure.expect("a figure of the lecture").build)(&desk).expect("it is drawn");
    assert_eq!(
        2 * missed > own().count(),
        sheet
            .chart
            .heading()
            .subtitle
            .contains("the model misses most"),
        "{missed} of {}",
        own().count()
    );
}

#[test]
fn law_a_part_of_the_range_holds_its_place() {
    for step in 0..=1000 {
        let place = f64::from(step) / 1000.0;
        let [from, to] = match part_of_range(place) {
            "at the start" => [0.0, 0.05],
            "in the first third" => [0.05, 0.3334],
            "in the middle third" => [0.3333, 0.6667],
            "in the last third" => [0.6666, 0.95],
            "at the end" => [0.95, 1.0],
            other => panic!("{other}"),
        };
        assert!(from <= place && place <= to, "{place}");
    }
}
