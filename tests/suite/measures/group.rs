//! Measures of two hundred invented lifters around one: who has a sticking region, where it lies, what goes with build.

use super::held::{thigh_above_level, trunk_lean};
use super::lifted::Lifted;
use super::{Asked, settings};
use rayon::prelude::*;
use std::collections::BTreeMap;
use std::sync::{Arc, LazyLock, Mutex};
use torquill::anatomy::SegmentName;
use torquill::library::{Library, assemble};
use torquill::movement::{Pose, trace};
use torquill::numeric::median;
use torquill::person::Scatter;
use torquill::rep::{RepEnd, StickingInMotion};
use torquill::study::invented;

/// The seed of all groups of the lists.
const SEED: u64 = 1;
/// What is hung on a maximum to make it fail, kg.
const TOO_MUCH_KG: f64 = 2.5;

/// What is kept of one invented lifter.
struct One {
    height_m: f64,
    body_kg: f64,
    thigh_m: f64,
    limit_kg: f64,
    /// At the maximum.
    region: Option<StickingInMotion>,
    /// At 70 % of it.
    light: Option<StickingInMotion>,
    /// Place where a little more stalls.
    fails_at: Option<f64>,
    /// The pose at the velocity minimum.
    stuck: Option<Pose>,
}

/// How the invented lifters of all lists differ: chosen before the lists were compared, so that squat maxima scatter by 16 %
/// as in a group of trained men (Bazyler et al. 2015, abstract); the rest is assumed.
fn scatter() -> Scatter {
    Scatter {
        height: 0.04,
        mass_by_height: 2.0,
        mass: 0.12,
        segment: 0.025,
        strength: 0.12,
        group: 0.10,
    }
}

fn group(asked: &Asked) -> Arc<Vec<One>> {
    type Kept = Mutex<BTreeMap<String, Arc<Vec<One>>>>;
    static KEPT: LazyLock<Kept> = LazyLock::new(Mutex::default);
    let sets = settings(asked);
    let key = format!("{} {} {sets:?}", asked.lift, asked.lifter);
    let mut kept = KEPT.lock().expect("sound");
    if let Some(known) = kept.get(&key) {
        return Arc::clone(known);
    }
    let model = assemble(&Library::built_in(), &asked.lifter, &asked.lift, &sets)
        .unwrap_or_else(|e| panic!("{key}: {e}"));
    let scatter = scatter();
    let made = (0..asked.number("of") as usize)
        .into_par_iter()
        .filter_map(|number| {
            let (lifter, _) = invented(&model.lifter, &scatter, SEED, number);
            one(Lifted::new(&asked.lift, model.movement.clone(), lifter)?)
        })
        .collect();
    let made = Arc::new(made);
    kept.insert(key, Arc::clone(&made));
    made
}

fn one(lift: Lifted) -> Option<One> {
    let limit_kg = lift.limit_kg(&lift.options)?;
    let at = |kg: f64| lift.with_kg(kg, &lift.options);
    let region = at(limit_kg)?.sticking;
    let failed = at(limit_kg + TOO_MUCH_KG)?.outcome;
    let stuck = region.and_then(|r| {
        let poses = trace(&lift.movement, &lift.lifter, 101).ok()?.poses;
        let index = (r.minimum.range * (poses.len() - 1) as f64).round() as usize;
        poses.get(index).cloned()
    });
    Some(One {
        height_m: lift.lifter.height.as_m(),
        body_kg: lift.lifter.body_mass.as_kg(),
        thigh_m: lift.lifter.segment(SegmentName::Thigh).length.as_m(),
        light: at(0.7 * limit_kg)?.sticking,
        fails_at: match failed {
            RepEnd::Stalled { range, .. } => Some(range),
            _ => None,
        },
        limit_kg,
        region,
        stuck,
    })
}

/// The value of a measure of this file; `None` for a measure that is none of them.
pub fn value(asked: &Asked) -> Option<Option<f64>> {
    let region = |of: fn(&StickingInMotion) -> Option<f64>| {
        let all: Vec<f64> = group(asked)
            .iter()
            .filter_map(|one| one.region.as_ref().and_then(of))
            .collect();
        median(&all)
    };
    let stuck = |of: fn(&Pose) -> Option<f64>| {
        let all: Vec<f64> = group(asked)
            .iter()
            .filter_map(|one| one.stuck.as_ref().and_then(of))
            .collect();
        median(&all)
    };
    Some(match asked.measure.as_str() {
        "sticking_share" => {
            let all = group(asked);
            let light = asked.number("load") < 100.0;
            let has = |one: &&One| {
                if light {
                    one.light.is_some()
                } else {
                    one.region.is_some()
                }
            };
            Some(all.iter().filter(has).count() as f64 / all.len() as f64)
        }
        "sticking_height" => match asked.words("mark") {
            "first_peak" => region(|r| Some(100.0 * r.first_peak.position)),
            "minimum" => region(|r| Some(100.0 * r.minimum.position)),
            _ => region(|r| r.second_peak.map(|mark| 100.0 * mark.position)),
        },
        "sticking_start" => region(|r| Some(r.first_peak.time_s)),
        "sticking_length" => region(|r| Some(r.duration_s())),
        "sticking_velocity" => region(|r| Some(r.minimum.velocity)),
        "sticking_knee" => region(|r| Some(r.minimum.angle_rad.to_degrees())),
        "sticking_trunk" => stuck(|pose| Some(90.0 - trunk_lean(pose)?)),
        "sticking_thigh" => stuck(thigh_above_level),
        "failure_share" => failure_share(&group(asked)),
        "correlation" => correlation(asked),
        _ => return None,
    })
}

/// Of those with a region who fail a little more in motion: the share who fail inside it.
fn failure_share(all: &[One]) -> Option<f64> {
    let failed: Vec<bool> = all
        .iter()
        .filter_map(|one| {
            let (region, place) = (one.region?, one.fails_at?);
            Some((region.first_peak.range..=region.minimum.range).contains(&place))
        })
        .collect();
    let inside = failed.iter().filter(|inside| **inside).count();
    (!failed.is_empty()).then(|| inside as f64 / failed.len() as f64)
}

/// Correlation of the maximum over body mass to the two thirds with a measure of build.
fn correlation(asked: &Asked) -> Option<f64> {
    let points: Vec<(f64, f64)> = group(asked)
        .iter()
        .map(|one| {
            let build = match asked.words("against") {
                "height" => one.height_m,
                "thigh_over_height" => one.thigh_m / one.height_m,
                _ => one.body_kg / one.height_m.powi(2),
            };
            (build, one.limit_kg / one.body_kg.powf(2.0 / 3.0))
        })
        .collect();
    let n = points.len() as f64;
    let mean = |of: fn(&(f64, f64)) -> f64| points.iter().map(of).sum::<f64>() / n;
    let (x, y) = (mean(|p| p.0), mean(|p| p.1));
    let sum = |of: &dyn Fn(&(f64, f64)) -> f64| points.iter().map(of).sum::<f64>();
    let (xx, yy) = (sum(&|p| (p.0 - x).powi(2)), sum(&|p| (p.1 - y).powi(2)));
    let r = sum(&|p| (p.0 - x) * (p.1 - y)) / (xx * yy).sqrt();
    r.is_finite().then_some(r)
}
