//! What `src/setups/new_gym.rs` does, from inside.

use torquill::error::GymPart;
use torquill::setups::new_gym::{NewGym, field};

#[test]
fn law_parts_become_fields() {
    for (part, text, expected) in [
        (
            GymPart::Bars,
            "20 kg, women's bar = 15 kg",
            r#"bars: [(name: "bar 20 kg", mass: "20 kg"), (name: "women's bar", mass: "15 kg")],"#,
        ),
        (
            GymPart::Plates,
            "4 x 20 kg, 45 lb x 2",
            r#"plates: [(mass: "20 kg", count: 4), (mass: "45 lb", count: 2)],"#,
        ),
        (
            GymPart::Dumbbells,
            "5 kg..10 kg by 2.5 kg, 14 kg",
            r#"dumbbells: ["5 kg", "7.5 kg", "10 kg", "14 kg"],"#,
        ),
        (
            GymPart::Stack,
            "5 kg..80 kg",
            r#"stack: (step: "5 kg", most: "80 kg"),"#,
        ),
        (
            GymPart::Bands,
            "loop-14mm, loop-29mm x 4",
            r#"bands: [(name: "loop-14mm", count: 2), (name: "loop-29mm", count: 4)],"#,
        ),
        (
            GymPart::Anchors,
            "pin = 75 cm",
            r#"anchors: {"pin": (height: "75 cm")},"#,
        ),
        (
            GymPart::SafetyArms,
            "30 cm..120 cm by 5 cm",
            r#"safety_arms: (lowest: "30 cm", highest: "120 cm", step: "5 cm"),"#,
        ),
        (
            GymPart::Sled,
            "45 kg",
            r#"sled: (mass: "45 kg", friction: 0.03),"#,
        ),
    ] {
        assert_eq!(field(part, text).expect(text).as_deref(), Some(expected));
    }
}

#[test]
fn fault_what_is_no_part_is_refused() {
    for (part, text) in [
        (GymPart::Bars, "heavy"),
        (GymPart::Plates, "20 kg"),
        (GymPart::Plates, "x x 20 kg"),
        (GymPart::Dumbbells, "5 kg..500 kg by 1 kg"),
        (GymPart::Dumbbells, "20 kg..5 kg by 1 kg"),
        (GymPart::Stack, "80 kg"),
        (GymPart::SafetyArms, "30 cm..120 cm"),
        (GymPart::SafetyArms, "30 kg..120 kg by 5 kg"),
        (GymPart::Anchors, "pin"),
        (GymPart::Bands, "14 mm"),
    ] {
        assert!(field(part, text).is_err(), "{text}");
    }
}

#[test]
fn law_what_is_not_told_is_assumed_and_said() {
    let told = |part| (part == GymPart::Bars).then(|| "10 kg".to_owned());
    let gym = NewGym::of("Home", false, told, |_| {
        torquill::setups::new_gym::NONE.to_owned()
    });
    let gym = gym.expect("the usual is sound");
    assert_eq!(gym.assumed.len(), GymPart::ALL.len() - 1);
    let file = gym.file("said \"so\"");
    assert!(
        file.contains("bar 10 kg") && file.contains("said \\\"so\\\""),
        "{file}"
    );
    assert!(!file.contains("collars"));
}
