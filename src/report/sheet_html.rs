//! The printed sheet of sessions as an HTML page, one page of paper a session.
//!
//! In: planned sessions, a paper. Out: HTML that needs nothing else.

use crate::figures::{Paper, sheet_type_pt};
use crate::narrative::plan_words::{PlanWords, SetRow};
use crate::narrative::session_words::session_name;
use crate::narrative::sheet_labels::FILL_IN;
use crate::narrative::sheet_words::{
    BLANKS, CAUTIONS, COLUMN_HEADS, SheetBlock, blocks, sheet_facts, sheet_heading,
};
use crate::narrative::team_words::TeamPage;
use crate::study::PlannedSession;
use crate::units::System;
use std::fmt::Write;

const STYLE: &str = "*{box-sizing:border-box}body{margin:0;font-family:Inter,Helvetica,Arial,sans-serif;color:#14181f;\
background:#fff}section{max-width:190mm;margin:0 auto;line-height:1.28;page-break-after:always;break-inside:avoid}\
section:last-child{page-break-after:auto}h1{font-size:2em;line-height:1.15;margin:0 0 .15em}h2{font-size:1.02em;margin:0 0 .15em}\
p{margin:0 0 .2em}.facts{color:#4a5361}.hazard{color:#a34700;font-weight:700}.fill{display:flex;gap:1.2em;margin:1em 0 .6em;color:#4a5361;font-size:.92em}\
.fill span{flex:1;border-bottom:.3mm solid #c3c9d2}table{border-collapse:collapse;width:100%;margin:0 0 .7em}\
th{font-size:.84em;color:#4a5361;text-align:left;border-bottom:.5mm solid #c3c9d2;padding:.15em .4em}\
td{border-bottom:.2mm solid #c3c9d2;padding:.16em .4em;text-align:left;vertical-align:top}tr.warm td{color:#4a5361;font-size:.95em}\
tr.work td{background:#faebd0;padding:.32em .4em}tr.work td.load,tr.work td.reps{font-weight:700;font-size:1.06em}td{white-space:nowrap}td:nth-child(4),td:nth-child(5),td:nth-child(6){white-space:normal}\
u{display:block;height:1.75em;width:2.6em;border-bottom:.25mm solid #4a5361;text-decoration:none}td.blank{padding-top:0!important}.fill span{color:#14181f;font-weight:700}\
small{display:block;font-size:.84em;color:#4a5361}i{display:inline-block;width:.95em;height:.95em;border:.3mm solid #4a5361;margin-right:.35em}\
.two{display:grid;grid-template-columns:1fr 1fr;gap:0 1.8em;font-size:.92em}.two div div{margin-bottom:.45em}\
.cautions{border:.5mm solid #d55e00;padding:.5em .9em .4em;margin-top:.3em;break-inside:avoid}.cautions h2{color:#a34700}\
.cautions ul{margin:0;padding-left:1.1em;columns:2;column-gap:1.8em;font-size:.87em}.cautions li{margin-bottom:.15em;break-inside:avoid}\
@media screen{section{padding:8mm 4mm}}@media print{.work td{print-color-adjust:exact;-webkit-print-color-adjust:exact}}";

/// One sheet of given words.
#[must_use]
pub fn one_sheet_html(title: &str, words: &PlanWords, paper: Paper) -> String {
    pages(paper, |page| section(page, title, words, paper))
}

/// Pages of a person, one a session; what is not planned, and why, stands last.
#[must_use]
pub fn pages_html(
    sessions: &[TeamPage],
    not_planned: Option<&(String, Vec<String>)>,
    paper: Paper,
) -> String {
    pages(paper, |page| {
        for session in sessions {
            section(page, &session.title, &session.words, paper);
        }
        if let Some((title, lines)) = not_planned {
            let _ = write!(page, "<section><h1>{}</h1>", escaped(title));
            for line in lines {
                let _ = write!(page, "<p>{}</p>", escaped(line));
            }
            page.push_str("</section>\n");
        }
    })
}

