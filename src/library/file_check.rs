//! The whole check of one model file, as `torquill check FILE` asks for it.
//!
//! In: a file or a text, and its kind, which the folder or the fields tell. Out: [`FileFacts`], or every
//! fault that can be known: types, ranges, names that lead nowhere, sources that nobody listed.

use super::bounded_read::text_of_file;
use super::checked::CheckedFile;
use super::complaint::{Complaint, any_wrong, complaint};
use super::file_facts::{self, FileFacts};
use super::layered_text::LayeredText;
use super::merging::EXTENDS;
use super::operating_rules::odd_fibres;
use super::outline::RecordOutline;
use super::read::no_record;
use super::record_fields::fields_of;
use super::records::Library;
use super::technique_rules::technique_of;
use super::{body_rules, curve_rules, movement_rules, piece_rules};
use crate::anatomy::{Lifter, LifterRecord, MuscleTable};
use crate::bounds::{Bounds, bounds};
use crate::error::{BrokenRule, Error, Fault, ModelFault, PathRule, Result, Shelf};
use crate::movement::{Movement, trace};
use crate::source::Publication;
use std::collections::BTreeMap;
use std::path::Path;
use std::sync::Arc;

/// The lifter whose limbs a movement is tried with.
const REFERENCE_LIFTER: &str = "reference-man";

impl Library {
    /// Reads a model file and checks everything about it.
    ///
    /// **Fails** with every fault that can be known.
    pub fn check_file(&self, path: &Path) -> Result<CheckedFile> {
        let text = text_of_file(path)?;
        let file = path.display().to_string();
        let alone = || LayeredText::of(&file, &text);
        if is_calibration(path) {
            let no_rules = |_: &ron::Value| Vec::new();
            let facts = |_: &ron::Value| FileFacts::Calibration;
            return self.checked(Shelf::Published, &alone(), no_rules, facts);
        }
        match path.file_name().and_then(|name| name.to_str()) {
            Some("sources.ron") => {
                self.checked(Shelf::Published, &alone(), sources_rules, |sources| {
                    FileFacts::Publications(sources.len())
                })
            }
            Some("bounds.ron") => {
                let no_rules = |_: &Bounds| Vec::new();
                self.checked(Shelf::Published, &alone(), no_rules, |_| FileFacts::Bounds)
            }
            _ => self.check_text(Shelf::of_path(path), &file, &text),
        }
    }

    /// Checks the text of a model file; without a kind the fields tell it.
    ///
    /// **Fails** with every fault that can be known.
    pub fn check_text(&self, shelf: Option<Shelf>, file: &str, text: &str) -> Result<CheckedFile> {
        let shelf = match shelf {
            Some(shelf) => shelf,
            None => self.kind_by_fields(file, text)?,
        };
        let text = &self.layered_text(shelf, file, text)?;
        match shelf {
            Shelf::Lifters => {
                let rules = |lifter: &_| self.lifter_complaints(file, lifter);
                self.checked(shelf, text, rules, file_facts::lifter)
            }
            Shelf::Segments => {
                self.checked(shelf, text, body_rules::segment_table, file_facts::segments)
            }
            Shelf::Muscles => {
                let rules = |table: &_| self.muscle_complaints(table);
                self.checked(shelf, text, rules, file_facts::muscles)
            }
            Shelf::Curves => self.checked(shelf, text, curve_rules::curves, file_facts::curves),
            Shelf::Sarcomeres => {
                self.checked(shelf, text, curve_rules::sarcomere, file_facts::sarcomere)
            }
            Shelf::Movements => {
                let rules = |movement: &_| self.movement_rules(movement);
                self.checked(shelf, text, rules, file_facts::movement)
            }
            Shelf::Bands => self.checked(shelf, text, piece_rules::band, file_facts::band),
            Shelf::Chains => self.checked(shelf, text, piece_rules::chain, file_facts::chain),
            Shelf::Setups => self.checked(shelf, text, |s| self.setup_rules(s), file_facts::setup),
            Shelf::Gyms => self.checked(shelf, text, |g| self.gym_rules(g), file_facts::gym),
            Shelf::Published => self.check_published(file, text),
        }
    }

