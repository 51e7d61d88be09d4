//! Which of the usual cautions go with a plan; there is no switch for them.
//!
//! In: what a plan does (how the lift is handled, method, load as a share of 1RM). Out: the cautions that
//! apply, the disclaimer always first.

use super::method::Method;
use super::rests::HEAVY_SHARE;
use super::status::AgeCare;
use super::strength::PlannedLift;
use crate::movement::{Catch, Handling, Handover};
use crate::setups::{Caution, OF_BANDS};
use crate::units::Mass;

/// What a plan does, as far as cautions and spotters depend on it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Circumstances<'a> {
    /// How the lift is handled.
    pub handling: &'a Handling,
    /// The method.
    pub method: Method,
    /// Heaviest load of the plan as a share of 1RM.
    pub heaviest_share: f64,
    /// Heaviest load of the plan, all that is felt and no body.
    pub heaviest: Mass,
    /// The most that bands or chains make of the load on the way, as a share of the 1RM; 0 without them.
    pub felt_share: f64,
    /// Whether a bar is used.
    pub with_bar: bool,
    /// Whether what is lowered stays on the safety arms until plates are off.
    pub off_arms: bool,
}

/// What an age asks for, whatever is planned.
#[must_use]
pub fn of_age(age_years: Option<f64>) -> Option<Caution> {
    let years = age_years?;
    match AgeCare::of(age_years) {
        AgeCare::None => None,
        AgeCare::Middle | AgeCare::Older => Some(Caution::OlderLifter { years }),
        AgeCare::AsNovice => Some(Caution::AsNovice { years }),
    }
}

/// What goes with more than 1RM: where it is lowered (`overload`), or may lie on the body all the same (`beyond`).
fn of_lowering(handling: &Handling, overload: bool, beyond: bool) -> [(bool, Caution); 5] {
    let body_only = matches!(handling.overload, Handover::BodyOnly { .. });
    let arms = handling.catch == Catch::SafetyArms;
    [
        (overload || beyond, Caution::ExperiencedOnly),
        ((overload || beyond) && arms, Caution::ArmsAndSpotters),
        (overload && !body_only, Caution::SmallSteps),
        (overload, Caution::Soreness),
        (overload, Caution::MuscleBreakdown),
    ]
}

/// The cautions of lowering more than 1RM in a lift, the disclaimer first.
#[must_use]
pub fn of_overload(handling: &Handling) -> Vec<Caution> {
    let apply = of_lowering(handling, true, false).into_iter();
    let apply = apply.filter_map(|(applies, caution)| applies.then_some(caution));
    std::iter::once(Caution::Disclaimer).chain(apply).collect()
}

/// The cautions that apply, in their usual order; `beyond` is whether more than the lifter can raise may lie on the body.
#[must_use]
pub fn that_apply(plan: &Circumstances, lift: &PlannedLift, beyond: bool) -> Vec<Caution> {
    let trainee = &lift.trainee;
    let bands = plan.method == Method::Bands;
    let overload = plan.method == Method::OverloadedLowering;
    let arms = plan.handling.catch == Catch::SafetyArms;
    let always = [Caution::Disclaimer, Caution::NotIll, Caution::StopAtPain];
    let table = [
        (plan.with_bar, Caution::Collars),
        (
            plan.with_bar && arms && !(overload || beyond),
            Caution::SafetyArms,
        ),
        (
            plan.heaviest_share >= HEAVY_SHARE,
            Caution::AgreeWithSpotters,
        ),
        (plan.handling.catch == Catch::SledStops, Caution::SledStops),
        (plan.handling.rounding_back, Caution::RoundingBack),
    ];
    let of_bands = OF_BANDS.map(|caution| (bands, caution));
    let last = [(plan.method == Method::Chains, Caution::EvenChains)];
    let lowered = of_lowering(plan.handling, overload, beyond);
    let felt = (plan.felt_share > 1.0).then_some(Caution::FeltAboveOneRm {
        share: plan.felt_share,
    });
    let unlikely = lift.unlikely.map(|odd| Caution::UnlikelyOneRm {
        movement: lift.movement.clone(),
        in_pounds: odd.in_pounds,
        over_expected: odd.over_expected,
        deviations: odd.deviations,
    });
    let undated = lift.undated_log().map(|last| Caution::LogAgeUntold {
        last: last.to_string(),
    });
    let all = table.into_iter().chain(of_bands).chain(last).chain(lowered);
    let of_plan = all.filter(|(applies, _)| *applies);
    let of_plan = of_plan.map(|(_, caution)| caution);
    let of_all = always.into_iter().chain(of_age(trainee.age_years));
    let of_lift = felt.into_iter().chain(unlikely).chain(undated);
    of_all.chain(of_plan).chain(of_lift).collect()
}
