//! The usual cautions, each with when it applies; they print with every plan and have no switch.
//!
//! In: what a plan does (method, movement, load as a share of 1RM). Out: the cautions that apply, the
//! disclaimer always first; how many spotters, and the words they agree on.

use super::method::Method;
use super::rests::HEAVY_SHARE;
use crate::progress::origin::Origin;

/// When a caution applies.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum When {
    /// With every plan.
    Always,
    /// With bands on the bar.
    Bands,
    /// With chains on the bar.
    Chains,
    /// When more than 1RM is lowered.
    OverloadedLowering,
    /// When the bar is over the face or on the back.
    BarOverBody,
    /// From 85 % of 1RM on.
    HeavyLoad,
    /// With a bar.
    Bar,
    /// In the deadlift.
    Deadlift,
    /// When more than 1RM is lowered with the bar over the face or on the back.
    OverloadOverBody,
    /// On a sled.
    Sled,
}

/// One caution.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Caution {
    /// When it applies.
    pub when: When,
    /// The caution.
    pub text: &'static str,
    /// Where it comes from.
    pub origin: Origin,
}

const fn caution(when: When, text: &'static str, origin: Origin) -> Caution {
    Caution { when, text, origin }
}

const PRACTICE: Origin = Origin::Practice("usual rules of the weight room");
const EYES: Origin = Origin::Read(
    "band_eye_injuries_2021",
    "abstract: 11 patients, 14 eyes; also PubMed 33165305",
);
const SPOTTING: Origin = Origin::Recalled("nsca_essentials", "spotting guidelines");
const SORENESS: Origin = Origin::Recalled("clarkson_hubal_2002", "time course of soreness");
const HEART: Origin = Origin::Recalled("aha_2007", "contraindications of resistance exercise");

/// The sentence that opens every plan.
pub const DISCLAIMER: &str = "This is education, no medical advice. Local rules and a qualified professional on the \
spot come first.";

/// Every caution; [`DISCLAIMER`] is the first.
pub const CAUTIONS: &[Caution] = &[
    caution(When::Always, DISCLAIMER, PRACTICE),
    caution(
        When::Always,
        "Do not train injured, ill or in pain. Ask a clinician first when pregnant, after surgery, or with high blood \
         pressure, heart disease, an aneurysm or disease of the retina.",
        HEART,
    ),
    caution(
        When::Always,
        "Stop at once at sharp pain, dizziness, chest pressure, a headache that comes suddenly, or when technique breaks down.",
        PRACTICE,
    ),
    caution(
        When::Bar,
        "Collars on, plates checked, nobody near the ends of the bar.",
        PRACTICE,
    ),
    caution(
        When::BarOverBody,
        "Set safety arms at the lowest point of the bar's path, or have a spotter; never lift alone without either.",
        SPOTTING,
    ),
    caution(
        When::HeavyLoad,
        "Agree on the plan with the spotters before the set: number of repetitions, hand-off, and who takes the bar when.",
        SPOTTING,
    ),
    caution(
        When::Sled,
        "Set the sled's stops just below the lowest place of the lift, and keep a hand free for the catch.",
        PRACTICE,
    ),
    caution(
        When::Deadlift,
        "Keep the back's shape; end the set when it rounds. Low back pain ended a deadlift programme for 3 of 14 lifters.",
        Origin::Read("deadlift_programme_2020", "abstract"),
    ),
    caution(
        When::Bands,
        "Inspect every band before every use for nicks, whitening and sticky spots, and retire worn ones.",
        EYES,
    ),
    caution(
        When::Bands,
        "Anchor bands to something that cannot move or tip, over no sharp edge; load or bolt the rack down.",
        EYES,
    ),
    caution(
        When::Bands,
        "No face in the line of recoil; wear eye protection.",
        EYES,
    ),
    caution(
        When::Bands,
        "Stay inside the stretch that the band was measured for; keep it from sun, oil and heat; ask about latex allergy.",
        PRACTICE,
    ),
    caution(
        When::Chains,
        "Hang chains evenly on both sides, inside the collars, with links that touch the floor at the bottom; feet clear of them.",
        PRACTICE,
    ),
    caution(
        When::OverloadedLowering,
        "Experienced lifters with sound technique only, at most once a week for the same muscles.",
        PRACTICE,
    ),
    caution(
        When::OverloadOverBody,
        "Safety arms at the lowest point AND spotters: the lifter cannot raise this load.",
        SPOTTING,
    ),
    caution(
        When::OverloadedLowering,
        "Start at 100 % of 1RM and go up in small steps; stop the set when the lowering can no longer be slowed, and let \
         safety arms, stops or helpers take the load.",
        PRACTICE,
    ),
    caution(
        When::OverloadedLowering,
        "Expect soreness that peaks 24 to 72 hours later; leave a week before the next such session.",
        SORENESS,
    ),
    caution(
        When::OverloadedLowering,
        "Dark urine, swelling, or weakness for more than a few days: stop and seek medical care at once.",
        SORENESS,
    ),
];

