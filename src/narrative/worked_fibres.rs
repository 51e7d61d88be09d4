//! A muscle of a worked pose as equations: fibre length, factors, force, moments.
//!
//! In: a [`WorkedMuscle`], what stands above it on the sheet. Out: lines of the sheet, and the muscle's moments.

use super::quantities::{rounded, with_minus};
use super::worked_curves::{Constants, active_factor, passive_factor};
use super::worked_names::{load_unit, name_of, row_name};
use super::worked_sheet::WorkedSheet;
use crate::anatomy::{FibreState, TENDON_SLOPE, TOE_END, TOE_FORCE, TOE_SHAPE};
use crate::numeric::Formula;
use crate::study::{WorkedMuscle, WorkedPose};

/// Quantities above the muscles that their lines use.
pub(super) struct Above {
    /// Turn of every row, rad/s; nothing where the pose is held.
    pub turns: Option<Vec<Formula>>,
    /// Range per second, 1/s.
    pub range_speed: f64,
    /// Price of a moment at every row.
    pub prices: Vec<Formula>,
    /// Constants of the fibre curves.
    pub constants: Constants,
}

/// A moment of a muscle at a row.
pub(super) struct MuscleMoment {
    /// The row.
    pub row: usize,
    /// Its line on the sheet.
    pub moment: Formula,
}

/// Below this a force is none, N.
const NOTHING_N: f64 = 1.0e-7;

/// The lines of one muscle; its moments where it pulls.
pub(super) fn muscle(
    sheet: &mut WorkedSheet,
    pose: &WorkedPose,
    muscle: &WorkedMuscle,
    above: &Above,
) -> Vec<MuscleMoment> {
    sheet.heading(3, name_of(muscle));
    let peak = sheet.given("F0", muscle.peak_force_n, ("N", 1), "");
    let fibre = geometry(sheet, muscle);
    let arms = arms(sheet, pose, muscle);
    let (force, gain) = match muscle.giving_tendon {
        None => rigid(sheet, pose, muscle, above, &peak, &fibre, &arms),
        Some(tendon) => giving(sheet, pose, muscle, above, tendon, &peak, &fibre, &arms),
    };
    worth(sheet, muscle, pose, above, gain, &arms);
    if muscle.force_n.abs() < NOTHING_N {
        return Vec::new();
    }
    let name = name_of(muscle);
    arms.into_iter()
        .map(|(row, arm)| {
            let symbol = format!("M({name}, {})", row_name(pose.joints[row].dof));
            let value = muscle.force_n * muscle.arms_m[row];
            let moment = sheet.follows(symbol, force.clone() * arm, value, ("N·m", 2), "");
            MuscleMoment { row, moment }
        })
        .collect()
}

/// Optimal length, thickness and the relaxed projection of the fibres.
struct FibreLines {
    optimal: Formula,
    thickness: Option<Formula>,
    projected: Formula,
}

