//! `torquill explain MOVEMENT --at PLACE`: the whole calculation of one pose, line by line.

use super::command_call::CommandCall;
use super::options::{UnitsOption, Who};
use super::output;
use super::setup_options::{SetupOptions, setups};
use super::texts;
use super::whole_set;
use crate::error::{CommandFault, Error, FileForm, Result};
use crate::report::{SheetForm, worked_pose_sheet};
use crate::study::{Question, asked_pace, worked_pose};
use clap::{Args, ValueEnum};
use std::path::{Path, PathBuf};

/// ExplainArguments of `explain`.
#[derive(Debug, Args)]
#[command(after_long_help = "Examples:
  torquill explain biceps-curl --at \"60 deg\" --load \"8 kg\"
  torquill explain bench-press --at \"10 cm\" --load \"55 kg\" --format markdown
  torquill explain squat --at 40% --load \"60 kg\" --speed \"0.3 m/s\" -o squat.html")]
pub struct ExplainArguments {
    /// Name of the movement (see: torquill movements)
    movement: String,
    /// Where: from the start along the way ("10 cm"), the angle of the joint ("60 deg"), a share of the range (40%)
    #[arg(long, value_name = "PLACE", allow_hyphen_values = true)]
    at: String,
    #[command(flatten)]
    who: Who,
    #[command(flatten)]
    setup: SetupOptions,
    /// Speed at which capacity is asked for: "0.3 m/s", or "60 deg/s" for one joint; negative lowers
    #[arg(long, value_name = "SPEED", allow_hyphen_values = true)]
    speed: Option<String>,
    /// Units of place, load and result; the calculation itself is in SI
    #[arg(long, value_enum, default_value_t = UnitsOption::Metric)]
    units: UnitsOption,
    /// Form of the sheet; without it that of the file's ending, or text
    #[arg(long, value_enum)]
    format: Option<SheetFormOption>,
    /// File to write instead of standard output
    #[arg(short, long, value_name = "FILE")]
    output: Option<PathBuf>,
    /// Replace a file that exists
    #[arg(long)]
    force: bool,
}

/// Form of the sheet.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
enum SheetFormOption {
    /// Plain text
    Text,
    /// Markdown
    Markdown,
    /// A page for a browser
    Html,
}

/// Runs the command.
pub fn run(arguments: &ExplainArguments, call: &CommandCall) -> Result<()> {
    let library = call.models;
    let form = form(arguments)?;
    if let Some(path) = &arguments.output {
        output::check_target(path, arguments.force)?;
    }
    let place = texts::pose_place(&arguments.at)?;
    let units = arguments.units.into();
    let model = arguments.who.model(library, &arguments.movement)?;
    let mut question = Question::new(&arguments.movement, &model.movement, &model.lifter);
    question.pace = asked_pace(arguments.speed.as_deref())?;
    let setups = setups(&arguments.setup, library, call.matches, units)?;
    let pose = worked_pose(&question, setups.first(), place)?;
    let record = match call.matches.get_flag("provenance") {
        false => None,
        true => Some(call.printed()?),
    };
    let sheet = worked_pose_sheet(&pose, form, units, record.as_ref());
    match &arguments.output {
        Some(path) => whole_set::write_file(path, sheet.as_bytes()),
        None => output::print(&sheet),
    }
}

/// The form that was asked for, else that of the file's ending, else text.
///
/// **Fails** where the file's name ends in none of the forms, or in another than was asked for.
fn form(arguments: &ExplainArguments) -> Result<SheetForm> {
    let asked = arguments.format.map(SheetForm::from);
    let ended = arguments.output.as_ref();
    let Some(path) = ended.filter(|path| path.extension().is_some()) else {
        return Ok(asked.unwrap_or(SheetForm::Text));
    };
    let by_ending = form_of(path);
    let wanted = asked.or(by_ending);
    match wanted.filter(|form| by_ending == Some(*form)) {
        Some(form) => Ok(form),
        None => Err(Error::bad(CommandFault::OtherEnding {
            file: path.display().to_string(),
            holds: match wanted {
                None => FileForm::Sheet,
                Some(SheetForm::Text) => FileForm::Text,
                Some(SheetForm::Markdown) => FileForm::Markdown,
                Some(SheetForm::Html) => FileForm::Page,
            },
        })),
    }
}

fn form_of(path: &Path) -> Option<SheetForm> {
    let ending = format!(".{}", path.extension()?.to_string_lossy().to_lowercase());
    let is_of = |form: FileForm| form.endings().contains(&ending.as_str());
    match () {
        () if is_of(FileForm::Text) => Some(SheetForm::Text),
        () if is_of(FileForm::Markdown) => Some(SheetForm::Markdown),
        () if is_of(FileForm::Page) => Some(SheetForm::Html),
        () => None,
    }
}

impl From<SheetFormOption> for SheetForm {
    fn from(option: SheetFormOption) -> Self {
        match option {
            SheetFormOption::Text => Self::Text,
            SheetFormOption::Markdown => Self::Markdown,
            SheetFormOption::Html => Self::Html,
        }
    }
}
