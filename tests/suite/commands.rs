//! The contract of the commands, end to end, as a user would call them.

use std::path::Path;
use tempfile::TempDir;

/// One call of the program in a folder of its own.
struct Call {
    folder: TempDir,
    status: i32,
    out: String,
    complaint: String,
}

fn call_in(folder: TempDir, arguments: &[&str]) -> Call {
    let answer = super::calling::call_in(folder.path(), arguments);
    Call {
        folder,
        status: answer.status,
        out: answer.out,
        complaint: answer.complaint,
    }
}

fn call(arguments: &[&str]) -> Call {
    call_in(
        tempfile::tempdir().expect("a folder can be made"),
        arguments,
    )
}

impl Call {
    fn done(self) -> Self {
        assert_eq!(self.status, 0, "{}", self.complaint);
        self
    }

    /// The call ended with this status and words, printed nothing and wrote nothing.
    fn refused(self, status: i32, words: &[&str]) {
        assert_eq!(self.status, status, "{}{}", self.out, self.complaint);
        for word in words {
            assert!(
                self.complaint.contains(word),
                "`{word}` is not in: {}",
                self.complaint
            );
        }
        assert_eq!(self.out, "");
        assert_eq!(self.files(), Vec::<String>::new());
    }

    fn files(&self) -> Vec<String> {
        let mut names: Vec<String> = std::fs::read_dir(self.folder.path())
            .expect("the folder can be listed")
            .map(|entry| {
                entry
                    .expect("an entry")
                    .file_name()
                    .to_string_lossy()
                    .into_owned()
            })
            .collect();
        names.sort();
        names
    }

    fn read(&self, name: &str) -> Vec<u8> {
        std::fs::read(self.folder.path().join(name)).expect("the file was written")
    }

    fn json(&self) -> serde_json::Value {
        serde_json::from_str(&self.out).expect("standard output is JSON and nothing else")
    }
}

#[test]
fn regress_curve_json_follows_the_contract() {
    let json = call(&[
        "curve",
        "bench-press",
        "--load",
        "100 kg",
        "--detail",
        "--format",
        "json",
    ])
    .done()
    .json();
    let summary = &json["summary"];
    for key in [
        "movement",
        "lifter",
        "class",
        "peak_range",
        "start_ratio",
        "end_ratio",
        "range_of_motion_m",
        "sticking_point_range",
        "sticking_point_m",
        "sticking_region_range",
        "max_effort",
        "limiting_joint",
        "flattening_percent",
    ] {
        assert!(!summary[key].is_null(), "summary lacks {key}");
    }
    let samples = json["samples"].as_array().expect("samples are a list");
    assert_eq!(samples.len(), 101);
    for key in [
        "range",
        "position_m",
        "angle_deg",
        "capacity_n",
        "demand_n",
        "effort",
    ] {
        assert!(samples[50][key].is_number(), "a sample lacks {key}");
    }
    assert!(samples[50]["joint_angles_deg"]["elbow"].is_number());
    assert!(samples[50]["joint_torques_nm"]["elbow"].is_number());
    assert!(samples[50]["reactions"]["lateral_n"].is_number());
    for sample in samples {
        for (joint, whole) in sample["muscle_torques_nm"].as_object().expect("by joint") {
            let muscles = sample["muscles"].as_array().expect("a list").iter();
            let sum: f64 = muscles
                .filter_map(|muscle| muscle["torque_nm"][joint].as_f64())
                .sum();
            assert!(
                (sum - whole.as_f64().expect("a number")).abs() < 1.0e-6,
                "{joint}: {sum} {whole}"
            );
        }
    }
    let muscle = &samples[50]["muscles"][0];
    for key in [
        "fibre_length_norm",
        "fibre_velocity_norm",
        "activation",
        "force_n",
    ] {
        assert!(muscle[key].is_number(), "a muscle lacks {key}");
    }
    assert!(muscle["muscle"].is_string() && muscle["moment_arm_m"].is_object());
    let number = |value: &serde_json::Value| value.as_f64().expect("a number");
    let mut hardest = 0.0_f64;
    for sample in samples {
        let effort = number(&sample["effort"]);
        let share = number(&sample["demand_n"]) / number(&sample["capacity_n"]);
        assert!((effort - share).abs() < 1e-9, "{effort} against {share}");
        hardest = hardest.max(effort);
    }
    assert!((number(&summary["max_effort"]) / hardest - 1.0).abs() < 1e-3);
}

#[test]
fn regress_a_sweep_is_in_torque_and_has_no_position() {
    let json = call(&[
        "curve",
        "lateral-raise",
        "--load",
        "8 kg",
        "--format",
        "json",
        "--samples",
        "11",
    ])
    .done()
    .json();
    assert!(json["samples"][3]["position_m"].is_null());
    assert!(json["samples"][3]["capacity_nm"].is_number());
    assert!(json["samples"][3]["demand_nm"].is_number());
    assert!(json["summary"]["range_of_motion_m"].is_null());
}

