//! Where a number or a formula comes from, and how that is known.

use core::fmt;

/// How a value was taken from its source.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum Known {
    /// Read on the source's own page.
    Page,
    /// Read where another text quotes the source.
    QuotedIn(&'static str),
    /// Written from memory; look it up in the source before relying on its last digit.
    Memory,
    /// What the trade does; no document says it.
    CommonPractice,
    /// Worked out here from first principles.
    Derived,
}

impl fmt::Display for Known {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Page => f.write_str("read at the source"),
            Self::QuotedIn(text) => write!(f, "quoted in {text}"),
            Self::Memory => f.write_str("from memory"),
            Self::CommonPractice => f.write_str("common practice, no source"),
            Self::Derived => f.write_str("derived here"),
        }
    }
}

/// A document, the place in it, and how that place is known.
///
/// # Example
/// ```
/// use coilnest::source::{Known, Source};
///
/// let source = Source::new("EN 13906-1:2013", "active and total turns", Known::Memory);
/// assert_eq!(source.to_string(), "EN 13906-1:2013, active and total turns (from memory)");
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Source {
    title: &'static str,
    place: &'static str,
    known: Known,
}

impl Source {
    /// A citation; `title` carries the edition, `place` the page, table, section or equation.
    #[must_use]
    pub const fn new(title: &'static str, place: &'static str, known: Known) -> Self {
        Self { title, place, known }
    }

    /// The document and the place in it, without how that is known; without a document it is common practice.
    #[must_use]
    pub fn cited(&self) -> String {
        match (self.title, self.place) {
            ("", "") => "common practice".to_owned(),
            (title, "") => title.to_owned(),
            (title, place) => format!("{title}, {place}"),
        }
    }

    /// How the value was taken from the document.
    #[must_use]
    pub const fn known(&self) -> Known {
        self.known
    }
}

impl fmt::Display for Source {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match (self.title, self.place) {
            ("", "") => write!(f, "{}", self.known),
            (title, "") => write!(f, "{title} ({})", self.known),
            (title, place) => write!(f, "{title}, {place} ({})", self.known),
        }
    }
}

/// A value together with its source.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sourced<T> {
    /// The value.
    pub value: T,
    /// Where it comes from.
    pub source: Source,
}
