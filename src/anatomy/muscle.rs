//! A muscle's parameters: fibres, pennation, peak force, moment arms, and the pose that fixes its length.
//!
//! In: a record of `models/muscles/`. Out: [`Muscle`] as data, [`Fibre`] ready to be evaluated.

use super::curves::Curves;
use super::joint::Dof;
use super::moment_arm::MomentArm;
use super::segment::SegmentName;
use super::shoulder_line::ShoulderLine;
use super::shoulder_pose::ShoulderPose;
use super::tendon::{Tendon, tendon_strain};
use crate::source::Source;
use crate::units::{Angle, Force, Length};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// One muscle (or one head of one) of one side.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Muscle {
    /// Force of all fibres, fully active, isometric, at optimal length.
    pub peak_force: Force,
    /// Fibre length at which the active force is greatest.
    pub optimal_fibre_length: Length,
    /// Angle between fibres and tendon at optimal length.
    pub pennation: Angle,
    /// Greatest shortening velocity, optimal fibre lengths per second.
    pub max_velocity: f64,
    /// Source of the greatest shortening velocity.
    pub velocity_source: Source,
    /// Strength group: a lifter scales whole groups, never single muscles.
    pub group: String,
    /// Segment whose length scales the fibres and the moment arms.
    pub along: SegmentName,
    /// Moment arm at every degree of freedom that the muscle crosses, the shoulder's apart.
    #[serde(default)]
    pub moment_arm: BTreeMap<Dof, MomentArm>,
    /// Its line across the shoulder, if it crosses it.
    #[serde(default)]
    pub shoulder: Option<ShoulderLine>,
    /// Fibre length in a reference pose.
    pub reference: Vec<Reference>,
    /// The tendon in series.
    #[serde(default)]
    pub tendon: Tendon,
    /// Source of force, fibre length and pennation.
    pub source: Source,
}

/// A pose in which the fibre length is known.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Reference {
    /// The angles of that pose; those not named are 0.
    pub at: BTreeMap<Dof, Angle>,
    /// Relaxed fibre length there over the optimal length.
    pub fibre_length: f64,
    /// Where this comes from.
    pub source: Source,
}

impl Reference {
    /// How the shoulder stands in that pose.
    #[must_use]
    pub fn shoulder(&self) -> ShoulderPose {
        self.at
            .iter()
            .find(|(dof, _)| dof.is_shoulder())
            .map_or_else(ShoulderPose::hanging, |(dof, angle)| {
                ShoulderPose::in_plane(*dof, angle.as_rad())
            })
    }
}

impl Muscle {
    /// Whether the muscle turns about a degree of freedom.
    #[must_use]
    pub fn crosses(&self, dof: Dof) -> bool {
        self.moment_arm.contains_key(&dof) || (dof.is_shoulder() && self.shoulder.is_some())
    }
}

/// The architecture of one muscle in SI, ready for evaluation.
#[derive(Debug, Clone)]
pub struct Fibre {
    /// Peak isometric force, N.
    pub peak_force_n: f64,
    /// Optimal fibre length, m.
    pub optimal_m: f64,
    /// Greatest shortening velocity, m/s.
    pub max_velocity_m_s: f64,
    /// Thickness of the pennate muscle, m: optimal length × sin(pennation), constant.
    pub thickness_m: f64,
    /// The tendon in series.
    pub tendon: Tendon,
}

/// Length, angle and speed of a muscle's fibres at one pose.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct FibreState {
    /// Fibre length over the optimal length.
    pub length_norm: f64,
    /// Fibre velocity over its maximum, shortening positive.
    pub velocity_norm: f64,
    /// Cosine of the pennation angle at this length.
    pub cos_pennation: f64,
}

impl Fibre {
    /// The architecture of a muscle.
    #[must_use]
    pub fn of(muscle: &Muscle) -> Self {
        let optimal_m = muscle.optimal_fibre_length.as_m();
        Self {
            peak_force_n: muscle.peak_force.as_n(),
            optimal_m,
            max_velocity_m_s: muscle.max_velocity * optimal_m,
            thickness_m: optimal_m * muscle.pennation.sin(),
            tendon: muscle.tendon.clone(),
        }
    }

    /// Length of the fibres projected on the tendon's line, m.
    ///
    /// ```text
    /// p = √((l·l0)² − h²),  h = l0·sin α0
    /// ```
    /// `l` fibre length / optimal, `l0` optimal length (m), `α0` pennation at l = 1, `h` thickness (m),
    /// constant as the muscle shortens. **Source.** van den Bogert 2011; Zajac 1989 (constant thickness).
    #[must_use]
    pub fn projected_m(&self, length_norm: f64) -> f64 {
        let length_m = length_norm * self.optimal_m;
        (length_m * length_m - self.thickness_m * self.thickness_m)
            .max(0.0)
            .sqrt()
    }

