//! Reasons that are true: parts of every change add up, and every printed reason is held against the poses themselves.

use crate::calling::{Answer, call_on};
use crate::lift_by_another_name::LIFTS;
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use rayon::prelude::{IntoParallelIterator, ParallelIterator};
use torquill::anatomy::Joint;
use torquill::capacity::{Account, ForceFactor, plain_direction};
use torquill::error::Error;
use torquill::library::{Library, NumberAt, Workbench, numeric_paths};
use torquill::movement::{Carrier, Measure};
use torquill::narrative::muscle_names::head_name;
use torquill::narrative::variation_words::heaviest_line;
use torquill::narrative::why_lines;
use torquill::study::between_samples::promised;
use torquill::study::{Cause, Conditions, Family, Parameter, Study, family};
use torquill::units::{System, rounded};

/// Parameters tried of every lift.
const TRIED: usize = 60;
/// Samples of the range: ends, a middle, and a peak between them.
const SAMPLES: usize = 11;

/// A random setting of a value: by up to 12 % of itself, or by a little where it is nothing.
fn changed(number: &NumberAt, rng: &mut ChaCha8Rng) -> String {
    let by: f64 = rng.random_range(-0.12..0.12);
    let value = match (number.value == 0.0, number.unit) {
        (false, _) => return format!("{:+.4}%", 100.0 * by),
        (true, "rad" | "m") => 0.2 * by,
        (true, _) => by,
    };
    format!("{value:.5} {}", number.unit).trim_end().to_owned()
}

/// A lifter of random size and strength.
fn random_lifter(rng: &mut ChaCha8Rng) -> (&'static str, Vec<String>) {
    let names = [
        "reference-man",
        "reference-woman",
        "heavy-lifter",
        "tall-novice",
    ];
    let set = |path: &str, percent: f64| format!("lifter.{path}={percent:+.3}%");
    let sets = vec![
        set("height", rng.random_range(-6.0..6.0)),
        set("body_mass", rng.random_range(-15.0..15.0)),
        set("strength_scale", rng.random_range(-20.0..40.0)),
    ];
    (names[rng.random_range(0..names.len())], sets)
}

/// Families of one lift: random parameters, lifters, and for some a speed; those that cannot be done left out.
pub(crate) fn families(lift: &str, seed: u64) -> Vec<Family> {
    families_of(lift, seed, TRIED, SAMPLES)
}

/// As many samples as a user has: between them a curve bends so little that lines tell where it may go.
pub(crate) const USUAL_SAMPLES: usize = 101;
/// Parameters tried of every lift where so many samples are.
pub(crate) const TRIED_IN_FULL: usize = 12;

/// The same with so many parameters, a multiple of four, and so many samples.
pub(crate) fn families_of(lift: &str, seed: u64, tried: usize, samples: usize) -> Vec<Family> {
    let mut rng = ChaCha8Rng::seed_from_u64(seed);
    let library = Library::built_in();
    let mut cases = Vec::new();
    for _ in 0..4 {
        let (name, sets) = random_lifter(&mut rng);
        let bench = Workbench::open(&library, name, lift).expect("a shipped lift");
        let numbers = numeric_paths(&bench.model(&sets).expect("a model"));
        for case in 0..tried / 4 {
            let number = &numbers[rng.random_range(0..numbers.len())];
            let values = [changed(number, &mut rng), changed(number, &mut rng)];
            let is_moving = case % 3 == 2;
            cases.push((
                bench.clone(),
                sets.clone(),
                number.path.clone(),
                values,
                is_moving,
            ));
        }
    }
    let done = cases
        .into_par_iter()
        .filter_map(|(bench, sets, path, values, is_moving)| {
            let parameter = Parameter {
                path,
                values: values.to_vec(),
            };
            let mut asked = Conditions {
                samples,
                ..Conditions::default()
            };
            if is_moving {
                asked.pace = slow(&bench, &sets);
            }
            family(&bench, &sets, &parameter, &asked).ok()
        });
    done.collect()
}

