//! Bands and chains over an ascending lift, and what flattening means.
//!
//! In: a lift under plain weight, with a band, with chains, all equally hard at their hardest place.
//! Out: figures.

use super::cam_poses::cam_poses;
use super::over_range::OverRange;
use super::sheet::{Chart, Sheet};
use super::strength_curve::{load_curves, strength_chart};
use crate::library::MeasuredSticking;
use crate::narrative::cam_words::{CAM_TITLE, MachineFacts, cam_words};
use crate::narrative::evenness_words::{
    STRONG_END, against_plain_words, effort_under, evener_words, flattening_words, region_under,
};
use crate::narrative::figure_words::FigureWords;
use crate::narrative::hardest_words::hardest_part_words;
use crate::plot::{Axis, Extent, LineChart, Panel, Series, Shade};
use crate::study::{AgainstPlain, HeldAndLifted, HungKind, SetupStudy, hollow_stretches};
use crate::units::System;

/// Where a plain weight is hardest held still, with the poses; beside it what is lifted, and what others measured.
#[must_use]
pub fn hardest_part(
    plain: &AgainstPlain,
    beside: &HeldAndLifted,
    measured: Option<&MeasuredSticking>,
    units: System,
) -> Sheet {
    let told = plain.study.told(units);
    let words = hardest_part_words(plain, beside, measured, units);
    let mut chart = strength_chart(told, &words);
    // The whole curve is a figure of its own, and here the load and its hardest part have the room; but where part of it is less
    // sure it is shown whole.
    if hollow_stretches(&plain.study).is_empty() {
        chart.whole = None;
    }
    Sheet::new(Chart::Lines(chart), words.caption).under(&plain.study)
}

/// Plain weight against one setup: both demands under the capacity, the strong end marked.
#[must_use]
pub fn against_plain(lifter: &str, both: &AgainstPlain, units: System) -> Sheet {
    let over = OverRange::new(&both.study, units);
    let ends = AgainstPlain::STRONG_END.map(|range| over.place(range));
    let end = Shade::neutral(ends, STRONG_END);
    both_loads(
        both,
        &against_plain_words(lifter, both, units),
        units,
        Some(end),
        &[],
    )
}

/// Plain weight against one setup on a lift that does not rise: whether it makes effort more even. Effort has a panel of
/// its own, since a band that hangs aslant asks for more than its height over the capacity tells.
#[must_use]
pub fn evener_or_not(
    lifter: &str,
    both: &AgainstPlain,
    facts: MachineFacts<'_>,
    units: System,
) -> Sheet {
    let over = OverRange::new(&both.study, units).by_hung();
    let words = match both.last_kind() {
        HungKind::Cam => cam_words(lifter, both, facts, units),
        _ => evener_words(lifter, both, units),
    };
    let effort = |(index, setup): (usize, &SetupStudy)| {
        let percents: Vec<f64> = setup.effort.iter().map(|e| 100.0 * e).collect();
        let name = effort_under(&both.study.told(units).asked_name(setup));
        Series::new(name, over.points(&percents), over.role(index))
    };
    let series = both.study.setups.iter().enumerate().map(effort);
    let axis = Axis::new("Effort", "%").reaching(Extent::FromZero);
    let panel = Panel::new(axis, series.collect());
    let mut sheet = both_loads(both, &words, units, None, &[panel]);
    let cam = both.study.setups.last();
    let cam = cam.filter(|_| both.last_kind() == HungKind::Cam);
    if let (Chart::Lines(chart), Some(cam)) = (&mut sheet.chart, cam) {
        chart.beside = cam_poses(&over, cam, units);
        CAM_TITLE.clone_into(&mut chart.beside_title);
    }
    sheet
}

fn both_loads(
    both: &AgainstPlain,
    words: &FigureWords,
    units: System,
    marked: Option<Shade>,
    below: &[Panel],
) -> Sheet {
    let over = OverRange::new(&both.study, units).by_hung();
    // Over a cam that follows the curve no stretch is harder than another.
    let is_told = both.last_kind() != HungKind::Cam;
    let hung = both.study.setups.last().and_then(|setup| setup.sticking);
    let hung = hung.filter(|_| is_told);
    let shade =
        hung.map(|sticking| Shade::between(over.region(&sticking), region_under(both.last_kind())));
    let panel = load_curves(&over, "capacity");
    let chart = LineChart {
        shades: shade.into_iter().chain(marked).collect(),
        // Beside two panels the curves have the width.
        whole: over.whole(panel.axis.extent).filter(|_| below.is_empty()),
        ..LineChart::new(over.axis(), [&[panel], below].concat())
    };
    let words = words
        .clone()
        .doubting(&[(both.study.movement_title.as_str(), &both.study)]);
    Sheet::lines(&words, chart).under(&both.study)
}

/// Effort over the range with plain weight, chain, band and both.
#[must_use]
pub fn flattening(lifter: &str, all: &AgainstPlain, units: System) -> Sheet {
    let over = OverRange::new(&all.study, units).by_hung();
    let curve = |(index, setup): (usize, &SetupStudy)| {
        let effort: Vec<f64> = setup.effort.iter().map(|e| 100.0 * e).collect();
        let name = all.study.told(units).asked_name(setup);
        Series::new(name, over.points(&effort), over.role(index))
    };
    let series = all.study.setups.iter().enumerate().map(curve);
    let axis = Axis::new("Effort", "%").reaching(Extent::FromZero);
    let chart = LineChart::new(over.axis(), vec![Panel::new(axis, series.collect())]);
    Sheet::lines(&flattening_words(lifter, all, units), chart).under(&all.study)
}
