//! What the program holds, a line a file: its name and what it is.
//!
//! In: listed files, muscles, logs. Out: text.

use super::prose::counted_noun;
use super::quantities::rounded;
use crate::library::{FileFacts, KnownRecords, ListedFile, ListedMuscle};

/// The kinds with how many files there are, and how to go on.
#[must_use]
pub fn kinds_in_words(kinds: &[(&str, usize)]) -> String {
    let width = kinds.iter().map(|(name, _)| name.len()).max().unwrap_or(0);
    let lines = kinds
        .iter()
        .map(|(name, count)| format!("{name:width$}  {count:>3}\n"));
    lines.collect::<String>()
        + "\n`torquill show KIND` lists one kind, `torquill show KIND NAME` prints a file as a starting point.\n"
}

/// Files of a kind, a line each.
#[must_use]
pub fn list_in_words(files: &[ListedFile]) -> String {
    if files.is_empty() {
        return "None is built in; models/README.md shows how one is written.\n".to_owned();
    }
    let lines = files
        .iter()
        .map(|file| (file.name.as_str(), what_it_is(&file.facts)));
    lined_up(&lines.collect::<Vec<_>>())
}

/// Muscles, a line each.
#[must_use]
pub fn muscles_in_words(muscles: &[ListedMuscle]) -> String {
    let lines = muscles.iter().map(|muscle| {
        let crosses = muscle.crosses.join(", ").replace('_', " ");
        let group = muscle.group.replace('_', " ");
        let what = format!(
            "{}: {group} of table `{}`, turns {crosses}",
            muscle.name.replace('_', " "),
            muscle.table
        );
        (muscle.name.as_str(), what)
    });
    lined_up(&lines.collect::<Vec<_>>())
}

/// Logs by the comment that they begin with.
#[must_use]
pub fn logs_in_words(logs: &[(&str, String)]) -> String {
    let lines = logs.iter().map(|(name, text)| {
        let first = text.lines().next().unwrap_or_default();
        (*name, first.trim_start_matches(['#', ' ']).to_owned())
    });
    lined_up(&lines.collect::<Vec<_>>())
}

/// Records with their fields and choices with their words, a line each.
#[must_use]
pub fn fields_in_words(known: &KnownRecords) -> String {
    let records = known.records.iter();
    let records = records.map(|(name, fields)| format!("{name}: {}\n", fields.join(", ")));
    let choices = known.choices.iter();
    let choices = choices.map(|(name, words)| format!("{name}: {}\n", words.join(" | ")));
    format!(
        "{}\n{}",
        records.collect::<String>(),
        choices.collect::<String>()
    )
}

fn lined_up(lines: &[(&str, String)]) -> String {
    let width = lines.iter().map(|(name, _)| name.len()).max().unwrap_or(0);
    let lines = lines
        .iter()
        .map(|(name, what)| format!("{name:width$}  {what}\n"));
    lines.collect()
}

/// What a file is, in a line.
fn what_it_is(facts: &FileFacts) -> String {
    match facts {
        FileFacts::Lifter(lifter) => format!(
            "{}: {} cm, {} kg",
            lifter.title,
            rounded(lifter.height.as_cm(), 1),
            rounded(lifter.body_mass.as_kg(), 1)
        ),
        FileFacts::Segments(table) => format!(
            "segments of a sample of {} cm and {} kg",
            rounded(table.height.as_cm(), 1),
            rounded(table.mass.as_kg(), 1)
        ),
        FileFacts::Muscles(table) => {
            format!(
                "{} for {}",
                counted_noun(table.muscles, "muscle"),
                table.body
            )
        }
        FileFacts::Curves(_) => "force over length and velocity of a fibre".to_owned(),
        FileFacts::Sarcomere(sarcomere) => format!(
            "{}: best at {} µm",
            sarcomere.species,
            rounded(sarcomere.optimum_um, 2)
        ),
        FileFacts::Movement(movement) => {
            let technique = movement.technique.join(", ");
            format!("{} (technique: {technique})", movement.title)
        }
        FileFacts::Band(band) => format!(
            "{} cm long, pulls {} N at twice its length",
            rounded(band.rest_length.as_cm(), 1),
            rounded(band.pulls[1].as_n(), 0)
        ),
        FileFacts::Chain(chain) => format!(
            "{} cm long, {} kg",
            rounded(chain.length.as_cm(), 1),
            rounded(chain.mass.as_kg(), 1)
        ),
        FileFacts::Setup(setup) => counted_noun(setup.items, "item"),
        FileFacts::Gym(gym) => format!(
            "{}: {}, {}, {}, {}",
            gym.title,
            counted_noun(gym.bars, "bar"),
            counted_noun(gym.plates, "plate"),
            counted_noun(gym.bands, "band"),
            counted_noun(gym.chains, "chain")
        ),
        FileFacts::Published(rows) => {
            format!("published table of {}", counted_noun(*rows, "row"))
        }
        FileFacts::Publications(count) => counted_noun(*count, "publication"),
        FileFacts::Bounds | FileFacts::Calibration => String::new(),
    }
}
