//! Bands and chains: the best setup of the gym, turned into sets with warm-ups that lead up to it.
//!
//! In: a [`Request`] with the setup that was picked and how hard it is. Out: a draft with the loads at the
//! bottom and at the top of every set.

use super::plan::{Draft, PlannedSet, Tempo, warm_up_sets};
use super::repetitions::RepetitionChart;
use super::rests::{between_sets, checked_between_sets};
use super::schemes::{Request, chart_allows};
use super::straight::{self, RESERVE};
use crate::error::{Error, Result};
use crate::progress::origin::Origin;
use crate::setups::Loading;
use crate::units::{Mass, rounded};

/// A band or chain setup as picked, with what it does.
#[derive(Debug, Clone, PartialEq)]
pub struct AccommodatingSetup {
    /// What hangs where, one part a line: bar and plates, bands with their anchors, chains.
    pub parts: Vec<String>,
    /// Bar and plates alone.
    pub bar_and_plates: Loading,
    /// Load at the bottom, bands or chains included, as a mass.
    pub bottom: Mass,
    /// Load at the top.
    pub top: Mass,
    /// Largest effort over the range: how hard its hardest point is for one repetition.
    pub max_effort: f64,
    /// How much it evens out effort over the range, %, if known.
    pub flattening_percent: Option<f64>,
    /// Plain weight with the same effort at its hardest point, where the gym can load it.
    pub plain: Option<Mass>,
}

/// Load of a warm-up from which the bands or chains are on, share of the working one (common practice: the
/// last steps rehearse the setup).
const WITH_PARTS_FROM: f64 = 0.6;

/// Drafts sets with the setup of the request; predicted with the setup on, beside the same sets with plain
/// weight of the same hardest effort.
///
/// **Fails** when no setup was picked (bad input), and when the setup is too hard to lift once (no answer).
pub fn draft(request: &Request) -> Result<Draft> {
    let Some(setup) = request.setup else {
        return Err(Error::bad(format!(
            "the method {} needs a setup of the gym",
            request.method.name()
        ))
        .hint("name a gym with bands or chains, so that the best setup can be picked"));
    };
    check(setup)?;
    let chart = RepetitionChart::published()?;
    let allowed = chart_allows(&chart, setup.max_effort);
    let guidance = straight::guidance_for(request.level());
    let repetitions = request
        .repetitions
        .unwrap_or_else(|| allowed.unwrap_or(15).saturating_sub(RESERVE).max(1));
    let rest = match request.rest_between {
        Some(rest) => checked_between_sets(rest)?,
        None => between_sets(request.level(), setup.max_effort).1,
    };
    let mut draft = request.draft(request.method);
    draft.sets = warm_ups(request, setup)?;
    let mut set = PlannedSet::work(
        setup.bar_and_plates.clone(),
        &request.strength(),
        repetitions,
        rest,
        Tempo::STRENGTH,
        "drive through to lockout",
    );
    set.share = setup.max_effort;
    set.notes.push(bottom_and_top(request, setup, 1.0));
    draft.sets.extend(std::iter::repeat_n(
        set,
        request.sets.unwrap_or(guidance.sets) as usize,
    ));
    draft.setup.clone_from(&setup.parts);
    draft.frequency = guidance.frequency.to_owned();
    draft.progression = "Add plates first and leave bands and chains as they are, so that sessions stay comparable.".to_owned();
    draft.remarks.push(effort_remark(setup));
    draft.remarks.extend(heaviness_remark(request, setup));
    predict_both(request, setup, &mut draft)?;
    draft.sources.push((
        "repetitions from the effort at the hardest point, as if it were a share of 1RM".to_owned(),
        Origin::Assumed(
            "effort 1 is one repetition by definition; no chart was published for bands or chains",
        ),
    ));
    Ok(draft)
}

fn check(setup: &AccommodatingSetup) -> Result<()> {
    let effort = setup.max_effort;
    if !(effort.is_finite()
        && effort > 0.0
        && setup.bottom.as_kg() > 0.0
        && setup.top.as_kg().is_finite())
    {
        return Err(Error::bad("the setup has no load or no effort"));
    }
    if effort > 1.0 {
        return Err(Error::no_answer(format!(
            "the setup asks for {} % of capacity at its hardest point: it cannot be lifted",
            rounded(100.0 * effort, 0)
        ))
        .hint("take plates off, or pick again at a lower effort"));
    }
    Ok(())
}

/// The sets with the setup on, and with plain weight.
fn predict_both(request: &Request, setup: &AccommodatingSetup, draft: &mut Draft) -> Result<()> {
    let Some(oracle) = request.setup_oracle else {
        return Ok(());
    };
    straight::predict_with(oracle, request, draft)?;
    if let (Some(plain), Some(oracle)) = (setup.plain, request.oracle) {
        let prediction = straight::as_plain_sets(oracle, plain, draft)?;
        draft.predictions.push(prediction);
    }
    Ok(())
}

/// How much more or less there is at the top than plain weight would allow.
fn heaviness_remark(request: &Request, setup: &AccommodatingSetup) -> Option<String> {
    let plain = setup.plain?;
    Some(format!(
        "Plain weight that is as hard at its hardest point: {}; this setup has {} at the top.",
        request.words(plain),
        request.words(setup.top)
    ))
}

fn effort_remark(setup: &AccommodatingSetup) -> String {
    let flat = setup
        .flattening_percent
        .map(|percent| format!("; it evens out effort by {} %", rounded(percent, 0)))
        .unwrap_or_default();
    format!(
        "Hardest point: {} % of capacity{flat}.",
        rounded(100.0 * setup.max_effort, 0)
    )
}

fn bottom_and_top(request: &Request, setup: &AccommodatingSetup, share: f64) -> String {
    let plates_kg = setup.bar_and_plates.total.as_kg();
    let lighter_kg = plates_kg * (1.0 - share);
    let bottom = Mass::from_kg(setup.bottom.as_kg() - lighter_kg);
    let top = Mass::from_kg(setup.top.as_kg() - lighter_kg);
    format!(
        "{} at the bottom, {} at the top",
        request.words(bottom),
        request.words(top)
    )
}

/// The ladder up to the plates of the setup; the heavier steps already carry the bands or chains.
fn warm_ups(request: &Request, setup: &AccommodatingSetup) -> Result<Vec<PlannedSet>> {
    let working = setup.bar_and_plates.total;
    let mut sets = warm_up_sets(working, request.loading, &request.strength())?;
    for set in &mut sets {
        let share = set.load.total.as_kg() / working.as_kg();
        set.intent = "easy and crisp".to_owned();
        set.share = share * setup.max_effort;
        if share >= WITH_PARTS_FROM {
            set.notes.push(format!(
                "{} on; {}",
                request.method.name(),
                bottom_and_top(request, setup, share)
            ));
        } else {
            set.notes.push(format!("without {}", request.method.name()));
        }
    }
    Ok(sets)
}
