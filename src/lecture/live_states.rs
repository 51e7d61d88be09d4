//! Where a figure of the lecture can be taken further: the state of the live page that shows the same lift.
//!
//! In: a figure, its desk. Out: the address of that state, as the page reads it behind its file's name.

use super::lecture_figure::LectureFigure;
use crate::figures::Sheet;
use crate::resistance::{HangingSide, Item, Setup, Weight};
use crate::study::{Desk, lifts_of_class};
use crate::units::{System, rounded};

/// What a figure shows beside its lift's curve, and the lift where the figure itself needs none.
const STATES: [(&str, Option<&str>, &str); 12] = [
    ("curve-at-speed", None, "&speed=60"),
    ("muscles-on-skeleton", None, "&beside=arms"),
    ("moment-arms", None, "&beside=arms"),
    ("force-times-arm", None, "&beside=arms"),
    ("muscles-add-up", None, "&beside=moments"),
    ("limits-in-a-press", None, "&beside=moments"),
    ("limits-in-a-squat", None, "&beside=moments"),
    ("who-holds-the-load", None, "&beside=moments"),
    ("free-body", None, "&beside=moments"),
    ("band-law", Some("bench-press"), "&band=loop-22mm:1"),
    ("chain-law", Some("bench-press"), "&chain=chain-13mm:1"),
    ("lowered-held-lifted", None, "&speed=-0.3"),
];

/// The address of the figure's state; `None` where a figure is of no lift.
#[must_use]
pub fn live_state(figure: &LectureFigure, desk: &Desk<'_>, sheet: &Sheet) -> Option<String> {
    let own = STATES.iter().find(|(name, ..)| *name == figure.name);
    let of_class = figure.class.and_then(|shape| {
        let lifts = lifts_of_class(desk, shape);
        lifts.first().map(|study| study.movement_name.clone())
    });
    let needed = figure.needs.first().copied();
    let about = desk.about.as_deref();
    let lift = about.or(own.and_then(|(_, lift, _)| *lift)).or(needed);
    let lift = lift.map(str::to_owned).or(of_class)?;
    let units = match desk.units {
        System::Metric => "",
        System::Us => "&units=us",
    };
    let hung = sheet
        .setups
        .iter()
        .rev()
        .find_map(|setup| hung(setup, desk.units));
    let hung = hung.unwrap_or_default();
    let rest = own.map_or("", |(.., rest)| *rest);
    Some(format!(
        "#v=1&lift={lift}&lifter={}{units}{hung}{rest}",
        desk.lifter
    ))
}

/// A setup in the words of the page's address; `None` for what the page has no dials for.
fn hung(setup: &Setup, units: System) -> Option<String> {
    let words = setup.items.iter().map(|item| match item {
        Item::Weight(Weight::Load(load)) => {
            let load = match units {
                System::Metric => load.as_kg(),
                System::Us => load.as_lb(),
            };
            Some(format!("&load={}", rounded(load, 2)))
        }
        Item::Band(hung) if hung.side == HangingSide::Both => {
            Some(format!("&band={}:{}", hung.band.name(), hung.count))
        }
        Item::Chain(hung) if hung.side == HangingSide::Both => {
            Some(format!("&chain={}:{}", hung.chain.name(), hung.count))
        }
        _ => None,
    });
    words.collect()
}
