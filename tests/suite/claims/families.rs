//! The lecture's families over one changed value and its stack of torques: words against the curves that are drawn.

use super::one_lift::Sides;
use super::strength::{CLAIMS, Curves, class_is};
use super::{Claim, Drawn, check, holds, is_definition, least, peak, says};
use regex::Captures;

/// Weight of the kilogram, N/kg (standard gravity).
const N_PER_KG: f64 = 9.80665;

/// The heaviest plain weight of a curve of force: that of its least place, kg.
fn heaviest_kg(drawn: &Drawn, name: &str) -> Result<f64, String> {
    Ok(least(drawn.curve(name)?)[1] / N_PER_KG)
}

/// The curves in the order of the values, the present one where it belongs.
fn in_order(drawn: &Drawn) -> Vec<&str> {
    let shrinks = |name: &&str| name.starts_with('\u{2212}');
    let mut names: Vec<&str> = drawn.names().collect();
    let value = |name: &&str| -> f64 {
        let digits = name.trim_start_matches(['\u{2212}', '+']);
        let size = digits
            .split(' ')
            .next()
            .and_then(|text| text.parse::<f64>().ok());
        match (size, shrinks(name)) {
            (None, _) => f64::NAN,
            (Some(size), true) => -size,
            (Some(size), false) => size,
        }
    };
    names.retain(|name| value(name).is_finite());
    names.sort_by(|a, b| value(a).total_cmp(&value(b)));
    names
}

fn changed(told: &Captures<'_>, drawn: &Drawn) -> Result<(), String> {
    let order = in_order(drawn);
    holds(
        order[0] == &told[1] && order[order.len() - 1] == &told[2],
        "the least and the greatest value",
    )?;
    let [first, last] = [
        heaviest_kg(drawn, order[0])?,
        heaviest_kg(drawn, order[order.len() - 1])?,
    ];
    // A hardest place between samples lies a little below the least one that is drawn.
    says(&told[4], first, 0.002 * first, "first")?;
    says(&told[5], last, 0.002 * last, "last")?;
    holds((&told[3] == "rises") == (last > first), "its direction")
}

