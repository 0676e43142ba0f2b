//! Fields of a job's JSON by the paths that problems name: `nests[0].seats[1].raise`.

use serde_json::{Map, Value};

/// Puts a value into a field, or takes the field away. Objects and items on the way are made.
pub fn put(job: &mut Value, path: &str, value: Option<Value>) {
    let (head, last) = path.rsplit_once('.').unwrap_or(("", path));
    if let (None, false) = (&value, last.contains('[')) {
        if let Value::Object(object) = place(job, head) {
            object.remove(last);
        }
        return;
    }
    *place(job, path) = value.unwrap_or_default();
}

fn place<'v>(job: &'v mut Value, path: &str) -> &'v mut Value {
    let steps = path.split(['.', '[']).filter(|step| !step.is_empty());
    steps.fold(job, |here, step| match step.strip_suffix(']').map(str::parse::<usize>) {
        Some(Ok(index)) => item(here, index),
        _ => field(here, step),
    })
}

fn field<'v>(here: &'v mut Value, name: &str) -> &'v mut Value {
    if !here.is_object() {
        *here = Value::Object(Map::new());
    }
    &mut here[name]
}

fn item(here: &mut Value, index: usize) -> &mut Value {
    if !here.is_array() {
        *here = Value::Array(Vec::new());
    }
    if let Value::Array(items) = here
        && items.len() <= index
    {
        items.resize(index + 1, Value::Null);
    }
    &mut here[index]
}

/// Every path of a value, fields and items, each before what it
/// holds.
#[must_use]
pub fn all(value: &Value) -> Vec<String> {
    let mut paths = Vec::new();
    walk(value, "", &mut paths);
    paths
}

fn walk(value: &Value, here: &str, paths: &mut Vec<String>) {
    let mut step = |path: String, value: &Value| {
        paths.push(path.clone());
        walk(value, &path, paths);
    };
    match value {
        Value::Object(object) => object.iter().for_each(|(name, value)| {
            let dot = if here.is_empty() { "" } else { "." };
            step(format!("{here}{dot}{name}"), value);
        }),
        Value::Array(items) => items.iter().enumerate().for_each(|(index, value)| {
            step(format!("{here}[{index}]"), value);
        }),
        _ => {}
    }
}
