//! Remarks on a session in sentences.
//!
//! In: a [`Remark`] with its numbers. Out: one sentence, masses in the units that were asked for.

use super::alone_words::alone_or_in_a_block;
use super::arms_words::arms_sentence;
use super::doubted_sets::{days_off, stays_light};
use super::failure_words::failure_in_words;
use super::novice_words::{LOG_DECIDES, weeks_begin};
use super::overload_words::of_lowering;
use super::prose::{counted_noun, of_count};
use super::quantities::{QuantityWords, rounded};
use super::session_words::name_of_test;
use crate::session::disagreement::Disagreement;
use crate::session::maximum_test::TestedMaximum;
use crate::session::method::Method;
use crate::session::remark::{ChartRemark, ClusterRemark, Fate, Kept, Remark, SetupRemark};
use crate::session::status::INTERMEDIATE_MONTHS;
use crate::units::{Mass, System};

/// What to do where a bar on the floor has no plates of full size.
#[must_use]
pub(super) fn low_plates(full: Mass, units: System) -> String {
    format!(
        "Without plates of {} the bar lies lower than in this lift as simulated: set it on blocks or use plates of full \
         size.",
        units.mass(full)
    )
}

/// A remark in a sentence.
#[must_use]
pub fn remark(remark: &Remark, units: System) -> String {
    match remark {
        Remark::PlannedInstead { of, months, years } => planned_instead(*of, *months, *years),
        Remark::PlatesEnd { most, meant } => format!(
            "This session means {}, and {} is all there is to load: until there are more plates, add repetitions as long as the \
             reserve is kept.",
            units.mass(*meant),
            units.mass(*most)
        ),
        Remark::LightestTooHeavy {
            lightest,
            share,
            meant,
            meant_share,
            is_bar,
        } => {
            let (what, instead) = if *is_bar {
                ("the empty bar", "a lighter bar, or dumb-bells together,")
            } else {
                ("the lightest load here", "a lighter weight")
            };
            format!(
                "Even {what}, {}, is {} % of this 1RM, and the session means {} ({} %): take {instead} of {} at most until the \
                 1RM is {}.",
                units.mass(*lightest),
                percent(*share),
                units.mass(*meant),
                percent(*meant_share),
                units.mass(*meant),
                units.mass(*lightest * (1.0 / meant_share))
            )
        }
        Remark::LighterWhileUnwell { of, loads, sets } => {
            lighter_while_unwell(*of, *loads, *sets, units)
        }
        Remark::LoadNotMade { asked, taken } => format!(
            "{} cannot be set up here: planned with the next load below, {}.",
            units.mass(*asked),
            units.mass(*taken)
        ),
        Remark::LeftOut { options } => format!(
            "left out of what is planned instead, though asked for: --{}",
            options.join(", --")
        ),
        Remark::ReserveRaised { asked, kept } => format!(
            "{kept} in reserve instead of {asked}: sets to failure are not for who is still learning a lift."
        ),
        Remark::RoundsKeepMore {
            asked,
            kept: (most, least),
        } => format!(
            "--rir {asked} is the least that is kept: within a round the weeks keep {most} to {least} in reserve, falling, so that the load rises."
        ),
        Remark::ToFailure { sets, of } => to_failure(*sets, *of),
        Remark::ArmsAt(stand) => arms_sentence(stand, units),
        Remark::WeeksBegin(begin) => weeks_begin(begin, units),
        Remark::LogDecides => LOG_DECIDES.to_owned(),
        Remark::Alone(alone) => alone_or_in_a_block(alone, units),
        Remark::ComingBack { left } => format!(
            "On the way back: {} % of the usual load. Whoever is not well yet does the week before again.",
            percent(*left)
        ),
        Remark::DaysOff { days } => days_off(*days),
        Remark::StaysLight { since } => stays_light(*since),
        Remark::LowPlates { full } => low_plates(*full, units),
        Remark::NotTestedYet { eased, finds } => not_tested_yet(*eased, *finds),
        Remark::Chart(remark) => of_chart(remark, units),
        Remark::Cluster(remark) => of_clusters(remark),
        Remark::Lowering(remark) => of_lowering(remark, units),
        Remark::Setup(remark) => of_setup(remark, units),
    }
}

fn not_tested_yet(eased: Option<f64>, finds: Option<TestedMaximum>) -> String {
    let eased = eased.map_or_else(String::new, |left| {
        format!(
            " Until then it begins as for a novice of this lift, at {} % of the usual load (common practice).",
            percent(left)
        )
    });
    let test = finds.map_or_else(
        || "Nobody saw this lift tested: test it once this lifter is well, then plan again.".to_owned(),
        |finds| {
            format!(
                "Nobody saw this lift tested. A {} on a day of its own comes before this session: plan --team makes one of a row that leaves \
                 the lift empty. Then plan again with what it found.",
                name_of_test(finds)
            )
        },
    );
    test + &eased
}

