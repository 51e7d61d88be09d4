//! The trend of a log: synthetic logs with a known answer, the shipped logs, a general statistics library.

use super::published;
use crate::evidence::paper;
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use torquill::error::Error;
use torquill::narrative::progress_words::trend_in_words;
use torquill::progress::day::Day;
use torquill::progress::lift_facts::LiftFacts;
use torquill::progress::log_file::{LogReading, read_log};
use torquill::progress::log_limits::LogLimit;
use torquill::progress::training_log::{Log, LogEntry};
use torquill::progress::trend::{self, Trend};
use torquill::progress::verdict::{Sureness, Verdict};
use torquill::units::{Mass, System};

fn trend(log: &Log) -> Result<Trend<'static>, Error> {
    trend::trend(log, LiftFacts::default(), &published().estimates)
}

fn words(trend: &Trend) -> String {
    trend_in_words(trend, System::Metric)
}

fn shipped(name: &str) -> Trend<'static> {
    let path = format!("{}/models/logs/{name}.csv", env!("CARGO_MANIFEST_DIR"));
    let text = std::fs::read_to_string(&path).expect("the log ships");
    trend(&read_log(name, &text, &LogReading::default()).expect("it reads"))
        .expect("it has a trend")
}

/// A log of singles without reserve, so that the 1RM is the load: one a week on `kg(week)`.
fn singles(weeks: usize, kg: impl Fn(f64) -> f64) -> Log {
    let start = Day::from_date(2024, 1, 1).expect("a date");
    let entries = (0..weeks)
        .map(|week| LogEntry {
            line: week + 2,
            athlete: None,
            day: day_after(start, 7 * week as i32),
            lift: "bench-press".to_owned(),
            load: Mass::from_kg(kg(week as f64)),
            repetitions: 1,
            velocity: None,
            reserve: Some(0.0),
        })
        .collect();
    Log::from_rows(entries, Vec::new())
}

fn day_after(start: Day, days: i32) -> Day {
    (1..=12)
        .flat_map(|month| (1..=31).map(move |date| (month, date)))
        .flat_map(|(month, date)| {
            (2024..=2026).filter_map(move |year| Day::from_date(year, month, date))
        })
        .find(|day| day.days_since(start) == days)
        .expect("inside three years")
}

/// Noise of about the given deviation: the sum of twelve even numbers.
fn noise(random: &mut ChaCha8Rng, deviation: f64) -> f64 {
    let sum: f64 = (0..12).map(|_| random.random_range(-0.5..0.5)).sum();
    sum * deviation
}

/// Sixteen weekly singles without ties.
#[rustfmt::skip]
const SINGLES_KG: [f64; 16] = [
    101.3, 100.2, 102.9, 101.8, 104.1, 103.0, 102.2, 105.7, 104.6, 106.4, 103.9, 107.1, 106.8, 105.2, 108.3, 107.7,
];

#[test]
fn published_robust_slope_of_a_statistics_library() {
    let found = trend(&singles(16, |week| SINGLES_KG[week as usize])).expect("a trend");
    let (low, high) = found.whole.interval_kg_week.expect("enough sessions");
    let scipy = paper("scipy_theil_sen");
    scipy.check("slope of 16 singles, kg a week", found.whole.slope_kg_week);
    scipy.check("lower end of its 95 % interval", low);
    scipy.check("upper end of its 95 % interval", high);
}

#[test]
fn law_a_straight_log_gives_its_slope() {
    let rising = trend(&singles(16, |week| 100.0 + 0.8 * week)).expect("a trend");
    assert!((rising.recent.slope_kg_week - 0.8).abs() < 1e-9);
    assert_eq!(
        (rising.verdict, rising.sureness),
        (Verdict::Rising, Sureness::Clear)
    );
    assert!(rising.before.is_none());
    assert!((rising.recent.weeks() - 15.0).abs() < 1e-12);
    assert!((rising.one_rm_now().as_kg() - 112.0).abs() < 1e-9);
    let falling = trend(&singles(16, |week| 100.0 - 0.8 * week)).expect("a trend");
    assert_eq!(
        (falling.verdict, falling.sureness),
        (Verdict::Falling, Sureness::Clear)
    );
    let flat = trend(&singles(16, |_| 100.0)).expect("a trend");
    assert_eq!(
        (flat.verdict, flat.sureness),
        (Verdict::Flat, Sureness::Clear)
    );
    assert_eq!(flat.recent.interval_kg_week, Some((0.0, 0.0)));
}

