//! The answer where no setup fits: the nearest miss, what it misses, what would make it fit.
//!
//! In: what a search found, the wish. Out: an error without an answer, with hints in the command's words.

use super::exact::Exact;
use super::pick_answer::PickQuestion;
use super::pick_answer::Picked;
use crate::error::{Error, Result};
use crate::setups::{Found, Limit, Miss, Wish};
use crate::units::rounded;

/// The answer where nothing fits: the nearest miss, what it misses, what would make it fit.
pub(super) fn none_fits(
    exact: &Exact<'_>,
    request: &PickQuestion<'_>,
    found: &Found,
) -> Result<Error> {
    let gym = &request.gym.title;
    let Some(miss) = &found.miss else {
        return Ok(
            Error::no_answer(format!("nothing that {gym} can build fits exactly"))
                .hint("widen the limits a little"),
        );
    };
    let near = exact.as_loaded(miss.combination, miss.gap.loading as usize)?;
    let near = exact.picked(&near)?;
    let plain = crate::narrative::loads::loading_in_words(&near.loading);
    let hung = crate::narrative::hanging::hung_pieces(&near.setup.items, &request.gym.anchors);
    let words = if hung.is_empty() {
        plain
    } else {
        format!("{plain} and {}", hung.join(" + "))
    };
    let (what, mut fix) = shortfall(miss, &request.wish, &near);
    if miss.gap.and_others {
        fix = fix.replace("would make it fit", "would be a first step");
    }
    Ok(Error::no_answer(format!(
        "no setup of {gym} fits; the nearest, {words}, {what}"
    ))
    .hint(fix)
    .hint(
        "bands and chains a side: --hung; pieces a side with plates: --pieces; which ones: --only",
    ))
}

fn shortfall(miss: &Miss, wish: &Wish, near: &Picked) -> (String, String) {
    let gap = &miss.gap;
    let percent = |share: f64| format!("{} %", rounded(100.0 * share, 1));
    let kg = |kg: f64| format!("{} kg", rounded(kg, 1));
    match gap.limit {
        Limit::LightestLoad => {
            let hardest = near.study.effort.iter().copied().fold(0.0, f64::max);
            let needed = (100.0 * hardest).ceil();
            let what = format!(
                "asks for {needed} % of what the lifter has at its hardest place, more than {}",
                percent(wish.effort)
            );
            let fix = if needed <= 100.0 {
                format!("--effort {needed}% or a lighter load would make it fit")
            } else {
                "this lifter cannot hold it: a lighter load, more help, or a stronger lifter would make it fit".to_owned()
            };
            (what, fix)
        }
        Limit::AllCarried => (
            format!(
                "leaves nothing to lift: {} of weight hang on bands that carry {}",
                kg(gap.has),
                kg(gap.needs)
            ),
            "more plates, or a weaker band from above, would make it fit".to_owned(),
        ),
        Limit::LeastShare => (
            format!(
                "has {} of it from bands and chains, less than {}",
                percent(gap.has),
                percent(gap.needs)
            ),
            format!(
                "--share {}%.. would make it fit, or a wider band",
                (100.0 * gap.has).floor()
            ),
        ),
        Limit::MostShare => (
            format!(
                "has {} of it from bands and chains, more than {}",
                percent(gap.has),
                percent(gap.needs)
            ),
            format!(
                "--share ..{}% would make it fit, or a narrower band",
                (100.0 * gap.has).ceil()
            ),
        ),
        Limit::LeastLoad(place) => {
            let at = wish.loads[place].at;
            (
                format!(
                    "loads {} at {}, less than {}",
                    kg(gap.has),
                    crate::narrative::setups::range_place(at),
                    kg(gap.needs)
                ),
                format!(
                    "--load-at \"{}={} kg..\" would make it fit, or more --effort",
                    place_word(at),
                    gap.has.floor()
                ),
            )
        }
        Limit::MostLoad(place) => {
            let at = wish.loads[place].at;
            (
                format!(
                    "loads {} at {}, more than {}",
                    kg(gap.has),
                    crate::narrative::setups::range_place(at),
                    kg(gap.needs)
                ),
                format!(
                    "--load-at \"{}=..{} kg\" would make it fit, or less --effort",
                    place_word(at),
                    gap.has.ceil()
                ),
            )
        }
    }
}

/// A place as the command line writes it.
fn place_word(at: f64) -> String {
    match at {
        0.0 => "start".to_owned(),
        0.5 => "middle".to_owned(),
        1.0 => "end".to_owned(),
        at => rounded(at, 3),
    }
}
