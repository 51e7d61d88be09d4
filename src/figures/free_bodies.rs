//! A lift as a free body: what pulls and pushes at three poses, and what every joint holds.
//!
//! In: a study. Out: bodies at start, hardest place and end, with arrows, levers and numbers.

use super::body_chart::BodyChart;
use super::body_drawings::poses;
use super::body_lines::stick_figure;
use super::data_table::{DataTable, figure};
use super::muscle_paths::shown_joints;
use super::sheet::{Chart, Sheet, heading};
use crate::anatomy::Dof;
use crate::narrative::body_words::{ShownPose, short_pose_title};
use crate::narrative::free_body_words::{
    HEAVIEST, LEAST_DRAWN_M, free_body_words, free_head, free_row, holders, joint_name,
    printed_moments,
};
use crate::numeric::Point;
use crate::plot::{BodyMark, BodyPanel, BodyPanels, Role};
use crate::study::{FreeBody, Study};
use crate::units::System;

/// Most joints in the table of a free body.
const MOST_JOINTS: usize = 5;
/// A moment arm that a title may tell of is longer somewhere, m (a drawing's measure).
const LEAST_TOLD_M: f64 = 0.01;
/// Length of the longest arrow, m in the picture (a drawing's measure): what the floor pushes up and what the body weighs, on
/// nearly one line, end below and begin above each other.
const LONGEST_M: f64 = 0.36;

/// The lift as a free body, under its first setup or under the most that it can hold.
#[must_use]
pub fn free_bodies(study: &Study, units: System) -> Sheet {
    let setup = study.setups.first();
    let load = setup.map_or_else(
        || HEAVIEST.to_owned(),
        |setup| study.told(units).setup_name(setup),
    );
    let poses = poses(study, setup);
    let bodies: Vec<FreeBody> = poses
        .iter()
        .map(|pose| FreeBody::of(study, setup, pose.sample))
        .collect();
    let shown = shown_joints(study);
    let shown: Vec<usize> = shown.iter().map(|joint| joint.row).collect();
    let rows = told_joints(&bodies, &shown);
    let longest_n = bodies
        .iter()
        .map(greatest_n)
        .fold(f64::MIN_POSITIVE, f64::max);
    let panels = poses.iter().zip(&bodies).map(|(pose, body)| {
        let mut table = vec![free_head(body, units)];
        table.extend(
            rows.iter()
                .map(|row| free_row(&body.joints[*row], body.bench.is_some(), units)),
        );
        BodyPanel {
            title: short_pose_title(study, *pose, units),
            figure: stick_figure(&study.range.poses[pose.sample], study.range.carrier),
            marks: free_marks(
                body,
                &rows,
                longest_n,
                &study.range.poses[pose.sample].outline.limbs,
            ),
            table,
        }
    });
    // The middle pose is the hardest or strongest one, unless that is an end.
    let hardest = bodies.len() / 2;
    let held = |row: &&usize| bodies[hardest].joints[**row].held_nm;
    // A joint that the load passes through has no moment arm to tell of.
    let has_arm = |row: &&usize| {
        let mut levers = bodies.iter().map(|body| body.joints[**row].lever_m);
        levers.any(|lever_m| lever_m > LEAST_TOLD_M)
    };
    let told = rows
        .iter()
        .filter(has_arm)
        .max_by(|a, b| held(a).total_cmp(&held(b)))
        .copied()
        .or_else(|| rows.first().copied())
        .unwrap_or(0);
    let words = free_body_words(study, &load, &poses, &bodies, &rows, told, units);
    let bodies_drawn = BodyPanels {
        heading: heading(&words),
        panels: panels.collect(),
        ..BodyPanels::default()
    };
    let data = free_data(&poses, &bodies, &rows, units);
    Sheet::new(
        Chart::Bodies(BodyChart {
            bodies: bodies_drawn,
            data,
        }),
        words.caption,
    )
}

/// The joints that hold most over the shown places, in the order of their coordinates.
fn told_joints(bodies: &[FreeBody], shown: &[usize]) -> Vec<usize> {
    let most = |row: &usize| {
        let held = bodies.iter().map(|body| body.joints[*row].held_nm);
        held.fold(0.0, f64::max)
    };
    let all: Vec<usize> = (0..bodies[0].joints.len()).collect();
    let mut rows = if shown.is_empty() {
        all
    } else {
        shown.to_vec()
    };
    rows.sort_by(|a, b| most(b).total_cmp(&most(a)));
    rows.truncate(MOST_JOINTS);
    rows.sort_unstable();
    rows
}

/// The greatest force that is drawn, N.
fn greatest_n(body: &FreeBody) -> f64 {
    let floor = body
        .floor
        .map_or(0.0, |floor| floor.force_n.hypot(floor.along_n));
    let bench = body.bench.map_or(0.0, |bench| bench.force.magnitude_n());
    body.through.magnitude_n().max(floor).max(bench)
}

