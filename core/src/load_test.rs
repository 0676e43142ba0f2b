//! A coil or a nest in a press: heights and loads read, and what they say of its rate, its free
//! height, the height at which coils begin to close, and what is lost on the way back.

mod fit;
mod hysteresis;
mod straight;

use crate::order::InOrder;
pub use fit::{
    ACTIVE_TURNS, CLOSING_SOURCE, Closing, Difference, FALSE_ALARM, Fit, LEAST_STIFFENING,
    Residual, SOURCE,
};
pub use hysteresis::{Gap, Hysteresis};

use crate::propagation::Doubted;
use crate::quantity::{Force, Length, System};
use crate::say::{InWords, Reader, Say, says, words_by_display};
use core::fmt;
use straight::Straight;
use thiserror::Error;

/// One reading: a height between the plates and the load that the press showed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reading {
    /// Height between the plates.
    pub height: Length,
    /// Load.
    pub load: Force,
}

/// Which way the plates moved.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Way {
    /// Together.
    Loading,
    /// Apart again.
    Unloading,
}

words_by_display!(Way);

impl fmt::Display for Way {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Loading => "loading",
            Self::Unloading => "unloading",
        })
    }
}

/// Readings in a press, in the order in which they were taken or in any other.
///
/// A reading without load tells of no rate, for the plate may stand clear of the coil. It is kept
/// and compared, and left out of the [`fit`](LoadTest::fit).
///
/// # Example
/// ```
/// use coilnest::load_test::{LoadTest, Reading};
/// use coilnest::quantity::{Force, Length};
/// use coilnest::quantity::unit::{millimeter, newton, newton_per_millimeter};
///
/// let reading = |mm, n| Reading {
///     height: Length::new::<millimeter>(mm),
///     load: Force::new::<newton>(n),
/// };
/// let loading = vec![reading(280.0, 2010.0), reading(260.0, 3990.0), reading(240.0, 6000.0)];
/// let test = LoadTest::new(loading, vec![reading(257.0, 4000.0)], None)?;
/// let fit = test.fit();
/// assert!((fit.rate.get::<newton_per_millimeter>() - 99.75).abs() < 1e-9);
/// assert!((fit.free.get::<millimeter>() - 300.1).abs() < 0.01);
/// // The scatter is 12 N: 12/√800 N/mm of rate.
/// let doubt = fit.rate_doubt.map(|doubt| doubt.get::<newton_per_millimeter>());
/// assert!((doubt.unwrap_or_default() - 0.433).abs() < 1e-3);
/// assert_eq!(fit.closing, None);
/// // Back under 4000 N it stood 2.9 mm lower.
/// let gap = test.hysteresis().map(|lost| lost.greatest.lower.get::<millimeter>());
/// assert!((gap.unwrap_or_default() - 2.9).abs() < 0.01);
/// # Ok::<(), coilnest::load_test::LoadTestError>(())
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct LoadTest {
    loading: Vec<Reading>,
    unloading: Vec<Reading>,
    /// The loading readings with a load, highest first.
    carrying: Vec<Reading>,
    /// The one line through them.
    whole: Straight,
}

impl InWords for Reading {
    fn in_words(&self, reader: Reader<'_>) -> String {
        format!("{} at {}", self.load.in_words(reader), self.height.in_words(reader))
    }
}

/// Why readings make no test. Readings are counted from 1.
#[derive(Clone, Copy, Debug, Error, PartialEq)]
#[error("{}", self.say(System::Metric))]
#[non_exhaustive]
pub enum LoadTestError {
    /// Fewer than two loading readings carry a load.
    TooFew {
        /// How many there are.
        count: usize,
    },
    /// All loading readings with a load are at one height.
    OneHeight {
        /// How many there are.
        count: usize,
        /// Their height.
        height: Length,
    },
    /// A height that is not above zero.
    Height {
        /// In which list.
        way: Way,
        /// Which reading.
        number: usize,
        /// Its height.
        height: Length,
    },
    /// A load that is below zero or not a number.
    Load {
        /// In which list.
        way: Way,
        /// Which reading.
        number: usize,
        /// Its load.
        load: Force,
    },
    /// A load that falls as the height falls.
    Falling {
        /// In which list.
        way: Way,
        /// The reading at the greater height.
        higher: Reading,
        /// The one at the lower height, with less load.
        lower: Reading,
    },
    /// The load is the same at every height.
    NoRise {
        /// The load.
        load: Force,
    },
    /// A load at a height where the free coil does not reach.
    AboveFree {
        /// In which list.
        way: Way,
        /// Which reading.
        number: usize,
        /// Its load.
        load: Force,
        /// Its height.
        height: Length,
        /// The free height by the tape.
        free: Length,
    },
}

