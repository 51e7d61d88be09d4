//! A figure with everything that goes out beside it: chart, caption, alternative text, data.
//!
//! In: a chart from one of the figure files. Out: [`Sheet`], whose data are those that the chart
//! itself draws, so picture and table cannot drift apart.

use super::sarcomere_chart::SarcomereChart;
use crate::draw::Scene;
use crate::error::Result;
use crate::plot::frame::{Heading, Look};
use crate::plot::line_chart::{LineChart, Series};
use crate::plot::{HeatMap, SmallMultiples, Tornado};
use crate::study::{MusclePart, Study};

/// The kinds of chart a figure can be.
#[derive(Debug, Clone, PartialEq)]
pub enum Chart {
    /// Curves over one level axis.
    Lines(LineChart),
    /// Small panels side by side.
    Panels(SmallMultiples),
    /// A map over two axes.
    Map(HeatMap),
    /// What moves a result most.
    Swings(Tornado),
    /// A length-tension diagram with drawn sarcomeres.
    Sarcomeres(SarcomereChart),
}

/// A table of text: numbers in full, names of columns with their units.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct DataTable {
    /// Names of the columns.
    pub header: Vec<String>,
    /// The rows.
    pub rows: Vec<Vec<String>>,
}

/// A figure and its words.
#[derive(Debug, Clone, PartialEq)]
pub struct Sheet {
    /// The chart; its heading holds title and alternative text.
    pub chart: Chart,
    /// What a lecturer says to it: how to read it and what follows.
    pub caption: String,
    /// What the chart draws, as numbers.
    pub data: DataTable,
}

impl Sheet {
    /// A figure with the data that its chart draws.
    #[must_use]
    pub fn new(chart: Chart, caption: impl Into<String>) -> Self {
        Self {
            data: chart.data(),
            chart,
            caption: caption.into(),
        }
    }

    /// The finding.
    #[must_use]
    pub fn title(&self) -> &str {
        &self.chart.heading().title
    }

    /// What the figure shows, for those who cannot see it.
    #[must_use]
    pub fn alt(&self) -> &str {
        &self.chart.heading().description
    }
}

impl Chart {
    /// The chart as a scene.
    ///
    /// # Errors
    /// If it has nothing to draw, or the canvas is too small for it.
    pub fn scene(&self, look: Look) -> Result<Scene> {
        match self {
            Self::Lines(chart) => chart.scene(look),
            Self::Panels(chart) => chart.scene(look),
            Self::Map(chart) => chart.scene(look),
            Self::Swings(chart) => chart.scene(look),
            Self::Sarcomeres(chart) => chart.scene(look),
        }
    }

    /// The words around it.
    #[must_use]
    pub fn heading(&self) -> &Heading {
        match self {
            Self::Lines(chart) => &chart.heading,
            Self::Panels(chart) => &chart.heading,
            Self::Map(chart) => &chart.heading,
            Self::Swings(chart) => &chart.heading,
            Self::Sarcomeres(chart) => &chart.heading,
        }
    }

    /// The numbers that it draws.
    #[must_use]
    pub fn data(&self) -> DataTable {
        match self {
            Self::Lines(chart) => lines(chart),
            Self::Panels(chart) => panels(chart),
            Self::Map(chart) => map(chart),
            Self::Swings(chart) => swings(chart),
            Self::Sarcomeres(chart) => chart.data(),
        }
    }
}

fn lines(chart: &LineChart) -> DataTable {
    let x = column(&chart.x.quantity, &chart.x.unit);
    let one_panel = chart.panels.len() == 1;
    let mut table = DataTable::default();
    let y = match &chart.panels[..] {
        [only] => column(&only.axis.quantity, &only.axis.unit),
        _ => "value".to_owned(),
    };
    let head = if one_panel { "" } else { "panel" };
    table.header = [head, "curve", &x, &y]
        .iter()
        .filter(|name| !name.is_empty())
        .map(|name| (*name).to_owned())
        .collect();
    for panel in &chart.panels {
        let title = panel.axis.title();
        let panel_cell = (!one_panel).then_some(title.as_str());
        for series in panel.series.iter().filter(|series| !series.name.is_empty()) {
            push_curve(&mut table, panel_cell, series);
        }
    }
    table
}

