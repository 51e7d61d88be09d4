//! Tables as CSV, as workbook and in JSON: the same names, the same numbers; files that are safe to open and are never
//! replaced unasked.

use crate::calling::{call, call_in, json};
use crate::own_files::folder;
use calamine::{Data, Reader, Xlsx, open_workbook};
use serde_json::{Map, Value};
use std::path::Path;

/// A table of texts by column.
struct Cells {
    columns: Vec<String>,
    rows: Vec<Vec<String>>,
}

impl Cells {
    fn read(csv: &str) -> Self {
        let mut reader = csv::ReaderBuilder::new()
            .comment(Some(b'#'))
            .from_reader(csv.as_bytes());
        let columns = reader
            .headers()
            .expect("a header")
            .iter()
            .map(str::to_owned);
        let columns = columns.collect();
        let rows = reader.records().map(|row| {
            let row = row.expect("a row as long as the header");
            row.iter().map(str::to_owned).collect()
        });
        Self {
            columns,
            rows: rows.collect(),
        }
    }

    fn cell(&self, row: usize, column: &str) -> &str {
        let place = self.columns.iter().position(|name| name == column);
        &self.rows[row][place.unwrap_or_else(|| panic!("no {column} in {:?}", self.columns))]
    }
}

#[track_caller]
fn csv(arguments: &[&str]) -> Cells {
    Cells::read(&call(&[arguments, &["--format", "csv"]].concat()).done().out)
}

/// The objects of a list of JSON, each with what stands above it: `a[].b[]` walks into the lists.
fn objects(value: &Value, path: &[&str]) -> Vec<Vec<Map<String, Value>>> {
    let Some((first, rest)) = path.split_first() else {
        return vec![Vec::new()];
    };
    let here = if first.is_empty() {
        value
    } else {
        &value[*first]
    };
    let list: Vec<&Value> = match here {
        Value::Array(list) => list.iter().collect(),
        Value::Object(_) => vec![here],
        _ => Vec::new(),
    };
    let mut found = Vec::new();
    for inner in list {
        let own = inner.as_object().expect("a list of objects").clone();
        for below in objects(inner, rest) {
            let mut whole = vec![own.clone()];
            whole.extend(below);
            found.push(whole);
        }
    }
    found
}

/// What a column of a row holds in JSON: in the innermost object that has it.
fn held<'a>(levels: &'a [Map<String, Value>], column: &str) -> Option<&'a Value> {
    levels.iter().rev().find_map(|level| {
        let mut keys = column.split('.');
        let first = level.get(keys.next()?)?;
        keys.try_fold(first, |value, key| value.get(key))
    })
}

/// Holds every cell of a table to its value in JSON.
#[track_caller]
fn alike(table: &Cells, rows: &[Vec<Map<String, Value>>], beside: &[&str]) {
    assert_eq!(table.rows.len(), rows.len(), "{:?}", table.columns);
    let mut numbers = 0;
    for (index, levels) in rows.iter().enumerate() {
        for column in table
            .columns
            .iter()
            .filter(|name| !beside.contains(&name.as_str()))
        {
            let cell = table.cell(index, column);
            let value = held(levels, column);
            match value {
                None | Some(Value::Null) => assert_eq!(cell, "", "{column} of row {index}"),
                Some(Value::Number(number)) => {
                    let read: f64 = cell.parse().expect("a number");
                    let told = number.as_f64().expect("a number");
                    // The reader of JSON rounds last bits otherwise than that of Rust; `python/check` holds them exactly.
                    approx::assert_relative_eq!(read, told, max_relative = 4.0 * f64::EPSILON);
                    numbers += 1;
                }
                Some(Value::Bool(is)) => assert_eq!(cell, is.to_string()),
                Some(Value::String(text)) => {
                    let guarded = text.starts_with(['=', '+', '-', '@', '\t', '\r']);
                    let told = if guarded {
                        format!("'{text}")
                    } else {
                        text.clone()
                    };
                    assert_eq!(cell, told, "{column} of row {index}");
                }
                Some(Value::Array(list)) => {
                    let words = list.iter().map(|one| match one {
                        Value::String(text) => text.clone(),
                        other => other.to_string(),
                    });
                    assert_eq!(
                        cell,
                        words.collect::<Vec<_>>().join("; "),
                        "{column} of row {index}"
                    );
                }
                Some(Value::Object(_)) => panic!("{column} is an object"),
            }
        }
        // Every plain value of the row's own object has its column.
        for (key, value) in levels.last().expect("a level") {
            if value.is_number() || value.is_string() {
                assert!(table.columns.contains(key), "no column {key}");
            }
        }
    }
    assert!(
        numbers > 0 || table.columns.contains(&"title".to_owned()),
        "no number"
    );
}

