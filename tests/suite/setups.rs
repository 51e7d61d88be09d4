//! Laws of the search for a setup, on small random gyms that are enumerated here once more in the plainest way.

use proptest::prelude::{ProptestConfig, Strategy, prop_assert, prop_assert_eq, proptest};
use proptest::test_runner::{RngSeed, TestCaseError};
use std::collections::BTreeMap;
use torquill::error::{CamFault, ImplementFault, What};
use torquill::library::{Library, Model, assemble};
use torquill::movement::LoadPoint;
use torquill::narrative::hanging::hung_pieces;
use torquill::rep::RepOptions;
use torquill::resistance::{Anchor, ChainHang, Hang, HungBand, HungChain, Item, Setup, Weight};
use torquill::setups::{
    AllowedPieces, Choosing, Goal, Gym, GymArms, GymFile, LEAST_PULL_N, Watch, Wish,
};
use torquill::study::{PickAnswer, Question, SetupStudy, load_points, maximum, pick, study};
use torquill::units::{Length, Mass, System};

/// Samples of the range: few, since every setup is solved many times here.
const SAMPLES: usize = 21;

/// The reference man doing a movement.
pub fn model_of(movement: &str) -> Model {
    assemble(&Library::built_in(), "reference-man", movement, &[]).expect("a built-in model")
}

/// The question of a model with these samples.
pub fn question_of<'a>(movement: &'a str, model: &'a Model, samples: usize) -> Question<'a> {
    Question {
        samples,
        ..Question::new(movement, &model.movement, &model.lifter)
    }
}

/// A record by the text of its file, read as the library reads it.
pub fn record_of<T: serde::de::DeserializeOwned>(text: &str) -> T {
    let options =
        ron::Options::default().with_default_extension(ron::extensions::Extensions::IMPLICIT_SOME);
    options
        .from_str(text)
        .unwrap_or_else(|fault| panic!("{text}: {fault}"))
}

/// A gym by the text of its file.
pub fn gym_of(text: &str) -> Gym {
    let file: GymFile = record_of(text);
    let pieces = Library::built_in().pieces().expect("bands and chains");
    file.resolve(&pieces.stock()).expect("a sound gym")
}

/// The answer for a gym and a wish.
pub fn picked(
    question: &Question<'_>,
    gym: &Gym,
    wish: &Wish,
) -> torquill::error::Result<PickAnswer> {
    let choosing = Choosing {
        gym,
        wish: wish.clone(),
        allowed: AllowedPieces::default(),
        top: 5,
    };
    let library = Library::built_in();
    let table = &library.published().expect("tables").eccentric;
    pick(question, &choosing, table, &Watch::default())
}

