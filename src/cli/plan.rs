//! `torquill plan MOVEMENT --method …`: the session with its loads, rests and cautions.

use super::hung::{Hung, hung};
use super::look::LookOptions;
use super::options::{Format, UnitsOption, Who};
use super::output;
use super::progress::log;
use crate::charts::{fatigue_chart, session_chart};
use crate::error::{Error, Result};
use crate::library::Library;
use crate::rep::{RepOptions, with_load};
use crate::report::{self, SheetPart, plan_csv, plan_json, plan_text, sheet_html};
use crate::resistance::Setup;
use crate::session::accommodating::AccommodatingSetup;
use crate::session::block::block;
use crate::session::loads::Loading;
use crate::session::method::{METHODS, Method};
use crate::session::oracle::RepOracle;
use crate::session::plan::Plan;
use crate::session::schemes::{Request, plan};
use crate::session::status::Lifter as Status;
use crate::session::trend::trend;
use crate::study::{
    Question, USUAL_STEP_KG, lifter_of_one_rm, load_for_effort, maximum, simulated_oracle, study,
};
use crate::units::{Duration, Force, Mass, System};
use clap::Args;
use std::path::PathBuf;

/// Arguments of `plan`.
#[derive(Debug, Args)]
#[command(after_help = "Examples:
  torquill plan bench-press --one-rm \"140 kg\" --method overloaded-lowering
  torquill plan bench-press --one-rm \"140 kg\" --method clusters --load \"105 kg\" --total-reps 12 -o clusters.png
  torquill plan bench-press --log stalled --method pyramid --sheet pyramid.html
  torquill plan bench-press --one-rm \"140 kg\" --method bands --band loop-14mm:1
  torquill plan bench-press --one-rm \"140 kg\" --method all
  torquill plan squat --method straight --weeks 4")]
pub struct Arguments {
    /// Name of the movement (see: torquill movements)
    movement: String,
    #[command(flatten)]
    who: Who,
    /// straight, pyramid, clusters, overloaded-lowering, bands, chains, or all
    #[arg(long, value_name = "METHOD", default_value = "straight")]
    method: String,
    /// The one-repetition maximum; simulated if neither this nor a log is given
    #[arg(long, value_name = "MASS", conflicts_with = "log")]
    one_rm: Option<String>,
    /// Training log to take the maximum from (a file, or rising, stalled, gappy)
    #[arg(long, value_name = "FILE|NAME")]
    log: Option<String>,
    /// Months of steady training
    #[arg(long, value_name = "MONTHS", default_value_t = 36.0)]
    training_months: f64,
    /// The lifter is injured or in pain
    #[arg(long)]
    injured: bool,
    /// The lifter is ill, unusually sore, or back from a break
    #[arg(long)]
    unwell: bool,
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
    hung: Hung,
    /// Hardest effort of a bands or chains setup, share of all the lifter has
    #[arg(long, value_name = "SHARE", default_value_t = 0.85)]
    effort: f64,
    /// A block of so many weeks
    #[arg(long, value_name = "N")]
    weeks: Option<u32>,
    /// Picture of the predicted velocities (.svg or .png)
    #[arg(short, long, value_name = "FILE")]
    output: Option<PathBuf>,
    /// Picture of the joints' fatigue over time (.svg or .png)
    #[arg(long, value_name = "FILE")]
    fatigue: Option<PathBuf>,
    /// One-page sheet to print (.html)
    #[arg(long, value_name = "FILE")]
    sheet: Option<PathBuf>,
    #[command(flatten)]
    look: LookOptions,
    /// Units of plates and text
    #[arg(long, value_enum, default_value_t = UnitsOption::Metric)]
    units: UnitsOption,
    /// Form of the output
    #[arg(long, value_enum, default_value_t = Format::Table)]
    format: Format,
}

/// Runs the command.
pub fn run(arguments: &Arguments, library: &Library) -> Result<()> {
    check_targets(arguments)?;
    let units: System = arguments.units.into();
    let model = arguments.who.model(library, &arguments.movement)?;
    let question = Question::new(&arguments.movement, &model.movement, &model.lifter);
    let (one_rm, from) = one_rm(arguments, library, &question)?;
    let lifter = lifter_of_one_rm(&question, one_rm, Mass::from_kg(USUAL_STEP_KG)).ok();
    let oracle = match &lifter {
        Some(lifter) => simulated_oracle(&question, lifter, Duration::from_s(2.0)).ok(),
        None => None,
    };
    let loading = match units {
        System::Metric => Loading::usual_metric()?,
        System::Us => Loading::usual_us()?,
    };
    let own = Question {
        lifter: lifter.as_ref().unwrap_or(&model.lifter),
        ..question.clone()
    };
    let setup = accommodating(arguments, library, &own, &loading)?;
    let base = Base {
        arguments,
        one_rm,
        from: &from,
        loading: &loading,
        units,
        oracle: oracle.as_ref(),
        setup: setup.as_ref(),
    };
    if let Some(weeks) = arguments.weeks {
        let method = Method::from_name(&arguments.method)?;
        let block = block(&base.request(method)?, weeks)?;
        let parts: Vec<SheetPart> = block
            .weeks
            .iter()
            .flat_map(|week| {
                week.days.iter().map(move |day| SheetPart {
                    title: format!("Week {}, day {}: {}", week.week, day.day, day.title),
                    plan: &day.plan,
                })
            })
            .collect();
        return show(arguments, &parts, units);
    }
    let plans = plans(&base)?;
    let parts: Vec<SheetPart> = plans
        .iter()
        .map(|(title, plan)| SheetPart {
            title: title.clone(),
            plan,
        })
        .collect();
    show(arguments, &parts, units)
}

