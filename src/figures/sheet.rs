//! A figure with everything that goes out beside it: chart, caption, alternative text, data.
//!
//! In: a chart from one of the figure files. Out: [`Sheet`], whose data are those that the chart
//! itself draws, so picture and table cannot drift apart.

use super::body_chart::BodyChart;
use super::data_table::{DataTable, column, figure};
use super::error_chart::{ErrorChart, questions};

use super::sarcomere_chart::SarcomereChart;
use crate::draw::Scene;
use crate::error::{LeftOff, Result};
use crate::narrative::figure_words::{BEYOND, FigureWords, LEFT_OUT};
use crate::plot::{Heading, LineChart, Look, Series, SmallMultiples, WordPage};
use crate::resistance::Setup;
use crate::study::Study;

/// The kinds of chart a figure can be.
#[derive(Debug, Clone, PartialEq)]
pub enum Chart {
    /// Curves over one level axis.
    Lines(LineChart),
    /// Small panels side by side.
    Panels(SmallMultiples),
    /// A length-tension diagram with drawn sarcomeres.
    Sarcomeres(SarcomereChart),
    /// Bodies with lines, arrows and numbers.
    Bodies(BodyChart),
    /// Bars of errors.
    Errors(ErrorChart),
    /// A page of words.
    Words(WordPage),
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
    /// The setups as they were asked for, where it draws a lift under setups.
    pub setups: Vec<Setup>,
}

/// The words around a chart, with those that only the drawing knows the place of.
pub(crate) fn heading(words: &FigureWords) -> Heading {
    Heading {
        title: words.title.clone(),
        subtitle: words.subtitle.clone(),
        footnote: words.footnote.clone(),
        description: words.description.clone(),
        beyond: BEYOND.to_owned(),
        left_out: LEFT_OUT.to_owned(),
    }
}

impl Sheet {
    /// Curves with the words around them.
    #[must_use]
    pub fn lines(words: &FigureWords, mut chart: LineChart) -> Self {
        chart.heading = heading(words);
        Self::new(Chart::Lines(chart), &words.caption)
    }

    /// Small panels with the words around them.
    #[must_use]
    pub fn panels(words: &FigureWords, mut chart: SmallMultiples) -> Self {
        chart.heading = heading(words);
        Self::new(Chart::Panels(chart), &words.caption)
    }

    /// A figure with the data that its chart draws.
    #[must_use]
    pub fn new(chart: Chart, caption: impl Into<String>) -> Self {
        Self {
            data: chart.data(),
            chart,
            caption: caption.into(),
            setups: Vec::new(),
        }
    }

    /// The figure with the setups of the study that it draws.
    #[must_use]
    pub fn under(mut self, study: &Study) -> Self {
        self.setups = study
            .setups
            .iter()
            .map(|setup| setup.asked.clone())
            .collect();
        self
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

impl Sheet {
    /// The chart without the title in it, for a slide that has one of its own.
    ///
    /// # Errors
    /// As [`Chart::scene`].
    pub fn untitled_scene(&self, look: Look) -> Result<Scene> {
        let mut chart = self.chart.clone();
        chart.heading_mut().title.clear();
        let mut scene = chart.scene(look)?;
        scene.title = self.title().to_owned();
        Ok(scene)
    }
}

impl Sheet {
    /// The words that its picture goes without at a size: line below the title, note at the foot.
    #[must_use]
    pub fn words_left_off(&self, picture: &Scene) -> Vec<String> {
        let heading = self.chart.heading();
        let words = [
            (LeftOff::Subtitle, &heading.subtitle),
            (LeftOff::Note, &heading.footnote),
        ];
        let left_off = words
            .into_iter()
            .filter(|(what, _)| picture.left_off.contains(what));
        left_off.map(|(_, words)| words.clone()).collect()
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
            Self::Sarcomeres(chart) => chart.scene(look),
            Self::Bodies(chart) => chart.bodies.scene(look),
            Self::Errors(chart) => chart.bars.scene(look),
            Self::Words(page) => page.scene(look),
        }
    }

    /// The words around it.
    #[must_use]
    pub fn heading(&self) -> &Heading {
        match self {
            Self::Lines(chart) => &chart.heading,
            Self::Panels(chart) => &chart.heading,
            Self::Sarcomeres(chart) => &chart.heading,
            Self::Bodies(chart) => &chart.bodies.heading,
            Self::Errors(chart) => &chart.bars.heading,
            Self::Words(page) => &page.heading,
        }
    }

    fn heading_mut(&mut self) -> &mut Heading {
        match self {
            Self::Lines(chart) => &mut chart.heading,
            Self::Panels(chart) => &mut chart.heading,
            Self::Sarcomeres(chart) => &mut chart.heading,
            Self::Bodies(chart) => &mut chart.bodies.heading,
            Self::Errors(chart) => &mut chart.bars.heading,
            Self::Words(page) => &mut page.heading,
        }
    }

    /// The numbers that it draws.
    #[must_use]
    pub fn data(&self) -> DataTable {
        match self {
            Self::Lines(chart) => lines(chart),
            Self::Panels(chart) => panels(chart),
            Self::Sarcomeres(chart) => chart.data(),
            Self::Bodies(chart) => chart.data.clone(),
            Self::Errors(chart) => chart.data.clone(),
            Self::Words(page) => questions(page),
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
    for (index, panel) in chart.panels.iter().enumerate() {
        let title = panel.axis.title();
        let panel_cell = (!one_panel).then_some(title.as_str());
        for series in &panel.series {
            // A curve that is named in the first panel only is the same one in those below.
            let first = (index > 0).then(|| &chart.panels[0].series);
            let mut named = first.into_iter().flatten();
            let same = named.find(|other| other.role == series.role && !other.name.is_empty());
            let name = match (series.name.is_empty(), same) {
                (false, _) => &series.name,
                (true, Some(same)) => &same.name,
                (true, None) => continue,
            };
            push_curve(&mut table, panel_cell, name, series);
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
            push_curve(&mut table, Some(&panel.title), &series.name, series);
        }
    }
    table
}

fn push_curve(table: &mut DataTable, panel: Option<&str>, name: &str, series: &Series) {
    for [x, y] in &series.points {
        let mut row: Vec<String> = panel.into_iter().map(str::to_owned).collect();
        row.extend([name.to_owned(), figure(*x), figure(*y)]);
        table.rows.push(row);
    }
}
