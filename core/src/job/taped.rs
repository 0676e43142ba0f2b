//! What somebody wrote of a coil that is there: what the tape said place by place, and what they saw.

use super::desk::Desk;
use super::entry::{Entry, List, Text};
use super::input::{BenchCoil, Seat};
use super::problem::Path;
use crate::bounds;
use crate::quantity::Length;
use crate::reading::{Interval, Reading};

/// The word of a coil that nothing is wrong with.
const SOUND: &str = "sound";

/// The fields of a coil that is there, in a seat or on the bench.
pub(crate) struct Written<'e> {
    readings: &'e Entry<List<Text>>,
    condition: &'e Entry<Text>,
    confirmed: &'e Entry<Text>,
}

impl<'e> From<&'e Seat> for Written<'e> {
    fn from(seat: &'e Seat) -> Self {
        let Seat { readings, condition, confirmed, .. } = seat;
        Self { readings, condition, confirmed }
    }
}

impl<'e> From<&'e BenchCoil> for Written<'e> {
    fn from(coil: &'e BenchCoil) -> Self {
        let BenchCoil { readings, condition, confirmed, .. } = coil;
        Self { readings, condition, confirmed }
    }
}

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
        desk: &mut Desk<'_>,
        at: &Path,
        written: &Written<'_>,
        graduation: Length,
    ) -> Self {
        let list = at.field("readings");
        let mut taped = Self::default();
        for (index, entry) in desk.list(&list, written.readings).iter().enumerate() {
            let at = list.item(index);
            match desk.reading(&at, "", entry, &bounds::READING) {
                Some(reading) => taped.readings.push(Taken {
                    at,
                    place: index + 1,
                    text: entry.written().to_owned(),
                    reading,
                    said: reading.interval(graduation),
                }),
                None => taped.unreadable += usize::from(is_something(entry)),
            }
        }
        let condition = desk.text(at, "condition", written.condition);
        let flaw = condition.filter(|condition| !condition.eq_ignore_ascii_case(SOUND));
        taped.flaw = flaw.map(str::to_owned);
        taped.confirmed = desk.length(at, "confirmed", written.confirmed, &bounds::READING);
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
