//! What stands below the titles of the lecture's figures of fibres and filaments, against the data that are drawn.

use super::lecture::voluntary;
use super::one_lift::is_them;
use super::{Claim, Drawn, holds, peak, says};
use regex::Captures;
use std::sync::LazyLock;
use torquill::anatomy::Sarcomere;
use torquill::capacity::Pace;
use torquill::library::Library;
use torquill::plot::Time;
use torquill::study::muscle_parts;

static LIBRARY: LazyLock<Library> = LazyLock::new(Library::built_in);

fn sarcomere(species: &str) -> Result<Sarcomere, String> {
    LIBRARY
        .sarcomere(species)
        .map_err(|_| format!("no sarcomere of {species}"))
}

/// The filaments that five corners are of: thin, thick, bare zone, Z disc, µm.
fn filaments_um(corners: &[[f64; 2]]) -> Result<[f64; 4], String> {
    let [_, turn, plateau, fall, none] = corners else {
        return Err(format!("{} corners", corners.len()));
    };
    let thick = none[0] - plateau[0];
    let z_disc = turn[0] - thick;
    let thin = (plateau[0] - z_disc) / 2.0;
    Ok([thin, thick, fall[0] - plateau[0], z_disc])
}

fn overlap_told(told: &Captures<'_>, drawn: &Drawn) -> Result<(), String> {
    let corners = drawn.curve("corner")?;
    let filaments = filaments_um(corners)?;
    for (at, what) in ["thin", "thick", "bare zone", "Z disc"].iter().enumerate() {
        says(&told[at + 1], filaments[at], 1e-6, what)?;
    }
    let [_, thick, _, z_disc] = filaments;
    let is_cut = thick > drawn.curve("A")?[0][0] - z_disc;
    holds(is_cut == told.get(5).is_some(), "cut off at A")
}

/// Force of a curve at a length of its axis, on the line between two points.
fn between(points: &[[f64; 2]], x: f64) -> f64 {
    let mut pieces = points.windows(2);
    let piece = pieces.find(|pair| (pair[0][0]..=pair[1][0]).contains(&x));
    piece.map_or(f64::NAN, |pair| {
        let part = (x - pair[0][0]) / (pair[1][0] - pair[0][0]).max(1e-12);
        pair[0][1] + part * (pair[1][1] - pair[0][1])
    })
}

/// The active curve that is drawn, over percent of the optimal length.
fn active(drawn: &Drawn) -> Result<&[[f64; 2]], String> {
    drawn
        .curve("active")
        .or_else(|_| drawn.curve("every length"))
}

/// The muscle's curve beside that of the sarcomere of its species.
fn smoother(_: &Captures<'_>, drawn: &Drawn) -> Result<(), String> {
    let own = active(drawn)?;
    let human = sarcomere("human")?;
    let optimum_um = human.optimum_um();
    let other = &|percent: f64| 100.0 * human.tension_at(0.01 * percent * optimum_um);
    let over = |from: f64, to: f64| {
        let inside = own.iter().filter(move |p| (from..=to).contains(&p[0]));
        inside.map(move |p| (p[1], other(p[0])))
    };
    let ends_at = 100.0 * human.corners()[0].0 / optimum_um;
    holds(over(130.0, 155.0).all(|(own, o)| own > o), "farther")?;
    holds(over(65.0, 90.0).all(|(own, o)| own < o), "falls sooner")?;
    let short = || over(40.0, ends_at - 1e-9);
    holds(short().count() > 3, "lengths below the sarcomere's end")?;
    holds(short().all(|(own, o)| own > 0.0 && o <= 0.0), "ends later")?;
    // How sharply a curve bends at most.
    let bend = |value: &dyn Fn(&[f64; 2]) -> f64| {
        let turns = own.windows(3).map(|three| {
            let [a, b, c] = [0, 1, 2].map(|at| value(&three[at]));
            (a - 2.0 * b + c).abs()
        });
        turns.fold(0.0, f64::max)
    };
    let [own, other] = [bend(&|p| p[1]), bend(&|p| other(p[0]))];
    holds(own < other / 2.0, &format!("smoother: {own} of {other}"))
}

/// The shaded lengths are those of the strongest muscle of the lift.
pub fn shaded_lengths(muscle: &str, drawn: &Drawn) -> Result<[f64; 2], String> {
    let [(label, ends)] = drawn.shades.as_slice() else {
        return Err("not one shade".to_owned());
    };
    let study = drawn.own_study()?;
    let own = &muscle_parts(study, 0)[0];
    holds(muscle.eq_ignore_ascii_case(&own.name), "the muscle")?;
    holds(
        *label
            == format!(
                "{} in the {}",
                own.name,
                study.movement_title.to_lowercase()
            ),
        "what is shaded",
    )?;
    let lengths = own.fibre_norm.iter().map(|length| 100.0 * length);
    let [low, high] = [f64::min, f64::max].map(|of| lengths.clone().reduce(of));
    let [low, high] = [low, high].map(|end| end.unwrap_or(f64::NAN));
    let are_they = (ends[0] - low).abs() < 1e-6 && (ends[1] - high).abs() < 1e-6;
    holds(are_they, &format!("{ends:?} are {low} to {high}"))?;
    Ok(*ends)
}

