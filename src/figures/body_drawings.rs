//! The body of a lift with its muscles on the skeleton.
//!
//! In: a study. Out: bodies at start, hardest or strongest place and end, with lines and numbers.

use super::body_chart::BodyChart;
use super::data_table::{DataTable, figure};
use super::muscle_paths::{
    DrawnArms, MuscleEnds, MusclePath, ShownJoint, limbs_at, muscle_ends, muscle_path, shown_joints,
};
use super::sheet::{Chart, Sheet, heading};
use crate::error::{Error, FigureFault, Result};
use crate::narrative::body_words::{
    ACTIVATION, LETTERS, OTHERS, OtherMuscles, POSES, ShownPose, activation_steps, arm_in_words,
    bones_at, most_changed, muscle_heads, muscle_row, muscle_words, others_row, short_pose_title,
};
use crate::numeric::Point;
use crate::plot::{BodyMark, BodyPanel, BodyPanels, ColourKey, CommonTable, Role, StickFigure};
use crate::study::{MuscleLine, SetupStudy, Study, muscle_lines, others_nm, sample_of_peak};
use crate::units::System;

/// Muscles that have a line in a pose, each with the row of the joint that it is told at.
type ToldMuscles = Vec<(MuscleLine, usize)>;

/// Most muscles that are told apart on one limb, assumed.
const MOST_MUSCLES: usize = 4;

/// Start, end, and between them the hardest place of a load or the strongest one without; where that is an end, the middle.
pub(super) fn poses(study: &Study, setup: Option<&SetupStudy>) -> Vec<ShownPose> {
    let last = study.range.poses.len() - 1;
    let (told, what) = match setup.and_then(|setup| setup.sticking) {
        Some(sticking) => ((sticking.point_range * last as f64).round() as usize, 1),
        None => (sample_of_peak(&study.capacity.values()), 2),
    };
    let names = if told * 12 < last {
        [POSES[what], POSES[3], POSES[4]]
    } else if (last - told) * 12 < last {
        [POSES[0], POSES[3], POSES[what]]
    } else {
        [POSES[0], POSES[what], POSES[4]]
    };
    let between = if names[1] == POSES[3] { last / 2 } else { told };
    // What stands near an end is shown where it is, in that end's place.
    let end = |name: &str, sample: usize| if name == POSES[what] { told } else { sample };
    let samples = [end(names[0], 0), between, end(names[2], last)];
    let shown = samples.into_iter().zip(names);
    shown
        .map(|(sample, what)| ShownPose { sample, what })
        .collect()
}

