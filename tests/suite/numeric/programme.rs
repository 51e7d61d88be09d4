//! The linear programme against answers by hand, its own optimality conditions and another solver.

use super::optimality::{Instance, residuals};
use super::{assert_near, seeded};
use rand::RngExt;
use rand_chacha::ChaCha8Rng;
use torquill::numeric::{Failure, MAX_COLUMNS, MAX_ROWS, Programme, Solution, solve};

const INF: f64 = f64::INFINITY;

fn uniform(rng: &mut ChaCha8Rng, low: f64, high: f64) -> f64 {
    low + (high - low) * rng.random::<f64>()
}

/// A random programme: boxed, one-sided, free and fixed columns, now and then a redundant or an
/// impossible row.
fn random_instance(rng: &mut ChaCha8Rng, rows: usize, boxed: usize, free: usize) -> Instance {
    let mut columns = Vec::new();
    let mut inside = Vec::new();
    for j in 0..boxed + free {
        let (lower, upper) = match rng.random_range(0..20) {
            _ if j >= boxed => (-INF, INF),
            0 => (0.5, 0.5),
            1 => (0.0, INF),
            2 => (-INF, 1.0),
            3 => (-2.0, 3.0),
            _ => (0.0, 1.0),
        };
        let low = if lower == -INF { -3.0 } else { lower };
        let high = if upper == INF { 3.0 } else { upper };
        inside.push(uniform(rng, low, high));
        let coefficients = (0..rows)
            .map(|_| {
                if rng.random_range(0..4) == 0 {
                    0.0
                } else {
                    uniform(rng, -1.0, 1.0)
                }
            })
            .collect();
        // Most free columns cost nothing, or most programmes would have no limit.
        let worthless = if j < boxed { 2 } else { 7 };
        let cost = if rng.random_range(0..9) <= worthless {
            0.0
        } else {
            uniform(rng, -1.0, 1.0)
        };
        columns.push((cost, lower, upper, coefficients));
    }
    let mut instance = Instance {
        right_side: vec![0.0; rows],
        columns,
    };
    if rows > 1 && rng.random_range(0..10) == 0 {
        // Powers of two, so that the row is redundant to the last digit.
        let factor = [0.5, 2.0, -4.0][rng.random_range(0..3)];
        for column in &mut instance.columns {
            column.3[rows - 1] = factor * column.3[0];
        }
    }
    for row in 0..rows {
        let terms = instance.columns.iter().zip(&inside);
        instance.right_side[row] = terms.map(|(column, x)| column.3[row] * x).sum();
    }
    if rng.random_range(0..25) == 0 {
        instance.right_side[rows - 1] += 30.0;
    }
    instance
}

fn assert_optimal(instance: &Instance, solution: &Solution) {
    let found = residuals(instance, solution);
    assert!(found.worst() < 1e-9, "{found:?} on {instance:?}");
    let dual_objective: f64 = instance
        .right_side
        .iter()
        .zip(solution.duals())
        .map(|(b, y)| b * y)
        .sum::<f64>()
        + instance
            .reduced_costs(solution.duals())
            .iter()
            .zip(solution.values())
            .map(|(d, x)| d * x)
            .sum::<f64>();
    assert_near(dual_objective, instance.objective(solution), 1e-9);
}

#[test]
fn law_programme_agrees_with_another_solver_on_random_instances() {
    let mut rng = seeded(1);
    let (mut solved, mut infeasible, mut unbounded) = (0, 0, 0);
    for _ in 0..10_000 {
        let rows = rng.random_range(1..=4);
        let boxed = rng.random_range(3..=15);
        let free = rng.random_range(0..=4);
        let instance = random_instance(&mut rng, rows, boxed, free);
        match (solve(&instance.programme(), None), instance.reference()) {
            (Ok(solution), Ok(objective)) => {
                solved += 1;
                assert_near(instance.objective(&solution), objective, 1e-9);
                assert_optimal(&instance, &solution);
            }
            (Err(Failure::Infeasible), Err(microlp::Error::Infeasible)) => infeasible += 1,
            (Err(Failure::Unbounded), Err(microlp::Error::Unbounded)) => unbounded += 1,
            (ours, theirs) => panic!("{ours:?} against {theirs:?} on {instance:?}"),
        }
    }
    println!("{solved} solved, {infeasible} infeasible, {unbounded} unbounded");
    assert!(solved > 7000 && infeasible > 100 && unbounded > 500);
}

