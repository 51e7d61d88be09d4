//! Straight sets: one load, a few repetitions in reserve, raised when the repetitions allow.
//!
//! In: a [`Request`]. Out: a draft whose load and repetitions follow published guidance for the lifter's
//! status; for a novice this is the plain progressive overload that replaces every other method.

use super::method::Method;
use super::oracle::RepOracle;
use super::plan::{Allowed, Draft, NamedPrediction, PlannedSet, SetKind, Tempo, warm_up_sets};
use super::prediction::{Body, predict_set, repetitions_to_failure};
use super::repetitions::RepetitionChart;
use super::rests::{between_sets, checked_between_sets};
use super::schemes::{Request, chart_allows};
use super::status::Level;
use crate::error::Result;
use crate::progress::origin::Origin;
use crate::units::{Mass, rounded};

/// What guidance says for one status.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Guidance {
    /// Training status.
    pub level: Level,
    /// Load, share of 1RM.
    pub share: f64,
    /// Number of sets.
    pub sets: u32,
    /// Sessions a week for the lift.
    pub frequency: &'static str,
    /// Where load and frequency come from.
    pub origin: Origin,
}

/// Repetitions that a working set is kept short of failure (common practice: one to three).
pub const RESERVE: u32 = 2;

/// Fewest and most repetitions of a novice's set: ACSM 2009, 8-12RM (read in a summary).
pub const NOVICE_REPETITIONS: (u32, u32) = (8, 12);

/// Raise the load by 2 to 10 % when one or two repetitions more than planned are possible: ACSM 2009 (read
/// in a summary).
pub const STEP_PERCENT: (f64, f64) = (2.0, 10.0);

/// Load, sets and frequency for each status. Sets are common practice but for the trained (Rhea).
pub const GUIDANCE: &[Guidance] = &[
    Guidance {
        level: Level::Novice,
        share: 0.65,
        sets: 3,
        frequency: "2 to 3 days a week",
        origin: Origin::Recalled(
            "acsm_2009",
            "60-70 % of 1RM for novices; repetitions and frequency read in a summary",
        ),
    },
    Guidance {
        level: Level::Intermediate,
        share: 0.80,
        sets: 4,
        frequency: "2 days a week for this lift",
        origin: Origin::Recalled("rhea_2003", "80 %, 4 sets, 2 days a week for the trained"),
    },
    Guidance {
        level: Level::Advanced,
        share: 0.85,
        sets: 5,
        frequency: "2 days a week for this lift",
        origin: Origin::Recalled(
            "peterson_2004",
            "85 %, 2 days a week for athletes; 5 of its 8 sets on this lift",
        ),
    },
];

/// The guidance for a status.
#[must_use]
pub fn guidance_for(level: Level) -> &'static Guidance {
    GUIDANCE
        .iter()
        .find(|row| row.level == level)
        .unwrap_or(&GUIDANCE[0])
}

/// Drafts straight sets.
///
/// **Fails** when the load asked for is above 1RM or cannot be loaded.
pub fn draft(request: &Request) -> Result<Draft> {
    let chart = RepetitionChart::published()?;
    let guidance = guidance_for(request.level());
    let share = request.liftable_share(guidance.share)?;
    let load = request.loading.at_most(request.strength().load_at(share))?;
    let real_share = request.strength().share_of(load.total);
    let allowed = chart_allows(&chart, real_share);
    let repetitions = request
        .repetitions
        .unwrap_or_else(|| usual_repetitions(request.level(), allowed));
    let rest = match request.rest_between {
        Some(rest) => checked_between_sets(rest)?,
        None => between_sets(request.level(), share).1,
    };
    let mut draft = request.draft(Method::Straight);
    let tempo = if request.level() == Level::Novice {
        Tempo::CONTROLLED
    } else {
        Tempo::STRENGTH
    };
    draft.sets = warm_up_sets(load.total, request.loading, &request.strength())?;
    let set = PlannedSet::work(
        load,
        &request.strength(),
        repetitions,
        rest,
        tempo,
        "repetitions left in reserve",
    );
    let count = request.sets.unwrap_or(guidance.sets);
    draft.sets.extend(std::iter::repeat_n(set, count as usize));
    if allowed.is_some_and(|allowed| repetitions > allowed) {
        draft.remarks.push(format!(
            "{repetitions} repetitions at {} % of 1RM are more than the chart allows ({}); expect to fail",
            rounded(100.0 * real_share, 0),
            allowed.unwrap_or(0)
        ));
    }
    draft.frequency = guidance.frequency.to_owned();
    draft.progression = progression(request, repetitions);
    draft
        .sources
        .push(("load, sets, frequency".to_owned(), guidance.origin));
    predict(request, &mut draft)?;
    Ok(draft)
}

