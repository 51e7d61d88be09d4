//! The whole check of one model file, as `torquill check FILE` asks for it.
//!
//! In: a file or a text, and its kind, which the folder or the fields tell. Out: [`FileFacts`], or every
//! fault that can be known: types, ranges, names that lead nowhere, sources that nobody listed.

use super::bounded_read::text_of_file;
use super::built_in;
use super::checked::CheckedFile;
use super::complaint::{Complaint, any_wrong, complaint, said};
use super::file_facts::{self, FileFacts};
use super::folder_check::model_files;
use super::layered_text::LayeredText;
use super::operating_rules::{OddMuscle, can_do, odd_muscles, way};
use super::outline::{EXTENDS, RecordOutline};
use super::read::{bounded, no_record};
use super::record_fields::fields_of;
use super::records::{Library, LifterFiles, from_its_folder, seen_from};
use super::technique_rules::technique_of;
use super::{body_rules, curve_rules, movement_rules, piece_rules};
use crate::anatomy::{Curves, Lifter, LifterRecord, MuscleTable, SegmentTable, lengths_of};
use crate::bounds::Bounds;
use crate::error::{BrokenRule, Doubt, Error, ModelFault, PathRule, Result, Shelf};
use crate::movement::{Movement, lift_name};
use crate::resistance::{Band, Chain};
use crate::source::Publication;
use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::sync::Arc;

/// The lifter whose limbs a movement is tried with.
const REFERENCE_LIFTER: &str = "reference-man";

