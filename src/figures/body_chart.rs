//! Bodies with the numbers that they show.
//!
//! In: drawn bodies, a table. Out: a [`BodyChart`] for sheets.

use super::data_table::DataTable;
use crate::plot::BodyPanels;

/// Bodies with the numbers that they show.
#[derive(Debug, Clone, PartialEq)]
pub struct BodyChart {
    /// The bodies.
    pub bodies: BodyPanels,
    /// What they show, as numbers.
    pub data: DataTable,
}
