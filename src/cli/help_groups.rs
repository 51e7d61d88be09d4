//! The groups in which `--help` lists options: one table for all commands.
//!
//! In: the program's commands. Out: the same, every option under the heading of its group.

use clap::Command;

/// The heading of each group, and the options in it, by their names in the program.
const GROUPS: &[(&str, &[&str])] = &[
    (
        "Lift and lifter",
        &[
            "models",
            "lifter",
            "set",
            "training_months",
            "age",
            "injured",
            "unwell",
            "last_overload",
            "one_rm",
            "log",
            "team",
            "lift",
            "athlete",
            "dates",
            "frozen",
            "skip_bad_rows",
            "name",
            "sex",
            "mass",
            "height",
            "lifts",
            "holds",
            "dynamometers",
            "limbs",
            "traces",
            "columns",
        ],
    ),
    (
        "Load",
        &[
            "load",
            "band",
            "chain",
            "item",
            "setup",
            "versus",
            "as_loaded",
            "gym",
            "title",
            "bars",
            "plates",
            "collars",
            "dumbbells",
            "kettlebells",
            "curl_bars",
            "stack",
            "sled",
            "safety_arms",
            "bands",
            "chains",
            "anchors",
            "belt",
        ],
    ),
    (
        "Question",
        &[
            "at",
            "draw",
            "about",
            "samples",
            "speed",
            "region_share",
            "param",
            "values",
            "rank",
            "find",
            "by",
            "why",
            "curves",
            "why_figure",
            "measure",
            "step",
            "eccentric",
            "velocities",
            "to_load",
            "scatter",
            "people",
            "training",
            "part",
            "seed",
            "goal",
            "effort",
            "share",
            "limit_at",
            "profile",
            "load_at",
            "only",
            "tasks",
            "hung",
            "pieces",
            "askew",
            "both_ways",
            "top",
            "all",
        ],
    ),
    (
        "Repetition",
        &[
            "lowering",
            "pause",
            "from",
            "to",
            "no_enhancement",
            "hand_over",
            "versus_plain",
        ],
    ),
    (
        "Session",
        &[
            "method",
            "sets",
            "reps",
            "total_reps",
            "group",
            "rest_within",
            "rest",
            "weeks",
            "start",
            "rir",
            "velocity_loss",
            "max_per_week",
        ],
    ),
    (
        "Output",
        &[
            "format",
            "units",
            "detail",
            "long",
            "fields",
            "output",
            "over_time",
            "animation",
            "fatigue",
            "loads",
            "sheet",
            "picture",
            "paper",
            "words",
            "steps",
            "data",
            "provenance",
            "force",
        ],
    ),
    ("Look of pictures", &["size", "theme", "live_text"]),
];

/// The commands with their options in groups; an option that no group names stays with `--help`.
#[must_use]
pub fn grouped(command: Command) -> Command {
    in_groups(command).mut_subcommands(in_groups)
}

fn in_groups(command: Command) -> Command {
    command.mut_args(|argument| {
        let id = argument.get_id().as_str();
        let group = GROUPS.iter().find(|(_, options)| options.contains(&id));
        match group {
            Some((heading, _)) if !argument.is_positional() => argument.help_heading(*heading),
            _ => argument,
        }
    })
}
