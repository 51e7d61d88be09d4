//! Random training logs: what `progress` says of them, and the words around its figure, against the best sets of their days.

use super::{Claim, check, compiled, holds, says, theil_sen, with_changed_numbers};
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use regex::Captures;
use std::sync::LazyLock;
use torquill::library::Library;
use torquill::narrative::progress_words::{
    last_set, limit_in_words, spread_in_words, trend_sentences,
};
use torquill::narrative::trend_words::trend_figure_words;
use torquill::progress::day::Day;
use torquill::progress::lift_facts::LiftFacts;
use torquill::progress::session_best::SessionBest;
use torquill::progress::training_log::{Log, LogEntry};
use torquill::progress::trend::{Trend, trend};
use torquill::units::{Mass, System};

static LIBRARY: LazyLock<Library> = LazyLock::new(Library::built_in);

fn trend_of(log: &Log) -> Option<Trend<'static>> {
    let published = &LIBRARY.published().expect("tables").estimates;
    trend(log, LiftFacts::default(), published).ok()
}

/// The sessions of the recent line.
fn recent<'a>(trend: &'a Trend<'_>) -> &'a [SessionBest<'a>] {
    let line = &trend.recent;
    &trend.sessions[line.first..line.first + line.sessions]
}

fn points(sessions: &[SessionBest<'_>]) -> Vec<[f64; 2]> {
    let all = sessions.iter().map(|one| [one.week, one.kg()]);
    all.collect()
}

fn median(values: impl Iterator<Item = f64>) -> f64 {
    let mut sorted: Vec<f64> = values.collect();
    sorted.sort_by(f64::total_cmp);
    match sorted.len() {
        0 => f64::NAN,
        odd if odd % 2 == 1 => sorted[odd / 2],
        even => f64::midpoint(sorted[even / 2 - 1], sorted[even / 2]),
    }
}

/// A slope with its sign; nothing is told without one.
fn slope_is(printed: &str, slope: f64) -> Result<(), String> {
    let told = printed.trim_start_matches('+');
    holds(
        (told == "0") || printed.starts_with(['+', '\u{2212}']),
        "a sign",
    )?;
    says(told, slope, 1e-6, "median of all slopes")
}

/// The slope with what stands behind it: the interval that holds it.
fn slope_told(told: &str, trend: &Trend<'_>) -> Result<(), String> {
    let is_one = recent(trend).len() == 1;
    holds(is_one == (told == "one session has no slope"), "a slope")?;
    if is_one {
        return Ok(());
    }
    let reads = compiled(
        r"(\S+) kg a week(?:, 95 % interval (\S+) to (\S+)|, (the sessions lie on one line)|, (95 % interval within 0\.01 kg of that)|)",
    );
    let words = reads
        .captures(told)
        .ok_or(format!("`{told}` is no slope"))?;
    let slope = theil_sen(&points(recent(trend)));
    slope_is(&words[1], slope)?;
    let known = trend.recent.interval_kg_week;
    match (words.get(2), words.get(3), known) {
        (Some(low), Some(high), Some((least, most))) => {
            says(low.as_str().trim_start_matches('+'), least, 1e-9, "least")?;
            says(high.as_str().trim_start_matches('+'), most, 1e-9, "most")?;
            holds(least <= slope + 1e-9 && slope <= most + 1e-9, "in between")
        }
        (None, None, None) => holds(words.get(4).or(words.get(5)).is_none(), "no interval"),
        (None, None, Some((least, most))) => holds(most - least < 0.0101, "hardly any"),
        _ => Err("whether there is an interval".to_owned()),
    }
}

/// The end of the slope's interval that is farther from none, % of the level a week.
fn percent_a_week(trend: &Trend<'_>) -> Result<f64, String> {
    let sessions = recent(trend);
    let slope = theil_sen(&points(sessions));
    let level = median(points(sessions).iter().map(|[week, kg]| kg - slope * week));
    let middle = level + slope * sessions[sessions.len() / 2].week;
    let (least, most) = trend.recent.interval_kg_week.ok_or("no interval")?;
    Ok(100.0 * least.abs().max(most.abs()) / middle)
}

/// What the verdict means for the slope.
fn verdict_is(told: &str, sureness: &str, trend: &Trend<'_>) -> Result<(), String> {
    if recent(trend).len() == 1 {
        return holds(told == "unclear" && sureness == "weak", "of one session");
    }
    let slope = theil_sen(&points(recent(trend)));
    let (least, most) = trend
        .recent
        .interval_kg_week
        .unwrap_or((f64::MIN, f64::MAX));
    let is_sure = sureness == "clear" || sureness == "likely";
    match told {
        "rising" => holds(slope > 0.0 && (!is_sure || least > 0.0), "it rises"),
        "falling" => holds(slope < 0.0 && (!is_sure || most < 0.0), "it falls"),
        "flat" => {
            let widest = percent_a_week(trend)?;
            let so_wide = match sureness {
                "clear" => 0.25,
                "likely" => 0.375,
                // The interval is no wider than eight times what counts as flat.
                _ => 2.0,
            };
            holds(
                widest <= so_wide * 1.01,
                &format!("{widest} % a week is flat"),
            )
        }
        "unclear" => holds(sureness == "weak", "nothing is sure"),
        _ => Err(format!("{told} is no verdict")),
    }
}

fn weeks_are(printed: &str, trend: &Trend<'_>) -> Result<(), String> {
    let sessions = recent(trend);
    let days = sessions[sessions.len() - 1].day.days_since(sessions[0].day);
    says(printed, f64::from(days) / 7.0, 1e-9, "weeks")
}

fn finding(told: &Captures<'_>, trend: &Trend<'_>) -> Result<(), String> {
    holds(
        told[1] == trend.lift || told[1].to_lowercase().replace(' ', "-") == trend.lift,
        "the lift",
    )?;
    verdict_is(&told[2], &told[5], trend)?;
    weeks_are(&told[3], trend)?;
    slope_told(&told[4], trend)?;
    let Some(words) = told.get(6) else {
        return Ok(());
    };
    let meant = match (&told[2], &told[5]) {
        ("unclear", _) => "the log does not tell whether the 1RM changes",
        ("flat", "clear") => {
            let weeks: f64 = told[3].parse().map_err(|_| "no weeks")?;
            holds(weeks >= 6.0, "six weeks or more")?;
            "the 95 % interval stays within 0.25 % of the 1RM a week, for 6 weeks or more"
        }
        ("flat", "likely") => "the 95 % interval stays within 0.375 % of the 1RM a week",
        ("flat", _) => "a hint only: a slow change is not excluded",
        (_, "clear") => "one in a hundred logs without a change would look so",
        (_, "likely") => "one in twenty logs without a change would look so",
        _ => "a hint only: that nothing changes is not excluded",
    };
    holds(words.as_str() == meant, "what that means")
}

/// The end of the line through the recent days, kg.
fn end_kg(trend: &Trend<'_>) -> f64 {
    let all = points(recent(trend));
    if let [[_, kg]] = all[..] {
        return kg;
    }
    let slope = theil_sen(&all);
    let level = median(all.iter().map(|[week, kg]| kg - slope * week));
    level + slope * all[all.len() - 1][0]
}

/// The best day since the last lay-off.
fn best_since<'a>(trend: &'a Trend<'_>) -> &'a SessionBest<'a> {
    let counts = |one: &&SessionBest<'_>| trend.lay_off.is_none_or(|off| one.day >= off.to);
    let since = trend.sessions.iter().filter(counts);
    since
        .max_by(|a, b| a.kg().total_cmp(&b.kg()))
        .expect("a day since then")
}

