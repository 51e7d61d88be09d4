//! Sentences around figures, read back and held against the numbers that the figure draws.
//!
//! Every sentence of a title, a caption or an alternative text must be one that is known here: either a claim, which is
//! worked out anew from the written data, or a definition, which holds whatever the data.

mod below_titles;
mod changes;
mod doubts;
mod drawings;
mod families;
mod fibres_below;
mod fits;
mod lecture;
mod loads_below;
mod maps;
mod one_lift;
mod picks;
mod plans;
mod profiles;
mod repetitions;
mod sessions;
mod strength;
mod trends;

use regex::{Captures, Regex};
use std::cell::Cell;
use std::collections::HashMap;
use std::sync::{LazyLock, Mutex};
use torquill::figures::DataTable;
use torquill::plot::Time;
use torquill::resistance::{Item, Setup, Weight};
use torquill::study::Study;

/// What a figure draws: named curves over one axis.
#[derive(Debug, Default)]
pub struct Drawn {
    /// Panel, name, points.
    curves: Vec<(String, String, Vec<[f64; 2]>)>,
    /// What is said to those who cannot see it: a title may speak of a place that is named here.
    description: String,
    /// Curves with the stretches in which their lines are hollow, % of the range.
    hollow: Vec<(String, Vec<[f64; 2]>)>,
    /// Curves that are greatest between two samples, with that point.
    crests: Vec<(String, [f64; 2])>,
    /// The name of the lift in the library, where the figure is of one.
    movement: String,
    /// Stretches in which its areas are pale, on its level axis.
    pale: Vec<[f64; 2]>,
    /// The lifts that it draws, where its words are of their levers.
    studies: Vec<Study>,
    /// The setups that it draws, as they were asked for.
    setups: Vec<Setup>,
    /// The lifter, as words name him or her.
    who: String,
    /// Loads at the places of a table, N.
    loads_n: Vec<f64>,
    /// Muscles of a table at its first place, in order.
    muscles: Vec<String>,
    /// The table beside it.
    table: DataTable,
    /// Stretches of the level axis that are shaded, with what they are.
    shades: Vec<(String, [f64; 2])>,
    /// Which way time goes along its level axis.
    time: Time,
    /// Areas: the points of the upper and of the lower edge.
    fills: Vec<[Vec<[f64; 2]>; 2]>,
}

impl Drawn {
    /// From the data beside a figure: `panel` where there are several, `curve`, two numbers.
    fn of(table: &DataTable) -> Self {
        let mut drawn = Self {
            table: table.clone(),
            ..Self::default()
        };
        let width = table.header.len();
        let load = table.header.iter().position(|name| name == "load_alone_n");
        let loads = table.rows.iter().filter_map(|row| row[load?].parse().ok());
        drawn.loads_n = loads.collect();
        if table.header.get(1).is_some_and(|name| name == "muscle") {
            let first = table.rows.iter().filter(|row| row[0] == table.rows[0][0]);
            let named = first.filter(|row| row[1] != "others");
            drawn.muscles = named.map(|row| row[1].clone()).collect();
        }
        for row in &table.rows {
            // Points of a diagram: a name, where, how much, and more.
            let width = if table.header[0] == "point" { 3 } else { width };
            let (panel, name) = match width {
                4 if table.header[0] == "panel" => (row[0].clone(), row[1].clone()),
                _ => (String::new(), row[0].clone()),
            };
            // Torques of muscles stand over the angle, with what makes them in between.
            let angle = table.header.iter().position(|name| name == "angle_deg");
            let angle =
                angle.filter(|_| table.header.last().is_some_and(|name| name == "torque_nm"));
            let cells = [
                row[angle.unwrap_or(width - 2)].clone(),
                row[width - 1].clone(),
            ];
            let Ok([x, y]): Result<[f64; 2], _> = numbers(&cells).try_into() else {
                continue;
            };
            drawn.push(panel, name, [x, y]);
        }
        drawn
    }

    fn push(&mut self, panel: String, name: String, point: [f64; 2]) {
        match self.curves.iter_mut().find(|c| c.0 == panel && c.1 == name) {
            Some(curve) => curve.2.push(point),
            None => self.curves.push((panel, name, vec![point])),
        }
    }

    /// The points of a curve, by any way it is written.
    fn curve(&self, name: &str) -> Result<&[[f64; 2]], String> {
        let plain = |text: &str| text.to_lowercase();
        // "77 cm (as it is)" is the curve as it is.
        let is_told =
            |own: &str| own == plain(name) || own.ends_with(&format!(" ({})", plain(name)));
        let found = self.curves.iter().find(|c| is_told(&plain(&c.1)));
        found
            .map(|c| c.2.as_slice())
            .ok_or_else(|| format!("no curve is called {name}"))
    }

