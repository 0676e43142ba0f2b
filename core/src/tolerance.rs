//! What a standard allows a new spring to be off, for a book that gives no limit.

use crate::coil::Diameters;
use crate::coil::ends::Turns;
use crate::quantity::unit::{millimeter, newton_per_millimeter};
use crate::quantity::{Length, SpringRate};
use crate::source::{Known, Source};

/// Where [`free_height`] comes from.
pub const SOURCE: Source = Source::new(
    "EN 15800:2008",
    "cold coiled compression springs, free length, quality grade 2",
    Known::Memory,
);

/// How far the free height of a new cold-coiled spring may be off by EN 15800, quality grade 2, as
/// a half-width; none outside the standard's scope.
///
/// ```text
/// A = a · f / R
/// a = 65.92 · d^3.3 / D^1.6 · (−0.84 (C/10)³ + 3.781 (C/10)² − 4.244 (C/10) + 2.274)
/// f = −1/(3 n²) + 8/(5 n) + 0.803
/// ```
/// `d` bar, mm · `D` mean diameter, mm · `C` index · `n` active turns · `R` rate, N/mm · `a` in N
///
/// # Range
/// Bar up to 16 mm, mean diameter up to 200 mm, free height up to 630 mm, two active turns or more,
/// index from 4 to 20. Hot-wound springs have a standard of their own, ISO 11891, whose tables are
/// not in here: look them up.
///
/// # Source
/// [`SOURCE`].
///
/// # Example
/// ```
/// use coilnest::coil::{Diameters, ends::Turns};
/// use coilnest::quantity::{Length, SpringRate, unit::{millimeter, newton_per_millimeter}};
/// use coilnest::tolerance;
///
/// let mm = Length::new::<millimeter>;
/// let coil = Diameters::from_mean(mm(2.0), mm(16.0))?;
/// let rate = SpringRate::new::<newton_per_millimeter>(4.9744);
/// let half_width = tolerance::free_height(coil, Turns::new(8.0, 0.0)?, mm(60.0), rate);
/// assert!(half_width.is_some_and(|a| (a.get::<millimeter>() - 1.34).abs() < 0.005)); // derived
/// assert_eq!(tolerance::free_height(coil, Turns::new(8.0, 0.0)?, mm(700.0), rate), None);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn free_height(
    coil: Diameters,
    turns: Turns,
    free: Length,
    rate: SpringRate,
) -> Option<Length> {
    let (d, mean) = (coil.bar().get::<millimeter>(), coil.mean().get::<millimeter>());
    let (index, n) = (coil.index(), turns.active());
    let covered = (0.07..=16.0).contains(&d)
        && (0.63..=200.0).contains(&mean)
        && free.get::<millimeter>() <= 630.0
        && n >= 2.0
        && (4.0..=20.0).contains(&index);
    covered.then(|| {
        let w = index / 10.0;
        let shape = -0.84 * w * w * w + 3.781 * w * w - 4.244 * w + 2.274;
        let a = 65.92 * libm::pow(d, 3.3) / libm::pow(mean, 1.6) * shape;
        let f = -1.0 / (3.0 * n * n) + 8.0 / (5.0 * n) + 0.803;
        Length::new::<millimeter>(a * f / rate.get::<newton_per_millimeter>())
    })
}