/// What a plan does, as far as cautions depend on it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Circumstances<'a> {
    /// Name of the movement.
    pub movement: &'a str,
    /// The method.
    pub method: Method,
    /// Heaviest load of the plan as a share of 1RM.
    pub heaviest_share: f64,
    /// Whether a bar is used.
    pub with_bar: bool,
}

/// Movements with the bar over the face or on the back.
const BAR_OVER_BODY: &[&str] = &["bench-press", "overhead-press", "squat"];

/// The cautions that apply, in the order of [`CAUTIONS`].
#[must_use]
pub fn that_apply(plan: &Circumstances) -> Vec<&'static Caution> {
    CAUTIONS
        .iter()
        .filter(|caution| applies(caution.when, plan))
        .collect()
}

fn applies(when: When, plan: &Circumstances) -> bool {
    match when {
        When::Always => true,
        When::Bands => plan.method == Method::Bands,
        When::Chains => plan.method == Method::Chains,
        When::OverloadedLowering => plan.method == Method::OverloadedLowering,
        When::BarOverBody => plan.with_bar && BAR_OVER_BODY.contains(&plan.movement),
        When::HeavyLoad => plan.heaviest_share >= HEAVY_SHARE,
        When::Bar => plan.with_bar,
        When::Deadlift => plan.movement == "deadlift",
        When::OverloadOverBody => {
            plan.method == Method::OverloadedLowering && BAR_OVER_BODY.contains(&plan.movement)
        }
        When::Sled => plan.movement == "leg-press",
    }
}

/// Who helps, and the words they agree on.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Spotting {
    /// How many spotters.
    pub spotters: u32,
    /// Where they stand.
    pub place: &'static str,
    /// Word and what it means, in the order in which they are said.
    pub words: &'static [(&'static str, &'static str)],
    /// Where this comes from.
    pub origin: Origin,
}

const LIFT_WORDS: &[(&str, &str)] = &[
    ("ready", "lifter: grip and position are set"),
    ("lift", "lifter: hand the bar off now, on three"),
    ("mine", "lifter: I have the whole weight, hands off"),
    ("help", "lifter: touch the bar, as little as it takes"),
    ("take", "anyone: spotters take the bar at once and rack it"),
];

const LOWERING_WORDS: &[(&str, &str)] = &[
    ("ready", "lifter: grip and position are set"),
    (
        "mine",
        "lifter: I have the whole weight, hands off; the lowering begins",
    ),
    (
        "up",
        "the one in charge, at the bottom: all bring it back together, the lifter only guides",
    ),
    (
        "take",
        "anyone, at any time: helpers take the load at once and put it down",
    ),
    ("last", "the one in charge: one more, then put it down"),
];

