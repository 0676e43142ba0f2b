//! Makes the documents one text of JSON, so that nothing has to read TOML where the values are compared,
//! and refuses a case that does not say what it is worth.

#[path = "src/rank.rs"]
#[expect(unreachable_pub, dead_code, reason = "the library's module: here it only checks")]
mod rank;

use rank::{Known, Rank};
use std::path::Path;
use std::{env, fs};
use toml::{Table, Value};

const FOLDER: &str = "documents";

fn main() {
    if let Err(sentence) = build() {
        println!("cargo::error={}", sentence.replace('\n', " "));
    }
}

fn build() -> Result<(), String> {
    for watched in ["build.rs", "src/rank.rs", FOLDER] {
        println!("cargo::rerun-if-changed={watched}");
    }
    let entries = fs::read_dir(FOLDER).map_err(|error| format!("{FOLDER}: {error}"))?;
    let mut paths = entries
        .map(|entry| entry.map(|entry| entry.path()).map_err(|error| error.to_string()))
        .collect::<Result<Vec<_>, _>>()?;
    paths.sort();
    let documents = paths
        .iter()
        .map(|path| document(path).map_err(|error| format!("{}: {error}", path.display())));
    let documents = documents.collect::<Result<Vec<Table>, String>>()?;
    let text = serde_json::to_string(&documents).map_err(|error| error.to_string())?;
    let out = env::var("OUT_DIR").map_err(|error| format!("OUT_DIR: {error}"))?;
    let out = Path::new(&out).join("documents.json");
    fs::write(&out, text).map_err(|error| format!("{}: {error}", out.display()))
}

/// A document, each case with its subject and what was given as a person reads it, in the order of the file;
/// what was given stands under the name of its subject, where a reader has no need to look for it.
fn document(path: &Path) -> Result<Table, String> {
    let text = fs::read_to_string(path).map_err(|error| error.to_string())?;
    let mut document: Table = toml::from_str(&text).map_err(|error| error.to_string())?;
    let cases = document.get_mut("case").and_then(Value::as_array_mut).ok_or("no [[case]]")?;
    for case in cases.iter_mut().filter_map(Value::as_table_mut) {
        marked(case).map_err(|error| match case.get("name") {
            Some(name) => format!("case {name}: {error}"),
            None => error,
        })?;
        let given = case.get("given").and_then(Value::as_table).ok_or("a case without given")?;
        let subject = given.get("subject").map(written).ok_or("a case without a subject")?;
        let facts = given.iter().filter(|(name, _)| *name != "subject").flat_map(facts);
        let facts = facts.collect();
        let mut given = given.clone();
        if let Some(Value::String(name)) = given.remove("subject") {
            case.insert("given".into(), Value::Table([(name, given.into())].into_iter().collect()));
        }
        case.insert("facts".into(), Value::Array(facts));
        case.insert("subject".into(), subject.into());
    }
    Ok(document)
}

/// That a case has a rank and says how it is known, that both go together, and that what it lists as
/// weak is printed and would otherwise be independent.
fn marked(case: &Table) -> Result<(), String> {
    let text = |name| case.get(name).and_then(Value::as_str).unwrap_or_default();
    let rank = Rank::read(text("rank"))?;
    rank.goes_with(Known::read(text("known"))?)?;
    let weak = case.get("weak").and_then(Value::as_array).map_or(&[][..], Vec::as_slice);
    if !weak.is_empty() && rank != Rank::Independent {
        return Err("weak values apart, where the case is not independent".into());
    }
    let printed = case.get("printed").and_then(Value::as_table).ok_or("nothing printed")?;
    let unprinted =
        weak.iter().find(|name| !name.as_str().is_some_and(|name| printed.contains_key(name)));
    unprinted.map_or(Ok(()), |name| Err(format!("weak {name} is not printed")))
}

/// The texts of one field: one, or one for each coil of a nest.
fn facts((name, value): (&String, &Value)) -> Vec<Value> {
    let fact = |name: String, text: String| {
        let fields = [("name", name), ("text", text)];
        Value::Table(fields.into_iter().map(|(key, text)| (key.into(), text.into())).collect())
    };
    let name = words(name);
    match value {
        Value::Array(parts) => {
            let name = name.trim_end_matches('s');
            let numbered = parts.iter().zip(1..);
            numbered.map(|(part, number)| fact(format!("{name} {number}"), written(part))).collect()
        }
        one => vec![fact(name, written(one))],
    }
}

/// A value as a person reads it.
fn written(value: &Value) -> String {
    match value {
        Value::String(text) if text.chars().all(|c| c.is_ascii_lowercase() || c == '-') => {
            words(text)
        }
        Value::String(text) => text.clone(),
        Value::Float(number) => number.to_string(),
        Value::Array(parts) => parts.iter().map(written).collect::<Vec<_>>().join(", "),
        Value::Table(fields) => {
            let named =
                fields.iter().map(|(name, value)| format!("{} {}", words(name), written(value)));
            named.collect::<Vec<_>>().join(", ")
        }
        other => other.to_string(),
    }
}

fn words(name: &str) -> String {
    name.replace('-', " ")
}
