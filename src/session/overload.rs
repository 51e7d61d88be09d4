//! Overloaded lowering: slow lowering of 105 to 110 % of 1RM, spotters lifting it back.
//!
//! In: a [`Request`]. Out: a draft with loads inside the customary window, sets and repetitions that keep
//! a reserve in the fatigue model, and the reserve of every lowering; refused above the eccentric 1RM.

use super::cautions::{NOT_HANDED_OVER, help};
use super::eccentric::{
    LOWERING_COST, LOWERING_COST_ORIGIN, LOWERING_S, OVERLOAD_PRACTICE, PLANNING, eccentric_one_rm,
};
use super::fatigue::FatigueJoint;
use super::method::Method;
use super::plan::{Draft, Lifting, LoweringPrediction, PlannedSet, Tempo, warm_up_sets};
use super::prediction::Body;
use super::rests::{HEAVY, checked_between_sets};
use super::schemes::Request;
use crate::error::{Error, Result};
use crate::progress::origin::Origin;
use crate::setups::Loading;
use crate::units::{Duration, Length, Mass, rounded};

/// Time in which the spotters lift the bar back and the lifter sets again, s (assumed: two calm breaths).
const LIFT_BACK_S: f64 = 6.0;

/// Joints that tire when no simulated repetition names them (assumed: the general published values).
const JOINTS: &[FatigueJoint] = &[FatigueJoint::General];

/// What the lowering is planned against.
struct Limits {
    eccentric_one_rm: Mass,
    described: String,
    simulated: Option<Mass>,
    body: Mass,
    evenness: f64,
    joints: Vec<FatigueJoint>,
    travel: Option<Length>,
    rest: Duration,
}

/// Drafts overloaded lowering in a window of shares of 1RM.
///
/// **Fails** when the load asked for is above the eccentric 1RM (no answer) or not above 1RM (bad input),
/// when the gym can load nothing inside the window, and when not even one lowering keeps a reserve.
pub fn draft(request: &Request, window: (f64, f64)) -> Result<Draft> {
    check_movement(request.movement)?;
    let limits = limits(request)?;
    let loads = loads(request, window, &limits)?;
    let mut draft = request.draft(Method::OverloadedLowering);
    let mut body = Body::fresh(&limits.joints);
    let tempo = Tempo {
        lowering: Duration::from_s(LOWERING_S),
        pause: Duration::ZERO,
        lifting: Lifting::BySpotters,
    };
    let mut current = loads[0].clone();
    let mut work = Vec::new();
    for (number, wanted) in (1..).zip(&loads) {
        if most_repetitions(wanted.total, &limits, &body)? >= OVERLOAD_PRACTICE.repetitions.0 {
            current = wanted.clone();
        }
        let repetitions = repetitions(request, current.total, &limits, &body)?;
        draft.lowerings.extend(lower_set(
            number,
            repetitions,
            current.total,
            &limits,
            &mut body,
        )?);
        let intent = format!("lower in {LOWERING_S} s, {}", help(request.movement).back);
        work.push(PlannedSet::work(
            current.clone(),
            &request.strength(),
            repetitions,
            limits.rest,
            tempo,
            &intent,
        ));
        body.rest(limits.rest)?;
    }
    draft.sets = warm_up_sets(request.one_rm, request.loading, &request.strength())?;
    draft.sets.append(&mut work);
    describe(request, &limits, &mut draft);
    Ok(draft)
}

/// **Fails** where nobody can hand more than 1RM over.
fn check_movement(movement: &str) -> Result<()> {
    match NOT_HANDED_OVER.iter().find(|(name, _)| *name == movement) {
        None => Ok(()),
        Some((_, reason)) => Err(Error::no_answer(format!(
            "no overloaded lowering is planned for the {}: {reason}",
            movement.replace('-', " ")
        ))
        .hint("train it with straight sets, a pyramid or clusters")),
    }
}

fn limits(request: &Request) -> Result<Limits> {
    let rest = match request.rest_between {
        Some(rest) => checked_between_sets(rest)?,
        None => Duration::from_s(HEAVY.most_s),
    };
    Ok(match request.oracle {
        Some(oracle) => Limits {
            eccentric_one_rm: oracle.eccentric_one_rm,
            described: oracle.eccentric_described.clone(),
            simulated: oracle.simulated_eccentric,
            body: request.body,
            evenness: oracle.lowering_evenness.unwrap_or(1.0),
            joints: oracle.joints.clone(),
            travel: oracle.travel,
            rest,
        },
        None => Limits {
            eccentric_one_rm: eccentric_one_rm(request.one_rm, request.body),
            described: format!("{} × 1RM, {}", PLANNING.ratio, PLANNING.who),
            simulated: None,
            body: request.body,
            evenness: 1.0,
            joints: JOINTS.to_vec(),
            travel: None,
            rest,
        },
    })
}

