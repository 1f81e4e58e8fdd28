//! benchleaf

fn main() {}
