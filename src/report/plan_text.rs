//! A planned session as text.
//!
//! In: the answer of a plan. Out: text. Cautions stand in every one
//! of them.

use super::pick_report::HAZARD;
use super::table::{narrow_table, table};
use super::wrapping::wrapped;
use crate::narrative::cautions::{caution_in_words, is_of_person};
use crate::narrative::faults::reasons;
use crate::narrative::plan_words::{PlanWords, SetRow};
use crate::narrative::quantities::{QuantityWords, rounded};
use crate::narrative::session_words::{plan_note, session_name};
use crate::narrative::setups::hazards_of;
use crate::session::draft::SessionPlan;
use crate::session::planned_set::{PlannedSet, SetKind};
use crate::setups::Caution;
use crate::study::{PlanAnswer, PlannedSession};
use crate::units::{Mass, System};

/// Sessions as text with what was taken for granted: an overview where there are several, then each; the cautions last and always.
#[must_use]
pub fn plan_text(answer: &PlanAnswer, units: System) -> String {
    let mut text = String::new();
    if answer.sessions.len() > 1 {
        text += &overview(&answer.sessions, units);
        text.push('\n');
    }
    for (method, fault) in &answer.refused {
        let why = format!("{}, since {}", method.name(), reasons(fault, units));
        push(&mut text, "not planned: ", &why);
    }
    if !answer.refused.is_empty() {
        text.push('\n');
    }
    let hazards = plan_hazards(&answer.sessions, units);
    for hazard in &hazards {
        push(&mut text, HAZARD, hazard);
    }
    if !hazards.is_empty() {
        text.push('\n');
    }
    let mut said: Vec<(String, String)> = Vec::new();
    for session in &answer.sessions {
        session_text(&mut text, session, units, &mut said);
    }
    for note in &answer.notes {
        push(&mut text, "note: ", &plan_note(note, units));
    }
    for caution in plan_cautions(&answer.sessions, units) {
        if !hazards.contains(&caution) {
            push(&mut text, "caution: ", &caution);
        }
    }
    text
}

/// Writes words behind a head, no line wider than a terminal.
fn push(text: &mut String, head: &str, words: &str) {
    for line in wrapped(head, words) {
        text.push_str(&line);
        text.push('\n');
    }
}

/// Most lines about what is dangerous today.
const MOST_HAZARDS: usize = 2;

/// What is dangerous about the sessions, the gravest first.
fn plan_hazards(sessions: &[PlannedSession], units: System) -> Vec<String> {
    let cautions: Vec<Caution> = sessions
        .iter()
        .flat_map(|session| session.plan.cautions())
        .cloned()
        .collect();
    let mut told: Vec<String> = Vec::new();
    let mut of_person = 0;
    for caution in hazards_of(&cautions) {
        // Two sessions may feel as heavy to the whole per cent.
        let words = caution_in_words(&caution, units);
        if !told.contains(&words) {
            of_person += usize::from(is_of_person(&caution));
            told.push(words);
        }
    }
    told.truncate(MOST_HAZARDS + of_person);
    told
}

/// A row a session: what is lifted, how much of it, how fast and how long.
fn overview(sessions: &[PlannedSession], units: System) -> String {
    let header = [
        "session",
        "top\nload",
        "% of\n1RM",
        "sets /\nreps",
        "lifted",
        "time",
        "mean\nvelocity",
    ];
    let rows = sessions
        .iter()
        .map(|session| {
            let plan = &session.plan;
            let work: Vec<_> = plan.working_sets().collect();
            let top = work
                .iter()
                .max_by(|a, b| a.load.total.as_kg().total_cmp(&b.load.total.as_kg()));
            let velocity = plan.draft.predictions.first();
            vec![
                session_name(session.name),
                top.map_or_else(String::new, |set| units.mass(set.load.total)),
                top.map_or_else(String::new, |set| share_words(plan, set)),
                format!(
                    "{} / {}",
                    work.len(),
                    work.iter().map(|set| set.repetitions()).sum::<u32>()
                ),
                units.fine_mass(Mass::from_kg(plan.volume_kg()), 0),
                format!("{} min", rounded(plan.time().as_s() / 60.0, 0)),
                velocity.map_or_else(
                    || "-".to_owned(),
                    |p| format!("{} m/s", rounded(p.mean_velocity_m_s(), 2)),
                ),
            ]
        })
        .collect();
    narrow_table(&header, rows, 1)
}

