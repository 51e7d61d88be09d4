//! A strength curve with its setups in words: the finding, whose curve, what the figure shows.
//!
//! In: a [`Telling`]. Out: the words around its figure and the labels in it.

use super::doubt_words::{HOLLOW, LESS_SURE};
use super::fibre_words::{fibre_sentences, is_doubted};
use super::figure_words::FigureWords;
use super::limit_words::gives_way_at;
use super::load_levers::ShrinkingLever;
use super::made_words::{for_speed, how_held, lifter_has, made_words, there_is, whose_side};
use super::negative_words::negative_sentences;
use super::people_words::{classes_by_share, invented_people, most_frequent_class};
use super::places::sides_in_words;
use super::prose::{capital, listed, percent};
use super::quantities::rounded;
use super::setup_names::{added_is_plural, added_name, with_article};
use super::shown_units::ShownUnits;
use super::straight_limbs::straight_at_peak;
use super::telling::Telling;
use crate::capacity::Pace;
use crate::movement::Measure;
use crate::overlay::Sticking;
use crate::resistance::Setup;
use crate::study::{SetupStudy, Study, doubted_stretches};

/// What an effort of 100 % means.
pub(crate) const WHOLE_STRENGTH: &str = "all the lifter has";

/// From here on an effort is more than 100 % also when it is rounded.
const TOO_HEAVY: f64 = 1.005;

/// A gain of evenness smaller than this is called none, %.
const ALIKE_PERCENT: f64 = 0.5;

