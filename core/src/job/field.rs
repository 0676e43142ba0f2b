//! What a field of a job takes: how its text is read, what it becomes where a bare number changes its
//! unit, and which words may stand there. A row of `input` names one of these kinds for each field.

use super::entry::{Entry, Expected, List, Text, Texts};
use super::problem::Path;
use super::question::{self, Question};
use super::report::Problem;
use super::tolerance::{self, Off, Tolerance};
use crate::bounds::{self, Bound};
use crate::coil::ends::DEAD_TURNS_DOUBT;
use crate::drawing::{Given, dead_within};
use crate::material::Steel;
use crate::measured::TapeClass;
use crate::quantity::{self, Readable, Refusal, System, Turns};
use crate::reading;
use crate::tables::Tables;
use serde_json::{Map, Value};
pub(crate) use std::marker::PhantomData as Object;

/// A field of an object: its name, its kind, and what is written there.
pub(crate) struct Field<'e, K: Kind> {
    pub(crate) name: &'e str,
    pub(crate) kind: K,
    pub(crate) entry: &'e Entry<K::Held>,
}

#[expect(
    clippy::expl_impl_clone_on_copy,
    reason = "a derived one would ask for a copy of what it holds"
)]
impl<K: Kind> Clone for Field<'_, K> {
    fn clone(&self) -> Self {
        *self
    }
}

impl<K: Kind> Copy for Field<'_, K> {}

impl<'e, K: Kind> Field<'e, K> {
    /// What stands at a path of its own.
    pub(crate) fn here(kind: K, entry: &'e Entry<K::Held>) -> Self {
        Self { name: "", kind, entry }
    }

    /// Where it stands in an object that stands there.
    pub(crate) fn path(&self, at: &Path) -> Path {
        at.field(self.name)
    }
}

impl<'e, K: Reads> Field<'e, K> {
    /// What is written, without blanks round it.
    pub(crate) fn written(&self) -> &'e str {
        self.entry.written()
    }

    /// What it says; none where it says nothing that can be used. No word of the tables is known to it.
    pub(crate) fn value(&self, system: System) -> Option<K::Value> {
        let tables = Tables::NONE;
        let spot = Spot { at: &Path::default(), name: self.name, system, tables: &tables };
        let text = Some(self.written()).filter(|text| !text.is_empty())?;
        self.kind.read(text, &spot).ok()
    }

    /// The same text with its unit, where a bare number would mean something else in the other system.
    pub(crate) fn spelt(&self, from: System) -> Option<String> {
        self.kind.spell_unit(self.written(), from)
    }
}

/// Where a text stands, and what it is read by.
pub(crate) struct Spot<'a> {
    pub(crate) at: &'a Path,
    pub(crate) name: &'a str,
    pub(crate) system: System,
    pub(crate) tables: &'a Tables<'a>,
}

impl Spot<'_> {
    fn path(&self) -> Path {
        self.at.field(self.name)
    }

    fn taken<T>(&self, read: Result<T, Refusal>) -> Result<T, Box<Problem>> {
        read.map_err(|refusal| Box::new(Problem::refused(&self.path(), &refusal)))
    }

    pub(crate) fn refused(
        &self,
        code: &'static str,
        read: &str,
        expected: &str,
        why: &str,
        example: &str,
    ) -> Box<Problem> {
        Box::new(Problem::new(&self.path(), code, read, expected, why, example))
    }
}

/// What stands in a field of a kind, where it is as expected.
pub trait Holds: Copy {
    /// That type.
    type Held;
}

/// A kind of field.
pub(crate) trait Kind: Holds<Held: Expected> {
    /// Shows every text of a field.
    fn visit(field: Field<'_, Self>, at: &Path, visitor: &mut impl Visitor);
}

/// A kind whose fields hold a text, and what is read from it.
pub(crate) trait Reads: Copy {
    type Value;

