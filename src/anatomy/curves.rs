//! The normalised curves of a fibre: active and passive force over length, force over velocity.
//!
//! In: fibre length over optimal length, fibre velocity over its maximum (shortening positive).
//! Out: shares of the peak isometric force. The constants live in `models/curves/`, each with its
//! publication; the formulas stand here.

use super::dynamics::Dynamics;
use crate::source::Source;
use serde::{Deserialize, Serialize};

/// Share of its peak force that a fully active fibre makes at a length: one of three published forms.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub enum ActiveForceLength {
    /// Sum of three bells whose widths change with length (De Groote et al. 2016).
    Bells(Vec<Bell>),
    /// `1 − ((l − 1)/w)²`, floored at 0 (van Soest & Bobbert 1993).
    Parabola {
        /// Half width at the foot, in optimal lengths.
        width: f64,
    },
    /// `exp(−(l − 1)²/γ)` (Thelen 2003).
    Gaussian {
        /// Width factor γ.
        gamma: f64,
    },
}

/// One bell of [`ActiveForceLength::Bells`]: `b1·exp(−½·((l − b2)/(b3 + b4·l))²)`.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Bell {
    /// Height.
    pub b1: f64,
    /// Centre, in optimal lengths.
    pub b2: f64,
    /// Width at length 0.
    pub b3: f64,
    /// Growth of the width with length.
    pub b4: f64,
}

impl ActiveForceLength {
    /// Share of peak force of a fully active fibre at length `l`.
    ///
    /// ```text
    /// bells     f(l) = Σ b1·exp(−½·((l − b2)/(b3 + b4·l))²)
    /// parabola  f(l) = max(0, 1 − ((l − 1)/w)²)
    /// gaussian  f(l) = exp(−(l − 1)²/γ)
    /// ```
    /// | symbol | meaning                             | unit | range |
    /// | ------ | ----------------------------------- | ---- | ----- |
    /// | `l`    | fibre length / optimal fibre length | –    | l > 0 |
    ///
    /// **Shape.** One peak of 1 near l = 1 (bells: 1.0005 at 1.014), falling to both sides.
    /// **Source.** De Groote 2016; van Soest & Bobbert 1993; Thelen 2003 (constants in the model).
    /// **Differs.** Below l = 0.2 the bells' widths change sign; the curve is 0 there.
    /// **Fails.** Never.
    #[must_use]
    pub fn at(&self, l: f64) -> f64 {
        match self {
            Self::Bells(_) if l < 0.2 => 0.0,
            Self::Bells(bells) => bells
                .iter()
                .map(|b| {
                    let u = (l - b.b2) / (b.b3 + b.b4 * l);
                    b.b1 * (-0.5 * u * u).exp()
                })
                .sum(),
            Self::Parabola { width } => (1.0 - ((l - 1.0) / width).powi(2)).max(0.0),
            Self::Gaussian { gamma } => (-(l - 1.0).powi(2) / gamma).exp(),
        }
    }
}

/// Passive force of a stretched fibre: exponential from its slack length.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PassiveForceLength {
    /// Shape factor k.
    pub shape: f64,
    /// Strain at which the passive force equals the peak active force.
    pub strain_at_peak: f64,
}

impl PassiveForceLength {
    /// Passive share of peak force at length `l`.
    ///
    /// ```text
    /// f(l) = (exp(k·(l − 1)/e0) − 1)/(exp(k) − 1)   for l > 1,  else 0
    /// ```
    /// | symbol | meaning                                   | unit | range |
    /// | ------ | ----------------------------------------- | ---- | ----- |
    /// | `l`    | fibre length / optimal fibre length       | –    | l > 0 |
    /// | `k`    | shape                                     | –    | k > 0 |
    /// | `e0`   | strain at which f = 1                     | –    | > 0   |
    ///
    /// **Shape.** 0 up to l = 1, then rising ever more steeply, f(1 + e0) = 1; the corner at l = 1 has
    /// the slope k/(e0·(exp k − 1)), 0.06-0.12 of peak force per optimal length.
    /// **Source.** Thelen 2003; De Groote 2016. **Fails.** Never.
    #[must_use]
    pub fn at(&self, l: f64) -> f64 {
        if l <= 1.0 {
            return 0.0;
        }
        ((self.shape * (l - 1.0) / self.strain_at_peak).exp() - 1.0) / (self.shape.exp() - 1.0)
    }
}

/// Force over velocity: Hill's hyperbola in shortening, a hyperbola to a limit in lengthening.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ForceVelocity {
    /// Hill's a/F0.
    pub hill_a: f64,
    /// Force of a rapidly lengthened, fully active fibre over its isometric force.
    pub eccentric_limit: f64,
    /// Share of the fibre's eccentric surplus that a voluntary effort brings to the joint.
    pub voluntary_share: f64,
    /// How much steeper force rises in slow lengthening than it falls in slow shortening.
    pub eccentric_slope: f64,
}

impl ForceVelocity {
    /// Share of isometric force at fibre velocity `v`.
    ///
    /// ```text
    /// shortening   f(v) = (1 − v)/(1 + v/a)                    0 ≤ v ≤ 1,  0 above
    /// lengthening  f(v) = 1 + (L − 1)·u/(u + c),  u = −v > 0
    ///              L = 1 + share·(limit − 1),  c = (L − 1)/(k·(1 + 1/a))
    /// ```
    /// | symbol | meaning                                          | unit | range |
    /// | ------ | ------------------------------------------------ | ---- | ----- |
    /// | `v`    | fibre velocity / maximum, shortening positive    | –    | any   |
    /// | `a`    | Hill's a/F0                                      | –    | > 0   |
    /// | `L`    | eccentric force that a voluntary effort reaches  | –    | ≥ 1   |
    /// | `k`    | slope in lengthening over that in shortening     | –    | ≥ 1   |
    ///
    /// **Shape.** f(0) = 1, falling to 0 at v = 1, rising to L in fast lengthening; continuous, with a
    /// kink at v = 0 where k > 1: a motion passes it only at rest.
    /// **Source.** Hill 1938 (normalised); eccentric limit Thelen 2003; slope Katz 1939; that a joint in
    /// vivo shows only 1.0-1.2 of isometric, reached in slow lengthening already: Westing 1988,
    /// Armstrong 2022, Alcazar 2019. **Fails.** Never.
    #[must_use]
    pub fn at(&self, v: f64) -> f64 {
        if v >= 1.0 {
            return 0.0;
        }
        if v >= 0.0 {
            return (1.0 - v) / (1.0 + v / self.hill_a);
        }
        let surplus = self.voluntary_share * (self.eccentric_limit - 1.0);
        if surplus <= 0.0 {
            return 1.0;
        }
        let c = surplus / (self.eccentric_slope.max(1.0) * (1.0 + 1.0 / self.hill_a));
        1.0 + surplus * -v / (-v + c)
    }
}

/// The curves that all muscles of a lifter share.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Curves {
    /// Active force over length.
    pub active: ActiveForceLength,
    /// Source of the active curve.
    pub active_source: Source,
    /// Passive force over length.
    pub passive: PassiveForceLength,
    /// Source of the passive curve.
    pub passive_source: Source,
    /// Force over velocity.
    pub velocity: ForceVelocity,
    /// Source of Hill's constant and of the eccentric limit.
    pub velocity_source: Source,
    /// Source of the share of the eccentric surplus that reaches a joint.
    pub voluntary_source: Source,
    /// Source of the slope in slow lengthening.
    pub slope_source: Source,
    /// How the muscles answer in time.
    pub dynamics: Dynamics,
}
