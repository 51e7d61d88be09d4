//! The whole check of one model file, as `torquill check FILE` asks for it.
//!
//! In: a file or a text, and its kind, which the folder or the fields tell. Out: [`Summary`], or every
//! fault that can be known: types, ranges, names that lead nowhere, sources that nobody listed.

use super::complaint::{Complaint, none_in_file};
use super::nearest::{did_you_mean, nearest};
use super::outline::Outline;
use super::read::{no_record, read};
use super::records::{Library, read_text};
use super::shelf::{Shelf, fields_of};
use super::{body_rules, movement_rules, muscle_rules};
use crate::anatomy::{Curves, LifterRecord, MuscleTable, Sarcomere, SegmentTable, groups};
use crate::error::{Error, Fault, Result};
use crate::grammar::SetupFile;
use crate::movement::{Movement, SAMPLES, trace};
use crate::resistance::{Band, Chain, Hang};
use crate::setups::GymFile;
use crate::source::Publication;
use crate::units::rounded;
use serde::de::DeserializeOwned;
use std::collections::BTreeMap;
use std::path::Path;

/// What a sound model file holds.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Summary {
    /// What kind of file it is: "lifter".
    pub kind: &'static str,
    /// Facts to show, label and text.
    pub facts: Vec<(&'static str, String)>,
}

impl Library {
    /// Reads a model file and checks everything about it.
    ///
    /// **Fails** with every fault that can be known.
    pub fn check_file(&self, path: &Path) -> Result<Summary> {
        let text = read_text(path)?;
        let file = path.display().to_string();
        if path.file_name().is_some_and(|name| name == "sources.ron") {
            return check_sources(&file, &text);
        }
        self.check_text(Shelf::of_path(path), &file, &text)
    }

    /// Checks the text of a model file; without a kind the fields tell it.
    ///
    /// **Fails** with every fault that can be known.
    pub fn check_text(&self, shelf: Option<Shelf>, file: &str, text: &str) -> Result<Summary> {
        let shelf = match shelf {
            Some(shelf) => shelf,
            None => kind_by_fields(file, text)?,
        };
        let one = |facts| Summary {
            kind: shelf.one(),
            facts,
        };
        Ok(one(match shelf {
            Shelf::Lifters => {
                self.checked(file, text, |l| self.lifter_complaints(l), lifter_facts)?
            }
            Shelf::Segments => {
                self.checked(file, text, body_rules::segment_table, segment_facts)?
            }
            Shelf::Muscles => self.checked(file, text, |m| self.muscle_rules(m), muscle_facts)?,
            Shelf::Curves => self.checked(file, text, muscle_rules::curves, curve_facts)?,
            Shelf::Sarcomeres => {
                self.checked(file, text, muscle_rules::sarcomere, sarcomere_facts)?
            }
            Shelf::Movements => {
                self.checked(file, text, |m| self.movement_rules(m), movement_facts)?
            }
            // Bands and chains check themselves when they are read.
            Shelf::Bands => self.checked(file, text, |_: &Band| Vec::new(), band_facts)?,
            Shelf::Chains => self.checked(file, text, |_: &Chain| Vec::new(), chain_facts)?,
            Shelf::Setups => self.checked(file, text, |s| self.setup_rules(s), setup_facts)?,
            Shelf::Gyms => self.checked(file, text, |g| self.gym_rules(g), gym_facts)?,
            Shelf::Published => self.check_published(file, text)?,
        }))
    }

    /// Reads a record, collects the faults of rules and sources, and gives its facts.
    pub(super) fn checked<T: DeserializeOwned>(
        &self,
        file: &str,
        text: &str,
        rules: impl Fn(&T) -> Vec<Complaint>,
        facts: impl Fn(&T) -> Facts,
    ) -> Result<Facts> {
        let record: T = read(file, text)?;
        let mut faults = self.source_faults(file, text)?;
        if let Err(error) = none_in_file(rules(&record), file, text) {
            faults.extend(error.faults().iter().cloned());
        }
        if faults.is_empty() {
            Ok(facts(&record))
        } else {
            faults.sort_by_key(|fault| fault.place.as_ref().map(|place| place.start));
            Err(Error::bad_input(faults))
        }
    }

