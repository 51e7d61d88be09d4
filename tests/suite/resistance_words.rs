//! Words in and out of `resistance`: option texts, setup files, refusals, shipped bands and chains.

use crate::resistance::band_of;
use crate::resistance_laws::chain;
use std::collections::BTreeMap;
use torquill::error::{Error, ImplementFault};
use torquill::grammar::{
    ItemRecord, SetupFile, Stock, band_from_text, chain_from_text, load_from_text,
    own_band_from_text,
};
use torquill::movement::Carrier;
use torquill::narrative::faults::in_one_line;
use torquill::narrative::implements::{
    fit_in_words, item_in_words, kind_with_article, setup_in_words,
};
use torquill::resistance::{
    Anchor, Band, BandPull, Chain, ChainHang, Hang, HangingSide, HungChain, Item, Setup, Weight,
};
use torquill::source::{Publication, Source};
use torquill::units::{Length, Mass, QuantityFault, System};

pub const SLED: Carrier = Carrier::Sled { angle_rad: 0.785 };
pub const LEVER: Carrier = Carrier::Lever {
    pad_m: 0.35,
    cam_m: 0.12,
};

fn named(name: &str, width_mm: f64) -> (String, Band) {
    let (width, thickness) = (Length::from_mm(width_mm), Length::from_mm(4.5));
    let band = band_of(name, width, thickness, Length::from_in(41.0));
    (name.to_owned(), band)
}

pub struct Shelf {
    bands: BTreeMap<String, Band>,
    chains: BTreeMap<String, Chain>,
    anchors: BTreeMap<String, Anchor>,
}

impl Shelf {
    pub fn new() -> Self {
        let peg = Anchor::at(Length::from_cm(12.0), Length::ZERO).expect("a peg");
        Self {
            bands: [named("loop-29mm", 29.0), named("loop-64mm", 64.0)].into(),
            chains: [("chain-10mm".to_owned(), chain(2.2, 1.8))].into(),
            anchors: [("peg".to_owned(), peg)].into(),
        }
    }

    pub fn stock(&self) -> Stock<'_> {
        Stock {
            bands: &self.bands,
            chains: &self.chains,
            anchors: &self.anchors,
        }
    }
}

#[test]
fn regress_band_texts_say_count_anchor_and_hang() {
    let shelf = Shelf::new();
    let read = |text: &str| band_from_text(text, &shelf.stock()).expect(text);
    let plain = read("loop-29mm");
    assert_eq!(
        (plain.count, plain.side, plain.hang),
        (1, HangingSide::Both, Hang::Auto)
    );
    assert_eq!(plain.anchor, Anchor::FLOOR);
    let rich = read("loop-64mm:3@10 cm,-20 cm,doubled,left");
    assert_eq!(
        (rich.count, rich.side, rich.hang),
        (3, HangingSide::Left, Hang::Doubled)
    );
    assert!((rich.anchor.height().as_cm() - 10.0).abs() < 1e-12);
    assert!((rich.anchor.offset().as_cm() + 20.0).abs() < 1e-12);
    assert!((read("loop-29mm:1@peg").anchor.height().as_cm() - 12.0).abs() < 1e-12);
    assert!((read("loop-29mm@rack-high,choked").anchor.height().as_cm() - 220.0).abs() < 1e-12);
    assert_eq!(read("loop-29mm:2,middle").side, HangingSide::Middle);
}

#[test]
fn regress_chain_texts_say_count_box_leader_and_hang() {
    let shelf = Shelf::new();
    let read = |text: &str| chain_from_text(text, &shelf.stock()).expect(text);
    assert_eq!(read("chain-10mm:2").count, 2);
    let rich = read("chain-10mm:2@15 cm,doubled,leader 40 cm");
    assert_eq!(
        (rich.hang, rich.floor),
        (ChainHang::DoubleLooped, Length::from_cm(15.0))
    );
    assert!((rich.chain.leader().length.as_cm() - 40.0).abs() < 1e-12);
}

