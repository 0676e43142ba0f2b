//! A job as the text of a file.

use super::entry::{Entry, Expected, Text};
use super::input::{FORMAT, Job};
use super::problem::Path;
use super::report::Problem;
use crate::quantity::System;
use serde_json::Value;

/// Reads the text of a job file.
///
/// A field that holds something unexpected is no reason to refuse the file: [`assess`](super::assess())
/// reports it.
///
/// # Errors
/// A [`Problem`] when the text is no JSON, names no format, or is for a later version; the caller
/// leaves the file as it is.
pub fn open(text: &str) -> Result<Job, Box<Problem>> {
    match serde_json::from_str::<Value>(text) {
        Ok(value) => named(from_value(value)?),
        Err(_) => Err(unreadable(text)),
    }
}

/// The problem of a text that is no JSON.
#[must_use]
pub fn unreadable(text: &str) -> Box<Problem> {
    let read: String = text.trim().chars().take(40).collect();
    let message = "This is no job file, or a part of one is missing. Nothing is changed by it.";
    let problem = Problem::new(&Path::default(), "not-object", "", "a job file", message, EXAMPLE);
    Box::new(Problem { read, ..problem })
}

/// The job in a JSON value.
///
/// # Errors
/// A [`Problem`] when the value is no object.
pub fn from_value(value: Value) -> Result<Job, Box<Problem>> {
    match Job::entry(value) {
        Entry::Given(job) => Ok(job),
        Entry::Absent => Err(no_job("nothing")),
        Entry::Odd(value) => Err(no_job(match value {
            Value::Array(_) => "a list",
            Value::String(_) => "a text",
            Value::Number(_) => "a number",
            _ => "true or false",
        })),
    }
}

/// The problem of what is JSON, and no job.
fn no_job(read: &str) -> Box<Problem> {
    let why = r#"this is no job: a job is an object with named fields, such as { "format": "coilnest-job/1" }"#;
    Box::new(Problem::new(&Path::default(), "not-object", read, "a job", why, EXAMPLE))
}

/// The job of a file, which has to name its format.
///
/// # Errors
/// A [`Problem`] when it names none, or one that this version does not know.
pub fn named(job: Job) -> Result<Job, Box<Problem>> {
    format_problem(&job).map_or(Ok(job), |problem| Err(Box::new(problem)))
}

const EXAMPLE: &str = r#"{ "format": "coilnest-job/1" }"#;

/// What is wrong with the format that a job names, if anything.
pub(crate) fn format_problem(job: &Job) -> Option<Problem> {
    let path = Path::of("format");
    let expected = format!("the format {FORMAT}");
    let said = match &job.format {
        Entry::Given(Text(said)) if said.trim() == FORMAT => return None,
        Entry::Given(Text(said)) => said.trim(),
        Entry::Absent => {
            let why = "This names no format; a job file does.";
            return Some(Problem::new(&path, "format-missing", "", &expected, why, FORMAT));
        }
        Entry::Odd(_) => "",
    };
    let number = said.strip_prefix("coilnest-job/").and_then(|number| number.parse::<u32>().ok());
    let (code, why) = match number {
        Some(number) if number > 1 => (
            "format-newer",
            "this file was written by a later version; open it there, it is left as it is",
        ),
        _ => ("format-unknown", "this is no format that is known here"),
    };
    Some(Problem::new(&path, code, said, &expected, why, FORMAT))
}

/// Why nothing can be said of a job: it names a format that is not known here.
pub(crate) fn refused_format(job: &Job) -> Option<Problem> {
    format_problem(job).filter(|problem| problem.code != "format-missing")
}

/// The text of a job file, made to be read.
#[must_use]
pub fn save(job: &Job) -> String {
    // Strings, lists and objects always have a text; an empty one could only mean a fault in the writer.
    serde_json::to_string_pretty(job).map(|text| text + "\n").unwrap_or_default()
}

/// The system that a job names, inches where it names none.
pub(crate) fn system_of(job: &Job) -> System {
    match job.system.given() {
        Some(Text(word)) if word.trim().eq_ignore_ascii_case("metric") => System::Metric,
        _ => System::Inch,
    }
}
