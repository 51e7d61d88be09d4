//! `torquill plan MOVEMENT --method …`: the session with its loads, rests and cautions.

use super::hung::Hung;
use super::look::LookOptions;
use super::options::{Format, UnitsOption, Who};
use super::output;
use super::plan_ground::{Ground, ground};
use super::plan_sheet;
use crate::draw::Scene;
use crate::error::{Error, Result};
use crate::figures::{Paper, fatigue_chart, loads_chart, session_chart};
use crate::library::Library;
use crate::movement::Handling;
use crate::narrative::faults::told;
use crate::narrative::session::day_purpose;
use crate::report::{self, PlanRecord, SheetPart, plan_cautions, plan_csv, plan_text};
use crate::resistance::Setup;
use crate::session::block::block;
use crate::session::method::{METHODS, Method};
use crate::session::oracle::RepOracle;
use crate::session::plan::SessionPlan;
use crate::session::request::SessionRequest;
use crate::session::schemes::plan;
use crate::study::{Question, simulated_oracle};
use crate::units::{Duration, Mass, System};
use clap::{Args, ValueEnum};
use std::path::PathBuf;

/// Arguments of `plan`.
#[derive(Debug, Args)]
#[command(after_help = "Examples:
  torquill plan bench-press --one-rm \"140 kg\" --method overloaded-lowering
  torquill plan bench-press --one-rm \"140 kg\" --method clusters --load \"105 kg\" --total-reps 12 -o clusters.png
  torquill plan bench-press --log stalled --method pyramid --sheet pyramid.html
  torquill plan bench-press --one-rm \"140 kg\" --method bands --gym college-weight-room --sheet bands.svg
  torquill plan bench-press --one-rm \"140 kg\" --method chains --chain chain-10mm:1
  torquill plan bench-press --one-rm \"140 kg\" --method all
  torquill plan squat --one-rm \"180 kg\" --weeks 4 --sheet block.html")]
pub struct Arguments {
    /// Name of the movement (see: torquill movements)
    pub(super) movement: String,
    #[command(flatten)]
    pub(super) who: PlanWho,
    /// straight, pyramid, clusters, overloaded-lowering, bands, chains, or all; straight if left out, with --weeks
    /// overloaded lowering where the lifter may do it
    #[arg(long, value_name = "METHOD")]
    method: Option<String>,
    /// The one-repetition maximum (pull-up, calf raise: what is added to the body); simulated if neither this nor a log is given
    #[arg(long, value_name = "MASS", conflicts_with = "log")]
    pub(super) one_rm: Option<String>,
    /// Training log to take the maximum from (a file, or rising, stalled, gappy)
    #[arg(long, value_name = "FILE|NAME")]
    pub(super) log: Option<String>,
    /// Months of steady training; if left out, as the lifter's file says (a named one), or 36
    #[arg(long, value_name = "MONTHS")]
    pub(super) training_months: Option<f64>,
    /// Age
    #[arg(long, value_name = "YEARS")]
    pub(super) age: Option<f64>,
    /// The lifter is injured or in pain
    #[arg(long)]
    pub(super) injured: bool,
    /// The lifter is ill, unusually sore, or back from a break
    #[arg(long)]
    pub(super) unwell: bool,
    /// Days since the last overloaded lowering of the same muscles
    #[arg(long, value_name = "DAYS")]
    pub(super) last_overload: Option<u32>,
    /// Gym whose bars, plates, machines, bands and chains are used: a built-in name, or a file ending in .ron
    #[arg(long, value_name = "NAME|FILE")]
    pub(super) gym: Option<String>,
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
    #[command(flatten)]
    pub(super) hung: Hung,
    /// Hardest effort of a bands or chains setup, share of all the lifter has
    #[arg(long, value_name = "SHARE", default_value_t = 0.85)]
    pub(super) effort: f64,
    /// A block of so many weeks
    #[arg(long, value_name = "N")]
    weeks: Option<u32>,
    /// Picture of the predicted velocities (.svg or .png)
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
    pub(super) units: UnitsOption,
    /// Form of the output
    #[arg(long, value_enum, default_value_t = Format::Table)]
    format: Format,
}

