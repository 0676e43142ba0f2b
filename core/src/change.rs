//! What a length has lost since it was last measured, and whether that is more than the tapes can tell.
//!
//! Two measurements at two times have nothing in common: their doubts add up by squares. Where one tape
//! took both, its own error cancels and the true doubt is less; nobody can say so from two sheets of
//! paper, and the greater doubt errs on the side of saying less.

use crate::formula::Formula;
use crate::quantity::{Length, si};
use crate::source::{Known, Source};
use crate::verdict::{self, Limits, Verdict};

/// Where the doubt of a difference comes from.
pub const SOURCE: Source = Source::new(
    "JCGM 100:2008",
    "5.1.2, the combined standard uncertainty of a difference of two uncorrelated estimates",
    Known::Memory,
);

/// The difference and its doubt.
pub const FORMULA: Formula = Formula::new("{Δl} = {L2} − {L1};  {u} = √({u1}² + {u2}²)");

/// A measured length with its standard uncertainty.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Estimate {
    /// The length.
    pub length: Length,
    /// One standard uncertainty.
    pub doubt: Length,
}

/// What two measurements of one length say of it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Word {
    /// It is shorter than it was.
    Lost,
    /// It is longer than it was.
    Gained,
    /// The difference is no more than the measurements can tell.
    WithinDoubt,
}

/// A difference of two measurements.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Change {
    /// The later length less the earlier.
    pub by: Length,
    /// One standard uncertainty of it.
    pub doubt: Length,
    /// Probability that the length is less than it was.
    pub p_lost: f64,
    /// What it amounts to.
    pub word: Word,
}

/// Compares a length as it is now with what it was, at a decision level.
///
/// ```text
/// Δl = L2 − L1     u² = u1² + u2²     p_lost = Φ(−Δl/u)
/// ```
/// `L1`, `u1` the earlier length and its standard uncertainty · `L2`, `u2` the later ones · all lengths in
/// the same unit
///
/// It has lost or gained something where the probability of that reaches the level. The rule is that of
/// [`verdict::judge`] with zero as the limit on either side.
///
/// # Source
/// [`SOURCE`]; the decision is that of [`verdict::SOURCE`].
///
/// # Example
/// ```
/// use coilnest::change::{Estimate, Word, change};
/// use coilnest::quantity::{Length, unit::millimeter};
///
/// let mm = Length::new::<millimeter>;
/// let taped = |length, doubt| Estimate { length: mm(length), doubt: mm(doubt) };
/// // √(0.6² + 0.8²) = 1: two millimetres are two standard uncertainties.
/// let lost = change(taped(354.0, 0.6), taped(352.0, 0.8), 0.95);
/// assert_eq!(lost.word, Word::Lost);
/// assert!((lost.doubt.get::<millimeter>() - 1.0).abs() < 1e-12);
/// assert!((lost.p_lost - 0.977_25).abs() < 1e-5);
/// // One millimetre is one, and no more than two such tapes can tell.
/// assert_eq!(change(taped(353.0, 0.6), taped(352.0, 0.8), 0.95).word, Word::WithinDoubt);
/// ```
#[must_use]
pub fn change(before: Estimate, after: Estimate, level: f64) -> Change {
    let by = after.length - before.length;
    let doubt = si(libm::hypot(before.doubt.value, after.doubt.value));
    let Verdict { word, p_short, .. } = verdict::judge(by, doubt, Limits::none_either_way(), level);
    let word = match word {
        verdict::Word::Short => Word::Lost,
        verdict::Word::Long => Word::Gained,
        verdict::Word::Good | verdict::Word::TooClose => Word::WithinDoubt,
    };
    Change { by, doubt, p_lost: p_short, word }
}
