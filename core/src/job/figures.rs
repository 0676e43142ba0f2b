//! Figures and their workings, written in the job's system.

use super::report::{Axes, Axis, Cited, Figure, Working};
use crate::formula::{Formula, Put, Value};
use crate::quantity::{
    self, Angle, Digits, Energy, Force, Frequency, Kind, Length, Modulus, Said, SpringRate, Stress,
    System, unit,
};
use crate::reading::{self, Step};
use std::fmt::{self, Write};

/// How figures of a job are written.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Format {
    pub(crate) system: System,
    /// Step of a measured height, that of the job's tape.
    pub(crate) step: Step,
}

/// A kind of quantity that stands in a report.
pub(crate) trait Shown: Kind {
    const SI: &'static str;
}

impl Shown for Force {
    const SI: &'static str = "N";
}
impl Shown for SpringRate {
    const SI: &'static str = "N/m";
}
impl Shown for Stress {
    const SI: &'static str = "Pa";
}
impl Shown for Modulus {
    const SI: &'static str = "Pa";
}
impl Shown for Energy {
    const SI: &'static str = "J";
}
impl Shown for quantity::MassDensity {
    const SI: &'static str = "kg/m³";
}
impl Shown for quantity::Mass {
    const SI: &'static str = "kg";
}
impl Shown for quantity::Turns {
    const SI: &'static str = "1";
}
impl Shown for quantity::Share {
    const SI: &'static str = "1";
}

/// Of a figure that may be off by nobody knows how much: no ± at all would say that it is exact.
pub(crate) const DOUBT_NOT_KNOWN: &str = "± not known";

impl Format {
    /// A force, rate, stress, energy, share or number of turns.
    pub(crate) fn figure<K: Shown>(self, value: K::Value) -> Figure {
        let text = quantity::write::<K>(value, self.system);
        Figure { si: K::si(value), unit: K::SI.into(), text, ..Figure::default() }
    }

    /// The same with its standard uncertainty.
    pub(crate) fn doubted<K: Shown>(self, value: K::Value, doubt: f64) -> Figure {
        let mut figure = self.figure::<K>(value);
        if !doubt.is_finite() {
            figure.doubt_text = Some(DOUBT_NOT_KNOWN.to_owned());
        } else if doubt > 0.0 {
            figure.doubt_si = Some(doubt);
            figure.doubt_text = Some(format!("± {}", self.doubt::<K>(K::from_si(doubt))));
        }
        figure
    }

    /// A length to the step of the job's tape: `13 7/8 in scant`, `353.6 mm`.
    pub(crate) fn height(self, length: Length) -> Figure {
        Self::long(length, reading::write_length(length, self.system, self.step))
    }

    /// A length to the nearest sixty-fourth: a bar, a gap, a small difference.
    pub(crate) fn fine(self, length: Length) -> Figure {
        Self::long(length, self.fine_text(length))
    }

    /// A size of a drawing: the fraction that it is, or a decimal.
    pub(crate) fn size(self, size: Length) -> Figure {
        let parts = size.get::<unit::inch>() * 64.0;
        // Within half a thousandth of an inch.
        let fraction = (parts - libm::round(parts)).abs() <= 0.032;
        if self.system == System::Metric || fraction {
            return self.fine(size);
        }
        Self::long(size, text!("{}", self.decimal(size)))
    }

    /// The text of [`Format::fine`].
    pub(crate) fn fine_text(self, length: Length) -> String {
        reading::write_nearest(length, self.system, Step::SixtyFourth)
    }

    fn long(length: Length, text: String) -> Figure {
        Figure { si: length.value, unit: "m".into(), text, ..Figure::default() }
    }

    /// A plain number, to so many significant digits.
    pub(crate) fn number(value: f64, digits: usize) -> Figure {
        let text = quantity::write_number(value, digits);
        Figure { si: value, unit: "1".into(), text, ..Figure::default() }
    }

    /// An angle in degrees.
    pub(crate) fn angle(angle: Angle) -> Figure {
        let text = format!("{}°", quantity::write_fixed(angle.get::<unit::degree>(), 1));
        Figure { si: angle.value, unit: "rad".into(), text, ..Figure::default() }
    }

    /// A frequency.
    pub(crate) fn frequency(frequency: Frequency) -> Figure {
        let text = format!("{} Hz", quantity::write_number(frequency.value, 3));
        Figure { si: frequency.value, unit: "Hz".into(), text, ..Figure::default() }
    }

    /// A share in per cent, to so many decimals at most.
    pub(crate) fn percent(share: f64, decimals: usize) -> Figure {
        let text = format!("{} %", quantity::write_fixed(share * 100.0, decimals));
        Figure { si: share, unit: "1".into(), text, ..Figure::default() }
    }

    /// A length as a decimal, for a working: `13.867 in`, `352.2 mm`.
    pub(crate) fn decimal(self, length: Length) -> Said {
        self.exact::<Length>(length)
    }

    /// To five digits, to work with.
    pub(crate) fn exact<K: Kind>(self, value: K::Value) -> Said {
        let (number, unit) = quantity::shown::<K>(value, self.system);
        Said { digits: Digits::significant(number, 5), unit }
    }