fn usual_repetitions(level: Level, allowed: Option<u32>) -> u32 {
    match (level, allowed) {
        (Level::Novice, None) => NOVICE_REPETITIONS.1,
        (Level::Novice, Some(allowed)) => allowed
            .saturating_sub(RESERVE)
            .clamp(1, NOVICE_REPETITIONS.1),
        (_, allowed) => allowed.unwrap_or(15).saturating_sub(RESERVE).max(1),
    }
}

fn progression(request: &Request, repetitions: u32) -> String {
    let (least, most) = STEP_PERCENT;
    format!(
        "When {} repetitions are possible in the last set of two sessions running, raise the load by {least} to {most} % \
         ({} to {}), the smaller step for the upper body.",
        repetitions + 1,
        request.words(request.one_rm * (least / 100.0)),
        request.words(request.one_rm * (most / 100.0)),
    )
}

/// Predicts the working sets of a draft one after the other, and notes on each what would be possible.
///
/// Does nothing without an oracle. **Fails** as the oracle does.
pub(super) fn predict(request: &Request, draft: &mut Draft) -> Result<()> {
    request
        .oracle
        .map_or(Ok(()), |oracle| predict_with(oracle, request, draft))
}

/// The same with a given oracle.
pub(super) fn predict_with(oracle: &RepOracle, request: &Request, draft: &mut Draft) -> Result<()> {
    let chart = RepetitionChart::published()?;
    let mut body = Body::fresh(&oracle.joints);
    let mut sets = Vec::new();
    for set in draft
        .sets
        .iter_mut()
        .filter(|set| set.kind == SetKind::Work)
    {
        let load = set.load.total;
        set.allowed = Some(Allowed {
            by_chart: chart.repetitions_at(set.share).ok(),
            by_model: repetitions_to_failure(oracle, load, &body).ok(),
        });
        let predicted = predict_set(oracle, load, &set.groups, set.rest_within, &mut body)?;
        sets.push(predicted);
        body.rest(set.rest_after)?;
    }
    draft.remarks.extend(disagreements(request, draft));
    draft.predictions.push(NamedPrediction {
        name: draft.method.name().to_owned(),
        sets,
        fatigue: body.trace().to_vec(),
    });
    draft.sources.push((
        format!(
            "velocities: {}; fatigue: three-compartment model",
            oracle.described
        ),
        Origin::Recalled(
            "xia_frey_law_2008",
            "equations; rates frey_law_2012, rest multiplier looft_2018",
        ),
    ));
    Ok(())
}

/// The working sets of a draft with another load on, without bands and chains.
pub(super) fn as_plain_sets(
    oracle: &RepOracle,
    load: Mass,
    draft: &Draft,
) -> Result<NamedPrediction> {
    let mut body = Body::fresh(&oracle.joints);
    let mut sets = Vec::new();
    for set in draft.sets.iter().filter(|set| set.kind == SetKind::Work) {
        sets.push(predict_set(
            oracle,
            load,
            &set.groups,
            set.rest_within,
            &mut body,
        )?);
        body.rest(set.rest_after)?;
    }
    Ok(NamedPrediction {
        name: "plain weight".to_owned(),
        sets,
        fatigue: body.trace().to_vec(),
    })
}

/// Sets that the fatigue model does not see through, neighbours of one kind together.
fn disagreements(request: &Request, draft: &Draft) -> Vec<String> {
    let mut found: Vec<(usize, usize, String)> = Vec::new();
    let work = draft.sets.iter().filter(|set| set.kind == SetKind::Work);
    for (number, set) in (1..).zip(work) {
        let Some(words) = disagreement(request, set) else {
            continue;
        };
        match found.last_mut() {
            Some((_, last, known)) if *last + 1 == number && *known == words => *last = number,
            _ => found.push((number, number, words)),
        }
    }
    found
        .into_iter()
        .map(|(first, last, words)| {
            if first == last {
                format!("Working set {first}: {words}")
            } else {
                format!("Working sets {first} to {last}: {words}")
            }
        })
        .collect()
}

fn disagreement(request: &Request, set: &PlannedSet) -> Option<String> {
    let allowed = set.allowed?;
    let (planned, by_model) = (set.repetitions(), allowed.by_model?);
    if set.groups.len() > 1 || by_model >= planned {
        return None;
    }
    Some(format!(
        "{} for {planned}: the chart allows {} when rested, the fatigue model {by_model} after the sets before; they \
         disagree, so have a spotter ready or take less.",
        request.words(set.load.total),
        rounded(allowed.by_chart?, 1)
    ))
}
