//! What to do with it today: loads, rests, schemes, fatigue, cautions.