#[test]
fn law_csv_holds_the_numbers_of_json_under_the_same_names() {
    let grips = [
        "--param",
        "technique.grip_width",
        "--values",
        "60 cm,81 cm,95 cm",
    ];
    let map = [
        "--param",
        "technique.tuck",
        "--values",
        "15 deg,45 deg",
        "--samples",
        "11",
    ];
    for (call, path, beside) in [
        ("curve bench-press", &["samples"][..], &[][..]),
        ("curve biceps-curl --load 8kg", &["samples"], &[]),
        (
            "curve squat --load 60kg --detail",
            &["samples", "muscles"],
            &[],
        ),
        (
            "curve biceps-curl --detail --speed 60deg/s",
            &["samples", "muscles"],
            &[],
        ),
        ("movements", &[""], &[]),
        ("parameters biceps-curl", &["values"], &[]),
        ("vary biceps-curl --rank", &["values"], &[]),
        ("pick bench-press --gym garage --top 5", &["ranked"], &[]),
        ("rep bench-press --load 90%", &["samples"], &[]),
        ("rep biceps-curl --load 90%", &["samples"], &[]),
        ("max bench-press --velocities", &["load_velocity"], &[]),
        ("max biceps-curl --to-load 20kg", &["summary"], &[]),
        ("max squat --people 12", &["lifters"], &[]),
        (
            "plan bench-press --one-rm 140kg --training-months 48 --method all",
            &["sessions", "sets"],
            &[],
        ),
        ("progress --log stalled", &["sessions"], &[]),
    ] {
        let words: Vec<&str> = call.split(' ').collect();
        let (mut table, json) = (csv(&words), json(&words));
        if call.starts_with("pick") {
            // Plain weight stands first, as rank 0.
            assert_eq!(table.cell(0, "rank"), "0");
            table.rows.remove(0);
        }
        alike(&table, &objects(&json, path), beside);
    }
    let both = [
        "rep",
        "bench-press",
        "--load",
        "80%",
        "--band",
        "loop-22mm:1",
        "--versus-plain",
    ];
    let (table, answer) = (csv(&both), json(&both));
    let rows = [&answer["with"], &answer["plain"]].map(|rep| objects(rep, &["samples"]));
    alike(&table, &rows.concat(), &["compared"]);
    let vary = [&["vary", "bench-press"], &grips[..]].concat();
    let answer = json(&vary);
    let whole = |list: &str| -> Vec<Vec<Map<String, Value>>> {
        let top = answer.as_object().expect("an object").clone();
        let below = objects(&answer, &[list]);
        below
            .into_iter()
            .map(|row| [vec![top.clone()], row].concat())
            .collect()
    };
    let figures = [whole("baseline"), whole("variants")].concat();
    alike_but_for_words(&csv(&vary), &figures);
    let pairs = [&vary[..], &map].concat();
    let answer = json(&pairs);
    let top = answer.as_object().expect("an object").clone();
    let cells = objects(&answer, &["cells"]).into_iter();
    let cells: Vec<_> = cells.map(|row| [vec![top.clone()], row].concat()).collect();
    alike(&csv(&pairs), &cells, &[]);
}

/// As [`alike`], where the row's object also holds sentences and summaries that no table has.
#[track_caller]
fn alike_but_for_words(table: &Cells, rows: &[Vec<Map<String, Value>>]) {
    let without = rows.iter().cloned().map(|mut levels| {
        let own = levels.last_mut().expect("a level");
        own.remove("sentence");
        levels
    });
    alike(table, &without.collect::<Vec<_>>(), &[]);
}

