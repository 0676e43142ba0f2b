//! The rows of a job's fields as data: for the schema, for the page that offers their labels and words, and
//! for tests that write a text of any kind into each field.

use super::field::{
    Amount, AmountTolerance, ByName, Condition, Count, Date, DeadTurns, HeightOrLoad, Length,
    LengthTolerance, Many, Object, OfSteel, OfTape, Plain, Taped, Unread, Whole, Word,
};
use crate::bounds::{self, Bound};
use crate::quantity::{Kind, Readable, System};
use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};
use serde_json::{Map, Value, json};
use std::fmt;

/// A field of an object.
#[derive(Clone, Debug)]
pub struct Row {
    /// Its name in the file.
    pub name: &'static str,
    /// What a person calls it.
    pub label: &'static str,
    /// What it says.
    pub about: &'static str,
    /// What may stand there.
    pub takes: Takes,
}

/// An object whose fields are rows.
pub trait Listed: JsonSchema {
    /// What it is called here.
    const NAME: &str;

    /// Its fields.
    fn rows() -> Vec<Row>;
}

/// A kind of field that says what it takes.
pub(crate) trait Shown {
    fn takes(&self) -> Takes;
}

macro_rules! takes {
    ($([$($generics:tt)*] $kind:ty: |$this:pat_param| $takes:expr;)+) => {$(
        impl<$($generics)*> Shown for $kind {
            fn takes(&self) -> Takes {
                let $this = self;
                $takes
            }
        }
    )+};
}

takes! {
    [] Plain: |_| Takes::Text;
    [] Date: |_| Takes::Date;
    [] Condition: |_| Takes::Words { words: CONDITIONS.to_vec(), others: true };
    [T: Copy] Word<T>: |Word(words)| Takes::Words {
        words: words.iter().map(|(word, _, name)| (*word, *name)).collect(),
        others: false,
    };
    [] OfSteel: |_| Takes::OfTables("steels");
    [] OfTape: |_| Takes::OfTables("tape classes");
    [] Taped: |Taped(bound)| Takes::Quantity(Range::of_length(bound));
    [] Length: |Length(bound)| Takes::Quantity(Range::of_length(bound));
    [K: Readable] Amount<K>: |Amount(bound)| Takes::Quantity(Range::of(bound));
    [] Count: |Count(bound)| Takes::Count(Range::of(bound));
    [] DeadTurns: |DeadTurns(bound)| Takes::Doubted(Range::of(bound));
    [] LengthTolerance: |LengthTolerance(bound)| Takes::Tolerance(Range::of(bound));
    [K: Readable] AmountTolerance<K>: |AmountTolerance(bound)| Takes::Tolerance(Range::of(bound));
    [] HeightOrLoad: |_| {
        Takes::HeightOrLoad([Range::of(&bounds::HEIGHT), Range::of(&bounds::LOAD)])
    };
    [] ByName: |_| Takes::ByName;
    [] Whole: |_| Takes::Whole;
    [K: Shown] Many<K>: |Many(items)| Takes::List(Box::new(items.takes()));
    [K: Shown] Unread<K>: |Unread(items)| Takes::List(Box::new(items.takes()));
    [T: Listed] Object<T>: |_| Takes::Object {
        name: T::NAME,
        rows: T::rows,
        schema: |generator| generator.subschema_for::<T>(),
    };
}

/// What a coil may look like; any other word will do.
const CONDITIONS: [(&str, &str); 4] =
    [("sound", "Sound"), ("cracked", "Cracked"), ("pitted", "Pitted"), ("broken", "Broken")];

