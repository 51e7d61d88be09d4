//! A training log in words: the verdict, what the log cannot tell, what is odd about its rows.
//!
//! In: facts of [`crate::progress`] and the units asked for. Out: sentences; loads of a row stay as they
//! were typed.

use super::doubted_sets::{failed_in_words, jump_in_words};
use super::faults::log_row_in_words;
use super::prose::{capital, counted_noun, weeks};
use super::quantities::{QuantityWords, rounded};
use super::sureness_words::what_sureness_means;
use crate::progress::day::Day;
use crate::progress::estimate::{Estimate, Guess, MOST_TRUSTED_REPETITIONS};
use crate::progress::log_limits::LogLimit;
use crate::progress::one_rm_now::{LAY_OFF_DAYS, LayOff, NowFrom, OneRmNow};
use crate::progress::session_best::SessionBest;
use crate::progress::training_log::{OddRows, SkippedRow};
use crate::progress::trend::Trend;
use crate::progress::trend_line::{FEWEST_SESSIONS, TrendLine};
use crate::progress::verdict::{Sureness, Verdict};
use crate::units::{Mass, System};

/// "rising", "flat", "falling", "unclear".
#[must_use]
pub const fn verdict_word(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Rising => "rising",
        Verdict::Flat => "flat",
        Verdict::Falling => "falling",
        Verdict::Unclear => "unclear",
    }
}

/// "clear", "likely", "weak".
#[must_use]
pub const fn sureness_word(sureness: Sureness) -> &'static str {
    match sureness {
        Sureness::Clear => "clear",
        Sureness::Likely => "likely",
        Sureness::Weak => "weak",
    }
}

/// The verdict in one sentence: "flat over 11 weeks (+0.1 kg a week, 95 % interval −0.2 to +0.4), clear".
#[must_use]
pub fn trend_in_words(trend: &Trend, units: System) -> String {
    verdict_in_words((trend.verdict, trend.sureness), &trend.recent, units)
}

/// The verdict on a line in one sentence.
#[must_use]
pub fn verdict_in_words(
    (verdict, sureness): (Verdict, Sureness),
    line: &TrendLine,
    units: System,
) -> String {
    format!(
        "{} over {} ({}), {}",
        verdict_word(verdict),
        weeks(line.weeks()),
        slope_in_words(line, units),
        sureness_word(sureness)
    )
}

/// Ends of an interval that differ by less are one: the sessions lie on a line, kg a week.
const ONE_LINE_KG: f64 = 1.0e-9;

/// The slope of a line with its interval: "+0.1 kg a week, 95 % interval −0.2 to +0.4"; one session has none.
pub(super) fn slope_in_words(line: &TrendLine, units: System) -> String {
    if line.sessions < 2 {
        return "one session has no slope".to_owned();
    }
    let signed = |kg_week: f64| signed(in_units(kg_week, units));
    let interval = match line.interval_kg_week {
        None => String::new(),
        Some((low, high)) if high - low < ONE_LINE_KG => {
            ", the sessions lie on one line".to_owned()
        }
        Some((low, high)) => match (signed(low), signed(high)) {
            // Both are rounded to hundredths, and the slope lies between.
            (low, high) if low == high => {
                format!(", 95 % interval within 0.01 {} of that", unit(units))
            }
            (low, high) => format!(", 95 % interval {low} to {high}"),
        },
    };
    format!(
        "{} {} a week{interval}",
        signed(line.slope_kg_week),
        unit(units)
    )
}

/// A change of mass in the unit asked for.
fn in_units(kg: f64, units: System) -> f64 {
    match units {
        System::Metric => kg,
        System::Us => Mass::from_kg(kg).as_lb(),
    }
}

const fn unit(units: System) -> &'static str {
    match units {
        System::Metric => "kg",
        System::Us => "lb",
    }
}

fn signed(value: f64) -> String {
    let text = rounded(value.abs(), 2);
    if text == "0" {
        text
    } else if value < 0.0 {
        format!("\u{2212}{text}")
    } else {
        format!("+{text}")
    }
}

/// The finding in a few sentences: verdict, the maximum now and at its best, what was before.
#[must_use]
pub fn trend_sentences(trend: &Trend, units: System) -> Vec<String> {
    let best = &trend.sessions[trend.best];
    let mut lines = vec![
        format!(
            "{}: {} ({}).",
            trend.lift,
            trend_in_words(trend, units),
            what_sureness_means(trend.verdict, trend.sureness)
        ),
        format!(
            "Estimated 1RM now {}{}, best single session {} ({}).",
            units.mass(trend.one_rm_now()),
            where_now_is_from(&trend.now, units).map_or_else(
                || " at the end of the line".to_owned(),
                |from| format!(", {from}")
            ),
            units.mass(best.estimate.one_rm),
            ago(trend.weeks_since_best()),
        ),
    ];
    lines.extend(trend.lay_off.map(|lay_off| {
        format!(
            "{}: strength is kept for some {} weeks without training, so what was before is no measure of today.",
            capital(&since_lay_off(lay_off)),
            LAY_OFF_DAYS / 7
        )
    }));
    lines.extend(trend.before.as_ref().map(|line| before(line, units)));
    lines
}