/// Shortening is Hill's hyperbola, `F = (1 − v)/(1 + v/k)`: one curvature `k` fits all of it.
fn hyperbola(drawn: &Drawn) -> Result<(), String> {
    let voluntary = voluntary(drawn)?;
    let shortening = voluntary.iter().filter(|p| p[0] > 4.9 && p[0] < 95.1);
    let curvatures: Vec<f64> = shortening
        .map(|p| {
            let [v, force] = [0.01 * p[0], 0.01 * p[1]];
            v / ((1.0 - v) / force - 1.0)
        })
        .collect();
    let [low, high] = [f64::min, f64::max].map(|of| curvatures.iter().copied().reduce(of));
    let (low, high) = low.zip(high).ok_or("no shortening")?;
    holds(low > 0.0 && high / low < 1.001, &format!("{low} to {high}"))
}

/// The claims.
pub const FIBRES_BELOW: &[Claim<Drawn>] = &[
    Claim {
        reads: r"One (\S+) sarcomere, fully active, held still",
        holds: |told, drawn| {
            let own = sarcomere(&told[1])?.corners();
            let corners = drawn.curve("corner")?;
            let same = own.iter().zip(corners).all(|(own, corner)| {
                (own.0 - corner[0]).abs() < 1e-6 && (100.0 * own.1 - corner[1]).abs() < 1e-6
            });
            holds(same && own.len() == corners.len(), "the species' corners")
        },
    },
    Claim {
        reads: r"Thin filament ([\d.]+) µm, thick filament ([\d.]+) µm, bare zone ([\d.]+) µm, Z\x{a0}disc ([\d.]+)\x{a0}µm; drawn to scale(, at A cut off at the Z discs)?",
        holds: overlap_told,
    },
    Claim {
        reads: r"Thin filament ([\d.]+) µm in people, ([\d.]+) µm in frogs; thick filament ([\d.]+) µm in both",
        holds: |told, drawn| {
            let human = filaments_um(drawn.curve("human")?)?;
            let frog = filaments_um(drawn.curve("frog")?)?;
            says(&told[1], human[0], 1e-6, "thin in people")?;
            says(&told[2], frog[0], 1e-6, "thin in frogs")?;
            says(&told[3], human[1], 1e-6, "thick in people")?;
            says(&told[3], frog[1], 1e-6, "thick in frogs")
        },
    },
    Claim {
        reads: r"Corners of both are computed from filament lengths; the shortest length with force, and the force at the corner above it, are the frog's in both",
        holds: |_, drawn| {
            let (human, frog) = (drawn.curve("human")?, drawn.curve("frog")?);
            let file = sarcomere("frog")?.corners();
            let taken = |points: &[[f64; 2]]| [points[0][0], points[1][1]];
            holds(taken(human) == taken(frog), "the same in both")?;
            let own = [file[0].0, 100.0 * file[1].1];
            holds(taken(frog) == own, "those of the frog")
        },
    },
    Claim {
        reads: r"Fully active muscle, held still, greatest active force = 100 %; passive force needs no activation",
        holds: |_, drawn| {
            let most = peak(active(drawn)?)[1];
            says("100", most, 0.0, "greatest")?;
            holds(drawn.curve("passive").is_ok(), "passive force is drawn")
        },
    },
    Claim {
        reads: r"Shaded: the lengths that the (.+) passes",
        holds: |told, drawn| shaded_lengths(&told[1], drawn).map(|_| ()),
    },
    Claim {
        reads: r"The muscle's curve is another law than the sarcomere's: smoother, farther at long lengths; at short ones it falls sooner and ends later",
        holds: smoother,
    },
    Claim {
        reads: r"Force at the optimal fibre length, isometric force = 100 %: of a voluntary effort and of an isolated fibre",
        holds: |_, drawn| {
            for name in ["voluntary effort", "isolated fibre"] {
                let still = between(drawn.curve(name)?, 0.0);
                holds((still - 100.0).abs() < 1e-6, name)?;
            }
            Ok(())
        },
    },
    Claim {
        reads: r"Hill's hyperbola in shortening, its curvature fitted to single joints; in lengthening a person reaches far less of the surplus than an isolated fibre",
        holds: |_, drawn| {
            hyperbola(drawn)?;
            let surplus = |name: &str| Ok::<f64, String>(peak(drawn.curve(name)?)[1] - 100.0);
            let (person, fibre) = (surplus("voluntary effort")?, surplus("isolated fibre")?);
            holds(person < fibre / 2.0, &format!("{person} of {fibre}"))
        },
    },
    Claim {
        reads: r"(.+), strength curve at constant speed of the joint",
        holds: |told, drawn| is_them(&told[1], drawn),
    },
    Claim {
        reads: r"Lowering runs from right to left",
        holds: |_, drawn| {
            let mut names = drawn.names();
            holds(names.any(|name| name.starts_with("lowering")), "it lowers")?;
            let still = drawn.curve("held still")?;
            let falls = still[still.len() - 1][0] < still[0][0];
            // Lifting runs from left to right: with falling values the axis is turned round.
            let told = if falls { Time::Falling } else { Time::Rising };
            holds(drawn.time == told, "the way of the lift")
        },
    },
    Claim {
        reads: r"(.+), active force of the muscle's fibres",
        holds: |told, drawn| is_them(&told[1], drawn),
    },
    Claim {
        reads: r"Held still, fully active",
        holds: |_, drawn| {
            let study = drawn.own_study()?;
            holds(study.pace == Pace::default(), "held still")?;
            let (law, used) = (drawn.curve("every length")?, drawn.curve("this lift")?);
            says("100", peak(law)[1], 0.0, "a share of the greatest")?;
            let mut inside = used.iter().filter(|p| (40.0..=160.0).contains(&p[0]));
            // Between two points of the law its line is a chord.
            let lies = |p: &[f64; 2]| (between(law, p[0]) - p[1]).abs() < 0.2;
            holds(inside.all(lies), "all of the force of each length")
        },
    },
];
