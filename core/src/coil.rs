//! One coil: the bar it is wound of, the diameter it is wound to, its turns and its ends.
//!
//! What follows from a drawing stands in a room of its own: [`rate`], [`solid`] and [`gaps`],
//! what the ends do between [`plates`], [`stress`], [`set`] and [`fatigue`], [`buckling`] and [`lateral`], [`growth`], [`bar`], [`surge`],
//! whether its [`proportions`] are usual, and the cut that a picture shows, [`section`].

pub mod bar;
pub mod buckling;
pub mod ends;
pub mod fatigue;
pub mod gaps;
pub mod growth;
pub mod lateral;
pub mod plates;
pub mod proportions;
pub mod rate;
pub mod section;
pub mod set;
pub mod solid;
pub mod stress;
pub mod surge;

use crate::quantity::{Length, System, unit::millimeter};
use crate::say::{InWords, Reader, Say, says};
use ends::Ends;
use thiserror::Error;

/// Bar and mean diameter of a round-bar coil, which together give its index.
///
/// ```text
/// D = De − d = Di + d        C = D / d
/// ```
/// `d` bar · `D` mean, `De` outside, `Di` inside diameter of the coil · `C` index
///
/// # Example
/// ```
/// use coilnest::coil::Diameters;
/// use coilnest::quantity::{Length, unit::inch};
///
/// let inches = Length::new::<inch>;
/// let coil = Diameters::from_outside(inches(1.0), inches(6.0))?;
/// assert!((coil.mean().get::<inch>() - 5.0).abs() < 1e-12);
/// assert!((coil.inside().get::<inch>() - 4.0).abs() < 1e-12);
/// assert!((coil.index() - 5.0).abs() < 1e-12);
/// # Ok::<(), coilnest::coil::DiametersError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Diameters {
    bar: Length,
    mean: Length,
}

/// Why a bar and a diameter make no coil.
#[derive(Clone, Copy, Debug, Error, PartialEq)]
#[error("{}", self.say(System::Metric))]
#[non_exhaustive]
pub enum DiametersError {
    /// The bar is not above zero.
    Bar {
        /// The bar.
        bar: Length,
    },
    /// The bar leaves no hole inside the coil.
    NoHole {
        /// The bar.
        bar: Length,
        /// Which diameter it was to have.
        across: DiameterKind,
        /// That diameter.
        diameter: Length,
    },
}

says! {
    DiametersError {
        Bar { bar } => "a bar of {bar}", "one above zero", "measure it again";
        NoHole { bar, across, diameter } =>
            "a bar of {bar} in a coil of {across} diameter of {diameter}",
            "a diameter that leaves the coil open inside", "measure both again";
    }
}

impl Diameters {
    /// From the bar and the mean diameter.
    ///
    /// # Errors
    /// [`DiametersError::Bar`] when the bar is not above zero, [`DiametersError::NoHole`] when the
    /// mean diameter is not above the bar (index 1 or less).
    pub fn from_mean(bar: Length, mean: Length) -> Result<Self, DiametersError> {
        DiameterKind::Mean.coil(bar, mean)
    }

    /// From the bar and the outside diameter, D = De − d.
    ///
    /// # Errors
    /// As [`Diameters::from_mean`].
    pub fn from_outside(bar: Length, outside: Length) -> Result<Self, DiametersError> {
        DiameterKind::Outside.coil(bar, outside)
    }

    /// From the bar and the inside diameter, D = Di + d.
    ///
    /// # Errors
    /// As [`Diameters::from_mean`].
    pub fn from_inside(bar: Length, inside: Length) -> Result<Self, DiametersError> {
        DiameterKind::Inside.coil(bar, inside)
    }

    /// The bar (wire) diameter d.
    #[must_use]
    pub fn bar(&self) -> Length {
        self.bar
    }

    /// The mean diameter D.
    #[must_use]
    pub fn mean(&self) -> Length {
        self.mean
    }

    /// The outside diameter De = D + d.
    #[must_use]
    pub fn outside(&self) -> Length {
        self.mean + self.bar
    }

    /// The inside diameter Di = D − d.
    #[must_use]
    pub fn inside(&self) -> Length {
        self.mean - self.bar
    }

    /// The spring index C = D/d.
    #[must_use]
    pub fn index(&self) -> f64 {
        self.mean.value / self.bar.value
    }
}

/// Which diameter of the coil was measured or drawn. The other two follow from it and the bar, so
/// that an error of the bar enters the mean diameter as well.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DiameterKind {
    /// The mean diameter D, from middle to middle of the bar.
    Mean,
    /// The outside diameter De; D = De − d.
    Outside,
    /// The inside diameter Di; D = Di + d.
    Inside,
}

