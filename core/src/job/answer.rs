//! The way into every answer: the format of the job first, then what is asked, then what was found wrong.

use super::context::Context;
use super::figures::Format;
use super::input::Job;
use super::report::{Note, Problem, Workings};
use super::{file, seat};
use crate::reading::Step;
use crate::tables::Tables;

/// How the figures of a job are written.
pub(super) fn format(job: &Job) -> Format {
    let system = file::system_of(job);
    let said = job.tape.given().and_then(|tape| tape.graduation().value(system));
    let graduation = said.map(|reading| reading.length());
    let graduation = graduation.unwrap_or_else(|| seat::usual_graduation(system));
    Format { system, step: Step::of(graduation) }
}

/// Works out an answer, unless the format of the job is refused, and hands over what was found wrong, what
/// is to be noted, and how each figure came about.
pub(super) fn answered<'t>(
    job: &Job,
    tables: &'t Tables<'t>,
    fill: impl FnOnce(&mut Context<'t>),
) -> (Vec<Problem>, Vec<Note>, Workings) {
    let mut context = Context::new(tables, format(job));
    match file::refused_format(job) {
        Some(problem) => context.problem(problem),
        None => fill(&mut context),
    }
    context.findings()
}
