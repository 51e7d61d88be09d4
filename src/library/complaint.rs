//! Broken rules, told by the path of the value, and where that path stands in its file.
//!
//! In: what the rules find. Out: faults with their place, all of a file at once.

use super::outline::RecordOutline;
use crate::bounds::Bound;
use crate::error::{BrokenRule, Error, Fault, Result, RuleFault};

/// A broken rule that may hold what another room says.
pub(super) type Complaint = RuleFault<Fault>;

/// A complaint about the value of a path.
pub(super) fn complaint(path: impl Into<String>, broken: BrokenRule<Fault>) -> Complaint {
    Complaint {
        path: path.into(),
        broken,
    }
}

/// The same complaint with its path inside a group, unless it begins with `except`.
pub(super) fn in_group(complaint: Complaint, group: &str, except: &str) -> Complaint {
    if complaint.path.starts_with(except) {
        return complaint;
    }
    Complaint {
        path: format!("{group}.{}", complaint.path),
        ..complaint
    }
}

/// The fault without a place.
fn fault(complaint: Complaint) -> Fault {
    // A technique parameter is named without the field that holds its value.
    let path = complaint.path.strip_suffix(".value");
    Fault::new(Complaint {
        path: path.unwrap_or(&complaint.path).to_owned(),
        broken: complaint.broken,
    })
}

/// Nothing, or all complaints as one error, each at its place in the file.
pub(super) fn none_in_file(complaints: Vec<Complaint>, file: &str, text: &str) -> Result<()> {
    if complaints.is_empty() {
        return Ok(());
    }
    let outline = RecordOutline::of(text);
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
        let fault = fault(complaint);
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
        let faults = complaints.into_iter().map(fault).collect();
        Err(Error::bad_input(faults))
    }
}

/// Collects complaints about values outside their bounds and other broken rules.
#[derive(Debug, Default)]
pub(super) struct Rules {
    /// What was found so far.
    pub complaints: Vec<Complaint>,
}

impl Rules {
    /// A complaint unless the value, in the unit of the bound, is inside.
    pub fn within(&mut self, path: &str, value: f64, bound: &Bound) {
        if let Some(outside) = bound.outside(value) {
            self.add(path, BrokenRule::Outside(outside));
        }
    }

    /// A complaint unless both numbers are inside and the second is not below the first.
    pub fn rising(&mut self, path: &str, (first, second): (f64, f64), bound: &Bound) {
        self.within(path, first, bound);
        self.within(path, second, bound);
        if second < first {
            self.add(path, BrokenRule::NotRising { first, second });
        }
    }

    /// Adds one complaint.
    pub fn add(&mut self, path: impl Into<String>, broken: BrokenRule<Fault>) {
        self.complaints.push(complaint(path, broken));
    }
}
