//! A lecturer's tasks for the page: text, start, goal, hint, a line each.
//!
//! In: the text of a file. Out: [`PageTask`]s, or everything that is wrong in it.

use crate::anatomy::Dof;
use crate::bounds::first_hidden;
use crate::capacity::CurveShape;
use crate::error::{Error, Fault, PageFault, Place, Result, TaskFault};
use crate::narrative::page_words::goal_in_words;
use crate::report::CurveSummary;
use serde::Serialize;
use std::sync::Arc;

/// Words that lines begin with.
const WORDS: &[&str] = &["task", "start", "goal", "hint"];
/// What a goal can be about: keys of the summary.
const KEYS: &[&str] = &[
    "class",
    "peak_range",
    "start_ratio",
    "end_ratio",
    "trough_ratio",
    "range_of_motion_m",
    "sticking_point_range",
    "sticking_point_m",
    "sticking_point_deg",
    "max_effort",
    "limiting_joint",
    "flattening_percent",
];
/// Signs of a goal, the longer ones first.
const SIGNS: [&str; 5] = ["<=", ">=", "<", ">", "="];
/// Most tasks, assumed: an hour of work.
const MOST_TASKS: usize = 40;
/// Most lines, assumed: every task with its lines, and five times as many remarks.
const MOST_LINES: usize = 1000;
/// Most letters of a line, assumed: a paragraph, and an address with every dial in it.
const MOST_LETTERS: usize = 4000;

/// One task.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct PageTask {
    text: String,
    pub(super) start: String,
    pub(super) goal: TaskGoal,
    hint: String,
    #[serde(skip)]
    pub(super) lines: TaskLines,
}

/// What the page checks.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub(super) struct TaskGoal {
    key: &'static str,
    /// The same in words.
    name: &'static str,
    is: &'static str,
    value: GoalValue,
}

#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(untagged)]
enum GoalValue {
    Number(f64),
    Word(String),
}

/// A file of tasks: its name, so that faults say where they stand, and its text, which they share.
#[derive(Debug, Clone)]
pub struct TaskFile<'a> {
    /// The file as the user named it.
    pub name: &'a str,
    /// What stands in it.
    pub text: Arc<str>,
}

impl TaskFile<'_> {
    /// A fault where it stands.
    pub(super) fn fault(&self, fault: TaskFault) -> Fault {
        let line = fault.line();
        let told = Fault::new(PageFault::Task(fault));
        match line {
            Some(line) => told.at(self.place(line)),
            None => told,
        }
    }

    /// A line, counted from 1.
    pub(super) fn place(&self, line: usize) -> Place {
        let content = self.text.lines().nth(line - 1).unwrap_or_default();
        Place {
            file: self.name.to_owned(),
            start: (line, 1),
            end: (line, content.trim_end().chars().count() + 1),
            text: Arc::clone(&self.text),
        }
    }

    /// Too many lines, or one that is too long: then nothing else of the file is looked at.
    fn too_large(&self) -> Option<TaskFault> {
        let lines = (1..).zip(self.text.lines()).take(MOST_LINES + 1);
        for (line, content) in lines {
            if line > MOST_LINES {
                return Some(TaskFault::TooManyLines { most: MOST_LINES });
            }
            if content.chars().nth(MOST_LETTERS).is_some() {
                let most = MOST_LETTERS;
                return Some(TaskFault::TooLong { line, most });
            }
        }
        None
    }
}

/// Lines of the file where a task's start and goal stand.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(super) struct TaskLines {
    pub(super) start: usize,
    pub(super) goal: usize,
}

/// A task as it is read; a start or a goal that cannot be read is there all the same, and told once.
struct TaskDraft {
    line: usize,
    lines: TaskLines,
    hint_line: usize,
    text: String,
    start: Option<String>,
    goal: Option<TaskGoal>,
    hint: String,
}

/// Reads a file of tasks.
///
/// **Fails** with every line that is wrong; with one fault alone where the file is too large for tasks of a page.
pub fn tasks_from_text(file: &TaskFile<'_>) -> Result<Vec<PageTask>> {
    if let Some(fault) = file.too_large() {
        return Err(Error::bad_input(vec![file.fault(fault)]));
    }
    let (mut drafts, mut faults): (Vec<TaskDraft>, Vec<TaskFault>) = (Vec::new(), Vec::new());
    let text = file.text.trim_start_matches('\u{feff}');
    for (line, content) in (1..).zip(text.lines()) {
        let content = content.trim();
        if content.is_empty() || content.starts_with("# ") || content == "#" {
            continue;
        }
        if let Err(fault) = read_line(&mut drafts, line, content) {
            faults.push(fault);
        }
        if drafts.len() > MOST_TASKS {
            drafts.pop();
            faults.push(TaskFault::TooMany { most: MOST_TASKS });
            break;
        }
    }
    if drafts.is_empty() && faults.is_empty() {
        faults.push(TaskFault::Empty);
    }
    let mut tasks = Vec::new();
    for draft in drafts {
        match draft.finished() {
            Ok(task) => tasks.extend(task),
            Err(fault) => faults.push(fault),
        }
    }
    if faults.is_empty() {
        return Ok(tasks);
    }
    faults.sort_by_key(|fault| fault.line().unwrap_or(0));
    let faults = faults.into_iter().map(|fault| file.fault(fault));
    Err(Error::bad_input(faults.collect()))
}

