//! A ranking of setups as tables and sentences: the search, how to read and load them, what else stands out.
//!
//! In: a [`PickAnswer`], units. Out: text for the report of a pick.

use super::hanging::hung_pieces;
use super::loads::loading_in_words;
use super::prose::{capital, percent};
use super::quantities::{QuantityWords, rounded, with_minus};
use super::session_words::untested_in_words;
use super::setups::goal_in_words;
use crate::movement::Carrier;
use crate::setups::{Goal, Wish};
use crate::study::{PickAnswer, Picked};
use crate::units::{Mass, System};

/// Below this share of the wished effort the gym's loads are said to end too early.
const NEARLY: f64 = 0.85;

/// Loads at the end that differ by less than this are not told, kg.
const ALIKE_KG: f64 = 0.05;

/// The head of the recipes.
pub const RECIPES_HEAD: &str = "How to load them";
/// The head of what was not searched.
pub const LEFT_OUT_HEAD: &str = "Left out";
/// The head of the cautions.
pub const CAUTIONS_HEAD: &str = "Cautions";

/// Who asks for what, how much was searched, and plain weight beside it.
#[must_use]
pub fn pick_head(pick: &PickAnswer, units: System) -> Vec<String> {
    let who = format!(
        "{}, {}, {}",
        pick.study.movement_title, pick.study.lifter_title, pick.gym_title
    );
    let untested = pick.untested.as_ref();
    let untested = untested.map(|_| format!("{}.", capital(&maximum_in_words(pick, units))));
    let mut lines = vec![who];
    lines.extend(untested);
    lines.extend([
        wish_in_words(&pick.wish),
        searched(pick),
        plain_in_words(pick, units),
    ]);
    lines
}

/// The 1RM that shares are of; of one that nobody tested the interval too.
#[must_use]
pub(super) fn maximum_in_words(pick: &PickAnswer, units: System) -> String {
    let one_rm = pick.safety.one_rm;
    match &pick.untested {
        Some(range) => format!("1RM {}", untested_in_words(range, "", units)),
        None if one_rm.as_kg() > 0.0 => format!("1RM {}, simulated", units.mass(one_rm)),
        None => "no 1RM with plain weight".to_owned(),
    }
}

fn wish_in_words(wish: &Wish) -> String {
    let hung = counted(wish.most_hung.into(), "band or chain", "bands and chains");
    format!(
        "Goal: {}; hardest effort {}{}; at most {hung} a side, {} with the plates.",
        goal_in_words(wish),
        exact_percent(wish.effort),
        shares(wish.share),
        counted(wish.most_pieces.into(), "piece", "pieces")
    )
}

fn shares([least, most]: [Option<f64>; 2]) -> String {
    let told = match (least, most) {
        (None, None) => return String::new(),
        (Some(least), None) => format!("at least {}", exact_percent(least)),
        (None, Some(most)) => format!("at most {}", exact_percent(most)),
        (Some(least), Some(most)) => {
            format!("{} to {}", exact_percent(least), exact_percent(most))
        }
    };
    format!("; {told} from bands and chains")
}

fn exact_percent(share: f64) -> String {
    format!("{} %", rounded(100.0 * share, 1))
}

fn searched(pick: &PickAnswer) -> String {
    let counts = &pick.counts;
    format!(
        "Searched {} of bands and chains with {}: {}; {}.",
        counted(counts.combinations, "combination", "combinations"),
        counted(counts.loads, "load", "loads"),
        counted(counts.buildable(), "setup", "setups"),
        counted(counts.fitting, "combination fits", "combinations fit")
    )
}

fn plain_in_words(pick: &PickAnswer, units: System) -> String {
    let Some(plain) = &pick.plain else {
        return "Plain weight for comparison: even the lightest load is too heavy.".to_owned();
    };
    format!(
        "Plain weight for comparison: {} ({}), {}.",
        load_or_help(plain.loaded.loading.total, units),
        loading_in_words(&plain.loaded.loading),
        hardest(pick, plain, units)
    )
}

/// A load, or what takes weight off the body: "46.5 kg", "25 kg of help".
pub(super) fn load_or_help(total: Mass, units: System) -> String {
    if total.as_kg() < 0.0 {
        return format!("{} of help", units.mass(Mass::ZERO - total));
    }
    units.mass(total)
}

fn hardest(pick: &PickAnswer, picked: &Picked, units: System) -> String {
    picked.study.sticking.map_or_else(
        || "which asks for nothing".to_owned(),
        |sticking| {
            format!(
                "hardest {} ({}), hardest part, held still, {}",
                pick.study.told(units).at_place(sticking.point_range),
                percent(pick.hardest(picked)),
                pick.study.told(units).region(&sticking)
            )
        },
    )
}

/// What the figures of the table are of, and whether the gym has the loads for them.
#[must_use]
pub fn how_to_read(pick: &PickAnswer, units: System) -> Vec<String> {
    let whose = match pick.study.range.carrier {
        Carrier::Body => format!(
            "Loads count the body, {}, with what hangs from it",
            units.mass(pick.study.body_mass)
        ),
        Carrier::Dumbbell => "Loads are of one hand".to_owned(),
        Carrier::Lever { .. } => {
            "Loads are told as the weight on the stack that feels the same".to_owned()
        }
        Carrier::Bar | Carrier::Sled { .. } => {
            "Loads are of both sides together, bar, plates, bands and chains".to_owned()
        }
    };
    let carried = pick.effort_unit > 1.0;
    let mut lines = vec![format!(
        "{whose}, as loaded: rounded down to what there is. Flattening compares setups that are equally hard, at exactly {} at the hardest place.",
        exact_percent(pick.wish.effort)
    )];
    lines.extend(carried.then(|| carried_in_words(pick)));
    lines.extend(short_of_load(pick, (&pick.ranked[0], "number 1"), units));
    lines.extend(off_share(pick, &pick.ranked[0]));
    lines
}