/// Who brings more than 1RM back, and how.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Help {
    /// The movement; empty for any other.
    pub movement: &'static str,
    /// How many helpers.
    pub helpers: u32,
    /// Where they stand.
    pub place: &'static str,
    /// What they do, for the line of a set.
    pub back: &'static str,
}

const fn helped(
    movement: &'static str,
    helpers: u32,
    place: &'static str,
    back: &'static str,
) -> Help {
    Help {
        movement,
        helpers,
        place,
        back,
    }
}

const BAR_ENDS: &str = "one at each end of the bar, one in the middle in charge";
const BY_SPOTTERS: &str = "spotters lift it back";

/// Help by movement (common practice); the last row stands for movements that are not listed.
#[rustfmt::skip]
pub const HELP: &[Help] = &[
    helped("bench-press",       3, BAR_ENDS, BY_SPOTTERS),
    helped("overhead-press",    3, BAR_ENDS, BY_SPOTTERS),
    helped("squat",             3, BAR_ENDS, BY_SPOTTERS),
    helped("hip-thrust",        2, "one at each end of the bar, one of them in charge", BY_SPOTTERS),
    helped("leg-press",         2, "one at each side of the sled, one of them in charge", "helpers push the sled back"),
    helped("pull-up",           1, "below and behind, hands at the lifter's waist", "step back up on a box"),
    helped("calf-raise",        1, "beside the lifter", "rise with the hands' help on a rack"),
    helped("leg-curl",          1, "at the machine's lever", "a helper brings the lever back"),
    helped("knee-extension",    1, "at the machine's lever", "a helper brings the lever back"),
    helped("biceps-curl",       2, "one at each dumb-bell", "helpers lift them back"),
    helped("triceps-extension", 2, "one at each dumb-bell", "helpers lift them back"),
    helped("lateral-raise",     2, "one at each dumb-bell", "helpers lift them back"),
    helped("",                  3, "one at each side of the load, one in charge", BY_SPOTTERS),
];

/// Movements in which nobody can hand more than 1RM over, and why (common practice).
pub const NOT_HANDED_OVER: &[(&str, &str)] = &[
    (
        "deadlift",
        "spotters cannot hold the bar at the top beside the lifter, and a back that rounds under more than 1RM is at risk",
    ),
    (
        "row",
        "spotters cannot hand the bar to a bent-over lifter, and a back that rounds under more than 1RM is at risk",
    ),
];

/// The help that a movement needs.
#[must_use]
pub fn help(movement: &str) -> &'static Help {
    HELP.iter()
        .find(|help| help.movement == movement)
        .unwrap_or(&HELP[HELP.len() - 1])
}

/// Spotters and their words, or `None` where a spotter does not belong (pulls from the floor, machines).
#[must_use]
pub fn spotting(plan: &Circumstances) -> Option<Spotting> {
    let over_body = plan.with_bar && BAR_OVER_BODY.contains(&plan.movement);
    if plan.method == Method::OverloadedLowering {
        let help = help(plan.movement);
        return Some(Spotting {
            spotters: help.helpers,
            place: help.place,
            words: LOWERING_WORDS,
            origin: PRACTICE,
        });
    }
    if !over_body {
        return None;
    }
    Some(
        if plan.movement == "bench-press" && plan.heaviest_share < 0.95 {
            Spotting {
                spotters: 1,
                place: "behind the head of the bench",
                words: LIFT_WORDS,
                origin: SPOTTING,
            }
        } else if plan.movement == "bench-press" || plan.heaviest_share >= HEAVY_SHARE {
            Spotting {
                spotters: 2,
                place: "one at each end of the bar",
                words: LIFT_WORDS,
                origin: SPOTTING,
            }
        } else {
            Spotting {
                spotters: 1,
                place: "close behind the lifter's trunk",
                words: LIFT_WORDS,
                origin: SPOTTING,
            }
        },
    )
}
