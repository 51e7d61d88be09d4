//! Reads a training log from CSV text, every bad row named by line with what is wrong.
//!
//! In: the text of the file and its name. Out: a [`Log`]; or all bad rows at once, each with its place;
//! or, on request, the log without them. Separator comma or semicolon; lines that begin with `#` are
//! remarks.

use super::day::Day;
use super::training_log::{Log, LogEntry, SkippedRow};
use crate::error::{Error, Fault, Place, Result};
use crate::movement::lift_name;
use crate::units::{Mass, Speed};

/// How to read.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct ReadOptions {
    /// Leave bad rows out (they are listed in [`Log::skipped`]) rather than refuse the file.
    pub skip_bad_rows: bool,
    /// The last day a row may have; later ones are typing errors. `None` checks nothing.
    pub today: Option<Day>,
}

/// A column: its name, other accepted spellings, whether a log needs it, what stands in it.
struct Column {
    name: &'static str,
    also: &'static [&'static str],
    needed: bool,
    holds: &'static str,
}

const fn column(
    name: &'static str,
    also: &'static [&'static str],
    needed: bool,
    holds: &'static str,
) -> Column {
    Column {
        name,
        also,
        needed,
        holds,
    }
}

/// The columns, in any order in the file.
const COLUMNS: &[Column] = &[
    column("date", &["day"], true, "year-month-day, such as 2024-03-01"),
    column(
        "lift",
        &["movement", "exercise"],
        true,
        "the lift, such as bench-press",
    ),
    column(
        "load",
        &["weight"],
        true,
        "the load with its unit, such as 100 kg",
    ),
    column(
        "repetitions",
        &["reps"],
        true,
        "a whole number, 0 for a failed attempt",
    ),
    column(
        "velocity",
        &["mean velocity"],
        false,
        "mean velocity of the fastest repetition, such as 0.35 m/s",
    ),
    column(
        "reserve",
        &["rir", "reps in reserve", "repetitions in reserve"],
        false,
        "repetitions left, such as 2",
    ),
    column("note", &["notes", "remark"], false, "anything"),
];

const DATE: usize = 0;
const LIFT: usize = 1;
const LOAD: usize = 2;
const REPETITIONS: usize = 3;
const VELOCITY: usize = 4;
const RESERVE: usize = 5;

/// More bad rows than this are counted, not shown one by one.
const MOST_ROWS: usize = 25;
/// Heaviest load of a set, kg (assumed: above every record, so beyond it a unit or a digit is wrong).
const HEAVIEST_KG: f64 = 1500.0;
/// Most repetitions of a set (assumed, as the load).
const MOST_REPETITIONS: u32 = 200;
/// Slowest and fastest mean velocity of a lift, m/s (assumed: barely moving, and a thrown bar).
const VELOCITIES_M_S: (f64, f64) = (0.02, 4.0);
/// Most repetitions anybody can honestly feel in reserve (assumed).
const MOST_RESERVE: f64 = 15.0;

/// Reads a log.
///
/// **Fails** with every bad row at once (the first 25 in full), each with line and column; with the
/// header alone when that is wrong; and when no row is left.
pub fn read_log(file: &str, text: &str, options: ReadOptions) -> Result<Log> {
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    let page = Page { file, text };
    let mut lines = text
        .lines()
        .enumerate()
        .map(|(index, line)| (index + 1, line))
        .filter(|(_, line)| {
            let line = line.trim();
            !line.is_empty() && !line.starts_with('#')
        });
    let Some((header_line, header)) = lines.next() else {
        return Err(Error::bad(format!("{file} is empty"))
            .hint("a log begins with a header: date,lift,load,repetitions"));
    };
    let separator = if header.contains(';') { ';' } else { ',' };
    let places = header_places(&page, header_line, header, separator)?;
    let mut rows = Vec::new();
    let mut bad = Vec::new();
    for (line, content) in lines {
        match row(&places, line, &fields(content, separator), options.today) {
            Ok(entry) => rows.push(entry),
            Err(faults) => bad.push((line, faults)),
        }
    }
    let skip = options.skip_bad_rows && !rows.is_empty();
    if !bad.is_empty() && !skip {
        return Err(bad_rows(&page, bad));
    }
    if rows.is_empty() {
        return Err(Error::bad(format!("{file} has a header and no sets")));
    }
    let skipped = bad.into_iter().map(|(line, faults)| SkippedRow {
        line,
        reason: in_one_sentence(faults),
    });
    Ok(Log::from_rows(rows, skipped.collect()))
}

struct Page<'a> {
    file: &'a str,
    text: &'a str,
}

impl Page<'_> {
    fn place(&self, line: usize, columns: (usize, usize)) -> Place {
        Place {
            file: self.file.to_owned(),
            text: self.text.to_owned(),
            start: (line, columns.0),
            end: (line, columns.1),
        }
    }
}

