//! How short a coil can get: all its turns in contact.

use super::ends::{Ends, Turns};
use crate::formula::Formula;
use crate::quantity::Length;
use crate::source::{Known, Source};

/// An authority's rule for the solid height of a form of ends.
///
/// ```text
/// Lc = factor · d · (nt + bars)
/// ```
/// `d` bar, m · `nt` total turns
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rule {
    factor: f64,
    bars: f64,
    /// The rule in symbols.
    pub formula: Formula,
    /// Whose it is.
    pub source: Source,
}

impl Rule {
    /// The solid height.
    #[must_use]
    pub fn height(&self, bar: Length, turns: Turns) -> Length {
        bar * self.bars(turns)
    }

    /// The same counted in bars.
    #[must_use]
    pub fn bars(&self, turns: Turns) -> f64 {
        self.factor * (turns.total() + self.bars)
    }
}

const fn textbook(bars: f64, formula: Formula) -> Rule {
    let source = Source::new(
        "Shigley's Mechanical Engineering Design, 10th ed.",
        "table 10-1",
        Known::Memory,
    );
    Rule { factor: 1.0, bars, formula, source }
}

const fn european(bars: f64, formula: Formula, place: &'static str) -> Rule {
    Rule {
        factor: 1.0,
        bars,
        formula,
        source: Source::new("EN 13906-1:2013", place, Known::Memory),
    }
}

/// The usual rule, from which the pitch follows too.
#[must_use]
pub const fn usual(ends: Ends) -> Rule {
    match ends {
        Ends::Open | Ends::Closed => textbook(1.0, Formula::new("{Lc} = {d} · ({nt} + 1)")),
        Ends::OpenGround | Ends::ClosedGround => textbook(0.0, Formula::new("{Lc} = {d} · {nt}")),
        Ends::TaperedGround => european(
            -0.3,
            Formula::new("{Lc} = {d} · ({nt} − 0.3)"),
            "hot coiled, ground ends, Lc ≤ (nt − 0.3) dmax",
        ),
    }
}

/// The rule of another authority that differs: EN 13906-1's most for closed ends that are not ground,
/// ASTM A125's nominal height for tapered ones.
#[must_use]
pub const fn other(ends: Ends) -> Option<Rule> {
    match ends {
        Ends::Closed => Some(european(
            1.5,
            Formula::new("{Lc} = {d} · ({nt} + 1.5)"),
            "cold coiled, closed ends not ground, Lc ≤ (nt + 1.5) dmax",
        )),
        Ends::TaperedGround => Some(Rule {
            factor: 1.01,
            bars: -0.5,
            formula: Formula::new("{Lc} = 1.01 · {d} · ({nt} − 0.5)"),
            source: Source::new("ASTM A125", "appendix, nominal height", Known::Memory),
        }),
        Ends::Open | Ends::OpenGround | Ends::ClosedGround => None,
    }
}

/// A solid height by the rule that gives it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stop {
    /// The height.
    pub height: Length,
    /// The rule.
    pub rule: Rule,
}

/// The least solid height that an authority gives, and the greatest: one stop twice where they agree.
#[must_use]
pub fn stops(bar: Length, turns: Turns, ends: Ends) -> (Stop, Stop) {
    let stop = |rule: Rule| Stop { height: rule.height(bar, turns), rule };
    let usual = stop(usual(ends));
    match other(ends).map(stop) {
        Some(other) if other.height < usual.height => (other, usual),
        Some(other) => (usual, other),
        None => (usual, usual),
    }
}

