//! Words for: what is wrong with what is told of a person.

use super::height_told::{ADULTS, no_height};
use super::odd_maximum_told::{deviations_in_words, odd_one_rm};
use super::{Told, log_told, trace_told};
use crate::error::{JudgedBy, PersonFault, PersonOption};
use crate::narrative::quantities::{QuantityWords, rounded};
use crate::narrative::shared_phrases::times_of_people;
use crate::narrative::shown_units::ShownUnits;
use crate::units::{Length, System};

/// The fault in words.
pub(super) fn told(fault: &PersonFault, units: System) -> Told {
    let shown = |length: Length| {
        let unit = units.length_unit();
        format!("{} {}", rounded(unit.of(length.as_m()), 0), unit.symbol)
    };
    match fault {
        PersonFault::Unreadable { option, written } => {
            Told::new(format!("`{written}` does not tell {}", what(*option))).hint(example(*option))
        }
        PersonFault::ReserveAlone { written } => Told::new(format!(
            "`{written}` names repetitions in reserve and no repetitions"
        ))
        .hint("write the set: \"110 kg x 2 @ rir 1\"; a maximum has no reserve"),
        PersonFault::NoSuchLift { written, known } => {
            Told::new(format!("`{written}` is no lift"))
                .hint(format!("lifts are: {}", known.join(", ")))
        }
        PersonFault::NoSuchLimb { written, known } => {
            Told::new(format!("`{written}` is no limb"))
                .hint(format!("limbs are: {}", known.join(", ")))
        }
        PersonFault::MeasuredTwice { written } => {
            Told::new(format!("`{written}` is told twice, and would count as two measurements"))
                .hint("tell it once; of several days tell each by its own load and repetitions")
        }
        PersonFault::LimbTwice { limb, lengths } => Told::new(format!(
            "the {} is told twice: {} and {}",
            limb.replace('_', " "),
            shown(lengths.0),
            shown(lengths.1)
        ))
        .hint("leave one of the two out; of left and right take the mean"),
        PersonFault::OddLimb {
            limb,
            length,
            usual,
        } => Told::new(format!(
            "{} is no length of a {} at that height (about {} is usual)",
            shown(*length),
            limb.replace('_', " "),
            shown(*usual)
        ))
        .hint("measure from joint to joint, and look at the unit"),
        PersonFault::NoLoad { movement, load } => Told::new(format!(
            "{} is no load of a {movement}",
            units.mass(*load)
        ))
        .hint(DIGITS),
        PersonFault::TooManyRepetitions {
            movement,
            to_failure,
            most,
        } => Told::new(format!(
            "a set of the {movement} that ends after {} repetitions tells no maximum ({} at most)",
            rounded(*to_failure, 1),
            rounded(*most, 0)
        ))
        .hint("take a heavier set"),
        PersonFault::NothingHeld { written } => {
            Told::new(format!("`{written}` holds nothing")).hint(DIGITS)
        }
        PersonFault::BelowTheBar {
            movement,
            load,
            bar,
        } => Told::new(format!(
            "{} is less than a bar for the {movement} weighs ({})",
            units.mass(*load),
            units.mass(*bar)
        ))
        .hint("the load of a lift is bar and plates together"),
        PersonFault::WrongMeasure { movement, option } => match option {
            PersonOption::Dynamometer => Told::new(format!(
                "the {movement} moves a load, so it has no torque of one joint"
            ))
            .hint(example(PersonOption::Hold)),
            _ => Told::new(format!(
                "the {movement} turns one joint, so it has no force at a height"
            ))
            .hint(example(PersonOption::Dynamometer)),
        },
        PersonFault::NoSuchHeight {
            movement,
            height,
            way,
        } => Told::new(format!(
            "the {movement} does not pass {}: the load travels {}",
            shown(*height),
            shown(*way)
        ))
        .hint("the height is told from where the lift begins"),
        PersonFault::NoSuchAngle {
            movement,
            angle,
            ends: (low, high),
        } => Told::new(format!(
            "the {movement} does not pass {} deg: it goes from {} to {} deg",
            rounded(angle.as_deg(), 0),
            rounded(low.as_deg(), 0),
            rounded(high.as_deg(), 0)
        ))
        .hint("0 deg is the anatomical position: a straight knee, a straight elbow"),
        PersonFault::Impossible {
            written,
            over_expected,
            deviations,
        } => Told::new(format!(
            "`{written}` is {}, {} standard deviations away",
            times_of_people(*over_expected, JudgedBy::Kind),
            deviations_in_words(*deviations)
        ))
        .hint(DIGITS),
        PersonFault::ImpossibleOneRm {
            line,
            who,
            movement,
            one_rm,
            over_expected,
            deviations,
            judged_by,
        } => {
            let in_a_row = who.is_some();
            let is_of_log = line.is_some();
            let who = who.as_ref().map(|who| format!("{who}: "));
            let line = line.map(|line| format!("line {line}: "));
            let who = line.or(who).unwrap_or_default();
            // In a row of a team it may be written in either unit.
            let written = match units {
                System::Metric => System::Us,
                System::Us => System::Metric,
            };
            let written = match in_a_row {
                true => format!(" ({})", written.mass(*one_rm)),
                false => String::new(),
            };
            let found = (*one_rm, written.as_str());
            let odd = (*over_expected, *deviations, *judged_by);
            let told = Told::new(format!("{who}{}", odd_one_rm(movement, found, odd, units)));
            let told = told.hint(DIGITS);
            let told = match is_of_log {
                true => told.hint(LEAVE_OUT),
                false => told,
            };
            match judged_by {
                JudgedBy::Kind => told.hint(
                    "who trains is told by --lifter, --set lifter.body_mass=\"80 kg\" and --training-months",
                ),
                JudgedBy::TrainedMen | JudgedBy::UntrainedWomen => told,
            }
        }
        PersonFault::NotKept { movement } => Told::new(format!(
            "no strength that people of that sex, size and training have keeps the poses of the {movement} in the \
             simulated body, so what was measured of it cannot be used"
        ))
        .hint("check height, mass and limbs, or leave that measurement out"),
        PersonFault::Contradict {
            written: [first, second],
            ratio,
        } => Told::new(format!(
            "`{first}` and `{second}` cannot both be right: they are a factor of {} apart",
            rounded(*ratio, 2)
        ))
        .hint("leave one out, or look at load, unit and repetitions"),
        PersonFault::OddHeight {
            height,
            ends: (least, most),
        } => no_height(*height, (*least, *most), units),
        PersonFault::OddMass {
            mass,
            ends: (least, most),
        } => Told::new(format!(
            "{} is no body mass of an adult of that height ({} to {})",
            units.mass(*mass),
            units.mass(*least),
            units.mass(*most)
        ))
        .hint(ADULTS),
        PersonFault::NoAdult { age, least } => Told::new(no_adult(*age, *least)).hint(NO_ADULT_HINT),
        PersonFault::NoAge { age, most } => Told::new(format!(
            "--age {} is more than the {} years that are taken for real",
            rounded(*age, 1),
            rounded(*most, 0)
        )),
        PersonFault::LongerThanLife { age, months } => Told::new(format!(
            "nobody of {} years has trained for {} months",
            rounded(*age, 1),
            rounded(*months, 0)
        ))
        .hint("an age is in years, training in months"),
        PersonFault::NoMonths { months } => Told::new(format!(
            "{} is no number of months of training",
            rounded(*months, 1)
        )),
        PersonFault::Trace(fault) => trace_told::told(fault),
        PersonFault::NameSign { name, sign } => Told::new(format!(
            "the name `{name}` holds `{sign}`, which names here do not have"
        ))
        .hint("--name takes letters, digits, blanks, hyphens and dots: athlete-7"),
        PersonFault::NoName => Told::new("the person has no name")
            .hint("--name takes letters, digits, blanks, hyphens and dots: athlete-7"),
        PersonFault::LongName { letters, most } => Told::new(format!(
            "the name is {letters} letters long; at most {most} are shown"
        )),
        PersonFault::NothingMeasured => Told::new("nothing was measured, so nothing can be fitted")
            .hint(example(PersonOption::Lift)),
        PersonFault::NothingInLog { log, lifts } => Told::new(format!(
            "no set of {log} tells a maximum ({})",
            log_told::counted(lifts)
        ))
        .hint(
            "a set counts if it is of a lift that `torquill movements` lists, says how many repetitions were left (RIR or RPE), \
             and would have had 15 at most",
        ),
        PersonFault::NoScatter { lifter } => Told::new(format!(
            "the file of {lifter} does not say how well its strengths are known"
        ))
        .hint("write one with `torquill fit`"),
    }
}

