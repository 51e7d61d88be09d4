//! The card of a setup that is read at the rack.
//!
//! In: a [`PickAnswer`], its [`PickCard`], units. Out: lines with a label each; sentences.

use super::arms_words::arms_words;
use super::failure_words::failure_in_words;
use super::hanging::hung_pieces;
use super::loads::{exact_mass, loading_in_words};
use super::made_words::speed_of;
use super::pick_words::{maximum_in_words, off_share, short_of_load};
use super::prose::{capital, percent};
use super::quantities::{QuantityWords, rounded};
use super::session_remarks::low_plates;
use super::setups::goal_in_words;
use super::spotter_words::spotters;
use crate::capacity::Pace;
use crate::movement::Carrier;
use crate::resistance::{ChainHang, Hang, Item};
use crate::session::straight::RESERVE;
use crate::setups::{ArmsStand, LoadedOn, SetupFamily};
use crate::study::{PickAnswer, PickCard, Picked, load_points};
use crate::units::{Length, Mass, System};

/// Loads that differ by less are one, kg.
const SAME_KG: f64 = 0.05;

/// Shares that differ by less are told alike.
const ALIKE_SHARE: f64 = 0.005;

/// A line of the card: what it is about, and what it says.
pub type CardLine = (&'static str, String);

/// Who lifts what where, and what is wished: two lines.
#[must_use]
pub fn card_head(pick: &PickAnswer, units: System) -> [String; 2] {
    [
        format!(
            "{}, {}, {}",
            pick.study.movement_title, pick.study.lifter_title, pick.gym_title
        ),
        format!(
            "{}; goal: {}, {}",
            maximum_in_words(pick, units),
            goal_in_words(&pick.wish),
            wished_effort(pick)
        ),
    ]
}

/// "lowered at 1.00 m/s, not lifted", where a speed was asked for: what can be held is what is held at that speed.
fn moved_in_words(pace: Pace) -> Option<String> {
    let speed = speed_of(pace)?;
    Some(match pace.lowers() {
        true => format!("lowered at {speed}, not lifted"),
        false => format!("lifted at {speed} all the way, not held still"),
    })
}

/// How hard the hardest place shall be, and of what.
#[must_use]
pub(super) fn wished_effort(pick: &PickAnswer) -> String {
    let of = if pick.effort_unit > 1.0 {
        " of what the 1RM asks for"
    } else {
        ""
    };
    let told = format!(
        "{}{of} at the hardest place{}",
        percent(pick.wish.effort),
        moved_in_words(pick.study.pace).map_or_else(String::new, |moved| format!(", {moved}"))
    );
    pick.raised_from.map_or_else(
        || told.clone(),
        |wished| {
            let wished = percent(wished);
            format!("{told}, since the body alone is more than {wished} and this gym has no help")
        },
    )
}

/// What a kind of setup is called.
#[must_use]
pub fn family_name(pick: &PickAnswer, picked: &Picked) -> &'static str {
    match picked.loaded.family {
        SetupFamily::Plain if picked.loaded.loading.on == LoadedOn::Counterweight => "assisted",
        SetupFamily::Plain
            if matches!(
                pick.study.range.carrier,
                Carrier::Lever { .. } | Carrier::Sled { .. }
            ) =>
        {
            "machine"
        }
        SetupFamily::Plain => "plain weight",
        SetupFamily::BandsBelow => "bands from below",
        SetupFamily::BandsAbove => "reverse bands",
        SetupFamily::Chains => "chains",
        SetupFamily::Mixed => "mixed",
    }
}

/// The card, a line for each thing to set up or to check.
#[must_use]
pub fn card_lines(
    pick: &PickAnswer,
    picked: &Picked,
    card: &PickCard,
    units: System,
) -> Vec<CardLine> {
    let loaded = &picked.loaded;
    let mut lines = vec![
        ("setup", capital(family_name(pick, picked))),
        ("load", loading_in_words(&loaded.loading)),
        ("on it", on_the_bar(pick, picked, units)),
    ];
    lines.extend(moved_in_words(pick.study.pace).map(|moved| ("speed", moved)));
    let pieces = hung_pieces(&loaded.setup.items, &pick.anchors, units);
    lines.extend(pieces.into_iter().map(|piece| ("hang", piece)));
    lines.extend(card.full_plates.map(|full| ("", low_plates(full, units))));
    lines.extend(short_of_load(pick, (picked, "this setup"), units).map(|words| ("", words)));
    lines.extend(off_share(pick, picked).map(|words| ("", words)));
    lines.push(("felt", felt(pick, picked, units)));
    lines.extend(above_one_rm(pick, picked, units).map(|words| ("", words)));
    lines.extend(tensions(card, units).map(|words| ("check", words)));
    lines.extend(slack(pick, picked).map(|words| ("", words)));
    lines.extend(
        pick.safety
            .arms
            .map(|height| ("arms", arms(pick, height, units))),
    );
    if let Some(spotting) = &card.spotting {
        lines.push(("spotters", spotters(spotting, units)));
    }
    if let Some(failure) = &loaded.failure {
        let share = pick.safety.share_of(failure.after_all);
        lines.push(("bands", failure_in_words(failure, share, None, units)));
    }
    lines.push(("first rep", first_repetition(card)));
    lines.push(("reps", repetitions(card)));
    lines.push(("again", again(picked, units)));
    lines
}

