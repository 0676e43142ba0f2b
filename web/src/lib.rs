//! The JavaScript face of `coilnest`: a job goes in, a report comes out.
//!
//! Every function takes and gives plain objects, as the schemas in `www/schema` describe them.
//! Nothing throws, nothing is kept between calls, and nothing is computed here.
//!
//! Other programs take the whole. The page is sent what a first look needs by itself, without the feature
//! `whole`, and the whole when it has nothing else to do.

#[cfg(feature = "whole")]
mod checks;
#[cfg(feature = "whole")]
mod level;
mod measure;
#[cfg(feature = "whole")]
mod progress;
#[cfg(feature = "whole")]
mod record;
#[cfg(feature = "whole")]
mod replace;
#[cfg(feature = "whole")]
mod report;
#[cfg(feature = "whole")]
mod sheets;
mod taken;
mod value;

/// Smaller than the standard library's allocator, and no slower.
#[cfg(target_family = "wasm")]
#[global_allocator]
static MEMORY: talc::wasm::WasmDynamicTalc = talc::wasm::new_wasm_dynamic_allocator();

pub use measure::*;
#[cfg(feature = "whole")]
pub use {checks::*, level::*, record::*, replace::*, report::*, sheets::*};
