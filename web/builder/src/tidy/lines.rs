//! Rules on what a file says, line by line. The words they look for are put together here, so that this file keeps them too.

use std::path::Path;

use super::{File, Finding};

pub(super) fn module_begins_with_its_story(file: &File) -> Vec<Finding> {
    let is_rust = Path::new(&file.path).extension().is_some_and(|extension| extension == "rs");
    match &file.text {
        Some(text) if is_rust && !text.starts_with("//! ") => {
            vec![Finding::in_line(
                file,
                1,
                "a module begins with a line `//! ` that says what it is",
            )]
        }
        _ => Vec::new(),
    }
}

pub(super) fn no_trailing_space(file: &File) -> Vec<Finding> {
    each_line(file, |line| line.ends_with([' ', '\t', '\r']).then(|| "space at the end".to_owned()))
}

pub(super) fn ends_with_one_newline(file: &File) -> Vec<Finding> {
    match &file.text {
        Some(text) if !text.is_empty() && (!text.ends_with('\n') || text.ends_with("\n\n")) => {
            vec![Finding::in_file(file, "a file ends with one newline")]
        }
        _ => Vec::new(),
    }
}

/// Notes to oneself, probes, and tests that are switched off.
pub(super) fn nothing_left_over(file: &File) -> Vec<Finding> {
    const WORDS: [&str; 10] = [
        concat!("TO", "DO"),
        concat!("FIX", "ME"),
        concat!("XX", "X"),
        concat!("dbg", "!("),
        concat!("todo", "!("),
        concat!("unimplemented", "!("),
        concat!("#[ig", "nore"),
        concat!("#[should", "_panic"),
        concat!(".on", "ly("),
        concat!(".fix", "me("),
    ];
    each_line(file, |line| names_one_of(&WORDS, line))
}

pub(super) fn no_place_of_one_machine(file: &File) -> Vec<Finding> {
    const PLACES: [&str; 5] = [
        concat!("/ho", "me/"),
        concat!("/ro", "ot/"),
        concat!("/wo", "rk/"),
        concat!("/Us", "ers/"),
        concat!("C:", "\\"),
    ];
    each_line(file, |line| names_one_of(&PLACES, line))
}

/// Cargo's lock names its registry by convention; npm's lock must not say where a package was loaded from.
pub(super) fn no_registry_named(file: &File) -> Vec<Finding> {
    const REGISTRIES: [&str; 3] =
        [concat!("crates", ".io"), concat!("npmjs", ".org"), concat!("npmjs", ".com")];
    if file.path.ends_with("package-lock.json") {
        return each_line(file, |line| names_one_of(&["\"resolved\":"], line));
    }
    if file.path == "Cargo.lock" {
        return Vec::new();
    }
    each_line(file, |line| names_one_of(&REGISTRIES, line))
}

fn names_one_of(words: &[&str], line: &str) -> Option<String> {
    words.iter().find(|word| line.contains(*word)).map(|word| format!("`{word}` has no place here"))
}

fn each_line(file: &File, wrong: impl Fn(&str) -> Option<String>) -> Vec<Finding> {
    let lines = file.text.iter().flat_map(|text| text.split('\n')).zip(1..);
    lines.filter_map(|(line, number)| Some(Finding::in_line(file, number, wrong(line)?))).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::tidy::{Rule, text_file};

    /// The lines at which a rule finds something; 0 is the file as a whole.
    fn found(rule: Rule, path: &str, text: &str) -> Vec<usize> {
        let findings = rule(&text_file(path, text));
        findings.iter().map(|finding| finding.line.unwrap_or(0)).collect()
    }

    #[test]
    fn a_module_without_its_story_is_found() {
        assert_eq!(found(module_begins_with_its_story, "a.rs", "//! Coils.\n"), [0; 0]);
        assert_eq!(found(module_begins_with_its_story, "a.rs", "use std::fmt;\n"), [1]);
        assert_eq!(found(module_begins_with_its_story, "a.rs", ""), [1]);
        assert_eq!(found(module_begins_with_its_story, "a.ts", "export {};\n"), [0; 0]);
    }

    #[test]
    fn space_at_the_end_of_a_line_is_found() {
        assert_eq!(found(no_trailing_space, "a.md", "one\ntwo\n"), [0; 0]);
        assert_eq!(found(no_trailing_space, "a.md", "one \ntwo\nthree\t\nfour\r\n"), [1, 3, 4]);
    }

    #[test]
    fn a_file_without_its_newline_or_with_more_is_found() {
        assert_eq!(found(ends_with_one_newline, "a.md", "one\n"), [0; 0]);
        assert_eq!(found(ends_with_one_newline, "a.md", "one"), [0]);
        assert_eq!(found(ends_with_one_newline, "a.md", "one\n\n"), [0]);
    }

    #[test]
    fn what_was_left_over_is_found() {
        assert_eq!(
            found(nothing_left_over, "a.rs", "//! Tests only what is to be done.\n"),
            [0; 0]
        );
        let left = [
            concat!("// TO", "DO later\n"),
            concat!("#[ig", "nore = \"slow\"]\n"),
            concat!("test.on", "ly('one', () => {});\n"),
        ];
        assert_eq!(found(nothing_left_over, "a.rs", &left.concat()), [1, 2, 3]);
    }

    #[test]
    fn a_place_of_one_machine_is_found() {
        assert_eq!(
            found(no_place_of_one_machine, "a.rs", "/usr/bin/chromium\nwork/side\n"),
            [0; 0]
        );
        let text = concat!("see /ho", "me/somebody/notes\n");
        assert_eq!(found(no_place_of_one_machine, "a.rs", text), [1]);
    }

    #[test]
    fn a_registry_is_found_and_so_is_an_address_in_the_lock() {
        let text = concat!("\nfrom crates", ".io\n");
        assert_eq!(found(no_registry_named, "README.md", text), [2]);
        assert_eq!(found(no_registry_named, "Cargo.lock", text), [0; 0]);
        let lock = "{\n\"version\": \"1.0.0\",\n\"resolved\": \"somewhere\"\n}\n";
        assert_eq!(found(no_registry_named, "www/package-lock.json", lock), [3]);
    }
}