/// Sentences of families.
pub const FAMILIES: &[Claim<Drawn>] = &[
    Claim {
        reads: r"(?:Grip width|Length of the thigh) from (.+?) to (.+?): heaviest weight (rises|falls) from ([\d.]+) kg to ([\d.]+) kg",
        holds: changed,
    },
    Claim {
        reads: r"Held with thighs (.+?) shorter ([\d.]+) kg, as they are ([\d.]+) kg, (.+?) longer ([\d.]+) kg",
        holds: |told, drawn| {
            let curves = [
                (format!("\u{2212}{}", &told[1]), &told[2]),
                ("as it is".to_owned(), &told[3]),
                (format!("+{}", &told[4]), &told[5]),
            ];
            curves.into_iter().try_for_each(|(name, printed)| {
                let kg = heaviest_kg(drawn, &name)?;
                // A hardest place between samples lies a little below the least one that is drawn.
                says(printed, kg, 0.002 * kg, &name)
            })
        },
    },
    Claim {
        reads: r"People lift most with the (\w+) grip; this model holds most with the (\w+) one, (.+)",
        holds: |told, drawn| {
            let order = in_order(drawn);
            let own = order.iter().find(|name| name.starts_with(&told[3]));
            let kg = heaviest_kg(drawn, own.ok_or("no such grip")?)?;
            let mut all = order.iter().map(|name| heaviest_kg(drawn, name));
            let is_most = all.all(|other| other.is_ok_and(|other| other <= kg * 1.002));
            holds(is_most, "none is better")?;
            let mut measured = order.iter().filter(|name| !name.contains("as it is"));
            let place = measured.position(|name| name.starts_with(&told[3]));
            let place = place.ok_or("a grip that was not measured")?;
            holds(["narrow", "medium", "wide"][place] == &told[2], "its name")?;
            holds(&told[1] == "wide" && &told[2] != "wide", "as was published")
        },
    },
    Claim {
        reads: r"Of (\d+) grips the one of (.+?) holds most: ([\d.]+) kg",
        holds: |told, drawn| {
            let order = in_order(drawn);
            says(&told[1], order.len() as f64, 0.0, "grips")?;
            let named = order.iter().find(|name| name.starts_with(&told[2]));
            let best = heaviest_kg(drawn, named.ok_or("no such grip")?)?;
            says(&told[3], best, 0.002 * best, "best")?;
            let all = order.iter().map(|name| heaviest_kg(drawn, name));
            let all = all.collect::<Result<Vec<f64>, String>>()?;
            holds(all.iter().all(|kg| *kg <= best * 1.002), "none is better")
        },
    },
    Claim {
        reads: r".+; hands apart 1, 1.4, 1.7 and, as it is, ([\d.]+) breadths of the shoulders",
        holds: |told, drawn| {
            // Hands one breadth apart are the narrowest grip.
            let cm = |name: &str| name.split(' ').next().and_then(|cm| cm.parse::<f64>().ok());
            let usual = drawn.names().find(|name| name.contains("as it is"));
            let usual = usual.and_then(cm).ok_or("no usual grip")?;
            let narrow = in_order(drawn).first().and_then(|name| cm(name));
            let narrow = narrow.ok_or("no narrow grip")?;
            // Widths are told in whole centimetres.
            let slack = (0.5 + 0.5 * usual / narrow) / narrow;
            says(&told[1], usual / narrow, slack, "breadths")
        },
    },
    Claim {
        reads: r"(?:Grip width|Length of the thigh): heaviest weight best at (.+?), (on the border of what was tried, )?([\d.]+) kg",
        holds: |told, drawn| {
            let order = in_order(drawn);
            let best = heaviest_kg(drawn, &told[1])?;
            says(&told[3], best, 0.002 * best, "best")?;
            let is_border = [order[0], order[order.len() - 1]].contains(&&told[1]);
            holds(is_border == told.get(2).is_some(), "on the border")?;
            let all = order.iter().map(|name| heaviest_kg(drawn, name));
            let most = all.collect::<Result<Vec<f64>, String>>()?;
            holds(most.iter().all(|kg| *kg <= best * 1.002), "none is better")
        },
    },
    Claim {
        reads: r"(?:Grip width|Length of the thigh) hardly changes the heaviest weight: ([\d.]+) kg",
        holds: |told, drawn| {
            let all = drawn.names().map(|name| heaviest_kg(drawn, name));
            let all = all.collect::<Result<Vec<f64>, String>>()?;
            let [low, high] =
                [f64::min, f64::max].map(|of| all.iter().copied().reduce(of).unwrap_or(0.0));
            holds(high - low < 0.008 * high, "hardly")?;
            says(&told[1], low, 0.01 * low, "weight")
        },
    },
    Claim {
        reads: r"The hands' distance changes the moment arm of the load at shoulder and elbow, and how far the bar has to travel: a wide grip shortens the way",
        holds: |_, drawn| {
            let way = |name: &str| drawn.curve(name).map(|points| points[points.len() - 1][0]);
            let ways: Result<Vec<f64>, String> = in_order(drawn).into_iter().map(way).collect();
            holds(
                ways?.windows(2).all(|pair| pair[1] < pair[0]),
                "wider is shorter",
            )
        },
    },
    Claim {
        reads: r"Held still, a wide grip holds less than a narrow one below (\d+) cm, and more above",
        holds: |told, drawn| {
            let order = in_order(drawn);
            let [narrow, wide] = [drawn.curve(order[0])?, drawn.curve(order[order.len() - 1])?];
            let near = |x: f64| {
                let by =
                    |p: &&[f64; 2], q: &&[f64; 2]| (p[0] - x).abs().total_cmp(&(q[0] - x).abs());
                narrow.iter().min_by(by).map_or(f64::NAN, |p| p[1])
            };
            let x: f64 = told[1].parse().unwrap_or(f64::NAN);
            let below = wide.iter().filter(|p| p[0] < x - 1.0);
            holds(below.clone().all(|p| p[1] < near(p[0])), "less below")?;
            let above = wide.iter().filter(|p| p[0] > x + 1.0);
            holds(above.clone().all(|p| p[1] > near(p[0])), "more above")
        },
    },
    Claim {
        reads: r"(?:People \(Larsen 2021\) lift most with the (\w+) grip, ([\d.]+) kg; so does the model|Most lifted by people \(Larsen 2021\) ([\d.]+) kg, held in the model ([\d.]+) kg)",
        holds: |told, drawn| {
            let order = in_order(drawn);
            let held = |name: &&str| heaviest_kg(drawn, name);
            let measured = order.iter().filter(|name| !name.contains("as it is"));
            let own = measured.map(held).collect::<Result<Vec<f64>, String>>()?;
            let best = ["narrow", "medium", "wide"].into_iter().zip(own);
            let best = best.max_by(|a, b| a.1.total_cmp(&b.1)).ok_or("no grip")?;
            let lifted = told.get(2).or(told.get(3)).ok_or("no maximum")?;
            holds(lifted.as_str() == "109.8", "as was published")?;
            match told.get(4) {
                Some(kg) => {
                    let all = order.iter().map(held);
                    let all = all.collect::<Result<Vec<f64>, String>>()?;
                    let most = all.into_iter().fold(0.0, f64::max);
                    says(kg.as_str(), most, 0.002 * most, "most of the model's")?;
                    holds(best.0 != "wide", "another one than people's")
                }
                None => holds(&told[1] == "wide" && best.0 == "wide", "the same"),
            }
        },
    },
    Claim {
        reads: r"Measured at 1, 1.4 and 1.7 breadths of the shoulders people lift ([\d.]+) kg with a narrow grip, ([\d.]+) kg with a medium grip and ([\d.]+) kg with a wide grip, most with the (\w+) grip; held still, the model has ([\d.]+) kg, ([\d.]+) kg and ([\d.]+) kg, most with the (\w+)(?: one)?",
        holds: |told, drawn| {
            // The usual grip is drawn beside those that were measured.
            let mut order = in_order(drawn);
            order.retain(|name| !name.contains("as it is"));
            let cm = |name: &str| name.split(' ').next().and_then(|cm| cm.parse::<f64>().ok());
            let widths: Option<Vec<f64>> = order.iter().map(|name| cm(name)).collect();
            let widths = widths.ok_or("a grip without a width")?;
            holds(widths.len() == 3, "three were measured")?;
            for (width, breadths) in widths.iter().zip([1.0, 1.4, 1.7]) {
                let off = width / widths[0] - breadths;
                holds(off.abs() < 0.03, &format!("{width} cm is {breadths}"))?;
            }
            let names = ["narrow", "medium", "wide"];
            let most = |values: &[f64]| {
                let pairs = names.iter().zip(values);
                let best = pairs.max_by(|a, b| a.1.total_cmp(b.1));
                best.map_or("", |(name, _)| *name).to_owned()
            };
            let kg = |from: usize| -> Vec<f64> {
                let printed = (from..from + 3).map(|index| told[index].parse());
                printed.map(|kg| kg.unwrap_or(f64::NAN)).collect()
            };
            let (people, model) = (kg(1), kg(5));
            holds(most(&people) == told[4], "most of the measured")?;
            for (name, printed) in order.iter().zip(5..) {
                let held = heaviest_kg(drawn, name)?;
                says(&told[printed], held, 0.002 * held, name)?;
            }
            let own = if &told[8] == "same" {
                &told[4]
            } else {
                &told[8]
            };
            holds(most(&model) == *own, "most of the model's")?;
            let published = include_str!("../../reference/larsen2021_grip_width.csv");
            for grip in [&told[1], &told[2]] {
                let row = format!(",{grip}/{},", &told[3]);
                holds(published.contains(&row), &format!("{row} is published"))?;
            }
            Ok(())
        },
    },
    Claim {
        reads: r"The model keeps the elbow's place beside the hands, which people change with the grip",
        holds: is_definition,
    },
    Claim {
        reads: r"With longer thighs the (?:hip|knee|knee and hip) (?:lies|lie) farther from the line of the load at the start: the same bar asks for (?:a greater moment|greater moments) there(?:, and so does the body's own weight)?, and the same muscles hold less of it",
        holds: |_, drawn| {
            let start = |name: &str| drawn.curve(name).map(|points| points[0][1]);
            let starts: Result<Vec<f64>, String> = in_order(drawn).into_iter().map(start).collect();
            holds(
                starts?.windows(2).all(|pair| pair[1] < pair[0]),
                "longer holds less",
            )
        },
    },
    Claim {
        reads: r"Corner at ([\d.]+) cm: .+ counts? most before it, .+ beyond(?: up to [\d.]+ cm)?",
        holds: |told, drawn| {
            // Which joints count there is held against the poses in `beside_measured.rs`; here: the curve turns flatter there.
            let points = drawn.curve("as it is")?;
            let cm: f64 = told[1].parse().unwrap_or(f64::NAN);
            let is_beyond = |point: &[f64; 2]| point[0] >= cm - 0.5;
            let at = points.iter().position(is_beyond).ok_or("off the curve")?;
            let slope = |from: usize, to: usize| {
                let (a, b) = (points.get(from)?, points.get(to)?);
                Some((b[1] - a[1]) / (b[0] - a[0]))
            };
            let (near, far) = (at.saturating_sub(1), at + 3);
            let before = slope(near.saturating_sub(6), near).ok_or("at the start")?;
            let beyond = slope(far, far + 6).ok_or("at the end")?;
            holds(beyond < 0.8 * before, "a corner of the curve")
        },
    },
    Claim {
        reads: r"Nothing about the muscles was changed",
        holds: is_definition,
    },
    Claim {
        reads: r"Strength curves of the .+ of .+ for (?:grip width|length of the thigh): (.+)",
        holds: |told, drawn| {
            let parts = told[1]
                .split("at the end)")
                .filter(|part| part.contains('('));
            let mut count = 0;
            for part in parts {
                let (name, figures) = part.split_once(" (").ok_or("no figures")?;
                let name = name
                    .trim_start_matches(", ")
                    .trim_start_matches("and ")
                    .trim_start_matches(" and ");
                let points = drawn.curve(name)?;
                let values: Vec<f64> = points.iter().map(|point| point[1]).collect();
                let most = values.iter().copied().fold(0.0, f64::max);
                class_is(figures.split(',').next().unwrap_or_default(), &values, most)?;
                let printed: Vec<&str> = figures
                    .split(' ')
                    .filter(|word| word.parse::<f64>().is_ok())
                    .collect();
                let most = peak(points)[1];
                says(printed[0], 100.0 * values[0] / most, 0.1, "start")?;
                says(
                    printed[1],
                    100.0 * values[values.len() - 1] / most,
                    0.1,
                    "end",
                )?;
                count += 1;
            }
            holds(count == drawn.names().count(), "every curve is told")
        },
    },
];

