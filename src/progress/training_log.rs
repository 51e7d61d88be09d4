//! The training log: sets by day and lift, in order of time, with what is odd about them.
//!
//! In: checked rows (read by [`super::log_file`]). Out: a [`Log`] of one lift or of several, sorted by
//! day, and which rows are out of order, pasted twice or failed. Nothing is left out silently.

use super::day::Day;
use super::log_note::LogNote;
use crate::error::{Error, LogFault, LogRowFault, Result};
use crate::movement::lift_name;
use crate::units::{Mass, Speed};
use std::collections::{BTreeMap, BTreeSet};

/// One set of a log.
#[derive(Debug, Clone, PartialEq)]
pub struct LogEntry {
    /// Line of the file, counted from 1.
    pub line: usize,
    /// Who lifted, where the log says so.
    pub athlete: Option<String>,
    /// Day of the session.
    pub day: Day,
    /// The lift in the form of a movement's name, such as "bench-press".
    pub lift: String,
    /// Load, with body mass where the lift moves it (pull-up).
    pub load: Mass,
    /// Repetitions done; 0 for a failed attempt.
    pub repetitions: u32,
    /// Mean velocity of the fastest repetition, if noted.
    pub velocity: Option<Speed>,
    /// Repetitions left in reserve, if noted.
    pub reserve: Option<f64>,
}

/// A row that was left out on request.
#[derive(Debug, Clone, PartialEq)]
pub struct SkippedRow {
    /// Line of the file, counted from 1.
    pub line: usize,
    /// Everything that is wrong with it.
    pub faults: Vec<LogRowFault>,
}

/// What is odd about rows that were kept; lines of the file, counted from 1.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum OddRows {
    /// The log runs from the newest day to the oldest.
    NewestFirst,
    /// Days before the one of the row above.
    OutOfOrder(Vec<usize>),
    /// Sets of a day that stand further up already.
    PastedTwice(Vec<usize>),
    /// Failed attempts.
    Failed(Vec<usize>),
}

/// A training log in order of time.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Log {
    /// The sets, sorted by day; sets of one day stay in the order of the file.
    pub entries: Vec<LogEntry>,
    /// What is odd and was kept.
    pub odd: Vec<OddRows>,
    /// Rows left out on request, the first ones.
    pub skipped: Vec<SkippedRow>,
    /// How many more were left out.
    pub skipped_more: usize,
    /// What was understood that its reader may not expect.
    pub notes: Vec<LogNote>,
}

impl Log {
    /// Sorts rows by day and notes what is odd about them.
    #[must_use]
    pub fn from_rows(mut rows: Vec<LogEntry>, skipped: Vec<SkippedRow>) -> Self {
        let odd = [out_of_order(&rows), pasted_twice(&rows), failed(&rows)];
        let odd = odd.into_iter().flatten().collect();
        rows.sort_by_key(|entry| (entry.day, entry.line));
        Self {
            entries: rows,
            odd,
            skipped,
            ..Self::default()
        }
    }

    /// The log of a lift that moves the body, the body in every load, and whether it had to be added: a load below the body that is
    /// lifted with it is what hangs beside.
    #[must_use]
    pub fn holding_body(self, body: Mass) -> (Self, bool) {
        let leaves_out = self.entries.iter().any(|entry| entry.load < body);
        let add = |entry: LogEntry| LogEntry {
            load: entry.load + body,
            ..entry
        };
        if !leaves_out {
            return (self, false);
        }
        let entries = self.entries.into_iter().map(add).collect();
        (Self { entries, ..self }, true)
    }

    /// The lifts of the log with their number of sets, by name.
    #[must_use]
    pub fn lifts(&self) -> Vec<(String, usize)> {
        let mut counts: BTreeMap<&str, usize> = BTreeMap::new();
        for entry in &self.entries {
            *counts.entry(&entry.lift).or_default() += 1;
        }
        counts
            .into_iter()
            .map(|(lift, count)| (lift.to_owned(), count))
            .collect()
    }

    /// The sets of one lift; without a name, of the only lift there is.
    ///
    /// **Fails** when the log is empty, when it mixes lifts and none is named (one trend through two
    /// lifts means nothing), or when it has no set of the named one.
    pub fn of_lift(&self, lift: Option<&str>) -> Result<Self> {
        let lifts = self.lifts();
        if lifts.is_empty() {
            return Err(Error::bad(LogFault::NoSets));
        }
        let wanted = match lift {
            Some(lift) => lift_name(lift),
            None if lifts.len() == 1 => lifts[0].0.clone(),
            None => return Err(Error::bad(LogFault::MixedLifts(lifts))),
        };
        if !lifts.iter().any(|(lift, _)| *lift == wanted) {
            let lift = wanted;
            return Err(Error::bad(LogFault::NoSetOf { lift, lifts }));
        }
        let entries = self
            .entries
            .iter()
            .filter(|entry| entry.lift == wanted)
            .cloned()
            .collect();
        let mut of_lift = self.with(entries);
        let others = lifts.into_iter().filter(|(lift, _)| *lift != wanted);
        let others: Vec<(String, usize)> = others.collect();
        if !others.is_empty() {
            of_lift.notes.push(LogNote::OtherLifts(others));
        }
        Ok(of_lift)
    }

