//! Tests of `resistance`.
