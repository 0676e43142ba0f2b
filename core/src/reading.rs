//! Tape readings: text to an exact length with its lean, and back to text.
//!
//! A mechanic writes `15 3/8 scant`. That is a mark of the tape and a side of it: not a number with
//! an error, but an [`Interval`] in which the length lies. A [`Reading`] keeps just what was
//! written, as an exact rational, so that text → value → text is the identity; a `Length` in
//! floating point comes out of it, and never goes in.
//!
//! ```
//! use coilnest::bounds;
//! use coilnest::quantity::System;
//! use coilnest::reading::{Lean, Reading};
//!
//! let reading = Reading::parse("15-3/8\" scant", System::Inch, &bounds::READING)?;
//! assert_eq!(reading.lean(), Lean::Scant);
//! assert_eq!(reading.to_string(), "15 3/8 in scant");
//!
//! let sixteenth = Reading::parse("1/16", System::Inch, &bounds::GRADUATION)?.length();
//! let says = reading.interval(sixteenth);
//! assert_eq!(says.most(), reading.length());
//! # Ok::<(), coilnest::quantity::Refusal>(())
//! ```
//!
//! # Grammar
//!
//! ```text
//! reading  = [front] [sign] (feet [["-"] inches] | inches | metric | bare) [lean]
//! feet     = number ("'" | "ft" | "foot" | "feet")
//! inches   = number ([lean] "\"" | [lean] "in" | [lean] "inch" | [lean] "inches"); after feet the unit may be left out
//! metric   = decimal [lean] ("mm" | "cm" | "m" | "millimetres" | …)
//! bare     = number                  in the system of the job
//! number   = decimal | whole [joint fraction] | fraction
//! decimal  = digits [("." | ",") digits]
//! joint    = blanks | "-" | nothing, before ⅜ and ³⁄₈
//! fraction = digits "/" digits | "⅜" | "³⁄₈"
//! lean     = word | "-" | "+"
//! word     = front | "minus" | "plus"
//! front    = "scant" | "shy" | "light" | "weak" | "just under"
//!          | "full" | "heavy" | "strong" | "proud" | "just over"
//! sign     = "+" | "-"               "-" only where the bound goes below zero
//! ```
//!
//! Letters may be small or capital; `in.` and `ft.` may have their stop; blanks, dashes, primes,
//! quotes and strokes count in all their typographic forms. `1 200 mm` may have its thousands
//! parted, inches may not: `13 500` is too near to `13 5/…` unfinished.
//!
//! Numbers may stand in words, as a telephone writes what it is told: `thirteen and seven eighths`,
//! `13 and 7/8`, `a hair under fourteen`. They are put into figures first, where they have one meaning.
//!
//! # What is not accepted
//!
//! Each refusal has a code (listed at [`Reason::code`](crate::quantity::Reason::code)), a place, a
//! sentence and an example.
//!
//! - An inch divided other than by halving down to 64: `1/3` is on no tape. The nearest
//!   sixty-fourth is offered.
//! - A fraction of a whole or more (`13 17/16`): more likely a slip than a sum.
//! - A bare fraction in a metric job: a fraction of what?
//! - A comma before exactly three digits (`1,200`), which can be read two ways.
//! - Words with two meanings: `twenty seven sixteenths` is 27/16 or 20 7/16.
//! - `short` and `long`: they are the verdict's words, and on some benches an eighth of an inch.
//! - More than one lean, units that do not go together, twelve inches after feet, anything left over.
//!
//! No standard says how much a scant sixteenth is. That a lean word stands for the half graduation
//! beside the mark is a convention of this crate (common practice, no source).

mod grammar;
mod press;
mod spoken;
#[cfg(test)]
mod tests;
mod write;

pub use press::{press, spell_unit, written_in};
#[cfg(feature = "job")]
pub(crate) use write::write_nearest;
pub use write::{Step, write_inch, write_length, write_mm};

use crate::bounds::Bound;
use crate::quantity::{Fault, Length, Reason, Refusal, System, unit, within};
use fraction::GenericFraction;
use std::fmt;

/// An exact number of millimetres: numerator and denominator unsigned, the sign kept apart.
///
/// An inch is 127/5 mm, a sixty-fourth of it 127/320 mm. The grammar keeps at most 34 digits of a
/// number, so that no sum or product in this module comes near the 38 digits of the storage type.
pub type Millimetres = GenericFraction<u128>;

/// On which side of the mark a reading lies.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum Lean {
    /// Just under the mark.
    Scant,
    /// On the mark.
    #[default]
    Plain,
    /// Just over the mark.
    Full,
}

/// What was read from a tape: the mark, exact, the lean, and the system it was written in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Reading {
    mark: Millimetres,
    lean: Lean,
    system: System,
}

/// Where a reading says that the length lies.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Interval {
    least: Length,
    most: Length,
}