    /// Reads a text that is not empty and has no blanks round it.
    fn read(self, text: &str, spot: &Spot<'_>) -> Result<Self::Value, Box<Problem>>;

    /// The text with its unit, where a bare number would mean something else in the other system.
    fn spell_unit(self, _text: &str, _from: System) -> Option<String> {
        None
    }

    /// The system whose unit is written with it; none where it is bare or has none.
    fn written_in(self, _text: &str) -> Option<System> {
        None
    }
}

/// An object of a job, each of its fields by a row.
pub(crate) trait Rows: Expected {
    /// Shows every text of its fields.
    fn visit(&self, at: &Path, visitor: &mut impl Visitor);
}

/// Whatever looks at every text of an object.
pub(crate) trait Visitor {
    fn text<K: Reads>(&mut self, at: &Path, field: Field<'_, K>);

    /// Something else in a field that holds fields or items.
    fn odd(&mut self, _path: &Path, _value: &Value, _belongs: &Belongs) {}
}

/// What belongs in a field, as a problem names it where something else stands there.
pub(crate) struct Belongs {
    pub(crate) code: &'static str,
    pub(crate) expected: &'static str,
    pub(crate) example: &'static str,
}

pub(crate) const TEXT: Belongs =
    Belongs { code: "not-text", expected: "text", example: "\"13 7/8\"" };

pub(crate) const LIST: Belongs = Belongs { code: "not-list", expected: "a list", example: "[ ]" };

pub(crate) const OBJECT: Belongs =
    Belongs { code: "not-object", expected: "an object with named fields", example: "{ }" };

/// What a field holds; what is odd in it goes to the visitor.
fn held<'e, T>(
    entry: &'e Entry<T>,
    path: &Path,
    visitor: &mut impl Visitor,
    belongs: &Belongs,
) -> Option<&'e T> {
    if let Entry::Odd(value) = entry {
        visitor.odd(path, value, belongs);
    }
    entry.given()
}

impl<K: Reads> Holds for K {
    type Held = Text;
}

impl<K: Reads> Kind for K {
    fn visit(field: Field<'_, Self>, at: &Path, visitor: &mut impl Visitor) {
        visitor.text(at, field);
    }
}

impl<T: Rows> Holds for Object<T> {
    type Held = T;
}

impl<T: Rows> Kind for Object<T> {
    fn visit(field: Field<'_, Self>, at: &Path, visitor: &mut impl Visitor) {
        let path = field.path(at);
        if let Some(object) = held(field.entry, &path, visitor, &OBJECT) {
            object.visit(&path, visitor);
        }
    }
}

/// A list, each item of a kind.
#[derive(Clone, Copy)]
pub struct Many<K>(pub(crate) K);

impl<K: Kind> Holds for Many<K> {
    type Held = List<K::Held>;
}

impl<K: Kind> Kind for Many<K> {
    fn visit(field: Field<'_, Self>, at: &Path, visitor: &mut impl Visitor) {
        let path = field.path(at);
        let items = held(field.entry, &path, visitor, &LIST);
        for (index, item) in items.into_iter().flat_map(|list| &list.0).enumerate() {
            K::visit(Field::here(field.kind.0, item), &path.item(index), visitor);
        }
    }
}

/// A list that is kept as its file has it, and read where it is asked for: a first look at coils has no code for
/// what stands in it.
#[derive(Clone, Copy)]
pub struct Unread<K>(pub(crate) K);

impl<K: Kind> Holds for Unread<K> {
    type Held = Value;
}

impl<K: Kind> Kind for Unread<K> {
    fn visit(field: Field<'_, Self>, at: &Path, visitor: &mut impl Visitor) {
        let Field { name, kind, entry } = field;
        Kind::visit(Field { name, kind: Many(kind.0), entry: &entry.as_list() }, at, visitor);
    }
}

/// Texts, each by a name that somebody wrote.
#[derive(Clone, Copy)]
pub struct ByName;

impl Holds for ByName {
    type Held = Texts;
}

impl Kind for ByName {
    fn visit(field: Field<'_, Self>, at: &Path, visitor: &mut impl Visitor) {
        let path = field.path(at);
        let texts = held(field.entry, &path, visitor, &OBJECT);
        for (name, entry) in texts.into_iter().flat_map(|texts| &texts.0) {
            visitor.text(&path, Field { name, kind: Plain, entry });
        }
    }
}

/// A job within a job, whole and to the letter, as its own file has it: nothing of it is a field of this one.
#[derive(Clone, Copy)]
pub struct Whole;

impl Holds for Whole {
    type Held = Map<String, Value>;
}

impl Kind for Whole {
    fn visit(field: Field<'_, Self>, at: &Path, visitor: &mut impl Visitor) {
        held(field.entry, &field.path(at), visitor, &OBJECT);
    }
}

/// Any text.
#[derive(Clone, Copy)]
pub struct Plain;

impl Reads for Plain {
    type Value = ();

    fn read(self, _text: &str, _spot: &Spot<'_>) -> Result<(), Box<Problem>> {
        Ok(())
    }
}

/// What a coil looks like, in a word: some are offered, any other will do.
#[derive(Clone, Copy)]
pub struct Condition;

impl Reads for Condition {
    /// What is wrong with it, if anything.
    type Value = Option<String>;

