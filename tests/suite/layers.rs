//! Tests of `layers`.
