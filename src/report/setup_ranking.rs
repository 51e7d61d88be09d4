//! A ranking of setups as table, CSV and JSON.
//!
//! In: a [`Pick`]. Out: text: what to put on the bar and hang on it, loads in both units, what changes
//! where, why the first wins, cautions.

use super::csv::rows_to_csv;
use super::json::pretty;
use super::table::table;
use crate::anatomy::Training;
use crate::error::Result;
use crate::movement::Carrier;
use crate::resistance::Item;
use crate::setups::{Goal, Uses, Wish, cautions};
use crate::study::{Pick, Picked, load_points};
use crate::units::{Mass, System, rounded};
use serde::Serialize;
use std::collections::BTreeSet;

/// One setup as plain figures, in kilograms and pounds.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct SetupRow {
    /// Place in the ranking; 0 for plain weight.
    pub rank: usize,
    /// Bar and plates.
    pub bar_and_plates: String,
    /// Bands and chains.
    pub bands_and_chains: String,
    /// Mass of the plain load, kg.
    pub plain_mass_kg: f64,
    /// The same, lb.
    pub plain_mass_lb: f64,
    /// Load at the start, kg.
    pub load_start_kg: f64,
    /// Load in the middle, kg.
    pub load_middle_kg: f64,
    /// Load at the end, kg.
    pub load_end_kg: f64,
    /// Load at the start, lb.
    pub load_start_lb: f64,
    /// Load in the middle, lb.
    pub load_middle_lb: f64,
    /// Load at the end, lb.
    pub load_end_lb: f64,
    /// Lowest and highest load at the end when equal bands differ as measured, kg.
    pub load_end_range_kg: [f64; 2],
    /// Mean load over the range, kg.
    pub load_mean_kg: f64,
    /// Share of bands and chains at start or end: of the load what they add, of the weight what they take
    /// away, %.
    pub share_percent: f64,
    /// The plain load that would make the hardest place exactly the wished effort, kg.
    pub exact_plain_mass_kg: f64,
    /// Flattening against plain weight with that exact load, %: what setups are compared by.
    pub flattening_percent: f64,
    /// Flattening as loaded, %.
    pub flattening_as_loaded_percent: Option<f64>,
    /// Effort at the hardest place, %.
    pub max_effort_percent: Option<f64>,
    /// Where that is, in the range.
    pub sticking_point_range: Option<f64>,
    /// The sticking region in the range.
    pub sticking_region_range: Option<[f64; 2]>,
    /// The joint that gives way first there.
    pub limiting_joint: Option<&'static str>,
    /// Plates, bands and chains a side.
    pub pieces_a_side: u32,
    /// Bands and chains a side.
    pub hung_a_side: u32,
}

#[derive(Serialize)]
struct Summary<'a> {
    movement: &'a str,
    lifter: &'a str,
    class: &'static str,
    gym: &'a str,
    gym_is_invented: bool,
    goal: String,
    effort_percent: f64,
    share_limits_percent: [Option<f64>; 2],
    combinations: u64,
    loads: u64,
    buildable: u64,
    fitting: u64,
    non_dominated: usize,
    why: &'a str,
    advice: &'a [String],
    best_added_percent: Option<f64>,
    best_helping_percent: Option<f64>,
    left_out: &'a [String],
    cautions: Vec<String>,
}

#[derive(Serialize)]
struct Whole<'a> {
    summary: Summary<'a>,
    plain: Option<SetupRow>,
    ranked: Vec<SetupRow>,
    non_dominated: Vec<SetupRow>,
}

/// The figures of one setup.
#[must_use]
pub fn setup_row(pick: &Pick, rank: usize, picked: &Picked) -> SetupRow {
    let sticking = picked.study.sticking;
    let [start, middle, end] = picked.loads;
    SetupRow {
        rank,
        bar_and_plates: picked.plain_words.clone(),
        bands_and_chains: picked.hung_words.clone(),
        plain_mass_kg: picked.plain_mass.as_kg(),
        plain_mass_lb: picked.plain_mass.as_lb(),
        load_start_kg: start.as_kg(),
        load_middle_kg: middle.as_kg(),
        load_end_kg: end.as_kg(),
        load_start_lb: start.as_lb(),
        load_middle_lb: middle.as_lb(),
        load_end_lb: end.as_lb(),
        load_end_range_kg: picked.end_range.map(Mass::as_kg),
        load_mean_kg: picked.mean_load.as_kg(),
        share_percent: 100.0 * picked.share,
        exact_plain_mass_kg: picked.exact_mass.as_kg(),
        flattening_percent: picked.flattening_percent,
        flattening_as_loaded_percent: picked.study.flattening_percent,
        max_effort_percent: sticking.map(|s| 100.0 * s.max_effort),
        sticking_point_range: sticking.map(|s| s.point_range),
        sticking_region_range: sticking.map(|s| [s.from_range, s.to_range]),
        limiting_joint: picked.study.limiting.map(|joint| pick.study.joint(joint)),
        pieces_a_side: picked.pieces,
        hung_a_side: picked.hung,
    }
}

