//! A job goes in, a report comes out.
//!
//! A [`Job`] is what somebody wrote on the bench, every quantity as text. [`assess`] answers with
//! what follows for its coils and nests: a [`Report`], [`assess_nest`] with that of one nest alone. [`nest_state`] answers for one nest at another
//! height or load, [`coil_sheet`] with all that follows from one coil's drawing, which nests do not
//! ask for, [`level()`] with all of its frame, [`replace()`] with what may replace a coil, [`size`] with
//! drawings for a need, [`bell`] with how likely
//! each height of a coil is, and [`coil_table`] reads many coils at once. What cannot be used is a problem at
//! the path of its field, and the rest stands. Nothing panics, and nothing is kept between two calls but
//! what the caller holds: [`HeldFrame`] is a frame that is asked again and again. A [`report`] that the caller kept as
//! JSON is read back.
//!
//! # Example
//! ```
//! use coilnest::job::{assess, file};
//! use coilnest::tables::Tables;
//!
//! let tables = Tables::NONE;
//! let job = file::open(r#"{
//!     "format": "coilnest-job/1",
//!     "tape": { "graduation": "1/16 in", "error": "0" },
//!     "coils": [{ "id": "outer", "free": "15 11/16", "limits": { "under": "1/8", "over": "1/8" } }],
//!     "nests": [{ "id": "A left", "seats": [{ "coil": "outer", "readings": ["15 5/8", "15 11/16"] }] }]
//! }"#)?;
//! let report = assess(&job, &tables);
//! let verdict = report.nests[0].seats[0].verdict.as_ref();
//! assert_eq!(verdict.map(|verdict| &*verdict.title), Some("Good"));
//! # Ok::<(), Box<coilnest::job::report::Problem>>(())
//! ```

mod answer;
mod assess;
mod bell;
mod cautions;
mod choices;
mod coil;
pub mod coil_table;
mod context;
mod cut;
mod drafted;
mod drawing;
mod entry;
mod field;
mod figures;
pub mod file;
mod formulas;
mod frame;
mod guides;
pub mod input;
mod labels;
mod level;
mod loads;
mod matching;
mod nest;
mod points;
mod pool;
pub mod problem;
mod question;
mod replace;
pub mod report;
pub mod respell;
#[cfg(feature = "schema")]
pub mod rows;
mod seat;
mod sentence;
mod settle;
mod sheet;
mod since;
mod sizing;
mod slips;
pub mod spreadsheet;
mod stack;
mod standing;
pub mod strip;
mod taped;
mod tolerance;

pub use assess::{assess, assess_nest, judge, nest_state};
pub use bell::bell;
pub use choices::{choices, measure_choices};
pub use entry::{Entry, List, Text};
pub use input::Job;
pub use level::{HeldFrame, level};
pub use matching::{matching, matching_with_progress};
pub use replace::replace;
pub use report::Report;
pub use sheet::coil_sheet;
pub use since::since;
pub use sizing::{size, size_with_progress};
