//! What somebody wrote of a coil that is there: what the tape said place by place, and what they saw.

use super::context::Context;
use super::entry::{Entry, Text};
use super::field::{self, Condition, Field, Many};
use super::input::{AsideCoil, BenchCoil, FoundCoil, Seat};
use super::problem::Path;
use crate::quantity::Length;
use crate::reading::{Interval, Reading};

/// The fields of a coil that is there, wherever it lies.
pub(crate) struct CoilFields<'e> {
    readings: Field<'e, Many<field::Taped>>,
    condition: Field<'e, Condition>,
    confirmed: Field<'e, field::Length>,
}

macro_rules! written {
    ($($coil:ident),*) => {
        $(impl<'e> From<&'e $coil> for CoilFields<'e> {
            fn from(coil: &'e $coil) -> Self {
                let (condition, confirmed) = (coil.condition(), coil.confirmed());
                Self { readings: coil.readings(), condition, confirmed }
            }
        })*
    };
}

written!(Seat, FoundCoil, BenchCoil, AsideCoil);

/// A coil as far as its fields could be read.
#[derive(Clone, Debug, Default)]
pub(crate) struct Taped {
    pub(crate) readings: Vec<Taken>,
    /// How many more are written that cannot be read.
    pub(crate) unreadable: usize,
    /// What is wrong with it to the eye: `cracked`.
    pub(crate) flaw: Option<String>,
    /// A reading that was questioned, and is so when read again.
    pub(crate) confirmed: Option<Length>,
}

/// One reading.
#[derive(Clone, Debug)]
pub(crate) struct Taken {
    pub(crate) at: Path,
    /// Which place round the coil, from 1.
    pub(crate) place: usize,
    pub(crate) text: String,
    pub(crate) reading: Reading,
    pub(crate) said: Interval,
}

impl Taped {
    pub(crate) fn read(
        context: &mut Context<'_>,
        at: &Path,
        written: &CoilFields<'_>,
        graduation: Length,
    ) -> Self {
        let mut taped = Self::default();
        for (index, (at, field)) in context.list(at, written.readings).enumerate() {
            match context.read(&at, field) {
                Some(reading) => taped.readings.push(Taken {
                    at,
                    place: index + 1,
                    text: field.written().to_owned(),
                    reading,
                    said: reading.interval(graduation),
                }),
                None => taped.unreadable += usize::from(is_something(field.entry)),
            }
        }
        taped.flaw = context.read(at, written.condition).flatten();
        taped.confirmed = context.read(at, written.confirmed);
        taped
    }

    /// How many readings are written, those that cannot be read among them.
    pub(crate) fn written(&self) -> usize {
        self.readings.len() + self.unreadable
    }
}

fn is_something(entry: &Entry<Text>) -> bool {
    matches!(entry, Entry::Odd(_)) || !entry.written().is_empty()
}
