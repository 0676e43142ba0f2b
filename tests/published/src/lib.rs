//! Values that documents print, compared with what [`coilnest`] computes, wherever this runs.
//!
//! A file of `documents/` is one document; a case is one example of it: what was given, what is
//! printed, where, how it is known, and what it is worth as a check. Not every one is printed, and
//! some test little: each has a [`Rank`], and the ranks are counted apart. Every value is held to half
//! a unit of its last digit unless the case names another tolerance and says why.

mod checked;
mod document;
mod fields;
mod given;
mod measure;
mod output;
mod rank;

pub use checked::{CheckedCase, CheckedDocument, CheckedValue, Checks, Count, Standing};
pub use document::Fact;
pub use measure::Measure;
pub use rank::{Known, Rank};

use serde_json::Value;

/// The documents as a text of JSON.
pub const DOCUMENTS: &str = include_str!(concat!(env!("OUT_DIR"), "/documents.json"));

/// Computes every value of every document, and compares it with the printed one.
///
/// # Example
/// ```
/// let checks = coilnest_published::run();
/// assert!(checks.agree > 150 && checks.differ == 0);
/// ```
#[must_use]
pub fn run() -> Checks {
    match serde_json::from_str(DOCUMENTS) {
        Ok(documents) => run_on(&documents),
        Err(error) => Checks { unread: Some(error.to_string()), ..Checks::default() },
    }
}

/// The same of [`DOCUMENTS`] that something else has read: a program with a reader of JSON of its own need
/// not hold a second one.
#[must_use]
pub fn run_on(documents: &Value) -> Checks {
    let documents = documents.as_array().map_or(&[][..], Vec::as_slice);
    match documents.iter().map(CheckedDocument::of).collect() {
        Ok(documents) => Checks::of(documents),
        Err(sentence) => Checks { unread: Some(sentence), ..Checks::default() },
    }
}
