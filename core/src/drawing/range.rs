//! A figure as it is given, and a figure that follows: each with the least and the most that it may be.

use super::figure::{Figure, Figures};
use core::fmt;
use core::ops::{Add, Div, Sub};
use thiserror::Error;

/// A figure as a drawing, a book or a maker gives it. Either end of its tolerance may be missing: then
/// nobody knows how far that way it may be off, and no answer that rests on it is complete.
///
/// # Example
/// ```
/// use coilnest::drawing::Given;
/// use coilnest::quantity::{Length, unit::millimeter};
///
/// let mm = Length::new::<millimeter>;
/// let bar = Given::around(mm(16.0), mm(0.15), mm(0.15))?;
/// assert_eq!((bar.nominal(), bar.most()), (mm(16.0), Some(mm(16.0) + mm(0.15))));
/// assert!(Given::around(mm(16.0), mm(-0.15), mm(0.15)).is_err());
/// assert!(!Given::as_drawn(mm(16.0)).is_complete());
/// # Ok::<(), coilnest::drawing::Crossed<Length>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Given<Q> {
    nominal: Q,
    least: Option<Q>,
    most: Option<Q>,
}

/// The least is above the most, or one of them is not a number.
#[derive(Clone, Copy, Debug, Error, PartialEq)]
#[error(
    "from {least:?} to {most:?}; the least first and the most second was expected: exchange the two, or give a tolerance without a sign"
)]
pub struct Crossed<Q: fmt::Debug> {
    /// What was to be the least.
    pub least: Q,
    /// What was to be the most.
    pub most: Q,
}

impl<Q: Copy> Given<Q> {
    /// A figure that is stated to be exact, or is so by definition.
    pub const fn exact(nominal: Q) -> Self {
        Self { nominal, least: Some(nominal), most: Some(nominal) }
    }

    /// A figure without a tolerance: how far it may be off is not known.
    pub const fn as_drawn(nominal: Q) -> Self {
        Self { nominal, least: None, most: None }
    }

    /// What it is meant to be.
    pub const fn nominal(&self) -> Q {
        self.nominal
    }

    /// The least that it may be, where that is known.
    pub const fn least(&self) -> Option<Q> {
        self.least
    }

    /// The most that it may be, where that is known.
    pub const fn most(&self) -> Option<Q> {
        self.most
    }

    /// Whether both ends of its tolerance are known.
    pub const fn is_complete(&self) -> bool {
        self.least.is_some() && self.most.is_some()
    }

    /// The same in another unit or kind.
    pub fn map<R>(self, with: impl Fn(Q) -> R) -> Given<R> {
        Given {
            nominal: with(self.nominal),
            least: self.least.map(&with),
            most: self.most.map(&with),
        }
    }

    /// One standard uncertainty of it: the figure may lie anywhere within the greater of the ways that it
    /// may be off. A way that nobody gave counts as exact, so whoever uses this says so.
    ///
    /// ```text
    /// u = a / √3
    /// ```
    /// `a` the greater of most − nominal and nominal − least
    ///
    /// # Source
    /// JCGM 100:2008, 4.3.7 (from memory); of an uneven tolerance the greater side, since a wider one must
    /// not be doubted less.
    ///
    /// # Example
    /// ```
    /// use coilnest::drawing::Given;
    ///
    /// let turns = Given::around(7.5, 0.125, 0.25)?;
    /// assert!((turns.doubt() - 0.25 / 3f64.sqrt()).abs() < 1e-12);
    /// assert_eq!(Given::as_drawn(7.5).doubt(), 0.0);
    /// # Ok::<(), coilnest::drawing::Crossed<f64>>(())
    /// ```
    pub fn doubt(&self) -> Q
    where
        Q: PartialOrd + Sub<Output = Q> + Div<f64, Output = Q>,
    {
        self.half_width() / libm::sqrt(3.0)
    }

    /// The greater of the ways that it may be off.
    pub fn half_width(&self) -> Q
    where
        Q: PartialOrd + Sub<Output = Q>,
    {
        let less = self.nominal - self.least.unwrap_or(self.nominal);
        let more = self.most.unwrap_or(self.nominal) - self.nominal;
        if more > less { more } else { less }
    }

    /// As a range, of which a figure may lack the tolerance.
    pub(crate) fn range(self, figure: Figure) -> Range<Q> {
        Range {
            least: self.least.unwrap_or(self.nominal),
            nominal: self.nominal,
            most: self.most.unwrap_or(self.nominal),
            unstated: if self.is_complete() { Figures::NONE } else { figure.into() },
        }
    }
}

