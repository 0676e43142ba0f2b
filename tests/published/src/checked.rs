//! What came of comparing: each value of a document beside ours, and how many of each rank.

use crate::document::{Case, Document, Fact, Noted, Printed};
use crate::given::Output;
use crate::measure::Measure;
use crate::rank::Rank;
use serde::Serialize;

/// Everything that was compared.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Checks {
    /// How many values agree.
    pub agree: usize,
    /// How many are known to deviate, and do.
    pub deviate: usize,
    /// How many differ without a reason, or could not be computed.
    pub differ: usize,
    /// The same apart by rank, best first; a rank without a value is left out.
    pub counts: Vec<Count>,
    /// The documents.
    pub documents: Vec<CheckedDocument>,
    /// Why no document could be read.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub unread: Option<String>,
}

/// How many values of a rank there are.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Count {
    /// The rank.
    pub rank: Rank,
    /// Its name.
    pub name: String,
    /// What it says of a value.
    pub meaning: String,
    /// How many values.
    pub values: usize,
    /// How many of them agree.
    pub agree: usize,
    /// In how many documents.
    pub documents: usize,
}

/// One document.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct CheckedDocument {
    /// Title and edition, as cited.
    pub title: String,
    /// Its examples.
    pub cases: Vec<CheckedCase>,
}

/// One example of a document.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct CheckedCase {
    /// What it is about.
    pub name: String,
    /// The kind of thing that it is about, in a word.
    pub subject: String,
    /// Page, table, section, example or equation.
    pub place: String,
    /// What most of its values are worth as checks.
    pub rank: Rank,
    /// The same in words, and how the digits were taken from there.
    pub worth: String,
    /// What was given.
    pub given: Vec<Fact>,
    /// What is printed, and ours.
    pub values: Vec<CheckedValue>,
}

/// One value of a document, and ours.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct CheckedValue {
    /// What it is.
    pub name: String,
    /// What it is worth as a check.
    pub rank: Rank,
    /// As printed.
    pub printed: String,
    /// Ours, with the digits of the print.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub ours: Option<String>,
    /// Ours in the printed unit, not rounded.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub unrounded: Option<String>,
    /// Ours less the printed one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub difference: Option<String>,
    /// How much of it is allowed.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub tolerance: Option<String>,
    /// Why that much is allowed, or why the value is known to deviate.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub because: Option<String>,
    /// Whether they agree.
    pub standing: Standing,
    /// Why not, where no reason is known.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub failure: Option<String>,
}

/// Whether a value agrees.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Standing {
    /// Within the tolerance.
    Agrees,
    /// Beyond it, for a known reason.
    Deviates,
    /// Anything else.
    Differs,
}

impl Checks {
    pub(crate) fn of(documents: Vec<CheckedDocument>) -> Self {
        let mut checks = Self::default();
        for value in documents.iter().flat_map(CheckedDocument::values) {
            *match value.standing {
                Standing::Agrees => &mut checks.agree,
                Standing::Deviates => &mut checks.deviate,
                Standing::Differs => &mut checks.differ,
            } += 1;
        }
        checks.counts =
            Rank::ALL.into_iter().filter_map(|rank| Count::of(rank, &documents)).collect();
        Self { documents, ..checks }
    }
}

impl Count {
    fn of(rank: Rank, documents: &[CheckedDocument]) -> Option<Self> {
        let of_rank = |document: &&CheckedDocument| document.values().any(|one| one.rank == rank);
        let all = documents.iter().flat_map(CheckedDocument::values);
        let values: Vec<_> = all.filter(|value| value.rank == rank).collect();
        let agree = values.iter().filter(|value| value.standing == Standing::Agrees).count();
        let count = Self {
            rank,
            name: rank.name().into(),
            meaning: rank.meaning().into(),
            values: values.len(),
            agree,
            documents: documents.iter().filter(of_rank).count(),
        };
        (count.values > 0).then_some(count)
    }
}

impl CheckedDocument {
    pub(crate) fn of(document: &Document) -> Self {
        let cases = document.cases.iter().map(CheckedCase::of).collect();
        Self { title: document.title.clone(), cases }
    }

    /// The values of all its examples.
    pub fn values(&self) -> impl Iterator<Item = &CheckedValue> {
        self.cases.iter().flat_map(|case| &case.values)
    }
}

