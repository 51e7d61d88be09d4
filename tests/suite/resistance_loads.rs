//! Published checks of `resistance`: chains and bands on lifts, bars and plates, textbook statics.

use crate::evidence::paper;
use crate::resistance::{at_height, chain_of, straight_lift};
use crate::resistance_chains::{CHAINS, shipped};
use torquill::movement::{Carrier, LoadPoint};
use torquill::resistance::{
    Cable, Chain, ChainHang, Hang, HungBand, HungChain, Item, Lead, Leader, Motion, Setup, Weight,
    along_rails_n,
};
use torquill::units::{Angle, Length, Mass, STANDARD_GRAVITY_M_S2};

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

/// Height of the bar's middle above the floor when it lies on large discs, m.
///
/// Half of the 450 mm that large discs measure across. Source: rules of the International
/// Weightlifting Federation and the International Powerlifting Federation.
const BAR_HEIGHT_ON_FLOOR_M: f64 = 0.450 / 2.0;

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
    let chain = chain_of("chain", 9.6 / top_m, Length::from_m(top_m));
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
    let neelly = paper("neelly2010_chains");
    neelly.check("chain unloading in a squat, hung straight, %", straight);
    neelly.check("chain unloading in a squat, double-looped, %", double);
    neelly.check("double-looped over straight unloading", double / straight);
}

#[test]
fn published_baker_newton_2009_chain_mass_at_the_top() {
    // 60 % of the maximum on the bar and 17.5 kg of chain make about 75 %: the maximum is 117 kg.
    let one_rm_kg = 17.5 / 0.15;
    let chain = chain_of("chain", 7.5, Length::from_cm(200.0));
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
    paper("baker2009_chain").check(
        "bar and chain at lockout, % of 1RM",
        100.0 * load.along_n / STANDARD_GRAVITY_M_S2 / one_rm_kg,
    );
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
    for name in [
        "wallace2006_shares",
        "stevenson2010_shares",
        "ebben2002_shares",
        "garcialopez2016_shares",
        "bellar2011_shares",
        "anderson2008_shares",
        "nijem2016_shares",
    ] {
        for row in paper(name).rows_with("total_kg") {
            let (pieces, points) = match row.text("lift") {
                "squat" => (&bands, &squat),
                "bench" => (&bands, &bench),
                _ => (&chains, &pull),
            };
            let (total_kg, share) = (row.number("total_kg"), row.published());
            row.check(nearest_share(pieces, points, total_kg, share));
        }
    }
}

#[test]
fn published_statics_of_sled_and_cable() {
    let statics = paper("textbook_statics");
    statics.check(
        "sled on rails at 45°, % of the weight",
        100.0 * along_rails_n(1.0, std::f64::consts::FRAC_PI_4, 0.0, Motion::Hold)
            / STANDARD_GRAVITY_M_S2,
    );
    statics.check(
        "sled of 100 kg on rails at 30°, friction 0.1, lifted, N",
        along_rails_n(
            100.0,
            30_f64.to_radians(),
            0.1,
            Motion::Lift { speed_m_s: 0.2 },
        ),
    );
    let cable = Cable::new(
        Mass::from_kg(80.0),
        2.0,
        0.0,
        Lead::Direction(Angle::from_deg(-90.0)),
    )
    .expect("a cable");
    let setup = Setup::new("", vec![Item::Cable(cable)]);
    let felt = setup.total_at(&at_height(1.0), &Carrier::Bar, Motion::Hold);
    statics.check(
        "80 kg stack at ratio 2, kg at the handle",
        felt.force.magnitude_n() / STANDARD_GRAVITY_M_S2,
    );
    statics.check(
        "80 kg stack at ratio 2, inertia at the handle, kg",
        felt.moving_mass_kg,
    );
}

#[test]
fn published_bars_and_plates() {
    for row in paper("pound_plates").rows_with("pounds") {
        let pounds = Mass::from_text(&format!("{} lb", row.text("pounds")));
        row.check(pounds.expect("a mass").as_kg());
    }
    let plain = |items: Vec<Weight>| {
        Setup::new("", items.into_iter().map(Item::Weight).collect())
            .plain_mass(&Carrier::Bar)
            .as_kg()
    };
    let kg = Mass::from_kg;
    let bar = plain(vec![
        Weight::Bar(kg(20.0)),
        Weight::Collars { each: kg(2.5) },
    ]);
    paper("ipf_rules").check("powerlifting bar with collars, kg", bar);
    let pair = plain(vec![Weight::Plates {
        each: kg(1.25),
        pairs: 1,
    }]);
    paper("arithmetic_pairs").check("smallest step with 1.25 kg plates, kg", pair);
    paper("iwf_discs").check(
        "bar above the floor on large discs, mm",
        1000.0 * BAR_HEIGHT_ON_FLOOR_M,
    );
}
