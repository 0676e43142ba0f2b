//! Rate and free height from the loading readings, and where the coils begin to close.

use super::straight::Straight;
use super::{LoadTest, Reading};
use crate::coil::Diameters;
use crate::formula::Formula;
use crate::propagation::Doubted;
use crate::quantity::{Force, Length, Pressure, SpringRate, si};
use crate::source::{Known, Source};

/// What the readings say, by least squares of the load.
#[derive(Clone, Debug, PartialEq)]
pub struct Fit {
    /// Rate: of all readings with a load, or of those above the [`closing`](Fit::closing).
    pub rate: SpringRate,
    /// Free height: where that line has no load.
    pub free: Length,
    /// One standard uncertainty of the rate; none of two readings, which any line fits.
    pub rate_doubt: Option<SpringRate>,
    /// One standard uncertainty of the free height; none of two readings.
    pub free_doubt: Option<Length>,
    /// Standard deviation of the loads about that line; none of two readings.
    pub scatter: Option<Force>,
    /// Every reading with a load, highest first, and how far it lies off its line.
    pub residuals: Vec<Residual>,
    /// Where coils begin to close, if they do within the readings.
    pub closing: Option<Closing>,
}

/// A reading and how far it lies off its line.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Residual {
    /// The reading.
    pub reading: Reading,
    /// Its load less that of the line.
    pub off: Force,
}

/// Where the load curve becomes steeper.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Closing {
    /// The height at which the two lines cross.
    pub height: Length,
    /// One standard uncertainty of it.
    pub height_doubt: Length,
    /// The rate below it.
    pub rate: SpringRate,
    /// The probability that readings on one straight line would look as bent as these, or more.
    pub chance: f64,
}

/// How a measured figure differs from an expected one.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Difference<Q> {
    /// The measured less the expected.
    pub by: Q,
    /// The same in units of the doubt of both together; none where nothing is known of it.
    pub in_doubts: Option<f64>,
}

/// The probability with which scatter alone may pass for closing coils: one in a hundred.
pub const FALSE_ALARM: f64 = 0.01;

/// How much steeper the lower line is at least where coils are said to close: a twentieth, which is
/// more than a helix stiffens by itself (chosen here, no source).
pub const LEAST_STIFFENING: f64 = 1.05;

impl LoadTest {
    /// Rate, free height and where the coils begin to close.
    ///
    /// ```text
    /// F = k · (L0 − h)
    /// k   = Σ (h̄ − h_i)(F_i − F̄) / Σ (h_i − h̄)²      L0   = h̄ + F̄/k
    /// s²  = Σ (F_i − k (L0 − h_i))² / (m − 2)
    /// u_k = s / √Σ (h_i − h̄)²                         u_L0 = s/k · √(1/m + (L0 − h̄)²/Σ (h_i − h̄)²)
    /// ```
    /// `h_i` heights, m · `F_i` loads, N · `h̄`, `F̄` their means · `m` their number · `s` scatter, N
    ///
    /// The curve becomes steeper as coils close. They are said to where two lines, one through the
    /// upper and one through the lower readings, fit better than one line by more than scatter
    /// explains. Of all ways to part the readings with two heights or more in either part, those count
    /// in which the lower line is the steeper by [`LEAST_STIFFENING`] and the two cross where the
    /// parts meet, or within one height of it. The best of them is accepted when
    ///
    /// ```text
    /// w · (S2/S1)^((m − 4)/2)  ≤  0.01
    /// ```
    /// `S1`, `S2` sums of squares about one line and about two · `w` number of ways
    ///
    /// which is the F-test with 2 and m − 4 degrees of freedom, multiplied by the ways that were
    /// tried. Rate and free height are then those of the upper line.
    ///
    /// # Range
    /// The scatter is put down to the load. An error that the press makes in the same way at every
    /// height, such as two parts in a hundred too much, is not in the doubts. Six readings or more
    /// are wanted to see the coils close, the more the further they scatter. Where the curve bends
    /// slowly, the height is that where straight continuations cross. The doubts are standard
    /// deviations from m − 2 degrees of freedom: of three readings they are a rough guess.
    ///
    /// # Source
    /// [`SOURCE`], [`CLOSING_SOURCE`].
    ///
    /// # Example
    /// ```
    /// use coilnest::load_test::{LoadTest, Reading};
    /// use coilnest::quantity::{Force, Length, unit::{millimeter, newton}};
    ///
    /// // 10 N/mm from 100 mm, and 25 N/mm below 62 mm.
    /// let readings = [90.0, 80.0, 70.0, 60.0, 50.0, 40.0_f64].map(|h| Reading {
    ///     height: Length::new::<millimeter>(h),
    ///     load: Force::new::<newton>(10.0 * (100.0 - h) + 15.0 * (62.0 - h).max(0.0)),
    /// });
    /// let fit = LoadTest::new(readings.to_vec(), vec![], None)?.fit();
    /// assert!((fit.free.get::<millimeter>() - 100.0).abs() < 1e-9);
    /// let closing = fit.closing.map(|closing| closing.height.get::<millimeter>());
    /// assert!((closing.unwrap_or_default() - 62.0).abs() < 1e-9);
    /// # Ok::<(), coilnest::load_test::LoadTestError>(())
    /// ```
    #[must_use]
    pub fn fit(&self) -> Fit {
        let bend = Bend::best(&self.carrying, &self.whole);
        let upper = bend.map_or(self.whole, |bend| bend.upper);
        let off = |place: usize, reading: Reading| match bend {
            Some(bend) if place >= bend.at => bend.lower.off(reading),
            _ => upper.off(reading),
        };
        let residuals = self
            .carrying
            .iter()
            .enumerate()
            .map(|(place, reading)| Residual { reading: *reading, off: si(off(place, *reading)) });
        let variance = (upper.degrees() > 0.0).then(|| upper.squares / upper.degrees());
        let free_variance = |of_load| upper.variance_at(upper.free(), of_load);
        Fit {
            rate: si(upper.rate),
            free: si(upper.free()),
            rate_doubt: variance.map(|v| si(libm::sqrt(upper.variance_of_rate(v)))),
            free_doubt: variance.map(|v| si(libm::sqrt(free_variance(v)) / upper.rate)),
            scatter: variance.map(|v| si(libm::sqrt(v))),
            residuals: residuals.collect(),
            closing: bend.map(|bend| bend.closing()),
        }
    }
}

