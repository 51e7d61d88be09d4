//! Model files in words: what their kinds are called, what a sound one holds.
//!
//! In: [`Shelf`], [`FileFacts`]. Out: "lifter", and lines of label and text.

use super::quantities::rounded;
use super::source_words::source_in_words;
use crate::error::Shelf;
use crate::library::{
    BandFacts, ChainFacts, CheckedFile, FileFacts, GymFacts, LifterFacts, SegmentFacts,
};
use crate::units::Length;

/// What messages call one file of a kind.
#[must_use]
pub const fn shelf_name(shelf: Shelf) -> &'static str {
    match shelf {
        Shelf::Lifters => "lifter",
        Shelf::Segments => "segment table",
        Shelf::Muscles => "muscle table",
        Shelf::Curves => "set of curves",
        Shelf::Sarcomeres => "sarcomere",
        Shelf::Movements => "movement",
        Shelf::Bands => "band",
        Shelf::Chains => "chain",
        Shelf::Setups => "setup",
        Shelf::Gyms => "gym",
        Shelf::Published => "published table",
    }
}

/// What a sound file is.
#[must_use]
pub const fn file_kind(facts: &FileFacts) -> &'static str {
    shelf_name(match facts {
        FileFacts::Lifter(_) => Shelf::Lifters,
        FileFacts::Segments(_) => Shelf::Segments,
        FileFacts::Muscles(_) => Shelf::Muscles,
        FileFacts::Curves(_) => Shelf::Curves,
        FileFacts::Sarcomere(_) => Shelf::Sarcomeres,
        FileFacts::Movement(_) => Shelf::Movements,
        FileFacts::Band(_) => Shelf::Bands,
        FileFacts::Chain(_) => Shelf::Chains,
        FileFacts::Setup(_) => Shelf::Setups,
        FileFacts::Gym(_) => Shelf::Gyms,
        FileFacts::Published(_) => Shelf::Published,
        FileFacts::Publications(_) => return "list of publications",
        FileFacts::Bounds => return "table of bounds",
        FileFacts::Calibration => return "table of the calibration",
    })
}

/// A checked file: what kind it is, what it extends, what it holds.
#[must_use]
pub fn checked_file_in_words(file: &str, checked: &CheckedFile) -> String {
    let kind = file_kind(&checked.facts);
    let judgement = match checked.doubts.len() {
        0 => format!("a sound {kind}"),
        1 => format!("a {kind} that can be used, with one thing that is unlikely"),
        count => format!("a {kind} that can be used, with {count} things that are unlikely"),
    };
    let mut text = format!("{file}: {judgement}\n");
    if !checked.extends.is_empty() {
        text += &format!("  extends: {}\n", checked.extends.join(", which extends "));
    }
    for (label, fact) in file_facts(&checked.facts) {
        text += &format!("  {label}: {fact}\n");
    }
    text
}

/// A line of a sound file: label and text.
type Line = (&'static str, String);

/// What a sound file holds: label and text of each line.
#[must_use]
pub fn file_facts(facts: &FileFacts) -> Vec<(&'static str, String)> {
    match facts {
        FileFacts::Lifter(facts) => lifter(facts),
        FileFacts::Segments(facts) => segments(facts),
        FileFacts::Muscles(facts) => vec![
            ("body", facts.body.clone()),
            ("muscles", facts.muscles.to_string()),
            ("strength groups", facts.groups.join(", ")),
        ],
        FileFacts::Curves([active, passive, velocity]) => vec![
            ("active force", source_in_words(active)),
            ("passive force", source_in_words(passive)),
            ("force over velocity", source_in_words(velocity)),
        ],
        FileFacts::Sarcomere(facts) => vec![
            ("species", facts.species.clone()),
            ("optimum", format!("{} µm", rounded(facts.optimum_um, 3))),
            ("source", source_in_words(&facts.source)),
        ],
        FileFacts::Movement(facts) => vec![
            ("title", facts.title.clone()),
            ("technique", facts.technique.join(", ")),
            ("limits", facts.limits.clone()),
        ],
        FileFacts::Band(facts) => band(facts),
        FileFacts::Chain(facts) => chain(facts),
        FileFacts::Setup(facts) => vec![
            ("name", facts.name.clone()),
            ("items", facts.items.to_string()),
        ],
        FileFacts::Gym(facts) => gym(facts),
        FileFacts::Published(rows) => vec![("rows", rows.to_string())],
        FileFacts::Publications(count) => vec![("publications", count.to_string())],
        FileFacts::Bounds | FileFacts::Calibration => Vec::new(),
    }
}

fn centimetres(length: Length) -> String {
    format!("{} cm", rounded(length.as_cm(), 1))
}

fn lifter(facts: &LifterFacts) -> Vec<Line> {
    let mass = rounded(facts.body_mass.as_kg(), 1);
    vec![
        ("title", facts.title.clone()),
        ("height", centimetres(facts.height)),
        ("body mass", format!("{mass} kg")),
        ("tables", facts.tables.join(", ")),
        ("strength groups", facts.strengths.to_string()),
        ("lengths at this height", lengths(&facts.lengths)),
    ]
}

/// "thigh 37.5 cm, shank 39.0 cm".
fn lengths(segments: &[(&str, Length)]) -> String {
    let told = segments
        .iter()
        .map(|(name, length)| format!("{} {}", name.replace('_', " "), centimetres(*length)));
    told.collect::<Vec<_>>().join(", ")
}

fn segments(facts: &SegmentFacts) -> Vec<Line> {
    let mass = rounded(facts.mass.as_kg(), 1);
    vec![
        (
            "sample",
            format!("{}, {mass} kg", centimetres(facts.height)),
        ),
        ("lengths in the sample", lengths(&facts.segments)),
        (
            "source of the lengths",
            source_in_words(&facts.length_source),
        ),
        (
            "source of masses and centres",
            source_in_words(&facts.source),
        ),
    ]
}

fn band(facts: &BandFacts) -> Vec<Line> {
    let [shorter, longer] = facts.pulls.map(|pull| rounded(pull.as_n(), 0));
    vec![
        ("name", facts.name.clone()),
        ("rest length", centimetres(facts.rest_length)),
        (
            "pull at 1.5 and 2 times its length",
            format!("{shorter} N, {longer} N"),
        ),
        ("source", source_in_words(&facts.source)),
    ]
}

fn chain(facts: &ChainFacts) -> Vec<Line> {
    let mass = rounded(facts.mass.as_kg(), 2);
    vec![
        ("name", facts.name.clone()),
        ("length", centimetres(facts.length)),
        ("mass", format!("{mass} kg")),
        ("source", source_in_words(&facts.source)),
    ]
}

fn gym(facts: &GymFacts) -> Vec<Line> {
    vec![
        ("title", facts.title.clone()),
        ("bars", facts.bars.to_string()),
        ("plates", facts.plates.to_string()),
        ("bands", facts.bands.to_string()),
        ("chains", facts.chains.to_string()),
        ("anchors", facts.anchors.join(", ")),
    ]
}
