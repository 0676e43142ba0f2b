//! A change of system that changes no meaning: every bare number gets its unit spelt out first.

use super::field::{Field, Reads, Rows, Visitor};
use super::file;
use super::input::Job;
use super::problem::Path;
use super::report::Edit;
use crate::quantity::System;

/// The texts to write before a job goes over to another system, so that everything means what it
/// meant; none where it is in that system already.
///
/// # Example
/// ```
/// use coilnest::job::{file, respell::respell};
/// use coilnest::quantity::System;
///
/// let job = file::from_value(serde_json::json!({
///     "system": "inch", "coils": [{ "free": "13 15/16", "bar": "27 mm" }]
/// }))?;
/// let edits = respell(&job, System::Metric);
/// assert_eq!((edits.len(), edits[0].path.as_str()), (1, "coils[0].free"));
/// assert_eq!(edits[0].text, "13 15/16 in");
/// assert!(respell(&job, System::Inch).is_empty());
/// # Ok::<(), Box<coilnest::job::report::Problem>>(())
/// ```
#[must_use]
pub fn respell(job: &Job, to: System) -> Vec<Edit> {
    let mut spelling = Spelling { from: file::system_of(job), edits: Vec::new() };
    if spelling.from != to {
        job.visit(&Path::default(), &mut spelling);
    }
    spelling.edits
}

/// The texts that are spelt out so far.
struct Spelling {
    from: System,
    edits: Vec<Edit>,
}

impl Visitor for Spelling {
    fn text<K: Reads>(&mut self, at: &Path, field: Field<'_, K>) {
        let spelt = field.spelt(self.from);
        self.edits.extend(spelt.map(|text| Edit { path: field.path(at).text().to_owned(), text }));
    }
}
