//! `torquill plan MOVEMENT --method …`: the session with its loads, rests and cautions.

use super::canonical::is_typed;
use super::command_call::{Answer, CommandCall};
use super::complain::warn;
use super::data_file::DataOption;
use super::hung::{Hung, hung_in};
use super::log_options::LogOptions;
use super::number_words::{number, share};
use super::options::{Format, UnitsOption};
use super::output;
use super::picture::LookOptions;
use super::sheet_file;
use super::team::{self, TeamCall};
use super::texts;
use super::waiting::watched;
use crate::draw::Scene;
use crate::error::{CommandFault, Error, PlanFault, Result, Shelf};
use crate::figures::{Paper, fatigue_chart, loads_chart, session_chart, sessions_chart};
use crate::library::Library;
use crate::progress::day::Day;
use crate::report::{self, PlanRecord, plan_cautions, plan_data, plan_text};
use crate::session::method::Method;
use crate::session::request::SessionWishes;
use crate::setups::Watch;
use crate::study::{MethodChoice, PersonTold, PlanAnswer, PlanQuestion, USUAL_EFFORT, plan};
use crate::units::{Duration, Mass, System};
use clap::{ArgMatches, Args, ValueEnum};
use std::path::PathBuf;

/// PlanArguments of `plan`.
#[derive(Debug, Args)]
#[command(after_long_help = "Examples:
  torquill plan bench-press --one-rm \"140 kg\" --training-months 48 \\
      --method overloaded-lowering
  torquill plan bench-press --one-rm \"140 kg\" --training-months 48 \\
      --method clusters --load \"105 kg\" --total-reps 12 -o clusters.png
  torquill plan bench-press --log stalled --training-months 60 \\
      --method pyramid --sheet pyramid.html
  torquill plan bench-press --one-rm \"140 kg\" --training-months 48 \\
      --method bands --gym college-weight-room --sheet bands.svg
  torquill plan bench-press --one-rm \"140 kg\" --training-months 48 \\
      --method chains --chain chain-10mm:1
  torquill plan bench-press --one-rm \"140 kg\" --method all
  torquill plan squat --one-rm \"180 kg\" --weeks 4 --sheet block.html
  echo \"name,sex,mass (kg),height (cm),training_months,squat (kg)\" > team.csv
  echo \"Mia (invented),woman,64,168,14,85\" >> team.csv
  echo \"Tom (invented),man,82,181,30,120 x 5\" >> team.csv
  echo \"Ayo (invented),man,76,175,,\" >> team.csv
  torquill plan squat --team team.csv -o sheets")]
