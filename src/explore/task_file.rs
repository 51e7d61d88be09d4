//! A lecturer's tasks for the page: text, start, goal, hint, a line each.
//!
//! In: the text of a file. Out: [`PageTask`]s, or everything that is wrong in it.

use crate::bounds::first_hidden;
use crate::error::{Error, Fault, PageFault, Result, TaskFault};
use crate::narrative::page_words::goal_in_words;
use serde::Serialize;

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
/// Most letters of a text, assumed: a paragraph, and an address with every dial in it.
const MOST_LETTERS: usize = 4000;

/// One task.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct PageTask {
    text: String,
    start: String,
    goal: TaskGoal,
    hint: String,
}

/// What the page checks.
#[derive(Debug, Clone, PartialEq, Serialize)]
struct TaskGoal {
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

/// A task as it is read.
struct TaskDraft {
    line: usize,
    text: String,
    start: Option<String>,
    goal: Option<TaskGoal>,
    hint: String,
}

/// Reads a file of tasks.
///
/// **Fails** with every line that is wrong.
pub fn tasks_from_text(text: &str) -> Result<Vec<PageTask>> {
    let (mut drafts, mut faults): (Vec<TaskDraft>, Vec<TaskFault>) = (Vec::new(), Vec::new());
    for (line, content) in (1..).zip(text.trim_start_matches('\u{feff}').lines()) {
        let content = content.trim();
        if content.is_empty() || content.starts_with("# ") || content == "#" {
            continue;
        }
        if let Err(fault) = read_line(&mut drafts, line, content) {
            faults.push(fault);
        }
    }
    if drafts.is_empty() && faults.is_empty() {
        faults.push(TaskFault::Empty);
    }
    if drafts.len() > MOST_TASKS {
        faults.push(TaskFault::TooMany { most: MOST_TASKS });
    }
    let mut tasks = Vec::new();
    for draft in drafts {
        match draft.finished() {
            Ok(task) => tasks.push(task),
            Err(fault) => faults.push(fault),
        }
    }
    match faults.is_empty() {
        true => Ok(tasks),
        false => {
            let faults = faults.into_iter();
            Err(Error::bad_input(
                faults
                    .map(|fault| Fault::new(PageFault::Task(fault)))
                    .collect(),
            ))
        }
    }
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
    if value.chars().count() > MOST_LETTERS {
        return Err(TaskFault::TooLong {
            line,
            most: MOST_LETTERS,
        });
    }
    if word == "task" {
        drafts.push(TaskDraft {
            line,
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
    match word.as_str() {
        "start" => draft.start = Some(start(line, &value)?),
        "goal" => draft.goal = Some(goal(line, &value)?),
        _ => draft.hint = value,
    }
    Ok(())
}

impl TaskDraft {
    fn finished(self) -> std::result::Result<PageTask, TaskFault> {
        let line = self.line;
        let missing = |word| TaskFault::Incomplete { line, word };
        Ok(PageTask {
            start: self.start.ok_or(missing("start"))?,
            goal: self.goal.ok_or(missing("goal"))?,
            text: self.text,
            hint: self.hint,
        })
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
