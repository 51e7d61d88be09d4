//! Every output says how it was made, and `again` makes it again, byte for byte; a file that asks for anything else than
//! reading and computing is refused.

use crate::calling::{Answer, call, call_in, json};
use serde_json::{Value, json};
use std::fs;
use std::path::Path;
use tempfile::TempDir;

fn folder() -> TempDir {
    tempfile::tempdir().expect("a folder can be made")
}

fn read(folder: &Path, name: &str) -> Vec<u8> {
    fs::read(folder.join(name)).unwrap_or_else(|fault| panic!("{name}: {fault}"))
}

/// Prints a command into a file, runs the file again twice, and compares.
fn prints_alike(folder: &Path, arguments: &[&str]) {
    let first = call_in(folder, arguments);
    fs::write(folder.join("first"), &first.out).expect("a file can be written");
    let second = call_in(folder, &["again", "first"]);
    assert_eq!(
        second.status, first.status,
        "{arguments:?}: {}",
        second.complaint
    );
    assert_eq!(second.out, first.out, "{arguments:?}");
    assert!(
        !second.complaint.contains("warning"),
        "{}",
        second.complaint
    );
    let third = call_in(folder, &["again", "first", "-o", "third"]);
    assert_eq!(
        (third.status, third.out.as_str()),
        (first.status, ""),
        "{}",
        third.complaint
    );
    assert_eq!(read(folder, "third"), first.out.as_bytes(), "{arguments:?}");
    fs::remove_file(folder.join("third")).expect("it was written");
}

/// Draws a command into files, runs each of them again, and compares.
fn draws_alike(arguments: &[&str], files: &[&str]) {
    let folder = folder();
    let first = call_in(folder.path(), arguments);
    for file in files {
        let copy = format!("copy-{file}");
        let second = call_in(folder.path(), &["again", file, "-o", &copy]);
        assert_eq!(second.status, first.status, "{file}: {}", second.complaint);
        assert!(
            read(folder.path(), file) == read(folder.path(), &copy),
            "{arguments:?}: {file}"
        );
    }
}

const LIFTS: [(&str, &str, &str); 14] = [
    ("bench-press", "40 kg", "technique.grip_width=70 cm"),
    ("overhead-press", "20 kg", "segments.upper_arm.length=+4%"),
    ("squat", "40 kg", "lifter.body_mass=82 kg"),
    ("deadlift", "40 kg", "lifter.height=-3%"),
    ("leg-press", "60 kg", "technique.sled_angle=40 deg"),
    (
        "hip-thrust",
        "40 kg",
        "muscles.gluteus_maximus.peak_force=+10%",
    ),
    ("row", "20 kg", "lifter.strength_scale=1.2"),
    ("pull-up", "1 kg", "lifter.strength_scale=2"),
    ("leg-curl", "10 kg", "technique.hip_angle=+5%"),
    ("knee-extension", "10 kg", "lifter.body_mass=+5%"),
    ("calf-raise", "10 kg", "technique.knee_angle=10 deg"),
    ("lateral-raise", "2 kg", "lifter.strength_scale=1.5"),
    (
        "biceps-curl",
        "5 kg",
        "muscles.biceps_long.moment_arm.elbow=+10%",
    ),
    ("triceps-extension", "5 kg", "lifter.height=184 cm"),
];

#[test]
fn law_a_curve_runs_again_from_its_own_provenance() {
    let folder = folder();
    for (number, (lift, load, set)) in LIFTS.iter().enumerate() {
        let samples = (5 + number).to_string();
        let set = [
            "curve",
            lift,
            "--load",
            load,
            "--set",
            set,
            "--samples",
            &samples,
        ];
        prints_alike(folder.path(), &[&set[..], &["--format", "json"]].concat());
        let csv = ["--detail", "--provenance", "--format", "csv"];
        prints_alike(folder.path(), &[&set[..], &csv].concat());
    }
}

