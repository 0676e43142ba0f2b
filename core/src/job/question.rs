//! A height or a load that is asked of a nest, told apart by its unit.

use super::problem::Path;
use super::report::Problem;
use crate::bounds;
use crate::quantity::{self, Force, Length, System};
use crate::reading::Reading;

/// What is asked.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Question {
    At(Length),
    Under(Force),
    Free,
    Solid,
}

/// Reads `12 in`, `5000 lb`, `free` or `solid`; a bare number is a height.
pub(crate) fn read(text: &str, system: System, path: &Path) -> Result<Question, Box<Problem>> {
    match text.trim() {
        word if word.eq_ignore_ascii_case("free") => return Ok(Question::Free),
        word if word.eq_ignore_ascii_case("solid") => return Ok(Question::Solid),
        _ => {}
    }
    let as_height = Reading::parse(text, system, &bounds::HEIGHT);
    match as_height {
        Ok(height) => Ok(Question::At(height.length())),
        Err(refusal) => match quantity::read(text, system, &bounds::LOAD) {
            Ok(load) if matches!(refusal.code(), "wrong-unit" | "unknown-unit" | "stray-text") => {
                Ok(Question::Under(load))
            }
            _ => Err(Box::new(Problem {
                expected: "a height, a load, or the word free or solid".into(),
                ..Problem::refused(path, &refusal)
            })),
        },
    }
}
