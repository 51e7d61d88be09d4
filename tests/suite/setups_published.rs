//! Published checks of setups: shares of bands and chains that studies used, built of a gym for a lifter; steps
//! of standard plates; spread of equal bands; textbook machines.

use crate::evidence::paper;
use crate::resistance::band_of;
use crate::setups::{gym_of, model_of, picked, question_of};
use torquill::anatomy::Training;
use torquill::grammar::item_from_text;
use torquill::library::{Library, Model, assemble};
use torquill::movement::{Carrier, LoadPoint};
use torquill::rep::{RepOptions, scale_for_one_rm, stronger};
use torquill::resistance::{
    Assistance, Band, Cable, Hang, Item, Lead, LeverMachine, Motion, Setup, Turns, Weight,
};
use torquill::setups::{AllowedPieces, Choosing, Goal, Gym, LoadUse, Loading, Loadings, Wish};
use torquill::study::{Question, pick, study};
use torquill::units::{Angle, Length, Mass, STANDARD_GRAVITY_M_S2};

/// A gym with every shipped band and chain, bands tied low only, as the studies hung them: to the floor, a peg, a pin
/// from which a doubled loop is taut under a squat.
fn study_gym() -> Gym {
    let widths = [6, 14, 22, 29, 32, 45, 64, 83, 102];
    let bands: String = widths
        .iter()
        .map(|mm| format!("(name: \"loop-{mm}mm\", count: 4),"))
        .collect();
    let chains: String = [6, 8, 10, 13, 16]
        .iter()
        .map(|mm| {
            format!(
                "(name: \"chain-{mm}mm\", count: 8, leaders: [\"40 cm\", \"70 cm\", \"100 cm\"]),"
            )
        })
        .collect();
    gym_of(&format!(
        "Gym(title: \"study\", bars: [(name: \"bar\", mass: \"20 kg\"), (name: \"light bar\", mass: \"10 kg\")],
            plates: [(mass: \"20 kg\", count: 12), (mass: \"10 kg\", count: 4), (mass: \"5 kg\", count: 4),
                (mass: \"2.5 kg\", count: 4), (mass: \"1.25 kg\", count: 4), (mass: \"0.5 kg\", count: 4)],
            bands: [{bands}], chains: [{chains}],
            anchors: {{\"floor\": (height: \"0 cm\"), \"peg\": (height: \"15 cm\"),
                \"low pin\": (height: \"40 cm\")}})"
    ))
}

/// The reference man as strong and trained as the people of these studies: maxima as the rows beside assume them. Novices
/// feel no more than their maximum at the end, and the lightest loop is much for them.
fn trained(movement: &str) -> Model {
    let mut model = model_of(movement);
    model.lifter.training = Training::Advanced;
    let one_rm = Mass::from_kg(match movement {
        "squat" => 150.0,
        "bench-press" => 100.0,
        "deadlift" => 180.0,
        other => panic!("no maximum is assumed for {other}"),
    });
    let options = RepOptions::usual_for(&model.movement);
    let factor = scale_for_one_rm(
        &model.movement,
        &model.lifter,
        &Setup::default(),
        one_rm,
        &options,
    );
    model.lifter = stronger(&model.lifter, factor.expect("a strength"));
    model
}

/// Share of the load at the end that bands or chains make in the setup that is picked for a wished share.
fn share_picked(question: &Question<'_>, gym: &Gym, pieces: &str, effort: f64, share: f64) -> f64 {
    let choosing = Choosing {
        gym,
        wish: Wish {
            goal: Goal::Share { share, at: 1.0 },
            share: [None, None],
            effort,
            most_hung: 3,
            ..Wish::default()
        },
        allowed: AllowedPieces {
            only: vec![pieces.to_owned()],
            ..AllowedPieces::default()
        },
        top: 1,
    };
    let library = Library::built_in();
    let table = &library.published().expect("tables").eccentric;
    let found = pick(
        question,
        &choosing,
        table,
        &torquill::setups::Watch::default(),
    )
    .expect("a setup");
    let first = &found.ranked[0];
    1.0 - first.loaded.loading.total.as_kg() / first.loaded.loads[2].as_kg()
}

#[test]
fn published_shares_of_studies_are_picked_from_a_gym() {
    let gym = study_gym();
    for name in [
        "wallace2006_shares",
        "anderson2008_shares",
        "shoepe2011_shares",
        "twelve_weeks_shares",
        "bellar2011_shares",
        "garcialopez2016_shares",
        "stevenson2010_shares",
        "ebben2002_shares",
        "nijem2016_shares",
        "swinton2011_shares",
        "berning2008_shares",
    ] {
        for row in paper(name).rows_with("movement") {
            let (movement, pieces) = (row.text("movement"), row.text("pieces"));
            let model = trained(movement);
            let question = question_of(movement, &model, 51);
            let (effort, share) = (row.number("effort"), row.published());
            row.check(share_picked(&question, &gym, pieces, effort, share));
        }
    }
}

#[test]
fn published_spread_of_equal_bands_reaches_the_answer() {
    let gym = gym_of(
        "Gym(title: \"one band\", bars: [(name: \"bar\", mass: \"20 kg\")],
            plates: [(mass: \"10 kg\", count: 4), (mass: \"2.5 kg\", count: 4)],
            bands: [(name: \"loop-14mm\", count: 2)])",
    );
    let model = trained("bench-press");
    let question = question_of("bench-press", &model, 51);
    let wish = Wish {
        goal: Goal::Share {
            share: 0.3,
            at: 1.0,
        },
        share: [None, None],
        ..Wish::default()
    };
    let found = picked(&question, &gym, &wish).expect("a setup");
    let first = &found.ranked[0];
    let band_kg = first.loaded.loads[2].as_kg() - first.loaded.loading.total.as_kg();
    paper("mcmaster2010_bands_and_chains").check(
        "range that the answer gives for bands of one label, % of their pull",
        100.0 * (first.loaded.end_range[1].as_kg() - first.loaded.end_range[0].as_kg()) / band_kg,
    );
    for row in paper("mcmaster2010_bands_and_chains").rows_with("percent_shorter") {
        row.check(more_by_shorter(row.number("percent_shorter")));
    }
}

/// How much more a band pulls that is this much shorter at rest, % on average from 120 to 200 cm.
fn more_by_shorter(percent: f64) -> f64 {
    let band = |rest_cm: f64| {
        let size = (Length::from_mm(45.0), Length::from_mm(4.5));
        band_of("band", size.0, size.1, Length::from_cm(rest_cm))
    };
    let (longer, shorter) = (band(104.0), band(104.0 * (1.0 - percent / 100.0)));
    let more: Vec<f64> = (12..=20)
        .map(|step| {
            let length_m = 0.1 * f64::from(step);
            let pull = |band: &Band| band.force_n(length_m, Hang::Single);
            100.0 * (pull(&shorter) / pull(&longer) - 1.0)
        })
        .collect();
    more.iter().sum::<f64>() / more.len() as f64
}

#[test]
fn published_rubber_at_the_end_of_the_safe_stretch() {
    let (width, thickness) = (Length::from_mm(10.0), Length::from_mm(1.0));
    let band = band_of("strip", width, thickness, Length::from_m(1.0));
    // A loop has two strands of 10 mm².
    let stress_mpa = |stretch: f64| band.force_n(stretch, Hang::Single) / 20.0;
    paper("treloar1944_rubber").check("rubber stress at stretch 2.42, MPa", stress_mpa(2.42));
}

/// Loads of a gym on a bar with everything that plates need, kg, in rising order.
fn loads_kg(text: &str) -> Vec<f64> {
    let gym = gym_of(text);
    let loadings = Loadings::of(&gym, &Carrier::Bar).expect("loads");
    let with_collars = |l: &&Loading| l.use_for != LoadUse::Plain;
    let loads = loadings.all().iter().filter(with_collars);
    loads.map(|l| l.total.as_kg()).collect()
}

#[test]
fn published_steps_of_standard_plates() {
    let (iwf, ipf) = (paper("iwf_rules"), paper("ipf_rules"));
    let pounds = paper("pound_plates");
    let weightlifting = |bar: &str| {
        let kinds = [25.0, 20.0, 15.0, 10.0, 5.0, 2.5, 2.0, 1.5, 1.0, 0.5];
        let plates: String = kinds
            .iter()
            .map(|kg| format!("(mass: \"{kg} kg\", count: 2),"))
            .collect();
        loads_kg(&format!(
            "Gym(title: \"iwf\", bars: [(name: \"bar\", mass: \"{bar}\")], collars: \"2.5 kg\", plates: [{plates}])"
        ))
    };
    let power = |least: &str| {
        loads_kg(&format!(
            "Gym(title: \"ipf\", bars: [(name: \"bar\", mass: \"20 kg\")], collars: \"2.5 kg\", plates: [(mass: \"25 kg\", count: 8), (mass: \"{least}\", count: 2)])"
        ))
    };
    let gym_lb = loads_kg(
        "Gym(title: \"lb\", bars: [(name: \"bar\", mass: \"45 lb\")], plates: [(mass: \"45 lb\", count: 8), (mass: \"2.5 lb\", count: 2)])",
    );
    let (men, women) = (weightlifting("20 kg"), weightlifting("15 kg"));
    let widest_step = |loads: &[f64]| {
        let steps = loads.windows(2).map(|pair| pair[1] - pair[0]);
        steps.fold(0.0, f64::max)
    };
    iwf.check(
        "men's bar with collars, the lightest load of a gym, kg",
        men[0],
    );
    iwf.check(
        "women's bar with collars, the lightest load of a gym, kg",
        women[0],
    );
    iwf.check(
        "widest step of a full set of plates below 100 kg, kg",
        widest_step(&men[..75]),
    );
    ipf.check(
        "step of a powerlifting attempt, kg",
        power("1.25 kg")[1] - 25.0,
    );
    ipf.check(
        "step of a powerlifting record, kg",
        power("0.25 kg")[1] - 25.0,
    );
    ipf.check(
        "bar and two pairs of largest plates, 25 kg each, with collars, kg",
        power("1.25 kg")[4],
    );
    pounds.check("step with two 2.5 lb plates, kg", gym_lb[1] - gym_lb[0]);
    pounds.check("45 lb bar with two 45 lb plates (135 lb), kg", gym_lb[2]);
}

fn at(x_m: f64, z_m: f64) -> LoadPoint {
    LoadPoint {
        x_m,
        z_m,
        dz_ds_m: 1.0,
        ..LoadPoint::default()
    }
}

#[test]
fn published_worked_examples_of_machines() {
    let textbook = paper("textbook_machines");
    let held = |items: Vec<Item>, point: LoadPoint, carrier: Carrier| {
        Setup::new("", items)
            .rigged_over(&[point])
            .total_at(&point, &carrier, Motion::Hold)
    };
    let helped = held(
        vec![
            Item::Weight(Weight::BodyMass(Mass::from_kg(80.0))),
            Item::Assistance(Assistance::Counterweight(Mass::from_kg(30.0))),
        ],
        at(0.0, 1.0),
        Carrier::Body,
    );
    let turns = Turns::AboutPivot {
        pivot: torquill::resistance::Anchor::at(Length::from_m(1.0), Length::from_m(-1.0))
            .expect("an anchor"),
        plates_ahead: Angle::ZERO,
    };
    let lever = LeverMachine::new(Mass::from_kg(30.0), Length::from_cm(50.0), turns);
    let level = held(
        vec![Item::Lever(lever.expect("a lever"))],
        at(0.0, 1.0),
        Carrier::Bar,
    );
    let cable = |ratio: f64, friction: f64| {
        let lead = Lead::Direction(Angle::from_deg(-90.0));
        let cable = Cable::new(Mass::from_kg(40.0), ratio, friction, lead).expect("a cable");
        held(vec![Item::Cable(cable)], at(0.0, 1.0), Carrier::Bar)
    };
    let model = model_of("leg-press");
    let question = question_of("leg-press", &model, 11);
    let sled = study(&question, &[Setup::plain(Mass::from_kg(100.0))]).expect("an answer");
    let sled_n = sled.setups[0].values[5];
    let angle_rad = match sled.range.carrier {
        Carrier::Sled { angle_rad } => angle_rad,
        other => panic!("a leg press has a sled, not {other:?}"),
    };
    for (quantity, computed) in [
        (
            "body of 80 kg with a counterweight of 30 kg, kg felt",
            helped.force.magnitude_n() / STANDARD_GRAVITY_M_S2,
        ),
        (
            "body of 80 kg with a counterweight of 30 kg, kg to speed up",
            helped.moving_mass_kg,
        ),
        (
            "30 kg at 0.5 m of a level arm, N at a handle at 1 m",
            level.force.magnitude_n(),
        ),
        (
            "30 kg at 0.5 m of a level arm, kg to speed up at a handle at 1 m",
            level.moving_mass_kg,
        ),
        (
            "40 kg stack, ratio 1, N at the handle",
            cable(1.0, 0.0).force.magnitude_n(),
        ),
        (
            "40 kg stack, ratio 4, N at the handle",
            cable(4.0, 0.0).force.magnitude_n(),
        ),
        (
            "100 kg on the rails of the leg press over its weight times the sine of the angle",
            sled_n / (100.0 * STANDARD_GRAVITY_M_S2 * angle_rad.sin()),
        ),
    ] {
        textbook.check(quantity, computed);
    }
}

#[test]
fn published_a_cam_that_follows_strength_makes_effort_even() {
    let library = Library::built_in();
    let pieces = library.pieces().expect("bands and chains");
    for movement in ["leg-curl", "knee-extension"] {
        let model = assemble(&library, "reference-man", movement, &[]).expect("a model");
        let question = question_of(movement, &model, 101);
        let cam = item_from_text("cam fitted", &pieces.stock()).expect("a cam");
        let items = vec![Item::Weight(Weight::Load(Mass::from_kg(20.0))), cam];
        let answer = study(&question, &[Setup::new("", items)]).expect("an answer");
        paper("mcmaster2009_cams").check(
            &format!("flattening by a cam that matches the strength curve, {movement}, %"),
            answer.setups[0].flattening_percent.expect("a load"),
        );
    }
}
