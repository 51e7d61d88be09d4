//! `torquill again FILE`: runs what an output says of its own making.
//!
//! In: a file, which is taken for hostile. Out: the matches of a command that reads and computes, and where its output
//! goes. Whatever would write, replace or lead out of the present folder is refused; what differs from the making of
//! the file is told.

use super::canonical::{BESIDE, OUTPUTS, is_typed, paths, stays_below};
use super::command_call::{CommandCall, Destination};
use super::number_words;
use super::options::Format;
use super::output;
use super::readable_words;
use crate::draw::metadata;
use crate::error::{AgainFault, CommandFault, Error, FileForm, PictureDamage, Result};
use crate::library::{Library, bytes_of_file};
use crate::narrative::again_words::{only_once, other_file, other_model, other_version};
use crate::report::{RunRecord, typed_words, words_typed};
use clap::error::ErrorKind;
use clap::{ArgMatches, Args};
use std::collections::BTreeMap;
use std::ffi::OsString;
use std::path::{Path, PathBuf};

/// Commands that read and compute.
const ALLOWED: &[&str] = &[
    "movements",
    "parameters",
    "curve",
    "figure",
    "vary",
    "rep",
    "max",
    "fit",
    "plan",
    "progress",
    "pick",
    "lecture",
    "sources",
];

/// Most people that a file may have invented, assumed: half a minute of work on two cores. All other work is bounded where it
/// is asked for, whoever asks.
const MOST_PEOPLE: usize = 5000;

/// The first bytes of a workbook: it is a zipped folder.
const WORKBOOK: &[u8] = b"PK\x03\x04";

/// AgainArguments of `again`.
#[derive(Debug, Args)]
#[command(after_long_help = "Examples:
  torquill curve biceps-curl --load \"8 kg\" --format json > curl.json
  torquill again curl.json
  torquill again curl.json -o copy.json
  torquill figure bench-press --load \"55 kg\" -o bench.png
  torquill again bench.png -o copy.png

Reads JSON, SVG and PNG of this program, and CSV printed with --provenance, written by --data or beside a figure. Model files
that were given by --models are given again; what differs from the making of the file is told.")]
pub struct AgainArguments {
    /// File that says how it was made: .json, .csv, .svg or .png
    file: PathBuf,
    /// New file (a folder for `lecture`); needed for pictures, standard output without it
    #[arg(short, long, value_name = "FILE")]
    output: Option<PathBuf>,
}

/// A command that a file asks for, checked.
#[derive(Debug)]
pub struct Repeated {
    /// What the file says.
    pub record: RunRecord,
    /// Its arguments, read, with the new output among them.
    pub matches: ArgMatches,
    /// Where printed output goes.
    pub to: Destination,
    /// The text of the file, where it is printed output: its numbers are held against those of now.
    pub said: Option<String>,
}

impl AgainArguments {
    /// What the file asks for.
    ///
    /// **Fails** if the file says nothing of its making, or asks for anything but reading and computing.
    pub fn read(&self, program: &clap::Command, library: &Library) -> Result<Repeated> {
        let bytes = bytes_of_file(&self.file)?;
        let record = record_in(&self.file.display().to_string(), &bytes)?;
        let drawn = match &record.output {
            Some(option) => Some((option_of(option)?, self.new_file()?)),
            None => None,
        };
        let matches = matches(program, words(&record, drawn))?;
        refuse(&matches, drawn)?;
        agrees_with_itself(&record)?;
        if !record.models.is_empty() && library.own_files()?.is_empty() {
            let names = record.models.iter().map(|file| file.name.clone());
            return Err(bad(AgainFault::ModelsDue {
                names: names.collect(),
            }));
        }
        let to = match (drawn, &self.output) {
            (Some(_), _) => Destination::Nowhere,
            (None, None) => Destination::Standard,
            (None, Some(path)) => {
                is_free(path)?;
                agrees(path, &matches)?;
                output::check_target(path, false)?;
                Destination::File(path.clone())
            }
        };
        let said = String::from_utf8(bytes).ok();
        Ok(Repeated {
            said: said.filter(|_| drawn.is_none()),
            record,
            matches,
            to,
        })
    }

    /// The file for a picture, which is named by hand.
    fn new_file(&self) -> Result<&Path> {
        let named = self.output.as_deref();
        let named = named.ok_or_else(|| bad(AgainFault::OutputDue))?;
        is_free(named)?;
        Ok(named)
    }
}

