//! What documents print, case by case: what was given, what is printed, where, and how it is known.

use crate::fields::Fields;
use crate::given::Given;
use crate::measure::Measure;
use crate::output::{NAMES, Output};
use crate::rank::{Known, Rank};
use serde::Serialize;
use serde_json::Value;

/// One example of a document.
pub(crate) struct Case<'a> {
    /// What it is about.
    pub(crate) name: &'a str,
    /// Page, table, section, example or equation.
    pub(crate) place: &'a str,
    /// How the digits were taken from there, or the rule that they were worked out from.
    known: Known<'a>,
    /// What its values are worth as checks.
    pub(crate) rank: Rank,
    /// Those of an independent case that test little: D/d, De − d.
    weak: Vec<Output>,
    /// What the example starts from.
    pub(crate) given: Given<'a>,
    /// Its subject in words, which the build writes.
    pub(crate) subject: &'a str,
    /// All else that it starts from in words, which the build writes.
    pub(crate) facts: Vec<Fact>,
    /// What is printed, in the order of the outputs.
    pub(crate) printed: Vec<(Output, Printed<'a>)>,
}

/// A given of an example, as a text.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Fact {
    /// What it is.
    pub name: String,
    /// Its value, as given.
    pub text: String,
}

/// A printed value, or one for each coil of a nest, outermost first.
pub(crate) enum Printed<'a> {
    /// One value, held to its own digits.
    Value(Measure<'a>),
    /// One value for each coil, held to their own digits.
    Each(Vec<Measure<'a>>),
    /// A value that something is to be said about.
    Noted(Noted<'a>),
}

/// A printed value with another tolerance, or one known to differ.
pub(crate) struct Noted<'a> {
    /// The value.
    text: Measure<'a>,
    /// How far off it may be: `0.1 %`, `25 psi` or `2 last digits`.
    pub(crate) within: Option<&'a str>,
    /// Whether it is known to differ by more than that.
    pub(crate) deviates: bool,
    /// Why.
    pub(crate) because: &'a str,
}

impl<'a> Case<'a> {
    pub(crate) fn read(value: &'a Value) -> Result<Self, String> {
        let known =
            ["name", "place", "known", "rank", "weak", "given", "subject", "facts", "printed"];
        let case = Fields::of(value, &known)?;
        let output = |value: &Value| Output::read(value.as_str().unwrap_or_default());
        Ok(Self {
            name: case.text("name")?,
            place: case.text("place")?,
            known: Known::read(case.text("known")?)?,
            rank: Rank::read(case.text("rank")?)?,
            weak: case.list("weak")?.iter().map(output).collect::<Result<_, _>>()?,
            given: Given::read(case.value("given")?)?,
            subject: case.maybe("subject", Fields::text)?.unwrap_or_default(),
            facts: case.list("facts")?.iter().map(Fact::read).collect::<Result<_, _>>()?,
            printed: printed(case.value("printed")?)?,
        })
    }

    /// What one of its values is worth.
    pub(crate) fn rank_of(&self, output: Output) -> Rank {
        if self.weak.contains(&output) { Rank::Weak } else { self.rank }
    }

    /// Its rank and how it is known, for a reader.
    pub(crate) fn worth(&self) -> String {
        let read = match self.known {
            Known::Page => "read at the source".into(),
            Known::QuotedIn(place) => format!("quoted in {place}"),
            Known::OutputOf(program) => program.into(),
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

fn printed(value: &Value) -> Result<Vec<(Output, Printed<'_>)>, String> {
    let fields = Fields::of(value, NAMES)?;
    let outputs = Output::ALL.into_iter().filter(|output| fields.has(output.name()));
    let printed = outputs.map(|output| Ok((output, Printed::read(fields.value(output.name())?)?)));
    printed.collect()
}

impl Fact {
    fn read(value: &Value) -> Result<Self, String> {
        let fact = Fields::of(value, &["name", "text"])?;
        Ok(Self { name: fact.text("name")?.into(), text: fact.text("text")?.into() })
    }
}

impl<'a> Printed<'a> {
    /// Takes a text, a list of them, or a table.
    fn read(value: &'a Value) -> Result<Self, String> {
        let text = |value: &'a Value| Measure::read(value.as_str().unwrap_or_default());
        match value {
            Value::Object(_) => Noted::read(value).map(Self::Noted),
            Value::Array(each) => each.iter().map(text).collect::<Result<_, _>>().map(Self::Each),
            value => text(value).map(Self::Value),
        }
    }

    /// Every value.
    pub(crate) fn values(&self) -> &[Measure<'a>] {
        match self {
            Self::Value(value) => std::slice::from_ref(value),
            Self::Each(values) => values,
            Self::Noted(noted) => std::slice::from_ref(&noted.text),
        }
    }
}

impl<'a> Noted<'a> {
    fn read(value: &'a Value) -> Result<Self, String> {
        let noted = Fields::of(value, &["text", "within", "deviates", "because"])?;
        Ok(Self {
            text: noted.measure("text")?,
            within: noted.maybe("within", Fields::text)?,
            deviates: noted.flag("deviates")?,
            because: noted.text("because")?,
        })
    }

    /// How far off the value may be, in its own unit; a sentence when the note says nothing, or cannot be read.
    pub(crate) fn tolerance(&self) -> Result<f64, String> {
        let value = &self.text;
        if self.because.trim().is_empty() {
            return Err("a note without a reason".into());
        }
        match self.within {
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
