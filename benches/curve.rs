//! What a user waits for: the capacity of one pose, a curve of 101 samples, a figure as SVG and PNG.

use criterion::{Criterion, criterion_group, criterion_main};
use std::hint::black_box;
use torquill::capacity::{Acting, Pace, Solver, curve_of, plain_direction};
use torquill::draw::{outlined_svg, png};
use torquill::figures::strength_curve;
use torquill::library::{Library, assemble};
use torquill::movement::trace;
use torquill::plot::Look;
use torquill::resistance::Setup;
use torquill::study::{Question, study};
use torquill::units::{Mass, System};

fn curves(criterion: &mut Criterion) {
    let model = assemble(&Library::built_in(), "reference-man", "bench-press", &[])
        .expect("the built-in model is sound");
    let range = trace(&model.movement, &model.lifter, 101).expect("the limbs close the path");
    let acting = Acting::of(&model.lifter, &range.poses).expect("the arms can be evaluated");
    let plain = plain_direction(range.carrier);
    criterion.bench_function("capacity of one pose, cold", |b| {
        b.iter(|| {
            let mut solver = Solver::new(&acting, range.measure, range.sides).expect("one row");
            solver.solve(black_box(&range.poses[50]), plain, 0.0)
        });
    });
    criterion.bench_function("capacity of 101 poses of the bench press", |b| {
        b.iter(|| curve_of(&acting, black_box(&range), None, Pace::Isometric));
    });
    criterion.bench_function("bench press traced and solved, 101 poses", |b| {
        b.iter(|| {
            let range = trace(&model.movement, &model.lifter, 101)?;
            let acting = Acting::of(&model.lifter, &range.poses)?;
            curve_of(&acting, &range, None, Pace::Isometric)
        });
    });
    let question = Question::new("bench-press", &model.movement, &model.lifter);
    let answer = study(&question, &[Setup::plain(Mass::from_kg(80.0))]).expect("an answer");
    let told = answer.told(System::Metric);
    let words = told.strength_words();
    let scene = strength_curve(told, &words, Look::default()).expect("a chart");
    criterion.bench_function("figure as SVG, outlined", |b| {
        b.iter(|| outlined_svg(black_box(&scene)));
    });
    criterion.bench_function("figure as PNG, 1920 x 1080", |b| {
        b.iter(|| png(black_box(&scene), 1.0));
    });
}

criterion_group!(benches, curves);
criterion_main!(benches);
