//! A strength curve as a table and in sentences: heads, cells, class, hardest place.
//!
//! In: a [`Study`], one of its setups or none, units. Out: text for the report of a curve.

use super::limit_words::gives_way_at;
use super::made_words::made_words;
use super::prose::percent;
use super::quantities::{QuantityWords, rounded};
use super::shown_units::ShownUnits;
use crate::capacity::Pace;
use crate::movement::Measure;
use crate::overlay::Sticking;
use crate::resistance::Item;
use crate::study::{SetupStudy, Study};
use crate::units::{Force, System};

/// Whose curve of what, and what is on the bar.
#[must_use]
pub fn curve_head(study: &Study, setup: Option<&SetupStudy>, units: System) -> String {
    let made = made_words(study);
    let mut words = format!("{}, {}{made}", study.movement_title, study.lifter_title);
    if let Some(setup) = setup {
        words += &format!(", {}", study.told(units).asked_name(setup));
    }
    words
}

/// The heads of the table of samples.
#[must_use]
pub fn sample_heads(study: &Study, with_setup: bool, units: System) -> Vec<String> {
    let measure = study.range.measure;
    let size = units.load_unit(measure).symbol;
    let mut heads = vec!["range".to_owned()];
    if measure == Measure::Force {
        heads.push(format!("travel {}", units.length_unit().symbol));
    }
    heads.push(format!(
        "{} deg",
        study.drawn_dof().name().replace('_', " ")
    ));
    heads.push(format!("capacity {size}"));
    if measure == Measure::Force {
        heads.push(match units {
            System::Metric => "= kg".to_owned(),
            System::Us => "= lb".to_owned(),
        });
    }
    if study.band.is_some() {
        heads.push(format!("80 % {size}"));
    }
    if study.people.is_some() {
        heads.push(format!("50 % of people {size}"));
        heads.push(format!("80 % {size}"));
    }
    if with_setup {
        heads.push(format!("demand {size}"));
        heads.push("effort %".to_owned());
    }
    heads.push("gives way first".to_owned());
    heads
}

/// One sample as a row of that table.
#[must_use]
pub fn sample_cells(
    study: &Study,
    setup: Option<&SetupStudy>,
    index: usize,
    units: System,
) -> Vec<String> {
    let (pose, held) = (&study.range.poses[index], &study.capacity.held[index]);
    let measure = study.range.measure;
    let mut cells = vec![format!("{:.2}", pose.load.range)];
    if measure == Measure::Force {
        let travel = units.length_unit().of(pose.load.travel_m);
        // A travel of nothing may carry a minus sign, which adding nothing takes away.
        cells.push(format!("{:.1}", travel + 0.0));
    }
    cells.push(rounded(study.drawn_angle_deg(pose.load.range), 0));
    cells.push(size(measure, held.capacity, units));
    if measure == Measure::Force {
        let mass = Force::from_n(held.capacity).as_mass();
        cells.push(units.mass_number(mass, 1));
    }
    if let Some([low, high]) = &study.band {
        let ends = [low[index], high[index]].map(|end| size(measure, end, units));
        cells.push(ends.join(" to "));
    }
    if let Some(people) = &study.people {
        let forces = &people.forces;
        let halves = (&forces.quarter, &forces.three_quarters);
        for (low, high) in [halves, (&forces.low, &forces.high)] {
            let ends = [low[index], high[index]].map(|end| size(measure, end, units));
            cells.push(ends.join(" to "));
        }
    }
    if let Some(setup) = setup {
        cells.push(size(measure, setup.values[index], units));
        cells.push(rounded(100.0 * setup.effort[index], 0));
    }
    cells.push(study.joint(held.limiting).to_owned());
    cells
}

/// Capacity or demand as a number in its column.
fn size(measure: Measure, value: f64, units: System) -> String {
    let decimals = match measure {
        Measure::Force => 0,
        Measure::Torque => 1,
    };
    rounded(units.load_unit(measure).of(value), decimals)
}

/// The findings in sentences: class, weakest place, sticking point, flattening.
#[must_use]
pub fn curve_sentences(study: &Study, setup: Option<&SetupStudy>, units: System) -> Vec<String> {
    let class = &study.class;
    let mut lines = vec![format!(
        "Class: {} (start {:.2}, end {:.2} of the peak, peak at {:.2} of the range).",
        class.shape.word(),
        class.start_ratio,
        class.end_ratio,
        class.peak_range
    )];
    lines.extend(study.told(units).people_sentences());
    let Some(setup) = setup else {
        return lines;
    };
    let Some(sticking) = setup.sticking else {
        lines.push("The load asks for nothing anywhere in the range.".to_owned());
        return lines;
    };
    lines.extend(sticking_sentences(study, &sticking, units));
    // Plain weight is as even as itself.
    let is_plain = |item: &Item| matches!(item, Item::Weight(_));
    let has_more = !setup.asked.items.iter().all(is_plain);
    let flattening = setup.flattening_percent.filter(|_| has_more);
    lines.extend(flattening.map(|percent| {
        format!(
            "Flattening against plain weight: {} %.",
            rounded(percent, 1)
        )
    }));
    lines
}

fn sticking_sentences(study: &Study, sticking: &Sticking, units: System) -> Vec<String> {
    let told = study.told(units);
    let mut lines = vec![
        format!(
            "Hardest {} ({:.2} of the range): {} % of what the lifter has; {}.",
            told.at_place(sticking.point_range),
            sticking.point_range,
            rounded(100.0 * sticking.max_effort, 0),
            gives_way_at(study, sticking.point_range),
        ),
        format!(
            "{} ({} of the greatest effort): {}.",
            told.hardest_part(),
            percent(study.region_share),
            told.stretch(sticking.from_range, sticking.to_range),
        ),
    ];
    if sticking.max_effort > 1.0 {
        lines.push(more_than_held(study.pace).to_owned());
    }
    lines
}

/// What follows where a load asks for more than there is, held still or at a speed.
fn more_than_held(pace: Pace) -> &'static str {
    match pace {
        Pace::Isometric => {
            "That is more than this lifter can hold there: the lift cannot be done slowly with this load."
        }
        pace if pace.lowers() => {
            "That is more than this lifter has there at that speed: the load goes down faster."
        }
        _ => "That is more than this lifter has there at that speed: the load is slowed down.",
    }
}