/// Rows that repeat others but for rounding: such programmes are where solvers lose their way.
#[test]
fn law_rows_redundant_but_for_rounding_give_verified_answers() {
    let mut rng = seeded(6);
    let mut solved = 0;
    for _ in 0..2000 {
        let rows = rng.random_range(3..=6);
        let mut instance = random_instance(&mut rng, rows, 14, 2);
        let (f, g) = (uniform(&mut rng, -2.0, 2.0), uniform(&mut rng, -2.0, 2.0));
        for column in &mut instance.columns {
            column.3[rows - 1] = f * column.3[0] + g * column.3[1];
        }
        let right = &mut instance.right_side;
        right[rows - 1] = f * right[0] + g * right[1];
        match solve(&instance.programme(), None) {
            Ok(solution) => {
                solved += 1;
                assert_optimal(&instance, &solution);
            }
            Err(failure) => assert_ne!(failure, Failure::Stalled, "{instance:?}"),
        }
    }
    assert!(solved > 1000, "only {solved} had an optimum");
}

/// Small whole numbers make ties at every step: the order of the columns must not matter.
#[test]
fn law_ties_do_not_mislead_the_solver() {
    let mut rng = seeded(8);
    let (mut solved, mut without) = (0, 0);
    for _ in 0..5000 {
        let rows = rng.random_range(1..=8);
        let mut instance = random_instance(&mut rng, rows, 12, 2);
        instance.right_side.fill(0.0);
        for (cost, lower, upper, coefficients) in &mut instance.columns {
            *cost = f64::from(rng.random_range(-3..=3));
            coefficients
                .iter_mut()
                .for_each(|a| *a = f64::from(rng.random_range(-2..=2)));
            if rng.random_range(0..8) == 0 {
                (*lower, *upper) = (-1000.0, 1000.0);
            }
            // A point on as many bounds as may be, so that an answer exists.
            let inside = lower.max(-1.0).min(*upper);
            for (right, a) in instance.right_side.iter_mut().zip(coefficients) {
                *right += *a * inside;
            }
        }
        let mut turned = instance.clone();
        turned.columns.reverse();
        match (
            solve(&instance.programme(), None),
            solve(&turned.programme(), None),
        ) {
            (Ok(one), Ok(other)) => {
                solved += 1;
                assert_near(instance.objective(&one), turned.objective(&other), 1e-9);
                assert_optimal(&instance, &one);
                assert_optimal(&turned, &other);
            }
            (one, other) => {
                without += 1;
                assert_eq!(one.err(), Some(Failure::Unbounded), "{instance:?}");
                assert_eq!(other.err(), Some(Failure::Unbounded), "{instance:?}");
            }
        }
    }
    assert!(solved > 1500 && without > 500, "{solved}, {without}");
}

#[test]
fn law_programme_of_full_size_agrees_with_another_solver() {
    let mut rng = seeded(2);
    let mut solved = 0;
    for _ in 0..300 {
        let rows = rng.random_range(5..=MAX_ROWS);
        let free = rng.random_range(0..=5);
        let instance = random_instance(&mut rng, rows, MAX_COLUMNS - free, free);
        match (solve(&instance.programme(), None), instance.reference()) {
            (Ok(solution), Ok(objective)) => {
                solved += 1;
                assert_near(instance.objective(&solution), objective, 1e-9);
                assert_optimal(&instance, &solution);
            }
            (Err(Failure::Infeasible), Err(microlp::Error::Infeasible))
            | (Err(Failure::Unbounded), Err(microlp::Error::Unbounded)) => {}
            (ours, theirs) => panic!("{ours:?} against {theirs:?} on {instance:?}"),
        }
    }
    assert!(solved > 200, "only {solved} had an optimum");
}

