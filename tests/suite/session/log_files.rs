//! Logs as spreadsheets and phones write them, and broken ones with the message that each gets, word for word.
//!
//! `tests/logs/NAME` is read; `tests/logs/bad/NAME.csv` is refused with `NAME.expected`; `UPDATE=1` rewrites those.

use std::fmt::Write as _;
use std::path::{Path, PathBuf};
use torquill::cli::render;
use torquill::error::Error;
use torquill::library::Library;
use torquill::narrative::log_words::{note_in_words, profile_in_words};
use torquill::progress::log_file::{BadRows, LogReading, read_log};
use torquill::progress::log_note::LogNote;
use torquill::progress::verdict::Verdict;
use torquill::study::{LogChoice, LogStudy, log_study};
use torquill::units::System;

fn library() -> &'static Library {
    static LIBRARY: std::sync::LazyLock<Library> = std::sync::LazyLock::new(Library::built_in);
    &LIBRARY
}

fn named(name: &str) -> LogChoice {
    LogChoice {
        name: name.to_owned(),
        ..LogChoice::default()
    }
}

fn choice(file: &str) -> LogChoice {
    named(&format!("tests/logs/{file}"))
}

fn studied(choice: &LogChoice, lift: Option<&str>) -> LogStudy<'static> {
    log_study(library(), choice, lift).unwrap_or_else(|error| panic!("{}", words(&error)))
}

fn words(error: &Error) -> String {
    render(error, System::Metric, false)
}

fn notes(study: &LogStudy) -> String {
    let notes: Vec<String> = study.log.notes.iter().map(note_in_words).collect();
    notes.join("\n")
}

#[test]
fn regress_a_spreadsheet_with_semicolons_and_decimal_commas() {
    let study = studied(&choice("spreadsheet.csv"), None);
    assert_eq!(study.trend.lift, "squat");
    // Ten days of a warm-up set, a top set and three sets of five in one row.
    assert_eq!(study.log.entries.len(), 50);
    assert_eq!(study.log.entries[1].load.as_kg(), 99.5);
    assert_eq!(study.log.entries[0].day.to_string(), "2026-01-05");
    assert_eq!(study.trend.verdict, Verdict::Rising);
    let notes = notes(&study);
    assert!(notes.contains("column not used: `Set`"), "{notes}");
    assert!(
        notes.contains("dates are read day-first, which line 10 proves"),
        "{notes}"
    );
    assert!(notes.contains("\"Back squat\" as squat"), "{notes}");
    assert!(notes.contains("rows such as 3x5"), "{notes}");
}

#[test]
fn regress_a_phone_export_with_ten_columns_nobody_needs() {
    let study = studied(&choice("phone.csv"), Some("bench press"));
    assert_eq!(study.trend.lift, "bench-press");
    assert_eq!(study.trend.sessions.len(), 18);
    assert_eq!(study.log.entries[0].load.as_kg(), 81.25);
    assert_eq!(study.log.entries[0].reserve, Some(2.0));
    let notes = notes(&study);
    let ignored = notes.lines().next().expect("a note");
    assert_eq!(ignored.matches('`').count(), 2 * 10, "{ignored}");
    assert!(notes.contains("10 less the rating of exertion"), "{notes}");
    let error = log_study(library(), &choice("phone.csv"), None).expect_err("two lifts");
    assert!(words(&error).contains("bench-press (54 sets), lateral-raise (18 sets)"));
}

#[test]
fn regress_us_dates_and_pounds_parted_by_tabs() {
    let study = studied(&choice("us_dates_lb.tsv"), None);
    assert_eq!(study.log.entries.len(), 24);
    assert_eq!(study.log.entries[0].day.to_string(), "2026-03-02");
    assert!((study.log.entries[0].load.as_lb() - 315.0).abs() < 1e-9);
    assert!(notes(&study).contains("month-first, which line 4 proves (`3/16/2026`)"));
}

#[test]
fn regress_notes_with_line_breaks_and_a_profile_of_their_velocities() {
    let study = studied(&choice("notes.csv"), None);
    assert_eq!(study.log.entries.len(), 36);
    // The file was made with a true line: 20 kg apart, 0.185 m/s apart.
    let profile = study.profile.as_ref().expect("velocities are noted");
    let found = profile.as_ref().expect("the loads are far apart");
    assert!((found.slope_kg_s_m + 108.0).abs() < 10.0, "{found:?}");
    assert!(found.r_squared > 0.95);
    let told = profile_in_words(profile, System::Metric).join("\n");
    assert!(
        told.contains("Load-velocity profile of 36 sets with a velocity"),
        "{told}"
    );
    assert!(told.contains("standard error"), "{told}");
    let lines: Vec<usize> = study.log.entries.iter().map(|set| set.line).collect();
    assert_eq!(lines[..4], [3, 4, 5, 7]);
}