pub struct PlanArguments {
    /// Name of the movement (see: torquill movements)
    movement: String,
    /// Lifter: a built-in name, or a file ending in .ron; reference-man if left out
    #[arg(long, value_name = "NAME|FILE")]
    lifter: Option<String>,
    /// Set a model value, such as technique.grip_width="60 cm" or muscles.biceps_long.moment_arm.elbow=+10%
    #[arg(long = "set", value_name = "PATH=VALUE")]
    set: Vec<String>,
    /// straight, pyramid, clusters, overloaded-lowering, bands, chains, or all
    ///
    /// Left out it is straight.
    #[arg(long, value_name = "METHOD")]
    method: Option<String>,
    /// The one-repetition maximum; simulated if neither this nor a log is given
    ///
    /// Of pull-up and calf raise it is what is added to the body.
    #[arg(long, value_name = "MASS", conflicts_with = "log")]
    one_rm: Option<String>,
    /// Training log to take the maximum from (a file, or rising, stalled, gappy)
    #[arg(long, value_name = "FILE|NAME", group = "rows")]
    log: Option<String>,
    #[command(flatten)]
    reading: LogOptions,
    /// Team to plan for: a CSV file with a row a person; -o names the folder of its sheets
    ///
    /// Columns: name, sex, mass, height, training_months (if wished age, and yes or no under injured and unwell), and one
    /// a lift with its 1RM, a set such as "100 kg x 5", or nothing where it is to be tested. MOVEMENT is one of the lifts,
    /// or `all`.
    #[arg(
        long,
        value_name = "FILE",
        requires = "output",
        group = "rows",
        conflicts_with_all = [
            "lifter", "one_rm", "log", "training_months", "age", "injured", "unwell", "last_overload", "fatigue", "loads",
            "sheet",
        ]
    )]
    team: Option<PathBuf>,
    /// Months of steady training; if left out, as the lifter's file says (a named one), or none
    #[arg(long, value_name = "MONTHS", value_parser = number)]
    training_months: Option<f64>,
    /// Age
    #[arg(long, value_name = "YEARS", value_parser = number)]
    age: Option<f64>,
    /// The lifter is injured or in pain
    #[arg(long)]
    injured: bool,
    /// The lifter is ill, unusually sore, or back from a break
    #[arg(long)]
    unwell: bool,
    /// Days since the last overloaded lowering of the same muscles
    #[arg(long, value_name = "DAYS")]
    last_overload: Option<u32>,
    /// Gym whose bars, plates, machines, bands and chains are used: a built-in name, or a file ending in .ron
    #[arg(long, value_name = "NAME|FILE")]
    gym: Option<String>,
    /// Load to use instead of the usual one
    #[arg(long, value_name = "MASS")]
    load: Option<String>,
    /// Sets
    #[arg(long, value_name = "N")]
    sets: Option<u32>,
    /// Repetitions of a set
    #[arg(long, value_name = "N")]
    reps: Option<u32>,
    /// All repetitions together (clusters)
    #[arg(long, value_name = "N")]
    total_reps: Option<u32>,
    /// Repetitions of a group (clusters)
    #[arg(long, value_name = "N")]
    group: Option<u32>,
    /// Rest inside a cluster set
    #[arg(long, value_name = "TIME", allow_hyphen_values = true)]
    rest_within: Option<String>,
    /// Rest between sets
    #[arg(long, value_name = "TIME", allow_hyphen_values = true)]
    rest: Option<String>,
    /// Repetitions in reserve at which a set ends
    #[arg(long, value_name = "N")]
    rir: Option<u32>,
    /// Loss of velocity against the fastest repetition at which a set ends, such as 20%
    #[arg(long, value_name = "SHARE")]
    velocity_loss: Option<String>,
    /// Most working sets of the lift in a week
    #[arg(long, value_name = "N")]
    max_per_week: Option<u32>,
    #[command(flatten)]
    hung: Hung,
    /// Hardest effort of a bands or chains setup, share of all the lifter has
    #[arg(long, value_name = "SHARE", default_value_t = USUAL_EFFORT, value_parser = share)]
    effort: f64,
    /// A block of so many weeks
    #[arg(long, value_name = "N")]
    weeks: Option<u32>,
    /// Day of the first session, year-month-day: tells how old a log is, and gives a block its dates
    #[arg(long, value_name = "DATE")]
    start: Option<String>,
    /// Picture of the predicted velocities (.svg or .png); with --team the folder of the sheets
    #[arg(short, long, value_name = "FILE")]
    output: Option<PathBuf>,
    /// Picture of the joints' fatigue over time (.svg or .png)
    #[arg(long, value_name = "FILE")]
    fatigue: Option<PathBuf>,
    /// Picture of load and repetitions, set by set (.svg or .png)
    #[arg(long, value_name = "FILE")]
    loads: Option<PathBuf>,
    /// One-page sheet to print: .html (a page a session), .svg or .png (one session)
    #[arg(long, value_name = "FILE")]
    sheet: Option<PathBuf>,
    /// Paper of the sheet; letter with --units us if left out
    #[arg(long, value_enum)]
    paper: Option<PaperOption>,
    #[command(flatten)]
    look: LookOptions,
    /// Units of plates and text
    #[arg(long, value_enum, default_value_t = UnitsOption::Metric)]
    units: UnitsOption,
    /// Form of the output
    #[arg(long, value_enum, default_value_t = Format::Table)]
    format: Format,
    #[command(flatten)]
    data: DataOption,
}

/// Paper of the sheet.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum PaperOption {
    /// 210 mm x 297 mm
    A4,
    /// 8.5 in x 11 in
    Letter,
}

/// Runs the command.
pub fn run(arguments: &PlanArguments, call: &CommandCall) -> Result<()> {
    let library = call.models;
    if arguments.log.is_none() {
        arguments.reading.check_idle()?;
    }
    if let (Some(file), Some(folder)) = (&arguments.team, &arguments.output) {
        let team = TeamCall {
            file,
            folder,
            replace: arguments.look.force,
            bad_rows: arguments.reading.bad_rows(),
            shown: (arguments.units.into(), arguments.paper()),
            format: arguments.format,
        };
        let question = arguments.question(call.matches)?;
        arguments.warn_of_gear(library)?;
        return team::run(&team, &question, call);
    }
    arguments.check_targets()?;
    let question = arguments.question(call.matches)?;
    let answer = if question.searches() {
        watched(|watch| plan(&question, library, watch))?
    } else {
        plan(&question, library, &Watch::default())?
    };
    arguments.warn_of_gear(library)?;
    if let Some(path) = &arguments.sheet {
        sheet_file::check_sessions(path, answer.sessions.len())?;
    }
    if arguments.fatigue.is_some() && answer.sessions.len() > 1 {
        let sessions = answer.sessions.len();
        return Err(Error::bad(CommandFault::ManySessions { sessions }));
    }
    arguments.print(call, &answer)?;
    arguments.draw(call, &answer)
}

impl PlanArguments {
    /// Tells what is unlikely about a gym of one's own and what hangs.
    fn warn_of_gear(&self, library: &Library) -> Result<()> {
        let gym = self
            .gym
            .as_deref()
            .map(|gym| library.gym(gym))
            .transpose()?;
        if let Some(name) = &self.gym {
            warn(&library.doubts_of(Shelf::Gyms, name)?, self.units.into());
        }
        hung_in(&self.hung, library, gym.as_ref())?;
        Ok(())
    }