/// A field without its quotes and blanks, and the columns it fills, counted from 1.
#[derive(Debug, Clone, PartialEq, Eq)]
struct Field {
    value: String,
    columns: (usize, usize),
}

/// Splits a line; a field in double quotes may hold the separator, and "" inside it is one quote.
fn fields(line: &str, separator: char) -> Vec<Field> {
    let mut found = Vec::new();
    let (mut value, mut start, mut quoted) = (String::new(), 1, false);
    let mut column = 1;
    let mut characters = line.chars().peekable();
    while let Some(c) = characters.next() {
        match c {
            '"' if quoted && characters.peek() == Some(&'"') => {
                characters.next();
                column += 1;
                value.push('"');
            }
            '"' if quoted || value.trim().is_empty() => quoted = !quoted,
            _ if c == separator && !quoted => {
                found.push(Field {
                    value: value.trim().to_owned(),
                    columns: (start, column),
                });
                value.clear();
                start = column + 1;
            }
            _ => value.push(c),
        }
        column += 1;
    }
    found.push(Field {
        value: value.trim().to_owned(),
        columns: (start, column),
    });
    found
}

/// Where each of [`COLUMNS`] stands in the file.
fn header_places(
    page: &Page,
    line: usize,
    header: &str,
    separator: char,
) -> Result<Vec<Option<usize>>> {
    let names = fields(header, separator);
    let mut places = vec![None; COLUMNS.len()];
    let mut faults = Vec::new();
    for (position, field) in names.iter().enumerate() {
        let written = field.value.to_lowercase().replace('_', " ");
        let known = COLUMNS
            .iter()
            .position(|c| c.name == written || c.also.contains(&written.as_str()));
        let place = page.place(line, field.columns);
        match known {
            Some(index) if places[index].is_some() => {
                faults.push(
                    Fault::new(format!(
                        "the column `{}` stands twice in the header",
                        COLUMNS[index].name
                    ))
                    .at(place),
                );
            }
            Some(index) => places[index] = Some(position),
            None => faults.push(unknown_column(&field.value).at(place)),
        }
    }
    for (column, place) in COLUMNS.iter().zip(&places) {
        if column.needed && place.is_none() {
            faults.push(
                Fault::new(format!("the log has no column `{}`", column.name))
                    .at(page.place(line, (1, header.chars().count() + 1)))
                    .hint(format!("it holds {}", column.holds)),
            );
        }
    }
    if faults.is_empty() {
        Ok(places)
    } else {
        Err(Error::bad_input(faults))
    }
}

fn unknown_column(written: &str) -> Fault {
    let names: Vec<&str> = COLUMNS.iter().map(|column| column.name).collect();
    let nearest = names
        .iter()
        .min_by_key(|name| strsim::damerau_levenshtein(name, &written.to_lowercase()));
    let fault = Fault::new(format!("a log has no column `{written}`"))
        .hint(format!("columns: {}", names.join(", ")));
    match nearest {
        Some(name) if strsim::damerau_levenshtein(name, &written.to_lowercase()) <= 2 => {
            fault.hint(format!("did you mean `{name}`?"))
        }
        _ => fault,
    }
}

/// What is wrong with a row: the sentence, the columns, the next move.
struct RowFault {
    message: String,
    columns: (usize, usize),
    hint: Option<String>,
}

/// Reads one row, collecting everything that is wrong with it.
fn row(
    places: &[Option<usize>],
    line: usize,
    fields: &[Field],
    today: Option<Day>,
) -> std::result::Result<LogEntry, Vec<RowFault>> {
    if fields.len() > places.iter().flatten().count() {
        return Err(vec![too_many(places, fields)]);
    }
    let field = |index: usize| {
        places[index]
            .and_then(|position| fields.get(position))
            .filter(|field| !field.value.is_empty())
    };
    let needed = |index: usize| field(index).ok_or_else(|| missing(index, fields));
    let day = needed(DATE).and_then(|field| day(field, today));
    let lift = needed(LIFT).and_then(lift);
    let load = needed(LOAD).and_then(load);
    let repetitions = needed(REPETITIONS).and_then(repetitions);
    let velocity = field(VELOCITY).map(velocity).transpose();
    let reserve = field(RESERVE).map(reserve).transpose();
    match (day, lift, load, repetitions, velocity, reserve) {
        (Ok(day), Ok(lift), Ok(load), Ok(repetitions), Ok(velocity), Ok(reserve)) => Ok(LogEntry {
            line,
            day,
            lift,
            load,
            repetitions,
            velocity,
            reserve,
        }),
        (day, lift, load, repetitions, velocity, reserve) => {
            let faults = [
                day.err(),
                lift.err(),
                load.err(),
                repetitions.err(),
                velocity.err(),
                reserve.err(),
            ];
            Err(faults.into_iter().flatten().collect())
        }
    }
}

