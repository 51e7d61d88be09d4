//! Sentences around drawn bodies, stacks, tracks and laws of loads, against the numbers beside them.

use super::strength::signed;
use super::{Claim, Drawn, anywhere, compiled, hangs, holds, is_definition, least, peak, says};
use regex::{Captures, Regex};
use torquill::figures::DataTable;
use torquill::units::STANDARD_GRAVITY_M_S2;

/// A cell of the row in which the first cells are these.
fn cell(table: &DataTable, keys: &[&str], column: &str) -> Result<f64, String> {
    let place = table.header.iter().position(|name| name == column);
    let place = place.ok_or(format!("no column {column}"))?;
    let row = table.rows.iter().find(|row| {
        let mut pairs = row.iter().zip(keys);
        pairs.all(|(cell, key)| cell == key)
    });
    let row = row.ok_or(format!("no row {keys:?}"))?;
    row[place]
        .parse()
        .map_err(|_| format!("{} is no number", row[place]))
}

/// Rows of a place of the range.
fn rows<'a>(table: &'a DataTable, place: &str) -> Vec<&'a Vec<String>> {
    table.rows.iter().filter(|row| row[0] == place).collect()
}

/// The key of a place as a sentence names it.
fn key(place: &str) -> String {
    place.trim_end_matches(" place").to_lowercase()
}

fn places_are(told: &Captures<'_>, table: &DataTable) -> Result<(), String> {
    let mut places: Vec<&str> = table.rows.iter().map(|row| row[0].as_str()).collect();
    places.dedup();
    says(&told[1], places.len() as f64, 0.0, "places")
}

/// "2.1 cm at the start, 4.5 cm at the hardest place and 3 cm at the end".
fn each_place(text: &str, value: impl Fn(&str) -> Result<f64, String>) -> Result<(), String> {
    let parts = text.replace(" and ", ", ");
    let reads =
        Regex::new(r"^([\d.]+) cm at the (start|hardest place|strongest place|middle|end)$");
    let reads = reads.expect("a pattern");
    for part in parts.split(", ") {
        let told = reads
            .captures(part)
            .ok_or(format!("`{part}` is no lever"))?;
        says(&told[1], 100.0 * value(&key(&told[2]))?, 0.0, part)?;
    }
    Ok(())
}

