//! A colour for each share of a range: dark blue over green to yellow, evenly spaced to the eye.
//!
//! In: a share from 0 to 1. Out: a colour whose lightness rises evenly, so the order is kept for the
//! colour-blind and on grey paper.

use super::colour::{BLUISH_GREEN, Colour, YELLOW, encoded, linear};

/// The dark end; assumed, chosen to reach 10 : 1 against white.
pub const DARK_BLUE: Colour = Colour::hex(0x14_2F66);

/// The colour of a share, 0 dark blue, 1 yellow; shares outside are cut to the ends.
///
/// Runs in straight lines through OKLab from dark blue over bluish green to yellow, the corner where
/// the green's own lightness falls, so lightness is a straight line of the share.
#[must_use]
pub fn ramp(share: f64) -> Colour {
    let share = if share.is_finite() {
        share.clamp(0.0, 1.0)
    } else {
        0.0
    };
    let [dark, green, light] = [DARK_BLUE, BLUISH_GREEN, YELLOW].map(to_oklab);
    let corner = (green[0] - dark[0]) / (light[0] - dark[0]);
    if share < corner {
        between(dark, green, share / corner)
    } else {
        between(green, light, (share - corner) / (1.0 - corner))
    }
}

/// The colour at a share of the straight line between two colours in OKLab, along which lightness and colour change evenly;
/// shares outside are cut to the ends.
#[must_use]
pub fn evenly_between(from: Colour, to: Colour, share: f64) -> Colour {
    between(to_oklab(from), to_oklab(to), share.clamp(0.0, 1.0))
}

fn between(from: [f64; 3], to: [f64; 3], part: f64) -> Colour {
    let mix = |index: usize| from[index] + part * (to[index] - from[index]);
    from_oklab([mix(0), mix(1), mix(2)])
}

/// Lightness and two colour axes of a colour in OKLab.
///
/// **Source.** Ottosson 2020, *A perceptual color space for image processing*; matrices from memory,
/// checked by white (L = 1, a = b = 0) and by the way there and back in the tests of this file.
/// **Fails.** Never.
#[must_use]
pub fn to_oklab(colour: Colour) -> [f64; 3] {
    let [r, g, b] = [colour.red, colour.green, colour.blue].map(linear);
    let l = (0.412_221_470_8 * r + 0.536_332_536_3 * g + 0.051_445_992_9 * b).cbrt();
    let m = (0.211_903_498_2 * r + 0.680_699_545_1 * g + 0.107_396_956_6 * b).cbrt();
    let s = (0.088_302_461_9 * r + 0.281_718_837_6 * g + 0.629_978_700_5 * b).cbrt();
    [
        0.210_454_255_3 * l + 0.793_617_785_0 * m - 0.004_072_046_8 * s,
        1.977_998_495_1 * l - 2.428_592_205_0 * m + 0.450_593_709_9 * s,
        0.025_904_037_1 * l + 0.782_771_766_2 * m - 0.808_675_766_0 * s,
    ]
}

/// The grey of the same lightness.
#[must_use]
pub fn grey_of(colour: Colour) -> Colour {
    let [light, ..] = to_oklab(colour);
    from_oklab([light, 0.0, 0.0])
}

/// The nearest colour of a screen to a place of the even space.
pub fn from_oklab(lab: [f64; 3]) -> Colour {
    let [light, a, b] = lab;
    let l = (light + 0.396_337_777_4 * a + 0.215_803_757_3 * b).powi(3);
    let m = (light - 0.105_561_345_8 * a - 0.063_854_172_8 * b).powi(3);
    let s = (light - 0.089_484_177_5 * a - 1.291_485_548_0 * b).powi(3);
    Colour {
        red: encoded(4.076_741_662_1 * l - 3.307_711_591_3 * m + 0.230_969_929_2 * s),
        green: encoded(-1.268_438_004_6 * l + 2.609_757_401_1 * m - 0.341_319_396_5 * s),
        blue: encoded(-0.004_196_086_3 * l - 0.703_418_614_7 * m + 1.707_614_701_0 * s),
        opacity: 1.0,
    }
}
