//! Figures of a report beside numbers worked out by hand.

use coilnest::job::report::Figure;

/// One inch in metres.
pub const INCH: f64 = 0.0254;
/// One millimetre in metres.
pub const MM: f64 = 0.001;
/// One pound-force in newtons.
pub const POUND_FORCE: f64 = 4.448_221_615_260_5;
/// One pound per square inch in pascals.
pub const PSI: f64 = POUND_FORCE / (INCH * INCH);

/// A figure against a number in some unit.
///
/// # Panics
/// Where they differ by more than the last binary digits.
#[track_caller]
pub fn is(figure: &Figure, expected: f64, unit: f64) {
    let found = figure.si / unit;
    let off = (found - expected).abs();
    assert!(off <= 1e-9 * expected.abs().max(1.0), "{}: {found} and not {expected}", figure.text);
}

/// A figure that has to be there.
///
/// # Panics
/// Where it is not.
#[must_use]
#[track_caller]
#[expect(clippy::expect_used, reason = "a check without its figure has failed")]
pub fn some(figure: Option<&Figure>) -> &Figure {
    figure.expect("a figure")
}

/// k = G d⁴ / (8 D³ n), in whatever units the four have.
#[must_use]
pub fn rate(shear: f64, bar: f64, mean: f64, active: f64) -> f64 {
    shear * bar.powi(4) / (8.0 * mean.powi(3) * active)
}
