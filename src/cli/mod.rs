//! The command line: one command a file.
//!
//! In: arguments. Out: results on standard output, messages on standard error, an exit status: 0 done,
//! 1 the question has no answer, 2 bad arguments or a bad file, 130 interrupted while it wrote or searched (by any signal).

mod again;
pub mod canonical;
mod check;
mod command_call;
pub mod complain;
mod completing;
mod completions;
mod curve;
mod data_file;
mod explain;
mod explore;
mod figure;
mod fit;
mod folder;
mod help_groups;
mod hung;
mod idle_options;
mod kept_output;
mod kind;
mod lecture;
mod list_parameters;
mod log_options;
pub mod make_gym;
mod manner;
mod manual;
mod max;
mod movements;
pub mod number_words;
mod options;
pub mod output;
mod people_options;
mod pick;
mod picture;
mod plan;
mod progress;
mod readable_words;
mod rep;
mod said_before;
mod same_target;
mod scatter;
mod setup_options;
mod sheet_file;
mod show;
mod sources;
pub mod team;
mod texts;
mod vary;
mod waiting;
pub mod whole_set;

pub use complain::render;
pub use kept_output::Called;

use crate::error::{FaultKind, Result};
use crate::library::{Library, forget_read};
use crate::units::System;
use clap::{ArgMatches, CommandFactory, FromArgMatches, Parser, Subcommand};
use command_call::{CommandCall, Destination};
use kept_output::Stream;
use options::UnitsOption;
use std::ffi::OsString;
use std::io::{ErrorKind, IsTerminal, Write};

/// Where in a lift a person is strong, where the load is heavy, and what can be done about the gap.
///
/// torquill computes strength curves from anatomy: muscles, moment arms and limbs give the capacity over
/// the range of a lift; bar, bands and chains give the demand; both together give effort, the sticking
/// region, and how much a setup flattens it.
#[derive(Debug, Parser)]
#[command(name = "torquill", version, max_term_width = 100, after_long_help = EXAMPLES)]
struct Cli {
    /// Folder of model files that adds to the built-in ones or replaces those of the same name
    #[arg(long, global = true, value_name = "DIR")]
    models: Option<std::path::PathBuf>,
    /// Say how it was made: over a table of CSV as commented lines, in JSON lists as an object
    #[arg(long, global = true)]
    provenance: bool,
    #[command(subcommand)]
    command: Command,
}

const EXAMPLES: &str = "Examples:
  torquill movements
  torquill curve bench-press --load \"55 kg\"
  torquill figure bench-press --load \"55 kg\" -o bench.png
  torquill figure bench-press --load \"55 kg\" \\
      --versus --load \"35 kg\" --band loop-14mm:1 -o bands.png

Education, not medical advice.";

#[derive(Debug, Subcommand)]
enum Command {
    /// List the named movements: name, class, joints, axis
    Movements(movements::MovementsArguments),
    /// Capacity, demand and effort over the range of a movement
    Curve(curve::CurveArguments),
    /// Print the whole calculation of one pose, to be followed with a pocket calculator
    Explain(explain::ExplainArguments),
    /// Write the live page: the model in one file that opens in any browser
    Explore(explore::ExploreArguments),
    /// Draw capacity, demand, effort and the hardest part as SVG or PNG
    Figure(figure::FigureArguments),
    /// What a changed value does to the curve, and which values matter most
    Vary(vary::VaryArguments),
    /// Simulate one repetition: velocity, force, sticking region in motion
    Rep(rep::RepArguments),
    /// Find the one-repetition maximum, the eccentric one, mean velocities over load
    Max(max::MaxArguments),
    /// Write a lifter of one's own from a few measurements: 1RMs, sets, holds, torques
    Fit(fit::FitArguments),
    /// Loads, rests and cautions of a session
    Plan(Box<plan::PlanArguments>),
    /// Read a training log: rising, flat or falling, and how sure
    Progress(progress::ProgressArguments),
    /// Rank the setups that a gym can build: plates, bands and chains for this lifter and lift
    Pick(pick::PickArguments),
    /// Write a gym file from a few answers or options: bars, plates, bands, anchors
    Gym(make_gym::GymArguments),
    /// Write the whole set of lecture figures with captions, alternative text, data and a page of all
    Lecture(lecture::LectureArguments),
    /// Run again what an output says of its own making
    Again(again::AgainArguments),
    /// Read a model file and say what is wrong, line by line
    Check(check::CheckArguments),
    /// List every value that can be set: path, meaning, value, plausible range, where it comes from
    Parameters(list_parameters::ParametersArguments),
    /// List what the program holds by name, and print any file of it as a starting point
    Show(show::ShowArguments),
    /// List the publications behind the numbers
    Sources(sources::SourcesArguments),
    /// Print what a shell needs to complete commands, names and paths
    Completions(completions::CompletionsArguments),
    /// Print the manual page, or write one for every command
    Manual(manual::ManualArguments),
}

