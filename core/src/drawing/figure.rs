//! The figures that a drawing may give or lack, and sets of them.

use core::fmt;

/// A figure of a spring that may be missing, or whose tolerance may be.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[non_exhaustive]
pub enum Figure {
    /// The bar.
    Bar,
    /// A diameter of the coil.
    Diameter,
    /// The total turns.
    TotalTurns,
    /// The turns that lie dead at the ends.
    DeadTurns,
    /// The free height.
    FreeHeight,
    /// The solid height.
    SolidHeight,
    /// The rate.
    Rate,
    /// The shear modulus, or the steel.
    ShearModulus,
    /// The form of the ends, or the dead turns and whatever else follows from it.
    Ends,
    /// The way it is wound.
    Hand,
    /// The steel.
    Steel,
    /// Young's modulus, or the steel.
    YoungsModulus,
    /// The allowable stress, or a steel whose strength is known.
    AllowableStress,
    /// The tensile strength, or a steel whose strength is known.
    TensileStrength,
    /// The load of a nest.
    Load,
    /// Fatigue tests of bars of its size: see [`fatigue::tested`](crate::coil::fatigue::tested).
    FatigueTests,
}

impl Figure {
    /// Every figure, in the order in which they are listed.
    pub const ALL: [Self; 16] = [
        Self::Bar,
        Self::Diameter,
        Self::TotalTurns,
        Self::DeadTurns,
        Self::FreeHeight,
        Self::SolidHeight,
        Self::Rate,
        Self::ShearModulus,
        Self::Ends,
        Self::Hand,
        Self::Steel,
        Self::YoungsModulus,
        Self::AllowableStress,
        Self::TensileStrength,
        Self::Load,
        Self::FatigueTests,
    ];

    /// Whether caliper, tape or counting give it. The dead turns and the modulus are assumed; only a press,
    /// which measures the rate itself, makes up for them.
    #[must_use]
    pub const fn measured(self) -> bool {
        matches!(self, Self::Bar | Self::Diameter | Self::TotalTurns | Self::FreeHeight)
    }

    const fn bit(self) -> u16 {
        1 << self as u16
    }
}

impl fmt::Display for Figure {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Bar => "the bar",
            Self::Diameter => "the diameter",
            Self::TotalTurns => "the total turns",
            Self::DeadTurns => "the dead turns",
            Self::FreeHeight => "the free height",
            Self::SolidHeight => "the solid height",
            Self::Rate => "the rate",
            Self::ShearModulus => "the shear modulus",
            Self::Ends => "the form of the ends",
            Self::Hand => "the hand",
            Self::Steel => "the steel",
            Self::YoungsModulus => "Young's modulus",
            Self::AllowableStress => "the allowable stress",
            Self::TensileStrength => "the tensile strength",
            Self::Load => "the load",
            Self::FatigueTests => "a fatigue test of bars of its size",
        })
    }
}

/// A set of figures: those that an answer lacks, or whose tolerances nobody gave.
///
/// # Example
/// ```
/// use coilnest::drawing::{Figure, Figures};
///
/// let sizes = Figures::from(Figure::TotalTurns) | Figure::Bar.into();
/// assert!(sizes.contains(Figure::Bar) && !sizes.contains(Figure::Rate));
/// assert_eq!(sizes.iter().collect::<Vec<_>>(), [Figure::Bar, Figure::TotalTurns]);
/// ```
#[derive(Clone, Copy, Default, PartialEq, Eq)]
pub struct Figures(u16);

impl Figures {
    /// No figure.
    pub const NONE: Self = Self(0);

    /// Whether a figure is among them.
    #[must_use]
    pub const fn contains(self, figure: Figure) -> bool {
        self.0 & figure.bit() != 0
    }

    /// Whether there are none.
    #[must_use]
    pub const fn is_empty(self) -> bool {
        self.0 == 0
    }

    /// How many there are.
    #[must_use]
    pub const fn len(self) -> u32 {
        self.0.count_ones()
    }

    /// Each of them, in the order of [`Figure::ALL`].
    pub fn iter(self) -> impl Iterator<Item = Figure> {
        Figure::ALL.into_iter().filter(move |figure| self.contains(*figure))
    }

    /// Those that are not among others.
    #[must_use]
    pub const fn without(self, others: Self) -> Self {
        Self(self.0 & !others.0)
    }

    /// Those of some figures that are missing.
    pub(crate) fn missing<const N: usize>(figures: [(bool, Figure); N]) -> Self {
        figures
            .into_iter()
            .filter_map(|(is, figure)| is.then_some(figure))
            .fold(Self::NONE, |all, figure| all | figure.into())
    }
}

impl From<Figure> for Figures {
    fn from(figure: Figure) -> Self {
        Self(figure.bit())
    }
}

impl core::ops::BitOr for Figures {
    type Output = Self;

    fn bitor(self, other: Self) -> Self {
        Self(self.0 | other.0)
    }
}

impl core::ops::BitAnd for Figures {
    type Output = Self;

    fn bitand(self, other: Self) -> Self {
        Self(self.0 & other.0)
    }
}

impl fmt::Debug for Figures {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_set().entries(self.iter()).finish()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_figure_is_a_bit_of_its_own() {
        let mut all = Figures::NONE;
        for (place, figure) in Figure::ALL.into_iter().enumerate() {
            assert_eq!(figure as usize, place);
            assert!(!all.contains(figure));
            all = all | figure.into();
        }
        assert_eq!(all.len(), 16);
        assert!(all.iter().eq(Figure::ALL));
        assert!(all.without(all).is_empty());
    }
}
