//! The training log: what is read, what is refused and in which words; days; lifts.

use proptest::prelude::*;
use torquill::error::Error;
use torquill::library::Library;
use torquill::movement::lift_name;
use torquill::narrative::faults::told;
use torquill::narrative::progress_words::{odd_rows_in_words, why_left_out};
use torquill::progress::day::Day;
use torquill::progress::estimate::estimate;
use torquill::progress::lift_facts::LiftFacts;
use torquill::progress::log_file::{BadRows, LogReading, read_log};
use torquill::progress::training_log::Log;
use torquill::units::{Mass, System};

const HEAD: &str = "date,lift,load,repetitions,velocity,reserve\n";

fn strict() -> LogReading {
    LogReading {
        names: Library::built_in().lift_names(),
        ..LogReading::default()
    }
}

fn skip() -> LogReading {
    LogReading {
        bad_rows: BadRows::LeftOut,
        ..strict()
    }
}

fn read(rows: &str) -> Result<Log, Error> {
    read_log("log.csv", &format!("{HEAD}{rows}"), &strict())
}

/// Messages and next moves of an error.
fn words(error: &Error) -> String {
    let told = error
        .faults()
        .iter()
        .map(|fault| told(fault, System::Metric));
    let lines: Vec<String> = told
        .flat_map(|told| std::iter::once(told.message).chain(told.hints))
        .collect();
    lines.join("\n")
}

fn notices(log: &Log) -> Vec<String> {
    log.odd.iter().map(odd_rows_in_words).collect()
}

fn refused(rows: &str) -> String {
    let error = read(rows).expect_err("the row is bad");
    assert_eq!(error.exit_status(), 2);
    words(&error)
}

#[test]
fn regress_a_row_is_read_with_its_units() {
    let log =
        read("2024-03-01,Bench Press,225 lb,5,0.35 m/s,1.5\n2024-03-04,bench_press,100 kg,3,,\n")
            .expect("good rows");
    assert_eq!(log.lifts(), [("bench-press".to_owned(), 2)]);
    let first = &log.entries[0];
    assert!((first.load.as_kg() - 102.058).abs() < 1e-3);
    assert_eq!(
        (first.line, first.repetitions, first.reserve),
        (2, 5, Some(1.5))
    );
    assert_eq!(first.velocity.expect("noted").as_m_s(), 0.35);
    assert_eq!(log.entries[1].reserve, None);
    assert!(log.odd.is_empty() && log.skipped.is_empty());
}

#[test]
fn regress_remarks_quotes_semicolons_and_marks_of_other_programs_are_read() {
    let text = "\u{feff}# mine\r\nDay;Exercise;Weight;Reps;Note\r\n2024-03-01;\"Squat\";\"100 kg\";5;\"good; \"\"fast\"\"\"\r\n\r\n# end\r\n";
    let log = read_log("log.csv", text, &strict()).expect("a good file");
    assert_eq!(log.entries.len(), 1);
    assert_eq!(
        (log.entries[0].lift.as_str(), log.entries[0].line),
        ("squat", 3)
    );
}

#[test]
fn fault_every_bad_row_is_named_by_line_with_what_is_wrong() {
    for (row, says) in [
        ("1.3,squat,100 kg,5,,", "line 2: `1.3` is no date"),
        (
            "1/3/2024,squat,100 kg,5,,",
            "line 2: `1/3/2024` may be two days",
        ),
        ("2024-02-30,squat,100 kg,5,,", "that month has 29 days"),
        ("2024-13-01,squat,100 kg,5,,", "no month 13"),
        ("1824-01-01,squat,100 kg,5,,", "the year 1824"),
        ("2024-03-01,squat,100,5,,", "`100` has no unit"),
        ("2024-03-01,squat,-5 kg,5,,", "-5 kg"),
        ("2024-03-01,squat,0 kg,5,,", "`0 kg` is no set"),
        ("2024-03-01,squat,10000 kg,5,,", "more than anybody lifts"),
        ("2024-03-01,squat,100 cm,5,,", "units of mass are kg"),
        (
            "2024-03-01,squat,100 kg,five,,",
            "`five` is no number of repetitions",
        ),
        (
            "2024-03-01,squat,100 kg,5.5,,",
            "`5.5` is no number of repetitions",
        ),
        (
            "2024-03-01,squat,100 kg,-5,,",
            "`-5` is no number of repetitions",
        ),
        ("2024-03-01,squat,100 kg,5000,,", "5000 repetitions"),
        ("2024-03-01,squat,100 kg,5,9 m/s,", "no mean velocity"),
        ("2024-03-01,squat,100 kg,5,0.3,", "has no unit"),
        ("2024-03-01,squat,100 kg,5,,-1", "`-1` is no reserve"),
        ("2024-03-01,squat,100 kg,5,,NaN", "`NaN` is no reserve"),
        ("2024-03-01,squat,100 kg", "the row has no repetitions"),
        ("2024-03-01,,100 kg,5,,", "the row has no lift"),
        (
            "2024-03-01,squat,102,5 kg,5,,3",
            "the row has 7 fields, the header 6",
        ),
        ("2024-03-01,squat,\"1,000 kg\",5,,", "decimals or thousands"),
        (
            "2024-03-01,squat,100 kg,60x5,,",
            "`60x5` is no number of sets",
        ),
    ] {
        let message = refused(row);
        assert!(message.contains(says), "{row}: {message}");
    }
}

