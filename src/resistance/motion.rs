//! Whether the load is held, lifted or lowered: implements answer differently.
//!
//! In: a speed along the path. Out: the questions that bands, chains and friction ask of it.

/// What the lifter does with the load at this moment.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub enum Motion {
    /// Held still, as at the end of a very slow lift: a band pulls as it does in lifting, friction
    /// resists as in lifting, a chain has no momentum term.
    #[default]
    Hold,
    /// Lifted at this speed along the path, m/s; its size counts, not its sign.
    Lift {
        /// Speed along the path, m/s.
        speed_m_s: f64,
    },
    /// Lowered at this speed along the path, m/s; its size counts, not its sign.
    Lower {
        /// Speed along the path, m/s.
        speed_m_s: f64,
    },
}

impl Motion {
    /// Lifting above zero, lowering below it, holding at it; m/s along the path.
    #[must_use]
    pub fn from_speed(speed_m_s: f64) -> Self {
        if speed_m_s > 0.0 {
            Self::Lift { speed_m_s }
        } else if speed_m_s < 0.0 {
            Self::Lower {
                speed_m_s: -speed_m_s,
            }
        } else {
            Self::Hold
        }
    }

    /// Whether the load goes down.
    #[must_use]
    pub fn is_lowering(self) -> bool {
        matches!(self, Self::Lower { .. })
    }

    /// Speed in the lifting direction, m/s: negative in lowering.
    #[must_use]
    pub fn lifting_speed_m_s(self) -> f64 {
        match self {
            Self::Hold => 0.0,
            Self::Lift { speed_m_s } => speed_m_s.abs(),
            Self::Lower { speed_m_s } => -speed_m_s.abs(),
        }
    }

    /// +1 for holding and lifting, −1 for lowering.
    #[must_use]
    pub fn sense(self) -> f64 {
        if self.is_lowering() { -1.0 } else { 1.0 }
    }
}
