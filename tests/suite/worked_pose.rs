//! The worked pose: every printed line is computed again from the digits printed above it, over all lifts.
//!
//! In: sheets as text. Out: nothing; a line that does not follow, or a sheet that tells something else than the
//! curve, fails. The reader of equations in `worked_pose/` shares nothing with the program that writes them.

mod equations;

use crate::calling::call;
use equations::{Equation, Page};
use rayon::prelude::{IntoParallelRefIterator, ParallelIterator};
use torquill::capacity::Pace;
use torquill::grammar::{Stock, setup_from_texts};
use torquill::library::{Library, Shelf, Workbench, assemble};
use torquill::movement::{Measure, trace_place};
use torquill::report::{SheetForm, worked_pose_sheet};
use torquill::resistance::Setup;
use torquill::study::{
    AskedPlace, Conditions, Parameter, Question, WorkedPose, family, study, worked_pose,
};
use torquill::units::{Angle, Length, System};

/// One pose to work out.
#[derive(Debug, Clone)]
struct Case {
    movement: String,
    lifter: &'static str,
    place: f64,
    speed: Option<f64>,
    load: [&'static str; 3],
    set: Option<&'static str>,
}

const LIFTERS: [&str; 5] = [
    "reference-man",
    "reference-woman",
    "club-lifter",
    "heavy-lifter",
    "tall-novice",
];

/// Load, bands, chains; empty for none.
const LOADS: [[&str; 3]; 5] = [
    ["20 kg", "", ""],
    ["", "", ""],
    ["60 kg", "loop-29mm:1", "chain-13mm:1"],
    ["37.5 kg", "loop-14mm:1", ""],
    ["12.5 kg", "", "chain-10mm:1"],
];

/// All lifts at places, lifters, loads and speeds that change from case to case.
fn cases() -> Vec<Case> {
    let mut cases = Vec::new();
    for (index, movement) in Library::built_in().movements().into_iter().enumerate() {
        for (turn, lifter) in LIFTERS.into_iter().enumerate() {
            for (step, place) in [0.0, 0.137, 0.5, 0.861, 1.0].into_iter().enumerate() {
                let count = index + 3 * turn + step;
                cases.push(Case {
                    movement: movement.clone(),
                    lifter,
                    place,
                    speed: [None, None, Some(0.2), Some(-0.3)][count % 4],
                    load: LOADS[(count / 2) % 5],
                    set: [None, None, Some("lifter.body_mass=\"71 kg\"")][count % 3],
                });
            }
        }
    }
    cases
}

fn hung(case: &Case, stock: &Stock<'_>) -> Option<Setup> {
    let [load, band, chain] = case.load.map(|text| {
        let named = Some(text).filter(|text| !text.is_empty());
        named.into_iter().collect::<Vec<_>>()
    });
    if load.is_empty() {
        return None;
    }
    Some(setup_from_texts(&load, &band, &chain, stock).expect("the load can be read"))
}

/// The pose of a case; the reason where a body cannot make or keep it.
fn worked(case: &Case) -> Result<WorkedPose, String> {
    let library = Library::built_in();
    let sets: Vec<String> = case.set.map(str::to_owned).into_iter().collect();
    let model = assemble(&library, case.lifter, &case.movement, &sets).expect("a model");
    let mut question = Question::new(&case.movement, &model.movement, &model.lifter);
    question.pace = match (case.speed, model.movement.measure) {
        (None, _) => Pace::Isometric,
        (Some(speed), Measure::Force) => Pace::Linear(speed),
        (Some(speed), Measure::Torque) => Pace::Angular(2.0 * speed),
    };
    let pieces = library.pieces().expect("pieces");
    let setup = hung(case, &pieces.stock()).filter(|setup| {
        let carrier = model.movement.carrier().expect("a carrier");
        setup.check_for(&carrier, &case.movement).is_ok()
    });
    worked_pose(&question, setup.as_ref(), AskedPlace::Share(case.place))
        .map_err(|error| crate::calling::said(&error))
}

fn page(pose: &WorkedPose, units: System) -> Page {
    Page::read(&worked_pose_sheet(pose, SheetForm::Text, units, None))
}

#[test]
fn law_every_printed_line_follows_from_the_digits_above_it() {
    let cases = cases();
    let lines: usize = cases
        .par_iter()
        .map(|case| match worked(case) {
            Ok(pose) => page(&pose, System::Us).check(&format!("{case:?}")),
            Err(why) => panic!("{case:?}: {why}"),
        })
        .sum();
    assert!(lines > 40_000, "{lines} lines were computed again");
}

#[test]
fn law_a_sheet_tells_what_the_curve_tells() {
    let library = Library::built_in();
    for movement in library.movements() {
        let model = assemble(&library, "reference-man", &movement, &[]).expect("a model");
        let question = Question::new(&movement, &model.movement, &model.lifter);
        let load = torquill::units::Mass::from_kg(30.0);
        let setup = Setup::plain(load);
        let curve = study(&question, std::slice::from_ref(&setup)).expect("a curve");
        for index in [0, 17, 40, 73, 100] {
            let place = AskedPlace::Share(index as f64 / 100.0);
            let pose = worked_pose(&question, Some(&setup), place).expect("a pose");
            let held = &curve.capacity.held[index];
            let close = |a: f64, b: f64| (a - b).abs() <= 1.0e-7 * b.abs().max(1.0);
            assert!(close(pose.capacity, held.capacity), "{movement} {index}");
            let worked = pose.load.as_ref().expect("a load");
            let told = &curve.setups[0];
            assert!(
                close(worked.demand, told.values[index]),
                "{movement} {index}"
            );
            assert!(
                close(worked.effort, told.effort[index]),
                "{movement} {index}"
            );
            let printed = page(&pose, System::Metric);
            printed.holds("C", pose.capacity);
            printed.holds("D", worked.demand);
            printed.holds("effort", worked.effort);
        }
    }
}

/// The limbs' weights add up to what the programme takes for the limbs' moment.
#[test]
fn law_the_limbs_of_a_sheet_are_those_of_the_programme() {
    let library = Library::built_in();
    for movement in library.names(Shelf::Movements) {
        for lifter in LIFTERS {
            let model = assemble(&library, lifter, &movement, &[]).expect("a model");
            for s in [0.0, 0.21, 0.5, 0.87, 1.0] {
                let (pose, limbs) = trace_place(&model.movement, &model.lifter, s).expect("a pose");
                for (row, gravity_nm) in pose.gravity_nm.iter().enumerate() {
                    let sum: f64 = limbs.iter().map(|limb| limb.torque_nm(row)).sum();
                    assert!(
                        (sum - gravity_nm).abs() < 1.0e-9,
                        "{movement} {lifter} {s} {row}: {sum} {gravity_nm}"
                    );
                }
            }
        }
    }
}

/// The lever that a comparison prints of a pose stands on that pose's page: the load's own less what the pushes bear.
#[test]
fn law_the_levers_of_a_comparison_stand_on_the_sheet() {
    let library = Library::built_in();
    let mut met = 0;
    for (movement, path, value) in [
        ("bench-press", "technique.grip_width", "58 cm"),
        ("leg-press", "technique.foot_height", "14 cm"),
        ("overhead-press", "technique.grip_width", "50 cm"),
        ("hip-thrust", "segments.thigh.length", "+4%"),
        ("squat", "segments.thigh.length", "-5%"),
    ] {
        let bench = Workbench::open(&library, "reference-man", movement).expect("a lift");
        let parameter = Parameter::read(path, value).expect("a value");
        let asked = Conditions {
            samples: 21,
            ..Conditions::default()
        };
        let family = family(&bench, &[], &parameter, &asked).expect("a family");
        let models = [Vec::new(), vec![parameter.setting(0)]]
            .map(|sets| assemble(&library, "reference-man", movement, &sets).expect("a model"));
        for cause in &family.variants[0].causes {
            for (side, model) in models.iter().enumerate() {
                let question = Question::new(movement, &model.movement, &model.lifter);
                let pose =
                    worked_pose(&question, None, AskedPlace::Share(cause.range)).expect("a pose");
                let sheet = page(&pose, System::Metric);
                let pushes = pose
                    .reactions
                    .iter()
                    .any(|push| push.levers.iter().any(|k| k.abs() > 1.0e-12));
                for lever in &cause.account.levers {
                    let name = lever.dof.name().replace('_', " ");
                    let symbol = if pushes { "dp" } else { "d" };
                    sheet.holds(&format!("{symbol}({name})"), -lever.length_m[side]);
                    met += 1;
                }
            }
        }
    }
    assert!(met > 60, "{met}");
}

/// Angles are printed as people write them: 15 deg, not 14.999999999999998 deg.
#[test]
fn regress_no_number_of_a_sheet_is_a_raw_float() {
    for movement in Library::built_in().movements() {
        let model =
            assemble(&Library::built_in(), "reference-man", &movement, &[]).expect("a model");
        let question = Question::new(&movement, &model.movement, &model.lifter);
        let pose = worked_pose(&question, None, AskedPlace::Share(0.3)).expect("a pose");
        let sheet = worked_pose_sheet(&pose, SheetForm::Text, System::Metric, None);
        for number in sheet.split(|c: char| !c.is_ascii_digit() && c != '.') {
            let decimals = number
                .trim_end_matches('.')
                .split_once('.')
                .map_or(0, |(_, d)| d.len());
            assert!(decimals < 13, "{movement}: {number}");
        }
        assert!(
            !sheet.contains(" -") || !sheet.contains("-1"),
            "{movement}: a hyphen for a minus"
        );
    }
}

/// The worth of a muscle at the programme's prices says why it is active, and which joint gives way is the
/// one of the largest gain.
#[test]
fn law_prices_say_why_a_muscle_is_active_and_what_gives_way() {
    cases().par_iter().for_each(|case| {
        let pose = worked(case).unwrap_or_else(|why| panic!("{case:?}: {why}"));
        for muscle in &pose.muscles {
            let rows = pose.joints.iter().zip(&muscle.arms_m);
            let worth: f64 =
                rows.map(|(joint, arm)| joint.price * arm).sum::<f64>() * muscle.active_n;
            let rest = 1.0e-4_f64;
            let sound = (worth < rest || muscle.activation > 1.0 - 1.0e-9)
                && (worth > -rest || muscle.activation < 1.0e-9);
            assert!(
                sound,
                "{case:?} {}: worth {worth} a {}",
                muscle.name, muscle.activation
            );
        }
        let of = |joint: torquill::anatomy::Joint| -> f64 {
            let rows = pose.joints.iter().filter(|row| row.dof.joint() == joint);
            rows.map(|row| row.price * row.muscles_nm)
                .sum::<f64>()
                .abs()
        };
        let first = of(pose.joints[pose.limiting].dof.joint());
        for row in &pose.joints {
            assert!(of(row.dof.joint()) <= first + 1.0e-6, "{case:?}");
        }
    });
}

#[test]
fn law_places_are_those_of_the_axis() {
    let library = Library::built_in();
    for (movement, place, is_there) in [
        (
            "bench-press",
            AskedPlace::Travel(Length::from_cm(10.0)),
            0.10,
        ),
        ("pull-up", AskedPlace::Travel(Length::from_cm(25.0)), 0.25),
        ("leg-press", AskedPlace::Travel(Length::from_cm(0.0)), 0.0),
        (
            "biceps-curl",
            AskedPlace::AtAngle(Angle::from_deg(60.0)),
            60.0,
        ),
        (
            "knee-extension",
            AskedPlace::AtAngle(Angle::from_deg(41.5)),
            41.5,
        ),
        (
            "calf-raise",
            AskedPlace::AtAngle(Angle::from_deg(-10.0)),
            -10.0,
        ),
    ] {
        let model = assemble(&library, "reference-man", movement, &[]).expect("a model");
        let question = Question::new(movement, &model.movement, &model.lifter);
        let pose = worked_pose(&question, None, place).expect("a pose");
        let found = match pose.measure {
            Measure::Force => pose.travel_m,
            Measure::Torque => pose.joints[0].angle_rad.to_degrees(),
        };
        assert!((found - is_there).abs() < 1.0e-8, "{movement}: {found}");
    }
}

/// Markdown and HTML hold the same equations as the text.
#[test]
fn law_every_form_holds_the_same_equations() {
    let case = Case {
        movement: "squat".to_owned(),
        lifter: "reference-woman",
        place: 0.3,
        speed: Some(0.2),
        load: LOADS[2],
        set: None,
    };
    let pose = worked(&case).expect("a pose");
    let sheet = |form| worked_pose_sheet(&pose, form, System::Metric, None);
    let text = Page::read(&sheet(SheetForm::Text));
    let markdown = sheet(SheetForm::Markdown);
    let html = sheet(SheetForm::Html);
    for Equation { line, .. } in &text.equations {
        assert!(markdown.contains(&format!("- `{line}`")), "{line}");
        assert!(html.contains(&format!("<code>{line}</code>")), "{line}");
    }
    assert!(text.equations.len() > 200);
    assert_eq!(markdown.matches("- `").count(), text.equations.len());
    assert_eq!(html.matches("<code>").count(), text.equations.len());
}

#[test]
fn fault_places_that_are_none_are_told() {
    for (arguments, words) in [
        (["bench-press", "90 cm"], "outside the range"),
        (["bench-press", "60 deg"], "places are distances"),
        (["biceps-curl", "10 cm"], "places are angles"),
        (["biceps-curl", "170 deg"], "from 5 to 130 deg"),
        (["biceps-curl", "60"], "no place of the range"),
        (["biceps-curl", "140%"], "no place of the range"),
        (["bench-press", "10 furlongs"], "no length"),
        (["bench-press", "10 kg"], "no length"),
    ] {
        let answer = call(&["explain", arguments[0], "--at", arguments[1]]);
        assert_eq!(answer.status, 2, "{arguments:?}: {}", answer.complaint);
        assert!(
            answer.complaint.contains(words),
            "{arguments:?}: {}",
            answer.complaint
        );
        assert_eq!(answer.out, "");
    }
}

#[test]
fn fault_too_heavy_slack_and_impossible_are_told() {
    let told = |arguments: &[&str]| call(&[&["explain"], arguments].concat());
    let heavy = told(&["bench-press", "--at", "5 cm", "--load", "400 kg"]).done();
    assert!(heavy.out.contains("it cannot be held"), "{}", heavy.out);
    let slack = told(&["squat", "--at", "0%", "--band", "loop-14mm:1@rack-high"]);
    assert!(slack.status <= 1, "{}", slack.complaint);
    let nothing = told(&["bench-press", "--at", "30%"]).done();
    assert!(!nothing.out.contains("Demand"), "{}", nothing.out);
    let wrong = told(&["bench-press", "--at", "30%", "--speed", "60 deg/s"]);
    assert_eq!(wrong.status, 2, "{}", wrong.complaint);
    let folded = told(&[
        "leg-press",
        "--at",
        "30%",
        "--set",
        "segments.thigh.length=\"90 cm\"",
    ]);
    assert!(folded.status > 0, "{}", folded.out);
    assert_eq!(folded.out, "");
}

#[test]
fn fault_a_sheet_is_not_written_over_a_file() {
    let folder = tempfile::tempdir().expect("a folder");
    let write = |more: &[&str]| {
        let first = ["explain", "biceps-curl", "--at", "50%", "-o", "curl.md"];
        crate::calling::call_in(folder.path(), &[&first, more].concat())
    };
    assert_eq!(write(&[]).done().out, "");
    let again = write(&[]);
    assert_eq!(again.status, 2);
    assert!(again.complaint.contains("--force"), "{}", again.complaint);
    write(&["--force"]).done();
    let text = std::fs::read_to_string(folder.path().join("curl.md")).expect("it was written");
    assert!(text.starts_with("# Biceps curl"), "{text}");
}

/// A sheet that is asked how it was made ends with the words that make the same sheet again.
#[test]
fn law_a_sheet_tells_the_words_that_make_it() {
    let typed = [
        "explain",
        "bench-press",
        "--at",
        "10 cm",
        "--load",
        "80 kg",
        "--set",
        "muscles.brachialis.moment_arm.elbow=+10%",
    ];
    for form in ["text", "markdown", "html"] {
        let formed = [typed.as_slice(), &["--format", form]].concat();
        let plain = call(&formed).done().out;
        let made = call(&[formed.as_slice(), &["--provenance"]].concat())
            .done()
            .out;
        assert!(!plain.contains("model_hash"), "nobody asked");
        let line = made.lines().find(|line| line.contains("arguments: ["));
        let line = line.expect("its words").replace("&quot;", "\"");
        let list = line.find('[').zip(line.rfind(']')).expect("a list");
        let words: Vec<String> =
            serde_json::from_str(&line[list.0..=list.1]).expect("a list of words");
        assert!(words.contains(&typed[7].to_owned()), "{line}");
        let words: Vec<&str> = words.iter().map(String::as_str).collect();
        assert_eq!(call(&words).done().out, made, "{form}");
    }
}

/// What gives no more is said, and only that: a push along the plate, of the hands, the place of the force under the foot.
#[test]
fn law_a_sheet_says_which_push_is_at_its_end() {
    let library = Library::built_in();
    let (mut at_end, mut between) = (0, 0);
    for movement in library.names(Shelf::Movements) {
        let model = assemble(&library, "reference-man", &movement, &[]).expect("a model");
        let question = Question::new(&movement, &model.movement, &model.lifter);
        for s in [0.0, 0.3, 0.6, 1.0] {
            let pose = worked_pose(&question, None, AskedPlace::Share(s)).expect("a pose");
            let sheet = worked_pose_sheet(&pose, SheetForm::Text, System::Metric, None);
            let told = sheet.matches(" is at its most here.").count()
                + sheet.matches(" is at its least here.").count();
            let load_n = match pose.measure {
                Measure::Force => pose.capacity / pose.sides.count(),
                Measure::Torque => pose.capacity,
            };
            let is_at = |reaction: &torquill::study::WorkedReaction| {
                let ends = [reaction.least, reaction.most].map(|(own, per)| own + per * load_n);
                let near = |end: f64| (reaction.value - end).abs() <= 1.0e-6 * end.abs().max(1.0);
                usize::from(reaction.least != reaction.most)
                    * ends.into_iter().filter(|end| near(*end)).count()
            };
            let expected: usize = pose.reactions.iter().map(is_at).sum();
            assert_eq!(told, expected, "{movement} {s}");
            at_end += told;
            between += pose.reactions.len() - told.min(pose.reactions.len());
        }
    }
    assert!(at_end > 3 && between > 3, "{at_end} {between}");
}
