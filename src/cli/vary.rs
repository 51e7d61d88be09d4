//! `torquill vary MOVEMENT`: what a changed value does to the curve, and which values matter most.

use super::look::LookOptions;
use super::options::{Format, UnitsOption, Who};
use super::output;
use crate::charts::{family_chart, leverage_chart, map_chart};
use crate::error::{Error, Result};
use crate::library::{Library, Workbench, get};
use crate::movement::Measure;
use crate::report;
use crate::resistance::{Setup, load_from_text};
use crate::study::{
    Leverage, Variant, family, rank, reasons, sensitivity, strength, studied, values,
};
use crate::units::{System, rounded};
use clap::Args;
use serde_json::json;
use std::path::PathBuf;

/// Arguments of `vary`.
#[derive(Debug, Args)]
#[command(after_help = "Examples:
  torquill vary biceps-curl --param muscles.biceps_long.moment_arm.elbow --values -20%,-10%,0%,+10%,+20%
  torquill vary bench-press --param technique.grip_width --values \"55 cm..85 cm:4\" --load \"80 kg\" -o grips.png
  torquill vary bench-press --param technique.grip_width --values \"60 cm..85 cm:5\" --param technique.tuck --values \"15 deg..60 deg:4\" -o map.png
  torquill vary bench-press --rank -o rank.png")]
pub struct Arguments {
    /// Name of the movement (see: torquill movements)
    movement: String,
    #[command(flatten)]
    who: Who,
    /// Path of the value to change; twice for a map of two
    #[arg(long, value_name = "PATH")]
    param: Vec<String>,
    /// Values: a list, -20%,0%,+20%, or a range, \"50 cm..90 cm:5\"
    #[arg(long, value_name = "LIST|RANGE", allow_hyphen_values = true)]
    values: Vec<String>,
    /// Rank every value of the movement by what the same relative change does
    #[arg(long, conflicts_with_all = ["param", "values"])]
    rank: bool,
    /// Relative change for --rank, %
    #[arg(long, value_name = "PERCENT", default_value_t = 5.0)]
    by: f64,
    /// Plain load, for the sticking point
    #[arg(long, value_name = "MASS")]
    load: Option<String>,
    /// Samples of the range
    #[arg(long, value_name = "N", default_value_t = 101)]
    samples: usize,
    /// Picture (.svg or .png)
    #[arg(short, long, value_name = "FILE")]
    output: Option<PathBuf>,
    #[command(flatten)]
    look: LookOptions,
    /// Units of the picture
    #[arg(long, value_enum, default_value_t = UnitsOption::Metric)]
    units: UnitsOption,
    /// Form of the output
    #[arg(long, value_enum, default_value_t = Format::Table)]
    format: Format,
}

/// Runs the command.
pub fn run(arguments: &Arguments, library: &Library) -> Result<()> {
    if let Some(path) = &arguments.output {
        arguments.look.picture(path.clone()).check()?;
    }
    let bench = Workbench::open(library, &arguments.who.lifter, &arguments.movement)?;
    if arguments.rank {
        return ranked(arguments, &bench);
    }
    match (arguments.param.as_slice(), arguments.values.as_slice()) {
        ([parameter], [list]) => varied(arguments, &bench, parameter, &values(list)?),
        ([x, y], [xs, ys]) => mapped(arguments, &bench, [x, y], [values(xs)?, values(ys)?]),
        _ => Err(Error::bad(format!(
            "{} --param and {} --values do not belong together",
            arguments.param.len(),
            arguments.values.len()
        ))
        .hint("give one or two parameters, each followed by its --values; or --rank")),
    }
}

fn setups(arguments: &Arguments) -> Result<Vec<Setup>> {
    let load = arguments.load.as_deref().map(load_from_text).transpose()?;
    Ok(load.map(Setup::plain).into_iter().collect())
}

