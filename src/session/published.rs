//! Records of the published tables that a session is planned from.
//!
//! In: files of `models/published/`. Out: [`Published`], numbers with the source of each; the laws
//! that use them stand in the files of their subjects.

use super::fatigue_joint::FatigueJoint;
use super::status::Level;
use crate::progress::published_equations::PublishedEstimates;
use crate::source::Source;
use crate::units::Duration;
use serde::Deserialize;

/// Everything published that estimates and plans are made with.
#[derive(Debug, Clone, PartialEq)]
pub struct Published {
    /// Equations to the 1RM.
    pub estimates: PublishedEstimates,
    /// Repetitions at a share of 1RM.
    pub repetitions: RepetitionTable,
    /// Rates of the fatigue model.
    pub fatigue: FatigueTable,
    /// Recoveries of phosphocreatine.
    pub phosphocreatine: RecoveryTable,
    /// Lowering against lifting.
    pub eccentric: EccentricTable,
    /// Ranges of rests.
    pub rests: RestTable,
    /// Straight sets by training status.
    pub straight: StraightTable,
    /// Cluster sets.
    pub clusters: ClusterTable,
    /// The ascending pyramid.
    pub pyramid: PyramidTable,
}

/// What a study found, in its own terms.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Finding {
    /// The finding.
    pub finding: String,
    /// The movements it matters for; none named for all.
    #[serde(default)]
    pub movements: Vec<String>,
    /// Where it comes from.
    pub source: Source,
}

/// How many repetitions a share of 1RM allows.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct RepetitionTable {
    /// The chart that plans are made with.
    pub chart: RepetitionRows,
    /// Why the effort at the hardest point of a setup is looked up in it like a share of 1RM.
    pub effort_source: Source,
    /// How lifts and people differ from it.
    pub differences: Vec<Finding>,
    /// What studies found beside it.
    pub observations: Vec<RepetitionObservation>,
}

/// The load-repetition chart as printed.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct RepetitionRows {
    /// Repetitions to failure and percent of 1RM, in rising order of repetitions.
    pub rows: Vec<(f64, f64)>,
    /// Where it comes from.
    pub source: Source,
}

/// What a study found for one lift at one load.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct RepetitionObservation {
    /// The movement it stands for here.
    pub movement: String,
    /// The lift and the people.
    pub who: String,
    /// Percent of 1RM.
    pub percent: f64,
    /// Mean repetitions to failure.
    pub repetitions: f64,
    /// Where it comes from.
    pub source: Source,
}

/// The three-compartment model of fatigue.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct FatigueTable {
    /// How fast muscle is called up and let go.
    pub controller: FatigueController,
    /// Rates of every joint; the last one stands for joints without a row.
    pub joints: Vec<JointRates>,
    /// What a prediction with this model names as its source.
    pub prediction_source: Source,
}

/// How fast the controller of the fatigue model recruits and releases.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct FatigueController {
    /// Recruits (`LD`), 1/s.
    pub recruit_per_s: f64,
    /// Releases (`LR`), 1/s.
    pub release_per_s: f64,
    /// Where both come from.
    pub source: Source,
}

/// Rates of one joint in the fatigue model.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct JointRates {
    /// The joint.
    pub joint: FatigueJoint,
    /// Its name, as movements write it.
    pub name: String,
    /// Flow from active to fatigued, 1/s.
    pub f_per_s: f64,
    /// Flow from fatigued to resting, 1/s.
    pub r_per_s: f64,
    /// By how much recovery is faster at rest.
    pub rest_multiplier: f64,
    /// Where `F` and `R` come from.
    pub source: Source,
    /// Where the rest multiplier comes from.
    pub rest_source: Source,
}

/// Published recoveries of phosphocreatine, fastest first.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct RecoveryTable {
    /// Every recovery.
    pub recoveries: Vec<PublishedRecovery>,
}

/// One published recovery of phosphocreatine.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PublishedRecovery {
    /// Muscle and people.
    pub muscle: String,
    /// How long it takes.
    pub time: RecoveryTime,
    /// Where it comes from.
    pub source: Source,
}

/// The time of an exponential recovery, as its publication gives it.
#[derive(Debug, Clone, Copy, PartialEq, Deserialize)]
pub enum RecoveryTime {
    /// Until 63 % are back.
    Constant(Duration),
    /// Until half is back.
    Half(Duration),
}

/// How much more can be lowered than lifted.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct EccentricTable {
    /// Published ratios; the first is planned with.
    pub ratios: Vec<PublishedRatio>,
    /// The lowering of the measured limit.
    pub lowering: LoweringTime,
    /// Efficiency of lifting and of lowering.
    pub efficiency: MuscleEfficiency,
    /// The customary method.
    pub overload: OverloadWindow,
    /// What studies found of it.
    pub studies: Vec<Finding>,
}

/// A published ratio of eccentric to concentric strength.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PublishedRatio {
    /// The movement it stands for here; `None` for joints in general.
    #[serde(default)]
    pub movement: Option<String>,
    /// The lift and the people.
    pub who: String,
    /// Eccentric over concentric.
    pub ratio: f64,
    /// Where it comes from.
    pub source: Source,
}

/// How long a lowering takes.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct LoweringTime {
    /// Time of the lowering.
    pub time: Duration,
    /// Where it comes from.
    pub source: Source,
}

/// Work over the energy of the ATP made.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct MuscleEfficiency {
    /// Lifting, %.
    pub lifting_percent: f64,
    /// Lowering, %.
    pub lowering_percent: f64,
    /// Where both come from.
    pub source: Source,
}

