//! The length-tension diagram of a sarcomere with the sarcomere itself drawn at four lengths.
//!
//! In: filament lengths. Out: a scene: the diagram above, below it Z discs, thin and thick filaments to
//! one scale, so that the overlap behind every corner is seen.

use super::data_table::{DataTable, figure};
use crate::anatomy::Sarcomere;
use crate::draw::scale::number;
use crate::draw::{Colour, Face, Rect, Scene, Stroke, Text, TextAnchor, lettering};
use crate::error::{Error, PlotFault, Plotted, Result};
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

impl SarcomereChart {
    /// The chart as a scene.
    ///
    /// # Errors
    /// If the canvas is too small.
    pub fn scene(&self, look: Look) -> Result<Scene> {
        let mut frame = Frame::new(look, &self.heading);
        let (text, gap) = (frame.measures.text, frame.measures.gap);
        let row = lettering::line_step(text);
        let strip_top = frame.body.bottom - STRIP * frame.body.height();
        let top = frame.body.top + row + 0.9 * gap + lettering::capitals(text) / 2.0;
        let bottom = strip_top - axis::level_row_height(&frame) - row - 0.6 * gap;
        let panel = self.panel();
        let count = axis::upright_tick_count(bottom - top, text);
        let y_range = [0.0, 112.0];
        let ticks = panel.axis.labelled_ticks(y_range, count);
        let left = frame.body.left + axis::upright_column_width(&frame, &ticks);
        let area = Rect::new(left, top, frame.body.right - 1.2 * gap, bottom);
        if area.height() < 3.0 * text || area.width() < 12.0 * text {
            return Err(Error::bad(PlotFault::TooSmall(Plotted::Sarcomeres)));
        }
        let plot = Plot::new(area, self.x_range(), y_range)?;
        let x_axis = Axis::new("Sarcomere length", "µm").reaching(Extent::Data);
        axis::draw_upright(&mut frame, &plot, &ticks);
        axis::draw_level(&mut frame, &plot, &x_axis, true);
        let baseline = frame.body.top + lettering::rise(text);
        let title = axis::upright_title(&frame, &panel.axis, baseline);
        frame.scene.text(title);
        let below = area.bottom + axis::level_row_height(&frame) + lettering::rise(text);
        let x_title = frame.axis_text([area.centre()[0], below], &x_axis.title());
        frame.scene.text(x_title.anchored(TextAnchor::Middle));
        panel::draw_curves(&mut frame, &panel, &plot);
        panel_labels::draw(&mut frame, &panel, &plot, None, Crowded::Dim);
        let strip = Rect::new(
            frame.body.left,
            strip_top,
            frame.body.right,
            frame.body.bottom,
        );
        self.draw_strip(&mut frame, strip);
        Ok(frame.scene)
    }

