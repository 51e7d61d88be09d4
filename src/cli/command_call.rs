//! One call of a command: what it may use, and where its output goes with the record of how it was made.
//!
//! In: a library, what was typed. Out: text on standard output or in a file, scenes that carry their record.

use super::canonical::{self, WantedOutput, arguments, is_typed, values};
use super::data_file;
use super::options::Format;
use super::output;
use super::said_before::other_number;
use super::whole_set;
use crate::draw::Scene;
use crate::error::Result;
use crate::library::{Library, bytes_of_file, hash_of};
use crate::narrative::again_words::other_numbers;
use crate::report::{
    ModelFileRecord, ReadFileRecord, RunRecord, TidyTable, list_with_provenance, typed_words,
    with_provenance,
};
use crate::units::Mass;
use clap::ArgMatches;
use std::path::{Path, PathBuf};

/// The lifter of commands that may be asked without one.
const USUAL_LIFTER: &str = "reference-man";

/// Commands whose JSON is a list or a collection by name.
const LISTS: [&str; 2] = ["movements", "sources"];

/// Where printed output goes.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Destination {
    /// Standard output.
    Standard,
    /// A new file.
    File(PathBuf),
    /// Nowhere: only a picture is wanted.
    Nowhere,
}

/// One call of a command.
#[derive(Debug)]
pub struct CommandCall<'a> {
    /// Where names lead.
    pub models: &'a Library,
    /// Name of the command.
    pub command: &'a str,
    /// What was typed behind it.
    pub matches: &'a ArgMatches,
    /// The definitions of all commands.
    pub program: &'a clap::Command,
    /// Where printed output goes.
    pub to: Destination,
    /// What it printed before, where a file asks for it again.
    pub said: Option<String>,
}

/// What a command answers, in every form; each is made when it is asked for.
pub struct Answer<'a> {
    /// Text for people.
    pub table: &'a dyn Fn() -> String,
    /// JSON.
    pub json: &'a dyn Fn() -> String,
    /// The rows of CSV and workbook.
    pub data: &'a dyn Fn() -> TidyTable,
}