/// Muscles on the skeleton, and lifts as free bodies.
pub const BODIES: &[Claim<DataTable>] = &[
    Claim {
        reads: r"Moment arm of the (.+) at the (\w+): (.+)",
        holds: |told, table| {
            each_place(&told[3], |place| {
                cell(table, &[place, &told[1], &told[2]], "moment_arm_m")
            })
        },
    },
    Claim {
        reads: r"The moving limb with its muscles at (\d) places",
        holds: places_are,
    },
    Claim {
        reads: r"(Start|Hardest|Strongest|Middle|End): [^:]+: (.+ × .+)",
        holds: |told, table| {
            let place = key(&told[1]);
            let parts: Vec<&str> = told[2].split("; ").collect();
            let there = rows(table, &place);
            let named = there.iter().filter(|row| row[1] != "others").count();
            holds(parts.len() == named, "every muscle is told")?;
            let reads = Regex::new(r"^(.+) ([\d.]+) mm × (\d+) N = ([\d.]+) N·m at the (\w+)$");
            let reads = reads.expect("a pattern");
            for part in parts {
                let told = reads
                    .captures(part)
                    .ok_or(format!("`{part}` is no product"))?;
                let of = |column| cell(table, &[place.as_str(), &told[1], &told[5]], column);
                says(&told[2], 1000.0 * of("moment_arm_m")?, 0.0, "arm")?;
                says(&told[3], of("force_n")?, 0.0, "force")?;
                says(&told[4], of("torque_nm")?, 0.0, "moment")?;
                says(
                    &told[4],
                    of("moment_arm_m")? * of("force_n")?,
                    0.0,
                    "product",
                )?;
            }
            Ok(())
        },
    },
    Claim {
        reads: r"Muscles without a row there make (.+) N·m at the (\w+) at these places",
        holds: |told, table| {
            let own = |row: &&Vec<String>| row[1] == "others" && row[2] == told[2];
            let left: Vec<&Vec<String>> = table.rows.iter().filter(own).collect();
            let printed = told[1].replace(" and ", ", ");
            let printed: Vec<&str> = printed.split(", ").collect();
            holds(printed.len() == left.len(), "every place is told")?;
            for (printed, row) in printed.iter().zip(left) {
                let moment = row[row.len() - 1].parse().map_err(|_| "no moment")?;
                says(printed, moment, 0.0, "moment of the others")?;
            }
            Ok(())
        },
    },
    Claim {
        reads: r"A muscle turns a joint with its force times its moment arm, .+",
        holds: is_definition,
    },
    Claim {
        reads: r"The limb's position sets both: .+",
        holds: is_definition,
    },
    Claim {
        reads: r"(Same load, other moment arm|Load and moment arm change|More than can be held): at the (.+?) (\d.*) cm",
        holds: |told, table| {
            let alone = table.header.iter().position(|name| name == "load_alone_n");
            let alone = alone.ok_or("no load")?;
            let rows = table.rows.iter();
            let loads: Vec<f64> = rows.filter_map(|row| row[alone].parse().ok()).collect();
            let least = loads.iter().copied().fold(f64::INFINITY, f64::min);
            let most = loads.iter().copied().fold(0.0, f64::max);
            let same = most - least < 0.005 * most;
            let effort = table.header.iter().position(|name| name == "effort");
            let effort = effort.ok_or("no effort")?;
            let is_more = |row: &Vec<String>| row[effort].parse::<f64>().is_ok_and(|e| e > 1.0);
            let too_heavy = table.rows.iter().any(is_more);
            holds(
                too_heavy == told[1].starts_with("More"),
                "whether it can be held",
            )?;
            holds(
                too_heavy || same == told[1].starts_with("Same"),
                "whether the load is the same",
            )?;
            let levers = told[3].split(", then ");
            let mut places: Vec<&str> = table.rows.iter().map(|row| row[0].as_str()).collect();
            places.dedup();
            for (printed, place) in levers.zip(places) {
                let lever = cell(table, &[place, &told[2]], "lever_m")?;
                says(printed, 100.0 * lever, 0.0, place)?;
            }
            Ok(())
        },
    },
    Claim {
        reads: r"The push turns (the .+) over",
        holds: |told, table| {
            let told = told[1].replace(" and ", ", ");
            let told: Vec<&str> = told.split(", ").collect();
            let column = |name: &str| {
                let place = table.header.iter().position(|head| head == name);
                place.ok_or(format!("no column {name}"))
            };
            let (held, push) = (column("held_nm")?, column("push_nm")?);
            let number = |row: &[String], at: usize| row[at].parse::<f64>().unwrap_or(f64::NAN);
            // Without the push the muscles of the other side would hold the joint.
            let turned = table.rows.iter().filter(|row| {
                let with = number(row, held);
                with > 0.5 && with - number(row, push) < -0.5
            });
            let mut joints: Vec<String> = turned.map(|row| format!("the {}", row[1])).collect();
            joints.sort();
            joints.dedup();
            let mut told: Vec<&str> = told;
            told.sort_unstable();
            holds(told == joints, &format!("{told:?}: {joints:?}"))
        },
    },
    Claim {
        reads: r"A free body at (\d) places; load and body make the moments that (are held|would have to be held, more than this lifter can)",
        holds: |told, table| {
            places_are(told, table)?;
            let effort = table.header.iter().position(|name| name == "effort");
            let effort = effort.ok_or("no effort")?;
            let all = table.rows.iter();
            let most = all
                .filter_map(|row| row[effort].parse::<f64>().ok())
                .fold(0.0, f64::max);
            holds(
                (most <= 1.0) == (&told[2] == "are held"),
                "whether it can be held",
            )
        },
    },
    Claim {
        reads: r"(Start|Hardest|Strongest|Middle|End): [^:]+, load (\d+) N(?:, with the push along bar or plate (\d+) N)?: (.+)",
        holds: |told, table| {
            let place = key(&told[1]);
            let parts: Vec<&str> = told[4].split("; ").collect();
            holds(
                parts.len() == rows(table, &place).len(),
                "every joint is told",
            )?;
            let reads = Regex::new(
                r"^at the (.+) load (\S+),(?: bench (\S+),)? body (\S+), (?:held|asked) (\S+) N·m by its (.+), moment arm (\d+) cm$",
            )
            .expect("a pattern");
            for part in parts {
                let joint = reads
                    .captures(part)
                    .ok_or(format!("`{part}` is no balance"))?;
                let of = |column| cell(table, &[place.as_str(), &joint[1]], column);
                says(&told[2], of("load_alone_n")?, 0.0, "load")?;
                let pushed = told.get(3).map_or(&told[2], |pushed| pushed.as_str());
                says(pushed, of("load_n")?, 0.0, "load with the push")?;
                // The arm belongs to the force that is named beside it.
                says(
                    &joint[2],
                    of("load_n")? * of("lever_m")?,
                    0.0,
                    "force × arm",
                )
                .or_else(|_| {
                    says(
                        &joint[2],
                        -of("load_n")? * of("lever_m")?,
                        0.0,
                        "force × arm",
                    )
                })?;
                let number = |text: &str| -> f64 {
                    text.replace('\u{2212}', "-").parse().unwrap_or(f64::NAN)
                };
                says(&joint[2], of("load_nm")?, 0.0, "moment of the load")?;
                let bench = joint.get(3).map_or("0", |bench| bench.as_str());
                says(bench, of("pushed_nm")?, 0.0, "moment of the bench")?;
                says(&joint[4], of("limbs_nm")?, 0.0, "moment of the limbs")?;
                says(&joint[5], of("held_nm")?, 0.0, "moment that is held")?;
                says(&joint[7], 100.0 * of("lever_m")?, 0.0, "lever")?;
                let mut own = rows(table, &place).into_iter();
                let by = table.header.iter().position(|name| name == "held_by");
                let row = own.find(|row| row[1] == joint[1]);
                let holders = row.zip(by).map(|(row, by)| row[by].clone());
                holds(holders.as_deref() == Some(&joint[6]), "who holds it")?;
                let sum = number(&joint[2]) + number(bench) + number(&joint[4]);
                holds(
                    (sum - number(&joint[5])).abs() <= 1.0,
                    "as printed, the moments are in balance to a rounding",
                )?;
            }
            Ok(())
        },
    },
    Claim {
        reads: r"It passes through (the .+)",
        holds: |told, table| {
            let lever = table.header.iter().position(|name| name == "lever_m");
            let lever = lever.ok_or("no lever")?;
            let arm_m = |row: &&Vec<String>| row[lever].parse::<f64>().unwrap_or(f64::NAN);
            let joints: Vec<&str> = table.rows.iter().map(|row| row[1].as_str()).collect();
            let is_passed = |joint: &str| {
                let mut own = table.rows.iter().filter(|row| row[1] == joint);
                // Less than half of the last digit of the table's arms.
                own.all(|row| arm_m(&row) < 5.0e-4)
            };
            let mut passed: Vec<String> = joints
                .into_iter()
                .filter(|joint| is_passed(joint))
                .map(|joint| format!("the {joint}"))
                .collect();
            passed.sort_unstable();
            passed.dedup();
            let told = told[1].replace(" and ", ", ");
            let mut told: Vec<&str> = told.split(", ").collect();
            told.sort_unstable();
            holds(told == passed, &format!("{told:?}: {passed:?}"))
        },
    },
    Claim {
        reads: r"In balance, the moment that muscles and tissue hold at a joint is .+|Each moment is rounded by itself: a printed sum may be off by 1",
        holds: is_definition,
    },
];

