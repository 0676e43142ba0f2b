//! What the ends of a whole spring do between plates: how many turns lie dead, as the load grows.
//!
//! A textbook's count is one number. Computed springs show that it grows while the end turns roll down
//! on their neighbours, so that no single count is right for a whole curve of load.

use super::ends::Ends;
use crate::source::{Known, Source};

/// A part of the travel from free to solid.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Stage {
    /// The first tenth.
    Light,
    /// From 30 to 70 %.
    AtWork,
    /// From 70 to 90 %.
    NearSolid,
}

impl Stage {
    /// Every stage, in the order in which a spring is pressed.
    pub const ALL: [Self; 3] = [Self::Light, Self::AtWork, Self::NearSolid];

    /// Its share of the travel, from and to.
    #[must_use]
    pub const fn travel(self) -> (f64, f64) {
        match self {
            Self::Light => (0.0, 0.1),
            Self::AtWork => (0.3, 0.7),
            Self::NearSolid => (0.7, 0.9),
        }
    }
}

/// Dead turns of both ends together: the least and the most of the computed springs, rounded outward.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Band {
    /// The least.
    pub least: f64,
    /// The most.
    pub most: f64,
}

/// Dead turns in a stage, by the slope of the load there; none for ends that were not computed.
///
/// ```text
/// dead turns = nt − G · d⁴ / (8 · D³ · k)
/// ```
/// `nt` total turns · `k` rate in the stage
///
/// | ends | light | at work | near solid |
/// | --- | --- | --- | --- |
/// | closed and ground | 1.5 to 1.7 | 2.0 to 2.3 | 2.6 to 2.9 |
/// | tapered and ground | 1.5 to 1.7 | 1.7 to 2.8 | 2.1 to 3.1 |
///
/// # Range
/// One turn closed at each end, its tip just touching, the pitch reached a quarter turn further on;
/// tapers of 3/4 to 1 turn with a tip of 0.15 to 0.25 d; index 5 to 7, pitch angle 4 to 7°, 6 to 10¾
/// turns, frictionless or sticking plates. Ends tapered over half a turn: [`half_turn_taper`]. A tip
/// that stands open: [`OPEN_TIP_LIGHT`]. A quarter turn more or less closed at each end is worth half a
/// turn more or less. The method's own doubt is 0.05 turn when light, 0.1 at work, 0.15 near solid.
///
/// # Source
/// [`SOURCE`].
///
/// # Example
/// ```
/// use coilnest::coil::{ends::Ends, plates::{self, Stage}};
///
/// let light = plates::dead_turns(Ends::TaperedGround, Stage::Light).ok_or("not computed")?;
/// // The textbook's 1½ is the light end of a tapered coil.
/// assert!(light.least <= 1.5 && light.most < 2.0);
/// assert!(plates::dead_turns(Ends::Open, Stage::Light).is_none());
/// # Ok::<(), &str>(())
/// ```
#[must_use]
pub const fn dead_turns(ends: Ends, stage: Stage) -> Option<Band> {
    let (least, most) = match (ends, stage) {
        (Ends::ClosedGround | Ends::TaperedGround, Stage::Light) => (1.5, 1.7),
        (Ends::ClosedGround, Stage::AtWork) => (2.0, 2.3),
        (Ends::ClosedGround, Stage::NearSolid) => (2.6, 2.9),
        (Ends::TaperedGround, Stage::AtWork) => (1.7, 2.8),
        (Ends::TaperedGround, Stage::NearSolid) => (2.1, 3.1),
        (Ends::Open | Ends::OpenGround | Ends::Closed, _) => return None,
    };
    Some(Band { least, most })
}

/// Dead turns in a stage where the tips are tapered over half a turn only, which acts as a step: the
/// coil comes to rest where the full bar begins.
///
/// # Source
/// [`SOURCE`].
#[must_use]
pub const fn half_turn_taper(stage: Stage) -> Band {
    match stage {
        Stage::Light => Band { least: 1.6, most: 2.5 },
        Stage::AtWork | Stage::NearSolid => Band { least: 2.4, most: 2.6 },
    }
}

/// Dead turns in the first tenth of the travel where a tapered tip stands open by a twentieth of the
/// bar.
///
/// # Source
/// [`SOURCE`].
pub const OPEN_TIP_LIGHT: Band = Band { least: 0.7, most: 0.9 };

/// Where the bands come from.
pub const SOURCE: Source = Source::new(
    "computed: solid elements with contact, and a rod with contact",
    "kept in tests/data, closed-ends.csv and tapered-ends.csv",
    Known::Derived,
);