/// [`Fit::active_turns`] in symbols.
pub const ACTIVE_TURNS: Formula = Formula::new("{n} = {G} · {d}⁴ / (8 · {D}³ · {k})");

/// Where the least squares of [`LoadTest::fit`] come from.
pub const SOURCE: Source = Source::new(
    "JCGM 100:2008",
    "annex H.3, straight line by least squares with its standard uncertainties",
    Known::Memory,
);

/// Where the test for closing coils comes from.
pub const CLOSING_SOURCE: Source = Source::new(
    "Chow, Econometrica 28 (1960)",
    "equality between two linear regressions; times the ways tried (Bonferroni)",
    Known::Memory,
);

impl Fit {
    /// The active turns that the rate implies.
    ///
    /// ```text
    /// n = G · d⁴ / (8 · D³ · k)
    /// ```
    /// `G` shear modulus, Pa · `d` bar, m · `D` mean diameter, m · `k` rate, N/m
    ///
    /// # Range
    /// One coil, not a nest. Bar, diameter and modulus are taken as exact: with the sensitivities of
    /// [`propagation::rate`](crate::propagation::rate()) their doubts come into the turns as well as
    /// that of the rate.
    ///
    /// # Source
    /// [`coil::rate::SOURCE`](crate::coil::rate::SOURCE).
    ///
    /// # Example
    /// ```
    /// use coilnest::coil::Diameters;
    /// use coilnest::load_test::{LoadTest, Reading};
    /// use coilnest::quantity::{Force, Length, Pressure, unit::{gigapascal, millimeter, newton}};
    ///
    /// let mm = Length::new::<millimeter>;
    /// let readings = [(190.0, 390.625), (150.0, 1953.125)]
    ///     .map(|(h, f)| Reading { height: mm(h), load: Force::new::<newton>(f) });
    /// let fit = LoadTest::new(readings.to_vec(), vec![], None)?.fit();
    /// let coil = Diameters::from_mean(mm(10.0), mm(80.0))?;
    /// let turns = fit.active_turns(coil, Pressure::new::<gigapascal>(80.0));
    /// assert!((turns - 5.0).abs() < 1e-9); // 39.0625 N/mm
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn active_turns(&self, coil: Diameters, shear_modulus: Pressure) -> f64 {
        let index = coil.index();
        (shear_modulus * coil.bar() / (8.0 * index * index * index * self.rate)).value
    }

