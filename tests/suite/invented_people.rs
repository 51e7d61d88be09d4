//! Invented people: drawn as published groups differ, each by seed and number alone, shown by `curve`, `figure` and `max`.

use super::calling::{call, call_in};
use torquill::anatomy::{Lifter, SegmentName};
use torquill::lecture::ONE_LIFT;
use torquill::library::{Library, assemble};
use torquill::numeric::mean_and_deviation;
use torquill::person::Scatter;
use torquill::study::{Desk, People, Question, invented, study};
use torquill::units::System;

/// Rows of a table without its head.
fn rows(arguments: &[&str]) -> Vec<String> {
    let answer = call(arguments).done();
    answer.out.lines().skip(1).map(str::to_owned).collect()
}

#[test]
fn law_parts_of_people_are_the_whole() {
    let asked = "max biceps-curl --people 7 --sex woman --training advanced --format csv";
    let asked: Vec<&str> = asked.split(' ').collect();
    let whole = rows(&asked);
    let part = |name: &str| rows(&[&asked[..], &["--part", name]].concat());
    let parts: Vec<String> = ["1/3", "2/3", "3/3"].into_iter().flat_map(part).collect();
    assert_eq!((whole.len(), &whole), (7, &parts));
    let fewer = "max biceps-curl --people 2 --sex woman --training advanced --format csv";
    let fewer: Vec<&str> = fewer.split(' ').collect();
    assert_eq!(
        rows(&fewer),
        whole[..2],
        "person i depends on seed and i alone"
    );
}

#[test]
fn law_people_scatter_as_their_tables_say() {
    let library = Library::built_in();
    let model = assemble(&library, "reference-man", "bench-press", &[]).unwrap();
    let table = library.person_table().unwrap();
    let scatter = Scatter::between_people(&table, model.lifter.sex);
    let people: Vec<Lifter> = (0..2000)
        .map(|number| invented(&model.lifter, &scatter, 1, number).0)
        .collect();
    let logs = |of: &dyn Fn(&Lifter) -> f64| -> Vec<f64> {
        people.iter().map(|one| of(one).ln()).collect()
    };
    let height = logs(&|one| one.height.as_m());
    let mass = logs(&|one| one.body_mass.as_kg());
    let ((mean_h, dev_h), (mean_m, dev_m)) = (
        mean_and_deviation(&height).unwrap(),
        mean_and_deviation(&mass).unwrap(),
    );
    let bodies = table.bodies_of(model.lifter.sex).unwrap();
    let products = height
        .iter()
        .zip(&mass)
        .map(|(h, m)| (h - mean_h) * (m - mean_m));
    let correlation = products.sum::<f64>() / 1999.0 / (dev_h * dev_m);
    assert!(
        (correlation - bodies.correlation).abs() < 0.05,
        "{correlation}"
    );
    assert!(
        (dev_h / (bodies.height_deviation_cm / bodies.height_cm) - 1.0).abs() < 0.05,
        "{dev_h}"
    );
    assert!(
        (dev_m / (bodies.mass_deviation_kg / bodies.mass_kg) - 1.0).abs() < 0.05,
        "{dev_m}"
    );
    // A muscle over its size: whole strength and its group, independent, as the table says of people of one mass.
    let name = "pectoralis_sternal";
    let muscle = &model.lifter.muscles[name];
    let along: SegmentName = muscle.along;
    let force = logs(&|one| {
        one.muscles[name].peak_force.as_n() * one.segment(along).length.as_m()
            / one.body_mass.as_kg()
    });
    let (_, found) = mean_and_deviation(&force).unwrap();
    let told = table.beyond_bodies();
    assert!((found / told - 1.0).abs() < 0.05, "{found} for {told}");
}

/// Torque at a joint goes with mass and strength, so its scatter is that of both, with nothing else in it: in kilograms, what
/// the table's groups have between them.
#[test]
fn law_a_lift_of_invented_people_scatters_as_bodies_and_table_say() {
    let library = Library::built_in();
    let table = library.person_table().unwrap();
    for (lifter, movement) in [
        ("reference-man", "biceps-curl"),
        ("reference-woman", "knee-extension"),
    ] {
        let model = assemble(&library, lifter, movement, &[]).unwrap();
        let scatter = Scatter::between_people(&table, model.lifter.sex);
        let torques: Vec<f64> = (0..400)
            .map(|number| {
                let (one, _) = invented(&model.lifter, &scatter, 3, number);
                let question = Question {
                    samples: 5,
                    ..Question::new(movement, &model.movement, &one)
                };
                study(&question, &[]).unwrap().capacity.values()[2].ln()
            })
            .collect();
        let (_, found) = mean_and_deviation(&torques).unwrap();
        let bodies = table.bodies_of(model.lifter.sex).unwrap();
        let mass = bodies.mass_deviation_kg / bodies.mass_kg;
        let told = (table.beyond_bodies().powi(2) + mass.powi(2)).sqrt();
        // Three standard errors of a deviation of 400 people.
        let open = 3.0 / 800.0_f64.sqrt();
        assert!(
            (found / told - 1.0).abs() < open,
            "{movement}: {found} for {told}"
        );
    }
}

