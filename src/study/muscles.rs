//! A joint's torque muscle by muscle: force, moment arm, fibre length, and what they make together.
//!
//! In: a [`Study`]. Out: [`MusclePart`]s whose torques add up to all muscle torque at the joint.

use super::question::Study;

/// What one muscle (or all heads of one) does at a joint over the range.
#[derive(Debug, Clone, PartialEq)]
pub struct MusclePart {
    /// Its name in words: "brachialis", "biceps".
    pub name: String,
    /// How many heads are taken together.
    pub heads: usize,
    /// How many muscles without a name of their own are taken together; 0 for a named one.
    pub others: usize,
    /// Moment arm in the direction of the movement, m, one a sample; of several heads the arm at which
    /// their summed force would make their summed torque.
    pub arm_m: Vec<f64>,
    /// Fibre length over the optimal length; of several heads the mean.
    pub fibre_norm: Vec<f64>,
    /// Force along the tendon at the optimum, N.
    pub force_n: Vec<f64>,
    /// Torque in the direction of the movement, N·m: force × moment arm.
    pub torque_nm: Vec<f64>,
}

impl MusclePart {
    /// Mean torque over the range, N·m.
    #[must_use]
    pub fn mean_torque_nm(&self) -> f64 {
        self.torque_nm.iter().sum::<f64>() / self.torque_nm.len().max(1) as f64
    }
}

/// The muscles at one moving joint that work with the movement, the one with the greatest mean torque
/// first; heads of one muscle are taken together.
///
/// ```text
/// τ_i = ± r_ij·F_i,   Σ_i τ_i (antagonists' passive torque included) = muscle torque at the joint
/// ```
/// `r_ij` moment arm (m), `F_i` force (N) at the optimum of the pose; the sign makes lifting positive.
/// **Source.** Definition of a moment. **Fails.** Never.
#[must_use]
pub fn muscle_parts(study: &Study, joint: usize) -> Vec<MusclePart> {
    let lifting = lifting_sign(study, joint);
    let mut parts: Vec<MusclePart> = families_at(study, joint)
        .iter()
        .map(|heads| part(study, joint, lifting, heads))
        .filter(|part| part.mean_torque_nm() > 0.0)
        .collect();
    parts.sort_by(|a, b| b.mean_torque_nm().total_cmp(&a.mean_torque_nm()));
    parts
}

/// Every muscle that turns a moving joint by itself, the one with the greatest mean torque either way first; heads
/// are not taken together, so that `arm_m` is a moment arm and `name` the model's own.
///
/// ```text
/// r_i = ± r_ij,   τ_i = r_i·F_i
/// ```
/// `r_ij` moment arm (m), `F_i` force (N) at the optimum of the pose; the sign makes lifting positive, as in
/// [`muscle_parts`]. **Source.** Definition of a moment. **Fails.** Never.
#[must_use]
pub fn muscle_heads(study: &Study, joint: usize) -> Vec<MusclePart> {
    let lifting = lifting_sign(study, joint);
    let names = study.capacity.muscles.iter().enumerate();
    let mut parts: Vec<MusclePart> = names
        .map(|(index, name)| MusclePart {
            name: name.clone(),
            ..part(study, joint, lifting, &[index])
        })
        .filter(|part| mean_size_nm(part) > 0.0)
        .collect();
    parts.sort_by(|a, b| mean_size_nm(b).total_cmp(&mean_size_nm(a)));
    parts
}

/// Mean torque over the range whichever way it turns, N·m.
fn mean_size_nm(part: &MusclePart) -> f64 {
    let sizes = part.torque_nm.iter().map(|torque| torque.abs());
    sizes.sum::<f64>() / part.torque_nm.len().max(1) as f64
}

/// Muscles of several heads or parts, by what the names of their heads begin with; every other name is a muscle of its own.
///
/// **Source.** Terminologia Anatomica (from memory).
const IN_HEADS: [&str; 8] = [
    "biceps_femoris_",
    "biceps_",
    "triceps_",
    "gastrocnemius_",
    "vastus_",
    "pectoralis_",
    "deltoid_",
    "latissimus_",
];

