//! One spring of those within the tolerances, and the figures by which it is judged.

use super::particulars::{Bearable, Figure, Particulars};
use super::range::Range;
use crate::coil::buckling::{self, Seating};
use crate::coil::ends::{Ends, Turns};
use crate::coil::fatigue::{self, Criterion, Cycle, FatigueError, Strength, Surface};
use crate::coil::{Diameters, growth, rate, set, solid, stress};
use crate::propagation::Across;
use crate::quantity::{Force, Length, Pressure, SpringRate};

/// A spring whose every figure is one number, or missing.
#[derive(Clone, Copy, Debug)]
pub(super) struct Point {
    pub(super) bar: Option<Length>,
    pub(super) diameter: Option<(Across, Length)>,
    pub(super) total_turns: Option<f64>,
    pub(super) dead_turns: Option<f64>,
    pub(super) ends: Option<Ends>,
    pub(super) shear_modulus: Option<Pressure>,
    pub(super) free: Option<Length>,
    pub(super) solid: Option<Length>,
    pub(super) rate: Option<SpringRate>,
}

/// Those of the figures that are missing.
pub(super) fn lacking<const N: usize>(missing: [(bool, Figure); N]) -> Vec<Figure> {
    missing.into_iter().filter_map(|(is, figure)| is.then_some(figure)).collect()
}

/// All that both lack.
pub(super) fn both<A, B, M: Ord>(
    one: Result<A, Vec<M>>,
    other: Result<B, Vec<M>>,
) -> Result<(A, B), Vec<M>> {
    match (one, other) {
        (Ok(one), Ok(other)) => Ok((one, other)),
        (Err(mut lacks), Err(more)) => {
            lacks.extend(more);
            lacks.sort_unstable();
            lacks.dedup();
            Err(lacks)
        }
        (Err(lacks), Ok(_)) | (Ok(_), Err(lacks)) => Err(lacks),
    }
}

/// What is lacking of a figure that may be stated or reckoned, by the shorter way to it, where some
/// figures are needed whichever way is taken.
fn or_stated(lacks: Vec<Figure>, stated: Figure, needed: &[Figure]) -> Vec<Figure> {
    let besides = lacks.iter().filter(|figure| !needed.contains(figure)).count();
    if besides <= 1 { lacks } else { vec![stated] }
}

/// The load of a coil at a height, nought where it stands free.
fn pressed(rate: SpringRate, free: Length, height: Length) -> Force {
    if free > height { rate * (free - height) } else { Force::default() }
}

impl Point {
    pub(super) fn nominal(of: &Particulars) -> Self {
        Self {
            bar: of.bar.map(|bar| bar.nominal()),
            diameter: of.diameter.map(|(across, diameter)| (across, diameter.nominal())),
            total_turns: of.total_turns.map(|turns| turns.nominal()),
            dead_turns: of.dead().map(|turns| turns.nominal()),
            ends: of.ends,
            shear_modulus: of.shear().map(|modulus| modulus.nominal()),
            free: of.free.map(|free| free.nominal()),
            solid: of.solid.map(|solid| solid.nominal()),
            rate: of.rate.map(|rate| rate.nominal()),
        }
    }

    pub(super) fn coil(&self) -> Result<Diameters, Vec<Figure>> {
        let (Some(bar), Some((across, diameter))) = (self.bar, self.diameter) else {
            return Err(lacking([
                (self.bar.is_none(), Figure::Bar),
                (self.diameter.is_none(), Figure::Diameter),
            ]));
        };
        across.coil(bar, diameter).map_err(|_| vec![Figure::Diameter])
    }

    pub(super) fn turns(&self) -> Result<Turns, Vec<Figure>> {
        let (Some(total), Some(dead)) = (self.total_turns, self.dead_turns) else {
            return Err(lacking([
                (self.total_turns.is_none(), Figure::TotalTurns),
                (self.dead_turns.is_none(), Figure::Ends),
            ]));
        };
        Turns::new(total, dead).map_err(|_| vec![Figure::TotalTurns])
    }

    pub(super) fn free(&self) -> Result<Length, Vec<Figure>> {
        self.free.ok_or_else(|| vec![Figure::FreeHeight])
    }

    pub(super) fn rate(&self) -> Result<SpringRate, Vec<Figure>> {
        self.rate_beside(&[])
    }

    /// The rate, where some figures are needed besides.
    fn rate_beside(&self, needed: &[Figure]) -> Result<SpringRate, Vec<Figure>> {
        if let Some(rate) = self.rate {
            return Ok(rate);
        }
        let shear = self.shear_modulus.ok_or_else(|| vec![Figure::ShearModulus]);
        both(both(self.coil(), self.turns()), shear)
            .map(|((coil, turns), shear)| rate::rate(shear, coil, turns))
            .map_err(|lacks| or_stated(lacks, Figure::Rate, needed))
    }

    pub(super) fn solid(&self) -> Result<Length, Vec<Figure>> {
        self.solid_beside(&[])
    }

    /// The solid height, where some figures are needed besides.
    fn solid_beside(&self, needed: &[Figure]) -> Result<Length, Vec<Figure>> {
        if let Some(solid) = self.solid {
            return Ok(solid);
        }
        let bar = self.bar.ok_or_else(|| vec![Figure::Bar]);
        let ends = self.ends.ok_or_else(|| vec![Figure::Ends]);
        both(both(bar, self.turns()), ends)
            .map(|((bar, turns), ends)| solid::height(bar, turns, ends))
            .map_err(|lacks| or_stated(lacks, Figure::SolidHeight, needed))
    }

