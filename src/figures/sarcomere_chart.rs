//! The length-tension diagram of a sarcomere with the sarcomere itself drawn at four lengths.
//!
//! In: filament lengths. Out: a scene: the diagram above, below it Z discs, thin and thick filaments to
//! one scale, so that the overlap behind every corner is seen.

use super::data_table::{DataTable, figure};
use super::filaments::{draw_key, draw_sarcomere};
use crate::anatomy::Sarcomere;
use crate::draw::scale::number;
use crate::draw::{Face, Rect, Scene, TextAnchor, lettering};
use crate::error::{Error, PlotFault, Plotted, Result};
use crate::narrative::fibre_words::{ACTIVE_FORCE, SARCOMERE_LENGTH, STATIONS, station_head};
use crate::plot::axis::{self, Axis, Extent, Plot};
use crate::plot::frame::{Frame, Heading, Look};
use crate::plot::panel;
use crate::plot::panel_labels::{self, Crowded};
use crate::plot::words::WordBlock;
use crate::plot::{Marker, Panel, Role, Series};

/// A length-tension diagram with drawn sarcomeres.
#[derive(Debug, Clone, PartialEq)]
pub struct SarcomereChart {
    /// The words around it.
    pub heading: Heading,
    /// Whose filaments.
    pub sarcomere: Sarcomere,
}

/// A length at which the sarcomere is drawn.
struct Station {
    letter: &'static str,
    length_um: f64,
    meaning: &'static str,
}

/// Share of the room below the headings that the drawn sarcomeres take.
const STRIP: f64 = 0.47;
/// Where the upright axis ends, %: a little above the plateau.
const TOP_PERCENT: f64 = 112.0;
/// Columns of the table beside the figure.
const COLUMNS: [&str; 4] = [
    "point",
    "sarcomere_length_um",
    "force_percent",
    "overlap_um",
];

/// The corners of the diagram: length, and force in percent.
#[must_use]
pub(crate) fn overlap_points(sarcomere: &Sarcomere) -> Vec<[f64; 2]> {
    let corners = sarcomere.corners().into_iter();
    corners
        .map(|(length, share)| [length, 100.0 * share])
        .collect()
}

impl SarcomereChart {
    /// The chart as a scene.
    ///
    /// # Errors
    /// If the canvas is too small.
    pub fn scene(&self, look: Look) -> Result<Scene> {
        let mut frame = Frame::new(look, &self.heading);
        let strip_top = frame.body.bottom - STRIP * frame.body.height();
        let panel = self.panel();
        let plot = self.draw_axes(&mut frame, &panel.axis, strip_top)?;
        panel::draw_curves(&mut frame, &panel, &plot);
        panel_labels::draw(&mut frame, &panel, &plot, None, Crowded::Dim);
        // The sarcomeres are drawn to scale from the same figures: they are data as the curve is.
        frame.scene.plots.push(plot.area);
        let strip = Rect {
            top: strip_top,
            ..frame.body
        };
        self.draw_strip(&mut frame, strip);
        Ok(frame.scene)
    }

    /// Axes and their titles above the strip of sarcomeres.
    fn draw_axes(&self, frame: &mut Frame, upright: &Axis, strip_top: f64) -> Result<Plot> {
        let (text, gap) = (frame.measures.text, frame.measures.gap);
        let row = lettering::line_step(text);
        let top = frame.body.top + row + 0.9 * gap + lettering::capitals(text) / 2.0;
        let bottom = strip_top - axis::level_row_height(frame) - row - 0.6 * gap;
        let y_range = [0.0, TOP_PERCENT];
        let ticks = upright.labelled_ticks(y_range, axis::upright_tick_count(bottom - top, text));
        let left = frame.body.left + axis::upright_column_width(frame, &ticks);
        let area = Rect::new(left, top, frame.body.right - 1.2 * gap, bottom);
        if area.height() < 3.0 * text || area.width() < 12.0 * text {
            return Err(Error::bad(PlotFault::TooSmall(Plotted::Sarcomeres)));
        }
        let plot = Plot::new(area, self.x_range(), y_range)?;
        let level = Axis::new(SARCOMERE_LENGTH.0, SARCOMERE_LENGTH.1).reaching(Extent::Data);
        axis::draw_upright(frame, &plot, &ticks);
        axis::draw_level(frame, &plot, &level, true);
        let baseline = frame.body.top + lettering::rise(text);
        let title = axis::upright_title(frame, upright, baseline);
        frame.scene.text(title);
        let below = area.bottom + axis::level_row_height(frame) + lettering::rise(text);
        let x_title = frame.axis_text([area.centre()[0], below], &level.title());
        frame.scene.text(x_title.anchored(TextAnchor::Middle));
        Ok(plot)
    }

