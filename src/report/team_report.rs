//! A team's plans: overview as text, CSV, JSON and a page; a log to fill in.
//!
//! In: [`MemberPlans`]. Out: text; the log's columns are those that `progress` reads.

use super::csv::rows_to_csv;
use super::json::pretty;
use super::pick_report::HAZARD;
use super::sheet_html::escaped;
use super::table::narrow_table;
use super::tidy_table::{Cells, TidyTable, guarded};
use super::wrapping::wrapped;
use crate::figures::Paper;
use crate::narrative::session_words::session_name;
use crate::narrative::team_words::{
    TEAM_HEADS, TEAM_TITLE, TeamLine, team_days_in_words, team_hazards, team_lines,
};
use crate::narrative::test_words::test_name;
use crate::study::{LiftPlan, MemberPlans};
use crate::units::{Mass, System};
use serde::Serialize;
use std::fmt::Write;

/// The overview as a table.
#[must_use]
pub fn team_text(plans: &[MemberPlans], units: System) -> String {
    let rows = team_lines(plans, units);
    let rows = rows.iter().map(TeamLine::cells).collect();
    let mut text = narrow_table(&TEAM_HEADS, rows, TEAM_HEADS.len());
    for hazard in team_hazards(plans, units) {
        for line in wrapped(HAZARD, &hazard) {
            text.push_str(&line);
            text.push('\n');
        }
    }
    for line in team_days_in_words(plans) {
        for line in wrapped("- ", &line) {
            text.push_str(&line);
            text.push('\n');
        }
    }
    text
}

/// The overview as a table of data, loads in kg.
#[must_use]
pub fn team_data(plans: &[MemberPlans]) -> TidyTable {
    TidyTable::of(team_rows(plans).iter().map(Cells::of))
}

#[derive(Serialize)]
struct TeamJson<'a> {
    team: Vec<TeamRow<'a>>,
}

#[derive(Serialize)]
struct TeamRow<'a> {
    name: &'a str,
    lift: &'a str,
    plan: &'static str,
    one_rm_kg: Option<f64>,
    sessions: usize,
}

/// The overview as JSON.
#[must_use]
pub fn team_json(plans: &[MemberPlans]) -> String {
    pretty(&TeamJson {
        team: team_rows(plans),
    })
}

fn team_rows(plans: &[MemberPlans]) -> Vec<TeamRow<'_>> {
    let rows = plans.iter().flat_map(|plans| {
        plans.lifts.iter().map(|lift| {
            let (plan, one_rm_kg, sessions) = match &lift.plan {
                LiftPlan::Sessions(answer) => {
                    let first = answer.sessions.first();
                    let one_rm = first.map(|session| session.plan.draft.lift.one_rm.as_kg());
                    ("sessions", one_rm, answer.count())
                }
                LiftPlan::Test(_) => ("test", None, 1),
                LiftPlan::Nothing(_) => ("nothing", None, 0),
            };
            TeamRow {
                name: &plans.member.name,
                lift: &lift.movement,
                plan,
                one_rm_kg,
                sessions,
            }
        })
    });
    rows.collect()
}