/// What the bytes of a file say, if this program wrote them.
fn record_in(file: &str, bytes: &[u8]) -> Result<RunRecord> {
    let file = file.to_owned();
    if bytes.starts_with(WORKBOOK) {
        return Err(bad(AgainFault::Workbook { file }));
    }
    let found = match said(bytes) {
        Ok(Some(record)) => record,
        Ok(None) => return Err(bad(AgainFault::SaysNothing { file })),
        Err(Unsaid::Damaged(damage)) => return Err(bad(AgainFault::Damaged { file, damage })),
        Err(Unsaid::Broken(cause)) => return Err(bad(AgainFault::Broken { file, cause })),
    };
    if found.program != RunRecord::default().program {
        return Err(bad(AgainFault::OtherProgram { file }));
    }
    let has_controls = |text: &String| text.chars().any(char::is_control);
    if found.arguments.iter().any(has_controls) {
        let cause = "control characters".to_owned();
        return Err(bad(AgainFault::Broken { file, cause }));
    }
    Ok(found)
}

/// Checks that the command a person reads is the one whose arguments are run.
fn agrees_with_itself(record: &RunRecord) -> Result<()> {
    let run = [std::slice::from_ref(&record.program), &record.arguments].concat();
    if words_typed(&record.command).as_ref() == Some(&run) {
        return Ok(());
    }
    Err(bad(AgainFault::TwoCommands {
        shown: plain(&record.command),
        run: typed_words(&run),
    }))
}

/// The words that the bytes of a file ask for, with nothing of them run.
///
/// **Fails** as [`AgainArguments::read`], which also asks where the output goes.
pub(super) fn asked_by(file: &str, bytes: &[u8], program: &clap::Command) -> Result<Vec<String>> {
    let record = record_in(file, bytes)?;
    let place = Path::new("new");
    let drawn = match &record.output {
        Some(option) => Some((option_of(option)?, place)),
        None => None,
    };
    refuse(&matches(program, words(&record, drawn))?, drawn)?;
    agrees_with_itself(&record)?;
    Ok(record.arguments)
}

/// Refuses a new file whose ending says another form than will be printed into it.
fn agrees(path: &Path, matches: &ArgMatches) -> Result<()> {
    let own = matches.subcommand().map(|(_, own)| own);
    let format = own.and_then(|own| own.try_get_one::<Format>("format").ok().flatten());
    let holds = match format {
        Some(Format::Json) => FileForm::Json,
        Some(Format::Csv) => FileForm::Csv,
        Some(Format::Table) | None => FileForm::Text,
    };
    let ending = path.extension();
    let ending = ending.map(|ending| format!(".{}", ending.to_string_lossy().to_lowercase()));
    if ending.is_none_or(|ending| holds.endings().contains(&ending.as_str())) {
        return Ok(());
    }
    Err(Error::bad(CommandFault::OtherEnding {
        file: path.display().to_string(),
        holds,
    }))
}

/// Refuses a new file that is there.
fn is_free(path: &Path) -> Result<()> {
    if path.is_file() {
        let file = path.display().to_string();
        return Err(bad(AgainFault::NewIsThere { file }));
    }
    Ok(())
}

fn bad(fault: AgainFault) -> Error {
    Error::bad(fault)
}

/// The record in the bytes of a file; which kind of file it is, is seen by its beginning.
fn said(bytes: &[u8]) -> std::result::Result<Option<RunRecord>, Unsaid> {
    let line = metadata(bytes).map_err(Unsaid::Damaged)?;
    if let Some(line) = line.filter(|_| !bytes.trim_ascii_start().starts_with(b"{")) {
        return RunRecord::from_line(&line)
            .map(Some)
            .map_err(Unsaid::Broken);
    }
    let Ok(text) = std::str::from_utf8(bytes) else {
        return Ok(None);
    };
    let read = match text.trim_start().as_bytes().first() {
        Some(b'{') => RunRecord::from_json(text),
        Some(b'#') => RunRecord::from_csv_head(text),
        _ => Ok(None),
    };
    read.map_err(Unsaid::Broken)
}

/// Why a file says nothing that can be read.
enum Unsaid {
    Damaged(PictureDamage),
    Broken(String),
}

/// The option that a file says its output was named by, if it is one of those that name outputs.
fn option_of(said: &str) -> Result<&'static str> {
    let known = OUTPUTS.into_iter().find(|known| *known == said);
    known.ok_or_else(|| {
        bad(AgainFault::Writes {
            option: said.chars().filter(|c| !c.is_control()).collect(),
        })
    })
}

/// The arguments of a record, with the file for its picture behind them.
fn words(record: &RunRecord, drawn: Option<(&str, &Path)>) -> Vec<OsString> {
    let mut words: Vec<OsString> = record.arguments.iter().map(OsString::from).collect();
    if let Some((option, path)) = drawn {
        let mut word = OsString::from(format!("--{}=", option.replace('_', "-")));
        word.push(path);
        words.push(word);
    }
    words
}