fn planned_instead(of: Method, months: f64, years: Option<f64>) -> String {
    if let Some(years) = years {
        return format!(
            "planned instead of {}: plain progressive overload, since at {} years the plan is a novice's whatever the training",
            of.name(),
            rounded(years, 0)
        );
    }
    format!(
        "planned instead of {}: a novice ({} of steady training) gains most from plain progressive overload; {} is \
         for lifters whose gains have slowed, from about {INTERMEDIATE_MONTHS} months on",
        of.name(),
        counted_noun(months.max(0.0).round(), "month"),
        of.name()
    )
}

fn to_failure(sets: usize, of: usize) -> String {
    let which = if sets == of {
        "Every working set ends".to_owned()
    } else {
        format!("{sets} of {of} working sets end")
    };
    format!(
        "{which} at failure: by chart or simulation no repetition is left. End a set before that when the form goes, and keep \
         one or two in reserve where nobody can take the load."
    )
}

fn lighter_while_unwell(
    of: Method,
    (usual, load): (Mass, Mass),
    (usual_sets, sets): (u32, u32),
    units: System,
) -> String {
    let instead = match of {
        Method::Straight => String::new(),
        of => format!(" instead of {}", of.name()),
    };
    format!(
        "Ill, unusually sore or back from a break: a lighter session{instead}, {} instead of {} and {} instead of {usual_sets}. \
         With fever, pain in the chest or trouble breathing, none at all: ask a clinician.",
        units.mass(load),
        units.mass(usual),
        counted_noun(sets as usize, "set"),
    )
}

/// "keeps 2 in reserve in every set".
fn keeps(kept: Kept) -> String {
    match kept {
        Kept::Reserve(reserve) => format!("keeps {reserve} in reserve in every set"),
        Kept::OwnReserves => "keeps in every set what is planned in reserve".to_owned(),
        Kept::Velocity(loss) => format!(
            "loses no more than {} % of velocity in any set",
            percent(loss)
        ),
    }
}

fn percent(share: f64) -> String {
    rounded(100.0 * share, 0)
}

/// What the chart says of repetitions, alone or beside the fatigue model.
fn of_chart(remark: &ChartRemark, units: System) -> String {
    match *remark {
        ChartRemark::Beyond {
            repetitions,
            share,
            allowed,
        } => format!(
            "{} at {} % of 1RM {} more than the chart allows ({allowed}); expect to fail",
            counted_noun(repetitions, "repetition"),
            percent(share),
            of_count(repetitions, "is", "are")
        ),
        ChartRemark::TopSetBeyond {
            repetitions,
            share,
            allowed,
        } => format!(
            "top set: {} at {} % of 1RM {} more than the chart allows ({allowed})",
            counted_noun(repetitions, "repetition"),
            percent(share),
            of_count(repetitions, "is", "are")
        ),
        ChartRemark::Eased { left, fewest, kept } => {
            let with = fewest.map_or_else(String::new, |many| {
                format!(
                    "with {} or more ",
                    counted_noun(many as usize, "repetition")
                )
            });
            format!(
                "Loads are {} % lighter than usual: {with}the simulation of this lifter {} only then.",
                percent(1.0 - left),
                keeps(kept)
            )
        }
        ChartRemark::FewerRepetitions {
            usual,
            planned,
            kept,
        } => format!(
            "{} instead of {usual}: the simulation of this lifter {} only then.",
            counted_noun(planned as usize, "repetition"),
            keeps(kept)
        ),
        ChartRemark::Disagreement(one) => disagreement(&one, units),
        ChartRemark::Overstated {
            by_chart,
            by_model,
            one_joint,
            published,
        } => overstated((by_chart, by_model), one_joint, published),
        ChartRemark::StopNotReached {
            loss,
            reached,
            repetitions,
        } => format!(
            "A stop at {} % of lost velocity sets no limit here: the {} of the chart {} {} % in the simulation. \
             End sets by the reserve.",
            percent(loss),
            counted_noun(repetitions, "repetition"),
            of_count(repetitions, "loses", "lose"),
            percent(reached.max(0.0))
        ),
        ChartRemark::WidestGap {
            set,
            by_chart,
            by_model,
        } => widest_gap(set, by_chart, by_model),
    }
}

fn disagreement(one: &Disagreement, units: System) -> String {
    let (first, last) = one.sets;
    let sets = if first == last {
        format!("Working set {first}")
    } else {
        format!("Working sets {first} to {last}")
    };
    format!(
        "{sets}: {} for {}: the chart allows {} when rested, the fatigue model {} after the sets before; they disagree, so \
         have a spotter ready or take less.",
        units.mass(one.load),
        one.planned,
        rounded(one.by_chart, 1),
        one.by_model
    )
}

