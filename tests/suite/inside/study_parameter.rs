//! What `src/study/parameter.rs` does, from inside.

use torquill::study::parameter::*;

#[test]
fn regress_lists_and_ranges_are_read() {
    let values = |text: &str| Parameter::read("technique.grip_width", text).map(|p| p.values);
    assert_eq!(
        values("-20%, 0%,+20%").expect("values"),
        ["-20%", "+0%", "+20%"]
    );
    assert_eq!(
        values("50 cm..90 cm:5").expect("values"),
        ["50 cm", "60 cm", "70 cm", "80 cm", "90 cm"]
    );
    assert_eq!(values("50..60 cm:2").expect("values"), ["50 cm", "60 cm"]);
    assert_eq!(
        values("-10%..+10%:3").expect("values"),
        ["-10%", "+0%", "+10%"]
    );
    assert_eq!(values("50 cm").expect("values"), ["50 cm"]);
    assert_eq!(values("high,low").expect("values"), ["high", "low"]);
    assert_eq!(values("0.5..1").expect("values").len(), 5);
}

#[test]
fn fault_bad_values_are_refused() {
    for bad in [
        "10%,20%",
        "1..2:1",
        "",
        "1,,2",
        "1 cm..2 in:3",
        "1..1",
        "1..2:x",
        "1..2:99",
        "5,5",
    ] {
        assert!(
            Parameter::read("technique.grip_width", bad).is_err(),
            "{bad}"
        );
    }
}
