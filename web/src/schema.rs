//! The form of a job, for other programs.

use wasm_bindgen::prelude::*;

const SCHEMA: &str = include_str!("../../www/schema/job.schema.json");

/// The JSON Schema of a job file.
#[wasm_bindgen]
#[must_use]
pub fn schema() -> String {
    SCHEMA.to_owned()
}
