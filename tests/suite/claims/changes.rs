//! Random families of curves and the waterfalls of their changes: titles and alternative texts against curves and bars.

use super::{read_number, says};
use crate::lift_by_another_name::LIFTS;
use crate::vary_reasons::{TRIED_IN_FULL, USUAL_SAMPLES, families_of, heaviest_by_hand};
use rayon::prelude::{IntoParallelIterator, ParallelIterator};
use regex::Regex;
use std::sync::LazyLock;
use torquill::figures::{family_chart, why_chart};
use torquill::movement::Measure;
use torquill::narrative::parameters::{parameter_in_words, shown_value};
use torquill::study::{Cause, Conditions, Family, Spot, Study};
use torquill::units::{System, rounded};

/// Between what a figure of a curve lies by its samples: the heaviest weight, or the peak with the lines beside it.
fn bounds(study: &Study, what: &str) -> [f64; 2] {
    if what.starts_with("heaviest weight") {
        return heaviest_by_hand(study);
    }
    let values = study.capacity.values();
    let sampled = values.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    let pieces = 0..values.len() - 1;
    let promised = pieces.map(|piece| torquill::study::between_samples::promised(&values, piece));
    [sampled, promised.fold(sampled, f64::max)]
}

/// A printed number is the computed one.
fn told_is(printed: &str, value: f64, case: &str) {
    says(printed, value, 0.0, case).unwrap_or_else(|fault| panic!("{fault}"));
}

static TITLES: LazyLock<[Regex; 3]> = LazyLock::new(|| {
    [
        r"^(?P<name>.+) from (?P<first>.+) to (?P<last>.+): (?P<what>.+?) (?P<way>rises|falls) from (?P<a>\S+) \S+ to (?P<b>\S+) \S+$",
        r"^(?P<name>.+): (?P<what>.+?) best at (?P<best>.+?)(?P<border>, on the border of what was tried)?, (?P<a>\S+) \S+$",
        r"^(?P<name>.+?) hardly changes the (?P<what>.+): (?P<a>\S+) \S+$",
    ]
    .map(|reads| Regex::new(reads).expect("a pattern"))
});

/// A family's title: numbers, direction, which value is best, against the curves' samples.
fn check_family(family: &Family, case: &str) {
    let chart = family_chart(family, &Conditions::default(), System::Metric);
    let title = &chart.heading.title;
    assert!(
        chart.heading.description.contains(title.as_str()),
        "{case}: {title}"
    );
    let title = title
        .split_once("; ")
        .map_or(title.as_str(), |(title, _)| title);
    let told = TITLES.iter().find_map(|reads| reads.captures(title));
    let told = told.unwrap_or_else(|| panic!("{case}: nobody checks `{title}`"));
    let name = parameter_in_words(&family.parameter.path);
    assert_eq!(told["name"].to_lowercase(), name.to_lowercase(), "{case}");
    let of = |value: &str| {
        let mut variants = family.variants.iter();
        let found = variants.find(|variant| shown_value(&variant.text) == value);
        let found = found.unwrap_or_else(|| panic!("{case}: no value {value} in `{title}`"));
        bounds(&found.study, &told["what"])
    };
    let within = |printed: &str, [low, high]: [f64; 2]| {
        let [value, half] = read_number(printed).expect(case);
        assert!(
            (low - half..=high + half).contains(&value),
            "{case}: `{title}`: {printed} of {low} to {high}"
        );
        value
    };
    let all = family.variants.iter();
    let all: Vec<[f64; 2]> = all.map(|v| bounds(&v.study, &told["what"])).collect();
    if let Some(way) = told.name("way") {
        let a = within(&told["a"], of(&told["first"]));
        let b = within(&told["b"], of(&told["last"]));
        assert!((way.as_str() == "rises") == (b > a), "{case}: `{title}`");
    } else if let Some(best) = told.name("best") {
        let best = within(&told["a"], of(best.as_str()));
        assert!(
            all.iter().all(|[low, _]| *low <= best * 1.01),
            "{case}: `{title}`"
        );
    } else {
        let value = within(&told["a"], all[0]);
        let near = |[low, high]: &[f64; 2]| *low <= value * 1.011 && *high >= value * 0.989;
        assert!(all.iter().all(near), "{case}: `{title}`");
    }
}

static PLACE: LazyLock<Regex> = LazyLock::new(|| {
    let reads = r"^(?:at the (start|end)|in the (middle)|(close to )?where the (peak|hardest place) was, at (\S+) (?:deg|cm))$";
    Regex::new(reads).expect("a pattern")
});