/// The loads of the sets, rising through the window.
fn loads(request: &Request, window: (f64, f64), limits: &Limits) -> Result<Vec<Loading>> {
    let (fewest, most) = OVERLOAD_PRACTICE.sets;
    let sets = request.sets.unwrap_or(fewest);
    if sets > most {
        return Err(
            Error::bad(format!("{sets} sets of overloaded lowering are too many"))
                .hint(format!("{fewest} to {most} sets")),
        );
    }
    if let Some(load) = request.load {
        let load = asked_for(request, load, limits)?;
        return Ok(vec![load; sets as usize]);
    }
    let at = |share: f64| request.strength().load_at(share);
    let top = Mass::from_kg(at(window.1).as_kg().min(limits.eccentric_one_rm.as_kg()));
    let least = request.loading.at_least(at(window.0), top).ok_or_else(|| {
        Error::no_answer(format!(
            "this gym can load nothing between {} and {} ({} to {} % of 1RM)",
            request.words(at(window.0)),
            request.words(top),
            rounded(100.0 * window.0, 0),
            rounded(100.0 * window.1, 0)
        ))
        .hint("smaller plates or steps, or a load of your own above the 1RM: --load")
    })?;
    (0..sets)
        .map(|index| {
            let along = if sets > 1 {
                f64::from(index) / f64::from(sets - 1)
            } else {
                0.0
            };
            let target = at(window.0 + along * (window.1 - window.0));
            let target = Mass::from_kg(target.as_kg().clamp(least.total.as_kg(), top.as_kg()));
            request.loading.at_most(target)
        })
        .collect()
}

fn asked_for(request: &Request, load: Mass, limits: &Limits) -> Result<Loading> {
    if load.as_kg() > limits.eccentric_one_rm.as_kg() {
        return Err(Error::no_answer(format!(
            "{} is above what this lifter can lower under control: {} ({})",
            request.words(load),
            request.words(limits.eccentric_one_rm),
            limits.described
        ))
        .hint(format!(
            "stay between {} and {}",
            request.words(request.strength().load_at(OVERLOAD_PRACTICE.shares.0)),
            request.words(request.strength().load_at(OVERLOAD_PRACTICE.shares.1))
        )));
    }
    let loaded = request.loading.at_most(load)?;
    if loaded.total.as_kg() <= request.one_rm.as_kg() {
        return Err(Error::bad(format!(
            "{} is not more than the 1RM of {}: there is no overload in lowering it",
            request.words(loaded.total),
            request.words(request.one_rm)
        ))
        .hint("use straight sets, a pyramid or clusters for loads that can be lifted"));
    }
    Ok(loaded)
}

/// Effort of a lowering: load over what could still be lowered under control.
///
/// ```text
/// effort = load / (eccentric 1RM · c)      c = smallest remaining share of capacity at the end
/// ```
/// The muscles tire like in a lift of the mean effort times [`LOWERING_COST`]; load and limit hold the
/// body mass that is part of them.
fn lower_once(load: Mass, limits: &Limits, body: &mut Body) -> Result<f64> {
    let fresh_effort = limits.share_of(load, limits.eccentric_one_rm);
    let count = body.shares().len();
    let share = (fresh_effort * limits.evenness).min(1.0) * LOWERING_COST;
    body.work(
        std::iter::repeat_n(share, count),
        Duration::from_s(LOWERING_S),
    )?;
    Ok(fresh_effort / body.smallest_share())
}

impl Limits {
    fn share_of(&self, load: Mass, limit: Mass) -> f64 {
        (load + self.body).as_kg() / (limit + self.body).as_kg()
    }

    /// The measured limit over the simulated one: what turns one effort into the other.
    fn measured_over_simulated(&self) -> Option<f64> {
        self.simulated
            .map(|simulated| self.share_of(self.eccentric_one_rm, simulated))
    }
}

fn lower_set(
    set: u32,
    repetitions: u32,
    load: Mass,
    limits: &Limits,
    body: &mut Body,
) -> Result<Vec<LoweringPrediction>> {
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
                simulated_effort: limits.measured_over_simulated().map(|ratio| effort * ratio),
                speed_m_s: limits.travel.map(|travel| travel.as_m() / LOWERING_S),
            })
        })
        .collect()
}

