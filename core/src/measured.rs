//! Several readings of one free height: their mean, and how far to trust it.

use crate::quantity::{Angle, Length};
use crate::reading::Interval;
use crate::source::{Known, Source};
use thiserror::Error;

/// Where the budget of doubt comes from.
pub const SOURCE: Source =
    Source::new("JCGM 100:2008", "4.2.3 and 4.3.7, uniform half-width over √3", Known::Memory);

/// How far a tape of a class may be wrong.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum ErrorRule {
    /// `fixed + per_metre · L`, L in metres rounded up to a whole one, and `end` more where the
    /// length starts at the tape's hook or butt, as a free height does.
    PerMetre {
        /// The part that every length has.
        fixed: Length,
        /// What each begun metre adds.
        per_metre: Length,
        /// What the end of the tape adds.
        end: Length,
    },
    /// An error for every length up to another, shortest first.
    Steps(&'static [(Length, Length)]),
}

/// A class of tapes.
///
/// # Example
/// ```
/// use coilnest::measured::{ErrorRule, TapeClass};
/// use coilnest::quantity::{Length, unit::millimeter};
/// use coilnest::source::{Known, Source};
///
/// let mm = Length::new::<millimeter>;
/// let rule = ErrorRule::PerMetre { fixed: mm(0.3), per_metre: mm(0.2), end: mm(0.2) };
/// let source = Source::new("Directive 2014/32/EU", "annex X, chapter I", Known::Page);
/// let class = TapeClass::new("II", "class II", rule, source);
/// let error = class.permissible_error(mm(390.0)).map(|error| error.get::<millimeter>());
/// assert!((error.unwrap_or_default() - 0.7).abs() < 1e-12);
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TapeClass {
    id: &'static str,
    name: &'static str,
    rule: ErrorRule,
    source: Source,
}

impl TapeClass {
    /// A class by its word in a job file, its name for people, its rule and where that stands.
    #[must_use]
    pub const fn new(
        id: &'static str,
        name: &'static str,
        rule: ErrorRule,
        source: Source,
    ) -> Self {
        Self { id, name, rule, source }
    }

    /// The word that a job file uses.
    #[must_use]
    pub const fn id(&self) -> &'static str {
        self.id
    }

    /// The name for people.
    #[must_use]
    pub const fn name(&self) -> &'static str {
        self.name
    }

    /// Where the rule stands.
    #[must_use]
    pub const fn source(&self) -> Source {
        self.source
    }

    /// The greatest error that the class permits at a length, as a half-width; none beyond the
    /// lengths that the class covers.
    #[must_use]
    pub fn permissible_error(&self, length: Length) -> Option<Length> {
        match self.rule {
            ErrorRule::PerMetre { fixed, per_metre, end } => {
                Some(fixed + per_metre * libm::ceil(length.value) + end)
            }
            ErrorRule::Steps(steps) => {
                steps.iter().find(|(up_to, _)| length <= *up_to).map(|(_, error)| *error)
            }
        }
    }
}

/// What a measurement was made with.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tape {
    /// Half-width of the tape's own error, the same in every reading.
    pub error: Length,
    /// Half-width of how squarely the tape and the coil's ends were met.
    pub ends: Length,
}

/// A measured free height with the parts of its doubt, each a standard uncertainty.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Measured {
    /// Mean of the readings.
    pub mean: Length,
    /// From the graduations that each reading was told apart by.
    pub reading_doubt: Length,
    /// From the tape's own error; common to everything measured with it.
    pub tape_doubt: Length,
    /// From how squarely the ends were met.
    pub ends_doubt: Length,
    /// From the scatter of the readings.
    pub repeat_doubt: Length,
    /// Greatest reading less the smallest.
    pub spread: Length,
}

/// Why readings give no measurement.
#[derive(Clone, Copy, Debug, Error, PartialEq, Eq)]
#[non_exhaustive]
pub enum MeasuredError {
    /// There are none.
    #[error("there is no reading")]
    NoReading,
}

