//! Overloaded lowering: slow lowering of 105 to 110 % of 1RM, spotters lifting it back.
//!
//! In: a [`SessionRequest`]. Out: a draft with loads inside the customary window, sets and repetitions that keep
//! a reserve in the fatigue model, and the reserve of every lowering; refused above the eccentric 1RM.

use super::draft::Draft;
use super::lowering_limits::{Limits, limits, lower_set, most_repetitions};
use super::lowering_remark::{LoweringLimit, LoweringRemark};
use super::method::Method;
use super::overload_ground::{
    caught, dated, held_by_hand, lost_remark, measured_remark, plates_reach, sources, tested,
    way_back,
};
use super::planned_set::{PlannedSet, SetIntent, SetKind, warm_up_sets};
use super::prediction::TiringBody;
use super::remark::{Frequency, Progression, Remark};
use super::request::SessionRequest;
use crate::error::{Error, LoweringFault, Result, SessionRefusal};
use crate::movement::{Handover, WayBack};
use crate::setups::Loading;
use crate::units::{Duration, Mass};

/// A load that is more than the 1RM, kg.
const JUST_ABOVE_KG: f64 = 0.1;

/// The window of shares: the published one, in a block up to the day's share of it.
pub(super) fn window(request: &SessionRequest) -> (f64, f64) {
    let (least, most) = request.published.eccentric.overload.shares;
    let top = request.aim.map_or(most, |aim| aim.share.clamp(least, most));
    (least, top)
}

/// Drafts overloaded lowering in a window of shares of 1RM.
///
/// **Fails** when the load asked for is above the eccentric 1RM (no answer) or not above 1RM (bad input),
/// when the gym can load nothing inside the window, and when not even one lowering keeps a reserve.
pub fn draft(request: &SessionRequest, window: (f64, f64)) -> Result<Draft> {
    let usual = way_back(request)?;
    tested(request)?;
    dated(request)?;
    caught(request)?;
    let draft = coming_back(request, window, usual)?;
    match held_by_hand(request) {
        Some((helpers, held)) if heaviest(&draft) > held => {
            if request.lift.handling.comes_down_on_body {
                let lighter = own_load(request, held, &limits(request, usual)?);
                return Err(Error::no_answer(SessionRefusal::NobodyHolds {
                    load: heaviest(&draft),
                    held: (helpers, held),
                    own: lighter,
                }));
            }
            coming_back(request, window, WayBack::OffArms)
        }
        _ => Ok(draft),
    }
}

/// The draft of loads that come back up in this way.
fn coming_back(request: &SessionRequest, window: (f64, f64), back: WayBack) -> Result<Draft> {
    let limits = limits(request, back)?;
    let loads = match request.lift.handling.overload {
        Handover::BodyOnly { .. } => body_alone(request, &limits)?,
        _ => loads(request, window, &limits)?,
    };
    let mut draft = request.draft(
        Method::OverloadedLowering,
        Frequency::OnceInPlaceOfHeavy,
        Progression::WhenLoweringsAreSlow {
            top: loads[0].total,
            most: None,
        },
    );
    let up_to = match request.lift.handling.overload {
        Handover::BodyOnly { .. } => loads[0].total,
        _ => request.lift.one_rm,
    };
    draft.sets = warm_up_sets(up_to, request.loading, &request.strength())?;
    if up_to == request.lift.one_rm {
        draft
            .sets
            .extend(first_lowering(request, &draft, limits.rest, back)?);
    }
    let mut body = TiringBody::fresh(&limits.joints);
    let is_fixed = request.wishes.load.is_some()
        || matches!(request.lift.handling.overload, Handover::BodyOnly { .. });
    for (number, wanted) in (1..).zip(&loads) {
        let current = if is_fixed {
            wanted.clone()
        } else {
            heaviest_kept(request, wanted, &limits, &body)?
        };
        let current = &current;
        let repetitions = repetitions(request, current.total, &limits, &body)?;
        let lowered = lower_set(number, repetitions, current.total, &limits, &mut body)?;
        draft.lowerings.extend(lowered);
        draft
            .sets
            .push(set(request, current, repetitions, limits.rest, back));
        body.rest(limits.rest)?;
    }
    if !matches!(request.lift.handling.overload, Handover::BodyOnly { .. }) {
        draft.progression = going_on(request, &limits, &draft);
    }
    draft.remarks = remarks(request, &limits, &draft);
    draft.sources.extend(sources(limits.table));
    Ok(draft)
}

