//! A session's facts in words: what sets are for, how often, what numbers rest on.
//!
//! In: facts of `session`. Out: text, masses in the units that were asked for.

use super::doubted_sets::{break_in_words, jump_in_words};
use super::faults::reasons;
use super::log_words::more_left_out;
use super::progress_words::left_out_row;
use super::progress_words::{since_lay_off, verdict_in_words, where_now_is_from};
use super::prose::{counted_noun, listed, percent};
use super::quantities::{QuantityWords, rounded};
use super::spotter_words::way_back;
use crate::session::block_days::DayPurpose;
use crate::session::draft::Predicted;
use crate::session::fatigue::FatigueJoint;
use crate::session::maximum_test::TestedMaximum;
use crate::session::method::Method;
use crate::session::planned_set::{PlannedSet, SetIntent, SetNote};
use crate::session::remark::{Frequency, PlanBasis};
use crate::session::status::Level;
use crate::session::strength::{OneRmSource, SimulatedRange, Strength};
use crate::study::{PlanNote, SessionName};
use crate::units::{Duration, Mass, System};

/// "novice", "intermediate", "advanced".
#[must_use]
pub fn level_name(level: Level) -> &'static str {
    match level {
        Level::Novice => "novice",
        Level::Intermediate => "intermediate",
        Level::Advanced => "advanced",
    }
}

/// What a session is called that finds a maximum.
#[must_use]
pub(super) const fn name_of_test(finds: TestedMaximum) -> &'static str {
    match finds {
        TestedMaximum::OneRm => "test of the 1RM",
        TestedMaximum::FiveInReserve => "test of five repetitions",
    }
}

/// "shoulder", "grip"; "muscles" for any other.
#[must_use]
pub fn joint_name(joint: FatigueJoint) -> &'static str {
    match joint {
        FatigueJoint::Ankle => "ankle",
        FatigueJoint::Knee => "knee",
        FatigueJoint::Hip => "hip",
        FatigueJoint::Trunk => "trunk",
        FatigueJoint::Shoulder => "shoulder",
        FatigueJoint::Elbow => "elbow",
        FatigueJoint::HandGrip => "grip",
        FatigueJoint::General => "muscles",
    }
}

/// "straight", "clusters", "plain weight".
#[must_use]
pub fn predicted_name(of: Predicted) -> &'static str {
    match of {
        Predicted::By(method) => method.name(),
        Predicted::PlainWeight => "plain weight",
    }
}

/// Where a 1RM comes from: "as given".
#[must_use]
pub fn one_rm_source(source: &OneRmSource, units: System) -> String {
    match source {
        OneRmSource::Given => "as given".to_owned(),
        OneRmSource::Log {
            verdict,
            sureness,
            line,
            now,
            last,
            lay_off,
            jumps,
            since,
            ..
        } => {
            let trend = match line.sessions {
                1 => "one session".to_owned(),
                _ => verdict_in_words((*verdict, *sureness), line, units),
            };
            let parts = [
                Some(trend),
                where_now_is_from(now, units),
                lay_off.map(since_lay_off),
            ];
            let jumps = jumps.iter().map(|jump| jump_in_words(jump, units));
            let doubted = jumps.chain(since.map(break_in_words));
            let parts: Vec<String> = parts.into_iter().flatten().chain(doubted).collect();
            format!("from the log up to {last}, {}", parts.join("; "))
        }
        OneRmSource::OfSet { load, repetitions } => {
            format!("from {} × {repetitions}", units.mass(*load))
        }
        OneRmSource::Simulated {
            range: Some(range),
            lifter,
            measured: false,
        } => untested_in_words(range, &format!(" for {lifter}"), units),
        OneRmSource::Simulated {
            lifter, measured, ..
        } => {
            let measured = if *measured {
                ", measured in this lift"
            } else {
                ""
            };
            format!("simulated for {lifter}{measured}")
        }
    }
}

