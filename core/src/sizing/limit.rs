//! What can keep a coil from being the one that is needed.

use core::fmt;

/// One requirement that a coil meets or fails.
///
/// The order is that of [`Limit::ALL`]: what concerns the bar, the shape, the room across, the stress,
/// the room in height, and last what only a rounded drawing or a pair can fail.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Limit {
    /// No strength is held for a bar of that size.
    Strength,
    /// The index is below the least.
    LowIndex,
    /// The index is above the greatest.
    HighIndex,
    /// The pitch angle of the free coil is above the greatest.
    SteepPitch,
    /// The outside, grown, does not go into the pocket.
    Pocket,
    /// The inside does not go over the post.
    Post,
    /// The outside, grown, comes too near the coil around it.
    OuterCoil,
    /// The inside comes too near the coil within it, grown.
    InnerCoil,
    /// The stress at the greatest load at work is above the allowed one.
    StressAtLoad,
    /// The stress at solid is above the allowed one.
    StressAtSolid,
    /// The solid height is above the greatest.
    SolidHeight,
    /// Too little way is left between the lowest height at work and solid.
    Reserve,
    /// The gaps between the turns at the lowest height at work are below the least.
    Gaps,
    /// The free height is above the greatest.
    FreeHeight,
    /// The coil buckles before it is solid.
    Buckles,
    /// The rate is too far from the one that is needed.
    Rate,
    /// The load is too far from the one that is needed.
    Load,
    /// The second load is too far from the one that is needed.
    SecondLoad,
    /// The solid heights of a pair are too far apart.
    SolidBalance,
    /// The stresses of a pair are too far apart.
    StressBalance,
}

impl Limit {
    /// Every limit, in the order in which equal ones are named.
    pub const ALL: [Self; 20] = [
        Self::Strength,
        Self::LowIndex,
        Self::HighIndex,
        Self::SteepPitch,
        Self::Pocket,
        Self::Post,
        Self::OuterCoil,
        Self::InnerCoil,
        Self::StressAtLoad,
        Self::StressAtSolid,
        Self::SolidHeight,
        Self::Reserve,
        Self::Gaps,
        Self::FreeHeight,
        Self::Buckles,
        Self::Rate,
        Self::Load,
        Self::SecondLoad,
        Self::SolidBalance,
        Self::StressBalance,
    ];

    /// What it says of a coil that fails it, and what would help.
    ///
    /// ```
    /// use coilnest::sizing::Limit;
    ///
    /// assert!(Limit::Pocket.sentence().starts_with("it does not go into the pocket"));
    /// ```
    #[must_use]
    pub const fn sentence(self) -> &'static str {
        match self {
            Self::Strength => {
                "no strength is held for a bar of this size: give an allowable stress, or take another size"
            }
            Self::LowIndex => {
                "its index is below the least, so that it is hard to wind: a thinner bar, or fewer turns"
            }
            Self::HighIndex => {
                "its index is above the greatest, so that it tangles and varies: a thicker bar, or more turns"
            }
            Self::SteepPitch => {
                "its turns stand steeper than the formulas are meant for: more turns"
            }
            Self::Pocket => {
                "it does not go into the pocket, widened as it is at solid: a thinner bar, or more turns"
            }
            Self::Post => "it does not go over the post: a thicker bar, or fewer turns",
            Self::OuterCoil => {
                "it comes too near the coil around it, widened as it is at solid: a thinner bar, or more turns"
            }
            Self::InnerCoil => {
                "it comes too near the coil within it, widened as that is at solid: a thicker bar, or fewer turns"
            }
            Self::StressAtLoad => {
                "its stress at the greatest load is above the allowed one: a thicker bar, or more turns"
            }
            Self::StressAtSolid => {
                "its stress at solid is above the allowed one, so that it may set: a thicker bar, or less way to solid"
            }
            Self::SolidHeight => "its solid height is too great: a thinner bar, or fewer turns",
            Self::Reserve => {
                "too little way is left from its lowest height at work to solid: a thinner bar, or fewer turns"
            }
            Self::Gaps => {
                "its turns come nearer to each other at work than the standard lets them: a thinner bar, or fewer turns"
            }
            Self::FreeHeight => {
                "its free height is too great: a stiffer coil, or more height at work"
            }
            Self::Buckles => {
                "it bends out sideways before it is solid: a wider coil, or a seating that guides it"
            }
            Self::Rate => {
                "as drawn its rate is too far off: finer steps of the diameter, or a wider tolerance"
            }
            Self::Load => {
                "as drawn its load is too far off: finer steps of the diameter and the free height, or a wider tolerance"
            }
            Self::SecondLoad => {
                "as drawn its second load is too far off: finer steps of the diameter and the free height, or a wider tolerance"
            }
            Self::SolidBalance => {
                "the two are not solid at nearly the same height: finer steps of the turns, or bars less far apart"
            }
            Self::StressBalance => {
                "the two are not stressed nearly alike: finer steps of the turns, or bars less far apart"
            }
        }
    }

    const fn bit(self) -> u32 {
        1 << self as u32
    }
}