/// The maximum now: the end of the line, no more than the best day, nor than the last one near failure.
fn now_kg(trend: &Trend<'_>) -> f64 {
    let end = end_kg(trend).min(best_since(trend).kg());
    let last = &trend.sessions[trend.sessions.len() - 1];
    match last.set.reserve {
        Some(reserve) if reserve <= 1.0 => end.min(last.kg()),
        _ => end,
    }
}

/// Where the maximum now is from, if it is less than the end of the line.
fn from_is(told: &str, trend: &Trend<'_>) -> Result<(), String> {
    let reads = compiled(
        r"of (\S+), the best session, since the line ends at ([\d.]+) kg|of the last session, (\S+), which left ([\d.]+) in reserve; the line ends at ([\d.]+) kg",
    );
    let words = reads.captures(told).ok_or(format!("`{told}`"))?;
    let end = words.get(2).or(words.get(5)).ok_or("no end")?;
    says(end.as_str(), end_kg(trend), 1e-6, "end of the line")?;
    holds(now_kg(trend) < end_kg(trend), "less than that")?;
    if let Some(day) = words.get(1) {
        return holds(
            best_since(trend).day.to_string() == day.as_str(),
            "the best day",
        );
    }
    let last = &trend.sessions[trend.sessions.len() - 1];
    holds(
        words
            .get(3)
            .is_some_and(|day| day.as_str() == last.day.to_string()),
        "the last day",
    )?;
    says(
        &words[4],
        last.set.reserve.unwrap_or(f64::NAN),
        1e-9,
        "reserve",
    )
}

