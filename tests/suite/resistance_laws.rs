//! Laws of `resistance` and `demand` on random inputs and at limits.

use crate::resistance::energy_lost_j;
use crate::resistance::{at_height, chain_of, loop_band, straight_lift};
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use std::collections::BTreeMap;
use torquill::demand::DemandCurve;
use torquill::grammar::{Stock, readings_from_csv, readings_from_text, setup_from_texts};
use torquill::movement::{Carrier, LoadPoint, PlaneForce};
use torquill::narrative::implements::fit_in_words;
use torquill::resistance::{
    Anchor, Assistance, Band, BandReading, Cable, Chain, ChainHang, EccentricOnly, FittedPull,
    Hang, HungBand, HungChain, Item, Lead, Leader, LeverMachine, Motion, Setup, Sled, Turns,
    Weight,
};
use torquill::units::{Angle, Force, Length, Mass, System};

pub const BAR: Carrier = Carrier::Bar;
pub const LIFT: Motion = Motion::Lift { speed_m_s: 0.4 };
pub const LOWER: Motion = Motion::Lower { speed_m_s: 0.4 };

pub fn band(width_mm: f64) -> Band {
    loop_band(width_mm, 104.0)
}

pub fn chain(kg_m: f64, length_m: f64) -> Chain {
    chain_of("chain", kg_m, Length::from_m(length_m))
}

pub fn anchored(width_mm: f64, height_cm: f64, offset_cm: f64, hang: Hang) -> Item {
    let mut hung = HungBand::from_floor(band(width_mm), 1);
    hung.anchor =
        Anchor::at(Length::from_cm(height_cm), Length::from_cm(offset_cm)).expect("a place");
    hung.hang = hang;
    Item::Band(hung)
}

pub fn load(kg: f64) -> Item {
    Item::Weight(Weight::Load(Mass::from_kg(kg)))
}

pub fn total(items: Vec<Item>, point: &LoadPoint, carrier: &Carrier, motion: Motion) -> PlaneForce {
    Setup::new("", items).total_at(point, carrier, motion).force
}

fn random_item(random: &mut ChaCha8Rng) -> Item {
    let mass = Mass::from_kg(random.random_range(0.0..200.0));
    match random.random_range(0..9) {
        0 => Item::Weight(Weight::Load(mass)),
        1 => Item::Weight(Weight::Plates {
            each: Mass::from_kg(20.0),
            pairs: random.random_range(0..5),
        }),
        2 => anchored(
            random.random_range(6.0..110.0),
            random.random_range(0.0..250.0),
            random.random_range(-150.0..150.0),
            [Hang::Auto, Hang::Single, Hang::Doubled, Hang::Choked][random.random_range(0..4)],
        ),
        3 => {
            let mut hung = HungChain::to_floor(
                chain(random.random_range(0.3..9.0), random.random_range(0.2..3.0)),
                random.random_range(1..4),
            );
            hung.hang = [ChainHang::Straight, ChainHang::DoubleLooped][random.random_range(0..2)];
            hung.floor = Length::from_cm(random.random_range(0.0..60.0));
            Item::Chain(hung)
        }
        4 => Item::Cable(
            Cable::new(
                mass,
                random.random_range(0.5..4.0),
                random.random_range(0.0..0.3),
                Lead::Pulley(
                    Anchor::at(Length::from_m(1.0), Length::from_m(-1.0)).expect("a place"),
                ),
            )
            .expect("a cable"),
        ),
        5 => Item::Sled(Sled::new(mass, random.random_range(0.0..0.5)).expect("a sled")),
        6 => Item::EccentricOnly(EccentricOnly::Hung(mass)),
        7 => Item::Assistance(Assistance::Counterweight(mass)),
        _ => Item::Lever(
            LeverMachine::new(
                mass,
                Length::from_m(0.6),
                Turns::AboutPivot {
                    pivot: Anchor::at(Length::from_m(1.2), Length::from_m(-0.8)).expect("a place"),
                    plates_ahead: Angle::from_deg(random.random_range(-40.0..40.0)),
                },
            )
            .expect("a lever"),
        ),
    }
}

fn random_point(random: &mut ChaCha8Rng) -> LoadPoint {
    LoadPoint {
        range: random.random_range(0.0..1.0),
        x_m: random.random_range(-0.5..0.5),
        z_m: random.random_range(0.0..2.2),
        dx_ds_m: random.random_range(-0.3..0.3),
        dz_ds_m: random.random_range(-0.6..0.6),
        travel_m: random.random_range(0.0..1.0),
        lever_rad: random.random_range(0.0..2.0),
    }
}