/// The acting muscles: heads of one muscle stand together, different muscles never.
pub(super) fn families(study: &Study) -> Vec<Vec<usize>> {
    let mut groups: Vec<(&str, Vec<usize>)> = Vec::new();
    for (index, name) in study.capacity.muscles.iter().enumerate() {
        let begins = IN_HEADS.into_iter().find(|begin| name.starts_with(begin));
        let family = begins.unwrap_or(name);
        match groups.iter_mut().find(|(known, _)| *known == family) {
            Some((_, heads)) => heads.push(index),
            None => groups.push((family, vec![index])),
        }
    }
    groups.into_iter().map(|(_, heads)| heads).collect()
}

/// The same with only those heads that turn a coordinate by themselves.
pub(super) fn families_at(study: &Study, coordinate: usize) -> Vec<Vec<usize>> {
    let own = families(study)
        .into_iter()
        .map(|heads| heads_at(study, coordinate, &heads));
    own.filter(|heads| !heads.is_empty()).collect()
}

/// Those of some heads that have a moment arm about a coordinate anywhere in the range.
pub(super) fn heads_at(study: &Study, coordinate: usize, heads: &[usize]) -> Vec<usize> {
    let acts = |head: &usize| {
        let mut held = study.capacity.held.iter();
        held.any(|held| held.muscles[*head].arms_m[coordinate] != 0.0)
    };
    heads.iter().copied().filter(acts).collect()
}

/// The sign of the torque that the muscles make against the load at a moving joint over the range as a whole.
#[must_use]
pub fn lifting_sign(study: &Study, joint: usize) -> f64 {
    let sum: f64 = study
        .capacity
        .held
        .iter()
        .map(|held| held.muscle_torques_nm[joint])
        .sum();
    sum.signum()
}

fn part(study: &Study, joint: usize, lifting: f64, heads: &[usize]) -> MusclePart {
    let mut part = MusclePart {
        name: name_of(study, heads),
        heads: heads.len(),
        others: 0,
        arm_m: Vec::new(),
        fibre_norm: Vec::new(),
        force_n: Vec::new(),
        torque_nm: Vec::new(),
    };
    for held in &study.capacity.held {
        let (mut force_n, mut torque_nm, mut arm_m, mut fibre) = (0.0, 0.0, 0.0, 0.0);
        for head in heads {
            let muscle = &held.muscles[*head];
            let own_n = muscle.passive_n + held.activations[*head] * muscle.active_n;
            let own_m = lifting * muscle.arms_m[joint];
            force_n += own_n;
            torque_nm += own_n * own_m;
            arm_m += own_m / heads.len() as f64;
            fibre += muscle.state.length_norm / heads.len() as f64;
        }
        let has_force = force_n > 1.0e-9;
        part.arm_m.push(if has_force {
            torque_nm / force_n
        } else {
            arm_m
        });
        part.fibre_norm.push(fibre);
        part.force_n.push(force_n);
        part.torque_nm.push(torque_nm);
    }
    part
}

/// The words that the names of all heads begin with.
pub(super) fn name_of(study: &Study, heads: &[usize]) -> String {
    let names: Vec<Vec<&str>> = heads
        .iter()
        .map(|head| study.capacity.muscles[*head].split('_').collect())
        .collect();
    let first = &names[0];
    let shared = (0..first.len())
        .take_while(|word| names.iter().all(|name| name.get(*word) == first.get(*word)))
        .count();
    first[..shared].join(" ")
}

/// How much more a lift would hold at every sample with 1 % more moment of the muscles at a joint, %.
///
/// ```text
/// g = |Σ y_j·τ_j|/λ      over the coordinates j of the joint
/// ```
/// `y` gain of the capacity `λ` per N·m more, `τ` moment of all muscles (N·m). The greatest names the joint that gives way
/// first. **Fails.** Never; 0 where nothing is held.
#[must_use]
pub fn joint_gain(study: &Study, joint: &str) -> Vec<f64> {
    let held = study.capacity.held.iter();
    held.map(|held| {
        let own = (0..held.duals.len()).filter(|row| study.joint(*row) == joint);
        let gain: f64 = own
            .map(|row| held.duals[row] * held.muscle_torques_nm[row])
            .sum();
        if held.capacity > 0.0 {
            gain.abs() / held.capacity
        } else {
            0.0
        }
    })
    .collect()
}
