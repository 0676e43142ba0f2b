//! The most level plan on three or four nests: ranges of stacks are halved, and left out where no plan
//! in them can be better.

use super::ROUNDING;
use super::choice::Choice;
use super::task::{Found, Nest, Task, Value};
use super::twist::{TINY, Twist};
use core::ops::Range;

/// How many ranges are looked into before the search gives up being exact.
const MOST_RANGES: usize = 400_000;

/// A gain that is rounding, in metres.
const NOTHING: f64 = 1e-12;

/// A range of the choices of each nest, and a deviation that no plan of them is below.
struct Ranges {
    each: Vec<Range<usize>>,
    bound: f64,
}

/// The plans that are as level as the best and have as few shims as any of them so far.
struct Equals {
    fewest: usize,
    plans: Vec<(Vec<usize>, Value)>,
}

impl Equals {
    fn add(&mut self, handled: usize, picks: Vec<usize>, value: Value) {
        if handled < self.fewest {
            self.fewest = handled;
            self.plans.clear();
        }
        if handled == self.fewest {
            self.plans.push((picks, value));
        }
    }
}

impl Twist {
    /// The plan with the most level frame.
    pub(super) fn level(&self, task: &mut Task<'_>, kept: &Found) -> Found {
        let mut best = task.exchanged(kept);
        let worse = |best: &Found, ranges: &Ranges| ranges.bound >= best.value.corners - NOTHING;
        let unsure = self.walk(task, &mut best, worse, |best, task, picks, value| {
            if value.corners < best.value.corners {
                *best = Found { handled: task.handled(&picks), picks, value, bound: 0.0 };
            }
        });
        let least = best.value.corners;
        let mut equals =
            Equals { fewest: best.handled, plans: vec![(best.picks.clone(), best.value)] };
        let more = |equals: &Equals, task: &Task<'_>, ranges: &Ranges| {
            ranges.bound > least + ROUNDING || fewest(task, ranges) > equals.fewest
        };
        let nests = task.clone();
        let skip = |equals: &Equals, ranges: &Ranges| more(equals, &nests, ranges);
        self.walk(task, &mut equals, skip, |equals, task, picks, value| {
            if value.corners <= least + ROUNDING && picks != best.picks {
                equals.add(task.handled(&picks), picks, value);
            }
        });
        let bound = unsure.min(least);
        let found = task.of_equals(equals.plans, least).unwrap_or(best);
        Found { bound, ..found }
    }

    /// Looks into all ranges but those that are skipped, and gives the least bound of those that there
    /// was no time for.
    fn walk<S>(
        &self,
        task: &mut Task<'_>,
        state: &mut S,
        skip: impl Fn(&S, &Ranges) -> bool,
        mut seen: impl FnMut(&mut S, &Task<'_>, Vec<usize>, Value),
    ) -> f64 {
        let each: Vec<_> = task.nests.iter().map(|nest| 0..nest.choices.len()).collect();
        let bound = self.bound(task, &each);
        let mut open = vec![Ranges { each, bound }];
        let mut looked = 0;
        while let Some(ranges) = open.pop() {
            if skip(state, &ranges) {
                continue;
            }
            if looked >= MOST_RANGES {
                let left = open.iter().filter(|ranges| !skip(state, ranges));
                return left.map(|ranges| ranges.bound).fold(ranges.bound, f64::min);
            }
            looked += 1;
            match self.halves(task, &ranges) {
                Some([one, other]) if one.bound < other.bound => open.extend([other, one]),
                Some([one, other]) => open.extend([one, other]),
                None => {
                    let picks: Vec<usize> = ranges.each.iter().map(|range| range.start).collect();
                    if let Some(value) = self.value(task, &picks) {
                        seen(state, task, picks, value);
                    }
                }
            }
        }
        f64::INFINITY
    }

    /// Two halves of ranges, cut where the thicknesses are farthest apart; none of a single plan.
    fn halves(&self, task: &Task<'_>, ranges: &Ranges) -> Option<[Ranges; 2]> {
        let mut widest: Option<(f64, usize)> = None;
        for (at, (nest, range)) in task.nests.iter().zip(&ranges.each).enumerate() {
            let (least, most) = limits(within(nest, range));
            let wide = most - least;
            if range.len() > 1 && widest.is_none_or(|(so_far, _)| wide > so_far) {
                widest = Some((wide, at));
            }
        }
        let (_, at) = widest?;
        let half = |low: bool| {
            let mut each = ranges.each.clone();
            if let Some(range) = each.get_mut(at) {
                let middle = range.start.midpoint(range.end);
                if low { range.end = middle } else { range.start = middle }
            }
            let bound = self.bound(task, &each);
            Ranges { each, bound }
        };
        Some([half(true), half(false)])
    }

    /// What the deviation of the heights is not below: each height lies between what its nest has under
    /// its greatest load and its thinnest stack, and under its least load and its thickest.
    fn bound(&self, task: &Task<'_>, each: &[Range<usize>]) -> f64 {
        let shims: Vec<(f64, f64)> =
            task.nests.iter().zip(each).map(|(nest, range)| limits(within(nest, range))).collect();
        let (mut from, mut to) = (0.0, 0.0);
        for ((n, nest), (least, most)) in self.null.iter().zip(&task.nests).zip(&shims) {
            let (one, other) = (n * (nest.ground + least), n * (nest.ground + most));
            (from, to) = (from + one.min(other), to + one.max(other));
        }
        let (first, last) = (self.factor(from), self.factor(to));
        let loads = self.loads(first).zip(self.loads(last));
        let under = task.posts.iter().zip(&task.nests).zip(&shims).zip(loads);
        let mut heights: Vec<(f64, f64)> = Vec::with_capacity(shims.len());
        for (((post, nest), (least, most)), (one, other)) in under {
            let over = post.path.under(one.max(other)) + nest.ground + least;
            // An empty nest leaves the frame to the others, and may be any height below it.
            let empty = one.min(other) <= TINY * task.mean;
            let under = post.path.under(one.min(other)) + nest.ground + most;
            heights.push((over, if empty { f64::INFINITY } else { under }));
        }
        self.flatten(&mut heights, (first, last));
        deviation(&heights)
    }

    /// Narrows heights to what the others leave them, as all four are those of one frame.
    fn flatten(&self, heights: &mut [(f64, f64)], (first, last): (f64, f64)) {
        let Some((warp, per)) = self.warp else { return };
        let (one, other) = (self.saddle * (warp + per * first), self.saddle * (warp + per * last));
        let off = (one.min(other), one.max(other));
        for at in 0..heights.len() {
            let Some(n) = self.null.get(at).filter(|n| n.abs() > 0.0) else { continue };
            let (mut least, mut most) = off;
            for (place, (of, (low, high))) in self.null.iter().zip(heights.iter()).enumerate() {
                if place != at && of.abs() > 0.0 {
                    let (one, other) = (of * low, of * high);
                    (least, most) = (least - one.max(other), most - one.min(other));
                }
            }
            let (one, other) = (least / n, most / n);
            if let Some((low, high)) = heights.get_mut(at) {
                (*low, *high) = (low.max(one.min(other)), high.min(one.max(other)));
            }
        }
    }
}