fn rows(pick: &Pick, list: &[Picked]) -> Vec<SetupRow> {
    list.iter()
        .enumerate()
        .map(|(index, picked)| setup_row(pick, index + 1, picked))
        .collect()
}

/// The ranking as JSON.
pub fn ranking_json(pick: &Pick, training: Training, units: System) -> Result<String> {
    let percent = |share: Option<f64>| share.map(|share| 100.0 * share);
    pretty(&Whole {
        summary: Summary {
            movement: &pick.study.movement_name,
            lifter: &pick.study.lifter_name,
            class: pick.study.class.shape.word(),
            gym: &pick.gym_title,
            gym_is_invented: pick.gym_is_invented,
            goal: goal_in_words(&pick.wish),
            effort_percent: 100.0 * pick.wish.effort,
            share_limits_percent: pick.wish.share.map(percent),
            combinations: pick.counts.combinations,
            loads: pick.counts.loads,
            buildable: pick.counts.buildable(),
            fitting: pick.counts.fitting,
            non_dominated: pick.front_size,
            why: &pick.why,
            advice: &pick.advice.sentences,
            best_added_percent: pick.advice.best_added_percent,
            best_helping_percent: pick.advice.best_helping_percent,
            left_out: &pick.left_out,
            cautions: all_cautions(pick, training, units),
        },
        plain: pick.plain.as_ref().map(|plain| setup_row(pick, 0, plain)),
        ranked: rows(pick, &pick.ranked),
        non_dominated: rows(pick, &pick.front),
    })
}

/// The ranking as CSV: plain weight as rank 0, then the ranked setups.
pub fn ranking_csv(pick: &Pick) -> Result<String> {
    let header = [
        "rank",
        "bar_and_plates",
        "bands_and_chains",
        "plain_mass_kg",
        "plain_mass_lb",
        "load_start_kg",
        "load_middle_kg",
        "load_end_kg",
        "load_start_lb",
        "load_middle_lb",
        "load_end_lb",
        "load_end_low_kg",
        "load_end_high_kg",
        "load_mean_kg",
        "share_percent",
        "exact_plain_mass_kg",
        "flattening_percent",
        "flattening_as_loaded_percent",
        "max_effort_percent",
        "sticking_point_range",
        "sticking_from_range",
        "sticking_to_range",
        "limiting_joint",
        "pieces_a_side",
        "hung_a_side",
    ];
    let plain = pick.plain.as_ref().map(|plain| setup_row(pick, 0, plain));
    let all = plain.into_iter().chain(rows(pick, &pick.ranked));
    rows_to_csv(&header, all.map(|row| csv_cells(&row)))
}

fn csv_cells(row: &SetupRow) -> Vec<String> {
    let maybe = |value: Option<f64>| value.map_or(String::new(), |value| value.to_string());
    let mut cells = vec![
        row.rank.to_string(),
        row.bar_and_plates.clone(),
        row.bands_and_chains.clone(),
    ];
    let figures = [
        row.plain_mass_kg,
        row.plain_mass_lb,
        row.load_start_kg,
        row.load_middle_kg,
        row.load_end_kg,
        row.load_start_lb,
        row.load_middle_lb,
        row.load_end_lb,
        row.load_end_range_kg[0],
        row.load_end_range_kg[1],
        row.load_mean_kg,
        row.share_percent,
    ];
    cells.extend(figures.map(|figure| figure.to_string()));
    cells.push(row.exact_plain_mass_kg.to_string());
    cells.push(row.flattening_percent.to_string());
    cells.push(maybe(row.flattening_as_loaded_percent));
    cells.push(maybe(row.max_effort_percent));
    cells.push(maybe(row.sticking_point_range));
    cells.push(maybe(row.sticking_region_range.map(|region| region[0])));
    cells.push(maybe(row.sticking_region_range.map(|region| region[1])));
    cells.push(row.limiting_joint.unwrap_or_default().to_owned());
    cells.push(row.pieces_a_side.to_string());
    cells.push(row.hung_a_side.to_string());
    cells
}

