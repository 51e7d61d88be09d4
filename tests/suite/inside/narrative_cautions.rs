//! What `src/narrative/cautions.rs` does, from inside.

use torquill::library::Library;

use torquill::narrative::cautions::*;

use torquill::setups::Caution;

#[test]
fn law_every_caution_has_a_listed_source() {
    let sources = Library::built_in().sources().expect("the shipped list");
    for known in [HEART, SPOTTING, BACK, EYES, SPREAD, SORENESS] {
        let key = known.split(':').next().unwrap_or_default();
        assert!(sources.contains_key(key), "{known}");
    }
    assert_eq!(usual(&Caution::Disclaimer).1, RULES);
}