/// How low a coil gets, each use taking the height on its safe side.
///
/// # Range
/// Computed tapered ends of 3/4 turn and more stand from 0.73 to 0.34 d under `nt · d`, so that
/// `d (nt − 0.3)` is never reached; ends tapered over half a turn stand from 0.18 d under to 0.04 d
/// over it, and reach it before. `tests/data/tapered-ends.csv` has them.
///
/// # Example
/// ```
/// use coilnest::coil::{ends::{Ends, Turns}, solid::Solid};
/// use coilnest::quantity::{Length, unit::millimeter};
///
/// let mm = Length::new::<millimeter>;
/// let turns = Turns::new(7.5, 1.5)?;
/// let solid = Solid::of(mm(20.0), turns, Ends::TaperedGround);
/// assert!((solid.least.get::<millimeter>() - 141.4).abs() < 1e-9); // ASTM A125: 1.01·20·7
/// assert!((solid.greatest.get::<millimeter>() - 144.0).abs() < 1e-9); // EN 13906-1: 20·7.2
/// # Ok::<(), coilnest::coil::ends::TurnsError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Solid {
    /// For the stress at solid and the set: it may get as low as this.
    pub least: Length,
    /// For when it stops: it may be solid at this.
    pub greatest: Length,
}

impl Solid {
    /// By what authorities say of its ends.
    #[must_use]
    pub fn of(bar: Length, turns: Turns, ends: Ends) -> Self {
        let (least, greatest) = stops(bar, turns, ends);
        Self { least: least.height, greatest: greatest.height }
    }

    /// A height that somebody states.
    #[must_use]
    pub const fn exactly(height: Length) -> Self {
        Self { least: height, greatest: height }
    }
}

/// Solid height of a coil by the usual convention for its ends, from which its pitch follows.
///
/// # Source
/// [`usual`].
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
    usual(ends).height(bar, turns)
}

/// What the ends add to the count of bars that lie on each other by the usual rule: Lc/d − nt.
#[must_use]
pub const fn bars_over_turns(ends: Ends) -> f64 {
    usual(ends).bars
}

/// Where [`height`] comes from.
#[must_use]
pub const fn source(ends: Ends) -> Source {
    usual(ends).source
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
/// Machinery's Handbook, 31st ed., p. 318, table 3 (read at the source); the tapered form is derived.
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

/// The pitch of a coil of these ends in symbols; of ends of which nothing is known, by the solid height.
#[must_use]
pub const fn pitch_formula(ends: Option<Ends>) -> Formula {
    const OPEN: Formula = Formula::new("{p} = ({L0} − {d}) / {n}");
    const OPEN_GROUND: Formula = Formula::new("{p} = {L0} / ({n} + 1)");
    const CLOSED: Formula = Formula::new("{p} = ({L0} − 3 · {d}) / {n}");
    const CLOSED_GROUND: Formula = Formula::new("{p} = ({L0} − 2 · {d}) / {n}");
    const FROM_SOLID: Formula = Formula::new("{p} = ({L0} − {Lc}) / {n} + {d}");
    match ends {
        Some(Ends::Open) => OPEN,
        Some(Ends::OpenGround) => OPEN_GROUND,
        Some(Ends::Closed) => CLOSED,
        Some(Ends::ClosedGround) => CLOSED_GROUND,
        Some(Ends::TaperedGround) | None => FROM_SOLID,
    }
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

    /// Machinery's Handbook, 31st ed., p. 318, table 3 (read at the source): pitch by the ends.
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
        let solid = Solid::of(mm(27.0), turns, Ends::TaperedGround);
        let ratio = (solid.least / solid.greatest).value;
        assert!(ratio < 1.0 && ratio > 0.98, "{ratio}");
        Ok(())
    }

    /// Which authority is the lower depends on the turns: from 20.5 on ASTM A125 is the higher.
    #[test]
    fn each_use_takes_the_authority_on_its_safe_side() -> Result<(), TurnsError> {
        for ends in Ends::ALL {
            for total in [4.0, 7.25, 20.0, 21.0, 40.0] {
                let turns = Turns::new(total, ends.dead_turns())?;
                let solid = Solid::of(mm(10.0), turns, ends);
                for rule in [Some(usual(ends)), other(ends)].into_iter().flatten() {
                    let height = rule.height(mm(10.0), turns);
                    assert!(solid.least <= height && height <= solid.greatest, "{ends:?}, {total}");
                }
            }
        }
        let turns = Turns::new(21.0, 1.5)?;
        let (least, greatest) = stops(mm(10.0), turns, Ends::TaperedGround);
        assert!(least.rule.source.to_string().starts_with("EN 13906-1"));
        assert!(greatest.rule.source.to_string().starts_with("ASTM A125"));
        Ok(())
    }
}
