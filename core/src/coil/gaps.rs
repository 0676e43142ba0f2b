//! How much room must be left between the turns of a coil, and how low it may therefore be pressed.

use super::ends::{Ends, Turns};
use super::{Coiling, Diameters, solid};
use crate::formula::Formula;
use crate::quantity::{Force, Length};
use crate::source::{Known, Source};

/// How a coil is loaded.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Duty {
    /// At rest, or seldom.
    Static,
    /// To and fro, as under a vehicle.
    Dynamic,
}

/// The least sum of the gaps between all turns at work.
///
/// ```text
/// cold coiled  Sa = n · (0.0015 · D²/d + 0.1 · d)     dynamic 1.5 times that
/// hot coiled   Sa = 0.02 · n · (D + d)                dynamic twice that
/// ```
/// `d` bar, m · `D` mean diameter, m · `n` active turns · `0.0015` and `0.1` and `0.02` bare numbers
///
/// # Range
/// Cold coiled up to a bar of 20 mm, hot coiled from about 8 mm on.
///
/// # Source
/// [`SOURCE`].
///
/// # Example
/// ```
/// use coilnest::coil::{Coiling, Diameters, ends::Turns, gaps::{self, Duty}};
/// use coilnest::quantity::{Length, unit::millimeter};
///
/// let mm = Length::new::<millimeter>;
/// let coil = Diameters::from_mean(mm(30.0), mm(150.0))?;
/// let turns = Turns::new(6.5, 1.5)?;
/// let least = gaps::least(coil, turns, Coiling::Hot, Duty::Static);
/// assert!((least.get::<millimeter>() - 18.0).abs() < 1e-9); // 0.02·5·180
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn least(coil: Diameters, turns: Turns, coiling: Coiling, duty: Duty) -> Length {
    let (bar, mean) = (coil.bar(), coil.mean());
    let of_one_turn = match coiling {
        Coiling::Cold => 0.0015 * coil.index() * mean + 0.1 * bar,
        Coiling::Hot => 0.02 * (mean + bar),
    };
    let more = match (coiling, duty) {
        (_, Duty::Static) => 1.0,
        (Coiling::Cold, Duty::Dynamic) => 1.5,
        (Coiling::Hot, Duty::Dynamic) => 2.0,
    };
    more * turns.active() * of_one_turn
}

/// [`least`] in symbols.
#[must_use]
pub const fn formula(coiling: Coiling, duty: Duty) -> Formula {
    const COLD: Formula = Formula::new("{Sa} = {n} · (0.0015 · {D}² / {d} + 0.1 · {d})");
    const COLD_DYNAMIC: Formula =
        Formula::new("{Sa} = 1.5 · {n} · (0.0015 · {D}² / {d} + 0.1 · {d})");
    const HOT: Formula = Formula::new("{Sa} = 0.02 · {n} · ({D} + {d})");
    const HOT_DYNAMIC: Formula = Formula::new("{Sa} = 2 · 0.02 · {n} · ({D} + {d})");
    match (coiling, duty) {
        (Coiling::Cold, Duty::Static) => COLD,
        (Coiling::Cold, Duty::Dynamic) => COLD_DYNAMIC,
        (Coiling::Hot, Duty::Static) => HOT,
        (Coiling::Hot, Duty::Dynamic) => HOT_DYNAMIC,
    }
}

/// [`least_height`] in symbols.
pub const LEAST_HEIGHT: Formula = Formula::new("{Ln} = {Lc} + {Sa}");

/// Where [`least`] and [`least_height`] come from.
pub const SOURCE: Source =
    Source::new("EN 13906-1:2013", "sum of the minimum gaps between active coils", Known::Memory);

/// The smallest height to which a coil may be pressed at work.
///
/// ```text
/// Ln = Lc + Sa
/// ```
/// `Lc` solid height, [`solid::height`] or a measured one · `Sa` sum of the least gaps, [`least`]
///
/// # Source
/// [`SOURCE`].
///
/// # Example
/// ```
/// use coilnest::coil::gaps;
/// use coilnest::quantity::{Length, unit::millimeter};
///
/// let mm = Length::new::<millimeter>;
/// assert!((gaps::least_height(mm(186.0), mm(18.0)).get::<millimeter>() - 204.0).abs() < 1e-9);
/// ```
#[must_use]
pub fn least_height(solid: Length, least_gaps: Length) -> Length {
    solid + least_gaps
}

