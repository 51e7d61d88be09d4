//! A team's plans in words: a line a lift for the overview, titles of the sheets.
//!
//! In: [`MemberPlans`], units. Out: [`TeamLine`]s and pages.

use super::cautions::{caution_in_words, is_of_person};
use super::faults::{in_one_line, reasons, team_row_in_words};
use super::plan_words::PlanWords;
use super::prose::{capital, counted_noun, listed, percent};
use super::quantities::{QuantityWords, rounded};
use super::session_words::session_name;
use super::test_words::{test_name, test_words};
use crate::progress::team_cells::ToldStrength;
use crate::progress::team_file::SkippedMember;
use crate::study::{
    ApartLift, DAYS_APART, HEAVY, LONGEST_DAY_MIN, LiftPlan, MemberLift, MemberPlans, PlanAnswer,
    TeamDay,
};
use crate::units::System;

/// Heads of the overview.
pub const TEAM_HEADS: [&str; 6] = ["name", "lift", "1RM", "from", "first session", "sessions"];

/// Title of the overview.
pub const TEAM_TITLE: &str = "Team overview";

/// A lift of a person in one line.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct TeamLine {
    /// Who it is.
    pub name: String,
    /// The lift.
    pub lift: String,
    /// The 1RM, empty where it is to be found.
    pub one_rm: String,
    /// Where it comes from.
    pub from: String,
    /// The working sets of the first session, or why there are none.
    pub first: String,
    /// How many sessions.
    pub sessions: String,
}

impl TeamLine {
    /// Its cells, in the order of [`TEAM_HEADS`].
    #[must_use]
    pub fn cells(&self) -> Vec<String> {
        let cells = [
            &self.name,
            &self.lift,
            &self.one_rm,
            &self.from,
            &self.first,
            &self.sessions,
        ];
        cells.map(Clone::clone).to_vec()
    }
}

/// Every lift of every person, a line each.
#[must_use]
pub fn team_lines(plans: &[MemberPlans], units: System) -> Vec<TeamLine> {
    let lines = plans.iter().flat_map(|plans| {
        let lifts = plans.lifts.iter();
        lifts.map(move |lift| line(plans, lift, units))
    });
    lines.collect()
}

fn line(plans: &MemberPlans, lift: &MemberLift, units: System) -> TeamLine {
    let blank = TeamLine {
        name: plans.member.name.clone(),
        lift: lift.movement.clone(),
        one_rm: String::new(),
        from: from_in_words(plans, lift, units),
        first: String::new(),
        sessions: "1".to_owned(),
    };
    match &lift.plan {
        LiftPlan::Sessions(answer) => TeamLine {
            one_rm: one_rm(answer, units),
            first: first_session(answer, units),
            sessions: answer.count().to_string(),
            ..blank
        },
        LiftPlan::Test(test) => TeamLine {
            first: test_name(test).to_owned(),
            ..blank
        },
        LiftPlan::Nothing(error) => TeamLine {
            first: format!("nothing planned, since {}", reasons(error, units)),
            sessions: "0".to_owned(),
            ..blank
        },
    }
}

/// Where a 1RM comes from, and that it does not fit the others of the row.
fn from_in_words(plans: &MemberPlans, lift: &MemberLift, units: System) -> String {
    let told = told_in_words(lift.told, units);
    let mut apart = plans.apart.iter();
    match apart.find(|apart| apart.movement == lift.movement) {
        Some(apart) => format!(
            "{told}; {} {}",
            others_say(apart),
            units.mass(apart.others_say)
        ),
        None => told,
    }
}

/// "the row's other lift says".
const fn others_say(apart: &ApartLift) -> &'static str {
    match apart.others.len() {
        1 => "the row's other lift says",
        _ => "the row's other lifts say",
    }
}

/// That a lift does not fit the others of its row, and what to do.
fn apart_in_words(apart: &ApartLift, units: System) -> String {
    format!(
        "a 1RM of {} in the {} does not fit the row: by the {} it is {}, {} standard deviations away, farther than \
         in nineteen people of twenty. A wrong number, unit or column, or a lift that is new to this person? Ask before anybody lifts.",
        units.mass(apart.one_rm),
        apart.movement,
        listed(&apart.others),
        units.mass(apart.others_say),
        rounded(apart.deviations.abs(), 1)
    )
}