    /// The greatest point of a curve, where it lies between two samples.
    fn crest(&self, name: &str) -> Option<[f64; 2]> {
        let mut all = self.crests.iter();
        let found = all.find(|(known, _)| known.eq_ignore_ascii_case(name));
        found.map(|(_, point)| *point)
    }

    /// The samples of a curve, without a crest between them.
    fn samples(&self, name: &str) -> Result<Vec<[f64; 2]>, String> {
        let crest = self.crest(name);
        let is_crest = |point: &[f64; 2]| {
            let off = |crest: [f64; 2]| (point[1] / crest[1] - 1.0).abs();
            crest.is_some_and(|crest| off(crest) < 1e-6)
        };
        let all = self.curve(name)?.iter();
        Ok(all.filter(|point| !is_crest(point)).copied().collect())
    }

    /// Names of all curves.
    fn names(&self) -> impl Iterator<Item = &str> {
        self.curves.iter().map(|c| c.1.as_str())
    }
}

fn numbers(cells: &[String]) -> Vec<f64> {
    cells.iter().filter_map(|cell| cell.parse().ok()).collect()
}

/// Greatest value and where it lies.
fn peak(points: &[[f64; 2]]) -> [f64; 2] {
    *points
        .iter()
        .max_by(|a, b| a[1].total_cmp(&b[1]))
        .expect("a curve has points")
}

/// Least value and where it lies.
fn least(points: &[[f64; 2]]) -> [f64; 2] {
    *points
        .iter()
        .min_by(|a, b| a[1].total_cmp(&b[1]))
        .expect("a curve has points")
}

/// Where a place lies between the first and the last point of a curve, in points: places are sampled.
fn step(points: &[[f64; 2]]) -> f64 {
    let far = points[points.len() - 1][0] - points[0][0];
    far.abs() / (points.len() - 1) as f64
}

/// A printed number and half of its last digit, with room for rounding.
fn read_number(printed: &str) -> Result<[f64; 2], String> {
    let decimals = printed.split('.').nth(1).map_or(0, str::len);
    let value = printed.replace('\u{2212}', "-").parse();
    let value: f64 = value.map_err(|_| format!("{printed} is no number"))?;
    Ok([value, 0.5 * 10_f64.powi(-(decimals as i32)) * (1.0 + 1e-6)])
}

/// A printed number says the computed one: to half of its last digit, and a slack for places between samples.
fn says(printed: &str, computed: f64, slack: f64, what: &str) -> Result<(), String> {
    let [value, half] = read_number(printed)?;
    if (value - computed).abs() <= half + slack + 1e-9 * computed.abs() {
        Ok(())
    } else {
        Err(format!("{what}: printed {printed}, computed {computed}"))
    }
}

/// Words for what hangs say a setup: the plain weight in front, and numbers of bands and chains that are its pieces'.
fn hangs(words: &str, setup: Option<&Setup>) -> Result<(), String> {
    let setup = setup.ok_or("a setup that is not drawn")?;
    let plain = setup.items.iter().filter_map(|item| match item {
        Item::Weight(Weight::Load(mass)) => Some(mass.as_kg()),
        _ => None,
    });
    let rest = match anywhere(r"([\d.]+) kg\b(.*)").captures(words) {
        Some(told) => {
            says(&told[1], plain.sum(), 0.0, "plain weight")?;
            told[2].to_owned()
        }
        None => {
            holds(plain.sum::<f64>() == 0.0, "a plain weight is told")?;
            words.to_owned()
        }
    };
    let pieces = format!("{:?}", setup.items);
    let number = anywhere(r"\d+(?:\.\d+)?");
    let mut all = number.find_iter(&rest).map(|number| number.as_str());
    match all.find(|number| !number_is_in(number, &pieces)) {
        Some(unknown) => Err(format!("{unknown} of `{words}` is no number of {pieces}")),
        None => Ok(()),
    }
}

/// Whether a text has a number as a whole.
fn number_is_in(number: &str, text: &str) -> bool {
    let reads = anywhere(r"\d+(?:\.\d+)?");
    reads.find_iter(text).any(|known| known.as_str() == number)
}

/// The median of the slopes between all pairs of days.
fn theil_sen(days: &[[f64; 2]]) -> f64 {
    let mut slopes = Vec::new();
    for (at, first) in days.iter().enumerate() {
        let behind = days[at + 1..].iter().filter(|day| day[0] > first[0]);
        slopes.extend(behind.map(|day| (day[1] - first[1]) / (day[0] - first[0])));
    }
    slopes.sort_by(f64::total_cmp);
    match slopes.len() {
        0 => f64::NAN,
        odd if odd % 2 == 1 => slopes[odd / 2],
        even => f64::midpoint(slopes[even / 2 - 1], slopes[even / 2]),
    }
}

