//! Colours in sRGB: mixing, luminance, contrast, and the named set that figures draw from.
//!
//! In: channels. Out: colours whose contrast is computed. Contrast is that of WCAG 2.2; the named set is that of
//! Okabe & Ito 2008, *Color Universal Design: how to make figures and presentations that are friendly to
//! colorblind people* (J*FLY).

/// A colour in sRGB with opacity.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Colour {
    /// Red, 0 to 255.
    pub red: u8,
    /// Green, 0 to 255.
    pub green: u8,
    /// Blue, 0 to 255.
    pub blue: u8,
    /// Opacity, 0 to 1.
    pub opacity: f64,
}

impl Colour {
    /// An opaque colour from 0xRRGGBB.
    #[must_use]
    pub const fn hex(rgb: u32) -> Self {
        Self {
            red: (rgb >> 16) as u8,
            green: (rgb >> 8) as u8,
            blue: rgb as u8,
            opacity: 1.0,
        }
    }

    /// The same colour with another opacity.
    #[must_use]
    pub const fn with_opacity(mut self, opacity: f64) -> Self {
        self.opacity = opacity;
        self
    }

    /// The opaque colour seen where this one lies upon `ground`.
    #[must_use]
    pub fn over(self, ground: Self) -> Self {
        self.with_opacity(1.0).mixed(ground, 1.0 - self.opacity)
    }

    /// This colour with the share `share` of `other` in it, channel by channel in sRGB.
    #[must_use]
    pub fn mixed(self, other: Self, share: f64) -> Self {
        let mix = |a: u8, b: u8| {
            (f64::from(a) * (1.0 - share) + f64::from(b) * share)
                .round()
                .clamp(0.0, 255.0) as u8
        };
        Self {
            red: mix(self.red, other.red),
            green: mix(self.green, other.green),
            blue: mix(self.blue, other.blue),
            opacity: self.opacity,
        }
    }

    /// Relative luminance: 0 black, 1 white.
    ///
    /// ```text
    /// L = 0.2126 R + 0.7152 G + 0.0722 B
    /// R = r / 12.92 for r ≤ 0.04045, else ((r + 0.055) / 1.055)^2.4
    /// ```
    /// | symbol  | meaning                           | unit | range  |
    /// | ------- | --------------------------------- | ---- | ------ |
    /// | `r`     | sRGB channel over 255             | –    | 0 to 1 |
    /// | `R,G,B` | linear light of the three channels | –    | 0 to 1 |
    ///
    /// **Shape.** Rises with each channel, green most. **Source.** WCAG 2.2, definition of
    /// relative luminance. **Fails.** Never.
    #[must_use]
    pub fn luminance(self) -> f64 {
        0.2126 * linear(self.red) + 0.7152 * linear(self.green) + 0.0722 * linear(self.blue)
    }
}

/// Contrast ratio of two opaque colours, 1 to 21 (WCAG 2.2: (L₁ + 0.05) / (L₂ + 0.05)).
#[must_use]
pub fn contrast(one: Colour, other: Colour) -> f64 {
    let (a, b) = (one.luminance(), other.luminance());
    (a.max(b) + 0.05) / (a.min(b) + 0.05)
}

/// Okabe & Ito 2008: black.
pub const BLACK: Colour = Colour::hex(0x00_0000);
/// Okabe & Ito 2008: orange.
pub const ORANGE: Colour = Colour::hex(0xE6_9F00);
/// Okabe & Ito 2008: sky blue.
pub const SKY_BLUE: Colour = Colour::hex(0x56_B4E9);
/// Okabe & Ito 2008: bluish green.
pub const BLUISH_GREEN: Colour = Colour::hex(0x00_9E73);
/// Okabe & Ito 2008: yellow.
pub const YELLOW: Colour = Colour::hex(0xF0_E442);
/// Okabe & Ito 2008: blue.
pub const BLUE: Colour = Colour::hex(0x00_72B2);
/// Okabe & Ito 2008: vermillion.
pub const VERMILLION: Colour = Colour::hex(0xD5_5E00);
/// Okabe & Ito 2008: reddish purple.
pub const REDDISH_PURPLE: Colour = Colour::hex(0xCC_79A7);

/// Linear light of an sRGB channel (IEC 61966-2-1).
pub fn linear(channel: u8) -> f64 {
    let value = f64::from(channel) / 255.0;
    if value <= 0.040_45 {
        value / 12.92
    } else {
        ((value + 0.055) / 1.055).powf(2.4)
    }
}

/// The sRGB channel of linear light (IEC 61966-2-1).
pub fn encoded(light: f64) -> u8 {
    let light = light.clamp(0.0, 1.0);
    let value = if light <= 0.003_130_8 {
        12.92 * light
    } else {
        1.055 * light.powf(1.0 / 2.4) - 0.055
    };
    (255.0 * value).round() as u8
}
