//! A worked pose as a sheet that a student can follow with a pocket calculator.
//!
//! In: a [`WorkedPose`], units. Out: headings, sentences and equations, in the order of the calculation.

use super::implements::item_in_words;
use super::quantities::{QuantityWords, rounded, with_minus};
use super::worked_curves::constants;
use super::worked_fibres::{Above, MuscleMoment, muscle};
use super::worked_limits::limits;
use super::worked_loads::{demand, in_us_units};
use super::worked_names::{name_of, row_name};
use super::worked_sheet::{SheetLine, WorkedSheet};
use super::worked_statics::{RowSums, StaticsAbove, capacity, conditions, limbs, reactions, rows};
use crate::anatomy::{ActiveForceLength, Curves, TENDON_SLOPE, TOE_END, TOE_FORCE, TOE_SHAPE};
use crate::capacity::Pace;
use crate::movement::Measure;
use crate::numeric::Formula;
use crate::study::WorkedPose;
use crate::units::{Length, STANDARD_GRAVITY_M_S2, System};

/// Heading of the lines that say how a sheet was made.
pub const MADE_HEADING: &str = "How this sheet was made";

/// The sheet of a worked pose.
#[must_use]
pub fn worked_sheet(pose: &WorkedPose, units: System) -> Vec<SheetLine> {
    let mut sheet = WorkedSheet::default();
    head(&mut sheet, pose, units);
    let (g, angles) = angles(&mut sheet, pose);
    let (turns, range_speed) = speeds(&mut sheet, pose);
    sheet.heading(2, "Curves of the fibres");
    sheet.sentence(curves_told(&pose.curves));
    let constants = constants(&mut sheet, &pose.curves, turns.is_some());
    let prices = prices(&mut sheet, pose);
    let above = Above {
        turns,
        range_speed,
        prices: prices.clone(),
        constants,
    };
    let moments = muscles(&mut sheet, pose, &above);
    sheet.heading(2, "Limbs");
    sheet.sentence(
        "x is how far a limb's centre of mass rises for a turn of the angle by 1 rad, all other angles kept: \
         at a hinge the level distance from joint to centre of mass.",
    );
    let limbs = limbs(&mut sheet, pose, &g);
    let pushed = if pose.reactions.is_empty() {
        Vec::new()
    } else {
        sheet.heading(2, "Surroundings");
        sheet.sentence(
            "What floor, bench, plate or bar give back, one side, as the programme finds it best; \
             their limits follow below the capacity.",
        );
        reactions(&mut sheet, pose)
    };
    sheet.heading(2, "Moments by joint");
    let sums = rows(
        &mut sheet,
        pose,
        &StaticsAbove {
            moments: &moments,
            limbs: &limbs,
            angles: &angles,
            reactions: &pushed,
        },
    );
    let capacity = statics(&mut sheet, pose, &sums, &pushed);
    sheet.heading(2, "Which joint gives way first");
    sheet.sentence(
        "E is a joint's price times the moment of its muscles: one per cent more of that moment adds about one per \
         cent of E to the capacity.",
    );
    limits(&mut sheet, pose, &sums, &prices);
    let demand = demand(&mut sheet, pose, &g, &capacity, units);
    if units == System::Us {
        in_us_units(&mut sheet, pose, &capacity, demand);
    }
    sheet.lines()
}

fn head(sheet: &mut WorkedSheet, pose: &WorkedPose, units: System) {
    sheet.heading(1, title(pose, units));
    sheet.sentence(
        "Every line follows from digits that are printed above it, to a unit of its last digit, since what is printed \
         is rounded; a quantity without a formula is given by the model. Angles are 0 in the anatomical position; flexion, abduction, horizontal adduction and \
         dorsiflexion are positive. A moment is positive where it turns its angle up.",
    );
    let sides = match (pose.measure, pose.sides.count() > 1.0) {
        (Measure::Force, true) => {
            "The load is of both sides together; limbs, muscles and moments are of one side."
        }
        (Measure::Torque, true) => {
            "Loads are of both sides together; limbs, muscles and moments, the capacity too, are of one side."
        }
        (_, false) => "Everything is of one side.",
    };
    sheet.sentence(sides);
}

