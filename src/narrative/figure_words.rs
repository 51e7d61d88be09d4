//! The words around a figure, made before it is drawn.
//!
//! In: sentences. Out: [`FigureWords`] for headings, captions and alternative texts.

use super::prose::listed;
use crate::error::LeftOff;

/// The words around a figure.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct FigureWords {
    /// The finding, as one sentence without a full stop.
    pub title: String,
    /// Whose curve under which load; may be empty.
    pub subtitle: String,
    /// Source or caveat; may be empty.
    pub footnote: String,
    /// What the figure shows, in sentences, for those who cannot see it.
    pub description: String,
    /// What a lecturer says to it: how to read it and what follows; may be empty.
    pub caption: String,
}

/// Words before the farthest value of a curve that leaves the figure: "continues to 4200 N".
pub const BEYOND: &str = "continues to";

/// Words after the number of bars that find no room: "3 more not shown".
pub const LEFT_OUT: &str = "more not shown";

/// What a picture is without at its size, as a message; none where it has everything.
#[must_use]
pub fn left_off_in_words(left_off: &[LeftOff]) -> Option<String> {
    let names: Vec<String> = left_off
        .iter()
        .map(|what| match what {
            LeftOff::Poses => "the poses",
            LeftOff::Note => "the note at the foot",
            LeftOff::Subtitle => "the line below the title",
        })
        .map(str::to_owned)
        .collect();
    (!names.is_empty()).then(|| {
        format!(
            "the picture goes without {}, so that the curves keep their room",
            listed(&names)
        )
    })
}