fn geometry(sheet: &mut WorkedSheet, muscle: &WorkedMuscle) -> FibreLines {
    let optimal = sheet.given("l0", muscle.optimal_m, ("m", 5), "");
    let thickness_m = muscle.optimal_m * muscle.pennation_rad.sin();
    let thickness = (thickness_m > 0.0).then(|| {
        let deg = rounded(muscle.pennation_rad.to_degrees(), 4);
        sheet.given("h", thickness_m, ("m", 5), format!("l0·sin {deg} deg"))
    });
    let relaxed = muscle.relaxed;
    let now_m = relaxed.length_norm * relaxed.cos_pennation * muscle.optimal_m;
    if muscle.at_shortest {
        let projected = sheet.given("p", now_m, ("m", 5), "held at the shortest that counts");
        return FibreLines {
            optimal,
            thickness,
            projected,
        };
    }
    let changed = muscle.shortenings.iter().map(|part| part.by_m);
    let by_m: f64 = changed.filter(|by_m| by_m.abs() > 1.0e-9).sum();
    let reference = sheet.given("l(reference)", muscle.reference_length, ("", 4), "");
    let length = reference * optimal.clone();
    let formula = match &thickness {
        Some(thickness) => (length.square() - thickness.clone().square()).root(),
        None => length,
    };
    let before = sheet.follows("p(reference)", formula, now_m + by_m, ("m", 5), "");
    let mut sum = vec![before];
    let changed = muscle.shortenings.iter();
    for part in changed.filter(|part| part.by_m.abs() > 1.0e-9) {
        let (symbol, meaning) = match part.hinge {
            Some(dof) => (
                format!("Δ({})", row_name(dof)),
                with_minus(&format!(
                    "area under the moment arm from {:.1} to {:.1} deg",
                    part.from_rad.to_degrees() + 0.0,
                    part.to_rad.to_degrees() + 0.0
                )),
            ),
            None => (
                "Δ(shoulder)".to_owned(),
                "how much shorter the line across the shoulder is".to_owned(),
            ),
        };
        sum.push(-sheet.given(symbol, part.by_m, ("m", 5), meaning));
    }
    FibreLines {
        projected: sheet.follows("p", Formula::sum(sum), now_m, ("m", 5), ""),
        optimal,
        thickness,
    }
}

fn arms(
    sheet: &mut WorkedSheet,
    pose: &WorkedPose,
    muscle: &WorkedMuscle,
) -> Vec<(usize, Formula)> {
    let rows = pose.joints.iter().zip(&muscle.arms_m).enumerate();
    let crossed = rows.filter(|(_, (_, arm_m))| **arm_m != 0.0);
    crossed
        .map(|(row, (joint, arm_m))| {
            let symbol = format!("r({})", row_name(joint.dof));
            (row, sheet.given(symbol, *arm_m, ("m", 5), ""))
        })
        .collect()
}

/// Length and cosine of the pennation angle of fibres of this projection.
fn length_and_cosine(
    sheet: &mut WorkedSheet,
    fibre: &FibreLines,
    projected: &Formula,
    state: FibreState,
    mark: &str,
) -> (Formula, Formula) {
    let optimal = fibre.optimal.clone();
    let Some(thickness) = &fibre.thickness else {
        let formula = projected.clone() / optimal;
        let length = sheet.follows(format!("l{mark}"), formula, state.length_norm, ("", 4), "");
        return (
            length,
            sheet.given(format!("cos α{mark}"), 1.0, ("", 0), ""),
        );
    };
    let formula =
        (projected.clone().square() + thickness.clone().square()).root() / optimal.clone();
    let length = sheet.follows(format!("l{mark}"), formula, state.length_norm, ("", 4), "");
    let formula = projected.clone() / (length.clone() * optimal);
    let cosine = sheet.follows(
        format!("cos α{mark}"),
        formula,
        state.cos_pennation,
        ("", 4),
        "",
    );
    (length, cosine)
}

fn speed_factor(
    sheet: &mut WorkedSheet,
    pose: &WorkedPose,
    muscle: &WorkedMuscle,
    above: &Above,
    cosine: &Formula,
    fibre: &FibreLines,
    arms: &[(usize, Formula)],
) -> Formula {
    let (Some(turns), Some(hill), Some((surplus, bend))) = (
        &above.turns,
        &above.constants.hill,
        &above.constants.surplus,
    ) else {
        return sheet.given("fV", 1.0, ("", 0), "held still");
    };
    let mut parts: Vec<Formula> = arms
        .iter()
        .map(|(row, arm)| arm.clone() * turns[*row].clone())
        .collect();
    let mut shortening_m_s: f64 = arms
        .iter()
        .map(|(row, _)| muscle.arms_m[*row] * pose.joints[*row].slope_rad * above.range_speed)
        .sum();
    let blade_m_s = muscle.blade_m * above.range_speed;
    if blade_m_s.abs() > 1.0e-9 {
        let meaning = "what the moving shoulder blade takes up";
        parts.push(-sheet.given("u(blade)", blade_m_s, ("m/s", 5), meaning));
        shortening_m_s -= blade_m_s;
    }
    let speed = sheet.follows("u", Formula::sum(parts), shortening_m_s, ("m/s", 5), "");
    let fastest = sheet.given("vmax", muscle.max_velocity, ("l0 per second", 3), "");
    let v = muscle.active.velocity_norm;
    let formula = speed * cosine.clone() / (fastest * fibre.optimal.clone());
    let velocity = sheet.follows("v", formula, v, ("", 4), "");
    let value = pose.curves.velocity.at(v);
    let formula = if v >= 1.0 {
        return sheet.given("fV", value, ("", 0), "faster than the fibres can");
    } else if v >= 0.0 {
        (Formula::from(1.0) - velocity.clone()) / (Formula::from(1.0) + velocity / hill.clone())
    } else {
        let grown = surplus.clone() * velocity.clone() / (velocity - bend.clone());
        Formula::from(1.0) + grown
    };
    sheet.follows("fV", formula, value, ("", 4), "")
}