impl CommandCall<'_> {
    /// Prints what a command answers, and writes its table if `--data` names a file.
    ///
    /// **Fails** if an output cannot be written.
    pub fn give(&self, format: Format, answer: &Answer) -> Result<()> {
        let text = match format {
            Format::Table => (answer.table)(),
            Format::Json => (answer.json)(),
            Format::Csv => (answer.data)().csv(),
        };
        self.print(format, &text)?;
        match self.data_path() {
            None => Ok(()),
            Some(path) => {
                let record = self.record(self.command, WantedOutput::Data)?;
                let bytes = data_file::bytes(path, &(answer.data)(), &record)?;
                whole_set::write_file(path, &bytes)
            }
        }
    }

    /// The file that `--data` names.
    #[must_use]
    pub fn data_path(&self) -> Option<&PathBuf> {
        self.matches.try_get_one("data").ok().flatten()
    }

    /// Checks before anything is computed that the file of `--data` can be written.
    pub fn check_data(&self) -> Result<()> {
        let replace = self.matches.try_get_one("force").ok().flatten();
        match self.data_path() {
            None => Ok(()),
            Some(path) => data_file::check(path, replace.copied().unwrap_or(false)),
        }
    }

    /// Prints what a command answers: JSON with its record, CSV with it over the table if that is asked for.
    ///
    /// **Fails** if the output cannot be written.
    pub fn print(&self, format: Format, text: &str) -> Result<()> {
        let asked = self.matches.get_flag("provenance");
        let whole = match format {
            Format::Json if asked && LISTS.contains(&self.command) => {
                list_with_provenance(text, self.command, &self.printed()?)
            }
            Format::Json => with_provenance(text, &self.printed()?),
            Format::Csv if asked => self.printed()?.csv_head() + text,
            Format::Csv | Format::Table => text.to_owned(),
        };
        if let Some(other) = self
            .said
            .as_ref()
            .and_then(|said| other_number(said, &whole))
        {
            let words = other_numbers(other.row, &shown(&other.then), &shown(&other.now));
            output::note(&format!("warning: {words}"));
        }
        match &self.to {
            Destination::Standard if format == Format::Table => output::print_marked(&whole),
            Destination::Standard => output::print(&whole),
            Destination::File(path) => whole_set::write_file(path, whole.as_bytes()),
            Destination::Nowhere => Ok(()),
        }
    }

    /// The record of what the command prints.
    ///
    /// **Fails** if a model file cannot be read.
    pub fn printed(&self) -> Result<RunRecord> {
        self.record(self.command, WantedOutput::Printed)
    }

    /// A scene that carries how it was made; `output` is the option that named its file.
    ///
    /// **Fails** if a file that was named cannot be read.
    pub fn signed(&self, output: &str, mut scene: Scene) -> Result<Scene> {
        scene.metadata = self.drawn(output)?.line();
        Ok(scene)
    }

    /// The record of a picture or sheet whose file this option named.
    ///
    /// **Fails** if a file that was named cannot be read.
    pub fn drawn(&self, output: &str) -> Result<RunRecord> {
        Ok(RunRecord {
            output: Some(output.to_owned()),
            ..self.record(self.command, WantedOutput::Drawn)?
        })
    }

    /// The record of a table of the command that prints it: of the setup of this number, where there are several.
    ///
    /// **Fails** if a file that was named cannot be read.
    pub fn tabled(&self, command: &str, setup: Option<usize>) -> Result<RunRecord> {
        let mut record = self.record(command, WantedOutput::Table(setup))?;
        let print = ["--format", "csv", "--provenance"].map(str::to_owned);
        record.arguments.extend(print);
        record.command = typed(&record.arguments);
        Ok(record)
    }

    /// The record of a table of a setup whose plain weight is another one than was typed.
    ///
    /// **Fails** as [`Self::tabled`].
    pub fn tabled_with_load(&self, command: &str, setup: usize, load: Mass) -> Result<RunRecord> {
        let mut record = self.tabled(command, Some(setup))?;
        let load = ["--load".to_owned(), format!("{} kg", load.as_kg())];
        let mut kept = without_load(record.arguments);
        let at = kept.len().min(2);
        kept.splice(at..at, load.clone());
        record.command = typed(&kept);
        record.arguments = kept;
        let setups = canonical::setups(self.definition(command), self.matches);
        let rest = setups.into_iter().nth(setup).unwrap_or_default();
        record.setup = vec![typed_words(&[load.to_vec(), without_load(rest)].concat())];
        Ok(record)
    }

    fn record(&self, command: &str, wanted: WantedOutput) -> Result<RunRecord> {
        let definition = self.definition(command);
        let mut words = vec![command.to_owned()];
        words.extend(arguments(definition, self.matches, wanted));
        let says_how = wanted == WantedOutput::Printed && self.matches.get_flag("provenance");
        if says_how || wanted == WantedOutput::Data {
            words.push("--provenance".to_owned());
        }
        let setups = canonical::setups(definition, self.matches).into_iter();
        let setups = setups.filter(|words| !words.is_empty());
        let setups: Vec<String> = setups.map(|words| typed_words(&words)).collect();
        Ok(RunRecord {
            command: typed(&words),
            arguments: words,
            movement: self.one("movement"),
            lifter: self.lifter(definition),
            setup: match wanted {
                WantedOutput::Table(Some(number)) => {
                    setups.into_iter().skip(number).take(1).collect()
                }
                _ => setups,
            },
            set: self.list("set"),
            models: self.models()?,
            files: self.files(),
            ..RunRecord::default()
        })
    }

    fn definition(&self, command: &str) -> &clap::Command {
        let known = self.program.find_subcommand(command);
        known.expect("every command that runs is defined")
    }

    fn list(&self, id: &str) -> Vec<String> {
        if is_typed(self.matches, id) {
            values(self.matches, id)
        } else {
            Vec::new()
        }
    }

    fn one(&self, id: &str) -> Option<String> {
        values(self.matches, id).into_iter().next()
    }

    fn lifter(&self, definition: &clap::Command) -> Option<String> {
        let mut known = definition.get_arguments();
        known.find(|argument| argument.get_id() == "lifter")?;
        let sex = self.one("sex");
        if let Some(sex) = sex.filter(|_| is_typed(self.matches, "sex")) {
            return Some(format!("reference-{sex}"));
        }
        Some(
            self.one("lifter")
                .unwrap_or_else(|| USUAL_LIFTER.to_owned()),
        )
    }

    fn models(&self) -> Result<Vec<ModelFileRecord>> {
        let own = self.models.own_files()?.into_iter();
        let record = own.map(|own| ModelFileRecord {
            name: own.name,
            hash: own.hash,
            replaced: own.replaces,
        });
        Ok(record.collect())
    }

    /// The files that the arguments name; one that cannot be read stops the command itself.
    fn files(&self) -> Vec<ReadFileRecord> {
        let paths = canonical::paths(self.matches).into_iter();
        let read = paths.filter_map(|path| {
            let has_ending = Path::new(&path).extension().is_some();
            let bytes = bytes_of_file(Path::new(&path))
                .ok()
                .filter(|_| has_ending)?;
            Some(ReadFileRecord {
                name: canonical::portable(&path),
                hash: hash_of(&bytes),
            })
        });
        read.collect()
    }
}

/// Words without `--load` and its value.
fn without_load(words: Vec<String>) -> Vec<String> {
    let mut words = words.into_iter();
    let mut kept = Vec::new();
    while let Some(word) = words.next() {
        if word == "--load" {
            words.next();
        } else {
            kept.push(word);
        }
    }
    kept
}

/// Letters of a text of a file that are shown.
const MOST_SHOWN: usize = 80;

/// A text of a file as it may be shown.
fn shown(text: &str) -> String {
    let signs = text.chars().filter(|sign| !sign.is_control());
    signs.take(MOST_SHOWN).collect()
}

fn typed(words: &[String]) -> String {
    format!("torquill {}", typed_words(words))
}
