//! Refusals and contradictions of a job, each at the path of its field.
//!
//! # Codes
//! Those of a text are [`Reason::code`](crate::quantity::Reason::code)'s. Those of a job:
//!
//! | code | what it means |
//! | --- | --- |
//! | `format-missing`, `format-unknown`, `format-newer` | the file does not say what it is, or it is for a later version |
//! | `not-text`, `not-list`, `not-object` | another kind of JSON value than the field holds |
//! | `too-many-values`, `holds-itself` | an object that no file could hold |
//! | `unknown-word` | not one of the words that the field takes |
//! | `no-such-coil`, `no-such-nest`, `no-such-place` | a name that the job does not have |
//! | `name-missing`, `name-twice` | a coil or nest without a name, or two with one; two weights with one |
//! | `bad-date` | not a date of the calendar |
//! | `no-hole` | the bar fills the coil |
//! | `diameters-disagree` | outside, mean and inside diameter with the bar name different coils |
//! | `too-few-turns` | nothing is left to deflect |
//! | `limits-crossed` | the least allowed is above the most |
//! | `solid-not-below-free` | the coil would be solid at its free height |
//! | `too-many-heights`, `heights-differ`, `too-many-sides` | sizes of a box in its guides that cannot be held against each other |
//! | `opening-under-box`, `liners-too-thick` | an opening narrower than its box, liners that leave no clearance |
//! | `too-few-heights`, `no-height` | taped heights of fewer than three nests, or one that its shim takes all of |
//! | `below-solid` | a height that the nest cannot take |
//! | `too-few-supports`, `same-place`, `in-line` | nests that hold no frame |
//! | `no-weight`, `tips`, `crushed` | a weight that presses nothing, lies outside the nests, or is more than they take |
//! | `no-frame` | a frame is asked for something before it has all that it stands on |
//! | `slack` | a frame that warps too easily to find its rest |
//! | `no-thickness`, `stack-too-thin`, `too-many-stacks`, `shims-refused` | shims of which no plan can be made |
//! | `coils-lacking`, `coils-tied` | too few coils that may be used, or that may not part |
//! | `beam`, `no-axle` | a beam without two boxes and nests between them; a box without one across from it |
//! | `seat-with-together` | one seat is named though a whole nest is replaced |
//! | `contradiction` | what is asked of a replacement or of a coil yet to be drawn contradicts itself, or no spring does it |
//! | `contradicts-sizes` | a rate, a solid height or a load is stated that the sizes cannot give |
//! | `one-sided` | a tolerance of which only one way is written |
//! | `not-whole` | a count that is no whole number |
//! | `apart-of-four` | two distances between nests where other than four stand |
//! | `outside-table` | a length that the tape's class says nothing of |
//!
//! Those of a line of a [table of coils](super::coil_table), beside those of its readings and `no-such-coil`:
//!
//! | code | what it means |
//! | --- | --- |
//! | `header-unknown` | no coil yet, and no line that names the columns |
//! | `column-missing` | the line that names the columns has none for the label, or none for readings |
//! | `line-too-long`, `too-many-readings` | more than a line or a coil takes |
//! | `too-many-columns` | a field for which no column is named |
//! | `bad-quotes` | quotes that are not closed on their line, or something behind the closing one |
//! | `bad-character` | a control character, or one that could not be read |
//! | `label-missing`, `label-twice` | a coil without its mark, or two of one role with one mark |
//! | `coil-missing`, `coil-ambiguous` | no role where the job has not just one coil, or a role that fits several |
//! | `readings-missing` | a coil without a reading |
//! | `readings-apart` | readings of one coil, one of them over twice another |
//! | `bench-full` | the bench takes no more coils |

use super::report::Problem;
use crate::quantity::{self, Refusal};
use crate::say::Message;

/// Where a field stands in a job: `nests[0].seats[1].raise`.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Path(String);

impl Path {
    /// A field of the job itself.
    #[must_use]
    pub fn of(field: &str) -> Self {
        Self(field.to_owned())
    }

    /// A field of what stands here; without a name, what stands here itself.
    #[must_use]
    pub fn field(&self, name: &str) -> Self {
        match (self.0.as_str(), name) {
            (_, "") => self.clone(),
            ("", name) => Self::of(name),
            (here, name) => Self(format!("{here}.{name}")),
        }
    }

    /// An item of the list that stands here.
    #[must_use]
    pub fn item(&self, index: usize) -> Self {
        Self(format!("{}[{index}]", self.0))
    }

    /// The path as text.
    #[must_use]
    pub fn text(&self) -> &str {
        &self.0
    }
}

impl Problem {
    /// A text that was refused.
    #[must_use]
    pub fn refused(path: &Path, refusal: &Refusal) -> Self {
        Self {
            path: path.text().to_owned(),
            code: refusal.code().into(),
            read: refusal.read().to_owned(),
            expected: refusal.expected(),
            message: refusal.to_string(),
            example: refusal.example().to_owned(),
            position: Some(refusal.position()),
        }
    }

    /// What an error says of a field.
    #[must_use]
    pub fn said(path: &Path, code: &'static str, message: &Message, example: &str) -> Self {
        Self {
            path: path.text().to_owned(),
            code: code.into(),
            read: message.read.clone(),
            expected: message.expected.clone(),
            message: message.such_as(example),
            example: example.to_owned(),
            position: None,
        }
    }

    /// Anything else that cannot be used.
    #[must_use]
    pub fn new(
        path: &Path,
        code: &'static str,
        read: &str,
        expected: &str,
        why: &str,
        example: &str,
    ) -> Self {
        let message = if read.is_empty() { why.to_owned() } else { format!("{read} — {why}") };
        Self {
            path: path.text().to_owned(),
            code: code.into(),
            read: read.to_owned(),
            expected: expected.to_owned(),
            message,
            example: example.to_owned(),
            position: None,
        }
    }

    /// A name that is none of those known, or not just one of them.
    pub(crate) fn not_known(
        path: &Path,
        name: &str,
        known: &[String],
        code: &'static str,
        why: &str,
    ) -> Self {
        let named: Vec<&str> =
            known.iter().map(String::as_str).filter(|name| !name.is_empty()).collect();
        let expected = match named.as_slice() {
            [] => "a name that stands in the job".to_owned(),
            named => format!("one of {}", quantity::joined(named.iter(), ", ")),
        };
        Self::new(path, code, name, &expected, why, named.first().copied().unwrap_or_default())
    }
}
