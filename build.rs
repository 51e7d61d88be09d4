//! Has the program rebuilt when a file of `models/` is added or removed: the folder is compiled in.

fn main() {
    println!("cargo:rerun-if-changed=models");
    println!("cargo:rerun-if-changed=build.rs");
}