impl<Q: Copy + fmt::Debug + PartialOrd> Given<Q> {
    /// A figure between two ends, of which each may be missing.
    ///
    /// # Errors
    /// [`Crossed`] when an end is on the wrong side of the figure or not a number.
    pub fn between(nominal: Q, least: Option<Q>, most: Option<Q>) -> Result<Self, Crossed<Q>> {
        let (low, high) = (least.unwrap_or(nominal), most.unwrap_or(nominal));
        if low <= nominal && nominal <= high {
            Ok(Self { nominal, least, most })
        } else {
            Err(Crossed { least: low, most: high })
        }
    }

    /// A figure that may be so much less and so much more.
    ///
    /// # Errors
    /// As [`Given::between`].
    pub fn around(nominal: Q, less: Q, more: Q) -> Result<Self, Crossed<Q>>
    where
        Q: Add<Output = Q> + Sub<Output = Q>,
    {
        Self::between(nominal, Some(nominal - less), Some(nominal + more))
    }
}

/// A figure that follows from a drawing: the least and the most that all tolerances make of it, and the
/// figures whose tolerances nobody gave, so that it may lie outside.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Range<Q> {
    least: Q,
    nominal: Q,
    most: Q,
    unstated: Figures,
}

impl<Q: Copy> Range<Q> {
    /// One value and no other.
    pub const fn exact(nominal: Q) -> Self {
        Self { least: nominal, nominal, most: nominal, unstated: Figures::NONE }
    }

    /// The same in another unit or kind.
    pub fn map<R>(self, with: impl Fn(Q) -> R) -> Range<R> {
        Range {
            least: with(self.least),
            nominal: with(self.nominal),
            most: with(self.most),
            unstated: self.unstated,
        }
    }

    /// The least that it may be.
    pub const fn least(&self) -> Q {
        self.least
    }

    /// What it is meant to be.
    pub const fn nominal(&self) -> Q {
        self.nominal
    }

    /// The most that it may be.
    pub const fn most(&self) -> Q {
        self.most
    }

    /// The figures that it rests on and whose tolerances nobody gave.
    pub const fn unstated(&self) -> Figures {
        self.unstated
    }

    /// Whether it takes in all that varies.
    pub const fn is_complete(&self) -> bool {
        self.unstated.is_empty()
    }
}

impl Range<f64> {
    /// A nominal value, and the least and the most among others and itself.
    pub(crate) fn spanning(nominal: f64, others: impl Iterator<Item = f64>) -> Self {
        others.fold(Self::exact(nominal), |range, value| Self {
            least: if value < range.least { value } else { range.least },
            most: if value > range.most { value } else { range.most },
            ..range
        })
    }

    /// What is left between two accounts of one figure, both of which hold: as stated, within what else is
    /// known of it. An account that is not complete leaves its ends to the other; one that contradicts
    /// what is stated is left out.
    pub(crate) fn within(self, other: Self) -> Self {
        let holds = other.least <= self.nominal && self.nominal <= other.most;
        if !holds || !other.is_complete() {
            return self;
        }
        if !self.is_complete() {
            return Self { nominal: self.nominal, ..other };
        }
        let least = if other.least > self.least { other.least } else { self.least };
        let most = if other.most < self.most { other.most } else { self.most };
        Self { least, most, ..self }
    }

    /// The same, resting also on figures whose tolerances nobody gave.
    pub(crate) fn resting_on(self, unstated: Figures) -> Self {
        Self { unstated: self.unstated | unstated, ..self }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn two_accounts_leave_what_both_allow() {
        let range =
            |nominal, least: f64, most: f64| Range::spanning(nominal, [least, most].into_iter());
        let stated = range(10.0, 9.0, 11.0);
        let left = stated.within(range(10.2, 9.5, 12.0));
        assert_eq!(left, range(10.0, 9.5, 11.0));
        let open = Range::exact(10.0).resting_on(Figure::Rate.into());
        assert_eq!(open.within(range(10.2, 9.5, 12.0)), range(10.0, 9.5, 12.0));
        let unstated = range(10.0, 9.5, 12.0).resting_on(Figure::Bar.into());
        assert_eq!(stated.within(unstated), stated);
        assert_eq!(stated.within(range(11.5, 11.0, 12.0)), stated);
    }
}