/// "The simulation allows 54 repetitions where the chart allows 11, 4.9 times as many: …".
fn overstated((by_chart, by_model): (f64, u32), one_joint: bool, published: Option<f64>) -> String {
    let times = f64::from(by_model) / by_chart;
    let why = match (one_joint, published) {
        (true, Some(factor)) if factor > 1.0 => format!(
            " Sets of one joint are overstated by the simulation: where they were measured, it gives {} times as many.",
            rounded(factor, 1)
        ),
        _ => String::new(),
    };
    format!(
        "The simulation allows {} where the chart allows {}, {} times as many: go by the chart.{why}",
        counted_noun(by_model, "repetition"),
        rounded(by_chart, 1),
        rounded(times, 1)
    )
}

fn widest_gap(set: u32, by_chart: f64, by_model: f64) -> String {
    let words = format!(
        "set {set}, {} by the chart when rested, {} by the fatigue model after the sets before",
        rounded(by_chart, 1),
        rounded(by_model, 0)
    );
    if (by_chart - by_model).abs() < 1.0 {
        format!("Chart and fatigue model agree within a repetition to failure (widest: {words}).")
    } else {
        format!("Chart and fatigue model disagree most in {words} (repetitions to failure).")
    }
}

/// Groups, rests and totals of cluster sets.
fn of_clusters(remark: &ClusterRemark) -> String {
    match *remark {
        ClusterRemark::Rest { rest, least, most } => format!(
            "{} s between groups is outside the usual {} to {} s",
            rounded(rest.as_s(), 0),
            least.as_s(),
            most.as_s()
        ),
        ClusterRemark::LargeGroup { group, usual } => {
            format!(
                "groups of {group} are larger than usual ({} to {})",
                usual.0, usual.1
            )
        }
        ClusterRemark::GroupAtLimit { group, allowed } => {
            format!(
                "a group of {group} is already all that the chart allows at this load ({allowed})"
            )
        }
        ClusterRemark::UnusualTotal {
            total,
            share,
            usual,
        } => unusual_total(total, share, usual),
        ClusterRemark::PhosphocreatineBack { rest, shares } => format!(
            "In {} s, {} to {} % of the phosphocreatine spent comes back (published recoveries differ that much).",
            rounded(rest.as_s(), 0),
            percent(shares.0),
            percent(shares.1)
        ),
        ClusterRemark::AgainstStraight {
            straight,
            clusters,
            gain_percent,
        } => against_straight(straight, clusters, gain_percent),
    }
}

fn unusual_total(total: u32, share: f64, usual: (u32, u32)) -> String {
    format!(
        "{} at {} % of 1RM {} outside the customary {} to {} of a session",
        counted_noun(total, "repetition"),
        percent(share),
        of_count(total, "lies", "lie"),
        usual.0,
        usual.1
    )
}

/// Gain in velocity that is none, %: less is not felt on a bar.
const NO_GAIN_PERCENT: f64 = 2.0;

fn against_straight(straight: Fate, clusters: Fate, gain_percent: Option<f64>) -> String {
    let Some(gain_percent) = gain_percent else {
        return format!(
            "Predicted: straight, {}; in clusters, {}.",
            fate(straight),
            fate(clusters)
        );
    };
    if gain_percent < NO_GAIN_PERCENT {
        return format!(
            "Predicted: straight, {}; in clusters, {}: the rests gain nothing here.",
            fate(straight),
            fate(clusters)
        );
    }
    format!(
        "Predicted: straight, {}; in clusters, {}; over all repetitions asked for, the clusters are {} % faster.",
        fate(straight),
        fate(clusters),
        rounded(gain_percent, 0)
    )
}

/// "repetition 9 stalls", "the last repetition moves at 0.34 m/s".
fn fate(fate: Fate) -> String {
    match fate {
        Fate::Stalls(number) => format!("repetition {number} stalls"),
        Fate::LastMovesAt(velocity_m_s) => format!(
            "the last repetition moves at {} m/s",
            rounded(velocity_m_s, 2)
        ),
    }
}

fn of_setup(remark: &SetupRemark, units: System) -> String {
    match *remark {
        SetupRemark::HardestPlace {
            effort,
            flattening_percent,
        } => hardest_place(effort, flattening_percent),
        SetupRemark::WhenBandsGo {
            failure,
            share,
            arms,
        } => failure_in_words(&failure, share, arms, units),
        SetupRemark::PlainAsHard { plain, top } => format!(
            "Plain weight that is as hard at its hardest point: {}; this setup has {} at the top.",
            units.mass(plain),
            units.mass(top)
        ),
    }
}

fn hardest_place(effort: f64, flattening_percent: Option<f64>) -> String {
    let flat = flattening_percent
        .map(|percent| format!("; it evens out effort by {} %", rounded(percent, 0)))
        .unwrap_or_default();
    format!("Hardest point: {} % of capacity{flat}.", percent(effort))
}
