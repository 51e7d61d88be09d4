//! A presentation before it is a file: titles, words and pictures in order.
//!
//! In: what a lecture draws. Out: a [`Deck`], which whoever writes files makes slides of.

use crate::draw::Theme;

/// One slide.
#[derive(Debug, Clone, PartialEq)]
pub struct Slide {
    /// Name of the picture.
    pub name: String,
    /// The finding, above the picture.
    pub title: String,
    /// What the picture shows, for those who cannot see it.
    pub alt: String,
    /// What the speaker sees, a paragraph each.
    pub notes: Vec<String>,
    /// What the picture found no room for, between title and picture.
    pub words: Vec<String>,
    /// The picture as PNG, which has no title of its own.
    pub picture: Vec<u8>,
    /// Width and height of the picture in pixels of a slide of 1920 × 1080.
    pub pixels: (u32, u32),
}

/// A presentation.
#[derive(Debug, Clone, PartialEq)]
pub struct Deck {
    /// What it is called.
    pub title: String,
    /// How it was made, in one line.
    pub making: String,
    /// Dark or light ground.
    pub theme: Theme,
    /// The slides in order.
    pub slides: Vec<Slide>,
    /// What the last slides are called, slides of words alone.
    pub last_title: String,
    /// Their paragraphs; without any there is none.
    pub last: Vec<String>,
}
