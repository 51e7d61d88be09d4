//! Words for: what is accepted of a model and yet unlikely.

use super::known_told::{did_you_mean, one_of};
use super::model_body::{segment_mass, stature, strong_joint};
use super::told::Told;
use crate::error::Doubt;
use crate::movement::Helping;
use crate::narrative::measured::unlikely;
use crate::narrative::muscle_names::head_name;
use crate::narrative::quantities::rounded;
use crate::narrative::shared_phrases::where_it_helps;
use crate::study::LIVING_LENGTHS;

/// The doubt in words.
pub(super) fn told(doubt: &Doubt) -> Told {
    match doubt {
        Doubt::Unlikely(range) => Told::new(unlikely(range)),
        Doubt::LongArm {
            arm_cm,
            angle_deg,
            most_cm,
        } => Told::new(format!(
            "makes an arm of {} cm at {} deg; few muscles reach {most_cm} cm",
            rounded(*arm_cm, 1),
            rounded(*angle_deg, 0)
        )),
        Doubt::NoStrength => Told::new("names no group: each is as strong as the muscle table says")
            .hint("take after a built-in lifter: extends: \"reference-man\", or strength_like"),
        Doubt::Fibres {
            muscle,
            movement,
            length,
        } => Told::new(format!(
            "makes relaxed fibres of {} optimal lengths in the {} on the way of the {}; {} to {} is accepted without a \
             word, and `curve` tells active ones outside {} to {}",
            rounded(length.value, 2),
            head_name(muscle),
            movement.to_lowercase(),
            length.least,
            length.most,
            LIVING_LENGTHS.0,
            LIVING_LENGTHS.1
        ))
        .hint(if length.value < length.least {
            "a greater optimal_fibre_length, a smaller moment_arm or a greater fibre_length in `reference` makes them longer there"
        } else {
            "a greater optimal_fibre_length, a smaller moment_arm or a smaller fibre_length in `reference` makes them shorter there"
        }),
        Doubt::Strong(torque) => Told::new(format!(
            "makes {}; up to {} is twice the published mean",
            strong_joint(torque),
            rounded(torque.per_kg.most, 1)
        )),
        Doubt::CannotDo { lifts } => Told::new(format!(
            "this body cannot do: {}",
            lifts.join(", ").to_lowercase()
        ))
        .hint("`torquill curve` with one of them says why"),
        Doubt::UnusedTechnique { known } => {
            Told::new("is read by nothing: neither path nor carrier names it").hint(did_you_mean(known))
        }
        Doubt::AngleOnTheWay => Told::new(
            "names an angle, and this lift is drawn over the way of its load",
        )
        .hint("say what the distance is, such as \"height of the bar above the chest\""),
        Doubt::GoesDown { by_cm } => Told::new(format!(
            "lets the load end {} cm below where it starts",
            rounded(*by_cm, 0)
        ))
        .hint("the range is that of lifting: look whether start and end are swapped"),
        Doubt::LoadHelps { at_start, share } => Told::new(format!(
            "lets the load sink {}: there it helps the lift",
            where_it_helps(&Helping {
                at_start: *at_start,
                share: *share,
            })
        ))
        .hint("look at the angles that stand: an arm behind an upright trunk begins past the plumb line, and technique `torso_angle` leans the trunk back"),
        Doubt::CalledLike { name, lift } => Told::new(format!(
            "is a name of the {}, which moves in another way; \"{name}\" in a log would be this lift",
            lift.to_lowercase()
        )),
        Doubt::OtherSex => Told::new("is a table of the other sex")
            .hint("de-leva-women goes with sex: Woman, de-leva-men with sex: Man"),
        Doubt::Stature {
            sum_cm,
            usual_cm,
            ratio,
        } => Told::new(format!(
            "{}; {} to {} times that is usual",
            stature(*sum_cm, *usual_cm),
            ratio.least,
            ratio.most
        ))
        .hint("look whether the lengths belong to that height"),
        Doubt::ThickerThanWide => Told::new("is more than `width`")
            .hint("look whether width and thickness are swapped"),
        Doubt::Lone { count: 1 } => Told::new("is 1, and a bar is loaded in pairs, so it is never used"),
        Doubt::Lone { count } => Told::new(format!(
            "is {count}, and a bar is loaded in pairs, so one of them is never used"
        )),
        Doubt::OtherName { file } => Told::new(format!(
            "is not that of the file: the library knows it as `{file}`"
        )),
        Doubt::NewGroup { known } => {
            let told = Told::new(
                "is a new strength group: no strength factor of a built-in lifter holds for it",
            );
            one_of(known, "groups").into_iter().fold(told, Told::hint)
        }
        Doubt::AgainstGroup {
            joint,
            group_pulls_up,
        } => {
            let way = if *group_pulls_up { "up" } else { "down" };
            Told::new(format!(
                "pulls the angle of the {joint} the other way than its group, which pulls it {way}"
            ))
            .hint("look at the sign: an arm is positive where the muscle pulls the angle up")
        }
        Doubt::GroupElsewhere { joints } => Told::new(format!(
            "is a group of muscles about: {}; this one crosses none of them",
            joints.join(", ")
        )),
        Doubt::AlongElsewhere => Told::new("is at none of the joints that the muscle crosses")
            .hint("fibres and arms are scaled with its length: name the segment that the muscle lies along"),
        Doubt::Unsourced { others } => unsourced(others),
        Doubt::MassIndex(range) => Told::new(format!(
            "is {} kg for each square metre of height; {} to {} is usual",
            rounded(range.value, 1),
            range.least,
            range.most
        )),
        Doubt::Misfit { percent } => Told::new(format!(
            "goes badly with the law of rubber: readings and law differ by {} % of the largest reading",
            rounded(*percent, 0)
        ))
        .hint("read length and pull once more"),
        Doubt::MassProportion {
            mass_kg,
            usual_kg,
            ratio,
        } => Told::new(format!(
            "{}, and {} to {} times that is usual",
            segment_mass(*mass_kg, *usual_kg),
            ratio.least,
            ratio.most
        )),
        Doubt::Proportion {
            length_cm,
            usual_cm,
            ratio,
        } => Told::new(format!(
            "is {} cm; at that height it is about {} cm, and {} to {} times that is usual",
            rounded(*length_cm, 1),
            rounded(*usual_cm, 1),
            ratio.least,
            ratio.most
        )),
    }
}

/// A changed number without a source, and the others of its file.
fn unsourced(others: &[String]) -> Told {
    let others = match others {
        [] => String::new(),
        others => format!("; so are: {}", others.join(", ")),
    };
    Told::new(format!("is changed without a source{others}"))
        .hint("say where the numbers come from, beside them: source: Assumed(\"reason\")")
}
