//! The fields of a table in a document, each read where a formula asks for it: as a text, a number, a quantity
//! or one of some words.

use crate::measure::Measure;
use coilnest::quantity::{Force, Length, Pressure, unit};
use serde_json::{Map, Value};

/// A table whose fields all are known.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Fields<'a>(&'a Map<String, Value>);

impl<'a> Fields<'a> {
    /// The table in a value, if it has no fields but these.
    pub(crate) fn of(value: &'a Value, known: &[&str]) -> Result<Self, String> {
        let fields = value.as_object().ok_or("a table was expected")?;
        match fields.keys().find(|name| !known.contains(&name.as_str())) {
            Some(name) => Err(format!("{name} is no field here: {} are", known.join(", "))),
            None => Ok(Self(fields)),
        }
    }

    pub(crate) fn has(self, name: &str) -> bool {
        self.0.contains_key(name)
    }

    pub(crate) fn value(self, name: &str) -> Result<&'a Value, String> {
        self.0.get(name).ok_or_else(|| format!("{name} is not given"))
    }

    /// What a field holds, none where it is not there.
    pub(crate) fn maybe<T>(
        self,
        name: &str,
        read: impl FnOnce(Self, &str) -> Result<T, String>,
    ) -> Result<Option<T>, String> {
        if self.has(name) { read(self, name).map(Some) } else { Ok(None) }
    }

    pub(crate) fn text(self, name: &str) -> Result<&'a str, String> {
        self.value(name)?.as_str().ok_or_else(|| format!("{name} is no text"))
    }

    /// The items of a list; none where it is not there.
    pub(crate) fn list(self, name: &str) -> Result<&'a [Value], String> {
        let list = self.maybe(name, |fields, name| {
            let list = fields.value(name)?.as_array();
            list.ok_or_else(|| format!("{name} is no list"))
        })?;
        Ok(list.map_or(&[], Vec::as_slice))
    }

    /// A flag; off where it is not there.
    pub(crate) fn flag(self, name: &str) -> Result<bool, String> {
        let flag = self.maybe(name, |fields, name| {
            let flag = fields.value(name)?.as_bool();
            flag.ok_or_else(|| format!("{name} is neither true nor false"))
        })?;
        Ok(flag.unwrap_or_default())
    }

    /// One of some words, as what it stands for.
    pub(crate) fn word<T: Copy>(self, name: &str, words: &[(&str, T)]) -> Result<T, String> {
        let text = self.text(name)?;
        let word = words.iter().find(|(word, _)| *word == text);
        word.map(|(_, meant)| *meant).ok_or_else(|| format!("{name} cannot be {text:?}"))
    }

    pub(crate) fn number(self, name: &str) -> Result<f64, String> {
        self.value(name)?.as_f64().ok_or_else(|| format!("{name} is no number"))
    }

    /// A number with its unit.
    pub(crate) fn measure(self, name: &str) -> Result<Measure<'a>, String> {
        Measure::read(self.text(name)?)
    }

    pub(crate) fn length(self, name: &str) -> Result<Length, String> {
        self.measure(name).map(|given| Length::new::<unit::meter>(given.si()))
    }

    pub(crate) fn force(self, name: &str) -> Result<Force, String> {
        self.measure(name).map(|given| Force::new::<unit::newton>(given.si()))
    }

    pub(crate) fn pressure(self, name: &str) -> Result<Pressure, String> {
        self.measure(name).map(|given| Pressure::new::<unit::pascal>(given.si()))
    }
}
