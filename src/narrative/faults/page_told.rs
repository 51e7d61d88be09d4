//! Words for why the live page's question cannot be put to the model.

use super::Told;
use crate::error::{PageFault, TaskFault};

/// The fault in words.
pub(super) fn told(fault: &PageFault) -> Told {
    match fault {
        PageFault::Unreadable { cause } => {
            Told::new(format!("this is no state of the page: {cause}"))
                .hint("go back to the start of the lift")
        }
        PageFault::TooLong { letters, most } => Told::new(format!(
            "a value of {letters} letters is longer than the {most} that are read"
        )),
        PageFault::TooMany { count, most } => Told::new(format!(
            "{count} values of one kind are more than the {most} that are read"
        )),
        PageFault::NotByFile { text } => Told::new(format!(
            "`{text}` is no name of the library, and the page reads no files"
        ))
        .hint("name a built-in one (torquill show lifters, torquill movements), and set single values on the page"),
        PageFault::NoCurve => Told::new("a drawn curve needs five points at least"),
        PageFault::Task(fault) => of_task(fault),
        PageFault::Group { name, known } => {
            Told::new(format!("there is no group of dials `{name}`"))
                .hint(format!("groups are {}", known.join(", ")))
        }
        PageFault::NoPage { file } => Told::new(format!("`{file}` is no page"))
            .hint("give the page a name that ends in .html"),
        PageFault::OwnModels => Told::new("the live page holds the built-in model files alone")
            .hint("leave --models out, and set single values on the page"),
        PageFault::NothingSolved => Told::new("no lift has been solved yet"),
    }
}

/// A fault of a file of tasks in words.
fn of_task(fault: &TaskFault) -> Told {
    match fault {
        TaskFault::Empty => Told::new("the file of tasks has no task in it")
            .hint("a task is `task: TEXT`, `start: ADDRESS`, `goal: max_effort <= 0.8`, `hint: TEXT`, a line each"),
        TaskFault::UnknownWord { line, word, known } => Told::new(format!(
            "line {line} begins with `{word}`"
        ))
        .hint(format!("lines begin with {}, and a colon behind it", known.join(", "))),
        TaskFault::BeforeTask { line } => {
            Told::new(format!("line {line} stands before the first task"))
                .hint("a task begins with `task: TEXT`")
        }
        TaskFault::Incomplete { line, word } => {
            Told::new(format!("the task of line {line} has no {word}"))
        }
        TaskFault::Goal { line, text, known } => {
            Told::new(format!("line {line}: `{text}` is no goal"))
                .hint("a goal is a key, a sign and a value: max_effort <= 0.8, class = ascending")
                .hint(format!("keys are {}", known.join(", ")))
        }
        TaskFault::Start { line, text } => {
            Told::new(format!("line {line}: `{text}` is no address of the page"))
                .hint("set up the start on the page and copy its address from there")
        }
        TaskFault::GoalWord { line, word, known } => {
            Told::new(format!("line {line}: there is no `{word}` that a goal could ask for"))
                .hint(format!("it is one of: {}", known.join(", ")))
        }
        TaskFault::StartWord { line, word } => {
            Told::new(format!("line {line}: `{word}` is no word of an address"))
                .hint("set up the start on the page and copy its address from there")
        }
        TaskFault::StartVersion { line, version, known } => Told::new(format!(
            "line {line}: the address is of version `{version}` of the page, and there is version {known}"
        ))
        .hint(format!(
            "set up the start on the page and copy its address from there; it begins with #v={known}"
        )),
        TaskFault::StartTwice { line, key } => {
            Told::new(format!("line {line}: the address says `{key}` twice"))
                .hint("leave one of the two out")
        }
        TaskFault::SecondLine { line, word, first } => Told::new(format!(
            "line {line} is a second {word} of one task; the first stands in line {first}"
        ))
        .hint(format!("leave one of the two out, or begin another task before line {line}")),
        TaskFault::NoText { line, word } => {
            Told::new(format!("line {line}: there is nothing behind `{word}:`")).hint(match word.as_str() {
                "task" => "write what is to be found, such as task: Find a load that is hardest near the end",
                _ => "write it behind the colon, or leave the line out",
            })
        }
        TaskFault::OtherLift { line, lift, frozen } => Told::new(format!(
            "line {line}: the task starts with `{lift}`, and the page is frozen on `{frozen}`"
        ))
        .hint("leave --movement out, or start the task with its lift"),
        TaskFault::MetAtStart { line } => {
            Told::new(format!("line {line}: the goal is met before a dial is turned"))
                .hint("ask for more, or start farther from it")
        }
        TaskFault::NeverMet { line, tried } => Told::new(format!(
            "line {line}: none of {tried} states meets the goal"
        ))
        .hint("tried were the weight over its dial, every other open dial by itself, and technique, machine, bands, chains, speed with the weight")
        .hint("ask for less, or open the dials that it takes with --only"),
        TaskFault::TooMany { most } => {
            Told::new(format!("the file of tasks has more than the {most} tasks that a page shows"))
                .hint("write several pages, each with tasks of its own")
        }
        TaskFault::TooManyLines { most } => Told::new(format!(
            "the file of tasks has more than {most} lines"
        ))
        .hint("a task takes four lines, remarks begin with `# `: is this the right file?"),
        TaskFault::Hidden { line, code } => Told::new(format!(
            "line {line} holds the character U+{code:04X}, which cannot be shown"
        ))
        .hint("it often comes along with what is pasted: write the line anew"),
        TaskFault::TooLong { line, most } => {
            Told::new(format!("line {line} is longer than {most} letters"))
        }
    }
}
