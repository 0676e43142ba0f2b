//! Readings of one free height at places round the coil: their mean, and how far to trust it.

use crate::quantity::{Angle, Length, System, si, unit};
use crate::reading::Interval;
use crate::source::{Known, Source};
use thiserror::Error;

/// Where the budget of doubt comes from.
pub const SOURCE: Source = Source::new(
    "JCGM 100:2008",
    "4.2.3, 4.3.7 and F.2.2.1: a half-width over √3, resolution is not averaged away",
    Known::Memory,
);

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
    usual: &'static [System],
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
        Self { id, name, rule, source, usual: &[] }
    }

    /// The same, among those usual for tapes marked in these systems (common practice, no source).
    #[must_use]
    pub const fn usual_for(self, systems: &'static [System]) -> Self {
        Self { usual: systems, ..self }
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

/// Of the classes usual for tapes marked in a system, the one that permits most at a length: what is
/// taken of a tape of which nothing is known.
#[must_use]
pub fn widest_usual(classes: &[TapeClass], system: System, length: Length) -> Option<TapeClass> {
    let usual = classes.iter().filter(|class| class.usual.contains(&system));
    let wide = usual.filter_map(|class| Some((class.permissible_error(length)?, *class)));
    let wider = |a: (Length, TapeClass), b: (Length, TapeClass)| if b.0 > a.0 { b } else { a };
    wide.reduce(wider).map(|(_, class)| class)
}

/// How far one place round a coil is taken to stand off the coil's own height, as a half-width, where
/// nothing else is known: 1/16 in, or 1.5 mm (common practice, no source).
#[must_use]
pub fn usual_place(system: System) -> Length {
    match system {
        System::Inch => Length::new::<unit::inch>(1.0 / 16.0),
        System::Metric => Length::new::<unit::millimeter>(1.5),
    }
}

/// What a measurement was made with, and on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tape {
    /// Half-width of the tape's own error, the same in every reading.
    pub error: Length,
    /// Half-width of how far one place round the coil may stand off the coil's own height: ends that
    /// are not square or not flat, and how they were met. Each place has its own.
    pub place: Length,
}

/// A measured free height with the parts of its doubt, each a standard uncertainty.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Measured {
    /// Mean of the readings.
    pub mean: Length,
    /// The mean if each end lay as low as its reading allows.
    pub least: Length,
    /// The mean if each end lay as high as its reading allows.
    pub most: Length,
    /// At how many places round the coil it was read.
    pub places: usize,
    /// From the graduations: what one reading can be told apart by, however often it is repeated.
    pub reading_doubt: Length,
    /// From the tape's own error; common to everything measured with it.
    pub tape_doubt: Length,
    /// How far one place stands off the coil's own height.
    pub place_scatter: Length,
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

/// The mean of readings taken at places round a coil, and the doubt that is left.
///
/// ```text
/// y  = Σ x_i / m
/// u² = Σ u_i² / m  +  (e/√3)²  +  max(s², q²/3) / m
/// ```
/// `x_i` midpoint of what a reading says, `u_i` its half-width over √3 · `m` number of places ·
/// `e` tape error · `q` half-width of one place · `s` standard deviation of the readings, from two on
///
/// Only the places average. Two readings at one mark are rounded by the same amount, and one tape is
/// as wrong in all of them: repeating them tells nothing new of either. Where the readings stand on
/// different marks, `s` shows what was gained.
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
/// let tape = Tape { error: mm(0.7), place: mm(25.4 / 16.0) };
/// let one = measure(&[said], tape)?;
/// assert!((one.doubt().get::<millimeter>() - 1.102).abs() < 5e-4);
/// // Four places on one mark are surer than one, but never surer than mark and tape.
/// let four = measure(&[said; 4], tape)?;
/// assert!((four.doubt().get::<millimeter>() - 0.764).abs() < 5e-4);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn measure(readings: &[Interval], tape: Tape) -> Result<Measured, MeasuredError> {
    let Some(first) = readings.first() else { return Err(MeasuredError::NoReading) };
    let places = readings.len();
    let count = number(places);
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
    let low: f64 = readings.iter().map(|reading| reading.least().value).sum();
    let high: f64 = readings.iter().map(|reading| reading.most().value).sum();
    let scatter: f64 =
        readings.iter().map(|reading| (reading.estimate().value - mean).powi(2)).sum();
    let shown = if places > 1 { libm::sqrt(scatter / (count - 1.0)) } else { 0.0 };
    let usual = uniform(tape.place).value;
    let length = |value: f64| si(value);
    Ok(Measured {
        mean: length(mean),
        least: length(low / count),
        most: length(high / count),
        places,
        reading_doubt: length(libm::sqrt(squares / count)),
        tape_doubt: uniform(tape.error),
        place_scatter: length(if shown > usual { shown } else { usual }),
        spread: most - least,
    })
}

