//! One record read and checked by all that can be known of it: its types, its rules and its sources.
//!
//! In: a text, the rules of its kind. Out: the record's facts and what is unlikely about it, or every fault in the
//! order of the text.

use super::complaint::{Complaint, at_their_places, doubts_and_faults};
use super::file_facts::FileFacts;
use super::layered_text::LayeredText;
use super::mending::{MendedText, read_on};
use super::outline::RecordOutline;
use super::records::Library;
use super::sourced_rules::unsourced;
use crate::error::{
    BodyRule, BrokenRule, Error, Fault, ModelFault, PathRule, Result, Shelf, TechniqueRule,
    TextFault, What,
};
use serde::de::DeserializeOwned;

/// A model file without a fault.
#[derive(Debug, Clone, PartialEq)]
pub struct CheckedFile {
    /// What it holds.
    pub facts: FileFacts,
    /// The files that it extends, the nearest first.
    pub extends: Vec<String>,
    /// What is accepted and yet unlikely.
    pub doubts: Vec<Fault>,
}

impl Library {
    /// Reads a record, collects the faults of types, rules and sources, and gives its facts.
    pub(super) fn checked<T: DeserializeOwned>(
        &self,
        shelf: Shelf,
        text: &LayeredText,
        rules: impl Fn(&T) -> Vec<Complaint>,
        facts: impl Fn(&T) -> FileFacts,
    ) -> Result<CheckedFile> {
        let MendedText {
            record,
            text: mended,
            mut faults,
        } = read_on::<T>(shelf, text);
        let mut complaints = record.as_ref().map(&rules).unwrap_or_default();
        complaints.extend(unsourced(shelf, text));
        let (doubts, broken) = doubts_and_faults(complaints);
        let broken = if faults.is_empty() {
            broken
        } else {
            stand_alone(broken, &faults, &RecordOutline::of(text.text()))
        };
        let broken = at_their_places(broken, mended.file(), mended.text());
        let is_whole = faults.is_empty();
        let is_own = |fault: &Fault| {
            let place = fault.place.as_ref();
            is_whole || place.is_none_or(|place| !mended.is_made_up(place.bytes().start))
        };
        let broken = broken.into_iter().filter(is_own);
        faults.extend(broken.map(|fault| mended.located(fault)));
        faults.extend(self.source_faults(text)?);
        match record {
            Some(record) if faults.is_empty() => Ok(CheckedFile {
                facts: facts(&record),
                extends: text.files().skip(1).map(str::to_owned).collect(),
                doubts: text.doubts(doubts),
            }),
            _ => Err(Error::bad_input(in_order(faults, text.file()))),
        }
    }
}

/// The complaints that hold whatever else is wrong in the file: those of a value by itself, and technique parameters
/// that nobody wrote. The angles of a joint that there is not have no bounds.
fn stand_alone(
    complaints: Vec<Complaint>,
    faults: &[Fault],
    written: &RecordOutline<'_>,
) -> Vec<Complaint> {
    let unknown = |name: &str| {
        faults.iter().any(|fault| match &fault.what {
            What::Model(ModelFault::Text(TextFault::NoSuchWord { choice, .. })) => {
                choice.as_deref() == Some(name)
            }
            _ => false,
        })
    };
    // A joint or path that there is not was read as another, whose rules say nothing.
    let (no_joint, no_path) = (unknown("Dof"), unknown("PathRecord"));
    let is_other = no_joint || no_path;
    let stands = |complaint: &Complaint| match &complaint.broken {
        BrokenRule::Outside(_) => !(is_other && complaint.path.starts_with("path.")),
        BrokenRule::Technique(TechniqueRule::Missing { name, .. }) => {
            !no_path && written.exact(&format!("technique.{name}")).is_none()
        }
        BrokenRule::Technique(
            TechniqueRule::WrongKind { .. } | TechniqueRule::ForeignWord { .. },
        )
        | BrokenRule::Path(PathRule::TorqueOfSeveralJoints) => !no_path,
        BrokenRule::Path(PathRule::LimbOfOtherJoint { .. }) => !is_other,
        BrokenRule::Empty
        | BrokenRule::NoSuchFile { .. }
        | BrokenRule::Body(BodyRule::NoSource { .. } | BodyRule::NoSuchGroup { .. }) => true,
        _ => false,
    };
    complaints.into_iter().filter(stands).collect()
}

/// Faults in the order of the file itself, those of the files that it extends behind them; none twice.
pub(super) fn in_order(mut faults: Vec<Fault>, file: &str) -> Vec<Fault> {
    faults.sort_by_key(|fault| {
        let place = fault.place.as_ref();
        (
            place.is_some_and(|place| place.file != file),
            place.map(|place| place.start),
        )
    });
    faults.dedup();
    faults
}
