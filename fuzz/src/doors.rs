//! Every door that text comes in by, and what must hold of whatever comes.
//!
//! In: any bytes. Out: whether the door took them. A door that breaks a law panics: nothing is refused without words,
//! no word of a refusal is obeyed by a terminal, and what is taken is good for what is done with it.

use std::cell::OnceCell;
use std::fmt::Display;
use std::path::{Path, PathBuf};
use torquill::bounds::first_hidden;
use torquill::cli;
use torquill::error::{Error, GymPart, Shelf};
use torquill::explore::{Laboratory, TaskFile, tasks_from_text};
use torquill::grammar::{
    OwnBandText, item_from_text, own_band_from_readings, own_band_from_text, readings_from_csv,
    readings_from_text, setup_from_texts,
};
use torquill::library::{Library, Model, Workbench};
use torquill::narrative::faults::told;
use torquill::narrative::gym_words::{REASON, usual_part};
use torquill::person::{MeasureReader, read_limb};
use torquill::progress::bar_trace::BarTrace;
use torquill::progress::day::Day;
use torquill::progress::lift_names::LiftNames;
use torquill::progress::log_file::{BadRows, LogReading, read_log};
use torquill::progress::team_file::read_team;
use torquill::progress::traced_repetitions::traced_repetitions;
use torquill::report::curve_data;
use torquill::resistance::{BandReading, Item, Setup};
use torquill::setups::NewGym;
use torquill::study::{Question, study};
use torquill::units::{
    Angle, AngularSpeed, Duration, Force, Length, LinearDensity, Mass, Speed, Stress, System,
    Torque,
};

/// A door.
#[derive(Debug, Clone, Copy)]
pub struct Door {
    /// What it is called, and the folder of its corpus.
    pub name: &'static str,
    /// Puts bytes to it; whether it took them.
    pub feed: fn(&[u8]) -> bool,
}

/// Every door.
pub const DOORS: [Door; 12] = [
    door_of("model", |bytes| text(bytes).is_some_and(model)),
    door_of("again", again),
    door_of("set", |bytes| words(bytes).is_some_and(|w| settings(&w))),
    door_of("items", |bytes| words(bytes).is_some_and(|w| items(&w))),
    door_of("quantities", |bytes| {
        words(bytes).is_some_and(|w| quantities(&w))
    }),
    door_of("log", |bytes| text(bytes).is_some_and(log)),
    door_of("gym", |bytes| words(bytes).is_some_and(|w| gym(&w))),
    door_of("page", |bytes| text(bytes).is_some_and(page)),
    door_of("tasks", |bytes| text(bytes).is_some_and(tasks)),
    door_of("readings", |bytes| text(bytes).is_some_and(readings)),
    door_of("team", |bytes| text(bytes).is_some_and(team)),
    door_of("trace", |bytes| text(bytes).is_some_and(trace)),
];

const fn door_of(name: &'static str, feed: fn(&[u8]) -> bool) -> Door {
    Door { name, feed }
}

/// The door of a name.
#[allow(dead_code, reason = "the fuzzer asks by name, the suite takes all")]
pub fn door(name: &str) -> Option<Door> {
    DOORS.into_iter().find(|door| door.name == name)
}

/// What the doors are called.
#[allow(dead_code, reason = "the fuzzer asks by name, the suite takes all")]
pub fn names() -> String {
    DOORS.map(|door| door.name).join(" ")
}

/// The bytes of a file as its readers take them.
fn text(bytes: &[u8]) -> Option<&str> {
    std::str::from_utf8(bytes).ok()
}

/// Words of a command, one a line, as far as the door in front of all commands lets them through.
fn words(bytes: &[u8]) -> Option<Vec<&str>> {
    let text = text(bytes)?;
    let is_fit = first_hidden(text).is_none() && text.len() <= 5000;
    is_fit.then(|| text.lines().collect())
}

/// The most bytes of a refusal: 25 faults, each with a line of its file.
const MOST_SAID: usize = 100_000;

/// A refusal says something to everybody, and nothing that a terminal obeys.
fn refused(error: &Error) -> bool {
    assert!(!error.faults().is_empty(), "refused without a fault");
    assert!(matches!(error.exit_status(), 1 | 2));
    for units in [System::Metric, System::Us] {
        let said = cli::render(error, units, false);
        let begins = ["error: ", "no answer: "];
        assert!(begins.iter().any(|b| said.starts_with(b)), "{said}");
        assert_eq!(first_hidden(&said), None, "{said:?}");
        assert!(said.len() < MOST_SAID, "{} bytes", said.len());
    }
    for fault in error.faults().iter().take(25) {
        let told = told(fault, System::Metric);
        assert!(told.message.trim().len() > 3, "{told:?}");
        if let Some(place) = &fault.place {
            assert!(!place.file.is_empty() && place.start.0 >= 1 && place.start <= place.end);
            let stretch = place.bytes();
            assert!(place.text.get(stretch).is_some(), "{place:?}");
        }
    }
    false
}