fn varied(
    arguments: &Arguments,
    bench: &Workbench,
    parameter: &str,
    values: &[String],
) -> Result<()> {
    let sets = &arguments.who.set;
    let setups = setups(arguments)?;
    let name = &arguments.movement;
    let variants = family(
        bench,
        name,
        sets,
        parameter,
        values,
        &setups,
        arguments.samples,
    )?;
    let lines = reasons(parameter, &variants);
    output::print(&match arguments.format {
        Format::Json => report::pretty(&as_json(parameter, &variants, &lines))?,
        Format::Csv => report::rows_to_csv(&HEADER, variants.iter().map(cells))?,
        Format::Table => as_text(&variants, &lines),
    })?;
    if let Some(path) = &arguments.output {
        let units: System = arguments.units.into();
        let reason = lines.get(1).or(lines.first()).cloned().unwrap_or_default();
        let scene = family_chart(parameter, &variants, &reason, units, arguments.look.look()?)?;
        arguments.look.picture(path.clone()).write(&scene)?;
    }
    Ok(())
}

const HEADER: [&str; 8] = [
    "value",
    "peak",
    "peak at",
    "least",
    "start ratio",
    "end ratio",
    "class",
    "sticking at",
];

fn cells(variant: &Variant) -> Vec<String> {
    let study = &variant.study;
    let sticking = study.setups.first().and_then(|s| s.sticking);
    vec![
        variant.value.clone(),
        rounded(study.class.peak, 1),
        rounded(study.class.peak_range, 2),
        rounded(study.weakest().1, 1),
        rounded(study.class.start_ratio, 3),
        rounded(study.class.end_ratio, 3),
        study.class.shape.word().to_owned(),
        sticking.map_or_else(String::new, |s| rounded(s.point_range, 2)),
    ]
}

/// Relative change per 1 %, one a column of the table that has one.
fn sensitivities(variants: &[Variant]) -> Vec<(&'static str, Option<f64>)> {
    let sticking = |v: &Variant| {
        let setup = v.study.setups.first().and_then(|s| s.sticking);
        setup.map_or(0.0, |s| s.point_range)
    };
    vec![
        ("peak", sensitivity(variants, |v| v.study.class.peak)),
        (
            "peak at",
            sensitivity(variants, |v| v.study.class.peak_range),
        ),
        ("least", sensitivity(variants, |v| v.study.weakest().1)),
        (
            "start ratio",
            sensitivity(variants, |v| v.study.class.start_ratio),
        ),
        (
            "end ratio",
            sensitivity(variants, |v| v.study.class.end_ratio),
        ),
        ("sticking at", sensitivity(variants, sticking)),
    ]
}

fn as_text(variants: &[Variant], lines: &[String]) -> String {
    let mut text = report::table(&HEADER, variants.iter().map(cells).collect(), 1);
    let known: Vec<String> = sensitivities(variants)
        .iter()
        .filter_map(|(name, value)| Some(format!("{name} {} %", rounded((*value)?, 2))))
        .collect();
    if !known.is_empty() {
        text += &format!("\nPer 1 % of the value: {}.\n", known.join(", "));
    }
    text.push('\n');
    for line in lines {
        text += line;
        text.push('\n');
    }
    text
}

fn as_json(parameter: &str, variants: &[Variant], lines: &[String]) -> serde_json::Value {
    json!({
        "parameter": parameter,
        "variants": variants.iter().map(|v| json!({
            "value": v.value, "number": v.number, "strength": v.strength(),
            "summary": report::summary(&v.study, v.study.setups.first()),
            "peak": v.study.class.peak, "least": v.study.weakest().1,
        })).collect::<Vec<_>>(),
        "per_percent": sensitivities(variants).into_iter()
            .map(|(name, value)| (name.replace(' ', "_"), json!(value)))
            .collect::<serde_json::Map<_, _>>(),
        "sentences": lines,
    })
}