/// The goal in words.
#[must_use]
pub fn goal_in_words(wish: &Wish) -> String {
    let place = |at: f64| match at {
        0.0 => "the start".to_owned(),
        1.0 => "the end".to_owned(),
        at => format!("{} of the range", rounded(at, 2)),
    };
    match &wish.goal {
        Goal::Flattest => "flattest effort".to_owned(),
        Goal::MostLoad { at, limit_at: None } => format!("most load at {}", place(*at)),
        Goal::MostLoad {
            at,
            limit_at: Some(limit),
        } => {
            format!(
                "most load at {} with the effort held at {}",
                place(*at),
                place(*limit)
            )
        }
        Goal::Share { share, at } => {
            format!(
                "{} % of the load at {} from bands and chains",
                rounded(100.0 * share, 1),
                place(*at)
            )
        }
        Goal::Profile(points) => {
            let points: Vec<String> = points
                .iter()
                .map(|(s, e)| format!("{} % at {}", rounded(100.0 * e, 0), place(*s)))
                .collect();
            format!("effort nearest to {}", points.join(", "))
        }
    }
}

/// The ranking as text for people.
#[must_use]
pub fn ranking_table(pick: &Pick, training: Training, units: System) -> String {
    let mut text = head(pick, units);
    text += &numbers_table(pick, &pick.ranked, units);
    text += &format!(
        "Flattening is told where the hardest place asks for exactly {} %; the rest as loaded, rounded down.\n",
        rounded(100.0 * pick.wish.effort, 1)
    );
    text += &short_of_plates(pick);
    text += "\nHow to load them\n";
    for (index, picked) in pick.ranked.iter().enumerate() {
        text += &recipe(index + 1, picked, units);
    }
    text += &format!("\n{}\n", pick.why);
    for sentence in &pick.advice.sentences {
        text += &format!("{sentence}\n");
    }
    text += &front_table(pick, units);
    if !pick.left_out.is_empty() {
        text += "\nLeft out\n";
        for sentence in &pick.left_out {
            text += &format!("  {sentence}\n");
        }
    }
    text += "\nCautions\n";
    for sentence in all_cautions(pick, training, units) {
        text += &format!("  - {sentence}\n");
    }
    text
}

/// A sentence where the gym's loads end well below the wished effort.
fn short_of_plates(pick: &Pick) -> String {
    let first = &pick.ranked[0];
    let hardest = first.study.sticking.map_or(0.0, |s| s.max_effort);
    if hardest > 0.85 * pick.wish.effort || matches!(pick.wish.goal, Goal::Profile(_)) {
        return String::new();
    }
    format!(
        "This gym cannot load it exactly: {} kg would be wanted, {} kg is the nearest below, so the effort stays at {} %.\n",
        rounded(first.exact_mass.as_kg(), 1),
        rounded(first.plain_mass.as_kg(), 1),
        rounded(100.0 * hardest, 0)
    )
}

fn head(pick: &Pick, units: System) -> String {
    let [least, most] = pick.wish.share;
    let percent = |share: f64| format!("{} %", rounded(100.0 * share, 1));
    let shares = match (least, most) {
        (None, None) => String::new(),
        (Some(least), None) => format!("; at least {} from bands and chains", percent(least)),
        (None, Some(most)) => format!("; at most {} from bands and chains", percent(most)),
        (Some(least), Some(most)) => {
            format!(
                "; {} to {} from bands and chains",
                percent(least),
                percent(most)
            )
        }
    };
    let mut text = format!(
        "{}, {}, {}\nGoal: {}; hardest effort {}{shares}; at most {} bands and chains and {} pieces a side.\n",
        pick.study.movement_title,
        pick.study.lifter_title,
        pick.gym_title,
        goal_in_words(&pick.wish),
        percent(pick.wish.effort),
        pick.wish.most_hung,
        pick.wish.most_pieces
    );
    text += &format!(
        "Searched all {} combinations of bands and chains with {} loads: {} setups; {} combinations fit.\n",
        grouped(pick.counts.combinations),
        grouped(pick.counts.loads),
        grouped(pick.counts.buildable()),
        grouped(pick.counts.fitting)
    );
    text += &match &pick.plain {
        Some(plain) => format!(
            "Plain weight for comparison: {} ({}), {}.\n\n",
            both(plain.plain_mass, units),
            plain.plain_words,
            sticking_words(pick, plain, units)
        ),
        None => "Plain weight for comparison: even the lightest load is too heavy.\n\n".to_owned(),
    };
    text
}