fn told_in_words(told: ToldStrength, units: System) -> String {
    match told {
        ToldStrength::OneRm(_) => "as given".to_owned(),
        ToldStrength::Set {
            load,
            repetitions,
            reserve,
        } => {
            let left = if reserve > 0.0 {
                format!(", {} in reserve", rounded(reserve, 1))
            } else {
                String::new()
            };
            format!("{} × {repetitions}{left}", units.mass(load))
        }
        ToldStrength::Untested => "not tested".to_owned(),
    }
}

fn one_rm(answer: &PlanAnswer, units: System) -> String {
    let first = answer.sessions.first();
    first.map_or_else(String::new, |session| {
        units.mass(session.plan.draft.lift.one_rm)
    })
}

/// "3 × 8 at 100 kg (75 %)": sets and repetitions as a coach writes them.
fn first_session(answer: &PlanAnswer, units: System) -> String {
    let Some(session) = answer.sessions.first() else {
        return String::new();
    };
    let work: Vec<_> = session.plan.working_sets().collect();
    let top = work
        .iter()
        .max_by(|a, b| a.load.total.as_kg().total_cmp(&b.load.total.as_kg()));
    let sets = counted_noun(work.len(), "set");
    top.map_or(sets, |top| {
        format!(
            "{} × {} at {} ({} %)",
            work.len(),
            top.repetitions(),
            units.mass(top.load.total),
            rounded(100.0 * top.share, 0)
        )
    })
}

/// A page of a person's sheet.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct TeamPage {
    /// The lift.
    pub movement: String,
    /// Which session it is.
    pub title: String,
    /// What stands on it.
    pub words: PlanWords,
}

/// Every page of a person's sheets, the name printed on each.
#[must_use]
pub fn member_pages(plans: &MemberPlans, units: System) -> Vec<TeamPage> {
    let mut pages = Vec::new();
    for lift in &plans.lifts {
        let page = |title: String, words: PlanWords| TeamPage {
            movement: lift.movement.clone(),
            title: match place_in_day(plans, &lift.movement) {
                Some(place) => format!("{title} ({place})"),
                None => title,
            },
            words: PlanWords {
                athlete: Some(plans.member.name.clone()),
                hazards: {
                    let apart = plans.apart.iter();
                    let apart = apart.map(|apart| capital(&apart_in_words(apart, units)));
                    apart.chain(words.hazards.clone()).collect()
                },
                ..words
            },
        };
        match &lift.plan {
            LiftPlan::Sessions(answer) => pages.extend(answer.sessions.iter().map(|session| {
                page(
                    session_name(session.name),
                    PlanWords::of_session(session, units),
                )
            })),
            LiftPlan::Test(test) => {
                pages.push(page(test_name(test).to_owned(), test_words(test, units)));
            }
            LiftPlan::Nothing(_) => {}
        }
    }
    pages
}

/// What a person is told of the lifts for which nothing is planned: why, and what to do; the title first. Nothing where every lift
/// has a page.
#[must_use]
pub fn nothing_planned(plans: &MemberPlans, units: System) -> Option<(String, Vec<String>)> {
    let mut told: Vec<(String, Vec<&str>)> = Vec::new();
    for lift in &plans.lifts {
        let LiftPlan::Nothing(error) = &lift.plan else {
            continue;
        };
        let why = capital(&in_one_line(error, units));
        match told.iter_mut().find(|(known, _)| *known == why) {
            Some((_, lifts)) => lifts.push(&lift.movement),
            None => told.push((why, vec![&lift.movement])),
        }
    }
    let lines = told
        .iter()
        .map(|(why, lifts)| format!("{}: {why}.", capital(&listed(lifts))));
    let title = format!("{}: nothing planned", plans.member.name);
    (!told.is_empty()).then(|| (title, lines.collect()))
}

/// What a day is called, by its place.
fn day_name(place: usize) -> String {
    let letter = u8::try_from(place).ok().filter(|place| *place < 26);
    letter.map_or_else(
        || format!("day {}", place + 1),
        |place| format!("day {}", char::from(b'A' + place)),
    )
}

