//! A frame on its nests, fetched when it is looked at: how it stands, its shims, its wheels, and which
//! coil belongs where.

use crate::taken::taken;
use crate::value::{parsed, to_js};
use coilnest::job;
use coilnest::job::coil_table::{self, Piece};
use coilnest::job::report::{CoilRows, DipReport, LevelReport, MatchReport, Problem};
use coilnest_tables::ELASTIC_TABLES as TABLES;
use wasm_bindgen::prelude::*;

#[wasm_bindgen(typescript_custom_section)]
const TYPES: &str = r#"import type {
  CoilRows, DipReport, Job, LevelReport, MatchReport,
} from "../../www/src/engine/types";"#;

const TRUCK: &str = include_str!("../demo/whole-truck.json");

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
    pub fn dip(&self, wheel: &str, depth_text: &str, stuck_nest: &str) -> JsValue {
        to_js(&match &self.0 {
            Ok(frame) => frame.dip(wheel, depth_text, stuck_nest),
            Err(problem) => {
                DipReport { problem: Some(problem.as_ref().clone()), ..DipReport::default() }
            }
        })
    }

    /// How the frame stands with its weight at another place: its plan and its nests.
    #[wasm_bindgen(js_name = weighedAt, unchecked_return_type = "LevelReport")]
    #[must_use]
    pub fn weighed_at(&self, along_text: &str, across_text: &str) -> JsValue {
        to_js(&match &self.0 {
            Ok(frame) => frame.weighed_at(along_text, across_text),
            Err(problem) => {
                LevelReport { problems: vec![problem.as_ref().clone()], ..LevelReport::default() }
            }
        })
    }
}

/// Which coil of those on the bench and in the nests belongs in which seat.
#[wasm_bindgen(unchecked_return_type = "MatchReport")]
#[must_use]
pub fn matching(#[wasm_bindgen(unchecked_param_type = "Job | string")] job: &JsValue) -> JsValue {
    to_js(&match taken(job) {
        Ok(job) => job::matching(&job, &TABLES),
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
    text: &str,
    line: usize,
    header: &str,
    last: bool,
    most: usize,
) -> JsValue {
    let header = Some(header).filter(|header| !header.is_empty());
    let piece = Piece { text, line, header, last, most };
    to_js(&match taken(job) {
        Ok(job) => coil_table::coil_rows(&job, &piece),
        Err(_) => CoilRows { stopped: true, ..CoilRows::default() },
    })
}

/// The bench of a job as a table, which `coilRows` reads back.
#[wasm_bindgen(js_name = coilTable)]
#[must_use]
pub fn coil_table(#[wasm_bindgen(unchecked_param_type = "Job")] job: &JsValue) -> String {
    taken(job).map_or_else(|_| String::new(), |job| coil_table::coil_csv(&job))
}

/// The invented job of a whole truck.
#[wasm_bindgen(js_name = truckDemo, unchecked_return_type = "Job")]
#[must_use]
pub fn truck_demo() -> JsValue {
    parsed(TRUCK).unwrap_or(JsValue::UNDEFINED)
}
