//! What a value of the model means: a plain sentence for each path that can be set.
//!
//! In: a path as `PATH=VALUE` takes it. Out: a sentence; none for a path that nobody has described.

/// What the value of a path means.
#[must_use]
pub fn meaning(path: &str) -> Option<String> {
    let parts: Vec<&str> = path.split('.').collect();
    match parts.as_slice() {
        ["lifter", rest @ ..] => of_the_lifter(rest),
        ["segments", segment, field] => of_a_segment(&words(segment), field),
        ["build", field] => of_the_build(field).map(str::to_owned),
        ["muscles", muscle, rest @ ..] => of_a_muscle(&words(muscle), rest),
        ["joints", dof, field] => of_a_joint(&words(dof), field),
        ["curves", rest @ ..] => of_the_curves(&rest.join(".")).map(str::to_owned),
        ["movement", "carrier", field] => of_the_carrier(field).map(str::to_owned),
        ["movement", "path", rest @ ..] => of_the_path(rest),
        _ => None,
    }
}

/// A name of the model as words.
fn words(name: &str) -> String {
    name.replace('_', " ")
}

fn of_the_lifter(rest: &[&str]) -> Option<String> {
    Some(match rest {
        ["height"] => "Standing height; a new one rescales the whole body.".to_owned(),
        ["body_mass"] => "Body mass; a new one rescales segments and muscles.".to_owned(),
        ["strength_scale"] => "Factor on the force of every muscle.".to_owned(),
        ["lift_strength", lift] => format!(
            "Factor on the force of every muscle in the {} alone.",
            words(lift)
        ),
        ["strength", group] => {
            format!(
                "Factor on the force of the strength group {}.",
                words(group)
            )
        }
        _ => return None,
    })
}

fn of_a_segment(segment: &str, field: &str) -> Option<String> {
    Some(match field {
        "length" => format!("Length of the {segment} between its joint centres."),
        "mass" => format!("Mass of the {segment}, of one side where there are two."),
        "centre_of_mass" => format!(
            "Where the centre of mass of the {segment} lies, from the end nearer the trunk, as a share of its length."
        ),
        "gyration" => format!(
            "Radius of gyration of the {segment} about its centre of mass, as a share of its length."
        ),
        _ => return None,
    })
}

fn of_the_build(field: &str) -> Option<&'static str> {
    Some(match field {
        "biacromial_breadth" => {
            "Breadth of the shoulders between the bony tips above the joints (acromia); what \"shoulder breadths\" of the \
             technique are multiples of."
        }
        "shoulder_breadth" => "Distance between the centres of the shoulder joints.",
        "chest_height" => "Height of the chest under the bar above the shoulder joint, lying.",
        "hip_breadth" => "Distance between the centres of the hip joints.",
        "hip_to_lumbar" => {
            "Distance from the hip joint up to the joint of spine and pelvis (L5/S1)."
        }
        "ankle_height" => "Height of the ankle joint above the sole.",
        "heel_to_ankle" => "Distance along the floor from the heel to the ankle joint.",
        "ankle_to_ball" => "Distance along the floor from the ankle joint to the ball of the foot.",
        _ => return None,
    })
}

fn of_a_muscle(muscle: &str, rest: &[&str]) -> Option<String> {
    Some(match rest {
        ["peak_force"] => format!(
            "Force of {muscle} with all fibres active, held still at their optimal length (F0)."
        ),
        ["optimal_fibre_length"] => {
            format!("Length at which the fibres of {muscle} make most force.")
        }
        ["pennation"] => {
            format!("Angle between the fibres and the tendon of {muscle} at optimal length.")
        }
        ["max_velocity"] => format!(
            "Greatest speed at which the fibres of {muscle} shorten, in optimal lengths per second."
        ),
        ["moment_arm", dof] | ["moment_arm", dof, "scale"] => format!(
            "Factor on the moment arm of {muscle} at every angle of {}.",
            words(dof)
        ),
        ["shoulder", place @ ..] => of_a_line(muscle, place)?,
        ["reference", _, "fibre_length"] => format!(
            "Length of the relaxed fibres of {muscle} in its reference pose, in optimal lengths."
        ),
        ["tendon", "slack_length"] => {
            format!("Length of the tendon of {muscle} when nothing pulls at it.")
        }
        ["tendon", "strain_at_peak"] => {
            format!(
                "How much the tendon of {muscle} gives under the peak force, as a share of its length."
            )
        }
        _ => return None,
    })
}