/// A load as a share of the 1RM, as exactly as the load itself is told; nothing where there is no 1RM.
fn of_one_rm(pick: &PickAnswer, felt: Mass) -> Option<String> {
    let told = Mass::from_kg((10.0 * felt.as_kg()).round() / 10.0);
    (pick.safety.one_rm.as_kg() > 0.0).then(|| percent(pick.safety.share_of(told)))
}

/// ", 80 % of 1RM"; empty where there is no 1RM.
pub(super) fn and_of_one_rm(pick: &PickAnswer, felt: Mass) -> String {
    of_one_rm(pick, felt).map_or_else(String::new, |share| format!(", {share} of 1RM"))
}

pub(super) fn on_the_bar(pick: &PickAnswer, picked: &Picked, units: System) -> String {
    let total = picked.loaded.loading.total;
    let what = match pick.study.range.carrier {
        Carrier::Bar => "on the bar",
        Carrier::Dumbbell => "in each hand",
        Carrier::Sled { .. } => "sled and plates",
        Carrier::Lever { .. } => "on the stack",
        Carrier::Body => "beside the body",
    };
    let share = and_of_one_rm(pick, total + pick.safety.body);
    if total.as_kg() < 0.0 {
        let help = units.mass(Mass::ZERO - total);
        return format!("{help} of help on the stack{share}");
    }
    if picked.loaded.loading.on == LoadedOn::Body {
        return format!("nothing beside the body{share}");
    }
    format!("{} {what}{share}", units.mass(total))
}

/// What is felt at the bottom, in the middle and at the top, each with its share of the 1RM.
fn felt(pick: &PickAnswer, picked: &Picked, units: System) -> String {
    let loads = picked.loaded.loads;
    if loads
        .iter()
        .all(|load| (load.as_kg() - loads[0].as_kg()).abs() < SAME_KG)
    {
        let share = and_of_one_rm(pick, loads[0]);
        return format!("{} all the way{share}", units.mass(loads[0]));
    }
    let words: Vec<String> = ["start", "middle", "end"]
        .iter()
        .zip(loads)
        .map(|(place, load)| {
            let share =
                of_one_rm(pick, load).map_or_else(String::new, |share| format!(" ({share})"));
            format!("{place} {}{share}", units.mass(load))
        })
        .collect();
    words.join(", ")
}

/// Where bands or chains make more of the load than the 1RM, and what is done when that gets too much.
fn above_one_rm(pick: &PickAnswer, picked: &Picked, units: System) -> Option<String> {
    let loads = picked.loaded.loads;
    let shares = loads.map(|load| pick.safety.share_of(load));
    let most = shares.into_iter().fold(0.0, f64::max);
    if picked.loaded.hung == 0 || most <= 1.0 + ALIKE_SHARE {
        return None;
    }
    let arms = pick
        .safety
        .arms
        .filter(|_| !pick.handling.comes_down_on_body);
    let then = if let Some(height) = arms {
        under_the_end(pick, (picked, height), units)
    } else if pick.handling.is_put_down() && !pick.handling.comes_down_on_body {
        "put it down when it gets too much".to_owned()
    } else {
        "spotters stand ready for that".to_owned()
    };
    Some(format!("more than the 1RM is felt near the end: {then}"))
}

/// How far below the end of the range the safety arms stand, and what is felt on the way down to them.
fn under_the_end(pick: &PickAnswer, (picked, arms): (&Picked, Length), units: System) -> String {
    let end = pick.study.range.poses.last();
    let above = end.map_or(Length::ZERO, |end| Length::from_m(end.load.z_m) - arms);
    let [start, _, _] = picked.loaded.loads;
    format!(
        "the safety arms stand {} lower and hold nothing there. Whoever stalls goes back down to them, to {} felt at the \
         start",
        units.tape(above),
        units.mass(start)
    )
}

/// Where the safety arms stand, and how far the load is from them at its lowest.
fn arms(pick: &PickAnswer, height: Length, units: System) -> String {
    let points = load_points(&pick.study.range);
    let stand = ArmsStand::under(&points, height, &pick.handling);
    arms_words(&stand, units)
}

