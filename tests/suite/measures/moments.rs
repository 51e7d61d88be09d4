//! Measures of joint moments and work while a load goes up.

use super::held::degrees;
use super::lifted::{Lifted, beside_lift, done, lifted, ratio};
use super::{Asked, settings};
use torquill::anatomy::Lifter;
use torquill::movement::Pose;
use torquill::rep::{RepTrace, stronger};
use torquill::study::{Question, study};

/// The value of a measure of this file; `None` for a measure that is none of them.
pub fn value(asked: &Asked) -> Option<Option<f64>> {
    let sets = settings(asked);
    let (lift, lifter) = (asked.lift.as_str(), asked.lifter.as_str());
    let body_kg = || lifted(lift, lifter, &sets).lifter.body_mass.as_kg();
    let all = |joint: &str| {
        let (lift, _, trace) = done(asked)?;
        moments(&lift, &trace, joint)
    };
    Some(match asked.measure.as_str() {
        "peak_moment" => peak(asked, asked.words("joint")).map(|top| match asked.given("both") {
            Some(_) => 2.0 * top,
            None => top / body_kg(),
        }),
        "peak_moment_angle" => all(asked.words("joint")).and_then(|all| {
            let top = all.iter().max_by(|a, b| a.1.total_cmp(&b.1))?;
            Some(top.0.to_degrees())
        }),
        "moment_end_ratio" => {
            all(asked.words("joint")).and_then(|all| Some(all.last()?.1 / all.first()?.1))
        }
        "moment_ratio" => ratio(peak(asked, "hip"), peak(asked, "knee")),
        "moment_ratio_rise" => {
            let at = |load: &str| {
                let mut other = asked.clone();
                other.with.insert("load".to_owned(), load.to_owned());
                ratio(peak(&other, "hip"), peak(&other, "knee"))
            };
            ratio(at(asked.words("load")), at(asked.words("beside_load")))
        }
        "moment_of_lift" => {
            let joint = asked.words("joint");
            ratio(peak(asked, joint), peak(&beside_lift(asked), joint))
        }
        "moment_of_depth" => {
            let at = |name: &str| {
                let mut deep = asked.clone();
                let depth = asked.words(name).to_owned();
                deep.with.insert("depth".to_owned(), depth);
                peak(&deep, asked.words("joint"))
            };
            ratio(at("deg"), at("beside"))
        }
        "start_moment_ratio" => {
            let start = |joint: &str| Some(all(joint)?.first()?.1);
            ratio(start(asked.words("joint")), start(asked.words("beside")))
        }
        "start_angle_ratio" => {
            let angle = |sets: &[String]| {
                degrees(&lifted(lift, lifter, sets).poses()[0], asked.words("joint"))
            };
            let other = format!("technique.stance={}", asked.words("beside_stance"));
            ratio(angle(&sets), angle(&[other]))
        }
        "work" => all(asked.words("joint")).map(|all| positive_work(&all) / body_kg()),
        "work_ratio" => {
            let work = |joint: &str| all(joint).map(|all| positive_work(&all));
            ratio(work("hip"), work("knee"))
        }
        "hip_share_rise" => done(asked).and_then(|(l, _, t)| hip_share_rise(&l, &t)),
        _ => return None,
    })
}

/// Greatest net extensor moment of a joint of one side while lifting, N·m.
fn peak(asked: &Asked, joint: &str) -> Option<f64> {
    let (lift, _, trace) = done(asked)?;
    let moments = moments(&lift, &trace, joint)?;
    Some(
        moments
            .iter()
            .fold(f64::NEG_INFINITY, |a, (_, m)| a.max(*m)),
    )
}

/// Moment that a load asks of a joint of one side in a pose: what the limbs' weight asks, and per newton of the load.
struct Asks {
    angle_rad: f64,
    limbs_nm: f64,
    per_newton_m: f64,
}

/// What every pose asks of a joint. Where the surroundings push back at the joint (a bench under the back), their part
/// is not known of any one load: it is taken from what two lifters of unequal strength hold at most.
fn asks(lift: &Lifted, joint: &str) -> Option<Vec<Asks>> {
    let poses = lift.poses();
    let index = poses[0]
        .coordinates
        .iter()
        .position(|c| c.dof.name() == joint)?;
    let pushed = |pose: &Pose| {
        pose.reactions
            .iter()
            .any(|r| r.column[index].abs() > 1.0e-6)
    };
    if !poses.iter().any(pushed) {
        let all = poses.iter().map(|pose| Asks {
            angle_rad: pose.coordinates[index].angle_rad,
            limbs_nm: pose.gravity_nm[index],
            per_newton_m: -0.5 * pose.load_jacobian[index].z,
        });
        return Some(all.collect());
    }
    let held = |body: &Lifter| {
        let question = Question::new("", &lift.movement, body);
        let study = study(&question, &[]).ok()?;
        let all = study.capacity.held.iter();
        Some(
            all.map(|h| (h.capacity, -h.muscle_torques_nm[index]))
                .collect::<Vec<_>>(),
        )
    };
    let (strong, weak) = (held(&lift.lifter)?, held(&stronger(&lift.lifter, 0.7))?);
    let all = poses
        .iter()
        .zip(strong.iter().zip(&weak))
        .map(|(pose, (s, w))| {
            let per_newton_m = (s.1 - w.1) / (s.0 - w.0);
            Asks {
                angle_rad: pose.coordinates[index].angle_rad,
                limbs_nm: s.1 - per_newton_m * s.0,
                per_newton_m,
            }
        });
    Some(all.collect())
}

/// Net extensor moment of a joint of one side (angle rad, N·m) through the lifting phase, the limbs' weight with it;
/// what speeding the limbs up asks is left out.
fn moments(lift: &Lifted, trace: &RepTrace, joint: &str) -> Option<Vec<(f64, f64)>> {
    let asks = asks(lift, joint)?;
    let all = trace.lifting().iter().map(|sample| {
        let at = sample.range.clamp(0.0, 1.0) * (asks.len() - 1) as f64;
        let (low, part) = (at.floor() as usize, at.fract());
        let high = (low + 1).min(asks.len() - 1);
        let of = |a: &Asks| (a.angle_rad, a.limbs_nm + a.per_newton_m * sample.force);
        let (a, b) = (of(&asks[low]), of(&asks[high]));
        (a.0 + part * (b.0 - a.0), a.1 + part * (b.1 - a.1))
    });
    Some(all.collect())
}

/// Work of the extensor moments while the angle falls, J.
fn positive_work(moments: &[(f64, f64)]) -> f64 {
    moments
        .windows(2)
        .map(|pair| (f64::midpoint(pair[0].1, pair[1].1) * (pair[0].0 - pair[1].0)).max(0.0))
        .sum()
}

/// Hip's share of hip and knee moment in the middle of the sticking region less that at the bottom.
fn hip_share_rise(lift: &Lifted, trace: &RepTrace) -> Option<f64> {
    let region = trace.sticking?;
    let (hip, knee) = (moments(lift, trace, "hip")?, moments(lift, trace, "knee")?);
    let middle = f64::midpoint(region.first_peak.time_s, region.minimum.time_s);
    let start = trace.lifting().first()?.time_s;
    let place = trace
        .lifting()
        .iter()
        .position(|sample| sample.time_s - start >= middle)?;
    let share = |index: usize| hip[index].1 / (hip[index].1 + knee[index].1);
    Some(share(place) - share(0))
}
