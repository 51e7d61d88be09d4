//! Polynomials, as published moment-arm fits give them.
//!
//! In: coefficients, constant first. Out: value and integral, both exact.

use crate::error::{Error, NumericFault, Result};

/// A polynomial in one variable.
///
/// ```text
/// p(x) = c₀ + c₁ x + c₂ x² + …
/// ```
/// **Shape.** Smooth everywhere; far outside the range it was fitted on it runs away, so the caller
/// keeps to that range.
/// **Fails.** [`Polynomial::new`] refuses no coefficient at all, and one that is not finite.
///
/// ```
/// use torquill::numeric::Polynomial;
/// let p = Polynomial::new(&[1.0, 0.0, 3.0])?; // 1 + 3x²
/// assert_eq!((p.value(2.0), p.integral(0.0, 2.0)), (13.0, 10.0));
/// # Ok::<(), torquill::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Polynomial {
    coefficients: Vec<f64>,
}

impl Polynomial {
    /// The polynomial with these coefficients, the constant first.
    ///
    /// # Errors
    /// No coefficient, or one that is not finite.
    pub fn new(coefficients: &[f64]) -> Result<Self> {
        if coefficients.is_empty() {
            return Err(Error::bad(NumericFault::NoCoefficient));
        }
        if let Some(power) = coefficients.iter().position(|c| !c.is_finite()) {
            return Err(Error::bad(NumericFault::CoefficientNotFinite {
                power,
                value: coefficients[power],
            }));
        }
        Ok(Self {
            coefficients: coefficients.to_vec(),
        })
    }

    /// The value at `x`.
    #[must_use]
    pub fn value(&self, x: f64) -> f64 {
        self.coefficients
            .iter()
            .rev()
            .fold(0.0, |sum, c| sum * x + c)
    }

    /// The exact integral from `reference` to `x`.
    #[must_use]
    pub fn integral(&self, reference: f64, x: f64) -> f64 {
        self.area_to(x) - self.area_to(reference)
    }

    fn area_to(&self, x: f64) -> f64 {
        let numbered = self.coefficients.iter().enumerate().rev();
        x * numbered.fold(0.0, |sum, (power, c)| sum * x + c / (power + 1) as f64)
    }
}