/// A slow lift of the kind that the movement's measure takes.
fn slow(bench: &Workbench, sets: &[String]) -> torquill::capacity::Pace {
    use torquill::capacity::Pace;
    let model = bench.model(sets).expect("a model");
    let still = Conditions {
        samples: SAMPLES,
        ..Conditions::default()
    };
    match still.of(&model).expect("a study").range.measure {
        Measure::Force => Pace::Linear(0.1),
        Measure::Torque => Pace::Angular(0.5),
    }
}

#[test]
fn law_parts_add_up_and_every_printed_reason_is_true() {
    let (mut told, mut arrows, mut limits) = (0, 0, 0);
    for (seed, lift) in LIFTS.iter().enumerate() {
        let families = families(lift, seed as u64);
        assert!(
            families.len() > TRIED / 2,
            "{lift}: {} done",
            families.len()
        );
        for family in &families {
            for variant in &family.variants {
                let lines = why_lines(family, variant, System::Metric);
                assert_eq!(lines.len(), 1 + variant.causes.len());
                for (cause, line) in variant.causes.iter().zip(&lines[1..]) {
                    let case =
                        format!("{lift}, {} {}: {line}", family.parameter.path, variant.text);
                    let both = [&family.base, &variant.study];
                    adds_up(cause, both, &case);
                    let reason = Printed {
                        cause,
                        both,
                        line,
                        case: &case,
                    };
                    told += reason.check_parts();
                    arrows += reason.check_figures();
                    limits += reason.check_limit();
                }
            }
        }
    }
    // The law would be empty if hardly anything were printed.
    assert!(
        told > 800 && arrows > 800 && limits > 10,
        "{told} {arrows} {limits}"
    );
}

/// All parts of an account.
fn sum(account: &Account) -> f64 {
    let muscles = account.muscles.iter().flat_map(|muscle| muscle.parts);
    let outside = [
        account.supports,
        account.limbs,
        account.passive_joints,
        account.rest,
    ];
    muscles.chain(outside).sum::<f64>() + account.lever()
}

/// The account against the curves: the change is theirs, its parts add up, every muscle's force is theirs.
fn adds_up(cause: &Cause, both: [&Study; 2], case: &str) {
    let account = &cause.account;
    let held = both.map(|study| {
        let last = (study.range.poses.len() - 1) as f64;
        &study.capacity.held[(cause.range * last).round() as usize]
    });
    let size = held[0].capacity.abs().max(held[1].capacity.abs());
    let change = held[1].capacity - held[0].capacity;
    let close = |a: f64, b: f64| (a - b).abs() <= 1e-9 * size;
    assert!(
        close(account.change(), change),
        "{case}: {} {change}",
        account.change()
    );
    assert!(
        close(sum(account), change),
        "{case}: {} {change}",
        sum(account)
    );
    let items: f64 = cause.items().iter().map(|item| item.part).sum();
    let single: f64 = cause.single_items().iter().map(|item| item.part).sum();
    assert!(
        close(items, change) && close(single, change),
        "{case}: {items} {single} {change}"
    );
    for share in &account.muscles {
        let arms: f64 = share.arms.iter().map(|arm| arm.part).sum();
        assert!(
            close(arms, share.part(ForceFactor::Arm)),
            "{case}: {}",
            share.name
        );
    }
}

/// A printed reason beside what it is about.
struct Printed<'a> {
    cause: &'a Cause,
    both: [&'a Study; 2],
    line: &'a str,
    case: &'a str,
}

/// A printed number with its sign, true minus or not.
fn number(text: &str) -> Option<f64> {
    text.trim().replace('\u{2212}', "-").parse().ok()
}

/// Whether a reason is of one muscle.
fn is_about(reason: &str, muscle: &str) -> bool {
    let rest = reason.strip_prefix(&head_name(muscle));
    rest.is_some_and(|rest| {
        rest.starts_with(": ") || rest.starts_with(", pulling against the lift: ")
    })
}

