//! A ranking of setups as figures: CSV and JSON.
//!
//! In: a [`PickAnswer`]. Out: one [`SetupRow`] a setup, loads in kilograms and pounds, and both texts.

use super::json::pretty;
use super::tidy_table::{Cells, TidyTable};
use super::warnings::{WarningRow, warnings};
use crate::anatomy::Training;
use crate::narrative::advice_words::advice_sentences;
use crate::narrative::hanging::hung_in_words;
use crate::narrative::loads::loading_in_words;
use crate::narrative::pick_card_words::family_name;
use crate::narrative::reasons::why_first;
use crate::narrative::setups::{goal_in_words, left_out_in_words, pick_cautions};
use crate::study::{PickAnswer, Picked};
use crate::units::{Length, System};
use serde::Serialize;

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
    /// Lowest load at the end when equal bands differ as measured, kg.
    pub load_end_low_kg: f64,
    /// The highest, kg.
    pub load_end_high_kg: f64,
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
    /// Where the sticking region begins.
    pub sticking_from_range: Option<f64>,
    /// Where it ends.
    pub sticking_to_range: Option<f64>,
    /// The joint that gives way first there.
    pub limiting_joint: Option<&'static str>,
    /// What kind of setup it is.
    pub kind: &'static str,
    /// What is left when its bands give way; nothing without bands.
    pub when_bands_go: Option<FailureRow>,
    /// Plates, bands and chains a side.
    pub pieces_a_side: u32,
    /// Bands and chains a side.
    pub hung_a_side: u32,
}

/// What is left when bands give way.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct FailureRow {
    /// How much more hangs on one side than on the other when one goes, kg.
    pub one_side_kg: f64,
    /// Whether the load grows then.
    pub grows: bool,
    /// Where that is, as a place of the range.
    pub worst_at_range: f64,
    /// What is felt there after one went, kg.
    pub after_one_kg: f64,
    /// The most that is felt when all are gone, kg.
    pub after_all_kg: f64,
    /// The same as a share of the 1RM, %.
    pub after_all_percent: f64,
}

#[derive(Serialize)]
struct PickSummary<'a> {
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
    one_rm_kg: f64,
    lowered_kg: f64,
    safety_arms_m: Option<f64>,
    why: String,
    advice: Vec<String>,
    best_added_percent: Option<f64>,
    best_helping_percent: Option<f64>,
    left_out: Vec<String>,
    cautions: Vec<String>,
}

#[derive(Serialize)]
struct PickJson<'a> {
    summary: PickSummary<'a>,
    warnings: Vec<WarningRow>,
    plain: Option<SetupRow>,
    answers: Vec<SetupRow>,
    ranked: Vec<SetupRow>,
    non_dominated: Vec<SetupRow>,
}

/// The figures of one setup.
#[must_use]
pub fn setup_row(pick: &PickAnswer, rank: usize, picked: &Picked) -> SetupRow {
    let sticking = picked.study.sticking;
    let [start, middle, end] = picked.loaded.loads;
    SetupRow {
        rank,
        bar_and_plates: loading_in_words(&picked.loaded.loading),
        bands_and_chains: hung_in_words(&picked.loaded.setup.items, &pick.anchors, System::Metric),
        plain_mass_kg: picked.loaded.loading.total.as_kg(),
        plain_mass_lb: picked.loaded.loading.total.as_lb(),
        load_start_kg: start.as_kg(),
        load_middle_kg: middle.as_kg(),
        load_end_kg: end.as_kg(),
        load_start_lb: start.as_lb(),
        load_middle_lb: middle.as_lb(),
        load_end_lb: end.as_lb(),
        load_end_low_kg: picked.loaded.end_range[0].as_kg(),
        load_end_high_kg: picked.loaded.end_range[1].as_kg(),
        load_mean_kg: picked.loaded.mean_load.as_kg(),
        share_percent: 100.0 * picked.loaded.share,
        exact_plain_mass_kg: picked.loaded.exact_mass.as_kg(),
        flattening_percent: picked.loaded.flattening_percent,
        flattening_as_loaded_percent: picked.study.flattening_percent,
        max_effort_percent: sticking.map(|s| 100.0 * s.max_effort),
        sticking_point_range: sticking.map(|s| s.point_range),
        sticking_from_range: sticking.map(|s| s.from_range),
        sticking_to_range: sticking.map(|s| s.to_range),
        limiting_joint: picked.study.limiting.map(|joint| pick.study.joint(joint)),
        kind: family_name(pick, picked),
        when_bands_go: picked.loaded.failure.map(|failure| FailureRow {
            one_side_kg: failure.one_side.as_kg(),
            grows: failure.grows,
            worst_at_range: failure.worst_at,
            after_one_kg: failure.after_one.as_kg(),
            after_all_kg: failure.after_all.as_kg(),
            after_all_percent: 100.0 * pick.safety.share_of(failure.after_all),
        }),
        pieces_a_side: picked.loaded.pieces,
        hung_a_side: picked.loaded.hung,
    }
}

fn rows(pick: &PickAnswer, list: &[Picked]) -> Vec<SetupRow> {
    list.iter()
        .enumerate()
        .map(|(index, picked)| setup_row(pick, index + 1, picked))
        .collect()
}

/// The ranking as JSON.
#[must_use]
pub fn ranking_json(pick: &PickAnswer, training: Training, units: System) -> String {
    let percent = |share: Option<f64>| share.map(|share| 100.0 * share);
    let left_out = pick.left_out.iter();
    let left_out = left_out.map(|left_out| left_out_in_words(left_out, units));
    pretty(&PickJson {
        summary: PickSummary {
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
            one_rm_kg: pick.safety.one_rm.as_kg(),
            lowered_kg: pick.safety.lowered.as_kg(),
            safety_arms_m: pick.safety.arms.map(Length::as_m),
            why: why_first(pick, units),
            advice: advice_sentences(&pick.advice, units),
            best_added_percent: pick.advice.best_added_percent,
            best_helping_percent: pick.advice.best_helping_percent,
            left_out: left_out.collect(),
            cautions: pick_cautions(pick, training, units),
        },
        warnings: warnings(&pick.study),
        plain: pick.plain.as_ref().map(|plain| setup_row(pick, 0, plain)),
        answers: rows(pick, &pick.answers),
        ranked: rows(pick, &pick.ranked),
        non_dominated: rows(pick, &pick.front),
    })
}

/// The ranking as a table: plain weight as rank 0, then the ranked setups.
#[must_use]
pub fn ranking_data(pick: &PickAnswer) -> TidyTable {
    let plain = pick.plain.as_ref().map(|plain| setup_row(pick, 0, plain));
    let all = plain.into_iter().chain(rows(pick, &pick.ranked));
    TidyTable::of(all.map(|row| Cells::of(&row)))
}
