//! Values that a document prints, compared with what coilnest computes.
//!
//! A file of `published/` is one document; a case is one example of it: what was given, what is
//! printed, where, and how it is known. Every printed value is held to half a unit of its last digit
//! unless the case names another tolerance and says why.

mod given;

pub use given::{Given, Output};

use crate::measure::Measure;
use serde::Deserialize;
use std::collections::BTreeMap;
use std::path::Path;

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
    /// How the digits were taken from there.
    pub known: Known,
    /// What the example starts from.
    pub given: Given,
    /// What is printed.
    pub printed: BTreeMap<Output, Printed>,
}

/// How a printed value was taken from its document.
#[derive(Clone, Debug, Deserialize, PartialEq)]
#[serde(try_from = "String")]
pub enum Known {
    /// Read on its own page.
    Page,
    /// Read where another text quotes it.
    QuotedIn(String),
    /// Written from memory.
    Memory,
    /// Worked out from what the document prints.
    Derived,
}

impl TryFrom<String> for Known {
    type Error = String;

    fn try_from(text: String) -> Result<Self, String> {
        match text.as_str() {
            "page" => Ok(Self::Page),
            "memory" => Ok(Self::Memory),
            "derived" => Ok(Self::Derived),
            other => match other.strip_prefix("quoted in ") {
                Some(place) if !place.trim().is_empty() => Ok(Self::QuotedIn(place.into())),
                _ => Err(format!(
                    "known = {text:?}; page, quoted in …, memory or derived was expected"
                )),
            },
        }
    }
}

/// A printed value, or one for each coil of a nest, outermost first.
#[derive(Clone, Debug, Deserialize)]
#[serde(untagged)]
pub enum Printed {
    /// One value, held to its own digits.
    Value(Measure),
    /// One value for each coil, held to their own digits.
    Each(Vec<Measure>),
    /// A value that something is to be said about.
    Noted(Noted),
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

/// What came of comparing.
#[derive(Clone, Debug, Default)]
pub struct Tally {
    /// Values that agree.
    pub agree: usize,
    /// Known deviations that still deviate, each with its reason.
    pub deviate: Vec<String>,
    /// Everything else, in sentences.
    pub failures: Vec<String>,
}

/// Reads every document of a folder.
///
/// # Errors
/// A sentence that names the file.
pub fn load(folder: &Path) -> Result<Vec<Document>, String> {
    let entries =
        std::fs::read_dir(folder).map_err(|error| format!("{}: {error}", folder.display()))?;
    let mut paths = Vec::new();
    for entry in entries {
        paths.push(entry.map_err(|error| error.to_string())?.path());
    }
    paths.sort();
    let document = |path: &std::path::PathBuf| {
        let named = |error: String| format!("{}: {error}", path.display());
        let text = std::fs::read_to_string(path).map_err(|error| named(error.to_string()))?;
        toml::from_str(&text).map_err(|error| named(error.to_string()))
    };
    paths.iter().map(document).collect()
}

/// Compares every printed value of some documents.
#[must_use]
pub fn compare(documents: &[Document]) -> Tally {
    let mut tally = Tally::default();
    for document in documents {
        for case in &document.cases {
            for (output, printed) in &case.printed {
                let place =
                    format!("{}, {}, {}: {output:?}", document.title, case.place, case.name);
                case.compare(*output, printed, &place, &mut tally);
            }
        }
    }
    if tally.agree == 0 {
        tally.failures.push("nothing was compared".into());
    }
    tally
}

impl Case {
    fn compare(&self, output: Output, printed: &Printed, place: &str, tally: &mut Tally) {
        let computed = match self.given.compute(output) {
            Ok(computed) => computed,
            Err(error) => return tally.failures.push(format!("{place}: {error}")),
        };
        let values = match printed {
            Printed::Value(value) => std::slice::from_ref(value),
            Printed::Each(values) => values,
            Printed::Noted(noted) => return noted.compare(&computed, place, tally),
        };
        if values.len() != computed.len() {
            let (printed, computed) = (values.len(), computed.len());
            return tally.failures.push(format!("{place}: {printed} printed, {computed} computed"));
        }
        for (value, computed) in values.iter().zip(computed) {
            match off(value, computed, value.last_digit / 2.0) {
                None => tally.agree += 1,
                Some(off) => tally.failures.push(format!("{place}: {off}")),
            }
        }
    }
}

impl Noted {
    fn compare(&self, computed: &[f64], place: &str, tally: &mut Tally) {
        let [computed] = computed else {
            return tally
                .failures
                .push(format!("{place}: one value printed, {} computed", computed.len()));
        };
        let tolerance = match self.tolerance() {
            Ok(tolerance) => tolerance,
            Err(error) => return tally.failures.push(format!("{place}: {error}")),
        };
        let reason = &self.because;
        match (off(&self.text, *computed, tolerance), self.deviates) {
            _ if reason.trim().is_empty() => tally.failures.push(format!("{place}: no reason")),
            (None, false) => tally.agree += 1,
            (Some(off), true) => tally.deviate.push(format!("{place}: {off} ({reason})")),
            (Some(off), false) => tally.failures.push(format!("{place}: {off}")),
            (None, true) => {
                tally.failures.push(format!("{place}: agrees now; it was listed as: {reason}"));
            }
        }
    }

    /// In the unit of the printed number.
    fn tolerance(&self) -> Result<f64, String> {
        let value = &self.text;
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

/// How a computed value (SI) misses a printed one, if it does.
fn off(printed: &Measure, computed: f64, tolerance: f64) -> Option<String> {
    let computed = computed / printed.unit_si;
    let difference = (computed - printed.number).abs();
    // What comparing in floating point itself may cost, on a value that lies half-way.
    let slack = 1e-12 * printed.number.abs();
    let agrees = difference <= tolerance + slack;
    (!agrees).then(|| {
        format!("{} is printed, {computed} computed, {tolerance} was allowed", printed.text)
    })
}