#[test]
fn fault_bad_texts_say_what_is_wrong_and_what_to_write() {
    let shelf = Shelf::new();
    let stock = shelf.stock();
    for (text, says) in [
        ("loop-92mm", "did you mean loop-29mm"),
        ("rope", "bands are loop-29mm, loop-64mm"),
        ("loop-29mm:0", "no count"),
        ("loop-29mm:two", "no count"),
        ("loop-29mm:-1", "no count"),
        ("loop-29mm:999999999999", "no count"),
        (":2", "names no band"),
        ("", "names no band"),
        ("loop-29mm:1@ceiling", "no anchor is named `ceiling`"),
        ("loop-29mm:1@10", "has no unit"),
        ("loop-29mm:1@-10 cm", "heights run from"),
        ("loop-29mm:1@10 cm,900 cm", "offsets run from"),
        ("loop-29mm,trebled", "`trebled`"),
        ("loop-29mm,leader 20 cm", "says nothing about bands"),
    ] {
        let error = band_from_text(text, &stock).expect_err(text);
        assert!(
            in_one_line(&error, System::Metric).contains(says),
            "{text}: {error}"
        );
        assert_eq!(error.exit_status(), 2);
    }
    for (text, says) in [
        ("chain-10m", "did you mean chain-10mm"),
        ("chain-10mm:1@5 m", "cannot come to lie"),
        ("chain-10mm,choked", "says nothing about chains"),
        ("chain-10mm,leader", "expected a length"),
        ("chain-10mm,leader 90 m", "leader length 90 m is outside"),
    ] {
        let error = chain_from_text(text, &stock).expect_err(text);
        assert!(
            in_one_line(&error, System::Metric).contains(says),
            "{text}: {error}"
        );
    }
    for (text, says) in [
        ("100", "has no unit"),
        ("-5 kg", "outside what a mass can be"),
        ("NaN kg", "no mass"),
        ("5000 kg", "no load that anybody lifts"),
        ("100 cm", "units of mass are kg"),
    ] {
        let error = load_from_text(text).expect_err(text);
        assert!(
            in_one_line(&error, System::Metric).contains(says),
            "{text}: {error}"
        );
    }
}

#[test]
fn regress_own_bands_are_read_from_one_line() {
    let mine = own_band_from_text("mine: rest=104 cm, 130 cm=8 kg, 180 cm=20 kg").expect("a band");
    assert_eq!(mine.name(), "mine");
    let BandPull::Readings(fitted) = mine.pull() else {
        panic!("measured")
    };
    let words = fit_in_words(fitted, System::Metric);
    assert!(words.contains("2 readings"), "{words}");
    assert!((mine.force_n(1.8, Hang::Single) / 9.80665 - 20.0).abs() < 0.1);
    let sought =
        own_band_from_text("mine: 130 cm=8 kg, 150 cm=12 kg, 170 cm=15 kg").expect("a band");
    assert!(sought.rest_length().as_cm() < 130.0);
    for (text, says) in [
        ("130 cm=8 kg, 180 cm=20 kg", "name is missing"),
        (
            "mine: 130 cm=8 kg, 180 cm=20 kg",
            "two readings cannot tell the rest length",
        ),
        (
            "mine: rest=140 cm, 130 cm=8 kg, 180 cm=20 kg",
            "cannot pull at 130 cm",
        ),
        ("mine: rest=100 cm, 130 cm", "no reading"),
        ("mine: rest=100 cm", "too few"),
        ("mine: 100 cm=0 kg, 90 cm=5 kg, 120 cm=9 kg", "misread"),
        ("mine: rest=100 cm, 130 cm=8 s, 150 cm=9 kg", "no pull"),
    ] {
        let error = own_band_from_text(text).expect_err(text);
        assert!(
            in_one_line(&error, System::Metric).contains(says),
            "{text}: {error}"
        );
    }
}

const FILE: &str = r#"Setup(
    name: "everything",
    items: [
        Weight(Bar("20 kg")),
        Weight(Plates(each: "45 lb", pairs: 1)),
        Weight(Collars(each: "2.5 kg")),
        Band("loop-29mm:2@peg,doubled"),
        OwnBand(
            band: (
                name: "tube",
                rest_length: "100 cm",
                pull: Readings([("120 cm", "5 kg"), ("160 cm", "11 kg")]),
                source: Assumed("read off a scale"),
            ),
            anchor: "ahead",
        ),
        Chain("chain-10mm:1"),
        OwnChain(
            chain: (name: "ours", links: Round(wire: "10 mm", pitch: "28 mm", inside_width: "12 mm"), length: "1.5 m"),
            hang: DoubleLooped,
            leader: (length: "30 cm", mass: "0.2 kg"),
        ),
        Cable((stack: "20 kg", ratio: 2.0, friction: 0.05, lead: Direction("-80 deg"))),
        Cam((profile: [("0 deg", "10 cm"), ("60 deg", "14 cm")])),
        Lever((mass: "30 kg", arm: "50 cm", turns: AboutPivot(pivot: (height: "120 cm", offset: "-90 cm"), plates_ahead: "5 deg"))),
        Sled((mass: "50 kg", friction: 0.05)),
        EccentricOnly(Hung("10 kg")),
        EccentricOnly(Pushed("100 N")),
        Assistance(Spotter(force: "50 N")),
        Assistance(SpotterShare(share: 0.1, in_lowering: true)),
        Assistance(Counterweight("5 kg")),
    ],
)"#;

