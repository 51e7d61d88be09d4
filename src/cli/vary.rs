//! `torquill vary MOVEMENT`: what a changed value does to the curve, and which values matter most.

use super::canonical::is_typed;
use super::command_call::{Answer, CommandCall};
use super::data_file::DataOption;
use super::idle_options::check_region_share;
use super::number_words::percent;
use super::options::{Format, Sampling, UnitsOption, Who};
use super::picture::LookOptions;
use super::setup_options::{SetupOptions, setups};
use crate::bounds::bounds;
use crate::draw::Scene;
use crate::error::{CommandFault, Error, OptionFault, Result};
use crate::figures::{family_chart, rank_chart, value_map, why_chart};
use crate::library::Workbench;
use crate::report;
use crate::study::{
    Compared, Conditions, Parameter, asked_pace, family, pair_grid, rank, usual_comparison,
};
use clap::{Args, ValueEnum};
use std::path::PathBuf;

/// VaryArguments of `vary`.
#[derive(Debug, Args)]
#[command(after_long_help = "Examples:
  torquill vary biceps-curl --param muscles.biceps_long.moment_arm.elbow \\
      --values -20%,-10%,0%,+10%,+20%
  torquill vary bench-press --param technique.grip_width \\
      --values \"60 cm..95 cm:4\" -o grips.png
  torquill vary squat --param technique.bar_position --values high,low
  torquill vary squat --param segments.thigh.length \\
      --values -5%,+5% --why --why-figure why.png
  torquill vary bench-press --param technique.grip_width \\
      --values \"60 cm..90 cm:7\" --param technique.tuck \\
      --values \"15 deg..60 deg:4\" -o map.png
  torquill vary bench-press --param technique.grip_width \\
      --values \"60 cm,81 cm\" --curves --data grips.xlsx
  torquill vary bench-press --rank -o rank.png")]
pub struct VaryArguments {
    /// Name of the movement (see: torquill movements)
    movement: String,
    #[command(flatten)]
    who: Who,
    /// Path of the value to change, as --set takes it; twice for a map of two
    #[arg(long, value_name = "PATH")]
    param: Vec<String>,
    /// Its values: a list such as -20%,0%,+20%, or a range with a count, "50 cm..90 cm:5"
    #[arg(long, value_name = "LIST|RANGE", allow_hyphen_values = true)]
    values: Vec<String>,
    /// List all parts of every change (muscle by muscle, factor by factor) in place of the curves' figures
    #[arg(long, conflicts_with = "rank")]
    why: bool,
    /// Picture of the parts of the largest change (.svg or .png)
    #[arg(long, value_name = "FILE", conflicts_with = "rank")]
    why_figure: Option<PathBuf>,
    /// The curve of every value, sample by sample, in place of its figures (CSV and --data), or with them (JSON)
    #[arg(long, conflicts_with_all = ["rank", "why"])]
    curves: bool,
    /// Rank every value of the movement by what the same relative change does
    #[arg(long, conflicts_with_all = ["param", "values"])]
    rank: bool,
    /// Relative change for --rank: 5% or 5
    #[arg(long, value_name = "PERCENT", default_value_t = 5.0, value_parser = percent)]
    by: f64,
    /// What maps show and --rank ranks by; the heaviest weight if capacity is a force, else the peak
    #[arg(long, value_enum, value_name = "FIGURE")]
    measure: Option<MeasureOption>,
    #[command(flatten)]
    setup: SetupOptions,
    #[command(flatten)]
    sampling: Sampling,
    /// Picture (.svg or .png)
    #[arg(short, long, value_name = "FILE")]
    output: Option<PathBuf>,
    #[command(flatten)]
    look: LookOptions,
    /// Units of tables and picture
    #[arg(long, value_enum, default_value_t = UnitsOption::Metric)]
    units: UnitsOption,
    /// Form of the output
    #[arg(long, value_enum, default_value_t = Format::Table)]
    format: Format,
    #[command(flatten)]
    data: DataOption,
}

/// The figure that is compared.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum MeasureOption {
    /// Heaviest weight that can be held at every place
    Heaviest,
    /// Greatest capacity
    Peak,
    /// Capacity at the start
    Start,
    /// Capacity at the end
    End,
}

impl From<MeasureOption> for Compared {
    fn from(option: MeasureOption) -> Self {
        match option {
            MeasureOption::Heaviest => Self::Held,
            MeasureOption::Peak => Self::Peak,
            MeasureOption::Start => Self::Start,
            MeasureOption::End => Self::End,
        }
    }
}

/// Runs the command.
pub fn run(arguments: &VaryArguments, call: &CommandCall) -> Result<()> {
    let library = call.models;
    for path in [&arguments.output, &arguments.why_figure]
        .into_iter()
        .flatten()
    {
        arguments.look.picture(path.clone()).check()?;
    }
    if is_typed(call.matches, "by") && !arguments.rank {
        return Err(Error::bad(CommandFault::Idle {
            option: "by".to_owned(),
            needed: vec!["rank".to_owned()],
        }));
    }
    if arguments.curves && arguments.format == Format::Table && call.data_path().is_none() {
        return Err(Error::bad(CommandFault::Idle {
            option: "curves".to_owned(),
            needed: ["format", "data"].map(str::to_owned).to_vec(),
        }));
    }
    let parameters = parameters(arguments)?;
    if is_typed(call.matches, "measure") && parameters.len() == 1 {
        return Err(Error::bad(CommandFault::IdleMeasure));
    }
    let bench = Workbench::open(library, &arguments.who.lifter, &arguments.movement)?;
    let asked = asked(arguments, call)?;
    let measure = match arguments.measure {
        Some(measure) => measure.into(),
        None => {
            let model = bench.model(&arguments.who.set)?;
            usual_comparison(asked.of(&model)?.range.measure)
        }
    };
    match <[Parameter; 2]>::try_from(parameters) {
        Ok(both) => mapped((arguments, call), &bench, both, measure, &asked),
        Err(parameters) => match parameters.first() {
            Some(parameter) => varied((arguments, call), &bench, parameter, &asked),
            None => ranked((arguments, call), &bench, measure, &asked),
        },
    }
}