fn activation(sheet: &mut WorkedSheet, muscle: &WorkedMuscle) -> Formula {
    sheet.given("a", muscle.activation + 0.0, ("", 4), "")
}

/// Force of a muscle whose tendon keeps its length, and what full activation adds.
fn rigid(
    sheet: &mut WorkedSheet,
    pose: &WorkedPose,
    muscle: &WorkedMuscle,
    above: &Above,
    peak: &Formula,
    fibre: &FibreLines,
    arms: &[(usize, Formula)],
) -> (Formula, Formula) {
    let (curves, constants) = (&pose.curves, &above.constants);
    let state = muscle.active;
    let (length, cosine) = length_and_cosine(sheet, fibre, &fibre.projected, state, "");
    let active = active_factor(sheet, curves, constants, &length, state.length_norm);
    let speed = speed_factor(sheet, pose, muscle, above, &cosine, fibre, arms);
    let passive = passive_factor(sheet, curves, constants, &length, state.length_norm, "");
    let a = activation(sheet, muscle);
    let share = active.clone() * speed.clone();
    let formula = peak.clone() * (a * active * speed + passive) * cosine.clone();
    let force = sheet.follows("F", formula, muscle.force_n, ("N", 1), "");
    (force, peak.clone() * share * cosine)
}

/// The same of one whose tendon gives: fibres and tendon bear one force.
#[allow(clippy::too_many_arguments, reason = "the lines above are many")]
fn giving(
    sheet: &mut WorkedSheet,
    pose: &WorkedPose,
    muscle: &WorkedMuscle,
    above: &Above,
    (slack_m, strain_at_peak): (f64, f64),
    peak: &Formula,
    fibre: &FibreLines,
    arms: &[(usize, Formula)],
) -> (Formula, Formula) {
    let (curves, constants) = (&pose.curves, &above.constants);
    let relaxed = muscle.relaxed;
    let (length, cosine) = length_and_cosine(sheet, fibre, &fibre.projected, relaxed, " relaxed");
    let passive = passive_factor(
        sheet,
        curves,
        constants,
        &length,
        relaxed.length_norm,
        " relaxed",
    );
    let formula = peak.clone() * passive * cosine;
    let at_rest = sheet.follows("F relaxed", formula, muscle.passive_n, ("N", 1), "");
    let full_n = muscle.passive_n + muscle.active_n;
    let projected = stretched(sheet, muscle, (slack_m, strain_at_peak), fibre);
    let state = muscle.active;
    let (length, cosine) = length_and_cosine(sheet, fibre, &projected, state, "");
    let active = active_factor(sheet, curves, constants, &length, state.length_norm);
    let speed = speed_factor(sheet, pose, muscle, above, &cosine, fibre, arms);
    let passive = passive_factor(sheet, curves, constants, &length, state.length_norm, "");
    let formula = peak.clone() * (active * speed + passive) * cosine;
    let full = sheet.follows("F full", formula, full_n, ("N", 1), "");
    let share = full.clone() / peak.clone();
    let meaning = "the same as f above: fibres and tendon bear one force";
    sheet.follows(
        "f again",
        share,
        full_n / muscle.peak_force_n,
        ("", 4),
        meaning,
    );
    let a = activation(sheet, muscle);
    let gain = full - at_rest.clone();
    let formula = at_rest + a * gain.clone();
    let force = sheet.follows("F", formula, muscle.force_n, ("N", 1), "");
    (force, gain)
}

