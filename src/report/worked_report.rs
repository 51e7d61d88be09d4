//! A worked pose as text, Markdown and HTML.
//!
//! In: lines of its sheet, and how it was made where that is asked for. Out: text; an equation is one line in each form.

use super::RunRecord;
use crate::narrative::worked_sheet::SheetLine;
use crate::narrative::worked_words::{MADE_HEADING, worked_sheet};
use crate::study::WorkedPose;
use crate::units::System;

/// How a sheet is written.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum SheetForm {
    /// Plain text.
    Text,
    /// Markdown.
    Markdown,
    /// A page of HTML that needs nothing else.
    Html,
}

const STYLE: &str = "body{margin:2em auto;max-width:60em;padding:0 1em;font-family:Inter,Helvetica,Arial,sans-serif;\
color:#14181f;background:#fff;line-height:1.4}h1{font-size:1.5em}h2{font-size:1.2em;border-bottom:1px solid #c3c9d2}\
h3{font-size:1em;margin:1em 0 .2em}.equation{margin:.15em 0;padding-left:1.5em;text-indent:-1.5em}\
.equation span{color:#4a5361;margin-left:.8em}code{font-size:.95em}";

/// The sheet of a worked pose; with a record it ends with how it was made.
#[must_use]
pub fn worked_pose_sheet(
    pose: &WorkedPose,
    form: SheetForm,
    units: System,
    record: Option<&RunRecord>,
) -> String {
    let mut lines = worked_sheet(pose, units);
    if let Some(record) = record {
        lines.push(SheetLine::Heading(2, MADE_HEADING.to_owned()));
        lines.extend(
            record
                .entries()
                .into_iter()
                .map(|(key, value)| SheetLine::Equation {
                    equation: format!("{key}: {value}"),
                    meaning: String::new(),
                }),
        );
    }
    match form {
        SheetForm::Text => text(&lines),
        SheetForm::Markdown => markdown(&lines),
        SheetForm::Html => html(&lines),
    }
}

fn text(lines: &[SheetLine]) -> String {
    let mut page = String::new();
    for line in lines {
        page += &match line {
            SheetLine::Heading(1, words) => format!("{words}\n"),
            SheetLine::Heading(2, words) => {
                format!("\n{words}\n{}\n", "-".repeat(words.chars().count()))
            }
            SheetLine::Heading(_, words) => format!("\n{words}:\n"),
            SheetLine::Sentence(words) => format!("{words}\n"),
            SheetLine::Equation { equation, meaning } if meaning.is_empty() => {
                format!("  {equation}\n")
            }
            SheetLine::Equation { equation, meaning } => format!("  {equation}  ({meaning})\n"),
        };
    }
    page
}

fn markdown(lines: &[SheetLine]) -> String {
    let mut page = String::new();
    let mut in_list = false;
    for line in lines {
        let is_item = matches!(line, SheetLine::Equation { .. });
        if is_item != in_list {
            page.push('\n');
        }
        in_list = is_item;
        page += &match line {
            SheetLine::Heading(level, words) => {
                format!("{} {words}\n\n", "#".repeat(usize::from(*level)))
            }
            SheetLine::Sentence(words) => format!("{words}\n\n"),
            SheetLine::Equation { equation, meaning } if meaning.is_empty() => {
                format!("- `{equation}`\n")
            }
            SheetLine::Equation { equation, meaning } => format!("- `{equation}` ({meaning})\n"),
        };
    }
    page.replace("\n\n\n", "\n\n").trim_start().to_owned()
}

fn html(lines: &[SheetLine]) -> String {
    let title = lines.iter().find_map(|line| match line {
        SheetLine::Heading(1, words) => Some(escaped(words)),
        _ => None,
    });
    let mut page = format!(
        "<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"><title>{}</title>\
         <meta name=\"viewport\" content=\"width=device-width\"><style>{STYLE}</style></head><body>\n",
        title.unwrap_or_default()
    );
    for line in lines {
        page += &match line {
            SheetLine::Heading(level, words) => {
                format!("<h{level}>{}</h{level}>\n", escaped(words))
            }
            SheetLine::Sentence(words) => format!("<p>{}</p>\n", escaped(words)),
            SheetLine::Equation { equation, meaning } => format!(
                "<p class=\"equation\"><code>{}</code><span>{}</span></p>\n",
                escaped(equation),
                escaped(meaning)
            ),
        };
    }
    page + "</body></html>\n"
}

fn escaped(text: &str) -> String {
    text.replace('&', "&amp;")
        .replace('<', "&lt;")
        .replace('>', "&gt;")
        .replace('"', "&quot;")
}
