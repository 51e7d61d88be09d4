//! The most a pose can hold: the linear programme of muscles.