/// Where the 1RM now is from, if it is less than the end of the line.
#[must_use]
pub fn where_now_is_from(now: &OneRmNow, units: System) -> Option<String> {
    let line = units.mass(now.line);
    match now.from {
        NowFrom::Line => None,
        NowFrom::BestSession(day) => Some(format!(
            "of {day}, the best session, since the line ends at {line}"
        )),
        NowFrom::LastSession { day, reserve } => Some(format!(
            "of the last session, {day}, which left {} in reserve; the line ends at {line}",
            rounded(reserve, 1)
        )),
        NowFrom::Failed(failed) => Some(format!(
            "below {}; the line ends at {line}",
            failed_in_words(&failed, units)
        )),
    }
}

/// "only the sessions since 2026-11-23 count, after 42 days without one".
#[must_use]
pub fn since_lay_off(lay_off: LayOff) -> String {
    format!(
        "only the sessions since {} count, after {} days without one",
        lay_off.to,
        lay_off.days()
    )
}

fn before(line: &TrendLine, units: System) -> String {
    format!(
        "Before that, over {}, it changed by {} {} a week.",
        weeks(line.weeks()),
        signed(in_units(line.slope_kg_week, units)),
        unit(units)
    )
}

/// "this week", "1 week ago", "9 weeks ago".
fn ago(since: f64) -> String {
    match weeks(since).as_str() {
        "0 weeks" => "this week".to_owned(),
        many => format!("{many} ago"),
    }
}

/// What stands over the table of equations: the last session's best set.
#[must_use]
pub fn last_set(last: &SessionBest, units: System) -> String {
    let set = &last.set;
    let reserve = set
        .reserve
        .map(|reserve| format!(", {} in reserve (RIR)", rounded(reserve, 1)))
        .unwrap_or_default();
    format!(
        "The last session's best set, {}: {} for {}{reserve}, by every equation:",
        last.day,
        units.mass(set.load),
        counted_noun(set.repetitions as usize, "repetition"),
    )
}

/// The heads of the table of equations.
pub const EQUATION_HEADS: [&str; 4] = ["equation", "1RM", "valid repetitions", "in the median"];

/// One equation as a row of that table.
#[must_use]
pub fn equation_cells(guess: &Guess, units: System) -> Vec<String> {
    let (fewest, most) = guess.equation.repetitions;
    let used = match (&guess.equation.movement, guess.in_range) {
        (Some(_), _) => "no: made for this lift only",
        (None, true) => "yes",
        (None, false) => "outside its range",
    };
    vec![
        guess.equation.name.clone(),
        units.mass(guess.one_rm),
        format!("{} to {}", rounded(fewest, 0), rounded(most, 0)),
        used.to_owned(),
    ]
}

/// What the equations agree on, how far they are apart, and what those outside their range say.
#[must_use]
pub fn spread_in_words(estimate: &Estimate, units: System) -> String {
    let (low, high) = (units.mass(estimate.lowest), units.mass(estimate.highest));
    let inside = if estimate.measured {
        format!("A single without reserve is the 1RM itself: {low}.")
    } else if low == high {
        format!("The 1RM is {low} by the only equation that is valid for so many repetitions.")
    } else {
        format!(
            "The median of those valid for so many repetitions is {}; they spread from {low} to {high} ({} %).",
            units.mass(estimate.one_rm),
            rounded(100.0 * estimate.spread(), 1)
        )
    };
    let others = estimate.others.map(|(low, high)| {
        let (low, high) = (units.mass(low), units.mass(high));
        let between = if low == high {
            low
        } else {
            format!("{low} to {high}")
        };
        format!(" Outside their range, so not used: {between}.")
    });
    inside + &others.unwrap_or_default()
}

/// The head of the list of limits.
pub const LIMITS_HEAD: &str = "What this log cannot tell:";

