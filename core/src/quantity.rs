//! Typed quantities, exact inch-pound units, and the text of every quantity but a tape reading.
//!
//! Code speaks of quantities; a unit appears only where a number comes in or goes out.
//! The types are those of the `uom` crate. The units are those of [`mod@unit`]: `uom` rounds several
//! inch-pound factors to seven digits, so the exact ones of NIST SP 811 stand there instead.
//!
//! ```
//! use approx::assert_relative_eq;
//! use coilnest::quantity::{Force, Length, SpringRate, unit};
//!
//! let rate: SpringRate = Force::new::<unit::pound_force>(5720.0) / Length::new::<unit::inch>(2.0);
//! assert_relative_eq!(rate.get::<unit::pound_force_per_inch>(), 2860.0, max_relative = 1e-15);
//! ```
//!
//! A force is not a length, and the compiler says so:
//!
//! ```compile_fail,E0308
//! use coilnest::quantity::{Force, Length, unit};
//!
//! let height: Length = Force::new::<unit::newton>(300.0);
//! ```
//!
//! # Text and back
//!
//! [`read`] takes what a person wrote; [`write()`] gives what a person reads. What a bare number
//! means, how units may be spelt, and how many digits are shown is a [`Table`] for each [`Kind`] of
//! quantity; which values are sensible is a [`Bound`].
//!
//! ```
//! use coilnest::bounds;
//! use coilnest::quantity::{Force, System, read, write};
//!
//! let load = read("24 500 lb", System::Metric, &bounds::LOAD)?;
//! assert_eq!(write::<Force>(load, System::Inch), "24\u{202f}500 lb");
//! assert_eq!(write::<Force>(load, System::Metric), "109\u{202f}000 N");
//!
//! let refusal = read("24,500 lb", System::Inch, &bounds::LOAD).unwrap_err();
//! assert_eq!(refusal.code(), "comma-ambiguous");
//! # Ok::<(), coilnest::quantity::Refusal>(())
//! ```

pub mod unit;

mod bound;
mod figure;
mod kind;
mod number;
mod read;
mod refusal;
mod scan;

pub use bound::Bound;
pub(crate) use bound::{Row, Side};
#[cfg(feature = "job")]
pub(crate) use figure::{Digits, Said, say};
pub(crate) use figure::{joined, tape_mark};
pub use figure::{shown, write, write_fixed, write_number};
pub use kind::{Kind, Modulus, Readable, Share, Stress, Table, Turns};
pub(crate) use number::{Mixed, Number};
pub(crate) use read::{not_a_unit, within};
pub use read::{read, spell_unit, written_in};
pub(crate) use refusal::{Fault, shorten};
pub use refusal::{Reason, Refusal};
pub(crate) use scan::{Mark, Scanner, Token, some_number};
pub use uom::si::f64::{
    Angle, Area, Energy, Force, Frequency, Length, Mass, MassDensity, Pressure, Volume,
};

use core::marker::PhantomData;

use uom::si::{Dimension, ISQ, Quantity, SI};
use uom::typenum::{N2, P1, P4, Z0};

/// Force per length, the rate of a spring (SI unit N/m, dimension M·T⁻²).
///
/// It is what `Force / Length` gives, with no conversion. `uom` has no name for a stiffness; of its
/// two quantities of this dimension, surface tension carries a kind of its own and radiant exposure
/// does not, so the alias is to the second.
pub type SpringRate = uom::si::f64::RadiantExposure;

/// A quantity by its number in SI units, as the kernels have it.
///
/// ```
/// use coilnest::quantity::{Length, si, unit};
///
/// let inch: Length = si(0.0254);
/// assert_eq!(inch, Length::new::<unit::inch>(1.0));
/// ```
#[must_use]
pub const fn si<D: Dimension + ?Sized>(value: f64) -> Quantity<D, SI<f64>, f64> {
    Quantity { dimension: PhantomData, units: PhantomData, value }
}

/// Stiffness of a frame against warping (SI unit N·m³, dimension L⁴·M·T⁻²).
///
/// With the corners of a frame at (x, y) and the warp w, in 1/m, lifting each by w·x·y, it is
/// Σ F·x·y divided by w.
pub type WarpStiffness = Quantity<ISQ<P4, P1, N2, Z0, Z0, Z0, Z0>, SI<f64>, f64>;

/// The system of units in which a job is written: what a bare number means, and what is shown.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum System {
    /// Inches and fractions, pounds of force, lb/in, psi.
    Inch,
    /// Millimetres, newtons, N/mm, `MPa`.
    Metric,
}
