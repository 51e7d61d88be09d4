//! One door under libFuzzer: `DOOR` names it.
#![no_main]

#[path = "../src/doors.rs"]
mod doors;

use std::sync::OnceLock;

static DOOR: OnceLock<doors::Door> = OnceLock::new();

fn door() -> &'static doors::Door {
    DOOR.get_or_init(|| {
        let name = std::env::var("DOOR").unwrap_or_default();
        doors::door(&name).unwrap_or_else(|| panic!("DOOR is one of: {}", doors::names()))
    })
}

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| {
    (door().feed)(bytes);
});
