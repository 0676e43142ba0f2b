//! What a spring steel is to a spring: its moduli, its density and its strength.

mod strength;

pub use strength::{
    Against, Allowable, Law, Presetting, RuleError, Shares, Span, Strength, StrengthError,
};

use crate::quantity::{Length, MassDensity, Pressure, System};
use crate::say::{InWords, Message, Reader, Say};
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
    sizes: Option<(Length, Length)>,
    strengths: &'static [Strength],
    row: Option<&'static str>,
}

/// A bar that a steel's moduli are not given for.
#[derive(Clone, Copy, Debug, Error, PartialEq)]
#[error("{}", self.say(System::Metric))]
pub struct SizeError {
    /// The steel's name.
    pub steel: &'static str,
    /// The bar.
    pub bar: Length,
    /// The moduli are for bars over this one.
    pub over: Length,
    /// Up to this one.
    pub up_to: Length,
}

impl Say for SizeError {
    fn say_to(&self, reader: Reader<'_>) -> Message {
        let [bar, over, up_to] =
            [self.bar, self.over, self.up_to].map(|size| size.in_words(reader));
        Message::new(
            format_args!("a bar of {bar}"),
            format_args!("one over {over} and up to {up_to}"),
            format_args!("the moduli of {} are for these; take the row of its size", self.steel),
        )
    }
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
        Ok(Self {
            id,
            name,
            shear_modulus,
            youngs_modulus,
            shear_doubt: None,
            density: None,
            sizes: None,
            strengths: &[],
            row: None,
        })
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

    /// The same steel, its moduli for bars over one size and up to another.
    #[must_use]
    pub const fn with_sizes(mut self, over: Length, up_to: Length) -> Self {
        self.sizes = Some((over, up_to));
        self
    }

    /// The same steel, with what authorities say of its strength, the one to be taken first.
    #[must_use]
    pub const fn with_strengths(mut self, strengths: &'static [Strength]) -> Self {
        self.strengths = strengths;
        self
    }

    /// The same steel, with the place where its row stands.
    #[must_use]
    pub const fn with_row(mut self, row: &'static str) -> Self {
        self.row = Some(row);
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

    /// Whether its moduli are given for a bar of that size; those of some wires fall as size rises.
    ///
    /// # Errors
    /// [`SizeError`] when they are for other sizes.
    pub fn fits(&self, bar: Length) -> Result<(), SizeError> {
        let Some((over, up_to)) = self.sizes else { return Ok(()) };
        // A bound in one unit and the same size in another differ in the last bit.
        let slack = 1e-9 * bar;
        let fits = bar - slack > over && bar - slack <= up_to;
        fits.then_some(()).ok_or(SizeError { steel: self.name, bar, over, up_to })
    }

    /// Where its row stands, for a reader who wants to see it there: the file and the row's id.
    #[must_use]
    pub const fn row(&self) -> Option<&'static str> {
        self.row
    }

    /// What each authority says of its strength; the first is the one that is taken.
    ///
    /// Those that differ stand beside each other, and no mean of them is taken.
    #[must_use]
    pub const fn strengths(&self) -> &'static [Strength] {
        self.strengths
    }

    /// The least tensile strength of a bar of that size, by the authority that is taken.
    ///
    /// # Errors
    /// [`StrengthError::Unsaid`] when no authority is named, and those of [`Strength::tensile`].
    ///
    /// # Example
    /// ```
    /// use coilnest::material::{Law, Span, Steel, Strength, StrengthError};
    /// use coilnest::quantity::{Length, Pressure, unit::{gigapascal, megapascal, millimeter}};
    /// use coilnest::source::{Known, Source, Sourced};
    ///
    /// let source = Source::new("mill certificate", "our own batch", Known::Page);
    /// let gpa = |x| Sourced { value: Pressure::new::<gigapascal>(x), source };
    /// let steel = Steel::new("batch-7", "Batch 7", gpa(78.5), gpa(206.0))?;
    /// let (mm, bar) = (Length::new::<millimeter>, Length::new::<millimeter>(30.0));
    /// assert_eq!(steel.strength(bar), Err(StrengthError::Unsaid { steel: "Batch 7" }));
    ///
    /// // One bar of 30 mm was tested: the same strength for 29 to 31 mm.
    /// let coefficient = Pressure::new::<megapascal>(1400.0);
    /// let law = Law::Power { coefficient, unit: mm(1.0), exponent: 0.0 };
    /// let spans = vec![Span::new(mm(29.0), mm(31.0), law)?].leak();
    /// let tested = Strength::look_up("batch-7", "batch 7", "the mill certificate");
    /// let steel = steel.with_strengths(vec![tested.with_spans(spans, source)?].leak());
    /// assert_eq!(steel.strength(bar)?.value, coefficient);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn strength(&self, bar: Length) -> Result<Sourced<Pressure>, StrengthError> {
        self.taken()?.tensile(bar)
    }

    /// The torsional stress that a bar of that size may bear under a load at rest, by the authority
    /// that is taken, and the stress that it is to be compared with.
    ///
    /// It is no statement about a load that comes and goes: that is a matter of fatigue.
    ///
    /// # Errors
    /// [`StrengthError::Unsaid`] when no authority is named, and those of [`Strength::allowable`].
    pub fn allowable_static(
        &self,
        bar: Length,
        presetting: Presetting,
    ) -> Result<Allowable, StrengthError> {
        self.taken()?.allowable(bar, presetting)
    }

    fn taken(&self) -> Result<&'static Strength, StrengthError> {
        self.strengths.first().ok_or(StrengthError::Unsaid { steel: self.name })
    }

    /// Poisson's ratio of an isotropic solid, E/(2G) − 1.
    #[must_use]
    pub fn poisson(&self) -> f64 {
        poisson(self.shear_modulus.value, self.youngs_modulus.value)
    }
}

/// Poisson's ratio μ = E/(2G) − 1 of an isotropic solid.
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
