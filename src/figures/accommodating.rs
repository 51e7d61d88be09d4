//! Sticking region, bands and chains over an ascending lift, and what flattening means.
//!
//! In: a lift with plain weight, with a band, with a chain, all equally hard at their hardest place.
//! Out: figures.

use super::desk::{Desk, HARD_EFFORT};
use super::sheet::{Chart, Sheet};
use super::strength_curve::{self, ceiling, force_axis, level_axis, points, shown};
use crate::error::{Error, Result};
use crate::grammar::{band_from_text, chain_from_text};
use crate::narrative::name_of;
use crate::narrative::prose::{listed, percent};
use crate::plot::{Axis, Extent, Heading, LineChart, Panel, Role, Series, Shade};
use crate::resistance::{Item, Setup};
use crate::study::{SetupStudy, Study};
use crate::units::rounded;

/// The ascending lift on which bands and chains are shown.
const LIFT: &str = "bench-press";
/// Bands from strong to weak; the first that leaves a fair part of the load to the bar is shown.
const BANDS: [&str; 3] = ["loop-22mm:1", "loop-14mm:1", "loop-6mm:1"];
/// Chains from heavy to light, two a side.
const CHAINS: [&str; 4] = [
    "chain-16mm:2",
    "chain-13mm:2",
    "chain-10mm:2",
    "chain-8mm:2",
];
/// Share of the plain weight that must stay on the bar (common practice: bands and chains make 15-35 % of
/// the load at the top, more at most half).
const LEAST_ON_BAR: f64 = 0.5;

/// Where a plain weight is hardest, with the poses.
pub fn sticking_region(desk: &Desk<'_>) -> Result<Sheet> {
    let study = desk.under(LIFT, &[plain(desk)?])?;
    let chart = strength_curve::chart(&study, desk.units);
    Ok(Sheet::new(
        Chart::Lines(chart),
        "Effort is demand over capacity. Around its greatest value lies the sticking region: the load passes there or \
         the lift fails. It says nothing about the rest of the range, where the same load is light.",
    ))
}

/// A band over the ascending class.
pub fn band_over_ascending(desk: &Desk<'_>) -> Result<Sheet> {
    let band = band(desk)?;
    let caption = "A band pulls harder the farther it is stretched: the load grows with the strength of the lifter. The \
                   bar is lighter so that the hardest place is as hard as with plain weight.";
    compared(desk, band, "band", caption)
}

/// A chain over the ascending class.
pub fn chain_over_ascending(desk: &Desk<'_>) -> Result<Sheet> {
    let chain = chain(desk)?;
    let caption = "A chain weighs more with every link that leaves the floor: its load grows in a straight line with \
                   height, without the jerk of a band.";
    compared(desk, chain, "chain", caption)
}

fn plain(desk: &Desk<'_>) -> Result<Setup> {
    let mut plain = desk.hard(LIFT, Vec::new())?;
    plain.name = "plain weight".to_owned();
    Ok(plain)
}

fn band(desk: &Desk<'_>) -> Result<Setup> {
    let bands: Vec<Vec<&str>> = BANDS.iter().map(|band| vec![*band]).collect();
    fitting(desk, &bands, "with band")
}

fn chain(desk: &Desk<'_>) -> Result<Setup> {
    let chains: Vec<Vec<&str>> = CHAINS.iter().map(|chain| vec![*chain]).collect();
    fitting(desk, &chains, "with chain")
}

/// The strongest band that leaves room for a chain beside it.
fn band_and_chain(desk: &Desk<'_>) -> Result<Setup> {
    let pairs: Vec<Vec<&str>> = BANDS
        .iter()
        .flat_map(|band| CHAINS.map(|chain| vec![*band, chain]))
        .collect();
    fitting(desk, &pairs, "band and chain")
}

/// The first of the choices that leaves enough on the bar, else the last one that can be lifted.
///
/// **Fails** when none of them can be lifted, with the reason of the last.
fn fitting(desk: &Desk<'_>, choices: &[Vec<&str>], name: &str) -> Result<Setup> {
    let pieces = desk.models.pieces()?;
    let stock = pieces.stock();
    let carrier = desk.lift(LIFT)?.study.range.carrier;
    let least_kg = LEAST_ON_BAR * plain(desk)?.plain_mass(&carrier).as_kg();
    let item = |text: &&str| -> Result<Item> {
        if CHAINS.contains(text) {
            Ok(Item::Chain(chain_from_text(text, &stock)?))
        } else {
            Ok(Item::Band(band_from_text(text, &stock)?))
        }
    };
    let mut last = Err(Error::bad("no band or chain to choose from"));
    for choice in choices {
        let items = choice.iter().map(item).collect::<Result<Vec<_>>>()?;
        match desk.hard(LIFT, items) {
            Ok(mut setup) => {
                setup.name = name.to_owned();
                if setup.plain_mass(&carrier).as_kg() >= least_kg {
                    return Ok(setup);
                }
                last = Ok(setup);
            }
            Err(error) if last.is_err() => last = Err(error),
            Err(_) => {}
        }
    }
    last
}

