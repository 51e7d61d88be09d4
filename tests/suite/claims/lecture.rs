//! Every sentence of the lecture's figures, for every built-in lifter, against the data that the figure draws.

use super::below_titles::{BELOW, BELOW_TABLES, below_title, effort, spread};
use super::doubts::{DOUBTS, hollow_curves, is_hollow_at, is_told};
use super::drawings::{BODIES, CURVES, LIMITS, MOTION, PEOPLE};
use super::families::{FAMILIES, STACK, as_it_is};
use super::fibres_below::{FIBRES_BELOW, shaded_lengths};
use super::loads_below::LOADS_BELOW;
use super::one_lift::{AROUND, Sides, is_lift, is_them, nowhere_for_long};
use super::sessions::SESSIONS;
use super::strength::{CLAIMS, Curves, signed};
use super::{
    Claim, Drawn, anywhere, check, compiled, holds, is_definition, least, peak, says, step,
    with_changed_numbers,
};
use crate::lift_by_another_name::LIFTS;
use crate::text_boxes::text_boxes;
use rayon::prelude::{IntoParallelRefIterator, ParallelIterator};
use regex::Captures;
use torquill::figures::{Chart, Sheet};
use torquill::lecture::{LECTURE, LectureFigure, ONE_LIFT};
use torquill::library::{Library, Shelf, assemble};
use torquill::narrative::quantities::QuantityWords;
use torquill::plot::{Extent, Look};
use torquill::rep::RepOptions;
use torquill::resistance::Setup;
use torquill::study::between_samples::promised;
use torquill::study::{
    AskedPlace, Desk, FreeBody, Heaviness, Question, Study, repetition, study, worked_pose,
};
use torquill::units::System;

/// Parts of a list: "a, b and c".
pub fn listed(text: &str) -> Vec<String> {
    text.replace(" and ", ", ")
        .split(", ")
        .map(str::to_owned)
        .collect()
}

/// A curve's ends in percent of its peak.
pub fn ends(points: &[[f64; 2]]) -> [f64; 2] {
    let most = peak(points)[1];
    [points[0][1], points[points.len() - 1][1]].map(|value| 100.0 * value / most)
}

/// The curves of lifts, without what is drawn beside them.
pub fn lifts(drawn: &Drawn) -> impl Iterator<Item = &(String, String, Vec<[f64; 2]>)> {
    drawn.curves.iter().filter(|c| c.1 != "body weight")
}

/// Least and greatest over all curves of one end, which are drawn in percent of the median, rounded as printed.
fn span_is(printed: &str, drawn: &Drawn, end: usize) -> Result<(), String> {
    let value = |points: &[[f64; 2]]| [points[0], points[points.len() - 1]][end][1];
    let all: Vec<f64> = lifts(drawn).map(|c| value(&c.2)).collect();
    let low = all.iter().copied().fold(f64::INFINITY, f64::min);
    let high = all.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    let parts: Vec<&str> = printed.split(" to ").collect();
    says(parts[0], low, 0.1, "least")?;
    says(parts[parts.len() - 1], high, 0.1, "greatest")
}

/// Where a curve is least between its outer tenths, and how much that is of the lower one of its drawn ends, %.
pub fn valley_of_weaker_end(points: &[[f64; 2]]) -> [f64; 2] {
    let tenth = points.len() / 10;
    let inside = least(&points[tenth..points.len() - tenth]);
    let weaker = points[0][1].min(points[points.len() - 1][1]);
    [inside[0], 100.0 * inside[1] / weaker]
}

impl Drawn {
    /// The lift of a curve.
    pub fn study(&self, title: &str) -> Result<&Study, String> {
        let mut all = self.studies.iter();
        let own = all.find(|study| study.movement_title.eq_ignore_ascii_case(title));
        own.ok_or_else(|| format!("no lift is called {title}"))
    }
}

/// "21.9 to 7.4 cm from 32 % to 98 %": the lever about a joint over a stretch that it limits, which explains most of the growth.
pub fn lever_shrinks(study: &Study, joint: &str, way: &str) -> Result<(), String> {
    let reads = compiled(r"([\d.]+) to ([\d.]+) cm from (\d+) % to (\d+) %");
    let words = reads
        .captures(way)
        .ok_or_else(|| format!("`{way}` is no way"))?;
    let [from, to] = [3, 4].map(|end| sample_at(study, &words[end]));
    let held = &study.capacity.held;
    let row = held[from].limiting;
    holds(study.joint(row) == joint, "the joint that limits")?;
    let same = held[from..=to].iter().all(|held| held.limiting == row);
    holds(same, "one joint limits all along")?;
    let arms = [from, to].map(|at| arm_cm(study, row, at));
    says(&words[1], arms[0], 0.0, "arm at the beginning")?;
    says(&words[2], arms[1], 0.0, "arm at the end")?;
    let grown = held[to].capacity / held[from].capacity;
    // The lever explains half of the logarithm or more.
    let shrunk = arms[0] / arms[1];
    holds(
        grown > 1.0 && shrunk * shrunk >= grown,
        &format!("{way}: it grows {grown} times, by the lever {shrunk}"),
    )
}

/// The sample of a place in whole percent.
fn sample_at(study: &Study, percent: &str) -> usize {
    let last = (study.range.poses.len() - 1) as f64;
    (number(percent) * last / 100.0).round() as usize
}

/// The moment arm of the heaviest load of a place about a joint, cm.
fn arm_cm(study: &Study, row: usize, sample: usize) -> f64 {
    100.0 * FreeBody::of(study, None, sample).joints[row].lever_m
}

fn class_told(told: &Captures<'_>, drawn: &Drawn) -> Result<(), String> {
    let points = drawn.curve(&told[1])?;
    let [start, end] = ends(points);
    says(&told[3], start, 0.1, "start")?;
    says(&told[4], end, 0.1, "end")?;
    says(&told[5], peak(points)[0], step(points), "place of the peak")?;
    let tenth = points.len() / 10;
    let inside = least(&points[tenth..points.len() - tenth]);
    let valley = 100.0 * inside[1] / peak(points)[1];
    holds(
        match &told[2] {
            "ascending" => start < 85.1 && start < end,
            "descending" => end < 85.1 && end < start,
            "bell-shaped" => start < 85.1 && end < 85.1,
            "u-shaped" => valley < 85.1,
            "level" => start > 84.9 && end > 84.9,
            _ => false,
        },
        &format!("{}: {start} {end} {valley}", &told[2]),
    )?;
    match told.get(6) {
        Some(trough) => {
            let [place, share] = valley_of_weaker_end(points);
            says(trough.as_str(), share, 0.1, "valley")?;
            says(&told[7], place, step(points), "place of the valley")
        }
        None => Ok(()),
    }
}

/// The body's weight beside the only lift.
fn body_told(told: &Captures<'_>, drawn: &Drawn) -> Result<(), String> {
    let body = drawn.curve("body weight")?;
    let lift = &lifts(drawn).next().ok_or("no lift")?.2;
    let [place, _] = valley_of_weaker_end(lift);
    let held = told.get(4).or(told.get(5)).ok_or("nothing held")?.as_str();
    let ratio = number(&told[1]) / number(held);
    let drawn_ratio = at(body, place) / at(lift, place);
    holds(
        (ratio / drawn_ratio - 1.0).abs() < 0.01,
        "weight over what is held",
    )?;
    let beyond: Vec<f64> = body
        .iter()
        .filter(|b| b[1] > at(lift, b[0]))
        .map(|b| b[0])
        .collect();
    match (told.get(2), told.get(3)) {
        (Some(from), Some(to)) => {
            says(from.as_str(), beyond[0], 0.1, "from")?;
            says(to.as_str(), beyond[beyond.len() - 1], 0.1, "to")
        }
        _ => holds(beyond.is_empty(), "the body can be held"),
    }
}

/// So many arrows as curves leave the figure, and of these joints, nearly straight where they limit at the peak.
fn arrows_told(told: &Captures<'_>, drawn: &Drawn) -> Result<(), String> {
    let leaving: Vec<_> = lifts(drawn).filter(|c| peak(&c.2)[1] > 220.0).collect();
    holds(!leaving.is_empty(), "a curve leaves the figure")?;
    let several = leaving.len() > 1;
    holds(several == (&told[1] == "Arrows"), "how many arrows")?;
    let Some(joints) = told.get(2) else {
        return Ok(());
    };
    let mut limiting = Vec::new();
    for lift in leaving {
        let study = drawn.study(&lift.1)?;
        let held = study.capacity.held.iter();
        let strongest = held.max_by(|a, b| a.capacity.total_cmp(&b.capacity));
        limiting.push(study.joint(strongest.ok_or("nothing is held")?.limiting));
    }
    let named: Vec<&str> = joints.as_str().split(" or ").collect();
    holds(
        named.iter().all(|joint| limiting.contains(joint))
            && limiting.iter().all(|joint| named.contains(joint)),
        &format!("{named:?} limit, in truth {limiting:?}"),
    )
}

/// "pull-up, descending; …": every lift whose published class is another than the computed one, and no other.
fn published_otherwise(told: &str, drawn: &Drawn) -> Result<(), String> {
    let reference = include_str!("../../reference/kulig1984_classes.csv");
    let rows = anywhere(r",([a-z-]+),reference-man,([a-z-]+)(?m:$)");
    let published = |movement: &str| {
        let mut rows = rows.captures_iter(reference);
        rows.find(|row| &row[1] == movement)
            .map(|row| row[2].to_owned())
    };
    let otherwise: Vec<String> = lifts(drawn)
        .filter_map(|curve| {
            let name = curve.1.to_lowercase();
            let class = published(&name.replace(' ', "-"))?;
            // Of panels the class stands above, else the lift has it.
            let head = curve.0.split(" (").next().unwrap_or_default();
            let own = match drawn.study(&curve.1) {
                Ok(study) => study.class.shape.word().to_owned(),
                Err(_) => head.to_lowercase(),
            };
            (class != own).then(|| format!("{name}: {class}"))
        })
        .collect();
    holds(
        told == otherwise.join("; "),
        &format!("{told}, in truth {otherwise:?}"),
    )
}