    fn read(self, text: &str, _spot: &Spot<'_>) -> Result<Self::Value, Box<Problem>> {
        Ok(Some(text).filter(|text| !text.eq_ignore_ascii_case("sound")).map(str::to_owned))
    }
}

/// A date of the calendar.
#[derive(Clone, Copy)]
pub struct Date;

impl Reads for Date {
    type Value = ();

    fn read(self, text: &str, spot: &Spot<'_>) -> Result<(), Box<Problem>> {
        let why = "this is no date of the calendar, written year first";
        let refused = || spot.refused("bad-date", text, "a date", why, "2026-05-02");
        is_date(text).then_some(()).ok_or_else(refused)
    }
}

/// One of some words, each with what it means and its name for people.
#[derive(Clone, Copy)]
pub struct Word<T: 'static>(pub(crate) &'static [(&'static str, T, &'static str)]);

impl<T: Copy> Reads for Word<T> {
    type Value = T;

    fn read(self, text: &str, spot: &Spot<'_>) -> Result<T, Box<Problem>> {
        one_of(text, spot, self.0.iter().map(|(word, value, _)| (*word, *value)))
    }
}

/// A steel, by its word in the tables.
#[derive(Clone, Copy)]
pub struct OfSteel;

impl Reads for OfSteel {
    type Value = Steel;

    fn read(self, text: &str, spot: &Spot<'_>) -> Result<Steel, Box<Problem>> {
        one_of(text, spot, spot.tables.steels.iter().map(|steel| (steel.id(), *steel)))
    }
}

/// A class of tapes, by its word in the tables.
#[derive(Clone, Copy)]
pub struct OfTape;

impl Reads for OfTape {
    type Value = TapeClass;

    fn read(self, text: &str, spot: &Spot<'_>) -> Result<TapeClass, Box<Problem>> {
        one_of(text, spot, spot.tables.tape_classes.iter().map(|class| (class.id(), *class)))
    }
}

