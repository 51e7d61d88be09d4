//! Values of a body that a lift has no part in: what is told of them.
//!
//! In: a workbench, a model, a path. Out: [`ComparisonFault::NotInLift`] where no value of it could matter.

use super::assemble::{Model, Workbench};
use super::numbers::{idle_groups, is_in_group, moving};
use crate::error::ComparisonFault;
use std::collections::BTreeSet;

impl Workbench {
    /// The fault of a path that leads to a muscle, joint or strength of no part in this lift; `None` where it has
    /// one, or where the path leads nowhere.
    #[must_use]
    pub fn absent(&self, model: &Model, path: &str) -> Option<ComparisonFault> {
        if !is_idle(model, path) {
            return None;
        }
        let joints = moving(model)?.into_iter().map(|dof| dof.joint().name());
        let others = self.models.movements().into_iter().filter(|name| {
            let bench = Self::open(&self.models, &self.files.name, name);
            let model = bench.and_then(|bench| bench.model(&[]));
            model.is_ok_and(|model| !is_idle(&model, path))
        });
        Some(ComparisonFault::NotInLift {
            path: path.to_owned(),
            movement: model.movement.title.clone(),
            joints: joints.collect::<BTreeSet<_>>().into_iter().collect(),
            others: others.collect(),
        })
    }
}

fn is_idle(model: &Model, path: &str) -> bool {
    let Some(moving) = moving(model) else {
        return false;
    };
    let groups = idle_groups(model, &moving);
    groups.iter().any(|group| is_in_group(path, group))
}
