//! Loads that a gym can set up: never too heavy, the fewest plates, kilograms and pounds alike.

use proptest::prelude::*;
use torquill::movement::Carrier;
use torquill::narrative::loads::loading_in_words;
use torquill::session::strength::Strength;
use torquill::session::warm_up::ladder;
use torquill::setups::{Gym, GymBar, GymPlates, GymStack, Loadings};
use torquill::units::{Mass, System};

pub fn kg(value: f64) -> Mass {
    Mass::from_kg(value)
}

fn lb(value: f64) -> Mass {
    Mass::from_lb(value)
}

/// A gym of one bar and plates: mass of one and number of pairs.
pub fn gym(bar: Mass, plates: &[(Mass, u32)]) -> Gym {
    Gym {
        title: "test gym".to_owned(),
        invented: true,
        bars: vec![GymBar {
            name: "bar".to_owned(),
            mass: bar,
        }],
        plates: plates
            .iter()
            .map(|&(mass, pairs)| GymPlates {
                mass,
                count: 2 * pairs,
            })
            .collect(),
        ..Gym::default()
    }
}

fn on_a_bar(gym: &Gym) -> Loadings {
    Loadings::of(gym, &Carrier::Bar).expect("it has a bar")
}

#[test]
fn regress_usual_loads_are_found_with_the_usual_plates() {
    let metric = Loadings::usual(System::Metric);
    let at = |target| loading_in_words(&metric.at_most(kg(target)).expect("loadable"));
    assert_eq!(at(100.0), "bar (20 kg), 25 kg + 15 kg a side");
    assert_eq!(at(142.5), "bar (20 kg), 2 × 25 kg + 10 kg + 1.25 kg a side");
    assert_eq!(at(143.9), at(142.5));
    let us = Loadings::usual(System::Us);
    let at = |target| loading_in_words(&us.at_most(lb(target)).expect("loadable"));
    assert_eq!(at(225.0), "bar (45 lb), 2 × 45 lb a side");
    assert_eq!(at(315.0), "bar (45 lb), 3 × 45 lb a side");
    assert_eq!(at(230.0), "bar (45 lb), 2 × 45 lb + 2.5 lb a side");
    assert!(metric.is_bar);
    assert_eq!(metric.lightest().as_kg(), 20.0);
}

#[test]
fn law_few_plates_limit_the_load() {
    let mut few = gym(kg(15.0), &[(kg(20.0), 1), (kg(5.0), 2)]);
    few.collars = Some(kg(2.5));
    let loading = on_a_bar(&few);
    assert_eq!(
        loading.at_most(kg(500.0)).expect("all of it").total.as_kg(),
        80.0
    );
    assert_eq!(loading.at_most(kg(59.0)).expect("some").total.as_kg(), 40.0);
    // The bar alone needs no collars: nothing slides off it.
    assert_eq!(loading.at_most(kg(19.0)).expect("bar").total.as_kg(), 15.0);
    let below = loading.at_most(kg(14.0)).expect_err("lighter than the bar");
    assert_eq!(below.exit_status(), 1);
    assert!(
        crate::calling::said(&below).contains("the lightest is 15 kg"),
        "{below}"
    );
    for nonsense in [0.0, -20.0, f64::NAN, f64::INFINITY, 5000.0] {
        assert_eq!(
            loading
                .at_most(kg(nonsense))
                .expect_err("nonsense")
                .exit_status(),
            2
        );
    }
}

#[test]
fn law_a_smallest_step_leaves_loads_out() {
    let mut coarse = gym(kg(20.0), &[(kg(20.0), 2), (kg(5.0), 3), (kg(1.25), 1)]);
    coarse.smallest_step = Some(kg(10.0));
    let loading = on_a_bar(&coarse);
    assert_eq!(
        loading.at_most(kg(89.0)).expect("loadable").total.as_kg(),
        80.0
    );
    assert_eq!(
        loading
            .at_least(kg(84.0), kg(120.0))
            .expect("loadable")
            .total
            .as_kg(),
        90.0
    );
}

#[test]
fn regress_machines_and_dumbbells_have_their_steps() {
    let mut machines = gym(kg(20.0), &[]);
    machines.stack = Some(GymStack {
        step: kg(7.5),
        most: kg(80.0),
    });
    machines.dumbbells = vec![kg(10.0), kg(14.0), kg(12.0)];
    let lever = Carrier::Lever {
        pad_m: 0.3,
        cam_m: 0.1,
    };
    let stack = Loadings::of(&machines, &lever).expect("a stack");
    assert_eq!(stack.at_most(kg(40.0)).expect("a pin").total.as_kg(), 37.5);
    assert_eq!(
        stack
            .at_least(kg(40.0), kg(80.0))
            .expect("a pin")
            .total
            .as_kg(),
        45.0
    );
    assert!(stack.at_most(kg(4.0)).is_err() && stack.at_least(kg(81.0), kg(90.0)).is_none());
    let rack = Loadings::of(&machines, &Carrier::Dumbbell).expect("dumb-bells");
    assert_eq!(rack.at_most(kg(13.0)).expect("one").total.as_kg(), 12.0);
    assert!(!rack.is_bar);
    machines.dumbbells.clear();
    assert!(Loadings::of(&machines, &Carrier::Dumbbell).is_err());
}

