//! How a coil's ends are made, and how many of its turns they leave at work.

use crate::quantity::System;
use crate::say::{Say, says};
use crate::source::{Known, Source};
use thiserror::Error;

/// The form of both ends of a coil.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ends {
    /// Open (plain): the bar simply ends.
    Open,
    /// Open and ground flat.
    OpenGround,
    /// Closed (squared): the last turn lies on its neighbour.
    Closed,
    /// Closed and ground flat.
    ClosedGround,
    /// Hot wound, the bar's tips tapered before winding, closed and ground.
    TaperedGround,
}

impl Ends {
    /// Every form, in the order in which a list shows them.
    pub const ALL: [Self; 5] =
        [Self::TaperedGround, Self::ClosedGround, Self::Closed, Self::OpenGround, Self::Open];

    /// Turns of both ends together that do not deflect, by the usual count.
    ///
    /// Open 0, open and ground 1, closed 2, closed and ground 2; hot wound with tapered ends 1½.
    /// On a real coil the count grows as it closes ([`super::plates`]), which is why it carries a
    /// doubt: see [`DEAD_TURNS_DOUBT`].
    #[must_use]
    pub const fn dead_turns(self) -> f64 {
        match self {
            Self::Open => 0.0,
            Self::OpenGround => 1.0,
            Self::Closed | Self::ClosedGround => 2.0,
            Self::TaperedGround => 1.5,
        }
    }

    /// Where [`Ends::dead_turns`] comes from.
    #[must_use]
    pub const fn source(self) -> Source {
        match self {
            Self::TaperedGround => {
                Source::new("EN 13906-1:2013", "hot coiled springs, nt = n + 1.5", Known::Memory)
            }
            _ => Source::new(
                "Machinery's Handbook, 31st ed.",
                "p. 318, table 3, compression spring ends",
                Known::Page,
            ),
        }
    }

    /// Whether the ends are ground flat on the seat.
    #[must_use]
    pub const fn ground(self) -> bool {
        matches!(self, Self::OpenGround | Self::ClosedGround | Self::TaperedGround)
    }
}

/// Half-width of what is not known of the dead turns when nobody says more: half a turn.
///
/// Computed: what the shape of the ends and the load make of the count ([`super::plates`]). On a coil
/// of few turns it outweighs every other doubt of the rate.
pub const DEAD_TURNS_DOUBT: f64 = 0.5;

/// The part of it that is each coil's own: an eighth of a turn.
///
/// Coils of one drawing are tapered, closed and ground alike, so that the rest is common to them.
/// Common practice, no source.
pub const DEAD_TURNS_OWN: f64 = 0.125;

/// One standard uncertainty of a coil's dead turns, in two parts: its own, and what all coils of its
/// drawing have alike.
///
/// ```text
/// u² = a²/3 = u_own² + u_drawing²        u_own = min(a, 1/8)/√3
/// ```
/// `a` half-width, uniform: [`DEAD_TURNS_DOUBT`] where nobody says more
///
/// # Example
/// ```
/// use coilnest::coil::ends::{DEAD_TURNS_DOUBT, dead_turns_doubt};
///
/// let (own, of_drawing) = dead_turns_doubt(DEAD_TURNS_DOUBT);
/// assert!((own - 0.125 / 3f64.sqrt()).abs() < 1e-12);
/// assert!((own.hypot(of_drawing) - 0.5 / 3f64.sqrt()).abs() < 1e-12);
/// // Whoever knows the count to a sixteenth has measured this coil.
/// assert_eq!(dead_turns_doubt(1.0 / 16.0).1, 0.0);
/// ```
#[must_use]
pub fn dead_turns_doubt(half_width: f64) -> (f64, f64) {
    let own = if half_width < DEAD_TURNS_OWN { half_width } else { DEAD_TURNS_OWN };
    let rest = half_width * half_width - own * own;
    (own / libm::sqrt(3.0), libm::sqrt(rest / 3.0))
}

/// Total and active turns of a coil.
///
/// ```text
/// n = nt − dead turns
/// ```
///
/// # Example
/// ```
/// use coilnest::coil::ends::{Ends, Turns};
///
/// let turns = Turns::new(7.25, Ends::TaperedGround.dead_turns())?;
/// assert!((turns.active() - 5.75).abs() < 1e-12);
/// # Ok::<(), coilnest::coil::ends::TurnsError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Turns {
    total: f64,
    dead: f64,
}

/// Why a count of turns makes no spring.
#[derive(Clone, Copy, Debug, Error, PartialEq)]
#[error("{}", self.say(System::Metric))]
#[non_exhaustive]
pub enum TurnsError {
    /// Dead turns below zero, or not a number.
    Dead {
        /// The dead turns.
        dead: f64,
    },
    /// Nothing is left to deflect.
    TooFew {
        /// The total turns.
        total: f64,
        /// The dead turns.
        dead: f64,
        /// The least active turns.
        least: f64,
    },
}

says! {
    TurnsError {
        Dead { dead } => "{dead} dead turns", "a count from 0 up", "2 is usual for closed ends";
        TooFew { total, dead, least } =>
            "{total} turns with {dead} dead ones among them", "at least {least} more than lie dead",
            "count the turns again, from tip to tip";
    }
}

/// The least active turns that a spring can be worked out with: half a turn.
pub const LEAST_ACTIVE_TURNS: f64 = 0.5;

impl Turns {
    /// From the total turns nt and the dead ones.
    ///
    /// # Errors
    /// [`TurnsError::Dead`] when the dead turns are below zero; [`TurnsError::TooFew`] when fewer
    /// than [`LEAST_ACTIVE_TURNS`] are left.
    pub fn new(total: f64, dead: f64) -> Result<Self, TurnsError> {
        if !(dead >= 0.0 && dead.is_finite()) {
            return Err(TurnsError::Dead { dead });
        }
        if !(total - dead >= LEAST_ACTIVE_TURNS && total.is_finite()) {
            return Err(TurnsError::TooFew { total, dead, least: LEAST_ACTIVE_TURNS });
        }
        Ok(Self { total, dead })
    }

    /// All turns, tip to tip.
    #[must_use]
    pub fn total(&self) -> f64 {
        self.total
    }

    /// Turns that lie dead at the ends.
    #[must_use]
    pub fn dead(&self) -> f64 {
        self.dead
    }

    /// Turns that deflect.
    #[must_use]
    pub fn active(&self) -> f64 {
        self.total - self.dead
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn turns_that_cannot_deflect_are_refused() {
        assert!(Turns::new(2.5, 2.0).is_ok());
        assert!(matches!(Turns::new(2.4, 2.0), Err(TurnsError::TooFew { .. })));
        assert!(matches!(Turns::new(7.0, -1.0), Err(TurnsError::Dead { .. })));
        assert!(Turns::new(f64::NAN, 2.0).is_err());
        assert!(Turns::new(7.0, f64::NAN).is_err());
    }
}
