//! The JSON Schemas of a job and of a report, from the Rust types.

use coilnest::formula::{RESULTS, SYMBOLS};
use coilnest::job::Job;
use coilnest::job::report::{
    Bell, Choices, CoilRows, DipReport, LevelReport, MatchReport, Opened, ReplaceReport, Report,
    SheetAnswer, SinceReport, SizingReport, StateAnswer, TapeReport, TapeStrip,
};
use coilnest::job::rows::{Listed, Row, Takes};
use coilnest::job::spreadsheet::Spreadsheets;
use coilnest_published::Checks;
use schemars::generate::SchemaSettings;
use schemars::transform::transform_subschemas;
use schemars::{JsonSchema, Schema, SchemaGenerator};
use serde_json::{Value, json};
use std::path::{Path, PathBuf};

/// A schema as it is checked in.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SchemaFile {
    /// Name of its file.
    pub name: &'static str,
    /// Its text.
    pub text: String,
}

impl SchemaFile {
    /// Where it is checked in.
    #[must_use]
    pub fn path(&self) -> PathBuf {
        Path::new(env!("CARGO_MANIFEST_DIR")).join("../www/schema").join(self.name)
    }
}

/// Every schema: a job, and a report beside which stand the other answers of the engine. With them, what
/// each letter of a formula means, and what a person calls each field of a job.
#[must_use]
pub fn all() -> [SchemaFile; 4] {
    let mut report = generator();
    report.subschema_for::<SheetAnswer>();
    report.subschema_for::<LevelReport>();
    report.subschema_for::<DipReport>();
    report.subschema_for::<MatchReport>();
    report.subschema_for::<CoilRows>();
    report.subschema_for::<SinceReport>();
    report.subschema_for::<Spreadsheets>();
    report.subschema_for::<ReplaceReport>();
    report.subschema_for::<SizingReport>();
    report.subschema_for::<StateAnswer>();
    report.subschema_for::<TapeReport>();
    report.subschema_for::<TapeStrip>();
    report.subschema_for::<Bell>();
    report.subschema_for::<Opened>();
    report.subschema_for::<Choices>();
    report.subschema_for::<Checks>();
    [
        SchemaFile { name: "job.schema.json", text: text::<Job>(generator()) },
        SchemaFile { name: "report.schema.json", text: text::<Report>(report) },
        SchemaFile { name: "symbols.json", text: symbols() },
        SchemaFile { name: "fields.json", text: fields() },
    ]
}

/// Each letter with its meaning, in the order of the tables.
fn symbols() -> String {
    let rows = SYMBOLS
        .iter()
        .chain(RESULTS)
        .map(|symbol| format!("\t{}: {}", Value::from(symbol.sign), Value::from(symbol.name)));
    format!("{{\n{}\n}}\n", rows.collect::<Vec<_>>().join(",\n"))
}

/// Each object of a job by its name in the schema, and of each of its fields, in their order, the label, the
/// words that it takes, whether it is a length, a text that will do in inches and in millimetres, and what
/// stands in it where that is no text.
fn fields() -> String {
    let mut objects = Vec::new();
    describe("Job", &Job::rows(), &mut objects);
    let objects = objects.iter().map(|(name, fields)| format!("  \"{name}\": {{\n{fields}\n  }}"));
    format!("{{\n{}\n}}\n", objects.collect::<Vec<_>>().join(",\n"))
}

fn describe(name: &str, rows: &[Row], objects: &mut Vec<(String, String)>) {
    let name = public_name(name);
    if objects.iter().any(|(known, _)| known == name) {
        return;
    }
    let place = objects.len();
    objects.push((name.to_owned(), String::new()));
    let fields = rows.iter().map(|row| {
        let words = match &row.takes {
            Takes::Words { words, .. } => {
                let words = words.iter().map(|(word, name)| json!({ "id": word, "name": name }));
                format!(", \"words\": {}", words.collect::<Value>())
            }
            _ => String::new(),
        };
        let of = held(&row.takes, objects).map(|of| format!(", \"of\": {of}"));
        let length = if is_length(&row.takes) { ", \"length\": true" } else { "" };
        let example = example(&row.takes).map(|texts| format!(", \"example\": {}", json!(texts)));
        let label = Value::from(row.label);
        format!(
            "    \"{}\": {{ \"label\": {label}{words}{length}{}{} }}",
            row.name,
            example.unwrap_or_default(),
            of.unwrap_or_default()
        )
    });
    let fields = fields.collect::<Vec<_>>().join(",\n");
    if let Some((_, kept)) = objects.get_mut(place) {
        *kept = fields;
    }
}