/// One thing the log cannot tell, in one sentence.
#[must_use]
pub fn limit_in_words(limit: &LogLimit, units: System) -> String {
    match limit {
        LogLimit::FewSessions(count) => few_sessions(*count),
        LogLimit::ShortStretch(weeks) => format!(
            "{} short: a plateau and a bad fortnight look alike",
            are_weeks(*weeks)
        ),
        LogLimit::Gaps(gaps) => gaps_in_words(gaps),
        LogLimit::Jump(jump) => jump_in_words(jump, units),
        LogLimit::LayOff(lay_off) => format!(
            "no session for {} days after {}: how much of the strength before them comes back, and how fast",
            lay_off.days(),
            lay_off.from
        ),
        LogLimit::HighRepetitions(share) => format!(
            "{} % of the days have no set of {MOST_TRUSTED_REPETITIONS} repetitions or fewer, those in reserve counted: the equations are weak there",
            percent(*share)
        ),
        LogLimit::EquationsDisagree(spread) => format!(
            "the equations differ by {} % of the estimate: trust the trend, not the level",
            percent(*spread)
        ),
        LogLimit::RepetitionsDrift(early, late) => drift_in_words(*early, *late),
        LogLimit::NoReserve(share) => format!(
            "the best set of {} % of the days is of several repetitions without a noted reserve and counts as done to failure: if it was \
             not, the 1RM is higher",
            percent(*share)
        ),
        LogLimit::EstimatedLow(lift) => estimated_low(lift),
        LogLimit::BodyMassInLoad => {
            "the load must hold the body mass too: a change of body mass looks like a trend"
                .to_owned()
        }
        LogLimit::Scatter(kg) => format!(
            "two days in three lie within {} {} of the line: a change smaller than that is noise",
            rounded(in_units(*kg, units), 1),
            unit(units)
        ),
        LogLimit::VelocityDisagrees(share) => format!(
            "in the median of the days, velocity by the equations of a whole group and repetitions differ by {} % in the 1RM they give: \
             a profile of the lifter's own velocities is another estimate",
            percent(*share)
        ),
    }
}

/// "1 week is", "2.5 weeks are".
fn are_weeks(weeks: f64) -> String {
    match rounded(weeks, 1).as_str() {
        "1" => "1 week is".to_owned(),
        many => format!("{many} weeks are"),
    }
}

fn drift_in_words(early: f64, late: f64) -> String {
    format!(
        "sets went from about {} to {} repetitions, those in reserve counted: equations err differently by repetitions, so \
         part of the trend may be that",
        rounded(early, 0),
        rounded(late, 0)
    )
}

fn estimated_low(lift: &str) -> String {
    let lift = lift.replace('-', " ");
    format!("all general equations estimate the {lift} too low")
}

fn few_sessions(count: usize) -> String {
    if count < FEWEST_SESSIONS {
        let sessions = counted_noun(count, "session");
        let are = if count == 1 { "is" } else { "are" };
        format!("{sessions} {are} too few for a verdict ({FEWEST_SESSIONS} at least)")
    } else {
        let sessions = counted_noun(count, "session");
        format!("only {sessions} in the recent stretch: one odd day can turn it")
    }
}

fn percent(share: f64) -> String {
    rounded(100.0 * share, 0)
}

/// At most this many breaks are named.
const NAMED_GAPS: usize = 4;

fn gaps_in_words(gaps: &[(Day, Day)]) -> String {
    let named: Vec<String> = gaps
        .iter()
        .take(NAMED_GAPS)
        .map(|(from, to)| {
            // A gap is longer than a fortnight, so the plural fits.
            format!("{} days after {from}", to.days_since(*from))
        })
        .collect();
    format!(
        "no session for {}{}: what happened there is unknown, and strength lost in a break is no plateau",
        named.join(", "),
        and_more(gaps.len(), NAMED_GAPS)
    )
}

/// " and 3 more" where only some are named.
fn and_more(count: usize, named: usize) -> String {
    if count > named {
        format!(" and {} more", count - named)
    } else {
        String::new()
    }
}

/// What is odd about rows, in one sentence.
#[must_use]
pub fn odd_rows_in_words(odd: &OddRows) -> String {
    match odd {
        OddRows::NewestFirst => {
            "the log runs from the newest day to the oldest; it was read the other way round"
                .to_owned()
        }
        OddRows::OutOfOrder(lines) => format!(
            "dates out of order: {} before the row above; sorted by date, check for a typing error",
            lines_in_words(lines)
        ),
        OddRows::PastedTwice(lines) => format!(
            "{} {} of the same day from further up: pasted twice? (the trend does not change by it)",
            lines_in_words(lines),
            if lines.len() == 1 {
                "repeats a set"
            } else {
                "repeat sets"
            }
        ),
        OddRows::Failed(lines) => format!(
            "{}: {}: no estimate, but until it is answered the 1RM lies below it",
            lines_in_words(lines),
            if lines.len() == 1 {
                "a failed attempt"
            } else {
                "failed attempts"
            }
        ),
    }
}

/// At most this many lines are named in one notice.
const NAMED_LINES: usize = 6;

fn lines_in_words(lines: &[usize]) -> String {
    let named: Vec<String> = lines
        .iter()
        .take(NAMED_LINES)
        .map(usize::to_string)
        .collect();
    let plural = if lines.len() == 1 { "line" } else { "lines" };
    let more = and_more(lines.len(), NAMED_LINES);
    format!("{plural} {}{more}", named.join(", "))
}

/// A row that was left out, in one line.
#[must_use]
pub fn left_out_row(row: &SkippedRow, units: System) -> String {
    format!("left out: line {}: {}", row.line, why_left_out(row, units))
}

/// Why a row was left out, in one sentence.
#[must_use]
pub fn why_left_out(row: &SkippedRow, units: System) -> String {
    let faults = row.faults.iter();
    let told: Vec<String> = faults
        .map(|fault| log_row_in_words(fault, units).message)
        .collect();
    told.join("; ")
}
