//! The least and the most that one input may be.

use super::figure::tape_mark;
use super::kind::{Kind, Table};
use super::{Length, System};
use std::marker::PhantomData;

/// The least and the most that one input may be, both included.
///
/// ```
/// use coilnest::bounds;
/// use coilnest::quantity::{Length, System, unit};
/// use coilnest::say::Say;
///
/// assert_eq!(
///     bounds::FREE_HEIGHT.sentence(System::Inch),
///     "a free height between 1/64 in and 120 in"
/// );
/// assert!(bounds::FREE_HEIGHT.check(Length::new::<unit::inch>(13.875)).is_ok());
///
/// let refused = bounds::FREE_HEIGHT.check(Length::new::<unit::inch>(138.0)).unwrap_err();
/// assert_eq!(
///     refused.say(System::Inch).to_string(),
///     "138 in; a free height between 1/64 in and 120 in was expected"
/// );
/// ```
#[derive(Debug)]
pub struct Bound<K> {
    pub(crate) row: Row,
    kind: PhantomData<fn() -> K>,
}

/// What a bound says, whatever the kind of its quantity.
#[derive(Debug, PartialEq)]
pub(crate) struct Row {
    name: &'static str,
    least_si: f64,
    most_si: f64,
    example_inch: &'static str,
    example_metric: &'static str,
    table: &'static Table,
}

impl<K: Kind> Bound<K> {
    pub(crate) const fn new(
        name: &'static str,
        [least_si, most_si]: [f64; 2],
        [example_inch, example_metric]: [&'static str; 2],
    ) -> Self {
        assert!(least_si < most_si, "a bound allows something");
        Self {
            row: Row { name, least_si, most_si, example_inch, example_metric, table: K::TABLE },
            kind: PhantomData,
        }
    }

    /// The input's name in words, with its article: "a free height".
    #[must_use]
    pub fn name(&self) -> &'static str {
        self.row.name
    }

    /// The least value allowed.
    #[must_use]
    pub fn least(&self) -> K::Value {
        K::from_si(self.row.least_si)
    }

    /// The greatest value allowed.
    #[must_use]
    pub fn most(&self) -> K::Value {
        K::from_si(self.row.most_si)
    }

    /// What is allowed, as a sentence's end: "a free height between 1/64 in and 120 in".
    #[must_use]
    pub fn sentence(&self, system: System) -> String {
        self.row.sentence(system)
    }

    /// A text that would do.
    #[must_use]
    pub fn example(&self, system: System) -> &'static str {
        self.row.example(system)
    }

    /// All that is allowed, in SI units: a generator for the property tests.
    #[cfg(test)]
    pub(crate) fn any_si(&self) -> std::ops::RangeInclusive<f64> {
        self.row.least_si..=self.row.most_si
    }
}

/// Where a value lies.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Side {
    Below,
    Within,
    Above,
}

impl Row {
    pub(crate) fn name(&self) -> &'static str {
        self.name
    }

    pub(crate) fn allows_negative(&self) -> bool {
        self.least_si < 0.0
    }

    /// Not a number lies above: no input can be it.
    pub(crate) fn side(&self, si: f64) -> Side {
        if si < self.least_si {
            Side::Below
        } else if si <= self.most_si {
            Side::Within
        } else {
            Side::Above
        }
    }

    pub(crate) fn least(&self, system: System) -> String {
        self.limit(self.least_si, system)
    }

    pub(crate) fn most(&self, system: System) -> String {
        self.limit(self.most_si, system)
    }

    /// A length in inches as a fraction where it is one, all else in decimals.
    pub(crate) fn limit(&self, si: f64, system: System) -> String {
        let is_inch = self.table == Length::TABLE && system == System::Inch;
        let mark = if is_inch { tape_mark(Length::from_si(si)) } else { None };
        mark.unwrap_or_else(|| self.table.write(si, system))
    }

    pub(crate) fn sentence(&self, system: System) -> String {
        format!("{} between {} and {}", self.name, self.least(system), self.most(system))
    }

    pub(crate) fn example(&self, system: System) -> &'static str {
        match system {
            System::Inch => self.example_inch,
            System::Metric => self.example_metric,
        }
    }
}