#[test]
fn regress_a_setup_file_holds_every_implement() {
    let shelf = Shelf::new();
    let file: SetupFile = ron::from_str(FILE).expect("the file of all implements");
    let setup = file.resolve(&shelf.stock()).expect("a setup");
    assert_eq!(
        (
            setup.items.len(),
            setup_in_words(&setup, System::Metric).as_str()
        ),
        (16, "everything")
    );
    let total_kg = setup.plain_mass(&Carrier::Bar).as_kg();
    assert!(
        (total_kg - (20.0 + 2.0 * 45.0 * 0.453_592_37 + 5.0 + 50.0)).abs() < 1e-9,
        "{total_kg}"
    );
    let words = |index: usize| item_in_words(&setup.items[index], System::Metric);
    assert_eq!(words(1), "1 × 20.41 kg a side");
    assert_eq!(words(3), "2 × loop-29mm a side from 12 cm high, doubled");
    assert_eq!(words(6), "1 × ours a side, double-looped");
}

/// What a reader of files refuses, in words.
fn refusal_in_words(refusal: &ron::error::SpannedError) -> String {
    let message = refusal.code.to_string();
    let implement = ImplementFault::from_serde_message(&message).map(Error::bad);
    let quantity = || QuantityFault::from_serde_message(&message).map(Error::bad);
    match implement.or_else(quantity) {
        Some(error) => in_one_line(&error, System::Metric),
        None => message,
    }
}

#[test]
fn fault_a_bad_setup_file_says_where() {
    let shelf = Shelf::new();
    for (from, to, says) in [
        (
            "Band(\"loop-29mm:2@peg,doubled\")",
            "Band(\"lop-29mm\")",
            "items[3]: no band is named `lop-29mm`",
        ),
        (
            "anchor: \"ahead\"",
            "anchor: \"mars\"",
            "items[4]: no anchor is named `mars`",
        ),
        (
            "Spotter(force: \"50 N\")",
            "Spotter(force: \"-50 N\")",
            "items[13]: spotter's force -50 N",
        ),
        ("share: 0.1", "share: 1.5", "items[14]: spotter's share 1.5"),
    ] {
        let file: SetupFile = ron::from_str(&FILE.replace(from, to)).expect(to);
        let error = file.resolve(&shelf.stock()).expect_err(to);
        assert!(crate::calling::said(&error).contains(says), "{to}: {error}");
    }
    for (from, to, says) in [
        ("friction: 0.05, lead", "frction: 0.05, lead", "frction"),
        ("ratio: 2.0", "ratio: 200.0", "cable ratio 200"),
        (
            "(\"60 deg\", \"14 cm\")",
            "(\"0 deg\", \"14 cm\")",
            "angles must rise",
        ),
        ("arm: \"50 cm\"", "arm: \"50 kg\"", "no length"),
        ("wire: \"10 mm\"", "wire: \"30 mm\"", "inside width"),
        (
            "(\"160 cm\", \"11 kg\")",
            "(\"120 cm\", \"11 kg\")",
            "too few or too close",
        ),
        (
            "rest_length: \"100 cm\"",
            "rest_length: \"-1 cm\"",
            "rest length",
        ),
        (
            "mass: \"0.2 kg\"",
            "mass: \"-0.2 kg\"",
            "outside what a mass can be",
        ),
        (
            "length: \"30 cm\", mass",
            "length: \"0 cm\", mass",
            "needs a length",
        ),
        (
            "(mass: \"50 kg\", friction: 0.05)",
            "(mass: \"50 kg\", friction: NaN)",
            "friction NaN",
        ),
    ] {
        let text = FILE.replace(from, to);
        assert_ne!(text, FILE, "{from} is in the file");
        let error = ron::from_str::<SetupFile>(&text).expect_err(to);
        let words = refusal_in_words(&error);
        assert!(words.contains(says), "{to}: {words}");
        assert!(error.span.start.line > 1, "the place is kept: {error:?}");
    }
}

