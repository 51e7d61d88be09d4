//! The recipe: chains the rooms for one question.
//!
//! In: checked values from `library`. Out: plain results for `figures` and `report`.

mod adult_body;
mod advice;
mod against_plain;
mod asked_pace;
mod asked_torques;
mod bands_gone;
pub mod between_samples;
mod cause;
mod cause_items;
mod class_examples;
mod cohort;
mod compared;
mod datum_outcome;
mod desk;
mod equal_effort;
mod expected_lifter;
mod family;
mod fibre_track;
mod fibre_use;
mod fibre_warning;
mod fit_draws;
mod fit_ground;
mod fit_trial;
mod free_body;
mod held_and_lifted;
mod held_change;
mod invented_lifter;
mod judged_log;
mod lecture_questions;
mod lecture_sessions;
mod lift_strength;
mod lifted_setups;
mod limited_stretch;
mod listed_movements;
mod listed_values;
mod load_for_effort;
mod load_holders;
mod log_study;
mod log_trend;
mod maximum;
mod member_plans;
mod model_maximum;
mod muscle_layers;
mod muscle_lines;
mod muscles;
mod newton_cost;
mod none_fits;
mod pair_grid;
pub mod parameter;
mod people;
mod people_asked;
mod people_curves;
mod person_asked;
mod person_data;
mod person_fit;
mod person_forecast;
mod person_lifts;
mod person_log;
mod person_spread;
mod person_velocity;
mod person_versions;
mod pick_answer;
mod pick_card;
mod picking;
mod plan_ground;
mod plan_question;
mod planned_log;
mod planned_sessions;
mod possible_maximum;
mod possible_rows;
mod question;
mod rank;
mod rep_outcome;
mod rep_study;
mod row_contradictions;
mod session_oracle;
mod session_setup;
mod solve;
mod still_lift;
mod team_days;
mod team_plans;
mod three_capacities;
mod traced_beside;
mod versus_plain;
mod weight_resists;
mod worked_muscle;
mod worked_place;
mod worked_pose;

pub use against_plain::{AgainstPlain, HungKind, NameOfHung};
pub use asked_pace::asked_pace;
pub use asked_torques::{asked_torques_nm, reactions_under};
pub use bands_gone::BandsGone;
pub use cause::{Cause, OtherCurves, SolvedCurve, Spot, causes_between};
pub use cause_items::{CauseItem, ItemOf};
pub use class_examples::{
    ClassLifts, LoadedExamples, class_examples, has_class, lifts_of_class, loaded_examples,
    median_capacity,
};
pub use cohort::{Cohort, Member, cohort};
pub use compared::{Compared, Conditions, Figures, usual_comparison};
pub use datum_outcome::DatumOutcome;
pub use desk::{Desk, HARD_EFFORT, LiftStudy};
pub use equal_effort::equally_hard;
pub use family::{BothWays, Family, Sensitivity, Undone, Variant, family};
pub use fibre_track::FibreTrack;
pub use fibre_use::{FibreUse, SpeedCost};
pub use fibre_warning::{
    FibreWarning, LIVING_LENGTHS, as_drawn, beyond_living, doubted_stretches, fibre_warnings,
    hollow_stretches,
};
pub use fit_draws::FitCheck;
pub use fit_ground::FOUR_IN_FIVE;
pub use fit_trial::{FitTrial, FitTrials};
pub use free_body::{BenchForce, FloorForce, FreeBody, FreeJoint};
pub use held_and_lifted::HeldAndLifted;
pub use held_change::HeldChange;
pub use invented_lifter::invented;
pub use judged_log::{LogStudy, log_study};
pub use lecture_questions::{
    GripFamily, MovingStudy, UNCHANGED, at_usual_speeds, grip_family, thigh_family,
};
pub use lecture_sessions::{invented_log, invented_session};
pub use limited_stretch::{
    LimitedStretch, LimitedStretches, limited_stretches, limiting_joints, limits_at, moving_joints,
};
pub use listed_movements::{ListedMovement, listed_movement};
pub use listed_values::{ListedValue, listed_values};
pub use load_for_effort::load_for_effort;
pub use load_holders::LoadHolders;
pub use log_study::LogChoice;
pub use maximum::{MaximumPace, MaximumStudy, MaximumWishes, maximum_study};
pub use member_plans::{LiftPlan, MemberLift, MemberPlans, TeamDay};
pub use model_maximum::{UntestedLifter, untested_lifter};
pub use muscle_layers::{
    ForceAndArm, MuscleExtreme, muscle_layers, muscle_layers_at, sample_of_peak, strongest_muscles,
};
pub use muscle_lines::{MuscleLine, muscle_lines, others_nm};
pub use muscles::{MusclePart, joint_gain, lifting_sign, muscle_heads, muscle_parts};
pub use pair_grid::{PairGrid, pair_grid};
pub use parameter::Parameter;
pub use people_asked::{PeopleAsked, PeoplePart};
pub use people_curves::{People, Tenths};
pub use person_asked::{PersonAsked, reference_of};
pub use person_fit::{MovedFactor, PersonFit, fit_person};
pub use person_forecast::{HardestPlace, LiftForecast, NextTest};
pub use person_log::{MeasuredInLog, measured_in_log};
pub use person_velocity::{TracedLift, measured_in_velocities};
pub use person_versions::{CapacityBand, MaximumInterval, PersonVersions, StaysFirst};
pub use pick_answer::{PickAnswer, Picked};
pub use pick_card::{PickCard, TensionCheck, pick_card};
pub use picking::pick;
pub use plan_question::{
    MethodChoice, PersonTold, PlanAnswer, PlanNote, PlanQuestion, PlannedSession, SessionName,
    USUAL_EFFORT,
};
pub use planned_sessions::plan;
pub use question::{Question, SetupStudy, Study};
pub use rank::{RankStep, Ranked, Ranks, rank};
pub use rep_study::{Heaviness, RepStudy, USUAL_STEP_KG, maximum, repetition, rigged};
pub use row_contradictions::ApartLift;
pub use session_oracle::simulated_oracle;
pub use solve::{load_points, load_torque_nm, study, with_body};
pub use team_days::{DAYS_APART, HEAVY, LONGEST_DAY_MIN};
pub use team_plans::{team_of, team_plans};
pub use three_capacities::{BEYOND, SLOW_M_S, ThreeCapacities};
pub use traced_beside::TraceBeside;
pub use versus_plain::{LiftShape, VersusPlain, versus_plain};
pub use worked_muscle::{Shortening, WorkedMuscle};
pub use worked_place::AskedPlace;
pub use worked_pose::{
    ReactionEnd, WorkedBalance, WorkedJoint, WorkedLoad, WorkedPose, WorkedReaction, worked_pose,
};
