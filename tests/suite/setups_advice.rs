//! What `pick` says about each movement: what bands and chains gain where the lifter grows stronger towards
//! the end, what they cost where he grows weaker, and what helps there instead.

use crate::calling::in_one_line;
use crate::setups::{model_of, picked, question_of};
use torquill::anatomy::Training;
use torquill::capacity::CurveShape;
use torquill::grammar::item_from_text;
use torquill::library::{Library, Shelf};
use torquill::movement::Carrier;
use torquill::narrative::hanging::hung_pieces;
use torquill::narrative::loads::loading_in_words;
use torquill::report::ranking_table;
use torquill::resistance::{Anchor, Hang, HungBand, Item, Setup};
use torquill::setups::{LEAST_PULL_N, Wish};
use torquill::study::{PickAnswer, Question, load_for_effort, load_points, study};
use torquill::units::{Force, Mass, System};

/// Lifts that are stronger towards the end.
const ASCENDING: [&str; 5] = [
    "bench-press",
    "overhead-press",
    "squat",
    "deadlift",
    "leg-press",
];

/// Below this share of the load a band is as good as slack.
const LEAST_SHARE: f64 = 0.02;
/// Share of the load that bands and chains make at most unless wished otherwise.
const MOST_SHARE: f64 = 0.35;

/// The least that the college weight room can load: one plate of its stack. Its bars are heavier.
const LIGHTEST_KG: f64 = 5.0;

/// Flattening that is worth the trouble of hanging something, %: about what a rater sees.
const WORTH_HANGING: f64 = 5.0;

fn answer(question: &Question<'_>) -> PickAnswer {
    let gym = Library::built_in()
        .gym("college-weight-room")
        .expect("a shipped gym");
    picked(question, &gym, &Wish::default()).expect("something fits")
}

fn text_of(pick: &PickAnswer) -> String {
    in_one_line(&ranking_table(pick, Training::Intermediate, System::Metric))
}

/// Whether bands are hung in this lift: on bars, dumb-bells and the body.
fn hangs_bands(model: &torquill::library::Model) -> bool {
    let carrier = model.movement.carrier().expect("a carrier");
    matches!(carrier, Carrier::Bar | Carrier::Dumbbell | Carrier::Body)
}

#[test]
fn law_bands_or_chains_flatten_each_ascending_lift_by_a_stated_amount() {
    let mut tried = 0;
    for movement in ASCENDING {
        let mut model = model_of(movement);
        // Novices feel no more than the maximum at the end, which leaves bands of little use.
        model.lifter.training = Training::Advanced;
        let question = question_of(movement, &model, 101);
        let pick = answer(&question);
        let first = &pick.ranked[0];
        if !hangs_bands(&model) {
            // Nobody ties a band to a sled or a machine's lever.
            assert_eq!(first.loaded.hung, 0, "{movement}");
            continue;
        }
        assert!(first.loaded.hung > 0, "{movement}");
        let gained = first.loaded.flattening_percent;
        assert!(gained >= WORTH_HANGING, "{movement}: {gained} %");
        // What a coach tries first, one pair from the floor, is among what was searched.
        let bands = ["loop-14mm", "loop-22mm", "loop-29mm", "loop-45mm"];
        for (band, hang) in bands
            .into_iter()
            .flat_map(|band| [Hang::Single, Hang::Choked].map(|hang| (band, hang)))
        {
            let Some(by_hand) = by_a_band_below(&question, band, hang) else {
                continue;
            };
            let ByHand {
                gained: at_once,
                share,
                end,
                ..
            } = by_hand;
            // It helps or, slack until the hardest place is passed, changes nothing.
            assert!(at_once > -0.1, "{movement}: {band} flattens by {at_once} %");
            let is_felt_too_much = pick.safety.most_felt().is_some_and(|most| end > most);
            assert!(
                share > MOST_SHARE || is_felt_too_much || gained >= at_once - 0.5,
                "{movement}: {band} flattens by {at_once} %, the answer by {gained} %"
            );
            tried += 1;
        }
        let percent = gained.round() as i64;
        let said = format!("{percent} % flatter than plain weight");
        assert!(
            text_of(&pick).contains(&said),
            "{movement}: `{said}` is not said"
        );
        // The setup itself, laid over the lift once more, does what is said of it.
        let again = study(&question, std::slice::from_ref(&first.loaded.setup)).expect("an answer");
        let as_loaded = again.setups[0].flattening_percent.expect("a load");
        assert!(
            (as_loaded - first.loaded.flattening_percent).abs() < 3.0,
            "{movement}: {as_loaded} %"
        );
    }
    assert!(tried >= ASCENDING.len(), "only {tried} bands by hand");
}

