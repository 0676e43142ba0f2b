//! JavaScript values in and out.
//!
//! A job is walked as the object that it is; a report leaves as one text that the browser's own JSON
//! reads, which is quicker than making its objects field by field.

use serde::Serialize;
use serde_json::{Map, Number, Value};
use wasm_bindgen::{JsCast, JsValue};

/// Deeper than any job is nested; what lies below is dropped.
const DEEPEST: usize = 32;

/// A value as a plain object.
pub(crate) fn to_js(value: &impl Serialize) -> JsValue {
    let text = serde_json::to_string(value).ok();
    text.and_then(|text| parsed(&text)).unwrap_or(JsValue::UNDEFINED)
}

/// The value that a text of JSON holds, if it holds one.
pub(crate) fn parsed(text: &str) -> Option<JsValue> {
    js_sys::JSON::parse(text).ok()
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
