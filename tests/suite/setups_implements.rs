//! Every implement on every movement: an answer without a hole in it, or a refusal with the reason.

use crate::calling::{Answer, call_in};
use crate::setups::{model_of, question_of, record_of};
use torquill::capacity::Pace;
use torquill::grammar::{SetupFile, Stock, item_from_text};
use torquill::library::{Library, Shelf};
use torquill::movement::Carrier;
use torquill::resistance::{Item, Setup, Weight};
use torquill::study::{Question, Study, load_points, study};
use torquill::units::{Mass, STANDARD_GRAVITY_M_S2};

/// How a movement takes its load, in one letter: bar, dumb-bell, sled, lever, body.
fn letter(carrier: Carrier) -> char {
    match carrier {
        Carrier::Bar => 'b',
        Carrier::Dumbbell => 'd',
        Carrier::Sled { .. } => 's',
        Carrier::Lever { .. } => 'l',
        Carrier::Body => 'p',
    }
}

/// One implement: its texts on the command line, the same in a setup file, and the letters of the movements
/// that take it.
struct Implement {
    texts: &'static [&'static str],
    file: &'static str,
    on: &'static str,
}

const fn implement(
    texts: &'static [&'static str],
    file: &'static str,
    on: &'static str,
) -> Implement {
    Implement { texts, file, on }
}

