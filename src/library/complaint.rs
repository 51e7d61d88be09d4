//! Broken rules, told by the path of the value, and where that path stands in its file.
//!
//! In: what the rules find. Out: faults with their place, all of a file at once.

use super::outline::RecordOutline;
use crate::bounds::{Bound, LowerEnd};
use crate::error::{BrokenRule, Doubt, Error, Fault, Place, Result, RuleFault};
use std::collections::BTreeMap;

/// A broken rule that may hold what another room says.
pub(super) type Complaint = RuleFault<Fault>;

/// A complaint about the value of a path.
pub(super) fn complaint(path: impl Into<String>, broken: BrokenRule<Fault>) -> Complaint {
    Complaint {
        path: path.into(),
        broken,
    }
}

/// What the laws of a room, or the reader of another file, say of the value of a path.
pub(super) fn said(path: String, error: &Error) -> Complaint {
    complaint(path, BrokenRule::Said(error.faults().to_vec()))
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

/// Complaints whose places are looked for; those behind them are counted, not shown, and stand where the last one does.
const MOST_PLACED: usize = 500;

/// Complaints as faults, each at its place in the file.
pub(super) fn at_their_places(complaints: Vec<Complaint>, file: &str, text: &str) -> Vec<Fault> {
    if complaints.is_empty() {
        return Vec::new();
    }
    let outline = RecordOutline::of(text);
    let mut last: Option<Place> = None;
    let numbered = complaints.into_iter().enumerate();
    let faults = numbered.flat_map(|(number, complaint)| {
        // What is wrong in a file that this one names is told where it stands there.
        if let BrokenRule::Said(elsewhere) = &complaint.broken
            && elsewhere.iter().all(|fault| fault.place.is_some())
        {
            return elsewhere.clone();
        }
        if let Some(place) = last.as_ref().filter(|_| number >= MOST_PLACED) {
            return vec![fault(complaint).at(place.clone())];
        }
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
        vec![match stretch {
            Some(stretch) => {
                let place = outline.place(file, &stretch);
                last = Some(place.clone());
                fault.at(place)
            }
            None => fault,
        }]
    });
    faults.collect()
}

/// Nothing, or all complaints as one error, each at its place in the file; doubts are none.
pub(super) fn none_in_file(complaints: Vec<Complaint>, file: &str, text: &str) -> Result<()> {
    let (_, broken) = doubts_and_faults(complaints);
    if broken.is_empty() {
        return Ok(());
    }
    Err(Error::bad_input(at_their_places(broken, file, text)))
}

/// Nothing, or all complaints as one error, for values that stand in no file; doubts are none.
pub(super) fn none(complaints: Vec<Complaint>) -> Result<()> {
    let (_, broken) = doubts_and_faults(complaints);
    if broken.is_empty() {
        Ok(())
    } else {
        Err(Error::bad_input(broken.into_iter().map(fault).collect()))
    }
}

/// Complaints about what is no more than unlikely, as faults that stand in no file.
pub(super) fn doubts(complaints: Vec<Complaint>) -> Vec<Fault> {
    let (doubts, _) = doubts_and_faults(complaints);
    doubts.into_iter().map(fault).collect()
}

/// What is unlikely, and what is wrong.
pub(super) fn doubts_and_faults(complaints: Vec<Complaint>) -> (Vec<Complaint>, Vec<Complaint>) {
    complaints.into_iter().partition(Complaint::is_doubt)
}

/// Whether anything is wrong and not only unlikely.
pub(super) fn any_wrong(complaints: &[Complaint]) -> bool {
    complaints.iter().any(|complaint| !complaint.is_doubt())
}

/// Collects complaints about values outside their bounds and other broken rules.
#[derive(Debug, Default)]
pub(super) struct Rules {
    /// What was found so far.
    pub complaints: Vec<Complaint>,
    /// Every range that was asked for, by the path of its value, where that is wanted.
    pub asked: Option<BTreeMap<String, PlausibleRange>>,
}

/// What a value may be, in a unit of its own.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct PlausibleRange {
    /// The ends.
    pub ends: (f64, f64),
    /// Whether the lower end itself is accepted.
    pub least_is_inside: bool,
    /// The ends of what one meets.
    pub usual: Option<(f64, f64)>,
    /// How much of SI one of the unit is.
    pub in_si: f64,
}

impl PlausibleRange {
    /// The range of a bound.
    pub fn of(bound: &Bound) -> Self {
        Self {
            ends: (bound.least(), bound.most()),
            least_is_inside: matches!(bound.from, LowerEnd::Least(_)),
            usual: bound.usual,
            in_si: bound.unit.in_si(),
        }
    }

    /// The range in SI of what the bound allows of a multiple of a value.
    pub fn times(bound: &Bound, value_si: f64) -> Self {
        Self {
            in_si: value_si,
            ..Self::of(bound)
        }
    }
}

impl Rules {
    /// A complaint unless the value, in the unit of the bound, is inside.
    pub fn within(&mut self, path: &str, value: f64, bound: &'static Bound) {
        self.asks(path, PlausibleRange::of(bound));
        if let Some(outside) = bound.outside(value) {
            self.add(path, BrokenRule::Outside(outside));
        } else if let Some(unlikely) = bound.unlikely(value) {
            self.add(path, BrokenRule::Doubt(Doubt::Unlikely(unlikely)));
        }
    }

    /// Notes a range that is asked for; the narrower one where there are two.
    pub fn asks(&mut self, path: &str, range: PlausibleRange) {
        if let Some(asked) = &mut self.asked {
            let width = |range: &PlausibleRange| range.in_si * (range.ends.1 - range.ends.0);
            let held = asked.entry(path.to_owned()).or_insert(range);
            if width(&range) < width(held) {
                *held = range;
            }
        }
    }

    /// A complaint unless both numbers are inside and the second is not below the first.
    pub fn rising(&mut self, path: &str, (first, second): (f64, f64), bound: &'static Bound) {
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