fn check_targets(arguments: &Arguments) -> Result<()> {
    for path in [&arguments.output, &arguments.fatigue]
        .into_iter()
        .flatten()
    {
        arguments.look.picture(path.clone()).check()?;
    }
    if let Some(path) = &arguments.sheet {
        output::check_target(path, arguments.look.force)?;
    }
    if !(0.3..=1.0).contains(&arguments.effort) {
        return Err(Error::bad(format!(
            "--effort {} is outside 0.3 to 1",
            arguments.effort
        )));
    }
    Ok(())
}

/// The maximum and where it comes from.
fn one_rm(
    arguments: &Arguments,
    library: &Library,
    question: &Question<'_>,
) -> Result<(Mass, String)> {
    if let Some(text) = &arguments.one_rm {
        return Ok((
            Mass::from_text(text).map_err(Error::bad)?,
            "as given".to_owned(),
        ));
    }
    if let Some(name) = &arguments.log {
        let log = log(name, false, library)?.of_lift(Some(&arguments.movement))?;
        let trend = trend(&log)?;
        return Ok((
            trend.one_rm_now(),
            format!("from the log, {}", trend.in_words()),
        ));
    }
    let step = Mass::from_kg(USUAL_STEP_KG);
    let (found, _) = maximum(question, &Setup::default(), &RepOptions::default(), step)?;
    Ok((
        found.load,
        format!("simulated for {}", question.lifter.title),
    ))
}

/// What every request of this call shares.
struct Base<'a> {
    arguments: &'a Arguments,
    one_rm: Mass,
    from: &'a str,
    loading: &'a Loading,
    units: System,
    oracle: Option<&'a RepOracle<'a>>,
    setup: Option<&'a AccommodatingSetup>,
}

impl<'a> Base<'a> {
    fn request(&self, method: Method) -> Result<Request<'a>> {
        let arguments = self.arguments;
        let status = Status {
            injured: arguments.injured,
            unwell_or_sore: arguments.unwell,
            ..Status::with_training_months(arguments.training_months)
        };
        let mut request = Request::usual(
            &arguments.movement,
            method,
            status,
            self.one_rm,
            self.loading,
        );
        request.one_rm_from = self.from;
        request.system = self.units;
        request.oracle = self.oracle;
        request.setup = self.setup;
        request.repetitions = arguments.reps;
        request.sets = arguments.sets;
        request.total_repetitions = arguments.total_reps;
        request.group = arguments.group;
        let time = |text: &String| Duration::from_text(text).map_err(Error::bad);
        request.rest_between = arguments.rest.as_ref().map(time).transpose()?;
        request.rest_within = arguments.rest_within.as_ref().map(time).transpose()?;
        let mass = |text: &String| Mass::from_text(text).map_err(Error::bad);
        request.load = arguments.load.as_ref().map(mass).transpose()?;
        Ok(request)
    }
}

fn plans(base: &Base<'_>) -> Result<Vec<(String, Plan)>> {
    if base.arguments.method != "all" {
        let method = Method::from_name(&base.arguments.method)?;
        return Ok(vec![(
            method.name().to_owned(),
            plan(&base.request(method)?)?,
        )]);
    }
    let mut plans = Vec::new();
    for (method, name, _) in METHODS {
        let needs_setup = matches!(method, Method::Bands | Method::Chains);
        if needs_setup && base.setup.is_none() {
            continue;
        }
        plans.push(((*name).to_owned(), plan(&base.request(*method)?)?));
    }
    Ok(plans)
}

/// Bands and chains named on the command line, with the bar load that makes their hardest place as hard
/// as asked, rounded down to what can be loaded.
fn accommodating(
    arguments: &Arguments,
    library: &Library,
    question: &Question<'_>,
    loading: &Loading,
) -> Result<Option<AccommodatingSetup>> {
    let pieces = hung(&arguments.hung, library)?;
    if pieces.items.is_empty() {
        return Ok(None);
    }
    let exact = load_for_effort(question, &pieces, arguments.effort)?;
    let bar = loading.at_most(exact)?;
    let loaded = with_load(&pieces, bar.total);
    let result = study(question, &[loaded])?;
    let found = &result.setups[0];
    let mass = |index: usize| Force::from_n(found.values[index]).as_mass();
    Ok(Some(AccommodatingSetup {
        parts: pieces.items.iter().map(|item| item.in_words()).collect(),
        bar_and_plates: bar,
        bottom: mass(0),
        top: mass(found.values.len() - 1),
        max_effort: found.sticking.map_or(0.0, |s| s.max_effort),
        flattening_percent: found.flattening_percent,
    }))
}

fn show(arguments: &Arguments, parts: &[SheetPart<'_>], units: System) -> Result<()> {
    output::print(&match arguments.format {
        Format::Json => report::pretty(&plan_json(parts))?,
        Format::Csv => plan_csv(parts)?,
        Format::Table => plan_text(parts, units),
    })?;
    let look = arguments.look.look()?;
    let first = parts.first().map(|part| part.plan);
    if let (Some(path), Some(plan)) = (&arguments.output, first) {
        let picture = arguments.look.picture(path.clone());
        picture.write(&session_chart(plan, units, look)?)?;
    }
    if let (Some(path), Some(plan)) = (&arguments.fatigue, first) {
        arguments
            .look
            .picture(path.clone())
            .write(&fatigue_chart(plan, look)?)?;
    }
    if let Some(path) = &arguments.sheet {
        output::write_file(path, sheet_html(parts, units).as_bytes())?;
    }
    Ok(())
}
