//! What lifter and coach must know of a session: reasons, disagreements, limits, ways to go on, as facts.
//!
//! In: what a scheme found out. Out: enums with their numbers; the sentences are made in `narrative`.

use super::alone_remark::Alone;
use super::disagreement::Disagreement;
use super::end_of_log::LastSession;
use super::far_step::FarStep;
use super::lowering_remark::LoweringRemark;
use super::maximum_test::TestedMaximum;
use super::method::Method;
use crate::progress::one_rm_now::LayOff;
use crate::setups::{ArmsStand, BandFailure};
use crate::units::{Duration, Length, Mass};

/// How often a week the session is done.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Frequency {
    /// On so many days.
    DaysAWeek {
        /// Fewest.
        least: u32,
        /// Most.
        most: u32,
        /// Whether those are days for this lift, or for all training.
        for_this_lift: bool,
    },
    /// At most once, in place of a heavy day.
    OnceInPlaceOfHeavy,
}

/// How to go on from session to session.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Progression {
    /// After a lay-off: as the log of the first sessions says.
    AfterTheFirstLog,
    /// Weeks in their order, for who comes back: none is taken early.
    ByWeeksComingBack,
    /// Raise the load when so many repetitions, the reserve kept, are possible in the last set of two sessions running.
    WhenRepetitions {
        /// Repetitions: two more than planned.
        repetitions: u32,
        /// Repetitions that stay in reserve.
        reserve: u32,
        /// Smaller and larger step, % of the load.
        percent: (f64, f64),
        /// The same as masses.
        steps: (Mass, Mass),
        /// The next load that can be set up.
        next: Option<Mass>,
        /// How that is reached where it is farther than the larger step.
        far: Option<FarStep>,
    },
    /// The weeks of the block raise load or repetitions; so many repetitions, the reserve kept, are a reason to go ahead.
    ByWeeks {
        /// Repetitions: two more than planned.
        repetitions: u32,
        /// Repetitions that stay in reserve.
        reserve: u32,
        /// Whether the next week is an easier one, whose loads are no step ahead.
        easier_next: bool,
    },
    /// A novice's rule: repetitions rise, then the load, whenever every set of a session was done.
    ByTheLog {
        /// Repetitions of this session.
        repetitions: u32,
        /// Repetitions of the next step at this load; none at the last.
        more: Option<u32>,
        /// Fewest and most repetitions at a load.
        ends: (u32, u32),
        /// Repetitions that stay in reserve.
        reserve: u32,
        /// The next loads that can be set up.
        next: [Option<Mass>; 3],
        /// How the first of them is reached where it is farther than a usual step.
        far: Option<FarStep>,
    },
    /// Raise every load when the top set has two in reserve.
    WhenTopSetIsEasy,
    /// Add a repetition or load when the last repetition is as fast as the first.
    WhenLastIsFast,
    /// The smallest step when every lowering took its full time, as far as lowerings keep their reserve at this 1RM.
    WhenLoweringsAreSlow {
        /// The heaviest load of the session.
        top: Mass,
        /// The heaviest load here of which a lowering keeps its reserve; none where the body alone is lowered.
        most: Option<Mass>,
    },
    /// Plates first, bands and chains as they are.
    PlatesFirst,
}

/// What becomes of the last repetitions of a prediction.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Fate {
    /// This repetition of a set stalls.
    Stalls(u32),
    /// The last one reaches lockout at this mean velocity, m/s.
    LastMovesAt(f64),
}

/// Where a novice's weeks begin.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WeeksBegin {
    /// The first load.
    pub load: Mass,
    /// The same as a share of the 1RM.
    pub share: f64,
    /// Steps from there on that are known to hold today, the first among them, as far as they were looked for.
    pub steps: u32,
    /// Fewest and most repetitions at a load.
    pub ends: (u32, u32),
    /// Repetitions that stay in reserve.
    pub reserve: u32,
    /// Whether the steps were simulated, beside the chart.
    pub simulated: bool,
    /// Whether what the log shows goes before what chart and simulation allow.
    pub goes_before: bool,
    /// The last session of the log that they go on from, and the repetitions that every set of it reached with that reserve.
    pub on_from: Option<(LastSession, u32)>,
}

