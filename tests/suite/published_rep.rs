//! Published checks of `rep`: sticking region, velocities, forces and maxima of whole lifts.

use crate::evidence::{Paper, paper};
use crate::rep::{kg, lifter, movement, run, s};
use torquill::movement::Carrier;
use torquill::rep::{RepModel, RepOptions, RepTrace, StickingInMotion, TurnRound, with_load};
use torquill::resistance::{Item, Setup, Weight};
use torquill::units::Mass;

/// A lifter, a movement, and the load that the lifter just lifts.
struct Lift {
    model: RepModel,
    template: Setup,
    options: RepOptions,
    /// The lifted body's own mass, kg; 0 where it does not count.
    body_kg: f64,
    /// The maximum as a test finds it, body included, kg.
    max_kg: f64,
}

/// Half of the usual loading step: how far the limit lies above the last weight that was lifted.
const HALF_STEP_KG: f64 = 1.25;

impl Lift {
    fn of(name: &str) -> Self {
        Self::done(name, |usual| usual)
    }

    fn done(name: &str, change: impl Fn(RepOptions) -> RepOptions) -> Self {
        let (movement, body) = (movement(name), lifter("reference-man"));
        let model = RepModel::new(&movement, &body).unwrap_or_else(|e| panic!("{name}: {e}"));
        let carried = movement.carrier().unwrap() == Carrier::Body;
        let body_kg = if carried { body.body_mass.as_kg() } else { 0.0 };
        let mut template = Setup::default();
        if carried {
            let mass = Weight::BodyMass(body.body_mass);
            template.items.push(Item::Weight(mass));
        }
        let options = change(RepOptions::usual_for(&movement));
        let limit = model
            .one_rm(&template, &options)
            .unwrap_or_else(|e| panic!("{name}: {e}"));
        Self {
            model,
            template,
            options,
            body_kg,
            max_kg: limit.load.as_kg() + body_kg - HALF_STEP_KG,
        }
    }

    fn at(&self, share: f64) -> RepTrace {
        let load = kg((share * self.max_kg - self.body_kg).max(0.0));
        run(&self.model, &with_load(&self.template, load), &self.options)
    }

    fn propulsive_velocity(&self, share: f64) -> f64 {
        self.at(share)
            .lift
            .expect("a lift")
            .mean_propulsive_velocity
    }

    fn region(&self, share: f64) -> Option<StickingInMotion> {
        self.at(share).sticking
    }

    fn limit(&self, options: &RepOptions) -> Mass {
        let found = self.model.one_rm(&self.template, options);
        found.unwrap_or_else(|e| panic!("{e}")).load
    }
}

fn seconds(region: Option<StickingInMotion>) -> (f64, f64) {
    region.map_or((f64::NAN, 0.0), |r| (r.first_peak.time_s, r.duration_s()))
}

#[test]
fn published_van_den_tillaar_2010_sticking_region_of_a_maximal_bench_press() {
    let bench = Lift::of("bench-press");
    let tillaar = paper("vandentillaar2010_sticking");
    let (start_s, lasts_s) = seconds(bench.region(1.0));
    tillaar.check(
        "bench press at 1RM: start of the sticking region, s",
        start_s,
    );
    tillaar.check(
        "bench press at 1RM: length of the sticking region, s",
        lasts_s,
    );
    let minimum = bench.region(1.0).map(|region| region.minimum.position);
    paper("practice_sticking_point").check(
        "bench press at 1RM: sticking point off the chest, cm",
        100.0 * minimum.unwrap_or(f64::NAN),
    );
}

#[test]
fn published_newton_1997_region_at_90_but_not_at_75_percent() {
    let bench = Lift::of("bench-press");
    let newton = paper("newton1997_sticking");
    let there = |share: f64| f64::from(u8::from(bench.region(share).is_some()));
    newton.check(
        "bench press at 90 %: sticking region (1 = there)",
        there(0.9),
    );
    newton.check(
        "bench press at 75 %: sticking region (0 = gone)",
        there(0.75),
    );
}

#[test]
fn published_elliott_1989_share_of_the_ascent_that_slows_down() {
    let bench = Lift::of("bench-press");
    let elliott = paper("elliott1989_bench_press");
    let slowing = |share: f64| {
        let figures = bench.at(share).lift.expect("a lift");
        100.0 * figures.deceleration_share
    };
    elliott.check(
        "bench press at 1RM: share of the ascent that slows down, %",
        slowing(1.0),
    );
    elliott.check(
        "bench press at 80 %: share of the ascent that slows down, %",
        slowing(0.8),
    );
}

