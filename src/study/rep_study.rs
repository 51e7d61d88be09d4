//! One repetition studied: the same lift held still and in motion, and the maximum it is a share of.
//!
//! In: a question, a setup, a load or a share of the maximum, how the repetition is done. Out:
//! [`RepStudy`].

use super::bands_gone::{BandsGone, bands_gone};
use super::load_for_effort::load_for_effort;
use super::question::{Question, Study};
use super::solve::study;
use super::solve::with_body;
use crate::bounds::bounds;
use crate::error::{Error, MaximumFault, Result};
use crate::movement::{Carrier, Handling, Measure};
use crate::rep::{
    After, OneRepMax, RepEnd, RepModel, RepOptions, RepSample, RepTrace, load_at_share, with_load,
};
use crate::resistance::{Assistance, Item, Setup};
use crate::units::Mass;

/// How heavy: a mass, or a share of the maximum with this setup.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Heaviness {
    /// This plain load.
    Load(Mass),
    /// This share of the one-repetition maximum, 1 = all of it.
    Share(f64),
}

impl Heaviness {
    /// Reads "80 kg" or "85%".
    ///
    /// **Fails** on anything else, and on shares outside 0 to 300 %.
    pub fn from_text(text: &str) -> Result<Self> {
        let Some(percent) = text.trim().strip_suffix('%') else {
            return Mass::from_text(text)
                .map(Self::Load)
                .map_err(|fault| Error::bad(MaximumFault::LoadUnreadable { fault }));
        };
        match percent.trim().parse::<f64>() {
            Ok(value) if bounds().maximum_percent.holds(value) => Ok(Self::Share(value / 100.0)),
            _ => Err(Error::bad(MaximumFault::ShareUnreadable {
                text: text.to_owned(),
            })),
        }
    }
}

/// The smallest step that a load is found to, kg: two plates of 1.25 kg (common practice).
pub const USUAL_STEP_KG: f64 = 2.5;

/// One repetition and what it is compared with.
#[derive(Debug, Clone, PartialEq)]
pub struct RepStudy {
    /// The lift held still with the same setup.
    pub still: Study,
    /// The repetition.
    pub trace: RepTrace,
    /// The plain load of the repetition.
    pub load: Mass,
    /// The maximum with this setup, where there is one.
    pub one_rm: Option<OneRepMax>,
    /// How the lift is handled.
    pub handling: Handling,
    /// How it was done.
    pub options: RepOptions,
    /// More than is lifted, once its bands go.
    pub bands_gone: Option<BandsGone>,
}

/// Studies one repetition.
///
/// **Fails** if the setup does not fit the movement, or a share is asked of a maximum that is none.
pub fn repetition(
    question: &Question<'_>,
    template: &Setup,
    heaviness: Heaviness,
    options: &RepOptions,
) -> Result<RepStudy> {
    let carrier = question.movement.carrier()?;
    template.check_for(&carrier, question.movement_name)?;
    let body = rigged(question, carrier, template);
    let pulling = match heaviness {
        Heaviness::Load(load) => load,
        Heaviness::Share(_) => hardest(question, template),
    };
    let model = RepModel::for_setup(
        question.movement,
        question.lifter,
        &with_load(&body, pulling),
    )?;
    // A load that help outweighs pulls the other way: the maximum is of the direction that the setup has at its maximum.
    let found = match heaviness {
        Heaviness::Load(_) if !template.items.is_empty() => {
            maximum(question, template, options).map(|(one_rm, _)| one_rm)
        }
        _ => model.one_rm(&body, options),
    };
    let (load, one_rm) = match (heaviness, found) {
        (Heaviness::Load(load), found) => (load, found.ok()),
        (Heaviness::Share(share), Ok(found)) => {
            (at_share(question, &body, found, share)?, Some(found))
        }
        (Heaviness::Share(_), Err(fault)) => {
            return Err(needs_help(question, &model, &body, options, fault));
        }
    };
    let trace = model.run(&with_load(&body, load), options)?;
    let still = study(question, &[with_load(template, load)])?;
    Ok(RepStudy {
        still,
        trace,
        load,
        one_rm,
        handling: question.movement.handling.clone(),
        options: *options,
        bands_gone: bands_gone(question, &with_load(template, load), || {
            plain_one_rm(question)
        })?,
    })
}

