//! What the columns of tables and the keys of JSON mean: the dictionary of `models/DATA.md`, read.
//!
//! In: a column's name. Out: its unit and meaning.

/// The dictionary as it stands in the repository.
const DICTIONARY: &str = include_str!("../../models/DATA.md");

/// Unit and meaning of a column.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct ColumnMeaning {
    /// The unit; a dash for none.
    pub unit: &'static str,
    /// The meaning.
    pub meaning: &'static str,
}

/// What a column means: of `moment_arm_m.elbow` what stands at `moment_arm_m`.
#[must_use]
pub(super) fn column_meaning(column: &str) -> Option<ColumnMeaning> {
    let name = column.split('.').next().unwrap_or(column);
    let quoted = format!("`{name}`");
    DICTIONARY.lines().find_map(|line| {
        let mut cells = line.trim_matches('|').split('|').map(str::trim);
        let is_named = cells.next() == Some(quoted.as_str());
        is_named.then_some(ColumnMeaning {
            unit: cells.next()?,
            meaning: cells.next()?,
        })
    })
}