#[test]
fn published_duffey_2011_peak_force_over_load() {
    let bench = Lift::of("bench-press");
    let peak = |share: f64| {
        let figures = bench.at(share).lift.expect("a lift");
        100.0 * figures.peak_force_over_demand
    };
    paper("duffey2011_bench_press")
        .check("bench press at 1RM: peak force, % of the load", peak(1.0));
    paper("duffey2011_bench_press")
        .check("bench press at 80 %: peak force, % of the load", peak(0.8));
}

#[test]
fn published_load_velocity_equation_of_the_bench_press() {
    by_equation(
        "bench-press",
        true,
        &paper("gonzalezbadillo2010_bench_press"),
    );
}

#[test]
fn published_sanchez_medina_2010_propulsive_phase_and_power() {
    let bench = Lift::of("bench-press");
    let shares: Vec<f64> = (20..=100)
        .step_by(2)
        .map(|p| f64::from(p) / 100.0)
        .collect();
    let lifts: Vec<_> = shares.iter().map(|share| bench.at(*share)).collect();
    let strongest = (0..shares.len())
        .max_by(|a, b| {
            let power = |i: &usize| lifts[*i].lift.expect("a lift").mean_power_w;
            power(a).total_cmp(&power(b))
        })
        .expect("loads");
    paper("sanchezmedina2010_power").check(
        "bench press: share of 1RM with the greatest mean power, %",
        100.0 * shares[strongest],
    );
}

#[test]
fn published_martinez_cava_2019_shorter_presses_have_a_higher_maximum() {
    let bench = Lift::of("bench-press");
    let from = |from: f64| {
        let options = RepOptions {
            from,
            ..bench.options
        };
        bench.limit(&options).as_kg()
    };
    let (full, two_thirds, third) = (from(0.0), from(1.0 / 3.0), from(2.0 / 3.0));
    for (quantity, computed) in [
        (
            "bench press: 1RM of the upper two thirds over the full one",
            two_thirds / full,
        ),
        (
            "bench press: 1RM of the upper third over the upper two thirds",
            third / two_thirds,
        ),
    ] {
        paper("martinezcava2019_range").check(quantity, computed);
    }
}

#[test]
fn published_kelly_2015_eccentric_maximum() {
    let bench = Lift::of("bench-press");
    let lowered = bench
        .model
        .eccentric_max(&bench.template, s(3.0), &bench.options)
        .unwrap();
    let lifted = bench.limit(&bench.options);
    paper("kelly2015_bench_press").check(
        "bench press lowered in 3 s: maximum over the lifted one",
        lowered.load.as_kg() / lifted.as_kg(),
    );
}

#[test]
fn published_wilk_2020_slower_lowering_lowers_the_maximum() {
    let bench = Lift::of("bench-press");
    let lowered_in = |time: f64| {
        let options = RepOptions {
            lowering: Some(s(time)),
            ..bench.options
        };
        bench.limit(&options).as_kg()
    };
    let quick = lowered_in(2.0);
    for time in [4.0, 6.0] {
        let quantity =
            format!("bench press: 1RM after lowering in {time} s over the one after 2 s");
        paper("wilk2020_tempo").check(&quantity, lowered_in(time) / quick);
    }
}

#[test]
fn published_van_den_tillaar_2014_squat_sticks_for_a_shorter_time() {
    let (_, bench_s) = seconds(Lift::of("bench-press").region(1.0));
    let (_, squat_s) = seconds(Lift::of("squat").region(1.0));
    paper("vandentillaar2014_squat").check(
        "sticking region of the squat over that of the bench press, length in time",
        squat_s / bench_s,
    );
}

/// Our velocity at a share of the maximum, put into a published equation.
fn by_equation(name: &str, pause: bool, paper: &Paper) {
    let lift = Lift::done(name, |usual| RepOptions {
        turn: if pause {
            TurnRound::Pause(s(1.0))
        } else {
            usual.turn
        },
        ..usual
    });
    for row in paper.rows_with("square") {
        let v = lift.propulsive_velocity(row.published() / 100.0);
        row.check(row.number("square") * v * v + row.number("slope") * v + row.number("constant"));
    }
}

#[test]
fn published_load_velocity_equation_of_the_squat() {
    by_equation("squat", true, &paper("sanchezmedina2017_squat"));
}

#[test]
fn published_load_velocity_equation_of_the_bench_pull() {
    by_equation("row", false, &paper("sanchezmedina2014_row"));
}
