//! What the page asks of the model, in the texts that the program's options take.
//!
//! In: JSON of the page. Out: [`PageState`], checked at this door: an address may hold anything.

use crate::error::{Error, PageFault, Result, Shelf};
use crate::library::Library;
use crate::units::System;
use serde::{Deserialize, Serialize};

/// Most texts of a kind; assumed, far more than there are dials.
const MOST_TEXTS: usize = 80;
/// Most letters of a text; assumed, twice the longest path with its value.
const MOST_LETTERS: usize = 160;

/// Units that everything is told in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum PageUnits {
    /// Kilograms, centimetres, newtons.
    #[default]
    Metric,
    /// Pounds, inches, pounds-force.
    Us,
}

impl From<PageUnits> for System {
    fn from(units: PageUnits) -> Self {
        match units {
            PageUnits::Metric => Self::Metric,
            PageUnits::Us => Self::Us,
        }
    }
}

/// One lift of one lifter with what hangs on the bar: each text is an option's value.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct PageState {
    /// Name of the movement.
    pub lift: String,
    /// Name of the lifter.
    pub lifter: String,
    /// Plain weights.
    pub load: Vec<String>,
    /// Bands.
    pub band: Vec<String>,
    /// Chains.
    pub chain: Vec<String>,
    /// Other implements.
    pub item: Vec<String>,
    /// Speed; held still without one.
    pub speed: Option<String>,
    /// Values that are set, as `PATH=VALUE`.
    pub set: Vec<String>,
    /// Units of what is told.
    pub units: PageUnits,
}

impl PageState {
    /// Whether everything is of a size that the page makes, and names are names.
    ///
    /// **Fails** with the first that is not.
    pub fn check(&self, library: &Library) -> Result<()> {
        let lists = [&self.load, &self.band, &self.chain, &self.item, &self.set];
        for list in lists {
            if list.len() > MOST_TEXTS {
                return Err(Error::bad(PageFault::TooMany {
                    count: list.len(),
                    most: MOST_TEXTS,
                }));
            }
        }
        let names = [&self.lift, &self.lifter];
        let texts = lists.into_iter().flatten().chain(names).chain(&self.speed);
        for text in texts {
            let letters = text.chars().count();
            if letters > MOST_LETTERS {
                return Err(Error::bad(PageFault::TooLong {
                    letters,
                    most: MOST_LETTERS,
                }));
            }
        }
        check_name(library, Shelf::Movements, &self.lift)?;
        check_name(library, Shelf::Lifters, &self.lifter)
    }

    /// The options that ask the program for the same.
    #[must_use]
    pub fn words(&self) -> Vec<String> {
        let mut words = vec![self.lift.clone()];
        let mut option = |name: &str, value: &String| {
            words.extend([format!("--{name}"), value.clone()]);
        };
        option("lifter", &self.lifter);
        self.set.iter().for_each(|value| option("set", value));
        let hung = [
            ("load", &self.load),
            ("band", &self.band),
            ("chain", &self.chain),
            ("item", &self.item),
        ];
        for (name, values) in hung {
            values.iter().for_each(|value| option(name, value));
        }
        self.speed.iter().for_each(|value| option("speed", value));
        if self.units == PageUnits::Us {
            option("units", &"us".to_owned());
        }
        words
    }
}

/// A name of a shelf is looked up there; a path is not followed, since the page reads no files.
///
/// **Fails** for a path, and for a name that nothing has.
pub fn check_name(library: &Library, shelf: Shelf, name: &str) -> Result<()> {
    let is_path = name.contains(['/', '\\']) || name.to_lowercase().ends_with(".ron");
    if is_path {
        return Err(Error::bad(PageFault::NotByFile {
            text: name.to_owned(),
        }));
    }
    library.text(shelf, name).map(|_| ())
}
