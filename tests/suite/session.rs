//! Tests of `session`, one file for each part of it.

mod endurance;
mod equation_oracle;
mod heeded_wishes;
mod log_files;
mod phone_log;
mod plan_command;
mod session_equations;
mod session_fatigue;
mod session_loads;
mod session_log;
mod session_plans;
mod session_simulated;
mod session_trend;

use std::sync::LazyLock;
use torquill::library::Library;
use torquill::session::published::Published;

/// The shipped tables.
fn published() -> &'static Published {
    static LIBRARY: LazyLock<Library> = LazyLock::new(Library::built_in);
    LIBRARY.published().expect("the shipped tables are sound")
}
