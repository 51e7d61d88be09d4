//! What `pick` waits for: setups judged a second, and the whole answer for each shipped gym.

use criterion::{Criterion, Throughput, criterion_group, criterion_main};
use std::hint::black_box;
use torquill::library::{Library, assemble};
use torquill::setups::{Allowed, Kernel, Loadings, Rack, Watch, Wish, search};
use torquill::study::{PickQuestion, Question, cost_field, pick};

/// Finalists that a search keeps, as `pick` does.
const KEPT: usize = 240;

fn setups(criterion: &mut Criterion) {
    let library = Library::built_in();
    let model = assemble(&library, "reference-man", "bench-press", &[])
        .expect("the built-in model is sound");
    let question = Question::new("bench-press", &model.movement, &model.lifter);

    let lab = library.gym("strength-lab").expect("a shipped gym");
    let field = cost_field(&question).expect("a field");
    let loadings = Loadings::of(&lab, &field.carrier).expect("loads");
    let rack = Rack::of(&lab, &field.carrier, &field.points, &Allowed::default()).expect("a rack");
    let mut group = criterion.benchmark_group("judged");
    group.sample_size(10);
    for most_hung in [2, 3, 4] {
        let wish = Wish {
            most_hung,
            ..Wish::default()
        };
        let kernel = Kernel::new(&field, &rack, &loadings, &wish);
        let judge = || search(&kernel, KEPT, &Watch::default());
        let judged = judge().expect("a search").judged;
        group.throughput(Throughput::Elements(judged));
        group.bench_function(format!("{judged} combinations, {most_hung} a side"), |b| {
            b.iter(|| black_box(judge()));
        });
    }
    group.finish();

    let mut group = criterion.benchmark_group("pick");
    group.sample_size(10);
    for (name, most_hung) in [
        ("garage", 2),
        ("college-weight-room", 2),
        ("strength-lab", 2),
        ("strength-lab", 3),
        ("strength-lab", 4),
    ] {
        let gym = library.gym(name).expect("a shipped gym");
        let request = PickQuestion {
            question: &question,
            gym: &gym,
            wish: Wish {
                most_hung,
                ..Wish::default()
            },
            allowed: Allowed::default(),
            top: 10,
        };
        group.bench_function(format!("{name}, {most_hung} a side"), |b| {
            b.iter(|| black_box(pick(&request, &Watch::default())));
        });
    }
    group.finish();
}

criterion_group!(benches, setups);
criterion_main!(benches);
