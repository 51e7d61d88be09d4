//! JSON: stable keys, numbers in SI with the unit as suffix.

use serde::Serialize;

/// Version of what the keys mean, in every object that a command prints; lists have none.
///
/// 2: class `u-shaped`, `one_rm_kg` no longer in loading steps (that is `loadable_kg`), `joint_torques_nm` a
/// torque in every movement.
const CONTRACT_VERSION: u32 = 2;

/// A collection by name, or a list, as pretty JSON with a line break at its end.
#[must_use]
pub fn pretty_list<T: Serialize>(value: &T) -> String {
    let text = serde_json::to_string_pretty(value);
    text.expect("results are structs, so every key is a text") + "\n"
}

/// Any result as pretty JSON with the contract's version first; what is not finite becomes null.
#[must_use]
pub fn pretty<T: Serialize>(value: &T) -> String {
    let text = pretty_list(value);
    match text.strip_prefix("{\n") {
        Some(rest) => format!("{{\n  \"contract_version\": {CONTRACT_VERSION},\n{rest}"),
        None => text,
    }
}