/// The parameters with their values: none to rank, one for a family, two for a map.
fn parameters(arguments: &VaryArguments) -> Result<Vec<Parameter>> {
    let (paths, lists) = (&arguments.param, &arguments.values);
    if arguments.rank {
        return Ok(Vec::new());
    }
    let asks_why = arguments.why || arguments.why_figure.is_some();
    if (asks_why || arguments.curves) && paths.len() > 1 {
        return Err(Error::bad(OptionFault::WhyOfMany));
    }
    if paths.len() != lists.len() || !(1..=2).contains(&paths.len()) {
        return Err(Error::bad(OptionFault::UnpairedValues {
            parameters: paths.len(),
            lists: lists.len(),
        }));
    }
    paths
        .iter()
        .zip(lists)
        .map(|(path, list)| Parameter::read(path, list))
        .collect()
}

fn asked(arguments: &VaryArguments, call: &CommandCall) -> Result<Conditions> {
    let loads = setups(
        &arguments.setup,
        call.models,
        call.matches,
        arguments.units.into(),
    )?;
    let is_family = arguments.param.len() == 1 && !arguments.rank;
    let is_drawn = arguments.output.is_some() && !loads.is_empty();
    let needed = ["format json", "output with a --load"];
    check_region_share(
        call.matches,
        is_family && (arguments.format == Format::Json || is_drawn),
        if is_family { &needed } else { &[] },
    )?;
    let (samples, share) = (arguments.sampling.samples, arguments.sampling.region_share);
    if !bounds().region_share.holds(share) {
        return Err(Error::bad(OptionFault::RegionShare(share)));
    }
    Ok(Conditions {
        samples,
        pace: asked_pace(arguments.sampling.speed.as_deref())?,
        region_share: share,
        load: loads.into_iter().next(),
    })
}

fn varied(
    (arguments, call): (&VaryArguments, &CommandCall),
    bench: &Workbench,
    parameter: &Parameter,
    asked: &Conditions,
) -> Result<()> {
    let family = family(bench, &arguments.who.set, parameter, asked)?;
    let units = arguments.units.into();
    let answer = Answer {
        table: &|| match arguments.why {
            true => report::why_table(&family, units),
            false => report::family_table(&family, asked, units),
        },
        json: &|| report::family_json(&family, arguments.curves.then_some(asked)),
        data: &|| match (arguments.why, arguments.curves) {
            (true, _) => report::why_data(&family),
            (_, true) => report::family_curves(&family, asked),
            (false, false) => report::family_data(&family),
        },
    };
    call.give(arguments.format, &answer)?;
    if let (Some(path), Some(chart)) = (&arguments.why_figure, why_chart(&family, units)) {
        let scene = chart.scene(arguments.look.look()?)?;
        let picture = arguments.look.picture(path.clone());
        picture.write(&call.signed("why_figure", scene)?)?;
    }
    draw(arguments, call, || {
        family_chart(&family, asked, units).scene(arguments.look.look()?)
    })
}

fn mapped(
    (arguments, call): (&VaryArguments, &CommandCall),
    bench: &Workbench,
    parameters: [Parameter; 2],
    measure: Compared,
    asked: &Conditions,
) -> Result<()> {
    let grid = pair_grid(bench, &arguments.who.set, parameters, asked)?;
    let units = arguments.units.into();
    let answer = Answer {
        table: &|| report::grid_table(&grid, measure, asked, units),
        json: &|| report::grid_json(&grid, measure),
        data: &|| report::grid_data(&grid, measure),
    };
    call.give(arguments.format, &answer)?;
    draw(arguments, call, || {
        value_map(&grid, measure, asked, units)?.scene(arguments.look.look()?)
    })
}

fn ranked(
    (arguments, call): (&VaryArguments, &CommandCall),
    bench: &Workbench,
    measure: Compared,
    asked: &Conditions,
) -> Result<()> {
    let ranks = rank(bench, &arguments.who.set, arguments.by, measure, asked)?;
    let answer = Answer {
        table: &|| report::rank_table(&ranks, arguments.units.into()),
        json: &|| report::rank_json(&ranks),
        data: &|| report::rank_data(&ranks),
    };
    call.give(arguments.format, &answer)?;
    draw(arguments, call, || {
        rank_chart(&ranks, arguments.units.into()).scene(arguments.look.look()?)
    })
}

/// Draws the picture, if one was asked for.
fn draw(
    arguments: &VaryArguments,
    call: &CommandCall,
    scene: impl FnOnce() -> Result<Scene>,
) -> Result<()> {
    match &arguments.output {
        None => Ok(()),
        Some(path) => {
            let scene = call.signed("output", scene()?)?;
            arguments.look.picture(path.clone()).write(&scene)
        }
    }
}