/// What stands on both sides of the arrow behind some words, and the unit's first letter.
fn arrow(text: &str, before: &str) -> Option<[String; 2]> {
    let rest = &text[text.find(before)? + before.len()..];
    let (from, rest) = rest.split_once(" \u{2192} ")?;
    let to = rest.split([' ', ')', ';', ',']).next()?;
    number(from)?;
    Some([from.to_owned(), to.to_owned()])
}

impl Printed<'_> {
    fn sample(&self, study: &Study) -> usize {
        (self.cause.range * (study.range.poses.len() - 1) as f64).round() as usize
    }

    /// Both printed values are the model's, rounded as printed, and differ the way the model's do.
    fn assert_shown(&self, shown: &[String; 2], model: [f64; 2]) {
        for (shown, model) in shown.iter().zip(model) {
            let decimals = shown.split_once('.').map_or(0, |(_, digits)| digits.len());
            // Trailing zeros of a lone number are not printed: up to three more decimals may have been asked for.
            let fits = (decimals..=decimals + 3)
                .map(|d| rounded(model, d))
                .chain([format!("{:.decimals$}", model + 0.0)])
                .any(|text| text.replace('-', "\u{2212}") == *shown);
            assert!(fits, "{}: printed {shown}, it is {model}", self.case);
        }
    }

    /// Change and parts: signs and sums of what is printed.
    fn check_parts(&self) -> usize {
        let Some((head, reasons)) = self.line.split_once("): ") else {
            assert!(self.line.ends_with("thing changes."), "{}", self.case);
            let size = self.cause.account.capacity[0].abs();
            let largest = self
                .cause
                .items()
                .first()
                .map_or(0.0, |item| item.part.abs());
            let change = self.cause.account.change().abs();
            let is_little = largest < 0.0025 * size || change < 0.0005 * size;
            assert!(is_little, "{}", self.case);
            return 0;
        };
        let capacity = arrow(&format!("{head})"), " (").expect(self.case);
        self.assert_shown(&capacity, self.cause.account.capacity);
        let items = self.cause.items();
        let reasons = reasons.trim_end_matches('.').split("; ");
        let reasons: Vec<&str> = reasons
            .filter(|r| !r.starts_with("of what more strength"))
            .collect();
        let printed = reasons.iter().map(|reason| {
            let last = reason.rsplit(": ").next().expect("something");
            let last = last.strip_prefix("all else ").unwrap_or(last);
            last.split(' ').next().expect("a number")
        });
        let printed: Vec<&str> = printed.collect();
        let digits = |text: &&str| text.split_once('.').map_or(0, |(_, digits)| digits.len());
        let half = 0.5 * 0.1_f64.powi(printed.iter().map(digits).max().unwrap_or(0) as i32) + 1e-9;
        let change = self.cause.account.change();
        let parts: Vec<f64> = printed
            .iter()
            .map(|text| number(text).expect(self.case))
            .collect();
        let sum: f64 = parts.iter().sum();
        let slack = half * (parts.len() + 1) as f64;
        assert!(
            (sum - change).abs() <= slack,
            "{}: {sum} {change}",
            self.case
        );
        let is_else = |reason: &str| reason.starts_with("all else");
        // What is said of the rest is so: a part that is not named is larger than all of them together.
        for reason in reasons
            .iter()
            .filter(|reason| reason.contains("larger parts cancel"))
        {
            let rest = number(reason.split(' ').nth(2).expect(self.case)).expect(self.case);
            let larger = items
                .iter()
                .filter(|item| item.part.abs() >= 2.0 * (rest.abs() - half));
            assert!(is_else(reason) && larger.count() > 1, "{}", self.case);
        }
        let told: Vec<(&str, f64)> = reasons.iter().copied().zip(parts).collect();
        let named = told.iter().filter(|(reason, _)| !is_else(reason));
        let sizes: Vec<f64> = named.clone().map(|(_, part)| part.abs()).collect();
        // The largest comes first, no part of one thing is larger, and nothing unnamed is larger than what is named.
        assert!(sizes.is_sorted_by(|a, b| a >= b), "{}", self.case);
        assert!(items[0].part.abs() <= sizes[0] + half, "{}", self.case);
        let least = sizes.iter().copied().fold(f64::INFINITY, f64::min);
        let size = self.cause.account.capacity[0].abs();
        for (_, part) in told.iter().filter(|(reason, _)| is_else(reason)) {
            assert!(
                part.abs() <= least.max(0.0005 * size) + 2.0 * slack,
                "{}",
                self.case
            );
        }
        for (reason, part) in named.clone() {
            self.check_muscle(reason, *part, half);
            self.check_together(reason, *part, half);
        }
        named.count()
    }

    /// Muscles taken together: the number is the sum of all that are counted.
    fn check_together(&self, reason: &str, part: f64, half: f64) {
        let Some((factor, rest)) = reason.split_once("s of ") else {
            return;
        };
        let Some((count, rest)) = rest.split_once(' ') else {
            return;
        };
        let names = [
            "moment arm",
            "peak force",
            "fibre length",
            "fibre speed",
            "",
            "passive force",
            "activation",
        ];
        let factor = names.iter().position(|name| *name == factor);
        let (Some(factor), Ok(count)) = (factor, count.parse::<usize>()) else {
            return;
        };
        let muscles = self.cause.account.muscles.iter();
        let parts: Vec<f64> = muscles.map(|muscle| muscle.parts[factor]).collect();
        let sizes: f64 = parts.iter().map(|part| part.abs()).sum();
        let having = parts
            .iter()
            .filter(|part| part.abs() > 1e-9 * sizes)
            .count();
        if rest.starts_with("other") {
            assert!(count < having, "{}: {having}", self.case);
        } else {
            let sum: f64 = parts.iter().sum();
            assert_eq!(count, having, "{}", self.case);
            assert!((part - sum).abs() <= half, "{}: {sum}", self.case);
        }
    }

    /// A reason of one muscle is that of the muscle whose share it is.
    fn check_muscle(&self, reason: &str, part: f64, half: f64) {
        for share in &self.cause.account.muscles {
            if is_about(reason, &share.name) {
                let has = share.parts.iter().any(|own| (own - part).abs() <= half);
                assert!(has, "{}: {} has no such part", self.case, share.name);
            }
        }
    }

    /// Figures of muscles and levers, looked up in the poses; longer arms add, longer levers take.
    fn check_figures(&self) -> usize {
        let mut count = 0;
        let reasons = self
            .line
            .split_once("): ")
            .map_or("", |(_, reasons)| reasons);
        for reason in reasons.split("; ") {
            let part = reason
                .rsplit(": ")
                .next()
                .and_then(|part| number(part.split(' ').next()?));
            let Some(part) = part else { continue };
            count += self.check_of_muscle(reason, part) + self.check_lengths(reason, part);
        }
        count
    }

    fn check_of_muscle(&self, reason: &str, part: f64) -> usize {
        let names = &self.both[0].capacity.muscles;
        let index = names.iter().position(|name| {
            is_about(reason, name) || reason.contains(&format!("most in {} (", head_name(name)))
        });
        let Some(index) = index else { return 0 };
        let held = self
            .both
            .map(|study| &study.capacity.held[self.sample(study)]);
        let force = held
            .map(|h| h.muscles[index].passive_n + h.activations[index] * h.muscles[index].active_n);
        let mut count = 0;
        let mut shown = |before: &str, model: [f64; 2]| {
            let found = arrow(reason, before);
            if let Some(values) = &found {
                self.assert_shown(values, model);
                count += 1;
            }
            found.is_some()
        };
        shown(
            "fibres ",
            held.map(|h| 100.0 * h.muscles[index].state.length_norm),
        );
        shown(
            "fibre speed ",
            held.map(|h| 100.0 * h.muscles[index].state.velocity_norm),
        );
        shown("optimal length, ", force);
        shown("maximum, ", force);
        if shown("activation ", held.map(|h| 100.0 * h.activations[index])) {
            shown("%, ", force);
        }
        let peaks = self.both.map(|study| study.capacity.peak_forces_n[index]);
        if shown("peak force ", peaks) && is_about(reason, &names[index]) {
            // More strength adds, unless the muscle works against the lift, which is told.
            let way = if reason.contains("against the lift") {
                -1.0
            } else {
                1.0
            };
            assert!(way * (peaks[1] - peaks[0]) * part > 0.0, "{}", self.case);
        }
        count
    }

    /// Moment arms and levers: lengths about each axis are the pose's, each gives what the account says, and together
    /// they give the number behind.
    fn check_lengths(&self, reason: &str, part: f64) -> usize {
        let account = &self.cause.account;
        let muscles = &mut account.muscles.iter();
        let muscle = muscles.position(|share| is_about(reason, &share.name));
        let (levers, word) = match (muscle, reason.contains("moment arm")) {
            (Some(index), true) => (&account.muscles[index].arms, "at the "),
            (None, true) if reason.starts_with("moment arm of ") => (&account.levers, "about the "),
            _ => return 0,
        };
        let axes: Vec<&str> = reason.split(word).skip(1).collect();
        let mut count = 0;
        for axis in &axes {
            let row = self.row(axis);
            if let Some(gives) = axis.split(" gives ").nth(1) {
                let text = gives.split(' ').next().expect(self.case);
                let digits = text.split_once('.').map_or(0, |(_, digits)| digits.len());
                let half = 0.5 * 0.1_f64.powi(digits as i32) + 1e-9;
                let own = levers[row].part;
                assert!(
                    (own - number(text).expect(self.case)).abs() <= half,
                    "{}: {own}",
                    self.case
                );
            }
            count += usize::from(self.check_length(axis, row, muscle));
        }
        if axes.is_empty() && levers.len() == 1 {
            count += usize::from(self.check_length(reason, 0, muscle));
        }
        let sum: f64 = levers.iter().map(|lever| lever.part).sum();
        assert!(
            (sum - part).abs() <= 0.5001_f64.max(1e-2 * sum.abs()),
            "{}: {sum}",
            self.case
        );
        count
    }

    /// The row of a joint's axis, by the words for it.
    fn row(&self, words: &str) -> usize {
        let name = |dof: torquill::anatomy::Dof| match dof.name().split_once('_') {
            Some((joint, plane)) => format!("{joint} ({plane})"),
            None => dof.joint().name().to_owned(),
        };
        let coordinates = &self.both[0].range.poses[0].coordinates;
        let row = coordinates
            .iter()
            .position(|c| words.starts_with(&name(c.dof)));
        row.expect(self.case)
    }

    /// A length before and after is that of each pose, whatever the other one is.
    fn check_length(&self, words: &str, row: usize, muscle: Option<usize>) -> bool {
        let end = words.find(" cm").unwrap_or(0);
        let from = words[..end].find(|c: char| c.is_ascii_digit() || c == '\u{2212}');
        let Some(shown) = from.and_then(|from| arrow(&format!(" {} ", &words[from..end]), " "))
        else {
            return false;
        };
        let model = self.both.map(|study| {
            let index = self.sample(study);
            let (pose, held) = (&study.range.poses[index], &study.capacity.held[index]);
            if let Some(muscle) = muscle {
                return 100.0 * held.muscles[muscle].arms_m[row].abs();
            }
            let way = plain_direction(study.range.carrier);
            let column = pose.load_jacobian[row];
            let pushes = pose.reactions.iter().zip(&held.reactions);
            let pushed: f64 = pushes.map(|(r, value)| r.column[row] * value).sum();
            let per_load = study.range.sides.count() * pushed / held.capacity;
            100.0 * (column.x * way.x_n + column.z * way.z_n + per_load).abs()
        });
        self.assert_shown(&shown.map(|text| text.replace('\u{2212}', "")), model);
        true
    }

    /// The shares of the joints in the limit are those of the duals, and move where they are told.
    fn check_limit(&self) -> usize {
        let shares = self.both.map(|study| self.shares(study));
        let joints = [0, 1].map(|side| shares[side].clone());
        let moved = joints[0].iter().map(|(joint, before)| {
            let after = joints[1].iter().find(|(other, _)| other == joint);
            (after.expect(self.case).1 - before).abs()
        });
        let most = moved.fold(0.0, f64::max);
        let Some((_, told)) = self.line.split_once("of what more strength would add ") else {
            assert!(
                most < 0.04 || self.line.ends_with("thing changes."),
                "{}: {most}",
                self.case
            );
            return 0;
        };
        let first = joints.each_ref().map(|shares| {
            let largest = shares.iter().max_by(|a, b| a.1.total_cmp(&b.1));
            largest.expect(self.case).0
        });
        assert!(
            most >= 0.04 || first[0] != first[1],
            "{}: {most}",
            self.case
        );
        for joint in told.split("the ").skip(1) {
            let (name, rest) = joint.split_once(" has").expect(self.case);
            let shown = arrow(rest, " ").expect(self.case);
            let model = joints.each_ref().map(|shares| {
                let own = shares.iter().find(|(joint, _)| joint.name() == name);
                100.0 * own.expect(self.case).1
            });
            self.assert_shown(&shown, model);
        }
        1
    }

    /// What a share more strength at every joint adds, over the sum: from the study's own gains.
    fn shares(&self, study: &Study) -> Vec<(Joint, f64)> {
        let side = usize::from(std::ptr::eq(study, self.both[1]));
        let limits = &self.cause.account.limits[side];
        let sum: f64 = limits.iter().map(|limit| limit.share).sum();
        assert!((sum - 1.0).abs() < 1e-9, "{}: {sum}", self.case);
        let held = &study.capacity.held[self.sample(study)];
        let first = study.range.poses[0].coordinates[held.limiting].dof.joint();
        let own = limits.iter().find(|limit| limit.joint == first);
        // The joint that gives way first in the curve has the largest share here.
        assert!(
            own.expect(self.case).share >= limits[0].share - 1e-6,
            "{}",
            self.case
        );
        limits
            .iter()
            .map(|limit| (limit.joint, limit.share))
            .collect()
    }
}