    /// What the chart draws, as numbers: the corners, then the drawn lengths.
    #[must_use]
    pub fn data(&self) -> DataTable {
        let corner = self.sarcomere.corners().into_iter();
        let corners = corner.map(|(length, share)| ("corner", length, share));
        let drawn = self.stations().map(|station| {
            let share = self.sarcomere.tension_at(station.length_um);
            (station.letter, station.length_um, share)
        });
        let row = |(point, length, share): (&str, f64, f64)| {
            let figures = [length, 100.0 * share, self.overlap_um(length)];
            let mut row = vec![point.to_owned()];
            row.extend(figures.map(figure));
            row
        };
        DataTable {
            header: COLUMNS.map(str::to_owned).to_vec(),
            rows: corners.chain(drawn).map(row).collect(),
        }
    }

    /// Length of the thick filament's heads that lie beside one thin filament, µm, on one side.
    ///
    /// ```text
    /// overlap = max(0, min(M/2, (L − z)/2) − max(b/2, (L − z)/2 − T))
    /// ```
    /// `L` sarcomere length, `T` thin filament, `M` thick filament, `b` bare zone, `z` Z disc, all µm.
    /// **Source.** Geometry of the filaments. **Fails.** Never.
    fn overlap_um(&self, length_um: f64) -> f64 {
        let s = &self.sarcomere;
        let disc = (length_um - s.z_disc_um) / 2.0;
        let outer = (s.thick_um / 2.0).min(disc);
        let inner = (s.bare_zone_um / 2.0).max(disc - s.thin_um);
        (outer - inner).max(0.0)
    }

    fn stations(&self) -> [Station; 4] {
        let corners = self.sarcomere.corners();
        let optimum = self.sarcomere.optimum_um();
        let lengths = [corners[0].0, corners[1].0, optimum, corners[4].0];
        std::array::from_fn(|index| Station {
            letter: STATIONS[index].0,
            length_um: lengths[index],
            meaning: STATIONS[index].1,
        })
    }

    fn x_range(&self) -> [f64; 2] {
        let corners = self.sarcomere.corners();
        let extent = corners[4].0 - corners[0].0;
        [corners[0].0 - 0.06 * extent, corners[4].0 + 0.06 * extent]
    }

    fn panel(&self) -> Panel {
        let marker = |station: Station| {
            let force = self.sarcomere.tension_at(station.length_um);
            let at = [station.length_um, 100.0 * force];
            Marker::new(at, station.letter, Role::Reference)
        };
        // In ink: blue and orange are the filaments below.
        let curve = Series::new("", overlap_points(&self.sarcomere), Role::Reference);
        let axis = Axis {
            ticks: [0, 50, 100].map(|p| (f64::from(p), p.to_string())).into(),
            ..Axis::new(ACTIVE_FORCE.0, ACTIVE_FORCE.1)
        };
        Panel {
            markers: self.stations().map(marker).to_vec(),
            ..Panel::new(axis, vec![curve])
        }
    }

    /// Key, sarcomeres and captions, in equal cells.
    fn draw_strip(&self, frame: &mut Frame, strip: Rect) {
        let (text, gap) = (frame.measures.text, frame.measures.gap);
        let row = lettering::line_step(text);
        draw_key(frame, strip.left, strip.top + lettering::rise(text));
        let stations = self.stations();
        let cell_width = strip.width() / stations.len() as f64;
        let longest = stations.iter().map(|s| s.length_um).fold(0.0, f64::max);
        let px_per_um = 0.88 * cell_width / longest;
        let captions = 3.0 * row;
        for (index, station) in stations.iter().enumerate() {
            let left = strip.left + index as f64 * cell_width;
            let area = Rect::new(
                left,
                strip.top + row + 0.8 * gap,
                left + cell_width,
                strip.bottom - captions - 1.5 * gap,
            );
            draw_sarcomere(frame, &self.sarcomere, station.length_um, area, px_per_um);
            let below = Rect::new(left, strip.bottom - captions, area.right, strip.bottom);
            self.draw_caption(frame, station, below);
        }
    }

    /// Letter, length and force of a drawn sarcomere, and what happens there.
    fn draw_caption(&self, frame: &mut Frame, station: &Station, below: Rect) {
        let force = self.sarcomere.tension_at(station.length_um);
        let head = station_head(
            station.letter,
            &number(station.length_um, 2),
            &number(100.0 * force, 0),
        );
        let most = below.width() - 1.5 * frame.measures.gap;
        let (ink, muted) = (frame.colours.ink, frame.colours.muted);
        let words = WordBlock::new(frame.measures.text)
            .with(&head, Face::Bold, ink, most, 1)
            .with(station.meaning, Face::Regular, muted, most, 2);
        let half = words.width() / 2.0;
        let middle = below.centre()[0];
        let at = Rect::new(middle - half, below.top, middle + half, below.bottom);
        words.draw(&mut frame.scene, &at, TextAnchor::Middle);
    }
}
