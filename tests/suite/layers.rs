//! The module map in DEVELOPERS.md and the imports of the source agree.

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};

/// Rooms that share a number may not use each other; `draw` may use only rooms 0 and 1.
fn map() -> BTreeMap<String, u32> {
    let text = fs::read_to_string("DEVELOPERS.md").expect("DEVELOPERS.md is part of the checkout");
    text.lines()
        .skip_while(|line| !line.starts_with("## The map"))
        .filter_map(|line| {
            let cells: Vec<&str> = line.split('|').map(str::trim).collect();
            let number = cells.get(1)?.parse().ok()?;
            Some((cells.get(2)?.trim_matches('`').to_owned(), number))
        })
        .collect()
}

fn sources(folder: &Path) -> Vec<PathBuf> {
    let mut files = Vec::new();
    for entry in fs::read_dir(folder).expect("src can be listed") {
        let path = entry.expect("entries can be read").path();
        if path.is_dir() {
            files.extend(sources(&path));
        } else if path.extension().is_some_and(|e| e == "rs") {
            files.push(path);
        }
    }
    files
}

fn room_of(path: &Path) -> String {
    let inner = path.strip_prefix("src").expect("path lies in src");
    let first = inner.components().next().expect("a file has a name");
    first
        .as_os_str()
        .to_string_lossy()
        .trim_end_matches(".rs")
        .to_owned()
}

#[test]
fn law_imports_run_one_way() {
    let map = map();
    assert!(map.len() > 10, "the table of rooms was not found");
    let mut wrong = Vec::new();
    let mut seen = std::collections::BTreeSet::new();
    for file in sources(Path::new("src")) {
        let room = room_of(&file);
        if room == "lib" || room == "main" {
            continue;
        }
        seen.insert(room.clone());
        let Some(own) = map.get(&room) else {
            wrong.push(format!("{room}: not in the map of DEVELOPERS.md"));
            continue;
        };
        let text = fs::read_to_string(&file).expect("source is text");
        for part in text.split("crate::").skip(1) {
            let used: String = part
                .chars()
                .take_while(|c| c.is_ascii_lowercase() || *c == '_')
                .collect();
            let Some(number) = map.get(&used) else {
                continue;
            };
            let allowed = used == room || (number < own && (room != "draw" || *number <= 1));
            if !allowed {
                wrong.push(format!("{}: uses {used}", file.display()));
            }
        }
    }
    for room in map.keys().filter(|room| !seen.contains(*room)) {
        wrong.push(format!("{room}: in the map, but not in src"));
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}
