//! Nests of helical compression springs: what a tape says of a coil, what a nest of coils carries.
//!
//! Vehicles and machines ride on nests: a long outer coil with a shorter one inside it. Whoever has
//! one apart measures the coils with a tape and decides which go back. This crate does the sums, from
//! `13 7/8 scant` to a verdict and the loads of the nest, and shows its working. Of one coil it also
//! tells how far its rate can be trusted, whether it sets, bends aside or lasts, and what a press shows.
//!
//! It is pure: no files, no clock, no globals, no tables of its own. Steels, tape classes and
//! tolerances come in as [`tables::Tables`]; every formula and every number carries its
//! [`source::Source`].
//!
//! # Which room answers which question
//!
//! | question | room |
//! | --- | --- |
//! | What does this text say, and is it sensible? | [`reading`], [`mod@quantity`], [`bounds`] |
//! | How far can several readings be trusted? | [`measured`] |
//! | Is this coil good, short, long, or too close to call? | [`verdict`] |
//! | What does one coil's drawing amount to? | [`coil`] |
//! | What has a coil lost since it was last measured? | [`change`] |
//! | Which moduli and which strength has its steel? | [`material`] |
//! | What may a new spring be off, where the book has no limit? | [`tolerance`] |
//! | What does a nest carry at a height, how high does it stand under a load? | [`nest`] |
//! | What does each of several nests carry, how does their frame stand, what does a dip do? | [`frame`] |
//! | What do pads, plates and shims do to a nest's height and load? | [`stack`] |
//! | Does a box slide in its guides, and which liner brings it right? | [`guides`] |
//! | Which coil of those on the bench belongs in which seat? | [`matching`] |
//! | How far can a rate or a load be trusted, and what is worth measuring better? | [`propagation`] |
//! | What do readings in a press say of a coil? | [`load_test`] |
//! | May another spring stand in for this one, and what has its maker to know? | [`replacement`] |
//! | Which coil, or pair of coils, would carry a load in the room there is? | [`sizing`] |
//! | How did a figure come about? | [`formula`], [`source`] |
//! | Everything that follows from a bench record, and the sheet of a coil | `job` (feature `job`, or `serde`) |
//!
//! # Example
//!
//! Two coils, the inner one a quarter of an inch shorter; how high does the nest stand under 3000 lb?
//!
//! ```
//! use coilnest::bounds;
//! use coilnest::nest::{Law, Member, Nest};
//! use coilnest::quantity::{Length, SpringRate, System, read, unit};
//! use coilnest::reading::{Reading, Step, write_inch};
//!
//! let coil = |free: &str, rate: &str| -> Result<Member, Box<dyn std::error::Error>> {
//!     let free = Reading::parse(free, System::Inch, &bounds::FREE_HEIGHT)?.length();
//!     let law = Law::linear(read(rate, System::Inch, &bounds::RATE)?)?;
//!     Ok(Member { free, law, solid: None, raise: Length::default() })
//! };
//! let nest = Nest::new(vec![coil("14", "1000 lb/in")?, coil("13 3/4", "400 lb/in")?])?;
//! let state = nest.at_load(read("3000 lb", System::Inch, &bounds::LOAD)?)?;
//! // 1000·s + 400·(s − 1/4) = 3000, so s = 3100/1400 = 2.214 in
//! assert_eq!(write_inch(state.height, Step::Sixteenth), "11 13/16 in scant");
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

#[macro_use]
extern crate uom;

/// The example of this crate's `README.md`.
#[cfg(doctest)]
#[doc = include_str!("../README.md")]
pub struct Readme;

pub mod bounds;
pub mod change;
pub mod coil;
pub mod drawing;
pub mod formula;
pub mod frame;
pub mod guides;
#[cfg(feature = "job")]
pub mod job;
pub mod load_test;
pub mod matching;
pub mod material;
pub mod measured;
pub mod nest;
mod order;
mod progress;
pub mod propagation;
pub mod quantity;
pub mod reading;
pub mod replacement;
pub mod say;
pub mod sizing;
pub mod source;
pub mod stack;
pub mod tables;
pub mod tolerance;
pub mod verdict;

pub use coil::Diameters;
pub use frame::{Frame, Place, Settled, Support, Weight};
pub use nest::{Law, Member, Nest, State};
pub use quantity::{Force, Length, SpringRate, System};
pub use tables::Tables;
