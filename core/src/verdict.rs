//! Good, short, long, or too close to call: a measured length against its limits.
//!
//! What was measured is not one number but a spread of likely ones, taken as normal with the
//! measured mean `y` and its standard uncertainty `u`. The verdict weighs how much of that spread
//! lies within the limits, and is only given when it is sure enough.

use crate::measured::Measured;
use crate::quantity::{Length, System, si};
use crate::say::{Say, says};
use crate::source::{Known, Source};
use thiserror::Error;

/// Where the decision rule comes from.
pub const SOURCE: Source = Source::new(
    "JCGM 106:2012",
    "7, probability of conformity of a normal distribution",
    Known::Memory,
);

/// The usual decision level: as sure as nineteen in twenty.
pub const USUAL_LEVEL: f64 = 0.95;

/// How near to a limit an estimate counts as on it: a nanometre is far below any reading, and far above
/// the rounding of sums.
pub(crate) const ROUNDING: Length = si(1e-9);

/// Least and greatest length that the book allows; either side may be open, not both.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Limits {
    least: Option<Length>,
    most: Option<Length>,
}

/// Why limits cannot be used.
#[derive(Clone, Copy, Debug, Error, PartialEq)]
#[error("{}", self.say(System::Metric))]
#[non_exhaustive]
pub enum LimitsError {
    /// The least is above the most.
    Crossed {
        /// Least allowed.
        least: Length,
        /// Most allowed.
        most: Length,
    },
    /// Neither side has a limit.
    None,
}

says! {
    LimitsError {
        Crossed { least, most } =>
            "a least limit of {least} and a greatest of {most}",
            "a least that is not above the greatest", "exchange the two";
        None => "no limit", "a least, a most, or both", "give one of them";
    }
}

impl Limits {
    /// From the least and the most, of which one may be open.
    ///
    /// # Errors
    /// [`LimitsError::None`] when both are open; [`LimitsError::Crossed`] when they are crossed.
    pub fn new(least: Option<Length>, most: Option<Length>) -> Result<Self, LimitsError> {
        match (least, most) {
            (None, None) => Err(LimitsError::None),
            (Some(least), Some(most)) if least > most => Err(LimitsError::Crossed { least, most }),
            _ => Ok(Self { least, most }),
        }
    }

    /// Nothing is allowed either way: the limits of a difference that should be none.
    pub(crate) fn none_either_way() -> Self {
        Self { least: Some(Length::default()), most: Some(Length::default()) }
    }

    /// The least allowed.
    #[must_use]
    pub fn least(&self) -> Option<Length> {
        self.least
    }

    /// The most allowed.
    #[must_use]
    pub fn most(&self) -> Option<Length> {
        self.most
    }
}

/// The verdict.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Word {
    /// Within the limits.
    Good,
    /// Below the least allowed.
    Short,
    /// Above the most allowed.
    Long,
    /// None of these is sure enough.
    TooClose,
}

/// A verdict with the probabilities that it rests on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Verdict {
    /// The verdict.
    pub word: Word,
    /// Probability that the true length lies within the limits.
    pub p_in: f64,
    /// Probability that it lies below the least allowed.
    pub p_short: f64,
    /// Probability that it lies above the most allowed.
    pub p_long: f64,
    /// When too close to call: the standard uncertainty that would settle it, if the estimate stood.
    pub would_settle: Option<Length>,
}

/// Judges a length `y` with standard uncertainty `u` against limits, at decision level `level`.
///
/// ```text
/// p_short = Φ((TL − y)/u)     p_long = 1 − Φ((TU − y)/u)     p_in = 1 − p_short − p_long
/// ```
/// `TL`, `TU` least and most allowed · `Φ` the normal distribution
///
/// The word is the first of good, short and long whose probability reaches the level, else too
/// close to call. An estimate within a nanometre of a limit counts as on it: no doubt is small enough to
/// settle that, and without any (`u` = 0) it is within.
///
/// # Source
/// [`SOURCE`].
///
/// # Example
/// ```
/// use coilnest::quantity::{Length, unit::millimeter};
/// use coilnest::verdict::{judge, Limits, Word};
///
/// let mm = Length::new::<millimeter>;
/// let limits = Limits::new(Some(mm(350.0)), Some(mm(356.0)))?;
/// let verdict = judge(mm(351.0), mm(0.5), limits, 0.95);
/// assert_eq!(verdict.word, Word::Good);
/// assert!((verdict.p_short - 0.022_75).abs() < 1e-5); // two standard uncertainties from the limit
/// # Ok::<(), coilnest::verdict::LimitsError>(())
/// ```
#[must_use]
pub fn judge(y: Length, u: Length, limits: Limits, level: f64) -> Verdict {
    let room = limits.room(y);
    let [p_short, p_long] = outside(room, u);
    let p_in = 1.0 - p_short - p_long;
    let word = if p_in >= level {
        Word::Good
    } else if p_short >= level {
        Word::Short
    } else if p_long >= level {
        Word::Long
    } else {
        Word::TooClose
    };
    let would_settle = if word == Word::TooClose { settling(room, level, u) } else { None };
    Verdict { word, p_in, p_short, p_long, would_settle }
}

