//! Lengths and readings back to text.

use super::{Lean, Reading};
use crate::quantity::{Length, Mixed, System, unit, write_fixed};
use std::fmt::{Display, Write};

/// The part of an inch to which a length is written.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Step {
    /// 1/8 in.
    Eighth,
    /// 1/16 in.
    Sixteenth,
    /// 1/32 in.
    ThirtySecond,
    /// 1/64 in.
    SixtyFourth,
}

impl Step {
    /// All steps, the coarsest first.
    pub const ALL: [Self; 4] =
        [Self::Eighth, Self::Sixteenth, Self::ThirtySecond, Self::SixtyFourth];

    /// How many there are to the inch.
    #[must_use]
    pub fn per_inch(self) -> u8 {
        match self {
            Self::Eighth => 8,
            Self::Sixteenth => 16,
            Self::ThirtySecond => 32,
            Self::SixtyFourth => 64,
        }
    }

    /// The step as a length.
    #[must_use]
    pub fn length(self) -> Length {
        Length::new::<unit::inch>(1.0 / f64::from(self.per_inch()))
    }

    /// The coarsest step that is no coarser than a graduation; sixty-fourths for a finer one.
    ///
    /// ```
    /// use coilnest::{quantity::{Length, unit}, reading::Step};
    ///
    /// assert_eq!(Step::of(Length::new::<unit::inch>(1.0 / 16.0)), Step::Sixteenth);
    /// assert_eq!(Step::of(Length::new::<unit::millimeter>(1.0)), Step::ThirtySecond);
    /// ```
    #[must_use]
    pub fn of(graduation: Length) -> Self {
        Self::ALL
            .into_iter()
            .find(|step| step.length() <= graduation * (1.0 + 1e-9))
            .unwrap_or(Self::SixtyFourth)
    }
}

/// The fineness to which steps are told apart; a power of two, so that it rounds nothing itself.
const BLUR: f64 = 17_179_869_184.0;

/// A length in inches to the nearest step, the fraction in lowest terms: `13 7/8 in`.
///
/// Where more than an eighth of the step is left over, `scant` or `full` says on which side of the
/// mark the length lies; it reads back as an interval that holds the length. Exactly midway, the
/// even mark is taken. The mark is never more than half a step off.
///
/// Source of the rule for midway: NIST Handbook 44, fundamental considerations, 10.3 (as quoted in a
/// public copy). The eighth is common practice, no source.
///
/// ```
/// use coilnest::quantity::{Length, unit};
/// use coilnest::reading::{Step, write_inch};
///
/// let length = Length::new::<unit::inch>(13.86);
/// assert_eq!(write_inch(length, Step::Sixteenth), "13 7/8 in scant");
/// assert_eq!(write_inch(length, Step::SixtyFourth), "13 55/64 in");
/// assert_eq!(write_inch(-length / 100.0, Step::Sixteenth), "−1/8 in full");
/// ```
#[must_use]
pub fn write_inch(length: Length, step: Step) -> String {
    inches(length, step, true)
}

/// What [`write_inch`] does; without the word for what is over where that is not wanted.
fn inches(length: Length, step: Step, leans: bool) -> String {
    let inches = length.get::<unit::inch>();
    if !inches.is_finite() {
        return "–".to_owned();
    }
    // Blurred by 2⁻³⁴ of a step, so that what was midway before it was a float is midway still.
    let steps = (inches.abs() * f64::from(step.per_inch()) * BLUR).round() / BLUR;
    let nearest = steps.round_ties_even();
    let over = steps - nearest;
    // Whole and not negative; what no spring can be is written as the most that the type holds.
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
    let marks = nearest as u128;
    let is_negative = inches < 0.0;
    let lean = if !leans || over.abs() <= 0.125 {
        Lean::Plain
    } else if over < 0.0 || (marks == 0 && is_negative) {
        Lean::Scant
    } else {
        Lean::Full
    };
    let number = Mixed::new(marks, u128::from(step.per_inch()));
    with_unit(is_negative && marks != 0, &number, "in", lean)
}