/// A programme whose numbers drift along a sweep, as a pose does: muscles in newton metres, free
/// reactions in newtons, a load factor to be maximised.
fn pose(rows: usize, s: f64) -> Instance {
    let muscle = |j: usize, i: usize| {
        let phase = (j * 7 + i * 3) as f64;
        let size = 20.0 + 15.0 * ((j * 5 + i) % 7) as f64;
        size * (phase + 1.3 * s + 0.2 * i as f64 * s).sin()
    };
    let mut columns: Vec<_> = (0..15)
        .map(|j| {
            (
                -1e-5 * (1.0 + j as f64),
                0.0,
                1.0,
                (0..rows).map(|i| muscle(j, i)).collect(),
            )
        })
        .collect();
    for k in 0..3 {
        let arm = |i: usize| 0.3 * ((k + 2 * i) as f64 + 0.5 * s).cos();
        columns.push((-1e-7, -400.0, 400.0, (0..rows).map(arm).collect()));
    }
    let load = |i: usize| -0.35 * (1.0 + 0.3 * (i as f64 + s).sin());
    columns.push((1.0, 0.0, INF, (0..rows).map(load).collect()));
    Instance {
        right_side: (0..rows).map(|i| 8.0 * (s + i as f64).sin()).collect(),
        columns,
    }
}

#[test]
fn law_warm_start_gives_the_cold_objective() {
    let (mut answers, mut idle_answers, mut failures) = (0, 0, 0);
    for rows in 1..=4 {
        let mut basis = None;
        for step in 0..=400 {
            let instance = pose(rows, step as f64 / 400.0);
            let programme = instance.programme();
            let (cold, warm) = (solve(&programme, None), solve(&programme, basis.as_ref()));
            match (cold, warm) {
                (Ok(cold), Ok(warm)) => {
                    assert_near(instance.objective(&warm), instance.objective(&cold), 1e-9);
                    assert_optimal(&instance, &warm);
                    answers += 1;
                    idle_answers += usize::from(basis.as_ref() == Some(warm.basis()));
                    basis = Some(*warm.basis());
                }
                (Err(cold), Err(warm)) => {
                    assert_eq!(cold, warm);
                    failures += 1;
                }
                (cold, warm) => panic!("cold {cold:?}, warm {warm:?}"),
            }
        }
    }
    println!("{answers} answers, {idle_answers} without a step, {failures} without an answer");
    assert!(
        answers > 1400 && idle_answers > 1300,
        "{answers}, {idle_answers}"
    );
}

#[test]
fn law_warm_start_from_any_basis_gives_the_cold_answer() {
    let mut rng = seeded(3);
    let mut answers = 0;
    for _ in 0..500 {
        let first = random_instance(&mut rng, 3, 10, 2);
        let second = random_instance(&mut rng, 3, 10, 2);
        let Ok(old) = solve(&first.programme(), None) else {
            continue;
        };
        let programme = second.programme();
        let (cold, warm) = (
            solve(&programme, None),
            solve(&programme, Some(old.basis())),
        );
        match (cold, warm) {
            (Ok(cold), Ok(warm)) => {
                assert_near(second.objective(&warm), second.objective(&cold), 1e-9);
                assert_optimal(&second, &warm);
                answers += 1;
            }
            (cold, warm) => assert_eq!(cold.err(), warm.err()),
        }
    }
    assert!(answers > 150, "only {answers} had an optimum");
}

#[test]
fn law_units_do_not_change_the_optimum() {
    let mut rng = seeded(4);
    for _ in 0..500 {
        let instance = random_instance(&mut rng, 3, 8, 1);
        let Ok(plain) = solve(&instance.programme(), None) else {
            continue;
        };
        let mut other = instance.clone();
        let row_units: Vec<f64> = (0..3)
            .map(|_| 10f64.powf(uniform(&mut rng, -6.0, 6.0)))
            .collect();
        for (right, unit) in other.right_side.iter_mut().zip(&row_units) {
            *right *= unit;
        }
        for (cost, lower, upper, coefficients) in &mut other.columns {
            let unit = 10f64.powf(uniform(&mut rng, -4.0, 4.0));
            *cost *= unit;
            *lower /= unit;
            *upper /= unit;
            for (a, row_unit) in coefficients.iter_mut().zip(&row_units) {
                *a *= unit * row_unit;
            }
        }
        let scaled = solve(&other.programme(), None).expect("only the units changed");
        assert_near(other.objective(&scaled), instance.objective(&plain), 1e-9);
        assert!(residuals(&other, &scaled).worst() < 1e-9);
    }
}

