//! The questions that the lecture asks of a lifter beyond the unloaded curves: speeds, grips, thighs.
//!
//! In: a [`Desk`]. Out: curves at several speeds, families over a changed value.

use super::compared::Conditions;
use super::desk::Desk;
use super::family::{Family, Variant, family};
use super::parameter::Parameter;
use super::question::Study;
use super::solve::study;
use crate::capacity::Pace;
use crate::error::Result;
use crate::library::get;
use crate::units::{AngularSpeed, Length, System, rounded};

/// Speeds of the joint, deg/s: usual steps of isokinetic tests (common practice).
const SPEEDS_DEG_S: [f64; 4] = [-60.0, 0.0, 60.0, 180.0];

/// A lift's curve at one speed of its joint.
#[derive(Debug, Clone, PartialEq)]
pub struct MovingStudy {
    /// The speed, deg/s; negative in lowering.
    pub speed_deg_s: f64,
    /// The curve.
    pub study: Study,
}

/// The curve of a lift at the usual speeds, from lowering to the fastest lifting.
pub fn at_usual_speeds(desk: &Desk<'_>, movement: &str) -> Result<Vec<MovingStudy>> {
    SPEEDS_DEG_S
        .into_iter()
        .map(|speed_deg_s| {
            let mut question = desk.question(movement)?;
            if speed_deg_s != 0.0 {
                question.pace = Pace::Angular(AngularSpeed::from_deg_s(speed_deg_s).as_rad_s());
            }
            let study = study(&question, &[])?;
            Ok(MovingStudy { speed_deg_s, study })
        })
        .collect()
}

/// A value as the lifter has it.
pub const UNCHANGED: &str = "0%";
/// Shorter and longer limbs, against the lifter's own: about two standard deviations between people of
/// one height (assumed).
const LIMBS: [&str; 3] = ["-10%", "0%", "+10%"];

/// A press with narrow and wide grips.
#[derive(Debug, Clone)]
pub struct GripFamily {
    /// The curves.
    pub family: Family,
    /// The usual grip.
    pub usual: Length,
    /// The grips that were tried, in breadths of the shoulders.
    pub breadths: Vec<f64>,
    /// The usual grip in breadths of the shoulders.
    pub usual_breadths: f64,
    /// Height up to which the widest grip holds less than the narrowest and above which it holds more, cm; `None` if there is
    /// no such height, or several.
    pub turning_cm: Option<f64>,
}

impl GripFamily {
    /// The curves from the narrowest grip to the widest, but for the usual one, whose width may be held in another unit.
    #[must_use]
    pub fn in_order(&self) -> Vec<&Variant> {
        let in_metres = |variant: &&Variant| variant.number.as_ref().is_some_and(|n| n.unit == "m");
        let mut all: Vec<&Variant> = self.family.variants.iter().filter(in_metres).collect();
        let width = |variant: &Variant| variant.number.as_ref().map_or(0.0, |number| number.value);
        all.sort_by(|a, b| width(a).total_cmp(&width(b)));
        all
    }
}

/// A press with grips of so many breadths of the shoulders, and with the usual one.
///
/// **Fails** if fewer than two can be done.
pub fn grip_family(desk: &Desk<'_>, movement: &str, breadths: &[f64]) -> Result<GripFamily> {
    let path = "technique.grip_width";
    let model = &desk.lift(movement)?.model;
    let grip = get(model, path)?;
    // A grip is held as a length or as a multiple of the breadth of the shoulders.
    let breadth_m = get(model, "build.biacromial_breadth")?.value;
    let usual_m = match grip.unit {
        "m" => grip.value,
        _ => grip.value * breadth_m,
    };
    let tried = breadths
        .iter()
        .map(|breadths| whole_width(desk.units, (100.0 * breadths * breadth_m).round()));
    let values: Vec<String> = tried.chain([UNCHANGED.to_owned()]).collect();
    let mut grips = GripFamily {
        family: varied(desk, movement, path, &values)?,
        usual: Length::from_m(usual_m),
        breadths: breadths.to_vec(),
        usual_breadths: usual_m / breadth_m,
        turning_cm: None,
    };
    let turning_cm = match grips.in_order()[..] {
        [narrow, .., wide] => turning(&narrow.study, &wide.study),
        _ => None,
    };
    grips.turning_cm = turning_cm;
    Ok(grips)
}

/// Where the second curve passes from below the first to above it, on their axis; `None` unless it does so once.
fn turning(first: &Study, second: &Study) -> Option<f64> {
    let points = |study: &Study| -> Vec<[f64; 2]> {
        let poses = study.range.poses.iter();
        let places = poses.map(|pose| study.axis_value(pose.load.range));
        places
            .zip(study.capacity.values())
            .map(|(x, y)| [x, y])
            .collect()
    };
    let (under, over) = (points(first), points(second));
    let at = |x: f64| {
        let pair = under
            .windows(2)
            .find(|pair| pair[0][0] <= x && x <= pair[1][0])?;
        let part = (x - pair[0][0]) / (pair[1][0] - pair[0][0]).max(f64::MIN_POSITIVE);
        Some(pair[0][1] + part * (pair[1][1] - pair[0][1]))
    };
    let gaps: Vec<[f64; 2]> = over
        .iter()
        .filter_map(|[x, y]| Some([*x, y - at(*x)?]))
        .collect();
    let mut turns = gaps
        .windows(2)
        .filter(|pair| (pair[0][1] < 0.0) != (pair[1][1] < 0.0));
    let turn = turns.next()?;
    let is_only = turns.next().is_none() && turn[0][1] < 0.0;
    let part = turn[0][1] / (turn[0][1] - turn[1][1]);
    is_only.then(|| turn[0][0] + part * (turn[1][0] - turn[0][0]))
}

/// A width as `PATH=VALUE` takes it.
fn whole_width(units: System, cm: f64) -> String {
    let width = Length::from_cm(cm);
    match units {
        System::Metric => format!("{} cm", rounded(width.as_cm(), 1)),
        System::Us => format!("{} in", rounded(width.as_in(), 1)),
    }
}

/// A lift with short and long thighs.
pub fn thigh_family(desk: &Desk<'_>, movement: &str) -> Result<Family> {
    let values = LIMBS.map(str::to_owned);
    varied(desk, movement, "segments.thigh.length", &values)
}

/// **Fails** with the reason of the first value that cannot be done, when fewer than two can.
fn varied(desk: &Desk<'_>, movement: &str, path: &str, values: &[String]) -> Result<Family> {
    let parameter = Parameter::read(path, &values.join(","))?;
    let bench = desk.workbench(movement)?;
    let family = family(&bench, &[], &parameter, &Conditions::default())?;
    match family.undone.first() {
        Some(undone) if family.variants.len() < 2 => Err(undone.error.clone()),
        _ => Ok(family),
    }
}
