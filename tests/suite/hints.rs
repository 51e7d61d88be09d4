//! A quantity that a hint proposes is read by what refused the text, and is what was written, read another way.

use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use torquill::error::Error;
use torquill::resistance::pull_from_text;
use torquill::units::{
    Angle, AngularSpeed, Duration, Force, Length, LinearDensity, Mass, QuantityFault, Speed,
    Stress, Torque,
};

/// Reads a text to SI.
type Reader = fn(&str) -> Result<f64, QuantityFault>;

/// The first unit of a kind reads it in SI.
const READERS: [(Reader, &[&str]); 10] = [
    (
        |t| Length::from_text(t).map(Length::as_m),
        &["m", "cm", "km", "inn", "fot", "kg", "CM"],
    ),
    (
        |t| Mass::from_text(t).map(Mass::as_kg),
        &["kg", "lb", "kn", "Ib", "kgg", "mg", "lsb", "N"],
    ),
    (
        |t| Force::from_text(t).map(Force::as_n),
        &["N", "kg", "lb", "g", "lbs", "kn", "kgs", "n"],
    ),
    (
        |t| Torque::from_text(t).map(Torque::as_nm),
        &["Nm", "NM", "Nmm", "N", "kgm"],
    ),
    (
        |t| Angle::from_text(t).map(Angle::as_rad),
        &["deg", "dgr", "degre", "rads", "d"],
    ),
    (
        |t| Speed::from_text(t).map(Speed::as_m_s),
        &["m/s", "m", "cms", "km/s", "mm/s", "deg/s"],
    ),
    (
        |t| AngularSpeed::from_text(t).map(AngularSpeed::as_rad_s),
        &["deg/s", "degs", "rad", "m/s"],
    ),
    (
        |t| Duration::from_text(t).map(Duration::as_s),
        &["s", "m", "mn", "mm", "seks", "h", "mins"],
    ),
    (
        |t| Stress::from_text(t).map(Stress::as_pa),
        &["Pa", "mpa", "kPaa", "N/cm", "bar"],
    ),
    (
        |t| LinearDensity::from_text(t).map(LinearDensity::as_kg_m),
        &["kg/m", "kgm", "lb/f", "kg"],
    ),
];

/// Everything in double quotes.
fn quoted(message: &str) -> Vec<&str> {
    message.split('"').skip(1).step_by(2).collect()
}

/// The digits of a quantity before its unit, marks apart.
fn digits(text: &str) -> String {
    let number = text.chars().take_while(|c| !c.is_alphabetic());
    let digits: String = number.filter(char::is_ascii_digit).collect();
    digits
        .trim_start_matches('0')
        .trim_end_matches('0')
        .to_owned()
}

fn number(random: &mut ChaCha8Rng) -> String {
    let group = |random: &mut ChaCha8Rng| format!("{:03}", random.random_range(0..1000));
    let first = random.random_range(1..1000).to_string();
    match random.random_range(0..8) {
        0 => format!("{first},{}", random.random_range(0..100)),
        1 => format!("{first},{}", group(random)),
        2 => format!("{first},{},{}", group(random), group(random)),
        3 => format!("{first}.{},{}", group(random), random.random_range(0..100)),
        4 => format!("{first},{}.{}", group(random), random.random_range(0..100)),
        5 => format!("{first},"),
        6 => format!("{first},{},{}", random.random_range(0..100), group(random)),
        _ => first,
    }
}

#[test]
fn law_what_a_hint_proposes_is_read_and_has_the_same_digits() {
    let mut random = ChaCha8Rng::seed_from_u64(3);
    let mut proposed = 0;
    for _ in 0..4000 {
        let (read, units) = READERS[random.random_range(0..READERS.len())];
        let unit = units[random.random_range(0..units.len())];
        let text = format!("{} {unit}", number(&mut random));
        let Err(fault) = read(&text) else {
            continue;
        };
        let is_example = matches!(
            fault,
            QuantityFault::NoNumber { .. } | QuantityFault::NoUnit { .. }
        );
        let message = super::calling::said(&Error::bad(fault));
        for proposal in quoted(&message) {
            assert!(read(proposal).is_ok(), "{text}: {message}");
            if !is_example {
                assert_eq!(digits(proposal), digits(&text), "{text}: {message}");
                proposed += 1;
            }
        }
    }
    assert!(proposed > 200, "{proposed} hints only");
}

#[test]
fn law_a_comma_of_a_pull_is_told_as_it_can_be_read() {
    let mut random = ChaCha8Rng::seed_from_u64(4);
    for _ in 0..500 {
        let unit = ["kg", "N", "lbf"][random.random_range(0..3)];
        let text = format!("{} {unit}", number(&mut random));
        if let Err(fault) = pull_from_text(&text) {
            let message = super::calling::said(&Error::bad(fault));
            for proposal in quoted(&message) {
                assert!(pull_from_text(proposal).is_ok(), "{text}: {message}");
            }
        }
    }
}

#[test]
fn fault_hints_mean_what_was_meant() {
    let told = |fault: QuantityFault| super::calling::said(&Error::bad(fault));
    for (text, hint) in [
        ("90 kg", "did you mean \"90 kgf\"?"),
        ("20 lb", "did you mean \"20 lbf\"?"),
    ] {
        let message = told(Force::from_text(text).expect_err("a mass"));
        assert!(message.contains(hint), "{message}");
    }
    for (text, hint) in [
        ("1,000 kg", "write \"1 kg\" or \"1000 kg\""),
        (
            "1.000,5 kg",
            "thousands are written without a mark, \"1000.5 kg\"",
        ),
        (
            "1,000,000 g",
            "thousands are written without a mark, \"1000000 g\"",
        ),
        ("82,5 kg", "decimals are written with a point, \"82.5 kg\""),
    ] {
        let message = told(Mass::from_text(text).expect_err("a comma"));
        assert!(message.contains(hint), "{message}");
    }
    // Another kind of quantity is no slip of the pen.
    for text in ["5 mm", "5 km", "5 m"] {
        let message = told(Duration::from_text(text).expect_err("a length"));
        assert!(!message.contains("did you mean"), "{message}");
    }
}
