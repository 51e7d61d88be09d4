//! The gallery of the README: every picture is as the program draws it today.

use std::collections::BTreeSet;
use std::fs;
use std::path::Path;
use std::process::Command;

const PROGRAM: &str = env!("CARGO_BIN_EXE_torquill");

/// The files of a folder but the script that draws them.
fn names(folder: &Path) -> BTreeSet<String> {
    fs::read_dir(folder)
        .expect("the folder is there")
        .map(|entry| entry.expect("an entry").file_name())
        .map(|name| name.to_string_lossy().into_owned())
        .filter(|name| name != "redraw")
        .collect()
}

/// What a file shows: pixels of a PNG, an SVG without what it says of its making, which changes with every model file.
fn shown(bytes: &[u8]) -> Vec<u8> {
    if let Ok(text) = std::str::from_utf8(bytes) {
        let (before, behind) = text.split_once("<metadata").unwrap_or((text, ""));
        let behind = behind
            .split_once("</metadata>")
            .map_or("", |(_, behind)| behind);
        return format!("{before}{behind}").into_bytes();
    }
    let decoder = png::Decoder::new(std::io::Cursor::new(bytes));
    let mut reader = decoder.read_info().expect("a picture");
    let mut pixels = vec![0; reader.output_buffer_size().expect("it has a size")];
    reader.next_frame(&mut pixels).expect("its pixels");
    pixels
}

#[test]
fn regress_the_gallery_is_as_the_program_draws_it() {
    let gallery = Path::new("figures");
    let drawn = tempfile::tempdir().expect("a folder can be made");
    let script = Command::new("bash")
        .arg(gallery.join("redraw"))
        .arg(PROGRAM)
        .arg(drawn.path())
        .output()
        .expect("bash runs");
    assert!(
        script.status.success(),
        "{}",
        String::from_utf8_lossy(&script.stderr)
    );
    let (kept, made) = (names(gallery), names(drawn.path()));
    let differs = |name: &&String| {
        let read = |folder: &Path| fs::read(folder.join(name)).ok().map(|bytes| shown(&bytes));
        read(gallery) != read(drawn.path())
    };
    let changed: Vec<&String> = kept.union(&made).filter(differs).collect();
    assert!(
        changed.is_empty(),
        "these pictures of figures/ are drawn differently now: {changed:?}. Look at them after \
         `bash figures/redraw`, and commit them only if the change is meant"
    );
}