#[expect(clippy::cast_precision_loss, reason = "nobody takes 2⁵² readings of one coil")]
fn number(places: usize) -> f64 {
    places as f64
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
        root_sum_square(&[self.reading_doubt, self.place_doubt()])
    }

    /// What would be left of it if it were known where between the marks each end lay.
    #[must_use]
    pub fn doubt_beside_marks(&self) -> Length {
        root_sum_square(&[self.place_doubt(), self.tape_doubt])
    }

    /// What the places leave in doubt: the more of them, the less.
    #[must_use]
    pub fn place_doubt(&self) -> Length {
        self.place_scatter / libm::sqrt(number(self.places))
    }

    /// How far the ends are from square, judged by the spread over the diameter.
    ///
    /// ```text
    /// φ = atan(spread / De)
    /// ```
    #[must_use]
    pub fn out_of_square(&self, outside: Length) -> Angle {
        si(libm::atan(self.spread.value / outside.value))
    }
}

fn root_sum_square(parts: &[Length]) -> Length {
    let squares: f64 = parts.iter().map(|part| part.value * part.value).sum();
    si(libm::sqrt(squares))
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
    fn places_average_but_neither_marks_nor_tape_do() {
        let reading = read("390", 1.6);
        let tape = Tape { error: mm(0.7), place: mm(1.5) };
        let (one, four) =
            (measure(&[reading], tape).unwrap(), measure(&[reading; 4], tape).unwrap());
        assert_relative_eq!(four.reading_doubt.value, one.reading_doubt.value);
        assert_relative_eq!(four.tape_doubt.value, one.tape_doubt.value);
        assert_relative_eq!(
            four.place_doubt().value,
            one.place_doubt().value / 2.0,
            max_relative = 1e-12
        );
        assert_eq!((one.places, four.places), (1, 4));
    }

    #[test]
    fn scatter_counts_once_it_is_more_than_a_place_is_taken_for() {
        let readings = ["388", "390", "392"].map(|text| read(text, 0.0));
        let measured = measure(&readings, Tape { error: mm(0.0), place: mm(0.0) }).unwrap();
        // s = 2 mm, over √3 places.
        let expected = 2.0 / 3f64.sqrt();
        assert_relative_eq!(measured.doubt().get::<millimeter>(), expected, max_relative = 1e-12);
        assert_relative_eq!(measured.spread.get::<millimeter>(), 4.0, max_relative = 1e-12);
        assert_relative_eq!(
            measured.out_of_square(mm(200.0)).value,
            0.02f64.atan(),
            max_relative = 1e-12
        );
        // 3 mm over √3 is less than that, 4 mm is more.
        for (place, scatter) in [(3.0, 2.0), (4.0, 4.0 / 3f64.sqrt())] {
            let measured = measure(&readings, Tape { error: mm(0.0), place: mm(place) }).unwrap();
            assert_relative_eq!(
                measured.place_scatter.get::<millimeter>(),
                scatter,
                max_relative = 1e-12
            );
        }
    }

    #[test]
    fn of_an_unknown_tape_the_widest_usual_class_is_taken() {
        const INCH: &[System] = &[System::Inch];
        let class = |id, error: f64| {
            let rule = ErrorRule::PerMetre { fixed: mm(error), per_metre: mm(0.0), end: mm(0.0) };
            TapeClass::new(id, id, rule, SOURCE)
        };
        let classes = [
            class("fine", 0.2).usual_for(INCH),
            class("wide", 0.8).usual_for(INCH),
            class("rare", 2.0),
        ];
        let taken = |system| widest_usual(&classes, system, mm(390.0)).map(|class| class.id());
        assert_eq!((taken(System::Inch), taken(System::Metric)), (Some("wide"), None));
    }

    #[test]
    fn no_reading_is_no_measurement() {
        let tape = Tape { error: mm(0.0), place: mm(0.0) };
        assert_eq!(measure(&[], tape), Err(MeasuredError::NoReading));
    }
}