fn panels(chart: &SmallMultiples) -> DataTable {
    let mut table = DataTable {
        header: vec![
            "panel".to_owned(),
            "curve".to_owned(),
            column(&chart.x.quantity, &chart.x.unit),
            column(&chart.y.quantity, &chart.y.unit),
        ],
        rows: Vec::new(),
    };
    for panel in &chart.panels {
        for series in &panel.series {
            push_curve(&mut table, Some(&panel.title), series);
        }
    }
    table
}

fn push_curve(table: &mut DataTable, panel: Option<&str>, series: &Series) {
    for [x, y] in &series.points {
        let mut row: Vec<String> = panel.into_iter().map(str::to_owned).collect();
        row.extend([series.name.clone(), figure(*x), figure(*y)]);
        table.rows.push(row);
    }
}

fn map(chart: &HeatMap) -> DataTable {
    let header = [&chart.x, &chart.y, &chart.colour]
        .map(|axis| column(&axis.quantity, &axis.unit))
        .to_vec();
    let mut rows = Vec::new();
    for (y, values) in chart.ys.iter().zip(&chart.values) {
        for (x, value) in chart.xs.iter().zip(values) {
            rows.push(vec![
                figure(*x),
                figure(*y),
                value.map(figure).unwrap_or_default(),
            ]);
        }
    }
    DataTable { header, rows }
}

fn swings(chart: &Tornado) -> DataTable {
    let quantity = column(&chart.axis.quantity, &chart.axis.unit);
    DataTable {
        header: vec![
            "parameter".to_owned(),
            format!("lowered_{quantity}"),
            format!("raised_{quantity}"),
        ],
        rows: chart
            .swings
            .iter()
            .map(|swing| {
                vec![
                    swing.name.clone(),
                    figure(swing.lowered),
                    figure(swing.raised),
                ]
            })
            .collect(),
    }
}

/// Force, arm, fibre length and torque of muscles over the range of a lift of one joint.
pub(crate) fn muscle_table(study: &Study, parts: &[MusclePart]) -> DataTable {
    let mut table = DataTable {
        header: [
            "muscle",
            "range",
            "angle_deg",
            "force_n",
            "moment_arm_m",
            "fibre_length_norm",
            "torque_nm",
        ]
        .map(str::to_owned)
        .to_vec(),
        rows: Vec::new(),
    };
    for part in parts {
        for (index, pose) in study.range.poses.iter().enumerate() {
            let mut row = vec![part.name.clone()];
            row.extend(
                [
                    pose.load.range,
                    pose.coordinates[0].angle_rad.to_degrees(),
                    part.force_n[index],
                    part.arm_m[index],
                    part.fibre_norm[index],
                    part.torque_nm[index],
                ]
                .map(figure),
            );
            table.rows.push(row);
        }
    }
    table
}

/// A number of a data file: seven figures, so that rounding of the last bits never shows.
pub(crate) fn figure(value: f64) -> String {
    let short: f64 = format!("{value:.6e}").parse().unwrap_or(value);
    (short + 0.0).to_string()
}

/// A column's name: the quantity in snake case, its unit as suffix.
pub(crate) fn column(quantity: &str, unit: &str) -> String {
    let unit = match unit {
        "%" => "percent",
        "N·m" => "nm",
        "µm" => "um",
        "deg/s" => "deg_s",
        "m/s" => "m_s",
        other => other,
    };
    let mut name = String::new();
    for letter in format!("{quantity} {unit}").to_lowercase().chars() {
        if letter.is_ascii_alphanumeric() {
            name.push(letter);
        } else if !name.ends_with('_') {
            name.push('_');
        }
    }
    name.trim_matches('_').to_owned()
}

#[cfg(test)]
mod tests {
    use super::{column, figure};

    #[test]
    fn law_columns_are_snake_case_with_their_unit() {
        assert_eq!(
            column("Torque at the elbow", "N·m"),
            "torque_at_the_elbow_nm"
        );
        assert_eq!(
            column("Force, share of peak", "%"),
            "force_share_of_peak_percent"
        );
        assert_eq!(column("Range", ""), "range");
    }

    #[test]
    fn law_figures_of_data_files_hide_the_last_bits() {
        assert_eq!(figure(0.1 + 0.2), "0.3");
        assert_eq!(figure(-0.0), "0");
        assert_eq!(figure(1234.5), "1234.5");
    }
}
