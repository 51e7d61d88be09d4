//! One moment of a repetition, as the equation of motion knows it.

/// What is going on.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Phase {
    /// The load goes down.
    #[default]
    Lowering,
    /// The load is held at the bottom.
    Pause,
    /// The lifter gives everything.
    Lifting,
}

impl Phase {
    /// The word for it in tables.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Lowering => "lowering",
            Self::Pause => "pause",
            Self::Lifting => "lifting",
        }
    }
}

impl Moment {
    /// Activation times extra force times what is not yet spent.
    pub(super) fn drive(&self) -> f64 {
        self.activation * self.force_per_activation()
    }

    /// What full activation makes now, over what it makes fresh and without a stretch before.
    pub(super) fn force_per_activation(&self) -> f64 {
        (1.0 + self.enhancement) * (1.0 - self.spent)
    }
}

/// State of the motion at one time.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(super) struct Moment {
    /// Time since the start of the repetition, s.
    pub(super) time_s: f64,
    /// Place in the range.
    pub(super) s: f64,
    /// Speed along the range, 1/s.
    pub(super) speed: f64,
    /// Activation.
    pub(super) activation: f64,
    /// Activation of the muscles that hold the load back.
    pub(super) held_back: f64,
    /// Extra force as a share.
    pub(super) enhancement: f64,
    /// Share of the strength that is spent since the start of the repetition.
    pub(super) spent: f64,
    /// Net work of muscles and load since the start of the lift, J.
    pub(super) work_j: f64,
    /// What is going on.
    pub(super) phase: Phase,
}
