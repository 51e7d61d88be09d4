//! How many linear programmes of a pose's size are solved per second, cold and from the last basis.

use criterion::{BatchSize, Criterion, Throughput, criterion_group, criterion_main};
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use std::hint::black_box;
use torquill::numeric::{Programme, SimplexBasis, solve};

/// Poses in one measured sweep.
const POSES: usize = 256;
/// Rows, boxed columns, free columns.
const SIZES: [(usize, usize, usize); 4] = [(4, 15, 4), (3, 15, 1), (2, 8, 1), (1, 8, 1)];

/// A sweep of poses whose coefficients drift like sines; every pose has an optimum.
fn sweep(rows: usize, boxed: usize, free: usize) -> Vec<Programme> {
    let mut rng = ChaCha8Rng::seed_from_u64(1);
    loop {
        let mut number = || 2.0 * rng.random::<f64>() - 1.0;
        let table: Vec<Vec<[f64; 2]>> = (0..boxed + free)
            .map(|_| (0..rows).map(|_| [number(), 3.0 * number()]).collect())
            .collect();
        let costs: Vec<f64> = (0..boxed).map(|_| number()).collect();
        let poses: Vec<Programme> = (0..POSES)
            .map(|k| pose(&table, &costs, k as f64 / POSES as f64))
            .collect();
        if poses.iter().all(|pose| solve(pose, None).is_ok()) {
            return poses;
        }
    }
}

fn pose(table: &[Vec<[f64; 2]>], costs: &[f64], s: f64) -> Programme {
    let rows = table[0].len();
    let mut programme = Programme::new(rows).expect("a size from the list");
    let mut right_side = vec![0.0; rows];
    for (j, column) in table.iter().enumerate() {
        let coefficients: Vec<f64> = column
            .iter()
            .map(|[size, phase]| size * (phase + s).sin())
            .collect();
        let (cost, lower, upper) = match costs.get(j) {
            Some(&cost) => (cost, 0.0, 1.0),
            None => (0.0, f64::NEG_INFINITY, f64::INFINITY),
        };
        for (right, a) in right_side.iter_mut().zip(&coefficients) {
            *right += 0.4 * a;
        }
        programme
            .add_column(cost, lower, upper, &coefficients)
            .expect("few columns, finite numbers");
    }
    programme
        .set_right_side(&right_side)
        .expect("one number a row");
    programme
}

fn cold(poses: &[Programme]) -> f64 {
    let first = |pose| solve(pose, None).expect("solved before").values()[0];
    poses.iter().map(first).sum()
}

fn warm(poses: &[Programme]) -> f64 {
    let mut basis: Option<SimplexBasis> = None;
    let mut sum = 0.0;
    for pose in poses {
        let best = solve(pose, basis.as_ref()).expect("solved before");
        sum += best.values()[0];
        basis = Some(*best.basis());
    }
    sum
}

fn solves(criterion: &mut Criterion) {
    for (rows, boxed, free) in SIZES {
        let poses = sweep(rows, boxed, free);
        let mut group = criterion.benchmark_group(format!("{rows} rows, {boxed} + {free} columns"));
        group.throughput(Throughput::Elements(POSES as u64));
        group.bench_function("cold", |bench| bench.iter(|| cold(black_box(&poses))));
        group.bench_function("warm", |bench| bench.iter(|| warm(black_box(&poses))));
        group.finish();
    }
}

/// Filling a programme again in the same memory.
fn refills(criterion: &mut Criterion) {
    let columns: Vec<[f64; 4]> = (0..19).map(|j| [1.0, 0.5, 0.25, f64::from(j)]).collect();
    criterion.bench_function("refill 4 rows, 19 columns", |bench| {
        bench.iter_batched_ref(
            || Programme::new(4).expect("four rows"),
            |programme| {
                programme.clear(4).expect("four rows");
                for column in &columns {
                    let added = programme.add_column(1.0, 0.0, 1.0, black_box(column));
                    black_box(added.expect("19 columns fit"));
                }
            },
            BatchSize::SmallInput,
        );
    });
}

criterion_group!(benches, solves, refills);
criterion_main!(benches);