/// One thing to know.
#[derive(Debug, Clone, PartialEq)]
pub enum Remark {
    /// A novice is planned plain progressive overload.
    PlannedInstead {
        /// The method that was asked for.
        of: Method,
        /// Months of steady training so far.
        months: f64,
        /// The age, where it is the reason, whatever the training.
        years: Option<f64>,
    },
    /// Somebody ill, sore or back from a break is planned a lighter session.
    LighterWhileUnwell {
        /// The method that was asked for.
        of: Method,
        /// Heaviest load of the usual session and of this one.
        loads: (Mass, Mass),
        /// Working sets of the usual session and of this one.
        sets: (u32, u32),
    },
    /// The load that is meant is more than all there is to load.
    PlatesEnd {
        /// The most that can be loaded.
        most: Mass,
        /// The load that is meant.
        meant: Mass,
    },
    /// Even the lightest load there is is heavier than the one that is meant.
    LightestTooHeavy {
        /// The lightest load.
        lightest: Mass,
        /// The same as a share of the 1RM.
        share: f64,
        /// The load that is meant.
        meant: Mass,
        /// The same as a share of the 1RM.
        meant_share: f64,
        /// Whether the lightest load is an empty bar.
        is_bar: bool,
    },
    /// The load that was asked for cannot be set up.
    LoadNotMade {
        /// What was asked for.
        asked: Mass,
        /// The heaviest below it that can be.
        taken: Mass,
    },
    /// What was asked for and is left out of what is planned instead, as options without dashes.
    LeftOut {
        /// The options.
        options: Vec<&'static str>,
    },
    /// A novice keeps more in reserve than was asked for.
    ReserveRaised {
        /// What was asked for.
        asked: u32,
        /// What is kept.
        kept: u32,
    },
    /// The rounds of a block keep more in reserve than was asked for.
    RoundsKeepMore {
        /// What was asked for.
        asked: u32,
        /// The most and the least that a week keeps.
        kept: (u32, u32),
    },
    /// So many of the working sets leave nothing in reserve.
    ToFailure {
        /// Sets that end at failure.
        sets: usize,
        /// All working sets.
        of: usize,
    },
    /// Bars that start on the floor lie lower where no plate is of full size.
    LowPlates {
        /// Mass from which plates are of full size.
        full: Mass,
    },
    /// Where the gym's safety arms stand.
    ArmsAt(ArmsStand),
    /// Where a novice's weeks begin, so that the steps after it are within today's strength.
    WeeksBegin(WeeksBegin),
    /// Today's strength is known to hold no more: from here on the log decides, not the calendar.
    LogDecides,
    /// How a session on its own and the first of a block differ.
    Alone(Alone),
    /// On the way back after an illness or a break.
    ComingBack {
        /// Share of the usual load that is left.
        left: f64,
    },
    /// Weeks without a session before this one, which are no lay-off yet.
    DaysOff {
        /// Days.
        days: i32,
    },
    /// Every week of a block stays as light as the first: the log ended before a lay-off.
    StaysLight {
        /// The lay-off.
        since: LayOff,
    },
    /// Nobody tested this lift: it is planned from the lower end of an interval.
    NotTestedYet {
        /// What a trained lifter begins with, as a share of the usual load; none where it is the usual one.
        eased: Option<f64>,
        /// What a test session of this lifter finds; none while injury, illness or soreness forbid it.
        finds: Option<TestedMaximum>,
    },
    /// What the chart says of repetitions, alone or beside the fatigue model.
    Chart(ChartRemark),
    /// What there is to know of cluster sets.
    Cluster(ClusterRemark),
    /// What there is to know of lowering more than 1RM.
    Lowering(LoweringRemark),
    /// What there is to know of a band or chain setup.
    Setup(SetupRemark),
}

/// What a lowered load or count keeps.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Kept {
    /// So many repetitions in reserve in every set.
    Reserve(u32),
    /// The reserve that each set is planned with, of sets that differ in it.
    OwnReserves,
    /// Velocity: no repetition loses more than this share of the fastest one's.
    Velocity(f64),
}