#[test]
fn law_mixed_plates_keep_the_unit_stamped_on_them() {
    let loading = on_a_bar(&gym(kg(20.0), &[(lb(45.0), 2), (kg(5.0), 1)]));
    let load = loading.at_most(kg(75.0)).expect("loadable");
    assert_eq!(loading_in_words(&load), "bar (20 kg), 45 lb + 5 kg a side");
    assert!((load.total.as_kg() - (20.0 + 2.0 * (45.0 * 0.453_592_37 + 5.0))).abs() < 1e-9);
}

#[test]
fn law_the_ladder_climbs_to_the_working_load() {
    let loading = Loadings::usual(System::Metric);
    for working in [25.0, 40.0, 62.5, 100.0, 147.5, 240.0] {
        let strength = Strength {
            one_rm: kg(working),
            body: Mass::ZERO,
        };
        let sets = ladder(kg(working), &loading, &strength).expect("a ladder");
        let loads: Vec<f64> = sets.iter().map(|set| set.load.total.as_kg()).collect();
        assert!(loads.windows(2).all(|pair| pair[0] < pair[1]), "{loads:?}");
        assert!(loads.iter().all(|load| *load < working), "{loads:?}");
        assert!(
            sets.windows(2)
                .all(|pair| pair[0].repetitions >= pair[1].repetitions)
        );
        assert!(working < 60.0 || sets.len() >= 3, "{loads:?}");
        assert!(
            sets.iter().all(|set| set.load.plates <= 5),
            "a warm-up is quick to set up"
        );
    }
}

fn any_loading() -> impl Strategy<Value = (f64, Loadings)> {
    let plate = (any::<bool>(), 1_u32..90, 0_u32..5);
    (
        proptest::collection::vec(plate, 0..6),
        5.0..25.0_f64,
        proptest::option::of(1_u32..10),
    )
        .prop_map(|(plates, bar_kg, step)| {
            let plates: Vec<(Mass, u32)> = plates
                .into_iter()
                .map(|(metric, halves, pairs)| {
                    let size = f64::from(halves) / 2.0;
                    (if metric { kg(size) } else { lb(size) }, pairs)
                })
                .collect();
            let mut owned = gym(kg(bar_kg), &plates);
            owned.smallest_step = step.map(|step| kg(f64::from(step) / 2.0));
            (bar_kg, on_a_bar(&owned))
        })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn law_rounding_never_exceeds((bar_kg, loading) in any_loading(), target_kg in 1.0..400.0_f64) {
        match loading.at_most(kg(target_kg)) {
            Ok(load) => prop_assert!(load.total.as_kg() <= target_kg + 1e-5 && load.total.as_kg() >= bar_kg - 1e-9),
            Err(_) => prop_assert!(bar_kg > target_kg),
        }
    }

    #[test]
    fn law_no_load_lies_between_the_two_neighbours((_, loading) in any_loading(), target_kg in 30.0..300.0_f64) {
        if let (Ok(below), Some(above)) = (loading.at_most(kg(target_kg)), loading.at_least(kg(target_kg), kg(1000.0))) {
            prop_assert!(above.total.as_kg() >= target_kg - 1e-5);
            let middle = kg((below.total.as_kg() + above.total.as_kg()) / 2.0);
            if above.total.as_kg() - below.total.as_kg() > 0.1 {
                prop_assert_eq!(loading.at_most(middle).unwrap().total, below.total);
            }
            let simple = loading.simplest(kg(20.0), kg(target_kg));
            prop_assert!(simple.is_none_or(|load| load.plates <= below.plates && load.total.as_kg() <= target_kg + 1e-5));
        }
    }

    #[test]
    fn law_kilograms_and_pounds_ask_the_same(target_kg in 20.0..300.0_f64) {
        let loading = Loadings::usual(System::Metric);
        // As many pounds as those kilograms are, to the rounding of the conversion.
        let in_lb = lb(kg(target_kg + 1e-9).as_lb());
        prop_assert_eq!(loading.at_most(kg(target_kg + 1e-9)).unwrap(), loading.at_most(in_lb).unwrap());
    }
}
