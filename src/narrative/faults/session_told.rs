//! Words for: why a session is not planned.

use super::person_told::{NO_ADULT_HINT, no_adult};
use super::{Told, lowering_told};
use crate::error::{
    Counted, NoHelp, PredictionFault, RestPlace, SchemeFault, SessionFault, SessionFigureFault,
    SessionRefusal,
};
use crate::narrative::prose::{counted_noun, of_count};
use crate::narrative::quantities::{QuantityWords, rounded};
use crate::units::{Duration, Mass, System};

/// The fault in words.
pub(super) fn told(fault: &SessionFault, units: System) -> Told {
    match fault {
        SessionFault::Refusal(fault) => refusal(fault, units),
        SessionFault::Figure(fault) => figure(fault, units),
        SessionFault::Lowering(fault) => lowering_told::told(fault, units),
        SessionFault::Scheme(fault) => scheme(fault, units),
        SessionFault::Prediction(fault) => prediction(fault),
    }
}

/// Who may not do it.
fn refusal(fault: &SessionRefusal, units: System) -> Told {
    let mass = |mass: &Mass| units.mass(*mass);
    match fault {
        SessionRefusal::NoMethod { named, known } => Told::new(format!("there is no method `{named}`"))
            .hint(format!("methods: {}", known.join(", "))),
        SessionRefusal::Injured => Told::new("no session is planned for an injured lifter").hint(
            "see a clinician first; a qualified professional decides when and with what load to train again",
        ),
        SessionRefusal::TooLittleTraining { months, least_months } => Told::new(format!(
            "lowering more than 1RM asks for {least_months} months of steady training, and this lifter has {}",
            months.round()
        ))
        .hint("train with straight sets, a pyramid or clusters until then"),
        SessionRefusal::NotAdult { years, least } => Told::new(no_adult(*years, *least)).hint(NO_ADULT_HINT),
        SessionRefusal::OfAge { years, from_years } => Told::new(format!(
            "lowering more than 1RM is not planned from {from_years} years on, and this lifter is {years:.0}: muscle and tendon \
             recover more slowly, and a mishap costs more (assumed)"
        ))
        .hint("train with straight sets, a pyramid or clusters, and lower each repetition in 3 s or more"),
        SessionRefusal::NoSafetyArms => Told::new(
            "lowering more than 1RM takes safety arms and spotters, and this gym has no arms right below this lift",
        )
        .hint("write its safety arms into the gym's file if it has some; else straight sets, a pyramid or clusters"),
        SessionRefusal::UnwellOrSore => {
            Told::new("no lowering beyond 1RM when ill, unusually sore or just back from a break")
                .hint("wait until recovered, then start with straight sets")
        }
        SessionRefusal::UnwellTest => {
            Told::new("no maximum is tested when ill, unusually sore or just back from a break")
                .hint("wait until recovered, and train with easy straight sets first")
        }
        SessionRefusal::TestTooHeavy { lightest, first } => Told::new(format!(
            "a test of this lifter begins its attempts with {}, and the lightest load of this gym is {}: take a lighter bar or \
             dumb-bells of {} or less",
            mass(first),
            mass(lightest),
            mass(first)
        ))
        .hint("write the lighter implement into the gym's file"),
        SessionRefusal::AfterLayOff { days } => Told::new(format!(
            "no lowering beyond 1RM within two weeks of a break: the log has no session for {days} days before that"
        ))
        .hint("start with straight sets"),
        SessionRefusal::AfterFailure { load } => Told::new(format!(
            "no lowering beyond 1RM after a failed attempt: the log has {} that was not lifted, and nothing since shows \
             as much",
            mass(load)
        ))
        .hint("train with straight sets until the load is lifted"),
        SessionRefusal::AfterAllOut { days, least } => Told::new(format!(
            "no lowering beyond 1RM {} after a set that left nothing in reserve; {least} days at least",
            match days {
                0 => "on the day".to_owned(),
                1 => "a day".to_owned(),
                days => format!("{days} days"),
            }
        ))
        .hint("choose a later --start, or train with straight sets, a pyramid or clusters"),
        SessionRefusal::OverloadTooSoon { days } => Told::new(format!(
            "the last overloaded lowering was {} ago; at most once a week for the same muscles",
            counted_noun(*days, "day")
        ))
        .hint("train with straight sets, a pyramid or clusters today"),
        SessionRefusal::NotHandedOver { movement, why } => Told::new(not_handed_over(movement, *why))
        .hint("train it with straight sets, a pyramid or clusters, or lower more than 1RM in a lift whose load helpers can take, such as the squat, the bench press or the leg press"),
        SessionRefusal::UntestedOneRm { movement } => Told::new(format!(
            "lowering more than 1RM asks for a tested 1RM, and nobody measured this lifter's {}",
            movement.replace('-', " ")
        ))
        .hint(
            "test the 1RM and state it with --one-rm, give a log with --log, or add a measured set of this lift to the \
             lifter's `fit`",
        ),
        SessionRefusal::LogAgeUntold { last } => Told::new(format!(
            "no lowering beyond 1RM by a log that may be old: it ends on {last}, and no day of the session is told"
        ))
        .hint("say when the session is: --start DATE, such as --start 2026-03-01"),
        SessionRefusal::NobodyHolds { load, held: (helpers, held), own } => Told::new(format!(
            "{} helpers hold {} together at most (assumed), less than {}, and of this lift the safety arms catch a lost bar only once it \
             lies on the lifter",
            helpers,
            mass(held),
            mass(load)
        ))
        .hint(match own {
            Some(own) => format!("--load \"{}\", which is above the 1RM too and can be held", mass(own)),
            None => "train it with straight sets, a pyramid or clusters, or lower more than 1RM in a lift whose bar the arms catch, such as the \
                     squat"
                .to_owned(),
        }),
        SessionRefusal::BodyIsLifted { movement, share } => Told::new(format!(
            "in the {movement} the body alone is lowered, and that is {} % of this 1RM: no more than is lifted, so lowering it \
             is no overload",
            rounded(100.0 * share, 0)
        ))
        .hint("use straight sets, a pyramid or clusters with added load"),
        SessionRefusal::BodyLoweredOnly { movement } => Told::new(body_lowered_only(movement))
        .hint("leave --load out; for added load use straight sets, a pyramid or clusters"),
    }
}

