//! What stands below the titles of the lecture's figures of bands, chains, motion, log and sessions, against the data that are drawn.

use super::drawings::hardest_effort;
use super::one_lift::{is_lift, is_them};
use super::plans::{FATIGUE_MODEL, SESSION, session_is};
use super::{Claim, Drawn, anywhere, hangs, holds, is_definition, says, theil_sen};
use regex::Captures;
use std::sync::{Arc, LazyLock};
use torquill::library::{Library, Pieces};
use torquill::resistance::{Band, Chain, ChainHang, Hang};
use torquill::setups::Loadings;
use torquill::units::{Mass, STANDARD_GRAVITY_M_S2, System};

static PIECES: LazyLock<Arc<Pieces>> =
    LazyLock::new(|| Library::built_in().pieces().expect("built-in pieces"));

/// The only piece whose law is drawn.
fn drawn_one<'a, P>(
    mut all: impl Iterator<Item = &'a P>,
    points: &[[f64; 2]],
    law: impl Fn(&P, f64) -> f64,
) -> Result<&'a P, String> {
    let is_own = |piece: &&P| {
        // Numbers of the table have seven figures.
        let near = |p: &[f64; 2]| (law(piece, 0.01 * p[0]) - p[1]).abs() < 1e-4 * p[1].max(1.0);
        points.iter().all(near)
    };
    let own = all.find(is_own);
    own.ok_or_else(|| "no piece has this law".to_owned())
}

fn drawn_band(drawn: &Drawn) -> Result<&'static Band, String> {
    let law = |band: &Band, m: f64| band.force_n(m, Hang::Single);
    drawn_one(PIECES.stock().bands.values(), drawn.curve("single")?, law)
}

fn drawn_chain(drawn: &Drawn) -> Result<&'static Chain, String> {
    let law = |chain: &Chain, m: f64| {
        STANDARD_GRAVITY_M_S2 * chain.hanging_at(m, ChainHang::Straight).mass_kg
    };
    let points = drawn.curve("by its end")?;
    drawn_one(PIECES.stock().chains.values(), points, law)
}

/// Edges of what is shaded over the curve, share of it.
fn scatter(drawn: &Drawn, name: &str, edges: &[Vec<[f64; 2]>; 2]) -> Result<[f64; 2], String> {
    let curve = drawn.curve(name)?;
    let [low, high] = [1, 0].map(|edge: usize| {
        let pairs = curve
            .iter()
            .zip(&edges[edge])
            .filter(|(own, _)| own[1] > 1.0);
        let shares: Vec<f64> = pairs.map(|(own, edge)| edge[1] / own[1]).collect();
        let [low, high] = [f64::min, f64::max].map(|of| shares.iter().copied().reduce(of));
        low.zip(high).filter(|(low, high)| high - low < 1e-4)
    });
    let ends = low.zip(high).ok_or("not one share all along")?;
    Ok([ends.0.0, ends.1.0])
}

fn shaded_told(told: &Captures<'_>, drawn: &Drawn) -> Result<(), String> {
    holds(drawn.fills.len() == 2, "both ways of hanging are shaded")?;
    // Doubled is drawn first.
    for (name, edges) in ["doubled", "single"].iter().zip(&drawn.fills) {
        let [low, high] = scatter(drawn, name, edges)?;
        says(&told[1], 100.0 * low, 0.01, "least")?;
        says(&told[2], 100.0 * high, 0.01, "greatest")?;
    }
    Ok(())
}

fn slope_told(told: &Captures<'_>, drawn: &Drawn) -> Result<(), String> {
    let mut names = drawn.names();
    let recent = names.find(|name| name.starts_with("trend: "));
    let recent = drawn.curve(recent.ok_or("no line")?)?;
    let (first, last) = (recent[0], recent[recent.len() - 1]);
    let days = drawn.curve("best set of the day")?.iter().copied();
    let days: Vec<[f64; 2]> = days.filter(|day| day[0] >= first[0] - 1e-6).collect();
    let slope = theil_sen(&days);
    says(&told[1], slope, 0.0, "median of all slopes")?;
    let drawn_slope = (last[1] - first[1]) / (last[0] - first[0]);
    holds((drawn_slope - slope).abs() < 1e-4, "the line that is drawn")?;
    let edge = drawn.curve("95 % of the slope, above")?;
    let [begin, middle, end] = edge else {
        return Err("no wedge".to_owned());
    };
    let [low, high] = [[begin, middle], [middle, end]].map(|[a, b]| (b[1] - a[1]) / (b[0] - a[0]));
    says(&told[2], low, 1e-4, "least slope")?;
    says(&told[3], high, 1e-4, "greatest slope")
}

/// Loads of the working sets, kg: those of the table of sets, or the only one beside velocities.
fn working_kg(drawn: &Drawn) -> Result<Vec<f64>, String> {
    let is_of_sets = drawn.table.header.first().is_some_and(|name| name == "set");
    let is_work = |row: &&Vec<String>| !is_of_sets || row[0].parse::<u32>().is_ok();
    let place = column(drawn, "load_kg")?;
    let rows = drawn.table.rows.iter().filter(is_work);
    Ok(rows.filter_map(|row| row[place].parse().ok()).collect())
}

fn column(drawn: &Drawn, name: &str) -> Result<usize, String> {
    let mut all = drawn.table.header.iter();
    all.position(|own| own == name)
        .ok_or_else(|| format!("no column {name}"))
}

