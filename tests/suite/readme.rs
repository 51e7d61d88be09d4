//! Every command that README.md shows is run as pasted, in one folder, in the order of the page.
//!
//! In: the shell blocks of README.md that call the program. Out: nothing; a command that fails, or a file
//! that it promises and does not write, fails the test.

use crate::calling::call_in;
use std::path::Path;

/// Lines of the shell blocks that call the program.
fn commands() -> Vec<String> {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/README.md");
    let text = std::fs::read_to_string(path).expect("README.md can be read");
    let mut inside = false;
    let mut found = Vec::new();
    for line in text.lines() {
        if line.starts_with("```") {
            inside = line == "```sh";
        } else if inside && line.starts_with("torquill ") {
            found.push(line.to_owned());
        }
    }
    found
}

/// The words of a command line: double quotes keep blanks together.
fn words(line: &str) -> Vec<String> {
    let mut words = vec![String::new()];
    let mut quoted = false;
    for letter in line.chars() {
        match letter {
            '"' => quoted = !quoted,
            ' ' if !quoted => words.push(String::new()),
            _ => words.last_mut().expect("one word at least").push(letter),
        }
    }
    words.retain(|word| !word.is_empty());
    words
}

/// Files that a command line promises.
fn promised(words: &[String]) -> Vec<String> {
    let writes = ["-o", "--sheet", "--animation", "--fatigue", "--loads"];
    words
        .windows(2)
        .filter(|pair| {
            let names_data = pair[0] == "--data" && !pair[1].starts_with('-');
            names_data || writes.contains(&pair[0].as_str())
        })
        .map(|pair| pair[1].clone())
        .collect()
}

/// Runs a command in a folder and checks what it promised.
fn run(folder: &Path, line: &str) {
    let words = words(line);
    let arguments: Vec<&str> = words[1..].iter().map(String::as_str).collect();
    let answer = call_in(folder, &arguments);
    let (status, complaint) = (answer.status, answer.complaint);
    assert_eq!(status, 0, "`{line}`: {complaint}");
    for name in promised(&words) {
        assert!(folder.join(&name).exists(), "`{line}` wrote no {name}");
    }
}

#[test]
fn regress_every_command_of_the_readme_works_as_pasted() {
    let folder = tempfile::tempdir().expect("a folder can be made");
    let commands = commands();
    assert!(
        commands.len() >= 20,
        "{} commands were found",
        commands.len()
    );
    for line in &commands {
        run(folder.path(), line);
    }
}

#[test]
fn regress_the_story_has_eight_commands() {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/README.md");
    let text = std::fs::read_to_string(path).expect("README.md can be read");
    let story = text
        .split("## ")
        .find(|part| part.starts_with("One lifter's story"))
        .expect("the story is told");
    let told = story
        .lines()
        .filter(|line| line.starts_with("torquill "))
        .count();
    assert_eq!(told, 8);
}

/// The path that a newcomer takes: list, change, read why, take the table, go on in a notebook; what is shown is run above, and
/// the notebook with the page's Python in `python/tests/test_notebook.py`.
#[test]
fn regress_the_path_from_a_question_to_a_table_has_its_five_steps() {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/README.md");
    let text = std::fs::read_to_string(path).expect("README.md can be read");
    let told = text
        .split("\n### ")
        .find(|part| part.starts_with("From a question to a table"))
        .expect("the path is told");
    let path = told.split("\n## ").next().unwrap_or_default();
    let mut rest = path;
    for step in [
        "torquill parameters biceps-curl",
        "torquill vary biceps-curl --param",
        " --why\n",
        " --curves --data ",
        "(python/lecture_figures.ipynb)",
    ] {
        let found = rest.find(step);
        let at = found.unwrap_or_else(|| panic!("`{step}` is missing or out of order"));
        rest = &rest[at + step.len()..];
    }
    let shown: Vec<&str> = path
        .lines()
        .filter(|l| l.starts_with("torquill "))
        .collect();
    let run = commands();
    assert!(
        shown
            .iter()
            .all(|line| run.iter().any(|other| other == line))
    );
    let root = std::path::Path::new(env!("CARGO_MANIFEST_DIR"));
    assert!(root.join("python/lecture_figures.ipynb").exists());
}
