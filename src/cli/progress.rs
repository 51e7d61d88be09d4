//! `torquill progress --log FILE`: is the lifter rising, flat or falling, and how sure is that?

use super::look::LookOptions;
use super::options::{Format, UnitsOption};
use super::output;
use crate::error::{Error, Result};
use crate::figures::trend_chart;
use crate::library::Library;
use crate::progress::log_file::{ReadOptions, read_log};
use crate::progress::training_log::Log;
use crate::progress::trend::{SessionBest, Trend, trend};
use crate::report;
use crate::units::{System, rounded};
use clap::Args;
use serde_json::json;
use std::path::{Path, PathBuf};

/// Arguments of `progress`.
#[derive(Debug, Args)]
#[command(after_help = "Examples:
  torquill progress --log models/logs/stalled.csv
  torquill progress --log stalled -o trend.png
  torquill progress --log my-log.csv --lift squat --skip-bad-rows --format json")]
pub struct Arguments {
    /// Training log: a CSV file, or the name of an invented one (rising, stalled, gappy)
    #[arg(long, value_name = "FILE|NAME")]
    log: String,
    /// Lift to look at, where the log holds several
    #[arg(long, value_name = "LIFT")]
    lift: Option<String>,
    /// Leave rows out that cannot be read, and say which
    #[arg(long)]
    skip_bad_rows: bool,
    /// Picture of the trend (.svg or .png)
    #[arg(short, long, value_name = "FILE")]
    output: Option<PathBuf>,
    #[command(flatten)]
    look: LookOptions,
    /// Units of text and picture
    #[arg(long, value_enum, default_value_t = UnitsOption::Metric)]
    units: UnitsOption,
    /// Form of the output
    #[arg(long, value_enum, default_value_t = Format::Table)]
    format: Format,
}

/// Reads a log by path, or an invented one by name.
///
/// **Fails** with every bad row, unless they are to be skipped.
pub fn log(name: &str, skip_bad_rows: bool, library: &Library) -> Result<Log> {
    let options = ReadOptions {
        skip_bad_rows,
        today: None,
    };
    if Path::new(name).extension().is_none() {
        let (file, text) = library.log_text(name)?;
        return read_log(&file, &text, options);
    }
    let text = std::fs::read_to_string(name)
        .map_err(|fault| Error::bad(format!("`{name}` cannot be read: {fault}")))?;
    read_log(name, &text, options)
}

/// Runs the command.
pub fn run(arguments: &Arguments, library: &Library) -> Result<()> {
    if let Some(path) = &arguments.output {
        arguments.look.picture(path.clone()).check()?;
    }
    let log = log(&arguments.log, arguments.skip_bad_rows, library)?;
    let log = log.of_lift(arguments.lift.as_deref())?;
    let trend = trend(&log, &library.published()?.estimates)?;
    let units: System = arguments.units.into();
    output::print(&match arguments.format {
        Format::Json => report::pretty(&as_json(&trend, &log))?,
        Format::Csv => as_csv(&trend)?,
        Format::Table => as_text(&trend, &log, units),
    })?;
    if let Some(path) = &arguments.output {
        let scene = trend_chart(&trend, units, arguments.look.look()?)?;
        arguments.look.picture(path.clone()).write(&scene)?;
    }
    Ok(())
}

fn as_text(trend: &Trend, log: &Log, units: System) -> String {
    let best = &trend.sessions[trend.best];
    let mut text = format!(
        "{}: {} ({}).\nEstimated 1RM now {}, best {} ({}).\n",
        trend.lift,
        trend.in_words(),
        trend.sureness.sentence(),
        units.mass(trend.one_rm_now()),
        units.mass(best.estimate.one_rm),
        ago(trend.weeks_since_best()),
    );
    if let Some(before) = &trend.before {
        text += &format!(
            "Before that, over {} weeks, it changed by {} kg a week.\n",
            rounded(before.weeks(), 0),
            rounded(before.slope_kg_week, 2)
        );
    }
    if let Some(last) = trend.sessions.last() {
        text += &equations(last, units);
    }
    if !trend.limits.is_empty() {
        text += "\nWhat this log cannot tell:\n";
        for limit in &trend.limits {
            text += &format!("- {}\n", limit.in_words());
        }
    }
    for notice in log.notices.iter().chain(&trend.notices) {
        text += &format!("note: {notice}\n");
    }
    for row in &log.skipped {
        text += &format!("left out: line {}: {}\n", row.line, row.reason);
    }
    text
}