fn session_told(told: &Captures<'_>, drawn: &Drawn) -> Result<(), String> {
    is_lift(&told[1].to_lowercase(), drawn)?;
    let is_of_sets = drawn.table.header.first().is_some_and(|name| name == "set");
    match &told[2] {
        "pyramid" => holds(is_of_sets, "a pyramid")?,
        method => drawn.curve(method).map(|_| ())?,
    }
    let maximum = column(drawn, "one_rm_kg")?;
    let rows = drawn.table.rows.iter();
    let maxima: Vec<f64> = rows.filter_map(|row| row[maximum].parse().ok()).collect();
    let loads = working_kg(drawn)?;
    holds(!maxima.is_empty() && !loads.is_empty(), "a 1RM and loads")?;
    let mut maxima = maxima.into_iter();
    maxima.try_for_each(|kg| session_is(told, &loads, kg))
}

/// The claims.
pub const LOADS_BELOW: &[Claim<Drawn>] = &[
    Claim {
        reads: r"(.+), simulated: (.+) against ([\d.]+) kg, both at (\d+) % effort",
        holds: |told, drawn| {
            is_them(&told[1], drawn)?;
            hangs(&told[2], drawn.setups.first())?;
            hardest_effort(&told[4], &told[3], drawn)
        },
    },
    Claim {
        reads: r"Whether, where and how long lifters stick: the model misses most of what was measured",
        holds: |_, _| {
            let list = include_str!("../../evidence.md");
            let row = anywhere(r"(?m)^\| sticking region \| (\d+) \| (\d+) \|");
            let row = row.captures(list).ok_or("no such kind")?;
            let [all, met] = [1, 2].map(|at| row[at].parse::<f64>().unwrap_or(f64::NAN));
            holds(met < all / 2.0, &format!("{met} of {all} are met"))
        },
    },
    Claim {
        reads: r"Full effort from turn-round to straight limbs",
        holds: is_definition,
    },
    Claim {
        reads: r"Bars: sticking regions in motion",
        holds: is_definition,
    },
    Claim {
        reads: r"(\d+) mm loop band, flat length (\d+) cm",
        holds: |told, drawn| {
            let band = drawn_band(drawn)?;
            holds(band.name() == format!("loop-{}mm", &told[1]), "the band")?;
            says(&told[2], band.rest_length().as_cm(), 0.0, "flat length")
        },
    },
    Claim {
        reads: r"Shaded: what another band of the same label may pull, (\d+) % to (\d+) % of it",
        holds: shaded_told,
    },
    Claim {
        reads: r"Curves end at the longest stretch that is planned with, ([\d.]+) times the slack length",
        holds: |told, drawn| {
            let band = drawn_band(drawn)?;
            for (name, hang) in [("single", Hang::Single), ("doubled", Hang::Doubled)] {
                let points = drawn.curve(name)?;
                let slack_cm = 100.0 * band.taut_length_m(hang);
                let end = points[points.len() - 1][0] / slack_cm;
                says(&told[1], end, 0.0, name)?;
            }
            Ok(())
        },
    },
    Claim {
        reads: r"(\d+) mm chain, (\d+) cm long",
        holds: |told, drawn| {
            let chain = drawn_chain(drawn)?;
            holds(chain.name() == format!("chain-{}mm", &told[1]), "the chain")?;
            says(&told[2], chain.length().as_cm(), 0.0, "length")
        },
    },
    Claim {
        reads: r"Weight only, held still: links that are picked up in motion take a little more",
        holds: |_, drawn| {
            let chain = drawn_chain(drawn)?;
            let hanging = chain.hanging_at(0.8, ChainHang::Straight);
            let more = hanging.force_n(0.5) / hanging.force_n(0.0) - 1.0;
            holds(more > 0.0 && more < 0.1, &format!("{more} more"))
        },
    },
    Claim {
        reads: r"Estimated maximum of the best set of each day; ([\d.]+) kg now",
        holds: |told, drawn| {
            let days = drawn.curve("best set of the day")?;
            let mut names = drawn.names();
            let line = names.find(|name| name.starts_with("trend: "));
            let line = drawn.curve(line.ok_or("no line")?)?;
            // No more than the best day has shown.
            let end = line[line.len() - 1][1];
            says(&told[1], end.min(super::peak(days)[1]), 1e-4, "now")
        },
    },
    Claim {
        reads: r"Median of published 1RM equations; robust slope \(Theil-Sen\) now ([\x{2212}+\d.]+) kg a week, 95 % interval ([\x{2212}+\d.]+) to ([\x{2212}+\d.]+); shaded: what its interval allows",
        holds: slope_told,
    },
    Claim {
        reads: r"Invented person|Simulated",
        holds: is_definition,
    },
    Claim {
        reads: FATIGUE_MODEL,
        holds: is_definition,
    },
    Claim {
        reads: SESSION,
        holds: session_told,
    },
    Claim {
        reads: r"Loads as the gym can build them",
        holds: |_, drawn| {
            let gym = Loadings::usual(System::Metric);
            let is_built = |kg: f64| {
                let nearest = gym.at_most(Mass::from_kg(kg + 1e-4));
                nearest.is_ok_and(|own| (own.total.as_kg() - kg).abs() < 1e-3)
            };
            let place = column(drawn, "load_kg")?;
            let rows = drawn.table.rows.iter();
            let mut loads = rows.filter_map(|row| row[place].parse().ok());
            holds(loads.all(is_built), "bars and plates make every load")
        },
    },
];
