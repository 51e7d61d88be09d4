//! What is wrong in a gym file: each fault with the path of the value.
//!
//! In: the record of a gym file, the names that the library knows. Out: [`GymFault`]s in the file's order. A
//! gym of one plate or without a band is no fault: the search then says what can be built of it.

use super::gym::GymFile;
use crate::error::Fault;
use crate::grammar::Stock;
use crate::units::Mass;
use std::collections::BTreeSet;

/// More pieces of one kind than this are a slip of the pen. Assumed: no gym has them.
const MOST_OF_A_KIND: u32 = 10_000;

/// Most different kinds of plate, band or chain that are searched. Assumed: far beyond any gym.
const MOST_KINDS: usize = 60;

/// What is wrong in a gym file, by the path of the value.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct GymFault {
    /// Path of the value: `bands.2.name`.
    pub path: String,
    /// What is wrong with it, reading on from the path.
    pub message: String,
    /// The next move; may be empty.
    pub hint: String,
}

fn fault(path: String, message: impl Into<String>, hint: impl Into<String>) -> GymFault {
    GymFault {
        path,
        message: message.into(),
        hint: hint.into(),
    }
}

impl GymFile {
    /// Everything that is wrong in the file, in its order.
    #[must_use]
    pub fn faults(&self, stock: &Stock) -> Vec<GymFault> {
        let mut faults = self.equipment_faults();
        faults.extend(self.plate_faults());
        let bands = self.bands.iter().enumerate().map(|(index, record)| {
            (
                index,
                record.name.as_str(),
                record.count,
                record.band.is_some(),
            )
        });
        faults.extend(piece_faults(
            "bands",
            bands,
            &stock.bands.keys().collect::<Vec<_>>(),
        ));
        let chains = self.chains.iter().enumerate().map(|(index, record)| {
            (
                index,
                record.name.as_str(),
                record.count,
                record.chain.is_some(),
            )
        });
        faults.extend(piece_faults(
            "chains",
            chains,
            &stock.chains.keys().collect::<Vec<_>>(),
        ));
        for (index, record) in self.chains.iter().enumerate() {
            for (place, leader) in record.leaders.iter().enumerate() {
                if !(0.0..=5.0).contains(&leader.as_m()) {
                    faults.push(fault(
                        format!("chains.{index}.leaders.{place}"),
                        format!("is {} m; a leader is 0 m to 5 m long", leader.as_m()),
                        "",
                    ));
                }
            }
        }
        if self.is_empty() {
            faults.push(fault(
                String::new(),
                "this gym owns nothing to load a lift with",
                "list at least a bar: bars: [(name: \"bar\", mass: \"20 kg\")]",
            ));
        }
        faults
    }

    fn is_empty(&self) -> bool {
        self.bars.is_empty()
            && self.plates.is_empty()
            && self.dumbbells.is_empty()
            && self.bands.is_empty()
            && self.chains.is_empty()
            && self.stack.is_none()
            && self.sled.is_none()
    }

    fn equipment_faults(&self) -> Vec<GymFault> {
        let mut faults = Vec::new();
        let mut named = BTreeSet::new();
        for (index, bar) in self.bars.iter().enumerate() {
            if !named.insert(&bar.name) {
                faults.push(twice(format!("bars.{index}.name"), &bar.name));
            }
            faults.extend(odd_mass(format!("bars.{index}.mass"), bar.mass, 1.0, 100.0));
        }
        for (index, mass) in self.dumbbells.iter().enumerate() {
            faults.extend(odd_mass(format!("dumbbells.{index}"), *mass, 0.1, 200.0));
        }
        if let Some(collar) = self.collars {
            faults.extend(odd_mass("collars".to_owned(), collar, 0.0, 10.0));
        }
        if let Some(step) = self.smallest_step {
            faults.extend(odd_mass("smallest_step".to_owned(), step, 0.01, 50.0));
        }
        if let Some(stack) = self.stack {
            faults.extend(odd_mass("stack.step".to_owned(), stack.step, 0.1, 50.0));
            let least = stack.step.as_kg();
            faults.extend(odd_mass("stack.most".to_owned(), stack.most, least, 500.0));
        }
        if let Some(sled) = self.sled {
            faults.extend(odd_mass("sled.mass".to_owned(), sled.mass, 1.0, 300.0));
            if !(0.0..=1.0).contains(&sled.friction) {
                let message = format!("is {}; it must lie between 0 and 1", sled.friction);
                faults.push(fault("sled.friction".to_owned(), message, ""));
            }
        }
        faults
    }

