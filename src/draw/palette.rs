//! Colours and dash patterns: two themes that the colour-blind can tell apart, on paper too.
//!
//! In: a theme and the number of a series. Out: colours whose contrast is computed, not hoped for: WCAG 2.2,
//! success criteria 1.4.3 (text, 4.5 : 1) and 1.4.11 (graphics, 3 : 1).

use super::colour::{
    BLACK, BLUE, BLUISH_GREEN, Colour, ORANGE, REDDISH_PURPLE, SKY_BLUE, VERMILLION, YELLOW,
    contrast,
};
use super::ramp::ramp;

/// Contrast that every text must reach on its ground: WCAG 2.2 AA, criterion 1.4.3.
pub const TEXT_CONTRAST: f64 = 4.5;

/// The nearest colour towards `ink` that reads on every one of the grounds.
#[must_use]
pub fn readable(colour: Colour, ink: Colour, grounds: &[Colour]) -> Colour {
    (0..=50)
        .map(|step| colour.mixed(ink, f64::from(step) / 50.0))
        .find(|shade| {
            grounds
                .iter()
                .all(|ground| contrast(*shade, *ground) >= TEXT_CONTRAST + 0.1)
        })
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

/// Light or dark.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Theme {
    /// Dark ink on white: handouts, bright rooms.
    #[default]
    Light,
    /// Light ink on near black: dark lecture halls.
    Dark,
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
}

impl Theme {
    /// The theme's colours.
    #[must_use]
    pub fn colours(self) -> Colours {
        match self {
            Self::Light => Colours::built(
                Colour::hex(0xFF_FFFF),
                Colour::hex(0x16_1B22),
                Colour::hex(0x55_606E),
                Colour::hex(0x8A_95A3),
                Colour::hex(0xE4_E8ED),
                ORANGE.with_opacity(0.20),
                ORANGE,
                [
                    BLUE,
                    VERMILLION,
                    BLUISH_GREEN,
                    REDDISH_PURPLE,
                    BLACK,
                    ORANGE,
                    SKY_BLUE,
                ],
            ),
            Self::Dark => Colours::built(
                Colour::hex(0x10_151C),
                Colour::hex(0xF3_F5F8),
                Colour::hex(0xAE_B8C4),
                Colour::hex(0x6E_7A88),
                Colour::hex(0x26_2E38),
                Colour::hex(0x8F_A3BF).with_opacity(0.18),
                YELLOW,
                [
                    SKY_BLUE,
                    ORANGE,
                    BLUISH_GREEN,
                    REDDISH_PURPLE,
                    Colour::hex(0xF3_F5F8),
                    YELLOW,
                    VERMILLION,
                ],
            ),
        }
    }
}

impl Colours {
    #[allow(clippy::too_many_arguments)]
    fn built(
        background: Colour,
        ink: Colour,
        muted: Colour,
        rule: Colour,
        grid: Colour,
        shade: Colour,
        shade_text: Colour,
        series: [Colour; 7],
    ) -> Self {
        let shaded = shade.over(background);
        let grounds = [background, shaded];
        Self {
            background,
            ink,
            muted: readable(muted, ink, &grounds),
            rule,
            grid,
            shade,
            shade_text: readable(shade_text, ink, &grounds),
            series,
            series_text: series.map(|colour| readable(colour, ink, &grounds)),
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
            [0.0, 0.56]
        } else {
            [0.36, 1.0]
        };
        ramp(from + share.clamp(0.0, 1.0) * (to - from))
    }

    /// Line colour of something more or less active, 0 not at all and 1 wholly.
    #[must_use]
    pub fn active_line(&self, share: f64) -> Colour {
        self.rule.mixed(self.series[1], share.clamp(0.0, 1.0))
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

#[cfg(test)]
mod tests {
    use super::*;

    /// Contrast that every data line must reach on its ground: WCAG 2.2 AA, criterion 1.4.11.
    const LINE_CONTRAST: f64 = 3.0;

    #[test]
    fn law_contrast_of_black_and_white_is_21() {
        assert!((contrast(BLACK, Colour::hex(0xFF_FFFF)) - 21.0).abs() < 1e-9);
    }

    #[test]
    fn law_every_text_colour_reads_on_ground_and_shade() {
        for theme in [Theme::Light, Theme::Dark] {
            let colours = theme.colours();
            let grounds = [colours.background, colours.shade.over(colours.background)];
            let texts = [colours.ink, colours.muted, colours.shade_text];
            for text in texts.iter().chain(&colours.series_text) {
                for ground in grounds {
                    let ratio = contrast(*text, ground);
                    assert!(ratio >= TEXT_CONTRAST, "{theme:?}: {text:?} has {ratio:.2}");
                }
            }
        }
    }

    #[test]
    fn law_an_ordered_family_reaches_the_contrast_of_graphics() {
        for theme in [Theme::Light, Theme::Dark] {
            let colours = theme.colours();
            for step in 0..=10 {
                let line = colours.ordered_line(f64::from(step) / 10.0);
                let ratio = contrast(line, colours.background);
                assert!(ratio >= LINE_CONTRAST, "{theme:?} {step}: {ratio:.2}");
                let text = colours.on_ground(line);
                assert!(contrast(text, colours.background) >= TEXT_CONTRAST);
            }
        }
    }

    #[test]
    fn law_the_first_five_series_reach_the_contrast_of_graphics() {
        for theme in [Theme::Light, Theme::Dark] {
            let colours = theme.colours();
            for line in &colours.series[..5] {
                let ratio = contrast(*line, colours.background);
                assert!(ratio >= LINE_CONTRAST, "{theme:?}: {line:?} has {ratio:.2}");
            }
        }
    }
}