fn now_told(told: &Captures<'_>, trend: &Trend<'_>) -> Result<(), String> {
    says(&told[1], now_kg(trend), 1e-6, "now")?;
    told.get(2)
        .map_or(Ok(()), |from| from_is(from.as_str(), trend))?;
    let best = trend
        .sessions
        .iter()
        .map(SessionBest::kg)
        .fold(0.0, f64::max);
    says(&told[3], best, 1e-9, "best")?;
    let mut all = trend.sessions.iter().rev();
    let on = all
        .find(|one| one.kg() >= best - 1e-9)
        .ok_or("no best")?
        .day;
    let last = trend.sessions[trend.sessions.len() - 1].day;
    let weeks = f64::from(last.days_since(on)) / 7.0;
    says(
        told.get(4).map_or("0", |weeks| weeks.as_str()),
        weeks,
        1e-9,
        "ago",
    )
}

/// General equations of the last set that are valid for its repetitions, or those that are not, kg in order.
fn guesses(trend: &Trend<'_>, in_range: bool) -> Result<Vec<f64>, String> {
    let last = trend.sessions.last().ok_or("no session")?;
    let all = last.estimate.guesses.iter();
    let own = all.filter(|guess| guess.equation.movement.is_none() && guess.in_range == in_range);
    let mut kg: Vec<f64> = own.map(|guess| guess.one_rm.as_kg()).collect();
    kg.sort_by(f64::total_cmp);
    Ok(kg)
}

fn spread_told(told: &Captures<'_>, trend: &Trend<'_>) -> Result<(), String> {
    let kg = guesses(trend, true)?;
    holds(!kg.is_empty(), "an equation is valid")?;
    let [low, high] = [kg[0], kg[kg.len() - 1]];
    let middle = median(kg.into_iter());
    says(&told[1], middle, 1e-9, "median")?;
    says(&told[2], low, 1e-9, "least")?;
    says(&told[3], high, 1e-9, "most")?;
    says(&told[4], 100.0 * (high - low) / middle, 1e-9, "spread")
}

/// The share of the recent days of which something is so, %.
fn percent_of(trend: &Trend<'_>, is_so: impl Fn(&SessionBest<'_>) -> bool) -> f64 {
    let sessions = recent(trend);
    let count = sessions.iter().filter(|one| is_so(one)).count();
    100.0 * count as f64 / sessions.len() as f64
}

