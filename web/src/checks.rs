//! What documents print, computed anew on the device of whoever reads it.

use crate::taken::from_plain;
use crate::value::{parsed, to_js};
use wasm_bindgen::prelude::*;

#[wasm_bindgen(typescript_custom_section)]
const TYPES: &str = r#"import type { Checks } from "../../www/src/engine/types";"#;

/// Every value of the documents beside the one that this engine computes.
#[wasm_bindgen(unchecked_return_type = "Checks")]
#[must_use]
pub fn checks() -> JsValue {
    let documents = parsed(coilnest_published::DOCUMENTS).unwrap_or_default();
    to_js(&coilnest_published::run_on(&from_plain(&documents, 0)))
}