/// One band a side from the floor that is nowhere slack, hung by hand beside the weight that makes the hardest place
/// 80 %.
struct ByHand {
    /// The weight beside the band, kg.
    weight_kg: f64,
    /// Flattening against plain weight, %.
    gained: f64,
    /// The band's share of the load at the end.
    share: f64,
    /// The load at the end.
    end: Mass,
}

fn by_a_band_below(question: &Question<'_>, name: &str, hang: Hang) -> Option<ByHand> {
    let pieces = Library::built_in().pieces().expect("bands and chains");
    let mut hung = HungBand::from_floor(pieces.stock().bands[name].clone(), 1);
    (hung.anchor, hung.hang) = (Anchor::FLOOR, hang);
    let range = torquill::movement::trace(question.movement, question.lifter, question.samples);
    let points = load_points(&range.expect("a range"));
    let start_x_m = points.first().map(|point| point.x_m);
    let pulls_n = points
        .iter()
        .map(|point| hung.band.force_n(hung.distance_m(point, start_x_m), hang));
    if pulls_n.fold(f64::INFINITY, f64::min) < LEAST_PULL_N {
        return None;
    }
    let mut setup = Setup::new("", vec![Item::Band(hung)]);
    let load = load_for_effort(question, &setup, 0.8).ok()?;
    setup = setup.with_plain_load(load);
    let answer = study(question, &[setup, Setup::plain(load)]).ok()?;
    let [with, without] = [0, 1].map(|index| answer.setups[index].values.last().copied());
    Some(ByHand {
        weight_kg: load.as_kg(),
        gained: answer.setups[0].flattening_percent?,
        share: 1.0 - without? / with?,
        end: Force::from_n(with?).as_mass(),
    })
}

/// The number in front of a word, such as 40 in "40 cm high".
fn number_before(text: &str, word: &str) -> Option<f64> {
    let before = &text[..text.find(word)?];
    before.split_whitespace().next_back()?.parse().ok()
}

/// The implement that a sentence recommends, as the command line writes it.
fn recommended(sentence: &str) -> String {
    let height = number_before(sentence, "cm high").unwrap_or(0.0);
    let offset = match (
        number_before(sentence, "cm ahead"),
        number_before(sentence, "cm behind"),
    ) {
        (Some(ahead), _) => ahead,
        (None, Some(behind)) => -behind,
        (None, None) => 0.0,
    };
    if sentence.contains("a cable to a pulley") {
        format!("cable 10 kg, from {height} cm, offset {offset} cm")
    } else if sentence.contains("a bar hinged") {
        format!("lever 10 kg, arm 200 cm, height {height} cm, offset {offset} cm")
    } else {
        "cam fitted".to_owned()
    }
}