    /// A fault for every source that names a key of no publication.
    fn source_faults(&self, file: &str, text: &str) -> Result<Vec<Fault>> {
        let sources = self.sources()?;
        let known: Vec<&str> = sources.keys().map(String::as_str).collect();
        let outline = Outline::of(text);
        let mut faults = Vec::new();
        for (index, node) in outline.nodes.iter().enumerate() {
            if !matches!(node.tag, Some("Published" | "FromMemory" | "Derived")) {
                continue;
            }
            let Some(key) = outline.children(index).next() else {
                continue;
            };
            let stretch = &outline.nodes[key].value;
            let name = outline.slice(stretch).trim_matches('"');
            if !sources.contains_key(name) {
                faults.push(
                    Fault::new(format!("`{name}` is no publication of sources.ron"))
                        .at(outline.place(file, stretch))
                        .hint(key_hint(name, &known)),
                );
            }
        }
        Ok(faults)
    }

    fn lifter_complaints(&self, record: &LifterRecord) -> Vec<Complaint> {
        let muscles = self.muscle_table(&record.muscles).ok();
        self.lifter_rules(record, muscles.as_ref())
    }

    /// The rules for a movement, and whether the reference lifter's limbs can do it.
    fn movement_rules(&self, movement: &Movement) -> Vec<Complaint> {
        let mut complaints = movement_rules::movement(movement);
        if !complaints.is_empty() {
            return complaints;
        }
        if let Ok(lifter) = self.lifter(REFERENCE_LIFTER) {
            complaints = movement_rules::technique_of(movement, &lifter);
            if let Err(error) = trace(movement, &lifter, SAMPLES.0) {
                complaints.extend(error.faults().iter().map(|fault| {
                    let message =
                        format!("cannot be done by {REFERENCE_LIFTER}: {}", fault.message);
                    let complaint = Complaint::new("path", message);
                    fault
                        .every_hint()
                        .into_iter()
                        .fold(complaint, Complaint::hint)
                }));
            }
        }
        complaints
    }
}

/// The lifter whose limbs a movement is tried with.
const REFERENCE_LIFTER: &str = "reference-man";

/// What to do about a key that no publication has; the list of all is too long for a message.
fn key_hint(name: &str, known: &[&str]) -> String {
    if nearest(name, known).is_empty() {
        "`torquill sources` lists the keys; a new publication goes into sources.ron".to_owned()
    } else {
        did_you_mean(name, known)
    }
}