#[test]
fn law_every_command_runs_again_from_its_own_provenance() {
    let folder = folder();
    for line in [
        "movements --provenance --format json",
        "movements --provenance --format csv --lifter reference-woman",
        "sources --provenance --format json",
        "curve bench-press --chain chain-10mm:1 --load 40kg --band loop-14mm:1 --units us --format json",
        "curve bench-press --speed=-0.2m/s --format json",
        "vary biceps-curl --values=-10%,+10% --param segments.forearm.length --samples 11 --format json",
        "vary bench-press --param technique.grip_width --values 60cm..90cm:2 --param technique.tuck --values 15deg,45deg --samples 5 --format csv --provenance",
        "vary biceps-curl --rank --samples 5 --by 3 --format json",
        "rep bench-press --load 85% --pause 1s --format json",
        "rep bench-press --load 300kg --format json",
        "max biceps-curl --velocities --format csv --provenance",
        "plan bench-press --one-rm 140kg --method clusters --age 30 --format json",
        "pick bench-press --gym garage --top 2 --format json",
        "progress --log stalled --format json",
    ] {
        let arguments: Vec<&str> = line.split(' ').collect();
        prints_alike(folder.path(), &arguments);
    }
}

#[test]
fn law_every_picture_runs_again_from_its_own_provenance() {
    let bench = [
        "figure",
        "bench-press",
        "--load",
        "55 kg",
        "--samples",
        "21",
    ];
    let more = ["--theme", "dark", "--data", "--words", "-o", "a.svg"];
    draws_alike(&[&bench[..], &more].concat(), &["a.svg", "a.csv"]);
    draws_alike(
        &[&bench[..], &["-o", "a.png", "--size", "640x400"]].concat(),
        &["a.png"],
    );
    let versus = [
        "--versus",
        "--band",
        "loop-14mm:1",
        "--load",
        "35 kg",
        "--data",
        "-o",
        "v.svg",
    ];
    draws_alike(
        &[&bench[..], &versus].concat(),
        &["v.svg", "v.1.csv", "v.2.csv"],
    );
    let rep = [
        "rep",
        "biceps-curl",
        "--load",
        "80%",
        "--format",
        "json",
        "-o",
        "a.svg",
    ];
    let others = ["--over-time", "b.png", "--animation", "c.svg"];
    draws_alike(&[&rep[..], &others].concat(), &["a.svg", "b.png", "c.svg"]);
    let plan = [
        "plan",
        "bench-press",
        "--one-rm",
        "100 kg",
        "--method",
        "clusters",
    ];
    let sheets = [
        "--sheet",
        "a.svg",
        "--fatigue",
        "b.svg",
        "--loads",
        "c.svg",
        "-o",
        "d.svg",
    ];
    draws_alike(
        &[&plan[..], &sheets].concat(),
        &["a.svg", "b.svg", "c.svg", "d.svg"],
    );
    draws_alike(&["max", "biceps-curl", "-o", "a.svg"], &["a.svg"]);
    draws_alike(&["progress", "--log", "rising", "-o", "a.svg"], &["a.svg"]);
    draws_alike(
        &["pick", "row", "--gym", "garage", "-o", "a.svg"],
        &["a.svg"],
    );
    let vary = [
        "vary",
        "biceps-curl",
        "--param",
        "segments.forearm.length",
        "--values",
        "-5%,+5%",
    ];
    draws_alike(&[&vary[..], &["-o", "a.svg"]].concat(), &["a.svg"]);
}

#[test]
fn law_what_is_printed_beside_a_picture_runs_again_alone() {
    let folder = folder();
    let drawn = [
        "max",
        "biceps-curl",
        "--format",
        "json",
        "-o",
        "a.svg",
        "--theme",
        "dark",
    ];
    let first = call_in(folder.path(), &drawn).done();
    fs::write(folder.path().join("a.json"), &first.out).expect("a file can be written");
    assert_eq!(
        call_in(folder.path(), &["again", "a.json"]).done().out,
        first.out
    );
}

