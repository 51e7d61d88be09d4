//! A command's words as a person types them.
//!
//! In: words. Out: one line for a shell, and the words back.

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

/// The words of a line that [`typed_words`] wrote, however it quoted them; `None` for a line with a quote that is not closed.
#[must_use]
pub fn words_typed(line: &str) -> Option<Vec<String>> {
    let mut words = Vec::new();
    let mut word: Option<String> = None;
    let mut signs = line.chars();
    while let Some(sign) = signs.next() {
        match sign {
            ' ' => words.extend(word.take()),
            '"' | '\'' => {
                let within = word.get_or_insert_default();
                loop {
                    match signs.next()? {
                        end if end == sign => break,
                        inside => within.push(inside),
                    }
                }
            }
            '\\' => word.get_or_insert_default().push(signs.next()?),
            plain => word.get_or_insert_default().push(plain),
        }
    }
    words.extend(word);
    Some(words)
}
