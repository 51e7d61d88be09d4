//! The calibration of the muscles, and what it stands on.

use torquill::anatomy::{Fibre, Tendon, tendon_force, tendon_strain};
use torquill::library::Library;

#[test]
fn law_fibres_and_tendon_bear_the_same_force() {
    let lifter = Library::built_in()
        .lifter("reference-man")
        .expect("a built-in lifter");
    let mut seen = 0;
    for muscle in lifter.muscles.values() {
        let Tendon::Compliant {
            slack_length,
            strain_at_peak,
            ..
        } = &muscle.tendon
        else {
            continue;
        };
        let fibre = Fibre::of(muscle);
        for step in 0..40 {
            let relaxed_m = fibre.projected_m(0.6 + 0.025 * f64::from(step));
            for speed in [-0.2, 0.0, 0.1, 0.4] {
                let state = fibre.active_state(&lifter.curves, relaxed_m, speed);
                let (passive, active) = fibre.forces_n(&lifter.curves, state);
                let strain =
                    (relaxed_m - fibre.projected_m(state.length_norm)) / slack_length.as_m();
                let tendon = fibre.peak_force_n * tendon_force(strain, *strain_at_peak);
                let apart = (passive + active - tendon).abs() / fibre.peak_force_n;
                assert!(apart < 1e-9, "{apart:e} apart at step {step}, {speed} m/s");
                seen += 1;
            }
        }
    }
    assert!(seen > 0, "no muscle with a compliant tendon");
}

#[test]
fn law_a_tendon_under_its_force_has_its_strain() {
    for step in 0..60 {
        let force = 0.025 * f64::from(step);
        let back = tendon_force(tendon_strain(force, 0.05), 0.05);
        assert!((back - force).abs() < 1e-12, "{force}: {back}");
    }
}