/// The working sets of everybody as a log whose last columns are to be filled in.
#[must_use]
pub fn team_log(plans: &[MemberPlans], units: System) -> String {
    let unit = match units {
        System::Metric => "kg",
        System::Us => "lb",
    };
    let header = [
        "date".to_owned(),
        "name".to_owned(),
        "lift".to_owned(),
        "session".to_owned(),
        "set".to_owned(),
        format!("load ({unit})"),
        "planned".to_owned(),
        "repetitions done".to_owned(),
        "reserve".to_owned(),
        "velocity (m/s)".to_owned(),
    ];
    let header: Vec<&str> = header.iter().map(String::as_str).collect();
    let mut rows = Vec::new();
    for plans in plans {
        for lift in &plans.lifts {
            let mut row =
                |(session, date): (&str, &str), set: usize, load: String, planned: String| {
                    let row = [
                        date.to_owned(),
                        guarded(&plans.member.name).into_owned(),
                        lift.movement.clone(),
                        session.to_owned(),
                        set.to_string(),
                        load,
                        planned,
                        String::new(),
                        String::new(),
                        String::new(),
                    ];
                    rows.push(row.to_vec());
                };
            match &lift.plan {
                LiftPlan::Sessions(answer) => {
                    let weekly = answer.sessions.iter();
                    let weekly = weekly.flat_map(|session| {
                        let weeks = 0..session.name.weeks();
                        weeks.map(move |later| (session, session.name.in_week(later)))
                    });
                    let mut weekly: Vec<_> = weekly.collect();
                    weekly.sort_by_key(|(_, name)| name.place());
                    for (session, name) in weekly {
                        let date = name.date().map(|date| date.to_string());
                        let date = date.unwrap_or_default();
                        let name = session_name(name);
                        for (index, set) in session.plan.working_sets().enumerate() {
                            let load = set.load.total + session.plan.draft.lift.body;
                            let planned = set.repetitions().to_string();
                            row((&name, &date), index + 1, mass_in(load, units), planned);
                        }
                    }
                }
                LiftPlan::Test(test) => {
                    for attempt in 1..=test.attempts as usize {
                        let planned = test.attempt_repetitions.to_string();
                        row((test_name(test), ""), attempt, String::new(), planned);
                    }
                }
                LiftPlan::Nothing(_) => {}
            }
        }
    }
    rows_to_csv(&header, rows.into_iter())
}

/// A mass as a bare number of the unit, to hundredths.
fn mass_in(mass: Mass, units: System) -> String {
    let value = match units {
        System::Metric => mass.as_kg(),
        System::Us => mass.as_lb(),
    };
    ((value * 100.0).round() / 100.0).to_string()
}

const STYLE: &str = "body{font-family:Inter,Helvetica,Arial,sans-serif;color:#14181f;background:#fff;max-width:190mm;margin:8mm auto;\
font-size:9.5pt;line-height:1.3}h1{font-size:1.6em}table{border-collapse:collapse;width:100%}th{text-align:left;color:#4a5361;\
border-bottom:.5mm solid #c3c9d2;padding:.2em .5em}td{border-bottom:.2mm solid #c3c9d2;padding:.2em .5em;vertical-align:top}\
.hazard{color:#a34700;font-weight:700}thead{display:table-header-group}tr{break-inside:avoid}";

/// The overview as a page; `sheet` names the sheet of each person.
#[must_use]
pub fn team_page(
    plans: &[MemberPlans],
    sheet: impl Fn(&str) -> String,
    (units, paper): (System, Paper),
) -> String {
    let mut page = format!(
        "<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"><title>{TEAM_TITLE}</title>\
         <meta name=\"viewport\" content=\"width=device-width\"><style>@page{{size:{};margin:11mm}}{STYLE}</style></head>\
         <body>\n<h1>{TEAM_TITLE}</h1>\n<table><thead><tr>",
        paper.name()
    );
    for head in TEAM_HEADS {
        let _ = write!(page, "<th scope=\"col\">{head}</th>");
    }
    page.push_str("</tr></thead><tbody>\n");
    let mut before = String::new();
    for line in team_lines(plans, units) {
        page.push_str("<tr>");
        for (index, cell) in line.cells().iter().enumerate() {
            let cell = escaped(cell);
            let shown = match index {
                0 if line.name == before => String::new(),
                0 => format!("<a href=\"{}\">{cell}</a>", escaped(&sheet(&line.name))),
                _ => cell,
            };
            let _ = write!(page, "<td>{shown}</td>");
        }
        before.clone_from(&line.name);
        page.push_str("</tr>\n");
    }
    page.push_str("</tbody></table>");
    for hazard in team_hazards(plans, units) {
        let _ = write!(page, "<p class=\"hazard\">! {}</p>", escaped(&hazard));
    }
    let days = team_days_in_words(plans);
    if !days.is_empty() {
        let items = days.iter().map(|day| format!("<li>{}</li>", escaped(day)));
        let _ = write!(page, "<ul>{}</ul>", items.collect::<String>());
    }
    page.push_str("</body></html>\n");
    page
}
