//! Overloaded lowering: slow lowering of 105 to 110 % of 1RM, spotters lifting it back.
//!
//! In: a [`SessionRequest`]. Out: a draft with loads inside the customary window, sets and repetitions that keep
//! a reserve in the fatigue model, and the reserve of every lowering; refused above the eccentric 1RM.

use super::draft::{Draft, LoweringPrediction};
use super::fatigue::{FatigueJoint, TiringJoint};
use super::method::Method;
use super::planned_set::{PlannedSet, SetIntent, warm_up_sets};
use super::prediction::TiringBody;
use super::published::EccentricTable;
use super::remark::{Frequency, LoweringLimit, LoweringRemark, PlanBasis, Progression, Remark};
use super::request::{SessionRequest, found};
use super::rests::checked_between_sets;
use super::strength::PlannedLift;
use crate::error::{Error, LoweringFault, Result, SessionRefusal};
use crate::movement::{Handover, NoHandover, WayBack};
use crate::setups::Loading;
use crate::source::Source;
use crate::units::{Duration, Length, Mass};

/// Time in which the spotters lift the bar back and the lifter sets again, s (assumed: two calm breaths).
const LIFT_BACK_S: f64 = 6.0;

/// What the lowering is planned against.
struct Limits<'a> {
    table: &'a EccentricTable,
    eccentric_one_rm: Mass,
    /// On whom it was measured; nobody where it is simulated.
    measured_on: Option<String>,
    one_rm: Mass,
    body: Mass,
    evenness: f64,
    joints: Vec<TiringJoint>,
    travel: Option<Length>,
    rest: Duration,
}

/// Drafts overloaded lowering in a window of shares of 1RM.
///
/// **Fails** when the load asked for is above the eccentric 1RM (no answer) or not above 1RM (bad input),
/// when the gym can load nothing inside the window, and when not even one lowering keeps a reserve.
pub fn draft(request: &SessionRequest, window: (f64, f64)) -> Result<Draft> {
    let back = way_back(request)?;
    let limits = limits(request)?;
    let loads = loads(request, window, &limits)?;
    let mut draft = request.draft(
        Method::OverloadedLowering,
        Frequency::OnceInPlaceOfHeavy,
        Progression::WhenLoweringsAreSlow,
    );
    draft.sets = warm_up_sets(request.lift.one_rm, request.loading, &request.strength())?;
    let mut body = TiringBody::fresh(&limits.joints);
    let mut current = &loads[0];
    for (number, wanted) in (1..).zip(&loads) {
        if most_repetitions(wanted.total, &limits, &body)? >= limits.table.overload.repetitions.0 {
            current = wanted;
        }
        let repetitions = repetitions(request, current.total, &limits, &body)?;
        let lowered = lower_set(number, repetitions, current.total, &limits, &mut body)?;
        draft.lowerings.extend(lowered);
        draft
            .sets
            .push(set(request, current, repetitions, limits.rest, back));
        body.rest(limits.rest)?;
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

/// How the load comes back up.
///
/// **Fails** where nobody can hand more than 1RM over.
fn way_back(request: &SessionRequest) -> Result<WayBack> {
    match request.lift.handling.overload {
        Handover::Yes { back, .. } => Ok(back),
        Handover::No(why) => Err(Error::no_answer(SessionRefusal::NotHandedOver {
            movement: request.lift.movement.clone(),
            bent_over: why == NoHandover::BentOver,
        })),
    }
}

fn limits<'a>(request: &SessionRequest<'a>) -> Result<Limits<'a>> {
    let table = &request.published.eccentric;
    let rest = match request.wishes.rest_between {
        Some(rest) => checked_between_sets(rest)?,
        None => request.published.rests.heavy.most,
    };
    Ok(match request.oracle {
        Some(oracle) => Limits {
            table,
            eccentric_one_rm: believed(table, &request.lift, oracle.eccentric_one_rm),
            measured_on: oracle.eccentric_of.clone(),
            one_rm: request.lift.one_rm,
            body: request.lift.body,
            evenness: oracle.lowering_evenness.unwrap_or(1.0),
            joints: oracle.joints.clone(),
            travel: oracle.travel,
            rest,
        },
        None => Limits {
            table,
            eccentric_one_rm: table.eccentric_one_rm(request.lift.one_rm, request.lift.body),
            measured_on: Some(table.planning().who.clone()),
            one_rm: request.lift.one_rm,
            body: request.lift.body,
            evenness: 1.0,
            // The general published values stand for joints that nobody names (assumed).
            joints: vec![request.published.fatigue.tiring(FatigueJoint::General)],
            travel: None,
            rest,
        },
    })
}

/// The lifter's own limit as far as anybody was measured.
fn believed(table: &EccentricTable, lift: &PlannedLift, own: Mass) -> Mass {
    let highest = table.highest_one_rm(lift.one_rm, lift.body);
    Mass::from_kg(own.as_kg().min(highest.as_kg()))
}

