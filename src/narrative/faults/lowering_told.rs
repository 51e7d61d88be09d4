//! Words for: why more than the 1RM is not lowered as it was asked for.

use super::Told;
use crate::error::LoweringFault;
use crate::narrative::prose::counted_noun;
use crate::narrative::quantities::{QuantityWords, rounded};
use crate::narrative::shared_phrases::whose_limit;
use crate::session::lowering_limits::LEAST_RESERVE;
use crate::units::{Mass, System};

/// Lowering more than 1RM.
pub(super) fn told(fault: &LoweringFault, units: System) -> Told {
    let mass = |mass: &Mass| units.mass(*mass);
    match fault {
        LoweringFault::ManyLoweringSets { sets, usual } => {
            Told::new(format!("{} of overloaded lowering are too many", counted_noun(*sets, "set")))
                .hint(format!("{} to {} sets", usual.0, usual.1))
        }
        LoweringFault::NothingInWindow { loads, shares, own } => {
            nothing_in_window((mass(&loads.0), mass(&loads.1)), *shares, own.as_ref().map(mass))
        }
        LoweringFault::AboveLowering {
            load,
            limit,
            ratio,
            who,
            low_end,
            stay,
        } => Told::new(format!(
            "{} is above what this lifter can lower under control: {} ({} × 1RM, {}{})",
            mass(load),
            mass(limit),
            rounded(*ratio, 2),
            whose_limit(who.as_deref()),
            at_low_end(low_end.as_ref().map(mass))
        ))
        .hint(stay.as_ref().map_or_else(
            || "no load above the 1RM keeps a reserve: train with straight sets, a pyramid or clusters".to_owned(),
            |(least, most)| stay_between(mass(least), mass(most)),
        )),
        LoweringFault::NoOverload { load, one_rm } => no_overload(mass(load), mass(one_rm)),
        LoweringFault::PlatesRunOut { most, least } => Told::new(format!(
            "lowering more than 1RM begins at {}, and this gym loads {} at most",
            mass(least),
            mass(most)
        ))
        .hint("more plates, or clusters or bands at loads that it has"),
        LoweringFault::NoReserve {
            load,
            limit,
            ratio,
            who,
            low_end,
        } => Told::new(format!(
            "not even one lowering of {} keeps a reserve of {} % against {} ({} × 1RM, {}{})",
            mass(load),
            rounded(100.0 * LEAST_RESERVE, 0),
            mass(limit),
            rounded(*ratio, 2),
            whose_limit(who.as_deref()),
            at_low_end(low_end.as_ref().map(mass))
        ))
        .hint(match low_end {
            Some(_) => "tell a 1RM that was tested lately with --one-rm, or straight sets",
            None => "take less, or straight sets",
        }),
    }
}

/// ", at 130 kg, the low end of what the 1RM may be": of whose 1RM the limit is.
fn at_low_end(low: Option<String>) -> String {
    low.map_or_else(String::new, |low| {
        format!(", at {low}, the low end of what the 1RM may be")
    })
}

fn nothing_in_window(
    (least, most): (String, String),
    shares: (f64, f64),
    own: Option<String>,
) -> Told {
    Told::new(format!(
        "this gym can load nothing between {least} and {most} ({} to {} % of 1RM)",
        rounded(100.0 * shares.0, 1),
        rounded(100.0 * shares.1, 1)
    ))
    .hint(own.map_or_else(
        || "smaller plates or steps, or straight sets, a pyramid or clusters".to_owned(),
        |own| format!("smaller plates or steps, or --load \"{own}\", which is above the 1RM too"),
    ))
}

fn no_overload(load: String, one_rm: String) -> Told {
    Told::new(format!(
        "{load} is not more than the 1RM of {one_rm}: there is no overload in lowering it"
    ))
    .hint("use straight sets, a pyramid or clusters for loads that can be lifted")
}

fn stay_between(least: String, most: String) -> String {
    if least == most {
        return format!(
            "--load \"{least}\" is the most above the 1RM that can be loaded here and keeps a reserve"
        );
    }
    format!("stay between {least} and {most}")
}
