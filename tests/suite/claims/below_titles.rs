//! What stands below the titles of the lecture's figures, subtitles, footnotes, notes of panels, against the data that are drawn.

use super::drawings::{measured_lowering, span_told};
use super::one_lift::{is_lift, is_them};
use super::{Claim, Drawn, anywhere, compiled, hangs, holds, is_definition, least, peak, says};
use regex::{Captures, Regex};
use torquill::figures::{Chart, DataTable, Sheet};
use torquill::study::SLOW_M_S;
use torquill::units::STANDARD_GRAVITY_M_S2;

/// What stands below the title.
pub fn below_title(sheet: &Sheet) -> Vec<String> {
    let heading = sheet.chart.heading();
    let mut texts = vec![heading.subtitle.clone(), heading.footnote.clone()];
    if let Chart::Panels(chart) = &sheet.chart {
        let notes = chart.panels.iter();
        texts.extend(notes.map(|panel| format!("{}: {}", panel.title, panel.note)));
    }
    texts
}

/// Effort under a load as the figure draws it: its own curve, else the load over the capacity, %.
pub fn effort(drawn: &Drawn, name: &str) -> Result<Vec<[f64; 2]>, String> {
    if let Ok(own) = drawn.curve(&format!("effort: {name}")) {
        return Ok(own.to_vec());
    }
    let pairs = drawn.curve("capacity")?.iter().zip(drawn.curve(name)?);
    Ok(pairs.map(|(c, d)| [c[0], 100.0 * d[1] / c[1]]).collect())
}

/// What hangs beside plain weight in a figure of two loads.
fn hung(drawn: &Drawn) -> Result<&str, String> {
    let mut names = drawn.names();
    names
        .find(|name| name.starts_with("with "))
        .ok_or_else(|| "nothing hangs".to_owned())
}

/// Mean of a curve: every stretch between two points counts as long as it is.
pub fn mean_over_the_way(points: &[[f64; 2]]) -> f64 {
    let stretches = points.windows(2).map(|pair| {
        let long = (pair[1][0] - pair[0][0]).abs();
        (long, long * f64::midpoint(pair[0][1], pair[1][1]))
    });
    let (long, area) = stretches.fold((0.0, 0.0), |sum, one| (sum.0 + one.0, sum.1 + one.1));
    area / long
}

/// Standard deviation over mean, both over the way.
pub fn spread(points: &[[f64; 2]]) -> f64 {
    let over_the_way = |value: &dyn Fn(f64) -> f64| {
        let points: Vec<[f64; 2]> = points.iter().map(|[x, y]| [*x, value(*y)]).collect();
        mean_over_the_way(&points)
    };
    let mean = mean_over_the_way(points);
    over_the_way(&|value| (value - mean).powi(2)).sqrt() / mean
}

/// By how much less effort spreads than under plain weight, %.
pub fn gained(drawn: &Drawn) -> Result<f64, String> {
    let [hung, plain] = [effort(drawn, hung(drawn)?)?, effort(drawn, "plain weight")?];
    Ok(100.0 * (1.0 - spread(&hung) / spread(&plain)))
}

/// How much of the axis effort is within 5 % of its greatest.
fn near_greatest(points: &[[f64; 2]]) -> f64 {
    let most = peak(points)[1];
    let near = points.iter().filter(|p| p[1] >= 0.95 * most).map(|p| p[0]);
    let (low, high) = near.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), x| {
        (low.min(x), high.max(x))
    });
    high - low
}

fn spreads(told: &Captures<'_>, drawn: &Drawn) -> Result<(), String> {
    let gained = gained(drawn)?;
    says(&told[1], gained.abs(), 0.6, "spread")?;
    holds((&told[2] == "less") == (gained >= 0.0), "its direction")?;
    if let (Some(now), Some(before)) = (told.get(3), told.get(4)) {
        let hung = near_greatest(&effort(drawn, hung(drawn)?)?);
        let plain = near_greatest(&effort(drawn, "plain weight")?);
        says(now.as_str(), hung, 0.6, "stretch with it")?;
        says(before.as_str(), plain, 0.6, "stretch under plain weight")?;
        holds(hung > plain, "longer")?;
    }
    Ok(())
}

