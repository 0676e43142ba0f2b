//! Every bar with every count of turns, in one go.

use super::design::{Bar, Design, Rounded, Sizes, mean_for_rate};
use super::limit::{Limit, LimitCheck};
use super::{Need, Sizing};
use crate::coil::solid::Solid;
use crate::coil::{Diameters, rate};
use crate::quantity::Length;

/// One bar with one count of turns, the mean diameter being that which gives exactly the rate.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cell {
    /// The bar.
    pub bar: Length,
    /// The active turns.
    pub active: f64,
    /// The coil; none where the mean diameter is not above the bar.
    pub design: Option<Design>,
    /// Whether it fits, and the limit that it fails worst or is nearest to.
    ///
    /// Where the height is left to the coil, reserve and gaps are met by the way it is drawn, and are
    /// not among the limits that it is near to. Rate and loads are met in every cell.
    pub verdict: LimitCheck,
}

/// The cells of every bar with every count of turns.
#[derive(Clone, Debug, PartialEq)]
pub struct Map {
    turns: usize,
    cells: Vec<Cell>,
}

impl Map {
    /// All cells, bar by bar in the order of the lists, the turns of each together.
    #[must_use]
    pub fn cells(&self) -> &[Cell] {
        &self.cells
    }

    /// The cells of one bar after the other.
    pub fn bars(&self) -> impl Iterator<Item = &[Cell]> {
        self.cells.chunks(self.turns.max(1))
    }
}

impl Sizing {
    /// Every bar with every count of turns.
    ///
    /// A boundary between regions lies where [`LimitCheck::limit`] of neighbouring cells differs, and is
    /// drawn more finely where [`LimitCheck::margin`] goes through zero between them.
    ///
    /// # Example
    /// See [the module](crate::sizing).
    #[must_use]
    pub fn map(&self) -> Map {
        let cells = self.bars.iter().flat_map(|bar| self.turns.iter().map(|n| self.cell(bar, *n)));
        Map { turns: self.turns.len(), cells: cells.collect() }
    }

    pub(super) fn cell(&self, bar: &Bar, active: f64) -> Cell {
        let (size, need) = (bar.size, &self.need);
        let mean = mean_for_rate(need.metal.shear_modulus, size, active, need.work.rate());
        match drawn(need, size, mean, active) {
            None => Cell { bar: size, active, design: None, verdict: no_hole(need, size, mean) },
            Some(sizes) => {
                let design = need.design(bar, sizes);
                let verdict = need.verdict(bar, &design, Rounded::No);
                Cell { bar: size, active, design: Some(design), verdict }
            }
        }
    }
}

/// The sizes of a bar, a mean diameter and turns: the free height is that which carries the load at
/// its height, or, where the height is left to the coil, the least that leaves the reserve.
pub(super) fn drawn(need: &Need, bar: Length, mean: Length, active: f64) -> Option<Sizes> {
    let coil = Diameters::from_mean(bar, mean).ok()?;
    let turns = need.turns(active).ok()?;
    let rate = rate::rate(need.metal.shear_modulus, coil, turns);
    let deflection = need.work.load / rate;
    let height = need.work.height.unwrap_or_else(|| {
        Solid::of(bar, turns, need.make.ends).greatest + need.least_way(coil, turns, deflection)
    });
    Some(Sizes { coil, turns, free: height + deflection })
}

/// The verdict on a bar that leaves no hole in its coil.
pub(super) fn no_hole(need: &Need, bar: Length, mean: Length) -> LimitCheck {
    let mut verdict = LimitCheck::none();
    verdict.at_least(Limit::LowIndex, (mean / bar).value, need.make.least_index);
    verdict
}