#[test]
fn law_duals_are_the_slopes_of_the_objective() {
    let mut rng = seeded(5);
    let mut checked = 0;
    for _ in 0..200 {
        let instance = random_instance(&mut rng, 3, 10, 0);
        let Ok(plain) = solve(&instance.programme(), None) else {
            continue;
        };
        for row in 0..3 {
            let nudge = 1e-6;
            let mut other = instance.clone();
            other.right_side[row] += nudge;
            let Ok(moved) = solve(&other.programme(), None) else {
                continue;
            };
            if moved.basis() == plain.basis() {
                let slope = (other.objective(&moved) - instance.objective(&plain)) / nudge;
                assert_near(slope, plain.duals()[row], 1e-7);
                checked += 1;
            }
        }
    }
    assert!(checked > 300, "only {checked} checked");
}

#[test]
fn law_two_muscles_share_a_load_as_on_paper() {
    // Elbow: 50 N m and 30 N m at full activation, load arm 0.3 m per newton, gravity -2 N m:
    // λ = (50 + 30 - 2) / 0.3 = 260 N, one newton metre more is worth 1/0.3 N.
    let mut programme = Programme::new(1).unwrap();
    programme.set_right_side(&[2.0]).unwrap();
    for torque in [50.0, 30.0] {
        programme.add_column(0.0, 0.0, 1.0, &[torque]).unwrap();
    }
    programme.add_column(1.0, 0.0, INF, &[-0.3]).unwrap();
    let best = solve(&programme, None).unwrap();
    assert_near(best.values()[2], 260.0, 1e-14);
    assert_eq!(&best.values()[..2], [1.0, 1.0]);
    assert_near(best.duals()[0], -1.0 / 0.3, 1e-14);
}

#[test]
fn law_klee_minty_cube_is_solved() {
    // maximise Σ 2^(n-j) x_j with 2 Σ_{k<i} 2^(i-k) x_k + x_i ≤ 5^i: optimum 5^n at x_n alone.
    let n = 8;
    let mut cube = Instance {
        right_side: (1..=n).map(|i| 5f64.powi(i as i32)).collect(),
        columns: Vec::new(),
    };
    for j in 0..n {
        let column: Vec<f64> = (0..n)
            .map(|i| match i.cmp(&j) {
                std::cmp::Ordering::Less => 0.0,
                std::cmp::Ordering::Equal => 1.0,
                std::cmp::Ordering::Greater => 2f64.powi((i - j + 1) as i32),
            })
            .collect();
        let cost = 2f64.powi((n - 1 - j) as i32);
        cube.columns.push((cost, 0.0, INF, column));
    }
    for i in 0..n {
        let mut slack = vec![0.0; n];
        slack[i] = 1.0;
        cube.columns.push((0.0, 0.0, INF, slack));
    }
    let best = solve(&cube.programme(), None).unwrap();
    assert_near(cube.objective(&best), 390_625.0, 1e-12);
    assert!(residuals(&cube, &best).worst() < 1e-12);
}

#[test]
fn law_cycling_example_ends() {
    // Beale's example, on which the largest reduced cost alone cycles for ever: optimum 1/20.
    let mut example = Instance {
        right_side: vec![0.0, 0.0, 1.0],
        columns: Vec::new(),
    };
    for (cost, column) in [
        (0.75, [0.25, 0.5, 0.0]),
        (-150.0, [-60.0, -90.0, 0.0]),
        (0.02, [-0.04, -0.02, 1.0]),
        (-6.0, [9.0, 3.0, 0.0]),
        (0.0, [1.0, 0.0, 0.0]),
        (0.0, [0.0, 1.0, 0.0]),
        (0.0, [0.0, 0.0, 1.0]),
    ] {
        example.columns.push((cost, 0.0, INF, column.to_vec()));
    }
    let best = solve(&example.programme(), None).unwrap();
    assert_near(example.objective(&best), 0.05, 1e-14);
}

#[test]
fn fault_programmes_without_an_answer_say_so() {
    let mut programme = Programme::new(1).unwrap();
    programme.set_right_side(&[3.0]).unwrap();
    programme.add_column(1.0, 0.0, 1.0, &[1.0]).unwrap();
    assert_eq!(solve(&programme, None), Err(Failure::Infeasible));
    programme.add_column(1.0, 0.0, INF, &[1.0]).unwrap();
    assert_eq!(
        solve(&programme, None)
            .unwrap()
            .values()
            .iter()
            .sum::<f64>(),
        3.0
    );
    programme.add_column(0.0, -INF, INF, &[1.0]).unwrap();
    assert_eq!(solve(&programme, None), Err(Failure::Unbounded));

    programme.clear(1).unwrap();
    programme.add_column(1.0, 2.0, 1.0, &[0.0]).unwrap();
    assert_eq!(solve(&programme, None), Err(Failure::Infeasible));
    programme.clear(2).unwrap();
    assert!(solve(&programme, None).unwrap().values().is_empty());
}

