//! A drawn body with its muscles in words.
//!
//! In: what each picture shows. Out: words around it, and the cells of the tables below the bodies.

use super::figure_words::FigureWords;
use super::prose::listed;
use super::quantities::rounded;
use super::shown_units::ShownUnits;
use crate::anatomy::Joint;
use crate::study::{MuscleLine, Study};
use crate::units::{Length, System};

/// Letters of muscles in the picture.
pub(crate) const LETTERS: [&str; 6] = ["A", "B", "C", "D", "E", "F"];

/// One of the poses of a lift that is drawn.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct ShownPose {
    /// The sample.
    pub sample: usize,
    /// What it is: "start".
    pub what: &'static str,
}

/// Names of the poses that are drawn: with a load its hardest place, without one the strongest; the middle where that is an end.
pub(crate) const POSES: [&str; 5] = ["Start", "Hardest", "Strongest", "Middle", "End"];

/// "Start, 130 deg".
pub(crate) fn pose_title(study: &Study, shown: ShownPose, units: System) -> String {
    let last = (study.range.poses.len() - 1) as f64;
    format!(
        "{}: {}",
        shown.what,
        study.told(units).place(shown.sample as f64 / last)
    )
}

/// The same without from where the place is counted: "Start: 130 deg".
pub(crate) fn short_pose_title(study: &Study, shown: ShownPose, units: System) -> String {
    let last = (study.range.poses.len() - 1) as f64;
    let (number, unit) = study.told(units).place_and_unit(shown.sample as f64 / last);
    format!("{}: {number} {unit}", shown.what)
}

/// What the colours of muscles tell.
pub(crate) const ACTIVATION: &str = "Activation";

/// None, half and all of it.
pub(crate) fn activation_steps() -> [String; 3] {
    [0, 50, 100].map(|percent| format!("{percent} %"))
}

fn arm_cm(muscle: &MuscleLine, row: usize, units: System) -> String {
    let unit = units.length_unit();
    format!("{:.1}", unit.of(muscle.arms_m[row].unwrap_or(0.0).abs()))
}

/// The arm with its unit, beside its line in the picture.
pub(crate) fn arm_in_words(muscle: &MuscleLine, row: usize, units: System) -> String {
    format!(
        "{} {}",
        arm_cm(muscle, row, units),
        units.length_unit().symbol
    )
}

/// The same as finely as its product with the force comes out: millimetres with one decimal, inches with two.
fn fine_arm(muscle: &MuscleLine, row: usize, units: System) -> String {
    let arm_m = muscle.arms_m[row].unwrap_or(0.0).abs();
    match units {
        System::Metric => format!("{:.1}", 1000.0 * arm_m),
        System::Us => format!("{:.2}", units.length_unit().of(arm_m)),
    }
}

/// The unit of that.
fn fine_unit(units: System) -> &'static str {
    match units {
        System::Metric => "mm",
        System::Us => units.length_unit().symbol,
    }
}

/// A moment arm in the length of the unit of moments, so that the printed product needs no factor.
fn lever(muscle: &MuscleLine, row: usize, units: System) -> String {
    let arm_m = muscle.arms_m[row].unwrap_or(0.0).abs();
    match units {
        System::Metric => format!("{:.2}", 100.0 * arm_m),
        System::Us => format!("{:.4}", Length::from_m(arm_m).as_ft()),
    }
}

/// The unit of that.
fn lever_unit(units: System) -> &'static str {
    match units {
        System::Metric => "cm",
        System::Us => "ft",
    }
}

/// Heads of the columns of the table of muscles: the places, and below each how arm, force and moment go together.
pub(crate) fn muscle_heads(poses: &[ShownPose], units: System) -> [Vec<String>; 2] {
    let force = units.load_unit(crate::movement::Measure::Force).symbol;
    let product = [
        format!("{} ×", lever_unit(units)),
        format!("{force} ="),
        units.torque_unit().symbol.to_owned(),
    ];
    let name = || std::iter::once(String::new());
    // A place stands over its three columns.
    let places = poses.iter().map(|pose| pose.what.to_owned());
    let products = poses.iter().flat_map(|_| product.clone());
    [
        name().chain(places).collect(),
        name().chain(products).collect(),
    ]
}

/// A muscle's row: its letter, then at every place arm, force and the moment that they make.
pub(crate) fn muscle_row(
    letter: &str,
    at_places: &[&MuscleLine],
    row: usize,
    units: System,
) -> Vec<String> {
    let force = units.load_unit(crate::movement::Measure::Force);
    let product = |muscle: &&MuscleLine| {
        [
            lever(muscle, row, units),
            rounded(force.of(muscle.force_n), 0),
            format!("{:.1}", units.torque_unit().of(muscle.moment_nm(row).abs())),
        ]
    };
    let cells = at_places.iter().flat_map(product);
    std::iter::once(letter.to_owned()).chain(cells).collect()
}

/// What muscles without a letter make, in table and data.
pub(crate) const OTHERS: &str = "others";

/// What muscles without a letter make at one joint, positive as the muscles lift.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct OtherMuscles {
    /// The joint's coordinate.
    pub row: usize,
    /// The samples of the poses.
    pub samples: Vec<usize>,
    /// Their moment there, N·m.
    pub moments_nm: Vec<f64>,
}

impl OtherMuscles {
    /// Their moment at a sample, N·m.
    pub(crate) fn at(&self, sample: usize) -> f64 {
        let place = self.samples.iter().position(|known| *known == sample);
        place.map_or(0.0, |place| self.moments_nm[place])
    }
}

fn moment_of_others(moment_nm: f64, units: System) -> String {
    let size = format!("{:.1}", units.torque_unit().of(moment_nm.abs()));
    if moment_nm < 0.0 && size != "0.0" {
        format!("\u{2212}{size}")
    } else {
        size
    }
}