/// The mean of readings taken round a coil, and the doubt that is left.
///
/// ```text
/// y  = Σ x_i / m
/// u² = Σ u_i² / m²  +  (e/√3)²  +  (q/√3)²  +  s²/m
/// ```
/// `x_i` midpoint of what a reading says, `u_i` its half-width over √3 · `m` their number ·
/// `e` tape error, which more readings do not average away · `q` ends · `s` standard deviation of
/// the readings, from two on
///
/// # Errors
/// [`MeasuredError::NoReading`].
///
/// # Source
/// [`SOURCE`].
///
/// # Example
/// ```
/// use coilnest::measured::{measure, Tape};
/// use coilnest::quantity::{Length, System, unit::millimeter};
/// use coilnest::{bounds, reading::Reading};
///
/// let mm = Length::new::<millimeter>;
/// // To the nearest sixteenth of an inch, with a class II tape from its hook: 0.7 mm.
/// let reading = Reading::parse("15 3/8", System::Inch, &bounds::READING)?;
/// let said = reading.interval(mm(25.4 / 16.0));
/// let measured = measure(&[said], Tape { error: mm(0.7), ends: mm(0.0) })?;
/// assert!((measured.doubt().get::<millimeter>() - 0.611).abs() < 5e-4);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn measure(readings: &[Interval], tape: Tape) -> Result<Measured, MeasuredError> {
    let Some(first) = readings.first() else { return Err(MeasuredError::NoReading) };
    #[expect(clippy::cast_precision_loss, reason = "nobody takes 2⁵² readings of one coil")]
    let count = readings.len() as f64;
    let (mut sum, mut squares, mut least, mut most) =
        (0.0, 0.0, first.estimate(), first.estimate());
    for reading in readings {
        let (x, u) = (reading.estimate(), reading.standard_uncertainty());
        sum += x.value;
        squares += u.value * u.value;
        least = if x < least { x } else { least };
        most = if x > most { x } else { most };
    }
    let mean = sum / count;
    let scatter: f64 =
        readings.iter().map(|reading| (reading.estimate().value - mean).powi(2)).sum();
    let repeat_squared = if count > 1.0 { scatter / (count - 1.0) / count } else { 0.0 };
    let length = |value: f64| Length { value, ..Length::default() };
    Ok(Measured {
        mean: length(mean),
        reading_doubt: length(libm::sqrt(squares) / count),
        tape_doubt: uniform(tape.error),
        ends_doubt: uniform(tape.ends),
        repeat_doubt: length(libm::sqrt(repeat_squared)),
        spread: most - least,
    })
}

/// Standard uncertainty of something known only to lie within ± a half-width.
#[must_use]
pub fn uniform(half_width: Length) -> Length {
    half_width / libm::sqrt(3.0)
}

impl Measured {
    /// One standard uncertainty of the mean.
    #[must_use]
    pub fn doubt(&self) -> Length {
        root_sum_square(&[self.own_doubt(), self.tape_doubt])
    }

    /// The part of it that belongs to this coil alone, and not to the tape.
    #[must_use]
    pub fn own_doubt(&self) -> Length {
        root_sum_square(&[self.reading_doubt, self.ends_doubt, self.repeat_doubt])
    }

    /// How far the ends are from square, judged by the spread over the diameter.
    ///
    /// ```text
    /// φ = atan(spread / De)
    /// ```
    #[must_use]
    pub fn out_of_square(&self, outside: Length) -> Angle {
        Angle { value: libm::atan(self.spread.value / outside.value), ..Angle::default() }
    }
}

fn root_sum_square(parts: &[Length]) -> Length {
    let squares: f64 = parts.iter().map(|part| part.value * part.value).sum();
    Length { value: libm::sqrt(squares), ..Length::default() }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bounds;
    use crate::quantity::{System, unit::millimeter};
    use crate::reading::Reading;
    use approx::assert_relative_eq;

    fn mm(x: f64) -> Length {
        Length::new::<millimeter>(x)
    }

    fn read(text: &str, graduation: f64) -> Interval {
        Reading::parse(text, System::Metric, &bounds::READING).unwrap().interval(mm(graduation))
    }

    #[test]
    fn more_readings_average_the_graduation_but_not_the_tape() {
        let reading = read("390", 1.6);
        let tape = Tape { error: mm(0.7), ends: mm(0.0) };
        let (one, four) =
            (measure(&[reading], tape).unwrap(), measure(&[reading; 4], tape).unwrap());
        assert_relative_eq!(
            four.reading_doubt.value,
            one.reading_doubt.value / 2.0,
            max_relative = 1e-12
        );
        assert_relative_eq!(four.tape_doubt.value, one.tape_doubt.value);
        assert_relative_eq!(four.repeat_doubt.value, 0.0);
    }

    #[test]
    fn scatter_counts_from_two_readings_on() {
        let readings = ["388", "390", "392"].map(|text| read(text, 0.0));
        let measured = measure(&readings, Tape { error: mm(0.0), ends: mm(0.0) }).unwrap();
        // s = 2 mm, over √3 readings.
        assert_relative_eq!(
            measured.doubt().get::<millimeter>(),
            2.0 / 3f64.sqrt(),
            max_relative = 1e-12
        );
        assert_relative_eq!(measured.spread.get::<millimeter>(), 4.0, max_relative = 1e-12);
        assert_relative_eq!(
            measured.out_of_square(mm(200.0)).value,
            0.02f64.atan(),
            max_relative = 1e-12
        );
    }

    #[test]
    fn no_reading_is_no_measurement() {
        let tape = Tape { error: mm(0.0), ends: mm(0.0) };
        assert_eq!(measure(&[], tape), Err(MeasuredError::NoReading));
    }
}