fn holds(is_so: bool, what: &str) -> Result<(), String> {
    is_so.then_some(()).ok_or_else(|| format!("not so: {what}"))
}

/// A sentence and what makes it true.
struct Claim<D> {
    /// The whole sentence as a regular expression.
    reads: &'static str,
    /// Whether the data bear it out.
    holds: fn(&Captures<'_>, &D) -> Result<(), String>,
}

thread_local! {
    /// The claim that is being held against a sentence.
    static READS: Cell<&'static str> = const { Cell::new("") };
}

/// A sentence that says what a word means or what a law is, without a number of this figure: those that it has stand in
/// the claim itself.
fn is_definition<D>(told: &Captures<'_>, _: &D) -> Result<(), String> {
    let numbers = made(r"\d+(?:\.\d+)?".to_owned());
    let fixed = READS.get().replace("\\.", ".");
    let known: Vec<&str> = numbers.find_iter(&fixed).map(|n| n.as_str()).collect();
    let mut all = numbers.find_iter(&told[0]).map(|n| n.as_str());
    match all.find(|number| !known.contains(number)) {
        Some(number) => Err(format!("a definition says {number}, which nobody derives")),
        None => Ok(()),
    }
}

/// Holds every sentence of a text against the data.
fn check<D>(text: &str, claims: &[Claim<D>], data: &D) -> Result<(), String> {
    for sentence in sentences(text) {
        let found = claims.iter().find_map(|claim| {
            let reads = compiled(claim.reads);
            let told = reads.captures(&sentence)?;
            READS.set(claim.reads);
            Some((claim.holds)(&told, data))
        });
        match found {
            None => return Err(format!("nobody checks the sentence `{sentence}`")),
            Some(Err(fault)) => return Err(format!("`{sentence}`: {fault}")),
            Some(Ok(())) => {}
        }
    }
    Ok(())
}

/// What reads a whole sentence.
fn compiled(reads: &str) -> Regex {
    made(format!("^(?:{reads})$"))
}

/// What reads a part of a text, wherever it stands.
fn anywhere(reads: &str) -> Regex {
    made(reads.to_owned())
}

/// Regular expressions are made once.
fn made(pattern: String) -> Regex {
    static MADE: LazyLock<Mutex<HashMap<String, Regex>>> = LazyLock::new(Mutex::default);
    let mut made = MADE.lock().expect("no test panics while it reads");
    made.entry(pattern)
        .or_insert_with_key(|pattern| Regex::new(pattern).expect("a pattern"))
        .clone()
}

/// A text with one of its numbers made clearly another, for each of them.
fn with_changed_numbers(text: &str) -> Vec<String> {
    let numbers = anywhere(r"\d+(?:\.\d+)?");
    let changed = numbers.find_iter(text).map(|found| {
        let value: f64 = found.as_str().parse().expect("a number");
        let decimals = found.as_str().split('.').nth(1).map_or(0, str::len);
        let other = format!("{:.*}", decimals, 1.5 * value + 3.0);
        format!("{}{other}{}", &text[..found.start()], &text[found.end()..])
    });
    changed.collect()
}

/// A text cut at full stops that end a sentence.
fn sentences(text: &str) -> Vec<String> {
    let text = text.trim();
    let mut cut = Vec::new();
    let mut begin = 0;
    for (at, _) in text.match_indices(". ") {
        if text[..at].ends_with("et al") {
            continue;
        }
        let next = text[at + 2..].chars().next();
        if next.is_some_and(|c| c.is_uppercase() || c.is_numeric()) {
            cut.push(text[begin..at].to_owned());
            begin = at + 2;
        }
    }
    cut.push(text[begin..].trim_end_matches('.').to_owned());
    cut.retain(|sentence| !sentence.is_empty());
    cut
}

#[test]
fn fault_a_wrong_number_and_an_unknown_sentence_are_found() {
    let claims = [Claim::<f64> {
        reads: r"It weighs (\d+) kg",
        holds: |told, kg| says(&told[1], *kg, 0.0, "mass"),
    }];
    assert_eq!(check("It weighs 80 kg.", &claims, &80.4), Ok(()));
    assert!(check("It weighs 80 kg.", &claims, &80.6).is_err());
    assert!(check("It weighs 80 kg. It is red.", &claims, &80.0).is_err());
    let meant = [Claim::<f64> {
        reads: r"A stone is 14 pounds(?: and a bit more than [\d.]+ kg)?",
        holds: is_definition,
    }];
    assert_eq!(check("A stone is 14 pounds.", &meant, &0.0), Ok(()));
    let told = "A stone is 14 pounds and a bit more than 6.3 kg.";
    assert!(check(told, &meant, &0.0).is_err());
}