/// That nobody lowers more than the 1RM in a lift, and why.
pub(crate) fn not_handed_over(movement: &str, why: NoHelp) -> String {
    format!(
        "no more than the 1RM is lowered in the {}: {}",
        movement.replace('-', " "),
        no_help(why)
    )
}

/// What is lowered in a lift whose load is the body.
pub(crate) fn body_lowered_only(movement: &str) -> String {
    format!(
        "in the {} the body alone is lowered after stepping up, nothing added",
        movement.replace('-', " ")
    )
}

/// Why helpers cannot take the load.
fn no_help(why: NoHelp) -> &'static str {
    match why {
        NoHelp::NoRoomBeside => {
            "helpers cannot hold the bar at the top beside the lifter, and a back that rounds under more than 1RM is at risk"
        }
        NoHelp::BentOver => {
            "helpers cannot hand the bar to a bent-over lifter, and a back that rounds under more than 1RM is at risk"
        }
        NoHelp::OverHead => "helpers cannot take a bar from over the head of a lifter who stands",
        NoHelp::OnHips => {
            "helpers cannot take a bar from the hips of a lifter on the floor in time"
        }
    }
}

/// Figures that make no sense.
fn figure(fault: &SessionFigureFault, units: System) -> Told {
    match fault {
        SessionFigureFault::OneGroup { group, in_set } => Told::new(format!(
            "a set of {in_set} in groups of {group} is a straight set: nothing is rested inside it"
        ))
        .hint("make --group smaller than --total-reps, or choose --method straight"),
        SessionFigureFault::NoOneRm { one_rm } => {
            Told::new(format!("a 1RM of {} kg cannot be", one_rm.as_kg()))
        }
        SessionFigureFault::NoMonths { months } => Told::new(format!(
            "{} of training cannot be",
            counted_noun(*months, "month")
        )),
        SessionFigureFault::NoneOf { what } => {
            Told::new(format!("0 {} are no session", counted(*what))).hint("ask for 1 or more")
        }
        SessionFigureFault::TooMany { what, count, most } => Told::new(format!(
            "{count} {} are more than is planned here (at most {most})",
            counted(*what)
        )),
        SessionFigureFault::AboveOneRm {
            load,
            share,
            one_rm,
        } => Told::new(format!(
            "{} is {} % of the 1RM of {}: it cannot be lifted",
            units.mass(*load),
            rounded(100.0 * share, 0),
            units.mass(*one_rm)
        ))
        .hint("choose a load below the 1RM; loads above it are for the method overloaded-lowering"),
        SessionFigureFault::NoLoad { load } => Told::new(format!("{} kg is no load", load.as_kg())),
        SessionFigureFault::NoRest { rest, place } => no_rest(*rest, *place),
        SessionFigureFault::ShortRest { rest, place, least } => short_rest(*rest, *place, *least),
        SessionFigureFault::LongRest { rest, place, most } => Told::new(format!(
            "a rest of {} s{} is too long",
            rounded(rest.as_s(), 0),
            at(*place)
        ))
        .hint(format!("up to {} s here", rounded(most.as_s(), 0))),
    }
}

