//! Whether a coil closed solid comes back to its free height, and how much it has in reserve.

use super::{Diameters, stress};
use crate::quantity::{Force, Length, Pressure, Stress, System, write};
use crate::source::{Known, Source};
use thiserror::Error;

/// What a spring is made of, as far as its allowable stress goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Family {
    /// Music wire and cold-drawn carbon steel.
    ColdDrawn,
    /// Hardened and tempered carbon and low-alloy steel, hot-wound bar among it.
    HardenedTempered,
    /// Austenitic stainless steel.
    AusteniticStainless,
    /// Metals that are no steel.
    NonFerrous,
}

/// By which authority, and of which history, a coil is judged.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Rule {
    /// The textbook's, before any set was taken out: 45, 50, 35, 35 % of the tensile strength, in the
    /// order of [`Family`], against the stress times Bergsträsser's factor.
    AsWound(Family),
    /// The textbook's, after the set was taken out by closing the coil solid: 60, 65, 55, 55 %, the
    /// lower of the two figures that it gives for each, against the stress times the factor of direct
    /// shear, 1 + 1/(2 C).
    SetRemoved(Family),
    /// The European standard's at solid, for cold-coiled steel wire: 56 %, against the plain stress.
    ///
    /// For hot-coiled bar the standard has a curve, which is not in here: look it up.
    StandardCold,
}

impl Rule {
    /// The allowable torsional stress over the tensile strength.
    #[must_use]
    pub const fn share(self) -> f64 {
        match self {
            Self::AsWound(Family::ColdDrawn) => 0.45,
            Self::AsWound(Family::HardenedTempered) => 0.50,
            Self::AsWound(Family::AusteniticStainless | Family::NonFerrous) => 0.35,
            Self::SetRemoved(Family::ColdDrawn) => 0.60,
            Self::SetRemoved(Family::HardenedTempered) => 0.65,
            Self::SetRemoved(Family::AusteniticStainless | Family::NonFerrous) => 0.55,
            Self::StandardCold => 0.56,
        }
    }

    /// The factor on the plain stress that the rule asks for at this index.
    #[must_use]
    pub fn factor(self, index: f64) -> f64 {
        match self {
            Self::AsWound(_) => stress::bergstrasser(index),
            Self::SetRemoved(_) => 1.0 + 0.5 / index,
            Self::StandardCold => 1.0,
        }
    }

    /// Where the rule comes from.
    #[must_use]
    pub const fn source(self) -> Source {
        match self {
            Self::AsWound(_) | Self::SetRemoved(_) => Source::new(
                "Shigley's Mechanical Engineering Design, 10th ed.",
                "table 10-6",
                Known::Memory,
            ),
            Self::StandardCold => Source::new(
                "EN 13906-1:2013",
                "permissible stress at solid length, cold coiled, 0.56 Rm",
                Known::Memory,
            ),
        }
    }
}

/// The stress of a coil at solid beside what it may be.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AtSolid {
    /// With the factor that the rule asks for.
    pub stress: Pressure,
    /// By the rule.
    pub allowable: Pressure,
}

/// Why a coil cannot be judged at solid.
#[derive(Clone, Copy, Debug, Error, PartialEq)]
#[non_exhaustive]
pub enum SetError {
    /// No tensile strength.
    #[error(
        "a tensile strength of {}; it must be above zero: take it from the steel's table or its certificate",
        write::<Stress>(*.tensile, System::Metric)
    )]
    Tensile {
        /// What was given.
        tensile: Pressure,
    },
    /// No load at solid.
    #[error(
        "a load of {} at solid; it must be above zero: the free height must be above the solid height",
        write::<Force>(*.load, System::Metric)
    )]
    Load {
        /// What was given.
        load: Force,
    },
}

