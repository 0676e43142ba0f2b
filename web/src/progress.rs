//! How far a long search has come, told to a function of the caller.

use wasm_bindgen::prelude::*;

#[wasm_bindgen(module = "/src/plain.js")]
extern "C" {
    fn told(listener: &JsValue, part: f64);
}

/// Tells a caller's function which part is done, whatever that function does; nobody where it is none.
pub(crate) fn telling(listener: &JsValue) -> impl FnMut(f64) {
    move |part| told(listener, part)
}