#[test]
fn fault_all_bad_rows_are_collected_with_their_places() {
    let rows = "2024-03-01,squat,100 kg,5,,\n2024-03-02,squat,heavy,x,,\n2024-03-03,squat,100 kg,5,,\nsoon,squat,100 kg,5,,\n";
    let error = read(rows).expect_err("two bad rows");
    assert_eq!(error.faults().len(), 3);
    let places: Vec<_> = error
        .faults()
        .iter()
        .map(|f| f.place.as_ref().expect("a place").start)
        .collect();
    assert_eq!(places, [(3, 18), (3, 24), (5, 1)]);
    let log =
        read_log("log.csv", &format!("{HEAD}{rows}"), &skip()).expect("two good rows are left");
    assert_eq!(log.entries.len(), 2);
    assert_eq!(
        log.skipped.iter().map(|row| row.line).collect::<Vec<_>>(),
        [3, 5]
    );
    assert!(why_left_out(&log.skipped[0], System::Metric).contains("`x` is no number"));
    let all_bad = read_log(
        "log.csv",
        &format!("{HEAD}soon,squat,100 kg,5,,\n"),
        &skip(),
    );
    assert!(
        all_bad.is_err(),
        "a log without a good row is refused even on request"
    );
}

#[test]
fn fault_thousands_of_bad_rows_are_counted_not_shown() {
    let rows = "soon,squat,100 kg,5,,\n".repeat(5000);
    let error = read(&rows).expect_err("all bad");
    assert_eq!(error.faults().len(), 12);
    assert!(
        words(&error).starts_with("5000 rows of"),
        "the way out comes first"
    );
    assert!(words(&error).contains("and 4990 more bad rows"));
}

#[test]
fn fault_a_bad_header_is_refused_even_on_request() {
    for (text, says) in [
        ("", "is empty"),
        ("# only a remark\n", "is empty"),
        (
            "date,lift,load\n2024-03-01,squat,100 kg\n",
            "no column `repetitions`",
        ),
        ("date,lift,load,repetitons\n", "did you mean `repetitions`?"),
        (
            "date,lift,load,reps,repetitions\n",
            "both read as the repetitions",
        ),
        ("date,lift,load,reps\n", "no sets"),
    ] {
        let error = read_log("log.csv", text, &skip()).expect_err("a bad header");
        assert!(words(&error).contains(says), "{text}: {error}");
        assert_eq!(error.exit_status(), 2);
    }
}

#[test]
fn fault_two_lifts_need_a_name() {
    let log =
        read("2024-03-01,squat,100 kg,5,,\n2024-03-01,deadlift,140 kg,5,,\n").expect("good rows");
    let error = log.of_lift(None).expect_err("two lifts");
    assert!(
        words(&error).contains("mixes 2 lifts: deadlift (1 set), squat (1 set)"),
        "{error}"
    );
    assert_eq!(
        log.of_lift(Some("Deadlift")).expect("there").entries.len(),
        1
    );
    assert!(log.of_lift(Some("row")).is_err());
    assert!(Log::default().of_lift(None).is_err());
}

#[test]
fn fault_odd_but_possible_rows_are_kept_with_a_notice() {
    let log = read(
        "2024-03-08,squat,100 kg,5,,\n2024-03-01,squat,95 kg,5,,\n2024-03-15,squat,100 kg,0,,\n",
    )
    .expect("good rows");
    assert_eq!(log.entries[0].line, 3, "sorted by day");
    assert!(
        notices(&log)[0].contains("dates out of order: line 3"),
        "{:?}",
        log.odd
    );
    assert!(
        notices(&log)[1].contains("line 4: a failed attempt"),
        "{:?}",
        log.odd
    );
    let newest_first =
        read("2024-03-08,squat,100 kg,5,,\n2024-03-01,squat,95 kg,5,,\n").expect("good");
    assert!(notices(&newest_first)[0].contains("newest day to the oldest"));
    let sets = "2024-03-01,squat,95 kg,5,,\n2024-03-01,squat,95 kg,5,,\n";
    assert!(
        read(sets).expect("good").odd.is_empty(),
        "equal sets of one session are normal"
    );
    let pasted = format!("{sets}2024-03-08,squat,100 kg,5,,\n{sets}");
    let notices = notices(&read(&pasted).expect("good"));
    assert!(
        notices
            .iter()
            .any(|notice| notice.contains("lines 5, 6 repeat sets")),
        "{notices:?}"
    );
}