/// Repetitions to failure of the best sets of a third of the recent days.
fn typical_repetitions(third: &[SessionBest<'_>]) -> f64 {
    let to_failure =
        |one: &SessionBest<'_>| f64::from(one.set.repetitions) + one.set.reserve.unwrap_or(0.0);
    median(third.iter().map(to_failure))
}

const TRENDS: &[Claim<Trend<'static>>] = &[
    Claim {
        reads: r"([^:]+): (rising|flat|falling|unclear) over (\d+) weeks? \((.+?)\), (clear|likely|weak)(?: \((.+)\))?",
        holds: finding,
    },
    Claim {
        reads: r"([^:]+): (rising|flat|falling|unclear) for (\d+) weeks?, (clear|likely|weak) evidence",
        holds: |told, trend| {
            verdict_is(&told[2], &told[4], trend)?;
            weeks_are(&told[3], trend)
        },
    },
    Claim {
        reads: r"Estimated 1RM now ([\d.]+) kg(?: at the end of the line|, (of .+)), best single session ([\d.]+) kg \((?:this week|(\d+) weeks? ago)\)",
        holds: now_told,
    },
    Claim {
        reads: r"Estimated maximum of the best set of each day; ([\d.]+) kg now",
        holds: |told, trend| says(&told[1], now_kg(trend), 1e-6, "now"),
    },
    Claim {
        reads: r"Median of published 1RM equations; robust slope \(Theil-Sen\) now (.+)",
        holds: |told, trend| {
            let words = told[1].strip_suffix("; shaded: what its interval allows");
            let is_shaded = trend.recent.interval_kg_week.is_some();
            holds(words.is_some() == is_shaded, "whether it is shaded")?;
            slope_told(words.unwrap_or(&told[1]), trend)
        },
    },
    Claim {
        reads: r"Median of published 1RM equations; one session has no slope",
        holds: |_, trend| holds(recent(trend).len() == 1, "one session"),
    },
    Claim {
        reads: r"Before that, over (\d+) weeks?, it changed by (\S+) kg a week",
        holds: |told, trend| {
            let line = trend.before.as_ref().ok_or("no line before")?;
            let sessions = &trend.sessions[line.first..line.first + line.sessions];
            let days = sessions[sessions.len() - 1].day.days_since(sessions[0].day);
            says(&told[1], f64::from(days) / 7.0, 1e-9, "weeks")?;
            slope_is(&told[2], theil_sen(&points(sessions)))
        },
    },
    Claim {
        reads: r"Only the sessions since (\S+) count, after (\d+) days without one: strength is kept for some (\d+) weeks without training, so what was before is no measure of today",
        holds: |told, trend| {
            let off = trend.lay_off.ok_or("no lay-off")?;
            holds(off.to.to_string() == told[1], "since then")?;
            let days = off.to.days_since(off.from);
            says(&told[2], f64::from(days), 0.0, "days without")?;
            let within = |one: &SessionBest<'_>| one.day > off.from && one.day < off.to;
            holds(!trend.sessions.iter().any(within), "no day between")?;
            let weeks: f64 = told[3].parse().map_err(|_| "no weeks")?;
            holds(weeks * 7.0 == 28.0 && days > 28, "longer than that")
        },
    },
    Claim {
        reads: r"The last session's best set, (\S+): ([\d.]+) kg for (\d+) repetitions?(?:, ([\d.]+) in reserve \(RIR\))?, by every equation:",
        holds: |told, trend| {
            let last = trend.sessions.last().ok_or("no session")?;
            holds(last.day.to_string() == told[1], "the day")?;
            says(&told[2], last.set.load.as_kg(), 1e-9, "load")?;
            says(
                &told[3],
                f64::from(last.set.repetitions),
                0.0,
                "repetitions",
            )?;
            match (told.get(4), last.set.reserve) {
                (Some(printed), Some(reserve)) => says(printed.as_str(), reserve, 1e-9, "reserve"),
                (None, None) => Ok(()),
                _ => Err("whether reserve is noted".to_owned()),
            }
        },
    },
    Claim {
        reads: r"The median of those valid for so many repetitions is ([\d.]+) kg; they spread from ([\d.]+) kg to ([\d.]+) kg \(([\d.]+) %\)",
        holds: spread_told,
    },
    Claim {
        reads: r"The 1RM is ([\d.]+) kg by the only equation that is valid for so many repetitions",
        holds: |told, trend| {
            let kg = guesses(trend, true)?;
            holds(kg[kg.len() - 1] - kg[0] < 0.1, "only one")?;
            says(&told[1], kg[0], 1e-9, "1RM")
        },
    },
    Claim {
        reads: r"A single without reserve is the 1RM itself: ([\d.]+) kg",
        holds: |told, trend| {
            let set = &trend.sessions.last().ok_or("no session")?.set;
            let is_single = set.repetitions == 1 && set.reserve.unwrap_or(0.0) == 0.0;
            holds(is_single, "a single")?;
            says(&told[1], set.load.as_kg(), 1e-9, "load")
        },
    },
    Claim {
        reads: r"Outside their range, so not used: ([\d.]+) kg(?: to ([\d.]+) kg)?",
        holds: |told, trend| {
            let kg = guesses(trend, false)?;
            says(&told[1], kg[0], 1e-9, "least")?;
            let most = told.get(2).unwrap_or(told.get(1).ok_or("nothing")?);
            says(most.as_str(), kg[kg.len() - 1], 1e-9, "most")
        },
    },
    Claim {
        reads: r"limit: only (\d+) sessions in the recent stretch: one odd day can turn it",
        holds: |told, trend| says(&told[1], recent(trend).len() as f64, 0.0, "sessions"),
    },
    Claim {
        reads: r"limit: (\d+) sessions? (?:is|are) too few for a verdict \(5 at least\)",
        holds: |told, trend| {
            holds(recent(trend).len() < 5, "too few")?;
            says(&told[1], recent(trend).len() as f64, 0.0, "sessions")
        },
    },
    Claim {
        reads: r"limit: ([\d.]+) weeks? (?:is|are) short: a plateau and a bad fortnight look alike",
        holds: |told, trend| weeks_are(&told[1], trend),
    },
    Claim {
        reads: r"limit: no session for (.+): what happened there is unknown, and strength lost in a break is no plateau",
        holds: |told, trend| {
            let gaps = recent(trend)
                .windows(2)
                .filter(|pair| pair[1].day.days_since(pair[0].day) > 14);
            let gaps: Vec<String> = gaps
                .map(|pair| {
                    format!(
                        "{} days after {}",
                        pair[1].day.days_since(pair[0].day),
                        pair[0].day
                    )
                })
                .collect();
            let (named, more) = gaps.split_at(gaps.len().min(4));
            let behind = if more.is_empty() {
                String::new()
            } else {
                format!(" and {} more", more.len())
            };
            holds(told[1] == named.join(", ") + &behind, "every break")
        },
    },
    Claim {
        reads: r"limit: (\d+) % of the days have no set of (\d+) repetitions or fewer, those in reserve counted: the equations are weak there",
        holds: |told, trend| {
            let most: f64 = told[2].parse().map_err(|_| "no repetitions")?;
            let beyond = |one: &SessionBest<'_>| {
                f64::from(one.set.repetitions) + one.set.reserve.unwrap_or(0.0) > most
            };
            says(&told[1], percent_of(trend, beyond), 1e-9, "days")
        },
    },
    Claim {
        reads: r"limit: the equations differ by (\d+) % of the estimate: trust the trend, not the level",
        holds: |told, trend| {
            let apart = recent(trend).iter().map(|one| {
                let own = &one.estimate;
                100.0 * (own.highest - own.lowest).as_kg() / own.one_rm.as_kg()
            });
            says(&told[1], median(apart), 1e-9, "spread")
        },
    },
    Claim {
        reads: r"limit: sets went from about (\d+) to (\d+) repetitions, those in reserve counted: equations err differently by repetitions, so part of the trend may be that",
        holds: |told, trend| {
            let sessions = recent(trend);
            let third = sessions.len() / 3;
            says(
                &told[1],
                typical_repetitions(&sessions[..third]),
                1e-9,
                "early",
            )?;
            says(
                &told[2],
                typical_repetitions(&sessions[sessions.len() - third..]),
                1e-9,
                "late",
            )
        },
    },
    Claim {
        reads: r"limit: the best set of (\d+) % of the days is of several repetitions without a noted reserve and counts as done to failure: if it was not, the 1RM is higher",
        holds: |told, trend| {
            let is_so =
                |one: &SessionBest<'_>| one.set.reserve.is_none() && one.set.repetitions > 1;
            says(&told[1], percent_of(trend, is_so), 1e-9, "days")
        },
    },
    Claim {
        reads: r"limit: two days in three lie within ([\d.]+) kg of the line: a change smaller than that is noise",
        holds: |told, trend| {
            let all = points(recent(trend));
            let slope = theil_sen(&all);
            let level = median(all.iter().map(|[week, kg]| kg - slope * week));
            let mut off: Vec<f64> = all
                .iter()
                .map(|[week, kg]| (kg - level - slope * week).abs())
                .collect();
            off.sort_by(f64::total_cmp);
            let place = (off.len() - 1) as f64 * 2.0 / 3.0;
            let below = place.floor() as usize;
            let above = (below + 1).min(off.len() - 1);
            let value = off[below] + (place - below as f64) * (off[above] - off[below]);
            says(&told[1], value, 1e-6, "scatter")
        },
    },
    Claim {
        reads: r"limit: all general equations estimate the .+ too low|limit: the load must hold the body mass too: a change of body mass looks like a trend",
        holds: super::is_definition,
    },
    Claim {
        reads: r"limit: no session for (\d+) days after (\S+): how much of the strength before them comes back, and how fast",
        holds: |told, trend| {
            let off = trend.lay_off.ok_or("no lay-off")?;
            let is_session = |day: Day| trend.sessions.iter().any(|one| one.day == day);
            holds(
                is_session(off.from) && is_session(off.to),
                "days of sessions",
            )?;
            holds(off.from.to_string() == told[2], "after that day")?;
            says(
                &told[1],
                f64::from(off.to.days_since(off.from)),
                0.0,
                "days",
            )
        },
    },
];