/// The program's commands with their options in groups.
fn command() -> clap::Command {
    help_groups::grouped(number_words::counted(Cli::command()))
}

/// The program's commands as they are defined: what help, manual pages and the package for Python are made of.
#[must_use]
pub fn definitions() -> clap::Command {
    command()
}

/// The words that the bytes of a file ask `again` for, with nothing of them run: for the tests of this door.
///
/// # Errors
/// As `again` refuses the file.
pub fn asked_again(file: &str, bytes: &[u8]) -> Result<Vec<String>> {
    again::asked_by(file, bytes, &command())
}

/// Runs the program with the arguments of the process and returns its exit status.
#[must_use]
pub fn run() -> u8 {
    whole_set::let_limits_fail();
    match completing::answered(command) {
        Ok(false) => status_of(std::env::args_os()),
        Ok(true) => 0,
        Err(fault) => refused(&fault),
    }
}

/// Runs a command inside the calling program: `arguments` are the words behind the program's name.
///
/// Nothing is printed; what would have been is returned. Files that the arguments name are written.
#[must_use]
pub fn call_inside(arguments: &[String]) -> Called {
    kept_output::kept(|| {
        complain::forget_told();
        forget_read();
        let name = std::iter::once("torquill".to_owned());
        status_of(name.chain(arguments.iter().cloned()))
    })
}

/// Runs the words of a command line, the program's name first.
fn status_of(words: impl IntoIterator<Item = impl Into<OsString>>) -> u8 {
    let words: Vec<OsString> = words.into_iter().map(Into::into).collect();
    if let Err(fault) = readable_words::check(words.iter().skip(1).map(OsString::as_os_str)) {
        output::note(&complain::render(&fault, System::Metric, false));
        return fault.exit_status();
    }
    let program = command();
    let words = number_words::joined(&program, words);
    let matches = match program.clone().try_get_matches_from(words) {
        Ok(matches) => matches,
        Err(fault) => return refused(&fault),
    };
    let cli = match Cli::from_arg_matches(&matches) {
        Ok(cli) => cli,
        Err(fault) => return refused(&fault),
    };
    let answered = match answer(&cli, &matches, &program) {
        // What was drawn of a load that is not lifted stays.
        Err(fault) if fault.kind() == FaultKind::NoAnswer => whole_set::settle().and(Err(fault)),
        Err(fault) => Err(fault),
        Ok(()) => whole_set::settle(),
    };
    match answered {
        Ok(()) => 0,
        Err(fault) => {
            whole_set::forget_ready();
            let seen = std::io::stderr().is_terminal() && !kept_output::is_kept();
            let colour = seen && std::env::var_os("NO_COLOR").is_none();
            output::note(&complain::render(&fault, units(&matches), colour));
            fault.exit_status()
        }
    }
}

