//! What a first look at a page needs: what the tape says of the coils, and the ways between text and job.

use crate::taken::{taken, text};
use crate::value::{parsed, to_js};
use coilnest::job::report::{Problem, TapeReport};
use coilnest::job::{self, file};
use coilnest::reading;
use coilnest_tables::TAPE_TABLES as TABLES;
use wasm_bindgen::prelude::*;

#[wasm_bindgen(typescript_custom_section)]
const TYPES: &str = r#"import type {
  Choices, Job, Opened, TapeReport, TapeStrip,
} from "../../www/src/engine/types";"#;

const DEMO: &str = include_str!("../demo/quarry-tramway.json");
const BLANK: &str = include_str!("../demo/blank.json");

/// What the tape says of the coils of a job, given as an object or as the text of its file, held against
/// their book figures and limits.
#[wasm_bindgen(unchecked_return_type = "TapeReport")]
#[must_use]
pub fn judge(#[wasm_bindgen(unchecked_param_type = "Job | string")] job: &JsValue) -> JsValue {
    to_js(&match taken(job) {
        Ok(job) => job::judge(&job, &TABLES),
        Err(problem) => TapeReport { problems: vec![*problem], ..TapeReport::default() },
    })
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

/// The words that fields take where coils are measured.
#[wasm_bindgen(js_name = measureChoices, unchecked_return_type = "Choices")]
#[must_use]
pub fn measure_choices() -> JsValue {
    to_js(&job::measure_choices(&TABLES))
}
