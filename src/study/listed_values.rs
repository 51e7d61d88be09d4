//! Every value that can be set, of one movement or of all.
//!
//! In: the library, a lifter, a movement or none, settings. Out: [`ListedValue`]s.

use crate::error::Result;
use crate::library::{Library, SettableValue, Wanted, Workbench, is_of_movement};

/// A value that can be set, and the movement whose value it is.
#[derive(Debug, Clone, PartialEq)]
pub struct ListedValue {
    /// The movement, where the value is one of it and several are listed.
    pub movement: Option<String>,
    /// The value.
    pub value: SettableValue,
}

/// The values of a movement; without one those of the whole body once, then those of every movement.
///
/// **Fails** with what is wrong in files and settings.
pub fn listed_values(
    library: &Library,
    lifter: &str,
    movement: Option<&str>,
    sets: &[String],
) -> Result<Vec<ListedValue>> {
    if let Some(movement) = movement {
        let values = Workbench::open(library, lifter, movement)?.settable(sets, Wanted::Moving)?;
        let alone = |value| ListedValue {
            movement: None,
            value,
        };
        return Ok(values.into_iter().map(alone).collect());
    }
    let mut found = Vec::new();
    for name in library.movements() {
        let bench = Workbench::open(library, lifter, &name)?;
        let wanted = if found.is_empty() {
            Wanted::All
        } else {
            Wanted::OfMovement
        };
        let values = bench.settable(sets, wanted)?.into_iter();
        found.extend(values.map(|value| ListedValue {
            movement: is_of_movement(&value.path).then(|| name.clone()),
            value,
        }));
    }
    Ok(found)
}