/// "the hip gives way first" where its strength alone counts, "shoulder and elbow share the limit" where others help as well: one per
/// cent more strength of a joint gains its dual value times what its muscles make there.
pub fn gives_way(told: &str, study: &Study, sample: usize) -> Result<(), String> {
    let held = &study.capacity.held[sample];
    let mut gains: Vec<(&str, f64)> = Vec::new();
    for (row, dual) in held.duals.iter().enumerate() {
        let own = dual * held.muscle_torques_nm[row];
        match gains.iter_mut().find(|gain| gain.0 == study.joint(row)) {
            Some(gain) => gain.1 += own,
            None => gains.push((study.joint(row), own)),
        }
    }
    let all: f64 = gains.iter().map(|gain| gain.1.abs()).sum();
    gains.retain(|gain| gain.1.abs() > 0.02 * all);
    gains.sort_by(|a, b| b.1.abs().total_cmp(&a.1.abs()));
    let joints: Vec<&str> = gains.iter().map(|gain| gain.0).collect();
    let truth = match joints.as_slice() {
        [only] => format!("the {only} gives way first"),
        several => format!("{} share the limit", several.join(", ")),
    };
    holds(
        told.replace(" and ", ", ") == truth,
        &format!("{told}, in truth {truth}"),
    )
}

/// Whether a place, % of the range, lies in the part of it that is told.
fn is_part(told: &str, at: f64) -> Result<bool, String> {
    match told {
        "at the start" => Ok(at < 5.1),
        "in the first third" => Ok(at > 4.9 && at < 33.4),
        "in the middle third" => Ok(at > 33.3 && at < 66.7),
        "in the last third" => Ok(at > 66.6 && at < 95.1),
        "at the end" => Ok(at > 94.9),
        other => Err(format!("{other} is no part of the range")),
    }
}

/// Whether a curve does what is told of its shape.
fn shape_does(told: &str, points: &[[f64; 2]]) -> Result<(), String> {
    let [start, end] = ends(points);
    let is_so = match told {
        "rises" => start < end,
        "falls" => start > end,
        "peaks" => start < 85.1 && end < 85.1,
        "sags" => {
            let tenth = points.len() / 10;
            let inside = least(&points[tenth..points.len() - tenth])[1];
            inside < points[0][1] && inside < points[points.len() - 1][1]
        }
        _ => false,
    };
    holds(is_so, told)
}

/// A person's force over all speeds, below and above none.
pub fn voluntary(drawn: &Drawn) -> Result<Vec<[f64; 2]>, String> {
    let halves = [drawn.curve("voluntary effort")?, drawn.curve("both alike")?];
    Ok(halves.concat())
}

