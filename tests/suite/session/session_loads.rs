//! Loads that a gym can set up: never too heavy, the fewest plates, kilograms and pounds alike.

use proptest::prelude::*;
use torquill::session::loads::{Loaded, Loading, PlatePairs};
use torquill::session::warm_up::ladder;
use torquill::units::{Mass, System};

fn kg(value: f64) -> Mass {
    Mass::from_kg(value)
}

fn lb(value: f64) -> Mass {
    Mass::from_lb(value)
}

fn words(load: &Loaded, system: System) -> String {
    load.in_words(system)
}

#[test]
fn law_usual_loads_are_found_with_the_usual_plates() {
    let metric = Loading::usual_metric();
    let at = |target| {
        words(
            &metric.at_most(kg(target)).expect("loadable"),
            System::Metric,
        )
    };
    assert_eq!(at(20.0), "20 kg bar, empty");
    assert_eq!(at(100.0), "20 kg bar + a side: 25 + 15 kg");
    assert_eq!(at(142.5), "20 kg bar + a side: 25 + 25 + 10 + 1.25 kg");
    assert_eq!(at(143.9), at(142.5));
    let us = Loading::usual_us();
    let at = |target| words(&us.at_most(lb(target)).expect("loadable"), System::Us);
    assert_eq!(at(225.0), "45 lb bar + a side: 45 + 45 lb");
    assert_eq!(at(315.0), "45 lb bar + a side: 45 + 45 + 45 lb");
    assert_eq!(at(230.0), "45 lb bar + a side: 45 + 45 + 2.5 lb");
}

#[test]
fn law_few_plates_limit_the_load() {
    let gym = Loading::Bar {
        bar: kg(15.0),
        collars: kg(5.0),
        plates: vec![
            PlatePairs {
                mass: kg(20.0),
                pairs: 1,
                marked: System::Metric,
            },
            PlatePairs {
                mass: kg(5.0),
                pairs: 2,
                marked: System::Metric,
            },
        ],
        smallest_step: None,
    };
    assert_eq!(
        gym.at_most(kg(500.0)).expect("all of it").total.as_kg(),
        80.0
    );
    assert_eq!(gym.at_most(kg(59.0)).expect("some").total.as_kg(), 40.0);
    let below = gym.at_most(kg(19.0)).expect_err("lighter than the bar");
    assert_eq!(below.exit_status(), 1);
    assert!(
        below.to_string().contains("the lightest is 20 kg"),
        "{below}"
    );
    for nonsense in [0.0, -20.0, f64::NAN, f64::INFINITY, 5000.0] {
        assert_eq!(
            gym.at_most(kg(nonsense))
                .expect_err("nonsense")
                .exit_status(),
            2
        );
    }
}

#[test]
fn law_a_smallest_step_leaves_loads_out() {
    let Loading::Bar {
        bar,
        collars,
        plates,
        ..
    } = Loading::usual_metric()
    else {
        panic!("a bar")
    };
    let gym = Loading::Bar {
        bar,
        collars,
        plates,
        smallest_step: Some(kg(10.0)),
    };
    assert_eq!(
        gym.at_most(kg(104.0)).expect("loadable").total.as_kg(),
        100.0
    );
    assert_eq!(
        gym.at_least(kg(104.0), kg(120.0))
            .expect("loadable")
            .total
            .as_kg(),
        110.0
    );
}

#[test]
fn law_machines_and_dumbbells_have_their_steps() {
    let stack = Loading::Stack {
        lightest: kg(5.0),
        step: kg(7.5),
        heaviest: kg(80.0),
    };
    assert_eq!(stack.at_most(kg(40.0)).expect("a pin").total.as_kg(), 35.0);
    assert_eq!(
        stack
            .at_least(kg(40.0), kg(80.0))
            .expect("a pin")
            .total
            .as_kg(),
        42.5
    );
    assert!(stack.at_most(kg(4.0)).is_err() && stack.at_least(kg(81.0), kg(90.0)).is_none());
    let rack = Loading::Pieces(vec![kg(10.0), kg(14.0), kg(12.0)]);
    assert_eq!(
        rack.at_most(kg(13.0)).expect("a dumbbell").total.as_kg(),
        12.0
    );
    assert_eq!(
        rack.nearest(kg(13.5), kg(20.0))
            .expect("a dumbbell")
            .total
            .as_kg(),
        14.0
    );
    assert!(Loading::Pieces(Vec::new()).at_most(kg(10.0)).is_err());
    assert!(
        Loading::Stack {
            lightest: kg(5.0),
            step: kg(0.0),
            heaviest: kg(80.0)
        }
        .at_most(kg(9.0))
        .is_err()
    );
}