#[test]
fn regress_csv_has_a_header_and_a_row_a_sample() {
    let out = call(&[
        "curve",
        "biceps-curl",
        "--load",
        "15 kg",
        "--format",
        "csv",
        "--samples",
        "21",
    ])
    .done()
    .out;
    let lines: Vec<&str> = out.lines().collect();
    assert_eq!(lines.len(), 22);
    assert!(lines[0].starts_with("range,position_m,angle_deg,capacity_nm"));
}

#[test]
fn law_svg_and_png_are_the_same_picture_and_carry_words() {
    let svg = call(&[
        "figure",
        "bench-press",
        "--load",
        "80 kg",
        "--words",
        "--data",
        "-o",
        "a.svg",
    ])
    .done();
    assert_eq!(
        svg.files(),
        ["a.alt.txt", "a.caption.txt", "a.csv", "a.svg"]
    );
    let text = String::from_utf8(svg.read("a.svg")).expect("SVG is text");
    assert!(text.contains("<title>") && text.contains("<desc>"));
    assert!(text.contains("width=\"1920\"") && text.contains("height=\"1080\""));
    let png = call(&["figure", "bench-press", "--load", "80 kg", "-o", "a.png"])
        .done()
        .read("a.png");
    assert_eq!(&png[..8], b"\x89PNG\r\n\x1a\n");
    let size =
        |from: usize| u32::from_be_bytes(png[from..from + 4].try_into().expect("four bytes"));
    assert_eq!((size(16), size(20)), (1920, 1080));
    let again = call(&["figure", "bench-press", "--load", "80 kg", "-o", "a.png"])
        .done()
        .read("a.png");
    assert!(png == again, "the same call draws the same bytes");
}

#[test]
fn regress_a_figure_compares_setups() {
    let call = call(&[
        "figure",
        "bench-press",
        "--load",
        "100 kg",
        "--versus",
        "--load",
        "70 kg",
        "--band",
        "loop-29mm:1",
        "--size",
        "page",
        "--words",
        "-o",
        "b.svg",
    ])
    .done();
    let alt = String::from_utf8(call.read("b.alt.txt")).expect("text");
    assert_eq!(alt.matches("the hardest part lies").count(), 2, "{alt}");
    assert!(
        alt.contains("It makes effort more even than plain weight does, by"),
        "{alt}"
    );
}

#[test]
fn fault_more_than_can_be_held_is_an_answer() {
    let call = call(&["curve", "bench-press", "--load", "200 kg"]).done();
    assert!(
        call.out.contains("more than this lifter can hold"),
        "{}",
        call.out
    );
}

#[test]
fn fault_unknown_names_are_refused_with_the_nearest() {
    call(&["curve", "bench-pres"]).refused(2, &["bench-pres", "bench-press"]);
    call(&["curve", "bench-press", "--lifter", "reference-mann"]).refused(2, &["reference-man"]);
    call(&["curve", "bench-press", "--band", "loop-28mm:1"])
        .refused(2, &["loop-28mm", "loop-29mm"]);
    call(&["curve", "bench-press", "--chain", "chain-11mm"]).refused(2, &["chain-11mm"]);
    call(&["curve", "bench-press", "--set", "technique.gripwidth=60 cm"])
        .refused(2, &["grip_width"]);
    call(&[
        "curve",
        "bench-press",
        "--set",
        "muscles.bicep_long.peak_force=+10%",
    ])
    .refused(2, &["biceps_long"]);
}

#[test]
fn fault_bad_quantities_are_refused() {
    call(&["curve", "bench-press", "--load", "100"]).refused(2, &["unit", "kg"]);
    call(&["curve", "bench-press", "--load", "100 kgs of steel"]).refused(2, &["steel"]);
    call(&["curve", "bench-press", "--load", "-5 kg"]).refused(2, &["-5 kg"]);
    call(&["curve", "bench-press", "--load", "NaN kg"]).refused(2, &["NaN"]);
    call(&["curve", "bench-press", "--load", "1e9 kg"]).refused(2, &["1e9 kg"]);
    call(&[
        "curve",
        "bench-press",
        "--set",
        "technique.grip_width=60 deg",
    ])
    .refused(2, &["60 deg"]);
    call(&["curve", "bench-press", "--set", "technique.grip_width=3 m"]).refused(2, &["100 cm"]);
    call(&["curve", "bench-press", "--speed", "60 deg/s"]).refused(2, &["0.3 m/s"]);
    call(&["curve", "biceps-curl", "--speed", "0.3 m/s"]).refused(2, &["60 deg/s"]);
    call(&["curve", "bench-press", "--samples", "1"]).refused(2, &["1 sample is outside"]);
    call(&[
        "curve",
        "bench-press",
        "--set",
        "segments.forearm.length=2 m",
    ])
    .refused(2, &["forearm"]);
}