    /// The athletes of the log with their number of sets, by name.
    #[must_use]
    pub fn athletes(&self) -> Vec<(String, usize)> {
        let mut counts: BTreeMap<&str, usize> = BTreeMap::new();
        for entry in &self.entries {
            if let Some(athlete) = &entry.athlete {
                *counts.entry(athlete).or_default() += 1;
            }
        }
        counts
            .into_iter()
            .map(|(athlete, count)| (athlete.to_owned(), count))
            .collect()
    }

    /// The sets of one athlete; without a name, of the only one there is.
    ///
    /// **Fails** when the log has several and none is named, and when it has no set of the named one. Case and blanks
    /// around a name do not matter.
    pub fn of_athlete(&self, athlete: Option<&str>) -> Result<Self> {
        let athletes = self.athletes();
        let Some(wanted) = athlete.map(|name| name.trim().to_lowercase()) else {
            return match athletes.len() {
                0 | 1 => Ok(self.clone()),
                _ => Err(Error::bad(LogFault::SeveralAthletes(athletes))),
            };
        };
        let is_wanted = |entry: &&LogEntry| {
            let athlete = entry.athlete.as_ref();
            athlete.is_some_and(|name| name.to_lowercase() == wanted)
        };
        let entries: Vec<LogEntry> = self.entries.iter().filter(is_wanted).cloned().collect();
        if entries.is_empty() {
            let athlete = athlete.unwrap_or_default().to_owned();
            return Err(Error::bad(LogFault::NoSetOfAthlete { athlete, athletes }));
        }
        Ok(self.with(entries))
    }

    /// Some of its sets, with what is odd about those.
    fn with(&self, mut entries: Vec<LogEntry>) -> Self {
        entries.sort_by_key(|entry| entry.line);
        Self {
            skipped_more: self.skipped_more,
            notes: self.notes.clone(),
            ..Self::from_rows(entries, self.skipped.clone())
        }
    }

    /// The sets of each day, in order of time.
    #[must_use]
    pub fn by_day(&self) -> Vec<(Day, &[LogEntry])> {
        self.entries
            .chunk_by(|a, b| a.day == b.day)
            .filter_map(|sets| sets.first().map(|first| (first.day, sets)))
            .collect()
    }
}

fn out_of_order(rows: &[LogEntry]) -> Option<OddRows> {
    let back: Vec<usize> = rows
        .windows(2)
        .filter(|pair| pair[1].day < pair[0].day)
        .map(|pair| pair[1].line)
        .collect();
    if back.is_empty() {
        return None;
    }
    let newest_first = rows.windows(2).all(|pair| pair[1].day <= pair[0].day);
    Some(if newest_first {
        OddRows::NewestFirst
    } else {
        OddRows::OutOfOrder(back)
    })
}

/// Equal sets of one session are normal; the same day and sets again further down are a day pasted twice.
fn pasted_twice(rows: &[LogEntry]) -> Option<OddRows> {
    let mut seen: BTreeSet<SetKey> = BTreeSet::new();
    let mut twice = Vec::new();
    for block in rows.chunk_by(|a, b| a.day == b.day) {
        let keys: Vec<_> = block.iter().map(set_key).collect();
        twice.extend(
            block
                .iter()
                .zip(&keys)
                .filter(|(_, key)| seen.contains(*key))
                .map(|(entry, _)| entry.line),
        );
        seen.extend(keys);
    }
    (!twice.is_empty()).then_some(OddRows::PastedTwice(twice))
}

/// What makes a set the same as another.
type SetKey<'a> = (Day, Option<&'a str>, &'a str, u64, u32);

fn set_key(entry: &LogEntry) -> SetKey<'_> {
    (
        entry.day,
        entry.athlete.as_deref(),
        entry.lift.as_str(),
        entry.load.as_kg().to_bits(),
        entry.repetitions,
    )
}

fn failed(rows: &[LogEntry]) -> Option<OddRows> {
    let failed: Vec<usize> = rows
        .iter()
        .filter(|entry| entry.repetitions == 0)
        .map(|entry| entry.line)
        .collect();
    (!failed.is_empty()).then_some(OddRows::Failed(failed))
}
