//! The recipe: chains the rooms for one question.
