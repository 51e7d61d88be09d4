//! The dictionary of `models/DATA.md` against what the commands answer: every key of JSON and every column of CSV has
//! its row, every row is met, units in names are those of the rows.
//!
//! `UPDATE=1` renews the column that says which commands answer a name.

use crate::calling::{call, call_in, json};
use crate::own_files::folder;
use serde_json::Value;
use std::collections::{BTreeMap, BTreeSet};

const PLACE: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/models/DATA.md");

/// Calls that answer all names together.
#[rustfmt::skip]
const CALLS: &[&str] = &[
    "movements",
    "movements --provenance",
    "sources",
    "sources --provenance",
    "curve bench-press --load|80 kg --detail",
    "curve biceps-curl --load|8 kg --detail",
    "curve leg-press --load|100 kg --detail",
    "curve hip-thrust --load|60 kg --detail",
    "curve wide-stance",
    "figure bench-press --output f.svg --data f.csv --load|55 kg --versus --load|40 kg",
    "vary bench-press --param technique.grip_width --values 60cm,81cm --curves",
    "vary biceps-curl --load|8 kg --param segments.forearm.length --values -5%,+5%",
    "vary biceps-curl --param segments.forearm.length --values -5%,+5% --why",
    "vary biceps-curl --param segments.forearm.length --values -5%,+5% --param technique.shoulder_angle --values|-20 deg,20 deg",
    "vary biceps-curl --measure heaviest --param segments.forearm.length --values -5%,+5% --param technique.shoulder_angle --values|-20 deg,20 deg",
    "vary bench-press --load|40 kg --measure heaviest --param technique.grip_width --values 60cm,81cm --param technique.tuck --values 15deg,45deg --samples 11",
    "vary biceps-curl --rank",
    "parameters bench-press",
    "pick bench-press --gym garage",
    "pick bench-press --lifter heavy-lifter --gym college-weight-room",
    "rep overhead-press --load 90%",
    "rep biceps-curl --load 90%",
    "rep bench-press --load 80% --band loop-22mm:1 --versus-plain",
    "max bench-press --velocities --eccentric|3 s --to-load|102.5 kg",
    "max bench-press",
    "max biceps-curl --velocities",
    "max squat --people 12",
    "curve bench-press --people 3",
    "curve biceps-curl --people 3",
    "fit --name a --sex woman --mass|70 kg --height|168 cm --lift bench-press=50kg --trace squat=75kg@invented-squat --output a.ron --force",
    "max biceps-curl --lifter a.ron --scatter",
    "curve bench-press --lifter a.ron --scatter",
    "curve biceps-curl --lifter a.ron --scatter",
    "plan bench-press --one-rm|140 kg --training-months 48 --method clusters",
    "plan bench-press --one-rm|140 kg --training-months 48 --method overloaded-lowering",
    "plan bench-press --one-rm|140 kg --method all",
    "progress --log stalled",
    "progress --log bad.csv --skip-bad-rows",
    "progress --log notes.csv",
    "plan squat --team team.csv --output sheets --force",
];

/// Objects whose keys are names of joints or muscles, not of quantities.
const BY_NAME: &[&str] = &[
    "joint_angles_deg",
    "joint_torques_nm",
    "muscle_torques_nm",
    "load_lever_m",
    "moment_arm_m",
    "torque_nm",
    "muscle_forces_n",
    "least_capacity_share",
];

/// The words of a call: blanks part them, but for the value behind a bar.
fn arguments(line: &str) -> Vec<String> {
    let mut found = Vec::new();
    for part in line.split(" --") {
        let option = if found.is_empty() {
            part.to_owned()
        } else {
            format!("--{part}")
        };
        match option.split_once('|') {
            Some((name, value)) => found.extend([name.to_owned(), value.to_owned()]),
            None => found.extend(option.split(' ').map(str::to_owned)),
        }
    }
    found
}

/// Every key of a value that is a name of the dictionary.
fn keys(value: &Value, inside: &str, names: &mut BTreeSet<String>) {
    match value {
        Value::Object(map) => {
            let by_name = BY_NAME.contains(&inside)
                || inside == "weights"
                || (inside == "sources" && map.values().all(Value::is_object));
            for (key, inner) in map {
                let is_ends = key == "before" || key == "after";
                if by_name && !(is_ends && inside == "weights") {
                    // Names of joints and muscles; what stands below them is told.
                    keys(inner, "*", names);
                } else {
                    names.insert(key.clone());
                    let below = if is_ends && inside == "weights" {
                        "weights"
                    } else {
                        key
                    };
                    keys(inner, below, names);
                }
            }
        }
        Value::Array(list) => list.iter().for_each(|inner| keys(inner, inside, names)),
        _ => {}
    }
}

/// The names of a header of CSV: of `moment_arm_m.elbow` the part before the dot, of `reactions.bench_n` both.
fn columns(csv: &str, names: &mut BTreeSet<String>) {
    let mut reader = csv::ReaderBuilder::new()
        .comment(Some(b'#'))
        .from_reader(csv.as_bytes());
    for column in reader.headers().expect("a header") {
        let (first, rest) = column.split_once('.').unwrap_or((column, ""));
        names.insert(first.to_owned());
        if !rest.is_empty() && !BY_NAME.contains(&first) {
            names.insert(rest.to_owned());
        }
    }
}

