//! The trend of a training log as text, CSV and JSON.
//!
//! In: a [`LogStudy`]. Out: text; masses of CSV and JSON in kg.

use super::json::pretty;
use super::table::narrow_table;
use super::tidy_table::{Cells, DrawnColumns, TidyTable};
use super::wrapping::folded;
use crate::narrative::log_words::{more_left_out, note_in_words, profile_in_words};
use crate::narrative::progress_words::{
    EQUATION_HEADS, LIMITS_HEAD, equation_cells, last_set, left_out_row, limit_in_words,
    odd_rows_in_words, spread_in_words, sureness_word, trend_sentences, verdict_word, why_left_out,
};
use crate::progress::estimate::Guess;
use crate::progress::log_profile::{NoProfile, VelocityProfile};
use crate::progress::session_best::SessionBest;
use crate::progress::training_log::SkippedRow;
use crate::study::LogStudy;
use crate::units::System;
use serde::Serialize;

/// A trend as text: the finding, the last set by every equation, what the log cannot tell, odd rows.
#[must_use]
pub fn trend_text(study: &LogStudy, units: System) -> String {
    let LogStudy { log, trend, .. } = study;
    let mut lines = trend_sentences(trend, units);
    if let Some(last) = trend.sessions.last() {
        lines.push(String::new());
        lines.push(equations(last, units));
    }
    if !trend.limits.is_empty() {
        lines.push(String::new());
        lines.push(LIMITS_HEAD.to_owned());
    }
    let limits = trend.limits.iter();
    lines.extend(limits.map(|limit| format!("- {}", limit_in_words(limit, units))));
    if let Some(profile) = &study.profile {
        lines.push(String::new());
        lines.extend(profile_in_words(profile, units));
    }
    let notes = log.notes.iter();
    lines.extend(notes.map(|note| format!("note: {}", note_in_words(note))));
    let odd = log.odd.iter();
    lines.extend(odd.map(|odd| format!("note: {}", odd_rows_in_words(odd))));
    let skipped = log.skipped.iter();
    lines.extend(skipped.map(|row| left_out_row(row, units)));
    lines.extend((log.skipped_more > 0).then(|| more_left_out(log.skipped_more)));
    let folded = lines.iter().flat_map(|line| folded(line));
    folded.collect::<Vec<String>>().join("\n") + "\n"
}

/// The last session's best set by every equation, and how far they are apart.
fn equations(last: &SessionBest, units: System) -> String {
    let guesses = last.estimate.guesses.iter();
    let rows = guesses.map(|guess| equation_cells(guess, units)).collect();
    format!(
        "{}\n{}{}",
        last_set(last, units),
        narrow_table(&EQUATION_HEADS, rows, EQUATION_HEADS.len()),
        spread_in_words(&last.estimate, units)
    )
}

#[derive(Serialize)]
struct TrendJson<'a> {
    summary: TrendSummary<'a>,
    sessions: Vec<SessionRow<'a>>,
}

#[derive(Serialize)]
struct TrendSummary<'a> {
    lift: &'a str,
    athlete: Option<&'a str>,
    verdict: &'static str,
    sureness: &'static str,
    weeks: f64,
    slope_kg_per_week: f64,
    slope_interval_kg_per_week: Option<(f64, f64)>,
    one_rm_now_kg: f64,
    best_kg: f64,
    weeks_since_best: f64,
    cannot_tell: Vec<String>,
    load_velocity_profile: Option<ProfileRow>,
    read_as: Vec<String>,
    rows_left_out: Vec<LeftOutRow>,
    more_rows_left_out: usize,
}

/// A profile in kg and m/s; what a lift without a published velocity of a 1RM lacks is null.
#[derive(Serialize)]
struct ProfileRow {
    sets: usize,
    intercept_kg: f64,
    slope_kg_s_per_m: f64,
    r_squared: f64,
    one_rm_velocity_m_s: Option<f64>,
    one_rm_kg: Option<f64>,
    one_rm_error_kg: Option<f64>,
}

#[derive(Serialize)]
struct LeftOutRow {
    line: usize,
    reason: String,
}