#[test]
fn law_one_joint_is_split_by_hand() {
    // Force × arm of every muscle, written out: with one joint and a torque no dual value is needed.
    let bench =
        Workbench::open(&Library::built_in(), "reference-man", "biceps-curl").expect("a lift");
    let parameter =
        Parameter::read("muscles.biceps_long.moment_arm.elbow", "-15%,+20%").expect("values");
    let family = family(&bench, &[], &parameter, &Conditions::default()).expect("a family");
    for variant in &family.variants {
        for cause in &variant.causes {
            let torque = |study: &Study, index: usize| {
                let last = (study.range.poses.len() - 1) as f64;
                let held = &study.capacity.held[(cause.range * last).round() as usize];
                let muscle = &held.muscles[index];
                let force = muscle.passive_n + held.activations[index] * muscle.active_n;
                (muscle.arms_m[0] * force, muscle.arms_m[0], force)
            };
            for (index, share) in cause.account.muscles.iter().enumerate() {
                let (old, old_arm, old_force) = torque(&family.base, index);
                let (new, new_arm, new_force) = torque(&variant.study, index);
                assert!(
                    (share.parts.iter().sum::<f64>() - (new - old)).abs() < 1e-9,
                    "{}",
                    share.name
                );
                // Two factors, force and arm: the arm's part lies between its change at the old and the new force.
                let arm = share.part(ForceFactor::Arm);
                let ends = [old_force, new_force].map(|force| (new_arm - old_arm) * force);
                assert!(arm >= ends[0].min(ends[1]) - 1e-9 && arm <= ends[0].max(ends[1]) + 1e-9);
            }
        }
    }
}

