//! Published checks of `resistance` and `demand`: the band, and what it loses over a cycle.

use crate::evidence::paper;
use torquill::demand::DemandCurve;
use torquill::movement::{Carrier, LoadPoint};
use torquill::resistance::{
    Band, BandReading, Chain, FittedPull, Hang, HungBand, Item, PullShape, Rubber, Setup,
};
use torquill::units::{Force, Length};

/// Stretch and stress (MPa) of the loading branch, as digitised from the paper's figure.
fn treloar_points() -> Vec<(f64, f64)> {
    let points = paper("treloar1944_rubber");
    points
        .rows_with("kg_cm2")
        .map(|row| (row.number("stretch"), row.published()))
        .collect()
}

/// A point of a straight lift at a height.
pub fn at_height(height_m: f64) -> LoadPoint {
    LoadPoint {
        z_m: height_m,
        dz_ds_m: 1.0,
        ..LoadPoint::default()
    }
}

/// Evenly spaced points of a straight lift.
pub fn straight_lift(bottom_m: f64, top_m: f64, samples: usize) -> Vec<LoadPoint> {
    let at = |i: usize| {
        let range = i as f64 / (samples - 1) as f64;
        LoadPoint {
            range,
            z_m: bottom_m + range * (top_m - bottom_m),
            dz_ds_m: top_m - bottom_m,
            travel_m: range * (top_m - bottom_m),
            ..LoadPoint::default()
        }
    };
    (0..samples).map(at).collect()
}

/// A loop band by its dimensions, with more fields, as a model file gives it.
pub fn band_with(
    name: &str,
    [width, thickness, rest]: [Length; 3],
    more: &str,
) -> Result<Band, ron::error::SpannedError> {
    ron::from_str(&format!(
        "(name: \"{name}\", rest_length: \"{} m\", \
         pull: Dimensions(width: \"{} m\", thickness: \"{} m\"){more})",
        rest.as_m(),
        width.as_m(),
        thickness.as_m()
    ))
}

/// A loop band by its dimensions.
pub fn band_of(name: &str, width: Length, thickness: Length, rest: Length) -> Band {
    band_with(name, [width, thickness, rest], "").expect("an ordinary band")
}

/// A chain by its mass per metre and its length.
pub fn chain_of(name: &str, kg_m: f64, length: Length) -> Chain {
    let text = format!(
        "(name: \"{name}\", links: PerMetre(\"{kg_m} kg/m\"), length: \"{} m\")",
        length.as_m()
    );
    ron::from_str(&text).expect("an ordinary chain")
}

pub fn loop_band(width_mm: f64, rest_cm: f64) -> Band {
    let (width, thickness) = (Length::from_mm(width_mm), Length::from_mm(4.5));
    band_of("loop", width, thickness, Length::from_cm(rest_cm))
}

/// Correlation of values with their least-squares polynomial of this degree over x.
pub fn fit_r(x: &[f64], y: &[f64], degree: usize) -> f64 {
    let columns = degree + 1;
    let design =
        nalgebra::DMatrix::from_fn(x.len(), columns, |row, column| x[row].powi(column as i32));
    let values = nalgebra::DVector::from_column_slice(y);
    let solved = design
        .clone()
        .svd(true, true)
        .solve(&values, 1e-12)
        .expect("a fit");
    correlation((&design * solved).as_slice(), y)
}

fn correlation(a: &[f64], b: &[f64]) -> f64 {
    let mean = |v: &[f64]| v.iter().sum::<f64>() / v.len() as f64;
    let (ma, mb) = (mean(a), mean(b));
    let sum =
        |f: &dyn Fn(f64, f64) -> f64| a.iter().zip(b).map(|(x, y)| f(x - ma, y - mb)).sum::<f64>();
    sum(&|x, y| x * y) / (sum(&|x, _| x * x) * sum(&|_, y| y * y)).sqrt()
}

#[test]
fn published_treloar_1944_stress_over_stretch() {
    let band = loop_band(10.0, 100.0);
    let section_mm2 = 2.0 * 10.0 * 4.5;
    for row in paper("treloar1944_rubber").rows_with("kg_cm2") {
        row.check(band.force_n(row.number("stretch"), Hang::Single) / section_mm2);
    }
}

#[test]
fn published_treloar_1944_constants() {
    // The paper's own kg/cm² (the MPa of the table are rounded), on one metre of rubber with a
    // section of 1000 mm²: newtons are thousandths of a MPa.
    let treloar = paper("treloar1944_rubber");
    let readings: Vec<BandReading> = treloar
        .rows_with("kg_cm2")
        .map(|row| BandReading {
            length: Length::from_m(row.number("stretch")),
            force: Force::from_n(1000.0 * 0.0980665 * row.number("kg_cm2")),
        })
        .collect();
    let fitted = FittedPull::from_readings(&readings, Some(Length::from_m(1.0))).expect("a fit");
    let PullShape::TwoConstants { a_n, b_n } = fitted.shape() else {
        panic!("the rubber law fits rubber");
    };
    for (name, computed) in [("C1", a_n / 1000.0), ("C2", b_n / 1000.0)] {
        treloar.check(
            &format!("Mooney-Rivlin {name} up to stretch 2.2, MPa"),
            computed,
        );
    }
    let rubber = Rubber::treloar_1944();
    treloar.check(
        "shear modulus, MPa",
        2.0 * (rubber.c1.as_mpa() + rubber.c2.as_mpa()),
    );
}

#[test]
fn published_treloar_1944_worst_point_of_the_working_range() {
    let rubber = Rubber::treloar_1944();
    let worst = treloar_points()
        .into_iter()
        .map(|(stretch, stress_mpa)| {
            (rubber.nominal_stress_pa(stretch) / 1e6 / stress_mpa - 1.0).abs()
        })
        .fold(0.0, f64::max);
    paper("treloar1944_rubber").check(
        "worst relative miss of the band law, stretch 1.02-2.18",
        worst,
    );
}

