//! A command's words as a person types them.
//!
//! In: words. Out: one line for a shell.

/// Words as a person types them in a shell.
#[must_use]
pub fn typed_words(words: &[String]) -> String {
    let quoted: Vec<String> = words.iter().map(|word| quoted(word)).collect();
    quoted.join(" ")
}

pub fn quoted(word: &str) -> String {
    let is_plain = |sign: char| sign.is_ascii_alphanumeric() || "-_=+%.,:/@".contains(sign);
    if !word.is_empty() && word.chars().all(is_plain) {
        word.to_owned()
    } else if word.contains(['"', '$', '`', '\\', '!']) {
        format!("'{}'", word.replace('\'', "'\\''"))
    } else {
        format!("\"{word}\"")
    }
}
