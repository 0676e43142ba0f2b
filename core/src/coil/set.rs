//! Whether a coil closed solid comes back to its free height, and how much it has in reserve.
//!
//! An allowable stress is a share of the least strength of new wire. What a coil in service bears is
//! not known from it: heat, rust, scale and an earlier set have had their part, and a coil that was
//! measured has been tested by nobody. What follows here is of new wire of that strength, no more.

use super::stress::Factor;
use super::{Diameters, stress};
use crate::material::Against;
use crate::quantity::{Force, Length, Pressure, System};
use crate::say::{Say, says};
use thiserror::Error;

/// The stress of a coil at solid beside what it may be.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AtSolid {
    /// With the factor that the allowable one is meant with.
    pub stress: Pressure,
    /// What may be borne.
    pub allowable: Pressure,
}

/// Why a coil cannot be judged at solid.
#[derive(Clone, Copy, Debug, Error, PartialEq)]
#[error("{}", self.say(System::Metric))]
#[non_exhaustive]
pub enum SetError {
    /// No allowable stress.
    Allowable {
        /// What was given.
        allowable: Pressure,
    },
    /// No load at solid.
    Load {
        /// What was given.
        load: Force,
    },
}

says! {
    SetError {
        Allowable { allowable } =>
            "an allowable stress of {allowable}", "one above zero",
            "take it from the steel's table or its certificate";
        Load { load } =>
            "a load of {load} at solid", "one above zero",
            "the free height must be above the solid height";
    }
}

/// Weighs the stress of a coil closed solid against what its steel may bear.
///
/// ```text
/// τc = K · 8 · Fc · D/(π · d³)
/// ```
/// `Fc` load that closes the coil, `k · (L0 − Lc)` · `K` the factor that the allowable stress is meant
/// with: 1, `1 + 1/(2 C)`, or Bergsträsser's
///
/// # Range
/// A coil at rest or seldom closed. Warm or for long under load it settles more.
///
/// # Source
/// [`stress::SOURCE`] and [`stress::BERGSTRASSER_SOURCE`]; the allowable stress names its own.
///
/// # Errors
/// [`SetError::Allowable`] and [`SetError::Load`] when either is not above zero.
///
/// # Example
/// ```
/// use coilnest::coil::{set, Diameters};
/// use coilnest::material::Against;
/// use coilnest::quantity::{Force, Length, Pressure, unit::{megapascal, millimeter, newton}};
///
/// let mm = Length::new::<millimeter>;
/// let coil = Diameters::from_mean(mm(10.0), mm(80.0))?;
/// let allowable = Pressure::new::<megapascal>(700.0);
/// let solid = set::at_solid(coil, Force::new::<newton>(2500.0), allowable, Against::Curvature)?;
/// // 1.172414·8·2500·80/(π·1000) = 597.1 of 700 MPa.
/// assert!((solid.reserve() - 0.147).abs() < 5e-4);
/// assert!(!solid.sets());
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn at_solid(
    coil: Diameters,
    load: Force,
    allowable: Pressure,
    against: Against,
) -> Result<AtSolid, SetError> {
    if !(allowable.value > 0.0 && allowable.value.is_finite()) {
        return Err(SetError::Allowable { allowable });
    }
    if !(load.value > 0.0 && load.value.is_finite()) {
        return Err(SetError::Load { load });
    }
    let stress = factor(against, coil.index()) * stress::uncorrected(load, coil);
    Ok(AtSolid { stress, allowable })
}

/// The factor that an allowable stress is meant with.
#[must_use]
pub const fn meant(against: Against) -> Factor {
    match against {
        Against::Plain => Factor::Uncorrected,
        Against::DirectShear => Factor::DirectShear,
        Against::Curvature => Factor::Bergstrasser,
        Against::Wahl => Factor::Wahl,
    }
}

/// The value of that factor.
#[must_use]
pub fn factor(against: Against, index: f64) -> f64 {
    meant(against).at(index)
}