/// How far an estimate lies within a limit, or beyond it where that is below zero.
fn within(limit: Length, y: Length, side: f64) -> Length {
    let distance = (y - limit) * side;
    if distance.abs() <= ROUNDING { Length::default() } else { distance }
}

impl Limits {
    /// How far an estimate lies within the least and within the most.
    fn room(self, y: Length) -> [Option<Length>; 2] {
        [self.least.map(|least| within(least, y, 1.0)), self.most.map(|most| within(most, y, -1.0))]
    }
}

/// Judges what was measured: good only where it is so wherever between their marks the ends lay.
///
/// A limit of a book mostly stands on a mark, and all that lies within half a graduation of the next mark
/// is read as that one. Taken as a mere doubt, that would call a coil on its limit good more often than
/// the level allows, with coarse marks and one place as often as one time in eight. So besides the mean with
/// its whole doubt both ends of what the readings say are judged, with the doubt of tape and places; where
/// one of them is not good, it is too close to call. The probabilities are those of the mean.
///
/// # Source
/// [`SOURCE`]; that the marks are taken at their worst is ours.
///
/// # Example
/// ```
/// use coilnest::bounds;
/// use coilnest::measured::{Tape, measure};
/// use coilnest::quantity::{Length, System, unit::inch};
/// use coilnest::reading::Reading;
/// use coilnest::verdict::{Limits, Word, judge, judge_measured};
///
/// let inches = Length::new::<inch>;
/// let limits = Limits::new(Some(inches(13.875)), Some(inches(14.125)))?;
/// let said = Reading::parse("14", System::Inch, &bounds::READING)?.interval(inches(1.0 / 8.0));
/// let measured = measure(&[said], Tape { error: inches(1.0 / 32.0), place: inches(1.0 / 16.0) })?;
/// // An end that is seen at 14 by eighths may stand at 13 15/16, and its place off by a sixteenth.
/// assert_eq!(judge(measured.mean, measured.doubt(), limits, 0.95).word, Word::Good);
/// assert_eq!(judge_measured(&measured, limits, 0.95).word, Word::TooClose);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn judge_measured(measured: &Measured, limits: Limits, level: f64) -> Verdict {
    let whole = judge(measured.mean, measured.doubt(), limits, level);
    let beside = measured.doubt_beside_marks();
    [measured.least, measured.most]
        .map(|end| judge(end, beside, limits, level))
        .into_iter()
        .find(|end| end.word != Word::Good)
        .filter(|_| whole.word == Word::Good)
        .map_or(whole, |end| {
            let would_settle = end.would_settle.or(Some(Length::default()));
            Verdict { word: Word::TooClose, would_settle, ..whole }
        })
}

/// Probabilities of lying beyond the least and beyond the most, by the room to each.
fn outside(room: [Option<Length>; 2], u: Length) -> [f64; 2] {
    room.map(|room| match room {
        Some(room) if u.value > 0.0 => normal(-(room / u).value),
        Some(room) if room.value < 0.0 => 1.0,
        Some(_) | None => 0.0,
    })
}

/// Φ, the standard normal distribution: the probability of a value below `z`.
///
/// ```text
/// Φ(z) = erfc(−z/√2) / 2
/// ```
#[must_use]
pub fn normal(z: f64) -> f64 {
    0.5 * libm::erfc(-z * core::f64::consts::FRAC_1_SQRT_2)
}

