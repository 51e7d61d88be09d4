//! The library: model files by name, built in or from a folder of the user's.
//!
//! In: names such as `reference-man`, or paths of files. Out: checked records and whole lifters.
//! Nothing is read before it is asked for.

use super::bounded_read::text_of_file;
use super::changed::{changed, changed_lift};
use super::complaint::{Complaint, complaint, said};
use super::folder_check::{self, is_model_file};
use super::layered_text::LayeredText;
use super::nearest::known;
use super::pieces::Pieces;
use super::posterior::Posterior;
use super::{body_rules, built_in, curve_rules, movement_rules, muscle_rules};
use crate::anatomy::{
    Curves, Lifter, LifterRecord, MuscleTable, Sarcomere, SegmentTable, Tables, build,
};
use crate::error::{BrokenRule, Doubt, Error, Known, ModelFault, Result, Shelf};
use crate::movement::Movement;
use crate::session::published::Published;
use serde::de::DeserializeOwned;
use std::collections::BTreeSet;
use std::path::{Path, PathBuf};
use std::sync::{Arc, OnceLock};

/// Where model files are found.
#[derive(Debug, Clone, Default)]
pub struct Library {
    pub(super) folder: Option<PathBuf>,
    /// What was read once; copies of a library share it.
    pub(super) published: Arc<OnceLock<Published>>,
    pub(super) pieces: Arc<OnceLock<Arc<Pieces>>>,
    pub(super) posterior: Arc<OnceLock<Posterior>>,
}

/// A lifter's record with the tables it names, checked.
#[derive(Debug, Clone)]
pub struct LifterFiles {
    /// Name in the library.
    pub name: String,
    /// The lifter's own file.
    pub record: LifterRecord,
    segments: SegmentTable,
    muscle_body: SegmentTable,
    muscles: MuscleTable,
    curves: Curves,
    /// The texts of record, segments, muscles and curves.
    pub(super) texts: [Arc<LayeredText>; 4],
}

impl LifterFiles {
    /// The whole lifter.
    ///
    /// **Fails** as [`build`] does.
    pub fn build(&self) -> Result<Lifter> {
        let tables = Tables {
            segments: &self.segments,
            muscle_body: &self.muscle_body,
            muscles: &self.muscles,
            curves: &self.curves,
        };
        build(&self.name, &self.record, tables)
    }

    /// The segment table.
    pub(super) fn segments(&self) -> &SegmentTable {
        &self.segments
    }

    /// Segments of the body that the muscles were made for.
    #[allow(dead_code)]
    pub(super) fn muscle_body(&self) -> &SegmentTable {
        &self.muscle_body
    }

    /// The fibre curves.
    pub(super) fn curves(&self) -> &Curves {
        &self.curves
    }

    /// Puts other segments in the place of those read.
    pub(super) fn set_segments(&mut self, segments: SegmentTable) {
        self.segments = segments;
    }

    /// Puts other muscles, and the body they were made for, in the place of those read.
    pub(super) fn set_muscles(&mut self, muscles: MuscleTable, body: SegmentTable) {
        self.muscles = muscles;
        self.muscle_body = body;
    }

    /// Puts other fibre curves in the place of those read.
    pub(super) fn set_curves(&mut self, curves: Curves) {
        self.curves = curves;
    }

    /// The muscle table.
    pub(super) fn muscles(&self) -> &MuscleTable {
        &self.muscles
    }
}

impl Library {
    /// The model files that the program holds.
    #[must_use]
    pub fn built_in() -> Self {
        Self::default()
    }

    /// The built-in files, with those of a folder added or put in their place.
    ///
    /// **Fails** if the folder or a folder or model file in it cannot be read, or if it holds nothing that a folder of
    /// models holds: a file that is passed over would leave the built-in one to answer in its place.
    pub fn with_dir(folder: impl Into<PathBuf>) -> Result<Self> {
        let folder = folder.into();
        std::fs::read_dir(&folder).map_err(|fault| {
            Error::bad(ModelFault::UnreadableFolder {
                folder: folder.display().to_string(),
                why: fault.to_string(),
            })
        })?;
        let holds = |inside: &str| folder.join(inside).exists();
        if !Shelf::ALL.iter().any(|shelf| holds(shelf.folder())) && !holds("sources.ron") {
            return Err(Error::bad(ModelFault::NoModelFolder {
                folder: folder.display().to_string(),
            }));
        }
        folder_check::check(&folder)?;
        Ok(Self {
            folder: Some(folder),
            published: Arc::default(),
            pieces: Arc::default(),
            posterior: Arc::default(),
        })
    }

