//! A good plan for any number of nests: stacks are exchanged while that makes the frame more even.

use super::task::{Found, Task, Value};
use super::{Aim, ROUNDING};
use crate::frame::equilibrium::{Factored, Rest, Row, along, dot};
use crate::order::InOrder;

/// How many of the exchanges that look best are tried before the plan is left as it is.
const TRIED: usize = 6;

/// Up to so many nests, pairs of all are exchanged; with more, those with the worst of them.
const ALL_PAIRS: usize = 8;

/// Up to so many choices, pairs of all are exchanged; with more, those next to what a nest has.
const FEW_CHOICES: usize = 12;

/// With more nests there is time for one way of setting out only, that which looks best.
const MANY: usize = 30;

/// How many ways of setting out are tried beside leaving all as it is.
const STARTS: u32 = 4;

/// The greatest deviation, and the sum of the squares of all.
#[derive(Clone, Copy, Debug)]
struct Merit {
    most: f64,
    squares: f64,
}

/// A gain that is rounding.
const NOTHING: f64 = 1e-12;

impl Merit {
    fn of(offs: impl Iterator<Item = f64>) -> Self {
        offs.fold(Self { most: 0.0, squares: 0.0 }, Self::with)
    }

    fn with(self, off: f64) -> Self {
        Self { most: self.most.max(off.abs()), squares: self.squares + off * off }
    }

    fn betters(&self, other: &Self) -> bool {
        let even = (self.most - other.most).abs() <= NOTHING;
        if even { self.squares < other.squares * (1.0 - ROUNDING) } else { self.most < other.most }
    }

    /// Whether what is this far off, and more to come, cannot better another.
    fn is_beyond(&self, other: &Self) -> bool {
        self.most > other.most + NOTHING
    }
}

/// One stack exchanged for another, and another with it.
#[derive(Clone, Copy, Debug)]
struct Exchange {
    first: (usize, usize),
    second: Option<(usize, usize)>,
}

/// A nest with a thicker stack under it.
#[derive(Clone, Copy)]
struct Raised {
    nest: usize,
    by: f64,
}

/// How far each nest is off, and how that changes with a little more under each, while none comes to a
/// bend.
struct Slopes {
    offs: Vec<f64>,
    /// For each nest that is raised, what a unit of it adds to each of `offs`.
    raised: Vec<Vec<f64>>,
    /// What no nest is below: one that carries nothing.
    floor: f64,
}

impl Slopes {
    fn of(task: &Task<'_>, rest: &Rest) -> Self {
        let rows: Vec<Row> = task.posts.iter().map(|post| post.row).collect();
        let rates: Vec<f64> = task.posts.iter().map(|post| post.at(&rest.pose).1.rate).collect();
        // How the frame moves with the thickness under each nest.
        let gives = rows.iter().zip(&rates).map(|(row, rate)| {
            let push = along(&[0.0; 4], row, *rate);
            rest.stiffness.solve(&push)
        });
        match task.aim {
            Aim::Loads => {
                let parts: Vec<f64> = rates.iter().map(|rate| rate / task.mean).collect();
                let lost = |(row, part): (&Row, &f64), gives: &Row| -part * dot(row, gives);
                let own = |at: usize, nest: usize, part: &f64| if at == nest { *part } else { 0.0 };
                let raised = gives.enumerate().map(|(at, gives)| {
                    let each = rows.iter().zip(&parts).enumerate();
                    each.map(|(nest, of)| own(at, nest, of.1) + lost(of, &gives)).collect()
                });
                Self {
                    raised: raised.collect(),
                    offs: rest.loads.iter().map(|load| load / task.mean - 1.0).collect(),
                    floor: -1.0,
                }
            }
            Aim::Corners => {
                let from_mean = |heights: Vec<f64>| -> Vec<f64> {
                    let mean = mean(&heights);
                    heights.iter().map(|height| height - mean).collect()
                };
                let heights = |pose: &Row| rows.iter().map(|row| dot(row, pose)).collect();
                Self {
                    raised: gives.map(|gives| from_mean(heights(&gives))).collect(),
                    offs: from_mean(heights(&rest.pose)),
                    floor: f64::NEG_INFINITY,
                }
            }
        }
    }

    /// What the frame is like as it is.
    fn merit(&self) -> Merit {
        Merit::of(self.offs.iter().copied())
    }

    /// What the frame would be like with one nest raised, or two, if that is better than `other`.
    fn better(&self, one: Raised, two: Option<Raised>, other: &Merit) -> Option<Merit> {
        let two = two.unwrap_or(Raised { by: 0.0, ..one });
        let (first, second) = (self.raised.get(one.nest)?, self.raised.get(two.nest)?);
        let mut merit = Merit { most: 0.0, squares: 0.0 };
        for ((off, first), second) in self.offs.iter().zip(first).zip(second) {
            merit = merit.with((off + one.by * first + two.by * second).max(self.floor));
            if merit.is_beyond(other) {
                return None;
            }
        }
        merit.betters(other).then_some(merit)
    }