#[test]
fn law_mixed_plates_keep_the_unit_stamped_on_them() {
    let gym = Loading::Bar {
        bar: kg(20.0),
        collars: kg(0.0),
        plates: vec![
            PlatePairs {
                mass: lb(45.0),
                pairs: 2,
                marked: System::Us,
            },
            PlatePairs {
                mass: kg(5.0),
                pairs: 1,
                marked: System::Metric,
            },
        ],
        smallest_step: None,
    };
    let load = gym.at_most(kg(75.0)).expect("loadable");
    assert_eq!(
        words(&load, System::Metric),
        "20 kg bar + a side: 45 lb + 5 kg"
    );
    assert!((load.total.as_kg() - (20.0 + 2.0 * (45.0 * 0.453_592_37 + 5.0))).abs() < 1e-9);
}

#[test]
fn law_the_ladder_climbs_to_the_working_load() {
    for working in [25.0, 40.0, 62.5, 100.0, 147.5, 240.0] {
        let gym = Loading::usual_metric();
        let sets = ladder(kg(working), &gym).expect("a ladder");
        let loads: Vec<f64> = sets.iter().map(|set| set.load.total.as_kg()).collect();
        assert!(loads.windows(2).all(|pair| pair[0] < pair[1]), "{loads:?}");
        assert!(loads.iter().all(|load| *load < working), "{loads:?}");
        assert!(
            sets.windows(2)
                .all(|pair| pair[0].repetitions >= pair[1].repetitions)
        );
        assert!(working < 60.0 || sets.len() >= 3, "{loads:?}");
    }
}

fn any_gym() -> impl Strategy<Value = Loading> {
    let plate = (prop_oneof![Just(true), Just(false)], 1_u32..90, 0_u32..5);
    (
        proptest::collection::vec(plate, 0..6),
        5.0..25.0_f64,
        proptest::option::of(1_u32..10),
    )
        .prop_map(|(plates, bar_kg, step)| Loading::Bar {
            bar: kg(bar_kg),
            collars: kg(0.0),
            plates: plates
                .into_iter()
                .map(|(metric, halves, pairs)| {
                    let size = f64::from(halves) / 2.0;
                    let (mass, marked) = if metric {
                        (kg(size), System::Metric)
                    } else {
                        (lb(size), System::Us)
                    };
                    PlatePairs {
                        mass,
                        pairs,
                        marked,
                    }
                })
                .collect(),
            smallest_step: step.map(|step| kg(f64::from(step) / 2.0)),
        })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn law_rounding_never_exceeds_and_the_plates_add_up(gym in any_gym(), target_kg in 1.0..400.0_f64) {
        let Loading::Bar { bar, plates, .. } = &gym else { unreachable!() };
        match gym.at_most(kg(target_kg)) {
            Ok(load) => {
                prop_assert!(load.total.as_kg() <= target_kg + 1e-5);
                let side: f64 = load.a_side.iter().map(|(plate, count)| plate.mass.as_kg() * f64::from(*count)).sum();
                prop_assert!((bar.as_kg() + 2.0 * side - load.total.as_kg()).abs() < 1e-9);
                for (plate, count) in &load.a_side {
                    let owned: u32 = plates.iter().filter(|p| p == &plate).map(|p| p.pairs).sum();
                    prop_assert!(*count <= owned);
                }
            }
            Err(_) => prop_assert!(bar.as_kg() > target_kg),
        }
    }

    #[test]
    fn law_no_load_lies_between_the_two_neighbours(gym in any_gym(), target_kg in 30.0..300.0_f64) {
        if let (Ok(below), Some(above)) = (gym.at_most(kg(target_kg)), gym.at_least(kg(target_kg), kg(1000.0))) {
            prop_assert!(above.total.as_kg() >= target_kg - 1e-5);
            let middle = kg((below.total.as_kg() + above.total.as_kg()) / 2.0);
            if above.total.as_kg() - below.total.as_kg() > 0.1 {
                prop_assert_eq!(gym.at_most(middle).unwrap().total, below.total);
            }
            let nearest = gym.nearest(kg(target_kg), kg(1000.0)).unwrap().total;
            prop_assert!(nearest == below.total || nearest == above.total);
        }
    }

    #[test]
    fn law_kilograms_and_pounds_ask_the_same(target_kg in 20.0..300.0_f64) {
        let gym = Loading::usual_metric();
        // As many pounds as those kilograms are, to the rounding of the conversion.
        let in_lb = lb(kg(target_kg + 1e-9).as_lb());
        prop_assert_eq!(gym.at_most(kg(target_kg + 1e-9)).unwrap(), gym.at_most(in_lb).unwrap());
    }
}
