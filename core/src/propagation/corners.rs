//! The least and the most that the tolerances of a drawing can make of a rate and a load.
//!
//! Whatever diameter is drawn, a spring is stiffer for more modulus, a thicker bar and more dead
//! turns, and softer for a wider coil and more turns; its load grows with its free height. So the
//! least and the most lie each at one corner of the tolerances, and no other need be looked at.

use super::{Across, Doubted, PropagationError, Sample, Spring};
use crate::coil::ends::Turns;
use crate::quantity::{Force, Length, Pressure, SpringRate};
use crate::source::{Known, Source};
use core::fmt;
use core::ops::{Add, Div, Sub};
use thiserror::Error;

/// Why the corners are the ends of the range.
pub const SOURCE: Source =
    Source::new("coilnest", "rate and load are monotone in every input", Known::Derived);

/// Where a number may lie: the least and the most, both included.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Between<Q> {
    least: Q,
    most: Q,
}

/// The least is above the most, or one of them is not a number.
#[derive(Clone, Copy, Debug, Error, PartialEq)]
#[error(
    "from {least:?} to {most:?}; the least first and the most second was expected: exchange the two, or give a tolerance without a sign"
)]
pub struct Crossed<Q: fmt::Debug> {
    /// What was to be the least.
    pub least: Q,
    /// What was to be the most.
    pub most: Q,
}

impl<Q: Copy + fmt::Debug + PartialOrd> Between<Q> {
    /// From the least to the most.
    ///
    /// # Errors
    /// [`Crossed`] when the least is above the most or one is not a number.
    pub fn new(least: Q, most: Q) -> Result<Self, Crossed<Q>> {
        if least <= most { Ok(Self { least, most }) } else { Err(Crossed { least, most }) }
    }

    /// A value and what it may be less and more.
    ///
    /// # Errors
    /// As [`Between::new`].
    ///
    /// # Example
    /// ```
    /// use coilnest::propagation::corners::Between;
    ///
    /// let turns = Between::around(7.5, 0.25, 0.5)?;
    /// assert_eq!((turns.least(), turns.most()), (7.25, 8.0));
    /// assert!(Between::around(7.5, -0.25, 0.0).is_err());
    /// # Ok::<(), coilnest::propagation::corners::Crossed<f64>>(())
    /// ```
    pub fn around(value: Q, less: Q, more: Q) -> Result<Self, Crossed<Q>>
    where
        Q: Add<Output = Q> + Sub<Output = Q>,
    {
        Self::new(value - less, value + more)
    }

    /// One value and no other.
    ///
    /// # Errors
    /// [`Crossed`] when it is not a number.
    pub fn only(value: Q) -> Result<Self, Crossed<Q>> {
        Self::new(value, value)
    }

    /// The least.
    #[must_use]
    pub fn least(&self) -> Q {
        self.least
    }

    /// The most.
    #[must_use]
    pub fn most(&self) -> Q {
        self.most
    }

    /// The middle, with the standard uncertainty of a number that may lie anywhere between.
    ///
    /// ```text
    /// y = (least + most)/2      u = (most − least)/(2 √3)
    /// ```
    ///
    /// # Source
    /// JCGM 100:2008, 4.3.7 (from memory).
    ///
    /// # Example
    /// ```
    /// use coilnest::propagation::corners::Between;
    ///
    /// let turns = Between::around(7.5, 0.125, 0.375)?.doubted();
    /// assert_eq!(turns.value, 7.625);
    /// assert!((turns.doubt - 0.25 / 3f64.sqrt()).abs() < 1e-12);
    /// # Ok::<(), coilnest::propagation::corners::Crossed<f64>>(())
    /// ```
    #[must_use]
    pub fn doubted(&self) -> Doubted<Q>
    where
        Q: Add<Output = Q> + Sub<Output = Q> + Div<f64, Output = Q>,
    {
        Doubted::uniform((self.least + self.most) / 2.0, (self.most - self.least) / 2.0)
    }
}

/// A drawing with its tolerances.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Toleranced {
    /// Bar d.
    pub bar: Between<Length>,
    /// Which diameter is drawn.
    pub across: Across,
    /// That diameter.
    pub diameter: Between<Length>,
    /// All turns, tip to tip.
    pub total_turns: Between<f64>,
    /// Turns that lie dead at the ends.
    pub dead_turns: Between<f64>,
    /// Shear modulus G.
    pub shear_modulus: Between<Pressure>,
    /// Free height L0.
    pub free: Between<Length>,
}