/// Weighs the stress of a coil closed solid against the allowable one.
///
/// ```text
/// τc = K · 8 · Fc · D/(π · d³)      τz = share · Sut
/// ```
/// `Fc` load that closes the coil, `R · (L0 − Lc)` · `K` the rule's factor · `Sut` tensile strength of
/// the bar in its own size
///
/// # Range
/// A coil at rest or seldom closed. Warm or for long under load it settles more.
///
/// # Source
/// [`Rule::source`].
///
/// # Errors
/// [`SetError::Tensile`] and [`SetError::Load`] when either is not above zero.
///
/// # Example
/// ```
/// use coilnest::coil::{set::{self, Family, Rule}, Diameters};
/// use coilnest::quantity::{Force, Length, Pressure, unit::{megapascal, millimeter, newton}};
///
/// let mm = Length::new::<millimeter>;
/// let coil = Diameters::from_mean(mm(10.0), mm(80.0))?;
/// let tensile = Pressure::new::<megapascal>(1400.0);
/// let rule = Rule::AsWound(Family::HardenedTempered);
/// let solid = set::at_solid(rule, tensile, coil, Force::new::<newton>(2500.0))?;
/// // 1.172414·8·2500·80/(π·1000) = 597.1 of 700 MPa.
/// assert!((solid.reserve() - 0.147).abs() < 5e-4);
/// assert!(!solid.sets());
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn at_solid(
    rule: Rule,
    tensile: Pressure,
    coil: Diameters,
    load: Force,
) -> Result<AtSolid, SetError> {
    if !(tensile.value > 0.0 && tensile.value.is_finite()) {
        return Err(SetError::Tensile { tensile });
    }
    if !(load.value > 0.0 && load.value.is_finite()) {
        return Err(SetError::Load { load });
    }
    Ok(AtSolid {
        stress: rule.factor(coil.index()) * stress::uncorrected(load, coil),
        allowable: rule.share() * tensile,
    })
}

impl AtSolid {
    /// Whether the coil takes a set when it is closed.
    #[must_use]
    pub fn sets(&self) -> bool {
        self.stress > self.allowable
    }

    /// What is left of the allowable stress, as a share of it; below nought where the coil sets.
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

    /// How low the coil may be pressed without a set: solid where it does not set at all.
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

    #[test]
    fn what_has_no_strength_or_no_load_is_refused() {
        let mm = Length::new::<millimeter>;
        let coil = Diameters::from_mean(mm(10.0), mm(80.0)).unwrap();
        let at = |tensile, load| {
            let tensile = Pressure::new::<megapascal>(tensile);
            at_solid(Rule::StandardCold, tensile, coil, Force::new::<newton>(load))
        };
        assert!(at(1400.0, 2500.0).is_ok());
        assert_eq!(
            at(0.0, 2500.0).unwrap_err().to_string(),
            "a tensile strength of 0 MPa; it must be above zero: take it from the steel's table or its certificate"
        );
        assert_eq!(
            at(1400.0, -20.0).unwrap_err().to_string(),
            "a load of −20 N at solid; it must be above zero: the free height must be above the solid height"
        );
        assert!(at(f64::NAN, 2500.0).is_err());
        assert!(at(1400.0, f64::INFINITY).is_err());
    }

    /// EN 13906-1 (from memory): the plain stress at solid against 0.56 Rm.
    #[test]
    fn the_standards_rule_takes_the_plain_stress() {
        let mm = Length::new::<millimeter>;
        let coil = Diameters::from_mean(mm(10.0), mm(80.0)).unwrap();
        let tensile = Pressure::new::<megapascal>(1400.0);
        // 8·F·80/(π·1000) = 784 MPa at 3848.45 N.
        for (newtons, sets) in [(3848.0, false), (3849.0, true)] {
            let solid =
                at_solid(Rule::StandardCold, tensile, coil, Force::new::<newton>(newtons)).unwrap();
            assert_eq!(solid.sets(), sets, "{newtons}");
        }
    }

    /// Shigley, table 10-6 (from memory), and the factors at index 8: 1.1724 and 1.0625.
    #[test]
    fn the_textbooks_rules_are_those_of_its_table() {
        let mm = Length::new::<millimeter>;
        let coil = Diameters::from_mean(mm(10.0), mm(80.0)).unwrap();
        // π·10³·100/(8·80)
        let load = Force::new::<newton>(490.873_852);
        for (family, as_wound, set_removed) in [
            (Family::ColdDrawn, 450.0, 600.0),
            (Family::HardenedTempered, 500.0, 650.0),
            (Family::AusteniticStainless, 350.0, 550.0),
            (Family::NonFerrous, 350.0, 550.0),
        ] {
            for (rule, stress, allowable) in [
                (Rule::AsWound(family), 117.241_379, as_wound),
                (Rule::SetRemoved(family), 106.25, set_removed),
            ] {
                let tensile = Pressure::new::<megapascal>(1000.0);
                let solid = at_solid(rule, tensile, coil, load).unwrap();
                assert_relative_eq!(solid.stress.get::<megapascal>(), stress, max_relative = 1e-8);
                let found = solid.allowable.get::<megapascal>();
                assert_relative_eq!(found, allowable, max_relative = 1e-12);
            }
        }
    }
}
