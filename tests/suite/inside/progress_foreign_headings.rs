//! What `src/progress/foreign_headings.rs` does, from inside.

use std::collections::BTreeMap;
use torquill::error::LogColumn;
use torquill::progress::foreign_headings::{TEXT, foreign, rows};

#[test]
fn law_every_foreign_heading_names_one_column() {
    let mut seen: BTreeMap<&str, &str> = BTreeMap::new();
    for [_, name, heading] in rows() {
        assert!(LogColumn::ALL.iter().any(|c| c.name() == name), "{name}");
        let first = seen.entry(heading).or_insert(name);
        assert_eq!(*first, name, "{heading}");
        assert_eq!(heading, heading.to_lowercase());
        assert!(foreign(heading).is_some(), "{heading}");
    }
    let lines = TEXT.lines().filter(|line| !line.starts_with('#'));
    assert_eq!(lines.count(), rows().count() + 1, "every row is read");
    assert_eq!(foreign("set"), None);
}
