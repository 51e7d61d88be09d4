//! A page of words: questions in bold, what is said to each below it.
//!
//! In: pairs of texts. Out: a scene, in two columns where the canvas is wide, read row by row.

use super::frame::{Frame, Heading, Look};
use super::words::WordBlock;
use crate::draw::{Colour, Face, Rect, Scene, TextAnchor};
use crate::error::{Error, PlotFault, Plotted, Result};

/// Questions with what is said to each.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct WordPage {
    /// The words around them.
    pub heading: Heading,
    /// Question and answer, in reading order.
    pub entries: Vec<[String; 2]>,
}

/// Least space between two rows, in gaps.
const CLOSEST: f64 = 1.5;

/// The height of every row: that of its highest block.
fn heights(blocks: &[WordBlock], columns: usize) -> Vec<f64> {
    let rows = blocks.chunks(columns);
    let highest = |row: &[WordBlock]| row.iter().map(WordBlock::height).fold(0.0, f64::max);
    rows.map(highest).collect()
}

/// Sizes of letters that are tried, as shares of that of labels.
const SIZES: [f64; 4] = [1.2, 1.0, 0.9, 0.72];

impl WordPage {
    /// The page as a scene.
    ///
    /// # Errors
    /// If the canvas is too small for all entries.
    pub fn scene(&self, look: Look) -> Result<Scene> {
        let mut frame = Frame::new(look, &self.heading);
        let gap = frame.measures.gap;
        let body = frame.body;
        let columns = if body.width() > 1.2 * body.height() {
            2
        } else {
            1
        };
        let between = 4.0 * gap;
        let width = (body.width() - between * (columns - 1) as f64) / columns as f64;
        let (ink, muted) = (frame.colours.ink, frame.colours.muted);
        let rows = self.entries.len().div_ceil(columns);
        let blocks = SIZES.iter().find_map(|share| {
            let blocks = self.blocks(share * frame.measures.label, width, [ink, muted]);
            let needed = heights(&blocks, columns).iter().sum::<f64>();
            let is_whole = !blocks.iter().any(WordBlock::is_cut);
            let room = body.height() - gap - CLOSEST * gap * rows as f64;
            (needed < room && is_whole).then_some(blocks)
        });
        let blocks = blocks.ok_or_else(|| Error::bad(PlotFault::TooSmall(Plotted::Words)))?;
        let heights = heights(&blocks, columns);
        let spare = body.height() - gap - heights.iter().sum::<f64>();
        // The same space below every row, so that the page is filled and no row stands alone.
        let apart = spare / rows.max(1) as f64;
        for (index, block) in blocks.iter().enumerate() {
            let (column, row) = (index % columns, index / columns);
            let left = body.left + column as f64 * (width + between);
            let above: f64 = heights[..row].iter().map(|height| height + apart).sum();
            let top = body.top + gap + above;
            let place = Rect::new(left, top, left + width, top + block.height());
            block.draw(&mut frame.scene, &place, TextAnchor::Start);
        }
        Ok(frame.scene)
    }

    /// The entries in letters of a size.
    fn blocks(&self, size: f64, width: f64, [ink, muted]: [Colour; 2]) -> Vec<WordBlock> {
        let block = |[question, answer]: &[String; 2]| {
            WordBlock::new(size)
                .with(question, Face::Bold, ink, width, 2)
                .with(answer, Face::Regular, muted, width, 5)
        };
        self.entries.iter().map(block).collect()
    }
}