    /// How the rate differs from the drawing's.
    ///
    /// ```text
    /// Δ = k − k_drawing      in doubts: Δ / √(u_k² + u_drawing²)
    /// ```
    ///
    /// # Source
    /// JCGM 100:2008, 5.1.2 (from memory).
    #[must_use]
    pub fn rate_against(&self, drawing: Doubted<SpringRate>) -> Difference<SpringRate> {
        let by = self.rate - drawing.value;
        let doubts = self.rate_doubt.map(|own| [own.value, drawing.doubt.value]);
        Difference { by, in_doubts: in_doubts(by.value, doubts) }
    }

    /// How the free height differs from the tape's.
    ///
    /// On a coil that has set under the press, or whose ends lie down first, the line's free height
    /// is not the tape's, and neither is wrong.
    ///
    /// ```text
    /// Δ = L0 − L0_tape      in doubts: Δ / √(u_L0² + u_tape²)
    /// ```
    ///
    /// # Source
    /// JCGM 100:2008, 5.1.2 (from memory).
    #[must_use]
    pub fn free_against(&self, tape: Doubted<Length>) -> Difference<Length> {
        let by = self.free - tape.value;
        let doubts = self.free_doubt.map(|own| [own.value, tape.doubt.value]);
        Difference { by, in_doubts: in_doubts(by.value, doubts) }
    }
}

fn in_doubts(by: f64, doubts: Option<[f64; 2]>) -> Option<f64> {
    let [own, expected] = doubts?;
    let both = libm::hypot(own, expected);
    (both > 0.0).then(|| by / both)
}

/// Two lines in place of one.
#[derive(Clone, Copy)]
struct Bend {
    upper: Straight,
    lower: Straight,
    /// How many readings are in the upper part.
    at: usize,
    crossing: f64,
    chance: f64,
}

impl Bend {
    /// Of four readings, which two lines fit in any case, the chance is never small.
    fn best(readings: &[Reading], whole: &Straight) -> Option<Self> {
        #[expect(clippy::cast_precision_loss, reason = "nobody takes 2⁵² readings of one coil")]
        let count = readings.len() as f64;
        let mut ways = 0.0;
        let mut best: Option<Self> = None;
        for at in 1..readings.len() {
            let Some((above, below)) = readings.split_at_checked(at) else { continue };
            let (Some(upper), Some(lower)) = (Straight::through(above), Straight::through(below))
            else {
                continue;
            };
            if !parted(above, below) {
                continue;
            }
            ways += 1.0;
            let crossing = upper.crossing(&lower);
            let steeper = upper.rate > 0.0 && lower.rate >= LEAST_STIFFENING * upper.rate;
            let squares = upper.squares + lower.squares;
            if steeper
                && crosses(above, below, crossing)
                && best.is_none_or(|best| squares < best.squares())
            {
                best = Some(Self { upper, lower, at, crossing, chance: 0.0 });
            }
        }
        let best = best?;
        let chance = ways * libm::pow(best.squares() / whole.squares, (count - 4.0) / 2.0);
        (chance <= FALSE_ALARM).then_some(Self { chance, ..best })
    }

    fn squares(&self) -> f64 {
        self.upper.squares + self.lower.squares
    }

    fn closing(&self) -> Closing {
        let (upper, lower) = (&self.upper, &self.lower);
        let of_load = self.squares() / (upper.degrees() + lower.degrees());
        let variance =
            upper.variance_at(self.crossing, of_load) + lower.variance_at(self.crossing, of_load);
        Closing {
            height: si(self.crossing),
            height_doubt: si(libm::sqrt(variance) / (lower.rate - upper.rate)),
            rate: si(lower.rate),
            chance: self.chance,
        }
    }
}

/// Whether no height is in both parts.
fn parted(above: &[Reading], below: &[Reading]) -> bool {
    above.last().zip(below.first()).is_some_and(|(last, first)| last.height > first.height)
}

/// Whether two lines cross between the last height but one above and the second below.
fn crosses(above: &[Reading], below: &[Reading], crossing: f64) -> bool {
    let (mut above, mut below) = (above.iter().rev(), below.iter());
    let (Some(last), Some(first)) = (above.next(), below.next()) else { return false };
    let most = above.find(|reading| reading.height > last.height);
    let least = below.find(|reading| reading.height < first.height);
    most.is_some_and(|most| crossing <= most.height.value)
        && least.is_some_and(|least| crossing >= least.height.value)
}