/// The largest standard uncertainty, to a part in 10⁹, at which the estimate would get a verdict.
///
/// The probability of the side on which the estimate stands only falls as `u` grows, so halving the
/// span between sure and unsure finds it. On a limit no reading is fine enough.
fn settling(room: [Option<Length>; 2], level: f64, u: Length) -> Option<Length> {
    if room.contains(&Some(Length::default())) {
        return None;
    }
    let settles = |u: f64| {
        let [short, long] = outside(room, si(u));
        short >= level || long >= level || 1.0 - short - long >= level
    };
    let (mut sure, mut unsure) = (0.0, u.value);
    while unsure - sure > 1e-9 * unsure {
        let half = f64::midpoint(sure, unsure);
        if settles(half) {
            sure = half;
        } else {
            unsure = half;
        }
    }
    Some(si(sure))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::unit::millimeter;
    use approx::assert_abs_diff_eq;
    use proptest::prelude::*;

    fn mm(x: f64) -> Length {
        Length::new::<millimeter>(x)
    }

    fn limits(least: f64, most: f64) -> Limits {
        Limits::new(Some(mm(least)), Some(mm(most))).unwrap()
    }

    #[test]
    fn crossed_and_missing_limits_are_refused() {
        assert_eq!(Limits::new(None, None), Err(LimitsError::None));
        assert!(matches!(
            Limits::new(Some(mm(2.0)), Some(mm(1.0))),
            Err(LimitsError::Crossed { .. })
        ));
        assert!(Limits::new(Some(mm(1.0)), Some(mm(1.0))).is_ok());
    }

    #[test]
    fn without_doubt_a_length_on_the_limit_is_within_it() {
        let verdict = judge(mm(350.0), mm(0.0), limits(350.0, 356.0), 0.95);
        assert_eq!(verdict.word, Word::Good);
        assert_eq!(judge(mm(349.9), mm(0.0), limits(350.0, 356.0), 0.95).word, Word::Short);
        assert_eq!(judge(mm(356.1), mm(0.0), limits(350.0, 356.0), 0.95).word, Word::Long);
    }

    #[test]
    fn on_the_limit_no_reading_is_fine_enough() {
        let verdict = judge(mm(350.0), mm(0.5), limits(350.0, 356.0), 0.95);
        assert_eq!((verdict.word, verdict.would_settle), (Word::TooClose, None));
    }

    /// 8 in, 1/8 either way, read 7 7/8: the sum 8 − 1/8 is a float, and not always the same one.
    #[test]
    fn an_estimate_within_rounding_of_a_limit_stands_on_it() {
        let inch = Length::new::<crate::quantity::unit::inch>;
        let mut within_rounding = 0;
        for book in (0..64 * 24).map(|parts| 1.0 + f64::from(parts) / 64.0) {
            for allowed in [1.0 / 64.0, 1.0 / 16.0, 1.0 / 8.0, 1.0 / 4.0].map(inch) {
                let limits =
                    Limits::new(Some(inch(book) - allowed), Some(inch(book) + allowed)).unwrap();
                let y = inch(book - allowed.get::<crate::quantity::unit::inch>());
                within_rounding += usize::from(Some(y) != limits.least());
                let verdict = judge(y, mm(0.3), limits, 0.95);
                assert_eq!((verdict.word, verdict.would_settle), (Word::TooClose, None));
                assert_abs_diff_eq!(verdict.p_short, 0.5);
                assert_eq!(judge(y, mm(0.0), limits, 0.95).word, Word::Good);
            }
        }
        assert!(within_rounding > 100, "{within_rounding}");
    }

    proptest! {
        #[test]
        fn the_three_probabilities_are_one(y in 300.0..400.0, u in 0.0..5.0, width in 0.0..20.0) {
            let verdict = judge(mm(y), mm(u), limits(350.0, 350.0 + width), 0.95);
            assert_abs_diff_eq!(verdict.p_in + verdict.p_short + verdict.p_long, 1.0, epsilon = 1e-12);
            prop_assert!(verdict.p_in > -1e-12);
        }

        #[test]
        fn the_settling_doubt_settles_and_a_hundredth_more_does_not(y in 340.0..366.0, u in 0.2..9.0) {
            let verdict = judge(mm(y), mm(u), limits(350.0, 356.0), 0.95);
            if let Some(settling) = verdict.would_settle {
                prop_assert_ne!(judge(mm(y), settling, limits(350.0, 356.0), 0.95).word, Word::TooClose);
                prop_assert_eq!(judge(mm(y), settling * 1.01, limits(350.0, 356.0), 0.95).word, Word::TooClose);
            }
        }
    }
}
