//! Tests of `session`.

mod look;
