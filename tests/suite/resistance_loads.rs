//! Published checks of `resistance`: chains and bands on lifts, bars and plates, textbook statics.

use crate::published_table::{Row, Tolerance, check};
use crate::resistance::{at_height, straight_lift};
use crate::resistance_chains::{CHAINS, shipped};
use torquill::movement::{Carrier, LoadPoint};
use torquill::resistance::{
    BAR_HEIGHT_ON_FLOOR_M, Cable, Chain, ChainHang, Hang, HungBand, HungChain, Item, Lead, Leader,
    Links, Motion, Setup, Weight, along_rails_n,
};
use torquill::units::{Angle, Length, LinearDensity, Mass, STANDARD_GRAVITY_M_S2};

const BANDS: [&str; 9] = [
    "loop-6mm",
    "loop-14mm",
    "loop-22mm",
    "loop-29mm",
    "loop-32mm",
    "loop-45mm",
    "loop-64mm",
    "loop-83mm",
    "loop-102mm",
];

/// A back squat of a man of 1.83 m: shoulders at 0.82 of his height, bar travel about a third of it.
fn neelly_lift() -> (f64, f64) {
    let height_m = 1.83;
    let top_m = 0.82 * height_m;
    (top_m - 0.325 * height_m, top_m)
}

#[test]
fn published_neelly_2010_straight_and_double_looped() {
    let (bottom_m, top_m) = neelly_lift();
    // One chain of 9.6 kg that just reaches the floor at the top when it hangs straight.
    let chain = Chain::new(
        "chain",
        Links::PerMetre(LinearDensity::from_kg_m(9.6 / top_m)),
        Length::from_m(top_m),
    )
    .expect("a chain");
    let looped = chain
        .clone()
        .with_leader(Leader {
            length: Length::from_m(top_m / 2.0),
            mass: Mass::ZERO,
        })
        .expect("a leader");
    let unloaded = |chain: &Chain, hang: ChainHang| {
        let mut hung = HungChain::to_floor(chain.clone(), 1);
        hung.hang = hang;
        let setup = Setup::new("", vec![Item::Chain(hung)]);
        let load_n = |z| {
            setup
                .total_at(&at_height(z), &Carrier::Bar, Motion::Hold)
                .force
                .z_n
        };
        100.0 * (1.0 - load_n(bottom_m) / load_n(top_m))
    };
    let straight = unloaded(&chain, ChainHang::Straight);
    let double = unloaded(&looped, ChainHang::DoubleLooped);
    let source = "Neelly 2010, J Strength Cond Res 24(1):278-281";
    let row = |quantity, published, low, high, computed, why| Row {
        quantity,
        published,
        tolerance: Tolerance::Interval(low, high),
        computed,
        source,
        why,
    };
    check(row(
        "chain unloading in a squat, hung straight, %",
        39.0,
        36.0,
        42.0,
        straight,
        "published range",
    ));
    check(row(
        "chain unloading in a squat, double-looped, %",
        83.5,
        78.0,
        89.0,
        double,
        "published range",
    ));
    check(row(
        "double-looped over straight unloading",
        2.15,
        1.9,
        2.4,
        double / straight,
        "one lifter",
    ));
}

#[test]
fn published_baker_newton_2009_chain_mass_at_the_top() {
    // 60 % of the maximum on the bar and 17.5 kg of chain make about 75 %: the maximum is 117 kg.
    let one_rm_kg = 17.5 / 0.15;
    let chain = Chain::new(
        "chain",
        Links::PerMetre(LinearDensity::from_kg_m(7.5)),
        Length::from_cm(200.0),
    )
    .expect("a chain");
    // Two such chains hang 1.17 m off the floor at lockout on a bench: 17.5 kg.
    let setup = Setup::new(
        "",
        vec![
            Item::Weight(Weight::Load(Mass::from_kg(0.60 * one_rm_kg))),
            Item::Chain(HungChain::to_floor(chain, 1)),
        ],
    );
    let top = at_height(1.17);
    let load = setup.force_at(&top, &Carrier::Bar, Motion::Hold);
    check(Row {
        quantity: "bar and chain at lockout, % of 1RM",
        published: 75.0,
        tolerance: Tolerance::Absolute(0.5),
        computed: 100.0 * load.along_n / STANDARD_GRAVITY_M_S2 / one_rm_kg,
        source: "Baker & Newton 2009, J Strength Cond Res 23(7):1941-1946",
        why: "\"about 75 %\" in the abstract",
    });
}

