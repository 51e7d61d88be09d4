//! The room that text takes, measured from the bundled font, and lines broken to a width.
//!
//! In: text, size, face. Out: widths and heights in pixels, wrapped lines. The font is Inter 4
//! (Regular and Bold, a subset with Latin, Greek and mathematical signs) under the SIL Open Font
//! License 1.1, whose text lies beside the font files.

use ab_glyph::{Font, FontRef, PxScale, ScaleFont};
use plotters::style::FontStyle;
use std::sync::OnceLock;

/// Name of the bundled family, as SVG text names it.
pub const FAMILY: &str = "Inter";

/// The bundled regular face.
pub const REGULAR_TTF: &[u8] = include_bytes!("fonts/Inter-Regular.ttf");

/// The bundled bold face.
pub const BOLD_TTF: &[u8] = include_bytes!("fonts/Inter-Bold.ttf");

/// Height of ascender plus descender over the em: (1984 + 494) / 2048, table `hhea` of the bundled
/// files. The measuring code takes this height as its "size".
const LINE_OVER_EM: f64 = 2478.0 / 2048.0;

/// Height of capitals over the em: 1490 / 2048, table `OS/2` of the bundled files.
const CAPITALS_OVER_EM: f64 = 1490.0 / 2048.0;

/// Rise above the baseline kept free, over the em: capitals and a little for brackets and accents.
const RISE_OVER_EM: f64 = 0.79;

/// Fall below the baseline kept free, over the em: descenders of "g" and brackets.
const FALL_OVER_EM: f64 = 0.21;

/// Type size at which widths are measured; widths come in whole pixels, so 1/2000 em is kept.
const MEASURING_EM: f64 = 2000.0;

/// A weight of the bundled family.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Face {
    /// Normal weight.
    Regular,
    /// Bold.
    Bold,
}

impl Face {
    pub(super) fn style(self) -> FontStyle {
        match self {
            Self::Regular => FontStyle::Normal,
            Self::Bold => FontStyle::Bold,
        }
    }
}

/// The bundled face, read once.
fn font(face: Face) -> &'static FontRef<'static> {
    static REGULAR: OnceLock<FontRef<'static>> = OnceLock::new();
    static BOLD: OnceLock<FontRef<'static>> = OnceLock::new();
    let (read, bytes) = match face {
        Face::Regular => (&REGULAR, REGULAR_TTF),
        Face::Bold => (&BOLD, BOLD_TTF),
    };
    read.get_or_init(|| FontRef::try_from_slice(bytes).expect("the-bundled-font"))
}

/// Width of a line of text in pixels, by the advance widths of the bundled font; its pairs are not kerned,
/// so a hair on the safe side.
#[must_use]
pub fn width(text: &str, size: f64, face: Face) -> f64 {
    let advances = text.chars().map(|letter| advance(letter, face));
    f64::from(advances.sum::<f32>().trunc()) * size / MEASURING_EM
}

/// Advance width of a letter at the measuring size; those of ASCII are looked up once.
fn advance(letter: char, face: Face) -> f32 {
    const KEPT: usize = 128;
    static REGULAR: OnceLock<[f32; KEPT]> = OnceLock::new();
    static BOLD: OnceLock<[f32; KEPT]> = OnceLock::new();
    let looked_up = |letter: char| {
        let scale = PxScale::from((MEASURING_EM * LINE_OVER_EM) as f32);
        let font = font(face).as_scaled(scale);
        font.h_advance(font.glyph_id(letter))
    };
    let kept = match face {
        Face::Regular => &REGULAR,
        Face::Bold => &BOLD,
    };
    let ascii = || std::array::from_fn(|code| looked_up(char::from(code as u8)));
    let known = kept.get_or_init(ascii).get(letter as usize);
    known.copied().unwrap_or_else(|| looked_up(letter))
}

/// Room above the baseline in pixels.
#[must_use]
pub fn rise(size: f64) -> f64 {
    RISE_OVER_EM * size
}

/// Room below the baseline in pixels.
#[must_use]
pub fn fall(size: f64) -> f64 {
    FALL_OVER_EM * size
}

/// Height of capitals and digits in pixels.
#[must_use]
pub fn capitals(size: f64) -> f64 {
    CAPITALS_OVER_EM * size
}

/// Distance from one baseline to the next in pixels.
#[must_use]
pub fn line_step(size: f64) -> f64 {
    1.24 * size
}

/// Breaks a text at its spaces so that each line fits into `most` pixels.
///
/// A single word wider than that is broken inside, so every line fits as long as one letter does.
#[must_use]
pub fn wrap(text: &str, size: f64, face: Face, most: f64) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    let mut line = String::new();
    for word in bound_words(text) {
        let word = word.as_str();
        let longer = if line.is_empty() {
            word.to_owned()
        } else {
            format!("{line} {word}")
        };
        if width(&longer, size, face) <= most {
            line = longer;
            continue;
        }
        if !line.is_empty() {
            lines.push(std::mem::take(&mut line));
        }
        line = push_pieces(word, size, face, most, &mut lines);
    }
    if !line.is_empty() {
        lines.push(line);
    }
    lines
}

/// Letters of the longest unit that stays with its number.
const UNIT_LETTERS: usize = 5;

