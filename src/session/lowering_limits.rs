//! What lowering more than the 1RM is held against: the most that can be lowered, and how lowerings tire.
//!
//! In: a [`SessionRequest`], how loads come back up. Out: [`Limits`]; sets of lowerings with the reserve of each.

use super::draft::LoweringPrediction;
use super::fatigue::{FatigueJoint, TiringJoint};
use super::overload_ground::{at_low_end, believed};
use super::prediction::TiringBody;
use super::published::EccentricTable;
use super::request::SessionRequest;
use super::rests::checked_between_sets;
use super::strength::SimulatedRange;
use crate::error::{Error, LoweringFault, Result};
use crate::movement::WayBack;
use crate::units::{Duration, Length, Mass};

/// Time in which the spotters lift the bar back and the lifter sets again, s (assumed: two calm breaths).
const LIFT_BACK_S: f64 = 6.0;

/// Share of what can be lowered under control that every lowering keeps back (assumed: a trained lifter's maximum differs
/// by some 2 to 4 % from day to day, from memory; spotters and arms are there for the rest).
pub const LEAST_RESERVE: f64 = 0.03;

/// What the lowering is planned against.
pub(super) struct Limits<'a> {
    pub(super) table: &'a EccentricTable,
    pub(super) eccentric_one_rm: Mass,
    /// On whom it was measured; nobody where it is simulated.
    pub(super) measured_on: Option<String>,
    /// The low end of the 1RM whose limit it is, where that is known.
    pub(super) low_end: Option<Mass>,
    pub(super) one_rm: Mass,
    pub(super) body: Mass,
    pub(super) evenness: f64,
    pub(super) joints: Vec<TiringJoint>,
    pub(super) travel: Option<Length>,
    pub(super) rest: Duration,
    /// How the load comes back up.
    pub(super) back: WayBack,
    /// Fewest and most lowerings of a set.
    pub(super) customary: (u32, u32),
}

/// The limits of a request whose loads come back up in this way.
///
/// **Fails** on a rest that is none.
pub(super) fn limits<'a>(request: &SessionRequest<'a>, back: WayBack) -> Result<Limits<'a>> {
    let table = &request.published.eccentric;
    let rest = match request.wishes.rest_between {
        Some(rest) => checked_between_sets(rest)?,
        None => request.published.rests.heavy.most,
    };
    let lift = &request.lift;
    let held = |limit: Mass| at_low_end(lift, limit);
    let measured = Limits {
        table,
        eccentric_one_rm: held(table.eccentric_one_rm(lift.one_rm, lift.body)),
        measured_on: Some(table.planning().who.clone()),
        low_end: lift.range().map(SimulatedRange::careful),
        one_rm: lift.one_rm,
        body: lift.body,
        evenness: 1.0,
        // The general published values stand for joints that nobody names (assumed).
        joints: vec![request.published.fatigue.tiring(FatigueJoint::General)],
        travel: None,
        rest,
        back,
        customary: match back {
            WayBack::OffArms => (1, 1),
            _ => table.overload.repetitions,
        },
    };
    Ok(match request.oracle {
        Some(oracle) => Limits {
            eccentric_one_rm: held(believed(table, lift, oracle.eccentric_one_rm)),
            measured_on: oracle.eccentric_of.clone(),
            evenness: oracle.lowering_evenness.unwrap_or(1.0),
            joints: oracle.joints.clone(),
            travel: oracle.travel,
            ..measured
        },
        None => measured,
    })
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
    pub(super) fn share_of(&self, load: Mass, limit: Mass) -> f64 {
        (load + self.body).as_kg() / (limit + self.body).as_kg()
    }

    /// The most that is planned: what can be lowered less the reserve.
    pub(super) fn most(&self) -> Mass {
        let whole = (self.eccentric_one_rm + self.body) * (1.0 - LEAST_RESERVE);
        Mass::from_kg((whole - self.body).as_kg().max(0.0))
    }

    pub(super) fn no_reserve(&self, load: Mass) -> Error {
        Error::no_answer(LoweringFault::NoReserve {
            load,
            limit: self.eccentric_one_rm,
            ratio: self.ratio(),
            who: self.measured_on.clone(),
            low_end: self.low_end,
        })
    }

    /// What can be lowered over what can be lifted.
    pub(super) fn ratio(&self) -> f64 {
        self.share_of(self.eccentric_one_rm, self.one_rm)
    }
}

/// A set of lowerings on a body that it tires.
///
/// **Fails** on a time that is none.
pub(super) fn lower_set(
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
///
/// **Fails** as [`lower_set`] does.
pub(super) fn most_repetitions(load: Mass, limits: &Limits<'_>, body: &TiringBody) -> Result<u32> {
    let (_, most) = limits.customary;
    let tried = lower_set(1, most, load, limits, &mut body.clone())?;
    let controlled = |lowering: &&LoweringPrediction| lowering.reserve >= LEAST_RESERVE;
    Ok(tried.iter().take_while(controlled).count() as u32)
}
