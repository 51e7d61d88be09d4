//! Priors and targets as `models/calibration/` holds them; reasons and sources are for their readers.

use serde::Deserialize;
use std::collections::BTreeMap;
use std::path::Path;
use torquill::anatomy::{Dof, Sex};
use torquill::library::read;
use torquill::source::Source;
use torquill::units::{Angle, Force, Length};

/// Priors, targets and what both are about.
#[derive(Debug)]
pub struct Problem {
    pub priors: Priors,
    pub targets: Targets,
}

/// `priors.ron`.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Priors {
    /// Lifters that carry the factors of each sex; the first is the one that is fitted.
    pub lifters: BTreeMap<String, Vec<String>>,
    /// Significant digits with which values are written.
    pub digits: usize,
    #[allow(dead_code)]
    pub digits_source: Source,
    /// Published volume of each strength group, cm3, for the sanity column of specific tension.
    pub volumes: BTreeMap<String, Volume>,
    /// The parameters, by their names.
    pub parameters: BTreeMap<String, Prior>,
}

/// Volume of a strength group.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Volume {
    pub muscles: Vec<String>,
    pub cm3: f64,
    #[allow(dead_code)]
    pub source: Source,
}

/// One parameter: moves its values together, in shares of them or by the same amount.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Prior {
    /// Value before the fit at each path that it moves, as `--set` takes it; `man/` or `woman/` before the
    /// factors of a sex.
    pub at: BTreeMap<String, String>,
    /// Standard deviation before the fit.
    pub deviation: Deviation,
    /// Why this value and this deviation.
    #[allow(dead_code)]
    pub why: String,
    /// Where the value comes from.
    #[allow(dead_code)]
    pub source: Source,
}

/// Standard deviation of a prior.
#[derive(Debug, Clone, Deserialize)]
pub enum Deviation {
    /// Of the logarithm: 0.1 is about ten per cent.
    Share(f64),
    /// In the unit of the value.
    Amount(String),
}

/// `targets.ron`.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Targets {
    /// Relaxed fibres shorter than this, in optimal lengths, are limp and keep about this length.
    pub limp: f64,
    /// How gradually that begins.
    pub limp_width: f64,
    #[allow(dead_code)]
    pub limp_source: Source,
    /// The targets, by what they say.
    pub targets: BTreeMap<String, Target>,
}

/// One published value.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Target {
    /// What the model computes for it.
    pub quantity: Quantity,
    pub value: f64,
    /// End of an interval in which every value is as good.
    #[serde(default)]
    pub to: Option<f64>,
    /// Standard deviation of the value, of the model's own coarseness too.
    pub deviation: f64,
    /// What kind of quantity, for the model's own error.
    pub kind: String,
    #[allow(dead_code)]
    pub source: Source,
}

/// What is computed.
#[derive(Debug, Deserialize)]
pub enum Quantity {
    /// Torque on a dynamometer, N·m (or N·m/kg).
    Torque(JointTest),
    /// One torque over another.
    Ratio(JointTest, JointTest),
    /// Fibre length over the optimal one.
    Length(FibreTest),
    /// Share of its length that a fibre loses between two poses.
    Shortening(FibreTest, FibreTest),
    /// Difference of two fibre lengths, over the optimal one.
    Excursion(FibreTest, FibreTest),
    /// Moment arm, mm.
    Arm(ArmTest),
    /// Arm with which a muscle turns the upper arm inward about its own length, mm.
    Twist(ArmTest),
    /// Part of a muscle's pull on the upper arm along an axis of the shoulder blade.
    Pull(ArmTest, Axis),
}

/// An axis of the shoulder blade.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
pub enum Axis {
    Outward,
    Forward,
    Upward,
}

/// One joint against a dynamometer.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct JointTest {
    pub who: Who,
    pub joint: Dof,
    /// Whether the push turns the angle up (flexion, abduction, dorsiflexion).
    pub push: Push,
    /// Angles, deg.
    pub degrees: Vec<f64>,
    /// What of the angles counts.
    #[serde(default)]
    pub over: Over,
    /// Angles of the other joints, deg.
    #[serde(default)]
    pub held: BTreeMap<Dof, f64>,
    /// Speed in the direction of the push, deg/s, negative = giving way.
    #[serde(default)]
    pub speed: f64,
    #[serde(default)]
    pub per_kg: bool,
    /// The torque that turns the arm about its own length, inward where the push is up.
    #[serde(default)]
    pub twist: bool,
    /// What full effort adds, where a paper took off what the relaxed limb gives.
    #[serde(default)]
    pub active_only: bool,
    /// These muscles alone.
    #[serde(default)]
    pub muscles: Vec<String>,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
pub enum Who {
    Man,
    Woman,
    /// Mean of both.
    Both,
}

impl Who {
    pub fn sexes(self) -> &'static [Sex] {
        match self {
            Self::Man => &[Sex::Man],
            Self::Woman => &[Sex::Woman],
            Self::Both => &[Sex::Man, Sex::Woman],
        }
    }
}

#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
pub enum Push {
    Up,
    Down,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Deserialize)]
pub enum Over {
    #[default]
    Mean,
    Greatest,
}

/// One muscle's fibres in a pose (of the man).
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct FibreTest {
    pub muscle: String,
    pub state: FibreAs,
    /// Angles of the joints, deg; the first named is the one that would move.
    pub at: Vec<(Dof, f64)>,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
pub enum FibreAs {
    /// As measured at rest.
    Relaxed,
    /// Fully active, held still.
    Active,
    /// What the joints' angles leave to fibres on an unstretched tendon.
    Taut,
}

/// A muscle's arm (of the man).
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ArmTest {
    pub muscle: String,
    pub joint: Dof,
    pub degrees: f64,
    #[serde(default)]
    pub held: BTreeMap<Dof, f64>,
}

impl Problem {
    /// Reads both files.
    pub fn read(root: &Path) -> Result<Self, String> {
        let folder = root.join("models/calibration");
        Ok(Self {
            priors: record(&folder.join("priors.ron"))?,
            targets: record(&folder.join("targets.ron"))?,
        })
    }
}

fn record<T: serde::de::DeserializeOwned>(path: &Path) -> Result<T, String> {
    let name = path.display().to_string();
    let text = std::fs::read_to_string(path).map_err(|why| format!("{name}: {why}"))?;
    read(&name, &text).map_err(|why| format!("{name}: {why:#?}"))
}

/// A value of a model file, in SI.
pub fn in_si(text: &str) -> Option<f64> {
    let lengths = || Length::from_text(text).ok().map(|length| length.as_m());
    let forces = || Force::from_text(text).ok().map(|force| force.as_n());
    let angles = || Angle::from_text(text).ok().map(|angle| angle.as_rad());
    text.parse()
        .ok()
        .or_else(lengths)
        .or_else(forces)
        .or_else(angles)
}
