//! The whole check of one model file, as `torquill check FILE` asks for it.
//!
//! In: a file or a text, and its kind, which the folder or the fields tell. Out: [`FileFacts`], or every
//! fault that can be known: types, ranges, names that lead nowhere, sources that nobody listed.

use super::complaint::{Complaint, complaint, none_in_file};
use super::file_facts::{self, FileFacts};
use super::outline::RecordOutline;
use super::read::{no_record, read};
use super::record_fields::fields_of;
use super::records::{Library, read_text};
use super::technique_rules::technique_of;
use super::{body_rules, curve_rules, movement_rules};
use crate::anatomy::LifterRecord;
use crate::bounds::{Bounds, bounds};
use crate::error::{BrokenRule, Error, ModelFault, PathRule, Result, Shelf};
use crate::movement::{Movement, trace};
use crate::resistance::{Band, Chain};
use crate::source::Publication;
use std::collections::BTreeMap;
use std::path::Path;

/// The lifter whose limbs a movement is tried with.
const REFERENCE_LIFTER: &str = "reference-man";

impl Library {
    /// Reads a model file and checks everything about it.
    ///
    /// **Fails** with every fault that can be known.
    pub fn check_file(&self, path: &Path) -> Result<FileFacts> {
        let text = read_text(path)?;
        let file = path.display().to_string();
        if is_calibration(path) {
            let no_rules = |_: &ron::Value| Vec::new();
            return self.checked(&file, &text, no_rules, |_| FileFacts::Calibration);
        }
        match path.file_name().and_then(|name| name.to_str()) {
            Some("sources.ron") => check_sources(&file, &text),
            Some("bounds.ron") => read::<Bounds>(&file, &text).map(|_| FileFacts::Bounds),
            _ => self.check_text(Shelf::of_path(path), &file, &text),
        }
    }

    /// Checks the text of a model file; without a kind the fields tell it.
    ///
    /// **Fails** with every fault that can be known.
    pub fn check_text(&self, shelf: Option<Shelf>, file: &str, text: &str) -> Result<FileFacts> {
        let shelf = match shelf {
            Some(shelf) => shelf,
            None => kind_by_fields(file, text)?,
        };
        match shelf {
            Shelf::Lifters => {
                let rules = |lifter: &_| self.lifter_complaints(lifter);
                self.checked(file, text, rules, file_facts::lifter)
            }
            Shelf::Segments => {
                self.checked(file, text, body_rules::segment_table, file_facts::segments)
            }
            Shelf::Muscles => {
                self.checked(file, text, |m| self.muscle_rules(m), file_facts::muscles)
            }
            Shelf::Curves => self.checked(file, text, curve_rules::curves, file_facts::curves),
            Shelf::Sarcomeres => {
                self.checked(file, text, curve_rules::sarcomere, file_facts::sarcomere)
            }
            Shelf::Movements => {
                let rules = |movement: &_| self.movement_rules(movement);
                self.checked(file, text, rules, file_facts::movement)
            }
            // Bands and chains check themselves when they are read.
            Shelf::Bands => self.checked(file, text, |_: &Band| Vec::new(), file_facts::band),
            Shelf::Chains => self.checked(file, text, |_: &Chain| Vec::new(), file_facts::chain),
            Shelf::Setups => self.checked(file, text, |s| self.setup_rules(s), file_facts::setup),
            Shelf::Gyms => self.checked(file, text, |g| self.gym_rules(g), file_facts::gym),
            Shelf::Published => self.check_published(file, text),
        }
    }

    fn lifter_complaints(&self, record: &LifterRecord) -> Vec<Complaint> {
        let muscles = self.muscle_table(&record.muscles).ok();
        self.lifter_rules(record, muscles.as_ref())
    }

    /// The rules for a movement, and whether the reference lifter's limbs can do it.
    fn movement_rules(&self, movement: &Movement) -> Vec<Complaint> {
        let mut complaints = movement_rules::movement(movement);
        if !complaints.is_empty() {
            return complaints;
        }
        if let Ok(lifter) = self.lifter(REFERENCE_LIFTER) {
            complaints = technique_of(movement, &lifter);
            if let Err(error) = trace(movement, &lifter, bounds().samples.fewest()) {
                complaints.extend(error.faults().iter().map(|fault| {
                    let cannot = PathRule::CannotBeDone {
                        lifter: REFERENCE_LIFTER.to_owned(),
                        fault: Box::new(fault.clone()),
                    };
                    complaint("path", BrokenRule::Path(cannot))
                }));
            }
        }
        complaints
    }
}

/// Whether a file is one of the calibration, which the maintenance program reads and checks.
fn is_calibration(path: &Path) -> bool {
    let folder = path.parent().and_then(Path::file_name);
    folder.is_some_and(|folder| folder == "calibration")
}

fn check_sources(file: &str, text: &str) -> Result<FileFacts> {
    let sources: BTreeMap<String, Publication> = read(file, text)?;
    let complaints = sources.iter().flat_map(|(key, publication)| {
        let fields = [
            ("citation", &publication.citation),
            ("used_for", &publication.used_for),
        ];
        fields
            .into_iter()
            .filter(|(_, text)| text.trim().is_empty())
            .map(move |(field, _)| complaint(format!("{key}.{field}"), BrokenRule::Empty))
    });
    none_in_file(complaints.collect(), file, text)?;
    Ok(FileFacts::Publications(sources.len()))
}

/// The kind whose fields are most like those of a text.
fn kind_by_fields(file: &str, text: &str) -> Result<Shelf> {
    no_record(file, text)?;
    let outline = RecordOutline::of(text);
    let names: Vec<&str> = outline
        .children(0)
        .filter_map(|index| outline.name(index))
        .collect();
    let likeness = |shelf: &Shelf| {
        let records = fields_of(*shelf).into_iter().map(|fields| {
            let common = names.iter().filter(|name| fields.contains(name)).count();
            (common, common * 100 / fields.len().max(1))
        });
        records.max().unwrap_or((0, 0))
    };
    let best = Shelf::ALL.into_iter().max_by_key(likeness);
    best.filter(|shelf| likeness(shelf).0 > 0).ok_or_else(|| {
        Error::bad(ModelFault::NoKind {
            file: file.to_owned(),
        })
    })
}