/// Sessions as a page of this paper.
#[must_use]
pub fn sheet_html(sessions: &[PlannedSession], units: System, paper: Paper) -> String {
    pages(paper, |page| {
        for session in sessions {
            let words = PlanWords::of_session(session, units);
            section(page, &session_name(session.name), &words, paper);
        }
    })
}

/// A whole page round what is written into it.
fn pages(paper: Paper, write: impl FnOnce(&mut String)) -> String {
    let mut page = format!(
        "<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"><title>Session sheet</title>\
         <meta name=\"viewport\" content=\"width=device-width\"><style>@page{{size:{};margin:11mm}}{STYLE}</style></head><body>\n",
        paper.name()
    );
    write(&mut page);
    page.push_str("</body></html>\n");
    page
}

fn section(page: &mut String, session: &str, words: &PlanWords, paper: Paper) {
    let type_pt = sheet_type_pt(session, words, paper);
    let _ = writeln!(
        page,
        "<section style=\"font-size:{type_pt:.2}pt\"><h1>{}</h1>\n<p class=\"facts\">{}</p>",
        escaped(&sheet_heading(session, words)),
        escaped(&sheet_facts(words)),
    );
    for hazard in &words.hazards {
        let _ = write!(page, "<p class=\"hazard\">! {}</p>", escaped(hazard));
    }
    page.push_str("<p class=\"fill\">");
    for (index, name) in FILL_IN.iter().enumerate() {
        let known = words.filled_in(index);
        let known = known.map_or_else(String::new, |known| escaped(known));
        let _ = write!(page, "{name}<span>{known}</span>");
    }
    page.push_str("</p>\n<table><thead><tr>");
    for head in COLUMN_HEADS {
        let style = if head.contains('%') {
            " style=\"white-space:nowrap\""
        } else {
            ""
        };
        let _ = write!(page, "<th{style}>{head}</th>");
    }
    page.push_str("</tr></thead><tbody>\n");
    for row in &words.rows {
        set(page, row);
    }
    page.push_str("</tbody></table>\n<div class=\"two\">");
    for column in blocks(words) {
        page.push_str("<div>");
        column.iter().for_each(|lines| block(page, lines));
        page.push_str("</div>");
    }
    let _ = write!(
        page,
        "</div>\n<div class=\"cautions\"><h2>{CAUTIONS}</h2><ul>"
    );
    for caution in words.other_cautions() {
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
        "<tr class=\"{class}\"><td>{}</td><td class=\"load\">{}</td><td>{}</td><td class=\"reps\">{}</td>\
         <td>{}</td><td>{}{note}</td>{}</tr>",
        escaped(&row.name),
        escaped(&row.load),
        escaped(&row.shown_percent()),
        escaped(&row.repetitions),
        // A number stays with its unit.
        escaped(&row.rest.replace(" min", "\u{a0}min")),
        escaped(&row.how),
        blanks(row),
    );
}

/// A box to tick for a warm-up; for each working set a line to fill in under every blank.
fn blanks(row: &SetRow) -> String {
    if row.is_warm_up {
        return format!("<td colspan=\"{}\"><i></i></td>", BLANKS.len());
    }
    let lines = "<u></u>".repeat(row.sets);
    format!("<td class=\"blank\">{lines}</td>").repeat(BLANKS.len())
}

fn block(page: &mut String, block: &SheetBlock) {
    let _ = write!(page, "<div><h2>{}</h2>", block.title);
    for line in &block.lines {
        let _ = write!(page, "<p>{}</p>", escaped(line));
    }
    page.push_str("</div>");
}

pub(super) fn escaped(text: &str) -> String {
    text.replace('&', "&amp;")
        .replace('<', "&lt;")
        .replace('>', "&gt;")
        .replace('"', "&quot;")
}
