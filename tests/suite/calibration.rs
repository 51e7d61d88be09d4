//! The calibration of the muscles, and what it stands on.

use crate::calibration_program::answer::Search;
use crate::calibration_program::problem::Problem;
use crate::calibration_program::text::texts_and_values;
use std::collections::BTreeMap;
use std::path::Path;
use torquill::anatomy::{Fibre, Tendon, force_shares, tendon_force, tendon_strain};
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
                let (passive, active) = force_shares(&lifter.curves, state);
                let strain =
                    (relaxed_m - fibre.projected_m(state.length_norm)) / slack_length.as_m();
                let apart = (passive + active - tendon_force(strain, *strain_at_peak)).abs();
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

/// What the file of the answer says of the parameters.
#[derive(serde::Deserialize)]
struct Committed {
    parameters: BTreeMap<String, Parameter>,
}

#[derive(serde::Deserialize)]
struct Parameter {
    shift: f64,
}

#[test]
fn law_the_committed_values_are_the_answer_of_the_calibration() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let problem = Problem::read(root).expect("sound priors and targets");
    let text = std::fs::read_to_string(root.join("models/calibration/posterior.ron"))
        .expect("the answer ships");
    let committed: Committed = ron::from_str(&text).expect("a sound answer");
    let search = Search::of(&problem, root).expect("priors fit the models");
    let z: Vec<f64> = search
        .bodies
        .names
        .iter()
        .map(|name| committed.parameters[name].shift)
        .collect();
    // At the least sum of squares a search goes nowhere.
    let committed = search.state(z.clone()).expect("the answer can be built");
    let mut state = committed.clone();
    search.descend(&mut state, 0.03, 1).expect("it has slopes");
    let gain = committed.squares - state.squares;
    assert!(
        gain < 0.05,
        "a step on lowers {} by {gain}: run the calibration (models/calibration/README.md)",
        committed.squares
    );
    // And the model files hold these parameters, to the digits that are written.
    for (path, written, value) in texts_and_values(root, &problem, &search.bodies, &z) {
        let apart = (written / value - 1.0).abs();
        assert!(
            apart < 1.1 * 10.0_f64.powi(1 - problem.priors.digits as i32),
            "{path} is {written}, the calibration says {value}: run it (models/calibration/README.md)"
        );
    }
}
