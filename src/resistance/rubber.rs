//! How hard rubber pulls back: nominal stress over stretch.
//!
//! In: the two material constants and the stretch (length over rest length). Out: force per
//! unstretched cross-section. Source: Mooney 1940, Rivlin 1948, in the form of Treloar 1975; the
//! default constants are fitted to Treloar's 1944 data.

use crate::source::Source;
use crate::units::Stress;
use serde::Deserialize;

/// Constants of a rubber by the two-constant law of Mooney and Rivlin.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Rubber {
    /// First constant; carries most of the force at large stretch.
    pub c1: Stress,
    /// Second constant; makes the first centimetres stiff.
    pub c2: Stress,
    /// Where the constants come from.
    pub source: Source,
}

impl Rubber {
    /// Gum natural rubber as Treloar measured it.
    ///
    /// C1 = 0.0909 MPa and C2 = 0.1251 MPa: least squares on the points of Treloar 1944 (8 % sulphur
    /// rubber, uniaxial, loading) with stretch up to 2.2, which leave at most 1.7 %.
    #[must_use]
    pub fn treloar_1944() -> Self {
        Self {
            c1: Stress::from_mpa(0.0909),
            c2: Stress::from_mpa(0.1251),
            source: Source::Derived(
                "treloar_1944".to_owned(),
                "least squares on the uniaxial points with stretch up to 2.2".to_owned(),
            ),
        }
    }

    /// Force per unstretched cross-section of a rubber strip, Pa.
    ///
    /// ```text
    /// s(L) = 2 · (L − 1/L²) · (C1 + C2/L)      for L > 1,   else 0
    /// ```
    /// | symbol   | meaning                       | unit | range |
    /// | -------- | ----------------------------- | ---- | ----- |
    /// | `L`      | length / rest length          | –    | any   |
    /// | `C1, C2` | constants of the rubber       | Pa   | ≥ 0   |
    ///
    /// **Shape.** 0 up to rest length (a strip cannot push), then rising steeply and ever more
    /// gently; slope 6·(C1 + C2) at the start, which is Young's modulus.
    /// **Source.** Mooney M (1940) J Appl Phys 11:582-592; Rivlin RS (1948) Phil Trans R Soc A
    /// 241:379-397 (from memory).
    /// **Fails.** Never. Beyond a stretch of about 5 real rubber crystallises and is stiffer.
    #[must_use]
    pub fn nominal_stress_pa(&self, stretch: f64) -> f64 {
        let (first, second) = stretch_terms(stretch);
        self.c1.as_pa() * first + self.c2.as_pa() * second
    }
}

/// The two functions of stretch that the constants multiply: 2·(L − 1/L²) and that divided by L.
///
/// Both are 0 for a slack strip, rise with stretch, and are linear in the constants, so that a fit
/// of measured points is a linear one.
#[must_use]
pub fn stretch_terms(stretch: f64) -> (f64, f64) {
    if stretch.is_nan() || stretch <= 1.0 {
        return (0.0, 0.0);
    }
    let first = 2.0 * (stretch - 1.0 / (stretch * stretch));
    (first, first / stretch)
}
