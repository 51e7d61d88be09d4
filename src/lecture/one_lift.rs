//! A lecture on one lift: the figures of the lecture that a single lift can tell, drawn of it.
//!
//! In: a [`Desk`] that was told which lift. Out: [`ONE_LIFT`] in teaching order.

use super::lecture_figure::LectureFigure;
use super::stories::{can_hang, evener_or_not, hardest_part, lowered_over_lifted};
use crate::error::Result;
use crate::figures::{self, Sheet};
use crate::movement::{Carrier, Measure};
use crate::study::{Desk, HungKind, LiftStudy, People, Study, ThreeCapacities};
use crate::units::System;

/// The figures in teaching order.
pub const ONE_LIFT: &[LectureFigure] = &[
    LectureFigure::of_lift(
        "strength-curve",
        "What a strength curve is.",
        always,
        |desk| {
            let study = &about(desk)?.study;
            Ok(figures::strength_sheet(study.told(desk.units)))
        },
    )
    .citing(&["kulig_1984"]),
    LectureFigure::of_lift(
        "muscles-on-skeleton",
        "Muscles pull at moment arms.",
        always,
        |desk| figures::muscles_on_skeleton(&about(desk)?.study, desk.units),
    )
    .citing(&["zajac_1989"]),
    LectureFigure::of_lift(
        "moment-arms",
        "Moment arms change with the joint angle.",
        is_of_one_joint,
        |desk| joint(desk, figures::moment_arms),
    )
    .citing(&["zajac_1989"]),
    LectureFigure::of_lift(
        "fibre-lengths",
        "Fibres shorten as the joint turns.",
        is_of_one_joint,
        |desk| joint(desk, figures::fibre_lengths),
    )
    .citing(&["zajac_1989"]),
    LectureFigure::of_lift(
        "force-times-arm",
        "A curve's shape is force times moment arm.",
        is_of_one_joint,
        |desk| joint(desk, figures::force_times_arm),
    )
    .citing(&["kulig_1984", "zajac_1989"]),
    LectureFigure::of_lift(
        "muscles-add-up",
        "Muscles add up to the joint's torque.",
        is_of_one_joint,
        |desk| joint(desk, figures::muscles_add_up),
    )
    .citing(&["zajac_1989"]),
    LectureFigure::of_lift(
        "limits-in-a-press",
        "Which joint's strength counts where.",
        is_of_several_joints,
        |desk| joint(desk, figures::joint_limits),
    )
    .called("joint-limits")
    .citing(&["de_leva_1996"]),
    LectureFigure::of_lift(
        "who-holds-the-load",
        "Muscles share a joint's moment.",
        always,
        |desk| Ok(figures::load_holders(&about(desk)?.study, desk.units)),
    )
    .citing(&["de_leva_1996"]),
    LectureFigure::of_lift("free-body", "A lift as a free body.", always, free_body)
        .citing(&["de_leva_1996"]),
    LectureFigure::of_lift(
        "sticking-region",
        "A load that is held still is hardest in one stretch.",
        can_be_loaded,
        |desk| hardest_part(desk, name(desk)?),
    )
    .citing(&["elliott_1989"]),
    LectureFigure::of_lift(
        "band-over-ascending",
        "What a band does to this curve.",
        takes_a_band,
        |desk| evener_or_not(desk, name(desk)?, HungKind::Band),
    )
    .called("band")
    .citing(&["treloar_1944", "mcmaster_2010"]),
    LectureFigure::of_lift(
        "chain-over-ascending",
        "What a chain does to this curve.",
        takes_a_chain,
        |desk| evener_or_not(desk, name(desk)?, HungKind::Chain),
    )
    .called("chain")
    .citing(&["din_766", "neelly_2010"]),
    LectureFigure::of_lift("cam", "A cam can follow the curve.", has_a_lever, |desk| {
        evener_or_not(desk, name(desk)?, HungKind::Cam)
    })
    .citing(&["kulig_1984"]),
    LectureFigure::of_lift(
        "lowered-held-lifted",
        "More can be lowered than lifted.",
        has_a_bar,
        |desk| {
            let three = ThreeCapacities::of(&desk.question(name(desk)?)?)?;
            let measured = lowered_over_lifted(desk, name(desk)?)?;
            Ok(figures::three_capacities(&three, &measured, desk.units))
        },
    )
    .citing(&["westing_1988", "hollander_2007"]),
    LectureFigure::of_lift("people-differ", "People differ.", always, |desk| {
        let people = People::around(&desk.question(name(desk)?)?, &desk.models.person_table()?)?;
        Ok(figures::people_differ(&about(desk)?.study, &people))
    }),
    LectureFigure::of_lift("how-sure", "How sure we are.", always, |desk| {
        Ok(figures::model_errors(&desk.models.lift_errors()?))
    }),
    LectureFigure::of_lift(
        "cannot-tell",
        "What this model cannot tell.",
        always,
        |_| Ok(figures::cannot_tell()),
    ),
];

/// The lift that the desk was told of; the first of all where it was told of none.
fn about<'a>(desk: &'a Desk<'_>) -> Result<&'a LiftStudy> {
    desk.lift(name(desk)?)
}

fn name<'a>(desk: &'a Desk<'_>) -> Result<&'a str> {
    Ok(desk
        .about
        .as_deref()
        .unwrap_or(&desk.lifts()[0].model.movement_name))
}

/// A figure of the lift's joint.
fn joint(desk: &Desk<'_>, figure: fn(&str, &Study, System) -> Sheet) -> Result<Sheet> {
    Ok(figure(desk.who(), &about(desk)?.study, desk.units))
}

/// Under a hard weight where the lift can be loaded so, else under the most that each place holds.
fn free_body(desk: &Desk<'_>) -> Result<Sheet> {
    let lift = name(desk)?;
    let study = match desk.hard(lift, Vec::new()) {
        Ok(setup) => desk.under(lift, &[setup])?,
        Err(_) => about(desk)?.study.clone(),
    };
    Ok(figures::free_bodies(&study, desk.units))
}

fn always(_: &Desk<'_>, _: &Study) -> bool {
    true
}

fn is_of_one_joint(_: &Desk<'_>, study: &Study) -> bool {
    study.range.measure == Measure::Torque
}

fn is_of_several_joints(desk: &Desk<'_>, study: &Study) -> bool {
    !is_of_one_joint(desk, study)
}

fn can_be_loaded(desk: &Desk<'_>, study: &Study) -> bool {
    desk.hard(&study.movement_name, Vec::new()).is_ok()
}

fn has_a_bar(desk: &Desk<'_>, study: &Study) -> bool {
    study.range.carrier == Carrier::Bar && can_be_loaded(desk, study)
}

fn takes_a_band(desk: &Desk<'_>, study: &Study) -> bool {
    has_a_bar(desk, study) && can_hang(desk, &study.movement_name, HungKind::Band)
}

fn takes_a_chain(desk: &Desk<'_>, study: &Study) -> bool {
    has_a_bar(desk, study) && can_hang(desk, &study.movement_name, HungKind::Chain)
}

fn has_a_lever(desk: &Desk<'_>, study: &Study) -> bool {
    matches!(study.range.carrier, Carrier::Lever { .. })
        && can_hang(desk, &study.movement_name, HungKind::Cam)
}