impl CheckedCase {
    fn of(case: &Case) -> Self {
        let values =
            case.printed.iter().flat_map(|(output, printed)| values(case, *output, printed));
        Self {
            name: case.name.clone(),
            subject: case.subject.clone(),
            place: case.place.clone(),
            rank: case.rank,
            worth: case.worth(),
            given: case.facts.clone(),
            values: values.collect(),
        }
    }
}

/// Every value of one output of a case.
fn values(case: &Case, output: Output, printed: &Printed) -> Vec<CheckedValue> {
    let (name, rank) = (name_of(output), case.rank_of(output));
    let prints = printed.values();
    let computed = case.given.compute(output).and_then(|computed| {
        let (printed, found) = (prints.len(), computed.len());
        let many = || format!("{printed} printed, {found} computed");
        if printed == found { Ok(computed) } else { Err(many()) }
    });
    let computed = match computed {
        Ok(computed) => computed,
        Err(failure) => {
            let texts: Vec<&str> = prints.iter().map(|print| print.text.as_str()).collect();
            return vec![CheckedValue::failed(name, rank, texts.join(", "), failure)];
        }
    };
    let noted = if let Printed::Noted(noted) = printed { Some(noted) } else { None };
    let each = matches!(printed, Printed::Each(_));
    let numbered = prints.iter().zip(computed).zip(1..);
    let named = numbered.map(|((print, computed), number)| {
        let name = if each { format!("{name}, coil {number}") } else { name.clone() };
        CheckedValue::of((name, rank), print, computed / print.unit_si, noted)
    });
    named.collect()
}

/// Outputs whose own name says too little.
const NAMES: [(&str, &str); 17] = [
    ("bergstrasser", "Bergsträsser factor"),
    ("bergstrasser-below-wahl", "Bergsträsser factor below Wahl factor"),
    ("deflections", "deflection"),
    ("free-for-load", "free height for the load"),
    ("in-si", "one in SI units"),
    ("inside", "inside diameter"),
    ("loads", "load"),
    ("mean", "mean diameter"),
    ("outside", "outside diameter"),
    ("probability-above", "probability above the limits"),
    ("probability-below", "probability below the limits"),
    ("probability-in", "probability within the limits"),
    ("solid", "solid height"),
    ("stress-bergstrasser", "stress with Bergsträsser factor"),
    ("stress-wahl", "stress with Wahl factor"),
    ("stresses-wahl", "stress with Wahl factor"),
    ("wahl", "Wahl factor"),
];

fn name_of(output: Output) -> String {
    let Ok(serde_json::Value::String(name)) = serde_json::to_value(output) else {
        return String::new();
    };
    let named = NAMES.iter().find(|(id, _)| *id == name);
    named.map_or_else(|| name.replace('-', " "), |(_, words)| (*words).into())
}

impl CheckedValue {
    /// A printed value beside ours, in the printed unit.
    fn of((name, rank): (String, Rank), print: &Measure, ours: f64, noted: Option<&Noted>) -> Self {
        let tolerance = match noted.map_or(Ok(print.last_digit / 2.0), Noted::tolerance) {
            Ok(tolerance) => tolerance,
            Err(failure) => return Self::failed(name, rank, print.text.clone(), failure),
        };
        // What comparing in floating point itself may cost, on a value that lies half-way.
        let slack = 1e-12 * print.number.abs();
        let difference = ours - print.number;
        let agrees = difference.abs() <= tolerance + slack;
        let (standing, failure) = match (agrees, noted.is_some_and(|noted| noted.deviates)) {
            (true, false) => (Standing::Agrees, None),
            (false, true) => (Standing::Deviates, None),
            (false, false) => (Standing::Differs, Some("further off than is allowed")),
            (true, true) => (Standing::Differs, Some("agrees now, and was listed as deviating")),
        };
        let share = noted.and_then(|noted| noted.within.clone()).filter(|text| text.ends_with('%'));
        Self {
            name,
            rank,
            printed: print.text.clone(),
            ours: Some(print.like(ours)),
            unrounded: Some(ours.to_string()),
            difference: Some(print.small(if difference.abs() <= slack { 0.0 } else { difference })),
            tolerance: Some(share.unwrap_or_else(|| print.small(tolerance))),
            because: noted.map(|noted| noted.because.clone()),
            standing,
            failure: failure.map(Into::into),
        }
    }

    fn failed(name: String, rank: Rank, printed: String, failure: String) -> Self {
        Self {
            name,
            rank,
            printed,
            ours: None,
            unrounded: None,
            difference: None,
            tolerance: None,
            because: None,
            standing: Standing::Differs,
            failure: Some(failure),
        }
    }
}
