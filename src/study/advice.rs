//! What bands and chains do to this lift at all, and what helps where they do not.
//!
//! In: the ground that setups were searched on. Out: sentences. Where pieces that pull down make effort
//! less even, cables, hinged arms and cams are tried on the same ground, and what helps is named.

use super::pick_answer::Picked;
use super::solve::{SolvedLift, load_points};
use crate::capacity::Shape;
use crate::error::Result;
use crate::movement::{Carrier, PlaneForce};
use crate::overlay::{flattening_percent, spread};
use crate::resistance::{Anchor, Cable, Cam, Item, Lead, LeverMachine, Motion, Setup, Turns};
use crate::setups::{Field, Kernel, Rack, STUDIED_SHARES};
use crate::units::{Angle, Length, Mass, rounded};

/// Flattening that is worth a sentence, %. Assumed: less is lost in the spread between equal bands.
const WORTH_SAYING: f64 = 5.0;

/// What bands do to this lift.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Advice {
    /// Best flattening by one pair of bands or chains that only adds load, %.
    pub best_added_percent: Option<f64>,
    /// Best flattening by one pair that takes load away, %.
    pub best_helping_percent: Option<f64>,
    /// Sentences for people.
    pub sentences: Vec<String>,
}

/// The advice for a lift: given where the best setup gains little, or where the lifter weakens towards the
/// end.
pub(super) fn advice(
    ground: &SolvedLift<'_>,
    field: &Field,
    rack: &Rack,
    kernel: &Kernel<'_>,
    first: &Picked,
) -> Result<Advice> {
    let mut advice = Advice {
        best_added_percent: best_of(rack, kernel, false),
        best_helping_percent: best_of(rack, kernel, true),
        sentences: Vec::new(),
    };
    let class = crate::capacity::class_of(&ground.capacity.values());
    let gained = first.flattening_percent;
    if gained > WORTH_SAYING && class.shape != Shape::Descending {
        return Ok(advice);
    }
    advice.sentences.push(advice.best_added_percent.map_or_else(
        || {
            "No pair of bands or chains that adds load can be hung here within the limits."
                .to_owned()
        },
        added_words,
    ));
    advice
        .sentences
        .extend(advice.best_helping_percent.map(helping_words));
    let remedies = remedies(ground, field)?;
    advice.sentences.push(match (remedies.as_slice(), ground.range.carrier) {
        ([], Carrier::Body) => {
            "What would help is a machine for this lift whose cam or lever follows the lifter's strength.".to_owned()
        }
        ([], _) => "No cable or hinged arm that was tried evens this lift out either.".to_owned(),
        (list, _) => format!("What helps instead: {}.", list.join("; ")),
    });
    Ok(advice)
}

/// The best flattening by one pair that helps, or that only adds load, among those that fit and make at
/// least the share that studies began with; among all that fit if none does.
fn best_of(rack: &Rack, kernel: &Kernel<'_>, helps: bool) -> Option<f64> {
    let each: Vec<(f64, f64)> = rack
        .hangings
        .iter()
        .enumerate()
        .filter(|(_, hanging)| hanging.helps == helps)
        .filter_map(|(index, _)| kernel.one(index).ok())
        .collect();
    let counts = each.iter().any(|(_, share)| *share >= STUDIED_SHARES[0]);
    each.into_iter()
        .filter(|(_, share)| !counts || *share >= STUDIED_SHARES[0])
        .map(|(flattening, _)| flattening)
        .max_by(f64::total_cmp)
}

fn added_words(percent: f64) -> String {
    if percent < -0.5 {
        format!(
            "Bands anchored below and chains make this lift less even: they add load towards the end, where the effort is already greatest. The best pair costs {} %.",
            rounded(-percent, 0)
        )
    } else {
        format!(
            "Bands anchored below and chains flatten this lift by {} % at best with one pair.",
            rounded(percent, 0)
        )
    }
}

fn helping_words(percent: f64) -> String {
    if percent < -0.5 {
        format!(
            "A band that takes load away costs {} % at best: it slackens as the load rises and helps least where help is wanted.",
            rounded(-percent, 0)
        )
    } else {
        format!(
            "A band that takes load away (anchored above or aside) flattens it by {} % at best.",
            rounded(percent, 0)
        )
    }
}

/// Cables, hinged arms and cams that flatten this lift, best first, in words.
fn remedies(ground: &SolvedLift<'_>, field: &Field) -> Result<Vec<String>> {
    let mut found: Vec<(f64, String)> = Vec::new();
    match ground.range.carrier {
        Carrier::Lever { .. } => found.extend(fitted_cam(ground)?),
        Carrier::Dumbbell => found.extend(best_of_tried(ground, field, &cables())),
        Carrier::Bar => {
            found.extend(best_of_tried(ground, field, &cables()));
            found.extend(best_of_tried(ground, field, &hinged_arms(ground)));
        }
        Carrier::Sled { .. } | Carrier::Body => {}
    }
    found.retain(|(percent, _)| *percent > WORTH_SAYING);
    found.sort_by(|a, b| b.0.total_cmp(&a.0));
    Ok(found
        .into_iter()
        .map(|(percent, words)| format!("{words} (flattens by {} %)", rounded(percent, 0)))
        .collect())
}

/// An implement in the place of weights, in words.
type Tried = (Item, String);

