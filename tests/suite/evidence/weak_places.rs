//! Where the model is far off, for the front page: by lift and by what is asked, worst first, made of the rows of both lists.

use super::Kind;
use super::listing::{LISTED, is_update};
use super::tally::LIFTS;
use crate::predictions::Listed;
use std::collections::BTreeMap;
use std::fmt::Write as _;
use std::path::{Path, PathBuf};

/// Most rows of the table.
const MOST_ROWS: usize = 20;

/// What a row without an answer, or in the wrong direction, counts as when rows are ordered: a factor of three.
const WITHOUT_A_SIZE: f64 = 3.0;

/// Rows about one thing of one lift.
#[derive(Debug, Default, Clone)]
struct Place {
    rows: usize,
    met: usize,
    /// Computed over published, where both are sizes.
    ratios: Vec<f64>,
    without_answer: usize,
    wrong_direction: usize,
}

impl Place {
    fn is_weak(&self) -> bool {
        4 * self.met < 3 * self.rows
    }

    /// Root mean square of the logarithms.
    fn error(&self) -> f64 {
        let lost = self.without_answer + self.wrong_direction;
        let squares = self.ratios.iter().map(|ratio| ratio.ln().powi(2));
        let sum = squares.sum::<f64>() + lost as f64 * WITHOUT_A_SIZE.ln().powi(2);
        (sum / (lost + self.ratios.len()).max(1) as f64).sqrt()
    }

    /// "0.46-0.72 times; 2 without an answer".
    fn told(&self) -> String {
        let mut parts = Vec::new();
        let (least, most) = self
            .ratios
            .iter()
            .fold((f64::INFINITY, 0.0_f64), |(low, high), ratio| {
                (low.min(*ratio), high.max(*ratio))
            });
        if !self.ratios.is_empty() {
            let (low, high) = (format!("{least:.2}"), format!("{most:.2}"));
            parts.push(if low == high {
                low
            } else {
                format!("{low}-{high}")
            });
        }
        for (count, what) in [
            (self.without_answer, "shows none"),
            (self.wrong_direction, "the other way round"),
        ] {
            if count > 0 {
                parts.push(format!("{what} ({count})"));
            }
        }
        parts.join("; ")
    }
}

/// What a row of the list of evidence is about, as a coach would ask.
fn asked(quantity: &str, about: &str) -> &'static str {
    match about {
        "repetitions" => "repetitions to failure",
        "velocity" if quantity.contains("that belongs to our velocity") => {
            "load read off a velocity"
        }
        "velocity" if quantity.contains("share of the ascent") => "sticking region",
        "velocity" if quantity.contains("1RM") => "velocity of a maximum",
        "velocity" => "velocity of lighter loads",
        "sticking region" => "sticking region",
        "lowering" => "load lowered over load lifted",
        "moment" | "work" | "force" => "moments at the joints, forces on the bar",
        "ratio of lifts" | "strength" => "maximum over body or another lift",
        "woman over man" => "woman over man",
        "force by place" => "strength along the range",
        "geometry" => "posture",
        "grip" => "width of the grip",
        "power" => "load of the greatest power",
        "fatigue" | "recovery" | "load" => "fatigue in and between sets",
        "class" => "class of the curve",
        "build" => "build and strength",
        other => panic!("what a coach asks by {other:?}"),
    }
}

/// What a measure of the list of predictions is about, in the same words.
fn asked_by(measure: &str, quantity: &str) -> &'static str {
    match measure {
        "repetitions" => "repetitions to failure",
        "mean_velocity" => "velocity of a maximum",
        "propulsive_velocity" | "pause_cost" | "slow_lowering" => "velocity of lighter loads",
        "power_velocity" => "load of the greatest power",
        "lowered" => "load lowered over load lifted",
        "over_lift" if quantity.contains("sumo") => "sumo over conventional",
        "over_lift" | "over_body" => "maximum over body or another lift",
        "over_person" => "woman over man",
        "grip" => "width of the grip",
        "peak_moment" | "moment_ratio" | "work_ratio" | "lateral" => {
            "moments at the joints, forces on the bar"
        }
        "depth"
        | "partial"
        | "isometric_ratio"
        | "hardest_angle"
        | "hip_angle_gain"
        | "hardest_above_bottom" => "strength along the range",
        "travel" | "knee_travel" => "posture",
        "correlation" => "build and strength",
        "failure_share" => "sticking region",
        other if other.starts_with("sticking_") => "sticking region",
        other => panic!("what a coach asks by {other:?}"),
    }
}

