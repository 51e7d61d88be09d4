//! The lecture: which figures make the set, in teaching order, as one list.
//!
//! In: a [`Desk`]. Out: [`LECTURE`], from which the command, the page of all figures and the tests
//! are derived.

use crate::capacity::CurveShape;
use crate::error::Result;
use crate::figures::{self, Sheet};
use crate::narrative::evenness_words::hung_name;
use crate::study::{
    AgainstPlain, Desk, FibreUse, HungKind, SpeedCost, Study, at_usual_speeds, class_examples,
    grip_family, has_class, lifts_of_class, loaded_examples, thigh_family,
};

/// The lift of one joint that is taken apart.
const CURL: &str = "biceps-curl";
/// The ascending lift on which bands and chains are shown.
const PRESS: &str = "bench-press";
/// A lift of the whole leg.
const SQUAT: &str = "squat";
/// The lift whose curve is shown at several speeds.
const EXTENSION: &str = "knee-extension";

/// One figure of the lecture.
#[derive(Clone, Copy)]
pub struct LectureFigure {
    /// Its name in file names.
    pub name: &'static str,
    /// The one idea it teaches.
    pub idea: &'static str,
    /// Movements that it draws.
    pub needs: &'static [&'static str],
    /// The class of which the lifter must have a lift, if any.
    pub class: Option<CurveShape>,
    /// Makes it.
    pub build: fn(&Desk<'_>) -> Result<Sheet>,
}

impl LectureFigure {
    const fn new(
        name: &'static str,
        idea: &'static str,
        needs: &'static [&'static str],
        build: fn(&Desk<'_>) -> Result<Sheet>,
    ) -> Self {
        Self {
            name,
            idea,
            needs,
            class: None,
            build,
        }
    }

