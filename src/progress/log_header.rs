//! The header of a log: which column stands where, and in which unit.
//!
//! In: the header's row. Out: the place of every column that is read and the names of those that are not; or all
//! that is wrong with the header at once.

use super::foreign_headings::foreign;
use super::log_table::{LogTable, TableRow};
use crate::error::{Error, Fault, LogColumn, LogFault, Result};

/// A spelling is near a column's name when it takes this many slips at most.
const MOST_SLIPS: usize = 2;

/// Other names of a column, in small letters, words joined.
const fn also(column: LogColumn) -> &'static [&'static str] {
    match column {
        LogColumn::Date => &[
            "day",
            "session_date",
            "workout_date",
            "training_date",
            "date_time",
            "datetime",
            "timestamp",
            "start_time",
        ],
        LogColumn::Lift => &[
            "movement",
            "exercise",
            "exercise_name",
            "lift_name",
            "movement_name",
        ],
        LogColumn::Load => &[
            "weight",
            "bar_load",
            "bar_weight",
            "total_load",
            "total_weight",
        ],
        LogColumn::Repetitions => &[
            "reps",
            "rep",
            "repetition",
            "reps_done",
            "repetitions_done",
            "sets_x_reps",
            "sets_x_repetitions",
        ],
        LogColumn::Sets => &["number_of_sets", "sets_done"],
        LogColumn::Velocity => &["mean_velocity", "speed", "mean_speed", "bar_speed"],
        LogColumn::Reserve => &[
            "rir",
            "in_reserve",
            "reps_in_reserve",
            "repetitions_in_reserve",
        ],
        LogColumn::Exertion => &["perceived_exertion"],
        LogColumn::Athlete => &["name", "lifter", "athlete_name", "player", "person"],
        LogColumn::Unit => &["units", "weight_unit", "load_unit"],
        LogColumn::Note => &["notes", "remark", "remarks", "comment", "comments"],
    }
}

const fn is_needed(column: LogColumn) -> bool {
    use LogColumn::{Date, Lift, Load, Repetitions};
    matches!(column, Date | Lift | Load | Repetitions)
}

/// A unit as a quantity is read, from what a heading or a field writes.
pub(super) fn unit_named(written: &str) -> Option<&'static str> {
    let spelt = written.to_lowercase().replace(['_', '.'], " ");
    let known = UNITS.iter().find(|(name, _)| *name == spelt.trim());
    known.map(|(_, unit)| *unit)
}

/// Units that a heading may end in, as written there and as a quantity is read.
const UNITS: [(&str, &str); 17] = [
    ("kg", "kg"),
    ("kgs", "kg"),
    ("kilogram", "kg"),
    ("kilograms", "kg"),
    ("lb", "lb"),
    ("lbs", "lb"),
    ("pound", "lb"),
    ("pounds", "lb"),
    ("m/s", "m/s"),
    ("m s", "m/s"),
    ("cm/s", "cm/s"),
    ("cm s", "cm/s"),
    ("ft/s", "ft/s"),
    ("cm", "cm"),
    ("m", "m"),
    ("in", "in"),
    ("ft", "ft"),
];

/// Where a column stands, and its unit if the heading tells one.
#[derive(Debug, Clone)]
pub(super) struct ColumnHead {
    /// The field, counted from 0.
    pub position: usize,
    /// The heading as written.
    pub heading: String,
    /// The unit in the heading.
    pub unit: Option<&'static str>,
}

/// Where each column stands in the file.
#[derive(Debug, Clone, Default)]
pub(super) struct LogHeader {
    heads: [Option<ColumnHead>; LogColumn::ALL.len()],
    /// How many fields the header has.
    pub width: usize,
    /// Headings of columns that are not read.
    pub ignored: Vec<String>,
}

impl LogHeader {
    /// Where a column stands.
    pub fn head(&self, column: LogColumn) -> Option<&ColumnHead> {
        self.heads[column as usize].as_ref()
    }

    /// Reads a column no more.
    pub fn forget(&mut self, column: LogColumn) {
        self.heads[column as usize] = None;
    }

    /// The field of a column, if the row fills it.
    pub fn field<'a>(&self, column: LogColumn, row: &'a TableRow<'_>) -> Option<&'a str> {
        let field = row.field(self.head(column)?.position);
        (!field.is_empty()).then_some(field)
    }
}