fn taken<T>(result: torquill::error::Result<T>) -> bool {
    result.map_or_else(|error| refused(&error), |_| true)
}

thread_local! {
    static SHELVES: OnceCell<Library> = const { OnceCell::new() };
    static BENCHES: OnceCell<Vec<Workbench>> = const { OnceCell::new() };
    static NAMES: OnceCell<(LiftNames, Vec<String>)> = const { OnceCell::new() };
    static PLACE: OnceCell<PathBuf> = const { OnceCell::new() };
}

fn library() -> Library {
    SHELVES.with(|shelves| shelves.get_or_init(Library::built_in).clone())
}

/// A file of these bytes, where something reads by a path.
fn file_of(name: &str, bytes: &[u8]) -> PathBuf {
    PLACE.with(|place| {
        let folder = place.get_or_init(|| {
            let number = std::process::id();
            let folder = std::env::temp_dir().join(format!(
                "torquill-doors-{number}-{:?}",
                std::thread::current().id()
            ));
            std::fs::create_dir_all(&folder).expect("a folder can be made");
            folder
        });
        let path = folder.join(name);
        std::fs::write(&path, bytes).expect("a file can be written");
        path
    })
}

/// The fewest places of a curve that a command takes.
const FEWEST_SAMPLES: usize = 5;

/// A curve: an answer whose numbers are numbers, or words.
fn answers(model: &Model, setups: &[Setup]) -> bool {
    let mut question = Question::new(&model.movement_name, &model.movement, &model.lifter);
    question.samples = FEWEST_SAMPLES;
    match study(&question, setups) {
        Err(error) => refused(&error),
        Ok(study) => {
            let table = curve_data(&study, study.setups.first(), false).csv();
            let is_number = |cell: &str| !matches!(cell, "NaN" | "inf" | "-inf");
            assert!(table.split([',', '\n']).all(is_number), "{table}");
            true
        }
    }
}

/// Model files of every kind: the folder in a first line `// lifters/name.ron` tells the kind, else the fields do. What
/// `check` calls sound is worked with.
fn model(text: &str) -> bool {
    let library = library();
    let named = text
        .lines()
        .next()
        .and_then(|line| line.strip_prefix("// "));
    let named = named.filter(|name| name.ends_with(".ron") && first_hidden(name).is_none());
    let name = named.unwrap_or("own.ron");
    let shelf = Shelf::of_path(Path::new(name));
    let file = match library.check_text(shelf, name, text) {
        Err(error) => return refused(&error),
        Ok(file) => file,
    };
    for doubt in &file.doubts {
        assert!(!told(doubt, System::Us).message.is_empty());
    }
    use torquill::library::FileFacts as Facts;
    let path = || file_of("own.ron", text.as_bytes()).display().to_string();
    match file.facts {
        Facts::Movement(_) => worked_with(&library, "reference-man", &path()),
        Facts::Lifter(_) => worked_with(&library, &path(), "squat"),
        Facts::Setup(_) => {
            let setup = library.setup(&path());
            assert!(setup.is_ok(), "sound for `check`: {setup:?}");
        }
        _ => {}
    }
    true
}

/// A file that `check` takes is taken by the commands.
fn worked_with(library: &Library, lifter: &str, movement: &str) {
    let model = Workbench::open(library, lifter, movement).and_then(|bench| bench.model(&[]));
    match model {
        Ok(model) => assert!(answers(&model, &[]), "sound for `check`, without a curve"),
        Err(error) => panic!(
            "sound for `check`: {}",
            cli::render(&error, System::Metric, false)
        ),
    }
}

/// Files that say how they were made.
fn again(bytes: &[u8]) -> bool {
    taken(cli::asked_again("file", bytes))
}

