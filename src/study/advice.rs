//! What bands and chains do to this lift at all, and what helps where they do not.
//!
//! In: a solved lift and its costs, what bands and chains gain. Out: [`Advice`]. Where pieces that pull down make
//! effort less even, cables, hinged arms and cams are tried on the same lift, and what helps is named.

use super::solve::SolvedLift;
use crate::capacity::{CurveShape, class_of};
use crate::error::{Advice, Instead, Means, Remedy, Result};
use crate::movement::{Carrier, Catch, LoadPoint, PlaneForce};
use crate::overlay::{flattening_percent, spread};
use crate::resistance::{Anchor, Cable, Cam, Item, Lead, LeverMachine, Motion, Setup, Turns};
use crate::setups::CostField;
use crate::units::{Angle, Length, Mass};

/// Flattening that is worth a sentence, %. Assumed: less is lost in the spread between equal bands.
const WORTH_SAYING: f64 = 5.0;

/// The advice for a lift: given where the best setup gains little, or where the lifter weakens towards the
/// end.
pub(super) fn advice(
    lift: &SolvedLift<'_>,
    costs: &CostField,
    gained_percent: f64,
    [best_added_percent, best_helping_percent]: [Option<f64>; 2],
) -> Result<Advice> {
    let class = class_of(&lift.capacity.values());
    let instead = if gained_percent > WORTH_SAYING && class.shape != CurveShape::Descending {
        Instead::NotSought
    } else {
        match (remedies(lift, costs)?, lift.range.carrier) {
            (none, Carrier::Bar) if none.is_empty() && is_under_the_bar(lift) => {
                Instead::NothingSetUp
            }
            (none, Carrier::Body) if none.is_empty() => Instead::MachineOnly,
            (tried, _) => Instead::Tried(tried),
        }
    };
    Ok(Advice {
        best_added_percent,
        best_helping_percent,
        instead,
    })
}

/// Whether the bar is over the face or on the back: a cable or a hinged bar in its place is nothing that anybody sets up.
fn is_under_the_bar(lift: &SolvedLift<'_>) -> bool {
    lift.question().movement.handling.catch == Catch::SafetyArms
}

/// Cables, hinged arms and cams that flatten this lift, best first.
fn remedies(lift: &SolvedLift<'_>, costs: &CostField) -> Result<Vec<Remedy>> {
    let mut found: Vec<Remedy> = Vec::new();
    match lift.range.carrier {
        Carrier::Lever { .. } => found.extend(fitted_cam(lift)?),
        Carrier::Dumbbell => found.extend(best_of_tried(lift, costs, &cables())),
        Carrier::Bar if is_under_the_bar(lift) => {}
        Carrier::Bar => {
            found.extend(best_of_tried(lift, costs, &cables()));
            found.extend(best_of_tried(lift, costs, &hinged_arms(&lift.points)));
        }
        Carrier::Sled { .. } | Carrier::Body => {}
    }
    found.retain(|remedy| remedy.flattening_percent > WORTH_SAYING);
    found.sort_by(|a, b| b.flattening_percent.total_cmp(&a.flattening_percent));
    Ok(found)
}

/// An implement in the place of weights, and where it stands.
type Tried = (Item, Means);

/// Cables to pulleys on a grid: every 20 cm up to 220 cm high, up to 1 m ahead and behind.
fn cables() -> Vec<Tried> {
    let heights = (0..=11).map(|step| 20.0 * f64::from(step));
    heights
        .flat_map(|height_cm| (-5..=5).map(move |step| (height_cm, 20.0 * f64::from(step))))
        .filter_map(|(height_cm, offset_cm)| {
            let [height, offset] = [height_cm, offset_cm].map(Length::from_cm);
            let pulley = Anchor::at(height, offset).ok()?;
            let lead = Lead::Pulley(pulley);
            let cable = Cable::new(Mass::from_kg(10.0), 1.0, 0.0, lead).ok()?;
            let means = Means::Cable { height, offset };
            Some((Item::Cable(cable), means))
        })
        .collect()
}

/// Nearest and farthest that hands hold a hinged arm from its hinge, m. Assumed: a bar of 2.2 m.
const HELD_AT_M: [f64; 2] = [0.3, 2.2];

/// Arms hinged on a grid, up to 1 m high and 2 m ahead or behind, with plates at 2 m in line with the
/// hands: those whose hands stay on the arm.
fn hinged_arms(points: &[LoadPoint]) -> Vec<Tried> {
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
            let [height, offset] = [height_cm, offset_cm].map(Length::from_cm);
            let hinge = Anchor::at(height, offset).ok()?;
            let turns = Turns::AboutPivot {
                pivot: hinge,
                plates_ahead: Angle::from_deg(0.0),
            };
            let arm = LeverMachine::new(Mass::from_kg(10.0), Length::from_m(2.0), turns).ok()?;
            let means = Means::HingedBar { height, offset };
            Some((Item::Lever(arm), means))
        })
        .collect()
}

/// How many of the best by the field are calculated exactly.
const TRIED_EXACTLY: usize = 24;

/// The best of some implements in the place of weights, if it loads every place of the range: the best by
/// the field are laid over the lift exactly, since pulls that lean cost more than the field's tangent says.
fn best_of_tried(lift: &SolvedLift<'_>, costs: &CostField, tried: &[Tried]) -> Option<Remedy> {
    let plain = effort_of(&lift.points, costs, &Setup::plain(Mass::from_kg(10.0)))?;
    let mut by_field: Vec<(f64, &Tried)> = tried
        .iter()
        .filter_map(|tried| {
            let effort = effort_of(&lift.points, costs, &Setup::new("", vec![tried.0.clone()]))?;
            Some((flattening_percent(&effort, &plain)?, tried))
        })
        .collect();
    by_field.sort_by(|a, b| b.0.total_cmp(&a.0));
    by_field
        .into_iter()
        .take(TRIED_EXACTLY)
        .filter_map(|(_, (item, means))| {
            let exact = lift.setup(&Setup::new("", vec![item.clone()])).ok()?;
            Some(Remedy {
                flattening_percent: exact.flattening_percent?,
                means: *means,
            })
        })
        .max_by(|a, b| a.flattening_percent.total_cmp(&b.flattening_percent))
}

/// Effort under a setup in the place of weights, by the field; `None` where it does not load the whole range.
fn effort_of(points: &[LoadPoint], costs: &CostField, setup: &Setup) -> Option<Vec<f64>> {
    let rigged = setup.rigged_over(points);
    let effort: Vec<f64> = points
        .iter()
        .zip(&costs.effort_per_n)
        .map(|(point, [x, z])| {
            let PlaneForce { x_n, z_n } =
                rigged.total_at(point, &costs.carrier, Motion::Hold).force;
            x * x_n + z * z_n
        })
        .collect();
    (effort.iter().all(|e| *e > 0.0) && spread(&effort).is_some()).then_some(effort)
}

/// A cam whose radius follows the lifter's capacity.
fn fitted_cam(lift: &SolvedLift<'_>) -> Result<Option<Remedy>> {
    let Ok(cam) = Cam::fitted(
        &lift.lever_angles(),
        &lift.capacity.values(),
        Length::from_cm(12.0),
    ) else {
        return Ok(None);
    };
    let mut setup = Setup::plain(Mass::from_kg(10.0));
    setup.items.push(Item::Cam(cam));
    let result = lift.setup(&setup)?;
    Ok(result.flattening_percent.map(|flattening_percent| Remedy {
        flattening_percent,
        means: Means::FittedCam,
    }))
}