    fn plate_faults(&self) -> Vec<GymFault> {
        let mut faults = Vec::new();
        let mut masses = BTreeSet::new();
        for (index, plate) in self.plates.iter().enumerate() {
            let path = |field: &str| format!("plates.{index}.{field}");
            faults.extend(odd_mass(path("mass"), plate.mass, 0.05, 200.0));
            if !masses.insert(plate.mass.as_kg().to_bits()) {
                let message = "is listed twice";
                faults.push(fault(
                    path("mass"),
                    message,
                    "add the counts up in one line",
                ));
            }
            faults.extend(odd_count(path("count"), plate.count));
        }
        for (name, many) in [
            ("plates", self.plates.len()),
            ("bands", self.bands.len()),
            ("chains", self.chains.len()),
            ("bars", self.bars.len()),
            ("dumbbells", self.dumbbells.len()),
            ("anchors", self.anchors.len()),
        ] {
            if many > MOST_KINDS {
                let message = format!("has {many} kinds; at most {MOST_KINDS} are searched");
                faults.push(fault(
                    name.to_owned(),
                    message,
                    "leave out what is never used",
                ));
            }
        }
        faults
    }
}

/// The fault as a person reads it.
pub(super) fn in_words(fault: GymFault) -> Fault {
    let message = if fault.path.is_empty() {
        fault.message
    } else {
        format!("`{}` {}", fault.path, fault.message)
    };
    let said = Fault::new(message);
    if fault.hint.is_empty() {
        said
    } else {
        said.hint(fault.hint)
    }
}

fn twice(path: String, name: &str) -> GymFault {
    let message = format!("`{name}` is listed twice");
    fault(
        path,
        message,
        "give each its own name, or add the counts up in one line",
    )
}

fn odd_mass(path: String, mass: Mass, least_kg: f64, most_kg: f64) -> Option<GymFault> {
    let kg = mass.as_kg();
    (!(least_kg..=most_kg).contains(&kg)).then(|| {
        let kg = crate::units::rounded(kg, 3);
        let message = format!("is {kg} kg; it must lie between {least_kg} kg and {most_kg} kg");
        fault(path, message, "")
    })
}

fn odd_count(path: String, count: u32) -> Option<GymFault> {
    (count > MOST_OF_A_KIND).then(|| {
        let message =
            format!("is {count}; at most {MOST_OF_A_KIND} pieces of a kind are taken for real");
        fault(path, message, "")
    })
}

/// Faults of bands or chains: a name twice, a name that leads nowhere, an absurd count.
fn piece_faults<'a>(
    list: &str,
    records: impl Iterator<Item = (usize, &'a str, u32, bool)>,
    known: &[&String],
) -> Vec<GymFault> {
    let mut faults = Vec::new();
    let mut named = BTreeSet::new();
    for (index, name, count, is_described) in records {
        let path = |field: &str| format!("{list}.{index}.{field}");
        if !named.insert(name) {
            faults.push(twice(path("name"), name));
        } else if !is_described && !known.iter().any(|other| *other == name) {
            let message = format!("is `{name}`, and the library has nothing of that name");
            faults.push(fault(path("name"), message, nearest(name, known)));
        }
        faults.extend(odd_count(path("count"), count));
    }
    faults
}

/// The nearest known name as a hint, else all of them.
fn nearest(name: &str, known: &[&String]) -> String {
    let near = known
        .iter()
        .map(|other| (strsim::damerau_levenshtein(name, other), other.as_str()))
        .min()
        .filter(|(distance, _)| *distance <= 1 + name.len() / 3);
    match near {
        Some((_, other)) => format!("did you mean `{other}`?"),
        None => {
            let all: Vec<&str> = known.iter().map(|other| other.as_str()).collect();
            format!("known are {}; or describe it here", all.join(", "))
        }
    }
}
