//! Rules for technique parameters: inside their range, of one kind with it, there where a path needs one.
//!
//! In: a movement whose types already fit, and the lifter who is to do it. Out: complaints.

use super::complaint::{Complaint, Rules};
use super::nearest;
use crate::anatomy::Lifter;
use crate::error::{BrokenRule, TechniqueKind, TechniqueNumber, TechniqueRule};
use crate::movement::{Movement, Technique, TechniqueValue};

/// Technique in the ranges of the movement, shares of the lifter's size included.
pub(super) fn technique_of(movement: &Movement, lifter: &Lifter) -> Vec<Complaint> {
    let mut rules = Rules::default();
    let shoulders_m = lifter.build.biacromial_breadth.as_m();
    all(movement, Some(shoulders_m), &mut rules);
    rules.complaints
}

/// Every parameter; shares of the shoulders become lengths where the lifter is known.
pub(super) fn all(movement: &Movement, shoulders_m: Option<f64>, rules: &mut Rules) {
    for (name, parameter) in &movement.technique {
        let path = format!("technique.{name}");
        word(&path, parameter, rules);
        kinds(&path, parameter, rules);
        range(&path, parameter, shoulders_m, rules);
    }
}

fn word(path: &str, parameter: &Technique, rules: &mut Rules) {
    if let TechniqueValue::Choice { now, of } = &parameter.value
        && !of.contains(now)
    {
        let of: Vec<&str> = of.iter().map(String::as_str).collect();
        let no_word = TechniqueRule::NoSuchWord {
            word: now.clone(),
            known: nearest::known(now, &of),
        };
        rules.add(format!("{path}.value"), BrokenRule::Technique(no_word));
    }
}

/// `least` and `most` must be of one kind with the value.
fn kinds(path: &str, parameter: &Technique, rules: &mut Rules) {
    for (side, bound) in [("least", &parameter.least), ("most", &parameter.most)] {
        if let Some(bound) = bound.as_ref().filter(|b| !is_one_kind(&parameter.value, b)) {
            let other = TechniqueRule::OtherKind {
                bound: kind(bound),
                value: kind(&parameter.value),
            };
            rules.add(format!("{path}.{side}"), BrokenRule::Technique(other));
        }
    }
}

fn range(path: &str, parameter: &Technique, shoulders_m: Option<f64>, rules: &mut Rules) {
    let end = |end: &Option<TechniqueValue>| end.as_ref().and_then(|e| number(e, shoulders_m));
    let (least, most) = (end(&parameter.least), end(&parameter.most));
    if let (Some(least), Some(most)) = (least, most)
        && least.is_comparable(most)
        && least.number() >= most.number()
    {
        let falls = TechniqueRule::LeastNotBelowMost { least, most };
        rules.add(format!("{path}.least"), BrokenRule::Technique(falls));
    }
    let Some(value) = number(&parameter.value, shoulders_m) else {
        return;
    };
    let comparable =
        |end: Option<TechniqueNumber>| end.filter(|number| number.is_comparable(value));
    let (least, most) = (comparable(least), comparable(most));
    let below = least.is_some_and(|least| value.number() < least.number());
    let above = most.is_some_and(|most| value.number() > most.number());
    if below || above || !value.number().is_finite() {
        let outside = TechniqueRule::Outside {
            value,
            least,
            most,
            meaning: parameter.meaning.clone(),
        };
        rules.add(format!("{path}.value"), BrokenRule::Technique(outside));
    }
}

/// The number of a technique value; shares of the shoulders become lengths where the lifter is known.
pub(super) fn number(value: &TechniqueValue, shoulders_m: Option<f64>) -> Option<TechniqueNumber> {
    Some(match value {
        TechniqueValue::Length(length) => TechniqueNumber::Metres(length.as_m()),
        TechniqueValue::Angle(angle) => TechniqueNumber::Radians(angle.as_rad()),
        TechniqueValue::OfShoulders(share) => match shoulders_m {
            Some(shoulders_m) => TechniqueNumber::Metres(share * shoulders_m),
            None => TechniqueNumber::Shoulders(*share),
        },
        TechniqueValue::Number(number) => TechniqueNumber::Plain(*number),
        TechniqueValue::Choice { .. } | TechniqueValue::Free => return None,
    })
}

/// Whether an end of the range fits the value.
fn is_one_kind(value: &TechniqueValue, end: &TechniqueValue) -> bool {
    use TechniqueKind::{Free, Length, OfShoulders};
    matches!(
        (kind(value), kind(end)),
        (Free, _) | (Length | OfShoulders, Length | OfShoulders)
    ) || kind(value) == kind(end)
}

/// The kind of a technique value.
pub(super) fn kind(value: &TechniqueValue) -> TechniqueKind {
    match value {
        TechniqueValue::Length(_) => TechniqueKind::Length,
        TechniqueValue::Angle(_) => TechniqueKind::Angle,
        TechniqueValue::OfShoulders(_) => TechniqueKind::OfShoulders,
        TechniqueValue::Number(_) => TechniqueKind::Number,
        TechniqueValue::Choice { .. } => TechniqueKind::Word,
        TechniqueValue::Free => TechniqueKind::Free,
    }
}
