//! Why a session is not planned.
//!
//! In: quantities and names, where the fault arises. Out: facts that `narrative` puts into words.

use crate::units::{Duration, Mass};

/// What is counted in a session.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Counted {
    /// Sets.
    Sets,
    /// Repetitions of a set.
    InASet,
    /// Repetitions of a group.
    InAGroup,
    /// Repetitions in all.
    InAll,
}

/// Where a rest lies.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum RestPlace {
    /// Between sets.
    BetweenSets,
    /// Inside a cluster set.
    InsideCluster,
    /// Anywhere.
    Anywhere,
}

/// Why a session is not planned.
#[derive(Debug, Clone, PartialEq)]
pub enum SessionFault {
    /// Who may not do it.
    Refusal(SessionRefusal),
    /// A figure asked for that makes no sense.
    Figure(SessionFigureFault),
    /// Lowering more than 1RM.
    Lowering(LoweringFault),
    /// Bands, chains, pyramids, blocks.
    Scheme(SchemeFault),
    /// Chart, fatigue model, predicted sets.
    Prediction(PredictionFault),
}

/// Why somebody may not do a session, or there is no such session.
#[derive(Debug, Clone, PartialEq)]
pub enum SessionRefusal {
    /// There is no method of that name.
    NoMethod {
        /// The name.
        named: String,
        /// Those that there are.
        known: Vec<String>,
    },
    /// The lifter is injured.
    Injured,
    /// Too few months of training for more than 1RM.
    TooLittleTraining {
        /// Months so far.
        months: f64,
        /// Months that it asks for.
        least_months: f64,
    },
    /// More than 1RM is for adults.
    NotAdult {
        /// The age.
        years: f64,
        /// From which age the tables are.
        least: f64,
    },
    /// More than 1RM is not for older adults.
    OfAge {
        /// The age.
        years: f64,
        /// From this age on.
        from_years: f64,
    },
    /// More than 1RM over the body where the gym has nothing that catches it.
    NoSafetyArms,
    /// More than 1RM is not for the ill, the sore, or after a break.
    UnwellOrSore,
    /// Nobody's maximum is tested when ill, unusually sore or just back from a break.
    UnwellTest,
    /// The lightest load of the gym is more than a test begins its attempts with.
    TestTooHeavy {
        /// The lightest load.
        lightest: Mass,
        /// The first attempt.
        first: Mass,
    },
    /// More than 1RM is not for who is just back from a lay-off that the log shows.
    AfterLayOff {
        /// Days without a session.
        days: u32,
    },
    /// More than 1RM is not for who failed a load that nothing since answers.
    AfterFailure {
        /// The load.
        load: Mass,
    },
    /// A set that left nothing in reserve is too near.
    AfterAllOut {
        /// Days since.
        days: u32,
        /// The least.
        least: u32,
    },
    /// The last overloaded lowering is too near.
    OverloadTooSoon {
        /// Days since.
        days: u32,
    },
    /// Nobody can hand more than 1RM over in this lift.
    NotHandedOver {
        /// The movement.
        movement: String,
        /// Why nobody can.
        why: NoHelp,
    },
    /// More than 1RM is lowered only where it is known how old the log is that the 1RM is of.
    LogAgeUntold {
        /// The last day of the log.
        last: String,
    },
    /// Helpers cannot hold a bar that is lost, and the safety arms stand below a chest that it would lie on first.
    NobodyHolds {
        /// The heaviest load of the session.
        load: Mass,
        /// Helpers, and the most that they hold together.
        held: (u32, Mass),
        /// A load above the 1RM that they hold and that can be lowered here.
        own: Option<Mass>,
    },
    /// More than 1RM is lowered only where the 1RM of this very lift was tested.
    UntestedOneRm {
        /// The movement.
        movement: String,
    },
    /// The body alone, which is all that is lowered in this lift, is no more than is lifted.
    BodyIsLifted {
        /// The movement.
        movement: String,
        /// The body as a share of the 1RM with the body.
        share: f64,
    },
    /// In this lift the body alone is lowered, nothing added.
    BodyLoweredOnly {
        /// The movement.
        movement: String,
    },
}

