//! The lecture: which figures make the set, in teaching order, as one list.
//!
//! In: a [`Desk`]. Out: [`LECTURE`], from which the command, the page of all figures and the tests
//! are derived.

use crate::capacity::Shape;
use crate::error::Result;
use crate::figures::Desk;
use crate::figures::Sheet;
use crate::figures::accommodating::{
    band_over_ascending, chain_over_ascending, flattening, sticking_region,
};
use crate::figures::classes::{
    ascending_lifts, bell_shaped_lifts, descending_lifts, has_lifts_of, three_classes,
};
use crate::figures::force_velocity::{curve_at_speed, force_velocity};
use crate::figures::joint_limits::{limits_in_a_press, limits_in_a_squat};
use crate::figures::length_tension::{active_passive_total, sarcomere_overlap, sarcomere_species};
use crate::figures::load_over_class::load_over_class;
use crate::figures::moment_arm::{fibre_lengths, moment_arms};
use crate::figures::muscles_add_up::{force_times_arm, muscles_add_up};
use crate::figures::variations::{grip_width, limb_length};

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
    pub class: Option<Shape>,
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

    const fn of_class(mut self, shape: Shape) -> Self {
        self.class = Some(shape);
        self
    }

    /// Whether the desk has what the figure draws.
    #[must_use]
    pub fn can_be_drawn(&self, desk: &Desk<'_>) -> bool {
        self.needs.iter().all(|name| desk.has(name))
            && self.class.is_none_or(|shape| has_lifts_of(desk, shape))
    }
}

/// The figures in teaching order.
pub const LECTURE: &[LectureFigure] = &[
    LectureFigure::new(
        "three-classes",
        "Strength curves come in three classes.",
        &[],
        three_classes,
    ),
    LectureFigure::new(
        "ascending-lifts",
        "Lifts that are strongest at the end.",
        &[],
        ascending_lifts,
    )
    .of_class(Shape::Ascending),
    LectureFigure::new(
        "descending-lifts",
        "Lifts that are strongest at the start.",
        &[],
        descending_lifts,
    )
    .of_class(Shape::Descending),
    LectureFigure::new(
        "bell-shaped-lifts",
        "Lifts that are strongest in between.",
        &[],
        bell_shaped_lifts,
    )
    .of_class(Shape::BellShaped),
    LectureFigure::new(
        "sarcomere-overlap",
        "Overlap of filaments makes active force.",
        &[],
        sarcomere_overlap,
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
        &["biceps-curl"],
        active_passive_total,
    ),
    LectureFigure::new("force-velocity", "Speed costs force.", &[], force_velocity),
    LectureFigure::new(
        "curve-at-speed",
        "Speed moves the whole strength curve.",
        &["knee-extension"],
        curve_at_speed,
    ),
    LectureFigure::new(
        "moment-arms",
        "Levers change with the joint angle.",
        &["biceps-curl"],
        moment_arms,
    ),
    LectureFigure::new(
        "fibre-lengths",
        "Fibres shorten as the joint turns.",
        &["biceps-curl"],
        fibre_lengths,
    ),
    LectureFigure::new(
        "force-times-arm",
        "A curve's shape is force times moment arm.",
        &["biceps-curl"],
        force_times_arm,
    ),
    LectureFigure::new(
        "muscles-add-up",
        "Muscles add up to the joint's torque.",
        &["biceps-curl"],
        muscles_add_up,
    ),
    LectureFigure::new(
        "limits-in-a-press",
        "One joint gives way first: the press.",
        &["bench-press"],
        limits_in_a_press,
    ),
    LectureFigure::new(
        "limits-in-a-squat",
        "One joint gives way first: the squat.",
        &["squat"],
        limits_in_a_squat,
    ),
    LectureFigure::new(
        "load-over-class",
        "Where a plain weight is heavy and where it is light.",
        &[],
        load_over_class,
    ),
    LectureFigure::new(
        "sticking-region",
        "The hardest stretch decides the lift.",
        &["bench-press"],
        sticking_region,
    ),
    LectureFigure::new(
        "band-over-ascending",
        "A band follows an ascending curve.",
        &["bench-press"],
        band_over_ascending,
    ),
    LectureFigure::new(
        "chain-over-ascending",
        "A chain follows an ascending curve.",
        &["bench-press"],
        chain_over_ascending,
    ),
    LectureFigure::new(
        "flattening",
        "How even a load makes the effort.",
        &["bench-press"],
        flattening,
    ),
    LectureFigure::new(
        "grip-width",
        "Technique moves the curve: grip width.",
        &["bench-press"],
        grip_width,
    ),
    LectureFigure::new(
        "limb-length",
        "The body moves the curve: limb length.",
        &["squat"],
        limb_length,
    ),
];
