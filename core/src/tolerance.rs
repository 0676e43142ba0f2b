//! What a standard allows a new spring to be off, for a book that gives no limit.
//!
//! A spring in service is not judged by it: whoever keeps the machine sets that limit.
//!
//! Of cold-wound springs EN 15800 is held, as [`ColdWound`]. Of hot-wound ones no number is known well
//! enough: [`look_up`] says which document has it.

mod cold_wound;

pub use cold_wound::{
    ColdWound, FREE_HEIGHT_SOURCE, LOAD_SOURCE, PARALLELISM_SOURCE, SQUARENESS_SOURCE,
};

use crate::coil::Diameters;
use crate::quantity::{Length, System};
use crate::say::{InWords, Message, Reader, Say};
use crate::source::{Source, Sourced};
use std::fmt;
use thiserror::Error;

/// A quality grade of EN 15800, the closest first.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Grade {
    /// Grade 1: fine.
    One,
    /// Grade 2: what is usual where nothing is agreed.
    Two,
    /// Grade 3: coarse.
    Three,
}

impl Grade {
    /// All of them, the closest first.
    pub const ALL: [Self; 3] = [Self::One, Self::Two, Self::Three];

    /// The entry of this grade in a list of one for each.
    const fn of<T: Copy>(self, [one, two, three]: [T; 3]) -> T {
        match self {
            Self::One => one,
            Self::Two => two,
            Self::Three => three,
        }
    }
}

/// How a spring was wound, which decides whose standard holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Winding {
    /// Cold, from wire.
    Cold,
    /// Hot, from bar, and hardened afterwards.
    Hot,
}

/// What may be off.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Feature {
    /// Height without load.
    FreeHeight,
    /// Load at a height.
    Load,
    /// Rate.
    Rate,
    /// Height with all turns in contact.
    SolidHeight,
    /// Diameter of the coil.
    Diameter,
    /// Count of turns.
    Turns,
    /// How far a coil on its end leans from upright.
    Squareness,
    /// How far its ends are from parallel.
    Parallelism,
}

impl fmt::Display for Feature {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::FreeHeight => "free height",
            Self::Load => "load",
            Self::Rate => "rate",
            Self::SolidHeight => "solid height",
            Self::Diameter => "diameter",
            Self::Turns => "count of turns",
            Self::Squareness => "squareness",
            Self::Parallelism => "parallelism",
        })
    }
}

/// Why there is no tolerance to go by.
#[derive(Clone, Copy, Debug, Error, PartialEq)]
#[error("{}", self.say(System::Metric))]
#[non_exhaustive]
pub enum NoTolerance {
    /// A size of the spring lies outside those that the standard speaks of.
    Size {
        /// Which.
        what: &'static str,
        /// The spring's own.
        size: Length,
        /// The least that is covered.
        least: Length,
        /// The most that is covered.
        most: Length,
    },
    /// A plain number of the spring lies outside those that the standard speaks of.
    Number {
        /// Which.
        what: &'static str,
        /// The spring's own.
        number: f64,
        /// The least that is covered.
        least: f64,
        /// The most that is covered, where there is a most.
        most: Option<f64>,
    },
    /// The number is not known well enough to be held; the document has it.
    LookUp {
        /// What may be off.
        feature: Feature,
        /// How the spring was wound.
        winding: Winding,
        /// Where it stands.
        document: &'static str,
    },
}

impl Say for NoTolerance {
    fn say_to(&self, reader: Reader<'_>) -> Message {
        let outside = |what, found: String, range: String| {
            Message::new(
                format_args!("{what} {found} lies outside {range}, which EN 15800 covers"),
                format_args!(""),
                format_args!("agree the tolerance with the maker"),
            )
        };
        match *self {
            Self::Size { what, size, least, most } => {
                let range = format!("{} to {}", least.in_words(reader), most.in_words(reader));
                outside(what, size.in_words(reader), range)
            }
            Self::Number { what, number, least, most } => {
                let least = least.in_words(reader);
                let range = most.map_or_else(
                    || format!("from {least} up"),
                    |most| format!("{least} to {}", most.in_words(reader)),
                );
                outside(what, number.in_words(reader), range)
            }
            Self::LookUp { feature, winding, document } => {
                let wound = match winding {
                    Winding::Cold => "cold-wound",
                    Winding::Hot => "hot-wound",
                };
                Message::new(
                    format_args!("no tolerance on the {feature} of a {wound} spring is held here"),
                    format_args!(""),
                    format_args!("look it up in {document}"),
                )
            }
        }
    }
}

/// Where the tolerance of a feature stands that is not held here.
///
/// # Example
/// ```
/// use coilnest::tolerance::{Feature, Winding, look_up};
///
/// assert_eq!(
///     look_up(Winding::Hot, Feature::SolidHeight).to_string(),
///     "no tolerance on the solid height of a hot-wound spring is held here; look it up in ASTM A125"
/// );
/// ```
#[must_use]
pub const fn look_up(winding: Winding, feature: Feature) -> NoTolerance {
    let document = match (winding, feature) {
        (Winding::Cold, Feature::SolidHeight | Feature::Rate | Feature::Turns) => {
            "EN 15800, or agree it with the maker"
        }
        (Winding::Cold, _) => "EN 15800",
        (Winding::Hot, Feature::SolidHeight) => "ASTM A125",
        (Winding::Hot, _) => "ISO 11891 or ASTM A125, whichever the drawing names",
    };
    NoTolerance::LookUp { feature, winding, document }
}

/// By how much the coil diameter of a new cold-wound spring may be off, for mean diameters over one
/// size up to another.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DiameterBand {
    /// Mean diameters over this one.
    pub over: Length,
    /// Up to this one.
    pub up_to: Length,
    /// Half-widths: for each grade, for an index from 4 to 8, over 8 to 14, over 14 to 20.
    pub half_widths: [[Length; 3]; 3],
    /// Where they stand.
    pub source: Source,
}

impl DiameterBand {
    /// The half-width for a coil, if its mean diameter is of this band.
    fn half_width(&self, coil: Diameters, grade: Grade) -> Option<Sourced<Length>> {
        // A bound in one unit and the same size in another differ in the last bit.
        let slack = 1e-9 * coil.mean();
        let within = coil.mean() - slack > self.over && coil.mean() - slack <= self.up_to;
        let [low, middle, high] = grade.of(self.half_widths);
        let value = match coil.index() {
            index if index <= 8.0 + 1e-9 => low,
            index if index <= 14.0 + 1e-9 => middle,
            _ => high,
        };
        within.then_some(Sourced { value, source: self.source })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_not_held_names_the_feature_and_a_document() {
        for feature in [Feature::FreeHeight, Feature::Load, Feature::Rate, Feature::Turns] {
            let sentence = look_up(Winding::Hot, feature).to_string();
            assert!(sentence.contains(&feature.to_string()), "{sentence}");
            assert!(sentence.contains("hot-wound") && sentence.contains("ISO 11891"), "{sentence}");
        }
        let sentence = look_up(Winding::Cold, Feature::Rate).to_string();
        assert!(sentence.contains("cold-wound") && sentence.contains("EN 15800"), "{sentence}");
    }
}