fn sticking_words(pick: &Pick, picked: &Picked, units: System) -> String {
    picked.study.sticking.map_or_else(
        || "which asks for nothing".to_owned(),
        |s| {
            format!(
                "hardest {} ({} %), sticking region {}",
                pick.study.place_in_words(s.point_range, units),
                rounded(100.0 * s.max_effort, 0),
                region(pick, picked, units)
            )
        },
    )
}

/// The sticking region on the movement's axis: "2-19 cm".
fn region(pick: &Pick, picked: &Picked, units: System) -> String {
    picked.study.sticking.map_or_else(
        || "none".to_owned(),
        |s| {
            let place = |range: f64| pick.study.place_in_words(range, units);
            let (from, to) = (place(s.from_range), place(s.to_range));
            let number = |words: &str| words.split(' ').next().unwrap_or_default().to_owned();
            let unit = to.split(' ').nth(1).unwrap_or_default().to_owned();
            format!("{} to {} {unit}", number(&from), number(&to))
        },
    )
}

fn numbers_table(pick: &Pick, list: &[Picked], units: System) -> String {
    let header = [
        "#",
        "flattening",
        "load at start",
        "middle",
        "end",
        "bands, chains",
        "hardest",
        "sticking region",
        "pieces a side",
    ];
    let cells = list.iter().enumerate().map(|(index, picked)| {
        let mut row = vec![
            (index + 1).to_string(),
            format!("{} %", rounded(picked.flattening_percent, 1)),
        ];
        row.extend(picked.loads.map(|load| both(load, units)));
        row.push(format!("{} %", rounded(100.0 * picked.share, 0)));
        row.push(picked.study.sticking.map_or("-".to_owned(), |s| {
            format!("{} %", rounded(100.0 * s.max_effort, 1))
        }));
        row.push(region(pick, picked, units));
        row.push(picked.pieces.to_string());
        row
    });
    table(&header, cells.collect(), 1)
}

/// A mass in both units, the chosen one first.
fn both(mass: Mass, units: System) -> String {
    let other = match units {
        System::Metric => System::Us,
        System::Us => System::Metric,
    };
    format!("{} ({})", units.mass(mass), other.mass(mass))
}

fn recipe(rank: usize, picked: &Picked, units: System) -> String {
    let mut text = format!(
        "{rank:>3}  {}: {}\n",
        both(picked.plain_mass, units),
        picked.plain_words
    );
    if picked.hung > 0 {
        text += &format!("     {}\n", picked.hung_words);
    }
    let [low, high] = picked.end_range;
    if (high.as_kg() - low.as_kg()).abs() > 0.05 {
        text += &format!(
            "     load at the end {} to {} if the bands differ from their label\n",
            units.mass(low),
            units.mass(high)
        );
    }
    text
}

fn front_table(pick: &Pick, units: System) -> String {
    let mut text = format!(
        "\nNon-dominated setups: no other is at once as even, as heavy and as simple ({} of {})\n",
        pick.front.len(),
        pick.front_size
    );
    let header = [
        "pieces a side",
        "flattening",
        "mean load",
        "bar and plates",
        "bands and chains",
    ];
    let cells = pick.front.iter().map(|picked| {
        vec![
            picked.pieces.to_string(),
            format!("{} %", rounded(picked.flattening_percent, 0)),
            both(picked.mean_load, units),
            picked.plain_words.clone(),
            picked.hung_words.clone(),
        ]
    });
    text += &table(&header, cells.collect(), header.len());
    text
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

/// The usual cautions, and those of the ranked setups themselves, each once.
#[must_use]
pub fn all_cautions(pick: &Pick, training: Training, units: System) -> Vec<String> {
    let items = || pick.ranked.iter().flat_map(|picked| &picked.setup.items);
    let uses = Uses {
        bar: pick.study.range.carrier == Carrier::Bar,
        bands: items().any(|item| matches!(item, Item::Band(_))),
        chains: items().any(|item| matches!(item, Item::Chain(_))),
        novice: training == Training::Novice,
    };
    let mut said: Vec<String> = cautions(uses).into_iter().map(str::to_owned).collect();
    let points = load_points(&pick.study.range);
    let mut known = BTreeSet::new();
    for picked in &pick.ranked {
        let own = picked
            .study
            .demand
            .setup
            .cautions(&points, &pick.study.range.carrier, units);
        let own = own.into_iter().filter(|sentence| !is_usual(sentence));
        said.extend(own.filter(|sentence| known.insert(sentence.clone())));
    }
    said
}

/// Whether a setup's own caution says what the usual ones already do.
fn is_usual(sentence: &str) -> bool {
    sentence.contains("Look over every band") || sentence.contains("computed from its dimensions")
}
