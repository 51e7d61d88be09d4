//! A broken rule, told by the path of the value, and where that path stands in its file.
//!
//! In: what the rules find. Out: faults with their place, all of a file at once.

use super::outline::Outline;
use crate::error::{Error, Fault, Result};

/// One broken rule.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Complaint {
    /// Path of the value: `muscles.brachialis.pennation`.
    path: String,
    /// What stands between path and message: the message reads on, or says itself what it is about.
    between: &'static str,
    message: String,
    hints: Vec<String>,
}

impl Complaint {
    /// A complaint about the value of a path; the message reads on from the path.
    pub fn new(path: impl Into<String>, message: impl Into<String>) -> Self {
        Self {
            path: path.into(),
            between: " ",
            message: message.into(),
            hints: Vec::new(),
        }
    }

    /// What another room says about the value of a path, with its next moves.
    pub fn of(path: &str, error: &Error) -> Self {
        let faults = error.faults();
        let messages: Vec<&str> = faults.iter().map(|fault| fault.message.as_str()).collect();
        let message = messages.join("; ");
        Self {
            path: path.to_owned(),
            between: ": ",
            message,
            hints: faults.iter().flat_map(Fault::every_hint).collect(),
        }
    }

    /// The same complaint with one more next move.
    pub fn hint(mut self, hint: impl Into<String>) -> Self {
        self.hints.push(hint.into());
        self
    }

    /// The same complaint with its path inside a group, unless it begins with `except`.
    pub fn in_group(mut self, group: &str, except: &str) -> Self {
        if !self.path.starts_with(except) {
            self.path = format!("{group}.{}", self.path);
        }
        self
    }

    /// The fault without a place.
    fn fault(self) -> Fault {
        // A technique parameter is named without the field that holds its value.
        let path = self.path.strip_suffix(".value").unwrap_or(&self.path);
        let message = if path.is_empty() {
            self.message
        } else {
            format!("`{path}`{}{}", self.between, self.message)
        };
        self.hints
            .into_iter()
            .fold(Fault::new(message), Fault::hint)
    }
}

/// Nothing, or all complaints as one error, each at its place in the file.
pub(super) fn none_in_file(complaints: Vec<Complaint>, file: &str, text: &str) -> Result<()> {
    if complaints.is_empty() {
        return Ok(());
    }
    let outline = Outline::of(text);
    let faults = complaints.into_iter().map(|complaint| {
        let node = outline.find(&complaint.path);
        // The whole file marks nothing: its first line would say no more than its name.
        let stretch = node.map(|node| {
            let whole = outline.slice(&node.value).contains('\n');
            match &node.key {
                Some(key) if whole => key.clone(),
                _ if whole => node.value.start..node.value.start + 1,
                _ => node.value.clone(),
            }
        });
        let fault = complaint.fault();
        match stretch {
            Some(stretch) => fault.at(outline.place(file, &stretch)),
            None => fault,
        }
    });
    Err(Error::bad_input(faults.collect()))
}

/// Nothing, or all complaints as one error, for values that stand in no file.
pub(super) fn none(complaints: Vec<Complaint>) -> Result<()> {
    if complaints.is_empty() {
        Ok(())
    } else {
        let faults = complaints.into_iter().map(Complaint::fault).collect();
        Err(Error::bad_input(faults))
    }
}

/// Collects complaints about values outside their range, in the unit that people use.
#[derive(Debug, Default)]
pub(super) struct Rules {
    /// What was found so far.
    pub complaints: Vec<Complaint>,
}

impl Rules {
    /// A complaint unless `least ≤ value ≤ most`; not a number is outside too.
    pub fn within(&mut self, path: &str, value: f64, least: f64, most: f64, unit: &str) {
        if !(least..=most).contains(&value) {
            let gap = if unit.is_empty() { "" } else { " " };
            let value = figures(value);
            self.complaints.push(Complaint::new(
                path,
                format!("is {value}{gap}{unit}; it must lie between {least} and {most}{gap}{unit}"),
            ));
        }
    }

    /// A complaint unless `0 < value ≤ most`.
    pub fn positive(&mut self, path: &str, value: f64, most: f64, unit: &str) {
        if !(value > 0.0 && value <= most) {
            let gap = if unit.is_empty() { "" } else { " " };
            let value = figures(value);
            self.complaints.push(Complaint::new(
                path,
                format!("is {value}{gap}{unit}; it must be above 0 and at most {most}{gap}{unit}"),
            ));
        }
    }

    /// A complaint unless `least ≤ first ≤ second ≤ most`.
    pub fn rising(&mut self, path: &str, (first, second): (f64, f64), least: f64, most: f64) {
        self.within(path, first, least, most, "");
        self.within(path, second, first, most, "");
    }

    /// Adds one complaint.
    pub fn add(&mut self, complaint: Complaint) {
        self.complaints.push(complaint);
    }
}

/// A number with the digits that matter in a message.
fn figures(value: f64) -> String {
    if value != 0.0 && value.abs() < 0.001 || value.abs() >= 1.0e7 {
        format!("{value:e}")
    } else {
        crate::units::rounded(value, 4)
    }
}