fn day_after(days: i32) -> Day {
    let first = Day::from_date(2024, 1, 1).expect("a date");
    let mut all = (2024..=2026).flat_map(|year| {
        (1..=12)
            .flat_map(move |month| (1..=31).filter_map(move |day| Day::from_date(year, month, day)))
    });
    all.find(|day| day.days_since(first) == days)
        .expect("inside three years")
}

/// A log of random length, with sets of few or many repetitions, noted reserve or none, breaks and a bend.
fn random_log(seed: u64) -> Log {
    let mut rng = ChaCha8Rng::seed_from_u64(seed);
    let lift = ["bench-press", "squat", "pull-up", "deadlift"][rng.random_range(0..4)];
    let slopes: [f64; 2] =
        [0, 1].map(|_| [0.0, rng.random_range(-1.0..1.5)][rng.random_range(0..2)]);
    let noise: f64 = [0.05, 1.0, 3.0][rng.random_range(0..3)];
    let (notes, singles) = (rng.random_range(0..3), rng.random_range(0..4) == 0);
    let sessions = rng.random_range(4..45);
    let bend = rng.random_range(0..sessions);
    let (mut day, mut maximum) = (0, rng.random_range(60.0..160.0));
    let mut entries = Vec::new();
    for number in 0..sessions {
        let days = match rng.random_range(0..25) {
            0 => rng.random_range(15..50),
            _ => rng.random_range(2..6),
        };
        day += days;
        maximum += slopes[usize::from(number > bend)] * f64::from(days) / 7.0;
        let repetitions = if singles {
            1
        } else {
            rng.random_range(1..13_u32)
        };
        let reserve = match notes {
            0 => None,
            1 => Some(0.0),
            _ => Some(f64::from(rng.random_range(0..4_u32))),
        };
        let share = 1.0 / (1.0 + (f64::from(repetitions - 1) + reserve.unwrap_or(0.0)) / 30.0);
        let kg = share * (maximum + noise * rng.random_range(-1.0..1.0_f64));
        entries.push(LogEntry {
            line: number + 2,
            athlete: None,
            day: day_after(day),
            lift: lift.to_owned(),
            load: Mass::from_kg((4.0 * kg).round() / 4.0),
            repetitions,
            velocity: None,
            reserve,
        });
    }
    Log::from_rows(entries, Vec::new())
}