/// The layers of a stack at a place, the lowest first: edges are drawn from the top down.
fn layers(drawn: &Drawn, x: f64) -> Vec<(String, f64)> {
    let edges = drawn.curves.iter().filter(|c| !c.1.starts_with("asked"));
    let mut layers = Vec::new();
    let mut below = 0.0;
    for (_, name, points) in edges.collect::<Vec<_>>().into_iter().rev() {
        let near = points
            .iter()
            .min_by(|a, b| (a[0] - x).abs().total_cmp(&(b[0] - x).abs()));
        let edge = near.map_or(f64::NAN, |point| point[1]);
        let name = name.trim_start_matches("+ ");
        let name = name.split(" (").next().unwrap_or(name);
        layers.push((name.to_owned(), edge - below));
        below = edge;
    }
    layers
}

/// Value of a curve at the point nearest to a place.
fn at(points: &[[f64; 2]], x: f64) -> f64 {
    let near = points
        .iter()
        .min_by(|a, b| (a[0] - x).abs().total_cmp(&(b[0] - x).abs()));
    near.map_or(f64::NAN, |point| point[1])
}

/// Where the lift is weakest, as the description of a stack has it.
const WEAKEST: &str = "Where the lift is weakest, ([^:]+): ";

/// The samples that a place in words may mean: it is rounded to a centimetre or a degree.
fn told_places(place: &str, drawn: &Drawn) -> Vec<f64> {
    let place = signed(place);
    let printed = match place.as_str() {
        "at the start" => Some(0.0),
        other => {
            let words = other.trim_start_matches("at ").split(' ').next();
            words.and_then(|word| word.replace('\u{2212}', "-").parse().ok())
        }
    };
    let points = drawn.curves[0].2.iter().map(|point| point[0]);
    let near = |x: &f64| printed.is_some_and(|printed: f64| (x - printed).abs() <= 0.501);
    points.filter(near).collect()
}

/// Whether the areas are pale where the description has the lift weakest.
fn is_pale_where_weakest(drawn: &Drawn) -> Result<bool, String> {
    let reads = compiled(&format!(".*{WEAKEST}.+"));
    let weakest = reads.captures(&drawn.description).ok_or("no place")?;
    let mut places = told_places(&weakest[1], drawn).into_iter();
    let is_pale = |x: f64| {
        let mut all = drawn.pale.iter();
        all.any(|[a, b]| (a.min(*b)..=a.max(*b)).contains(&x))
    };
    Ok(places.any(is_pale))
}

/// The stack is of this joint.
pub fn is_of(joint: &str, drawn: &Drawn) -> Result<(), String> {
    let begin = format!("Stacked muscle moments at the {joint} over ");
    holds(
        drawn.description.starts_with(&begin),
        "the joint of the stack",
    )
}

/// Between which samples a place of the level axis lies, as a number of samples and a part.
fn sample_of(x: f64, drawn: &Drawn) -> f64 {
    let points = &drawn.curves[0].2;
    let part = |at: usize| (x - points[at][0]) / (points[at + 1][0] - points[at][0]);
    let mut pieces = 0..points.len() - 1;
    let own = pieces.find(|at| (-1e-3..=1.0 + 1e-3).contains(&part(*at)));
    own.map_or(f64::NAN, |at| at as f64 + part(at))
}

fn first_last(points: &[[f64; 2]]) -> [[f64; 2]; 2] {
    [points[0], points[points.len() - 1]]
}

