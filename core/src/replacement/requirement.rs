//! The requirements that a replacement is judged by, and whose figures they need.

use super::Case;
use super::limits::Measure;
use crate::drawing::{Drawing, Figure, Figures};
use crate::order::InOrder;
use core::fmt;

/// One thing that a replacement must do.
///
/// Each says what is compared, and what is asked where [`Asked`](super::Asked) leaves it open: the
/// original's own range over its tolerances, so that a spring may stand in for itself, tolerances and
/// all. Where the original's tolerances are not given, usual ones stand in for them, and no line that
/// rests on them is more than met as drawn. Where a rule allows less than the original itself has, the
/// original's own figure is asked instead: a replacement need not be better than what it replaces.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[non_exhaustive]
pub enum Requirement {
    /// It goes into its pocket: its outside diameter, grown at solid. Else no wider than the original.
    Pocket,
    /// It goes over its post: its inside diameter, free. Else no narrower than the original.
    Post,
    /// It clears the coil around it: the radial gap when it has grown to solid and the other has not.
    /// Else no touching.
    OuterGap,
    /// It clears the coil within it: the radial gap when that one has grown to solid and it has not.
    /// Else no touching.
    InnerGap,
    /// It is wound the other way than the coil around it.
    OuterHand,
    /// It is wound the other way than the coil within it.
    InnerHand,
    /// Its free height. Else that of the original within its tolerance; where that is not given, within
    /// grade 2 of EN 15800 where that covers it, or 2 % (common practice, no source).
    FreeHeight,
    /// Its rate. Else that of the original over its tolerances; where one is not given, within 5 %
    /// (common practice, no source).
    Rate,
    /// Its load at the working height. Else that of the original over its tolerances; where one is not
    /// given, within grade 2 of EN 15800 where that covers it, or 5 % (common practice, no source).
    Load,
    /// Its load at a height at which the original's is stated: the first, the second and so on. That of
    /// the original within its tolerance; where that is not given, as at the working height.
    LoadAt(u8),
    /// Its solid height: it stops no earlier. Else no higher than that of the original.
    SolidHeight,
    /// Its stress at the working height. Else what its steel is allowed at rest, and in the original's
    /// own steel no less than the original has; where the steel says nothing, no more than the original
    /// has, which holds for sure only where both are of one steel.
    StressAtWork,
    /// Its stress at solid. Else as at the working height.
    StressAtSolid,
    /// What is left from the working height to solid. Else the least gaps that EN 13906-1 asks of the
    /// original, as far as the original itself leaves them.
    Reserve,
    /// The height at which it buckles, zero where it never does: below the working height. Else no
    /// higher than that of the original.
    Buckling,
    /// The way it is wound. Else that of the original.
    Hand,
    /// The form of its ends. Else that of the original.
    Ends,
    /// Its factor of safety between two loads for a life without end, the lesser of Goodman's with
    /// Zimmerli's data and that against yielding. Else 1 (common practice, no source).
    Fatigue,
    /// The height of the nest under its load, which is the one that it had at the working height with
    /// the original where none is given.
    NestHeight,
    /// The greatest part of the mean by which the load of a nest under the frame differs from it. Its
    /// most is attained at a corner of the tolerances; its least may be lower between them.
    Deviation,
}

impl Requirement {
    /// Every requirement; of the loads at stated heights the first three.
    pub const ALL: [Self; 22] = [
        Self::Pocket,
        Self::Post,
        Self::OuterGap,
        Self::InnerGap,
        Self::OuterHand,
        Self::InnerHand,
        Self::Hand,
        Self::Ends,
        Self::FreeHeight,
        Self::Rate,
        Self::Load,
        Self::SolidHeight,
        Self::Reserve,
        Self::StressAtWork,
        Self::StressAtSolid,
        Self::Buckling,
        Self::Fatigue,
        Self::NestHeight,
        Self::Deviation,
        Self::LoadAt(0),
        Self::LoadAt(1),
        Self::LoadAt(2),
    ];

    /// What kind of figure is compared; none where it is a word.
    pub(super) fn measure(self) -> Option<Measure> {
        Some(match self {
            Self::Pocket
            | Self::Post
            | Self::OuterGap
            | Self::InnerGap
            | Self::FreeHeight
            | Self::SolidHeight
            | Self::Reserve
            | Self::Buckling
            | Self::NestHeight => Measure::Length,
            Self::Rate => Measure::Rate,
            Self::Load | Self::LoadAt(_) => Measure::Load,
            Self::StressAtWork | Self::StressAtSolid => Measure::Stress,
            Self::Fatigue | Self::Deviation => Measure::Number,
            Self::OuterHand | Self::InnerHand | Self::Hand | Self::Ends => return None,
        })
    }