fn counted(what: Counted) -> &'static str {
    match what {
        Counted::Sets => "sets",
        Counted::InASet => "repetitions of a set",
        Counted::InAGroup => "repetitions of a group",
        Counted::InAll => "repetitions in all",
    }
}

fn at(place: RestPlace) -> &'static str {
    match place {
        RestPlace::BetweenSets => " between sets",
        RestPlace::InsideCluster => " inside a cluster set",
        RestPlace::Anywhere => "",
    }
}

fn no_rest(rest: Duration, place: RestPlace) -> Told {
    let told = Told::new(format!(
        "a rest of {} s{} cannot be",
        rounded(rest.as_s(), 2),
        at(place)
    ));
    match place {
        RestPlace::Anywhere => told,
        _ => told.hint("a rest is some seconds or minutes, such as \"30 s\" or \"3 min\""),
    }
}

fn short_rest(rest: Duration, place: RestPlace, least: Duration) -> Told {
    let told = Told::new(format!(
        "a rest of {} s{} is none",
        rounded(rest.as_s(), 2),
        at(place)
    ));
    let least = least.as_s();
    match place {
        RestPlace::InsideCluster => told.hint(format!(
            "from {least} s on, in which the bar is put down; without a rest it is a set like any other: leave out --method \
             clusters"
        )),
        RestPlace::BetweenSets | RestPlace::Anywhere => told.hint(format!(
            "from {least} s on; short rests inside a set are those of --method clusters, by --rest-within"
        )),
    }
}

