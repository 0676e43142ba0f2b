//! What the first look at a page needs: a job in, a report out, and the ways between text and job.

use crate::taken::{from_plain, plain, taken, text};
use crate::value::{parsed, to_js};
#[cfg(feature = "level")]
use coilnest::job::assess as answer;
#[cfg(not(feature = "level"))]
use coilnest::job::assess_nests as answer;
use coilnest::job::report::{Problem, Report, StateAnswer};
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
    #[wasm_bindgen(unchecked_param_type = "string")] nest_id: &JsValue,
    #[wasm_bindgen(unchecked_param_type = "string")] height_text: &JsValue,
) -> JsValue {
    let asked = || {
        let (nest, height) = (text(nest_id, "nest_id")?, text(height_text, "height_text")?);
        Ok(job::nest_state(&taken(job)?, &TABLES, &nest, &height))
    };
    let refused =
        |problem: Box<Problem>| StateAnswer { problem: Some(*problem), ..StateAnswer::default() };
    to_js(&asked().unwrap_or_else(refused))
}

/// The tape as it stands at a reading, `nests[0].seats[0].readings[1]`.
#[wasm_bindgen(unchecked_return_type = "TapeStrip | undefined")]
#[must_use]
pub fn tape(
    #[wasm_bindgen(unchecked_param_type = "Job | string")] job: &JsValue,
    #[wasm_bindgen(unchecked_param_type = "string")] path: &JsValue,
) -> JsValue {
    let asked = path.as_string().zip(taken(job).ok());
    let strip = asked.and_then(|(path, job)| job::strip::strip(&job, &TABLES, &path));
    strip.map_or(JsValue::UNDEFINED, |strip| to_js(&strip))
}

/// The text of a field after one key of the tape's row.
#[wasm_bindgen]
#[must_use]
pub fn press(
    #[wasm_bindgen(unchecked_param_type = "string")] text: &JsValue,
    #[wasm_bindgen(unchecked_param_type = "string")] key: &JsValue,
) -> String {
    let text = text.as_string().unwrap_or_default();
    match key.as_string() {
        Some(key) => reading::press(&text, &key),
        None => text,
    }
}

/// A copy of a job in inches or millimetres, every bare number with the unit that it has had. What is
/// no job, or asks for other units, is given back as it is.
#[wasm_bindgen(js_name = switchSystem, unchecked_return_type = "Job")]
#[must_use]
pub fn switch_system(
    #[wasm_bindgen(unchecked_param_type = "Job")] job: &JsValue,
    #[wasm_bindgen(unchecked_param_type = "'inch' | 'metric'")] system: &JsValue,
) -> JsValue {
    let word = system.as_string().unwrap_or_default();
    let to = match word.as_str() {
        "metric" => System::Metric,
        "inch" => System::Inch,
        _ => return job.clone(),
    };
    let Some(own) = plain(job).ok().filter(JsValue::is_object) else { return job.clone() };
    for edit in respell(&from_plain(&own, 0), to) {
        write_at(&own, &edit.path, &edit.text);
    }
    write_at(&own, "system", &word);
    own
}

/// The job in the text of a file, or why there is none.
#[wasm_bindgen(unchecked_return_type = "Opened")]
#[must_use]
pub fn open(#[wasm_bindgen(unchecked_param_type = "string")] text: &JsValue) -> JsValue {
    let asked = || {
        let text = self::text(text, "text")?;
        file::named(taken(&text.as_str().into())?)?;
        Ok(parsed(&text).unwrap_or(JsValue::UNDEFINED))
    };
    let (field, value) = match asked() {
        Ok(job) => ("job", job),
        Err::<_, Box<Problem>>(problem) => ("problem", to_js(&*problem)),
    };
    let opened = js_sys::Object::new();
    // Setting a field of a fresh object cannot fail.
    let _ = js_sys::Reflect::set(&opened, &field.into(), &value);
    opened.into()
}

/// The text of a job's file, made to be read; no more than a line end where JSON holds no such job.
#[wasm_bindgen]
#[must_use]
pub fn save(#[wasm_bindgen(unchecked_param_type = "Job")] job: &JsValue) -> String {
    let text = plain(job).ok().and_then(|own| {
        js_sys::JSON::stringify_with_replacer_and_space(&own, &JsValue::NULL, &2.into()).ok()
    });
    text.and_then(|text| text.as_string()).unwrap_or_default() + "\n"
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