impl Telling<'_> {
    /// The words around the figure of the strength curve.
    #[must_use]
    pub fn strength_words(&self) -> FigureWords {
        let sides = sides_in_words(self.study);
        let doubts = fibre_sentences(self.study) + &negative_sentences(self.study);
        FigureWords {
            title: self.strength_title(),
            subtitle: self.subtitle(),
            footnote: self
                .note_of_doubt()
                .unwrap_or_else(|| self.definitions() + "."),
            description: self.strength_description() + &doubts,
            caption: format!("{}. {sides}{doubts}", how_held(self.study)),
        }
    }

    /// Whom a figure is of, under which loads, and what class the curve has.
    #[must_use]
    pub fn drawn_for(&self) -> String {
        let (study, class) = (self.study, &self.study.class);
        let loads: Vec<String> = study
            .setups
            .iter()
            .map(|setup| self.setup_name(setup))
            .collect();
        let loads = match loads.as_slice() {
            [] => String::new(),
            loads => format!(", with {}", listed(loads)),
        };
        format!(
            "Drawn for: {}{loads}. The strength curve of the {} is {}: start {} %, end {} % of its peak.",
            study.lifter_title,
            study.movement_title.to_lowercase(),
            class.shape.word(),
            rounded(100.0 * class.start_ratio, 0),
            rounded(100.0 * class.end_ratio, 0)
        )
    }

    /// What the figure's terms mean: only of those that it has.
    fn definitions(&self) -> String {
        let setups = &self.study.setups;
        let mut words = format!("{}, {}", how_held(self.study), whose_side(self.study));
        if self.study.band.is_some() {
            words += "; band: four of five plausible versions of this lifter";
        }
        if let Some(people) = &self.study.people {
            words += &format!(
                "; bands: half and four in five of {}",
                invented_people(&people.asked, &self.study.lifter_title)
            );
            return words;
        }
        if setups.iter().any(|setup| setup.sticking.is_some()) {
            words += "; ";
            words += &self.region_definition();
        }
        if setups.len() > 1 {
            words += "; flattening: by how much less effort spreads (standard deviation over mean) than under plain weight";
        }
        words
    }

    /// Why the whole curve climbs beside the part that is shown; nothing where no limb or lever is the cause, or people differ.
    pub(crate) fn whole_note(&self) -> String {
        if self.study.people.is_some() {
            return String::new();
        }
        let straight = straight_at_peak(self.study).map(|joint| {
            format!(
                " At its peak the {joint} is nearly straight: a model bears any load on a straight limb."
            )
        });
        let lever = || ShrinkingLever::of(self.study);
        let shrinking = || Some(lever()?.sentence(self.units));
        straight.or_else(shrinking).unwrap_or_default()
    }

    /// How the hollow line is read, instead of what the terms mean; none where the curve is sure everywhere.
    fn note_of_doubt(&self) -> Option<String> {
        let told = format!("{}, {}.", how_held(self.study), whose_side(self.study));
        (!doubted_stretches(self.study).is_empty()).then(|| format!("{told} {HOLLOW}"))
    }

    /// Whether the hardest place of the only setup lies where the model is less sure.
    fn hardest_is_doubted(&self) -> bool {
        let only = match self.study.setups.as_slice() {
            [only] => only.sticking,
            _ => None,
        };
        only.is_some_and(|sticking| is_doubted(self.study, sticking.point_range))
    }

    /// The finding in one sentence.
    fn strength_title(&self) -> String {
        let name = &self.study.movement_title;
        if let Some(people) = &self.study.people {
            return format!("{name}: {}", most_frequent_class(people));
        }
        match self.study.setups.as_slice() {
            [] => format!("{name}: {} strength curve", article(self.study)),
            [one] if self.hardest_is_doubted() => {
                format!("{name}: {}{LESS_SURE}", self.hardest(one))
            }
            [one] => format!("{name}: {}", self.hardest(one)),
            [first, others @ ..] => self.comparison(first, others),
        }
    }

    /// How the only setup goes at its hardest place.
    fn hardest(&self, setup: &SetupStudy) -> String {
        let Some(sticking) = setup.sticking else {
            return "this load asks for nothing".to_owned();
        };
        let (effort, place) = (sticking.max_effort, self.at_place(sticking.point_range));
        if effort >= 2.0 {
            format!(
                "{} times what {} {place}",
                rounded(effort, 1),
                there_is(self.study.pace)
            )
        } else if effort >= TOO_HEAVY {
            format!(
                "too heavy{} by {} %, {place}",
                for_speed(self.study.pace),
                rounded(100.0 * (effort - 1.0), 0)
            )
        } else if effort > 1.0 {
            format!("just more than {} {place}", there_is(self.study.pace))
        } else if is_level(setup) {
            "equally hard all the way".to_owned()
        } else {
            format!("hardest {place}")
        }
    }

    /// What the setups do beside each other, and before that whether they can be lifted at all.
    fn comparison(&self, first: &SetupStudy, others: &[SetupStudy]) -> String {
        let movement = &self.study.movement_title;
        if let Some(words) = self.too_heavy() {
            return format!("{movement}: {words}");
        }
        let subject = match self.study.equal_effort {
            Some(_) => format!("{movement} at equal hardest effort"),
            None => movement.clone(),
        };
        let base = first.flattening_percent.unwrap_or(0.0);
        let best = others
            .iter()
            .filter_map(|setup| Some((setup.flattening_percent? - base, setup)))
            .max_by(|a, b| a.0.total_cmp(&b.0));
        let than = match added_name(&first.demand.setup, self.units) {
            Some(_) => format!(" more than {}", self.setup_name(first)),
            None => String::new(),
        };
        match best {
            Some((gain, setup)) if gain > ALIKE_PERCENT => format!(
                "{subject}: {} effort by {} %{than}",
                self.does(setup, "flatten"),
                rounded(gain, 0)
            ),
            Some((gain, setup)) if gain < -ALIKE_PERCENT => format!(
                "{subject}: {} effort less even, by {} %",
                self.does(setup, "make"),
                rounded(-gain, 0)
            ),
            _ if self
                .study
                .setups
                .iter()
                .any(|setup| setup.sticking.is_none()) =>
            {
                format!("{movement}: one of the setups asks for nothing")
            }
            _ => format!("{subject}: effort is about as even with every setup"),
        }
    }

    /// That setups cannot be held, and by how much; none where all can.
    fn too_heavy(&self) -> Option<String> {
        let beyond =
            |setup: &&SetupStudy| setup.sticking.is_some_and(|s| s.max_effort >= TOO_HEAVY);
        let heavy: Vec<&SetupStudy> = self.study.setups.iter().filter(beyond).collect();
        let worst = heavy
            .iter()
            .filter_map(|setup| setup.sticking)
            .max_by(|a, b| a.max_effort.total_cmp(&b.max_effort))?;
        let by = rounded(100.0 * (worst.max_effort - 1.0), 0);
        Some(match heavy.as_slice() {
            [only] => format!(
                "{} is too heavy{} by {by} %, {}",
                self.setup_name(only),
                for_speed(self.study.pace),
                self.at_place(worst.point_range)
            ),
            all if all.len() == self.study.setups.len() => {
                let none = match self.study.pace {
                    Pace::Isometric => "can be held",
                    _ => "keeps that speed",
                };
                format!("no setup {none}, too heavy by up to {by} %")
            }
            several => format!(
                "{} of {} setups are too heavy{}, by up to {by} %",
                several.len(),
                self.study.setups.len(),
                for_speed(self.study.pace)
            ),
        })
    }

    /// What hangs on the bar as a subject with its verb.
    fn does(&self, setup: &SetupStudy, verb: &str) -> String {
        match added_name(&setup.demand.setup, self.units) {
            Some(added) => format!("{added} {}", conjugated(&setup.demand.setup, verb)),
            None => format!("{} {verb}s", self.setup_name(setup)),
        }
    }

    fn subtitle(&self) -> String {
        let (study, class) = (self.study, &self.study.class);
        let mut words = self.whose_line();
        if let [one] = self.study.setups.as_slice() {
            words += &format!(", {}", self.setup_name(one));
        }
        words += &made_words(self.study);
        if let Some(people) = &self.study.people {
            words += &format!(". Curves of people: {}", classes_by_share(people));
            return words;
        }
        if let Some(effort) = self.study.equal_effort {
            words += &format!(
                ", weights chosen so that each is {} effort at its hardest",
                effort_percent(effort)
            );
            return words;
        }
        if let Some(joint) = straight_at_peak(study) {
            let values = study.capacity.values();
            let middle = values[values.len() / 2];
            return format!(
                "{words}. {} curve: {} at the start, {} half way, {} at its peak, {joint} nearly straight",
                capital(class.shape.word()),
                self.load_shown(values[0]),
                self.load_shown(middle),
                self.load_shown(class.peak)
            );
        }
        words += &format!(
            ". {} curve: start {} %, end {} % of its peak of {}",
            capital(class.shape.word()),
            rounded(100.0 * class.start_ratio, 0),
            rounded(100.0 * class.end_ratio, 0),
            self.load_shown(class.peak)
        );
        words
    }

    /// What can be held, as on the axis.
    fn load_shown(&self, value: f64) -> String {
        let measure = self.study.range.measure;
        let unit = match measure {
            Measure::Force => self.units.load_unit(measure),
            Measure::Torque => self.units.torque_unit(),
        };
        format!("{} {}", rounded(unit.of(value), 0), unit.symbol)
    }

    /// What the figure shows, for those who cannot see it.
    #[must_use]
    pub fn strength_description(&self) -> String {
        let study = self.study;
        let mut words = self.curve_description();
        for setup in &study.setups {
            if let Some(sticking) = &setup.sticking {
                words += &self.setup_description(setup, sticking);
            }
            let is_hung = added_name(&setup.demand.setup, self.units).is_some();
            if let Some(percent) = setup.flattening_percent.filter(|_| is_hung) {
                words += &flattening_sentence(percent);
            }
        }
        words
    }

    /// The curve without the loads over it.
    #[must_use]
    pub(crate) fn curve_description(&self) -> String {
        let study = self.study;
        let class = &study.class;
        let mut words = format!(
            "The strength curve of the {} is {}: over {}, what the lifter ({}) {} goes from {} of its \
             peak at the start to {} at the end; it is greatest {}.",
            study.movement_title.to_lowercase(),
            class.shape.word(),
            self.over_axis(),
            study.lifter_title,
            lifter_has(study.pace),
            percent(class.start_ratio),
            percent(class.end_ratio),
            self.at_place(class.peak_range)
        );
        for sentence in self.people_sentences() {
            words += " ";
            words += &sentence;
        }
        words
    }

    /// The axis behind "over": "the height of the bar above the chest", "elbow flexion".
    fn over_axis(&self) -> String {
        match self.study.range.measure {
            Measure::Force => format!("the {}", self.study.axis),
            Measure::Torque => self.study.axis.clone(),
        }
    }

    fn setup_description(&self, setup: &SetupStudy, sticking: &Sticking) -> String {
        let name = self.setup_name(setup);
        let under = if name.starts_with("with ") {
            capital(&name)
        } else if name.starts_with("body") {
            format!("With the {name}")
        } else {
            format!("With {name}")
        };
        let beyond = if sticking.max_effort > 1.0 {
            format!(", more than {}", there_is(self.study.pace))
        } else {
            String::new()
        };
        if is_level(setup) {
            let effort = effort_percent(sticking.max_effort);
            return format!(" {under}, effort is the same all the way, {effort}{beyond}.");
        }
        format!(
            " {under}, effort is greatest {}, {}{beyond}; the hardest part lies {}.",
            self.at_place(sticking.point_range),
            effort_percent(sticking.max_effort),
            self.stretch(sticking.from_range, sticking.to_range),
        )
    }

    /// The label of the hardest place of the only setup, and its detail.
    #[must_use]
    pub(crate) fn hardest_label(&self, sticking: &Sticking) -> (String, String) {
        let place = self.at_place(sticking.point_range);
        let way = gives_way_at(self.study, sticking.point_range);
        (
            format!("{} effort", effort_percent(sticking.max_effort)),
            format!("{place}; {way}"),
        )
    }

    /// What stands below the name of one of several setups: its hardest place and how even it is.
    #[must_use]
    pub(crate) fn panel_note(&self, setup: &SetupStudy) -> String {
        let Some(sticking) = setup.sticking else {
            return String::new();
        };
        let (number, unit) = self.place_and_unit(sticking.point_range);
        let effort = effort_percent(sticking.max_effort);
        format!("{effort} effort at {number} {unit}")
    }
}

