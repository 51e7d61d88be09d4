//! The help of every command: its examples run as pasted, its options stand in groups, its pages and candidates
//! are those of the same commands.
//!
//! In: what the built program prints. Out: nothing; an example that fails, or is too long for a terminal of
//! 80 columns, fails the test.

use crate::calling::{call, call_in};
use assert_cmd::Command;
use rayon::prelude::{IntoParallelRefIterator, ParallelIterator};
use std::path::Path;

/// Widest line of an example, columns.
const WIDEST: usize = 80;

fn commands() -> Vec<String> {
    let help = call(&["--help"]).done().out;
    let listed = help.lines().skip_while(|line| *line != "Commands:").skip(1);
    let names = listed.take_while(|line| !line.is_empty());
    let names = names.filter(|line| line.starts_with("  ") && !line.starts_with("   "));
    let names = names.filter_map(|line| line.split_whitespace().next());
    names
        .filter(|name| *name != "help")
        .map(str::to_owned)
        .collect()
}

/// The long help of a command; of the program itself where its name is empty.
fn help(command: &str) -> String {
    let own = Some(command).filter(|name| !name.is_empty());
    let arguments: Vec<&str> = own.into_iter().chain(["--help"]).collect();
    call(&arguments).done().out
}

/// The lines of a help's examples, those that go on joined as a shell joins them.
fn examples(help: &str) -> Vec<String> {
    let behind = help.lines().skip_while(|line| !line.starts_with("Example"));
    let lines = behind.skip(1).take_while(|line| !line.is_empty());
    let mut examples = Vec::new();
    let mut open = String::new();
    for line in lines {
        assert!(
            line.chars().count() <= WIDEST,
            "too long to paste: `{line}`"
        );
        open += line.trim();
        match open.strip_suffix('\\') {
            Some(begun) => open = begun.to_owned(),
            None => examples.push(std::mem::take(&mut open)),
        }
    }
    assert_eq!(open, "", "an example goes on into nothing");
    examples
}

/// Runs a line as a shell runs what was pasted.
fn paste(folder: &Path, line: &str) {
    let program = Path::new(env!("CARGO_BIN_EXE_torquill"));
    let beside = program.parent().expect("the program lies in a folder");
    let path = std::env::var("PATH").unwrap_or_default();
    let output = Command::new("sh")
        .args(["-c", line])
        .env("PATH", format!("{}:{path}", beside.display()))
        .env("RAYON_NUM_THREADS", "2")
        .current_dir(folder)
        .output()
        .expect("a shell runs");
    let complaint = String::from_utf8_lossy(&output.stderr);
    assert!(output.status.success(), "`{line}`: {complaint}");
}

#[cfg(unix)]
#[test]
fn regress_every_example_of_the_help_runs_as_pasted() {
    let mut commands = commands();
    assert!(commands.len() >= 15, "{commands:?}");
    commands.push(String::new());
    commands.par_iter().for_each(|command| {
        let examples = examples(&help(command));
        let own = format!("torquill {command}");
        assert!(
            examples.iter().any(|line| line.starts_with(own.trim_end())),
            "no example of `{own}`: {examples:?}"
        );
        let folder = tempfile::tempdir().expect("a folder can be made");
        for line in &examples {
            paste(folder.path(), line);
        }
    });
}

/// A new option is put into a group in `src/cli/help_groups.rs`.
#[test]
fn law_every_option_stands_in_a_group_and_the_short_help_is_short() {
    for command in commands() {
        let long = help(&command);
        let own = long.split("\nOptions:\n").nth(1).unwrap_or_default();
        let own = own.split("\n\n").next().unwrap_or_default();
        let options = own
            .lines()
            .filter(|line| line.trim_start().starts_with('-'));
        let strays: Vec<&str> = options.filter(|line| !line.contains("--help")).collect();
        assert!(strays.is_empty(), "{command}: without a group: {strays:?}");
        let short = call(&[&command, "-h"]).done().out;
        assert!(short.lines().count() < long.lines().count(), "{command}");
        assert!(!short.contains("Example"), "{command}");
    }
}

