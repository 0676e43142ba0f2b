//! How each figure came about, as it is handed out.

use super::Phrase;
use crate::formula::{Formula, Put};
use crate::source::Source;
use serde::Serialize;
use serde::ser::{SerializeMap, Serializer};
use std::borrow::Cow;

/// How each figure came about, by the keys that figures carry: `w1`, `w2` …
///
/// The numbers are put into their formulas when a working is asked for.
#[derive(Clone, Debug, Default)]
pub struct Workings(pub(crate) Vec<Working>);

impl Workings {
    /// The place of a key, that of `w1` being 0.
    pub(super) fn place(key: &str) -> Option<usize> {
        key.strip_prefix('w')?.parse::<usize>().ok()?.checked_sub(1)
    }

    /// The working of a key.
    #[must_use]
    pub fn get(&self, key: &str) -> Option<WorkingEntry> {
        self.0.get(Self::place(key)?).map(WorkingEntry::from)
    }

    /// The formula of a key, which numbers can be put into; none of a working that was read.
    #[must_use]
    pub fn formula(&self, key: &str) -> Option<Formula> {
        match self.0.get(Self::place(key)?)? {
            Working::Filed { put, .. } => Some(put.formula()),
            #[cfg(feature = "serde")]
            Working::Read(_) => None,
        }
    }

    /// All workings, that of `w1` first.
    pub fn iter(&self) -> impl ExactSizeIterator<Item = WorkingEntry> {
        self.0.iter().map(WorkingEntry::from)
    }
}

/// By what is written of them: some may have been read.
impl PartialEq for Workings {
    fn eq(&self, other: &Self) -> bool {
        self.iter().eq(other.iter())
    }
}

impl Serialize for Workings {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut object = serializer.serialize_map(Some(self.0.len()))?;
        for (index, working) in self.iter().enumerate() {
            object.serialize_entry(&format!("w{}", index + 1), &working)?;
        }
        object.end()
    }
}

#[cfg(feature = "schema")]
impl schemars::JsonSchema for Workings {
    fn inline_schema() -> bool {
        true
    }

    fn schema_name() -> std::borrow::Cow<'static, str> {
        "Workings".into()
    }

    fn json_schema(generator: &mut schemars::SchemaGenerator) -> schemars::Schema {
        generator.subschema_for::<std::collections::BTreeMap<String, WorkingEntry>>()
    }
}

/// How a figure came about.
#[derive(Clone, Debug)]
pub(crate) enum Working {
    /// Its numbers not yet put in.
    Filed { put: Put, result: String, source: Cited, row: Option<&'static str> },
    /// As it was read.
    #[cfg(feature = "serde")]
    Read(WorkingEntry),
}

/// Where formula and table values come from.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Cited {
    Source(Source),
    Said(Cow<'static, str>),
}

impl From<&Source> for Cited {
    fn from(source: &Source) -> Self {
        Self::Source(*source)
    }
}

impl From<&'static str> for Cited {
    fn from(said: &'static str) -> Self {
        Self::Said(Cow::Borrowed(said))
    }
}

impl From<String> for Cited {
    fn from(said: String) -> Self {
        Self::Said(Cow::Owned(said))
    }
}

impl From<&Working> for WorkingEntry {
    fn from(working: &Working) -> Self {
        let (put, result, source, row) = match working {
            Working::Filed { put, result, source, row } => (put, result, source, row),
            #[cfg(feature = "serde")]
            Working::Read(entry) => return entry.clone(),
        };
        let letters = put.letters().into_iter().map(|(sign, of)| (sign.into(), of.to_owned()));
        Self {
            formula: put.formula().to_string(),
            with: put.with(),
            letters: Letters(letters.collect()),
            result: result.clone(),
            source: match source {
                Cited::Source(source) => source.to_string(),
                Cited::Said(said) => said.clone().into_owned(),
            },
            row: row.map(Into::into),
        }
    }
}

/// The letters of a formula with their numbers, in the order of the formula.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Letters(pub Vec<(Phrase, String)>);

impl Letters {
    fn is_empty(&self) -> bool {
        self.0.is_empty()
    }
}

impl Serialize for Letters {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_map(self.0.iter().map(|(sign, number)| (sign, number)))
    }
}

#[cfg(feature = "schema")]
impl schemars::JsonSchema for Letters {
    fn inline_schema() -> bool {
        true
    }

    fn schema_name() -> std::borrow::Cow<'static, str> {
        "Letters".into()
    }

    fn json_schema(generator: &mut schemars::SchemaGenerator) -> schemars::Schema {
        generator.subschema_for::<std::collections::BTreeMap<String, String>>()
    }
}

record! {
    /// How a figure came about.
    WorkingEntry {
        /// The formula in symbols.
        formula: String,
        /// The numbers put in.
        with: String,
        /// Each letter of the formula with its number; empty where it has one for each term of a sum.
        #[serde(default, skip_serializing_if = "Letters::is_empty")]
        letters: Letters,
        /// The result with its unit.
        result: String,
        /// Where formula and table values come from.
        source: String,
        /// The row of the tables that a number of it was taken from.
        row: Option<Phrase>,
    }
}