/// The load as a share of 1RM; beside bands or chains with the most that is felt.
fn share_words(plan: &SessionPlan, set: &PlannedSet) -> String {
    let share = rounded(100.0 * set.share, 0);
    let lift = &plan.draft.lift;
    let felt = plan.draft.setup.as_ref().map(|setup| {
        let loads = [setup.bottom, setup.middle, setup.top];
        let most = loads.map(Mass::as_kg).into_iter().fold(0.0, f64::max);
        most / (lift.one_rm + lift.body).as_kg()
    });
    felt.map_or(share.clone(), |felt| {
        format!("{share}, felt {}", rounded(100.0 * felt, 0))
    })
}

fn session_text(
    text: &mut String,
    session: &PlannedSession,
    units: System,
    said: &mut Vec<(String, String)>,
) {
    let words = PlanWords::of(&session.plan, units);
    push(
        text,
        "",
        &format!(
            "{}: {} ({}; {}; {})",
            session_name(session.name),
            words.movement,
            words.one_rm,
            words.level,
            words.amount
        ),
    );
    text.push('\n');
    set_table(text, &words.rows);
    text.push('\n');
    for line in lines(&words) {
        // A line that stands under an earlier session is not said again.
        if !said.contains(&line) {
            push(text, &line.0, &line.1);
            said.push(line);
        }
    }
    text.push('\n');
}

/// The sets, what is loaded and what it is for under each.
fn set_table(text: &mut String, rows: &[SetRow]) {
    let compared = rows.iter().any(|row| row.to_failure.is_some());
    let mut header = vec!["set", "load", "% of\n1RM", "repetitions", "rest"];
    if compared {
        header.push("possible: chart\n/ simulated");
    }
    let cells = rows
        .iter()
        .map(|row| {
            let mut cells = vec![
                row.name.clone(),
                row.load.clone(),
                row.percent.clone(),
                row.repetitions.clone(),
                row.rest.replace(", then ", ",\nthen "),
            ];
            if compared {
                cells.push(row.to_failure.clone().unwrap_or_default());
            }
            cells
        })
        .collect::<Vec<Vec<String>>>();
    let heights: Vec<usize> = cells.iter().map(|row| height(row)).collect();
    let heads: Vec<String> = header.iter().map(|head| (*head).to_owned()).collect();
    let laid = table(&header, cells, header.len());
    let mut lines = laid.lines();
    let mut write = |text: &mut String, height: usize| {
        for line in lines.by_ref().take(height) {
            text.push_str(line);
            text.push('\n');
        }
    };
    write(text, height(&heads));
    for (row, height) in rows.iter().zip(heights) {
        write(text, height);
        push(text, "         ", &format!("{}; {}", row.how, row.intent));
    }
}

/// Lines of a row of a table.
fn height(cells: &[String]) -> usize {
    let lines = cells.iter().map(|cell| cell.lines().count());
    lines.max().unwrap_or(0).max(1)
}

/// Everything beside the table but the cautions, one thought a line.
fn lines(words: &PlanWords) -> Vec<(String, String)> {
    let mut lines: Vec<(String, String)> = Vec::new();
    let mut push = |head: &str, line: &str| {
        if !line.is_empty() {
            lines.push((format!("{head}: "), line.to_owned()));
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
    lines.extend(calls.map(|(word, meaning)| (format!("  \"{word}\": "), (*meaning).to_owned())));
    lines
}

/// The cautions of all sessions, each once, in order.
#[must_use]
pub fn plan_cautions(sessions: &[PlannedSession], units: System) -> Vec<String> {
    let mut known: Vec<&Caution> = Vec::new();
    for caution in sessions.iter().flat_map(|session| session.plan.cautions()) {
        if !known.contains(&caution) {
            known.push(caution);
        }
    }
    let words = known.into_iter();
    words
        .map(|caution| caution_in_words(caution, units))
        .collect()
}

/// Key of a kind of set.
pub(super) const fn set_kind(kind: SetKind) -> &'static str {
    match kind {
        SetKind::Work => "work",
        SetKind::WarmUp => "warm_up",
    }
}