/// What a field takes.
#[derive(Clone)]
pub enum Takes {
    /// Any text.
    Text,
    /// A date, year first.
    Date,
    /// Words, each with its name for people.
    Words {
        /// The words.
        words: Vec<(&'static str, &'static str)>,
        /// Whether any other will do.
        others: bool,
    },
    /// A word of these tables.
    OfTables(&'static str),
    /// A quantity.
    Quantity(Range),
    /// A whole number.
    Count(Range),
    /// A number that may have a doubt of its own behind it.
    Doubted(Range),
    /// How far a quantity may be off, either way or up and down apart.
    Tolerance(Range),
    /// A height or a load.
    HeightOrLoad([Range; 2]),
    /// An object.
    Object {
        /// What it is called in the schema.
        name: &'static str,
        /// Its fields.
        rows: fn() -> Vec<Row>,
        /// Its schema.
        schema: fn(&mut SchemaGenerator) -> Schema,
    },
    /// A list of such.
    List(Box<Takes>),
    /// Texts, each by a name that somebody wrote.
    ByName,
    /// A whole job, as its own file has it.
    Whole,
}

/// The least and the most that a quantity may be, in either system: inches first.
#[derive(Clone, Debug)]
pub struct Range {
    /// What it is, with its limits.
    pub sentence: [String; 2],
    /// The least, as text.
    pub least: [String; 2],
    /// The most, as text.
    pub most: [String; 2],
    /// A text that will do.
    pub example: [&'static str; 2],
    /// Whether it is a length, which is written with the keys of a tape.
    pub is_length: bool,
}

impl Range {
    pub(crate) fn of<K: Kind>(bound: &'static Bound<K>) -> Self {
        let systems = [System::Inch, System::Metric];
        Self {
            sentence: systems.map(|system| bound.sentence(system)),
            least: systems.map(|system| bound.row.least(system)),
            most: systems.map(|system| bound.row.most(system)),
            example: systems.map(|system| bound.example(system)),
            is_length: false,
        }
    }

    fn of_length<K: Kind>(bound: &'static Bound<K>) -> Self {
        Self { is_length: true, ..Self::of(bound) }
    }
}

impl fmt::Debug for Takes {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:?}", self.sentence())
    }
}

impl Takes {
    /// What may stand there, as the end of a sentence; none where that goes without saying.
    #[must_use]
    pub fn sentence(&self) -> Option<String> {
        let either = |range: &Range| {
            let [inch, metric] = &range.sentence;
            if inch == metric { inch.clone() } else { format!("{inch}, or {metric}") }
        };
        Some(match self {
            Self::Date => "a date".to_owned(),
            Self::OfTables(of) => format!("a word of the {of}"),
            Self::Quantity(range) => either(range),
            Self::Count(range) => format!("{}, whole", either(range)),
            Self::Doubted(range) => {
                format!("{}, and a doubt of its own behind ± where it has one", either(range))
            }
            Self::Tolerance(range) => format!("{}, either way or up and down apart", either(range)),
            Self::HeightOrLoad([height, load]) => {
                format!("{}; or {}; or `solid` or `free`", either(height), either(load))
            }
            _ => return None,
        })
    }

    /// Texts that will do.
    #[must_use]
    pub fn examples(&self) -> Vec<&str> {
        let mut examples = match self {
            Self::Words { words, .. } => words.iter().map(|(word, _)| *word).collect(),
            Self::Quantity(of) | Self::Count(of) | Self::Doubted(of) | Self::Tolerance(of) => {
                of.example.to_vec()
            }
            Self::HeightOrLoad(ranges) => ranges.iter().flat_map(|range| range.example).collect(),
            Self::Date => vec!["2026-05-02"],
            _ => Vec::new(),
        };
        examples.dedup();
        examples
    }

    fn schema(&self, generator: &mut SchemaGenerator) -> Schema {
        match self {
            Self::Object { schema, .. } => schema(generator),
            Self::List(items) => {
                let items = items.schema(generator);
                json_schema!({ "type": "array", "items": items })
            }
            Self::Whole => json_schema!({ "type": "object" }),
            Self::ByName => {
                json_schema!({ "type": "object", "additionalProperties": { "type": "string" } })
            }
            text => {
                let mut schema = json_schema!({ "type": "string" });
                let examples = text.examples();
                if !examples.is_empty() {
                    schema.insert("examples".into(), json!(examples));
                }
                schema
            }
        }
    }
}

/// The schema of an object with such fields.
pub(crate) fn schema(generator: &mut SchemaGenerator, about: &str, rows: &[Row]) -> Schema {
    let mut properties = Map::new();
    for row in rows {
        let mut schema = row.takes.schema(generator);
        let of = match &row.takes {
            Takes::List(items) => items.sentence(),
            takes => takes.sentence(),
        };
        let takes = of.map(|of| format!(" Takes {of}.")).unwrap_or_default();
        schema.insert("description".into(), format!("{}{takes}", row.about).into());
        properties.insert(row.name.to_owned(), schema.into());
    }
    json_schema!({
        "description": about,
        "type": "object",
        "properties": Value::Object(properties),
        "additionalProperties": true,
    })
}