fn set(
    request: &SessionRequest,
    load: &Loading,
    repetitions: u32,
    rest: Duration,
    back: WayBack,
) -> PlannedSet {
    let time = request.published.eccentric.lowering.time;
    let intent = SetIntent::LowerSlowly { time, back };
    let strength = request.strength();
    let mut set = PlannedSet::work(load.clone(), &strength, repetitions, rest, intent);
    set.lowering = time;
    set
}

/// The last step before loads of more than 1RM: one lowering of the heaviest that can be lifted.
fn first_lowering(
    request: &SessionRequest,
    draft: &Draft,
    rest: Duration,
    back: WayBack,
) -> Result<Option<PlannedSet>> {
    let load = request.loading.at_most(request.lift.one_rm)?;
    let is_more = draft
        .sets
        .last()
        .is_none_or(|before| before.load.total < load.total);
    Ok(is_more.then(|| PlannedSet {
        kind: SetKind::WarmUp,
        ..set(request, &load, 1, rest, back)
    }))
}

/// The body alone in every set.
fn body_alone(request: &SessionRequest, limits: &Limits<'_>) -> Result<Vec<Loading>> {
    if request.wishes.load.is_some_and(|load| load.as_kg() > 0.0) {
        return Err(Error::no_answer(SessionRefusal::BodyLoweredOnly {
            movement: request.lift.title.to_lowercase(),
        }));
    }
    let share = request.strength().share_of(Mass::ZERO);
    if share < 1.0 {
        return Err(Error::no_answer(SessionRefusal::BodyIsLifted {
            movement: request.lift.title.to_lowercase(),
            share,
        }));
    }
    let sets = planned_sets(request, limits)?;
    let body = request.loading.at_most(request.loading.lightest())?;
    Ok(vec![body; sets as usize])
}

/// Sets asked for, or those of the week of a block, or the fewest usual ones.
fn planned_sets(request: &SessionRequest, limits: &Limits<'_>) -> Result<u32> {
    let usual = limits.table.overload.sets;
    let of_week = request.aim.map_or(usual.0, |aim| aim.sets);
    let sets = request.wishes.sets.unwrap_or(of_week);
    if sets > usual.1 {
        return Err(Error::bad(LoweringFault::ManyLoweringSets { sets, usual }));
    }
    Ok(sets)
}

/// The heaviest load up to the wanted one, and above the 1RM, of which the customary repetitions keep their reserve;
/// else the heaviest of which one does.
fn heaviest_kept(
    request: &SessionRequest,
    wanted: &Loading,
    limits: &Limits<'_>,
    body: &TiringBody,
) -> Result<Loading> {
    let one_rm_kg = request.lift.one_rm.as_kg();
    let all = request.loading.all().iter().rev();
    let mut lighter: Vec<&Loading> = all
        .filter(|load| load.total.as_kg() > one_rm_kg && load.total <= wanted.total)
        .collect();
    lighter.dedup_by(|next, known| next.total == known.total);
    for least in [limits.customary.0, 1] {
        for load in &lighter {
            if most_repetitions(load.total, limits, body)? >= least {
                return Ok((*load).clone());
            }
        }
    }
    Err(limits.no_reserve(lighter.last().map_or(wanted.total, |load| load.total)))
}

