//! Has the program rebuilt when a file of `models/` is added or removed (the folder is compiled in), and works out the
//! hash of its files, so that a run need not.

#[path = "src/library/content_hash.rs"]
mod content_hash;

use content_hash::hash_of;
use std::path::Path;

fn main() {
    println!("cargo:rerun-if-changed=models");
    println!("cargo:rerun-if-changed=build.rs");
    println!("cargo:rerun-if-changed=src/library/content_hash.rs");
    println!("cargo:rustc-env=TORQUILL_MODEL_HASH={}", model_hash());
}

/// The hash of a list of every file's path and hash, in the order of the paths.
fn model_hash() -> String {
    let mut files = Vec::new();
    gather(Path::new("models"), &mut files);
    files.sort();
    hash_of(files.concat().as_bytes())
}

/// A line for every file of numbers in a folder and below it: its path from `models/` on and its hash.
fn gather(folder: &Path, files: &mut Vec<String>) {
    let entries = std::fs::read_dir(folder).expect("the folder of models is part of the checkout");
    for entry in entries {
        let path = entry.expect("the folder can be listed").path();
        let is_numbers = path
            .extension()
            .is_some_and(|ending| ending == "ron" || ending == "csv");
        if path.is_dir() {
            gather(&path, files);
        } else if is_numbers {
            let inside = path.strip_prefix("models").expect("it is below the folder");
            let parts: Vec<_> = inside.iter().map(|part| part.to_string_lossy()).collect();
            let bytes = std::fs::read(&path).expect("a model file can be read");
            files.push(format!("{} {}\n", parts.join("/"), hash_of(&bytes)));
        }
    }
}
