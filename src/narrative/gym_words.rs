//! A new gym in words: what is asked, what is taken for granted, what a text of it looks like.
//!
//! In: parts of a gym, units. Out: questions, usual answers, sentences.

use crate::error::GymPart;
use crate::setups::{NONE, NewGym, usual_gym};
use crate::units::{Mass, System};

/// Title of a gym that nobody named.
pub const TITLE: &str = "Home gym";

/// The reason that a new gym file gives.
pub const REASON: &str = "as told to the program; what was not told is usual";

/// A part with its article or number, as sentences name it.
#[must_use]
pub const fn part_name(part: GymPart) -> &'static str {
    match part {
        GymPart::Bars => "bars",
        GymPart::Plates => "plates",
        GymPart::Collars => "collars",
        GymPart::Dumbbells => "dumb-bells",
        GymPart::Kettlebells => "kettlebells",
        GymPart::CurlBars => "curl bars",
        GymPart::Stack => "weight stack",
        GymPart::Sled => "leg-press sled",
        GymPart::SafetyArms => "safety arms of the rack",
        GymPart::Bands => "bands",
        GymPart::Chains => "chains",
        GymPart::Anchors => "anchors for bands",
    }
}

/// What a text of a part looks like.
#[must_use]
pub const fn part_example(part: GymPart) -> &'static str {
    match part {
        GymPart::Bars => "20 kg, light bar = 10 kg",
        GymPart::Plates => "4 x 20 kg, 2 x 10 kg, 4 x 5 kg",
        GymPart::Collars => "2.5 kg, the mass of one",
        GymPart::Dumbbells => "8 kg, 12 kg, or 5 kg..20 kg by 2.5 kg",
        GymPart::Kettlebells => "16 kg, 24 kg",
        GymPart::CurlBars => "bent bar = 7.5 kg",
        GymPart::Stack => "5 kg..80 kg, one step and all of it",
        GymPart::Sled => "45 kg",
        GymPart::SafetyArms => "30 cm..120 cm by 5 cm, lowest, highest and from hole to hole",
        GymPart::Bands => "loop-14mm x 2, loop-29mm x 2",
        GymPart::Chains => "chain-10mm x 2",
        GymPart::Anchors => "rack foot = 10 cm, rack pin = 75 cm",
    }
}

/// The question after a part, with the answer that an empty line gives.
#[must_use]
pub fn question(part: GymPart, usual: &str) -> String {
    format!(
        "{} (such as {}; \"{NONE}\" for none) [{usual}]: ",
        super::prose::capital(part_name(part)),
        part_example(part)
    )
}

/// What is taken for granted of a part, in the form in which it is told: half of a public room's plates, two pairs of
/// bands and a rack (common practice).
#[must_use]
pub fn usual_part(part: GymPart, units: System) -> String {
    let usual = usual_gym(units);
    match (part, units) {
        (GymPart::Bars, _) => {
            let bar = usual.bars.first();
            bar.map_or_else(String::new, |bar| plain_mass(bar.mass, units))
        }
        (GymPart::Plates, _) => {
            let plates = usual.plates.iter().skip(1).map(|plate| {
                let pairs = plate.count.div_ceil(4);
                format!("{} x {}", 2 * pairs, plain_mass(plate.mass, units))
            });
            plates.collect::<Vec<_>>().join(", ")
        }
        (GymPart::Bands, _) => "loop-14mm x 2, loop-29mm x 2".to_owned(),
        (GymPart::Anchors, System::Metric) => {
            "floor = 0 cm, rack foot = 10 cm, rack pin = 75 cm, rack top = 215 cm".to_owned()
        }
        (GymPart::Anchors, System::Us) => {
            "floor = 0 in, rack foot = 4 in, rack pin = 30 in, rack top = 85 in".to_owned()
        }
        _ => NONE.to_owned(),
    }
}

fn plain_mass(mass: Mass, units: System) -> String {
    super::loads::exact_mass(units, mass, 2)
}

/// What was taken for granted, one line a part.
#[must_use]
pub fn assumed_in_words(gym: &NewGym) -> Vec<String> {
    let told = gym.assumed.iter();
    told.map(|(part, usual)| format!("assumed: {}: {usual}", part_name(*part)))
        .collect()
}

/// What is said when the file is written.
#[must_use]
pub fn written_in_words(file: &str) -> String {
    format!("wrote {file}; try it with: torquill pick bench-press --gym {file}")
}