fn read_line(
    drafts: &mut Vec<TaskDraft>,
    line: usize,
    content: &str,
) -> std::result::Result<(), TaskFault> {
    if let Some(code) = first_hidden(content) {
        return Err(TaskFault::Hidden { line, code });
    }
    let (word, value) = content.split_once(':').unwrap_or((content, ""));
    let (word, value) = (word.trim().to_lowercase(), value.trim().to_owned());
    if !WORDS.contains(&word.as_str()) {
        return Err(TaskFault::UnknownWord {
            line,
            word: word.chars().take(40).collect(),
            known: WORDS,
        });
    }
    if value.is_empty() && matches!(word.as_str(), "task" | "hint") {
        return Err(TaskFault::NoText { line, word });
    }
    if word == "task" {
        drafts.push(TaskDraft {
            line,
            lines: TaskLines::default(),
            hint_line: 0,
            text: value,
            start: None,
            goal: None,
            hint: String::new(),
        });
        return Ok(());
    }
    let Some(draft) = drafts.last_mut() else {
        return Err(TaskFault::BeforeTask { line });
    };
    let stands = match word.as_str() {
        "start" => &mut draft.lines.start,
        "goal" => &mut draft.lines.goal,
        _ => &mut draft.hint_line,
    };
    if *stands > 0 {
        let first = *stands;
        return Err(TaskFault::SecondLine { line, word, first });
    }
    *stands = line;
    match word.as_str() {
        "start" => {
            draft.start = Some(start(line, &value)?);
        }
        "goal" => {
            draft.goal = Some(goal(line, &value)?);
        }
        _ => draft.hint = value,
    }
    Ok(())
}

impl TaskDraft {
    /// The task; none where a line of it is told as wrong already.
    fn finished(self) -> std::result::Result<Option<PageTask>, TaskFault> {
        let TaskDraft { line, lines, .. } = self;
        let missing = |word| Err(TaskFault::Incomplete { line, word });
        match (self.start, self.goal) {
            (None, _) if lines.start == 0 => missing("start"),
            (_, None) if lines.goal == 0 => missing("goal"),
            (Some(start), Some(goal)) => Ok(Some(PageTask {
                text: self.text,
                start,
                goal,
                hint: self.hint,
                lines,
            })),
            _ => Ok(None),
        }
    }
}

/// What stands behind the `#` of an address of the page.
fn start(line: usize, text: &str) -> std::result::Result<String, TaskFault> {
    let state = text.split_once('#').map(|(_, state)| state);
    match state.filter(|state| state.contains("lift=")) {
        Some(state) => Ok(format!("#{state}")),
        None => Err(TaskFault::Start {
            line,
            text: text.chars().take(80).collect(),
        }),
    }
}

fn goal(line: usize, text: &str) -> std::result::Result<TaskGoal, TaskFault> {
    let none = || TaskFault::Goal {
        line,
        text: text.chars().take(80).collect(),
        known: KEYS,
    };
    let is = SIGNS
        .into_iter()
        .find(|sign| text.contains(sign))
        .ok_or_else(none)?;
    let (key, value) = text.split_once(is).ok_or_else(none)?;
    let (key, value) = (key.trim(), value.trim());
    let key = KEYS.iter().find(|known| **known == key).ok_or_else(none)?;
    let is_word = matches!(*key, "class" | "limiting_joint");
    let number = value
        .parse::<f64>()
        .ok()
        .filter(|number| number.is_finite());
    if is_word {
        check_word(line, key, value)?;
    }
    let value = match number {
        Some(number) if !is_word => GoalValue::Number(number),
        None if is_word && is == "=" && !value.is_empty() => GoalValue::Word(value.to_owned()),
        _ => return Err(none()),
    };
    Ok(TaskGoal {
        key,
        name: goal_in_words(key),
        is,
        value,
    })
}

/// A class that there is, a joint that there is.
fn check_word(line: usize, key: &str, value: &str) -> std::result::Result<(), TaskFault> {
    let mut known: Vec<&'static str> = match key {
        "class" => CurveShape::ALL.map(CurveShape::word).to_vec(),
        _ => Dof::ALL.map(|dof| dof.joint().name()).to_vec(),
    };
    known.dedup();
    match value.is_empty() || known.contains(&value) {
        true => Ok(()),
        false => Err(TaskFault::GoalWord {
            line,
            word: value.chars().take(80).collect(),
            known,
        }),
    }
}

impl TaskGoal {
    /// Whether a summary meets it.
    pub(super) fn is_met(&self, summary: &CurveSummary) -> bool {
        let all = serde_json::to_value(summary).unwrap_or_default();
        let found = &all[self.key];
        match (&self.value, found.as_f64(), found.as_str()) {
            (GoalValue::Word(word), _, Some(found)) => found == word,
            (GoalValue::Number(number), Some(found), _) => match self.is {
                "<=" => found <= *number,
                ">=" => found >= *number,
                "<" => found < *number,
                ">" => found > *number,
                _ => found == *number,
            },
            _ => false,
        }
    }
}
