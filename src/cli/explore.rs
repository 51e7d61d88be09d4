//! `torquill explore -o FILE.html`: the live page, one file with the model inside it.

use super::command_call::CommandCall;
use super::output;
use super::whole_set;
use crate::error::{Error, PageFault, Result, Shelf};
use crate::explore::{
    DIAL_GROUPS, PageTask, TaskFile, TaskGround, catalogue, check_name, check_tasks,
    tasks_from_text,
};
use crate::library::{Library, text_of_file};
use crate::narrative::page_words::page_written;
use crate::report::{PageOptions, live_page};
use clap::Args;
use std::path::PathBuf;

/// ExploreArguments of `explore`.
#[derive(Debug, Args)]
#[command(after_long_help = "Examples:
  torquill explore -o lab.html
  torquill explore -o curl.html --movement biceps-curl --only load,muscle

The page holds the model itself: it opens from a disk, a mail or a course page,
asks nothing of a network, and computes the same numbers as the program.

A file of tasks has four lines a task; lines that begin with `# ` are notes:
  task: Find a load that is hardest near the end
  start: #v=1&lift=bench-press&lifter=reference-man&load=60
  goal: sticking_point_range >= 0.6
  hint: What grows towards lockout?
The start is the page's address, copied there. A goal is a key of the summary,
one of <= >= < > =, and a value: class, limiting_joint (with = and a word);
peak_range, start_ratio, end_ratio, trough_ratio, range_of_motion_m,
sticking_point_range, sticking_point_m, sticking_point_deg, max_effort,
flattening_percent. Each start is solved, and the goal must not be met there
but somewhere that the page's dials reach.")]
pub struct ExploreArguments {
    /// Page to write (.html)
    #[arg(short, long, value_name = "FILE")]
    output: PathBuf,
    /// Freeze the page on one lift
    #[arg(long = "movement", value_name = "NAME")]
    frozen: Option<String>,
    /// Lifter that the page begins with
    #[arg(long, value_name = "NAME", default_value = "reference-man")]
    lifter: String,
    /// Only these groups of dials: load, technique, machine, muscle, limbs, lifter
    #[arg(long, value_name = "GROUPS", value_delimiter = ',')]
    only: Option<Vec<String>>,
    /// Tasks for students: a small text file
    #[arg(long, value_name = "FILE")]
    tasks: Option<PathBuf>,
    /// Replace a file that is there
    #[arg(long)]
    force: bool,
}

/// The whole page for a lifter; `None` where it has not the lifter, or other models than the library.
pub fn whole_page(library: &Library, lifter: &str) -> Result<Option<String>> {
    let is_known = library
        .names(Shelf::Lifters)
        .iter()
        .any(|name| name == lifter);
    if !is_known || !library.own_files()?.is_empty() {
        return Ok(None);
    }
    Ok(Some(live_page(&PageOptions {
        lift: None,
        lifter: Some(lifter.to_owned()),
        only: None,
        tasks: Vec::<PageTask>::new(),
        catalogue: catalogue(library)?,
    })))
}

/// Runs the command.
pub fn run(arguments: &ExploreArguments, call: &CommandCall) -> Result<()> {
    let library = call.models;
    if !library.own_files()?.is_empty() {
        return Err(Error::bad(PageFault::OwnModels));
    }
    output::check_target(&arguments.output, arguments.force)?;
    let ending = arguments.output.extension().map(|e| e.to_ascii_lowercase());
    if !ending.is_some_and(|ending| ending == "html" || ending == "htm") {
        return Err(Error::bad(PageFault::NoPage {
            file: arguments.output.display().to_string(),
        }));
    }
    if let Some(lift) = &arguments.frozen {
        check_name(library, Shelf::Movements, lift)?;
    }
    check_name(library, Shelf::Lifters, &arguments.lifter)?;
    for name in arguments.only.iter().flatten() {
        if !DIAL_GROUPS.contains(&name.as_str()) {
            return Err(Error::bad(PageFault::Group {
                name: name.clone(),
                known: &DIAL_GROUPS,
            }));
        }
    }
    let tasks = match &arguments.tasks {
        None => Vec::new(),
        Some(path) => {
            let name = path.display().to_string();
            let text = text_of_file(path)?.into();
            let file = TaskFile { name: &name, text };
            let tasks = tasks_from_text(&file)?;
            let ground = TaskGround {
                lift: arguments.frozen.as_deref(),
                lifter: &arguments.lifter,
                only: arguments.only.as_deref(),
                library,
            };
            check_tasks(&file, &tasks, ground)?;
            tasks
        }
    };
    let page = live_page(&PageOptions {
        lift: arguments.frozen.clone(),
        lifter: Some(arguments.lifter.clone()),
        only: arguments.only.clone(),
        tasks,
        catalogue: catalogue(library)?,
    });
    whole_set::write_file(&arguments.output, page.as_bytes())?;
    whole_set::tell_settled(page_written(&arguments.output.display().to_string()));
    Ok(())
}
