//! Options that nothing follows, and questions that contradict themselves: refused before anything is written, with the way out.

use crate::calling::{call, call_in, refused, told};
use std::path::Path;

/// Every file of a folder.
fn files(folder: &Path) -> usize {
    std::fs::read_dir(folder).expect("a folder").count()
}

#[test]
fn fault_provenance_is_refused_where_nothing_could_say_it() {
    for command in [
        &["curve", "bench-press"][..],
        &["movements"],
        &["sources"],
        &["parameters", "squat"],
        &["max", "squat"],
        &["plan", "bench-press", "--one-rm", "100 kg"],
        &["pick", "bench-press", "--gym", "garage"],
        &["progress", "--log", "rising"],
        &["vary", "bench-press", "--rank"],
    ] {
        let arguments = [command, &["--provenance"]].concat();
        refused(
            &arguments,
            &["--provenance changes nothing without --format csv, --format json or --data"],
        );
    }
    for command in [
        &["show"][..],
        &["show", "bands"],
        &["check", "x.ron"],
        &["manual"],
        &["completions", "bash"],
        &["gym", "-o", "g.ron"],
        &["explore", "-o", "p.html"],
    ] {
        let folder = tempfile::tempdir().expect("a folder");
        let arguments = [command, &["--provenance"]].concat();
        told(
            &call_in(folder.path(), &arguments),
            &arguments,
            &["--provenance changes nothing here", "leave it out"],
        );
        assert_eq!(files(folder.path()), 0, "{arguments:?}");
    }
    // Where it can be said, it is.
    let folder = tempfile::tempdir().expect("a folder");
    let curve = ["curve", "biceps-curl", "--samples", "5", "--provenance"];
    for (ending, says) in [
        (&["--format", "csv"][..], true),
        (&["--format", "json"], true),
        (&["--data", "d.csv"], false),
    ] {
        let answer = call_in(folder.path(), &[&curve[..], ending].concat()).done();
        assert_eq!(answer.out.contains("model_hash"), says, "{ending:?}");
    }
    let data = std::fs::read_to_string(folder.path().join("d.csv")).expect("a table");
    assert!(data.starts_with("# program"), "{data}");
    let figure = ["figure", "biceps-curl", "-o", "a.svg", "--provenance"];
    call_in(folder.path(), &figure).done();
}

#[test]
fn fault_a_share_of_the_hardest_part_needs_one() {
    let share = ["--region-share", "60%"];
    let family = [
        "vary",
        "biceps-curl",
        "--param",
        "lifter.height",
        "--values=-5%,+5%",
        "--samples",
        "11",
    ];
    for (command, words) in [
        (
            &["curve", "bench-press"][..],
            "--region-share changes nothing without --load, --band, --item or --setup",
        ),
        (
            &["figure", "bench-press", "-o", "a.svg"],
            "--region-share changes nothing without --load",
        ),
        (
            &["curve", "bench-press", "--load", "40 kg", "--format", "csv"],
            "without --format table or --format json",
        ),
        (
            &["vary", "bench-press", "--rank"],
            "--region-share changes nothing here",
        ),
        (&family, "without --format json or --output with a --load"),
    ] {
        refused(&[command, &share].concat(), &[words]);
    }
    let curves = [&family[..], &["--curves"]].concat();
    refused(
        &curves,
        &["--curves changes nothing without --format or --data"],
    );
    // What follows it is another one with another share, and a table beside a picture is made again without it.
    let folder = tempfile::tempdir().expect("a folder");
    let curve = ["curve", "bench-press", "--load", "40 kg", "--samples", "31"];
    let usual = call(&curve).done();
    let wide = call(&[&curve[..], &share].concat()).done();
    assert_ne!(usual.out, wide.out);
    let family = [&family[..], &["--format", "json"]].concat();
    call(&[&family[..], &share].concat()).done();
    let drawn = [
        "figure",
        "bench-press",
        "--load",
        "40 kg",
        "--samples",
        "31",
        "-o",
        "a.svg",
        "--data",
    ];
    call_in(folder.path(), &[&drawn[..], &share].concat()).done();
    let again = call_in(folder.path(), &["again", "a.csv"]).done();
    assert!(again.complaint.is_empty(), "{}", again.complaint);
}

