//! How long a share of maximal force can be held: in closed form, by stepping, by published curves.

use torquill::session::fatigue::{Compartments, FatigueJoint, TiringJoint, after};
use torquill::units::Duration;

/// How long a share of maximal force can be held, in closed form, s; `None` if for ever.
///
/// ```text
/// t = −ln( 1 − (1 − TL) R / (F TL) ) / R
/// ```
/// | symbol   | meaning                              | unit | range  |
/// | -------- | ------------------------------------ | ---- | ------ |
/// | `t`      | endurance time                       | s    | ≥ 0    |
/// | `TL`     | target load, share of maximal force  | –    | 0 to 1 |
/// | `F`, `R` | rates of the joint                   | 1/s  | > 0    |
///
/// **Shape.** Falls with `TL`; 0 at 1; infinite up to `R/(F + R)`, where tiring and recovery balance.
/// **Source.** Derived: with `MA` held at `TL`, `MF(t) = (F TL/R)(1 − e^(−R t))` until `MF = 1 − TL`.
pub fn closed_form_s(target: f64, rates: &TiringJoint) -> Option<f64> {
    let (f, r) = (rates.f_per_s, rates.r_per_s);
    let time_s = || -(1.0 - (1.0 - target) * r / (f * target)).ln() / r;
    (target > sustainable_share(rates)).then(|| time_s().max(0.0))
}

/// The share of maximal force that can be held for ever: `R / (F + R)`.
pub fn sustainable_share(rates: &TiringJoint) -> f64 {
    rates.r_per_s / (rates.f_per_s + rates.r_per_s)
}

/// The same by the steps of the program: until the resting share no longer covers what is missing to the
/// target; `None` if it is held for longer than `limit_s`.
pub fn stepped_s(target: f64, rates: &TiringJoint, limit_s: f64) -> Option<f64> {
    const STEP_S: f64 = 0.5;
    // The controller takes half a second to recruit; only then does the question make sense.
    let mut now = Compartments::FRESH;
    let mut time_s = 0.0;
    while time_s < limit_s {
        now = after(now, target, Duration::from_s(STEP_S), rates).expect("a share");
        time_s += STEP_S;
        let missing = target - now.active;
        if missing > 0.0 && now.resting <= missing {
            return Some(time_s);
        }
    }
    None
}

/// Endurance curves `t = b0 TL^(−b1)` fitted to 194 publications: joint, `b0` in s, `b1` (Frey Law & Avin
/// 2010, Ergonomics 53:109-129, from memory; the order of the joints read in the abstract; elbow uncertain).
#[rustfmt::skip]
pub const ENDURANCE_CURVES: &[(FatigueJoint, f64, f64)] = &[
    (FatigueJoint::Ankle,    34.71, 2.06),
    (FatigueJoint::Trunk,    22.69, 2.27),
    (FatigueJoint::HandGrip, 33.55, 1.61),
    (FatigueJoint::Elbow,    17.98, 2.21),
    (FatigueJoint::Knee,     19.38, 1.88),
    (FatigueJoint::Shoulder, 14.86, 1.83),
];
