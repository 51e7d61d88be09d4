//! One repetition in time: equation of motion, phases, trace, 1RM.
