//! Room between a coil and the one inside it.

use crate::coil::{Diameters, Hand};
use crate::quantity::Length;
use crate::source::{Known, Source};

/// Radial gap between a coil and the one inside it, both free.
///
/// ```text
/// gap = (Di,outer − De,inner) / 2
/// ```
/// Negative when the inner coil does not go in.
///
/// # Example
/// ```
/// use coilnest::coil::Diameters;
/// use coilnest::nest::clearance;
/// use coilnest::quantity::{Length, unit::millimeter};
///
/// let mm = Length::new::<millimeter>;
/// let outer = Diameters::from_outside(mm(25.0), mm(180.0))?;
/// let inner = Diameters::from_outside(mm(15.0), mm(110.0))?;
/// assert!((clearance::radial(outer, inner).get::<millimeter>() - 10.0).abs() < 1e-9);
/// assert!((clearance::usual(outer, inner).get::<millimeter>() - 5.0).abs() < 1e-9);
/// # Ok::<(), coilnest::coil::DiametersError>(())
/// ```
#[must_use]
pub fn radial(outer: Diameters, inner: Diameters) -> Length {
    (outer.inside() - inner.outside()) / 2.0
}

/// The same with the inner coil grown by `growth` of its diameter.
///
/// The outer coil grows too, but it is judged as if it did not: a nest may be solid on its inner
/// coil while the outer one still stands open.
#[must_use]
pub fn radial_grown(outer: Diameters, inner: Diameters, growth: Length) -> Length {
    radial(outer, inner) - growth / 2.0
}

/// The usual radial gap of a nest by textbook practice.
///
/// ```text
/// gap = (d_outer − d_inner) / 2
/// ```
/// # Source
/// [`USUAL_SOURCE`].
#[must_use]
pub fn usual(outer: Diameters, inner: Diameters) -> Length {
    (outer.bar() - inner.bar()) / 2.0
}

/// Where [`usual`] comes from.
pub const USUAL_SOURCE: Source = Source::new(
    "Bhandari, Design of Machine Elements",
    "example 10.17, diametral clearance d1 − d2",
    Known::QuotedIn("the open textbook companion of that chapter"),
);

/// Whether two neighbours can lock into each other.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Hands {
    /// Wound opposite ways, as they should be.
    Opposite,
    /// Wound the same way: turns of one can slip between turns of the other.
    Same,
    /// One hand or both are not known.
    Unknown,
}

impl Hands {
    /// From the hands of two neighbours.
    #[must_use]
    pub fn of(outer: Option<Hand>, inner: Option<Hand>) -> Self {
        match (outer, inner) {
            (Some(a), Some(b)) if a == b => Self::Same,
            (Some(_), Some(_)) => Self::Opposite,
            _ => Self::Unknown,
        }
    }
}
