//! What the first look at a page needs: a job in, a report out, and the ways between text and job.

use crate::taken::{from_js, taken};
use crate::value::{parsed, to_js};
#[cfg(feature = "level")]
use coilnest::job::assess as answer;
#[cfg(not(feature = "level"))]
use coilnest::job::assess_nests as answer;
use coilnest::job::report::{Report, StateAnswer};
use coilnest::job::{self, file, respell::respell};
use coilnest::quantity::System;
use coilnest::reading;
use coilnest_tables::ELASTIC_TABLES as TABLES;
use wasm_bindgen::prelude::*;

#[wasm_bindgen(typescript_custom_section)]
const TYPES: &str = r#"import type {
  Choices, Job, Opened, Report, StateAnswer, TapeStrip,
} from "../../www/src/engine/types";"#;

const DEMO: &str = include_str!("../demo/quarry-tramway.json");
const BLANK: &str = include_str!("../demo/blank.json");

/// Everything that follows from a job, given as an object or as the text of its file; without the
/// feature `level`, all but how its frame stands.
#[wasm_bindgen(unchecked_return_type = "Report")]
#[must_use]
pub fn assess(#[wasm_bindgen(unchecked_param_type = "Job | string")] job: &JsValue) -> JsValue {
    match taken(job) {
        Ok(job) => to_js(&answer(&job, &TABLES)),
        Err(problem) => to_js(&Report { problems: vec![*problem], ..Report::default() }),
    }
}

/// A nest of a job at a height or under a load, with its half-section.
#[wasm_bindgen(js_name = nestState, unchecked_return_type = "StateAnswer")]
#[must_use]
pub fn nest_state(
    #[wasm_bindgen(unchecked_param_type = "Job | string")] job: &JsValue,
    nest_id: &str,
    height_text: &str,
) -> JsValue {
    to_js(&match taken(job) {
        Ok(job) => job::nest_state(&job, &TABLES, nest_id, height_text),
        Err(problem) => StateAnswer { problem: Some(*problem), ..StateAnswer::default() },
    })
}

/// The tape as it stands at a reading, `nests[0].seats[0].readings[1]`.
#[wasm_bindgen(unchecked_return_type = "TapeStrip | undefined")]
#[must_use]
pub fn tape(
    #[wasm_bindgen(unchecked_param_type = "Job | string")] job: &JsValue,
    path: &str,
) -> JsValue {
    let strip = taken(job).ok().and_then(|job| job::strip::strip(&job, &TABLES, path));
    strip.map_or(JsValue::UNDEFINED, |strip| to_js(&strip))
}

/// The text of a field after one key of the tape's row.
#[wasm_bindgen]
#[must_use]
pub fn press(text: &str, key: &str) -> String {
    reading::press(text, key)
}

/// The same job in inches or millimetres, every bare number with the unit that it has had.
#[wasm_bindgen(js_name = switchSystem, unchecked_return_type = "Job")]
#[must_use]
pub fn switch_system(
    #[wasm_bindgen(unchecked_param_type = "Job")] job: &JsValue,
    #[wasm_bindgen(unchecked_param_type = "'inch' | 'metric'")] system: &str,
) -> JsValue {
    let to = if system == "metric" { System::Metric } else { System::Inch };
    let switched = cloned(job);
    for edit in respell(&from_js(job), to) {
        write_at(&switched, &edit.path, &edit.text);
    }
    write_at(&switched, "system", system);
    switched
}

/// The job in the text of a file, or why there is none.
#[wasm_bindgen(unchecked_return_type = "Opened")]
#[must_use]
pub fn open(text: &str) -> JsValue {
    let (field, value) = match taken(&text.into()).and_then(file::named) {
        Ok(_) => ("job", parsed(text).unwrap_or(JsValue::UNDEFINED)),
        Err(problem) => ("problem", to_js(&*problem)),
    };
    let opened = js_sys::Object::new();
    // Setting a field of a fresh object cannot fail.
    let _ = js_sys::Reflect::set(&opened, &field.into(), &value);
    opened.into()
}

/// The text of a job's file, made to be read.
#[wasm_bindgen]
#[must_use]
pub fn save(#[wasm_bindgen(unchecked_param_type = "Job")] job: &JsValue) -> String {
    let text = js_sys::JSON::stringify_with_replacer_and_space(job, &JsValue::NULL, &2.into());
    text.ok().and_then(|text| text.as_string()).unwrap_or_default() + "\n"
}

/// The invented job of a first visit.
#[wasm_bindgen(unchecked_return_type = "Job")]
#[must_use]
pub fn demo() -> JsValue {
    parsed(DEMO).unwrap_or_else(blank)
}

/// A job with nothing written in it.
#[wasm_bindgen(unchecked_return_type = "Job")]
#[must_use]
pub fn blank() -> JsValue {
    parsed(BLANK).unwrap_or(JsValue::UNDEFINED)
}

/// The words that some fields take.
#[wasm_bindgen(unchecked_return_type = "Choices")]
#[must_use]
pub fn choices() -> JsValue {
    to_js(&job::choices(&TABLES))
}

/// The version of this engine.
#[wasm_bindgen]
#[must_use]
pub fn version() -> String {
    env!("CARGO_PKG_VERSION").to_owned()
}

/// A copy of an object that shares nothing with it; the object itself where JSON cannot hold it.
fn cloned(value: &JsValue) -> JsValue {
    let text = js_sys::JSON::stringify(value).ok().and_then(|text| text.as_string());
    text.and_then(|text| parsed(&text)).unwrap_or_else(|| value.clone())
}

/// Writes a text at a path, `coils[0].bar`; nothing where the path leads nowhere.
fn write_at(object: &JsValue, path: &str, text: &str) {
    let mut steps = path.split(['.', '[', ']']).filter(|step| !step.is_empty()).peekable();
    let mut here = object.clone();
    while let Some(step) = steps.next() {
        let key = JsValue::from_str(step);
        let done = if steps.peek().is_some() {
            js_sys::Reflect::get(&here, &key).map(|next| here = next).is_ok()
        } else {
            js_sys::Reflect::set(&here, &key, &text.into()).is_ok()
        };
        if !done {
            return;
        }
    }
}