#[test]
fn fault_several_athletes_are_told_apart_by_name() {
    let verdicts = [
        ("mia invented", Verdict::Rising),
        ("Ayo Invented ", Verdict::Falling),
    ];
    for (athlete, verdict) in verdicts {
        let mine = LogChoice {
            athlete: Some(athlete.to_owned()),
            ..choice("athletes.csv")
        };
        assert_eq!(studied(&mine, None).trend.verdict, verdict, "{athlete}");
    }
    let nobody = LogChoice {
        athlete: Some("Eve".to_owned()),
        ..choice("athletes.csv")
    };
    let error = log_study(library(), &nobody, None).expect_err("nobody of that name");
    assert!(
        words(&error).contains("athletes in it: Ayo Invented (6 sets)"),
        "{}",
        words(&error)
    );
    let error = log_study(library(), &choice("athletes.csv"), None).expect_err("three athletes");
    assert!(words(&error).contains("name one of them with --athlete"));
}

#[test]
fn law_ten_thousand_rows_are_read() {
    let mut text = String::from("Date;Exercise;Load (kg);Reps;Remark\n");
    for row in 0..10_000 {
        let (day, set) = (row / 10, row % 10);
        let (year, month, date) = (1990 + day / 336, 1 + day / 28 % 12, 1 + day % 28);
        let kg = 60.0 + 0.02 * f64::from(day) + f64::from(set);
        let kg = format!("{kg:.2}").replace('.', ",");
        let _ = writeln!(
            text,
            "{year}-{month:02}-{date:02};squat;{kg};5;\"row {row}; set {set}\""
        );
    }
    let folder = tempfile::tempdir().expect("a folder");
    let file = folder.path().join("long.csv");
    std::fs::write(&file, &text).expect("it can be written");
    let study = studied(&named(&file.display().to_string()), None);
    assert_eq!(study.log.entries.len(), 10_000);
    assert_eq!(study.trend.sessions.len(), 1000);
    assert_eq!(study.log.entries.last().map(|set| set.line), Some(10_001));
}

#[test]
fn fault_bad_rows_of_a_large_log_share_its_text() {
    let text = "date,lift,load,repetitions\n".to_owned() + &"soon,squat,heavy,x\n".repeat(300_000);
    let error = read_log("log.csv", &text, &LogReading::default()).expect_err("all bad");
    assert!(error.faults().len() <= 26, "{}", error.faults().len());
    let places: Vec<_> = error
        .faults()
        .iter()
        .filter_map(|f| f.place.as_ref())
        .collect();
    assert!(
        places
            .windows(2)
            .all(|pair| std::sync::Arc::ptr_eq(&pair[0].text, &pair[1].text))
    );
    assert!(words(&error).ends_with("leave bad rows out with --skip-bad-rows"));
    let some = format!(
        "date,lift,load,repetitions\n2026-03-02,squat,100 kg,5\n{}",
        "soon,squat,1 kg,5\n".repeat(99)
    );
    let reading = LogReading {
        bad_rows: BadRows::LeftOut,
        ..LogReading::default()
    };
    let log = read_log("log.csv", &some, &reading).expect("one good row");
    assert_eq!(
        (log.entries.len(), log.skipped.len(), log.skipped_more),
        (1, 25, 74)
    );
}

#[test]
fn law_utf_16_of_spreadsheets_is_read() {
    let folder = tempfile::tempdir().expect("a folder");
    let file = folder.path().join("wide.csv");
    let text = "\u{feff}date\tlift\tload (kg)\treps\n2026-03-02\tsquat\t100\t5\n2026-03-09\tsquat\t102\t5\n";
    let bytes: Vec<u8> = text.encode_utf16().flat_map(u16::to_le_bytes).collect();
    std::fs::write(&file, bytes).expect("it can be written");
    let study = studied(&named(&file.display().to_string()), None);
    assert_eq!(study.log.entries.len(), 2);
}

fn bad_files(extension: &str) -> Vec<PathBuf> {
    let folder = std::fs::read_dir("tests/logs/bad").expect("the folder is in the repository");
    let paths = folder.map(|file| file.expect("a file can be listed").path());
    let mut files: Vec<PathBuf> = paths
        .filter(|path| path.extension().is_some_and(|found| found == extension))
        .collect();
    files.sort();
    files
}

fn message(path: &Path) -> String {
    let choice = named(&path.display().to_string());
    let error = log_study(library(), &choice, None)
        .err()
        .unwrap_or_else(|| panic!("{} must be refused", path.display()));
    assert_eq!(error.exit_status(), 2, "{}", path.display());
    (words(&error) + "\n").replace('\\', "/")
}