fn free_marks(
    body: &FreeBody,
    rows: &[usize],
    longest_n: f64,
    limbs: &[Vec<Point>],
) -> Vec<BodyMark> {
    let per_n = LONGEST_M / longest_n;
    let mut levers = Vec::new();
    let mut aside = 0;
    for joint in rows.iter().map(|row| &body.joints[*row]) {
        if let Some(foot) = joint.foot.filter(|_| joint.lever_m >= LEAST_DRAWN_M) {
            levers.extend(lever_marks(joint.centre, foot, body, limbs, &mut aside));
        }
    }
    let at = [body.at.x, body.at.z];
    // As far as the levers that are drawn; where none is, past all joints.
    let drawn = levers.iter().filter_map(|mark| match mark {
        BodyMark::Lever { ends, .. } => Some(Point::new(ends[1][0], ends[1][1])),
        _ => None,
    });
    let feet: Vec<Point> = match levers.is_empty() {
        true => rows
            .iter()
            .filter_map(|row| body.joints[*row].foot)
            .collect(),
        false => drawn.collect(),
    };
    let feet = feet.into_iter();
    let far = feet.max_by(|a, b| (*a - body.at).length().total_cmp(&(*b - body.at).length()));
    let mut marks = Vec::new();
    if let Some(far) = far {
        marks.push(BodyMark::Lever {
            ends: [at, [far.x, far.z]],
            square_to: None,
            role: Role::DEMAND,
        });
    }
    let through = body.through;
    let tip = [at[0] + per_n * through.x_n, at[1] + per_n * through.z_n];
    marks.push(BodyMark::Arrow {
        ends: [at, tip],
        role: Role::DEMAND,
    });
    if let Some(floor) = body.floor {
        let tip = [floor.at_m + per_n * floor.along_n, per_n * floor.force_n];
        marks.push(BodyMark::Arrow {
            ends: [[floor.at_m, 0.0], tip],
            role: Role::CAPACITY,
        });
        // The body's weight begins at the height of the hip, which is about that of its centre.
        let hip = body.joints.iter().find(|joint| joint.dof == Dof::Hip);
        let height_m = hip.map_or(LONGEST_M, |joint| joint.centre.z);
        let ends = [height_m, height_m - per_n * floor.body_n].map(|z| [floor.body_at_m, z]);
        marks.push(BodyMark::Arrow {
            ends,
            role: Role::Series(2),
        });
    }
    if let Some(bench) = body.bench {
        let (at, force) = ([bench.at.x, bench.at.z], bench.force);
        let tip = [at[0] + per_n * force.x_n, at[1] + per_n * force.z_n];
        marks.push(BodyMark::Arrow {
            ends: [at, tip],
            role: Role::CAPACITY,
        });
    }
    // The figure tells of the levers: no arrow hides one.
    marks.extend(levers);
    marks.extend(rows.iter().map(|row| {
        let joint = &body.joints[*row];
        BodyMark::Point {
            at: [joint.centre.x, joint.centre.z],
            text: String::new(),
            role: Role::Reference,
        }
    }));
    marks
}

/// How close to a limb a lever is not told from it, and how far from it it is drawn, m (a drawing's measures).
const HIDDEN_M: f64 = 0.04;
const ASIDE_M: f64 = 0.09;
const STEP_M: f64 = 0.06;

/// A lever from a joint to the load's line of action; one that would lie upon a limb is moved along that line, with a thin
/// line from the joint to where it is drawn.
fn lever_marks(
    centre: Point,
    foot: Point,
    body: &FreeBody,
    limbs: &[Vec<Point>],
    moved: &mut usize,
) -> Vec<BodyMark> {
    let lever = |from: Point, to: Point| BodyMark::Lever {
        ends: [from, to].map(|point| [point.x, point.z]),
        square_to: None,
        role: Role::Reference,
    };
    let middle = (centre + foot) * 0.5;
    let mut pieces = limbs.iter().flat_map(|limb| limb.windows(2));
    let is_hidden = (foot - centre).length() > ASIDE_M
        && pieces.any(|ends| distance_m(middle, ends[0], ends[1]) < HIDDEN_M);
    if !is_hidden {
        return vec![lever(centre, foot)];
    }
    let force = Point::new(body.through.x_n, body.through.z_n);
    // Each further one that is moved goes a step farther, so that two never read as one.
    let far_m = ASIDE_M + STEP_M * *moved as f64;
    *moved += 1;
    let aside = force * (far_m / force.length().max(f64::MIN_POSITIVE));
    let led = [centre, centre + aside].map(|point| [point.x, point.z]);
    vec![
        BodyMark::Line {
            points: led.to_vec(),
            role: Role::Muted,
            width: 0.0,
        },
        lever(centre + aside, foot + aside),
    ]
}

/// Distance of a point from a straight piece, m.
fn distance_m(point: Point, from: Point, to: Point) -> f64 {
    let way = to - from;
    let share = (point - from).dot(way) / way.dot(way).max(f64::MIN_POSITIVE);
    (point - (from + way * share.clamp(0.0, 1.0))).length()
}

fn free_data(poses: &[ShownPose], bodies: &[FreeBody], rows: &[usize], units: System) -> DataTable {
    let header = [
        "place",
        "joint",
        "load_n",
        "lever_m",
        "load_nm",
        "pushed_nm",
        "limbs_nm",
        "held_nm",
        "printed_load",
        "printed_pushed",
        "printed_limbs",
        "printed_held",
        "held_by",
        "effort",
        "load_alone_n",
        "push_nm",
    ];
    let cells = poses.iter().zip(bodies).flat_map(|(pose, body)| {
        rows.iter().map(|row| {
            let joint = &body.joints[*row];
            let mut cells = vec![pose.what.to_lowercase(), joint_name(joint.dof).to_owned()];
            let numbers = [
                body.through_n,
                joint.lever_m,
                joint.load_nm,
                joint.pushed_nm,
                joint.limbs_nm,
                joint.held_nm,
            ];
            cells.extend(numbers.map(figure));
            cells.extend(printed_moments(joint, units).map(figure));
            cells.push(holders(joint).1.to_owned());
            cells.extend([body.effort, body.load.magnitude_n(), joint.push_nm].map(figure));
            cells
        })
    });
    DataTable {
        header: header.map(str::to_owned).to_vec(),
        rows: cells.collect(),
    }
}