/// Plain weight against one setup: both demands under the capacity.
fn compared(desk: &Desk<'_>, setup: Setup, what: &str, caption: &str) -> Result<Sheet> {
    let parts: Vec<String> = setup.items.iter().map(Item::in_words).collect();
    let plain = plain(desk)?;
    let plain_parts: Vec<String> = plain.items.iter().map(Item::in_words).collect();
    let study = desk.under(LIFT, &[plain, setup])?;
    let gained = share_gained(&study.setups);
    let [plain_end, setup_end] = [0, 1].map(|i| end_share(&study, &study.setups[i]));
    let chart = LineChart {
        heading: Heading {
            title: format!(
                "A {what} loads the strong end: effort there {} instead of {}",
                percent(setup_end),
                percent(plain_end)
            ),
            subtitle: format!(
                "{}, {}: {} against {}",
                desk.who(),
                study.movement_title.to_lowercase(),
                parts.join(" + "),
                plain_parts.join(" + ")
            ),
            footnote: format!(
                "Both loads take {} of what the lifter has at their hardest place. Flattening of effort over the range: \
                 {} %.",
                percent(HARD_EFFORT),
                rounded(gained, 0)
            ),
            description: format!(
                "{} Effort from 80 to 90 % of the range is {} with the {what} and {} with plain weight.",
                strength_curve::description(&study, desk.units),
                percent(setup_end),
                percent(plain_end)
            ),
            ..super::phrases()
        },
        x: level_axis(&study, desk.units),
        panels: vec![demand_panel(desk, &study)],
        shades: shades(desk, &study),
        ..LineChart::default()
    };
    Ok(Sheet::new(Chart::Lines(chart), caption))
}

/// What a setup is called in the figure.
fn named(desk: &Desk<'_>, study: &Study, setup: &SetupStudy) -> String {
    name_of(study, setup, desk.units)
}

fn demand_panel(desk: &Desk<'_>, study: &Study) -> Panel {
    let curve = |name: &str, values: &[f64], role| Series {
        name: name.to_owned(),
        points: points(study, desk.units, &shown(study, desk.units, values)),
        role,
    };
    let capacity = study.capacity.values();
    let mut series = vec![curve("capacity", &capacity, Role::CAPACITY)];
    for (index, setup) in study.setups.iter().enumerate() {
        series.push(curve(
            &named(desk, study, setup),
            &setup.values,
            Role::Series(index + 1),
        ));
    }
    let demands = study
        .setups
        .iter()
        .flat_map(|setup| shown(study, desk.units, &setup.values));
    let top = ceiling(
        &shown(study, desk.units, &capacity),
        demands.fold(0.0, f64::max),
    );
    Panel {
        axis: force_axis(study, desk.units).reaching(top),
        series,
        ..Panel::default()
    }
}

/// The sticking region of the last setup, which the figure is about.
fn shades(desk: &Desk<'_>, study: &Study) -> Vec<Shade> {
    let last = study.setups.last().and_then(|setup| setup.sticking);
    last.map(|sticking| Shade {
        from: strength_curve::across(study, desk.units, sticking.from_range),
        to: strength_curve::across(study, desk.units, sticking.to_range),
        label: format!(
            "Sticking region {}",
            named(desk, study, &study.setups[study.setups.len() - 1])
        ),
    })
    .into_iter()
    .collect()
}

/// Mean effort from 80 to 90 % of the range: the strong end, short of lockout.
fn end_share(study: &Study, setup: &SetupStudy) -> f64 {
    let efforts: Vec<f64> = study
        .range
        .poses
        .iter()
        .zip(&setup.effort)
        .filter(|(pose, _)| (0.8..=0.9).contains(&pose.load.range))
        .map(|(_, effort)| *effort)
        .collect();
    efforts.iter().sum::<f64>() / efforts.len().max(1) as f64
}

/// Flattening of the second setup against the first, %.
fn share_gained(setups: &[SetupStudy]) -> f64 {
    setups[1].flattening_percent.unwrap_or(0.0) - setups[0].flattening_percent.unwrap_or(0.0)
}

/// Effort over the range with plain weight, chain, band and both.
pub fn flattening(desk: &Desk<'_>) -> Result<Sheet> {
    let both = band_and_chain(desk)?;
    let study = desk.under(LIFT, &[plain(desk)?, chain(desk)?, band(desk)?, both])?;
    let told: Vec<String> = study
        .setups
        .iter()
        .skip(1)
        .map(|setup| {
            let percent = rounded(setup.flattening_percent.unwrap_or(0.0), 0);
            let name = named(desk, &study, setup);
            let name = name.trim_start_matches("with ");
            let name = if name.contains(" and ") { "both" } else { name };
            format!("{name} {percent} %")
        })
        .collect();
    let series = study.setups.iter().enumerate().map(|(index, setup)| {
        let effort: Vec<f64> = setup.effort.iter().map(|e| 100.0 * e).collect();
        Series {
            name: named(desk, &study, setup),
            points: points(&study, desk.units, &effort),
            role: if index == 0 {
                Role::Reference
            } else {
                Role::Series(index)
            },
        }
    });
    let chart = LineChart {
        heading: Heading {
            title: format!("Flattening against plain weight: {}", told.join(", ")),
            subtitle: format!(
                "{}, {}: effort over the range, {} at every hardest place",
                desk.who(),
                study.movement_title.to_lowercase(),
                percent(HARD_EFFORT)
            ),
            footnote: "Flattening: by how much the spread of effort (standard deviation over mean) is smaller than with \
                       plain weight; 100 % would be a level line."
                .to_owned(),
            description: format!(
                "Effort over the {} for four loads of equal hardest place. Flattening against plain weight: {}.",
                study.axis,
                listed(&told)
            ),
..super::phrases()
},
        x: level_axis(&study, desk.units),
        panels: vec![Panel {
            axis: Axis::new("Effort", "%").reaching(Extent::FromZero),
            series: series.collect(),
            ..Panel::default()
        }],
        ..LineChart::default()
    };
    Ok(Sheet::new(
        Chart::Lines(chart),
        "The flatter the line, the more of the range is trained hard. How much is gained depends on the lift and on the \
         share of the load that bands and chains take.",
    ))
}