/// Muscles on the skeleton at their moment arms.
///
/// **Fails** if no joint of the lift turns in the plane of its picture.
pub fn muscles_on_skeleton(study: &Study, units: System) -> Result<Sheet> {
    let shown = shown_joints(study);
    let rows: Vec<usize> = shown.iter().map(|joint| joint.row).collect();
    let poses = poses(study, study.setups.first());
    let samples: Vec<usize> = poses.iter().map(|pose| pose.sample).collect();
    let lines = muscle_lines(study, &rows, &samples, MOST_MUSCLES);
    let crossed = crossed_by(&shown, &lines);
    let lead = poses.len() / 2;
    // Where the large body has them, if another pose allows it.
    let there = lines[lead].iter().enumerate();
    let ends: Vec<Option<MuscleEnds>> = there
        .map(|(place, (muscle, _))| {
            muscle_ends(study, samples[lead], &shown, arms_of(muscle, place))
        })
        .collect();
    let drawn = poses
        .iter()
        .zip(&lines)
        .map(|(pose, muscles)| drawn_muscles(study, pose.sample, &shown, (muscles, &ends)));
    let drawn = drawn_everywhere(drawn.collect());
    if drawn.iter().any(Vec::is_empty) {
        return Err(Error::no_answer(FigureFault::NoJointInView));
    }
    let widest = drawn.iter().flatten().map(|one| one.muscle.force_n);
    let widest = widest.fold(f64::MIN_POSITIVE, f64::max);
    let told: Vec<ToldMuscles> = drawn
        .iter()
        .map(|muscles| {
            let each = muscles.iter();
            each.map(|one| (one.muscle.clone(), one.main)).collect()
        })
        .collect();
    let others = left_out(study, &poses, &crossed, &told);
    // Where every muscle is fully active its colour tells which it is.
    let shades = told
        .iter()
        .flatten()
        .any(|(muscle, _)| muscle.activation < ALL_ACTIVE);
    let panels = poses.iter().zip(&drawn).enumerate();
    let panels = panels.map(|(index, (pose, muscles))| {
        let limbs = limbs_at(&study.range.poses[pose.sample].outline, &crossed);
        let mut marks = muscle_marks(muscles, widest, most_changed(&told), (shades, units));
        if index == lead {
            marks.extend(joint_names(study, pose.sample, &crossed));
            marks.extend(bone_names(study, pose.sample, &crossed, &limbs));
        }
        BodyPanel {
            title: short_pose_title(study, *pose, units),
            figure: limbs_alone(&limbs),
            marks,
            table: Vec::new(),
        }
    });
    let words = muscle_words(study, &poses, &told, &others, (shades, units));
    let bodies = BodyPanels {
        heading: heading(&words),
        panels: panels.collect(),
        key: shades.then(|| ColourKey {
            title: ACTIVATION.to_owned(),
            steps: activation_steps(),
        }),
        common: Some(CommonTable {
            // Of several joints the drawing takes the room: the numbers stand in the data and in the words for those who do not see.
            table: match crossed.len() {
                0 | 1 => muscle_table(&poses, (&told, &others), units),
                _ => Vec::new(),
            },
            heads: 2,
        }),
    };
    let data = muscle_data(study, &poses, &told, &others);
    Ok(Sheet::new(
        Chart::Bodies(BodyChart { bodies, data }),
        words.caption,
    ))
}

/// The joints that these muscles cross.
fn crossed_by(shown: &[ShownJoint], lines: &[ToldMuscles]) -> Vec<ShownJoint> {
    let is_crossed = |joint: &&ShownJoint| {
        let mut muscles = lines.iter().flatten();
        muscles.any(|(muscle, _)| muscle.arms_m[joint.row].is_some())
    };
    shown.iter().filter(is_crossed).copied().collect()
}

/// A muscle with its line.
struct MuscleOnLimb {
    muscle: MuscleLine,
    main: usize,
    path: MusclePath,
}

fn arms_of(muscle: &MuscleLine, place: usize) -> DrawnArms<'_> {
    DrawnArms {
        name: &muscle.name,
        arms_m: &muscle.arms_m,
        place,
    }
}

fn drawn_muscles(
    study: &Study,
    sample: usize,
    shown: &[ShownJoint],
    (muscles, ends): (&[(MuscleLine, usize)], &[Option<MuscleEnds>]),
) -> Vec<Option<MuscleOnLimb>> {
    let each = muscles.iter().enumerate();
    let with_path = each.map(|(place, (muscle, main))| {
        let drawn = arms_of(muscle, place);
        let path = muscle_path(study, sample, shown, drawn, (*main, ends[place]))?;
        Some(MuscleOnLimb {
            muscle: muscle.clone(),
            main: *main,
            path,
        })
    });
    with_path.collect()
}

/// The muscles that have a line at every place.
fn drawn_everywhere(drawn: Vec<Vec<Option<MuscleOnLimb>>>) -> Vec<Vec<MuscleOnLimb>> {
    let count = drawn.first().map_or(0, Vec::len);
    let everywhere = |place: &usize| drawn.iter().all(|muscles| muscles[*place].is_some());
    let kept: Vec<bool> = (0..count).map(|place| everywhere(&place)).collect();
    let of = |muscles: Vec<Option<MuscleOnLimb>>| {
        let those = muscles.into_iter().zip(&kept).filter(|(_, kept)| **kept);
        those.filter_map(|(muscle, _)| muscle).collect()
    };
    drawn.into_iter().map(of).collect()
}

fn limbs_alone(limbs: &[Vec<Point>]) -> StickFigure {
    let place = |point: &Point| [point.x, point.z];
    StickFigure {
        limbs: limbs
            .iter()
            .map(|limb| limb.iter().map(place).collect())
            .collect(),
        ..StickFigure::default()
    }
}

