//! One spring as far as it is known: its drawing, with tolerances, of which any figure may be missing.
//!
//! What follows from a drawing is a [`Range`] over all that varies, or the [`Figures`] that are lacking.
//! Two things are never taken for granted. A figure that is missing makes every answer that rests on it
//! missing. A tolerance that is missing ([`Given::as_drawn`]) marks every answer that rests on it: the
//! range says from which figures it may be wider ([`Range::unstated`]). So an answer is never surer for
//! knowing less.
//!
//! # Example
//! ```
//! use coilnest::coil::ends::Ends;
//! use coilnest::drawing::{Drawing, Figure, Given};
//! use coilnest::coil::DiameterKind;
//! use coilnest::quantity::{Length, Pressure};
//! use coilnest::quantity::unit::{gigapascal, millimeter, newton_per_millimeter};
//!
//! let mm = Length::new::<millimeter>;
//! let mut coil = Drawing {
//!     bar: Some(Given::around(mm(10.0), mm(0.1), mm(0.1))?),
//!     diameter: Some((DiameterKind::Mean, Given::as_drawn(mm(80.0)))),
//!     total_turns: Some(Given::exact(7.0)),
//!     dead_turns: Some(Given::exact(2.0)),
//!     ends: Some(Ends::ClosedGround),
//!     shear_modulus: Some(Given::exact(Pressure::new::<gigapascal>(80.0))),
//!     ..Drawing::default()
//! };
//! let rate = coil.rate().unwrap();
//! assert!((rate.nominal().get::<newton_per_millimeter>() - 39.0625).abs() < 1e-9); // G d⁴/(8 D³ 5)
//! assert!((rate.most() / rate.nominal()).value - 1.01_f64.powi(4) < 1e-12);
//! assert_eq!(rate.unstated(), Figure::Diameter.into());
//!
//! coil.bar = None;
//! assert_eq!(coil.rate(), Err(Figure::Bar.into()));
//! # Ok::<(), coilnest::drawing::Crossed<Length>>(())
//! ```

mod corners;
mod figure;
mod point;
mod range;

pub use corners::SOURCE;
pub use figure::{Figure, Figures};
pub use point::{Endured, Nearer};
pub use range::{Crossed, Given, Range};

pub(crate) use corners::{range as over_tolerances, range_at_corners as at_corners};
pub(crate) use point::{Point, both};

use crate::coil::DiameterKind;
use crate::coil::ends::{DEAD_TURNS_DOUBT, Ends};
use crate::coil::fatigue::Surface;
use crate::coil::{Coiling, Diameters, Hand};
use crate::material::{self, Against, Presetting, Steel};
use crate::quantity::{Force, Length, Pressure, SpringRate, si};
use crate::source::Source;
use point::VARYING;

/// An allowable stress under a load at rest, and the stress that it is to be compared with.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Allowable {
    /// The stress.
    pub stress: Pressure,
    /// What to compare it with.
    pub against: Against,
}

/// What is known of a spring; every figure may be missing.
///
/// A rate and a solid height that are stated stand before those of the sizes, as whoever states them
/// answers for them; where both are known, the figure lies where both allow it. What the sizes cannot
/// give is a [`Contradiction`].
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Drawing {
    /// Bar d.
    pub bar: Option<Given<Length>>,
    /// One diameter of the coil, and which it is.
    pub diameter: Option<(DiameterKind, Given<Length>)>,
    /// All turns, tip to tip.
    pub total_turns: Option<Given<f64>>,
    /// Turns that lie dead; those of the [ends](Ends::dead_turns), within [`DEAD_TURNS_DOUBT`], where
    /// none are given.
    pub dead_turns: Option<Given<f64>>,
    /// The form of the ends.
    pub ends: Option<Ends>,
    /// The way it is wound.
    pub hand: Option<Hand>,
    /// Whether it is wound cold or hot.
    pub coiling: Option<Coiling>,
    /// Free height L0.
    pub free: Option<Given<Length>>,
    /// Solid height Lc, where a book, a maker or a press gives it.
    pub solid: Option<Given<Length>>,
    /// Rate, where a book, a maker or a press gives it.
    pub rate: Option<Given<SpringRate>>,
    /// Loads at heights, where a book or a maker gives them.
    pub loads: Vec<LoadPoint>,
    /// Shear modulus G; the steel's, within its doubt, where none is given.
    pub shear_modulus: Option<Given<Pressure>>,
    /// Young's modulus E; the steel's where none is given.
    pub youngs_modulus: Option<Pressure>,
    /// The steel.
    pub steel: Option<Steel>,
    /// Whether its set was taken out; as wound where nobody says so.
    pub presetting: Option<Presetting>,
    /// Whether it was shot peened; not where nobody says so.
    pub surface: Option<Surface>,
    /// The allowable stress under a load at rest; by the steel and the bar where none is given.
    pub allowable: Option<Allowable>,
    /// Tensile strength of the bar; by the steel where none is given.
    pub tensile: Option<Pressure>,
}

