//! What came of comparing: each value of a document beside ours, and how many of each rank.

use crate::document::{Case, Fact, Noted, Printed};
use crate::fields::Fields;
use crate::measure::Measure;
use crate::output::Output;
use crate::rank::Rank;
use serde::Serialize;
use serde_json::Value;

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
    pub(crate) fn of(document: &Value) -> Result<Self, String> {
        let document = Fields::of(document, &["title", "case"])?;
        let title = document.text("title")?;
        let cases = document.list("case")?.iter().map(|case| match Case::read(case) {
            Ok(case) => Ok(CheckedCase::of(case)),
            Err(sentence) => Err(format!("{title}: {sentence}")),
        });
        Ok(Self { title: title.into(), cases: cases.collect::<Result<_, _>>()? })
    }

    /// The values of all its examples.
    pub fn values(&self) -> impl Iterator<Item = &CheckedValue> {
        self.cases.iter().flat_map(|case| &case.values)
    }
}

impl CheckedCase {
    fn of(case: Case<'_>) -> Self {
        let values =
            case.printed.iter().flat_map(|(output, printed)| values(&case, *output, printed));
        Self {
            name: case.name.into(),
            subject: case.subject.into(),
            place: case.place.into(),
            rank: case.rank,
            worth: case.worth(),
            values: values.collect(),
            given: case.facts,
        }
    }
}

/// Every value of one output of a case.
fn values(case: &Case<'_>, output: Output, printed: &Printed<'_>) -> Vec<CheckedValue> {
    let (name, rank) = (output.words(), case.rank_of(output));
    let prints = printed.values();
    let computed = case.given.compute(output).and_then(|computed| {
        let (printed, found) = (prints.len(), computed.len());
        let many = || format!("{printed} printed, {found} computed");
        if printed == found { Ok(computed) } else { Err(many()) }
    });
    let computed = match computed {
        Ok(computed) => computed,
        Err(failure) => {
            let texts: Vec<&str> = prints.iter().map(|print| print.text).collect();
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

impl CheckedValue {
    /// A printed value beside ours, in the printed unit.
    fn of(
        (name, rank): (String, Rank),
        print: &Measure<'_>,
        ours: f64,
        noted: Option<&Noted<'_>>,
    ) -> Self {
        let tolerance = match noted.map_or(Ok(print.last_digit / 2.0), Noted::tolerance) {
            Ok(tolerance) => tolerance,
            Err(failure) => return Self::failed(name, rank, print.text.into(), failure),
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
        let share = noted.and_then(|noted| noted.within).filter(|text| text.ends_with('%'));
        Self {
            name,
            rank,
            printed: print.text.into(),
            ours: Some(print.like(ours)),
            unrounded: Some(unrounded(ours)),
            difference: Some(print.small(if difference.abs() <= slack { 0.0 } else { difference })),
            tolerance: Some(share.map_or_else(|| print.small(tolerance), Into::into)),
            because: noted.map(|noted| noted.because.into()),
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

/// Every digit of a number, by the writer that the reports have.
fn unrounded(number: f64) -> String {
    let text = Value::from(number).to_string();
    text.strip_suffix(".0").map_or(text.clone(), Into::into)
}
