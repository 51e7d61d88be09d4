//! `torquill plan MOVEMENT --team FILE -o DIR`: a sheet for everybody of a team, an overview, a log to fill in.

use super::command_call::{Answer, CommandCall};
use super::options::Format;
use super::waiting::watched;
use super::whole_set::tell_settled;
use super::{folder, output};
use crate::draw::outlined_svg;
use crate::error::{Error, Result, TeamFault};
use crate::figures::{Paper, session_sheet};
use crate::narrative::log_words::columns_ignored;
use crate::narrative::team_words::{
    TeamPage, member_left_out, member_pages, nothing_planned, team_done,
};
use crate::progress::log_file::BadRows;
use crate::report::{pages_html, team_data, team_json, team_log, team_page, team_text};
use crate::study::{MemberPlans, PlanQuestion, team_of, team_plans};
use crate::units::System;
use rayon::prelude::{IndexedParallelIterator, IntoParallelRefIterator, ParallelIterator};
use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

/// In place of a movement: every lift that the team's file has a column for.
const EVERY_LIFT: &str = "all";

/// The page of everybody, and the log to fill in.
const OVERVIEW: &str = "overview.html";
const LOG: &str = "log.csv";

/// What is asked of a team.
pub struct TeamCall<'a> {
    /// The team's file.
    pub file: &'a Path,
    /// Where its sheets go.
    pub folder: &'a Path,
    /// Whether files there may be replaced.
    pub replace: bool,
    /// What becomes of rows that cannot be read.
    pub bad_rows: BadRows,
    /// Units and paper of the sheets.
    pub shown: (System, Paper),
    /// Form of what is printed.
    pub format: Format,
}

/// Plans for a team and writes its files: all of them or none.
pub fn run(team: &TeamCall<'_>, asked: &PlanQuestion, call: &CommandCall) -> Result<()> {
    let (units, paper) = team.shown;
    folder::check_folder(team.folder)?;
    call.check_data()?;
    let file = team.file.display().to_string();
    let people = team_of(call.models, &file, team.bad_rows)?;
    for row in &people.skipped {
        output::note(&member_left_out(row, units));
    }
    if let Some(note) = columns_ignored(&people.ignored) {
        output::note(&format!("note: {note}"));
    }
    let stems = stems(people.members.iter().map(|member| member.name.as_str()));
    let surely = stems.iter().map(|stem| format!("{stem}.html"));
    let surely: Vec<String> = surely.chain([OVERVIEW, LOG].map(str::to_owned)).collect();
    folder::check_names(team.folder, &surely, team.replace)?;
    let movement = Some(asked.movement.as_str()).filter(|name| *name != EVERY_LIFT);
    let plans = watched(|watch| team_plans(asked, &people, movement, call.models, watch))?;
    let sheets = plans
        .par_iter()
        .zip(&stems)
        .map(|(plans, stem)| sheets_of(plans, stem, (units, paper), call));
    let sheets: Vec<Vec<(String, Vec<u8>)>> = sheets.collect::<Result<_>>()?;
    let by_name: BTreeMap<&str, &String> = plans
        .iter()
        .zip(&stems)
        .map(|(plans, stem)| (plans.member.name.as_str(), stem))
        .collect();
    let sheet = |name: &str| {
        let stem = by_name.get(name).map_or(name, |stem| stem.as_str());
        format!("{stem}.html")
    };
    let mut files = vec![
        (
            OVERVIEW.to_owned(),
            team_page(&plans, sheet, (units, paper)).into_bytes(),
        ),
        (LOG.to_owned(), team_log(&plans, units).into_bytes()),
    ];
    files.extend(sheets.into_iter().flatten());
    let names: Vec<String> = files.iter().map(|(name, _)| name.clone()).collect();
    folder::check_names(team.folder, &names, team.replace)?;
    let answer = Answer {
        table: &|| team_text(&plans, units),
        json: &|| team_json(&plans),
        data: &|| team_data(&plans),
    };
    call.give(team.format, &answer)?;
    folder::write_into(team.folder, &files)?;
    let folder = team.folder.display().to_string();
    tell_settled(team_done(plans.len(), files.len(), &folder));
    let has_plan = |plans: &MemberPlans| plans.lifts.iter().any(|lift| lift.plan.is_something());
    match plans.iter().any(has_plan) {
        true => Ok(()),
        false => Err(Error::no_answer(TeamFault::NobodyPlanned {
            people: plans.len(),
        })),
    }
}

/// A person's pages as one HTML file, and as pictures where a lift has one session.
fn sheets_of(
    plans: &MemberPlans,
    stem: &str,
    (units, paper): (System, Paper),
    call: &CommandCall,
) -> Result<Vec<(String, Vec<u8>)>> {
    let pages = member_pages(plans, units);
    let mut files = vec![(
        format!("{stem}.html"),
        pages_html(&pages, nothing_planned(plans, units).as_ref(), paper).into_bytes(),
    )];
    for page in &pages {
        let is_only = pages
            .iter()
            .filter(|other| other.movement == page.movement)
            .count()
            == 1;
        if is_only {
            files.push((
                format!("{stem}-{}.svg", page.movement),
                picture(page, paper, call)?,
            ));
        }
    }
    Ok(files)
}

fn picture(page: &TeamPage, paper: Paper, call: &CommandCall) -> Result<Vec<u8>> {
    let scene = session_sheet(&page.title, &page.words, paper)?;
    let scene = call.signed("output", scene)?;
    Ok(outlined_svg(&scene)?.into_bytes())
}

/// Names of files after names of people, all different.
pub fn stems<'a>(names: impl Iterator<Item = &'a str>) -> Vec<String> {
    let mut taken: BTreeSet<String> = BTreeSet::new();
    let stems = names.map(|name| {
        let stem = stem(name);
        // Who is called as another one's second file gets a further number.
        let numbered = (2..).map(|number| format!("{stem}-{number}"));
        let mut free = std::iter::once(stem.clone()).chain(numbered);
        free.find(|stem| taken.insert(stem.clone()))
            .unwrap_or_default()
    });
    stems.collect()
}

/// Bytes of a name that a file is called by: file systems take 255, endings and numbers among them.
const LONGEST_STEM: usize = 150;

/// Letters and digits of a name, hyphens between them.
pub fn stem(name: &str) -> String {
    let words: Vec<String> = name
        .split(|c: char| !c.is_alphanumeric())
        .filter(|word| !word.is_empty())
        .map(str::to_lowercase)
        .collect();
    let stem = words.join("-");
    let fits = |(at, sign): &(usize, char)| at + sign.len_utf8() <= LONGEST_STEM;
    let short: String = stem
        .char_indices()
        .take_while(fits)
        .map(|(_, sign)| sign)
        .collect();
    match short.as_str() {
        // These are files of the whole team.
        "" | "overview" | "log" => format!("person-{short}"),
        _ => short,
    }
}