/// Why nobody can hand more than 1RM over.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NoHelp {
    /// There is no room beside the lifter.
    NoRoomBeside,
    /// The lifter is bent over.
    BentOver,
    /// The bar is over the head of a lifter who stands.
    OverHead,
    /// The bar lies on the hips.
    OnHips,
}

/// A figure asked for that makes no sense.
#[derive(Debug, Clone, PartialEq)]
pub enum SessionFigureFault {
    /// Groups of a cluster set that are the whole set: nothing is rested inside it.
    OneGroup {
        /// Repetitions of a group.
        group: u32,
        /// Repetitions of a set.
        in_set: u32,
    },
    /// A 1RM that cannot be.
    NoOneRm {
        /// The 1RM.
        one_rm: Mass,
    },
    /// Months of training that cannot be.
    NoMonths {
        /// The months.
        months: f64,
    },
    /// None of something is no session.
    NoneOf {
        /// Of what.
        what: Counted,
    },
    /// More of something than is planned.
    TooMany {
        /// Of what.
        what: Counted,
        /// How many.
        count: u32,
        /// At most.
        most: u32,
    },
    /// A load above the 1RM, to be lifted.
    AboveOneRm {
        /// The load.
        load: Mass,
        /// Its share of the 1RM.
        share: f64,
        /// The 1RM.
        one_rm: Mass,
    },
    /// A load that is none.
    NoLoad {
        /// The load.
        load: Mass,
    },
    /// A rest that cannot be.
    NoRest {
        /// The rest.
        rest: Duration,
        /// Where.
        place: RestPlace,
    },
    /// A rest that is too short to be one.
    ShortRest {
        /// The rest.
        rest: Duration,
        /// Where it would be.
        place: RestPlace,
        /// The shortest there.
        least: Duration,
    },
    /// A rest that is too long.
    LongRest {
        /// The rest.
        rest: Duration,
        /// Where.
        place: RestPlace,
        /// At most.
        most: Duration,
    },
}

/// Why more than 1RM is not lowered like that.
#[derive(Debug, Clone, PartialEq)]
pub enum LoweringFault {
    /// More sets of overloaded lowering than is usual.
    ManyLoweringSets {
        /// Sets asked for.
        sets: u32,
        /// Fewest and most usual ones.
        usual: (u32, u32),
    },
    /// The gym can load nothing in the window of overloaded lowering.
    NothingInWindow {
        /// Least and most load of the window, up to what the lifter can lower.
        loads: (Mass, Mass),
        /// The same as shares of 1RM.
        shares: (f64, f64),
        /// A load outside it, above the 1RM, that can be set up and lowered.
        own: Option<Mass>,
    },
    /// More than can be lowered under control.
    AboveLowering {
        /// The load.
        load: Mass,
        /// The most that can be lowered.
        limit: Mass,
        /// The limit over the 1RM.
        ratio: f64,
        /// On whom and what it was measured; `None` where it is the simulated lifter's own.
        who: Option<String>,
        /// The low end of the 1RM whose limit it is, where that is known.
        low_end: Option<Mass>,
        /// Between which loads to stay; none where no overload keeps a reserve.
        stay: Option<(Mass, Mass)>,
    },
    /// A load to be lowered that is not more than the 1RM.
    NoOverload {
        /// The load.
        load: Mass,
        /// The 1RM.
        one_rm: Mass,
    },
    /// All the plates that there are make less than the least load that overloads.
    PlatesRunOut {
        /// The most that can be loaded.
        most: Mass,
        /// The least that overloads.
        least: Mass,
    },
    /// Not even one lowering keeps a reserve.
    NoReserve {
        /// The load.
        load: Mass,
        /// The most that can be lowered.
        limit: Mass,
        /// The limit over the 1RM.
        ratio: f64,
        /// On whom and what it was measured; `None` where it is the simulated lifter's own.
        who: Option<String>,
        /// The low end of the 1RM whose limit it is, where that is known.
        low_end: Option<Mass>,
    },
}

