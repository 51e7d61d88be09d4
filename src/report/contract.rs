//! The contract of JSON and CSV: its version, and what each changed.

/// Version of what the keys mean, in every object that a command prints; lists have none.
///
/// 2: class `u-shaped`, `one_rm_kg` no longer in loading steps (that is `loadable_kg`), `joint_torques_nm` a
/// torque in every movement.
pub(super) const CONTRACT_VERSION: u32 = 2;
