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
    Steel(Box<Steel>),
    Strength(Strength),
    Shares(Shares),
    Density { density: Value, citation: Citation },
    Tape { rule: ErrorRule, usual: Vec<&'static str>, citation: Citation },
    Diameters { bands: Vec<Band>, citation: Citation },
    Sizes { sizes: Vec<Value>, citation: Citation },
}

/// A steel, with the ids of the rows that say how heavy it is and what it bears, the one to be taken first.
#[derive(Debug)]
pub(crate) struct Steel {
    pub(crate) shear_modulus: Value,
    pub(crate) youngs_modulus: Value,
    pub(crate) shear_doubt: Option<Value>,
    pub(crate) density: Option<String>,
    /// The sizes of bar that the moduli are for: over one, up to another.
    pub(crate) sizes: Option<(Value, Value)>,
    pub(crate) strengths: Vec<String>,
    pub(crate) citation: Citation,
}

/// A strength by size, or only the document that has it.
#[derive(Debug)]
pub(crate) struct Strength {
    pub(crate) look_up: String,
    pub(crate) by_size: Option<(Vec<Span>, Citation)>,
    /// The id of the row of its shares.
    pub(crate) allowable: Option<String>,
}

/// A law of strength against size, and its sizes.
#[derive(Debug)]
pub(crate) struct Span {
    pub(crate) from: Value,
    pub(crate) to: Value,
    /// The size at which the strength is the coefficient.
    pub(crate) unit: Value,
    pub(crate) coefficient: Value,
    pub(crate) law: Law,
}

/// How the strength falls from the coefficient.
#[derive(Debug)]
pub(crate) enum Law {
    Exponent(f64),
    Fall(Value),
}