/// Why a scheme gives no session.
#[derive(Debug, Clone, PartialEq)]
pub enum SchemeFault {
    /// Bands or chains without a setup.
    NoSetup {
        /// Bands or chains.
        method: String,
    },
    /// A setup without load or effort.
    EmptySetup,
    /// A setup that cannot be lifted.
    SetupTooHard {
        /// Its largest effort.
        effort: f64,
    },
    /// A top set that leaves no set below it.
    NoStepBelow {
        /// Repetitions of the top set.
        top: u32,
        /// It must have fewer.
        fewer_than: u32,
    },
    /// As many sets make no pyramid.
    NoPyramid {
        /// Sets asked for.
        sets: usize,
        /// Repetitions of the top set.
        top: u32,
        /// Most sets.
        most: usize,
    },
    /// The simulation fails the sets asked for, and no lighter load was to be sought.
    NotHeld {
        /// The load asked for.
        load: Mass,
        /// Repetitions of a set.
        repetitions: u32,
        /// Repetitions that are kept in reserve.
        reserve: u32,
        /// The most repetitions of a set that hold at this load; none where not even one does.
        holds: Option<u32>,
    },
    /// No load of the gym, down to the lightest, leaves the sets their reserve.
    NothingHolds {
        /// Repetitions that are kept in reserve.
        reserve: u32,
    },
    /// More is felt with bands or chains than the 1RM, in a lift whose load nobody can take.
    FeltAboveOneRm {
        /// What is felt.
        felt: Mass,
        /// The most that may be.
        most: Mass,
    },
    /// The named pieces leave less for bar and plates than can be loaded.
    PiecesLeaveTooLittle {
        /// What hangs beside the bar.
        pieces: Vec<String>,
        /// The effort that was asked for.
        effort: f64,
        /// What is left for bar and plates.
        left: Mass,
        /// The lightest that can be loaded.
        lightest: Mass,
    },
    /// More is left on the lifter when the bands go than may be.
    TooMuchWhenBandsGo {
        /// What is left.
        left: Mass,
        /// The most that may be.
        most: Mass,
    },
    /// The gym's loads leave no steps.
    NoStepsInGym,
    /// A block of as many weeks is not planned.
    NoBlock {
        /// Weeks.
        weeks: u32,
        /// At most.
        most: u32,
    },
}

/// What chart, fatigue model or simulated repetition cannot tell.
#[derive(Debug, Clone, PartialEq)]
pub enum PredictionFault {
    /// Repetitions beyond the chart.
    OffTheChart {
        /// Fewest and most repetitions of the chart.
        range: (f64, f64),
        /// Repetitions asked for.
        repetitions: f64,
    },
    /// A share of 1RM that is none.
    NoShare {
        /// The share.
        share: f64,
    },
    /// A share of 1RM below the chart.
    BelowTheChart {
        /// Least share of the chart.
        lightest: f64,
        /// Share asked for.
        share: f64,
    },
    /// A share of maximal force that is none.
    NoShareOfForce {
        /// The share.
        share: f64,
    },
    /// A time to work or rest that is none.
    NoTime {
        /// The time.
        time: Duration,
    },
    /// A set with a group of no repetitions.
    EmptyGroup,
    /// A set of too many repetitions.
    NoStrengthSet {
        /// Repetitions.
        repetitions: u32,
        /// At most.
        most: u32,
    },
    /// A set that goes on and on.
    EndlessSet {
        /// The load.
        load: Mass,
        /// Repetitions predicted at the most.
        most: u32,
    },
    /// A repetition whose answer is none.
    UnsoundRepetition {
        /// The load.
        load: Mass,
    },
}