/// `PATH=VALUE`s: the first letter of the first line chooses lift and lifter.
fn settings(words: &[&str]) -> bool {
    let Some((first, sets)) = words.split_first() else {
        return false;
    };
    BENCHES.with(|benches| {
        let benches = benches.get_or_init(|| {
            let lifts = [
                "squat",
                "bench-press",
                "biceps-curl",
                "leg-press",
                "pull-up",
            ];
            let lifters = ["reference-man", "reference-woman"];
            let both = lifts
                .iter()
                .flat_map(|lift| lifters.map(|lifter| (lift, lifter)));
            let open = both.map(|(lift, lifter)| Workbench::open(&library(), lifter, lift));
            open.map(|bench| bench.expect("built-in files are sound"))
                .collect()
        });
        let number = first.bytes().next().unwrap_or_default() as usize % benches.len();
        let sets: Vec<String> = sets.iter().map(|set| (*set).to_owned()).collect();
        match benches[number].model(&sets) {
            Err(error) => refused(&error),
            Ok(model) => {
                answers(&model, &[]);
                true
            }
        }
    })
}

/// What hangs on the bar: lines `load …`, `band …`, `chain …`, and any other implement as it is.
fn items(words: &[&str]) -> bool {
    let pieces = library().pieces().expect("built-in files are sound");
    let stock = pieces.stock();
    let of = |option: &str| -> Vec<&str> {
        let behind = words.iter().map(|word| word.trim());
        behind
            .filter_map(|word| word.strip_prefix(option))
            .collect()
    };
    let is_own = |text: &&str| OwnBandText::of(text).is_some();
    let (own, bands): (Vec<&str>, Vec<&str>) = of("band ").into_iter().partition(is_own);
    let mut setup = match setup_from_texts(&of("load "), &bands, &of("chain "), &stock) {
        Ok(setup) => setup,
        Err(error) => return refused(&error),
    };
    for text in own.into_iter().filter_map(OwnBandText::of) {
        if text.file().is_some() {
            return false;
        }
        match text.band().and_then(|band| text.hung(band, &stock)) {
            Ok(hung) => setup.items.push(Item::Band(hung)),
            Err(error) => return refused(&error),
        }
    }
    let options = ["load ", "band ", "chain "];
    let others = words
        .iter()
        .filter(|word| !options.iter().any(|o| word.trim().starts_with(o)));
    for text in others {
        match item_from_text(text, &stock) {
            Ok(item) => setup.items.push(item),
            Err(error) => return refused(&error),
        }
    }
    BENCH_PRESS.with(|model| {
        let model = model.get_or_init(|| {
            let bench = Workbench::open(&library(), "reference-man", "bench-press");
            bench
                .and_then(|b| b.model(&[]))
                .expect("built-in files are sound")
        });
        answers(model, std::slice::from_ref(&setup));
    });
    true
}

thread_local! {
    static BENCH_PRESS: OnceCell<Model> = const { OnceCell::new() };
}

/// What is taken prints itself so that it is read as the same again.
fn comes_back<T, E>(word: &str, read: impl Fn(&str) -> Result<T, E>) -> bool
where
    T: Display + PartialEq + std::fmt::Debug,
    E: Into<torquill::error::What>,
{
    match read(word) {
        Err(fault) => refused(&Error::bad(fault)),
        Ok(value) => {
            let printed = value.to_string();
            let back = read(&printed);
            assert!(
                back.is_ok_and(|back| back == value),
                "{word:?} is {printed:?}"
            );
            true
        }
    }
}

/// Quantities, days, and what is told of a person: `squat=95 kg x 3 @ rir 1`.
fn quantities(words: &[&str]) -> bool {
    let mut any = false;
    for word in words.iter().take(8) {
        any |= comes_back(word, Length::from_text);
        any |= comes_back(word, Mass::from_text);
        any |= comes_back(word, Force::from_text);
        any |= comes_back(word, Torque::from_text);
        any |= comes_back(word, Angle::from_text);
        any |= comes_back(word, AngularSpeed::from_text);
        any |= comes_back(word, Speed::from_text);
        any |= comes_back(word, Duration::from_text);
        any |= comes_back(word, Stress::from_text);
        any |= comes_back(word, LinearDensity::from_text);
        if let Ok(day) = Day::from_text(word) {
            assert_eq!(Day::from_text(&day.to_string()), Ok(day), "{word:?}");
            any = true;
        }
        if word.contains('=') {
            any |= with_names(|(names, movements)| {
                let reader = MeasureReader { names, movements };
                taken(reader.lift(word))
                    | taken(reader.hold(word))
                    | taken(reader.dynamometer(word))
                    | taken(reader.trace(word))
            });
            any |= taken(read_limb(word));
        }
    }
    any
}

fn with_names<T>(work: impl FnOnce(&(LiftNames, Vec<String>)) -> T) -> T {
    NAMES.with(|names| work(names.get_or_init(|| (library().lift_names(), library().movements()))))
}

