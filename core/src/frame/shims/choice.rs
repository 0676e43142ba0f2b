//! The stacks that a stock makes, and what may come under one nest.

use super::{MOST_STACKS, MOST_THICKNESSES, ShimError, bounds};
use crate::order::InOrder;
use crate::quantity::Length;

/// Thicknesses nearer than this, in metres, are one.
const SAME: f64 = 1e-9;

/// Shims on each other.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Stack {
    /// Its shims, thickest first.
    pub pieces: Vec<Length>,
    /// All of them together.
    pub thickness: Length,
}

/// Shims of some thicknesses, any number of each, and how high they may be stacked under one nest.
///
/// # Example
/// ```
/// use coilnest::frame::shims::Stock;
/// use coilnest::quantity::{Length, unit::inch};
///
/// let inches = Length::new::<inch>;
/// let stock = Stock::new(&[inches(0.0625), inches(0.125), inches(0.25)], inches(0.5))?;
/// assert_eq!(stock.stacks().len(), 9); // none, 1/16, 1/8, … 1/2
/// assert_eq!(stock.stacks()[7].pieces, [inches(0.25), inches(0.125), inches(0.0625)]);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct Stock {
    largest: Length,
    stacks: Vec<Stack>,
}

impl Stock {
    /// A stock of shims, in any order.
    ///
    /// # Range
    /// Thicknesses above zero and a largest stack within [`bounds::SHIM`]; up to
    /// [`MOST_THICKNESSES`] thicknesses that make up to [`MOST_STACKS`] stacks.
    ///
    /// # Errors
    /// [`ShimError::Empty`], [`ShimError::Thicknesses`], [`ShimError::NotFinite`],
    /// [`ShimError::Thickness`], [`ShimError::OutOfBounds`], [`ShimError::Largest`],
    /// [`ShimError::Stacks`].
    pub fn new(thicknesses: &[Length], largest: Length) -> Result<Self, ShimError> {
        let count = thicknesses.len();
        if count > MOST_THICKNESSES {
            return Err(ShimError::Thicknesses { count });
        }
        let mut thinnest = None;
        for thickness in thicknesses.iter().copied() {
            if !thickness.value.is_finite() {
                return Err(ShimError::NotFinite { what: "thickness of a shim in stock" });
            }
            if thickness.value <= SAME {
                return Err(ShimError::Thickness { thickness });
            }
            bounds::SHIM.check(thickness)?;
            if thinnest.is_none_or(|thinnest: Length| thickness < thinnest) {
                thinnest = Some(thickness);
            }
        }
        let thinnest = thinnest.ok_or(ShimError::Empty)?;
        if !largest.value.is_finite() {
            return Err(ShimError::NotFinite { what: "largest stack" });
        }
        if largest.value < thinnest.value - SAME {
            return Err(ShimError::Largest { largest, thinnest });
        }
        bounds::SHIM.check(largest)?;
        let stacks = stacks(thicknesses, largest).ok_or(ShimError::Stacks { largest })?;
        Ok(Self { largest, stacks })
    }

    /// The largest stack.
    #[must_use]
    pub fn largest(&self) -> Length {
        self.largest
    }

    /// Every thickness that the stock makes, none first, each of the fewest shims that make it; of as
    /// many, those with the thickest.
    #[must_use]
    pub fn stacks(&self) -> &[Stack] {
        &self.stacks
    }
}

/// Stacks by their number of shims: one more on each of those with one fewer, never a thicker one on a
/// thinner. What was reached with fewer is reached already, and so is what stands on it.
fn stacks(thicknesses: &[Length], largest: Length) -> Option<Vec<Stack>> {
    let mut sizes = thicknesses.to_vec();
    sizes.put_in_order(|one, other| other.value.total_cmp(&one.value));
    let mut all = vec![Stack::default()];
    let mut from = 0;
    while from < all.len() {
        let level = all.get(from..)?.to_vec();
        from = all.len();
        for below in &level {
            for size in &sizes {
                let thickness = below.thickness + *size;
                let fits = below.pieces.last().is_none_or(|last| size <= last)
                    && thickness.value <= largest.value + SAME;
                let same = |stack: &Stack| is_same(stack.thickness.value, thickness.value);
                if fits && !all.iter().any(same) {
                    let pieces = below.pieces.iter().chain([size]).copied().collect();
                    all.push(Stack { pieces, thickness });
                }
            }
        }
        if all.len() > MOST_STACKS {
            return None;
        }
    }
    all.put_in_order(|one, other| one.thickness.value.total_cmp(&other.thickness.value));
    Some(all)
}

pub(super) fn is_same(one: f64, other: f64) -> bool {
    (one - other).abs() <= SAME
}

/// What may come under a nest.
#[derive(Clone, Copy, Debug)]
pub(super) struct Choice<'a> {
    pub(super) thickness: f64,
    /// How many shims there are to handle.
    pub(super) handled: usize,
    /// None where what lies there is kept.
    pub(super) stack: Option<&'a Stack>,
}

/// All that may come under a nest, thinnest first.
pub(super) fn choices(stock: &Stock, now: f64, may: bool) -> Vec<Choice<'_>> {
    let mut choices = vec![Choice { thickness: now, handled: 0, stack: None }];
    if may {
        let others = stock.stacks.iter().filter(|stack| !is_same(stack.thickness.value, now));
        let out = usize::from(!is_same(now, 0.0));
        choices.extend(others.map(|stack| Choice {
            thickness: stack.thickness.value,
            handled: stack.pieces.len() + out,
            stack: Some(stack),
        }));
    }
    choices.put_in_order(|one, other| one.thickness.total_cmp(&other.thickness));
    choices
}

/// Every thickness from none to a largest in even steps, and what lies there: a stock so fine that
/// its steps hardly matter.
pub(super) fn even(largest: f64, steps: u32, now: f64) -> Vec<Choice<'static>> {
    let step = |number: u32| Choice {
        thickness: largest * f64::from(number) / f64::from(steps),
        handled: 1,
        stack: None,
    };
    let mut choices: Vec<_> = (0..=steps).map(step).collect();
    choices.push(Choice { thickness: now, handled: 0, stack: None });
    choices.put_in_order(|one, other| one.thickness.total_cmp(&other.thickness));
    choices
}
