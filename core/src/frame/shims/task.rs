//! A frame that is to be shimmed, its nests in order of place, and what a plan is worth.

use super::choice::{Choice, choices};
use super::twist::Twist;
use super::{Aim, MOST_TRIED, ROUNDING, Stock};
use crate::frame::equilibrium::{Post, Rest, Row, dot};
use crate::frame::{Frame, FrameError, Weight};
use crate::order::InOrder;
use core::cmp::Ordering;

/// The frame with shims that are tried under it.
#[derive(Clone)]
pub(super) struct Task<'a> {
    frame: &'a Frame,
    weight: Weight,
    pub(super) aim: Aim,
    pub(super) largest: f64,
    /// The mean load.
    pub(super) mean: f64,
    /// Foremost first, so that the order in which they were given does not matter.
    pub(super) nests: Vec<Nest<'a>>,
    /// As the nests, with the shims that were tried last.
    pub(super) posts: Vec<Post>,
}

/// A nest, and what may come under it.
#[derive(Clone)]
pub(super) struct Nest<'a> {
    /// Which support it is of the frame.
    pub(super) support: usize,
    /// The rise of the ground.
    pub(super) ground: f64,
    /// The shim that lies there.
    pub(super) now: f64,
    /// Whether shims may go there.
    pub(super) may: bool,
    /// Thinnest first.
    pub(super) choices: Vec<Choice<'a>>,
}

/// How far a plan leaves the frame from even: as a part of the mean load, and in metres.
#[derive(Clone, Copy, Debug)]
pub(super) struct Value {
    pub(super) loads: f64,
    pub(super) corners: f64,
}

impl Value {
    pub(super) fn of(&self, aim: Aim) -> f64 {
        match aim {
            Aim::Loads => self.loads,
            Aim::Corners => self.corners,
        }
    }

    fn beside(&self, aim: Aim) -> f64 {
        match aim {
            Aim::Loads => self.corners,
            Aim::Corners => self.loads,
        }
    }
}

/// A plan: for each nest, in order of place, which of its choices.
#[derive(Clone, Debug)]
pub(super) struct Found {
    pub(super) picks: Vec<usize>,
    pub(super) value: Value,
    pub(super) handled: usize,
    /// What no plan comes below, in the aim.
    pub(super) bound: f64,
}

impl<'a> Task<'a> {
    pub(super) fn new(
        frame: &'a Frame,
        weight: Weight,
        stock: &'a Stock,
        may: &[bool],
        aim: Aim,
    ) -> Self {
        let mut all: Vec<_> =
            frame.supports.iter().zip(&frame.posts).zip(may).enumerate().collect();
        all.put_in_order(|(_, ((one, _), _)), (_, ((other, _), _))| {
            let (one, other) = (one.place, other.place);
            let along = other.along.value.total_cmp(&one.along.value);
            along.then(other.across.value.total_cmp(&one.across.value))
        });
        let nest =
            |(support, ((of, _), may)): &(usize, ((&super::super::Support, &Post), &bool))| {
                let now = of.shim.value;
                let choices = choices(stock, now, **may);
                Nest { support: *support, ground: of.ground.value, now, may: **may, choices }
            };
        let nests: Vec<_> = all.iter().map(nest).collect();
        let posts: Vec<_> = all.iter().map(|(_, ((_, post), _))| (*post).clone()).collect();
        #[expect(clippy::cast_precision_loss, reason = "there are at most MOST_SUPPORTS")]
        let mean = weight.load.value / posts.len() as f64;
        Self { frame, weight, aim, largest: stock.largest().value, mean, nests, posts }
    }

    pub(super) fn warp(&self) -> Option<f64> {
        self.frame.warp.map(|warp| warp.value)
    }

    /// The weight's pull on each way of moving.
    pub(super) fn pull(&self) -> Row {
        self.frame.energy(&self.posts, self.weight).pull
    }

    /// The rest on shims of these thicknesses.
    pub(super) fn rest(&mut self, shims: &[f64], start: Option<Row>) -> Result<Rest, FrameError> {
        for ((post, nest), shim) in self.posts.iter_mut().zip(&self.nests).zip(shims) {
            post.offset = nest.ground + shim;
        }
        self.frame.rest(&self.posts, self.weight, start)
    }

    /// How far from even the frame is at rest on the shims that were tried last.
    pub(super) fn value_of(&self, rest: &Rest) -> Value {
        let off = |load: &f64| (load / self.mean - 1.0).abs();
        let loads = rest.loads.iter().map(off).fold(0.0, f64::max);
        let heights: Vec<f64> = self.posts.iter().map(|post| dot(&post.row, &rest.pose)).collect();
        Value { loads, corners: farthest(&heights) }
    }

    /// None where the frame does not stand, or a nest is pressed to nothing.
    pub(super) fn value_from(&mut self, shims: &[f64], start: Option<Row>) -> Option<Value> {
        let rest = self.rest(shims, start).ok()?;
        let stands = self.posts.iter().all(|post| post.at(&rest.pose).0 > 0.0);
        stands.then(|| self.value_of(&rest))
    }