impl Reading {
    /// Reads a text; a bare number takes the system of the job.
    ///
    /// ```
    /// use coilnest::{bounds, quantity::System, reading::Reading};
    ///
    /// for text in ["15 3/8", "15-3/8\"", "1' 3 3/8\"", "15⅜", "15.375", "390.525 mm"] {
    ///     let reading = Reading::parse(text, System::Inch, &bounds::READING)?;
    ///     assert_eq!(*reading.mark().numer().unwrap(), 15621, "15 3/8 in is 15621/40 mm");
    /// }
    /// # Ok::<(), coilnest::quantity::Refusal>(())
    /// ```
    ///
    /// # Errors
    ///
    /// A [`Refusal`] that names the place, if the text is no reading or is out of bounds. The bound
    /// is on the mark, whatever the lean.
    pub fn parse(
        text: &str,
        system: System,
        bound: &'static Bound<Length>,
    ) -> Result<Self, Refusal> {
        let refuse = |fault| refused(text, fault, system, bound);
        let said = spoken::figures(text).map_err(refuse)?;
        let text = said.as_ref();
        let refuse = |fault| refused(text, fault, system, bound);
        let written = grammar::parse(text).map_err(refuse)?;
        let reading = written.reading(text, system).map_err(refuse)?;
        if let Some(at) = written.negative.filter(|_| !bound.row.allows_negative()) {
            return Err(refuse(Fault::new(at, Reason::Negative)));
        }
        within(&bound.row, metres(reading.mark), written.at(), system).map_err(refuse)?;
        Ok(reading)
    }

    /// The mark, exact.
    #[must_use]
    pub fn mark(&self) -> Millimetres {
        self.mark
    }

    /// On which side of the mark it lies.
    #[must_use]
    pub fn lean(&self) -> Lean {
        self.lean
    }

    /// The system of the unit that it was written in, or that a bare number took.
    #[must_use]
    pub fn system(&self) -> System {
        self.system
    }

    /// The mark as a length, the nearest that floating point has. The lean is not in it: see
    /// [`interval`](Self::interval).
    #[must_use]
    pub fn length(&self) -> Length {
        Length::new::<unit::meter>(metres(self.mark))
    }

    /// What the reading says, with marks a graduation g apart: the mark ± g/2 if it is plain, from
    /// the mark − g/2 to the mark if it is scant, from the mark to the mark + g/2 if it is full.
    ///
    /// A lean is one of size: a deviation of −1/16 scant lies nearer zero than −1/16.
    #[must_use]
    pub fn interval(&self, graduation: Length) -> Interval {
        let mark = self.length();
        let half = graduation / 2.0;
        let none = half * 0.0;
        let (under, over) = match self.lean {
            Lean::Scant => (half, none),
            Lean::Plain => (half, half),
            Lean::Full => (none, half),
        };
        if mark.value < 0.0 {
            Interval { least: mark - over, most: mark + under }
        } else {
            Interval { least: mark - under, most: mark + over }
        }
    }
}

impl Interval {
    /// The least that the length can be.
    #[must_use]
    pub fn least(&self) -> Length {
        self.least
    }

    /// The most that the length can be.
    #[must_use]
    pub fn most(&self) -> Length {
        self.most
    }

    /// The estimate: the middle.
    #[must_use]
    pub fn estimate(&self) -> Length {
        (self.least + self.most) / 2.0
    }

    /// Half the width.
    #[must_use]
    pub fn half_width(&self) -> Length {
        (self.most - self.least) / 2.0
    }

    /// The standard uncertainty, the half-width over √3: all of the interval is equally likely.
    ///
    /// Source: JCGM 100:2008, 4.3.7 (from memory).
    #[must_use]
    pub fn standard_uncertainty(&self) -> Length {
        self.half_width() / 3.0_f64.sqrt()
    }
}

/// The reading as the crate writes it: `15 3/8 in scant`, `15.38 in`, `390.5 mm`. It reads back to
/// the same reading, exactly.
impl fmt::Display for Reading {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&write::exact(self))
    }
}

impl fmt::Display for Lean {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Lean::Scant => "scant",
            Lean::Plain => "plain",
            Lean::Full => "full",
        })
    }
}

fn refused(text: &str, fault: Fault, system: System, bound: &'static Bound<Length>) -> Refusal {
    let reads = |meant: &str| Reading::parse(meant, system, bound).is_ok();
    Refusal::new(text, only_what_reads(fault, reads), &bound.row, system)
}

/// Of the two ways to read a comma, offers only what the field takes: inches have no thousands.
fn only_what_reads(fault: Fault, reads: impl Fn(&str) -> bool) -> Fault {
    match fault.reason {
        Reason::CommaAmbiguous { meant, or: Some(or) } if !reads(&meant) => {
            let (meant, or) = if reads(&or) { (or, None) } else { (meant, Some(or)) };
            Fault::new(fault.at, Reason::CommaAmbiguous { meant, or })
        }
        Reason::CommaAmbiguous { meant, or: Some(or) } if !reads(&or) => {
            Fault::new(fault.at, Reason::CommaAmbiguous { meant, or: None })
        }
        _ => fault,
    }
}

/// Millimetres to metres in one division, so that 1/64 in is 0.000 396 875 m to the last bit.
fn metres(mark: Millimetres) -> f64 {
    let (Some(&size), Some(&parts)) = (mark.numer(), mark.denom()) else { return f64::NAN };
    // Beyond 2⁵³ each conversion rounds, to the nearest.
    #[expect(clippy::cast_precision_loss, reason = "the nearest float is what is wanted")]
    let metres = size as f64 / parts.saturating_mul(1000) as f64;
    if mark.is_sign_negative() { -metres } else { metres }
}