/// The projection of the fibres when the tendon has given as far as full activation stretches it.
fn stretched(
    sheet: &mut WorkedSheet,
    muscle: &WorkedMuscle,
    (slack_m, strain_at_peak): (f64, f64),
    fibre: &FibreLines,
) -> Formula {
    let share = (muscle.passive_n + muscle.active_n) / muscle.peak_force_n;
    let meaning = "force of the fully active muscle over F0, found by trial";
    let f = sheet.given("f", share, ("", 4), meaning);
    let slack = sheet.given("Ls", slack_m, ("m", 4), "slack length of the tendon");
    let most = "strain of the tendon under F0";
    let most = sheet.given("ε0", strain_at_peak, ("", 5), most);
    let strain = crate::anatomy::tendon_strain(share, strain_at_peak);
    let formula = if share <= TOE_FORCE {
        let grown = f * (Formula::from(TOE_SHAPE).exp() - 1.0.into()) / TOE_FORCE.into();
        Formula::from(TOE_END) * most / TOE_SHAPE.into() * (Formula::from(1.0) + grown).ln()
    } else {
        Formula::from(TOE_END) * most.clone() + (f - TOE_FORCE.into()) * most / TENDON_SLOPE.into()
    };
    let strain_line = sheet.follows("ε", formula, strain, ("", 5), "");
    let state = muscle.active;
    let now_m = state.length_norm * state.cos_pennation * muscle.optimal_m;
    let relaxed = muscle.relaxed;
    let relaxed_m = relaxed.length_norm * relaxed.cos_pennation * muscle.optimal_m;
    if (relaxed_m - strain * slack_m - now_m).abs() > 1.0e-9 {
        return sheet.given(
            "p full",
            now_m,
            ("m", 5),
            "held at the shortest that counts",
        );
    }
    let formula = fibre.projected.clone() - strain_line * slack;
    sheet.follows(
        "p full",
        formula,
        now_m,
        ("m", 5),
        "the tendon gives, the fibres are shorter",
    )
}

/// What full activation is worth, and so why the activation is what it is.
fn worth(
    sheet: &mut WorkedSheet,
    muscle: &WorkedMuscle,
    pose: &WorkedPose,
    above: &Above,
    gain: Formula,
    arms: &[(usize, Formula)],
) {
    let priced: Vec<Formula> = arms
        .iter()
        .map(|(row, arm)| above.prices[*row].clone() * arm.clone())
        .collect();
    if priced.is_empty() {
        return;
    }
    let value = worth_of(muscle, pose);
    let unit = load_unit(pose);
    let formula = Formula::sum(priced) * gain;
    sheet.follows("w", formula, value, unit, activation_told(muscle, value));
}

/// What full activation of a muscle adds to the capacity.
pub(super) fn worth_of(muscle: &WorkedMuscle, pose: &WorkedPose) -> f64 {
    let rows = pose.joints.iter().zip(&muscle.arms_m);
    rows.map(|(joint, arm_m)| joint.price * arm_m).sum::<f64>() * muscle.active_n
}

fn activation_told(muscle: &WorkedMuscle, worth: f64) -> &'static str {
    /// A worth that is none, N or N·m.
    const NOTHING: f64 = 1.0e-4;
    if worth > NOTHING && muscle.activation > 1.0 - 1.0e-9 {
        "more of it would hold more, and a = 1 is the most"
    } else if worth < -NOTHING && muscle.activation < 1.0e-9 {
        "it would take capacity away, so it is silent"
    } else if worth.abs() <= NOTHING {
        "a little more or less of it changes nothing"
    } else {
        ""
    }
}
