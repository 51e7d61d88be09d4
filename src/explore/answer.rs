//! The answer to a state: summary, curve, charts, what to watch for, and the commands that give the same.
//!
//! In: what was solved, what was solved before, which charts are wanted. Out: [`PageSolution`].

use super::page_place::{PagePlace, place};
use super::shown_chart::{ChartWish, ShownChart};
use super::shown_factors::ShownFactors;
use super::solved_state::SolvedState;
use crate::error::Result;
use crate::figures::{body_extent, live_places, live_strength, live_top};
use crate::narrative::cautions::caution_in_words;
use crate::narrative::curve_words::{curve_head, curve_sentences};
use crate::narrative::drawn_words::score_rule;
use crate::narrative::fibre_words::fibre_warning_lines;
use crate::narrative::implements::setup_in_words;
use crate::narrative::muscle_names::head_name;
use crate::narrative::page_words::joint_axis;
use crate::narrative::prose::capital;
use crate::report::{CurveSummary, summary, typed_words};
use crate::setups::setup_cautions;
use crate::study::{Study, load_points};
use crate::units::System;
use serde::Serialize;

/// The answer to a state.
#[derive(Debug, Serialize)]
pub(super) struct PageSolution {
    title: String,
    head: String,
    sentences: Vec<String>,
    warnings: Vec<String>,
    cautions: Vec<String>,
    summary: CurveSummary,
    /// Units that numbers are shown in.
    shown: ShownFactors,
    /// One a sample.
    range: Vec<f64>,
    /// Places on the level axis of the chart.
    across: Vec<f64>,
    capacity: Vec<f64>,
    demand: Option<Vec<f64>>,
    effort: Option<Vec<f64>>,
    /// Where the chart's axis ends although the curve goes on, in the unit of the capacity.
    top: Option<f64>,
    /// What hangs, piece by piece.
    hung: Option<String>,
    /// How a drawn curve is scored.
    score_rule: String,
    /// The moving joint that gives way first where the load is hardest, else where the lifter is weakest.
    first_joint: usize,
    muscles: Vec<MuscleName>,
    joints: Vec<JointName>,
    body_extent: [f64; 4],
    /// Where the load is drawn, one a sample.
    load_way: Vec<[f64; 2]>,
    chart: Option<ShownChart>,
    place: PagePlace,
    commands: Commands,
}

#[derive(Debug, Serialize)]
struct MuscleName {
    name: String,
    title: String,
}

#[derive(Debug, Serialize)]
struct JointName {
    name: &'static str,
    title: String,
}

/// What a person types for the same.
#[derive(Debug, Serialize)]
struct Commands {
    figure: String,
    table: String,
}

pub(super) fn solution(
    now: &SolvedState,
    before: Option<&SolvedState>,
    wish: &ChartWish,
    at: f64,
) -> Result<PageSolution> {
    let (study, units) = (&now.study, now.units());
    let setup = study.setups.first();
    let same_lift = |solved: &&SolvedState| solved.study.movement_name == study.movement_name;
    let before = before.filter(same_lift).map(|before| &before.study);
    let chart = match wish.size {
        None => None,
        Some(size) => {
            let chart = live_strength(study, before, units, wish.look(size))?;
            Some(ShownChart::of(&chart)?)
        }
    };
    let coordinates = study.range.poses[0].coordinates.iter();
    Ok(PageSolution {
        title: study.told(units).strength_words().title,
        head: curve_head(study, setup, units),
        sentences: curve_sentences(study, setup, units),
        warnings: fibre_warning_lines(study),
        cautions: cautions(study, units),
        summary: summary(study, setup),
        shown: ShownFactors::of(study.range.measure, units),
        range: study.range.poses.iter().map(|p| p.load.range).collect(),
        across: live_places(study, units),
        capacity: study.capacity.values(),
        demand: setup.map(|setup| setup.values.clone()),
        effort: setup.map(|setup| setup.effort.clone()),
        top: live_top(study),
        hung: setup.map(|setup| capital(&setup_in_words(&setup.demand.setup, units)) + "."),
        score_rule: score_rule(),
        first_joint: first_joint(study),
        muscles: study
            .capacity
            .muscles
            .iter()
            .map(|name| MuscleName {
                name: name.clone(),
                title: head_name(name),
            })
            .collect(),
        joints: coordinates
            .enumerate()
            .map(|(joint, coordinate)| JointName {
                name: coordinate.dof.name(),
                title: joint_axis(study, joint),
            })
            .collect(),
        body_extent: body_extent(study),
        load_way: study
            .range
            .poses
            .iter()
            .map(|pose| [pose.outline.load.x, pose.outline.load.z])
            .collect(),
        chart,
        place: place(now, wish, at)?,
        commands: Commands {
            figure: command(now, "figure", &["--output", "figure.svg"]),
            table: command(now, "curve", &["--detail", "--format", "csv"]),
        },
    })
}

/// The moving joint that gives way first at the hardest place; without a load where the least is held.
fn first_joint(study: &Study) -> usize {
    let loaded = study.setups.first().and_then(|setup| setup.limiting);
    let weakest = study.capacity.held.iter();
    let weakest = weakest.min_by(|a, b| a.capacity.total_cmp(&b.capacity));
    loaded.unwrap_or_else(|| weakest.map_or(0, |held| held.limiting))
}

fn command(now: &SolvedState, name: &str, more: &[&str]) -> String {
    let mut words = vec!["torquill".to_owned(), name.to_owned()];
    words.extend(now.state.words());
    words.extend(more.iter().map(|word| (*word).to_owned()));
    typed_words(&words)
}

fn cautions(study: &Study, units: System) -> Vec<String> {
    let points = load_points(&study.range);
    let hung = study.setups.first().map(|setup| &setup.demand.setup);
    let cautions = hung.map(|hung| setup_cautions(hung, &points, &study.range.carrier));
    let words = cautions.unwrap_or_default();
    words
        .iter()
        .map(|caution| caution_in_words(caution, units))
        .collect()
}