/// A load that is stated at a height.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LoadPoint {
    /// The height.
    pub height: Length,
    /// The load there.
    pub load: Given<Force>,
}

/// What is stated and what the sizes give do not go together.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Contradiction {
    /// The sizes cannot give the stated rate.
    Rate {
        /// As stated.
        stated: SpringRate,
        /// By the sizes.
        drawn: Range<SpringRate>,
    },
    /// The sizes cannot give the stated solid height.
    SolidHeight {
        /// As stated.
        stated: Length,
        /// By the sizes.
        drawn: Range<Length>,
    },
    /// Sizes, rate and free height cannot give the stated load.
    Load {
        /// At this height.
        height: Length,
        /// As stated.
        stated: Force,
        /// By rate and free height.
        drawn: Range<Force>,
    },
}

/// How far a stated rate may lie outside what sizes without tolerances give, as a part of it, before
/// the two contradict each other: a tenth. Common practice, no source.
pub const RATE_ALLOWANCE: f64 = 0.1;

/// The same of a solid height, in bars: one. Sources differ by up to half a bar, and ends scatter by
/// as much. Common practice, no source.
pub const SOLID_ALLOWANCE: f64 = 1.0;

impl Drawing {
    /// The rate, over the tolerances.
    ///
    /// # Errors
    /// What is missing.
    pub fn rate(&self) -> Result<Range<SpringRate>, Figures> {
        let rate = over_tolerances(self, |point| Ok(point.rate()?.value))?;
        Ok(rate.map(si))
    }

    /// The height at which it stops, over the tolerances: the greatest solid height by those who differ.
    ///
    /// # Errors
    /// What is missing.
    pub fn solid(&self) -> Result<Range<Length>, Figures> {
        self.length(Point::solid)
    }

    /// The outside diameter De, free, over the tolerances.
    ///
    /// # Errors
    /// What is missing.
    pub fn outside(&self) -> Result<Range<Length>, Figures> {
        self.length(|point| Ok(point.coil()?.outside()))
    }

    /// The mean diameter D, free, over the tolerances.
    ///
    /// # Errors
    /// What is missing.
    pub fn mean(&self) -> Result<Range<Length>, Figures> {
        self.length(|point| Ok(point.coil()?.mean()))
    }

    /// The inside diameter Di, free, over the tolerances.
    ///
    /// # Errors
    /// What is missing.
    pub fn inside(&self) -> Result<Range<Length>, Figures> {
        self.length(|point| Ok(point.coil()?.inside()))
    }

    /// The outside diameter, grown at solid, over the tolerances.
    ///
    /// # Errors
    /// What is missing.
    pub fn outside_at_solid(&self) -> Result<Range<Length>, Figures> {
        self.length(Point::outside_at_solid)
    }

    /// The coil as it is meant to be, where bar and diameter are known and make one.
    #[must_use]
    pub fn nominal_coil(&self) -> Option<Diameters> {
        Point::nominal(self).coil().ok()
    }

    /// The free height, within its tolerance.
    ///
    /// # Errors
    /// What is missing.
    pub fn free(&self) -> Result<Range<Length>, Figures> {
        self.length(Point::free)
    }

    /// The turns that deflect, over the tolerances.
    ///
    /// # Errors
    /// What is missing.
    pub fn active_turns(&self) -> Result<Range<f64>, Figures> {
        over_tolerances(self, |point| Ok(point.turns()?.active()))
    }

    /// The load at a height, over the tolerances; zero where it stands free.
    ///
    /// # Errors
    /// What is missing.
    pub fn load(&self, height: Length) -> Result<Range<Force>, Figures> {
        let drawn = self.drawn_load(height).map(|load| load.map(|it| it.value));
        let stated = self.loads.iter().find(|point| (point.height - height).abs().value < 1e-9);
        let load = match stated.map(|point| point.load.map(|it| it.value).range(Figure::Load)) {
            Some(stated) => drawn.map_or(stated, |drawn| stated.within(drawn)),
            None => drawn?,
        };
        Ok(load.map(si))
    }

    fn drawn_load(&self, height: Length) -> Result<Range<Force>, Figures> {
        let load = over_tolerances(self, |point| Ok(point.load(height)?.value))?;
        Ok(load.map(si))
    }

    /// The stress at a height, with the factor of an allowable stress, over the tolerances.
    ///
    /// # Errors
    /// What is missing.
    pub fn stress_at(&self, height: Length, against: Against) -> Result<Range<Pressure>, Figures> {
        self.stress(|point| point.stress_at(height, against))
    }