/// Figures of classes and of what a weight does to them.
const CLASSES: &[Claim<Drawn>] = &[
    Claim {
        reads: r"Strength has (one|two|three|four|five) shapes?: it (.+)",
        holds: |told, drawn| {
            let parts = told[2].replace(" or ", ", ").replace(" in between", "");
            let parts: Vec<&str> = parts.split(", ").collect();
            let words = ["one", "two", "three", "four", "five"];
            holds(
                words.iter().position(|word| *word == &told[1]) == Some(drawn.curves.len() - 1)
                    && parts.len() == drawn.curves.len(),
                "so many",
            )?;
            let curves = drawn.curves.iter();
            let mut each = parts.into_iter().zip(curves);
            each.try_for_each(|(part, curve)| shape_does(part, &curve.2))
        },
    },
    Claim {
        // A lift that is published with another class shows a shape that is the model's alone.
        reads: r"(?:Strength (.+); in this model alone|In this model, unlike published,) (one lift .+)",
        holds: |told, drawn| {
            let alone = told[2].replace("one lift ", "").replace(" and ", ", ");
            let agreed = told
                .get(1)
                .map_or_else(String::new, |agreed| agreed.as_str().replace(" or ", ", "));
            let (missed, kept): (Vec<_>, Vec<_>) = drawn
                .curves
                .iter()
                .partition(|curve| curve.0.contains("(published: "));
            for (told, curves) in [(agreed, kept), (alone, missed)] {
                let told = told.replace(" in between", "");
                let parts: Vec<&str> = told.split(", ").filter(|part| !part.is_empty()).collect();
                holds(parts.len() == curves.len(), "so many")?;
                let mut each = parts.into_iter().zip(curves);
                each.try_for_each(|(part, curve)| shape_does(part, &curve.2))?;
            }
            Ok(())
        },
    },
    Claim {
        reads: r"An end is weak below 85 % of the peak; a fall to below 85 % of the weaker end between them makes a u",
        holds: is_definition,
    },
    Claim {
        reads: r"(Arrows?): the curve goes on(?:, for there the ((?:elbow|knee)(?: or (?:elbow|knee))?) limits, nearly straight, and a model bears any load on a straight limb| above the figure)",
        holds: arrows_told,
    },
    Claim {
        reads: r"Strength curves of (\d+) lifts side by side over the range of the lift",
        holds: |told, drawn| says(&told[1], drawn.curves.len() as f64, 0.0, "lifts"),
    },
    Claim {
        reads: r"(.+): (\S+), start (\d+) %, end (\d+) % of the peak, which lies at (\d+) % of the range(?:, and falls to (\d+) % of the weaker end at (\d+) % of the range)?",
        holds: class_told,
    },
    Claim {
        reads: r"Ascending(?: in this model \(published: \S+\))?: .+ starts? weak, with ([\d to]+) % of (?:its|their) median strength",
        holds: |told, drawn| span_is(&told[1], drawn, 0),
    },
    Claim {
        reads: r"Descending(?: in this model \(published: \S+\))?: .+ ends? weak, with ([\d to]+) % of (?:its|their) median strength",
        holds: |told, drawn| span_is(&told[1], drawn, 1),
    },
    Claim {
        reads: r"Bell-shaped(?: in this model \(published: \S+\))?: (the .+|\d+ lifts peak) at ([\d to]+) % of the range",
        holds: |told, drawn| {
            let places: Vec<f64> = lifts(drawn).map(|c| peak(&c.2)[0]).collect();
            if told[1].ends_with("lifts peak") {
                let [low, high] = [f64::min, f64::max].map(|of| places.iter().copied().reduce(of));
                let parts: Vec<&str> = told[2].split(" to ").collect();
                says(parts[0], low.unwrap_or(0.0), 1.0, "first")?;
                return says(parts[parts.len() - 1], high.unwrap_or(0.0), 1.0, "last");
            }
            let words = format!("{} at {}", &told[1], &told[2]);
            for part in words.replace(" %", "").split(", ") {
                let (name, place) = part.split_once(" at ").ok_or("no place")?;
                let name = name.trim_start_matches("the ").trim_end_matches(" peaks");
                says(place, peak(drawn.curve(name)?)[0], 1.0, name)?;
            }
            Ok(())
        },
    },
    Claim {
        reads: r"U-shaped(?: in this model \(published: \S+\))?: in (?:its valley|their valleys)(, where the model is less sure,)? .+ holds? ([\d to]+) % of (?:its|their) weaker end",
        holds: |told, drawn| {
            let doubted =
                lifts(drawn).any(|c| is_hollow_at(drawn, &c.1, valley_of_weaker_end(&c.2)[0]));
            holds(
                doubted == told.get(1).is_some(),
                "whether its place is sure",
            )?;
            let all = lifts(drawn);
            let shares: Vec<f64> = all.map(|c| valley_of_weaker_end(&c.2)[1]).collect();
            let [low, high] = [f64::min, f64::max].map(|of| shares.iter().copied().reduce(of));
            let parts: Vec<&str> = told[2].split(" to ").collect();
            says(parts[0], low.unwrap_or(0.0), 0.1, "least")?;
            says(parts[parts.len() - 1], high.unwrap_or(0.0), 0.1, "greatest")
        },
    },
    Claim {
        reads: r"In this model the (.+) sags to (\d+) % of its weaker end; published, it is (\S+)",
        holds: |told, drawn| {
            let lift = lifts(drawn).next().ok_or("no lift")?;
            holds(lift.1.eq_ignore_ascii_case(&told[1]), "the only lift")?;
            says(&told[2], valley_of_weaker_end(&lift.2)[1], 0.1, "valley")?;
            published_otherwise(&format!("{}: {}", &told[1], &told[3]), drawn)
        },
    },
    Claim {
        reads: r"In this model (\d+) lifts sag to ([\d to]+) % of their weaker end",
        holds: |told, drawn| {
            says(&told[1], lifts(drawn).count() as f64, 0.0, "lifts")?;
            let shares = lifts(drawn).map(|c| valley_of_weaker_end(&c.2)[1]);
            let shares: Vec<f64> = shares.collect();
            let [low, high] = [f64::min, f64::max].map(|of| shares.iter().copied().reduce(of));
            let parts: Vec<&str> = told[2].split(" to ").collect();
            says(parts[0], low.unwrap_or(0.0), 0.1, "least")?;
            says(parts[parts.len() - 1], high.unwrap_or(0.0), 0.1, "greatest")
        },
    },
    Claim {
        reads: r"On the rise the load's moment arm about the (.+) shrinks from ([\d.]+) to ([\d.]+) cm",
        holds: |told, drawn| {
            let lift = lifts(drawn).next().ok_or("no lift")?;
            let study = drawn.study(&lift.1)?;
            let last = study.capacity.held.len() - 1;
            let valley = valley_of_weaker_end(&lift.2)[0] * last as f64 / 100.0;
            let valley = valley.round() as usize;
            let row = study.capacity.held[valley].limiting;
            holds(study.joint(row) == &told[1], "what limits in the valley")?;
            let arms = [valley, last].map(|at| arm_cm(study, row, at));
            says(&told[2], arms[0], 0.0, "in the valley")?;
            says(&told[3], arms[1], 0.0, "at the end")?;
            holds(arms[1] < arms[0], "it shrinks")
        },
    },
    Claim {
        reads: r"Level: .+ keep at least 85 % of the peak at both ends",
        holds: |_, drawn| {
            holds(
                drawn
                    .curves
                    .iter()
                    .all(|c| ends(&c.2).iter().all(|e| *e > 84.9)),
                "both ends",
            )
        },
    },
    Claim {
        reads: r"The start is weak, below 85 % of the peak, and weaker than the end",
        holds: |_, drawn| {
            let weak = |[start, end]: [f64; 2]| start < 85.1 && start < end;
            holds(lifts(drawn).all(|c| weak(ends(&c.2))), "start below end")
        },
    },
    Claim {
        reads: r"The end is weak, below 85 % of the peak, and weaker than the start; on the way there a curve may rise before it falls",
        holds: |_, drawn| {
            let weak = |[start, end]: [f64; 2]| end < 85.1 && start > end;
            holds(lifts(drawn).all(|c| weak(ends(&c.2))), "start above end")
        },
    },
    Claim {
        reads: r"Strongest in between, with both ends below 85 % of the peak",
        holds: |_, drawn| {
            let inside = |c: &(String, String, Vec<[f64; 2]>)| ends(&c.2).iter().all(|e| *e < 85.1);
            holds(lifts(drawn).all(inside), "the peak lies inside")
        },
    },
    Claim {
        reads: r"Weakest in between: a fall and a rise, each by more than 15 %",
        holds: |_, drawn| {
            let deep = |c: &(String, String, Vec<[f64; 2]>)| valley_of_weaker_end(&c.2)[1] < 85.1;
            holds(lifts(drawn).all(deep), "the valley is deep")
        },
    },
    Claim {
        reads: r"A curve falls where muscles lose force or moment arm, .+",
        holds: is_definition,
    },
    Claim {
        reads: r"Over the longest stretch that one joint limits, what is held grows mostly because the load's moment arm about that joint shrinks: (.+) of the range",
        holds: |told, drawn| {
            told[1].split("; ").try_for_each(|part| {
                let words = compiled(r"(.+?), (.+?), (.+)");
                let words = words
                    .captures(part)
                    .ok_or_else(|| format!("no lift, joint and way: {part}"))?;
                lever_shrinks(drawn.study(&words[1])?, &words[2], &words[3])
            })
        },
    },
    Claim {
        reads: r"Of the same class and not drawn, because a curve turns back by more than a tenth or is less sure over more than a tenth of the range: (.+)",
        holds: |told, drawn| {
            let not_drawn = |name: &String| drawn.curve(name).is_err();
            holds(listed(&told[1]).iter().all(not_drawn), "they are not drawn")
        },
    },
    Claim {
        reads: r"The body weighs (\d+) N, (?:more than is held from (\d+) % to (\d+) % of the range; in the valley that is (\d+) N|less than the (\d+) N that are held in the valley)",
        holds: body_told,
    },
    Claim {
        reads: r"There (.+?); the load's moment arm about the (.+?) is ([\d.]+) cm in the valley and ([\d.]+) cm at the end(?:, on the other side of the joint from (\d+) % on)?(?:; from (\d+) % on the (.+) limits most)?",
        holds: |told, drawn| {
            let lift = lifts(drawn).next().ok_or("no lift")?;
            let study = drawn.study(&lift.1)?;
            let held = &study.capacity.held;
            let last = held.len() - 1;
            let valley = valley_of_weaker_end(&lift.2)[0] * last as f64 / 100.0;
            let valley = valley.round() as usize;
            let row = held[valley].limiting;
            gives_way(&told[1], study, valley)?;
            holds(
                study.joint(row) == &told[2],
                "what limits most in the valley",
            )?;
            says(&told[3], arm_cm(study, row, valley), 0.0, "in the valley")?;
            says(&told[4], arm_cm(study, row, last), 0.0, "at the end")?;
            // Which way the load turns the joint.
            let turns_up = |at: usize| {
                let joint = &FreeBody::of(study, None, at).joints[row];
                joint.by_flexors == (joint.load_nm > 0.0)
            };
            let from = |is_so: &dyn Fn(usize) -> bool| {
                let all = (valley..=last).rev().take_while(|at| is_so(*at));
                all.last().map(|at| 100.0 * at as f64 / last as f64)
            };
            let side = from(&|at| turns_up(at) != turns_up(valley));
            // A joint limits in several directions; the sentence is of the joint.
            let joint_at = |at: usize| study.joint(held[at].limiting);
            let end = joint_at(last);
            let other = from(&|at| end != joint_at(valley) && joint_at(at) == end);
            for (printed, place) in [(told.get(5), side), (told.get(6), other)] {
                match (printed, place) {
                    (Some(printed), Some(place)) => says(printed.as_str(), place, 0.0, "from")?,
                    (None, None) => {}
                    _ => return Err(format!("{printed:?} for {place:?}")),
                }
            }
            told.get(7).map_or(Ok(()), |joint| {
                holds(end == joint.as_str(), "what limits most at the end")
            })
        },
    },
    Claim {
        reads: r"What the muscles lift is least where .+",
        holds: is_definition,
    },
    Claim {
        reads: r"Before the peak the muscles mostly gain .+",
        holds: is_definition,
    },
    Claim {
        reads: r"The same muscles do not make the same load at every place of a lift",
        holds: is_definition,
    },
    Claim {
        reads: r"Published are three classes: where strength grows towards the end the curve is ascending, .+",
        holds: is_definition,
    },
    Claim {
        reads: r"Every curve is drawn in percent of its own median, so that only the shape counts",
        holds: is_definition,
    },
    Claim {
        reads: r"The model misses a published class: (.+)",
        holds: |told, drawn| published_otherwise(&told[1], drawn),
    },
    Claim {
        reads: r"[^:;]+, held still at every place of the range; published otherwise: (.+)",
        holds: |told, drawn| published_otherwise(&told[1], drawn),
    },
    Claim {
        reads: r"Neither end of the range is weak",
        holds: is_definition,
    },
    Claim {
        reads: r"Held still, a plain weight is hardest (.+)",
        holds: |told, drawn| {
            for part in listed(&told[1]) {
                let (place, name) = part.split_once(" of the ").ok_or("no lift")?;
                let at = hardest(drawn, name)?[0];
                holds(is_part(place, at)?, &format!("{part}: {at}"))?;
            }
            Ok(())
        },
    },
    Claim {
        reads: r"By the lift a weight held still is hardest (.+)",
        holds: |told, drawn| {
            let places = told[1].replace(" or ", ", ");
            let places: Vec<&str> = places.split(", ").collect();
            let mut lifts: Vec<&str> = drawn.curves.iter().map(|c| c.0.as_str()).collect();
            lifts.dedup();
            let mut found: Vec<&str> = Vec::new();
            for lift in lifts {
                let at = hardest(drawn, lift)?[0];
                let mut all = places.iter().copied();
                let own = all.find(|place| is_part(place, at).unwrap_or(false));
                found.push(own.ok_or_else(|| format!("{lift} is hardest at {at}"))?);
            }
            holds(
                places.iter().all(|place| found.contains(place)),
                "each is one",
            )
        },
    },
    Claim {
        reads: r"([^,.]+), hardest part shaded",
        holds: |told, drawn| is_them(&told[1], drawn),
    },
    Claim {
        reads: r"Capacity and the demand of a plain weight for (\d+) lifts",
        holds: |told, drawn| says(&told[1], drawn.curves.len() as f64 / 2.0, 0.0, "lifts"),
    },
    Claim {
        reads: r"(.+) \(\S+\), [\d.]+ kg: greatest effort (\d+) % at (\d+) % of the range, hardest part (\d+) % to (\d+) %",
        holds: |told, drawn| {
            let [at, most] = hardest(drawn, &told[1])?;
            says(&told[2], 100.0 * most, 0.1, "effort")?;
            says(&told[3], at, 1.0, "place")?;
            let efforts = efforts(drawn, &told[1])?;
            let inside: Vec<f64> = efforts
                .iter()
                .filter(|e| e[1] >= 0.95 * most)
                .map(|e| e[0])
                .collect();
            holds(
                inside.iter().any(|x| says(&told[4], *x, 1.0, "").is_ok())
                    && inside.iter().any(|x| says(&told[5], *x, 1.0, "").is_ok()),
                "both ends of the region are within 5 % of the greatest effort",
            )
        },
    },
    Claim {
        reads: r"The heaviest weight that can be held still all along is set by one place of the range",
        holds: is_definition,
    },
    Claim {
        reads: r"(.+): most held ([\d.]+)(?: kg)?(?:, lifted [\d.]+ kg)?",
        holds: |told, drawn| held_all_along(drawn, &told[1], &told[2]),
    },
    Claim {
        reads: r"The (.+) is lifted with ([\d.]+) kg, which its speed carries past the hardest place, where only ([\d.]+) kg can be held still",
        holds: |told, drawn| {
            held_all_along(drawn, &told[1], &told[3])?;
            holds(number(&told[2]) > 1.04 * number(&told[3]), "clearly more")
        },
    },
    Claim {
        reads: r"Everywhere else the same weight is lighter than the lifter is strong: .+",
        holds: |_, drawn| {
            let lifts: Vec<&str> = drawn.curves.iter().map(|c| c.0.as_str()).collect();
            for lift in lifts {
                holds(
                    efforts(drawn, lift)?.iter().all(|e| e[1] < 1.0),
                    "lighter everywhere",
                )?;
            }
            Ok(())
        },
    },
    Claim {
        reads: r"No \S+ lift is drawn: even without a weight the (.+) takes (more than )?(\d+) % of what this lifter has where it is hardest",
        holds: |told, drawn| {
            let mut names = drawn.curves.iter().map(|curve| &curve.0);
            let is_drawn = names.any(|name| name.eq_ignore_ascii_case(&told[1]));
            holds(!is_drawn, "it is not drawn")?;
            let effort = bare_effort(drawn, &told[1])?;
            match told.get(2) {
                Some(_) => holds(effort.is_none(), "no number is known"),
                None => says(
                    &told[3],
                    100.0 * effort.ok_or("no effort")?,
                    0.0,
                    "without a weight",
                ),
            }
        },
    },
];