#[test]
fn law_curves_of_varied_values_are_those_of_the_values_themselves() {
    let vary = [
        "vary",
        "biceps-curl",
        "--load",
        "8 kg",
        "--samples",
        "11",
        "--curves",
        "--param",
        "segments.forearm.length",
        "--values",
        "-5%,0%,+5%",
    ];
    let (table, answer) = (csv(&vary), json(&vary));
    // The value as it is stands in the table once, as the baseline.
    let curves = [
        &answer["baseline"],
        &answer["variants"][0],
        &answer["variants"][2],
    ];
    let rows = curves.map(|curve| {
        let own = curve.as_object().expect("a curve").clone();
        let samples = objects(curve, &["samples"]).into_iter();
        samples
            .map(|row| [vec![own.clone()], row].concat())
            .collect::<Vec<_>>()
    });
    alike(&table, &rows.concat(), &["parameter"]);
    assert_eq!(table.cell(0, "is_baseline"), "true");
    assert_eq!(table.cell(11, "value"), "'-5%");
    let longer = csv(&[
        "curve",
        "biceps-curl",
        "--load",
        "8 kg",
        "--samples",
        "11",
        "--set",
        "segments.forearm.length=+5%",
    ]);
    for (index, row) in (22..33).enumerate() {
        for column in ["range", "capacity_nm", "demand_nm", "effort"] {
            assert_eq!(table.cell(row, column), longer.cell(index, column));
        }
    }
}

#[test]
fn law_parts_of_a_change_are_a_row_each_and_add_up() {
    let vary = [
        "vary",
        "biceps-curl",
        "--why",
        "--param",
        "muscles.biceps_long.moment_arm.elbow",
        "--values",
        "+20%",
    ];
    let (table, answer) = (csv(&vary), json(&vary));
    let rows: Vec<_> = objects(&answer, &["variants", "causes", "parts"]);
    alike(&table, &rows, &["parameter"]);
    for cause in answer["variants"][0]["causes"].as_array().expect("causes") {
        let rows = (0..table.rows.len()).filter(|row| table.cell(*row, "place") == cause["place"]);
        let sum: f64 = rows
            .map(|row| table.cell(row, "part_nm").parse::<f64>().expect("a part"))
            .sum();
        let change = &cause["capacity_nm"];
        let change =
            change["after"].as_f64().expect("N·m") - change["before"].as_f64().expect("N·m");
        approx::assert_abs_diff_eq!(sum, change, epsilon = 1.0e-9);
    }
}

#[test]
fn law_the_detail_of_a_muscle_keeps_its_own_sums() {
    let table = csv(&["curve", "bench-press", "--detail", "--samples", "21"]);
    let number = |row, column: &str| table.cell(row, column).parse::<f64>().expect("a number");
    let mut stretched = 0;
    for row in 0..table.rows.len() {
        let force = number(row, "passive_force_n") + number(row, "active_force_n");
        approx::assert_relative_eq!(force, number(row, "force_n"), max_relative = 1.0e-12);
        for joint in ["elbow", "shoulder_horizontal"] {
            let torque = force * number(row, &format!("moment_arm_m.{joint}"));
            let told = number(row, &format!("torque_nm.{joint}"));
            approx::assert_relative_eq!(torque, told, max_relative = 1.0e-9, epsilon = 1.0e-12);
        }
        let pennation = number(row, "pennation_deg");
        assert!((0.0..90.0).contains(&pennation), "{pennation}");
        let strain = number(row, "tendon_strain");
        assert!((0.0..0.2).contains(&strain), "{strain}");
        stretched += usize::from(strain > 0.0);
    }
    let squat = csv(&["curve", "squat", "--detail", "--samples", "5"]);
    let gives = (0..squat.rows.len()).filter(|row| squat.cell(*row, "tendon_strain") != "0.0");
    stretched += gives.count();
    assert!(stretched > 0, "no tendon gives");
}

