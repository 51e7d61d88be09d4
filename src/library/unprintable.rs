//! Characters that cannot be shown: what a terminal obeys, what turns a line of text round, what no picture may hold.
//!
//! In: a text as a model file writes it, escapes and all. Out: the first such character.

use crate::bounds::is_shown;

/// The number of the first character in a written text that cannot be shown, escaped or not; line breaks and tabs can.
#[must_use]
pub fn first_unprintable(written: &str) -> Option<u32> {
    let mut rest = written.chars();
    while let Some(sign) = rest.next() {
        let code = match sign {
            '\\' => escaped(&mut rest),
            plain => Some(u32::from(plain)),
        };
        if let Some(code) = code.filter(|code| !is_shown(*code)) {
            return Some(code);
        }
    }
    None
}

/// The number of the first line break in a written text, escaped or not.
#[must_use]
pub(super) fn first_break(written: &str) -> Option<u32> {
    let mut rest = written.chars();
    while let Some(sign) = rest.next() {
        let breaks = match sign {
            '\\' => matches!(rest.next()?, 'n' | 'r'),
            plain => matches!(plain, '\n' | '\r'),
        };
        if breaks {
            return Some(u32::from('\n'));
        }
    }
    None
}

/// The number of an escaped character behind its backslash; `None` for one that stands for itself.
fn escaped(rest: &mut std::str::Chars<'_>) -> Option<u32> {
    let digits: String = match rest.next()? {
        '0' => return Some(0),
        'x' => rest.by_ref().take(2).collect(),
        'u' => {
            let braced = rest.by_ref().skip(1);
            braced.take_while(|sign| *sign != '}').collect()
        }
        _ => return None,
    };
    u32::from_str_radix(&digits, 16).ok()
}
