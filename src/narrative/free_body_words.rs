//! A lift as a free body in words.
//!
//! In: bodies at several places. Out: words around them, and the cells of the tables below.

use super::body_words::{ShownPose, pose_title};
use super::figure_words::FigureWords;
use super::prose::listed;
use super::quantities::rounded;
use super::shown_units::ShownUnits;
use crate::anatomy::Dof;
use crate::study::{FreeBody, FreeJoint, Study};
use crate::units::System;

/// Shorter moment arms are lost under joints and arrows and are not drawn, m (a drawing's measure).
pub(crate) const LEAST_DRAWN_M: f64 = 0.1;

/// The load of a free body where none is named.
pub(crate) const HEAVIEST: &str = "the heaviest load of each place";

/// Heads of the columns below a free body: what cannot be held is only asked for.
pub(crate) fn free_head(body: &FreeBody, units: System) -> Vec<String> {
    let arm = format!("arm, {}", units.length_unit().symbol);
    let has_bench = body.bench.is_some();
    let all = ["", &arm, "load", "bench", "body", sum_word(body), "by"];
    let told = all.into_iter().filter(|head| has_bench || *head != "bench");
    told.map(str::to_owned).collect()
}

/// What the sum of the moments is: what cannot be held is only asked for.
fn sum_word(body: &FreeBody) -> &'static str {
    if is_held(body) { "held" } else { "asked" }
}

/// Whether the lifter can hold the load there.
fn is_held(body: &FreeBody) -> bool {
    body.effort <= 1.0
}

/// Moments of load, bench and limbs as they are printed, and their sum: each is rounded by itself.
#[must_use]
pub(crate) fn printed_moments(joint: &FreeJoint, units: System) -> [f64; 4] {
    let unit = units.torque_unit();
    let moments = [
        joint.load_nm,
        joint.pushed_nm,
        joint.limbs_nm,
        joint.held_nm,
    ];
    // No minus stands before a nought.
    moments.map(|moment| unit.of(moment).round() + 0.0)
}

/// The moments that the parts of a body's equilibrium make about a joint.
pub(crate) fn free_row(joint: &FreeJoint, has_bench: bool, units: System) -> Vec<String> {
    let lever = format!("{:.1}", units.length_unit().of(joint.lever_m));
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
        let words = format!("{full} ({short})");
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

/// The load of one side: "66 kg", or a force where it is none.
fn force_of(body: &FreeBody, units: System) -> String {
    let force = units.load_unit(crate::movement::Measure::Force);
    format!(
        "{} {}",
        rounded(force.of(body.load.magnitude_n()), 0),
        force.symbol
    )
}

/// "load 147 N", and with what pushes through the same hand or foot the force that the moment arms belong to.
fn load_told(body: &FreeBody, units: System) -> String {
    let load = force_of(body, units);
    let force = units.load_unit(crate::movement::Measure::Force);
    let both = format!("{} {}", rounded(force.of(body.through_n), 0), force.symbol);
    if both == load {
        return format!("load {load}");
    }
    format!("load {load}, with the push along bar or plate {both}")
}

/// The force that the moment arms belong to, of one side, where it is the same everywhere.
fn one_side(bodies: &[FreeBody], same: bool, units: System) -> String {
    if !same || bodies.iter().any(has_push) {
        return String::new();
    }
    format!(" ({} a side)", force_of(&bodies[0], units))
}

/// Whether hand or foot pushes along what it holds.
fn has_push(body: &FreeBody) -> bool {
    body.through_n > (1.0 + 1.0e-6) * body.load.magnitude_n()
}

/// Joints that the push along bar or plate turns over: the muscles of their other side hold them.
fn turned_over(bodies: &[FreeBody], rows: &[usize]) -> String {
    let mut told: Vec<String> = Vec::new();
    for joint in bodies
        .iter()
        .flat_map(|body| rows.iter().map(|row| &body.joints[*row]))
    {
        let words = format!("the {}", joint_name(joint.dof));
        let is_turned = joint.held_nm - joint.push_nm < -0.5 && joint.held_nm > 0.5;
        if is_turned && !told.contains(&words) {
            told.push(words);
        }
    }
    match told.as_slice() {
        [] => String::new(),
        some => format!(" The push turns {} over.", listed(some)),
    }
}

/// Which muscles hold, which arrow is what, and what the dashed lines are.
fn free_note(bodies: &[FreeBody], rows: &[usize], units: System) -> String {
    let body = &bodies[0];
    let load = if has_push(body) {
        "load with push"
    } else {
        "load"
    };
    // By place and direction: a print has no colours.
    let has_hip = body.joints.iter().any(|joint| joint.dof == Dof::Hip);
    let down = if has_hip { "down from the hip" } else { "down" };
    let rest = match (body.bench, body.floor) {
        (Some(_), _) => format!(", whole body ({down}), bench and floor (up)"),
        (None, Some(_)) => format!(", whole body ({down}), floor (up)"),
        (None, None) => String::new(),
    };
    let by = if bodies.iter().all(is_held) {
        "Held by"
    } else {
        "Asked of"
    };
    let unit = units.length_unit();
    format!(
        "{by} {}. To scale: {load}{rest}. Dashed: the load's line, its arms above {} {}.{}{}",
        holders_explained(bodies, rows),
        rounded(unit.of(LEAST_DRAWN_M), 1),
        unit.symbol,
        passed_through(bodies, rows),
        turned_over(bodies, rows)
    )
}

/// Where the part of the body is whose weight the table has, seen from a joint.
fn far_side(body: &FreeBody) -> &'static str {
    match (body.bench, body.floor) {
        (None, Some(_)) => "above",
        _ => "beyond",
    }
}

