//! What a value is worth as a check, and how it is known: two marks, and which of them go together.

use serde::Serialize;

/// What a value is worth as a check.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Rank {
    /// Printed, read or quoted, and our formula could get it wrong.
    Independent,
    /// Printed, read or quoted, but it tests little.
    Weak,
    /// Said to be printed, but from memory.
    Recalled,
    /// What a program gives that accompanies a book: not what the book prints.
    Program,
    /// Printed nowhere: worked out from a rule.
    Derived,
}

/// How a value, or the rule that it was worked out from, was taken from its document.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Known<'a> {
    /// Read on its own page.
    Page,
    /// Read where another text quotes it.
    QuotedIn(&'a str),
    /// What a program gives.
    OutputOf(&'a str),
    /// Readable from memory.
    Memory,
}

impl<'a> Known<'a> {
    /// Reads `page`, `quoted in …`, `output of …` or `memory`.
    ///
    /// # Errors
    /// A sentence when it is none of them.
    pub fn read(text: &'a str) -> Result<Self, String> {
        let after = |start: &str| {
            let place = text.strip_prefix(start).map(str::trim);
            place.filter(|place| !place.is_empty())
        };
        let known = match text {
            "page" => Some(Self::Page),
            "memory" => Some(Self::Memory),
            _ => after("quoted in ")
                .map(Self::QuotedIn)
                .or_else(|| after("output of ").map(Self::OutputOf)),
        };
        known.ok_or_else(|| {
            format!("known = {text:?}; page, quoted in …, output of … or memory was expected")
        })
    }
}

impl Rank {
    /// Best first.
    pub const ALL: [Self; 5] =
        [Self::Independent, Self::Weak, Self::Recalled, Self::Program, Self::Derived];

    /// The rank that a document calls so.
    ///
    /// # Errors
    /// A sentence when it is none of them.
    pub fn read(word: &str) -> Result<Self, String> {
        let words = ["independent", "weak", "recalled", "program", "derived"];
        let ranked = Self::ALL.into_iter().zip(words).find(|(_, name)| *name == word);
        let ranked = ranked.map(|(rank, _)| rank);
        ranked.ok_or_else(|| format!("rank = {word:?}; {} was expected", words.join(", ")))
    }

    /// Its name.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Independent => "printed, independent",
            Self::Weak => "printed, weak",
            Self::Recalled => "from memory",
            Self::Program => "a program's output",
            Self::Derived => "derived",
        }
    }

    /// What it says of a value.
    #[must_use]
    pub const fn meaning(self) -> &'static str {
        match self {
            Self::Independent => {
                "Printed in a document and read there, or quoted from it. Our formula could get it wrong."
            }
            Self::Weak => {
                "Printed too, but it tests little: it restates what was given, or holds a table against itself."
            }
            Self::Recalled => {
                "Said to be printed, but not read for this. We agree with what is remembered."
            }
            Self::Program => {
                "What a program that accompanies a textbook gives for the book's examples. The book's own digits were not seen."
            }
            Self::Derived => {
                "Printed nowhere: worked out by other means from a rule of the document."
            }
        }
    }

    /// Whether a value of this rank can be known so: what is from memory is not said to be printed,
    /// and what a program gives is nothing else.
    ///
    /// # Errors
    /// A sentence.
    pub fn goes_with(self, known: Known<'_>) -> Result<(), String> {
        let fits = match (self, known) {
            (Self::Independent | Self::Weak, Known::Page | Known::QuotedIn(_))
            | (Self::Recalled, Known::Memory)
            | (Self::Program, Known::OutputOf(_)) => true,
            (Self::Derived, known) => !matches!(known, Known::OutputOf(_)),
            _ => false,
        };
        if fits { Ok(()) } else { Err(format!("rank {self:?} does not go with known {known:?}")) }
    }
}
