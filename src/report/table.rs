//! Text for people: a table of samples and the figures of the curve in sentences.

use super::summary::summary;
use crate::movement::Measure;
use crate::narrative::name_of;
use crate::narrative::places::{place_in_words, sides_in_words};
use crate::narrative::quantities::rounded;
use crate::study::{SetupStudy, Study};
use crate::units::{Force, Length, System};
use comfy_table::{CellAlignment, ContentArrangement, Table, presets};

/// A plain table with numbers to the right.
#[must_use]
pub fn table(header: &[&str], rows: Vec<Vec<String>>, numbers_from: usize) -> String {
    let mut table = Table::new();
    table
        .load_style(presets::NOTHING)
        .set_content_arrangement(ContentArrangement::Disabled)
        .set_header(header.to_vec());
    for row in rows {
        table.add_row(row);
    }
    for index in numbers_from..header.len() {
        if let Some(column) = table.column_mut(index) {
            column.set_cell_alignment(CellAlignment::Right);
        }
    }
    let text = table.to_string();
    let lines: Vec<&str> = text.lines().map(str::trim_end).collect();
    lines.join("\n") + "\n"
}

/// Rows of a curve's table: about this many, the first and the last among them.
const ROWS: usize = 21;

/// A curve as text: heading, table, class, sticking point.
#[must_use]
pub fn curve_table(study: &Study, setup: Option<&SetupStudy>, units: System) -> String {
    let mut text = format!("{}, {}", study.movement_title, study.lifter_title);
    if let Some(setup) = setup {
        text += &format!(", {}", name_of(study, setup, units));
    }
    text += &format!("\n{}\n\n", sides_in_words(study));
    text += &samples_table(study, setup, units);
    text.push('\n');
    for line in findings(study, setup, units) {
        text += &line;
        text.push('\n');
    }
    text
}

fn samples_table(study: &Study, setup: Option<&SetupStudy>, units: System) -> String {
    let is_force = study.range.measure == Measure::Force;
    let force_unit = match (is_force, units) {
        (false, _) => "N·m",
        (true, System::Metric) => "N",
        (true, System::Us) => "lbf",
    };
    let length_unit = if units == System::Us { "in" } else { "cm" };
    let mut header = vec!["range".to_owned()];
    if is_force {
        header.push(format!("travel {length_unit}"));
    }
    header.push(format!("{} deg", study.drawn_dof().name()));
    header.push(format!("capacity {force_unit}"));
    if is_force {
        header.push(match units {
            System::Metric => "= kg".to_owned(),
            System::Us => "= lb".to_owned(),
        });
    }
    if setup.is_some() {
        header.push(format!("demand {force_unit}"));
        header.push("effort %".to_owned());
    }
    header.push("gives way first".to_owned());
    let step = (study.range.poses.len() - 1).div_ceil(ROWS - 1).max(1);
    let last = study.range.poses.len() - 1;
    let mut picked: Vec<usize> = (0..=last).step_by(step).collect();
    if picked.last() != Some(&last) {
        picked.push(last);
    }
    let rows = picked
        .into_iter()
        .map(|index| sample_row(study, setup, units, index))
        .collect();
    let names: Vec<&str> = header.iter().map(String::as_str).collect();
    table(&names, rows, 0)
}

fn sample_row(
    study: &Study,
    setup: Option<&SetupStudy>,
    units: System,
    index: usize,
) -> Vec<String> {
    let pose = &study.range.poses[index];
    let held = &study.capacity.held[index];
    let is_force = study.range.measure == Measure::Force;
    let size = |value: f64| match (is_force, units) {
        (true, System::Us) => rounded(Force::from_n(value).as_lbf(), 0),
        (true, System::Metric) => rounded(value, 0),
        (false, _) => rounded(value, 1),
    };
    let mut row = vec![format!("{:.2}", pose.load.range)];
    if is_force {
        let travel = Length::from_m(pose.load.travel_m);
        row.push(match units {
            System::Metric => format!("{:.1}", travel.as_cm() + 0.0),
            System::Us => format!("{:.1}", travel.as_in() + 0.0),
        });
    }
    row.push(rounded(study.drawn_angle_deg(pose.load.range), 0));
    row.push(size(held.capacity));
    if is_force {
        let mass = Force::from_n(held.capacity).as_mass();
        row.push(match units {
            System::Metric => rounded(mass.as_kg(), 1),
            System::Us => rounded(mass.as_lb(), 1),
        });
    }
    if let Some(setup) = setup {
        row.push(size(setup.values[index]));
        row.push(rounded(100.0 * setup.effort[index], 0));
    }
    row.push(study.joint(held.limiting).to_owned());
    row
}

/// The findings in sentences: class, weakest place, sticking point, flattening.
#[must_use]
pub fn findings(study: &Study, setup: Option<&SetupStudy>, units: System) -> Vec<String> {
    let figures = summary(study, setup);
    let mut lines = vec![format!(
        "Class: {} (start {:.2}, end {:.2} of the peak, peak at {:.2} of the range).",
        figures.class, figures.start_ratio, figures.end_ratio, figures.peak_range
    )];
    let Some(setup) = setup else {
        return lines;
    };
    let Some(sticking) = setup.sticking else {
        lines.push("The load asks for nothing anywhere in the range.".to_owned());
        return lines;
    };
    lines.push(format!(
        "Hardest at {} ({:.2} of the range): {} % of what the lifter has; the {} gives way first.",
        place_in_words(study, sticking.point_range, units),
        sticking.point_range,
        rounded(100.0 * sticking.max_effort, 0),
        figures.limiting_joint.unwrap_or("limb"),
    ));
    lines.push(format!(
        "Sticking region (95 % of the greatest effort): {} to {}.",
        place_in_words(study, sticking.from_range, units),
        place_in_words(study, sticking.to_range, units),
    ));
    if sticking.max_effort > 1.0 {
        lines.push(
            "That is more than this lifter can hold there: the lift cannot be done slowly with this load."
                .to_owned(),
        );
    }
    if let Some(percent) = figures.flattening_percent {
        lines.push(format!(
            "Flattening against plain weight: {} %.",
            rounded(percent, 1)
        ));
    }
    lines
}