/// An activation from here on is whole.
const ALL_ACTIVE: f64 = 0.995;
/// Width of a muscle's line that tells no force, as a share of the widest (a drawing's measure).
const THIN: f64 = 0.3;
/// An arm's end this near to a muscle's line lies on it, m.
const ON_LINE_M: f64 = 0.002;

/// Every muscle as wide as its force and in the colour of its activation, or as a thin line of its own colour where all are fully
/// active; the one of which the title tells last, with its arm, and its line of pull as far as the arm's end; letters are led to their muscles.
fn muscle_marks(
    muscles: &[MuscleOnLimb],
    widest_n: f64,
    told: usize,
    (shades, units): (bool, System),
) -> Vec<BodyMark> {
    let line = |(at, one): (usize, &MuscleOnLimb)| match shades {
        true => BodyMark::Filled {
            points: one.path.points.clone(),
            share: one.muscle.activation,
            width: one.muscle.force_n / widest_n,
            is_told: at == told,
        },
        false => BodyMark::Line {
            points: one.path.points.clone(),
            role: Role::Series(at),
            width: THIN,
        },
    };
    let others = muscles.iter().enumerate().filter(|(at, _)| *at != told);
    let told_one = muscles.iter().enumerate().filter(|(at, _)| *at == told);
    let levers = muscles.get(told).map(|one| BodyMark::Lever {
        ends: one.path.arm,
        square_to: farthest(&one.path.points, one.path.arm[1]),
        role: Role::Reference,
    });
    let drawn_on = muscles.get(told).and_then(|one| {
        let foot = one.path.arm[1];
        let off_m = |at: &[f64; 2]| (at[0] - foot[0]).hypot(at[1] - foot[1]);
        let ends = [one.path.points.first()?, one.path.points.last()?];
        let nearest = ends
            .into_iter()
            .min_by(|a, b| off_m(a).total_cmp(&off_m(b)))?;
        let is_apart = off_m(nearest) > ON_LINE_M && is_beyond(&one.path.points, foot);
        is_apart.then(|| BodyMark::Line {
            points: vec![*nearest, foot],
            role: Role::Muted,
            width: 0.0,
        })
    });
    let names = muscles.iter().zip(LETTERS).enumerate();
    let names = names.map(|(at, (one, letter))| BodyMark::Name {
        along: one.path.points.clone(),
        text: letter.to_owned(),
        is_told: at == told,
    });
    let length = muscles.get(told).map(|one| {
        let [joint, foot] = one.path.arm;
        let between =
            |share: f64| [0, 1].map(|axis| joint[axis] + share * (foot[axis] - joint[axis]));
        BodyMark::Name {
            along: [0.25, 0.5, 0.75].map(between).to_vec(),
            text: arm_in_words(&one.muscle, one.main, units),
            is_told: true,
        }
    });
    let lines = others.chain(told_one).map(line);
    let lines = lines.chain(levers).chain(drawn_on);
    lines.chain(length).chain(names).collect()
}

/// The end of a line that is farther from a place.
fn farthest(points: &[[f64; 2]], place: [f64; 2]) -> Option<[f64; 2]> {
    let off_m = |at: &[f64; 2]| (at[0] - place[0]).hypot(at[1] - place[1]);
    let ends = [points.first()?, points.last()?];
    ends.into_iter()
        .max_by(|a, b| off_m(a).total_cmp(&off_m(b)))
        .copied()
}

/// Whether a point lies before the beginning or behind the end of a line that is straight or nearly so.
fn is_beyond(points: &[[f64; 2]], at: [f64; 2]) -> bool {
    let (Some(from), Some(to)) = (points.first(), points.last()) else {
        return false;
    };
    let along = [to[0] - from[0], to[1] - from[1]];
    let square = along[0] * along[0] + along[1] * along[1];
    let share = ((at[0] - from[0]) * along[0] + (at[1] - from[1]) * along[1]) / square;
    !(0.0..=1.0).contains(&share)
}