    /// The names on a shelf, in alphabetical order.
    #[must_use]
    pub fn names(&self, shelf: Shelf) -> Vec<String> {
        let mut names: BTreeSet<String> =
            built_in::names(shelf.folder()).map(str::to_owned).collect();
        if let Some(folder) = &self.folder {
            let files = std::fs::read_dir(folder.join(shelf.folder()));
            for path in files
                .into_iter()
                .flatten()
                .flatten()
                .map(|file| file.path())
            {
                if is_model_file(&path) {
                    names.extend(path.file_stem().and_then(|s| s.to_str()).map(str::to_owned));
                }
            }
        }
        names.into_iter().collect()
    }

    /// A model file's name as messages show it, and its text. `name` may be the path of a `.ron` file.
    ///
    /// **Fails** with the nearest names if there is none, or if the file cannot be read.
    pub fn text(&self, shelf: Shelf, name: &str) -> Result<(String, String)> {
        if is_model_file(Path::new(name)) {
            return Ok((name.to_owned(), text_of_file(Path::new(name))?));
        }
        let inside = format!("{}/{name}.ron", shelf.folder());
        if let Some(path) = self.own_file(&inside) {
            return Ok((path.display().to_string(), text_of_file(&path)?));
        }
        if let Some(text) = built_in::text(&inside) {
            return Ok((format!("models/{inside}"), text.to_owned()));
        }
        Err(Error::bad(ModelFault::NoSuchFile {
            shelf,
            name: name.to_owned(),
            known: self.known(shelf, name),
        }))
    }

    /// A file of the user's folder, if it is there.
    pub(super) fn own_file(&self, inside: &str) -> Option<PathBuf> {
        let path = self.folder.as_ref()?.join(inside);
        path.is_file().then_some(path)
    }

    /// The names of a shelf beside a wrong one.
    pub(super) fn known(&self, shelf: Shelf, name: &str) -> Known {
        let names = self.names(shelf);
        let names: Vec<&str> = names.iter().map(String::as_str).collect();
        known(name, &names)
    }

    /// A record by name, checked by the rules of its kind.
    pub(super) fn record<T: DeserializeOwned>(
        &self,
        shelf: Shelf,
        name: &str,
        rules: impl Fn(&T) -> Vec<Complaint>,
    ) -> Result<T> {
        Ok(self.record_with_text(shelf, name, rules)?.0)
    }

    /// A record by name, checked by the rules of its kind, and its text.
    pub(super) fn record_with_text<T: DeserializeOwned>(
        &self,
        shelf: Shelf,
        name: &str,
        rules: impl Fn(&T) -> Vec<Complaint>,
    ) -> Result<(T, Arc<LayeredText>)> {
        let text = self.layered(shelf, name)?;
        let record = text.read()?;
        text.none(rules(&record))?;
        self.known_sources(&text)?;
        Ok((record, Arc::new(text)))
    }

    /// A lifter's record and the tables it names.
    ///
    /// **Fails** with every fault of the first faulty file.
    pub fn lifter_files(&self, name: &str) -> Result<LifterFiles> {
        let text = self.layered(Shelf::Lifters, name)?;
        let record = from_its_folder(text.read()?, &text);
        let muscles = match self.unknown("muscles", Shelf::Muscles, &record.muscles) {
            None => Some(self.muscle_table(&record.muscles)?),
            Some(_) => None,
        };
        let table = muscles.as_ref().map(|(table, _)| table);
        text.none(self.lifter_rules(&record, table))?;
        self.known_sources(&text)?;
        let record = self.with_strength(record)?;
        let mut files = self.with_tables(stem(name), (record, Arc::new(text)), muscles)?;
        if self.replaces_any_of(name, &files) {
            files.record.title = changed(&files.record.title);
        }
        Ok(files)
    }

