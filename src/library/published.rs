//! The published tables that estimates and plans are made with, read once.
//!
//! In: the files of `models/published/`, or those of the user's folder in their place. Out:
//! [`Published`], checked.

use super::check::Facts;
use super::published_rules as rules;
use super::records::{Library, stem};
use super::shelf::Shelf;
use crate::error::{Error, Result};
use crate::progress::published::PublishedEstimates;
use crate::session::published::Published;

/// The tables, by the name of their file.
const TABLES: [&str; 10] = [
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
    pub(super) fn check_published(&self, file: &str, text: &str) -> Result<Facts> {
        let name = stem(file);
        match TABLES.iter().position(|table| *table == name) {
            Some(0) => self.checked(file, text, rules::repetition_equations, |t| {
                rows(t.equations.len())
            }),
            Some(1) => self.checked(file, text, rules::velocity_equations, |t| {
                rows(t.equations.len())
            }),
            Some(2) => self.checked(file, text, rules::repetitions, |t| rows(t.chart.rows.len())),
            Some(3) => self.checked(file, text, rules::fatigue, |t| rows(t.joints.len())),
            Some(4) => self.checked(file, text, rules::phosphocreatine, |t| {
                rows(t.recoveries.len())
            }),
            Some(5) => self.checked(file, text, rules::eccentric, |t| rows(t.ratios.len())),
            Some(6) => self.checked(file, text, rules::rests, |_| rows(3)),
            Some(7) => self.checked(file, text, rules::straight, |t| rows(t.guidance.len())),
            Some(8) => self.checked(file, text, rules::clusters, |t| rows(t.totals.zones.len())),
            Some(9) => self.checked(file, text, rules::pyramid, |t| rows(t.repetitions.len())),
            _ => Err(Error::bad(format!("no published table is called `{name}`"))
                .hint(super::did_you_mean(name, &TABLES))),
        }
    }
}

fn rows(count: usize) -> Facts {
    vec![("rows", count.to_string())]
}
