//! A family of strength curves in words: what changed, by how much, and why; the caption of the lecture's thighs.
//!
//! In: a [`Family`], under which conditions. Out: the words around its figure.

use super::causes::{cause_in_parts, cause_in_short};
use super::comparison::{compared_of, shown_figure};
use super::doubt_words::FOOT_LETTERS;
use super::figure_words::FigureWords;
use super::made_words::made_words;
use super::parameters::{parameter_at, parameter_in_words, shown_value};
use super::prose::{capital, listed};
use super::quantities::rounded;
use super::shown_units::ShownUnits;
use crate::anatomy::Joint;
use crate::movement::Measure;
use crate::study::{
    Cause, Compared, Conditions, Family, FreeBody, FreeJoint, Spot, Variant, usual_comparison,
};
use crate::units::System;

/// A change smaller than this is called none, as a share.
const HARDLY: f64 = 0.005;
/// A change of the capacity of a place that is worth a note, as a share.
const FELT: f64 = 0.01;

/// What is said to short and long thighs.
pub(crate) fn thigh_caption(family: &Family) -> String {
    /// A moment arm that grows by less than this share is called unchanged.
    const FELT_SHARE: f64 = 0.02;
    let mut ends: Vec<&Variant> = family.variants.iter().collect();
    let length = |variant: &Variant| variant.number.as_ref().map_or(0.0, |number| number.value);
    ends.sort_by(|a, b| length(a).total_cmp(&length(b)));
    let ([shorter, .., longer], true) = (ends.as_slice(), ends.len() > 1) else {
        return UNCHANGED_MUSCLES.to_owned();
    };
    let [before, after] = [shorter, longer].map(|one| FreeBody::of(&one.study, None, 0).joints);
    let grows = |(before, after): (&FreeJoint, &FreeJoint)| {
        let is_longer = after.lever_m > (1.0 + FELT_SHARE) * before.lever_m;
        let is_leg = matches!(after.dof.joint(), Joint::Hip | Joint::Knee);
        (is_longer && is_leg).then(|| after.dof.joint().name())
    };
    let farther: Vec<&str> = before.iter().zip(&after).filter_map(grows).collect();
    let (verb, moment) = match farther.len() {
        0 => return UNCHANGED_MUSCLES.to_owned(),
        1 => ("lies", "a greater moment there"),
        _ => ("lie", "greater moments there"),
    };
    // Of those joints the body's own weight may ask for more as well.
    let weighs_more = |(before, after): (&FreeJoint, &FreeJoint)| {
        farther.contains(&after.dof.joint().name())
            && after.limbs_nm > (1.0 + FELT_SHARE) * before.limbs_nm
    };
    let body = if before.iter().zip(&after).any(weighs_more) {
        ", and so does the body's own weight,"
    } else {
        ","
    };
    format!(
        "With longer thighs the {} {verb} farther from the line of the load at the start: the same bar asks for {moment}{body} and the same \
         muscles hold less of it. {UNCHANGED_MUSCLES}",
        listed(
            &farther
                .iter()
                .map(|name| (*name).to_owned())
                .collect::<Vec<_>>()
        )
    )
}

/// What a change of a limb leaves as it is.
const UNCHANGED_MUSCLES: &str = "Nothing about the muscles was changed.";

/// The title of short and long thighs: what each holds; none where they are not told as shorter and longer.
pub(crate) fn thigh_title(family: &Family, units: System) -> Option<String> {
    let held = |sign: char| {
        let mut variants = family.variants.iter();
        variants.find_map(|variant| {
            let text = shown_value(&variant.text);
            let share = text.strip_prefix(sign)?.to_owned();
            let kept = variant.figures.value(Compared::Held)?;
            let conditions = Conditions::default();
            let (value, unit) =
                shown_figure(Compared::Held, kept, &family.base, &conditions, units);
            Some((share, format!("{} {unit}", rounded(value, 1))))
        })
    };
    let ((shorter, light), (longer, heavy)) = (held('\u{2212}')?, held('+')?);
    let present = family.base_figures.value(Compared::Held)?;
    let (value, unit) = shown_figure(
        Compared::Held,
        present,
        &family.base,
        &Conditions::default(),
        units,
    );
    let present = format!("{} {unit}", rounded(value, 1));
    Some(format!(
        "Held with thighs {shorter} shorter {light}, as they are {present}, {longer} longer {heavy}"
    ))
}

/// The note with what is told of a corner, where two lines at the foot hold both.
pub(crate) fn with_corner(note: &str, told: &str) -> Option<String> {
    let both = format!("{note} {told}").trim().to_owned();
    (both.chars().count() <= FOOT_LETTERS).then_some(both)
}

