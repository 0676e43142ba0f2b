//! Reads the tables and refuses a row that does not say what it is, in which unit, or who says so.

use serde::Deserialize;
use std::collections::BTreeMap;

/// A row that may become a constant.
#[derive(Debug)]
pub(crate) struct Row {
    pub(crate) file: String,
    pub(crate) id: String,
    pub(crate) name: String,
    /// The row that a job gets which names none.
    pub(crate) default: bool,
    pub(crate) citation: Citation,
    pub(crate) values: Values,
}

/// Who says so.
#[derive(Debug)]
pub(crate) struct Citation {
    pub(crate) cite: String,
    pub(crate) place: String,
    pub(crate) known: Known,
}

/// How the row was taken from its source.
#[derive(Debug, PartialEq)]
pub(crate) enum Known {
    Page,
    QuotedIn(String),
    Memory,
    CommonPractice,
    Derived,
}

/// What the row says.
#[derive(Debug)]
pub(crate) enum Values {
    Steel {
        shear_modulus: Value,
        youngs_modulus: Value,
        shear_doubt: Option<Value>,
        density: Option<Value>,
    },
    PerMetre {
        fixed: Value,
        per_metre: Value,
        end: Value,
    },
    Steps(Vec<(Value, Value)>),
}

/// A number and its unit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Value {
    pub(crate) number: f64,
    pub(crate) unit: Unit,
}

/// A unit as the tables write it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Unit {
    written: &'static str,
    /// The constant of this crate that holds one of it in SI.
    pub(crate) constant: &'static str,
}

const fn unit(written: &'static str, constant: &'static str) -> Unit {
    Unit { written, constant }
}

const PRESSURE: &[Unit] =
    &[unit("GPa", "GIGAPASCAL"), unit("N/mm²", "NEWTON_PER_MM2"), unit("psi", "PSI")];
const LENGTH: &[Unit] = &[unit("mm", "MILLIMETRE"), unit("in", "INCH"), unit("ft", "FOOT")];
const DENSITY: &[Unit] = &[unit("kg/m³", "KG_PER_M3"), unit("kg/dm³", "KG_PER_DM3")];

