//! One spring of those within the tolerances, and the figures that follow from it.

use super::figure::{Figure, Figures};
use super::{Allowable, Drawing};
use crate::coil::DiameterKind;
use crate::coil::buckling::{self, Seating};
use crate::coil::ends::{Ends, Turns};
use crate::coil::fatigue::{self, Criterion, Cycle, Endurance, FatigueError, Strength, Surface};
use crate::coil::solid::Solid;
use crate::coil::{Diameters, growth, rate, set, solid, stress};
use crate::material::Against;
use crate::quantity::{Force, Length, Pressure, SpringRate, si};
use core::cell::Cell;

/// How many figures a tolerance can make vary: the first of [`Figure::ALL`].
pub(super) const VARYING: usize = 8;

/// A spring whose every figure is one number, or missing, and which of them were asked for.
///
/// An answer rests on the figures that it asked for, and on no others: so what an answer lacks, and
/// whose tolerance it would need, is known without a list for each formula.
#[derive(Clone, Debug)]
pub(crate) struct Point {
    values: [Option<f64>; VARYING],
    across: Option<DiameterKind>,
    ends: Option<Ends>,
    used: Cell<Figures>,
}

/// Both, or all that they lack.
pub(crate) fn both<A, B, M: core::ops::BitOr<Output = M>>(
    one: Result<A, M>,
    other: Result<B, M>,
) -> Result<(A, B), M> {
    match (one, other) {
        (Ok(one), Ok(other)) => Ok((one, other)),
        (Err(lacks), Err(more)) => Err(lacks | more),
        (Err(lacks), Ok(_)) | (Ok(_), Err(lacks)) => Err(lacks),
    }
}

/// What is lacking of a figure that may be stated or computed, by the shorter way to it, where some
/// figures are needed whichever way is taken.
fn or_stated(lacks: Figures, stated: Figure, needed: Figures) -> Figures {
    if lacks.without(needed).len() <= 1 { lacks } else { stated.into() }
}

/// The load of a coil at a height, zero where it stands free.
fn pressed(rate: SpringRate, free: Length, height: Length) -> Force {
    if free > height { rate * (free - height) } else { Force::default() }
}

/// A cycle of stress, and what of Goodman's line and the yield strength it comes nearer to.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Endured {
    /// The cycle.
    pub cycle: Cycle,
    /// What it comes nearer to.
    pub by: Nearer,
}

/// What bounds a cycle of stress.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Nearer {
    /// Goodman's line.
    Goodman {
        /// What it bears about no mean, Sse.
        reversed: Pressure,
        /// Its ultimate strength in shear, Ssu.
        ultimate: Pressure,
        /// The factor of safety, nf.
        safety: f64,
    },
    /// The yield strength in torsion, Ssy.
    Yield(Pressure),
}

impl Endured {
    /// The factor of safety.
    #[must_use]
    pub fn safety(&self) -> f64 {
        match self.by {
            Nearer::Goodman { safety, .. } => safety,
            Nearer::Yield(strength) => (strength / self.cycle.greatest()).value,
        }
    }
}

impl Point {
    /// The spring as it is meant to be.
    pub(crate) fn nominal(of: &Drawing) -> Self {
        Self {
            values: of.varying().map(|given| given.map(|given| given.nominal())),
            across: of.diameter.map(|(across, _)| across),
            ends: of.ends,
            used: Cell::default(),
        }
    }

    /// The same with a figure put in.
    pub(super) fn with(&self, figure: Figure, value: f64) -> Self {
        let mut point = self.clone();
        if let Some(slot) = point.values.get_mut(figure as usize) {
            *slot = Some(value);
        }
        point
    }

    /// The figures that were asked for.
    pub(super) fn used(&self) -> Figures {
        self.used.get()
    }

    fn find(&self, figure: Figure) -> Option<f64> {
        self.used.set(self.used.get() | figure.into());
        self.values.get(figure as usize).copied().flatten()
    }

    fn get(&self, figure: Figure) -> Result<f64, Figures> {
        self.find(figure).ok_or(figure.into())
    }

    pub(crate) fn coil(&self) -> Result<Diameters, Figures> {
        let across = self.across.ok_or(Figures::from(Figure::Diameter));
        let sizes = both(self.get(Figure::Bar), self.get(Figure::Diameter));
        let ((bar, diameter), across) = both(sizes, across)?;
        across.coil(si(bar), si(diameter)).map_err(|_| Figure::Diameter.into())
    }

    pub(crate) fn turns(&self) -> Result<Turns, Figures> {
        let dead = self.get(Figure::DeadTurns).map_err(|_| Figures::from(Figure::Ends));
        let (total, dead) = both(self.get(Figure::TotalTurns), dead)?;
        Turns::new(total, dead).map_err(|_| Figure::TotalTurns.into())
    }

    pub(crate) fn free(&self) -> Result<Length, Figures> {
        self.get(Figure::FreeHeight).map(si)
    }

    pub(crate) fn rate(&self) -> Result<SpringRate, Figures> {
        self.rate_beside(Figures::NONE)
    }

    /// The rate, where some figures are needed besides.
    fn rate_beside(&self, needed: Figures) -> Result<SpringRate, Figures> {
        if let Some(value) = self.find(Figure::Rate) {
            return Ok(si(value));
        }
        self.drawn_rate().map_err(|lacks| or_stated(lacks, Figure::Rate, needed))
    }

