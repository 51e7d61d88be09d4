//! Words for every implement on the command line: each example reads, each slip is told.

use crate::resistance_words::{LEVER, SLED, Shelf};
use torquill::grammar::{IMPLEMENTS, SetupFile, item_from_text};
use torquill::movement::Carrier;
use torquill::narrative::faults::in_one_line;
use torquill::narrative::implements::item_in_words;
use torquill::resistance::Setup;
use torquill::units::System;

/// The example of every row of [`IMPLEMENTS`] as a record of a setup file, in their order.
#[rustfmt::skip]
const RECORDS: [&str; IMPLEMENTS.len()] = [
    r#"Weight(Bar("20 kg"))"#,
    r#"Weight(Plates(each: "20 kg", pairs: 2))"#,
    r#"Weight(OnePlate(mass: "5 kg", side: Left))"#,
    r#"Weight(Collars(each: "2.5 kg"))"#,
    r#"Weight(Dumbbell("12 kg"))"#,
    r#"Weight(Belt("20 kg"))"#,
    r#"Weight(BodyMass("80 kg"))"#,
    r#"Band("loop-29mm:1@floor,doubled")"#,
    r#"Chain("chain-10mm:2")"#,
    r#"Cable((stack: "40 kg", ratio: 2.0, friction: 0.05, lead: Pulley((height: "220 cm"))))"#,
    r#"Cam((profile: [("0 deg", "10 cm"), ("60 deg", "14 cm")]))"#,
    r#"Lever((mass: "30 kg", arm: "50 cm", turns: AboutPivot(pivot: (height: "120 cm", offset: "-90 cm"), plates_ahead: "5 deg")))"#,
    r#"Sled((mass: "50 kg", friction: 0.03))"#,
    r#"EccentricOnly(Hung("20 kg"))"#,
    r#"Assistance(Spotter(force: "150 N"))"#,
    r#"Assistance(Counterweight("20 kg"))"#,
];

#[test]
fn law_every_kind_of_item_is_read_from_its_example() {
    let shelf = Shelf::new();
    let same = |text: &str, record: &str| {
        let file: SetupFile = ron::from_str(&format!("(items: [{record}])")).expect(record);
        let written = file.resolve(&shelf.stock()).expect(record).items.remove(0);
        assert_eq!(item_from_text(text, &shelf.stock()).expect(text), written);
    };
    for row in IMPLEMENTS {
        let item = item_from_text(row.example, &shelf.stock()).expect(row.example);
        let setup = Setup::new("", vec![item.clone()]);
        let carriers = [Carrier::Bar, Carrier::Dumbbell, SLED, LEVER, Carrier::Body];
        let somewhere = carriers
            .iter()
            .any(|carrier| setup.check_for(carrier, "a lift").is_ok());
        assert!(somewhere, "{} makes sense somewhere", row.word);
        assert_eq!(item.kind(), row.kind, "{}", row.word);
        assert!(!item_in_words(&item, System::Metric).is_empty());
    }
    let records = RECORDS.iter().zip(IMPLEMENTS);
    for (record, row) in records {
        same(row.example, record);
    }
    same(
        "cable 40 kg, ratio 2, friction 5 %, from rack-high, offset -30 cm",
        r#"Cable((stack: "40 kg", ratio: 2.0, friction: 0.05, lead: Pulley((height: "220 cm", offset: "-30 cm"))))"#,
    );
    same(
        "lever 30 kg, arm 50 cm, start 10 deg",
        r#"Lever((mass: "30 kg", arm: "50 cm", turns: WithPad(start: "10 deg")))"#,
    );
    same(
        "spotter 20 %, phase both",
        "Assistance(SpotterShare(share: 0.2, in_lowering: true))",
    );
    same("lowering 200 N", r#"EccentricOnly(Pushed("200 N"))"#);
    same(
        "plates 45 lb, pairs 3",
        r#"Weight(Plates(each: "45 lb", pairs: 3))"#,
    );
}

#[test]
fn fault_bad_item_texts_say_what_is_wrong() {
    let shelf = Shelf::new();
    for (text, says) in [
        ("", "is no kind of load"),
        ("rope 3 kg", "kinds are bar, plates"),
        ("cable", "expected a mass"),
        ("cable 40", "has no unit"),
        ("cable 40 kg, rato 2", "`rato`"),
        ("cable 40 kg, ratio two", "no number"),
        ("cable 40 kg, ratio NaN", "no number"),
        ("cable 40 kg, ratio 0", "cable ratio 0 is outside"),
        ("cable 40 kg, from floor, angle 3 deg", "two ways"),
        ("cam 0 deg", "no point of a cam"),
        ("cam 0 deg=10 cm, 0 deg=12 cm", "must rise"),
        ("cam 0 deg=10 cm, 50 deg=12 m", "cam radius 12 m"),
        ("lever 30 kg", "how long"),
        ("lever 30 kg, arm 50 cm", "turns about"),
        ("plate 5 kg", "no side"),
        ("plates 5 kg, pairs 0", "no count of pairs"),
        ("spotter -20 N", "spotter's force -20 N"),
        ("spotter 120 %", "spotter's share 1.2"),
        ("spotter 20 %, phase never", "no phase"),
        ("sled 50 kg, friction 2", "friction 2 is outside"),
        ("lowering 9000 N", "push 9000 N"),
    ] {
        let error = item_from_text(text, &shelf.stock()).expect_err(text);
        let words = in_one_line(&error, System::Metric);
        assert!(words.contains(says), "{text}: {words}");
        assert_eq!(error.exit_status(), 2);
    }
}
