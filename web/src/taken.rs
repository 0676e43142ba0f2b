//! What a caller hands over, whatever that is.
//!
//! A job is walked as the object that it is: a reader of JSON in the engine would be larger, and no quicker.

use crate::value::parsed;
use coilnest::job::problem::Path;
use coilnest::job::report::Problem;
use coilnest::job::{Job, file};
use serde_json::{Map, Number, Value};
use wasm_bindgen::prelude::*;

/// Deeper than any job is nested; what lies below is dropped.
const DEEPEST: usize = 32;

#[wasm_bindgen(module = "/src/plain.js")]
extern "C" {
    #[wasm_bindgen(js_name = plain)]
    fn guarded(value: &JsValue) -> JsValue;
}

/// The job in an object, or in the text of its file.
pub(crate) fn taken(job: &JsValue) -> Result<Job, Box<Problem>> {
    let own = match job.as_string() {
        Some(text) => parsed(&text).ok_or_else(|| file::unreadable(&text))?,
        None => plain(job)?,
    };
    file::from_value(from_plain(&own, 0))
}

/// A text that a function takes besides a job.
pub(crate) fn text(value: &JsValue, name: &str) -> Result<String, Box<Problem>> {
    value.as_string().ok_or_else(|| {
        let kind = value.js_typeof().as_string().unwrap_or_default();
        let why = "a text was expected here";
        Box::new(Problem::new(&Path::of(name), "not-text", &kind, "a text", why, ""))
    })
}

/// A copy of what JSON can hold of a value, which shares nothing with it.
pub(crate) fn plain(value: &JsValue) -> Result<JsValue, Box<Problem>> {
    let found = guarded(value);
    let field = |name: &str| js_sys::Reflect::get(&found, &name.into()).unwrap_or_default();
    let Some(why) = field("why").as_string() else { return Ok(field("copy")) };
    let path = field("path").as_string().unwrap_or_default();
    let path = Path::of(path.strip_prefix('.').unwrap_or(&path));
    let problem = if why == "holds-itself" {
        let why = "This object holds itself, which no job file can.";
        Problem::new(&path, "holds-itself", "", "an object that JSON can hold", why, "")
    } else {
        let why = "This holds over a million values, which is more than a job can.";
        Problem::new(&path, "too-many-values", "", "at most a million values", why, "")
    };
    Err(Box::new(problem))
}

/// The same of a plain object.
pub(crate) fn from_plain(value: &JsValue, depth: usize) -> Value {
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
        return Value::Array(list.iter().map(|item| from_plain(&item, depth + 1)).collect());
    }
    if !value.is_object() {
        return Value::Null;
    }
    let object: &js_sys::Object = value.unchecked_ref();
    let mut fields = Map::new();
    for field in js_sys::Object::keys(object).iter() {
        if let (Some(name), Ok(value)) = (field.as_string(), js_sys::Reflect::get(object, &field)) {
            fields.insert(name, from_plain(&value, depth + 1));
        }
    }
    Value::Object(fields)
}
