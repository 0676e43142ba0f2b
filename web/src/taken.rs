//! The job that a caller hands over, whatever that is.
//!
//! It is walked as the object that it is: a reader of JSON in the engine would be larger, and no quicker.

use crate::value::parsed;
use coilnest::job::report::Problem;
use coilnest::job::{Job, file};
use serde_json::{Map, Number, Value};
use wasm_bindgen::{JsCast, JsValue};

/// Deeper than any job is nested; what lies below is dropped.
const DEEPEST: usize = 32;

/// The job in an object, or in the text of its file.
pub(crate) fn taken(job: &JsValue) -> Result<Job, Box<Problem>> {
    match job.as_string() {
        Some(text) => match parsed(&text) {
            Some(job) => file::from_value(from_js(&job)),
            None => Err(file::unreadable(&text)),
        },
        None => file::from_value(from_js(job)),
    }
}

/// What of a value JSON can hold; the rest is null.
pub(crate) fn from_js(value: &JsValue) -> Value {
    // An object that holds itself twice would be walked twice at every depth.
    if js_sys::JSON::stringify(value).is_err() {
        return Value::Null;
    }
    at_depth(value, 0)
}

fn at_depth(value: &JsValue, depth: usize) -> Value {
    if depth > DEEPEST {
        return Value::Null;
    }
    if let Some(text) = value.as_string() {
        return Value::String(text);
    }
    if let Some(number) = value.as_f64() {
        return Number::from_f64(number).map_or(Value::Null, Value::Number);
    }
    if let Some(flag) = value.as_bool() {
        return Value::Bool(flag);
    }
    if let Some(list) = value.dyn_ref::<js_sys::Array>() {
        return Value::Array(list.iter().map(|item| at_depth(&item, depth + 1)).collect());
    }
    if !value.is_object() {
        return Value::Null;
    }
    let object: &js_sys::Object = value.unchecked_ref();
    let mut fields = Map::new();
    for field in js_sys::Object::keys(object).iter() {
        if let (Some(name), Ok(value)) = (field.as_string(), js_sys::Reflect::get(object, &field)) {
            fields.insert(name, at_depth(&value, depth + 1));
        }
    }
    Value::Object(fields)
}