impl DiameterKind {
    /// The coil of a bar and this diameter.
    ///
    /// # Errors
    /// [`DiametersError`] when the bar is not above zero or leaves no hole.
    pub fn coil(self, bar: Length, diameter: Length) -> Result<Diameters, DiametersError> {
        if !(bar.value > 0.0 && bar.value.is_finite()) {
            return Err(DiametersError::Bar { bar });
        }
        let mean = match self {
            Self::Mean => diameter,
            Self::Outside => diameter - bar,
            Self::Inside => diameter + bar,
        };
        if !(mean > bar && mean.value.is_finite()) {
            return Err(DiametersError::NoHole { bar, across: self, diameter });
        }
        Ok(Diameters { bar, mean })
    }

    /// What a thicker bar adds to the mean diameter: ∂D/∂d.
    pub(crate) const fn mean_per_bar(self) -> f64 {
        match self {
            Self::Mean => 0.0,
            Self::Outside => -1.0,
            Self::Inside => 1.0,
        }
    }
}

impl InWords for DiameterKind {
    fn in_words(&self, _: Reader<'_>) -> String {
        let which = match self {
            Self::Mean => "a mean",
            Self::Outside => "an outside",
            Self::Inside => "an inside",
        };
        which.to_owned()
    }
}

/// The way a coil is wound.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Hand {
    /// Rises to the left, seen from the side.
    Left,
    /// Rises to the right, seen from the side, as a common screw does.
    Right,
}

/// How the coil is wound, which decides the gaps between its turns and what sizes are usual.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Coiling {
    /// Of wire, cold.
    Cold,
    /// Of bar, red hot.
    Hot,
}

/// Bars above this are wound hot: EN 13906-1:2013, scope of cold coiled springs (from memory).
const THICKEST_COLD_MM: f64 = 20.0;

impl Coiling {
    /// How a coil was wound, as far as its bar and its ends tell: tapered tips and bars above 20 mm
    /// are wound hot.
    ///
    /// # Example
    /// ```
    /// use coilnest::coil::{Coiling, Diameters, ends::Ends};
    /// use coilnest::quantity::{Length, unit::millimeter};
    ///
    /// let mm = Length::new::<millimeter>;
    /// let coil = Diameters::from_mean(mm(16.0), mm(80.0))?;
    /// assert_eq!(Coiling::of(coil, None), Coiling::Cold);
    /// assert_eq!(Coiling::of(coil, Some(Ends::TaperedGround)), Coiling::Hot);
    /// # Ok::<(), coilnest::coil::DiametersError>(())
    /// ```
    #[must_use]
    pub fn of(coil: Diameters, ends: Option<Ends>) -> Self {
        Self::of_bar(coil.bar(), ends)
    }

    /// The same of a bar that is not wound yet.
    #[must_use]
    pub fn of_bar(bar: Length, ends: Option<Ends>) -> Self {
        let thick = bar.get::<millimeter>() > THICKEST_COLD_MM;
        if ends == Some(Ends::TaperedGround) || thick { Self::Hot } else { Self::Cold }
    }
}

/// Whether the ends may turn about the coil's axis as it closes.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum EndsTurn {
    /// Held by their seats.
    #[default]
    Held,
    /// Free to turn.
    Free,
}

#[cfg(test)]
mod tests {
    use super::*;
    use approx::assert_relative_eq;

    fn mm(x: f64) -> Length {
        Length::new::<millimeter>(x)
    }

    #[test]
    fn the_three_diameters_name_one_coil() {
        for coil in [
            Diameters::from_mean(mm(10.0), mm(50.0)),
            Diameters::from_outside(mm(10.0), mm(60.0)),
            Diameters::from_inside(mm(10.0), mm(40.0)),
        ] {
            assert_relative_eq!(coil.unwrap().index(), 5.0, max_relative = 1e-12);
        }
    }

    #[test]
    fn a_bar_without_a_hole_is_refused() {
        assert!(matches!(
            Diameters::from_outside(mm(30.0), mm(60.0)),
            Err(DiametersError::NoHole { .. })
        ));
        assert!(matches!(
            Diameters::from_outside(mm(0.0), mm(60.0)),
            Err(DiametersError::Bar { .. })
        ));
        assert!(Diameters::from_mean(mm(f64::NAN), mm(60.0)).is_err());
        assert!(Diameters::from_mean(mm(10.0), mm(f64::INFINITY)).is_err());
    }
}