/// Everything of the list of implements, in each way in which it can be hung.
const IMPLEMENTS: &[Implement] = &[
    implement(&["bar 20 kg"], r#"Weight(Bar("20 kg"))"#, "bp"),
    implement(
        &["bar 20 kg", "plates 10 kg, pairs 2", "collars 2.5 kg"],
        r#"Weight(Bar("20 kg")), Weight(Plates(each: "10 kg", pairs: 2)), Weight(Collars(each: "2.5 kg"))"#,
        "bp",
    ),
    implement(
        &["plate 5 kg, side left"],
        r#"Weight(OnePlate(mass: "5 kg", side: Left))"#,
        "bpsl",
    ),
    implement(&["dumbbell 10 kg"], r#"Weight(Dumbbell("10 kg"))"#, "bdp"),
    implement(&["belt 10 kg"], r#"Weight(Belt("10 kg"))"#, "p"),
    implement(&["body 80 kg"], r#"Weight(BodyMass("80 kg"))"#, "p"),
    implement(&["band loop-29mm"], r#"Band("loop-29mm")"#, "bdslp"),
    implement(
        &["band loop-29mm:2@rack-high"],
        r#"Band("loop-29mm:2@rack-high")"#,
        "bdslp",
    ),
    implement(
        &["band loop-29mm:1@ahead"],
        r#"Band("loop-29mm:1@ahead")"#,
        "bdslp",
    ),
    implement(
        &["band loop-29mm:1@100 cm,-80 cm"],
        r#"Band("loop-29mm:1@100 cm,-80 cm")"#,
        "bdslp",
    ),
    implement(
        &["band loop-14mm:1@floor,doubled"],
        r#"Band("loop-14mm:1@floor,doubled")"#,
        "bdslp",
    ),
    implement(
        &["band loop-29mm:1@floor,choked"],
        r#"Band("loop-29mm:1@floor,choked")"#,
        "bdslp",
    ),
    implement(&["band loop-14mm:7"], r#"Band("loop-14mm:7")"#, "bdslp"),
    implement(
        &["band loop-29mm:1@floor,left"],
        r#"Band("loop-29mm:1@floor,left")"#,
        "bslp",
    ),
    implement(
        &["band loop-29mm:1@floor,middle"],
        r#"Band("loop-29mm:1@floor,middle")"#,
        "bdslp",
    ),
    implement(
        &["band loop-29mm", "band loop-14mm:2@rack-high"],
        r#"OwnBand(band: (name: "mine", rest_length: "104 cm", pull: Readings([("130 cm", "8 kg"), ("160 cm", "15 kg")]), loss: (share: 0.2, source: Assumed("a test"))))"#,
        "bdslp",
    ),
    implement(&["chain chain-10mm"], r#"Chain("chain-10mm")"#, "bdsp"),
    implement(
        &["chain chain-10mm:2,doubled"],
        r#"Chain("chain-10mm:2,doubled")"#,
        "bdsp",
    ),
    implement(
        &["chain chain-10mm:1,leader 40 cm"],
        r#"Chain("chain-10mm:1,leader 40 cm")"#,
        "bdsp",
    ),
    implement(
        &["chain chain-10mm:1@50 cm"],
        r#"Chain("chain-10mm:1@50 cm")"#,
        "bdsp",
    ),
    implement(
        &["cable 20 kg, ratio 2, friction 5 %, from floor"],
        r#"Cable((stack: "20 kg", ratio: 2.0, friction: 0.05, lead: Pulley((height: "0 cm"))))"#,
        "bdlp",
    ),
    implement(
        &["cable 20 kg, angle 45 deg"],
        r#"Cable((stack: "20 kg", lead: Direction("45 deg")))"#,
        "bdlp",
    ),
    implement(
        &["cam 0 deg=10 cm, 60 deg=14 cm"],
        r#"Cam((profile: [("0 deg", "10 cm"), ("60 deg", "14 cm")]))"#,
        "l",
    ),
    implement(&["cam fitted 12 cm"], r#"Cam((fitted: "12 cm"))"#, "l"),
    implement(
        &["lever 30 kg, arm 50 cm, height 120 cm, offset -90 cm, ahead 5 deg"],
        r#"Lever((mass: "30 kg", arm: "50 cm", turns: AboutPivot(pivot: (height: "120 cm", offset: "-90 cm"), plates_ahead: "5 deg")))"#,
        "bd",
    ),
    implement(
        &["lever 10 kg, arm 30 cm, start 0 deg"],
        r#"Lever((mass: "10 kg", arm: "30 cm", turns: WithPad(start: "0 deg")))"#,
        "l",
    ),
    implement(
        &["sled 50 kg, friction 3 %"],
        r#"Sled((mass: "50 kg", friction: 0.03))"#,
        "s",
    ),
    implement(
        &["lowering 20 kg"],
        r#"EccentricOnly(Hung("20 kg"))"#,
        "bdslp",
    ),
    implement(
        &["lowering 200 N"],
        r#"EccentricOnly(Pushed("200 N"))"#,
        "bdslp",
    ),
    implement(
        &["spotter 30 N"],
        r#"Assistance(Spotter(force: "30 N"))"#,
        "bdslp",
    ),
    implement(
        &["spotter 20 %"],
        r#"Assistance(SpotterShare(share: 0.2))"#,
        "bdslp",
    ),
    implement(
        &["counterweight 2 kg"],
        r#"Assistance(Counterweight("2 kg"))"#,
        "bdslp",
    ),
];

fn items(texts: &[&str], stock: &Stock) -> Vec<Item> {
    let item = |text: &&str| item_from_text(text, stock).unwrap_or_else(|e| panic!("{text}: {e}"));
    texts.iter().map(item).collect()
}

fn movements() -> Vec<String> {
    Library::built_in().names(Shelf::Movements)
}

/// No figure of an answer is missing or infinite.
fn assert_whole(what: &str, answer: &Study) {
    for setup in &answer.setups {
        let all = setup.effort.iter().chain(&setup.values);
        assert!(all.clone().all(|value| value.is_finite()), "{what}");
        for sample in &setup.demand.samples {
            for load in [&sample.up, &sample.down] {
                let figures = [
                    load.force.x_n,
                    load.force.z_n,
                    load.along_n,
                    load.moving_mass_kg,
                ];
                assert!(figures.iter().all(|f| f.is_finite()), "{what}: {load:?}");
            }
        }
    }
}

/// Work that the lifter puts in on the way up and gets back on the way down, J.
fn work_j(answer: &Study) -> (f64, f64) {
    let points = load_points(&answer.range);
    let samples = &answer.setups[0].demand.samples;
    let (mut up_j, mut down_j) = (0.0, 0.0);
    for index in 1..points.len() {
        let (a, b) = (&points[index - 1], &points[index]);
        let (dx_m, dz_m) = (b.x_m - a.x_m, b.z_m - a.z_m);
        let across = |pick: &dyn Fn(usize) -> (f64, f64)| {
            let (first, second) = (pick(index - 1), pick(index));
            -0.5 * ((first.0 + second.0) * dx_m + (first.1 + second.1) * dz_m)
        };
        up_j += across(&|i| (samples[i].up.force.x_n, samples[i].up.force.z_n));
        down_j += across(&|i| (samples[i].down.force.x_n, samples[i].down.force.z_n));
    }
    (up_j, down_j)
}

#[test]
fn law_every_implement_on_every_movement_is_answered_or_refused_with_the_reason() {
    let library = Library::built_in();
    let pieces = library.pieces().expect("bands and chains");
    let (mut answered, mut refused) = (0, 0);
    for movement in movements() {
        let model = model_of(&movement);
        let question = question_of(&movement, &model, 21);
        let carrier = model.movement.carrier().expect("a carrier");
        for implement in IMPLEMENTS {
            let what = format!("{movement}, {:?}", implement.texts);
            let all = items(implement.texts, &pieces.stock());
            match study(&question, &[Setup::new("", all)]) {
                Ok(answer) => {
                    assert!(implement.on.contains(letter(carrier)), "{what} was taken");
                    assert_whole(&what, &answer);
                    answered += 1;
                }
                // A pull to the side alone, with no weight beside it, is taken and cannot be held; bands
                // from below and above that cancel leave no other.
                Err(error) if error.exit_status() == 1 => {
                    assert!(
                        crate::calling::said(&error).contains("cannot be held"),
                        "{what}: {error}"
                    );
                    assert_eq!(letter(carrier), 'b', "{what}");
                    let to_the_side = ["@ahead", "-80 cm", "angle 45 deg"];
                    let cancels = implement.texts.len() > 1;
                    let text = implement.texts[0];
                    assert!(
                        cancels || to_the_side.iter().any(|word| text.contains(word)),
                        "{what}"
                    );
                    answered += 1;
                }
                Err(error) => {
                    assert!(!implement.on.contains(letter(carrier)), "{what}: {error}");
                    assert_eq!(error.exit_status(), 2, "{what}: {error}");
                    let told = crate::calling::said(&error);
                    let words = format!("makes no sense on {movement}: ");
                    assert!(told.contains(&words), "{what}: {told}");
                    for fault in error.faults() {
                        assert!(
                            !crate::calling::next_moves(fault).is_empty(),
                            "{what}: {told}"
                        );
                    }
                    refused += 1;
                }
            }
        }
    }
    assert_eq!(answered + refused, 14 * IMPLEMENTS.len());
    assert!(
        answered > 250 && refused > 80,
        "{answered} answered, {refused} refused"
    );
}

#[test]
fn law_a_setup_file_says_the_same_as_the_command_line() {
    let library = Library::built_in();
    let pieces = library.pieces().expect("bands and chains");
    for implement in IMPLEMENTS {
        let text = format!("Setup(name: \"\", items: [{}])", implement.file);
        let file: SetupFile = record_of(&text);
        let from_file = file
            .resolve(&pieces.stock())
            .unwrap_or_else(|e| panic!("{text}: {e}"));
        if text.contains("OwnBand") {
            assert!(matches!(from_file.items[..], [Item::Band(_)]), "{text}");
        } else {
            let from_line = Setup::new("", items(implement.texts, &pieces.stock()));
            assert_eq!(from_file, from_line, "{text}");
        }
    }
}

#[test]
fn law_what_a_movement_takes_can_be_hung_all_at_once() {
    let library = Library::built_in();
    let pieces = library.pieces().expect("bands and chains");
    for movement in movements() {
        let model = model_of(&movement);
        let question = question_of(&movement, &model, 11);
        let carrier = letter(model.movement.carrier().expect("a carrier"));
        let mut all = vec![Item::Weight(Weight::Load(Mass::from_kg(60.0)))];
        let mut has_cam = false;
        for implement in IMPLEMENTS.iter().filter(|i| i.on.contains(carrier)) {
            let is_cam = implement.texts[0].starts_with("cam");
            if !(is_cam && has_cam) {
                all.extend(items(implement.texts, &pieces.stock()));
            }
            has_cam |= is_cam;
        }
        let many = all.len();
        let answer =
            study(&question, &[Setup::new("", all)]).unwrap_or_else(|e| panic!("{movement}: {e}"));
        assert_whole(&movement, &answer);
        for sample in &answer.setups[0].demand.samples {
            assert!(sample.up.parts_n.len() >= many, "{movement}");
            let sum: f64 = sample.up.parts_n.iter().sum();
            let off = (sum - sample.up.along_n).abs();
            assert!(
                off < 1.0e-6 * (1.0 + sum.abs()),
                "{movement}: {sum} N of parts, {} N",
                sample.up.along_n
            );
        }
    }
}

#[test]
fn law_no_implement_gives_back_more_work_than_it_took() {
    let library = Library::built_in();
    let pieces = library.pieces().expect("bands and chains");
    let mut lossy_bands = 0;
    for movement in movements() {
        let model = model_of(&movement);
        let question = question_of(&movement, &model, 201);
        let carrier = letter(model.movement.carrier().expect("a carrier"));
        // A partner's help and a load that is only there in lowering bring work from outside.
        let outside = ["lowering", "spotter"];
        let own = IMPLEMENTS.iter().filter(|implement| {
            implement.on.contains(carrier)
                && !outside
                    .iter()
                    .any(|word| implement.texts[0].starts_with(word))
        });
        for implement in own {
            let setup = Setup::new("", items(implement.texts, &pieces.stock()));
            let Ok(answer) = study(&question, &[setup]) else {
                continue;
            };
            let (up_j, down_j) = work_j(&answer);
            assert!(
                down_j <= up_j + 1.0e-6 * (1.0 + up_j.abs()),
                "{movement}, {:?}: {up_j} J in, {down_j} J back",
                implement.texts
            );
            let is_band = implement.texts[0].starts_with("band") && up_j.abs() > 1.0;
            lossy_bands += usize::from(is_band && down_j < up_j - 0.01);
        }
    }
    assert!(
        lossy_bands > 60,
        "bands lost energy in {lossy_bands} cases only"
    );
}

#[test]
fn law_a_lowering_pace_asks_for_what_is_there_in_lowering() {
    let library = Library::built_in();
    let pieces = library.pieces().expect("bands and chains");
    let model = model_of("squat");
    let hardest = |texts: &[&str], pace: Pace| {
        let question = Question {
            pace,
            ..question_of("squat", &model, 51)
        };
        let mut all = vec![Item::Weight(Weight::Load(Mass::from_kg(60.0)))];
        all.extend(items(texts, &pieces.stock()));
        let answer = study(&question, &[Setup::new("", all)]).expect("an answer");
        answer.setups[0].values.clone()
    };
    let (up, down) = (Pace::Linear(0.2), Pace::Linear(-0.2));
    assert_eq!(hardest(&["lowering 20 kg"], up), hardest(&[], up));
    let extra = hardest(&["lowering 20 kg"], down);
    for (with, without) in extra.iter().zip(hardest(&[], down)) {
        let kg = (with - without) / STANDARD_GRAVITY_M_S2;
        assert!((kg - 20.0).abs() < 1.0e-9, "{kg} kg more in lowering");
    }
    let (lifted, lowered) = (
        hardest(&["band loop-45mm"], up),
        hardest(&["band loop-45mm"], down),
    );
    let plain_n = 60.0 * STANDARD_GRAVITY_M_S2;
    let (lifted_n, lowered_n) = (lifted[50] - plain_n, lowered[50] - plain_n);
    let kept = lowered_n / lifted_n;
    assert!(
        (kept - 0.9).abs() < 0.005,
        "a band gives back {kept} of its pull"
    );
}

/// For each kind of movement one that takes its load so.
const ONE_OF_EACH: [(char, &str); 5] = [
    ('b', "squat"),
    ('d', "biceps-curl"),
    ('s', "leg-press"),
    ('l', "leg-curl"),
    ('p', "pull-up"),
];

#[test]
fn law_curve_and_figure_take_every_implement_by_item_and_by_file() {
    let folder = tempfile::tempdir().expect("a folder can be made");
    for (index, implement) in IMPLEMENTS.iter().enumerate() {
        let file = format!("s{index}.ron");
        let text = format!("Setup(name: \"\", items: [{}])", implement.file);
        std::fs::write(folder.path().join(&file), text).expect("a file can be written");
        let first = implement.on.chars().next().expect("some movement takes it");
        let (_, movement) = ONE_OF_EACH
            .iter()
            .find(|(l, _)| *l == first)
            .expect("known");
        let mut by_item = vec!["curve", movement, "--samples", "5", "--format", "json"];
        for text in implement.texts {
            by_item.extend(["--item", text]);
        }
        let Answer {
            status,
            out,
            complaint,
        } = call_in(folder.path(), &by_item);
        assert_eq!(status, 0, "{by_item:?}: {complaint}");
        let json: serde_json::Value = serde_json::from_str(&out).expect("JSON");
        assert_eq!(
            json["samples"].as_array().map(Vec::len),
            Some(5),
            "{by_item:?}"
        );
        let Answer {
            status, complaint, ..
        } = call_in(
            folder.path(),
            &["curve", movement, "--samples", "5", "--setup", &file],
        );
        assert_eq!(status, 0, "{file}: {complaint}");
        if let Some((_, other)) = ONE_OF_EACH.iter().find(|(l, _)| !implement.on.contains(*l)) {
            for command in ["curve", "figure"] {
                let mut refused = vec![command, other, "--setup", &file];
                if command == "figure" {
                    refused.extend(["-o", "refused.svg"]);
                }
                let Answer {
                    status,
                    out,
                    complaint,
                } = call_in(folder.path(), &refused);
                assert_eq!(status, 2, "{refused:?}: {complaint}");
                assert!(out.is_empty() && !folder.path().join("refused.svg").exists());
                assert!(
                    complaint.contains("makes no sense on"),
                    "{refused:?}: {complaint}"
                );
            }
        }
    }
    let Answer {
        status, complaint, ..
    } = call_in(
        folder.path(),
        &[
            "figure",
            "leg-curl",
            "--load",
            "20 kg",
            "--item",
            "cam fitted",
            "-o",
            "cam.svg",
        ],
    );
    assert_eq!(status, 0, "{complaint}");
    assert!(folder.path().join("cam.svg").exists());
}

#[test]
fn regress_own_bands_are_read_from_line_and_table_with_their_misfit() {
    let folder = tempfile::tempdir().expect("a folder can be made");
    let table = "length,force\n104 cm,0 kg\n130 cm,8 kg\n160 cm,15 kg\n";
    std::fs::write(folder.path().join("mine.csv"), table).expect("a file can be written");
    let call = |band: &str| {
        let answer = call_in(
            folder.path(),
            &[
                "curve",
                "squat",
                "--load",
                "60 kg",
                "--band",
                band,
                "--samples",
                "11",
                "--format",
                "csv",
            ],
        );
        (answer.status, answer.out, answer.complaint)
    };
    let (status, line, told) = call("mine:1@floor: rest=104 cm, 130 cm=8 kg, 160 cm=15 kg");
    assert_eq!(status, 0, "{told}");
    assert!(told.contains("band mine:") && told.contains('%'), "{told}");
    let (status, table, told) = call("mine:1@floor: mine.csv");
    assert_eq!(status, 0, "{told}");
    assert!(told.contains("band mine:"), "{told}");
    assert_eq!(line.lines().count(), 12);
    assert_eq!(table.lines().count(), 12);
    let (status, out, told) = call("mine:1@floor: 130 cm=8 kg");
    assert_eq!((status, out.as_str()), (2, ""), "{told}");
    assert!(told.contains("reading"), "{told}");
}