/// That effort is counted in what the 1RM asks for, and why.
fn carried_in_words(pick: &PickAnswer) -> String {
    format!(
        "Motion carries the 1RM over the hardest place, where it could not be held: it asks for {} of what the lifter holds there. \
         Efforts are shares of that.",
        percent(pick.effort_unit)
    )
}

/// A sentence where the gym's loads leave a setup well below the wished effort.
#[must_use]
pub(super) fn short_of_load(
    pick: &PickAnswer,
    (picked, called): (&Picked, &str),
    units: System,
) -> Option<String> {
    let hardest = pick.hardest(picked);
    if hardest > NEARLY * pick.wish.effort || matches!(pick.wish.goal, Goal::Profile(_)) {
        return None;
    }
    Some(format!(
        "This gym cannot load {called} exactly: {} would be wanted, {} is the nearest below, so the effort stays at {}.",
        load_or_help(picked.loaded.exact_mass, units),
        load_or_help(picked.loaded.loading.total, units),
        percent(hardest)
    ))
}

/// Shares that are nearer are told as met (assumed: one step of bands or of plates is about as much).
const NEAR_SHARE: f64 = 0.05;

/// A sentence where bands and chains make another share than is wished; plain weight, which a novice is given, makes none.
#[must_use]
pub(super) fn off_share(pick: &PickAnswer, picked: &Picked) -> Option<String> {
    let Goal::Share { share, .. } = pick.wish.goal else {
        return None;
    };
    let off = match picked.loaded.hung {
        0 => share,
        _ => (picked.loaded.share_at_goal - share).abs(),
    };
    (off.is_finite() && off > NEAR_SHARE).then(|| {
        format!(
            "Not the wished share: bands and chains miss it by {} of 100 points of the load.",
            rounded(100.0 * off, 0)
        )
    })
}

/// The heads of the ranking's table.
pub const PICKED_HEADS: [&str; 9] = [
    "#",
    "flatter\nby",
    "load at\nstart",
    "middle",
    "end",
    "bands,\nchains",
    "hardest\neffort",
    "hardest\npart",
    "pieces\na side",
];

/// A ranked setup as a row of that table.
#[must_use]
pub fn picked_cells(pick: &PickAnswer, rank: usize, picked: &Picked, units: System) -> Vec<String> {
    let loaded = &picked.loaded;
    let [start, middle, end] = loaded.loads.map(|load| units.mass(load));
    let sticking = &picked.study.sticking;
    vec![
        rank.to_string(),
        format!("{} %", with_minus(&rounded(loaded.flattening_percent, 1))),
        start,
        middle,
        end,
        percent(loaded.share),
        sticking.map_or_else(|| "-".to_owned(), |_| exact_percent(pick.hardest(picked))),
        sticking.map_or_else(|| "none".to_owned(), |s| pick.study.told(units).region(&s)),
        loaded.pieces.to_string(),
    ]
}

/// What is put together for a ranked setup, a piece a line; the first line is the plain load.
#[must_use]
pub fn recipe(pick: &PickAnswer, picked: &Picked, units: System) -> Vec<String> {
    let loaded = &picked.loaded;
    let mut lines = vec![format!(
        "{}: {}",
        load_or_help(loaded.loading.total, units),
        loading_in_words(&loaded.loading)
    )];
    lines.extend(hung_pieces(&loaded.setup.items, &pick.anchors, units));
    let [low, high] = loaded.end_range;
    if (high - low).as_kg().abs() > ALIKE_KG {
        lines.push(format!(
            "load at the end {} to {} if the bands differ from their label",
            units.mass(low),
            units.mass(high)
        ));
    }
    lines
}

/// The head of the table of setups that no other beats in everything.
#[must_use]
pub fn front_head(pick: &PickAnswer) -> String {
    format!(
        "Non-dominated setups: no other is at once as even, as heavy and as simple ({} of {})",
        pick.front.len(),
        pick.front_size
    )
}

/// One of these setups in words.
#[must_use]
pub fn front_line(pick: &PickAnswer, picked: &Picked, units: System) -> String {
    let loaded = &picked.loaded;
    let mut words = format!(
        "{} a side, {} % flatter, {} on average: {}",
        counted(loaded.pieces.into(), "piece", "pieces"),
        with_minus(&rounded(loaded.flattening_percent, 0)),
        units.mass(loaded.mean_load),
        loading_in_words(&loaded.loading)
    );
    for piece in hung_pieces(&loaded.setup.items, &pick.anchors, units) {
        words += &format!("; {piece}");
    }
    words
}

/// A number with the word for one or for many.
fn counted(number: u64, one: &str, many: &str) -> String {
    let word = if number == 1 { one } else { many };
    format!("{} {word}", grouped(number))
}

/// 1234567 as "1 234 567".
fn grouped(number: u64) -> String {
    let digits = number.to_string();
    let mut words = String::new();
    for (index, digit) in digits.chars().enumerate() {
        if index > 0 && (digits.len() - index).is_multiple_of(3) {
            words.push(' ');
        }
        words.push(digit);
    }
    words
}
