//! Why the first setup wins, and what bands and chains do to this lift at all.
//!
//! In: the ranked setups, the ground they were searched on. Out: sentences. Where pieces that pull down
//! make effort less even, cables and cams are tried on the same ground, and what helps is named.

use super::picked::Picked;
use super::study::{Ground, Study, load_points};
use crate::capacity::Shape;
use crate::error::Result;
use crate::movement::{Carrier, PlaneForce};
use crate::overlay::{flattening_percent, spread};
use crate::resistance::{Anchor, Cable, Cam, Item, Lead, Motion, Setup};
use crate::setups::{Field, Goal, Kernel, Rack, STUDIED_SHARES, Wish};
use crate::units::{Angle, Length, Mass, System, rounded};

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
    ground: &Ground<'_>,
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
        ([], _) => "No cable that was tried evens this lift out either.".to_owned(),
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

/// Cables and cams that flatten this lift, best first, in words.
fn remedies(ground: &Ground<'_>, field: &Field) -> Result<Vec<String>> {
    let mut found: Vec<(f64, String)> = Vec::new();
    match ground.range.carrier {
        Carrier::Lever { .. } => found.extend(fitted_cam(ground)?),
        Carrier::Dumbbell | Carrier::Bar => found.extend(best_cable(ground, field, &pulleys())),
        Carrier::Sled { .. } | Carrier::Body => {}
    }
    found.retain(|(percent, _)| *percent > WORTH_SAYING);
    found.sort_by(|a, b| b.0.total_cmp(&a.0));
    Ok(found
        .into_iter()
        .map(|(percent, words)| format!("{words} (flattens by {} %)", rounded(percent, 0)))
        .collect())
}

/// A pulley to which a cable may lead, in words.
type Led = (Lead, String);

/// Pulleys on a grid: every 20 cm up to 220 cm high, up to 1 m ahead and behind.
fn pulleys() -> Vec<Led> {
    let heights = (0..=11).map(|step| 20.0 * f64::from(step));
    heights
        .flat_map(|height_cm| (-5..=5).map(move |step| (height_cm, 20.0 * f64::from(step))))
        .filter_map(|(height_cm, offset_cm)| {
            let anchor = Anchor::at(Length::from_cm(height_cm), Length::from_cm(offset_cm)).ok()?;
            let aside = match offset_cm {
                0.0 => "straight above or below the start".to_owned(),
                cm if cm > 0.0 => format!("{} cm ahead (or outward)", rounded(cm, 0)),
                cm => format!("{} cm behind (or inward)", rounded(-cm, 0)),
            };
            let words = format!(
                "a cable to a pulley {} cm high, {aside}",
                rounded(height_cm, 0)
            );
            Some((Lead::Pulley(anchor), words))
        })
        .collect()
}

/// The best of some cables in the place of weights, if it loads every place of the range.
fn best_cable(ground: &Ground<'_>, field: &Field, cables: &[Led]) -> Option<(f64, String)> {
    let plain = effort_of(ground, field, &Setup::plain(Mass::from_kg(10.0)))?;
    cables
        .iter()
        .filter_map(|(lead, words)| {
            let cable = Cable::new(Mass::from_kg(10.0), 1.0, 0.0, *lead).ok()?;
            let effort = effort_of(ground, field, &Setup::new("", vec![Item::Cable(cable)]))?;
            Some((flattening_percent(&effort, &plain)?, words.clone()))
        })
        .max_by(|a, b| a.0.total_cmp(&b.0))
}

/// Effort under a setup by the field; `None` where it does not load the whole range.
fn effort_of(ground: &Ground<'_>, field: &Field, setup: &Setup) -> Option<Vec<f64>> {
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
fn fitted_cam(ground: &Ground<'_>) -> Result<Option<(f64, String)>> {
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

/// Why the first setup wins, in a sentence or two.
pub(super) fn reason(
    study: &Study,
    wish: &Wish,
    plain: Option<&Picked>,
    first: &Picked,
    units: System,
) -> String {
    let won = match &wish.goal {
        Goal::Flattest => "it evens effort out most".to_owned(),
        Goal::MostLoad { at, .. } => format!(
            "it allows the most load at {} of the range",
            rounded(*at, 2)
        ),
        Goal::Share { share, at } => format!(
            "its share of bands and chains at {} of the range is nearest to {} %",
            rounded(*at, 2),
            rounded(100.0 * share, 0)
        ),
        Goal::Profile(_) => "its effort is nearest to the profile".to_owned(),
    };
    let flattening = first.flattening_percent;
    let Some(plain) = plain else {
        return format!(
            "Number 1 is first because {won} (flattening {} %).",
            rounded(flattening, 0)
        );
    };
    if first.hung == 0 {
        return format!(
            "Number 1 is first because {won}: no band or chain of this gym does better than plain weight."
        );
    }
    let change = |index: usize| {
        let kg = first.loads[index].as_kg() - plain.loads[index].as_kg();
        let word = if kg < 0.0 { "lighter" } else { "heavier" };
        format!("{} {word}", units.mass(Mass::from_kg(kg.abs())))
    };
    let mut words = format!(
        "Number 1 is first because {won}: {} % flatter than plain weight. Against {} of plain weight at the same hardest effort it is {} at the start and {} at the end",
        rounded(flattening, 0),
        units.mass(plain.plain_mass),
        change(0),
        change(2)
    );
    if let (Some(before), Some(after)) = (plain.study.sticking, first.study.sticking) {
        let far = (before.point_range - after.point_range).abs() > 0.02;
        if far {
            words += &format!(
                ", and the hardest place moves from {} to {}",
                study.place_in_words(before.point_range, units),
                study.place_in_words(after.point_range, units)
            );
        }
    }
    words + "."
}