/// What a small random gym owns.
#[derive(Debug, Clone)]
struct Owned {
    bar_kg: f64,
    /// Mass in kg, how many.
    plates: Vec<(f64, u32)>,
    bands: Vec<(&'static str, u32)>,
    chains: Vec<(&'static str, u32)>,
    /// Name, height in cm.
    anchors: Vec<(&'static str, f64)>,
}

impl Owned {
    /// The gym file, masses written by `mass`.
    fn text(&self, mass: impl Fn(f64) -> String) -> String {
        let plates: String = self
            .plates
            .iter()
            .map(|(kg, count)| format!("(mass: \"{}\", count: {count}),", mass(*kg)))
            .collect();
        let pieces = |list: &[(&str, u32)]| -> String {
            list.iter()
                .map(|(name, count)| format!("(name: \"{name}\", count: {count}),"))
                .collect()
        };
        let anchors: String = self
            .anchors
            .iter()
            .map(|(name, cm)| format!("\"{name}\": (height: \"{cm} cm\"),"))
            .collect();
        format!(
            "Gym(title: \"random\", bars: [(name: \"bar\", mass: \"{}\")], plates: [{plates}], bands: [{}], chains: [{}], anchors: {{{anchors}}})",
            mass(self.bar_kg),
            pieces(&self.bands),
            pieces(&self.chains)
        )
    }

    fn gym(&self) -> Gym {
        gym_of(&self.text(|kg| format!("{kg} kg")))
    }
}

fn some<T: Clone + std::fmt::Debug + 'static>(
    all: Vec<T>,
    most: usize,
) -> impl Strategy<Value = Vec<T>> {
    proptest::sample::subsequence(all, 0..=most)
}

fn counted<T: Clone + std::fmt::Debug + 'static>(
    all: Vec<T>,
    most: usize,
) -> impl Strategy<Value = Vec<(T, u32)>> {
    some(all, most).prop_flat_map(|names| {
        let counts = proptest::collection::vec(0..6_u32, names.len());
        counts.prop_map(move |counts| names.iter().cloned().zip(counts).collect())
    })
}

fn owned() -> impl Strategy<Value = Owned> {
    (
        proptest::sample::select(vec![10.0, 15.0, 20.0]),
        counted(vec![25.0, 20.0, 10.0, 5.0, 2.5, 1.25], 4),
        counted(vec!["loop-14mm", "loop-29mm", "loop-45mm"], 2),
        counted(vec!["chain-8mm", "chain-13mm"], 1),
        some(vec![("floor", 0.0), ("peg", 15.0), ("top", 225.0)], 2),
    )
        .prop_map(|(bar_kg, plates, bands, chains, anchors)| Owned {
            bar_kg,
            plates,
            bands,
            chains,
            anchors,
        })
}

/// One pair of a kind of piece hung in one way with the height of its anchor in m, found here by the rules that the words of the answer state:
/// never beyond the safe length, never slack anywhere on the way, a chain that is neither idle nor plain weight.
fn hangings(owned: &Owned, points: &[LoadPoint]) -> Vec<(String, Item, f64)> {
    let pieces = Library::built_in().pieces().expect("bands and chains");
    let stock = pieces.stock();
    let mut all = Vec::new();
    for (name, _) in &owned.bands {
        for (_, height_cm) in &owned.anchors {
            for hang in [Hang::Single, Hang::Choked, Hang::Doubled] {
                let anchor = Anchor::at(Length::from_cm(*height_cm), Length::ZERO).expect("near");
                let mut hung = HungBand::from_floor(stock.bands[*name].clone(), 1);
                (hung.anchor, hung.hang) = (anchor, hang);
                let start_x_m = points.first().map(|point| point.x_m);
                let longest = points
                    .iter()
                    .map(|point| hung.stretch(point, start_x_m))
                    .fold(0.0, f64::max);
                let slackest_n = points
                    .iter()
                    .map(|point| hung.distance_m(point, start_x_m))
                    .map(|distance_m| hung.band.force_n(distance_m, hang))
                    .fold(f64::INFINITY, f64::min);
                let holds_on = slackest_n >= LEAST_PULL_N;
                if holds_on && longest <= hung.band.safe_stretch() {
                    all.push(((*name).to_owned(), Item::Band(hung), 0.01 * height_cm));
                }
            }
        }
    }
    for (name, _) in &owned.chains {
        for hang in [ChainHang::Straight, ChainHang::DoubleLooped] {
            let mut hung = HungChain::to_floor(stock.chains[*name].clone(), 1);
            hung.hang = hang;
            let carrier = torquill::movement::Carrier::Bar;
            let kg: Vec<f64> = points.iter().map(|p| hung.mass_kg(p, &carrier)).collect();
            let (least, most) = (
                kg.iter().copied().fold(f64::INFINITY, f64::min),
                kg.iter().copied().fold(0.0, f64::max),
            );
            if most > 0.0 && most - least > 1.0e-9 * most {
                all.push(((*name).to_owned(), Item::Chain(hung), 0.0));
            }
        }
    }
    all
}

/// Every load that the gym can put on its bar, kg: each count of pairs of each plate, at most so many a side.
fn loads_kg(owned: &Owned, most_plates: u32) -> Vec<f64> {
    let mut sums = vec![(owned.bar_kg, 0_u32)];
    for (kg, count) in &owned.plates {
        let before = sums.clone();
        for pairs in 1..=count / 2 {
            let more = before
                .iter()
                .map(|(sum, plates)| (sum + 2.0 * f64::from(pairs) * kg, plates + pairs));
            sums.extend(more.filter(|(_, plates)| *plates <= most_plates));
        }
    }
    sums.into_iter().map(|(sum, _)| sum).collect()
}

/// The most that lies on the lifter when every band that lifts gives way, kg of plain load; `None` where none lifts. What
/// stays is the bar and what pulls it down, each by its part along the way of the bar.
fn left_kg(points: &[LoadPoint], hung: &[&(String, Item, f64)], bar_kg: f64) -> Option<f64> {
    let start_x_m = points[0].x_m;
    let added_kg = |(_, item, anchor_m): &(String, Item, f64), point: &LoadPoint| match item {
        Item::Band(hung) => {
            let (x_m, z_m) = (start_x_m - point.x_m, anchor_m - point.z_m);
            let far_m = x_m.hypot(z_m);
            let pair_n = 2.0 * hung.band.force_n(far_m, hung.hang);
            let along_n = pair_n * (x_m * point.dx_ds_m + z_m * point.dz_ds_m) / far_m;
            -along_n / (9.806_65 * point.dz_ds_m)
        }
        Item::Chain(hung) => hung.mass_kg(point, &torquill::movement::Carrier::Bar),
        _ => 0.0,
    };
    let lifts = |point: &LoadPoint| hung.iter().any(|piece| added_kg(piece, point) < -0.01);
    let left = |point: &LoadPoint| {
        let added = hung.iter().map(|piece| added_kg(piece, point).max(0.0));
        bar_kg + added.sum::<f64>()
    };
    let most = points.iter().map(left).fold(0.0, f64::max);
    points.iter().any(lifts).then_some(most)
}

/// Bands and chains beside this much plain load.
fn beside(question: &Question<'_>, items: &[Item], kg: f64) -> SetupStudy {
    let mut whole = vec![Item::Weight(Weight::Load(Mass::from_kg(kg)))];
    whole.extend_from_slice(items);
    let answer = study(question, &[Setup::new("", whole)]).expect("an answer");
    answer.setups[0].clone()
}

/// The plain load beside these items that makes the hardest sample exactly this effort, by halving.
fn exact_kg(question: &Question<'_>, items: &[Item], effort: f64) -> Option<f64> {
    let hardest = |kg: f64| {
        let efforts = beside(question, items, kg).effort;
        efforts.into_iter().fold(f64::NEG_INFINITY, f64::max)
    };
    let (mut low, mut high) = (0.0, 400.0);
    if hardest(low) > effort || hardest(high) < effort {
        return None;
    }
    while high - low > 1.0e-7 {
        let middle = 0.5 * (low + high);
        if hardest(middle) > effort {
            high = middle;
        } else {
            low = middle;
        }
    }
    Some(low)
}

/// How many twentieths of the mean load at the exact load cannot be loaded.
fn missing_steps(loaded: &SetupStudy, exact_kg: f64, kg: f64) -> u32 {
    let mean_n = loaded.values.iter().sum::<f64>() / loaded.values.len() as f64;
    ((exact_kg - kg) / (0.05 * mean_n / 9.806_65)).floor() as u32
}

/// The best flattening of up to two pairs by trying everything, with the mass to load; what comes nearest to the effort
/// counts first, and what leaves more than `most_left_kg` when bands fail is left out. `None` if nothing fits.
fn by_hand(
    question: &Question<'_>,
    owned: &Owned,
    effort: f64,
    most_left_kg: f64,
) -> Option<(f64, f64)> {
    let range = torquill::movement::trace(question.movement, question.lifter, question.samples)
        .expect("a range");
    let points = load_points(&range);
    let hangings = hangings(owned, &points);
    let pairs: BTreeMap<&str, u32> = owned
        .bands
        .iter()
        .chain(&owned.chains)
        .map(|(name, count)| (*name, count / 2))
        .collect();
    let mut tries: Vec<Vec<usize>> = vec![Vec::new()];
    for first in 0..hangings.len() {
        tries.push(vec![first]);
        tries.extend((first..hangings.len()).map(|second| vec![first, second]));
    }
    let mut best: Option<(f64, f64, u32)> = None;
    for hung in tries {
        let of_kind = |name: &str| hung.iter().filter(|h| hangings[**h].0 == name).count() as u32;
        if pairs.iter().any(|(name, pairs)| of_kind(name) > *pairs) {
            continue;
        }
        let items: Vec<Item> = hung.iter().map(|h| hangings[*h].1.clone()).collect();
        let Some(exact_kg) = exact_kg(question, &items, effort) else {
            continue;
        };
        let plates = 10.min(12 - hung.len() as u32);
        let fits = loads_kg(owned, plates)
            .into_iter()
            .filter(|kg| *kg <= exact_kg * (1.0 + 1.0e-9));
        let Some(kg) = fits.max_by(f64::total_cmp) else {
            continue;
        };
        let pieces: Vec<_> = hung.iter().map(|h| &hangings[*h]).collect();
        if left_kg(&points, &pieces, kg).is_some_and(|left| left > most_left_kg) {
            continue;
        }
        // Bands from above that carry the whole bar leave nothing to lift.
        let efforts = beside(question, &items, kg).effort;
        if efforts[0] <= 0.0 || efforts[efforts.len() - 1] <= 0.0 {
            continue;
        }
        let loaded = beside(question, &items, exact_kg);
        let flattening = loaded.flattening_percent.expect("an even load");
        let missing = missing_steps(&loaded, exact_kg, kg);
        let is_better = |(known, _, steps): (f64, f64, u32)| {
            missing < steps || (missing == steps && flattening > known + 1.0e-6)
        };
        if best.is_none_or(is_better) {
            best = Some((flattening, kg, missing));
        }
    }
    best.map(|(flattening, kg, _)| (flattening, kg))
}

fn any_share() -> Wish {
    Wish {
        share: [None, None],
        ..Wish::default()
    }
}

fn is_same_as_by_hand(movement: &str, owned: &Owned, askew: bool) -> Result<(), TestCaseError> {
    let mut model = model_of(movement);
    // Arms that reach everywhere catch what an expert loses, but not over the chest: there the 1RM is the most.
    model.lifter.training = torquill::anatomy::Training::Advanced;
    let question = question_of(movement, &model, SAMPLES);
    let mut gym = owned.gym();
    gym.safety_arms = Some(GymArms {
        lowest: Length::ZERO,
        highest: Length::from_cm(400.0),
        step: Length::from_cm(1.0),
    });
    let library = Library::built_in();
    let table = &library.published().expect("tables").eccentric;
    let choosing = Choosing {
        gym: &gym,
        wish: any_share(),
        allowed: AllowedPieces {
            only: Vec::new(),
            askew,
            both_ways: true,
            none_above: false,
        },
        top: 1,
    };
    let most_left_kg = match movement {
        "bench-press" => {
            let usual = RepOptions::usual_for(question.movement);
            let found = maximum(&question, &Setup::default(), &usual).expect("a maximum");
            found.0.load.as_kg()
        }
        _ => f64::INFINITY,
    };
    match (
        by_hand(&question, owned, 0.8, most_left_kg),
        pick(&question, &choosing, table, &Watch::default()),
    ) {
        (None, Err(error)) => prop_assert_eq!(error.exit_status(), 1),
        (Some((flattening, kg)), Ok(found)) => {
            let first = &found.ranked[0];
            prop_assert!(
                (first.loaded.flattening_percent - flattening).abs() < 1.0e-5,
                "searched {} % with {}, by hand {flattening} % with {kg} kg",
                first.loaded.flattening_percent,
                hung_pieces(&first.loaded.setup.items, &gym.anchors, System::Metric).join(" + ")
            );
            let loaded =
                study(&question, std::slice::from_ref(&first.loaded.setup)).expect("an answer");
            let hardest = loaded.setups[0].sticking.expect("a load").max_effort;
            prop_assert!(hardest <= 0.8 + 1.0e-6, "loaded too heavy: {hardest}");
        }
        (by_hand, found) => prop_assert!(
            false,
            "by hand {by_hand:?}, searched {:?}",
            found.map(|f| f.ranked[0].loaded.setup.clone())
        ),
    }
    Ok(())
}

fn cases(cases: u32, seed: u64) -> ProptestConfig {
    ProptestConfig {
        cases,
        rng_seed: RngSeed::Fixed(seed),
        failure_persistence: None,
        ..ProptestConfig::default()
    }
}

proptest! {
    #![proptest_config(cases(16, 41))]

    #[test]
    fn law_search_equals_plain_enumeration_on_the_bench(owned in owned()) {
        is_same_as_by_hand("bench-press", &owned, true)?;
    }

    #[test]
    fn law_search_equals_plain_enumeration_in_the_squat(owned in owned()) {
        is_same_as_by_hand("squat", &owned, true)?;
    }

    #[test]
    fn law_one_more_implement_never_makes_the_best_worse(
        owned in owned(),
        more in 0..5_usize,
    ) {
        let mut richer = owned.clone();
        match more {
            0 => richer.bands.push(("loop-64mm", 2)),
            1 => richer.chains.push(("chain-10mm", 2)),
            2 => richer.anchors.push(("middle", 80.0)),
            3 => richer.plates.push((0.5, 2)),
            _ => richer.plates.push((15.0, 4)),
        }
        let model = model_of("bench-press");
        let question = question_of("bench-press", &model, SAMPLES);
        for wish in [any_share(), Wish::default()] {
            let best = |owned: &Owned| picked(&question, &owned.gym(), &wish).map(|p| p.ranked[0].loaded.score);
            if let Ok(before) = best(&owned) {
                let after = best(&richer);
                prop_assert!(after.is_ok(), "nothing fits any more");
                let after = after.unwrap_or(f64::INFINITY);
                prop_assert!(after <= before + 1.0e-6, "{before} became {after}");
            }
        }
    }

    #[test]
    fn law_a_gym_in_pounds_agrees_with_the_same_in_kilograms(owned in owned()) {
        let pounds = gym_of(&owned.text(|kg| format!("{} lb", kg / 0.453_592_37)));
        let model = model_of("bench-press");
        let question = question_of("bench-press", &model, SAMPLES);
        match (picked(&question, &owned.gym(), &any_share()), picked(&question, &pounds, &any_share())) {
            (Ok(kilograms), Ok(pounds)) => {
                prop_assert_eq!(kilograms.ranked.len(), pounds.ranked.len());
                prop_assert_eq!(kilograms.counts, pounds.counts);
                for (a, b) in kilograms.ranked.iter().zip(&pounds.ranked) {
                    prop_assert_eq!(hung_pieces(&a.loaded.setup.items, &kilograms.anchors, System::Metric), hung_pieces(&b.loaded.setup.items, &pounds.anchors, System::Metric));
                    prop_assert!((a.loaded.loading.total.as_kg() - b.loaded.loading.total.as_kg()).abs() < 1.0e-6);
                    prop_assert!((a.loaded.flattening_percent - b.loaded.flattening_percent).abs() < 1.0e-6);
                }
            }
            (a, b) => prop_assert_eq!(a.is_err(), b.is_err()),
        }
    }

    #[test]
    fn law_every_ranked_setup_keeps_every_limit(
        owned in owned(),
        share in 0.05..0.5_f64,
        effort in 0.4..1.0_f64,
        most_kg in 40.0..120.0_f64,
    ) {
        let wish = Wish {
            share: [None, Some(share)],
            effort,
            loads: vec![torquill::setups::LoadLimit { at: 1.0, least: None, most: Some(Mass::from_kg(most_kg)) }],
            goal: Goal::MostLoad { at: 1.0, limit_at: None },
            ..Wish::default()
        };
        let model = model_of("bench-press");
        let question = question_of("bench-press", &model, SAMPLES);
        match picked(&question, &owned.gym(), &wish) {
            Err(error) => prop_assert_eq!(error.exit_status(), 1),
            Ok(found) => {
                let ends: Vec<f64> = found.ranked.iter().map(|p| p.loaded.loads[2].as_kg()).collect();
                prop_assert!(ends.windows(2).all(|pair| pair[1] <= pair[0] + 1.0e-6), "{:?}", ends);
                for p in &found.ranked {
                    let hardest = p.study.sticking.expect("a load").max_effort;
                    prop_assert!(hardest <= effort + 1.0e-6, "{}", hardest);
                    prop_assert!(p.loaded.share <= share + 1.0e-6, "{}", p.loaded.share);
                    prop_assert!(p.loaded.loads[2].as_kg() <= most_kg + 1.0e-6);
                    prop_assert!(p.loaded.pieces <= wish.most_pieces && p.loaded.hung <= wish.most_hung);
                    let rise = p.loaded.end_range[1].as_kg() - p.loaded.end_range[0].as_kg();
                    prop_assert!(rise >= 0.0);
                }
            }
        }
    }
}

#[test]
fn law_the_answer_is_the_same_on_one_thread_and_on_two() {
    let model = model_of("bench-press");
    let question = question_of("bench-press", &model, SAMPLES);
    let gym = Library::built_in()
        .gym("strength-lab")
        .expect("a shipped gym");
    for goal in [
        Goal::Flattest,
        Goal::Share {
            share: 0.2,
            at: 1.0,
        },
        Goal::Profile(vec![(0.0, 0.6), (0.5, 0.8), (1.0, 0.7)]),
    ] {
        let wish = Wish {
            share: [None, Some(0.35)],
            goal,
            most_hung: 3,
            ..Wish::default()
        };
        let on = |threads: usize| {
            let pool = rayon::ThreadPoolBuilder::new()
                .num_threads(threads)
                .build()
                .expect("threads");
            pool.install(|| picked(&question, &gym, &wish).expect("an answer"))
        };
        let one = on(1);
        assert_eq!(one, on(2));
        assert_eq!(one, on(5));
        assert!(one.counts.fitting > 1000, "{:?}", one.counts);
    }
}

/// Why a fitted cam is refused: its smallest radius, the smallest there is, the mean radius with which it can
/// be, m.
fn too_small(error: &torquill::error::Error) -> (f64, f64, f64) {
    match &error.faults()[0].what {
        What::Implement(ImplementFault::Cam(CamFault::FitTooSmall {
            smallest,
            least,
            mean_at_least,
        })) => (smallest.as_m(), least.as_m(), mean_at_least.as_m()),
        _ => panic!("{error}"),
    }
}

#[test]
fn law_a_cam_fitted_to_the_capacity_flattens_more_than_95_percent() {
    let library = Library::built_in();
    let pieces = library.pieces().expect("bands and chains");
    for movement in ["leg-curl", "knee-extension"] {
        for lifter in [
            "reference-man",
            "reference-woman",
            "tall-novice",
            "heavy-lifter",
            "club-lifter",
        ] {
            let model = assemble(&library, lifter, movement, &[]).expect("a built-in model");
            let question = question_of(movement, &model, 101);
            let over = |text: &str| {
                let cam = torquill::grammar::item_from_text(text, &pieces.stock()).expect(text);
                let items = vec![Item::Weight(Weight::Load(Mass::from_kg(5.0))), cam];
                study(&question, &[Setup::new("", items)])
            };
            for text in ["cam fitted", "cam fitted 5 cm"] {
                let answer = match over(text) {
                    Ok(answer) => answer,
                    // A cam smaller than any can be where the lifter is weakest: the radius that is named can be.
                    Err(error) => {
                        let (smallest, least, mean_m) = too_small(&error);
                        assert!(smallest < least, "{movement}, {lifter}, {text}: {error}");
                        let larger = format!("cam fitted {} cm", (100.0 * mean_m).ceil());
                        let smaller = format!("cam fitted {} cm", (100.0 * mean_m).floor());
                        assert!(over(&smaller).is_err(), "{movement}, {lifter}, {smaller}");
                        over(&larger).expect("a cam as large as named")
                    }
                };
                let percent = answer.setups[0].flattening_percent.expect("a load");
                assert!(percent > 95.0, "{movement}, {lifter}, {text}: {percent} %");
            }
            if movement == "leg-curl" {
                over("cam fitted").expect("who keeps half the strength gets the usual cam");
            }
        }
    }
}