/// "this week", "1 week ago", "9 weeks ago".
fn ago(weeks: f64) -> String {
    match rounded(weeks, 0).as_str() {
        "0" => "this week".to_owned(),
        "1" => "1 week ago".to_owned(),
        many => format!("{many} weeks ago"),
    }
}

/// The last session's best set by every equation, and how far they are apart.
fn equations(last: &SessionBest, units: System) -> String {
    let (set, estimate) = (&last.set, &last.estimate);
    let reserve = set
        .reserve
        .map(|reserve| format!(", {} in reserve", rounded(reserve, 1)))
        .unwrap_or_default();
    let mut text = format!(
        "\nThe last session's best set, {}: {} for {}{reserve}, by every equation:\n",
        last.day,
        units.mass(set.load),
        rounded(f64::from(set.repetitions), 0),
    );
    let rows = estimate
        .guesses
        .iter()
        .map(|guess| {
            let (fewest, most) = guess.equation.repetitions;
            let used = match (&guess.equation.movement, guess.in_range) {
                (Some(_), _) => "for this lift only, beside the median",
                (None, true) => "yes",
                (None, false) => "outside its range",
            };
            vec![
                guess.equation.name.clone(),
                units.mass(guess.one_rm),
                format!("{} to {}", rounded(fewest, 0), rounded(most, 0)),
                guess.equation.formula.clone(),
                used.to_owned(),
            ]
        })
        .collect();
    let header = [
        "equation",
        "1RM",
        "valid repetitions",
        "formula",
        "in the median",
    ];
    text += &report::table(&header, rows, header.len());
    text += &format!(
        "Their median is {}; they spread from {} to {} ({} %).\n",
        units.mass(estimate.one_rm),
        units.mass(estimate.lowest),
        units.mass(estimate.highest),
        rounded(100.0 * estimate.spread(), 1)
    );
    text
}

fn as_json(trend: &Trend, log: &Log) -> serde_json::Value {
    json!({
        "summary": {
            "lift": trend.lift,
            "verdict": trend.verdict.in_words(),
            "sureness": trend.sureness.in_words(),
            "weeks": trend.recent.weeks(),
            "slope_kg_per_week": trend.recent.slope_kg_week,
            "slope_interval_kg_per_week": trend.recent.interval_kg_week,
            "one_rm_now_kg": trend.one_rm_now().as_kg(),
            "best_kg": trend.sessions[trend.best].kg(),
            "weeks_since_best": trend.weeks_since_best(),
            "cannot_tell": trend.limits.iter().map(|l| l.in_words()).collect::<Vec<_>>(),
            "rows_left_out": log.skipped.iter().map(|row| json!({
                "line": row.line, "reason": row.reason })).collect::<Vec<_>>(),
        },
        "sessions": trend.sessions.iter().map(|s| json!({
            "week": s.week, "line": s.set.line, "load_kg": s.set.load.as_kg(),
            "repetitions": s.set.repetitions, "one_rm_kg": s.kg(),
            "one_rm_lowest_kg": s.estimate.lowest.as_kg(),
            "one_rm_highest_kg": s.estimate.highest.as_kg(),
            "equations": s.estimate.guesses.iter().map(|guess| json!({
                "name": guess.equation.name, "one_rm_kg": guess.one_rm.as_kg(),
                "valid_repetitions": [guess.equation.repetitions.0, guess.equation.repetitions.1],
                "in_range": guess.in_range,
            })).collect::<Vec<_>>(),
        })).collect::<Vec<_>>(),
    })
}

fn as_csv(trend: &Trend) -> Result<String> {
    let header = ["week", "load_kg", "repetitions", "one_rm_kg"];
    let rows = trend.sessions.iter().map(|s| {
        vec![
            s.week.to_string(),
            s.set.load.as_kg().to_string(),
            s.set.repetitions.to_string(),
            s.kg().to_string(),
        ]
    });
    report::rows_to_csv(&header, rows)
}
