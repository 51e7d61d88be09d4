//! Measures of the bar in motion: velocities, forces, sticking regions of one lifter, power.

use super::held::{thigh_above_level, trunk_lean};
use super::lifted::{done, lifted, limit_kg, options, ratio};
use super::{Asked, settings};
use crate::resistance::{band_of, chain_of};
use torquill::movement::{Carrier, Pose};
use torquill::rep::{LiftFigures, RepModel, RepOptions, TurnRound};
use torquill::resistance::{HungBand, HungChain, Item, Motion, Setup, Weight};
use torquill::units::{Duration, Length, Mass, STANDARD_GRAVITY_M_S2};

/// The value of a measure of this file; `None` for a measure that is none of them.
pub fn value(asked: &Asked) -> Option<Option<f64>> {
    let figure = |of: fn(LiftFigures) -> f64| done(asked).and_then(|(_, _, t)| t.lift.map(of));
    Some(match asked.measure.as_str() {
        "mean_velocity" => figure(|lift| lift.mean_velocity),
        "propulsive_velocity" => figure(|lift| lift.mean_propulsive_velocity),
        "peak_velocity" => figure(|lift| lift.peak_velocity),
        "region_there" => done(asked).map(|(_, _, t)| f64::from(u8::from(t.sticking.is_some()))),
        "stuck_velocity" => done(asked).and_then(|(_, _, t)| Some(t.sticking?.minimum.velocity)),
        "stuck_trunk" => stuck(asked).and_then(|pose| Some(90.0 - trunk_lean(&pose)?)),
        "stuck_thigh" => stuck(asked).and_then(|pose| thigh_above_level(&pose)),
        "velocity_ratio" => velocity_ratio(asked),
        "slow_lowering" => {
            let usual = lifted(&asked.lift, &asked.lifter, &settings(asked)).options;
            let usual_s = usual.lowering_s()?;
            let slow = |factor: f64| RepOptions {
                lowering: Some(Duration::from_s(factor * usual_s)),
                ..usual
            };
            ratio(
                velocity_with(asked, &slow(2.0)),
                velocity_with(asked, &slow(0.75)),
            )
        }
        "paused_velocity" => {
            let usual = lifted(&asked.lift, &asked.lifter, &settings(asked)).options;
            let with = |turn| velocity_with(asked, &RepOptions { turn, ..usual });
            ratio(
                with(TurnRound::Pause(Duration::from_s(1.0))),
                with(TurnRound::TouchAndGo),
            )
        }
        "power_velocity" => strongest(asked).map(|(_, velocity)| velocity),
        "power_load" => strongest(asked).map(|(share, _)| 100.0 * share),
        "hung_velocity" => hung_velocity(asked),
        _ => return None,
    })
}

/// The pose where the bar is slowest in the sticking region.
fn stuck(asked: &Asked) -> Option<Pose> {
    let (lift, _, trace) = done(asked)?;
    let poses = lift.poses();
    let index = (trace.sticking?.minimum.range * (poses.len() - 1) as f64).round() as usize;
    poses.get(index).cloned()
}

/// Mean velocity at a share of the usual maximum, done in another way.
fn velocity_with(asked: &Asked, options: &RepOptions) -> Option<f64> {
    let sets = settings(asked);
    let limit = limit_kg(&asked.lift, &asked.lifter, &sets)?;
    let own = lifted(&asked.lift, &asked.lifter, &sets);
    let trace = own.with_kg(asked.number("load") / 100.0 * limit, options)?;
    Some(trace.lift?.mean_velocity)
}

/// Velocity of one lifter, lift or grip over another's at the same share of each one's maximum.
fn velocity_ratio(asked: &Asked) -> Option<f64> {
    let velocity = |asked: &Asked| done(asked).and_then(|(_, _, t)| Some(t.lift?.mean_velocity));
    let mut other = asked.clone();
    if let Some(lifter) = asked.text("beside_lifter") {
        lifter.clone_into(&mut other.lifter);
    }
    if let Some(lift) = asked.text("beside_lift") {
        lift.clone_into(&mut other.lift);
    }
    if let Some(grip) = asked.text("beside_grip") {
        other.with.insert("grip".to_owned(), grip.to_owned());
    }
    ratio(velocity(asked), velocity(&other))
}

/// Share of the maximum with the greatest mean power, and the mean velocity there.
fn strongest(asked: &Asked) -> Option<(f64, f64)> {
    let own = lifted(&asked.lift, &asked.lifter, &settings(asked));
    let options = options(asked, own.options);
    let limit = own.limit_kg(&options)?;
    (30..=100)
        .step_by(2)
        .filter_map(|percent| {
            let share = f64::from(percent) / 100.0;
            if share * limit < own.body_kg {
                return None;
            }
            let figures = own.with_kg(share * limit, &options)?.lift?;
            Some((share, figures.mean_power_w, figures.mean_velocity))
        })
        .max_by(|a, b| a.1.total_cmp(&b.1))
        .map(|(share, _, velocity)| (share, velocity))
}

/// Velocity with a share of the load at the top from chains or bands over that with plain weight of the same sum there.
fn hung_velocity(asked: &Asked) -> Option<f64> {
    let own = lifted(&asked.lift, &asked.lifter, &[]);
    let all_kg = asked.number("load") / 100.0 * limit_kg(&asked.lift, &asked.lifter, &[])?;
    let hung_kg = asked.number("share") / 100.0 * all_kg;
    let top = own.poses().last()?.load;
    let piece = |size: f64| {
        if asked.words("piece") == "chain" {
            let chain = chain_of("chain", size, Length::from_cm(300.0));
            return Item::Chain(HungChain::to_floor(chain, 1));
        }
        let (width, thick) = (Length::from_mm(size), Length::from_mm(4.5));
        let band = band_of("loop", width, thick, Length::from_cm(104.0));
        Item::Band(HungBand::from_floor(band, 1))
    };
    let pull_kg = |size: f64| {
        let setup = Setup::new("", vec![piece(size)]);
        setup.force_at(&top, &Carrier::Bar, Motion::Hold).along_n / STANDARD_GRAVITY_M_S2
    };
    let bar = Item::Weight(Weight::Load(Mass::from_kg(all_kg - hung_kg)));
    // Pull goes with a chain's mass and with a band's width: 10 of either are an ordinary one.
    let size = 10.0 * hung_kg / pull_kg(10.0);
    let hung = Setup::new("", vec![bar, piece(size)]);
    let model = RepModel::for_setup(&own.movement, &own.lifter, &hung).ok()?;
    let with = model.run(&hung, &own.options).ok()?.lift?.mean_velocity;
    let plain = own.with_kg(all_kg, &own.options)?.lift?.mean_velocity;
    ratio(Some(with), Some(plain))
}
