//! How fast a coil swings within itself.

use crate::formula::Formula;
use crate::quantity::{Frequency, Mass, SpringRate};
use crate::source::{Known, Source};

/// Which of a coil's ends keep their place while it surges.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kept {
    /// Both, as between two seats.
    Both,
    /// One; the other is free.
    One,
}

/// First natural frequency of the coil alone, swinging along its axis.
///
/// ```text
/// both ends kept  f = ½ · √(k/m)
/// one end kept    f = ¼ · √(k/m)
/// ```
/// `f` frequency, Hz · `k` rate, N/m · `m` mass of the active turns, kg ([`super::bar::mass`])
///
/// With turns taken as flat circles the first is `d/(2 π n D²) · √(G/(2 ρ))`, for which EN 13906-1
/// rounds to `3560 · d/(n D²) · √(G/ρ)` in mm, N/mm² and kg/dm³; 3558.81 is exact. What shakes the
/// coil should stay below a fifteenth to a twentieth of this frequency.
///
/// # Range
/// The coil's own mass only: what rides on it has a frequency of its own.
///
/// # Source
/// [`SOURCE`].
///
/// # Example
/// ```
/// use coilnest::coil::surge::{self, Kept};
/// use coilnest::quantity::{Mass, SpringRate, unit::{hertz, kilogram, newton_per_meter}};
///
/// let rate = SpringRate::new::<newton_per_meter>(400_000.0);
/// let first = surge::first(rate, Mass::new::<kilogram>(10.0), Kept::Both);
/// assert!((first.get::<hertz>() - 100.0).abs() < 1e-9); // ½·√40 000
/// ```
#[must_use]
pub fn first(rate: SpringRate, active: Mass, kept: Kept) -> Frequency {
    let waves = match kept {
        Kept::Both => 0.5,
        Kept::One => 0.25,
    };
    waves * (rate / active).sqrt()
}

/// The first frequency of a coil kept at both ends, in symbols.
pub const FIRST: Formula = Formula::new("{f} = 0.5 · √({k} / {ma})");

/// The same with the mass in pounds and the rate in pounds to the inch.
pub const FIRST_IN_POUNDS: Formula = Formula::new("{f} = 0.5 · √({k} · {g0} / {ma})");

/// Where [`first`] comes from.
pub const SOURCE: Source = Source::new(
    "Shigley's Mechanical Engineering Design, 10th ed.",
    "eqs. 10-25 and 10-26",
    Known::Memory,
);
