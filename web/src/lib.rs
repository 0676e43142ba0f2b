//! The JavaScript face of `coilnest`: a job goes in, a report comes out.
//!
//! Every function takes and gives plain objects, as the schemas in `www/schema` describe them.
//! Nothing throws, nothing is kept between calls, and nothing is computed here.
//!
//! The page is sent two engines made of this crate, one for each feature, so that a first look need not
//! wait for what is looked at now and then.

#[cfg(feature = "bench")]
mod bench;
#[cfg(feature = "sheets")]
mod sheets;
mod value;

#[cfg(feature = "bench")]
pub use bench::*;
#[cfg(feature = "sheets")]
pub use sheets::*;

use coilnest::job::report::Problem;
use coilnest::job::{Job, file};
use value::{from_js, parsed};
use wasm_bindgen::JsValue;

/// The job in an object, or in the text of its file.
fn taken(job: &JsValue) -> Result<Job, Box<Problem>> {
    match job.as_string() {
        Some(text) => match parsed(&text) {
            Some(job) => file::from_value(from_js(&job)),
            None => Err(file::unreadable(&text)),
        },
        None => file::from_value(from_js(job)),
    }
}
