//! Whether a student can do a lecturer's tasks: the start can be set up, and the goal can be met.
//!
//! In: tasks, the library, the lift that the page is frozen on. Out: the tasks that are done at their start, or what is wrong.

use super::laboratory::Laboratory;
use super::task_file::{GoalValue, PageTask, TaskGoal};
use super::task_start::state_of;
use crate::anatomy::Dof;
use crate::capacity::CurveShape;
use crate::error::{Error, Fault, PageFault, Result, TaskFault};
use crate::library::Library;
use crate::report::CurveSummary;

/// Lines of the goals that are met at their task's start already.
///
/// **Fails** with every start that cannot be set up, and every goal that nothing meets.
pub fn judged_tasks(
    tasks: &[PageTask],
    library: &Library,
    frozen: Option<&str>,
) -> Result<Vec<usize>> {
    let mut laboratory = Laboratory::new(library.clone());
    let (mut faults, mut met) = (Vec::new(), Vec::new());
    let fault = |fault| Fault::new(PageFault::Task(fault));
    for task in tasks {
        faults.extend(never_met(&task.goal).map(fault));
        let lines = task.lines;
        let found = state_of(&task.start, library).and_then(|state| {
            let summary = laboratory.numbers(&state)?.0;
            Ok((state.lift, summary))
        });
        match found {
            Err(error) => {
                faults.push(fault(TaskFault::StartFails { line: lines.start }));
                faults.extend(error.faults().iter().cloned());
            }
            Ok((lift, _)) if frozen.is_some_and(|frozen| frozen != lift) => {
                faults.push(fault(TaskFault::OtherLift {
                    line: lines.start,
                    lift,
                    frozen: frozen.unwrap_or_default().to_owned(),
                }));
            }
            Ok((_, summary)) if is_met(&task.goal, &summary) => met.push(lines.goal),
            Ok(_) => {}
        }
    }
    match faults.is_empty() {
        true => Ok(met),
        false => Err(Error::bad_input(faults)),
    }
}

/// Least and most that a key of the summary can be, where that is certain.
fn ends(key: &str) -> (Option<i32>, Option<i32>) {
    match key {
        "peak_range" | "sticking_point_range" => (Some(0), Some(1)),
        "start_ratio" | "end_ratio" | "trough_ratio" => (None, Some(1)),
        "range_of_motion_m" => (Some(0), None),
        "flattening_percent" => (None, Some(100)),
        _ => (None, None),
    }
}

/// Why no lift meets a goal, if that is certain.
fn never_met(goal: &TaskGoal) -> Option<TaskFault> {
    match &goal.value {
        GoalValue::Word(word) => {
            let known = match goal.key {
                "class" => CurveShape::ALL.map(CurveShape::word).to_vec(),
                _ => {
                    let mut joints: Vec<&str> =
                        Dof::ALL.iter().map(|dof| dof.joint().name()).collect();
                    joints.dedup();
                    joints
                }
            };
            (!known.contains(&word.as_str())).then(|| TaskFault::NoWord {
                line: goal.line,
                word: word.chars().take(40).collect(),
                known,
            })
        }
        GoalValue::Number(number) => {
            let (least, most) = ends(goal.key);
            let below = least.is_some_and(|least| match goal.is {
                "<" => *number <= f64::from(least),
                "<=" | "=" => *number < f64::from(least),
                _ => false,
            });
            let above = most.is_some_and(|most| match goal.is {
                ">" => *number >= f64::from(most),
                ">=" | "=" => *number > f64::from(most),
                _ => false,
            });
            (below || above).then_some(TaskFault::NeverMet {
                line: goal.line,
                key: goal.key,
                least,
                most,
            })
        }
    }
}

/// Whether a goal is met, as the page judges it.
fn is_met(goal: &TaskGoal, summary: &CurveSummary) -> bool {
    let found = serde_json::to_value(summary).expect("a summary is a struct of numbers and texts");
    match (&found[goal.key], &goal.value) {
        (serde_json::Value::String(found), GoalValue::Word(word)) => found == word,
        (found, GoalValue::Number(number)) => found.as_f64().is_some_and(|found| match goal.is {
            "<=" => found <= *number,
            ">=" => found >= *number,
            "<" => found < *number,
            ">" => found > *number,
            _ => found.total_cmp(number).is_eq(),
        }),
        _ => false,
    }
}
