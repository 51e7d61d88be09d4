//! Whether more than 1RM is lowered in a lift: somebody can hand it over, and the 1RM was tested.
//!
//! In: a [`SessionRequest`]. Out: how the load comes back up, or a refusal; what the numbers rest on.

use super::lowering_remark::{LostBar, LoweringLimit, LoweringRemark};
use super::published::EccentricTable;
use super::remark::{PlanBasis, Remark};
use super::request::{SessionRequest, found};
use super::spotting::HELD_BY_EACH_KG;
use super::strength::PlannedLift;
use crate::error::{Error, LoweringFault, NoHelp, Result, SessionRefusal};
use crate::movement::{Catch, Handover, NoHandover, WayBack};
use crate::source::Source;
use crate::units::Mass;

/// How the load comes back up.
///
/// **Fails** where nobody can hand more than 1RM over.
pub(super) fn way_back(request: &SessionRequest) -> Result<WayBack> {
    handed_back(request.lift.handling.overload, &request.lift.title)
}

/// Share of the 1RM to which plates come off a bar on the arms before the lifter brings it up again (assumed: some ten
/// repetitions of a rested lifter by the chart, of which one is done).
const OFF_ARMS_SHARE: f64 = 0.70;

/// Helpers who have to hold what is lost, and the most that they hold together; none where nobody has to: whoever loses a lowering
/// gives nothing more, and what stands on safety arms needs not be held.
pub(super) fn held_by_hand(request: &SessionRequest) -> Option<(u32, Mass)> {
    let handling = &request.lift.handling;
    match handling.overload {
        Handover::Yes {
            helpers,
            back: WayBack::SpottersLift,
            ..
        } if handling.catch == Catch::SafetyArms => {
            let held = Mass::from_kg(HELD_BY_EACH_KG) * f64::from(helpers);
            Some((helpers, held))
        }
        _ => None,
    }
}

/// What becomes of a bar whose lowering is lost; nothing where spotters do not lift it back.
pub(super) fn lost_remark(
    request: &SessionRequest,
    back: WayBack,
    heaviest: Mass,
) -> Option<Remark> {
    let handling = &request.lift.handling;
    let Handover::Yes { helpers, .. } = handling.overload else {
        return None;
    };
    let each = heaviest * (1.0 / f64::from(helpers));
    let left = request.strength().load_at(OFF_ARMS_SHARE);
    let lost = match back {
        WayBack::SpottersLift if handling.catch == Catch::SafetyArms => {
            LostBar::Held { helpers, each }
        }
        WayBack::OffArms => LostBar::OnArms {
            helpers,
            each,
            most: Mass::from_kg(HELD_BY_EACH_KG),
            left: request
                .loading
                .at_most(left)
                .map_or(left, |load| load.total),
        },
        _ => return None,
    };
    Some(Remark::Lowering(LoweringRemark::Lost(lost)))
}

/// How a load that helpers take comes back up in a lift of this title: the one judge of whether they can take it.
///
/// **Fails** where nobody can.
pub fn handed_back(overload: Handover, title: &str) -> Result<WayBack> {
    match overload {
        Handover::Yes { back, .. } | Handover::BodyOnly { back } => Ok(back),
        Handover::No(why) => Err(Error::no_answer(SessionRefusal::NotHandedOver {
            movement: title.to_lowercase(),
            why: no_help(why),
        })),
    }
}

/// What a record says of helpers, as a refusal says it.
#[must_use]
pub const fn no_help(why: NoHandover) -> NoHelp {
    match why {
        NoHandover::NoRoomBeside => NoHelp::NoRoomBeside,
        NoHandover::BentOver => NoHelp::BentOver,
        NoHandover::OverHead => NoHelp::OverHead,
        NoHandover::OnHips => NoHelp::OnHips,
    }
}

/// More than the maximum over the body is caught by safety arms, beside the spotters.
///
/// **Fails** in a gym that has none.
pub(super) fn caught(request: &SessionRequest) -> Result<()> {
    if request.without_arms && request.lift.handling.catch == Catch::SafetyArms {
        return Err(Error::no_answer(SessionRefusal::NoSafetyArms));
    }
    Ok(())
}

/// A maximum that nobody measured is no ground for more than it; the body alone adds nothing to it.
///
/// **Fails** where nobody saw this lift lifted.
pub(super) fn tested(request: &SessionRequest) -> Result<()> {
    let adds = matches!(request.lift.handling.overload, Handover::Yes { .. });
    if adds && !request.lift.is_tested() {
        return Err(Error::no_answer(SessionRefusal::UntestedOneRm {
            movement: request.lift.title.to_lowercase(),
        }));
    }
    Ok(())
}

/// A log of which nobody says how old it is is no ground for more than its maximum; the body alone adds nothing to it.
///
/// **Fails** where the 1RM is of a log and no day of the plan is told.
pub(super) fn dated(request: &SessionRequest) -> Result<()> {
    let adds = matches!(request.lift.handling.overload, Handover::Yes { .. });
    match request.lift.undated_log().filter(|_| adds) {
        Some(last) => Err(Error::no_answer(SessionRefusal::LogAgeUntold {
            last: last.to_string(),
        })),
        None => Ok(()),
    }
}

/// A limit of the lowering as it is at the low end of what the 1RM may be, where that is known.
pub(super) fn at_low_end(lift: &PlannedLift, limit: Mass) -> Mass {
    let Some(range) = lift.range() else {
        return limit;
    };
    let low = (limit + lift.body) * lift.strength().share_of(range.careful());
    Mass::from_kg((low - lift.body).as_kg().max(0.0))
}

/// What the measured ratio would make of the limit, where a simulated one is planned with.
pub(super) fn measured_remark(
    request: &SessionRequest,
    table: &EccentricTable,
    is_measured: bool,
) -> Option<Remark> {
    let planning = table.planning();
    (!is_measured).then(|| {
        Remark::Lowering(LoweringRemark::MeasuredLimit(LoweringLimit {
            most: table.eccentric_one_rm(request.lift.one_rm, request.lift.body),
            ratio: planning.ratio,
            who: Some(planning.who.clone()),
        }))
    })
}

/// Where the numbers of an overload come from.
pub(super) fn sources(table: &EccentricTable) -> impl Iterator<Item = (PlanBasis, Source)> {
    let numbers = [
        (PlanBasis::OverloadWindow, table.overload.source.clone()),
        (PlanBasis::EccentricLimit, table.planning().source.clone()),
        (PlanBasis::LoweringCost, table.efficiency.source.clone()),
    ];
    numbers.into_iter().chain(table.studies.iter().map(found))
}

/// **Fails** where all that the gym has is less than the least load that overloads.
pub(super) fn plates_reach(request: &SessionRequest, least: Mass) -> Result<()> {
    let most = request.loading.heaviest();
    if most >= least {
        return Ok(());
    }
    Err(Error::no_answer(LoweringFault::PlatesRunOut {
        most,
        least,
    }))
}

/// The lifter's own limit as far as anybody was measured.
pub(super) fn believed(table: &EccentricTable, lift: &PlannedLift, own: Mass) -> Mass {
    let highest = table.highest_one_rm(lift.one_rm, lift.body);
    Mass::from_kg(own.as_kg().min(highest.as_kg()))
}
