//! The bar that a coil is wound of: how steep it runs, how long it is, what it weighs.

use super::Diameters;
use super::ends::{Ends, Turns};
use crate::formula::Formula;
use crate::quantity::{Angle, Length, Mass, MassDensity, si};
use crate::source::{Known, Source};

/// Pitch angle of the bar.
///
/// ```text
/// tan α = p / (π · D)
/// ```
/// `p` pitch ([`super::solid::pitch`]) · `D` mean diameter
///
/// # Source
/// Geometry of the helix.
///
/// # Example
/// ```
/// use coilnest::coil::{bar, Diameters};
/// use coilnest::quantity::{Length, unit::{degree, millimeter}};
///
/// let mm = Length::new::<millimeter>;
/// let coil = Diameters::from_mean(mm(30.0), mm(150.0))?;
/// let angle = bar::pitch_angle(coil, mm(50.0));
/// assert!((angle.get::<degree>() - 6.057).abs() < 5e-4); // atan(50/471.24)
/// # Ok::<(), coilnest::coil::DiametersError>(())
/// ```
#[must_use]
pub fn pitch_angle(coil: Diameters, pitch: Length) -> Angle {
    let tangent = pitch.value / (core::f64::consts::PI * coil.mean().value);
    si(libm::atan(tangent))
}

/// Length of bar in so many turns of one pitch, as those at work for [`super::surge`].
///
/// ```text
/// l = π · D · n / cos α = n · √((π · D)² + p²)
/// ```
/// `n` turns · `D` mean diameter · `p` pitch
///
/// # Source
/// [`SOURCE`].
///
/// # Example
/// ```
/// use coilnest::coil::{bar, Diameters};
/// use coilnest::quantity::{Length, unit::millimeter};
///
/// let mm = Length::new::<millimeter>;
/// let coil = Diameters::from_mean(mm(30.0), mm(150.0))?;
/// let length = bar::length(coil, mm(50.0), 6.5);
/// assert!((length.get::<millimeter>() - 3080.25).abs() < 0.01); // 6.5·√(471.239² + 50²)
/// # Ok::<(), coilnest::coil::DiametersError>(())
/// ```
#[must_use]
pub fn length(coil: Diameters, pitch: Length, turns: f64) -> Length {
    let round = core::f64::consts::PI * coil.mean();
    turns * (round * round + pitch * pitch).sqrt()
}

/// Length of bar in the whole free coil.
///
/// ```text
/// l = n · √((π · D)² + p²) + (nt − n) · √((π · D)² + d²)
/// ```
/// `n` active, `nt` total turns · `p` pitch of the active turns · `d` bar
///
/// Dead turns lie on each other, a bar to the turn. Open and ground ends lie on nothing: all their
/// turns have the one pitch.
///
/// # Range
/// Tapered tips are drawn out of less bar, and what is cropped or ground off is not in it: order by
/// the drawing.
///
/// # Source
/// [`SOURCE`].
///
/// # Example
/// ```
/// use coilnest::coil::{bar, Diameters, ends::{Ends, Turns}};
/// use coilnest::quantity::{Length, unit::millimeter};
///
/// let mm = Length::new::<millimeter>;
/// let coil = Diameters::from_mean(mm(30.0), mm(150.0))?;
/// let turns = Turns::new(6.5, 1.5)?;
/// let length = bar::whole(coil, mm(50.0), turns, Some(Ends::TaperedGround));
/// // 5·√(471.239² + 50²) + 1.5·√(471.239² + 30²)
/// assert!((length.get::<millimeter>() - 3077.71).abs() < 0.01);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn whole(coil: Diameters, pitch: Length, turns: Turns, ends: Option<Ends>) -> Length {
    if ends == Some(Ends::OpenGround) {
        return length(coil, pitch, turns.total());
    }
    length(coil, pitch, turns.active()) + length(coil, coil.bar(), turns.dead())
}

/// [`pitch_angle`] in symbols.
pub const PITCH_ANGLE: Formula = Formula::new("{α} = atan({p} / (π · {D}))");

/// [`whole`] in symbols.
pub const LENGTH: Formula =
    Formula::new("{l} = {n} · √((π · {D})² + {p}²) + ({nt} − {n}) · √((π · {D})² + {d}²)");
/// The same of open ends that are ground.
pub const LENGTH_OPEN_GROUND: Formula = Formula::new("{l} = {nt} · √((π · {D})² + {p}²)");

/// [`mass`] in symbols.
pub const MASS: Formula = Formula::new("{m} = {ρ} · π / 4 · {d}² · {l}");

/// Where [`length()`] and [`whole`] come from.
pub const SOURCE: Source = Source::new("coilnest", "geometry of the helix", Known::Derived);

/// Mass of a length of round bar.
///
/// ```text
/// m = ρ · π · d²/4 · l
/// ```
/// `ρ` density, kg/m³ · `d` bar, m · `l` length, m ([`length()`])
///
/// With the length of the [`whole`] coil it is the coil's mass.
///
/// # Source
/// [`SOURCE`].
///
/// # Example
/// ```
/// use coilnest::coil::{bar, Diameters};
/// use coilnest::quantity::{Length, MassDensity, unit::{kilogram, kilogram_per_cubic_meter, millimeter}};
///
/// let mm = Length::new::<millimeter>;
/// let steel = MassDensity::new::<kilogram_per_cubic_meter>(7850.0);
/// let coil = Diameters::from_mean(mm(30.0), mm(150.0))?;
/// let mass = bar::mass(coil, bar::length(coil, mm(50.0), 6.5), steel);
/// assert!((mass.get::<kilogram>() - 17.09).abs() < 0.005); // 7850·7.0686e-4·3.08025
/// # Ok::<(), coilnest::coil::DiametersError>(())
/// ```
#[must_use]
pub fn mass(coil: Diameters, length: Length, density: MassDensity) -> Mass {
    density * (core::f64::consts::PI / 4.0 * coil.bar() * coil.bar() * length)
}