/// Lowerings of a load one after the other by a rested lifter, the first that is not controlled to its
/// end as the last, 30 at most.
///
/// **Fails** when a load is none.
pub fn lowerings_to_failure(
    load: Mass,
    eccentric_one_rm: Mass,
    joints: &[FatigueJoint],
) -> Result<Vec<LoweringPrediction>> {
    let limits = Limits {
        eccentric_one_rm,
        described: String::new(),
        simulated: None,
        body: Mass::ZERO,
        evenness: 1.0,
        joints: joints.to_vec(),
        travel: None,
        rest: Duration::ZERO,
    };
    let mut lowerings = lower_set(1, 30, load, &limits, &mut Body::fresh(joints))?;
    if let Some(lost) = lowerings.iter().position(|lowering| lowering.reserve < 0.0) {
        lowerings.truncate(lost + 1);
    }
    Ok(lowerings)
}

/// Lowerings that stay under control to their end, up to the customary most; not more than the customary
/// fewest once the simulation says that control is lost, although people are measured stronger.
fn most_repetitions(load: Mass, limits: &Limits, body: &Body) -> Result<u32> {
    let (fewest, most) = OVERLOAD_PRACTICE.repetitions;
    let tried = lower_set(1, most, load, limits, &mut body.clone())?;
    let controlled = |lowering: &&LoweringPrediction| {
        let simulated = lowering.simulated_effort.is_none_or(|effort| effort <= 1.0);
        lowering.reserve >= 0.0 && (simulated || lowering.number <= fewest)
    };
    Ok(tried.iter().take_while(controlled).count() as u32)
}

fn repetitions(request: &Request, load: Mass, limits: &Limits, body: &Body) -> Result<u32> {
    let most = most_repetitions(load, limits, body)?;
    if most == 0 {
        return Err(Error::no_answer(format!(
            "not even one lowering of {} keeps a reserve against {} ({})",
            request.words(load),
            request.words(limits.eccentric_one_rm),
            limits.described
        ))
        .hint("take less, or straight sets"));
    }
    Ok(request.repetitions.unwrap_or(most).min(most))
}

/// What the simulation says of the limit, and why the measured one is planned with.
fn simulated_remark(request: &Request, limits: &Limits) -> Option<String> {
    let simulated = limits
        .simulated
        .filter(|simulated| *simulated < limits.eccentric_one_rm)?;
    let words = request.words(simulated);
    let planned = "the limit planned with is the measured ratio";
    Some(
        if request.strength().share_of(simulated) >= OVERLOAD_PRACTICE.shares.0 {
            format!(
                "The simulated lowering of {LOWERING_S} s is controlled up to {words}: {planned}, and sets end early where \
             the simulation loses control. Start at the low end."
            )
        } else {
            format!(
                "The simulated lowering of {LOWERING_S} s is controlled up to {words} only, because an even lowering cannot \
             swing through the weakest place as a lift can: {planned}. Start at the low end, and lighter still at first."
            )
        },
    )
}

fn describe(request: &Request, limits: &Limits, draft: &mut Draft) {
    let (fewest, most) = OVERLOAD_PRACTICE.repetitions;
    draft.frequency = "at most once a week, in place of a heavy day".to_owned();
    draft.progression =
        "Add the smallest step only when every lowering of the last session took its full time."
            .to_owned();
    draft.remarks.push(format!(
        "Limit of the lowering: {} ({}).",
        request.words(limits.eccentric_one_rm),
        limits.described
    ));
    draft.remarks.extend(simulated_remark(request, limits));
    let planned =
        |set: &PlannedSet| set.share > 1.0 && !(fewest..=most).contains(&set.repetitions());
    if draft.sets.iter().any(planned) {
        draft.remarks.push(format!(
            "Fewer than the customary {fewest} to {most} repetitions: more would not keep a reserve in the fatigue model."
        ));
    }
    if draft
        .sets
        .iter()
        .any(|set| set.share > OVERLOAD_PRACTICE.shares.1 + 1e-9)
    {
        draft
            .remarks
            .push("The load is above the customary 105 to 110 % of 1RM.".to_owned());
    }
    draft.remarks.push(
        "The fatigue model knows nothing of muscle damage: soreness and loss of strength over the next days are not in it."
            .to_owned(),
    );
    draft.sources.extend([
        (
            "105 to 110 %, 3 to 5 repetitions, 3 to 4 sets, once a week".to_owned(),
            OVERLOAD_PRACTICE.origin,
        ),
        ("eccentric limit".to_owned(), PLANNING.origin),
        (
            "how much a lowering tires against a lift".to_owned(),
            LOWERING_COST_ORIGIN,
        ),
        (
            "1RM rose when lowering 105 % just before (Doan et al. 2002)".to_owned(),
            Origin::Read("doan_2002", "abstract"),
        ),
        (
            "1RM fell after lowering 105 to 120 % (Ojasto & Häkkinen 2009): the two disagree"
                .to_owned(),
            Origin::Read(
                "ojasto_hakkinen_2009",
                "as quoted by Taber et al. 2021; the middle load from memory",
            ),
        ),
    ]);
}
