//! Bands and chains: the best setup of the gym, turned into sets with warm-ups that lead up to it.
//!
//! In: a [`SessionRequest`] with the setup that was picked and how hard it is. Out: a draft with the loads at
//! the bottom and at the top of every set.

use super::accommodating_setup::AccommodatingSetup;
use super::draft::{Draft, heaviest_share};
use super::planned_set::{PlannedSet, SetIntent, SetKind, SetNote};
use super::predicted_sets::{as_plain_sets, predict_with};
use super::remark::{Frequency, PlanBasis, Progression, Remark, SetupRemark};
use super::request::SessionRequest;
use super::straight::RESERVE;
use super::warm_up::{CLOSEST_SHARE, quick_load, quick_load_beside_pieces, steps};
use crate::error::{Error, Result, SchemeFault};
use crate::units::{Duration, Mass};

/// Step of the ladder from which the bands or chains are on, share of the work (common practice: the last steps rehearse
/// the setup).
const WITH_PARTS_FROM: f64 = 0.5;
/// Least share of what is felt of the work that a step with bands from above leaves on the lifter everywhere (assumed: a
/// bar that bands nearly carry rehearses nothing).
const LEAST_FELT: f64 = 0.2;

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
    let eased = request
        .aim
        .map(|aim| setup.eased_to(aim.share, &request.strength(), request.loading));
    let setup = eased.as_ref().unwrap_or(setup);
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
    if heaviest_share(&draft) > 1.0 {
        // The caution that goes with it says so too.
        draft.frequency = Frequency::OnceInPlaceOfHeavy;
    }
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
        request
            .wishes
            .repetitions
            .or(request.aim.map(|aim| aim.repetitions))
            .unwrap_or_else(usual),
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

/// The ladder up to the setup, as long as the most that is felt asks for: plain steps are of the load that is as hard as the
/// work. The heavier ones carry the bands or chains and steps of the most that is felt, never of more than the 1RM, so that they
/// are easier than the work everywhere.
fn warm_ups(request: &SessionRequest, setup: &AccommodatingSetup) -> Result<Vec<PlannedSet>> {
    let (strength, body) = (request.strength(), request.lift.body);
    let working_kg = setup.bar_and_plates.total.as_kg();
    let as_hard = setup.as_hard(&strength);
    let whole_kg = (as_hard + body).as_kg();
    let closest_kg = CLOSEST_SHARE * whole_kg;
    let most_felt_kg = felt(setup, 1.0)
        .map(Mass::as_kg)
        .into_iter()
        .fold(0.0, f64::max);
    let one_rm_kg = (request.lift.one_rm + body).as_kg();
    let hardest = setup.max_effort.max(most_felt_kg / one_rm_kg);
    let mut sets: Vec<PlannedSet> = Vec::new();
    let mut parts_are_on = false;
    for &(share, repetitions, rest_s) in steps(hardest, whole_kg) {
        let plain_kg = share * whole_kg - body.as_kg();
        let beside_kg = working_kg - (most_felt_kg - (share * most_felt_kg).min(one_rm_kg));
        let with_parts = (share >= WITH_PARTS_FROM && beside_kg > 0.0)
            .then(|| quick_load_beside_pieces(request.loading, beside_kg, whole_kg))
            .flatten()
            .filter(|load| is_carried(setup, load.total));
        let is_first_with = with_parts.is_some() && !parts_are_on;
        let load = match with_parts {
            Some(load) => load,
            // Bands go on once and stay on.
            None if parts_are_on => continue,
            None => {
                let lightest_kg = request.loading.lightest().as_kg();
                quick_load(request.loading, plain_kg.max(lightest_kg), whole_kg)?
            }
        };
        let kg = load.total.as_kg();
        let is_clear = sets
            .last()
            .is_none_or(|before| is_first_with || kg >= before.load.total.as_kg() + closest_kg);
        parts_are_on |= is_first_with;
        let most_kg = if parts_are_on {
            working_kg
        } else {
            as_hard.as_kg()
        };
        if is_clear && kg <= most_kg - closest_kg {
            let rest = Duration::from_s(rest_s);
            let intent = SetIntent::EasyAndCrisp;
            let mut set = PlannedSet::work(load, &strength, repetitions, rest, intent);
            set.kind = SetKind::WarmUp;
            set.notes.push(match parts_are_on {
                true => SetNote::PartsOn {
                    method: request.method,
                    felt: felt(setup, kg / working_kg),
                },
                false => SetNote::Without(request.method),
            });
            sets.push(set);
        }
    }
    Ok(sets)
}

/// Whether the bar with so much on it hangs on the lifter everywhere: bands from above carry the rest.
fn is_carried(setup: &AccommodatingSetup, plates: Mass) -> bool {
    let lighter_kg = (setup.bar_and_plates.total - plates).as_kg();
    let felt = [setup.bottom, setup.middle, setup.top];
    felt.iter()
        .all(|felt| felt.as_kg() - lighter_kg >= LEAST_FELT * felt.as_kg())
}