/// The loads of the sets, rising through the window, or from just above the 1RM where the window is beyond the lifter.
fn loads(
    request: &SessionRequest,
    window: (f64, f64),
    limits: &Limits<'_>,
) -> Result<Vec<Loading>> {
    let sets = planned_sets(request, limits)?;
    if let Some(load) = request.wishes.load {
        let load = asked_for(request, load, limits)?;
        return Ok(vec![load; sets as usize]);
    }
    let at = |share: f64| request.strength().load_at(share);
    let top = Mass::from_kg(at(window.1).as_kg().min(limits.most().as_kg()));
    if at(window.0) > limits.most() {
        return below_window(request, sets, limits);
    }
    plates_reach(request, at(window.0))?;
    let least = request.loading.at_least(at(window.0), top).ok_or_else(|| {
        let strength = request.strength();
        Error::no_answer(LoweringFault::NothingInWindow {
            loads: (at(window.0), top),
            shares: (window.0, strength.share_of(top)),
            own: own_load(request, top, limits),
        })
    })?;
    let kept = kept_loads(request, top, limits);
    if request.aim.is_some() && kept.last().is_none_or(|load| *load < at(window.0)) {
        return below_window(request, sets, limits);
    }
    let share = |index: u32| {
        let along = if sets > 1 {
            f64::from(index) / f64::from(sets - 1)
        } else {
            0.0
        };
        window.0 + along * (window.1 - window.0)
    };
    (0..sets)
        .map(|index| {
            let kg = at(share(index)).as_kg();
            let target = Mass::from_kg(kg.clamp(least.total.as_kg(), top.as_kg()));
            request.loading.at_most(target)
        })
        .collect()
}

/// The loads where the window is beyond the lifter: from just above the 1RM up to the most that keeps a reserve. In a block they rise
/// over its weeks as the window would.
fn below_window(request: &SessionRequest, sets: u32, limits: &Limits<'_>) -> Result<Vec<Loading>> {
    let just_above = Mass::from_kg(request.lift.one_rm.as_kg() + JUST_ABOVE_KG);
    plates_reach(request, just_above)?;
    let kept = kept_loads(request, limits.most(), limits);
    let Some(last) = kept.len().checked_sub(1) else {
        return Err(limits.no_reserve(just_above));
    };
    let (least, most) = limits.table.overload.shares;
    let along = request.aim.map_or(1.0, |aim| {
        ((aim.share - least) / (most - least)).clamp(0.0, 1.0)
    });
    let load = kept[(along * last as f64).round() as usize];
    Ok(vec![request.loading.at_most(load)?; sets as usize])
}

/// The loads above the 1RM and up to a bound that can be set up and of which the customary lowerings keep their reserve, else those of
/// which one does; the lightest first.
fn kept_loads(request: &SessionRequest, top: Mass, limits: &Limits<'_>) -> Vec<Mass> {
    let all = request.loading.all().iter().map(|load| load.total);
    let above = all.filter(|load| *load > request.lift.one_rm && *load <= top);
    let fresh = TiringBody::fresh(&limits.joints);
    let most = |load: Mass| most_repetitions(load, limits, &fresh).unwrap_or(0);
    let counted: Vec<(Mass, u32)> = above.map(|load| (load, most(load))).collect();
    let customary = counted.iter().any(|(_, most)| *most >= limits.customary.0);
    let least = if customary { limits.customary.0 } else { 1 };
    let kept = counted.into_iter().filter(|(_, most)| *most >= least);
    let mut kept: Vec<Mass> = kept.map(|(load, _)| load).collect();
    kept.sort_by(|a, b| a.as_kg().total_cmp(&b.as_kg()));
    kept.dedup();
    kept
}

/// The heaviest load of a draft.
fn heaviest(draft: &Draft) -> Mass {
    let loads = draft.sets.iter().map(|set| set.load.total);
    loads.fold(Mass::ZERO, Mass::max)
}

/// One step more, as far as a lowering keeps its reserve.
fn going_on(request: &SessionRequest, limits: &Limits<'_>, draft: &Draft) -> Progression {
    let top = heaviest(draft);
    let most = own_load(request, limits.eccentric_one_rm, limits);
    Progression::WhenLoweringsAreSlow {
        top,
        most: Some(most.unwrap_or(top)),
    }
}

