//! coilnest against the outside world.
//!
//! [`coilnest_published`] holds what books, standards and regulations print, each value with its
//! source and its own digits, and compares it with what [`coilnest`] computes. What was computed
//! elsewhere, by solid elements, exact arithmetic or another library, is checked by the tests of this
//! crate.

pub mod answers;
pub mod by_hand;
pub mod corpus;
pub mod fields;
pub mod job_path;
pub mod kept;
pub mod read_back;
pub mod schema;

/// The examples of the README, which are compiled and run with those of the documentation.
#[cfg(doctest)]
#[doc = include_str!("../../README.md")]
pub struct Readme;
