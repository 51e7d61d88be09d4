//! The contract of JSON and CSV: its version, and what each changed.

/// Version of what the keys mean, in every object that a command prints; lists have none.
///
/// 2: class `u-shaped`, `one_rm_kg` no longer in loading steps (that is `loadable_kg`), `joint_torques_nm` a
/// torque in every movement.
/// 3: columns of CSV are keys of JSON. Units in all names (`mean_velocity_m_s`, `peak_capacity_n`); muscles by
/// `muscle`; `vary` has `baseline` and flat figures, its map `cells`; ranges of `pick` as two numbers; `plan` has
/// `session` and `set`; `joint_torques_nm` counts what bench, plate and bar push back. `models/DATA.md` says what every name means.
/// 4: in the parts of `vary`, `joint` is an axis (`shoulder_flexion`), `before` and `after` are of their own pose with the sign of
/// `curve --detail`, a `part_n` of `load_lever` is the change of that lever times its price; `--why` has no rows of a change of nothing.
pub(super) const CONTRACT_VERSION: u32 = 4;
