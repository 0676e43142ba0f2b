//! What is looked at now and then, and fetched when it is: a coil's drawing sheet, and the bell of its
//! height.

use crate::taken::{taken, text};
use crate::value::to_js;
use coilnest::job;
use coilnest::job::report::{Problem, SheetAnswer};
use coilnest_tables::TABLES;
use wasm_bindgen::prelude::*;

#[wasm_bindgen(typescript_custom_section)]
const TYPES: &str = r#"import type { Bell, Job, SheetAnswer } from "../../www/src/engine/types";"#;

/// The drawing sheet of a coil of a job.
#[wasm_bindgen(js_name = coilSheet, unchecked_return_type = "SheetAnswer")]
#[must_use]
pub fn coil_sheet(
    #[wasm_bindgen(unchecked_param_type = "Job | string")] job: &JsValue,
    #[wasm_bindgen(unchecked_param_type = "string")] coil_id: &JsValue,
) -> JsValue {
    let asked = || {
        let coil = text(coil_id, "coil_id")?;
        Ok(job::coil_sheet(&taken(job)?, &TABLES, &coil))
    };
    let refused =
        |problem: Box<Problem>| SheetAnswer { problem: Some(*problem), ..SheetAnswer::default() };
    to_js(&asked().unwrap_or_else(refused))
}

/// How likely each free height of a coil is by its readings, `nests[0].seats[1]`.
#[wasm_bindgen(unchecked_return_type = "Bell | undefined")]
#[must_use]
pub fn bell(
    #[wasm_bindgen(unchecked_param_type = "Job | string")] job: &JsValue,
    #[wasm_bindgen(unchecked_param_type = "string")] path: &JsValue,
) -> JsValue {
    let asked = path.as_string().zip(taken(job).ok());
    let bell = asked.and_then(|(path, job)| job::bell(&job, &TABLES, &path));
    bell.map_or(JsValue::UNDEFINED, |bell| to_js(&bell))
}
