//! Every line is reached: all rooms as private modules of one program whose only way in is the command line (and the
//! library's front, once it stands), so that the compiler finds what nothing uses. Never run; checked with all targets.
#![deny(dead_code)]
// What `mod.rs` passes on is for those who use the library.
#![allow(missing_docs, unused_imports, clippy::all)]

#[path = "../../src/anatomy/mod.rs"]
mod anatomy;
#[path = "../../src/bounds/mod.rs"]
mod bounds;
#[path = "../../src/capacity/mod.rs"]
mod capacity;
#[path = "../../src/cli/mod.rs"]
mod cli;
#[path = "../../src/demand/mod.rs"]
mod demand;
#[path = "../../src/draw/mod.rs"]
mod draw;
#[path = "../../src/error/mod.rs"]
mod error;
#[path = "../../src/explore/mod.rs"]
mod explore;
#[path = "../../src/figures/mod.rs"]
mod figures;
#[path = "../../src/grammar/mod.rs"]
mod grammar;
#[path = "../../src/lecture/mod.rs"]
mod lecture;
#[path = "../../src/library/mod.rs"]
mod library;
#[path = "../../src/lift/mod.rs"]
#[allow(dead_code)]
mod lift;
#[path = "../../src/movement/mod.rs"]
mod movement;
#[path = "../../src/narrative/mod.rs"]
mod narrative;
#[path = "../../src/numeric/mod.rs"]
mod numeric;
#[path = "../../src/overlay/mod.rs"]
mod overlay;
#[path = "../../src/person/mod.rs"]
mod person;
#[path = "../../src/plot/mod.rs"]
mod plot;
#[path = "../../src/progress/mod.rs"]
mod progress;
#[path = "../../src/rep/mod.rs"]
mod rep;
#[path = "../../src/report/mod.rs"]
mod report;
#[path = "../../src/resistance/mod.rs"]
mod resistance;
#[path = "../../src/session/mod.rs"]
mod session;
#[path = "../../src/setups/mod.rs"]
mod setups;
#[path = "../../src/source.rs"]
mod source;
#[path = "../../src/study/mod.rs"]
mod study;
#[path = "../../src/units/mod.rs"]
mod units;

/// The way in.
#[allow(dead_code)]
fn way_in() -> u8 {
    // As the live page's module calls it, and its test.
    let mut laboratory = explore::Laboratory::default();
    let _ = laboratory.ask("");
    let _ = laboratory.numbers(&explore::PageState::default());
    // As the package for Python calls it, and its test.
    let called = cli::call_inside(&[cli::definitions().get_name().to_owned()]);
    let said = called.stdout.len() + called.stderr.len();
    // As the tests of the doors call it.
    let _ = cli::asked_again("", &[]);
    cli::run() + called.status + u8::from(said == 0)
}

fn main() {}