/// The heaviest load above the 1RM and up to a bound that can be set up and of which one lowering keeps its reserve.
fn own_load(request: &SessionRequest, top: Mass, limits: &Limits<'_>) -> Option<Mass> {
    let all = request.loading.all().iter().map(|load| load.total);
    let above = all.filter(|load| *load > request.lift.one_rm && *load <= top);
    let fresh = TiringBody::fresh(&limits.joints);
    let kept =
        above.filter(|load| most_repetitions(*load, limits, &fresh).is_ok_and(|most| most > 0));
    kept.max_by(|a, b| a.as_kg().total_cmp(&b.as_kg()))
}

fn asked_for(request: &SessionRequest, load: Mass, limits: &Limits<'_>) -> Result<Loading> {
    if load.as_kg() > limits.eccentric_one_rm.as_kg() {
        let (least, most) = limits.table.overload.shares;
        let at = |share: f64| request.strength().load_at(share);
        let top = Mass::from_kg(at(most).as_kg().min(limits.most().as_kg()));
        // Only what can be set up here and is accepted is named: in the window, else below it.
        let kept = kept_loads(request, top, limits);
        let inside = kept.iter().copied().find(|load| *load >= at(least));
        let first = inside.or(kept.last().copied());
        return Err(Error::no_answer(LoweringFault::AboveLowering {
            load,
            limit: limits.eccentric_one_rm,
            ratio: limits.ratio(),
            who: limits.measured_on.clone(),
            low_end: limits.low_end,
            stay: first.zip(kept.last().copied()),
        }));
    }
    let loaded = request.loading.at_most(load)?;
    if loaded.total.as_kg() <= request.lift.one_rm.as_kg() {
        return Err(Error::bad(LoweringFault::NoOverload {
            load: loaded.total,
            one_rm: request.lift.one_rm,
        }));
    }
    Ok(loaded)
}

fn repetitions(
    request: &SessionRequest,
    load: Mass,
    limits: &Limits<'_>,
    body: &TiringBody,
) -> Result<u32> {
    let most = most_repetitions(load, limits, body)?;
    if most == 0 {
        return Err(limits.no_reserve(load));
    }
    Ok(request.wishes.repetitions.unwrap_or(most).min(most))
}

fn remarks(request: &SessionRequest, limits: &Limits<'_>, draft: &Draft) -> Vec<Remark> {
    let overload = &limits.table.overload;
    let mut remarks = vec![Remark::Lowering(LoweringRemark::Limit(LoweringLimit {
        most: limits.eccentric_one_rm,
        ratio: limits.ratio(),
        who: limits.measured_on.clone(),
    }))];
    remarks.extend(measured_remark(
        request,
        limits.table,
        limits.measured_on.is_some(),
    ));
    let low_end = request.lift.range().copied();
    remarks.extend(low_end.map(|range| Remark::Lowering(LoweringRemark::LowEnd(range))));
    remarks.extend(lost_remark(request, limits.back, heaviest(draft)));
    let customary = limits.customary;
    let unusual = |set: &PlannedSet| {
        set.share > 1.0 && !(customary.0..=customary.1).contains(&set.repetitions())
    };
    if draft.sets.iter().any(unusual) {
        remarks.push(Remark::Lowering(LoweringRemark::FewLowerings { customary }));
    }
    let below = |set: &PlannedSet| set.share > 1.0 && set.share < overload.shares.0 - 1e-9;
    if draft.sets.iter().any(below) {
        remarks.push(Remark::Lowering(LoweringRemark::BelowWindow));
    }
    let above = |set: &PlannedSet| set.share > overload.shares.1 + 1e-9;
    if draft.sets.iter().any(above) {
        remarks.push(Remark::Lowering(LoweringRemark::AboveWindow));
    }
    remarks.push(Remark::Lowering(LoweringRemark::NoMuscleDamage));
    remarks
}
