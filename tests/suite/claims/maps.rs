//! Random maps of one figure over two changed values: their words against curves that are worked out cell by cell.

use super::{Claim, check, holds, read_number, says};
use crate::lift_by_another_name::LIFTS;
use crate::vary_reasons::heaviest_by_hand;
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use rayon::prelude::{IntoParallelIterator, ParallelIterator};
use regex::Captures;
use torquill::error::Compared;
use torquill::figures::value_map;
use torquill::library::{Library, Workbench, numeric_paths};
use torquill::narrative::parameters::{parameter_in_words, shown_value};
use torquill::study::between_samples::promised;
use torquill::study::{Conditions, Parameter, Study, pair_grid};
use torquill::units::System;

/// What a map is held against.
struct Map {
    /// The parameters in words, across and upwards.
    names: [String; 2],
    /// Their values in words.
    values: [Vec<String>; 2],
    /// The figure in words.
    what: String,
    /// The figure of every cell by its own curve: at least, at most.
    cells: Vec<Vec<Option<[f64; 2]>>>,
    /// The same of the model as it is.
    base: [f64; 2],
    /// Lifter and lift.
    whose: String,
}

/// Between what a figure of a curve lies: a peak or a hardest place may lie between two samples.
fn bounds(study: &Study, measure: Compared) -> [f64; 2] {
    let values = study.capacity.values();
    match measure {
        Compared::Held => heaviest_by_hand(study),
        Compared::Start => [values[0]; 2],
        Compared::End => [values[values.len() - 1]; 2],
        Compared::Peak => {
            let sampled = values.iter().copied().fold(f64::NEG_INFINITY, f64::max);
            let between = (0..values.len() - 1).map(|piece| promised(&values, piece));
            [sampled, between.fold(sampled, f64::max)]
        }
    }
}

/// A printed number is one of those between two bounds.
fn is_within(printed: &str, [low, high]: [f64; 2], what: &str) -> Result<f64, String> {
    let [value, half] = read_number(printed)?;
    let is_so = value + half >= low && value - half <= high;
    holds(is_so, &format!("{what}: {printed} of {low} to {high}"))?;
    Ok(value)
}

fn extremes(told: &Captures<'_>, map: &Map) -> Result<(), String> {
    let names = map.names.join(" and ");
    let are_so = told[1].to_lowercase() == names.to_lowercase();
    holds(are_so, &format!("{} is {names}", &told[1]))?;
    holds(
        told[2] == map.what,
        &format!("{} is {}", &told[2], map.what),
    )?;
    let all: Vec<[f64; 2]> = map.cells.iter().flatten().flatten().copied().collect();
    let least = |end: usize| {
        all.iter()
            .map(|cell| cell[end])
            .fold(f64::INFINITY, f64::min)
    };
    is_within(&told[3], [least(0), least(1)], "least")?;
    let place = |axis: usize, text: &str| {
        let mut values = map.values[axis].iter();
        let found = values.position(|value| value == text);
        found.ok_or_else(|| format!("{text} was not tried"))
    };
    let (column, row) = (place(0, &told[6])?, place(1, &told[7])?);
    let cell = map.cells[row][column].ok_or("the best cannot be done")?;
    let best = is_within(&told[4], cell, "best")?;
    let [_, half] = read_number(&told[4])?;
    let is_best = all.iter().all(|[low, _]| *low <= best + half);
    holds(is_best, "no cell is better")?;
    let is_end = |axis: usize, at: usize| at == 0 || at + 1 == map.values[axis].len();
    let is_border = is_end(0, column) || is_end(1, row);
    holds(is_border == told.get(8).is_some(), "on the border")
}

const MAPS: &[Claim<Map>] = &[
    Claim {
        reads: r"A map of the (.+?) over (.+)",
        holds: |told, map| {
            holds(told[1] == map.what, "the figure")?;
            let names = map.names.join(" and ");
            holds(told[2] == names, &format!("{} is {names}", &told[2]))
        },
    },
    Claim {
        reads: r"(.+): (.+?) ([\d.]+) to ([\d.]+) (N|N·m|kg), best at (.+?) and (.+?)(, on the border of what was tried)?",
        holds: extremes,
    },
    Claim {
        reads: r"As it is: ([\d.]+) (?:N|N·m|kg)",
        holds: |told, map| is_within(&told[1], map.base, "as it is").map(|_| ()),
    },
    Claim {
        reads: r"(.+: .+)",
        holds: |told, map| {
            holds(
                told[1] == map.whose,
                &format!("{} is {}", &told[1], map.whose),
            )
        },
    },
];