impl AtSolid {
    /// Whether a coil of new wire of the least strength takes a set when it is closed.
    #[must_use]
    pub fn sets(&self) -> bool {
        self.stress > self.allowable
    }

    /// What is left of the allowable stress, as a share of it; less than zero where the coil sets.
    ///
    /// ```text
    /// 1 − τc/τz
    /// ```
    #[must_use]
    pub fn reserve(&self) -> f64 {
        1.0 - (self.stress / self.allowable).value
    }

    /// Factor of safety against a set, τz/τc.
    #[must_use]
    pub fn safety(&self) -> f64 {
        (self.allowable / self.stress).value
    }

    /// How low a coil of that wire may be pressed without a set: solid where it does not set at all.
    ///
    /// ```text
    /// L = L0 − (L0 − Lc) · τz/τc
    /// ```
    /// `L0` free, `Lc` solid height · `τc`, `τz` stress and allowable at solid
    ///
    /// # Example
    /// ```
    /// use coilnest::coil::set::AtSolid;
    /// use coilnest::quantity::{Length, Pressure, unit::{megapascal, millimeter}};
    ///
    /// let (mm, mpa) = (Length::new::<millimeter>, Pressure::new::<megapascal>);
    /// let solid = AtSolid { stress: mpa(800.0), allowable: mpa(600.0) };
    /// let least = solid.least_height(mm(300.0), mm(200.0));
    /// assert!((least.get::<millimeter>() - 225.0).abs() < 1e-9); // 300 − 100·600/800
    /// ```
    #[must_use]
    pub fn least_height(&self, free: Length, solid: Length) -> Length {
        if self.sets() { free - (free - solid) * self.safety() } else { solid }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::unit::{megapascal, millimeter, newton};
    use approx::assert_relative_eq;

    fn coil() -> Diameters {
        let mm = Length::new::<millimeter>;
        Diameters::from_mean(mm(10.0), mm(80.0)).unwrap()
    }

    #[test]
    fn what_has_no_strength_or_no_load_is_refused() {
        let at = |allowable, load| {
            let allowable = Pressure::new::<megapascal>(allowable);
            at_solid(coil(), Force::new::<newton>(load), allowable, Against::Plain)
        };
        assert!(at(784.0, 2500.0).is_ok());
        assert_eq!(
            at(0.0, 2500.0).unwrap_err().to_string(),
            "an allowable stress of 0 MPa; one above zero was expected: take it from the steel's table or its certificate"
        );
        assert_eq!(
            at(784.0, -20.0).unwrap_err().to_string(),
            "a load of −20 N at solid; one above zero was expected: the free height must be above the solid height"
        );
        assert!(at(f64::NAN, 2500.0).is_err());
        assert!(at(784.0, f64::INFINITY).is_err());
    }

    #[test]
    fn a_coil_sets_above_its_allowable_stress_and_not_below() {
        let allowable = Pressure::new::<megapascal>(784.0);
        // 8·F·80/(π·1000) = 784 MPa at 3848.45 N.
        for (newtons, sets) in [(3848.0, false), (3849.0, true)] {
            let load = Force::new::<newton>(newtons);
            let solid = at_solid(coil(), load, allowable, Against::Plain).unwrap();
            assert_eq!(solid.sets(), sets, "{newtons}");
        }
    }

    /// At index 8, by hand: 1, 1 + 1/16, and (4·8 + 2)/(4·8 − 3).
    #[test]
    fn the_factor_is_the_one_that_the_allowable_stress_is_meant_with() {
        // π·10³·100/(8·80)
        let load = Force::new::<newton>(490.873_852);
        let allowable = Pressure::new::<megapascal>(450.0);
        for (against, expected) in [
            (Against::Plain, 100.0),
            (Against::DirectShear, 106.25),
            (Against::Curvature, 117.241_379),
        ] {
            let solid = at_solid(coil(), load, allowable, against).unwrap();
            assert_relative_eq!(solid.stress.get::<megapascal>(), expected, max_relative = 1e-8);
        }
    }
}