/// Whether effort is the same at every place but for rounding of whole percents.
fn is_level(setup: &SetupStudy) -> bool {
    const SAME: f64 = 0.002;
    let [least, most] = [f64::min, f64::max].map(|of| setup.effort.iter().copied().reduce(of));
    least
        .zip(most)
        .is_some_and(|(least, most)| most > 0.0 && most - least <= SAME * most)
}

/// An effort in words, which never rounds what is too much to what is just held.
fn effort_percent(effort: f64) -> String {
    if effort > 1.0 && effort < TOO_HEAVY {
        format!("{} %", rounded(100.0 * effort, 1))
    } else {
        percent(effort)
    }
}

/// What hangs on the bar does to evenness.
fn flattening_sentence(gain_percent: f64) -> String {
    let gain = rounded(gain_percent.abs(), 0);
    if gain_percent > ALIKE_PERCENT {
        format!(" It makes effort more even than plain weight does, by {gain} %.")
    } else if gain_percent < -ALIKE_PERCENT {
        format!(" It makes effort less even than plain weight does, by {gain} %.")
    } else {
        " It leaves effort about as even as plain weight does.".to_owned()
    }
}

/// The verb for what a setup adds, one thing or several.
#[must_use]
pub(crate) fn conjugated(setup: &Setup, verb: &str) -> String {
    if added_is_plural(setup) {
        verb.to_owned()
    } else {
        format!("{verb}s")
    }
}

fn article(study: &Study) -> String {
    with_article(study.class.shape.word())
}