/// What is worked: movement, lifter, load, place, speed.
fn title(pose: &WorkedPose, units: System) -> String {
    let mut parts = vec![pose.movement_title.clone(), pose.lifter_title.clone()];
    if let Some(load) = &pose.load {
        let items = load.setup.items.iter();
        let words: Vec<String> = items.map(|item| item_in_words(item, units)).collect();
        parts.push(words.join(" + "));
    }
    let place = match pose.measure {
        Measure::Force => units.short_length(Length::from_m(pose.travel_m.abs())),
        Measure::Torque => {
            let deg = rounded(pose.joints[0].angle_rad.to_degrees(), 1);
            format!("{} deg", with_minus(&deg))
        }
    };
    parts.push(format!("{place} {}", pose.away_from));
    parts.push(match pose.pace {
        Pace::Isometric => "held still".to_owned(),
        Pace::Linear(m_s) if m_s < 0.0 => format!("lowered at {} m/s", rounded(-m_s, 2)),
        Pace::Linear(m_s) => format!("lifted at {} m/s", rounded(m_s, 2)),
        Pace::Angular(rad_s) if rad_s < 0.0 => {
            format!("lowered at {} deg/s", rounded(-rad_s.to_degrees(), 0))
        }
        Pace::Angular(rad_s) => format!("lifted at {} deg/s", rounded(rad_s.to_degrees(), 0)),
    });
    parts.join(", ")
}

fn angles(sheet: &mut WorkedSheet, pose: &WorkedPose) -> (Formula, Vec<Formula>) {
    sheet.heading(2, "Pose");
    sheet.given(
        "s",
        pose.range,
        ("", 4),
        "place in the range, 0 at its start and 1 at its end",
    );
    if pose.measure == Measure::Force {
        let meaning = "travel of the load since the start";
        sheet.given("way", pose.travel_m, ("m", 4), meaning);
    }
    let joints = pose.joints.iter();
    let angles = joints.map(|joint| {
        let symbol = format!("q({})", row_name(joint.dof));
        sheet.given(symbol, joint.angle_rad.to_degrees() + 0.0, ("deg", 2), "")
    });
    let angles = angles.collect();
    for (dof, angle_rad) in &pose.standing {
        let symbol = format!("q({})", row_name(*dof));
        sheet.given(symbol, angle_rad.to_degrees() + 0.0, ("deg", 2), "stands");
    }
    let g = sheet.given("g", STANDARD_GRAVITY_M_S2, ("m/s²", 5), "gravity");
    (g, angles)
}

/// How fast the joints turn, if they do; and the range per second.
fn speeds(sheet: &mut WorkedSheet, pose: &WorkedPose) -> (Option<Vec<Formula>>, f64) {
    let range_speed = match pose.pace {
        Pace::Isometric => return (None, 0.0),
        Pace::Linear(m_s) => m_s / pose.way_m,
        Pace::Angular(rad_s) => rad_s / pose.joints[0].slope_rad.abs(),
    };
    sheet.heading(2, "Speeds");
    let speed = match pose.pace {
        Pace::Linear(m_s) => {
            Some(sheet.given("V", m_s, ("m/s", 3), "speed of the load, lifting positive"))
        }
        _ => None,
    };
    let turns = pose.joints.iter().map(|joint| {
        let at = row_name(joint.dof);
        let value = joint.slope_rad * range_speed;
        let symbol = format!("ω({at})");
        let Some(speed) = &speed else {
            return sheet.given(symbol, value, ("rad/s", 4), "turn of the joint");
        };
        let per_m = joint.slope_rad / pose.way_m;
        let turn = sheet.given(format!("κ({at})"), per_m, ("rad/m", 4), "turn per metre");
        sheet.follows(symbol, turn * speed.clone(), value, ("rad/s", 4), "")
    });
    let turns = turns.collect();
    (Some(turns), range_speed)
}