#[derive(Serialize)]
struct SessionRow<'a> {
    date: String,
    week: f64,
    line: usize,
    load_kg: f64,
    repetitions: u32,
    one_rm_kg: f64,
    one_rm_lowest_kg: f64,
    one_rm_highest_kg: f64,
    equations: Vec<EquationRow<'a>>,
}

#[derive(Serialize)]
struct EquationRow<'a> {
    name: &'a str,
    one_rm_kg: f64,
    valid_repetitions: (f64, f64),
    in_range: bool,
}

/// A trend as JSON; its sentences in the units asked for.
#[must_use]
pub fn trend_json(study: &LogStudy, units: System) -> String {
    let LogStudy { log, trend, .. } = study;
    let limits = trend.limits.iter();
    let line = &trend.recent;
    pretty(&TrendJson {
        summary: TrendSummary {
            lift: &trend.lift,
            athlete: log.entries.first().and_then(|set| set.athlete.as_deref()),
            verdict: verdict_word(trend.verdict),
            sureness: sureness_word(trend.sureness),
            weeks: line.weeks(),
            slope_kg_per_week: line.slope_kg_week,
            slope_interval_kg_per_week: line.interval_kg_week,
            one_rm_now_kg: trend.one_rm_now().as_kg(),
            best_kg: trend.sessions[trend.best].kg(),
            weeks_since_best: trend.weeks_since_best(),
            cannot_tell: limits.map(|limit| limit_in_words(limit, units)).collect(),
            load_velocity_profile: study.profile.as_ref().and_then(profile_row),
            read_as: log.notes.iter().map(note_in_words).collect(),
            rows_left_out: left_out(&log.skipped, units),
            more_rows_left_out: log.skipped_more,
        },
        sessions: trend.sessions.iter().map(session_row).collect(),
    })
}

fn profile_row(profile: &Result<VelocityProfile<'_>, NoProfile>) -> Option<ProfileRow> {
    let profile = profile.as_ref().ok()?;
    let maximum = profile.one_rm.as_ref();
    Some(ProfileRow {
        sets: profile.sets,
        intercept_kg: profile.intercept_kg,
        slope_kg_s_per_m: profile.slope_kg_s_m,
        r_squared: profile.r_squared,
        one_rm_velocity_m_s: maximum.map(|maximum| maximum.at.mean.as_m_s()),
        one_rm_kg: maximum.map(|maximum| maximum.load.as_kg()),
        one_rm_error_kg: maximum.map(|maximum| maximum.error.as_kg()),
    })
}

fn left_out(rows: &[SkippedRow], units: System) -> Vec<LeftOutRow> {
    let row = |row: &SkippedRow| LeftOutRow {
        line: row.line,
        reason: why_left_out(row, units),
    };
    rows.iter().map(row).collect()
}

fn session_row<'a>(session: &'a SessionBest<'_>) -> SessionRow<'a> {
    SessionRow {
        date: session.day.to_string(),
        week: session.week,
        line: session.set.line,
        load_kg: session.set.load.as_kg(),
        repetitions: session.set.repetitions,
        one_rm_kg: session.kg(),
        one_rm_lowest_kg: session.estimate.lowest.as_kg(),
        one_rm_highest_kg: session.estimate.highest.as_kg(),
        equations: session.estimate.guesses.iter().map(equation_row).collect(),
    }
}

fn equation_row<'a>(guess: &Guess<'a>) -> EquationRow<'a> {
    EquationRow {
        name: &guess.equation.name,
        one_rm_kg: guess.one_rm.as_kg(),
        valid_repetitions: guess.equation.repetitions,
        in_range: guess.in_range,
    }
}

/// A trend as a table: a row a session.
#[must_use]
pub fn trend_data(study: &LogStudy) -> TidyTable {
    let sessions = study.trend.sessions.iter();
    TidyTable::of(sessions.map(|session| Cells::of(&session_row(session)))).drawn(DrawnColumns {
        along: "date",
        values: "one_rm_kg",
        as_curve: false,
    })
}