/// The joints that the muscles cross, by name; a joint that turns about several axes once.
fn joint_names(study: &Study, sample: usize, joints: &[ShownJoint]) -> Vec<BodyMark> {
    let outline = &study.range.poses[sample].outline;
    let mut named: Vec<&str> = Vec::new();
    let mut marks = Vec::new();
    for joint in joints {
        let name = study.joint(joint.row);
        if named.contains(&name) {
            continue;
        }
        named.push(name);
        let centre = outline.centres[joint.row];
        marks.push(BodyMark::Name {
            along: vec![[centre.x, centre.z]],
            text: name.to_owned(),
            is_told: false,
        });
    }
    marks
}

/// The bones that meet at the only joint, by name beside their outer halves; none where several joints are drawn.
fn bone_names(
    study: &Study,
    sample: usize,
    joints: &[ShownJoint],
    limbs: &[Vec<Point>],
) -> Vec<BodyMark> {
    const SHARES: [f64; 3] = [0.75, 0.6, 0.9];
    let ([joint], [limb]) = (joints, limbs) else {
        return Vec::new();
    };
    let pose = &study.range.poses[sample];
    let Some(names) = bones_at(pose.coordinates[joint.row].dof.joint()) else {
        return Vec::new();
    };
    let centre = pose.outline.centres[joint.row];
    let ends = [limb.first(), limb.last()].into_iter().flatten();
    let name = |(text, end): (&str, &Point)| {
        let along = SHARES.map(|share| centre.towards(*end, share));
        BodyMark::Name {
            along: along.map(|point| [point.x, point.z]).to_vec(),
            text: text.to_owned(),
            is_told: false,
        }
    };
    names.into_iter().zip(ends).map(name).collect()
}

/// At every joint what muscles without a line make at each place; none where that is too little to be printed.
fn left_out(
    study: &Study,
    poses: &[ShownPose],
    joints: &[ShownJoint],
    told: &[ToldMuscles],
) -> Vec<OtherMuscles> {
    let at = |joint: &ShownJoint| OtherMuscles {
        row: joint.row,
        samples: poses.iter().map(|pose| pose.sample).collect(),
        moments_nm: poses
            .iter()
            .zip(told)
            .map(|(pose, told)| others_nm(study, pose.sample, joint.row, told))
            .collect(),
    };
    let is_seen = |left: &OtherMuscles| left.moments_nm.iter().any(|moment| moment.abs() >= 0.05);
    joints.iter().map(at).filter(is_seen).collect()
}

fn muscle_table(
    poses: &[ShownPose],
    (told, others): (&[ToldMuscles], &[OtherMuscles]),
    units: System,
) -> Vec<Vec<String>> {
    let mut table = muscle_heads(poses, units).to_vec();
    for ((place, (_, main)), letter) in told[0].iter().enumerate().zip(LETTERS) {
        let there: Vec<&MuscleLine> = told.iter().map(|muscles| &muscles[place].0).collect();
        table.push(muscle_row(letter, &there, *main, units));
    }
    table.extend(others.iter().map(|left| others_row(left, units)));
    table
}

fn muscle_data(
    study: &Study,
    poses: &[ShownPose],
    told: &[ToldMuscles],
    others: &[OtherMuscles],
) -> DataTable {
    let header = [
        "place",
        "muscle",
        "joint",
        "moment_arm_m",
        "force_n",
        "activation",
        "torque_nm",
    ];
    let rows = poses.iter().zip(told).flat_map(|(pose, muscles)| {
        let left = others.iter().map(|left| {
            let mut cells = vec![
                pose.what.to_lowercase(),
                OTHERS.to_owned(),
                study.joint(left.row).to_owned(),
            ];
            cells.extend([const { String::new() }; 3]);
            cells.push(figure(left.at(pose.sample)));
            cells
        });
        let named = muscles.iter().map(|(muscle, row)| {
            let arm_m = muscle.arms_m[*row].unwrap_or(0.0).abs();
            let mut cells = vec![
                pose.what.to_lowercase(),
                muscle.name.clone(),
                study.joint(*row).to_owned(),
            ];
            let numbers = [
                arm_m,
                muscle.force_n,
                muscle.activation,
                arm_m * muscle.force_n,
            ];
            cells.extend(numbers.map(figure));
            cells
        });
        named.chain(left).collect::<Vec<_>>()
    });
    DataTable {
        header: header.map(str::to_owned).to_vec(),
        rows: rows.collect(),
    }
}