/// Whether the words of a family's strength curve hold of the curve as it is, under a plain weight of 20 kg.
pub fn as_it_is(sentence: &str, drawn: &Drawn, lift: &str) -> Result<(), String> {
    let held = drawn.curve("as it is")?;
    let asked_n = 20.0 * N_PER_KG;
    let curves = Curves {
        lift: lift.to_owned(),
        at: held.iter().map(|point| point[0]).collect(),
        capacity: held.iter().map(|point| point[1]).collect(),
        crest: None,
        loads: vec![(
            "20 kg".to_owned(),
            held.iter().map(|point| asked_n / point[1]).collect(),
        )],
        still: true,
        sides: drawn.own_study().ok().map(Sides::of),
    };
    check(sentence, CLAIMS, &curves)
}

/// The layers, without the line of what is left for the load.
fn muscles(drawn: &Drawn) -> impl Iterator<Item = &(String, String, Vec<[f64; 2]>)> {
    drawn
        .curves
        .iter()
        .filter(|curve| curve.1 != "left for the load")
}

/// The summed torque of all layers at every place.
fn summed(drawn: &Drawn) -> Vec<f64> {
    let count = drawn.curves[0].2.len();
    let at = |index: usize| muscles(drawn).map(|curve| curve.2[index][1]).sum();
    (0..count).map(at).collect()
}