/// Effort over the range of one panel.
fn efforts(drawn: &Drawn, lift: &str) -> Result<Vec<[f64; 2]>, String> {
    let of = |name: &str| {
        drawn
            .curves
            .iter()
            .find(|c| c.0.eq_ignore_ascii_case(lift) && c.1.split(',').next() == Some(name))
            .ok_or_else(|| format!("no {name} of {lift}"))
    };
    let (held, asked) = (of("capacity")?, of("weight")?);
    Ok(held
        .2
        .iter()
        .zip(&asked.2)
        .map(|(c, d)| [c[0], d[1] / c[1]])
        .collect())
}

/// The greatest effort of a lift without any weight, where it is a number.
fn bare_effort(drawn: &Drawn, lift: &str) -> Result<Option<f64>, String> {
    let library = Library::built_in();
    let mut lifters = library.names(Shelf::Lifters).into_iter();
    let own = lifters.find(|name| {
        let title = library.lifter(name).map(|lifter| lifter.title);
        title.is_ok_and(|title| title == drawn.who)
    });
    let lifter = own.ok_or_else(|| format!("no lifter is called {}", drawn.who))?;
    let movement = lift.replace(' ', "-");
    let bare = assemble(&library, &lifter, &movement, &[]).and_then(|model| {
        let question = Question::new(&movement, &model.movement, &model.lifter);
        study(&question, &[Setup::new("", Vec::new())])
    });
    let bare = bare.map_err(|fault| format!("{fault:?}"))?;
    let efforts = bare.setups[0].effort.iter().copied();
    Ok(efforts.reduce(f64::max).filter(|most| most.is_finite()))
}

/// The weight of which the hardest place takes all: the one that is drawn, over its greatest effort.
fn held_all_along(drawn: &Drawn, lift: &str, printed: &str) -> Result<(), String> {
    let reads = compiled(r"(.+) \(\S+\), ([\d.]+) kg: greatest effort .+");
    let told = super::sentences(&drawn.description);
    let told = told.iter().filter_map(|sentence| reads.captures(sentence));
    let own = told
        .filter(|words| words[1].eq_ignore_ascii_case(lift))
        .map(|words| number(&words[2]))
        .next();
    let kg = own.ok_or_else(|| format!("no weight of the {lift}"))?;
    let [_, most] = hardest(drawn, lift)?;
    let held = kg / most;
    says(printed, held, 0.02 * held, "held all along")
}

fn hardest(drawn: &Drawn, lift: &str) -> Result<[f64; 2], String> {
    Ok(peak(&efforts(drawn, lift)?))
}

/// Force of a curve at a place, from the nearest point.
fn at(points: &[[f64; 2]], x: f64) -> f64 {
    let near = |p: &&[f64; 2]| (p[0] - x).abs();
    points
        .iter()
        .min_by(|a, b| near(a).total_cmp(&near(b)))
        .map_or(f64::NAN, |p| p[1])
}

fn number(text: &str) -> f64 {
    text.parse().unwrap_or(f64::NAN)
}

/// Filaments, fibres and muscles.
const MUSCLES: &[Claim<Drawn>] = &[
    Claim {
        reads: r"Force needs the right overlap: greatest from ([\d.]+) to ([\d.]+) µm",
        holds: |told, drawn| {
            let corners = drawn.curve("corner")?;
            says(&told[1], corners[2][0], 0.0, "plateau")?;
            says(&told[2], corners[3][0], 0.0, "plateau")
        },
    },
    Claim {
        reads: r"Length-tension diagram of a \S+ sarcomere: no force at ([\d.]+) µm, (\d+) % at ([\d.]+) µm, full force from ([\d.]+) to ([\d.]+) µm, no force again at ([\d.]+) µm",
        holds: |told, drawn| {
            let corners = drawn.curve("corner")?;
            for (printed, index) in [(1, 0), (3, 1), (4, 2), (5, 3), (6, 4)] {
                says(&told[printed], corners[index][0], 0.0, "corner")?;
            }
            says(&told[2], corners[1][1], 0.0, "force")
        },
    },
    Claim {
        reads: r"Below it the sarcomere at four of these lengths, .+",
        holds: |_, drawn| {
            holds(
                ["A", "B", "C", "D"].iter().all(|s| drawn.curve(s).is_ok()),
                "four are drawn",
            )
        },
    },
    Claim {
        reads: r"Force comes from heads of the thick filament that hold a thin one",
        holds: is_definition,
    },
    Claim {
        reads: r"Stretched too far \(D\) no head finds a thin filament; .+",
        holds: is_definition,
    },
    Claim {
        reads: r"Where force ends on that side \(A\), and how much of it is left at B, are taken over from frog muscle",
        holds: is_definition,
    },
    Claim {
        reads: r"Human sarcomeres are strongest around ([\d.]+) µm, a frog's around ([\d.]+) µm",
        holds: |told, drawn| {
            says(&told[1], best_length(drawn, "human")?, 0.0, "human")?;
            says(&told[2], best_length(drawn, "frog")?, 0.0, "frog")
        },
    },
    Claim {
        reads: r"Of the ([\d.]+) µm between the two places longer thin filaments explain ([\d.]+) µm, Z disc and bare zone the rest",
        holds: |told, drawn| {
            let apart = best_length(drawn, "human")? - best_length(drawn, "frog")?;
            says(&told[1], apart, 1e-9, "difference")?;
            holds(number(&told[2]) < number(&told[1]), "a part of it")
        },
    },
    Claim {
        reads: r"The steep foot at the left is the frog's in both: no human one is known",
        holds: |_, drawn| {
            let foot = |name: &str| drawn.curve(name).map(|points| [points[0][0], points[1][1]]);
            holds(foot("human")? == foot("frog")?, "the same foot")
        },
    },
    Claim {
        reads: r"Two length-tension diagrams",
        holds: |_, drawn| holds(drawn.curves.len() == 2, "two"),
    },
    Claim {
        reads: r"(Frog|Human): plateau around ([\d.]+) µm, no overlap from ([\d.]+) µm on",
        holds: |told, drawn| {
            let points = drawn.curve(&told[1])?;
            let top: Vec<f64> = points
                .iter()
                .filter(|p| p[1] > 99.999)
                .map(|p| p[0])
                .collect();
            says(
                &told[2],
                (top[0] + top[top.len() - 1]) / 2.0,
                0.011,
                "plateau",
            )?;
            let end = points
                .iter()
                .rev()
                .find(|p| p[1] > 0.0)
                .map_or(0.0, |p| p[0]);
            holds(end <= number(&told[3]) + 0.01, "no overlap beyond")
        },
    },
    Claim {
        reads: r"The same law of overlap with other filament lengths: .+",
        holds: is_definition,
    },
    Claim {
        reads: r"Stretched beyond (\d+) % a muscle resists more than it pulls",
        holds: |told, drawn| crossing(&told[1], drawn),
    },
    Claim {
        reads: r"Force of a muscle over the length of its fibres",
        holds: is_definition,
    },
    Claim {
        reads: r"Active force is greatest near 100 % of the optimal length; (\d+) % of it is left at 60 %, (\d+) % at 140 %",
        holds: |told, drawn| {
            let active = drawn.curve("active")?;
            holds(
                (peak(active)[0] - 100.0).abs() <= 2.0,
                "greatest near 100 %",
            )?;
            says(&told[1], at(active, 60.0), 0.2, "at 60 %")?;
            says(&told[2], at(active, 140.0), 0.2, "at 140 %")
        },
    },
    Claim {
        reads: r"Passive force starts at 100 % and passes the active one at (\d+) %",
        holds: |told, drawn| {
            let passive = drawn.curve("passive")?;
            holds(
                at(passive, 99.0) < 0.5 && at(passive, 105.0) > 0.0,
                "starts at 100 %",
            )?;
            crossing(&told[1], drawn)
        },
    },
    Claim {
        reads: r"(.+) works from (\d+) to (\d+) % in the (.+)",
        holds: |told, drawn| {
            is_lift(&told[4], drawn)?;
            let [from, to] = shaded_lengths(&told[1], drawn)?;
            says(&told[2], from, 0.0, "shortest")?;
            says(&told[3], to, 0.0, "longest")
        },
    },
    Claim {
        reads: r"A muscle is strong near its optimal length and weak when it is short",
        holds: is_definition,
    },
    Claim {
        reads: r"When it is long, elastic structures take over",
        holds: is_definition,
    },
    Claim {
        reads: r"Which part of the curve a lift uses depends on the joint angles it passes",
        holds: is_definition,
    },
    Claim {
        reads: r"Speed costs force: at (\d+) % of top speed only (\d+) % is left",
        holds: |told, drawn| {
            says(
                &told[2],
                at(&voluntary(drawn)?, number(&told[1])),
                0.5,
                "left",
            )
        },
    },
    Claim {
        reads: r"Force over speed",
        holds: is_definition,
    },
    Claim {
        reads: r"Lengthening is at the left: an isolated fibre reaches (\d+) % of its isometric force, a voluntary effort (\d+) %",
        holds: |told, drawn| {
            says(
                &told[1],
                peak(drawn.curve("isolated fibre")?)[1],
                0.3,
                "isolated",
            )?;
            says(
                &told[2],
                peak(drawn.curve("voluntary effort")?)[1],
                0.3,
                "voluntary",
            )
        },
    },
    Claim {
        reads: r"Shortening is at the right: force falls steeply at first, to (\d+) % at (\d+) % of the fastest speed, and to nothing at 100 %",
        holds: |told, drawn| {
            let force = &voluntary(drawn)?;
            says(&told[1], at(force, number(&told[2])), 0.5, "left")?;
            holds(at(force, 100.0).abs() < 0.5, "nothing at the fastest")?;
            let fall = |a: f64, b: f64| at(force, a) - at(force, b);
            holds(fall(0.0, 20.0) > fall(20.0, 40.0), "steeply at first")
        },
    },
    Claim {
        reads: r"A lifter can lower more than can be held and hold more than can be lifted",
        holds: |_, drawn| {
            let force = &voluntary(drawn)?;
            holds(
                at(force, -10.0) > at(force, 0.0) && at(force, 0.0) > at(force, 10.0),
                "falls with speed",
            )
        },
    },
    Claim {
        reads: r"The faster a load moves up, the less force is left to move it",
        holds: |_, drawn| {
            let force = voluntary(drawn)?;
            let up: Vec<f64> = force.iter().filter(|p| p[0] >= 0.0).map(|p| p[1]).collect();
            holds(up.windows(2).all(|pair| pair[1] <= pair[0] + 1e-6), "falls")
        },
    },
    Claim {
        reads: r"At (\d+) deg/s the .+ keeps (\d+) % of its isometric peak",
        holds: |told, drawn| {
            speed_keeps(drawn, &format!("lifting at {} deg/s", &told[1]), &told[2])
        },
    },
    Claim {
        reads: r"Strength curves of the .+ over .+ at (four|three|two) speeds",
        holds: |told, drawn| {
            let count = ["two", "three", "four"]
                .iter()
                .position(|w| *w == &told[1])
                .map_or(0, |i| i + 2);
            holds(drawn.curves.len() == count, "so many")
        },
    },
    Claim {
        reads: r"(Lowering at .+|Held still): peak .+",
        holds: |told, drawn| {
            for part in told[0].split("; ") {
                let (name, rest) = part.split_once(": peak ").ok_or("no peak")?;
                let percent = rest.split(' ').next().unwrap_or_default();
                speed_keeps(drawn, name, percent)?;
            }
            Ok(())
        },
    },
    Claim {
        reads: r"The force-velocity curve of the fibres moves the whole strength curve: lowering lifts it a little, faster lifting presses it down",
        holds: |_, drawn| {
            let still = peak(drawn.curve("held still")?)[1];
            for name in drawn.names() {
                let own = peak(drawn.curve(name)?)[1];
                let is_so = match name {
                    n if n.starts_with("lowering") => own > still && own < 1.3 * still,
                    n if n.starts_with("lifting") => own < still,
                    _ => true,
                };
                holds(is_so, name)?;
            }
            Ok(())
        },
    },
    Claim {
        reads: r"Moment arms change with the angle: the (.+) reaches ([\d.]+) cm at (\d+ deg .+)",
        holds: |told, drawn| {
            let name = head(drawn, &told[1])?;
            let points = drawn.curve(&name)?;
            let most = peak(points)[1];
            says(&told[2], most, 0.0, "arm")?;
            let place = signed(&told[3]);
            let place = place.split(' ').next().unwrap_or_default();
            // A level top is reached at its beginning.
            let mut tops = points.iter().filter(|p| p[1] > most * (1.0 - 1e-6));
            let there = tops.any(|p| says(place, p[0], 0.0, "angle").is_ok());
            holds(there, &format!("it is greatest at {place}"))?;
            holds(
                drawn.curves.iter().all(|c| peak(&c.2)[1] <= most + 1e-9),
                "no arm is longer",
            )
        },
    },
    Claim {
        reads: r"Moment arms over .+, least to greatest: (.+)",
        holds: |told, drawn| {
            each(&told[1], drawn, |low, high, points| {
                says(low, least(points)[1], 0.01, "least")?;
                says(high, peak(points)[1], 0.01, "greatest")
            })
        },
    },
    Claim {
        reads: r"The same muscle force makes a greater moment where its line of pull runs farther from the joint",
        holds: is_definition,
    },
    Claim {
        reads: r"A moment arm also says how fast fibres shorten: a long one uses up their length sooner",
        holds: is_definition,
    },
    Claim {
        reads: r"Fibres run short: the (.+) goes down to (\d+) % of its optimal length",
        holds: |told, drawn| {
            let name = head(drawn, &told[1])?;
            let own = least(drawn.curve(&name)?)[1];
            says(&told[2], own, 0.1, "length")?;
            holds(
                drawn.curves.iter().all(|c| least(&c.2)[1] >= own - 1e-9),
                "no fibre is shorter",
            )
        },
    },
    Claim {
        reads: r"Fibre lengths in percent of the optimal length over .+, start to end: (.+)",
        holds: |told, drawn| {
            each(&told[1], drawn, |first, last, points| {
                says(first, points[0][1], 0.1, "start")?;
                says(last, points[points.len() - 1][1], 0.1, "end")
            })
        },
    },
    Claim {
        reads: r"A turn of one radian, 57 degrees, costs each muscle and its tendon together as much length as its moment arm is long",
        holds: is_definition,
    },
    Claim {
        reads: r"A fibre that ends short pulls less: it stands on the left, weak side of the length-tension curve",
        holds: |_, drawn| {
            holds(
                drawn.curves.iter().any(|c| c.2[c.2.len() - 1][1] < 85.0),
                "a fibre ends short",
            )
        },
    },
    Claim {
        reads: r"Force peaks (.+?), moment arm (.+?), their product (.+)",
        holds: |told, drawn| product(drawn, [&told[1], &told[2], &told[3]]),
    },
    Claim {
        reads: r"Three curves over .+: summed muscle force is greatest (.+?), the mean moment arm (.+?), their product, the moment, (.+)",
        holds: |told, drawn| product(drawn, [&told[1], &told[2], &told[3]]),
    },
    Claim {
        reads: r"Moment is force times moment arm, so it peaks between the places where each of them does, .+",
        holds: |_, drawn| {
            let x = |name: &str| drawn.curve(name).map(|c| peak(c)[0]);
            let (force, arm, torque) = (x("muscle force")?, x("moment arm")?, x("moment")?);
            holds(
                torque >= force.min(arm) && torque <= force.max(arm),
                "between",
            )
        },
    },
    Claim {
        reads: r"Moment is force times moment arm: its peak is where one gains as much as the other loses",
        holds: is_definition,
    },
];

