//! Requirements that need not be met: by no candidate, or not by one of them.

use super::words;
use crate::job::context::Context;
use crate::job::field::{ByName, Field};
use crate::job::problem::Path;
use crate::job::report::Problem;
use crate::replacement::Requirement;

/// Requirements, each with the reason of whoever waives it.
pub(super) type Waived = Vec<(Requirement, String)>;

pub(super) const FOR_ALL: &str = "all candidates";
pub(super) const FOR_ONE: &str = "this candidate alone";
pub(super) const FOR_NEST: &str = "the whole nest";

/// Reads them; one without a reason stands.
pub(super) fn read(context: &mut Context<'_>, at: &Path, field: Field<'_, ByName>) -> Waived {
    let (at, texts) = context.texts(at, field);
    let mut found = Vec::new();
    for field in texts {
        let code = field.name;
        let Some(requirement) = words::coded(code) else {
            let codes: Vec<String> = words::codes().map(str::to_owned).collect();
            let why = "there is no requirement of that name";
            context.problem(Problem::not_known(
                &field.path(&at),
                code,
                &codes,
                "unknown-word",
                why,
            ));
            continue;
        };
        match context.text(&at, field) {
            Some(reason) => found.push((requirement, reason.to_owned())),
            None => context.note(
                &field.path(&at),
                "waived-without-reason",
                "A requirement is waived only with a reason.",
            ),
        }
    }
    found
}

/// For whom a requirement is waived, where it is one's own to waive or else all others'.
pub(super) fn waived_for(
    requirement: Requirement,
    own: &[(Requirement, String)],
    others: &'static str,
) -> &'static str {
    if own.iter().any(|(waived, _)| *waived == requirement) { FOR_ONE } else { others }
}
