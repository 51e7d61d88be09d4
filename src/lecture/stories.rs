//! What an invented person's log and sessions tell, and loads on lifts that do not rise.
//!
//! In: a [`Desk`]. Out: sheets of the syllabus.

use crate::error::Result;
use crate::figures::{self, Sheet};
use crate::narrative::cam_words::MachineFacts;
use crate::narrative::evenness_words::{hung_name, machine_name};
use crate::session::draft::SessionPlan;
use crate::session::method::Method;
use crate::session::request::SessionWishes;
use crate::study::{
    AgainstPlain, Desk, HeldAndLifted, HungKind, grip_family, invented_log, invented_session,
};
use crate::units::{Mass, System};

/// The hip's flexion that a machine or a bench holds, as lifts call it.
const HIP_ANGLE: &str = "hip_angle";

/// A band or a cam against plain weight.
pub(super) fn evener_or_not(desk: &Desk<'_>, movement: &str, kind: HungKind) -> Result<Sheet> {
    let name = if kind == HungKind::Cam {
        machine_name
    } else {
        hung_name
    };
    let both = AgainstPlain::of(desk, movement, &[HungKind::Plain, kind], name)?;
    let errors = desk.models.lift_errors()?;
    let worst = desk.models.worst_miss(movement)?;
    let lift = &desk.lift(movement)?.model.movement;
    let has_hip = lift.technique.contains_key(HIP_ANGLE);
    let hip = has_hip.then(|| lift.angle_rad(HIP_ANGLE)).transpose()?;
    let facts = MachineFacts {
        errors: &errors,
        worst: worst.as_ref(),
        hip_rad: hip.flatten(),
    };
    Ok(figures::evener_or_not(desk.who(), &both, facts, desk.units))
}

/// Whether the lifter can do a lift with something of this kind hung on.
pub(super) fn can_hang(desk: &Desk<'_>, movement: &str, kind: HungKind) -> bool {
    AgainstPlain::of(desk, movement, &[HungKind::Plain, kind], hung_name).is_ok()
}

/// Where a plain weight is hardest held still, beside what is lifted and what was measured in motion.
pub(super) fn hardest_part(desk: &Desk<'_>, movement: &str) -> Result<Sheet> {
    let plain = AgainstPlain::of(desk, movement, &[HungKind::Plain], hung_name)?;
    let beside = HeldAndLifted::of(&desk.question(movement)?)?;
    let measured = desk.models.measured_sticking(movement)?;
    Ok(figures::hardest_part(
        &plain,
        &beside,
        measured.as_ref(),
        desk.units,
    ))
}

/// The publication of the maxima that were measured with several grips.
pub(super) const MEASURED_GRIPS: &str = "larsen_2021";

/// A press with the grips that were measured, and the lifter's own.
pub(super) fn grips(desk: &Desk<'_>, movement: &str) -> Result<Sheet> {
    let measured = desk.models.measured_grips()?;
    let breadths: Vec<f64> = measured.grips.iter().map(|grip| grip.breadths).collect();
    let family = grip_family(desk, movement, &breadths)?;
    let sources = desk.models.sources()?;
    let study = sources.get(MEASURED_GRIPS);
    let study = study.expect("a test holds every key of the lecture to the list");
    Ok(figures::grip_sheet(&family, &measured, study, desk.units))
}

/// Published maxima of lowering over lifting for a lift.
pub(super) fn lowered_over_lifted(desk: &Desk<'_>, movement: &str) -> Result<Vec<f64>> {
    let published = desk.models.published()?;
    let ratios = published.eccentric.ratios.iter();
    let own = ratios.filter(|row| row.movement.as_deref() == Some(movement));
    Ok(own.map(|row| row.ratio).collect())
}

/// The log that goes flat.
pub(super) fn plateau(desk: &Desk<'_>) -> Result<Sheet> {
    let log = invented_log(desk)?;
    Ok(figures::trend_sheet(&log.trend, desk.units))
}

/// Twelve repetitions with three quarters of the maximum of the invented log (assumed: a usual working load).
pub(super) fn clusters(desk: &Desk<'_>) -> Result<Sheet> {
    let load = match desk.units {
        System::Metric => Mass::from_kg(105.0),
        System::Us => Mass::from_lb(230.0),
    };
    let wishes = SessionWishes {
        load: Some(load),
        total_repetitions: Some(12),
        ..SessionWishes::default()
    };
    let plan = session(desk, Method::Clusters, wishes)?;
    figures::clusters_sheet(&plan, desk.units)
}

/// The usual pyramid.
pub(super) fn pyramid(desk: &Desk<'_>) -> Result<Sheet> {
    let plan = session(desk, Method::Pyramid, SessionWishes::default())?;
    Ok(figures::pyramid_sheet(&plan, desk.units))
}

/// A session of the invented person.
fn session(desk: &Desk<'_>, method: Method, wishes: SessionWishes) -> Result<SessionPlan> {
    let planned = invented_session(desk, method, wishes)?;
    Ok(planned.expect("one method gives one session"))
}