/// The share of load nearest to a target that one or two kinds of shipped pieces reach at the top.
fn nearest_share(pieces: &[Item], points: &[LoadPoint], total_kg: f64, target: f64) -> f64 {
    let top = points.last().expect("a path");
    let mut best = 0.0_f64;
    for first in 0..pieces.len() {
        for second in first..=pieces.len() {
            let mut items = vec![pieces[first].clone()];
            items.extend(pieces.get(second).cloned());
            let pull_n = Setup::new("", items)
                .rigged_over(points)
                .force_at(top, &Carrier::Bar, Motion::Hold)
                .along_n;
            let share = pull_n / (total_kg * STANDARD_GRAVITY_M_S2);
            if (share - target).abs() < (best - target).abs() {
                best = share;
            }
        }
    }
    best
}

#[test]
fn published_shares_of_load_are_within_reach_of_the_shipped_pieces() {
    let hung = |name: &str, hang| {
        let mut hung = HungBand::from_floor(shipped("bands", name), 1);
        hung.hang = hang;
        Item::Band(hung)
    };
    let bands: Vec<Item> = BANDS
        .iter()
        .flat_map(|name| [Hang::Single, Hang::Doubled].map(|hang| hung(name, hang)))
        .collect();
    let chains: Vec<Item> = CHAINS
        .iter()
        .flat_map(|name| {
            [1, 2].map(|count| Item::Chain(HungChain::to_floor(shipped("chains", name), count)))
        })
        .collect();
    let squat = straight_lift(0.95, 1.50, 11);
    let bench = straight_lift(0.72, 1.12, 11);
    let pull = straight_lift(BAR_HEIGHT_ON_FLOOR_M, 0.80, 11);
    let (bands, chains) = (&bands[..], &chains[..]);
    let (squat, bench, pull) = (&squat[..], &bench[..], &pull[..]);
    let wallace = "Wallace 2006, J Strength Cond Res 20(2):268-272";
    let rows = [
        ("squat at 60 %, a fifth", bands, squat, 90.0, 0.20, wallace),
        ("squat at 85 %, a fifth", bands, squat, 127.5, 0.20, wallace),
        ("squat at 60 %, a third", bands, squat, 90.0, 0.35, wallace),
        ("squat at 85 %, a third", bands, squat, 127.5, 0.35, wallace),
        (
            "squat at 55 %",
            bands,
            squat,
            82.5,
            0.20,
            "Stevenson 2010, J Strength Cond Res 24(11):2944-2954",
        ),
        (
            "squat at 67 %",
            bands,
            squat,
            100.0,
            0.10,
            "Ebben & Jensen 2002, J Strength Cond Res 16(4):547-550 (from memory)",
        ),
        (
            "bench at 85 %, trained",
            bands,
            bench,
            85.0,
            0.20,
            "Garcia-Lopez 2016, J Strength Cond Res 30(9):2493-2499",
        ),
        (
            "bench at 85 %, untrained",
            bands,
            bench,
            85.0,
            0.15,
            "Bellar 2011, J Strength Cond Res 25(2):459-463",
        ),
        (
            "bench at 80 %",
            bands,
            bench,
            80.0,
            0.20,
            "Anderson 2008, J Strength Cond Res 22(2):567-574 (share from memory)",
        ),
        (
            "deadlift at 85 %",
            chains,
            pull,
            153.0,
            0.199,
            "Nijem 2016, J Strength Cond Res 30(5):1177-1182",
        ),
    ];
    for (what, pieces, points, total_kg, share, source) in rows {
        check(Row {
            quantity: &format!(
                "share of load at the top nearest to the study's that shipped pieces reach, {what}"
            ),
            published: share,
            tolerance: Tolerance::Absolute(0.025),
            computed: nearest_share(pieces, points, total_kg, share),
            source,
            why: "pieces come in steps; squat 1RM 150 kg, bench 100 kg, deadlift 180 kg are assumed",
        });
    }
}

