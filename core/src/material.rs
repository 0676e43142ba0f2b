//! What a spring steel is to a spring: its moduli and its density.

use crate::quantity::{MassDensity, Pressure};
use crate::source::Sourced;
use thiserror::Error;

/// A steel (or another spring metal) with the source of each of its numbers.
///
/// # Example
/// ```
/// use coilnest::material::Steel;
/// use coilnest::quantity::{Pressure, unit::gigapascal};
/// use coilnest::source::{Known, Source, Sourced};
///
/// let source = Source::new("mill certificate", "our own batch", Known::Page);
/// let gpa = |x| Sourced { value: Pressure::new::<gigapascal>(x), source };
/// let steel = Steel::new("batch-7", "Batch 7", gpa(78.5), gpa(206.0))?;
/// assert!((steel.poisson() - 0.312_102).abs() < 1e-6); // 206 / (2 · 78.5) − 1
/// # Ok::<(), coilnest::material::MaterialError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Steel {
    id: &'static str,
    name: &'static str,
    shear_modulus: Sourced<Pressure>,
    youngs_modulus: Sourced<Pressure>,
    shear_doubt: Option<Sourced<Pressure>>,
    density: Option<Sourced<MassDensity>>,
}

/// Why two moduli are no elastic material.
#[derive(Clone, Copy, Debug, Error, PartialEq)]
#[non_exhaustive]
pub enum MaterialError {
    /// A modulus or density is not above zero.
    #[error("{what} is {si}; it must be above zero")]
    NotPositive {
        /// Which one.
        what: &'static str,
        /// Its value in SI units.
        si: f64,
    },
    /// E/(2G) − 1 is not a Poisson's ratio of an isotropic solid.
    #[error(
        "Young's modulus over twice the shear modulus gives Poisson's ratio {poisson}; it must be from 0 to 0.5"
    )]
    Poisson {
        /// E/(2G) − 1.
        poisson: f64,
    },
}

impl Steel {
    /// A steel from its shear modulus G and Young's modulus E.
    ///
    /// # Errors
    /// [`MaterialError::NotPositive`] when a modulus is not above zero; [`MaterialError::Poisson`]
    /// when E/(2G) − 1 lies outside 0 to 0.5, which no isotropic metal has.
    pub const fn new(
        id: &'static str,
        name: &'static str,
        shear_modulus: Sourced<Pressure>,
        youngs_modulus: Sourced<Pressure>,
    ) -> Result<Self, MaterialError> {
        let (g, e) = (shear_modulus.value.value, youngs_modulus.value.value);
        if g <= 0.0 || g.is_nan() {
            return Err(MaterialError::NotPositive { what: "the shear modulus", si: g });
        }
        if e <= 0.0 || e.is_nan() {
            return Err(MaterialError::NotPositive { what: "Young's modulus", si: e });
        }
        let poisson = e / (2.0 * g) - 1.0;
        if poisson < 0.0 || poisson > 0.5 {
            return Err(MaterialError::Poisson { poisson });
        }
        Ok(Self { id, name, shear_modulus, youngs_modulus, shear_doubt: None, density: None })
    }

    /// The same steel, with one standard uncertainty of its shear modulus.
    #[must_use]
    pub const fn with_shear_doubt(mut self, doubt: Sourced<Pressure>) -> Self {
        self.shear_doubt = Some(doubt);
        self
    }

    /// The same steel, with its density.
    #[must_use]
    pub const fn with_density(mut self, density: Sourced<MassDensity>) -> Self {
        self.density = Some(density);
        self
    }

    /// The word that a job file uses.
    #[must_use]
    pub const fn id(&self) -> &'static str {
        self.id
    }

    /// The name for people.
    #[must_use]
    pub const fn name(&self) -> &'static str {
        self.name
    }

    /// Shear modulus G.
    #[must_use]
    pub const fn shear_modulus(&self) -> Sourced<Pressure> {
        self.shear_modulus
    }

    /// Young's modulus E.
    #[must_use]
    pub const fn youngs_modulus(&self) -> Sourced<Pressure> {
        self.youngs_modulus
    }

    /// One standard uncertainty of the shear modulus, where somebody states it.
    #[must_use]
    pub const fn shear_doubt(&self) -> Option<Sourced<Pressure>> {
        self.shear_doubt
    }

    /// Density, where known.
    #[must_use]
    pub const fn density(&self) -> Option<Sourced<MassDensity>> {
        self.density
    }

    /// Poisson's ratio of an isotropic solid, E/(2G) − 1.
    #[must_use]
    pub fn poisson(&self) -> f64 {
        poisson(self.shear_modulus.value, self.youngs_modulus.value)
    }
}

/// Poisson's ratio ν = E/(2G) − 1 of an isotropic solid.
#[must_use]
pub fn poisson(shear_modulus: Pressure, youngs_modulus: Pressure) -> f64 {
    youngs_modulus.value / (2.0 * shear_modulus.value) - 1.0
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::source::{Known, Source};

    fn sourced(pa: f64) -> Sourced<Pressure> {
        Sourced {
            value: Pressure::new::<crate::quantity::unit::pascal>(pa),
            source: Source::new("", "", Known::Derived),
        }
    }

    #[test]
    fn impossible_moduli_are_refused() {
        let steel = |g, e| Steel::new("x", "X", sourced(g), sourced(e));
        assert!(steel(78.5e9, 206e9).is_ok());
        assert!(matches!(steel(0.0, 206e9), Err(MaterialError::NotPositive { .. })));
        assert!(matches!(steel(f64::NAN, 206e9), Err(MaterialError::NotPositive { .. })));
        assert!(matches!(steel(78.5e9, -1.0), Err(MaterialError::NotPositive { .. })));
        assert!(matches!(steel(50e9, 206e9), Err(MaterialError::Poisson { .. })));
        assert!(matches!(steel(110e9, 206e9), Err(MaterialError::Poisson { .. })));
    }
}
