//! The JSON of every command: its keys in their order, each with what it holds.
//!
//! `tests/json_keys/NAME.txt` is what a call of that name answers; `UPDATE=1` rewrites them. A key that goes or
//! changes what it holds breaks the scripts of users, so it is told in `README.md` and not renewed in passing.

use crate::calling::json;
use serde_json::Value;
use std::collections::BTreeSet;
use std::fmt::Write;
use std::path::Path;

/// A name and the call it stands for.
#[rustfmt::skip]
const CALLS: &[(&str, &[&str])] = &[
    ("movements", &["movements"]),
    ("sources", &["sources"]),
    ("curve", &["curve", "bench-press"]),
    ("curve_load", &["curve", "bench-press", "--load", "80 kg", "--band", "loop-29mm:1"]),
    ("curve_sweep_detail", &["curve", "biceps-curl", "--load", "15 kg", "--detail"]),
    ("curve_stance_detail", &["curve", "squat", "--load", "80 kg", "--detail"]),
    ("vary", &["vary", "bench-press", "--load", "60 kg", "--param", "technique.grip_width", "--values", "60 cm,81 cm"]),
    ("vary_map", &["vary", "biceps-curl", "--param", "segments.forearm.length", "--values", "-5%,+5%", "--param", "technique.shoulder_angle", "--values", "-20 deg,20 deg"]),
    ("vary_rank", &["vary", "biceps-curl", "--rank"]),
    ("parameters", &["parameters", "bench-press"]),
    ("pick", &["pick", "bench-press", "--lifter", "heavy-lifter", "--gym", "college-weight-room"]),
    ("rep", &["rep", "overhead-press", "--load", "90%"]),
    ("rep_sweep", &["rep", "biceps-curl", "--load", "90%"]),
    ("rep_versus_plain", &["rep", "bench-press", "--load", "80%", "--band", "loop-22mm:1", "--versus-plain"]),
    ("max", &["max", "bench-press", "--velocities", "--eccentric", "3 s", "--to-load", "102.5 kg"]),
    ("fit", &["fit", "--name", "a", "--sex", "woman", "--mass", "70 kg", "--height", "168 cm", "--lift", "bench-press=50 kg"]),
    ("max_people", &["max", "squat", "--people", "12"]),
    ("curve_people", &["curve", "bench-press", "--people", "6"]),
    ("plan", &["plan", "bench-press", "--one-rm", "140 kg", "--training-months", "48", "--method", "clusters"]),
    ("plan_weeks", &["plan", "bench-press", "--log", "stalled", "--training-months", "48", "--method", "pyramid", "--weeks", "2"]),
    ("progress", &["progress", "--log", "stalled"]),
];

/// Keys in the order in which they are first met, each with all that it holds.
#[derive(Default)]
struct Keys(Vec<(String, BTreeSet<&'static str>)>);

impl Keys {
    fn walk(&mut self, path: &str, value: &Value) {
        match value {
            Value::Object(map) => {
                self.note(path, "object");
                for (key, inner) in map {
                    self.walk(&format!("{path}.{}", general(path, key)), inner);
                }
            }
            Value::Array(list) => {
                self.note(path, "list");
                for inner in list {
                    self.walk(&format!("{path}[]"), inner);
                }
            }
            Value::String(_) => self.note(path, "text"),
            Value::Number(_) => self.note(path, "number"),
            Value::Bool(_) => self.note(path, "true or false"),
            Value::Null => self.note(path, "null"),
        }
    }

    fn note(&mut self, path: &str, kind: &'static str) {
        match self.0.iter_mut().find(|(known, _)| known == path) {
            Some((_, kinds)) => {
                kinds.insert(kind);
            }
            None => self.0.push((path.to_owned(), BTreeSet::from([kind]))),
        }
    }

    fn text(&self) -> String {
        let mut text = String::new();
        for (path, kinds) in &self.0 {
            let kinds: Vec<&str> = kinds.iter().copied().collect();
            let _ = writeln!(text, "{path}: {}", kinds.join(" or "));
        }
        text
    }
}

/// Publications and joints are named by their keys; a muscle's arms stand under the joints it crosses, forces under muscles.
fn general<'a>(path: &str, key: &'a str) -> &'a str {
    let is_data = path == "$sources"
        || path.ends_with("moment_arm_m")
        || path.ends_with("muscle_forces_n")
        || path.contains(".weights.");
    if is_data { "*" } else { key }
}

#[test]
fn regress_every_key_of_the_json_is_where_it_was() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/json_keys");
    let update = std::env::var_os("UPDATE").is_some();
    let mut wrong = Vec::new();
    for (name, arguments) in CALLS {
        let root = if *name == "sources" { "$sources" } else { "$" };
        let mut keys = Keys::default();
        keys.walk(root, &json(arguments));
        let path = folder.join(format!("{name}.txt"));
        if update {
            std::fs::write(&path, keys.text()).expect("the folder can be written");
        } else if std::fs::read_to_string(&path).unwrap_or_default() != keys.text() {
            wrong.push(format!("{name}:\n{}", keys.text()));
        }
    }
    assert!(
        wrong.is_empty(),
        "other keys than pinned (UPDATE=1 rewrites):\n{}",
        wrong.join("\n")
    );
}
