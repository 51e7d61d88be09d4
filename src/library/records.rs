//! The library: model files by name, built in or from a folder of the user's.
//!
//! In: names such as `reference-man`, or paths of files. Out: checked records and whole lifters.
//! Nothing is read before it is asked for.

use super::nearest::did_you_mean;
use super::read::read;
use super::shelf::Shelf;
use super::built_in;
use crate::anatomy::{
    Curves, Lifter, LifterRecord, MuscleTable, Sarcomere, SegmentTable, Tables, build,
};
use crate::error::{Error, Result};
use crate::movement::Movement;
use crate::source::Publication;
use serde::de::DeserializeOwned;
use std::collections::{BTreeMap, BTreeSet};
use std::path::{Path, PathBuf};

/// Where model files are found.
#[derive(Debug, Clone, Default)]
pub struct Library {
    folder: Option<PathBuf>,
}

/// A lifter's record with the tables it names.
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
}

impl Library {
    /// The model files that the program holds.
    #[must_use]
    pub fn built_in() -> Self {
        Self::default()
    }

    /// The built-in files, with those of a folder added or put in their place.
    ///
    /// **Fails** if the folder cannot be read.
    pub fn with_dir(folder: impl Into<PathBuf>) -> Result<Self> {
        let folder = folder.into();
        std::fs::read_dir(&folder).map_err(|fault| {
            Error::bad(format!(
                "cannot read the folder of models `{}`: {fault}",
                folder.display()
            ))
            .hint("give a folder with the layout of models/, such as DIR/lifters/NAME.ron")
        })?;
        Ok(Self {
            folder: Some(folder),
        })
    }

    /// The names on a shelf, in alphabetical order.
    #[must_use]
    pub fn names(&self, shelf: Shelf) -> Vec<String> {
        let mut names: BTreeSet<String> =
            built_in::names(shelf.folder()).map(str::to_owned).collect();
        if let Some(folder) = &self.folder {
            let files = std::fs::read_dir(folder.join(shelf.folder()));
            for path in files.into_iter().flatten().flatten().map(|file| file.path()) {
                if path.extension().is_some_and(|e| e == "ron") {
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
        if Path::new(name).extension().is_some_and(|e| e == "ron") {
            return Ok((name.to_owned(), read_text(Path::new(name))?));
        }
        let inside = format!("{}/{name}.ron", shelf.folder());
        if let Some(path) = self.folder.as_ref().map(|folder| folder.join(&inside)) {
            if path.is_file() {
                return Ok((path.display().to_string(), read_text(&path)?));
            }
        }
        if let Some(text) = built_in::text(&inside) {
            return Ok((format!("models/{inside}"), text.to_owned()));
        }
        let names = self.names(shelf);
        let names: Vec<&str> = names.iter().map(String::as_str).collect();
        Err(Error::bad(format!("no {} is called `{name}`", shelf.one()))
            .hint(did_you_mean(name, &names)))
    }

    fn record<T: DeserializeOwned>(&self, shelf: Shelf, name: &str) -> Result<T> {
        let (file, text) = self.text(shelf, name)?;
        read(&file, &text)
    }

    /// A lifter's record and the tables it names.
    pub fn lifter_files(&self, name: &str) -> Result<LifterFiles> {
        let record: LifterRecord = self.record(Shelf::Lifters, name)?;
        let muscles: MuscleTable = self.record(Shelf::Muscles, &record.muscles)?;
        let stem = Path::new(name).file_stem().and_then(|s| s.to_str());
        let stem = if name.ends_with(".ron") { stem } else { None };
        Ok(LifterFiles {
            name: stem.unwrap_or(name).to_owned(),
            segments: self.record(Shelf::Segments, &record.segments)?,
            muscle_body: self.record(Shelf::Segments, &muscles.body)?,
            curves: self.record(Shelf::Curves, &record.curves)?,
            muscles,
            record,
        })
    }

    /// A whole lifter by name or path.
    pub fn lifter(&self, name: &str) -> Result<Lifter> {
        self.lifter_files(name)?.build()
    }

    /// A movement by name or path.
    pub fn movement(&self, name: &str) -> Result<Movement> {
        self.record(Shelf::Movements, name)
    }

    /// The names of all movements.
    #[must_use]
    pub fn movements(&self) -> Vec<String> {
        self.names(Shelf::Movements)
    }

    /// The filament lengths of a species.
    pub fn sarcomere(&self, name: &str) -> Result<Sarcomere> {
        self.record(Shelf::Sarcomeres, name)
    }

    /// Every publication by its key; those of the user's folder come on top.
    pub fn sources(&self) -> Result<BTreeMap<String, Publication>> {
        let mut sources: BTreeMap<String, Publication> = BTreeMap::new();
        if let Some(text) = built_in::text("sources.ron") {
            sources = read("models/sources.ron", text)?;
        }
        if let Some(path) = self.folder.as_ref().map(|folder| folder.join("sources.ron")) {
            if path.is_file() {
                let own: BTreeMap<String, Publication> =
                    read(&path.display().to_string(), &read_text(&path)?)?;
                sources.extend(own);
            }
        }
        Ok(sources)
    }
}

fn read_text(path: &Path) -> Result<String> {
    std::fs::read_to_string(path)
        .map_err(|fault| Error::bad(format!("cannot read `{}`: {fault}", path.display())))
}
