//! Model files that extend others: each is read as one text, the files it stands on told with it.
//!
//! In: a kind and a name, or a text. Out: [`LayeredText`], or why what a file extends is not to be had.

use super::bounded_read::text_of_file;
use super::built_in;
use super::folder_check::is_model_file;
use super::layered_text::LayeredText;
use super::merging::laid_over;
use super::outline::{EXTENDS, RecordOutline};
use super::read::bounded;
use super::records::Library;
use super::word_brackets::in_both_brackets;
use crate::error::{ExtendsFault, Fault, Result, Shelf};
use std::path::{Path, PathBuf};

/// A file on the way down: what tells it from all others, and its name as messages show it.
type TrailStep = (PathBuf, String);

impl Library {
    /// A model file by name or path, laid over those that it extends.
    ///
    /// **Fails** as [`Library::text`], and where what it extends is not to be had.
    pub(super) fn layered(&self, shelf: Shelf, name: &str) -> Result<LayeredText> {
        let (file, text) = self.text(shelf, name)?;
        self.layered_text(shelf, &file, &text)
    }

    /// The text of a model file, laid over those that it extends.
    ///
    /// **Fails** where its own text is broken, and where what it extends is not to be had.
    pub(super) fn layered_text(&self, shelf: Shelf, file: &str, text: &str) -> Result<LayeredText> {
        let mut trail = vec![(identity(file), file.to_owned())];
        self.over_base(shelf, LayeredText::of(file, text), &mut trail)
    }

    /// A file laid over what it extends, and that over what it extends in turn.
    fn over_base(
        &self,
        shelf: Shelf,
        own: LayeredText,
        trail: &mut Vec<TrailStep>,
    ) -> Result<LayeredText> {
        bounded(own.file(), own.text())?;
        // A broken text laid over a sound one would be told as a fault of the sound one.
        if own.text().contains(EXTENDS) {
            own.check_grammar()?;
        }
        let own = in_both_brackets(shelf, own);
        let outline = RecordOutline::of(own.text());
        let Some(named) = outline
            .children(0)
            .find(|child| outline.name(*child) == Some(EXTENDS))
        else {
            return Ok(own);
        };
        let stretch = outline.nodes[named].value.clone();
        let written = outline.slice(&stretch);
        let refused =
            |fault: ExtendsFault| Fault::new(fault).at(outline.place(own.file(), &stretch));
        let name = written
            .strip_prefix('"')
            .and_then(|rest| rest.strip_suffix('"'))
            .filter(|name| !name.trim().is_empty())
            .ok_or_else(|| refused(ExtendsFault::NoName))?;
        let (step, text) = self
            .base_of(shelf, name, own.file(), trail)
            .map_err(refused)?;
        let base = LayeredText::of(&step.1, &text);
        trail.push(step);
        let base = self.over_base(shelf, base, trail)?;
        Ok(laid_over(&own, &base))
    }

    /// The file that a name means where it is extended, and its text.
    fn base_of(
        &self,
        shelf: Shelf,
        name: &str,
        from: &str,
        trail: &[TrailStep],
    ) -> std::result::Result<(TrailStep, String), ExtendsFault> {
        let inside = format!("{}/{name}.ron", shelf.folder());
        let own = if is_model_file(Path::new(name)) {
            let folder = Path::new(from).parent().unwrap_or(Path::new(""));
            Some(folder.join(name))
        } else {
            self.own_file(&inside)
        };
        let own = own.map(|path| (path.clone(), path.display().to_string()));
        let shipped = built_in::text(&inside);
        let shown = format!("models/{inside}");
        let in_files = own.map(|(path, shown)| {
            let text = text_of_file(&path).ok();
            ((identity(&shown), shown), text)
        });
        let in_program =
            shipped.map(|text| ((built_in_identity(&shown), shown), Some(text.to_owned())));
        let found: Vec<(TrailStep, Option<String>)> =
            in_files.into_iter().chain(in_program).collect();
        let is_new = |step: &TrailStep| trail.iter().all(|(passed, _)| *passed != step.0);
        let taken = found
            .iter()
            .find(|(step, text)| is_new(step) && text.is_some());
        if let Some((step, Some(text))) = taken {
            return Ok((step.clone(), text.clone()));
        }
        match found.first() {
            Some((step, Some(_))) => {
                let files = trail.iter().map(|(_, file)| file.clone());
                Err(ExtendsFault::Circle {
                    files: files.chain([step.1.clone()]).collect(),
                })
            }
            _ => Err(ExtendsFault::NoSuchFile {
                shelf,
                name: name.to_owned(),
                known: self.known(shelf, name),
            }),
        }
    }
}

/// What tells a file of the user's from all others.
fn identity(file: &str) -> PathBuf {
    std::fs::canonicalize(file).unwrap_or_else(|_| PathBuf::from(file))
}

/// What tells a built-in file from all others, those of a checkout among them.
fn built_in_identity(shown: &str) -> PathBuf {
    PathBuf::from(format!("built-in:{shown}"))
}
