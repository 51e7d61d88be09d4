//! The numbers beside a figure, as text: full figures, columns named in snake case with their unit.
//!
//! In: numbers, quantities, units. Out: a [`DataTable`].

/// A table of text: numbers in full, names of columns with their units.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct DataTable {
    /// Names of the columns.
    pub header: Vec<String>,
    /// The rows.
    pub rows: Vec<Vec<String>>,
}

/// A number of a data file: seven figures, so that rounding of the last bits never shows.
pub fn figure(value: f64) -> String {
    let short: f64 = format!("{value:.6e}").parse().unwrap_or(value);
    (short + 0.0).to_string()
}

/// A column's name: the quantity in snake case, its unit as suffix.
pub fn column(quantity: &str, unit: &str) -> String {
    let unit = match unit {
        "%" => "percent",
        "N·m" => "nm",
        "lbf·ft" => "lbf_ft",
        "µm" => "um",
        "deg/s" => "deg_s",
        "m/s" => "m_s",
        other => other,
    };
    let mut name = String::new();
    for letter in format!("{quantity} {unit}").to_lowercase().chars() {
        if letter.is_ascii_alphanumeric() {
            name.push(letter);
        } else if !name.ends_with('_') {
            name.push('_');
        }
    }
    name.trim_matches('_').to_owned()
}