const LEAVE_OUT: &str = "correct the row, or leave it out with --skip-bad-rows";

const DIGITS: &str = "look at the unit and the digits";

const fn what(option: PersonOption) -> &'static str {
    match option {
        PersonOption::Lift => "a maximum or a set of a lift",
        PersonOption::Hold => "a force held at a height of a lift",
        PersonOption::Dynamometer => "a torque held at an angle",
        PersonOption::Limb => "the length of a limb",
        PersonOption::Trace => "a lift, its load and the file of a trace",
    }
}

const fn example(option: PersonOption) -> &'static str {
    match option {
        PersonOption::Lift => {
            "--lift squat=\"95 kg\", or a set: --lift bench-press=\"60 kg x 3\", --lift deadlift=\"110 kg x 2 @ rir 1\""
        }
        PersonOption::Hold => {
            "--hold bench-press@10cm=\"700 N\" for both hands, \"350 N one hand\" for one"
        }
        PersonOption::Dynamometer => {
            "--dynamometer knee-extension@60deg=\"180 N m\", the weight of the limb taken off; else \"180 N m with limb\""
        }
        PersonOption::Limb => "--limb forearm=\"25 cm\"",
        PersonOption::Trace => "--trace squat=\"80 kg @ bar.csv\"",
    }
}

/// Why nothing is said of somebody so young.
pub(super) fn no_adult(age: f64, least: f64) -> String {
    format!(
        "at {} years the tables do not hold: they are of adults from {} on",
        rounded(age, 1),
        rounded(least, 0)
    )
}

/// What to do then.
pub(super) const NO_ADULT_HINT: &str =
    "who is younger trains as a coach decides who is there and knows them, not by this program";