fn prices(sheet: &mut WorkedSheet, pose: &WorkedPose) -> Vec<Formula> {
    sheet.heading(2, "Prices");
    sheet.sentence(
        "The activations below are those that hold most: a linear programme finds them, and with them the price y \
         of a moment at every row, which is how much capacity one newton metre more there would add. A muscle whose \
         w, its worth at these prices, is above 0 is fully active, one below 0 silent.",
    );
    let unit = match pose.measure {
        Measure::Force => ("N per N·m", 4),
        Measure::Torque => ("", 4),
    };
    let joints = pose.joints.iter();
    joints
        .map(|joint| {
            let symbol = format!("y({})", row_name(joint.dof));
            sheet.given(symbol, joint.price + 0.0, unit, "")
        })
        .collect()
}

fn muscles(sheet: &mut WorkedSheet, pose: &WorkedPose, above: &Above) -> Vec<MuscleMoment> {
    sheet.heading(2, "Muscles");
    sheet.sentence(
        "F0 is the maximal isometric force, l0 the optimal fibre length, h the thickness of a pennate muscle. p is the \
         fibres' length along the tendon: in a pose of reference, less what each joint has shortened it since (Δ). \
         l = fibre length over l0, α the pennation angle, a the activation, F the force along the tendon, \
         r a moment arm, M a moment.",
    );
    let all = pose.muscles.iter();
    let silent = all.clone().filter(|m| m.force_n.abs() < 1.0e-7).count();
    if silent > 0 {
        let names: Vec<String> = all
            .filter(|m| m.force_n.abs() < 1.0e-7)
            .map(name_of)
            .collect();
        sheet.sentence(format!("Without force here: {}.", names.join(", ")));
    }
    let lines = pose.muscles.iter();
    lines
        .flat_map(|one| muscle(sheet, pose, one, above))
        .collect()
}

fn statics(
    sheet: &mut WorkedSheet,
    pose: &WorkedPose,
    sums: &[RowSums],
    pushed: &[Formula],
) -> Formula {
    sheet.heading(2, "Capacity");
    sheet.sentence(match pose.measure {
        Measure::Force => {
            "d is the load's lever: how far the load gives way for a turn of the angle by 1 rad, all other angles \
             kept, which by virtual work is the moment that one newton of load asks for. What is left at a joint \
             over its lever is the load that it holds."
        }
        Measure::Torque => {
            "The capacity is the moment that is left for the load, positive in the direction of the movement."
        }
    });
    let capacity = capacity(sheet, pose, sums);
    if !pose.reactions.is_empty() {
        sheet.heading(2, "Limits of the surroundings at this load");
        conditions(sheet, pose, &capacity, pushed);
    }
    capacity
}

/// What the factors are, and the formula of the active one in symbols.
fn curves_told(curves: &Curves) -> String {
    let bell = |n: u8| format!("b1({n})·exp(−0.5·((l − b2({n}))/(b3({n}) + b4({n})·l))²)");
    let active = match &curves.active {
        ActiveForceLength::Bells(bells) => {
            let bells: Vec<String> = (1..).zip(bells).map(|(n, _)| bell(n)).collect();
            bells.join(" + ")
        }
        ActiveForceLength::Parabola { .. } => "1 − ((l − 1)/half width)²".to_owned(),
        ActiveForceLength::Gaussian { .. } => "exp(−(l − 1)²/γ)".to_owned(),
    };
    format!(
        "fL = {active} is the share of F0 that a fully active fibre makes at its length l; fP is what it makes when it \
         is only stretched, fV what speed leaves of fL. A tendon that gives is strained by ε under the share f of F0: in its \
         toe, to f = {toe_force}, ε = {toe_end}·ε0/{toe_shape}·ln(1 + f·(exp({toe_shape}) − 1)/{toe_force}), then ε = \
         {toe_end}·ε0 + (f − {toe_force})·ε0/{slope}; ε0 is its strain under F0, the numbers are those of its published \
         curve.",
        toe_force = TOE_FORCE,
        toe_end = TOE_END,
        toe_shape = TOE_SHAPE,
        slope = TENDON_SLOPE,
    )
}
