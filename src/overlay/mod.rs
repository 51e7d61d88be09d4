//! Demand upon capacity: effort, sticking region, flattening.