/// A sheet as texts.
fn sheet(path: &Path, name: &str) -> Cells {
    let mut book: Xlsx<_> = open_workbook(path).expect("a workbook");
    let range = book.worksheet_range(name).expect("the sheet");
    let text = |cell: &Data| match cell {
        Data::Empty => String::new(),
        Data::Float(number) => number.to_string(),
        Data::Bool(is) => is.to_string(),
        Data::String(text) => text.clone(),
        other => panic!("{other:?}"),
    };
    let mut rows = range
        .rows()
        .map(|row| row.iter().map(text).collect::<Vec<_>>());
    Cells {
        columns: rows.next().expect("a header"),
        rows: rows.collect(),
    }
}

#[test]
fn law_a_workbook_holds_what_the_csv_holds() {
    let place = tempfile::tempdir().expect("a folder");
    for (line, head) in [
        ("curve squat --load 60kg --detail --samples 11", "effort"),
        (
            "vary bench-press --param technique.grip_width --values -10%,+10%",
            "value_si",
        ),
        ("rep bench-press --load 90%", "velocity_m_s"),
        ("pick bench-press --gym garage", "share_percent"),
        (
            "plan bench-press --one-rm 140kg --training-months 48 --method clusters",
            "load_kg",
        ),
        ("progress --log stalled", "one_rm_kg"),
        ("movements", "title"),
        ("sources", "citation"),
        ("parameters biceps-curl", "least_is_accepted"),
        ("max squat --people 12", "one_rm_kg"),
        (
            "figure bench-press --load 55kg --versus --load 40kg -o f.svg",
            "setup_number",
        ),
    ] {
        let words: Vec<&str> = line.split(' ').collect();
        for file in ["t.csv", "t.xlsx"] {
            let arguments = [&words[..], &["--data", file, "--force"]].concat();
            call_in(place.path(), &arguments).done();
        }
        let text = std::fs::read_to_string(place.path().join("t.csv")).expect("CSV");
        let csv = Cells::read(&text);
        let book = sheet(&place.path().join("t.xlsx"), "data");
        assert!(
            csv.columns.contains(&head.to_owned()),
            "{line}: {:?}",
            csv.columns
        );
        let with_chart = ["curve", "plan", "progress"].contains(&words[0]);
        let names = open_workbook::<Xlsx<_>, _>(place.path().join("t.xlsx"))
            .expect("a workbook")
            .sheet_names();
        assert_eq!(names.contains(&"chart".to_owned()), with_chart, "{line}");
        assert_eq!(csv.columns, book.columns, "{line}");
        assert_eq!(csv.rows.len(), book.rows.len(), "{line}");
        let mut numbers = 0;
        for (ours, theirs) in csv.rows.iter().flatten().zip(book.rows.iter().flatten()) {
            match (ours.parse::<f64>(), theirs.parse::<f64>()) {
                (Ok(ours), Ok(theirs)) => {
                    approx::assert_relative_eq!(ours, theirs, max_relative = 1.0e-14);
                    numbers += 1;
                }
                _ => assert_eq!(ours, theirs, "{line}"),
            }
        }
        assert!(
            numbers > 0 || line == "movements" || line == "sources",
            "{line}"
        );
        let made = sheet(&place.path().join("t.xlsx"), "provenance");
        assert_eq!(made.cell(0, "key"), "program");
        let told = text
            .lines()
            .find_map(|line| line.strip_prefix("# command: "));
        let row = (0..made.rows.len()).find(|row| made.cell(*row, "key") == "command");
        assert_eq!(told, row.map(|row| made.cell(row, "value")));
        let meanings = sheet(&place.path().join("t.xlsx"), "columns");
        assert_eq!(meanings.rows.len(), csv.columns.len(), "{line}");
    }
    let book = std::fs::read(place.path().join("t.xlsx")).expect("bytes");
    let again = [
        "figure",
        "bench-press",
        "--load",
        "55kg",
        "--versus",
        "--load",
        "40kg",
        "-o",
        "f.svg",
    ];
    call_in(
        place.path(),
        &[&again[..], &["--data", "u.xlsx", "--force"]].concat(),
    )
    .done();
    assert_eq!(
        book,
        std::fs::read(place.path().join("u.xlsx")).expect("bytes")
    );
}