fn product(drawn: &Drawn, places: [&str; 3]) -> Result<(), String> {
    for (name, place) in ["muscle force", "moment arm", "moment"].iter().zip(places) {
        let most = peak(drawn.curve(name)?);
        let printed = place
            .trim_start_matches("at ")
            .split(' ')
            .next()
            .unwrap_or_default();
        says(printed, most[0], 0.01, name)?;
    }
    Ok(())
}

/// The curve of a muscle, heads told or not.
fn head(drawn: &Drawn, name: &str) -> Result<String, String> {
    let is_own = |known: &&str| known.split(" (").next() == Some(name);
    drawn
        .names()
        .find(is_own)
        .map(str::to_owned)
        .ok_or_else(|| format!("no {name}"))
}

/// Holds two printed numbers against a curve.
type TwoNumbers = fn(&str, &str, &[[f64; 2]]) -> Result<(), String>;

/// "biceps 1.8 to 4.9 cm; brachialis 1.5 to 3 cm": a check for each.
fn each(text: &str, drawn: &Drawn, holds: TwoNumbers) -> Result<(), String> {
    for part in text.split("; ") {
        let words: Vec<&str> = part.split(' ').collect();
        let [name @ .., first, "to", last, _] = words.as_slice() else {
            return Err(format!("{part} names no two numbers"));
        };
        holds(first, last, drawn.curve(&head(drawn, &name.join(" "))?)?)?;
    }
    Ok(())
}

fn crossing(printed: &str, drawn: &Drawn) -> Result<(), String> {
    let (active, passive) = (drawn.curve("active")?, drawn.curve("passive")?);
    let surplus: Vec<[f64; 2]> = active
        .iter()
        .zip(passive)
        .map(|(a, p)| [a[0], p[1] - a[1]])
        .collect();
    let mut pieces = surplus.windows(2).filter(|pair| pair[0][0] >= 100.0);
    let piece = pieces.find(|pair| pair[1][1] > 0.0).ok_or("no crossing")?;
    let share = -piece[0][1] / (piece[1][1] - piece[0][1]);
    says(
        printed,
        piece[0][0] + share * (piece[1][0] - piece[0][0]),
        1e-6,
        "crossing",
    )
}

/// The middle of the plateau of a diagram.
fn best_length(drawn: &Drawn, name: &str) -> Result<f64, String> {
    let top = drawn
        .curve(name)?
        .iter()
        .filter(|p| p[1] > 99.999)
        .map(|p| p[0]);
    let top: Vec<f64> = top.collect();
    Ok(f64::midpoint(top[0], top[top.len() - 1]))
}

fn speed_keeps(drawn: &Drawn, name: &str, percent: &str) -> Result<(), String> {
    let still = peak(drawn.curve("held still")?)[1];
    says(
        percent,
        100.0 * peak(drawn.curve(name)?)[1] / still,
        0.05,
        name,
    )
}