#[test]
fn law_a_lecture_runs_again_from_one_of_its_files() {
    let folder = folder();
    call_in(folder.path(), &["lecture", "--size", "640x400", "-o", "a"]).done();
    let one = fs::read_dir(folder.path().join("a")).expect("it was written");
    let names: Vec<String> = one
        .map(|file| {
            file.expect("a file")
                .file_name()
                .to_string_lossy()
                .into_owned()
        })
        .collect();
    let svg = names
        .iter()
        .find(|name| name.ends_with(".svg"))
        .expect("a figure");
    call_in(folder.path(), &["again", &format!("a/{svg}"), "-o", "b"]).done();
    for name in &names {
        assert!(
            read(&folder.path().join("a"), name) == read(&folder.path().join("b"), name),
            "{name}"
        );
    }
    // A folder that holds such files already is left alone.
    let again = call_in(folder.path(), &["again", &format!("a/{svg}"), "-o", "b"]);
    assert_eq!(again.status, 2, "{}", again.complaint);
}

#[test]
fn law_provenance_tells_what_was_asked() {
    let arguments = [
        "curve",
        "bench-press",
        "--samples",
        "5",
        "--set",
        "technique.grip_width=70 cm",
        "--band",
        "loop-14mm:1",
        "--load",
        "40 kg",
        "--set",
        "lifter.height=+2%",
    ];
    let answer = json(&arguments);
    let record = &answer["provenance"];
    assert_eq!(record["program"], "torquill");
    assert_eq!(record["program_version"], env!("CARGO_PKG_VERSION"));
    assert_eq!(record["contract_version"], answer["contract_version"]);
    assert_eq!(record["movement"], "bench-press");
    assert_eq!(record["lifter"], "reference-man");
    assert_eq!(
        record["setup"],
        json!(["--load \"40 kg\" --band loop-14mm:1"])
    );
    assert_eq!(
        record["set"],
        json!(["technique.grip_width=70 cm", "lifter.height=+2%"])
    );
    assert_eq!(
        (&record["models"], &record["files"]),
        (&json!([]), &json!([]))
    );
    let hash = record["model_hash"].as_str().expect("a hash");
    assert!(hash.starts_with("sha256:") && hash.len() == 71, "{hash}");
    let command = "torquill curve bench-press --set \"technique.grip_width=70 cm\" --set lifter.height=+2% \
                   --load \"40 kg\" --band loop-14mm:1 --samples 5 --format json";
    assert_eq!(record["command"], command);
    // The order of options does not matter, and CSV says the same over the table.
    let csv = call(&[&arguments[..], &["--format", "csv", "--provenance"]].concat())
        .done()
        .out;
    let (head, table) = csv.split_at(csv.find("\nrange,").expect("a table") + 1);
    assert!(head.lines().all(|line| line.starts_with("# ")), "{head}");
    for key in ["model_hash", "set", "setup", "movement", "program_version"] {
        assert!(
            head.contains(&format!("# {key}: {}\n", record[key])),
            "{key} in {head}"
        );
    }
    let bare = call(&[&arguments[..], &["--format", "csv"]].concat())
        .done()
        .out;
    assert_eq!(table, bare);
}

#[test]
fn law_provenance_names_no_folder_of_the_machine() {
    let folder = folder();
    let lifter = include_str!("../../models/lifters/tall-novice.ron");
    fs::create_dir(folder.path().join("own")).expect("a folder can be made");
    fs::write(folder.path().join("own/me.ron"), lifter).expect("a file can be written");
    let absolute = folder.path().join("own/me.ron").display().to_string();
    let call = |lifter: &str| {
        let arguments = [
            "curve",
            "squat",
            "--samples",
            "5",
            "--format",
            "json",
            "--lifter",
            lifter,
        ];
        call_in(folder.path(), &arguments).done()
    };
    let (far, near) = (call(&absolute), call("own/me.ron"));
    assert!(
        !far.out.contains(&folder.path().display().to_string()),
        "{}",
        far.out
    );
    let (far, near) = (
        far.json()["provenance"].clone(),
        near.json()["provenance"].clone(),
    );
    assert_eq!(
        (&far["lifter"], &near["lifter"]),
        (&json!("me.ron"), &json!("own/me.ron"))
    );
    assert_eq!(far["files"][0]["hash"], near["files"][0]["hash"]);
    prints_alike(
        folder.path(),
        &[
            "curve",
            "squat",
            "--samples",
            "5",
            "--format",
            "json",
            "--lifter",
            "own/me.ron",
        ],
    );
}