#[test]
fn fault_a_path_that_limbs_cannot_close_is_refused() {
    call(&[
        "curve",
        "bench-press",
        "--set",
        "segments.forearm.length=14 cm",
        "--set",
        "segments.upper_arm.length=15 cm",
        "--set",
        "technique.grip_width=100 cm",
    ])
    .refused(2, &["reach"]);
}

#[test]
fn law_output_is_whole_or_absent() {
    call(&["figure", "bench-press", "-o", "a.bmp"]).refused(2, &[".svg or .png"]);
    call(&["figure", "bench-press", "-o", "missing/a.png"])
        .refused(2, &["missing", "does not exist"]);
    call(&["figure", "bench-press", "-o", "."]).refused(2, &["folder"]);
    call(&["figure", "bench-press", "--size", "12x9", "-o", "a.png"]).refused(2, &["12x9"]);
    let folder = tempfile::tempdir().expect("a folder can be made");
    std::fs::write(folder.path().join("a.png"), b"mine").expect("a file can be written");
    let call = call_in(folder, &["figure", "bench-press", "-o", "a.png"]);
    assert_eq!(call.status, 2);
    assert!(call.complaint.contains("exists already") && call.complaint.contains("--force"));
    assert_eq!(call.read("a.png"), b"mine");
    let call = call_in(
        call.folder,
        &["figure", "bench-press", "--force", "-o", "a.png"],
    )
    .done();
    assert!(call.read("a.png").len() > 1000);
    assert_eq!(call.files(), ["a.png"]);
}

#[test]
fn fault_an_empty_setup_beside_versus_is_refused() {
    call(&[
        "figure",
        "bench-press",
        "--load",
        "80 kg",
        "--versus",
        "-o",
        "a.png",
    ])
    .refused(2, &["--versus"]);
}

#[test]
fn regress_every_command_helps_with_an_example() {
    for command in [
        "movements",
        "curve",
        "figure",
        "check",
        "sources",
        "completions",
    ] {
        let out = call(&[command, "--help"]).done().out;
        assert!(
            out.contains("torquill ") && out.contains("Example"),
            "{command}: {out}"
        );
    }
    assert!(
        call(&["completions", "bash"])
            .done()
            .out
            .contains("torquill")
    );
}

#[test]
fn law_sources_and_movements_list_everything() {
    let sources = call(&["sources", "--format", "json"]).done().json();
    assert!(sources.as_object().expect("an object").len() > 40);
    let movements = call(&["movements", "--format", "json"]).done().json();
    let classes: Vec<(String, String)> = movements
        .as_array()
        .expect("a list")
        .iter()
        .map(|m| {
            let text = |key: &str| m[key].as_str().expect("text").to_owned();
            (text("movement"), text("class"))
        })
        .collect();
    for wanted in [
        ("bench-press", "ascending"),
        ("biceps-curl", "bell-shaped"),
        ("lateral-raise", "descending"),
    ] {
        assert!(
            classes
                .iter()
                .any(|c| (c.0.as_str(), c.1.as_str()) == wanted),
            "{wanted:?} is not in {classes:?}"
        );
    }
}

#[test]
fn law_check_reads_every_shipped_model_file() {
    for folder in [
        "lifters",
        "segments",
        "muscles",
        "curves",
        "sarcomeres",
        "movements",
        "bands",
        "chains",
    ] {
        for entry in
            std::fs::read_dir(Path::new("models").join(folder)).expect("models are shipped")
        {
            let path = entry
                .expect("an entry")
                .path()
                .canonicalize()
                .expect("it exists");
            call(&["check", path.to_str().expect("a plain path")]).done();
        }
    }
}

#[test]
fn law_a_fibre_outside_its_living_lengths_is_warned_of() {
    let long = ["--set", "muscles.brachialis.reference.0.fibre_length=0.6"];
    let curve = ["curve", "biceps-curl"];
    let warned = call(&[&curve[..], &long, &["--format", "json"]].concat());
    let warned = warned.done().json();
    let warnings = warned["warnings"].as_array().expect("a list");
    let brachialis = warnings.iter().find(|w| w["muscle"] == "brachialis");
    let brachialis = brachialis.expect("it is told");
    let length = brachialis["fibre_length_norm"].as_f64().expect("a length");
    assert!(!(0.5..=1.6).contains(&length), "{length}");
    let text = call(&[&curve[..], &long].concat());
    assert!(text.out.contains("fibres of brachialis"), "{}", text.out);
}