    /// A doubt as a decimal: `0.0047 in`.
    pub(crate) fn rough(self, doubt: Length) -> Said {
        self.doubt::<Length>(doubt)
    }

    /// A doubt of any kind, to two digits: `84 lb/in`.
    pub(crate) fn doubt<K: Kind>(self, doubt: K::Value) -> Said {
        let (number, unit) = quantity::shown::<K>(doubt, self.system);
        Said { digits: Digits::significant(number, 2), unit }
    }

    /// Any other quantity, for a working.
    pub(crate) fn say<K: Kind>(self, value: K::Value) -> Said {
        quantity::say::<K>(value, self.system)
    }
}

/// A text put together at one go: the usual `format!` starts with no room and makes more of it five
/// times over, which in the browser is a third of an assessment.
macro_rules! text {
    ($($arg:tt)*) => {
        $crate::job::figures::written(format_args!($($arg)*))
    };
}
pub(crate) use text;

/// What [`text!`] does.
pub(crate) fn written(parts: fmt::Arguments<'_>) -> String {
    let mut text = String::with_capacity(96);
    // A string takes whatever is written to it.
    let _ = text.write_fmt(parts);
    text
}

/// A sentence of its own: a capital before it, a full stop behind.
pub(crate) fn sentence(said: &str) -> String {
    let mut letters = said.chars();
    let first = letters.next().into_iter().flat_map(char::to_uppercase);
    first.chain(letters).chain(['.']).collect()
}

/// The units of a system's axes.
pub(crate) fn axes(system: System) -> Axes {
    let axis = |table: &quantity::Table| {
        let own = table.own(system);
        own.map_or_else(Axis::default, |own| Axis { unit: own.text.into(), scale: own.si })
    };
    Axes { length: axis(Length::TABLE), force: axis(Force::TABLE) }
}

impl Figure {
    /// The same length with its standard uncertainty, which in inches is rounded up to a
    /// sixty-fourth so that it is never understated.
    pub(crate) fn give_or_take(mut self, format: Format, doubt: Length) -> Self {
        if !doubt.value.is_finite() {
            self.doubt_text = Some(DOUBT_NOT_KNOWN.to_owned());
        } else if doubt.value > 0.0 {
            self.doubt_si = Some(doubt.value);
            self.doubt_text = Some(match format.system {
                System::Inch => {
                    let parts = libm::ceil(doubt.get::<unit::inch>() * 64.0 - 1e-9).max(1.0);
                    let up = Length::new::<unit::inch>(parts / 64.0);
                    format!("± {}", reading::write_length(up, System::Inch, Step::SixtyFourth))
                }
                System::Metric => {
                    format!("± {}", format.rough(doubt))
                }
            });
        }
        self
    }
}

/// The workings of a report, numbered as they come.
#[derive(Debug, Default)]
pub(crate) struct Ledger {
    pub(crate) entries: Vec<Working>,
}

impl Ledger {
    /// Keeps how a result came about, and gives the key of it.
    pub(crate) fn file(&mut self, put: Put, result: String, source: impl Into<Cited>) -> String {
        self.entries.push(Working::Filed { put, result, source: source.into(), row: None });
        format!("w{}", self.entries.len())
    }

    /// The same figure, its working saying which row of the tables a number of it was taken from.
    pub(crate) fn cite(&mut self, figure: Figure, row: Option<&'static str>) -> Figure {
        let key = figure.working.as_deref().and_then(|key| key.strip_prefix('w'));
        let place = key.and_then(|number| number.parse::<usize>().ok()?.checked_sub(1));
        if let Some(Working::Filed { row: known, .. }) =
            place.and_then(|place| self.entries.get_mut(place))
        {
            *known = row;
        }
        figure
    }

    /// Gives a figure its working.
    pub(crate) fn work(
        &mut self,
        figure: Figure,
        formula: Formula,
        values: &[Value<'_>],
        source: impl Into<Cited>,
    ) -> Figure {
        self.put(figure, formula.put(values), source)
    }

    /// Gives a figure that is a sum its working.
    pub(crate) fn sum<'v, T: AsRef<[Value<'v>]>>(
        &mut self,
        figure: Figure,
        formula: Formula,
        terms: impl Iterator<Item = T>,
        source: impl Into<Cited>,
    ) -> Figure {
        self.put(figure, formula.put_sum(&[], terms), source)
    }

    /// Gives a figure that is not worked out by an expression its working, in words.
    pub(crate) fn show(
        &mut self,
        figure: Figure,
        said: &'static str,
        with: String,
        source: impl Into<Cited>,
    ) -> Figure {
        self.put(figure, Formula::put_words(said, with), source)
    }

    /// Gives a figure its working; the result is the figure's own text.
    pub(crate) fn put(&mut self, mut figure: Figure, put: Put, source: impl Into<Cited>) -> Figure {
        let result = match &figure.doubt_text {
            Some(doubt) => text!("{} {doubt}", figure.text),
            None => figure.text.clone(),
        };
        figure.working = Some(self.file(put, result, source));
        figure
    }
}
