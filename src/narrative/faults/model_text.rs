//! Words for: why a text is no record.

use super::Told;
use super::known_told::{did_you_mean, one_of};
use crate::error::{ExpectedType, FoundValue, Known, SyntaxFault, TextFault, TypeFault};
use crate::narrative::quantities::{expected_quantity, rounded};

const ONE_RECORD: &str = "a model file is one record in brackets: ( field: value, … )";
const KEEP_ONE: &str = "keep one of the two";
const SECOND: &str = "the second one";
const BRACKETS: &str = "records stand in ( ), maps in { }, lists in [ ]; look for a bracket or a value too many or too few";

/// The fault in words.
pub(super) fn told(fault: &TextFault) -> Told {
    match fault {
        TextFault::Empty { file } => {
            Told::new(format!("`{file}` holds no record")).hint(ONE_RECORD)
        }
        TextFault::TooManyParts { file, most } => Told::new(format!(
            "`{file}` holds more than {most} values, keys and items"
        ))
        .hint("the largest model file of this program has some thousands: is it the right file?"),
        TextFault::NoRecord => Told::new("no record begins here").hint(ONE_RECORD),
        TextFault::GivenTwice { path } => Told::new(format!("`{path}` is given twice"))
            .label(SECOND)
            .hint(KEEP_ONE),
        TextFault::FieldTwice { field } => Told::new(format!("the field `{field}` is given twice"))
            .label(SECOND)
            .hint(KEEP_ONE),
        TextFault::NotFinite { path, written } => Told::new(format!(
            "`{path}` is {written}, which is not a finite number"
        ))
        .label("expected a finite number"),
        TextFault::Unprintable { path, code } => Told::new(format!(
            "`{path}` holds the character U+{code:04X}, which cannot be shown"
        ))
        .hint("leave it out"),
        TextFault::TooLong {
            path,
            letters,
            most,
        } => Told::new(format!(
            "`{path}` is {letters} letters long; at most {most} are shown"
        ))
        .hint("shorten it"),
        TextFault::NoSuchField {
            field,
            record,
            known,
        } => no_such_field(field, record.as_deref(), known),
        TextFault::MissingField {
            path,
            field,
            others,
            record,
        } => missing(path, field, others, record.as_deref()),
        TextFault::NoSuchWord {
            word,
            choice,
            known,
        } => no_such_word(word, choice.as_deref(), known),
        TextFault::Type(fault) => of_type(fault),
        TextFault::NoComma { behind } => no_comma(*behind),
        TextFault::OpenQuote => {
            Told::new("a text is not closed on its line").hint("add the closing quote")
        }
        TextFault::Syntax { path, what, found } => syntax(path, what, found.as_deref()),
        TextFault::Refused { why } => Told::new(why.clone()),
    }
}

/// A value of another type.
fn of_type(fault: &TypeFault) -> Told {
    match fault {
        TypeFault::WrongType {
            path,
            expected,
            found,
        } => {
            let expected = expected_type(expected);
            Told::new(format!(
                "{}expected {expected}, found {}",
                before(path),
                found_value(found)
            ))
            .label(format!("expected {expected}"))
        }
        TypeFault::WrongCount { word, takes, found } => wrong_count(word, takes, *found),
        TypeFault::WrongLength { expected, found } => {
            Told::new(format!("expected {expected}, found {found} of them"))
        }
        TypeFault::OtherRecord { found, expected } => Told::new(format!(
            "`{found}` stands here instead of {}",
            record_name(Some(expected))
        ))
        .label("write the fields in plain brackets: ( field: value, … )"),
    }
}

fn no_such_field(field: &str, record: Option<&str>, known: &Known) -> Told {
    Told::new(format!("`{field}` is no field of {}", record_name(record)))
        .label("no such field")
        .hint(if known.near.is_empty() {
            format!("its fields are: {}", known.all.join(", "))
        } else {
            did_you_mean(known)
        })
}

fn no_comma(behind: bool) -> Told {
    let told = Told::new("expected a comma or a closing bracket");
    if behind {
        told.label("behind this")
    } else {
        told
    }
}

/// "`path`: ", or nothing for the whole file.
fn before(path: &str) -> String {
    if path.is_empty() {
        String::new()
    } else {
        format!("`{path}`: ")
    }
}

