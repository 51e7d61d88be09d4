//! A band or chain setup of a session, one part a line.
//!
//! In: the setup as it was picked or named. Out: lines: bar and plates, then every band and chain.

use super::hanging::hung_pieces;
use super::implements::item_in_words;
use super::loads::loading_in_words;
use crate::session::accommodating_setup::AccommodatingSetup;
use crate::units::System;

/// The parts of a setup; none where there is no setup.
#[must_use]
pub fn setup_lines(setup: Option<&AccommodatingSetup>, units: System) -> Vec<String> {
    let Some(setup) = setup else {
        return Vec::new();
    };
    let mut lines = vec![loading_in_words(&setup.bar_and_plates)];
    match &setup.anchors {
        Some(anchors) => lines.extend(hung_pieces(&setup.hung, anchors, units)),
        None => lines.extend(setup.hung.iter().map(|item| item_in_words(item, units))),
    }
    lines
}