#[test]
fn law_rows_that_repeat_or_say_nothing_do_no_harm() {
    let instance = Instance {
        right_side: vec![1.0, 2.0, 0.0, 1.0],
        columns: vec![
            (1.0, 0.0, 1.0, vec![1.0, 2.0, 0.0, 1.0]),
            (3.0, 0.0, 1.0, vec![2.0, 4.0, 0.0, 2.0]),
        ],
    };
    let mut programme = instance.programme();
    let best = solve(&programme, None).unwrap();
    assert_near(instance.objective(&best), 1.5, 1e-15);
    assert!(residuals(&instance, &best).worst() < 1e-14);
    let again = solve(&programme, Some(best.basis())).unwrap();
    assert_eq!(again.basis(), best.basis());
    // The repeated row now contradicts the first: the old basis must not hide that.
    programme.set_right_side(&[1.0, 2.5, 0.0, 1.0]).unwrap();
    assert_eq!(
        solve(&programme, Some(best.basis())),
        Err(Failure::Infeasible)
    );
}

#[test]
fn fault_faulty_numbers_are_refused_at_the_door() {
    assert!(Programme::new(0).is_err());
    assert!(Programme::new(MAX_ROWS + 1).is_err());
    let mut programme = Programme::new(2).unwrap();
    assert!(programme.set_right_side(&[1.0]).is_err());
    assert!(programme.set_right_side(&[1.0, f64::NAN]).is_err());
    assert!(
        programme
            .add_column(f64::NAN, 0.0, 1.0, &[1.0, 1.0])
            .is_err()
    );
    assert!(
        programme
            .add_column(1.0, f64::NAN, 1.0, &[1.0, 1.0])
            .is_err()
    );
    assert!(programme.add_column(1.0, 0.0, 1.0, &[1.0]).is_err());
    let fault = programme
        .add_column(1.0, 0.0, 1.0, &[1.0, INF])
        .unwrap_err();
    assert!(
        crate::calling::said(&fault).contains("column 0 of a linear programme has inf in row 1"),
        "{fault}"
    );
    for _ in 0..MAX_COLUMNS {
        programme.add_column(0.0, 0.0, 1.0, &[1.0, 1.0]).unwrap();
    }
    assert!(programme.add_column(0.0, 0.0, 1.0, &[1.0, 1.0]).is_err());
}

#[test]
fn law_numbers_of_any_size_give_an_answer_of_numbers_or_none() {
    let mut rng = seeded(7);
    let mut solved = 0;
    for _ in 0..2000 {
        let mut instance = random_instance(&mut rng, 2, 5, 1);
        let mut size = |x: f64| x * 10f64.powi(rng.random_range(-300..300));
        for right in &mut instance.right_side {
            *right = size(*right);
        }
        for (cost, _, upper, coefficients) in &mut instance.columns {
            (*cost, *upper) = (size(*cost), size(*upper).max(0.5));
            coefficients.iter_mut().for_each(|a| *a = size(*a));
        }
        if let Ok(solution) = solve(&instance.programme(), None) {
            solved += 1;
            let mut numbers = solution.values().iter().chain(solution.duals());
            assert!(numbers.all(|x| x.is_finite()), "{solution:?}");
            assert!(instance.objective(&solution).is_finite());
        }
    }
    assert!(solved > 20, "only {solved} had an optimum");
}

#[test]
fn law_a_wrong_answer_has_large_residuals() {
    let instance = pose(2, 0.3);
    let right = solve(&instance.programme(), None).unwrap();
    let mut harder = instance.clone();
    harder.right_side[0] += 1.0;
    assert!(residuals(&harder, &right).primal > 1e-3);
    let mut dearer = instance.clone();
    dearer.columns[18].0 += 0.5;
    assert!(residuals(&dearer, &right).dual > 1e-3);
    let mut wider = instance;
    for column in &mut wider.columns[..15] {
        column.2 = 2.0;
    }
    assert!(residuals(&wider, &right).slackness > 1e-3);
}
