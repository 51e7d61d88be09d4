//! A lifter and a movement with values set by path, ready for a study.
//!
//! In: names, and settings such as `technique.grip_width="60 cm"`. Out: [`Model`]. Paths that begin
//! with `lifter.` change the lifter's file before the body is built, so a new height rescales it;
//! all others change the finished body or the movement.

use super::changed::{changed, changed_lift, is_changed};
use super::complaint::{Complaint, any_wrong, doubts, in_group, none};
use super::layered_text::LayeredText;
use super::nearest::known;
use super::operating_rules::{OddMuscle, odd_muscles, way};
use super::records::{Library, LifterFiles, stem};
use super::set_path::set;
use super::setting::{Setting, each_once};
use super::technique_rules::technique_of;
use super::{body_rules, movement_rules};
use crate::anatomy::{Lifter, LifterRecord, groups};
use crate::error::{Error, Fault, ModelFault, Result, SettingFault, Shelf, What};
use crate::movement::Movement;
use crate::source::Source;
use std::sync::{Arc, OnceLock};

/// A lifter about to do a movement, every value resolved and checked.
#[derive(Debug, Clone, PartialEq)]
pub struct Model {
    /// The lifter.
    pub lifter: Lifter,
    /// The movement.
    pub movement: Movement,
    /// The movement's name in the library.
    pub movement_name: String,
    /// The lifter's file as it was used, settings included.
    pub record: LifterRecord,
    /// What is accepted of all that and yet unlikely.
    pub doubts: Vec<Fault>,
    /// What of it is not as the library has it.
    pub changes: Vec<ModelChange>,
}

/// Something of a model that is not as the built-in library has it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum ModelChange {
    /// A value that was set, as `PATH=VALUE`.
    Set(String),
    /// A file of the user's that stands in the place of a built-in one, such as `lifters/reference-man.ron`.
    Replaced(String),
}

/// A lifter and a movement read once, from which models with different settings are made.
#[derive(Debug, Clone)]
pub struct Workbench {
    pub(super) models: Library,
    pub(super) files: LifterFiles,
    pub(super) movement: Movement,
    pub(super) movement_text: Arc<LayeredText>,
    pub(super) movement_name: String,
    /// What is odd about the lifter's file as it is, once that was asked.
    pub(super) of_record: OnceLock<Vec<Complaint>>,
}

/// Reads a lifter and a movement by name or path and sets values in them.
///
/// **Fails** with what is wrong in the files or with every setting that does not fit.
pub fn assemble(library: &Library, lifter: &str, movement: &str, sets: &[String]) -> Result<Model> {
    Workbench::open(library, lifter, movement)?.model(sets)
}

/// What a path begins with, and which record that is in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Root {
    /// `lifter.…`: the lifter's file.
    File,
    /// `segments.…`, `muscles.…`: the finished body.
    Body,
    /// `technique.…`: the movement.
    Technique,
    /// `movement.…`: the movement, without the first part.
    Movement,
}

/// The first parts of paths.
const ROOTS: [(&str, Root); 8] = [
    ("lifter", Root::File),
    ("segments", Root::Body),
    ("muscles", Root::Body),
    ("joints", Root::Body),
    ("build", Root::Body),
    ("curves", Root::Body),
    ("technique", Root::Technique),
    ("movement", Root::Movement),
];

impl Root {
    /// The record that a path is in, and the path inside that record.
    ///
    /// **Fails** on an unknown first part, and on a path of one part.
    pub fn of(path: &str) -> Result<(Self, &str)> {
        let (first, rest) = path.split_once('.').unwrap_or((path, ""));
        let names = ROOTS.map(|(name, _)| name);
        let Some((_, root)) = ROOTS.iter().find(|(name, _)| *name == first) else {
            return Err(Error::bad(SettingFault::NoSuchRoot {
                path: path.to_owned(),
                first: first.to_owned(),
                known: known(first, &names),
            }));
        };
        if rest.is_empty() {
            return Err(Error::bad(SettingFault::RootOnly {
                path: path.to_owned(),
            }));
        }
        match root {
            Self::File | Self::Movement => Ok((*root, rest)),
            Self::Body | Self::Technique => Ok((*root, path)),
        }
    }
}

impl Workbench {
    /// Reads a lifter and a movement.
    ///
    /// **Fails** with what is wrong in their files.
    pub fn open(library: &Library, lifter: &str, movement: &str) -> Result<Self> {
        let (record, text) = library.movement_with_text(movement)?;
        Ok(Self {
            models: library.clone(),
            files: library.lifter_files(lifter)?,
            movement: record,
            movement_text: text,
            movement_name: stem(movement).to_owned(),
            of_record: OnceLock::new(),
        })
    }