/// The setup with a plain load of nothing and, where the body is the load, the body.
#[must_use]
pub fn rigged(question: &Question<'_>, carrier: Carrier, template: &Setup) -> Setup {
    with_body(
        &with_load(template, Mass::ZERO),
        carrier,
        question.lifter.body_mass,
    )
}

/// About the most plain load that a setup leaves room for: what decides, beside bands that pull from the side
/// or help from above, in which direction the whole of it pulls. Nothing where no load can be held.
fn hardest(question: &Question<'_>, template: &Setup) -> Mass {
    if template.items.is_empty() {
        return Mass::ZERO;
    }
    load_for_effort(question, template, 1.0).unwrap_or(Mass::ZERO)
}

/// The maximum of a movement with a setup, whole or over a part of the range: the one answer to that
/// question in the whole program.
pub fn maximum(
    question: &Question<'_>,
    template: &Setup,
    options: &RepOptions,
) -> Result<(OneRepMax, RepModel)> {
    let model = motion(question, template)?;
    let one_rm = maximum_in(&model, question, template, options)?;
    Ok((one_rm, model))
}

/// What is lifted with plain weight, done as usual, the body included where it is the load; nothing where nothing is lifted.
pub(super) fn plain_one_rm(question: &Question<'_>) -> Option<Mass> {
    let usual = RepOptions::usual_for(question.movement);
    let found = maximum(question, &Setup::default(), &usual);
    let body = match question.movement.carrier() {
        Ok(Carrier::Body) => question.lifter.body_mass,
        _ => Mass::ZERO,
    };
    found.ok().map(|(one_rm, _)| one_rm.load + body)
}

/// The lift in motion under a setup that leaves the plain load open.
///
/// **Fails** where the setup does not fit, the lift cannot be traced or a pose not held.
pub(super) fn motion(question: &Question<'_>, template: &Setup) -> Result<RepModel> {
    let carrier = question.movement.carrier()?;
    template.check_for(&carrier, question.movement_name)?;
    let body = rigged(question, carrier, template);
    let pulling = with_load(&body, hardest(question, template));
    RepModel::for_setup(question.movement, question.lifter, &pulling)
}

/// The maximum of a lift in motion, of the question's own lifter or a version of that body of other strength.
///
/// **Fails** where nothing is lifted.
pub(super) fn maximum_in(
    model: &RepModel,
    question: &Question<'_>,
    template: &Setup,
    options: &RepOptions,
) -> Result<OneRepMax> {
    let body = rigged(question, question.movement.carrier()?, template);
    model
        .one_rm(&body, options)
        .map_err(|fault| needs_help(question, model, &body, options, fault))
}

/// The plain load at a share of the maximum.
fn at_share(question: &Question<'_>, body: &Setup, one_rm: OneRepMax, share: f64) -> Result<Mass> {
    load_at_share(body, one_rm, share).ok_or_else(|| {
        let own = question.lifter.body_mass;
        Error::no_answer(MaximumFault::LessThanBody {
            share,
            body_share: own.as_kg() / (one_rm.load + own).as_kg().max(1e-9),
        })
    })
}