/// What a hand scale reads on one band of each kind at two heights of the bar.
fn tensions(card: &PickCard, units: System) -> Option<String> {
    let first = card.tensions.first()?;
    let mut words = Vec::new();
    let [low, high] = first.at.map(|(height, _)| units.tape(height));
    for check in &card.tensions {
        let way = if check.draws_out {
            "drawn out"
        } else {
            "let back"
        };
        let [low, high] = check.at.map(|(_, pull)| units.mass(pull.as_mass()));
        words.push(format!("one {} {way}: {low}, {high}", check.band));
    }
    Some(format!(
        "hand scale, bar at {low} and {high}: {}",
        words.join("; ")
    ))
}

/// Bands that are slack over a part of the range: a fact of the setup.
fn slack(pick: &PickAnswer, picked: &Picked) -> Option<String> {
    let start = pick.study.range.poses.first()?.load;
    let is_slack = picked.loaded.setup.items.iter().any(|item| match item {
        Item::Band(hung) => hung.stretch(&start, Some(start.x_m)) <= 1.0,
        _ => false,
    });
    is_slack.then(|| "a band is slack at the start and taut further up".to_owned())
}

fn first_repetition(card: &PickCard) -> String {
    card.first_velocity.map_or_else(
        || "not lifted in the simulation".to_owned(),
        |velocity| {
            format!(
                "{} m/s when moved with full intent",
                rounded(velocity.as_m_s(), 2)
            )
        },
    )
}

/// Repetitions of a set, and the fewest that are possible by chart or simulation.
fn done_of(card: &PickCard) -> Option<(u32, u32)> {
    let least = [card.by_chart, card.by_model].into_iter().flatten().min()?;
    if card.by_chart.is_none() && least > card.chart_ends_at {
        return None;
    }
    Some((least.saturating_sub(RESERVE).max(1), least))
}

/// Times the chart's repetitions from which the simulation is not believed (assumed: it knows few lifts' fatigue).
const FAR_APART: u32 = 3;

/// Repetitions of a set, as a number: "5".
#[must_use]
pub(crate) fn repetitions_of_a_set(card: &PickCard) -> String {
    if card.first_velocity.is_none() {
        return "0".to_owned();
    }
    let done = done_of(card).map_or(card.chart_ends_at, |(done, _)| done);
    done.to_string()
}

fn repetitions(card: &PickCard) -> String {
    if card.first_velocity.is_none() {
        return "none: take less --effort".to_owned();
    }
    let told = |many: Option<u32>, by: &str| many.map(|many| format!("{many} {by}"));
    let possible: Vec<String> = [
        told(card.by_chart, "by the chart"),
        told(card.by_model, "simulated"),
    ]
    .into_iter()
    .flatten()
    .collect();
    let Some((done, least)) = done_of(card) else {
        return format!(
            "more than the {} that the chart ends at: too light to count on; do {} and keep going while 2 are left, or take more weight",
            card.chart_ends_at, card.chart_ends_at
        );
    };
    if let (Some(chart), Some(model)) = (card.by_chart, card.by_model)
        && model >= FAR_APART * chart
    {
        return format!(
            "{chart} by the chart; the simulation tires far later, so go by the chart: do {done}, {} in reserve, more if they feel easy",
            least.saturating_sub(done)
        );
    }
    format!(
        "possible: {}; do {done}, {} in reserve",
        possible.join(", "),
        least.saturating_sub(done)
    )
}

/// The options by which the other commands take this setup.
fn again(picked: &Picked, units: System) -> String {
    let load = picked.loaded.loading.total;
    let mut words: Vec<String> = Vec::new();
    if load.as_kg() > 0.0 {
        words.push(format!("--load \"{}\"", exact_mass(units, load, 3)));
    }
    if load.as_kg() < 0.0 {
        let help = exact_mass(units, Mass::ZERO - load, 3);
        words.push(format!("--item \"counterweight {help}\""));
    }
    for item in &picked.loaded.setup.items {
        match item {
            Item::Band(hung) => {
                let offset = hung.anchor.offset().as_cm();
                let aside = if offset == 0.0 {
                    String::new()
                } else {
                    format!(",{offset} cm")
                };
                let how = match hung.hang {
                    Hang::Doubled => ",doubled",
                    Hang::Choked => ",choked",
                    Hang::Auto | Hang::Single => ",single",
                };
                words.push(format!(
                    "--band \"{}:{}@{} cm{aside}{how}\"",
                    hung.band.name(),
                    hung.count,
                    rounded(hung.anchor.height().as_cm(), 2)
                ));
            }
            Item::Chain(hung) => {
                let mut text = format!("{}:{}", hung.chain.name(), hung.count);
                if hung.hang == ChainHang::DoubleLooped {
                    text += ",doubled";
                }
                let leader = hung.chain.leader().length;
                if leader.as_m() > 0.0 {
                    text += &format!(",leader {} cm", rounded(leader.as_cm(), 2));
                }
                words.push(format!("--chain \"{text}\""));
            }
            _ => {}
        }
    }
    if words.is_empty() {
        return "the body alone is what every command takes".to_owned();
    }
    words.join(" ")
}