    pub(super) fn load(&self, height: Length) -> Result<Force, Vec<Figure>> {
        let (rate, free) = both(self.rate(), self.free())?;
        Ok(pressed(rate, free, height))
    }

    /// Growth of the outside diameter at solid, the larger of held and free ends; none of a coil
    /// without gaps.
    pub(super) fn growth(&self) -> Result<Length, Vec<Figure>> {
        let ((coil, turns), free) = both(both(self.coil(), self.turns()), self.free())?;
        let pitch = match self.ends {
            Some(ends) => solid::pitch(free, coil.bar(), turns, ends),
            None => solid::pitch_from_solid(free, self.solid()?, coil.bar(), turns),
        };
        if pitch <= coil.bar() {
            return Ok(Length::default());
        }
        let (held, free) =
            (growth::held(coil, pitch, coil.bar()), growth::free_at_solid(coil, pitch));
        Ok(if free > held { free } else { held })
    }

    pub(super) fn outside_at_solid(&self) -> Result<Length, Vec<Figure>> {
        let (coil, growth) = both(self.coil(), self.growth())?;
        Ok(coil.outside() + growth)
    }

    /// Stress at a height, with the factor that the bearable one is meant with.
    pub(super) fn stress_at(
        &self,
        height: Length,
        bearable: Bearable,
    ) -> Result<Pressure, Vec<Figure>> {
        let coil = self.coil();
        let rate = self.rate_beside(coil.as_ref().err().map_or(&[], Vec::as_slice));
        let ((coil, rate), free) = both(both(coil, rate), self.free())?;
        let load = pressed(rate, free, height);
        Ok(set::factor(bearable.against, coil.index()) * stress::uncorrected(load, coil))
    }

    /// Stress at solid, with the factor that the bearable one is meant with.
    pub(super) fn stress_at_solid(&self, bearable: Bearable) -> Result<Pressure, Vec<Figure>> {
        let coil = self.coil();
        let rate = self.rate_beside(coil.as_ref().err().map_or(&[], Vec::as_slice));
        let drawn = both(coil, rate);
        let solid = self.solid_beside(drawn.as_ref().err().map_or(&[], Vec::as_slice));
        let ((_, solid), _) = both(both(drawn, solid), self.free())?;
        self.stress_at(solid, bearable)
    }

    /// The height at which it buckles, nought where it never does.
    pub(super) fn buckling_height(
        &self,
        seating: Seating,
        poisson: f64,
    ) -> Result<Length, Vec<Figure>> {
        let (coil, free) = both(self.coil(), self.free())?;
        let buckles = buckling::deflection(coil, free, seating, poisson);
        Ok(buckles.map_or_else(Length::default, |deflection| free - deflection))
    }

    /// The lesser of Goodman's factor of safety for a life without end and of that against yielding.
    pub(super) fn endurance(
        &self,
        (least, greatest): (Force, Force),
        tensile: Pressure,
        bearable: Bearable,
        surface: Surface,
    ) -> Result<f64, Vec<Figure>> {
        let coil = self.coil()?;
        let tests = || vec![Figure::FatigueTests];
        let cycle = Cycle::between(coil, least, greatest).map_err(|_| tests())?;
        let index = coil.index();
        let torsional_yield =
            bearable.stress * stress::bergstrasser(index) / set::factor(bearable.against, index);
        let against_yield = (torsional_yield / cycle.greatest()).value;
        let strength = Strength { tensile, torsional_yield };
        match fatigue::endurance(cycle, strength, surface, Criterion::Goodman) {
            Ok(found) if found.safety < against_yield => Ok(found.safety),
            Ok(_) | Err(FatigueError::Yields { .. }) => Ok(against_yield),
            Err(FatigueError::Tensile { .. }) => Err(vec![Figure::TensileStrength]),
            Err(_) => Err(tests()),
        }
    }
}

/// Writes one figure of a spring.
pub(super) type Put = fn(&mut Point, f64);

/// A figure with a tolerance: how it is put in, its least and its most, in SI units.
pub(super) struct Axis {
    pub(super) put: Put,
    pub(super) least: f64,
    pub(super) most: f64,
}

/// The figures with a tolerance, but for the bar.
pub(super) fn axes(of: &Particulars) -> Vec<Axis> {
    let mut axes = Vec::new();
    let mut add = |range: Option<Range<f64>>, put: Put| {
        if let Some(range) = range.filter(|range| range.least() < range.most()) {
            axes.push(Axis { put, least: range.least(), most: range.most() });
        }
    };
    let si = |range: Range<Length>| range.map(|length| length.value);
    add(of.diameter.map(|(_, diameter)| si(diameter)), |point, value| {
        if let Some((_, diameter)) = &mut point.diameter {
            diameter.value = value;
        }
    });
    add(of.total_turns, |point, value| point.total_turns = Some(value));
    add(of.dead(), |point, value| point.dead_turns = Some(value));
    add(of.shear().map(|range| range.map(|modulus| modulus.value)), |point, value| {
        point.shear_modulus = Some(Pressure { value, ..Pressure::default() });
    });
    add(of.free.map(si), |point, value| point.free = Some(Length { value, ..Length::default() }));
    add(of.solid.map(si), |point, value| point.solid = Some(Length { value, ..Length::default() }));
    add(of.rate.map(|range| range.map(|rate| rate.value)), |point, value| {
        point.rate = Some(SpringRate { value, ..SpringRate::default() });
    });
    axes
}