fn of_a_line(muscle: &str, place: &[&str]) -> Option<String> {
    Some(match place {
        [] | ["scale"] => {
            format!(
                "Factor on all lengths of the line of {muscle} across the shoulder, and so on its moment arm there about every axis."
            )
        }
        ["wrap"] => {
            format!("Radius about the shoulder joint that the line of {muscle} bends round.")
        }
        [end @ ("origin" | "over_blade" | "insertion"), way] => {
            let from = match *end {
                "origin" => "starts",
                "over_blade" => "passes the shoulder blade",
                _ => "ends on the upper arm",
            };
            let way = match *way {
                "out" => "outward of",
                "forward" => "in front of",
                _ => "above",
            };
            format!(
                "How far {way} the shoulder joint the line of {muscle} {from}, the arm hanging."
            )
        }
        _ => return None,
    })
}

fn of_a_joint(dof: &str, field: &str) -> Option<String> {
    Some(match field {
        "low" => format!("Angle of {dof} near the lower end of its passive range."),
        "high" => format!("Angle of {dof} near the upper end of its passive range."),
        "low_torque" => format!("Torque with which {dof} is pushed back at its lower end."),
        "high_torque" => format!("Torque with which {dof} is pushed back at its upper end."),
        "width" => format!("Angle over which that torque of {dof} falls to a third (1/e)."),
        _ => return None,
    })
}

fn of_the_curves(field: &str) -> Option<&'static str> {
    Some(match field {
        "passive.shape" => "How suddenly passive force rises as a fibre is stretched.",
        "passive.strain_at_peak" => {
            "Stretch beyond optimal length at which passive force equals the peak force."
        }
        "velocity.hill_a" => {
            "Curvature of force over velocity in shortening (Hill's a/F0): less is more curved."
        }
        "velocity.eccentric_limit" => {
            "Force of a quickly lengthened fibre over its isometric force."
        }
        "velocity.voluntary_share" => {
            "Share of that surplus in lengthening that a voluntary effort brings to the joint."
        }
        "velocity.eccentric_slope" => {
            "How much steeper force rises in slow lengthening than it falls in slow shortening."
        }
        "dynamics.activation_rise" => "Time constant with which activation rises.",
        "dynamics.activation_fall" => "Time constant with which activation falls.",
        "dynamics.tiring_per_s" => "Share of the strength in use that is spent a second.",
        "dynamics.drive_rise" => "Time constant with which the nerves' own drive rises.",
        "dynamics.enhancement" => {
            "Gain of force, as a share, per whole range of active lengthening before it decays."
        }
        "dynamics.enhancement_half_life" => "Time in which half of that gain is lost.",
        "dynamics.stop_share" => {
            "Share of what could slow a load that a lifter plans to end a fast lift with."
        }
        _ => return None,
    })
}

fn of_the_carrier(field: &str) -> Option<&'static str> {
    Some(match field {
        "pad" => "Distance of the machine's pad from the joint.",
        "cam" => "Radius of the cam that the cable of the stack runs over.",
        _ => return None,
    })
}