/// What the published values of a lift are missed by, from the file itself: a factor of so much over so many.
fn missed(movement: &str, factor: &str, values: &str) -> Result<(), String> {
    let file = include_str!("../../../models/calibration/errors_of_lifts.ron");
    let rows = anywhere(r#""(.+)": \(rows: (\d+), error: ([\d.]+)\)"#);
    let mut rows = rows.captures_iter(file);
    let row = rows.find(|row| row[1].replace(' ', "-") == movement);
    let row = row.ok_or_else(|| format!("nothing is published of the {movement}"))?;
    let number = |column: usize| row[column].parse::<f64>().unwrap_or(f64::NAN);
    says(factor, number(3).exp(), 0.0, "factor")?;
    says(values, number(2), 0.0, "values")
}

/// "88 cm: at the start 46 N less: −40 N by …, −6 N by all else; at the end …": the change of the curve from the one as it
/// is, and parts that add up to it.
fn changes(told: &Captures<'_>, drawn: &Drawn) -> Result<(), String> {
    let (own, base) = (drawn.samples(&told[1])?, drawn.samples("as it is")?);
    let last = base.len() - 1;
    holds(own.len() == base.len(), "the same samples")?;
    let reads = compiled(
        r"(?:at the (start|end)|in the (middle)|(?:close to )?where the (?:peak|hardest place) was, at ([\d.]+) cm,) ([\d.]+) N (less|more): (.+)",
    );
    for cause in told[2].split("; ") {
        let words = reads
            .captures(cause)
            .ok_or_else(|| format!("`{cause}` is no change"))?;
        let samples: Vec<usize> = match (words.get(1), words.get(2), words.get(3)) {
            (Some(end), ..) if end.as_str() == "start" => vec![0],
            (Some(_), ..) => vec![last],
            (_, Some(_), _) => vec![last / 2],
            (.., Some(cm)) => {
                let near = |at: &usize| says(cm.as_str(), base[*at][0], 0.0, "").is_ok();
                (0..=last).filter(near).collect()
            }
            _ => return Err(format!("`{cause}` is nowhere")),
        };
        let is_less = &words[5] == "less";
        let mut changes = samples.iter().map(|at| own[*at][1] - base[*at][1]);
        let is_told = |change: f64| {
            // Numbers of the table have seven figures.
            says(&words[4], change.abs(), 2e-3, "").is_ok() && (change < 0.0) == is_less
        };
        holds(changes.any(is_told), &format!("`{cause}`"))?;
        let parts = anywhere(r"([\u{2212}+]?[\d.]+) N by ");
        let parts = parts.captures_iter(&words[6]);
        let number = |text: &str| text.replace('\u{2212}', "-").parse().unwrap_or(f64::NAN);
        let sum: f64 = parts.map(|part| number(&part[1])).sum();
        let whole = number(&words[4]) * if is_less { -1.0 } else { 1.0 };
        holds((sum - whole).abs() < 1e-6, &format!("{sum} of {whole}"))?;
    }
    Ok(())
}

/// Efforts of a panel of capacity and weight.
fn panel_efforts(drawn: &Drawn, panel: &str) -> Result<Vec<f64>, String> {
    let of = |name: &str| {
        let mut curves = drawn.curves.iter();
        curves
            .find(|c| c.0 == panel && c.1.split(',').next() == Some(name))
            .ok_or_else(|| format!("no {name} of {panel}"))
    };
    let pairs = of("capacity")?.2.iter().zip(&of("weight")?.2);
    Ok(pairs.map(|(c, d)| 100.0 * d[1] / c[1]).collect())
}

fn ends_of(values: &[f64]) -> [f64; 2] {
    [f64::min, f64::max].map(|of| values.iter().copied().reduce(of).unwrap_or(f64::NAN))
}

/// The claims against curves.
pub const BELOW: &[Claim<Drawn>] = &[
    Claim {
        reads: r"Both take (\d+)(?: to (\d+))? % at their hardest place(?:, held still)?",
        holds: |told, drawn| {
            let [a, b] = [hung(drawn)?, "plain weight"].map(|name| effort(drawn, name));
            let [a, b] = [peak(&a?)[1], peak(&b?)[1]];
            says(&told[1], a.min(b), 0.3, "the less hard one")?;
            let most = told.get(2).or(told.get(1)).ok_or("no effort")?;
            says(most.as_str(), a.max(b), 0.3, "the harder one")
        },
    },
    Claim {
        reads: r"Effort spreads (\d+) % (less|more) over the range \(standard deviation over mean\)(?:, so more of the way is within 5 % of the greatest, held still: (\d+) \S+ instead of (\d+) \S+)?",
        holds: spreads,
    },
    Claim {
        reads: r"Published values(?: of the .+, of every kind,)? are missed by a factor of ([\d.]+) over (\d+) values?",
        holds: |told, drawn| missed(&drawn.movement, &told[1], &told[2]),
    },
    Claim {
        reads: r"Even by design|So its curve is too weak where the hip leaves the fibres short, and the cam is cut to that",
        holds: |_, drawn| {
            let library = torquill::library::Library::built_in();
            let worst = library.worst_miss(&drawn.movement).expect("a sound file");
            let is_over = worst.is_some_and(|worst| worst.computed > worst.expected.1);
            holds(is_over, "more is computed than expected")
        },
    },
    Claim {
        reads: r"Reference man's worst miss: hip at (\d+) deg lifts ([\d.]+) × that at (\d+) deg, expected ([\d.]+) to ([\d.]+)",
        holds: |told, drawn| {
            let list = include_str!("../../predictions.md");
            let lift = drawn.movement.replace('-', " ");
            let row = anywhere(&format!(
                r"1RM of the {lift} with the hip at {} deg over {} deg \| reference-man \|[^|]*\| ([\d.]+) to ([\d.]+) \| ([\d.]+) \|",
                &told[1], &told[3]
            ));
            let row = row.captures(list).ok_or("no such prediction")?;
            let number = |column: usize| row[column].parse::<f64>().unwrap_or(f64::NAN);
            says(&told[2], number(3), 0.0, "computed")?;
            says(&told[4], number(1), 0.0, "least")?;
            says(&told[5], number(2), 0.0, "greatest")
        },
    },
    Claim {
        reads: r"Even: low standard deviation over mean|The cam is cut to this computed curve: an even effort is built in here, not found|An even effort is built in here, not found",
        holds: is_definition,
    },
    Claim {
        reads: r"[^:,]+, [^:,]+(?:, hip at (\d+) deg)?: (.+) against ([\d.]+) kg over a radius of ([\d.]+) cm",
        holds: |told, drawn| {
            let library = torquill::library::Library::built_in();
            let lift = torquill::library::assemble(&library, "reference-man", &drawn.movement, &[]);
            let lift = lift.map_err(|fault| fault.to_string())?.movement;
            let hip = lift.angle_rad("hip_angle").ok().flatten();
            holds(
                hip.is_some() == told.get(1).is_some(),
                "whether a hip is held",
            )?;
            if let (Some(rad), Some(printed)) = (hip, told.get(1)) {
                says(printed.as_str(), rad.to_degrees(), 0.0, "the hip")?;
            }
            hangs(&told[2], drawn.setups.get(1))?;
            let kg: f64 = told[3].parse().unwrap_or(f64::NAN);
            hangs(&format!("{kg} kg"), drawn.setups.first())?;
            // The stack pulls at the pulley's rim at every angle.
            let torque = drawn.curve("round pulley")?[0][1];
            says(
                &told[4],
                100.0 * torque / (STANDARD_GRAVITY_M_S2 * kg),
                0.0,
                "radius",
            )
        },
    },
    Claim {
        reads: r"[^:]+, [^:]+: (.+) against ([\d.]+) kg",
        holds: |told, drawn| {
            hangs(&told[1], drawn.setups.get(1))?;
            let kg: f64 = told[2].parse().unwrap_or(f64::NAN);
            hangs(&format!("{kg} kg"), drawn.setups.first())?;
            let plain = drawn.curve("plain weight")?[0][1];
            holds(
                (plain / (STANDARD_GRAVITY_M_S2 * kg) - 1.0).abs() < 0.005,
                "the weight that is drawn",
            )
        },
    },
    Claim {
        reads: r".+, .+, (\d+) % effort at the hardest place",
        holds: |told, drawn| {
            for curve in &drawn.curves {
                says(&told[1], peak(&curve.2)[1], 2.5, &curve.1)?;
            }
            Ok(())
        },
    },
    Claim {
        reads: r"Flattening: less spread \(standard deviation over mean\)",
        holds: is_definition,
    },
    Claim {
        // That they are of both sides is held by `law_weights_of_the_flattened_press_are_of_both_sides`.
        reads: r"Weights in all, bands and chains a side: plain ([\d.]+) kg; (.+)",
        holds: |told, drawn| {
            let plain: f64 = told[1].parse().unwrap_or(f64::NAN);
            let reads = compiled(r"(with .+?) ([\d.]+) kg \+ .+");
            let mut count = 1;
            for part in told[2].split("; ") {
                let hung = reads.captures(part).ok_or(format!("`{part}` is no load"))?;
                drawn.curve(&hung[1])?;
                count += 1;
                let bar: f64 = hung[2].parse().unwrap_or(f64::NAN);
                holds(bar <= plain, &format!("{part} beside {plain} kg"))?;
            }
            holds(count == drawn.curves.len(), "every load is told")
        },
    },
    Claim {
        reads: r".+; weights of about (\d+) % effort at their hardest place, the hardest part shaded",
        holds: |told, drawn| {
            for curve in &drawn.curves {
                let [_, most] = ends_of(&panel_efforts(drawn, &curve.0)?);
                // Loads are whole kilograms: a tenth of a light one.
                says(&told[1], most, 6.5, &curve.0)?;
            }
            Ok(())
        },
    },
    Claim {
        reads: r"Trust the (.+) least: its published values, of every kind, are missed by a factor of [\d.]+",
        holds: |told, drawn| {
            let mut lifts = drawn.curves.iter();
            holds(
                lifts.any(|c| c.0.eq_ignore_ascii_case(&told[1])),
                "it is drawn",
            )
        },
    },
    Claim {
        reads: r"([^:]+): ((?:at the|in the|where the|close to) .+)",
        holds: changes,
    },
    Claim {
        reads: r".+: .+ over the .+, everything else as it is",
        holds: is_definition,
    },
    Claim {
        reads: r".+, at ([\d.]+) m/s",
        holds: |told, _| says(&told[1], SLOW_M_S, 0.0, "speed"),
    },
    Claim {
        reads: r"Lowered over lifted: ([\d.]+) here(?:, ([\d.to ]+) measured)?",
        holds: |told, drawn| {
            let [lowered, lifted] = [drawn.curve("lowered")?, drawn.curve("lifted")?];
            let surplus = least(lowered)[1] / least(lifted)[1];
            says(&told[1], surplus, 0.002, "surplus")?;
            let measured = measured_lowering(&drawn.movement);
            holds(measured.is_some() == told.get(2).is_some(), "measured")?;
            told.get(2)
                .map_or(Ok(()), |span| span_told(span.as_str(), measured))
        },
    },
    Claim {
        reads: r"(.+?), (.+?), (.+?)(?: \((\d+) N a side\))?: moments in N·m, one side, rounded; body: its part (?:above|beyond) the joint; places (.+)",
        holds: |told, drawn| {
            is_them(&told[1], drawn)?;
            is_lift(&told[2], drawn)?;
            match drawn.setups.first() {
                Some(setup) => hangs(&told[3], Some(setup))?,
                None => holds(
                    &told[3] == "the heaviest load of each place",
                    "the load where no weight is",
                )?,
            }
            let study = drawn.own_study()?;
            holds(study.away_from == told[5], "where places are told from")?;
            let mut loads = drawn.loads_n.iter();
            told.get(4).map_or(Ok(()), |side| {
                loads.try_for_each(|load| says(side.as_str(), *load, 0.0, "load of a side"))
            })
        },
    },
    Claim {
        reads: r"Both sides together|One side",
        holds: is_definition,
    },
    Claim {
        reads: r"The 1RM, (\d+) N, is above the (\d+) N held at the weakest place: (the lowering before it helps|lowering before it and the bar's speed help)",
        holds: |told, drawn| {
            let [maximum, held] = [peak(drawn.curve("maximum")?), least(drawn.curve("held")?)];
            let way = drawn.curve("held")?;
            let share = (held[0] - way[0][0]) / (way[way.len() - 1][0] - way[0][0]);
            holds(
                (share < 0.03) == told[3].starts_with("the lowering"),
                "where the bar turns",
            )?;
            says(&told[1], maximum[1], 0.0, "maximum")?;
            says(&told[2], held[1], 0.0, "held")?;
            holds(maximum[1] > held[1], "more")
        },
    },
    Claim {
        reads: r"Weakest place: (\d+) N held",
        holds: |told, drawn| says(&told[1], least(drawn.curve("held")?)[1], 0.0, "held"),
    },
    Claim {
        reads: r"In the model less than (\d+) % of 1RM is lowered slowly there(, by the measured ratios more)?",
        holds: |told, drawn| {
            let load = peak(drawn.curve("load beyond the maximum")?)[1];
            let share = load / peak(drawn.curve("maximum")?)[1];
            says(&told[1], 100.0 * share, 0.0, "share of the maximum")?;
            let measured = measured_lowering(&drawn.movement);
            let could = measured.is_some_and(|[least, _]| share < least);
            holds(could == told.get(2).is_some(), "whether others lower it")?;
            holds(
                load > least(drawn.curve("lowered")?)[1],
                "more than is lowered",
            )
        },
    },
    Claim {
        reads: r".+, .+ at constant speed of the joint|Force: held still = 100 %",
        holds: is_definition,
    },
    Claim {
        reads: r"The lift runs along the curve from 1 to 2(, and back to 3)?",
        holds: |told, drawn| {
            let own = drawn.curve("this lift")?;
            let most = peak(&own.iter().map(|p| [p[1], p[0]]).collect::<Vec<_>>())[1];
            let at = own.iter().position(|point| point[0] >= most).unwrap_or(0);
            let (last, edge) = (own.len() - 1, (own.len() - 1) / 12);
            holds(
                (at > edge && at < last - edge) == told.get(1).is_some(),
                "whether it comes back",
            )
        },
    },
    Claim {
        // How many can do the lift is held to the people by `law_classes_of_invented_people_are_counted`.
        reads: r"(\d+) invented people \(scatter assumed\) around (.+), (.+); upper over lower edge of the bands, in which eight in ten lie",
        holds: |told, drawn| {
            let counted = compiled(r"Bands in which eight in ten of (\d+) people lie, .+");
            let counted = counted.captures(&drawn.description).ok_or("no count")?;
            holds(counted[1] == told[1], "as many as the description has")?;
            is_them(&told[2], drawn)?;
            is_lift(&told[3], drawn)
        },
    },
    Claim {
        reads: r"Scatter assumed from published groups|Shape: each curve over its own median, so all meet half way",
        holds: is_definition,
    },
];

/// The claims against tables.
pub const BELOW_TABLES: &[Claim<DataTable>] = &[
    Claim {
        reads: r"To scale: .+|Dashed: the load's line, its arms above 10 cm",
        holds: is_definition,
    },
    Claim {
        reads: r"(?:Held by|Asked of) (.+)",
        holds: |told, table| {
            let by = table.header.iter().position(|name| name == "held_by");
            let by = by.ok_or("nobody holds")?;
            let reads = Regex::new(r" \(\S+\)").expect("a pattern");
            let words = reads.replace_all(&told[1], "");
            let named: Vec<&str> = words.split(", ").collect();
            let holders = table.rows.iter().map(|row| row[by].as_str());
            holds(
                holders.clone().all(|name| named.contains(&name))
                    && named
                        .iter()
                        .all(|name| holders.clone().any(|by| by == *name)),
                "those that hold",
            )
        },
    },
    Claim {
        reads: r"(\d+) published values that nothing was fitted to, by kind of question; in brackets how many of each",
        holds: |told, table| {
            let counts = table
                .rows
                .iter()
                .filter_map(|row| row[1].parse::<f64>().ok());
            says(&told[1], counts.sum(), 0.0, "numbers")
        },
    },
    Claim {
        reads: r"Kinds with (\d+) values or more",
        holds: |told, table| {
            let counts = table
                .rows
                .iter()
                .filter_map(|row| row[1].parse::<f64>().ok());
            let least: f64 = told[1].parse().unwrap_or(f64::NAN);
            holds(
                counts.fold(f64::INFINITY, f64::min) >= least,
                "enough of each",
            )
        },
    },
    Claim {
        reads: r"The factor is e to the root mean square of the natural logarithm of computed over published: 1 would be no difference",
        holds: is_definition,
    },
];
