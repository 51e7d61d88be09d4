//! A cam: the radius on which a machine's cable runs, as it turns with the lever.
//!
//! In: radius points over the lever's angle, or a capacity curve to copy. Out: radius at an angle.
//! Source: statics; a cam whose radius follows capacity makes every angle equally hard.

use super::accepted::accepted;
use crate::bounds::bounds;
use crate::error::{CamFault, ImplementFault, ImplementSize};
use crate::numeric::{Beyond, Spline};
use crate::units::{Angle, Length};
use serde::Deserialize;

/// A cam by its radius over the angle that the lever has turned since the start of the range.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(try_from = "CamRecord")]
pub struct Cam {
    points: Vec<(f64, f64)>,
    radius_m: Spline,
    /// Mean radius of a cam that is still to be fitted to a capacity; it is round until then.
    to_fit: Option<Length>,
}

/// A cam as a file writes it: `(profile: [("0 deg", "10 cm"), …])` or `(fitted: "12 cm")`.
#[derive(Deserialize)]
#[serde(rename = "Cam", deny_unknown_fields)]
struct CamRecord {
    #[serde(default)]
    profile: Vec<(Angle, Length)>,
    #[serde(default)]
    fitted: Option<Length>,
}

impl TryFrom<CamRecord> for Cam {
    type Error = ImplementFault;
    fn try_from(record: CamRecord) -> Result<Self, ImplementFault> {
        match record.fitted {
            None => Self::through(&record.profile),
            Some(mean_radius) if record.profile.is_empty() => Self::to_fit(mean_radius),
            Some(_) => Err(CamFault::InTwoWays.into()),
        }
    }
}

impl Cam {
    /// A cam through points of (angle since the start, radius): smooth and without overshoot in
    /// between, round beyond them. One point alone is a round cam.
    ///
    /// **Fails** for no point, angles that do not rise, or a radius outside 5 mm to 1 m.
    pub fn through(profile: &[(Angle, Length)]) -> Result<Self, ImplementFault> {
        if profile.is_empty() {
            return Err(CamFault::WithoutPoint.into());
        }
        if let Some(pair) = profile.windows(2).find(|pair| pair[1].0 <= pair[0].0) {
            return Err(CamFault::AngleFalls {
                angle: pair[1].0,
                before: pair[0].0,
            }
            .into());
        }
        for (_, radius) in profile {
            accepted(
                ImplementSize::CamRadius,
                radius.as_m(),
                &bounds().cam_radius,
            )?;
        }
        let mut points: Vec<(f64, f64)> = profile
            .iter()
            .map(|(angle, radius)| (angle.as_rad(), radius.as_m()))
            .collect();
        if let [only] = points[..] {
            points.push((only.0 + 1.0, only.1));
        }
        let radius_m = Spline::through(&points, Beyond::ConstantValue)
            .expect("two points or more, of finite numbers whose angles rise");
        Ok(Self {
            points,
            radius_m,
            to_fit: None,
        })
    }

    /// A cam that will follow the lifter's strength, with this mean radius: round until it is
    /// [fitted](Self::followed).
    ///
    /// **Fails** for a radius outside 5 mm to 1 m.
    pub fn to_fit(mean_radius: Length) -> Result<Self, ImplementFault> {
        let round = Self::through(&[(Angle::ZERO, mean_radius)])?;
        Ok(Self {
            to_fit: Some(mean_radius),
            ..round
        })
    }

    /// Whether it is still to be fitted to a lifter.
    #[must_use]
    pub fn is_to_fit(&self) -> bool {
        self.to_fit.is_some()
    }

    /// The cam as it is once the lifter's capacity is known: fitted if it was to be, else itself.
    ///
    /// **Fails** as [`Cam::fitted`] does.
    pub fn followed(&self, angles: &[Angle], capacity: &[f64]) -> Result<Self, ImplementFault> {
        match self.to_fit {
            Some(mean_radius) => Self::fitted(angles, capacity, mean_radius),
            None => Ok(self.clone()),
        }
    }

    /// A cam that is large where the lifter is strong, in proportion to capacity.
    ///
    /// ```text
    /// r(θ) = r_mean · capacity(θ) / mean(capacity)
    /// ```
    /// Effort over such a cam is the same at every given angle, and nearly so in between.
    ///
    /// **Shape.** That of the capacity; its mean is `mean_radius`.
    /// **Source.** Statics: torque of the stack = m·g·r. **Fails** for lists of different length,
    /// a capacity that is not positive everywhere, or a radius that no cam can have.
    pub fn fitted(
        angles: &[Angle],
        capacity: &[f64],
        mean_radius: Length,
    ) -> Result<Self, ImplementFault> {
        if angles.len() != capacity.len() || angles.is_empty() {
            return Err(CamFault::FitCounts {
                capacities: capacity.len(),
                angles: angles.len(),
            }
            .into());
        }
        if let Some(odd) = capacity.iter().find(|c| !(c.is_finite() && **c > 0.0)) {
            return Err(CamFault::Capacity(*odd).into());
        }
        let mean = capacity.iter().sum::<f64>() / capacity.len() as f64;
        let weakest = capacity.iter().copied().fold(f64::INFINITY, f64::min) / mean;
        let (smallest, least) = (
            mean_radius * weakest,
            Length::from_m(bounds().cam_radius.least()),
        );
        if smallest < least {
            return Err(CamFault::FitTooSmall {
                smallest,
                least,
                mean_at_least: least * (1.0 / weakest),
            }
            .into());
        }
        let profile: Vec<(Angle, Length)> = angles
            .iter()
            .zip(capacity)
            .map(|(angle, capacity)| (*angle, mean_radius * (capacity / mean)))
            .collect();
        Self::through(&profile)
    }

    /// Radius after the lever has turned by this angle, m.
    #[must_use]
    pub fn radius_m(&self, angle_rad: f64) -> f64 {
        self.radius_m.value(angle_rad)
    }
}
