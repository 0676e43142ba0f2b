//! A frame on its nests, fetched when it is looked at: how it stands, its shims, its wheels, and which
//! coil belongs where.

use crate::progress::telling;
use crate::taken::{taken, text};
use crate::value::to_js;
use coilnest::job;
use coilnest::job::coil_table::{self, Piece};
use coilnest::job::report::{CoilRows, DipReport, LevelReport, MatchReport, Problem, RefusedLine};
use coilnest_tables::TABLES;
use wasm_bindgen::prelude::*;

#[wasm_bindgen(typescript_custom_section)]
const TYPES: &str = r#"import type {
  CoilRows, DipReport, Job, LevelReport, MatchReport,
} from "../../www/src/engine/types";"#;

/// How the frame of a job stands, which shims even it out, and what its wheels carry.
#[wasm_bindgen(unchecked_return_type = "LevelReport")]
#[must_use]
pub fn level(#[wasm_bindgen(unchecked_param_type = "Job | string")] job: &JsValue) -> JsValue {
    to_js(&match taken(job) {
        Ok(job) => job::level(&job, &TABLES),
        Err(problem) => LevelReport { problems: vec![*problem], ..LevelReport::default() },
    })
}

/// The frame of a job, read once and asked again and again.
#[wasm_bindgen]
pub struct HeldFrame(Result<job::HeldFrame<'static>, Box<Problem>>);

#[wasm_bindgen]
impl HeldFrame {
    /// Of a job.
    #[wasm_bindgen(constructor)]
    #[must_use]
    pub fn new(#[wasm_bindgen(unchecked_param_type = "Job | string")] job: &JsValue) -> Self {
        Self(taken(job).map(|job| job::HeldFrame::of(&job, &TABLES)))
    }

    /// What each wheel keeps with one of them in a dip, or on a rise where the depth is below zero; the
    /// same with the box of a nest stuck, where one is named.
    #[wasm_bindgen(unchecked_return_type = "DipReport")]
    #[must_use]
    pub fn dip(
        &self,
        #[wasm_bindgen(unchecked_param_type = "string")] wheel: &JsValue,
        #[wasm_bindgen(unchecked_param_type = "string")] depth_text: &JsValue,
        #[wasm_bindgen(unchecked_param_type = "string")] stuck_nest: &JsValue,
    ) -> JsValue {
        let asked = || {
            let (wheel, depth) = (text(wheel, "wheel")?, text(depth_text, "depth_text")?);
            let stuck = text(stuck_nest, "stuck_nest")?;
            Ok(self.0.as_ref().map_err(Clone::clone)?.dip(&wheel, &depth, &stuck))
        };
        let refused =
            |problem: Box<Problem>| DipReport { problem: Some(*problem), ..DipReport::default() };
        to_js(&asked().unwrap_or_else(refused))
    }

    /// How the frame stands with its weight at another place: its plan and its nests.
    #[wasm_bindgen(js_name = weighedAt, unchecked_return_type = "LevelReport")]
    #[must_use]
    pub fn weighed_at(
        &self,
        #[wasm_bindgen(unchecked_param_type = "string")] along_text: &JsValue,
        #[wasm_bindgen(unchecked_param_type = "string")] across_text: &JsValue,
    ) -> JsValue {
        let asked = || {
            let (along, across) =
                (text(along_text, "along_text")?, text(across_text, "across_text")?);
            Ok(self.0.as_ref().map_err(Clone::clone)?.weighed_at(&along, &across))
        };
        let refused = |problem: Box<Problem>| LevelReport {
            problems: vec![*problem],
            ..LevelReport::default()
        };
        to_js(&asked().unwrap_or_else(refused))
    }
}

/// Which coil of those on the bench and in the nests belongs in which seat. `progress` is told from time to time which
/// part is decided, from 0 to 1.
#[wasm_bindgen(unchecked_return_type = "MatchReport")]
#[must_use]
pub fn matching(
    #[wasm_bindgen(unchecked_param_type = "Job | string")] job: &JsValue,
    #[wasm_bindgen(unchecked_optional_param_type = "(part: number) => void")] progress: &JsValue,
) -> JsValue {
    to_js(&match taken(job) {
        Ok(job) => job::matching_with_progress(&job, &TABLES, &mut telling(progress)),
        Err(problem) => MatchReport { problems: vec![*problem], ..MatchReport::default() },
    })
}

/// The coils in a piece of a table, from its line of that number on; `header` is empty, then what the
/// call before it answered. No more than so many lines are read, and one without its end only where it
/// is the last.
#[wasm_bindgen(js_name = coilRows, unchecked_return_type = "CoilRows")]
#[must_use]
pub fn coil_rows(
    #[wasm_bindgen(unchecked_param_type = "Job")] job: &JsValue,
    #[wasm_bindgen(unchecked_param_type = "string")] text: &JsValue,
    #[wasm_bindgen(unchecked_param_type = "number")] line: &JsValue,
    #[wasm_bindgen(unchecked_param_type = "string")] header: &JsValue,
    #[wasm_bindgen(unchecked_param_type = "boolean")] last: &JsValue,
    #[wasm_bindgen(unchecked_param_type = "number")] most: &JsValue,
) -> JsValue {
    let (line, most) = (count(line), count(most));
    let asked = || {
        let (text, header) = (self::text(text, "text")?, self::text(header, "header")?);
        let header = Some(header.as_str()).filter(|header| !header.is_empty());
        let piece = Piece { text: &text, line, header, last: last.is_truthy(), most };
        Ok(coil_table::coil_rows(&taken(job)?, &piece))
    };
    let refused = |problem: Box<Problem>| {
        let refused = vec![RefusedLine { line, text: String::new(), problems: vec![*problem] }];
        CoilRows { refused, next_line: line, stopped: true, ..CoilRows::default() }
    };
    to_js(&asked().unwrap_or_else(refused))
}

/// A whole number from 1 on.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "it keeps within the type"
)]
fn count(value: &JsValue) -> usize {
    value.as_f64().unwrap_or(1.0).max(1.0) as usize
}

/// The bench of a job as a table, which `coilRows` reads back.
#[wasm_bindgen(js_name = coilTable)]
#[must_use]
pub fn coil_table(#[wasm_bindgen(unchecked_param_type = "Job")] job: &JsValue) -> String {
    taken(job).map_or_else(|_| String::new(), |job| coil_table::coil_csv(&job))
}
