//! Rules for fibre curves and sarcomeres.
//!
//! In: records whose types already fit. Out: complaints about constants that no fibre has.

use super::complaint::{Complaint, Rules};
use crate::anatomy::{ActiveForceLength, Bell, Curves, Dynamics, Sarcomere};
use crate::bounds::bounds;
use crate::error::{BrokenRule, CurveRule};

/// A set of fibre curves.
pub(super) fn curves(curves: &Curves) -> Vec<Complaint> {
    let mut rules = Rules::default();
    curve_rules("", curves, &mut rules);
    rules.complaints
}

/// Fibre curves whose paths begin with `before`.
pub(super) fn curve_rules(before: &str, curves: &Curves, rules: &mut Rules) {
    let bounds = bounds();
    active(before, &curves.active, rules);
    let (passive, velocity) = (&curves.passive, &curves.velocity);
    for (path, value, bound) in [
        ("passive.shape", passive.shape, &bounds.passive_shape),
        (
            "passive.strain_at_peak",
            passive.strain_at_peak,
            &bounds.passive_strain,
        ),
        ("velocity.hill_a", velocity.hill_a, &bounds.hill_a),
        (
            "velocity.eccentric_limit",
            velocity.eccentric_limit,
            &bounds.eccentric_limit,
        ),
        (
            "velocity.voluntary_share",
            velocity.voluntary_share,
            &bounds.voluntary_share,
        ),
        (
            "velocity.eccentric_slope",
            velocity.eccentric_slope,
            &bounds.eccentric_slope,
        ),
    ] {
        rules.within(&format!("{before}{path}"), value, bound);
    }
    dynamics(&format!("{before}dynamics."), &curves.dynamics, rules);
}

/// The active curve: its constants, and that its peak is the peak force.
fn active(before: &str, active: &ActiveForceLength, rules: &mut Rules) {
    let path = format!("{before}active");
    match active {
        ActiveForceLength::Bells(bells) => bell_widths(&path, bells, rules),
        ActiveForceLength::Parabola { width } => {
            rules.within(&format!("{path}.width"), *width, &bounds().active_width);
        }
        ActiveForceLength::Gaussian { gamma } => {
            rules.within(&format!("{path}.gamma"), *gamma, &bounds().active_gamma);
        }
    }
    let values = (20..=200).map(|step| active.at(f64::from(step) / 100.0));
    let peak = values.fold(0.0, |peak: f64, value| {
        if value.is_finite() {
            peak.max(value)
        } else {
            f64::NAN
        }
    });
    if let Some(outside) = bounds().active_peak.outside(peak) {
        rules.add(path, BrokenRule::Curve(CurveRule::ActivePeak(outside)));
    }
}

/// Every bell has a width at the lengths at which fibres work.
fn bell_widths(path: &str, bells: &[Bell], rules: &mut Rules) {
    for (index, bell) in bells.iter().enumerate() {
        let mut lengths = (8..=36).map(|step| f64::from(step) * 0.05);
        let width = |length: f64| bell.b3 + bell.b4 * length;
        let narrow = lengths.find_map(|length| {
            let outside = bounds().bell_width.outside(width(length))?;
            Some((length, outside))
        });
        if let Some((length_norm, width)) = narrow {
            let broken = BrokenRule::Curve(CurveRule::BellWidth { length_norm, width });
            rules.add(format!("{path}.{index}.b3"), broken);
        }
    }
}

/// Constants of a repetition in time.
fn dynamics(before: &str, dynamics: &Dynamics, rules: &mut Rules) {
    let bounds = bounds();
    let half_life_s = dynamics.enhancement_half_life.as_s();
    for (path, value, bound) in [
        (
            "activation_rise",
            dynamics.activation_rise.as_s(),
            &bounds.rise_time,
        ),
        (
            "activation_fall",
            dynamics.activation_fall.as_s(),
            &bounds.rise_time,
        ),
        ("drive_rise", dynamics.drive_rise.as_s(), &bounds.rise_time),
        ("enhancement", dynamics.enhancement, &bounds.enhancement),
        (
            "enhancement_half_life",
            half_life_s,
            &bounds.enhancement_half_life,
        ),
        ("tiring_per_s", dynamics.tiring_per_s, &bounds.tiring_per_s),
        ("stop_share", dynamics.stop_share, &bounds.stop_share),
    ] {
        rules.within(&format!("{before}{path}"), value, bound);
    }
}

/// The filament lengths of a sarcomere.
pub(super) fn sarcomere(sarcomere: &Sarcomere) -> Vec<Complaint> {
    let mut rules = Rules::default();
    let bounds = bounds();
    for (path, value, bound) in [
        ("thin_um", sarcomere.thin_um, &bounds.filament_length),
        ("thick_um", sarcomere.thick_um, &bounds.filament_length),
        ("bare_zone_um", sarcomere.bare_zone_um, &bounds.bare_zone),
        ("z_disc_um", sarcomere.z_disc_um, &bounds.z_disc),
        (
            "shortest_um",
            sarcomere.shortest_um,
            &bounds.filament_length,
        ),
        (
            "share_at_break",
            sarcomere.share_at_break,
            &bounds.break_share,
        ),
    ] {
        rules.within(path, value, bound);
    }
    let corners = sarcomere.corners();
    if rules.complaints.is_empty() && corners.windows(2).any(|pair| pair[0].0 >= pair[1].0) {
        let corners_um = corners.map(|corner| corner.0).to_vec();
        rules.add("", BrokenRule::Curve(CurveRule::CornersFall { corners_um }));
    }
    rules.complaints
}
