//! The elastic band: what it is made of and how hard it pulls at a length.
//!
//! In: dimensions or measured points, rest length, loss, wear. Out: force over length for every way
//! of hanging it. A slack band pulls with nothing. Sources: `rubber.rs` for the law; McMaster 2010
//! for how much nominally equal bands differ; Gent for the loss over a cycle (from memory).

use super::accepted::accepted;
use super::directions::share_of_way_back;
use super::fitted_pull::FittedPull;
use super::readings::BandReading;
use super::rubber::Rubber;
use crate::bounds::bounds;
use crate::error::{ImplementFault, ImplementSize};
use crate::source::Source;
use crate::units::Length;
use serde::Deserialize;

/// Difference in pull between two bands of the same label, smallest and largest, as a share.
///
/// Source: McMaster, Cronin & McGuigan 2010, J Strength Cond Res 24(8):2056-2064, abstract: 8-19 %.
pub const SPREAD_OF_EQUAL_BANDS: (f64, f64) = (0.08, 0.19);

/// Length that a band loses when it is choked round a post and pulled through itself, m.
///
/// Assumed: half the girth of a 60 mm post and the crossing of a band, about 12 cm.
pub const CHOKE_TAKE_UP_M: f64 = 0.12;

/// How a band is hung between anchor and load.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Deserialize)]
pub enum Hang {
    /// Doubled if it would be slack at the bottom and the top allows it, else single.
    #[default]
    Auto,
    /// Pulled as it is: a loop has two strands of its flat length.
    Single,
    /// Folded over the bar: twice the strands at half the length.
    Doubled,
    /// Choked round the anchor: the strands of a single band, a hand's breadth shorter.
    Choked,
}

/// How hard a band pulls when it is pulled as it is, and why we think so.
#[derive(Debug, Clone, PartialEq)]
pub enum BandPull {
    /// By the law of rubber on its dimensions.
    Dimensions {
        /// Width of one strand, m.
        width_m: f64,
        /// Thickness of one layer, m.
        thickness_m: f64,
        /// Layers glued to one strand.
        layers: u32,
        /// Strands that share the pull: 2 for a loop, 1 for a strip.
        strands: u32,
        /// The rubber it is made of.
        rubber: Rubber,
    },
    /// By the user's own readings.
    Readings(FittedPull),
}

/// One elastic band.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(try_from = "BandRecord")]
pub struct Band {
    name: String,
    rest_length_m: f64,
    pull: BandPull,
    loss: Loss,
    worn: f64,
    safe_stretch: f64,
    source: Source,
}

/// Share of the stored energy that a band keeps for itself over one cycle.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Loss {
    /// Share lost, 0 to 0.9: on the way back the band pulls with 1 − share of the force.
    pub share: f64,
    /// Where the share comes from.
    pub source: Source,
}

impl Default for Loss {
    /// 10 %, inside the textbook range of 5-20 % for gum natural rubber at moderate strain.
    fn default() -> Self {
        Self {
            share: 0.10,
            source: Source::FromMemory(
                "gent_2012".to_owned(),
                "hysteresis of gum natural rubber, 5-20 % of the stored energy a cycle".to_owned(),
            ),
        }
    }
}

/// A band as a model file writes it.
#[derive(Deserialize)]
#[serde(rename = "Band", deny_unknown_fields)]
struct BandRecord {
    name: String,
    rest_length: Length,
    pull: PullRecord,
    #[serde(default)]
    loss: Loss,
    #[serde(default)]
    worn: f64,
    #[serde(default = "safe_stretch")]
    safe_stretch: f64,
    #[serde(default = "unnamed_source")]
    source: Source,
}

#[derive(Deserialize)]
#[serde(rename = "Pull", deny_unknown_fields)]
enum PullRecord {
    Dimensions {
        width: Length,
        thickness: Length,
        #[serde(default = "one")]
        layers: u32,
        #[serde(default = "two")]
        strands: u32,
        #[serde(default = "Rubber::treloar_1944")]
        rubber: Rubber,
    },
    Readings(Vec<BandReading>),
}

