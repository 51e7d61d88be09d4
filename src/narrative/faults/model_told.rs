//! Words for: what is wrong in a model file or a path of a value.

use super::known_told::did_you_mean;
use super::model_rule::own_folder;
use super::told::{TellFault, Told};
use super::{model_rule, model_setting, model_text};
use crate::error::{ExtendsFault, Fault, Known, ModelFault, Shelf};
use crate::narrative::model_files::shelf_name;
use crate::units::System;

/// The fault in words.
pub(super) fn told(fault: &ModelFault<Fault>, units: System, tell: TellFault) -> Told {
    match fault {
        ModelFault::Extends(fault) => extends(fault),
        ModelFault::Text(fault) => model_text::told(fault),
        ModelFault::Rule(fault) => model_rule::told(fault, units, tell),
        ModelFault::Setting(fault) => model_setting::told(fault),
        ModelFault::UnreadableFolder { folder, why } => Told::new(format!(
            "cannot read the folder of models `{folder}`: {why}"
        ))
        .hint("give a folder with the layout of models/, such as DIR/lifters/NAME.ron"),
        ModelFault::NoModelFolder { folder } => Told::new(format!(
            "`{folder}` holds none of the folders of model files"
        ))
        .hint(format!("files are looked for in {}/", folders())),
        ModelFault::MisspeltFolder { folder, known } => Told::new(format!(
            "`{folder}` holds model files, but no kind of them has a folder of that name"
        ))
        .hint(did_you_mean(known)),
        ModelFault::NoSuchFile { shelf, name, known } => {
            let told = Told::new(format!("no {} is called `{name}`", shelf_name(*shelf)));
            own_folder(told.hint(did_you_mean(known)), known, shelf.folder(), name)
        }
        ModelFault::NoSuchPublication { key, known } => no_such_publication(key, known),
        ModelFault::IsLog { file } => Told::new(format!("{file} is a table, no model file"))
            .hint(format!(
                "if it is a training log, `torquill progress --log {file}` reads it and says what is wrong"
            )),
        ModelFault::NoKind { file } => no_kind(file),
    }
}

fn extends(fault: &ExtendsFault) -> Told {
    match fault {
        ExtendsFault::NoName => Told::new("`extends` holds no name")
            .hint("write the name of a file of the same kind, such as extends: \"reference-man\""),
        ExtendsFault::Circle { files } => Told::new(format!(
            "files extend one another in a circle: {}",
            files.join(" → ")
        ))
        .hint("let one of them stand on its own or on a built-in file"),
        ExtendsFault::NoSuchFile { shelf, name, known } => Told::new(format!(
            "no {} is called `{name}`, so it cannot be extended",
            shelf_name(*shelf)
        ))
        .hint(did_you_mean(known)),
    }
}

fn no_such_publication(key: &str, known: &Known) -> Told {
    let told = Told::new(format!("`{key}` is no publication of sources.ron"));
    // The list of all is too long for a message.
    told.hint(if known.near.is_empty() {
        "`torquill sources` lists the keys; a new publication goes into sources.ron".to_owned()
    } else {
        did_you_mean(known)
    })
}

fn no_kind(file: &str) -> Told {
    Told::new(format!(
        "nothing in `{file}` tells what kind of model file it is"
    ))
    .hint(format!(
        "put it into a folder that says so ({}/), or begin with a file of models/",
        folders()
    ))
}

/// The folders of model files.
fn folders() -> String {
    Shelf::ALL.map(Shelf::folder).join("/, ")
}