/// "simulated 54.3 kg for Ann, 38.1 kg to 76.8 kg hold four in five; planned from 38.1 kg until it is tested".
#[must_use]
pub(super) fn untested_in_words(range: &SimulatedRange, whose: &str, units: System) -> String {
    format!(
        "simulated {}{whose}, {} to {} hold four in five; planned from {} until it is tested",
        units.mass(range.simulated),
        units.mass(range.low),
        units.mass(range.high),
        units.mass(range.careful())
    )
}

/// "5", "2 + 2 + 2".
#[must_use]
pub fn groups_added(set: &PlannedSet) -> String {
    let groups: Vec<String> = set.groups.iter().map(u32::to_string).collect();
    groups.join(" + ")
}

/// "30 s", "2 min", "2.5 min".
#[must_use]
pub fn rest_time(time: Duration) -> String {
    let seconds = time.as_s();
    if seconds < 100.0 {
        format!("{} s", rounded(seconds, 0))
    } else {
        format!("{} min", rounded(seconds / 60.0, 1))
    }
}

/// What a set is for.
#[must_use]
pub fn intent(intent: SetIntent) -> String {
    let text = match intent {
        SetIntent::WarmUp => "warm up, easy and crisp",
        SetIntent::EasyAndCrisp => "easy and crisp",
        SetIntent::InReserve => "straight set",
        SetIntent::BuildUp => "build up",
        SetIntent::TopSet => "top set",
        SetIntent::EveryRepetitionFast => "every repetition fast",
        SetIntent::DriveThrough => "drive through to lockout",
        SetIntent::LowerSlowly { time, back } => {
            return format!("lower in {} s, {}", time.as_s(), way_back(back));
        }
    };
    text.to_owned()
}

/// What to know about a set.
#[must_use]
pub fn set_note(note: &SetNote, strength: &Strength, units: System) -> String {
    let felt = |loads: [Mass; 3]| {
        let share = |felt: Mass| percent(strength.share_of(felt - strength.body));
        let [bottom, middle, top] =
            loads.map(|load| format!("{} ({})", units.mass(load), share(load)));
        format!("felt: {bottom} at the bottom, {middle} in the middle, {top} at the top, of 1RM")
    };
    match *note {
        SetNote::Felt(loads) => felt(loads),
        SetNote::PartsOn {
            method,
            felt: loads,
        } => {
            format!("{} on; {}", method.name(), felt(loads))
        }
        SetNote::Without(method) => format!("without {}", method.name()),
        SetNote::StopAtLoss(loss) => format!(
            "stop the set when a repetition is {} slower than its fastest",
            percent(loss)
        ),
    }
}

/// How often a week.
#[must_use]
pub fn frequency(frequency: Frequency) -> String {
    match frequency {
        Frequency::DaysAWeek {
            least,
            most,
            for_this_lift,
        } => {
            let days = if least == most {
                most.to_string()
            } else {
                format!("{least} to {most}")
            };
            let lift = if for_this_lift { " for this lift" } else { "" };
            format!("{} a week{lift}", counted_noun(&days, "day"))
        }
        Frequency::OnceInPlaceOfHeavy => "at most once a week, in place of a heavy day".to_owned(),
    }
}

/// What a number of the plan rests on.
#[must_use]
pub fn basis(basis: &PlanBasis) -> &str {
    match basis {
        PlanBasis::RepetitionChart => "repetitions at a share of 1RM",
        PlanBasis::Finding(finding) => finding,
        PlanBasis::Guidance => "load, sets, frequency",
        PlanBasis::Weeks => "how the weeks go on",
        PlanBasis::PyramidSteps => "repetitions 10, 8, 6, 4, 2",
        PlanBasis::ClusterGroups => "groups of 1 to 3, 30 s rest",
        PlanBasis::SessionTotals => "repetitions of a session by load",
        PlanBasis::OverloadWindow => "105 to 110 %, 3 to 5 repetitions, 3 to 4 sets, once a week",
        PlanBasis::EccentricLimit => "eccentric limit",
        PlanBasis::LoweringCost => "how much a lowering tires against a lift",
        PlanBasis::EffortAsShare => {
            "repetitions from the effort at the hardest point, as if it were a share of 1RM"
        }
        PlanBasis::Prediction => {
            "velocities: simulated repetition of this lifter, scaled to the 1RM; fatigue: three-compartment model"
        }
    }
}