#[test]
fn law_strength_of_all_muscles_is_peak_force_alone() {
    for lift in ["biceps-curl", "squat", "bench-press"] {
        let bench = Workbench::open(&Library::built_in(), "reference-man", lift).expect("a lift");
        let parameter = Parameter::read("lifter.strength_scale", "-10%,+10%").expect("values");
        let family = family(&bench, &[], &parameter, &Conditions::default()).expect("a family");
        for variant in &family.variants {
            for cause in &variant.causes {
                let account = &cause.account;
                let size = account.change().abs();
                let of = |factor: ForceFactor| -> f64 {
                    account
                        .muscles
                        .iter()
                        .map(|muscle| muscle.part(factor).abs())
                        .sum()
                };
                assert!(
                    account.lever().abs() < 1e-9 * size,
                    "{lift}: levers do not know strength"
                );
                assert!(of(ForceFactor::Arm) < 1e-9 * size, "{lift}");
                assert!(of(ForceFactor::PeakForce) > 0.8 * size, "{lift}");
            }
        }
    }
}

#[test]
fn fault_a_parameter_of_another_lift_is_told() {
    let values = ["--values", "-10%,+10%"];
    let cases = [
        (
            "biceps-curl",
            "muscles.soleus.moment_arm.ankle",
            "the elbow moves there",
        ),
        ("biceps-curl", "lifter.strength.elbow_extensors", ""),
        (
            "leg-curl",
            "joints.elbow.high_torque",
            "the knee moves there",
        ),
        (
            "squat",
            "muscles.biceps_long.peak_force",
            "hip and knee move there",
        ),
    ];
    for (lift, path, moving) in cases {
        let arguments = [&["vary", lift, "--param", path], &values[..]].concat();
        let folder = tempfile::tempdir().expect("a folder");
        let Answer {
            status,
            out,
            complaint,
        } = call_on("2", folder.path(), &arguments);
        if path.contains("extensors") && status == 0 {
            continue;
        }
        assert_eq!((status, out.as_str()), (2, ""), "{path}: {complaint}");
        assert!(
            complaint.contains("is not in this lift"),
            "{path}: {complaint}"
        );
        assert!(complaint.contains(moving), "{path}: {complaint}");
        assert!(
            complaint.contains("it has a part in"),
            "{path}: {complaint}"
        );
    }
    let bench =
        Workbench::open(&Library::built_in(), "reference-man", "calf-raise").expect("a lift");
    let parameter = Parameter::read("muscles.soleus.pennation", values[1]).expect("values");
    let there: Result<Family, Error> = family(&bench, &[], &parameter, &Conditions::default());
    assert!(there.is_ok(), "the soleus has a part in the calf raise");
}