/// Reads the header.
///
/// **Fails** on columns that stand twice or are missing, all at once.
pub(super) fn header(table: &LogTable, row: &TableRow<'_>) -> Result<LogHeader> {
    let mut header = LogHeader {
        width: row.width(),
        ..LogHeader::default()
    };
    let mut faults = Vec::new();
    for (position, heading) in row.fields().enumerate().filter(|(_, h)| !h.is_empty()) {
        let Some((column, unit)) = known(heading) else {
            header.ignored.push(heading.to_owned());
            continue;
        };
        let head = ColumnHead {
            position,
            heading: heading.to_owned(),
            unit,
        };
        let place = &mut header.heads[column as usize];
        let Some(first) = place.as_mut() else {
            *place = Some(head);
            continue;
        };
        match meant(column, first, &head) {
            Meant::First if column == LogColumn::Note => {}
            Meant::First => header.ignored.push(head.heading),
            Meant::Second => header.ignored.push(std::mem::replace(first, head).heading),
            Meant::Either => {
                let headings = [first.heading.clone(), head.heading];
                let twice = LogFault::ColumnTwice { column, headings };
                faults.push(Fault::new(twice).at(table.place(row.start, Some(position))));
            }
        }
    }
    let is_missing = |column: &LogColumn| is_needed(*column) && header.head(*column).is_none();
    let missing = LogColumn::ALL.into_iter().filter(is_missing);
    // A header of one field is parted by something else, which is told once.
    let told = if header.width > 1 { usize::MAX } else { 1 };
    for column in missing.take(told) {
        let missing = LogFault::NoColumn {
            column,
            near: near(column, &header.ignored),
            headings: row.fields().map(str::to_owned).collect(),
        };
        faults.push(Fault::new(missing).at(table.place(row.start, None)));
    }
    if faults.is_empty() {
        Ok(header)
    } else {
        Err(Error::bad_input(faults))
    }
}

/// Which of two headings names a column.
enum Meant {
    First,
    Second,
    Either,
}

/// Which of two headings names a column: an English one before one of another language, because a foreign word may mean
/// something else in an English log ("Tag"). Of two dates the first counts, if they are not the same words; of notes too,
/// which nothing reads. Two of anything else leave open which is meant.
fn meant(column: LogColumn, first: &ColumnHead, second: &ColumnHead) -> Meant {
    let is_foreign =
        |head: &ColumnHead| named_in_english(&name_and_unit(&head.heading).0).is_none();
    let is_same = first.heading.to_lowercase() == second.heading.to_lowercase();
    match (is_foreign(first), is_foreign(second)) {
        _ if column == LogColumn::Note => Meant::First,
        (false, true) => Meant::First,
        (true, false) => Meant::Second,
        _ if column == LogColumn::Date && !is_same => Meant::First,
        _ => Meant::Either,
    }
}

/// Whether a row is a header: it holds day and lift, or three columns that are known.
pub(super) fn is_header(row: &TableRow<'_>) -> bool {
    let columns: Vec<LogColumn> = row.fields().filter_map(|h| Some(known(h)?.0)).collect();
    let holds = |column| columns.contains(&column);
    holds(LogColumn::Date) && holds(LogColumn::Lift) || columns.len() >= 3
}

/// The column that a heading names, and its unit.
pub fn known(heading: &str) -> Option<(LogColumn, Option<&'static str>)> {
    let (name, unit) = name_and_unit(heading);
    let column = named_in_english(&name).or_else(|| foreign(&name))?;
    Some((column, unit))
}

/// The column that English words name, with one blank between them.
fn named_in_english(words: &str) -> Option<LogColumn> {
    let joined = words.replace(' ', "_");
    LogColumn::ALL
        .into_iter()
        .find(|column| column.name() == joined || also(*column).contains(&joined.as_str()))
}

/// A heading's words and the unit behind them: "Weight (kg)", "load_lb", "velocity [m/s]".
pub(super) fn name_and_unit(heading: &str) -> (String, Option<&'static str>) {
    let lower = heading.to_lowercase().replace('×', "x");
    if let Some((before, behind)) = lower.split_once(['(', '[']) {
        let inside = behind.trim_end().trim_end_matches([')', ']']);
        return (words(before), unit_named(inside));
    }
    let spaced = lower.replace(['_', ',', ':'], " ");
    let spaced = spaced.trim();
    let suffix = UNITS.iter().find_map(|(written, unit)| {
        let before = spaced.strip_suffix(written)?;
        before.ends_with(' ').then(|| (words(before), Some(*unit)))
    });
    suffix.unwrap_or_else(|| (words(spaced), None))
}

/// The words of a text with one blank between them.
fn words(text: &str) -> String {
    let words = text.split(|c: char| !c.is_alphanumeric());
    let words: Vec<&str> = words.filter(|word| !word.is_empty()).collect();
    words.join(" ")
}

/// The heading that is spelt nearly like a column that is missing.
fn near(column: LogColumn, headings: &[String]) -> Option<String> {
    let slips =
        |heading: &&String| strsim::damerau_levenshtein(column.name(), &name_and_unit(heading).0);
    let nearest = headings.iter().min_by_key(slips);
    nearest
        .filter(|heading| slips(heading) <= MOST_SLIPS)
        .cloned()
}
