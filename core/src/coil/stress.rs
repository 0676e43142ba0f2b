//! Shear stress in the bar: uncorrected, and raised at the inside of the coil.

use super::Diameters;
use crate::quantity::{Force, Pressure};
use crate::source::{Known, Source};

/// Uncorrected torsional stress at the surface of the bar.
///
/// ```text
/// τ = 8 · F · D / (π · d³)
/// ```
/// `F` load, N · `D` mean coil diameter, m · `d` bar, m
///
/// Set and solid height are judged by it; for fatigue multiply by [`bergstrasser`] or [`wahl`].
///
/// # Source
/// [`SOURCE`].
///
/// # Example
/// ```
/// use coilnest::coil::{stress, Diameters};
/// use coilnest::quantity::{Force, Length, unit::{megapascal, millimeter, newton}};
///
/// let mm = Length::new::<millimeter>;
/// let coil = Diameters::from_mean(mm(10.0), mm(80.0))?;
/// let tau = stress::uncorrected(Force::new::<newton>(1000.0), coil);
/// assert!((tau.get::<megapascal>() - 203.718_327).abs() < 1e-6); // 8·1000·80/(π·1000)
/// # Ok::<(), coilnest::coil::DiametersError>(())
/// ```
#[must_use]
pub fn uncorrected(load: Force, coil: Diameters) -> Pressure {
    8.0 * coil.index() * load / (core::f64::consts::PI * coil.bar() * coil.bar())
}

/// Where [`uncorrected`] comes from.
pub const SOURCE: Source =
    Source::new("Machinery's Handbook, 31st ed.", "p. 318, table 4", Known::Page);

/// What the uncorrected stress is multiplied by. A stress never stands without its name.
#[derive(Clone, Copy, Debug)]
pub struct Factor {
    /// Its name, as it stands behind a stress.
    pub name: &'static str,
    /// The stress in symbols, with its name.
    pub formula: &'static str,
    /// Where it comes from.
    pub source: Source,
    value: fn(f64) -> f64,
}

impl Factor {
    /// By nothing.
    pub const UNCORRECTED: Self = Self {
        name: "uncorrected",
        formula: "τ = 8 · F · D / (π · d³), uncorrected",
        source: SOURCE,
        value: |_| 1.0,
    };

    /// By `1 + 1/(2 C)`, for the shear across the bar alone.
    pub const DIRECT_SHEAR: Self = Self {
        name: "with the direct-shear factor",
        formula: "τ = K · 8 · F · D / (π · d³), with the direct-shear factor K",
        source: DIRECT_SHEAR_SOURCE,
        value: |index| 1.0 + 0.5 / index,
    };

    /// By [`wahl`]'s.
    pub const WAHL: Self = Self {
        name: "with Wahl's factor",
        formula: "τk = K · 8 · F · D / (π · d³), with Wahl's factor K",
        source: WAHL_SOURCE,
        value: wahl,
    };

    /// By [`bergstrasser`]'s.
    pub const BERGSTRASSER: Self = Self {
        name: "with Bergsträsser's factor",
        formula: "τk = K · 8 · F · D / (π · d³), with Bergsträsser's factor K",
        source: BERGSTRASSER_SOURCE,
        value: bergstrasser,
    };

    /// Its value at an index.
    #[must_use]
    pub fn at(&self, index: f64) -> f64 {
        (self.value)(index)
    }
}

/// Where [`Factor::DIRECT_SHEAR`] comes from.
pub const DIRECT_SHEAR_SOURCE: Source =
    Source::new("Shigley's Mechanical Engineering Design, 10th ed.", "eq. 10-3", Known::Memory);

/// Wahl's factor for the stress at the inside of the coil.
///
/// ```text
/// K = (4 C − 1)/(4 C − 4) + 0.615/C
/// ```
/// # Range
/// Index above 1. It lies 0.8 to 2.6 % above the peak that solid elements give for C from 3 to 12,
/// so it errs on the safe side.
///
/// # Source
/// [`WAHL_SOURCE`].
#[must_use]
pub fn wahl(index: f64) -> f64 {
    (4.0 * index - 1.0) / (4.0 * index - 4.0) + 0.615 / index
}

/// Where [`wahl`] comes from.
pub const WAHL_SOURCE: Source = Source::new(
    "Shigley's Mechanical Engineering Design, 10th ed.",
    "eq. 10-4",
    Known::QuotedIn("the published solution of problem 10-1"),
);

/// Bergsträsser's factor, which is also EN 13906-1's `k`.
///
/// ```text
/// K = (4 C + 2)/(4 C − 3) = (C + 0.5)/(C − 0.75)
/// ```
/// # Range
/// Index above 1. It lies 0.05 to 1.05 % above the peak that solid elements give for C from 3 to 12.
///
/// # Source
/// [`BERGSTRASSER_SOURCE`].
#[must_use]
pub fn bergstrasser(index: f64) -> f64 {
    (4.0 * index + 2.0) / (4.0 * index - 3.0)
}

/// Where [`bergstrasser`] comes from.
pub const BERGSTRASSER_SOURCE: Source = Source::new(
    "Shigley's Mechanical Engineering Design, 10th ed.",
    "eq. 10-5",
    Known::QuotedIn("the published solution of problem 10-1"),
);
