//! Which shims to lay under the nests of a frame, from those that are in stock.
//!
//! A plan gives every nest a stack of shims, or keeps what lies there. The best plan brings the
//! greatest deviation to least, of the loads or of the heights of the frame as [`Aim`] says:
//!
//! ```text
//! loads:    max |F_i/m − 1|     m = W/n
//! corners:  max |H_i − H_m|     H_i = z + a·x_i + b·y_i + w·x_i·y_i     H_m mean of all H_i
//! ```
//! Of plans that are equal within [`ROUNDING`] the one is taken with the fewest shims to handle; of
//! those the one that is best in the other aim; of those the one with the thickest stack at the nest
//! farthest along, and farthest across of several, then at the next in that order. So the answer is
//! one, and does not depend on the order in which the nests are given. Of plans that mirror each
//! other it is the one with its shims farther along.
//!
//! To handle are the pieces that are laid, and one for each nest where what lies there now is taken
//! out. A nest that keeps what it has asks for nothing, so that a plan that gains nothing is to leave
//! all as it is.

mod choice;
mod descent;
mod ranges;
mod remainder;
mod task;
mod twist;

use crate::order::InOrder;
pub use choice::{Stack, Stock};
pub use remainder::{GREATER, Remainder, Remains};

use super::{Frame, FrameError, Settled, Weight};
use crate::bounds::{self, OutOfBounds};
use crate::quantity::{Force, Length, System, si};
use crate::say::{Say, says};
use task::{Found, Task, Value};
use thiserror::Error;

/// Deviations nearer than this are equal: as a part of the mean load, and in metres of height.
pub const ROUNDING: f64 = 1e-9;

/// The greatest number of thicknesses in stock.
pub const MOST_THICKNESSES: usize = 16;

/// The greatest number of stacks of different thickness that a stock makes.
pub const MOST_STACKS: usize = 256;

/// The greatest number of plans that are all tried where more than four nests leave no other way to
/// be certain.
pub const MOST_TRIED: usize = 10_000;

/// What a plan is to bring to least.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Aim {
    /// The greatest deviation of a nest's load from the mean.
    Loads,
    /// The greatest deviation of the frame's height at a nest from the mean.
    Corners,
}

/// A deviation, of the kind that the [`Aim`] has.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Deviation {
    /// Of a load, as a part of the mean load.
    Load(f64),
    /// Of a height.
    Height(Length),
}

/// How far a frame is from even, in both aims.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Evenness {
    /// The greatest deviation of a nest's load from the mean, as a part of the mean.
    pub loads: f64,
    /// The greatest deviation of the frame's height at a nest from the mean of these heights.
    pub corners: Length,
}

/// A frame at rest, and how even it is.
#[derive(Clone, Debug, PartialEq)]
pub struct State {
    /// Loads and heights.
    pub settled: Settled,
    /// How far they are from even.
    pub evenness: Evenness,
}

/// What comes under one nest.
#[derive(Clone, Debug, PartialEq)]
pub enum Packing {
    /// What lies there now.
    Kept,
    /// These shims instead, none where the stack is empty.
    Laid(Stack),
}

/// A nest in a plan.
#[derive(Clone, Debug, PartialEq)]
pub struct Under {
    /// What comes under it.
    pub packing: Packing,
    /// How thick that is.
    pub thickness: Length,
    /// How much thicker than now.
    pub change: Length,
}

/// One nest to be worked at.
#[derive(Clone, Debug, PartialEq)]
pub struct Step {
    /// Which support, from 0.
    pub support: usize,
    /// The shims to lay; none where only what lies there is taken out.
    pub stack: Stack,
    /// What lies there before.
    pub before: Length,
    /// What the nest carries more once this step is done, and not yet the next.
    pub gains: Force,
    /// How far from even the frame is after this step.
    pub evenness: Evenness,
}

/// The shims to lay, and what comes of it.
#[derive(Clone, Debug, PartialEq)]
pub struct Plan {
    /// Each nest, in the frame's order.
    pub under: Vec<Under>,
    /// How many shims there are to handle.
    pub handled: usize,
    /// The frame as it is.
    pub before: State,
    /// The frame with the plan carried out.
    pub after: State,
    /// What to do, in order: each step is the one that then leaves the least deviation.
    pub steps: Vec<Step>,
    /// No plan from this stock comes below it.
    pub bound: Deviation,
    /// How far the plan is above the bound.
    pub gap: Deviation,
    /// Whether it is proven that no plan from this stock is better.
    pub exact: bool,
    /// Why the plan is no better.
    pub remainder: Remainder,
}