/// Training logs: what is taken is of people; rows that are left out leave the others.
fn log(text: &str) -> bool {
    let reading = |bad_rows| {
        with_names(|(names, _)| LogReading {
            bad_rows,
            dates: None,
            names: names.clone(),
        })
    };
    let strict = read_log("log.csv", text, &reading(BadRows::Refused));
    let loose = read_log("log.csv", text, &reading(BadRows::LeftOut));
    if let Ok(log) = &strict {
        let loose = loose
            .as_ref()
            .expect("rows without a fault are read in both ways");
        assert_eq!(log.entries, loose.entries);
        for entry in &log.entries {
            let kg = entry.load.as_kg();
            assert!(kg.is_finite() && kg >= 0.0, "{entry:?}");
            assert!(entry.velocity.is_none_or(|v| v.as_m_s().is_finite()));
            assert_eq!(first_hidden(&entry.lift), None, "{entry:?}");
            let athlete = entry.athlete.as_deref().unwrap_or_default();
            assert_eq!(first_hidden(athlete), None, "{entry:?}");
        }
    }
    taken(loose) | taken(strict)
}

/// What `gym` is told: lines `bars: 20 kg` in the parts' order of its options; the file that it writes is sound or refused.
fn gym(words: &[&str]) -> bool {
    let told = |part: GymPart| {
        let name = format!("{part:?}: ");
        let found = words.iter().find_map(|word| word.strip_prefix(&name));
        found.map(str::to_owned)
    };
    let title = words.first().copied().unwrap_or("gym");
    let usual = |part| usual_part(part, System::Metric);
    match NewGym::of(title, title.contains("belt"), told, usual) {
        Err(error) => refused(&error),
        Ok(gym) => taken(library().check_text(Some(Shelf::Gyms), "gym.ron", &gym.file(REASON))),
    }
}

/// What the live page asks: each line a question, as an address may make it.
fn page(text: &str) -> bool {
    let mut laboratory = Laboratory::new(library());
    let mut any = false;
    for line in text.lines().take(4) {
        let answer: serde_json::Value =
            serde_json::from_str(&laboratory.ask(line)).expect("an answer is JSON");
        let object = answer.as_object().expect("an answer is an object");
        assert_eq!(object.len(), 1, "{answer}");
        match object.get("faults") {
            None => assert!(object.contains_key("answer"), "{answer}"),
            Some(faults) => {
                let faults = faults.as_array().expect("faults are a list");
                assert!(!faults.is_empty(), "{line}");
                let message = |fault: &serde_json::Value| fault["message"].as_str().map(str::len);
                assert!(faults.iter().all(|f| message(f) > Some(3)), "{answer}");
            }
        }
        any |= object.contains_key("answer");
    }
    any
}

/// A lecturer's tasks.
fn tasks(text: &str) -> bool {
    taken(tasks_from_text(&TaskFile {
        name: "tasks.txt",
        text: text.into(),
    }))
}

/// Readings of a band: as CSV, as one text, with a name before them.
fn readings(text: &str) -> bool {
    let fitted = |readings: Vec<BandReading>| own_band_from_readings("own", &readings);
    let csv = readings_from_csv(text).and_then(fitted);
    let mut any = taken(csv);
    if first_hidden(text).is_none() {
        any |= taken(readings_from_text(text).and_then(fitted));
        any |= taken(own_band_from_text(text));
    }
    any
}

/// Teams: what is taken of rows in both ways is the same.
fn team(text: &str) -> bool {
    with_names(|(names, movements)| {
        let read = |bad_rows| read_team(("team.csv", text), (names, movements), bad_rows);
        let (strict, loose) = (read(BadRows::Refused), read(BadRows::LeftOut));
        if let Ok(team) = &strict {
            let loose = loose
                .as_ref()
                .expect("rows without a fault are read in both ways");
            assert_eq!(team.members, loose.members);
            assert!(team.members.iter().all(|m| first_hidden(&m.name).is_none()));
        }
        taken(loose) | taken(strict)
    })
}

/// Traces of a bar: the first line names the columns.
fn trace(text: &str) -> bool {
    let (columns, rows) = text.split_once('\n').unwrap_or((text, ""));
    if first_hidden(columns).is_some() {
        return false;
    }
    match BarTrace::read("trace.csv", rows, columns) {
        Err(error) => refused(&error),
        Ok(trace) => {
            let _ = traced_repetitions(&trace);
            true
        }
    }
}