fn of_the_path(rest: &[&str]) -> Option<String> {
    let fixed = match rest {
        ["from"] => "Angle of the moving joint at the start of the range.",
        ["to"] => "Angle of the moving joint at the end of the range.",
        ["joint_height"] => "Height of the moving joint above the floor.",
        ["shoulder_height"] => {
            "Height of the shoulder joints above the floor, or of the hips bent over."
        }
        ["start", way] => return Some(of_the_hand(way, "start")),
        ["end", way] => return Some(of_the_hand(way, "end")),
        ["lockout_elbow"] => "Bend of the elbow of a straight arm at the lockout end.",
        ["blades_drawn_back"] => {
            "How far the shoulder blades are drawn back at the end beyond what they do with the arm."
        }
        ["friction"] => {
            "Friction of hands on the bar or feet on the plate, over the force across it."
        }
        ["end_ankle"] => "Lean of the shank at the end of the range.",
        ["end_knee"] => "Bend of the knee at the end, a few degrees short of straight.",
        ["end_hip"] => "Bend of the hip at the end, a few degrees short of straight.",
        ["start_knee"] => "Bend of the knee at the start.",
        ["lumbar"] => "Flexion of the lower back at the start, from standing.",
        ["end_lumbar"] => "Flexion of the lower back at the end, from standing.",
        ["bar_over"] => "Place of the bar along the foot, from heel (0) to toe (1).",
        ["back"] => "Angle between the rails and the line from hip to shoulder on the back pad.",
        ["seat_height"] => "Height of the hip joint above the floor.",
        ["pivot"] => "Where the bench bears the trunk, as a share of its length from the hip.",
        ["pivot_height"] => "Height of the trunk's line of joints where the bench bears it.",
        ["start_hip_height"] => "Height of the hip joint above the floor at the start.",
        ["bar_above_hip"] => "Height of the middle of the bar above the hip joint.",
        ["bench_friction"] => "Friction between back and bench, over the force across it.",
        ["floor_friction"] => "Friction between feet and floor, over the force across it.",
        ["bar", rest @ ..] => return of_the_bar(rest),
        [course @ ("ankle_course" | "arms_course"), pose, part] => {
            return Some(key_pose(course, pose, part));
        }
        _ => return None,
    };
    Some(fixed.to_owned())
}

fn of_the_hand(way: &str, end: &str) -> String {
    let way = match way {
        "forward" => {
            "Place of the hand in front of the shoulder joint, square to the trunk (lying: toward the feet)"
        }
        _ => "Height of the hand above the shoulder joint, along a standing or seated trunk",
    };
    format!("{way} at the {end} of the range.")
}

fn of_the_bar(rest: &[&str]) -> Option<String> {
    let styled = |style: &str| match style {
        "conventional" => " with the hands outside the legs",
        "sumo" => " with the hands between the legs",
        _ => "",
    };
    Some(match rest {
        [place @ ("high" | "low"), "along"] => {
            format!("How far up the trunk from the hip a {place} bar lies, in trunk lengths.")
        }
        [place @ ("high" | "low"), "behind"] => {
            format!(
                "How far behind the line from hip to shoulder a {place} bar lies, in trunk lengths."
            )
        }
        ["ankle_per_knee"] => {
            "Lean of the shank over the bend of the knee in the lowest pose.".to_owned()
        }
        ["start_height"] => {
            "Height of the middle of the bar above the floor at the start.".to_owned()
        }
        ["reach"] => "What fingers and shoulder blades add to the length of the arm.".to_owned(),
        ["start_arms"] => {
            "How far the arms lean from plumb at the start, shoulders in front of the bar."
                .to_owned()
        }
        [course @ ("ankle_course" | "arms_course"), pose, part] => key_pose(course, pose, part),
        [.., "feet", field] => {
            let style = styled(rest[0]);
            match *field {
                "between" => format!("Distance between the ankles{style}."),
                "turned_out" => format!("How far the feet are turned out{style}."),
                _ => return None,
            }
        }
        [style, "start_ankle"] => format!("Lean of the shank at the start{}.", styled(style)),
        _ => return None,
    })
}

/// A number of a list of key poses.
fn key_pose(course: &str, pose: &str, part: &str) -> String {
    let limb = if course == "ankle_course" {
        "shank's"
    } else {
        "arms'"
    };
    match part {
        "0" => format!("Place in the range of key pose {pose} of the {limb} lean."),
        _ => format!(
            "The {limb} lean at key pose {pose}, as a share of its way that is still to go."
        ),
    }
}