/// The curve with the value as it is.
pub(crate) const AS_IT_IS: &str = "as it is";

/// The words around the figure of a family.
#[must_use]
pub fn family_words(family: &Family, asked: &Conditions, units: System) -> FigureWords {
    let base = &family.base;
    FigureWords {
        title: family_title(family, asked, units),
        subtitle: format!(
            "{}{}: {} over the {}, everything else as it is",
            base.lifter_title,
            made_words(base),
            base.movement_title.to_lowercase(),
            base.axis
        ),
        footnote: footnote(family, family.farthest(), units),
        description: description(family, asked, units),
        caption: String::new(),
    }
}

/// What the change does to the figure that is compared, from the least to the greatest value; where that hardly
/// changes and the heaviest weight does, what it does to that.
fn family_title(family: &Family, asked: &Conditions, units: System) -> String {
    let measure = usual_comparison(family.base.range.measure);
    let is_kept = |compared| !changes(family, compared);
    if measure != Compared::Held && is_kept(measure) && !is_kept(Compared::Held) {
        let title = title_of(family, Compared::Held, asked, units);
        return format!("{title}; {} hardly changes", name_of(family, measure));
    }
    title_of(family, measure, asked, units)
}

/// Whether a figure changes over the values, as it is among them.
fn changes(family: &Family, measure: Compared) -> bool {
    let variants = family.variants.iter().map(|variant| &variant.figures);
    let all = variants.chain([&family.base_figures]);
    let values: Vec<f64> = all.filter_map(|figures| figures.value(measure)).collect();
    let least = values.iter().copied().fold(f64::INFINITY, f64::min);
    let most = values.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    most - least >= HARDLY * most.abs()
}

fn name_of(family: &Family, measure: Compared) -> &'static str {
    match (measure, family.base.range.measure) {
        (Compared::Peak, Measure::Torque) => "peak moment",
        _ => compared_of(measure, &family.base),
    }
}

fn title_of(family: &Family, measure: Compared, asked: &Conditions, units: System) -> String {
    let what = name_of(family, measure);
    let name = capital(&parameter_in_words(&family.parameter.path));
    let told: Vec<(String, f64)> = family
        .variants
        .iter()
        .filter_map(|variant| {
            let value = variant.figures.value(measure)?;
            Some((shown_value(&variant.text), value))
        })
        .collect();
    let figure = |value: f64| {
        let (value, unit) = shown_figure(measure, value, &family.base, asked, units);
        let decimals = if value < 10.0 { 2 } else { 1 };
        format!("{} {unit}", rounded(value, decimals))
    };
    let present = family.base_figures.value(measure);
    match (told.as_slice(), present) {
        ([(_, after)], Some(before)) => {
            let tried = parameter_at(&family.parameter.path, &family.variants[0].text);
            one_change(&tried, what, [before, *after], &figure)
        }
        _ => change_in_words(&name, what, &told, &figure),
    }
}

/// What the only value that was tried does to a figure.
fn one_change(
    name: &str,
    what: &str,
    [before, after]: [f64; 2],
    figure: &dyn Fn(f64) -> String,
) -> String {
    if (after - before).abs() < HARDLY * before.abs() {
        return format!("{name} hardly changes the {what}: {}", figure(after));
    }
    format!(
        "{name}: {what} {} from {} to {}",
        if after > before { "rises" } else { "falls" },
        figure(before),
        figure(after)
    )
}

/// How a figure goes over the values: best inside, hardly changed, rising or falling.
fn change_in_words(
    name: &str,
    what: &str,
    told: &[(String, f64)],
    figure: &dyn Fn(f64) -> String,
) -> String {
    let best = told.iter().max_by(|a, b| a.1.total_cmp(&b.1));
    let ([first, .., last], Some(best)) = (told, best) else {
        return format!("{name}: {what}");
    };
    let least = told
        .iter()
        .map(|(_, value)| *value)
        .fold(f64::INFINITY, f64::min);
    let is_inside = best.1 > (1.0 + HARDLY) * first.1.max(last.1);
    if is_inside {
        format!("{name}: {what} best at {}, {}", best.0, figure(best.1))
    } else if best.1 - least < HARDLY * best.1.abs() {
        format!("{name} hardly changes the {what}: {}", figure(first.1))
    } else if is_one_way(told) {
        format!(
            "{name} from {} to {}: {what} {} from {} to {}",
            first.0,
            last.0,
            if last.1 > first.1 { "rises" } else { "falls" },
            figure(first.1),
            figure(last.1)
        )
    } else if best.0 == first.0 || best.0 == last.0 {
        format!(
            "{name}: {what} best at {}, on the border of what was tried, {}",
            best.0,
            figure(best.1)
        )
    } else {
        format!("{name}: {what} best at {}, {}", best.0, figure(best.1))
    }
}

