//! Nests of two parts, of which one is of the one kind and one of the other: the least spread.
//!
//! # How many nests have loads from `lo` to `hi`?
//! Go through the first parts from the greatest down and the second from the least up. Where the two
//! in hand weigh less than `lo`, the second is too light for every first that is still to come: drop
//! it. Where they weigh more than `hi`, the first is too heavy for every second to come: drop it. Else
//! they make a nest. No other way makes more: were they to be used in nests `(a, b')` and `(a', b)`,
//! then `a' ≤ a` and `b ≤ b'` give `lo ≤ a' + b ≤ a' + b' ≤ a + b' ≤ hi`, so that `(a, b)` and
//! `(a', b')` do as well; and if only one of them were used, it may as well be with the other. Sums
//! that are rounded keep that order, so rounding spoils nothing.
//!
//! # Which `lo`?
//! With `best` known, `lo` in `(l, r]` can only be better if the window from `l` to `r + best` holds
//! the nests wanted. Where it does not, the whole interval is done with; where it does, its least sum is
//! tried and the rest halved. Every sum is thus tried or excluded, so that what is found is the least;
//! if the steps run out, what is left of the intervals bounds it.

use crate::order::InOrder;
use crate::progress::{Progress, part};
use std::collections::VecDeque;

/// Steps after which a search for the least spread stops, each one part that is looked at.
pub(super) const STEPS: usize = 100_000_000;

/// A part of a nest.
#[derive(Clone, Copy, Debug)]
pub(super) struct Entry {
    pub(super) load: f64,
    pub(super) id: usize,
}

/// A nest that was made.
#[derive(Clone, Copy, Debug)]
pub(super) enum Taken {
    Whole(usize),
    Pair(usize, usize),
}

impl Taken {
    pub(super) fn ids(self) -> Vec<usize> {
        match self {
            Self::Whole(id) => vec![id],
            Self::Pair(first, second) => vec![first, second],
        }
    }
}

/// Parts of which a number of nests is to be made.
#[derive(Clone, Debug)]
pub(super) struct Pairs {
    /// Nests that are whole as they are.
    wholes: Vec<Entry>,
    /// The greatest first.
    firsts: Vec<Entry>,
    /// The least first.
    seconds: Vec<Entry>,
    wanted: usize,
}

/// What a search came to.
pub(super) struct Solved {
    /// The nests, where their spread is below the one that was known.
    pub(super) taken: Option<Vec<Taken>>,
    pub(super) spread: f64,
    pub(super) bound: f64,
}

impl Pairs {
    pub(super) fn new(
        mut wholes: Vec<Entry>,
        mut firsts: Vec<Entry>,
        mut seconds: Vec<Entry>,
        wanted: usize,
    ) -> Self {
        wholes.put_in_order(|one, other| one.load.total_cmp(&other.load));
        firsts.put_in_order(|one, other| other.load.total_cmp(&one.load));
        seconds.put_in_order(|one, other| one.load.total_cmp(&other.load));
        Self { wholes, firsts, seconds, wanted }
    }

    fn parts(&self) -> usize {
        self.wholes.len() + self.firsts.len() + self.seconds.len()
    }

    /// Makes nests in a window of loads until there are as many as wanted, and tells whether there are.
    fn fill(&self, [lo, hi]: [f64; 2], mut each: impl FnMut(f64, Taken)) -> bool {
        let mut left = self.wanted;
        for whole in &self.wholes {
            if left > 0 && whole.load >= lo && whole.load <= hi {
                each(whole.load, Taken::Whole(whole.id));
                left -= 1;
            }
        }
        let (mut firsts, mut seconds) = (self.firsts.iter(), self.seconds.iter());
        let (mut first, mut second) = (firsts.next(), seconds.next());
        while let (Some(a), Some(b)) = (first, second)
            && left > 0
        {
            let load = a.load + b.load;
            if load < lo {
                second = seconds.next();
            } else if load > hi {
                first = firsts.next();
            } else {
                each(load, Taken::Pair(a.id, b.id));
                left -= 1;
                (first, second) = (firsts.next(), seconds.next());
            }
        }
        left == 0
    }