/// Why there is no plan.
#[derive(Clone, Copy, Debug, Error, PartialEq)]
#[error("{}", self.say(System::Metric))]
#[non_exhaustive]
pub enum ShimError {
    /// Nothing in stock.
    Empty,
    /// Too many thicknesses.
    Thicknesses {
        /// How many there are.
        count: usize,
    },
    /// A shim without thickness.
    Thickness {
        /// The thickness.
        thickness: Length,
    },
    /// A thickness or a largest stack that is not a number.
    NotFinite {
        /// What it was.
        what: &'static str,
    },
    /// More of a shim or of a stack than any is.
    OutOfBounds(#[from] OutOfBounds),
    /// A largest stack that no shim fits in.
    Largest {
        /// The largest stack.
        largest: Length,
        /// The thinnest shim.
        thinnest: Length,
    },
    /// A stock that makes too many stacks.
    Stacks {
        /// The largest stack.
        largest: Length,
    },
    /// The places where shims may go are not one for each nest.
    Places {
        /// Of how many it is told.
        found: usize,
        /// How many nests there are.
        expected: usize,
    },
    /// The frame does not stand.
    Frame(#[from] FrameError),
}

says! {
    ShimError through [OutOfBounds, Frame] {
        Empty => "no shims in stock", "at least one thickness", "give those that are at hand";
        Thicknesses { count } =>
            "{count} thicknesses in stock", "a number from 1 to {MOST_THICKNESSES}",
            "leave out those that others add up to";
        Thickness { thickness } =>
            "a shim in stock of {thickness}", "a thickness above zero", "measure it again";
        NotFinite { what } => "the {what} is not a number", "a length", "measure it again";
        Largest { largest, thinnest } =>
            "a largest stack of {largest}", "a stack of {thinnest} or more",
            "that is the thinnest shim in stock; see whether both are in the same units";
        Stacks { largest } =>
            "more than {MOST_STACKS} stacks of different thickness up to {largest} from the shims in stock",
            "a lower stack or fewer thin shims",
            "leave out the thinnest shims, or lower the largest stack";
        Places { found, expected } =>
            "whether shims may go there is said of {found} nests", "a word of all {expected}",
            "say yes or no for each";
    }
}

impl Evenness {
    /// The deviation that an aim brings to least.
    #[must_use]
    pub fn of(&self, aim: Aim) -> Deviation {
        match aim {
            Aim::Loads => Deviation::Load(self.loads),
            Aim::Corners => Deviation::Height(self.corners),
        }
    }
}

impl Deviation {
    /// From a value in the units of the aim, a part of the mean load or metres.
    fn new(value: f64, aim: Aim) -> Self {
        match aim {
            Aim::Loads => Self::Load(value),
            Aim::Corners => Self::Height(si(value)),
        }
    }
}

impl From<Value> for Evenness {
    fn from(value: Value) -> Self {
        Self { loads: value.loads, corners: si(value.corners) }
    }
}

impl Frame {
    /// The best plan of shims under this frame.
    ///
    /// What lies under a nest now, [`Support::shim`](super::Support::shim), is replaced by the stack
    /// of the plan, or kept. `may` tells of each nest whether shims may go there; the others keep what
    /// they have.
    ///
    /// # Range
    /// With three and four nests the plan is proven to be the best. Three nests carry by the lever
    /// whatever lies under them. On four the loads hang on one number, the twist of the shims, and the
    /// stacks of two nests are met with those of the other two; heights are searched with bounds, and
    /// where that takes too long [`Plan::exact`] says so. With more nests all plans are tried where
    /// there are no more than [`MOST_TRIED`]; beyond that the plan is the best found by exchanging the
    /// stacks of one nest or two, and [`Plan::gap`] how far it is above what no plan can beat.
    ///
    /// Plans that would press a nest to nothing are left out.
    ///
    /// # Errors
    /// [`ShimError::Places`]; [`FrameError`] where the frame as it is does not stand.
    ///
    /// # Source
    /// [`frame::SOURCE`](super::SOURCE); that a shim t under one of four equal nests moves each load
    /// by k·t/4 is derived from it.
    ///
    /// # Example
    /// A corner that is 12 mm low is shimmed by as much, or each of the diagonal by half. With 5 mm
    /// at most under a nest it takes the diagonal:
    /// ```
    /// use coilnest::frame::shims::{Aim, Packing, Remains, Stock};
    /// use coilnest::frame::{Frame, Place, Support, Weight};
    /// use coilnest::nest::{Law, Member, Nest};
    /// use coilnest::quantity::{Force, Length, SpringRate};
    /// use coilnest::quantity::unit::{millimeter, newton, newton_per_millimeter};
    ///
    /// let mm = Length::new::<millimeter>;
    /// let law = Law::linear(SpringRate::new::<newton_per_millimeter>(300.0))?;
    /// let nest = Nest::new(vec![Member { free: mm(350.0), law, solid: None, raise: mm(0.0) }])?;
    /// let support = |x, y, ground| Support {
    ///     place: Place { along: mm(x), across: mm(y) },
    ///     nest: nest.clone(),
    ///     stop: None,
    ///     shim: mm(0.0),
    ///     ground: mm(ground),
    /// };
    /// let corners = vec![
    ///     support(900.0, 500.0, 0.0),
    ///     support(900.0, -500.0, 0.0),
    ///     support(-900.0, 500.0, 0.0),
    ///     support(-900.0, -500.0, -12.0),
    /// ];
    /// let frame = Frame::new(corners, None)?;
    /// let weight = Weight { load: Force::new::<newton>(40_000.0), centre: Place::default() };
    ///
    /// let stock = Stock::new(&[mm(2.0), mm(5.0)], mm(5.0))?;
    /// let plan = frame.shimmed(weight, &stock, &[true; 4], Aim::Loads)?;
    /// assert!((plan.before.evenness.loads - 0.09).abs() < 1e-12); // 300 · 12/4 = 900
    /// assert!((plan.after.evenness.loads - 0.015).abs() < 1e-12); // 300 · (12 − 5 − 5)/4 = 150
    /// assert_eq!(plan.handled, 2);
    /// assert_eq!(plan.under[1].packing, Packing::Kept);
    /// assert_eq!(plan.remainder.chief, Remains::Stack);
    /// assert!(plan.exact);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn shimmed(
        &self,
        weight: Weight,
        stock: &Stock,
        may: &[bool],
        aim: Aim,
    ) -> Result<Plan, ShimError> {
        let expected = self.supports.len();
        if may.len() != expected {
            return Err(ShimError::Places { found: may.len(), expected });
        }
        let before = self.settle(weight)?;
        let mut task = Task::new(self, weight, stock, may, aim);
        let kept = task.kept()?;
        let found = task.solve(&kept);
        let remainder = Remainder::of(&mut task, &found);
        let steps = task.steps(&kept, &found)?;
        let under = task.under(&found);
        let mut posts = self.posts.clone();
        for (post, under) in posts.iter_mut().zip(&under) {
            post.offset += under.change.value;
        }
        let rest = self.rest(&posts, weight, None)?;
        let after = self.settled(&posts, weight, &rest)?;
        let value = found.value.of(aim);
        let bound = found.bound.min(value);
        Ok(Plan {
            under,
            handled: found.handled,
            before: State { settled: before, evenness: kept.value.into() },
            after: State { settled: after, evenness: found.value.into() },
            steps,
            bound: Deviation::new(bound, aim),
            gap: Deviation::new(value - bound, aim),
            exact: value <= bound + ROUNDING,
            remainder,
        })
    }
}

impl Task<'_> {
    /// Each nest of a plan, in the frame's order.
    fn under(&self, found: &Found) -> Vec<Under> {
        let mut under: Vec<(usize, Under)> = Vec::with_capacity(found.picks.len());
        for (nest, choice) in self.nests.iter().zip(self.picked(&found.picks)) {
            let packing = choice.stack.map_or(Packing::Kept, |stack| Packing::Laid(stack.clone()));
            let thickness = si(choice.thickness);
            let change = si(choice.thickness - nest.now);
            under.push((nest.support, Under { packing, thickness, change }));
        }
        under.put_in_order(|(one, _), (other, _)| one.cmp(other));
        under.into_iter().map(|(_, under)| under).collect()
    }

