//! The words around a figure, made before it is drawn.
//!
//! In: sentences. Out: [`FigureWords`] for headings, captions and alternative texts.

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
