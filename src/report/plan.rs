//! A planned session as text, JSON and CSV.
//!
//! In: plans with their titles, and the methods that were refused. Out: text. Cautions stand in every one
//! of them.

use super::csv::rows_to_csv;
use super::table::table;
use crate::error::Result;
use crate::narrative::loads::loading_in_words;
use crate::session::plan::{NamedPrediction, Plan, SetKind};
use crate::session::plan_words::{PlanWords, SetRow, least_by_joint};
use crate::units::{Mass, System, rounded};
use serde_json::{Value, json};
use std::fmt::Write;

/// One session of a sheet.
#[derive(Debug, Clone)]
pub struct SheetPart<'a> {
    /// What the session is called.
    pub title: String,
    /// The session.
    pub plan: &'a Plan,
}

/// Sessions as text with what was taken for granted: an overview where there are several, then each; the cautions last and always.
#[must_use]
pub fn plan_text(
    parts: &[SheetPart<'_>],
    refused: &[(String, String)],
    notes: &[String],
    units: System,
) -> String {
    let mut text = String::new();
    if parts.len() > 1 {
        text += &overview(parts, units);
        text.push('\n');
    }
    for (method, reason) in refused {
        let _ = writeln!(text, "not planned: {method}: {reason}");
    }
    if !refused.is_empty() {
        text.push('\n');
    }
    let mut said: Vec<String> = Vec::new();
    for part in parts {
        session_text(&mut text, part, units, &mut said);
    }
    for note in notes {
        let _ = writeln!(text, "note: {note}");
    }
    for caution in plan_cautions(parts) {
        let _ = writeln!(text, "caution: {caution}");
    }
    text
}

/// A row a session: what is lifted, how much of it, how fast and how long.
fn overview(parts: &[SheetPart<'_>], units: System) -> String {
    let header = [
        "session",
        "top load",
        "% of 1RM",
        "sets",
        "repetitions",
        "lifted",
        "time",
        "mean velocity",
    ];
    let rows = parts
        .iter()
        .map(|part| {
            let plan = part.plan;
            let work: Vec<_> = plan.working_sets().collect();
            let top = work
                .iter()
                .max_by(|a, b| a.load.total.as_kg().total_cmp(&b.load.total.as_kg()));
            let velocity = plan.draft.predictions.first();
            vec![
                part.title.clone(),
                top.map_or_else(String::new, |set| units.mass(set.load.total)),
                top.map_or_else(String::new, |set| rounded(100.0 * set.share, 0)),
                work.len().to_string(),
                work.iter()
                    .map(|set| set.repetitions())
                    .sum::<u32>()
                    .to_string(),
                units.mass(Mass::from_kg(plan.volume_kg().round())),
                format!("{} min", rounded(plan.time().as_s() / 60.0, 0)),
                velocity.map_or_else(
                    || "-".to_owned(),
                    |p| format!("{} m/s", rounded(p.mean_velocity_m_s(), 2)),
                ),
            ]
        })
        .collect();
    table(&header, rows, 1)
}

fn session_text(text: &mut String, part: &SheetPart<'_>, units: System, said: &mut Vec<String>) {
    let words = PlanWords::of(part.plan, units);
    let _ = writeln!(
        text,
        "{}: {} ({}; {}; {})\n",
        part.title, words.movement, words.one_rm, words.level, words.amount
    );
    text.push_str(&set_table(&words.rows));
    text.push('\n');
    for line in lines(&words) {
        // A line that stands under an earlier session is not said again.
        if !said.contains(&line) {
            let _ = writeln!(text, "{line}");
            said.push(line);
        }
    }
    text.push('\n');
}

fn set_table(rows: &[SetRow]) -> String {
    let compared = rows.iter().any(|row| row.to_failure.is_some());
    let mut header = vec![
        "set",
        "load",
        "% of 1RM",
        "repetitions",
        "rest",
        "how to load",
        "what for",
    ];
    if compared {
        header.push("to failure: chart / model");
    }
    let cells = rows
        .iter()
        .map(|row| {
            let mut cells = vec![
                row.name.clone(),
                row.load.clone(),
                row.percent.clone(),
                row.repetitions.clone(),
                row.rest.clone(),
                row.how.clone(),
                row.intent.clone(),
            ];
            if compared {
                cells.push(row.to_failure.clone().unwrap_or_default());
            }
            cells
        })
        .collect();
    table(&header, cells, header.len())
}

/// Everything beside the table but the cautions, one thought a line.
fn lines(words: &PlanWords) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    let mut push = |head: &str, line: &str| {
        if !line.is_empty() {
            lines.push(format!("{head}: {line}"));
        }
    };
    for part in &words.setup {
        push("setup", part);
    }
    push("how often", &words.frequency);
    push("going on", &words.progression);
    for line in &words.predicted {
        push("predicted", line);
    }
    for note in &words.notes {
        push("note", note);
    }
    if let Some(spotters) = &words.spotters {
        push("spotters", spotters);
    }
    let calls = words.calls.iter();
    lines.extend(calls.map(|(word, meaning)| format!("  \"{word}\": {meaning}")));
    lines
}

/// The cautions of all sessions, each once, in order.
#[must_use]
pub fn plan_cautions(parts: &[SheetPart<'_>]) -> Vec<&'static str> {
    let mut cautions = Vec::new();
    for part in parts {
        for caution in part.plan.cautions() {
            if !cautions.contains(&caution.text) {
                cautions.push(caution.text);
            }
        }
    }
    cautions
}

/// Sessions as JSON, cautions with each.
#[must_use]
pub fn plan_json(parts: &[SheetPart<'_>], refused: &[(String, String)], notes: &[String]) -> Value {
    json!({
        "sessions": parts.iter().map(session_json).collect::<Vec<_>>(),
        "refused": refused.iter().map(|(method, reason)| json!({
            "method": method, "reason": reason })).collect::<Vec<_>>(),
        "notes": notes,
    })
}

fn session_json(part: &SheetPart<'_>) -> Value {
    let draft = &part.plan.draft;
    json!({
        "title": part.title,
        "movement": draft.movement,
        "method": draft.method.name(),
        "level": draft.level.in_words(),
        "one_rm_kg": draft.one_rm.as_kg(),
        "one_rm_from": draft.one_rm_from,
        "body_kg": draft.body.as_kg(),
        "time_s": part.plan.time().as_s(),
        "volume_kg": part.plan.volume_kg(),
        "frequency": draft.frequency,
        "progression": draft.progression,
        "setup": draft.setup,
        "sets": draft.sets.iter().map(|set| json!({
            "kind": kind(set.kind),
            "load_kg": set.load.total.as_kg(),
            "share_of_one_rm": set.share,
            "on_the_bar": loading_in_words(&set.load),
            "groups": set.groups,
            "repetitions": set.repetitions(),
            "rest_within_s": set.rest_within.as_s(),
            "rest_after_s": set.rest_after.as_s(),
            "lowering_s": set.tempo.lowering.as_s(),
            "to_failure_by_chart": set.allowed.and_then(|allowed| allowed.by_chart),
            "to_failure_by_model": set.allowed.and_then(|allowed| allowed.by_model),
            "intent": set.intent, "notes": set.notes,
        })).collect::<Vec<_>>(),
        "predictions": draft.predictions.iter().map(prediction_json).collect::<Vec<_>>(),
        "lowerings": draft.lowerings.iter().map(|lowering| json!({
            "set": lowering.set, "number": lowering.number, "effort": lowering.effort,
            "reserve": lowering.reserve, "simulated_effort": lowering.simulated_effort,
            "speed_m_s": lowering.speed_m_s,
        })).collect::<Vec<_>>(),
        "remarks": draft.remarks,
        "sources": draft.sources.iter().map(|(what, origin)| json!({
            "what": what, "source": origin.in_words() })).collect::<Vec<_>>(),
        "spotters": part.plan.spotting().map(|s| s.spotters),
        "spotters_place": part.plan.spotting().map(|s| s.place),
        "cautions": part.plan.cautions().iter().map(|c| c.text).collect::<Vec<_>>(),
    })
}

fn prediction_json(prediction: &NamedPrediction) -> Value {
    let repetitions = prediction.sets.iter().enumerate().flat_map(|(index, set)| {
        set.repetitions.iter().map(move |r| {
            json!({
                "set": index + 1,
                "number": r.number, "group": r.group, "completed": r.completed,
                "mean_velocity_m_s": r.mean_velocity.as_m_s(),
                "sticking_velocity_m_s": r.sticking_velocity.map(|v| v.as_m_s()),
                "capacity_share": r.capacity_share,
            })
        })
    });
    let joints = least_by_joint(prediction);
    json!({
        "name": prediction.name, "completed": prediction.completed(),
        "mean_velocity_m_s": prediction.mean_velocity_m_s(),
        "repetitions": repetitions.collect::<Vec<_>>(),
        "least_capacity_share": joints.iter().map(|(joint, share)| {
            (joint.in_words().to_owned(), json!(share))
        }).collect::<serde_json::Map<_, _>>(),
    })
}

const fn kind(kind: SetKind) -> &'static str {
    match kind {
        SetKind::Work => "work",
        SetKind::WarmUp => "warm_up",
    }
}

/// Sets as CSV, a row a set.
///
/// **Fails** only if memory cannot be written.
pub fn plan_csv(parts: &[SheetPart<'_>]) -> Result<String> {
    let header = [
        "session",
        "set",
        "kind",
        "load_kg",
        "share_of_one_rm",
        "on_the_bar",
        "groups",
        "rest_within_s",
        "rest_after_s",
        "intent",
    ];
    let rows = parts.iter().flat_map(|part| {
        part.plan.draft.sets.iter().enumerate().map(|(index, set)| {
            vec![
                part.title.clone(),
                (index + 1).to_string(),
                kind(set.kind).to_owned(),
                set.load.total.as_kg().to_string(),
                set.share.to_string(),
                loading_in_words(&set.load),
                set.repetitions_in_words(),
                set.rest_within.as_s().to_string(),
                set.rest_after.as_s().to_string(),
                set.intent.clone(),
            ]
        })
    });
    rows_to_csv(&header, rows)
}
