//! Values that documents print, compared with what [`coilnest`] computes, wherever this runs.
//!
//! A file of `documents/` is one document; a case is one example of it: what was given, what is
//! printed, where, how it is known, and what it is worth as a check. Not every one is printed, and
//! some test little: each has a [`Rank`], and the ranks are counted apart. Every value is held to half
//! a unit of its last digit unless the case names another tolerance and says why.

mod checked;
mod document;
mod given;
mod measure;
mod rank;

pub use checked::{CheckedCase, CheckedDocument, CheckedValue, Checks, Count, Standing};
pub use document::{Case, Document, Fact, Noted, Printed};
pub use given::{Coil, Given, Output, UnitName};
pub use measure::Measure;
pub use rank::{Known, Rank};

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
    match serde_json::from_str::<Vec<Document>>(DOCUMENTS) {
        Ok(documents) => check(&documents),
        Err(error) => Checks { unread: Some(error.to_string()), ..Checks::default() },
    }
}

/// The same of [`DOCUMENTS`] that something else has read: a program with a reader of JSON of its own need
/// not hold a second one.
#[must_use]
pub fn run_on(documents: serde_json::Value) -> Checks {
    match serde_json::from_value::<Vec<Document>>(documents) {
        Ok(documents) => check(&documents),
        Err(error) => Checks { unread: Some(error.to_string()), ..Checks::default() },
    }
}

/// Compares every printed value of some documents.
#[must_use]
pub fn check(documents: &[Document]) -> Checks {
    Checks::of(documents.iter().map(CheckedDocument::of).collect())
}
