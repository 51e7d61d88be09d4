//! The load on the command line: `--load`, `--band`, `--chain`, `--item`, `--setup`, several after `--versus`.
//!
//! In: the options' texts in their order. Out: setups. Own bands are read from readings or a CSV file, and
//! how well the fit meets them is told on standard error.

use super::complain::warn;
use super::output;
use crate::bounds::bounds;
use crate::error::{Error, OptionFault, Result, Shelf};
use crate::grammar::{
    OwnBandText, Stock, item_from_text, own_band_from_readings, readings_from_csv, setup_from_texts,
};
use crate::library::{Library, text_of_file};
use crate::narrative::implements::{fit_in_words, implements_help};
use crate::resistance::{BandPull, BandReading, HungBand, Item, Setup};
use crate::units::System;
use clap::{ArgAction, ArgMatches, Args};
use std::path::Path;

/// What hangs on the bar.
#[derive(Debug, Args)]
pub struct SetupOptions {
    /// Weight, bar and both sides together (one hand for dumb-bells): "100 kg", "225 lb"; several add up
    #[arg(long, value_name = "MASS", allow_hyphen_values = true)]
    pub load: Vec<String>,
    /// Band: NAME[:COUNT a side[@ANCHOR]], such as loop-29mm:1 or loop-29mm:1@rack-high
    ///
    /// Your own by readings of length and pull, "mine:1@floor: rest=104 cm, 130 cm=8 kg, 160 cm=15 kg", or by a CSV
    /// file of them, "mine: readings.csv".
    #[arg(long, value_name = "BAND")]
    pub band: Vec<String>,
    /// Chain: NAME[:COUNT a side], such as chain-10mm:1
    #[arg(long, value_name = "CHAIN")]
    pub chain: Vec<String>,
    /// Any other implement.
    #[arg(long, value_name = "KIND ...", help = implements_help())]
    pub item: Vec<String>,
    /// Setup from a model file
    #[arg(long, value_name = "FILE")]
    pub setup: Vec<String>,
}

/// A further setup to compare with.
#[derive(Debug, Args)]
pub struct Versus {
    /// Begin another setup: the loads, bands and chains behind it belong to that one
    #[arg(long, action = ArgAction::Append, num_args = 0, default_missing_value = "true")]
    pub versus: Vec<bool>,
}

/// One setup's texts.
#[derive(Debug, Default)]
struct Texts {
    loads: Vec<String>,
    bands: Vec<String>,
    chains: Vec<String>,
    items: Vec<String>,
    files: Vec<String>,
}

impl Texts {
    fn has_options(&self) -> bool {
        [&self.loads, &self.bands, &self.chains, &self.items]
            .iter()
            .any(|list| !list.is_empty())
    }

    fn is_empty(&self) -> bool {
        !self.has_options() && self.files.is_empty()
    }
}

/// The setups of a command line, split at every `--versus`.
///
/// **Fails** on an unknown band or chain, an unreadable text, or an empty setup beside `--versus`.
pub fn setups(
    options: &SetupOptions,
    library: &Library,
    matches: &ArgMatches,
    units: System,
) -> Result<Vec<Setup>> {
    let split = split(options, matches);
    if split.len() == 1 && split.iter().all(Texts::is_empty) {
        return Ok(Vec::new());
    }
    let most = bounds().compared_setups.most_of_them();
    if split.len() > most {
        return Err(Error::bad(OptionFault::ManySetups {
            asked: split.len(),
            most,
        }));
    }
    if split.iter().any(Texts::is_empty) {
        return Err(Error::bad(OptionFault::EmptySetup));
    }
    let setups: Result<Vec<Setup>> = split
        .iter()
        .map(|texts| setup(texts, library, units))
        .collect();
    let setups = setups?;
    for setup in &setups {
        warn(&library.doubts_of_setup(setup)?, units);
    }
    Ok(setups)
}

fn setup(texts: &Texts, library: &Library, units: System) -> Result<Setup> {
    if let [file, ..] = texts.files.as_slice() {
        if texts.files.len() > 1 || texts.has_options() {
            return Err(Error::bad(OptionFault::FileAndOptions));
        }
        let setup = library.setup(file)?;
        warn(&library.doubts_of(Shelf::Setups, file)?, units);
        return Ok(setup);
    }
    let pieces = library.pieces()?;
    let stock = pieces.stock();
    let is_own = |text: &&str| OwnBandText::of(text).is_some();
    let all = texts.bands.iter().map(String::as_str);
    let (own, named): (Vec<&str>, Vec<&str>) = all.partition(is_own);
    let mut setup = setup_from_texts(
        &borrowed(&texts.loads),
        &named,
        &borrowed(&texts.chains),
        &stock,
    )?;
    for text in own.into_iter().filter_map(OwnBandText::of) {
        let hung = own_band(&text, &stock, units)?;
        setup.items.push(Item::Band(hung));
    }
    for text in &texts.items {
        setup.items.push(item_from_text(text, &stock)?);
    }
    Ok(setup)
}

/// Hangs a band that is described by readings, in the text or in a CSV file.
fn own_band(text: &OwnBandText<'_>, stock: &Stock, units: System) -> Result<HungBand> {
    let band = match text.file() {
        Some(path) => own_band_from_readings(text.name, &readings_of_file(path)?)?,
        None => text.band()?,
    };
    if let BandPull::Readings(fitted) = band.pull() {
        let fit = fit_in_words(fitted, units);
        output::note(&format!("band {}: {fit}", text.name));
    }
    text.hung(band, stock)
}

fn readings_of_file(path: &str) -> Result<Vec<BandReading>> {
    let text = text_of_file(Path::new(path))?;
    readings_from_csv(&text)
}

fn borrowed(list: &[String]) -> Vec<&str> {
    list.iter().map(String::as_str).collect()
}

fn split(options: &SetupOptions, matches: &ArgMatches) -> Vec<Texts> {
    let places = |name: &str| -> Vec<usize> {
        let is_there = matches.try_contains_id(name).unwrap_or(false);
        let indices = is_there.then(|| matches.indices_of(name)).flatten();
        indices.into_iter().flatten().collect()
    };
    let borders = places("versus");
    let mut split: Vec<Texts> = (0..=borders.len()).map(|_| Texts::default()).collect();
    let mut sort = |name: &str, values: &[String], into: fn(&mut Texts) -> &mut Vec<String>| {
        for (value, place) in values.iter().zip(places(name)) {
            let part = borders.iter().filter(|border| **border < place).count();
            into(&mut split[part]).push(value.clone());
        }
    };
    sort("load", &options.load, |t| &mut t.loads);
    sort("band", &options.band, |t| &mut t.bands);
    sort("chain", &options.chain, |t| &mut t.chains);
    sort("item", &options.item, |t| &mut t.items);
    sort("setup", &options.setup, |t| &mut t.files);
    split
}