/// "day B, lift 2 of 3", where a person has several lifts.
fn place_in_day(plans: &MemberPlans, movement: &str) -> Option<String> {
    if plans.lifts.len() < 2 {
        return None;
    }
    plans.days.iter().enumerate().find_map(|(number, day)| {
        let is_it = |place: &usize| plans.lifts[*place].movement == movement;
        let at = day.lifts.iter().position(is_it)?;
        let lift = format!("lift {} of {}", at + 1, day.lifts.len());
        Some(match plans.days.len() {
            1 => lift,
            _ => format!("{}, {lift}", day_name(number)),
        })
    })
}

/// In which order everybody who has several lifts does them, and on which day; the rule behind them last.
#[must_use]
pub fn team_days_in_words(plans: &[MemberPlans]) -> Vec<String> {
    let several = plans.iter().filter(|plans| {
        let lifts = plans.days.iter().map(|day| day.lifts.len());
        lifts.sum::<usize>() > 1
    });
    let mut lines: Vec<String> = several.map(days_of_person).collect();
    if !lines.is_empty() {
        lines.push(format!(
            "Order: tests first, then lifts of several joints before those of one, legs first (ACSM 2009); two \
             lifts of the same limbs, legs or arms, each with a test of a 1RM or sets of {} or more, are on days of their own, so that \
             both are done rested; no day of several takes more \
             than {} min of sets and rests.",
            percent(HEAVY),
            rounded(LONGEST_DAY_MIN, 0)
        ));
    }
    lines
}

fn days_of_person(plans: &MemberPlans) -> String {
    let of_day = |(number, day): (usize, &TeamDay)| {
        let lifts = day.lifts.iter();
        let lifts: Vec<&str> = lifts
            .map(|place| plans.lifts[*place].movement.as_str())
            .collect();
        let head = match plans.days.len() {
            1 => String::new(),
            _ => format!("{}: ", day_name(number)),
        };
        let counts = [(day.attempts, "attempt"), (day.sets, "working set")];
        let counts = counts.iter().filter(|(count, _)| *count > 0);
        let counts: Vec<String> = counts.map(|(n, noun)| counted_noun(*n, noun)).collect();
        format!(
            "{head}{} ({}, about {} min)",
            lifts.join(", "),
            counts.join(" and "),
            rounded(day.time.as_s() / 60.0, 0)
        )
    };
    let days: Vec<String> = plans.days.iter().enumerate().map(of_day).collect();
    let too_many = match plans.days.len() > DAYS_APART {
        true => "; more than a week holds twice: leave lifts out or do each once",
        false => "",
    };
    format!("{}: {}{too_many}", plans.member.name, days.join("; "))
}

/// What each person's age asks for, with the name, once each.
#[must_use]
pub fn team_hazards(plans: &[MemberPlans], units: System) -> Vec<String> {
    let mut told = Vec::new();
    for plans in plans {
        let apart = plans.apart.iter();
        let apart = apart.map(|apart| apart_in_words(apart, units));
        told.extend(apart.map(|words| format!("{}: {words}", plans.member.name)));
        for lift in &plans.lifts {
            let cautions = match &lift.plan {
                LiftPlan::Sessions(answer) => {
                    let first = answer.sessions.first();
                    first.map_or(&[][..], |session| session.plan.cautions())
                }
                LiftPlan::Test(test) => &test.cautions,
                LiftPlan::Nothing(_) => &[],
            };
            let of_person = cautions.iter().filter(|caution| is_of_person(caution));
            for caution in of_person.map(|caution| caution_in_words(caution, units)) {
                let line = format!("{}: {caution}", plans.member.name);
                if !told.contains(&line) {
                    told.push(line);
                }
            }
        }
    }
    told
}

/// Who was left out, and why.
#[must_use]
pub fn member_left_out(row: &SkippedMember, units: System) -> String {
    format!(
        "left out: line {}: {}",
        row.line,
        team_row_in_words(&row.faults, units)
    )
}

/// What is said when the sheets are written.
#[must_use]
pub fn team_done(people: usize, sheets: usize, folder: &str) -> String {
    format!(
        "{} for {} in {folder}: overview.html, log.csv to fill in, a sheet each",
        counted_noun(sheets, "file"),
        if people == 1 {
            "1 person".to_owned()
        } else {
            format!("{people} people")
        }
    )
}