    /// The stress at solid, with the factor of an allowable stress, over the tolerances; the solid
    /// height is the least by those who differ.
    ///
    /// # Errors
    /// What is missing.
    pub fn stress_at_solid(&self, against: Against) -> Result<Range<Pressure>, Figures> {
        self.stress(|point| point.stress_at_solid(against))
    }

    fn stress(
        &self,
        of: impl Fn(&Point) -> Result<Pressure, Figures>,
    ) -> Result<Range<Pressure>, Figures> {
        let stress = over_tolerances(self, |point| Ok(of(point)?.value))?;
        Ok(stress.map(si))
    }

    fn length(
        &self,
        of: impl Fn(&Point) -> Result<Length, Figures>,
    ) -> Result<Range<Length>, Figures> {
        let length = over_tolerances(self, |point| Ok(of(point)?.value))?;
        Ok(length.map(si))
    }

    /// What is stated against what the sizes give.
    #[must_use]
    pub fn contradictions(&self) -> Vec<Contradiction> {
        let mut found = Vec::new();
        if let (Some(stated), Ok(drawn)) = (self.stated_rate(), self.drawn_rate()) {
            let stated = si(stated.nominal());
            let allowed = if drawn.is_complete() { 0.0 } else { RATE_ALLOWANCE };
            if stated < drawn.least() * (1.0 - allowed) || stated > drawn.most() * (1.0 + allowed) {
                found.push(Contradiction::Rate { stated, drawn });
            }
        }
        if let (Some(stated), Ok(drawn), Some(bar)) = (self.solid, self.drawn_solid(), self.bar) {
            let stated = stated.nominal();
            let allowed = bar.nominal() * SOLID_ALLOWANCE;
            if stated < drawn.least() - allowed || stated > drawn.most() + allowed {
                found.push(Contradiction::SolidHeight { stated, drawn });
            }
        }
        for LoadPoint { height, load } in &self.loads {
            let Ok(drawn) = self.drawn_load(*height) else { continue };
            let (stated, most) = (load.nominal(), drawn.most());
            let allowed = if drawn.is_complete() { 0.0 } else { RATE_ALLOWANCE };
            if stated < drawn.least() * (1.0 - allowed) || stated > most * (1.0 + allowed) {
                found.push(Contradiction::Load { height: *height, stated, drawn });
            }
        }
        found
    }

    /// The rate by the sizes alone.
    ///
    /// # Errors
    /// What is missing.
    pub fn drawn_rate(&self) -> Result<Range<SpringRate>, Figures> {
        let rate = over_tolerances(self, |point| Ok(point.drawn_rate()?.value))?;
        Ok(rate.map(si))
    }

    /// The solid height by the sizes alone, the greatest by those who differ.
    ///
    /// # Errors
    /// What is missing.
    pub fn drawn_solid(&self) -> Result<Range<Length>, Figures> {
        self.length(|point| point.drawn_solid(|solid| solid.greatest))
    }

    /// The same by its sizes alone; none where nothing is stated beside them.
    fn without_statements(&self) -> Option<Self> {
        let stated = self.rate.is_some() || self.solid.is_some() || !self.loads.is_empty();
        stated.then(|| Self { rate: None, solid: None, loads: Vec::new(), ..self.clone() })
    }

    /// The figures that tolerances make vary, in SI units, in the order of [`Figure::ALL`].
    fn varying(&self) -> [Option<Given<f64>>; VARYING] {
        let metres = |given: Option<Given<Length>>| Some(given?.map(|length| length.value));
        [
            metres(self.bar),
            metres(self.diameter.map(|(_, diameter)| diameter)),
            self.total_turns,
            self.dead(),
            metres(self.free),
            metres(self.solid),
            self.stated_rate(),
            self.shear().map(|shear| shear.map(|modulus| modulus.value)),
        ]
    }

    /// The rate as stated, else by two loads that are stated.
    pub(crate) fn stated_rate(&self) -> Option<Given<f64>> {
        let stated = self.rate.map(|rate| rate.map(|it| it.value));
        stated.or_else(|| {
            let (first, last) = (self.loads.first()?, self.loads.last()?);
            let (upper, lower) =
                if first.height > last.height { (first, last) } else { (last, first) };
            let travel = (upper.height - lower.height).value;
            let between = |more: Force, less: Force| (more - less).value / travel;
            let end = |more: Option<Force>, less: Option<Force>| Some(between(more?, less?));
            let (high, low) = (lower.load, upper.load);
            let nominal = between(high.nominal(), low.nominal());
            let given = Given::between(
                nominal,
                end(high.least(), low.most()),
                end(high.most(), low.least()),
            );
            given.ok().filter(|_| travel > 0.0 && nominal > 0.0)
        })
    }