#[test]
fn fault_each_broken_log_gets_its_message() {
    let update = std::env::var_os("UPDATE").is_some();
    let (mut wrong, files) = (String::new(), bad_files("csv"));
    assert!(files.len() >= 10);
    for path in &files {
        let expected = path.with_extension("expected");
        let message = message(path);
        assert!(
            message.contains("hint:") || message.contains("no sets"),
            "{message}"
        );
        if update {
            std::fs::write(&expected, &message).expect("the message can be written");
        } else if std::fs::read_to_string(&expected).ok().as_ref() != Some(&message) {
            let _ = writeln!(wrong, "{}:\n{message}", path.display());
        }
    }
    assert!(
        wrong.is_empty(),
        "other messages than pinned (UPDATE=1 rewrites):\n{wrong}"
    );
    let stems = |extension| -> Vec<PathBuf> {
        bad_files(extension)
            .iter()
            .map(|path| path.with_extension(""))
            .collect()
    };
    assert_eq!(stems("csv"), stems("expected"));
}

#[test]
fn fault_told_dates_make_two_days_one() {
    for (order, day) in [
        (torquill::error::DateOrder::DayFirst, "2026-08-01"),
        (torquill::error::DateOrder::MonthFirst, "2026-01-08"),
    ] {
        let told = LogChoice {
            dates: Some(order),
            ..choice("bad/two_days.csv")
        };
        assert_eq!(studied(&told, None).log.entries[0].day.to_string(), day);
    }
}

fn read_text(text: &str) -> torquill::progress::training_log::Log {
    read_log("log.csv", text, &LogReading::default()).expect("a log")
}

#[test]
fn law_headings_of_other_languages_are_read() {
    let log = read_text(
        "Datum;Übung;Gewicht (kg);Wiederholungen;Bemerkung\n2026-03-02;Bankdrücken;82,5;5;leicht\n",
    );
    assert_eq!(log.entries.len(), 1);
    assert!((log.entries[0].load.as_kg() - 82.5).abs() < 1.0e-9);
    let log =
        read_text("fecha,ejercicio,peso (kg),series,repeticiones\n2026-03-02,sentadilla,100,3,5\n");
    assert_eq!(log.entries.len(), 3);
    // Sets by a column are no rows such as 3x5.
    assert!(
        !log.notes.contains(&LogNote::SetsByRepetitions),
        "{:?}",
        log.notes
    );
}

/// "Tag" is German for day and English for a mark; "Datum" and "Tag" of a German log are date and weekday.
#[test]
fn law_an_english_heading_wins_over_a_foreign_one_and_the_first_date_over_another() {
    let row = "2026-03-02,squat,100 kg,5";
    for (text, ignored) in [
        (format!("Tag,Date,Exercise,Load,Reps\nheavy,{row}\n"), "Tag"),
        (format!("Date,Exercise,Load,Reps,Tag\n{row},heavy\n"), "Tag"),
        (
            format!("Datum,Übung,Gewicht,Wdh,Tag\n{row},Montag\n"),
            "Tag",
        ),
        (
            format!("Date,Exercise,Load,Reps,Gewicht\n{row},70\n"),
            "Gewicht",
        ),
    ] {
        let log = read_text(&text);
        assert_eq!(log.entries[0].day.to_string(), "2026-03-02", "{text}");
        assert_eq!(log.entries[0].load.as_kg(), 100.0, "{text}");
        let named = LogNote::ColumnsIgnored(vec![ignored.to_owned()]);
        assert!(log.notes.contains(&named), "{text}{:?}", log.notes);
    }
    for text in [
        format!("Date,Exercise,Load,Reps,Date\n{row},2026-03-03\n"),
        format!("Datum,Übung,Gewicht,Wdh,Last\n{row},90 kg\n"),
    ] {
        let refused = read_log("log.csv", &text, &LogReading::default());
        let error = refused.expect_err("two columns for one thing");
        assert!(words(&error).contains("are both read as the"), "{text}");
    }
}

/// Rows of a sheet that nobody has filled in are passed over with one note; in another log they stay a fault.
#[test]
fn law_rows_that_are_not_done_yet_are_passed_over() {
    let rows =
        "2026-03-02,squat,100 kg,5,\n2026-03-05,squat,102.5 kg,,\n2026-03-09,squat,105 kg,,\n";
    let log = read_text(&format!("date,lift,load,repetitions done,reserve\n{rows}"));
    assert_eq!(log.entries.len(), 1);
    assert!(
        log.notes.contains(&LogNote::NotDoneYet(2)),
        "{:?}",
        log.notes
    );
    let other = format!("date,lift,load,repetitions,reserve\n{rows}");
    assert!(read_log("log.csv", &other, &LogReading::default()).is_err());
}