/// The gap between two neighbouring turns at work of a coil that stands `height` high.
///
/// ```text
/// gap = p − d
/// ```
/// `p` pitch at that height, [`solid::pitch`] · `d` bar
///
/// # Range
/// From solid height, where it is zero, up.
///
/// # Source
/// [`solid::pitch_source`].
///
/// # Example
/// ```
/// use coilnest::coil::{ends::{Ends, Turns}, gaps};
/// use coilnest::quantity::{Length, unit::millimeter};
///
/// let mm = Length::new::<millimeter>;
/// let gap = gaps::between_turns(mm(116.0), mm(10.0), Turns::new(10.0, 2.0)?, Ends::ClosedGround);
/// assert!((gap.get::<millimeter>() - 2.0).abs() < 1e-9); // (116 − 100) / 8
/// # Ok::<(), coilnest::coil::ends::TurnsError>(())
/// ```
#[must_use]
pub fn between_turns(height: Length, bar: Length, turns: Turns, ends: Ends) -> Length {
    solid::pitch(height, bar, turns, ends) - bar
}

/// How far the load that closes a coil lies above its greatest load at work, as a share of the latter.
///
/// ```text
/// ξ = Fs / F − 1
/// ```
/// `Fs` load at solid · `F` greatest load at work
///
/// [`LEAST_CLASH_ALLOWANCE`] is what is asked for, so that no turn strikes another and the rate stays
/// straight.
///
/// # Range
/// A load above zero.
///
/// # Source
/// [`CLASH_SOURCE`].
///
/// # Example
/// ```
/// use coilnest::coil::gaps;
/// use coilnest::quantity::{Force, unit::newton};
///
/// let newtons = Force::new::<newton>;
/// let allowance = gaps::clash_allowance(newtons(1200.0), newtons(1000.0));
/// assert!((allowance - 0.2).abs() < 1e-12);
/// assert!(allowance > gaps::LEAST_CLASH_ALLOWANCE);
/// ```
#[must_use]
pub fn clash_allowance(at_solid: Force, at_work: Force) -> f64 {
    (at_solid / at_work).value - 1.0
}

/// The least [`clash_allowance`] that a design should have.
pub const LEAST_CLASH_ALLOWANCE: f64 = 0.15;

/// Where [`clash_allowance`] and [`LEAST_CLASH_ALLOWANCE`] come from.
pub const CLASH_SOURCE: Source = Source::new(
    "Shigley's Mechanical Engineering Design, 10th ed.",
    "robust linearity, ξ ≥ 0.15",
    Known::Memory,
);

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::unit::millimeter;
    use approx::assert_relative_eq;
    use std::error::Error;

    /// By hand: 8·(0.0015·40²/4 + 0.4) = 8 and 0.02·5·(150 + 30) = 18.
    #[test]
    fn gaps_of_both_coilings_at_both_duties() -> Result<(), Box<dyn Error>> {
        let mm = Length::new::<millimeter>;
        for (bar, mean, active, coiling, duty, expected) in [
            (4.0, 40.0, 8.0, Coiling::Cold, Duty::Static, 8.0),
            (4.0, 40.0, 8.0, Coiling::Cold, Duty::Dynamic, 12.0),
            (30.0, 150.0, 5.0, Coiling::Hot, Duty::Static, 18.0),
            (30.0, 150.0, 5.0, Coiling::Hot, Duty::Dynamic, 36.0),
        ] {
            let coil = Diameters::from_mean(mm(bar), mm(mean))?;
            let found = least(coil, Turns::new(active + 2.0, 2.0)?, coiling, duty);
            assert_relative_eq!(found.get::<millimeter>(), expected, max_relative = 1e-12);
        }
        Ok(())
    }
}