fn random_carrier(random: &mut ChaCha8Rng) -> Carrier {
    match random.random_range(0..5) {
        0 => Carrier::Bar,
        1 => Carrier::Dumbbell,
        2 => Carrier::Sled {
            angle_rad: random.random_range(0.0..1.57),
        },
        3 => Carrier::Lever {
            pad_m: 0.35,
            cam_m: 0.12,
        },
        _ => Carrier::Body,
    }
}

fn random_motion(random: &mut ChaCha8Rng) -> Motion {
    Motion::from_speed([-0.5, 0.0, 0.7][random.random_range(0..3)])
}

fn assert_close(a: PlaneForce, b: PlaneForce, what: &str) {
    let size = 1.0 + a.magnitude_n();
    assert!((a.x_n - b.x_n).abs() < 1e-9 * size, "{what}: {a:?} {b:?}");
    assert!((a.z_n - b.z_n).abs() < 1e-9 * size, "{what}: {a:?} {b:?}");
}

#[test]
fn law_slack_band_grounded_chain_and_no_mass_are_nothing() {
    let nothing = PlaneForce::default();
    let low = at_height(0.3);
    for motion in [Motion::Hold, LIFT, LOWER] {
        assert_eq!(
            total(
                vec![anchored(64.0, 0.0, 0.0, Hang::Single)],
                &low,
                &BAR,
                motion
            ),
            nothing
        );
        assert_eq!(
            total(vec![load(0.0)], &low, &BAR, motion).magnitude_n(),
            0.0
        );
        let chain = chain(3.8, 1.8)
            .with_leader(Leader {
                length: Length::from_cm(40.0),
                mass: Mass::ZERO,
            })
            .expect("a leader");
        let felt = Setup::new("", vec![Item::Chain(HungChain::to_floor(chain, 2))])
            .total_at(&low, &BAR, motion);
        assert_eq!((felt.force.magnitude_n(), felt.moving_mass_kg), (0.0, 0.0));
    }
    assert_eq!(total(vec![], &low, &BAR, LIFT), nothing);
}

#[test]
fn law_demand_is_the_sum_of_its_implements() {
    let mut random = ChaCha8Rng::seed_from_u64(1);
    for _ in 0..2000 {
        let (point, motion) = (random_point(&mut random), random_motion(&mut random));
        let carrier = random_carrier(&mut random);
        // A sled's friction acts on every weight, so it belongs to both parts and is left out here.
        let mut items: Vec<Item> = (0..5).map(|_| random_item(&mut random)).collect();
        items.retain(|item| !matches!(item, Item::Sled(_)));
        let (first, second) = items.split_at(items.len() / 2);
        let whole = total(items.clone(), &point, &carrier, motion);
        let a = total(first.to_vec(), &point, &carrier, motion);
        let b = total(second.to_vec(), &point, &carrier, motion);
        let sum = PlaneForce {
            x_n: a.x_n + b.x_n,
            z_n: a.z_n + b.z_n,
        };
        assert_close(whole, sum, "sum of two halves");
        let told = Setup::new("", items).force_at(&point, &carrier, motion);
        let parts: f64 = told.parts_n.iter().sum();
        assert!(
            (parts - told.along_n).abs() < 1e-9 * (1.0 + parts.abs()),
            "parts of {told:?}"
        );
        assert!((told.along_n.abs() - whole.magnitude_n()).abs() < 1e-9 * (1.0 + parts.abs()));
    }
}

#[test]
fn law_random_setups_never_give_a_number_that_is_none() {
    let mut random = ChaCha8Rng::seed_from_u64(2);
    for _ in 0..3000 {
        let items: Vec<Item> = (0..random.random_range(0..6))
            .map(|_| random_item(&mut random))
            .collect();
        let carrier = random_carrier(&mut random);
        let points: Vec<LoadPoint> = (0..5)
            .map(|_| {
                if random.random_bool(0.1) {
                    LoadPoint::default()
                } else {
                    random_point(&mut random)
                }
            })
            .collect();
        let setup = Setup::new("", items);
        for sample in DemandCurve::at_speed(&setup, &points, &carrier, 0.5).samples {
            for load in [&sample.up, &sample.down] {
                assert!(
                    load.along_n.is_finite() && load.moving_mass_kg >= 0.0,
                    "{load:?}"
                );
            }
            assert!(sample.accommodating_share.is_finite());
            assert!(sample.spread_n.0 <= sample.spread_n.1 + 1e-9);
        }
        let _ = (
            setup.check_for(&carrier, "a lift"),
            setup.piece_cautions(&points, &carrier),
        );
    }
}

