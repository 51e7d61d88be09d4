//! What `src/library/outline.rs` does, from inside.

use torquill::library::outline::RecordOutline;

const TEXT: &str = r#"// a table
Table(
    muscles: { "biceps": (pennation: "75 deg", at: {elbow: Angle("1 deg")}) }, /* ü /* n */ */
    list: [1.0, NaN, (r"a", 'b')], path: Arm((friction: 0.5)), path: Free,
)"#;

#[test]
fn regress_finds_fields_keys_items_and_passes_through_tags() {
    let outline = RecordOutline::of(TEXT);
    let value = |path: &str| outline.slice(&outline.find(path).expect(path).value);
    assert_eq!(value("muscles.biceps.pennation"), "\"75 deg\"");
    assert_eq!(value("muscles.biceps.at.elbow"), "Angle(\"1 deg\")");
    assert_eq!(value("list.2.0"), "r\"a\"");
    assert_eq!(value("path.friction"), "0.5");
    assert_eq!(value("muscles.biceps.nowhere"), value("muscles.biceps"));
    let inner = TEXT.find("0.5").expect("it is there");
    let inner = outline.innermost(inner).expect("it is inside");
    assert_eq!(outline.path(inner), "path.friction");
}

#[test]
fn regress_finds_repeated_fields_and_numbers_that_are_not_finite() {
    let outline = RecordOutline::of(TEXT);
    let names = |found: Vec<usize>| -> Vec<String> {
        found.into_iter().map(|index| outline.path(index)).collect()
    };
    assert_eq!(names(outline.repeated()), ["path"]);
    assert_eq!(names(outline.not_finite()), ["list.1"]);
}

#[test]
fn fault_a_broken_text_gives_what_stands_before_the_break() {
    let outline = RecordOutline::of("(a: 1, b: (c: \"x");
    assert_eq!(
        outline.slice(&outline.find("a").expect("a is read").value),
        "1"
    );
    assert!(outline.innermost(12).is_some());
}
