//! Where an assessment works: what it was handed, and what it has found so far.

use super::entry::{Entry, List, Text};
use super::figures::{Ledger, Pen};
use super::problem::Path;
use super::report::{Note, Problem, Workings};
use crate::bounds::Bound;
use crate::quantity::{self, Length, Refusal, System, Written};
use crate::reading::Reading;
use crate::tables::Tables;
use serde_json::Value;

pub(crate) struct Desk<'a> {
    pub(crate) tables: &'a Tables<'a>,
    pub(crate) pen: Pen,
    pub(crate) ledger: Ledger,
    pub(crate) problems: Vec<Problem>,
    pub(crate) notes: Vec<Note>,
}

impl<'a> Desk<'a> {
    pub(crate) fn new(tables: &'a Tables<'a>, pen: Pen) -> Self {
        Self { tables, pen, ledger: Ledger::default(), problems: Vec::new(), notes: Vec::new() }
    }

    pub(crate) fn system(&self) -> System {
        self.pen.system
    }

    pub(crate) fn note(&mut self, path: &Path, code: &'static str, text: impl Into<String>) {
        self.notes.push(Note { path: path.text().to_owned(), code, text: text.into() });
    }

    pub(crate) fn problem(&mut self, problem: Problem) {
        self.problems.push(problem);
    }

    /// The same, unless it has been said.
    pub(crate) fn problem_once(&mut self, problem: Problem) {
        if !self.problems.contains(&problem) {
            self.problem(problem);
        }
    }

    /// Takes over what was found wrong or missing at another desk, but none of its workings.
    pub(crate) fn take(&mut self, aside: Desk<'_>) {
        self.problems.extend(aside.problems);
        self.notes.extend(aside.notes);
    }

    /// What was found wrong, what is to be noted, and how each figure came about.
    pub(crate) fn told(self) -> (Vec<Problem>, Vec<Note>, Workings) {
        (self.problems, self.notes, Workings(self.ledger.entries))
    }

    fn odd(
        &mut self,
        path: &Path,
        value: &Value,
        code: &'static str,
        expected: &str,
        example: &str,
    ) {
        let read = match value {
            Value::Null => "null".to_owned(),
            Value::Bool(flag) => flag.to_string(),
            Value::Number(number) => {
                quantity::write_number(number.as_f64().unwrap_or(f64::NAN), 15)
            }
            Value::String(text) => text.chars().take(40).collect(),
            Value::Array(_) => "a list".to_owned(),
            Value::Object(_) => "an object".to_owned(),
        };
        let why = format!("{expected} was expected here");
        self.problem(Problem::new(path, code, &read, expected, &why, example));
    }

    /// The text of a field, without blanks round it; none where it is empty.
    pub(crate) fn text<'e>(
        &mut self,
        at: &Path,
        field: &str,
        entry: &'e Entry<Text>,
    ) -> Option<&'e str> {
        match entry {
            Entry::Absent => None,
            Entry::Given(Text(text)) => Some(text.trim()).filter(|text| !text.is_empty()),
            Entry::Odd(value) => {
                self.odd(&at.field(field), value, "not-text", "text", "\"13 7/8\"");
                None
            }
        }
    }

    /// The object in a field.
    pub(crate) fn object<'e, T>(&mut self, path: &Path, entry: &'e Entry<T>) -> Option<&'e T> {
        if let Entry::Odd(value) = entry {
            self.odd(path, value, "not-object", "an object with named fields", "{ }");
        }
        entry.given()
    }

    /// The items of a list.
    pub(crate) fn list<'e, T>(&mut self, path: &Path, entry: &'e Entry<List<T>>) -> &'e [Entry<T>] {
        if let Entry::Odd(value) = entry {
            self.odd(path, value, "not-list", "a list", "[ ]");
        }
        entry.given().map_or(&[], |list| list.0.as_slice())
    }

    /// A length as a tape shows it.
    pub(crate) fn reading(
        &mut self,
        at: &Path,
        field: &str,
        entry: &Entry<Text>,
        bound: &'static Bound<Length>,
    ) -> Option<Reading> {
        let text = self.text(at, field, entry)?;
        let reading = Reading::parse(text, self.system(), bound);
        self.keep(&at.field(field), reading)
    }

    /// A length.
    pub(crate) fn length(
        &mut self,
        at: &Path,
        field: &str,
        entry: &Entry<Text>,
        bound: &'static Bound<Length>,
    ) -> Option<Length> {
        self.reading(at, field, entry, bound).map(|reading| reading.length())
    }

    /// Any other quantity.
    pub(crate) fn quantity<K: Written>(
        &mut self,
        at: &Path,
        field: &str,
        entry: &Entry<Text>,
        bound: &'static Bound<K>,
    ) -> Option<K::Value> {
        let text = self.text(at, field, entry)?;
        let value = quantity::read(text, self.system(), bound);
        self.keep(&at.field(field), value)
    }

    /// One of the words that a field takes.
    pub(crate) fn word<T: Copy>(
        &mut self,
        at: &Path,
        field: &str,
        entry: &Entry<Text>,
        words: &[(&'static str, T)],
    ) -> Option<T> {
        let text = self.text(at, field, entry)?;
        let found = words.iter().find(|(word, _)| word.eq_ignore_ascii_case(text));
        if found.is_none() {
            let list = quantity::joined(words.iter().map(|(word, _)| word), ", ");
            let example = words.first().map_or("", |(word, _)| word);
            let expected = format!("one of {list}");
            let why = format!("this is none of {list}");
            self.problem(Problem::new(
                &at.field(field),
                "unknown-word",
                text,
                &expected,
                &why,
                example,
            ));
        }
        found.map(|(_, value)| *value)
    }

    /// Reports a name that the job does not have.
    pub(crate) fn known(&mut self, at: &Path, name: &str, known: &[String], code: &'static str) {
        if !known.iter().any(|known| known == name) {
            let why = "this job has none of that name";
            self.problem(Problem::not_known(at, name, known, code, why));
        }
    }

    fn keep<T>(&mut self, path: &Path, result: Result<T, Refusal>) -> Option<T> {
        result.map_err(|refusal| self.problem(Problem::refused(path, &refusal))).ok()
    }
}