/// Help, or what is wrong with the words; a closed pipe is nobody's fault.
fn refused(fault: &clap::Error) -> u8 {
    let stream = match fault.use_stderr() {
        true => Stream::Errors,
        false => Stream::Output,
    };
    if kept_output::keep(stream, &fault.render().to_string()) {
        return exit_code(fault);
    }
    match fault.print().and_then(|()| std::io::stdout().flush()) {
        Err(cause) if stream == Stream::Output && cause.kind() != ErrorKind::BrokenPipe => {
            let lost = output::unprinted(&cause);
            output::note(&complain::render(&lost, System::Metric, false));
            lost.exit_status()
        }
        _ => exit_code(fault),
    }
}

fn exit_code(fault: &clap::Error) -> u8 {
    u8::try_from(fault.exit_code()).unwrap_or(2)
}

/// The units that the command was asked for; metric where it has no such option.
fn units(matches: &ArgMatches) -> System {
    let own = matches.subcommand().map(|(_, own)| own);
    let asked = own.and_then(|own| own.try_get_one::<UnitsOption>("units").ok().flatten());
    asked.map_or(System::Metric, |units| (*units).into())
}

fn answer(cli: &Cli, matches: &ArgMatches, program: &clap::Command) -> Result<()> {
    let library = options::library(cli.models.as_deref())?;
    let call = call(matches, &library, program, (Destination::Standard, None));
    run_command(&cli.command, &call)
}

fn call<'a>(
    matches: &'a ArgMatches,
    library: &'a Library,
    program: &'a clap::Command,
    (to, said): (Destination, Option<String>),
) -> CommandCall<'a> {
    let (command, matches) = matches.subcommand().expect("a command is required");
    CommandCall {
        models: library,
        command,
        matches,
        program,
        to,
        said,
    }
}

/// Runs what a file says of its own making.
fn repeat(arguments: &again::AgainArguments, asking: &CommandCall) -> Result<()> {
    let again::Repeated {
        record,
        matches,
        to,
        said,
    } = arguments.read(asking.program, asking.models)?;
    let inner = Cli::from_arg_matches(&matches).expect("arguments that match are read");
    let mut call = call(&matches, asking.models, asking.program, (to, said));
    // Numbers of another program or other files are expected to differ, and nobody is to be suspected of it.
    if again::tell_differences(&record, &call)? {
        call.said = None;
    }
    run_command(&inner.command, &call)
}

fn run_command(command: &Command, call: &CommandCall) -> Result<()> {
    same_target::check(call.program, call.command, call.matches)?;
    idle_options::check(call.program, call.command, call.matches)?;
    let library = call.models;
    call.check_data()?;
    match command {
        Command::Movements(arguments) => movements::run(arguments, call),
        Command::Curve(arguments) => curve::run(arguments, call),
        Command::Explain(arguments) => explain::run(arguments, call),
        Command::Explore(arguments) => explore::run(arguments, call),
        Command::Figure(arguments) => figure::run(arguments, call),
        Command::Vary(arguments) => vary::run(arguments, call),
        Command::Rep(arguments) => rep::run(arguments, call),
        Command::Max(arguments) => max::run(arguments, call),
        Command::Fit(arguments) => fit::run(arguments, call),
        Command::Plan(arguments) => plan::run(arguments, call),
        Command::Progress(arguments) => progress::run(arguments, call),
        Command::Pick(arguments) => pick::run(arguments, call),
        Command::Gym(arguments) => make_gym::run(arguments, library),
        Command::Lecture(arguments) => lecture::run(arguments, call),
        Command::Sources(arguments) => sources::run(arguments, call),
        Command::Parameters(arguments) => list_parameters::run(arguments, call),
        Command::Show(arguments) => show::run(arguments, library),
        Command::Check(arguments) => check::run(arguments, library),
        Command::Completions(arguments) => completions::run(arguments),
        Command::Manual(arguments) => manual::run(arguments, call.program.clone()),
        // A file may not ask for `again`, so this goes no deeper.
        Command::Again(arguments) => repeat(arguments, call),
    }
}
