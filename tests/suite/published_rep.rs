//! Published checks of `rep`: sticking region, velocities, forces and maxima of whole lifts.

use crate::published_table::{Row, Tolerance, check, miss};
use crate::rep::{kg, lifter, movement, run, s};
use torquill::library::{Library, assemble};
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
            .one_rm(&template, kg(0.1), &options)
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

    fn mean_velocity(&self, share: f64) -> f64 {
        self.at(share).lift.expect("a lift").mean_velocity
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
        let found = self.model.one_rm(&self.template, kg(0.1), options);
        found.unwrap_or_else(|e| panic!("{e}")).load
    }
}

fn seconds(region: Option<StickingInMotion>) -> (f64, f64) {
    region.map_or((f64::NAN, 0.0), |r| (r.first_peak.time_s, r.duration_s()))
}

const TILLAAR_2010: &str = "van den Tillaar & Ettema 2010, J Sports Sci 28:529-535, abstract";
const NEWTON: &str = "Newton et al. 1997, Eur J Appl Physiol 75:333-342, quoted 2009";
const ELLIOTT: &str = "Elliott, Wilson & Kerr 1989, Med Sci Sports Exerc 21:450-462, quoted 2018";
const DUFFEY: &str = "Duffey & Challis 2011, J Strength Cond Res 25:2442-2447, abstract";
const SHALLOW: &str = "the valley of isometric force off the chest is 6 % deep in the model; the measured lifts ask for a deeper one (no readable table of the isometric heights of van den Tillaar 2012)";
const TURN: &str = "the simulated bar turns round in one smooth stroke that brakes with 5 % of the load; a quick braking on the chest starts faster and pushes harder";

#[test]
fn published_van_den_tillaar_2010_sticking_region_of_a_maximal_bench_press() {
    let bench = Lift::of("bench-press");
    let (start_s, lasts_s) = seconds(bench.region(1.0));
    miss(
        Row {
            quantity: "bench press at 1RM: start of the sticking region, s",
            published: 0.2,
            tolerance: Tolerance::Interval(0.1, 0.4),
            computed: start_s,
            source: TILLAAR_2010,
            why: "the abstract says about",
        },
        TURN,
    );
    check(Row {
        quantity: "bench press at 1RM: length of the sticking region, s",
        published: 0.9,
        tolerance: Tolerance::Interval(0.5, 1.4),
        computed: lasts_s,
        source: TILLAAR_2010,
        why: "the abstract says about",
    });
    let minimum = bench.region(1.0).expect("a region").minimum;
    check(Row {
        quantity: "bench press at 1RM: sticking point off the chest, cm",
        published: 17.5,
        tolerance: Tolerance::Interval(10.0, 22.0),
        computed: 100.0 * minimum.position,
        source: "common practice",
        why: "a rule of thumb of 15-20 cm, without a source",
    });
}

#[test]
fn published_newton_1997_region_at_90_but_not_at_75_percent() {
    let bench = Lift::of("bench-press");
    let there = |share: f64| f64::from(u8::from(bench.region(share).is_some()));
    miss(
        Row {
            quantity: "bench press at 90 %: sticking region (1 = there)",
            published: 1.0,
            tolerance: Tolerance::Absolute(0.0),
            computed: there(0.9),
            source: NEWTON,
            why: "yes or no",
        },
        SHALLOW,
    );
    check(Row {
        quantity: "bench press at 75 %: sticking region (0 = gone)",
        published: 0.0,
        tolerance: Tolerance::Absolute(0.0),
        computed: there(0.75),
        source: NEWTON,
        why: "yes or no",
    });
}

#[test]
fn published_elliott_1989_share_of_the_ascent_that_slows_down() {
    let bench = Lift::of("bench-press");
    let slowing = |share: f64| {
        let figures = bench.at(share).lift.expect("a lift");
        100.0 * figures.deceleration_share
    };
    miss(
        Row {
            quantity: "bench press at 1RM: share of the ascent that slows down, %",
            published: 23.0,
            tolerance: Tolerance::Absolute(8.0),
            computed: slowing(1.0),
            source: ELLIOTT,
            why: "scatter not visible; a third of the value",
        },
        "the sticking region of van den Tillaar 2010 alone, 0.9 s, is more than a third of a maximal ascent: the two studies disagree, and the model stands between",
    );
    check(Row {
        quantity: "bench press at 80 %: share of the ascent that slows down, %",
        published: 52.0,
        tolerance: Tolerance::Absolute(17.0),
        computed: slowing(0.8),
        source: ELLIOTT,
        why: "scatter not visible; a third of the value",
    });
}