#[test]
fn law_kilograms_and_pounds_agree() {
    let (bands, chains, anchors) = (BTreeMap::new(), BTreeMap::new(), BTreeMap::new());
    let stock = Stock {
        bands: &bands,
        chains: &chains,
        anchors: &anchors,
    };
    let of = |text: &str| setup_from_texts(&[text], &[], &[], &stock).expect("a load");
    let point = at_height(1.0);
    let kg = of("100 kg").total_at(&point, &BAR, LIFT);
    let lb = of("220.46226218487757 lb").total_at(&point, &BAR, LIFT);
    assert!((kg.force.z_n - lb.force.z_n).abs() < 1e-9, "{kg:?} {lb:?}");
}

#[test]
fn law_a_cycle_loses_energy_and_never_gains_it() {
    let mut random = ChaCha8Rng::seed_from_u64(3);
    for _ in 0..300 {
        let setup = Setup::new(
            "",
            vec![anchored(
                random.random_range(10.0..100.0),
                random.random_range(0.0..240.0),
                random.random_range(-120.0..120.0),
                Hang::Doubled,
            )],
        );
        let points = straight_lift(0.3, 1.5, 301);
        let curve = DemandCurve::over(&setup, &points, &BAR);
        assert!(energy_lost_j(&curve, &points) >= 0.0);
        for (sample, point) in curve.samples.iter().zip(&points) {
            let (up, down) = (sample.up.force, sample.down.force);
            let gap = (down.x_n - up.x_n) * point.dx_ds_m + (down.z_n - up.z_n) * point.dz_ds_m;
            assert!(gap >= -1e-9, "lowering gives more than lifting took");
        }
    }
    let plain = Setup::new(
        "",
        vec![
            load(100.0),
            Item::Chain(HungChain::to_floor(chain(3.8, 1.8), 1)),
        ],
    );
    let points = straight_lift(0.3, 1.5, 31);
    let curve = DemandCurve::over(&plain, &points, &BAR);
    assert!(energy_lost_j(&curve, &points).abs() < 1e-9);
}

#[test]
fn law_chain_momentum_acts_in_lifting_only() {
    let item = Item::Chain(HungChain::to_floor(chain(5.0, 1.8), 1));
    let size = |motion| total(vec![item.clone()], &at_height(1.0), &BAR, motion).magnitude_n();
    let (hold, lift, lower) = (size(Motion::Hold), size(LIFT), size(LOWER));
    assert!(
        (lift - hold - 2.0 * 5.0 * 0.4 * 0.4).abs() < 1e-9,
        "ρ·v² for two strands"
    );
    assert_eq!(hold, lower);
    let free = |motion| total(vec![item.clone()], &at_height(2.0), &BAR, motion).magnitude_n();
    assert_eq!(
        free(LIFT),
        free(Motion::Hold),
        "a chain that swings free picks nothing up"
    );
    let moving = Setup::new("", vec![item])
        .total_at(&at_height(1.0), &BAR, LIFT)
        .moving_mass_kg;
    assert!((moving - 10.0).abs() < 1e-12, "two strands of one metre");
}

#[test]
fn law_bands_pull_towards_their_anchor() {
    let point = at_height(1.3);
    let of = |height_cm, offset_cm| {
        total(
            vec![anchored(29.0, height_cm, offset_cm, Hang::Single)],
            &point,
            &BAR,
            Motion::Hold,
        )
    };
    assert!(
        of(0.0, 0.0).z_n < 0.0 && of(0.0, 0.0).x_n == 0.0,
        "below resists"
    );
    assert!(of(300.0, 0.0).z_n > 0.0, "above helps");
    let aside = of(0.0, -80.0);
    assert!(
        aside.x_n < 0.0 && aside.z_n < 0.0,
        "behind pulls back and down"
    );
    let heavier = of(0.0, 0.0).magnitude_n();
    assert!(
        aside.magnitude_n() > heavier,
        "aside is farther, so it pulls harder"
    );
    // An assisting band gives its lower branch on the way up and its upper one on the way down.
    let help = |motion| {
        total(
            vec![anchored(29.0, 300.0, 0.0, Hang::Single)],
            &point,
            &BAR,
            motion,
        )
        .z_n
    };
    assert!(help(LIFT) < help(LOWER));
    let net = Setup::new(
        "",
        vec![load(60.0), anchored(29.0, 300.0, 0.0, Hang::Single)],
    );
    assert!(
        net.force_at(&point, &BAR, LIFT).parts_n[1] < 0.0,
        "help counts negative"
    );
}