impl Toleranced {
    /// The middle of every tolerance with its standard uncertainty, for the root sum of squares:
    /// [`propagation::rate`](super::rate()) and [`propagation::load`](super::load) of it.
    ///
    /// # Source
    /// As [`Between::doubted`].
    #[must_use]
    pub fn sample(&self) -> Sample {
        Sample {
            bar: self.bar.doubted(),
            across: self.across,
            diameter: self.diameter.doubted(),
            total_turns: self.total_turns.doubted(),
            dead_turns: self.dead_turns.doubted(),
            shear_modulus: self.shear_modulus.doubted(),
            free: self.free.doubted(),
        }
    }

    fn softest(&self) -> Result<Spring, PropagationError> {
        let coil = self.across.coil(self.bar.least, self.diameter.most)?;
        let turns = Turns::new(self.total_turns.most, self.dead_turns.least)?;
        Spring::new(coil, turns, self.shear_modulus.least, self.free.least)
    }

    fn stiffest(&self) -> Result<Spring, PropagationError> {
        let coil = self.across.coil(self.bar.most, self.diameter.least)?;
        let turns = Turns::new(self.total_turns.least, self.dead_turns.most)?;
        Spring::new(coil, turns, self.shear_modulus.most, self.free.most)
    }
}

/// The least and the most that the rate can be.
///
/// ```text
/// least  G least, d least, D most, nt most, dead turns least
/// most   G most, d most, D least, nt least, dead turns most
/// ```
/// in `k = G · d⁴ / (8 · D³ · (nt − dead turns))`, the diameter as it is drawn: `D = De − d` is
/// widest where De is most and d is least, and `d⁴/(Di + d)³` rises with d, as 4 (Di + d) > 3 d
///
/// # Range
/// That of [`coil::rate::rate`](crate::coil::rate::rate).
///
/// # Errors
/// [`PropagationError`], where some spring within the tolerances is none.
///
/// # Source
/// [`SOURCE`].
///
/// # Example
/// ```
/// use coilnest::propagation::Across;
/// use coilnest::propagation::corners::{self, Between, Toleranced};
/// use coilnest::quantity::{Length, Pressure};
/// use coilnest::quantity::unit::{gigapascal, millimeter, newton, newton_per_millimeter};
///
/// let mm = Length::new::<millimeter>;
/// let drawing = Toleranced {
///     bar: Between::around(mm(10.0), mm(0.1), mm(0.1))?,
///     across: Across::Mean,
///     diameter: Between::around(mm(80.0), mm(1.0), mm(1.0))?,
///     total_turns: Between::only(7.0)?,
///     dead_turns: Between::around(2.0, 0.25, 0.25)?,
///     shear_modulus: Between::only(Pressure::new::<gigapascal>(80.0))?,
///     free: Between::around(mm(200.0), mm(2.0), mm(2.0))?,
/// };
/// let rate = corners::rate(&drawing)?;
/// assert!((rate.least().get::<newton_per_millimeter>() - 34.429).abs() < 5e-4); // 9.9, 81, 5.25
/// assert!((rate.most().get::<newton_per_millimeter>() - 44.434).abs() < 5e-4); // 10.1, 79, 4.75
/// let load = corners::load(&drawing, mm(160.0))?;
/// assert!((load.least().get::<newton>() - 1308.3).abs() < 0.05); // 34.429 · 38
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn rate(drawing: &Toleranced) -> Result<Between<SpringRate>, PropagationError> {
    let (softest, stiffest) = (drawing.softest()?, drawing.stiffest()?);
    Ok(Between { least: softest.rate(), most: stiffest.rate() })
}

/// The least and the most that the load at a height can be; the least is nought where the free
/// height may be below it.
///
/// ```text
/// F = k · max(0, L0 − h)      least: k least, L0 least      most: k most, L0 most
/// ```
/// `k` rate, N/m, by [`rate`](fn@rate) · `L0` free height, m · `h` height, m
///
/// # Range
/// As [`rate`](fn@rate), and heights from below free to solid.
///
/// # Errors
/// [`PropagationError`], as for the rate, and where no free height within the tolerances is above
/// the height.
///
/// # Source
/// [`SOURCE`].
///
/// # Example
/// That of [`rate`](fn@rate) ends with it.
pub fn load(drawing: &Toleranced, height: Length) -> Result<Between<Force>, PropagationError> {
    let (softest, stiffest) = (drawing.softest()?, drawing.stiffest()?);
    let most = stiffest.rate() * stiffest.under_load(height)?;
    let least = match softest.under_load(height) {
        Ok(deflection) => softest.rate() * deflection,
        Err(_) => Force::default(),
    };
    Ok(Between { least, most })
}
