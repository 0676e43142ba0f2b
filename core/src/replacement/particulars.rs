//! What is known of a spring, from a drawing, a book or a sample on the bench.

use super::corners;
use super::point::{Point, lacking};
use super::range::Range;
use crate::coil::ends::Ends;
use crate::coil::fatigue::Surface;
use crate::coil::{Coiling, Hand};
use crate::material::{self, Against, Presetting, Steel};
use crate::propagation::Across;
use crate::quantity::{Force, Length, Pressure, SpringRate};
use crate::source::Source;
use core::fmt;

/// A stress that a bar may bear at rest, and the stress that it is to be compared with.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bearable {
    /// The stress.
    pub stress: Pressure,
    /// What to compare it with.
    pub against: Against,
}

/// What is known of a spring; every figure may be missing.
///
/// A rate and a solid height that are given overrule those of the drawing, as whoever states them
/// answers for them.
///
/// # Example
/// ```
/// use coilnest::coil::ends::Ends;
/// use coilnest::propagation::Across;
/// use coilnest::quantity::{Length, Pressure};
/// use coilnest::quantity::unit::{gigapascal, millimeter, newton_per_millimeter};
/// use coilnest::replacement::{Figure, Particulars, Range};
///
/// let mm = Length::new::<millimeter>;
/// let mut coil = Particulars {
///     bar: Some(Range::around(mm(10.0), mm(0.1), mm(0.1))?),
///     diameter: Some((Across::Mean, Range::exact(mm(80.0)))),
///     total_turns: Some(Range::exact(7.0)),
///     ends: Some(Ends::ClosedGround),
///     shear_modulus: Some(Range::exact(Pressure::new::<gigapascal>(80.0))),
///     ..Particulars::default()
/// };
/// let rate = coil.rate().unwrap();
/// assert!((rate.nominal().get::<newton_per_millimeter>() - 39.0625).abs() < 1e-9); // G d⁴/(8 D³ 5)
/// assert!((rate.most() / rate.nominal()).value - 1.01_f64.powi(4) < 1e-12);
///
/// coil.bar = None;
/// assert_eq!(coil.rate(), Err(vec![Figure::Bar]));
/// # Ok::<(), coilnest::propagation::corners::Crossed<Length>>(())
/// ```
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Particulars {
    /// Bar d.
    pub bar: Option<Range<Length>>,
    /// One diameter of the coil, and which it is.
    pub diameter: Option<(Across, Range<Length>)>,
    /// All turns, tip to tip.
    pub total_turns: Option<Range<f64>>,
    /// Turns that lie dead; those of the [ends](Ends::dead_turns), without a doubt, where none are given.
    pub dead_turns: Option<Range<f64>>,
    /// The form of the ends.
    pub ends: Option<Ends>,
    /// The way it is wound.
    pub hand: Option<Hand>,
    /// Whether it is wound cold or hot.
    pub coiling: Option<Coiling>,
    /// Free height L0.
    pub free: Option<Range<Length>>,
    /// Solid height Lc, where a book or a press gives it.
    pub solid: Option<Range<Length>>,
    /// Rate, where a book or a press gives it.
    pub rate: Option<Range<SpringRate>>,
    /// Shear modulus G; the steel's where none is given.
    pub shear_modulus: Option<Range<Pressure>>,
    /// Young's modulus E; the steel's where none is given.
    pub youngs_modulus: Option<Pressure>,
    /// The steel.
    pub steel: Option<Steel>,
    /// Whether its set was taken out; as wound where nobody says so.
    pub presetting: Option<Presetting>,
    /// Whether it was shot peened; not where nobody says so.
    pub surface: Option<Surface>,
    /// The stress that it may bear at rest; by the steel and the bar where none is given.
    pub bearable: Option<Bearable>,
    /// Tensile strength of the bar; by the steel where none is given.
    pub tensile: Option<Pressure>,
}

/// A figure of a spring that may be missing.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[non_exhaustive]
pub enum Figure {
    /// The bar.
    Bar,
    /// A diameter of the coil.
    Diameter,
    /// The total turns.
    TotalTurns,
    /// The form of the ends, or the dead turns and whatever else follows from it.
    Ends,
    /// The way it is wound.
    Hand,
    /// The free height.
    FreeHeight,
    /// The solid height.
    SolidHeight,
    /// The rate.
    Rate,
    /// The shear modulus, or the steel.
    ShearModulus,
    /// Young's modulus, or the steel.
    YoungsModulus,
    /// The stress that it may bear, or a steel whose strength is known.
    BearableStress,
    /// The tensile strength, or a steel whose strength is known.
    TensileStrength,
    /// The load of a nest.
    Load,
    /// Fatigue tests of bars of its size: see [`fatigue::tested`](crate::coil::fatigue::tested).
    FatigueTests,
}

impl fmt::Display for Figure {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Bar => "the bar",
            Self::Diameter => "the diameter",
            Self::TotalTurns => "the total turns",
            Self::Ends => "the form of the ends",
            Self::Hand => "the hand",
            Self::FreeHeight => "the free height",
            Self::SolidHeight => "the solid height",
            Self::Rate => "the rate",
            Self::ShearModulus => "the shear modulus",
            Self::YoungsModulus => "Young's modulus",
            Self::BearableStress => "the bearable stress",
            Self::TensileStrength => "the tensile strength",
            Self::Load => "the load",
            Self::FatigueTests => "a fatigue test of bars of its size",
        })
    }
}

