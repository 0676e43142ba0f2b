//! Whether a coil is of usual proportions, for which the formulas are meant and springs are made.

use super::ends::Turns;
use super::{Coiling, Diameters, bar};
use crate::quantity::unit::{degree, millimeter};
use crate::quantity::{Angle, Length, System, write, write_number};
use crate::source::{Known, Source};
use core::fmt;

/// Something about a coil that is seldom so: a slip in what was entered, or a spring to ask about.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub enum Unusual {
    /// The coil is narrow for its bar.
    LowIndex {
        /// Its index.
        index: f64,
        /// The least usual.
        least: f64,
    },
    /// The coil is wide for its bar.
    HighIndex {
        /// Its index.
        index: f64,
        /// The most usual.
        most: f64,
    },
    /// Few turns are at work.
    FewTurns {
        /// How many.
        active: f64,
        /// The fewest that the standard covers.
        least: f64,
        /// For this coiling.
        coiling: Coiling,
    },
    /// The bar is thinner than is wound hot.
    ThinBar {
        /// The bar.
        bar: Length,
        /// The thinnest that the standard covers.
        least: Length,
    },
    /// The bar is thicker than is wound in this way.
    ThickBar {
        /// The bar.
        bar: Length,
        /// The thickest that the standard covers.
        most: Length,
        /// In this way.
        coiling: Coiling,
    },
    /// The turns stand steep.
    SteepPitch {
        /// The pitch angle.
        angle: Angle,
        /// The most usual.
        most: Angle,
    },
}

/// The least usual index.
pub const LEAST_INDEX: f64 = 4.0;
/// The most usual index.
pub const MOST_INDEX: f64 = 12.0;
/// The most usual pitch angle, in degrees.
pub const MOST_ANGLE_DEG: f64 = 7.5;

impl Unusual {
    /// Where its limit comes from.
    #[must_use]
    pub const fn source(&self) -> Source {
        match self {
            Self::LowIndex { .. } | Self::HighIndex { .. } => Source::new(
                "Shigley's Mechanical Engineering Design, 10th ed.",
                "recommended range of the index, 4 to 12",
                Known::Memory,
            ),
            Self::FewTurns { .. } | Self::ThinBar { .. } | Self::ThickBar { .. } => {
                Source::new("EN 13906-1:2013", "scope", Known::Memory)
            }
            Self::SteepPitch { .. } => Source::new("", "", Known::CommonPractice),
        }
    }

    /// What is unusual and what follows, in the units of a system.
    ///
    /// ```
    /// use coilnest::coil::proportions::Unusual;
    /// use coilnest::quantity::System;
    ///
    /// let low = Unusual::LowIndex { index: 3.0, least: 4.0 };
    /// assert!(low.sentence(System::Inch).starts_with("an index of 3, below the usual 4: "));
    /// ```
    #[must_use]
    pub fn sentence(&self, system: System) -> String {
        let number = |value| write_number(value, 3);
        let size = |length| write::<Length>(length, system);
        match *self {
            Self::LowIndex { index, least } => format!(
                "an index of {}, below the usual {}: hard to wind, and stressed high inside the coil; measure bar and diameter again",
                number(index),
                number(least)
            ),
            Self::HighIndex { index, most } => format!(
                "an index of {}, above the usual {}: it tangles, bends aside and varies in size; measure bar and diameter again",
                number(index),
                number(most)
            ),
            Self::FewTurns { active, least, coiling } => format!(
                "{} turns at work, under the {} that the standard asks of a coil wound {coiling}: its ends decide the rate",
                number(active),
                number(least)
            ),
            Self::ThinBar { bar, least } => format!(
                "a bar of {}, under the {} from which bars are wound hot: wound cold it is another steel",
                size(bar),
                size(least)
            ),
            Self::ThickBar { bar, most, coiling } => format!(
                "a bar of {}, over the {} up to which it is wound {coiling}: check the bar",
                size(bar),
                size(most)
            ),
            Self::SteepPitch { angle, most } => format!(
                "a pitch angle of {}°, over the usual {}°: the formulas take the turns as nearly flat",
                number(angle.get::<degree>()),
                number(most.get::<degree>())
            ),
        }
    }
}

impl fmt::Display for Unusual {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.sentence(System::Metric))
    }
}

impl fmt::Display for Coiling {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Cold => "cold",
            Self::Hot => "hot",
        })
    }
}

