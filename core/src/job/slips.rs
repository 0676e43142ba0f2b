//! Readings that no doubt explains: a slipped inch, two digits that changed places.

use super::coil::Coil;
use super::figures::{Format, text};
use super::seat::Instrument;
use super::taped::{Taken, Taped};
use crate::bounds;
use crate::quantity::{Length, System, unit};
use crate::reading::{Interval, Reading};

/// How many standard uncertainties of one reading, beyond the limits, a reading may stand off.
const FAR: f64 = 5.0;
/// A reading that is no farther off than this is no slip: a tape is misread by more, and a coil that has
/// taken a set may be off by as much (common practice, no source).
fn least_slip(system: System) -> Length {
    match system {
        System::Inch => Length::new::<unit::inch>(0.25),
        System::Metric => Length::new::<unit::millimeter>(5.0),
    }
}

/// By how many whole inches, or centimetres, a tape is misread: the next figures, the next ten, a foot.
const SLIPS: [f64; 4] = [1.0, 2.0, 10.0, 12.0];

/// The readings of a coil, parted into those that a verdict may rest on and the others.
pub(crate) struct Weighed<'t> {
    pub(crate) kept: Vec<&'t Taken>,
    pub(crate) questioned: Vec<Questioned<'t>>,
}

/// A reading on which no verdict rests until it is read again or confirmed.
pub(crate) struct Questioned<'t> {
    pub(crate) taken: &'t Taken,
    /// What it should agree with, and its name.
    from: Length,
    name: &'static str,
    /// What it may have been.
    likely: Option<Length>,
}

impl<'t> Weighed<'t> {
    /// A reading is questioned where it is farther from what it should agree with than the limits and
    /// five times its doubt, and than the least slip. It should agree with half of the other readings, or else with the one that
    /// is nearest to the book and near it; the book alone is asked where there is no other.
    pub(crate) fn of(taped: &'t Taped, drawn: &Coil, instrument: &Instrument) -> Self {
        let all = &taped.readings;
        let reach = |taken: &Taken| {
            let doubt = instrument.measured(&[taken.said])?.doubt();
            let least = least_slip(taken.reading.system());
            let reach = allowed(drawn).unwrap_or(least) + doubt * FAR;
            Some(if reach > least { reach } else { least })
        };
        let is_near = |taken: &Taken, to: Length| {
            let off = (taken.said.estimate() - to).abs();
            reach(taken).is_none_or(|reach| off <= reach)
        };
        let is_backed = |taken: &Taken| {
            let others = all.iter().filter(|other| other.place != taken.place);
            let agree = others.filter(|other| is_near(taken, other.said.estimate())).count();
            all.len() > 1 && 2 * agree + 1 >= all.len()
        };
        let anchor = drawn.free().and_then(|book| {
            let off = |taken: &&Taken| (taken.said.estimate() - book).value.abs();
            let nearest = all.iter().min_by(|a, b| off(a).total_cmp(&off(b)))?;
            is_near(nearest, book).then(|| nearest.said.estimate())
        });
        let is_confirmed = |taken: &Taken| taped.confirmed == Some(taken.reading.length());
        let mut weighed = Self { kept: Vec::new(), questioned: Vec::new() };
        for taken in all {
            let (from, name) = match (anchor, drawn.free()) {
                (Some(anchor), _) => (anchor, "the reading nearest the book figure"),
                (None, Some(book)) => (book, "the book figure"),
                (None, None) => (mean_of_others(all, taken), "the other readings"),
            };
            if is_confirmed(taken) || is_backed(taken) || is_near(taken, from) {
                weighed.kept.push(taken);
            } else {
                let likely = likely(taken, from, reach(taken).unwrap_or_default());
                weighed.questioned.push(Questioned { taken, from, name, likely });
            }
        }
        weighed
    }

    /// What the readings that are kept say.
    pub(crate) fn intervals(&self) -> Vec<Interval> {
        self.kept.iter().map(|taken| taken.said).collect()
    }
}

impl Questioned<'_> {
    /// `13 1/2 is 1 11/16 in under the reading nearest the book figure, more than any doubt explains.`
    pub(crate) fn sentence(&self, format: Format) -> String {
        let off = self.taken.reading.length() - self.from;
        let side = if off.value < 0.0 { "under" } else { "over" };
        let size = format.fine_text(off.abs());
        let likely = self.likely.map_or_else(String::new, |likely| {
            text!(" It may have been {}.", format.fine_text(likely))
        });
        text!(
            "{} is {size} {side} {}, more than any doubt explains.{likely} Read it again, or confirm it: until then it is left out of the verdict.",
            self.taken.text,
            self.name
        )
    }
}

/// How far from its book figure a coil may be, where the book has a limit.
fn allowed(drawn: &Coil) -> Option<Length> {
    let (book, limits) = (drawn.free()?, drawn.limits?);
    let off = [limits.least(), limits.most()].map(|limit| limit.map(|limit| (limit - book).abs()));
    off.into_iter().flatten().reduce(|a, b| if b > a { b } else { a })
}

/// The mean of the other readings; the reading itself where there is none.
fn mean_of_others(all: &[Taken], taken: &Taken) -> Length {
    let (mut sum, mut count) = (Length::default(), 0.0);
    for other in all.iter().filter(|other| other.place != taken.place) {
        sum += other.said.estimate();
        count += 1.0;
    }
    if count > 0.0 { sum / count } else { taken.said.estimate() }
}

/// What a reading may have been: the nearest within reach that is a slip away from it.
fn likely(taken: &Taken, from: Length, reach: Length) -> Option<Length> {
    let step = match taken.reading.system() {
        System::Inch => Length::new::<unit::inch>(1.0),
        System::Metric => Length::new::<unit::millimeter>(10.0),
    };
    let slipped = SLIPS.into_iter().flat_map(|by| [step * by, step * -by]);
    let slipped = slipped.map(|by| taken.reading.length() + by);
    let off = |length: &Length| (*length - from).abs();
    let could = swapped(taken).chain(slipped).filter(|length| off(length) <= reach);
    could.reduce(|a, b| if off(&b) < off(&a) { b } else { a })
}

/// The readings that come of two neighbouring digits changing places: `15 3/16` of `51 3/16`.
fn swapped(taken: &Taken) -> impl Iterator<Item = Length> {
    let system = taken.reading.system();
    (1..taken.text.len()).filter_map(move |at| {
        let mut letters = taken.text.clone().into_bytes();
        let pair = letters.get_mut(at - 1..=at)?;
        if !pair.iter().all(u8::is_ascii_digit) {
            return None;
        }
        pair.rotate_left(1);
        let text = String::from_utf8(letters).ok()?;
        Reading::parse(&text, system, &bounds::READING).ok().map(|reading| reading.length())
    })
}
