//! The rules of this repository that no other tool keeps: each a function from a file to what is wrong with it.

mod lines;
mod rooms;
mod tree;

use std::fmt;
use std::fs;

use anyhow::{Context, Result};

use crate::programs::{output, program, root};
use crate::verify::Tally;

/// A file of the repository. What is no text (pictures, fonts) has none.
struct File {
    path: String,
    bytes: usize,
    text: Option<String>,
}

struct Finding {
    path: String,
    line: Option<usize>,
    wrong: String,
}

impl Finding {
    fn in_file(file: &File, wrong: impl Into<String>) -> Self {
        Self { path: file.path.clone(), line: None, wrong: wrong.into() }
    }

    fn in_line(file: &File, line: usize, wrong: impl Into<String>) -> Self {
        Self { path: file.path.clone(), line: Some(line), wrong: wrong.into() }
    }
}

impl fmt::Display for Finding {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.line {
            Some(line) => write!(f, "{}:{line}: {}", self.path, self.wrong),
            None => write!(f, "{}: {}", self.path, self.wrong),
        }
    }
}

type Rule = fn(&File) -> Vec<Finding>;

const RULES: [Rule; 10] = [
    tree::belongs_at_the_top,
    tree::is_named_for_its_subject,
    tree::is_small,
    rooms::uses_what_stands_before_it,
    lines::module_begins_with_its_story,
    lines::no_trailing_space,
    lines::ends_with_one_newline,
    lines::nothing_left_over,
    lines::no_place_of_one_machine,
    lines::no_registry_named,
];

pub(crate) fn check() -> Result<Tally> {
    let files = files()?;
    let findings: Vec<Finding> =
        files.iter().flat_map(|file| RULES.iter().flat_map(move |rule| rule(file))).collect();
    for finding in &findings {
        println!("{finding}");
    }
    println!("{} files looked at", files.len());
    Ok(Tally::of_one(findings.is_empty()))
}

/// What is in the repository, or would be with the next commit.
fn files() -> Result<Vec<File>> {
    let words = ["ls-files", "-z", "--cached", "--others", "--exclude-standard"];
    let listed = output(program("git").args(words)).context("tidy reads git's list of files")?;
    let paths = listed.split('\0').filter(|path| root().join(path).is_file() && !path.is_empty());
    paths.map(read).collect()
}

fn read(path: &str) -> Result<File> {
    let bytes = fs::read(root().join(path)).with_context(|| format!("cannot read {path}"))?;
    Ok(File { path: path.to_owned(), bytes: bytes.len(), text: String::from_utf8(bytes).ok() })
}

#[cfg(test)]
fn text_file(path: &str, text: &str) -> File {
    File { path: path.to_owned(), bytes: text.len(), text: Some(text.to_owned()) }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_finding_names_its_place() {
        let file = text_file("core/src/nest.rs", "");
        assert_eq!(Finding::in_line(&file, 3, "odd").to_string(), "core/src/nest.rs:3: odd");
        assert_eq!(Finding::in_file(&file, "odd").to_string(), "core/src/nest.rs: odd");
    }
}