/// A sound answer with other provenance.
fn forged(change: impl Fn(&mut Value)) -> String {
    let mut answer = json(&["curve", "biceps-curl", "--samples", "5"]);
    change(&mut answer["provenance"]);
    answer.to_string()
}

/// Runs a file again, which is refused: status 2, nothing printed, nothing written.
fn refused(content: &[u8], words: &str) {
    let folder = folder();
    fs::write(folder.path().join("file"), content).expect("a file can be written");
    fs::write(folder.path().join("there"), "kept").expect("a file can be written");
    for more in [&[][..], &["-o", "new.svg"]] {
        let answer = call_in(folder.path(), &[&["again", "file"], more].concat());
        assert_eq!(
            (answer.status, answer.out.as_str()),
            (2, ""),
            "{}",
            answer.complaint
        );
        assert!(
            answer.complaint.contains(words),
            "`{words}` is not in {}",
            answer.complaint
        );
        assert_eq!(
            fs::read_dir(folder.path()).expect("it is there").count(),
            2,
            "{words}"
        );
        assert_eq!(read(folder.path(), "there"), b"kept");
    }
}

#[test]
fn fault_a_file_that_asks_for_more_than_computing_is_refused() {
    for (arguments, words) in [
        (json!(["figure", "squat", "-o", "there"]), "--output"),
        (json!(["figure", "squat", "--output=x.svg"]), "--output"),
        (
            json!(["rep", "squat", "--over-time", "x.svg"]),
            "--over-time",
        ),
        (
            json!(["rep", "squat", "--animation", "x.svg"]),
            "--animation",
        ),
        (json!(["plan", "squat", "--sheet", "x.html"]), "--sheet"),
        (json!(["figure", "squat", "--force"]), ""),
        (json!(["vary", "squat", "--rank", "--force"]), "--force"),
        (json!(["curve", "squat", "--models", "."]), "--models"),
        (json!(["--models", ".", "curve", "squat"]), "--models"),
        (json!(["again", "file"]), "`again`"),
        (json!(["check", "there"]), "`check`"),
        (json!(["completions", "bash"]), "`completions`"),
        (json!(["curve", "squat", "--help"]), "--help"),
        (json!(["--version"]), "--help"),
        (
            json!(["curve", "squat", "--no-such-option"]),
            "--no-such-option",
        ),
        (json!(["no-such-command"]), "no-such-command"),
        (
            json!(["curve", "squat", "--lifter", "/etc/passwd.ron"]),
            "/etc/passwd.ron",
        ),
        (
            json!(["curve", "squat", "--lifter", "../me.ron"]),
            "../me.ron",
        ),
        (
            json!(["curve", "squat", "--band", "mine: /etc/readings.csv"]),
            "/etc/readings.csv",
        ),
        (
            json!(["progress", "--log", "/etc/hosts.csv"]),
            "/etc/hosts.csv",
        ),
        (json!(["curve", "squat", "\u{1b}[2J"]), "control"),
        (json!(["curve", "squat", "--", "--output=x"]), ""),
        (json!([]), ""),
    ] {
        refused(
            forged(|record| record["arguments"] = arguments.clone()).as_bytes(),
            words,
        );
    }
    let other = |record: &mut Value| record["program"] = json!("rm");
    refused(forged(other).as_bytes(), "another program");
    let output = |record: &mut Value| record["output"] = json!("force");
    refused(forged(output).as_bytes(), "");
    for arguments in [
        json!(["figure", "squat", "-o", "there"]),
        json!(["figure", "squat", "-o", "there", "--"]),
        json!([
            "vary",
            "squat",
            "-o",
            "there",
            "--param",
            "technique.depth",
            "--values"
        ]),
        json!(["vary", "squat", "--param", "technique.depth", "--values"]),
        json!(["curve", "squat"]),
    ] {
        let drawn = |record: &mut Value| {
            record["output"] = json!("output");
            record["arguments"] = arguments.clone();
        };
        refused(forged(drawn).as_bytes(), "");
    }
    let models = |record: &mut Value| {
        record["models"] = json!([{"name": "lifters/a.ron", "hash": "sha256:0", "replaced": true}]);
    };
    refused(forged(models).as_bytes(), "lifters/a.ron");
}