fn missing(path: &str, field: &str, others: &[String], record: Option<&str>) -> Told {
    let fields: Vec<&str> = std::iter::once(field)
        .chain(others.iter().map(String::as_str))
        .collect();
    let named: Vec<String> = fields.iter().map(|field| format!("`{field}`")).collect();
    let named = named.join(", ");
    let lacks = match others {
        [] => "lacks the field",
        _ => "lacks the fields",
    };
    let message = if path.is_empty() {
        format!("the file {lacks} {named}")
    } else {
        format!("`{path}` {lacks} {named}")
    };
    let label = format!("{} without {named}", record_name(record));
    let hints = fields.iter().filter_map(|field| special_field(field));
    let told = hints.fold(Told::new(message).label(label), Told::hint);
    let plain: Vec<&&str> = fields
        .iter()
        .filter(|field| special_field(field).is_none())
        .collect();
    if plain.is_empty() {
        return told;
    }
    let written: Vec<String> = plain.iter().map(|field| format!("{field}: …")).collect();
    let told = told.hint(format!("add `{}` inside its brackets", written.join(", ")));
    // Who changes one value of a muscle gives no more than that, and a new one all of them.
    let is_muscle = path.rsplit('.').nth(1) == Some("muscles") && others.len() >= 2;
    match path.rsplit('.').next().filter(|_| is_muscle) {
        Some(name) => told.hint(format!(
            "no muscle of the table is called `{name}`, so a new one is read: one that is there is changed under its own name"
        )),
        None => told,
    }
}

/// What to write for a field that needs more than a value.
fn special_field(field: &str) -> Option<String> {
    if field == "source" || field.ends_with("_source") {
        Some(format!(
            "say where the numbers come from: {field}: Published(\"key_of_sources.ron\", \"Table 1\"), or FromMemory, Derived, Assumed(\"reason\"), CommonPractice"
        ))
    } else if field == "handling" {
        Some(
            "copy it from a built-in lift that is handled alike, such as `torquill show movement biceps-curl`; or begin the file with extends: \"biceps-curl\" and name only what differs".to_owned(),
        )
    } else {
        None
    }
}

fn no_such_word(word: &str, choice: Option<&str>, known: &Known) -> Told {
    let (one, many) = kind_of_word(choice);
    let told = Told::new(format!("`{word}` is no {one}")).label(format!("expected a {one}"));
    one_of(known, many).into_iter().fold(told, Told::hint)
}

fn wrong_count(word: &str, takes: &str, found: usize) -> Told {
    let told = Told::new(format!(
        "`{word}` takes {takes} values in its brackets, found {found}"
    ));
    match word {
        "Published" | "FromMemory" | "Derived" => told
            .hint("write the key of sources.ron and the place: (\"holzbaur_2005\", \"Table 2\")"),
        _ => told,
    }
}

fn expected_type(expected: &ExpectedType) -> String {
    match expected {
        ExpectedType::Quantity(kind) => expected_quantity(*kind),
        ExpectedType::Number => "a number".to_owned(),
        ExpectedType::WholeNumber => "a whole number".to_owned(),
        ExpectedType::Boolean => "true or false".to_owned(),
        ExpectedType::Other(words) => words.clone(),
    }
}

fn found_value(found: &FoundValue) -> String {
    match found {
        FoundValue::Number(marked) => format!("the number {marked}"),
        FoundValue::Text(marked) => format!("the text {marked}"),
        FoundValue::Nothing => "nothing".to_owned(),
        FoundValue::List => "a list".to_owned(),
        FoundValue::Other(words) => words.clone(),
    }
}

fn syntax(path: &str, what: &SyntaxFault, found: Option<&str>) -> Told {
    if let (SyntaxFault::DecimalComma { meant }, Some(found)) = (what, found) {
        return Told::new(format!(
            "{}{found} has a comma before its decimals",
            before(path)
        ))
        .hint(format!("decimals stand behind a point: {meant}"));
    }
    if let SyntaxFault::NoWord { words } = what {
        let meant = found.and_then(|found| {
            let bare = found.trim_matches('"');
            words.iter().find(|word| *word == bare)
        });
        let found = found.map_or("this", |found| found);
        let told = Told::new(format!(
            "{}{found} begins with none of the words that can stand here",
            before(path)
        ));
        return told.hint(match meant {
            Some(word) => format!("write it without quotes: {word}"),
            None => format!("begin with one of: {}", words.join(", ")),
        });
    }
    let (message, hint) = broken_grammar(what);
    let percent = found.and_then(|found| found.trim_matches('"').strip_suffix('%'));
    let share: Option<f64> = percent.and_then(|percent| percent.trim().parse().ok());
    let share = share.filter(|_| *what == SyntaxFault::Number);
    let share = share.map(|percent| {
        format!(
            "write the share as a number: {}",
            rounded(percent / 100.0, 4)
        )
    });
    let hint = share.as_deref().unwrap_or(hint);
    let found = found.map(|found| format!(", found {found}"));
    let told = Told::new(format!(
        "{}{message}{}",
        before(path),
        found.unwrap_or_default()
    ));
    if hint.is_empty() {
        told
    } else {
        told.hint(hint)
    }
}