    /// What a model with these settings has that the built-in library has not.
    fn changes(&self, sets: &[String], record: &LifterRecord) -> Vec<ModelChange> {
        let used = [
            (Shelf::Movements, self.movement_name.as_str()),
            (Shelf::Lifters, self.files.name.as_str()),
            (Shelf::Muscles, record.muscles.as_str()),
            (Shelf::Segments, record.segments.as_str()),
            (Shelf::Curves, record.curves.as_str()),
        ];
        let replaced = used
            .into_iter()
            .filter(|(shelf, name)| self.models.replaces(*shelf, name));
        let files = replaced
            .map(|(shelf, name)| ModelChange::Replaced(format!("{}/{name}.ron", shelf.folder())));
        let set = sets.iter().cloned().map(ModelChange::Set);
        set.chain(files).collect()
    }

    /// The model with values set.
    ///
    /// **Fails** with every value that is set twice; where none is, with every setting that does not fit, or with what they make
    /// impossible together.
    pub fn model(&self, sets: &[String]) -> Result<Model> {
        self.model_of(each_once(sets)?, sets)
    }

    /// The same with values set in the order given, each on what the ones before made: a change may follow upon the value
    /// that was asked for.
    ///
    /// **Fails** with every setting that does not fit, or with what they make impossible together.
    pub fn model_in_steps(&self, sets: &[String]) -> Result<Model> {
        let read = sets.iter().map(|written| Setting::read(written));
        self.model_of(collect(read)?, sets)
    }

    /// The model with settings that were read from these texts.
    fn model_of(&self, settings: Vec<Setting>, sets_as_written: &[String]) -> Result<Model> {
        let sets = collect(settings.into_iter().map(|setting| {
            let root = Root::of(&setting.path)?.0;
            Ok((setting, root))
        }))?;
        let of = |wanted: &[Root]| -> Vec<&Setting> {
            sets.iter()
                .filter(|s| wanted.contains(&s.1))
                .map(|s| &s.0)
                .collect()
        };
        let files = self.files_with(&of(&[Root::File]))?;
        let own_factor = files.record.strength_in(&self.movement_name);
        let built = files.build()?.stronger(own_factor);
        let mut lifter = apply(built.clone(), &of(&[Root::Body]), set_in_body)?;
        let of_body = body_rules::lifter(&lifter);
        none(of_body.clone())?;
        if lifter != built || files.record != self.files.record {
            lifter.title = changed(&lifter.title);
        }
        let mut movement = apply(
            self.movement.clone(),
            &of(&[Root::Technique, Root::Movement]),
            set_in_record,
        )?;
        if movement != self.movement {
            movement.title = changed_lift(&movement.title);
        }
        let mut complaints = movement_rules::movement(&movement);
        if !any_wrong(&complaints) {
            complaints.extend(technique_of(&movement, &lifter));
            complaints.extend(way(&lifter, &movement));
        }
        let complaints = grouped(complaints, "movement", "technique");
        none(complaints.clone())?;
        let of_muscles = muscle_complaints(&lifter, &movement);
        none(of_muscles.clone())?;
        let of_record = match files.record == self.files.record {
            true => self
                .of_record
                .get_or_init(|| self.odd_record(&files))
                .clone(),
            false => self.odd_record(&files),
        };
        // A value set to what it is changes nothing.
        let told = if is_changed(&lifter.title) || is_changed(&movement.title) {
            sets_as_written
        } else {
            &[]
        };
        let unlikely = [of_record, of_body, complaints, of_muscles].concat();
        Ok(Model {
            lifter,
            movement,
            movement_name: self.movement_name.clone(),
            changes: self.changes(told, &files.record),
            record: files.record,
            doubts: doubts(unlikely),
        })
    }

    /// The same with those of the settings that change the lifter's file: the tables that it names then are the ones in
    /// which values stand.
    ///
    /// **Fails** with every setting that does not fit.
    pub(super) fn with_file_settings(&self, sets: &[String]) -> Result<Self> {
        let settings = collect(sets.iter().map(|written| Setting::read(written)))?;
        let of_file = |setting: &&Setting| {
            let root = Root::of(&setting.path);
            root.is_ok_and(|(root, _)| root == Root::File)
        };
        let of_file: Vec<&Setting> = settings.iter().filter(of_file).collect();
        Ok(Self {
            files: self.files_with(&of_file)?,
            of_record: OnceLock::new(),
            ..self.clone()
        })
    }

    /// What is odd about a lifter's file.
    fn odd_record(&self, files: &LifterFiles) -> Vec<Complaint> {
        let odd = self
            .models
            .lifter_rules(&files.record, Some(files.muscles()));
        grouped(odd, "lifter", "lifter")
    }

