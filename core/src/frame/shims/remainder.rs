//! Why a plan is no better: what finer shims, higher stacks and more places would still bring.

use super::choice::even;
use super::task::{Found, Task};
use super::twist::Twist;
use super::{Aim, Deviation, ROUNDING, bounds};

/// How many times as high the stacks are of which [`Remains::Stack`] tells, where some nests may not
/// be shimmed and no more is certain.
pub const GREATER: f64 = 4.0;

/// Steps of the fine shims, from none to the largest stack.
const STEPS: u32 = 64;

/// What keeps a plan from being better.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Remains {
    /// Nothing: the frame is as even as can be.
    Nothing,
    /// The thicknesses in stock: finer ones would do better.
    Stock,
    /// The largest stack: a higher one would do better.
    Stack,
    /// The nests where no shims may go.
    Place,
    /// The frame itself: with this weight at this place no shims make it more even.
    Frame,
}

/// The deviation that a plan leaves, in parts that add up to it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Remainder {
    /// What shims of any thickness would take off.
    pub stock: Deviation,
    /// What higher stacks would then take off.
    pub stack: Deviation,
    /// What shims under every nest would then take off.
    pub place: Deviation,
    /// What is left even so.
    pub frame: Deviation,
    /// The greatest of the parts.
    pub chief: Remains,
}

impl Remainder {
    /// Each part is what a plan that was found takes off, so that it is no promise in vain; there may
    /// be better ones. With three and four nests the loads' are certain.
    pub(super) fn of(task: &mut Task<'_>, found: &Found) -> Self {
        let aim = task.aim;
        let value = found.value.of(aim);
        let frame = match aim {
            Aim::Loads => task.floor().min(value),
            Aim::Corners => 0.0,
        };
        let mut left = [value; 3];
        if value > frame + ROUNDING {
            let largest = task.largest;
            let greater = (GREATER * largest).min(bounds::SHIM.most().value);
            let fine = relaxed(task, found, largest, false).min(value).max(frame);
            let high = relaxed(task, found, greater, false).min(fine).max(frame);
            // Only a frame that warps may be out of level on shims of any height under every nest.
            let free = match (aim, task.warp()) {
                (Aim::Corners, Some(_)) => relaxed(task, found, greater, true).min(high),
                _ => frame,
            };
            let everywhere = task.nests.iter().all(|nest| nest.may);
            left = [fine, if everywhere { free } else { high }, free];
        }
        let [fine, high, frame] = left;
        let parts = [value - fine, fine - high, high - frame, frame];
        let names = [Remains::Stock, Remains::Stack, Remains::Place, Remains::Frame];
        let chief = names.into_iter().zip(parts).filter(|(_, part)| *part > ROUNDING);
        let chief = chief.reduce(|most, next| if next.1 > most.1 { next } else { most });
        let [stock, stack, place, frame] = parts.map(|part| Deviation::new(part, aim));
        let chief = chief.map_or(Remains::Nothing, |(chief, _)| chief);
        Self { stock, stack, place, frame, chief }
    }
}

/// The deviation with shims of any thickness up to a largest stack, where they may go or everywhere.
fn relaxed(task: &mut Task<'_>, found: &Found, largest: f64, everywhere: bool) -> f64 {
    let lies = task.thicknesses(&found.picks);
    if let (Some(twist), Aim::Loads) = (Twist::of(task, found), task.aim) {
        let limits: Vec<(f64, f64)> =
            task.nests
                .iter()
                .zip(&lies)
                .map(|(nest, lies)| {
                    if nest.may || everywhere { (0.0, largest.max(*lies)) } else { (*lies, *lies) }
                })
                .collect();
        return twist.least(task, &limits);
    }
    let mut fine = task.clone();
    let mut start = Vec::with_capacity(lies.len());
    for (nest, lies) in fine.nests.iter_mut().zip(lies) {
        if nest.may || everywhere {
            nest.choices = even(largest, STEPS, lies);
        } else {
            nest.choices.retain(|choice| choice.handled == 0);
        }
        start.push(nest.choices.iter().position(|choice| choice.handled == 0).unwrap_or_default());
    }
    fine.descended(start).map_or(f64::INFINITY, |(_, value)| value.of(task.aim))
}