/// The customary method of overloaded lowering.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct OverloadWindow {
    /// Least and most load, share of 1RM.
    pub shares: (f64, f64),
    /// Fewest and most repetitions of a set.
    pub repetitions: (u32, u32),
    /// Fewest and most sets.
    pub sets: (u32, u32),
    /// Where it comes from.
    pub source: Source,
}

/// Ranges of rests.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct RestTable {
    /// Heavy sets of 1 to 6 repetitions for strength.
    pub heavy: RestRange,
    /// Lighter sets, assistance lifts, novices.
    pub light: RestRange,
    /// Between the groups of a cluster set.
    pub in_cluster: RestRange,
}

/// One published or customary range of rests.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct RestRange {
    /// Shortest.
    pub least: Duration,
    /// Longest.
    pub most: Duration,
    /// Where it comes from.
    pub source: Source,
}

/// Straight sets by training status.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct StraightTable {
    /// Load, sets and frequency; sets are common practice but for the trained (Rhea 2003).
    pub guidance: Vec<LevelGuidance>,
    /// A novice's set.
    pub novice: NoviceSet,
    /// How much the load is raised.
    pub step: LoadStep,
    /// How the weeks of a block go on.
    pub weeks: WeekRules,
}

/// What guidance says for one training status.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct LevelGuidance {
    /// Training status.
    pub level: Level,
    /// Load, share of 1RM.
    pub share: f64,
    /// Number of sets.
    pub sets: u32,
    /// Fewest and most days a week.
    pub days_a_week: (u32, u32),
    /// Whether those are days for this lift, or for all training.
    pub for_this_lift: bool,
    /// Whether it is for lifts that move one joint.
    #[serde(default)]
    pub one_joint: bool,
    /// Where load and frequency come from.
    pub source: Source,
}

/// A novice's set.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct NoviceSet {
    /// Fewest and most repetitions.
    pub repetitions: (u32, u32),
    /// Where they come from.
    pub source: Source,
}

/// How the weeks of a block go on.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct WeekRules {
    /// A novice's weeks: repetitions rise, then the load.
    pub novice: NoviceWeeks,
    /// The rounds of those who have trained: fewer repetitions and more load from round to round.
    pub rounds: RoundRules,
    /// The easier week that ends a round.
    pub deload: DeloadRule,
}

/// A novice's weeks.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct NoviceWeeks {
    /// Load of the first week of a 1RM that nobody saw, share of 1RM; the most of it there.
    pub share: f64,
    /// Least load of a first week, share of 1RM.
    pub least_share: f64,
    /// Repetitions week by week; then the next load that can be set up begins with the fewest again.
    pub repetitions: Vec<u32>,
    /// Where the rule comes from.
    pub source: Source,
}

/// Rounds of weeks.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct RoundRules {
    /// Repetitions of a set, round by round.
    pub repetitions: Vec<u32>,
    /// The same for lifts that move one joint.
    pub one_joint: Vec<u32>,
    /// Repetitions kept in reserve, week by week of a round.
    pub reserves: Vec<u32>,
    /// Where the rule comes from.
    pub source: Source,
}

impl RoundRules {
    /// Repetitions of the rounds: a lift of one joint has its own.
    #[must_use]
    pub fn repetitions_of(&self, is_of_one_joint: bool) -> &[u32] {
        match is_of_one_joint {
            true => &self.one_joint,
            false => &self.repetitions,
        }
    }
}

/// The easier week that ends a round.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct DeloadRule {
    /// Every how many weeks.
    pub every: u32,
    /// What is left of the load of the round's first week, and of its sets.
    pub left: (f64, f64),
    /// Where the rule comes from.
    pub source: Source,
}

/// How much the load is raised when one or two repetitions more than planned are possible.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct LoadStep {
    /// Least and most, % of the load.
    pub percent: (f64, f64),
    /// Where they come from.
    pub source: Source,
}

/// Cluster sets.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ClusterTable {
    /// The groups of a set.
    pub group: ClusterGroup,
    /// A set of groups.
    pub set: ClusterSet,
    /// Repetitions of a session.
    pub totals: SessionTotals,
    /// What studies found.
    pub studies: Vec<Finding>,
}

/// The customary groups of a cluster set.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ClusterGroup {
    /// Fewest and most repetitions.
    pub repetitions: (u32, u32),
    /// Rest between two groups.
    pub rest: Duration,
    /// Load when none is asked for, share of 1RM.
    pub share: f64,
    /// Where they come from.
    pub source: Source,
}

/// A set of groups.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ClusterSet {
    /// Most repetitions before a full rest; those of a session when none are asked for.
    pub most_repetitions: u32,
    /// Where they come from.
    pub source: Source,
}

/// Customary repetitions of a session by load.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SessionTotals {
    /// The printed zones of load.
    pub zones: Vec<TotalsZone>,
    /// Where they come from.
    pub source: Source,
}

/// Repetitions of a session in one zone of load.
#[derive(Debug, Clone, Copy, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct TotalsZone {
    /// Lower and upper end of the zone, % of 1RM.
    pub percent: (f64, f64),
    /// Fewest and most repetitions together.
    pub repetitions: (u32, u32),
}

/// The ascending pyramid.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PyramidTable {
    /// Repetitions of the sets, in order.
    pub repetitions: Vec<u32>,
    /// Repetitions kept in reserve before the top set, and in it.
    pub reserves: (u32, u32),
    /// Where they come from.
    pub source: Source,
}