/// Arguments read by the definitions of all commands.
fn matches(program: &clap::Command, words: Vec<OsString>) -> Result<ArgMatches> {
    readable_words::check(words.iter().map(OsString::as_os_str))?;
    let called = std::iter::once(OsString::from("torquill")).chain(words);
    let called = number_words::joined(program, called.collect());
    program
        .clone()
        .try_get_matches_from(called)
        .map_err(|fault| {
            bad(match fault.kind() {
                ErrorKind::DisplayHelp | ErrorKind::DisplayVersion => AgainFault::Writes {
                    option: "help".to_owned(),
                },
                _ => AgainFault::Arguments {
                    cause: first_line(&fault),
                },
            })
        })
}

fn first_line(fault: &clap::Error) -> String {
    let text = fault.to_string();
    let line = text.lines().next().unwrap_or_default();
    line.trim_start_matches("error: ").to_owned()
}

/// Refuses all but commands that read and compute, with no output but the one named by hand, and with files below the
/// present folder.
fn refuse(matches: &ArgMatches, drawn: Option<(&str, &Path)>) -> Result<()> {
    let (command, own) = matches.subcommand().expect("a command is required");
    if !ALLOWED.contains(&command) {
        return Err(bad(AgainFault::Command {
            command: command.to_owned(),
            allowed: ALLOWED,
        }));
    }
    let writes = [&OUTPUTS, &BESIDE[..], &["models"]].concat();
    let is_ours = |id: &str| {
        let given = own.try_get_raw(id).ok().flatten().into_iter().flatten();
        drawn.is_some_and(|(option, path)| option == id && given.eq([path.as_os_str()]))
    };
    // An argument that takes the next word for its value would swallow the new file.
    if let Some((option, _)) = drawn.filter(|(option, _)| !is_ours(option)) {
        return Err(bad(AgainFault::Writes {
            option: option.replace('_', "-"),
        }));
    }
    let mut typed = writes.into_iter().filter(|id| is_typed(own, id));
    if let Some(id) = typed.find(|id| !is_ours(id)) {
        return Err(bad(AgainFault::Writes {
            option: id.replace('_', "-"),
        }));
    }
    let people = own.try_get_one::<usize>("people").ok().flatten();
    if let Some(people) = people.filter(|people| **people > MOST_PEOPLE) {
        return Err(bad(AgainFault::TooMuch {
            people: *people,
            most: MOST_PEOPLE,
        }));
    }
    match paths(own).into_iter().find(|path| !stays_below(path)) {
        Some(path) => Err(bad(AgainFault::Outside { path })),
        None => Ok(()),
    }
}

/// Tells on standard error what differs from the making of the file.
///
/// **Fails** if a model file cannot be read, and where the file contradicts itself.
pub fn tell_differences(then: &RunRecord, call: &CommandCall) -> Result<bool> {
    let now = match &then.output {
        Some(option) => call.drawn(option)?,
        None => call.printed()?,
    };
    for (named, asked) in [(&then.movement, &now.movement), (&then.lifter, &now.lifter)] {
        if let (Some(named), Some(asked)) = (named, asked)
            && named != asked
        {
            return Err(bad(AgainFault::Contradicts {
                named: plain(named),
                asked: asked.clone(),
            }));
        }
    }
    let lines = differences(then, &now);
    for line in &lines {
        output::note(&format!("warning: {line}"));
    }
    Ok(!lines.is_empty())
}

fn differences(then: &RunRecord, now: &RunRecord) -> Vec<String> {
    let mut lines = Vec::new();
    if then.program_version != now.program_version {
        lines.push(other_version(
            &plain(&then.program_version),
            &now.program_version,
        ));
    } else if then.contract_version != now.contract_version {
        let version = |number: u32| format!("with contract {number}");
        lines.push(other_version(
            &version(then.contract_version),
            &version(now.contract_version),
        ));
    }
    if then.model_hash != now.model_hash {
        lines.push(other_model());
    }
    let (was, is) = (hashes(then), hashes(now));
    for (name, hash) in &was {
        match is.get(name) {
            None => lines.push(only_once(&plain(name), true)),
            Some(other) if other != hash => lines.push(other_file(&plain(name))),
            Some(_) => {}
        }
    }
    let added = is.keys().filter(|name| !was.contains_key(*name));
    lines.extend(added.map(|name| only_once(name, false)));
    lines
}

/// The hash of every file of a record by its name.
fn hashes(record: &RunRecord) -> BTreeMap<String, String> {
    let models = record.models.iter().map(|file| (&file.name, &file.hash));
    let files = record.files.iter().map(|file| (&file.name, &file.hash));
    models
        .chain(files)
        .map(|(name, hash)| (name.clone(), hash.clone()))
        .collect()
}

/// A text of the file as it may be shown.
fn plain(text: &str) -> String {
    text.chars()
        .filter(|sign| !sign.is_control())
        .take(200)
        .collect()
}