/// All that is unusual about a coil, by what is known of it.
///
/// An index from 4 to 12; a pitch angle up to 7.5°; wound cold, two turns at work or more and a bar up
/// to 20 mm; wound hot, three turns or more and a bar from 8 to 100 mm.
///
/// # Source
/// [`Unusual::source`] of each.
///
/// # Example
/// ```
/// use coilnest::coil::{proportions, Coiling, Diameters};
/// use coilnest::quantity::{Length, unit::millimeter};
///
/// let mm = Length::new::<millimeter>;
/// let coil = Diameters::from_mean(mm(30.0), mm(108.0))?;
/// let unusual = proportions::unusual(coil, None, Some(mm(50.0)), Some(Coiling::Hot));
/// let sentences: Vec<String> = unusual.iter().map(ToString::to_string).collect();
/// assert_eq!(
///     sentences,
///     [
///         "an index of 3.6, below the usual 4: hard to wind, and stressed high inside the coil; measure bar and diameter again",
///         "a pitch angle of 8.38°, over the usual 7.5°: the formulas take the turns as nearly flat",
///     ]
/// );
/// # Ok::<(), coilnest::coil::DiametersError>(())
/// ```
#[must_use]
pub fn unusual(
    coil: Diameters,
    turns: Option<Turns>,
    pitch: Option<Length>,
    coiling: Option<Coiling>,
) -> Vec<Unusual> {
    let mut found = Vec::new();
    let index = coil.index();
    if index < LEAST_INDEX {
        found.push(Unusual::LowIndex { index, least: LEAST_INDEX });
    }
    if index > MOST_INDEX {
        found.push(Unusual::HighIndex { index, most: MOST_INDEX });
    }
    if let Some(coiling) = coiling {
        found.extend(outside_standard(coil.bar(), turns, coiling));
    }
    if let Some(pitch) = pitch {
        let (angle, most) = (bar::pitch_angle(coil, pitch), Angle::new::<degree>(MOST_ANGLE_DEG));
        if angle > most {
            found.push(Unusual::SteepPitch { angle, most });
        }
    }
    found
}

/// What lies outside the scope of EN 13906-1.
fn outside_standard(bar: Length, turns: Option<Turns>, coiling: Coiling) -> Vec<Unusual> {
    let mm = Length::new::<millimeter>;
    let (fewest, thinnest, most) = match coiling {
        Coiling::Cold => (2.0, None, mm(20.0)),
        Coiling::Hot => (3.0, Some(mm(8.0)), mm(100.0)),
    };
    let few = turns
        .map(|turns| turns.active())
        .filter(|active| *active < fewest)
        .map(|active| Unusual::FewTurns { active, least: fewest, coiling });
    let thin = thinnest.filter(|least| bar < *least).map(|least| Unusual::ThinBar { bar, least });
    let thick = (bar > most).then_some(Unusual::ThickBar { bar, most, coiling });
    few.into_iter().chain(thin).chain(thick).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Each limit from both sides: bar and mean diameter in mm, active turns, pitch in mm, coiling.
    #[test]
    fn a_limit_belongs_to_the_usual() {
        let mm = Length::new::<millimeter>;
        // tan 7.5° · π · 80 mm = 33.088 mm.
        for (bar, mean, active, pitch, coiling, count) in [
            (10.0, 40.0, 5.0, 12.0, None, 0),
            (10.0, 39.9, 5.0, 12.0, None, 1),
            (10.0, 120.0, 5.0, 12.0, None, 0),
            (10.0, 120.1, 5.0, 12.0, None, 1),
            (10.0, 80.0, 5.0, 33.0, None, 0),
            (10.0, 80.0, 5.0, 33.2, None, 1),
            (10.0, 80.0, 1.0, 12.0, None, 0),
            (10.0, 80.0, 2.0, 12.0, Some(Coiling::Cold), 0),
            (10.0, 80.0, 1.9, 12.0, Some(Coiling::Cold), 1),
            (10.0, 80.0, 3.0, 12.0, Some(Coiling::Hot), 0),
            (10.0, 80.0, 2.9, 12.0, Some(Coiling::Hot), 1),
            (20.0, 160.0, 5.0, 24.0, Some(Coiling::Cold), 0),
            (20.1, 160.0, 5.0, 24.0, Some(Coiling::Cold), 1),
            (20.1, 160.0, 5.0, 24.0, Some(Coiling::Hot), 0),
            (8.0, 64.0, 5.0, 10.0, Some(Coiling::Hot), 0),
            (7.9, 64.0, 5.0, 10.0, Some(Coiling::Hot), 1),
            (100.5, 600.0, 5.0, 120.0, Some(Coiling::Hot), 1),
        ] {
            let coil = Diameters::from_mean(mm(bar), mm(mean)).unwrap();
            let turns = Turns::new(active + 2.0, 2.0).unwrap();
            let found = unusual(coil, Some(turns), Some(mm(pitch)), coiling);
            assert_eq!(found.len(), count, "{bar} {mean} {active} {pitch}: {found:?}");
        }
    }

    #[test]
    fn sentences() {
        let mm = Length::new::<millimeter>;
        let said = |bar: f64, mean, active, coiling| {
            let coil = Diameters::from_mean(mm(bar), mm(mean)).unwrap();
            let turns = Turns::new(active, 0.0).unwrap();
            unusual(coil, Some(turns), None, Some(coiling)).first().map(ToString::to_string)
        };
        for (found, sentence) in [
            (
                said(10.0, 130.0, 5.0, Coiling::Cold),
                "an index of 13, above the usual 12: it tangles, bends aside and varies in size; measure bar and diameter again",
            ),
            (
                said(10.0, 80.0, 1.5, Coiling::Cold),
                "1.5 turns at work, under the 2 that the standard asks of a coil wound cold: its ends decide the rate",
            ),
            (
                said(6.0, 48.0, 5.0, Coiling::Hot),
                "a bar of 6 mm, under the 8 mm from which bars are wound hot: wound cold it is another steel",
            ),
            (
                said(25.0, 150.0, 5.0, Coiling::Cold),
                "a bar of 25 mm, over the 20 mm up to which it is wound cold: check the bar",
            ),
        ] {
            assert_eq!(found.as_deref(), Some(sentence));
        }
    }
}
