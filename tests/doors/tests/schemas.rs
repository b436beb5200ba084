//! The schemas that editors complete from are those that the parser walks.
#![cfg(test)]

use std::path::Path;
use tubewright_build::{FileKind, json_schema};

/// The published files; `UPDATE_SCHEMAS=1 cargo test -p tubewright-doors` writes them anew.
#[test]
fn the_published_schemas_are_those_of_the_parser() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../schemas");
    for kind in FileKind::ALL {
        let name = kind.file_name().split('.').next().unwrap();
        let path = folder.join(format!("{name}.schema.json"));
        let text = format!("{:#}\n", json_schema(kind));
        if std::env::var_os("UPDATE_SCHEMAS").is_some() {
            std::fs::create_dir_all(&folder).unwrap();
            std::fs::write(&path, &text).unwrap();
        }
        let published = std::fs::read_to_string(&path).unwrap_or_default();
        assert!(
            published == text,
            "{} is not what the parser walks; write it anew with \
             `UPDATE_SCHEMAS=1 cargo test -p tubewright-doors`",
            path.display()
        );
    }
}