/// A random map of a lift: what it says, and what it is held against; `None` where no pair can be done.
fn random_map(lift: &str, seed: u64) -> Option<(Vec<String>, Map)> {
    let mut rng = ChaCha8Rng::seed_from_u64(seed);
    let library = Library::built_in();
    let lifters = ["reference-man", "reference-woman", "tall-novice"];
    let bench = Workbench::open(&library, lifters[rng.random_range(0..3)], lift).ok()?;
    let numbers = numeric_paths(&bench.model(&[]).ok()?);
    let measures = [
        Compared::Held,
        Compared::Peak,
        Compared::Start,
        Compared::End,
    ];
    let measure = measures[rng.random_range(0..4)];
    let mut parameter = || {
        let number = &numbers[rng.random_range(0..numbers.len())];
        let step: f64 = rng.random_range(2.0..9.0);
        Parameter {
            path: number.path.clone(),
            values: [-1.0, 0.0, 1.0]
                .map(|by| format!("{:+.1}%", by * step))
                .to_vec(),
        }
    };
    let parameters = [parameter(), parameter()];
    let asked = Conditions::default();
    let grid = pair_grid(&bench, &[], parameters.clone(), &asked).ok()?;
    let chart = value_map(&grid, measure, &asked, System::Metric).ok()?;
    let of = |sets: &[String]| {
        let study = asked.of(&bench.model(sets).ok()?).ok()?;
        Some(bounds(&study, measure))
    };
    let [x, y] = &grid.parameters;
    let cell = |column: &String, row: &String| {
        of(&[format!("{}={column}", x.path), format!("{}={row}", y.path)])
    };
    let row = |row: &String| x.values.iter().map(|column| cell(column, row)).collect();
    let what = match (measure, lift) {
        (Compared::Held, "pull-up" | "calf-raise") => "heaviest weight with the body",
        (Compared::Held, _) => "heaviest weight",
        (Compared::Peak, _) => "greatest capacity",
        (Compared::Start, _) => "capacity at the start",
        (Compared::End, _) => "capacity at the end",
    };
    let words = |of: &Parameter| of.values.iter().map(|value| shown_value(value)).collect();
    let map = Map {
        names: [x, y].map(|of| parameter_in_words(&of.path)),
        values: [words(x), words(y)],
        what: what.to_owned(),
        cells: y.values.iter().map(row).collect(),
        base: of(&[])?,
        whose: format!(
            "{}: {}",
            grid.base.lifter_title,
            grid.base.movement_title.to_lowercase()
        ),
    };
    let heading = &chart.heading;
    let told = [
        &heading.title,
        &heading.subtitle,
        &heading.footnote,
        &heading.description,
    ];
    Some((told.map(String::clone).to_vec(), map))
}

#[test]
fn law_every_sentence_of_random_maps_follows_from_curves_of_their_cells() {
    let cases: Vec<(usize, &str)> = LIFTS.into_iter().cycle().enumerate().take(28).collect();
    let told = cases.into_par_iter().map(|(seed, lift)| {
        let Some((texts, map)) = random_map(lift, 900 + seed as u64) else {
            return Ok(0);
        };
        for text in texts {
            check(&text, MAPS, &map).map_err(|fault| format!("{lift}, map {seed}: {fault}"))?;
        }
        Ok::<usize, String>(1)
    });
    let told: Vec<Result<usize, String>> = told.collect();
    let faults: Vec<&String> = told.iter().filter_map(|one| one.as_ref().err()).collect();
    assert!(faults.is_empty(), "{faults:#?}");
    let count: usize = told.iter().flatten().sum();
    assert!(count > 14, "{count} maps");
}

#[test]
fn fault_a_wrong_best_of_a_map_is_found() {
    let cell = |value: f64| Some([value, value]);
    let map = Map {
        names: ["grip width".to_owned(), "tuck".to_owned()],
        values: [
            vec!["60 cm".to_owned(), "70 cm".to_owned()],
            vec!["20 deg".to_owned()],
        ],
        what: "greatest capacity".to_owned(),
        cells: vec![vec![cell(410.0), cell(455.0)]],
        base: [430.0, 431.0],
        whose: "Somebody: bench press".to_owned(),
    };
    let title = "Grip width and tuck: greatest capacity 410 to 455 N, best at 70 cm and 20 deg, on the border of what was tried";
    assert_eq!(check(title, MAPS, &map), Ok(()));
    for wrong in [
        title.replace("455", "457"),
        title.replace("410", "409"),
        title.replace("70 cm", "60 cm"),
        title.replace("Grip width", "Height"),
        title.replace(", on the border of what was tried", ""),
    ] {
        assert!(check(&wrong, MAPS, &map).is_err(), "{wrong}");
    }
    assert!(says("430", 430.4, 0.0, "base").is_ok());
    assert!(check("As it is: 429 N.", MAPS, &map).is_err());
}
