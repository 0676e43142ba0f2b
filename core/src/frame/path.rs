//! Load against height of one support: straight pieces from free down to past solid.

use super::Support;
use crate::nest::Member;
use crate::order::InOrder;
use crate::quantity::{Length, SpringRate};

/// How many times stiffer than its springs a nest is past solid, unless its stop is given.
///
/// A modelling choice, no source: turns that lie on each other still give, seats and frame give
/// more. Loads of nests that do not bottom do not depend on it while others carry too.
pub const STOP_PER_RATE: f64 = 20.0;

/// What a support pushes at each of its heights, in SI units.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Path {
    /// Highest first; above the first there is no load.
    pieces: Vec<Piece>,
    /// Below this height the coils lie turn on turn.
    solid: Option<f64>,
}

/// A straight piece, from its top down to the next.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Piece {
    top: f64,
    load: f64,
    rate: f64,
}

/// A path at a height.
#[derive(Clone, Copy, Debug)]
pub(super) struct Point {
    pub(super) load: f64,
    pub(super) rate: f64,
    /// The heights between which the load is straight.
    pub(super) below: f64,
    pub(super) above: f64,
}

impl Path {
    pub(super) fn of(support: &Support) -> Self {
        Self::with(support, |_| (0.0, 1.0))
    }

    /// The path of a nest whose coils are each longer by a length and stiffer by a factor.
    pub(super) fn with(support: &Support, change: impl FnMut(&Member) -> (f64, f64)) -> Self {
        let nest = &support.nest;
        let solid = nest.solid().map(|solid| solid.height);
        let bends = bends(nest.members(), change);
        let mut pieces = Vec::with_capacity(bends.len() + 1);
        let (mut load, mut rate, mut top) = (0.0, 0.0, f64::INFINITY);
        for (height, step) in bends {
            if solid.is_some_and(|solid| height <= solid.value) {
                break;
            }
            load = borne(load, rate, top, height);
            rate += step;
            top = height;
            pieces.push(Piece { top, load, rate });
        }
        if let Some(solid) = solid {
            let load = borne(load, rate, top, solid.value);
            let stop = support.stop.unwrap_or_else(|| usual_stop(support, solid));
            pieces.push(Piece { top: solid.value, load, rate: stop.value });
        }
        Self { pieces, solid: solid.map(|solid| solid.value) }
    }

    /// A stop that bears a load at a height, and gives with its own rate.
    pub(super) fn stuck(height: f64, load: f64, rate: f64) -> Self {
        let pieces = vec![Piece { top: height + load / rate, load: 0.0, rate }];
        Self { pieces, solid: None }
    }

    pub(super) fn at(&self, height: f64) -> Point {
        let mut above = f64::INFINITY;
        let (mut load, mut rate) = (0.0, 0.0);
        for piece in &self.pieces {
            if piece.top <= height {
                return Point { load, rate, below: piece.top, above };
            }
            load = piece.load + piece.rate * (piece.top - height);
            rate = piece.rate;
            above = piece.top;
        }
        Point { load, rate, below: f64::NEG_INFINITY, above }
    }

    /// The heights at which the rate changes, highest first.
    pub(super) fn tops(&self) -> impl Iterator<Item = f64> + '_ {
        self.pieces.iter().map(|piece| piece.top)
    }

    /// Height under a load.
    pub(super) fn under(&self, load: f64) -> f64 {
        let reached = self.pieces.iter().take_while(|piece| piece.load < load);
        reached.last().map_or_else(
            || self.tops().next().unwrap_or_default(),
            |piece| piece.top - (load - piece.load) / piece.rate,
        )
    }

    pub(super) fn is_bottomed(&self, height: f64) -> bool {
        self.solid.is_some_and(|solid| height < solid)
    }

    /// Rate of the stiffest piece.
    pub(super) fn full_rate(&self) -> f64 {
        self.pieces.iter().map(|piece| piece.rate).fold(0.0, f64::max)
    }
}

/// Stiffness past a solid height where none is given.
fn usual_stop(support: &Support, solid: Length) -> SpringRate {
    support.nest.rate_below(solid) * STOP_PER_RATE
}

/// Stiffness of a support that is stuck or solid.
pub(super) fn stop_of(support: &Support) -> SpringRate {
    support.stop.unwrap_or_else(|| {
        let solid = support.nest.solid().map(|solid| solid.height);
        usual_stop(support, solid.unwrap_or_default())
    })
}

/// Load at a height below a bend; none at the first.
fn borne(load: f64, rate: f64, top: f64, height: f64) -> f64 {
    if rate > 0.0 { load + rate * (top - height) } else { load }
}

/// Where the rate changes and by how much, highest first.
fn bends(members: &[Member], mut change: impl FnMut(&Member) -> (f64, f64)) -> Vec<(f64, f64)> {
    let mut bends = Vec::with_capacity(members.len());
    for member in members {
        let (longer, stiffer) = change(member);
        let touch = member.touch_height().value + longer;
        let steps = member.law.steps();
        bends.extend(steps.map(|(from, step)| (touch - from.value, step.value * stiffer)));
    }
    bends.put_few_in_order(|(one, _), (other, _)| other.total_cmp(one));
    bends
}