    /// Those that are asked, in the order in which a list shows them.
    pub(super) fn of(case: &Case) -> Vec<Self> {
        let at_work = case.asked.working.is_some();
        let nest = case.nest.as_ref();
        let (outer, inner) = (
            nest.is_some_and(|nest| !nest.outer.is_empty()),
            nest.is_some_and(|nest| !nest.inner.is_empty()),
        );
        let stated = u8::try_from(case.original.loads.len()).unwrap_or(u8::MAX);
        let loads = (0..stated).map(|place| (Self::LoadAt(place), true));
        let all = [
            (Self::Pocket, true),
            (Self::Post, true),
            (Self::OuterGap, outer),
            (Self::InnerGap, inner),
            (Self::OuterHand, outer),
            (Self::InnerHand, inner),
            (Self::Hand, true),
            (Self::Ends, true),
            (Self::FreeHeight, true),
            (Self::Rate, true),
            (Self::Load, at_work),
            (Self::SolidHeight, true),
            (Self::Reserve, at_work),
            (Self::StressAtWork, at_work),
            (Self::StressAtSolid, true),
            (Self::Buckling, at_work),
            (Self::Fatigue, case.asked.cycle.is_some()),
            (Self::NestHeight, nest.is_some() && case.asked.nest_height.is_some()),
            (Self::Deviation, case.frame.is_some() && case.asked.deviation.is_some()),
        ];
        let all = all.into_iter().chain(loads);
        all.filter_map(|(requirement, asked)| asked.then_some(requirement)).collect()
    }
}

/// Whose figure it is. Coils around and within are counted from 0, the widest first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Whose {
    /// The spring that is to be replaced.
    Original,
    /// The one that may replace it.
    Candidate,
    /// A coil around it.
    Outer(usize),
    /// A coil within it.
    Inner(usize),
    /// The nest's as a whole.
    Nest,
    /// A coil of a nest that is replaced as a whole.
    There(usize),
    /// A coil that is offered for such a nest.
    Offered(usize),
}

impl fmt::Display for Whose {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Original => f.write_str("the original"),
            Self::Candidate => f.write_str("the candidate"),
            Self::Outer(0) => f.write_str("the coil around it"),
            Self::Inner(0) => f.write_str("the coil within it"),
            Self::Outer(place) => write!(f, "coil {} around it", place + 1),
            Self::Inner(place) => write!(f, "coil {} within it", place + 1),
            Self::Nest => f.write_str("the nest"),
            Self::There(place) => write!(f, "coil {} that is there", place + 1),
            Self::Offered(place) => write!(f, "coil {} that is offered", place + 1),
        }
    }
}

/// A figure that is missing, or whose tolerance is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Missing {
    /// Whose.
    pub whose: Whose,
    /// Which.
    pub figure: Figure,
}

impl fmt::Display for Missing {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} of {}", self.figure, self.whose)
    }
}

impl Whose {
    /// Some figures of his.
    pub(super) fn figures(self, of: Figures) -> Vec<Missing> {
        of.iter().map(|figure| Missing { whose: self, figure }).collect()
    }

    /// Names him whose figures are lacking.
    pub(super) fn lacks<T>(self, found: Result<T, Figures>) -> Result<T, Vec<Missing>> {
        found.map_err(|lacks| self.figures(lacks))
    }

    /// His drawing.
    pub(super) fn of(self, case: &mut Case) -> Option<&mut Drawing> {
        match self {
            Self::Original => Some(&mut case.original),
            Self::Candidate => Some(&mut case.candidate),
            Self::Outer(place) => Some(&mut case.nest.as_mut()?.outer.get_mut(place)?.spring),
            Self::Inner(place) => Some(&mut case.nest.as_mut()?.inner.get_mut(place)?.spring),
            Self::Nest | Self::There(_) | Self::Offered(_) => None,
        }
    }
}

/// Both, or all that they lack.
pub(super) fn all<A, B>(
    one: Result<A, Vec<Missing>>,
    other: Result<B, Vec<Missing>>,
) -> Result<(A, B), Vec<Missing>> {
    match (one, other) {
        (Ok(one), Ok(other)) => Ok((one, other)),
        (Err(mut lacks), Err(more)) => {
            lacks.extend(more);
            lacks.put_in_order(Ord::cmp);
            lacks.dedup();
            Err(lacks)
        }
        (Err(lacks), Ok(_)) | (Ok(_), Err(lacks)) => Err(lacks),
    }
}