#[test]
fn law_descending_lifts_are_told_that_bands_below_cost_and_what_helps_instead() {
    let pieces = Library::built_in().pieces().expect("bands and chains");
    let (mut descending, mut told_so) = (Vec::new(), 0);
    for movement in Library::built_in().names(Shelf::Movements) {
        let model = model_of(&movement);
        let question = question_of(&movement, &model, 101);
        if study(&question, &[]).expect("a curve").class.shape != CurveShape::Descending {
            continue;
        }
        let pick = answer(&question);
        let text = text_of(&pick);
        // Bands below cost, and the text says so wherever one could be hung here: within the usual share of
        // the load, beside a weight that a stack or a bar can be.
        let mut can_be_hung = false;
        for hang in [Hang::Single, Hang::Choked, Hang::Doubled] {
            for band in ["loop-14mm", "loop-29mm", "loop-45mm"] {
                if let Some(by_hand) = by_a_band_below(&question, band, hang) {
                    let percent = by_hand.gained;
                    assert!(percent < 0.5, "{movement}: {band} flattens by {percent} %");
                    can_be_hung |= hangs_bands(&model)
                        && (LEAST_SHARE..=MOST_SHARE).contains(&by_hand.share)
                        && by_hand.weight_kg >= LIGHTEST_KG;
                }
            }
        }
        let costs = text.contains("make this lift less even");
        let none = text.contains("No pair of bands or chains that adds load can be hung here");
        assert!(costs || (none && !can_be_hung), "{movement}: {text}");
        told_so += usize::from(costs);
        assert!(
            text.contains("What helps instead: ") || text.contains("What would help is "),
            "{movement}: {text}"
        );
        let helps = text.split_once("What helps instead: ");
        let helps = helps.and_then(|(_, after)| after.split(" Non-dominated").next());
        for remedy in helps.iter().flat_map(|line| line.split("; ")) {
            let said = number_before(remedy, "%").expect("a stated amount");
            let item = recommended(remedy);
            let mut items = vec![item_from_text(&item, &pieces.stock()).expect(&item)];
            if item.starts_with("cam") {
                items.extend(Setup::plain(torquill::units::Mass::from_kg(10.0)).items);
            }
            let again = study(&question, &[Setup::new("", items)]).expect("an answer");
            let percent = again.setups[0].flattening_percent.expect("a load");
            assert!(
                (percent - said).abs() <= 0.51 && percent > 5.0,
                "{movement}: {item}: {percent} %, said {said} %"
            );
        }
        descending.push(movement);
    }
    assert!(told_so >= 1, "{told_so} of {descending:?}");
    for expected in ["calf-raise", "leg-curl", "row"] {
        assert!(
            descending.iter().any(|name| name == expected),
            "{descending:?}"
        );
    }
}

#[test]
fn regress_the_text_alone_loads_the_bar() {
    let model = model_of("bench-press");
    let question = question_of("bench-press", &model, 101);
    let pick = answer(&question);
    let text = text_of(&pick);
    let first = &pick.ranked[0];
    let plain = loading_in_words(&first.loaded.loading);
    for words in [
        plain.as_str(),
        "How to load them",
        "Plain weight for comparison",
        "hardest part",
        "Non-dominated setups",
        "Number 1 is first because",
        "Cautions",
        "no medical advice",
    ] {
        assert!(text.contains(words), "`{words}` is not in:\n{text}");
    }
    assert!(!text.contains(" lb"), "nobody asked for pounds:\n{text}");
    for piece in hung_pieces(&first.loaded.setup.items, &pick.anchors, System::Metric) {
        assert!(text.contains(&format!(" {piece} ")), "{piece}");
        assert!(
            !piece.contains("rack top") || piece.contains("220 cm high"),
            "{piece}"
        );
    }
    // Bar, collars and plates in words add up to the mass that stands before them.
    let kg: Vec<f64> = plain
        .split(" kg")
        .filter_map(|part| part.rsplit([' ', '(']).next()?.parse().ok())
        .collect();
    let (bar, collars, plates) = (kg[0], kg[1], &kg[2..]);
    assert!(!plain.contains('×'), "{}", plain);
    let whole = bar + 2.0 * collars + 2.0 * plates.iter().sum::<f64>();
    assert!(
        (whole - first.loaded.loading.total.as_kg()).abs() < 1.0e-9,
        "{whole} kg: {}",
        plain
    );
}
