//! What a record is made of beside its report: an earlier job of the same vehicle, and tables for a
//! spreadsheet.

use crate::taken::{taken, text};
use crate::value::to_js;
use coilnest::job::report::SinceReport;
use coilnest::job::spreadsheet::{self, Decimals, Spreadsheets};
use coilnest_tables::TABLES;
use wasm_bindgen::prelude::*;

#[wasm_bindgen(typescript_custom_section)]
const TYPES: &str =
    r#"import type { SinceReport, Spreadsheets } from "../../www/src/engine/types";"#;

/// What each coil of a job has lost since the earlier job that it holds.
#[wasm_bindgen(unchecked_return_type = "SinceReport")]
#[must_use]
pub fn since(#[wasm_bindgen(unchecked_param_type = "Job | string")] job: &JsValue) -> JsValue {
    let found = taken(job).map(|job| coilnest::job::since(&job, &TABLES));
    to_js(&found.unwrap_or_else(|_| SinceReport::default()))
}

/// A job as tables for a spreadsheet that writes decimals with a `point` or a `comma`.
#[wasm_bindgen(unchecked_return_type = "Spreadsheets")]
#[must_use]
pub fn spreadsheets(
    #[wasm_bindgen(unchecked_param_type = "Job | string")] job: &JsValue,
    #[wasm_bindgen(unchecked_param_type = "'point' | 'comma'")] decimals: &JsValue,
) -> JsValue {
    let decimals = match text(decimals, "decimals").as_deref() {
        Ok("comma") => Decimals::Comma,
        _ => Decimals::Point,
    };
    let found = taken(job).map(|job| spreadsheet::spreadsheets(&job, &TABLES, decimals));
    to_js(&found.unwrap_or_else(|_| Spreadsheets::default()))
}
