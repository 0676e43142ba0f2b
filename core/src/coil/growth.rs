//! How much a coil widens as it closes.

use super::Diameters;
use crate::formula::Formula;
use crate::quantity::{Angle, Length};
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

/// [`held`] in symbols, closed solid.
pub const HELD: Formula = Formula::new("{ΔD} = √({D}² + ({p}² − {d}²) / π²) − {D}");

/// [`held`] in symbols.
pub const HELD_AT: Formula = Formula::new("{ΔD} = √({D}² + ({p}² − {p1}²) / π²) − {D}");

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
/// It is the larger of the two growths on every usual coil: [`at_solid`] is what clearances are judged
/// by.
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

/// [`free_at_solid`] in symbols.
pub const FREE: Formula = Formula::new("{ΔD} = 0.1 · ({p}² − 0.8 · {p} · {d} − 0.2 · {d}²) / {D}");

/// Where [`free_at_solid`] comes from.
pub const FREE_SOURCE: Source =
    Source::new("EN 13906-1:2013", "increase of the outside diameter under load", Known::Memory);

/// Growth of the outside diameter from free to solid that clearances are judged by: the larger of held
/// and free ends, since nobody knows whether the ends turn; none of a coil without gaps.
///
/// # Range
/// As [`held`] and [`free_at_solid`].
///
/// # Source
/// [`HELD_SOURCE`] and [`FREE_SOURCE`].
///
/// # Example
/// ```
/// use coilnest::coil::{growth, Diameters};
/// use coilnest::quantity::{Length, unit::millimeter};
///
/// let mm = Length::new::<millimeter>;
/// let coil = Diameters::from_mean(mm(30.0), mm(150.0))?;
/// assert_eq!(growth::at_solid(coil, mm(50.0)), growth::free_at_solid(coil, mm(50.0)));
/// assert!(growth::at_solid(coil, mm(50.0)) > growth::held(coil, mm(50.0), mm(30.0)));
/// # Ok::<(), coilnest::coil::DiametersError>(())
/// ```
#[must_use]
pub fn at_solid(coil: Diameters, pitch: Length) -> Length {
    let (held, free) = (held(coil, pitch, coil.bar()), free_at_solid(coil, pitch));
    let larger = if free > held { free } else { held };
    if pitch > coil.bar() { larger } else { Length::default() }
}

/// Growth of the mean, and so of the outside, diameter at any height with the ends free to turn.
///
/// ```text
/// ΔD = 2 cos α1 · (b sin² α1 + cos² α1) / (b τ0 sin α1 + κ0 cos α1) − D
/// sin α1 = p1 / l      l = √((π D)² + p²)      b = 1 / (1 + μ)
/// κ0 = 2 cos² α / D      τ0 = 2 sin α cos α / D      tan α = p / (π D)
/// ```
/// `p` pitch of the free coil · `p1` height of the active turns over their free number, so the bar at
/// solid · `l` bar of one free turn · `b` torsional over bending stiffness of a round bar · `κ0`, `τ0`
/// curvature and torsion of the free coil · `μ` Poisson's ratio
///
/// A thin bar that keeps its length, bent and twisted so that no moment about the axis is left. For
/// small angles and at solid this is `(p² − b p d − (1 − b) d²)/(π² D)`, of which [`free_at_solid`] is
/// the standard's rounded form with b = 0.8.
///
/// # Range
/// Pitches from the bar up to that of the free coil, μ from 0 to 0.5. From 0.6 % above
/// large-deflection solid elements at index 8 to 3.5 % above at index 4, so on the safe side.
///
/// # Source
/// [`FREE_ROD_SOURCE`].
///
/// # Example
/// ```
/// use coilnest::coil::{growth, Diameters};
/// use coilnest::quantity::{Length, unit::millimeter};
///
/// let mm = Length::new::<millimeter>;
/// let coil = Diameters::from_mean(mm(30.0), mm(150.0))?;
/// let at_solid = growth::free(coil, mm(50.0), mm(30.0), 0.25).get::<millimeter>();
/// // (50² − 0.8·50·30 − 0.2·30²)/(π²·150) = 0.757 with the angles taken as small.
/// assert!((at_solid - 0.757).abs() < 0.01);
/// # Ok::<(), coilnest::coil::DiametersError>(())
/// ```
#[must_use]
pub fn free(coil: Diameters, pitch: Length, pitch_now: Length, poisson: f64) -> Length {
    let round = core::f64::consts::PI * coil.mean();
    let turn = (round * round + pitch * pitch).sqrt();
    let (sine_free, cosine_free) = ((pitch / turn).value, (round / turn).value);
    let sine = (pitch_now / turn).value;
    let cosine = (1.0 - sine * sine).sqrt();
    let twist_over_bend = 1.0 / (1.0 + poisson);
    let widened = cosine * (twist_over_bend * sine * sine + cosine * cosine)
        / (cosine_free * (twist_over_bend * sine_free * sine + cosine_free * cosine));
    coil.mean() * (widened - 1.0)
}

/// [`free`] in symbols.
pub const FREE_AT: Formula = Formula::new(
    "{ΔD} = {D} · (cos({α1}) · ({β} · (sin({α1}))² + (cos({α1}))²) / (cos({α}) · ({β} · sin({α}) · sin({α1}) + cos({α}) · cos({α1}))) − 1)",
);

/// The angle of a coil that was pressed with its ends free to turn, the `α1` of [`FREE_AT`].
#[must_use]
pub fn angle_now(coil: Diameters, pitch: Length, pitch_now: Length) -> Angle {
    let round = core::f64::consts::PI * coil.mean();
    (pitch_now / (round * round + pitch * pitch).sqrt()).asin()
}

/// Where [`free`] comes from.
pub const FREE_ROD_SOURCE: Source =
    Source::new("coilnest", "Kirchhoff's rod, of round bar and constant length", Known::Derived);

/// The larger of both growths at any height, for clearances where nobody knows whether the ends turn.
///
/// # Range
/// As [`held`] and [`free`].
///
/// # Source
/// [`HELD_SOURCE`] and [`FREE_ROD_SOURCE`].
///
/// # Example
/// ```
/// use coilnest::coil::{growth, Diameters};
/// use coilnest::quantity::{Length, unit::millimeter};
///
/// let mm = Length::new::<millimeter>;
/// let coil = Diameters::from_mean(mm(30.0), mm(150.0))?;
/// let half_way = growth::larger(coil, mm(50.0), mm(40.0), 0.3);
/// assert_eq!(half_way, growth::free(coil, mm(50.0), mm(40.0), 0.3));
/// assert!(half_way > growth::held(coil, mm(50.0), mm(40.0)));
/// # Ok::<(), coilnest::coil::DiametersError>(())
/// ```
#[must_use]
pub fn larger(coil: Diameters, pitch: Length, pitch_now: Length, poisson: f64) -> Length {
    let held = held(coil, pitch, pitch_now);
    let free = free(coil, pitch, pitch_now, poisson);
    if free > held { free } else { held }
}
