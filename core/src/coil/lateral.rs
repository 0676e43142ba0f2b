//! How hard it is to push the top of a loaded coil sideways.

use super::{Diameters, buckling};
use crate::formula::Formula;
use crate::quantity::{Length, SpringRate, System};
use crate::say::{Say, says};
use crate::source::{Known, Source};
use thiserror::Error;

/// Why a coil has no lateral rate.
#[derive(Clone, Copy, Debug, Error, PartialEq)]
#[error("{}", self.say(System::Metric))]
#[non_exhaustive]
pub enum LateralError {
    /// The deflection leaves no coil, or pulls it.
    Deflection {
        /// The deflection.
        deflection: Length,
        /// The free height.
        free: Length,
    },
    /// It has fallen over.
    FallsAside {
        /// The deflection.
        deflection: Length,
        /// Where it buckles with one seat free to move sideways.
        most: Length,
    },
}

says! {
    LateralError {
        Deflection { deflection, free } =>
            "a deflection of {deflection}", "one from 0 to below the free height of {free}",
            "take the height from the free height";
        FallsAside { deflection, most } =>
            "a deflection of {deflection}", "one below {most}",
            "from there on the coil falls aside; press it less, or guide it";
    }
}

/// Lateral load per lateral movement of one end, both ends flat on seats that stay parallel.
///
/// ```text
/// kQ = k · ξ / {ξ − 1 + a · tan(λ ξ a) / [λ · (½ + γ)]}      a = √[(½ + γ) · (γ + (1 − ξ)/ξ)]
/// kQ = k / [γ + λ² · (½ + γ)/3]                              at ξ = 0
/// ξ = s/L0      λ = L0/D      γ = G/E = 1/(2 (1 + μ))
/// ```
/// `k` axial rate, N/m · `s` axial deflection · `L0` free height · `D` mean diameter · `μ` Poisson's
/// ratio. It is worked out in a form that holds its digits down to no load at all.
///
/// The moment at the seats is there too: ends that can tilt make the coil softer.
///
/// # Range
/// Deflections from zero to where the coil buckles with [`buckling::Seating::Sliding`]; there the
/// rate has fallen to zero. Poisson's ratio from 0 to 0.5. Closed ends seat less firmly than the
/// formula has it.
///
/// # Source
/// [`SOURCE`].
///
/// # Errors
/// [`LateralError::Deflection`] when the deflection is below zero or reaches the free height;
/// [`LateralError::FallsAside`] from the deflection of buckling on.
///
/// # Example
/// ```
/// use coilnest::coil::{lateral, Diameters};
/// use coilnest::material::poisson;
/// use coilnest::quantity::{Length, Pressure, SpringRate};
/// use coilnest::quantity::unit::{gigapascal, millimeter, newton_per_millimeter};
///
/// let (mm, gpa) = (Length::new::<millimeter>, Pressure::new::<gigapascal>);
/// let coil = Diameters::from_mean(mm(25.0), mm(150.0))?;
/// let axial = SpringRate::new::<newton_per_millimeter>(1000.0);
/// let lateral = lateral::rate(axial, coil, mm(300.0), mm(60.0), poisson(gpa(78.5), gpa(206.0)))?;
/// assert!((lateral.get::<newton_per_millimeter>() - 632.87).abs() < 0.01);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn rate(
    axial: SpringRate,
    coil: Diameters,
    free: Length,
    deflection: Length,
    poisson: f64,
) -> Result<SpringRate, LateralError> {
    let share = (deflection / free).value;
    if !(0.0..1.0).contains(&share) {
        return Err(LateralError::Deflection { deflection, free });
    }
    let buckles = buckling::deflection(coil, free, buckling::Seating::Sliding, poisson);
    if let Some(most) = buckles.filter(|most| deflection >= *most) {
        return Err(LateralError::FallsAside { deflection, most });
    }
    let gamma = buckling::shear_over_youngs(poisson);
    let slenderness = buckling::slenderness(coil, free);
    let bending = slenderness * slenderness * (0.5 + gamma) * (1.0 - share + gamma * share);
    let angle = (bending * share).sqrt();
    Ok(axial / (gamma * tangent_over(angle) + (1.0 - share) * bending * tangent_excess_over(angle)))
}

