//! What `src/explore/task_start.rs` does, from inside.

use torquill::explore::task_start::{decoded, state_of};
use torquill::library::Library;

#[test]
fn law_words_of_an_address_are_read_as_a_browser_does() {
    for (word, plain) in [
        ("a+b%20c", "a b c"),
        ("technique.grip_width%3D80+cm", "technique.grip_width=80 cm"),
        ("%", "%"),
        ("%4", "%4"),
        ("%zz", "%zz"),
        ("%+1", "% 1"),
        ("%C2%B5", "µ"),
    ] {
        assert_eq!(decoded(word), plain);
    }
}

#[test]
fn law_an_address_is_the_state_that_the_page_makes_of_it() {
    let address = "#v=1&lift=knee-extension&lifter=reference-woman&load=12.345&speed=60&units=us&band=loop-14mm%3A2\
                   &set=segments.shank.length%3D%2B5%25&at=0.5";
    let state = state_of(address, &Library::built_in()).expect("it is one");
    assert_eq!(
        (state.load[0].as_str(), state.band[0].as_str()),
        ("12.35 lb", "loop-14mm:2")
    );
    assert_eq!(state.speed.as_deref(), Some("60 deg/s"));
    assert_eq!(state.set, ["segments.shank.length=+5%"]);
    assert!(state_of("#lift=nothing", &Library::built_in()).is_err());
}
