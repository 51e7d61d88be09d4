//! The load on the command line: `--load`, `--band`, `--chain`, `--setup`, several after `--versus`.

use crate::error::{Error, Result};
use crate::library::Library;
use crate::resistance::{Setup, setup_from_texts};
use clap::{ArgAction, ArgMatches, Args};

/// What hangs on the bar.
#[derive(Debug, Args)]
pub struct SetupOptions {
    /// Weight, bar and both sides together (one hand for dumb-bells): "100 kg", "225 lb"
    #[arg(long, value_name = "MASS", allow_hyphen_values = true)]
    pub load: Vec<String>,
    /// Band: NAME[:COUNT a side[@ANCHOR]], such as loop-29mm:1 or loop-29mm:1@rack-high
    #[arg(long, value_name = "BAND")]
    pub band: Vec<String>,
    /// Chain: NAME[:COUNT a side], such as chain-10mm:1
    #[arg(long, value_name = "CHAIN")]
    pub chain: Vec<String>,
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
    files: Vec<String>,
}

/// The setups of a command line, split at every `--versus`.
///
/// **Fails** on an unknown band or chain, an unreadable text, or an empty setup beside `--versus`.
pub fn setups(
    options: &SetupOptions,
    library: &Library,
    matches: Option<&ArgMatches>,
) -> Result<Vec<Setup>> {
    let split = split(options, matches);
    let is_empty = |t: &Texts| {
        t.loads.is_empty() && t.bands.is_empty() && t.chains.is_empty() && t.files.is_empty()
    };
    if split.len() == 1 && split.iter().all(is_empty) {
        return Ok(Vec::new());
    }
    if split.iter().any(is_empty) {
        return Err(Error::bad("a setup beside --versus is empty").hint(
            "give each its load: --load \"100 kg\" --versus --load \"70 kg\" --band loop-29mm:1",
        ));
    }
    split.iter().map(|texts| setup(texts, library)).collect()
}

fn setup(texts: &Texts, library: &Library) -> Result<Setup> {
    if let [file, ..] = texts.files.as_slice() {
        if texts.files.len() > 1 || !(texts.bands.is_empty() && texts.chains.is_empty()) {
            return Err(
                Error::bad("a setup comes from one file or from options, not from both")
                    .hint("put the band or chain into the file, or compare with --versus"),
            );
        }
        return library.setup(file);
    }
    let pieces = library.pieces()?;
    setup_from_texts(
        &borrowed(&texts.loads),
        &borrowed(&texts.bands),
        &borrowed(&texts.chains),
        &pieces.stock(),
    )
}

fn borrowed(list: &[String]) -> Vec<&str> {
    list.iter().map(String::as_str).collect()
}

fn split(options: &SetupOptions, matches: Option<&ArgMatches>) -> Vec<Texts> {
    let places = |name: &str| -> Vec<usize> {
        matches
            .filter(|m| m.try_contains_id(name).unwrap_or(false))
            .and_then(|m| m.indices_of(name))
            .map(Iterator::collect)
            .unwrap_or_default()
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
    sort("setup", &options.setup, |t| &mut t.files);
    split
}