/// Joints through which the load passes at every place, so that it makes no moment there.
fn passed_through(bodies: &[FreeBody], rows: &[usize]) -> String {
    /// A moment arm that is told as none, m: less than half of a last printed digit.
    const NO_ARM_M: f64 = 5.0e-4;
    let is_passed = |row: &&usize| {
        let mut levers = bodies.iter().map(|body| body.joints[**row].lever_m);
        levers.all(|lever_m| lever_m < NO_ARM_M)
    };
    let passed = rows.iter().filter(is_passed);
    let told: Vec<String> = passed
        .map(|row| format!("the {}", joint_name(bodies[0].joints[*row].dof)))
        .collect();
    match told.as_slice() {
        [] => String::new(),
        some => format!(" It passes through {}.", listed(some)),
    }
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
    let all_held = bodies.iter().all(is_held);
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
                    let parts = ["load", "bench", "body", sum_word(body)];
                    let parts = parts.iter().zip(moments);
                    let told = parts.filter(|(name, _)| body.bench.is_some() || **name != "bench");
                    let told = told.map(|(name, moment)| format!("{name} {}", signed(moment)));
                    format!(
                        "at the {} {} {} by its {}, moment arm {} {}",
                        joint_name(joint.dof),
                        told.collect::<Vec<String>>().join(", "),
                        torque.symbol,
                        holders(joint).1,
                        rounded(unit.of(joint.lever_m), 0),
                        unit.symbol
                    )
                })
                .collect();
            format!(
                "{}, {}: {}.",
                pose_title(study, *pose, units),
                load_told(body, units),
                joints.join("; ")
            )
        })
        .collect();
    FigureWords {
        title: format!(
            "{}: at the {joint} {} {}",
            if !all_held {
                "More than can be held"
            } else if same {
                "Same load, other moment arm"
            } else {
                "Load and moment arm change"
            },
            levers.join(", then "),
            unit.symbol
        ),
        subtitle: format!(
            "{}, {}, {load}{}: moments in {}, one side, rounded; body: its part {} the joint; places {}",
            study.lifter_title,
            study.movement_title.to_lowercase(),
            one_side(bodies, same, units),
            torque.symbol,
            far_side(&bodies[0]),
            study.away_from
        ),
        footnote: free_note(bodies, rows, units),
        description: format!(
            "A free body at {} places; load and body make the moments that {}. {}",
            poses.len(),
            if all_held {
                "are held"
            } else {
                "would have to be held, more than this lifter can"
            },
            each.join(" ")
        ),
        caption: "In balance, the moment that muscles and tissue hold at a joint is the moment of the load, its force times its distance \
                  from the joint, together with that of the body's own weight beyond the joint. Each moment is rounded by itself: a printed sum may be off by 1."
            .to_owned(),
    }
}
