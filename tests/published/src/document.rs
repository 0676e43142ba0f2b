//! What documents print, case by case: what was given, what is printed, where, and how it is known.

use crate::given::{Given, Output};
use crate::measure::Measure;
use crate::rank::{Known, Rank};
use core::fmt;
use serde::de::value::{MapAccessDeserializer, SeqAccessDeserializer};
use serde::de::{self, MapAccess, SeqAccess, Visitor};
use serde::{Deserialize, Deserializer, Serialize};
use std::collections::BTreeMap;

/// What one document prints.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Document {
    /// Title and edition, as cited.
    pub title: String,
    /// Its examples.
    #[serde(rename = "case")]
    pub cases: Vec<Case>,
}

/// One example of a document.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Case {
    /// What it is about.
    pub name: String,
    /// Page, table, section, example or equation.
    pub place: String,
    /// How the digits were taken from there, or the rule that they were worked out from.
    pub known: Known,
    /// What its values are worth as checks.
    pub rank: Rank,
    /// Those of an independent case that test little: D/d, De − d.
    #[serde(default)]
    pub weak: Vec<Output>,
    /// What the example starts from.
    pub given: Given,
    /// Its subject in words, which the build writes.
    #[serde(default)]
    pub subject: String,
    /// All else that it starts from in words, which the build writes.
    #[serde(default)]
    pub facts: Vec<Fact>,
    /// What is printed.
    pub printed: BTreeMap<Output, Printed>,
}

/// A given of an example, as a text.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Fact {
    /// What it is.
    pub name: String,
    /// Its value, as given.
    pub text: String,
}

/// A printed value, or one for each coil of a nest, outermost first.
#[derive(Clone, Debug)]
pub enum Printed {
    /// One value, held to its own digits.
    Value(Measure),
    /// One value for each coil, held to their own digits.
    Each(Vec<Measure>),
    /// A value that something is to be said about.
    Noted(Noted),
}

impl<'de> Deserialize<'de> for Printed {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_any(AnyPrinted)
    }
}

/// Takes a text, a list of them, or a table.
struct AnyPrinted;

impl<'de> Visitor<'de> for AnyPrinted {
    type Value = Printed;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("a printed value, one for each coil, or one with what is to be said about it")
    }

    fn visit_str<E: de::Error>(self, text: &str) -> Result<Printed, E> {
        Measure::read(text).map(Printed::Value).map_err(E::custom)
    }

    fn visit_seq<A: SeqAccess<'de>>(self, each: A) -> Result<Printed, A::Error> {
        Vec::deserialize(SeqAccessDeserializer::new(each)).map(Printed::Each)
    }

    fn visit_map<A: MapAccess<'de>>(self, noted: A) -> Result<Printed, A::Error> {
        Noted::deserialize(MapAccessDeserializer::new(noted)).map(Printed::Noted)
    }
}

/// A printed value with another tolerance, or one known to differ.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Noted {
    /// The value.
    pub text: Measure,
    /// How far off it may be: `0.1 %`, `25 psi` or `2 last digits`.
    pub within: Option<String>,
    /// Whether it is known to differ by more than that.
    #[serde(default)]
    pub deviates: bool,
    /// Why.
    pub because: String,
}

impl Case {
    /// What one of its values is worth.
    #[must_use]
    pub fn rank_of(&self, output: Output) -> Rank {
        if self.weak.contains(&output) { Rank::Weak } else { self.rank }
    }

    /// Its rank and how it is known, for a reader.
    #[must_use]
    pub fn worth(&self) -> String {
        let read = match &self.known {
            Known::Page => "read at the source".into(),
            Known::QuotedIn(place) => format!("quoted in {place}"),
            Known::OutputOf(program) => program.clone(),
            Known::Memory => "from memory".into(),
        };
        match self.rank {
            // The rank says it already.
            Rank::Recalled => self.rank.name().into(),
            Rank::Derived => format!("{}, its rule {read}", self.rank.name()),
            rank => format!("{}: {read}", rank.name()),
        }
    }
}

impl Printed {
    /// Every value.
    #[must_use]
    pub fn values(&self) -> &[Measure] {
        match self {
            Self::Value(value) => std::slice::from_ref(value),
            Self::Each(values) => values,
            Self::Noted(noted) => std::slice::from_ref(&noted.text),
        }
    }
}

impl Noted {
    /// How far off the value may be, in its own unit.
    ///
    /// # Errors
    /// A sentence when the note says nothing, or cannot be read.
    pub fn tolerance(&self) -> Result<f64, String> {
        let value = &self.text;
        if self.because.trim().is_empty() {
            return Err("a note without a reason".into());
        }
        match self.within.as_deref() {
            None if self.deviates => Ok(value.last_digit / 2.0),
            None => Err("a note that changes nothing".into()),
            Some(within) => match within.strip_suffix(" last digits") {
                Some(count) => Ok(Measure::read(count)?.number * value.last_digit),
                None if within.ends_with('%') => {
                    Ok(Measure::read(within)?.si() * value.number.abs())
                }
                None => Ok(Measure::read(within)?.si() / value.unit_si),
            },
        }
    }
}