/// Energy that the load keeps for itself over one slow cycle, J: what lifting puts in less what lowering gives back,
/// along the path, by the trapezoid rule over the load points.
pub fn energy_lost_j(curve: &DemandCurve, points: &[LoadPoint]) -> f64 {
    let gap = |i: usize| {
        let (up, down) = (curve.samples[i].up.force, curve.samples[i].down.force);
        (down.x_n - up.x_n, down.z_n - up.z_n)
    };
    let work = |i: usize| {
        let (before, here) = (&points[i - 1], &points[i]);
        let (first, second) = (gap(i - 1), gap(i));
        0.5 * ((first.0 + second.0) * (here.x_m - before.x_m)
            + (first.1 + second.1) * (here.z_m - before.z_m))
    };
    (1..points.len()).map(work).sum()
}

#[test]
fn published_gent_hysteresis() {
    let points = straight_lift(1.0, 2.0, 201);
    let setup = Setup::new(
        "",
        vec![Item::Band(HungBand::from_floor(loop_band(29.0, 100.0), 1))],
    );
    let curve = DemandCurve::over(&setup, &points, &Carrier::Bar);
    let step_m = 1.0 / 200.0;
    let up: Vec<f64> = curve
        .samples
        .iter()
        .map(|sample| sample.up.along_n)
        .collect();
    let stored_j: f64 = up
        .windows(2)
        .map(|pair| 0.5 * (pair[0] + pair[1]) * step_m)
        .sum();
    paper("gent_hysteresis").check(
        "energy a band loses over one cycle, share of the stored",
        energy_lost_j(&curve, &points) / stored_j,
    );
}

#[test]
fn published_mcmaster_2010_quadratic_bands() {
    for width_mm in [14.0, 22.0, 30.0, 48.0, 67.0] {
        let band = loop_band(width_mm, 100.0);
        let lengths: Vec<f64> = (0..=12).map(|i| 1.0 + 0.1 * f64::from(i)).collect();
        let pulls: Vec<f64> = lengths
            .iter()
            .map(|l| band.force_n(*l, Hang::Single))
            .collect();
        paper("mcmaster2010_bands_and_chains").check(
            &format!("r of a quadratic through the pull of a {width_mm} mm band, 10 cm steps"),
            fit_r(&lengths, &pulls, 2),
        );
    }
}

/// R² of length over the logarithm of load for a band that is pulled between two stretches.
fn logarithmic_r2(hang: Hang, from: f64, to: f64) -> f64 {
    let band = loop_band(45.0, 104.14);
    let taut_m = band.taut_length_m(hang);
    let lengths: Vec<f64> = (0..=20)
        .map(|i| taut_m * (from + (to - from) * f64::from(i) / 20.0))
        .collect();
    let logs: Vec<f64> = lengths
        .iter()
        .map(|l| band.force_n(*l, hang).ln())
        .collect();
    fit_r(&logs, &lengths, 1).powi(2)
}

#[test]
fn published_shoepe_2010_logarithmic_form() {
    let shoepe = paper("shoepe2010_logarithm");
    shoepe.check(
        "R² of length over log of load, band doubled as on a bench, stretch 1.4-2.15",
        logarithmic_r2(Hang::Doubled, 1.4, 2.15),
    );
    shoepe.check(
        "R² of length over log of load, band single, stretch 1.1-2.2",
        logarithmic_r2(Hang::Single, 1.1, 2.2),
    );
}

#[test]
fn published_pull_depends_on_relative_length_alone() {
    let short = loop_band(14.0, 60.0);
    let long = loop_band(14.0, 120.0);
    for percent in [50.0, 100.0] {
        let stretch = 1.0 + percent / 100.0;
        paper("thomas2005_relative_length").check(
            &format!("pull at {percent} % elongation, starting length 60 over 120 cm"),
            short.force_n(0.6 * stretch, Hang::Single) / long.force_n(1.2 * stretch, Hang::Single),
        );
    }
}

#[test]
fn published_linear_middle_of_the_band_law() {
    let band = loop_band(29.0, 100.0);
    let lengths: Vec<f64> = (0..=14).map(|i| 1.5 + 0.05 * f64::from(i)).collect();
    let pulls: Vec<f64> = lengths
        .iter()
        .map(|l| band.force_n(*l, Hang::Single))
        .collect();
    paper("patterson2001_linear_bands").check(
        "r of a line through the pull from 50 % to 120 % elongation",
        fit_r(&lengths, &pulls, 1),
    );
}

#[test]
fn published_loyola_2019_design() {
    // Bands from 6.35 to 101.6 mm, 100 cm at rest, read every 5 cm up to 200 cm.
    let widths_mm = [6.35, 12.7, 28.6, 44.5, 63.5, 101.6];
    let pulls = |width_mm: f64| -> Vec<f64> {
        let band = loop_band(width_mm, 100.0);
        (0..=20)
            .map(|i| band.force_n(1.0 + 0.05 * f64::from(i), Hang::Single))
            .collect()
    };
    let rising = widths_mm
        .iter()
        .filter(|w| pulls(**w).windows(2).all(|pair| pair[1] > pair[0]))
        .count();
    paper("loyola2019_bands").check(
        "widths whose pull rises at every 5 cm from 100 to 200 cm, of 6",
        rising as f64,
    );
    let widest_over_narrowest = pulls(101.6)[20] / pulls(6.35)[20];
    paper("loyola2019_bands").check(
        "pull of the widest over the narrowest band at 200 cm, equal thickness and rubber",
        widest_over_narrowest,
    );
}