    /// Whether the user's folder has another file for one of the built-in names that make this lifter.
    fn replaces_any_of(&self, name: &str, files: &LifterFiles) -> bool {
        let record = &files.record;
        let like = record.strength_like.as_deref();
        self.replaces(Shelf::Lifters, name)
            || self.replaces(Shelf::Segments, &record.segments)
            || self.replaces(Shelf::Segments, &files.muscles.body)
            || self.replaces(Shelf::Muscles, &record.muscles)
            || self.replaces(Shelf::Curves, &record.curves)
            || like.is_some_and(|like| self.replaces(Shelf::Lifters, like))
    }

    /// A record with the strength factors of the lifter that it takes after, where it has none of its own.
    pub(super) fn with_strength(&self, mut record: LifterRecord) -> Result<LifterRecord> {
        if let Some(like) = &record.strength_like {
            let other: LifterRecord = self.layered(Shelf::Lifters, like)?.read()?;
            for (group, factor) in other.strength {
                if !record.strength.contains_key(&group) {
                    if let Some(source) = other.strength_sources.get(&group) {
                        record
                            .strength_sources
                            .insert(group.clone(), source.clone());
                    }
                    record.strength.insert(group, factor);
                }
            }
        }
        Ok(record)
    }

    /// A lifter's record, already checked, with the tables it names; the muscle table may be given.
    pub(super) fn with_tables(
        &self,
        name: &str,
        (record, text): (LifterRecord, Arc<LayeredText>),
        muscles: Option<(MuscleTable, Arc<LayeredText>)>,
    ) -> Result<LifterFiles> {
        let (muscles, of_muscles) = match muscles {
            Some(muscles) => muscles,
            None => self.muscle_table(&record.muscles)?,
        };
        let (segments, of_segments) = self.segment_table(&record.segments)?;
        let (curves, of_curves) = self.fibre_curves(&record.curves)?;
        Ok(LifterFiles {
            name: name.to_owned(),
            segments,
            muscle_body: self.segment_table(&muscles.body)?.0,
            curves,
            muscles,
            record,
            texts: [text, of_segments, of_muscles, of_curves],
        })
    }

    /// A segment table by name, and its text.
    pub(super) fn segment_table(&self, name: &str) -> Result<(SegmentTable, Arc<LayeredText>)> {
        self.record_with_text(Shelf::Segments, name, body_rules::segment_table)
    }

    /// Fibre curves by name, and their text.
    pub(super) fn fibre_curves(&self, name: &str) -> Result<(Curves, Arc<LayeredText>)> {
        self.record_with_text(Shelf::Curves, name, curve_rules::curves)
    }

    /// A muscle table by name, and its text.
    pub(super) fn muscle_table(&self, name: &str) -> Result<(MuscleTable, Arc<LayeredText>)> {
        let text = self.layered(Shelf::Muscles, name)?;
        let mut table: MuscleTable = text.read()?;
        table.body = seen_from(&text, "body", &table.body);
        text.none(self.muscle_rules(&table))?;
        self.known_sources(&text)?;
        Ok((table, Arc::new(text)))
    }

    /// The rules for a lifter's record: its own, beside the muscle table if that can be read, and
    /// that its tables are there.
    pub(super) fn lifter_rules(
        &self,
        record: &LifterRecord,
        muscles: Option<&MuscleTable>,
    ) -> Vec<Complaint> {
        let mut complaints = body_rules::lifter_record(record, muscles);
        let tables = [
            ("segments", Shelf::Segments, &record.segments),
            ("muscles", Shelf::Muscles, &record.muscles),
            ("curves", Shelf::Curves, &record.curves),
        ];
        for (path, shelf, name) in tables {
            complaints.extend(self.unknown(path, shelf, name));
        }
        if let Some(like) = &record.strength_like {
            complaints.extend(self.unknown("strength_like", Shelf::Lifters, like));
        }
        for lift in record.lift_strength.keys() {
            let path = format!("lift_strength.{lift}");
            complaints.extend(self.unknown(&path, Shelf::Movements, lift));
        }
        complaints.extend(self.of_other_sex(record));
        complaints
    }