/// A fault of grammar: what is wrong, and what to look for.
fn broken_grammar(what: &SyntaxFault) -> (&str, &'static str) {
    match what {
        SyntaxFault::EndsEarly => ("the file ends in the middle of a record", BRACKETS),
        SyntaxFault::Colon => ("expected `:`", "write `name: value`"),
        SyntaxFault::MapBegins => ("expected `{`", "a map is { name: value, … }"),
        SyntaxFault::MapEnds => ("expected `}`", BRACKETS),
        SyntaxFault::ListBegins => ("expected `[`", "a list is [ value, … ]"),
        SyntaxFault::ListEnds => ("expected `]`", BRACKETS),
        SyntaxFault::RecordBegins => ("expected `(`", "a record is ( field: value, … )"),
        SyntaxFault::RecordEnds => ("expected `)`", BRACKETS),
        SyntaxFault::Text => (
            "expected a text in quotes",
            "put double quotes round it; keys of maps need them too, such as {\"grip_width\": …}",
        ),
        SyntaxFault::TextEnds => ("a text is not closed", "add the closing quote"),
        SyntaxFault::Boolean => ("expected true or false", ""),
        SyntaxFault::Number | SyntaxFault::DecimalComma { .. } => ("expected a number", ""),
        SyntaxFault::WholeNumber => ("expected a whole number", ""),
        SyntaxFault::Name => (
            "expected a name",
            "names begin with a letter and hold letters, digits and `_`",
        ),
        SyntaxFault::Trailing => (
            "something stands behind the end of the record",
            "a model file holds one record; look for a bracket that is closed too early",
        ),
        SyntaxFault::CommentEnds => ("a comment `/*` is not closed", "add `*/`"),
        SyntaxFault::NoWord { .. } => ("expected a word", ""),
        SyntaxFault::TooDeep => ("brackets are nested too deeply", ""),
        SyntaxFault::Other(words) => (words, ""),
    }
}

/// What an editor of files calls a record.
fn record_name(record: Option<&str>) -> String {
    let known = match record {
        Some("LifterRecord") => "a lifter",
        Some("SegmentTable") => "a segment table",
        Some("SegmentRow") => "a segment's row",
        Some("MuscleTable") => "a muscle table",
        Some("Muscle") => "a muscle",
        Some("MomentArm") => "a moment arm",
        Some("Reference") => "a reference pose",
        Some("Curves") => "a set of curves",
        Some("Movement") => "a movement",
        Some("Technique") => "a technique parameter",
        Some("Handling") => "the handling of a lift",
        Some("SweepRecord") => "a sweep",
        Some("ArmRecord") => "a hand's path",
        Some("Band" | "BandRecord") => "a band",
        Some("Chain" | "ChainRecord") => "a chain",
        Some("Publication") => "a publication",
        Some("StanceRecord") => "a stance",
        Some("LegPressRecord") => "a leg press",
        Some("BridgeRecord") => "a bridge",
        Some("InHands") => "a bar in the hands",
        Some("OnBack") => "a bar on the back",
        Some("BackPlace") => "a place on the back",
        Some("LiftOff") => "a style of lifting from the floor",
        Some("Feet") => "the place of the feet",
        Some("ElbowPlace") => "the place of the elbow",
        Some("HandPlace") => "a place of the hand",
        Some("Protocol") => "a protocol",
        Some("Breadths") => "a table's breadths",
        Some("PassiveJoint") => "the resistance of a joint",
        Some("ShoulderLine") => "a line across the shoulder",
        Some("Compliant") => "a tendon that gives",
        Some("Gym" | "GymFile") => "a gym",
        Some("Setup" | "SetupFile") => "a setup",
        Some("Dimensions") => "a band's dimensions",
        _ => "this record",
    };
    known.to_owned()
}

/// What an editor of files calls a word of a choice, and several of them.
fn kind_of_word(choice: Option<&str>) -> (&'static str, &'static str) {
    match choice {
        Some("Dof") => ("joint", "joints"),
        Some("SegmentName") => ("segment", "segments"),
        Some("Source") => ("kind of source", "kinds of source"),
        Some("CarrierRecord") => ("carrier", "carriers"),
        Some("PathRecord") => ("kind of path", "kinds of path"),
        Some("ArmShape") => ("shape of a moment arm", "shapes of a moment arm"),
        Some("TechniqueValue") => ("kind of technique value", "kinds of technique value"),
        Some("SweptLimb") => ("limb", "limbs"),
        Some("BodyPlace" | "Posture") => ("posture", "postures"),
        Some("Measure") => ("measure", "measures"),
        Some("Sides") => ("word for the sides", "words here"),
        Some("ArmPlace") => ("place of the hand", "places"),
        Some("BarPlace") => ("place of the bar", "places"),
        Some("Sex") => ("sex in the tables", "words here"),
        Some("Training") => ("training status", "states of training"),
        _ => ("word that fits here", "words here"),
    }
}
