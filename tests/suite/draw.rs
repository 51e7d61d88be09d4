//! Tests of `draw`.
