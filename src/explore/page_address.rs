//! An address of the page read outside a browser, as `page/src/state.js` reads it.
//!
//! In: what stands behind the `#`. Out: [`PageAddress`], or the first word of it that is not understood.

use super::page_state::{PageState, PageUnits};
use crate::error::TaskFault;

/// Keys of an address that only say what is looked at.
const LOOKS: [&str; 6] = ["v", "at", "beside", "joint", "muscle", "view"];
/// The version of the page's addresses, as `page/src/state.js` has it.
const VERSION: u32 = 1;
/// The only key that an address may hold many times: each is of a value of its own.
const SET: &str = "set";
/// Most bands or chains a side that the page has a field for.
const MOST_HUNG: u32 = 8;

/// What an address asks for; weight and speed are numbers whose units the lift decides.
#[derive(Debug, Clone, PartialEq, Default)]
pub(super) struct PageAddress {
    /// Lift, lifter, what hangs, what is set, units; without weight and speed, a lifter that is not named left empty.
    pub(super) state: PageState,
    /// Weight; the page finds one itself without.
    pub(super) load: Option<f64>,
    /// Speed; held still without.
    pub(super) speed: Option<f64>,
}

/// Why a text is no address of the page.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) enum AddressFault {
    /// A word that is not understood.
    Word(String),
    /// Another version of the page.
    Version(String),
    /// A key that stands twice.
    Twice(String),
}

impl AddressFault {
    /// The fault of a start that stands in this line.
    pub(super) fn of_line(self, line: usize) -> TaskFault {
        // What can be thousands of letters long is not repeated as a whole.
        let short = |text: String| text.chars().take(80).collect();
        match self {
            Self::Word(word) => TaskFault::StartWord {
                line,
                word: short(word),
            },
            Self::Version(version) => TaskFault::StartVersion {
                line,
                version: short(version),
                known: VERSION,
            },
            Self::Twice(key) => TaskFault::StartTwice {
                line,
                key: short(key),
            },
        }
    }
}

impl PageAddress {
    /// Reads `v=1&lift=squat&load=60&set=technique.depth%3D10+deg`.
    ///
    /// **Fails** with the first word that is not understood, with another version, and with what is said twice.
    pub(super) fn from_text(text: &str) -> Result<Self, AddressFault> {
        let mut address = Self::default();
        let mut seen: Vec<String> = Vec::new();
        for word in text.split('&').filter(|word| !word.is_empty()) {
            let plain = decoded(word).ok_or_else(|| AddressFault::Word(word.to_owned()))?;
            let key = plain.split_once('=').map_or("", |(key, _)| key).to_owned();
            if seen.contains(&key) && key != SET {
                return Err(AddressFault::Twice(key));
            }
            if let Some(version) = plain.strip_prefix("v=")
                && version != VERSION.to_string()
            {
                return Err(AddressFault::Version(version.to_owned()));
            }
            address.take(&plain).ok_or(AddressFault::Word(plain))?;
            seen.push(key);
        }
        Ok(address)
    }

    /// Takes one word in; `None` where it is not understood.
    fn take(&mut self, word: &str) -> Option<()> {
        let (key, value) = word.split_once('=')?;
        let state = &mut self.state;
        match key {
            "lift" => value.clone_into(&mut state.lift),
            "lifter" => value.clone_into(&mut state.lifter),
            "units" => {
                state.units = match value {
                    "metric" => PageUnits::Metric,
                    "us" => PageUnits::Us,
                    _ => return None,
                }
            }
            "load" => self.load = Some(number(value).filter(|load| *load >= 0.0)?),
            "speed" => self.speed = Some(number(value)?).filter(|speed| *speed != 0.0),
            "band" => state.band = vec![hung(value)?],
            "chain" => state.chain = vec![hung(value)?],
            SET => {
                value.split_once('=')?;
                state.set.push(value.to_owned());
            }
            other if LOOKS.contains(&other) => {}
            _ => return None,
        }
        Some(())
    }
}

fn number(text: &str) -> Option<f64> {
    let number = text.parse::<f64>().ok();
    number.filter(|number| number.is_finite())
}

/// A name with how many hang on a side: "loop-14mm:1".
fn hung(text: &str) -> Option<String> {
    let (name, count) = text.split_once(':').unwrap_or((text, "1"));
    let count = count.parse::<u32>().ok();
    let count = count.filter(|count| (1..=MOST_HUNG).contains(count))?;
    (!name.is_empty()).then(|| format!("{name}:{count}"))
}

/// A word of an address with its signs as they are meant: `%3D` is `=`, `+` a blank.
fn decoded(word: &str) -> Option<String> {
    let mut bytes = Vec::new();
    let mut rest = word.bytes();
    while let Some(byte) = rest.next() {
        bytes.push(match byte {
            b'+' => b' ',
            b'%' => {
                let digit = |byte: u8| char::from(byte).to_digit(16);
                let (high, low) = (digit(rest.next()?)?, digit(rest.next()?)?);
                (16 * high + low) as u8
            }
            other => other,
        });
    }
    String::from_utf8(bytes).ok()
}
