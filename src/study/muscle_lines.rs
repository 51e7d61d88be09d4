//! What each muscle does at one pose, about every joint it crosses: what a drawing of the muscles shows.
//!
//! In: a study. Out: the muscles with the greatest moments, the same ones at every sample.

use super::muscles::{families, heads_at, lifting_sign, name_of};
use super::question::Study;

/// One muscle, or the heads of one, at one sample.
#[derive(Debug, Clone, PartialEq)]
pub struct MuscleLine {
    /// Its name in words.
    pub name: String,
    /// How many heads are taken together.
    pub heads: usize,
    /// Force along the tendon at the optimum, N.
    pub force_n: f64,
    /// Activation, 0 to 1; of several heads the mean, each counted by its peak force.
    pub activation: f64,
    /// Moment arm about every coordinate, m; of several heads the arm at which their force makes their moment. `None`
    /// where no head crosses it.
    pub arms_m: Vec<Option<f64>>,
}

impl MuscleLine {
    /// Its moment about a coordinate, N·m.
    #[must_use]
    pub fn moment_nm(&self, coordinate: usize) -> f64 {
        self.force_n * self.arms_m[coordinate].unwrap_or(0.0)
    }
}

/// A muscle with less than this share of the greatest mean moment is left out, assumed.
const LEAST_SHARE: f64 = 0.1;

/// The muscles with the greatest mean moment about `coordinates`, at most so many, for every one of `samples`; each
/// with the coordinate about which its mean moment is greatest.
#[must_use]
pub fn muscle_lines(
    study: &Study,
    coordinates: &[usize],
    samples: &[usize],
    most: usize,
) -> Vec<Vec<(MuscleLine, usize)>> {
    let mut groups: Vec<(f64, usize, Vec<usize>)> = families(study)
        .into_iter()
        .filter_map(|heads| {
            let moment = |row: &usize| (mean_moment_nm(study, *row, &heads), *row);
            let moments = coordinates.iter().map(moment);
            let (moment_nm, main) = moments.max_by(|a, b| a.0.total_cmp(&b.0))?;
            Some((moment_nm, main, heads_at(study, main, &heads)))
        })
        .collect();
    groups.sort_by(|a, b| b.0.total_cmp(&a.0));
    groups.truncate(most);
    let greatest_nm = groups.first().map_or(0.0, |group| group.0);
    groups.retain(|group| group.0 > LEAST_SHARE * greatest_nm);
    samples
        .iter()
        .map(|sample| {
            let lines = groups.iter();
            lines
                .map(|(_, main, heads)| (line(study, *sample, heads), *main))
                .collect()
        })
        .collect()
}

/// Moment of all muscles about a coordinate that have no line of their own there, N·m, positive as the muscles lift.
#[must_use]
pub fn others_nm(
    study: &Study,
    sample: usize,
    coordinate: usize,
    told: &[(MuscleLine, usize)],
) -> f64 {
    let own = told.iter().filter(|(_, main)| *main == coordinate);
    let told_nm: f64 = own.map(|(muscle, _)| muscle.moment_nm(coordinate)).sum();
    let all_nm = study.capacity.held[sample].muscle_torques_nm[coordinate];
    lifting_sign(study, coordinate) * (all_nm - told_nm)
}

fn mean_moment_nm(study: &Study, row: usize, heads: &[usize]) -> f64 {
    let samples = 0..study.capacity.held.len();
    let moments = samples.map(|sample| line(study, sample, heads).moment_nm(row).abs());
    moments.sum::<f64>() / study.capacity.held.len() as f64
}

fn line(study: &Study, sample: usize, heads: &[usize]) -> MuscleLine {
    let held = &study.capacity.held[sample];
    let rows = held.muscle_torques_nm.len();
    let (mut force_n, mut peak_n, mut used_n) = (0.0, 0.0, 0.0);
    let mut moments_nm = vec![0.0; rows];
    let mut arms = vec![(0.0, 0_usize); rows];
    for head in heads {
        let muscle = &held.muscles[*head];
        let activation = held.activations[*head];
        let own_n = muscle.passive_n + activation * muscle.active_n;
        force_n += own_n;
        peak_n += study.capacity.peak_forces_n[*head];
        used_n += activation * study.capacity.peak_forces_n[*head];
        for (row, arm_m) in muscle.arms_m.iter().enumerate() {
            moments_nm[row] += own_n * arm_m;
            if *arm_m != 0.0 {
                arms[row] = (arms[row].0 + arm_m, arms[row].1 + 1);
            }
        }
    }
    let arm = |(row, (sum_m, crossing)): (usize, &(f64, usize))| {
        (*crossing > 0).then(|| match force_n > 1.0e-9 {
            true => moments_nm[row] / force_n,
            false => sum_m / *crossing as f64,
        })
    };
    MuscleLine {
        name: name_of(study, heads),
        heads: heads.len(),
        force_n,
        activation: used_n / peak_n.max(f64::MIN_POSITIVE),
        arms_m: arms.iter().enumerate().map(arm).collect(),
    }
}