/// Lifts of several joints, bands and chains, families.
const LOADS: &[Claim<Drawn>] = &[
    Claim {
        reads: r"[^:]+: (\S.*strength) counts? most (all the way|(?:(?:up|down) to|from) .+)",
        holds: limits_told,
    },
    Claim {
        reads: r"[^:]+: no joint's strength counts most for long",
        holds: |_, drawn| {
            let firsts = firsts(drawn);
            let mut runs = firsts.chunk_by(|a, b| a == b);
            holds(
                runs.all(|run| run.len() <= firsts.len() / 20 + 1),
                "none for long",
            )
        },
    },
    Claim {
        reads: r"In stretches shorter than a twentieth of the range: (.+)",
        holds: |told, drawn| nowhere_for_long(&told[1], drawn),
    },
    Claim {
        reads: r"Gain of the heaviest load of the .+ with 1 % more strength at each joint, over the .+",
        holds: is_definition,
    },
    Claim {
        reads: r"(The strength of .+ counts most, .+)",
        holds: |told, drawn| {
            let last = firsts(drawn).len() as f64 - 1.0;
            told[1].split("; ").try_for_each(|part| {
                let words = compiled(STRETCH).captures(part).ok_or("no stretch")?;
                let sample = |percent: &str| (number(percent) * last / 100.0).round() as usize;
                let (from, to) = (sample(&words[3]), sample(&words[4]));
                let joints = listed(&words[1]);
                for (joint, printed) in joints.iter().zip(listed(&words[2])) {
                    let points = &drawn.curve(joint)?[from..=to];
                    let mean =
                        points.iter().map(|point| point[1]).sum::<f64>() / points.len() as f64;
                    says(&printed, mean, 0.005, joint)?;
                }
                counts_most(drawn, &joints, from, to)
            })
        },
    },
    Claim {
        reads: r"A chain is as strong as its weakest link: .+",
        holds: |_, drawn| {
            let [alone, all] = alone(drawn)?;
            holds(alone == all && all > 0, "one joint alone everywhere")
        },
    },
    Claim {
        reads: r"Here no single joint is the weakest link: the joints share the limit, .+",
        holds: |_, drawn| {
            let [alone, all] = alone(drawn)?;
            holds(alone == 0 && all > 0, "joints share everywhere")
        },
    },
    Claim {
        reads: r"In a part of the range one joint alone is the weakest link; elsewhere joints share the limit, .+",
        holds: |_, drawn| {
            let [alone, all] = alone(drawn)?;
            holds(alone > 0 && alone < all, "one joint alone in a part")
        },
    },
    Claim {
        reads: r"A gain of more than 1 % is no mistake: the joint holds the body as well as the load, so the load alone gains more",
        holds: |_, drawn| {
            let mut gains = drawn.curves.iter().flat_map(|c| &c.2);
            holds(gains.any(|point| point[1] > 1.0), "a gain above one")
        },
    },
    Claim {
        reads: r"Over this lift no single joint is the weakest link for long",
        holds: |_, drawn| holds(alone(drawn)?[1] == 0, "no long stretch"),
    },
    Claim {
        reads: r"(A band loads|Chains load) the strong end: effort from 80 to 90 % of the way is (\d+) % instead of (\d+) %",
        holds: |told, drawn| {
            let hung = match &told[1] {
                "Chains load" => "with chains",
                _ => "with a band",
            };
            says(&told[2], end_effort(drawn, hung)?, 0.5, "hung")?;
            says(&told[3], end_effort(drawn, "plain weight")?, 0.5, "plain")?;
            holds(number(&told[2]) > number(&told[3]), "more there")
        },
    },
    Claim {
        reads: r"Effort from 80 to 90 % of the way is (\d+) % (with a band|with chains) and (\d+) % with plain weight",
        holds: |told, drawn| {
            says(&told[1], end_effort(drawn, &told[2])?, 0.5, "hung")?;
            says(&told[3], end_effort(drawn, "plain weight")?, 0.5, "plain")
        },
    },
    Claim {
        reads: r"A band pulls harder the farther it is stretched: .+",
        holds: |_, drawn| grows(drawn, "with a band"),
    },
    Claim {
        reads: r"The bar is lighter so that the hardest place is about as hard as with plain weight|The bar is as heavy: where the lift is hardest what hangs on it adds next to nothing",
        holds: |told, drawn| {
            let hung = ["with a band", "with chains"]
                .into_iter()
                .find(|name| drawn.curve(name).is_ok());
            let hung = hung.ok_or("nothing hangs")?;
            let most = |name: &str| Ok::<f64, String>(peak(&effort(drawn, name)?)[1]);
            holds(
                (most(hung)? / most("plain weight")? - 1.0).abs() < 0.03,
                "about as hard",
            )?;
            // A bar's weight is the least of what is asked for, or less.
            let [under, plain] = [
                least(drawn.curve(hung)?)[1],
                least(drawn.curve("plain weight")?)[1],
            ];
            match told[0].starts_with("The bar is as heavy") {
                true => holds((under / plain - 1.0).abs() < 0.02, "as heavy"),
                false => Ok(()),
            }
        },
    },
    Claim {
        reads: r"A chain weighs more with every link that leaves the floor: .+",
        holds: |_, drawn| grows(drawn, "with chains"),
    },
    Claim {
        reads: r"Effort is demand over capacity",
        holds: is_definition,
    },
    Claim {
        reads: r"The hardest part, held still, lies around its greatest value|It says nothing about the rest of the range, where the same load is lighter",
        holds: is_definition,
    },
    Claim {
        reads: r"A sticking region is another thing: .+",
        holds: is_definition,
    },
    Claim {
        // Held to the simulation by `law_motion_is_told_as_it_is_simulated`.
        reads: r"Of (\d+) measured lifters (\d+) had one at their maximum(?:, as this simulated one has|; this simulated one has none, which the model misses|; this simulated one has one|, and neither has this simulated one)",
        holds: |told, _| holds(number(&told[2]) <= number(&told[1]), "a part of them"),
    },
    Claim {
        reads: r"Effort over the .+ for four loads of equal hardest place",
        holds: |_, drawn| {
            let tops: Vec<f64> = drawn.curves.iter().map(|c| peak(&c.2)[1]).collect();
            holds(
                tops.len() == 4 && tops.iter().all(|t| (t / tops[0] - 1.0).abs() < 0.02),
                "equally hard",
            )
        },
    },
    Claim {
        reads: r"Flattening against plain weight: (.+)",
        holds: |told, drawn| {
            let spread = |name: &str| drawn.curve(name).map(spread);
            for part in listed(&told[1].replace(" %", "")) {
                let (what, percent) = part.split_once(' ').ok_or("no number")?;
                let name = match what {
                    "band" => "with a band".to_owned(),
                    other => format!("with {other}"),
                };
                says(
                    percent,
                    100.0 * (1.0 - spread(&name)? / spread("plain weight")?),
                    0.6,
                    what,
                )?;
            }
            Ok(())
        },
    },
    Claim {
        reads: r"The flatter the line, the more of the range asks for about as much as the hardest place",
        holds: is_definition,
    },
    Claim {
        reads: r"How much is gained depends on the lift and on the share of the load that bands and chains take",
        holds: is_definition,
    },
];

/// A stretch of the description.
const STRETCH: &str = r"[Tt]he strength of (.+) counts most, with ([\d., and]+) % in the mean, from (\d+) % to (\d+) % of the range";

/// Stretches of the description in which the strength of one joint alone gains something, and all of its stretches; the
/// description itself is held against the curves.
fn alone(drawn: &Drawn) -> Result<[usize; 2], String> {
    let last = (drawn.curves[0].2.len() - 1) as f64;
    let sample = |percent: &str| (number(percent) * last / 100.0).round() as usize;
    let (mut alone, mut all) = (0, 0);
    for told in anywhere(STRETCH).captures_iter(&drawn.description.replace("; ", ";\n")) {
        let (from, to) = (sample(&told[3]), sample(&told[4]));
        let sum = |points: &[[f64; 2]]| points[from..=to].iter().map(|p| p[1]).sum::<f64>();
        let gains: Vec<f64> = drawn.curves.iter().map(|c| sum(&c.2)).collect();
        let most = gains.iter().copied().fold(0.0, f64::max);
        all += 1;
        alone += usize::from(most >= 0.98 * gains.iter().sum::<f64>());
    }
    Ok([alone, all])
}

#[test]
fn fault_a_weakest_link_that_is_none_is_found() {
    let gains = |name: &str, gain: fn(usize) -> f64| {
        let points = (0..=10).map(|at| [10.0 * at as f64, gain(at)]);
        (String::new(), name.to_owned(), points.collect())
    };
    let figure = |shared: bool| {
        Drawn {
        curves: vec![
            gains("hip", |at| if at <= 5 { 0.99 } else { 0.2 }),
            match shared {
                true => gains("knee", |at| if at <= 5 { 0.5 } else { 0.8 }),
                false => gains("knee", |at| if at <= 5 { 0.0 } else { 0.8 }),
            },
        ],
        description: "Gain of the heaviest load. The strength of hip counts most, with 0.99 % in the mean, from 0 % to 50 % of the \
                      range; the strength of knee counts most, with 0.8 % in the mean, from 60 % to 100 % of the range."
            .to_owned(),
        ..Drawn::default()
    }
    };
    assert_eq!(alone(&figure(false)), Ok([1, 2]));
    assert_eq!(alone(&figure(true)), Ok([0, 2]));
    let told = |begin: &str, shared: bool| {
        let text = format!(
            "{begin}, and more strength of each of them helps by as much as its line says."
        );
        check(&text, LOADS, &figure(shared)).is_ok()
    };
    let part = "In a part of the range one joint alone is the weakest link; elsewhere joints share the limit";
    let nowhere = "Here no single joint is the weakest link: the joints share the limit";
    assert!(told(part, false) && told(nowhere, true));
    assert!(!told(part, true) && !told(nowhere, false));
    for (text, is_shared) in [
        (
            "A chain is as strong as its weakest link: more strength of one joint alone helps.",
            false,
        ),
        (
            "Over this lift no single joint is the weakest link for long.",
            true,
        ),
    ] {
        assert!(check(text, LOADS, &figure(is_shared)).is_err(), "{text}");
        let empty = Drawn {
            description: String::new(),
            ..figure(is_shared)
        };
        let is_right = check(text, LOADS, &empty).is_ok();
        assert_eq!(is_right, text.starts_with("Over"), "{text}");
    }
}

/// The joint whose line is the highest, at every sample.
pub fn firsts(drawn: &Drawn) -> Vec<&str> {
    let value = |curve: &&(String, String, Vec<[f64; 2]>), at: usize| curve.2[at][1];
    let first = |at: usize| {
        let curves = drawn.curves.iter();
        let most = curves.max_by(|a, b| value(a, at).total_cmp(&value(b, at)));
        most.map_or("", |curve| curve.1.as_str())
    };
    (0..drawn.curves[0].2.len()).map(first).collect()
}

/// The strength of these joints gains most between two samples, the others' less; stretches of another joint that are
/// shorter than a twentieth of the range are not told.
fn counts_most(drawn: &Drawn, joints: &[String], from: usize, to: usize) -> Result<(), String> {
    let firsts = firsts(drawn);
    let others = firsts[from..=to]
        .iter()
        .filter(|first| **first != joints[0]);
    holds(others.count() <= firsts.len() / 20 + 1, &joints[0])?;
    let mean = |name: &str| {
        let points = &drawn.curve(name)?[from..=to];
        Ok::<f64, String>(points.iter().map(|point| point[1]).sum())
    };
    let most = mean(&joints[0])?;
    drawn.names().try_for_each(|name| {
        let share = mean(name)? / most;
        match joints.iter().any(|joint| joint == name) {
            true => holds(
                share > 0.78,
                &format!("{name} counts nearly as much: {share}"),
            ),
            false => holds(share < 0.82, &format!("{name} counts less: {share}")),
        }
    })
}