#[test]
fn published_statics_of_sled_and_cable() {
    let source = "statics of the inclined plane and of pulleys, textbook";
    check(Row {
        quantity: "sled on rails at 45°, % of the weight",
        published: 70.711,
        tolerance: Tolerance::Absolute(0.0005),
        computed: 100.0 * along_rails_n(1.0, std::f64::consts::FRAC_PI_4, 0.0, Motion::Hold)
            / STANDARD_GRAVITY_M_S2,
        source,
        why: "half of the last digit",
    });
    check(Row {
        quantity: "sled of 100 kg on rails at 30°, friction 0.1, lifted, N",
        published: 575.3,
        tolerance: Tolerance::Absolute(0.05),
        computed: along_rails_n(
            100.0,
            30_f64.to_radians(),
            0.1,
            Motion::Lift { speed_m_s: 0.2 },
        ),
        source,
        why: "worked by hand: 980.665·(0.5 + 0.1·0.86603), half of the last digit",
    });
    let cable = Cable::new(
        Mass::from_kg(80.0),
        2.0,
        0.0,
        Lead::Direction(Angle::from_deg(-90.0)),
    )
    .expect("a cable");
    let setup = Setup::new("", vec![Item::Cable(cable)]);
    let felt = setup.total_at(&at_height(1.0), &Carrier::Bar, Motion::Hold);
    check(Row {
        quantity: "80 kg stack at ratio 2, kg at the handle",
        published: 40.0,
        tolerance: Tolerance::Absolute(1e-9),
        computed: felt.force.magnitude_n() / STANDARD_GRAVITY_M_S2,
        source,
        why: "exact",
    });
    check(Row {
        quantity: "80 kg stack at ratio 2, inertia at the handle, kg",
        published: 20.0,
        tolerance: Tolerance::Absolute(1e-9),
        computed: felt.moving_mass_kg,
        source,
        why: "exact",
    });
}

#[test]
fn published_bars_and_plates() {
    let convention = "North American gym convention; 1 lb = 0.45359237 kg";
    for (pounds, kilograms, digit) in [
        (45.0, 20.41, 0.005),
        (45.0, 20.412, 0.0005),
        (35.0, 15.876, 0.0005),
        (25.0, 11.340, 0.0005),
        (10.0, 4.536, 0.0005),
        (5.0, 2.268, 0.0005),
        (2.5, 1.134, 0.0005),
    ] {
        check(Row {
            quantity: &format!("{pounds} lb in kg to {digit}"),
            published: kilograms,
            tolerance: Tolerance::Absolute(digit),
            computed: Mass::from_text(&format!("{pounds} lb"))
                .expect("a mass")
                .as_kg(),
            source: convention,
            why: "half of the last printed digit",
        });
    }
    let plain = |items: Vec<Weight>| {
        Setup::new("", items.into_iter().map(Item::Weight).collect())
            .plain_mass(&Carrier::Bar)
            .as_kg()
    };
    let kg = Mass::from_kg;
    let row = |quantity, published, computed, source| Row {
        quantity,
        published,
        tolerance: Tolerance::Absolute(1e-9),
        computed,
        source,
        why: "exact",
    };
    check(row(
        "powerlifting bar with collars, kg",
        25.0,
        plain(vec![
            Weight::Bar(kg(20.0)),
            Weight::Collars { each: kg(2.5) },
        ]),
        "International Powerlifting Federation, Technical rules book",
    ));
    check(row(
        "smallest step with 1.25 kg plates, kg",
        2.5,
        plain(vec![Weight::Plates {
            each: kg(1.25),
            pairs: 1,
        }]),
        "arithmetic of loadable pairs",
    ));
    check(row(
        "bar above the floor on large discs, mm",
        225.0,
        1000.0 * BAR_HEIGHT_ON_FLOOR_M,
        "International Weightlifting Federation rules: 450 mm discs",
    ));
}
