//! From cells that fit to drawings in round figures, the best of each bar.

use super::contradiction::{NeedField, step};
use super::design::{Bar, Design, Sizes};
use super::limit::{LimitCheck, LimitSet};
use super::map::{Cell, drawn};
use super::{NeedError, Sizing};
use crate::order::InOrder;
use crate::quantity::{Length, si};

/// The steps in which a drawing gives its sizes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rounding {
    mean: Option<Length>,
    free: Option<Length>,
}

impl Rounding {
    /// No rounding.
    pub const EXACT: Self = Self { mean: None, free: None };
    /// The mean diameter to a tenth of a millimetre, the free height to half a millimetre.
    pub const METRIC: Self = Self { mean: Some(si(0.1e-3)), free: Some(si(0.5e-3)) };
    /// The mean diameter and the free height to a sixty-fourth of an inch.
    pub const INCH: Self = Self { mean: Some(si(0.025_4 / 64.0)), free: Some(si(0.025_4 / 64.0)) };

    /// Steps of the mean diameter and of the free height; exact where none is given.
    ///
    /// # Errors
    /// [`NeedError::NotPositive`] for a step that is not above zero.
    pub fn new(mean: Option<Length>, free: Option<Length>) -> Result<Self, NeedError> {
        step(NeedField::MeanStep, mean)?;
        step(NeedField::FreeStep, free)?;
        Ok(Self { mean, free })
    }

    /// The mean diameters on both sides of an exact one, the nearer first.
    pub(super) fn means(&self, mean: Length) -> impl Iterator<Item = Length> + Clone {
        sides(mean, self.mean)
    }

    /// The free heights on both sides of an exact one, the nearer first; where the coil may choose its
    /// height only the upper one, which leaves its reserve.
    pub(super) fn frees(&self, free: Length, upper: bool) -> impl Iterator<Item = Length> + Clone {
        sides(free, self.free).filter(move |side| !upper || *side >= free * (1.0 - 1e-12))
    }
}

/// Both multiples of a step beside a value, the nearer first; the value where there is no step.
fn sides(value: Length, step: Option<Length>) -> impl Iterator<Item = Length> + Clone {
    let (first, second) = match step {
        None => (value, None),
        Some(step) => {
            let count = (value / step).value;
            let below = count.floor();
            let (near, far) =
                if count - below <= 0.5 { (below, below + 1.0) } else { (below + 1.0, below) };
            (near * step, Some(far * step))
        }
    };
    core::iter::once(first).chain(second)
}

/// What makes one coil better than another.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Rank {
    /// The lighter one.
    #[default]
    Mass,
    /// The one whose stress at load is the smaller part of what is allowed.
    Stress,
}

impl Rank {
    /// What is to be as small as can be.
    pub(super) fn of(self, bar: &Bar, design: &Design) -> f64 {
        match (self, bar.at_load) {
            (Self::Stress, Ok((allowed, _))) => (design.stress_at_load / allowed).value,
            _ => design.mass.value,
        }
    }
}

/// Of all that was tried the best that fits, and the nearest of what does not.
pub(super) struct Best<T> {
    /// With its value, the smaller the better.
    pub(super) fitting: Option<(T, LimitCheck, f64)>,
    /// The one whose worst margin is best.
    pub(super) nearest: Option<(T, LimitCheck)>,
    /// What every one failed.
    pub(super) always: LimitSet,
}

impl<T> Default for Best<T> {
    fn default() -> Self {
        Self { fitting: None, nearest: None, always: LimitSet::default() }
    }
}

impl<T> Best<T> {
    pub(super) fn take(&mut self, tried: T, verdict: LimitCheck, value: f64) {
        let failing = verdict.failing;
        self.always = if self.nearest.is_none() && self.fitting.is_none() {
            failing
        } else {
            self.always.and(failing)
        };
        if verdict.fits() {
            if self.fitting.as_ref().is_none_or(|(_, _, least)| value < *least) {
                self.fitting = Some((tried, verdict, value));
            }
        } else if self.nearest.as_ref().is_none_or(|(_, best)| verdict.margin > best.margin) {
            self.nearest = Some((tried, verdict));
        }
    }
}

/// A coil that meets everything it was asked for.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Found {
    /// The coil.
    pub design: Design,
    /// The limit that it is nearest to, and what it has in hand.
    pub verdict: LimitCheck,
}

/// A bar of which no coil does, and why.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Why {
    /// The bar.
    pub bar: Length,
    /// Every limit that fails whatever the turns; none where it takes two that pull against each other.
    pub always: LimitSet,
    /// The active turns of the best that can be had, the one whose worst margin is best.
    pub active: f64,
    /// That coil; none where the bar leaves no hole in it.
    pub design: Option<Design>,
    /// What it fails.
    pub verdict: LimitCheck,
}

/// What came of a search.
#[derive(Clone, Debug, PartialEq)]
pub struct Sized {
    /// The best drawing of each bar that has one, the best of all first.
    pub designs: Vec<Found>,
    /// The other bars, in the order of the list.
    pub refused: Vec<Why>,
}

impl Sizing {
    /// The best drawing of each bar, and why the other bars have none.
    ///
    /// Each cell of the map that fits is rounded, the mean diameter and the free height to either side
    /// of their steps; the nearest that still meets everything, put through the analysis as it is
    /// drawn, is offered. Of those of one bar the best by `rank` is kept.
    ///
    /// # Example
    /// See [the module](crate::sizing).
    #[must_use]
    pub fn designs(&self, rounding: &Rounding, rank: Rank) -> Sized {
        let mut ranked = Vec::new();
        let mut refused = Vec::new();
        for bar in &self.bars {
            let best = self.best(bar, rounding, rank);
            if let Some(((_, Some(design)), verdict, value)) = best.fitting {
                ranked.push((value, Found { design, verdict }));
            } else if let Some(((active, design), verdict)) = best.nearest {
                let always = best.always;
                refused.push(Why { bar: bar.size, always, active, design, verdict });
            }
        }
        ranked.put_in_order(|a, b| a.0.total_cmp(&b.0));
        Sized { designs: ranked.into_iter().map(|(_, found)| found).collect(), refused }
    }

    fn best(&self, bar: &Bar, rounding: &Rounding, rank: Rank) -> Best<(f64, Option<Design>)> {
        let mut best = Best::default();
        for active in &self.turns {
            let cell = self.cell(bar, *active);
            let (design, verdict) = self.rounded(bar, &cell, rounding);
            let value = design.map_or(f64::INFINITY, |design| rank.of(bar, &design));
            best.take((*active, design), verdict, value);
        }
        best
    }

    /// A cell that fits as it is drawn in round figures, and whether it still does; any other as it is.
    fn rounded(&self, bar: &Bar, cell: &Cell, rounding: &Rounding) -> (Option<Design>, LimitCheck) {
        let Some(exact) = cell.design.filter(|_| cell.verdict.fits()) else {
            return (cell.design, cell.verdict);
        };
        let mut best: Option<(Design, LimitCheck)> = None;
        for mean in rounding.means(exact.coil.mean()) {
            let Some(sizes) = drawn(&self.need, bar.size, mean, cell.active) else { continue };
            for free in rounding.frees(sizes.free, self.need.work.height.is_none()) {
                let (design, verdict) = self.judged(bar, Sizes { free, ..sizes });
                if verdict.fits() {
                    return (Some(design), verdict);
                }
                if best.is_none_or(|(_, best)| verdict.margin > best.margin) {
                    best = Some((design, verdict));
                }
            }
        }
        best.map_or((None, cell.verdict), |(design, verdict)| (Some(design), verdict))
    }
}
