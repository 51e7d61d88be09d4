//! Characters that cannot be shown: what a terminal obeys, what turns a line of text round, what no picture may hold.
//!
//! In: a character or a text. Out: whether it can be shown, or the first that cannot.

/// Whether the character of this number can be shown; line breaks and tabs can.
///
/// **Source.** Control characters and those of direction: Unicode, chapters 23.1 and 23.2; noncharacters: 23.7, which
/// XML 1.0 (2.2) keeps out of documents in part.
#[must_use]
pub const fn is_shown(code: u32) -> bool {
    let is_break = matches!(code, 0x09 | 0x0A | 0x0D);
    let is_control = code < 0x20 || (0x7F <= code && code <= 0x9F);
    let turns = matches!(code, 0x200E | 0x200F | 0x202A..=0x202E | 0x2066..=0x2069);
    let is_none = code & 0xFFFE == 0xFFFE || (0xFDD0 <= code && code <= 0xFDEF);
    is_break || !(is_control || turns || is_none || code == 0xFEFF)
}

/// The number of the first character of a text that cannot be shown.
#[must_use]
pub fn first_hidden(text: &str) -> Option<u32> {
    text.chars().map(u32::from).find(|code| !is_shown(*code))
}