#[test]
fn law_a_data_file_says_how_it_is_printed_again() {
    let place = tempfile::tempdir().expect("a folder");
    for line in [
        "curve squat --load 60kg --detail --samples 11",
        "vary biceps-curl --curves --samples 5 --param segments.forearm.length --values -5%,+5%",
        "vary biceps-curl --why --samples 5 --param segments.forearm.length --values -5%,+5%",
        "rep bench-press --load 80% --band loop-22mm:1 --versus-plain",
        "plan bench-press --one-rm 140kg --training-months 48 --method clusters",
        "movements",
    ] {
        let words: Vec<&str> = line.split(' ').collect();
        let wanted = ["--data", "t.csv", "--force"];
        call_in(place.path(), &[&words[..], &wanted].concat()).done();
        let written = std::fs::read_to_string(place.path().join("t.csv")).expect("CSV");
        let again = call_in(place.path(), &["again", "t.csv"]).done();
        assert_eq!(again.out, written, "{line}");
    }
}

#[test]
fn law_no_cell_is_taken_for_a_formula() {
    let models = folder(&[(
        "movements/evil.ron",
        "Movement(extends: \"biceps-curl\", title: \"=HYPERLINK(\\\"x\\\")\")",
    )]);
    let own = ["movements", "--models", "."];
    for file in ["m.csv", "m.xlsx"] {
        call_in(models.path(), &[&own[..], &["--data", file]].concat()).done();
    }
    let csv = std::fs::read_to_string(models.path().join("m.csv")).expect("CSV");
    let book = sheet(&models.path().join("m.xlsx"), "data");
    for table in [Cells::read(&csv), book] {
        let titles: Vec<&str> = (0..table.rows.len())
            .map(|row| table.cell(row, "title"))
            .collect();
        assert!(titles.contains(&"'=HYPERLINK(\"x\")"), "{titles:?}");
    }
    // Formulas of the workbook itself: none.
    let mut book: Xlsx<_> = open_workbook(models.path().join("m.xlsx")).expect("a workbook");
    for name in ["data", "columns", "provenance"] {
        let formulas = book.worksheet_formula(name).expect("the sheet");
        assert!(formulas.rows().flatten().all(String::is_empty), "{name}");
    }
}

#[test]
fn fault_a_data_file_is_not_replaced_and_ends_as_it_should() {
    let place = tempfile::tempdir().expect("a folder");
    let curve = ["curve", "biceps-curl", "--data"];
    let written = place.path().join("a.csv");
    std::fs::write(&written, "mine").expect("a file");
    for (file, told) in [
        ("a.csv", "`a.csv` exists"),
        ("a.txt", "a.csv"),
        ("a", "write a.csv"),
        ("gone/a.csv", "`gone` does not exist"),
        (".", "folder"),
    ] {
        let answer = call_in(place.path(), &[&curve[..], &[file]].concat());
        assert_eq!((answer.status, answer.out.as_str()), (2, ""), "{file}");
        assert!(answer.complaint.contains(told), "{}", answer.complaint);
    }
    assert_eq!(std::fs::read_to_string(&written).expect("a file"), "mine");
    call_in(place.path(), &[&curve[..], &["a.csv", "--force"]].concat()).done();
    assert!(
        std::fs::read_to_string(&written)
            .expect("a file")
            .contains("capacity_nm")
    );
    // A picture that cannot be written leaves no data behind.
    let both = [
        "figure",
        "biceps-curl",
        "-o",
        "gone/f.svg",
        "--data",
        "b.csv",
    ];
    assert_eq!(call_in(place.path(), &both).status, 2);
    assert!(!place.path().join("b.csv").exists());
    // A file that says so does not make `again` write.
    let asks = "{\"provenance\": {\"program\": \"torquill\", \"arguments\": [\"curve\", \"biceps-curl\", \"--data\", \"c.csv\"]}}";
    std::fs::write(place.path().join("asks.json"), asks).expect("a file");
    assert_eq!(call_in(place.path(), &["again", "asks.json"]).status, 2);
    assert!(!place.path().join("c.csv").exists());
}
