//! Shear stress in the bar: uncorrected, and raised at the inside of the coil.

use super::Diameters;
use crate::formula::Formula;
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
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Factor {
    /// By nothing.
    Uncorrected,
    /// By `1 + 1/(2 C)`, for the shear across the bar alone.
    DirectShear,
    /// By [`wahl`]'s.
    Wahl,
    /// By [`bergstrasser`]'s.
    Bergstrasser,
}

impl Factor {
    /// Its value at an index.
    ///
    /// ```
    /// use coilnest::coil::stress::Factor;
    ///
    /// assert!((Factor::Wahl.at(6.0) - 1.2525).abs() < 1e-12); // 23/20 + 0.615/6
    /// ```
    #[must_use]
    pub fn at(self, index: f64) -> f64 {
        match self {
            Self::Uncorrected => 1.0,
            Self::DirectShear => 1.0 + 0.5 / index,
            Self::Wahl => wahl(index),
            Self::Bergstrasser => bergstrasser(index),
        }
    }

    /// Its name, as it stands behind a stress.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Uncorrected => "uncorrected",
            Self::DirectShear => "with the direct-shear factor",
            Self::Wahl => "with Wahl's factor",
            Self::Bergstrasser => "with Bergsträsser's factor",
        }
    }

    /// The stress under a load, in symbols.
    #[must_use]
    pub const fn formula(self) -> Formula {
        const UNCORRECTED: Formula = Formula::new("{τ} = 8 · {F} · {D} / (π · {d}³)");
        const DIRECT_SHEAR: Formula = Formula::new("{τk} = {KS} · 8 · {F} · {D} / (π · {d}³)");
        const WAHL: Formula = Formula::new("{τk} = {KW} · 8 · {F} · {D} / (π · {d}³)");
        const BERGSTRASSER: Formula = Formula::new("{τk} = {KB} · 8 · {F} · {D} / (π · {d}³)");
        match self {
            Self::Uncorrected => UNCORRECTED,
            Self::DirectShear => DIRECT_SHEAR,
            Self::Wahl => WAHL,
            Self::Bergstrasser => BERGSTRASSER,
        }
    }

    /// The stress at a height, in symbols.
    #[must_use]
    pub const fn formula_at_height(self) -> Formula {
        const UNCORRECTED: Formula =
            Formula::new("{τ} = 8 · {k} · ({L0} − {L}) · {D} / (π · {d}³)");
        const DIRECT_SHEAR: Formula =
            Formula::new("{τk} = {KS} · 8 · {k} · ({L0} − {L}) · {D} / (π · {d}³)");
        const WAHL: Formula =
            Formula::new("{τk} = {KW} · 8 · {k} · ({L0} − {L}) · {D} / (π · {d}³)");
        const BERGSTRASSER: Formula =
            Formula::new("{τk} = {KB} · 8 · {k} · ({L0} − {L}) · {D} / (π · {d}³)");
        match self {
            Self::Uncorrected => UNCORRECTED,
            Self::DirectShear => DIRECT_SHEAR,
            Self::Wahl => WAHL,
            Self::Bergstrasser => BERGSTRASSER,
        }
    }

    /// Its letter; none of what is not corrected.
    #[must_use]
    pub const fn sign(self) -> &'static str {
        match self {
            Self::Uncorrected => "",
            Self::DirectShear => "KS",
            Self::Wahl => "KW",
            Self::Bergstrasser => "KB",
        }
    }

    /// Where it comes from.
    #[must_use]
    pub const fn source(self) -> Source {
        match self {
            Self::Uncorrected => SOURCE,
            Self::DirectShear => DIRECT_SHEAR_SOURCE,
            Self::Wahl => WAHL_SOURCE,
            Self::Bergstrasser => BERGSTRASSER_SOURCE,
        }
    }
}

/// Where [`Factor::DirectShear`] comes from.
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

/// [`wahl`] in symbols.
pub const WAHL: Formula = Formula::new("{KW} = (4 · {C} − 1) / (4 · {C} − 4) + 0.615 / {C}");

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

/// [`bergstrasser`] in symbols.
pub const BERGSTRASSER: Formula = Formula::new("{KB} = (4 · {C} + 2) / (4 · {C} − 3)");

/// Where [`bergstrasser`] comes from.
pub const BERGSTRASSER_SOURCE: Source = Source::new(
    "Shigley's Mechanical Engineering Design, 10th ed.",
    "eq. 10-5",
    Known::QuotedIn("the published solution of problem 10-1"),
);