#[test]
fn law_force_is_continuous_along_the_path() {
    let hung = |hang| {
        let mut hung = HungChain::to_floor(chain(4.0, 0.9), 1);
        hung.hang = hang;
        Item::Chain(hung)
    };
    let items = vec![
        anchored(64.0, 0.0, 0.0, Hang::Single),
        anchored(64.0, 80.0, 60.0, Hang::Doubled),
        hung(ChainHang::Straight),
        hung(ChainHang::DoubleLooped),
    ];
    let setup = Setup::new("", items);
    let points = straight_lift(0.0, 2.0, 20_001);
    for motion in [Motion::Hold, Motion::Lower { speed_m_s: 0.0 }] {
        let sizes: Vec<PlaneForce> = points
            .iter()
            .map(|p| setup.total_at(p, &BAR, motion).force)
            .collect();
        for pair in sizes.windows(2) {
            let jump = (pair[1].x_n - pair[0].x_n).hypot(pair[1].z_n - pair[0].z_n);
            assert!(jump < 0.5, "{jump} N within 0.1 mm");
        }
    }
}

#[test]
fn law_fitted_points_reproduce_the_readings() {
    let mut random = ChaCha8Rng::seed_from_u64(4);
    for _ in 0..200 {
        let (low, rise) = (
            random.random_range(20.0..120.0),
            random.random_range(1.2..3.0),
        );
        let readings =
            readings_from_text(&format!("130 cm={low} N, 180 cm={} N", low * rise)).expect("text");
        let fitted =
            FittedPull::from_readings(&readings, Some(Length::from_cm(104.0))).expect("a fit");
        for reading in &readings {
            let computed = fitted.force_n(reading.length.as_cm() / 104.0);
            let off = (computed / reading.force.as_n() - 1.0).abs();
            assert!(off < 0.005, "{off} at {reading:?}, {fitted:?}");
        }
    }
}

#[test]
fn law_a_fit_finds_the_band_that_was_measured() {
    let real = band(45.0);
    let readings: Vec<BandReading> = [120.0, 140.0, 160.0, 180.0, 200.0]
        .map(|cm| BandReading {
            length: Length::from_cm(cm),
            force: Force::from_n(real.force_n(cm / 100.0, Hang::Single)),
        })
        .into();
    let known = FittedPull::from_readings(&readings, Some(Length::from_cm(104.0))).expect("a fit");
    let sought = FittedPull::from_readings(&readings, None).expect("a fit");
    for fitted in [known, sought] {
        assert!(
            (fitted.rest_length().as_cm() - 104.0).abs() < 0.5,
            "{}",
            fit_in_words(&fitted, System::Metric)
        );
        let mine = Band::measured("mine", fitted);
        for cm in [110.0, 150.0, 210.0] {
            for hang in [Hang::Single, Hang::Doubled] {
                let (a, b) = (
                    mine.force_n(cm / 100.0, hang),
                    real.force_n(cm / 100.0, hang),
                );
                assert!(
                    (a - b).abs() < 0.01 * b + 0.5,
                    "{a} {b} at {cm} cm {hang:?}"
                );
            }
        }
    }
}

#[test]
fn law_csv_and_text_and_both_units_read_alike() {
    let text = readings_from_text("120 cm=10 kg, 150 cm=18 kg").expect("text");
    let cells = readings_from_csv("length,force\n120 cm,10 kg\n150 cm,18 kg\n").expect("cells");
    let head = readings_from_csv("length_cm,force_kg\n120,10\n150,18\n").expect("head");
    assert_eq!(text, cells);
    assert_eq!(text, head);
    for (bad, says) in [
        ("length,force\n120 cm,10 s\n", "line 2"),
        ("len,force\n120 cm,10 kg\n", "column 1"),
        ("length,force\n120,10 kg\n", "no unit"),
        ("length,force\n120 cm\n", "CSV"),
    ] {
        let error = readings_from_csv(bad).expect_err(bad);
        assert!(crate::calling::said(&error).contains(says), "{error}");
        assert_eq!(error.exit_status(), 2);
    }
    for bad in [&text[..1], &[text[0], text[0]]] {
        assert!(FittedPull::from_readings(bad, Some(Length::from_cm(100.0))).is_err());
    }
    assert!(FittedPull::from_readings(&text, Some(Length::from_cm(130.0))).is_err());
    assert!(FittedPull::from_readings(&text, None).is_err());
}

#[test]
fn law_a_doubled_band_pulls_four_times_as_hard_for_the_same_centimetres() {
    // In the linear limit: twice the strands, each of half the length.
    let band = band(45.0);
    let centimetre = |hang| {
        let taut_m = band.taut_length_m(hang);
        band.force_n(taut_m + 0.0001, hang)
    };
    let ratio = centimetre(Hang::Doubled) / centimetre(Hang::Single);
    assert!((ratio - 4.0).abs() < 0.01, "{ratio}");
}