/// "main day".
fn day_purpose(purpose: DayPurpose) -> &'static str {
    match purpose {
        DayPurpose::Main => "main day",
        DayPurpose::Of(Method::Straight) => "straight sets day",
        DayPurpose::Of(Method::Pyramid) => "pyramid day",
        DayPurpose::Of(Method::Clusters) => "clusters day",
        DayPurpose::Of(Method::OverloadedLowering) => "overload day",
        DayPurpose::Of(Method::Bands) => "bands day",
        DayPurpose::Of(Method::Chains) => "chains day",
        DayPurpose::ComingBack => "coming back",
        DayPurpose::Lighter => "lighter day",
        DayPurpose::Easier => "deload day",
    }
}

/// "straight", "Week 1, day 4: lighter day".
#[must_use]
pub fn session_name(name: SessionName) -> String {
    match name {
        SessionName::Of(method) => method.name().to_owned(),
        SessionName::InPlace { of, planned } => {
            format!("{} in place of {}", planned.name(), of.name())
        }
        SessionName::Day {
            weeks: (week, until),
            day,
            purpose,
            date,
        } => {
            let date = date.map_or_else(String::new, |date| format!(", {date}"));
            let weeks = match until > week {
                true => format!("Weeks {week} to {until}"),
                false => format!("Week {week}"),
            };
            format!("{weeks}, day {day}{date}: {}", day_purpose(purpose))
        }
    }
}

/// What was taken for granted.
#[must_use]
pub fn plan_note(note: &PlanNote, units: System) -> String {
    match note {
        PlanNote::UnknownTraining => {
            "Nothing is known of this lifter's training, so it is planned as for a novice; --training-months tells better."
                .to_owned()
        }
        PlanNote::NothingPredicted(fault) => {
            format!("Nothing is predicted: {}.", reasons(fault, units))
        }
        PlanNote::SetsShared { most, days, each } => {
            format!(
                "At most {} a week on {}: {each} a session.",
                counted_noun(*most, "working set"),
                counted_noun(*days, "day")
            )
        }
        PlanNote::LifterDiffers {
            lifter,
            fitted,
            of_log,
        } => format!(
            "The log ends at {}, and {lifter} was fitted to a 1RM of {}: the plan takes the log's. Is it this lifter's log, and \
             its unit right? If so, fit the lifter again.",
            units.mass(*of_log),
            units.mass(*fitted)
        ),
        PlanNote::LogAndBody { body, leaves_out: true } => format!(
            "The log's loads are read as what is added to the body of {}, since some are less than that.",
            units.mass(*body)
        ),
        PlanNote::LogAndBody { body, leaves_out: false } => format!(
            "The log's loads are read with the body of {} in them, since none is less. Where they are what is added to it, this plan is far \
             too light: tell the 1RM by --one-rm, as what is added.",
            units.mass(*body)
        ),
        PlanNote::InPlaceToo {
            planned,
            of,
            comes_back,
        } => in_place_too(*planned, of, *comes_back),
        PlanNote::RowLeftOut(row) => left_out_row(row, units),
        PlanNote::MoreRowsLeftOut(more) => more_left_out(*more),
        PlanNote::UsualPlates => {
            "Loads: a bar and the usual plates; --gym takes those of a gym.".to_owned()
        }
        PlanNote::GymLoads(gym) => format!("Loads: {gym}."),
    }
}

/// "The same session of straight stands in place of pyramid and clusters, too: …".
fn in_place_too(planned: Method, of: &[Method], comes_back: bool) -> String {
    let names: Vec<&str> = of.iter().map(|method| method.name()).collect();
    let why = match comes_back {
        true => {
            "after illness, soreness or a break load comes back step by step, whatever the method"
        }
        false => "a novice gains most from plain progressive overload",
    };
    format!(
        "The session of {} stands in place of {}, too: {why}.",
        planned.name(),
        listed(&names)
    )
}