#[test]
fn regress_lifts_are_compared_by_their_words() {
    for written in [
        "Bench Press",
        "bench_press",
        " BENCH-press ",
        "bench  press",
    ] {
        assert_eq!(lift_name(written), "bench-press");
    }
}

#[test]
fn law_days_count_like_the_calendar() {
    let day = |text: &str| Day::from_text(text).expect("a date");
    assert_eq!(day("2024-03-01").days_since(day("2024-02-28")), 2);
    assert_eq!(day("2023-03-01").days_since(day("2023-02-28")), 1);
    assert_eq!(day("2100-03-01").days_since(day("2100-02-28")), 1);
    assert_eq!(day("2000-03-01").days_since(day("2000-02-28")), 2);
    assert_eq!(day("2000-01-01").days_since(day("1970-01-01")), 10_957);
    let mut expected = day("1900-01-01");
    for year in 1900..=2199 {
        for month in 1..=12 {
            let mut date = 1;
            while let Some(next) = Day::from_date(year, month, date) {
                assert_eq!(next, expected, "{year}-{month}-{date}");
                assert_eq!(next.date(), (year, month, date));
                assert_eq!(day(&next.to_string()), next);
                // The next day of the calendar is one more.
                expected = following(next);
                date += 1;
            }
            assert!((29..=32).contains(&date));
        }
    }
}

/// The day after, by its number alone.
fn following(day: Day) -> Day {
    let (year, month, date) = day.date();
    [
        (year, month, date + 1),
        (year, month + 1, 1),
        (year + 1, 1, 1),
    ]
    .into_iter()
    .find_map(|(y, m, d)| Day::from_date(y, m, d).filter(|next| next.days_since(day) == 1))
    .unwrap_or(day)
}

proptest! {
    #[test]
    fn fault_no_text_makes_the_reader_panic(text in "\\PC{0,200}", skip in any::<bool>()) {
        let bad_rows = if skip { BadRows::LeftOut } else { BadRows::Refused };
        let options = LogReading { bad_rows, ..LogReading::default() };
        let _ = read_log("log.csv", &text, &options);
        let _ = read_log("log.csv", &format!("{HEAD}{text}"), &options);
        let _ = Day::from_text(&text);
    }

    #[test]
    fn fault_no_row_makes_the_reader_panic(
        rows in proptest::collection::vec(
            ("[0-9/-]{0,11}", "[a-z \"]{0,6}", "-?[0-9.e]{0,6} ?(kg|lb|m|)", "-?[0-9]{0,4}", "[0-9. m/s]{0,8}"), 0..20,
        ),
    ) {
        let body: String = rows.iter().map(|(a, b, c, d, e)| format!("{a},{b},{c},{d},{e},\n")).collect();
        let options = LogReading { bad_rows: BadRows::LeftOut, ..LogReading::default() };
        if let Ok(log) = read_log("log.csv", &format!("{HEAD}{body}"), &options) {
            prop_assert!(log.entries.len() + log.skipped.len() <= rows.len());
            if let Ok(one) = log.of_lift(None) {
                let _ = torquill::progress::trend::trend(
                    &one,
                    LiftFacts::default(),
                    &super::published().estimates,
                );
            }
        }
    }
}

/// An equation made at one share of the 1RM stands only beside sets near that share, by what the others say.
#[test]
fn law_an_equation_made_at_a_share_is_shown_near_it_only() {
    let library = Library::built_in();
    let equations = &library.published().expect("tables").estimates.repetitions;
    let named = |load: f64, repetitions: u32| {
        let of_set = estimate(
            equations,
            Some("squat"),
            Mass::from_kg(load),
            repetitions,
            0.0,
        )
        .expect("an estimate");
        let share = load / of_set.one_rm.as_kg();
        let is_shown = of_set
            .guesses
            .iter()
            .any(|guess| guess.equation.formula.contains("at 70 %"));
        (share, is_shown)
    };
    let mut shown = 0;
    for load in (60..=220).step_by(10) {
        for repetitions in 1..=15 {
            let (share, is_shown) = named(f64::from(load), repetitions);
            shown += u32::from(is_shown);
            assert!(
                !is_shown || (share - 0.70).abs() <= 0.05 + 1.0e-9,
                "{load} kg × {repetitions}"
            );
        }
    }
    assert!(shown > 0, "it is shown where it belongs");
}