    /// The rules for a lifter, and what follows for the finished body and its fibres in every lift.
    fn lifter_complaints(&self, file: &str, record: &LifterRecord) -> Vec<Complaint> {
        let muscles = self.muscle_table(&record.muscles).ok();
        let table = muscles.as_ref().map(|(table, _)| table);
        let mut complaints = self.lifter_rules(record, table);
        if any_wrong(&complaints) {
            return complaints;
        }
        let text = Arc::new(LayeredText::of(file, ""));
        let whole = self.with_strength(record.clone());
        let built = whole.and_then(|record| self.with_tables("", (record, text), muscles)?.build());
        if let Ok(lifter) = built {
            complaints.extend(body_rules::lifter(&lifter));
            complaints.extend(self.odd_in_all_lifts(&lifter));
        }
        complaints
    }

    /// The rules for a muscle table, and what follows for the reference lifter's fibres in every lift.
    fn muscle_complaints(&self, table: &MuscleTable) -> Vec<Complaint> {
        let mut complaints = self.muscle_rules(table);
        if any_wrong(&complaints) {
            return complaints;
        }
        let built = self.lifter_files(REFERENCE_LIFTER).and_then(|files| {
            let text = |index: usize| files.texts[index].clone();
            let muscles = Some((table.clone(), text(2)));
            self.with_tables("", (files.record.clone(), text(0)), muscles)?
                .build()
        });
        if let Ok(lifter) = built {
            complaints.extend(self.odd_in_all_lifts(&lifter));
        }
        complaints
    }

    /// Muscles whose fibres are odd in a lift of the library, each told once: where it is worst first.
    fn odd_in_all_lifts(&self, lifter: &Lifter) -> Vec<Complaint> {
        let mut found: BTreeMap<String, BrokenRule<Fault>> = BTreeMap::new();
        let names = self.movements();
        for movement in names.iter().filter_map(|name| self.movement(name).ok()) {
            for odd in odd_fibres(lifter, &movement) {
                let is_wrong = matches!(odd.broken, BrokenRule::Muscle(_));
                if is_wrong || !found.contains_key(&odd.muscle) {
                    found.insert(odd.muscle, odd.broken);
                }
            }
        }
        let path = |muscle: String| format!("muscles.{muscle}.optimal_fibre_length");
        found
            .into_iter()
            .map(|(muscle, broken)| complaint(path(muscle), broken))
            .collect()
    }

    /// The rules for a movement, and whether the reference lifter's limbs and fibres can do it.
    fn movement_rules(&self, movement: &Movement) -> Vec<Complaint> {
        let mut complaints = movement_rules::movement(movement);
        if any_wrong(&complaints) {
            return complaints;
        }
        if let Ok(lifter) = self.lifter(REFERENCE_LIFTER) {
            complaints.extend(technique_of(movement, &lifter));
            if let Err(error) = trace(movement, &lifter, bounds().samples.fewest()) {
                complaints.extend(error.faults().iter().map(|fault| {
                    let cannot = PathRule::CannotBeDone {
                        lifter: REFERENCE_LIFTER.to_owned(),
                        fault: Box::new(fault.clone()),
                    };
                    complaint("path", BrokenRule::Path(cannot))
                }));
            }
            let odd = odd_fibres(&lifter, movement);
            complaints.extend(odd.into_iter().map(|odd| complaint("path", odd.broken)));
        }
        complaints
    }

    /// The kind whose fields are most like those of a text; what it extends tells it where only one kind has that name.
    fn kind_by_fields(&self, file: &str, text: &str) -> Result<Shelf> {
        no_record(file, text)?;
        let outline = RecordOutline::of(text);
        let extended = outline.children(0).find_map(|index| {
            let is_it = outline.name(index) == Some(EXTENDS);
            is_it.then(|| outline.slice(&outline.nodes[index].value).trim_matches('"'))
        });
        let kinds = Shelf::ALL.into_iter();
        let holding: Vec<Shelf> = kinds
            .filter(|shelf| {
                extended.is_some_and(|name| self.names(*shelf).iter().any(|known| known == name))
            })
            .collect();
        match holding.as_slice() {
            [one] => Ok(*one),
            _ => most_alike(&outline).ok_or_else(|| {
                Error::bad(ModelFault::NoKind {
                    file: file.to_owned(),
                })
            }),
        }
    }
}

/// Whether a file is one of the calibration, which the maintenance program reads and checks.
fn is_calibration(path: &Path) -> bool {
    let folder = path.parent().and_then(Path::file_name);
    folder.is_some_and(|folder| folder == "calibration")
}

/// No publication without its citation and its use.
fn sources_rules(sources: &BTreeMap<String, Publication>) -> Vec<Complaint> {
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
    complaints.collect()
}

/// The kind whose fields are most like those of a text.
fn most_alike(outline: &RecordOutline<'_>) -> Option<Shelf> {
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
    best.filter(|shelf| likeness(shelf).0 > 0)
}