#[test]
fn fault_a_file_that_says_nothing_of_its_making_is_refused() {
    for content in [
        "",
        "{}",
        "[1]",
        "<svg></svg>",
        "range,effort\n0,1\n",
        "# a comment\nrange\n",
        "\u{89}PNG",
        "{\"provenance\": null}",
        "<svg><metadata id=\"provenance\"></svg>",
    ] {
        refused(content.as_bytes(), "file");
    }
    refused(b"\x89PNG\r\n\x1a\n\0\0\0\x0dIHDR", "file");
    refused(&[0xff, 0xfe, 0], "file");
    refused(b"PK\x03\x04\x14\0", "sheet `provenance`");
    for content in [
        "{\"provenance\": 1}",
        "{",
        "# program: 1\n",
        "<svg><metadata id=\"provenance\">x</metadata>",
    ] {
        refused(content.as_bytes(), "cannot be read");
    }
    refused(&vec![b' '; 16_000_001], "16 MB");
    let folder = folder();
    assert_eq!(call_in(folder.path(), &["again", "."]).status, 2);
    assert_eq!(call_in(folder.path(), &["again", "gone.json"]).status, 2);
}

#[test]
fn fault_again_replaces_no_file() {
    let folder = folder();
    fs::write(folder.path().join("a.json"), forged(|_| ())).expect("a file can be written");
    call_in(
        folder.path(),
        &["figure", "biceps-curl", "-o", "a.svg", "--size", "640x400"],
    )
    .done();
    for (file, target) in [
        ("a.json", "a.svg"),
        ("a.svg", "a.svg"),
        ("a.json", "a.json"),
    ] {
        let before = read(folder.path(), target);
        let answer = call_in(folder.path(), &["again", file, "-o", target]);
        assert_eq!(answer.status, 2, "{}", answer.complaint);
        assert!(
            answer.complaint.contains("exists already"),
            "{}",
            answer.complaint
        );
        assert!(read(folder.path(), target) == before);
    }
    let lacking = call_in(folder.path(), &["again", "a.svg"]);
    assert_eq!(lacking.status, 2);
    assert!(
        lacking.complaint.contains("-o NEW"),
        "{}",
        lacking.complaint
    );
}

fn again(content: &str) -> Answer {
    let folder = folder();
    fs::write(folder.path().join("a.json"), content).expect("a file can be written");
    call_in(folder.path(), &["again", "a.json"])
}

#[test]
fn law_what_differs_from_the_making_is_told() {
    let plain = again(&forged(|_| ())).done();
    assert_eq!(plain.complaint, "");
    let changes: [(&str, Value, &str); 4] = [
        ("program_version", json!("0.0.1"), "version 0.0.1"),
        ("contract_version", json!(1), "contract 1"),
        ("model_hash", json!("sha256:0"), "built-in model files"),
        (
            "files",
            json!([{"name": "me.ron", "hash": "sha256:0"}]),
            "`me.ron`",
        ),
    ];
    for (key, value, words) in changes {
        let answer = again(&forged(|record| record[key] = value.clone())).done();
        assert_eq!(answer.out, plain.out);
        assert!(answer.complaint.contains(words), "{}", answer.complaint);
        assert_eq!(
            answer.complaint.matches("warning").count(),
            1,
            "{}",
            answer.complaint
        );
    }
}

/// A folder of model files with another reference man.
fn own_models(height: &str) -> TempDir {
    let folder = folder();
    let lifters = folder.path().join("own/lifters");
    fs::create_dir_all(&lifters).expect("a folder can be made");
    let man = include_str!("../../models/lifters/reference-man.ron");
    let stature = man
        .lines()
        .find(|line| line.trim_start().starts_with("height:"))
        .expect("a height");
    let taller = man.replace(stature, &format!("    height: \"{height}\","));
    assert_ne!(taller, man);
    fs::write(lifters.join("reference-man.ron"), taller).expect("a file can be written");
    fs::write(lifters.join("friend.ron"), man).expect("a file can be written");
    folder
}

