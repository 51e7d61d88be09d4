//! `torquill movements`: the named movements with class, joints and axis.

use super::options::{Format, Who};
use super::output;
use crate::error::Result;
use crate::library::Library;
use crate::report;
use crate::study::{Question, Study, study};
use clap::Args;
use rayon::prelude::{IntoParallelRefIterator, ParallelIterator};
use serde::Serialize;

/// Arguments of `movements`.
#[derive(Debug, Args)]
#[command(after_help = "Example:\n  torquill movements --lifter reference-woman")]
pub struct Arguments {
    #[command(flatten)]
    who: Who,
    /// Form of the output
    #[arg(long, value_enum, default_value_t = Format::Table)]
    format: Format,
}

#[derive(Serialize)]
struct Row {
    movement: String,
    title: String,
    class: &'static str,
    joints: Vec<&'static str>,
    axis: String,
    technique: Vec<String>,
    limits: String,
    checks: String,
}

/// Runs the command.
pub fn run(arguments: &Arguments, library: &Library) -> Result<()> {
    let names = library.movements();
    let rows = names
        .par_iter()
        .map(|name| row(arguments, library, name))
        .collect::<Result<Vec<_>>>()?;
    match arguments.format {
        Format::Json => output::print(&report::pretty(&rows)?),
        Format::Csv => {
            let header = ["movement", "title", "class", "joints", "axis", "technique"];
            output::print(&report::rows_to_csv(&header, rows.iter().map(cells))?)
        }
        Format::Table => {
            let header = ["movement", "title", "class", "joints", "axis", "technique"];
            output::print(&report::table(&header, rows.iter().map(cells).collect(), 6))
        }
    }
}

fn cells(row: &Row) -> Vec<String> {
    vec![
        row.movement.clone(),
        row.title.clone(),
        row.class.to_owned(),
        row.joints.join(", "),
        row.axis.clone(),
        row.technique.join(", "),
    ]
}

fn row(arguments: &Arguments, library: &Library, name: &str) -> Result<Row> {
    let model = arguments.who.model(library, name)?;
    let study: Study = study(&Question::new(name, &model.movement, &model.lifter), &[])?;
    let mut joints: Vec<&'static str> = study.range.poses[0]
        .coordinates
        .iter()
        .map(|c| c.dof.joint().name())
        .collect();
    joints.dedup();
    Ok(Row {
        movement: name.to_owned(),
        title: model.movement.title.clone(),
        class: study.class.shape.word(),
        joints,
        axis: model.movement.axis.clone(),
        technique: model.movement.technique.keys().cloned().collect(),
        limits: model.movement.limits.clone(),
        checks: model.movement.checks.clone(),
    })
}