/// What the chart says of repetitions, alone or beside the fatigue model.
#[derive(Debug, Clone, PartialEq)]
pub enum ChartRemark {
    /// Straight sets of more repetitions than the chart allows.
    Beyond {
        /// Repetitions asked for.
        repetitions: u32,
        /// Share of 1RM.
        share: f64,
        /// What the chart allows.
        allowed: u32,
    },
    /// A top set of more repetitions than the chart allows.
    TopSetBeyond {
        /// Repetitions asked for.
        repetitions: u32,
        /// Share of 1RM.
        share: f64,
        /// What the chart allows.
        allowed: u32,
    },
    /// The simulation asked for less load than is usual.
    Eased {
        /// Share of the usual load that is left.
        left: f64,
        /// Repetitions of which not even so many hold with more.
        fewest: Option<u32>,
        /// What holds only then.
        kept: Kept,
    },
    /// The simulation asked for fewer repetitions than the chart allows.
    FewerRepetitions {
        /// Repetitions by the chart.
        usual: u32,
        /// Repetitions that are planned.
        planned: u32,
        /// What holds only then.
        kept: Kept,
    },
    /// Chart and fatigue model disagree on neighbouring sets.
    Disagreement(Disagreement),
    /// The simulation allows far more than the chart.
    Overstated {
        /// What the chart allows.
        by_chart: f64,
        /// What the simulation allows.
        by_model: u32,
        /// Whether one joint moves.
        one_joint: bool,
        /// How many times published repetitions the simulation gives such lifts, where any are published.
        published: Option<f64>,
    },
    /// A stop by loss of velocity that the simulated set never comes to.
    StopNotReached {
        /// The loss at which sets end, as a share.
        loss: f64,
        /// What is lost after all repetitions of the chart.
        reached: f64,
        /// Those repetitions.
        repetitions: u32,
    },
    /// Where chart and fatigue model differ most in a pyramid.
    WidestGap {
        /// The working set, from 1.
        set: u32,
        /// Repetitions by the chart when rested.
        by_chart: f64,
        /// Repetitions by the fatigue model.
        by_model: f64,
    },
}

/// What there is to know of cluster sets.
#[derive(Debug, Clone, PartialEq)]
pub enum ClusterRemark {
    /// A rest inside a cluster set beside the usual ones.
    Rest {
        /// The rest.
        rest: Duration,
        /// Shortest usual one.
        least: Duration,
        /// Longest usual one.
        most: Duration,
    },
    /// Groups larger than usual.
    LargeGroup {
        /// Repetitions of a group.
        group: u32,
        /// Fewest and most usual ones.
        usual: (u32, u32),
    },
    /// A group that is already all that the chart allows.
    GroupAtLimit {
        /// Repetitions of a group.
        group: u32,
        /// What the chart allows.
        allowed: u32,
    },
    /// A session of more or fewer repetitions than usual at its load.
    UnusualTotal {
        /// Repetitions of the session.
        total: u32,
        /// Share of 1RM.
        share: f64,
        /// Fewest and most usual ones.
        usual: (u32, u32),
    },
    /// How much phosphocreatine comes back in a rest.
    PhosphocreatineBack {
        /// The rest.
        rest: Duration,
        /// Least and most of published shares.
        shares: (f64, f64),
    },
    /// Clusters against the same set straight.
    AgainstStraight {
        /// What becomes of straight sets.
        straight: Fate,
        /// What becomes of clusters.
        clusters: Fate,
        /// By how much clusters are faster, %; nothing where not all repetitions of both reach lockout.
        gain_percent: Option<f64>,
    },
}

/// What there is to know of a band or chain setup.
#[derive(Debug, Clone, PartialEq)]
pub enum SetupRemark {
    /// How hard the hardest place of a setup is.
    HardestPlace {
        /// Largest effort.
        effort: f64,
        /// How much the setup evens out effort, %.
        flattening_percent: Option<f64>,
    },
    /// What is left when bands give way, and how high safety arms stand.
    WhenBandsGo {
        /// What is left.
        failure: BandFailure,
        /// The same as a share of the 1RM.
        share: f64,
        /// Height of the safety arms.
        arms: Option<Length>,
    },
    /// Plain weight with the same hardest place.
    PlainAsHard {
        /// The plain weight.
        plain: Mass,
        /// Load of the setup at the top.
        top: Mass,
    },
}

/// What a number of the plan rests on.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum PlanBasis {
    /// Repetitions at a share of 1RM.
    RepetitionChart,
    /// What a study found, in its words.
    Finding(String),
    /// Load, sets and frequency of straight sets.
    Guidance,
    /// How the weeks of a block go on.
    Weeks,
    /// Falling repetitions of the pyramid.
    PyramidSteps,
    /// Groups and rests of cluster sets.
    ClusterGroups,
    /// Repetitions of a session by load.
    SessionTotals,
    /// The customary window of overloaded lowering.
    OverloadWindow,
    /// The eccentric limit.
    EccentricLimit,
    /// How much a lowering tires.
    LoweringCost,
    /// Repetitions from the effort at the hardest place.
    EffortAsShare,
    /// Velocities and fatigue of a prediction.
    Prediction,
}