    fn check_targets(&self) -> Result<()> {
        for path in [&self.output, &self.fatigue, &self.loads]
            .into_iter()
            .flatten()
        {
            self.look.picture(path.clone()).check()?;
        }
        match &self.sheet {
            Some(path) => sheet_file::check(path, self.look.force),
            None => Ok(()),
        }
    }

    /// What is asked, texts read; the matches tell what was typed.
    fn question(&self, matches: &ArgMatches) -> Result<PlanQuestion> {
        Ok(PlanQuestion {
            movement: self.movement.clone(),
            lifter: self.lifter.clone(),
            set: self.set.clone(),
            methods: match self.method.as_deref() {
                Some("all") => MethodChoice::All,
                Some(name) => MethodChoice::One(Method::from_name(name)?),
                None => MethodChoice::Usual,
            },
            weeks: self.weeks,
            start: self.start.as_deref().map(day).transpose()?,
            one_rm: mass(self.one_rm.as_ref())?,
            of_set: None,
            log: {
                let has_start = self.start.is_some();
                let choice = |log| self.reading.choice(log, has_start);
                self.log.as_deref().map(choice)
            },
            person: PersonTold {
                training_months: self.training_months,
                age_years: self.age,
                injured: self.injured,
                unwell: self.unwell,
                days_since_overload: self.last_overload,
            },
            gym: self.gym.clone(),
            plates: self.units.into(),
            pieces: self.hung.texts(),
            effort: is_typed(matches, "effort").then_some(self.effort),
            wishes: self.wishes()?,
        })
    }

    fn wishes(&self) -> Result<SessionWishes> {
        Ok(SessionWishes {
            load: mass(self.load.as_ref())?,
            repetitions: self.reps,
            sets: self.sets,
            total_repetitions: self.total_reps,
            group: self.group,
            rest_within: time(self.rest_within.as_ref())?,
            rest_between: time(self.rest.as_ref())?,
            reserve: self.rir,
            velocity_loss: self
                .velocity_loss
                .as_deref()
                .map(texts::share)
                .transpose()?,
            sets_a_week: self.max_per_week,
        })
    }

    fn print(&self, call: &CommandCall, answer: &PlanAnswer) -> Result<()> {
        let units: System = self.units.into();
        let forms = Answer {
            table: &|| plan_text(answer, units),
            json: &|| report::pretty(&PlanRecord::of(answer, units)),
            data: &|| plan_data(answer, units),
        };
        call.give(self.format, &forms)?;
        if self.format == Format::Csv {
            for caution in plan_cautions(&answer.sessions, units) {
                output::note(&format!("caution: {caution}"));
            }
        }
        Ok(())
    }

    /// Pictures: velocities of one session, loads of several; the sheet of all.
    fn draw(&self, call: &CommandCall, answer: &PlanAnswer) -> Result<()> {
        let Some(first) = answer.sessions.first().map(|session| &session.plan) else {
            return Ok(());
        };
        let (units, look) = (self.units.into(), self.look.look()?);
        let write =
            |path: &Option<PathBuf>, option: &str, scene: &dyn Fn() -> Result<Scene>| match path {
                None => Ok(()),
                Some(path) => {
                    let picture = self.look.picture(path.clone());
                    picture.write(&call.signed(option, scene()?)?)
                }
            };
        write(&self.output, "output", &|| {
            if answer.sessions.len() > 1 {
                return sessions_chart(&answer.sessions, units, look);
            }
            // Overloaded lowering is not predicted repetition by repetition: its loads are what can be drawn.
            if first.draft.predictions.is_empty() {
                loads_chart(first, units, look)
            } else {
                session_chart(first, units, look)
            }
        })?;
        write(&self.fatigue, "fatigue", &|| fatigue_chart(first, look))?;
        write(&self.loads, "loads", &|| {
            if answer.sessions.len() > 1 {
                return sessions_chart(&answer.sessions, units, look);
            }
            loads_chart(first, units, look)
        })?;
        match &self.sheet {
            None => Ok(()),
            Some(path) => sheet_file::write(path, &answer.sessions, (units, self.paper()), call),
        }
    }

    /// The paper asked for, or that of the units.
    fn paper(&self) -> Paper {
        match (self.paper, self.units) {
            (Some(PaperOption::A4), _) | (None, UnitsOption::Metric) => Paper::A4,
            (Some(PaperOption::Letter), _) | (None, UnitsOption::Us) => Paper::Letter,
        }
    }
}

fn mass(text: Option<&String>) -> Result<Option<Mass>> {
    text.map(|text| Mass::from_text(text).map_err(Error::bad))
        .transpose()
}

fn day(text: &str) -> Result<Day> {
    let read = Day::from_text(text);
    read.map_err(|fault| Error::bad(PlanFault::NoStart(fault)))
}

fn time(text: Option<&String>) -> Result<Option<Duration>> {
    text.map(|text| Duration::from_text(text).map_err(Error::bad))
        .transpose()
}
