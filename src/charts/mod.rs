//! One figure a file: results to a scene.
