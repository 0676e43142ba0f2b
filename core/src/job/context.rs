//! Where an assessment works: what it was handed, and what it has found so far.

use super::entry::{Entry, List};
use super::field::{
    Belongs, ByName, Field, Kind, LIST, Many, OBJECT, Object, Plain, Reads, Rows, Spot, TEXT,
    Unread, Visitor, Whole,
};
use super::figures::{Format, Ledger};
use super::problem::Path;
use super::report::{Note, Problem, Workings};
use crate::quantity::{self, System};
use crate::tables::Tables;
use serde_json::{Map, Value};

pub(crate) struct Context<'a> {
    pub(crate) tables: &'a Tables<'a>,
    pub(crate) format: Format,
    pub(crate) ledger: Ledger,
    pub(crate) problems: Vec<Problem>,
    pub(crate) notes: Vec<Note>,
}

impl<'a> Context<'a> {
    pub(crate) fn new(tables: &'a Tables<'a>, format: Format) -> Self {
        Self { tables, format, ledger: Ledger::default(), problems: Vec::new(), notes: Vec::new() }
    }

    pub(crate) fn system(&self) -> System {
        self.format.system
    }

    pub(crate) fn note(&mut self, path: &Path, code: &'static str, text: impl Into<String>) {
        self.notes.push(Note {
            path: path.text().to_owned(),
            code: code.into(),
            text: text.into(),
        });
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

    /// What was found wrong, what is to be noted, and how each figure came about.
    pub(crate) fn findings(self) -> (Vec<Problem>, Vec<Note>, Workings) {
        (self.problems, self.notes, Workings(self.ledger.entries))
    }

    /// Says so where something else stands in a field.
    fn check_kind<T>(&mut self, path: &Path, entry: &Entry<T>, belongs: &Belongs) {
        if let Entry::Odd(value) = entry {
            self.odd(path, value, belongs);
        }
    }

    /// What a field says; what cannot be used of it is a problem there.
    pub(crate) fn read<K: Reads>(&mut self, at: &Path, field: Field<'_, K>) -> Option<K::Value> {
        let text = self.text(at, field)?;
        let spot = Spot { at, name: field.name, system: self.system(), tables: self.tables };
        field.kind.read(text, &spot).map_err(|problem| self.problem(*problem)).ok()
    }

    /// The text of a field, without blanks round it; none where it is empty.
    pub(crate) fn text<'e, K: Reads>(&mut self, at: &Path, field: Field<'e, K>) -> Option<&'e str> {
        // A path is made only where it is needed: most fields hold what they should.
        if matches!(field.entry, Entry::Odd(_)) {
            self.check_kind(&field.path(at), field.entry, &TEXT);
        }
        Some(field.written()).filter(|text| !text.is_empty())
    }

    /// The object in a field, with its path.
    pub(crate) fn object<'e, T: Rows>(
        &mut self,
        at: &Path,
        field: Field<'e, Object<T>>,
    ) -> Option<(Path, &'e T)> {
        let path = field.path(at);
        self.check_kind(&path, field.entry, &OBJECT);
        Some((path, field.entry.given()?))
    }

    /// What stands in a list, each item a field of its own with its path.
    pub(crate) fn list<'e, K: Kind>(
        &mut self,
        at: &Path,
        field: Field<'e, Many<K>>,
    ) -> impl Iterator<Item = (Path, Field<'e, K>)> + use<'e, K> {
        let path = field.path(at);
        self.check_kind(&path, field.entry, &LIST);
        let items =
            field.entry.given().map_or(&[][..], |list| list.0.as_slice()).iter().enumerate();
        items.map(move |(index, entry)| (path.item(index), Field::here(field.kind.0, entry)))
    }

    /// The objects of a list that was kept unread.
    pub(crate) fn objects<T: Rows>(
        &mut self,
        at: &Path,
        field: Field<'_, Unread<Object<T>>>,
    ) -> Vec<(Path, T)> {
        let path = field.path(at);
        let list: Entry<List<T>> = field.entry.as_list();
        self.check_kind(&path, &list, &LIST);
        let Entry::Given(List(items)) = list else { return Vec::new() };
        let items = items.into_iter().enumerate().filter_map(|(index, item)| {
            let at = path.item(index);
            self.check_kind(&at, &item, &OBJECT);
            if let Entry::Given(object) = item { Some((at, object)) } else { None }
        });
        items.collect()
    }

    /// The whole job in a field.
    pub(crate) fn whole<'e>(
        &mut self,
        at: &Path,
        field: Field<'e, Whole>,
    ) -> Option<&'e Map<String, Value>> {
        let path = field.path(at);
        self.check_kind(&path, field.entry, &OBJECT);
        field.entry.given()
    }

    /// Texts by their names, with the path of what holds them.
    pub(crate) fn texts<'e>(
        &mut self,
        at: &Path,
        field: Field<'e, ByName>,
    ) -> (Path, impl Iterator<Item = Field<'e, Plain>> + use<'e>) {
        let path = field.path(at);
        self.check_kind(&path, field.entry, &OBJECT);
        let texts = field.entry.given().map_or(&[][..], |texts| texts.0.as_slice());
        (path, texts.iter().map(|(name, entry)| Field { name, kind: Plain, entry }))
    }

    /// What the items of a list say, as far as it can be used.
    pub(crate) fn each<K: Reads>(&mut self, at: &Path, field: Field<'_, Many<K>>) -> Vec<K::Value> {
        self.list(at, field).filter_map(|(at, item)| self.read(&at, item)).collect()
    }

    /// Reports a name that the job does not have.
    pub(crate) fn known(&mut self, at: &Path, name: &str, known: &[String], code: &'static str) {
        if !known.iter().any(|known| known == name) {
            let why = "this job has none of that name";
            self.problem(Problem::not_known(at, name, known, code, why));
        }
    }
}

/// Whatever is wrong with the texts of an object of which no more is asked.
impl Visitor for Context<'_> {
    fn text<K: Reads>(&mut self, at: &Path, field: Field<'_, K>) {
        self.read(at, field);
    }

    fn odd(&mut self, path: &Path, value: &Value, belongs: &Belongs) {
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
        let why = format!("{} was expected here", belongs.expected);
        let Belongs { code, expected, example } = *belongs;
        self.problem(Problem::new(path, code, &read, expected, &why, example));
    }
}