/// The row of what muscles make at the joint at every place beside those with a row there.
pub(crate) fn others_row(others: &OtherMuscles, units: System) -> Vec<String> {
    let moments = others.moments_nm.iter();
    let cells = moments.flat_map(|moment_nm| {
        let moment = moment_of_others(*moment_nm, units);
        [String::new(), String::new(), moment]
    });
    std::iter::once(OTHERS.to_owned()).chain(cells).collect()
}

/// The bones that meet at a joint, the one nearer to the trunk first; none where the picture draws none of its own.
pub(crate) const fn bones_at(joint: Joint) -> Option<[&'static str; 2]> {
    match joint {
        Joint::Elbow => Some(["upper arm", "forearm"]),
        Joint::Shoulder => Some(["trunk", "upper arm"]),
        Joint::Hip => Some(["trunk", "thigh"]),
        Joint::Knee => Some(["thigh", "shin"]),
        Joint::Ankle => Some(["shin", "foot"]),
        Joint::LowerBack => None,
    }
}

/// "Muscles without a row there make 1.2, 3.4 and 2.0 N·m at the elbow at these places."
fn others_told(study: &Study, others: &[OtherMuscles], units: System) -> String {
    let unit = units.torque_unit().symbol;
    let at = |left: &OtherMuscles| {
        let each: Vec<String> = left
            .moments_nm
            .iter()
            .map(|moment| moment_of_others(*moment, units))
            .collect();
        format!(
            " Muscles without a row there make {} {unit} at the {} at these places.",
            listed(&each),
            study.joint(left.row)
        )
    };
    others.iter().map(at).collect()
}

fn named(muscle: &MuscleLine) -> String {
    match muscle.heads {
        1 => muscle.name.clone(),
        many => format!("{} ({many} heads)", muscle.name),
    }
}

/// Muscles on the skeleton: `drawn` holds, pose by pose, each muscle with the coordinate of its main moment.
#[must_use]
pub(crate) fn muscle_words(
    study: &Study,
    poses: &[ShownPose],
    drawn: &[Vec<(MuscleLine, usize)>],
    others: &[OtherMuscles],
    (shades, units): (bool, System),
) -> FigureWords {
    let (force, torque) = (
        units.load_unit(crate::movement::Measure::Force),
        units.torque_unit(),
    );
    let told = most_changed(drawn);
    let first = &drawn[0][told];
    let joint = study.joint(first.1);
    let arms: Vec<String> = poses
        .iter()
        .zip(drawn)
        .map(|(pose, muscles)| {
            let (muscle, row) = &muscles[told];
            let arm = arm_in_words(muscle, *row, units);
            format!("{arm} at the {}", place_word(pose))
        })
        .collect();
    let each_pose: Vec<String> = poses
        .iter()
        .zip(drawn)
        .map(|(pose, muscles)| {
            let each: Vec<String> = muscles
                .iter()
                .map(|(muscle, row)| {
                    format!(
                        "{} {} {} × {} {} = {} {} at the {}",
                        muscle.name,
                        fine_arm(muscle, *row, units),
                        fine_unit(units),
                        rounded(force.of(muscle.force_n), 0),
                        force.symbol,
                        format_args!("{:.1}", torque.of(muscle.moment_nm(*row).abs())),
                        torque.symbol,
                        study.joint(*row)
                    )
                })
                .collect();
            format!("{}: {}.", pose_title(study, *pose, units), each.join("; "))
        })
        .collect();
    let key: Vec<String> = drawn[0]
        .iter()
        .zip(LETTERS)
        .map(|((muscle, _), letter)| format!("{letter} {}", named(muscle)))
        .collect();
    FigureWords {
        title: format!(
            "Moment arm of the {} at the {joint}: {}",
            first.0.name,
            listed(&arms)
        ),
        subtitle: format!(
            "{}, {}. {}",
            study.lifter_title,
            study.movement_title.to_lowercase(),
            key.join(", ")
        ),
        footnote: format!(
            "Best effort held still, one side. {}, square to its line of pull; where muscles begin and end is drawn freely.",
            match shades {
                true => "Width: force. Measured: moment arm of the one with the thick rim".to_owned(),
                false => format!("Measured: moment arm of {}", LETTERS[told]),
            }
        ),
        description: format!(
            "The moving limb with its muscles at {} places. {}{}",
            poses.len(),
            each_pose.join(" "),
            others_told(study, others, units)
        ),
        caption: "A muscle turns a joint with its force times its moment arm, the distance of its line of pull from the joint's \
                  axis. The limb's position sets both: the arm by geometry, the force by the length of the fibres."
            .to_owned(),
    }
}

/// The muscle whose lever changes most over the poses that show them all.
pub(crate) fn most_changed(drawn: &[Vec<(MuscleLine, usize)>]) -> usize {
    let count = drawn.iter().map(Vec::len).min().unwrap_or(0);
    let change = |index: usize| {
        let arms = drawn.iter().map(|muscles| {
            let (muscle, row) = &muscles[index];
            muscle.arms_m[*row].unwrap_or(0.0).abs()
        });
        let [low, high] = [f64::min, f64::max].map(|of| arms.clone().reduce(of));
        high.unwrap_or(0.0) - low.unwrap_or(0.0)
    };
    // Of equal ones the first, which makes the greater moment.
    (0..count)
        .rev()
        .max_by(|a, b| change(*a).total_cmp(&change(*b)))
        .unwrap_or(0)
}

fn place_word(shown: &ShownPose) -> &'static str {
    match shown.what {
        "Start" => "start",
        "Hardest" => "hardest place",
        "Strongest" => "strongest place",
        "Middle" => "middle",
        _ => "end",
    }
}
