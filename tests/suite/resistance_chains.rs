//! Published checks of `resistance`: chains, by their links and hanging.

use crate::evidence::{Paper, paper};
use crate::resistance::fit_r;
use torquill::resistance::{Chain, ChainHang, Links};
use torquill::units::{Length, LinearDensity};

/// A shipped band or chain.
pub fn shipped<T: serde::de::DeserializeOwned>(folder: &str, name: &str) -> T {
    let path = format!("{}/models/{folder}/{name}.ron", env!("CARGO_MANIFEST_DIR"));
    let text = std::fs::read_to_string(&path).expect("a shipped model is there");
    ron::from_str(&text).unwrap_or_else(|fault| panic!("{path}: {fault}"))
}

pub const CHAINS: [&str; 5] = [
    "chain-6mm",
    "chain-8mm",
    "chain-10mm",
    "chain-13mm",
    "chain-16mm",
];

#[test]
fn published_mcmaster_2010_linear_chains() {
    for name in CHAINS {
        let chain: Chain = shipped("chains", name);
        let heights: Vec<f64> = (0..=14).map(|i| 0.1 * f64::from(i)).collect();
        let masses: Vec<f64> = heights
            .iter()
            .map(|z| chain.hanging_at(*z, ChainHang::Straight).mass_kg)
            .collect();
        paper("mcmaster2010_bands_and_chains").check(
            &format!("r of a line through the mass of {name}, 10 cm steps"),
            fit_r(&heights, &masses, 1),
        );
    }
}

fn round_links(wire_mm: f64, pitch_mm: f64, inside_width_mm: f64) -> f64 {
    Links::Round {
        wire: Length::from_mm(wire_mm),
        pitch: Length::from_mm(pitch_mm),
        inside_width: Length::from_mm(inside_width_mm),
    }
    .density_kg_m()
    .expect("links of a standard")
}

/// Goes through the wires of a list; the inside width of links without one in it is this many wires.
fn check_wires(paper: &Paper, usual_width: f64) {
    for row in paper.rows_with("wire_mm") {
        let wire = row.number("wire_mm");
        let width = match row.text("inside_width_mm") {
            "" => usual_width * wire,
            _ => row.number("inside_width_mm"),
        };
        row.check(round_links(wire, row.number("pitch_mm"), width));
    }
}

#[test]
fn published_din_766_masses() {
    let din = paper("din766_chains");
    check_wires(&din, 1.2);
    for name in CHAINS {
        let chain: Chain = shipped("chains", name);
        let wire = &name["chain-".len()..name.len() - 2];
        let row = din.rows().find(|row| row.text("wire_mm") == wire);
        let printed = row.expect("a row of the table").published();
        assert_eq!(chain.density(), LinearDensity::from_kg_m(printed), "{name}");
    }
}

#[test]
fn published_din_764_and_763_masses() {
    // The inside width of DIN 763's long links is taken as 1.8 wire diameters.
    check_wires(&paper("din764_chains"), 1.8);
    check_wires(&paper("din763_chains"), 1.8);
}

#[test]
fn published_iso_4565_masses() {
    // These lists show no inside width; DIN 766 makes it 1.2 wire diameters.
    check_wires(&paper("iso4565_chains"), 1.2);
    check_wires(&paper("iso4565_anchor_chain"), 1.2);
}

/// Slope of the logarithm of mass per metre over the logarithm of a size.
fn exponent(sizes: &[f64], masses: &[f64]) -> f64 {
    let log = |values: &[f64]| -> Vec<f64> { values.iter().map(|v| v.ln()).collect() };
    let (x, y) = (log(sizes), log(masses));
    let mean = |v: &[f64]| v.iter().sum::<f64>() / v.len() as f64;
    let (mx, my) = (mean(&x), mean(&y));
    let xy: f64 = x.iter().zip(&y).map(|(a, b)| (a - mx) * (b - my)).sum();
    xy / x.iter().map(|a| (a - mx).powi(2)).sum::<f64>()
}

#[test]
fn published_exponent_of_chain_mass_over_size() {
    // Trade sizes of 1/4 to 5/8 in are made of wire of 7 to 16 mm (from memory).
    let trade_mm = [0.25, 0.3125, 0.375, 0.5, 0.625].map(|inch| 25.4 * inch);
    let masses = [
        round_links(7.0, 22.0, 8.4),
        round_links(8.0, 24.0, 9.6),
        round_links(10.0, 28.0, 12.0),
        round_links(13.0, 36.0, 15.6),
        round_links(16.0, 45.0, 19.2),
    ];
    paper("boat_handbook_chain_mass").check(
        "exponent of chain mass over trade size, 1/4 to 5/8 in",
        exponent(&trade_mm, &masses),
    );
}
