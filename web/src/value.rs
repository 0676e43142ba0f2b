//! The way between Rust and plain objects: one text, which the browser's own JSON reads.
//!
//! That is quicker than making the objects field by field.

use serde::Serialize;
use wasm_bindgen::prelude::*;

#[wasm_bindgen(module = "/src/plain.js")]
extern "C" {
    #[wasm_bindgen(js_name = parsed)]
    fn tried(text: &str) -> JsValue;
}

/// A value as a plain object.
pub(crate) fn to_js(value: &impl Serialize) -> JsValue {
    let text = serde_json::to_string(value).ok();
    text.and_then(|text| parsed(&text)).unwrap_or(JsValue::UNDEFINED)
}

/// The value that a text of JSON holds, if it holds one.
pub(crate) fn parsed(text: &str) -> Option<JsValue> {
    Some(tried(text)).filter(|value| !value.is_undefined())
}
