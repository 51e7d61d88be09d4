//! The program `torquill`.

fn main() {}
