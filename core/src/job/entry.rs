//! What stands in a field of a job file: nothing, what was expected, or something else.
//!
//! A job is written by people and by other programs, so a field may hold anything. What cannot be
//! used becomes a problem at its path, and is kept in the file as it was.

use crate::quantity::write_number;
use serde::{Serialize, Serializer};
use serde_json::{Map, Value};

/// A field of a job.
#[derive(Clone, Debug, Default, PartialEq)]
pub enum Entry<T> {
    /// Not there, or null.
    #[default]
    Absent,
    /// As expected.
    Given(T),
    /// Another kind of thing.
    Odd(Value),
}

/// Text as a person wrote it; a bare number in the file is read as its text.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize)]
pub struct Text(pub String);

/// A list of entries.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct List<T>(pub Vec<Entry<T>>);

/// Texts by name, in the order of the file.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Texts(pub Vec<(String, Entry<Text>)>);

impl Expected for Texts {
    fn from_value(value: Value) -> Result<Self, Value> {
        match value {
            Value::Object(fields) => Ok(Self(
                fields.into_iter().map(|(name, value)| (name, Text::entry(value))).collect(),
            )),
            other => Err(other),
        }
    }
}

impl Serialize for Texts {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_map(self.0.iter().map(|(name, text)| (name, text)))
    }
}

/// What a field can be expected to hold, from the JSON of a file.
pub(crate) trait Expected: Sized {
    /// The thing itself, or the value back where it is none.
    fn from_value(value: Value) -> Result<Self, Value>;

    /// The entry that a value makes.
    fn entry(value: Value) -> Entry<Self> {
        match value {
            Value::Null => Entry::Absent,
            value => Self::from_value(value).map_or_else(Entry::Odd, Entry::Given),
        }
    }
}

/// A field that takes what stands in a file, of whatever kind it is.
pub(crate) trait Slot {
    fn put(&mut self, value: Value);
}

impl<T: Expected> Slot for Entry<T> {
    fn put(&mut self, value: Value) {
        *self = T::entry(value);
    }
}

impl<T> From<T> for Entry<T> {
    fn from(value: T) -> Self {
        Self::Given(value)
    }
}

impl From<&str> for Entry<Text> {
    fn from(text: &str) -> Self {
        Self::Given(Text(text.into()))
    }
}

impl Entry<Text> {
    /// What is written, without blanks round it.
    pub(crate) fn written(&self) -> &str {
        self.given().map_or("", |text| text.0.trim())
    }
}

impl Entry<Value> {
    /// The list that was kept unread.
    pub(crate) fn as_list<T: Expected>(&self) -> Entry<List<T>> {
        self.given().map_or(Entry::Absent, |value| {
            let mut words = value.clone();
            put_in_words(&mut words);
            List::entry(words)
        })
    }
}

/// Puts `yes` and `no` for the flags of a value.
fn put_in_words(value: &mut Value) {
    match value {
        Value::Bool(flag) => *value = Value::from(if *flag { "yes" } else { "no" }),
        Value::Array(items) => items.iter_mut().for_each(put_in_words),
        Value::Object(fields) => fields.values_mut().for_each(put_in_words),
        Value::Null | Value::Number(_) | Value::String(_) => {}
    }
}

impl<T> Entry<T> {
    /// Whether there is nothing.
    #[must_use]
    pub fn is_absent(&self) -> bool {
        matches!(self, Self::Absent)
    }

    /// What was expected, if it is there.
    #[must_use]
    pub fn given(&self) -> Option<&T> {
        match self {
            Self::Given(value) => Some(value),
            Self::Absent | Self::Odd(_) => None,
        }
    }
}

impl Expected for Text {
    fn from_value(value: Value) -> Result<Self, Value> {
        match value {
            Value::String(text) => Ok(Self(text)),
            Value::Number(number) => {
                let text = write_number(number.as_f64().unwrap_or(f64::NAN), 15);
                Ok(Self(text.replace('\u{202f}', "").replace('−', "-")))
            }
            other => Err(other),
        }
    }
}

impl Expected for Value {
    fn from_value(value: Self) -> Result<Self, Self> {
        Ok(value)
    }
}

impl Expected for Map<String, Value> {
    fn from_value(value: Value) -> Result<Self, Value> {
        match value {
            Value::Object(fields) => Ok(fields),
            other => Err(other),
        }
    }
}

impl<T: Expected> Expected for List<T> {
    fn from_value(value: Value) -> Result<Self, Value> {
        match value {
            Value::Array(items) => Ok(Self(items.into_iter().map(T::entry).collect())),
            other => Err(other),
        }
    }
}

impl<T: Serialize> Serialize for Entry<T> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        match self {
            Self::Absent => serializer.serialize_unit(),
            Self::Given(thing) => thing.serialize(serializer),
            Self::Odd(value) => value.serialize(serializer),
        }
    }
}
