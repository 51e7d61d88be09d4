//! The printed sheet of sessions as an HTML page, one page of paper a session.
//!
//! In: plans with their titles, paper, size of type. Out: HTML that needs nothing else.

use super::plan::SheetPart;
use crate::narrative::plan_words::{PlanWords, SetRow};
use crate::narrative::sheet_words::{SheetBlock, blocks};
use crate::units::System;
use std::fmt::Write;

const STYLE: &str = "*{box-sizing:border-box}body{margin:0;font-family:Inter,Helvetica,Arial,sans-serif;color:#14181f;\
background:#fff}section{max-width:190mm;margin:0 auto;line-height:1.28;page-break-after:always;break-inside:avoid}\
section:last-child{page-break-after:auto}h1{font-size:2em;line-height:1.15;margin:0 0 .15em}h2{font-size:1.02em;margin:0 0 .15em}\
p{margin:0 0 .2em}.facts{color:#4a5361}.fill{display:flex;gap:1.2em;margin:1em 0 .6em;color:#4a5361;font-size:.92em}\
.fill span{flex:1;border-bottom:.3mm solid #c3c9d2}table{border-collapse:collapse;width:100%;margin:0 0 .7em}\
th{font-size:.84em;color:#4a5361;text-align:left;border-bottom:.5mm solid #c3c9d2;padding:.15em .4em}\
td{border-bottom:.2mm solid #c3c9d2;padding:.16em .4em;text-align:left;vertical-align:top}tr.warm td{color:#4a5361;font-size:.95em}\
tr.work td{background:#faebd0;padding:.32em .4em}tr.work td.load,tr.work td.reps{font-weight:700;font-size:1.06em}td{white-space:nowrap}td:nth-child(4),td:nth-child(5),td:nth-child(6){white-space:normal}\
small{display:block;font-size:.84em;color:#4a5361}i{display:inline-block;width:.95em;height:.95em;border:.3mm solid #4a5361;margin-right:.35em}\
.two{display:grid;grid-template-columns:1fr 1fr;gap:0 1.8em;font-size:.92em}.two div div{margin-bottom:.45em}\
.cautions{border:.5mm solid #d55e00;padding:.5em .9em .4em;margin-top:.3em;break-inside:avoid}.cautions h2{color:#a34700}\
.cautions ul{margin:0;padding-left:1.1em;columns:2;column-gap:1.8em;font-size:.87em}.cautions li{margin-bottom:.15em;break-inside:avoid}\
@media screen{section{padding:8mm 4mm}}@media print{.work td{print-color-adjust:exact;-webkit-print-color-adjust:exact}}";

/// Sessions as a page; `scales` gives the size of type of each, as a share of 9.4 pt.
#[must_use]
pub fn sheet_html(parts: &[SheetPart<'_>], units: System, paper: &str, scales: &[f64]) -> String {
    let mut page = format!(
        "<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"><title>Session sheet</title>\
         <meta name=\"viewport\" content=\"width=device-width\"><style>@page{{size:{paper};margin:11mm}}{STYLE}</style></head><body>\n"
    );
    for (index, part) in parts.iter().enumerate() {
        let scale = scales.get(index).copied().unwrap_or(1.0);
        let words = PlanWords::of(part.plan, units);
        section(&mut page, &part.title, &words, 9.4 * scale);
    }
    page.push_str("</body></html>\n");
    page
}

fn section(page: &mut String, title: &str, words: &PlanWords, type_pt: f64) {
    let _ = write!(
        page,
        "<section style=\"font-size:{type_pt:.2}pt\"><h1>{}: {}</h1>\n<p class=\"facts\">{}; {}; {}; {}</p>\n\
         <p class=\"fill\">Name<span></span>Date<span></span>Coach<span></span></p>\n",
        escaped(&words.movement),
        escaped(&title.replace('-', " ")),
        escaped(&words.one_rm),
        escaped(&words.level),
        escaped(&words.amount),
        escaped(&words.frequency),
    );
    page.push_str(
        "<table><thead><tr><th>Set</th><th>Load</th><th style=\"white-space:nowrap\">% 1RM</th><th>Repetitions</th><th>Rest</th>\
         <th>How to load</th><th>Done</th></tr></thead><tbody>\n",
    );
    for row in &words.rows {
        set(page, row);
    }
    page.push_str("</tbody></table>\n<div class=\"two\"><div>");
    let [left, right] = blocks(words);
    left.iter().for_each(|one| block(page, one));
    page.push_str("</div><div>");
    right.iter().for_each(|one| block(page, one));
    page.push_str("</div></div>\n<div class=\"cautions\"><h2>Cautions</h2><ul>");
    for caution in &words.cautions {
        let _ = write!(page, "<li>{}</li>", escaped(caution));
    }
    page.push_str("</ul></div></section>\n");
}

fn set(page: &mut String, row: &SetRow) {
    let class = if row.is_warm_up { "warm" } else { "work" };
    let note = if row.is_warm_up && !row.has_notes {
        String::new()
    } else {
        format!("<small>{}</small>", escaped(&row.intent))
    };
    let _ = writeln!(
        page,
        "<tr class=\"{class}\"><td>{}</td><td class=\"load\">{}</td><td>{} %</td><td class=\"reps\">{}</td>\
         <td>{}</td><td>{}{note}</td><td>{}</td></tr>",
        escaped(&row.name),
        escaped(&row.load),
        row.percent,
        escaped(&row.repetitions),
        escaped(&row.rest),
        escaped(&row.how),
        "<i></i>".repeat(row.sets),
    );
}

fn block(page: &mut String, block: &SheetBlock) {
    let _ = write!(page, "<div><h2>{}</h2>", block.title);
    for line in &block.lines {
        let _ = write!(page, "<p>{}</p>", escaped(line));
    }
    page.push_str("</div>");
}

fn escaped(text: &str) -> String {
    text.replace('&', "&amp;")
        .replace('<', "&lt;")
        .replace('>', "&gt;")
        .replace('"', "&quot;")
}
