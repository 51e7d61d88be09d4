//! What the project is built on: licences that anybody may use, and each crate once.

use serde_json::Value;
use std::collections::{BTreeMap, BTreeSet};
use std::process::Command;

/// Licences by their SPDX names that let anybody use, change and pass on the program.
const FREE: &[&str] = &[
    "0BSD",
    "Apache-2.0",
    "BSD-2-Clause",
    "BSD-3-Clause",
    "BSL-1.0",
    "CC0-1.0",
    "LLVM-exception",
    "MIT",
    "MIT-0",
    "OFL-1.1",
    "Unicode-3.0",
    "Unlicense",
    "Zlib",
];

/// Crates in more than one version, and who asks for that.
const TWICE: &[(&str, &str)] = &[
    (
        "glam",
        "linear algebra names several as options, none is built",
    ),
    (
        "miniz_oxide",
        "PNG and the workbook's zip are at different ones",
    ),
    ("syn", "derive macros move to its next version one by one"),
];

/// All packages of the lock file with what each says of itself.
fn packages() -> Vec<Value> {
    let cargo = std::env::var("CARGO").unwrap_or_else(|_| "cargo".to_owned());
    let told = Command::new(cargo)
        .args(["metadata", "--format-version", "1", "--locked"])
        .current_dir(env!("CARGO_MANIFEST_DIR"))
        .output()
        .expect("cargo is there, since it runs this test");
    let words = String::from_utf8_lossy(&told.stderr);
    assert!(told.status.success(), "{words}");
    let all: Value = serde_json::from_slice(&told.stdout).expect("cargo writes JSON");
    all["packages"].as_array().expect("packages").clone()
}

/// Whether an expression leaves a free licence to choose: one of several with OR, all of them where AND stands too.
fn is_free(expression: &str) -> bool {
    let mut named = expression
        .split(|c: char| c.is_whitespace() || "()/".contains(c))
        .filter(|word| !word.is_empty() && !["OR", "AND", "WITH"].contains(word))
        .peekable();
    let is_known = |word: &str| FREE.contains(&word);
    named.peek().is_some()
        && match expression.contains(" AND ") {
            true => named.all(is_known),
            false => named.any(is_known),
        }
}

#[test]
fn law_expressions_of_licences_are_read() {
    for (expression, free) in [
        ("MIT OR Apache-2.0 OR LGPL-2.1-or-later", true),
        ("(Apache-2.0 OR MIT) AND BSD-3-Clause", true),
        ("MIT AND GPL-3.0-only", false),
        ("GPL-3.0-only", false),
        ("", false),
    ] {
        assert_eq!(is_free(expression), free, "{expression}");
    }
}

#[test]
fn law_dependencies_are_free_and_there_once() {
    let mut versions: BTreeMap<String, BTreeSet<String>> = BTreeMap::new();
    let all = packages();
    assert!(all.len() > 100, "{}", all.len());
    for package in &all {
        let text = |key: &str| package[key].as_str().unwrap_or_default().to_owned();
        let (name, licence) = (text("name"), text("license"));
        assert!(is_free(&licence), "{name}: `{licence}`");
        versions.entry(name).or_default().insert(text("version"));
    }
    let built_for_all = |name: &str| !name.starts_with("windows") && !name.starts_with("wasi");
    for (name, versions) in versions.iter().filter(|(name, _)| built_for_all(name)) {
        let known = TWICE.iter().any(|(twice, _)| twice == name);
        assert!(versions.len() == 1 || known, "{name}: {versions:?}");
    }
}