/// Bands, chains, pyramids, blocks.
fn scheme(fault: &SchemeFault, units: System) -> Told {
    match fault {
        SchemeFault::NoSetup { method } => {
            Told::new(format!("the method {method} needs a setup of the gym"))
                .hint("name a gym with bands or chains, so that the best setup can be picked")
        }
        SchemeFault::EmptySetup => Told::new("the setup has no load or no effort"),
        SchemeFault::SetupTooHard { effort } => Told::new(format!(
            "the setup asks for {} % of capacity at its hardest point: it cannot be lifted",
            rounded(100.0 * effort, 0)
        ))
        .hint("take plates off, or pick again at a lower effort"),
        SchemeFault::NoStepBelow { top, fewer_than } => Told::new(format!(
            "a top set of {} leaves no set below it",
            counted_noun(*top, "repetition")
        ))
        .hint(format!(
            "the top set of a pyramid has fewer than {fewer_than} repetitions"
        )),
        SchemeFault::NoPyramid { sets, top, most } => Told::new(format!(
            "{} {} no pyramid with a top set of {top}",
            counted_noun(*sets, "set"),
            of_count(sets, "makes", "make")
        ))
        .hint(format!("2 to {most} sets")),
        SchemeFault::NotHeld {
            load,
            repetitions,
            reserve,
            holds,
        } => not_held(&units.mass(*load), *repetitions, *reserve, *holds),
        SchemeFault::NothingHolds { reserve } => Told::new(format!(
            "no load of this gym leaves the sets {reserve} in reserve in the simulation"
        ))
        .hint("fewer sets or repetitions, longer rests, or less load: a lighter bar, for a lift of the body a machine that helps"),
        SchemeFault::FeltAboveOneRm { felt, most } => Told::new(format!(
            "with these bands or chains {} are felt near the end, more than the 1RM of {}, and nobody can take the load there",
            units.mass(*felt),
            units.mass(*most)
        ))
        .hint("take narrower bands or lighter chains, or a lower --effort; --method straight plans plain weight"),
        SchemeFault::PiecesLeaveTooLittle {
            pieces,
            effort,
            left,
            lightest,
        } => Told::new(format!(
            "beside {} only {} of bar and plates ask for {} % of this lifter's strength, and the lightest that can be loaded \
             is {}",
            pieces.join(" and "),
            units.mass(*left),
            rounded(100.0 * effort, 0),
            units.mass(*lightest)
        ))
        .hint("hang narrower bands, lighter chains or fewer of them, or ask for a higher --effort"),
        SchemeFault::TooMuchWhenBandsGo { left, most } => Told::new(format!(
            "when the bands go, {} are left on the lifter, more than {}",
            units.mass(*left),
            units.mass(*most)
        ))
        .hint("name a gym whose file has safety_arms, take a weaker band from above, or a lower --effort"),
        SchemeFault::NoStepsInGym => {
            Told::new("the loads of this gym leave no steps below the top set")
                .hint("use smaller plates, or straight sets")
        }
        SchemeFault::NoBlock { weeks, most } => Told::new(format!(
            "a block of {} is not planned (1 to {most})",
            counted_noun(*weeks, "week")
        )),
    }
}

/// Sets that the simulation fails, with what would hold.
fn not_held(load: &str, repetitions: u32, reserve: u32, holds: Option<u32>) -> Told {
    let told = Told::new(format!(
        "the simulation does not lift {load} for {repetitions} in every set with {reserve} in reserve"
    ));
    match holds {
        Some(holds) => told.hint(format!(
            "--reps {holds} holds at this load; leave --load out to have it sought"
        )),
        None => told.hint("take less; leave --load out to have it sought"),
    }
}

/// Chart, fatigue model and simulated repetition.
fn prediction(fault: &PredictionFault) -> Told {
    Told::new(match fault {
        PredictionFault::OffTheChart { range, repetitions } => format!(
            "the repetition chart runs from {} to {} repetitions, not to {}",
            range.0,
            range.1,
            rounded(*repetitions, 1)
        ),
        PredictionFault::NoShare { share } => format!("{share} is no share of 1RM"),
        PredictionFault::BelowTheChart { lightest, share } => format!(
            "the repetition chart ends at {} % of 1RM, above the {} % asked for",
            rounded(100.0 * lightest, 0),
            rounded(100.0 * share, 0)
        ),
        PredictionFault::NoShareOfForce { share } => {
            format!("{share} is no share of maximal force (0 to 1)")
        }
        PredictionFault::NoTime { time } => format!("{} s is no time to work or rest", time.as_s()),
        PredictionFault::EmptyGroup => {
            "a set needs at least one repetition in every group".to_owned()
        }
        PredictionFault::NoStrengthSet { repetitions, most } => {
            format!(
                "a set of {} is no strength set (at most {most})",
                counted_noun(*repetitions, "repetition")
            )
        }
        PredictionFault::EndlessSet { load, most } => format!(
            "more than {most} repetitions are predicted at {} kg",
            load.as_kg()
        ),
        PredictionFault::UnsoundRepetition { load } => {
            format!("the repetition at {} kg gave no sound answer", load.as_kg())
        }
    })
}