/// Stacks, tracks, laws of loads, three capacities.
pub const CURVES: &[Claim<Drawn>] = &[
    Claim {
        reads: r"[^:]+ at its weakest: (.+) makes? (\d+) % of the muscles' moment at the (.+)",
        holds: |told, drawn| {
            let names: Vec<String> = told[1].split(" and ").map(str::to_lowercase).collect();
            let reads = compiled(&format!(".*{WEAKEST}.+"));
            let weakest = reads.captures(&drawn.description).ok_or("no place")?;
            let share = |x: f64| {
                let layers = layers(drawn, x);
                let all: f64 = layers.iter().map(|layer| layer.1).sum();
                let named = layers
                    .iter()
                    .filter(|l| names.contains(&l.0.to_lowercase()));
                100.0 * named.map(|layer| layer.1).sum::<f64>() / all
            };
            is_of(&told[3], drawn)?;
            holds(!is_pale_where_weakest(drawn)?, "the joint limits there")?;
            let mut places = told_places(&weakest[1], drawn).into_iter();
            // The rest of a stack stands for several.
            let are_largest = |x: f64| {
                let layers = layers(drawn, x);
                let is_named = |layer: &&(String, f64)| names.contains(&layer.0.to_lowercase());
                let of = |named: bool| {
                    let own = layers.iter().filter(move |layer| is_named(layer) == named);
                    own.map(|layer| layer.1)
                };
                let most_of_others = layers
                    .iter()
                    .filter(|layer| !is_named(layer) && !layer.0.to_lowercase().contains("other"));
                let others = most_of_others.map(|layer| layer.1).fold(0.0, f64::max);
                of(true).fold(f64::INFINITY, f64::min) >= others - 0.5 || layers.len() == 1
            };
            let found = places.any(|x| says(&told[2], share(x), 0.0, "").is_ok() && are_largest(x));
            holds(found, "they have that share where the lift is weakest")
        },
    },
    Claim {
        reads: r"Stacked muscle moments at the (.+) over [^.]+",
        holds: is_definition,
    },
    Claim {
        reads: r"Where the lift is weakest, ([^:]+): (.+); that load and the limbs ask for (\d+) N·m",
        holds: |told, drawn| {
            let parts: Vec<&str> = told[2].split(", ").collect();
            let asked = drawn.curve("asked by the heaviest load")?;
            let there = |x: f64| {
                let layers = layers(drawn, x);
                holds(parts.len() == layers.len(), "every layer is told")?;
                for (part, (name, moment)) in parts.iter().zip(&layers) {
                    let printed = part.trim_end_matches(" N·m");
                    let (told_name, number) = printed.rsplit_once(' ').ok_or("no moment")?;
                    holds(
                        told_name.eq_ignore_ascii_case(name),
                        &format!("{told_name} is {name}"),
                    )?;
                    says(number, *moment, 1e-3, name)?;
                }
                says(&told[3], at(asked, x), 1e-3, "what is asked")
            };
            // The place is rounded to a centimetre or a degree: one sample there has all of the numbers.
            let places = told_places(&told[1], drawn);
            let found = places.into_iter().map(there);
            found
                .reduce(Result::or)
                .unwrap_or(Err("no place".to_owned()))
        },
    },
    Claim {
        reads: r"At every place the moments of the muscles that lift hold what load and limbs ask of the joint; its passive tissue adds to them or takes from them, and muscles that pull the other way take",
        holds: is_definition,
    },
    Claim {
        reads: r"[^:]+ at its weakest: the (.+) does not limit",
        holds: |told, drawn| {
            is_of(&told[1], drawn)?;
            holds(is_pale_where_weakest(drawn)?, "it is pale there")
        },
    },
    Claim {
        reads: r"The joint limits the lift everywhere, so no other sharing of its moment holds as much",
        holds: |_, drawn| holds(drawn.pale.is_empty(), "no place is pale"),
    },
    Claim {
        reads: r"(From \d+ % to \d+ %(?:(?:, | and )from \d+ % to \d+ %)*) of the range the (.+) does not limit the lift: its muscles may share the moment otherwise, and the sharing with the least summed activation is drawn, pale",
        holds: |told, drawn| {
            is_of(&told[2], drawn)?;
            let stretch = Regex::new(r"rom (\d+) % to (\d+) %").expect("a pattern");
            let stretches: Vec<Captures> = stretch.captures_iter(&told[1]).collect();
            holds(
                stretches.len() == drawn.pale.len(),
                "as many stretches as are pale",
            )?;
            let last = drawn.curves[0].2.len() as f64 - 1.0;
            stretches
                .iter()
                .zip(&drawn.pale)
                .try_for_each(|(told, pale)| {
                    let [from, to] = pale.map(|end| 100.0 * sample_of(end, drawn) / last);
                    says(&told[1], from, 1e-3, "from")?;
                    says(&told[2], to, 1e-3, "to")
                })
        },
    },
    Claim {
        reads: r"The .+ takes the .+ from (\d+) % to (\d+) % of its optimal length",
        holds: |told, drawn| {
            let [first, last] = first_last(drawn.curve("this lift")?);
            says(&told[1], first[0], 0.0, "start")?;
            says(&told[2], last[0], 0.0, "end")
        },
    },
    Claim {
        reads: r"Active force over fibre length with the stretch of it that .+ uses: (\d+) % of the greatest force at the start, (\d+) % at the end",
        holds: |told, drawn| {
            let [first, last] = first_last(drawn.curve("this lift")?);
            says(&told[1], first[1], 0.0, "start")?;
            says(&told[2], last[1], 0.0, "end")
        },
    },
    Claim {
        reads: r"A lift moves its muscles along a piece of the length-tension curve; .+|The foot of the curve below half of the optimal length is the model's",
        holds: is_definition,
    },
    Claim {
        reads: r"Lifting at \d+ deg/s leaves the .+ (\d+) % to (\d+) % of its isometric force",
        holds: |told, drawn| {
            let used = drawn.curve("this lift")?;
            says(&told[1], least(used)[1], 0.0, "least")?;
            says(&told[2], peak(used)[1], 0.0, "greatest")
        },
    },
    Claim {
        reads: r"Force over speed of shortening with the stretch of it that .+ uses: from (\d+) % of the fastest speed at the start to (\d+) % at the end, (\d+) % where its fibres are fastest",
        holds: |told, drawn| {
            let (law, used) = (drawn.curve("every speed")?, drawn.curve("this lift")?);
            let [first, last] = first_last(used);
            says(&told[1], first[0], 0.0, "start")?;
            says(&told[2], last[0], 0.0, "end")?;
            let fastest = used.iter().map(|point| point[0]).fold(0.0, f64::max);
            says(&told[3], fastest, 0.0, "fastest")?;
            let near = |point: &[f64; 2]| (at(law, point[0]) - point[1]).abs() < 3.0;
            holds(used.iter().all(near), "the track lies on the law")
        },
    },
    Claim {
        reads: r"A joint that turns at constant speed does not shorten its muscles at constant speed: .+",
        holds: is_definition,
    },
    Claim {
        reads: r"A band pulls nothing while slack, and at (\d+) cm (\d+) N single, (\d+) N doubled",
        holds: |told, drawn| {
            let x: f64 = told[1].parse().unwrap_or(f64::NAN);
            says(&told[2], at(drawn.curve("single")?, x), 0.0, "single")?;
            says(&told[3], at(drawn.curve("doubled")?, x), 0.0, "doubled")
        },
    },
    Claim {
        reads: r"Pull over length of one band: taut from (\d+) cm single and from (\d+) cm doubled, steep at first, then flatter",
        holds: |told, drawn| {
            for (printed, name) in [(1, "single"), (2, "doubled")] {
                let points = drawn.curve(name)?;
                let taut: f64 = told[printed].parse().unwrap_or(f64::NAN);
                let slack = points.iter().filter(|point| point[0] < taut - 1.0);
                holds(
                    slack.clone().count() > 10 && slack.clone().all(|p| p[1] == 0.0),
                    "slack",
                )?;
                let pulls: Vec<&[f64; 2]> = points.iter().filter(|p| p[0] > taut + 1.0).collect();
                holds(pulls.iter().all(|point| point[1] > 0.0), "it pulls")?;
                let slope = |a: &[f64; 2], b: &[f64; 2]| (b[1] - a[1]) / (b[0] - a[0]);
                let (begin, middle) = (pulls[0], pulls[pulls.len() / 2]);
                let first = slope(begin, pulls[1]);
                holds(
                    first > slope(middle, pulls[pulls.len() / 2 + 1]),
                    "steep, then flatter",
                )?;
            }
            Ok(())
        },
    },
    Claim {
        reads: r"Rubber pulls by its stretch, its length over its slack length",
        holds: is_definition,
    },
    Claim {
        reads: r"Doubled, twice as many strands of half the length are stretched twice as much by the same way of the bar",
        holds: is_definition,
    },
    Claim {
        reads: r"A chain adds with every (\d+) cm of height ([\d.]+) N by its end, ([\d.]+) N by its middle",
        holds: |told, drawn| {
            let step: f64 = told[1].parse().unwrap_or(f64::NAN);
            for (printed, name) in [(2, "by its end"), (3, "by its middle")] {
                let points = drawn.curve(name)?;
                let part = points.len() / 4;
                let slope = (points[part][1] - points[0][1]) / (points[part][0] - points[0][0]);
                says(&told[printed], slope * step, 0.0, name)?;
            }
            Ok(())
        },
    },
    Claim {
        reads: r"Weight of one chain in the air over the height of its hook: by its end it grows up to (\d+) cm and stays at (\d+) N, by its middle it reaches the same at half that height",
        holds: |told, drawn| {
            let straight = drawn.curve("by its end")?;
            let most = peak(straight)[1];
            says(&told[2], most, 0.0, "all of it")?;
            let full = |points: &[[f64; 2]]| {
                let whole = points.iter().find(|point| point[1] > most - 1e-6);
                whole.map_or(f64::NAN, |point| point[0])
            };
            let step = straight[1][0] - straight[0][0];
            says(&told[1], full(straight), step, "height")?;
            let looped = full(drawn.curve("by its middle")?);
            holds(
                (looped - full(straight) / 2.0).abs() < 2.0 * step,
                "half of it",
            )
        },
    },
    Claim {
        reads: r"Only links in the air are load",
        holds: is_definition,
    },
    Claim {
        reads: r"Hung by its middle a chain gives twice as much with the same height, and stops at half of it",
        holds: is_definition,
    },
    Claim {
        reads: r"At the weakest place this lifter lowers (\d+), holds (\d+) and lifts (\d+) N",
        holds: three_least,
    },
    Claim {
        reads: r"Three capacities over .+; the least of each: lowered (\d+) N, held (\d+) N, lifted (\d+) N",
        holds: three_least,
    },
    Claim {
        reads: r"The load beyond the maximum stays below the capacity of lowering everywhere",
        holds: |_, drawn| {
            let load = peak(drawn.curve("load beyond the maximum")?)[1];
            holds(
                load <= least(drawn.curve("lowered")?)[1],
                "below everywhere",
            )
        },
    },
    Claim {
        reads: r"In the model the load beyond the maximum is more than can be lowered slowly at the weakest place(?:; by the measured ratios \((.+)\) it could be lowered)?",
        holds: |told, drawn| {
            let maximum = peak(drawn.curve("maximum")?)[1];
            let load = peak(drawn.curve("load beyond the maximum")?)[1];
            let measured = measured_lowering(&drawn.movement);
            let could = measured.is_some_and(|[least, _]| load < least * maximum);
            holds(could == told.get(1).is_some(), "whether others lower it")?;
            told.get(1)
                .map_or(Ok(()), |span| span_told(span.as_str(), measured))?;
            holds(
                load > least(drawn.curve("lowered")?)[1],
                "more than is lowered",
            )
        },
    },
    Claim {
        reads: r"Muscles that are pulled longer hold more than muscles that shorten, so more can be lowered than lifted: at the weakest place here ([\d.]+) times as much",
        holds: |told, drawn| {
            let (down, up) = (drawn.curve("lowered")?, drawn.curve("lifted")?);
            says(&told[1], least(down)[1] / least(up)[1], 0.0, "surplus")?;
            let mut pairs = down.iter().zip(up);
            holds(pairs.all(|(down, up)| down[1] > up[1]), "everywhere")
        },
    },
    Claim {
        reads: r"Here the weakest place bears less lowered slowly than held still(?:; the .+ shortens there while the load goes down)?",
        holds: |_, drawn| {
            let (down, held) = (drawn.curve("lowered")?, drawn.curve("held")?);
            holds(least(down)[1] < least(held)[1], "less than held")
        },
    },
    Claim {
        reads: r"A load beyond the maximum needs help on its way up",
        holds: is_definition,
    },
    Claim {
        reads: r"Measured maxima of lowering were (.+) times those of lifting(: the model, which follows single joints, gives too little|: the model gives too much|, as here)",
        holds: |told, drawn| {
            let measured = measured_lowering(&drawn.movement);
            span_told(&told[1], measured)?;
            let [low, high] = measured.ok_or("nothing was measured")?;
            let surplus = least(drawn.curve("lowered")?)[1] / least(drawn.curve("lifted")?)[1];
            let verdict = match surplus {
                few if few < low => ": the model, which follows single joints, gives too little",
                many if many > high => ": the model gives too much",
                _ => ", as here",
            };
            holds(&told[2] == verdict, &format!("{surplus}"))
        },
    },
];

