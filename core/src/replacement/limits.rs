//! What is asked of a figure, and figures of several kinds in one list.

use crate::quantity::{Force, Length, Pressure, SpringRate, si};
use crate::say::{InWords, Reader};

/// The least and the most that is asked of a figure; either may be open.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AllowedRange<Q> {
    /// The least, included.
    pub least: Option<Q>,
    /// The most, included.
    pub most: Option<Q>,
}

impl<Q> AllowedRange<Q> {
    /// Only a least.
    pub fn at_least(least: Q) -> Self {
        Self { least: Some(least), most: None }
    }

    /// Only a most.
    pub fn at_most(most: Q) -> Self {
        Self { least: None, most: Some(most) }
    }

    /// Both.
    pub fn between(least: Q, most: Q) -> Self {
        Self { least: Some(least), most: Some(most) }
    }

    /// The same in another unit or kind.
    #[must_use]
    pub fn map<R>(self, with: impl Fn(Q) -> R) -> AllowedRange<R> {
        AllowedRange { least: self.least.map(&with), most: self.most.map(&with) }
    }
}

/// Kinds of figures that a line compares.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Measure {
    Length,
    Load,
    Rate,
    Stress,
    Number,
}

impl Measure {
    /// The figure of a number in SI units.
    pub(super) fn of(self, value: f64) -> Amount {
        match self {
            Self::Length => Amount::Length(si(value)),
            Self::Load => Amount::Load(si(value)),
            Self::Rate => Amount::Rate(si(value)),
            Self::Stress => Amount::Stress(si(value)),
            Self::Number => Amount::Number(value),
        }
    }
}

/// A figure of any kind that a replacement is judged by.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Amount {
    /// A height, a diameter or a gap.
    Length(Length),
    /// A load.
    Load(Force),
    /// A rate.
    Rate(SpringRate),
    /// A stress or a modulus.
    Stress(Pressure),
    /// Turns, a factor of safety or a share.
    Number(f64),
}

impl Amount {
    /// The number in SI units.
    #[must_use]
    pub fn si(&self) -> f64 {
        match *self {
            Self::Length(length) => length.value,
            Self::Load(load) => load.value,
            Self::Rate(rate) => rate.value,
            Self::Stress(stress) => stress.value,
            Self::Number(number) => number,
        }
    }

    /// So much of the same kind.
    #[cfg(feature = "job")]
    pub(crate) fn with(&self, si: f64) -> Self {
        match self {
            Self::Length(_) => Measure::Length.of(si),
            Self::Load(_) => Measure::Load.of(si),
            Self::Rate(_) => Measure::Rate.of(si),
            Self::Stress(_) => Measure::Stress.of(si),
            Self::Number(_) => Self::Number(si),
        }
    }
}

impl InWords for Amount {
    fn in_words(&self, reader: Reader<'_>) -> String {
        match self {
            Self::Length(length) => length.in_words(reader),
            Self::Load(load) => load.in_words(reader),
            Self::Rate(rate) => rate.in_words(reader),
            Self::Stress(stress) => stress.in_words(reader),
            Self::Number(number) => number.in_words(reader),
        }
    }
}
