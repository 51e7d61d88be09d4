//! How an output was made: program, command, model, files, so that it can be made again.
//!
//! In: what a command line says, and hashes. Out: [`RunRecord`], which goes into JSON as `provenance`, over CSV as
//! commented lines, into pictures as one line. It holds no time, no absolute path and no person's name.

use serde::{Deserialize, Serialize};

/// The name of the program in every record.
const PROGRAM: &str = "torquill";

/// How an output was made.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct RunRecord {
    /// Name of the program.
    pub program: String,
    /// Its version.
    pub program_version: String,
    /// Version of what the keys of its output mean.
    pub contract_version: u32,
    /// The command as a person may type it.
    pub command: String,
    /// The same, word by word, without the program's name: what is read when it is run again.
    pub arguments: Vec<String>,
    /// The option that named the file, such as `output`; none for what was printed.
    pub output: Option<String>,
    /// Name or file of the movement.
    pub movement: Option<String>,
    /// Name or file of the lifter.
    pub lifter: Option<String>,
    /// What hangs on the bar, one text a setup.
    pub setup: Vec<String>,
    /// Values that were set, as `PATH=VALUE`.
    pub set: Vec<String>,
    /// Hash of the built-in model files.
    pub model_hash: String,
    /// Model files of a folder of the user's.
    pub models: Vec<ModelFileRecord>,
    /// Other files that were read.
    pub files: Vec<ReadFileRecord>,
}

/// A model file that was added to the built-in ones or stood in the place of one.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct ModelFileRecord {
    /// Its path inside the folder, such as `lifters/reference-man.ron`.
    pub name: String,
    /// Hash of its content.
    pub hash: String,
    /// Whether a built-in file of this name was replaced; else it was added.
    pub replaced: bool,
}

/// A file that was read.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct ReadFileRecord {
    /// Its path as the arguments give it.
    pub name: String,
    /// Hash of its content.
    pub hash: String,
}

impl Default for RunRecord {
    /// A record of this program that says nothing else yet.
    fn default() -> Self {
        Self {
            program: PROGRAM.to_owned(),
            program_version: env!("CARGO_PKG_VERSION").to_owned(),
            contract_version: super::contract::CONTRACT_VERSION,
            command: String::new(),
            arguments: Vec::new(),
            output: None,
            movement: None,
            lifter: None,
            setup: Vec::new(),
            set: Vec::new(),
            model_hash: crate::library::model_hash().to_owned(),
            models: Vec::new(),
            files: Vec::new(),
        }
    }
}

impl RunRecord {
    /// The record in one line of ASCII, as pictures carry it.
    #[must_use]
    pub fn line(&self) -> String {
        ascii(&serde_json::to_string(self).expect("a record is a struct of texts"))
    }

    /// The record as commented lines over a table of CSV: `# key: value`, values as in JSON.
    #[must_use]
    pub fn csv_head(&self) -> String {
        let entries = self.entries().into_iter();
        entries
            .map(|(key, value)| format!("# {key}: {}\n", ascii(&value)))
            .collect()
    }

    /// Its keys, each with its value as in JSON.
    #[must_use]
    pub fn entries(&self) -> Vec<(String, String)> {
        let record = serde_json::to_value(self).expect("a record is a struct of texts");
        let entries = record.as_object().into_iter().flatten();
        entries
            .map(|(key, value)| (key.clone(), value.to_string()))
            .collect()
    }

    /// A record back from its line.
    ///
    /// **Fails** with what the reader of JSON says.
    pub fn from_line(line: &str) -> Result<Self, String> {
        serde_json::from_str(line).map_err(|fault| fault.to_string())
    }

    /// A record back from an object of JSON that holds it as `provenance`; `None` if it holds none.
    ///
    /// **Fails** with what the reader of JSON says.
    pub fn from_json(text: &str) -> Result<Option<Self>, String> {
        #[derive(Deserialize)]
        struct Holder {
            provenance: Option<RunRecord>,
        }
        let holder: Result<Holder, _> = serde_json::from_str(text);
        holder
            .map(|holder| holder.provenance)
            .map_err(|fault| fault.to_string())
    }

    /// A record back from the commented lines over a table; `None` if there are none.
    ///
    /// **Fails** with what the reader of JSON says.
    pub fn from_csv_head(text: &str) -> Result<Option<Self>, String> {
        let lines = text.lines().map_while(|line| line.strip_prefix("# "));
        let entries: Vec<String> = lines
            .filter_map(|line| line.split_once(": "))
            .map(|(key, value)| format!("{}:{value}", serde_json::Value::from(key)))
            .collect();
        if entries.is_empty() {
            return Ok(None);
        }
        Self::from_line(&format!("{{{}}}", entries.join(","))).map(Some)
    }
}

/// JSON with every sign outside ASCII as an escape, so that any file may carry it.
fn ascii(json: &str) -> String {
    let mut plain = String::with_capacity(json.len());
    let mut units = [0; 2];
    for sign in json.chars() {
        if (' '..='~').contains(&sign) {
            plain.push(sign);
        } else {
            for unit in sign.encode_utf16(&mut units) {
                plain.push_str(&format!("\\u{unit:04x}"));
            }
        }
    }
    plain
}