#[test]
fn published_duffey_2011_peak_force_over_load() {
    let bench = Lift::of("bench-press");
    let peak = |share: f64| {
        let figures = bench.at(share).lift.expect("a lift");
        100.0 * figures.peak_force_over_demand
    };
    miss(
        Row {
            quantity: "bench press at 1RM: peak force, % of the load",
            published: 115.0,
            tolerance: Tolerance::Absolute(5.0),
            computed: peak(1.0),
            source: DUFFEY,
            why: "scatter not visible; the spread between the two loads and twice that",
        },
        TURN,
    );
    miss(
        Row {
            quantity: "bench press at 80 %: peak force, % of the load",
            published: 113.0,
            tolerance: Tolerance::Absolute(5.0),
            computed: peak(0.8),
            source: DUFFEY,
            why: "scatter not visible; the spread between the two loads and twice that",
        },
        "the simulated lifter pushes with everything from the start; novices in a set did not",
    );
}

#[test]
fn published_mean_velocity_at_the_maximum() {
    let rows = [
        (
            "bench-press",
            0.16,
            0.08,
            0.24,
            "Gonzalez-Badillo & Sanchez-Medina 2010, abstract",
            true,
        ),
        (
            "squat",
            0.32,
            0.2,
            0.4,
            "Sanchez-Medina et al. 2017, abstract",
            true,
        ),
        (
            "pull-up",
            0.20,
            0.10,
            0.30,
            "Sanchez-Moreno et al. 2017, from memory",
            true,
        ),
        (
            "overhead-press",
            0.19,
            0.09,
            0.29,
            "Balsalobre-Fernandez et al. 2018, from memory",
            false,
        ),
        (
            "row",
            0.52,
            0.44,
            0.60,
            "Sanchez-Medina et al. 2014, from memory",
            true,
        ),
    ];
    for (name, published, low, high, source, is_met) in rows {
        let lift = Lift::of(name);
        let quantity = format!("{name} at 1RM: mean velocity, m/s");
        let row = Row {
            quantity: &quantity,
            published,
            tolerance: Tolerance::Interval(low, high),
            computed: lift.mean_velocity(1.0),
            source,
            why: "two standard deviations between lifters; guided bar in the studies of bench press and squat",
        };
        if is_met {
            check(row);
        } else {
            miss(
                row,
                "the simulated press has a strong start and is fast through it; the published lift is seated",
            );
        }
    }
}

#[test]
fn published_load_velocity_equation_of_the_bench_press() {
    let bench = Lift::done("bench-press", |usual| RepOptions {
        turn: TurnRound::Pause(s(1.0)),
        ..usual
    });
    for (share, is_met) in [
        (0.3, false),
        (0.5, false),
        (0.7, false),
        (0.8, true),
        (0.9, true),
        (1.0, true),
    ] {
        let v = bench.propulsive_velocity(share);
        let quantity = format!(
            "bench press, paused: share of 1RM that belongs to our velocity at {:.0} %",
            100.0 * share
        );
        let row = Row {
            quantity: &quantity,
            published: 100.0 * share,
            tolerance: Tolerance::Absolute(7.1),
            computed: 8.4326 * v * v - 73.501 * v + 112.33,
            source: "Gonzalez-Badillo & Sanchez-Medina 2010, Int J Sports Med 31:347-352, equation from memory",
            why: "two standard errors of estimate (3.56 % of 1RM)",
        };
        if is_met {
            check(row);
        } else {
            miss(
                row,
                "10-15 % slower with light loads: Hill's hyperbola is more curved than the straight force-velocity line of whole presses, and our path is 36 cm long",
            );
        }
    }
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
    check(Row {
        quantity: "bench press: share of 1RM with the greatest mean power, %",
        published: 54.2,
        tolerance: Tolerance::Interval(40.0, 65.0),
        computed: 100.0 * shares[strongest],
        source: "Sanchez-Medina, Perez & Gonzalez-Badillo 2010, Int J Sports Med 31:123-129, abstract",
        why: "the abstract finds no difference from 40 to 65 %",
    });
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
        check(Row {
            quantity,
            published: 1.1,
            tolerance: Tolerance::Interval(1.01, 1.6),
            computed,
            source: "Martinez-Cava et al. 2019, J Sports Sci Med 18:645-652, abstract",
            why: "the abstract gives the order; a difference of 1 % at least",
        });
    }
}

#[test]
fn published_kelly_2015_eccentric_maximum() {
    let bench = Lift::of("bench-press");
    let lowered = bench
        .model
        .eccentric_max(&bench.template, kg(0.1), s(3.0), &bench.options)
        .unwrap();
    let lifted = bench.limit(&bench.options);
    miss(
        Row {
            quantity: "bench press lowered in 3 s: maximum over the lifted one",
            published: 1.24,
            tolerance: Tolerance::Interval(1.15, 1.35),
            computed: lowered.load.as_kg() / lifted.as_kg(),
            source: "Kelly et al. 2015, J Strength Cond Res 29:1027-1032, abstract",
            why: "between subjects; isokinetic 1.41 is the ceiling",
        },
        "lengthening gives 1.12 of isometric force as measured at shoulder and knee, and the simulated maximum is lifted at nearly isometric force",
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
        check(Row {
            quantity: &quantity,
            published: 0.97,
            tolerance: Tolerance::Interval(0.9, 0.995),
            computed: lowered_in(time) / quick,
            source: "Wilk et al. 2020, J Sports Sci Med 19:317-322, abstract",
            why: "the abstract gives the direction; half a per cent at least",
        });
    }
}

