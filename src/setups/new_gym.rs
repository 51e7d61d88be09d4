//! A gym file from what somebody tells of a gym, with the usual in place of what is not told.
//!
//! In: texts such as "20 kg" or "4 x 20 kg", part by part. Out: [`NewGym`]: its file as text, and which parts were
//! taken for granted.

use crate::error::{Error, GymFault, GymPart, Result};
use crate::units::{Length, Mass};
use std::fmt::Write;

/// The field of a belt to hang plates from.
const BELT: &str = "belt";

/// What is told for a part that is not there.
pub const NONE: &str = "none";

fn round(value: f64) -> f64 {
    (value * 1000.0).round() / 1000.0
}

/// A gym that is being put together.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NewGym {
    /// What a person calls it.
    pub title: String,
    /// Whether there is a belt to hang plates from.
    pub belt: bool,
    /// Lines of the file, part by part.
    fields: Vec<String>,
    /// Parts that were taken for granted, with what they are.
    pub assumed: Vec<(GymPart, String)>,
}

impl NewGym {
    /// The gym of these parts; what is not told is as usual.
    ///
    /// **Fails** with the first text that is no such part.
    pub fn of(
        title: &str,
        belt: bool,
        told: impl Fn(GymPart) -> Option<String>,
        usual_of: impl Fn(GymPart) -> String,
    ) -> Result<Self> {
        let mut gym = Self {
            title: title.to_owned(),
            belt,
            fields: Vec::new(),
            assumed: Vec::new(),
        };
        for part in GymPart::ALL {
            let text = told(part).unwrap_or_else(|| {
                let usual = usual_of(part);
                gym.assumed.push((part, usual.clone()));
                usual
            });
            if text.trim() != NONE {
                gym.fields.extend(field(part, &text)?);
            }
        }
        Ok(gym)
    }

    /// The gym file; `source` is the reason that it gives.
    #[must_use]
    pub fn file(&self, source: &str) -> String {
        let mut file = format!("(\n    title: {},\n", quoted(&self.title));
        for field in &self.fields {
            let _ = writeln!(file, "    {field}");
        }
        if self.belt {
            let _ = writeln!(file, "    {BELT}: true,");
        }
        let _ = writeln!(file, "    source: Assumed({}),\n)", quoted(source));
        file
    }
}

/// A part as a field of the file; none where the text holds nothing.
///
/// **Fails** on a text that is no such part.
pub fn field(part: GymPart, text: &str) -> Result<Option<String>> {
    let listed: Vec<&str> = text
        .split(',')
        .map(str::trim)
        .filter(|t| !t.is_empty())
        .collect();
    if listed.is_empty() {
        return Ok(None);
    }
    let bad = |written: &str| {
        Error::bad(GymFault::NoPart {
            part,
            written: written.to_owned(),
        })
    };
    let list = |name: &str, one: &dyn Fn(&str) -> Option<String>| -> Result<Option<String>> {
        let items = listed.iter().map(|item| one(item).ok_or_else(|| bad(item)));
        let items = items.collect::<Result<Vec<String>>>()?;
        Ok(Some(format!("{name}: [{}],", items.join(", "))))
    };
    match part {
        GymPart::Bars => list("bars", &|item| bar(item, "bar")),
        GymPart::CurlBars => list("curl_bars", &|item| bar(item, "curl-bar")),
        GymPart::Plates => list("plates", &|item| {
            let (count, mass) = counted(item)?;
            Some(format!("(mass: {}, count: {count})", mass_text(mass)?))
        }),
        GymPart::Dumbbells => masses("dumbbells", &listed)
            .map(Some)
            .ok_or_else(|| bad(text)),
        GymPart::Kettlebells => masses("kettlebells", &listed)
            .map(Some)
            .ok_or_else(|| bad(text)),
        GymPart::Collars => mass_text(text)
            .map(|mass| Some(format!("collars: {mass},")))
            .ok_or_else(|| bad(text)),
        GymPart::Stack => stack(text).map(Some).ok_or_else(|| bad(text)),
        GymPart::Sled => mass_text(text)
            .map(|mass| Some(format!("sled: (mass: {mass}, friction: 0.03),")))
            .ok_or_else(|| bad(text)),
        GymPart::SafetyArms => arms(text).map(Some).ok_or_else(|| bad(text)),
        GymPart::Bands => list("bands", &piece),
        GymPart::Chains => list("chains", &piece),
        GymPart::Anchors => {
            let items = listed
                .iter()
                .map(|item| anchor(item).ok_or_else(|| bad(item)));
            let items = items.collect::<Result<Vec<String>>>()?;
            Ok(Some(format!("anchors: {{{}}},", items.join(", "))))
        }
    }
}

