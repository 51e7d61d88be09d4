//! How long a coach waits for the grid of a movement, one repetition, a maximum, a group's maxima.

use criterion::{Criterion, criterion_group, criterion_main};
use std::hint::black_box;
use torquill::library::Library;
use torquill::person::Scatter;
use torquill::rep::{RepModel, RepOptions, with_load};
use torquill::resistance::Setup;
use torquill::setups::Watch;
use torquill::study::{PeopleAsked, Question, cohort};

fn repetition(criterion: &mut Criterion) {
    let library = Library::built_in();
    let lifter = library.lifter("reference-man").expect("a built-in lifter");
    let movement = library
        .movement("bench-press")
        .expect("a built-in movement");
    let one_core = rayon::ThreadPoolBuilder::new()
        .num_threads(1)
        .build()
        .expect("one thread can be had");
    criterion.bench_function("bench press: grid on one core", |bench| {
        bench.iter(|| one_core.install(|| RepModel::new(black_box(&movement), &lifter)));
    });
    let model = RepModel::new(&movement, &lifter).expect("the bench press can be pressed");
    let options = RepOptions::default();
    let max = model
        .one_rm(&Setup::default(), &options)
        .expect("something is lifted");
    for share in [0.5, 0.8, 1.0] {
        let setup = with_load(&Setup::default(), max.load * share);
        let name = format!("bench press: repetition at {:.0} %", 100.0 * share);
        criterion.bench_function(&name, |bench| {
            bench.iter(|| model.run(black_box(&setup), &options));
        });
        let name = format!("bench press: lifted or not at {:.0} %", 100.0 * share);
        criterion.bench_function(&name, |bench| {
            bench.iter(|| model.is_lifted(black_box(&setup), &options));
        });
    }
    criterion.bench_function("bench press: maximum to 2.5 kg", |bench| {
        bench.iter(|| model.one_rm(black_box(&Setup::default()), &options));
    });
}

fn group(criterion: &mut Criterion) {
    let library = Library::built_in();
    let lifter = library.lifter("reference-man").expect("a built-in lifter");
    let movement = library
        .movement("bench-press")
        .expect("a built-in movement");
    let question = Question::new("bench-press", &movement, &lifter);
    let (setup, options) = (Setup::default(), RepOptions::default());
    let table = library.person_table().expect("a built-in table");
    let asked = PeopleAsked {
        count: 100,
        seed: 1,
        part: None,
        kind: None,
        scatter: Scatter::between_people(&table, lifter.sex),
    };
    let mut group = criterion.benchmark_group("invented lifters");
    group.sample_size(10);
    group.bench_function("bench press: maxima of a hundred, all cores", |bench| {
        bench.iter(|| {
            let watch = Watch::default();
            cohort(black_box(&question), &setup, &options, &asked, &watch)
        });
    });
    group.finish();
}

criterion_group!(benches, repetition, group);
criterion_main!(benches);
