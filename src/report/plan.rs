//! A planned session as text, JSON, CSV and a one-page sheet to print.

use super::csv::rows_to_csv;
use super::table::table;
use crate::error::Result;
use crate::session::plan::{Plan, PlannedSet, SetKind};
use crate::units::{System, rounded};
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

const HEADER: [&str; 7] = [
    "set",
    "load",
    "% of 1RM",
    "on the bar",
    "repetitions",
    "rest",
    "intent",
];

fn cells(set: &PlannedSet, number: usize, units: System) -> Vec<String> {
    let within = if set.groups.len() > 1 {
        format!(
            " (rest {} s between groups)",
            rounded(set.rest_within.as_s(), 0)
        )
    } else {
        String::new()
    };
    vec![
        match set.kind {
            SetKind::WarmUp => "warm-up".to_owned(),
            SetKind::Work => number.to_string(),
        },
        units.mass(set.load.total),
        rounded(100.0 * set.share, 0),
        set.load.words.clone(),
        format!("{}{within}", set.repetitions_in_words()),
        format!("{} s", rounded(set.rest_after.as_s(), 0)),
        set.intent.clone(),
    ]
}

fn rows(plan: &Plan, units: System) -> Vec<Vec<String>> {
    let mut number = 0;
    plan.draft
        .sets
        .iter()
        .map(|set| {
            number += usize::from(set.kind == SetKind::Work);
            cells(set, number, units)
        })
        .collect()
}

/// Sessions as text, cautions with each.
#[must_use]
pub fn plan_text(parts: &[SheetPart<'_>], units: System) -> String {
    let mut text = String::new();
    for part in parts {
        let plan = part.plan;
        let _ = writeln!(
            text,
            "{}: {} (1RM {}, {})\n",
            part.title,
            plan.draft.movement,
            units.mass(plan.draft.one_rm),
            plan.draft.one_rm_from
        );
        text += &table(&HEADER, rows(plan, units), 7);
        text.push('\n');
        for line in words(plan) {
            let _ = writeln!(text, "{line}");
        }
        text.push('\n');
    }
    text
}

/// Everything beside the table, one thought a line; the cautions come last and always.
fn words(plan: &Plan) -> Vec<String> {
    let draft = &plan.draft;
    let mut lines = Vec::new();
    lines.extend(draft.setup.iter().map(|part| format!("setup: {part}")));
    if !draft.frequency.is_empty() {
        lines.push(format!("how often: {}", draft.frequency));
    }
    if !draft.progression.is_empty() {
        lines.push(format!("going on: {}", draft.progression));
    }
    for prediction in &draft.predictions {
        lines.push(format!(
            "predicted, {}: {} repetitions reach lockout, mean velocity {} m/s, last of fastest {} %",
            prediction.name,
            prediction.completed(),
            rounded(prediction.mean_velocity_m_s(), 2),
            prediction
                .sets
                .last()
                .map_or_else(String::new, |set| rounded(100.0 * (1.0 - set.velocity_loss()), 0)),
        ));
    }
    for lowering in draft.lowerings.iter().filter(|l| l.number == 1) {
        lines.push(format!(
            "lowering, set {}: {} % of what can be lowered under control, reserve {} %",
            lowering.set,
            rounded(100.0 * lowering.effort, 0),
            rounded(100.0 * lowering.reserve, 0)
        ));
    }
    lines.extend(draft.remarks.iter().map(|remark| format!("note: {remark}")));
    if let Some(spotting) = plan.spotting() {
        lines.push(format!(
            "spotters: {}, {}",
            spotting.spotters, spotting.place
        ));
        lines.extend(
            spotting
                .words
                .iter()
                .map(|(word, meaning)| format!("  \"{word}\": {meaning}")),
        );
    }
    lines.extend(
        plan.cautions()
            .iter()
            .map(|caution| format!("caution: {}", caution.text)),
    );
    lines
}

/// Sessions as JSON.
#[must_use]
pub fn plan_json(parts: &[SheetPart<'_>]) -> Value {
    let session = |part: &SheetPart<'_>| {
        let draft = &part.plan.draft;
        json!({
            "title": part.title,
            "movement": draft.movement,
            "method": draft.method.name(),
            "one_rm_kg": draft.one_rm.as_kg(),
            "one_rm_from": draft.one_rm_from,
            "frequency": draft.frequency,
            "progression": draft.progression,
            "setup": draft.setup,
            "sets": draft.sets.iter().map(|set| json!({
                "kind": if set.kind == SetKind::Work { "work" } else { "warm_up" },
                "load_kg": set.load.total.as_kg(),
                "share_of_one_rm": set.share,
                "on_the_bar": set.load.words,
                "groups": set.groups,
                "repetitions": set.repetitions(),
                "rest_within_s": set.rest_within.as_s(),
                "rest_after_s": set.rest_after.as_s(),
                "intent": set.intent, "notes": set.notes,
            })).collect::<Vec<_>>(),
            "predictions": draft.predictions.iter().map(|p| json!({
                "name": p.name, "completed": p.completed(),
                "mean_velocity_m_s": p.mean_velocity_m_s(),
                "repetitions": p.sets.iter().flat_map(|s| &s.repetitions).map(|r| json!({
                    "number": r.number, "group": r.group, "completed": r.completed,
                    "mean_velocity_m_s": r.mean_velocity.as_m_s(),
                    "sticking_velocity_m_s": r.sticking_velocity.map(|v| v.as_m_s()),
                    "capacity_share": r.capacity_share,
                })).collect::<Vec<_>>(),
            })).collect::<Vec<_>>(),
            "remarks": draft.remarks,
            "spotters": part.plan.spotting().map(|s| s.spotters),
            "cautions": part.plan.cautions().iter().map(|c| c.text).collect::<Vec<_>>(),
        })
    };
    json!({ "sessions": parts.iter().map(session).collect::<Vec<_>>() })
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
                format!("{:?}", set.kind).to_lowercase(),
                set.load.total.as_kg().to_string(),
                set.share.to_string(),
                set.load.words.clone(),
                set.repetitions_in_words(),
                set.rest_within.as_s().to_string(),
                set.rest_after.as_s().to_string(),
                set.intent.clone(),
            ]
        })
    });
    rows_to_csv(&header, rows)
}

