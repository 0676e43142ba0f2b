//! The published values in a browser: the same as natively, in every digit.

#![cfg(test)]
#![cfg(feature = "whole")]

use js_sys::{Array, JSON, Reflect};
use wasm_bindgen::prelude::*;
use wasm_bindgen_test::{wasm_bindgen_test, wasm_bindgen_test_configure};

wasm_bindgen_test_configure!(run_in_browser);

/// What native code gave: title and case, one a line.
const KEPT: &str = include_str!("../../tests/published/recomputed.txt");

fn get(value: &JsValue, field: &str) -> JsValue {
    Reflect::get(value, &field.into()).unwrap()
}

fn text(value: &JsValue) -> String {
    JSON::stringify(value).unwrap().into()
}

#[wasm_bindgen_test]
fn every_value_is_the_one_that_native_code_gives() {
    let checks = coilnest_web::checks();
    let mut kept = KEPT.lines();
    for document in Array::from(&get(&checks, "documents")).iter() {
        let title = get(&document, "title").as_string().unwrap();
        for case in Array::from(&get(&document, "cases")).iter() {
            let (kept_title, kept_case) = kept.next().unwrap().split_once('\t').unwrap();
            // The kept text through the same writer, so that only what it says is compared.
            let kept_case = text(&JSON::parse(kept_case).unwrap());
            assert_eq!((title.as_str(), text(&case)), (kept_title, kept_case));
        }
    }
    assert_eq!(kept.next(), None);
}

#[wasm_bindgen_test]
fn the_tally_counts_the_values() {
    let checks = coilnest_web::checks();
    for (field, word) in [("agree", "agrees"), ("deviate", "deviates"), ("differ", "differs")] {
        let kept = KEPT.matches(&format!("\"standing\":\"{word}\"")).count();
        assert_eq!(text(&get(&checks, field)), kept.to_string(), "{field}");
    }
    assert!(KEPT.lines().count() > 100);
    assert!(get(&checks, "unread").is_undefined());
}
