//! What differs between the making of a file and its making again, one line each.
//!
//! In: names and versions. Out: text for standard error.

/// Another version of the program, or of what its keys mean.
#[must_use]
pub fn other_version(then: &str, now: &str) -> String {
    format!("the file was made by version {then}, this is {now}: numbers may differ")
}

/// Other built-in model files.
#[must_use]
pub fn other_model() -> String {
    "the file was made with other built-in model files than these: numbers differ".to_owned()
}

/// A model file of the user's that is another, or was not there.
#[must_use]
pub fn other_file(name: &str) -> String {
    format!("`{name}` is not what it was when the file was made")
}

/// A file that the making read and that is not there now, or the other way round.
#[must_use]
pub fn only_once(name: &str, was_there: bool) -> String {
    if was_there {
        format!("`{name}` was there when the file was made and is not now")
    } else {
        format!("`{name}` was not there when the file was made")
    }
}

/// A number of the file that its command does not print, in a row of a table or on a line of JSON.
#[must_use]
pub fn other_numbers(row: Option<usize>, then: &str, now: &str) -> String {
    let place = match row {
        None => String::new(),
        Some(0) => "in the heads of its columns ".to_owned(),
        Some(row) => format!("in row {row} of its table "),
    };
    format!(
        "the file does not say what its command prints now: {place}it has `{then}`, and now that is `{now}`; it may have been \
         changed after it was made"
    )
}