says! {
    LoadTestError {
        TooFew { count } =>
            "loading readings with a load: {count}", "a load at two heights or more",
            "press further and read again";
        OneHeight { count, height } =>
            "all {count} loading readings are at {height}", "a reading at a second height",
            "press to another height and read again";
        Height { way, number, height } =>
            "{way} reading {number} has a height of {height}", "one above zero",
            "read the distance between the plates";
        Load { way, number, load } =>
            "{way} reading {number} has a load of {load}", "zero or more",
            "give the load without a sign, less what the press showed empty";
        Falling { way, higher, lower } =>
            "{way} readings: {higher}, but only {lower}, which is lower",
            "a load that rises as the height falls",
            "see whether the two were exchanged, or loading and unloading were mixed";
        NoRise { load } =>
            "the load is {load} at every height", "one that rises as the height falls",
            "see whether the press follows the coil";
        AboveFree { way, number, load, height, free } =>
            "{way} reading {number} has a load of {load} at {height}, above the free height of {free}",
            "a height below it",
            "measure the free height again, or see whether the press showed that load empty";
    }
}

/// How many standard uncertainties of the free height a load may stand above it.
const ABOVE_FREE: f64 = 3.0;

impl LoadTest {
    /// Readings taken while loading and, where there are any, while unloading, with the free height
    /// by the tape where it was measured.
    ///
    /// # Errors
    /// [`LoadTestError`]: fewer than two loading readings with a load, or all at one height; a
    /// height not above zero; a load below zero; a load that falls as the height falls; a load that
    /// never changes; a load more than three standard uncertainties above the tape's free height.
    pub fn new(
        loading: Vec<Reading>,
        unloading: Vec<Reading>,
        tape: Option<Doubted<Length>>,
    ) -> Result<Self, LoadTestError> {
        check(&loading, Way::Loading, tape)?;
        check(&unloading, Way::Unloading, tape)?;
        let with_load = loading.iter().filter(|reading| reading.load.value > 0.0);
        let carrying = downwards(with_load.copied().collect());
        let count = carrying.len();
        let (Some(highest), 2..) = (carrying.first(), count) else {
            return Err(LoadTestError::TooFew { count });
        };
        let Some(whole) = Straight::through(&carrying) else {
            return Err(LoadTestError::OneHeight { count, height: highest.height });
        };
        let as_highest = |reading: &Reading| (reading.load - highest.load).value.abs() <= 0.0;
        if carrying.iter().all(as_highest) {
            return Err(LoadTestError::NoRise { load: highest.load });
        }
        Ok(Self { loading, unloading, carrying, whole })
    }

    /// The readings taken while loading, as given.
    #[must_use]
    pub fn loading(&self) -> &[Reading] {
        &self.loading
    }

    /// The readings taken while unloading, as given.
    #[must_use]
    pub fn unloading(&self) -> &[Reading] {
        &self.unloading
    }
}

/// Readings with the highest first; at one height, in the order given.
fn downwards(mut readings: Vec<Reading>) -> Vec<Reading> {
    readings.put_in_order(|a, b| b.height.value.total_cmp(&a.height.value));
    readings
}

fn check(
    readings: &[Reading],
    way: Way,
    tape: Option<Doubted<Length>>,
) -> Result<(), LoadTestError> {
    for (number, &Reading { height, load }) in (1..).zip(readings) {
        if !(height.value > 0.0 && height.value.is_finite()) {
            return Err(LoadTestError::Height { way, number, height });
        }
        if !(load.value >= 0.0 && load.value.is_finite()) {
            return Err(LoadTestError::Load { way, number, load });
        }
        if let Some(Doubted { value: free, doubt }) = tape
            && load.value > 0.0
            && height > free + doubt * ABOVE_FREE
        {
            return Err(LoadTestError::AboveFree { way, number, load, height, free });
        }
    }
    rising(&downwards(readings.to_vec()), way)
}

/// Whether no reading has less load than one at a greater height.
fn rising(downwards: &[Reading], way: Way) -> Result<(), LoadTestError> {
    let mut most: Option<Reading> = None;
    for at_one_height in downwards.chunk_by(|a, b| a.height <= b.height) {
        if let Some(higher) = most
            && let Some(lower) = at_one_height.iter().find(|reading| reading.load < higher.load)
        {
            return Err(LoadTestError::Falling { way, higher, lower: *lower });
        }
        for reading in at_one_height {
            if most.is_none_or(|most| reading.load > most.load) {
                most = Some(*reading);
            }
        }
    }
    Ok(())
}

#[cfg(test)]
mod tests;