fn within<'a, 'b>(nest: &'b Nest<'a>, range: &Range<usize>) -> &'b [Choice<'a>] {
    nest.choices.get(range.clone()).unwrap_or_default()
}

/// The thinnest and the thickest.
fn limits(choices: &[Choice<'_>]) -> (f64, f64) {
    let thickness = |choice: Option<&Choice<'_>>| choice.map_or(0.0, |of| of.thickness);
    (thickness(choices.first()), thickness(choices.last()))
}

/// The fewest shims to handle in a plan of the ranges.
fn fewest(task: &Task<'_>, ranges: &Ranges) -> usize {
    let each = task.nests.iter().zip(&ranges.each);
    let fewest = |choices: &[Choice<'_>]| choices.iter().map(|choice| choice.handled).min();
    each.filter_map(|(nest, range)| fewest(within(nest, range))).sum()
}

/// The least that the greatest distance from the mean can be, of heights between limits.
fn deviation(heights: &[(f64, f64)]) -> f64 {
    #[expect(clippy::cast_precision_loss, reason = "there are three or four")]
    let part = 1.0 / heights.len() as f64;
    let low: f64 = heights.iter().map(|(low, _)| low * part).sum();
    let high: f64 = heights.iter().map(|(_, high)| high * part).sum();
    let lowest = heights.iter().map(|(_, high)| *high).fold(f64::INFINITY, f64::min);
    let highest = heights.iter().map(|(low, _)| *low).fold(f64::NEG_INFINITY, f64::max);
    let mut least = ((highest - lowest) / 2.0).max(0.0);
    for (at, next) in heights {
        // The mean holds a part of the height itself.
        let over = at * (1.0 - part) - (high - next * part);
        let under = low - at * part - next * (1.0 - part);
        if over.is_finite() {
            least = least.max(over);
        }
        if under.is_finite() {
            least = least.max(under);
        }
    }
    least
}
