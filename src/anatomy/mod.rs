//! What a lifter is made of: segments, joints, muscles, curves.