/// Whatever the groups of a table, those of one body mass and the bodies give the groups back.
#[test]
fn law_bodies_and_what_is_beyond_them_are_the_published_scatter() {
    let table = Library::built_in().person_table().unwrap();
    let mass: f64 = table
        .bodies
        .iter()
        .map(|body| (body.mass_deviation_kg / body.mass_kg).powi(2))
        .sum::<f64>()
        / table.bodies.len() as f64;
    for factor in [1.0, 1.5, 2.0] {
        for in_kg in 0..=table.between_people.len() {
            let mut other = table.clone();
            for (place, group) in other.between_people.iter_mut().enumerate() {
                group.deviation *= factor;
                group.over_body_mass = place >= in_kg;
            }
            let share = in_kg as f64 / other.between_people.len() as f64;
            let (all, beyond) = (
                other.between_people().powi(2).exp_m1(),
                other.beyond_bodies().powi(2).exp_m1(),
            );
            assert!(
                (all - beyond - share * mass).abs() < 1e-12,
                "{all} {beyond}"
            );
        }
    }
}

#[test]
fn law_a_curve_of_people_has_the_middle_half_inside_four_in_five() {
    let asked = "curve bench-press --people 8 --sex woman --samples 11 --load 40kg --format json";
    let told = call(&asked.split(' ').collect::<Vec<_>>()).done().json();
    for sample in told["samples"].as_array().unwrap() {
        let at = |key: &str| sample[key].as_f64().unwrap();
        let ends = ["low", "quarter", "three_quarters", "high"];
        let ends = ends.map(|end| at(&format!("capacity_{end}_n")));
        assert!(ends.is_sorted(), "{sample}");
    }
    let people = &told["people"];
    let classes = people["classes"].as_array().unwrap().iter();
    let sum: f64 = classes.map(|one| one["share"].as_f64().unwrap()).sum();
    assert!((sum - 1.0).abs() < 1e-9);
    let place = |key: &str| people[&format!("hardest_{key}_range")].as_f64().unwrap();
    assert!(place("low") <= place("middle") && place("middle") <= place("high"));
    let folder = tempfile::tempdir().unwrap();
    let drawn =
        "figure bench-press --people 8 --sex woman --samples 11 --live-text -o people.svg --words";
    call_in(folder.path(), &drawn.split(' ').collect::<Vec<_>>()).done();
    let words = std::fs::read_to_string(folder.path().join("people.alt.txt")).unwrap();
    assert!(
        words.contains("8 invented women without training"),
        "{words}"
    );
    assert!(words.contains("four in five people"), "{words}");
}

#[test]
fn fault_people_who_cannot_be_invented() {
    for (asked, said) in [
        ("max squat --people 0", "outside what is possible"),
        ("max squat --people 5 --part 0/3", "no part of the people"),
        ("max squat --people 5 --part 4/3", "no part of the people"),
        (
            "max squat --people 5 --part 1/9",
            "5 people are not shared into 9 parts",
        ),
        ("max squat --part 1/3", "--people"),
        ("max squat --people 5 --scatter", "--scatter"),
        ("max squat --people 5 --training novice", "--sex"),
        (
            "max squat --people 5 --sex man --lifter club-lifter",
            "--lifter",
        ),
        ("curve squat --sex man", "--people"),
        (
            "figure squat --people 200000 -o a.svg",
            "outside what is possible",
        ),
    ] {
        let answer = call(&asked.split(' ').collect::<Vec<_>>());
        assert_eq!(answer.status, 2, "{asked}: {}", answer.complaint);
        assert!(
            answer.complaint.contains(said),
            "{asked}: {}",
            answer.complaint
        );
    }
}

/// The figure of people who differ tells the classes of their curves as they are counted.
#[test]
fn law_classes_of_invented_people_are_counted() {
    let library = Library::built_in();
    let table = library.person_table().expect("a sound table");
    for lift in ["bench-press", "hip-thrust"] {
        let desk = Desk::open(&library, "reference-man", System::Metric).expect("a lifter");
        let desk = desk.about(lift).expect("a built-in lift");
        let mut figures = ONE_LIFT.iter().filter(|f| f.name == "people-differ");
        let figure = figures.next().expect("the figure of people");
        let sheet = (figure.build)(&desk).expect("it is drawn");
        let question = desk.question(lift).expect("a lift of the desk");
        let people = People::around(&question, &table).expect("some can do it");
        for (shape, count) in &people.classes {
            let share = 100.0 * *count as f64 / people.count as f64;
            let told = format!("{} % {}", share.round(), shape.word());
            assert!(
                sheet.caption.contains(&told),
                "{lift}: {told} in {}",
                sheet.caption
            );
        }
        let subtitle = &sheet.chart.heading().subtitle;
        let so_many = format!("{} invented people ", people.count);
        assert!(subtitle.starts_with(&so_many), "{lift}: {subtitle}");
        assert!(
            subtitle.contains(" around Reference man"),
            "{lift}: {subtitle}"
        );
        let so_many = format!("eight in ten of {} people lie", people.count);
        assert!(sheet.alt().contains(&so_many), "{lift}: {}", sheet.alt());
        let counted: usize = people.classes.iter().map(|(_, count)| count).sum();
        assert_eq!(counted, people.count, "{lift}");
    }
}
