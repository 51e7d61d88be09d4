//! The folder `models/`, compiled in.
//!
//! In: nothing. Out: the text of every model file by its relative path.

use include_dir::{Dir, include_dir};

static MODELS: Dir<'_> = include_dir!("$CARGO_MANIFEST_DIR/models");

/// The text of a file such as `lifters/reference-man.ron`, if the program holds it.
#[must_use]
pub fn text(path: &str) -> Option<&'static str> {
    MODELS.get_file(path)?.contents_utf8()
}

/// Names of the `.ron` files of a folder, in no order.
pub fn names(folder: &str) -> impl Iterator<Item = &'static str> {
    MODELS
        .get_dir(folder)
        .into_iter()
        .flat_map(Dir::files)
        .filter(|file| file.path().extension().is_some_and(|e| e == "ron"))
        .filter_map(|file| file.path().file_stem()?.to_str())
}