/// "hip and knee strength count most up to 17 cm, back strength beyond".
fn limits_told(told: &Captures<'_>, drawn: &Drawn) -> Result<(), String> {
    let points = &drawn.curves[0].2;
    let last = points.len() - 1;
    let near = |place: f64| {
        let off = |at: &usize| (points[*at][0] - place).abs();
        let nearest = (0..=last).min_by(|a, b| off(a).total_cmp(&off(b)));
        nearest.unwrap_or(0)
    };
    let first = |words: &str| listed(words.trim_end_matches(" strength"));
    if &told[2] == "all the way" {
        return counts_most(drawn, &first(&told[1]), 0, last);
    }
    let mut joints = first(&told[1]);
    let slack = last / 50;
    let (mut from, rest) = match told[2].strip_prefix("from ") {
        None => (0, told[2].to_owned()),
        Some(words) => {
            let (begins, rest) = words.split_once(' ').ok_or("no place")?;
            let begins = near(number(begins));
            holds(
                begins > 0 && begins <= last / 20 + slack,
                "it begins behind the start",
            )?;
            holds(
                firsts(drawn)[0] != joints[0],
                "another one counts most at the start",
            )?;
            let is_on = rest.split(' ').nth(1) == Some("on");
            (
                begins,
                if is_on {
                    "beyond".to_owned()
                } else {
                    rest.to_owned()
                },
            )
        }
    };
    let rest = rest.replace("up to ", "to ").replace("down to ", "to ");
    for part in format!("it strength {rest}").split(", ") {
        let (who, place) = part.split_once(" strength ").ok_or("no strength")?;
        if who != "it" {
            joints = listed(who);
        }
        let place = place
            .trim_start_matches("to ")
            .split(' ')
            .next()
            .unwrap_or("");
        let to = if place == "beyond" {
            let firsts = firsts(drawn);
            holds(firsts[last] == joints[0], "it counts most at the end")?;
            last
        } else {
            near(number(place))
        };
        counts_most(drawn, &joints, from, to.saturating_sub(slack).max(from))?;
        from = (to + slack).min(last);
    }
    // What is left is shorter than a twentieth of the range.
    holds(last - from <= last / 20, "the whole range is told")
}

fn grows(drawn: &Drawn, name: &str) -> Result<(), String> {
    let points = drawn.curve(name)?;
    holds(
        points
            .windows(2)
            .all(|pair| pair[1][1] >= pair[0][1] - 1e-6),
        "grows with height",
    )
}

/// Mean effort from 80 to 90 % of the way, %.
fn end_effort(drawn: &Drawn, name: &str) -> Result<f64, String> {
    let (held, asked) = (drawn.curve("capacity")?, drawn.curve(name)?);
    let last = (held.len() - 1) as f64;
    let part: Vec<f64> = (0..held.len())
        .filter(|index| (0.795..=0.905).contains(&(*index as f64 / last)))
        .map(|index| 100.0 * asked[index][1] / held[index][1])
        .collect();
    Ok(part.iter().sum::<f64>() / part.len() as f64)
}

/// The curves of a figure of one strength curve.
fn strength(drawn: &Drawn, lift: &str) -> Option<Curves> {
    let held = drawn.samples("capacity").ok()?;
    Some(Curves {
        lift: lift.to_owned(),
        // Speeds have figures of their own in the lecture.
        still: true,
        sides: drawn.own_study().ok().map(Sides::of),
        at: held.iter().map(|p| p[0]).collect(),
        capacity: held.iter().map(|p| p[1]).collect(),
        crest: drawn.crest("capacity"),
        loads: drawn
            .curves
            .iter()
            .filter(|c| !c.1.to_lowercase().starts_with("capacity"))
            .filter(|c| !c.1.to_lowercase().starts_with("effort: "))
            .map(|c| {
                // A band aslant asks for more than its share of the capacity upward: such a figure draws the effort.
                let effort = match drawn.curve(&format!("effort: {}", c.1.to_lowercase())) {
                    Ok(effort) => effort.iter().map(|p| p[1] / 100.0).collect(),
                    Err(_) => c.2.iter().zip(&held).map(|(d, c)| d[1] / c[1]).collect(),
                };
                (c.1.clone(), effort)
            })
            .collect(),
    })
}

/// The curves that are greatest between two of their samples.
fn crests(sheet: &Sheet) -> Vec<(String, [f64; 2])> {
    let Chart::Lines(chart) = &sheet.chart else {
        return Vec::new();
    };
    let series = chart.panels.iter().flat_map(|panel| &panel.series);
    let crests = series.filter_map(|series| Some((series.name.clone(), series.crest?)));
    crests.collect()
}

/// A crest is what the lift holds there, more than a little beside it, and no higher than the lines beside it promise.
fn crest_holds(drawn: &Drawn, desk: &Desk<'_>) -> Result<(), String> {
    let Some([x, most]) = drawn.crest("capacity") else {
        return Ok(());
    };
    let samples = drawn.samples("capacity")?;
    let last = samples.len() - 1;
    let mut pieces = 0..last;
    let piece = pieces.find(|at| (samples[*at][0] - x) * (samples[at + 1][0] - x) <= 0.0);
    let piece = piece.ok_or("a crest outside the range")?;
    let values: Vec<f64> = samples.iter().map(|point| point[1]).collect();
    let above = values.iter().all(|value| *value < most);
    holds(above, "more than every sample")?;
    let line = promised(&values, piece);
    holds(most <= line * (1.0 + 2e-3), &format!("{most} of {line}"))?;
    let part = (x - samples[piece][0]) / (samples[piece + 1][0] - samples[piece][0]);
    let question = desk
        .question(&drawn.movement)
        .map_err(|e| format!("{e:?}"))?;
    let held = |off: f64| {
        let share = (piece as f64 + part + off) / last as f64;
        let worked = worked_pose(&question, None, AskedPlace::Share(share.clamp(0.0, 1.0)));
        worked
            .map(|pose| pose.capacity)
            .map_err(|e| format!("{e:?}"))
    };
    let there = held(0.0)?;
    holds(
        (there / most - 1.0).abs() < 1e-4,
        &format!("{most}: worked anew {there}"),
    )?;
    for off in [-0.05, 0.05] {
        let beside = held(off)?;
        holds(
            beside <= there * (1.0 + 1e-6),
            &format!("{beside} beside {there}"),
        )?;
    }
    Ok(())
}

/// What a figure writes of a curve that leaves it is the greatest value of one of its curves.
fn continuation_holds(sheet: &Sheet, drawn: &Drawn) -> Result<(), String> {
    let Chart::Lines(chart) = &sheet.chart else {
        return Ok(());
    };
    let leaves = chart.panels.iter().any(|panel| match panel.axis.extent {
        Extent::FromZeroTo(top) => panel.series.iter().any(|s| peak(&s.points)[1] > top),
        _ => false,
    });
    if !leaves {
        return Ok(());
    }
    let scene = chart.scene(Look::default()).map_err(|e| format!("{e:?}"))?;
    let words: Vec<String> = text_boxes(&scene).into_iter().map(|t| t.content).collect();
    let words = words.join(" ");
    let told = anywhere(r"continues to ([\d\u{2009}]+) (?:N|N·m|%)(?: |$)");
    for told in told.captures_iter(&words) {
        let most = |name: &str, points: &[[f64; 2]]| {
            let crest = drawn
                .crest(name)
                .map_or(f64::NEG_INFINITY, |crest| crest[1]);
            peak(points)[1].max(crest)
        };
        let mut tops = drawn.curves.iter().map(|c| most(&c.1, &c.2));
        let printed = told[1].replace('\u{2009}', "");
        let is_one = tops.any(|top| says(&printed, top, 0.0, "continues to").is_ok());
        holds(is_one, &format!("no curve is greatest with {}", &told[1]))?;
    }
    Ok(())
}

/// The lift that a figure is of.
fn movement_of(figure: &LectureFigure, desk: &Desk<'_>, lift: &str) -> String {
    let only = match figure.needs {
        [only] => Some((*only).to_owned()),
        _ => None,
    };
    let told = match lift {
        "bent-over row" => "row".to_owned(),
        other => other.to_lowercase().replace(' ', "-"),
    };
    desk.about.clone().or(only).unwrap_or(told)
}

/// A figure of the lecture with all that its words are held against.
struct Read {
    sheet: Sheet,
    drawn: Drawn,
    curves: Option<Curves>,
    /// The lift of a family of curves.
    family_of: Option<&'static str>,
}

impl Read {
    fn of(figure: &LectureFigure, desk: &Desk<'_>, lift: &str) -> Self {
        let family_of = match figure.name {
            "grip-width" => Some("Bench press"),
            "limb-length" => Some("Squat"),
            _ => None,
        };
        let sheet = (figure.build)(desk).expect("it is drawn");
        let mut drawn = Drawn::of(&sheet.data);
        sheet.alt().clone_into(&mut drawn.description);
        drawn.hollow = hollow_curves(&sheet);
        drawn.crests = crests(&sheet);
        if let Chart::Lines(chart) = &sheet.chart {
            drawn.pale = chart
                .panels
                .iter()
                .flat_map(|panel| panel.pale.clone())
                .collect();
            drawn.time = chart.x.time;
            let shades = chart.shades.iter();
            drawn.shades = shades
                .map(|shade| (shade.label.clone(), [shade.from, shade.to]))
                .collect();
            let fills = chart.panels.iter().flat_map(|panel| &panel.fills);
            drawn.fills = fills
                .map(|fill| [fill.upper.clone(), fill.lower.clone()])
                .collect();
        }
        desk.who().clone_into(&mut drawn.who);
        drawn.movement = movement_of(figure, desk, lift);
        drawn.setups.clone_from(&sheet.setups);
        if figure.name == "free-body" {
            let hard = desk.hard(&drawn.movement, Vec::new());
            drawn.setups = hard.into_iter().collect();
        }
        let is_of_many = figure.name.ends_with("-lifts");
        let all = desk.lifts().iter().map(|lift| &lift.study);
        let own = all.filter(|study| is_of_many || study.movement_name == drawn.movement);
        drawn.studies = own.cloned().collect();
        let curves = strength(&drawn, lift);
        Self {
            sheet,
            drawn,
            curves,
            family_of,
        }
    }

