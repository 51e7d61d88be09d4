//! Limbs that are nearly straight, on which a model bears almost any load.
//!
//! In: a study. Out: the joint that limits and is nearly straight at a place, by name; why curves leave a figure there.

use crate::anatomy::Joint;
use crate::study::{Study, sample_of_peak};

/// A hinge that is bent less is called nearly straight, rad (assumed: a quarter of a right angle).
const NEARLY_STRAIGHT_RAD: f64 = 0.45;

/// The elbow or knee that limits at a sample and is nearly straight there.
fn straight_at(study: &Study, sample: usize) -> Option<Joint> {
    let limiting = study.capacity.held[sample].limiting;
    let coordinate = &study.range.poses[sample].coordinates[limiting];
    let joint = coordinate.dof.joint();
    let is_hinge = matches!(joint, Joint::Elbow | Joint::Knee);
    (is_hinge && coordinate.angle_rad.abs() < NEARLY_STRAIGHT_RAD).then_some(joint)
}

/// The elbow or knee that limits, nearly straight, where the curve is greatest.
#[must_use]
pub(crate) fn straight_at_peak(study: &Study) -> Option<&'static str> {
    let at = sample_of_peak(&study.capacity.values());
    straight_at(study, at).map(Joint::name)
}

/// A sentence behind another one; nothing where there is none.
pub(crate) fn behind(sentence: &str) -> String {
    match sentence {
        "" => String::new(),
        told => format!(" {told}"),
    }
}

/// That a single curve leaves the figure.
pub(crate) const ARROW: &str = "Arrow: the curve goes on above the figure.";

/// Why curves leave the figure; nothing where none does.
pub(crate) fn arrows(above: &[&Study]) -> String {
    let joints = above.iter().map(|study| straight_at_peak(study));
    let Some(mut joints) = joints.collect::<Option<Vec<_>>>() else {
        let what = if above.len() == 1 {
            ARROW
        } else {
            "Arrows: the curve goes on above the figure."
        };
        return what.to_owned();
    };
    joints.sort_unstable();
    joints.dedup();
    let what = match above.len() {
        0 => return String::new(),
        1 => "Arrow",
        _ => "Arrows",
    };
    format!(
        "{what}: the curve goes on, for there the {} limits, nearly straight, and a model bears any load on a straight limb.",
        joints.join(" or ")
    )
}