/// What stands where a user's own file names no source; a test refuses it in the shipped models.
pub(super) fn unnamed_source() -> Source {
    Source::Assumed("given by the user without a source".to_owned())
}

fn one() -> u32 {
    1
}

fn two() -> u32 {
    2
}

/// Largest stretch that a plan may ask of a loop band: 2.5 times its rest length (assumed; plain
/// latex tubing stands up to 8, Lima 2019, but layered loops crack and slip off their anchors).
fn safe_stretch() -> f64 {
    2.5
}

impl TryFrom<BandRecord> for Band {
    type Error = ImplementFault;
    fn try_from(record: BandRecord) -> Result<Self, ImplementFault> {
        let rest_length_m = accepted(
            ImplementSize::RestLength,
            record.rest_length.as_m(),
            &bounds().band_rest_length,
        )?;
        let pull = record.pull.checked(record.rest_length)?;
        let band = Self {
            name: record.name,
            rest_length_m,
            pull,
            worn: accepted(ImplementSize::Worn, record.worn, &bounds().band_wear)?,
            safe_stretch: accepted(
                ImplementSize::SafeStretch,
                record.safe_stretch,
                &bounds().safe_stretch,
            )?,
            loss: Loss {
                share: accepted(
                    ImplementSize::LossShare,
                    record.loss.share,
                    &bounds().band_loss,
                )?,
                source: record.loss.source,
            },
            source: record.source,
        };
        let strongest_n = band.force_at_safe_stretch_n();
        accepted(ImplementSize::BandPull, strongest_n, &bounds().band_pull)?;
        Ok(band)
    }
}

impl PullRecord {
    fn checked(self, rest_length: Length) -> Result<BandPull, ImplementFault> {
        match self {
            Self::Readings(readings) => {
                let fitted = FittedPull::from_readings(&readings, Some(rest_length))?;
                Ok(BandPull::Readings(fitted))
            }
            Self::Dimensions { layers, .. } if !bounds().band_layers.holds(f64::from(layers)) => {
                Err(ImplementFault::Layers(layers))
            }
            Self::Dimensions { strands, .. }
                if !bounds().band_strands.holds(f64::from(strands)) =>
            {
                Err(ImplementFault::Strands(strands))
            }
            Self::Dimensions {
                width,
                thickness,
                layers,
                strands,
                rubber,
            } => Ok(BandPull::Dimensions {
                width_m: accepted(ImplementSize::Width, width.as_m(), &bounds().band_width)?,
                thickness_m: accepted(
                    ImplementSize::Thickness,
                    thickness.as_m(),
                    &bounds().band_thickness,
                )?,
                layers,
                strands,
                rubber,
            }),
        }
    }
}

impl Band {
    /// The user's own band, from a fit to readings of it as it is (a loop as a loop).
    #[must_use]
    pub fn measured(name: &str, fitted: FittedPull) -> Self {
        Self {
            name: name.to_owned(),
            rest_length_m: fitted.rest_length().as_m(),
            pull: BandPull::Readings(fitted),
            loss: Loss::default(),
            worn: 0.0,
            safe_stretch: safe_stretch(),
            source: Source::Assumed("measured by the user".to_owned()),
        }
    }

    /// What the band is called.
    #[must_use]
    pub fn name(&self) -> &str {
        &self.name
    }

    /// Length of the band laid flat, before anything pulls.
    #[must_use]
    pub fn rest_length(&self) -> Length {
        Length::from_m(self.rest_length_m)
    }

    /// How its pull is known.
    #[must_use]
    pub fn pull(&self) -> &BandPull {
        &self.pull
    }

    /// Share of the pull lost to wear.
    #[must_use]
    pub fn worn(&self) -> f64 {
        self.worn
    }

    /// Largest length over rest length that a plan may ask for.
    #[must_use]
    pub fn safe_stretch(&self) -> f64 {
        self.safe_stretch
    }

    /// Pull at the largest stretch that a plan may ask for, new and as it is, N.
    #[must_use]
    pub fn force_at_safe_stretch_n(&self) -> f64 {
        let worn = 1.0 - self.worn;
        self.force_n(self.safe_stretch * self.rest_length_m, Hang::Single) / worn
    }

