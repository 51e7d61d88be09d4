//! The built-in files and those of the user's folder, as a list and as texts to begin with.
//!
//! In: a kind, a name. Out: what each file holds; the text of a file; a muscle as a file of its own.

use super::file_facts::FileFacts;
use super::outline::RecordOutline;
use super::records::Library;
use crate::error::{Error, ModelFault, Result, Shelf};

/// One file of a kind.
#[derive(Debug, Clone, PartialEq)]
pub struct ListedFile {
    /// Its name in the library.
    pub name: String,
    /// What it holds.
    pub facts: FileFacts,
}

/// One muscle of a muscle table.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ListedMuscle {
    /// The table.
    pub table: String,
    /// Its name there.
    pub name: String,
    /// Its strength group.
    pub group: String,
    /// The degrees of freedom that it turns about, by their names in files.
    pub crosses: Vec<&'static str>,
}

impl Library {
    /// Every file of a kind with what it holds.
    ///
    /// **Fails** with what is wrong in the first faulty one.
    pub fn listed(&self, shelf: Shelf) -> Result<Vec<ListedFile>> {
        let names = self.names(shelf).into_iter();
        names
            .map(|name| {
                let (file, text) = self.text(shelf, &name)?;
                let facts = self.check_text(Some(shelf), &file, &text)?.facts;
                Ok(ListedFile { name, facts })
            })
            .collect()
    }

    /// Every muscle of every muscle table.
    ///
    /// **Fails** with what is wrong in the first faulty table.
    pub fn listed_muscles(&self) -> Result<Vec<ListedMuscle>> {
        let mut found = Vec::new();
        for table in self.names(Shelf::Muscles) {
            let muscles = self.muscle_table(&table)?.0.muscles;
            found.extend(muscles.into_iter().map(|(name, muscle)| {
                ListedMuscle {
                    table: table.clone(),
                    name,
                    crosses: crate::anatomy::Dof::ALL
                        .into_iter()
                        .filter(|dof| muscle.crosses(*dof))
                        .map(crate::anatomy::Dof::name)
                        .collect(),
                    group: muscle.group,
                }
            }));
        }
        Ok(found)
    }

    /// The text of a file of the library, its comments with it.
    ///
    /// A muscle that is no file of its own comes as a file that extends its table and holds that muscle alone.
    /// **Fails** with the nearest names where there is none of that name.
    pub fn starting_text(&self, shelf: Shelf, name: &str) -> Result<String> {
        let missing = match self.text(shelf, name) {
            Ok((_, text)) => return Ok(text),
            Err(error) => error,
        };
        if shelf != Shelf::Muscles {
            return Err(missing);
        }
        let muscles = self.listed_muscles()?;
        let table = muscles.iter().find(|muscle| muscle.name == name);
        let Some(table) = table.map(|muscle| &muscle.table) else {
            let mut names: Vec<&str> = muscles.iter().map(|muscle| muscle.name.as_str()).collect();
            let tables = self.names(shelf);
            names.extend(tables.iter().map(String::as_str));
            return Err(Error::bad(ModelFault::NoSuchFile {
                shelf,
                name: name.to_owned(),
                known: super::nearest::known(name, &names),
            }));
        };
        let (_, text) = self.text(shelf, table)?;
        let outline = RecordOutline::of(&text);
        let node = outline.exact(&format!("muscles.{name}"));
        let record = node.map_or("", |node| outline.slice(&node.value));
        Ok(format!(
            "(\n    extends: \"{table}\",\n    muscles: {{\n        \"{name}\": {record},\n    }},\n)\n"
        ))
    }

    /// The names of the built-in logs.
    #[must_use]
    pub const fn logs() -> [&'static str; 3] {
        super::logs::INVENTED
    }
}