impl fmt::Display for Limit {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.sentence())
    }
}

/// A set of limits.
#[derive(Clone, Copy, Default, PartialEq, Eq)]
pub struct LimitSet(u32);

impl fmt::Debug for LimitSet {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_set().entries(self.iter()).finish()
    }
}

impl LimitSet {
    /// Whether the limit is among them.
    #[must_use]
    pub const fn contains(self, limit: Limit) -> bool {
        self.0 & limit.bit() != 0
    }

    /// Whether there is none.
    #[must_use]
    pub const fn is_empty(self) -> bool {
        self.0 == 0
    }

    /// Each of them, in the order of [`Limit::ALL`].
    pub fn iter(self) -> impl Iterator<Item = Limit> {
        Limit::ALL.into_iter().filter(move |limit| self.contains(*limit))
    }

    /// Those that are in both.
    #[must_use]
    pub const fn and(self, other: Self) -> Self {
        Self(self.0 & other.0)
    }
}

/// A margin by which round-off alone can fail: a bound in one unit and the same in another differ in
/// the last bit.
const ROUND_OFF: f64 = 1e-9;

/// How a coil stands to all its limits.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LimitCheck {
    /// The limit with the least margin: the one that it fails worst, or that it is nearest to.
    pub nearest: Limit,
    /// That margin, as a share of the bound: 0.1 is a tenth in hand, below zero it fails.
    pub margin: f64,
    /// Every limit that it fails.
    pub failing: LimitSet,
}

impl LimitCheck {
    pub(super) const fn none() -> Self {
        Self { nearest: Limit::Strength, margin: f64::INFINITY, failing: LimitSet(0) }
    }

    /// Whether it meets every requirement.
    #[must_use]
    pub const fn fits(&self) -> bool {
        self.failing.is_empty()
    }

    /// The limit that it fails worst.
    #[must_use]
    pub const fn limit(&self) -> Option<Limit> {
        if self.fits() { None } else { Some(self.nearest) }
    }

    pub(super) fn take(&mut self, limit: Limit, margin: f64) {
        // What is not a number is no margin.
        let margin = if margin.is_nan() { f64::NEG_INFINITY } else { margin };
        if margin < -ROUND_OFF {
            self.failing = LimitSet(self.failing.0 | limit.bit());
        }
        if margin < self.margin {
            (self.nearest, self.margin) = (limit, margin);
        }
    }

    /// At most the bound, which is above zero.
    pub(super) fn at_most(&mut self, limit: Limit, value: f64, bound: f64) {
        self.take(limit, 1.0 - value / bound);
    }

    /// At least the bound, which is above zero.
    pub(super) fn at_least(&mut self, limit: Limit, value: f64, bound: f64) {
        self.take(limit, value / bound - 1.0);
    }

    /// Both verdicts as one.
    pub(super) fn and(mut self, other: Self) -> Self {
        self.failing = LimitSet(self.failing.0 | other.failing.0);
        if other.margin < self.margin {
            (self.nearest, self.margin) = (other.nearest, other.margin);
        }
        self
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_limit_is_a_bit_of_its_own_and_has_a_sentence_that_helps() {
        for (place, limit) in Limit::ALL.into_iter().enumerate() {
            assert_eq!(limit as usize, place);
            assert!(limit.sentence().contains(": "), "{limit:?}");
        }
    }

    #[test]
    fn the_worst_is_named_and_all_are_kept() {
        let mut verdict = LimitCheck::none();
        verdict.at_most(Limit::HighIndex, 9.0, 12.0);
        assert_eq!((verdict.fits(), verdict.limit()), (true, None));
        verdict.at_least(Limit::Post, 45.0, 50.0);
        verdict.at_most(Limit::StressAtLoad, 900.0, 600.0);
        assert_eq!(verdict.limit(), Some(Limit::StressAtLoad));
        assert!((verdict.margin + 0.5).abs() < 1e-12);
        let failing: Vec<Limit> = verdict.failing.iter().collect();
        assert_eq!(failing, [Limit::Post, Limit::StressAtLoad]);
    }

    #[test]
    fn what_is_not_a_number_fails_and_round_off_does_not() {
        let mut verdict = LimitCheck::none();
        verdict.at_most(Limit::Pocket, 1.0 + 1e-12, 1.0);
        assert!(verdict.fits());
        verdict.take(Limit::Gaps, f64::NAN);
        assert_eq!(verdict.limit(), Some(Limit::Gaps));
    }
}
