//! The JavaScript face of `coilnest`: a job goes in, a report comes out.
//!
//! Every function takes and gives plain objects, as the schemas in `www/schema` describe them.
//! Nothing throws, nothing is kept between calls, and nothing is computed here.
//!
//! Other programs take all of it. The page is sent an engine for each feature that it uses, so that a
//! first look need not wait for what is looked at now and then.

#[cfg(feature = "bench")]
mod bench;
#[cfg(feature = "checks")]
mod checks;
#[cfg(feature = "level")]
mod level;
#[cfg(feature = "replace")]
mod replace;
#[cfg(feature = "schema")]
mod schema;
#[cfg(feature = "sheets")]
mod sheets;
#[cfg(any(feature = "bench", feature = "level", feature = "replace", feature = "sheets"))]
mod taken;
mod value;

#[cfg(feature = "bench")]
pub use bench::*;
#[cfg(feature = "checks")]
pub use checks::*;
#[cfg(feature = "level")]
pub use level::*;
#[cfg(feature = "replace")]
pub use replace::*;
#[cfg(feature = "schema")]
pub use schema::*;
#[cfg(feature = "sheets")]
pub use sheets::*;
