//! One sarcomere as lines: Z discs, thin and thick filaments with their heads, to scale.
//!
//! In: filament lengths, a length of the sarcomere, an area. Out: shapes in a frame, and a key to them.

use crate::anatomy::Sarcomere;
use crate::draw::{Colour, Face, PixelPoint, Rect, Stroke, Text, lettering};
use crate::narrative::fibre_words::FILAMENTS;
use crate::plot::frame::Frame;

/// Where filaments lie, shares of the height from the middle.
const THICK_PLACES: [f64; 2] = [-0.25, 0.25];
/// Where thin filaments lie.
const THIN_PLACES: [f64; 3] = [-0.42, 0.0, 0.42];

/// One sarcomere in pixels: its scale and its middle.
struct Drawing<'a> {
    sarcomere: &'a Sarcomere,
    middle: PixelPoint,
    height: f64,
    px_per_um: f64,
    /// Width of a thin filament.
    unit: f64,
    /// Half the length between the Z discs, µm.
    half_um: f64,
}

impl Drawing<'_> {
    /// A level bar between two places from the middle, µm, at a share of the height; its ends are square, because where a
    /// filament ends is what the drawing shows.
    fn bar(&self, frame: &mut Frame, um: [f64; 2], place: f64, (colour, width): (Colour, f64)) {
        let y = self.middle[1] + place * self.height;
        let [from, to] = um.map(|um| self.middle[0] + um * self.px_per_um);
        let (above, below) = (y - width / 2.0, y + width / 2.0);
        let corners = vec![[from, above], [to, above], [to, below], [from, below]];
        frame.scene.polygon(corners, colour);
    }

    fn thick_filaments(&self, frame: &mut Frame, colour: Colour) {
        let s = self.sarcomere;
        let half = (s.thick_um / 2.0).min(self.half_um);
        for place in THICK_PLACES {
            self.bar(frame, [-half, half], place, (colour, 0.6 * self.unit));
            for side in [-1.0, 1.0] {
                let um = [side * s.bare_zone_um / 2.0, side * half];
                self.bar(frame, um, place, (colour, 2.2 * self.unit));
            }
        }
    }

    fn thin_filaments(&self, frame: &mut Frame, colour: Colour) {
        let (half, thin) = (self.half_um, self.sarcomere.thin_um);
        let inner = (half - thin).max(-half);
        for place in THIN_PLACES {
            for side in [-1.0, 1.0] {
                // Thin filaments of both sides pass each other in a short sarcomere.
                let aside = if half < thin { 0.035 * side } else { 0.0 };
                let um = [side * half, side * inner];
                self.bar(frame, um, place + aside, (colour, self.unit));
            }
        }
    }

    fn discs(&self, frame: &mut Frame, colour: Colour, length_um: f64) {
        let half = self.sarcomere.z_disc_um / 2.0;
        for side in [-1.0, 1.0] {
            let middle = side * length_um / 2.0;
            self.bar(
                frame,
                [middle - half, middle + half],
                0.0,
                (colour, self.height),
            );
        }
    }
}

/// One sarcomere, its middle in the middle of the area.
pub(crate) fn draw_sarcomere(
    frame: &mut Frame,
    sarcomere: &Sarcomere,
    length_um: f64,
    area: Rect,
    px_per_um: f64,
) {
    let height = area.height();
    let drawing = Drawing {
        sarcomere,
        middle: area.centre(),
        height,
        px_per_um,
        unit: (0.045 * height).min(9.0 * frame.measures.unit).max(2.0),
        half_um: (length_um - sarcomere.z_disc_um) / 2.0,
    };
    let [disc, thin, thick] = inks(frame);
    drawing.thick_filaments(frame, thick);
    drawing.thin_filaments(frame, thin);
    drawing.discs(frame, disc, length_um);
}

/// Colours of Z discs, thin filaments and thick filaments.
fn inks(frame: &Frame) -> [Colour; 3] {
    let colours = &frame.colours;
    [colours.ink, colours.series_line(0), colours.series_line(1)]
}

/// What the colours mean: a stroke and its name each.
pub(crate) fn draw_key(frame: &mut Frame, left: f64, baseline: f64) {
    let (text, gap) = (frame.measures.text, frame.measures.gap);
    let colours = &frame.colours;
    let labels = [
        colours.ink,
        colours.series_label(0),
        colours.series_label(1),
    ];
    let mut x = left;
    for ((name, line), label) in FILAMENTS.into_iter().zip(inks(frame)).zip(labels) {
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