/// Cables to pulleys on a grid: every 20 cm up to 220 cm high, up to 1 m ahead and behind.
fn cables() -> Vec<Tried> {
    let heights = (0..=11).map(|step| 20.0 * f64::from(step));
    heights
        .flat_map(|height_cm| (-5..=5).map(move |step| (height_cm, 20.0 * f64::from(step))))
        .filter_map(|(height_cm, offset_cm)| {
            let pulley = Anchor::at(Length::from_cm(height_cm), Length::from_cm(offset_cm)).ok()?;
            let lead = Lead::Pulley(pulley);
            let cable = Cable::new(Mass::from_kg(10.0), 1.0, 0.0, lead).ok()?;
            let words = format!(
                "a cable to a pulley {}, {}",
                high(height_cm),
                aside(offset_cm)
            );
            Some((Item::Cable(cable), words))
        })
        .collect()
}

/// Nearest and farthest that hands hold a hinged arm from its hinge, m. Assumed: a bar of 2.2 m.
const HELD_AT_M: [f64; 2] = [0.3, 2.2];

/// Arms hinged on a grid, up to 1 m high and 2 m ahead or behind, with plates at 2 m in line with the
/// hands: those whose hands stay on the arm.
fn hinged_arms(ground: &SolvedLift<'_>) -> Vec<Tried> {
    let points = load_points(&ground.range);
    let start_x_m = points.first().map_or(0.0, |point| point.x_m);
    let heights = (0..=5).map(|step| 20.0 * f64::from(step));
    heights
        .flat_map(|height_cm| (-10..=10).map(move |step| (height_cm, 20.0 * f64::from(step))))
        .filter(|(height_cm, offset_cm)| {
            points.iter().all(|point| {
                let x_m = point.x_m - start_x_m - offset_cm / 100.0;
                let held_m = x_m.hypot(point.z_m - height_cm / 100.0);
                (HELD_AT_M[0]..=HELD_AT_M[1]).contains(&held_m)
            })
        })
        .filter_map(|(height_cm, offset_cm)| {
            let hinge = Anchor::at(Length::from_cm(height_cm), Length::from_cm(offset_cm)).ok()?;
            let turns = Turns::AboutPivot {
                pivot: hinge,
                plates_ahead: Angle::from_deg(0.0),
            };
            let arm = LeverMachine::new(Mass::from_kg(10.0), Length::from_m(2.0), turns).ok()?;
            let words = format!(
                "a bar hinged at one end {}, {}, its plates at the other end",
                high(height_cm),
                aside(offset_cm)
            );
            Some((Item::Lever(arm), words))
        })
        .collect()
}

fn high(height_cm: f64) -> String {
    if height_cm == 0.0 {
        "on the floor".to_owned()
    } else {
        format!("{} cm high", rounded(height_cm, 0))
    }
}

fn aside(offset_cm: f64) -> String {
    match offset_cm {
        0.0 => "straight above or below the start".to_owned(),
        cm if cm > 0.0 => format!("{} cm ahead (or outward)", rounded(cm, 0)),
        cm => format!("{} cm behind (or inward)", rounded(-cm, 0)),
    }
}

/// How many of the best by the field are calculated exactly.
const TRIED_EXACTLY: usize = 24;

/// The best of some implements in the place of weights, if it loads every place of the range: the best by
/// the field are laid over the lift exactly, since pulls that lean cost more than the field's tangent says.
fn best_of_tried(ground: &SolvedLift<'_>, field: &Field, tried: &[Tried]) -> Option<(f64, String)> {
    let plain = effort_of(ground, field, &Setup::plain(Mass::from_kg(10.0)))?;
    let mut by_field: Vec<(f64, &Tried)> = tried
        .iter()
        .filter_map(|tried| {
            let effort = effort_of(ground, field, &Setup::new("", vec![tried.0.clone()]))?;
            Some((flattening_percent(&effort, &plain)?, tried))
        })
        .collect();
    by_field.sort_by(|a, b| b.0.total_cmp(&a.0));
    by_field
        .into_iter()
        .take(TRIED_EXACTLY)
        .filter_map(|(_, (item, words))| {
            let exact = ground.setup(&Setup::new("", vec![item.clone()])).ok()?;
            Some((exact.flattening_percent?, words.clone()))
        })
        .max_by(|a, b| a.0.total_cmp(&b.0))
}

/// Effort under a setup by the field; `None` where it does not load the whole range.
fn effort_of(ground: &SolvedLift<'_>, field: &Field, setup: &Setup) -> Option<Vec<f64>> {
    let points = load_points(&ground.range);
    let rigged = ground.loaded(setup).rigged_over(&points);
    let effort: Vec<f64> = points
        .iter()
        .zip(&field.effort_per_n)
        .map(|(point, [x, z])| {
            let PlaneForce { x_n, z_n } =
                rigged.total_at(point, &field.carrier, Motion::Hold).force;
            x * x_n + z * z_n
        })
        .collect();
    (effort.iter().all(|e| *e > 0.0) && spread(&effort).is_some()).then_some(effort)
}

/// A cam whose radius follows the lifter's capacity.
fn fitted_cam(ground: &SolvedLift<'_>) -> Result<Option<(f64, String)>> {
    let points = load_points(&ground.range);
    let angles: Vec<Angle> = points
        .iter()
        .map(|point| Angle::from_rad(point.lever_rad))
        .collect();
    let Ok(cam) = Cam::fitted(&angles, &ground.capacity.values(), Length::from_cm(12.0)) else {
        return Ok(None);
    };
    let mut setup = Setup::plain(Mass::from_kg(10.0));
    setup.items.push(Item::Cam(cam));
    let result = ground.setup(&setup)?;
    Ok(result.flattening_percent.map(|percent| {
        (
            percent,
            "a machine whose cam follows the lifter's strength".to_owned(),
        )
    }))
}