/// Whether the words of a place are those of the cause's place, and say that it is not quite the peak's where it is not.
fn check_place(words: &str, family: &Family, cause: &Cause, case: &str) {
    let told = PLACE.captures(words);
    let told = told.unwrap_or_else(|| panic!("{case}: `{words}` is no place"));
    let spot = match told
        .get(1)
        .or(told.get(2))
        .or(told.get(4))
        .map(|m| m.as_str())
    {
        Some("start") => Spot::Start,
        Some("end") => Spot::End,
        Some("middle") => Spot::Middle,
        Some("peak") => Spot::Peak,
        _ => Spot::Hardest,
    };
    assert_eq!(spot, cause.spot, "{case}");
    let Some(printed) = told.get(5) else { return };
    let base = &family.base;
    told_is(printed.as_str(), base.axis_value(cause.range), case);
    let range = match spot {
        Spot::Peak => base.class.peak_range,
        _ => {
            base.setups[0]
                .sticking
                .expect("a hardest place")
                .point_range
        }
    };
    let itself = base.axis_value(range);
    // Both are told to a tenth of a degree or of a centimetre.
    let is_close = rounded(base.axis_value(cause.range), 1) != rounded(itself, 1);
    assert_eq!(told.get(3).is_some(), is_close, "{case}: {words} {itself}");
}

/// A waterfall's words against its bars, and its bars against the curves.
fn check_waterfall(family: &Family, case: &str) -> bool {
    let Some(chart) = why_chart(family, System::Metric) else {
        return false;
    };
    let (variant, cause) = family.foremost_cause().expect("it was drawn");
    let heading = &chart.heading;
    let case = format!("{case}: {}", heading.title);
    let [before, after] = [&family.base, &variant.study].map(|study| {
        let values = study.capacity.values();
        values[(cause.range * (values.len() - 1) as f64).round() as usize]
    });
    let sum: f64 = chart.steps.iter().map(|step| step.part).sum();
    let size = before.abs().max(after.abs());
    let drawn_to = 0.51 * 0.1_f64.powi(chart.decimals as i32);
    assert!(
        (sum - (after - before)).abs() <= drawn_to.max(1e-9 * size),
        "{case}: {sum}"
    );
    for other in &variant.causes {
        assert!(
            other.account.change().abs() <= (after - before).abs() + 1e-9 * size,
            "{case}"
        );
    }
    let (head, most) = heading
        .title
        .split_once("; largest part: ")
        .map_or((heading.title.as_str(), None), |(head, most)| {
            (head, Some(most))
        });
    let change = head.split_once(": ").expect(&case).1;
    let (printed, rest) = change.split_once('\u{a0}').expect(&case);
    told_is(printed, after - before, &case);
    let (unit, place) = rest.split_once(' ').expect(&case);
    assert_eq!(
        unit,
        if family.base.range.measure == Measure::Force {
            "N"
        } else {
            "N·m"
        }
    );
    check_place(place, family, cause, &case);
    let capacity = heading.subtitle.rsplit_once(", ").expect(&case).1;
    let (old, new) = capacity.split_once(" \u{2192} ").expect(&case);
    told_is(old, before, &case);
    told_is(new.split(' ').next().expect(&case), after, &case);
    if let Some(most) = most {
        let (name, part) = most.rsplit_once(", ").expect(&case);
        let first = &chart.steps[0];
        assert_eq!(
            name.to_lowercase(),
            first.name.replace(": ", ", ").to_lowercase(),
            "{case}"
        );
        told_is(part, first.part, &case);
        let named = chart
            .steps
            .iter()
            .filter(|step| !step.name.starts_with("All else"));
        assert!(
            named
                .into_iter()
                .all(|step| step.part.abs() <= first.part.abs()),
            "{case}"
        );
    }
    for step in &chart.steps {
        let told = heading.description.split_once(&format!("{} ", step.name));
        let told = told
            .unwrap_or_else(|| panic!("{case}: {} is not told", step.name))
            .1;
        told_is(
            told.split([' ', ',']).next().expect(&case),
            step.part,
            &case,
        );
    }
    true
}

#[test]
fn law_every_sentence_of_random_families_and_their_waterfalls_follows_from_their_curves() {
    let told = |(seed, lift): (usize, &str)| {
        let mut waterfalls = 0;
        for family in families_of(lift, 500 + seed as u64, TRIED_IN_FULL, USUAL_SAMPLES) {
            let texts: Vec<&str> = family.variants.iter().map(|v| v.text.as_str()).collect();
            let case = format!("{lift}, {} {texts:?}", family.parameter.path);
            // What a lone value does is told against the model as it is, by other words.
            if family.variants.len() > 1 {
                check_family(&family, &case);
            }
            waterfalls += usize::from(check_waterfall(&family, &case));
        }
        waterfalls
    };
    let lifts: Vec<(usize, &str)> = LIFTS.into_iter().enumerate().collect();
    let waterfalls: usize = lifts.into_par_iter().map(told).sum();
    assert!(waterfalls > 100, "{waterfalls}");
}