/// Facts to show, label and text.
pub(super) type Facts = Vec<(&'static str, String)>;

fn check_sources(file: &str, text: &str) -> Result<Summary> {
    let sources: BTreeMap<String, Publication> = read(file, text)?;
    let complaints = sources.iter().flat_map(|(key, publication)| {
        let fields = [
            ("citation", &publication.citation),
            ("used_for", &publication.used_for),
        ];
        fields
            .into_iter()
            .filter(|(_, text)| text.trim().is_empty())
            .map(move |(field, _)| Complaint::new(format!("{key}.{field}"), "is empty"))
    });
    none_in_file(complaints.collect(), file, text)?;
    Ok(Summary {
        kind: "list of publications",
        facts: vec![("publications", sources.len().to_string())],
    })
}

/// The kind whose fields are most like those of a text.
fn kind_by_fields(file: &str, text: &str) -> Result<Shelf> {
    no_record(file, text)?;
    let outline = Outline::of(text);
    let names: Vec<&str> = outline
        .children(0)
        .filter_map(|index| outline.name(index))
        .collect();
    let likeness = |shelf: &Shelf| {
        let fields = fields_of(*shelf);
        let common = names.iter().filter(|name| fields.contains(name)).count();
        (common, common * 100 / fields.len().max(1))
    };
    let best = Shelf::ALL.into_iter().max_by_key(likeness);
    best.filter(|shelf| likeness(shelf).0 > 0).ok_or_else(|| {
        let folders = Shelf::ALL.map(Shelf::folder).join("/, ");
        Error::bad(format!(
            "nothing in `{file}` tells what kind of model file it is"
        ))
        .hint(format!(
            "put it into a folder that says so ({folders}/), or begin with a file of models/"
        ))
    })
}

fn lifter_facts(record: &LifterRecord) -> Facts {
    vec![
        ("title", record.title.clone()),
        (
            "height",
            format!("{} cm", rounded(record.height.as_cm(), 1)),
        ),
        (
            "body mass",
            format!("{} kg", rounded(record.body_mass.as_kg(), 1)),
        ),
        (
            "tables",
            format!("{}, {}, {}", record.segments, record.muscles, record.curves),
        ),
        ("strength groups", record.strength.len().to_string()),
    ]
}

fn segment_facts(table: &SegmentTable) -> Facts {
    let rows = table.rows.keys().map(|name| name.name());
    vec![
        (
            "sample",
            format!(
                "{} cm, {} kg",
                rounded(table.sample_height.as_cm(), 1),
                rounded(table.sample_mass.as_kg(), 1)
            ),
        ),
        ("segments", rows.collect::<Vec<_>>().join(", ")),
        ("source", table.source.in_words()),
    ]
}

fn muscle_facts(table: &MuscleTable) -> Facts {
    vec![
        ("body", table.body.clone()),
        ("muscles", table.muscles.len().to_string()),
        ("strength groups", groups(table).join(", ")),
    ]
}

fn curve_facts(curves: &Curves) -> Facts {
    vec![
        ("active force", curves.active_source.in_words()),
        ("passive force", curves.passive_source.in_words()),
        ("force over velocity", curves.velocity_source.in_words()),
    ]
}

fn sarcomere_facts(sarcomere: &Sarcomere) -> Facts {
    vec![
        ("species", sarcomere.species.clone()),
        (
            "optimum",
            format!("{} µm", rounded(sarcomere.optimum_um(), 3)),
        ),
        ("source", sarcomere.source.in_words()),
    ]
}

fn movement_facts(movement: &Movement) -> Facts {
    let technique: Vec<&str> = movement.technique.keys().map(String::as_str).collect();
    vec![
        ("title", movement.title.clone()),
        ("technique", technique.join(", ")),
        ("limits", movement.limits.clone()),
    ]
}

fn band_facts(band: &Band) -> Facts {
    let rest_m = band.rest_length().as_m();
    let pull = |stretch: f64| rounded(band.force_n(stretch * rest_m, Hang::Single), 0);
    vec![
        ("name", band.name().to_owned()),
        ("rest length", format!("{} cm", rounded(rest_m * 100.0, 1))),
        (
            "pull at 1.5 and 2 times its length",
            format!("{} N, {} N", pull(1.5), pull(2.0)),
        ),
        ("source", band.source().in_words()),
    ]
}

fn chain_facts(chain: &Chain) -> Facts {
    vec![
        ("name", chain.name().to_owned()),
        (
            "length",
            format!("{} cm", rounded(chain.length().as_cm(), 1)),
        ),
        ("mass", format!("{} kg", rounded(chain.mass().as_kg(), 2))),
        ("source", chain.source().in_words()),
    ]
}

fn setup_facts(setup: &SetupFile) -> Facts {
    vec![
        ("name", setup.name.clone()),
        ("items", setup.items.len().to_string()),
    ]
}

fn gym_facts(gym: &GymFile) -> Facts {
    let plates: u32 = gym.plates.iter().map(|plates| plates.count).sum();
    let count = |counts: &mut dyn Iterator<Item = u32>| counts.sum::<u32>().to_string();
    vec![
        ("title", gym.title.clone()),
        ("bars", gym.bars.len().to_string()),
        ("plates", plates.to_string()),
        (
            "bands",
            count(&mut gym.bands.iter().map(|bands| bands.count)),
        ),
        (
            "chains",
            count(&mut gym.chains.iter().map(|chains| chains.count)),
        ),
        (
            "anchors",
            gym.anchors.keys().cloned().collect::<Vec<_>>().join(", "),
        ),
    ]
}