    /// Where the band's numbers come from.
    #[must_use]
    pub fn source(&self) -> &Source {
        &self.source
    }

    /// Distance from anchor to load at which the band is just taut, m.
    #[must_use]
    pub fn taut_length_m(&self, hang: Hang) -> f64 {
        match hang {
            Hang::Auto | Hang::Single => self.rest_length_m,
            Hang::Doubled => self.rest_length_m / 2.0,
            Hang::Choked => (self.rest_length_m - CHOKE_TAKE_UP_M).max(self.rest_length_m / 4.0),
        }
    }

    /// Present length over rest length when anchor and load are `distance_m` apart.
    #[must_use]
    pub fn stretch(&self, distance_m: f64, hang: Hang) -> f64 {
        distance_m / self.taut_length_m(hang)
    }

    /// How hard the band pulls while it is being stretched, N.
    ///
    /// ```text
    /// F = (1 − worn) · folds · strands · width · thickness · layers · s(L)        L = distance / taut length
    /// ```
    /// | symbol        | meaning                                              | unit | range |
    /// | ------------- | ---------------------------------------------------- | ---- | ----- |
    /// | `strands`     | strands of the band as it is: loop 2, strip 1         | –    | 1-8   |
    /// | `folds`       | 2 for a band doubled over the bar, else 1             | –    | 1, 2  |
    /// | `taut length` | rest length; half of it when doubled                  | m    | > 0   |
    /// | `s(L)`        | stress at stretch L, [`Rubber::nominal_stress_pa`]    | Pa   | ≥ 0   |
    ///
    /// Measured bands put their fitted force in the place of strands × … × s(L).
    ///
    /// **Shape.** 0 while slack, then steep, then gentler; doubling gives four times the force at
    /// half the length of a single loop stretched by the same distance in the linear limit.
    /// **Source.** Force is fixed by relative length alone: Thomas 2005, Simoneau 2001 (from memory).
    /// **Fails.** Never; a distance that is no number counts as slack.
    #[must_use]
    pub fn force_n(&self, distance_m: f64, hang: Hang) -> f64 {
        let stretch = self.stretch(distance_m, hang);
        let folds = if hang == Hang::Doubled { 2.0 } else { 1.0 };
        let as_it_is_n = match &self.pull {
            BandPull::Dimensions {
                width_m,
                thickness_m,
                layers,
                strands,
                rubber,
            } => {
                let section_m2 = width_m * thickness_m * f64::from(layers * strands);
                section_m2 * rubber.nominal_stress_pa(stretch)
            }
            BandPull::Readings(fitted) => fitted.force_n(stretch),
        };
        (1.0 - self.worn) * folds * as_it_is_n
    }

    /// How hard the band pulls while its length changes: less when it shortens, N.
    ///
    /// ```text
    /// F_back = (1 − h) · F
    /// ```
    /// `stretching` is how much of the motion lengthens the band: 1 straight away from the anchor, −1
    /// straight towards it. Near 0 the force passes smoothly between the two branches.
    ///
    /// **Shape.** Over a closed cycle the share h of the stored energy is lost, never gained.
    /// **Source.** h: [`Loss`]. **Fails.** Never.
    #[must_use]
    pub fn force_in_motion_n(&self, distance_m: f64, hang: Hang, stretching: f64) -> f64 {
        let kept = 1.0 - self.loss.share * share_of_way_back(stretching);
        self.force_n(distance_m, hang) * kept
    }

    /// What another band of the same label may pull instead, lowest and highest, N.
    ///
    /// Two nominally equal bands differ by up to 19 % ([`SPREAD_OF_EQUAL_BANDS`]), so one may lie half
    /// of that above or below. A measured band is known and has no such range.
    #[must_use]
    pub fn spread_n(&self, force_n: f64) -> (f64, f64) {
        let half = match self.pull {
            BandPull::Dimensions { .. } => SPREAD_OF_EQUAL_BANDS.1 / 2.0,
            BandPull::Readings(_) => 0.0,
        };
        (force_n * (1.0 - half), force_n * (1.0 + half))
    }
}
