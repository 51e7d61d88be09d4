//! What the page can be turned to: lifts, lifters, bands, chains, and which program this is.
//!
//! In: the library. Out: [`Catalogue`].

use crate::error::{Result, Shelf};
use crate::library::{Library, model_hash};
use serde::Serialize;

/// What the page can be turned to.
#[derive(Debug, Serialize)]
pub struct Catalogue {
    version: &'static str,
    model_hash: &'static str,
    lifts: Vec<Named>,
    lifters: Vec<Named>,
    bands: Vec<String>,
    chains: Vec<String>,
}

/// A name with what a person calls it.
#[derive(Debug, Serialize)]
struct Named {
    name: String,
    title: String,
}

/// Everything by name.
///
/// **Fails** if a file of the library is not sound.
pub fn catalogue(library: &Library) -> Result<Catalogue> {
    let lift = |name: String| -> Result<Named> {
        let title = library.movement(&name)?.title;
        Ok(Named { name, title })
    };
    let lifter = |name: String| -> Result<Named> {
        let title = library.lifter(&name)?.title;
        Ok(Named { name, title })
    };
    let lifts = library.movements().into_iter();
    let lifters = library.names(Shelf::Lifters).into_iter();
    Ok(Catalogue {
        version: env!("CARGO_PKG_VERSION"),
        model_hash: model_hash(),
        lifts: lifts.map(lift).collect::<Result<_>>()?,
        lifters: lifters.map(lifter).collect::<Result<_>>()?,
        bands: library.names(Shelf::Bands),
        chains: library.names(Shelf::Chains),
    })
}