impl Library {
    /// Reads a model file and checks everything about it.
    ///
    /// **Fails** with every fault that can be known.
    pub fn check_file(&self, path: &Path) -> Result<CheckedFile> {
        let file = path.display().to_string();
        if path.extension().is_some_and(|ending| ending == "csv") {
            return Err(Error::bad(ModelFault::IsLog { file }));
        }
        let text = text_of_file(path)?;
        // A mark that some editors put before the text is no part of it.
        let text = text.strip_prefix('\u{feff}').unwrap_or(&text);
        bounded(&file, text)?;
        let alone = || LayeredText::of(&file, text);
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
            _ => self.check_text(Shelf::of_path(path), &file, text),
        }
    }

    /// The model files of a folder, and of the folders of kinds in it.
    ///
    /// **Fails** if it cannot be listed or holds none.
    pub fn model_files_in(&self, folder: &Path) -> Result<Vec<PathBuf>> {
        model_files(folder)
    }

    /// Checks the text of a model file; without a kind the fields tell it.
    ///
    /// **Fails** with every fault that can be known.
    pub fn check_text(&self, shelf: Option<Shelf>, file: &str, text: &str) -> Result<CheckedFile> {
        bounded(file, text)?;
        let shelf = match shelf {
            Some(shelf) => shelf,
            None => self.kind_by_fields(file, text)?,
        };
        let text = &self.layered_text(shelf, file, text)?;
        match shelf {
            Shelf::Lifters => {
                let rules = |lifter: &LifterRecord| {
                    let seen = from_its_folder(lifter.clone(), text);
                    self.lifter_complaints(file, &seen)
                };
                self.checked(shelf, text, rules, |lifter| self.lifter_facts(lifter, text))
            }
            Shelf::Segments => {
                let rules = |table: &_| self.segment_complaints(table);
                self.checked(shelf, text, rules, file_facts::segments)
            }
            Shelf::Muscles => {
                let rules = |table: &MuscleTable| {
                    self.muscle_complaints(&MuscleTable {
                        body: seen_from(text, "body", &table.body),
                        ..table.clone()
                    })
                };
                self.checked(shelf, text, rules, file_facts::muscles)
            }
            Shelf::Curves => {
                let rules = |curves: &_| self.curve_complaints(curves);
                self.checked(shelf, text, rules, file_facts::curves)
            }
            Shelf::Sarcomeres => {
                self.checked(shelf, text, curve_rules::sarcomere, file_facts::sarcomere)
            }
            Shelf::Movements => {
                let rules = |movement: &_| self.movement_rules(movement);
                self.checked(shelf, text, rules, file_facts::movement)
            }
            Shelf::Bands => {
                let rules = |band: &Band| {
                    let named = piece_rules::of_its_file(file, band.name());
                    [piece_rules::band(band), named].concat()
                };
                self.checked(shelf, text, rules, file_facts::band)
            }
            Shelf::Chains => {
                let rules = |chain: &Chain| {
                    let named = piece_rules::of_its_file(file, chain.name());
                    [piece_rules::chain(chain), named].concat()
                };
                self.checked(shelf, text, rules, file_facts::chain)
            }
            Shelf::Setups => self.checked(shelf, text, |s| self.setup_rules(s), file_facts::setup),
            Shelf::Gyms => self.checked(shelf, text, |g| self.gym_rules(g), file_facts::gym),
            Shelf::Published => self.check_published(file, text),
        }
    }

    /// The rules for a lifter, and what follows for the finished body in every lift.
    fn lifter_complaints(&self, file: &str, record: &LifterRecord) -> Vec<Complaint> {
        let muscles = self.muscle_table(&record.muscles);
        let table = muscles.as_ref().ok().map(|(table, _)| table);
        let mut complaints = self.lifter_rules(record, table);
        if any_wrong(&complaints) {
            return complaints;
        }
        let unusable = [
            ("segments", self.segment_table(&record.segments).err()),
            ("muscles", muscles.as_ref().err().cloned()),
            ("curves", self.fibre_curves(&record.curves).err()),
        ];
        let unusable = unusable.into_iter();
        complaints
            .extend(unusable.filter_map(|(field, error)| Some(said(field.to_owned(), &error?))));
        let text = Arc::new(LayeredText::of(file, ""));
        let whole = self.with_strength(record.clone());
        let built =
            whole.and_then(|whole| self.with_tables("", (whole, text), muscles.ok())?.build());
        match built {
            Ok(lifter) => {
                let of_body = body_rules::lifter(&lifter).into_iter();
                complaints.extend(of_body.map(|complaint| at_own_length(complaint, record)));
                let strength_in = |lift: &str| record.strength_in(lift);
                complaints.extend(self.odd_in_all_lifts(&lifter, strength_in));
            }
            Err(error) if !any_wrong(&complaints) => complaints.push(said(String::new(), &error)),
            Err(_) => {}
        }
        complaints
    }

    /// What a lifter's file holds; the lengths of its limbs once they are scaled to its height.
    fn lifter_facts(&self, record: &LifterRecord, text: &LayeredText) -> FileFacts {
        let seen = from_its_folder(record.clone(), text);
        let lengths = self.segment_table(&seen.segments).map(|(table, _)| {
            lengths_of(&seen, &table)
                .into_iter()
                .map(|(name, length)| (name.name(), length))
                .collect()
        });
        file_facts::lifter(record, lengths.unwrap_or_default())
    }

    /// The rules for a segment table, and what follows for a body with it in every lift.
    fn segment_complaints(&self, table: &SegmentTable) -> Vec<Complaint> {
        let complaints = body_rules::segment_table(table);
        self.with_body(complaints, |files| files.set_segments(table.clone()))
    }

    /// The rules for a muscle table, and what follows for a body with it in every lift.
    fn muscle_complaints(&self, table: &MuscleTable) -> Vec<Complaint> {
        let complaints = self.muscle_rules(table);
        self.with_body(complaints, |files| {
            if let Ok((body, _)) = self.segment_table(&table.body) {
                files.set_muscles(table.clone(), body);
            }
        })
    }

    /// The rules for fibre curves, and what follows for a body with them in every lift.
    fn curve_complaints(&self, curves: &Curves) -> Vec<Complaint> {
        let complaints = curve_rules::curves(curves);
        self.with_body(complaints, |files| files.set_curves(curves.clone()))
    }

    /// Complaints about a table, and what follows in every lift for the reference lifter who has it.
    fn with_body(
        &self,
        mut complaints: Vec<Complaint>,
        change: impl Fn(&mut LifterFiles),
    ) -> Vec<Complaint> {
        if any_wrong(&complaints) {
            return complaints;
        }
        let built = self.lifter_files(REFERENCE_LIFTER).and_then(|mut files| {
            change(&mut files);
            files.build()
        });
        if let Ok(lifter) = built {
            complaints.extend(self.odd_in_all_lifts(&lifter, |_| 1.0));
        }
        complaints
    }

    /// Muscles that are odd in a lift of the library, each told once, what is wrong first; and lifts that the body cannot
    /// do.
    fn odd_in_all_lifts(
        &self,
        lifter: &Lifter,
        strength_in: impl Fn(&str) -> f64,
    ) -> Vec<Complaint> {
        let mut found: BTreeMap<(String, &'static str), OddMuscle> = BTreeMap::new();
        let mut lifts = Vec::new();
        let mut of_strengths = Vec::new();
        for name in built_in::names(Shelf::Movements.folder()) {
            // Lifts of the user's own are judged in their own files.
            let Ok(movement) = self.movement(name) else {
                continue;
            };
            let factor = strength_in(name);
            if (factor - 1.0).abs() > f64::EPSILON {
                let odd = odd_muscles(&lifter.clone().stronger(factor), &movement);
                let wrong = odd.into_iter().find(OddMuscle::is_wrong);
                let path = format!("lift_strength.{name}");
                of_strengths.extend(wrong.map(|odd| complaint(&path, odd.broken)));
            }
            for odd in odd_muscles(lifter, &movement) {
                let key = (odd.muscle.clone(), odd.field);
                if odd.is_wrong() || !found.contains_key(&key) {
                    found.insert(key, odd);
                }
            }
            if can_do(lifter, &movement).is_err() {
                lifts.push(movement.title);
            }
        }
        let mut complaints: Vec<Complaint> =
            found.into_values().map(OddMuscle::complaint).collect();
        complaints.extend(of_strengths);
        if !lifts.is_empty() {
            let cannot = BrokenRule::Doubt(Doubt::CannotDo { lifts });
            complaints.push(complaint("", cannot));
        }
        complaints
    }

    /// The rules for a movement, and whether the reference lifter's limbs and muscles can do it.
    fn movement_rules(&self, movement: &Movement) -> Vec<Complaint> {
        let mut complaints = movement_rules::movement(movement);
        if any_wrong(&complaints) {
            return complaints;
        }
        complaints.extend(self.called_like(movement));
        if let Ok(lifter) = self.lifter(REFERENCE_LIFTER) {
            complaints.extend(technique_of(movement, &lifter));
            if let Err(error) = can_do(&lifter, movement) {
                complaints.extend(error.faults().iter().map(|fault| {
                    let cannot = PathRule::CannotBeDone {
                        lifter: REFERENCE_LIFTER.to_owned(),
                        fault: Box::new(fault.clone()),
                    };
                    complaint("path", BrokenRule::Path(cannot))
                }));
            }
            complaints.extend(way(&lifter, movement));
            let odd = odd_muscles(&lifter, movement).into_iter();
            complaints.extend(odd.map(|odd| complaint("path", odd.broken)));
        }
        complaints
    }

    /// Doubts about names that a lift of the library has which moves in another way.
    fn called_like(&self, movement: &Movement) -> Vec<Complaint> {
        let others: Vec<Movement> = self
            .movements()
            .iter()
            .filter_map(|name| self.movement(name).ok())
            .filter(|other| !other.moves_alike(movement))
            .collect();
        let called = movement.handling.called.iter().enumerate();
        called
            .filter_map(|(index, name)| {
                let is_it = |other: &&Movement| {
                    let mut names = other.handling.called.iter();
                    names.any(|known| lift_name(known) == lift_name(name))
                };
                let other = others.iter().find(is_it)?;
                let like = Doubt::CalledLike {
                    name: name.clone(),
                    lift: other.title.clone(),
                };
                let path = format!("handling.called.{index}");
                Some(complaint(path, BrokenRule::Doubt(like)))
            })
            .collect()
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

/// What is odd about a segment whose length the lifter's own file gives is told there.
fn at_own_length(complaint: Complaint, record: &LifterRecord) -> Complaint {
    let mut own = record.lengths.keys().map(|name| name.name());
    let own = own.find(|name| complaint.path == format!("segments.{name}.length"));
    match own {
        Some(name) => Complaint {
            path: format!("lengths.{name}"),
            ..complaint
        },
        None => complaint,
    }
}

/// Whether a file is one of the calibration, which the maintenance program reads and checks.
fn is_calibration(path: &Path) -> bool {
    let folder = path.parent().and_then(Path::file_name);
    folder.is_some_and(|folder| folder == "calibration")
}

/// No publication without its citation and its use.
pub(super) fn sources_rules(sources: &BTreeMap<String, Publication>) -> Vec<Complaint> {
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
