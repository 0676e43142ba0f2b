//! A report as lines to be kept: one a figure, by its path, with its last digit and its working.
//!
//! ```text
//! coils[outer] | id "outer", name "Outer"
//! coils[outer].index | 6.14 | 6.140350877192982 | D / d | 175 mm / 28.5 mm | definition
//! ```
//!
//! The short fields of an object stand together before the rest of it; a long text has a line of its
//! own. A working stands behind the figure that it explains, so its key is in no line.

use serde::de::{Deserialize, Deserializer, MapAccess, SeqAccess, Visitor};
use std::collections::BTreeSet;
use std::fmt;

/// The lines of a report that is given as JSON, in its own order.
///
/// # Errors
/// A sentence when it is no JSON.
pub fn lines(report: &str) -> Result<String, String> {
    let report: Tree = serde_json::from_str(report).map_err(|error| error.to_string())?;
    let mut lines = String::new();
    report.write("", &Tree::Fields(Vec::new()), &mut lines);
    Ok(lines)
}

/// How many characters a text may have to stand in a line with others.
const SHORT: usize = 40;

/// What the items of a list are called by, where all have it and no two the same.
const NAMES: [&str; 6] = ["id", "name", "label", "nest", "coil", "code"];

/// What a figure has beside its working.
const FIGURE: [&str; 5] = ["text", "doubt_text", "si", "doubt_si", "unit"];

type Field = (String, Tree);

/// A JSON value whose fields keep their order.
enum Tree {
    /// A number, `true`, `false` or `null`.
    Plain(String),
    Text(String),
    List(Vec<Tree>),
    Fields(Vec<Field>),
}

impl Tree {
    fn get(&self, name: &str) -> Option<&Self> {
        let Self::Fields(fields) = self else { return None };
        fields.iter().find(|(field, _)| field == name).map(|(_, value)| value)
    }

    fn is_short(&self) -> bool {
        match self {
            Self::Plain(_) => true,
            Self::Text(text) => text.chars().count() <= SHORT,
            Self::List(items) => items.iter().all(Self::is_short),
            Self::Fields(fields) => fields.is_empty(),
        }
    }

    fn write(&self, path: &str, workings: &Self, lines: &mut String) {
        match self {
            Self::Text(text) => text.split('\n').for_each(|text| line(path, text, lines)),
            Self::Fields(_) if self.get("si").is_some() => {
                line(path, &self.figure(workings), lines);
            }
            Self::Fields(fields) => {
                self.write_fields(fields, path, self.get("workings").unwrap_or(workings), lines);
            }
            Self::List(items) if !self.is_short() => {
                for (name, item) in names(items).iter().zip(items) {
                    item.write(&format!("{path}[{name}]"), workings, lines);
                }
            }
            _ => line(path, &self.to_string(), lines),
        }
    }

    fn write_fields(&self, fields: &[Field], path: &str, workings: &Self, lines: &mut String) {
        let stands_alone = |(name, value): &&Field| !value.is_short() || name == "working";
        let (alone, together): (Vec<&Field>, Vec<&Field>) = fields.iter().partition(stands_alone);
        if !together.is_empty() {
            line(path, &named(together), lines);
        }
        let dot = if path.is_empty() { "" } else { "." };
        for (name, value) in alone {
            let path = format!("{path}{dot}{name}");
            match (name.as_str(), value) {
                ("working", Self::Text(key)) => line(&path, &working(key, workings, ""), lines),
                ("workings", Self::Fields(all)) => {
                    let mut used = BTreeSet::new();
                    self.keys_of_workings(&mut used);
                    for (key, _) in all.iter().filter(|(key, _)| !used.contains(key)) {
                        line(&path, &working(key, value, ""), lines);
                    }
                }
                _ => value.write(&path, workings, lines),
            }
        }
    }

    /// As shown, to the last digit, and how it came about.
    fn figure(&self, workings: &Self) -> String {
        let part = |before: &str, name: &str| {
            self.get(name).map(|value| format!("{before}{}", value.bare())).unwrap_or_default()
        };
        let shown = part("", "text") + &part(" ", "doubt_text");
        let unit = part(" ", "unit");
        let unit = if unit == " 1" { "" } else { &unit };
        let mut parts = vec![part("", "si") + &part(" ± ", "doubt_si") + unit];
        if let Self::Fields(fields) = self {
            for (name, value) in fields.iter().filter(|(name, _)| !FIGURE.contains(&name.as_str()))
            {
                parts.push(match (name.as_str(), value) {
                    ("working", Self::Text(key)) => working(key, workings, &shown),
                    _ => format!("{name} {value}"),
                });
            }
        }
        parts.insert(0, shown);
        parts.join(" | ")
    }

