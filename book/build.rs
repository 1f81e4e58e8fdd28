//! The handbook's files are compiled in; cargo must look at them again when one is added or changed.
fn main() {
    for folder in ["chapters", "theme", "cautions.toml", "words.toml", "book.toml"] {
        println!("cargo:rerun-if-changed={folder}");
    }
}