    /// The greatest load of the nests in a window, if there are enough.
    fn greatest(&self, window: [f64; 2], steps: &mut usize) -> Option<f64> {
        *steps += self.parts();
        let mut greatest = f64::NEG_INFINITY;
        let enough = self.fill(window, |load, _| greatest = greatest.max(load));
        enough.then_some(greatest)
    }

    /// The least load of any nest above one.
    fn next(&self, above: f64, steps: &mut usize) -> Option<f64> {
        *steps += self.parts();
        let wholes = self.wholes.iter().map(|whole| whole.load);
        let mut least = wholes.filter(|load| *load > above).fold(f64::INFINITY, f64::min);
        let mut seconds = self.seconds.iter();
        let mut second = seconds.next();
        for first in &self.firsts {
            while let Some(b) = second
                && first.load + b.load <= above
            {
                second = seconds.next();
            }
            let Some(b) = second else { break };
            least = least.min(first.load + b.load);
        }
        least.is_finite().then_some(least)
    }

    /// The least `hi` that holds enough nests from `lo` on; `enough` is one that does.
    fn least_top(&self, lo: f64, enough: f64, steps: &mut usize) -> f64 {
        let (mut least, mut enough) = (lo, enough);
        while least < enough {
            let middle = f64::midpoint(least, enough);
            let middle = if middle < enough { middle } else { least };
            match (self.greatest([lo, middle], steps), self.next(middle, steps)) {
                (Some(greatest), _) => enough = greatest,
                (None, Some(next)) if next < enough => least = next,
                _ => break,
            }
        }
        enough
    }

    /// The least spread, looked for below one that is known. Spreads within `slack` of each other
    /// are one.
    pub(super) fn solve(
        &self,
        known: f64,
        slack: f64,
        most_steps: usize,
        progress: &mut Progress<'_>,
    ) -> Solved {
        let mut steps = 0;
        let mut best = known;
        let mut window = None;
        let last = self.wholes.last().map_or(0.0, |whole| whole.load);
        let heaviest = self.firsts.first().zip(self.seconds.last());
        let top = heaviest.map_or(last, |(a, b)| last.max(a.load + b.load));
        // Intervals that hold their right end and not their left one, widest first.
        let mut intervals = VecDeque::from([(-1.0, top)]);
        let mut decided = 0.0;
        while steps < most_steps
            && let Some((left, right)) = intervals.pop_front()
        {
            progress.at((decided / top).max(part(steps, most_steps)));
            let lo = self.next(left, &mut steps).filter(|lo| *lo <= right);
            decided += lo.unwrap_or(right) - left.max(0.0);
            let Some(lo) = lo else { continue };
            if self.greatest([lo, right + best - slack], &mut steps).is_none() {
                decided += right - lo;
                continue;
            }
            if let Some(enough) = self.greatest([lo, lo + best - slack], &mut steps) {
                let hi = self.least_top(lo, enough, &mut steps);
                (best, window) = (hi - lo, Some([lo, hi]));
            }
            let middle = f64::midpoint(lo, right);
            intervals.extend([(lo, middle), (middle, right)]);
        }
        let mut bound = best;
        for (left, right) in intervals {
            if bound <= 0.0 {
                break;
            }
            let Some(lo) = self.next(left, &mut steps).filter(|lo| *lo <= right) else { continue };
            if let Some(enough) = self.greatest([lo, right + bound - slack], &mut steps) {
                bound = bound.min(self.least_top(lo, enough, &mut steps) - right).max(0.0);
            }
        }
        let taken = window.map(|window| {
            let mut taken = Vec::with_capacity(self.wanted);
            self.fill(window, |_, one| taken.push(one));
            taken
        });
        Solved { taken, spread: best, bound }
    }
}