/// Whose session, with which model values.
#[derive(Debug, Args)]
pub struct PlanWho {
    /// Lifter: a built-in name, or a file ending in .ron; reference-man if left out
    #[arg(long, value_name = "NAME|FILE")]
    pub lifter: Option<String>,
    /// Set a model value, such as technique.grip_width="60 cm" or muscles.biceps_long.moment_arm.elbow=+10%
    #[arg(long = "set", value_name = "PATH=VALUE")]
    pub set: Vec<String>,
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
pub fn run(arguments: &Arguments, library: &Library) -> Result<()> {
    check_arguments(arguments)?;
    let who = Who {
        lifter: arguments
            .who
            .lifter
            .clone()
            .unwrap_or_else(|| "reference-man".to_owned()),
        set: arguments.who.set.clone(),
    };
    let model = who.model(library, &arguments.movement)?;
    let question = Question::new(&arguments.movement, &model.movement, &model.lifter);
    let methods = methods(arguments)?;
    let ground = ground(arguments, library, &question, &methods)?;
    let lowering = Duration::from_s(LOWERING_S);
    let oracle = |hung: &Setup| {
        let lifter = ground.lifter.as_ref()?;
        simulated_oracle(&question, lifter, hung, lowering).ok()
    };
    let hung = |method: Method| {
        let setup = ground.setups.iter().find(|(known, _)| *known == method)?;
        let hung = &setup.1.as_ref().ok()?.hung;
        oracle(hung).map(|oracle| (method, oracle))
    };
    let base = Base {
        arguments,
        ground: &ground,
        handling: &model.movement.handling,
        oracle: oracle(&Setup::default()),
        hung: methods.iter().filter_map(|method| hung(*method)).collect(),
    };
    let outcome = match arguments.weeks {
        Some(weeks) => weeks_of(&base, &methods, weeks)?,
        None => sessions_of(&base, &methods)?,
    };
    show(arguments, &outcome, &ground.notes)
}

/// Time of a lowering in a set that is lifted, s (ACSM 2009: 1 to 2 s each way).
const LOWERING_S: f64 = 2.0;

fn check_arguments(arguments: &Arguments) -> Result<()> {
    let pictures = [&arguments.output, &arguments.fatigue, &arguments.loads];
    for path in pictures.into_iter().flatten() {
        arguments.look.picture(path.clone()).check()?;
    }
    if let Some(path) = &arguments.sheet {
        plan_sheet::check(path, arguments.look.force)?;
    }
    if !(0.3..=1.0).contains(&arguments.effort) {
        return Err(Error::bad(format!(
            "--effort {} is outside 0.3 to 1",
            arguments.effort
        )));
    }
    if let Some(age) = arguments.age
        && !(5.0..=110.0).contains(&age)
    {
        return Err(Error::bad(format!("--age {age} is outside 5 to 110 years")));
    }
    Ok(())
}

/// The methods that are asked for.
fn methods(arguments: &Arguments) -> Result<Vec<Method>> {
    match (arguments.method.as_deref(), arguments.weeks) {
        (Some("all"), Some(_)) => Err(Error::bad("a block is of one method, not of all")
            .hint("name it: --method pyramid --weeks 4")),
        (Some("all"), None) => Ok(METHODS.iter().map(|(method, _)| *method).collect()),
        (Some(name), _) => Ok(vec![Method::from_name(name)?]),
        (None, Some(_)) => Ok(vec![Method::OverloadedLowering]),
        (None, None) => Ok(vec![Method::Straight]),
    }
}

/// What every request of this call shares.
struct Base<'a> {
    arguments: &'a Arguments,
    ground: &'a Ground,
    handling: &'a Handling,
    oracle: Option<RepOracle<'a>>,
    hung: Vec<(Method, RepOracle<'a>)>,
}

impl Base<'_> {
    fn request(&self, method: Method) -> Result<SessionRequest<'_>> {
        let (arguments, ground) = (self.arguments, self.ground);
        let mut request = SessionRequest::usual(
            (&arguments.movement, self.handling),
            method,
            ground.status,
            ground.one_rm,
            &ground.loading,
        );
        request.one_rm_from = ground.from.clone();
        request.body = ground.body;
        request.oracle = self.oracle.as_ref();
        let of_method = |known: &Method| *known == method;
        request.setup_oracle = self
            .hung
            .iter()
            .find(|(known, _)| of_method(known))
            .map(|(_, oracle)| oracle);
        if let Some((_, setup)) = ground.setups.iter().find(|(known, _)| of_method(known)) {
            request.setup = Some(&setup.as_ref().map_err(Clone::clone)?.setup);
        }
        request.wishes.repetitions = arguments.reps;
        request.wishes.sets = arguments.sets;
        request.wishes.total_repetitions = arguments.total_reps;
        request.wishes.group = arguments.group;
        let time = |text: &String| Duration::from_text(text).map_err(Error::bad);
        request.wishes.rest_between = arguments.rest.as_ref().map(time).transpose()?;
        request.wishes.rest_within = arguments.rest_within.as_ref().map(time).transpose()?;
        let mass = |text: &String| Mass::from_text(text).map_err(Error::bad);
        request.wishes.load = arguments.load.as_ref().map(mass).transpose()?;
        Ok(request)
    }
}

