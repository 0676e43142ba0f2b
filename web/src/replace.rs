//! What may replace a coil, and drawings for a need: fetched when they are looked at.

use crate::taken::taken;
use crate::value::to_js;
use coilnest::job;
use coilnest::job::report::{ReplaceReport, SizingReport};
use coilnest_tables::TABLES;
use wasm_bindgen::prelude::*;

#[wasm_bindgen(typescript_custom_section)]
const TYPES: &str =
    r#"import type { Job, ReplaceReport, SizingReport } from "../../www/src/engine/types";"#;

/// What may replace a coil of a job, and what to write to a spring maker.
#[wasm_bindgen(unchecked_return_type = "ReplaceReport")]
#[must_use]
pub fn replace(#[wasm_bindgen(unchecked_param_type = "Job | string")] job: &JsValue) -> JsValue {
    to_js(&match taken(job) {
        Ok(job) => job::replace(&job, &TABLES),
        Err(problem) => ReplaceReport { problems: vec![*problem], ..ReplaceReport::default() },
    })
}

/// Drawings for what a job needs.
#[wasm_bindgen(unchecked_return_type = "SizingReport")]
#[must_use]
pub fn size(#[wasm_bindgen(unchecked_param_type = "Job | string")] job: &JsValue) -> JsValue {
    to_js(&match taken(job) {
        Ok(job) => job::size(&job, &TABLES),
        Err(problem) => SizingReport { problems: vec![*problem], ..SizingReport::default() },
    })
}