#[test]
fn fault_a_figure_of_one_setup_takes_no_second() {
    for drawn in ["holders", "free-body"] {
        let figure = ["figure", "biceps-curl", "--draw", drawn, "-o", "a.svg"];
        let both = ["--load", "8 kg", "--versus", "--load", "6 kg"];
        refused(
            &[&figure[..], &both].concat(),
            &["--versus changes nothing without --draw curve"],
        );
    }
}

#[test]
fn fault_options_of_bands_and_chains_where_none_may_hang() {
    let pick = ["pick", "bench-press", "--gym", "strength-lab"];
    for (options, words) in [
        (
            &["--only", "plain", "--askew"][..],
            "--askew is of bands and chains, and --only plain hangs none",
        ),
        (
            &["--only", "plain", "--both-ways"],
            "--both-ways is of bands and chains",
        ),
        (&["--only", "plain", "--hung", "3"], "--hung is of bands"),
        (
            &["--only", "plain", "--goal", "share", "--share", "30%"],
            "--share is of bands and chains, and --only plain hangs none",
        ),
        (
            &["--hung", "0", "--share", "10%.."],
            "--share is of bands and chains, and --hung 0 hangs none",
        ),
        (
            &["--hung", "1", "--both-ways"],
            "--both-ways changes nothing without --hung 2",
        ),
        (
            &["--only", "chains", "--both-ways"],
            "--both-ways changes nothing without --only bands",
        ),
        (
            &["--only", "chains", "--askew"],
            "--askew changes nothing without --only bands",
        ),
    ] {
        refused(&[&pick[..], options].concat(), &[words]);
    }
    let machine = ["pick", "leg-press", "--gym", "strength-lab", "--askew"];
    refused(&machine, &["--askew changes nothing here"]);
}

#[test]
fn fault_a_load_is_limited_once_at_a_place_and_by_something() {
    let pick = ["pick", "bench-press", "--gym", "strength-lab"];
    let twice = ["--load-at", "start=10 kg..", "--load-at", "0=..90 kg"];
    refused(
        &[&pick[..], &twice].concat(),
        &[
            "the load at the start is limited twice",
            "one --load-at a place",
        ],
    );
    refused(
        &[&pick[..], &["--load-at", "end=.."]].concat(),
        &["`end=..` limits no load"],
    );
    refused(
        &[&pick[..], &["--share", "100%"]].concat(),
        &["`100%` is no range of shares", "--goal share"],
    );
}

#[test]
fn fault_a_wished_share_that_is_missed_is_told() {
    let missed = "Not the wished share";
    let pick = [
        "pick",
        "bench-press",
        "--gym",
        "strength-lab",
        "--samples",
        "11",
        "--goal",
        "share",
        "--share",
    ];
    // A novice is given plain weight, which is far from any share; some lifters get what is nearest.
    for (lifter, share, is_missed) in [
        ("reference-man", "40%", true),
        ("club-lifter", "40%", false),
        ("club-lifter", "100%", true),
    ] {
        let arguments = [&pick[..], &[share, "--lifter", lifter]].concat();
        let answer = call(&arguments).done();
        assert_eq!(answer.out.contains(missed), is_missed, "{}", answer.out);
    }
}

#[test]
fn fault_a_seed_beyond_all_counts_is_told_as_too_large() {
    let people = ["curve", "squat", "--people", "3", "--seed"];
    let most = u64::MAX.to_string();
    refused(
        &[&people[..], &["99999999999999999999999"]].concat(),
        &["more than is counted here", &most],
    );
    refused(
        &[&people[..], &["1.5"]].concat(),
        &["a whole number is due"],
    );
    refused(&[&people[..], &["-1"]].concat(), &["none below 0"]);
}