    fn keys_of_workings(&self, keys: &mut BTreeSet<String>) {
        match self {
            Self::Fields(fields) => {
                if let Some(Self::Text(key)) = self.get("working") {
                    keys.insert(key.clone());
                }
                for (_, value) in fields {
                    value.keys_of_workings(keys);
                }
            }
            Self::List(items) => items.iter().for_each(|item| item.keys_of_workings(keys)),
            Self::Plain(_) | Self::Text(_) => {}
        }
    }

    /// Without quotes, in one line.
    fn bare(&self) -> String {
        match self {
            Self::Text(text) => text.replace('\\', "\\\\").replace('\n', "\\n"),
            _ => self.to_string(),
        }
    }
}

/// In one line, texts in quotes.
impl fmt::Display for Tree {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Plain(plain) => out.write_str(plain),
            Self::Text(_) => write!(out, "\"{}\"", self.bare()),
            Self::List(items) => write!(out, "[{}]", joined(items)),
            Self::Fields(fields) => write!(out, "{{{}}}", named(fields)),
        }
    }
}

fn line(path: &str, said: &str, lines: &mut String) {
    let path = if path.is_empty() { "all" } else { path };
    let gap = if said.is_empty() { "" } else { " " };
    lines.extend([path, " |", gap, said, "\n"]);
}

/// Formula, what was put in, and source; what came out only where the figure does not show it.
fn working(key: &str, workings: &Tree, shown: &str) -> String {
    let Some(Tree::Fields(fields)) = workings.get(key) else { return format!("no working {key}") };
    let said = fields.iter().filter_map(|(name, value)| match (name.as_str(), value) {
        // The letters have the numbers that are put in.
        ("letters", _) => None,
        ("result", Tree::Text(result)) if result == shown => None,
        ("result", _) => Some(format!("= {}", value.bare())),
        _ => Some(value.bare()),
    });
    said.collect::<Vec<_>>().join(" | ")
}

fn named<'f>(fields: impl IntoIterator<Item = &'f Field>) -> String {
    joined(fields.into_iter().map(|(name, value)| format!("{name} {value}")))
}

fn joined(parts: impl IntoIterator<Item = impl fmt::Display>) -> String {
    let parts: Vec<String> = parts.into_iter().map(|part| part.to_string()).collect();
    parts.join(", ")
}

/// What each item of a list is called in its path.
fn names(items: &[Tree]) -> Vec<String> {
    let by = |name: &&str| {
        let called: Vec<String> =
            items.iter().filter_map(|item| item.get(name)).map(Tree::bare).collect();
        let all_differ = called.iter().collect::<BTreeSet<_>>().len() == items.len();
        all_differ.then_some(called)
    };
    NAMES.iter().find_map(by).unwrap_or_else(|| (0..items.len()).map(|at| at.to_string()).collect())
}

impl<'de> Deserialize<'de> for Tree {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        from.deserialize_any(Reader)
    }
}

struct Reader;

impl<'de> Visitor<'de> for Reader {
    type Value = Tree;

    fn expecting(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str("a JSON value")
    }

    fn visit_unit<E>(self) -> Result<Tree, E> {
        Ok(Tree::Plain("null".to_owned()))
    }

    fn visit_bool<E>(self, value: bool) -> Result<Tree, E> {
        Ok(Tree::Plain(value.to_string()))
    }

    fn visit_u64<E>(self, value: u64) -> Result<Tree, E> {
        Ok(Tree::Plain(value.to_string()))
    }

    fn visit_i64<E>(self, value: i64) -> Result<Tree, E> {
        Ok(Tree::Plain(value.to_string()))
    }

    /// Whole numbers as JavaScript writes them, so that its reports have the same lines.
    fn visit_f64<E>(self, value: f64) -> Result<Tree, E> {
        let text = format!("{:?}", value + 0.0);
        Ok(Tree::Plain(text.strip_suffix(".0").unwrap_or(&text).to_owned()))
    }

    fn visit_str<E>(self, value: &str) -> Result<Tree, E> {
        Ok(Tree::Text(value.to_owned()))
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut from: A) -> Result<Tree, A::Error> {
        let mut items = Vec::new();
        while let Some(item) = from.next_element()? {
            items.push(item);
        }
        Ok(Tree::List(items))
    }

    fn visit_map<A: MapAccess<'de>>(self, mut from: A) -> Result<Tree, A::Error> {
        let mut fields = Vec::new();
        while let Some(field) = from.next_entry()? {
            fields.push(field);
        }
        Ok(Tree::Fields(fields))
    }
}