#[test]
fn law_a_plateau_is_found_with_its_length() {
    let kinked = trend(&singles(24, |week| {
        if week < 12.0 {
            100.0 + 1.5 * week
        } else {
            118.0
        }
    }))
    .expect("a trend");
    assert_eq!(kinked.verdict, Verdict::Flat);
    assert!(
        (kinked.recent.weeks() - 11.0).abs() <= 1.0,
        "{}",
        kinked.recent.weeks()
    );
    assert!((kinked.before.expect("it rose before").slope_kg_week - 1.5).abs() < 0.01);
}

#[test]
fn law_wild_days_do_not_sway_the_slope() {
    let wild = |week: f64| {
        if week as u32 % 5 == 2 {
            70.0
        } else {
            100.0 + 0.8 * week
        }
    };
    let swayed = trend(&singles(20, wild)).expect("a trend");
    assert!(
        (swayed.whole.slope_kg_week - 0.8).abs() < 0.1,
        "{}",
        swayed.whole.slope_kg_week
    );
}

#[test]
fn law_the_interval_holds_the_true_slope_as_often_as_it_says() {
    let mut random = ChaCha8Rng::seed_from_u64(6);
    let (mut held, mut right, mut broken) = (0, 0, 0);
    let logs = 200;
    for _ in 0..logs {
        let noises: Vec<f64> = (0..18).map(|_| noise(&mut random, 1.5)).collect();
        let found = trend(&singles(18, |week| {
            120.0 + 0.6 * week + noises[week as usize]
        }))
        .expect("a trend");
        let (low, high) = found.whole.interval_kg_week.expect("enough sessions");
        held += usize::from(low <= 0.6 && 0.6 <= high);
        broken += usize::from(found.before.is_some());
        right += usize::from(found.verdict == Verdict::Rising);
    }
    // 95 % of 200 are 190; three standard deviations of such a count are 9.
    assert!(
        held >= 181,
        "the interval held the slope in {held} of {logs} logs"
    );
    assert!(
        broken <= logs / 5,
        "a change was seen in {broken} of {logs} straight logs"
    );
    assert!(right >= 160, "called rising in {right} of {logs} logs");
}

#[test]
fn law_noisy_plateaus_are_seldom_called_a_trend() {
    let mut random = ChaCha8Rng::seed_from_u64(7);
    let (mut flat, mut moving) = (0, 0);
    for _ in 0..200 {
        let noises: Vec<f64> = (0..18).map(|_| noise(&mut random, 1.5)).collect();
        let found = trend(&singles(18, |week| 140.0 + noises[week as usize])).expect("a trend");
        flat += usize::from(found.verdict == Verdict::Flat);
        moving += usize::from(
            matches!(found.verdict, Verdict::Rising | Verdict::Falling)
                && found.sureness > Sureness::Weak,
        );
    }
    assert!(flat >= 120, "called flat in {flat} of 200");
    assert!(moving <= 30, "called a trend in {moving} of 200");
}

#[test]
fn law_five_sessions_of_steady_gain_rise_with_their_interval() {
    let gains = [100.0, 101.2, 102.1, 103.4, 104.0];
    let five = trend(&singles(5, |week| gains[week as usize])).expect("a trend");
    assert_eq!(five.verdict, Verdict::Rising, "{}", words(&five));
    assert_eq!(five.sureness, Sureness::Likely);
    let (low, high) = five
        .recent
        .interval_kg_week
        .expect("five in order are enough");
    assert!(low > 0.0 && low <= five.recent.slope_kg_week && five.recent.slope_kg_week <= high);
    assert!(
        words(&five).contains("95 % interval +0."),
        "{}",
        words(&five)
    );
    // One of the five out of order, and it may be chance.
    let bumped = [100.0, 101.2, 99.9, 103.4, 104.0];
    let unsure = trend(&singles(5, |week| bumped[week as usize])).expect("a trend");
    assert!(unsure.sureness == Sureness::Weak, "{}", words(&unsure));
}

