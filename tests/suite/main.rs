//! The whole test suite in one program: `published_…` compares with papers and standards, `law_…`
//! with physics on random inputs, `regress_…` with our own earlier output.

mod asked_torques;
mod bad_models;
mod body;
mod calibration;
#[path = "../calibrate/mod.rs"]
#[allow(dead_code)]
mod calibration_program;
mod calling;
mod claims;
mod classes;
mod commands;
mod draw;
mod draw_random;
mod draw_sample_grids;
mod draw_samples;
mod dynamometer;
mod evidence;
mod gallery;
mod json_keys;
mod layers;
mod lecture;
mod library;
mod lift_by_another_name;
mod lifts;
mod lifts_joints;
mod lifts_laws;
mod measures;
mod model_files;
mod numeric;
mod own_files;
mod power;
mod predictions;
mod published_joints;
mod published_rep;
mod readme;
mod recipes;
mod rep;
mod rep_commands;
mod resistance;
mod resistance_chains;
mod resistance_items;
mod resistance_laws;
mod resistance_loads;
mod resistance_machines;
mod resistance_words;
mod session;
mod setups;
mod setups_advice;
mod setups_implements;
mod setups_odd_gyms;
mod setups_published;
mod stances;
mod text_boxes;
mod vary;
