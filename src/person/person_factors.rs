//! The numbers that a fit moves: logarithms of strength factors.
//!
//! In: strength groups, lifts. Out: [`PersonFactors`], which gives each number its place and its path in the file.

use nalgebra::DVector;

/// One of the numbers.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub enum StrengthFactor {
    /// Strength of all muscles together.
    Whole,
    /// Strength of one muscle group beside the others.
    Group(String),
    /// Strength in one lift beside the others: practice, technique, and what the model of that lift misses.
    Lift(String),
}

impl StrengthFactor {
    /// Its path in a lifter's file.
    #[must_use]
    pub fn path(&self) -> String {
        match self {
            Self::Whole => "strength_scale".to_owned(),
            Self::Group(group) => format!("strength.{group}"),
            Self::Lift(lift) => format!("lift_strength.{lift}"),
        }
    }

    /// The factor at a path of a lifter's file; none for other paths.
    #[must_use]
    pub fn of_path(path: &str) -> Option<Self> {
        match path.split_once('.') {
            None => (path == "strength_scale").then_some(Self::Whole),
            Some(("strength", group)) => Some(Self::Group(group.to_owned())),
            Some(("lift_strength", lift)) => Some(Self::Lift(lift.to_owned())),
            Some(_) => None,
        }
    }
}

/// All numbers of a fit, in one order: the whole, the groups, the lifts.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PersonFactors {
    all: Vec<StrengthFactor>,
}

impl PersonFactors {
    /// The numbers of these groups and lifts.
    #[must_use]
    pub fn of(groups: &[String], lifts: &[String]) -> Self {
        let groups = groups.iter().cloned().map(StrengthFactor::Group);
        let lifts = lifts.iter().cloned().map(StrengthFactor::Lift);
        let all = std::iter::once(StrengthFactor::Whole)
            .chain(groups)
            .chain(lifts);
        Self { all: all.collect() }
    }

    /// The numbers at paths of a lifter's file; none where one is no strength, or the whole does not come first.
    #[must_use]
    pub fn of_paths(paths: &[String]) -> Option<Self> {
        let all = paths.iter().map(|path| StrengthFactor::of_path(path));
        let all = all.collect::<Option<Vec<_>>>()?;
        (all.first() == Some(&StrengthFactor::Whole)).then_some(Self { all })
    }

    /// Every number, in order.
    #[must_use]
    pub fn all(&self) -> &[StrengthFactor] {
        &self.all
    }

    /// How many there are.
    #[must_use]
    pub fn count(&self) -> usize {
        self.all.len()
    }

    /// How many are shared by all lifts: the whole and the groups, which come first.
    #[must_use]
    pub fn shared(&self) -> usize {
        let alone = |factor: &StrengthFactor| matches!(factor, StrengthFactor::Lift(_));
        self.all.iter().position(alone).unwrap_or(self.all.len())
    }

    /// The place of a group.
    #[must_use]
    pub fn group(&self, group: &str) -> Option<usize> {
        self.all
            .iter()
            .position(|known| matches!(known, StrengthFactor::Group(name) if name == group))
    }

    /// The place of a lift.
    #[must_use]
    pub fn lift(&self, lift: &str) -> Option<usize> {
        self.all
            .iter()
            .position(|known| matches!(known, StrengthFactor::Lift(name) if name == lift))
    }

    /// Slopes that are zero but for the whole, some groups and one lift.
    #[must_use]
    pub fn slopes(&self, whole: f64, groups: &[(String, f64)], lift: Option<&str>) -> DVector<f64> {
        let mut slopes = DVector::zeros(self.count());
        slopes[0] = whole;
        for (group, slope) in groups {
            if let Some(place) = self.group(group) {
                slopes[place] = *slope;
            }
        }
        if let Some(place) = lift.and_then(|lift| self.lift(lift)) {
            slopes[place] = whole;
        }
        slopes
    }
}
