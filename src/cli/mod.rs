//! The command line: one command a file.

mod complain;

pub use complain::render;