    /// A doubt about a segment table of the other sex.
    fn of_other_sex(&self, record: &LifterRecord) -> Option<Complaint> {
        let text = self.layered(Shelf::Segments, &record.segments).ok()?;
        let sex = text.read::<SegmentTable>().ok()?.sex?;
        (sex != record.sex).then(|| complaint("segments", BrokenRule::Doubt(Doubt::OtherSex)))
    }

    /// The rules for a muscle table: its own, and that the body it was made for is there.
    pub(super) fn muscle_rules(&self, table: &MuscleTable) -> Vec<Complaint> {
        let mut complaints = muscle_rules::muscle_table(table);
        complaints.extend(self.unknown("body", Shelf::Segments, &table.body));
        complaints
    }

    /// A complaint if a name in a record leads nowhere.
    fn unknown(&self, path: &str, shelf: Shelf, name: &str) -> Option<Complaint> {
        if is_model_file(Path::new(name)) {
            let error = text_of_file(Path::new(name)).err()?;
            return Some(said(path.to_owned(), &error));
        }
        let is_there = built_in::text(&format!("{}/{name}.ron", shelf.folder())).is_some()
            || self.names(shelf).iter().any(|known| known == name);
        (!is_there).then(|| {
            let missing = BrokenRule::NoSuchFile {
                shelf,
                name: name.to_owned(),
                known: self.known(shelf, name),
            };
            complaint(path, missing)
        })
    }

    /// A whole lifter by name or path.
    pub fn lifter(&self, name: &str) -> Result<Lifter> {
        self.lifter_files(name)?.build()
    }

    /// A movement by name or path.
    pub fn movement(&self, name: &str) -> Result<Movement> {
        Ok(self.movement_with_text(name)?.0)
    }

    /// A movement by name or path, and its text.
    pub(super) fn movement_with_text(&self, name: &str) -> Result<(Movement, Arc<LayeredText>)> {
        let shelf = Shelf::Movements;
        let (mut movement, text) = self.record_with_text(shelf, name, movement_rules::movement)?;
        if self.replaces(shelf, name) || text.takes_over("title") {
            movement.title = changed_lift(&movement.title);
        }
        Ok((movement, text))
    }

    /// The names of all movements.
    #[must_use]
    pub fn movements(&self) -> Vec<String> {
        self.names(Shelf::Movements)
    }

    /// The filament lengths of a species.
    pub fn sarcomere(&self, name: &str) -> Result<Sarcomere> {
        self.record(Shelf::Sarcomeres, name, curve_rules::sarcomere)
    }
}

/// A lifter's record with the paths of its tables as the working folder sees them.
pub(super) fn from_its_folder(record: LifterRecord, text: &LayeredText) -> LifterRecord {
    LifterRecord {
        segments: seen_from(text, "segments", &record.segments),
        muscles: seen_from(text, "muscles", &record.muscles),
        curves: seen_from(text, "curves", &record.curves),
        strength_like: record
            .strength_like
            .map(|like| seen_from(text, "strength_like", &like)),
        ..record
    }
}

/// A name as it is, and a path as seen from the folder of the file in which the field stands.
pub(super) fn seen_from(text: &LayeredText, field: &str, name: &str) -> String {
    if !is_model_file(Path::new(name)) {
        return name.to_owned();
    }
    let file = text.file_of(field).map_or(text.file(), |(_, file)| file);
    let folder = Path::new(file).parent().unwrap_or(Path::new(""));
    folder.join(name).display().to_string()
}

/// A name in the library: of a path, the file's name without its ending.
pub(super) fn stem(name: &str) -> &str {
    let path = Path::new(name);
    let stem = path.file_stem().and_then(|stem| stem.to_str());
    stem.filter(|_| is_model_file(path)).unwrap_or(name)
}