    pub(super) fn picked<'b>(&'b self, picks: &'b [usize]) -> impl Iterator<Item = &'b Choice<'a>> {
        self.nests.iter().zip(picks).filter_map(|(nest, pick)| nest.choices.get(*pick))
    }

    pub(super) fn thicknesses(&self, picks: &[usize]) -> Vec<f64> {
        self.picked(picks).map(|choice| choice.thickness).collect()
    }

    pub(super) fn handled(&self, picks: &[usize]) -> usize {
        self.picked(picks).map(|choice| choice.handled).sum()
    }

    pub(super) fn value(&mut self, picks: &[usize]) -> Option<Value> {
        let shims = self.thicknesses(picks);
        self.value_from(&shims, None)
    }

    /// To leave all as it is.
    pub(super) fn kept(&mut self) -> Result<Found, FrameError> {
        let kept = |nest: &Nest<'_>| nest.choices.iter().position(|choice| choice.handled == 0);
        let picks: Vec<usize> = self.nests.iter().filter_map(kept).collect();
        let shims = self.thicknesses(&picks);
        let rest = self.rest(&shims, None)?;
        Ok(Found { picks, value: self.value_of(&rest), handled: 0, bound: 0.0 })
    }

    /// The best plan.
    pub(super) fn solve(&mut self, kept: &Found) -> Found {
        let plans = self.nests.iter().try_fold(1_usize, |plans, nest| {
            plans.checked_mul(nest.choices.len()).filter(|plans| *plans <= MOST_TRIED)
        });
        let twist = Twist::of(self, kept);
        let found = match (twist, self.aim) {
            (Some(twist), Aim::Loads) => twist.evenest(self, kept),
            (Some(twist), Aim::Corners) => twist.level(self, kept),
            (None, _) if plans.is_some() => self.every(kept),
            (None, _) => self.exchanged(kept),
        };
        // What gains nothing is not worth a shim.
        let gains = kept.value.of(self.aim) - found.value.of(self.aim);
        if gains > ROUNDING { found } else { Found { bound: found.bound, ..kept.clone() } }
    }

    /// The best of few plans: all are tried.
    fn every(&mut self, kept: &Found) -> Found {
        let mut picks = vec![0; self.nests.len()];
        let mut all = Vec::new();
        loop {
            if let Some(value) = self.value(&picks) {
                all.push((picks.clone(), value));
            }
            let next = picks.iter_mut().zip(&self.nests).find_map(|(pick, nest)| {
                *pick = if *pick + 1 < nest.choices.len() { *pick + 1 } else { 0 };
                (*pick > 0).then_some(())
            });
            if next.is_none() {
                break;
            }
        }
        let values = all.iter().map(|(_, value)| value.of(self.aim));
        let bound = values.fold(kept.value.of(self.aim), f64::min);
        self.of_equals(all, bound).unwrap_or_else(|| kept.clone())
    }

    /// Of plans that are equal to the best, the one with the fewest shims to handle, then the best in
    /// the other aim, then the one with the thicker stacks at the foremost nests.
    pub(super) fn of_equals(&self, all: Vec<(Vec<usize>, Value)>, bound: f64) -> Option<Found> {
        let mut all: Vec<_> = all
            .into_iter()
            .filter(|(_, value)| value.of(self.aim) <= bound + ROUNDING)
            .map(|(picks, value)| (self.handled(&picks), picks, value))
            .collect();
        let fewest = all.iter().map(|(handled, ..)| *handled).min()?;
        all.retain(|(handled, ..)| *handled == fewest);
        let beside = |value: &Value| value.beside(self.aim);
        let least = all.iter().map(|(.., value)| beside(value)).fold(f64::INFINITY, f64::min);
        all.retain(|(.., value)| beside(value) <= least + ROUNDING);
        // Choices are sorted by thickness.
        let first = all.into_iter().reduce(|best, next| {
            if next.1.cmp(&best.1) == Ordering::Greater { next } else { best }
        });
        first.map(|(handled, picks, value)| Found { picks, value, handled, bound })
    }

    /// What no shims can better: the least greatest deviation of any loads that balance the weight.
    ///
    /// About a line through two nests the others make the moment of the weight. Those on the one side
    /// carry at most m·(1 + d), those on the other at least m·(1 − d) and never less than nothing:
    ///
    /// ```text
    /// n·l_c ≤ (1 + d)·P − max(0, 1 − d)·N
    /// ```
    /// `l` distance from the line, of the weight `l_c` · `P`, `N` sums of the distances on either side,
    /// without sign. The greatest `d` that any such line asks for is enough: the loads between two
    /// limits that are seen as sum and two moments fill a body whose faces lie on such lines.
    pub(super) fn floor(&self) -> f64 {
        let [total, u, v, _] = self.pull();
        let centre = [1.0, u / total, v / total, 0.0];
        let rows: Vec<Row> = self.posts.iter().map(|post| post.row).collect();
        let count = total / self.mean;
        let mut floor = 0.0_f64;
        for (number, one) in rows.iter().enumerate() {
            for other in rows.iter().skip(number + 1) {
                let (u, v) = (other[1] - one[1], other[2] - one[2]);
                let from = |at: &Row| u * (at[2] - one[2]) - v * (at[1] - one[1]);
                let (mut above, mut below) = (0.0, 0.0);
                for at in &rows {
                    let from = from(at);
                    if from > 0.0 { above += from } else { below -= from }
                }
                let moment = count * from(&centre);
                for (moment, above, below) in [(moment, above, below), (-moment, below, above)] {
                    let needs = (moment - above + below) / (above + below);
                    let needs = if needs > 1.0 { moment / above - 1.0 } else { needs };
                    floor = floor.max(needs);
                }
            }
        }
        floor
    }
}

/// The greatest distance from the mean.
pub(super) fn farthest(heights: &[f64]) -> f64 {
    #[expect(clippy::cast_precision_loss, reason = "there are at most MOST_SUPPORTS")]
    let mean = heights.iter().sum::<f64>() / heights.len() as f64;
    heights.iter().map(|height| (height - mean).abs()).fold(0.0, f64::max)
}
