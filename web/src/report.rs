//! What follows from a job for its coils and nests, and what else can be done with it.

use crate::taken::{from_plain, plain, taken, text};
use crate::value::to_js;
use coilnest::job::report::{Problem, Report, StateAnswer};
use coilnest::job::{self, respell::respell};
use coilnest::quantity::System;
use coilnest_tables::TABLES;
use wasm_bindgen::prelude::*;

#[wasm_bindgen(typescript_custom_section)]
const TYPES: &str =
    r#"import type { Choices, Job, Report, StateAnswer } from "../../www/src/engine/types";"#;

/// Everything that follows from a job, given as an object or as the text of its file.
#[wasm_bindgen(unchecked_return_type = "Report")]
#[must_use]
pub fn assess(#[wasm_bindgen(unchecked_param_type = "Job | string")] job: &JsValue) -> JsValue {
    match taken(job) {
        Ok(job) => to_js(&job::assess(&job, &TABLES)),
        Err(problem) => to_js(&Report { problems: vec![*problem], ..Report::default() }),
    }
}

/// The same for one nest, by its name, as a report that has no other.
#[wasm_bindgen(js_name = assessNest, unchecked_return_type = "Report")]
#[must_use]
pub fn assess_nest(
    #[wasm_bindgen(unchecked_param_type = "Job | string")] job: &JsValue,
    #[wasm_bindgen(unchecked_param_type = "string")] nest_id: &JsValue,
) -> JsValue {
    let asked = || Ok(job::assess_nest(&taken(job)?, &TABLES, &text(nest_id, "nest_id")?));
    let refused = |problem: Box<Problem>| Report { problems: vec![*problem], ..Report::default() };
    to_js(&asked().unwrap_or_else(refused))
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
    let Ok(read) = job::file::from_value(from_plain(&own, 0)) else { return job.clone() };
    for edit in respell(&read, to) {
        write_at(&own, &edit.path, &edit.text);
    }
    write_at(&own, "system", &word);
    own
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

/// The words that some fields take, with figures in inches or millimetres.
#[wasm_bindgen(unchecked_return_type = "Choices")]
#[must_use]
pub fn choices(
    #[wasm_bindgen(unchecked_optional_param_type = "'inch' | 'metric'")] system: &JsValue,
) -> JsValue {
    let system = match system.as_string().as_deref() {
        Some("metric") => System::Metric,
        _ => System::Inch,
    };
    to_js(&job::choices(&TABLES, system))
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