/// Sessions, and the methods that were refused with their reasons.
struct Outcome {
    sessions: Vec<(String, SessionPlan)>,
    refused: Vec<(String, String)>,
}

fn sessions_of(base: &Base<'_>, methods: &[Method]) -> Result<Outcome> {
    let mut outcome = Outcome {
        sessions: Vec::new(),
        refused: Vec::new(),
    };
    let units: System = base.arguments.units.into();
    let mut first = None;
    for method in methods {
        match base.request(*method).and_then(|request| plan(&request)) {
            Ok(plan) => outcome.sessions.push((method.name().to_owned(), plan)),
            Err(fault) if methods.len() > 1 && fault.exit_status() == 1 => {
                outcome
                    .refused
                    .push((method.name().to_owned(), reason(&fault, units)));
                first.get_or_insert(fault);
            }
            Err(fault) => return Err(fault),
        }
    }
    match first {
        Some(fault) if outcome.sessions.is_empty() => Err(fault),
        _ => Ok(outcome),
    }
}

/// Why a method was refused, in one line.
fn reason(fault: &Error, units: System) -> String {
    fault
        .faults()
        .first()
        .map_or_else(String::new, |fault| told(fault, units).message)
}

fn weeks_of(base: &Base<'_>, methods: &[Method], weeks: u32) -> Result<Outcome> {
    let named = base.arguments.method.is_some();
    let units: System = base.arguments.units.into();
    let mut refused = Vec::new();
    let request = base.request(methods[0])?;
    let block = match block(&request, weeks) {
        Err(fault) if !named && fault.exit_status() == 1 && !base.ground.status.injured => {
            refused.push((methods[0].name().to_owned(), reason(&fault, units)));
            block(&base.request(Method::Straight)?, weeks)?
        }
        found => found?,
    };
    let mut sessions = Vec::new();
    for week in block.weeks {
        for day in week.days {
            let title = format!(
                "Week {}, day {}: {}",
                week.week,
                day.day,
                day_purpose(day.purpose)
            );
            sessions.push((title, day.plan));
        }
    }
    Ok(Outcome { sessions, refused })
}

fn show(arguments: &Arguments, outcome: &Outcome, notes: &[String]) -> Result<()> {
    let units: System = arguments.units.into();
    let parts: Vec<SheetPart> = outcome
        .sessions
        .iter()
        .map(|(title, plan)| SheetPart {
            title: title.clone(),
            plan,
        })
        .collect();
    output::print(&match arguments.format {
        Format::Json => report::pretty(&PlanRecord::of(&parts, &outcome.refused, notes, units))?,
        Format::Csv => plan_csv(&parts)?,
        Format::Table => plan_text(&parts, &outcome.refused, notes, units),
    })?;
    if arguments.format == Format::Csv {
        for caution in plan_cautions(&parts, units) {
            anstream::eprintln!("caution: {caution}");
        }
    }
    let Some(first) = parts.first().map(|part| part.plan) else {
        return Ok(());
    };
    let look = arguments.look.look()?;
    let write = |path: &Option<PathBuf>, scene: &dyn Fn() -> Result<Scene>| match path {
        None => Ok(()),
        Some(path) => arguments.look.picture(path.clone()).write(&scene()?),
    };
    write(&arguments.output, &|| session_chart(first, units, look))?;
    write(&arguments.fatigue, &|| fatigue_chart(first, look))?;
    write(&arguments.loads, &|| loads_chart(first, units, look))?;
    match &arguments.sheet {
        None => Ok(()),
        Some(path) => plan_sheet::write(path, &parts, units, arguments.paper()),
    }
}

impl Arguments {
    /// The paper asked for, or that of the units.
    fn paper(&self) -> Paper {
        match (self.paper, self.units) {
            (Some(PaperOption::A4), _) | (None, UnitsOption::Metric) => Paper::A4,
            (Some(PaperOption::Letter), _) | (None, UnitsOption::Us) => Paper::Letter,
        }
    }
}
