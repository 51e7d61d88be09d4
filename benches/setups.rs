//! What `pick` waits for: the whole answer for each shipped gym, and combinations judged a second in it.

use criterion::{Criterion, Throughput, criterion_group, criterion_main};
use std::hint::black_box;
use torquill::library::{Library, assemble};
use torquill::setups::{AllowedPieces, Choosing, Watch, Wish};
use torquill::study::{Question, pick};

fn setups(criterion: &mut Criterion) {
    let library = Library::built_in();
    let model = assemble(&library, "reference-man", "bench-press", &[])
        .expect("the built-in model is sound");
    let question = Question::new("bench-press", &model.movement, &model.lifter);

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
        let choosing = Choosing {
            gym: &gym,
            wish: Wish {
                most_hung,
                ..Wish::default()
            },
            allowed: AllowedPieces::default(),
            top: 10,
        };
        let table = &library.published().expect("tables").eccentric;
        let answer = || pick(&question, &choosing, table, &Watch::default());
        let judged = answer().expect("setups fit").counts.judged;
        group.throughput(Throughput::Elements(judged));
        group.bench_function(format!("{name}, {most_hung} a side"), |b| {
            b.iter(|| black_box(answer()));
        });
    }
    group.finish();
}

criterion_group!(benches, setups);
criterion_main!(benches);
