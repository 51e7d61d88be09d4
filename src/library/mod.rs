//! Names to checked values: the only room that reads model files.
