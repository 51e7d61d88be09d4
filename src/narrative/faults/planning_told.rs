//! Words for: why the ground of a session cannot be laid.

use super::Told;
use super::log_told::date_in_words;
use crate::bounds::bounds;
use crate::error::PlanFault;
use crate::narrative::prose::{listed, percent};
use crate::narrative::quantities::{QuantityWords, rounded};
use crate::progress::unconfirmed::FALL_SHARE;
use crate::units::System;

/// The fault in words.
pub(super) fn told(fault: &PlanFault, units: System) -> Told {
    match fault {
        PlanFault::EffortOutside { effort } => {
            Told::new(format!("--effort {effort} is outside 0.3 to 1"))
        }
        PlanFault::AgeOutside { years } => {
            Told::new(format!("--age {years} is outside 5 to 110 years"))
        }
        PlanFault::MonthsOutside { months, most } => {
            Told::new(format!("--training-months {months} is outside 0 to {most} months"))
        }
        PlanFault::OneRmOutside { one_rm, most } => Told::new(format!(
            "--one-rm {} is no load that anybody lifts",
            units.mass(*one_rm)
        ))
        .hint(format!("up to {} is planned with", units.mass(*most))),
        PlanFault::LossOutside { share } => Told::new(format!(
            "--velocity-loss {} % is none that a set ends at: {} to {}",
            rounded(100.0 * share, 2),
            percent(bounds().velocity_loss.least()),
            percent(bounds().velocity_loss.most())
        ))
        .hint("20% is usual"),
        PlanFault::ReserveOutside { reserve, most } => {
            Told::new(format!("--rir {reserve} is more than can be felt: 0 to {most}"))
        }
        PlanFault::NoSetsAWeek => {
            Told::new("--max-per-week 0 leaves nothing to plan").hint("name the sets of a week, 1 or more")
        }
        PlanFault::ManyRepetitions {
            sets,
            repetitions,
            most,
        } => Told::new(format!(
            "{sets} sets of {repetitions} are {} repetitions of one lift: a session is planned with at most {most}",
            sets * repetitions
        ))
        .hint("muscle that is used so much breaks down: fewer sets, or fewer repetitions"),
        PlanFault::SetsAboveWeek { sets, most } => Told::new(format!(
            "--sets {sets} is more in one session than --max-per-week {most} allows in a week"
        ))
        .hint("leave one of the two out, or ask for fewer sets"),
        PlanFault::OtherPieces { method } => {
            Told::new(format!("--method {method} without {method} among what hangs on the bar"))
                .hint(format!(
                    "name {method} with --{}, or the method of what is named",
                    method.trim_end_matches('s')
                ))
        }
        PlanFault::Unheeded {
            option,
            planned,
            in_block,
            heeding,
        } => unheeded(option, planned, *in_block, heeding),
        PlanFault::NoStart(fault) => {
            Told::new(format!("--start: {}", date_in_words(fault)))
                .hint("write it year-month-day, such as 2026-01-31")
        }
        PlanFault::StartInLog { start, last } => Told::new(format!(
            "--start {start}: the log's last day with this lift is {last}, so the plan begins later"
        ))
        .hint("choose a later day, or leave out the rows of the log from that day on"),
        PlanFault::StartOfNothing => Told::new(
            "--start changes nothing in a single session without a log",
        )
        .hint("it dates the sessions of a block (--weeks) and tells how old a log is (--log)"),
        PlanFault::BlockOfAll => Told::new("a block is of one method, not of all")
            .hint("name it: --method pyramid --weeks 4"),
        PlanFault::LogEndsInFall {
            line,
            load,
            one_rm,
            before,
        } => Told::new(format!(
            "the last day of the log (line {line}, {}) stands for {}, less than {} of the {} of the days before: what \
             is lifted now is not known",
            units.mass(*load),
            units.mass(*one_rm),
            percent(FALL_SHARE),
            units.mass(*before)
        ))
        .hint("look at the digits and the unit of that line; if it is right, wait for a second day, or state the 1RM with --one-rm"),
        PlanFault::LogTellsNothing { last, days } => Told::new(format!(
            "the log ends on {last}, {days} days before the plan: what is left of that strength after so long, nobody knows"
        ))
        .hint("begin as a novice does, without --log and with --training-months 0; a few sessions make a new log")
        .hint("or test the lift (plan --team makes a test of a row that leaves it empty) and state what it finds with --one-rm"),
        PlanFault::LogBelowBody { one_rm, body } => Told::new(format!(
            "the log's 1RM of {} is less than the body of {}: loads of this lift hold the body mass",
            units.mass(*one_rm),
            units.mass(*body)
        ))
        .hint("write body and added load together in the log, or choose the --lifter it belongs to"),
        PlanFault::PiecesWithoutMethod => {
            Told::new("--band, --chain and --item hang beside the load, which only the methods bands and chains plan")
                .hint("add --method bands, or leave them out")
        }
        PlanFault::NobodyOfOneRm { one_rm } => Told::new(format!(
            "no strength of this lifter gives a 1RM of {}, so bands and chains cannot be judged for it",
            units.mass(*one_rm)
        ))
        .hint("choose the --lifter it belongs to, or train with straight sets"),
        PlanFault::NoPieces { method } => Told::new(format!("no {method} were named"))
            .hint("--gym college-weight-room finds the best setup of a gym"),
    }
}

/// An option that changes nothing in what is planned, with the methods that heed it.
fn unheeded(option: &str, planned: &[&str], in_block: bool, heeding: &[&str]) -> Told {
    let planned = match (in_block, planned) {
        (true, [method]) => format!("a block of {method}"),
        (_, methods) => methods.join(", "),
    };
    let told = Told::new(format!("--{option} changes nothing in {planned}"));
    if heeding.is_empty() {
        return told.hint(format!("leave --{option} out"));
    }
    let (verb, alone) = match heeding {
        [method] => ("heeds", format!("--method {method}")),
        _ => ("heed", "one of these as --method".to_owned()),
    };
    let block = if in_block { " in a block" } else { "" };
    told.hint(format!(
        "only {} {verb} it{block}: ask for {alone}, or leave --{option} out",
        listed(heeding)
    ))
}
