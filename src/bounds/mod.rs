//! What is taken for real at every door: one table of bounds, each with its source.
//!
//! In: `models/bounds.ron`, compiled in; no folder of the user's replaces it, or it would guard nothing. Out: [`bounds`], whose
//! fields tell whether a value is inside. It stands below the laws, which read texts too, and above `error`, which it fills.

mod bound;
mod row;
mod shown_text;

pub use bound::{Bound, LowerEnd, UpperEnd};
pub use row::Row;
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
    pub short_text: Row,
    /// Letters of any other text of a file.
    pub long_text: Row,
    /// Standing height of a lifter.
    pub lifter_height: Row,
    /// Body mass of a lifter.
    pub lifter_mass: Row,
    /// Factor on the strength of a lifter or of one group.
    pub strength_factor: Row,
    /// Share of a segment's mass in a table.
    pub segment_mass_percent: Row,
    /// All segments of a table, limbs twice.
    pub segment_mass_sum: Row,
    /// Length of a segment in a table.
    pub segment_row_length: Row,
    /// Centre of mass of a segment in a table.
    pub centre_of_mass_percent: Row,
    /// Radius of gyration of a segment in a table.
    pub gyration_percent: Row,
    /// A breadth or small height of the body in a table.
    pub breadth_share: Row,
    /// Length of a segment of a finished body.
    pub segment_length: Row,
    /// Mass of a segment of a finished body.
    pub segment_mass: Row,
    /// Centre of mass of a segment of a finished body.
    pub centre_of_mass: Row,
    /// Radius of gyration of a segment of a finished body.
    pub gyration: Row,
    /// A breadth or small height of a finished body.
    pub build_size: Row,
    /// Body mass over the square of the height.
    pub body_mass_index: Row,
    /// A segment's share of the height over that of the shipped tables.
    pub segment_proportion: Row,
    /// A segment's share of the body mass over that of the shipped tables.
    pub mass_proportion: Row,
    /// Head, trunk, thigh, shank and ankle's height together, as a share of the height, over that of the shipped tables.
    pub stature_proportion: Row,
    /// A breadth's share of the height over that of the shipped tables.
    pub breadth_proportion: Row,
    /// Angle of the elbow.
    pub angle_elbow: Row,
    /// Angle of the shoulder, in each of its planes.
    pub angle_shoulder: Row,
    /// Angle of the lower back.
    pub angle_lumbar: Row,
    /// Angle of the hip.
    pub angle_hip: Row,
    /// Angle of the knee.
    pub angle_knee: Row,
    /// Angle of the ankle.
    pub angle_ankle: Row,
    /// Angle of the thigh below the level at the lowest place of a squat.
    pub thigh_depth: Row,
    /// Length of relaxed fibres on the way of a lift.
    pub relaxed_length: Row,
    /// Passive torque at the end of a joint.
    pub passive_torque: Row,
    /// Angle over which a passive torque grows.
    pub passive_width: Row,
    /// Peak isometric force of a muscle.
    pub peak_force: Row,
    /// Optimal fibre length of a muscle.
    pub fibre_length: Row,
    /// Pennation of a muscle at optimal length.
    pub pennation: Row,
    /// Greatest shortening speed of a fibre.
    pub fibre_speed: Row,
    /// Fibre length in a reference pose.
    pub reference_fibre_length: Row,
    /// Slack length of a tendon.
    pub tendon_slack: Row,
    /// Strain of a tendon at peak force.
    pub tendon_strain: Row,
    /// Factor on a moment arm.
    pub arm_scale: Row,
    /// A moment arm of a muscle, on either side.
    pub moment_arm: Row,
    /// A distance of a muscle's line from the shoulder joint, on either side.
    pub line_place: Row,
    /// Radius that a muscle's line bends round.
    pub line_wrap: Row,
    /// Torque of the elbow in flexion over body mass, held still, as of all that follow.
    pub torque_elbow_flexion: Row,
    /// The same in extension.
    pub torque_elbow_extension: Row,
    /// Of the shoulder, in any direction.
    pub torque_shoulder: Row,
    /// Of the lower back, one side, in flexion.
    pub torque_trunk_flexion: Row,
    /// The same in extension.
    pub torque_trunk_extension: Row,
    /// Of the hip in flexion.
    pub torque_hip_flexion: Row,
    /// The same in extension.
    pub torque_hip_extension: Row,
    /// Of the knee in flexion.
    pub torque_knee_flexion: Row,
    /// The same in extension.
    pub torque_knee_extension: Row,
    /// Of the ankle in dorsiflexion.
    pub torque_dorsiflexion: Row,
    /// The same in plantarflexion.
    pub torque_plantarflexion: Row,
    /// Half-width of a parabola of active force.
    pub active_width: Row,
    /// Shape of a bell of active force.
    pub active_gamma: Row,
    /// Width of a bell of active force, at the lengths at which it is used.
    pub bell_width: Row,
    /// Peak of a curve of active force.
    pub active_peak: Row,
    /// Shape of the passive curve.
    pub passive_shape: Row,
    /// Strain of a fibre at which its passive force is the peak force.
    pub passive_strain: Row,
    /// Curvature of the force-velocity curve, a/F0.
    pub hill_a: Row,
    /// Greatest force in lengthening over isometric.
    pub eccentric_limit: Row,
    /// Share of the surplus in lengthening that a joint shows.
    pub voluntary_share: Row,
    /// Slope of slow lengthening over that of slow shortening.
    pub eccentric_slope: Row,
    /// Time constant of activation and drive.
    pub rise_time: Row,
    /// Force enhancement after lengthening.
    pub enhancement: Row,
    /// Half-life of the enhancement.
    pub enhancement_half_life: Row,
    /// Rate at which what is active tires.
    pub tiring_per_s: Row,
    /// Where a lifter begins to stop the bar, and how hard.
    pub stop_share: Row,
    /// Length of a filament or a sarcomere.
    pub filament_length: Row,
    /// Bare zone of the thick filament.
    pub bare_zone: Row,
    /// Thickness of the Z disc.
    pub z_disc: Row,
    /// Share of peak force at the break of the ascending limb.
    pub break_share: Row,
    /// Pad and cam of a machine.
    pub lever_radius: Row,
    /// Height of the joint of a sweep.
    pub joint_height: Row,
    /// Elbow at lockout.
    pub lockout_elbow: Row,
    /// How far shoulder blades are drawn back.
    pub blades_drawn_back: Row,
    /// Friction over normal force.
    pub friction: Row,
    /// Height of the shoulders.
    pub shoulder_height: Row,
    /// Height of the shoulders or the hips over the standing height.
    pub shoulder_height_share: Row,
    /// A place of the hand.
    pub hand_place: Row,
    /// A place of the hand over the height.
    pub hand_place_share: Row,
    /// Where the bar lies along the back.
    pub bar_along: Row,
    /// How far behind the trunk the bar lies.
    pub bar_behind: Row,
    /// How the ankle follows the knee.
    pub ankle_per_knee: Row,
    /// Height of the bar at the start of a pull.
    pub bar_start_height: Row,
    /// How far the bar is in front of the ankle.
    pub bar_reach: Row,
    /// Ankle at the start of a pull.
    pub start_ankle: Row,
    /// Lean of the arms at the start of a pull.
    pub start_arms: Row,
    /// Distance between the ankles of a stance.
    pub feet_between: Row,
    /// How far feet are turned out.
    pub feet_turned_out: Row,
    /// Ankle at the end of a stance.
    pub end_ankle: Row,
    /// Knee at lockout.
    pub end_knee: Row,
    /// Where over the foot the bar stays.
    pub bar_over: Row,
    /// Flexion of the lower back that a lift holds.
    pub held_lumbar: Row,
    /// Knee at the start of a press.
    pub start_knee: Row,
    /// Lean of the back in a leg press.
    pub press_back: Row,
    /// Height of a seat.
    pub seat_height: Row,
    /// Where the trunk lies on the bench.
    pub bench_along: Row,
    /// Height of the bench.
    pub bench_height: Row,
    /// Height of the hips at the start.
    pub hip_height: Row,
    /// Hip at lockout.
    pub end_hip: Row,
    /// Height of the bar above the hip joint.
    pub bar_above_hip: Row,
    /// Share of 1RM from which a second spotter stands by.
    pub second_spotter: Row,
    /// Helpers who hand more than 1RM over.
    pub helpers: Row,
    /// Plain load of a lift, bar and both sides.
    pub load_mass: Row,
    /// Items of a setup.
    pub setup_items: Row,
    /// What is hung on for the lowering alone.
    pub lowering_mass: Row,
    /// Direction of a cable that has no pulley to come from.
    pub cable_direction: Row,
    /// Bands or chains of a kind on a side.
    pub pieces: Row,
    /// Pairs of equal plates.
    pub plate_pairs: Row,
    /// Rest length of a band.
    pub band_rest_length: Row,
    /// Share of its pull that a band has lost.
    pub band_wear: Row,
    /// Largest stretch over rest length that is asked of a band.
    pub safe_stretch: Row,
    /// Share of the stored energy that a band keeps.
    pub band_loss: Row,
    /// Pull of a band at its largest stretch.
    pub band_pull: Row,
    /// Width of the strand of a band.
    pub band_width: Row,
    /// Thickness of a layer of a band.
    pub band_thickness: Row,
    /// Layers of a band.
    pub band_layers: Row,
    /// Strands of a band.
    pub band_strands: Row,
    /// Height of an anchor.
    pub anchor_height: Row,
    /// An anchor ahead of the load or behind it.
    pub anchor_offset: Row,
    /// Height of the box under a chain.
    pub box_height: Row,
    /// Height of a rack's safety arms.
    pub safety_arm_height: Row,
    /// Length of a leader of a chain.
    pub leader_length: Row,
    /// Mass of a leader of a chain.
    pub leader_mass: Row,
    /// Mass of a chain a metre.
    pub chain_density: Row,
    /// Wire of a link.
    pub chain_wire: Row,
    /// Inside width of a link; the wire is its least.
    pub chain_inside: Row,
    /// Inside length of a link; its width is its least.
    pub chain_pitch: Row,
    /// Length of a chain.
    pub chain_length: Row,
    /// Handle travel over stack travel.
    pub cable_ratio: Row,
    /// Share of a cable's pull lost in its pulleys.
    pub cable_friction: Row,
    /// Radius of a cam.
    pub cam_radius: Row,
    /// Arm of a lever's plates.
    pub loaded_arm: Row,
    /// Friction of rails over normal force.
    pub rail_friction: Row,
    /// Force of a spotter or a partner who pushes down.
    pub helper_force: Row,
    /// Share of the load that a spotter takes.
    pub helper_share: Row,
    /// Mass of a bar.
    pub bar_mass: Row,
    /// Mass of a dumb-bell.
    pub dumbbell_mass: Row,
    /// Mass of both collars.
    pub collar_mass: Row,
    /// Smallest step of a gym.
    pub smallest_step: Row,
    /// Step of a weight stack.
    pub stack_step: Row,
    /// All of a weight stack; its step is the least.
    pub stack_most: Row,
    /// Mass of an empty sled.
    pub sled_mass: Row,
    /// Mass of a plate.
    pub plate_mass: Row,
    /// Pieces of a kind in a gym.
    pub owned_pieces: Row,
    /// Kinds of plate, band or chain in a gym.
    pub owned_kinds: Row,
    /// A maximum with a barbell.
    pub barbell_maximum: Row,
    /// A load that is planned.
    pub planned_load: Row,
    /// Largest effort that a setup may ask.
    pub hardest_effort: Row,
    /// Effort of a wished profile.
    pub profile_effort: Row,
    /// Share of the load that bands and chains may make.
    pub load_share: Row,
    /// A place of the range.
    pub range_place: Row,
    /// Effort that the setup of a plan aims at.
    pub planned_effort: Row,
    /// Age of who trains.
    pub trainee_age: Row,
    /// Ages for which the tables hold.
    pub adult_age: Row,
    /// Months of training of who trains.
    pub training_months: Row,
    /// Variance or covariance of the logarithm of a strength.
    pub log_covariance: Row,
    /// Logarithm of a strength of one version of a lifter beside that of the file.
    pub log_strength: Row,
    /// Versions of one person in a file.
    pub person_versions: Row,
    /// Standard deviation of a logarithm, or a correlation.
    pub log_deviation: Row,
    /// Lightest bar that a lift with a bar is done with.
    pub lightest_bar: Row,
    /// Speed of a load at which a capacity is asked for, up or down.
    pub held_speed: Row,
    /// Speed of a joint at which a capacity is asked for, either way.
    pub held_turn: Row,
    /// Samples of the range.
    pub samples: Row,
    /// Part of the range that a repetition covers.
    pub range_part: Row,
    /// Time of a lowering or a pause.
    pub phase_time: Row,
    /// Step of the integration of a repetition.
    pub time_step: Row,
    /// Step between two loads.
    pub loading_step: Row,
    /// A load as percent of the maximum.
    pub maximum_percent: Row,
    /// Values of a parameter that are compared.
    pub compared_values: Row,
    /// Poses of all curves that are compared.
    pub compared_poses: Row,
    /// Poses of one curve that are told with all of their muscles.
    pub detailed_poses: Row,
    /// Poses of all invented people.
    pub invented_poses: Row,
    /// Setups that are compared.
    pub compared_setups: Row,
    /// Change by which values are ranked.
    pub ranked_change: Row,
    /// Lifters of an invented group.
    pub cohort_members: Row,
    /// Share of the largest effort from which a region is sticking.
    pub region_share: Row,
    /// Load of a set in a log.
    pub log_load: Row,
    /// Repetitions of a set in a log.
    pub log_repetitions: Row,
    /// Sets of one row of a log.
    pub log_sets: Row,
    /// Mean velocity of a lift in a log.
    pub log_velocity: Row,
    /// Way of a bar from its lowest to its highest place in a trace.
    pub traced_way: Row,
    /// Repetitions in reserve.
    pub log_reserve: Row,
    /// Year of a session.
    pub log_year: Row,
    /// Sets of one lift.
    pub planned_sets: Row,
    /// Repetitions of a set.
    pub set_repetitions: Row,
    /// Repetitions of a group.
    pub group_repetitions: Row,
    /// Repetitions of a session.
    pub session_repetitions: Row,
    /// Rest between two sets.
    pub rest_between_sets: Row,
    /// Share of the velocity at whose loss a set ends.
    pub velocity_loss: Row,
    /// Weeks of a block.
    pub block_weeks: Row,
    /// Rows of a published table.
    pub table_rows: Row,
    /// Repetitions in a published table.
    pub table_repetitions: Row,
    /// Sets in a published table.
    pub table_sets: Row,
    /// Percent of 1RM in a published table.
    pub table_percent: Row,
    /// Share of 1RM in a published table.
    pub table_share: Row,
    /// Load of an overloaded lowering in a published table.
    pub overload_share: Row,
    /// Velocity at 1RM in a published table.
    pub table_speed: Row,
    /// Rate of the controller of the fatigue model.
    pub controller_rate: Row,
    /// Rate of fatigue or recovery.
    pub fatigue_rate: Row,
    /// How much faster recovery is at rest.
    pub rest_multiplier: Row,
    /// Time of a recovery.
    pub recovery_time: Row,
    /// Work over energy of the ATP made.
    pub efficiency: Row,
    /// Time of a lowering.
    pub lowering_time: Row,
    /// A rest in a published table.
    pub table_rest: Row,
    /// Repetitions of a group.
    pub cluster_group: Row,
    /// Rest between two groups.
    pub cluster_rest: Row,
}
