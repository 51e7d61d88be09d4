//! Drawn bodies in words: muscles on the skeleton, a lift as a free body.
//!
//! In: what each picture shows. Out: words around it, and the cells of the tables below the bodies.

use super::figure_words::FigureWords;
use super::prose::listed;
use super::quantities::rounded;
use super::shown_units::ShownUnits;
use crate::anatomy::Dof;
use crate::study::{FreeBody, FreeJoint, MuscleLine, Study};
use crate::units::System;

/// Letters of muscles in the picture.
pub(crate) const LETTERS: [&str; 6] = ["A", "B", "C", "D", "E", "F"];

/// One of the poses of a lift that is drawn.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct ShownPose {
    /// The sample.
    pub sample: usize,
    /// What it is: "start".
    pub what: &'static str,
}

/// Names of the poses that are drawn: with a load its hardest place, without one the strongest; the middle where that is an end.
pub(crate) const POSES: [&str; 5] = ["Start", "Hardest", "Strongest", "Middle", "End"];

/// "Start, 130 deg".
pub(crate) fn pose_title(study: &Study, shown: ShownPose, units: System) -> String {
    let last = (study.range.poses.len() - 1) as f64;
    format!(
        "{}: {}",
        shown.what,
        study.told(units).place(shown.sample as f64 / last)
    )
}

/// The same without from where the place is counted: "Start: 130 deg".
pub(crate) fn short_pose_title(study: &Study, shown: ShownPose, units: System) -> String {
    let last = (study.range.poses.len() - 1) as f64;
    let (number, unit) = study.told(units).place_and_unit(shown.sample as f64 / last);
    format!("{}: {number} {unit}", shown.what)
}

/// What the colours of muscles tell.
pub(crate) const ACTIVATION: &str = "Activation";

/// None, half and all of it.
pub(crate) fn activation_steps() -> [String; 3] {
    [0, 50, 100].map(|percent| format!("{percent} %"))
}

fn arm_cm(muscle: &MuscleLine, row: usize, units: System) -> String {
    let unit = units.length_unit();
    format!("{:.1}", unit.of(muscle.arms_m[row].unwrap_or(0.0).abs()))
}

/// Heads of the columns below a body with muscles.
pub(crate) fn muscle_head(units: System) -> Vec<String> {
    let force = units.load_unit(crate::movement::Measure::Force);
    [
        String::new(),
        format!("arm, {}", units.length_unit().symbol),
        format!("force, {}", force.symbol),
        format!("moment, {}", units.torque_unit().symbol),
    ]
    .to_vec()
}

/// A muscle's row: letter and joint, arm, force, moment.
pub(crate) fn muscle_row(
    letter: &str,
    muscle: &MuscleLine,
    row: usize,
    joint: Option<&str>,
    units: System,
) -> Vec<String> {
    let force = units.load_unit(crate::movement::Measure::Force);
    let name = joint.map_or_else(|| letter.to_owned(), |joint| format!("{letter} {joint}"));
    vec![
        name,
        arm_cm(muscle, row, units),
        rounded(force.of(muscle.force_n), 0),
        format!("{:.1}", units.torque_unit().of(muscle.moment_nm(row).abs())),
    ]
}

fn named(muscle: &MuscleLine) -> String {
    match muscle.heads {
        1 => muscle.name.clone(),
        many => format!("{} ({many} heads)", muscle.name),
    }
}

/// Muscles on the skeleton: `drawn` holds, pose by pose, each muscle with the coordinate of its main moment.
#[must_use]
pub(crate) fn muscle_words(
    study: &Study,
    poses: &[ShownPose],
    drawn: &[Vec<(MuscleLine, usize)>],
    units: System,
) -> FigureWords {
    let unit = units.length_unit();
    let (force, torque) = (
        units.load_unit(crate::movement::Measure::Force),
        units.torque_unit(),
    );
    let told = most_changed(drawn);
    let first = &drawn[0][told];
    let joint = study.joint(first.1);
    let arms: Vec<String> = poses
        .iter()
        .zip(drawn)
        .map(|(pose, muscles)| {
            let arm = arm_cm(&muscles[told].0, muscles[told].1, units);
            format!("{arm} {} at the {}", unit.symbol, place_word(pose))
        })
        .collect();
    let each_pose: Vec<String> = poses
        .iter()
        .zip(drawn)
        .map(|(pose, muscles)| {
            let each: Vec<String> = muscles
                .iter()
                .map(|(muscle, row)| {
                    format!(
                        "{} {} {} × {} {} = {} {} at the {}",
                        muscle.name,
                        arm_cm(muscle, *row, units),
                        unit.symbol,
                        rounded(force.of(muscle.force_n), 0),
                        force.symbol,
                        format_args!("{:.1}", torque.of(muscle.moment_nm(*row).abs())),
                        torque.symbol,
                        study.joint(*row)
                    )
                })
                .collect();
            format!("{}: {}.", pose_title(study, *pose, units), each.join("; "))
        })
        .collect();
    let key: Vec<String> = drawn[0]
        .iter()
        .zip(LETTERS)
        .map(|((muscle, _), letter)| format!("{letter} {}", named(muscle)))
        .collect();
    FigureWords {
        title: format!(
            "Moment arm of the {} at the {joint}: {}",
            first.0.name,
            listed(&arms)
        ),
        subtitle: format!(
            "{}, {}. {}",
            study.lifter_title,
            study.movement_title.to_lowercase(),
            key.join(", ")
        ),
        footnote: format!(
            "Best effort held still, one side. Width: force. Thick rim: the {}; dashed: its moment arm to scale, square to \
             the line of pull. Where a muscle begins and ends is drawn freely.",
            first.0.name
        ),
        description: format!("The moving limb with its muscles at {} places. {}", poses.len(), each_pose.join(" ")),
        caption: "A muscle turns a joint with its force times its moment arm, the distance of its line of pull from the joint's \
                  axis. The limb's position sets both: the arm by geometry, the force by the length of the fibres."
            .to_owned(),
    }
}