    /// The lifter's file and tables with values set in the file.
    fn files_with(&self, sets: &[&Setting]) -> Result<LifterFiles> {
        if sets.is_empty() {
            return Ok(self.files.clone());
        }
        let mut record = self.files.record.clone();
        self.name_groups(&mut record, sets);
        let record = apply(record, sets, set_in_record)?;
        let muscles = (record.muscles == self.files.record.muscles).then(|| self.files.muscles());
        let complaints = self.models.lifter_rules(&record, muscles);
        none(grouped(complaints, "lifter", "lifter"))?;
        let text = |index: usize| self.files.texts[index].clone();
        let muscles = muscles.map(|muscles| (muscles.clone(), text(2)));
        self.models
            .with_tables(&self.files.name, (record, text(0)), muscles)
    }

    /// Names the strength groups that are set and that the file leaves at 1.
    fn name_groups(&self, record: &mut LifterRecord, sets: &[&Setting]) {
        let known = groups(self.files.muscles());
        let set = sets
            .iter()
            .filter_map(|s| s.path.strip_prefix("lifter.strength."));
        for group in set.filter(|group| known.iter().any(|k| k == group)) {
            if !record.strength.contains_key(group) {
                let source = Source::Assumed("set by its path".to_owned());
                record.strength.insert(group.to_owned(), 1.0);
                record.strength_sources.insert(group.to_owned(), source);
            }
        }
    }
}

/// Complaints with their paths inside a group.
fn grouped(complaints: Vec<Complaint>, group: &str, except: &str) -> Vec<Complaint> {
    let complaints = complaints.into_iter();
    complaints.map(|c| in_group(c, group, except)).collect()
}

/// What is odd about muscles on the way of the lift, each told at the muscle.
fn muscle_complaints(lifter: &Lifter, movement: &Movement) -> Vec<Complaint> {
    let odd = odd_muscles(lifter, movement).into_iter();
    odd.map(OddMuscle::complaint).collect()
}

/// A record with values set one after the other.
fn apply<T>(
    mut record: T,
    sets: &[&Setting],
    set_in: impl Fn(&mut T, &str, &Setting) -> Result<()>,
) -> Result<T> {
    let mut faults = Vec::new();
    for setting in sets {
        let inside = Root::of(&setting.path).map(|(_, inside)| inside);
        if let Err(error) = inside.and_then(|inside| set_in(&mut record, inside, setting)) {
            faults.extend(meant_elsewhere(error.faults().to_vec(), &setting.path));
        }
    }
    if faults.is_empty() {
        Ok(record)
    } else {
        Err(Error::bad_input(faults))
    }
}

/// Sets one value of a record.
fn set_in_record<T>(record: &mut T, inside: &str, setting: &Setting) -> Result<()>
where
    T: serde::Serialize + serde::de::DeserializeOwned,
{
    *record = set(record, inside, setting)?;
    Ok(())
}

/// Sets one value of a body. Its muscles are most of it: a path into one of them goes through that one alone, any other path
/// passes them by.
fn set_in_body(body: &mut Lifter, inside: &str, setting: &Setting) -> Result<()> {
    let of_muscles = inside.strip_prefix("muscles.");
    let of_one = of_muscles.and_then(|path| path.split_once('.'));
    if let Some((name, rest)) = of_one
        && let Some(muscle) = body.muscles.get_mut(name)
    {
        return set_in_record(muscle, rest, setting);
    }
    if of_muscles.is_some() {
        return set_in_record(body, inside, setting);
    }
    let muscles = std::mem::take(&mut body.muscles);
    let result = set_in_record(body, inside, setting);
    body.muscles = muscles;
    result
}

/// `lifter.segments.…` names the table in the file; the body's own values stand without `lifter.`.
fn meant_elsewhere(mut faults: Vec<Fault>, path: &str) -> Vec<Fault> {
    let shorter = path.strip_prefix("lifter.").filter(|rest| {
        let first = rest.split('.').next();
        rest.contains('.')
            && ROOTS
                .iter()
                .any(|(name, root)| *root == Root::Body && Some(*name) == first)
    });
    if let (Some(shorter), Some(last)) = (shorter, faults.last_mut())
        && let What::Model(ModelFault::Setting(fault)) = &last.what
    {
        *last = Fault::new(SettingFault::MeantElsewhere {
            fault: Box::new(fault.clone()),
            path: shorter.to_owned(),
        });
    }
    faults
}

/// All results, or all faults.
fn collect<T>(results: impl Iterator<Item = Result<T>>) -> Result<Vec<T>> {
    let (mut good, mut faults) = (Vec::new(), Vec::new());
    for result in results {
        match result {
            Ok(value) => good.push(value),
            Err(error) => faults.extend(error.faults().iter().cloned()),
        }
    }
    if faults.is_empty() {
        Ok(good)
    } else {
        Err(Error::bad_input(faults))
    }
}
