//! How short a coil can get: all its turns in contact.

use super::ends::{Ends, Turns};
use crate::quantity::Length;
use crate::source::{Known, Source};

/// Solid height of a coil by the usual convention for its ends.
///
/// ```text
/// open, closed            Lc = d · (nt + 1)
/// open or closed, ground  Lc = d · nt
/// tapered and ground      Lc = d · (nt − 0.3)
/// ```
/// `d` bar, m · `nt` total turns
///
/// # Range
/// The tapered form is the greatest height that EN 13906-1 admits for hot-coiled ground springs,
/// so a nest reckoned with it stops no later than a real one. [`tapered_a125`] is the other
/// authority's nominal height, a little lower.
///
/// # Source
/// [`source`] names it for each form.
///
/// # Example
/// ```
/// use coilnest::coil::{ends::{Ends, Turns}, solid};
/// use coilnest::quantity::{Length, unit::millimeter};
///
/// let turns = Turns::new(14.0, 1.0)?;
/// let height = solid::height(Length::new::<millimeter>(2.5), turns, Ends::OpenGround);
/// assert!((height.get::<millimeter>() - 35.0).abs() < 1e-9);
/// # Ok::<(), coilnest::coil::ends::TurnsError>(())
/// ```
#[must_use]
pub fn height(bar: Length, turns: Turns, ends: Ends) -> Length {
    bar * (turns.total() + bars_over_turns(ends))
}

/// The least solid height of those who differ, for what must not be understated: the stress at solid.
///
/// Only on tapered ends do they differ: [`tapered_a125`] is lower than [`height`] where the turns are
/// not very many.
#[must_use]
pub fn least(bar: Length, turns: Turns, ends: Ends) -> Length {
    let height = height(bar, turns, ends);
    match ends {
        Ends::TaperedGround if tapered_a125(bar, turns) < height => tapered_a125(bar, turns),
        _ => height,
    }
}

/// What the ends add to the count of bars that lie on each other: Lc/d − nt.
#[must_use]
pub const fn bars_over_turns(ends: Ends) -> f64 {
    match ends {
        Ends::Open | Ends::Closed => 1.0,
        Ends::OpenGround | Ends::ClosedGround => 0.0,
        Ends::TaperedGround => -0.3,
    }
}

/// Where [`height`] comes from.
#[must_use]
pub const fn source(ends: Ends) -> Source {
    match ends {
        Ends::TaperedGround => Source::new(
            "EN 13906-1:2013",
            "hot coiled, ground ends, Lc ≤ (nt − 0.3) dmax",
            Known::Memory,
        ),
        _ => Source::new(
            "Shigley's Mechanical Engineering Design, 10th ed.",
            "table 10-1",
            Known::Memory,
        ),
    }
}

/// Nominal solid height of a hot-wound coil with tapered and ground ends as American practice has
/// it.
///
/// ```text
/// Lc = 1.01 · d · (nt − 0.5)
/// ```
///
/// # Source
/// ASTM A125, appendix (from memory).
#[must_use]
pub fn tapered_a125(bar: Length, turns: Turns) -> Length {
    bar * (1.01 * (turns.total() - 0.5))
}

/// Axial distance from turn to turn of a coil `height` high.
///
/// ```text
/// open               p = (L − d) / n
/// open and ground    p = L / (n + 1)
/// closed             p = (L − 3 d) / n
/// closed and ground  p = (L − 2 d) / n
/// tapered and ground p = (L − Lc) / n + d
/// ```
/// which are all `p = (L − Lc) / m + d`: at solid height the pitch is the bar. `m` is the active
/// turns, but for open and ground ends, whose every turn opens, the total.
///
/// # Source
/// Machinery's Handbook, 31st ed., p. 318, table 3 (read on the page); the tapered form is derived.
///
/// # Example
/// ```
/// use coilnest::coil::{ends::{Ends, Turns}, solid};
/// use coilnest::quantity::{Length, unit::millimeter};
///
/// let mm = Length::new::<millimeter>;
/// let turns = Turns::new(10.0, 2.0)?;
/// let pitch = solid::pitch(mm(100.0), mm(10.0), turns, Ends::ClosedGround);
/// assert!((pitch.get::<millimeter>() - 10.0).abs() < 1e-9); // (100 − 20) / 8
/// # Ok::<(), coilnest::coil::ends::TurnsError>(())
/// ```
#[must_use]
pub fn pitch(height: Length, bar: Length, turns: Turns, ends: Ends) -> Length {
    let spaces = if ends == Ends::OpenGround { turns.total() } else { turns.active() };
    (height - self::height(bar, turns, ends)) / spaces + bar
}