const STYLE: &str = "@page{size:A4;margin:12mm}body{font:11pt/1.35 Inter,Helvetica,Arial,sans-serif;color:#14181f;\
max-width:186mm;margin:6mm auto}h1{font-size:17pt;margin:0 0 1mm}p{margin:1mm 0}table{border-collapse:collapse;width:100%;\
margin:3mm 0}th,td{border-bottom:.3mm solid #c3c9d2;padding:1.2mm 1.5mm;text-align:left;vertical-align:top}th{font-size:9pt;\
color:#4a5361}td.done{width:12mm;border:.3mm solid #8b95a3}ul{margin:1mm 0;padding-left:5mm;font-size:9.5pt}\
.cautions{border:.5mm solid #d55e00;padding:1.5mm 3mm;font-size:9pt}.small{font-size:9.5pt;color:#4a5361}\
section{page-break-after:always}section:last-child{page-break-after:auto}";

/// Sessions as an HTML page that prints on one sheet each.
#[must_use]
pub fn sheet_html(parts: &[SheetPart<'_>], units: System) -> String {
    let mut page = format!(
        "<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"><title>Session sheet</title>\
         <meta name=\"viewport\" content=\"width=device-width\"><style>{STYLE}</style></head><body>\n"
    );
    for part in parts {
        section(&mut page, part, units);
    }
    page.push_str("</body></html>\n");
    page
}

fn section(page: &mut String, part: &SheetPart<'_>, units: System) {
    let draft = &part.plan.draft;
    let _ = writeln!(
        page,
        "<section><h1>{}: {}</h1><p class=\"small\">1RM {} ({}) &middot; about {} min &middot; {}</p>",
        escaped(&draft.movement.replace('-', " ")),
        escaped(&part.title),
        units.mass(draft.one_rm),
        escaped(&draft.one_rm_from),
        rounded(part.plan.time().as_s() / 60.0, 0),
        escaped(&draft.frequency),
    );
    page.push_str("<table><tr>");
    for head in HEADER {
        let _ = write!(page, "<th>{head}</th>");
    }
    page.push_str("<th>done</th></tr>\n");
    for row in rows(part.plan, units) {
        page.push_str("<tr>");
        for cell in row {
            let _ = write!(page, "<td>{}</td>", escaped(&cell));
        }
        page.push_str("<td class=\"done\"></td></tr>\n");
    }
    page.push_str("</table>\n<ul>");
    let (cautions, others): (Vec<String>, Vec<String>) = words(part.plan)
        .into_iter()
        .partition(|line| line.starts_with("caution: "));
    for line in others {
        let _ = write!(page, "<li>{}</li>", escaped(line.trim()));
    }
    page.push_str("</ul>\n<div class=\"cautions\"><strong>Cautions</strong><ul>");
    for line in cautions {
        let _ = write!(
            page,
            "<li>{}</li>",
            escaped(line.trim_start_matches("caution: "))
        );
    }
    page.push_str("</ul></div></section>\n");
}

fn escaped(text: &str) -> String {
    text.replace('&', "&amp;")
        .replace('<', "&lt;")
        .replace('>', "&gt;")
        .replace('"', "&quot;")
}
