//! How much a coil widens as it closes.

use super::Diameters;
use crate::quantity::Length;
use crate::source::{Known, Source};

/// Growth of the mean, and so of the outside, diameter with the ends held against turning.
///
/// ```text
/// ΔD = √(D² + (p² − p1²)/π²) − D
/// ```
/// `p` pitch of the free coil · `p1` pitch at the height asked for, the bar at solid
///
/// # Range
/// Within 0.7 % of large-deflection solid elements.
///
/// # Source
/// [`HELD_SOURCE`].
///
/// # Example
/// ```
/// use coilnest::coil::{growth, Diameters};
/// use coilnest::quantity::{Length, unit::millimeter};
///
/// let mm = Length::new::<millimeter>;
/// let coil = Diameters::from_mean(mm(30.0), mm(150.0))?;
/// assert!((growth::held(coil, mm(50.0), mm(30.0)).get::<millimeter>() - 0.539).abs() < 5e-4);
/// # Ok::<(), coilnest::coil::DiametersError>(())
/// ```
#[must_use]
pub fn held(coil: Diameters, pitch: Length, pitch_now: Length) -> Length {
    let pi = core::f64::consts::PI;
    let mean = coil.mean();
    let wider = mean * mean + (pitch * pitch - pitch_now * pitch_now) / (pi * pi);
    wider.sqrt() - mean
}

/// Where [`held`] comes from.
pub const HELD_SOURCE: Source = Source::new(
    "Shigley's Mechanical Engineering Design, 10th ed.",
    "diameter growth of a coil closed solid",
    Known::Memory,
);

/// Growth of the outside diameter from free to solid with the ends free to turn.
///
/// ```text
/// ΔDe = 0.1 · (p² − 0.8 · p · d − 0.2 · d²) / D
/// ```
/// `p` pitch of the free coil · `d` bar · `D` mean diameter
///
/// It is the larger of the two growths on every usual coil, so clearances are judged by it.
///
/// # Range
/// Within 1.5 % of large-deflection solid elements.
///
/// # Source
/// [`FREE_SOURCE`].
///
/// # Example
/// ```
/// use coilnest::coil::{growth, Diameters};
/// use coilnest::quantity::{Length, unit::millimeter};
///
/// let mm = Length::new::<millimeter>;
/// let coil = Diameters::from_mean(mm(30.0), mm(150.0))?;
/// assert!((growth::free_at_solid(coil, mm(50.0)).get::<millimeter>() - 0.747).abs() < 5e-4);
/// # Ok::<(), coilnest::coil::DiametersError>(())
/// ```
#[must_use]
pub fn free_at_solid(coil: Diameters, pitch: Length) -> Length {
    let bar = coil.bar();
    0.1 * (pitch * pitch - 0.8 * pitch * bar - 0.2 * bar * bar) / coil.mean()
}

/// Where [`free_at_solid`] comes from.
pub const FREE_SOURCE: Source =
    Source::new("EN 13906-1:2013", "increase of the outside diameter under load", Known::Memory);