#[test]
fn law_model_files_are_named_and_given_again_by_hand() {
    let folder = own_models("190 cm");
    let curve = [
        "curve",
        "squat",
        "--samples",
        "5",
        "--format",
        "json",
        "--models",
        "own",
    ];
    let first = call_in(folder.path(), &curve).done();
    let models = first.json()["provenance"]["models"].clone();
    let told = |index: usize| {
        (
            models[index]["name"].clone(),
            models[index]["replaced"].clone(),
        )
    };
    assert_eq!(told(0), (json!("lifters/friend.ron"), json!(false)));
    assert_eq!(told(1), (json!("lifters/reference-man.ron"), json!(true)));
    fs::write(folder.path().join("a.json"), &first.out).expect("a file can be written");
    let without = call_in(folder.path(), &["again", "a.json"]);
    assert_eq!((without.status, without.out.as_str()), (2, ""));
    assert!(
        without.complaint.contains("--models DIR"),
        "{}",
        without.complaint
    );
    let given = ["again", "a.json", "--models", "own"];
    let second = call_in(folder.path(), &given).done();
    assert_eq!(
        (second.out.as_str(), second.complaint.as_str()),
        (first.out.as_str(), "")
    );
    let other = own_models("189 cm");
    fs::copy(folder.path().join("a.json"), other.path().join("a.json")).expect("it can be copied");
    let third = call_in(other.path(), &given).done();
    assert!(
        third.complaint.contains("lifters/reference-man.ron"),
        "{}",
        third.complaint
    );
    assert_ne!(third.out, first.out);
}

/// Figure, caption and alternative text of a command line.
fn told(folder: &Path, arguments: &[&str]) -> String {
    let more = ["--live-text", "--words", "--force", "-o", "a.svg"];
    call_in(folder, &[&["figure", "squat"], arguments, &more].concat()).done();
    let texts =
        ["a.svg", "a.caption.txt"].map(|name| String::from_utf8(read(folder, name)).expect("text"));
    let [svg, caption] = texts;
    let (_, drawn) = svg
        .split_once("</metadata>")
        .expect("it carries its making");
    let is_drawn = drawn.contains("Reference man, changed") || drawn.contains("Squat (changed)");
    let is_told = caption.contains("Reference man, changed") || caption.contains("Squat (changed)");
    assert_eq!(is_drawn, is_told, "{caption}");
    caption
}

#[test]
fn law_a_changed_name_is_marked_on_figure_and_caption() {
    let folder = own_models("190 cm");
    let marked = |arguments: &[&str]| told(folder.path(), arguments).contains("changed");
    assert!(!marked(&[]));
    assert!(!marked(&["--models", "own", "--lifter", "friend"]));
    assert!(marked(&["--models", "own"]));
    assert!(marked(&["--set", "lifter.height=+2%"]));
    assert!(marked(&["--set", "segments.thigh.length=+2%"]));
    assert!(marked(&["--set", "technique.bar_position=low"]));
}

#[test]
fn law_pictures_with_their_making_are_sound() {
    let folder = folder();
    let set = "--set=lifter.height=\"184 cm\"";
    for (file, more) in [
        ("a.svg", None),
        ("b.svg", Some("--live-text")),
        ("c.png", None),
    ] {
        let arguments = ["figure", "squat", set, "--load", "40 kg", "-o", file];
        let more: Vec<&str> = more.into_iter().collect();
        call_in(folder.path(), &[&arguments[..], &more].concat()).done();
        let bytes = read(folder.path(), file);
        let line = torquill::draw::metadata(&bytes).expect("it is whole");
        let line = line.expect("it carries its making");
        let record: Value = serde_json::from_str(&line).expect("it is JSON");
        assert_eq!(record["set"][0], "lifter.height=\"184 cm\"");
        assert_eq!(record["output"], "output");
        if file.ends_with(".svg") {
            let text = String::from_utf8(bytes).expect("text");
            let tree = resvg::usvg::roxmltree::Document::parse(&text).expect("sound XML");
            let root = tree.root_element();
            let carried = root.children().find(|node| node.has_tag_name("metadata"));
            assert_eq!(carried.and_then(|node| node.text()), Some(line.as_str()));
        }
    }
}
