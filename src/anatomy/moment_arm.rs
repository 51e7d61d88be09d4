//! A muscle's moment arm as a function of a joint angle, and the length it implies.
//!
//! In: a constant, a published polynomial or published points from a model file. Out: [`ArmCurve`]:
//! value and exact integral, so that r = −dL/dq holds by construction.

use crate::error::{BodyFault, Error, Result};
use crate::numeric::{Beyond, Polynomial, Spline};
use crate::source::Source;
use crate::units::{Angle, Length};
use serde::{Deserialize, Serialize};

/// A moment arm as the model file gives it: positive where the muscle pulls the angle up.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct MomentArm {
    /// Its course over the angle.
    pub shape: ArmShape,
    /// Multiplies the whole course; 1 unless a body is scaled or a value is set.
    #[serde(default = "one")]
    pub scale: f64,
    /// Where the course comes from.
    pub source: Source,
}

fn one() -> f64 {
    1.0
}

/// The course of a moment arm over its joint angle.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub enum ArmShape {
    /// The same at every angle.
    Constant(Length),
    /// `Σ c_k·q^k` in cm with q in radians, held constant outside the published angles.
    Polynomial {
        /// Coefficients in cm, lowest power first.
        coefficients_cm: Vec<f64>,
        /// First angle for which the polynomial was published.
        from: Angle,
        /// Last angle for which it was published.
        to: Angle,
    },
    /// Monotone cubic through points, level at and beyond the first and the last.
    Points(Vec<(Angle, Length)>),
}

/// A moment arm ready to be evaluated, in SI.
#[derive(Debug, Clone)]
pub struct ArmCurve {
    course: Course,
    scale: f64,
}

#[derive(Debug, Clone)]
enum Course {
    Constant(f64),
    Polynomial {
        value: Polynomial,
        from_rad: f64,
        to_rad: f64,
    },
    Points(Spline),
}

impl MomentArm {
    /// The curve to evaluate.
    ///
    /// **Fails** if points are fewer than two or not in rising order of angle.
    pub fn curve(&self) -> Result<ArmCurve> {
        let course = match &self.shape {
            ArmShape::Constant(length) => Course::Constant(length.as_m()),
            ArmShape::Polynomial {
                coefficients_cm,
                from,
                to,
            } => polynomial_course(coefficients_cm, *from, *to)?,
            ArmShape::Points(points) => {
                let points: Vec<(f64, f64)> =
                    points.iter().map(|p| (p.0.as_rad(), p.1.as_m())).collect();
                Course::Points(Spline::through(&points, Beyond::Level)?)
            }
        };
        Ok(ArmCurve {
            course,
            scale: self.scale,
        })
    }
}

fn polynomial_course(coefficients_cm: &[f64], from: Angle, to: Angle) -> Result<Course> {
    if coefficients_cm.is_empty() || from >= to {
        return Err(Error::bad(BodyFault::ArmPolynomial));
    }
    let coefficients_m: Vec<f64> = coefficients_cm.iter().map(|c| c / 100.0).collect();
    Ok(Course::Polynomial {
        value: Polynomial::new(&coefficients_m)?,
        from_rad: from.as_rad(),
        to_rad: to.as_rad(),
    })
}

impl ArmCurve {
    /// Moment arm at an angle, m.
    #[must_use]
    pub fn at(&self, angle_rad: f64) -> f64 {
        self.scale
            * match &self.course {
                Course::Constant(arm_m) => *arm_m,
                Course::Polynomial {
                    value,
                    from_rad,
                    to_rad,
                    ..
                } => value.value(angle_rad.clamp(*from_rad, *to_rad)),
                Course::Points(spline) => spline.value(angle_rad),
            }
    }

    /// Length that the muscle gives off between two angles, m: `∫ r dq`.
    ///
    /// A flexor (r > 0) shortens by this much when the angle grows from `from_rad` to `to_rad`.
    #[must_use]
    pub fn shortening(&self, from_rad: f64, to_rad: f64) -> f64 {
        self.antiderivative(to_rad) - self.antiderivative(from_rad)
    }

    /// An antiderivative of the arm, m: differences of it are lengths.
    #[must_use]
    pub fn antiderivative(&self, angle_rad: f64) -> f64 {
        self.scale
            * match &self.course {
                Course::Constant(arm_m) => arm_m * angle_rad,
                Course::Polynomial {
                    value,
                    from_rad,
                    to_rad,
                } => {
                    let inside = angle_rad.clamp(*from_rad, *to_rad);
                    value.integral(0.0, inside) + value.value(inside) * (angle_rad - inside)
                }
                Course::Points(spline) => spline.integral(spline.range().0, angle_rad),
            }
    }
}