/// Place and share of every layer at the greatest sum.
fn shares(drawn: &Drawn) -> (f64, Vec<(String, f64)>) {
    let sums = summed(drawn);
    let index = (0..sums.len())
        .max_by(|a, b| sums[*a].total_cmp(&sums[*b]))
        .expect("places");
    let share = |curve: &(String, String, Vec<[f64; 2]>)| {
        (curve.1.clone(), 100.0 * curve.2[index][1] / sums[index])
    };
    (
        drawn.curves[0].2[index][0],
        muscles(drawn).map(share).collect(),
    )
}

/// Sentences of the stack.
pub const STACK: &[Claim<Drawn>] = &[
    Claim {
        reads: r"Muscles add up: (.+?) (makes?) (\d+) % of the muscles' moment at its peak",
        holds: |told, drawn| {
            let (_, shares) = shares(drawn);
            let named: Vec<&str> = told[1].split(" and ").collect();
            let share = |name: &&str| {
                let found = shares.iter().find(|(of, _)| of == name);
                found
                    .map(|(_, share)| *share)
                    .ok_or(format!("no layer {name}"))
            };
            let sum: Result<Vec<f64>, String> = named.iter().map(share).collect();
            says(&told[3], sum?.iter().sum(), 0.1, "their share")?;
            holds((named.len() == 1) == (&told[2] == "makes"), "the verb")
        },
    },
    Claim {
        reads: r"Each muscle gives its force times its moment arm at every angle; the strength curve is their sum, with what limb and tissue take from it or add to it",
        holds: is_definition,
    },
    Claim {
        reads: r"Stacked moments over .+",
        holds: is_definition,
    },
    Claim {
        reads: r"At the peak, (\d+) deg of .+, the shares are: (.+)",
        holds: |told, drawn| {
            let (place, shares) = shares(drawn);
            says(&told[1], place, 1e-6, "place")?;
            let parts: Vec<&str> = told[2].split(", ").collect();
            holds(parts.len() == shares.len(), "every layer is told")?;
            for part in parts {
                let words = part.trim_end_matches(" %");
                let (name, printed) = words.rsplit_once(' ').ok_or("no share")?;
                let found = shares.iter().find(|(of, _)| of == name);
                let (_, share) = found.ok_or(format!("no layer {name}"))?;
                says(printed, *share, 0.1, name)?;
            }
            Ok(())
        },
    },
    Claim {
        reads: r"The lowest layer is the (.+)",
        holds: |told, drawn| holds(drawn.curves[0].1 == told[1], "the lowest layer"),
    },
];