#[test]
fn fault_a_value_that_changes_nothing_is_told() {
    let folder = tempfile::tempdir().expect("a folder");
    let arguments = [
        "vary",
        "biceps-curl",
        "--param",
        "segments.thigh.length",
        "--values",
        "-10%,+10%",
    ];
    let Answer {
        status,
        out,
        complaint,
    } = call_on("2", folder.path(), &arguments);
    assert_eq!((status, complaint.as_str()), (0, ""));
    assert!(out.contains("changes nothing in this lift"), "{out}");
    assert!(!out.contains("bell-shaped"), "no table of no change: {out}");
}

/// Between what the heaviest weight lies by hand, kg: the least that any sample allows, or less between two of them, no less
/// there than the lines beside promise. Where the body is lifted it counts.
pub(crate) fn heaviest_by_hand(study: &Study) -> [f64; 2] {
    let effort = &study.setups[0].effort;
    let sampled = effort.iter().copied().fold(0.0, f64::max);
    let between = (0..effort.len() - 1).map(|piece| promised(effort, piece));
    [between.fold(sampled, f64::max), sampled].map(|most| lifted_kg(study) / most)
}

/// What is lifted, kg: the plain weight, and the body where that is the load.
fn lifted_kg(study: &Study) -> f64 {
    match study.range.carrier {
        Carrier::Body => 20.0 + study.body_mass.as_kg(),
        _ => 20.0,
    }
}