fn mapped(
    arguments: &Arguments,
    bench: &Workbench,
    parameters: [&String; 2],
    lists: [Vec<String>; 2],
) -> Result<()> {
    let setups = setups(arguments)?;
    let number = |parameter: &str, value: &String| -> Result<f64> {
        let mut sets = arguments.who.set.clone();
        sets.push(format!("{parameter}={value}"));
        Ok(get(&bench.model(&sets)?, parameter)?.value)
    };
    let numbers = [0, 1].map(|index| {
        lists[index]
            .iter()
            .map(|value| number(parameters[index], value))
            .collect::<Result<Vec<f64>>>()
    });
    let [xs, ys] = numbers;
    let mut grid = Vec::new();
    let mut unit = "N";
    for y in &lists[1] {
        let mut row = Vec::new();
        for x in &lists[0] {
            let mut sets = arguments.who.set.clone();
            sets.push(format!("{}={x}", parameters[0]));
            sets.push(format!("{}={y}", parameters[1]));
            let found = bench
                .model(&sets)
                .and_then(|m| studied(&arguments.movement, &m, &setups, arguments.samples));
            row.push(found.ok().map(|study| {
                if study.range.measure == Measure::Torque {
                    unit = "N·m";
                }
                strength(&study)
            }));
        }
        grid.push(row);
    }
    let mut header = vec![parameters[1].as_str()];
    header.extend(lists[0].iter().map(String::as_str));
    let rows: Vec<Vec<String>> = lists[1]
        .iter()
        .zip(&grid)
        .map(|(y, row)| {
            let cells = row
                .iter()
                .map(|v| v.map_or_else(String::new, |v| rounded(v, 1)));
            std::iter::once(y.clone()).chain(cells).collect()
        })
        .collect();
    output::print(&match arguments.format {
        Format::Json => report::pretty(&json!({
            "x": { "parameter": parameters[0], "values": lists[0] },
            "y": { "parameter": parameters[1], "values": lists[1] },
            "strength": grid, "unit": unit,
        }))?,
        Format::Csv => report::rows_to_csv(&header, rows.into_iter())?,
        Format::Table => report::table(&header, rows, 1),
    })?;
    if let Some(path) = &arguments.output {
        let best = grid.iter().flatten().flatten().copied().fold(0.0, f64::max);
        let scene = map_chart(
            [parameters[0], parameters[1]],
            [&lists[0], &lists[1]],
            [xs?, ys?],
            grid.clone(),
            unit,
            (
                format!(
                    "{}: at best {} {unit}",
                    arguments.movement,
                    rounded(best, 0)
                ),
                "Least capacity of the range, or peak torque, over two values".to_owned(),
            ),
            arguments.look.look()?,
        )?;
        arguments.look.picture(path.clone()).write(&scene)?;
    }
    Ok(())
}

fn ranked(arguments: &Arguments, bench: &Workbench) -> Result<()> {
    if !(0.01..=50.0).contains(&arguments.by) {
        return Err(Error::bad(format!(
            "--by {} is outside 0.01 to 50 %",
            arguments.by
        )));
    }
    let samples = arguments.samples.min(41);
    let found = rank(
        bench,
        &arguments.movement,
        &arguments.who.set,
        arguments.by,
        samples,
    )?;
    let header = ["value", "lowered %", "raised %"];
    let row = |l: &Leverage| {
        vec![
            l.path.clone(),
            rounded(l.lowered_percent, 2),
            rounded(l.raised_percent, 2),
        ]
    };
    output::print(&match arguments.format {
        Format::Json => report::pretty(&json!(found.iter().map(|l| json!({
            "path": l.path, "lowered_percent": l.lowered_percent, "raised_percent": l.raised_percent,
        })).collect::<Vec<_>>()))?,
        Format::Csv => report::rows_to_csv(&header, found.iter().map(row))?,
        Format::Table => {
            let top = found.iter().take(25).map(row).collect();
            let mut text = report::table(&header, top, 1);
            if let Some(first) = found.first() {
                text += &format!(
                    "\n{} values were lowered and raised by {} %; {} matters most: {} % of strength.\n",
                    found.len(),
                    rounded(arguments.by, 2),
                    first.path,
                    rounded(first.size(), 1)
                );
            }
            text
        }
    })?;
    if let Some(path) = &arguments.output {
        let model = bench.model(&arguments.who.set)?;
        let scene = leverage_chart(
            &model.movement.title,
            &model.lifter.title,
            arguments.by,
            &found,
            arguments.look.look()?,
        )?;
        arguments.look.picture(path.clone()).write(&scene)?;
    }
    Ok(())
}
