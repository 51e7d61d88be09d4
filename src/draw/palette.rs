//! Colours and dash patterns: two themes that the colour-blind can tell apart, on paper too.
//!
//! In: a theme and the number of a series. Out: colours whose contrast is computed, not hoped for: WCAG 2.2,
//! success criteria 1.4.3 (text, 4.5 : 1) and 1.4.11 (graphics, 3 : 1).

use super::colour::{
    BLACK, BLUE, BLUISH_GREEN, Colour, ORANGE, REDDISH_PURPLE, SKY_BLUE, VERMILLION, contrast,
};
use super::ramp::{evenly_between, grey_of, ramp};

/// Contrast that every text must reach on its ground: WCAG 2.2 AA, criterion 1.4.3.
pub const TEXT_CONTRAST: f64 = 4.5;

/// Contrast that every mark must reach on its ground: WCAG 2.2 AA, criterion 1.4.11.
pub const MARK_CONTRAST: f64 = 3.0;

/// The nearest colour towards `ink` that reads as text on every one of the grounds.
#[must_use]
pub fn readable(colour: Colour, ink: Colour, grounds: &[Colour]) -> Colour {
    standing_out(colour, ink, grounds, TEXT_CONTRAST)
}

/// The nearest colour towards `ink` whose contrast with every one of the grounds is a little more than `least`.
fn standing_out(colour: Colour, ink: Colour, grounds: &[Colour], least: f64) -> Colour {
    let stands = |shade: &Colour| grounds.iter().all(|g| contrast(*shade, *g) >= least + 0.1);
    (0..=50)
        .map(|step| colour.mixed(ink, f64::from(step) / 50.0))
        .find(stands)
        .unwrap_or(ink)
}

/// Dash patterns in multiples of the line's width, one a series: they tell the series apart where
/// colour cannot (grey printing). The first is solid.
pub const DASHES: [&[f64]; 7] = [
    &[],
    &[4.0, 2.2],
    &[0.01, 2.2],
    &[6.0, 2.0, 0.01, 2.0],
    &[2.0, 1.8],
    &[8.0, 2.0, 2.0, 2.0],
    &[6.0, 2.0, 0.01, 2.0, 0.01, 2.0],
];

/// Widths of the series' lines over the usual one: together with the dashes they tell curves apart in grey.
const WEIGHTS: [f64; 7] = [1.0, 0.85, 1.0, 0.75, 0.65, 0.75, 0.65];

/// Dash patterns of an ordered family from the least to the greatest.
const ORDERED_DASHES: [&[f64]; 5] = [&[0.01, 2.0], &[2.0, 1.8], &[4.0, 2.0], &[8.0, 2.0], &[]];

/// Widths of an ordered family's lines over the usual one, of the least and of the greatest.
const ORDERED_WEIGHTS: [f64; 2] = [0.6, 1.15];

/// For a light room, a dark one, or paper.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Theme {
    /// Dark ink on white: handouts, bright rooms.
    #[default]
    Light,
    /// Light ink on near black: dark lecture halls.
    Dark,
    /// Black and grey on white with thin lines: a journal's page, a grey printer.
    Print,
}

/// The colours of a theme.
#[derive(Debug, Clone, PartialEq)]
pub struct Colours {
    /// The ground.
    pub background: Colour,
    /// Title and other strong text.
    pub ink: Colour,
    /// Axis text, subtitles, notes.
    pub muted: Colour,
    /// Axis lines and leaders.
    pub rule: Colour,
    /// Grid lines.
    pub grid: Colour,
    /// Ground of a shaded stretch, with opacity.
    pub shade: Colour,
    /// Text on the shaded stretch.
    pub shade_text: Colour,
    /// Lines of the series, in order.
    pub series: [Colour; 7],
    /// Text in the colour of each series, dark or light enough to read.
    pub series_text: [Colour; 7],
    /// Width of lines over that of the slide.
    pub weight: f64,
    /// Colours of nothing and of all on the scale of filled lines; their rims are of the ink.
    scale_ends: [Colour; 2],
    /// Whether it does without colour.
    is_grey: bool,
}

/// What a theme is made of before contrast is looked after.
struct Raw {
    background: u32,
    ink: u32,
    muted: u32,
    rule: u32,
    grid: u32,
    shade: Colour,
    shade_text: Colour,
    series: [Colour; 7],
    scale_ends: [u32; 2],
}

/// A brown that is none of the named set's; assumed, dark enough for lines on white.
const BROWN: Colour = Colour::hex(0x7A_4A1E);
/// Vermillion as light as a dark ground needs it; assumed.
const LIGHT_VERMILLION: Colour = Colour::hex(0xFF_7A3D);
/// A light tan for dark grounds; assumed.
const TAN: Colour = Colour::hex(0xC9_A27C);