impl Particulars {
    /// The rate: as given, else that of the drawing, over all its tolerances.
    ///
    /// # Errors
    /// What is missing. One figure of the drawing where that is all it lacks, else the rate itself.
    ///
    /// # Source
    /// [`coil::rate::SOURCE`](crate::coil::rate::SOURCE), [`corners::SOURCE`](super::SOURCE).
    pub fn rate(&self) -> Result<Range<SpringRate>, Vec<Figure>> {
        let rate = corners::range(self, |point| Ok(point.rate()?.value))?;
        Ok(rate.map(|value| SpringRate { value, ..SpringRate::default() }))
    }

    /// The solid height: as given, else that of the drawing, over all its tolerances.
    ///
    /// # Errors
    /// What is missing, as for [`Particulars::rate`].
    ///
    /// # Source
    /// [`coil::solid::source`](crate::coil::solid::source).
    pub fn solid(&self) -> Result<Range<Length>, Vec<Figure>> {
        self.length(Point::solid)
    }

    /// The outside diameter, free.
    ///
    /// # Errors
    /// What is missing.
    pub fn outside(&self) -> Result<Range<Length>, Vec<Figure>> {
        self.length(|point| Ok(point.coil()?.outside()))
    }

    /// The inside diameter, free.
    ///
    /// # Errors
    /// What is missing.
    pub fn inside(&self) -> Result<Range<Length>, Vec<Figure>> {
        self.length(|point| Ok(point.coil()?.inside()))
    }

    /// The active turns.
    ///
    /// # Errors
    /// What is missing.
    pub fn active_turns(&self) -> Result<Range<f64>, Vec<Figure>> {
        corners::range(self, |point| Ok(point.turns()?.active()))
    }

    /// The load at a height, nought where it stands free.
    ///
    /// # Errors
    /// What is missing.
    pub fn load(&self, height: Length) -> Result<Range<Force>, Vec<Figure>> {
        let load = corners::range(self, |point| Ok(point.load(height)?.value))?;
        Ok(load.map(|value| Force { value, ..Force::default() }))
    }

    fn length(
        &self,
        of: impl Fn(&Point) -> Result<Length, Vec<Figure>>,
    ) -> Result<Range<Length>, Vec<Figure>> {
        let length = corners::range(self, |point| Ok(of(point)?.value))?;
        Ok(length.map(|value| Length { value, ..Length::default() }))
    }

    pub(super) fn shear(&self) -> Option<Range<Pressure>> {
        let of_steel = || self.steel.map(|steel| Range::exact(steel.shear_modulus().value));
        self.shear_modulus.or_else(of_steel)
    }

    pub(super) fn dead(&self) -> Option<Range<f64>> {
        self.dead_turns.or_else(|| self.ends.map(|ends| Range::exact(ends.dead_turns())))
    }

    /// Poisson's ratio of the nominal moduli.
    pub(super) fn poisson(&self) -> Result<f64, Vec<Figure>> {
        let youngs =
            self.youngs_modulus.or_else(|| self.steel.map(|steel| steel.youngs_modulus().value));
        match (self.shear(), youngs) {
            (Some(shear), Some(youngs)) => {
                let poisson = material::poisson(shear.nominal(), youngs);
                if (0.0..=0.5).contains(&poisson) {
                    Ok(poisson)
                } else {
                    Err(vec![Figure::YoungsModulus])
                }
            }
            (shear, youngs) => Err(lacking([
                (shear.is_none(), Figure::ShearModulus),
                (youngs.is_none(), Figure::YoungsModulus),
            ])),
        }
    }

    /// The stress that it may bear at rest: where the bar may be thicker or thinner, the least.
    pub(super) fn bearable(&self, presetting: Presetting) -> Result<Bearable, Vec<Figure>> {
        if let Some(bearable) = self.bearable {
            return Ok(bearable);
        }
        let stated = self.stated(|steel, bar| {
            let allowable = steel.allowable_static(bar, presetting).ok()?;
            Some(Bearable { stress: allowable.stress.value, against: allowable.against })
        })?;
        let weaker = |one: Bearable, other: Bearable| {
            if other.stress < one.stress { other } else { one }
        };
        stated.into_iter().flatten().reduce(weaker).ok_or_else(|| vec![Figure::BearableStress])
    }

    /// Who says what it may bear at rest; none where it was given.
    pub(super) fn bearable_source(&self) -> Option<Source> {
        let presetting = self.presetting.unwrap_or(Presetting::AsWound);
        let (None, Some(steel), Some(bar)) = (self.bearable, self.steel, self.bar) else {
            return None;
        };
        Some(steel.allowable_static(bar.nominal(), presetting).ok()?.stress.source)
    }

    /// Tensile strength: where the bar may be thicker or thinner, the least.
    pub(super) fn tensile(&self) -> Result<Pressure, Vec<Figure>> {
        if let Some(tensile) = self.tensile {
            return Ok(tensile);
        }
        let stated = self.stated(|steel, bar| Some(steel.strength(bar).ok()?.value))?;
        let weaker = |one: Pressure, other: Pressure| if other < one { other } else { one };
        stated.into_iter().flatten().reduce(weaker).ok_or_else(|| vec![Figure::TensileStrength])
    }

    /// What the steel says of the thinnest, the nominal and the thickest bar; none where it does not
    /// speak of one of them.
    fn stated<T>(
        &self,
        of: impl Fn(Steel, Length) -> Option<T>,
    ) -> Result<Option<[T; 3]>, Vec<Figure>> {
        let Some(steel) = self.steel else { return Ok(None) };
        let bar = self.bar.ok_or_else(|| vec![Figure::Bar])?;
        let said = |size| steel.fits(size).ok().and_then(|()| of(steel, size));
        let [Some(thin), Some(nominal), Some(thick)] =
            [said(bar.least()), said(bar.nominal()), said(bar.most())]
        else {
            return Ok(None);
        };
        Ok(Some([thin, nominal, thick]))
    }
}