/// All that is said of a log.
fn texts(trend: &Trend<'_>) -> Vec<String> {
    let units = System::Metric;
    let words = trend_figure_words(trend, units);
    let mut all = trend_sentences(trend, units);
    all.extend([
        words.title,
        words.subtitle,
        words.footnote,
        words.description,
    ]);
    let last = trend.sessions.last();
    all.extend(last.map(|last| last_set(last, units)));
    all.extend(last.map(|last| spread_in_words(&last.estimate, units)));
    let limits = trend
        .limits
        .iter()
        .map(|limit| limit_in_words(limit, units));
    all.extend(limits.map(|words| format!("limit: {words}")));
    all
}

#[test]
fn law_every_sentence_of_random_trends_follows_from_their_days() {
    let mut told = 0;
    let mut faults = Vec::new();
    for seed in 0..200 {
        let log = random_log(seed);
        let Some(trend) = trend_of(&log) else {
            continue;
        };
        // A set that stands for far more than the days before has words of its own.
        if !trend.jumps.is_empty() {
            continue;
        }
        for text in texts(&trend) {
            if let Err(fault) = check(&text, TRENDS, &trend) {
                faults.push(format!("log {seed}: {fault}"));
            }
        }
        told += 1;
    }
    assert!(
        faults.is_empty(),
        "{} faults: {:#?}",
        faults.len(),
        &faults[..faults.len().min(25)]
    );
    assert!(told > 100, "{told} logs");
}

#[test]
fn fault_a_changed_number_of_a_trend_is_found() {
    let (mut changed, mut missed) = (0, Vec::new());
    for seed in 0..12 {
        let log = random_log(seed);
        let Some(trend) = trend_of(&log) else {
            continue;
        };
        for text in texts(&trend) {
            for wrong in with_changed_numbers(&text) {
                changed += 1;
                if check(&wrong, TRENDS, &trend).is_ok() {
                    missed.push(wrong);
                }
            }
        }
    }
    assert!(missed.is_empty(), "{missed:#?}");
    assert!(changed > 100, "{changed} numbers");
}
