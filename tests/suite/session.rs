//! Tests of `session`, one file for each part of it.

mod plan_command;
mod session_equations;
mod session_fatigue;
mod session_loads;
mod session_log;
mod session_plans;
mod session_simulated;
mod session_trend;