    /// What the chart draws, as numbers: the corners, then the drawn lengths.
    #[must_use]
    pub fn data(&self) -> DataTable {
        let corner = self.sarcomere.corners().into_iter();
        let corners = corner.map(|(length, share)| ("corner".to_owned(), length, share));
        let drawn = self.stations().into_iter().map(|station| {
            let share = self.sarcomere.tension_at(station.length_um);
            (station.letter.to_owned(), station.length_um, share)
        });
        DataTable {
            header: [
                "point",
                "sarcomere_length_um",
                "force_percent",
                "overlap_um",
            ]
            .map(str::to_owned)
            .to_vec(),
            rows: corners
                .chain(drawn)
                .map(|(point, length, share)| {
                    let overlap = self.overlap_um(length);
                    vec![
                        point,
                        figure(length),
                        figure(100.0 * share),
                        figure(overlap),
                    ]
                })
                .collect(),
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
        let station = |letter, length_um, meaning| Station {
            letter,
            length_um,
            meaning,
        };
        [
            station("A", corners[0].0, "filaments collide and crumple"),
            station("B", corners[1].0, "thick filaments meet the Z discs"),
            station(
                "C",
                self.sarcomere.optimum_um(),
                "every head faces a thin filament",
            ),
            station("D", corners[4].0, "no overlap, no head can attach"),
        ]
    }

    fn x_range(&self) -> [f64; 2] {
        let corners = self.sarcomere.corners();
        let extent = corners[4].0 - corners[0].0;
        [corners[0].0 - 0.06 * extent, corners[4].0 + 0.06 * extent]
    }

    fn panel(&self) -> Panel {
        let points: Vec<[f64; 2]> = self
            .sarcomere
            .corners()
            .iter()
            .map(|(length, share)| [*length, 100.0 * share])
            .collect();
        Panel {
            axis: Axis::new("Active force", "% of the greatest"),
            series: vec![Series {
                name: String::new(),
                points,
                role: Role::CAPACITY,
            }],
            markers: self
                .stations()
                .iter()
                .map(|station| Marker {
                    at: [
                        station.length_um,
                        100.0 * self.sarcomere.tension_at(station.length_um),
                    ],
                    text: station.letter.to_owned(),
                    detail: String::new(),
                    role: Role::CAPACITY,
                })
                .collect(),
            ..Panel::default()
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
            self.draw_sarcomere(frame, station.length_um, area, px_per_um);
            let force = self.sarcomere.tension_at(station.length_um);
            let head = format!(
                "{}: {} µm, force {} %",
                station.letter,
                number(station.length_um, 2),
                number(100.0 * force, 0)
            );
            let most = cell_width - 1.5 * gap;
            let (ink, muted) = (frame.colours.ink, frame.colours.muted);
            let words = WordBlock::new(text)
                .with(&head, Face::Bold, ink, most, 1)
                .with(station.meaning, Face::Regular, muted, most, 2);
            let half = words.width() / 2.0;
            let middle = area.centre()[0];
            let at = Rect::new(
                middle - half,
                strip.bottom - captions,
                middle + half,
                strip.bottom,
            );
            words.draw(&mut frame.scene, &at, TextAnchor::Middle);
        }
    }

    /// One sarcomere, its middle in the middle of the area.
    fn draw_sarcomere(&self, frame: &mut Frame, length_um: f64, area: Rect, px_per_um: f64) {
        let s = &self.sarcomere;
        let [middle, centre] = area.centre();
        let height = area.height();
        let x = |um: f64| middle + um * px_per_um;
        let half = (length_um - s.z_disc_um) / 2.0;
        let (thin, thick, disc) = inks(frame);
        let unit = (0.045 * height).min(9.0 * frame.measures.unit).max(2.0);
        let thick_half = (s.thick_um / 2.0).min(half);
        for place in [-0.25, 0.25] {
            let y = centre + place * height;
            let whole = Stroke::solid(thick, 0.8 * unit);
            frame
                .scene
                .line([x(-thick_half), y], [x(thick_half), y], whole);
            for side in [-1.0, 1.0] {
                let heads = Stroke::solid(thick, 2.2 * unit);
                let from = [x(side * s.bare_zone_um / 2.0), y];
                frame.scene.line(from, [x(side * thick_half), y], heads);
            }
        }
        for place in [-0.42, 0.0, 0.42] {
            for side in [-1.0, 1.0] {
                // Thin filaments of both sides pass each other in a short sarcomere.
                let aside = if half < s.thin_um { 0.035 * side } else { 0.0 };
                let y = centre + (place + aside) * height;
                let stroke = Stroke::solid(thin, unit);
                let inner = (half - s.thin_um).max(-half);
                frame
                    .scene
                    .line([x(side * half), y], [x(side * inner), y], stroke);
            }
        }
        for side in [-1.0, 1.0] {
            let at = x(side * length_um / 2.0);
            let stroke = Stroke::solid(disc, (s.z_disc_um * px_per_um).max(1.6 * unit));
            let ends = [centre - 0.5 * height, centre + 0.5 * height];
            frame.scene.line([at, ends[0]], [at, ends[1]], stroke);
        }
    }
}

/// Colours of thin filaments, thick filaments and Z discs.
fn inks(frame: &Frame) -> (Colour, Colour, Colour) {
    let colours = &frame.colours;
    (colours.series_line(0), colours.series_line(1), colours.ink)
}

/// What the colours mean: a stroke and its name each.
fn draw_key(frame: &mut Frame, left: f64, baseline: f64) {
    let (text, gap) = (frame.measures.text, frame.measures.gap);
    let (thin, thick, disc) = inks(frame);
    let colours = frame.colours.clone();
    let mut x = left;
    for (name, line, label) in [
        ("Z disc", disc, colours.ink),
        ("thin filament", thin, colours.series_label(0)),
        ("thick filament", thick, colours.series_label(1)),
    ] {
        let y = baseline - lettering::capitals(text) / 2.0;
        let stroke = Stroke::solid(line, 0.8 * gap);
        frame
            .scene
            .line([x + 0.4 * gap, y], [x + 2.6 * gap, y], stroke);
        let words = Text::new([x + 3.6 * gap, baseline], name, text, Face::Bold, label);
        x = words.bounds().right + 2.5 * gap;
        frame.scene.text(words);
    }
}