fn is_length(takes: &Takes) -> bool {
    match takes {
        Takes::Quantity(range) => range.is_length,
        Takes::List(items) => is_length(items),
        _ => false,
    }
}

/// A text that will do in a field of a quantity, in inches and in millimetres.
fn example(takes: &Takes) -> Option<[&'static str; 2]> {
    match takes {
        Takes::Quantity(range) | Takes::Count(range) | Takes::Doubted(range) => Some(range.example),
        Takes::HeightOrLoad([height, _]) => Some(height.example),
        Takes::List(items) => example(items),
        _ => None,
    }
}

/// The name of an object, `[name]` of a list of such; none of a text.
fn held(takes: &Takes, objects: &mut Vec<(String, String)>) -> Option<Value> {
    match takes {
        Takes::Object { name, rows, .. } => {
            describe(name, &rows(), objects);
            Some(public_name(name).into())
        }
        Takes::List(items) => Some(json!([held(items, objects).unwrap_or_else(|| "text".into())])),
        Takes::ByName => Some("texts".into()),
        Takes::Whole => Some("whole".into()),
        _ => None,
    }
}

/// What stands beside something of the same name in Rust, or would beside what every TypeScript
/// file knows, has a name of its own there.
const NAMES: [(&str, &str); 12] = [
    ("BreakpointReport", "Breakpoint"),
    ("ClearanceReport", "Clearance"),
    ("Cut", "Section"),
    ("Drawing", "CoilDrawing"),
    ("LimitsEntry", "Limits"),
    ("NestEntry", "NestInput"),
    ("Record", "JobRecord"),
    ("SeatCut", "SectionSeat"),
    ("Section", "Place"),
    ("StateReport", "State"),
    ("VerdictReport", "Verdict"),
    ("WorkingEntry", "Working"),
];

/// The fields of a job whose absence is a problem of its own.
const REQUIRED: [(&str, &str); 3] = [("Job", "format"), ("CoilDrawing", "id"), ("NestInput", "id")];

const DEFINITIONS: &str = "#/$defs/";

fn generator() -> SchemaGenerator {
    SchemaSettings::draft2020_12().for_serialize().into_generator()
}

fn text<T: JsonSchema>(generator: SchemaGenerator) -> String {
    let mut schema = generator.into_root_schema_for::<T>();
    without_null(&mut schema);
    with_public_names(&mut schema);
    if let Some(Value::Object(definitions)) = schema.get_mut("$defs") {
        let named = std::mem::take(definitions).into_iter();
        definitions.extend(named.map(|(name, schema)| (public_name(&name).to_owned(), schema)));
    }
    require(&mut schema);
    format!("{:#}\n", schema.to_value())
}

fn require(schema: &mut Schema) {
    for (kind, field) in REQUIRED {
        let root = schema.get("title").is_some_and(|title| title == kind);
        let pointer = if root { String::new() } else { format!("/$defs/{kind}") };
        if let Some(Value::Object(found)) = schema.pointer_mut(&pointer) {
            found.insert("required".into(), json!([field]));
        }
    }
}

/// What is unknown is left out of these files and never null; fields beyond the known ones are
/// allowed, which goes without saying.
fn without_null(schema: &mut Schema) {
    transform_subschemas(&mut without_null, schema);
    let Some(object) = schema.as_object_mut() else { return };
    if let Some(Value::Array(kinds)) = object.get_mut("type") {
        kinds.retain(|kind| kind != "null");
        if let [kind] = kinds.as_slice() {
            let kind = kind.clone();
            object.insert("type".into(), kind);
        }
    }
    if let Some(Value::Array(choices)) = object.get_mut("anyOf") {
        choices.retain(|choice| choice.get("type").is_none_or(|kind| kind != "null"));
        if let [Value::Object(only)] = choices.as_slice() {
            let only = only.clone();
            object.remove("anyOf");
            object.extend(only);
        }
    }
    if object.get("additionalProperties") == Some(&Value::Bool(true)) {
        object.remove("additionalProperties");
    }
}

fn with_public_names(schema: &mut Schema) {
    transform_subschemas(&mut with_public_names, schema);
    let Some(object) = schema.as_object_mut() else { return };
    let Some(Value::String(reference)) = object.remove("$ref") else { return };
    let name = reference.strip_prefix(DEFINITIONS).unwrap_or(&reference);
    let reference = format!("{DEFINITIONS}{}", public_name(name));
    if object.is_empty() {
        object.insert("$ref".into(), reference.into());
    } else {
        // Beside a description it would be read as a type of its own.
        object.insert("allOf".into(), json!([{ "$ref": reference }]));
    }
}

fn public_name(name: &str) -> &str {
    NAMES.iter().find(|(rust, _)| *rust == name).map_or(name, |(_, public)| public)
}