fn wrong(field: &Field, message: impl Into<String>, hint: Option<&str>) -> RowFault {
    RowFault {
        message: message.into(),
        columns: field.columns,
        hint: hint.map(str::to_owned),
    }
}

fn missing(index: usize, fields: &[Field]) -> RowFault {
    let end = fields.last().map_or(1, |field| field.columns.1);
    RowFault {
        message: format!("the row has no {}", COLUMNS[index].name),
        columns: (1, end),
        hint: Some(format!("it holds {}", COLUMNS[index].holds)),
    }
}

fn too_many(places: &[Option<usize>], fields: &[Field]) -> RowFault {
    let end = fields.last().map_or(1, |field| field.columns.1);
    RowFault {
        message: format!(
            "the row has {} fields, the header {}",
            fields.len(),
            places.iter().flatten().count()
        ),
        columns: (1, end),
        hint: Some("write decimals with a point, or put a field with a comma in quotes".to_owned()),
    }
}

fn day(field: &Field, today: Option<Day>) -> std::result::Result<Day, RowFault> {
    let day = Day::from_text(&field.value).map_err(|message| wrong(field, message, None))?;
    match today {
        Some(today) if day > today => Err(wrong(
            field,
            format!("{day} lies in the future (today is {today})"),
            None,
        )),
        _ => Ok(day),
    }
}

fn lift(field: &Field) -> std::result::Result<String, RowFault> {
    let name = lift_name(&field.value);
    if name.is_empty() {
        Err(wrong(field, format!("`{}` is no lift", field.value), None))
    } else {
        Ok(name)
    }
}

fn load(field: &Field) -> std::result::Result<Mass, RowFault> {
    let mass = Mass::from_text(&field.value)
        .map_err(|fault| wrong(field, Fault::new(fault).message, None))?;
    if mass.as_kg() <= 0.0 {
        return Err(wrong(
            field,
            format!("a load of `{}` is no set", field.value),
            None,
        ));
    }
    if mass.as_kg() > HEAVIEST_KG {
        let hint = Some("check the unit and the number of digits");
        return Err(wrong(
            field,
            format!(
                "`{}` is more than anybody lifts ({HEAVIEST_KG} kg)",
                field.value
            ),
            hint,
        ));
    }
    Ok(mass)
}

fn repetitions(field: &Field) -> std::result::Result<u32, RowFault> {
    match field.value.parse::<u32>() {
        Ok(count) if count <= MOST_REPETITIONS => Ok(count),
        Ok(count) => Err(wrong(
            field,
            format!("{count} repetitions are no strength set (at most {MOST_REPETITIONS})"),
            None,
        )),
        Err(_) => Err(wrong(
            field,
            format!("`{}` is no number of repetitions", field.value),
            Some("a whole number such as 5"),
        )),
    }
}

fn velocity(field: &Field) -> std::result::Result<Speed, RowFault> {
    let speed = Speed::from_text(&field.value)
        .map_err(|fault| wrong(field, Fault::new(fault).message, None))?;
    let (slowest, fastest) = VELOCITIES_M_S;
    if !(slowest..=fastest).contains(&speed.as_m_s()) {
        let message = format!(
            "`{}` is no mean velocity of a lift ({slowest} to {fastest} m/s)",
            field.value
        );
        return Err(wrong(field, message, None));
    }
    Ok(speed)
}

fn reserve(field: &Field) -> std::result::Result<f64, RowFault> {
    match field.value.parse::<f64>() {
        Ok(reserve) if (0.0..=MOST_RESERVE).contains(&reserve) => Ok(reserve),
        _ => Err(wrong(
            field,
            format!("`{}` is no reserve", field.value),
            Some("repetitions that were left, 0 or more, such as 2"),
        )),
    }
}

fn in_one_sentence(faults: Vec<RowFault>) -> String {
    let messages: Vec<String> = faults.into_iter().map(|fault| fault.message).collect();
    messages.join("; ")
}

fn bad_rows(page: &Page, bad: Vec<(usize, Vec<RowFault>)>) -> Error {
    let more = bad.len().saturating_sub(MOST_ROWS);
    let mut faults = Vec::new();
    for (line, row) in bad.into_iter().take(MOST_ROWS) {
        for fault in row {
            let place = page.place(line, fault.columns);
            let named = Fault::new(format!("line {line}: {}", fault.message)).at(place);
            faults.push(fault.hint.into_iter().fold(named, Fault::hint));
        }
    }
    if more > 0 {
        faults.push(Fault::new(format!("and {more} more bad rows")));
    }
    Error::bad_input(faults).hint("correct the rows, or ask for bad rows to be left out")
}
