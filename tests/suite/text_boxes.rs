//! Texts of a picture with the room that they take, for the tests of drawing.

use torquill::draw::{Colour, Primitive, Rect, Scene};

/// A text of a scene and the room that it takes.
#[derive(Debug, Clone, PartialEq)]
pub struct TextBox {
    /// What is written.
    pub content: String,
    /// Its size in pixels.
    pub size: f64,
    /// Its colour.
    pub colour: Colour,
    /// Its rectangle, measured with the bundled font.
    pub area: Rect,
}

/// Every text of the scene with the room that it takes, in the order of drawing.
#[must_use]
pub fn text_boxes(scene: &Scene) -> Vec<TextBox> {
    scene
        .shapes
        .iter()
        .filter_map(|shape| match shape {
            Primitive::Text(text) => Some(TextBox {
                content: text.content.clone(),
                size: text.size,
                colour: text.colour,
                area: text.bounds(),
            }),
            _ => None,
        })
        .collect()
}