    /// The rate by the sizes, whatever is stated.
    pub(crate) fn drawn_rate(&self) -> Result<SpringRate, Figures> {
        let shear = self.get(Figure::ShearModulus);
        let ((coil, turns), value) = both(both(self.coil(), self.turns()), shear)?;
        Ok(rate::rate(si(value), coil, turns))
    }

    /// The height at which it stops: the greatest solid height by those who differ.
    pub(crate) fn solid(&self) -> Result<Length, Figures> {
        self.solid_beside(Figures::NONE, |solid| solid.greatest)
    }

    /// The solid heights by those who differ.
    #[cfg(feature = "job")]
    pub(crate) fn solids(&self) -> Result<Solid, Figures> {
        Ok(Solid { least: self.least_solid()?, greatest: self.solid()? })
    }

    /// The least solid height by those who differ.
    pub(crate) fn least_solid(&self) -> Result<Length, Figures> {
        self.solid_beside(Figures::NONE, |solid| solid.least)
    }

    fn solid_beside(&self, needed: Figures, of: fn(Solid) -> Length) -> Result<Length, Figures> {
        if let Some(value) = self.find(Figure::SolidHeight) {
            return Ok(si(value));
        }
        self.drawn_solid(of).map_err(|lacks| or_stated(lacks, Figure::SolidHeight, needed))
    }

    /// The solid height by the sizes, whatever is stated.
    pub(crate) fn drawn_solid(&self, of: fn(Solid) -> Length) -> Result<Length, Figures> {
        let ends = self.ends.ok_or(Figures::from(Figure::Ends));
        let ((bar, turns), ends) = both(both(self.get(Figure::Bar), self.turns()), ends)?;
        Ok(of(Solid::of(si(bar), turns, ends)))
    }

    pub(crate) fn load(&self, height: Length) -> Result<Force, Figures> {
        let (rate, free) = both(self.rate(), self.free())?;
        Ok(pressed(rate, free, height))
    }

    /// The pitch of the free coil; that of a coil without gaps is no more than its bar.
    pub(crate) fn pitch(&self) -> Result<Length, Figures> {
        let ((coil, turns), free) = both(both(self.coil(), self.turns()), self.free())?;
        Ok(match self.ends {
            Some(ends) => solid::pitch(free, coil.bar(), turns, ends),
            None => solid::pitch_from_solid(free, self.solid()?, coil.bar(), turns),
        })
    }

    /// Growth of the outside diameter at solid, the larger of held and free ends; none of a coil
    /// without gaps.
    pub(crate) fn growth(&self) -> Result<Length, Figures> {
        let (coil, pitch) = both(self.coil(), self.pitch())?;
        Ok(growth::at_solid(coil, pitch))
    }

    pub(crate) fn outside_at_solid(&self) -> Result<Length, Figures> {
        let (coil, growth) = both(self.coil(), self.growth())?;
        Ok(coil.outside() + growth)
    }

    /// Stress at a height, with the factor that an allowable one is meant with.
    pub(crate) fn stress_at(&self, height: Length, against: Against) -> Result<Pressure, Figures> {
        let coil = self.coil();
        let rate = self.rate_beside(coil.err().unwrap_or_default());
        let ((coil, rate), free) = both(both(coil, rate), self.free())?;
        let load = pressed(rate, free, height);
        Ok(set::factor(against, coil.index()) * stress::uncorrected(load, coil))
    }

    /// Stress at solid: at the least solid height by those who differ, so that it is never understated.
    pub(crate) fn stress_at_solid(&self, against: Against) -> Result<Pressure, Figures> {
        let coil = self.coil();
        let rate = self.rate_beside(coil.err().unwrap_or_default());
        let drawn = both(coil, rate);
        let needed = drawn.err().unwrap_or_default();
        let ((_, solid), _) =
            both(both(drawn, self.solid_beside(needed, |solid| solid.least)), self.free())?;
        self.stress_at(solid, against)
    }

    /// The height at which it buckles, zero where it never does.
    pub(crate) fn buckling_height(
        &self,
        seating: Seating,
        poisson: f64,
    ) -> Result<Length, Figures> {
        let (coil, free) = both(self.coil(), self.free())?;
        let buckles = buckling::deflection(coil, free, seating, poisson);
        Ok(buckles.map_or_else(Length::default, |deflection| free - deflection))
    }

    /// The lesser of Goodman's factor of safety for a life without end and of that against yielding.
    pub(crate) fn endurance(
        &self,
        (least, greatest): (Force, Force),
        tensile: Pressure,
        allowable: Allowable,
        surface: Surface,
    ) -> Result<Endured, Figures> {
        let coil = self.coil()?;
        let tests = || Figures::from(Figure::FatigueTests);
        let cycle = Cycle::between(coil, least, greatest).map_err(|_| tests())?;
        let index = coil.index();
        let torsional_yield =
            allowable.stress * stress::bergstrasser(index) / set::factor(allowable.against, index);
        let strength = Strength { tensile, torsional_yield };
        let by_yield = Endured { cycle, by: Nearer::Yield(torsional_yield) };
        match fatigue::endurance(cycle, strength, surface, Criterion::Goodman) {
            Ok(Endurance { reversed, safety, .. }) => {
                let ultimate = fatigue::torsional_ultimate(tensile);
                let by = Nearer::Goodman { reversed, ultimate, safety };
                let goodman = Endured { cycle, by };
                Ok(if safety < by_yield.safety() { goodman } else { by_yield })
            }
            Err(FatigueError::Yields { .. }) => Ok(by_yield),
            Err(FatigueError::Tensile { .. }) => Err(Figure::TensileStrength.into()),
            Err(_) => Err(tests()),
        }
    }
}
