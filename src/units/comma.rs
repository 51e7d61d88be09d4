//! What a comma in a number may mean: decimals, or thousands.
//!
//! In: a text with a comma in its number. Out: the text as it is to be written for each meaning that is read again.

/// The texts that a number with commas may stand for.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct CommaMeanings {
    /// The comma parts decimals.
    pub decimal: Option<String>,
    /// The commas, or the points before one, part thousands.
    pub thousands: Option<String>,
}

/// The meanings of the commas in the first number of a text that `is_read` accepts.
///
/// A comma with three digits behind it has two meanings, "1,000 kg"; any other one, "12,5 kg".
#[must_use]
pub fn comma_meanings(text: &str, is_read: impl Fn(&str) -> bool) -> CommaMeanings {
    let text = text.trim();
    let begins = text.find(|c: char| c.is_ascii_digit()).unwrap_or(0);
    let is_of_number = |c: char| c.is_ascii_digit() || c == ',' || c == '.';
    let length = text[begins..].find(|c| !is_of_number(c));
    let ends = length.map_or(text.len(), |length| begins + length);
    let (sign, number, behind) = (&text[..begins], &text[begins..ends], &text[ends..]);
    let written = |plain: String| {
        let value: f64 = plain.parse().ok()?;
        let text = format!("{sign}{value}{behind}");
        is_read(&text).then_some(text)
    };
    let is_decimal = number.matches(',').count() == 1 && !number.contains('.');
    CommaMeanings {
        decimal: Some(number.replacen(',', ".", 1))
            .filter(|_| is_decimal)
            .and_then(written),
        thousands: without_thousands(number).and_then(written),
    }
}

/// The number without marks of thousands, where all its groups have three digits: "1,000", "1,000.5", "1.000,5".
fn without_thousands(number: &str) -> Option<String> {
    let (mark, point) = match (number.find(','), number.find('.')) {
        (Some(comma), Some(point)) if point < comma => ('.', ','),
        _ => (',', '.'),
    };
    let (whole, decimals) = match number.split_once(point) {
        Some((whole, decimals)) => (whole, Some(decimals)),
        None => (number, None),
    };
    let groups: Vec<&str> = whole.split(mark).collect();
    let is_number = |digits: &str| !digits.is_empty() && digits.chars().all(|c| c.is_ascii_digit());
    let (first, others) = groups.split_first()?;
    let are_groups = is_number(first)
        && (1..=3).contains(&first.len())
        && !first.starts_with('0')
        && !others.is_empty()
        && others
            .iter()
            .all(|group| group.len() == 3 && is_number(group))
        && decimals.is_none_or(is_number);
    are_groups.then(|| groups.concat() + &decimals.map_or_else(String::new, |d| format!(".{d}")))
}
