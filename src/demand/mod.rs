//! What a setup asks for at each place of the range.
