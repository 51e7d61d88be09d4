//! What `src/library/own_files.rs` does, from inside.

use std::fs;
use std::path::{Path, PathBuf};
use torquill::library::content_hash::hash_of;
use torquill::library::own_files::model_hash;

#[test]
fn law_the_hash_of_abc_is_the_standards() {
    // FIPS 180-4, example of SHA-256: the message "abc".
    let expected = "sha256:ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";
    assert_eq!(hash_of(b"abc"), expected);
}

/// Every file of numbers in the checkout by its path from `models`.
fn files_of(folder: &Path) -> Vec<(String, Vec<u8>)> {
    let entries = fs::read_dir(folder).expect("a folder of models");
    let paths = entries.map(|entry| entry.expect("an entry").path());
    paths
        .flat_map(|path| {
            let ending = path.extension().and_then(|ending| ending.to_str());
            if path.is_dir() {
                files_of(&path)
            } else if matches!(ending, Some("ron" | "csv")) {
                let below = path.strip_prefix(models()).expect("below models");
                let parts: Vec<_> = below.iter().map(|part| part.to_string_lossy()).collect();
                vec![(parts.join("/"), fs::read(&path).expect("a model file"))]
            } else {
                Vec::new()
            }
        })
        .collect()
}

fn models() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("models")
}

#[test]
fn law_the_hash_is_that_of_the_files_compiled_in() {
    let files = files_of(&models());
    assert!(files.len() > 50, "{}", files.len());
    let of = |files: &[(String, Vec<u8>)]| {
        let lines = files
            .iter()
            .map(|(path, bytes)| format!("{path} {}\n", hash_of(bytes)));
        let mut lines: Vec<String> = lines.collect();
        lines.sort();
        hash_of(lines.concat().as_bytes())
    };
    assert_eq!(of(&files), model_hash());
    let mut changed = files.clone();
    changed[0].1 = b"other".to_vec();
    assert_ne!(of(&changed), model_hash());
    assert_ne!(of(&files[1..]), model_hash());
}
