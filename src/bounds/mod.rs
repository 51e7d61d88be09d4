//! What is taken for real at every door: one table of bounds, each with its source.
//!
//! In: `models/bounds.ron`, compiled in; no folder of the user's replaces it, or it would guard nothing.
//! Out: [`bounds`], whose fields tell whether a value is inside. It stands below the laws because they
//! read texts and records too, and above `error`, whose facts it fills.

mod bound;
mod shown_text;

pub use bound::{Bound, LowerEnd, UpperEnd};
pub use shown_text::{first_hidden, is_shown};

use serde::Deserialize;
use std::sync::LazyLock;

/// The text of the table, as `models/` holds it.
pub const TEXT: &str = include_str!("../../models/bounds.ron");

/// The table, read once.
#[must_use]
pub fn bounds() -> &'static Bounds {
    static TABLE: LazyLock<Bounds> =
        LazyLock::new(|| ron::from_str(TEXT).expect("a test reads the table that is compiled in"));
    &TABLE
}

/// Every bound, by what it is of.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Bounds {
    /// Letters of a title, a name, a word that is set.
    pub short_text: Bound,
    /// Letters of any other text of a file.
    pub long_text: Bound,
    /// Standing height of a lifter.
    pub lifter_height: Bound,
    /// Body mass of a lifter.
    pub lifter_mass: Bound,
    /// Factor on the strength of a lifter or of one group.
    pub strength_factor: Bound,
    /// Share of a segment's mass in a table.
    pub segment_mass_percent: Bound,
    /// All segments of a table, limbs twice.
    pub segment_mass_sum: Bound,
    /// Length of a segment in a table.
    pub segment_row_length: Bound,
    /// Centre of mass of a segment in a table.
    pub centre_of_mass_percent: Bound,
    /// Radius of gyration of a segment in a table.
    pub gyration_percent: Bound,
    /// A breadth or small height of the body in a table.
    pub breadth_share: Bound,
    /// Length of a segment of a finished body.
    pub segment_length: Bound,
    /// Mass of a segment of a finished body.
    pub segment_mass: Bound,
    /// Centre of mass of a segment of a finished body.
    pub centre_of_mass: Bound,
    /// Radius of gyration of a segment of a finished body.
    pub gyration: Bound,
    /// A breadth or small height of a finished body.
    pub build_size: Bound,
    /// Body mass over the square of the height.
    pub body_mass_index: Bound,
    /// A segment's share of the height over that of the shipped tables.
    pub segment_proportion: Bound,
    /// Head, trunk, thigh, shank and ankle's height together, as a share of the height, over that of the shipped tables.
    pub stature_proportion: Bound,
    /// A breadth's share of the height over that of the shipped tables.
    pub breadth_proportion: Bound,
    /// Angle of the elbow.
    pub angle_elbow: Bound,
    /// Angle of the shoulder, in each of its planes.
    pub angle_shoulder: Bound,
    /// Angle of the lower back.
    pub angle_lumbar: Bound,
    /// Angle of the hip.
    pub angle_hip: Bound,
    /// Angle of the knee.
    pub angle_knee: Bound,
    /// Angle of the ankle.
    pub angle_ankle: Bound,
    /// Angle of the thigh below the level at the lowest place of a squat.
    pub thigh_depth: Bound,
    /// Length of relaxed fibres on the way of a lift.
    pub relaxed_length: Bound,
    /// Passive torque at the end of a joint.
    pub passive_torque: Bound,
    /// Angle over which a passive torque grows.
    pub passive_width: Bound,
    /// Peak isometric force of a muscle.
    pub peak_force: Bound,
    /// Optimal fibre length of a muscle.
    pub fibre_length: Bound,
    /// Pennation of a muscle at optimal length.
    pub pennation: Bound,
    /// Greatest shortening speed of a fibre.
    pub fibre_speed: Bound,
    /// Fibre length in a reference pose.
    pub reference_fibre_length: Bound,
    /// Slack length of a tendon.
    pub tendon_slack: Bound,
    /// Strain of a tendon at peak force.
    pub tendon_strain: Bound,
    /// Factor on a moment arm.
    pub arm_scale: Bound,
    /// A moment arm of a muscle, on either side.
    pub moment_arm: Bound,
    /// A distance of a muscle's line from the shoulder joint, on either side.
    pub line_place: Bound,
    /// Radius that a muscle's line bends round.
    pub line_wrap: Bound,
    /// Torque of the elbow in flexion over body mass, held still, as of all that follow.
    pub torque_elbow_flexion: Bound,
    /// The same in extension.
    pub torque_elbow_extension: Bound,
    /// Of the shoulder, in any direction.
    pub torque_shoulder: Bound,
    /// Of the lower back, one side, in flexion.
    pub torque_trunk_flexion: Bound,
    /// The same in extension.
    pub torque_trunk_extension: Bound,
    /// Of the hip in flexion.
    pub torque_hip_flexion: Bound,
    /// The same in extension.
    pub torque_hip_extension: Bound,
    /// Of the knee in flexion.
    pub torque_knee_flexion: Bound,
    /// The same in extension.
    pub torque_knee_extension: Bound,
    /// Of the ankle in dorsiflexion.
    pub torque_dorsiflexion: Bound,
    /// The same in plantarflexion.
    pub torque_plantarflexion: Bound,
    /// Half-width of a parabola of active force.
    pub active_width: Bound,
    /// Shape of a bell of active force.
    pub active_gamma: Bound,
    /// Width of a bell of active force, at the lengths at which it is used.
    pub bell_width: Bound,
    /// Peak of a curve of active force.
    pub active_peak: Bound,
    /// Shape of the passive curve.
    pub passive_shape: Bound,
    /// Strain of a fibre at which its passive force is the peak force.
    pub passive_strain: Bound,
    /// Curvature of the force-velocity curve, a/F0.
    pub hill_a: Bound,
    /// Greatest force in lengthening over isometric.
    pub eccentric_limit: Bound,
    /// Share of the surplus in lengthening that a joint shows.
    pub voluntary_share: Bound,
    /// Slope of slow lengthening over that of slow shortening.
    pub eccentric_slope: Bound,
    /// Time constant of activation and drive.
    pub rise_time: Bound,
    /// Force enhancement after lengthening.
    pub enhancement: Bound,
    /// Half-life of the enhancement.
    pub enhancement_half_life: Bound,
    /// Rate at which what is active tires.
    pub tiring_per_s: Bound,
    /// Where a lifter begins to stop the bar, and how hard.
    pub stop_share: Bound,
    /// Length of a filament or a sarcomere.
    pub filament_length: Bound,
    /// Bare zone of the thick filament.
    pub bare_zone: Bound,
    /// Thickness of the Z disc.
    pub z_disc: Bound,
    /// Share of peak force at the break of the ascending limb.
    pub break_share: Bound,
    /// Pad and cam of a machine.
    pub lever_radius: Bound,
    /// Height of the joint of a sweep.
    pub joint_height: Bound,
    /// Elbow at lockout.
    pub lockout_elbow: Bound,
    /// How far shoulder blades are drawn back.
    pub blades_drawn_back: Bound,
    /// Friction over normal force.
    pub friction: Bound,
    /// Height of the shoulders.
    pub shoulder_height: Bound,
    /// Height of the shoulders or the hips over the standing height.
    pub shoulder_height_share: Bound,
    /// A place of the hand.
    pub hand_place: Bound,
    /// A place of the hand over the height.
    pub hand_place_share: Bound,
    /// Where the bar lies along the back.
    pub bar_along: Bound,
    /// How far behind the trunk the bar lies.
    pub bar_behind: Bound,
    /// How the ankle follows the knee.
    pub ankle_per_knee: Bound,
    /// Height of the bar at the start of a pull.
    pub bar_start_height: Bound,
    /// How far the bar is in front of the ankle.
    pub bar_reach: Bound,
    /// Ankle at the start of a pull.
    pub start_ankle: Bound,
    /// Lean of the arms at the start of a pull.
    pub start_arms: Bound,
    /// Distance between the ankles of a stance.
    pub feet_between: Bound,
    /// How far feet are turned out.
    pub feet_turned_out: Bound,
    /// Ankle at the end of a stance.
    pub end_ankle: Bound,
    /// Knee at lockout.
    pub end_knee: Bound,
    /// Where over the foot the bar stays.
    pub bar_over: Bound,
    /// Flexion of the lower back that a lift holds.
    pub held_lumbar: Bound,
    /// Knee at the start of a press.
    pub start_knee: Bound,
    /// Lean of the back in a leg press.
    pub press_back: Bound,
    /// Height of a seat.
    pub seat_height: Bound,
    /// Where the trunk lies on the bench.
    pub bench_along: Bound,
    /// Height of the bench.
    pub bench_height: Bound,
    /// Height of the hips at the start.
    pub hip_height: Bound,
    /// Hip at lockout.
    pub end_hip: Bound,
    /// Height of the bar above the hip joint.
    pub bar_above_hip: Bound,
    /// Share of 1RM from which a second spotter stands by.
    pub second_spotter: Bound,
    /// Helpers who hand more than 1RM over.
    pub helpers: Bound,
    /// Plain load of a lift, bar and both sides.
    pub load_mass: Bound,
    /// Bands or chains of a kind on a side.
    pub pieces: Bound,
    /// Pairs of equal plates.
    pub plate_pairs: Bound,
    /// Rest length of a band.
    pub band_rest_length: Bound,
    /// Share of its pull that a band has lost.
    pub band_wear: Bound,
    /// Largest stretch over rest length that is asked of a band.
    pub safe_stretch: Bound,
    /// Share of the stored energy that a band keeps.
    pub band_loss: Bound,
    /// Pull of a band at its largest stretch.
    pub band_pull: Bound,
    /// Width of the strand of a band.
    pub band_width: Bound,
    /// Thickness of a layer of a band.
    pub band_thickness: Bound,
    /// Layers of a band.
    pub band_layers: Bound,
    /// Strands of a band.
    pub band_strands: Bound,
    /// Height of an anchor.
    pub anchor_height: Bound,
    /// An anchor ahead of the load or behind it.
    pub anchor_offset: Bound,
    /// Height of the box under a chain.
    pub box_height: Bound,
    /// Height of a rack's safety arms.
    pub safety_arm_height: Bound,
    /// Length of a leader of a chain.
    pub leader_length: Bound,
    /// Mass of a leader of a chain.
    pub leader_mass: Bound,
    /// Mass of a chain a metre.
    pub chain_density: Bound,
    /// Wire of a link.
    pub chain_wire: Bound,
    /// Inside width of a link; the wire is its least.
    pub chain_inside: Bound,
    /// Inside length of a link; its width is its least.
    pub chain_pitch: Bound,
    /// Length of a chain.
    pub chain_length: Bound,
    /// Handle travel over stack travel.
    pub cable_ratio: Bound,
    /// Share of a cable's pull lost in its pulleys.
    pub cable_friction: Bound,
    /// Radius of a cam.
    pub cam_radius: Bound,
    /// Arm of a lever's plates.
    pub loaded_arm: Bound,
    /// Friction of rails over normal force.
    pub rail_friction: Bound,
    /// Force of a spotter or a partner who pushes down.
    pub helper_force: Bound,
    /// Share of the load that a spotter takes.
    pub helper_share: Bound,
    /// Mass of a bar.
    pub bar_mass: Bound,
    /// Mass of a dumb-bell.
    pub dumbbell_mass: Bound,
    /// Mass of both collars.
    pub collar_mass: Bound,
    /// Smallest step of a gym.
    pub smallest_step: Bound,
    /// Step of a weight stack.
    pub stack_step: Bound,
    /// All of a weight stack; its step is the least.
    pub stack_most: Bound,
    /// Mass of an empty sled.
    pub sled_mass: Bound,
    /// Mass of a plate.
    pub plate_mass: Bound,
    /// Pieces of a kind in a gym.
    pub owned_pieces: Bound,
    /// Kinds of plate, band or chain in a gym.
    pub owned_kinds: Bound,
    /// A load that is planned.
    pub planned_load: Bound,
    /// Largest effort that a setup may ask.
    pub hardest_effort: Bound,
    /// Effort of a wished profile.
    pub profile_effort: Bound,
    /// Share of the load that bands and chains may make.
    pub load_share: Bound,
    /// A place of the range.
    pub range_place: Bound,
    /// Effort that the setup of a plan aims at.
    pub planned_effort: Bound,
    /// Age of who trains.
    pub trainee_age: Bound,
    /// Months of training of who trains.
    pub training_months: Bound,
    /// Variance or covariance of the logarithm of a strength.
    pub log_covariance: Bound,
    /// Logarithm of a strength of one version of a lifter beside that of the file.
    pub log_strength: Bound,
    /// Standard deviation of a logarithm, or a correlation.
    pub log_deviation: Bound,
    /// Lightest bar that a lift with a bar is done with.
    pub lightest_bar: Bound,
    /// Samples of the range.
    pub samples: Bound,
    /// Part of the range that a repetition covers.
    pub range_part: Bound,
    /// Time of a lowering or a pause.
    pub phase_time: Bound,
    /// Step of the integration of a repetition.
    pub time_step: Bound,
    /// Step between two loads.
    pub loading_step: Bound,
    /// A load as percent of the maximum.
    pub maximum_percent: Bound,
    /// Values of a parameter that are compared.
    pub compared_values: Bound,
    /// Poses of all curves that are compared.
    pub compared_poses: Bound,
    /// Setups that are compared.
    pub compared_setups: Bound,
    /// Change by which values are ranked.
    pub ranked_change: Bound,
    /// Lifters of an invented group.
    pub cohort_members: Bound,
    /// Share of the largest effort from which a region is sticking.
    pub region_share: Bound,
    /// Load of a set in a log.
    pub log_load: Bound,
    /// Repetitions of a set in a log.
    pub log_repetitions: Bound,
    /// Sets of one row of a log.
    pub log_sets: Bound,
    /// Mean velocity of a lift in a log.
    pub log_velocity: Bound,
    /// Repetitions in reserve.
    pub log_reserve: Bound,
    /// Year of a session.
    pub log_year: Bound,
    /// Sets of one lift.
    pub planned_sets: Bound,
    /// Repetitions of a set.
    pub set_repetitions: Bound,
    /// Repetitions of a group.
    pub group_repetitions: Bound,
    /// Repetitions of a session.
    pub session_repetitions: Bound,
    /// Rest between two sets.
    pub rest_between_sets: Bound,
    /// Weeks of a block.
    pub block_weeks: Bound,
    /// Rows of a published table.
    pub table_rows: Bound,
    /// Repetitions in a published table.
    pub table_repetitions: Bound,
    /// Sets in a published table.
    pub table_sets: Bound,
    /// Percent of 1RM in a published table.
    pub table_percent: Bound,
    /// Share of 1RM in a published table.
    pub table_share: Bound,
    /// Load of an overloaded lowering in a published table.
    pub overload_share: Bound,
    /// Velocity at 1RM in a published table.
    pub table_speed: Bound,
    /// Rate of the controller of the fatigue model.
    pub controller_rate: Bound,
    /// Rate of fatigue or recovery.
    pub fatigue_rate: Bound,
    /// How much faster recovery is at rest.
    pub rest_multiplier: Bound,
    /// Time of a recovery.
    pub recovery_time: Bound,
    /// Work over energy of the ATP made.
    pub efficiency: Bound,
    /// Time of a lowering.
    pub lowering_time: Bound,
    /// A rest in a published table.
    pub table_rest: Bound,
    /// Repetitions of a group.
    pub cluster_group: Bound,
    /// Rest between two groups.
    pub cluster_rest: Bound,
}

#[cfg(test)]
mod tests {
    use super::bounds;

    #[test]
    fn law_the_compiled_in_table_reads() {
        assert!(bounds().lifter_height.holds(1.75));
        assert!(!bounds().peak_force.holds(0.0));
        assert!(bounds().pennation.outside(f64::NAN).is_some());
    }
}