/// A length as a tape shows it.
#[derive(Clone, Copy)]
pub struct Taped(pub(crate) &'static Bound<quantity::Length>);

impl Reads for Taped {
    type Value = reading::Reading;

    fn read(self, text: &str, spot: &Spot<'_>) -> Result<reading::Reading, Box<Problem>> {
        spot.taken(reading::Reading::parse(text, spot.system, self.0))
    }

    fn spell_unit(self, text: &str, from: System) -> Option<String> {
        reading::spell_unit(text, from)
    }

    fn written_in(self, text: &str) -> Option<System> {
        reading::written_in(text)
    }
}

/// A length.
#[derive(Clone, Copy)]
pub struct Length(pub(crate) &'static Bound<quantity::Length>);

impl Reads for Length {
    type Value = quantity::Length;

    fn read(self, text: &str, spot: &Spot<'_>) -> Result<quantity::Length, Box<Problem>> {
        Taped(self.0).read(text, spot).map(|reading| reading.length())
    }

    fn spell_unit(self, text: &str, from: System) -> Option<String> {
        reading::spell_unit(text, from)
    }

    fn written_in(self, text: &str) -> Option<System> {
        reading::written_in(text)
    }
}

/// Any other quantity.
#[derive(Clone, Copy)]
pub struct Amount<K: 'static>(pub(crate) &'static Bound<K>);

impl<K: Readable> Reads for Amount<K> {
    type Value = K::Value;

    fn read(self, text: &str, spot: &Spot<'_>) -> Result<K::Value, Box<Problem>> {
        spot.taken(quantity::read(text, spot.system, self.0))
    }

    fn spell_unit(self, text: &str, from: System) -> Option<String> {
        quantity::spell_unit(text, from, self.0)
    }

    fn written_in(self, text: &str) -> Option<System> {
        quantity::written_in(text, self.0)
    }
}

/// How many.
#[derive(Clone, Copy)]
pub struct Count(pub(crate) &'static Bound<Turns>);

impl Reads for Count {
    type Value = u32;

    fn read(self, text: &str, spot: &Spot<'_>) -> Result<u32, Box<Problem>> {
        let count = Amount(self.0).read(text, spot)?;
        let whole = quantity::write_number(count, 7).replace('\u{202f}', "").parse();
        let why = "so many pieces cannot be made";
        let example = self.0.example(spot.system);
        whole.map_err(|_| spot.refused("not-whole", text, "a whole number", why, example))
    }
}

/// Turns that do not deflect, with a doubt of their own behind `±` where one is.
#[derive(Clone, Copy)]
pub struct DeadTurns(pub(crate) &'static Bound<Turns>);

impl Reads for DeadTurns {
    type Value = Given<f64>;

    fn read(self, text: &str, spot: &Spot<'_>) -> Result<Given<f64>, Box<Problem>> {
        let parts = text.split_once('±').or_else(|| plus_minus(text));
        let parts = parts.map(|(count, half)| (count.trim(), half.trim()));
        let whole = parts.filter(|(count, half)| !count.is_empty() && !half.is_empty());
        let number = |text| Amount(self.0).read(text, spot);
        let (count, half_width) = match whole {
            Some((count, half_width)) => (number(count)?, number(half_width)?),
            None => (number(text)?, DEAD_TURNS_DOUBT),
        };
        Ok(dead_within(count, half_width).unwrap_or(Given::exact(count)))
    }
}

/// How far a length may be off.
#[derive(Clone, Copy)]
pub struct LengthTolerance(pub(crate) &'static Bound<quantity::Length>);

impl Reads for LengthTolerance {
    type Value = Tolerance<quantity::Length>;

    fn read(self, text: &str, spot: &Spot<'_>) -> Result<Self::Value, Box<Problem>> {
        let example = match spot.system {
            System::Inch => "+1/16 -0",
            System::Metric => "+1.5 -0",
        };
        tolerance::read(text, spot, example, |part| Length(self.0).read(part, spot).map(Off::By))
    }

    fn spell_unit(self, text: &str, from: System) -> Option<String> {
        tolerance::spell(text, |part| Length(self.0).spell_unit(part, from))
    }
}

/// How far any other quantity may be off; of parts of it in per cent, too.
#[derive(Clone, Copy)]
pub struct AmountTolerance<K: 'static>(pub(crate) &'static Bound<K>);

impl<K: Readable> Reads for AmountTolerance<K> {
    type Value = Tolerance<K::Value>;

    fn read(self, text: &str, spot: &Spot<'_>) -> Result<Self::Value, Box<Problem>> {
        tolerance::read(text, spot, "+10 -5 %", |part| {
            if part.ends_with('%') {
                Amount(&bounds::WITHIN).read(part, spot).map(Off::Part)
            } else {
                Amount(self.0).read(part, spot).map(Off::By)
            }
        })
    }

    fn spell_unit(self, text: &str, from: System) -> Option<String> {
        tolerance::spell(text, |part| Amount(self.0).spell_unit(part, from))
    }
}

/// A height or a load that is asked for, or the word `solid` or `free`.
#[derive(Clone, Copy)]
pub struct HeightOrLoad;

impl Reads for HeightOrLoad {
    type Value = Question;

    fn read(self, text: &str, spot: &Spot<'_>) -> Result<Question, Box<Problem>> {
        question::read(text, spot.system, &spot.path())
    }

    /// A bare number is a height.
    fn spell_unit(self, text: &str, from: System) -> Option<String> {
        reading::spell_unit(text, from)
    }
}

/// What a word means.
fn one_of<T>(
    text: &str,
    spot: &Spot<'_>,
    words: impl Iterator<Item = (&'static str, T)> + Clone,
) -> Result<T, Box<Problem>> {
    let found = words.clone().find(|(word, _)| word.eq_ignore_ascii_case(text));
    found.map(|(_, value)| value).ok_or_else(|| {
        let list = quantity::joined(words.clone().map(|(word, _)| word), ", ");
        let example = words.map(|(word, _)| word).next().unwrap_or_default();
        let expected = format!("one of {list}");
        spot.refused("unknown-word", text, &expected, &format!("this is none of {list}"), example)
    })
}

/// Both sides of `+/-`, the sign that every keyboard has.
fn plus_minus(text: &str) -> Option<(&str, &str)> {
    let (before, after) = text.split_once('/')?;
    Some((before.strip_suffix('+')?, after.strip_prefix('-')?))
}

fn is_date(text: &str) -> bool {
    let mut parts = text.split('-').map(|part| (part.len(), part.parse::<u32>().ok()));
    let (Some((4, Some(year))), Some((2, Some(month))), Some((2, Some(day))), None) =
        (parts.next(), parts.next(), parts.next(), parts.next())
    else {
        return false;
    };
    let leap = year % 4 == 0 && (year % 100 != 0 || year % 400 == 0);
    let days = match month {
        1 | 3 | 5 | 7 | 8 | 10 | 12 => 31,
        4 | 6 | 9 | 11 => 30,
        2 if leap => 29,
        2 => 28,
        _ => 0,
    };
    (1..=days).contains(&day)
}