    /// The nest that is farthest off.
    fn worst(&self) -> Option<usize> {
        let offs = self.offs.iter().map(|off| off.abs()).enumerate();
        offs.reduce(|worst, next| if next.1 > worst.1 { next } else { worst }).map(|(at, _)| at)
    }
}

fn mean(each: &[f64]) -> f64 {
    #[expect(clippy::cast_precision_loss, reason = "there are at most MOST_SUPPORTS")]
    let count = each.len() as f64;
    each.iter().sum::<f64>() / count
}

impl Task<'_> {
    /// A good plan, not worse than leaving all as it is; of as good ones with few shims to handle.
    pub(super) fn exchanged(&mut self, kept: &Found) -> Found {
        let mut best = kept.clone();
        let mut starts = self.starts(kept);
        if self.nests.len() > MANY {
            let value = |start: &Vec<usize>, task: &mut Self| {
                task.value(start).map_or(f64::INFINITY, |value| value.of(task.aim))
            };
            let mut valued: Vec<_> =
                starts.into_iter().map(|start| (value(&start, self), start)).collect();
            valued.put_in_order(|(one, _), (other, _)| one.total_cmp(other));
            starts = valued.into_iter().take(1).map(|(_, start)| start).collect();
        } else {
            starts.push(kept.picks.clone());
        }
        for start in starts {
            let Some((picks, value)) = self.descended(start) else { continue };
            if value.of(self.aim) < best.value.of(self.aim) - NOTHING {
                best = Found { handled: self.handled(&picks), picks, value, bound: 0.0 };
            }
        }
        if self.nests.len() <= ALL_PAIRS {
            self.changed(&mut best);
        }
        self.spared(&mut best);
        let floor = match self.aim {
            Aim::Loads => self.floor(),
            Aim::Corners => 0.0,
        };
        Found { bound: floor.min(best.value.of(self.aim)), ..best }
    }

    /// Sets out anew from the best so far with each nest changed to each other choice.
    fn changed(&mut self, best: &mut Found) {
        let from = best.picks.clone();
        for at in 0..from.len() {
            let choices = self.nests.get(at).map_or(0, |nest| nest.choices.len());
            for to in 0..choices.min(FEW_CHOICES) {
                let mut start = from.clone();
                if let Some(pick) = start.get_mut(at) {
                    *pick = to;
                }
                let Some((picks, value)) = self.descended(start) else { continue };
                if value.of(self.aim) < best.value.of(self.aim) - NOTHING {
                    *best = Found { handled: self.handled(&picks), picks, value, bound: 0.0 };
                }
            }
        }
    }

    /// Plans to set out from: those that bring every nest to the load that a rigid frame on equal springs
    /// would give it, or leave it as it is and level the frame, on as little shim as that needs, and on
    /// more.
    fn starts(&mut self, kept: &Found) -> Vec<Vec<usize>> {
        let shims = self.thicknesses(&kept.picks);
        let Ok(rest) = self.rest(&shims, None) else { return Vec::new() };
        let loads = match self.aim {
            Aim::Loads => self.even_loads().unwrap_or(rest.loads),
            Aim::Corners => rest.loads,
        };
        let needs: Vec<f64> = self
            .posts
            .iter()
            .zip(&self.nests)
            .zip(&loads)
            .map(|((post, nest), load)| -nest.ground - post.path.under(*load))
            .collect();
        let least = needs.iter().copied().fold(f64::INFINITY, f64::min);
        let start = |number: u32| {
            let more = self.largest * f64::from(number) / f64::from(2 * STARTS);
            let nearest = |(nest, needs): (&super::task::Nest<'_>, &f64)| {
                let off = |thickness: f64| (thickness - (needs - least + more)).abs();
                let choices = nest.choices.iter().map(|choice| off(choice.thickness)).enumerate();
                let nearest =
                    choices.reduce(|best, next| if next.1 < best.1 { next } else { best });
                nearest.map_or(0, |(pick, _)| pick)
            };
            self.nests.iter().zip(&needs).map(nearest).collect()
        };
        (0..STARTS).map(start).collect()
    }

    /// Loads that balance the weight and change evenly over the plan, none below zero.
    fn even_loads(&mut self) -> Option<Vec<f64>> {
        let mut sum = [[0.0; 4]; 4];
        let rows: Vec<Row> =
            self.posts.iter().map(|post| [1.0, post.row[1], post.row[2], 0.0]).collect();
        for at in &rows {
            for (row, of) in sum.iter_mut().zip(at) {
                *row = along(row, at, *of);
            }
        }
        sum[3][3] = 1.0;
        let [total, u, v, _] = self.pull();
        let by = Factored::of(&sum)?.solve(&[total, u, v, 0.0]);
        let loads: Vec<f64> = rows.iter().map(|row| dot(row, &by)).collect();
        loads.iter().all(|load| *load >= 0.0).then_some(loads)
    }

    /// Exchanges stacks for better ones until none is found. None where the plan does not stand.
    pub(super) fn descended(&mut self, mut picks: Vec<usize>) -> Option<(Vec<usize>, Value)> {
        let (mut value, mut merit, mut slopes) = self.seen(&picks)?;
        for _ in 0..picks.len() + 50 {
            let found = self.exchanges(&picks, &slopes, &merit).into_iter().find_map(|exchange| {
                let mut next = picks.clone();
                for (at, to) in [Some(exchange.first), exchange.second].into_iter().flatten() {
                    if let Some(pick) = next.get_mut(at) {
                        *pick = to;
                    }
                }
                let seen = self.seen(&next).filter(|(_, other, _)| other.betters(&merit));
                seen.map(|seen| (next, seen))
            });
            let Some((next, seen)) = found else { break };
            picks = next;
            (value, merit, slopes) = seen;
        }
        Some((picks, value))
    }

    fn seen(&mut self, picks: &[usize]) -> Option<(Value, Merit, Slopes)> {
        let shims = self.thicknesses(picks);
        let rest = self.rest(&shims, None).ok()?;
        if self.posts.iter().any(|post| post.at(&rest.pose).0 <= 0.0) {
            return None;
        }
        let slopes = Slopes::of(self, &rest);
        Some((self.value_of(&rest), slopes.merit(), slopes))
    }

    /// The exchanges that look best, the best first.
    fn exchanges(&self, picks: &[usize], slopes: &Slopes, merit: &Merit) -> Vec<Exchange> {
        let mut best: Vec<(Merit, Exchange)> = Vec::new();
        let mut look = |one: Raised, two: Option<Raised>, exchange: Exchange| {
            let last = best.get(TRIED - 1).map_or(merit, |(so_far, _)| so_far);
            if let Some(would) = slopes.better(one, two, last) {
                let place = best.partition_point(|(so_far, _)| !would.betters(so_far));
                best.insert(place, (would, exchange));
                best.truncate(TRIED);
            }
        };
        let raised = |at: usize, to: usize| -> Option<f64> {
            let (nest, pick) = (self.nests.get(at)?, picks.get(at)?);
            Some(nest.choices.get(to)?.thickness - nest.choices.get(*pick)?.thickness)
        };
        for (at, (nest, pick)) in self.nests.iter().zip(picks).enumerate() {
            for to in (0..nest.choices.len()).filter(|to| to != pick) {
                if let Some(by) = raised(at, to) {
                    look(Raised { nest: at, by }, None, Exchange { first: (at, to), second: None });
                }
            }
        }
        let near = |at: usize| {
            let pick = picks.get(at).copied().unwrap_or_default();
            let choices = self.nests.get(at).map_or(0, |nest| nest.choices.len());
            let all = picks.len() <= ALL_PAIRS && choices <= FEW_CHOICES;
            let around = if all { 0..choices } else { pick.saturating_sub(2)..pick + 3 };
            around.filter(move |to| *to != pick).filter_map(move |to| Some((to, raised(at, to)?)))
        };
        let few = picks.len() <= ALL_PAIRS;
        let worst = slopes.worst();
        for one in (0..picks.len()).filter(|one| few || worst == Some(*one)) {
            for other in
                (0..picks.len()).filter(|other| if few { *other > one } else { *other != one })
            {
                for (to, by) in near(one) {
                    for (next, further) in near(other) {
                        let exchange = Exchange { first: (one, to), second: Some((other, next)) };
                        let second = Raised { nest: other, by: further };
                        look(Raised { nest: one, by }, Some(second), exchange);
                    }
                }
            }
        }
        best.into_iter().map(|(_, exchange)| exchange).collect()
    }

    /// Spares shims where the frame stays as even.
    fn spared(&mut self, best: &mut Found) {
        let most = best.value.of(self.aim) + ROUNDING;
        for at in 0..best.picks.len() {
            let Some(nest) = self.nests.get(at) else { continue };
            let mut fewer: Vec<(usize, usize)> =
                nest.choices.iter().map(|choice| choice.handled).zip(0..).collect();
            fewer.put_in_order(Ord::cmp);
            let now = self.picked(&best.picks).nth(at).map_or(0, |choice| choice.handled);
            for (handled, pick) in fewer.into_iter().take_while(|(handled, _)| *handled < now) {
                let mut picks = best.picks.clone();
                if let Some(of) = picks.get_mut(at) {
                    *of = pick;
                }
                let value = self.value(&picks).filter(|value| value.of(self.aim) <= most);
                if let Some(value) = value {
                    *best =
                        Found { handled: best.handled - now + handled, picks, value, bound: 0.0 };
                    break;
                }
            }
        }
    }
}