/// Computed over published where both are sizes, and whether a direction is wrong.
fn compare(place: &mut Place, published: Option<f64>, computed: &str, is_met: bool) {
    place.rows += 1;
    place.met += usize::from(is_met);
    let size = |value: f64| (value > 0.0).then_some(value);
    match (published.and_then(size), computed.parse::<f64>()) {
        (_, Err(_)) => place.without_answer += 1,
        (Some(published), Ok(computed)) if computed > 0.0 => {
            place.ratios.push(computed / published)
        }
        (Some(_), Ok(_)) if !is_met => place.without_answer += 1,
        (None, Ok(_)) if !is_met => place.wrong_direction += 1,
        _ => {}
    }
}

/// All rows of lifts by lift and what is asked.
fn places() -> BTreeMap<(String, &'static str), Place> {
    let mut places: BTreeMap<(String, &'static str), Place> = BTreeMap::new();
    for line in LISTED.iter() {
        let cells: Vec<&str> = line.split(" | ").collect();
        if cells.len() != 10 || cells[2] != Kind::Predicted.word() || !LIFTS.contains(&cells[7]) {
            continue;
        }
        let is_direction = cells[4] == "± 0" || (cells[3] == "1" && !cells[4].starts_with('±'));
        let published = (!is_direction).then(|| cells[3].parse().ok()).flatten();
        let place = places.entry((cells[7].to_owned(), asked(cells[1], cells[8])));
        compare(place.or_default(), published, cells[5], cells[6] == "met");
    }
    for Listed {
        lift,
        measure,
        quantity,
        between,
        computed,
        is_inside,
    } in crate::predictions::listed()
    {
        let middle = (between.0 > 0.0).then(|| (between.0 * between.1).sqrt());
        // How long fibres are is nothing that a coach asks.
        if measure.starts_with("fibre_") {
            continue;
        }
        let name = LIFTS.iter().find(|name| name.replace(' ', "-") == lift);
        let name = name.unwrap_or_else(|| panic!("{lift} is no lift"));
        let place = places.entry(((*name).to_owned(), asked_by(&measure, &quantity)));
        compare(place.or_default(), middle, &computed, is_inside);
    }
    places
}

/// The table, and what may be said of sizes as a whole.
fn told() -> String {
    let places = places();
    let mut weak: Vec<_> = places.iter().filter(|(_, place)| place.is_weak()).collect();
    weak.sort_by(|a, b| b.1.error().total_cmp(&a.1.error()).then(a.0.cmp(b.0)));
    let mut off: Vec<f64> = places
        .values()
        .flat_map(|place| &place.ratios)
        .map(|ratio| ratio.ln().abs())
        .collect();
    off.sort_by(f64::total_cmp);
    let factor = |share: f64| off[((off.len() - 1) as f64 * share).round() as usize].exp();
    let good = places.len() - weak.len();
    let mut text = format!(
        "Half of {} sizes of whole lifts are within a factor of {:.2} of what was measured or expected, nine in ten within {:.1}. Where fewer \
         than three rows in four are met,\nworst first ({} of {} pairs of lift and question; the other {good} are met more often):\n\n\
         | lift | what is asked | met | the model's value over the measured one |\n| --- | --- | --- | --- |\n",
        off.len(),
        factor(0.5),
        factor(0.9),
        weak.len().min(MOST_ROWS),
        places.len(),
    );
    for ((lift, asked), place) in weak.iter().take(MOST_ROWS) {
        let _ = writeln!(
            text,
            "| {lift} | {asked} | {} of {} | {} |",
            place.met,
            place.rows,
            place.told()
        );
    }
    if weak.len() > MOST_ROWS {
        let mut rest: BTreeMap<&str, Vec<&str>> = BTreeMap::new();
        for ((lift, asked), _) in &weak[MOST_ROWS..] {
            rest.entry(asked).or_default().push(lift);
        }
        let rest: Vec<String> = rest
            .iter()
            .map(|(asked, lifts)| format!("{asked} ({})", lifts.join(", ")))
            .collect();
        let _ = writeln!(
            text,
            "\nLess far off, and still seldom met: {}.",
            rest.join("; ")
        );
    }
    text
}

/// Who should mind: the front page's table is that of the lists.
#[test]
fn law_front_page_tells_every_weak_place() {
    let page: PathBuf = Path::new(env!("CARGO_MANIFEST_DIR")).join("README.md");
    let text = std::fs::read_to_string(&page).expect("the page can be read");
    let (before, rest) = text
        .split_once("<!-- weak places -->\n")
        .expect("a place for the table");
    let (now, after) = rest
        .split_once("<!-- end of weak places -->")
        .expect("an end of it");
    let wanted = told();
    if is_update() {
        let new =
            format!("{before}<!-- weak places -->\n{wanted}<!-- end of weak places -->{after}");
        std::fs::write(&page, new).expect("the page can be written");
    } else {
        assert_eq!(
            now, wanted,
            "README.md (UPDATE=1 cargo test --test suite front_page)"
        );
    }
}
