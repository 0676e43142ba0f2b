//! Rules on where a file is, what it is called and how large it is.

use super::{File, Finding};

const TOP_LEVEL: [&str; 15] = [
    "core",
    "reference-tables",
    "tests",
    "web",
    "www",
    "CHANGELOG.md",
    "Cargo.lock",
    "Cargo.toml",
    "DEVELOPERS.md",
    "LICENSE-APACHE",
    "LICENSE-MIT",
    "README.md",
    "clippy.toml",
    "deny.toml",
    "rustfmt.toml",
];
const NAMES_OF_NO_SUBJECT: [&str; 4] = ["mod.rs", "utils.rs", "helpers.rs", "types.rs"];
const LARGEST: usize = 400_000;

pub(super) fn belongs_at_the_top(file: &File) -> Vec<Finding> {
    let top = file.path.split('/').next().unwrap_or_default();
    if top.starts_with('.') || TOP_LEVEL.contains(&top) {
        return Vec::new();
    }
    vec![Finding::in_file(file, format!("`{top}` is not one of the rooms at the top"))]
}

pub(super) fn is_named_for_its_subject(file: &File) -> Vec<Finding> {
    let name = file.path.rsplit('/').next().unwrap_or_default();
    if NAMES_OF_NO_SUBJECT.contains(&name) {
        return vec![Finding::in_file(file, "a module is named for its subject")];
    }
    Vec::new()
}

pub(super) fn is_small(file: &File) -> Vec<Finding> {
    if file.bytes > LARGEST {
        return vec![Finding::in_file(file, format!("larger than {LARGEST} bytes"))];
    }
    Vec::new()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::tidy::text_file;

    #[test]
    fn the_top_holds_rooms_and_files_of_convention_only() {
        for good in ["core/src/lib.rs", ".ci/run", ".editorconfig", "README.md"] {
            assert!(belongs_at_the_top(&text_file(good, "")).is_empty(), "{good}");
        }
        for bad in ["notes.md", "scripts/build.sh"] {
            assert_eq!(belongs_at_the_top(&text_file(bad, "")).len(), 1, "{bad}");
        }
    }

    #[test]
    fn a_module_named_for_no_subject_is_found() {
        assert!(is_named_for_its_subject(&text_file("core/src/nest.rs", "")).is_empty());
        for bad in ["core/src/job/mod.rs", "core/src/utils.rs"] {
            assert_eq!(is_named_for_its_subject(&text_file(bad, "")).len(), 1, "{bad}");
        }
    }

    #[test]
    fn a_large_file_is_found() {
        let mut file = File { path: "www/public/icon.png".to_owned(), bytes: LARGEST, text: None };
        assert!(is_small(&file).is_empty());
        file.bytes += 1;
        assert_eq!(is_small(&file).len(), 1);
    }
}