/// A body that is not lifted at all: how much of a counterweight it takes.
fn needs_help(
    question: &Question<'_>,
    model: &RepModel,
    body: &Setup,
    options: &RepOptions,
    fault: Error,
) -> Error {
    let is_body = question.movement.carrier().ok() == Some(Carrier::Body);
    if !is_body || fault.exit_status() != 1 {
        return fault;
    }
    let step = Mass::from_kg(USUAL_STEP_KG);
    let steps = (question.lifter.body_mass.as_kg() / USUAL_STEP_KG) as u64;
    let helped = |count: u64| {
        let mut setup = body.clone();
        let help = Assistance::Counterweight(step * count as f64);
        setup.items.push(Item::Assistance(help));
        model.is_lifted(&setup, options).unwrap_or(false)
    };
    let (mut low, mut high) = (0, steps);
    if steps == 0 || !helped(high) {
        return fault;
    }
    while high - low > 1 {
        let middle = u64::midpoint(low, high);
        if helped(middle) {
            high = middle;
        } else {
            low = middle;
        }
    }
    Error::no_answer(MaximumFault::BodyNotLifted {
        lifter: question.lifter.title.clone(),
        counterweight: step * high as f64 + counterweight_of(body),
    })
}

/// What counterweights of a setup take away already.
fn counterweight_of(setup: &Setup) -> Mass {
    let help = setup.items.iter().map(|item| match item {
        Item::Assistance(Assistance::Counterweight(mass)) => mass.as_kg(),
        _ => 0.0,
    });
    Mass::from_kg(help.sum())
}

impl RepStudy {
    /// A position of the trace on the level axis: cm of travel, or degrees of the moving joint.
    #[must_use]
    pub fn across(&self, position: f64) -> f64 {
        match self.trace.measure {
            Measure::Force => 100.0 * position,
            Measure::Torque => {
                let pose = &self.still.range.poses[0];
                let turn = pose.coordinates[0].slope_rad.signum();
                (pose.coordinates[0].angle_rad + turn * position).to_degrees()
            }
        }
    }

    /// Share of the maximum, where there is one; of all that is lifted where the body is the load.
    #[must_use]
    pub fn share(&self) -> Option<f64> {
        let body_kg = match self.still.range.carrier {
            Carrier::Body => self.still.body_mass.as_kg(),
            _ => 0.0,
        };
        self.one_rm
            .filter(|max| max.load.as_kg() + body_kg > 0.0)
            .map(|max| (self.load.as_kg() + body_kg) / (max.load.as_kg() + body_kg))
    }

    /// Whether more than can be lifted is lowered for helpers to take: there is nothing above a maximum that is none.
    #[must_use]
    pub fn is_overload(&self) -> bool {
        self.options.after == After::HandOver && self.share().is_none_or(|share| share > 1.0)
    }

    /// Whether the load never left its place at the start of the lift.
    #[must_use]
    pub fn is_stuck_at_start(&self) -> bool {
        matches!(self.trace.outcome, RepEnd::Stalled { range, .. }
            if range - self.options.from < crate::rep::LEAST_WAY)
    }

    /// Whether the load went up by itself in the lowering: what helps outweighs it there, so nobody could hold it down.
    #[must_use]
    pub fn rises_by_itself(&self) -> bool {
        let last = self.trace.samples.last();
        matches!(self.trace.outcome, RepEnd::LostInLowering { .. })
            && last.is_some_and(|last| last.demand < 0.0)
    }

    /// The first moment of the lift at or behind a place of the range.
    #[must_use]
    pub fn lifting_at(&self, range: f64) -> Option<&RepSample> {
        let lift = self.trace.lifting();
        let index = lift.partition_point(|sample| sample.range < range);
        lift.get(index)
    }

    /// What the lifter holds still at a place of the range with full effort, in the unit of the trace.
    #[must_use]
    pub fn held_at(&self, range: f64) -> f64 {
        let held = &self.still.capacity.held;
        let at = range.clamp(0.0, 1.0) * (held.len() - 1) as f64;
        let (low, part) = (at.floor() as usize, at.fract());
        let high = (low + 1).min(held.len() - 1);
        held[low].capacity + part * (held[high].capacity - held[low].capacity)
    }
}