    /// Title, caption, alternative text and what stands below the title.
    fn texts(&self) -> Vec<String> {
        let sheet = &self.sheet;
        let around = [sheet.title(), &sheet.caption, sheet.alt()].map(str::to_owned);
        around.into_iter().chain(below_title(sheet)).collect()
    }

    /// Whether one of the lists of claims bears a sentence out.
    fn bears_out(&self, sentence: &str) -> Result<(), String> {
        let Self { sheet, drawn, .. } = self;
        let mut told = vec![
            check(sentence, CLASSES, drawn),
            check(sentence, DOUBTS, drawn),
            check(sentence, MUSCLES, drawn),
            check(sentence, FIBRES_BELOW, drawn),
            check(sentence, LOADS, drawn),
            check(sentence, LOADS_BELOW, drawn),
            check(sentence, STACK, drawn),
            check(sentence, CURVES, drawn),
            check(sentence, MOTION, drawn),
            check(sentence, PEOPLE, drawn),
            check(sentence, SESSIONS, drawn),
            check(sentence, BODIES, &sheet.data),
            check(sentence, LIMITS, &sheet.data),
            check(sentence, BELOW, drawn),
            check(sentence, BELOW_TABLES, &sheet.data),
            check(sentence, AROUND, drawn),
        ];
        if let Some(lift) = self.family_of {
            told.push(check(sentence, FAMILIES, drawn));
            told.push(as_it_is(sentence, drawn, lift));
        }
        let of_curves = self.curves.as_ref();
        told.extend(of_curves.map(|curves| check(sentence, CLAIMS, curves)));
        if told.iter().any(Result::is_ok) {
            return Ok(());
        }
        let known = told.into_iter().filter_map(Result::err);
        let fault = known.max_by_key(|fault| !fault.starts_with("nobody"));
        Err(fault.unwrap_or_default())
    }
}

/// What no list of claims bears out of the words around a figure.
fn faults_of(figure: &LectureFigure, desk: &Desk<'_>, lift: &str) -> Vec<String> {
    let read = Read::of(figure, desk, lift);
    let drawn_so = [
        is_told(&read.sheet),
        crest_holds(&read.drawn, desk),
        continuation_holds(&read.sheet, &read.drawn),
    ];
    let not_so = drawn_so.into_iter().filter_map(Result::err);
    let texts = read.texts();
    let sentences = texts.iter().flat_map(|text| super::sentences(text));
    let untrue = sentences.filter_map(|sentence| read.bears_out(&sentence).err());
    not_so
        .chain(untrue)
        .map(|fault| format!("{}, {lift}: {fault}", figure.name))
        .collect()
}

/// The lift of a figure of the whole lecture, as words name it.
fn lift_of(figure: &LectureFigure) -> &'static str {
    match figure.name {
        "band-over-descending" => "bent-over row",
        "cam" => "leg curl",
        "sticking-in-motion" => "overhead press",
        _ => "bench press",
    }
}

/// Figures of fibres, laws, motion, log and sessions: the claims of what stands below their titles are all told apart from wrong
/// numbers.
const TOLD_BELOW: [&str; 12] = [
    "sarcomere-overlap",
    "sarcomere-species",
    "active-passive-total",
    "force-velocity",
    "curve-at-speed",
    "track-on-lengths",
    "sticking-in-motion",
    "band-law",
    "chain-law",
    "plateau",
    "clusters",
    "pyramid",
];

#[test]
fn fault_a_changed_number_below_a_title_is_found() {
    let library = Library::built_in();
    let desk = Desk::open(&library, "reference-man", System::Metric).expect("a lifter");
    let mut faults = Vec::new();
    let mut changed = 0;
    for name in TOLD_BELOW {
        let mut all = LECTURE.iter();
        let figure = all.find(|figure| figure.name == name).expect(name);
        let read = Read::of(figure, &desk, lift_of(figure));
        for sentence in below_title(&read.sheet)
            .iter()
            .flat_map(|text| super::sentences(text))
        {
            if let Err(fault) = read.bears_out(&sentence) {
                faults.push(format!("{name}: {fault}"));
            }
            for wrong in with_changed_numbers(&sentence) {
                changed += 1;
                if read.bears_out(&wrong).is_ok() {
                    faults.push(format!("{name}: nobody finds `{wrong}`"));
                }
            }
        }
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
    assert!(changed > 25, "{changed} numbers");
}

/// Who limits at the hardest place is told by the gains of the figure of limits: one joint gives way, or several share the limit.
#[test]
fn law_who_limits_is_told_by_one_rule() {
    let library = Library::built_in();
    let (mut alone, mut shared) = (0, 0);
    for lifter in library.names(Shelf::Lifters) {
        let mut desk = Desk::open(&library, &lifter, System::Metric).expect("a built-in lifter");
        for lift in ["bench-press", "squat", "row", "knee-extension"] {
            desk.about = Some(lift.to_owned());
            let mut figures = ONE_LIFT.iter().filter(|f| f.name == "sticking-region");
            let figure = figures.next().expect("the figure of the hardest part");
            let sheet = (figure.build)(&desk).expect("a hardest part");
            let Chart::Lines(chart) = &sheet.chart else {
                panic!("{lift}: no curves");
            };
            let marker = &chart.panels[0].markers[0];
            let (_, told) = marker.detail.rsplit_once("; ").expect("who limits");
            let setup = desk.hard(lift, Vec::new()).expect("a weight");
            let study = desk.under(lift, &[setup]).expect("a lift");
            let hardest = study.setups[0].sticking.expect("a hardest place");
            let last = (study.range.poses.len() - 1) as f64;
            let sample = (hardest.point_range * last).round() as usize;
            gives_way(told, &study, sample).unwrap_or_else(|fault| panic!("{lifter}: {fault}"));
            match told.contains("share") {
                true => shared += 1,
                false => alone += 1,
            }
        }
    }
    assert!(alone > 0 && shared > 0, "{alone} alone, {shared} shared");
}

/// What is said of motion is what a repetition at the maximum does, and how measured lifters are set beside it.
#[test]
fn law_motion_is_told_as_it_is_simulated() {
    let library = Library::built_in();
    let (mut without, mut with) = (0, 0);
    for lifter in library.names(Shelf::Lifters) {
        let mut desk = Desk::open(&library, &lifter, System::Metric).expect("a built-in lifter");
        for lift in ["bench-press", "overhead-press", "squat", "deadlift", "row"] {
            desk.about = Some(lift.to_owned());
            let mut figures = ONE_LIFT.iter().filter(|f| f.name == "sticking-region");
            let figure = figures.next().expect("the figure of the hardest part");
            if !desk.has(lift) || !figure.can_be_drawn(&desk) {
                continue;
            }
            let question = desk.question(lift).expect("a lift of the desk");
            let whole = Heaviness::Share(1.0);
            let options = RepOptions::usual_for(question.movement);
            let Ok(rep) = repetition(&question, &Setup::default(), whole, &options) else {
                continue;
            };
            if !rep.trace.is_lifted() {
                continue;
            }
            let sheet = (figure.build)(&desk).expect("it is drawn");
            let words = &sheet.chart.heading().subtitle;
            let is_none = rep.trace.sticking.is_none();
            *(if is_none { &mut without } else { &mut with }) += 1;
            let says_none = words.contains("has no sticking region")
                || words.contains("too slight for a sticking region");
            assert_eq!(is_none, says_none, "{lifter}, {lift}: {words}");
            let load = format!("lifted, {} (the maximum)", System::Metric.mass(rep.load));
            assert!(words.contains(&load), "{lifter}, {lift}: {load} in {words}");
            let measured = library.measured_sticking(lift).expect("a sound file");
            let told = sheet.caption.contains("measured lifters");
            assert_eq!(
                told,
                measured.is_some(),
                "{lifter}, {lift}: {}",
                sheet.caption
            );
            let Some(measured) = measured else { continue };
            let ours = match (is_none, 2 * measured.with_region > measured.lifters) {
                (false, true) => ", as this simulated one has",
                (true, true) => "; this simulated one has none, which the model misses",
                (false, false) => "; this simulated one has one",
                (true, false) => ", and neither has this simulated one",
            };
            let whole = format!(
                "Of {} measured lifters {} had one at their maximum{ours}.",
                measured.lifters, measured.with_region
            );
            assert!(
                sheet.caption.contains(&whole),
                "{lifter}, {lift}: {}",
                sheet.caption
            );
        }
    }
    assert!(without > 2 && with > 0, "{without} without, {with} with");
}

#[test]
fn law_every_sentence_of_the_lecture_follows_from_its_data() {
    let library = Library::built_in();
    let mut faults = Vec::new();
    for lifter in library.names(Shelf::Lifters) {
        let desk = Desk::open(&library, &lifter, System::Metric).expect("a built-in lifter");
        for figure in LECTURE.iter().filter(|figure| figure.can_be_drawn(&desk)) {
            let found = faults_of(figure, &desk, lift_of(figure)).into_iter();
            faults.extend(found.map(|fault| format!("{lifter}: {fault}")));
        }
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

#[test]
fn law_every_sentence_of_a_lecture_on_one_lift_follows_from_its_data() {
    let library = Library::built_in();
    let about = |lift: &&str| {
        let desk = Desk::open(&library, "reference-man", System::Metric).expect("a lifter");
        let desk = desk.about(lift).expect("a shipped lift");
        let title = desk
            .lift(lift)
            .expect("it is done")
            .study
            .movement_title
            .clone();
        let drawn = ONE_LIFT.iter().filter(|figure| figure.can_be_drawn(&desk));
        drawn
            .map(|figure| faults_of(figure, &desk, &title))
            .collect::<Vec<_>>()
    };
    let told: Vec<Vec<String>> = LIFTS.par_iter().flat_map(about).collect();
    assert!(told.len() > 14 * 6, "{} figures", told.len());
    let faults = told.concat();
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}
