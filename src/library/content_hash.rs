//! The content of files as a short text that changes whenever they do: SHA-256 (FIPS 180-4).
//!
//! In: bytes. Out: `sha256:` and 64 hexadecimal digits. The build script reads this file too, so that the hash of the
//! built-in files is worked out once, when the program is built.

use sha2::{Digest, Sha256};
use std::fmt::Write;

/// The hash of one file.
#[must_use]
pub fn hash_of(bytes: &[u8]) -> String {
    let mut text = "sha256:".to_owned();
    for byte in Sha256::digest(bytes) {
        let _ = write!(text, "{byte:02x}");
    }
    text
}
