//! What to hang: the gym, what it can build, scores and ranking.