    /// The shear modulus as given, else the steel's within its doubt.
    pub(crate) fn shear(&self) -> Option<Given<Pressure>> {
        self.shear_modulus.or_else(|| self.steel.as_ref().map(shear_of))
    }

    /// The dead turns as given, else those of the ends within their doubt.
    pub(crate) fn dead(&self) -> Option<Given<f64>> {
        self.dead_turns.or_else(|| dead_within(self.ends?.dead_turns(), DEAD_TURNS_DOUBT))
    }

    /// Poisson's ratio, where the moduli give one that a metal can have.
    pub(crate) fn poisson(&self) -> Result<f64, Figures> {
        let youngs =
            self.youngs_modulus.or_else(|| self.steel.map(|steel| steel.youngs_modulus().value));
        match (self.shear(), youngs) {
            (Some(shear), Some(youngs)) => {
                let poisson = material::poisson(shear.nominal(), youngs);
                if (0.0..=0.5).contains(&poisson) {
                    Ok(poisson)
                } else {
                    Err(Figure::YoungsModulus.into())
                }
            }
            (shear, youngs) => Err(Figures::missing([
                (shear.is_none(), Figure::ShearModulus),
                (youngs.is_none(), Figure::YoungsModulus),
            ])),
        }
    }

    /// The allowable stress as given, else the steel's at the end of the bar's tolerance that allows
    /// less.
    pub(crate) fn allowable(&self) -> Result<Allowable, Figures> {
        if let Some(allowable) = self.allowable {
            return Ok(allowable);
        }
        let presetting = self.presetting.unwrap_or(Presetting::AsWound);
        let stated = self.by_bar(|steel, bar| {
            let allowable = steel.allowable_static(bar, presetting).ok()?;
            Some(Allowable { stress: allowable.stress.value, against: allowable.against })
        })?;
        let weaker = |one: Allowable, other: Allowable| {
            if other.stress < one.stress { other } else { one }
        };
        stated.into_iter().flatten().reduce(weaker).ok_or(Figure::AllowableStress.into())
    }

    /// Where the allowable stress comes from, where the steel gives it.
    pub(crate) fn allowable_source(&self) -> Option<Source> {
        let presetting = self.presetting.unwrap_or(Presetting::AsWound);
        let (None, Some(steel), Some(bar)) = (self.allowable, self.steel, self.bar) else {
            return None;
        };
        Some(steel.allowable_static(bar.nominal(), presetting).ok()?.stress.source)
    }

    /// The tensile strength as given, else the steel's at the end of the bar's tolerance that has less.
    pub(crate) fn tensile(&self) -> Result<Pressure, Figures> {
        if let Some(tensile) = self.tensile {
            return Ok(tensile);
        }
        let stated = self.by_bar(|steel, bar| Some(steel.strength(bar).ok()?.value))?;
        let weaker = |one: Pressure, other: Pressure| if other < one { other } else { one };
        stated.into_iter().flatten().reduce(weaker).ok_or(Figure::TensileStrength.into())
    }

    /// What its steel says of the bar at both ends of its tolerance and as drawn; none where it says
    /// nothing at one of them, or is not delivered in such a size.
    fn by_bar<T>(
        &self,
        of: impl Fn(Steel, Length) -> Option<T>,
    ) -> Result<Option<[T; 3]>, Figures> {
        let Some(steel) = self.steel else { return Ok(None) };
        let bar = self.bar.ok_or(Figures::from(Figure::Bar))?.range(Figure::Bar);
        let said = |size| steel.fits(size).ok().and_then(|()| of(steel, size));
        let [Some(thin), Some(nominal), Some(thick)] =
            [said(bar.least()), said(bar.nominal()), said(bar.most())]
        else {
            return Ok(None);
        };
        Ok(Some([thin, nominal, thick]))
    }
}

/// A count of dead turns within a half-width; fewer than none cannot lie dead.
pub(crate) fn dead_within(count: f64, half_width: f64) -> Option<Given<f64>> {
    let less = if count < half_width { count } else { half_width };
    Given::around(count, less, half_width).ok()
}

/// The shear modulus of a steel: its standard uncertainty is a uniform half-width over √3.
pub(crate) fn shear_of(steel: &Steel) -> Given<Pressure> {
    let modulus = steel.shear_modulus().value;
    let doubt = steel.shear_doubt().map_or(Pressure::default(), |doubt| doubt.value);
    let half_width = doubt * libm::sqrt(3.0);
    Given::around(modulus, half_width, half_width).unwrap_or(Given::exact(modulus))
}