/// A text as the file quotes it.
fn quoted(text: &str) -> String {
    format!("\"{}\"", text.replace('\\', "\\\\").replace('"', "\\\""))
}

fn mass_text(text: &str) -> Option<String> {
    let text = text.trim();
    Mass::from_text(text).ok().map(|_| quoted(text))
}

/// "20 kg" or "men's bar = 20 kg"; without a name it is called after its mass, so that no two are alike.
fn bar(item: &str, usual: &str) -> Option<String> {
    let (name, mass) = match item.split_once('=') {
        Some((name, mass)) => (name.trim().to_owned(), mass),
        None => (format!("{usual} {}", item.trim()), item),
    };
    Some(format!(
        "(name: {}, mass: {})",
        quoted(&name),
        mass_text(mass)?
    ))
}

/// "4 x 20 kg" or "20 kg x 4".
fn counted(item: &str) -> Option<(u32, &str)> {
    let (first, second) = item.split_once(" x ").or_else(|| item.split_once('×'))?;
    let count = |text: &str| text.trim().parse::<u32>().ok();
    match (count(first), count(second)) {
        (Some(0), _) | (None, Some(0)) => None,
        (Some(count), _) => Some((count, second.trim())),
        (None, Some(count)) => Some((count, first.trim())),
        (None, None) => None,
    }
}

/// "loop-14mm x 2", or "loop-14mm" for a pair.
fn piece(item: &str) -> Option<String> {
    let (count, name) = match counted(item) {
        Some((count, name)) => (count, name),
        None => (2, item),
    };
    let is_name = name
        .chars()
        .all(|c| c.is_alphanumeric() || c == '-' || c == '_');
    is_name.then(|| format!("(name: {}, count: {count})", quoted(name)))
}

/// "pin = 75 cm".
fn anchor(item: &str) -> Option<String> {
    let (name, height) = item.split_once('=')?;
    let height = height.trim();
    Length::from_text(height).ok()?;
    Some(format!(
        "{}: (height: {})",
        quoted(name.trim()),
        quoted(height)
    ))
}

/// "5 kg, 7.5 kg" or steps, "5 kg..20 kg by 2.5 kg".
fn masses(name: &str, listed: &[&str]) -> Option<String> {
    let mut all = Vec::new();
    for item in listed {
        match item.split_once("..") {
            None => all.push(mass_text(item)?),
            Some((from, rest)) => all.extend(steps(from, rest)?),
        }
    }
    Some(format!("{name}: [{}],", all.join(", ")))
}

/// Most pieces that steps may stand for.
const MOST_STEPS: usize = 60;

fn steps(from: &str, rest: &str) -> Option<Vec<String>> {
    let (to, step) = rest.split_once(" by ")?;
    let [from, to, step] = [from, to, step].map(|text| Mass::from_text(text.trim()).ok());
    let (from, to, step) = (from?, to?, step?);
    let in_pounds = rest.contains("lb");
    if step <= Mass::ZERO || to < from {
        return None;
    }
    let count = ((to - from).as_kg() / step.as_kg() + 1.0e-6).floor() as usize + 1;
    let text = |index: usize| {
        let mass = from + step * index as f64;
        if in_pounds {
            quoted(&format!("{} lb", round(mass.as_lb())))
        } else {
            quoted(&format!("{} kg", round(mass.as_kg())))
        }
    };
    (count <= MOST_STEPS).then(|| (0..count).map(text).collect())
}

/// "5 kg..80 kg": the step, and the whole stack.
fn stack(text: &str) -> Option<String> {
    let (step, most) = text.split_once("..")?;
    Some(format!(
        "stack: (step: {}, most: {}),",
        mass_text(step)?,
        mass_text(most)?
    ))
}

/// "30 cm..120 cm by 5 cm": the lowest hole, the highest one, and from hole to hole.
fn arms(text: &str) -> Option<String> {
    let (lowest, rest) = text.split_once("..")?;
    let (highest, step) = rest.split_once(" by ")?;
    let [lowest, highest, step] = [lowest, highest, step].map(length_text);
    Some(format!(
        "safety_arms: (lowest: {}, highest: {}, step: {}),",
        lowest?, highest?, step?
    ))
}

fn length_text(text: &str) -> Option<String> {
    let text = text.trim();
    Length::from_text(text).ok().map(|_| quoted(text))
}