#[test]
fn law_every_command_has_a_manual_page() {
    let folder = tempfile::tempdir().expect("a folder can be made");
    call_in(folder.path(), &["manual", "-o", "pages"]).done();
    let page = |name: &str| {
        let file = folder.path().join("pages").join(name);
        std::fs::read_to_string(&file).unwrap_or_else(|e| panic!("{name}: {e}"))
    };
    assert!(page("torquill.1").contains("capacity"));
    for command in commands() {
        let text = page(&format!("torquill-{command}.1"));
        assert!(text.starts_with(".ie") || text.contains(".TH"), "{text}");
        assert!(
            text.contains(&format!("torquill {command}")),
            "{command}: {text}"
        );
    }
    let again = call_in(folder.path(), &["manual", "-o", "pages"]);
    assert_eq!(again.status, 2);
    assert!(
        again.complaint.contains("exists already"),
        "{}",
        again.complaint
    );
    call_in(folder.path(), &["manual", "-o", "pages", "--force"]).done();
}

/// What bash is offered for the last of these words.
fn offered(words: &[&str]) -> Vec<String> {
    let index = words.len().to_string();
    let output = Command::new(env!("CARGO_BIN_EXE_torquill"))
        .env("TORQUILL_COMPLETE", "bash")
        .env("_CLAP_COMPLETE_INDEX", index)
        .env("_CLAP_COMPLETE_COMP_TYPE", "9")
        .env("_CLAP_IFS", "\n")
        .args(["--", "torquill"])
        .args(words)
        .output()
        .expect("the program runs");
    let text = String::from_utf8(output.stdout).expect("candidates are text");
    text.lines().map(str::to_owned).collect()
}

#[test]
fn regress_names_and_paths_are_completed() {
    let all = |words: &[&str], expected: &[&str]| {
        let found = offered(words);
        for name in expected {
            assert!(
                found.iter().any(|one| one == name),
                "{words:?}: {name} not in {found:?}"
            );
        }
        found
    };
    assert_eq!(all(&["curve", "ben"], &["bench-press"]), ["bench-press"]);
    all(&["figure", ""], &["squat", "pull-up"]);
    all(
        &["curve", "squat", "--lifter", "ref"],
        &["reference-man", "reference-woman"],
    );
    all(&["pick", "squat", "--gym", ""], &["garage", "strength-lab"]);
    all(&["curve", "squat", "--band", "loop-1"], &["loop-14mm"]);
    all(&["curve", "squat", "--chain", ""], &["chain-8mm"]);
    all(&["curve", "squat", "--set", "tech"], &["technique."]);
    all(
        &["curve", "squat", "--set", "technique.b"],
        &["technique.bar_position="],
    );
    let arm = "muscles.biceps_long.moment_arm.";
    all(
        &["vary", "biceps-curl", "--param", arm],
        &["muscles.biceps_long.moment_arm.elbow"],
    );
    all(
        &["vary", "biceps-curl", "--param", "muscles.br"],
        &["muscles.brachialis."],
    );
    assert_eq!(
        offered(&["curve", "squat", "--lifter", "nobody"]),
        Vec::<String>::new()
    );
}

#[test]
fn law_own_models_are_completed_and_every_shell_has_its_script() {
    let folder = tempfile::tempdir().expect("a folder can be made");
    std::fs::create_dir_all(folder.path().join("movements")).expect("a folder can be made");
    std::fs::write(folder.path().join("movements/own-lift.ron"), "()").expect("a file");
    let own = folder.path().display().to_string();
    assert_eq!(offered(&["--models", &own, "curve", "own"]), ["own-lift"]);
    for shell in ["bash", "elvish", "fish", "powershell", "zsh"] {
        let script = call(&["completions", shell]).done().out;
        assert!(script.contains("TORQUILL_COMPLETE"), "{shell}: {script}");
    }
    assert_eq!(call(&["completions", "tin"]).status, 2);
}