#[test]
fn law_a_line_that_moves_beyond_its_interval_is_never_flat() {
    let mut random = ChaCha8Rng::seed_from_u64(11);
    for round in 0..60 {
        let slope = 0.02 * f64::from(round - 30);
        let noises: Vec<f64> = (0..20).map(|_| noise(&mut random, 0.6)).collect();
        let found = trend(&singles(20, |week| {
            200.0 + slope * week + noises[week as usize]
        }))
        .expect("a trend");
        let (low, high) = found.recent.interval_kg_week.expect("enough sessions");
        let moves = low > 0.0 || high < 0.0;
        assert!(
            !(moves && found.verdict == Verdict::Flat),
            "{}",
            words(&found)
        );
        assert!(moves || found.verdict != Verdict::Falling || found.sureness == Sureness::Weak);
    }
}

#[test]
fn fault_few_sessions_give_no_verdict() {
    let four = trend(&singles(4, |week| 100.0 + week)).expect("a line");
    assert_eq!(four.verdict, Verdict::Unclear);
    assert!(four.limits.contains(&LogLimit::FewSessions(4)));
    assert_eq!(trend(&singles(1, |_| 100.0)).unwrap_err().exit_status(), 1);
    assert_eq!(trend(&Log::default()).unwrap_err().exit_status(), 2);
}

#[test]
fn regress_a_change_of_repetitions_is_named() {
    let mut log = singles(18, |week| 100.0 - week);
    for (index, entry) in log.entries.iter_mut().enumerate() {
        entry.repetitions = 3 + index as u32 / 2;
    }
    let found = trend(&log).expect("a trend");
    assert!(
        found
            .limits
            .iter()
            .any(|limit| matches!(limit, LogLimit::RepetitionsDrift(..))),
        "{:?}",
        found.limits
    );
}

#[test]
fn law_a_set_within_the_equations_beats_one_beyond() {
    let mut log = singles(8, |_| 100.0);
    let mut long = log.entries[3].clone();
    long.repetitions = 14;
    long.load = Mass::from_kg(95.0);
    log.entries.insert(4, long);
    let found = trend(&log).expect("a trend");
    assert_eq!(found.sessions.len(), 8);
    assert!(
        found
            .sessions
            .iter()
            .all(|session| session.set.repetitions == 1)
    );
}

#[test]
fn regress_the_rising_log_rises() {
    let rising = shipped("rising");
    assert_eq!(
        (rising.verdict, rising.sureness),
        (Verdict::Rising, Sureness::Clear),
        "{}",
        words(&rising)
    );
    assert!(rising.recent.weeks() > 8.0, "{}", words(&rising));
    assert!(
        (0.6..1.2).contains(&rising.recent.slope_kg_week),
        "{}",
        words(&rising)
    );
}

#[test]
fn regress_the_stalled_log_is_flat_since_week_nine() {
    let stalled = shipped("stalled");
    assert_eq!(stalled.verdict, Verdict::Flat, "{}", words(&stalled));
    assert!(
        (8.0..=13.0).contains(&stalled.recent.weeks()),
        "{}",
        words(&stalled)
    );
    assert!(
        stalled
            .before
            .as_ref()
            .expect("it rose before")
            .slope_kg_week
            > 0.5
    );
    assert!(
        (stalled.one_rm_now().as_kg() - 140.0).abs() < 3.0,
        "{}",
        stalled.one_rm_now().as_kg()
    );
    assert!(
        stalled
            .sessions
            .iter()
            .any(|session| session.by_velocity.is_some())
    );
}

#[test]
fn regress_the_gappy_log_admits_what_it_cannot_tell() {
    let gappy = shipped("gappy");
    assert!(gappy.sureness < Sureness::Clear, "{}", words(&gappy));
    assert!(
        !matches!(gappy.verdict, Verdict::Rising | Verdict::Falling),
        "{}",
        words(&gappy)
    );
    let named = |is: fn(&LogLimit) -> bool| gappy.limits.iter().any(is);
    assert!(
        named(|limit| matches!(limit, LogLimit::Gaps(gaps) if gaps.len() == 2)),
        "{:?}",
        gappy.limits
    );
    assert!(
        named(|limit| matches!(limit, LogLimit::NoReserve(_))),
        "{:?}",
        gappy.limits
    );
}