/// The sources by their ids, each as it is cited.
pub(crate) type Sources = BTreeMap<String, String>;

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct SourceFile {
    source: Vec<RawSource>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
#[expect(dead_code, reason = "read so that a document without its title or publisher is refused")]
struct RawSource {
    id: String,
    cite: String,
    title: String,
    edition: Option<String>,
    year: Option<String>,
    publisher: String,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct RowFile {
    #[serde(default)]
    steel: Vec<RawRow>,
    #[serde(default)]
    tape: Vec<RawRow>,
}

/// Everything optional, so that what is missing is refused in our words.
#[derive(Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
struct RawRow {
    id: Option<String>,
    #[serde(default)]
    default: bool,
    name: Option<String>,
    source: Option<String>,
    place: Option<String>,
    known: Option<String>,
    shear_modulus: Option<String>,
    youngs_modulus: Option<String>,
    shear_doubt: Option<String>,
    density: Option<String>,
    fixed: Option<String>,
    per_metre: Option<String>,
    end: Option<String>,
    steps: Option<Vec<RawStep>>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
struct RawStep {
    up_to: Option<String>,
    error: Option<String>,
}

/// Reads `sources.toml`.
pub(crate) fn sources(text: &str) -> Result<Sources, String> {
    let file: SourceFile =
        toml::from_str(text).map_err(|error| format!("sources.toml: {error}"))?;
    let mut sources = Sources::new();
    for source in file.source {
        if sources.insert(source.id.clone(), source.cite).is_some() {
            return Err(format!("sources.toml: {:?} stands there twice", source.id));
        }
    }
    Ok(sources)
}

/// Reads one file of rows.
pub(crate) fn rows(file: &str, text: &str, sources: &Sources) -> Result<Vec<Row>, String> {
    let parsed: RowFile = toml::from_str(text).map_err(|error| format!("{file}: {error}"))?;
    let steels = parsed.steel.into_iter().map(|row| (row, Subject::Steel));
    let tapes = parsed.tape.into_iter().map(|row| (row, Subject::Tape));
    let rows = steels.chain(tapes).enumerate().map(|(index, (raw, subject))| {
        let row = format!("{file}, row {} ({})", index + 1, raw.id.as_deref().unwrap_or("no id"));
        raw.check(file, subject, sources).map_err(|what| format!("{row}: {what}"))
    });
    let rows = rows.collect::<Result<Vec<Row>, String>>()?;
    if rows.is_empty() { Err(format!("{file}: no row")) } else { Ok(rows) }
}

/// Puts the default row first and refuses two rows of one id, or any count of defaults but one.
pub(crate) fn ordered(mut rows: Vec<Row>) -> Result<Vec<Row>, String> {
    let mut seen: BTreeMap<&str, &str> = BTreeMap::new();
    for row in &rows {
        if let Some(other) = seen.insert(&row.id, &row.file) {
            return Err(format!("{}: {:?} stands in {other} too", row.file, row.id));
        }
    }
    let files = || rows.iter().map(|row| row.file.as_str()).collect::<Vec<_>>().join(", ");
    match rows.iter().filter(|row| row.default).count() {
        1 => rows.sort_by_key(|row| !row.default),
        count => return Err(format!("{count} default rows, one was expected, in {}", files())),
    }
    Ok(rows)
}

#[derive(Clone, Copy)]
enum Subject {
    Steel,
    Tape,
}

impl RawRow {
    fn check(self, file: &str, subject: Subject, sources: &Sources) -> Result<Row, String> {
        let values = match subject {
            Subject::Steel => self.steel()?,
            Subject::Tape => self.tape()?,
        };
        let source = text("source", self.source)?;
        let cite = sources.get(&source);
        let citation = Citation {
            cite: cite
                .cloned()
                .ok_or_else(|| format!("source {source:?} is not in sources.toml"))?,
            place: text("place", self.place)?,
            known: known(&text("known", self.known)?)?,
        };
        Ok(Row {
            file: file.into(),
            id: text("id", self.id)?,
            name: text("name", self.name)?,
            default: self.default,
            citation,
            values,
        })
    }

    fn steel(&self) -> Result<Values, String> {
        if self.fixed.is_some()
            || self.per_metre.is_some()
            || self.end.is_some()
            || self.steps.is_some()
        {
            return Err("a steel with the errors of a tape".into());
        }
        Ok(Values::Steel {
            shear_modulus: value("shear-modulus", self.shear_modulus.as_deref(), PRESSURE)?,
            youngs_modulus: value("youngs-modulus", self.youngs_modulus.as_deref(), PRESSURE)?,
            shear_doubt: optional("shear-doubt", self.shear_doubt.as_deref(), PRESSURE)?,
            density: optional("density", self.density.as_deref(), DENSITY)?,
        })
    }

    fn tape(&self) -> Result<Values, String> {
        let steel = [&self.shear_modulus, &self.youngs_modulus, &self.shear_doubt, &self.density];
        if steel.iter().any(|value| value.is_some()) {
            return Err("a tape with the moduli of a steel".into());
        }
        let Some(steps) = &self.steps else {
            return Ok(Values::PerMetre {
                fixed: value("fixed", self.fixed.as_deref(), LENGTH)?,
                per_metre: value("per-metre", self.per_metre.as_deref(), LENGTH)?,
                end: value("end", self.end.as_deref(), LENGTH)?,
            });
        };
        if self.fixed.is_some() || self.per_metre.is_some() || self.end.is_some() {
            return Err("steps and an error per metre; one of them was expected".into());
        }
        let steps = steps.iter().map(|step| {
            let up_to = value("up-to", step.up_to.as_deref(), LENGTH)?;
            Ok((up_to, value("error", step.error.as_deref(), LENGTH)?))
        });
        let steps = steps.collect::<Result<Vec<(Value, Value)>, String>>()?;
        let rising = |pair: (&(Value, Value), &(Value, Value))| {
            pair.0.0.unit == pair.1.0.unit && pair.0.0.number < pair.1.0.number
        };
        if steps.is_empty() || !steps.iter().zip(steps.iter().skip(1)).all(rising) {
            return Err("steps that do not rise in one unit".into());
        }
        Ok(Values::Steps(steps))
    }
}

fn text(field: &str, written: Option<String>) -> Result<String, String> {
    match written {
        Some(text) if !text.trim().is_empty() => Ok(text),
        _ => Err(format!("no {field}")),
    }
}

fn known(written: &str) -> Result<Known, String> {
    match written.trim() {
        "page" => Ok(Known::Page),
        "memory" => Ok(Known::Memory),
        "common practice" => Ok(Known::CommonPractice),
        "derived" => Ok(Known::Derived),
        other => match other.strip_prefix("quoted in ") {
            Some(text) if !text.trim().is_empty() => Ok(Known::QuotedIn(text.trim().into())),
            _ => Err(format!(
                "known = {written:?}; \"page\", \"quoted in …\", \"memory\", \"common practice\" or \"derived\" was expected"
            )),
        },
    }
}

fn optional(field: &str, written: Option<&str>, units: &[Unit]) -> Result<Option<Value>, String> {
    written.map(|written| value(field, Some(written), units)).transpose()
}

fn value(field: &str, written: Option<&str>, units: &[Unit]) -> Result<Value, String> {
    let Some(written) = written else { return Err(format!("no {field}")) };
    let expected = || units.iter().map(|unit| unit.written).collect::<Vec<_>>().join(", ");
    let refuse = |why: &str| {
        Err(format!(
            "{field} = {written:?}: {why}; a number and one of {} was expected",
            expected()
        ))
    };
    let Some((number, unit)) = written.trim().split_once(' ') else { return refuse("no unit") };
    let Some(unit) = units.iter().find(|known| known.written == unit) else {
        return refuse("not a unit of this value");
    };
    match positive(number) {
        Some(number) => Ok(Value { number, unit: *unit }),
        None => refuse("not a number above zero"),
    }
}

/// `0.3`, `11.2e6` or `3/16`.
fn positive(written: &str) -> Option<f64> {
    let number = match written.split_once('/') {
        Some((above, below)) => above.parse::<f64>().ok()? / below.parse::<f64>().ok()?,
        None => written.parse().ok()?,
    };
    (number > 0.0 && number.is_finite()).then_some(number)
}