/// The loads of the sets, rising through the window.
fn loads(
    request: &SessionRequest,
    window: (f64, f64),
    limits: &Limits<'_>,
) -> Result<Vec<Loading>> {
    let usual = limits.table.overload.sets;
    let (fewest, most) = usual;
    let sets = request.wishes.sets.unwrap_or(fewest);
    if sets > most {
        return Err(Error::bad(LoweringFault::ManyLoweringSets { sets, usual }));
    }
    if let Some(load) = request.wishes.load {
        let load = asked_for(request, load, limits)?;
        return Ok(vec![load; sets as usize]);
    }
    let at = |share: f64| request.strength().load_at(share);
    let top = Mass::from_kg(at(window.1).as_kg().min(limits.eccentric_one_rm.as_kg()));
    if at(window.0) > top {
        return Err(Error::no_answer(LoweringFault::NoReserve {
            load: at(window.0),
            limit: limits.eccentric_one_rm,
            ratio: limits.ratio(),
            who: limits.measured_on.clone(),
        }));
    }
    let least = request.loading.at_least(at(window.0), top).ok_or_else(|| {
        Error::no_answer(LoweringFault::NothingInWindow {
            loads: (at(window.0), top),
            shares: window,
        })
    })?;
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

fn asked_for(request: &SessionRequest, load: Mass, limits: &Limits<'_>) -> Result<Loading> {
    if load.as_kg() > limits.eccentric_one_rm.as_kg() {
        let (least, most) = limits.table.overload.shares;
        let at = |share: f64| request.strength().load_at(share);
        return Err(Error::no_answer(LoweringFault::AboveLowering {
            load,
            limit: limits.eccentric_one_rm,
            ratio: limits.ratio(),
            who: limits.measured_on.clone(),
            stay: (at(least), at(most)),
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

/// Effort of a lowering: load over what could still be lowered under control.
///
/// ```text
/// effort = load / (eccentric 1RM · c)      c = smallest remaining share of capacity at the end
/// ```
/// The muscles tire like in a lift of the mean effort times [`EccentricTable::lowering_cost`]; load and limit hold the
/// body mass that is part of them.
fn lower_once(load: Mass, limits: &Limits<'_>, body: &mut TiringBody) -> Result<f64> {
    let fresh_effort = limits.share_of(load, limits.eccentric_one_rm);
    let count = body.shares().len();
    let share = (fresh_effort * limits.evenness).min(1.0) * limits.table.lowering_cost();
    let time = limits.table.lowering.time;
    body.work(std::iter::repeat_n(share, count), time)?;
    Ok(fresh_effort / body.smallest_share())
}

impl Limits<'_> {
    fn share_of(&self, load: Mass, limit: Mass) -> f64 {
        (load + self.body).as_kg() / (limit + self.body).as_kg()
    }

    /// What can be lowered over what can be lifted.
    fn ratio(&self) -> f64 {
        self.share_of(self.eccentric_one_rm, self.one_rm)
    }
}

fn lower_set(
    set: u32,
    repetitions: u32,
    load: Mass,
    limits: &Limits<'_>,
    body: &mut TiringBody,
) -> Result<Vec<LoweringPrediction>> {
    let lowering_s = limits.table.lowering.time.as_s();
    (1..=repetitions)
        .map(|number| {
            if number > 1 {
                body.rest(Duration::from_s(LIFT_BACK_S))?;
            }
            let effort = lower_once(load, limits, body)?;
            Ok(LoweringPrediction {
                set,
                number,
                effort,
                reserve: 1.0 - effort,
                speed_m_s: limits.travel.map(|travel| travel.as_m() / lowering_s),
            })
        })
        .collect()
}

/// Lowerings that stay under control to their end, up to the customary most.
fn most_repetitions(load: Mass, limits: &Limits<'_>, body: &TiringBody) -> Result<u32> {
    let (_, most) = limits.table.overload.repetitions;
    let tried = lower_set(1, most, load, limits, &mut body.clone())?;
    let controlled = |lowering: &&LoweringPrediction| lowering.reserve >= 0.0;
    Ok(tried.iter().take_while(controlled).count() as u32)
}

fn repetitions(
    request: &SessionRequest,
    load: Mass,
    limits: &Limits<'_>,
    body: &TiringBody,
) -> Result<u32> {
    let most = most_repetitions(load, limits, body)?;
    if most == 0 {
        return Err(Error::no_answer(LoweringFault::NoReserve {
            load,
            limit: limits.eccentric_one_rm,
            ratio: limits.ratio(),
            who: limits.measured_on.clone(),
        }));
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
    remarks.extend(measured_remark(request, limits));
    let customary = overload.repetitions;
    let unusual = |set: &PlannedSet| {
        set.share > 1.0 && !(customary.0..=customary.1).contains(&set.repetitions())
    };
    if draft.sets.iter().any(unusual) {
        remarks.push(Remark::Lowering(LoweringRemark::FewLowerings { customary }));
    }
    let above = |set: &PlannedSet| set.share > overload.shares.1 + 1e-9;
    if draft.sets.iter().any(above) {
        remarks.push(Remark::Lowering(LoweringRemark::AboveWindow));
    }
    remarks.push(Remark::Lowering(LoweringRemark::NoMuscleDamage));
    remarks
}

/// What the measured ratio would make of the limit, where a simulated one is planned with.
fn measured_remark(request: &SessionRequest, limits: &Limits<'_>) -> Option<Remark> {
    let planning = limits.table.planning();
    let table = limits.table;
    limits.measured_on.is_none().then(|| {
        Remark::Lowering(LoweringRemark::MeasuredLimit(LoweringLimit {
            most: table.eccentric_one_rm(request.lift.one_rm, request.lift.body),
            ratio: planning.ratio,
            who: Some(planning.who.clone()),
        }))
    })
}

fn sources(table: &EccentricTable) -> impl Iterator<Item = (PlanBasis, Source)> {
    let numbers = [
        (PlanBasis::OverloadWindow, table.overload.source.clone()),
        (PlanBasis::EccentricLimit, table.planning().source.clone()),
        (PlanBasis::LoweringCost, table.efficiency.source.clone()),
    ];
    numbers.into_iter().chain(table.studies.iter().map(found))
}