/// [`rate`] in symbols, as the standard has it.
pub const FORMULA: Formula =
    Formula::new("{kQ} = {k} · {ξ} / ({ξ} − 1 + {η} · tan({λ} · {ξ} · {η}) / ({λ} · (0.5 + {γ})))");

/// The `η` of [`FORMULA`], for a part of the free height by which the coil is pressed.
#[must_use]
pub fn bend(pressed: f64, poisson: f64) -> f64 {
    let gamma = buckling::shear_over_youngs(poisson);
    libm::sqrt((0.5 + gamma) * (gamma + (1.0 - pressed) / pressed))
}

/// Where [`rate`] comes from.
pub const SOURCE: Source =
    Source::new("EN 13906-1:2013", "transverse spring rate under an axial load", Known::Memory);

/// tan x / x.
fn tangent_over(x: f64) -> f64 {
    1.0 + x * x * tangent_excess_over(x)
}

/// (tan x − x) / x³, by its series where the difference would lose digits.
fn tangent_excess_over(x: f64) -> f64 {
    let square = x * x;
    if x < 0.05 {
        1.0 / 3.0 + square * (2.0 / 15.0 + square * (17.0 / 315.0 + square * 62.0 / 2835.0))
    } else {
        (libm::tan(x) - x) / (square * x)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::unit::{millimeter, newton_per_millimeter};
    use approx::assert_relative_eq;

    fn of(deflection: f64) -> Result<f64, LateralError> {
        let mm = Length::new::<millimeter>;
        let coil = Diameters::from_mean(mm(10.0), mm(50.0)).unwrap();
        let axial = SpringRate::new::<newton_per_millimeter>(1.0);
        rate(axial, coil, mm(300.0), mm(deflection), 0.3).map(|rate| rate.value / 1000.0)
    }

    #[test]
    fn deflections_that_leave_no_upright_coil_are_refused() {
        for (deflection, sentence) in [
            (
                -1.0,
                "a deflection of −1 mm; one from 0 to below the free height of 300 mm was expected: take the height from the free height",
            ),
            (
                300.0,
                "a deflection of 300 mm; one from 0 to below the free height of 300 mm was expected: take the height from the free height",
            ),
            (
                25.0,
                "a deflection of 25 mm; one below 24.472 mm was expected: from there on the coil falls aside; press it less, or guide it",
            ),
        ] {
            assert_eq!(of(deflection).unwrap_err().to_string(), sentence);
        }
        assert!(of(f64::NAN).is_err());
    }

    /// The standard's own form, with the division by ξ that makes it lose digits near no load.
    #[test]
    fn the_form_worked_out_is_the_standards() {
        let gamma = buckling::shear_over_youngs(0.3);
        for deflection in [1.0, 5.0, 12.0, 20.0, 24.0] {
            let (xi, lambda) = (deflection / 300.0, 300.0 / 50.0);
            let a: f64 = ((0.5 + gamma) * (gamma + (1.0 - xi) / xi)).sqrt();
            let bent = a * libm::tan(lambda * xi * a) / (lambda * (0.5 + gamma));
            let standard = xi / (xi - 1.0 + bent);
            assert_relative_eq!(of(deflection).unwrap(), standard, max_relative = 1e-9);
        }
    }

    /// Both sides of the change to the series agree to the digits that the difference keeps.
    #[test]
    fn the_series_meets_the_tangent() {
        let (below, above) = (tangent_excess_over(0.05 - 1e-12), tangent_excess_over(0.05));
        assert_relative_eq!(below, above, max_relative = 3e-12);
    }
}