/// Whether the figure only rises or only falls over the values, but for what is hardly seen.
fn is_one_way(told: &[(String, f64)]) -> bool {
    let ([first, .., last], hardly) = (told, HARDLY) else {
        return true;
    };
    let way = (last.1 - first.1).signum();
    let slack = hardly * (last.1 - first.1).abs();
    let steps = told.windows(2);
    last.1 != first.1
        && steps
            .map(|pair| way * (pair[1].1 - pair[0].1))
            .all(|step| step >= -slack)
}

/// Why one value changes the curve where it decides the heaviest weight; none for the present one.
pub(crate) fn why_there(family: &Family, variant: &Variant, units: System) -> Option<String> {
    let decides = deciding_place(family, variant)?;
    let cause = variant.causes.iter().find(|cause| cause.spot == decides)?;
    let unit = units.load_unit(family.base.range.measure);
    let value = capital(&shown_value(&variant.text));
    let words = |most| format!("{value}: {}.", cause_in_parts(cause, most, unit, units));
    let shorter = (1..=4).rev().map(words);
    let mut fitting = shorter.filter(|words| words.chars().count() <= LONGEST_NOTE);
    Some(fitting.next().unwrap_or_else(|| words(1)))
}

/// Why a value, the one that lies farthest from the present one, changes the curve.
fn footnote(family: &Family, variant: &Variant, units: System) -> String {
    let unit = units.load_unit(family.base.range.measure);
    let decides = deciding_place(family, variant);
    // Beside a place that changes much, what hardly changes is noise in a note.
    let is_felt =
        |cause: &&Cause| cause.account.change().abs() >= FELT * cause.account.capacity[0].abs();
    let mut told: Vec<&Cause> = variant.causes.iter().filter(is_felt).collect();
    if told.is_empty() {
        told = variant.causes.iter().collect();
    }
    let words = |told: &[&Cause]| {
        let causes = told.iter().map(|cause| cause_in_short(cause, unit, units));
        let causes: Vec<String> = causes.collect();
        let value = capital(&shown_value(&variant.text));
        format!("{value}: {}.", causes.join("; "))
    };
    while told.len() > 1 && words(&told).chars().count() > LONGEST_NOTE {
        let size = |cause: &&Cause| cause.account.change().abs();
        let others = told.iter().filter(|cause| decides != Some(cause.spot));
        let least = others.copied().min_by(|a, b| size(a).total_cmp(&size(b)));
        told.retain(|cause| least.is_none_or(|least| !std::ptr::eq(*cause, least)));
    }
    words(&told)
}

/// The place that decides the heaviest weight that is held, where the title is of that.
fn deciding_place(family: &Family, variant: &Variant) -> Option<Spot> {
    let of_held = usual_comparison(family.base.range.measure) == Compared::Held;
    let setup = family.base.setups.first();
    let point = setup.and_then(|setup| setup.sticking)?.point_range;
    let near = |cause: &&Cause| (cause.range - point).abs();
    let nearest = variant
        .causes
        .iter()
        .min_by(|a, b| near(a).total_cmp(&near(b)));
    nearest.filter(|_| of_held).map(|cause| cause.spot)
}

/// Letters that a note of two lines holds on a slide; the places that change least make way.
const LONGEST_NOTE: usize = 170;

fn description(family: &Family, asked: &Conditions, units: System) -> String {
    let curves: Vec<String> = family
        .variants
        .iter()
        .map(|variant| {
            let class = &variant.study.class;
            format!(
                "{} ({}, {} % of the peak at the start, {} % at the end)",
                shown_value(&variant.text),
                class.shape.word(),
                rounded(100.0 * class.start_ratio, 0),
                rounded(100.0 * class.end_ratio, 0)
            )
        })
        .collect();
    format!(
        "Strength curves of the {} of {} for {}: {}. {}. {}",
        family.base.movement_title.to_lowercase(),
        family.base.lifter_title,
        parameter_in_words(&family.parameter.path),
        listed(&curves),
        family_title(family, asked, units),
        match asked.load {
            Some(_) => family.base.told(units).strength_description(),
            // A load that nobody asked for is none that is drawn.
            None => family.base.told(units).curve_description(),
        },
    )
}