    /// State of the fibres whose projection is `projected_m` and shrinks at `shortening_m_s`.
    ///
    /// ```text
    /// l = √(p² + h²)/l0,  cos α = p/(l·l0),  v = ṗ·cos α/v_max
    /// ```
    /// **Differs.** A projection below 5 % of the optimal length is held there: no movement of a
    /// plausible body reaches it, and the fibre makes no force at such a length.
    #[must_use]
    pub fn state(&self, projected_m: f64, shortening_m_s: f64) -> FibreState {
        let projected_m = projected_m.max(0.05 * self.optimal_m);
        let length_m = (projected_m * projected_m + self.thickness_m * self.thickness_m).sqrt();
        let cos_pennation = projected_m / length_m;
        FibreState {
            length_norm: length_m / self.optimal_m,
            velocity_norm: shortening_m_s * cos_pennation / self.max_velocity_m_s,
            cos_pennation,
        }
    }

    /// The same fibres at another speed of their projection.
    #[must_use]
    pub fn moving(&self, still: FibreState, shortening_m_s: f64) -> FibreState {
        FibreState {
            velocity_norm: shortening_m_s * still.cos_pennation / self.max_velocity_m_s,
            ..still
        }
    }

    /// Whether the tendon keeps its length, so that fibres do not know how active they are.
    #[must_use]
    pub fn has_rigid_tendon(&self) -> bool {
        !matches!(self.tendon, Tendon::Compliant { .. })
    }

    /// State of fully active fibres in series with the tendon, when the relaxed projection is
    /// `projected_m`: a compliant tendon stretches, so the fibres are shorter.
    ///
    /// ```text
    /// find p:  F0·[f_active(l)·f_velocity(v) + f_passive(l)]·cos α = F0·f_tendon((p0 − p)/slack)
    /// ```
    /// `p0` relaxed projection (m), `p` active one (m). Solved for the force that both bear, by false position
    /// (Anderson & Bjorck 1973, from memory): some six evaluations to 1e-12 of the peak force.
    /// **Fails.** Never; a rigid tendon returns the relaxed state.
    #[must_use]
    pub fn active_state(
        &self,
        curves: &Curves,
        projected_m: f64,
        shortening_m_s: f64,
    ) -> FibreState {
        let Tendon::Compliant {
            slack_length,
            strain_at_peak,
            ..
        } = &self.tendon
        else {
            return self.state(projected_m, shortening_m_s);
        };
        let slack_m = slack_length.as_m();
        let beside = |force: f64| {
            let strain = tendon_strain(force, *strain_at_peak);
            self.state(projected_m - strain * slack_m, shortening_m_s)
        };
        // What the fibres make beyond the force that shortened them so far; falls as that force grows.
        let surplus = |force: f64| {
            let (passive, active) = force_shares(curves, beside(force));
            passive + active - force
        };
        beside(balance(surplus))
    }
}

/// Force along the tendon as shares of the peak force: passive part, and what full activation adds.
///
/// ```text
/// F(a)/F0 = [ a·f_active(l)·f_velocity(v) + f_passive(l) ]·cos α
/// ```
/// `a` activation (0-1), `F0` peak force (N), `l` and `v` as in [`FibreState`], `α` pennation.
/// **Shape.** Linear in `a`. **Source.** Zajac 1989. **Fails.** Never.
#[must_use]
pub fn force_shares(curves: &Curves, state: FibreState) -> (f64, f64) {
    let active = curves.active.at(state.length_norm) * curves.velocity.at(state.velocity_norm);
    let passive = curves.passive.at(state.length_norm);
    (state.cos_pennation * passive, state.cos_pennation * active)
}

/// The share of peak force at which a surplus that falls with it is nothing.
fn balance(surplus: impl Fn(f64) -> f64) -> f64 {
    /// A surplus too small to matter, share of the peak force.
    const NOTHING: f64 = 1.0e-12;
    let (mut low, mut more) = (0.0, surplus(0.0));
    if more <= NOTHING {
        return low;
    }
    // Shortened fibres mostly bear less than relaxed ones; doubled until they do.
    let mut high = more;
    let mut less = surplus(high);
    while less > 0.0 && high < 64.0 {
        (low, more) = (high, less);
        high *= 2.0;
        less = surplus(high);
    }
    // The end found last and the other one; the other's surplus is slowed when it stays twice.
    let (mut last, mut at_last, mut other, mut at_other) = (high, less, low, more);
    for _ in 0..60 {
        let next = (other * at_last - last * at_other) / (at_last - at_other);
        let found = surplus(next);
        if found.abs() <= NOTHING || (last - other).abs() <= NOTHING {
            return next;
        }
        if (found > 0.0) == (at_last > 0.0) {
            let weight = 1.0 - found / at_last;
            at_other *= if weight > 0.0 { weight } else { 0.5 };
        } else {
            (other, at_other) = (last, at_last);
        }
        (last, at_last) = (next, found);
    }
    f64::midpoint(last, other)
}
