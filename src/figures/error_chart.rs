//! Bars with the numbers that they show, and a page of questions as a table.
//!
//! In: bars, a page. Out: an [`ErrorChart`] for sheets, a table of the page.

use super::data_table::DataTable;
use crate::plot::{Tornado, WordPage};

/// Bars with the numbers that they show.
#[derive(Debug, Clone, PartialEq)]
pub struct ErrorChart {
    /// The bars.
    pub bars: Tornado,
    /// What they show, as numbers.
    pub data: DataTable,
}

/// The questions of a page as a table.
pub(super) fn questions(page: &WordPage) -> DataTable {
    DataTable {
        header: ["question", "why"].map(str::to_owned).to_vec(),
        rows: page.entries.iter().map(|entry| entry.to_vec()).collect(),
    }
}