impl Theme {
    /// The theme's colours. Amber is the sticking region's in every one and no curve's.
    #[must_use]
    pub fn colours(self) -> Colours {
        let raw = match self {
            Self::Light => Raw {
                background: 0xFF_FFFF,
                ink: 0x16_1B22,
                muted: 0x55_606E,
                rule: 0x7C_8796,
                grid: 0xE4_E8ED,
                shade: ORANGE.with_opacity(0.20),
                shade_text: ORANGE,
                series: [
                    BLUE,
                    VERMILLION,
                    BLUISH_GREEN,
                    REDDISH_PURPLE,
                    BLACK,
                    BROWN,
                    SKY_BLUE,
                ],
                scale_ends: [0xF7_F4F2, 0xA0_1212],
            },
            Self::Dark => Raw {
                background: 0x10_151C,
                ink: 0xF3_F5F8,
                muted: 0xAE_B8C4,
                rule: 0x7A_8695,
                grid: 0x26_2E38,
                shade: ORANGE.with_opacity(0.22),
                shade_text: ORANGE,
                series: [
                    SKY_BLUE,
                    LIGHT_VERMILLION,
                    BLUISH_GREEN,
                    REDDISH_PURPLE,
                    Colour::hex(0xF3_F5F8),
                    TAN,
                    BLUE,
                ],
                scale_ends: [0x1C_222A, 0xFF_6A5A],
            },
            Self::Print => Raw {
                background: 0xFF_FFFF,
                ink: 0x00_0000,
                muted: 0x33_3333,
                rule: 0x55_5555,
                grid: 0xDD_DDDD,
                shade: BLACK.with_opacity(0.10),
                shade_text: BLACK,
                series: [0x00, 0x3A, 0x00, 0x5A, 0x3A, 0x00, 0x5A]
                    .map(|grey: u32| Colour::hex(0x01_0101 * grey)),
                scale_ends: [0xF7_F7F7, 0x2A_2A2A],
            },
        };
        let is_grey = self == Self::Print;
        Colours::built(&raw, if is_grey { 0.5 } else { 1.0 }, is_grey)
    }
}

impl Colours {
    fn built(raw: &Raw, weight: f64, is_grey: bool) -> Self {
        let [background, ink] = [raw.background, raw.ink].map(Colour::hex);
        let grounds = [background, raw.shade.over(background)];
        let seen = |colour| standing_out(colour, ink, &grounds, MARK_CONTRAST);
        let read = |colour| readable(colour, ink, &grounds);
        Self {
            background,
            ink,
            muted: read(Colour::hex(raw.muted)),
            rule: seen(Colour::hex(raw.rule)),
            grid: Colour::hex(raw.grid),
            shade: raw.shade,
            shade_text: read(raw.shade_text),
            series: raw.series.map(seen),
            series_text: raw.series.map(read),
            weight,
            scale_ends: raw.scale_ends.map(Colour::hex),
            is_grey,
        }
    }

    /// Line colour of a series; the numbers go round.
    #[must_use]
    pub fn series_line(&self, number: usize) -> Colour {
        self.series[number % self.series.len()]
    }

    /// Text colour of a series; the numbers go round.
    #[must_use]
    pub fn series_label(&self, number: usize) -> Colour {
        self.series_text[number % self.series_text.len()]
    }

    /// Line colour of one of an ordered family, 0 the least and 1 the greatest, in the part of the
    /// ramp that stands out from the ground.
    #[must_use]
    pub fn ordered_line(&self, share: f64) -> Colour {
        let [from, to] = if self.background.luminance() > 0.5 {
            [0.0, 0.52]
        } else {
            [0.36, 1.0]
        };
        self.map_colour(from + share.clamp(0.0, 1.0) * (to - from))
    }

    /// Dash pattern of one of an ordered family in multiples of the line's width.
    #[must_use]
    pub fn ordered_dashes(&self, share: f64) -> &'static [f64] {
        let last = (ORDERED_DASHES.len() - 1) as f64;
        ORDERED_DASHES[(share.clamp(0.0, 1.0) * last).round() as usize]
    }

    /// Width of the line of one of an ordered family over the usual one.
    #[must_use]
    pub fn ordered_weight(&self, share: f64) -> f64 {
        let [least, most] = ORDERED_WEIGHTS;
        self.weight * (least + share.clamp(0.0, 1.0) * (most - least))
    }

    /// Colour of a share of a map's range: evenly lighter from 0 to 1, without colour where the theme has none.
    #[must_use]
    pub fn map_colour(&self, share: f64) -> Colour {
        let colour = ramp(share);
        if self.is_grey {
            grey_of(colour)
        } else {
            colour
        }
    }

    /// Colour of a share of the scale of filled lines: from nearly the ground, 0, to a deep red, 1, evenly to the eye and in
    /// grey; lines of it have a rim of the ink, which stands out from every ground.
    #[must_use]
    pub fn scale_colour(&self, share: f64) -> Colour {
        let [nothing, all] = self.scale_ends;
        evenly_between(nothing, all, share)
    }

    /// Width of a series' line over the usual one; the numbers go round.
    #[must_use]
    pub fn series_weight(&self, number: usize) -> f64 {
        self.weight * WEIGHTS[number % WEIGHTS.len()]
    }

    /// The nearest colour that reads as text on the ground and on a shaded stretch.
    #[must_use]
    pub fn on_ground(&self, colour: Colour) -> Colour {
        let grounds = [self.background, self.shade.over(self.background)];
        readable(colour, self.ink, &grounds)
    }

    /// Dash pattern of a series in multiples of the line's width; the numbers go round.
    #[must_use]
    pub fn series_dashes(&self, number: usize) -> &'static [f64] {
        DASHES[number % DASHES.len()]
    }
}
