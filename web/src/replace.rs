//! What may replace a coil, and drawings for a need: fetched when they are looked at.

use crate::progress::telling;
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

/// Drawings for what a job needs. `progress` is told from time to time which part is done, from 0 to 1.
#[wasm_bindgen(unchecked_return_type = "SizingReport")]
#[must_use]
pub fn size(
    #[wasm_bindgen(unchecked_param_type = "Job | string")] job: &JsValue,
    #[wasm_bindgen(unchecked_optional_param_type = "(part: number) => void")] progress: &JsValue,
) -> JsValue {
    to_js(&match taken(job) {
        Ok(job) => job::size_with_progress(&job, &TABLES, &mut telling(progress)),
        Err(problem) => SizingReport { problems: vec![*problem], ..SizingReport::default() },
    })
}
