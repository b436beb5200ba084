//! The demonstration builds are read without a word.

use std::fs;
use std::path::Path;
use tubewright_build::{Texts, read};

#[test]
fn the_demonstration_builds_are_read_without_a_word() {
    let builds = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../builds");
    let mut folders: Vec<_> = fs::read_dir(&builds)
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .filter(|path| path.join("build.toml").exists())
        .collect();
    folders.sort();
    assert!(!folders.is_empty(), "no build in {}", builds.display());
    for folder in folders {
        let text = |name: &str| fs::read_to_string(folder.join(name)).ok();
        let (build, stock, shop) = (text("build.toml"), text("stock.toml"), text("shop.toml"));
        let read = read(Texts {
            build: build.as_deref(),
            stock: stock.as_deref(),
            shop: shop.as_deref(),
        });
        let words: Vec<String> = read.problems.iter().map(ToString::to_string).collect();
        assert!(
            words.is_empty(),
            "{}: {} problems\n{}",
            folder.display(),
            words.len(),
            words.join("\n")
        );
        assert!(!read.model.build.readings.is_empty());
        assert!(!read.model.build.runs.is_empty());
    }
}