    const fn of_class(
        shape: CurveShape,
        name: &'static str,
        idea: &'static str,
        build: fn(&Desk<'_>) -> Result<Sheet>,
    ) -> Self {
        Self {
            class: Some(shape),
            ..Self::new(name, idea, &[], build)
        }
    }

    /// Whether the desk has what the figure draws.
    #[must_use]
    pub fn can_be_drawn(&self, desk: &Desk<'_>) -> bool {
        self.needs.iter().all(|name| desk.has(name))
            && self.class.is_none_or(|shape| has_class(desk, shape))
    }
}

/// The figures in teaching order.
pub const LECTURE: &[LectureFigure] = &[
    LectureFigure::new(
        "three-classes",
        "Strength curves come in few classes.",
        &[],
        |desk| Ok(figures::three_classes(desk.who(), &class_examples(desk))),
    ),
    LectureFigure::of_class(
        CurveShape::Ascending,
        "ascending-lifts",
        "Lifts that are strongest at the end.",
        |desk| Ok(class_lifts(desk, CurveShape::Ascending)),
    ),
    LectureFigure::of_class(
        CurveShape::Descending,
        "descending-lifts",
        "Lifts that are strongest at the start.",
        |desk| Ok(class_lifts(desk, CurveShape::Descending)),
    ),
    LectureFigure::of_class(
        CurveShape::BellShaped,
        "bell-shaped-lifts",
        "Lifts that are strongest in between.",
        |desk| Ok(class_lifts(desk, CurveShape::BellShaped)),
    ),
    LectureFigure::of_class(
        CurveShape::UShaped,
        "u-shaped-lifts",
        "Lifts that are weakest in between.",
        |desk| Ok(class_lifts(desk, CurveShape::UShaped)),
    ),
    LectureFigure::new(
        "sarcomere-overlap",
        "Overlap of filaments makes active force.",
        &[],
        |desk| Ok(figures::sarcomere_overlap(desk.models.sarcomere("human")?)),
    ),
    LectureFigure::new(
        "sarcomere-species",
        "Filament lengths shift the diagram.",
        &[],
        sarcomere_species,
    ),
    LectureFigure::new(
        "active-passive-total",
        "Active and passive force add up.",
        &[CURL],
        active_passive_total,
    ),
    LectureFigure::new("force-velocity", "Speed costs force.", &[], |desk| {
        let cost = SpeedCost::of(desk.curves().velocity);
        Ok(figures::force_velocity(&cost))
    }),
    LectureFigure::new(
        "curve-at-speed",
        "Speed moves the whole strength curve.",
        &[EXTENSION],
        curve_at_speed,
    ),
    LectureFigure::new(
        "moment-arms",
        "Levers change with the joint angle.",
        &[CURL],
        |desk| of_lift(desk, CURL, figures::moment_arms),
    ),
    LectureFigure::new(
        "fibre-lengths",
        "Fibres shorten as the joint turns.",
        &[CURL],
        |desk| of_lift(desk, CURL, figures::fibre_lengths),
    ),
    LectureFigure::new(
        "force-times-arm",
        "A curve's shape is force times moment arm.",
        &[CURL],
        |desk| of_lift(desk, CURL, figures::force_times_arm),
    ),
    LectureFigure::new(
        "muscles-add-up",
        "Muscles add up to the joint's torque.",
        &[CURL],
        |desk| of_lift(desk, CURL, figures::muscles_add_up),
    ),
    LectureFigure::new(
        "limits-in-a-press",
        "One joint gives way first: the press.",
        &[PRESS],
        |desk| of_lift(desk, PRESS, figures::joint_limits),
    ),
    LectureFigure::new(
        "limits-in-a-squat",
        "One joint gives way first: the squat.",
        &[SQUAT],
        |desk| of_lift(desk, SQUAT, figures::joint_limits),
    ),
    LectureFigure::new(
        "load-over-class",
        "Where a plain weight is heavy and where it is light.",
        &[],
        |desk| {
            let loaded = loaded_examples(desk)?;
            Ok(figures::load_over_class(desk.who(), &loaded, desk.units))
        },
    ),
    LectureFigure::new(
        "sticking-region",
        "The hardest stretch decides the lift.",
        &[PRESS],
        |desk| {
            let plain = against_plain(desk, &[HungKind::Plain])?;
            Ok(figures::sticking_region(&plain, desk.units))
        },
    ),
    LectureFigure::new(
        "band-over-ascending",
        "A band follows an ascending curve.",
        &[PRESS],
        |desk| over_ascending(desk, HungKind::Band),
    ),
    LectureFigure::new(
        "chain-over-ascending",
        "A chain follows an ascending curve.",
        &[PRESS],
        |desk| over_ascending(desk, HungKind::Chain),
    ),
    LectureFigure::new(
        "flattening",
        "How even a load makes the effort.",
        &[PRESS],
        flattening,
    ),
    LectureFigure::new(
        "grip-width",
        "Technique moves the curve: grip width.",
        &[PRESS],
        |desk| Ok(figures::grip_sheet(&grip_family(desk, PRESS)?, desk.units)),
    ),
    LectureFigure::new(
        "limb-length",
        "The body moves the curve: limb length.",
        &[SQUAT],
        |desk| {
            Ok(figures::thigh_sheet(
                &thigh_family(desk, SQUAT)?,
                desk.units,
            ))
        },
    ),
];

fn class_lifts(desk: &Desk<'_>, shape: CurveShape) -> Sheet {
    figures::class_lifts(desk.who(), shape, &lifts_of_class(desk, shape))
}

/// A figure of one unloaded lift.
fn of_lift(
    desk: &Desk<'_>,
    movement: &str,
    figure: fn(&str, &Study, crate::units::System) -> Sheet,
) -> Result<Sheet> {
    Ok(figure(desk.who(), &desk.lift(movement)?.study, desk.units))
}

fn sarcomere_species(desk: &Desk<'_>) -> Result<Sheet> {
    let (human, frog) = (
        desk.models.sarcomere("human")?,
        desk.models.sarcomere("frog")?,
    );
    Ok(figures::sarcomere_species(&human, &frog))
}

fn active_passive_total(desk: &Desk<'_>) -> Result<Sheet> {
    let used = FibreUse::of(&desk.lift(CURL)?.study);
    Ok(figures::active_passive_total(desk.curves(), &used))
}

fn curve_at_speed(desk: &Desk<'_>) -> Result<Sheet> {
    let held = &desk.lift(EXTENSION)?.study;
    let moving = at_usual_speeds(desk, EXTENSION)?;
    Ok(figures::curve_at_speed(
        desk.who(),
        held,
        &moving,
        desk.units,
    ))
}

fn against_plain(desk: &Desk<'_>, kinds: &[HungKind]) -> Result<AgainstPlain> {
    AgainstPlain::of(desk, PRESS, kinds, hung_name)
}

fn over_ascending(desk: &Desk<'_>, kind: HungKind) -> Result<Sheet> {
    let both = against_plain(desk, &[HungKind::Plain, kind])?;
    Ok(figures::against_plain(desk.who(), &both, desk.units))
}

fn flattening(desk: &Desk<'_>) -> Result<Sheet> {
    let kinds = [
        HungKind::Plain,
        HungKind::Chain,
        HungKind::Band,
        HungKind::Both,
    ];
    let all = against_plain(desk, &kinds)?;
    Ok(figures::flattening(desk.who(), &all, desk.units))
}