/// Shares of the tensile strength, each with the constant that says what it is compared with.
#[derive(Debug)]
pub(crate) struct Shares {
    pub(crate) as_wound: (f64, &'static str),
    pub(crate) set_removed: Option<(f64, &'static str)>,
    pub(crate) citation: Citation,
}

/// How far a tape may be off.
#[derive(Debug)]
pub(crate) enum ErrorRule {
    PerMetre { fixed: Value, per_metre: Value, end: Value },
    Steps(Vec<(Value, Value)>),
}

/// Mean diameters, and by how much a new coil may be off: for each quality grade, by index.
#[derive(Debug)]
pub(crate) struct Band {
    pub(crate) over: Value,
    pub(crate) up_to: Value,
    pub(crate) grades: [[Value; 3]; 3],
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

const PRESSURE: &[Unit] = &[
    unit("GPa", "GIGAPASCAL"),
    unit("MPa", "NEWTON_PER_MM2"),
    unit("N/mm²", "NEWTON_PER_MM2"),
    unit("psi", "PSI"),
];
const LENGTH: &[Unit] = &[unit("mm", "MILLIMETRE"), unit("in", "INCH"), unit("ft", "FOOT")];
const DENSITY: &[Unit] = &[unit("kg/dm³", "KG_PER_DM3"), unit("lb/in³", "LB_PER_IN3")];
const SHARE: &[Unit] = &[unit("%", "PER_CENT")];
const NONE: &[Unit] = &[unit("", "")];

/// What a share of the tensile strength is compared with, as the tables write it.
const AGAINST: &[(&str, &str)] =
    &[("plain", "Plain"), ("direct shear", "DirectShear"), ("curvature", "Curvature")];

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
    let parsed: BTreeMap<String, Vec<toml::Table>> =
        toml::from_str(text).map_err(|error| format!("{file}: {error}"))?;
    let mut rows = Vec::new();
    for (subject, tables) in parsed {
        for (index, table) in tables.into_iter().enumerate() {
            let id = table.get("id").and_then(toml::Value::as_str).unwrap_or("no id");
            let row = format!("{file}, {subject} {} ({id})", index + 1);
            let read = row_of(file, &subject, Fields(table), sources);
            rows.push(read.map_err(|what| format!("{row}: {what}"))?);
        }
    }
    if rows.is_empty() { Err(format!("{file}: no row")) } else { Ok(rows) }
}

/// Refuses two rows of one id, and a row that names another which is not there.
pub(crate) fn consistent(rows: &[Row]) -> Result<(), String> {
    let mut seen: BTreeMap<&str, &Row> = BTreeMap::new();
    for row in rows {
        if let Some(other) = seen.insert(&row.id, row) {
            return Err(format!("{}: {:?} stands in {} too", row.file, row.id, other.file));
        }
    }
    for row in rows {
        let named = |id: &str, subject: &str, right: fn(&Values) -> bool| {
            let found = seen.get(id).is_some_and(|row| right(&row.values));
            let sentence = || format!("{}: {:?} names no {subject} {id:?}", row.file, row.id);
            if found { Ok(()) } else { Err(sentence()) }
        };
        match &row.values {
            Values::Steel(steel) => {
                if let Some(id) = &steel.density {
                    named(id, "density", |values| matches!(values, Values::Density { .. }))?;
                }
                for id in &steel.strengths {
                    named(id, "strength", |values| matches!(values, Values::Strength(_)))?;
                }
            }
            Values::Strength(Strength { allowable: Some(id), .. }) => {
                named(id, "allowable", |values| matches!(values, Values::Shares(_)))?;
            }
            _ => {}
        }
    }
    Ok(())
}

/// The rows with the default one first; any count of defaults but one is refused.
pub(crate) fn ordered(mut rows: Vec<&Row>) -> Result<Vec<&Row>, String> {
    let files = || rows.iter().map(|row| row.file.as_str()).collect::<Vec<_>>().join(", ");
    match rows.iter().filter(|row| row.default).count() {
        1 => rows.sort_by_key(|row| !row.default),
        count => return Err(format!("{count} default rows, one was expected, in {}", files())),
    }
    Ok(rows)
}

fn row_of(file: &str, subject: &str, mut fields: Fields, sources: &Sources) -> Result<Row, String> {
    let values = match subject {
        "steel" => Values::Steel(Box::new(fields.steel(sources)?)),
        "strength" => Values::Strength(fields.strength(sources)?),
        "allowable" => Values::Shares(fields.shares(sources)?),
        "density" => Values::Density {
            density: fields.value("density", DENSITY)?,
            citation: fields.citation(sources)?,
        },
        "tape" => Values::Tape {
            rule: fields.error_rule()?,
            usual: fields.systems("usual")?,
            citation: fields.citation(sources)?,
        },
        "diameters" => {
            Values::Diameters { bands: fields.bands()?, citation: fields.citation(sources)? }
        }
        "sizes" => Values::Sizes { sizes: fields.sizes()?, citation: fields.citation(sources)? },
        _ => return Err("no such subject".into()),
    };
    let (id, name, default) = (fields.text("id")?, fields.text("name")?, fields.flag("default")?);
    fields.end()?;
    Ok(Row { file: file.into(), id, name, default, values })
}

/// The fields of a row that were not read yet; what is left in the end is refused.
struct Fields(toml::Table);

impl Fields {
    fn has(&self, field: &str) -> bool {
        self.0.contains_key(field)
    }

    fn text(&mut self, field: &str) -> Result<String, String> {
        match self.0.remove(field) {
            Some(toml::Value::String(text)) if !text.trim().is_empty() => Ok(text),
            None | Some(toml::Value::String(_)) => Err(format!("no {field}")),
            Some(other) => Err(format!("{field} = {other}: a text was expected")),
        }
    }

    fn flag(&mut self, field: &str) -> Result<bool, String> {
        match self.0.remove(field) {
            None => Ok(false),
            Some(toml::Value::Boolean(flag)) => Ok(flag),
            Some(other) => Err(format!("{field} = {other}: true or false was expected")),
        }
    }

    fn value(&mut self, field: &str, units: &[Unit]) -> Result<Value, String> {
        value(field, &self.text(field)?, units)
    }

    fn optional_text(&mut self, field: &str) -> Result<Option<String>, String> {
        if self.has(field) { self.text(field).map(Some) } else { Ok(None) }
    }

    fn optional(&mut self, field: &str, units: &[Unit]) -> Result<Option<Value>, String> {
        if self.has(field) { self.value(field, units).map(Some) } else { Ok(None) }
    }

    fn texts(&mut self, field: &str) -> Result<Vec<String>, String> {
        let expected = || format!("{field}: a list of texts was expected");
        let Some(list) = self.0.remove(field) else { return Err(format!("no {field}")) };
        let toml::Value::Array(list) = list else { return Err(expected()) };
        let text = |it: toml::Value| it.as_str().map(str::to_owned).ok_or_else(expected);
        list.into_iter().map(text).collect()
    }

    /// Systems of units, by the names of their variants.
    fn systems(&mut self, field: &str) -> Result<Vec<&'static str>, String> {
        let named = |system: String| match system.as_str() {
            "inch" => Ok("Inch"),
            "metric" => Ok("Metric"),
            other => Err(format!("{field}: {other:?} is neither \"inch\" nor \"metric\"")),
        };
        self.texts(field)?.into_iter().map(named).collect()
    }

    /// The tables of a list, each read to its end.
    fn each<T>(
        &mut self,
        field: &str,
        read: impl Fn(&mut Self) -> Result<T, String>,
    ) -> Result<Vec<T>, String> {
        let list = self.0.remove(field).ok_or_else(|| format!("no {field}"))?;
        let tables: Vec<toml::Table> =
            list.try_into().map_err(|_| format!("{field}: a list of tables was expected"))?;
        let tables = tables.into_iter().map(|table| {
            let mut fields = Self(table);
            let read = read(&mut fields)?;
            fields.end().map(|()| read)
        });
        tables.collect()
    }

    fn end(&self) -> Result<(), String> {
        match self.0.keys().next() {
            None => Ok(()),
            Some(field) => Err(format!("unknown field `{field}`")),
        }
    }

    fn citation(&mut self, sources: &Sources) -> Result<Citation, String> {
        let source = self.text("source")?;
        let cite = sources.get(&source);
        Ok(Citation {
            cite: cite
                .cloned()
                .ok_or_else(|| format!("source {source:?} is not in sources.toml"))?,
            place: self.text("place")?,
            known: known(&self.text("known")?)?,
        })
    }

    fn steel(&mut self, sources: &Sources) -> Result<Steel, String> {
        Ok(Steel {
            shear_modulus: self.value("shear-modulus", PRESSURE)?,
            youngs_modulus: self.value("youngs-modulus", PRESSURE)?,
            shear_doubt: self.optional("shear-doubt", PRESSURE)?,
            density: self.optional_text("density")?,
            sizes: if self.has("over") { Some(self.over_up_to()?) } else { None },
            strengths: self.texts("strengths")?,
            citation: self.citation(sources)?,
        })
    }

    fn over_up_to(&mut self) -> Result<(Value, Value), String> {
        let (over, up_to) = (self.value("over", LENGTH)?, self.value("up-to", LENGTH)?);
        let rise = over.below(up_to);
        if rise { Ok((over, up_to)) } else { Err("sizes that do not rise in one unit".into()) }
    }

    fn strength(&mut self, sources: &Sources) -> Result<Strength, String> {
        let look_up = self.text("look-up")?;
        if !self.has("sizes") {
            return Ok(Strength { look_up, by_size: None, allowable: None });
        }
        let spans = self.each("sizes", |span| {
            Ok(Span {
                from: span.value("from", LENGTH)?,
                to: span.value("to", LENGTH)?,
                unit: span.value("unit", LENGTH)?,
                coefficient: span.value("coefficient", PRESSURE)?,
                law: if span.has("fall") {
                    Law::Fall(span.value("fall", PRESSURE)?)
                } else {
                    Law::Exponent(span.value("exponent", NONE)?.number)
                },
            })
        })?;
        let allowable = self.optional_text("allowable")?;
        Ok(Strength { look_up, by_size: Some((spans, self.citation(sources)?)), allowable })
    }

    fn shares(&mut self, sources: &Sources) -> Result<Shares, String> {
        let as_wound = self.share("as-wound")?;
        let set_removed =
            if self.has("set-removed") { Some(self.share("set-removed")?) } else { None };
        Ok(Shares { as_wound, set_removed, citation: self.citation(sources)? })
    }

    fn share(&mut self, field: &str) -> Result<(f64, &'static str), String> {
        let share = self.value(field, SHARE)?.number / 100.0;
        let field = format!("{field}-against");
        let written = self.text(&field)?;
        let against = AGAINST.iter().find(|(word, _)| *word == written);
        against.map(|(_, constant)| (share, *constant)).ok_or_else(|| {
            let words: Vec<&str> = AGAINST.iter().map(|(word, _)| *word).collect();
            format!("{field} = {written:?}; one of {} was expected", words.join(", "))
        })
    }

    fn error_rule(&mut self) -> Result<ErrorRule, String> {
        if !self.has("steps") {
            return Ok(ErrorRule::PerMetre {
                fixed: self.value("fixed", LENGTH)?,
                per_metre: self.value("per-metre", LENGTH)?,
                end: self.value("end", LENGTH)?,
            });
        }
        let steps = self.each("steps", |step| {
            Ok((step.value("up-to", LENGTH)?, step.value("error", LENGTH)?))
        })?;
        let rising = |pair: (&(Value, Value), &(Value, Value))| pair.0.0.below(pair.1.0);
        if steps.is_empty() || !steps.iter().zip(steps.iter().skip(1)).all(rising) {
            return Err("steps that do not rise in one unit".into());
        }
        Ok(ErrorRule::Steps(steps))
    }

    fn bands(&mut self) -> Result<Vec<Band>, String> {
        let bands = self.each("bands", |band| {
            let (over, up_to) = band.over_up_to()?;
            Ok(Band {
                over,
                up_to,
                grades: [band.three("grade-1")?, band.three("grade-2")?, band.three("grade-3")?],
            })
        })?;
        let adjoin = |pair: (&Band, &Band)| pair.0.up_to == pair.1.over;
        if bands.is_empty() || !bands.iter().zip(bands.iter().skip(1)).all(adjoin) {
            return Err("bands that do not adjoin".into());
        }
        Ok(bands)
    }

    /// Sizes that rise in one unit.
    fn sizes(&mut self) -> Result<Vec<Value>, String> {
        let sizes = self.lengths("sizes")?;
        let rising = |pair: (&Value, &Value)| pair.0.below(*pair.1);
        if sizes.is_empty() || !sizes.iter().zip(sizes.iter().skip(1)).all(rising) {
            return Err("sizes that do not rise in one unit".into());
        }
        Ok(sizes)
    }

    fn lengths(&mut self, field: &str) -> Result<Vec<Value>, String> {
        self.texts(field)?.iter().map(|text| value(field, text, LENGTH)).collect()
    }

    /// One length for each class of index.
    fn three(&mut self, field: &str) -> Result<[Value; 3], String> {
        self.lengths(field)?.try_into().map_err(|_| format!("{field}: three values were expected"))
    }
}

impl Value {
    fn below(self, other: Self) -> bool {
        self.unit == other.unit && self.number < other.number
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

fn value(field: &str, written: &str, units: &[Unit]) -> Result<Value, String> {
    let expected = || units.iter().map(|unit| unit.written).collect::<Vec<_>>().join(", ");
    let refuse = |why: &str| {
        let unit = match expected() {
            none if none.is_empty() => String::new(),
            units => format!(" and one of {units}"),
        };
        Err(format!("{field} = {written:?}: {why}; a number{unit} was expected"))
    };
    let (number, unit) = written.trim().split_once(' ').unwrap_or((written.trim(), ""));
    let Some(unit) = units.iter().find(|known| known.written == unit) else {
        return refuse(if unit.is_empty() { "no unit" } else { "not a unit of this value" });
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
