//! Sizes of bar and wire that are to be had.

use crate::quantity::Length;
use crate::source::Source;
use thiserror::Error;

/// A list of the sizes in which bar or wire is made.
///
/// # Example
/// ```
/// use coilnest::quantity::{Length, unit::millimeter};
/// use coilnest::sizing::Series;
/// use coilnest::source::{Known, Source};
///
/// let sizes = [10.0, 12.0, 14.0, 16.0].map(Length::new::<millimeter>);
/// let source = Source::new("our own rack", "", Known::Page);
/// let series = Series::new("rack", "the bars on the rack", sizes.to_vec().leak(), source)?;
/// let bars = series.between(Length::new::<millimeter>(12.0), Length::new::<millimeter>(14.0));
/// assert_eq!(bars, sizes[1..3]);
/// # Ok::<(), coilnest::sizing::SeriesError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Series {
    id: &'static str,
    name: &'static str,
    sizes: &'static [Length],
    source: Source,
}

/// Why sizes make no series.
#[derive(Clone, Copy, Debug, Error, PartialEq, Eq)]
#[error("the sizes of a series must rise, from above zero, and there must be one")]
pub struct SeriesError;

impl Series {
    /// Sizes that rise.
    ///
    /// # Errors
    /// [`SeriesError`] when there is none, or they do not rise from above zero.
    pub const fn new(
        id: &'static str,
        name: &'static str,
        sizes: &'static [Length],
        source: Source,
    ) -> Result<Self, SeriesError> {
        let (mut last, mut rest) = (0.0, sizes);
        while let [next, after @ ..] = rest {
            if !(next.value > last && next.value.is_finite()) {
                return Err(SeriesError);
            }
            (last, rest) = (next.value, after);
        }
        if sizes.is_empty() {
            return Err(SeriesError);
        }
        Ok(Self { id, name, sizes, source })
    }

    /// The id of its row.
    #[must_use]
    pub const fn id(&self) -> &'static str {
        self.id
    }

    /// What it is of, as it stands within a sentence.
    #[must_use]
    pub const fn name(&self) -> &'static str {
        self.name
    }

    /// All sizes, rising.
    #[must_use]
    pub const fn sizes(&self) -> &'static [Length] {
        self.sizes
    }

    /// The sizes from one to another, both among them.
    #[must_use]
    pub fn between(&self, least: Length, most: Length) -> Vec<Length> {
        // A bound in one unit and the same size in another differ in the last bit.
        let inside =
            |size: &&Length| **size * (1.0 + 1e-9) >= least && **size * (1.0 - 1e-9) <= most;
        self.sizes.iter().filter(inside).copied().collect()
    }

    /// Where it comes from.
    #[must_use]
    pub const fn source(&self) -> Source {
        self.source
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::unit::{inch, millimeter};
    use crate::source::Known;

    const SOURCE: Source = Source::new("", "", Known::CommonPractice);

    #[test]
    fn sizes_that_do_not_rise_are_refused() {
        let of = |sizes: &[f64]| {
            let sizes: Vec<Length> = sizes.iter().map(|it| Length::new::<inch>(*it)).collect();
            Series::new("x", "x", sizes.leak(), SOURCE)
        };
        assert!(of(&[0.5, 0.625]).is_ok());
        for wrong in [&[][..], &[0.0], &[-1.0], &[f64::NAN], &[0.5, 0.5], &[0.5, f64::INFINITY]] {
            assert_eq!(of(wrong), Err(SeriesError));
        }
        let halves = of(&[0.5, 1.0, 1.5]).unwrap();
        let mm = Length::new::<millimeter>;
        assert_eq!(halves.between(mm(25.4), mm(38.1)).len(), 2);
        assert!(halves.between(mm(26.0), mm(27.0)).is_empty());
    }
}
