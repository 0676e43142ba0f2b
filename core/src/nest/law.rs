//! Load against a coil's own deflection: straight pieces, rising.

use crate::quantity::{Force, Length, SpringRate, System};
use crate::say::{Say, says};
use thiserror::Error;

/// A coil's load against its own deflection, in one stage or more.
///
/// Most coils have one. A second stage is for a coil whose dead turns lie down as it closes and
/// leave it stiffer.
///
/// # Example
/// ```
/// use coilnest::nest::Law;
/// use coilnest::quantity::{Length, SpringRate, unit::{millimeter, newton, newton_per_millimeter}};
///
/// let mm = Length::new::<millimeter>;
/// let rate = SpringRate::new::<newton_per_millimeter>;
/// let law = Law::linear(rate(10.0))?.then(mm(20.0), rate(15.0))?;
/// assert!((law.load(mm(30.0)).get::<newton>() - 350.0).abs() < 1e-9); // 10·20 + 15·10
/// # Ok::<(), coilnest::nest::LawError>(())
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct Law {
    first: SpringRate,
    later: Vec<Stage>,
}

#[derive(Clone, Copy, Debug, PartialEq)]
struct Stage {
    from: Length,
    load: Force,
    rate: SpringRate,
}

/// Why rates and deflections make no law.
#[derive(Clone, Copy, Debug, Error, PartialEq)]
#[error("{}", self.say(System::Metric))]
#[non_exhaustive]
pub enum LawError {
    /// A rate is not above zero.
    Rate {
        /// The rate.
        rate: SpringRate,
    },
    /// A stage does not begin beyond the one before it.
    Order {
        /// Where it begins.
        from: Length,
    },
}

says! {
    LawError {
        Rate { rate } => "a rate of {rate}", "one above zero", "measure it again";
        Order { from } =>
            "a stage from a deflection of {from} on", "one beyond the stage before it",
            "give the stages in order";
    }
}

impl Law {
    /// One rate from free to solid.
    ///
    /// # Errors
    /// [`LawError::Rate`] when the rate is not above zero.
    pub fn linear(rate: SpringRate) -> Result<Self, LawError> {
        positive(rate)?;
        Ok(Self { first: rate, later: Vec::new() })
    }

    /// The same, with another rate from a deflection on.
    ///
    /// # Errors
    /// [`LawError::Rate`] when the rate is not above zero; [`LawError::Order`] when the deflection
    /// does not lie beyond every stage before it.
    pub fn then(mut self, from: Length, rate: SpringRate) -> Result<Self, LawError> {
        positive(rate)?;
        let before = self.later.last().map_or_else(Length::default, |stage| stage.from);
        if !(from > before && from.value.is_finite()) {
            return Err(LawError::Order { from });
        }
        let load = self.load(from);
        self.later.push(Stage { from, load, rate });
        Ok(self)
    }

    /// Load at a deflection; none where there is no deflection.
    #[must_use]
    pub fn load(&self, deflection: Length) -> Force {
        match self.stage(deflection) {
            Some(stage) => stage.load + stage.rate * (deflection - stage.from),
            None if deflection.value > 0.0 => self.first * deflection,
            None => Force::default(),
        }
    }

    /// Its rate, where it has but one.
    pub(super) fn single_rate(&self) -> Option<SpringRate> {
        self.later.is_empty().then_some(self.first)
    }

    /// Rate of the next deflection from here on.
    #[must_use]
    pub fn rate_beyond(&self, deflection: Length) -> SpringRate {
        self.stage(deflection).map_or(self.first, |stage| stage.rate)
    }

    /// Where the rate changes, the first touch included, and by how much.
    pub fn steps(&self) -> impl Iterator<Item = (Length, SpringRate)> + '_ {
        let starts = core::iter::once((Length::default(), self.first));
        let starts = starts.chain(self.later.iter().map(|stage| (stage.from, stage.rate)));
        starts.scan(SpringRate::default(), |before, (from, rate)| {
            let step = rate - *before;
            *before = rate;
            Some((from, step))
        })
    }

    fn stage(&self, deflection: Length) -> Option<&Stage> {
        self.later.iter().rev().find(|stage| deflection >= stage.from)
    }
}

fn positive(rate: SpringRate) -> Result<(), LawError> {
    if rate.value > 0.0 && rate.value.is_finite() { Ok(()) } else { Err(LawError::Rate { rate }) }
}