#[test]
fn published_van_den_tillaar_2014_squat_sticks_for_a_shorter_time() {
    let (_, bench_s) = seconds(Lift::of("bench-press").region(1.0));
    let (_, squat_s) = seconds(Lift::of("squat").region(1.0));
    check(Row {
        quantity: "sticking region of the squat over that of the bench press, length in time",
        published: 0.5,
        tolerance: Tolerance::Interval(0.0, 0.999),
        computed: squat_s / bench_s,
        source: "van den Tillaar, Andersen & Saeterbakken 2014, J Hum Kinet 42:63-71, abstract",
        why: "the abstract says much shorter; a third of the lifters had none",
    });
}

/// Our velocity at a share of the maximum, put into a published equation.
fn by_equation(
    name: &str,
    pause: bool,
    [a, b, c]: [f64; 3],
    rows: &[(f64, bool)],
    row: Row,
    reason: &str,
) {
    let lift = Lift::done(name, |usual| RepOptions {
        turn: if pause {
            TurnRound::Pause(s(1.0))
        } else {
            usual.turn
        },
        ..usual
    });
    for (share, is_met) in rows {
        let v = lift.propulsive_velocity(*share);
        let quantity = format!(
            "{name}: share of 1RM that belongs to our velocity at {:.0} %",
            100.0 * share
        );
        let row = Row {
            quantity: &quantity,
            published: 100.0 * share,
            computed: a * v * v + b * v + c,
            ..row.clone()
        };
        if *is_met {
            check(row);
        } else {
            miss(row, reason);
        }
    }
}

#[test]
fn published_load_velocity_equation_of_the_squat() {
    by_equation(
        "squat",
        true,
        [-5.961, -50.71, 117.0],
        &[
            (0.4, false),
            (0.6, false),
            (0.8, false),
            (0.9, true),
            (1.0, true),
        ],
        Row {
            quantity: "",
            published: 0.0,
            tolerance: Tolerance::Absolute(8.04),
            computed: 0.0,
            source: "Sanchez-Medina et al. 2017, Sports Med Int Open 1:E80-E88, equation from memory",
            why: "two standard errors of estimate (4.02 % of 1RM)",
        },
        "a quarter slower with light loads: the simulated lifter brakes gently for the second half (stop_from, assumed from the bench press) and stays flat on the feet; Hill's hyperbola is more curved than the force-velocity line of whole squats",
    );
}

#[test]
fn published_load_velocity_equation_of_the_bench_pull() {
    by_equation(
        "row",
        false,
        [18.5797, -104.182, 147.94],
        &[
            (0.3, false),
            (0.5, false),
            (0.7, true),
            (0.8, true),
            (0.9, true),
            (1.0, true),
        ],
        Row {
            quantity: "",
            published: 0.0,
            tolerance: Tolerance::Absolute(7.1),
            computed: 0.0,
            source: "Sanchez-Medina et al. 2014, Int J Sports Med 35:209-216, equation from memory",
            why: "scatter not visible; that of the same authors' bench press (two times 3.56 %)",
        },
        "slower with light loads: Hill's hyperbola is more curved than the force-velocity line of whole pulls; prone on a bench in the study, bent over here",
    );
}

#[test]
fn published_larsen_2021_narrow_grip_lifts_less() {
    let with = |sets: [&str; 2]| {
        let sets = sets.map(str::to_owned);
        let model = assemble(&Library::built_in(), "reference-man", "bench-press", &sets)
            .unwrap_or_else(|e| panic!("{e}"));
        let moving =
            RepModel::new(&model.movement, &model.lifter).unwrap_or_else(|e| panic!("{e}"));
        let found = moving.one_rm(&Setup::default(), kg(0.1), &RepOptions::default());
        found.unwrap_or_else(|e| panic!("{e}")).load.as_kg()
    };
    // 1.7 and 1 times the biacromial breadth of 40.4 cm; a narrow grip goes with arms along the trunk.
    let wide = with(["technique.grip_width=68.7 cm", "technique.tuck=20 deg"]);
    let narrow = with(["technique.grip_width=40.4 cm", "technique.tuck=50 deg"]);
    miss(
        Row {
            quantity: "bench press: 1RM with a narrow grip over the one with a wide grip",
            published: 103.7 / 109.8,
            tolerance: Tolerance::Absolute(0.1),
            computed: narrow / wide,
            source: "Larsen, Gomo & van den Tillaar 2021, Front Sports Act Living 2:637066, abstract",
            why: "14 men, scatter of the ratio not visible",
        },
        "less as published, but by too much: the elbow carries a narrow grip, and the strength of its extensors is assumed (no readable table)",
    );
}
