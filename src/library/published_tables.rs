//! The published tables that estimates and plans are made with, read once.
//!
//! In: the files of `models/published/`, or those of the user's folder in their place. Out:
//! [`Published`], checked.

use super::checked::CheckedFile;
use super::file_facts::FileFacts;
use super::layered_text::LayeredText;
use super::nearest::known;
use super::published_rules as rules;
use super::records::{Library, stem};
use crate::error::{Error, ModelFault, Result, Shelf};
use crate::progress::published_equations::PublishedEstimates;
use crate::session::published::Published;

/// The tables, by the name of their file.
const TABLES: [&str; 11] = [
    "repetition-equations",
    "velocity-equations",
    "repetitions",
    "fatigue",
    "phosphocreatine",
    "eccentric",
    "rests",
    "straight-sets",
    "clusters",
    "pyramid",
    "person",
];

impl Library {
    /// Every published table, read when first asked for.
    ///
    /// **Fails** with what is wrong in the first faulty file.
    pub fn published(&self) -> Result<&Published> {
        if let Some(published) = self.published.get() {
            return Ok(published);
        }
        let shelf = Shelf::Published;
        let published = Published {
            estimates: PublishedEstimates {
                repetitions: self.record(shelf, TABLES[0], rules::repetition_equations)?,
                velocity: self.record(shelf, TABLES[1], rules::velocity_equations)?,
            },
            repetitions: self.record(shelf, TABLES[2], rules::repetitions)?,
            fatigue: self.record(shelf, TABLES[3], rules::fatigue)?,
            phosphocreatine: self.record(shelf, TABLES[4], rules::phosphocreatine)?,
            eccentric: self.record(shelf, TABLES[5], rules::eccentric)?,
            rests: self.record(shelf, TABLES[6], rules::rests)?,
            straight: self.record(shelf, TABLES[7], rules::straight)?,
            clusters: self.record(shelf, TABLES[8], rules::clusters)?,
            pyramid: self.record(shelf, TABLES[9], rules::pyramid)?,
        };
        Ok(self.published.get_or_init(|| published))
    }

    /// Checks the text of a published table; the file's name tells which.
    pub(super) fn check_published(&self, file: &str, text: &LayeredText) -> Result<CheckedFile> {
        use FileFacts::Published as Rows;
        let name = stem(file);
        match TABLES.iter().position(|table| *table == name) {
            Some(0) => self.checked(
                Shelf::Published,
                text,
                rules::repetition_equations,
                |table| Rows(table.equations.len()),
            ),
            Some(1) => self.checked(Shelf::Published, text, rules::velocity_equations, |table| {
                Rows(table.equations.len())
            }),
            Some(2) => self.checked(Shelf::Published, text, rules::repetitions, |table| {
                Rows(table.chart.rows.len())
            }),
            Some(3) => self.checked(Shelf::Published, text, rules::fatigue, |table| {
                Rows(table.joints.len())
            }),
            Some(4) => self.checked(Shelf::Published, text, rules::phosphocreatine, |table| {
                Rows(table.recoveries.len())
            }),
            Some(5) => self.checked(Shelf::Published, text, rules::eccentric, |table| {
                Rows(table.ratios.len())
            }),
            Some(6) => self.checked(Shelf::Published, text, rules::rests, |_| Rows(3)),
            Some(7) => self.checked(Shelf::Published, text, rules::straight, |table| {
                Rows(table.guidance.len())
            }),
            Some(8) => self.checked(Shelf::Published, text, rules::clusters, |table| {
                Rows(table.totals.zones.len())
            }),
            Some(9) => self.checked(Shelf::Published, text, rules::pyramid, |table| {
                Rows(table.repetitions.len())
            }),
            Some(10) => self.checked(Shelf::Published, text, rules::person, |table| {
                Rows(table.between_people.len())
            }),
            _ => Err(Error::bad(ModelFault::NoSuchFile {
                shelf: Shelf::Published,
                name: name.to_owned(),
                known: known(name, &TABLES),
            })),
        }
    }
}