/// Least and greatest published maximum of lowering over that of lifting of a lift, from the file itself.
pub fn measured_lowering(movement: &str) -> Option<[f64; 2]> {
    let file = include_str!("../../../models/published/eccentric.ron");
    let reads = anywhere(&format!(r#"movement: "{movement}", [^\n]*ratio: ([\d.]+)"#));
    let ratios = reads.captures_iter(file);
    let ratios: Vec<f64> = ratios.filter_map(|row| row[1].parse().ok()).collect();
    let least = ratios.iter().copied().reduce(f64::min)?;
    Some([least, ratios.iter().copied().fold(least, f64::max)])
}

/// "1.24 to 1.4", or one number where all are the same.
pub fn span_told(text: &str, span: Option<[f64; 2]>) -> Result<(), String> {
    let [low, high] = span.ok_or("nothing was measured")?;
    let parts: Vec<&str> = text.split(" to ").collect();
    holds((parts.len() == 1) == (low == high), "one number or two")?;
    says(parts[0], low, 0.0, "least")?;
    says(parts[parts.len() - 1], high, 0.0, "greatest")
}

fn three_least(told: &Captures<'_>, drawn: &Drawn) -> Result<(), String> {
    for (printed, name) in [(1, "lowered"), (2, "held"), (3, "lifted")] {
        says(&told[printed], least(drawn.curve(name)?)[1], 0.0, name)?;
    }
    Ok(())
}

/// The upper and the lower edge of a band of people.
fn edges<'d>(drawn: &'d Drawn, what: &str) -> Result<[&'d [[f64; 2]]; 2], String> {
    let names = match what {
        "strength" => ["1 in 10 stronger", "1 in 10 weaker"],
        _ => ["shape: 1 in 10 above", "shape: 1 in 10 below"],
    };
    Ok([drawn.curve(names[0])?, drawn.curve(names[1])?])
}

/// Bands of many people.
pub const PEOPLE: &[Claim<Drawn>] = &[
    Claim {
        reads: r"Invented people differ by (\d+) % in strength at the start, by (\d+) % in shape",
        holds: |told, drawn| {
            // Curves are drawn as what they are off the middle one.
            let apart = |what: &str| {
                let [above, below] = edges(drawn, what)?.map(|edge| 100.0 + edge[0][1]);
                Ok::<f64, String>(100.0 * (above / below - 1.0))
            };
            says(&told[1], apart("strength")?, 0.0, "force")?;
            says(&told[2], apart("shape")?, 0.0, "shape")
        },
    },
    Claim {
        reads: r"Bands in which eight in ten of \d+ people lie, with the median of all: one in strength, one in shape alone, each as how far off the median",
        holds: |_, drawn| {
            holds(drawn.curves.len() == 5, "the median and two edges of each")?;
            let middle = drawn.curve("median")?;
            for what in ["strength", "shape"] {
                let [above, below] = edges(drawn, what)?;
                let mut points = middle.iter().zip(above).zip(below);
                let is_inside = points.all(|((m, high), low)| low[1] <= m[1] && m[1] <= high[1]);
                holds(is_inside, what)?;
            }
            Ok(())
        },
    },
    Claim {
        reads: r"These people are invented, and how much they differ is an assumption; shape alone is a curve over its own median",
        holds: is_definition,
    },
    Claim {
        reads: r"They differ more in how strong they are than in where",
        holds: |_, drawn| {
            // Curves are drawn as what they are off the middle one.
            let scatter = |what: &str| {
                let [above, below] = edges(drawn, what)?;
                let pairs = above.iter().zip(below);
                let shares: Vec<f64> = pairs
                    .map(|(high, low)| (100.0 + high[1]) / (100.0 + low[1]))
                    .collect();
                Ok::<f64, String>(shares.iter().sum::<f64>() / shares.len() as f64)
            };
            let [strength, shape] = [scatter("strength")?, scatter("shape")?];
            holds(strength > shape, "force scatters more than shape")
        },
    },
    Claim {
        // Held to the people by `law_classes_of_invented_people_are_counted`.
        reads: r"Their curves: (.+)",
        holds: |told, _| {
            let shares = told[1].split(", ").map(|part| part.split(' ').next());
            let shares: Option<Vec<f64>> = shares.map(|share| share?.parse().ok()).collect();
            let sum: f64 = shares.ok_or("no shares")?.iter().sum();
            holds((sum - 100.0).abs() < 2.5, "all of them")
        },
    },
];

/// Lifts in motion side by side: the curves of velocity, with the hung setup first.
pub const MOTION: &[Claim<Drawn>] = &[
    Claim {
        reads: r".+ with (?:a band|bands|chains|bands and chains): (?:slowest (\d+) cm (later|earlier), |slowest at (\d+)(?: to (\d+))? cm with and without, |no sticking region any more, |a sticking region appears, )?(?:(\d+) % (slower|faster)|as fast) over the last fifth",
        holds: |told, drawn| {
            let [with, plain] = [&drawn.curves[0].2, &drawn.curves[1].2];
            if let Some(apart) = told.get(1) {
                let moved = slowest(with)? - slowest(plain)?;
                says(apart.as_str(), moved.abs(), 0.5, "slowest")?;
                holds((moved > 0.0) == (&told[2] == "later"), "later")?;
            }
            if let Some(low) = told.get(3) {
                let [a, b] = [slowest(with)?, slowest(plain)?];
                says(low.as_str(), a.min(b), 0.5, "slowest with and without")?;
                let high = told.get(4).unwrap_or(low);
                says(high.as_str(), a.max(b), 0.5, "slowest with and without")?;
            }
            let change = 100.0 * (end_speed(with) / end_speed(plain) - 1.0);
            match told.get(5) {
                Some(percent) => {
                    says(percent.as_str(), change.abs(), 1.5, "end")?;
                    holds((change < 0.0) == (&told[6] == "slower"), "slower")
                }
                None => holds(change.abs() < 3.5, "as fast"),
            }
        },
    },
    Claim {
        reads: r"At the same hardest effort \((\d+) % of what is held still\): (?:with .+|(.+)) against ([\d.]+) kg",
        holds: |told, drawn| {
            if let Some(hung) = told.get(2) {
                hangs(hung.as_str(), drawn.setups.first())?;
            }
            let plain = format!("{} kg", &told[3]);
            holds(
                drawn.curve(&plain).is_ok(),
                "the plain weight that is drawn",
            )?;
            hardest_effort(&told[1], &told[3], drawn)
        },
    },
    Claim {
        reads: r"Peak velocity: ([\d.]+) m/s .+ against ([\d.]+) m/s .+",
        holds: |told, drawn| {
            says(&told[1], peak(&drawn.curves[0].2)[1], 0.0, "hung")?;
            says(&told[2], peak(&drawn.curves[1].2)[1], 0.0, "plain")
        },
    },
    Claim {
        reads: r"Sticking region in motion: (none|[\d.]+ s, .+), against (none|[\d.]+ s, .+) with plain weight",
        holds: |told, drawn| {
            for (printed, curve) in [(1, 0), (2, 1)] {
                let has = slowest(&drawn.curves[curve].2).is_ok();
                holds(has == (&told[printed] != "none"), "whether there is one")?;
            }
            Ok(())
        },
    },
    Claim {
        reads: r"Here plain weight (?:has both at one place|is slowest), (?:.+)|Here plain weight is slowest (?:(\d+) cm .+|at the start) and hardest .+",
        holds: |told, drawn| match told.get(1) {
            Some(place) => says(place.as_str(), slowest(&drawn.curves[1].2)?, 0.6, "slowest"),
            None => Ok(()),
        },
    },
    Claim {
        reads: r"A bar brings speed along, and needs way to lose and to gain it: .+",
        holds: is_definition,
    },
];

/// A printed effort is that of a plain weight at the lift's hardest place, held still.
pub fn hardest_effort(percent: &str, kg: &str, drawn: &Drawn) -> Result<(), String> {
    let load = STANDARD_GRAVITY_M_S2 * kg.parse::<f64>().unwrap_or(f64::NAN);
    let held = drawn.own_study()?.capacity.values().into_iter();
    // A hardest place between samples lies a little below the least one.
    let effort = 100.0 * load / held.fold(f64::INFINITY, f64::min);
    says(percent, effort, 0.002 * effort, "effort")
}

/// Place of the first least velocity behind a first peak.
fn slowest(points: &[[f64; 2]]) -> Result<f64, String> {
    let mut turns = points.windows(3);
    let top = turns.position(|w| w[1][1] > w[0][1] && w[1][1] >= w[2][1]);
    let behind = &points[top.ok_or("no peak")? + 1..];
    let low = behind
        .windows(3)
        .find(|w| w[1][1] < w[0][1] && w[1][1] <= w[2][1]);
    low.map(|w| w[1][0]).ok_or("no least velocity".to_owned())
}

/// Mean velocity over the last fifth of the way.
fn end_speed(points: &[[f64; 2]]) -> f64 {
    let (first, last) = (points[0][0], points[points.len() - 1][0]);
    let begin = last - 0.2 * (last - first);
    let end = points.windows(2).filter(|w| w[0][0] >= begin);
    let (mut way, mut time) = (0.0, 0.0);
    for w in end {
        let step = w[1][0] - w[0][0];
        way += step;
        time += step / (0.5 * (w[0][1] + w[1][1])).max(1e-3);
    }
    way / time.max(1e-9)
}

/// How sure the model is, and what it cannot tell.
pub const LIMITS: &[Claim<DataTable>] = &[
    Claim {
        reads: r"The model misses (.+) by a factor of ([\d.]+), (.+) by a factor of ([\d.]+)",
        holds: |told, table| {
            let factor = |row: &Vec<String>| row[2].parse::<f64>().unwrap_or(f64::NAN);
            let all: Vec<f64> = table.rows.iter().map(factor).collect();
            let (first, last) = (all[0], all[all.len() - 1]);
            says(&told[2], last, 0.0, "surest")?;
            says(&told[4], first, 0.0, "least sure")?;
            holds(
                told[1] == table.rows[all.len() - 1][0],
                "the kind missed least",
            )?;
            holds(told[3] == table.rows[0][0], "the kind missed most")?;
            holds(all.iter().all(|f| *f <= first && *f >= last), "in order")
        },
    },
    Claim {
        reads: r"How far computed numbers are from published ones: (.+)",
        holds: |told, table| {
            let parts = told[1].replace(" values and ", " values, ");
            let parts: Vec<&str> = parts.split(", ").collect();
            holds(parts.len() == table.rows.len(), "every kind is told")?;
            let reads = Regex::new(r"^(.+) by a factor of ([\d.]+) over (\d+) values$");
            let reads = reads.expect("a pattern");
            for (part, row) in parts.iter().zip(&table.rows) {
                let kind = reads
                    .captures(part)
                    .ok_or(format!("`{part}` is no error"))?;
                let of = |column: usize| row[column].parse::<f64>().unwrap_or(f64::NAN);
                holds(kind[1] == row[0], part)?;
                says(&kind[2], of(2), 0.0, part)?;
                says(&kind[3], of(1), 0.0, part)?;
            }
            Ok(())
        },
    },
    Claim {
        reads: r"Part of every difference is the scatter of people and of ways to measure",
        holds: is_definition,
    },
    Claim {
        reads: r"Seven questions that this model cannot answer",
        holds: |_, table| holds(table.rows.len() == 7, "seven of them"),
    },
    Claim {
        reads: r"(.+\?) (.+)",
        holds: |told, table| {
            let asked = table.rows.iter().find(|row| row[0] == told[1]);
            let why = &asked.ok_or("no such question")?[1];
            holds(why.trim_end_matches('.') == &told[2], "what is said to it")
        },
    },
    Claim {
        reads: r"A model answers the question it was built for: .+",
        holds: is_definition,
    },
];