/// Every name with the commands that answer it.
fn answered() -> BTreeMap<String, BTreeSet<String>> {
    let models = folder(&[
        (
            "movements/wide-stance.ron",
            "Movement(extends: \"squat\", title: \"Squat, wide\")",
        ),
        (
            "bad.csv",
            "date,lift,load,repetitions\n2026-03-02,squat,100 kg,5\n2026-03-09,squat,much,5\n\
             2026-03-16,squat,105 kg,5\n2026-03-23,squat,107.5 kg,4\n",
        ),
        ("notes.csv", include_str!("../logs/notes.csv")),
        (
            "team.csv",
            "name,sex,mass (kg),height (cm),squat (kg)\nMia (invented),woman,64,168,60\n",
        ),
    ]);
    let mut found: BTreeMap<String, BTreeSet<String>> = BTreeMap::new();
    for line in CALLS {
        let mut words = arguments(line);
        if line.contains("wide-stance") {
            words.extend(["--models".to_owned(), ".".to_owned()]);
        }
        let command = words[0].clone();
        let mut names = BTreeSet::new();
        if command == "figure" {
            let words: Vec<&str> = words.iter().map(String::as_str).collect();
            call_in(models.path(), &words).done();
            let written = std::fs::read_to_string(models.path().join("f.csv"));
            columns(&written.expect("the data are written"), &mut names);
            found_by(&mut found, names, &command);
            continue;
        }
        for format in ["json", "csv"] {
            let mut words: Vec<&str> = words.iter().map(String::as_str).collect();
            words.extend(["--format", format]);
            let out = call_in(models.path(), &words).out;
            if format == "csv" {
                columns(&out, &mut names);
            } else {
                let value: Value =
                    serde_json::from_str(&out).unwrap_or_else(|e| panic!("{line}: {e}"));
                let root = if *line == "sources" { "sources" } else { "" };
                keys(&value, root, &mut names);
            }
        }
        found_by(&mut found, names, &command);
    }
    found
}

/// Notes which command answers these names.
fn found_by(
    found: &mut BTreeMap<String, BTreeSet<String>>,
    names: BTreeSet<String>,
    command: &str,
) {
    for name in names {
        found.entry(name).or_default().insert(command.to_owned());
    }
}

/// A row of the dictionary.
struct Row<'a> {
    name: &'a str,
    unit: &'a str,
    meaning: &'a str,
    commands: &'a str,
}

fn row(line: &str) -> Option<Row<'_>> {
    let cells: Vec<&str> = line
        .strip_prefix("| `")?
        .split('|')
        .map(str::trim)
        .collect();
    let [name, unit, meaning, commands, ""] = cells[..] else {
        panic!("`{line}` has not four cells");
    };
    Some(Row {
        name: name.trim_end_matches('`'),
        unit,
        meaning,
        commands,
    })
}

#[test]
fn law_every_name_of_json_and_csv_is_in_the_dictionary_and_none_else() {
    let text = std::fs::read_to_string(PLACE).expect("models/DATA.md can be read");
    let found = answered();
    let mut told = BTreeSet::new();
    let (mut wrong, mut renewed) = (Vec::new(), String::new());
    for line in text.lines() {
        let Some(row) = row(line) else {
            renewed += line;
            renewed.push('\n');
            continue;
        };
        if !told.insert(row.name) {
            wrong.push(format!("{} stands twice", row.name));
        }
        let by: Vec<&str> = found
            .get(row.name)
            .into_iter()
            .flatten()
            .map(String::as_str)
            .collect();
        // What says how an output was made is in all of them.
        let by = match by.len() {
            0 => {
                wrong.push(format!("{} is answered by no call", row.name));
                String::new()
            }
            8.. => "all".to_owned(),
            _ => by.join(", "),
        };
        if row.commands != by {
            wrong.push(format!("{}: {} instead of {by}", row.name, row.commands));
        }
        renewed += &format!(
            "| `{}` | {} | {} | {by} |\n",
            row.name, row.unit, row.meaning
        );
    }
    for (name, commands) in &found {
        if !told.contains(name.as_str()) {
            wrong.push(format!("{name} of {commands:?} is not told"));
        }
    }
    if std::env::var_os("UPDATE").is_some() {
        std::fs::write(PLACE, renewed).expect("models/DATA.md can be written");
        wrong.retain(|line| !line.contains(" instead of "));
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn law_the_unit_in_a_name_is_that_of_its_row() {
    let units = [
        ("_m_s2", "m/s²"),
        ("_rad_s2", "rad/s²"),
        ("_rad_s", "rad/s"),
        ("_kg_s_per_m", "kg·s/m"),
        ("_m_s", "m/s"),
        ("_kg_per_week", "kg/week"),
        ("_percent_of_range", "% of the range"),
        ("_percent", "%"),
        ("_deg", "deg"),
        ("_nm", "N·m"),
        ("_kg", "kg"),
        ("_lb", "lb"),
        ("_n", "N"),
        ("_m", "m"),
        ("_w", "W"),
        ("_s", "s"),
    ];
    let text = std::fs::read_to_string(PLACE).expect("models/DATA.md can be read");
    let rows: Vec<Row<'_>> = text.lines().filter_map(row).collect();
    let mut checked = 0;
    for row in &rows {
        assert!(!row.meaning.is_empty(), "{} means nothing", row.name);
        // The object of changes per 1 % of a parameter is none of percents.
        let suffix = units.iter().find(|(suffix, _)| row.name.ends_with(suffix));
        if let Some((_, unit)) = suffix.filter(|_| row.name != "sensitivity_per_percent") {
            assert!(row.unit.starts_with(unit), "{}: {}", row.name, row.unit);
            checked += 1;
        }
    }
    assert!(checked > 80, "{checked} units");
}

#[test]
fn regress_the_dictionary_is_of_the_present_contract() {
    let text = std::fs::read_to_string(PLACE).expect("models/DATA.md can be read");
    let version = &json(&["curve", "biceps-curl"])["contract_version"];
    assert!(text.contains(&format!("this is of version {version}")));
    assert!(call(&["curve", "--help"]).out.contains("--data <FILE>"));
}