/// What each kilogram asks for at a place, between two samples on the straight line.
fn asked_at(study: &Study, range: f64) -> f64 {
    let values = &study.setups[0].values;
    let place = range * (values.len() - 1) as f64;
    let below = (place.floor() as usize).min(values.len() - 2);
    let part = place - below as f64;
    (values[below] * (1.0 - part) + values[below + 1] * part) / lifted_kg(study)
}

#[test]
fn law_the_heaviest_weight_is_capacity_over_what_is_asked_for() {
    heaviest_weights(TRIED_IN_FULL);
}

#[test]
#[ignore = "minutes of curves: `.ci/nightly` runs it"]
fn law_the_heaviest_weight_over_sixty_parameters_of_every_lift() {
    heaviest_weights(TRIED);
}

/// The heaviest weight's line against the two studies' own arrays, over so many random parameters of every lift.
fn heaviest_weights(tried: usize) {
    let mut told = 0;
    for (seed, lift) in LIFTS.iter().enumerate() {
        for family in families_of(lift, 100 + seed as u64, tried, USUAL_SAMPLES) {
            for variant in &family.variants {
                let Some(line) = heaviest_line(&family, variant, System::Metric) else {
                    continue;
                };
                let case = format!("{lift}, {} {}: {line}", family.parameter.path, variant.text);
                let both = [&family.base, &variant.study];
                let held =
                    arrow(&line.replace("with the body ", ""), "Heaviest weight ").expect(&case);
                let bounds = both.map(heaviest_by_hand);
                for (text, [least, most]) in held.iter().zip(bounds) {
                    let decimals = text.split_once('.').map_or(0, |(_, digits)| digits.len());
                    let half = 0.5 * 0.1_f64.powi(decimals as i32) + 1e-9;
                    let told = number(text).expect(&case);
                    assert!(
                        (least - half..=most + half).contains(&told),
                        "{case}: {least} to {most}"
                    );
                }
                let changes: Vec<f64> = line
                    .split("changes by ")
                    .skip(1)
                    .map(|rest| number(rest.split(' ').next().expect(&case)).expect(&case))
                    .collect();
                let stays = line.matches("stays as it is").count();
                assert_eq!(changes.len() + stays, 2, "{case}");
                let changed = |what: &str, index: usize| {
                    if line.contains(what) {
                        changes[index]
                    } else {
                        0.0
                    }
                };
                let capacity = changed("capacity changes", 0);
                let asked = changed("asks for changes", changes.len().max(1) - 1);
                let product = (1.0 + capacity / 100.0) / (1.0 + asked / 100.0);
                let whole = line
                    .split_once(" kg (")
                    .and_then(|(_, rest)| number(rest.split(' ').next()?));
                let whole = 1.0 + whole.expect(&case) / 100.0;
                assert!(
                    (product / whole - 1.0).abs() < 0.003,
                    "{case}: {product} {whole}"
                );
                // A kilogram in the hands weighs the same everywhere; on a lever what it asks for stands in the curves.
                let places = [&family.base_figures, &variant.figures]
                    .map(|figures| figures.sticking.expect("a hardest place").point_range);
                let [old, new] = [0, 1].map(|side| asked_at(both[side], places[side]));
                let percent = 100.0 * (new / old - 1.0);
                assert!((asked - percent).abs() < 0.051, "{case}: {percent}");
                let is_in_hands = matches!(
                    family.base.range.carrier,
                    Carrier::Bar | Carrier::Dumbbell | Carrier::Body
                ) && family.base.range.measure == Measure::Force;
                assert!(!is_in_hands || asked == 0.0, "{case}");
                told += 1;
            }
        }
    }
    // Empty if hardly any were told: a quarter of what is asked, as with more parameters.
    assert!(told > LIFTS.len() * tried / 4, "{told}");
}
