//! How far long work is, in a line.
//!
//! In: the time since it began, parts done and parts in all. Out: a sentence, or nothing where all of it is short.

use super::quantities::rounded;
use std::time::Duration;

/// Work that is estimated to take no longer in all is not told of (the reader of a line waits that long anyway).
const SHORT: Duration = Duration::from_secs(10);

/// "working: 12 % done, some 4 minutes left".
#[must_use]
pub fn waiting_in_words(passed: Duration, [done, all]: [u64; 2]) -> Option<String> {
    if done == 0 || all == 0 {
        let seconds = rounded(passed.as_secs_f64(), 0);
        return Some(format!(
            "working for {seconds} s, and no part is done that would tell how long it takes"
        ));
    }
    let share = (done as f64 / all as f64).min(1.0);
    let in_all = passed.as_secs_f64() / share;
    if in_all <= SHORT.as_secs_f64() {
        return None;
    }
    let left = in_all - passed.as_secs_f64();
    Some(format!(
        "working: {} % done, some {} left",
        rounded((100.0 * share).floor(), 0),
        time_in_words(left)
    ))
}

/// Seconds below two minutes, minutes below two hours, then hours.
fn time_in_words(seconds: f64) -> String {
    let (count, unit) = match seconds {
        s if s < 120.0 => (s, "second"),
        s if s < 7200.0 => (s / 60.0, "minute"),
        s => (s / 3600.0, "hour"),
    };
    let count = rounded(count.ceil(), 0);
    let plural = if count == "1" { "" } else { "s" };
    format!("{count} {unit}{plural}")
}