    /// The steps of a plan: each the one that leaves the least deviation, the first in order of place
    /// where several do.
    fn steps(&mut self, kept: &Found, found: &Found) -> Result<Vec<Step>, FrameError> {
        let mut lies: Vec<f64> = self.nests.iter().map(|nest| nest.now).collect();
        let mut rest = self.rest(&lies, None)?;
        let mut left: Vec<usize> =
            (0..lies.len()).filter(|at| kept.picks.get(*at) != found.picks.get(*at)).collect();
        let goal: Vec<_> = self.picked(&found.picks).copied().collect();
        let mut steps = Vec::with_capacity(left.len());
        while !left.is_empty() {
            let mut best: Option<(f64, usize)> = None;
            for (place, at) in left.iter().enumerate() {
                let (Some(lying), Some(choice)) = (lies.get_mut(*at), goal.get(*at)) else {
                    continue;
                };
                let was = core::mem::replace(lying, choice.thickness);
                let value = self.value_from(&lies, Some(rest.pose));
                if let Some(lying) = lies.get_mut(*at) {
                    *lying = was;
                }
                let value = value.map_or(f64::INFINITY, |value| value.of(self.aim));
                if best.is_none_or(|(least, _)| value < least - ROUNDING) {
                    best = Some((value, place));
                }
            }
            let Some((_, place)) = best else { break };
            let at = left.remove(place);
            let (Some(lying), Some(choice), Some(nest)) =
                (lies.get_mut(at), goal.get(at), self.nests.get(at))
            else {
                break;
            };
            *lying = choice.thickness;
            let (support, before) = (nest.support, si(nest.now));
            let next = self.rest(&lies, None)?;
            let gains = next.loads.get(at).zip(rest.loads.get(at)).map_or(0.0, |(to, of)| to - of);
            rest = next;
            steps.push(Step {
                support,
                stack: choice.stack.cloned().unwrap_or_default(),
                before,
                gains: si(gains),
                evenness: self.value_of(&rest).into(),
            });
        }
        Ok(steps)
    }
}

#[cfg(test)]
mod tests;