/// The muscle whose lever changes most over the poses that show them all.
pub(crate) fn most_changed(drawn: &[Vec<(MuscleLine, usize)>]) -> usize {
    let count = drawn.iter().map(Vec::len).min().unwrap_or(0);
    let change = |index: usize| {
        let arms = drawn.iter().map(|muscles| {
            let (muscle, row) = &muscles[index];
            muscle.arms_m[*row].unwrap_or(0.0).abs()
        });
        let [low, high] = [f64::min, f64::max].map(|of| arms.clone().reduce(of));
        high.unwrap_or(0.0) - low.unwrap_or(0.0)
    };
    // Of equal ones the first, which makes the greater moment.
    (0..count)
        .rev()
        .max_by(|a, b| change(*a).total_cmp(&change(*b)))
        .unwrap_or(0)
}

fn place_word(shown: &ShownPose) -> &'static str {
    match shown.what {
        "Start" => "start",
        "Hardest" => "hardest place",
        "Strongest" => "strongest place",
        "Middle" => "middle",
        _ => "end",
    }
}

/// The load of a free body where none is named.
pub(crate) const HEAVIEST: &str = "the heaviest load of each place";

/// Heads of the columns below a free body.
pub(crate) fn free_head(has_bench: bool, units: System) -> Vec<String> {
    let unit = units.length_unit().symbol;
    let all = ["", unit, "load", "bench", "body", "held", "by"];
    let told = all.into_iter().filter(|head| has_bench || *head != "bench");
    told.map(str::to_owned).collect()
}

/// Moments of load, bench and limbs as they are printed, and their sum: rounded so that the printed numbers add up.
#[must_use]
pub(crate) fn printed_moments(joint: &FreeJoint, units: System) -> [f64; 4] {
    let unit = units.torque_unit();
    let [load, pushed, held] =
        [joint.load_nm, joint.pushed_nm, joint.held_nm].map(|moment| unit.of(moment).round());
    [load, pushed, held - load - pushed, held]
}

/// The moments that the parts of a body's equilibrium make about a joint.
pub(crate) fn free_row(joint: &FreeJoint, has_bench: bool, units: System) -> Vec<String> {
    let lever = rounded(units.length_unit().of(joint.lever_m), 0);
    let mut row = vec![joint_name(joint.dof).to_owned(), lever];
    let moments = printed_moments(joint, units).into_iter().enumerate();
    let told = moments.filter(|(place, _)| has_bench || *place != 1);
    row.extend(told.map(|(_, moment)| rounded(moment, 0).replace('-', "\u{2212}")));
    row.push(holders(joint).0.to_owned());
    row
}

/// Which muscles hold a joint, in short and in full; angles grow with flexion, abduction, horizontal adduction.
pub(crate) fn holders(joint: &FreeJoint) -> (&'static str, &'static str) {
    let (up, down) = match joint.dof {
        Dof::Elbow | Dof::ShoulderFlexion | Dof::Lumbar | Dof::Hip | Dof::Knee => {
            (("flex.", "flexors"), ("ext.", "extensors"))
        }
        Dof::ShoulderAbduction => (("abd.", "abductors"), ("add.", "adductors")),
        Dof::ShoulderHorizontal => (
            ("add.", "horizontal adductors"),
            ("abd.", "horizontal abductors"),
        ),
        Dof::Ankle => (("dorsi.", "dorsiflexors"), ("plantar", "plantar flexors")),
    };
    if joint.by_flexors { up } else { down }
}

