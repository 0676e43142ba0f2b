//! The way between Rust and plain objects: one text, which the browser's own JSON reads.
//!
//! That is quicker than making the objects field by field.

use serde::Serialize;
use wasm_bindgen::JsValue;

/// A value as a plain object.
pub(crate) fn to_js(value: &impl Serialize) -> JsValue {
    let text = serde_json::to_string(value).ok();
    text.and_then(|text| parsed(&text)).unwrap_or(JsValue::UNDEFINED)
}

/// The value that a text of JSON holds, if it holds one.
pub(crate) fn parsed(text: &str) -> Option<JsValue> {
    js_sys::JSON::parse(text).ok()
}