/// The words of a text, a number with the unit behind it as one: no line ends in "64" and the next begins with "mm".
fn bound_words(text: &str) -> Vec<String> {
    let mut words: Vec<String> = Vec::new();
    // A no-break space binds as a letter does.
    let breaks = |letter: char| letter.is_whitespace() && letter != '\u{a0}';
    for word in text.split(breaks).filter(|word| !word.is_empty()) {
        match words.last_mut() {
            Some(last) if last.ends_with(is_digit) && is_unit(word) => {
                last.push(' ');
                last.push_str(word);
            }
            _ => words.push(word.to_owned()),
        }
    }
    words
}

fn is_unit(word: &str) -> bool {
    word.chars().count() <= UNIT_LETTERS && !word.starts_with(is_digit)
}

fn is_digit(letter: char) -> bool {
    letter.is_ascii_digit()
}

/// Breaks a word that is wider than a line; whole lines go to `lines`, the rest is returned.
///
/// A word of letters alone is broken into pieces of like length with hyphens, as a reader expects; numbers and paths as
/// they come, since a hyphen would belong to them.
fn push_pieces(word: &str, size: f64, face: Face, most: f64, lines: &mut Vec<String>) -> String {
    if width(word, size, face) > most
        && let Some(mut pieces) = hyphened(word, size, face, most)
    {
        let last = pieces.pop().unwrap_or_default();
        lines.extend(pieces);
        return last;
    }
    let mut piece = String::new();
    for letter in word.chars() {
        let mut longer = piece.clone();
        longer.push(letter);
        if !piece.is_empty() && width(&longer, size, face) > most {
            lines.push(std::mem::take(&mut piece));
            piece.push(letter);
        } else {
            piece = longer;
        }
    }
    piece
}

/// A word of letters as the fewest pieces of like length that fit, a hyphen behind each but the last.
fn hyphened(word: &str, size: f64, face: Face, most: f64) -> Option<Vec<String>> {
    /// Fewer letters than this are no piece of a word.
    const LEAST_LETTERS: usize = 3;
    let letters: Vec<char> = word.chars().collect();
    if !letters.iter().all(|letter| letter.is_alphabetic()) {
        return None;
    }
    (2..=letters.len() / LEAST_LETTERS).find_map(|count| {
        let ends = (0..=count).map(|piece| piece * letters.len() / count);
        let ends: Vec<usize> = ends.collect();
        let pieces: Vec<String> = ends
            .windows(2)
            .map(|ends| {
                let hyphen = if ends[1] < letters.len() { "-" } else { "" };
                letters[ends[0]..ends[1]].iter().collect::<String>() + hyphen
            })
            .collect();
        let fits = pieces.iter().all(|piece| width(piece, size, face) <= most);
        fits.then_some(pieces)
    })
}

/// The text if it fits, else its beginning with an ellipsis; empty if not even that fits.
#[must_use]
pub fn shortened(text: &str, size: f64, face: Face, most: f64) -> String {
    if width(text, size, face) <= most {
        return text.to_owned();
    }
    let letters: Vec<char> = text.chars().collect();
    for kept in (1..letters.len()).rev() {
        let start: String = letters[..kept].iter().collect();
        let short = format!("{}…", start.trim_end());
        if width(&short, size, face) <= most {
            return at_a_word(&start, short);
        }
    }
    String::new()
}

/// The cut text, cut at a space instead if that loses little.
fn at_a_word(start: &str, short: String) -> String {
    match start.rfind(' ') {
        Some(space) if 4 * space > 3 * start.len() => format!("{}…", start[..space].trim_end()),
        _ => short,
    }
}

/// A text fitted into a box of lines: the size that was needed and the lines.
#[derive(Debug, Clone, PartialEq)]
pub struct Fitted {
    /// Type size in pixels.
    pub size: f64,
    /// The lines.
    pub lines: Vec<String>,
}

/// Fits a text into at most `most_lines` lines of width `most`, first by making it smaller down to
/// `least_size`, then by cutting it off with an ellipsis. Two lines are made about equally long.
#[must_use]
pub fn fit(
    text: &str,
    size: f64,
    least_size: f64,
    face: Face,
    most: f64,
    most_lines: usize,
) -> Fitted {
    let mut now = size;
    loop {
        let lines = wrap(text, now, face, most);
        if lines.len() <= most_lines {
            let lines = balanced(text, now, face, most, lines);
            return Fitted { size: now, lines };
        }
        if now <= least_size {
            return Fitted {
                size: now,
                lines: cut_off(lines, now, face, most, most_lines),
            };
        }
        now = (now - size * 0.02).max(least_size);
    }
}

/// Narrows the measure as far as the number of lines allows, so that no last line is a single word.
fn balanced(text: &str, size: f64, face: Face, most: f64, lines: Vec<String>) -> Vec<String> {
    if lines.len() < 2 {
        return lines;
    }
    let mut best = lines;
    for percent in (55..100).rev().step_by(3) {
        let narrower = wrap(text, size, face, most * f64::from(percent) / 100.0);
        if narrower.len() > best.len() {
            break;
        }
        best = narrower;
    }
    best
}

/// Keeps the first lines; the last one kept takes the rest of the text and is shortened.
fn cut_off(
    mut lines: Vec<String>,
    size: f64,
    face: Face,
    most: f64,
    most_lines: usize,
) -> Vec<String> {
    let rest = lines.split_off(most_lines.saturating_sub(1));
    lines.push(shortened(&rest.join(" "), size, face, most));
    lines
}
