//! Tests of `numeric`.
