//! Bands and chains: the best setup of the gym, turned into sets with warm-ups that lead up to it.
//!
//! In: a [`SessionRequest`] with the setup that was picked and how hard it is. Out: a draft with the loads at
//! the bottom and at the top of every set.

use super::accommodating_setup::AccommodatingSetup;
use super::draft::Draft;
use super::planned_set::{PlannedSet, SetIntent, SetNote, warm_up_sets};
use super::predicted_sets::{as_plain_sets, predict_with};
use super::remark::{PlanBasis, Progression, Remark, SetupRemark};
use super::request::SessionRequest;
use super::straight::RESERVE;
use crate::error::{Error, Result, SchemeFault};
use crate::setups::LoadUse;
use crate::units::Mass;

/// Load of a warm-up from which the bands or chains are on, share of the working one (common practice: the
/// last steps rehearse the setup).
const WITH_PARTS_FROM: f64 = 0.6;

/// Repetitions where the chart allows no end of them.
const BEYOND_CHART: u32 = 15;

/// Drafts sets with the setup of the request; predicted with the setup on, beside the same sets with plain
/// weight of the same hardest effort.
///
/// **Fails** when no setup was picked (bad input), and when the setup is too hard to lift once (no answer).
pub fn draft(request: &SessionRequest) -> Result<Draft> {
    let setup = request.setup.ok_or_else(|| {
        Error::bad(SchemeFault::NoSetup {
            method: request.method.name().to_owned(),
        })
    })?;
    check(setup)?;
    let guidance = request.guidance();
    let mut draft = request.draft(
        request.method,
        guidance.frequency(),
        Progression::PlatesFirst,
    );
    draft.sets = warm_ups(request, setup)?;
    let set = working_set(request, setup)?;
    let sets = request.sets(guidance.sets);
    draft.sets.extend(std::iter::repeat_n(set, sets as usize));
    draft.setup = Some(setup.clone());
    draft.remarks.push(Remark::Setup(SetupRemark::HardestPlace {
        effort: setup.max_effort,
        flattening_percent: setup.flattening_percent,
    }));
    draft.remarks.extend(setup.failure.map(|failure| {
        let whole = request.lift.one_rm + request.lift.body;
        Remark::Setup(SetupRemark::WhenBandsGo {
            failure,
            share: failure.after_all.as_kg() / whole.as_kg().max(1.0e-9),
            arms: setup.arms,
        })
    }));
    draft.remarks.extend(setup.plain.map(|plain| {
        Remark::Setup(SetupRemark::PlainAsHard {
            plain,
            top: setup.top,
        })
    }));
    predict_both(request, setup, &mut draft)?;
    let source = request.published.repetitions.effort_source.clone();
    draft.sources.push((PlanBasis::EffortAsShare, source));
    Ok(draft)
}

fn check(setup: &AccommodatingSetup) -> Result<()> {
    let effort = setup.max_effort;
    if !(effort.is_finite()
        && effort > 0.0
        && setup.bottom.as_kg() > 0.0
        && setup.top.as_kg().is_finite())
    {
        return Err(Error::bad(SchemeFault::EmptySetup));
    }
    if effort > 1.0 {
        return Err(Error::no_answer(SchemeFault::SetupTooHard { effort }));
    }
    Ok(())
}

fn working_set(request: &SessionRequest, setup: &AccommodatingSetup) -> Result<PlannedSet> {
    let allowed = request.chart()?.allowed_at(setup.max_effort);
    let usual = || {
        allowed
            .unwrap_or(BEYOND_CHART)
            .saturating_sub(request.reserve(RESERVE))
            .max(1)
    };
    let mut set = PlannedSet::work(
        setup.bar_and_plates.clone(),
        &request.strength(),
        request.wishes.repetitions.unwrap_or_else(usual),
        request.rest_between(setup.max_effort)?,
        SetIntent::DriveThrough,
    );
    set.effort = Some(setup.max_effort);
    set.notes.push(SetNote::Felt(felt(setup, 1.0)));
    Ok(set.keeping(request.reserve(RESERVE)))
}

/// The sets with the setup on, and with plain weight.
fn predict_both(
    request: &SessionRequest,
    setup: &AccommodatingSetup,
    draft: &mut Draft,
) -> Result<()> {
    let Some(oracle) = request.setup_oracle else {
        return Ok(());
    };
    predict_with(request, oracle, draft)?;
    if let (Some(plain), Some(oracle)) = (setup.plain, request.oracle) {
        let prediction = as_plain_sets(oracle, plain, draft)?;
        draft.predictions.push(prediction);
    }
    Ok(())
}

/// Load at the bottom, in the middle and at the top with a share of the setup's plates.
fn felt(setup: &AccommodatingSetup, share: f64) -> [Mass; 3] {
    let plates_kg = setup.bar_and_plates.total.as_kg();
    let lighter_kg = plates_kg * (1.0 - share);
    [setup.bottom, setup.middle, setup.top]
        .map(|whole| Mass::from_kg((whole.as_kg() - lighter_kg).max(0.0)))
}

/// The ladder up to the plates of the setup. The heavier steps carry the bands or chains, as far as no more than the 1RM
/// is felt with them; steps without them are no heavier than plain weight that is as hard as the work. A step that is
/// neither is left out: with bands from above the bar holds more than anybody warms up with.
fn warm_ups(request: &SessionRequest, setup: &AccommodatingSetup) -> Result<Vec<PlannedSet>> {
    let working = setup.bar_and_plates.total;
    let whole = request.lift.one_rm + request.lift.body;
    let as_hard = setup
        .plain
        .unwrap_or(whole * setup.max_effort - request.lift.body);
    let mut sets = Vec::new();
    let mut parts_are_on = false;
    for mut set in warm_up_sets(working, request.loading, &request.strength())? {
        let share = set.load.total.as_kg() / working.as_kg();
        let felt = felt(setup, share);
        let is_within = felt.iter().all(|felt| *felt <= whole);
        if share >= WITH_PARTS_FROM && set.load.use_for != LoadUse::Plain && is_within {
            parts_are_on = true;
            set.notes.push(SetNote::PartsOn {
                method: request.method,
                felt,
            });
        } else if !parts_are_on && set.load.total < as_hard {
            // Bands go on once and stay on.
            set.notes.push(SetNote::Without(request.method));
        } else {
            continue;
        }
        set.intent = SetIntent::EasyAndCrisp;
        sets.push(set);
    }
    Ok(sets)
}