/// What the short words below a free body mean: only those that are there.
fn holders_explained(bodies: &[FreeBody], rows: &[usize]) -> String {
    let joints = bodies
        .iter()
        .flat_map(|body| rows.iter().map(move |row| &body.joints[*row]));
    let mut told: Vec<String> = Vec::new();
    for joint in joints {
        let (short, full) = holders(joint);
        let words = match short {
            "plantar" => continue,
            _ => format!("{full} ({short})"),
        };
        if !told.contains(&words) {
            told.push(words);
        }
    }
    told.join(", ")
}

/// The joint of a degree of freedom: "lower back" for the lumbar spine.
#[must_use]
pub(crate) fn joint_name(dof: Dof) -> &'static str {
    dof.joint().name()
}

/// The load of both sides: "66 kg", or a force where it is none.
fn force_of(body: &FreeBody, units: System) -> String {
    let force = units.load_unit(crate::movement::Measure::Force);
    format!(
        "{} {}",
        rounded(force.of(body.load.magnitude_n()), 0),
        force.symbol
    )
}

/// Which muscles hold, which arrow is what, and what the dashed lines are.
fn free_note(bodies: &[FreeBody], rows: &[usize]) -> String {
    let body = &bodies[0];
    let has_push = body.through_n > (1.0 + 1.0e-6) * body.load.magnitude_n();
    let load = if has_push {
        "load with the push along bar or plate"
    } else {
        "load"
    };
    let rest = match (body.bench, body.floor) {
        (Some(_), _) => ", body's weight (green), bench and floor (blue)",
        (None, Some(_)) => ", body's weight (green), floor (blue)",
        (None, None) => "",
    };
    format!(
        "Held by {}. Arrows to scale: {load}{rest}. Dashed: the load's moment arms as seen.",
        holders_explained(bodies, rows)
    )
}

/// A lift as a free body at several places: `told` is the index of the joint of which the title speaks.
#[must_use]
pub(crate) fn free_body_words(
    study: &Study,
    load: &str,
    poses: &[ShownPose],
    bodies: &[FreeBody],
    rows: &[usize],
    told: usize,
    units: System,
) -> FigureWords {
    let (unit, torque) = (units.length_unit(), units.torque_unit());
    let joint = joint_name(bodies[0].joints[told].dof);
    let levers: Vec<String> = bodies
        .iter()
        .map(|body| rounded(unit.of(body.joints[told].lever_m), 0))
        .collect();
    let sizes = || bodies.iter().map(|body| body.load.magnitude_n());
    let (least, most) = (
        sizes().fold(f64::INFINITY, f64::min),
        sizes().fold(0.0, f64::max),
    );
    let same = most - least < 0.005 * most;
    let each: Vec<String> = poses
        .iter()
        .zip(bodies)
        .map(|(pose, body)| {
            let joints: Vec<String> = rows
                .iter()
                .map(|row| {
                    let joint = &body.joints[*row];
                    let moments = printed_moments(joint, units);
                    let signed = |moment: f64| {
                        let sign = if moment < 0.0 { "\u{2212}" } else { "" };
                        format!("{sign}{}", rounded(moment.abs(), 0))
                    };
                    let mut sum = signed(moments[0]);
                    let has_bench = body.bench.is_some();
                    for moment in moments[usize::from(!has_bench) + 1..3].iter() {
                        let sign = if *moment < 0.0 { "\u{2212}" } else { "+" };
                        sum += &format!(" {sign} {}", rounded(moment.abs(), 0));
                    }
                    format!(
                        "{} {sum} = {} {} by its {}, moment arm {} {}",
                        joint_name(joint.dof),
                        signed(moments[3]),
                        torque.symbol,
                        holders(joint).1,
                        rounded(unit.of(joint.lever_m), 0),
                        unit.symbol
                    )
                })
                .collect();
            format!(
                "{}, load {}: {}.",
                pose_title(study, *pose, units),
                force_of(body, units),
                joints.join("; ")
            )
        })
        .collect();
    FigureWords {
        title: format!(
            "{}: at the {joint} {} {}",
            if same {
                "Same load, other moment arm"
            } else {
                "Load and moment arm change"
            },
            levers.join(", then "),
            unit.symbol
        ),
        subtitle: format!(
            "{}, {}, {load}: moments in {}, one side; places {}",
            study.lifter_title,
            study.movement_title.to_lowercase(),
            torque.symbol,
            study.away_from
        ),
        footnote: free_note(bodies, rows),
        description: format!(
            "A free body at {} places; load and body make the moments that are held. {}",
            poses.len(),
            each.join(" ")
        ),
        caption: "In balance, the moment that muscles and tissue hold at a joint is the moment of the load, its force times its distance \
                  from the joint, together with that of the body's own weight beyond the joint."
            .to_owned(),
    }
}