#[test]
fn fault_what_makes_no_sense_is_refused_with_the_reason() {
    let shelf = Shelf::new();
    let file: SetupFile = ron::from_str(FILE).expect("the file");
    let all = file.resolve(&shelf.stock()).expect("a setup").items;
    let refused = |carrier: &Carrier| -> Vec<&'static str> {
        let one = |item: &Item| {
            Setup::new("", vec![item.clone()])
                .check_for(carrier, "a lift")
                .is_err()
        };
        all.iter()
            .filter(|item| one(item))
            .map(|item| kind_with_article(item.kind()))
            .collect()
    };
    assert_eq!(refused(&Carrier::Bar), ["a cam", "a sled"]);
    assert_eq!(
        refused(&Carrier::Dumbbell),
        ["a bar", "a plate", "a pair of collars", "a cam", "a sled"]
    );
    assert_eq!(
        refused(&SLED),
        ["a bar", "a cable", "a cam", "a lever machine"]
    );
    assert_eq!(
        refused(&LEVER),
        [
            "a bar",
            "a pair of collars",
            "a chain",
            "a chain",
            "a lever machine",
            "a sled"
        ]
    );
    assert_eq!(
        refused(&Carrier::Body),
        ["a cam", "a lever machine", "a sled"]
    );
    let chain = Setup::new(
        "",
        vec![Item::Chain(HungChain::to_floor(chain(2.2, 1.8), 1))],
    );
    let error = chain
        .check_for(&LEVER, "leg-curl")
        .expect_err("a chain on a leg curl");
    let text = in_one_line(&error, System::Metric);
    assert!(
        text.contains("a chain makes no sense on leg-curl") && text.contains("use a cam"),
        "{text}"
    );
    let both = Setup::new("", vec![all[10].clone(), all[10].clone()]);
    assert!(
        crate::calling::said(&both.check_for(&SLED, "leg-press").expect_err("two"))
            .contains("2 times")
    );
}

#[test]
fn law_a_plain_load_takes_the_place_of_plain_weights_only() {
    let shelf = Shelf::new();
    let file: SetupFile = ron::from_str(FILE).expect("the file");
    let mut setup = file.resolve(&shelf.stock()).expect("a setup");
    setup.items.retain(|item| !matches!(item, Item::Sled(_)));
    setup
        .items
        .push(Item::Weight(Weight::BodyMass(Mass::from_kg(80.0))));
    let changed = setup.with_plain_load(Mass::from_kg(60.0));
    assert_eq!(changed.plain_mass(&Carrier::Bar).as_kg(), 140.0);
    assert_eq!(changed.items.len(), setup.items.len() - 2);
}

fn models(folder: &str) -> Vec<(String, String)> {
    let folder = format!("{}/models/{folder}", env!("CARGO_MANIFEST_DIR"));
    let mut files: Vec<(String, String)> = std::fs::read_dir(&folder)
        .expect("the folder is there")
        .map(|entry| {
            let path = entry.expect("an entry").path();
            let name = path
                .file_stem()
                .expect("a name")
                .to_string_lossy()
                .into_owned();
            (name, std::fs::read_to_string(path).expect("a text"))
        })
        .collect();
    files.sort();
    files
}

#[test]
fn law_shipped_bands_and_chains_name_known_sources() {
    let text = std::fs::read_to_string(concat!(env!("CARGO_MANIFEST_DIR"), "/models/sources.ron"));
    let known: BTreeMap<String, Publication> =
        ron::from_str(&text.expect("sources")).expect("sources");
    let named = |source: &Source, file: &str| {
        assert!(
            !torquill::narrative::source_words::source_in_words(source)
                .contains("without a source"),
            "{file}"
        );
        if let Source::Published(key, _) | Source::FromMemory(key, _) | Source::Derived(key, _) =
            source
        {
            assert!(
                known.contains_key(key),
                "{file}: {key} is no key of sources.ron"
            );
        }
    };
    let bands = models("bands");
    assert_eq!(bands.len(), 9);
    for (name, text) in bands {
        let band: Band = ron::from_str(&text).unwrap_or_else(|fault| panic!("{name}: {fault}"));
        assert_eq!(band.name(), name);
        named(band.source(), &name);
        let BandPull::Dimensions { rubber, .. } = band.pull() else {
            panic!("{name} has dimensions")
        };
        named(&rubber.source, &name);
    }
    let chains = models("chains");
    assert_eq!(chains.len(), 5);
    for (name, text) in chains {
        let chain: Chain = ron::from_str(&text).unwrap_or_else(|fault| panic!("{name}: {fault}"));
        assert_eq!(chain.name(), name);
        named(chain.source(), &name);
    }
    assert!(matches!(
        ron::from_str::<ItemRecord>("Band(\"x\")"),
        Ok(ItemRecord::Band(_))
    ));
}