/// Pitch at a height of a coil whose ends are of no usual form, from the solid height that its book gives.
///
/// ```text
/// p = (L − Lc) / n + d
/// ```
/// `L` height · `Lc` solid height · `n` active turns · `d` bar, which is the pitch at solid
///
/// # Source
/// [`PITCH_FROM_SOLID_SOURCE`].
///
/// # Example
/// ```
/// use coilnest::coil::{ends::{Ends, Turns}, solid};
/// use coilnest::quantity::{Length, unit::millimeter};
///
/// let mm = Length::new::<millimeter>;
/// let turns = Turns::new(8.0, 2.0)?;
/// let solid_height = solid::height(mm(10.0), turns, Ends::ClosedGround);
/// let pitch = solid::pitch_from_solid(mm(200.0), solid_height, mm(10.0), turns);
/// assert_eq!(pitch, mm(30.0)); // (200 − 80)/6 + 10
/// assert_eq!(pitch, solid::pitch(mm(200.0), mm(10.0), turns, Ends::ClosedGround));
/// # Ok::<(), coilnest::coil::ends::TurnsError>(())
/// ```
#[must_use]
pub fn pitch_from_solid(height: Length, solid: Length, bar: Length, turns: Turns) -> Length {
    (height - solid) / turns.active() + bar
}

/// Where [`pitch_from_solid`] comes from.
pub const PITCH_FROM_SOLID_SOURCE: Source =
    Source::new("coilnest", "the pitch is the bar at solid", Known::Derived);

/// Where [`pitch`] comes from.
#[must_use]
pub const fn pitch_source(ends: Ends) -> Source {
    match ends {
        Ends::TaperedGround => PITCH_FROM_SOLID_SOURCE,
        _ => Source::new("Machinery's Handbook, 31st ed.", "p. 318, table 3", Known::Page),
    }
}

#[cfg(test)]
mod tests {
    use super::super::ends::TurnsError;
    use super::*;
    use crate::quantity::unit::millimeter;
    use approx::assert_relative_eq;

    fn mm(x: f64) -> Length {
        Length::new::<millimeter>(x)
    }

    /// Machinery's Handbook, 31st ed., p. 318, table 3 (read on the page): pitch by the ends.
    #[test]
    fn pitch_is_the_handbooks_for_every_cold_form() -> Result<(), TurnsError> {
        let (free, bar, active) = (mm(173.0), mm(9.0), 6.5);
        for (ends, expected) in [
            (Ends::Open, (173.0 - 9.0) / active),
            (Ends::OpenGround, 173.0 / (active + 1.0)),
            (Ends::Closed, (173.0 - 27.0) / active),
            (Ends::ClosedGround, (173.0 - 18.0) / active),
        ] {
            let turns = Turns::new(active + ends.dead_turns(), ends.dead_turns())?;
            let found = pitch(free, bar, turns, ends).get::<millimeter>();
            assert_relative_eq!(found, expected, max_relative = 1e-12);
        }
        Ok(())
    }

    #[test]
    fn every_form_lies_bar_on_bar_at_solid() -> Result<(), TurnsError> {
        for ends in Ends::ALL {
            let turns = Turns::new(8.25, ends.dead_turns())?;
            let solid = height(mm(11.0), turns, ends);
            let found = pitch(solid, mm(11.0), turns, ends).get::<millimeter>();
            assert_relative_eq!(found, 11.0, max_relative = 1e-12);
        }
        Ok(())
    }

    /// ASTM A125 (from memory) stands within one part in fifty of EN 13906-1 on a coil of a truck.
    #[test]
    fn the_two_authorities_on_tapered_ends_are_near_each_other() -> Result<(), TurnsError> {
        let turns = Turns::new(7.25, Ends::TaperedGround.dead_turns())?;
        let ratio =
            (tapered_a125(mm(27.0), turns) / height(mm(27.0), turns, Ends::TaperedGround)).value;
        assert!(ratio < 1.0 && ratio > 0.98, "{ratio}");
        Ok(())
    }
}