/// A length in millimetres to so many decimals at most: `353.6 mm`.
///
/// ```
/// use coilnest::quantity::{Length, unit};
/// use coilnest::reading::write_mm;
///
/// assert_eq!(write_mm(Length::new::<unit::inch>(13.921), 1), "353.6 mm");
/// assert_eq!(write_mm(Length::new::<unit::millimeter>(-2.0), 1), "−2 mm");
/// ```
#[must_use]
pub fn write_mm(length: Length, decimals: usize) -> String {
    format!("{} mm", write_fixed(length.get::<unit::millimeter>(), decimals))
}

/// A length in the system of the job: inches to the nearest step, or millimetres to a tenth.
///
/// ```
/// use coilnest::quantity::{Length, System, unit};
/// use coilnest::reading::{Step, write_length};
///
/// let length = Length::new::<unit::inch>(13.875);
/// assert_eq!(write_length(length, System::Inch, Step::Sixteenth), "13 7/8 in");
/// assert_eq!(write_length(length, System::Metric, Step::Sixteenth), "352.4 mm");
/// ```
#[must_use]
pub fn write_length(length: Length, system: System, step: Step) -> String {
    match system {
        System::Inch => write_inch(length, step),
        System::Metric => write_mm(length, 1),
    }
}

/// The same on the nearest mark, without the word for what is over.
#[cfg(feature = "job")]
pub(crate) fn write_nearest(length: Length, system: System, step: Step) -> String {
    match system {
        System::Inch => inches(length, step, false),
        System::Metric => write_mm(length, 1),
    }
}

/// A reading, so that it reads back the same.
pub(super) fn exact(reading: &Reading) -> String {
    let (numerator, denominator) = match (reading.mark.numer(), reading.mark.denom()) {
        (Some(&numerator), Some(&denominator)) => (numerator, denominator),
        _ => (0, 1),
    };
    let is_negative = reading.mark.is_sign_negative() && numerator != 0;
    match reading.system {
        System::Metric => {
            let digits = decimal(numerator, denominator);
            with_unit(is_negative, &digits, "mm", reading.lean)
        }
        System::Inch => {
            let inches = reading.mark / super::grammar::inch();
            let (numerator, denominator) = match (inches.numer(), inches.denom()) {
                (Some(&numerator), Some(&denominator)) => (numerator, denominator),
                _ => (0, 1),
            };
            let (mixed, digits);
            let number: &dyn Display = if 64 % denominator == 0 {
                mixed = Mixed::new(numerator, denominator);
                &mixed
            } else {
                digits = decimal(numerator, denominator);
                &digits
            };
            with_unit(is_negative, number, "in", reading.lean)
        }
    }
}

/// A rational whose denominator has no factors but two and five, as a decimal. Other
/// denominators, which no written decimal makes, end after forty digits.
fn decimal(numerator: u128, denominator: u128) -> String {
    let denominator = denominator.max(1);
    let mut text = format!("{}", numerator / denominator);
    let mut rest = numerator % denominator;
    if rest > 0 {
        text.push('.');
    }
    for _ in 0..40 {
        if rest == 0 {
            break;
        }
        rest *= 10;
        text.extend(
            u32::try_from(rest / denominator).ok().and_then(|digit| char::from_digit(digit, 10)),
        );
        rest %= denominator;
    }
    text
}

fn with_unit(is_negative: bool, number: &dyn Display, unit: &str, lean: Lean) -> String {
    let sign = if is_negative { "−" } else { "" };
    let mut text = String::with_capacity(24);
    // A string takes whatever is written to it.
    let _ = write!(text, "{sign}{number} {unit}");
    if lean != Lean::Plain {
        let _ = write!(text, " {lean}");
    }
    text
}
